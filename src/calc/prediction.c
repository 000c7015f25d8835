/* prediction.c: which dough should win, said before anybody tastes
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "prediction.h"

#include "scores.h"

TrPredictionState
tr_prediction_get_state (const TrTrial *trial)
{
  g_return_val_if_fail (trial != NULL, TR_PREDICTION_OPEN);

  if (trial->prediction != NULL && trial->prediction->locked_at != NULL)
    return TR_PREDICTION_LOCKED;
  if (trial->tasting != NULL && tr_tasting_has_marks (trial->tasting))
    return TR_PREDICTION_TOO_LATE;

  return TR_PREDICTION_OPEN;
}

gboolean
tr_prediction_is_by_hand (const TrPrediction *prediction)
{
  g_return_val_if_fail (prediction != NULL, TRUE);

  return prediction->by == NULL || *prediction->by == '\0' || g_str_equal (prediction->by, TR_PREDICTION_BY_HAND);
}

TrPrediction *
tr_trial_need_prediction (TrTrial *draft)
{
  g_return_val_if_fail (draft != NULL, NULL);

  if (draft->prediction == NULL)
    {
      draft->prediction = tr_prediction_new ();
      tr_set_text (&draft->prediction->by, TR_PREDICTION_BY_HAND);
    }

  return draft->prediction;
}

static gboolean
has_dough (const GArray *doughs,
           guint         dough)
{
  for (guint i = 0; i < doughs->len; i++)
    if (g_array_index (doughs, guint, i) == dough)
      return TRUE;

  return FALSE;
}

GArray *
tr_prediction_list (const TrTrial *trial,
                    guint         *n_placed)
{
  GArray *doughs = g_array_new (FALSE, FALSE, sizeof (guint));
  char **order;

  g_return_val_if_fail (trial != NULL, NULL);

  order = trial->prediction != NULL ? trial->prediction->order : NULL;
  for (guint i = 0; order != NULL && order[i] != NULL; i++)
    {
      int found = tr_trial_find_dough (trial, order[i]);
      guint dough = (guint) found;

      if (found >= 0 && !has_dough (doughs, dough))
        g_array_append_val (doughs, dough);
    }
  if (n_placed != NULL)
    *n_placed = doughs->len;
  for (guint i = 0; i < trial->doughs->len; i++)
    if (!has_dough (doughs, i))
      g_array_append_val (doughs, i);

  return doughs;
}

GArray *
tr_prediction_list_by (const TrFigures    *figures,
                       const TrComparable *comparable)
{
  GArray *doughs = g_array_new (FALSE, FALSE, sizeof (guint));

  g_return_val_if_fail (figures != NULL && comparable != NULL, doughs);

  for (guint i = 0; i < figures->doughs->len; i++)
    g_array_append_val (doughs, i);
  if (doughs->len > 0)
    tr_comparable_sort (comparable, figures, &g_array_index (doughs, guint, 0), doughs->len);

  return doughs;
}

/* Doughs that have as much of it may stand either way round. */
static gboolean
has_as_much (const TrComparable *comparable,
             const TrFigures    *figures,
             guint               one,
             guint               other)
{
  double a = tr_comparable_get (comparable, tr_figures_get_dough (figures, one));
  double b = tr_comparable_get (comparable, tr_figures_get_dough (figures, other));

  return isnan (a) ? isnan (b) : !(a < b) && !(a > b) && !isnan (b);
}

gboolean
tr_prediction_has_drifted (const TrFigures *figures)
{
  const TrPrediction *prediction = figures->trial->prediction;
  const TrComparable *comparable = prediction != NULL ? tr_comparable_find (prediction->by) : NULL;
  g_autoptr (GArray) written = NULL, follows = NULL;
  guint n_placed;

  if (comparable == NULL)
    return FALSE;

  written = tr_prediction_list (figures->trial, &n_placed);
  follows = tr_prediction_list_by (figures, comparable);
  if (n_placed < follows->len)
    return TRUE;
  for (guint i = 0; i < follows->len; i++)
    if (!has_as_much (comparable, figures, g_array_index (written, guint, i), g_array_index (follows, guint, i)))
      return TRUE;

  return FALSE;
}

void
tr_prediction_set_order (TrTrial      *draft,
                         const GArray *doughs)
{
  TrPrediction *prediction = tr_trial_need_prediction (draft);
  char **order = g_new0 (char *, doughs->len + 1);

  for (guint i = 0; i < doughs->len; i++)
    order[i] = g_strdup (tr_trial_get_dough (draft, g_array_index (doughs, guint, i))->id);
  g_strfreev (prediction->order);
  prediction->order = order;
}

void
tr_prediction_set_by (TrTrial            *draft,
                      const TrFigures    *figures,
                      const TrComparable *comparable)
{
  TrPrediction *prediction = tr_trial_need_prediction (draft);
  g_autoptr (GArray) doughs = comparable != NULL ? tr_prediction_list_by (figures, comparable) : tr_prediction_list (draft, NULL);

  tr_set_text (&prediction->by, comparable != NULL ? comparable->key : TR_PREDICTION_BY_HAND);
  tr_prediction_set_order (draft, doughs);
}

void
tr_prediction_move (TrTrial *draft,
                    guint    from,
                    guint    to)
{
  g_autoptr (GArray) doughs = tr_prediction_list (draft, NULL);
  guint moved;

  g_return_if_fail (from < doughs->len && to < doughs->len);

  moved = g_array_index (doughs, guint, from);
  g_array_remove_index (doughs, from);
  g_array_insert_val (doughs, to, moved);
  tr_set_text (&tr_trial_need_prediction (draft)->by, TR_PREDICTION_BY_HAND);
  tr_prediction_set_order (draft, doughs);
}
