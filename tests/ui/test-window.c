/* test-window.c: the window shows, edits and undoes; the list of doughs
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The real window under a display. What the pages show is tested with the
 * pages.
 */

#include "config.h"

#include <string.h>

#include "support.h"
#include "window/actions.h"
#include "window/dough-row.h"

/* Starting ******************************************************************/

static void
test_empty_window_says_what_can_be_done (void)
{
  TrApplication *application = ui_application_new ();
  TrWindow *window;

  g_application_activate (G_APPLICATION (application));
  window = gtk_application_get_windows (GTK_APPLICATION (application))->data;
  ui_frames (GTK_WIDGET (window), 2);

  g_assert_true (tr_window_is_pristine (window));
  g_assert_nonnull (ui_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, "Start from a plain dough"));
  g_assert_nonnull (ui_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, "Open a trial…"));
  g_assert_nonnull (ui_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, "Look at the demo"));
  g_assert_false (gtk_widget_get_mapped (GTK_WIDGET (tr_window_get_page (window, "strip"))));
  g_assert_false (g_str_has_prefix (gtk_window_get_title (GTK_WINDOW (window)), "•"));
  ui_application_free (application);
}

static void
test_plain_dough_is_a_dough_that_works (void)
{
  TrApplication *application = ui_application_new ();
  TrWindow *window;
  const TrDoughFigures *figures;

  g_application_activate (G_APPLICATION (application));
  window = gtk_application_get_windows (GTK_APPLICATION (application))->data;
  ui_act (window, "win.add-dough");

  g_assert_cmpuint (ui_get_trial (window)->doughs->len, ==, 1);
  figures = tr_figures_get_dough (tr_document_get_figures (tr_window_get_document (window)), 0);
  g_assert_cmpfloat (figures->piece.count, ==, 12);
  g_assert_true (figures->has_lamination);
  g_assert_true (figures->has_sheet);
  g_assert_cmpuint (figures->formula.problems->len, ==, 0);
  for (guint i = 0; i < figures->findings->len; i++)
    g_assert_cmpint (((TrFinding *) g_ptr_array_index (figures->findings, i))->severity, !=, TR_SEVERITY_STOP);
  g_assert_true (g_str_has_prefix (gtk_window_get_title (GTK_WINDOW (window)), "•"));

  ui_act (window, "win.undo");
  g_assert_cmpuint (ui_get_trial (window)->doughs->len, ==, 0);
  g_assert_true (tr_window_is_pristine (window));
  ui_application_free (application);
}

static void
test_demo_opens_untitled_in_an_empty_window (void)
{
  TrApplication *application = ui_application_new ();
  TrWindow *window;

  g_application_activate (G_APPLICATION (application));
  window = gtk_application_get_windows (GTK_APPLICATION (application))->data;
  ui_act (window, "win.open-demo");

  g_assert_cmpuint (ui_count_windows (application), ==, 1);
  g_assert_cmpuint (ui_get_trial (window)->doughs->len, >=, 3);
  g_assert_null (tr_document_get_file (tr_window_get_document (window)));
  g_assert_false (tr_document_is_modified (tr_window_get_document (window)));

  /* A second time the first is in the way. */
  ui_act (window, "win.open-demo");
  g_assert_cmpuint (ui_count_windows (application), ==, 2);
  ui_application_free (application);
}

static void
test_new_leaves_a_used_window_alone (UiFixture     *fixture,
                                     gconstpointer  data)
{
  ui_act (fixture->window, "win.new");
  g_assert_cmpuint (ui_count_windows (fixture->application), ==, 2);
  g_assert_cmpuint (ui_get_trial (fixture->window)->doughs->len, >=, 3);
}

/* Editing *******************************************************************/

static void
test_edit_is_seen_at_once (UiFixture     *fixture,
                           gconstpointer  data)
{
  g_autofree char *before = g_strdup (ui_get_strip (fixture->window));

  /* No turn of the main loop between the edit and the look. */
  ui_edit_pieces (fixture->window, 17);
  g_assert_cmpstr (ui_get_strip (fixture->window), !=, before);
  g_assert_true (g_str_has_prefix (ui_get_strip (fixture->window), "17 × "));
  g_assert_true (g_str_has_prefix (gtk_window_get_title (GTK_WINDOW (fixture->window)), "•"));

  ui_act (fixture->window, "win.undo");
  g_assert_cmpstr (ui_get_strip (fixture->window), ==, before);
  g_assert_false (g_str_has_prefix (gtk_window_get_title (GTK_WINDOW (fixture->window)), "•"));

  ui_act (fixture->window, "win.redo");
  g_assert_true (g_str_has_prefix (ui_get_strip (fixture->window), "17 × "));
}

static void
test_undo_says_what_it_will_undo (UiFixture     *fixture,
                                  gconstpointer  data)
{
  g_autoptr (GMenuModel) menu = NULL;
  g_autofree char *undo = NULL;
  g_autoptr (GMenuModel) section = NULL;

  g_assert_null (ui_find (GTK_WIDGET (fixture->window), GTK_TYPE_BUTTON, "Undo: change the batch"));
  ui_edit_pieces (fixture->window, 18);

  GtkWidget *button = ui_find (GTK_WIDGET (fixture->window), GTK_TYPE_BUTTON, "Undo: change the batch");

  g_assert_nonnull (button);
  g_assert_cmpstr (gtk_widget_get_tooltip_text (button), ==, "Undo: change the batch (Ctrl+Z)");

  menu = tr_actions_new_menu ("change the batch", NULL, NULL);
  section = g_menu_model_get_item_link (menu, TR_MENU_EDIT, G_MENU_LINK_SECTION);
  g_menu_model_get_item_attribute (section, 0, G_MENU_ATTRIBUTE_LABEL, "s", &undo);
  g_assert_cmpstr (undo, ==, "Undo: change the batch");
}

static void
test_typing_is_undone_before_the_trial (UiFixture     *fixture,
                                        gconstpointer  data)
{
  GtkWidget *entry;

  ui_edit_pieces (fixture->window, 19);
  tr_doughs_start_rename (ui_get_doughs (fixture->window));
  entry = gtk_widget_get_ancestor (gtk_window_get_focus (GTK_WINDOW (fixture->window)), GTK_TYPE_ENTRY);
  g_assert_nonnull (entry);
  ui_type (entry, "Another");

  ui_act (fixture->window, "win.undo");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), !=, "Another");
  g_assert_true (g_str_has_prefix (ui_get_strip (fixture->window), "19 × "));

  for (int i = 0; i < 20 && g_str_has_prefix (ui_get_strip (fixture->window), "19 × "); i++)
    ui_act (fixture->window, "win.undo");
  g_assert_false (tr_document_is_modified (tr_window_get_document (fixture->window)));
}

static void
test_units_change_every_page_at_once (UiFixture     *fixture,
                                      gconstpointer  data)
{
  g_autofree char *before = g_strdup (ui_get_strip (fixture->window));

  g_action_group_activate_action (G_ACTION_GROUP (fixture->application), "units", g_variant_new_string ("us"));
  g_assert_nonnull (strstr (ui_get_strip (fixture->window), "oz"));
  g_action_group_activate_action (G_ACTION_GROUP (fixture->application), "units", g_variant_new_string ("metric"));
  g_assert_cmpstr (ui_get_strip (fixture->window), ==, before);
}

/* Doughs ********************************************************************/

static char *
dup_order (TrWindow *window)
{
  GString *order = g_string_new (NULL);

  for (guint i = 0; i < ui_get_trial (window)->doughs->len; i++)
    g_string_append_printf (order, "%s|", tr_trial_get_dough (ui_get_trial (window), i)->name);

  return g_string_free (order, FALSE);
}

static char *
dup_shown_order (TrWindow *window)
{
  GtkWidget *list = ui_find_type (GTK_WIDGET (ui_get_doughs (window)), GTK_TYPE_LIST_BOX);
  GString *order = g_string_new (NULL);
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), i)) != NULL; i++)
    {
      int index = tr_trial_find_dough (ui_get_trial (window), tr_dough_row_get_id (TR_DOUGH_ROW (row)));

      g_assert_cmpint (index, >=, 0);
      g_string_append_printf (order, "%s|", tr_trial_get_dough (ui_get_trial (window), (guint) index)->name);
    }

  return g_string_free (order, FALSE);
}

static void
assert_shown_as_in_the_trial (TrWindow *window)
{
  g_autofree char *order = dup_order (window);
  g_autofree char *shown = dup_shown_order (window);

  g_assert_cmpstr (shown, ==, order);
  g_assert_cmpint (tr_trial_find_dough (ui_get_trial (window), tr_window_get_dough_id (window)), >=, 0);
}

static void
test_branch_stands_beside_and_knows_its_origin (UiFixture     *fixture,
                                                gconstpointer  data)
{
  g_autofree char *original = g_strdup (tr_window_get_dough_id (fixture->window));
  guint count = ui_get_trial (fixture->window)->doughs->len;
  const TrDough *copy;

  ui_act (fixture->window, "win.branch-dough");
  copy = tr_trial_get_dough (ui_get_trial (fixture->window), 1);
  g_assert_cmpuint (ui_get_trial (fixture->window)->doughs->len, ==, count + 1);
  g_assert_cmpstr (copy->from, ==, original);
  g_assert_cmpstr (copy->id, ==, tr_window_get_dough_id (fixture->window));
  g_assert_true (g_str_has_suffix (copy->name, " 2"));
  g_assert_cmpuint (copy->lines->len, ==, tr_trial_get_dough (ui_get_trial (fixture->window), 0)->lines->len);
  assert_shown_as_in_the_trial (fixture->window);
}

static void
test_undone_branch_leads_back_to_its_original (UiFixture     *fixture,
                                               gconstpointer  data)
{
  g_autofree char *original = g_strdup (tr_window_get_dough_id (fixture->window));

  ui_act (fixture->window, "win.branch-dough");
  ui_act (fixture->window, "win.undo");
  g_assert_cmpstr (tr_window_get_dough_id (fixture->window), ==, original);
  assert_shown_as_in_the_trial (fixture->window);

  ui_act (fixture->window, "win.redo");
  g_assert_cmpstr (tr_window_get_dough_id (fixture->window), ==, tr_trial_get_dough (ui_get_trial (fixture->window), 1)->id);
  assert_shown_as_in_the_trial (fixture->window);
}

static void
test_deleting_all_leads_to_the_start_and_back (UiFixture     *fixture,
                                               gconstpointer  data)
{
  TrDocument *document = tr_window_get_document (fixture->window);
  g_autofree char *before = ui_dup_trial_text (document);
  g_autofree char *after = NULL;
  guint count = ui_get_trial (fixture->window)->doughs->len;

  for (guint i = 0; i < count; i++)
    {
      assert_shown_as_in_the_trial (fixture->window);
      ui_act (fixture->window, "win.delete-dough");
    }
  g_assert_cmpuint (ui_get_trial (fixture->window)->doughs->len, ==, 0);
  g_assert_null (tr_window_get_dough_id (fixture->window));
  ui_frames (GTK_WIDGET (fixture->window), 2);
  g_assert_nonnull (ui_find (GTK_WIDGET (fixture->window), GTK_TYPE_BUTTON, "Start from a plain dough"));

  for (guint i = 0; i < count; i++)
    ui_act (fixture->window, "win.undo");
  after = ui_dup_trial_text (document);
  g_assert_cmpstr (after, ==, before);
  g_assert_false (tr_document_is_modified (document));
  assert_shown_as_in_the_trial (fixture->window);
}

static void
test_rename_in_place_commits_on_return (UiFixture     *fixture,
                                        gconstpointer  data)
{
  GtkWidget *entry;

  ui_act (fixture->window, "win.rename-dough");
  entry = gtk_widget_get_ancestor (gtk_window_get_focus (GTK_WINDOW (fixture->window)), GTK_TYPE_ENTRY);
  ui_type (entry, "Harbour dough");
  g_signal_emit_by_name (entry, "activate");

  g_assert_cmpstr (tr_trial_get_dough (ui_get_trial (fixture->window), 0)->name, ==, "Harbour dough");
  g_assert_cmpint (gtk_widget_get_mapped (entry), ==, FALSE);
  ui_act (fixture->window, "win.undo");
  g_assert_cmpstr (tr_trial_get_dough (ui_get_trial (fixture->window), 0)->name, !=, "Harbour dough");
}

static void
test_rename_to_nothing_keeps_the_name (UiFixture     *fixture,
                                       gconstpointer  data)
{
  GtkWidget *entry;

  ui_act (fixture->window, "win.rename-dough");
  entry = gtk_widget_get_ancestor (gtk_window_get_focus (GTK_WINDOW (fixture->window)), GTK_TYPE_ENTRY);
  ui_type (entry, "  ");
  g_signal_emit_by_name (entry, "activate");
  g_assert_false (tr_document_is_modified (tr_window_get_document (fixture->window)));
}

static void
test_move_by_key_keeps_the_dough_in_hand (UiFixture     *fixture,
                                          gconstpointer  data)
{
  g_autofree char *id = g_strdup (tr_window_get_dough_id (fixture->window));

  ui_act (fixture->window, "win.move-dough-down");
  g_assert_cmpint (tr_trial_find_dough (ui_get_trial (fixture->window), id), ==, 1);
  g_assert_cmpstr (tr_window_get_dough_id (fixture->window), ==, id);
  assert_shown_as_in_the_trial (fixture->window);
  ui_act (fixture->window, "win.move-dough-up");
  g_assert_cmpint (tr_trial_find_dough (ui_get_trial (fixture->window), id), ==, 0);
  assert_shown_as_in_the_trial (fixture->window);
}

static void
test_dropped_row_takes_that_place (UiFixture     *fixture,
                                   gconstpointer  data)
{
  GtkWidget *list = ui_find_type (GTK_WIDGET (ui_get_doughs (fixture->window)), GTK_TYPE_LIST_BOX);
  GtkListBoxRow *first = gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), 0);
  g_autofree char *id = g_strdup (tr_dough_row_get_id (TR_DOUGH_ROW (first)));
  g_auto (GValue) value = G_VALUE_INIT;
  gboolean handled = FALSE;

  g_value_init (&value, TR_TYPE_DOUGH_ROW);
  g_value_set_object (&value, first);
  g_signal_emit_by_name (ui_get_drop_target (list), "drop", &value, 4.0, (double) gtk_widget_get_height (list) + 400, &handled);
  g_assert_true (handled);
  g_assert_cmpint (tr_trial_find_dough (ui_get_trial (fixture->window), id), ==,
                   (int) ui_get_trial (fixture->window)->doughs->len - 1);
  assert_shown_as_in_the_trial (fixture->window);

  /* Rows know where they stand when they have been drawn there. */
  ui_frames (GTK_WIDGET (fixture->window), 2);
  g_signal_emit_by_name (ui_get_drop_target (list), "drop", &value, 4.0, 1.0, &handled);
  g_assert_cmpint (tr_trial_find_dough (ui_get_trial (fixture->window), id), ==, 0);
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  g_test_add_func ("/window/start/empty-window-says-what-can-be-done", test_empty_window_says_what_can_be_done);
  g_test_add_func ("/window/start/plain-dough-is-a-dough-that-works", test_plain_dough_is_a_dough_that_works);
  g_test_add_func ("/window/start/demo-opens-untitled-in-an-empty-window", test_demo_opens_untitled_in_an_empty_window);
  UI_ADD ("/window/start/new-leaves-a-used-window-alone", test_new_leaves_a_used_window_alone);
  UI_ADD ("/window/edit/is-seen-at-once", test_edit_is_seen_at_once);
  UI_ADD ("/window/edit/undo-says-what-it-will-undo", test_undo_says_what_it_will_undo);
  UI_ADD ("/window/edit/typing-is-undone-before-the-trial", test_typing_is_undone_before_the_trial);
  UI_ADD ("/window/edit/units-change-every-page-at-once", test_units_change_every_page_at_once);
  UI_ADD ("/window/doughs/branch-stands-beside-and-knows-its-origin", test_branch_stands_beside_and_knows_its_origin);
  UI_ADD ("/window/doughs/undone-branch-leads-back-to-its-original", test_undone_branch_leads_back_to_its_original);
  UI_ADD ("/window/doughs/deleting-all-leads-to-the-start-and-back", test_deleting_all_leads_to_the_start_and_back);
  UI_ADD ("/window/doughs/rename-in-place-commits-on-return", test_rename_in_place_commits_on_return);
  UI_ADD ("/window/doughs/rename-to-nothing-keeps-the-name", test_rename_to_nothing_keeps_the_name);
  UI_ADD ("/window/doughs/move-by-key-keeps-the-dough-in-hand", test_move_by_key_keeps_the_dough_in_hand);
  UI_ADD ("/window/doughs/dropped-row-takes-that-place", test_dropped_row_takes_that_place);

  return ui_run ();
}
