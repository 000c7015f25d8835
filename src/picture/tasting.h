/* tasting.h: pictures of a blind tasting
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For a tasting with a result: there is an order. A hit names the dough.
 */

#pragma once

#include "../calc/tasting.h"
#include "picture.h"

G_BEGIN_DECLS

/* The places that were predicted, and the places that came out; where nothing
 * fit to be held against was predicted, only the latter. */
TrPicture *tr_rank_ladder_picture_new (const TrTastingFigures *tasting,
                                       const TrReader         *reader,
                                       const TrLook           *look,
                                       double                  width,
                                       double                  height);
/* Every taster's score of every dough, and the mean, the best first. */
TrPicture *tr_score_dots_picture_new  (const TrTastingFigures *tasting,
                                       const TrReader         *reader,
                                       const TrLook           *look,
                                       double                  width,
                                       double                  height);

G_END_DECLS
