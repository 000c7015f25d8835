/* bake.h: a dough, its bench and what lamination makes of them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "calc/lamination.h"

#include "sample.h"

typedef struct {
  TrDough *dough;
  TrBench *bench;
  TrFormula formula;
  TrSheet sheet;
  TrLamination lamination;
} Bake;

static inline void
bake_compute (Bake *bake)
{
  tr_lamination_compute (bake->dough, bake->bench, &bake->formula,
                         bake->sheet.sheets > 0 ? &bake->sheet : NULL, &bake->lamination);
}

static inline void
bake_clear (Bake *bake)
{
  tr_lamination_clear (&bake->lamination);
  tr_dough_unref (bake->dough);
  tr_bench_unref (bake->bench);
}

static inline Bake
bake_new (TrStyle style,
          double  dough_g,
          double  roll_in_g)
{
  return (Bake) {
    .dough = sample_dough (style),
    .bench = tr_bench_new (),
    .formula = sample_formula (dough_g, roll_in_g),
  };
}

static inline const TrTurnFigures *
bake_step (const Bake *bake,
           guint       index)
{
  return &g_array_index (bake->lamination.steps, TrTurnFigures, index);
}
