/* ingredient-find.c: which ingredient was meant by what was typed
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "ingredient-find.h"

#include "../words/words.h"

#define MAX_OFFERS 12

static gboolean
name_matches (const char *typed,
              const char *plain_typed,
              const char *name)
{
  return g_str_match_string (typed, name, TRUE) || g_str_match_string (plain_typed, name, TRUE);
}

static gboolean
starts_with (const char *name,
             const char *typed)
{
  g_autofree char *folded_name = g_utf8_casefold (name, -1);
  g_autofree char *folded_typed = g_utf8_casefold (typed, -1);

  return g_str_has_prefix (folded_name, folded_typed);
}

static void
collect (const TrIngredient *ingredient,
         const char         *typed,
         const char         *plain_typed,
         GPtrArray          *first,
         GPtrArray          *rest)
{
  const char *name = tr_words_ingredient (ingredient);

  if (!name_matches (typed, plain_typed, name) && !name_matches (typed, plain_typed, ingredient->name))
    return;

  g_ptr_array_add (starts_with (name, typed) ? first : rest, g_strdup (ingredient->id));
}

static void
collect_own (const TrPantry *pantry,
             const char     *typed,
             const char     *plain_typed,
             GPtrArray      *first,
             GPtrArray      *rest)
{
  for (guint i = 0; i < pantry->own->len; i++)
    {
      const TrOwnIngredient *own = g_ptr_array_index (pantry->own, i);
      TrIngredient ingredient;

      if (tr_ingredient_resolve (pantry, own->id, &ingredient))
        collect (&ingredient, typed, plain_typed, first, rest);
    }
}

gboolean
tr_ingredient_is_own (const TrPantry *pantry,
                      const char     *id)
{
  return pantry != NULL && tr_pantry_find (pantry, id) != NULL;
}

char **
tr_ingredient_find (const TrPantry *pantry,
                    const char     *typed)
{
  g_return_val_if_fail (typed != NULL, NULL);

  g_autofree char *stripped = g_strstrip (g_strdup (typed));
  g_autofree char *plain = g_str_to_ascii (stripped, NULL);
  g_autoptr (GPtrArray) first = g_ptr_array_new_with_free_func (g_free);
  GPtrArray *rest = g_ptr_array_new ();

  if (*stripped != '\0')
    {
      if (pantry != NULL)
        collect_own (pantry, stripped, plain, first, rest);
      for (guint i = 0; i < tr_builtin_count (); i++)
        if (!tr_ingredient_is_own (pantry, tr_builtin_get (i)->id))
          collect (tr_builtin_get (i), stripped, plain, first, rest);
    }
  g_ptr_array_extend_and_steal (first, rest);
  g_ptr_array_set_size (first, MIN ((int) first->len, MAX_OFFERS));
  g_ptr_array_add (first, NULL);

  return (char **) g_ptr_array_steal (first, NULL);
}

static gboolean
has_name (const TrIngredient *ingredient,
          const char         *folded)
{
  g_autofree char *said = g_utf8_casefold (tr_words_ingredient (ingredient), -1);
  g_autofree char *english = g_utf8_casefold (ingredient->name, -1);

  return g_str_equal (folded, said) || g_str_equal (folded, english);
}

const char *
tr_ingredient_find_exactly (const TrPantry *pantry,
                            const char     *typed)
{
  g_return_val_if_fail (typed != NULL, NULL);

  g_autofree char *stripped = g_strstrip (g_strdup (typed));
  g_autofree char *folded = g_utf8_casefold (stripped, -1);
  TrIngredient ingredient;

  for (guint i = 0; pantry != NULL && i < pantry->own->len; i++)
    {
      const TrOwnIngredient *own = g_ptr_array_index (pantry->own, i);

      if (tr_ingredient_resolve (pantry, own->id, &ingredient) && has_name (&ingredient, folded))
        return own->id;
    }
  for (guint i = 0; i < tr_builtin_count (); i++)
    if (has_name (tr_builtin_get (i), folded))
      return tr_builtin_get (i)->id;

  return NULL;
}

char *
tr_ingredient_dup_name (const TrPantry *pantry,
                        const char     *id)
{
  g_return_val_if_fail (id != NULL, NULL);

  g_autoptr (TrPantry) none = pantry == NULL ? tr_pantry_new () : NULL;
  TrIngredient ingredient;

  if (tr_ingredient_resolve (pantry != NULL ? pantry : none, id, &ingredient))
    return g_strdup (tr_words_ingredient (&ingredient));

  return g_strdup (id);
}
