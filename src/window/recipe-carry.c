/* recipe-carry.c: what was decided about a recipe, kept when its text is edited
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "recipe-carry.h"

#include <math.h>

static void
clear_start (gpointer start)
{
  tr_recipe_start_clear (start);
}

GArray *
tr_recipe_starts_new (const TrRecipe *recipe)
{
  GArray *starts = g_array_sized_new (FALSE, TRUE, sizeof (TrRecipeStart), recipe->lines->len);

  g_array_set_clear_func (starts, clear_start);
  g_array_set_size (starts, recipe->lines->len);
  for (guint i = 0; i < recipe->lines->len; i++)
    tr_recipe_start_init (&g_array_index (starts, TrRecipeStart, i), tr_recipe_get_line (recipe, i));

  return starts;
}

/* The line of `to` that is line `index` of `from`, the second of two alike the second; -1: none. */
static int
find_same (const TrRecipe *from,
           guint           index,
           const TrRecipe *to)
{
  const char *text = tr_recipe_get_line (from, index)->text;
  guint n_before = 0;

  for (guint i = 0; i < index; i++)
    n_before += g_str_equal (tr_recipe_get_line (from, i)->text, text) ? 1 : 0;
  for (guint i = 0; i < to->lines->len; i++)
    if (g_str_equal (tr_recipe_get_line (to, i)->text, text) && n_before-- == 0)
      return (int) i;

  return -1;
}

static void
carry_flags (const TrRecipeLine *from,
             const TrRecipeLine *to)
{
  for (guint i = 0; i < MIN (from->flags->len, to->flags->len); i++)
    {
      const TrRecipeFlag *old = g_ptr_array_index (from->flags, i);
      TrRecipeFlag *flag = g_ptr_array_index (to->flags, i);

      if (old->id == flag->id)
        flag->is_settled = old->is_settled;
    }
}

static void
carry_line (const TrRecipeLine  *from,
            const TrRecipeStart *start,
            TrRecipe            *to,
            guint                line)
{
  if (g_strcmp0 (from->ingredient, start->ingredient) != 0)
    tr_recipe_set_ingredient (to, line, from->ingredient);
  if (!g_str_equal (from->amount, start->amount))
    tr_recipe_set_amount (to, line, from->amount);
  if (from->stage != start->stage)
    tr_recipe_set_stage (to, line, from->stage);
  if (from->is_in_dough != start->is_in_dough)
    tr_recipe_set_in_dough (to, line, from->is_in_dough);
  if (isnan (tr_recipe_get_line (to, line)->hydration_percent))
    ((TrRecipeLine *) g_ptr_array_index (to->lines, line))->hydration_percent = from->hydration_percent;
  carry_flags (from, tr_recipe_get_line (to, line));
}

gboolean
tr_recipe_carry (const TrRecipe *from,
                 const GArray   *starts,
                 TrRecipe       *to)
{
  g_return_val_if_fail (from != NULL && to != NULL, FALSE);
  g_return_val_if_fail (starts != NULL && starts->len == from->lines->len, FALSE);

  g_autofree int *same = g_new (int, from->lines->len);
  guint n_same = 0;

  for (guint i = 0; i < from->lines->len; i++)
    {
      same[i] = find_same (from, i, to);
      n_same += same[i] >= 0 ? 1 : 0;
    }
  if (2 * n_same < from->lines->len)
    return FALSE;

  for (guint i = 0; i < from->lines->len; i++)
    if (same[i] >= 0)
      carry_line (tr_recipe_get_line (from, i), &g_array_index (starts, TrRecipeStart, i), to, (guint) same[i]);

  return TRUE;
}
