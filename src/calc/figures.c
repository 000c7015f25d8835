/* figures.c: what follows from a trial
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The order of computing. Ratios come first, since they do not depend on the
 * batch; then the sheet, which may decide the mass (batch by pieces) or be
 * decided by it; then every mass, the piece, the layers and the findings.
 */

#include "figures.h"

#include "cut.h"
#include "findings.h"
#include "formula.h"
#include "lamination.h"
#include "rests.h"
#include "water.h"

static const char *const break_ids[TR_N_BREAKS] = {
  "worktop-length", "worktop-width", "roll-width", "roll-thickness-min", "roll-thickness-max"
};

const char *
tr_break_id (TrBreaks one)
{
  for (guint i = 0; i < TR_N_BREAKS; i++)
    if ((guint) one == 1u << i)
      return break_ids[i];

  g_return_val_if_reached (NULL);
}

/* Batch */

static void
add_no_pieces_written (TrFormula *formula)
{
  TrProblem *problem = g_new0 (TrProblem, 1);

  problem->id = TR_PROBLEM_NO_PIECES_WRITTEN;
  problem->where = g_strdup ("/pieces_written");
  problem->value[0] = problem->value[1] = NAN;
  g_ptr_array_add (formula->problems, problem);
}

static double
ratio (double wanted,
       double written)
{
  double scale = wanted / written;

  return written > 0 && isfinite (scale) ? scale : NAN;
}

/* For a batch whose mass does not come from its sheets. */
static double
scale_of_batch (const TrDough *dough,
                TrFormula     *formula)
{
  switch (dough->batch_by)
    {
    case TR_BATCH_FLOUR_G:
      return ratio (dough->batch_value, formula->written_flour_g);
    case TR_BATCH_DOUGH_G:
      return ratio (dough->batch_value, formula->written_dough_g);
    case TR_BATCH_TOTAL_G:
      return ratio (dough->batch_value, formula->written_total_g);
    case TR_BATCH_PIECES:
      if (dough->pieces_written > 0)
        return dough->batch_value / dough->pieces_written;
      add_no_pieces_written (formula);
      return NAN;
    case TR_BATCH_WRITTEN:
    case TR_N_BATCHES:
    default:
      return 1;
    }
}

static void
compute_sheet (TrDoughFigures *figures)
{
  const TrDough *dough = figures->dough;
  double fat_layers = dough->lock_in != NULL ? tr_dough_count_fat_layers (dough) : NAN;
  double fat_volume_fraction, density_g_ml;

  if (dough->cut == NULL)
    return;

  tr_mix_volume (dough, &figures->formula, &fat_volume_fraction, &density_g_ml);
  figures->has_sheet = tr_sheet_compute (dough, figures->bench, density_g_ml, figures->formula.total_g,
                                         fat_layers, &figures->sheet);
}

/* With a cut, a batch by pieces is as much as its sheets weigh, and what is
 * lost on the way. */
static void
compute_batch (TrDoughFigures *figures)
{
  const TrDough *dough = figures->dough;
  TrFormula *formula = &figures->formula;

  if (dough->batch_by != TR_BATCH_PIECES || dough->cut == NULL)
    {
      tr_formula_apply_scale (formula, scale_of_batch (dough, formula));
      compute_sheet (figures);
      return;
    }

  double kept = 1 - dough->handling_loss_percent / 100;
  double total_g = NAN;

  compute_sheet (figures);
  if (figures->has_sheet && kept > 0)
    total_g = figures->sheet.sheets * figures->sheet.mass_g / kept;
  tr_formula_apply_scale (formula, ratio (total_g, formula->written_total_g));
}

/* One dough */

static TrDoughFigures *
compute_dough (const TrTrial *trial,
               TrDough       *dough)
{
  TrDoughFigures *figures = g_new0 (TrDoughFigures, 1);

  g_atomic_ref_count_init (&figures->ref_count);
  figures->dough = tr_dough_ref (dough);
  figures->bench = tr_bench_ref (trial->bench);
  figures->pantry = tr_pantry_ref (trial->pantry);

  tr_formula_compute (dough, trial->pantry, &figures->formula);
  compute_batch (figures);

  const TrSheet *sheet = figures->has_sheet ? &figures->sheet : NULL;
  tr_formula_scale_finish (&figures->formula, dough, tr_dough_count_pieces (dough, sheet));
  tr_piece_compute (dough, &figures->formula, sheet, &figures->piece);

  figures->has_lamination = dough->lock_in != NULL;
  if (figures->has_lamination)
    tr_lamination_compute (dough, trial->bench, &figures->formula, sheet, &figures->lamination);

  figures->has_water = tr_water_compute (dough, trial->bench, &figures->formula, &figures->water);
  figures->rests = tr_rests_compute (figures);
  figures->allergens = tr_formula_dup_allergens (&figures->formula);
  figures->findings = tr_findings_compute (figures);

  return figures;
}

TrDoughFigures *
tr_dough_figures_ref (TrDoughFigures *figures)
{
  g_atomic_ref_count_inc (&figures->ref_count);
  return figures;
}

void
tr_dough_figures_unref (TrDoughFigures *figures)
{
  if (figures == NULL || !g_atomic_ref_count_dec (&figures->ref_count))
    return;

  tr_formula_clear (&figures->formula);
  if (figures->has_lamination)
    tr_lamination_clear (&figures->lamination);
  g_array_unref (figures->rests);
  g_strfreev (figures->allergens);
  g_ptr_array_unref (figures->findings);
  tr_dough_unref (figures->dough);
  tr_bench_unref (figures->bench);
  tr_pantry_unref (figures->pantry);
  g_free (figures);
}

/* All doughs */

static gboolean
is_figures_of (const TrDoughFigures *figures,
               const TrTrial        *trial,
               const TrDough        *dough)
{
  return figures->dough == dough && figures->bench == trial->bench && figures->pantry == trial->pantry;
}

/* Usually at the same place; elsewhere when doughs were added, removed or
 * moved. */
static TrDoughFigures *
find_previous (const TrFigures *previous,
               const TrTrial   *trial,
               guint            index)
{
  const TrDough *dough = tr_trial_get_dough (trial, index);

  if (previous == NULL)
    return NULL;

  if (index < previous->doughs->len && is_figures_of (g_ptr_array_index (previous->doughs, index), trial, dough))
    return g_ptr_array_index (previous->doughs, index);

  for (guint i = 0; i < previous->doughs->len; i++)
    if (is_figures_of (g_ptr_array_index (previous->doughs, i), trial, dough))
      return g_ptr_array_index (previous->doughs, i);

  return NULL;
}

TrFigures *
tr_figures_compute (const TrTrial   *trial,
                    const TrFigures *previous)
{
  g_return_val_if_fail (trial != NULL, NULL);

  TrFigures *figures = g_new0 (TrFigures, 1);

  g_atomic_ref_count_init (&figures->ref_count);
  figures->trial = tr_trial_ref (trial);
  figures->doughs = g_ptr_array_new_full (trial->doughs->len, (GDestroyNotify) tr_dough_figures_unref);
  for (guint i = 0; i < trial->doughs->len; i++)
    {
      TrDoughFigures *same = find_previous (previous, trial, i);

      g_ptr_array_add (figures->doughs, same != NULL ? tr_dough_figures_ref (same)
                                                     : compute_dough (trial, tr_trial_get_dough (trial, i)));
    }

  return figures;
}

TrFigures *
tr_figures_ref (const TrFigures *figures)
{
  TrFigures *self = (TrFigures *) figures;

  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

void
tr_figures_unref (TrFigures *figures)
{
  if (figures == NULL || !g_atomic_ref_count_dec (&figures->ref_count))
    return;

  g_ptr_array_unref (figures->doughs);
  tr_trial_unref (figures->trial);
  g_free (figures);
}

const TrDoughFigures *
tr_figures_get_dough (const TrFigures *figures,
                      guint            index)
{
  g_return_val_if_fail (index < figures->doughs->len, NULL);
  return g_ptr_array_index (figures->doughs, index);
}

char *
tr_figures_dup_pointer (guint       index,
                        const char *where)
{
  return g_strdup_printf ("/doughs/%u%s", index, where != NULL ? where : "");
}
