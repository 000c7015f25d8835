/* test-formula.c: weights and baker's percentages
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "weighed.h"

#define MAX_LINES 16

/* Every key on a formula with a bit of everything, worked by hand. */
static void
test_every_key (void)
{
  Fixture f = weigh ((const char *[]) {
    "p flour-bread 100 g", "p water 100 g", "p yeast-fresh 1 g",
    "d flour-bread 400 g", "d flour-rye-light 50 g", "d starter-wheat 100 g", "d water 50 g", "d milk-whole 100 g",
    "d egg-whole 1 egg", "d sugar 60 g", "d honey 10 g", "d butter-salted 40 g", "d salt 9 g", "d yeast-instant 4 g",
    "r butter-unsalted 290 g", "r flour-bread 10 g", NULL });
  const TrFormula *formula = &f.formula;
  double flour = 100 + 400 + 50 + 50 + 10;
  double dough = 100 + 100 + 1 + 400 + 50 + 100 + 50 + 100 + 50 + 60 + 10 + 40 + 9 + 4;
  double all_water = 100 + 0.69 + 50 + 50 + 88.13 + 38.075 + 60 * 0.0002 + 1.71 + 40 * 0.1587 + 9 * 0.002 + 4 * 0.0508;
  double salt = 9 + 2.5e-5 * (100 * 2 + 100 * 4 + 1 * 30 + 400 * 2 + 50 * 2 + 100 * 3 + 50 * 4 + 100 * 43 + 50 * 142
                              + 60 * 1 + 10 * 4 + 40 * 643 + 4 * 51 + 290 * 11 + 10 * 2);

  g_assert_cmpuint (formula->problems->len, ==, 0);
  assert_near (formula->flour_g, flour, 1e-9);
  assert_near (formula->dough_g, dough, 1e-9);
  assert_near (formula->roll_in_g, 300, 1e-9);
  assert_near (formula->total_g, dough + 300, 1e-9);
  assert_near (formula->added_water_percent, 100 * (100 + 50 + 50) / flour, 1e-9);
  assert_near (formula->all_water_percent, 100 * all_water / flour, 1e-9);
  assert_near (formula->prefermented_flour_percent, 100 * (100 + 50) / flour, 1e-9);
  assert_near (formula->dough_fat_percent, 100 * 40 / flour, 1e-9);
  assert_near (formula->roll_in_percent_of_flour, 100 * 300 / flour, 1e-9);
  assert_near (formula->roll_in_percent_of_dough, 100 * 300 / dough, 1e-9);
  assert_near (formula->roll_in_percent_of_total, 100 * 300 / (dough + 300), 1e-9);
  assert_near (formula->roll_in_fat_percent_of_flour, 100 * 290 / flour, 1e-9);
  assert_near (formula->salt_percent, 100 * salt / flour, 1e-9);
  assert_near (formula->salted_fat_salt_percent, 100 * 2.5e-5 * (40 * 643 + 290 * 11) / flour, 1e-9);
  assert_near (formula->sugar_percent, 100 * (60 * 0.998 + 10 * 0.8212) / flour, 1e-9);
  assert_near (formula->yeast_fresh_percent, 100 * (1 + 4 * 3) / flour, 1e-9);
  assert_near (formula->mix_fat_role_g, 330, 1e-9);
  g_assert_true (formula->all_fat_is_butter);
  assert_near (tr_formula_get_line (formula, 9)->percent, 100 * 60 / flour, 1e-9);
  done (&f);
}

/* Worked formulas of trade books and sites. */

/* Croissant of Suas, Advanced Bread and Pastry, p. 331, as worked in a class
 * blog (lesentremetsdeux.blogspot.com 2009/04): percents sum to 171.7; for
 * 15 000 g of dough the factor is 87.36; roll-in 25 % of the dough. The
 * composition of that dough is computed from USDA SR28. */
static void
test_croissant_in_percent (void)
{
  Fixture f = weigh ((const char *[]) {
    "d flour-bread 100 %", "d water 38 %", "d milk-whole 23 %", "d sugar 3 %", "d salt 2 %", "d yeast-instant 1.2 %",
    "d malt-flour 0.5 %", "d butter-unsalted 4 %", "r butter-unsalted 25 % of dough", NULL });

  g_assert_cmpuint (f.formula.problems->len, ==, 0);
  g_assert_true (f.formula.flour_is_assumed);
  assert_near (f.formula.written_dough_g, 1717, 1e-9);
  tr_formula_apply_scale (&f.formula, 15000 / f.formula.written_dough_g);
  assert_near (f.formula.flour_g / 100, 87.36, 0.005);
  assert_near (grams (&f, 1), 3319.7, 0.05);
  assert_near (grams (&f, 2), 2009.3, 0.05);
  assert_near (grams (&f, 3), 262, 0.5);
  assert_near (grams (&f, 4), 174.7, 0.05);
  assert_near (grams (&f, 5), 104.8, 0.05);
  assert_near (grams (&f, 6), 43.7, 0.05);
  assert_near (grams (&f, 7), 349.4, 0.05);
  assert_near (f.formula.roll_in_g, 3750, 1e-6);
  assert_near (f.formula.roll_in_percent_of_flour, 42.93, 0.0051);
  assert_near (f.formula.roll_in_percent_of_total, 20, 1e-9);
  assert_near (f.formula.dough_per_100g[TR_PART_PROTEIN], 7.73, 0.005);
  assert_near (f.formula.dough_per_100g[TR_PART_FAT], 3.35, 0.005);
  assert_near (f.formula.dough_per_100g[TR_PART_FIBRE], 1.61, 0.005);
  assert_near (f.formula.dough_per_100g[TR_PART_SODIUM_MG], 459.9, 0.05);
  done (&f);
}

/* French school notes (focus-cuisine.com/8051894): dough 938 g; roll-in 60 % on
 * flour, 31.98 % on dough. */
static void
test_croissant_in_grams (void)
{
  Fixture f = weigh ((const char *[]) {
    "d flour-bread 250 g", "d flour-plain 250 g", "d salt 10 g", "d sugar 50 g", "d milk-powder-whole 30 g",
    "d water 280 g", "d yeast-fresh 18 g", "d butter-unsalted 50 g", "r butter-unsalted 300 g", NULL });

  assert_near (f.formula.dough_g, 938, 1e-9);
  assert_near (f.formula.roll_in_percent_of_flour, 60, 1e-9);
  assert_near (f.formula.roll_in_percent_of_dough, 31.98, 0.005);
  done (&f);
}

/* Bread with poolish (wildyeastblog.com/bakers-percentage-4): flour 1368, water
 * 68.42 %, yeast 0.68 %, salt 1.97 %, 34.21 % of the flour prefermented. */
static void
test_poolish (void)
{
  Fixture f = weigh ((const char *[]) {
    "p flour-bread 468 g", "p water 468 g", "p yeast-fresh 0.3 g",
    "d flour-bread 900 g", "d water 468 g", "d yeast-fresh 9 g", "d salt 27 g", NULL });

  assert_near (f.formula.flour_g, 1368, 1e-9);
  assert_near (f.formula.added_water_percent, 68.42, 0.005);
  assert_near (f.formula.yeast_fresh_percent, 0.68, 0.005);
  /* Ours counts the sodium of flour, water and yeast besides. */
  assert_near (f.formula.salt_percent - 2.5e-3 * (1368 * 2 + 936 * 4 + 9.3 * 30) / 1368, 1.97, 0.005);
  assert_near (f.formula.prefermented_flour_percent, 34.21, 0.005);
  done (&f);
}

/* Percentages */

typedef struct { TrProblemId id; const char *where; } Expected;

typedef struct {
  const char *name;
  const char *lines[MAX_LINES];
  double flour_g, dough_g, total_g;
  double grams[MAX_LINES];
  Expected problems[MAX_LINES];
} PercentCase;

static const PercentCase percent_cases[] = {
  { "all in percent assumes a kilogram",
    { "d flour-bread 80 %", "d flour-rye-light 20 %", "d water 60 %" },
    1000, 1600, 1600, { 800, 200, 600 } },
  { "percents that add up to 100 in thirds",
    { "d flour-bread 33.3 %", "d flour-plain 33.3 %", "d flour-rye-light 33.4 %" },
    1000, 1000, 1000, { 333, 333, 334 } },
  { "flour in grams and in percent",
    { "d flour-bread 600 g", "d flour-rye-light 40 %", "d water 50 %" },
    1000, 1500, 1500, { 600, 400, 500 } },
  { "flour of a preferment is flour",
    { "p flour-bread 200 g", "p water 200 g", "d flour-bread 80 %" },
    1000, 1200, 1200, { 200, 200, 800 } },
  { "starter in grams brings flour",
    { "d starter-wheat 200 g", "d flour-bread 900 g", "d salt 2 %" },
    1000, 1120, 1120, { 200, 900, 20 } },
  { "starter in percent brings flour",
    { "d starter-wheat 20 %", "d flour-bread 900 g", "d water 50 %" },
    1000, 1600, 1600, { 200, 900, 500 } },
  { "starter and flour in percent",
    { "d starter-wheat 20 %", "d flour-bread 90 %", "d water 50 %" },
    1000, 1600, 1600, { 200, 900, 500 } },
  { "roll-in on flour, dough and total",
    { "d flour-bread 1000 g", "d water 600 g", "r butter-unsalted 10 %", "r butter-unsalted 10 % of dough",
      "r butter-unsalted 7 % of total" },
    1000, 1600, 2000, { 1000, 600, 100, 160, 140 } },
  { "roll-in flour on the dough counts as flour",
    { "d flour-bread 920 g", "d water 50 %", "d sugar 180 g", "r flour-bread 5 % of dough" },
    1000, 1600, 1680, { 920, 500, 180, 80 } },
  { "roll-in flour on the total counts as flour",
    { "d flour-bread 900 g", "d water 600 g", "r butter-unsalted 400 g", "r flour-bread 5 % of total" },
    1000, 1500, 2000, { 900, 600, 400, 100 } },
  { "finish lines are of the flour and not in the mix",
    { "d flour-bread 1000 g", "f egg-whole 5 %", "f flour-bread 20 g" },
    1000, 1000, 1000, { 1000, 50, 20 } },
  { "flour parts that reach 100 beside grams",
    { "d flour-bread 600 g", "d flour-rye-light 100 %", "d water 60 %" },
    600, 600, 600, { 600, NAN, NAN },
    { { TR_PROBLEM_FLOUR_OVER_100, "/lines/1/amount" }, { TR_PROBLEM_NOTHING_TO_ANCHOR, "/lines/2/amount" } } },
  { "flour parts that do not reach 100",
    { "d flour-bread 80 %", "d water 60 %" },
    0, 0, 0, { NAN, NAN },
    { { TR_PROBLEM_NOTHING_TO_ANCHOR, "/lines/0/amount" }, { TR_PROBLEM_NOTHING_TO_ANCHOR, "/lines/1/amount" } } },
  { "flour parts over 100",
    { "d flour-bread 80 %", "d flour-plain 30 %" },
    0, 0, 0, { NAN, NAN },
    { { TR_PROBLEM_NOTHING_TO_ANCHOR, "/lines/0/amount" }, { TR_PROBLEM_NOTHING_TO_ANCHOR, "/lines/1/amount" } } },
  { "no flour to take it of",
    { "d water 100 g", "d salt 2 %" },
    0, 100, 100, { 100, NAN },
    { { TR_PROBLEM_NOTHING_TO_ANCHOR, "/lines/1/amount" } } },
  { "of a dough that is not there",
    { "r butter-unsalted 25 % of dough" },
    0, 0, 0, { NAN },
    { { TR_PROBLEM_NOTHING_TO_ANCHOR, "/lines/0/amount" } } },
  { "of dough needs no flour",
    { "d water 100 g", "r butter-unsalted 25 % of dough" },
    0, 100, 125, { 100, 25 } },
  { "of dough in the dough",
    { "d flour-bread 100 g", "d water 50 % of dough", "p water 5 % of total", "f water 5 % of total" },
    100, 100, 100, { 100, NAN, NAN, NAN },
    { { TR_PROBLEM_PERCENT_NOT_HERE, "/lines/1/amount" }, { TR_PROBLEM_PERCENT_NOT_HERE, "/lines/2/amount" },
      { TR_PROBLEM_PERCENT_NOT_HERE, "/lines/3/amount" } } },
  { "all of the total",
    { "d flour-bread 100 g", "r butter-unsalted 60 % of total", "r butter-unsalted 40 % of total", "r lard 5 % of dough" },
    100, 100, 105, { 100, NAN, NAN, 5 },
    { { TR_PROBLEM_NOT_SOLVABLE, "/lines/1/amount" }, { TR_PROBLEM_NOT_SOLVABLE, "/lines/2/amount" } } },
  { "roll-in flour that outgrows the dough",
    { "d flour-bread 100 g", "d water 60 %", "r flour-bread 200 % of dough", "r butter-unsalted 10 % of total" },
    100, 160, 160 / 0.9, { 100, 60, NAN, 160 / 0.9 / 10 },
    { { TR_PROBLEM_NOT_SOLVABLE, "/lines/2/amount" } } },
  { "what cannot be read is left out",
    { "d flour-bread 100 g", "d - 2 ladles", "d water some", "d nowhere 5 g", "d flour-bread 1 egg", "d water 1,500 g" },
    100, 100, 100, { 100, NAN, NAN, NAN, NAN, NAN },
    { { TR_PROBLEM_NO_INGREDIENT, "/lines/1/ingredient" }, { TR_PROBLEM_NO_NUMBER, "/lines/2/amount" },
      { TR_PROBLEM_NO_INGREDIENT, "/lines/3/ingredient" }, { TR_PROBLEM_NO_HOUSEHOLD_WEIGHT, "/lines/4/amount" },
      { TR_PROBLEM_AMBIGUOUS, "/lines/5/amount" } } },
};

static void
test_percent_case (gconstpointer data)
{
  const PercentCase *expected = data;
  Fixture f = weigh (expected->lines);
  guint n_problems = 0;

  while (n_problems < MAX_LINES && expected->problems[n_problems].where != NULL)
    n_problems++;
  g_assert_cmpuint (f.formula.problems->len, ==, n_problems);
  for (guint i = 0; i < n_problems; i++)
    {
      const TrProblem *problem = g_ptr_array_index (f.formula.problems, i);

      g_assert_cmpint (problem->id, ==, expected->problems[i].id);
      g_assert_cmpstr (problem->where, ==, expected->problems[i].where);
    }

  assert_near (f.formula.flour_g, expected->flour_g, 1e-6);
  assert_near (f.formula.dough_g, expected->dough_g, 1e-6);
  assert_near (f.formula.total_g, expected->total_g, 1e-6);
  for (guint i = 0; i < f.formula.lines->len; i++)
    assert_near (grams (&f, i), expected->grams[i], 1e-6);
  done (&f);
}

/* Whatever the mixture of grams and percents, the solution fits its own
 * equations. */
static void
test_random_percentages_solve_their_equations (void)
{
  static const char *const dough_ingredients[] = { "flour-bread", "starter-wheat", "water", "sugar", "butter-unsalted" };
  static const char *const roll_in_units[] = { "g", "%", "% of dough", "% of total" };
  guint n_solved = 0;

  for (guint run = 0; run < 500; run++)
    {
      g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);

      g_ptr_array_add (lines, g_strdup ("d flour-bread 500 g"));
      for (guint i = 0; i < 5; i++)
        g_ptr_array_add (lines, g_strdup_printf ("d %s %d %s", dough_ingredients[g_test_rand_int_range (0, 5)],
                                                 g_test_rand_int_range (0, 30), g_test_rand_bit () ? "g" : "%"));
      for (guint i = 0; i < 3; i++)
        g_ptr_array_add (lines, g_strdup_printf ("r %s %d %s", g_test_rand_bit () ? "flour-bread" : "butter-unsalted",
                                                 g_test_rand_int_range (0, 20), roll_in_units[g_test_rand_int_range (0, 4)]));
      g_ptr_array_add (lines, NULL);

      Fixture f = weigh ((const char *const *) lines->pdata);
      const TrFormula *formula = &f.formula;
      if (formula->problems->len == 0)
        {
          n_solved++;
          for (guint i = 0; i < formula->lines->len; i++)
            {
              const TrLineFigures *line = tr_formula_get_line (formula, i);
              double number = g_ascii_strtod (line->line->amount, NULL);
              double base = g_str_has_suffix (line->line->amount, "dough") ? formula->dough_g
                            : g_str_has_suffix (line->line->amount, "total") ? formula->total_g
                            : g_str_has_suffix (line->line->amount, "%") ? formula->flour_g : 100;

              assert_near (line->grams, number * base / 100, 1e-9 * formula->total_g);
            }
        }
      done (&f);
    }
  g_assert_cmpuint (n_solved, >, 250);
}

/* Scaling */

static void
test_scaling_keeps_every_ratio (void)
{
  Fixture f = weigh ((const char *[]) {
    "p flour-bread 150 g", "p water 150 g", "d flour-bread 450 g", "d water 3/4 cup", "d milk-whole 12 %",
    "d sugar 11 %", "d salt 2 tsp", "d yeast-dry 1 packet", "d butter-unsalted 1 stick", "r butter-unsalted 30 % of dough", NULL });
  TrFormula *formula = &f.formula;

  for (guint run = 0; run < 1000; run++)
    {
      double scale = pow (10, g_test_rand_double_range (-4, 4));
      double flour = 0;

      tr_formula_apply_scale (formula, scale);
      for (guint i = 0; i < formula->lines->len; i++)
        {
          const TrLineFigures *line = tr_formula_get_line (formula, i);

          assert_near (100 * line->grams / formula->flour_g / line->percent, 1, 1e-9);
          if (line->ingredient.is_flour)
            flour += line->grams;
        }
      assert_near (flour / formula->flour_g, 1, 1e-9);
      assert_near (formula->total_g / formula->written_total_g / scale, 1, 1e-9);
      assert_near (100 * formula->roll_in_g / formula->dough_g / formula->roll_in_percent_of_dough, 1, 1e-9);
      assert_near (100 * formula->roll_in_g / formula->total_g / formula->roll_in_percent_of_total, 1, 1e-9);
      assert_near (formula->mix_fat_role_g / scale / (113 + formula->written_roll_in_g), 1, 1e-9);
    }
  done (&f);
}

/* Writing every amount larger by one factor changes no percentage. */
static void
test_percents_do_not_depend_on_the_batch (void)
{
  for (guint run = 0; run < 200; run++)
    {
      int factor = g_test_rand_int_range (1, 50);
      g_autofree char *flour = g_strdup_printf ("d flour-bread %d g", 500 * factor);
      g_autofree char *milk = g_strdup_printf ("d milk-whole %d g", 280 * factor);
      g_autofree char *salt = g_strdup_printf ("d salt %d g", 10 * factor);
      g_autofree char *butter = g_strdup_printf ("r butter-salted %d g", 250 * factor);
      Fixture f = weigh ((const char *[]) { flour, milk, salt, butter, NULL });

      assert_near (f.formula.all_water_percent / ((280 * 0.8813 + 10 * 0.002) / 5), 1, 1e-9);
      assert_near (f.formula.salt_percent / ((10 + 2.5e-5 * (500 * 2 + 280 * 43 + 250 * 643)) / 5), 1, 1e-9);
      assert_near (f.formula.roll_in_percent_of_dough / (100 * 250.0 / 790), 1, 1e-9);
      done (&f);
    }
}

static void
test_finish_goes_with_the_pieces (void)
{
  static const struct { TrBatchBy by; int written; double count, expected; } cases[] = {
    { TR_BATCH_WRITTEN, 16, 20, 50 },
    { TR_BATCH_PIECES, 16, 24, 75 },
    { TR_BATCH_PIECES, 0, 24, 150 },
    { TR_BATCH_FLOUR_G, 16, 8, 25 },
    { TR_BATCH_TOTAL_G, 0, 8, 150 },
  };
  Fixture f = weigh ((const char *[]) { "d flour-bread 500 g", "f egg-whole 1 egg", "f - 1 splash", NULL });

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      f.dough->batch_by = cases[i].by;
      f.dough->pieces_written = cases[i].written;
      tr_formula_apply_scale (&f.formula, 3);
      tr_formula_scale_finish (&f.formula, f.dough, cases[i].count);
      assert_near (grams (&f, 0), 1500, 1e-9);
      assert_near (grams (&f, 1), cases[i].expected, 1e-9);
      assert_near (grams (&f, 2), NAN, 0);
    }
  done (&f);
}

/* Not known */

static void
test_unknown_only_where_there_is_some (void)
{
  Fixture f = weigh ((const char *[]) { "d flour-bread 500 g", "d mystery 0 g", "d water 250 g", "r mystery 100 g", NULL });
  TrOwnIngredient *own = tr_own_ingredient_new ("mystery", "butter-unsalted");

  own->unknown[TR_PART_SODIUM_MG] = TRUE;
  own->unknown[TR_PART_WATER] = TRUE;
  g_ptr_array_add (f.pantry->own, own);
  recompute (&f);

  g_assert_cmpuint (f.formula.problems->len, ==, 0);
  assert_near (f.formula.salt_percent, NAN, 0);
  assert_near (f.formula.all_water_percent, 50, 1e-9);       /* 0 g of it in the dough */
  assert_near (f.formula.mix_per_100g[TR_PART_WATER], NAN, 0);
  g_assert_false (isnan (f.formula.dough_per_100g[TR_PART_WATER]));
  assert_near (f.formula.mix_per_100g[TR_PART_FAT], (500 * 1.66 + 100 * 81.11) / 850, 1e-9);
  assert_near (f.formula.roll_in_percent_of_flour, 20, 1e-9);

  tr_set_text (&tr_dough_get_line (f.dough, 3)->amount, "0 g");
  recompute (&f);
  g_assert_false (isnan (f.formula.salt_percent));
  done (&f);
}

static void
test_no_flour_no_percent (void)
{
  Fixture f = weigh ((const char *[]) { "d water 100 g", NULL });

  assert_near (f.formula.flour_g, 0, 1e-12);
  assert_near (f.formula.added_water_percent, NAN, 0);
  assert_near (f.formula.salt_percent, NAN, 0);
  assert_near (f.formula.roll_in_percent_of_dough, 0, 1e-12);
  done (&f);

  f = weigh ((const char *[]) { NULL });
  assert_near (f.formula.total_g, 0, 1e-12);
  assert_near (f.formula.roll_in_percent_of_dough, NAN, 0);
  assert_near (f.formula.mix_per_100g[TR_PART_FAT], NAN, 0);
  g_assert_false (f.formula.all_fat_is_butter);
  done (&f);
}

static void
test_starter_hydration_of_the_line (void)
{
  Fixture f = weigh ((const char *[]) { "d starter-wheat 150 g", "d flour-bread 400 g", NULL });

  tr_dough_get_line (f.dough, 0)->hydration_percent = 50;
  recompute (&f);
  assert_near (f.formula.flour_g, 500, 1e-9);
  assert_near (f.formula.added_water_percent, 10, 1e-9);
  assert_near (f.formula.all_water_percent, 10, 1e-9);
  assert_near (f.formula.prefermented_flour_percent, 20, 1e-9);
  done (&f);
}

static void
test_like_water_is_added_water (void)
{
  Fixture f = weigh ((const char *[]) { "d flour-bread 500 g", "d spring 200 g", NULL });

  g_ptr_array_add (f.pantry->own, tr_own_ingredient_new ("spring", "water"));
  recompute (&f);
  assert_near (f.formula.added_water_percent, 40, 1e-9);
  done (&f);
}

static void
test_all_fat_is_butter (void)
{
  Fixture f = weigh ((const char *[]) { "d flour-bread 500 g", "d lard 10 g", "r butter-salted 100 g", NULL });

  g_assert_false (f.formula.all_fat_is_butter);
  done (&f);
  f = weigh ((const char *[]) { "d flour-bread 500 g", "r butter-salted 100 g", "f lard 10 g", NULL });
  g_assert_true (f.formula.all_fat_is_butter);
  done (&f);
}

/* A hair from where the flour equation has no solution: whatever comes out, it
 * comes to an end and every line is weighed or has a problem. */
static void
test_a_hair_from_no_solution (void)
{
  static const char *const rye[] = { "99.9999998", "99.9999999", "99.99999990000001", "99.99999999", "100" };

  for (guint i = 0; i < G_N_ELEMENTS (rye); i++)
    for (int with_roll_in = 0; with_roll_in < 2; with_roll_in++)
      {
        g_autofree char *line = g_strdup_printf ("d flour-rye-light %s %%", rye[i]);
        Fixture f = weigh ((const char *[]) {
          "d flour-bread 1 g", line, with_roll_in ? "r flour-bread 0.0000001 % of total" : NULL, NULL });
        guint n_not_weighed = 0;

        for (guint k = 0; k < f.formula.lines->len; k++)
          n_not_weighed += isnan (grams (&f, k)) ? 1 : 0;
        g_assert_cmpuint (n_not_weighed, ==, f.formula.problems->len);
        done (&f);
      }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/formula/every-key", test_every_key);
  g_test_add_func ("/formula/croissant-in-percent", test_croissant_in_percent);
  g_test_add_func ("/formula/croissant-in-grams", test_croissant_in_grams);
  g_test_add_func ("/formula/poolish", test_poolish);
  for (guint i = 0; i < G_N_ELEMENTS (percent_cases); i++)
    {
      g_autofree char *name = g_strdelimit (g_strdup (percent_cases[i].name), " ", '-');
      g_autofree char *path = g_strconcat ("/formula/percent/", name, NULL);
      g_test_add_data_func (path, &percent_cases[i], test_percent_case);
    }
  g_test_add_func ("/formula/a-hair-from-no-solution", test_a_hair_from_no_solution);
  g_test_add_func ("/formula/random-percentages-solve-their-equations", test_random_percentages_solve_their_equations);
  g_test_add_func ("/formula/scaling-keeps-every-ratio", test_scaling_keeps_every_ratio);
  g_test_add_func ("/formula/percents-do-not-depend-on-the-batch", test_percents_do_not_depend_on_the_batch);
  g_test_add_func ("/formula/finish-goes-with-the-pieces", test_finish_goes_with_the_pieces);
  g_test_add_func ("/formula/unknown-only-where-there-is-some", test_unknown_only_where_there_is_some);
  g_test_add_func ("/formula/no-flour-no-percent", test_no_flour_no_percent);
  g_test_add_func ("/formula/starter-hydration-of-the-line", test_starter_hydration_of_the_line);
  g_test_add_func ("/formula/like-water-is-added-water", test_like_water_is_added_water);
  g_test_add_func ("/formula/all-fat-is-butter", test_all_fat_is_butter);

  return g_test_run ();
}
