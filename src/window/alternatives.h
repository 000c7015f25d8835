/* alternatives.h: the other ways to lay out the sheet, to choose from
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signals
 *   chosen (int rows): 0, let the program choose; else so many rows.
 */

#pragma once

#include <gtk/gtk.h>

#include "../calc/figures.h"
#include "../words/words.h"

G_BEGIN_DECLS

#define TR_TYPE_ALTERNATIVES (tr_alternatives_get_type ())
G_DECLARE_FINAL_TYPE (TrAlternatives, tr_alternatives, TR, ALTERNATIVES, GtkWidget)

GtkWidget *tr_alternatives_new     (void);
/* Hidden where there is no sheet. */
void       tr_alternatives_refresh (TrAlternatives       *self,
                                    const TrDoughFigures *figures,
                                    const TrReader       *reader);

G_END_DECLS
