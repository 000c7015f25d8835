/* causes.c: what the tasters found wrong, and what in the dough points there
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "causes.h"

#include <string.h>

#include "balance.h"
#include "measure.h"

static const char from_practice[] = "common practice";
static const char from_ireks[] = "IREKS-Kompendium 11.5; common practice";
static const char from_trial[] = "the tasting of this trial";
static const char from_layering[] = "Ooms et al., Crit. Rev. Food Sci. Nutr. 56(13), 2016, as reported; common practice";

#define OVER TR_SIDE_OVER
#define UNDER TR_SIDE_UNDER

/* For each complaint the likeliest first. */
static const TrRule rules[] = {
  { TR_FAULT_DENSE, TR_READING_PROOF_MINUTES, UNDER, from_practice },
  { TR_FAULT_DENSE, TR_READING_PROOF_C, UNDER, from_ireks },
  { TR_FAULT_DENSE, TR_READING_YEAST, UNDER, from_practice },
  { TR_FAULT_DENSE, TR_READING_FAT_LAYER_UM, UNDER, from_layering },
  { TR_FAULT_DENSE, TR_READING_FAT_LAYERS, OVER, from_layering },
  { TR_FAULT_DENSE, TR_READING_CORE_C, OVER, from_practice },
  { TR_FAULT_DENSE, TR_READING_WINDOW_MINUTES, UNDER, from_practice },
  { TR_FAULT_DENSE, TR_READING_ALL_WATER, UNDER, from_practice },

  { TR_FAULT_BREAD_LIKE_CRUMB, TR_READING_FAT_LAYERS, UNDER, from_layering },
  { TR_FAULT_BREAD_LIKE_CRUMB, TR_READING_ROLL_IN, UNDER, from_practice },
  { TR_FAULT_BREAD_LIKE_CRUMB, TR_READING_FAT_LAYER_UM, UNDER, from_layering },
  { TR_FAULT_BREAD_LIKE_CRUMB, TR_READING_CORE_C, OVER, from_practice },
  { TR_FAULT_BREAD_LIKE_CRUMB, TR_READING_PROOF_OF_FAT_C, OVER, from_ireks },
  { TR_FAULT_BREAD_LIKE_CRUMB, TR_READING_ROOM_C, OVER, from_practice },

  { TR_FAULT_FAT_POOLED, TR_READING_PROOF_OF_FAT_C, OVER, from_ireks },
  { TR_FAULT_FAT_POOLED, TR_READING_WINDOW_MINUTES, UNDER, from_practice },
  { TR_FAULT_FAT_POOLED, TR_READING_CORE_C, OVER, from_practice },
  { TR_FAULT_FAT_POOLED, TR_READING_ROOM_C, OVER, from_practice },
  { TR_FAULT_FAT_POOLED, TR_READING_FAT_LAYER_UM, UNDER, from_practice },
  { TR_FAULT_FAT_POOLED, TR_READING_ROLL_IN, OVER, from_practice },
  { TR_FAULT_FAT_POOLED, TR_READING_BAKE_C, UNDER, from_practice },

  { TR_FAULT_GUMMY, TR_READING_BAKE_MINUTES, UNDER, from_practice },
  { TR_FAULT_GUMMY, TR_READING_BAKE_C, UNDER, from_practice },
  { TR_FAULT_GUMMY, TR_READING_SHEET_MM, OVER, from_practice },
  { TR_FAULT_GUMMY, TR_READING_ALL_WATER, OVER, from_practice },
  { TR_FAULT_GUMMY, TR_READING_PROOF_MINUTES, UNDER, from_practice },
  { TR_FAULT_GUMMY, TR_READING_FAT_LAYER_UM, UNDER, from_layering },

  { TR_FAULT_LAYERS_MERGED, TR_READING_FAT_LAYER_UM, UNDER, from_layering },
  { TR_FAULT_LAYERS_MERGED, TR_READING_FAT_LAYERS, OVER, from_layering },
  { TR_FAULT_LAYERS_MERGED, TR_READING_CORE_C, OVER, from_practice },
  { TR_FAULT_LAYERS_MERGED, TR_READING_WINDOW_MINUTES, UNDER, from_practice },
  { TR_FAULT_LAYERS_MERGED, TR_READING_ROOM_C, OVER, from_practice },
  { TR_FAULT_LAYERS_MERGED, TR_READING_PROOF_OF_FAT_C, OVER, from_ireks },
  { TR_FAULT_LAYERS_MERGED, TR_READING_STRETCH, OVER, from_practice },
  { TR_FAULT_LAYERS_MERGED, TR_READING_ALL_WATER, OVER, from_practice },

  { TR_FAULT_SIDE_BURST, TR_READING_PROOF_MINUTES, UNDER, from_practice },
  { TR_FAULT_SIDE_BURST, TR_READING_PROOF_C, UNDER, from_ireks },
  { TR_FAULT_SIDE_BURST, TR_READING_ALL_WATER, UNDER, from_practice },
  { TR_FAULT_SIDE_BURST, TR_READING_BAKE_C, OVER, from_practice },
  { TR_FAULT_SIDE_BURST, TR_READING_REST_MINUTES, UNDER, from_practice },

  { TR_FAULT_SHRUNK, TR_READING_REST_MINUTES, UNDER, from_practice },
  { TR_FAULT_SHRUNK, TR_READING_STRETCH, OVER, from_practice },
  { TR_FAULT_SHRUNK, TR_READING_ALL_WATER, UNDER, from_practice },
  { TR_FAULT_SHRUNK, TR_READING_PROOF_MINUTES, UNDER, from_practice },

  { TR_FAULT_DARK_OUTSIDE, TR_READING_BAKE_C, OVER, from_practice },
  { TR_FAULT_DARK_OUTSIDE, TR_READING_SUGAR, OVER, from_practice },
  { TR_FAULT_DARK_OUTSIDE, TR_READING_BAKE_MINUTES, UNDER, from_practice },
  { TR_FAULT_DARK_OUTSIDE, TR_READING_SHEET_MM, OVER, from_practice },

  { TR_FAULT_GREASY_BASE, TR_READING_PROOF_OF_FAT_C, OVER, from_ireks },
  { TR_FAULT_GREASY_BASE, TR_READING_ROLL_IN, OVER, from_practice },
  { TR_FAULT_GREASY_BASE, TR_READING_FAT_LAYER_UM, OVER, from_practice },
  { TR_FAULT_GREASY_BASE, TR_READING_BAKE_C, UNDER, from_practice },
  { TR_FAULT_GREASY_BASE, TR_READING_WINDOW_MINUTES, UNDER, from_practice },
  { TR_FAULT_GREASY_BASE, TR_READING_FAT_LAYERS, UNDER, from_practice },

  { TR_FAULT_YEASTY, TR_READING_YEAST, OVER, from_practice },
  { TR_FAULT_YEASTY, TR_READING_BULK_MINUTES, OVER, from_practice },
  { TR_FAULT_YEASTY, TR_READING_PROOF_MINUTES, OVER, from_practice },
  { TR_FAULT_YEASTY, TR_READING_MIXED_C, OVER, from_practice },
  { TR_FAULT_YEASTY, TR_READING_PROOF_C, OVER, from_ireks },

  { TR_FAULT_FLAT, TR_READING_PROOF_MINUTES, OVER, from_practice },
  { TR_FAULT_FLAT, TR_READING_SHEET_MM, UNDER, from_practice },
  { TR_FAULT_FLAT, TR_READING_YEAST, UNDER, from_practice },
  { TR_FAULT_FLAT, TR_READING_PROOF_OF_FAT_C, OVER, from_ireks },
  { TR_FAULT_FLAT, TR_READING_CORE_C, OVER, from_practice },
  { TR_FAULT_FLAT, TR_READING_FAT_LAYER_UM, UNDER, from_layering },
  { TR_FAULT_FLAT, TR_READING_FAT_LAYERS, OVER, from_layering },
  { TR_FAULT_FLAT, TR_READING_ALL_WATER, OVER, from_practice },
  { TR_FAULT_FLAT, TR_READING_BAKE_C, UNDER, from_practice },

  { TR_COMPLAINT_SALT_LITTLE, TR_READING_SALT, UNDER, from_practice },
  { TR_COMPLAINT_SALT_LITTLE, TR_READING_SALT_MIDDLE, UNDER, from_practice },
  { TR_COMPLAINT_SALT_MUCH, TR_READING_SALT, OVER, from_practice },
  { TR_COMPLAINT_SALT_MUCH, TR_READING_SALTED_FAT, OVER, from_practice },
  { TR_COMPLAINT_SALT_MUCH, TR_READING_SALT_MIDDLE, OVER, from_practice },
  { TR_COMPLAINT_SWEET_LITTLE, TR_READING_SUGAR, UNDER, from_practice },
  { TR_COMPLAINT_SWEET_LITTLE, TR_READING_SUGAR_MIDDLE, UNDER, from_practice },
  { TR_COMPLAINT_SWEET_MUCH, TR_READING_SUGAR, OVER, from_practice },
  { TR_COMPLAINT_SWEET_MUCH, TR_READING_SUGAR_MIDDLE, OVER, from_practice },

  { TR_COMPLAINT_BAKE_LITTLE, TR_READING_BAKE_MINUTES, UNDER, from_practice },
  { TR_COMPLAINT_BAKE_LITTLE, TR_READING_BAKE_C, UNDER, from_practice },
  { TR_COMPLAINT_BAKE_LITTLE, TR_READING_SUGAR, UNDER, from_practice },
  { TR_COMPLAINT_BAKE_MUCH, TR_READING_BAKE_C, OVER, from_practice },
  { TR_COMPLAINT_BAKE_MUCH, TR_READING_BAKE_MINUTES, OVER, from_practice },
  { TR_COMPLAINT_BAKE_MUCH, TR_READING_SUGAR, OVER, from_practice },
};

const TrRule *
tr_rules_get (guint *n)
{
  *n = G_N_ELEMENTS (rules);

  return rules;
}

/* Complaints */

static void
count_faults (const TrScore *score,
              TrComplaint    counted[TR_N_COMPLAINTS])
{
  gboolean seen[TR_N_COMPLAINTS] = { FALSE };

  for (guint i = 0; score->faults != NULL && score->faults[i] != NULL; i++)
    {
      int fault = tr_fault_from_id (score->faults[i]);

      /* Ticked twice it is still one taster. */
      if (fault < 0 || seen[fault])
        continue;
      seen[fault] = TRUE;
      counted[fault].n++;
    }
}

/* One side of the balance: those who marked it too little, and too much. */
typedef struct { guint little, much, n; int sum; } Balance;

static void
count_balance (int      mark,
               Balance *balance)
{
  if (mark == G_MININT)
    return;
  balance->n++;
  balance->sum += mark;
  balance->little += mark < 0 ? 1 : 0;
  balance->much += mark > 0 ? 1 : 0;
}

/* Where tasters pull both ways those win who pull more; evenly, nobody does. */
static void
settle_balance (const Balance *balance,
                TrComplaint   *little,
                TrComplaint   *much)
{
  TrComplaint *wins = balance->sum < 0 ? little : much;

  if (balance->sum == 0)
    return;
  wins->n = balance->sum < 0 ? balance->little : balance->much;
  wins->mean = (double) balance->sum / balance->n;
}

static int
compare_complaints (gconstpointer a,
                    gconstpointer b)
{
  const TrComplaint *first = a, *second = b;

  if (first->n != second->n)
    return first->n > second->n ? -1 : 1;

  return (int) first->id - (int) second->id;
}

GArray *
tr_complaints_list (const TrTasting *tasting,
                    const char      *dough)
{
  GArray *list = g_array_new (FALSE, FALSE, sizeof (TrComplaint));
  TrComplaint counted[TR_N_COMPLAINTS];
  Balance salt = { 0 }, sweet = { 0 }, bake = { 0 };
  guint of = 0;

  for (guint i = 0; i < TR_N_COMPLAINTS; i++)
    counted[i] = (TrComplaint) { .id = i, .mean = NAN };

  for (guint i = 0; tasting != NULL && i < tasting->scores->len; i++)
    {
      const TrScore *score = g_ptr_array_index (tasting->scores, i);

      if (g_strcmp0 (score->dough, dough) != 0 || tr_score_is_empty (score))
        continue;
      of++;
      count_faults (score, counted);
      count_balance (score->salt, &salt);
      count_balance (score->sweet, &sweet);
      count_balance (score->bake, &bake);
    }
  settle_balance (&salt, &counted[TR_COMPLAINT_SALT_LITTLE], &counted[TR_COMPLAINT_SALT_MUCH]);
  settle_balance (&sweet, &counted[TR_COMPLAINT_SWEET_LITTLE], &counted[TR_COMPLAINT_SWEET_MUCH]);
  settle_balance (&bake, &counted[TR_COMPLAINT_BAKE_LITTLE], &counted[TR_COMPLAINT_BAKE_MUCH]);

  for (guint i = 0; i < TR_N_COMPLAINTS; i++)
    {
      counted[i].of = of;
      if (counted[i].n > 0)
        g_array_append_val (list, counted[i]);
    }
  g_array_sort (list, compare_complaints);

  return list;
}

/* Causes */

static TrCause *
cause_new (const TrDoughFigures *figures,
           const TrRule         *rule,
           const TrReading      *reading)
{
  TrCause *cause = g_new (TrCause, 1);

  *cause = (TrCause) {
    .complaint = rule->complaint, .side = rule->side, .source = rule->source, .reading = *reading,
    .limit = tr_reading_get_limit (reading, rule->side), .beside = -1,
  };
  tr_remedy_find (figures, reading, rule->side, &cause->remedy);

  return cause;
}

void
tr_cause_free (TrCause *cause)
{
  tr_reading_clear (&cause->reading);
  g_free (cause);
}

GPtrArray *
tr_causes_find (const TrDoughFigures *figures,
                guint                 complaint)
{
  GPtrArray *causes = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_cause_free);

  g_return_val_if_fail (figures != NULL, causes);

  for (guint i = 0; i < G_N_ELEMENTS (rules); i++)
    {
      TrReading reading;

      if (rules[i].complaint != complaint || !tr_reading_get (figures, rules[i].reading, rules[i].side, &reading))
        continue;
      if (tr_reading_passes (&reading, rules[i].side))
        g_ptr_array_add (causes, cause_new (figures, &rules[i], &reading));
      else
        tr_reading_clear (&reading);
    }

  return causes;
}

/* Beside other doughs */

static const TrRule besides[] = {
  { TR_COMPLAINT_SALT_LITTLE, TR_READING_SALT, UNDER, from_trial },
  { TR_COMPLAINT_SALT_MUCH, TR_READING_SALT, OVER, from_trial },
  { TR_COMPLAINT_SWEET_LITTLE, TR_READING_SUGAR, UNDER, from_trial },
  { TR_COMPLAINT_SWEET_MUCH, TR_READING_SUGAR, OVER, from_trial },
  { TR_COMPLAINT_BAKE_LITTLE, TR_READING_BAKE_C, UNDER, from_trial },
  { TR_COMPLAINT_BAKE_LITTLE, TR_READING_BAKE_MINUTES, UNDER, from_trial },
  { TR_COMPLAINT_BAKE_MUCH, TR_READING_BAKE_C, OVER, from_trial },
  { TR_COMPLAINT_BAKE_MUCH, TR_READING_BAKE_MINUTES, OVER, from_trial },
};

static int
get_mark (const TrScore *score,
          guint          complaint)
{
  switch ((int) complaint)
    {
    case TR_COMPLAINT_SALT_LITTLE: case TR_COMPLAINT_SALT_MUCH: return score->salt;
    case TR_COMPLAINT_SWEET_LITTLE: case TR_COMPLAINT_SWEET_MUCH: return score->sweet;
    default: return score->bake;
    }
}

static gboolean
is_just_right (const TrTasting *tasting,
               const char      *dough,
               guint            complaint)
{
  Balance balance = { 0 };

  for (guint i = 0; i < tasting->scores->len; i++)
    {
      const TrScore *score = g_ptr_array_index (tasting->scores, i);

      if (g_strcmp0 (score->dough, dough) == 0)
        count_balance (get_mark (score, complaint), &balance);
    }

  return balance.n > 0 && balance.sum == 0;
}

/* What is worth a change, in the reading's own unit. */
static double
least_step (TrReadingId id)
{
  return id == TR_READING_BAKE_C ? 5 : id == TR_READING_BAKE_MINUTES ? 1
         : tr_ratio_get_step ((TrRatio) tr_reading_get_ratio (id));
}

static void
hold_beside (TrReading *reading,
             TrSide     side,
             double     number)
{
  reading->low = side == TR_SIDE_UNDER ? number : (double) NAN;
  reading->high = side == TR_SIDE_OVER ? number : (double) NAN;
  reading->source = from_trial;
}

/* The number of the nearest dough found just right, if it is off by enough. */
static TrCause *
find_beside (const TrFigures *figures,
             guint            dough,
             const TrRule    *rule)
{
  const TrDoughFigures *own = tr_figures_get_dough (figures, dough);
  TrReading reading;
  double nearest = NAN;
  int beside = -1;

  if (!tr_reading_get (own, rule->reading, rule->side, &reading))
    return NULL;

  for (guint i = 0; i < figures->doughs->len; i++)
    {
      const TrDoughFigures *other = tr_figures_get_dough (figures, i);
      TrReading theirs;

      if (i == dough || other->dough->kind != own->dough->kind
          || !is_just_right (figures->trial->tasting, other->dough->id, rule->complaint)
          || !tr_reading_get (other, rule->reading, rule->side, &theirs))
        continue;

      double off = rule->side == TR_SIDE_OVER ? reading.value - theirs.value : theirs.value - reading.value;

      if (off >= least_step (rule->reading) - TR_HAIR && !(off >= fabs (nearest - reading.value)))
        {
          nearest = theirs.value;
          beside = (int) i;
        }
      tr_reading_clear (&theirs);
    }
  if (beside < 0)
    {
      tr_reading_clear (&reading);
      return NULL;
    }

  hold_beside (&reading, rule->side, nearest);

  reading.name = g_strdup (tr_figures_get_dough (figures, (guint) beside)->dough->name);

  TrCause *cause = cause_new (own, rule, &reading);

  cause->beside = beside;
  return cause;
}

GPtrArray *
tr_causes_find_beside (const TrFigures *figures,
                       guint            dough,
                       guint            complaint)
{
  g_return_val_if_fail (figures != NULL && dough < figures->doughs->len, NULL);

  GPtrArray *causes = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_cause_free);
  g_autoptr (GPtrArray) own = tr_causes_find (tr_figures_get_dough (figures, dough), complaint);

  for (guint i = 0; figures->trial->tasting != NULL && i < G_N_ELEMENTS (besides); i++)
    {
      TrCause *cause = besides[i].complaint == complaint ? find_beside (figures, dough, &besides[i]) : NULL;

      if (cause != NULL)
        g_ptr_array_add (causes, cause);
    }
  g_ptr_array_extend_and_steal (causes, g_steal_pointer (&own));

  return causes;
}
