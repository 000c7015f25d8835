/* sample.h: a dough and its masses for tests of lamination and cut
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Nothing here weighs or reads: the masses are given, so that these tests
 * hang on no ingredient table. Numbers are invented.
 */

#pragma once

#include "calc/figures.h"

static inline TrDough *
sample_dough (TrStyle style)
{
  TrDough *dough = tr_dough_new ("d1");

  dough->lock_in = tr_lock_in_new ();
  dough->lock_in->style = style;
  dough->cut = tr_cut_new ();

  return dough;
}

static inline void
sample_add_fold (TrDough *dough,
                 int      fold,
                 double   thickness_mm)
{
  g_ptr_array_add (dough->turns, tr_turn_new (fold, thickness_mm));
}

static inline TrFormula
sample_formula (double dough_g,
                double roll_in_g)
{
  return (TrFormula) {
    .dough_g = dough_g, .roll_in_g = roll_in_g, .total_g = dough_g + roll_in_g,
    .written_dough_g = dough_g, .written_roll_in_g = roll_in_g, .written_total_g = dough_g + roll_in_g,
  };
}

/* A bench on which everything fits. */
static inline TrBench *
endless_bench (void)
{
  TrBench *bench = tr_bench_new ();

  bench->worktop_mm[0] = bench->worktop_mm[1] = 1e9;
  bench->roll_width_max_mm = NAN;

  return bench;
}

static inline void
assert_close (double a,
              double b,
              double relative)
{
  g_assert_cmpfloat_with_epsilon (a, b, relative * fmax (1, fmax (fabs (a), fabs (b))));
}

static inline double
size_volume (const TrSize *size)
{
  return size->mm[0] * size->mm[1] * size->mm[2];
}
