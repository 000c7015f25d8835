/* pantry-edits.c: the baker's own ingredients come, go and give way
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invariant: an id is that of one ingredient only, built-in or own.
 */

#include "config.h"

#include "pantry-edits.h"

#include <glib/gi18n-lib.h>

#include "../calc/ingredient.h"
#include "../words/words.h"
#include "ingredient-find.h"

int
tr_pantry_find_index (const TrPantry *pantry,
                      const char     *id)
{
  for (guint i = 0; i < pantry->own->len; i++)
    {
      const TrOwnIngredient *own = g_ptr_array_index (pantry->own, i);

      if (g_strcmp0 (own->id, id) == 0)
        return (int) i;
    }

  return -1;
}

static char *
dup_free_id (const TrPantry *pantry,
             const char     *like)
{
  for (guint i = 1;; i++)
    {
      g_autofree char *id = i == 1 ? g_strdup_printf ("%s-own", like) : g_strdup_printf ("%s-own-%u", like, i);

      if (tr_builtin_find (id) == NULL && tr_pantry_find (pantry, id) == NULL)
        return g_steal_pointer (&id);
    }
}

static gboolean
is_name_taken (const TrPantry *pantry,
               const char     *name)
{
  for (guint i = 0; i < pantry->own->len; i++)
    {
      const TrOwnIngredient *own = g_ptr_array_index (pantry->own, i);

      if (g_strcmp0 (own->name, name) == 0)
        return TRUE;
    }

  return FALSE;
}

/* Told apart from the one it is like, and from the others, wherever names stand. */
static char *
dup_free_name (const TrPantry *pantry,
               const char     *of)
{
  for (guint i = 1;; i++)
    {
      /* Translators: the name of an ingredient of the baker's own, until it is given one: "Butter, unsalted, my own" */
      g_autofree char *name = i == 1 ? g_strdup_printf (_("%s, my own"), of) : g_strdup_printf (_("%s, my own %u"), of, i);

      if (!is_name_taken (pantry, name))
        return g_steal_pointer (&name);
    }
}

static char *
add (TrPantry        *pantry,
     TrOwnIngredient *own,
     const char      *name)
{
  g_free (own->name);
  own->name = dup_free_name (pantry, name);
  g_ptr_array_add (pantry->own, own);

  return g_strdup (own->id);
}

char *
tr_pantry_add_like (TrTrial    *draft,
                    const char *like)
{
  g_return_val_if_fail (tr_builtin_find (like) != NULL, NULL);

  TrPantry *pantry = tr_trial_own_pantry (draft);
  g_autofree char *id = dup_free_id (pantry, like);
  g_autofree char *name = tr_ingredient_dup_name (pantry, like);

  return add (pantry, tr_own_ingredient_new (id, like), name);
}

char *
tr_pantry_own_of_line (TrTrial *draft,
                       guint    dough,
                       guint    line)
{
  const char *id = tr_dough_get_line (tr_trial_get_dough (draft, dough), line)->ingredient;

  if (id == NULL || tr_builtin_find (id) == NULL)
    return g_strdup (tr_pantry_find (draft->pantry, id) != NULL ? id : NULL);

  g_autofree char *own = tr_pantry_add_like (draft, id);
  TrLine *changed = tr_dough_get_line (tr_trial_own_dough (draft, dough), line);

  g_free (changed->ingredient);
  changed->ingredient = g_strdup (own);

  return g_steal_pointer (&own);
}

char *
tr_pantry_duplicate (TrTrial *draft,
                     guint    index)
{
  TrPantry *pantry = tr_trial_own_pantry (draft);

  g_return_val_if_fail (index < pantry->own->len, NULL);

  TrOwnIngredient *copy = tr_own_ingredient_copy (g_ptr_array_index (pantry->own, index));
  g_autofree char *name = tr_ingredient_dup_name (pantry, copy->id);

  g_free (copy->id);
  copy->id = dup_free_id (pantry, copy->like);

  return add (pantry, copy, name);
}

void
tr_pantry_remove (TrTrial *draft,
                  guint    index)
{
  TrPantry *pantry = tr_trial_own_pantry (draft);

  g_return_if_fail (index < pantry->own->len);

  g_ptr_array_remove_index (pantry->own, index);
}

static gboolean
has_line_of (const TrDough *dough,
             const char    *id)
{
  for (guint i = 0; i < dough->lines->len; i++)
    if (g_strcmp0 (tr_dough_get_line (dough, i)->ingredient, id) == 0)
      return TRUE;

  return FALSE;
}

void
tr_pantry_replace (TrTrial    *draft,
                   const char *id,
                   const char *other)
{
  for (guint i = 0; i < draft->doughs->len; i++)
    {
      if (!has_line_of (tr_trial_get_dough (draft, i), id))
        continue;

      TrDough *dough = tr_trial_own_dough (draft, i);

      for (guint j = 0; j < dough->lines->len; j++)
        {
          TrLine *line = tr_dough_get_line (dough, j);

          if (g_strcmp0 (line->ingredient, id) == 0)
            {
              g_free (line->ingredient);
              line->ingredient = g_strdup (other);
            }
        }
    }
}

char *
tr_pantry_dup_users (const TrTrial *trial,
                     const char    *id)
{
  g_autoptr (GString) names = g_string_new (NULL);
  g_autofree char *last = NULL;

  for (guint i = 0; i < trial->doughs->len; i++)
    {
      const TrDough *dough = tr_trial_get_dough (trial, i);

      if (!has_line_of (dough, id))
        continue;
      if (last != NULL)
        g_string_append_printf (names, "%s%s", names->len > 0 ? ", " : "", last);
      g_free (last);
      last = tr_words_one_line (dough->name);
    }

  if (last == NULL || names->len == 0)
    return g_steal_pointer (&last);

  return g_strdup_printf (_("%s and %s"), names->str, last);
}
