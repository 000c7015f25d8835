/* lamination.c: fat block, lock-in, turns, layers
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What becomes of one block of dough and fat from the lock-in to the last
 * roll-out: sizes, from volumes that are conserved, and layers, in closed form.
 * The list of bands is made only for drawing, by really folding it; that it
 * agrees with the closed form is held by a test.
 *
 * Not here: how warm the block is, how many sheets are cut from it (cut.c).
 *
 * Sizes are [along the rolling direction, across, thickness]; a size that
 * cannot be is NaN, and so is all that follows from it.
 */

#include "lamination.h"

#define MM3_PER_ML 1000.0
#define UM_PER_MM 1000.0
/* Limits and ties are judged to this share, so that 900 mm fits on 900 mm. */
#define HAIR 1e-9

static const TrSize no_size = { { NAN, NAN, NAN } };

static gboolean
is_positive (double value)
{
  return isfinite (value) && value > 0;
}

static double
volume_of (const TrSize *size)
{
  return size->mm[0] * size->mm[1] * size->mm[2];
}

static TrStyle
style_of (const TrDough *dough)
{
  return dough->lock_in->style;
}

static int
blocks_of (const TrDough *dough)
{
  return MAX (dough->lock_in->blocks, 1);
}

static double
fat_density_of (const TrDough *dough)
{
  if (dough->lock_in != NULL && is_positive (dough->lock_in->fat_density_g_ml))
    return dough->lock_in->fat_density_g_ml;

  return TR_FAT_DENSITY_G_ML;
}

void
tr_mix_volume (const TrDough   *dough,
               const TrFormula *formula,
               double          *fat_volume_fraction,
               double          *density_g_ml)
{
  double fat_ml = formula->roll_in_g / fat_density_of (dough);
  double dough_ml = formula->dough_g / dough->dough_density_g_ml;
  double all_ml = fat_ml + dough_ml;

  *fat_volume_fraction = *density_g_ml = NAN;
  if (!is_positive (all_ml))
    return;

  *fat_volume_fraction = fat_ml / all_ml;
  *density_g_ml = (formula->roll_in_g + formula->dough_g) / all_ml;
}

/* Layers
 *
 * What is locked in, bottom to top, and what a fold in three makes of it: the
 * copies lie alternately reversed, and where two meet the bands of one kind
 * become one (=).
 *
 *   half, gate,       letter          inverse        half, folded in three
 *   envelope
 *                     ▒▒▒▒▒ dough                    ▒▒▒▒▒ ½
 *                     █████ fat                      █████
 *   ▒▒▒▒▒ dough       ▒▒▒▒▒           █████ fat      ▒▒▒▒▒ ½ =
 *   █████ fat         █████           ▒▒▒▒▒ dough    ▒▒▒▒▒ ½
 *   ▒▒▒▒▒             ▒▒▒▒▒           █████          █████
 *                                                    ▒▒▒▒▒ ½ =
 *   F = Π             F = 2Π          D = Π          ▒▒▒▒▒ ½
 *   D = F + 1         D = F + 1       F = D + 1      █████
 *                                                    ▒▒▒▒▒ ½
 */

static double
if_exact (double count)
{
  return count <= TR_EXACT_MAX ? count : NAN;
}

static double
multiply_folds (const TrDough *dough,
                guint          n_turns)
{
  double product = 1;

  for (guint i = 0; i < MIN (n_turns, dough->turns->len); i++)
    product *= tr_dough_get_turn (dough, i)->fold;

  return product;
}

static void
count_layers (TrStyle  style,
              double   fold_product,
              double  *fat_layers,
              double  *dough_layers)
{
  double of_which_one_is_outside = style == TR_STYLE_LETTER ? 2 * fold_product : fold_product;
  double inner = if_exact (of_which_one_is_outside);
  double outer = if_exact (inner + 1);

  *fat_layers = style == TR_STYLE_INVERSE ? outer : inner;
  *dough_layers = style == TR_STYLE_INVERSE ? inner : outer;
}

double
tr_dough_count_fat_layers (const TrDough *dough)
{
  double fat_layers, dough_layers;

  if (dough->lock_in == NULL)
    return NAN;

  count_layers (style_of (dough), multiply_folds (dough, G_MAXUINT), &fat_layers, &dough_layers);

  return fat_layers;
}

static TrRange
scaled_range (double min,
              double max,
              double by)
{
  return (TrRange) { min * by, max * by };
}

/* Thickness of the fat layers in a stack `thickness_mm` high. */
static TrRange
fat_layer_range (TrStyle style,
                 double  fold_product,
                 double  fat_volume_fraction,
                 double  thickness_mm)
{
  double fat_um = fat_volume_fraction * thickness_mm * UM_PER_MM;

  if (style == TR_STYLE_LETTER)
    return scaled_range (1, 1, fat_um / (2 * fold_product));
  if (style != TR_STYLE_INVERSE)
    return scaled_range (1, 1, fat_um / fold_product);
  if (fold_product > 1)
    return scaled_range (0.5, 1, fat_um / fold_product);

  return scaled_range (0.5, 0.5, fat_um);     /* outer layers only */
}

/* The same for the dough: the range of the layers that lie between fat, and
 * the outermost. Letter: the closed block has three layers of one thickness t;
 * where folds meet they make 2t. */
static void
compute_dough_layers (TrStyle       style,
                      double        thickness_mm,
                      TrLamination *lamination)
{
  double folds = lamination->fold_product;
  double dough_um = (1 - lamination->fat_volume_fraction) * thickness_mm * UM_PER_MM;
  double one = dough_um / (style == TR_STYLE_LETTER ? 3 * folds : folds);

  switch (style)
    {
    case TR_STYLE_LETTER:
      lamination->dough_layer_um = scaled_range (1, folds > 1 ? 2 : 1, one);
      lamination->dough_layer_um_outer = one;
      break;
    case TR_STYLE_INVERSE:
      lamination->dough_layer_um = scaled_range (1, 1, one);
      lamination->dough_layer_um_outer = NAN;
      break;
    case TR_STYLE_HALF:
    case TR_STYLE_GATE:
    case TR_STYLE_ENVELOPE:
    case TR_N_STYLES:
    default:
      lamination->dough_layer_um = folds > 1 ? scaled_range (1, 1, one) : (TrRange) { NAN, NAN };
      lamination->dough_layer_um_outer = one / 2;
      break;
    }
}

static void
compute_layers (const TrDough *dough,
                const TrSheet *sheet,
                TrLamination  *lamination)
{
  TrStyle style = style_of (dough);
  double thickness_mm = sheet != NULL ? sheet->thickness_mm : NAN;

  lamination->fold_product = if_exact (multiply_folds (dough, G_MAXUINT));
  count_layers (style, lamination->fold_product, &lamination->fat_layers, &lamination->dough_layers);
  lamination->bands = if_exact (lamination->fat_layers + lamination->dough_layers);
  lamination->fat_layer_um = fat_layer_range (style, lamination->fold_product,
                                              lamination->fat_volume_fraction, thickness_mm);
  compute_dough_layers (style, thickness_mm, lamination);
}

/* Lock-in
 *
 * Seen from above; f: fat l × w, r: rim, the fold where the dashes are.
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
  return is_positive (plan->fat[0]) && is_positive (plan->fat[1])
         && is_positive (plan->dough[0]) && is_positive (plan->dough[1])
         && is_positive (plan->block[0]) && is_positive (plan->block[1]);
}

static LockInInput
gather_lock_in (const TrDough   *dough,
                const TrFormula *formula)
{
  double kept = (1 - dough->handling_loss_percent / 100) / blocks_of (dough);

  return (LockInInput) {
    .fat_mm3 = formula->roll_in_g * kept / fat_density_of (dough) * MM3_PER_ML,
    .dough_mm3 = formula->dough_g * kept / dough->dough_density_g_ml * MM3_PER_ML,
    .fat_thickness_mm = tr_lock_in_get_fat_thickness_mm (dough->lock_in),
    .width_mm = dough->lock_in->fat_width_mm,
    .rim_mm = dough->lock_in->rim_mm,
  };
}

static void
compute_lock_in (const TrDough   *dough,
                 const TrFormula *formula,
                 TrLockInFigures *lock_in)
{
  LockInInput in = gather_lock_in (dough, formula);
  LockInPlan plan;

  plan_lock_in (style_of (dough), &in, &plan);
  if (!is_positive (in.dough_mm3) || !is_plan_possible (&plan))
    {
      *lock_in = (TrLockInFigures) { no_size, no_size, no_size, NAN };
      return;
    }

  lock_in->fat_mm = spread (plan.fat, in.fat_mm3);
  lock_in->dough_mm = spread (plan.dough, in.dough_mm3);
  lock_in->block_mm = spread (plan.block, in.fat_mm3 + in.dough_mm3);
  lock_in->rim_share = rim_share (style_of (dough), &plan);
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
  if (!is_positive (in->fat_thickness_mm))
    return TR_FAULT_FAT_THICKNESS;

  *value = in->width_mm;
  if (tr_is_written (in->width_mm) && !is_positive (in->width_mm) && style_of (dough) != TR_STYLE_ENVELOPE)
    return TR_FAULT_FAT_WIDTH;

  plan_lock_in (style_of (dough), in, &plan);
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
  if (!is_positive (in.fat_mm3))
    return TR_FAULT_NO_FAT;
  if (!is_positive (in.dough_mm3))
    return TR_FAULT_NO_DOUGH;

  TrLockInFault fault = find_plan_fault (dough, &in, value, greatest_mm);
  if (fault != TR_FAULT_NONE)
    return fault;

  return find_trim_fault (dough, lamination, value, greatest_mm, turn);
}

/* The bench */

static TrBreaks
check_length (const TrBench *bench,
              double         along_mm,
              double         across_mm)
{
  TrBreaks breaks = 0;

  if (along_mm > bench->worktop_mm[0] * (1 + HAIR))
    breaks |= TR_BREAK_WORKTOP_LENGTH;
  if (across_mm > bench->worktop_mm[1] * (1 + HAIR))
    breaks |= TR_BREAK_WORKTOP_WIDTH;
  if (across_mm > bench->roll_width_max_mm * (1 + HAIR))    /* NaN: no rollers, never */
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
  if (thickness_mm < bench->roll_thickness_min_mm * (1 - HAIR))
    breaks |= TR_BREAK_ROLL_THICKNESS_MIN;
  if (thickness_mm > bench->roll_thickness_max_mm * (1 + HAIR))
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

/* Turns */

/* The size a block is rolled to. What is not written of length and width is
 * what the volume leaves, and the width is kept. */
static TrSize
roll_out (const TrTurn *turn,
          const TrSize *start)
{
  double volume = volume_of (start);
  double width = tr_is_written (turn->width_mm) ? turn->width_mm : start->mm[1];

  if (tr_is_written (turn->thickness_mm))
    return (TrSize) { { volume / (width * turn->thickness_mm), width, turn->thickness_mm } };

  double length = tr_is_written (turn->length_mm) ? turn->length_mm : start->mm[0];

  return (TrSize) { { length, width, volume / (length * width) } };
}

static TrSize
if_possible (TrSize size)
{
  return is_positive (size.mm[0]) && is_positive (size.mm[1]) && is_positive (size.mm[2]) ? size : no_size;
}

static TrSize
turn_quarter (const TrSize *size)
{
  return (TrSize) { { size->mm[1], size->mm[0], size->mm[2] } };
}

static void
compute_step (const TrDough *dough,
              const TrBench *bench,
              guint          index,
              TrSize         start,
              TrLamination  *lamination)
{
  const TrTurn *turn = tr_dough_get_turn (dough, index);
  double product = multiply_folds (dough, index + 1);
  TrTurnFigures step = { .start_mm = start };

  step.rolled_mm = if_possible (roll_out (turn, &start));
  TrSize whole = { { step.rolled_mm.mm[0] / turn->fold, step.rolled_mm.mm[1],
                     step.rolled_mm.mm[2] * turn->fold } };
  TrSize trimmed = whole;
  trimmed.mm[0] -= 2 * turn->trim_mm;
  step.folded_mm = if_possible (trimmed);
  step.trimmed_g = (volume_of (&whole) - volume_of (&step.folded_mm)) / MM3_PER_ML
                   * lamination->mix_density_g_ml;
  step.stretch = fmax (step.rolled_mm.mm[0] / start.mm[0], step.rolled_mm.mm[1] / start.mm[1]);
  count_layers (style_of (dough), product, &step.fat_layers, &step.dough_layers);
  step.fat_layer_um = fat_layer_range (style_of (dough), product, lamination->fat_volume_fraction,
                                       whole.mm[2]);
  step.breaks = tr_bench_check_turn (bench, &step.rolled_mm);
  g_array_append_val (lamination->steps, step);
}

TrSize
tr_lamination_last_block (const TrLamination *lamination)
{
  if (lamination->steps->len == 0)
    return lamination->lock_in.block_mm;

  return turn_quarter (&g_array_index (lamination->steps, TrTurnFigures,
                                       lamination->steps->len - 1).folded_mm);
}

/* From the last block to the sheet
 *
 * The block is cut into as many strips as it gives sheets, along or across,
 * and each is laid along or across the sheet it becomes:
 *
 *   ┌────┬────┐      ┌─────────┐      then  a ─► length   or   b ─► length
 *   │    │    │  or  ├─────────┤            b ─► width         a ─► width
 *   └────┴────┘      └─────────┘
 */

static void
try_strip (const TrSize *strip,
           const TrSheet *sheet,
           TrToSheet    *best)
{
  double length = sheet->rolled_mm.mm[0] / strip->mm[0];
  double width = sheet->rolled_mm.mm[1] / strip->mm[1];
  double worst_so_far = fmax (best->stretch_length, best->stretch_width);

  if (fmax (length, width) > worst_so_far * (1 - HAIR))     /* NaN so far: taken */
    return;

  best->start_mm = *strip;
  best->stretch_length = length;
  best->stretch_width = width;
}

static void
compute_to_sheet (const TrDough *dough,
                  const TrSheet *sheet,
                  TrLamination  *lamination)
{
  TrSize block = tr_lamination_last_block (lamination);
  double per_block = (double) sheet->sheets / blocks_of (dough);
  TrSize along = { { block.mm[0] / per_block, block.mm[1], block.mm[2] } };
  TrSize across = { { block.mm[0], block.mm[1] / per_block, block.mm[2] } };
  TrSize turned_along = turn_quarter (&along), turned_across = turn_quarter (&across);
  TrToSheet *to = &lamination->to_sheet;

  *to = (TrToSheet) { per_block, no_size, NAN, NAN, NULL, FALSE };
  try_strip (&along, sheet, to);
  try_strip (&turned_along, sheet, to);
  try_strip (&across, sheet, to);
  try_strip (&turned_across, sheet, to);

  to->order = to->stretch_width < to->stretch_length * (1 - HAIR) ? "width-first" : "length-first";
  to->fits = sheet->breaks == 0 && to->stretch_length >= 1 - HAIR && to->stretch_width >= 1 - HAIR;
  lamination->has_to_sheet = TRUE;
}

void
tr_lamination_compute (const TrDough   *dough,
                       const TrBench   *bench,
                       const TrFormula *formula,
                       const TrSheet   *sheet,
                       TrLamination    *lamination)
{
  g_return_if_fail (dough->lock_in != NULL);

  double kept = (1 - dough->handling_loss_percent / 100) / blocks_of (dough);

  *lamination = (TrLamination) {
    .steps = g_array_sized_new (FALSE, FALSE, sizeof (TrTurnFigures), dough->turns->len),
    .block_mass_g = formula->total_g * kept,
    .fat_block_g = formula->roll_in_g * kept,
    .fat_density_g_ml = fat_density_of (dough),
    .to_sheet = { NAN, no_size, NAN, NAN, NULL, FALSE },
  };
  tr_mix_volume (dough, formula, &lamination->fat_volume_fraction, &lamination->mix_density_g_ml);
  compute_layers (dough, sheet, lamination);
  compute_lock_in (dough, formula, &lamination->lock_in);
  for (guint i = 0; i < dough->turns->len; i++)
    compute_step (dough, bench, i, tr_lamination_last_block (lamination), lamination);
  if (sheet != NULL)
    compute_to_sheet (dough, sheet, lamination);
}

void
tr_lamination_clear (TrLamination *lamination)
{
  g_clear_pointer (&lamination->steps, g_array_unref);
}

/* The drawn stack */

static void
lay_band (GArray      *stack,
          TrStackBand  band)
{
  TrStackBand *top = stack->len > 0 ? &g_array_index (stack, TrStackBand, stack->len - 1) : NULL;

  if (top != NULL && top->is_fat == band.is_fat)
    top->share += band.share;
  else
    g_array_append_val (stack, band);
}

static GArray *
lock_in_stack (TrStyle style,
               double  fat_share)
{
  gboolean is_inverse = style == TR_STYLE_INVERSE;
  guint n_bands = style == TR_STYLE_LETTER ? 5 : 3;
  GArray *stack = g_array_sized_new (FALSE, FALSE, sizeof (TrStackBand), n_bands);

  for (guint i = 0; i < n_bands; i++)
    {
      TrStackBand band = { .is_fat = (i % 2 == 1) != is_inverse };
      guint alike = i % 2 == 1 ? n_bands / 2 : n_bands / 2 + 1;

      band.share = (band.is_fat ? fat_share : 1 - fat_share) / alike;
      g_array_append_val (stack, band);
    }

  return stack;
}

/* `fold` copies one on another, every other one upside down. */
static GArray *
fold_stack (GArray *stack,
            int     fold)
{
  GArray *folded = g_array_sized_new (FALSE, FALSE, sizeof (TrStackBand), stack->len * (guint) fold);

  for (int copy = 0; copy < fold; copy++)
    for (guint i = 0; i < stack->len; i++)
      {
        guint at = copy % 2 == 0 ? i : stack->len - 1 - i;
        TrStackBand band = g_array_index (stack, TrStackBand, at);

        band.share /= fold;
        lay_band (folded, band);
      }

  return folded;
}

GArray *
tr_stack_new (const TrDough      *dough,
              const TrLamination *lamination,
              guint               n_turns)
{
  g_return_val_if_fail (dough->lock_in != NULL, NULL);

  double fat_layers, dough_layers;

  n_turns = MIN (n_turns, dough->turns->len);
  count_layers (style_of (dough), multiply_folds (dough, n_turns), &fat_layers, &dough_layers);
  if (!(fat_layers + dough_layers <= TR_MAX_DRAWN_BANDS) || isnan (lamination->fat_volume_fraction))
    return NULL;

  g_autoptr (GArray) stack = lock_in_stack (style_of (dough), lamination->fat_volume_fraction);
  for (guint i = 0; i < n_turns; i++)
    {
      GArray *folded = fold_stack (stack, tr_dough_get_turn (dough, i)->fold);

      g_array_unref (stack);
      stack = folded;
    }

  return g_steal_pointer (&stack);
}
