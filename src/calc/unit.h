/* unit.h: units, their names and how they are read
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For the readers of amounts only; what a unit is worth is in amount.h.
 */

#pragma once

#include "cursor.h"

G_BEGIN_DECLS

gboolean tr_unit_read (TrCursor  *cursor,
                       TrUnit    *unit,
                       TrProblem *problem);

G_END_DECLS
