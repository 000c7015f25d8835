/* test-files.c: saving, closing, opening, recovering and exporting lose nothing
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The real window under a display; every file in a folder of its own.
 */

#include "config.h"

#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#include "support.h"
#include "window/notices.h"

/* Saving ********************************************************************/

static void
test_save_writes_and_is_unmodified (void)
{
  TrApplication *application = ui_application_new ();
  g_autofree char *path = ui_write_demo ();
  TrWindow *window = ui_file_window_new (application, path);
  g_autofree char *text = NULL;
  g_autofree char *on_disk = NULL;

  ui_edit_pieces (window, 21);
  g_assert_true (tr_document_is_modified (tr_window_get_document (window)));
  ui_act (window, "win.save");
  g_assert_false (tr_document_is_modified (tr_window_get_document (window)));
  g_assert_false (g_str_has_prefix (gtk_window_get_title (GTK_WINDOW (window)), "•"));

  text = ui_dup_trial_text (tr_window_get_document (window));
  on_disk = ui_read_file (path);
  g_assert_cmpstr (on_disk, ==, text);

  /* Undone past the save it is modified, redone to it it is not. */
  ui_act (window, "win.undo");
  g_assert_true (tr_document_is_modified (tr_window_get_document (window)));
  ui_act (window, "win.redo");
  g_assert_false (tr_document_is_modified (tr_window_get_document (window)));
  ui_application_free (application);
}

static void
test_save_includes_what_is_being_typed (void)
{
  TrApplication *application = ui_application_new ();
  g_autofree char *path = ui_write_demo ();
  TrWindow *window = ui_file_window_new (application, path);
  g_autofree char *on_disk = NULL;
  GtkWidget *entry;

  ui_edit_pieces (window, 20);
  ui_act (window, "win.rename-dough");
  entry = gtk_widget_get_ancestor (gtk_window_get_focus (GTK_WINDOW (window)), GTK_TYPE_ENTRY);
  ui_type (entry, "Typed and not left");
  ui_act (window, "win.save");
  on_disk = ui_read_file (path);
  g_assert_nonnull (strstr (on_disk, "Typed and not left"));
  ui_application_free (application);
}

static gboolean
is_null (gpointer data)
{
  return *(gpointer *) data == NULL;
}

static void
test_unmodified_window_closes_at_once (UiFixture     *fixture,
                                       gconstpointer  data)
{
  gpointer window = fixture->window;

  g_object_add_weak_pointer (window, &window);
  ui_act (fixture->window, "win.close");
  g_assert_true (ui_wait_until (is_null, &window, 2000));
}

static void
test_closing_unsaved_asks_and_cancel_keeps (UiFixture     *fixture,
                                            gconstpointer  data)
{
  ui_edit_pieces (fixture->window, 22);
  gtk_window_close (GTK_WINDOW (fixture->window));
  ui_settle ();
  g_assert_nonnull (ui_get_question (fixture->window));

  /* Asked once, however often it is closed. */
  gtk_window_close (GTK_WINDOW (fixture->window));
  ui_settle ();
  ui_answer (fixture->window, 0);
  g_assert_null (ui_get_question (fixture->window));
  g_assert_cmpuint (ui_count_windows (fixture->application), ==, 1);
  g_assert_true (tr_document_is_modified (tr_window_get_document (fixture->window)));

  /* Dismissing it keeps the window too. */
  gtk_window_close (GTK_WINDOW (fixture->window));
  ui_settle ();
  ui_answer (fixture->window, GTK_RESPONSE_DELETE_EVENT);
  g_assert_cmpuint (ui_count_windows (fixture->application), ==, 1);
}

static void
test_closing_unsaved_and_discard_closes (UiFixture     *fixture,
                                         gconstpointer  data)
{
  gpointer window = fixture->window;

  g_object_add_weak_pointer (window, &window);
  ui_edit_pieces (fixture->window, 23);
  gtk_window_close (GTK_WINDOW (fixture->window));
  ui_settle ();
  ui_answer (fixture->window, 1);
  g_assert_true (ui_wait_until (is_null, &window, 2000));
}

static void
test_closing_unsaved_and_save_saves_and_closes (void)
{
  TrApplication *application = ui_application_new ();
  g_autofree char *path = ui_write_demo ();
  gpointer window = ui_file_window_new (application, path);
  g_autofree char *text = NULL;
  g_autofree char *on_disk = NULL;

  g_object_add_weak_pointer (window, &window);
  ui_edit_pieces (window, 27);
  text = ui_dup_trial_text (tr_window_get_document (window));
  gtk_window_close (window);
  ui_settle ();
  ui_answer (window, 2);
  g_assert_true (ui_wait_until (is_null, &window, 2000));
  on_disk = ui_read_file (path);
  g_assert_cmpstr (on_disk, ==, text);
  ui_application_free (application);
}

static void
test_save_that_fails_tells_and_stays_modified (void)
{
  TrApplication *application = ui_application_new ();
  g_autofree char *path = ui_write_demo ();
  g_autofree char *folder = g_path_get_dirname (path);
  TrWindow *window = ui_file_window_new (application, path);

  ui_edit_pieces (window, 25);
  /* Where the folder was there is a file now: nothing can be written below it. */
  g_assert_cmpint (g_unlink (path), ==, 0);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
  g_assert_true (g_file_set_contents (folder, "x", 1, NULL));

  ui_act (window, "win.save");
  ui_settle ();
  if (ui_get_question (window) != NULL)
    ui_answer (window, 2);
  g_assert_nonnull (tr_window_get_notice (window, "file"));
  g_assert_true (tr_document_is_modified (tr_window_get_document (window)));
  g_unlink (folder);
  ui_application_free (application);
}

/* Files *********************************************************************/

static void
test_open_file_shows_its_window (void)
{
  TrApplication *application = ui_application_new ();
  g_autofree char *path = ui_write_demo ();
  TrWindow *window = ui_file_window_new (application, path);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  GFile *files[] = { file };

  g_application_open (G_APPLICATION (application), files, 1, "");
  g_assert_cmpuint (ui_count_windows (application), ==, 1);
  g_assert_true (tr_application_open_file (application, file, NULL) == window);
  ui_application_free (application);
}

static void
test_unreadable_file_is_told_in_a_sentence (UiFixture     *fixture,
                                            gconstpointer  data)
{
  g_autofree char *path = ui_write_demo ();
  g_autofree char *before = ui_dup_trial_text (tr_window_get_document (fixture->window));
  g_autofree char *after = NULL;
  g_autofree char *uri = g_filename_to_uri (path, NULL, NULL);

  g_assert_true (g_file_set_contents (path, "{ \"format\": 'x' }", -1, NULL));
  ui_act_on (fixture->window, "win.open-uri", uri);
  g_assert_cmpuint (ui_count_windows (fixture->application), ==, 1);
  g_assert_nonnull (tr_window_get_notice (fixture->window, "file"));
  after = ui_dup_trial_text (tr_window_get_document (fixture->window));
  g_assert_cmpstr (after, ==, before);
}

static void
test_dropped_file_is_opened (UiFixture     *fixture,
                             gconstpointer  data)
{
  g_autofree char *path = ui_write_demo ();
  GFile *file = g_file_new_for_path (path);
  g_autoptr (GSList) list = g_slist_prepend (NULL, file);
  g_auto (GValue) value = G_VALUE_INIT;
  gboolean handled = FALSE;

  g_value_init (&value, GDK_TYPE_FILE_LIST);
  g_value_set_boxed (&value, list);
  g_signal_emit_by_name (ui_get_drop_target (GTK_WIDGET (fixture->window)), "drop", &value, 10.0, 10.0, &handled);
  g_assert_true (handled);
  g_assert_cmpuint (ui_count_windows (fixture->application), ==, 2);
  g_object_unref (file);
}

static void
change_on_disk (const char *path)
{
  g_autofree char *text = ui_read_file (path);
  g_auto (GStrv) parts = g_strsplit (text, "\"pieces_written\": 1", 2);

  /* Another size and another time, whichever is looked at. */
  g_autofree char *changed = g_strjoinv ("\"pieces_written\": 2", parts);
  g_autofree char *longer = g_strconcat (changed, "\n\n", NULL);

  g_assert_true (g_file_set_contents (path, longer, -1, NULL));
}

static gboolean
has_disk_notice (gpointer data)
{
  return tr_window_get_notice (data, "disk") != NULL;
}

static void
test_changed_on_disk_offers_to_reload (void)
{
  TrApplication *application = ui_application_new ();
  g_autofree char *path = ui_write_demo ();
  TrWindow *window = ui_file_window_new (application, path);
  GtkWidget *button;
  g_autofree char *before = ui_dup_trial_text (tr_window_get_document (window));
  g_autofree char *after = NULL;

  change_on_disk (path);
  g_assert_true (ui_wait_until (has_disk_notice, window, 10000));
  ui_frames (GTK_WIDGET (window), 2);
  button = ui_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, "Reload");
  g_assert_nonnull (button);
  g_signal_emit_by_name (button, "clicked");
  after = ui_dup_trial_text (tr_window_get_document (window));
  g_assert_cmpstr (after, !=, before);
  g_assert_false (tr_document_is_modified (tr_window_get_document (window)));
  ui_application_free (application);
}

static gboolean
has_no_disk_notice (gpointer data)
{
  return !has_disk_notice (data);
}

static void
test_removed_file_is_told_and_saved_there_again (void)
{
  TrApplication *application = ui_application_new ();
  g_autofree char *path = ui_write_demo ();
  TrWindow *window = ui_file_window_new (application, path);
  g_autofree char *mine = NULL;
  g_autofree char *on_disk = NULL;

  g_assert_cmpint (g_unlink (path), ==, 0);
  g_assert_true (ui_wait_until (has_disk_notice, window, 10000));
  g_assert_nonnull (strstr (tr_window_get_notice (window, "disk"), "“demo.tourier” is no longer where it was opened"));
  ui_frames (GTK_WIDGET (window), 2);
  /* Nothing of it is on disk, so closing asks. */
  g_assert_true (tr_document_is_modified (tr_window_get_document (window)));
  gtk_window_close (GTK_WINDOW (window));
  ui_settle ();
  ui_answer (window, 0);
  /* There is nothing to reload. */
  g_assert_null (ui_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, "Reload"));
  g_assert_nonnull (ui_find (ui_find_type (GTK_WIDGET (window), TR_TYPE_NOTICES), GTK_TYPE_BUTTON, "Save as…"));

  ui_edit_pieces (window, 29);
  ui_act (window, "win.save");
  ui_settle ();
  ui_answer (window, 0);
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
  g_assert_true (tr_document_is_modified (tr_window_get_document (window)));

  ui_act (window, "win.save");
  ui_settle ();
  g_assert_true (ui_has_label (GTK_WIDGET (ui_get_question (window)), "Save “demo.tourier” again?"));
  ui_answer (window, 2);
  mine = ui_dup_trial_text (tr_window_get_document (window));
  on_disk = ui_read_file (path);
  g_assert_cmpstr (on_disk, ==, mine);
  g_assert_false (tr_document_is_modified (tr_window_get_document (window)));
  g_assert_true (ui_wait_until (has_no_disk_notice, window, 10000));
  ui_application_free (application);
}

static void
test_overwriting_asks_and_cancel_keeps_theirs (void)
{
  TrApplication *application = ui_application_new ();
  g_autofree char *path = ui_write_demo ();
  TrWindow *window = ui_file_window_new (application, path);
  g_autofree char *theirs = NULL;
  g_autofree char *still = NULL;
  g_autofree char *mine = NULL;
  g_autofree char *on_disk = NULL;

  ui_edit_pieces (window, 26);
  change_on_disk (path);
  theirs = ui_read_file (path);
  ui_act (window, "win.save");
  ui_settle ();
  ui_answer (window, 0);
  still = ui_read_file (path);
  g_assert_cmpstr (still, ==, theirs);
  g_assert_true (tr_document_is_modified (tr_window_get_document (window)));

  ui_act (window, "win.save");
  ui_settle ();
  ui_answer (window, 2);
  mine = ui_dup_trial_text (tr_window_get_document (window));
  on_disk = ui_read_file (path);
  g_assert_cmpstr (on_disk, ==, mine);
  g_assert_false (tr_document_is_modified (tr_window_get_document (window)));
  ui_application_free (application);
}

/* Recovery ******************************************************************/

/* A program that ends without saving: run in a process of its own. */
static void
test_recovery_subprocess (void)
{
  g_autoptr (GFile) folder = g_file_new_for_path (g_getenv ("TOURIER_TEST_STATE"));
  g_autoptr (TrDocument) document = tr_document_new ();
  g_autoptr (GError) error = NULL;
  TrTrial *draft;

  tr_document_set_recovery_folder (document, folder);
  draft = tr_document_draft (document);
  tr_set_text (&draft->title, "Lost and found");
  g_assert_true (tr_document_commit (document, draft, "change the title", NULL, "/title", &error));
  g_assert_no_error (error);
  tr_document_write_recovery (document);
  /* Neither saved nor closed. */
  _exit (0);
}

static guint
count_files (const char *path)
{
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  guint count = 0;

  while (dir != NULL && g_dir_read_name (dir) != NULL)
    count++;

  return count;
}

static TrWindow *
start_after_a_crash (TrApplication **application,
                     char          **state)
{
  g_autoptr (GFile) folder = NULL;

  *state = g_dir_make_tmp ("tourier-state-XXXXXX", NULL);
  g_setenv ("TOURIER_TEST_STATE", *state, TRUE);
  g_test_trap_subprocess ("/window/recovery/subprocess", 0, 0);
  g_assert_cmpuint (count_files (*state), ==, 1);

  folder = g_file_new_for_path (*state);
  *application = tr_application_new (G_APPLICATION_NON_UNIQUE, folder);
  g_assert_true (g_application_register (G_APPLICATION (*application), NULL, NULL));
  g_application_activate (G_APPLICATION (*application));

  TrWindow *window = gtk_application_get_windows (GTK_APPLICATION (*application))->data;

  ui_frames (GTK_WIDGET (window), 2);
  return window;
}

static void
test_unsaved_work_is_offered_and_recovered (void)
{
  TrApplication *application;
  g_autofree char *state = NULL;
  TrWindow *window = start_after_a_crash (&application, &state);
  GtkWidget *button = ui_find_type (GTK_WIDGET (window), TR_TYPE_NOTICES);
  g_autofree char *title = NULL;

  g_assert_true (gtk_widget_get_mapped (button));
  button = ui_find (button, GTK_TYPE_BUTTON, "Recover");
  g_assert_nonnull (button);
  g_signal_emit_by_name (button, "clicked");

  title = tr_document_dup_display_name (tr_window_get_document (window));
  g_assert_cmpstr (title, ==, "Lost and found");
  g_assert_true (tr_document_is_modified (tr_window_get_document (window)));
  /* As long as it is not saved there is a copy. */
  g_assert_cmpuint (count_files (state), ==, 1);
  ui_application_free (application);
}

static void
test_unsaved_work_can_be_dropped (void)
{
  TrApplication *application;
  g_autofree char *state = NULL;
  TrWindow *window = start_after_a_crash (&application, &state);
  GtkWidget *button = ui_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, "Delete it");

  g_assert_nonnull (button);
  g_signal_emit_by_name (button, "clicked");
  g_assert_cmpuint (count_files (state), ==, 0);
  g_assert_true (tr_window_is_pristine (window));
  ui_application_free (application);
}

/* Paper *********************************************************************/

static void
test_cards_are_exported (UiFixture     *fixture,
                         gconstpointer  data)
{
  g_autofree char *folder = g_dir_make_tmp ("tourier-paper-XXXXXX", NULL);
  g_autofree char *one_path = g_build_filename (folder, "one.pdf", NULL);
  g_autofree char *all_path = g_build_filename (folder, "all.pdf", NULL);
  g_autoptr (GFile) one = g_file_new_for_path (one_path);
  g_autoptr (GFile) all = g_file_new_for_path (all_path);
  g_autoptr (GError) error = NULL;
  g_autofree char *one_text = NULL;
  g_autofree char *all_text = NULL;

  g_assert_true (tr_window_export_cards (fixture->window, FALSE, one, &error));
  g_assert_no_error (error);
  g_assert_true (tr_window_export_cards (fixture->window, TRUE, all, &error));
  g_assert_no_error (error);
  one_text = ui_read_file (one_path);
  all_text = ui_read_file (all_path);
  g_assert_true (g_str_has_prefix (one_text, "%PDF-"));
  g_assert_true (g_str_has_prefix (all_text, "%PDF-"));
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  g_test_add_func ("/window/save/writes-and-is-unmodified", test_save_writes_and_is_unmodified);
  g_test_add_func ("/window/save/includes-what-is-being-typed", test_save_includes_what_is_being_typed);
  g_test_add_func ("/window/save/that-fails-tells-and-stays-modified", test_save_that_fails_tells_and_stays_modified);
  UI_ADD ("/window/close/unmodified-window-closes-at-once", test_unmodified_window_closes_at_once);
  UI_ADD ("/window/close/unsaved-asks-and-cancel-keeps", test_closing_unsaved_asks_and_cancel_keeps);
  UI_ADD ("/window/close/unsaved-and-discard-closes", test_closing_unsaved_and_discard_closes);
  g_test_add_func ("/window/close/unsaved-and-save-saves-and-closes", test_closing_unsaved_and_save_saves_and_closes);
  g_test_add_func ("/window/file/open-file-shows-its-window", test_open_file_shows_its_window);
  UI_ADD ("/window/file/unreadable-file-is-told-in-a-sentence", test_unreadable_file_is_told_in_a_sentence);
  UI_ADD ("/window/file/dropped-file-is-opened", test_dropped_file_is_opened);
  g_test_add_func ("/window/file/changed-on-disk-offers-to-reload", test_changed_on_disk_offers_to_reload);
  g_test_add_func ("/window/file/removed-file-is-told-and-saved-there-again", test_removed_file_is_told_and_saved_there_again);
  g_test_add_func ("/window/file/overwriting-asks-and-cancel-keeps-theirs", test_overwriting_asks_and_cancel_keeps_theirs);
  g_test_add_func ("/window/recovery/subprocess", test_recovery_subprocess);
  g_test_add_func ("/window/recovery/unsaved-work-is-offered-and-recovered", test_unsaved_work_is_offered_and_recovered);
  g_test_add_func ("/window/recovery/unsaved-work-can-be-dropped", test_unsaved_work_can_be_dropped);
  UI_ADD ("/window/paper/cards-are-exported", test_cards_are_exported);

  return ui_run ();
}
