/* recipe-carry.h: what was decided about a recipe, kept when its text is edited
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "recipe-doubt.h"

G_BEGIN_DECLS

/* The lines of a recipe as they were read: an array of TrRecipeStart. */
GArray   *tr_recipe_starts_new (const TrRecipe *recipe);

/* Where a line of `to` is a line of `from` word for word, what the reader has
 * changed there is changed here. FALSE and nothing, when most lines are others:
 * that is another recipe. */
gboolean  tr_recipe_carry      (const TrRecipe *from,
                                const GArray   *starts,
                                TrRecipe       *to);

G_END_DECLS
