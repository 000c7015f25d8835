/* serving.h: who tastes what when, under which code
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Orders are Williams designs (E. J. Williams, Australian Journal of Scientific
 * Research A 2, 1949, 149–168): in every place each sample comes equally often,
 * and after every other equally often: one Latin square for an even number of
 * samples, two for an odd one. Codes are three random digits (ISO 13299:2016,
 * ISO 4120:2021 5.5).
 */

#pragma once

#include "written.h"

G_BEGIN_DECLS

/* How many orders the design for so many samples has: n or 2 n. */
guint    tr_williams_count (guint      n);
/* Samples 0 to n − 1 in the order `row` of the design. */
void     tr_williams_get   (guint      n,
                            guint      row,
                            guint     *order);

/* Indices of the doughs that are tasted: those with a code; where none has one,
 * all. (element-type guint) */
GArray  *tr_serving_list_samples (const TrTrial *trial);

/* No digit twice, no zero at the front or the end, no three in sequence:
 * nothing a taster would take for a mark, a round number or a joke. Common
 * practice, from memory. */
gboolean tr_code_is_plain  (int        code);

/* A new code for each of these doughs, none twice, in place of all there were. */
void     tr_serving_deal_codes  (TrTasting         *draft,
                                 const char *const *doughs,
                                 GRand             *rand);
/* One code more, as plain and as random; nothing if it has one. */
void     tr_serving_add_code    (TrTasting         *draft,
                                 const char        *dough,
                                 GRand             *rand);
/* A new order of these doughs for every taster, in place of all there were.
 * Of as many tasters in a row as there are samples, each begins with another. */
void     tr_serving_deal_orders (TrTasting         *draft,
                                 const char *const *doughs,
                                 GRand             *rand);

G_END_DECLS
