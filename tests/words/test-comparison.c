/* test-comparison.c: how the figures of several doughs are said side by side, and their table
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * CSV is held against RFC 4180, section 2; test names give the rule's number.
 */

#include "check.h"

#include "calc/figures.h"
#include "words/comparison.h"

static const TrComparable *
find (const char *key)
{
  const TrComparable *comparable = tr_comparable_find (key);

  if (comparable == NULL)
    g_error ("nothing called %s", key);

  return comparable;
}

static void
test_every_figure_has_a_name_of_its_own (void)
{
  g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  guint n;
  const TrComparable *all = tr_comparables_get_all (&n);

  for (guint i = 0; i < n; i++)
    {
      char *full = tr_words_comparable_in_full (&all[i]);

      check_text (full);
      g_assert_cmpstr (tr_words_comparable (&all[i]), !=, all[i].key);
      if (!g_hash_table_add (names, full))
        g_error ("two figures are called “%s”", full);
    }
}

static void
test_the_batch_is_said_apart_from_the_piece (void)
{
  static const struct { const char *key, *full; } cases[] = {
    { "flour_g", "Flour, of the batch" }, { "dough_g", "Dough without the roll-in, of the batch" },
    { "roll_in_g", "Roll-in, of the batch" }, { "total_g", "Weight of everything, of the batch" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *full = tr_words_comparable_in_full (find (cases[i].key));

      g_assert_cmpstr (full, ==, cases[i].full);
    }
}

static void
test_every_group_has_a_name (void)
{
  for (int i = 0; i < TR_N_GROUPS; i++)
    check_text (tr_words_figure_group ((TrFigureGroup) i));
}

static void
test_numbers (void)
{
  static const struct { const char *key; TrUnitSystem units; double value; const char *number, *unit; } cases[] = {
    { "added_fat_g", TR_UNITS_METRIC, 11.23, "11.2", "g" },
    { "added_fat_g", TR_UNITS_US, TR_GRAMS_PER_OUNCE / 2, "0.50", "oz" },
    { "per_100g_raw.fat_g", TR_UNITS_US, 23.1, "23.1", "g" },
    { "salt_percent", TR_UNITS_METRIC, 1.959, "1.96", "%" },
    { "fat_volume_fraction", TR_UNITS_METRIC, 0.268, "26.8", "%" },
    { "fat_layer_um.max", TR_UNITS_METRIC, 84.4, "84", "µm" },
    { "thickness_mm", TR_UNITS_METRIC, 4, "4.0", "mm" },
    { "thickness_mm", TR_UNITS_US, 25.4 / 8, "0.125", "in" },
    { "energy_kj", TR_UNITS_METRIC, 1004.7, "1" THIN "005", "kJ" },
    { "minutes", TR_UNITS_METRIC, 135, "2" NB "h" NB "15", "" },
    { "fat_layers", TR_UNITS_METRIC, 36, "36", "" },
    { "cost", TR_UNITS_METRIC, 0.2709, "0.27", "EUR" },
    { "cost", TR_UNITS_METRIC, NAN, "–", "EUR" },
  };
  g_autoptr (TrBench) bench = tr_bench_new ();

  tr_set_text (&bench->currency, "EUR");
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TrReader reader = plain (cases[i].units);
      g_autofree char *number = tr_words_comparable_number (&reader, find (cases[i].key), cases[i].value);

      g_assert_cmpstr (number, ==, cases[i].number);
      g_assert_cmpstr (tr_words_comparable_unit (&reader, find (cases[i].key), bench), ==, cases[i].unit);
    }
}

static void
test_differences (void)
{
  static const struct { double value, reference; const char *absolute, *relative; } cases[] = {
    { 12.5, 10, "+2.5", "+25" NB "%" },
    { 10, 12.5, MINUS "2.5", MINUS "20" NB "%" },
    { 10.1, 10, "+0.1", "+1.0" NB "%" },
    { 10, 10, "0", "0" NB "%" },
    { 10.01, 10, "0", "+0.1" NB "%" },
    { 5, 0, "+5.0", "–" },
    { NAN, 10, "–", "–" },
    { 10, NAN, "–", "–" },
  };
  TrReader reader = plain (TR_UNITS_METRIC);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *absolute = tr_words_comparable_difference (&reader, find ("added_fat_g"), cases[i].value, cases[i].reference);
      g_autofree char *relative = tr_words_relative_difference (&reader, cases[i].value, cases[i].reference);

      g_assert_cmpstr (absolute, ==, cases[i].absolute);
      g_assert_cmpstr (relative, ==, cases[i].relative);
    }
}

/* CSV */

static TrTextTable *
new_table (const char *const *cells,
           guint              n_columns)
{
  TrTextTable *table = g_new0 (TrTextTable, 1);

  table->n_columns = n_columns;
  table->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  while (*cells != NULL)
    {
      char **row = g_new0 (char *, n_columns + 1);

      for (guint i = 0; i < n_columns; i++)
        row[i] = g_strdup (*cells++);
      g_ptr_array_add (table->rows, row);
    }

  return table;
}

static void
test_csv_keeps_rfc_4180 (void)
{
  static const struct { const char *rule, *cell, *expected; } cases[] = {
    { "plain", "1.5", "1.5,x\r\n" },
    { "4: spaces are part of a field", " a ", " a ,x\r\n" },
    { "5: quotes may be left out", "Quay crescents", "Quay crescents,x\r\n" },
    { "6: commas", "a,b", "\"a,b\",x\r\n" },
    { "6: line ends", "a\nb", "\"a\nb\",x\r\n" },
    { "6: carriage returns", "a\r\nb", "\"a\r\nb\",x\r\n" },
    { "7: quotes doubled", "5\" sheet", "\"5\"\" sheet\",x\r\n" },
    { "nothing", "", ",x\r\n" },
    { "letters of the world", "Fülle, süß", "\"Fülle, süß\",x\r\n" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TrTextTable) table = new_table ((const char *const[]) { cases[i].cell, "x", NULL }, 2);
      g_autofree char *csv = tr_text_table_dup_csv (table);

      g_test_message ("%s", cases[i].rule);
      g_assert_cmpstr (csv, ==, cases[i].expected);
    }
}

static void
add_dough (TrTrial    *trial,
           const char *id,
           const char *name)
{
  TrDough *dough = tr_dough_new (id);

  tr_set_text (&dough->name, name);
  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "flour-bread", "500 g"));
  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "water", "1 cup"));
  g_ptr_array_add (trial->doughs, dough);
}

static void
test_doughs_of_one_name_are_told_apart (void)
{
  g_autoptr (TrTrial) trial = tr_trial_new ();
  g_autoptr (TrFigures) figures = NULL;
  g_autoptr (TrTextTable) table = NULL;

  add_dough (trial, "d1", "Sponge");
  add_dough (trial, "d2", "Straight\tone");
  add_dough (trial, "d3", "Sponge");
  figures = tr_figures_compute (trial, NULL);
  table = tr_words_comparison_table (figures, NULL, 0);
  g_assert_cmpuint (table->n_columns, ==, 5);
  g_assert_cmpstr (tr_text_table_get (table, 0, 0), ==, "key");
  g_assert_cmpstr (tr_text_table_get (table, 0, 1), ==, "unit");
  g_assert_cmpstr (tr_text_table_get (table, 0, 2), ==, "Sponge (d1)");
  g_assert_cmpstr (tr_text_table_get (table, 0, 4), ==, "Sponge (d3)");
  g_assert_null (strchr (tr_text_table_get (table, 0, 3), '\t'));
}

static void
test_numbers_of_the_table_are_exact (void)
{
  g_autoptr (TrTrial) trial = tr_trial_new ();
  g_autoptr (TrFigures) figures = NULL;
  g_autoptr (TrTextTable) table = NULL;
  guint n, index = 0;
  const TrComparable *all = tr_comparables_get_all (&n);

  add_dough (trial, "d1", "Sponge");
  figures = tr_figures_compute (trial, NULL);
  table = tr_words_comparison_table (figures, &index, 1);
  g_assert_cmpuint (table->rows->len, ==, n + 1);
  for (guint i = 0; i < n; i++)
    {
      double value = tr_comparable_get (&all[i], tr_figures_get_dough (figures, 0));
      const char *cell = tr_text_table_get (table, i + 1, 2);

      g_assert_cmpstr (tr_text_table_get (table, i + 1, 0), ==, all[i].key);
      /* To the last bit. */
      if (isfinite (value))
        g_assert_false (g_ascii_strtod (cell, NULL) < value || g_ascii_strtod (cell, NULL) > value);
      else
        g_assert_cmpstr (cell, ==, "");
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/words/comparison/every-figure-has-a-name-of-its-own", test_every_figure_has_a_name_of_its_own);
  g_test_add_func ("/words/comparison/every-group-has-a-name", test_every_group_has_a_name);
  g_test_add_func ("/words/comparison/batch-is-said-apart", test_the_batch_is_said_apart_from_the_piece);
  g_test_add_func ("/words/comparison/numbers", test_numbers);
  g_test_add_func ("/words/comparison/differences", test_differences);
  g_test_add_func ("/words/table/csv-keeps-rfc-4180", test_csv_keeps_rfc_4180);
  g_test_add_func ("/words/table/doughs-of-one-name-are-told-apart", test_doughs_of_one_name_are_told_apart);
  g_test_add_func ("/words/table/numbers-are-exact", test_numbers_of_the_table_are_exact);

  return g_test_run ();
}
