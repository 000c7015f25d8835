/* test-sequences.c: folds are looked for, found and used
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "calc/search.h"
#include "page-fixture.h"
#include "window/sequence-finder.h"
#include "window/sequence-row.h"

/* With spaces at which no line ends. */
#define NB "\u00a0"
#define THREE_LETTERS "3" NB "·" NB "3" NB "·" NB "3"

static GtkWidget *
find (PageFixture *fixture,
      GType        type,
      const char  *label)
{
  GtkWidget *widget = ui_find (GTK_WIDGET (fixture->page), type, label);

  if (widget == NULL)
    g_error ("there is no %s", label);

  return widget;
}

static void
start_finding (PageFixture *fixture)
{
  page_set_up (fixture, tr_turns_page_new, "d1");
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (find (fixture, GTK_TYPE_TOGGLE_BUTTON, "Find a sequence")), TRUE);
  ui_frames (GTK_WIDGET (fixture->page), 2);
}

static void
wish (PageFixture *fixture,
      const char  *from,
      const char  *to)
{
  ui_type (find (fixture, GTK_TYPE_ENTRY, "From"), from);
  ui_type (find (fixture, GTK_TYPE_ENTRY, "To"), to);
  ui_settle ();
}

static const TrDough *
get_dough (PageFixture *fixture)
{
  return tr_trial_get_dough (tr_document_get_trial (fixture->document), 0);
}

static void
test_found_and_used (void)
{
  PageFixture fixture;
  GtkWidget *use;

  start_finding (&fixture);
  wish (&fixture, "27", "27");
  g_assert_true (ui_says (GTK_WIDGET (fixture.page), "3 · 3 · 3"));
  g_assert_true (ui_says (GTK_WIDGET (fixture.page), "3 × letter fold (3)"));
  g_assert_cmpuint (ui_count_type (GTK_WIDGET (fixture.page), TR_TYPE_SEQUENCE_ROW), ==, 1);

  use = find (&fixture, GTK_TYPE_BUTTON, "Use Half lock-in, " THREE_LETTERS);
  g_signal_emit_by_name (use, "clicked");
  ui_settle ();
  g_assert_cmpuint (get_dough (&fixture)->turns->len, ==, 3);
  for (guint i = 0; i < 3; i++)
    g_assert_cmpint (tr_dough_get_turn (get_dough (&fixture), i)->fold, ==, 3);
  g_assert_false (gtk_widget_get_sensitive (find (&fixture, GTK_TYPE_BUTTON, "In use")));
  g_assert_nonnull (strstr (tr_document_get_undo_label (fixture.document), THREE_LETTERS));

  tr_document_undo (fixture.document);
  ui_settle ();
  g_assert_true (gtk_widget_get_sensitive (find (&fixture, GTK_TYPE_BUTTON, "Use Half lock-in, " THREE_LETTERS)));
  g_assert_false (tr_document_is_modified (fixture.document));
  page_tear_down (&fixture);
}

static void
test_wishes (void)
{
  PageFixture fixture;
  guint few;

  start_finding (&fixture);
  wish (&fixture, "1", "2000");
  g_assert_cmpuint (ui_count_type (GTK_WIDGET (fixture.page), TR_TYPE_SEQUENCE_ROW), ==, 8);
  g_signal_emit_by_name (find (&fixture, GTK_TYPE_BUTTON, "Show more"), "clicked");
  ui_settle ();
  g_assert_cmpuint (ui_count_type (GTK_WIDGET (fixture.page), TR_TYPE_SEQUENCE_ROW), ==, 24);

  gtk_spin_button_set_value (GTK_SPIN_BUTTON (find (&fixture, GTK_TYPE_SPIN_BUTTON, "Turns, at most")), 1);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (find (&fixture, GTK_TYPE_SPIN_BUTTON, "Folds in, at most")), 2);
  ui_settle ();
  few = ui_count_type (GTK_WIDGET (fixture.page), TR_TYPE_SEQUENCE_ROW);
  g_assert_cmpuint (few, ==, 3);

  ui_type (find (&fixture, GTK_TYPE_ENTRY, "Hours, at most"), "0.01");
  ui_settle ();
  g_assert_cmpuint (ui_count_type (GTK_WIDGET (fixture.page), TR_TYPE_SEQUENCE_ROW), ==, 0);
  g_assert_true (ui_says (GTK_WIDGET (fixture.page), "No list of folds gives that"));
  page_tear_down (&fixture);
}

static void
test_bad_wishes (void)
{
  PageFixture fixture;

  start_finding (&fixture);
  wish (&fixture, "forty", "50");
  g_assert_true (ui_says (GTK_WIDGET (fixture.page), "forty"));
  wish (&fixture, "40", "20");
  g_assert_true (ui_says (GTK_WIDGET (fixture.page), "smaller than the first"));
  wish (&fixture, "0", "20");
  g_assert_true (ui_says (GTK_WIDGET (fixture.page), "not above 0"));
  wish (&fixture, "1", "20");
  g_assert_false (ui_says (GTK_WIDGET (fixture.page), "not above 0"));
  g_assert_false (tr_document_is_modified (fixture.document));
  page_tear_down (&fixture);
}

/* On a small worktop the dough is divided, and that is said and done. */
static void
test_blocks (void)
{
  PageFixture fixture;
  GtkWidget *row, *use;
  TrTrial *draft;
  g_autoptr (GError) error = NULL;
  int before;

  start_finding (&fixture);
  draft = tr_document_draft (fixture.document);
  tr_trial_own_bench (draft)->worktop_mm[0] = 420;
  tr_trial_own_bench (draft)->worktop_mm[1] = 420;
  tr_document_commit (fixture.document, draft, "smaller worktop", NULL, "", &error);
  g_assert_no_error (error);
  before = get_dough (&fixture)->lock_in->blocks;
  wish (&fixture, "9", "36");
  g_assert_true (ui_says (GTK_WIDGET (fixture.page), "Nothing fits as it is divided now"));

  row = ui_find_type (GTK_WIDGET (fixture.page), TR_TYPE_SEQUENCE_ROW);
  g_assert_false (ui_says (row, "Does not fit"));
  use = ui_find_type (row, GTK_TYPE_BUTTON);
  g_signal_emit_by_name (use, "clicked");
  ui_settle ();
  g_assert_cmpint (get_dough (&fixture)->lock_in->blocks, >, before);

  const GArray *steps = tr_page_get_figures (fixture.page)->lamination.steps;

  g_assert_cmpuint (steps->len, >, 0);
  for (guint i = 0; i < steps->len; i++)
    g_assert_cmpint (g_array_index (steps, TrTurnFigures, i).breaks, ==, 0);
  page_tear_down (&fixture);
}

/* What is used lets go of its button; the next one has the focus. */
static void
test_focus_stays (void)
{
  PageFixture fixture;
  GtkWidget *first;

  start_finding (&fixture);
  wish (&fixture, "1", "2000");
  first = ui_find_type (ui_find_type (GTK_WIDGET (fixture.page), TR_TYPE_SEQUENCE_ROW), GTK_TYPE_BUTTON);
  g_assert_true (gtk_widget_grab_focus (first));
  g_signal_emit_by_name (first, "clicked");
  ui_settle ();
  g_assert_false (gtk_widget_get_sensitive (first));

  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (GTK_WIDGET (fixture.page)));

  g_assert_nonnull (focus);
  g_assert_nonnull (gtk_widget_get_ancestor (focus, TR_TYPE_SEQUENCE_ROW));
  g_assert_false (gtk_widget_is_ancestor (focus, gtk_widget_get_ancestor (first, TR_TYPE_SEQUENCE_ROW)));
  page_tear_down (&fixture);
}

/* The way to a field leads out of it. */
static void
test_left (void)
{
  PageFixture fixture;

  start_finding (&fixture);
  g_assert_true (tr_page_go_to (fixture.page, "/turns/0/fold"));
  ui_settle ();
  g_assert_false (gtk_widget_get_mapped (ui_find_type (GTK_WIDGET (fixture.page), TR_TYPE_SEQUENCE_FINDER)));
  gtk_widget_activate_action (ui_find_type (GTK_WIDGET (fixture.page), TR_TYPE_SEQUENCE_FINDER), "turn.find", NULL);
  ui_settle ();
  g_assert_true (gtk_widget_get_mapped (ui_find_type (GTK_WIDGET (fixture.page), TR_TYPE_SEQUENCE_FINDER)));
  page_tear_down (&fixture);
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  g_test_add_func ("/sequences/found-and-used", test_found_and_used);
  g_test_add_func ("/sequences/wishes", test_wishes);
  g_test_add_func ("/sequences/bad-wishes", test_bad_wishes);
  g_test_add_func ("/sequences/blocks", test_blocks);
  g_test_add_func ("/sequences/focus-stays", test_focus_stays);
  g_test_add_func ("/sequences/left", test_left);

  return ui_run ();
}
