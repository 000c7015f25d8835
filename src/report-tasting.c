/* report-tasting.c: what a blind tasting shows, as JSON
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "calc/tasting.h"
#include "report-json.h"

static const char *
sample_id (const TrTastingFigures *tasting,
           guint                   sample)
{
  return tr_trial_get_dough (tasting->trial, tasting->samples[sample])->id;
}

static void
report_tasters (TrJson          *json,
                const char      *key,
                const GPtrArray *tasters)
{
  tr_json_open (json, key, '[');
  for (guint i = 0; i < tasters->len; i++)
    tr_json_text (json, NULL, ((const TrTaster *) tasters->pdata[i])->id);
  tr_json_close (json, ']');
}

/* In that order; NULL: as they stand. */
static void
report_samples (TrJson                 *json,
                const char             *key,
                const TrTastingFigures *tasting,
                const guint            *order)
{
  tr_json_open (json, key, '[');
  for (guint i = 0; i < tasting->n_samples; i++)
    tr_json_text (json, NULL, sample_id (tasting, order != NULL ? order[i] : i));
  tr_json_close (json, ']');
}

static void
report_by_sample (TrJson                 *json,
                  const char             *key,
                  const TrTastingFigures *tasting,
                  const double           *values)
{
  if (values == NULL)
    {
      tr_json_word (json, key, "null");
      return;
    }
  tr_json_open (json, key, '{');
  for (guint i = 0; i < tasting->n_samples; i++)
    tr_json_number (json, sample_id (tasting, i), values[i]);
  tr_json_close (json, '}');
}

static void
report_prediction (TrJson                    *json,
                   const TrPredictionFigures *prediction)
{
  if (prediction->order == NULL)
    {
      tr_json_word (json, "prediction", "null");
      return;
    }
  tr_json_open (json, "prediction", '{');
  tr_json_number (json, "spearman_rho", prediction->spearman.coefficient);
  tr_json_number (json, "spearman_p", prediction->spearman.p);
  tr_json_number (json, "kendall_tau", prediction->kendall.coefficient);
  tr_json_number (json, "kendall_p", prediction->kendall.p);
  tr_json_number (json, "page_l", prediction->page.l);
  tr_json_number (json, "page_p", prediction->page.p);
  tr_json_boolean (json, "exact", prediction->exact);
  tr_json_close (json, '}');
}

static void
report_followers (TrJson       *json,
                  const GArray *follows)
{
  tr_json_open (json, "follows", '[');
  for (guint i = 0; i < follows->len; i++)
    {
      const TrFollower *follower = &g_array_index (follows, TrFollower, i);

      tr_json_open (json, NULL, '{');
      tr_json_text (json, "figure", follower->figure);
      tr_json_number (json, "spearman_rho", follower->spearman.coefficient);
      tr_json_number (json, "p", follower->spearman.p);
      tr_json_close (json, '}');
    }
  tr_json_close (json, ']');
}

void
tr_json_tasting (TrJson          *json,
                 const TrFigures *figures)
{
  g_autoptr (TrTastingFigures) tasting = tr_tasting_compute (figures, NULL);

  if (tasting == NULL)
    {
      tr_json_word (json, "tasting", "null");
      return;
    }
  tr_json_open (json, "tasting", '{');
  report_tasters (json, "tasters", tasting->tasters);
  report_samples (json, "samples", tasting, NULL);
  report_tasters (json, "left_out", tasting->left_out);
  report_by_sample (json, "rank_sums", tasting, tasting->rank_sums);
  report_by_sample (json, "mean_score", tasting, tasting->mean_score);
  if (tasting->order != NULL)
    report_samples (json, "order", tasting, tasting->order);
  else
    tr_json_word (json, "order", "null");
  tr_json_number (json, "friedman_f", tasting->friedman.f);
  tr_json_number (json, "friedman_p", tasting->friedman.p);
  if (isnan (tasting->friedman.p))
    tr_json_word (json, "friedman_exact", "null");
  else
    tr_json_boolean (json, "friedman_exact", tasting->friedman.is_exact);
  tr_json_number (json, "kendall_w", tasting->friedman.kendall_w);
  tr_json_number (json, "least_significant_difference", tasting->least_significant_difference);
  report_prediction (json, &tasting->prediction);
  report_followers (json, tasting->follows);
  tr_json_close (json, '}');
}
