/* written-tasting.c: making and copying prediction, plan and tasting
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is written about a trial as a whole: what is expected, when it is baked,
 * and how it was liked. Defaults live here, once; the JSON Schema in data/
 * repeats them.
 */

#include "written-private.h"

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
