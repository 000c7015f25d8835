/* test-account.c: what a swap or a repair did is said as it was done
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"

#include "calc/swap.h"

static TrTrial *
trial_of (void)
{
  static const struct { TrStage stage; const char *ingredient, *amount; } lines[] = {
    { TR_STAGE_DOUGH, "flour-bread", "1000 g" }, { TR_STAGE_DOUGH, "water", "500 g" }, { TR_STAGE_DOUGH, "salt", "12 g" },
    { TR_STAGE_DOUGH, "yeast-fresh", "30 g" }, { TR_STAGE_ROLL_IN, "butter-salted", "400 g" },
  };
  TrTrial *trial = tr_trial_new ();
  TrDough *dough = tr_dough_new ("d1");

  dough->batch_by = TR_BATCH_WRITTEN;
  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    g_ptr_array_add (dough->lines, tr_line_new (lines[i].stage, lines[i].ingredient, lines[i].amount));
  g_ptr_array_add (trial->doughs, dough);

  return trial;
}

typedef struct {
  guint line;
  const char *ingredient;
  TrKeptSet holds;
  TrUnitSystem units;
  const char *text;
} Said;

#define FAT TR_KEPT_BIT (TR_KEPT_FAT)
#define WATER TR_KEPT_BIT (TR_KEPT_WATER)
#define SALT TR_KEPT_BIT (TR_KEPT_SALT)
#define YEAST TR_KEPT_BIT (TR_KEPT_YEAST)

/* The numbers are worked by hand in the tests of the swap. */
static const Said said[] = {
  { 4, "butter-unsalted", FAT | WATER | SALT, TR_UNITS_METRIC,
    "400 g Butter, salted became 400 g Butter, unsalted. Water went from 500 g to 492 g. Salt went from 12 g to 18.3 g. "
    "The same as before: fat, water, effective salt." },
  { 4, "butter-unsalted", FAT, TR_UNITS_METRIC,
    "400 g Butter, salted became 400 g Butter, unsalted. The same as before: fat. Water is 8.3" NB "g more than before. "
    "Effective salt is 6.3" NB "g less than before." },
  { 4, "butter-unsalted", FAT | SALT, TR_UNITS_US,
    "400 g Butter, salted became 400 g Butter, unsalted. Salt went from 12 g to 18.3 g. The same as before: fat, "
    "effective salt. Water is 0.29" NB "oz more than before." },
  { 3, "yeast-dry", YEAST | WATER, TR_UNITS_METRIC,
    "30 g Yeast, fresh became 12 g Yeast, active dry. Water went from 500 g to 520 g. The same as before: fat, water, "
    "effective salt, yeast by strength." },
};

static void
test_swaps (void)
{
  g_autoptr (TrTrial) trial = trial_of ();
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *before = tr_figures_get_dough (figures, 0);

  for (guint i = 0; i < G_N_ELEMENTS (said); i++)
    {
      TrReader reader = plain (said[i].units);
      g_autoptr (TrTrial) draft = tr_trial_copy (trial);
      TrDough *dough = tr_trial_own_dough (draft, 0);

      g_assert_true (tr_swap_apply (dough, before, said[i].line, said[i].ingredient, said[i].holds, NULL));
      g_autoptr (TrAccount) account = tr_account_new (before, dough);
      g_autofree char *text = tr_words_account (&reader, before, account, TRUE);
      g_autofree char *preview = tr_words_account (&reader, before, account, FALSE);

      check_sentence (text);
      check_sentence (preview);
      g_assert_cmpstr (text, ==, said[i].text);
      g_assert_nonnull (strstr (preview, " becomes "));
      g_assert_null (strstr (preview, " went "));
    }
}

/* What the numbers were before does not matter to how it is said. */
static void
test_repairs (void)
{
  static const struct { TrRatio ratio; double target; gboolean adds_line; const char *button, *text; } cases[] = {
    { TR_RATIO_SALT, 2.4, FALSE, "Bring salt to 2.4" NB "%", "Effective salt is now 2.4" NB "% of the flour." },
    { TR_RATIO_SALT, 2, TRUE, "Add salt, 2" NB "%", "Effective salt is now 2" NB "% of the flour." },
    { TR_RATIO_ALL_WATER, 60, FALSE, "Bring all-water hydration to 60" NB "%",
      "All the water, also that of milk and eggs, is now 60" NB "% of the flour." },
    { TR_RATIO_ROLL_IN_OF_DOUGH, 25, FALSE, "Bring the roll-in to 25" NB "% of the dough", "The roll-in is now 25" NB "% of the dough." },
    { TR_RATIO_YEAST_FRESH, 2.5, FALSE, "Bring yeast to 2.5" NB "%", "Yeast, counted as fresh, is now 2.5" NB "% of the flour." },
  };
  g_autoptr (TrTrial) trial = trial_of ();
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *before = tr_figures_get_dough (figures, 0);
  TrReader reader = plain (TR_UNITS_METRIC);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const TrRepair repair = { cases[i].ratio, cases[i].target, cases[i].adds_line };
      g_autoptr (TrTrial) draft = tr_trial_copy (trial);
      TrDough *dough = tr_trial_own_dough (draft, 0);
      g_autofree char *button = tr_words_repair (&reader, &repair);

      g_assert_cmpstr (button, ==, cases[i].button);
      if (!repair.adds_line)
        g_assert_true (tr_repair_apply (dough, before, &repair, NULL));
      g_autoptr (TrAccount) account = tr_account_new (before, dough);
      g_autofree char *text = tr_words_repaired (&reader, before, &repair, account);

      check_sentence (text);
      g_assert_true (g_str_has_suffix (text, cases[i].text));
      if (!repair.adds_line)
        g_assert_nonnull (strstr (text, " went from "));
    }
}

/* A line that was not there before is said to be new. */
static void
test_added (void)
{
  g_autoptr (TrTrial) trial = trial_of ();
  TrReader reader = plain (TR_UNITS_METRIC);
  const TrRepair repair = { TR_RATIO_SALT, 2, TRUE };

  g_ptr_array_remove_index (tr_trial_own_dough (trial, 0)->lines, 2);
  g_ptr_array_remove_index (tr_trial_own_dough (trial, 0)->lines, 3);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *before = tr_figures_get_dough (figures, 0);
  g_autoptr (TrTrial) draft = tr_trial_copy (trial);
  TrDough *dough = tr_trial_own_dough (draft, 0);

  g_assert_true (tr_repair_apply (dough, before, &repair, NULL));
  g_autoptr (TrAccount) account = tr_account_new (before, dough);
  g_autofree char *text = tr_words_repaired (&reader, before, &repair, account);

  g_assert_cmpstr (text, ==, "20 g Salt is new. Effective salt is now 2" NB "% of the flour.");
}

/* Each names what is missing, in the reader's words and signs. */
static void
test_refusals (void)
{
  static const struct { guint line; const char *ingredient; TrKeptSet holds; const char *text; } cases[] = {
    { 1, "milk-whole", WATER | FAT, "No line of the dough can make up for what changes (fat)." },
    { 4, "salt", 0, "Butter, salted is of another kind; only what does the same work can take its place." },
  };
  g_autoptr (TrTrial) trial = trial_of ();
  TrReader reader = plain (TR_UNITS_METRIC);

  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *before = tr_figures_get_dough (figures, 0);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TrTrial) draft = tr_trial_copy (trial);
      g_autoptr (GError) error = NULL;

      g_assert_false (tr_swap_apply (tr_trial_own_dough (draft, 0), before, cases[i].line, cases[i].ingredient, cases[i].holds, &error));
      g_autofree char *text = tr_words_swap_refusal (&reader, before, error);

      check_sentence (text);
      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/words/account/what-became-what-and-what-is-as-before", test_swaps);
  g_test_add_func ("/words/account/a-repair-is-a-button-and-a-sentence", test_repairs);
  g_test_add_func ("/words/account/a-new-line-is-said-to-be-new", test_added);

  g_test_add_func ("/words/account/a-refusal-names-what-is-missing", test_refusals);

  return g_test_run ();
}
