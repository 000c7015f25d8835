/* test-fresh.c: recipes whose right reading was written down before they were read
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   test-fresh FOLDER    FOLDER holds NAME.txt (or .html, .json) and NAME.truth
 *
 * The texts are invented, wording and all. A truth says "pieces N" and then of
 * every line its stage, ingredient and grams, worked out by hand from the text
 * and the household weights of the table: "?" is what cannot be known, "none"
 * that nothing is weighed, "40%" a percent, and "| flag" that the reader has to
 * be told what was chosen.
 */

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "recipe/item.h"
#include "recipe/recipe.h"

#define GRAMS_OFF 0.02           /* of a truth that is rounded to what a scale shows */

static const char *folder;
static GPtrArray *names;
static guint n_lines, n_right;

static gboolean
is_amount_right (const TrRecipeLine *line,
                 const char         *truth)
{
  double grams = line->ingredient != NULL ? tr_recipe_line_weigh (line) : NAN;
  double expected = g_ascii_strtod (truth, NULL);
  TrAmount amount;

  if (g_str_equal (truth, "?"))
    return line->why != NULL;
  if (g_str_equal (truth, "none"))
    return isnan (grams);
  if (g_str_has_suffix (truth, "%"))
    return tr_amount_parse (line->amount, &amount, NULL) && tr_unit_is_percent (amount.parts[0].unit) &&
           fabs (amount.parts[0].number - expected) < 1e-9;
  return fabs (grams - expected) <= GRAMS_OFF * expected;
}

static gboolean
is_right (const TrRecipeLine *line,
          const char         *truth)
{
  g_auto (GStrv) parts = g_strsplit (truth, " | ", -1);
  guint n = g_strv_length (parts);
  const char *stage = line->is_in_dough ? tr_stage_id (line->stage) : "aside";

  g_assert_cmpuint (n, >=, 3);
  return g_str_equal (stage, parts[0]) &&
         (g_str_equal (parts[1], "?") ? line->why != NULL : g_strcmp0 (line->ingredient, parts[1]) == 0) &&
         (g_str_equal (parts[2], "?") || line->why == NULL) &&
         is_amount_right (line, parts[2]) && (n == 3 || line->flags->len > 0);
}

static void
test_text (gconstpointer data)
{
  const char *name = data;
  g_autofree char *stem = g_strndup (name, (gsize) (strrchr (name, '.') - name));
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autofree char *truth_path = g_strdup_printf ("%s/%s.truth", folder, stem);
  g_autofree char *text = NULL, *truth = NULL, *account = NULL;
  g_auto (GStrv) wanted = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (TrRecipe) recipe = NULL;
  gboolean is_all_right = TRUE;
  gsize length;
  guint n;

  g_file_get_contents (path, &text, &length, &error);
  g_assert_no_error (error);
  g_file_get_contents (truth_path, &truth, NULL, &error);
  g_assert_no_error (error);
  wanted = g_strsplit (g_strstrip (truth), "\n", -1);
  n = g_strv_length (wanted) - 1;
  n_lines += n;
  recipe = tr_recipe_read (text, length, NULL, &error);
  if (recipe == NULL)
    {
      g_printerr ("%s: %s\n", name, error->message);
      g_test_fail ();
      return;
    }
  for (guint i = 0; i < MAX (n, recipe->lines->len); i++)
    if (i < n && i < recipe->lines->len && is_right (tr_recipe_get_line (recipe, i), wanted[i + 1]))
      n_right++;
    else
      {
        const TrRecipeLine *line = i < recipe->lines->len ? tr_recipe_get_line (recipe, i) : NULL;

        is_all_right = FALSE;
        g_printerr ("%s: wanted “%s”, got “%s | %s | %s” (%g g, %u flags) of “%s”\n", name, i < n ? wanted[i + 1] : "nothing",
                    line == NULL ? "nothing" : line->is_in_dough ? tr_stage_id (line->stage) : "aside",
                    line != NULL && line->ingredient != NULL ? line->ingredient : "?", line != NULL ? line->amount : "",
                    line != NULL && line->ingredient != NULL ? tr_recipe_line_weigh (line) : NAN,
                    line != NULL ? line->flags->len : 0, line != NULL ? line->text : "");
      }
  account = g_strdup_printf ("pieces %d", recipe->pieces);
  if (!g_str_equal (account, wanted[0]))
    g_printerr ("%s: wanted “%s”, got “%s”\n", name, wanted[0], account);
  if (!is_all_right || !g_str_equal (account, wanted[0]))
    g_test_fail ();
}

static void
test_share (void)
{
  g_test_message ("right by the truths written first: %u of %u lines, %.1f %%", n_right, n_lines, 100.0 * n_right / n_lines);
  g_assert_cmpuint (n_lines, >, 600);
}

static int
compare_names (gconstpointer a,
               gconstpointer b)
{
  return strcmp (*(char *const *) a, *(char *const *) b);
}

int
main (int   argc,
      char *argv[])
{
  g_autoptr (GDir) dir = NULL;
  const char *name;
  int status;

  g_test_init (&argc, &argv, NULL);
  g_assert_cmpint (argc, ==, 2);
  folder = argv[1];
  names = g_ptr_array_new_with_free_func (g_free);
  dir = g_dir_open (folder, 0, NULL);
  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    if (!g_str_has_suffix (name, ".truth"))
      g_ptr_array_add (names, g_strdup (name));
  g_ptr_array_sort (names, compare_names);
  g_assert_cmpuint (names->len, >=, 40);
  for (guint i = 0; i < names->len; i++)
    {
      g_autofree char *path = g_strdup_printf ("/recipe/fresh/%s", (char *) names->pdata[i]);

      g_test_add_data_func (path, names->pdata[i], test_text);
    }
  g_test_add_func ("/recipe/fresh/share-right", test_share);
  status = g_test_run ();
  g_ptr_array_unref (names);
  return status;
}
