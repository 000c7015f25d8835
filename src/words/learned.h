/* learned.h: what the log tells, with the numbers it comes from
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "../calc/learned.h"
#include "words.h"

G_BEGIN_DECLS

/* "2 weighed cuts, 134 g of 121 ml together: the dough without its fat has 1.12 g/ml. 1.15 g/ml is in use." */
char *tr_words_learned     (const TrReader *reader, const TrLearned *learned);
/* For a button: "Use 1.12 g/ml"; NULL: it is in use, or nothing can be learned. */
char *tr_words_learned_use (const TrReader *reader, const TrLearned *learned);
/* A mix in a line: "2027-04-04: out at 24.5 °C, friction 20.5 °C over 3 temperatures" */
char *tr_words_mix         (const TrReader *reader, const TrMix *mix);

G_END_DECLS
