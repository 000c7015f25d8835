/* test-document.c: editing, undo, figures and signals of the open document
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "sample.h"
#include "trial/document-private.h"
#include "trial/members.h"

static gint64 now_us;

static gint64
clock_of_the_test (void)
{
  return now_us;
}

typedef struct {
  TrDocument *document;
  GPtrArray *pointers;           /* of each `changed` */
  GPtrArray *notified;           /* names of properties */
} Watched;

static void
document_changed_cb (TrDocument *document,
                     const char *pointer,
                     Watched    *watched)
{
  g_assert_true (tr_document_get_figures (document)->trial == tr_document_get_trial (document));
  g_ptr_array_add (watched->pointers, g_strdup (pointer));
}

static void
document_notify_cb (GObject    *object,
                    GParamSpec *pspec,
                    Watched    *watched)
{
  g_ptr_array_add (watched->notified, g_strdup (pspec->name));
}

static void
set_up (Watched       *watched,
        gconstpointer  data)
{
  now_us = 0;
  watched->document = tr_document_new_for_trial (sample_trial ());
  watched->pointers = g_ptr_array_new_with_free_func (g_free);
  watched->notified = g_ptr_array_new_with_free_func (g_free);
  _tr_document_set_clock (watched->document, clock_of_the_test);
  g_signal_connect (watched->document, "changed", G_CALLBACK (document_changed_cb), watched);
  g_signal_connect (watched->document, "notify", G_CALLBACK (document_notify_cb), watched);
}

static void
tear_down (Watched       *watched,
           gconstpointer  data)
{
  g_assert_finalize_object (watched->document);
  g_ptr_array_unref (watched->pointers);
  g_ptr_array_unref (watched->notified);
}

static void
set_title (TrDocument *document,
           const char *title,
           const char *key)
{
  TrTrial *draft = tr_document_draft (document);
  g_autoptr (GError) error = NULL;

  tr_set_text (&draft->title, title);
  g_assert_true (tr_document_commit (document, draft, title, key, "/title", &error));
  g_assert_no_error (error);
}

static const char *
get_title (TrDocument *document)
{
  return tr_document_get_trial (document)->title;
}

static char *
dup_notified (Watched *watched)
{
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < watched->notified->len; i++)
    g_string_append_printf (names, "%s ", (char *) g_ptr_array_index (watched->notified, i));
  g_ptr_array_set_size (watched->notified, 0);

  return g_string_free (names, FALSE);
}

static void
test_new (void)
{
  TrDocument *document = tr_document_new ();
  g_autofree char *name = tr_document_dup_display_name (document);

  g_assert_cmpuint (tr_document_get_trial (document)->doughs->len, ==, 0);
  g_assert_nonnull (tr_document_get_figures (document));
  g_assert_null (tr_document_get_file (document));
  g_assert_false (tr_document_is_modified (document));
  g_assert_false (tr_document_is_changed_on_disk (document));
  g_assert_cmpstr (name, ==, "Untitled trial");
  g_object_run_dispose (G_OBJECT (document));
  g_object_run_dispose (G_OBJECT (document));
  g_assert_finalize_object (document);
}

static void
test_commit_announces_once (Watched       *watched,
                            gconstpointer  data)
{
  set_title (watched->document, "A", NULL);
  g_autofree char *first = dup_notified (watched);
  set_title (watched->document, "B", NULL);
  g_autofree char *second = dup_notified (watched);

  g_assert_cmpuint (watched->pointers->len, ==, 2);
  g_assert_cmpstr (g_ptr_array_index (watched->pointers, 0), ==, "/title");
  g_assert_cmpstr (first, ==, "title undo-label modified ");
  g_assert_cmpstr (second, ==, "title undo-label ");
}

static void
test_undo_says_what_it_undid (Watched       *watched,
                              gconstpointer  data)
{
  set_title (watched->document, "A", NULL);
  tr_document_undo (watched->document);
  tr_document_redo (watched->document);
  tr_document_undo (watched->document);
  tr_document_undo (watched->document);   /* nothing left: says nothing */

  g_assert_cmpuint (watched->pointers->len, ==, 4);
  g_assert_cmpstr (g_ptr_array_index (watched->pointers, 3), ==, "/title");
  g_assert_cmpstr (get_title (watched->document), ==, "Lighthouse buns");
  g_assert_false (tr_document_is_modified (watched->document));
  g_assert_null (tr_document_get_undo_label (watched->document));
  g_assert_cmpstr (tr_document_get_redo_label (watched->document), ==, "A");
}

/* The same text in other structs is no edit. */
static void
test_equal_edit_makes_no_step (Watched       *watched,
                               gconstpointer  data)
{
  TrTrial *draft = tr_document_draft (watched->document);

  tr_trial_own_dough (draft, 0);
  tr_trial_own_bench (draft);
  tr_trial_own_pantry (draft);
  g_assert_true (tr_document_commit (watched->document, draft, "Nothing", NULL, "", NULL));
  g_assert_cmpuint (watched->pointers->len, ==, 0);
  g_assert_null (tr_document_get_undo_label (watched->document));
}

static void
test_invalid_edit_changes_nothing (Watched       *watched,
                                   gconstpointer  data)
{
  TrTrial *draft = tr_document_draft (watched->document);
  const TrTrial *before = tr_document_get_trial (watched->document);
  g_autoptr (GError) error = NULL;

  tr_dough_get_turn (tr_trial_own_dough (draft, 0), 0)->fold = 7;
  g_assert_false (tr_document_commit (watched->document, draft, "Fold", NULL, "", &error));
  g_assert_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_VALUE);
  g_assert_cmpstr (error->message, ==, "At /doughs/0/turns/0/fold expected a whole number from 2 to 6, found 7.");
  g_assert_true (tr_document_get_trial (watched->document) == before);
  g_assert_cmpuint (watched->pointers->len, ==, 0);
}

static void
test_drag_is_one_step (Watched       *watched,
                       gconstpointer  data)
{
  set_title (watched->document, "A", "drag");
  now_us += G_USEC_PER_SEC;
  set_title (watched->document, "B", "drag");
  now_us += G_USEC_PER_SEC;
  set_title (watched->document, "C", "drag");
  tr_document_seal (watched->document);
  set_title (watched->document, "D", "drag");
  now_us += 2 * G_USEC_PER_SEC;
  set_title (watched->document, "E", "drag");

  tr_document_undo (watched->document);
  g_assert_cmpstr (get_title (watched->document), ==, "D");
  tr_document_undo (watched->document);
  g_assert_cmpstr (get_title (watched->document), ==, "C");
  tr_document_undo (watched->document);
  g_assert_cmpstr (get_title (watched->document), ==, "Lighthouse buns");
}

static void
test_drag_back_leaves_no_step (Watched       *watched,
                               gconstpointer  data)
{
  set_title (watched->document, "A", "drag");
  set_title (watched->document, "B", "drag");
  set_title (watched->document, "Lighthouse buns", "drag");

  g_assert_null (tr_document_get_undo_label (watched->document));
  g_assert_false (tr_document_is_modified (watched->document));
  g_assert_cmpuint (watched->pointers->len, ==, 3);   /* the views follow all the same */
}

/* Not joined, the same edit back is a step of its own. */
static void
test_typing_back_is_a_step (Watched       *watched,
                            gconstpointer  data)
{
  set_title (watched->document, "A", NULL);
  set_title (watched->document, "Lighthouse buns", NULL);
  g_assert_true (tr_document_is_modified (watched->document));
  tr_document_undo (watched->document);
  g_assert_cmpstr (get_title (watched->document), ==, "A");
}

static void
test_paused_drag_is_one_step (Watched       *watched,
                              gconstpointer  data)
{
  const char *before = get_title (watched->document);

  tr_document_begin_drag (watched->document);
  set_title (watched->document, "A", "title");
  now_us += 5 * G_USEC_PER_SEC;
  set_title (watched->document, "B", "title");
  now_us += 5 * G_USEC_PER_SEC;
  set_title (watched->document, "C", "another");
  tr_document_end_drag (watched->document, FALSE);

  g_assert_cmpuint (watched->pointers->len, ==, 3);
  g_assert_cmpstr (tr_document_get_undo_label (watched->document), ==, "C");
  tr_document_undo (watched->document);
  g_assert_cmpstr (get_title (watched->document), ==, before);
  g_assert_null (tr_document_get_undo_label (watched->document));
}

static void
test_cancelled_drag_restores_all (Watched       *watched,
                                  gconstpointer  data)
{
  const TrTrial *before;

  set_title (watched->document, "A", NULL);
  set_title (watched->document, "B", NULL);
  tr_document_undo (watched->document);
  before = tr_document_get_trial (watched->document);
  g_ptr_array_set_size (watched->pointers, 0);

  tr_document_begin_drag (watched->document);
  set_title (watched->document, "C", NULL);
  g_assert_null (tr_document_get_redo_label (watched->document));
  tr_document_end_drag (watched->document, TRUE);

  g_assert_true (tr_document_get_trial (watched->document) == before);
  g_assert_cmpstr (tr_document_get_undo_label (watched->document), ==, "A");
  g_assert_cmpstr (tr_document_get_redo_label (watched->document), ==, "B");
  g_assert_cmpuint (watched->pointers->len, ==, 2);
  g_assert_cmpstr (g_ptr_array_index (watched->pointers, 1), ==, "/title");

  tr_document_undo (watched->document);
  g_assert_false (tr_document_is_modified (watched->document));
  tr_document_redo (watched->document);
  tr_document_redo (watched->document);
  g_assert_cmpstr (get_title (watched->document), ==, "B");
}

static void
test_cancelled_drag_is_unmodified (Watched       *watched,
                                   gconstpointer  data)
{
  tr_document_begin_drag (watched->document);
  set_title (watched->document, "A", NULL);
  g_assert_true (tr_document_is_modified (watched->document));
  tr_document_end_drag (watched->document, TRUE);
  g_assert_false (tr_document_is_modified (watched->document));

  /* nothing was committed: nothing is announced */
  g_ptr_array_set_size (watched->pointers, 0);
  tr_document_begin_drag (watched->document);
  tr_document_end_drag (watched->document, TRUE);
  tr_document_end_drag (watched->document, FALSE);
  g_assert_cmpuint (watched->pointers->len, ==, 0);
}

static void
test_dragged_back_leaves_no_step (Watched       *watched,
                                  gconstpointer  data)
{
  g_autofree char *before = g_strdup (get_title (watched->document));

  tr_document_begin_drag (watched->document);
  set_title (watched->document, "A", NULL);
  set_title (watched->document, before, NULL);
  tr_document_end_drag (watched->document, FALSE);

  g_assert_null (tr_document_get_undo_label (watched->document));
  g_assert_false (tr_document_is_modified (watched->document));
}

static void
test_undo_in_a_drag_is_safe (Watched       *watched,
                             gconstpointer  data)
{
  g_autofree char *before = g_strdup (get_title (watched->document));

  tr_document_begin_drag (watched->document);
  set_title (watched->document, "A", NULL);
  tr_document_undo (watched->document);
  g_assert_cmpstr (get_title (watched->document), ==, before);
  set_title (watched->document, "B", NULL);
  set_title (watched->document, "C", NULL);
  tr_document_end_drag (watched->document, FALSE);
  g_assert_cmpstr (get_title (watched->document), ==, "C");
  tr_document_undo (watched->document);
  g_assert_cmpstr (get_title (watched->document), ==, before);
  g_assert_false (tr_document_is_modified (watched->document));
}

static void
test_other_doughs_keep_their_figures (Watched       *watched,
                                      gconstpointer  data)
{
  const TrDoughFigures *other = tr_figures_get_dough (tr_document_get_figures (watched->document), 1);
  TrTrial *draft = tr_document_draft (watched->document);

  tr_trial_own_dough (draft, 0)->batch_value = 12;
  g_assert_true (tr_document_commit (watched->document, draft, "Batch", NULL, "/doughs/0/batch/value", NULL));
  g_assert_true (tr_figures_get_dough (tr_document_get_figures (watched->document), 1) == other);
}

static void
test_removing_a_dough_removes_references (Watched       *watched,
                                          gconstpointer  data)
{
  TrTrial *draft = tr_document_draft (watched->document);
  g_autoptr (GError) error = NULL;

  tr_trial_remove_dough (draft, 0);
  g_assert_true (tr_document_commit (watched->document, draft, "Delete", NULL, "/doughs", &error));
  g_assert_no_error (error);
}

static void
document_changed_edit_cb (TrDocument *document,
                          const char *pointer)
{
  if (g_strcmp0 (get_title (document), "A") == 0)
    set_title (document, "from inside", NULL);
}

static void
test_edit_from_changed (Watched       *watched,
                        gconstpointer  data)
{
  g_signal_connect (watched->document, "changed", G_CALLBACK (document_changed_edit_cb), NULL);
  set_title (watched->document, "A", NULL);
  g_assert_cmpstr (get_title (watched->document), ==, "from inside");
  g_assert_cmpstr (tr_document_get_undo_label (watched->document), ==, "from inside");
  g_signal_handlers_disconnect_by_func (watched->document, document_changed_edit_cb, NULL);
  tr_document_undo (watched->document);
  g_assert_cmpstr (tr_document_get_undo_label (watched->document), ==, "A");
}

/* Random edits; undo all, redo all, and every text is met again. */
static void
test_undo_all_redo_all (void)
{
  for (guint run = 0; run < 5; run++)
    {
      g_autoptr (TrDocument) document = tr_document_new_for_trial (random_trial ());
      g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);

      g_ptr_array_add (texts, tr_trial_write (tr_document_get_trial (document), NULL));
      for (guint i = 0; i < 30; i++)
        {
          TrTrial *draft = tr_document_draft (document);
          g_autoptr (GError) error = NULL;
          g_autofree char *text = NULL;

          random_edit (draft);
          g_assert_true (tr_document_commit (document, draft, "Edit", NULL, "", &error));
          g_assert_no_error (error);
          text = tr_trial_write (tr_document_get_trial (document), NULL);
          if (strcmp (text, g_ptr_array_index (texts, texts->len - 1)) != 0)
            g_ptr_array_add (texts, g_steal_pointer (&text));
        }

      for (guint i = texts->len; i-- > 0;)
        {
          g_autofree char *text = tr_trial_write (tr_document_get_trial (document), NULL);

          g_assert_cmpstr (text, ==, g_ptr_array_index (texts, i));
          g_assert_cmpint (tr_document_is_modified (document), ==, i > 0);
          tr_document_undo (document);
        }
      g_assert_null (tr_document_get_undo_label (document));
      for (guint i = 0; i < texts->len; i++)
        {
          g_autofree char *text = tr_trial_write (tr_document_get_trial (document), NULL);

          g_assert_cmpstr (text, ==, g_ptr_array_index (texts, i));
          tr_document_redo (document);
        }
      g_assert_null (tr_document_get_redo_label (document));
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

#define ADD(path, func) g_test_add ("/trial/document/" path, Watched, NULL, set_up, func, tear_down)
  g_test_add_func ("/trial/document/new-and-disposed-twice", test_new);
  ADD ("commit-announces-once", test_commit_announces_once);
  ADD ("undo-says-what-it-undid", test_undo_says_what_it_undid);
  ADD ("equal-edit-makes-no-step", test_equal_edit_makes_no_step);
  ADD ("invalid-edit-changes-nothing", test_invalid_edit_changes_nothing);
  ADD ("drag-is-one-step", test_drag_is_one_step);
  ADD ("drag-back-leaves-no-step", test_drag_back_leaves_no_step);
  ADD ("typing-back-is-a-step", test_typing_back_is_a_step);
  ADD ("paused-drag-is-one-step", test_paused_drag_is_one_step);
  ADD ("cancelled-drag-restores-all", test_cancelled_drag_restores_all);
  ADD ("cancelled-drag-is-unmodified", test_cancelled_drag_is_unmodified);
  ADD ("dragged-back-leaves-no-step", test_dragged_back_leaves_no_step);
  ADD ("undo-in-a-drag-is-safe", test_undo_in_a_drag_is_safe);
  ADD ("other-doughs-keep-their-figures", test_other_doughs_keep_their_figures);
  ADD ("removing-a-dough-removes-references", test_removing_a_dough_removes_references);
  ADD ("edit-from-changed", test_edit_from_changed);
  g_test_add_func ("/trial/document/undo-all-redo-all", test_undo_all_redo_all);

  return g_test_run ();
}
