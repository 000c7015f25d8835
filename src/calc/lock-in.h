/* lock-in.h: how the fat is enclosed; for lamination.c only
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "lamination.h"

G_BEGIN_DECLS

/* Written, or that of butter. */
double tr_dough_get_fat_density (const TrDough *dough);
/* Sizes of one block; all NaN where one cannot be. */
void   tr_lock_in_compute       (const TrDough   *dough,
                                 const TrFormula *formula,
                                 TrLockInFigures *lock_in);

G_END_DECLS
