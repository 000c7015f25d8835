/* bench.c: what a rolled-out size breaks on this bench
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Worktop, width of the rollers, and how far they open and close. Limits are
 * judged to a hair, so that 900 mm fits on 900 mm.
 */

#include "lamination.h"

#include "measure.h"

static TrBreaks
check_length (const TrBench *bench,
              double         along_mm,
              double         across_mm)
{
  TrBreaks breaks = 0;

  if (along_mm > bench->worktop_mm[0] * (1 + TR_HAIR))
    breaks |= TR_BREAK_WORKTOP_LENGTH;
  if (across_mm > bench->worktop_mm[1] * (1 + TR_HAIR))
    breaks |= TR_BREAK_WORKTOP_WIDTH;
  if (across_mm > bench->roll_width_max_mm * (1 + TR_HAIR))    /* NaN: no rollers, never */
    breaks |= TR_BREAK_ROLL_WIDTH;

  return breaks;
}

static TrBreaks
check_thickness (const TrBench *bench,
                 double         thickness_mm)
{
  TrBreaks breaks = 0;

  if (!tr_is_written (bench->roll_width_max_mm))
    return 0;
  if (thickness_mm < bench->roll_thickness_min_mm * (1 - TR_HAIR))
    breaks |= TR_BREAK_ROLL_THICKNESS_MIN;
  if (thickness_mm > bench->roll_thickness_max_mm * (1 + TR_HAIR))
    breaks |= TR_BREAK_ROLL_THICKNESS_MAX;

  return breaks;
}

int
tr_breaks_count (TrBreaks breaks)
{
  int count = 0;

  for (guint rest = breaks; rest != 0; rest &= rest - 1)
    count++;

  return count;
}

TrBreaks
tr_bench_check_sheet (const TrBench *bench,
                      const TrSize  *rolled,
                      gboolean      *rotated)
{
  TrBreaks straight = check_length (bench, rolled->mm[0], rolled->mm[1]);
  TrBreaks turned = check_length (bench, rolled->mm[1], rolled->mm[0]);
  gboolean is_turned = tr_breaks_count (turned) < tr_breaks_count (straight);

  if (rotated != NULL)
    *rotated = is_turned;

  return (is_turned ? turned : straight) | check_thickness (bench, rolled->mm[2]);
}

TrBreaks
tr_bench_check_turn (const TrBench *bench,
                     const TrSize  *rolled)
{
  if (!tr_is_written (bench->roll_width_max_mm))
    return tr_bench_check_sheet (bench, rolled, NULL);

  return check_length (bench, rolled->mm[0], rolled->mm[1]) | check_thickness (bench, rolled->mm[2]);
}
