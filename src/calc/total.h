/* total.h: the total formula and the final dough, as the trade prints them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One row for every ingredient of the mix, whatever stage it stands in; one
 * column for every preferment, the final dough and the roll-in. A starter's
 * flour and water stand in the rows of its flour and of the water, and
 * nothing is counted twice: the rows' totals add up to the mix, the percents
 * are of the whole flour.
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

#define TR_MAX_TOTAL_COLUMNS 12

typedef struct {
  TrStage stage;
  const char *group;             /* of a preferment; borrowed; NULL: none */
  double grams;                  /* what is weighed into it; without what ripened before */
} TrTotalColumn;

typedef struct {
  const char *id;                /* of the ingredient; borrowed */
  TrIngredient ingredient;
  double grams[TR_MAX_TOTAL_COLUMNS];
  double total_g, percent;
} TrTotalRow;

typedef struct {
  guint n_columns;
  TrTotalColumn columns[TR_MAX_TOTAL_COLUMNS];
  GArray *rows;                  /* TrTotalRow: flours, water, then in the order written */
  double total_g, percent;       /* of everything weighed */
} TrTotal;

/* Borrows from the figures. Preferments for which there is no column any more
 * are added to the last of them. */
void tr_total_compute (const TrDoughFigures *figures,
                       TrTotal              *total);
/* The same of the weights that stand on the scale, rounded together in the
 * bench's steps: every sum is the sum of what is read beside it. The percents
 * stay those of the exact weights. */
void tr_total_compute_for_scale (const TrDoughFigures *figures,
                                 const TrBench        *bench,
                                 TrTotal              *total);
void tr_total_clear   (TrTotal *total);

G_END_DECLS
