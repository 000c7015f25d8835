/* balance.h: a ratio moved by rewriting the amounts behind it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A handle multiplies the written amounts of its lines; the written flour stays.
 *
 *   hydration     the dough's water; none: its liquids and dairy that are more
 *                 than half water; none: the same of the preferment
 *   fat           the fat lines of the preferment and the dough
 *   roll-in       every line of the roll-in stage but flour
 *   salt          the salt lines of the mix, down to 0
 *   sugar         the sweetener lines of the preferment and the dough
 *   yeast         the leaven lines of the mix that are yeast
 *   prefermented  flour and water of the preferment (none: the starters), each
 *                 exchanged with the heaviest line of the dough of the same
 *                 ingredient, flour also with the heaviest flour: totals stay
 *
 * An amount goes back in its own unit if that is a mass ("1 lb 2 oz" stays of
 * two units) or a percentage of any base, else in grams. It is the roundest
 * number (steps of 1 and 5 of every decade) that misses the wanted ratio by no
 * more than TR_RATIO_TOLERANCE points, salt and yeast TR_RATIO_FINE_TOLERANCE;
 * of several lines the heaviest takes what the others were rounded by. What is
 * exchanged is taken from the other line exactly.
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

#define TR_RATIO_TOLERANCE 0.04
#define TR_RATIO_FINE_TOLERANCE 0.01

typedef enum {
  TR_BALANCE_ERROR_NO_LINE,      /* nothing there that could be moved */
  TR_BALANCE_ERROR_NOT_KNOWN,    /* the figure itself cannot be computed */
  TR_BALANCE_ERROR_REACH,
} TrBalanceError;
#define TR_BALANCE_ERROR (tr_balance_error_quark ())
GQuark   tr_balance_error_quark (void);

/* Why, for those who say it in the reader's language. */
typedef enum {
  TR_REFUSAL_OTHER,              /* only the message says it */
  TR_REFUSAL_OUT_OF_REACH,       /* values: asked for, least, greatest (infinite: none) */
  TR_REFUSAL_NO_LINE,
  TR_REFUSAL_LINES_NOT_WEIGHED,
  TR_REFUSAL_NO_AMOUNT,
  TR_REFUSAL_NO_FLOUR,
  TR_REFUSAL_TOO_MANY_LINES,     /* value: the most there can be */
  TR_REFUSAL_ONLY_FLOUR,         /* value: asked for */
  TR_REFUSAL_OTHER_FLOUR,        /* values: asked for, greatest */
  TR_REFUSAL_LINE_NOT_WEIGHED,   /* value: asked for */
  TR_REFUSAL_NO_AMOUNT_OF_LINE,  /* value: asked for */
  TR_REFUSAL_NO_FLOUR_TO_GIVE,   /* to a preferment */
  TR_REFUSAL_NO_WATER_TO_GIVE,
  TR_REFUSAL_NO_YEAST_TO_GIVE,
  TR_N_REFUSALS
} TrRefusalId;

typedef struct {
  TrRefusalId id;
  double value[3];
} TrRefusal;

/* NULL: not an error of this domain. */
const TrRefusal *tr_balance_error_get_refusal (const GError *error);

typedef struct {
  gboolean can_move;
  gboolean has_line;             /* FALSE: offer to add one */
  TrRange reach;                 /* how far it can go; both NaN where it cannot */
  guint n_lines;
  guint lines[TR_MAX_LINES];     /* indices of what moves, in document order */
} TrRatioMoves;

/* NaN: not known. */
double   tr_ratio_get         (const TrDoughFigures *figures,
                               TrRatio               ratio);
gboolean tr_ratio_get_band    (const TrDoughFigures *figures,
                               TrRatio               ratio,
                               TrBand               *band);
/* What a scale spans, whatever the dough (common practice: what bakers would
 * still try), and what one press of an arrow key is worth. */
TrRange  tr_ratio_get_travel  (TrRatio               ratio);
double   tr_ratio_get_step    (TrRatio               ratio);
/* What tr_ratio_add_line makes of it. */
double   tr_ratio_get_usual   (TrRatio               ratio);
void     tr_ratio_get_moves   (const TrDoughFigures *figures,
                               TrRatio               ratio,
                               TrRatioMoves         *moves);

/* Writes to `dough`, which is owned (a draft's) and has the lines that
 * `figures` were computed from. In a drag give the figures from before it each
 * time: nothing drifts. FALSE with a sentence: nothing was written. */
gboolean tr_ratio_set         (TrDough               *dough,
                               const TrDoughFigures  *figures,
                               TrRatio                ratio,
                               double                 value,
                               GError               **error);
/* Where there is no such line: adds one with a usual amount (common practice).
 * Its index; -1 with a sentence. Not of the prefermented flour, which is taken
 * out of the dough (tr_preferment_add). */
int      tr_ratio_add_line    (TrDough               *dough,
                               const TrDoughFigures  *figures,
                               TrRatio                ratio,
                               GError               **error);

/* Writes the amount that makes the line this percent of the flour. Of a flour
 * line the heaviest other flour line gives way, so that the whole flour stays;
 * a starter brings flour, and the whole grows. */
gboolean tr_line_set_percent  (TrDough               *dough,
                               const TrDoughFigures  *figures,
                               guint                  index,
                               double                 percent,
                               GError               **error);

G_END_DECLS
