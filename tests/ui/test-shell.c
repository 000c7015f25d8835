/* test-shell.c: actions, layout, ways to a field, names, preferences
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The real window under a display.
 */

#include "config.h"

#include <string.h>

#include "support.h"
#include "window/actions.h"
#include "window/doughs.h"
#include "window/field.h"
#include "window/findings.h"
#include "window/notices.h"
#include "window/prediction-editor.h"
#include "window/print-preview.h"
#include "window/strip.h"

/* Actions *******************************************************************/

static gboolean
is_same_key (const TrAction *a,
             const TrAction *b)
{
  guint a_key, b_key;
  GdkModifierType a_modifiers, b_modifiers;

  if (a->accelerator == NULL || b->accelerator == NULL)
    return FALSE;

  gtk_accelerator_parse (a->accelerator, &a_key, &a_modifiers);
  gtk_accelerator_parse (b->accelerator, &b_key, &b_modifiers);

  return a_key == b_key && a_modifiers == b_modifiers;
}

static void
test_no_accelerator_twice (void)
{
  guint n_actions;
  const TrAction *actions = tr_actions_get (&n_actions);
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < n_actions; i++)
    {
      guint key;
      GdkModifierType modifiers;

      if (actions[i].accelerator == NULL)
        continue;
      g_assert_true (gtk_accelerator_parse (actions[i].accelerator, &key, &modifiers));

      if (!g_hash_table_add (seen, g_strdup_printf ("%d %u %u", actions[i].keys, key, modifiers)))
        g_error ("%s: its key is another's too", actions[i].name);
    }
  g_assert_cmpuint (g_hash_table_size (seen), >, 10);

  /* What counts only somewhere is not what counts everywhere. The preview is a window of its own. */
  for (guint i = 0; i < n_actions; i++)
    for (guint j = 0; j < n_actions; j++)
      if (actions[i].keys == TR_KEYS_EVERYWHERE && actions[j].keys != TR_KEYS_EVERYWHERE && actions[j].keys != TR_KEYS_PREVIEW
          && is_same_key (&actions[i], &actions[j]))
        g_error ("%s: its key is that of %s", actions[j].name, actions[i].name);
}

/* "app.units::us" is the action "units" of the application. */
static char *
dup_plain_name (const char *detailed_name)
{
  const char *target = strstr (detailed_name, "::");

  return target != NULL ? g_strndup (detailed_name, (gsize) (target - detailed_name)) : g_strdup (detailed_name);
}

/* The widget that an action belongs to, by what stands before its dot. */
static GType
get_owner (const char *name)
{
  static const struct { const char *prefix, *type; } owners[] = {
    { "win.", "TrWindow" }, { "preview.", "TrPrintPreview" }, { "turn.", "TrTurnsPage" }, { "picture.", "TrPictureView" },
    { "prediction.", "TrPredictionEditor" },
  };

  g_type_ensure (TR_TYPE_PRINT_PREVIEW);
  g_type_ensure (TR_TYPE_PREDICTION_EDITOR);
  for (guint i = 0; i < G_N_ELEMENTS (owners); i++)
    if (g_str_has_prefix (name, owners[i].prefix))
      return g_type_from_name (owners[i].type);
  g_error ("%s: say here whose it is", name);
}

static gboolean
is_installed (const char *detailed_name)
{
  g_autoptr (GTypeClass) klass = g_type_class_ref (get_owner (detailed_name));
  g_autofree char *name = dup_plain_name (detailed_name);
  const char *installed, *property;
  const GVariantType *parameter;
  GType owner;

  for (guint i = 0; gtk_widget_class_query_action ((GtkWidgetClass *) klass, i, &owner, &installed, &parameter, &property); i++)
    if (g_str_equal (installed, name))
      return TRUE;

  return FALSE;
}

static void
test_every_action_is_there_once (UiFixture     *fixture,
                                 gconstpointer  data)
{
  guint n_actions;
  const TrAction *actions = tr_actions_get (&n_actions);
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  /* The types of its widgets are known by name once it is built, which a window does when it is idle. */
  g_assert_nonnull (tr_window_get_page (fixture->window, "turns"));
  for (guint i = 0; i < n_actions; i++)
    {
      g_assert_true (g_hash_table_add (seen, (char *) actions[i].name));
      g_assert_cmpstr (tr_action_get_label (&actions[i]), !=, "");
      if (g_str_has_prefix (actions[i].name, "app."))
        {
          g_autofree char *name = dup_plain_name (actions[i].name);

          g_assert_true (g_action_group_has_action (G_ACTION_GROUP (fixture->application), name + strlen ("app.")));
        }
      else
        g_assert_true (is_installed (actions[i].name));
    }
}

static guint
count_items (GMenuModel *menu)
{
  guint count = 0;

  for (int i = 0; i < g_menu_model_get_n_items (menu); i++)
    {
      g_autoptr (GMenuModel) section = g_menu_model_get_item_link (menu, i, G_MENU_LINK_SECTION);
      g_autoptr (GMenuModel) submenu = g_menu_model_get_item_link (menu, i, G_MENU_LINK_SUBMENU);

      if (section != NULL)
        count += count_items (section);
      else if (submenu != NULL)
        count += count_items (submenu);
      else
        count++;
    }

  return count;
}

static void
test_menu_holds_the_whole_table (void)
{
  g_autoptr (GMenuModel) menu = tr_actions_new_menu (NULL, NULL, NULL);
  guint n_actions, n_in_menu = 0;
  const TrAction *actions = tr_actions_get (&n_actions);

  for (guint i = 0; i < n_actions; i++)
    n_in_menu += actions[i].menu != TR_MENU_NONE;
  g_assert_cmpuint (count_items (menu), ==, n_in_menu);
}

static void
test_every_action_survives_an_empty_window (void)
{
  static const char *const asks[] = { "win.open", "win.save", "win.save-as", "win.export-card", "win.export-all-cards",
                                      "win.export-comparison", "win.export-score-sheets", "win.export-code-labels",
                                      "win.export-tasting-key", "win.export-tasting-result", "win.print-card",
                                      "win.print-comparison", "win.print-score-sheets", "win.print-code-labels",
                                      "win.print-tasting-key", "win.print-tasting-result",
                                      "win.preferences", "win.about", "win.quit", "win.close", "win.shortcuts" };
  TrApplication *application = ui_application_new ();
  guint n_actions;
  const TrAction *actions = tr_actions_get (&n_actions);
  TrWindow *window;

  g_application_activate (G_APPLICATION (application));
  window = gtk_application_get_windows (GTK_APPLICATION (application))->data;
  for (guint i = 0; i < n_actions; i++)
    {
      gboolean does_ask = FALSE;

      for (guint j = 0; j < G_N_ELEMENTS (asks); j++)
        does_ask |= g_str_equal (asks[j], actions[i].name);
      if (!does_ask && g_str_has_prefix (actions[i].name, "win."))
        ui_act (window, actions[i].name);
    }
  ui_settle ();
  ui_application_free (application);
}

/* Layout ********************************************************************/

static void
assert_layout (int      width,
               double   scale,
               TrLayout expected)
{
  TrApplication *application = ui_application_new ();
  int dpi;
  TrWindow *window;

  g_object_get (gtk_settings_get_default (), "gtk-xft-dpi", &dpi, NULL);
  g_object_set (gtk_settings_get_default (), "gtk-xft-dpi", (int) (96 * 1024 * scale), NULL);
  g_object_set (tr_application_get_preferences (application), "window-width", width, "window-height", 700, NULL);
  window = ui_demo_window_new (application);
  ui_frames (GTK_WIDGET (window), 4);

  g_assert_cmpint (tr_window_get_layout (window), ==, expected);
  /* Nothing is cut off: the window is as small as it was told to be. */
  g_assert_cmpint (gtk_widget_get_width (GTK_WIDGET (window)), <=, width);
  g_assert_cmpint (gtk_widget_get_height (GTK_WIDGET (window)), <=, 700);
  g_object_set (gtk_settings_get_default (), "gtk-xft-dpi", dpi, NULL);
  ui_application_free (application);
}

static void
test_layout_follows_the_width (void)
{
  assert_layout (1280, 1.0, TR_LAYOUT_WIDE);
  assert_layout (1024, 1.0, TR_LAYOUT_NARROW);
  assert_layout (780, 1.0, TR_LAYOUT_COMPACT);
}

static void
test_layout_follows_the_size_of_text (void)
{
  assert_layout (1280, 1.5, TR_LAYOUT_NARROW);
  assert_layout (1024, 1.5, TR_LAYOUT_COMPACT);
}

static void
test_window_size_is_kept (void)
{
  TrApplication *application = ui_application_new ();
  TrWindow *window;
  int width, height;
  gboolean maximized;

  window = ui_demo_window_new (application);
  gtk_window_set_default_size (GTK_WINDOW (window), 1190, 710);
  ui_frames (GTK_WIDGET (window), 2);
  gtk_window_close (GTK_WINDOW (window));
  ui_settle ();
  tr_preferences_get_size (tr_application_get_preferences (application), &width, &height, &maximized);
  g_assert_cmpint (width, ==, 1190);
  g_assert_cmpint (height, ==, 710);
  g_assert_false (maximized);
  ui_application_free (application);
}

static void
test_filling_the_screen_is_kept (void)
{
  TrApplication *application = ui_application_new ();
  TrPreferences *preferences = tr_application_get_preferences (application);
  TrWindow *window;
  int width, height, width_before, height_before;
  gboolean maximized;

  tr_preferences_get_size (preferences, &width_before, &height_before, &maximized);
  g_object_set (preferences, "window-maximized", TRUE, NULL);
  window = ui_demo_window_new (application);
  g_assert_true (gtk_window_is_maximized (GTK_WINDOW (window)));
  gtk_window_close (GTK_WINDOW (window));
  ui_settle ();
  tr_preferences_get_size (preferences, &width, &height, &maximized);
  g_assert_true (maximized);
  /* What it goes back to is what it was. */
  g_assert_cmpint (width, ==, width_before);
  g_assert_cmpint (height, ==, height_before);
  g_object_set (preferences, "window-maximized", FALSE, NULL);
  ui_application_free (application);
}

/* The pages are made after the first frame: unless somebody asks for one before, or there is none. */
static void
test_pages_come_after_the_first_frame (void)
{
  TrApplication *application = ui_application_new ();
  g_autofree char *path = ui_write_demo ();
  g_autoptr (TrDocument) document = tr_document_new_for_trial (tr_trial_read_file (path, NULL));
  g_autoptr (TrDocument) another = tr_document_new_for_trial (tr_trial_read_file (path, NULL));
  TrWindow *window = tr_application_show (application, document, NULL);
  GtkWidget *focus;

  g_assert_null (ui_find_type (GTK_WIDGET (window), TR_TYPE_FIELD));
  tr_window_go_to (window, "/cut/trim_mm");
  focus = gtk_window_get_focus (GTK_WINDOW (window));
  g_assert_nonnull (gtk_widget_get_ancestor (focus, TR_TYPE_FIELD));
  ui_frames (GTK_WIDGET (window), 3);
  ui_settle ();
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (window)) == focus);
  g_assert_cmpstr (tr_page_get_dough (tr_window_get_page (window, "formula"))->id, ==, tr_window_get_dough_id (window));

  /* Closed before it was seen. */
  window = tr_application_show (application, another, NULL);
  g_assert_cmpuint (ui_count_windows (application), ==, 2);
  g_assert_null (ui_find_type (GTK_WIDGET (window), TR_TYPE_FIELD));
  gtk_window_destroy (GTK_WINDOW (window));
  ui_settle ();
  ui_application_free (application);
}

/* Findings ******************************************************************/

static gboolean
has_focus_within (TrWindow   *window,
                  const char *page)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (window));

  return focus != NULL && gtk_widget_is_ancestor (focus, GTK_WIDGET (tr_window_get_page (window, page)));
}

static void
test_pointers_lead_to_their_page (UiFixture     *fixture,
                                  gconstpointer  data)
{
  static const struct { const char *pointer, *page; } cases[] = {
    { "/lines/0/amount", "formula" },
    { "/batch/value", "formula" },
    { "/turns/0/thickness_mm", "turns" },
    { "/lock_in/fat_thickness_mm", "turns" },
    { "/cut/thickness_mm", "sheet" },
    { "/method/dough_c", "method" },
    { "/bench/worktop_mm/0", "bench" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      ui_act_on (fixture->window, "win.go-to", cases[i].pointer);
      ui_frames (GTK_WIDGET (fixture->window), 1);
      if (!has_focus_within (fixture->window, cases[i].page))
        g_error ("%s does not lead into %s", cases[i].pointer, cases[i].page);
      g_assert_true (gtk_widget_get_mapped (GTK_WIDGET (tr_window_get_page (fixture->window, cases[i].page))));
    }
}

/* How many rows stand above the one with a heading, which the strip does not count. */
static guint
count_shown_findings (TrWindow *window)
{
  GtkWidget *list = ui_find_type (GTK_WIDGET (tr_window_get_page (window, "findings")), GTK_TYPE_LIST_BOX);
  GtkListBoxRow *row;
  guint count = 0;

  while ((row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), (int) count)) != NULL && gtk_list_box_row_get_header (row) == NULL)
    count++;
  g_assert_nonnull (row);
  g_assert_null (gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), (int) count + 1));

  return count;
}

static void
test_strip_counts_what_the_list_shows (UiFixture     *fixture,
                                       gconstpointer  data)
{
  TrPage *page = tr_window_get_page (fixture->window, "strip");

  ui_act (fixture->window, "win.show-findings");
  ui_frames (GTK_WIDGET (fixture->window), 2);
  for (guint i = 0; i < ui_get_trial (fixture->window)->doughs->len; i++)
    {
      tr_window_set_dough (fixture->window, tr_trial_get_dough (ui_get_trial (fixture->window), i)->id);
      ui_frames (GTK_WIDGET (fixture->window), 2);

      guint count = count_shown_findings (fixture->window);
      g_autofree char *said = count == 0 ? g_strdup ("no findings") :
                              g_strdup_printf (count == 1 ? "· %u finding" : "· %u findings", count);

      g_assert_true (g_str_has_suffix (ui_get_strip (fixture->window), said));
      g_assert_cmpint (tr_findings_get_worst (tr_page_get_figures (page)) == NULL, ==, count == 0);
    }
}

static void
test_every_finding_leads_somewhere (UiFixture     *fixture,
                                    gconstpointer  data)
{
  TrFindings *findings = TR_FINDINGS (tr_window_get_page (fixture->window, "findings"));
  GtkWidget *list;

  ui_act (fixture->window, "win.show-findings");
  ui_frames (GTK_WIDGET (fixture->window), 2);
  list = ui_find_type (GTK_WIDGET (findings), GTK_TYPE_LIST_BOX);
  for (guint i = 0; i < ui_get_trial (fixture->window)->doughs->len; i++)
    {
      const TrDoughFigures *figures;
      guint rows = 0;

      tr_window_set_dough (fixture->window, tr_trial_get_dough (ui_get_trial (fixture->window), i)->id);
      figures = tr_page_get_figures (TR_PAGE (findings));
      while (gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), (int) rows) != NULL)
        rows++;
      g_assert_cmpuint (rows, ==, figures->findings->len);
      for (guint j = 0; j < rows; j++)
        {
          gtk_window_set_focus (GTK_WINDOW (fixture->window), NULL);
          g_signal_emit_by_name (list, "row-activated", gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), (int) j));
          g_assert_nonnull (gtk_window_get_focus (GTK_WINDOW (fixture->window)));
        }
    }
}

/* Undo **********************************************************************/

static void
test_undo_takes_back_what_cannot_be_read (UiFixture     *fixture,
                                          gconstpointer  data)
{
  TrDocument *document = tr_window_get_document (fixture->window);
  GtkWidget *text;
  g_autofree char *before = NULL;

  ui_act_on (fixture->window, "win.go-to", "/cut/trim_mm");
  ui_frames (GTK_WIDGET (fixture->window), 1);
  text = gtk_window_get_focus (GTK_WINDOW (fixture->window));
  before = g_strdup (gtk_editable_get_text (GTK_EDITABLE (text)));
  gtk_editable_set_text (GTK_EDITABLE (text), "thumbs");
  g_assert_false (tr_document_is_modified (document));
  ui_act (fixture->window, "win.undo");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, before);
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (fixture->window)) == text);
  g_assert_false (tr_document_is_modified (document));

  /* What could be read on the way is a step of the document, undone after it. */
  gtk_editable_set_text (GTK_EDITABLE (text), "9");
  gtk_editable_set_text (GTK_EDITABLE (text), "9 thumbs");
  ui_act (fixture->window, "win.undo");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "9");
  ui_act (fixture->window, "win.undo");
  g_assert_false (tr_document_is_modified (document));
}

/* Access ********************************************************************/

static gboolean
has_name (GtkWidget *widget)
{
  const char *label = GTK_IS_BUTTON (widget) ? gtk_button_get_label (GTK_BUTTON (widget)) : NULL;

  if (label != NULL || ui_find_type (widget, GTK_TYPE_LABEL) != NULL)
    return TRUE;
  /* The check's answer is NULL when they are equal: no name equals "". */
  g_autofree char *difference = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, "");

  return difference != NULL && strstr (difference, "NULL") == NULL
         && gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL);
}

/* A menu button is named by its inner button, which is looked at too. */
static void
assert_buttons_named (GtkWidget *widget)
{
  if (GTK_IS_BUTTON (widget) && gtk_widget_get_mapped (widget)
      && gtk_widget_get_ancestor (widget, GTK_TYPE_WINDOW_CONTROLS) == NULL
      && gtk_widget_get_ancestor (widget, GTK_TYPE_MENU_BUTTON) == NULL
      && gtk_widget_get_ancestor (widget, GTK_TYPE_DROP_DOWN) == NULL
      && !has_name (widget))
    g_error ("a button without a name, tooltip “%s”", gtk_widget_get_tooltip_text (widget));

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    assert_buttons_named (child);
}

static void
test_every_button_has_a_name (UiFixture     *fixture,
                              gconstpointer  data)
{
  assert_buttons_named (GTK_WIDGET (fixture->window));
  g_assert_nonnull (ui_find (GTK_WIDGET (fixture->window), GTK_TYPE_LIST_BOX, "Doughs"));
}

/* Contract: a window with everything in it; every type by itself is test-contract.c's. */

static void
test_window_can_be_disposed_twice (void)
{
  TrApplication *application = ui_application_new ();
  TrWindow *window = ui_demo_window_new (application);

  g_object_ref (window);
  gtk_window_destroy (GTK_WINDOW (window));
  g_object_run_dispose (G_OBJECT (window));
  g_object_run_dispose (G_OBJECT (window));
  ui_settle ();
  g_assert_finalize_object (window);
  ui_application_free (application);
}

static void
test_preferences_without_a_schema_subprocess (void)
{
  g_autoptr (TrPreferences) preferences = tr_preferences_new ();
  TrReader reader;

  tr_preferences_init_reader (preferences, &reader);
  g_assert_cmpint (reader.units, ==, TR_UNITS_METRIC);
  g_object_set (preferences, "units", "us", "colours", "dark", NULL);
  tr_preferences_init_reader (preferences, &reader);
  g_assert_cmpint (reader.units, ==, TR_UNITS_US);
  g_assert_cmpstr (tr_preferences_get_colours (preferences), ==, "dark");
}

/* One program's settings are the next one's. */
static void
test_preferences_are_kept (void)
{
  static const struct { const char *name; double step; } cases[] = { { "scale-step", 2 }, { "fine-scale-step", 0.05 } };
  g_autoptr (TrPreferences) first = tr_preferences_new ();
  g_autoptr (TrPreferences) second = tr_preferences_new ();
  g_autofree char *units = NULL;

  g_object_set (first, "units", "us", "colours", "dark", NULL);
  g_object_get (second, "units", &units, NULL);
  g_assert_cmpstr (units, ==, "us");
  g_assert_cmpstr (tr_preferences_get_colours (second), ==, "dark");
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double step;

      g_object_set (first, cases[i].name, cases[i].step, NULL);
      g_object_get (second, cases[i].name, &step, NULL);
      g_assert_cmpfloat (step, ==, cases[i].step);
      g_object_set (first, cases[i].name, 0.0, NULL);
    }
  g_object_set (first, "units", "metric", "colours", "system", NULL);
}

static void
test_preferences_without_a_schema (void)
{
  g_autofree char *before = g_strdup (g_getenv ("GSETTINGS_SCHEMA_DIR"));

  g_setenv ("GSETTINGS_SCHEMA_DIR", "/nonexistent", TRUE);
  g_test_trap_subprocess ("/preferences/without-a-schema/subprocess", 0, 0);
  g_test_trap_assert_passed ();
  if (before != NULL)
    g_setenv ("GSETTINGS_SCHEMA_DIR", before, TRUE);
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  g_test_add_func ("/window/actions/no-accelerator-twice", test_no_accelerator_twice);
  UI_ADD ("/window/actions/every-action-is-there-once", test_every_action_is_there_once);
  g_test_add_func ("/window/actions/menu-holds-the-whole-table", test_menu_holds_the_whole_table);
  g_test_add_func ("/window/actions/every-action-survives-an-empty-window", test_every_action_survives_an_empty_window);
  g_test_add_func ("/window/layout/follows-the-width", test_layout_follows_the_width);
  g_test_add_func ("/window/layout/follows-the-size-of-text", test_layout_follows_the_size_of_text);
  g_test_add_func ("/window/layout/window-size-is-kept", test_window_size_is_kept);
  g_test_add_func ("/window/layout/filling-the-screen-is-kept", test_filling_the_screen_is_kept);
  g_test_add_func ("/window/layout/pages-come-after-the-first-frame", test_pages_come_after_the_first_frame);
  UI_ADD ("/window/findings/pointers-lead-to-their-page", test_pointers_lead_to_their_page);
  UI_ADD ("/window/findings/strip-counts-what-the-list-shows", test_strip_counts_what_the_list_shows);
  UI_ADD ("/window/findings/every-finding-leads-somewhere", test_every_finding_leads_somewhere);
  UI_ADD ("/window/undo/takes-back-what-cannot-be-read", test_undo_takes_back_what_cannot_be_read);
  UI_ADD ("/window/access/every-button-has-a-name", test_every_button_has_a_name);
  g_test_add_func ("/contract/window-can-be-disposed-twice", test_window_can_be_disposed_twice);
  g_test_add_func ("/preferences/are-kept", test_preferences_are_kept);
  g_test_add_func ("/preferences/without-a-schema", test_preferences_without_a_schema);
  g_test_add_func ("/preferences/without-a-schema/subprocess", test_preferences_without_a_schema_subprocess);

  return ui_run ();
}
