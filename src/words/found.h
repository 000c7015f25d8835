/* found.h: how a list of folds that was found is said
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "../calc/search.h"
#include "words.h"

G_BEGIN_DECLS

/* "3 · 4 · 3" */
char *tr_words_folds           (const guint8 *folds, guint n);
/* "Letter lock-in, 3 · 4 · 3" */
char *tr_words_sequence        (const TrSequence *sequence);
/* "24 fat layers, 45 µm" */
char *tr_words_sequence_layers (const TrReader *reader, const TrSequence *sequence);
/* "longest 672 mm, stretched 3 times"; that it is too much. */
char *tr_words_sequence_bench  (const TrReader *reader, const TrSequence *sequence);
/* "20 min by hand, 2 h 20 with 2 rests" */
char *tr_words_sequence_time   (const TrReader *reader, const TrSequence *sequence);
/* "worktop length; roll width"; NULL: it fits. */
char *tr_words_sequence_breaks (const TrSequence *sequence);
/* "letter fold (3), 2 × book fold (4); also as 4 · 3 · 4": the folds by name, and their other orders. */
char *tr_words_sequence_folds  (const TrSequence *sequence);
/* How many were found and fit; that other blocks are needed. `own_blocks`: as it is written. */
char *tr_words_sequences_found (const TrReader *reader, const GPtrArray *sequences, int own_blocks);

G_END_DECLS
