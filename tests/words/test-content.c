/* test-content.c: what is in a dough is said with what hides in it, and why not
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Salted butter: USDA SR28 01001, sodium 643 mg in 100 g; salt = sodium × 2.5
 * (EU 1169/2011 Annex I): 300 g bring 4.82 g, 0.96 % on 500 g of flour.
 */

#include "config.h"

#include <string.h>

#include "calc/figures.h"
#include "words/content.h"

static TrFigures *
figures_of (const char *roll_in)
{
  g_autoptr (TrTrial) trial = tr_trial_new ();
  TrDough *dough = tr_dough_new ("d1");
  static const struct { TrStage stage; const char *ingredient, *amount; } lines[] = {
    { TR_STAGE_PREFERMENT, "flour-bread", "100 g" }, { TR_STAGE_PREFERMENT, "water", "100 g" },
    { TR_STAGE_DOUGH, "flour-bread", "400 g" }, { TR_STAGE_DOUGH, "water", "150 g" }, { TR_STAGE_DOUGH, "salt", "8 g" },
    { TR_STAGE_DOUGH, "yeast-fresh", "20 g" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    g_ptr_array_add (dough->lines, tr_line_new (lines[i].stage, lines[i].ingredient, lines[i].amount));
  tr_set_text (&tr_dough_get_line (dough, 0)->group, "poolish");
  tr_set_text (&tr_dough_get_line (dough, 1)->group, "poolish");
  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_ROLL_IN, roll_in, "300 g"));
  dough->batch_by = TR_BATCH_WRITTEN;
  g_ptr_array_add (trial->doughs, dough);

  return tr_figures_compute (trial, NULL);
}

static gboolean
says (GPtrArray  *notes,
      const char *part)
{
  for (guint i = 0; i < notes->len; i++)
    if (strstr (g_ptr_array_index (notes, i), part) != NULL)
      return TRUE;
  for (guint i = 0; i < notes->len; i++)
    g_test_message ("%s", (const char *) g_ptr_array_index (notes, i));

  return FALSE;
}

static void
test_salt_of_salted_butter (void)
{
  g_autoptr (TrFigures) salted = figures_of ("butter-salted"), plain = figures_of ("butter-unsalted");
  g_autoptr (GPtrArray) notes = NULL, others = NULL;
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  notes = tr_words_content_notes (&reader, tr_figures_get_dough (salted, 0));
  others = tr_words_content_notes (&reader, tr_figures_get_dough (plain, 0));
  g_assert_true (says (notes, "1.60 % from the salt line, 0.96 % from "));
  g_assert_true (says (others, "1.60 % from the salt line."));
}

static void
test_unknown_price_is_named (void)
{
  g_autoptr (TrFigures) figures = figures_of ("butter-unsalted");
  g_autoptr (GPtrArray) notes = NULL;
  g_autoptr (TrTextTable) table = NULL;
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  notes = tr_words_content_notes (&reader, tr_figures_get_dough (figures, 0));
  table = tr_words_content_table (&reader, tr_figures_get_dough (figures, 0));
  g_assert_true (says (notes, "Cost is not known: no price for Bread flour, "));
  g_assert_false (says (notes, "Water, tap"));
  g_assert_cmpstr (tr_text_table_get (table, table->rows->len - 1, 1), ==, "–");
}

/* By hand: 500 g of flour, 250 of water; the poolish comes back whole. */
static void
test_total_formula (void)
{
  static const char expected[] =
    "\tPoolish\tFinal dough\tRoll-in\tTotal\t% of flour\n"
    "\t100\t400\t\t500\t100.0\n"
    "\t100\t150\t\t250\t50.0\n"
    "\t\t8\t\t8\t1.6\n"
    "\t\t20\t\t20\t4.0\n"
    "\t\t\t300\t300\t60.0\n"
    "\t\t200\t\t\t\n"
    "\t200\t778\t300\t1078\t215.6\n";
  g_autoptr (TrFigures) figures = figures_of ("butter-unsalted");
  g_autoptr (TrTextTable) table = NULL;
  g_autofree char *tsv = NULL;
  g_auto (GStrv) lines = NULL;
  GString *figures_only = g_string_new (NULL);
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  table = tr_words_total_table (&reader, tr_figures_get_dough (figures, 0));
  tsv = tr_text_table_dup_tsv (table);
  lines = g_strsplit (tsv, "\n", -1);
  for (char **line = lines; **line != '\0'; line++)
    g_string_append_printf (figures_only, "%s\n", strchr (*line, '\t'));
  g_assert_cmpstr (figures_only->str, ==, expected);
  g_string_free (figures_only, TRUE);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/words/content/salt-of-salted-butter", test_salt_of_salted_butter);
  g_test_add_func ("/words/content/unknown-price-is-named", test_unknown_price_is_named);
  g_test_add_func ("/words/content/total-formula", test_total_formula);

  return g_test_run ();
}
