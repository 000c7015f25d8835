/* figure-cell.h: one figure of one dough, with where it lies among the others
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A small scale and the number beside it. Where the doughs are held against one
 * of them, the number is the difference, and its share of that one's stands
 * behind it. Who cannot see it hears what it is of, the number and what is usual.
 */

#pragma once

#include <gtk/gtk.h>

#include "../picture/cell-scale.h"

G_BEGIN_DECLS

typedef struct {
  const TrComparable *comparable;
  TrCellScale scale;
  double value, reference;       /* reference NaN: the number is the value */
  gboolean has_band;
  TrBand band;
  gboolean is_equal;             /* the same in all doughs: said quietly */
  const char *dough;             /* "A Quay crescents" */
  const TrBench *bench;
} TrFigureContent;

#define TR_TYPE_FIGURE_CELL (tr_figure_cell_get_type ())
G_DECLARE_FINAL_TYPE (TrFigureCell, tr_figure_cell, TR, FIGURE_CELL, GtkWidget)

GtkWidget  *tr_figure_cell_new  (void);
/* NULL content: an empty cell. */
void        tr_figure_cell_show (TrFigureCell          *self,
                                 const TrFigureContent *content,
                                 const TrReader        *reader);
/* What is said of it to those who cannot see it; NULL: an empty cell. */
const char *tr_figure_cell_get_words (TrFigureCell     *self);
/* What stands in it: "11.2", "+1.3 +13 %". (transfer full) */
char       *tr_figure_cell_dup_text (TrFigureCell      *self);

G_END_DECLS
