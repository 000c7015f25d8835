/* moved.c: what moving a line to another stage does to the weights
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "moved.h"

#include "balance-private.h"

/* Less is rounding. */
#define LEAST_G 1e-6

/* Where the line stood before. */
static guint
get_old_index (const TrDough *after,
               guint          index,
               guint          from)
{
  if (index + 1 == after->lines->len)
    return from;

  return index < from ? index : index + 1;
}

/* Of every line, or of those that are not; returns how many. */
static guint
compare (const TrDoughFigures *before,
         const TrDough        *after,
         guint                 from,
         TrDough              *rewritten)
{
  TrFormula formula;
  guint n = 0;

  tr_formula_compute (after, before->pantry, &formula);
  for (guint i = 0; i < after->lines->len; i++)
    {
      double was = tr_look_get_line (before, get_old_index (after, i, from))->written_grams;
      double is = tr_formula_get_line (&formula, i)->written_grams;
      const TrMover mover = { .index = i, .unit = TR_UNIT_G, .rest_unit = TR_N_UNITS };

      if (!isfinite (was) || fabs (was - is) <= LEAST_G)
        continue;
      n++;
      if (rewritten != NULL)
        tr_balance_write_mover (rewritten, &mover, was);
    }
  tr_formula_clear (&formula);

  return n;
}

gboolean
tr_moved_line_changes_weights (const TrDoughFigures *before,
                               const TrDough        *after,
                               guint                 from)
{
  g_return_val_if_fail (before != NULL && after != NULL, FALSE);
  g_return_val_if_fail (before->formula.lines->len == after->lines->len && from < after->lines->len, FALSE);

  return compare (before, after, from, NULL) > 0;
}

void
tr_moved_line_keep_weights (const TrDoughFigures *before,
                            TrDough              *after,
                            guint                 from)
{
  g_return_if_fail (before != NULL && after != NULL);
  g_return_if_fail (before->formula.lines->len == after->lines->len && from < after->lines->len);

  compare (before, after, from, after);
}
