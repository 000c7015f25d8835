/* lock-in.c: how the fat is enclosed, seen from above
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sizes of fat, dough and closed block from their volumes, for the five ways of
 * locking in, and which of these sizes cannot be. A size that cannot be is NaN.
 */

#include "lock-in.h"

#include "measure.h"

static const TrSize no_size = { { NAN, NAN, NAN } };

double
tr_dough_get_fat_density (const TrDough *dough)
{
  if (dough->lock_in != NULL && tr_is_positive (dough->lock_in->fat_density_g_ml))
    return dough->lock_in->fat_density_g_ml;

  return TR_FAT_DENSITY_G_ML;
}

/* Seen from above; f: fat l × w, r: rim, the fold where the dashes are.
 *
 *   half: the right half over the left          gate: both quarters to the middle
 *
 *      l + r       l + r                           l/2       l       l/2
 *   ┌───────────┬╌╌╌╌╌╌╌╌╌╌╌┐ ┐                  ┌──────╎───────────╎──────┐ ┐
 *   │ ┌────────┐╎           │ │                  │      ╎┌─────────┐╎      │ │
 *   │ │ f      │╎           │ w + 2r             │      ╎│ f       │╎      │ w + 2r
 *   │ └────────┘╎           │ │                  │      ╎└─────────┘╎      │ │
 *   └───────────┴╌╌╌╌╌╌╌╌╌╌╌┘ ┘                  └──────╎───────────╎──────┘ ┘
 *
 *   envelope: four corners to the middle         inverse: like half, the dough lies
 *                                                on the fat
 *          ╱╲   side √2·(s + 2r)
 *        ╱┌──┐╲                                  ┌───────────┬╌╌╌╌╌╌╌╌╌╌╌┐
 *       ╱ │f │ ╲   s × s                         │ ┌────────┐╎  fat      │
 *       ╲ │  │ ╱                                 │ │ dough  │╎           │
 *        ╲└──┘╱                                  │ └────────┘╎           │
 *          ╲╱                                    └───────────┴╌╌╌╌╌╌╌╌╌╌╌┘
 *
 *   letter: the fat on two thirds                from the side, p = (l + r)/2
 *
 *      p         p         p                     1  ████████████
 *   ┌─────────╎─────────╎─────────┐                 ▒▒▒▒▒▒╎▒▒▒▒▒▒╎▒▒▒▒▒▒
 *   │ ┌───────────────┐ ╎         │                                bare
 *   │ │ f             │ ╎  bare   │              2  the bare third over the fat first
 *   │ └───────────────┘ ╎         │                        ▒▒▒▒▒▒
 *   └─────────╎─────────╎─────────┘                 ██████ ██████
 *      2nd                 1st                      ▒▒▒▒▒▒╎▒▒▒▒▒▒
 *                                                3  then the other fat third on top
 *   (the other way round fat would lie on fat:      ▒▒▒▒▒▒
 *   one layer instead of two)                       ██████
 *                                                   ▒▒▒▒▒▒
 *                                                   ██████
 *                                                   ▒▒▒▒▒▒
 */

typedef struct {
  double fat_mm3, dough_mm3;     /* of one block, after loss */
  double fat_thickness_mm;
  double width_mm;               /* written; NaN: about square */
  double rim_mm;
} LockInInput;

/* Length and width of the three plans. */
typedef struct { double fat[2], dough[2], block[2]; } LockInPlan;

static void
plan_half (const LockInInput *in,
           double             width,
           double             length,
           LockInPlan        *plan)
{
  double r = in->rim_mm;

  *plan = (LockInPlan) {
    .fat = { length, width },
    .dough = { 2 * (length + r), width + 2 * r },
    .block = { length + r, width + 2 * r },
  };
}

static void
plan_gate (const LockInInput *in,
           double             width,
           double             length,
           LockInPlan        *plan)
{
  double r = in->rim_mm;

  *plan = (LockInPlan) {
    .fat = { length, width },
    .dough = { 2 * length, width + 2 * r },
    .block = { length, width + 2 * r },
  };
}

static void
plan_letter (const LockInInput *in,
             double             width,
             double             length,
             LockInPlan        *plan)
{
  double r = in->rim_mm;
  double panel = (length + r) / 2;

  *plan = (LockInPlan) {
    .fat = { length, width },
    .dough = { 3 * panel, width + 2 * r },
    .block = { panel, width + 2 * r },
  };
}

static void
plan_envelope (const LockInInput *in,
               LockInPlan        *plan)
{
  double side = sqrt (in->fat_mm3 / in->fat_thickness_mm);
  double closed = side + 2 * in->rim_mm;

  *plan = (LockInPlan) {
    .fat = { side, side },
    .dough = { G_SQRT2 * closed, G_SQRT2 * closed },
    .block = { closed, closed },
  };
}

/* The fat sheet, closed like a book, is the block's plan. */
static void
plan_inverse (const LockInInput *in,
              LockInPlan        *plan)
{
  double r = in->rim_mm;
  double closed_mm2 = in->fat_mm3 / (2 * in->fat_thickness_mm);
  double width = tr_is_written (in->width_mm) ? in->width_mm : sqrt (closed_mm2);
  double length = closed_mm2 / (width + 2 * r) - r;

  *plan = (LockInPlan) {
    .fat = { 2 * (length + r), width + 2 * r },
    .dough = { length, width },
    .block = { length + r, width + 2 * r },
  };
}

static void
plan_lock_in (TrStyle            style,
              const LockInInput *in,
              LockInPlan        *plan)
{
  double fat_mm2 = in->fat_mm3 / in->fat_thickness_mm;
  double about_square = sqrt (style == TR_STYLE_LETTER ? fat_mm2 / 2 : fat_mm2);
  double width = tr_is_written (in->width_mm) ? in->width_mm : about_square;
  double length = fat_mm2 / width;

  switch (style)
    {
    case TR_STYLE_GATE:
      plan_gate (in, width, length, plan);
      break;
    case TR_STYLE_ENVELOPE:
      plan_envelope (in, plan);
      break;
    case TR_STYLE_LETTER:
      plan_letter (in, width, length, plan);
      break;
    case TR_STYLE_INVERSE:
      plan_inverse (in, plan);
      break;
    case TR_STYLE_HALF:
    case TR_N_STYLES:
    default:
      plan_half (in, width, length, plan);
      break;
    }
}

/* Share of the closed block's plan under which there is no fat. */
static double
rim_share (TrStyle           style,
           const LockInPlan *plan)
{
  double fat_mm2 = plan->fat[0] * plan->fat[1];
  double closed_mm2 = plan->block[0] * plan->block[1];

  if (style == TR_STYLE_INVERSE)
    return 0;
  if (style == TR_STYLE_LETTER)
    return 1 - fat_mm2 / (2 * closed_mm2);

  return 1 - fat_mm2 / closed_mm2;
}

static TrSize
spread (const double plan[2],
        double       mm3)
{
  return (TrSize) { { plan[0], plan[1], mm3 / (plan[0] * plan[1]) } };
}

static gboolean
is_plan_possible (const LockInPlan *plan)
{
  return tr_is_positive (plan->fat[0]) && tr_is_positive (plan->fat[1])
         && tr_is_positive (plan->dough[0]) && tr_is_positive (plan->dough[1])
         && tr_is_positive (plan->block[0]) && tr_is_positive (plan->block[1]);
}

static LockInInput
gather_lock_in (const TrDough   *dough,
                const TrFormula *formula)
{
  double kept = (1 - dough->handling_loss_percent / 100) / MAX (dough->lock_in->blocks, 1);

  return (LockInInput) {
    .fat_mm3 = formula->roll_in_g * kept / tr_dough_get_fat_density (dough) * TR_MM3_PER_ML,
    .dough_mm3 = formula->dough_g * kept / dough->dough_density_g_ml * TR_MM3_PER_ML,
    .fat_thickness_mm = tr_lock_in_get_fat_thickness_mm (dough->lock_in),
    .width_mm = dough->lock_in->fat_width_mm,
    .rim_mm = dough->lock_in->rim_mm,
  };
}

void
tr_lock_in_compute (const TrDough   *dough,
                    const TrFormula *formula,
                    TrLockInFigures *lock_in)
{
  LockInInput in = gather_lock_in (dough, formula);
  LockInPlan plan;

  plan_lock_in (dough->lock_in->style, &in, &plan);
  if (!tr_is_positive (in.dough_mm3) || !is_plan_possible (&plan))
    {
      *lock_in = (TrLockInFigures) { no_size, no_size, no_size, NAN };
      return;
    }

  lock_in->fat_mm = spread (plan.fat, in.fat_mm3);
  lock_in->dough_mm = spread (plan.dough, in.dough_mm3);
  lock_in->block_mm = spread (plan.block, in.fat_mm3 + in.dough_mm3);
  lock_in->rim_share = rim_share (dough->lock_in->style, &plan);
}

static TrLockInFault
find_trim_fault (const TrDough      *dough,
                 const TrLamination *lamination,
                 double             *value,
                 double             *greatest_mm,
                 guint              *index)
{
  for (guint i = 0; i < lamination->steps->len; i++)
    {
      const TrTurnFigures *step = &g_array_index (lamination->steps, TrTurnFigures, i);
      double folded_mm = step->rolled_mm.mm[0] / tr_dough_get_turn (dough, i)->fold;

      if (!isfinite (folded_mm) || isfinite (step->folded_mm.mm[0]))
        continue;
      *value = folded_mm - 2 * tr_dough_get_turn (dough, i)->trim_mm;
      *greatest_mm = folded_mm / 2;
      *index = i;
      return TR_FAULT_TRIM;
    }

  return TR_FAULT_NONE;
}

static TrLockInFault
find_plan_fault (const TrDough     *dough,
                 const LockInInput *in,
                 double            *value,
                 double            *greatest_mm)
{
  LockInPlan plan;

  *value = in->fat_thickness_mm;
  if (!tr_is_positive (in->fat_thickness_mm))
    return TR_FAULT_FAT_THICKNESS;

  *value = in->width_mm;
  if (tr_is_written (in->width_mm) && !tr_is_positive (in->width_mm) && dough->lock_in->style != TR_STYLE_ENVELOPE)
    return TR_FAULT_FAT_WIDTH;

  plan_lock_in (dough->lock_in->style, in, &plan);
  *value = plan.dough[0];
  if (is_plan_possible (&plan))
    return TR_FAULT_NONE;

  /* (w + 2r)·r = P has one root r > 0, for a written or a chosen width. */
  double closed_mm2 = in->fat_mm3 / (2 * in->fat_thickness_mm);
  double width = tr_is_written (in->width_mm) ? in->width_mm : sqrt (closed_mm2);
  *greatest_mm = (sqrt (width * width + 8 * closed_mm2) - width) / 4;

  return TR_FAULT_DOUGH_LENGTH;
}

TrLockInFault
tr_lock_in_find_fault (const TrDough      *dough,
                       const TrFormula    *formula,
                       const TrLamination *lamination,
                       double             *value,
                       double             *greatest_mm,
                       guint              *turn)
{
  LockInInput in = gather_lock_in (dough, formula);
  double ignored, ignored_too;
  guint nowhere;

  value = value != NULL ? value : &ignored;
  greatest_mm = greatest_mm != NULL ? greatest_mm : &ignored_too;
  turn = turn != NULL ? turn : &nowhere;
  *greatest_mm = NAN;
  *turn = 0;

  *value = 0;
  if (!tr_is_positive (in.fat_mm3))
    return TR_FAULT_NO_FAT;
  if (!tr_is_positive (in.dough_mm3))
    return TR_FAULT_NO_DOUGH;

  TrLockInFault fault = find_plan_fault (dough, &in, value, greatest_mm);
  if (fault != TR_FAULT_NONE)
    return fault;

  return find_trim_fault (dough, lamination, value, greatest_mm, turn);
}
