/* formula.h: weights, baker's percentages, what a piece contains
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

static inline TrLineFigures *
tr_formula_get_line (const TrFormula *formula,
                     guint            index)
{
  return &g_array_index (formula->lines, TrLineFigures, index);
}

static inline gboolean
tr_line_is_in_mix (const TrLineFigures *line)
{
  return line->line->stage != TR_STAGE_FINISH;
}

static inline gboolean
tr_line_is_in_dough (const TrLineFigures *line)
{
  return line->line->stage == TR_STAGE_PREFERMENT || line->line->stage == TR_STAGE_DOUGH;
}

/* Weighs every line as written, solves the percentages, fills everything of
 * `formula` that does not depend on the batch; scale is 1 and the masses are
 * the written ones. */
void   tr_formula_compute     (const TrDough  *dough,
                               const TrPantry *pantry,
                               TrFormula      *formula);
/* Multiplies every mass of the mix by `scale` (NaN: masses become NaN). Finish
 * lines: written × count / pieces_written, see tr_formula_scale_finish. */
void   tr_formula_apply_scale (TrFormula *formula,
                               double     scale);
void   tr_formula_scale_finish (TrFormula     *formula,
                                const TrDough *dough,
                                double         count);
void   tr_formula_clear       (TrFormula *formula);

/* Pieces of the batch: those the sheets give; without a cut the pieces wanted
 * or written. NaN: not known, or a cut that gives no sheet (`sheet` NULL). */
double tr_dough_count_pieces  (const TrDough *dough,
                               const TrSheet *sheet);
/* Needs the formula and its finish lines scaled, and the sheet (NULL: none). */
void   tr_piece_compute       (const TrDough   *dough,
                               const TrFormula *formula,
                               const TrSheet   *sheet,
                               TrPiece         *piece);
/* NaN: not known. Tap water that has none of its own costs nothing. */
double tr_line_get_price_per_kg (const TrLineFigures *line);

/* Sorted, distinct allergen ids of all lines, finish included. */
char **tr_formula_dup_allergens (const TrFormula *formula);

/* Weights for the scale: the mix is rounded to the bench's steps so that its
 * sum keeps (largest remainder; lines of leaven, salt and malt under 20 g to
 * the fine step, each class summing to its own rounded sum); finish lines each
 * by themselves. `rounded` has one number a line of the formula; NaN where a
 * line is not weighed. */
void   tr_formula_round_for_scale (const TrFormula *formula,
                                   const TrBench   *bench,
                                   double          *rounded);
gboolean tr_line_is_fine      (const TrLineFigures *line);   /* goes to the fine scale */

G_END_DECLS
