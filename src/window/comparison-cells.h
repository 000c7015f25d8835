/* comparison-cells.h: what stands in the cells of a comparison
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Makes the columns of names, doughs and spreads, and shows in the cells that
 * GTK has bound to rows what there is to show now.
 */

#pragma once

#include <gtk/gtk.h>

#include "../words/words.h"
#include "comparison-choice.h"

G_BEGIN_DECLS

typedef struct _TrComparisonCells TrComparisonCells;

TrComparisonCells   *tr_comparison_cells_new              (void);
void                 tr_comparison_cells_free             (TrComparisonCells        *self);
/* The columns must not outlive this. (transfer full) */
GtkColumnViewColumn *tr_comparison_cells_new_name_column  (TrComparisonCells        *self);
GtkColumnViewColumn *tr_comparison_cells_new_dough_column (TrComparisonCells        *self,
                                                           const char               *dough);
GtkColumnViewColumn *tr_comparison_cells_new_spread_column (TrComparisonCells       *self);
/* Of those doughs (guint, in the order of the columns). */
void                 tr_comparison_cells_show             (TrComparisonCells        *self,
                                                           const TrFigures          *figures,
                                                           const GArray             *doughs,
                                                           const TrComparisonChoice *choice,
                                                           const TrReader           *reader);
/* The place of the row that a widget in it belongs to; GTK_INVALID_LIST_POSITION: of none. */
guint                tr_comparison_cells_find_row         (TrComparisonCells        *self,
                                                           GtkWidget                *widget);
/* GTK would make a column as wide as its title: a long name takes what there is. */
void                 tr_comparison_shorten_titles         (GtkWidget                *view);
/* "A Quay crescents" (transfer full) */
char                *tr_comparison_dup_dough_name         (const TrTrial            *trial,
                                                           guint                     dough);

G_END_DECLS
