/* comparison.h: how the figures of several doughs are said side by side
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Numbers of a row have the same decimals, so that they can be compared at a
 * glance; inches are decimal here, not a ruler's. For other programs there is
 * one table with nothing rounded, which is written as CSV or with tabs.
 */

#pragma once

#include "../calc/comparison.h"
#include "text-table.h"
#include "words.h"

G_BEGIN_DECLS

const char  *tr_words_figure_group          (TrFigureGroup group);                  /* "On flour" */
/* Under its group: "Salt". */
const char  *tr_words_comparable            (const TrComparable *comparable);
/* Alone: "Salt, on flour". (transfer full) */
char        *tr_words_comparable_in_full    (const TrComparable *comparable);
/* "g"; what needs none, or says it with the number: "". `bench` has the currency. */
const char  *tr_words_comparable_unit       (const TrReader *reader, const TrComparable *comparable, const TrBench *bench);
/* In the unit in which it is said; what is said of that number. */
double       tr_words_comparable_in_unit    (const TrReader *reader, const TrComparable *comparable, double value);
/* All transfer full; not known: "–". */
char        *tr_words_comparable_number     (const TrReader *reader, const TrComparable *comparable, double value);   /* "11.2" */
char        *tr_words_comparable_value      (const TrReader *reader, const TrComparable *comparable, const TrBench *bench,
                                             double value);                         /* "11.2 g" */
/* Against a reference: "+1.3", and in percent of it: "+13 %"; the same: "0", "0 %"; no percent of nothing: "–". */
char        *tr_words_comparable_difference (const TrReader *reader, const TrComparable *comparable, double value, double reference);
char        *tr_words_relative_difference   (const TrReader *reader, double value, double reference);

/* Everything that can be compared of these doughs (indices; NULL: all), for
 * other programs: keys, units and numbers as in the report, what is not known
 * empty; a column a dough, headed by its name, with its id where that is
 * needed to tell them apart. */
TrTextTable *tr_words_comparison_table      (const TrFigures *figures, const guint *doughs, guint n_doughs);

G_END_DECLS
