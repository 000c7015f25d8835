/* balance-private.h: what the files of the balance share
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For the files of this room that rewrite amounts: balance*.c, moved.c,
 * preferment.c and swap.c.
 */

#pragma once

#include "balance.h"

#include "formula.h"
#include "look.h"

G_BEGIN_DECLS

/* A line that moves, in the unit it will be written in. */
typedef struct {
  guint index;
  TrUnit unit, rest_unit;        /* rest_unit: of "1 lb 2 oz"; else TR_N_UNITS */
  double number;                 /* as written, in `unit` */
  double grams;
  double share;                  /* what a gram adds to the ratio's upper part */
} TrMover;

typedef struct {
  TrMover movers[TR_MAX_LINES];
  guint n;
} TrMovers;

/* Of every gram that a mover gets, `share` comes from the other; both are
 * places in the lists of the exchange. */
typedef struct { guint mover, other; double share; } TrTrade;
typedef struct { TrTrade trades[2 * TR_MAX_LINES]; guint n; TrMovers movers, others; } TrExchange;

/* Lines */
double   tr_ratio_get_whole         (const TrDoughFigures *figures,
                                     TrRatio               ratio);
gboolean tr_balance_is_wet          (const TrLineFigures  *line);
gboolean tr_balance_is_flour        (const TrLineFigures  *line);
gboolean tr_balance_is_of_ratio     (const TrLineFigures  *line,
                                     TrRatio               ratio);
double   tr_balance_share_of_line   (const TrLineFigures  *line,
                                     TrRatio               ratio);
void     tr_balance_init_mover      (TrMover              *mover,
                                     const TrDoughFigures *figures,
                                     guint                 index,
                                     double                share);
void     tr_balance_add_mover       (TrMovers             *movers,
                                     const TrDoughFigures *figures,
                                     guint                 index,
                                     double                share);
void     tr_balance_find_wet_lines  (const TrDoughFigures *figures,
                                     TrStage               stage,
                                     gboolean              only_water,
                                     TrMovers             *movers);
void     tr_balance_find_movers     (const TrDoughFigures *figures,
                                     TrRatio               ratio,
                                     TrMovers             *movers);
double   tr_balance_sum_of_movers   (const TrMovers       *movers);
/* The heaviest line of stage dough that passes; of this ingredient, or NULL:
 * any; not `but`. -1: none. */
int      tr_balance_find_heaviest   (const TrDoughFigures *figures,
                                     TrLineTest            test,
                                     const char           *ingredient,
                                     guint                 but);

/* Exchange. FALSE: something has nothing to be exchanged with. */
gboolean tr_balance_find_exchange   (const TrDoughFigures *figures,
                                     TrExchange           *exchange);
double   tr_balance_greatest_prefermented (const TrDoughFigures *figures,
                                           const TrExchange     *exchange,
                                           double                fixed);
void     tr_balance_set_exchanged   (TrDough              *dough,
                                     const TrDoughFigures *figures,
                                     double                value);

/* Amounts. A unit of 0 or NaN grams: there is no such base yet. */
double   tr_balance_grams_of_unit   (TrUnit                unit,
                                     const TrFormula      *formula);
double   tr_balance_gain_of_unit    (TrUnit                unit,
                                     const TrFormula      *formula);
double   tr_balance_round_nice      (double                number,
                                     double                allowed);
char    *tr_balance_dup_amount      (const TrMover        *mover,
                                     double                number);
void     tr_balance_write_mover     (TrDough              *dough,
                                     const TrMover        *mover,
                                     double                number);
void     tr_balance_write_exactly   (TrDough              *dough,
                                     const TrMover        *mover,
                                     double                number);
void     tr_balance_add_line        (TrDough              *dough,
                                     TrStage               stage,
                                     const char           *group,
                                     const char           *ingredient,
                                     double                grams);

/* balance-refusal.c: always FALSE; what a reason has no values for is NaN. */
gboolean tr_balance_refuse          (GError              **error,
                                     TrRefusalId           id,
                                     double                first,
                                     double                second,
                                     double                third);

G_END_DECLS
