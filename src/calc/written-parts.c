/* written-parts.c: making and copying the parts of a dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lines, rests, lock-in, turns, cut, method and log: each belongs to one dough
 * and is copied with it. Their defaults live here, once; the JSON Schema in
 * data/ repeats them and a test holds the two together.
 */

#include "written-private.h"

static gpointer
copy_by (gconstpointer source,
         gpointer      copier)
{
  return ((gpointer (*) (gconstpointer)) copier) (source);
}

GPtrArray *
tr_list_copy (GPtrArray *list,
              gpointer (*copier) (gconstpointer),
              GDestroyNotify free_func)
{
  GPtrArray *copy = g_ptr_array_copy (list, (GCopyFunc) copy_by, copier);

  g_ptr_array_set_free_func (copy, free_func);

  return copy;
}

/* Lines */

TrLine *
tr_line_new (TrStage     stage,
             const char *ingredient,
             const char *amount)
{
  TrLine *line = g_new0 (TrLine, 1);

  line->stage = stage;
  line->ingredient = g_strdup (ingredient);
  line->amount = g_strdup (amount != NULL ? amount : "");
  line->hydration_percent = NAN;

  return line;
}

TrLine *
tr_line_copy (const TrLine *line)
{
  TrLine *copy = g_memdup2 (line, sizeof *line);

  copy->group = g_strdup (line->group);
  copy->ingredient = g_strdup (line->ingredient);
  copy->amount = g_strdup (line->amount);
  copy->text = g_strdup (line->text);
  copy->extra = g_strdup (line->extra);

  return copy;
}

void
tr_line_free (TrLine *line)
{
  if (line == NULL)
    return;

  g_free (line->group);
  g_free (line->ingredient);
  g_free (line->amount);
  g_free (line->text);
  g_free (line->extra);
  g_free (line);
}

/* Lock-in, turns, cut */

TrRest *
tr_rest_new (void)
{
  TrRest *rest = g_new0 (TrRest, 1);

  rest->min_minutes = 45;
  rest->max_minutes = 720;
  rest->start_c = rest->target_c = rest->thickness_mm = NAN;

  return rest;
}

TrRest *
tr_rest_copy (const TrRest *rest)
{
  if (rest == NULL)
    return NULL;

  TrRest *copy = g_memdup2 (rest, sizeof *rest);
  copy->extra = g_strdup (rest->extra);

  return copy;
}

void
tr_rest_free (TrRest *rest)
{
  if (rest == NULL)
    return;

  g_free (rest->extra);
  g_free (rest);
}

TrLockIn *
tr_lock_in_new (void)
{
  TrLockIn *lock_in = g_new0 (TrLockIn, 1);

  lock_in->fat_thickness_mm = lock_in->fat_width_mm = lock_in->fat_density_g_ml = NAN;
  lock_in->rim_mm = 10;
  lock_in->blocks = 1;

  return lock_in;
}

TrLockIn *
tr_lock_in_copy (const TrLockIn *lock_in)
{
  if (lock_in == NULL)
    return NULL;

  TrLockIn *copy = g_memdup2 (lock_in, sizeof *lock_in);
  copy->rest = tr_rest_copy (lock_in->rest);
  copy->extra = g_strdup (lock_in->extra);

  return copy;
}

void
tr_lock_in_free (TrLockIn *lock_in)
{
  if (lock_in == NULL)
    return;

  tr_rest_free (lock_in->rest);
  g_free (lock_in->extra);
  g_free (lock_in);
}

double
tr_lock_in_get_fat_thickness_mm (const TrLockIn *lock_in)
{
  if (tr_is_written (lock_in->fat_thickness_mm))
    return lock_in->fat_thickness_mm;

  return lock_in->style == TR_STYLE_LETTER || lock_in->style == TR_STYLE_INVERSE ? 4 : 6;
}

TrTurn *
tr_turn_new (int    fold,
             double thickness_mm)
{
  TrTurn *turn = g_new0 (TrTurn, 1);

  turn->fold = fold;
  turn->thickness_mm = thickness_mm;
  turn->length_mm = turn->width_mm = turn->minutes = NAN;

  return turn;
}

TrTurn *
tr_turn_copy (const TrTurn *turn)
{
  TrTurn *copy = g_memdup2 (turn, sizeof *turn);

  copy->rest = tr_rest_copy (turn->rest);
  copy->extra = g_strdup (turn->extra);

  return copy;
}

void
tr_turn_free (TrTurn *turn)
{
  if (turn == NULL)
    return;

  tr_rest_free (turn->rest);
  g_free (turn->extra);
  g_free (turn);
}

TrCut *
tr_cut_new (void)
{
  TrCut *cut = g_new0 (TrCut, 1);

  cut->base_mm = 90;
  cut->height_mm = 260;
  cut->width_mm = cut->length_mm = cut->side_mm = cut->diameter_mm = cut->gap_mm = NAN;
  cut->slice_mm = cut->roll_length_mm = NAN;
  cut->thickness_mm = 4;
  cut->piece_mass_g = NAN;
  cut->trim_mm = 8;
  cut->shrink_percent = 4;
  cut->rolled_up = -1;
  cut->printed_sheet_mm[0] = cut->printed_sheet_mm[1] = NAN;

  return cut;
}

TrCut *
tr_cut_copy (const TrCut *cut)
{
  if (cut == NULL)
    return NULL;

  TrCut *copy = g_memdup2 (cut, sizeof *cut);
  copy->extra = g_strdup (cut->extra);

  return copy;
}

void
tr_cut_free (TrCut *cut)
{
  if (cut == NULL)
    return;

  g_free (cut->extra);
  g_free (cut);
}

gboolean
tr_cut_is_rolled_up (const TrCut *cut)
{
  return cut->rolled_up >= 0 ? cut->rolled_up != 0 : cut->shape == TR_SHAPE_TRIANGLE;
}

/* Method and log */

TrStep *
tr_step_new (TrStepId id)
{
  TrStep *step = g_new0 (TrStep, 1);

  step->id = id;
  step->minutes = step->max_minutes = step->at_c = step->rh_percent = NAN;
  step->place = -1;

  return step;
}

TrStep *
tr_step_copy (const TrStep *step)
{
  TrStep *copy = g_memdup2 (step, sizeof *step);

  copy->extra = g_strdup (step->extra);

  return copy;
}

void
tr_step_free (TrStep *step)
{
  if (step == NULL)
    return;

  g_free (step->extra);
  g_free (step);
}

TrMethod *
tr_method_new (void)
{
  TrMethod *method = g_new0 (TrMethod, 1);

  method->dough_c = 22;
  method->flour_c = 20;
  method->preferment_c = method->liquids_c = NAN;
  method->tap_c = 16;
  method->friction_c = 12;
  method->friction_n = 3;
  method->steps = NEW_LIST (step);

  return method;
}

TrMethod *
tr_method_copy (const TrMethod *method)
{
  TrMethod *copy = g_memdup2 (method, sizeof *method);

  copy->steps = COPY_LIST (method->steps, step);
  copy->extra = g_strdup (method->extra);

  return copy;
}

void
tr_method_free (TrMethod *method)
{
  if (method == NULL)
    return;

  g_ptr_array_unref (method->steps);
  g_free (method->extra);
  g_free (method);
}
