/* rest.h: what a rest does to the slab, in sentences
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A rest is said as "at least" (minutes rounded up), a window as "at most"
 * (rounded down). NULL: there is nothing to say.
 */

#pragma once

#include "../calc/rests.h"
#include "words.h"

G_BEGIN_DECLS

/* "The core is at 8 °C after at least 3 h 16; after the 1 h written it is at 12 °C." */
char *tr_words_rest_core     (const TrReader *reader, const TrRestFigures *rest);
/* "Out of the freezer after at most 36 min: its surface begins to freeze." */
char *tr_words_rest_freezing (const TrReader *reader, const TrRestFigures *rest);
/* "Then it can be rolled at once, for at most 22 min." */
char *tr_words_rest_window   (const TrReader *reader, const TrDoughFigures *figures, const TrRestFigures *rest);
/* Short, for papers: "at least 3 h 16 to 8 °C", "out by 36 min", "roll within 22 min". */
char *tr_words_rest_in_short (const TrReader *reader, const TrRestFigures *rest);
/* What is not counted. */
const char *tr_words_rest_caveat (void);
/* The same in one sentence. */
const char *tr_words_rest_bound  (void);

G_END_DECLS
