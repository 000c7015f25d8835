/* two-ratios.h: a dough with two ratios moved at once
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "../calc/balance.h"
#include "../words/words.h"

G_BEGIN_DECLS

/* A copy of the dough that `start` was computed from, with both ratios as near
 * to `values` as they can be moved. NULL: neither can. */
TrDough *tr_two_ratios_dup_moved (const TrDoughFigures *start,
                                  const TrTrial        *trial,
                                  const TrRatio         ratios[2],
                                  const double          values[2]);
/* What was asked for and cannot be had; NULL: all can. */
char    *tr_two_ratios_dup_held  (const TrDoughFigures *figures,
                                  const TrRatio         ratios[2],
                                  const double          values[2],
                                  const TrReader       *reader);

G_END_DECLS
