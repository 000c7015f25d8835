/* water.h: how warm or cold the water must be
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

/* Hotter water harms yeast and cooks egg: common practice. */
#define TR_WARMEST_WATER_C 45.0

/* The rule of the trade: n times the wanted dough temperature less what the
 * other things bring and less the friction of the mixer. `bench` has the room
 * and, for liquids without a temperature of their own, the fridge.
 * FALSE: nothing is written in the dough, and `water` is not touched. */
gboolean tr_water_compute (const TrDough   *dough,
                           const TrBench   *bench,
                           const TrFormula *formula,
                           TrWater         *water);
/* A weighed line of the dough that is poured rather than strewn or cut in: a
 * liquid, dairy or egg of more than half water. */
gboolean tr_line_is_poured (const TrLineFigures *line);
gboolean tr_line_is_water (const TrLineFigures *line);

G_END_DECLS
