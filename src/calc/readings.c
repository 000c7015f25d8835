/* readings.c: what a dough's own figures show against what is usual
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The ends that no other file knows stand in tables, each with its source.
 * What the method, the bench and the rests show is in readings-method.c.
 */

#include "readings-private.h"

#include "balance.h"
#include "lamination.h"
#include "look.h"
#include "measure.h"

static const TrUsual usual_stretch = { NAN, TR_GREATEST_STRETCH, TR_COMMON_PRACTICE };

/* Leavened, and puff. */
static const TrUsual usual_sheet_mm[] = { { 3, 6, TR_COMMON_PRACTICE }, { 2, 6, TR_COMMON_PRACTICE } };
static const TrUsual usual_fat_layers[] = {
  { 16, 50, "after Ooms et al., Crit. Rev. Food Sci. Nutr. 56(13), 2016" },
  { 27, 729, "three to six single turns, common practice; Silow et al., Foods 6(2):15, 2017, bake 50 to 200" },
};

guint
tr_reading_is_puff (const TrDoughFigures *figures)
{
  return figures->dough->kind == TR_KIND_PUFF ? 1 : 0;
}

void
tr_reading_hold_against (TrReading     *reading,
                         const TrUsual *usual)
{
  reading->low = usual->low;
  reading->high = usual->high;
  reading->source = usual->source;
}

gboolean
tr_reading_is_worse (double value,
                     double before,
                     TrSide side)
{
  if (isnan (value))
    return FALSE;

  return isnan (before) || (side == TR_SIDE_OVER ? value > before : value < before);
}

/* The lamination and the sheet */

static void
read_sheet_mm (const TrDoughFigures *figures,
               TrSide                side,
               TrReading            *reading)
{
  if (!figures->has_sheet)
    return;
  reading->value = figures->sheet.thickness_mm;
  reading->where = g_strdup (tr_is_written (figures->dough->cut->piece_mass_g) ? "/cut/piece_mass_g" : "/cut/thickness_mm");
  tr_reading_hold_against (reading, &usual_sheet_mm[tr_reading_is_puff (figures)]);
}

static void
read_stretch (const TrDoughFigures *figures,
              TrSide                side,
              TrReading            *reading)
{
  const TrLamination *lamination = &figures->lamination;

  if (!figures->has_lamination)
    return;
  for (guint i = 0; i < lamination->steps->len; i++)
    {
      double stretch = g_array_index (lamination->steps, TrTurnFigures, i).stretch;

      if (!tr_reading_is_worse (stretch, reading->value, TR_SIDE_OVER))
        continue;
      reading->value = stretch;
      reading->at = i + 1;
    }

  double last = lamination->has_to_sheet ? fmax (lamination->to_sheet.stretch_length, lamination->to_sheet.stretch_width)
                                         : (double) NAN;

  if (tr_reading_is_worse (last, reading->value, TR_SIDE_OVER))
    {
      reading->value = last;
      reading->at = 0;
    }
  if (isnan (reading->value))
    return;
  reading->where = reading->at > 0 ? g_strdup_printf ("/turns/%.0f", reading->at - 1) : g_strdup ("/cut");
  tr_reading_hold_against (reading, &usual_stretch);
}

static void
read_fat_layers (const TrDoughFigures *figures,
                 TrSide                side,
                 TrReading            *reading)
{
  TrBand band;

  if (!tr_look_get_fat_layer_band (figures, &band))
    return;
  reading->value = figures->lamination.fat_layers;
  reading->where = g_strdup ("/turns");
  tr_reading_hold_against (reading, &usual_fat_layers[tr_reading_is_puff (figures)]);
}

static void
read_fat_layer_um (const TrDoughFigures *figures,
                   TrSide                side,
                   TrReading            *reading)
{
  TrBand band;

  if (!tr_look_get_fat_layer_band (figures, &band))
    return;
  reading->value = side == TR_SIDE_OVER ? figures->lamination.fat_layer_um.max : figures->lamination.fat_layer_um.min;
  reading->where = g_strdup ("/turns");
  reading->low = band.low;
  reading->high = band.high;
  reading->source = band.source;
}

/* The formula */

int
tr_reading_get_ratio (TrReadingId id)
{
  switch ((int) id)
    {
    case TR_READING_ALL_WATER: return TR_RATIO_ALL_WATER;
    case TR_READING_ROLL_IN: return TR_RATIO_ROLL_IN_OF_DOUGH;
    case TR_READING_YEAST: return TR_RATIO_YEAST_FRESH;
    case TR_READING_SALT: case TR_READING_SALT_MIDDLE: return TR_RATIO_SALT;
    case TR_READING_SUGAR: case TR_READING_SUGAR_MIDDLE: return TR_RATIO_SUGAR;
    default: return -1;
    }
}

static void
read_ratio (const TrDoughFigures *figures,
            TrSide                side,
            TrReading            *reading)
{
  TrRatio ratio = (TrRatio) tr_reading_get_ratio (reading->id);
  TrRatioMoves moves;
  TrBand band;

  tr_ratio_get_moves (figures, ratio, &moves);
  reading->value = tr_ratio_get (figures, ratio);
  reading->where = tr_look_line_pointer (moves.n_lines > 0 ? (int) moves.lines[0] : -1, "amount");
  if (!tr_ratio_get_band (figures, ratio, &band))
    return;
  reading->low = band.low;
  reading->high = band.high;
  reading->source = band.source;
}

/* The tongue knows better than the band: too much within it is still more
 * than the middle, if by as much as is worth changing. Outside the band the
 * band itself is the number. */
static void
read_ratio_in_band (const TrDoughFigures *figures,
                    TrSide                side,
                    TrReading            *reading)
{
  read_ratio (figures, side, reading);

  double middle = (reading->low + reading->high) / 2, step = tr_ratio_get_step ((TrRatio) tr_reading_get_ratio (reading->id));
  gboolean is_inside = reading->value >= reading->low - TR_HAIR && reading->value <= reading->high + TR_HAIR;

  if (!is_inside || !(fabs (reading->value - middle) >= step - TR_HAIR))
    {
      reading->value = NAN;
      return;
    }
  reading->at = reading->high - reading->low;
  reading->low = reading->high = middle;
}

static void
read_salted_fat (const TrDoughFigures *figures,
                 TrSide                side,
                 TrReading            *reading)
{
  int line = tr_look_find_salted_fat (figures);

  if (line < 0)
    return;
  reading->value = figures->formula.salted_fat_salt_percent;
  reading->where = tr_look_line_pointer (line, "ingredient");
  reading->name = g_strdup (tr_look_get_line (figures, (guint) line)->ingredient.id);
  reading->high = TR_SALTED_FAT_POINTS;
  reading->source = TR_COMMON_PRACTICE;
}

static const TrRead reads[TR_N_READINGS] = {
  [TR_READING_PROOF_C] = tr_read_proof_c,
  [TR_READING_PROOF_OF_FAT_C] = tr_read_proof_of_fat_c,
  [TR_READING_PROOF_MINUTES] = tr_read_proof_minutes,
  [TR_READING_BULK_MINUTES] = tr_read_bulk_minutes,
  [TR_READING_MIXED_C] = tr_read_mixed_c,
  [TR_READING_ROOM_C] = tr_read_room_c,
  [TR_READING_REST_MINUTES] = tr_read_rest_minutes,
  [TR_READING_CORE_C] = tr_read_core_c,
  [TR_READING_WINDOW_MINUTES] = tr_read_window_minutes,
  [TR_READING_BAKE_C] = tr_read_bake_c,
  [TR_READING_BAKE_MINUTES] = tr_read_bake_minutes,
  [TR_READING_SHEET_MM] = read_sheet_mm,
  [TR_READING_STRETCH] = read_stretch,
  [TR_READING_FAT_LAYERS] = read_fat_layers,
  [TR_READING_FAT_LAYER_UM] = read_fat_layer_um,
  [TR_READING_ALL_WATER] = read_ratio,
  [TR_READING_ROLL_IN] = read_ratio,
  [TR_READING_YEAST] = read_ratio,
  [TR_READING_SALT] = read_ratio,
  [TR_READING_SUGAR] = read_ratio,
  [TR_READING_SALT_MIDDLE] = read_ratio_in_band,
  [TR_READING_SUGAR_MIDDLE] = read_ratio_in_band,
  [TR_READING_SALTED_FAT] = read_salted_fat,
};

gboolean
tr_reading_get (const TrDoughFigures *figures,
                TrReadingId           id,
                TrSide                side,
                TrReading            *reading)
{
  g_return_val_if_fail (figures != NULL && reading != NULL, FALSE);
  g_return_val_if_fail (id < TR_N_READINGS && side < TR_N_SIDES, FALSE);

  *reading = (TrReading) { .id = id, .value = NAN, .low = NAN, .high = NAN, .at = NAN };
  reads[id] (figures, side, reading);
  if (isfinite (reading->value))
    return TRUE;

  tr_reading_clear (reading);
  return FALSE;
}

void
tr_reading_clear (TrReading *reading)
{
  g_clear_pointer (&reading->where, g_free);
  g_clear_pointer (&reading->name, g_free);
}

void
tr_reading_copy (const TrReading *reading,
                 TrReading       *copy)
{
  *copy = *reading;
  copy->where = g_strdup (reading->where);
  copy->name = g_strdup (reading->name);
}

double
tr_reading_get_limit (const TrReading *reading,
                      TrSide           side)
{
  return side == TR_SIDE_OVER ? reading->high : reading->low;
}

gboolean
tr_reading_passes (const TrReading *reading,
                   TrSide           side)
{
  double limit = tr_reading_get_limit (reading, side);
  double hair = TR_HAIR * fmax (1, fabs (limit));

  return side == TR_SIDE_OVER ? reading->value > limit + hair : reading->value < limit - hair;
}
