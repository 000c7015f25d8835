/* cut-sample.h: a dough with every measure of a cut
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "calc/cut.h"

#include "sample.h"

#define DENSITY 1.1

static inline TrDough *
dough_to_cut (TrShape shape)
{
  TrDough *dough = sample_dough (TR_STYLE_HALF);
  TrCut *cut = dough->cut;

  cut->shape = shape;
  cut->trim_mm = cut->shrink_percent = 0;
  cut->base_mm = 100;
  cut->height_mm = 200;
  cut->width_mm = 80;
  cut->length_mm = 120;
  cut->side_mm = 100;
  cut->diameter_mm = 90;
  cut->gap_mm = 10;
  cut->slice_mm = 30;
  cut->roll_length_mm = 300;

  return dough;
}

static inline gboolean
compute (const TrDough *dough,
         const TrBench *bench,
         double         total_g,
         TrSheet       *sheet)
{
  return tr_sheet_compute (dough, bench, DENSITY, total_g, 27, sheet);
}

static inline void
randomise_cut (TrDough *dough)
{
  TrCut *cut = dough->cut;

  cut->base_mm = g_test_rand_double_range (50, 130);
  cut->height_mm = g_test_rand_double_range (100, 300);
  cut->width_mm = g_test_rand_double_range (40, 150);
  cut->length_mm = g_test_rand_double_range (40, 200);
  cut->side_mm = g_test_rand_double_range (40, 150);
  cut->diameter_mm = g_test_rand_double_range (30, 150);
  cut->gap_mm = g_test_rand_bit () ? g_test_rand_double_range (0, 20) : 0;
  cut->slice_mm = g_test_rand_double_range (20, 60);
  cut->roll_length_mm = g_test_rand_double_range (100, 400);
  cut->trim_mm = g_test_rand_double_range (0, 15);
  cut->shrink_percent = g_test_rand_double_range (0, 12);
  cut->thickness_mm = g_test_rand_double_range (2.6, 9);
  cut->rows = g_test_rand_int_range (0, 5);
  dough->batch_value = g_test_rand_int_range (1, 80);
  dough->handling_loss_percent = g_test_rand_double_range (0, 6);
  dough->lock_in->blocks = g_test_rand_int_range (1, 4);
}
