/* mix.h: what a mix that was measured says about the friction
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rule of water.h run backwards: n times the temperature the dough came
 * out at, less what went in. n is 4 with a preferment's temperature, else 3.
 */

#pragma once

#include "written.h"

G_BEGIN_DECLS

/* NaN: no mix that has all it takes. `n`: how many temperatures met. */
double       tr_mix_get_friction  (const TrMix   *mix,
                                   double        *n);
/* The last mix; NULL: none. */
const TrMix *tr_dough_get_last_mix (const TrDough *dough);
/* Begins a mix with what the method and the bench say now, so that it stays
 * what it was when they change. Nothing measured is made up: how warm the
 * liquid was and how the dough came out are left open. */
TrMix       *tr_dough_begin_mix   (TrDough        *dough,
                                   const TrBench  *bench,
                                   const TrPantry *pantry);

G_END_DECLS
