/* findings-method.c: what the steps of the method show
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How warm the proof is for the fat, and how long milk and egg are kept warm. A
 * plan for handling food safely it is not: local rules decide.
 */

#include "look.h"

#include "measure.h"

#define COLD_CHAIN_HOURS 4.0
#define COLD_CHAIN_C 5.0

static void
look_at_proof (const TrDoughFigures *figures,
               GPtrArray            *found)
{
  const GPtrArray *steps = figures->dough->method->steps;
  const char *fat;
  double bears = tr_look_find_proof_max (figures, &fat);

  for (guint i = 0; i < steps->len; i++)
    {
      const TrStep *step = steps->pdata[i];

      if (step->id == TR_STEP_PROOF && step->at_c > bears + TR_HAIR)
        tr_look_add (found, TR_FINDING_PROOF_HOT, TR_SEVERITY_WARN, g_strdup_printf ("/method/steps/%u/at_c", i),
                     step->at_c, bears, "IREKS-Kompendium 11.5; ingredient table")
          ->name = g_strdup (fat);
    }
}

/* The longest a step may take, if it is warmer than cold holding; else 0. */
static double
warm_minutes (const TrBench *bench,
              const TrStep  *step)
{
  double at_c = tr_look_get_step_c (bench, step);
  double minutes = fmax (step->minutes, step->max_minutes);       /* fmax passes over NaN */

  return at_c > COLD_CHAIN_C + TR_HAIR && minutes > 0 ? minutes : 0;
}

static double
sum_warm_steps (const TrDoughFigures *figures,
                TrStepId              first,
                TrStepId              last)
{
  const GPtrArray *steps = figures->dough->method->steps;
  double minutes = 0;

  for (guint i = 0; i < steps->len; i++)
    {
      const TrStep *step = steps->pdata[i];

      if (step->id >= first && step->id <= last)
        minutes += warm_minutes (figures->bench, step);
    }

  return minutes;
}

static double
warm_rest (const TrBench *bench,
           const TrRest  *rest)
{
  if (rest == NULL || tr_look_get_place_c (bench, rest->place) <= COLD_CHAIN_C + TR_HAIR)
    return 0;

  return fmax (rest->min_minutes, rest->max_minutes);
}

/* Mixing to proofing, with the turns on the bench and rests that are not cold. */
static double
sum_warm_dough (const TrDoughFigures *figures)
{
  const TrDough *dough = figures->dough;
  double minutes = sum_warm_steps (figures, TR_STEP_MIX, TR_STEP_PROOF);

  if (dough->lock_in != NULL)
    minutes += warm_rest (figures->bench, dough->lock_in->rest);
  for (guint i = 0; i < dough->turns->len; i++)
    {
      const TrTurn *turn = tr_dough_get_turn (dough, i);

      minutes += tr_is_written (turn->minutes) ? turn->minutes : figures->bench->turn_minutes;
      minutes += warm_rest (figures->bench, turn->rest);
    }

  return minutes;
}

/* From the finish to the oven, or to the end when it is not baked any more. */
static double
sum_warm_finish (const TrDoughFigures *figures,
                 gboolean             *is_baked)
{
  const GPtrArray *steps = figures->dough->method->steps;
  gboolean is_finished = FALSE;
  double minutes = 0;

  *is_baked = FALSE;
  for (guint i = 0; i < steps->len && !*is_baked; i++)
    {
      const TrStep *step = steps->pdata[i];

      is_finished = is_finished || step->id == TR_STEP_FINISH;
      *is_baked = is_finished && step->id == TR_STEP_BAKE;
      if (is_finished && !*is_baked)
        minutes += warm_minutes (figures->bench, step);
    }

  return minutes;
}

static int
find_egg_or_dairy (const TrDoughFigures *figures,
                   TrStage               stage)
{
  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = tr_look_get_line (figures, i);

      if (line->line->stage == stage
          && (tr_line_has_role (line, TR_ROLE_EGG) || tr_line_has_role (line, TR_ROLE_DAIRY)))
        return (int) i;
    }

  return -1;
}

static void
add_cold_chain (const TrDoughFigures *figures,
                TrStage               stage,
                double                minutes,
                gboolean              is_baked,
                GPtrArray            *found)
{
  int line = find_egg_or_dairy (figures, stage);
  double hours = minutes / 60;
  TrSeverity severity = is_baked && stage != TR_STAGE_PREFERMENT ? TR_SEVERITY_NOTE : TR_SEVERITY_WARN;

  if (line < 0 || !(hours > COLD_CHAIN_HOURS + TR_HAIR))
    return;

  TrFinding *finding = tr_look_add (found, TR_FINDING_COLD_CHAIN, severity, tr_look_line_pointer (line, "ingredient"),
                                    hours, COLD_CHAIN_HOURS, "FDA Food Code 3-501.16, 3-501.19; local rules decide");
  finding->with[0] = stage;
  finding->with[1] = is_baked ? 1 : 0;
  finding->name = g_strdup (tr_look_get_line (figures, (guint) line)->ingredient.id);
}

static void
look_at_cold_chain (const TrDoughFigures *figures,
                    GPtrArray            *found)
{
  gboolean is_baked = tr_dough_find_step (figures->dough, TR_STEP_BAKE) != NULL;
  gboolean is_finish_baked;
  double finish_minutes = sum_warm_finish (figures, &is_finish_baked);

  add_cold_chain (figures, TR_STAGE_FINISH, finish_minutes, is_finish_baked, found);
  add_cold_chain (figures, TR_STAGE_PREFERMENT,
                  sum_warm_steps (figures, TR_STEP_PREFERMENT_MIX, TR_STEP_RIPEN), is_baked, found);
  add_cold_chain (figures, TR_STAGE_DOUGH, sum_warm_dough (figures), is_baked, found);
}

void
tr_look_at_method (const TrDoughFigures *figures,
                   GPtrArray            *found)
{
  look_at_proof (figures, found);
  look_at_cold_chain (figures, found);
}
