/* passes.c: from thick to thin in so many passes
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "passes.h"

#include "lamination.h"
#include "measure.h"

/* Rounding a gap up makes the next pass a little harder: further passes are tried
 * before the dial's step is given up. */
#define FURTHER_TRIES 6

/* Up to what a dial shows; where that would not be thinner, as it is. */
static double
round_gap (double gap_mm,
           double before_mm)
{
  double rounded = ceil (gap_mm / TR_PASS_STEP_MM - TR_HAIR) * TR_PASS_STEP_MM;

  return rounded < before_mm - TR_HAIR ? rounded : gap_mm;
}

/* FALSE: one of them takes more than the share. */
static gboolean
fill_passes (GArray  *gaps,
             double   from_mm,
             double   to_mm,
             guint    n,
             double   kept,
             gboolean rounds)
{
  double before = from_mm;

  g_array_set_size (gaps, 0);
  for (guint i = 1; i <= n; i++)
    {
      double gap = i == n ? to_mm : from_mm * pow (to_mm / from_mm, (double) i / n);

      if (rounds && i < n)
        gap = MAX (round_gap (gap, before), to_mm);
      if (gap < before * kept * (1 - TR_HAIR))
        return FALSE;
      if (i < n && gap <= to_mm * (1 + TR_HAIR))
        continue;                /* rounded onto the last */
      g_array_append_val (gaps, gap);
      before = gap;
    }

  return TRUE;
}

GArray *
tr_passes_new (double from_mm,
               double to_mm,
               double reduction_percent)
{
  GArray *gaps = g_array_new (FALSE, FALSE, sizeof (double));
  double kept = 1 - reduction_percent / 100;
  guint n;

  if (!(tr_is_positive (to_mm) && to_mm < from_mm * (1 - TR_HAIR) && kept > 0 && kept < 1 && isfinite (from_mm)))
    return gaps;

  n = (guint) MAX (1, ceil (log (from_mm / to_mm) / -log (kept) - TR_HAIR));
  for (guint i = 0; i < FURTHER_TRIES; i++)
    if (fill_passes (gaps, from_mm, to_mm, n + i, kept, TRUE))
      return gaps;
  fill_passes (gaps, from_mm, to_mm, n, kept, FALSE);

  return gaps;
}

static void
add_leg (TrPasses      *passes,
         const TrBench *bench,
         gboolean       is_across,
         double         from_mm,
         double         to_mm)
{
  double opening = tr_is_written (bench->roll_width_max_mm) ? bench->roll_thickness_max_mm : INFINITY;
  TrPassLeg leg = { is_across, from_mm, NAN, NULL };

  if (!(to_mm < from_mm * (1 - TR_HAIR)))
    return;
  if (from_mm > opening * (1 + TR_HAIR))
    leg.pin_mm = MAX (opening, to_mm);
  leg.gaps_mm = tr_passes_new (MIN (from_mm, opening), to_mm, bench->pass_reduction_percent);
  passes->legs[passes->n_legs++] = leg;
}

/* What is stretched less is rolled first; the volume stays. */
static void
add_legs (TrPasses      *passes,
          const TrBench *bench,
          double         from_mm,
          double         to_mm,
          double         longer,
          double         wider,
          gboolean       wider_first)
{
  double first = wider_first ? wider : longer;
  double between = first > 1 + TR_HAIR ? MAX (from_mm / first, to_mm) : from_mm;
  double second = wider_first ? longer : wider;

  if (!(second > 1 + TR_HAIR))
    between = to_mm;             /* all in the first direction */
  add_leg (passes, bench, wider_first, from_mm, between);
  add_leg (passes, bench, !wider_first, between, to_mm);
}

void
tr_passes_init_turn (TrPasses             *passes,
                     const TrDoughFigures *figures,
                     guint                 turn)
{
  *passes = (TrPasses) { 0 };
  if (!figures->has_lamination || turn >= figures->lamination.steps->len)
    return;

  const TrTurnFigures *step = &g_array_index (figures->lamination.steps, TrTurnFigures, turn);
  double longer = step->rolled_mm.mm[0] / step->start_mm.mm[0], wider = step->rolled_mm.mm[1] / step->start_mm.mm[1];

  if (isnan (longer) || isnan (wider))
    return;

  add_legs (passes, figures->bench, step->start_mm.mm[2], step->rolled_mm.mm[2], longer, wider, wider > 1 + TR_HAIR && wider < longer);
}

void
tr_passes_init_sheet (TrPasses             *passes,
                      const TrDoughFigures *figures)
{
  *passes = (TrPasses) { 0 };
  if (!figures->has_lamination || !figures->lamination.has_to_sheet || !figures->has_sheet)
    return;

  const TrToSheet *to = &figures->lamination.to_sheet;

  if (isnan (to->stretch_length) || isnan (to->stretch_width))
    return;

  add_legs (passes, figures->bench, to->start_mm.mm[2], figures->sheet.rolled_mm.mm[2], to->stretch_length, to->stretch_width,
            g_strcmp0 (to->order, "width-first") == 0);
}

void
tr_passes_clear (TrPasses *passes)
{
  for (guint i = 0; i < passes->n_legs; i++)
    g_clear_pointer (&passes->legs[i].gaps_mm, g_array_unref);
  passes->n_legs = 0;
}
