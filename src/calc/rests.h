/* rests.h: how long a slab really needs, and how long it can then be rolled
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Neither the latent heat of the fat nor the work of rolling is counted: a rest
 * takes at least what is said, and a window is at most that.
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

/* Where nothing is written: a block comes from the bench at this temperature ... */
#define TR_REST_START_C 14.0
/* ... and is to get within this of the air, but not under the second. Common practice. */
#define TR_REST_TARGET_OVER_AIR_C 4.0
#define TR_REST_LEAST_TARGET_C 8.0
/* Dough begins to freeze about there, and the model ends. Common practice. */
#define TR_FREEZING_C (-2.0)
/* A written target is missed from here on. */
#define TR_REST_SHORT_BY_C 2.0

/* Needs formula, lamination and sheet. A rest that is written makes one
 * (element-type TrRestFigures). (transfer full) */
GArray              *tr_rests_compute (const TrDoughFigures *figures);
/* The rest after that turn (0: before lock-in); NULL: none is written. */
const TrRestFigures *tr_rests_find    (const TrDoughFigures *figures,
                                       int                   turn);
/* As it is written. */
const TrRest        *tr_dough_get_rest (const TrDough       *dough,
                                       int                   turn);
/* What counts where nothing is written. */
double               tr_rest_get_usual_start_c  (const TrDough *dough,
                                                 int            turn);
double               tr_rest_get_usual_target_c (const TrRest  *rest,
                                                 const TrBench *bench);

G_END_DECLS
