/* tasting.c: what a blind tasting shows
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "tasting.h"

#include <math.h>

#include "comparison.h"
#include "measure.h"
#include "scores.h"

/* Percents, contents of 100 g, layers and thicknesses: what a dough is like,
 * not how much of it there was. Of energy one unit. */
static const char *const tried[] = {
  "per_100g_raw.fat_g", "per_100g_raw.salt_g", "per_100g_raw.sugars_g", "per_100g_raw.energy_kj",
  "added_water_percent", "all_water_percent", "prefermented_flour_percent", "dough_fat_percent",
  "roll_in_percent_of_flour", "roll_in_percent_of_dough", "roll_in_percent_of_total", "roll_in_fat_percent_of_flour",
  "salt_percent", "sugar_percent", "yeast_fresh_percent",
  "fat_layers", "dough_layers", "bands", "fat_volume_fraction",
  "fat_layer_um.min", "fat_layer_um.max", "dough_layer_um.min", "dough_layer_um.max", "dough_layer_um.outer",
  "layers_across", "thickness_mm",
  NULL
};

/* Who and what ****************************************************************/

static double
get_score (const TrTasting *tasting,
           const char      *taster,
           const char      *dough)
{
  const TrScore *score = tr_tasting_find_score (tasting, taster, dough);

  return score != NULL && tr_score_is_full (score) ? (score->look + score->layers + score->eating) / 3.0 : NAN;
}

static gboolean
is_tasted (const TrTasting *tasting,
           const char      *dough)
{
  for (guint i = 0; i < tasting->scores->len; i++)
    {
      const TrScore *score = tasting->scores->pdata[i];

      if (g_str_equal (score->dough, dough) && tr_score_is_full (score))
        return TRUE;
    }

  return FALSE;
}

static void
find_samples (TrTastingFigures *tasting)
{
  const TrTrial *trial = tasting->trial;
  gboolean is_blind = trial->tasting->codes->len > 0;

  tasting->samples = g_new (guint, trial->doughs->len + 1);
  for (guint i = 0; i < trial->doughs->len; i++)
    {
      const char *id = tr_trial_get_dough (trial, i)->id;
      gboolean tasted = is_tasted (trial->tasting, id);

      if (is_blind ? tr_tasting_get_code (trial->tasting, id) == 0 : !tasted)
        continue;
      tasting->samples[tasting->n_samples++] = i;
      if (!tasted && tasting->not_tasted < 0)
        tasting->not_tasted = (int) i;
    }
}

static const char *
sample_id (const TrTastingFigures *tasting,
           guint                   sample)
{
  return tr_trial_get_dough (tasting->trial, tasting->samples[sample])->id;
}

static void
find_tasters (TrTastingFigures *tasting)
{
  const TrTasting *written = tasting->trial->tasting;

  for (guint t = 0; t < written->tasters->len; t++)
    {
      TrTaster *taster = written->tasters->pdata[t];
      guint n = 0;

      while (n < tasting->n_samples && !isnan (get_score (written, taster->id, sample_id (tasting, n))))
        n++;
      g_ptr_array_add (n == tasting->n_samples && n > 0 ? tasting->tasters : tasting->left_out, taster);
    }
}

static TrTastingGap
find_gap (const TrTastingFigures *tasting)
{
  if (tasting->n_samples == 0)
    return TR_TASTING_NO_SAMPLE;
  if (tasting->not_tasted >= 0)
    return TR_TASTING_NOT_TASTED;
  if (tasting->tasters->len == 0)
    return TR_TASTING_NOBODY_COMPLETE;
  if (tasting->n_samples == 1)
    return TR_TASTING_ONE_SAMPLE;
  for (guint i = 0; i < tasting->tasters->len * tasting->n_samples; i++)
    if (fabs (tasting->ranks[i] - (tasting->n_samples + 1) / 2.0) > 0.25)
      return tasting->tasters->len == 1 ? TR_TASTING_ONE_TASTER : TR_TASTING_NOTHING_MISSING;

  return TR_TASTING_ALL_EQUAL;
}

/* Ranks and their order *******************************************************/

static void
rank_taster (TrTastingFigures *tasting,
             guint             t)
{
  const TrTaster *taster = tasting->tasters->pdata[t];
  guint n = tasting->n_samples;
  double *ranks = tasting->ranks + (gsize) t * n, *scores = tasting->scores + (gsize) t * n;

  for (guint s = 0; s < n; s++)
    scores[s] = get_score (tasting->trial->tasting, taster->id, sample_id (tasting, s));
  tr_ranks_of (scores, n, TR_SCORE_HAIR, ranks);
  for (guint s = 0; s < n; s++)
    {
      ranks[s] = n + 1 - ranks[s];     /* the highest score is the best */
      tasting->rank_sums[s] += ranks[s];
      tasting->mean_score[s] += scores[s] / tasting->tasters->len;
    }
}

static int
compare_samples (gconstpointer a,
                 gconstpointer b,
                 gpointer      data)
{
  const TrTastingFigures *tasting = data;
  guint one = *(const guint *) a, other = *(const guint *) b;
  double sums = tasting->rank_sums[one] - tasting->rank_sums[other];
  double means = tasting->mean_score[other] - tasting->mean_score[one];

  if (fabs (sums) > 0.25)
    return sums < 0 ? -1 : 1;
  if (fabs (means) > TR_SCORE_HAIR)
    return means < 0 ? -1 : 1;

  return one < other ? -1 : one > other;
}

static void
rank_all (TrTastingFigures *tasting)
{
  guint n = tasting->n_samples, n_all = n * tasting->tasters->len;

  tasting->scores = g_new0 (double, n_all);
  tasting->ranks = g_new0 (double, n_all);
  tasting->rank_sums = g_new0 (double, n);
  tasting->mean_score = g_new0 (double, n);
  tasting->order = g_new (guint, n);
  for (guint t = 0; t < tasting->tasters->len; t++)
    rank_taster (tasting, t);
  for (guint s = 0; s < n; s++)
    tasting->order[s] = s;
  g_qsort_with_data (tasting->order, (int) n, sizeof *tasting->order, compare_samples, tasting);
}

/* Prediction against result ***************************************************/

static int
find_predicted_place (const TrPrediction *prediction,
                      const char         *dough)
{
  for (int i = 0; prediction->order != NULL && prediction->order[i] != NULL; i++)
    if (g_str_equal (prediction->order[i], dough))
      return i;

  return -1;
}

static void
find_predicted_order (TrTastingFigures *tasting)
{
  TrPredictionFigures *prediction = &tasting->prediction;
  g_autofree double *places = g_new (double, tasting->n_samples), *ranks = g_new (double, tasting->n_samples);

  for (guint s = 0; s < tasting->n_samples; s++)
    {
      int place = find_predicted_place (tasting->trial->prediction, sample_id (tasting, s));

      if (place < 0)
        {
          prediction->gap = TR_PREDICTION_NOT_ALL;
          prediction->unpredicted = (int) tasting->samples[s];
          return;
        }
      places[s] = place;
    }

  tr_ranks_of (places, tasting->n_samples, 0, ranks);
  prediction->order = g_new (guint, tasting->n_samples);
  for (guint s = 0; s < tasting->n_samples; s++)
    prediction->order[lround (ranks[s]) - 1] = s;
}

static void
hold_against_prediction (TrTastingFigures *tasting)
{
  TrPredictionFigures *prediction = &tasting->prediction;
  guint n = tasting->n_samples;
  g_autofree double *predicted = g_new (double, n + 1), *found = g_new (double, n + 1);
  TrRankTable table = { tasting->ranks, tasting->tasters->len, n };

  if (tasting->trial->prediction == NULL || tasting->trial->prediction->order == NULL
      || tasting->trial->prediction->order[0] == NULL)
    {
      prediction->gap = TR_PREDICTION_NONE;
      return;
    }
  if (tasting->gap != TR_TASTING_NOTHING_MISSING && tasting->gap != TR_TASTING_ONE_TASTER)
    {
      prediction->gap = TR_PREDICTION_NO_RESULT;
      return;
    }
  find_predicted_order (tasting);
  if (prediction->order == NULL)
    return;

  for (guint i = 0; i < n; i++)
    {
      predicted[prediction->order[i]] = i + 1;
      found[tasting->order[i]] = i + 1;
    }
  tr_ranks_spearman (predicted, found, n, &prediction->spearman);
  tr_ranks_kendall (predicted, found, n, &prediction->kendall);
  tr_ranks_page (&table, prediction->order, &prediction->page);
  prediction->exact = prediction->spearman.is_exact && prediction->kendall.is_exact && prediction->page.is_exact;
}

/* What went with the scores ***************************************************/

static void
try_figure (TrTastingFigures *tasting,
            const TrFigures  *figures,
            const char       *key,
            const double     *scores)
{
  const TrComparable *comparable = tr_comparable_find (key);
  guint n = tasting->n_samples;
  g_autofree double *values = g_new (double, n), *ranks = g_new (double, n);
  TrFollower follower = { .figure = key };
  double greatest = 0;

  g_return_if_fail (comparable != NULL);

  for (guint s = 0; s < n; s++)
    {
      values[s] = tr_comparable_get (comparable, tr_figures_get_dough (figures, tasting->samples[s]));
      if (!isfinite (values[s]))
        return;
      greatest = fmax (greatest, fabs (values[s]));
    }
  tr_ranks_of (values, n, TR_HAIR * greatest, ranks);
  tr_ranks_spearman (ranks, scores, n, &follower.spearman);
  if (!isnan (follower.spearman.coefficient))
    g_array_append_val (tasting->follows, follower);
}

static gboolean
find_followers (TrTastingFigures *tasting,
                const TrFigures  *figures,
                const TrWatch    *watch)
{
  g_autofree double *scores = g_new (double, tasting->n_samples);

  tr_ranks_of (tasting->mean_score, tasting->n_samples, TR_SCORE_HAIR, scores);
  for (gsize i = 0; tried[i] != NULL; i++)
    {
      if (tr_watch_is_cancelled (watch))
        return FALSE;
      try_figure (tasting, figures, tried[i], scores);
    }

  return TRUE;
}

double
tr_tasting_count_chance (const TrTastingFigures *tasting)
{
  double sum = 0;

  for (guint i = 0; i < tasting->follows->len; i++)
    sum += g_array_index (tasting->follows, TrFollower, i).spearman.least_p;

  return sum;
}

double
tr_tasting_perfect_p (guint n_samples)
{
  double orders = 1;

  for (guint i = 2; i <= n_samples; i++)
    orders *= i;

  return fmin (1, 2 / orders);
}

/* The whole *******************************************************************/

static TrTastingFigures *
tasting_new (const TrFigures *figures)
{
  TrTastingFigures *tasting = g_new0 (TrTastingFigures, 1);

  tasting->trial = tr_trial_ref (figures->trial);
  tasting->not_tasted = -1;
  tasting->tasters = g_ptr_array_new ();
  tasting->left_out = g_ptr_array_new ();
  tasting->friedman = (TrFriedman) { NAN, NAN, NAN, FALSE };
  tasting->least_significant_difference = NAN;
  tasting->prediction.unpredicted = -1;
  tasting->follows = g_array_new (FALSE, FALSE, sizeof (TrFollower));

  return tasting;
}

static void
rank_samples (TrTastingFigures *tasting)
{
  find_samples (tasting);
  find_tasters (tasting);
  if (tasting->tasters->len > 0)
    rank_all (tasting);
}

double *
tr_tasting_dup_mean_scores (const TrFigures *figures)
{
  g_autoptr (TrTastingFigures) tasting = NULL;
  double *means;

  g_return_val_if_fail (figures != NULL, NULL);

  if (figures->trial->tasting == NULL || figures->trial->tasting->scores->len == 0)
    return NULL;

  tasting = tasting_new (figures);
  rank_samples (tasting);
  if (tasting->mean_score == NULL)
    return NULL;

  means = g_new (double, figures->doughs->len);
  for (guint i = 0; i < figures->doughs->len; i++)
    means[i] = NAN;
  for (guint s = 0; s < tasting->n_samples; s++)
    means[tasting->samples[s]] = tasting->mean_score[s];

  return means;
}

TrTastingFigures *
tr_tasting_compute (const TrFigures *figures,
                    const TrWatch   *watch)
{
  g_autoptr (TrTastingFigures) tasting = NULL;
  TrRankTable table;

  g_return_val_if_fail (figures != NULL, NULL);

  if (figures->trial->tasting == NULL || figures->trial->tasting->scores->len == 0)
    return NULL;

  tasting = tasting_new (figures);
  rank_samples (tasting);
  tasting->gap = find_gap (tasting);
  hold_against_prediction (tasting);
  if (tasting->tasters->len == 0)
    return g_steal_pointer (&tasting);

  table = (TrRankTable) { tasting->ranks, tasting->tasters->len, tasting->n_samples };
  if (!find_followers (tasting, figures, watch) || !tr_ranks_friedman (&table, watch, &tasting->friedman))
    return NULL;
  if (tasting->friedman.p <= TR_SIGNIFICANT_P)
    tasting->least_significant_difference = tr_ranks_least_difference (table.n_tasters, table.n_samples);

  return g_steal_pointer (&tasting);
}

static int
compare_followers (gconstpointer a,
                   gconstpointer b)
{
  double one = fabs (((const TrFollower *) a)->spearman.coefficient), other = fabs (((const TrFollower *) b)->spearman.coefficient);

  return one > other ? -1 : one < other;
}

GArray *
tr_tasting_sort_followers (const TrTastingFigures *tasting)
{
  GArray *sorted = g_array_copy (tasting->follows);

  g_array_sort (sorted, compare_followers);

  return sorted;
}

void
tr_tasting_figures_free (TrTastingFigures *tasting)
{
  if (tasting == NULL)
    return;

  g_free (tasting->samples);
  g_free (tasting->scores);
  g_free (tasting->ranks);
  g_free (tasting->rank_sums);
  g_free (tasting->mean_score);
  g_free (tasting->order);
  g_free (tasting->prediction.order);
  g_ptr_array_unref (tasting->tasters);
  g_ptr_array_unref (tasting->left_out);
  g_array_unref (tasting->follows);
  tr_trial_unref (tasting->trial);
  g_free (tasting);
}
