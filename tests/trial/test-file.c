/* test-file.c: opening and saving
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where no file can be made is played by a folder that is none (a regular
 * file), which stops root too.
 */

#include <errno.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <glib/gstdio.h>

#include "place.h"
#include "sample.h"

/* Opening */

static void
test_open (Place         *place,
           gconstpointer  data)
{
  g_autoptr (TrDocument) document = document_open (place->file);
  g_autofree char *name = tr_document_dup_display_name (document);

  g_assert_false (tr_document_is_modified (document));
  g_assert_false (tr_document_is_changed_on_disk (document));
  g_assert_true (g_file_equal (tr_document_get_file (document), place->file));
  g_assert_cmpstr (name, ==, "Lighthouse buns");
  document_set_title (document, "");
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
  g_autofree char *pipe_path = place_dup_path (place, "pipe");
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

  place_put (place->path, text);
  g_assert_null (tr_trial_read_file (place->path, &error));
  g_assert_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_TOO_LARGE);
  g_assert_cmpstr (error->message, ==, "Expected at most 4194304 bytes (4 MiB), found more.");

  text[4 * 1024 * 1024] = '\0';
  place_put (place->path, text);
  g_clear_error (&error);
  g_autoptr (TrTrial) trial = tr_trial_read_file (place->path, &error);
  g_assert_no_error (error);
}

/* Saving */

static void
test_save (Place         *place,
           gconstpointer  data)
{
  g_autoptr (TrDocument) document = document_open (place->file);
  g_autofree char *backup = place_dup_path (place, "buns.tourier~");

  document_set_title (document, "Second");
  g_assert_true (tr_document_is_modified (document));
  document_save (document);
  g_assert_false (tr_document_is_modified (document));
  g_assert_false (tr_document_is_changed_on_disk (document));
  place_assert_holds (place->path, "\"title\": \"Second\"");

  /* what was there when it was opened stays in the backup */
  document_set_title (document, "Third");
  document_save (document);
  place_assert_holds (place->path, "\"title\": \"Third\"");
  place_assert_holds (backup, "\"title\": \"Lighthouse buns\"");
  place_assert_n_files (place->folder, 2);

  tr_document_undo (document);
  g_assert_true (tr_document_is_modified (document));
  tr_document_redo (document);
  g_assert_false (tr_document_is_modified (document));
}

static void
test_backup_follows_no_link (Place         *place,
                             gconstpointer  data)
{
  g_autoptr (TrDocument) document = document_open (place->file);
  g_autofree char *other = place_dup_path (place, "other.txt");
  g_autofree char *backup = place_dup_path (place, "buns.tourier~");

  g_assert_true (g_file_set_contents (other, "somebody else's", -1, NULL));
  g_assert_cmpint (symlink ("other.txt", backup), ==, 0);
  document_set_title (document, "Second");
  document_save (document);
  place_assert_holds (other, "somebody else's");
  place_assert_holds (backup, "Lighthouse buns");
  g_assert_false (g_file_test (backup, G_FILE_TEST_IS_SYMLINK));
}

static void
test_mode_kept (Place         *place,
                gconstpointer  data)
{
  g_autoptr (TrDocument) document = NULL;
  struct stat info;

  g_assert_cmpint (g_chmod (place->path, 0640), ==, 0);
  document = document_open (place->file);
  document_set_title (document, "Second");
  document_save (document);
  g_assert_cmpint (g_stat (place->path, &info), ==, 0);
  g_assert_cmpint (info.st_mode & 07777, ==, 0640);
}

static void
test_link_survives (Place         *place,
                    gconstpointer  data)
{
  g_autofree char *inner = place_dup_path (place, "shelf");
  g_autofree char *link = place_dup_path (place, "shelf/today.tourier");
  g_autofree char *backup = place_dup_path (place, "buns.tourier~");
  g_autoptr (GFile) file = g_file_new_for_path (link);
  g_autoptr (TrDocument) document = NULL;

  g_assert_cmpint (g_mkdir (inner, 0700), ==, 0);
  g_assert_cmpint (symlink ("../buns.tourier", link), ==, 0);
  document = document_open (file);
  document_set_title (document, "Through the link");
  document_save (document);

  g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  place_assert_holds (place->path, "Through the link");
  place_assert_holds (backup, "Lighthouse buns");
  place_assert_n_files (inner, 1);
}

static void
test_link_to_nothing_yet (Place         *place,
                          gconstpointer  data)
{
  g_autofree char *link = place_dup_path (place, "link.tourier");
  g_autofree char *target = place_dup_path (place, "new.tourier");
  g_autoptr (GFile) file = g_file_new_for_path (link);
  g_autoptr (TrDocument) document = tr_document_new ();
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (symlink ("new.tourier", link), ==, 0);
  g_assert_true (tr_document_save_as (document, file, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  place_assert_holds (target, "tourier-trial");
}

/* Nothing is written where it could not be taken back: the old file is as it
 * was, nothing lies beside it, and the document is still modified. */
static void
test_no_place_for_a_temporary (Place         *place,
                               gconstpointer  data)
{
  g_autofree char *below = place_dup_path (place, "buns.tourier/below.tourier");
  g_autofree char *missing = place_dup_path (place, "missing/below.tourier");
  const char *const paths[] = { below, missing };

  for (guint i = 0; i < G_N_ELEMENTS (paths); i++)
    {
      g_autoptr (GFile) file = g_file_new_for_path (paths[i]);
      g_autoptr (TrDocument) document = document_open (place->file);
      g_autoptr (GError) error = NULL;

      document_set_title (document, "Second");
      g_assert_false (tr_document_save_as (document, file, &error));
      g_assert_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_NO_TEMPORARY);
      g_assert_true (g_str_has_suffix (error->message, "Nothing was changed."));
      g_assert_true (tr_document_is_modified (document));
      g_assert_true (g_file_equal (tr_document_get_file (document), place->file));
    }
  place_assert_holds (place->path, "Lighthouse buns");
  place_assert_n_files (place->folder, 1);
}

/* Renaming would go over these; writing would not. */
static void
test_not_a_regular_file (Place         *place,
                         gconstpointer  data)
{
  g_autofree char *folder = place_dup_path (place, "folder.tourier");
  g_autofree char *loop = place_dup_path (place, "loop.tourier");
  g_autofree char *pipe = place_dup_path (place, "pipe.tourier");
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
  place_assert_n_files (place->folder, 4);
}

/* Root may write anywhere, so this says something only to others. */
static void
test_read_only (Place         *place,
                gconstpointer  data)
{
  g_autoptr (TrDocument) document = document_open (place->file);

  if (geteuid () == 0)
    {
      g_test_skip ("root may write to read-only files");
      return;
    }
  g_assert_cmpint (g_chmod (place->path, 0444), ==, 0);
  document_set_title (document, "Second");
  document_assert_save_refused (document, TR_TRIAL_ERROR_NO_TEMPORARY);
  place_assert_holds (place->path, "Lighthouse buns");
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

/* The size a process may write is limited in a child: the write fails half way. */
static void
test_write_fails_half_way (Place         *place,
                           gconstpointer  data)
{
  int status = place_run_case ("ulimit -f 1; trap '' XFSZ;", "/trial/file/child/save", place->folder, place->path);

  g_assert_cmpint (status, ==, 0);
  place_assert_holds (place->path, "Lighthouse buns");
  place_assert_n_files (place->folder, 1);
}

static void
test_child_save (void)
{
  g_autoptr (GFile) file = NULL;
  g_autoptr (TrDocument) document = NULL;
  g_autoptr (GError) error = NULL;

  if (!place_is_child ())
    return;
  file = g_file_new_for_path (g_getenv ("TRIAL_TEST_FILE"));
  document = document_open (file);
  document_set_title (document, "Second");
  g_assert_false (tr_document_save (document, FALSE, &error));
  g_assert_error (error, G_FILE_ERROR, (int) g_file_error_from_errno (EFBIG));
  g_assert_true (tr_document_is_modified (document));
}

/* What was dragged so far is what is saved, and cancelling goes back to that. */
static void
test_save_in_a_drag (Place         *place,
                     gconstpointer  data)
{
  g_autoptr (TrDocument) document = document_open (place->file);

  tr_document_begin_drag (document);
  document_set_title (document, "Dragged");
  document_save (document);
  g_assert_false (tr_document_is_modified (document));
  place_assert_holds (place->path, "\"title\": \"Dragged\"");

  document_set_title (document, "Further");
  g_assert_true (tr_document_is_modified (document));
  tr_document_end_drag (document, TRUE);
  g_assert_cmpstr (tr_document_get_trial (document)->title, ==, "Dragged");
  g_assert_false (tr_document_is_modified (document));
}

static void
test_reload_in_a_drag (Place         *place,
                       gconstpointer  data)
{
  g_autoptr (TrDocument) document = document_open (place->file);

  tr_document_begin_drag (document);
  document_set_title (document, "Dragged");
  g_assert_true (tr_document_reload (document, NULL));
  g_assert_false (tr_document_is_modified (document));
  tr_document_end_drag (document, TRUE);
  g_assert_cmpstr (tr_document_get_trial (document)->title, ==, "Lighthouse buns");
  tr_document_undo (document);
  g_assert_cmpstr (tr_document_get_trial (document)->title, ==, "Dragged");
}

static void
test_save_as (Place         *place,
              gconstpointer  data)
{
  g_autoptr (TrDocument) document = document_open (place->file);
  g_autofree char *other_path = place_dup_path (place, "other.tourier");
  g_autofree char *backup = place_dup_path (place, "other.tourier~");
  g_autoptr (GFile) other = g_file_new_for_path (other_path);
  g_autoptr (GError) error = NULL;
  struct stat info;
  mode_t mask = umask (0027);

  place_put (other_path, "what was there");
  document_set_title (document, "Second");
  g_assert_true (tr_document_save_as (document, other, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_equal (tr_document_get_file (document), other));
  place_assert_holds (place->path, "Lighthouse buns");
  place_assert_holds (other_path, "Second");
  place_assert_holds (backup, "what was there");

  /* a new file has the mode that any program's would have */
  g_autofree char *new_path = place_dup_path (place, "new.tourier");
  g_autoptr (GFile) new_file = g_file_new_for_path (new_path);
  g_assert_true (tr_document_save_as (document, new_file, &error));
  g_assert_cmpint (g_stat (new_path, &info), ==, 0);
  g_assert_cmpint (info.st_mode & 07777, ==, 0640);
  umask (mask);
}

/* The backup is of the file as it was opened, also after a save elsewhere that
 * was refused: it is not made again from what was saved since. */
static void
test_save_as_refused (Place         *place,
                      gconstpointer  data)
{
  g_autoptr (TrDocument) document = document_open (place->file);
  g_autofree char *missing = place_dup_path (place, "missing/below.tourier");
  g_autofree char *backup = place_dup_path (place, "buns.tourier~");
  g_autoptr (GFile) elsewhere = g_file_new_for_path (missing);
  g_autoptr (GError) error = NULL;

  document_set_title (document, "Second");
  g_assert_true (tr_document_save (document, FALSE, NULL));
  g_assert_false (tr_document_save_as (document, elsewhere, &error));
  g_assert_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_NO_TEMPORARY);

  document_set_title (document, "Third");
  g_assert_true (tr_document_save (document, FALSE, NULL));
  place_assert_holds (place->path, "Third");
  place_assert_holds (backup, "Lighthouse buns");
}

/* A name that leaves no room for more letters in it. */
static void
test_longest_name (Place         *place,
                   gconstpointer  data)
{
  g_autofree char *name = g_strnfill (255, 'n');
  g_autofree char *path = place_dup_path (place, name);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (TrDocument) document = tr_document_new ();
  g_autoptr (GError) error = NULL;

  g_assert_true (tr_document_save_as (document, file, &error));
  g_assert_no_error (error);
  document_set_title (document, "Second");
  g_assert_true (tr_document_save (document, FALSE, &error));   /* has no backup: no name for it */
  g_assert_no_error (error);
}

/* What was left by a program that was killed while it saved is in nobody's way. */
static void
test_killed_while_saving (Place         *place,
                          gconstpointer  data)
{
  g_autofree char *left = place_dup_path (place, ".tourier-aBcDeF");
  g_autoptr (TrDocument) document = NULL;

  place_put (left, "{\"format\": \"tour");
  document = document_open (place->file);
  document_set_title (document, "Second");
  document_save (document);
  place_assert_holds (place->path, "Second");
  place_assert_holds (left, "{\"format\": \"tour");
}

int
main (int   argc,
      char *argv[])
{
  g_setenv ("TRIAL_TEST_PROGRAM", argv[0], TRUE);
  g_test_init (&argc, &argv, NULL);

#define ADD(path, func) g_test_add ("/trial/file/" path, Place, NULL, place_set_up, func, place_tear_down)
  ADD ("open", test_open);
  ADD ("open-refused", test_open_refused);
  ADD ("open-too-large", test_open_too_large);
  ADD ("save", test_save);
  ADD ("backup-follows-no-link", test_backup_follows_no_link);
  ADD ("mode-is-kept", test_mode_kept);
  ADD ("link-survives", test_link_survives);
  ADD ("link-to-nothing-yet", test_link_to_nothing_yet);
  ADD ("no-place-for-a-temporary", test_no_place_for_a_temporary);
  ADD ("not-a-regular-file", test_not_a_regular_file);
  ADD ("read-only", test_read_only);
  ADD ("full-device", test_full_device);
  ADD ("write-fails-half-way", test_write_fails_half_way);
  g_test_add_func ("/trial/file/child/save", test_child_save);
  ADD ("save-in-a-drag", test_save_in_a_drag);
  ADD ("reload-in-a-drag", test_reload_in_a_drag);
  ADD ("save-as", test_save_as);
  ADD ("save-as-refused", test_save_as_refused);
  ADD ("longest-name", test_longest_name);
  ADD ("killed-while-saving", test_killed_while_saving);

  return g_test_run ();
}
