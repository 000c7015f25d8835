/* total.c: the total formula and the final dough, as the trade prints them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "total.h"

#include <string.h>

#include "formula.h"
#include "look.h"

/* Two places are kept for the dough and the roll-in. */
#define MAX_PREFERMENTS (TR_MAX_TOTAL_COLUMNS - 2)

/* Columns */

static gboolean
is_counted (const TrLineFigures *line)
{
  return tr_line_is_in_mix (line) && line->known && isfinite (line->grams);
}

/* One for which there was no room any more goes to the last preferment.
 * `n_columns`: there is none. */
static guint
find_column (const TrTotal *total,
             const TrLine  *line)
{
  guint last = total->n_columns;

  for (guint i = 0; i < total->n_columns; i++)
    {
      const TrTotalColumn *column = &total->columns[i];

      if (column->stage != line->stage)
        continue;
      if (line->stage != TR_STAGE_PREFERMENT || g_strcmp0 (column->group, line->group) == 0)
        return i;
      if (i + 1 == MAX_PREFERMENTS)
        last = i;
    }

  return last;
}

/* In the order of work, whatever the order of the lines. */
static void
add_columns (TrTotal              *total,
             const TrDoughFigures *figures)
{
  for (guint stage = TR_STAGE_PREFERMENT; stage <= TR_STAGE_ROLL_IN; stage++)
    for (guint i = 0; i < figures->formula.lines->len; i++)
      {
        const TrLine *line = tr_formula_get_line (&figures->formula, i)->line;

        if (line->stage != (TrStage) stage || find_column (total, line) < total->n_columns)
          continue;
        total->columns[total->n_columns++] = (TrTotalColumn) {
          .stage = line->stage, .group = line->stage == TR_STAGE_PREFERMENT ? line->group : NULL
        };
      }
}

/* Rows */

static TrTotalRow *
need_row (TrTotal            *total,
          const TrIngredient *ingredient)
{
  TrTotalRow row = { .id = ingredient->id, .ingredient = *ingredient };

  for (guint i = 0; i < total->rows->len; i++)
    {
      TrTotalRow *known = &g_array_index (total->rows, TrTotalRow, i);

      if (g_str_equal (known->id, ingredient->id))
        return known;
    }

  g_array_append_val (total->rows, row);

  return &g_array_index (total->rows, TrTotalRow, total->rows->len - 1);
}

static void
add_grams (TrTotal            *total,
           const TrIngredient *ingredient,
           guint               column,
           double              grams)
{
  TrTotalRow *row = need_row (total, ingredient);

  row->grams[column] += grams;
  row->total_g += grams;
}

/* `step_g` 0: a starter's flour and water are not rounded. */
static void
add_line (TrTotal             *total,
          const TrLineFigures *line,
          double               grams,
          double               step_g)
{
  guint column = find_column (total, line->line);

  total->columns[column].grams += grams;
  total->total_g += grams;
  if (!tr_line_is_starter (line))
    {
      add_grams (total, &line->ingredient, column, grams);
      return;
    }

  double flour_g = tr_ingredient_flour_share (&line->ingredient, line->line->hydration_percent) * grams;

  if (step_g > 0)
    flour_g = round (flour_g / step_g) * step_g;
  add_grams (total, tr_builtin_find (TR_STARTER_FLOUR), column, flour_g);
  add_grams (total, tr_builtin_find ("water"), column, grams - flour_g);
}

/* Flours, then water, then the rest. */
static int
rank_of (const TrTotalRow *row)
{
  if (row->ingredient.is_flour)
    return 0;

  return g_str_equal (row->ingredient.base_id, "water") ? 1 : 2;
}

static void
sort_rows (GArray *rows)
{
  g_autoptr (GArray) sorted = g_array_sized_new (FALSE, FALSE, sizeof (TrTotalRow), rows->len);

  for (int rank = 0; rank <= 2; rank++)
    for (guint i = 0; i < rows->len; i++)
      if (rank_of (&g_array_index (rows, TrTotalRow, i)) == rank)
        g_array_append_val (sorted, g_array_index (rows, TrTotalRow, i));

  if (rows->len > 0)
    memcpy (rows->data, sorted->data, rows->len * sizeof (TrTotalRow));
}

static void
clear_grams (TrTotal *total)
{
  total->total_g = 0;
  for (guint i = 0; i < total->n_columns; i++)
    total->columns[i].grams = 0;
  for (guint i = 0; i < total->rows->len; i++)
    {
      TrTotalRow *row = &g_array_index (total->rows, TrTotalRow, i);

      memset (row->grams, 0, sizeof row->grams);
      row->total_g = 0;
    }
}

void
tr_total_compute (const TrDoughFigures *figures,
                  TrTotal              *total)
{
  const TrFormula *formula = &figures->formula;

  g_return_if_fail (figures != NULL);

  *total = (TrTotal) { .rows = g_array_new (FALSE, FALSE, sizeof (TrTotalRow)) };
  add_columns (total, figures);
  for (guint i = 0; i < formula->lines->len; i++)
    if (is_counted (tr_formula_get_line (formula, i)))
      add_line (total, tr_formula_get_line (formula, i), tr_formula_get_line (formula, i)->grams, 0);

  for (guint i = 0; i < total->rows->len; i++)
    {
      TrTotalRow *row = &g_array_index (total->rows, TrTotalRow, i);

      row->percent = formula->flour_g > 0 ? 100 * row->total_g / formula->flour_g : NAN;
    }
  total->percent = formula->flour_g > 0 ? 100 * total->total_g / formula->flour_g : NAN;
  sort_rows (total->rows);
}

void
tr_total_compute_for_scale (const TrDoughFigures *figures,
                            const TrBench        *bench,
                            TrTotal              *total)
{
  const TrFormula *formula = &figures->formula;
  g_autofree double *rounded = g_new0 (double, MAX (1, formula->lines->len));

  g_return_if_fail (bench != NULL);

  tr_total_compute (figures, total);
  tr_formula_round_for_scale (formula, bench, rounded);
  clear_grams (total);
  for (guint i = 0; i < formula->lines->len; i++)
    if (is_counted (tr_formula_get_line (formula, i)))
      add_line (total, tr_formula_get_line (formula, i), rounded[i], bench->scale_step_g);
}

void
tr_total_clear (TrTotal *total)
{
  g_clear_pointer (&total->rows, g_array_unref);
}
