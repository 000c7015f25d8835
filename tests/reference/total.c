/* total.c: total formula and final dough, as a class of bakers prints them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Wild Yeast, "Baker's Percentage Tutorial", part 4: a baguette with poolish,
 * of which the total formula, the final dough and the flour prefermented are
 * printed.
 */

#include "calc/total.h"
#include "dough.h"

static void
test_total_of_poolish (void)
{
  static const struct { const char *id; double poolish_g, dough_g, total_g, percent; } printed[] = {
    { "flour-bread", 468, 900, 1368, 100 },
    { "water", 468, 468, 936, 68.42 },
    { "yeast-fresh", 0.3, 9, 9.3, 0.68 },
    { "salt", 0, 27, 27, 1.97 },
  };
  g_autoptr (TrTrial) trial = ref_trial_new ();
  TrDough *dough = ref_trial_get_dough (trial);

  ref_dough_add_line (dough, TR_STAGE_PREFERMENT, "flour-bread", "468 g");
  ref_dough_add_line (dough, TR_STAGE_PREFERMENT, "water", "468 g");
  ref_dough_add_line (dough, TR_STAGE_PREFERMENT, "yeast-fresh", "0.3 g");
  ref_dough_add_line (dough, TR_STAGE_DOUGH, "flour-bread", "900 g");
  ref_dough_add_line (dough, TR_STAGE_DOUGH, "water", "468 g");
  ref_dough_add_line (dough, TR_STAGE_DOUGH, "yeast-fresh", "9 g");
  ref_dough_add_line (dough, TR_STAGE_DOUGH, "salt", "27 g");

  g_autoptr (TrFigures) figures = ref_figures_new (trial);
  TrTotal total;

  tr_total_compute (tr_figures_get_dough (figures, 0), &total);
  g_assert_cmpuint (total.n_columns, ==, 2);
  g_assert_cmpint (total.columns[0].stage, ==, TR_STAGE_PREFERMENT);
  g_assert_cmpfloat_with_epsilon (total.columns[0].grams, 936.3, 1e-9);
  g_assert_cmpfloat_with_epsilon (total.columns[1].grams, 900 + 468 + 9 + 27, 1e-9);
  /* 2 340 g; the page leaves the 0.3 g of yeast out of the poolish's 936. */
  g_assert_cmpfloat_with_epsilon (total.total_g, 2340, 0.5);
  g_assert_cmpuint (total.rows->len, ==, G_N_ELEMENTS (printed));
  for (guint i = 0; i < total.rows->len; i++)
    {
      const TrTotalRow *row = &g_array_index (total.rows, TrTotalRow, i);

      g_assert_cmpstr (row->id, ==, printed[i].id);
      g_assert_cmpfloat_with_epsilon (row->grams[0], printed[i].poolish_g, 1e-9);
      g_assert_cmpfloat_with_epsilon (row->grams[1], printed[i].dough_g, 1e-9);
      g_assert_cmpfloat_with_epsilon (row->total_g, printed[i].total_g, 1e-9);
      g_assert_cmpfloat_with_epsilon (row->percent, printed[i].percent, 0.005);
    }
  g_assert_cmpfloat_with_epsilon (tr_figures_get_dough (figures, 0)->formula.prefermented_flour_percent, 34.21, 0.005);
  tr_total_clear (&total);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/reference/total/poolish", test_total_of_poolish);

  return g_test_run ();
}
