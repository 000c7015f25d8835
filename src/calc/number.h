/* number.h: a number as a baker writes it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For the readers of amounts only.
 */

#pragma once

#include "cursor.h"

G_BEGIN_DECLS

gboolean tr_number_starts (TrCursor   cursor);
/* Finite and not negative. */
gboolean tr_number_read   (TrCursor  *cursor,
                           double    *value,
                           TrProblem *problem);

G_END_DECLS
