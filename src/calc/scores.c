/* scores.c: who tasted what, as it is written
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "scores.h"

TrTasting *
tr_trial_need_tasting (TrTrial *draft)
{
  if (draft->tasting == NULL)
    draft->tasting = tr_tasting_new ();

  return draft->tasting;
}

TrTaster *
tr_tasting_find_taster (const TrTasting *tasting,
                        const char      *id)
{
  for (guint i = 0; i < tasting->tasters->len; i++)
    {
      TrTaster *taster = g_ptr_array_index (tasting->tasters, i);

      if (g_strcmp0 (taster->id, id) == 0)
        return taster;
    }

  return NULL;
}

TrTaster *
tr_tasting_add_taster (TrTasting  *tasting,
                       const char *name)
{
  for (guint number = tasting->tasters->len + 1;; number++)
    {
      g_autofree char *id = g_strdup_printf ("t%u", number);

      if (tr_tasting_find_taster (tasting, id) != NULL)
        continue;

      TrTaster *taster = tr_taster_new (id, name);

      g_ptr_array_add (tasting->tasters, taster);
      return taster;
    }
}

void
tr_tasting_remove_taster (TrTasting  *tasting,
                          const char *id)
{
  g_autofree char *gone = g_strdup (id);

  for (guint i = tasting->scores->len; i-- > 0;)
    if (g_strcmp0 (((TrScore *) g_ptr_array_index (tasting->scores, i))->taster, gone) == 0)
      g_ptr_array_remove_index (tasting->scores, i);
  for (guint i = tasting->orders->len; i-- > 0;)
    if (g_strcmp0 (((TrOrder *) g_ptr_array_index (tasting->orders, i))->taster, gone) == 0)
      g_ptr_array_remove_index (tasting->orders, i);

  TrTaster *taster = tr_tasting_find_taster (tasting, gone);

  if (taster != NULL)
    g_ptr_array_remove (tasting->tasters, taster);
}

int
tr_tasting_get_code (const TrTasting *tasting,
                     const char      *dough)
{
  for (guint i = 0; i < tasting->codes->len; i++)
    {
      const TrCode *code = g_ptr_array_index (tasting->codes, i);

      if (g_strcmp0 (code->dough, dough) == 0)
        return code->code;
    }

  return 0;
}

void
tr_tasting_remove_code (TrTasting  *tasting,
                        const char *dough)
{
  for (guint i = tasting->codes->len; i-- > 0;)
    if (g_strcmp0 (((const TrCode *) g_ptr_array_index (tasting->codes, i))->dough, dough) == 0)
      g_ptr_array_remove_index (tasting->codes, i);
}

TrOrder *
tr_tasting_find_order (const TrTasting *tasting,
                       const char      *taster)
{
  for (guint i = 0; i < tasting->orders->len; i++)
    {
      TrOrder *order = g_ptr_array_index (tasting->orders, i);

      if (g_strcmp0 (order->taster, taster) == 0)
        return order;
    }

  return NULL;
}

TrScore *
tr_tasting_find_score (const TrTasting *tasting,
                       const char      *taster,
                       const char      *dough)
{
  for (guint i = 0; i < tasting->scores->len; i++)
    {
      TrScore *score = g_ptr_array_index (tasting->scores, i);

      if (g_strcmp0 (score->taster, taster) == 0 && g_strcmp0 (score->dough, dough) == 0)
        return score;
    }

  return NULL;
}

TrScore *
tr_tasting_need_score (TrTasting  *tasting,
                       const char *taster,
                       const char *dough)
{
  TrScore *score = tr_tasting_find_score (tasting, taster, dough);

  if (score == NULL)
    {
      score = tr_score_new (taster, dough);
      g_ptr_array_add (tasting->scores, score);
    }

  return score;
}

gboolean
tr_score_is_full (const TrScore *score)
{
  return score->look > 0 && score->layers > 0 && score->eating > 0;
}

static gboolean
has_mark (const TrScore *score)
{
  return score->look > 0 || score->layers > 0 || score->eating > 0;
}

gboolean
tr_score_is_empty (const TrScore *score)
{
  return !has_mark (score)
         && score->salt == G_MININT && score->sweet == G_MININT && score->bake == G_MININT
         && (score->faults == NULL || score->faults[0] == NULL)
         && (score->notes == NULL || *score->notes == '\0')
         && score->extra == NULL && score->extra_marks == NULL && score->extra_balance == NULL;
}

void
tr_tasting_drop_empty_scores (TrTasting *tasting)
{
  for (guint i = tasting->scores->len; i-- > 0;)
    if (tr_score_is_empty (g_ptr_array_index (tasting->scores, i)))
      g_ptr_array_remove_index (tasting->scores, i);
}

gboolean
tr_tasting_has_marks (const TrTasting *tasting)
{
  for (guint i = 0; i < tasting->scores->len; i++)
    if (has_mark (g_ptr_array_index (tasting->scores, i)))
      return TRUE;

  return FALSE;
}
