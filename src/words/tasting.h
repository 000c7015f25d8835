/* tasting.h: what a blind tasting shows, in sentences
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Never a number that is not there: what is missing is said instead. All
 * transfer full.
 */

#pragma once

#include "../calc/tasting.h"
#include "words.h"

G_BEGIN_DECLS

/* "Allergens of all samples together: …" */
char *tr_words_tasting_allergens (const TrFigures *figures);
/* To be asked of each taster before anything is tasted. */
char *tr_words_tasting_question  (void);

/* "Nobody scored B (418) in full, …"; nothing missing: NULL. */
char *tr_words_tasting_gap       (const TrReader *reader, const TrTastingFigures *tasting);
/* "Left out, as they did not score every sample in full: …"; nobody: NULL. */
char *tr_words_left_out          (const TrTastingFigures *tasting);
/* Whether the tasters agree, with F, p and what rank sums must lie apart. NULL: not known. */
char *tr_words_friedman          (const TrReader *reader, const TrTastingFigures *tasting);
/* How the prediction came out, or why that cannot be said. */
char *tr_words_predicted         (const TrReader *reader, const TrTastingFigures *tasting);
/* "With four samples one taster's perfect prediction has p = 0.083." */
char *tr_words_perfect_p         (const TrReader *reader, guint n_samples);
/* "22 figures were tried on 4 doughs: about 1.8 would line up perfectly by chance." NULL: none was. */
char *tr_words_tried             (const TrReader *reader, const TrTastingFigures *tasting);
/* "Salt, on flour: more of it, higher score (ρ = 0.8, p = 0.33)" */
char *tr_words_follower          (const TrReader *reader, const TrFollower *follower);
/* "0.025", "0.0004", "less than 0.0001" */
char *tr_words_p                 (const TrReader *reader, double p);

G_END_DECLS
