/* replay.c: feeds a fuzz target with a folder of inputs, one test case each
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Stands in for the fuzzing engine, so that what was once found is tried in
 * every build, with and without sanitizers. A fault aborts.
 */

#include <glib.h>
#include <stddef.h>
#include <stdint.h>

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

static void
test_input (gconstpointer path)
{
  g_autofree char *bytes = NULL;
  g_autoptr (GError) error = NULL;
  gsize length = 0;

  g_file_get_contents (path, &bytes, &length, &error);
  g_assert_no_error (error);
  g_assert_cmpint (LLVMFuzzerTestOneInput ((const uint8_t *) bytes, length), ==, 0);
}

static int
compare_names (gconstpointer a,
               gconstpointer b)
{
  return g_strcmp0 (*(char *const *) a, *(char *const *) b);
}

/* Sorted, so that two runs say the same. */
static void
add_folder (const char *folder)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GDir) dir = g_dir_open (folder, 0, &error);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  const char *name;

  g_assert_no_error (error);
  while ((name = g_dir_read_name (dir)) != NULL)
    g_ptr_array_add (names, g_strdup (name));
  g_ptr_array_sort (names, compare_names);
  g_assert_cmpuint (names->len, >, 0);

  for (guint i = 0; i < names->len; i++)
    {
      g_autofree char *case_path = g_strdup_printf ("/fuzz/%s", (char *) g_ptr_array_index (names, i));

      g_test_add_data_func_full (case_path, g_build_filename (folder, g_ptr_array_index (names, i), NULL), test_input, g_free);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_assert_cmpint (argc, >, 1);
  for (int i = 1; i < argc; i++)
    add_folder (argv[i]);

  return g_test_run ();
}
