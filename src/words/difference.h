/* difference.h: what was written otherwise in one dough than in another
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "../calc/differences.h"
#include "words.h"

G_BEGIN_DECLS

/* "Proof, temperature: 31 °C → 28 °C", "Turn 3 added: letter fold (3)". Names are
 * looked up in the pantry; no stop at the end. (transfer full) */
char *tr_words_difference (const TrReader     *reader,
                           const TrPantry     *pantry,
                           const TrDifference *difference);
/* What follows from it, of all figures that can be compared and are said
 * otherwise now: "Fat layers: 27 → 36". (element-type utf8) (transfer full) */
GPtrArray *tr_words_figure_differences (const TrReader       *reader,
                                        const TrDoughFigures *was,
                                        const TrDoughFigures *is);

G_END_DECLS
