/* recipe-doubt.h: what is not sure about a line of a recipe
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A sentence with a sign, and below it one button for what was taken and one
 * for everything else that it could be: one click changes it, another changes
 * it back.
 *
 * Signals
 *   changed (): the reader chose; the recipe has it already.
 */

#pragma once

#include <gtk/gtk.h>

#include "../recipe/recipe.h"

G_BEGIN_DECLS

#define TR_TYPE_RECIPE_DOUBT (tr_recipe_doubt_get_type ())
G_DECLARE_FINAL_TYPE (TrRecipeDoubt, tr_recipe_doubt, TR, RECIPE_DOUBT, GtkWidget)

/* A line as it was read, to go back to. */
typedef struct {
  char *ingredient, *amount, *group;
  TrStage stage;
  gboolean is_in_dough;
} TrRecipeStart;

void       tr_recipe_start_init    (TrRecipeStart      *start,
                                    const TrRecipeLine *line);
void       tr_recipe_start_clear   (TrRecipeStart      *start);

/* "Butter, unsalted"; NULL: "unknown". (transfer full) */
char      *tr_recipe_dup_ingredient_name (const char *id);

/* The flag at `flag` of a line. Recipe and start are the caller's: it calls
 * tr_recipe_doubt_detach before they go. */
GtkWidget *tr_recipe_doubt_new     (TrRecipe            *recipe,
                                    guint                line,
                                    guint                flag,
                                    const TrRecipeStart *start);
/* The line has changed by other means. */
void       tr_recipe_doubt_refresh (TrRecipeDoubt       *self);
void       tr_recipe_doubt_detach  (TrRecipeDoubt       *self);

G_END_DECLS
