/* standard-method.h: the usual steps of each kind of pastry
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Common practice, a start to be changed: an oven, a flour and a kitchen of one's own
 * decide. Only times, temperatures and places; turns and their rests are the dough's.
 */

#pragma once

#include "written.h"

G_BEGIN_DECLS

/* Adds what is not written yet; what is stays. Steps that the dough has no use for are left out (no
 * preferment, no leaven, no lock-in, nothing to finish). Returns how many values it filled in. */
guint tr_dough_fill_usual_steps (TrDough        *dough,
                                 const TrPantry *pantry);

G_END_DECLS
