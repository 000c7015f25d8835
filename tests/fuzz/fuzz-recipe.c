/* fuzz-recipe.c: the reader of recipes, fed with anything
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks what recipe.h promises: a recipe makes a valid trial, with an amount
 * that fits in every line and a reason in every line that is not understood;
 * bytes that are none are refused with a sentence.
 */

#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include "recipe/recipe.h"
#include "trial/document.h"

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

static void
check_line (const TrRecipeLine *line)
{
  g_assert_nonnull (line->text);
  g_assert_cmpuint (strlen (line->amount), <=, TR_MAX_AMOUNT_BYTES);
  if (line->is_in_dough)
    g_assert_true (line->ingredient != NULL || line->why != NULL);
  if (line->ingredient != NULL)
    g_assert_nonnull (tr_builtin_find (line->ingredient));
}

/* Every choice can be taken, and what is left is still a trial. */
static void
check_choices (TrRecipe *recipe)
{
  for (guint i = 0; i < recipe->lines->len; i++)
    for (guint k = 0; k < tr_recipe_get_line (recipe, i)->flags->len; k++)
      {
        const TrRecipeFlag *flag = tr_recipe_get_line (recipe, i)->flags->pdata[k];

        if (flag->choices->len > 0)
          tr_recipe_choose (recipe, i, k, flag->choices->len - 1);
      }
}

static void
check_trial (const TrRecipe *recipe)
{
  g_autoptr (TrTrial) trial = tr_recipe_make_trial (recipe);
  g_autoptr (GError) error = NULL;

  tr_trial_validate (trial, &error);
  g_assert_no_error (error);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data,
                        size_t         size)
{
  g_autofree char *bytes = g_memdup2 (data, size);
  g_autofree char *account = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (TrRecipe) recipe = NULL;

  g_log_set_always_fatal ((GLogLevelFlags) (G_LOG_FATAL_MASK | G_LOG_LEVEL_CRITICAL));
  recipe = tr_recipe_read (bytes != NULL ? bytes : "", size, NULL, &error);
  if (recipe == NULL)
    {
      g_assert_nonnull (error);
      g_assert_true (g_utf8_validate (error->message, -1, NULL));
      return 0;
    }
  for (guint i = 0; i < recipe->lines->len; i++)
    check_line (tr_recipe_get_line (recipe, i));
  account = tr_recipe_describe (recipe);
  g_assert_true (g_utf8_validate (account, -1, NULL));
  check_trial (recipe);
  check_choices (recipe);
  check_trial (recipe);
  return 0;
}
