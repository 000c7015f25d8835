/* comparison-choice.c: which doughs are compared, and in which order everything stands
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "comparison-choice.h"

#include <math.h>

#include "figure-item.h"

void
tr_comparison_choice_clear (TrComparisonChoice *choice)
{
  g_clear_pointer (&choice->chosen, g_hash_table_unref);
  g_clear_pointer (&choice->reference, g_free);
}

/* Doughs */

gboolean
tr_comparison_choice_is_shown (const TrComparisonChoice *choice,
                               const TrFigures          *figures,
                               const char               *dough)
{
  int index = tr_trial_find_dough (figures->trial, dough);

  if (index < 0)
    return FALSE;

  return choice->chosen != NULL ? g_hash_table_contains (choice->chosen, dough) : index < TR_COMPARISON_FIRST;
}

/* What is shown without having been chosen is chosen from now on. */
static void
need_chosen (TrComparisonChoice *choice,
             const TrFigures    *figures)
{
  GHashTable *chosen;

  if (choice->chosen != NULL)
    return;

  chosen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (guint i = 0; i < figures->doughs->len; i++)
    if (tr_comparison_choice_is_shown (choice, figures, tr_trial_get_dough (figures->trial, i)->id))
      g_hash_table_add (chosen, g_strdup (tr_trial_get_dough (figures->trial, i)->id));
  choice->chosen = chosen;
}

void
tr_comparison_choice_set_shown (TrComparisonChoice *choice,
                                const TrFigures    *figures,
                                const char         *dough,
                                gboolean            is_shown)
{
  need_chosen (choice, figures);
  if (is_shown)
    g_hash_table_add (choice->chosen, g_strdup (dough));
  else
    g_hash_table_remove (choice->chosen, dough);
}

static void
turn_over (guint *doughs,
           guint  n)
{
  for (guint i = 0; i < n / 2; i++)
    {
      guint first = doughs[i];

      doughs[i] = doughs[n - 1 - i];
      doughs[n - 1 - i] = first;
    }
}

GArray *
tr_comparison_choice_list_doughs (const TrComparisonChoice *choice,
                                  const TrFigures          *figures)
{
  GArray *doughs = g_array_new (FALSE, FALSE, sizeof (guint));
  guint *places, n_known = 0;

  for (guint i = 0; i < figures->doughs->len; i++)
    if (tr_comparison_choice_is_shown (choice, figures, tr_trial_get_dough (figures->trial, i)->id))
      g_array_append_val (doughs, i);
  if (choice->order == NULL || doughs->len == 0)
    return doughs;

  places = &g_array_index (doughs, guint, 0);
  tr_comparable_sort (choice->order, figures, places, doughs->len);
  /* What is not known stays last. */
  while (n_known < doughs->len && isfinite (tr_comparable_get (choice->order, tr_figures_get_dough (figures, places[n_known]))))
    n_known++;
  if (choice->is_least_first)
    turn_over (places, n_known);

  return doughs;
}

/* Rows */

typedef struct { const TrComparable *comparable; double relative; guint place; } Ranked;

static int
compare_ranked (gconstpointer a,
                gconstpointer b)
{
  const Ranked *first = a, *second = b;
  double one = isnan (first->relative) ? -1 : first->relative, other = isnan (second->relative) ? -1 : second->relative;

  if (one > other || one < other)
    return one > other ? -1 : 1;

  return first->place < second->place ? -1 : 1;
}

/* (element-type Ranked): those of which something is known. */
static GArray *
list_known (const TrComparisonChoice *choice,
            const TrFigures          *figures)
{
  g_autoptr (GArray) doughs = tr_comparison_choice_list_doughs (choice, figures);
  GArray *known = g_array_new (FALSE, FALSE, sizeof (Ranked));
  guint n;
  const TrComparable *comparables = tr_comparables_get_all (&n);

  for (guint i = 0; i < n; i++)
    {
      TrSpread spread;

      tr_comparable_get_spread (&comparables[i], figures, (const guint *) doughs->data, doughs->len, &spread);
      if (spread.n_known > 0)
        g_array_append_val (known, ((Ranked) { &comparables[i], spread.relative, i }));
    }
  if (choice->is_by_spread)
    g_array_sort (known, compare_ranked);

  return known;
}

GPtrArray *
tr_comparison_choice_list_items (const TrComparisonChoice *choice,
                                 const TrFigures          *figures)
{
  g_autoptr (GArray) known = list_known (choice, figures);
  GPtrArray *items = g_ptr_array_new_with_free_func (g_object_unref);
  int group = -1;

  for (guint i = 0; i < known->len; i++)
    {
      const TrComparable *comparable = g_array_index (known, Ranked, i).comparable;

      if (!choice->is_by_spread && (int) comparable->group != group)
        g_ptr_array_add (items, tr_figure_item_new (NULL, comparable->group));
      group = (int) comparable->group;
      g_ptr_array_add (items, tr_figure_item_new (comparable, comparable->group));
    }

  return items;
}

gboolean
tr_comparison_has_items (GListModel      *model,
                         const GPtrArray *items)
{
  if (g_list_model_get_n_items (model) != items->len)
    return FALSE;

  for (guint i = 0; i < items->len; i++)
    {
      g_autoptr (TrFigureItem) item = g_list_model_get_item (model, i);
      TrFigureItem *other = items->pdata[i];

      if (tr_figure_item_get_comparable (item) != tr_figure_item_get_comparable (other)
          || tr_figure_item_get_group (item) != tr_figure_item_get_group (other))
        return FALSE;
    }

  return TRUE;
}
