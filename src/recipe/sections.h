/* sections.h: which line of a text is what
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "recipe.h"
#include "words.h"

G_BEGIN_DECLS

/* Sorts the lines of a text into the recipe's lines and notes, its title, its
 * yield. `is_list`: it is known that these are the ingredients. */
void tr_sections_read (TrRecipe *recipe, const char *text, gboolean is_list);
/* "two dozen", "Makes 12 to 14 buns", "12". */
void tr_sections_read_yield (TrRecipe *recipe, const char *text);
void tr_recipe_note (TrRecipe *recipe, guint number, const char *text);

/* "16-18 croissants", and nothing more. */
gboolean tr_yield_is_bare (const TrTokens *tokens, guint at, guint end);

G_END_DECLS
