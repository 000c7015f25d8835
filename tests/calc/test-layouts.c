/* test-layouts.c: how the pieces are laid out, against worked examples and each other
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "calc/cut.h"
#include "calc/lamination.h"

#include "cut-sample.h"

static void
test_fewest_sheets_then_fewest_spare (void)
{
  g_autoptr (TrDough) dough = dough_to_cut (TR_SHAPE_SQUARE);
  g_autoptr (TrBench) bench = tr_bench_new ();
  TrSheet sheet;

  /* 900 × 450 takes 9 × 4 of 100; 14 go as 2 × 7 with none to spare. */
  dough->batch_value = 14;
  g_assert_true (compute (dough, bench, NAN, &sheet));
  g_assert_cmpint (sheet.sheets, ==, 1);
  g_assert_cmpint (sheet.rows, ==, 2);
  g_assert_cmpint (sheet.per_row, ==, 7);

  /* 16: 2 × 8 and 4 × 4 have no spare and no scrap; the shorter longer side. */
  dough->batch_value = 16;
  g_assert_true (compute (dough, bench, NAN, &sheet));
  g_assert_cmpint (sheet.rows, ==, 4);

  /* 37 do not go on one; two of 19: 1 × 19 and 2 × 10 are too long, 3 × 7
   * gives 42, 4 × 5 gives 40. */
  dough->batch_value = 37;
  g_assert_true (compute (dough, bench, NAN, &sheet));
  g_assert_cmpint (sheet.sheets, ==, 2);
  g_assert_cmpfloat_with_epsilon (sheet.pieces_cut, 40, 1e-9);
  g_assert_cmpfloat_with_epsilon (sheet.spare_pieces, 3, 1e-9);
}

static void
test_scrap_within_two_points_yields_to_the_shorter_side (void)
{
  g_autoptr (TrDough) dough = dough_to_cut (TR_SHAPE_TRIANGLE);
  g_autoptr (TrBench) bench = tr_bench_new ();
  TrSheet sheet;

  /* 1 × 12: 650 × 200, scrap 7.7 %; 2 × 6: 350 × 400, scrap 14.3 %: too far apart. */
  dough->batch_value = 12;
  g_assert_true (compute (dough, bench, NAN, &sheet));
  g_assert_cmpint (sheet.rows, ==, 1);
  g_assert_cmpfloat_with_epsilon (sheet.scrap_percent, 100.0 / 13, 1e-9);

  /* with wide trims all round the sums turn */
  dough->cut->trim_mm = 40;
  g_assert_true (compute (dough, bench, NAN, &sheet));
  g_assert_cmpint (sheet.rows, ==, 2);
}

static void
test_nothing_fits_breaks_least (void)
{
  g_autoptr (TrDough) dough = dough_to_cut (TR_SHAPE_SQUARE);
  g_autoptr (TrBench) bench = tr_bench_new ();
  TrSheet sheet;

  dough->cut->side_mm = 700;
  dough->batch_value = 1;
  g_assert_true (compute (dough, bench, NAN, &sheet));
  g_assert_cmpint (sheet.breaks, ==, TR_BREAK_WORKTOP_WIDTH | TR_BREAK_ROLL_WIDTH);
  g_assert_cmpuint (sheet.n_alternatives, ==, 0);
  g_assert_cmpint (tr_cut_sheets_that_fit (dough, bench, DENSITY, NAN), ==, 0);

  /* more than 12 sheets are not chosen, but said */
  dough->cut->side_mm = 100;
  dough->batch_value = 36 * 15;
  g_assert_true (compute (dough, bench, NAN, &sheet));
  g_assert_cmpint (sheet.breaks, !=, 0);
  g_assert_cmpint (tr_cut_sheets_that_fit (dough, bench, DENSITY, NAN), ==, 15);
}

static void
test_alternatives_fit_and_the_chosen_is_first (void)
{
  g_autoptr (TrBench) bench = tr_bench_new ();

  for (int i = 0; i < 120; i++)
    {
      g_autoptr (TrDough) dough = dough_to_cut ((TrShape) (i % TR_N_SHAPES));
      TrSheet sheet;

      randomise_cut (dough);
      g_assert_true (compute (dough, bench, NAN, &sheet));
      g_assert_cmpuint (sheet.n_alternatives, <=, TR_MAX_ALTERNATIVES);
      if (sheet.breaks != 0)
        {
          g_assert_cmpuint (sheet.n_alternatives, ==, 0);
          continue;
        }
      g_assert_cmpint (sheet.alternatives[0].rows, ==, sheet.rows);
      g_assert_cmpint (sheet.alternatives[0].sheets, ==, sheet.sheets);
      for (guint a = 1; a < sheet.n_alternatives; a++)
        {
          g_assert_cmpint (sheet.alternatives[a].sheets, >=, sheet.sheets);
          g_assert_cmpfloat (sheet.alternatives[a].pieces_cut, >=, sheet.wanted);
        }
    }
}

static void
test_a_further_sheet_must_be_worth_it (void)
{
  g_autoptr (TrDough) dough = dough_to_cut (TR_SHAPE_TRIANGLE);
  g_autoptr (TrBench) endless = endless_bench ();
  g_autoptr (TrBench) bench = tr_bench_new ();
  TrSheet sheet;

  dough->batch_by = TR_BATCH_TOTAL_G;
  dough->cut->rows = 2;
  g_assert_true (compute (dough, endless, 6000, &sheet));
  g_assert_cmpint (sheet.sheets, ==, 1);
  /* 6 000 g · 0.98 / (1.1 · 4 mm · 400 mm) = 3 341 mm: on 900 mm four sheets */
  g_assert_true (compute (dough, bench, 6000, &sheet));
  g_assert_cmpint (sheet.sheets, ==, 4);
  g_assert_cmpint (sheet.breaks, ==, 0);
  g_assert_cmpfloat_with_epsilon (sheet.pieces_cut, 4 * 2 * 15, 1e-9);
}

static void
test_sheets_are_a_multiple_of_blocks (void)
{
  g_autoptr (TrBench) bench = tr_bench_new ();
  g_autoptr (TrDough) dough = dough_to_cut (TR_SHAPE_SQUARE);

  for (int blocks = 1; blocks <= 15; blocks++)
    for (int by_mass = 0; by_mass < 2; by_mass++)
      {
        TrSheet sheet;

        dough->lock_in->blocks = blocks;
        dough->batch_by = by_mass ? TR_BATCH_TOTAL_G : TR_BATCH_PIECES;
        dough->batch_value = 24;
        g_assert_true (compute (dough, bench, 3000, &sheet));
        g_assert_cmpint (sheet.sheets % blocks, ==, 0);
      }
}

static void
test_staggered_rounds_give_more (void)
{
  g_autoptr (TrDough) dough = dough_to_cut (TR_SHAPE_ROUND);
  g_autoptr (TrBench) bench = endless_bench ();
  TrSheet sheet;

  dough->batch_by = TR_BATCH_TOTAL_G;
  dough->handling_loss_percent = 0;
  dough->cut->rows = 8;
  g_assert_true (compute (dough, bench, 1080 * 790 * 4 / 1000.0 * DENSITY, &sheet));
  g_assert_true (sheet.hexagonal);
  /* staggered 90 + 7 · 86.6 = 696.2 wide and 1 225.5 long: ⌊1 235.5/100 − ½⌋ = 11;
   * straight 790 wide and 1 080 long: 10 */
  g_assert_cmpint (sheet.per_row, ==, 11);
  g_assert_cmpfloat_with_epsilon (sheet.width_mm, 696.217783, 1e-6);
}

/* 560 × 436.4 staggered, ⌊570/100 − ½⌋ = 5 in a row; straight 499 × 490, ⌊509/100⌋ = 5
 * as well, which is wider than the rollers' 450 either way round. */
static void
test_of_as_many_rounds_those_that_fit (void)
{
  g_autoptr (TrDough) dough = dough_to_cut (TR_SHAPE_ROUND);
  g_autoptr (TrBench) bench = tr_bench_new ();
  TrSheet sheet;

  dough->batch_by = TR_BATCH_TOTAL_G;
  dough->handling_loss_percent = 0;
  dough->cut->rows = 5;
  g_assert_true (compute (dough, bench, 560 * 436.410162 * 4 / 1000.0 * DENSITY, &sheet));
  g_assert_cmpint (sheet.breaks, ==, 0);
  g_assert_true (sheet.hexagonal);
  g_assert_cmpint (sheet.sheets, ==, 1);
  g_assert_cmpint (sheet.per_row, ==, 5);
}

static void
test_not_one_piece (void)
{
  g_autoptr (TrDough) dough = dough_to_cut (TR_SHAPE_TRIANGLE);
  g_autoptr (TrBench) bench = tr_bench_new ();
  double least_g;
  TrSheet sheet;

  dough->batch_by = TR_BATCH_TOTAL_G;
  dough->handling_loss_percent = 0;
  least_g = tr_cut_smallest_g (dough, DENSITY);
  g_assert_cmpfloat_with_epsilon (least_g, 100 * 200 * 4 * DENSITY / 1000, 1e-9);
  g_assert_false (compute (dough, bench, least_g * 0.99, &sheet));
  g_assert_true (compute (dough, bench, least_g, &sheet));
  g_assert_cmpfloat_with_epsilon (sheet.pieces_cut, 1, 1e-9);
  g_assert_false (tr_sheet_compute (dough, bench, NAN, 1000, 27, &sheet));
  g_assert_false (compute (dough, bench, NAN, &sheet));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/layouts/fewest-sheets-then-fewest-spare", test_fewest_sheets_then_fewest_spare);
  g_test_add_func ("/layouts/scrap-within-two-points-yields", test_scrap_within_two_points_yields_to_the_shorter_side);
  g_test_add_func ("/layouts/nothing-fits-breaks-least", test_nothing_fits_breaks_least);
  g_test_add_func ("/layouts/alternatives-fit", test_alternatives_fit_and_the_chosen_is_first);
  g_test_add_func ("/layouts/a-further-sheet-must-be-worth-it", test_a_further_sheet_must_be_worth_it);
  g_test_add_func ("/layouts/sheets-are-a-multiple-of-blocks", test_sheets_are_a_multiple_of_blocks);
  g_test_add_func ("/layouts/staggered-rounds-give-more", test_staggered_rounds_give_more);
  g_test_add_func ("/layouts/of-as-many-rounds-those-that-fit", test_of_as_many_rounds_those_that_fit);
  g_test_add_func ("/layouts/not-one-piece", test_not_one_piece);

  return g_test_run ();
}
