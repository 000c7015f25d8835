/* tasters.h: who tastes, how far they are, and in which order they are served
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Stands in a page.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_TASTERS (tr_tasters_get_type ())
G_DECLARE_FINAL_TYPE (TrTasters, tr_tasters, TR, TASTERS, GtkWidget)

GtkWidget *tr_tasters_new     (void);
void       tr_tasters_refresh (TrTasters *self);

G_END_DECLS
