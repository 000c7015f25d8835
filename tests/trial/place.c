/* place.c: a folder for one case, and a document in it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "place.h"

#include <string.h>

#include <glib/gstdio.h>

#include "sample.h"

void
place_put (const char *path,
           const char *text)
{
  g_autoptr (GError) error = NULL;

  g_file_set_contents (path, text, -1, &error);
  g_assert_no_error (error);
}

char *
place_get (const char *path)
{
  g_autoptr (GError) error = NULL;
  char *text = NULL;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);

  return text;
}

char *
place_dup_path (Place      *place,
                const char *name)
{
  return g_build_filename (place->folder, name, NULL);
}

void
place_assert_holds (const char *path,
                    const char *piece)
{
  g_autofree char *text = place_get (path);

  g_assert_nonnull (strstr (text, piece));
}

GPtrArray *
place_list_names (const char *folder)
{
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    g_ptr_array_add (names, g_strdup (name));

  return names;
}

void
place_assert_n_files (const char *folder,
                      guint       n)
{
  g_autoptr (GPtrArray) names = place_list_names (folder);

  g_assert_cmpuint (names->len, ==, n);
}

static void
remove_tree (const char *path)
{
  g_autoptr (GPtrArray) names = NULL;

  if (g_file_test (path, G_FILE_TEST_IS_DIR) && !g_file_test (path, G_FILE_TEST_IS_SYMLINK))
    {
      names = place_list_names (path);
      for (guint i = 0; i < names->len; i++)
        {
          g_autofree char *inner = g_build_filename (path, g_ptr_array_index (names, i), NULL);

          remove_tree (inner);
        }
    }
  g_assert_cmpint (g_remove (path), ==, 0);
}

void
place_set_up (Place         *place,
              gconstpointer  data)
{
  place->folder = g_dir_make_tmp ("trial-XXXXXX", NULL);
  place->path = place_dup_path (place, "buns.tourier");
  place->file = g_file_new_for_path (place->path);
  place_put (place->path, sample_text);
}

void
place_tear_down (Place         *place,
                 gconstpointer  data)
{
  remove_tree (place->folder);
  g_free (place->folder);
  g_free (place->path);
  g_object_unref (place->file);
}

TrDocument *
document_open (GFile *file)
{
  g_autoptr (GError) error = NULL;
  TrDocument *document = tr_document_open (file, &error);

  g_assert_no_error (error);
  g_assert_nonnull (document);

  return document;
}

void
document_set_title (TrDocument *document,
                    const char *title)
{
  TrTrial *draft = tr_document_draft (document);

  tr_set_text (&draft->title, title);
  g_assert_true (tr_document_commit (document, draft, title, NULL, "/title", NULL));
}

void
document_save (TrDocument *document)
{
  g_autoptr (GError) error = NULL;
  gboolean is_saved = tr_document_save (document, FALSE, &error);

  g_assert_no_error (error);
  g_assert_true (is_saved);
}

void
document_assert_save_refused (TrDocument *document,
                              int         code)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (tr_document_save (document, FALSE, &error));
  g_assert_true (g_error_matches (error, TR_TRIAL_ERROR, code));
  g_assert_true (g_str_has_suffix (error->message, "."));
}

int
place_run_case (const char *before,
                const char *path,
                const char *folder,
                const char *file)
{
  g_auto (GStrv) environment = g_get_environ ();
  g_autofree char *program = g_shell_quote (g_getenv ("TRIAL_TEST_PROGRAM"));
  g_autofree char *command = g_strdup_printf ("%s exec %s -q -p %s", before, program, path);
  char *argv[] = { (char *) "/bin/sh", (char *) "-c", command, NULL };
  g_autoptr (GError) error = NULL;
  int status;

  environment = g_environ_setenv (environment, "TRIAL_TEST_FOLDER", folder, TRUE);
  environment = g_environ_setenv (environment, "TRIAL_TEST_FILE", file, TRUE);
  g_spawn_sync (NULL, argv, environment, G_SPAWN_STDOUT_TO_DEV_NULL | G_SPAWN_STDERR_TO_DEV_NULL,
                NULL, NULL, NULL, NULL, &status, &error);
  g_assert_no_error (error);

  return status;
}

gboolean
place_is_child (void)
{
  if (g_getenv ("TRIAL_TEST_FOLDER") != NULL)
    return TRUE;
  g_test_skip ("run by another case");

  return FALSE;
}
