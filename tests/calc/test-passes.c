/* test-passes.c: from thick to thin in so many passes
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "calc/passes.h"
#include "weighed.h"

static double
gap (const GArray *gaps,
     guint         index)
{
  return g_array_index (gaps, double, index);
}

/* Falling, none harder than is set, the last exactly what is wanted, no more than are needed and a few. */
static void
test_any (void)
{
  for (guint n = 0; n < 20000; n++)
    {
      double to = g_test_rand_double_range (1, 20), from = to * g_test_rand_double_range (1.001, 12);
      double percent = g_test_rand_double_range (5, 80), before = from;
      g_autoptr (GArray) gaps = tr_passes_new (from, to, percent);
      guint least = (guint) MAX (1, ceil (log (from / to) / -log (1 - percent / 100) - 1e-9));

      g_assert_cmpuint (gaps->len, >=, least);
      g_assert_cmpuint (gaps->len, <=, least + 6);
      for (guint i = 0; i < gaps->len; i++)
        {
          g_assert_cmpfloat (gap (gaps, i), <, before);
          g_assert_cmpfloat (1 - gap (gaps, i) / before, <=, percent / 100 + 1e-8);
          before = gap (gaps, i);
        }
      assert_near (before, to, 1e-12);
    }
}

static void
test_round (void)
{
  /* By hand: 23 to 9 at 30 % needs three passes of 26.9 % each: 16.8, 12.3, 9; up to half millimetres. */
  g_autoptr (GArray) gaps = tr_passes_new (23, 9, 30);

  g_assert_cmpuint (gaps->len, ==, 3);
  assert_near (gap (gaps, 0), 17, 1e-12);
  assert_near (gap (gaps, 1), 12.5, 1e-12);
  assert_near (gap (gaps, 2), 9, 1e-12);

  g_autoptr (GArray) one = tr_passes_new (10, 8, 30);

  g_assert_cmpuint (one->len, ==, 1);
  assert_near (gap (one, 0), 8, 1e-12);
}

static void
test_none (void)
{
  static const struct { double from, to, percent; } cases[] = {
    { 8, 8, 30 }, { 8, 9, 30 }, { NAN, 8, 30 }, { 8, NAN, 30 }, { 8, 0, 30 }, { INFINITY, 8, 30 }, { 8, 4, 0 }, { 8, 4, 100 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GArray) gaps = tr_passes_new (cases[i].from, cases[i].to, cases[i].percent);

      g_assert_cmpuint (gaps->len, ==, 0);
    }
}

static TrTrial *
new_trial (void)
{
  TrTrial *trial = tr_trial_new ();
  TrDough *dough = tr_dough_new ("d1");

  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "flour-bread", "500 g"));
  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "water", "280 g"));
  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_ROLL_IN, "butter-unsalted", "250 g"));
  dough->lock_in = tr_lock_in_new ();
  dough->cut = tr_cut_new ();
  dough->batch_by = TR_BATCH_WRITTEN;
  g_ptr_array_add (dough->turns, tr_turn_new (3, 8));
  g_ptr_array_add (trial->doughs, dough);

  return trial;
}

/* Along only; wider and thinner is two directions, and the volume tells where they meet. */
static void
test_turn (void)
{
  g_autoptr (TrTrial) trial = new_trial ();
  TrTurn *turn = tr_dough_get_turn (tr_trial_get_dough (trial, 0), 0);
  double start_mm, start_width;

  {
    g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
    const TrTurnFigures *step = &g_array_index (tr_figures_get_dough (figures, 0)->lamination.steps, TrTurnFigures, 0);
    g_auto (TrPasses) passes = { 0 };

    start_mm = step->start_mm.mm[2];
    start_width = step->start_mm.mm[1];
    tr_passes_init_turn (&passes, tr_figures_get_dough (figures, 0), 0);
    g_assert_cmpuint (passes.n_legs, ==, 1);
    g_assert_false (passes.legs[0].is_across);
    assert_near (passes.legs[0].from_mm, start_mm, 1e-12);
    assert_near (gap (passes.legs[0].gaps_mm, passes.legs[0].gaps_mm->len - 1), 8, 1e-12);
  }

  turn->width_mm = start_width * 1.25;
  {
    g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
    g_auto (TrPasses) passes = { 0 };

    tr_passes_init_turn (&passes, tr_figures_get_dough (figures, 0), 0);
    g_assert_cmpuint (passes.n_legs, ==, 2);
    g_assert_true (passes.legs[0].is_across);
    assert_near (gap (passes.legs[0].gaps_mm, passes.legs[0].gaps_mm->len - 1), start_mm / 1.25, 1e-9);
    assert_near (gap (passes.legs[1].gaps_mm, passes.legs[1].gaps_mm->len - 1), 8, 1e-12);
  }
}

/* What is thicker than the rollers open comes between them by pin; a pin alone has no such limit. */
static void
test_opening (void)
{
  static const double openings[] = { 5, 8, 12, 20, 200, NAN };

  for (guint i = 0; i < G_N_ELEMENTS (openings); i++)
    {
      g_autoptr (TrTrial) trial = new_trial ();
      g_autoptr (TrFigures) figures = NULL;
      g_auto (TrPasses) passes = { 0 };
      double start;

      trial->bench->roll_width_max_mm = isnan (openings[i]) ? NAN : 450;
      trial->bench->roll_thickness_max_mm = isnan (openings[i]) ? 1 : openings[i];
      figures = tr_figures_compute (trial, NULL);
      start = g_array_index (tr_figures_get_dough (figures, 0)->lamination.steps, TrTurnFigures, 0).start_mm.mm[2];
      tr_passes_init_turn (&passes, tr_figures_get_dough (figures, 0), 0);
      g_assert_cmpuint (passes.n_legs, ==, 1);

      const TrPassLeg *leg = &passes.legs[0];

      if (start > openings[i])
        assert_near (leg->pin_mm, MAX (8, openings[i]), 1e-12);
      else
        g_assert_true (isnan (leg->pin_mm));
      g_assert_cmpint (leg->gaps_mm->len > 0, ==, !(openings[i] <= 8));
      for (guint n = 0; n < leg->gaps_mm->len; n++)
        if (!isnan (openings[i]))
          g_assert_cmpfloat (gap (leg->gaps_mm, n), <=, openings[i] * (1 + 1e-9));
    }
}

/* Either way first, whatever is written: the passes of a second direction go on from those of the first. */
static void
test_go_on (void)
{
  for (guint n = 0; n < 300; n++)
    {
      g_autoptr (TrTrial) trial = new_trial ();
      TrTurn *turn = tr_dough_get_turn (tr_trial_get_dough (trial, 0), 0);
      g_autoptr (TrFigures) figures = NULL;
      g_auto (TrPasses) passes = { 0 };
      double before = NAN;

      turn->thickness_mm = g_test_rand_double_range (2, 20);
      turn->width_mm = g_test_rand_double_range (100, 500);
      trial->bench->pass_reduction_percent = g_test_rand_double_range (5, 80);
      figures = tr_figures_compute (trial, NULL);
      tr_passes_init_turn (&passes, tr_figures_get_dough (figures, 0), 0);
      for (guint i = 0; i < passes.n_legs; i++)
        {
          const GArray *gaps = passes.legs[i].gaps_mm;

          if (i > 0)
            assert_near (passes.legs[i].from_mm, before, 1e-9);
          g_assert_cmpuint (gaps->len, >, 0);
          before = gap (gaps, gaps->len - 1);
        }
      if (passes.n_legs > 0)
        assert_near (before, turn->thickness_mm, 1e-9);
    }
}

static void
test_sheet (void)
{
  g_autoptr (TrTrial) trial = new_trial ();
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *got = tr_figures_get_dough (figures, 0);
  g_auto (TrPasses) passes = { 0 };

  tr_passes_init_sheet (&passes, got);
  g_assert_cmpuint (passes.n_legs, >, 0);
  g_assert_cmpint (passes.legs[0].is_across, ==, g_str_equal (got->lamination.to_sheet.order, "width-first"));
  assert_near (passes.legs[0].from_mm, got->lamination.to_sheet.start_mm.mm[2], 1e-12);

  const GArray *last = passes.legs[passes.n_legs - 1].gaps_mm;

  assert_near (gap (last, last->len - 1), got->sheet.rolled_mm.mm[2], 1e-12);
  tr_passes_clear (&passes);
  tr_passes_init_turn (&passes, got, 7);
  g_assert_cmpuint (passes.n_legs, ==, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/passes/any", test_any);
  g_test_add_func ("/passes/round", test_round);
  g_test_add_func ("/passes/none", test_none);
  g_test_add_func ("/passes/turn", test_turn);
  g_test_add_func ("/passes/opening", test_opening);
  g_test_add_func ("/passes/go-on", test_go_on);
  g_test_add_func ("/passes/sheet", test_sheet);

  return g_test_run ();
}
