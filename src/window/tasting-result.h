/* tasting-result.h: what a tasting shows, worked out beside the window
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exact probabilities can take a second: they are worked out on another thread,
 * with progress and a button to stop. What comes of an older state of the
 * document is dropped. Stands in a page; works only while it is mapped.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_TASTING_RESULT (tr_tasting_result_get_type ())
G_DECLARE_FINAL_TYPE (TrTastingResult, tr_tasting_result, TR, TASTING_RESULT, GtkWidget)

GtkWidget *tr_tasting_result_new     (void);
void       tr_tasting_result_refresh (TrTastingResult *self);
/* Nothing is being worked out. */
gboolean   tr_tasting_result_is_done (TrTastingResult *self);

G_END_DECLS
