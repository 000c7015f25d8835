/* test-recovery.c: unsaved work comes back after a crash
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <signal.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <glib/gstdio.h>

#include "place.h"
#include "sample.h"
#include "trial/document-private.h"
#include "trial/recovery.h"

static GFile *
recovery_folder (Place *place)
{
  g_autofree char *path = place_dup_path (place, "state/tourier");

  return g_file_new_for_path (path);
}

static char *
dup_only_copy (GFile *folder)
{
  g_autofree char *path = g_file_get_path (folder);
  g_autoptr (GPtrArray) names = place_list_names (path);

  g_assert_cmpuint (names->len, ==, 1);

  return g_build_filename (path, g_ptr_array_index (names, 0), NULL);
}

static void
test_recovery_copy_lives_with_the_edit (Place         *place,
                                        gconstpointer  data)
{
  g_autoptr (GFile) folder = recovery_folder (place);
  g_autofree char *folder_path = g_file_get_path (folder);
  g_autoptr (TrDocument) document = document_open (place->file);
  struct stat info;

  tr_document_set_recovery_folder (document, folder);
  tr_document_write_recovery (document);           /* nothing unsaved */
  place_assert_n_files (folder_path, 0);

  document_set_title (document, "Unsaved");
  tr_document_write_recovery (document);
  g_autofree char *copy = dup_only_copy (folder);
  place_assert_holds (copy, "Unsaved");
  g_assert_cmpint (g_stat (copy, &info), ==, 0);
  g_assert_cmpint (info.st_mode & 07777, ==, 0600);

  document_set_title (document, "Still unsaved");
  tr_document_write_recovery (document);
  place_assert_holds (copy, "Still unsaved");
  place_assert_n_files (folder_path, 1);

  document_save (document);
  place_assert_n_files (folder_path, 0);

  document_set_title (document, "Again");
  tr_document_write_recovery (document);
  place_assert_n_files (folder_path, 1);
  tr_document_undo (document);                     /* back to what is on disk */
  tr_document_write_recovery (document);
  place_assert_n_files (folder_path, 0);
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
  document_set_title (document, "Unsaved");
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

  if (!place_is_child ())
    return;
  folder = g_file_new_for_path (g_getenv ("TRIAL_TEST_FOLDER"));
  if (*path != '\0')
    {
      g_autoptr (GFile) file = g_file_new_for_path (path);

      document = document_open (file);
    }
  else
    document = tr_document_new ();
  tr_document_set_recovery_folder (document, folder);
  document_set_title (document, "Nearly lost");
  tr_document_write_recovery (document);
  raise (SIGKILL);
}

static void
leave_work_behind (const char *path,
                   GFile      *folder)
{
  g_autofree char *folder_path = g_file_get_path (folder);
  int status = place_run_case ("", "/trial/recovery/child/edit", folder_path, path);

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

/* Under the id of a process whose start is not known. */
static guint
count_copies_of (pid_t  pid,
                 GFile *folder)
{
  g_autofree char *copy = dup_only_copy (folder);
  g_autofree char *folder_path = g_file_get_path (folder);
  g_autofree char *name = g_strdup_printf ("%ld-0-1.tourier", (long) pid);
  g_autofree char *renamed = g_build_filename (folder_path, name, NULL);

  g_assert_cmpint (g_rename (copy, renamed), ==, 0);
  g_autoptr (GPtrArray) list = tr_recovery_list (folder);

  return list->len;
}

static void
test_ended_but_not_waited_for_is_listed (Place         *place,
                                         gconstpointer  data)
{
  g_autoptr (GFile) folder = recovery_folder (place);
  siginfo_t info;

  leave_work_behind (place->path, folder);
  g_assert_cmpuint (count_copies_of (getpid (), folder), ==, 0);

  pid_t child = fork ();

  if (child == 0)
    _exit (0);
  g_assert_cmpint (child, >, 0);
  g_assert_cmpint (waitid (P_PID, (id_t) child, &info, WEXITED | WNOWAIT), ==, 0);
  g_assert_cmpuint (count_copies_of (child, folder), ==, 1);
  g_assert_cmpint (waitpid (child, NULL, 0), ==, child);
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
  place_assert_n_files (folder_path, 1);                 /* until it is safe elsewhere */

  document_save (document);
  place_assert_holds (place->path, "Nearly lost");
  g_autofree char *saved = place_get (place->path);
  g_assert_null (strstr (saved, TR_RECOVERY_MEMBER));
  place_assert_n_files (folder_path, 0);
}

/* The file was saved by somebody else between the crash and the recovery. */
static void
test_recovered_but_changed (Place         *place,
                            gconstpointer  data)
{
  g_autoptr (GFile) folder = recovery_folder (place);

  leave_work_behind (place->path, folder);
  place_put (place->path, sample_text);
  g_autoptr (TrDocument) document = recover_only (folder);
  document_assert_save_refused (document, TR_TRIAL_ERROR_CHANGED_ON_DISK);
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
  place_assert_n_files (folder_path, 1);
  g_autoptr (GPtrArray) list = tr_recovery_list (folder);
  g_assert_cmpuint (list->len, ==, 0);
  tr_document_discard_recovery (document);
  place_assert_n_files (folder_path, 0);
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

      place_put (full, "{\"format\":\"tourier-trial\"");
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
  g_autofree char *path = place_dup_path (place, "caf\xe9 \"1\".tourier");
  g_autoptr (GFile) file = g_file_new_for_path (path);

  place_put (path, sample_text);
  leave_work_behind (path, folder);
  g_autoptr (TrDocument) document = recover_only (folder);
  g_assert_true (g_file_equal (tr_document_get_file (document), file));
  document_save (document);
  place_assert_holds (path, "Nearly lost");
}

static gboolean
has_copy (GFile *folder)
{
  g_autofree char *path = g_file_get_path (folder);
  g_autoptr (GPtrArray) names = place_list_names (path);

  return names->len > 0;
}

/* Without being asked, and within ten seconds; in one here, not to wait. */
static void
test_recovery_by_itself (Place         *place,
                         gconstpointer  data)
{
  g_autoptr (GFile) folder = recovery_folder (place);
  g_autoptr (TrDocument) document = document_open (place->file);
  gint64 started = g_get_monotonic_time ();

  g_assert_cmpuint (document->recovery_seconds, <=, 10);
  document->recovery_seconds = 1;
  tr_document_set_recovery_folder (document, folder);
  document_set_title (document, "Unsaved");
  document_set_title (document, "Unsaved still");   /* does not put it off */
  while (!has_copy (folder) && g_get_monotonic_time () - started < 5 * G_USEC_PER_SEC)
    {
      g_main_context_iteration (NULL, FALSE);
      g_usleep (5000);
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

#define ADD(path, func) g_test_add ("/trial/recovery/" path, Place, NULL, place_set_up, func, place_tear_down)
  g_test_add_func ("/trial/recovery/child/edit", test_child_edit);
  ADD ("copy-lives-with-the-edit", test_recovery_copy_lives_with_the_edit);
  ADD ("living-are-not-listed", test_living_are_not_listed);
  ADD ("ended-but-not-waited-for-is-listed", test_ended_but_not_waited_for_is_listed);
  ADD ("recovered", test_recovered);
  ADD ("recovered-but-changed", test_recovered_but_changed);
  ADD ("recovered-untitled", test_recovered_untitled);
  ADD ("strange-files-in-the-folder", test_strange_files_in_the_folder);
  ADD ("strange-name", test_recovered_strange_name);
  ADD ("by-itself", test_recovery_by_itself);

  return g_test_run ();
}
