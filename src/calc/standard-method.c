/* standard-method.c: the usual steps of each kind of pastry
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "standard-method.h"

#include "ingredient.h"

/* What makes a step one of this dough's. */
typedef enum { ALWAYS, WITH_PREFERMENT, WITH_LEAVEN, WITH_LOCK_IN, WITH_CUT, WITH_FINISH } When;

typedef struct {
  TrStepId id;
  When when;
  double minutes, max_minutes, at_c, rh_percent;
  int place;
} UsualStep;

#define NO NAN
/* Each row: common practice. The proof is never warmer than the fat bears. */
static const UsualStep croissant_steps[] = {
  { TR_STEP_PREFERMENT_MIX, WITH_PREFERMENT, 5, NO, NO, NO, -1 },
  { TR_STEP_RIPEN, WITH_PREFERMENT, 720, 960, NO, NO, TR_PLACE_ROOM },
  { TR_STEP_MIX, ALWAYS, 10, NO, NO, NO, -1 },
  { TR_STEP_BULK, WITH_LEAVEN, 60, 90, NO, NO, TR_PLACE_ROOM },
  { TR_STEP_CHILL, ALWAYS, 480, 960, NO, NO, TR_PLACE_FRIDGE },
  { TR_STEP_FAT_BLOCK, WITH_LOCK_IN, 15, NO, NO, NO, -1 },
  { TR_STEP_LOCK_IN, WITH_LOCK_IN, 10, NO, NO, NO, -1 },
  { TR_STEP_ROLL_OUT, WITH_CUT, 8, NO, NO, NO, -1 },
  { TR_STEP_CUT, WITH_CUT, 10, NO, NO, NO, -1 },
  { TR_STEP_SHAPE, WITH_CUT, 20, NO, NO, NO, -1 },
  { TR_STEP_PROOF, WITH_LEAVEN, 120, 180, 26, 78, -1 },
  { TR_STEP_FINISH, WITH_FINISH, 10, NO, NO, NO, -1 },
  { TR_STEP_BAKE, ALWAYS, 18, NO, 190, NO, -1 },
  { TR_STEP_COOL, ALWAYS, 60, 240, NO, NO, -1 },
};

static const UsualStep danish_steps[] = {
  { TR_STEP_PREFERMENT_MIX, WITH_PREFERMENT, 5, NO, NO, NO, -1 },
  { TR_STEP_RIPEN, WITH_PREFERMENT, 720, 960, NO, NO, TR_PLACE_ROOM },
  { TR_STEP_MIX, ALWAYS, 8, NO, NO, NO, -1 },
  { TR_STEP_BULK, WITH_LEAVEN, 30, 60, NO, NO, TR_PLACE_ROOM },
  { TR_STEP_CHILL, ALWAYS, 240, 960, NO, NO, TR_PLACE_FRIDGE },
  { TR_STEP_FAT_BLOCK, WITH_LOCK_IN, 15, NO, NO, NO, -1 },
  { TR_STEP_LOCK_IN, WITH_LOCK_IN, 10, NO, NO, NO, -1 },
  { TR_STEP_ROLL_OUT, WITH_CUT, 8, NO, NO, NO, -1 },
  { TR_STEP_CUT, WITH_CUT, 10, NO, NO, NO, -1 },
  { TR_STEP_SHAPE, WITH_CUT, 20, NO, NO, NO, -1 },
  { TR_STEP_PROOF, WITH_LEAVEN, 60, 90, 26, 75, -1 },
  { TR_STEP_FINISH, WITH_FINISH, 15, NO, NO, NO, -1 },
  { TR_STEP_BAKE, ALWAYS, 15, NO, 200, NO, -1 },
  { TR_STEP_COOL, ALWAYS, 45, 240, NO, NO, -1 },
};

static const UsualStep puff_steps[] = {
  { TR_STEP_MIX, ALWAYS, 6, NO, NO, NO, -1 },
  { TR_STEP_CHILL, ALWAYS, 60, 1440, NO, NO, TR_PLACE_FRIDGE },
  { TR_STEP_FAT_BLOCK, WITH_LOCK_IN, 15, NO, NO, NO, -1 },
  { TR_STEP_LOCK_IN, WITH_LOCK_IN, 10, NO, NO, NO, -1 },
  { TR_STEP_ROLL_OUT, WITH_CUT, 10, NO, NO, NO, -1 },
  { TR_STEP_CUT, WITH_CUT, 10, NO, NO, NO, -1 },
  { TR_STEP_FINISH, WITH_FINISH, 5, NO, NO, NO, -1 },
  { TR_STEP_BAKE, ALWAYS, 25, NO, 200, NO, -1 },
  { TR_STEP_COOL, ALWAYS, 30, 240, NO, NO, -1 },
};

static const UsualStep other_steps[] = {
  { TR_STEP_PREFERMENT_MIX, WITH_PREFERMENT, 5, NO, NO, NO, -1 },
  { TR_STEP_RIPEN, WITH_PREFERMENT, 720, 960, NO, NO, TR_PLACE_ROOM },
  { TR_STEP_MIX, ALWAYS, 10, NO, NO, NO, -1 },
  { TR_STEP_BULK, WITH_LEAVEN, 60, 90, NO, NO, TR_PLACE_ROOM },
  { TR_STEP_CHILL, ALWAYS, 240, 960, NO, NO, TR_PLACE_FRIDGE },
  { TR_STEP_FAT_BLOCK, WITH_LOCK_IN, 15, NO, NO, NO, -1 },
  { TR_STEP_LOCK_IN, WITH_LOCK_IN, 10, NO, NO, NO, -1 },
  { TR_STEP_ROLL_OUT, WITH_CUT, 8, NO, NO, NO, -1 },
  { TR_STEP_CUT, WITH_CUT, 10, NO, NO, NO, -1 },
  { TR_STEP_PROOF, WITH_LEAVEN, 90, 150, 26, 75, -1 },
  { TR_STEP_FINISH, WITH_FINISH, 10, NO, NO, NO, -1 },
  { TR_STEP_BAKE, ALWAYS, 20, NO, 190, NO, -1 },
  { TR_STEP_COOL, ALWAYS, 45, 240, NO, NO, -1 },
};

static const struct { const UsualStep *steps; guint n; } usual[TR_N_KINDS] = {
  [TR_KIND_CROISSANT] = { croissant_steps, G_N_ELEMENTS (croissant_steps) },
  [TR_KIND_DANISH] = { danish_steps, G_N_ELEMENTS (danish_steps) },
  [TR_KIND_PUFF] = { puff_steps, G_N_ELEMENTS (puff_steps) },
  [TR_KIND_OTHER] = { other_steps, G_N_ELEMENTS (other_steps) },
};

static gboolean
has_leaven (const TrDough  *dough,
            const TrPantry *pantry)
{
  for (guint i = 0; i < dough->lines->len; i++)
    {
      TrIngredient ingredient;

      if (tr_ingredient_resolve (pantry, tr_dough_get_line (dough, i)->ingredient, &ingredient)
          && (ingredient.role == TR_ROLE_LEAVEN || ingredient.role == TR_ROLE_STARTER))
        return TRUE;
    }

  return FALSE;
}

static gboolean
has_stage (const TrDough *dough,
           TrStage        stage)
{
  for (guint i = 0; i < dough->lines->len; i++)
    if (tr_dough_get_line (dough, i)->stage == stage)
      return TRUE;

  return FALSE;
}

static gboolean
is_wanted (const TrDough  *dough,
           const TrPantry *pantry,
           When            when)
{
  switch (when)
    {
    case WITH_PREFERMENT:
      return has_stage (dough, TR_STAGE_PREFERMENT);
    case WITH_LEAVEN:
      return has_leaven (dough, pantry);
    case WITH_LOCK_IN:
      return dough->lock_in != NULL;
    case WITH_CUT:
      return dough->cut != NULL;
    case WITH_FINISH:
      return has_stage (dough, TR_STAGE_FINISH);
    case ALWAYS:
    default:
      return TRUE;
    }
}

/* Before the first that comes later in the work. */
static TrStep *
need_step (TrMethod *method,
           TrStepId  id)
{
  guint at = 0;

  for (guint i = 0; i < method->steps->len; i++)
    {
      TrStep *step = g_ptr_array_index (method->steps, i);

      if (step->id == id)
        return step;
      if (step->id < id)
        at = i + 1;
    }

  TrStep *step = tr_step_new (id);

  g_ptr_array_insert (method->steps, (int) at, step);

  return step;
}

/* What the most tender fat rolled in bears; NaN: not known, or none is. */
static double
find_proof_max_c (const TrDough  *dough,
                  const TrPantry *pantry)
{
  double bears = NAN;

  for (guint i = 0; i < dough->lines->len; i++)
    {
      const TrLine *line = tr_dough_get_line (dough, i);
      TrIngredient ingredient;

      if (line->stage == TR_STAGE_ROLL_IN && tr_ingredient_resolve (pantry, line->ingredient, &ingredient)
          && ingredient.role == TR_ROLE_FAT)
        bears = fmin (bears, ingredient.proof_max_c);
    }

  return bears;
}

static guint
fill (double *where,
      double  value)
{
  if (isnan (value) || tr_is_written (*where))
    return 0;

  *where = value;

  return 1;
}

static guint
fill_times (TrStep          *step,
            const UsualStep *from)
{
  guint filled = 0;

  /* Never a longest time under a time, whichever of them is the baker's own. */
  if (!(from->minutes > step->max_minutes))
    filled += fill (&step->minutes, from->minutes);
  if (!(from->max_minutes < step->minutes))
    filled += fill (&step->max_minutes, from->max_minutes);

  return filled;
}

/* A place has the temperature of its air: either is written, not both. */
static guint
fill_air (TrStep          *step,
          const UsualStep *from,
          double           most_c)
{
  guint filled = 0;

  if (step->place >= 0)
    return 0;

  if (from->place >= 0 && !tr_is_written (step->at_c))
    {
      step->place = from->place;
      return 1;
    }

  filled += fill (&step->at_c, fmin (from->at_c, most_c));
  filled += fill (&step->rh_percent, from->rh_percent);

  return filled;
}

guint
tr_dough_fill_usual_steps (TrDough        *dough,
                           const TrPantry *pantry)
{
  double proof_max_c = find_proof_max_c (dough, pantry);
  guint filled = 0;

  for (guint i = 0; i < usual[dough->kind].n; i++)
    {
      const UsualStep *from = &usual[dough->kind].steps[i];
      TrStep *step;

      if (!is_wanted (dough, pantry, from->when))
        continue;

      step = need_step (dough->method, from->id);
      filled += fill_times (step, from);
      filled += fill_air (step, from, from->id == TR_STEP_PROOF ? proof_max_c : NAN);
    }

  return filled;
}
