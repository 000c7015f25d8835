/* test-preferment.c: a preferment is taken out of the dough, and the totals stay
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "calc/balance.h"
#include "calc/preferment.h"
#include "calc/total.h"
#include "doughs.h"

static const TrTotalRow *
find_row (const TrTotal *total,
          const char    *id)
{
  for (guint i = 0; i < total->rows->len; i++)
    if (g_str_equal (g_array_index (total->rows, TrTotalRow, i).id, id))
      return &g_array_index (total->rows, TrTotalRow, i);

  return NULL;
}

/* A ripe starter's flour is bread flour, whatever flour it was taken from: the flours are one. */
static double
sum_flour (const TrTotal *total)
{
  double sum = 0;

  for (guint i = 0; i < total->rows->len; i++)
    if (g_array_index (total->rows, TrTotalRow, i).ingredient.is_flour)
      sum += g_array_index (total->rows, TrTotalRow, i).total_g;

  return sum;
}

static void
assert_same_total (const TrFigures *before,
                   const TrFigures *after)
{
  TrTotal a, b;

  tr_total_compute (tr_figures_get_dough (before, 0), &a);
  tr_total_compute (tr_figures_get_dough (after, 0), &b);
  /* A document's amounts have at most so many places. */
  g_assert_cmpfloat_with_epsilon (sum_flour (&a), sum_flour (&b), 2e-3);
  for (guint i = 0; i < a.rows->len; i++)
    {
      const TrTotalRow *row = &g_array_index (a.rows, TrTotalRow, i), *other = find_row (&b, row->id);

      if (row->ingredient.is_flour)
        continue;
      g_assert_nonnull (other);
      g_assert_cmpfloat_with_epsilon (row->total_g, other->total_g, 2e-3);
    }
  tr_total_clear (&a);
  tr_total_clear (&b);
}

static const char *const plain[] = { "d flour-bread 500 g", "d water 60 %", "d salt 2 %", "d yeast-fresh 20 g", "d sugar 50 g",
                                     "r butter-unsalted 30 % of dough", NULL };

/* {kind, prefermented %, lines it has}: common practice, as preferment.h says. */
static const struct { const char *id; double prefermented; guint n_lines; } kinds[] = {
  { "poolish", 25, 3 }, { "sponge", 30, 3 }, { "starter", 15, 1 }, { "old-dough", 20, 4 },
};

static void
test_totals_stay (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      TrPrefermentKind kind = (TrPrefermentKind) tr_preferment_from_id (kinds[i].id);
      g_autoptr (TrDough) dough = test_dough_new ((const char **) plain), changed = tr_dough_copy (dough);
      g_autoptr (TrFigures) before = test_figures_of (dough);
      g_autoptr (GError) error = NULL;
      int first = tr_preferment_add (changed, tr_figures_get_dough (before, 0), kind, "mine", &error);
      g_autoptr (TrFigures) after = test_figures_of (changed);
      TrRatioMoves moves;

      g_assert_no_error (error);
      g_assert_cmpint (first, ==, 6);
      g_assert_cmpuint (changed->lines->len, ==, 6 + kinds[i].n_lines);
      g_assert_cmpstr (tr_dough_get_line (changed, 6)->group, ==, "mine");
      g_assert_cmpfloat_with_epsilon (tr_figures_get_dough (after, 0)->formula.prefermented_flour_percent, kinds[i].prefermented, 0.2);
      tr_ratio_get_moves (tr_figures_get_dough (after, 0), TR_RATIO_PREFERMENTED, &moves);
      g_assert_true (moves.can_move);
      assert_same_total (before, after);
    }
}

/* Old dough is a piece of the same formula. */
static void
test_old_dough_is_in_proportion (void)
{
  g_autoptr (TrDough) dough = test_dough_new ((const char **) plain), changed = tr_dough_copy (dough);
  g_autoptr (TrFigures) before = test_figures_of (dough);
  TrTotal total;

  g_assert_cmpint (tr_preferment_add (changed, tr_figures_get_dough (before, 0), TR_PREFERMENT_OLD_DOUGH, "old", NULL), ==, 6);

  g_autoptr (TrFigures) after = test_figures_of (changed);

  tr_total_compute (tr_figures_get_dough (after, 0), &total);
  g_assert_cmpfloat_with_epsilon (find_row (&total, "flour-bread")->grams[0], 100, 1e-9);
  g_assert_cmpfloat_with_epsilon (find_row (&total, "water")->grams[0], 60, 1e-9);
  g_assert_cmpfloat_with_epsilon (find_row (&total, "salt")->grams[0], 2, 1e-9);
  g_assert_cmpfloat_with_epsilon (find_row (&total, "yeast-fresh")->grams[0], 4, 1e-9);
  g_assert_cmpfloat_with_epsilon (find_row (&total, "sugar")->grams[0], 0, 1e-9);
  tr_total_clear (&total);
}

static void
test_too_little_liquid_makes_it_smaller (void)
{
  g_autoptr (TrDough) dough = test_dough_new ((const char *[]) { "d flour-bread 500 g", "d water 50 g", "d milk-whole 200 g",
                                                                 "d yeast-fresh 20 g", NULL });
  g_autoptr (TrDough) changed = tr_dough_copy (dough);
  g_autoptr (TrFigures) before = test_figures_of (dough);
  int first = tr_preferment_add (changed, tr_figures_get_dough (before, 0), TR_PREFERMENT_POOLISH, "poolish", NULL);
  g_autoptr (TrFigures) after = test_figures_of (changed);

  /* All the water went, and its line with it. */
  g_assert_cmpint (first, ==, 3);
  g_assert_cmpstr (tr_dough_get_line (changed, 3)->amount, ==, "50 g");
  g_assert_cmpstr (tr_dough_get_line (changed, 4)->amount, ==, "50 g");
  assert_same_total (before, after);
}

static const struct { const char *name; const char *lines[4]; TrPrefermentKind kind; TrRefusalId why; } refused[] = {
  { "nothing", { NULL }, TR_PREFERMENT_POOLISH, TR_REFUSAL_NO_FLOUR_TO_GIVE },
  { "no flour", { "d water 100 g", "d yeast-fresh 3 g", NULL }, TR_PREFERMENT_SPONGE, TR_REFUSAL_NO_FLOUR_TO_GIVE },
  { "no liquid", { "d flour-bread 500 g", "d yeast-fresh 10 g", NULL }, TR_PREFERMENT_POOLISH, TR_REFUSAL_NO_WATER_TO_GIVE },
  { "a starter is of water", { "d flour-bread 500 g", "d milk-whole 300 g", NULL }, TR_PREFERMENT_STARTER, TR_REFUSAL_NO_WATER_TO_GIVE },
  { "no yeast", { "d flour-bread 500 g", "d water 300 g", NULL }, TR_PREFERMENT_POOLISH, TR_REFUSAL_NO_YEAST_TO_GIVE },
  { "all in a preferment", { "p flour-bread 500 g", "p water 300 g", NULL }, TR_PREFERMENT_OLD_DOUGH, TR_REFUSAL_NO_FLOUR_TO_GIVE },
};

static void
test_refusals_name_what_is_short (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autoptr (TrDough) dough = test_dough_new ((const char **) refused[i].lines), changed = tr_dough_copy (dough);
      g_autoptr (TrFigures) before = test_figures_of (dough);
      g_autoptr (GError) error = NULL;

      g_test_message ("%s", refused[i].name);
      g_assert_cmpint (tr_preferment_add (changed, tr_figures_get_dough (before, 0), refused[i].kind, "x", &error), ==, -1);
      g_assert_error (error, TR_BALANCE_ERROR, TR_BALANCE_ERROR_NO_LINE);
      g_assert_cmpint ((int) tr_balance_error_get_refusal (error)->id, ==, (int) refused[i].why);
      g_assert_cmpuint (changed->lines->len, ==, dough->lines->len);
    }
}

/* Random doughs: whatever it does, the total formula stays. */
static void
test_random_totals_stay (void)
{
  for (int i = 0; i < 300; i++)
    {
      g_autofree char *flour = g_strdup_printf ("d flour-bread %d g", g_test_rand_int_range (100, 2000));
      g_autofree char *other = g_strdup_printf ("d flour-plain %d g", g_test_rand_int_range (1, 500));
      g_autofree char *water = g_strdup_printf ("d water %d g", g_test_rand_int_range (1, 900));
      g_autofree char *yeast = g_strdup_printf ("d yeast-fresh %d g", g_test_rand_int_range (1, 40));
      g_autoptr (TrDough) dough = test_dough_new ((const char *[]) { flour, other, water, yeast, "d milk-whole 10 %", "d salt 2 %", NULL });
      g_autoptr (TrDough) changed = tr_dough_copy (dough);
      g_autoptr (TrFigures) before = test_figures_of (dough);

      if (tr_preferment_add (changed, tr_figures_get_dough (before, 0), (TrPrefermentKind) g_test_rand_int_range (0, TR_N_PREFERMENTS),
                             "x", NULL) < 0)
        continue;

      g_autoptr (TrFigures) after = test_figures_of (changed);

      for (guint k = 0; k < changed->lines->len; k++)
        g_test_message ("%s: %s", tr_dough_get_line (changed, k)->ingredient, tr_dough_get_line (changed, k)->amount);
      assert_same_total (before, after);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/calc/preferment/totals-stay", test_totals_stay);
  g_test_add_func ("/calc/preferment/old-dough-is-in-proportion", test_old_dough_is_in_proportion);
  g_test_add_func ("/calc/preferment/too-little-liquid-makes-it-smaller", test_too_little_liquid_makes_it_smaller);
  g_test_add_func ("/calc/preferment/refusals-name-what-is-short", test_refusals_name_what_is_short);
  g_test_add_func ("/calc/preferment/random-totals-stay", test_random_totals_stay);

  return g_test_run ();
}
