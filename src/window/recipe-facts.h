/* recipe-facts.h: what a recipe says of itself, to be changed
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Its name, how many pieces, the kind of dough; which recipe of a page that
 * has several; remarks about the reading.
 *
 * Signals
 *   index-chosen (guint index): another recipe of the page is wanted.
 */

#pragma once

#include <gtk/gtk.h>

#include "../recipe/recipe.h"
#include "../words/words.h"

G_BEGIN_DECLS

#define TR_TYPE_RECIPE_FACTS (tr_recipe_facts_get_type ())
G_DECLARE_FINAL_TYPE (TrRecipeFacts, tr_recipe_facts, TR, RECIPE_FACTS, GtkWidget)

GtkWidget *tr_recipe_facts_new        (void);
void       tr_recipe_facts_set_reader (TrRecipeFacts  *self,
                                       const TrReader *reader);
/* The recipe at `index` of its page; it is the caller's, who sets another or NULL
 * before it goes. `keeps`: what the reader has changed of the one shown until then
 * is changed of this one. */
void       tr_recipe_facts_set_recipe (TrRecipeFacts  *self,
                                       TrRecipe       *recipe,
                                       guint           index,
                                       gboolean        keeps);

G_END_DECLS
