/* test-file.c: opening, saving, changes on disk, recovery copies
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every case has a folder of its own. Where no file can be made is played by a
 * folder that is none (a regular file), which stops root too.
 */

#include <errno.h>
#include <signal.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <glib/gstdio.h>

#include "sample.h"
#include "trial/document-private.h"
#include "trial/members.h"
#include "trial/recovery.h"

typedef struct {
  char *folder;
  char *path;                    /* of a saved sample */
  GFile *file;
} Place;

static void
put (const char *path,
     const char *text)
{
  g_autoptr (GError) error = NULL;

  g_file_set_contents (path, text, -1, &error);
  g_assert_no_error (error);
}

static char *
get (const char *path)
{
  g_autoptr (GError) error = NULL;
  char *text = NULL;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);

  return text;
}

static char *
in_place (Place      *place,
          const char *name)
{
  return g_build_filename (place->folder, name, NULL);
}

static void
assert_holds (const char *path,
              const char *piece)
{
  g_autofree char *text = get (path);

  g_assert_nonnull (strstr (text, piece));
}

static GPtrArray *
list_names (const char *folder)
{
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    g_ptr_array_add (names, g_strdup (name));

  return names;
}

static void
assert_n_files (const char *folder,
                guint       n)
{
  g_autoptr (GPtrArray) names = list_names (folder);

  g_assert_cmpuint (names->len, ==, n);
}

static void
remove_tree (const char *path)
{
  g_autoptr (GPtrArray) names = NULL;

  if (g_file_test (path, G_FILE_TEST_IS_DIR) && !g_file_test (path, G_FILE_TEST_IS_SYMLINK))
    {
      names = list_names (path);
      for (guint i = 0; i < names->len; i++)
        {
          g_autofree char *inner = g_build_filename (path, g_ptr_array_index (names, i), NULL);

          remove_tree (inner);
        }
    }
  g_assert_cmpint (g_remove (path), ==, 0);
}

static void
set_up (Place         *place,
        gconstpointer  data)
{
  place->folder = g_dir_make_tmp ("trial-XXXXXX", NULL);
  place->path = in_place (place, "buns.tourier");
  place->file = g_file_new_for_path (place->path);
  put (place->path, sample_text);
}

static void
tear_down (Place         *place,
           gconstpointer  data)
{
  remove_tree (place->folder);
  g_free (place->folder);
  g_free (place->path);
  g_object_unref (place->file);
}

static TrDocument *
open_file (GFile *file)
{
  g_autoptr (GError) error = NULL;
  TrDocument *document = tr_document_open (file, &error);

  g_assert_no_error (error);
  g_assert_nonnull (document);

  return document;
}

static void
set_title (TrDocument *document,
           const char *title)
{
  TrTrial *draft = tr_document_draft (document);

  tr_set_text (&draft->title, title);
  g_assert_true (tr_document_commit (document, draft, title, NULL, "/title", NULL));
}

static void
save (TrDocument *document)
{
  g_autoptr (GError) error = NULL;
  gboolean is_saved = tr_document_save (document, FALSE, &error);

  g_assert_no_error (error);
  g_assert_true (is_saved);
}

static void
assert_save_refused (TrDocument *document,
                     int         code)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (tr_document_save (document, FALSE, &error));
  g_assert_true (g_error_matches (error, TR_TRIAL_ERROR, code));
  g_assert_true (g_str_has_suffix (error->message, "."));
}

/* Opening */

static void
test_open (Place         *place,
           gconstpointer  data)
{
  g_autoptr (TrDocument) document = open_file (place->file);
  g_autofree char *name = tr_document_dup_display_name (document);

  g_assert_false (tr_document_is_modified (document));
  g_assert_false (tr_document_is_changed_on_disk (document));
  g_assert_true (g_file_equal (tr_document_get_file (document), place->file));
  g_assert_cmpstr (name, ==, "Lighthouse buns");
  set_title (document, "");
  g_autofree char *file_name = tr_document_dup_display_name (document);
  g_assert_cmpstr (file_name, ==, "buns.tourier");
}

static void
test_open_refused (Place         *place,
                   gconstpointer  data)
{
  g_autoptr (GFile) folder = g_file_new_for_path (place->folder);
  g_autoptr (GFile) nothing = g_file_get_child (folder, "nothing");
  g_autoptr (GFile) elsewhere = g_file_new_for_uri ("resource:///buns.tourier");
  g_autofree char *pipe_path = in_place (place, "pipe");
  g_autoptr (GFile) pipe = g_file_new_for_path (pipe_path);
  GFile *const files[] = { folder, nothing, elsewhere, pipe };

  g_assert_cmpint (mkfifo (pipe_path, 0600), ==, 0);
  for (guint i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (tr_document_open (files[i], &error));
      g_assert_nonnull (error);
      g_assert_true (g_str_has_suffix (error->message, "."));
      if (i == 1)
        g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
    }
}

static void
test_open_too_large (Place         *place,
                     gconstpointer  data)
{
  g_autofree char *spaces = g_strnfill (4 * 1024 * 1024, ' ');
  g_autofree char *text = g_strconcat (sample_text, spaces, NULL);
  g_autoptr (GError) error = NULL;

  put (place->path, text);
  g_assert_null (tr_trial_read_file (place->path, &error));
  g_assert_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_TOO_LARGE);
  g_assert_cmpstr (error->message, ==, "Expected at most 4194304 bytes (4 MiB), found more.");

  text[4 * 1024 * 1024] = '\0';
  put (place->path, text);
  g_clear_error (&error);
  g_autoptr (TrTrial) trial = tr_trial_read_file (place->path, &error);
  g_assert_no_error (error);
}

/* Saving */

static void
test_save (Place         *place,
           gconstpointer  data)
{
  g_autoptr (TrDocument) document = open_file (place->file);
  g_autofree char *backup = in_place (place, "buns.tourier~");

  set_title (document, "Second");
  g_assert_true (tr_document_is_modified (document));
  save (document);
  g_assert_false (tr_document_is_modified (document));
  g_assert_false (tr_document_is_changed_on_disk (document));
  assert_holds (place->path, "\"title\": \"Second\"");

  /* what was there when it was opened stays in the backup */
  set_title (document, "Third");
  save (document);
  assert_holds (place->path, "\"title\": \"Third\"");
  assert_holds (backup, "\"title\": \"Lighthouse buns\"");
  assert_n_files (place->folder, 2);

  tr_document_undo (document);
  g_assert_true (tr_document_is_modified (document));
  tr_document_redo (document);
  g_assert_false (tr_document_is_modified (document));
}

static void
test_mode_kept (Place         *place,
                gconstpointer  data)
{
  g_autoptr (TrDocument) document = NULL;
  struct stat info;

  g_assert_cmpint (g_chmod (place->path, 0640), ==, 0);
  document = open_file (place->file);
  set_title (document, "Second");
  save (document);
  g_assert_cmpint (g_stat (place->path, &info), ==, 0);
  g_assert_cmpint (info.st_mode & 07777, ==, 0640);
}

static void
test_link_survives (Place         *place,
                    gconstpointer  data)
{
  g_autofree char *inner = in_place (place, "shelf");
  g_autofree char *link = in_place (place, "shelf/today.tourier");
  g_autofree char *backup = in_place (place, "buns.tourier~");
  g_autoptr (GFile) file = g_file_new_for_path (link);
  g_autoptr (TrDocument) document = NULL;

  g_assert_cmpint (g_mkdir (inner, 0700), ==, 0);
  g_assert_cmpint (symlink ("../buns.tourier", link), ==, 0);
  document = open_file (file);
  set_title (document, "Through the link");
  save (document);

  g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  assert_holds (place->path, "Through the link");
  assert_holds (backup, "Lighthouse buns");
  assert_n_files (inner, 1);
}

static void
test_link_to_nothing_yet (Place         *place,
                          gconstpointer  data)
{
  g_autofree char *link = in_place (place, "link.tourier");
  g_autofree char *target = in_place (place, "new.tourier");
  g_autoptr (GFile) file = g_file_new_for_path (link);
  g_autoptr (TrDocument) document = tr_document_new ();
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (symlink ("new.tourier", link), ==, 0);
  g_assert_true (tr_document_save_as (document, file, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  assert_holds (target, "tourier-trial");
}

/* Nothing is written where it could not be taken back: the old file is as it
 * was, nothing lies beside it, and the document is still modified. */
static void
test_no_place_for_a_temporary (Place         *place,
                               gconstpointer  data)
{
  g_autofree char *below = in_place (place, "buns.tourier/below.tourier");
  g_autofree char *missing = in_place (place, "missing/below.tourier");
  const char *const paths[] = { below, missing };

  for (guint i = 0; i < G_N_ELEMENTS (paths); i++)
    {
      g_autoptr (GFile) file = g_file_new_for_path (paths[i]);
      g_autoptr (TrDocument) document = open_file (place->file);
      g_autoptr (GError) error = NULL;

      set_title (document, "Second");
      g_assert_false (tr_document_save_as (document, file, &error));
      g_assert_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_NO_TEMPORARY);
      g_assert_true (g_str_has_suffix (error->message, "Nothing was changed."));
      g_assert_true (tr_document_is_modified (document));
      g_assert_true (g_file_equal (tr_document_get_file (document), place->file));
    }
  assert_holds (place->path, "Lighthouse buns");
  assert_n_files (place->folder, 1);
}

/* Renaming would go over these; writing would not. */
static void
test_not_a_regular_file (Place         *place,
                         gconstpointer  data)
{
  g_autofree char *folder = in_place (place, "folder.tourier");
  g_autofree char *loop = in_place (place, "loop.tourier");
  g_autofree char *pipe = in_place (place, "pipe.tourier");
  const char *const paths[] = { folder, loop, pipe };

  g_assert_cmpint (g_mkdir (folder, 0700), ==, 0);
  g_assert_cmpint (symlink ("loop.tourier", loop), ==, 0);
  g_assert_cmpint (mkfifo (pipe, 0600), ==, 0);
  for (guint i = 0; i < G_N_ELEMENTS (paths); i++)
    {
      g_autoptr (GFile) file = g_file_new_for_path (paths[i]);
      g_autoptr (TrDocument) document = tr_document_new ();
      g_autoptr (GError) error = NULL;

      g_assert_false (tr_document_save_as (document, file, &error));
      g_assert_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_NO_TEMPORARY);
    }
  g_assert_true (g_file_test (folder, G_FILE_TEST_IS_DIR));
  g_assert_true (g_file_test (loop, G_FILE_TEST_IS_SYMLINK));
  assert_n_files (place->folder, 4);
}

/* Root may write anywhere, so this says something only to others. */
static void
test_read_only (Place         *place,
                gconstpointer  data)
{
  g_autoptr (TrDocument) document = open_file (place->file);

  if (geteuid () == 0)
    {
      g_test_skip ("root may write to read-only files");
      return;
    }
  g_assert_cmpint (g_chmod (place->path, 0444), ==, 0);
  set_title (document, "Second");
  assert_save_refused (document, TR_TRIAL_ERROR_NO_TEMPORARY);
  assert_holds (place->path, "Lighthouse buns");
}

/* A full device is found out before the old file is gone. /dev/full stands for
 * it: Linux, full(4). */
static void
test_full_device (Place         *place,
                  gconstpointer  data)
{
  g_autoptr (TrDocument) document = tr_document_new ();
  g_autoptr (GFile) full = g_file_new_for_path ("/dev/full");
  g_autoptr (GError) error = NULL;
  struct stat info;

  if (g_stat ("/dev/full", &info) != 0)
    {
      g_test_skip ("no /dev/full");
      return;
    }
  g_assert_false (tr_document_save_as (document, full, &error));
  g_assert_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_NO_TEMPORARY);
  g_assert_cmpint (g_stat ("/dev/full", &info), ==, 0);
  g_assert_true (S_ISCHR (info.st_mode));
}

/* Runs one case of this program in a shell, for what only another process can
 * do; `before` goes before it on the command line. Returns the wait status. */
static int
run_case (const char *before,
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

/* The size a process may write is limited in a child: the write fails half way. */
static void
test_write_fails_half_way (Place         *place,
                           gconstpointer  data)
{
  int status = run_case ("ulimit -f 1; trap '' XFSZ;", "/trial/file/child/save", place->folder, place->path);

  g_assert_cmpint (status, ==, 0);
  assert_holds (place->path, "Lighthouse buns");
  assert_n_files (place->folder, 1);
}

static gboolean
is_child (void)
{
  if (g_getenv ("TRIAL_TEST_FOLDER") != NULL)
    return TRUE;
  g_test_skip ("run by another case");

  return FALSE;
}

static void
test_child_save (void)
{
  g_autoptr (GFile) file = NULL;
  g_autoptr (TrDocument) document = NULL;
  g_autoptr (GError) error = NULL;

  if (!is_child ())
    return;
  file = g_file_new_for_path (g_getenv ("TRIAL_TEST_FILE"));
  document = open_file (file);
  set_title (document, "Second");
  g_assert_false (tr_document_save (document, FALSE, &error));
  g_assert_error (error, G_FILE_ERROR, (int) g_file_error_from_errno (EFBIG));
  g_assert_true (tr_document_is_modified (document));
}

static void
test_save_as (Place         *place,
              gconstpointer  data)
{
  g_autoptr (TrDocument) document = open_file (place->file);
  g_autofree char *other_path = in_place (place, "other.tourier");
  g_autofree char *backup = in_place (place, "other.tourier~");
  g_autoptr (GFile) other = g_file_new_for_path (other_path);
  g_autoptr (GError) error = NULL;
  struct stat info;
  mode_t mask = umask (0027);

  put (other_path, "what was there");
  set_title (document, "Second");
  g_assert_true (tr_document_save_as (document, other, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_equal (tr_document_get_file (document), other));
  assert_holds (place->path, "Lighthouse buns");
  assert_holds (other_path, "Second");
  assert_holds (backup, "what was there");

  /* a new file has the mode that any program's would have */
  g_autofree char *new_path = in_place (place, "new.tourier");
  g_autoptr (GFile) new_file = g_file_new_for_path (new_path);
  g_assert_true (tr_document_save_as (document, new_file, &error));
  g_assert_cmpint (g_stat (new_path, &info), ==, 0);
  g_assert_cmpint (info.st_mode & 07777, ==, 0640);
  umask (mask);
}

/* A name that leaves no room for more letters in it. */
static void
test_longest_name (Place         *place,
                   gconstpointer  data)
{
  g_autofree char *name = g_strnfill (255, 'n');
  g_autofree char *path = in_place (place, name);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (TrDocument) document = tr_document_new ();
  g_autoptr (GError) error = NULL;

  g_assert_true (tr_document_save_as (document, file, &error));
  g_assert_no_error (error);
  set_title (document, "Second");
  g_assert_true (tr_document_save (document, FALSE, &error));   /* has no backup: no name for it */
  g_assert_no_error (error);
}

/* What was left by a program that was killed while it saved is in nobody's way. */
static void
test_killed_while_saving (Place         *place,
                          gconstpointer  data)
{
  g_autofree char *left = in_place (place, ".tourier-aBcDeF");
  g_autoptr (TrDocument) document = NULL;

  put (left, "{\"format\": \"tour");
  document = open_file (place->file);
  set_title (document, "Second");
  save (document);
  assert_holds (place->path, "Second");
  assert_holds (left, "{\"format\": \"tour");
}

/* Changes on disk */

static void
test_changed_on_disk (Place         *place,
                      gconstpointer  data)
{
  g_autoptr (TrDocument) document = open_file (place->file);
  g_autofree char *backup = in_place (place, "buns.tourier~");
  g_autoptr (GError) error = NULL;

  set_title (document, "Mine");
  put (place->path, "theirs");
  g_assert_true (tr_document_is_changed_on_disk (document));
  assert_save_refused (document, TR_TRIAL_ERROR_CHANGED_ON_DISK);
  g_assert_true (tr_document_is_modified (document));
  assert_holds (place->path, "theirs");

  g_assert_true (tr_document_save (document, TRUE, &error));
  g_assert_no_error (error);
  assert_holds (place->path, "Mine");
  assert_holds (backup, "theirs");
  g_assert_false (tr_document_is_changed_on_disk (document));
}

/* The same length within the same second: the inode and the nanoseconds tell. */
static void
test_changed_to_the_same_size (Place         *place,
                               gconstpointer  data)
{
  g_autoptr (TrDocument) document = open_file (place->file);
  g_autofree char *text = g_strdup (sample_text);

  *strstr (text, "Lighthouse") = 'l';
  put (place->path, text);
  set_title (document, "Mine");
  assert_save_refused (document, TR_TRIAL_ERROR_CHANGED_ON_DISK);
}

static void
test_vanished (Place         *place,
               gconstpointer  data)
{
  g_autoptr (TrDocument) document = open_file (place->file);
  g_autoptr (GError) error = NULL;

  set_title (document, "Mine");
  g_assert_cmpint (g_unlink (place->path), ==, 0);
  g_assert_false (tr_document_save (document, FALSE, &error));
  g_assert_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_CHANGED_ON_DISK);
  g_assert_cmpstr (error->message, ==, "“buns.tourier” is no longer where it was opened.");
  g_clear_error (&error);
  g_assert_true (tr_document_save (document, TRUE, &error));
  g_assert_no_error (error);
  assert_holds (place->path, "Mine");
}

static void
test_two_documents (Place         *place,
                    gconstpointer  data)
{
  g_autoptr (TrDocument) first = open_file (place->file);
  g_autoptr (TrDocument) second = open_file (place->file);
  g_autoptr (GError) error = NULL;

  set_title (first, "First");
  set_title (second, "Second");
  save (first);
  assert_save_refused (second, TR_TRIAL_ERROR_CHANGED_ON_DISK);
  assert_holds (place->path, "First");

  g_assert_true (tr_document_reload (second, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (tr_document_get_trial (second)->title, ==, "First");
  set_title (second, "Second");
  save (second);
  assert_save_refused (first, TR_TRIAL_ERROR_CHANGED_ON_DISK);
}

static void
test_reload_can_be_undone (Place         *place,
                           gconstpointer  data)
{
  g_autoptr (TrDocument) document = open_file (place->file);
  g_autofree char *theirs = g_strdup (sample_text);
  g_autoptr (GError) error = NULL;

  set_title (document, "Mine");
  *strstr (theirs, "Lighthouse") = 'l';
  put (place->path, theirs);
  g_assert_true (tr_document_reload (document, &error));
  g_assert_cmpstr (tr_document_get_trial (document)->title, ==, "lighthouse buns");
  g_assert_false (tr_document_is_modified (document));
  tr_document_undo (document);
  g_assert_cmpstr (tr_document_get_trial (document)->title, ==, "Mine");
  g_assert_true (tr_document_is_modified (document));

  put (place->path, "{");
  g_assert_false (tr_document_reload (document, &error));
  g_assert_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_FORMAT);
  g_assert_cmpstr (tr_document_get_trial (document)->title, ==, "Mine");
}

static void
document_file_changed_cb (TrDocument *document,
                          guint      *n)
{
  (*n)++;
}

static gboolean
timed_out_cb (gpointer data)
{
  *(gboolean *) data = TRUE;

  return G_SOURCE_CONTINUE;
}

/* Runs the main loop until there were `n` signals, or for `ms`. */
static void
wait_for (guint       *count,
          guint        n,
          guint        ms)
{
  gboolean is_late = FALSE;
  guint source = g_timeout_add (ms, timed_out_cb, &is_late);

  while (*count < n && !is_late)
    g_main_context_iteration (NULL, TRUE);
  g_source_remove (source);
}

/* Announced once a change, also through a link, never for a save of our own. */
static void
test_file_changed (Place         *place,
                   gconstpointer  data)
{
  g_autofree char *link = in_place (place, "link.tourier");
  g_autoptr (GFile) file = g_file_new_for_path (link);
  g_autoptr (TrDocument) document = NULL;
  guint n = 0;

  g_assert_cmpint (symlink ("buns.tourier", link), ==, 0);
  document = open_file (file);
  g_signal_connect (document, "file-changed", G_CALLBACK (document_file_changed_cb), &n);

  set_title (document, "Mine");
  save (document);
  wait_for (&n, 1, 400);
  g_assert_cmpuint (n, ==, 0);

  put (place->path, "theirs");
  wait_for (&n, 1, 5000);
  g_assert_cmpuint (n, ==, 1);
  wait_for (&n, 2, 400);
  g_assert_cmpuint (n, ==, 1);

  g_assert_cmpint (g_unlink (place->path), ==, 0);
  wait_for (&n, 2, 5000);
  g_assert_cmpuint (n, ==, 2);
}

/* Recovery */

static GFile *
recovery_folder (Place *place)
{
  g_autofree char *path = in_place (place, "state/tourier");

  return g_file_new_for_path (path);
}

static char *
dup_only_copy (GFile *folder)
{
  g_autofree char *path = g_file_get_path (folder);
  g_autoptr (GPtrArray) names = list_names (path);

  g_assert_cmpuint (names->len, ==, 1);

  return g_build_filename (path, g_ptr_array_index (names, 0), NULL);
}

static void
test_recovery_copy_lives_with_the_edit (Place         *place,
                                        gconstpointer  data)
{
  g_autoptr (GFile) folder = recovery_folder (place);
  g_autofree char *folder_path = g_file_get_path (folder);
  g_autoptr (TrDocument) document = open_file (place->file);
  struct stat info;

  tr_document_set_recovery_folder (document, folder);
  tr_document_write_recovery (document);           /* nothing unsaved */
  assert_n_files (folder_path, 0);

  set_title (document, "Unsaved");
  tr_document_write_recovery (document);
  g_autofree char *copy = dup_only_copy (folder);
  assert_holds (copy, "Unsaved");
  g_assert_cmpint (g_stat (copy, &info), ==, 0);
  g_assert_cmpint (info.st_mode & 07777, ==, 0600);

  set_title (document, "Still unsaved");
  tr_document_write_recovery (document);
  assert_holds (copy, "Still unsaved");
  assert_n_files (folder_path, 1);

  save (document);
  assert_n_files (folder_path, 0);

  set_title (document, "Again");
  tr_document_write_recovery (document);
  assert_n_files (folder_path, 1);
  tr_document_undo (document);                     /* back to what is on disk */
  tr_document_write_recovery (document);
  assert_n_files (folder_path, 0);
}

static void
test_living_are_not_listed (Place         *place,
                            gconstpointer  data)
{
  g_autoptr (GFile) folder = recovery_folder (place);
  g_autoptr (TrDocument) document = tr_document_new ();
  g_autoptr (GPtrArray) none = tr_recovery_list (folder);

  g_assert_cmpuint (none->len, ==, 0);
  tr_document_set_recovery_folder (document, folder);
  set_title (document, "Unsaved");
  tr_document_write_recovery (document);
  g_autofree char *copy = dup_only_copy (folder);
  g_autoptr (GPtrArray) list = tr_recovery_list (folder);
  g_assert_cmpuint (list->len, ==, 0);
  tr_document_discard_recovery (document);
  g_assert_false (g_file_test (copy, G_FILE_TEST_EXISTS));
}

/* A child edits, is killed without a word, and its work comes back here. */
static void
test_child_edit (void)
{
  g_autoptr (GFile) folder = NULL;
  g_autoptr (TrDocument) document = NULL;
  const char *path = g_getenv ("TRIAL_TEST_FILE");

  if (!is_child ())
    return;
  folder = g_file_new_for_path (g_getenv ("TRIAL_TEST_FOLDER"));
  if (*path != '\0')
    {
      g_autoptr (GFile) file = g_file_new_for_path (path);

      document = open_file (file);
    }
  else
    document = tr_document_new ();
  tr_document_set_recovery_folder (document, folder);
  set_title (document, "Nearly lost");
  tr_document_write_recovery (document);
  raise (SIGKILL);
}

static void
leave_work_behind (const char *path,
                   GFile      *folder)
{
  g_autofree char *folder_path = g_file_get_path (folder);
  int status = run_case ("", "/trial/file/child/edit", folder_path, path);

  g_assert_true (WIFSIGNALED (status) && WTERMSIG (status) == SIGKILL);
}

static TrDocument *
recover_only (GFile *folder)
{
  g_autoptr (GPtrArray) list = tr_recovery_list (folder);
  g_autoptr (GError) error = NULL;
  TrDocument *document;

  g_assert_cmpuint (list->len, ==, 1);
  document = tr_recovery_open (g_ptr_array_index (list, 0), &error);
  g_assert_no_error (error);

  return document;
}

static void
test_recovered (Place         *place,
                gconstpointer  data)
{
  g_autoptr (GFile) folder = recovery_folder (place);
  g_autofree char *folder_path = g_file_get_path (folder);

  leave_work_behind (place->path, folder);
  g_autoptr (GPtrArray) list = tr_recovery_list (folder);
  g_assert_cmpuint (list->len, ==, 1);
  const TrRecovery *recovery = g_ptr_array_index (list, 0);
  g_assert_cmpstr (recovery->title, ==, "Nearly lost");
  g_assert_true (g_file_equal (recovery->original, place->file));
  g_assert_cmpint (ABS (recovery->saved_at - g_get_real_time () / G_USEC_PER_SEC), <, 60);

  g_autoptr (TrDocument) document = recover_only (folder);
  g_assert_true (tr_document_is_modified (document));
  g_assert_true (g_file_equal (tr_document_get_file (document), place->file));
  g_assert_cmpstr (tr_document_get_trial (document)->title, ==, "Nearly lost");
  g_assert_cmpstr (tr_document_get_trial (document)->extra, ==, "{\"another\":[1,2.5,\"x\"]}");
  g_assert_false (tr_document_is_changed_on_disk (document));
  assert_n_files (folder_path, 1);                 /* until it is safe elsewhere */

  save (document);
  assert_holds (place->path, "Nearly lost");
  g_autofree char *saved = get (place->path);
  g_assert_null (strstr (saved, TR_RECOVERY_MEMBER));
  assert_n_files (folder_path, 0);
}

/* The file was saved by somebody else between the crash and the recovery. */
static void
test_recovered_but_changed (Place         *place,
                            gconstpointer  data)
{
  g_autoptr (GFile) folder = recovery_folder (place);

  leave_work_behind (place->path, folder);
  put (place->path, sample_text);
  g_autoptr (TrDocument) document = recover_only (folder);
  assert_save_refused (document, TR_TRIAL_ERROR_CHANGED_ON_DISK);
}

static void
test_recovered_untitled (Place         *place,
                         gconstpointer  data)
{
  g_autoptr (GFile) folder = recovery_folder (place);
  g_autofree char *folder_path = g_file_get_path (folder);

  leave_work_behind ("", folder);
  g_autoptr (TrDocument) document = recover_only (folder);
  g_assert_null (tr_document_get_file (document));
  g_assert_true (tr_document_is_modified (document));

  /* a copy under our own name takes the place of the one of the dead */
  tr_document_set_recovery_folder (document, folder);
  tr_document_write_recovery (document);
  assert_n_files (folder_path, 1);
  g_autoptr (GPtrArray) list = tr_recovery_list (folder);
  g_assert_cmpuint (list->len, ==, 0);
  tr_document_discard_recovery (document);
  assert_n_files (folder_path, 0);
}

/* Other files there, and copies that cannot be read, are passed over. */
static void
test_strange_files_in_the_folder (Place         *place,
                                  gconstpointer  data)
{
  static const char *const names[] = { "notes.txt", "12-34-5.tourier~", "-1-2-3.tourier", "x-1-2.tourier",
                                       "999999999-1-0.tourier", "99999999999999999999-1-0.tourier", "1-.tourier", ".tourier-Abcdef" };
  g_autoptr (GFile) folder = recovery_folder (place);
  g_autofree char *path = g_file_get_path (folder);

  leave_work_behind (place->path, folder);
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *full = g_build_filename (path, names[i], NULL);

      put (full, "{\"format\":\"tourier-trial\"");
    }
  g_autoptr (TrDocument) document = recover_only (folder);
  g_assert_cmpstr (tr_document_get_trial (document)->title, ==, "Nearly lost");
}

/* Names that are not UTF-8 come back byte for byte. */
static void
test_recovered_strange_name (Place         *place,
                             gconstpointer  data)
{
  g_autoptr (GFile) folder = recovery_folder (place);
  g_autofree char *path = in_place (place, "caf\xe9 \"1\".tourier");
  g_autoptr (GFile) file = g_file_new_for_path (path);

  put (path, sample_text);
  leave_work_behind (path, folder);
  g_autoptr (TrDocument) document = recover_only (folder);
  g_assert_true (g_file_equal (tr_document_get_file (document), file));
  save (document);
  assert_holds (path, "Nearly lost");
}

static gboolean
has_copy (GFile *folder)
{
  g_autofree char *path = g_file_get_path (folder);
  g_autoptr (GPtrArray) names = list_names (path);

  return names->len > 0;
}

/* Without being asked, and within ten seconds. */
static void
test_recovery_by_itself (Place         *place,
                         gconstpointer  data)
{
  g_autoptr (GFile) folder = recovery_folder (place);
  g_autoptr (TrDocument) document = open_file (place->file);
  gint64 started = g_get_monotonic_time ();

  if (!g_test_slow ())
    {
      g_test_skip ("takes eight seconds: -m slow");
      return;
    }
  tr_document_set_recovery_folder (document, folder);
  set_title (document, "Unsaved");
  while (!has_copy (folder) && g_get_monotonic_time () - started < 11 * G_USEC_PER_SEC)
    {
      g_main_context_iteration (NULL, FALSE);
      g_usleep (20000);
    }
  g_assert_true (has_copy (folder));
  tr_document_discard_recovery (document);
}

int
main (int   argc,
      char *argv[])
{
  g_setenv ("TRIAL_TEST_PROGRAM", argv[0], TRUE);
  g_test_init (&argc, &argv, NULL);

#define ADD(path, func) g_test_add ("/trial/file/" path, Place, NULL, set_up, func, tear_down)
  ADD ("open", test_open);
  ADD ("open-refused", test_open_refused);
  ADD ("open-too-large", test_open_too_large);
  ADD ("save", test_save);
  ADD ("mode-is-kept", test_mode_kept);
  ADD ("link-survives", test_link_survives);
  ADD ("link-to-nothing-yet", test_link_to_nothing_yet);
  ADD ("no-place-for-a-temporary", test_no_place_for_a_temporary);
  ADD ("not-a-regular-file", test_not_a_regular_file);
  ADD ("read-only", test_read_only);
  ADD ("full-device", test_full_device);
  ADD ("write-fails-half-way", test_write_fails_half_way);
  g_test_add_func ("/trial/file/child/save", test_child_save);
  g_test_add_func ("/trial/file/child/edit", test_child_edit);
  ADD ("save-as", test_save_as);
  ADD ("longest-name", test_longest_name);
  ADD ("killed-while-saving", test_killed_while_saving);
  ADD ("changed-on-disk", test_changed_on_disk);
  ADD ("changed-to-the-same-size", test_changed_to_the_same_size);
  ADD ("vanished", test_vanished);
  ADD ("two-documents", test_two_documents);
  ADD ("reload-can-be-undone", test_reload_can_be_undone);
  ADD ("file-changed-is-announced-once", test_file_changed);
  ADD ("recovery/copy-lives-with-the-edit", test_recovery_copy_lives_with_the_edit);
  ADD ("recovery/living-are-not-listed", test_living_are_not_listed);
  ADD ("recovery/recovered", test_recovered);
  ADD ("recovery/recovered-but-changed", test_recovered_but_changed);
  ADD ("recovery/recovered-untitled", test_recovered_untitled);
  ADD ("recovery/strange-files-in-the-folder", test_strange_files_in_the_folder);
  ADD ("recovery/strange-name", test_recovered_strange_name);
  ADD ("recovery/by-itself", test_recovery_by_itself);

  return g_test_run ();
}
