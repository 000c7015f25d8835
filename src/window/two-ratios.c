/* two-ratios.c: a dough with two ratios moved at once
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "two-ratios.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* The other ratio moves along with the first: the mass of the dough changes. */
#define ROUNDS 3

static TrDoughFigures *
dup_figures (const TrTrial *trial,
             guint          index)
{
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);

  return tr_dough_figures_ref ((TrDoughFigures *) tr_figures_get_dough (figures, index));
}

/* A trial of the dough alone: its figures cost one dough, and nobody else sees it. */
static TrTrial *
new_trial_of (const TrTrial *trial,
              const TrDough *dough)
{
  TrTrial *alone = tr_trial_copy (trial);

  g_ptr_array_set_size (alone->doughs, 0);
  g_ptr_array_add (alone->doughs, tr_dough_copy (dough));

  return alone;
}

TrDough *
tr_two_ratios_dup_moved (const TrDoughFigures *start,
                         const TrTrial        *trial,
                         const TrRatio         ratios[2],
                         const double          values[2])
{
  g_autoptr (TrTrial) alone = new_trial_of (trial, start->dough);
  gboolean has_moved = FALSE;

  for (int step = 0; step < ROUNDS * 2; step++)
    {
      TrRatio ratio = ratios[step % 2];
      double value = values[step % 2];
      g_autoptr (TrDoughFigures) figures = dup_figures (alone, 0);
      TrRatioMoves moves;

      tr_ratio_get_moves (figures, ratio, &moves);
      if (!moves.can_move || isnan (value))
        continue;
      value = CLAMP (value, moves.reach.min, moves.reach.max);
      if (fabs (tr_ratio_get (figures, ratio) - value) > (step < 2 ? 1e-6 : TR_RATIO_TOLERANCE)
          && tr_ratio_set (tr_trial_own_dough (alone, 0), figures, ratio, value, NULL))
        has_moved = TRUE;
    }

  return has_moved ? tr_dough_copy (tr_trial_get_dough (alone, 0)) : NULL;
}

static char *
dup_held_of (TrRatio             ratio,
             const TrRatioMoves *moves,
             double              value,
             const TrReader     *reader)
{
  const char *name = tr_words_ratio (ratio);
  g_autofree char *low = tr_words_percent (reader, moves->reach.min), *high = tr_words_percent (reader, moves->reach.max);

  if (!moves->has_line)
    return g_strdup_printf (_("%s stays: there is no line to move it by."), name);
  if (!moves->can_move)
    return g_strdup_printf (_("%s stays: it is not known."), name);
  if (value < moves->reach.min - TR_RATIO_TOLERANCE || value > moves->reach.max + TR_RATIO_TOLERANCE)
    return isfinite (moves->reach.max) ? g_strdup_printf (_("%s goes from %s to %s."), name, low, high)
                                       : g_strdup_printf (_("%s does not go under %s."), name, low);

  return NULL;
}

char *
tr_two_ratios_dup_held (const TrDoughFigures *figures,
                        const TrRatio         ratios[2],
                        const double          values[2],
                        const TrReader       *reader)
{
  g_autoptr (GString) held = g_string_new (NULL);

  for (int i = 0; i < 2; i++)
    {
      g_autofree char *of_one = NULL;
      TrRatioMoves moves;

      tr_ratio_get_moves (figures, ratios[i], &moves);
      of_one = dup_held_of (ratios[i], &moves, values[i], reader);
      if (of_one != NULL)
        g_string_append_printf (held, "%s%s", held->len > 0 ? " " : "", of_one);
    }

  return held->len > 0 ? g_string_free (g_steal_pointer (&held), FALSE) : NULL;
}
