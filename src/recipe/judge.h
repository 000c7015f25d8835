/* judge.h: what only the whole recipe can tell of a line
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "recipe.h"

G_BEGIN_DECLS

/* The kind of dough; which butter is rolled in; percents of what. */
void tr_recipe_judge (TrRecipe *recipe);

G_END_DECLS
