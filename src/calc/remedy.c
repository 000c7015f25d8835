/* remedy.c: what would bring a reading back, as an edit of the dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "remedy.h"

#include "differences.h"
#include "lamination.h"
#include "look.h"
#include "measure.h"
#include "repair.h"

#define RISE_STEP_MINUTES 5.0
#define BAKE_STEP_MINUTES 1.0
#define THICKNESS_STEP_MM 0.5
#define PIECE_STEP_G 0.1
/* Colder than this no proof gets under way; what asks for it is no remedy. */
#define LEAST_PROOF_C 18.0

/* The nearest round value inside that end. */
static double
round_inside (double limit,
              TrSide side,
              double step)
{
  double steps = limit / step;

  return step * (side == TR_SIDE_OVER ? floor (steps + TR_HAIR) : ceil (steps - TR_HAIR));
}

/* Method */

static gboolean
find_proof_c (const TrDoughFigures *figures,
              const TrReading      *reading,
              TrSide                side,
              TrRemedy             *remedy)
{
  const char *fat;
  double bears = tr_look_find_proof_max (figures, &fat);

  remedy->kind = TR_REMEDY_PROOF_C;
  remedy->target = round_inside (tr_reading_get_limit (reading, side), side, 1);
  if (isfinite (bears))
    remedy->target = fmin (remedy->target, floor (bears + TR_HAIR));

  /* Too cool already, and yet the fat bears no more: then warmer is no way. */
  return remedy->target >= LEAST_PROOF_C
         && (side == TR_SIDE_OVER ? remedy->target < reading->value : remedy->target > reading->value);
}

static gboolean
find_minutes (const TrReading *reading,
              TrSide           side,
              TrRemedyKind     kind,
              double           step,
              TrRemedy        *remedy)
{
  remedy->kind = kind;
  remedy->target = round_inside (tr_reading_get_limit (reading, side), side, step);

  return remedy->target > 0;
}

static gboolean
find_c (const TrReading *reading,
        TrSide           side,
        TrRemedyKind     kind,
        TrRemedy        *remedy)
{
  remedy->kind = kind;
  remedy->target = round_inside (tr_reading_get_limit (reading, side), side, 1);

  return TRUE;
}

/* Until the core is where it is wanted, if that is cool enough for the fat. */
static gboolean
find_rest_for_core (const TrDoughFigures *figures,
                    const TrReading      *reading,
                    TrRemedy             *remedy)
{
  remedy->kind = TR_REMEDY_REST_MINUTES;
  remedy->turn = (guint) reading->at;
  for (guint i = 0; i < figures->rests->len; i++)
    {
      const TrRestFigures *rest = &g_array_index (figures->rests, TrRestFigures, i);

      if (rest->turn != (int) remedy->turn || !(rest->target_c <= reading->high) || isnan (rest->minutes_to_core))
        continue;
      remedy->target = round_inside (rest->minutes_to_core, TR_SIDE_UNDER, RISE_STEP_MINUTES);

      /* A freezer would freeze the faces first. */
      return remedy->target > rest->written_minutes
             && !(remedy->target > rest->minutes_to_surface_freezing);
    }

  return FALSE;
}

/* Lamination */

/* Whether that many fat layers instead of those there are bring it inside. */
static gboolean
is_inside_with (const TrDoughFigures *figures,
                const TrReading      *reading,
                double                fat_layers)
{
  double value = reading->id == TR_READING_FAT_LAYERS ? fat_layers
                                                      : reading->value * figures->lamination.fat_layers / fat_layers;

  return !(value < reading->low * (1 - TR_HAIR)) && !(value > reading->high * (1 + TR_HAIR));
}

/* Fewer: the last fold smaller by as little as will do, else without it. */
static gboolean
find_fewer_layers (const TrDoughFigures *figures,
                   const TrReading      *reading,
                   TrRemedy             *remedy)
{
  guint n = figures->dough->turns->len;
  double layers = figures->lamination.fat_layers;

  if (n == 0)
    return FALSE;

  int fold = tr_dough_get_turn (figures->dough, n - 1)->fold;

  remedy->turn = n;
  remedy->kind = TR_REMEDY_FOLD;
  for (int k = fold - 1; k >= 2; k--)
    {
      remedy->target = k;
      if (is_inside_with (figures, reading, layers / fold * k))
        return TRUE;
    }
  remedy->kind = TR_REMEDY_DROP_TURN;
  remedy->target = NAN;

  return n > 1 && is_inside_with (figures, reading, layers / fold);
}

/* More: the last fold a letter or book fold where it is less, else one added. */
static gboolean
find_more_layers (const TrDoughFigures *figures,
                  const TrReading      *reading,
                  TrRemedy             *remedy)
{
  guint n = figures->dough->turns->len;
  double layers = figures->lamination.fat_layers;

  if (n == 0)
    return FALSE;

  int fold = tr_dough_get_turn (figures->dough, n - 1)->fold;

  remedy->kind = TR_REMEDY_FOLD;
  remedy->turn = n;
  for (int k = MAX (fold + 1, 3); k <= 4; k++)
    {
      remedy->target = k;
      if (is_inside_with (figures, reading, layers / fold * k))
        return TRUE;
    }
  remedy->kind = TR_REMEDY_ADD_TURN;
  remedy->turn = n + 1;
  for (int k = 2; k <= 4; k++)
    {
      remedy->target = k;
      if (is_inside_with (figures, reading, layers * k))
        return n < TR_MAX_TURNS;
    }

  return FALSE;
}

/* Rolled less thin it stretches less; only where the width is kept. */
static gboolean
find_turn_mm (const TrDoughFigures *figures,
              const TrReading      *reading,
              TrRemedy             *remedy)
{
  remedy->kind = TR_REMEDY_TURN_MM;
  remedy->turn = (guint) reading->at;
  if (remedy->turn == 0)
    return FALSE;

  const TrTurn *turn = tr_dough_get_turn (figures->dough, remedy->turn - 1);
  double start_mm = g_array_index (figures->lamination.steps, TrTurnFigures, remedy->turn - 1).start_mm.mm[2];

  remedy->target = round_inside (start_mm / reading->high, TR_SIDE_UNDER, THICKNESS_STEP_MM);

  return tr_is_written (turn->thickness_mm) && !tr_is_written (turn->width_mm) && remedy->target < start_mm;
}

/* Formula */

/* To that number, as far as the lines reach, if that is far enough to matter. */
static gboolean
find_near (const TrDoughFigures *figures,
           const TrReading      *reading,
           TrRatio               ratio,
           double                number,
           TrRemedy             *remedy)
{
  double step = tr_ratio_get_step (ratio);
  TrRatioMoves moves;

  tr_ratio_get_moves (figures, ratio, &moves);
  *remedy = (TrRemedy) { .kind = TR_REMEDY_RATIO, .target = step * round (number / step), .ratio = ratio };
  if (!moves.can_move)
    return FALSE;
  remedy->target = CLAMP (remedy->target, moves.reach.min, moves.reach.max);

  return fabs (remedy->target - reading->value) >= step / 2;
}

/* Whether the reading is held against the band, and not against another dough. */
static gboolean
is_of_band (const TrDoughFigures *figures,
            const TrReading      *reading,
            TrRatio               ratio)
{
  TrBand band;

  return tr_ratio_get_band (figures, ratio, &band)
         && fabs (reading->low - band.low) <= 0 && fabs (reading->high - band.high) <= 0;
}

static gboolean
find_ratio (const TrDoughFigures *figures,
            const TrReading      *reading,
            TrSide                side,
            TrRemedy             *remedy)
{
  TrRatio ratio = (TrRatio) tr_reading_get_ratio (reading->id);
  TrFinding finding = {
    .id = ratio == TR_RATIO_SALT ? TR_FINDING_SALT : TR_FINDING_BAND, .name = (char *) tr_ratio_key (ratio),
    .value = reading->value, .limit = tr_reading_get_limit (reading, side),
  };
  TrRepair repair;

  if (!is_of_band (figures, reading, ratio))
    return find_near (figures, reading, ratio, tr_reading_get_limit (reading, side), remedy);
  if (!tr_finding_get_repair (figures, &finding, &repair))
    return FALSE;
  *remedy = (TrRemedy) { .kind = TR_REMEDY_RATIO, .target = repair.target, .ratio = ratio, .adds_line = repair.adds_line };

  return TRUE;
}

static gboolean
find_remedy (const TrDoughFigures *figures,
             const TrReading      *reading,
             TrSide                side,
             TrRemedy             *remedy)
{
  switch (reading->id)
    {
    case TR_READING_PROOF_C: case TR_READING_PROOF_OF_FAT_C:
      return find_proof_c (figures, reading, side, remedy);
    case TR_READING_PROOF_MINUTES:
      return find_minutes (reading, side, TR_REMEDY_PROOF_MINUTES, RISE_STEP_MINUTES, remedy);
    case TR_READING_BULK_MINUTES:
      return find_minutes (reading, side, TR_REMEDY_BULK_MINUTES, RISE_STEP_MINUTES, remedy);
    case TR_READING_MIXED_C:
      return find_c (reading, side, TR_REMEDY_MIXED_C, remedy) && remedy->target < figures->dough->method->dough_c;
    case TR_READING_BAKE_C:
      return find_c (reading, side, TR_REMEDY_BAKE_C, remedy);
    case TR_READING_BAKE_MINUTES:
      return find_minutes (reading, side, TR_REMEDY_BAKE_MINUTES, BAKE_STEP_MINUTES, remedy);
    case TR_READING_REST_MINUTES:
      remedy->turn = (guint) reading->at;
      return find_minutes (reading, side, TR_REMEDY_REST_MINUTES, RISE_STEP_MINUTES, remedy);
    case TR_READING_CORE_C:
      return find_rest_for_core (figures, reading, remedy);
    case TR_READING_SHEET_MM:
      remedy->kind = TR_REMEDY_SHEET_MM;
      remedy->target = tr_reading_get_limit (reading, side);
      return TRUE;
    case TR_READING_STRETCH:
      return find_turn_mm (figures, reading, remedy);
    case TR_READING_FAT_LAYERS:
      return side == TR_SIDE_OVER ? find_fewer_layers (figures, reading, remedy) : find_more_layers (figures, reading, remedy);
    case TR_READING_FAT_LAYER_UM:
      return side == TR_SIDE_OVER ? find_more_layers (figures, reading, remedy) : find_fewer_layers (figures, reading, remedy);
    case TR_READING_ALL_WATER: case TR_READING_ROLL_IN: case TR_READING_YEAST: case TR_READING_SALT: case TR_READING_SUGAR:
      return find_ratio (figures, reading, side, remedy);
    case TR_READING_SALT_MIDDLE: case TR_READING_SUGAR_MIDDLE:
      return find_near (figures, reading, (TrRatio) tr_reading_get_ratio (reading->id), reading->low, remedy);
    case TR_READING_ROOM_C: case TR_READING_WINDOW_MINUTES: case TR_READING_SALTED_FAT: case TR_N_READINGS:
    default:
      return FALSE;
    }
}

/* Writing it */

static double
find_warmest (const TrDough *dough,
              TrStepId       id)
{
  double warmest = -INFINITY;

  for (guint i = 0; i < dough->method->steps->len; i++)
    {
      const TrStep *step = dough->method->steps->pdata[i];

      if (step->id == id)
        warmest = fmax (warmest, step->at_c);
    }

  return warmest;
}

/* Down: whatever is warmer. Up: every proof that is cooler, but of a bake that
 * falls only its hottest part. */
static void
set_step_c (TrDough        *dough,
            TrStepId        id,
            const TrRemedy *remedy)
{
  double warmest = find_warmest (dough, id);

  for (guint i = 0; i < dough->method->steps->len; i++)
    {
      TrStep *step = dough->method->steps->pdata[i];

      if (step->id == id
          && (remedy->side == TR_SIDE_OVER ? step->at_c > remedy->target
                                           : step->at_c < remedy->target && (id == TR_STEP_PROOF || step->at_c >= warmest)))
        step->at_c = remedy->target;
    }
}

static double
get_minutes (const TrStep *step,
             TrSide        side)
{
  gboolean by_max = (side == TR_SIDE_OVER && step->max_minutes > step->minutes) || isnan (step->minutes);

  return by_max ? step->max_minutes : step->minutes;
}

static void
bring_minutes (double         *minutes,
               const TrRemedy *remedy)
{
  if (!isnan (*minutes))
    *minutes = remedy->side == TR_SIDE_OVER ? fmin (*minutes, remedy->target) : fmax (*minutes, remedy->target);
}

static void
set_longest_minutes (TrDough        *dough,
                     TrStepId        id,
                     const TrRemedy *remedy)
{
  TrStep *longest = NULL;
  double most = -1;

  for (guint i = 0; i < dough->method->steps->len; i++)
    {
      TrStep *step = dough->method->steps->pdata[i];
      double minutes = get_minutes (step, remedy->side);

      if (step->id != id || !(minutes > most))
        continue;
      longest = step;
      most = minutes;
    }
  if (longest == NULL)
    return;

  bring_minutes (&longest->minutes, remedy);
  bring_minutes (&longest->max_minutes, remedy);
}

/* The whole bake gets as much longer or shorter as it lacks, in its first part. */
static void
set_bake_minutes (TrDough        *dough,
                  const TrRemedy *remedy)
{
  TrStep *first = NULL;
  double total = 0;

  for (guint i = 0; i < dough->method->steps->len; i++)
    {
      TrStep *step = dough->method->steps->pdata[i];

      if (step->id != TR_STEP_BAKE || isnan (step->minutes))
        continue;
      total += step->minutes;
      first = first != NULL ? first : step;
    }
  if (first == NULL || (remedy->side == TR_SIDE_OVER ? total <= remedy->target : total >= remedy->target))
    return;

  first->minutes = fmax (first->minutes + remedy->target - total, 0);
  if (first->max_minutes < first->minutes)
    first->max_minutes = first->minutes;
}

static void
set_rest_minutes (TrDough *dough,
                  guint    turn,
                  double   target)
{
  TrTurn *own = tr_dough_get_turn (dough, turn - 1);

  if (own->rest == NULL)
    own->rest = tr_rest_new ();

  TrRest *rest = own->rest;

  rest->min_minutes = fmax (rest->min_minutes, target);
  rest->max_minutes = fmax (rest->max_minutes, target);
}

static void
set_sheet_mm (TrDough              *dough,
              const TrDoughFigures *figures,
              const TrRemedy       *remedy)
{
  TrCut *cut = dough->cut;

  if (tr_is_written (cut->piece_mass_g))
    cut->piece_mass_g = round_inside (cut->piece_mass_g * remedy->target / figures->sheet.thickness_mm, remedy->side, PIECE_STEP_G);
  else
    cut->thickness_mm = remedy->target;
}

/* Like the last, so that it has its thickness and its rest. */
static void
add_turn (TrDough *dough,
          int      fold)
{
  TrTurn *turn = tr_turn_copy (tr_dough_get_turn (dough, dough->turns->len - 1));

  turn->fold = fold;
  turn->trim_mm = 0;
  g_ptr_array_add (dough->turns, turn);
}

gboolean
tr_remedy_apply (TrDough              *dough,
                 const TrDoughFigures *figures,
                 const TrRemedy       *remedy,
                 GError              **error)
{
  g_return_val_if_fail (dough != NULL && figures != NULL && remedy != NULL, FALSE);

  switch (remedy->kind)
    {
    case TR_REMEDY_PROOF_C:
      set_step_c (dough, TR_STEP_PROOF, remedy);
      break;
    case TR_REMEDY_PROOF_MINUTES:
      set_longest_minutes (dough, TR_STEP_PROOF, remedy);
      break;
    case TR_REMEDY_BULK_MINUTES:
      set_longest_minutes (dough, TR_STEP_BULK, remedy);
      break;
    case TR_REMEDY_MIXED_C:
      dough->method->dough_c = remedy->target;
      break;
    case TR_REMEDY_BAKE_C:
      set_step_c (dough, TR_STEP_BAKE, remedy);
      break;
    case TR_REMEDY_BAKE_MINUTES:
      set_bake_minutes (dough, remedy);
      break;
    case TR_REMEDY_REST_MINUTES:
      set_rest_minutes (dough, remedy->turn, remedy->target);
      break;
    case TR_REMEDY_TURN_MM:
      tr_dough_get_turn (dough, remedy->turn - 1)->thickness_mm = remedy->target;
      break;
    case TR_REMEDY_SHEET_MM:
      set_sheet_mm (dough, figures, remedy);
      break;
    case TR_REMEDY_FOLD:
      tr_dough_get_turn (dough, remedy->turn - 1)->fold = (int) remedy->target;
      break;
    case TR_REMEDY_DROP_TURN:
      g_ptr_array_remove_index (dough->turns, remedy->turn - 1);
      break;
    case TR_REMEDY_ADD_TURN:
      add_turn (dough, (int) remedy->target);
      break;
    case TR_REMEDY_RATIO:
      return tr_repair_apply (dough, figures,
                              &(TrRepair) { remedy->ratio, remedy->target, remedy->adds_line }, error);
    case TR_REMEDY_NONE:
    case TR_N_REMEDIES:
    default:
      g_return_val_if_reached (FALSE);
    }

  return TRUE;
}

/* What went wrong in the log may well be written right already. */
static gboolean
changes_anything (const TrDoughFigures *figures,
                  const TrRemedy       *remedy)
{
  g_autoptr (TrDough) mended = tr_dough_copy (figures->dough);
  g_autoptr (GPtrArray) differences = NULL;

  if (!tr_remedy_apply (mended, figures, remedy, NULL))
    return FALSE;
  differences = tr_dough_differences (figures->dough, mended);

  return differences->len > 0;
}

gboolean
tr_remedy_find (const TrDoughFigures *figures,
                const TrReading      *reading,
                TrSide                side,
                TrRemedy             *remedy)
{
  static const TrRemedy none = { .kind = TR_REMEDY_NONE, .target = NAN };

  g_return_val_if_fail (figures != NULL && reading != NULL && remedy != NULL, FALSE);

  *remedy = none;
  if (find_remedy (figures, reading, side, remedy))
    {
      remedy->side = side;
      if (changes_anything (figures, remedy))
        return TRUE;
    }

  *remedy = none;
  return FALSE;
}
