/* test-figures.c: what follows from a trial, and what is shared
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "calc/cut.h"
#include "calc/figures.h"
#include "calc/lamination.h"
#include "weighed.h"

static const char *const lines[] = {
  "d flour-bread 500 g", "d water 250 g", "d milk-whole 50 g", "d sugar 50 g", "d salt 10 g", "d yeast-instant 6 g",
  "d butter-unsalted 34 g", "r butter-unsalted 300 g", "f egg-whole 1 egg", NULL
};

#define FLOUR_G 500.0
#define DOUGH_G 900.0
#define TOTAL_G 1200.0

static TrDough *
new_dough (gboolean has_cut)
{
  TrDough *dough = test_dough_new (lines);

  dough->pieces_written = 16;
  dough->handling_loss_percent = 4;
  dough->bake_loss_percent = 12;
  dough->lock_in = tr_lock_in_new ();
  g_ptr_array_add (dough->turns, tr_turn_new (3, 8));
  g_ptr_array_add (dough->turns, tr_turn_new (4, 7));
  if (has_cut)
    dough->cut = tr_cut_new ();

  return dough;
}

static TrTrial *
new_trial (guint    n_doughs,
           gboolean has_cut)
{
  TrTrial *trial = tr_trial_new ();

  for (guint i = 0; i < n_doughs; i++)
    {
      TrDough *dough = new_dough (has_cut);

      g_free (dough->id);
      dough->id = g_strdup_printf ("d%u", i + 1);
      g_ptr_array_add (trial->doughs, dough);
    }

  return trial;
}

/* Batch */

static const struct { TrBatchBy by; double value, scale; } batch_cases[] = {
  { TR_BATCH_WRITTEN, 7, 1 },
  { TR_BATCH_FLOUR_G, 1000, 1000 / FLOUR_G },
  { TR_BATCH_DOUGH_G, 450, 450 / DOUGH_G },
  { TR_BATCH_TOTAL_G, 1800, 1800 / TOTAL_G },
  { TR_BATCH_TOTAL_G, 0, 0 },
};

static void
test_batch_by_mass (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (batch_cases); i++)
    for (int has_cut = 0; has_cut < 2; has_cut++)
      {
        g_autoptr (TrTrial) trial = new_trial (1, has_cut);
        TrDough *dough = tr_trial_get_dough (trial, 0);

        dough->batch_by = batch_cases[i].by;
        dough->batch_value = batch_cases[i].value;
        g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
        const TrDoughFigures *f = tr_figures_get_dough (figures, 0);

          assert_near (f->formula.scale, batch_cases[i].scale, 1e-12);
        assert_near (f->formula.total_g, TOTAL_G * batch_cases[i].scale, 1e-9);
        assert_near (f->formula.flour_g, FLOUR_G * batch_cases[i].scale, 1e-9);
        g_assert_true (f->has_lamination);
        g_assert_cmpint (f->has_sheet, ==, has_cut && batch_cases[i].scale > 0);
        if (!has_cut)
          assert_near (f->piece.count, 16, 1e-12);
        else if (f->has_sheet)
          assert_near (f->piece.count, f->sheet.pieces_cut, 1e-12);
      }
}

static void
test_batch_by_pieces_without_a_cut (void)
{
  g_autoptr (TrTrial) trial = new_trial (1, FALSE);
  TrDough *dough = tr_trial_get_dough (trial, 0);

  dough->batch_by = TR_BATCH_PIECES;
  dough->batch_value = 24;
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *f = tr_figures_get_dough (figures, 0);

  assert_near (f->formula.scale, 1.5, 1e-12);
  assert_near (f->piece.count, 24, 1e-12);
  assert_near (f->piece.raw_mass_g, TOTAL_G * 1.5 * 0.96 / 24, 1e-9);
  /* One egg for 16 is one and a half for 24. */
  assert_near (g_array_index (f->formula.lines, TrLineFigures, 8).grams, 75, 1e-9);
  g_assert_cmpuint (f->formula.problems->len, ==, 0);
}

static void
test_batch_by_pieces_without_pieces (void)
{
  g_autoptr (TrTrial) trial = new_trial (1, FALSE);
  TrDough *dough = tr_trial_get_dough (trial, 0);

  dough->batch_by = TR_BATCH_PIECES;
  dough->pieces_written = 0;
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *f = tr_figures_get_dough (figures, 0);
  const TrProblem *problem = g_ptr_array_index (f->formula.problems, 0);

  g_assert_cmpuint (f->formula.problems->len, ==, 1);
  g_assert_cmpint (problem->id, ==, TR_PROBLEM_NO_PIECES_WRITTEN);
  g_assert_cmpstr (problem->where, ==, "/pieces_written");
  assert_near (f->formula.scale, NAN, 0);
  assert_near (f->formula.total_g, NAN, 0);
  assert_near (f->piece.raw_mass_g, NAN, 0);
  assert_near (f->piece.content.fat_g, NAN, 0);
  assert_near (f->formula.roll_in_percent_of_dough, 100.0 / 3, 1e-9);   /* percents stay */
}

static void
test_batch_by_pieces_is_what_the_sheets_weigh (void)
{
  g_autoptr (TrTrial) trial = new_trial (1, TRUE);
  TrDough *dough = tr_trial_get_dough (trial, 0);

  dough->batch_by = TR_BATCH_PIECES;
  dough->batch_value = 30;
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *f = tr_figures_get_dough (figures, 0);
  double fraction, density;

  g_assert_true (f->has_sheet);
  tr_mix_volume (dough, &f->formula, &fraction, &density);
  assert_near (f->formula.total_g * 0.96, f->sheet.sheets * f->sheet.mass_g, 1e-9);
  assert_near (f->sheet.mass_g, f->sheet.length_mm * f->sheet.width_mm * f->sheet.thickness_mm * density / 1000, 1e-9);
  assert_near (f->piece.raw_mass_g, f->sheet.piece_area_mm2 * f->sheet.thickness_mm * density / 1000, 1e-9);
  assert_near (f->piece.added_fat_g, f->piece.raw_mass_g * 334 / TOTAL_G, 1e-9);
  assert_near (f->piece.baked_mass_g, f->piece.raw_mass_g * 0.88, 1e-9);
  g_assert_cmpfloat (f->piece.count, >=, 30);
  /* What the pieces hold and what is scrap is the sheet. */
  assert_near (f->piece.raw_mass_g * f->piece.count,
               f->formula.total_g * 0.96 * (1 - f->sheet.scrap_percent / 100), 1e-6);
}

static void
test_a_cut_without_a_sheet_has_no_pieces (void)
{
  g_autoptr (TrTrial) trial = new_trial (1, TRUE);
  TrDough *dough = tr_trial_get_dough (trial, 0);

  dough->batch_by = TR_BATCH_TOTAL_G;
  dough->batch_value = 1;
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *f = tr_figures_get_dough (figures, 0);

  g_assert_false (f->has_sheet);
  assert_near (f->piece.count, NAN, 0);
  assert_near (f->piece.raw_mass_g, NAN, 0);
  assert_near (f->formula.total_g, 1, 1e-12);
  g_assert_false (isnan (f->piece.per_100g_raw.fat_g));
}

/* Any cut, on a table where everything fits: so many pieces asked give a mass;
 * that mass, given, gives the pieces back. */

static void
randomise_cut (TrCut *cut)
{
  cut->shape = (TrShape) g_test_rand_int_range (0, TR_N_SHAPES);
  cut->base_mm = g_test_rand_double_range (60, 140);
  cut->height_mm = g_test_rand_double_range (120, 320);
  cut->width_mm = g_test_rand_double_range (50, 120);
  cut->length_mm = g_test_rand_double_range (50, 160);
  cut->side_mm = g_test_rand_double_range (70, 130);
  cut->diameter_mm = g_test_rand_double_range (50, 120);
  cut->gap_mm = g_test_rand_double_range (0, 10);
  cut->slice_mm = g_test_rand_double_range (20, 50);
  cut->roll_length_mm = g_test_rand_double_range (200, 400);
  cut->thickness_mm = g_test_rand_double_range (2.5, 8);
  cut->trim_mm = g_test_rand_double_range (0, 15);
  cut->rows = g_test_rand_int_range (1, 5);
}

static void
test_pieces_asked_come_back (void)
{
  for (guint run = 0; run < 300; run++)
    {
      g_autoptr (TrTrial) trial = new_trial (1, TRUE);
      TrBench *bench = tr_trial_own_bench (trial);
      TrDough *dough = tr_trial_get_dough (trial, 0);

      bench->worktop_mm[0] = bench->worktop_mm[1] = 1e6;
      bench->roll_width_max_mm = NAN;
      bench->roll_thickness_min_mm = 0.1;
      randomise_cut (dough->cut);
      dough->batch_by = TR_BATCH_PIECES;
      dough->batch_value = g_test_rand_int_range (1, 80);
      g_autoptr (TrFigures) asked = tr_figures_compute (trial, NULL);
      const TrDoughFigures *a = tr_figures_get_dough (asked, 0);
      g_assert_true (a->has_sheet);

      TrDough *same = tr_trial_own_dough (trial, 0);
      same->batch_by = TR_BATCH_TOTAL_G;
      same->batch_value = a->formula.total_g;
      g_autoptr (TrFigures) given = tr_figures_compute (trial, NULL);
      const TrDoughFigures *g = tr_figures_get_dough (given, 0);

      g_assert_true (g->has_sheet);
      g_assert_cmpfloat (a->sheet.pieces_cut, >=, dough->batch_value);
      assert_near (g->sheet.pieces_cut, a->sheet.pieces_cut, 1e-9);
      assert_near (g->piece.raw_mass_g / a->piece.raw_mass_g, 1, 1e-9);
      assert_near (g->formula.scale / a->formula.scale, 1, 1e-9);
    }
}

/* Every batch of one dough has the same percents and the same content. */
static void
test_scaling_keeps_every_ratio (void)
{
  static const TrBatchBy by[] = { TR_BATCH_FLOUR_G, TR_BATCH_DOUGH_G, TR_BATCH_TOTAL_G };
  g_autoptr (TrTrial) trial = new_trial (1, FALSE);
  g_autoptr (TrFigures) written = tr_figures_compute (trial, NULL);
  const TrDoughFigures *w = tr_figures_get_dough (written, 0);

  for (guint run = 0; run < 300; run++)
    {
      TrDough *dough = tr_trial_own_dough (trial, 0);

      dough->batch_by = by[g_test_rand_int_range (0, G_N_ELEMENTS (by))];
      dough->batch_value = pow (10, g_test_rand_double_range (0, 6));
      g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
      const TrDoughFigures *f = tr_figures_get_dough (figures, 0);

      assert_near (f->formula.dough_g / f->formula.flour_g, DOUGH_G / FLOUR_G, 1e-9);
      assert_near (f->formula.roll_in_g / f->formula.total_g, 300 / TOTAL_G, 1e-9);
      assert_near (f->formula.salt_percent / w->formula.salt_percent, 1, 1e-9);
      assert_near (f->formula.all_water_percent / w->formula.all_water_percent, 1, 1e-9);
      assert_near (f->piece.per_100g_raw.energy_kj / w->piece.per_100g_raw.energy_kj, 1, 1e-9);
      assert_near (f->piece.added_fat_g / f->piece.raw_mass_g, 334 / TOTAL_G, 1e-9);
      assert_near (f->lamination.fat_volume_fraction / w->lamination.fat_volume_fraction, 1, 1e-9);
    }
}

/* Sharing */

static gboolean
is_shared (const TrFigures *now,
           guint            index,
           const TrFigures *before,
           guint            before_index)
{
  return tr_figures_get_dough (now, index) == tr_figures_get_dough (before, before_index);
}

static void
test_an_edit_costs_one_dough (void)
{
  g_autoptr (TrTrial) trial = new_trial (3, TRUE);
  g_autoptr (TrFigures) before = tr_figures_compute (trial, NULL);
  g_autoptr (TrTrial) draft = tr_trial_copy (trial);

  tr_set_text (&tr_dough_get_line (tr_trial_own_dough (draft, 1), 1)->amount, "300 g");
  g_autoptr (TrFigures) after = tr_figures_compute (draft, before);

  g_assert_true (is_shared (after, 0, before, 0));
  g_assert_false (is_shared (after, 1, before, 1));
  g_assert_true (is_shared (after, 2, before, 2));
  assert_near (tr_figures_get_dough (after, 1)->formula.added_water_percent, 60, 1e-9);
  assert_near (tr_figures_get_dough (before, 1)->formula.added_water_percent, 50, 1e-9);
  g_assert_true (after->trial == draft && before->trial == trial);
}

static void
test_moving_a_dough_costs_nothing (void)
{
  g_autoptr (TrTrial) trial = new_trial (3, TRUE);
  g_autoptr (TrFigures) before = tr_figures_compute (trial, NULL);
  g_autoptr (TrTrial) moved = tr_trial_copy (trial);
  g_autoptr (TrTrial) shorter = tr_trial_copy (trial);

  g_ptr_array_insert (moved->doughs, -1, g_ptr_array_steal_index (moved->doughs, 0));
  tr_trial_remove_dough (shorter, 0);
  g_autoptr (TrFigures) after = tr_figures_compute (moved, before);
  g_autoptr (TrFigures) less = tr_figures_compute (shorter, before);

  for (guint i = 0; i < 3; i++)
    g_assert_true (is_shared (after, i, before, (i + 1) % 3));
  for (guint i = 0; i < 2; i++)
    g_assert_true (is_shared (less, i, before, i + 1));
}

static void
test_another_bench_or_pantry_costs_all (void)
{
  g_autoptr (TrTrial) trial = new_trial (2, TRUE);
  g_autoptr (TrFigures) before = tr_figures_compute (trial, NULL);
  g_autoptr (TrTrial) bench = tr_trial_copy (trial);
  g_autoptr (TrTrial) pantry = tr_trial_copy (trial);

  tr_trial_own_bench (bench)->worktop_mm[0] = 400;
  tr_trial_own_pantry (pantry);
  g_autoptr (TrFigures) on_bench = tr_figures_compute (bench, before);
  g_autoptr (TrFigures) from_pantry = tr_figures_compute (pantry, before);

  for (guint i = 0; i < 2; i++)
    {
      g_assert_false (is_shared (on_bench, i, before, i));
      g_assert_false (is_shared (from_pantry, i, before, i));
    }
}

/* Figures outlive the trial and the generation they were made in. */
static void
test_figures_keep_what_they_need (void)
{
  TrTrial *trial = new_trial (2, TRUE);
  TrFigures *before = tr_figures_compute (trial, NULL);
  TrFigures *after = tr_figures_compute (trial, before);
  TrFigures *again = tr_figures_ref (after);

  tr_trial_unref (trial);
  tr_figures_unref (before);
  tr_figures_unref (after);

  const TrDoughFigures *f = tr_figures_get_dough (again, 1);
  g_assert_cmpstr (f->dough->id, ==, "d2");
  g_assert_cmpstr (g_array_index (f->formula.lines, TrLineFigures, 0).line->ingredient, ==, "flour-bread");
  tr_figures_unref (again);
}

static void
test_empty_trial_and_empty_dough (void)
{
  g_autoptr (TrTrial) trial = tr_trial_new ();
  g_autoptr (TrFigures) nothing = tr_figures_compute (trial, NULL);

  g_assert_cmpuint (nothing->doughs->len, ==, 0);
  g_ptr_array_add (trial->doughs, tr_dough_new ("d1"));
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, nothing);
  const TrDoughFigures *f = tr_figures_get_dough (figures, 0);

  assert_near (f->formula.written_total_g, 0, 1e-12);
  assert_near (f->piece.raw_mass_g, NAN, 0);
  g_assert_null (f->allergens[0]);
  g_assert_nonnull (f->findings);
}

static void
test_break_ids (void)
{
  static const char *const ids[] = {
    "worktop-length", "worktop-width", "roll-width", "roll-thickness-min", "roll-thickness-max"
  };

  for (guint i = 0; i < TR_N_BREAKS; i++)
    g_assert_cmpstr (tr_break_id ((TrBreaks) (1u << i)), ==, ids[i]);
}

static void
test_pointer (void)
{
  g_autofree char *line = tr_figures_dup_pointer (2, "/lines/3/amount");
  g_autofree char *dough = tr_figures_dup_pointer (0, "");

  g_assert_cmpstr (line, ==, "/doughs/2/lines/3/amount");
  g_assert_cmpstr (dough, ==, "/doughs/0");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/figures/batch-by-mass", test_batch_by_mass);
  g_test_add_func ("/figures/batch-by-pieces-without-a-cut", test_batch_by_pieces_without_a_cut);
  g_test_add_func ("/figures/batch-by-pieces-without-pieces", test_batch_by_pieces_without_pieces);
  g_test_add_func ("/figures/batch-by-pieces-is-what-the-sheets-weigh", test_batch_by_pieces_is_what_the_sheets_weigh);
  g_test_add_func ("/figures/a-cut-without-a-sheet-has-no-pieces", test_a_cut_without_a_sheet_has_no_pieces);
  g_test_add_func ("/figures/pieces-asked-come-back", test_pieces_asked_come_back);
  g_test_add_func ("/figures/scaling-keeps-every-ratio", test_scaling_keeps_every_ratio);
  g_test_add_func ("/figures/an-edit-costs-one-dough", test_an_edit_costs_one_dough);
  g_test_add_func ("/figures/moving-a-dough-costs-nothing", test_moving_a_dough_costs_nothing);
  g_test_add_func ("/figures/another-bench-or-pantry-costs-all", test_another_bench_or_pantry_costs_all);
  g_test_add_func ("/figures/keep-what-they-need", test_figures_keep_what_they_need);
  g_test_add_func ("/figures/empty-trial-and-empty-dough", test_empty_trial_and_empty_dough);
  g_test_add_func ("/figures/break-ids", test_break_ids);
  g_test_add_func ("/figures/pointer", test_pointer);

  return g_test_run ();
}
