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
#define TR_GREATEST_STRETCH 4.0         /* in one direction in one go; common practice */

/* Volume share of the fat and density of the mix, from the ratio of the
 * masses only. Both NaN where a mass is not known or there is none. */
void     tr_mix_volume              (const TrDough   *dough,
                                     const TrFormula *formula,
                                     double          *fat_volume_fraction,
                                     double          *density_g_ml);

/* Fat layers after the last fold, from the written folds alone: what a sheet
 * needs to know before there is a lamination. NaN: no lock-in, or more than
 * can be counted exactly. */
double   tr_dough_count_fat_layers  (const TrDough   *dough);

/* Needs the formula scaled; the dough has a lock_in. `sheet` NULL: no cut, thicknesses
 * at the end are NaN and there is no to_sheet. Whatever follows from a size
 * that cannot be (tr_lock_in_find_fault) is NaN. */
void     tr_lamination_compute      (const TrDough   *dough,
                                     const TrBench   *bench,
                                     const TrFormula *formula,
                                     const TrSheet   *sheet,
                                     TrLamination    *lamination);
void     tr_lamination_clear        (TrLamination *lamination);

/* Where the last roll-out starts: the block after the last quarter turn, or
 * as it was locked in when there are no turns. */
TrSize   tr_lamination_last_block   (const TrLamination *lamination);

/* Which size of a lock-in, or of a trim, cannot be. */
typedef enum {
  TR_FAULT_NONE,
  TR_FAULT_NO_FAT,
  TR_FAULT_NO_DOUGH,
  TR_FAULT_FAT_THICKNESS,
  TR_FAULT_FAT_WIDTH,
  TR_FAULT_DOUGH_LENGTH,         /* inverse: rim and width leave no length */
  TR_FAULT_TRIM,                 /* a trim takes the whole folded block */
} TrLockInFault;

/* `value` is the size in mm, or grams where there is no fat or dough; `greatest_mm` the
 * greatest rim or trim that still leaves something, NaN: none; `turn` the
 * index of the turn of a trim. Any of the three may be NULL. */
TrLockInFault tr_lock_in_find_fault (const TrDough      *dough,
                                     const TrFormula    *formula,
                                     const TrLamination *lamination,
                                     double             *value,
                                     double             *greatest_mm,
                                     guint              *turn);

/* A drawn stack, bottom to top, made by really folding: band thickness as a
 * share of the whole, and whether it is fat. Touching bands of one kind are
 * merged. */
typedef struct { double share; gboolean is_fat; } TrStackBand;

/* The stack after the first `n_turns` turns (G_MAXUINT: all). NULL when it would exceed
 * TR_MAX_DRAWN_BANDS, or the share of the fat is not known.
 * (element-type TrStackBand) */
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
int      tr_breaks_count            (TrBreaks breaks);

G_END_DECLS
