/* amount.h: what an amount as the baker typed it means
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  TR_UNIT_MG, TR_UNIT_G, TR_UNIT_KG, TR_UNIT_OZ, TR_UNIT_LB,
  TR_UNIT_ML, TR_UNIT_CL, TR_UNIT_DL, TR_UNIT_L,
  TR_UNIT_TSP, TR_UNIT_TBSP, TR_UNIT_FLOZ, TR_UNIT_CUP, TR_UNIT_CUP_METRIC,
  TR_UNIT_EGG, TR_UNIT_WHITE, TR_UNIT_YOLK, TR_UNIT_PIECE, TR_UNIT_STICK,
  TR_UNIT_PACKET, TR_UNIT_CAKE, TR_UNIT_PINCH, TR_UNIT_CUBE,
  TR_UNIT_PERCENT, TR_UNIT_PERCENT_OF_DOUGH, TR_UNIT_PERCENT_OF_TOTAL,
  TR_N_UNITS
} TrUnit;

#define TR_AMOUNT_MAX_PARTS 8

typedef struct { double number; TrUnit unit; } TrAmountPart;

/* Invariant of a parsed amount: 1 to TR_AMOUNT_MAX_PARTS parts, every number
 * finite and ≥ 0; either no part is a percentage, or there is exactly one. */
typedef struct {
  TrAmountPart parts[TR_AMOUNT_MAX_PARTS];
  guint n_parts;
  gboolean is_mean;              /* a range was written and its mean is used */
} TrAmount;

/* Why an amount cannot be read, or why a line cannot be weighed. */
typedef enum {
  TR_PROBLEM_NONE,
  TR_PROBLEM_EMPTY,              /* nothing written */
  TR_PROBLEM_NO_NUMBER,          /* text: what stands there instead */
  TR_PROBLEM_BARE_NUMBER,        /* a number without a unit */
  TR_PROBLEM_UNKNOWN_UNIT,       /* text: the word */
  TR_PROBLEM_AMBIGUOUS,          /* text: "1,500"; value[0], value[1]: both readings */
  TR_PROBLEM_OUT_OF_RANGE,       /* beyond 1e9 g or not finite, or a division by 0 */
  TR_PROBLEM_MIXED_PERCENT,      /* % and a mass, or two % */
  TR_PROBLEM_NOT_UNDERSTOOD,     /* text: the rest that was not understood */
  TR_PROBLEM_NO_INGREDIENT,      /* the line has no ingredient; text: the original line */
  TR_PROBLEM_NO_HOUSEHOLD_WEIGHT,/* text: the unit; the ingredient has no weight for it */
  TR_PROBLEM_PERCENT_NOT_HERE,   /* "% of dough", "% of total" outside roll-in */
  TR_PROBLEM_NOTHING_TO_ANCHOR,  /* % with no flour to take it of */
  TR_PROBLEM_FLOUR_OVER_100,     /* flour parts in % reach 100 beside flour in grams */
  TR_PROBLEM_NO_PIECES_WRITTEN,  /* batch by pieces, no cut, no pieces_written */
  TR_PROBLEM_NOT_SOLVABLE,       /* roll-in % that cannot add up */
} TrProblemId;

typedef struct {
  TrProblemId id;
  char *where;                   /* JSON Pointer inside the dough, "/lines/3/amount" */
  char *text;                    /* see TrProblemId; NULL: none */
  double value[2];
} TrProblem;

void        tr_problem_free   (TrProblem *problem);

/* Reads `text`. On failure returns FALSE and fills `problem` (its where is
 * NULL; clear its text with g_free) if that is not NULL. Grammar: NUMBER UNIT, several may follow ("1 lb
 * 2 oz", "1 cup plus 2 tbsp"). Never depends on the locale. */
gboolean    tr_amount_parse   (const char *text,
                               TrAmount   *amount,
                               TrProblem  *problem);

/* grams or millilitres of one unit; NaN for counts and percentages.
 * Exact: international pound of 1959, US gallon of 231 in³ (NIST Handbook 44,
 * appendix C). */
double      tr_unit_grams     (TrUnit unit);
double      tr_unit_ml        (TrUnit unit);
gboolean    tr_unit_is_percent (TrUnit unit);
const char *tr_unit_id        (TrUnit unit);     /* as in household_g: "cup", "floz" */
int         tr_unit_from_id   (const char *id);  /* -1: none */

G_END_DECLS
