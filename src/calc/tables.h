/* tables.h: the built-in tables, made from data/ when building
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For ingredient.c only; everybody else goes through its functions.
 */

#pragma once

#include "ingredient.h"

G_BEGIN_DECLS

extern const guint tr_n_builtin_ingredients;
extern const TrIngredient tr_builtin_ingredients[];
extern const TrBand tr_bands[TR_N_RATIOS][TR_N_KINDS];   /* low NaN: none for that kind */

G_END_DECLS
