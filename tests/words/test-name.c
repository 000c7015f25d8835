/* test-name.c: every value has a name, and the law's names are the law's
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"

#include "words/say.h"

typedef const char *(*NameFunc) (int value);

static const char *kind_name (int value) { return tr_words_kind ((TrKind) value); }
static const char *stage_name (int value) { return tr_words_stage ((TrStage) value); }
static const char *style_name (int value) { return tr_words_style ((TrStyle) value); }
static const char *style_how (int value) { return tr_words_style_how ((TrStyle) value); }
static const char *shape_name (int value) { return tr_words_shape ((TrShape) value); }
static const char *place_name (int value) { return tr_words_place ((TrPlace) value); }
static const char *step_name (int value) { return tr_words_step ((TrStepId) value); }
static const char *ratio_name (int value) { return tr_words_ratio ((TrRatio) value); }
static const char *break_name (int value) { return tr_words_break ((TrBreaks) (1 << value)); }
static const char *severity_name (int value) { return tr_words_severity ((TrSeverity) value); }

static void
test_every_value_has_a_name_of_its_own (void)
{
  static const struct { NameFunc name; int n; } tables[] = {
    { kind_name, TR_N_KINDS }, { stage_name, TR_N_STAGES }, { style_name, TR_N_STYLES }, { style_how, TR_N_STYLES },
    { shape_name, TR_N_SHAPES }, { place_name, TR_N_PLACES }, { step_name, TR_N_STEPS }, { ratio_name, TR_N_RATIOS },
    { break_name, TR_N_BREAKS }, { severity_name, TR_SEVERITY_STOP + 1 },
  };

  for (gsize t = 0; t < G_N_ELEMENTS (tables); t++)
    {
      g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

      for (int i = 0; i < tables[t].n; i++)
        {
          const char *name = tables[t].name (i);

          check_text (name);
          g_assert_true (g_hash_table_add (seen, (gpointer) name));
        }
    }
}

static void
test_closing_is_told_in_sentences (void)
{
  for (int i = 0; i < TR_N_STYLES; i++)
    check_sentence (tr_words_style_how ((TrStyle) i));
  /* The bare third first: the other order lays fat on fat. */
  g_assert_nonnull (strstr (tr_words_style_how (TR_STYLE_LETTER), "the bare third over the fat first"));
}

static void
test_folds_have_the_names_of_the_trade (void)
{
  static const char *const expected[] = { "half fold (2)", "letter fold (3)", "book fold (4)", "fold in 5", "fold in 6" };

  for (int fold = 2; fold <= 6; fold++)
    {
      g_autofree char *text = tr_words_fold (fold);

      g_assert_cmpstr (text, ==, expected[fold - 2]);
    }
}

/* Regulation (EU) No 1169/2011, Annex II, 1 to 14: every substance and every
 * cereal and nut named there, in its words. */
static void
test_allergens_have_the_names_of_annex_ii (void)
{
  static const struct { const char *id, *name; } annex[] = {
    { "gluten-wheat", "wheat" }, { "gluten-rye", "rye" }, { "gluten-barley", "barley" }, { "gluten-oats", "oats" },
    { "crustaceans", "crustaceans" }, { "egg", "eggs" }, { "fish", "fish" }, { "peanut", "peanuts" },
    { "soy", "soybeans" }, { "milk", "milk" },
    { "nuts-almond", "almonds" }, { "nuts-hazelnut", "hazelnuts" }, { "nuts-walnut", "walnuts" },
    { "nuts-cashew", "cashews" }, { "nuts-pecan", "pecan nuts" }, { "nuts-brazil", "Brazil nuts" },
    { "nuts-pistachio", "pistachio nuts" }, { "nuts-macadamia", "macadamia nuts" },
    { "celery", "celery" }, { "mustard", "mustard" }, { "sesame", "sesame seeds" },
    { "sulphites", "sulphur dioxide and sulphites" }, { "lupin", "lupin" }, { "molluscs", "molluscs" },
    { "unknown", "check the pack" }, { "my own word", "my own word" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (annex); i++)
    g_assert_cmpstr (tr_words_allergen (annex[i].id), ==, annex[i].name);
}

static void
test_allergens_are_grouped_and_unknown_ones_looked_up (void)
{
  static const struct { const char *ids, *expected; } cases[] = {
    { "egg gluten-wheat milk", "cereals containing gluten (wheat), eggs, milk" },
    { "gluten-barley gluten-rye gluten-wheat", "cereals containing gluten (wheat, rye, barley)" },
    { "nuts-almond nuts-walnut soy", "soybeans, nuts (almonds, walnuts)" },
    { "gluten-rye unknown", "cereals containing gluten (rye); check the pack" },
    { "unknown", "check the pack" },
    { "gluten-wheat nuts-almond", "cereals containing gluten (wheat), nuts (almonds)" },
    { "milk tree-sap", "milk, tree-sap" },
    { "", "none known" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_auto (GStrv) ids = g_strsplit (cases[i].ids, " ", -1);
      g_autofree char *text = tr_words_allergens (ids);

      g_assert_cmpstr (text, ==, cases[i].expected);
    }
}

static void
test_every_allergen_of_the_table_has_a_name (void)
{
  for (guint i = 0; i < tr_builtin_count (); i++)
    {
      const TrIngredient *ingredient = tr_builtin_get (i);

      for (const char *const *id = ingredient->allergens; id != NULL && *id != NULL; id++)
        if (!g_str_equal (*id, "milk"))      /* which is its own name */
          g_assert_cmpstr (tr_words_allergen (*id), !=, *id);
    }
}

static void
test_translators_see_every_built_in_ingredient (void)
{
  guint n = 0;

  for (const char *const *name = tr_say_ingredient_names; *name != NULL; name++)
    n++;
  g_assert_cmpuint (n, ==, tr_builtin_count ());
  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpstr (tr_say_ingredient_names[i], ==, tr_builtin_get (i)->name);
      g_assert_cmpstr (tr_words_ingredient (tr_builtin_get (i)), ==, tr_builtin_get (i)->name);
    }
}

static void
test_the_bakers_own_name_stands_as_written (void)
{
  g_autoptr (TrTrial) trial = tr_trial_new ();
  TrPantry *pantry = tr_trial_own_pantry (trial);
  TrOwnIngredient *own = tr_own_ingredient_new ("butter-farm", "butter-unsalted");
  TrIngredient ingredient;

  tr_set_text (&own->name, "Farm butter, 84 % fat");
  g_ptr_array_add (pantry->own, own);
  g_assert_true (tr_ingredient_resolve (pantry, "butter-farm", &ingredient));
  g_assert_cmpstr (tr_words_ingredient (&ingredient), ==, "Farm butter, 84 % fat");
}

static void
test_fat_is_called_butter_only_when_all_of_it_is (void)
{
  TrFormula formula = { .all_fat_is_butter = TRUE };

  g_assert_cmpstr (tr_words_fat (&formula), ==, "butter");
  formula.all_fat_is_butter = FALSE;
  g_assert_cmpstr (tr_words_fat (&formula), ==, "fat");
}

static void
test_letters_go_on_after_z (void)
{
  static const struct { guint index; const char *letter; } cases[] = { { 0, "A" }, { 25, "Z" }, { 26, "AA" }, { 51, "AZ" }, { 52, "BA" }, { 63, "BL" } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *letter = tr_words_letter (cases[i].index);

      g_assert_cmpstr (letter, ==, cases[i].letter);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/words/name/letters", test_letters_go_on_after_z);
  g_test_add_func ("/words/name/every-value-has-a-name-of-its-own", test_every_value_has_a_name_of_its_own);
  g_test_add_func ("/words/name/closing-is-told-in-sentences", test_closing_is_told_in_sentences);
  g_test_add_func ("/words/name/folds", test_folds_have_the_names_of_the_trade);
  g_test_add_func ("/words/name/allergens-have-the-names-of-annex-ii", test_allergens_have_the_names_of_annex_ii);
  g_test_add_func ("/words/name/allergens-are-grouped", test_allergens_are_grouped_and_unknown_ones_looked_up);
  g_test_add_func ("/words/name/every-allergen-of-the-table-has-a-name", test_every_allergen_of_the_table_has_a_name);
  g_test_add_func ("/words/name/translators-see-every-built-in-ingredient", test_translators_see_every_built_in_ingredient);
  g_test_add_func ("/words/name/own-name-stands-as-written", test_the_bakers_own_name_stands_as_written);
  g_test_add_func ("/words/name/butter-only-when-all-of-it-is", test_fat_is_called_butter_only_when_all_of_it_is);

  return g_test_run ();
}
