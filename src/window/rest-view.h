/* rest-view.h: what a rest does to the slab, in words and as a picture
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * To be read: the fields of the rest stand beside it. Hidden where no rest is
 * written.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_REST_VIEW (tr_rest_view_get_type ())
G_DECLARE_FINAL_TYPE (TrRestView, tr_rest_view, TR, REST_VIEW, GtkWidget)

GtkWidget *tr_rest_view_new (void);
/* The rest after that turn; 0: the chill before lock-in. `figures` NULL: none. */
void       tr_rest_view_show (TrRestView           *self,
                              const TrDoughFigures *figures,
                              int                   turn,
                              const TrReader       *reader);

G_END_DECLS
