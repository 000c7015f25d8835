/* content.h: the total formula and what is in a dough, as text
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tables of text that the page shows, the card prints and the clipboard takes:
 * all three say the same.
 */

#pragma once

#include "../calc/total.h"
#include "text-table.h"
#include "words.h"

G_BEGIN_DECLS

/* The bench with the steps a scale shows this reader: ounces have rounder
 * ones. (transfer full) */
TrBench     *tr_words_new_scale     (const TrReader *reader, const TrBench *bench);
/* Weights as on the scale, so that every sum is that of what stands there. A
 * preferment comes back in the final dough as one line. */
TrTextTable *tr_words_total_table   (const TrReader *reader, const TrDoughFigures *figures);
/* A piece, 100 g, percent of flour. */
TrTextTable *tr_words_content_table (const TrReader *reader, const TrDoughFigures *figures);
/* Sentences: where salt comes from, the roll-in three ways, what is not known
 * and why. (element-type utf8) (transfer full) */
GPtrArray   *tr_words_content_notes (const TrReader *reader, const TrDoughFigures *figures);
/* "salt 1.9 % · all water 56.2 % · yeast 3.1 % fresh · 812 kJ / 194 kcal a piece"; nothing known: "". */
char        *tr_words_effective     (const TrReader *reader, const TrDoughFigures *figures);
/* "Poolish": what the baker called it, first letter upper case. */
char        *tr_words_preferment    (const char *group);

G_END_DECLS
