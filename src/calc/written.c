/* written.c: making, sharing and copying trials, doughs, bench and pantry
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * These are shared between trials by reference count; a draft owns a copy of
 * what it changes. Defaults live here and in written-parts.c, once; the JSON
 * Schema in data/ repeats them and a test holds the two together.
 */

#include "written-private.h"

gboolean
tr_set_text (char       **where,
             const char  *text)
{
  if (g_strcmp0 (*where, text) == 0)
    return FALSE;

  char *copy = g_strdup (text);
  g_free (*where);
  *where = copy;

  return TRUE;
}

/* Doughs */

TrDough *
tr_dough_new (const char *id)
{
  TrDough *dough = g_new0 (TrDough, 1);

  g_atomic_ref_count_init (&dough->ref_count);
  dough->id = g_strdup (id);
  dough->name = g_strdup ("");
  dough->notes = g_strdup ("");
  dough->lines = NEW_LIST (line);
  dough->batch_by = TR_BATCH_PIECES;
  dough->batch_value = 24;
  dough->handling_loss_percent = 2;
  dough->bake_loss_percent = NAN;
  dough->dough_density_g_ml = 1.15;
  dough->turns = NEW_LIST (turn);
  dough->method = tr_method_new ();
  dough->log = tr_log_new ();

  return dough;
}

TrDough *
tr_dough_ref (TrDough *dough)
{
  g_atomic_ref_count_inc (&dough->ref_count);
  return dough;
}

void
tr_dough_unref (TrDough *dough)
{
  if (dough == NULL || !g_atomic_ref_count_dec (&dough->ref_count))
    return;

  g_free (dough->id);
  g_free (dough->name);
  g_free (dough->from);
  g_free (dough->notes);
  g_ptr_array_unref (dough->lines);
  tr_lock_in_free (dough->lock_in);
  g_ptr_array_unref (dough->turns);
  tr_cut_free (dough->cut);
  tr_method_free (dough->method);
  tr_log_free (dough->log);
  g_free (dough->extra);
  g_free (dough->extra_batch);
  g_free (dough);
}

TrDough *
tr_dough_copy (const TrDough *dough)
{
  TrDough *copy = g_memdup2 (dough, sizeof *dough);

  g_atomic_ref_count_init (&copy->ref_count);
  copy->id = g_strdup (dough->id);
  copy->name = g_strdup (dough->name);
  copy->from = g_strdup (dough->from);
  copy->notes = g_strdup (dough->notes);
  copy->lines = COPY_LIST (dough->lines, line);
  copy->lock_in = tr_lock_in_copy (dough->lock_in);
  copy->turns = COPY_LIST (dough->turns, turn);
  copy->cut = tr_cut_copy (dough->cut);
  copy->method = tr_method_copy (dough->method);
  copy->log = tr_log_copy (dough->log);
  copy->extra = g_strdup (dough->extra);
  copy->extra_batch = g_strdup (dough->extra_batch);

  return copy;
}

TrLine *
tr_dough_get_line (const TrDough *dough,
                   guint          index)
{
  return g_ptr_array_index (dough->lines, index);
}

TrTurn *
tr_dough_get_turn (const TrDough *dough,
                   guint          index)
{
  return g_ptr_array_index (dough->turns, index);
}

const TrStep *
tr_dough_find_step (const TrDough *dough,
                    TrStepId       id)
{
  for (guint i = 0; i < dough->method->steps->len; i++)
    {
      const TrStep *step = g_ptr_array_index (dough->method->steps, i);

      if (step->id == id)
        return step;
    }

  return NULL;
}

/* Bench */

TrBench *
tr_bench_new (void)
{
  TrBench *bench = g_new0 (TrBench, 1);

  g_atomic_ref_count_init (&bench->ref_count);
  bench->worktop_mm[0] = 900;
  bench->worktop_mm[1] = 600;
  bench->roll_width_max_mm = 450;
  bench->roll_thickness_min_mm = 2.5;
  bench->roll_thickness_max_mm = 40;
  bench->pass_reduction_percent = 30;            /* common practice: a quarter to a half */
  bench->room_c = 21;
  bench->fridge_c = 4;
  bench->freezer_c = -18;
  bench->h_w_m2k[TR_PLACE_FRIDGE] = 8;
  bench->h_w_m2k[TR_PLACE_FREEZER] = 8;
  bench->h_w_m2k[TR_PLACE_ROOM] = 8;
  bench->h_bench_w_m2k = 25;
  bench->tray_mm[0] = 600;
  bench->tray_mm[1] = 400;
  bench->piece_gap_mm = 50;
  bench->trays_in_oven = 2;
  bench->preheat_minutes = 30;
  bench->hands = 1;
  bench->mixers = 1;
  bench->mixer_max_g = 4000;
  bench->turn_minutes = 10;
  bench->scale_step_g = 1;
  bench->fine_scale_step_g = 0.1;
  bench->currency = g_strdup ("EUR");

  return bench;
}

TrBench *
tr_bench_ref (TrBench *bench)
{
  g_atomic_ref_count_inc (&bench->ref_count);
  return bench;
}

void
tr_bench_unref (TrBench *bench)
{
  if (bench == NULL || !g_atomic_ref_count_dec (&bench->ref_count))
    return;

  g_free (bench->currency);
  g_free (bench->extra);
  g_free (bench->extra_h);
  g_free (bench);
}

TrBench *
tr_bench_copy (const TrBench *bench)
{
  TrBench *copy = g_memdup2 (bench, sizeof *bench);

  g_atomic_ref_count_init (&copy->ref_count);
  copy->currency = g_strdup (bench->currency);
  copy->extra = g_strdup (bench->extra);
  copy->extra_h = g_strdup (bench->extra_h);

  return copy;
}

/* The baker's own ingredients */

static void
household_clear (TrHousehold *household)
{
  g_free (household->unit);
}

static GArray *
household_new (void)
{
  GArray *household = g_array_new (FALSE, FALSE, sizeof (TrHousehold));

  g_array_set_clear_func (household, (GDestroyNotify) household_clear);

  return household;
}

TrOwnIngredient *
tr_own_ingredient_new (const char *id,
                       const char *like)
{
  TrOwnIngredient *own = g_new0 (TrOwnIngredient, 1);

  own->id = g_strdup (id);
  own->like = g_strdup (like);
  for (guint i = 0; i < TR_N_PARTS; i++)
    own->per_100g[i] = NAN;
  own->density_g_ml = own->price_per_kg = NAN;
  own->plastic_low_c = own->plastic_high_c = own->soft_c = own->liquid_c = own->proof_max_c = NAN;

  return own;
}

TrOwnIngredient *
tr_own_ingredient_copy (const TrOwnIngredient *own)
{
  TrOwnIngredient *copy = g_memdup2 (own, sizeof *own);

  copy->id = g_strdup (own->id);
  copy->like = g_strdup (own->like);
  copy->name = g_strdup (own->name);
  copy->allergens = g_strdupv (own->allergens);
  copy->extra = g_strdup (own->extra);
  copy->extra_per_100g = g_strdup (own->extra_per_100g);
  copy->household = own->household != NULL ? household_new () : NULL;
  for (guint i = 0; own->household != NULL && i < own->household->len; i++)
    {
      TrHousehold weight = g_array_index (own->household, TrHousehold, i);

      weight.unit = g_strdup (weight.unit);
      tr_own_ingredient_add_household (copy, weight);
    }

  return copy;
}

void
tr_own_ingredient_add_household (TrOwnIngredient *own,
                                 TrHousehold      weight)
{
  if (own->household == NULL)
    own->household = household_new ();
  g_array_append_val (own->household, weight);
}

void
tr_own_ingredient_free (TrOwnIngredient *own)
{
  if (own == NULL)
    return;

  g_free (own->id);
  g_free (own->like);
  g_free (own->name);
  g_clear_pointer (&own->household, g_array_unref);
  g_strfreev (own->allergens);
  g_free (own->extra);
  g_free (own->extra_per_100g);
  g_free (own);
}

TrPantry *
tr_pantry_new (void)
{
  TrPantry *pantry = g_new0 (TrPantry, 1);

  g_atomic_ref_count_init (&pantry->ref_count);
  pantry->own = NEW_LIST (own_ingredient);

  return pantry;
}

TrPantry *
tr_pantry_ref (TrPantry *pantry)
{
  g_atomic_ref_count_inc (&pantry->ref_count);
  return pantry;
}

void
tr_pantry_unref (TrPantry *pantry)
{
  if (pantry == NULL || !g_atomic_ref_count_dec (&pantry->ref_count))
    return;

  g_ptr_array_unref (pantry->own);
  g_free (pantry);
}

TrPantry *
tr_pantry_copy (const TrPantry *pantry)
{
  TrPantry *copy = g_new0 (TrPantry, 1);

  g_atomic_ref_count_init (&copy->ref_count);
  copy->own = COPY_LIST (pantry->own, own_ingredient);

  return copy;
}

const TrOwnIngredient *
tr_pantry_find (const TrPantry *pantry,
                const char     *id)
{
  for (guint i = 0; i < pantry->own->len; i++)
    {
      const TrOwnIngredient *own = g_ptr_array_index (pantry->own, i);

      if (g_strcmp0 (own->id, id) == 0)
        return own;
    }

  return NULL;
}

/* Trials */

static GPtrArray *
new_dough_list (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) tr_dough_unref);
}

TrTrial *
tr_trial_new (void)
{
  TrTrial *trial = g_new0 (TrTrial, 1);

  g_atomic_ref_count_init (&trial->ref_count);
  trial->title = g_strdup ("");
  trial->bench = tr_bench_new ();
  trial->pantry = tr_pantry_new ();
  trial->doughs = new_dough_list ();

  return trial;
}

TrTrial *
tr_trial_ref (const TrTrial *trial)
{
  TrTrial *self = (TrTrial *) trial;

  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

void
tr_trial_unref (TrTrial *trial)
{
  if (trial == NULL || !g_atomic_ref_count_dec (&trial->ref_count))
    return;

  g_free (trial->title);
  tr_bench_unref (trial->bench);
  tr_pantry_unref (trial->pantry);
  g_ptr_array_unref (trial->doughs);
  tr_prediction_free (trial->prediction);
  tr_plan_free (trial->plan);
  tr_tasting_free (trial->tasting);
  g_free (trial->extra);
  g_free (trial);
}

TrTrial *
tr_trial_copy (const TrTrial *trial)
{
  TrTrial *copy = g_new0 (TrTrial, 1);

  g_atomic_ref_count_init (&copy->ref_count);
  copy->title = g_strdup (trial->title);
  copy->bench = tr_bench_ref (trial->bench);
  copy->pantry = tr_pantry_ref (trial->pantry);
  copy->doughs = new_dough_list ();
  for (guint i = 0; i < trial->doughs->len; i++)
    g_ptr_array_add (copy->doughs, tr_dough_ref (tr_trial_get_dough (trial, i)));
  copy->prediction = tr_prediction_copy (trial->prediction);
  copy->plan = tr_plan_copy (trial->plan);
  copy->tasting = tr_tasting_copy (trial->tasting);
  copy->extra = g_strdup (trial->extra);

  return copy;
}

TrDough *
tr_trial_own_dough (TrTrial *draft,
                    guint    index)
{
  TrDough *dough = tr_trial_get_dough (draft, index);
  TrDough *own = tr_dough_copy (dough);

  g_ptr_array_index (draft->doughs, index) = own;
  tr_dough_unref (dough);

  return own;
}

TrBench *
tr_trial_own_bench (TrTrial *draft)
{
  TrBench *own = tr_bench_copy (draft->bench);

  tr_bench_unref (draft->bench);
  draft->bench = own;

  return own;
}

TrPantry *
tr_trial_own_pantry (TrTrial *draft)
{
  TrPantry *own = tr_pantry_copy (draft->pantry);

  tr_pantry_unref (draft->pantry);
  draft->pantry = own;

  return own;
}

TrDough *
tr_trial_get_dough (const TrTrial *trial,
                    guint          index)
{
  return g_ptr_array_index (trial->doughs, index);
}

int
tr_trial_find_dough (const TrTrial *trial,
                     const char    *id)
{
  for (guint i = 0; i < trial->doughs->len; i++)
    if (g_strcmp0 (tr_trial_get_dough (trial, i)->id, id) == 0)
      return (int) i;

  return -1;
}

char *
tr_trial_dup_free_id (const TrTrial *trial)
{
  for (guint n = trial->doughs->len + 1;; n++)
    {
      g_autofree char *id = g_strdup_printf ("d%u", n);

      if (tr_trial_find_dough (trial, id) < 0)
        return g_steal_pointer (&id);
    }
}

static char **
without (char       **list,
         const char  *id)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  for (guint i = 0; list[i] != NULL; i++)
    if (g_strcmp0 (list[i], id) != 0)
      g_strv_builder_add (builder, list[i]);
  g_strfreev (list);

  return g_strv_builder_end (builder);
}

static void
forget_in_tasting (TrTasting  *tasting,
                   const char *id)
{
  for (guint i = tasting->codes->len; i-- > 0;)
    if (g_strcmp0 (((TrCode *) g_ptr_array_index (tasting->codes, i))->dough, id) == 0)
      g_ptr_array_remove_index (tasting->codes, i);

  for (guint i = tasting->scores->len; i-- > 0;)
    if (g_strcmp0 (((TrScore *) g_ptr_array_index (tasting->scores, i))->dough, id) == 0)
      g_ptr_array_remove_index (tasting->scores, i);

  for (guint i = 0; i < tasting->orders->len; i++)
    {
      TrOrder *order = g_ptr_array_index (tasting->orders, i);

      order->doughs = without (order->doughs, id);
    }
}

void
tr_trial_remove_dough (TrTrial *draft,
                       guint    index)
{
  g_autofree char *id = g_strdup (tr_trial_get_dough (draft, index)->id);

  g_ptr_array_remove_index (draft->doughs, index);

  for (guint i = 0; i < draft->doughs->len; i++)
    if (g_strcmp0 (tr_trial_get_dough (draft, i)->from, id) == 0)
      tr_set_text (&tr_trial_own_dough (draft, i)->from, NULL);

  if (draft->prediction != NULL)
    draft->prediction->order = without (draft->prediction->order, id);

  if (draft->tasting != NULL)
    forget_in_tasting (draft->tasting, id);
}
