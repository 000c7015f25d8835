/* recipe-line-row.h: a line of a recipe beside what was understood of it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The text as it stands in the recipe; amount, ingredient and stage as they
 * were taken, to be changed; what is not sure about them, or why nothing was
 * understood.
 *
 * Signals
 *   changed (): the recipe's line is another now.
 */

#pragma once

#include <gtk/gtk.h>

#include "../words/words.h"
#include "recipe-doubt.h"

G_BEGIN_DECLS

#define TR_TYPE_RECIPE_LINE_ROW (tr_recipe_line_row_get_type ())
G_DECLARE_FINAL_TYPE (TrRecipeLineRow, tr_recipe_line_row, TR, RECIPE_LINE_ROW, GtkWidget)

/* The recipe and the line as it was read are the caller's: it calls tr_recipe_line_row_detach before they go. */
GtkWidget *tr_recipe_line_row_new    (TrRecipe            *recipe,
                                      guint                line,
                                      const TrRecipeStart *start,
                                      const TrReader      *reader);
void       tr_recipe_line_row_detach (TrRecipeLineRow *self);
/* Nothing about it is left to decide. */
gboolean   tr_recipe_line_is_clear   (const TrRecipeLine *line);

G_END_DECLS
