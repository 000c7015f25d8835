/* prediction.h: which dough should win, said before anybody tastes
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * By a figure (`by` is its key, more of it is better) or by hand. The first
 * mark of a tasting locks it with its date; a prediction that comes after that
 * would be none.
 */

#pragma once

#include "comparison.h"

G_BEGIN_DECLS

#define TR_PREDICTION_BY_HAND "hand"

typedef enum {
  TR_PREDICTION_OPEN,
  TR_PREDICTION_LOCKED,          /* `locked_at` says when */
  TR_PREDICTION_TOO_LATE,        /* nothing is predicted, and somebody has tasted */
} TrPredictionState;

TrPredictionState tr_prediction_get_state    (const TrTrial      *trial);
/* Not by a figure, not even by one that is not known here. */
gboolean          tr_prediction_is_by_hand   (const TrPrediction *prediction);
/* That of a draft; made when there is none: by hand, with no order. */
TrPrediction     *tr_trial_need_prediction   (TrTrial            *draft);
/* All doughs, best first: those that have a place, then the others in document
 * order. `n_placed` tells how many have one. (element-type guint) (transfer full) */
GArray           *tr_prediction_list         (const TrTrial      *trial,
                                              guint              *n_placed);
/* The doughs as that figure orders them. (element-type guint) (transfer full) */
GArray           *tr_prediction_list_by      (const TrFigures    *figures,
                                              const TrComparable *comparable);
/* What is predicted by a figure is no longer what that figure says. */
gboolean          tr_prediction_has_drifted  (const TrFigures    *figures);

/* Of a draft that is computed in `figures`. */
void              tr_prediction_set_order    (TrTrial            *draft,
                                              const GArray       *doughs);
void              tr_prediction_set_by       (TrTrial            *draft,
                                              const TrFigures    *figures,
                                              const TrComparable *comparable);    /* NULL: by hand, the order stays */
/* By hand from then on. */
void              tr_prediction_move         (TrTrial            *draft,
                                              guint               from,
                                              guint               to);

G_END_DECLS
