/* planned.h: what is written for a step, a rest or a roll-out, beside what happened
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "words.h"

G_BEGIN_DECLS

/* "2 h 20 to 2 h 50 at 26 °C, 78 %"; NULL: nothing is written. */
char *tr_words_planned_step (const TrReader *reader, const TrStep *step);
/* "1 h to 4 h, fridge" */
char *tr_words_planned_rest (const TrReader *reader, const TrRest *rest);

G_END_DECLS
