/* lamination.h: fat block, lock-in, turns, layers
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

#define TR_FAT_DENSITY_G_ML 0.940       /* Choi & Okos 1986 on USDA butter, 4 °C */
#define TR_MAX_DRAWN_BANDS 8193

/* Volume share of the fat and density of the mix, from the ratio of the
 * masses only. Both NaN where a mass is not known or there is none. */
void     tr_mix_volume              (const TrDough   *dough,
                                     const TrFormula *formula,
                                     double          *fat_volume_fraction,
                                     double          *density_g_ml);

/* Needs the formula scaled; the dough has a lock_in. `sheet` NULL: no cut, thicknesses
 * at the end are NaN and there is no to_sheet. */
void     tr_lamination_compute      (const TrDough   *dough,
                                     const TrBench   *bench,
                                     const TrFormula *formula,
                                     const TrSheet   *sheet,
                                     TrLamination    *lamination);
void     tr_lamination_clear        (TrLamination *lamination);

/* A drawn stack, bottom to top, made by really folding: band thickness as a
 * share of the whole, and whether it is fat. Touching bands of one kind are
 * merged. */
typedef struct { double share; gboolean is_fat; } TrStackBand;

/* The stack after the first `n_turns` turns (G_MAXUINT: all). NULL when it would exceed
 * TR_MAX_DRAWN_BANDS. (element-type TrStackBand) */
GArray  *tr_stack_new               (const TrDough      *dough,
                                     const TrLamination *lamination,
                                     guint               n_turns);

/* What a rolled-out sheet of that size breaks on this bench. Where there are
 * no rollers either way round is tried. */
TrBreaks tr_bench_check_turn        (const TrBench *bench,
                                     const TrSize  *rolled);
/* The same for the final sheet, always either way round. `rotated` may be NULL. */
TrBreaks tr_bench_check_sheet       (const TrBench *bench,
                                     const TrSize  *rolled,
                                     gboolean      *rotated);

G_END_DECLS
