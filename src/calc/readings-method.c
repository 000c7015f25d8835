/* readings-method.c: what the method, the bench and the rests show
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Time and warmth are held against each other by the rule of thumb that yeast
 * works twice as fast 10 °C warmer (from memory).
 */

#include "readings-private.h"

#include "look.h"
#include "measure.h"
#include "mix.h"

#define DOUBLES_EVERY_C 10.0
/* Of less yeast, or of a starter alone, the usual times say nothing. */
#define LEAST_YEAST_PERCENT 1.0
/* Cooler than this a dough is kept, not left to rise. */
#define COOL_C 10.0

static const TrUsual usual_proof_c = { 26, 30, "IREKS-Kompendium 11.5" };
static const TrUsual usual_proof_minutes_at_26 = { 90, 180, TR_COMMON_PRACTICE };
static const TrUsual usual_bulk_minutes_at_24 = { NAN, 120, TR_COMMON_PRACTICE };
static const TrUsual usual_mixed_c = { NAN, 26, TR_COMMON_PRACTICE };

/* Leavened, and puff. */
static const TrUsual usual_rest_minutes[] = { { 30, NAN, TR_COMMON_PRACTICE }, { 20, NAN, TR_COMMON_PRACTICE } };
static const TrUsual usual_bake_c[] = { { 170, 210, TR_COMMON_PRACTICE }, { 180, 220, TR_COMMON_PRACTICE } };
/* Of a piece of 60 g; larger ones take longer by the square of their size, as
 * a body does that heat creeps into: minutes go with mass^(2/3). */
static const TrUsual usual_bake_minutes_of_60g[] = { { 14, 22, TR_COMMON_PRACTICE }, { 18, 30, TR_COMMON_PRACTICE } };
#define BAKE_PIECE_G 60.0
static const TrRange baked_pieces_g = { 30, 150 };

/* The method */

static gboolean
is_raised_by_yeast (const TrDoughFigures *figures)
{
  return figures->formula.yeast_fresh_percent >= LEAST_YEAST_PERCENT - TR_HAIR;
}

/* The last of that kind that says so; NULL: none. */
static const TrLoggedStep *
find_logged (const TrDoughFigures *figures,
             TrStepId              id,
             gboolean              says_c)
{
  const GPtrArray *steps = figures->dough->log->steps;

  for (guint i = steps->len; i-- > 0;)
    {
      const TrLoggedStep *logged = steps->pdata[i];

      if (logged->id == id && tr_is_written (says_c ? logged->at_c : logged->minutes))
        return logged;
    }

  return NULL;
}

/* It happened whether or not it is written. */
static void
take_logged (const TrDoughFigures *figures,
             const TrLoggedStep   *logged,
             gboolean              says_c,
             TrReading            *reading)
{
  guint index;

  reading->value = says_c ? logged->at_c : logged->minutes;
  reading->is_logged = TRUE;
  if (reading->where == NULL && g_ptr_array_find (figures->dough->log->steps, logged, &index))
    reading->where = g_strdup_printf ("/log/steps/%u/%s", index, says_c ? "at_c" : "minutes");
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

      if (step->id != id || !tr_reading_is_worse (step->at_c, reading->value, side))
        continue;
      reading->value = step->at_c;
      g_free (reading->where);
      reading->where = g_strdup_printf ("/method/steps/%u/at_c", i);
    }

  const TrLoggedStep *logged = find_logged (figures, id, TRUE);

  if (logged != NULL)
    take_logged (figures, logged, TRUE, reading);
}

void
tr_read_proof_c (const TrDoughFigures *figures,
                 TrSide                side,
                 TrReading            *reading)
{
  if (!tr_look_is_leavened (figures))
    return;
  read_step_c (figures, TR_STEP_PROOF, side, reading);
  tr_reading_hold_against (reading, &usual_proof_c);
}

void
tr_read_proof_of_fat_c (const TrDoughFigures *figures,
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

      if (step->id != id || !tr_reading_is_worse (minutes, reading->value, TR_SIDE_OVER))
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
             const TrUsual          *usual,
             double                usual_at_c,
             TrReading            *reading)
{
  const TrStep *step = find_longest (figures, id, side, reading);
  const TrLoggedStep *logged = find_logged (figures, id, FALSE), *warm = find_logged (figures, id, TRUE);

  if (logged != NULL)
    take_logged (figures, logged, FALSE, reading);
  if (reading->where == NULL || !is_raised_by_yeast (figures))
    return;

  reading->at = warm != NULL ? warm->at_c : step != NULL ? tr_look_get_step_c (figures->bench, step) : (double) NAN;
  if (!(reading->at > COOL_C))
    return;

  double slower = exp2 ((usual_at_c - reading->at) / DOUBLES_EVERY_C);

  tr_reading_hold_against (reading, usual);
  reading->low *= slower;
  reading->high *= slower;
}

void
tr_read_proof_minutes (const TrDoughFigures *figures,
                       TrSide                side,
                       TrReading            *reading)
{
  read_rising (figures, TR_STEP_PROOF, side, &usual_proof_minutes_at_26, 26, reading);
}

void
tr_read_bulk_minutes (const TrDoughFigures *figures,
                      TrSide                side,
                      TrReading            *reading)
{
  read_rising (figures, TR_STEP_BULK, side, &usual_bulk_minutes_at_24, 24, reading);
}

/* As it was measured at the last mix, else as it is meant to be. */
void
tr_read_mixed_c (const TrDoughFigures *figures,
                 TrSide                side,
                 TrReading            *reading)
{
  const TrMix *mix = tr_dough_get_last_mix (figures->dough);

  if (!tr_look_is_leavened (figures))
    return;
  reading->is_logged = mix != NULL && tr_is_written (mix->dough_c);
  reading->value = reading->is_logged ? mix->dough_c : figures->dough->method->dough_c;
  reading->where = g_strdup ("/method/dough_c");
  tr_reading_hold_against (reading, &usual_mixed_c);
}

void
tr_read_bake_c (const TrDoughFigures *figures,
                TrSide                side,
                TrReading            *reading)
{
  read_step_c (figures, TR_STEP_BAKE, TR_SIDE_OVER, reading);
  tr_reading_hold_against (reading, &usual_bake_c[tr_reading_is_puff (figures)]);
}

/* Of all the bakes together; the first is where it is written. */
void
tr_read_bake_minutes (const TrDoughFigures *figures,
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

  const TrLoggedStep *logged = find_logged (figures, TR_STEP_BAKE, FALSE);

  if (reading->where != NULL)
    reading->value = total;
  if (logged != NULL)
    take_logged (figures, logged, FALSE, reading);
  if (!(grams >= baked_pieces_g.min && grams <= baked_pieces_g.max))
    return;

  double longer = pow (grams / BAKE_PIECE_G, 2.0 / 3.0);

  reading->at = grams;
  tr_reading_hold_against (reading, &usual_bake_minutes_of_60g[tr_reading_is_puff (figures)]);
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
          || !tr_reading_is_worse (line->ingredient.soft_c, soft_c, TR_SIDE_UNDER))
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
void
tr_read_room_c (const TrDoughFigures *figures,
                TrSide                side,
                TrReading            *reading)
{
  if (knows_window (figures))
    return;
  reading->value = figures->bench->room_c;
  reading->where = g_strdup ("/bench/room_c");
  hold_against_fat (figures, reading);
}

/* The last that says so; NULL: none. */
static const TrLoggedRest *
find_logged_rest (const TrDoughFigures *figures,
                  int                   turn,
                  gboolean              says_c)
{
  const GPtrArray *rests = figures->dough->log->rests;

  for (guint i = rests->len; i-- > 0;)
    {
      const TrLoggedRest *logged = rests->pdata[i];

      if (logged->turn == turn && tr_is_written (says_c ? logged->core_c : logged->minutes))
        return logged;
    }

  return NULL;
}

/* Only after a fold: what lies in the chill has no fat in it yet. */
void
tr_read_core_c (const TrDoughFigures *figures,
                TrSide                side,
                TrReading            *reading)
{
  for (guint i = 0; i < figures->rests->len; i++)
    {
      const TrRestFigures *rest = &g_array_index (figures->rests, TrRestFigures, i);
      const TrLoggedRest *logged = find_logged_rest (figures, rest->turn, TRUE);
      double core_c = logged != NULL ? logged->core_c : rest->core_c_after_written;

      if (rest->turn < 1 || !tr_reading_is_worse (core_c, reading->value, TR_SIDE_OVER))
        continue;
      reading->value = core_c;
      reading->is_logged = logged != NULL;
      reading->at = rest->turn;
      g_free (reading->where);
      reading->where = g_strdup_printf ("/turns/%d/rest/min", rest->turn - 1);
    }
  hold_against_fat (figures, reading);
}

/* Of all roll-outs the one that lacks most. */
void
tr_read_window_minutes (const TrDoughFigures *figures,
                        TrSide                side,
                        TrReading            *reading)
{
  double most = NAN;

  for (guint i = 0; i < figures->rests->len; i++)
    {
      const TrRestFigures *rest = &g_array_index (figures->rests, TrRestFigures, i);
      double lacks = rest->next_minutes - rest->work_window_minutes;

      if (rest->turn < 1 || !tr_reading_is_worse (lacks, most, TR_SIDE_OVER))
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

void
tr_read_rest_minutes (const TrDoughFigures *figures,
                      TrSide                side,
                      TrReading            *reading)
{
  for (guint i = 0; i < figures->dough->turns->len; i++)
    {
      const TrRest *rest = tr_dough_get_turn (figures->dough, i)->rest;
      const TrLoggedRest *logged = find_logged_rest (figures, (int) i + 1, FALSE);
      double minutes = logged != NULL ? logged->minutes : rest != NULL ? rest->min_minutes : (double) NAN;

      if (!tr_reading_is_worse (minutes, reading->value, TR_SIDE_UNDER))
        continue;
      reading->value = minutes;
      reading->is_logged = logged != NULL;
      reading->at = i + 1;
      g_free (reading->where);
      reading->where = g_strdup_printf ("/turns/%u/rest/min", i);
    }
  tr_reading_hold_against (reading, &usual_rest_minutes[tr_reading_is_puff (figures)]);
}
