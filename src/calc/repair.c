/* repair.c: what one ratio mends of what was found
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "repair.h"

#include "measure.h"

/* A band this wide is met at whole percents. */
#define WIDE_BAND 8.0
#define NARROW_STEP 0.5

/* The nearest round value that rounding the amounts cannot carry out again. */
static double
nearest_inside (const TrBand *band,
                gboolean      is_over)
{
  double step = band->high - band->low >= WIDE_BAND ? 1 : NARROW_STEP;
  double target = is_over ? step * ceil ((band->high - TR_RATIO_TOLERANCE) / step - 1)
                          : step * floor ((band->low + TR_RATIO_TOLERANCE) / step + 1);

  return CLAMP (target, band->low, band->high);
}

static double
middle_of (const TrBand *band,
           TrRatio       ratio)
{
  double step = tr_ratio_get_step (ratio);

  return step * round ((band->low + band->high) / 2 / step);
}

static int
ratio_of (const TrFinding *finding)
{
  if (finding->id == TR_FINDING_SALT)
    return TR_RATIO_SALT;
  if (finding->id == TR_FINDING_LEGAL_MINIMUM)
    return TR_RATIO_ROLL_IN_OF_DOUGH;
  if (finding->id == TR_FINDING_BAND)
    for (int ratio = 0; ratio < TR_N_RATIOS; ratio++)
      if (g_strcmp0 (finding->name, tr_ratio_key ((TrRatio) ratio)) == 0)
        return ratio;

  return -1;
}

/* NaN: none. */
static double
target_of (const TrDoughFigures *figures,
           const TrFinding      *finding,
           TrRatio               ratio)
{
  double now = tr_ratio_get (figures, ratio);
  TrBand band;

  if (finding->id == TR_FINDING_LEGAL_MINIMUM)
    {
      double step = tr_ratio_get_step (ratio);

      /* Every line of the stage grows alike, and its fat with it. */
      return step * ceil ((now * finding->limit / finding->value + TR_RATIO_TOLERANCE) / step);
    }
  if (!tr_ratio_get_band (figures, ratio, &band))
    return NAN;

  return ratio == TR_RATIO_SALT ? middle_of (&band, ratio) : nearest_inside (&band, finding->value > band.high);
}

/* What cannot be moved all the way is moved as far as it goes, if that mends it. */
static gboolean
bring_within_reach (const TrDoughFigures *figures,
                    const TrFinding      *finding,
                    const TrRange        *reach,
                    TrRepair             *repair)
{
  TrBand band;

  repair->target = CLAMP (repair->target, reach->min, reach->max);
  if (finding->id == TR_FINDING_LEGAL_MINIMUM)
    return repair->target >= tr_ratio_get (figures, repair->ratio) * finding->limit / finding->value;

  return tr_ratio_get_band (figures, repair->ratio, &band)
         && repair->target >= band.low - TR_HAIR && repair->target <= band.high + TR_HAIR;
}

gboolean
tr_finding_get_repair (const TrDoughFigures *figures,
                       const TrFinding      *finding,
                       TrRepair             *repair)
{
  TrRatioMoves moves;
  TrBand band;

  g_return_val_if_fail (figures != NULL && finding != NULL && repair != NULL, FALSE);

  int ratio = ratio_of (finding);

  if (ratio < 0)
    return FALSE;

  *repair = (TrRepair) { .ratio = (TrRatio) ratio, .target = target_of (figures, finding, (TrRatio) ratio) };
  if (!isfinite (repair->target))
    return FALSE;

  tr_ratio_get_moves (figures, repair->ratio, &moves);
  if (moves.can_move)
    return bring_within_reach (figures, finding, &moves.reach, repair);

  repair->adds_line = TRUE;
  repair->target = tr_ratio_get_usual (repair->ratio);

  return !moves.has_line && finding->id != TR_FINDING_LEGAL_MINIMUM && repair->ratio != TR_RATIO_PREFERMENTED
         && tr_ratio_get_band (figures, repair->ratio, &band) && finding->value < band.low
         && repair->target >= band.low && repair->target <= band.high;
}

gboolean
tr_repair_apply (TrDough               *dough,
                 const TrDoughFigures  *figures,
                 const TrRepair        *repair,
                 GError               **error)
{
  g_return_val_if_fail (repair != NULL, FALSE);

  if (repair->adds_line)
    return tr_ratio_add_line (dough, figures, repair->ratio, error) >= 0;

  return tr_ratio_set (dough, figures, repair->ratio, repair->target, error);
}
