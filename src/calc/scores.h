/* scores.h: who tasted what, as it is written
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Finding and changing the tasters, codes, orders and scores of a tasting. What
 * follows from them is tasting.h's. What is found is borrowed; ids that are not
 * there find nothing.
 */

#pragma once

#include "written.h"

G_BEGIN_DECLS

/* That of a draft; made when there is none. */
TrTasting      *tr_trial_need_tasting        (TrTrial         *draft);

TrTaster       *tr_tasting_find_taster       (const TrTasting *tasting,
                                              const char      *id);
/* Added at the end with an id not yet used. */
TrTaster       *tr_tasting_add_taster        (TrTasting       *tasting,
                                              const char      *name);
/* With the order and the scores. */
void            tr_tasting_remove_taster     (TrTasting       *tasting,
                                              const char      *id);
/* 0: no code. */
int             tr_tasting_get_code          (const TrTasting *tasting,
                                              const char      *dough);
void            tr_tasting_remove_code       (TrTasting       *tasting,
                                              const char      *dough);
/* NULL: no order. */
TrOrder        *tr_tasting_find_order        (const TrTasting *tasting,
                                              const char      *taster);

TrScore        *tr_tasting_find_score        (const TrTasting *tasting,
                                              const char      *taster,
                                              const char      *dough);
/* Made when there is none. */
TrScore        *tr_tasting_need_score        (TrTasting       *tasting,
                                              const char      *taster,
                                              const char      *dough);
/* All three marks are given. */
gboolean        tr_score_is_full             (const TrScore   *score);
/* Nothing is written in it, so that it can go. */
gboolean        tr_score_is_empty            (const TrScore   *score);
void            tr_tasting_drop_empty_scores (TrTasting       *tasting);
/* Somebody gave a mark. */
gboolean        tr_tasting_has_marks         (const TrTasting *tasting);

G_END_DECLS
