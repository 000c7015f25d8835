/* recipe-lines.h: the lines of a recipe, each beside what was understood of it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Above them how many of them were understood, and how many are to be looked at.
 */

#pragma once

#include <gtk/gtk.h>

#include "../recipe/recipe.h"
#include "../words/words.h"

G_BEGIN_DECLS

#define TR_TYPE_RECIPE_LINES (tr_recipe_lines_get_type ())
G_DECLARE_FINAL_TYPE (TrRecipeLines, tr_recipe_lines, TR, RECIPE_LINES, GtkWidget)

GtkWidget *tr_recipe_lines_new        (void);
void       tr_recipe_lines_set_reader (TrRecipeLines  *self,
                                       const TrReader *reader);
/* The recipe is the caller's, and so is the one shown until then: both are
 * there during this call. `keeps`: what was decided about a line of that one is
 * decided about the same line here, if it is the same recipe; TRUE: it is. NULL:
 * no lines. */
gboolean   tr_recipe_lines_set_recipe (TrRecipeLines  *self,
                                       TrRecipe       *recipe,
                                       gboolean        keeps);

G_END_DECLS
