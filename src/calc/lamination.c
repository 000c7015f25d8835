/* lamination.c: fat block, lock-in, turns, layers
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What becomes of one block of dough and fat from the lock-in to the last
 * roll-out: sizes, from volumes that are conserved, and layers, in closed form.
 *
 * Not here: how the fat is enclosed (lock-in.c), the bands for drawing (stack.c),
 * what the bench takes (bench.c), how many sheets are cut from a block (cut.c).
 *
 * Sizes are [along the rolling direction, across, thickness]; a size that
 * cannot be is NaN, and so is all that follows from it.
 */

#include "lamination.h"

#include "lock-in.h"
#include "measure.h"

#define UM_PER_MM 1000.0

static const TrSize no_size = { { NAN, NAN, NAN } };

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

void
tr_mix_volume (const TrDough   *dough,
               const TrFormula *formula,
               double          *fat_volume_fraction,
               double          *density_g_ml)
{
  double fat_ml = formula->roll_in_g / tr_dough_get_fat_density (dough);
  double dough_ml = formula->dough_g / dough->dough_density_g_ml;
  double all_ml = fat_ml + dough_ml;

  *fat_volume_fraction = *density_g_ml = NAN;
  if (!tr_is_positive (all_ml))
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
  return tr_is_positive (size.mm[0]) && tr_is_positive (size.mm[1]) && tr_is_positive (size.mm[2]) ? size : no_size;
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
  step.trimmed_g = (volume_of (&whole) - volume_of (&step.folded_mm)) / TR_MM3_PER_ML
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

  if (fmax (length, width) > worst_so_far * (1 - TR_HAIR))     /* NaN so far: taken */
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

  to->order = to->stretch_width < to->stretch_length * (1 - TR_HAIR) ? "width-first" : "length-first";
  to->fits = sheet->breaks == 0 && to->stretch_length >= 1 - TR_HAIR && to->stretch_width >= 1 - TR_HAIR;
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
    .fat_density_g_ml = tr_dough_get_fat_density (dough),
    .to_sheet = { NAN, no_size, NAN, NAN, NULL, FALSE },
  };
  tr_mix_volume (dough, formula, &lamination->fat_volume_fraction, &lamination->mix_density_g_ml);
  compute_layers (dough, sheet, lamination);
  tr_lock_in_compute (dough, formula, &lamination->lock_in);
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
