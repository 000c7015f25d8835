/* test-piece.c: what a piece weighs and contains, and what the scale can show
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "weighed.h"

/* 100 g of butter in 5 pieces with nothing lost is 20 g. */
static void
test_piece_without_a_cut (void)
{
  Fixture f = weigh ((const char *[]) {
    "d flour-bread 300 g", "d water 200 g", "d butter-unsalted 20 g", "d salt 5 g", "r butter-unsalted 80 g", "f egg-whole 1 egg",
    NULL });
  TrPiece piece;

  f.dough->handling_loss_percent = 0;
  f.dough->bake_loss_percent = 12;
  f.dough->pieces_written = 5;
  tr_piece_compute (f.dough, &f.formula, NULL, &piece);
  assert_near (piece.count, 5, 1e-12);
  assert_near (piece.raw_mass_g, 605.0 / 5, 1e-9);
  assert_near (piece.baked_mass_g, 605.0 / 5 * 0.88, 1e-9);
  assert_near (piece.added_fat_g, 20, 1e-9);
  assert_near (piece.content.fat_g, (300 * 0.0166 + 100 * 0.8111 + 50 * 0.0951) / 5, 1e-9);
  assert_near (piece.content.salt_g, (5 + 2.5e-5 * (300 * 2 + 200 * 4 + 100 * 11 + 50 * 142)) / 5, 1e-9);
  assert_near (piece.content.sugars_g, (300 * 0.0031 + 100 * 0.0006 + 50 * 0.0037) / 5, 1e-9);
  assert_near (piece.per_100g_raw.fat_g, 100 * (300 * 0.0166 + 100 * 0.8111) / 605, 1e-9);
  assert_near (piece.per_100g_raw.salt_g, 100 * (5 + 2.5e-5 * (300 * 2 + 200 * 4 + 100 * 11)) / 605, 1e-9);
  /* kcal: bread flour 348.20, butter 733.63, egg 9·9.51 + 4·12.56 + 4·0.72 = 138.71 */
  assert_near (piece.per_100g_raw.energy_kcal, (300 * 348.2 + 100 * 733.63) / 605, 0.05);
  assert_near (piece.content.energy_kcal, (300 * 3.482 + 100 * 7.3363 + 50 * 1.3871) / 5, 0.05);
  assert_near (piece.cost, NAN, 0);

  f.dough->handling_loss_percent = 10;
  tr_piece_compute (f.dough, &f.formula, NULL, &piece);
  assert_near (piece.raw_mass_g, 605.0 / 5 * 0.9, 1e-9);
  assert_near (piece.added_fat_g, 18, 1e-9);
  done (&f);
}

static void
test_piece_without_a_count (void)
{
  Fixture f = weigh ((const char *[]) { "d flour-bread 300 g", NULL });
  TrPiece piece;

  f.dough->pieces_written = 0;
  tr_piece_compute (f.dough, &f.formula, NULL, &piece);
  assert_near (piece.count, NAN, 0);
  assert_near (piece.raw_mass_g, NAN, 0);
  assert_near (piece.added_fat_g, NAN, 0);
  assert_near (piece.content.fat_g, NAN, 0);
  assert_near (piece.per_100g_raw.fat_g, 1.66, 1e-9);

  f.dough->batch_by = TR_BATCH_PIECES;
  f.dough->batch_value = 6;
  tr_piece_compute (f.dough, &f.formula, NULL, &piece);
  assert_near (piece.count, 6, 1e-12);
  assert_near (piece.baked_mass_g, NAN, 0);                  /* no bake loss is written */
  done (&f);
}

/* Everything bought, what is lost and the finish included; tap water is free. */
static void
test_cost (void)
{
  Fixture f = weigh ((const char *[]) { "d flour 1000 g", "d water 500 g", "r butter 250 g", "f egg-whole 0 g", NULL });
  TrOwnIngredient *flour = tr_own_ingredient_new ("flour", "flour-bread");
  TrOwnIngredient *butter = tr_own_ingredient_new ("butter", "butter-unsalted");
  TrPiece piece;

  flour->price_per_kg = 1.2;
  butter->price_per_kg = 12;
  g_ptr_array_add (f.pantry->own, flour);
  g_ptr_array_add (f.pantry->own, butter);
  f.dough->pieces_written = 20;
  f.dough->handling_loss_percent = 5;
  recompute (&f);
  tr_piece_compute (f.dough, &f.formula, NULL, &piece);
  assert_near (piece.cost, (1.2 + 3) / 20, 1e-9);

  tr_set_text (&tr_dough_get_line (f.dough, 3)->amount, "1 egg");
  recompute (&f);
  tr_piece_compute (f.dough, &f.formula, NULL, &piece);
  assert_near (piece.cost, NAN, 0);
  done (&f);
}

/* Allergens */

static void
test_allergens (void)
{
  Fixture f = weigh ((const char *[]) {
    "d flour-bread 100 g", "d flour-rye-light 100 g", "d milk-whole 50 g", "r butter-unsalted 50 g",
    "r margarine-pastry 50 g", "f egg-whole 1 egg", "f almonds 10 g", NULL });
  g_auto (GStrv) allergens = tr_formula_dup_allergens (&f.formula);
  g_autofree char *joined = g_strjoinv (" ", allergens);

  g_assert_cmpstr (joined, ==, "egg gluten-rye gluten-wheat milk nuts-almond unknown");
  done (&f);
}

static void
test_unrecognised_line_may_hold_anything (void)
{
  Fixture f = weigh ((const char *[]) { "d water 100 g", "d - 2 ladles", NULL });
  g_auto (GStrv) allergens = tr_formula_dup_allergens (&f.formula);

  g_assert_cmpstr (allergens[0], ==, "unknown");
  g_assert_null (allergens[1]);
  done (&f);
}

/* On the scale */

static void
test_rounding_keeps_the_total (void)
{
  Fixture f = weigh ((const char *[]) {
    "d flour-bread 100.4 g", "d water 50.4 g", "d sugar 10.4 g", "d salt 2.04 g", "d yeast-fresh 3.04 g", "d malt-flour 0.44 g",
    "r butter-unsalted 40 g", "f egg-whole 12.6 g", "d - ?", NULL });
  g_autoptr (TrBench) bench = tr_bench_new ();
  static const double expected[] = { 101, 50, 10, 2.0, 3.0, 0.5, 40, 13, NAN };
  double rounded[9];

  tr_formula_round_for_scale (&f.formula, bench, rounded);
  for (guint i = 0; i < 9; i++)
    assert_near (rounded[i], expected[i], 1e-9);
  done (&f);
}

static void
test_random_rounding_keeps_the_total (void)
{
  static const char *const ingredients[] = { "flour-bread", "water", "salt", "yeast-dry", "malt-flour", "butter-unsalted" };
  g_autoptr (TrBench) bench = tr_bench_new ();

  for (guint run = 0; run < 500; run++)
    {
      g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
      double sums[2] = { 0 }, rounded_sums[2] = { 0 }, rounded[12];

      for (guint i = 0; i < 12; i++)
        g_ptr_array_add (lines, g_strdup_printf ("d %s %d.%02d g", ingredients[g_test_rand_int_range (0, 6)],
                                                 g_test_rand_int_range (0, 60), g_test_rand_int_range (0, 100)));
      g_ptr_array_add (lines, NULL);

      Fixture f = weigh ((const char *const *) lines->pdata);
      bench->scale_step_g = (double[]) { 1, 5, 0.5 }[g_test_rand_int_range (0, 3)];
      bench->fine_scale_step_g = (double[]) { 0.1, 0.01, 0.5 }[g_test_rand_int_range (0, 3)];
      tr_formula_apply_scale (&f.formula, g_test_rand_double_range (0.1, 10));
      tr_formula_round_for_scale (&f.formula, bench, rounded);
      for (guint i = 0; i < 12; i++)
        {
          int fine = tr_line_is_fine (tr_formula_get_line (&f.formula, i)) ? 1 : 0;
          double step = fine == 1 ? bench->fine_scale_step_g : bench->scale_step_g;

          sums[fine] += grams (&f, i);
          rounded_sums[fine] += rounded[i];
          g_assert_cmpfloat (fabs (rounded[i] - grams (&f, i)), <=, step);
          assert_near (rounded[i] / step, round (rounded[i] / step), 1e-6);
        }
      g_assert_cmpfloat (fabs (rounded_sums[0] - sums[0]), <=, bench->scale_step_g / 2 + 1e-6);
      g_assert_cmpfloat (fabs (rounded_sums[1] - sums[1]), <=, bench->fine_scale_step_g / 2 + 1e-6);
      done (&f);
    }
}

static void
test_fine_scale_is_for_little_of_what_matters (void)
{
  Fixture f = weigh ((const char *[]) {
    "d salt 19.9 g", "d salt 20 g", "d yeast-instant 5 g", "d malt-flour 5 g", "d syrup-malt 5 g", "d sugar 5 g", "d salt ?", NULL });
  static const gboolean expected[] = { TRUE, FALSE, TRUE, TRUE, TRUE, FALSE, FALSE };

  for (guint i = 0; i < G_N_ELEMENTS (expected); i++)
    g_assert_cmpint (tr_line_is_fine (tr_formula_get_line (&f.formula, i)), ==, expected[i]);
  done (&f);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/piece/piece-without-a-cut", test_piece_without_a_cut);
  g_test_add_func ("/piece/piece-without-a-count", test_piece_without_a_count);
  g_test_add_func ("/piece/cost", test_cost);
  g_test_add_func ("/piece/allergens", test_allergens);
  g_test_add_func ("/piece/unrecognised-line-may-hold-anything", test_unrecognised_line_may_hold_anything);
  g_test_add_func ("/piece/rounding-keeps-the-total", test_rounding_keeps_the_total);
  g_test_add_func ("/piece/random-rounding-keeps-the-total", test_random_rounding_keeps_the_total);
  g_test_add_func ("/piece/fine-scale-is-for-little-of-what-matters", test_fine_scale_is_for_little_of_what_matters);

  return g_test_run ();
}
