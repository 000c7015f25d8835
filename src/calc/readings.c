/* readings.c: what a dough's own figures show against what is usual
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The ends that no other file knows stand in the tables below, each with its
 * source. Time and warmth are held against each other by the rule of thumb
 * that yeast works twice as fast 10 °C warmer (from memory).
 */

#include "readings.h"

#include "balance.h"
#include "formula.h"
#include "lamination.h"
#include "look.h"
#include "measure.h"
#include "mix.h"

#define DOUBLES_EVERY_C 10.0
/* Of less yeast, or of a starter alone, the usual times say nothing. */
#define LEAST_YEAST_PERCENT 1.0
/* Cooler than this a dough is kept, not left to rise. */
#define COOL_C 10.0

typedef struct { double low, high; const char *source; } Usual;

static const char from_practice[] = "common practice";

static const Usual usual_proof_c = { 26, 30, "IREKS-Kompendium 11.5" };
static const Usual usual_proof_minutes_at_26 = { 90, 180, from_practice };
static const Usual usual_bulk_minutes_at_24 = { NAN, 120, from_practice };
static const Usual usual_mixed_c = { NAN, 26, from_practice };
static const Usual usual_stretch = { NAN, TR_GREATEST_STRETCH, from_practice };

/* Leavened, and puff. */
static const Usual usual_rest_minutes[] = { { 30, NAN, from_practice }, { 20, NAN, from_practice } };
static const Usual usual_bake_c[] = { { 170, 210, from_practice }, { 180, 220, from_practice } };
static const Usual usual_sheet_mm[] = { { 3, 6, from_practice }, { 2, 6, from_practice } };
static const Usual usual_fat_layers[] = {
  { 16, 50, "after Ooms et al., Crit. Rev. Food Sci. Nutr. 56(13), 2016" },
  { 27, 729, "three to six single turns, common practice; Silow et al., Foods 6(2):15, 2017, bake 50 to 200" },
};
/* Of a piece of 60 g; larger ones take longer by the square of their size, as
 * a body does that heat creeps into: minutes go with mass^(2/3). */
static const Usual usual_bake_minutes_of_60g[] = { { 14, 22, from_practice }, { 18, 30, from_practice } };
#define BAKE_PIECE_G 60.0
static const TrRange baked_pieces_g = { 30, 150 };

static guint
is_puff (const TrDoughFigures *figures)
{
  return figures->dough->kind == TR_KIND_PUFF ? 1 : 0;
}

static void
hold_against (TrReading   *reading,
              const Usual *usual)
{
  reading->low = usual->low;
  reading->high = usual->high;
  reading->source = usual->source;
}

/* Whether `value` is further out on that side than what was seen before (NaN: nothing yet). */
static gboolean
is_worse (double value,
          double before,
          TrSide side)
{
  if (isnan (value))
    return FALSE;

  return isnan (before) || (side == TR_SIDE_OVER ? value > before : value < before);
}

/* The method */

static gboolean
is_raised_by_yeast (const TrDoughFigures *figures)
{
  return figures->formula.yeast_fresh_percent >= LEAST_YEAST_PERCENT - TR_HAIR;
}

static void
read_step_c (const TrDoughFigures *figures,
             TrStepId              id,
             TrSide                side,
             TrReading            *reading)
{
  const GPtrArray *steps = figures->dough->method->steps;

  for (guint i = 0; i < steps->len; i++)
    {
      const TrStep *step = steps->pdata[i];

      if (step->id != id || !is_worse (step->at_c, reading->value, side))
        continue;
      reading->value = step->at_c;
      g_free (reading->where);
      reading->where = g_strdup_printf ("/method/steps/%u/at_c", i);
    }
}

static void
read_proof_c (const TrDoughFigures *figures,
              TrSide                side,
              TrReading            *reading)
{
  if (!tr_look_is_leavened (figures))
    return;
  read_step_c (figures, TR_STEP_PROOF, side, reading);
  hold_against (reading, &usual_proof_c);
}

static void
read_proof_of_fat_c (const TrDoughFigures *figures,
                     TrSide                side,
                     TrReading            *reading)
{
  const char *fat;

  read_step_c (figures, TR_STEP_PROOF, TR_SIDE_OVER, reading);
  reading->high = tr_look_find_proof_max (figures, &fat);
  reading->name = g_strdup (fat);
  reading->source = "IREKS-Kompendium 11.5; ingredient table";
}

/* The longest step of that kind, in minutes as they are written: the most it
 * may take when too much is looked for. */
static const TrStep *
find_longest (const TrDoughFigures *figures,
              TrStepId              id,
              TrSide                side,
              TrReading            *reading)
{
  const GPtrArray *steps = figures->dough->method->steps;
  const TrStep *longest = NULL;

  for (guint i = 0; i < steps->len; i++)
    {
      const TrStep *step = steps->pdata[i];
      gboolean by_max = (side == TR_SIDE_OVER && step->max_minutes > step->minutes) || isnan (step->minutes);
      double minutes = by_max ? step->max_minutes : step->minutes;

      if (step->id != id || !is_worse (minutes, reading->value, TR_SIDE_OVER))
        continue;
      longest = step;
      reading->value = minutes;
      g_free (reading->where);
      reading->where = g_strdup_printf ("/method/steps/%u/%s", i, by_max ? "max" : "minutes");
    }

  return longest;
}

static void
read_rising (const TrDoughFigures *figures,
             TrStepId              id,
             TrSide                side,
             const Usual          *usual,
             double                usual_at_c,
             TrReading            *reading)
{
  const TrStep *step = find_longest (figures, id, side, reading);

  if (step == NULL || !is_raised_by_yeast (figures))
    return;

  reading->at = tr_look_get_step_c (figures->bench, step);
  if (!(reading->at > COOL_C))
    return;

  double slower = exp2 ((usual_at_c - reading->at) / DOUBLES_EVERY_C);

  hold_against (reading, usual);
  reading->low *= slower;
  reading->high *= slower;
}

static void
read_proof_minutes (const TrDoughFigures *figures,
                    TrSide                side,
                    TrReading            *reading)
{
  read_rising (figures, TR_STEP_PROOF, side, &usual_proof_minutes_at_26, 26, reading);
}

static void
read_bulk_minutes (const TrDoughFigures *figures,
                   TrSide                side,
                   TrReading            *reading)
{
  read_rising (figures, TR_STEP_BULK, side, &usual_bulk_minutes_at_24, 24, reading);
}

/* As it was measured at the last mix, else as it is meant to be. */
static void
read_mixed_c (const TrDoughFigures *figures,
              TrSide                side,
              TrReading            *reading)
{
  const TrMix *mix = tr_dough_get_last_mix (figures->dough);

  if (!tr_look_is_leavened (figures))
    return;
  reading->value = mix != NULL && tr_is_written (mix->dough_c) ? mix->dough_c : figures->dough->method->dough_c;
  reading->where = g_strdup ("/method/dough_c");
  hold_against (reading, &usual_mixed_c);
}

static void
read_bake_c (const TrDoughFigures *figures,
             TrSide                side,
             TrReading            *reading)
{
  read_step_c (figures, TR_STEP_BAKE, TR_SIDE_OVER, reading);
  hold_against (reading, &usual_bake_c[is_puff (figures)]);
}

/* Of all the bakes together; the first is where it is written. */
static void
read_bake_minutes (const TrDoughFigures *figures,
                   TrSide                side,
                   TrReading            *reading)
{
  const GPtrArray *steps = figures->dough->method->steps;
  double grams = figures->piece.raw_mass_g, total = 0;

  for (guint i = 0; i < steps->len; i++)
    {
      const TrStep *step = steps->pdata[i];

      if (step->id != TR_STEP_BAKE || isnan (step->minutes))
        continue;
      total += step->minutes;
      if (reading->where == NULL)
        reading->where = g_strdup_printf ("/method/steps/%u/minutes", i);
    }
  if (reading->where == NULL)
    return;

  reading->value = total;
  if (!(grams >= baked_pieces_g.min && grams <= baked_pieces_g.max))
    return;

  double longer = pow (grams / BAKE_PIECE_G, 2.0 / 3.0);

  reading->at = grams;
  hold_against (reading, &usual_bake_minutes_of_60g[is_puff (figures)]);
  reading->low *= longer;
  reading->high *= longer;
}

/* The bench and the rests */

static double
find_soft_c (const TrDoughFigures  *figures,
             const char           **fat)
{
  double soft_c = NAN;

  *fat = NULL;
  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = tr_look_get_line (figures, i);

      if (!tr_line_is_roll_in (line) || !tr_line_has_role (line, TR_ROLE_FAT)
          || !is_worse (line->ingredient.soft_c, soft_c, TR_SIDE_UNDER))
        continue;
      soft_c = line->ingredient.soft_c;
      *fat = line->ingredient.id;
    }

  return soft_c;
}

static void
hold_against_fat (const TrDoughFigures *figures,
                  TrReading            *reading)
{
  const char *fat;

  reading->high = find_soft_c (figures, &fat);
  reading->name = g_strdup (fat);
  reading->source = "ingredient table";
}

static gboolean
knows_window (const TrDoughFigures *figures)
{
  for (guint i = 0; i < figures->rests->len; i++)
    {
      const TrRestFigures *rest = &g_array_index (figures->rests, TrRestFigures, i);

      if (rest->turn > 0 && isfinite (rest->work_window_minutes))
        return TRUE;
    }

  return FALSE;
}

/* A room may well be warmer than the fat likes, if the hands are quick. Only
 * where it is not known how quick they have to be the room itself points. */
static void
read_room_c (const TrDoughFigures *figures,
             TrSide                side,
             TrReading            *reading)
{
  if (knows_window (figures))
    return;
  reading->value = figures->bench->room_c;
  reading->where = g_strdup ("/bench/room_c");
  hold_against_fat (figures, reading);
}

/* Only after a fold: what lies in the chill has no fat in it yet. */
static void
read_core_c (const TrDoughFigures *figures,
             TrSide                side,
             TrReading            *reading)
{
  for (guint i = 0; i < figures->rests->len; i++)
    {
      const TrRestFigures *rest = &g_array_index (figures->rests, TrRestFigures, i);

      if (rest->turn < 1 || !is_worse (rest->core_c_after_written, reading->value, TR_SIDE_OVER))
        continue;
      reading->value = rest->core_c_after_written;
      reading->at = rest->turn;
      g_free (reading->where);
      reading->where = g_strdup_printf ("/turns/%d/rest/min", rest->turn - 1);
    }
  hold_against_fat (figures, reading);
}

/* Of all roll-outs the one that lacks most. */
static void
read_window_minutes (const TrDoughFigures *figures,
                     TrSide                side,
                     TrReading            *reading)
{
  double most = NAN;

  for (guint i = 0; i < figures->rests->len; i++)
    {
      const TrRestFigures *rest = &g_array_index (figures->rests, TrRestFigures, i);
      double lacks = rest->next_minutes - rest->work_window_minutes;

      if (rest->turn < 1 || !is_worse (lacks, most, TR_SIDE_OVER))
        continue;
      most = lacks;
      reading->value = rest->work_window_minutes;
      reading->low = rest->next_minutes;
      reading->at = (guint) rest->turn < figures->dough->turns->len ? rest->turn + 1 : 0;
      reading->source = "the turn's own minutes";
      g_free (reading->where);
      reading->where = g_strdup_printf ("/turns/%d/rest/min", rest->turn - 1);
    }
}

static void
read_rest_minutes (const TrDoughFigures *figures,
                   TrSide                side,
                   TrReading            *reading)
{
  for (guint i = 0; i < figures->dough->turns->len; i++)
    {
      const TrRest *rest = tr_dough_get_turn (figures->dough, i)->rest;

      if (rest == NULL || !is_worse (rest->min_minutes, reading->value, TR_SIDE_UNDER))
        continue;
      reading->value = rest->min_minutes;
      reading->at = i + 1;
      g_free (reading->where);
      reading->where = g_strdup_printf ("/turns/%u/rest/min", i);
    }
  hold_against (reading, &usual_rest_minutes[is_puff (figures)]);
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
  hold_against (reading, &usual_sheet_mm[is_puff (figures)]);
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

      if (!is_worse (stretch, reading->value, TR_SIDE_OVER))
        continue;
      reading->value = stretch;
      reading->at = i + 1;
    }

  double last = lamination->has_to_sheet ? fmax (lamination->to_sheet.stretch_length, lamination->to_sheet.stretch_width)
                                         : (double) NAN;

  if (is_worse (last, reading->value, TR_SIDE_OVER))
    {
      reading->value = last;
      reading->at = 0;
    }
  if (isnan (reading->value))
    return;
  reading->where = reading->at > 0 ? g_strdup_printf ("/turns/%.0f", reading->at - 1) : g_strdup ("/cut");
  hold_against (reading, &usual_stretch);
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
  hold_against (reading, &usual_fat_layers[is_puff (figures)]);
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

  if (!tr_ratio_get_band (figures, ratio, &band))
    return;
  tr_ratio_get_moves (figures, ratio, &moves);
  reading->value = tr_ratio_get (figures, ratio);
  reading->where = tr_look_line_pointer (moves.n_lines > 0 ? (int) moves.lines[0] : -1, "amount");
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
  reading->source = from_practice;
}

typedef void (*Read) (const TrDoughFigures *figures,
                      TrSide                side,
                      TrReading            *reading);

static const Read reads[TR_N_READINGS] = {
  [TR_READING_PROOF_C] = read_proof_c,
  [TR_READING_PROOF_OF_FAT_C] = read_proof_of_fat_c,
  [TR_READING_PROOF_MINUTES] = read_proof_minutes,
  [TR_READING_BULK_MINUTES] = read_bulk_minutes,
  [TR_READING_MIXED_C] = read_mixed_c,
  [TR_READING_ROOM_C] = read_room_c,
  [TR_READING_REST_MINUTES] = read_rest_minutes,
  [TR_READING_CORE_C] = read_core_c,
  [TR_READING_WINDOW_MINUTES] = read_window_minutes,
  [TR_READING_BAKE_C] = read_bake_c,
  [TR_READING_BAKE_MINUTES] = read_bake_minutes,
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
