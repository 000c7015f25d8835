/* scaling.c: weights as the scale can show them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Largest remainder: every weight is rounded down to the step, and the steps
 * still missing from the rounded sum go to those that lost most. What weighs
 * little and matters much (leaven, salt, malt) is a class of its own on the
 * fine scale; what is brushed on or filled in is rounded by itself.
 */

#include "formula.h"

#define FINE_LIMIT_G 20.0

typedef enum { CLASS_COARSE, CLASS_FINE, N_CLASSES, CLASS_ALONE } Class;

typedef struct { guint index; double remainder; } Share;

gboolean
tr_line_is_fine (const TrLineFigures *line)
{
  if (!line->known || !(line->grams < FINE_LIMIT_G))
    return FALSE;

  return line->ingredient.role == TR_ROLE_LEAVEN || line->ingredient.role == TR_ROLE_SALT ||
         tr_ingredient_is_like (&line->ingredient, "malt-") ||
         tr_ingredient_is_like (&line->ingredient, "syrup-malt");
}

static Class
class_of (const TrLineFigures *line)
{
  if (line->line->stage == TR_STAGE_FINISH)
    return CLASS_ALONE;

  return tr_line_is_fine (line) ? CLASS_FINE : CLASS_COARSE;
}

static int
compare_remainders (gconstpointer a,
                    gconstpointer b)
{
  const Share *one = a, *other = b;

  if (one->remainder > other->remainder || one->remainder < other->remainder)
    return one->remainder > other->remainder ? -1 : 1;

  return one->index < other->index ? -1 : one->index > other->index;
}

/* A sum such as 0.1 + 0.2 must not fall short of its last step. */
static double
floor_steps (double grams,
             double step)
{
  return floor (grams / step + 1e-9);
}

static double
round_to_step (double grams,
               double step)
{
  return step > 0 ? round (grams / step) * step : grams;
}

static void
round_class (const TrFormula *formula,
             Class            class,
             double           step,
             double          *rounded)
{
  g_autoptr (GArray) shares = g_array_new (FALSE, FALSE, sizeof (Share));
  double sum = 0, given = 0;

  for (guint i = 0; i < formula->lines->len; i++)
    {
      const TrLineFigures *line = tr_formula_get_line (formula, i);

      if (class_of (line) != class || isnan (line->grams))
        continue;

      double steps = floor_steps (line->grams, step);
      Share share = { i, line->grams / step - steps };

      sum += line->grams;
      given += steps;
      rounded[i] = steps * step;
      g_array_append_val (shares, share);
    }

  g_array_sort (shares, compare_remainders);
  double missing = round (sum / step) - given;
  for (guint i = 0; i < shares->len && i < missing; i++)
    {
      guint index = g_array_index (shares, Share, i).index;

      rounded[index] = (floor_steps (tr_formula_get_line (formula, index)->grams, step) + 1) * step;
    }
}

void
tr_formula_round_for_scale (const TrFormula *formula,
                            const TrBench   *bench,
                            double          *rounded)
{
  const double steps[N_CLASSES] = { bench->scale_step_g, bench->fine_scale_step_g };

  for (guint i = 0; i < formula->lines->len; i++)
    {
      const TrLineFigures *line = tr_formula_get_line (formula, i);
      gboolean is_fine = tr_line_is_fine (line);

      rounded[i] = round_to_step (line->grams, steps[is_fine ? CLASS_FINE : CLASS_COARSE]);
    }

  for (guint class = 0; class < N_CLASSES; class++)
    if (steps[class] > 0)
      round_class (formula, class, steps[class], rounded);
}
