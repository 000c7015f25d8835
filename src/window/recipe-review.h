/* recipe-review.h: a recipe looked through before it enters a trial
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A window: the recipe's text (typed, pasted, dropped, or a file), below it
 * line by line what was understood, the rest of what the recipe says, and the
 * ways on. It changes nothing outside itself.
 *
 * Signals
 *   add (): the reader wants the dough in the trial.
 *   make-trial (): the reader wants a trial of it.
 */

#pragma once

#include <gtk/gtk.h>

#include "../recipe/recipe.h"
#include "../words/words.h"

G_BEGIN_DECLS

#define TR_TYPE_RECIPE_REVIEW (tr_recipe_review_get_type ())
G_DECLARE_FINAL_TYPE (TrRecipeReview, tr_recipe_review, TR, RECIPE_REVIEW, GtkWindow)

/* `parent` may be NULL. */
GtkWidget      *tr_recipe_review_new        (GtkWindow      *parent,
                                             const TrReader *reader);
/* Reads at once; what was there before is gone. */
void            tr_recipe_review_read_text  (TrRecipeReview *self,
                                             const char     *text);
void            tr_recipe_review_read_file  (TrRecipeReview *self,
                                             GFile          *file);
/* What is on the clipboard; says so when that is no text. */
void            tr_recipe_review_paste      (TrRecipeReview *self);
/* Nothing has come into it yet. */
gboolean        tr_recipe_review_is_empty   (TrRecipeReview *self);
gboolean        tr_recipe_review_is_reading (TrRecipeReview *self);
/* NULL: none was understood. */
const TrRecipe *tr_recipe_review_get_recipe (TrRecipeReview *self);
/* What it says about the reading; NULL: nothing. */
const char     *tr_recipe_review_get_status (TrRecipeReview *self);
/* Says what could not be done with it. */
void            tr_recipe_review_show_error (TrRecipeReview *self,
                                             const char     *sentence);

G_END_DECLS
