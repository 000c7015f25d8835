/* tasting.c: what a blind tasting shows, in sentences
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../calc/scores.h"
#include "../calc/serving.h"
#include "comparison.h"
#include "say.h"
#include "tasting.h"

#define LEAST_P 0.0001

char *
tr_words_p (const TrReader *reader,
            double          p)
{
  if (p < LEAST_P)
    {
      g_autofree char *least = tr_words_number (reader, LEAST_P, 4);

      /* Translators: of a probability */
      return g_strdup_printf (_("less than %s"), least);
    }

  return tr_words_number (reader, p, p < 0.01 ? 4 : p < 0.1 ? 3 : 2);
}

/* "p = 0.025", "p is less than 0.0001" */
static char *
dup_p (const TrReader *reader,
       double          p,
       gboolean        is_exact)
{
  g_autofree char *said = tr_words_p (reader, p);

  return g_strdup_printf (p < LEAST_P ? "p: %s%s" : "p = %s%s", said, is_exact ? "" : _(", approximated"));
}

/* Allergens *******************************************************************/

char *
tr_words_tasting_allergens (const TrFigures *figures)
{
  g_autoptr (GArray) samples = tr_serving_list_samples (figures->trial);
  g_autoptr (GPtrArray) ids = g_ptr_array_new ();
  g_autofree char *all = NULL;

  for (guint i = 0; i < samples->len; i++)
    {
      const TrDoughFigures *dough = tr_figures_get_dough (figures, g_array_index (samples, guint, i));

      for (char **id = dough->allergens; id != NULL && *id != NULL; id++)
        if (!g_ptr_array_find_with_equal_func (ids, *id, g_str_equal, NULL))
          g_ptr_array_add (ids, *id);
    }
  g_ptr_array_add (ids, NULL);
  all = tr_words_allergens ((char **) ids->pdata);

  return g_strdup_printf (_("Allergens of all samples together: %s."), all);
}

char *
tr_words_tasting_question (void)
{
  return g_strdup (_("Before anything is tasted, ask each taster: is there anything here that you must not eat, or do not want to? "
                     "Who says yes, or is not sure, does not taste."));
}

/* What is missing *************************************************************/

static char *
dup_dough (const TrTrial *trial,
           int            dough)
{
  const TrDough *written = tr_trial_get_dough (trial, (guint) dough);
  int code = tr_tasting_get_code (trial->tasting, written->id);
  g_autofree char *name = tr_words_one_line (written->name);
  g_autofree char *letter = tr_words_letter ((guint) dough);

  return code != 0 ? g_strdup_printf ("%s %s (%d)", letter, name, code) : g_strdup_printf ("%s %s", letter, name);
}

char *
tr_words_tasting_gap (const TrReader         *reader,
                      const TrTastingFigures *tasting)
{
  g_autofree char *dough = tasting->not_tasted >= 0 ? dup_dough (tasting->trial, tasting->not_tasted) : NULL;

  switch (tasting->gap)
    {
    case TR_TASTING_NOTHING_MISSING:
      return NULL;

    case TR_TASTING_NO_SAMPLE:
      return g_strdup (_("No dough has all three marks from anybody yet, so there is nothing to rank."));

    case TR_TASTING_NOT_TASTED:
      return g_strdup_printf (_("Nobody has given all three marks to %s. Until somebody does, or its code is taken away, nothing can be ranked."), dough);

    case TR_TASTING_NOBODY_COMPLETE:
      return g_strdup (_("No taster has given all three marks to every sample, so nothing can be ranked."));

    case TR_TASTING_ONE_SAMPLE:
      return g_strdup (_("There is one sample only, and nothing to rank it against."));

    case TR_TASTING_ONE_TASTER:
      return g_strdup (_("One taster's order is one opinion: whether tasters agree takes at least two."));

    case TR_TASTING_ALL_EQUAL:
    default:
      return g_strdup (_("Every taster gave every sample the same score, so no dough stands out."));
    }
}

char *
tr_words_left_out (const TrTastingFigures *tasting)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *all = NULL;

  if (tasting->left_out->len == 0)
    return NULL;

  for (guint i = 0; i < tasting->left_out->len; i++)
    g_ptr_array_add (names, tr_words_one_line (((const TrTaster *) tasting->left_out->pdata[i])->name));
  g_ptr_array_add (names, NULL);
  all = g_strjoinv (", ", (char **) names->pdata);

  return g_strdup_printf (_("Left out, as not every sample has all three marks from them: %s."), all);
}

/* What is shown ***************************************************************/

char *
tr_words_friedman (const TrReader         *reader,
                   const TrTastingFigures *tasting)
{
  const TrFriedman *friedman = &tasting->friedman;
  g_autofree char *f = NULL, *p = NULL, *w = NULL, *numbers = NULL, *least = NULL;

  if (isnan (friedman->p))
    return NULL;

  f = tr_words_number (reader, friedman->f, 2);
  w = tr_words_number (reader, friedman->kendall_w, 2);
  p = dup_p (reader, friedman->p, friedman->is_exact);
  numbers = g_strdup_printf (_("Friedman's F = %s, %s; Kendall's W = %s"), f, p, w);
  if (isnan (tasting->least_significant_difference))
    return g_strdup_printf (_("The tasters do not agree more than chance might have it (%s): do not read anything into the order."), numbers);

  least = tr_words_number (reader, tasting->least_significant_difference, 1);

  return g_strdup_printf (_("The tasters agree more than chance would have it (%s). Doughs whose rank sums lie more than %s apart differ; the others may be alike."),
                          numbers, least);
}

char *
tr_words_predicted (const TrReader         *reader,
                    const TrTastingFigures *tasting)
{
  const TrPredictionFigures *prediction = &tasting->prediction;
  g_autofree char *rho = NULL, *rho_p = NULL, *tau = NULL, *tau_p = NULL, *l = NULL, *l_p = NULL, *dough = NULL;

  switch (prediction->gap)
    {
    case TR_PREDICTION_NONE:
      return g_strdup (_("Nothing was predicted."));

    case TR_PREDICTION_NOT_ALL:
      dough = dup_dough (tasting->trial, prediction->unpredicted);
      return g_strdup_printf (_("The prediction leaves out %s, so it cannot be held against the result."), dough);

    case TR_PREDICTION_NO_RESULT:
      return g_strdup (_("There is no result to hold the prediction against."));

    case TR_PREDICTION_NOTHING_MISSING:
    default:
      break;
    }

  rho = tr_words_number (reader, prediction->spearman.coefficient, 2);
  rho_p = dup_p (reader, prediction->spearman.p, prediction->spearman.is_exact);
  tau = tr_words_number (reader, prediction->kendall.coefficient, 2);
  tau_p = dup_p (reader, prediction->kendall.p, prediction->kendall.is_exact);
  l = tr_words_number (reader, prediction->page.l, 1);
  l_p = dup_p (reader, prediction->page.p, prediction->page.is_exact);

  return g_strdup_printf (_("Prediction against result: Spearman's ρ = %s, %s; Kendall's τ = %s, %s; Page's L = %s, %s."), rho, rho_p, tau, tau_p, l, l_p);
}

char *
tr_words_perfect_p (const TrReader *reader,
                    guint           n_samples)
{
  g_autofree char *n = tr_say_small_number (reader, n_samples);
  g_autofree char *p = dup_p (reader, tr_tasting_perfect_p (n_samples), TRUE);

  return g_strdup_printf (dngettext (GETTEXT_PACKAGE, "With %s sample one taster's perfect prediction has %s.",
                                     "With %s samples one taster's perfect prediction has %s.", n_samples), n, p);
}

char *
tr_words_tried (const TrReader         *reader,
                const TrTastingFigures *tasting)
{
  g_autofree char *tried = NULL, *doughs = NULL, *chance = NULL;

  if (tasting->follows->len == 0)
    return NULL;

  tried = tr_words_count (reader, tasting->follows->len);
  doughs = tr_words_count (reader, tasting->n_samples);
  chance = tr_words_number (reader, tr_tasting_count_chance (tasting), 1);

  return g_strdup_printf (dngettext (GETTEXT_PACKAGE, "%s figure was tried on %s doughs: about %s would line up perfectly by chance.",
                                     "%s figures were tried on %s doughs: about %s would line up perfectly by chance.", tasting->follows->len),
                          tried, doughs, chance);
}

char *
tr_words_follower (const TrReader   *reader,
                   const TrFollower *follower)
{
  const TrComparable *comparable = tr_comparable_find (follower->figure);
  g_autofree char *name = tr_words_comparable_in_full (comparable);
  g_autofree char *rho = tr_words_number (reader, follower->spearman.coefficient, 2);
  g_autofree char *p = dup_p (reader, follower->spearman.p, follower->spearman.is_exact);

  return g_strdup_printf (follower->spearman.coefficient < 0 ? _("%s: less of it, higher score (ρ = %s, %s)")
                                                             : _("%s: more of it, higher score (ρ = %s, %s)"), name, rho, p);
}
