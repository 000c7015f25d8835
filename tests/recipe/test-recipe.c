/* test-recipe.c: recipes of our own writing, line by line
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   test-recipe FOLDER        the tests; FOLDER holds NAME.txt or NAME.html and NAME.expected
 *   test-recipe --print FILE  what FILE is read as, in the form of NAME.expected
 *
 * Every recipe in the folder is invented for these tests, wording and all. A
 * line of NAME.expected is stage, ingredient ("?": not understood), amount and
 * the marks of its flags, parted by " | ".
 */

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "recipe/recipe.h"
#include "trial/document.h"

static const char *const flag_marks[] = {
  "guess", "word", "either", "mean", "measure", "vague", "none", "bare", "ambiguous", "unweighed", "differ", "extra", "optional",
  "stage", "hydration",
};

static GPtrArray *names;
static const char *folder;

static TrRecipe *
read_text (const char *text)
{
  g_autoptr (GError) error = NULL;
  TrRecipe *recipe = tr_recipe_read (text, strlen (text), NULL, &error);

  g_assert_no_error (error);
  return recipe;
}

static void
append_line (GString            *out,
             const TrRecipeLine *line)
{
  g_string_append_printf (out, "%s | %s | %s", line->is_in_dough ? tr_stage_id (line->stage) : "aside",
                          line->ingredient != NULL ? line->ingredient : "?", line->amount);
  for (guint i = 0; i < line->flags->len; i++)
    g_string_append_printf (out, "%s%s", i == 0 ? " | " : " ", flag_marks[((TrRecipeFlag *) line->flags->pdata[i])->id]);
  g_string_append_c (out, '\n');
}

static char *
dup_compact (const TrRecipe *recipe)
{
  GString *out = g_string_new (NULL);

  g_string_append_printf (out, "%s | %d | %s\n", recipe->title, recipe->pieces, tr_kind_id (recipe->kind));
  for (guint i = 0; i < recipe->lines->len; i++)
    append_line (out, tr_recipe_get_line (recipe, i));
  return g_string_free (out, FALSE);
}

/* The text as one run of words, so that layout makes no difference. */
static char *
dup_words (const char *text)
{
  GString *out = g_string_new (" ");

  for (const char *p = text; *p != '\0'; p++)
    if (!g_ascii_isspace (*p))
      g_string_append_c (out, *p);
    else if (out->str[out->len - 1] != ' ')
      g_string_append_c (out, ' ');
  return g_string_free (out, FALSE);
}

/* Every line of a plain text is in the dough's lines or in its notes. */
static void
check_nothing_lost (const TrRecipe *recipe,
                    const char     *text)
{
  g_autoptr (TrDough) dough = tr_recipe_make_dough (recipe, "d1");
  g_autoptr (GString) kept = g_string_new (dough->notes);
  g_auto (GStrv) lines = g_strsplit_set (text, "\r\n", -1);
  g_autofree char *words = NULL;

  for (guint i = 0; i < dough->lines->len; i++)
    g_string_append_printf (kept, "\n%s", tr_dough_get_line (dough, i)->text);
  words = dup_words (kept->str);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_autofree char *line = dup_words (g_strstrip (lines[i]));
      gboolean has_word = FALSE;

      for (const char *p = line; *p != '\0'; p++)
        has_word |= g_ascii_isalnum (*p);
      if (has_word && strstr (words, g_strstrip (line)) == NULL)
        g_error ("lost: %s", line);
    }
}

static void
check_valid (const TrRecipe *recipe)
{
  g_autoptr (TrTrial) trial = tr_recipe_make_trial (recipe);
  g_autoptr (TrTrial) again = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  gsize length;

  tr_trial_validate (trial, &error);
  g_assert_no_error (error);
  text = tr_trial_write (trial, &length);
  again = tr_trial_read (text, length, &error);
  g_assert_no_error (error);
}

static void
test_text (gconstpointer data)
{
  const char *name = data;
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autofree char *stem = g_strndup (name, (gsize) (strrchr (name, '.') - name));
  g_autofree char *expected_name = g_strconcat (stem, ".expected", NULL);
  g_autofree char *expected_path = g_build_filename (folder, expected_name, NULL);
  g_autofree char *text = NULL, *expected = NULL, *got = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (TrRecipe) recipe = NULL;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  g_file_get_contents (expected_path, &expected, NULL, &error);
  g_assert_no_error (error);
  recipe = read_text (text);
  got = dup_compact (recipe);
  g_assert_cmpstr (got, ==, expected);
  check_valid (recipe);
  if (g_str_has_suffix (name, ".txt"))
    check_nothing_lost (recipe, text);
}

/* Ingredients that the table does not hold (cardamom, jam) count as not understood, and so do the amounts that are broken on purpose. */
static void
test_share (void)
{
  guint n_lines_all = 0, n_understood_all = 0;

  for (guint i = 0; i < names->len; i++)
    {
      g_autofree char *path = g_build_filename (folder, names->pdata[i], NULL);
      g_autofree char *text = NULL;
      g_autoptr (TrRecipe) recipe = NULL;
      guint n_lines;

      g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
      recipe = read_text (text);
      n_understood_all += tr_recipe_count_understood (recipe, &n_lines);
      n_lines_all += n_lines;
    }
  g_test_message ("understood: %u of %u lines, %.1f %%", n_understood_all, n_lines_all, 100.0 * n_understood_all / n_lines_all);
  g_assert_cmpuint (n_lines_all, >, 300);
  g_assert_cmpuint (n_understood_all * 100, >=, n_lines_all * 94);
}

static void
test_refusals (void)
{
  static const struct { const char *bytes; gsize length; TrRecipeError code; } cases[] = {
    { "", 0, TR_RECIPE_ERROR_EMPTY }, { " \n\t\xC2\xA0\n", 6, TR_RECIPE_ERROR_EMPTY },
    { "\x89PNG\r\n\x1a\n\0\0\0\rIHDR", 16, TR_RECIPE_ERROR_NOT_TEXT }, { "\xFF\xFE\0\0", 4, TR_RECIPE_ERROR_NOT_TEXT },
    { "<html><body><p>Good morning.</p></body></html>", 46, TR_RECIPE_ERROR_NO_RECIPE },
    { "The ferry leaves at nine.", 25, TR_RECIPE_ERROR_NO_RECIPE },
    { "{\"@type\": \"Person\", \"name\": \"x\"}", 32, TR_RECIPE_ERROR_NO_RECIPE },
    { "{\"@type\": \"Recipe\", }}", 22, TR_RECIPE_ERROR_NO_RECIPE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (tr_recipe_read (cases[i].bytes, cases[i].length, NULL, &error));
      g_assert_error (error, TR_RECIPE_ERROR, (int) cases[i].code);
      g_assert_true (g_utf8_validate (error->message, -1, NULL));
    }
}

/* A choice changes what it says it changes, and nothing else. */
static void
test_choices (void)
{
  g_autoptr (TrRecipe) recipe = read_text ("500 flour\n250 g butter\n7 g yeast\n2 handfuls of sugar\n");
  g_autoptr (TrDough) dough = NULL;

  g_assert_cmpuint (tr_recipe_count_understood (recipe, NULL), ==, 3);
  tr_recipe_choose (recipe, 0, 1, 0);
  g_assert_cmpstr (tr_recipe_get_line (recipe, 0)->amount, ==, "500 g");
  g_assert_cmpuint (tr_recipe_count_understood (recipe, NULL), ==, 4);
  tr_recipe_choose (recipe, 1, 0, 0);
  g_assert_cmpstr (tr_recipe_get_line (recipe, 1)->ingredient, ==, "butter-salted");
  tr_recipe_set_stage (recipe, 1, TR_STAGE_ROLL_IN);
  tr_recipe_set_in_dough (recipe, 3, FALSE);
  dough = tr_recipe_make_dough (recipe, "d7");
  g_assert_cmpuint (dough->lines->len, ==, 3);
  g_assert_nonnull (dough->lock_in);
  g_assert_nonnull (strstr (dough->notes, "2 handfuls of sugar"));
}

/* The quicker of two readings, in µs. */
static gint64
time_reading (const char *text,
              gsize       size)
{
  gint64 best = G_MAXINT64;

  for (guint times = 0; times < 2; times++)
    {
      g_autoptr (GError) error = NULL;
      gint64 start = g_get_monotonic_time ();
      TrRecipe *recipe = tr_recipe_read (text, size, NULL, &error);

      best = MIN (best, g_get_monotonic_time () - start);
      g_assert_true ((recipe != NULL) != (error != NULL));
      tr_recipe_free (recipe);
    }

  return best;
}

/* Four times the bytes take about four times as long: sixteen would be their
 * square. Of each kind what is read, and what is refused as too long. */
static void
test_long_input_is_fast (void)
{
  static const char *const units[] = { "500 g flour, ", "<a ", "((1 ", "1 x ", "\xC2\xBD", "<script>", "Butter:\n", "&#;", "{\"a\":[" };
  static const gsize sizes[] = { 5 * 1024 * 1024, 1000 * 1024 };

  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    {
      g_autoptr (GString) text = g_string_new (NULL);

      while (text->len < 5 * 1024 * 1024)
        g_string_append (text, units[i]);
      for (gsize k = 0; k < G_N_ELEMENTS (sizes); k++)
        {
          gint64 quarter = time_reading (text->str, sizes[k] / 4), whole = time_reading (text->str, sizes[k]);

          g_test_message ("%s: %" G_GINT64_FORMAT " µs, a quarter of it %" G_GINT64_FORMAT " µs", units[i], whole, quarter);
          /* Next to nothing is not measured. */
          g_assert_cmpint (whole, <, 10 * MAX (quarter, 5000));
        }
    }
}

/* Random lines out of the words of recipes: nothing is lost, all is valid. */
static void
test_nothing_is_lost (void)
{
  static const char *const words[] = {
    "500", "g", "flour", "1/2", "cup", "butter", ",", "(", ")", "plus", "more", "for", "dusting", "For", "the", "poolish:", "\n",
    "\n", "\n", "Method", "2", "eggs", "with", "or", "salt", "|", "%", "Makes", "12", "½", "x", "-", "\t", "unsalted", "milk", "yeast",
    "7 g", "sachet", "Ingredients", ".", "tsp", "350-375", "ml", "block", "Total", "é", "1.", "•", "a", "knob", "of",
  };

  for (guint run = 0; run < 3000; run++)
    {
      g_autoptr (GString) text = g_string_new (NULL);
      g_autoptr (GError) error = NULL;
      g_autoptr (TrRecipe) recipe = NULL;

      for (int n = g_test_rand_int_range (1, 60); n > 0; n--)
        g_string_append_printf (text, "%s ", words[g_test_rand_int_range (0, G_N_ELEMENTS (words))]);
      recipe = tr_recipe_read (text->str, text->len, "hint.txt", &error);
      if (recipe == NULL)
        continue;
      check_nothing_lost (recipe, text->str);
      check_valid (recipe);
    }
}

/* What only recipes count in, against GNU Units 2.22: pint, quart and gallon are
 * the US liquid measures of NIST Handbook 44, appendix C. */
static void
test_odd_units (void)
{
  static const struct { const char *line, *have; } cases[] = {
    { "1 pint whole milk", "1 pint" }, { "2 quarts water", "2 quart" }, { "1/2 gallon water", "0.5 gallon" },
    { "1 dessertspoon honey", "2 teaspoon" }, { "3 tblsp honey", "3 tablespoon" }, { "1 C water", "1 cup" },
    { "2 T honey", "2 tablespoon" }, { "2 t honey", "2 teaspoon" }, { "half a pint of water", "0.5 pint" },
  };
  g_autofree char *units = g_find_program_in_path ("units");

  if (units == NULL)
    {
      g_test_skip ("GNU units is not installed");
      return;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const char *argv[] = { units, "-t", "-o", "%.17g", cases[i].have, "ml", NULL };
      g_autoptr (TrRecipe) recipe = read_text (cases[i].line);
      g_autofree char *out = NULL;
      TrAmount amount;
      double ml;

      g_assert_true (g_spawn_sync (NULL, (char **) argv, NULL, 0, NULL, NULL, &out, NULL, NULL, NULL));
      ml = g_ascii_strtod (out, NULL);
      g_assert_cmpfloat (ml, >, 0);
      g_assert_true (tr_amount_parse (tr_recipe_get_line (recipe, 0)->amount, &amount, NULL));
      g_assert_cmpfloat_with_epsilon (amount.parts[0].number * tr_unit_ml (amount.parts[0].unit), ml, ml * 1e-8);
    }
}

static void
test_no_title_takes_the_name (void)
{
  static const char text[] = "500 g flour\n";
  g_autoptr (TrRecipe) recipe = tr_recipe_read (text, strlen (text), "some/folder/Harbour rolls.txt", NULL);

  g_assert_cmpstr (recipe->title, ==, "Harbour rolls");
}

static int
compare_names (gconstpointer a,
               gconstpointer b)
{
  return strcmp (*(char *const *) a, *(char *const *) b);
}

static void
add_texts (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GDir) dir = g_dir_open (folder, 0, &error);
  const char *name;

  g_assert_no_error (error);
  while ((name = g_dir_read_name (dir)) != NULL)
    if (!g_str_has_suffix (name, ".expected"))
      g_ptr_array_add (names, g_strdup (name));
  g_ptr_array_sort (names, compare_names);
  g_assert_cmpuint (names->len, >=, 40);
  for (guint i = 0; i < names->len; i++)
    {
      g_autofree char *path = g_strdup_printf ("/recipe/texts/%s", (char *) names->pdata[i]);

      g_test_add_data_func (path, names->pdata[i], test_text);
    }
}

static int
print (const char *path)
{
  g_autofree char *text = NULL, *compact = NULL;
  g_autoptr (TrRecipe) recipe = NULL;
  gsize length;

  if (!g_file_get_contents (path, &text, &length, NULL) || (recipe = tr_recipe_read (text, length, NULL, NULL)) == NULL)
    return 1;
  compact = dup_compact (recipe);
  fputs (compact, stdout);
  return 0;
}

int
main (int   argc,
      char *argv[])
{
  if (argc == 3 && strcmp (argv[1], "--print") == 0)
    return print (argv[2]);
  g_test_init (&argc, &argv, NULL);
  g_assert_cmpint (argc, ==, 2);
  folder = argv[1];
  names = g_ptr_array_new_with_free_func (g_free);
  add_texts ();
  g_test_add_func ("/recipe/share-understood", test_share);
  g_test_add_func ("/recipe/refusals-say-what-was-expected", test_refusals);
  g_test_add_func ("/recipe/a-choice-changes-the-line", test_choices);
  g_test_add_func ("/recipe/long-input-is-fast", test_long_input_is_fast);
  g_test_add_func ("/recipe/nothing-is-lost", test_nothing_is_lost);
  g_test_add_func ("/recipe/odd-units-are-what-gnu-units-says", test_odd_units);
  g_test_add_func ("/recipe/no-title-takes-the-name", test_no_title_takes_the_name);
  int status = g_test_run ();

  g_ptr_array_unref (names);
  return status;
}
