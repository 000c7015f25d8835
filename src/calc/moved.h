/* moved.h: what moving a line to another stage does to the weights
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An amount in grams goes with its line, and the total formula stays. A
 * percentage of the dough or of the total is of something else afterwards.
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

/* `after` has the lines that `before` was computed from, with `from` at the
 * end now. TRUE: a line of the mix weighs something else, as written. */
gboolean tr_moved_line_changes_weights (const TrDoughFigures *before,
                                        const TrDough        *after,
                                        guint                 from);
/* Writes in grams what would weigh something else, on a dough that is owned. */
void     tr_moved_line_keep_weights    (const TrDoughFigures *before,
                                        TrDough              *after,
                                        guint                 from);

G_END_DECLS
