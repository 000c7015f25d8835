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
/* Per 100 g. A liquid that has no more of it is a powder or a paste. */
#define TR_HALF_WATER 50.0

/* The rule of the trade: n times the wanted dough temperature less what the
 * other things bring and less the friction of the mixer. `bench` has the room
 * and, for liquids without a temperature of their own, the fridge.
 * FALSE: nothing is written in the dough, and `water` is not touched. */
gboolean tr_water_compute (const TrDough   *dough,
                           const TrBench   *bench,
                           const TrFormula *formula,
                           TrWater         *water);
/* Something ripened before goes in: a preferment line or a starter. */
gboolean tr_formula_has_ripened (const TrFormula *formula);
/* How warm it is: as warm as the room unless the method says so. */
double   tr_method_get_ripened_c (const TrMethod *method,
                                  const TrBench  *bench);
/* A weighed line of the dough that is poured rather than strewn or cut in: a
 * liquid, dairy or egg of more than TR_HALF_WATER. */
gboolean tr_line_is_poured (const TrLineFigures *line);
gboolean tr_line_is_water (const TrLineFigures *line);

G_END_DECLS
