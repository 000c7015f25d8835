/* tasted.c: marks of tasters for the screens; invented
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "tasted.h"

#include "calc/scores.h"
#include "calc/serving.h"

/* Four tasters' faults and balance. */
void
tasted_with_faults (TrWindow *window)
{
  TrDocument *document = tr_window_get_document (window);
  TrTrial *draft = tr_document_draft (document);
  TrTasting *tasting = tr_trial_need_tasting (draft);
  TrDough *dough = tr_trial_own_dough (draft, 0);
  g_autoptr (GError) error = NULL;

  ((TrStep *) tr_dough_find_step (dough, TR_STEP_PROOF))->at_c = 31;
  for (guint i = 0; i < 4; i++)
    {
      TrScore *score = tr_tasting_need_score (tasting, tr_tasting_add_taster (tasting, "A")->id, dough->id);

      score->salt = i < 2 ? 1 : 0;
      g_strfreev (score->faults);
      score->faults = g_strsplit (i == 0 ? "fat-pooled side-burst" : i < 3 ? "fat-pooled" : "dense", " ", -1);
    }
  tr_document_commit (document, draft, "taste", NULL, "", &error);
  g_assert_no_error (error);
}

/* Four tasters who agree on nothing but the last; invented. */
void
tasted_by_four (TrWindow *window)
{
  static const int marks[4][4] = { { 7, 8, 6, 3 }, { 6, 9, 7, 4 }, { 8, 7, 7, 2 }, { 5, 8, 9, 4 } };
  static const char *const samples[] = { "d1", "d2", "d3", "d4", NULL };
  TrDocument *document = tr_window_get_document (window);
  TrTrial *draft = tr_document_draft (document);
  TrTasting *tasting = tr_trial_need_tasting (draft);
  g_autoptr (GRand) rand = g_rand_new_with_seed (1);
  g_autoptr (GError) error = NULL;

  tr_serving_deal_codes (tasting, samples, rand);
  for (guint i = 0; i < 4; i++)
    {
      const char *taster = tr_tasting_add_taster (tasting, "Somebody at the window")->id;

      for (guint j = 0; j < 4; j++)
        {
          TrScore *score = tr_tasting_need_score (tasting, taster, samples[j]);

          score->look = score->layers = score->eating = marks[i][j];
        }
    }
  tr_serving_deal_orders (tasting, samples, rand);
  tr_document_commit (document, draft, "taste", NULL, "", &error);
  g_assert_no_error (error);
}
