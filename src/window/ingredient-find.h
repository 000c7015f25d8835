/* ingredient-find.h: which ingredient was meant by what was typed
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * By the names this reader sees and by the English ones; the baker's own
 * ingredients first. A pantry may be NULL: only the built-in ones.
 */

#pragma once

#include "../calc/ingredient.h"

G_BEGIN_DECLS

/* At most twelve ids, best first: those whose words begin with what was
 * typed, accents and case ignored. (transfer full) */
char      **tr_ingredient_find         (const TrPantry *pantry,
                                        const char     *typed);
/* The one whose whole name was typed; NULL: none. */
const char *tr_ingredient_find_exactly (const TrPantry *pantry,
                                        const char     *typed);
gboolean    tr_ingredient_is_own       (const TrPantry *pantry,
                                        const char     *id);
/* Its name, or the id of one that is not known. */
char       *tr_ingredient_dup_name     (const TrPantry *pantry,
                                        const char     *id);

G_END_DECLS
