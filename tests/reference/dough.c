/* dough.c: doughs for the checks against the world, written in one line
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "dough.h"

TrTrial *
ref_trial_new (void)
{
  TrTrial *trial = tr_trial_new ();
  TrBench *bench = tr_trial_own_bench (trial);

  bench->worktop_mm[0] = bench->worktop_mm[1] = 1e5;
  bench->roll_width_max_mm = NAN;
  bench->roll_thickness_min_mm = 0.1;
  bench->roll_thickness_max_mm = 1e4;

  g_ptr_array_add (trial->doughs, tr_dough_new ("d1"));
  ref_trial_get_dough (trial)->handling_loss_percent = 0;
  ref_trial_get_dough (trial)->batch_by = TR_BATCH_WRITTEN;

  return trial;
}

TrDough *
ref_trial_get_dough (TrTrial *trial)
{
  return tr_trial_get_dough (trial, 0);
}

void
ref_dough_add_line (TrDough    *dough,
                    TrStage     stage,
                    const char *ingredient,
                    const char *amount)
{
  g_ptr_array_add (dough->lines, tr_line_new (stage, ingredient, amount));
}

void
ref_dough_laminate (TrDough    *dough,
                    TrStyle     style,
                    const char *folds)
{
  dough->lock_in = tr_lock_in_new ();
  dough->lock_in->style = style;

  for (const char *fold = folds; *fold != '\0'; fold++)
    g_ptr_array_add (dough->turns, tr_turn_new (g_ascii_digit_value (*fold), 8));
}

void
ref_dough_cut (TrDough *dough,
               double   thickness_mm)
{
  dough->cut = tr_cut_new ();
  dough->cut->shape = TR_SHAPE_SQUARE;
  dough->cut->side_mm = 100;
  dough->cut->thickness_mm = thickness_mm;
  dough->cut->piece_mass_g = NAN;
  dough->cut->trim_mm = 0;
  dough->cut->shrink_percent = 0;
}

TrFigures *
ref_figures_new (TrTrial *trial)
{
  TrFigures *figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);

  for (guint i = 0; i < dough->formula.problems->len; i++)
    {
      const TrProblem *problem = g_ptr_array_index (dough->formula.problems, i);

      g_error ("problem %d at %s: %s", (int) problem->id, problem->where, problem->text);
    }

  return figures;
}
