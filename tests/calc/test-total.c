/* test-total.c: the total formula adds up
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "calc/total.h"
#include "doughs.h"

static void
test_starter_goes_to_flour_and_water (void)
{
  g_autoptr (TrDough) dough = test_dough_new ((const char *[]) { "d starter-wheat 150 g", "d flour-bread 400 g", "d water 200 g",
                                                                 "r butter-unsalted 250 g", "f egg-whole 50 g", NULL });
  tr_dough_get_line (dough, 0)->hydration_percent = 50;

  g_autoptr (TrFigures) figures = test_figures_of (dough);
  TrTotal total;

  tr_total_compute (tr_figures_get_dough (figures, 0), &total);
  g_assert_cmpuint (total.rows->len, ==, 3);
  g_assert_cmpstr (g_array_index (total.rows, TrTotalRow, 0).id, ==, "flour-bread");
  g_assert_cmpfloat_with_epsilon (g_array_index (total.rows, TrTotalRow, 0).total_g, 500, 1e-9);
  g_assert_cmpfloat_with_epsilon (g_array_index (total.rows, TrTotalRow, 0).percent, 100, 1e-9);
  g_assert_cmpfloat_with_epsilon (g_array_index (total.rows, TrTotalRow, 1).total_g, 250, 1e-9);
  g_assert_cmpfloat_with_epsilon (g_array_index (total.rows, TrTotalRow, 1).percent, 50, 1e-9);
  g_assert_cmpfloat_with_epsilon (g_array_index (total.rows, TrTotalRow, 2).grams[1], 250, 1e-9);
  g_assert_cmpfloat_with_epsilon (total.total_g, 1000, 1e-9);
  tr_total_clear (&total);
}

static TrDough *
random_dough (void)
{
  static const char *const ingredients[] = { "flour-bread", "flour-plain", "water", "starter-wheat", "milk-whole", "salt", "butter-unsalted" };
  static const char stages[] = "pppdrf";
  const char *none[] = { NULL };
  TrDough *dough = test_dough_new (none);
  int n = g_test_rand_int_range (0, 30);

  for (int i = 0; i < n; i++)
    {
      g_autofree char *amount = g_strdup_printf ("%d g", g_test_rand_int_range (0, 900));
      g_autofree char *text = g_strdup_printf ("%c %s %s", stages[g_test_rand_int_range (0, sizeof stages - 1)],
                                               ingredients[g_test_rand_int_range (0, G_N_ELEMENTS (ingredients))], amount);
      g_autoptr (TrDough) one = test_dough_new ((const char *[]) { text, NULL });
      TrLine *line = tr_line_copy (tr_dough_get_line (one, 0));

      if (line->stage == TR_STAGE_PREFERMENT)
        line->group = g_strdup_printf ("group %d", g_test_rand_int_range (0, 16));
      g_ptr_array_add (dough->lines, line);
    }

  return dough;
}

/* No bench has so many; none of them is taken for the roll-in. */
static void
test_more_preferments_than_columns (void)
{
  g_autoptr (TrDough) dough = test_dough_new ((const char *[]) { "d flour-bread 500 g", "d water 300 g", "r butter-unsalted 250 g", NULL });
  TrTotal total;

  for (int i = 0; i < TR_MAX_TOTAL_COLUMNS + 2; i++)
    {
      TrLine *line = tr_line_new (TR_STAGE_PREFERMENT, "flour-bread", "10 g");

      line->group = g_strdup_printf ("group %d", i);
      g_ptr_array_add (dough->lines, line);
    }

  g_autoptr (TrFigures) figures = test_figures_of (dough);

  tr_total_compute (tr_figures_get_dough (figures, 0), &total);
  g_assert_cmpuint (total.n_columns, ==, TR_MAX_TOTAL_COLUMNS);
  g_assert_cmpint (total.columns[TR_MAX_TOTAL_COLUMNS - 3].stage, ==, TR_STAGE_PREFERMENT);
  g_assert_cmpfloat_with_epsilon (total.columns[TR_MAX_TOTAL_COLUMNS - 3].grams, 50, 1e-9);
  g_assert_cmpfloat_with_epsilon (total.columns[TR_MAX_TOTAL_COLUMNS - 2].grams, 800, 1e-9);
  g_assert_cmpfloat_with_epsilon (total.columns[TR_MAX_TOTAL_COLUMNS - 1].grams, 250, 1e-9);
  tr_total_clear (&total);
}

static void
test_columns_and_rows_add_up (void)
{
  for (int n = 0; n < 300; n++)
    {
      g_autoptr (TrDough) written = random_dough ();
      g_autoptr (TrFigures) figures = test_figures_of (written);
      const TrFormula *formula = &tr_figures_get_dough (figures, 0)->formula;
      double of_columns = 0, of_rows = 0, flour = 0;
      TrTotal total;

      tr_total_compute (tr_figures_get_dough (figures, 0), &total);
      g_assert_cmpuint (total.n_columns, <=, TR_MAX_TOTAL_COLUMNS);
      for (guint i = 0; i < total.n_columns; i++)
        {
          of_columns += total.columns[i].grams;
          if (total.columns[i].stage == TR_STAGE_ROLL_IN)
            g_assert_cmpfloat_with_epsilon (total.columns[i].grams, formula->roll_in_g, 1e-6);
        }
      for (guint i = 0; i < total.rows->len; i++)
        {
          const TrTotalRow *row = &g_array_index (total.rows, TrTotalRow, i);
          double across = 0;

          for (guint j = 0; j < total.n_columns; j++)
            across += row->grams[j];
          g_assert_cmpfloat_with_epsilon (across, row->total_g, 1e-6);
          of_rows += row->total_g;
          flour += row->ingredient.is_flour ? row->total_g : 0;
          for (guint j = 0; j < i; j++)
            g_assert_cmpstr (row->id, !=, g_array_index (total.rows, TrTotalRow, j).id);
        }
      g_assert_cmpfloat_with_epsilon (of_columns, formula->total_g, 1e-6);
      g_assert_cmpfloat_with_epsilon (of_rows, formula->total_g, 1e-6);
      g_assert_cmpfloat_with_epsilon (flour, formula->flour_g, 1e-6);
      tr_total_clear (&total);
    }
}

/* What is read beside a sum adds up to it, to the last digit shown. */
static void
test_weights_for_the_scale_add_up (void)
{
  for (int n = 0; n < 300; n++)
    {
      g_autoptr (TrDough) written = random_dough ();
      g_autoptr (TrFigures) figures = test_figures_of (written);
      const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
      TrBench *bench = tr_bench_new ();
      TrTotal exact, total;
      double of_rows = 0, of_columns = 0;

      bench->scale_step_g = 5;
      bench->fine_scale_step_g = 0.1;
      tr_total_compute (dough, &exact);
      tr_total_compute_for_scale (dough, bench, &total);
      g_assert_cmpuint (total.rows->len, ==, exact.rows->len);
      for (guint i = 0; i < total.rows->len; i++)
        {
          const TrTotalRow *row = &g_array_index (total.rows, TrTotalRow, i), *as = &g_array_index (exact.rows, TrTotalRow, i);
          double across = 0;

          for (guint j = 0; j < total.n_columns; j++)
            {
              across += row->grams[j];
              g_assert_cmpfloat_with_epsilon (row->grams[j] * 10, round (row->grams[j] * 10), 1e-6);
            }
          g_assert_cmpfloat_with_epsilon (across, row->total_g, 1e-6);
          g_assert_cmpstr (row->id, ==, as->id);
          if (isfinite (as->percent))
            g_assert_cmpfloat_with_epsilon (row->percent, as->percent, 1e-9);
          of_rows += row->total_g;
        }
      for (guint j = 0; j < total.n_columns; j++)
        of_columns += total.columns[j].grams;
      g_assert_cmpfloat_with_epsilon (of_rows, total.total_g, 1e-6);
      g_assert_cmpfloat_with_epsilon (of_columns, total.total_g, 1e-6);
      g_assert_cmpfloat_with_epsilon (total.total_g, exact.total_g, 5.1);
      tr_total_clear (&exact);
      tr_total_clear (&total);
      tr_bench_unref (bench);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/calc/total/starter-goes-to-flour-and-water", test_starter_goes_to_flour_and_water);
  g_test_add_func ("/calc/total/more-preferments-than-columns", test_more_preferments_than_columns);
  g_test_add_func ("/calc/total/columns-and-rows-add-up", test_columns_and_rows_add_up);
  g_test_add_func ("/calc/total/weights-for-the-scale-add-up", test_weights_for_the_scale_add_up);

  return g_test_run ();
}
