/* test-changes.c: what others do to the file of a document
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <glib/gstdio.h>

#include "place.h"
#include "sample.h"

static void
test_changed_on_disk (Place         *place,
                      gconstpointer  data)
{
  g_autoptr (TrDocument) document = document_open (place->file);
  g_autofree char *backup = place_dup_path (place, "buns.tourier~");
  g_autoptr (GError) error = NULL;

  document_set_title (document, "Mine");
  place_put (place->path, "theirs");
  g_assert_true (tr_document_is_changed_on_disk (document));
  document_assert_save_refused (document, TR_TRIAL_ERROR_CHANGED_ON_DISK);
  g_assert_true (tr_document_is_modified (document));
  place_assert_holds (place->path, "theirs");

  g_assert_true (tr_document_save (document, TRUE, &error));
  g_assert_no_error (error);
  place_assert_holds (place->path, "Mine");
  place_assert_holds (backup, "theirs");
  g_assert_false (tr_document_is_changed_on_disk (document));

  /* whatever else is overwritten is somebody else's too */
  place_put (place->path, "theirs again");
  g_assert_true (tr_document_save (document, TRUE, &error));
  g_assert_no_error (error);
  place_assert_holds (backup, "theirs again");
}

/* The same length within the same second: the inode and the nanoseconds tell. */
static void
test_changed_to_the_same_size (Place         *place,
                               gconstpointer  data)
{
  g_autoptr (TrDocument) document = document_open (place->file);
  g_autofree char *text = g_strdup (sample_text);

  *strstr (text, "Lighthouse") = 'l';
  place_put (place->path, text);
  document_set_title (document, "Mine");
  document_assert_save_refused (document, TR_TRIAL_ERROR_CHANGED_ON_DISK);
}

static void
test_vanished (Place         *place,
               gconstpointer  data)
{
  g_autoptr (TrDocument) document = document_open (place->file);
  g_autoptr (GError) error = NULL;

  document_set_title (document, "Mine");
  g_assert_cmpint (g_unlink (place->path), ==, 0);
  g_assert_false (tr_document_save (document, FALSE, &error));
  g_assert_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_CHANGED_ON_DISK);
  g_assert_cmpstr (error->message, ==, "“buns.tourier” is no longer where it was opened.");
  g_clear_error (&error);
  g_assert_true (tr_document_save (document, TRUE, &error));
  g_assert_no_error (error);
  place_assert_holds (place->path, "Mine");
}

static void
test_vanished_is_unsaved (Place         *place,
                          gconstpointer  data)
{
  g_autoptr (TrDocument) document = document_open (place->file);
  g_autofree char *aside_path = g_build_filename (place->folder, "aside", NULL);
  g_autoptr (GFile) aside = g_file_new_for_path (aside_path);
  g_autoptr (GError) error = NULL;

  g_assert_false (tr_document_is_modified (document));
  g_assert_true (g_file_move (place->file, aside, G_FILE_COPY_NONE, NULL, NULL, NULL, &error));
  g_assert_true (tr_document_is_changed_on_disk (document));
  g_assert_true (tr_document_is_modified (document));
  g_assert_true (g_file_move (aside, place->file, G_FILE_COPY_NONE, NULL, NULL, NULL, &error));
  g_assert_false (tr_document_is_changed_on_disk (document));
  g_assert_false (tr_document_is_modified (document));

  g_assert_true (g_file_delete (place->file, NULL, &error));
  g_assert_true (tr_document_is_changed_on_disk (document));
  g_assert_true (tr_document_save (document, TRUE, &error));
  g_assert_no_error (error);
  g_assert_false (tr_document_is_modified (document));
}

static void
test_two_documents (Place         *place,
                    gconstpointer  data)
{
  g_autoptr (TrDocument) first = document_open (place->file);
  g_autoptr (TrDocument) second = document_open (place->file);
  g_autoptr (GError) error = NULL;

  document_set_title (first, "First");
  document_set_title (second, "Second");
  document_save (first);
  document_assert_save_refused (second, TR_TRIAL_ERROR_CHANGED_ON_DISK);
  place_assert_holds (place->path, "First");

  g_assert_true (tr_document_reload (second, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (tr_document_get_trial (second)->title, ==, "First");
  document_set_title (second, "Second");
  document_save (second);
  document_assert_save_refused (first, TR_TRIAL_ERROR_CHANGED_ON_DISK);
}

static void
test_reload_can_be_undone (Place         *place,
                           gconstpointer  data)
{
  g_autoptr (TrDocument) document = document_open (place->file);
  g_autofree char *theirs = g_strdup (sample_text);
  g_autoptr (GError) error = NULL;

  document_set_title (document, "Mine");
  *strstr (theirs, "Lighthouse") = 'l';
  place_put (place->path, theirs);
  g_assert_true (tr_document_reload (document, &error));
  g_assert_cmpstr (tr_document_get_trial (document)->title, ==, "lighthouse buns");
  g_assert_false (tr_document_is_modified (document));
  tr_document_undo (document);
  g_assert_cmpstr (tr_document_get_trial (document)->title, ==, "Mine");
  g_assert_true (tr_document_is_modified (document));

  place_put (place->path, "{");
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
wait_for (guint *count,
          guint  n,
          guint  ms)
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
  g_autofree char *link = place_dup_path (place, "link.tourier");
  g_autoptr (GFile) file = g_file_new_for_path (link);
  g_autoptr (TrDocument) document = NULL;
  guint n = 0;

  g_assert_cmpint (symlink ("buns.tourier", link), ==, 0);
  document = document_open (file);
  g_signal_connect (document, "file-changed", G_CALLBACK (document_file_changed_cb), &n);

  document_set_title (document, "Mine");
  document_save (document);
  wait_for (&n, 1, 400);
  g_assert_cmpuint (n, ==, 0);

  place_put (place->path, "theirs");
  wait_for (&n, 1, 5000);
  g_assert_cmpuint (n, ==, 1);
  wait_for (&n, 2, 400);
  g_assert_cmpuint (n, ==, 1);

  g_assert_cmpint (g_unlink (place->path), ==, 0);
  wait_for (&n, 2, 5000);
  g_assert_cmpuint (n, ==, 2);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

#define ADD(path, func) g_test_add ("/trial/changes/" path, Place, NULL, place_set_up, func, place_tear_down)
  ADD ("changed-on-disk", test_changed_on_disk);
  ADD ("changed-to-the-same-size", test_changed_to_the_same_size);
  ADD ("vanished", test_vanished);
  ADD ("vanished-is-unsaved-until-it-comes-back", test_vanished_is_unsaved);
  ADD ("two-documents", test_two_documents);
  ADD ("reload-can-be-undone", test_reload_can_be_undone);
  ADD ("file-changed-is-announced-once", test_file_changed);

  return g_test_run ();
}
