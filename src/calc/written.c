/* written.c: making, sharing and copying what the baker wrote
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Defaults live here, once; the JSON Schema in data/ repeats them and a test
 * holds the two together.
 */

#include "written.h"

#include <string.h>

static const char *const kind_ids[] = { "croissant", "danish", "puff", "other" };
static const char *const stage_ids[] = { "preferment", "dough", "roll-in", "finish" };
static const char *const batch_ids[] = { "written", "pieces", "flour_g", "dough_g", "total_g" };
static const char *const style_ids[] = { "half", "gate", "envelope", "letter", "inverse" };
static const char *const place_ids[] = { "fridge", "freezer", "room" };
static const char *const on_ids[] = { "board", "rack" };
static const char *const shape_ids[] = { "triangle", "right-triangle", "rectangle", "square", "round", "slices" };
static const char *const part_ids[] = { "water", "fat", "protein", "carbohydrate", "fibre", "sugars", "ash", "sodium_mg" };
static const char *const log_list_ids[] = { "mixes", "rests", "sizes", "cuts", "pieces" };
static const char *const step_ids[] = {
  "preferment-mix", "ripen", "mix", "bulk", "chill", "fat-block", "lock-in", "turn",
  "rest", "roll-out", "cut", "shape", "proof", "finish", "bake", "cool"
};

static int
find_id (const char *const *ids,
         guint              n_ids,
         const char        *id)
{
  for (guint i = 0; i < n_ids; i++)
    if (g_strcmp0 (ids[i], id) == 0)
      return (int) i;

  return -1;
}

#define DEFINE_ID(name, Type, ids)                      \
  G_STATIC_ASSERT (G_N_ELEMENTS (ids) > 0);             \
  const char *                                          \
  tr_##name##_id (Type value)                           \
  {                                                     \
    g_return_val_if_fail ((guint) value < G_N_ELEMENTS (ids), NULL); \
    return ids[value];                                  \
  }

#define DEFINE_FROM_ID(name, ids)                       \
  int                                                   \
  tr_##name##_from_id (const char *id)                  \
  {                                                     \
    return find_id (ids, G_N_ELEMENTS (ids), id);       \
  }

DEFINE_ID (kind, TrKind, kind_ids)
DEFINE_ID (stage, TrStage, stage_ids)
DEFINE_ID (batch, TrBatchBy, batch_ids)
DEFINE_ID (style, TrStyle, style_ids)
DEFINE_ID (place, TrPlace, place_ids)
DEFINE_ID (on, TrOn, on_ids)
DEFINE_ID (shape, TrShape, shape_ids)
DEFINE_ID (step, TrStepId, step_ids)
DEFINE_ID (part, TrPart, part_ids)
DEFINE_ID (log_list, TrLogList, log_list_ids)
DEFINE_FROM_ID (kind, kind_ids)
DEFINE_FROM_ID (stage, stage_ids)
DEFINE_FROM_ID (batch, batch_ids)
DEFINE_FROM_ID (style, style_ids)
DEFINE_FROM_ID (place, place_ids)
DEFINE_FROM_ID (on, on_ids)
DEFINE_FROM_ID (shape, shape_ids)
DEFINE_FROM_ID (step, step_ids)

static gpointer
copy_by (gconstpointer source,
         gpointer      copier)
{
  return ((gpointer (*) (gconstpointer)) copier) (source);
}

static GPtrArray *
copy_list (GPtrArray *list,
           gpointer (*copier) (gconstpointer),
           GDestroyNotify free_func)
{
  GPtrArray *copy = g_ptr_array_copy (list, (GCopyFunc) copy_by, copier);

  g_ptr_array_set_free_func (copy, free_func);

  return copy;
}

#define COPY_LIST(list, name) \
  copy_list ((list), (gpointer (*) (gconstpointer)) tr_##name##_copy, (GDestroyNotify) tr_##name##_free)
#define NEW_LIST(name) g_ptr_array_new_with_free_func ((GDestroyNotify) tr_##name##_free)

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

TrLog *
tr_log_new (void)
{
  TrLog *log = g_new0 (TrLog, 1);

  log->notes = g_strdup ("");

  return log;
}

TrLog *
tr_log_copy (const TrLog *log)
{
  TrLog *copy = g_new0 (TrLog, 1);

  for (guint i = 0; i < TR_N_LOGS; i++)
    copy->lists[i] = g_strdup (log->lists[i]);
  copy->notes = g_strdup (log->notes);
  copy->extra = g_strdup (log->extra);

  return copy;
}

void
tr_log_free (TrLog *log)
{
  if (log == NULL)
    return;

  for (guint i = 0; i < TR_N_LOGS; i++)
    g_free (log->lists[i]);
  g_free (log->notes);
  g_free (log->extra);
  g_free (log);
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
  copy->household = NULL;
  for (guint i = 0; own->household != NULL && i < own->household->len; i++)
    {
      TrHousehold weight = g_array_index (own->household, TrHousehold, i);

      weight.unit = g_strdup (weight.unit);
      tr_own_ingredient_add_household (copy, weight);
    }
  if (own->household != NULL && copy->household == NULL)
    copy->household = g_array_new (FALSE, FALSE, sizeof (TrHousehold));

  return copy;
}

void
tr_own_ingredient_add_household (TrOwnIngredient *own,
                                 TrHousehold      weight)
{
  if (own->household == NULL)
    {
      own->household = g_array_new (FALSE, FALSE, sizeof (TrHousehold));
      g_array_set_clear_func (own->household, (GDestroyNotify) household_clear);
    }
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

/* Prediction, plan, tasting */

TrPrediction *
tr_prediction_new (void)
{
  TrPrediction *prediction = g_new0 (TrPrediction, 1);

  prediction->by = g_strdup ("added_fat_g");
  prediction->order = g_new0 (char *, 1);
  prediction->why = g_strdup ("");

  return prediction;
}

TrPrediction *
tr_prediction_copy (const TrPrediction *prediction)
{
  if (prediction == NULL)
    return NULL;

  TrPrediction *copy = g_new0 (TrPrediction, 1);
  copy->by = g_strdup (prediction->by);
  copy->order = g_strdupv (prediction->order);
  copy->why = g_strdup (prediction->why);
  copy->locked_at = g_strdup (prediction->locked_at);
  copy->extra = g_strdup (prediction->extra);

  return copy;
}

void
tr_prediction_free (TrPrediction *prediction)
{
  if (prediction == NULL)
    return;

  g_free (prediction->by);
  g_strfreev (prediction->order);
  g_free (prediction->why);
  g_free (prediction->locked_at);
  g_free (prediction->extra);
  g_free (prediction);
}

TrPlan *
tr_plan_new (void)
{
  TrPlan *plan = g_new0 (TrPlan, 1);

  plan->hands_from = g_strdup ("07:00");
  plan->hands_until = g_strdup ("21:30");

  return plan;
}

TrPlan *
tr_plan_copy (const TrPlan *plan)
{
  if (plan == NULL)
    return NULL;

  TrPlan *copy = g_new0 (TrPlan, 1);
  copy->taste_at = g_strdup (plan->taste_at);
  copy->hands_from = g_strdup (plan->hands_from);
  copy->hands_until = g_strdup (plan->hands_until);
  copy->pins = g_strdup (plan->pins);
  copy->extra = g_strdup (plan->extra);

  return copy;
}

void
tr_plan_free (TrPlan *plan)
{
  if (plan == NULL)
    return;

  g_free (plan->taste_at);
  g_free (plan->hands_from);
  g_free (plan->hands_until);
  g_free (plan->pins);
  g_free (plan->extra);
  g_free (plan);
}

TrTaster *
tr_taster_new (const char *id,
               const char *name)
{
  TrTaster *taster = g_new0 (TrTaster, 1);

  taster->id = g_strdup (id);
  taster->name = g_strdup (name);

  return taster;
}

TrTaster *
tr_taster_copy (const TrTaster *taster)
{
  TrTaster *copy = tr_taster_new (taster->id, taster->name);

  copy->extra = g_strdup (taster->extra);

  return copy;
}

void
tr_taster_free (TrTaster *taster)
{
  if (taster == NULL)
    return;

  g_free (taster->id);
  g_free (taster->name);
  g_free (taster->extra);
  g_free (taster);
}

TrCode *
tr_code_new (const char *dough,
             int         code)
{
  TrCode *self = g_new0 (TrCode, 1);

  self->dough = g_strdup (dough);
  self->code = code;

  return self;
}

TrCode *
tr_code_copy (const TrCode *code)
{
  return tr_code_new (code->dough, code->code);
}

void
tr_code_free (TrCode *code)
{
  if (code == NULL)
    return;

  g_free (code->dough);
  g_free (code);
}

TrOrder *
tr_order_new (const char  *taster,
              char       **doughs)
{
  TrOrder *order = g_new0 (TrOrder, 1);

  order->taster = g_strdup (taster);
  order->doughs = g_strdupv (doughs);

  return order;
}

TrOrder *
tr_order_copy (const TrOrder *order)
{
  return tr_order_new (order->taster, order->doughs);
}

void
tr_order_free (TrOrder *order)
{
  if (order == NULL)
    return;

  g_free (order->taster);
  g_strfreev (order->doughs);
  g_free (order);
}

TrScore *
tr_score_new (const char *taster,
              const char *dough)
{
  TrScore *score = g_new0 (TrScore, 1);

  score->taster = g_strdup (taster);
  score->dough = g_strdup (dough);
  score->salt = score->sweet = score->bake = G_MININT;
  score->faults = g_new0 (char *, 1);
  score->notes = g_strdup ("");

  return score;
}

TrScore *
tr_score_copy (const TrScore *score)
{
  TrScore *copy = g_memdup2 (score, sizeof *score);

  copy->taster = g_strdup (score->taster);
  copy->dough = g_strdup (score->dough);
  copy->faults = g_strdupv (score->faults);
  copy->notes = g_strdup (score->notes);
  copy->extra = g_strdup (score->extra);
  copy->extra_marks = g_strdup (score->extra_marks);
  copy->extra_balance = g_strdup (score->extra_balance);

  return copy;
}

void
tr_score_free (TrScore *score)
{
  if (score == NULL)
    return;

  g_free (score->taster);
  g_free (score->dough);
  g_strfreev (score->faults);
  g_free (score->notes);
  g_free (score->extra);
  g_free (score->extra_marks);
  g_free (score->extra_balance);
  g_free (score);
}

TrTasting *
tr_tasting_new (void)
{
  TrTasting *tasting = g_new0 (TrTasting, 1);

  tasting->tasters = NEW_LIST (taster);
  tasting->codes = NEW_LIST (code);
  tasting->orders = NEW_LIST (order);
  tasting->scores = NEW_LIST (score);

  return tasting;
}

TrTasting *
tr_tasting_copy (const TrTasting *tasting)
{
  if (tasting == NULL)
    return NULL;

  TrTasting *copy = g_new0 (TrTasting, 1);
  copy->tasters = COPY_LIST (tasting->tasters, taster);
  copy->codes = COPY_LIST (tasting->codes, code);
  copy->orders = COPY_LIST (tasting->orders, order);
  copy->scores = COPY_LIST (tasting->scores, score);
  copy->extra = g_strdup (tasting->extra);

  return copy;
}

void
tr_tasting_free (TrTasting *tasting)
{
  if (tasting == NULL)
    return;

  g_ptr_array_unref (tasting->tasters);
  g_ptr_array_unref (tasting->codes);
  g_ptr_array_unref (tasting->orders);
  g_ptr_array_unref (tasting->scores);
  g_free (tasting->extra);
  g_free (tasting);
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
