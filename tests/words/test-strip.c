/* test-strip.c: a dough in one line
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"

static void
add_finding (TrDoughFigures *figures,
             TrFindingId     id)
{
  TrFinding *finding = g_new0 (TrFinding, 1);

  finding->id = id;
  g_ptr_array_add (figures->findings, finding);
}

static TrDoughFigures
sample (void)
{
  TrDoughFigures figures = { 0 };

  figures.formula.all_fat_is_butter = TRUE;
  figures.piece.count = 24;
  figures.piece.raw_mass_g = 51.2;
  figures.piece.added_fat_g = 11.04;
  figures.piece.content.salt_g = 0.61;
  figures.has_sheet = TRUE;
  figures.sheet.sheets = 2;
  figures.sheet.length_mm = 601;
  figures.sheet.width_mm = 276;
  figures.sheet.thickness_mm = 4;
  figures.findings = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_finding_free);
  add_finding (&figures, TR_FINDING_SALT);
  add_finding (&figures, TR_FINDING_SPARE);
  add_finding (&figures, TR_FINDING_ALLERGENS);
  return figures;
}

static void
test_the_strip_says_pieces_fat_salt_sheets_and_findings (void)
{
  TrReader metric = plain (TR_UNITS_METRIC), us = plain (TR_UNITS_US), comma = with_comma (TR_UNITS_METRIC);
  TrDoughFigures figures = sample ();
  g_autofree char *in_metric = tr_words_strip (&metric, &figures);
  g_autofree char *in_us = tr_words_strip (&us, &figures);
  g_autofree char *in_comma = tr_words_strip (&comma, &figures);

  g_assert_cmpstr (in_metric, ==, "24 × 51" NB "g raw · butter 11.0" NB "g · salt 0.6" NB "g · two sheets 601 × 276 × 4" NB
                                  "mm · 2 findings");
  g_assert_cmpstr (in_us, ==, "24 × 1.81" NB "oz raw · butter 0.39" NB "oz · salt 0.02" NB "oz · two sheets 23" NB "5/8 × 10" NB
                              "7/8 × 5/32" NB "in · 2 findings");
  g_assert_nonnull (strstr (in_comma, "butter 11,0" NB "g"));
  g_ptr_array_unref (figures.findings);
}

static void
test_one_is_not_many (void)
{
  TrReader metric = plain (TR_UNITS_METRIC);
  TrDoughFigures figures = sample ();
  g_autofree char *text = NULL;

  figures.sheet.sheets = 1;
  g_ptr_array_set_size (figures.findings, 1);
  text = tr_words_strip (&metric, &figures);
  g_assert_nonnull (strstr (text, "· one sheet 601"));
  g_assert_true (g_str_has_suffix (text, "· 1 finding"));
  g_ptr_array_unref (figures.findings);
}

static void
test_what_is_not_known_is_left_out (void)
{
  TrReader metric = plain (TR_UNITS_METRIC);
  TrDoughFigures figures = sample ();
  g_autofree char *text = NULL, *nothing = NULL;

  figures.piece.raw_mass_g = NAN;
  figures.piece.content.salt_g = NAN;
  figures.has_sheet = FALSE;
  figures.formula.all_fat_is_butter = FALSE;
  g_ptr_array_remove_range (figures.findings, 0, 2);
  text = tr_words_strip (&metric, &figures);
  g_assert_cmpstr (text, ==, "24 pieces · fat 11.0" NB "g · no findings");

  figures.piece.count = NAN;
  figures.piece.added_fat_g = NAN;
  nothing = tr_words_strip (&metric, &figures);
  g_assert_cmpstr (nothing, ==, "no findings");
  g_ptr_array_unref (figures.findings);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/words/strip/pieces-fat-salt-sheets-and-findings", test_the_strip_says_pieces_fat_salt_sheets_and_findings);
  g_test_add_func ("/words/strip/one-is-not-many", test_one_is_not_many);
  g_test_add_func ("/words/strip/what-is-not-known-is-left-out", test_what_is_not_known_is_left_out);

  return g_test_run ();
}
