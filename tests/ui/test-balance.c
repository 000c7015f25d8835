/* test-balance.c: the handles of the ratios, by pointer, keys and numbers
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Real events by the display's server, in the real window on the demo. What
 * came of them is read from the document and from the screen.
 */

#include "config.h"

#include "hand.h"
#include "window/balance-row.h"
#include "window/balance-scale.h"
#include "window/balance.h"
#include "window/line-row.h"
#include "window/window.h"

typedef struct
{
  UiFixture ui;
  TrDocument *document;
  TrBalance *balance;
  char *before, *strip;
} Fixture;

static void
set_up (Fixture       *fixture,
        gconstpointer  data)
{
  ui_set_up (&fixture->ui, data);
  fixture->document = tr_window_get_document (fixture->ui.window);
  fixture->balance = TR_BALANCE (ui_find_type (GTK_WIDGET (fixture->ui.window), TR_TYPE_BALANCE));
  fixture->before = ui_dup_trial_text (fixture->document);
  fixture->strip = g_strdup (ui_get_strip (fixture->ui.window));
  hand_focus (GTK_WINDOW (fixture->ui.window));
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data)
{
  g_free (fixture->before);
  g_free (fixture->strip);
  ui_tear_down (&fixture->ui, data);
}

static TrBalanceRow *
get_row (Fixture *fixture,
         TrRatio  ratio)
{
  return TR_BALANCE_ROW (tr_balance_get_row (fixture->balance, ratio));
}

static GtkWidget *
show_scale (Fixture *fixture,
            TrRatio  ratio)
{
  GtkWidget *scale = tr_balance_row_get_scale (get_row (fixture, ratio));
  GtkWidget *scroller = gtk_widget_get_ancestor (scale, GTK_TYPE_SCROLLED_WINDOW);
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));
  graphene_rect_t bounds;

  gtk_widget_grab_focus (scale);
  ui_frames (GTK_WIDGET (fixture->ui.window), 3);
  g_assert_true (gtk_widget_compute_bounds (scale, scroller, &bounds));
  gtk_adjustment_set_value (adjustment, gtk_adjustment_get_value (adjustment) + bounds.origin.y - 100);
  ui_frames (GTK_WIDGET (fixture->ui.window), 3);

  return scale;
}

static double
get_ratio (Fixture *fixture,
           TrRatio  ratio)
{
  return tr_ratio_get (tr_figures_get_dough (tr_document_get_figures (fixture->document), 0), ratio);
}

static void
assert_as_before (Fixture *fixture)
{
  g_autofree char *now = ui_dup_trial_text (fixture->document);

  g_assert_true (g_str_equal (now, fixture->before));
  g_assert_cmpstr (ui_get_strip (fixture->ui.window), ==, fixture->strip);
  g_assert_false (tr_document_is_modified (fixture->document));
}

static void
assert_one_step (Fixture    *fixture,
                 const char *label)
{
  g_assert_cmpstr (tr_document_get_undo_label (fixture->document), ==, label);
  tr_document_undo (fixture->document);
  g_assert_null (tr_document_get_undo_label (fixture->document));
  assert_as_before (fixture);
}

/* Some entry below `root` shows that. */
static gboolean
is_shown (GtkWidget  *root,
          const char *text)
{
  if (GTK_IS_ENTRY (root) && g_str_equal (gtk_editable_get_text (GTK_EDITABLE (root)), text))
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (is_shown (child, text))
      return TRUE;

  return FALSE;
}

/* While it is held, everything has followed: figures, number, handle, and the
 * line of the milk, which was 150 g. */
static void
look_halfway (gpointer data)
{
  Fixture *fixture = data;
  TrBalanceRow *row = get_row (fixture, TR_RATIO_ALL_WATER);
  g_autofree char *now = ui_dup_trial_text (fixture->document);
  double shown = g_strtod (gtk_editable_get_text (GTK_EDITABLE (tr_balance_row_get_entry (row))), NULL);

  g_assert_false (g_str_equal (now, fixture->before));
  const char *milk = tr_dough_get_line (tr_trial_get_dough (tr_document_get_trial (fixture->document), 0), 4)->amount;
  g_assert_cmpstr (milk, !=, "150 g");
  g_assert_true (is_shown (GTK_WIDGET (fixture->ui.window), milk));
  g_assert_cmpfloat_with_epsilon (shown, get_ratio (fixture, TR_RATIO_ALL_WATER), 0.051);
  g_assert_cmpfloat_with_epsilon (gtk_range_get_value (GTK_RANGE (tr_balance_row_get_scale (row))), get_ratio (fixture, TR_RATIO_ALL_WATER), 1e-9);
}

static void
drag (Fixture  *fixture,
      TrRatio   ratio,
      double    by,
      void    (*halfway) (gpointer))
{
  GtkWidget *scale = show_scale (fixture, ratio);
  double x = tr_balance_scale_get_x (TR_BALANCE_SCALE (scale), get_ratio (fixture, ratio));
  GdkRectangle rect;

  gtk_range_get_range_rect (GTK_RANGE (scale), &rect);
  hand_drag (scale, x, rect.y + rect.height / 2.0, x + by, rect.y + rect.height / 2.0, halfway, fixture);
}

static void
test_drag_is_one_step (Fixture       *fixture,
                       gconstpointer  data)
{
  double water = get_ratio (fixture, TR_RATIO_ALL_WATER);

  drag (fixture, TR_RATIO_ALL_WATER, 60, look_halfway);
  g_assert_cmpfloat (get_ratio (fixture, TR_RATIO_ALL_WATER), >, water + 2);
  assert_one_step (fixture, "change hydration");
}

/* Where the hand was, not at the line that the handle moved. */
static void
test_undo_comes_back_to_the_handle (Fixture       *fixture,
                                    gconstpointer  data)
{
  GtkWidget *scale = show_scale (fixture, TR_RATIO_DOUGH_FAT);
  guint n_rows = ui_count_type (GTK_WIDGET (fixture->ui.window), TR_TYPE_LINE_ROW);

  drag (fixture, TR_RATIO_DOUGH_FAT, 60, NULL);
  ui_act (fixture->ui.window, "win.undo");
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (fixture->ui.window)) == scale);
  assert_as_before (fixture);
  ui_act (fixture->ui.window, "win.redo");
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (fixture->ui.window)) == scale);
  g_assert_true (tr_document_is_modified (fixture->document));
  g_assert_cmpuint (ui_count_type (GTK_WIDGET (fixture->ui.window), TR_TYPE_LINE_ROW), ==, n_rows);
}

static void
look_at_strip (gpointer data)
{
  Fixture *fixture = data;

  g_assert_cmpstr (ui_get_strip (fixture->ui.window), !=, fixture->strip);
}

static void
test_strip_follows (Fixture       *fixture,
                    gconstpointer  data)
{
  drag (fixture, TR_RATIO_ROLL_IN_OF_DOUGH, 60, look_at_strip);
  assert_one_step (fixture, "change the roll-in");
}

static void
press_escape (gpointer data)
{
  hand_key ("Escape");
}

static void
test_escape_takes_the_drag_back (Fixture       *fixture,
                                 gconstpointer  data)
{
  drag (fixture, TR_RATIO_ALL_WATER, 60, press_escape);
  g_assert_null (tr_document_get_undo_label (fixture->document));
  assert_as_before (fixture);
}

static void
test_arrow_keys (Fixture       *fixture,
                 gconstpointer  data)
{
  double salt = get_ratio (fixture, TR_RATIO_SALT);

  show_scale (fixture, TR_RATIO_SALT);
  hand_key ("Right");
  g_assert_cmpfloat_with_epsilon (get_ratio (fixture, TR_RATIO_SALT), salt + 0.1, 0.06);
  hand_key ("Page_Up");
  g_assert_cmpfloat_with_epsilon (fabs (get_ratio (fixture, TR_RATIO_SALT) - salt - 0.1), 0.5, 0.08);
  hand_key ("Home");
  g_assert_cmpfloat (get_ratio (fixture, TR_RATIO_SALT), <, 0.2);
  hand_key ("End");
  g_assert_cmpfloat_with_epsilon (get_ratio (fixture, TR_RATIO_SALT), 4, TR_RATIO_FINE_TOLERANCE);
}

static void
test_wheel_scrolls_the_page (Fixture       *fixture,
                             gconstpointer  data)
{
  GtkWidget *scale = show_scale (fixture, TR_RATIO_SALT);

  hand_move (scale, gtk_widget_get_width (scale) / 2.0, 4);
  hand_do ("click", "5", "click", "4", NULL);
  assert_as_before (fixture);
}

static void
test_number_is_typed (Fixture       *fixture,
                      gconstpointer  data)
{
  GtkWidget *entry = tr_balance_row_get_entry (get_row (fixture, TR_RATIO_SALT));

  show_scale (fixture, TR_RATIO_SALT);
  ui_type (entry, "2.3");
  g_signal_emit_by_name (entry, "activate");
  g_assert_cmpfloat_with_epsilon (get_ratio (fixture, TR_RATIO_SALT), 2.3, TR_RATIO_FINE_TOLERANCE);
  assert_one_step (fixture, "change salt");

  ui_type (entry, "77");
  g_signal_emit_by_name (entry, "activate");
  g_assert_true (gtk_widget_has_css_class (entry, "error"));
  assert_as_before (fixture);
}

static gboolean
is_salt (TrDocument *document,
         guint       index)
{
  const TrDoughFigures *figures = tr_figures_get_dough (tr_document_get_figures (document), 0);

  return g_array_index (figures->formula.lines, TrLineFigures, index).ingredient.role == TR_ROLE_SALT;
}

static void
test_missing_line_is_added (Fixture       *fixture,
                            gconstpointer  data)
{
  TrBalanceRow *row = get_row (fixture, TR_RATIO_SALT);
  GtkWidget *add = tr_balance_row_get_add_button (row), *scale = tr_balance_row_get_scale (row);
  TrTrial *draft = tr_document_draft (fixture->document);
  TrDough *dough = tr_trial_own_dough (draft, 0);
  g_autoptr (GError) error = NULL;

  for (guint i = dough->lines->len; i-- > 0;)
    if (is_salt (fixture->document, i))
      g_ptr_array_remove_index (dough->lines, i);
  g_assert_true (tr_document_commit (fixture->document, draft, "no salt", NULL, "/lines", &error));
  g_assert_false (gtk_widget_is_sensitive (scale));
  g_assert_true (gtk_widget_get_visible (add));
  g_assert_cmpstr (gtk_button_get_label (GTK_BUTTON (add)), ==, "Add salt");

  g_signal_emit_by_name (add, "clicked");
  g_assert_true (gtk_widget_is_sensitive (scale));
  g_assert_false (gtk_widget_get_visible (add));
  g_assert_cmpfloat_with_epsilon (get_ratio (fixture, TR_RATIO_SALT), 2, 0.03);
  g_assert_cmpstr (tr_document_get_undo_label (fixture->document), ==, "add salt");
}

/* As from the formula's menu: 30 % of the flour, out of the dough. */
static void
test_missing_preferment_is_added (Fixture       *fixture,
                                  gconstpointer  data)
{
  GtkWidget *add = tr_balance_row_get_add_button (get_row (fixture, TR_RATIO_PREFERMENTED));
  TrTrial *draft = tr_document_draft (fixture->document);
  TrDough *dough = tr_trial_own_dough (draft, 0);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < dough->lines->len; i++)
    if (tr_dough_get_line (dough, i)->stage == TR_STAGE_PREFERMENT)
      tr_dough_get_line (dough, i)->stage = TR_STAGE_DOUGH;
  g_assert_true (tr_document_commit (fixture->document, draft, "all in the dough", NULL, "/lines", &error));
  double flour_g = tr_figures_get_dough (tr_document_get_figures (fixture->document), 0)->formula.written_flour_g;
  g_assert_true (gtk_widget_get_visible (add));

  g_signal_emit_by_name (add, "clicked");
  g_assert_false (gtk_widget_get_visible (add));
  g_assert_cmpfloat_with_epsilon (get_ratio (fixture, TR_RATIO_PREFERMENTED), 30, 0.3);
  g_assert_cmpfloat_with_epsilon (tr_figures_get_dough (tr_document_get_figures (fixture->document), 0)->formula.written_flour_g,
                                  flour_g, 1e-3);
  g_assert_cmpstr (tr_document_get_undo_label (fixture->document), ==, "add a sponge");
}

static GtkWidget *
find_slider (GtkWidget *widget)
{
  GtkWidget *found = g_strcmp0 (gtk_widget_get_css_name (widget), "slider") == 0 ? widget : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL; child = gtk_widget_get_next_sibling (child))
    found = find_slider (child);

  return found;
}

/* Our own reckoning of where a value lies is GTK's own of the handle. */
static void
test_marks_lie_where_the_handle_would (Fixture       *fixture,
                                       gconstpointer  data)
{
  GtkWidget *scale = show_scale (fixture, TR_RATIO_ALL_WATER);

  gtk_widget_set_direction (scale, data != NULL ? GTK_TEXT_DIR_RTL : GTK_TEXT_DIR_LTR);
  for (double value = 35; value <= 85; value += 10)
    {
      graphene_rect_t bounds;

      gtk_range_set_value (GTK_RANGE (scale), value);
      ui_frames (scale, 2);
      g_assert_true (gtk_widget_compute_bounds (find_slider (scale), scale, &bounds));
      g_assert_cmpfloat_with_epsilon (tr_balance_scale_get_x (TR_BALANCE_SCALE (scale), value),
                                      bounds.origin.x + bounds.size.width / 2, 1.5);
    }
}

int
main (int   argc,
      char *argv[])
{
  if (!ui_init (&argc, &argv))
    return 0;

#define ADD(path, test) g_test_add ("/ui/balance/" path, Fixture, NULL, set_up, test, tear_down)
  if (hand_is_there ())
    {
      ADD ("drag-is-one-step", test_drag_is_one_step);
      ADD ("undo-comes-back-to-the-handle", test_undo_comes_back_to_the_handle);
      ADD ("strip-follows", test_strip_follows);
      ADD ("escape-takes-the-drag-back", test_escape_takes_the_drag_back);
      ADD ("arrow-keys", test_arrow_keys);
      ADD ("wheel-scrolls-the-page", test_wheel_scrolls_the_page);
    }
  ADD ("number-is-typed", test_number_is_typed);
  ADD ("missing-line-is-added", test_missing_line_is_added);
  ADD ("missing-preferment-is-added", test_missing_preferment_is_added);
  ADD ("marks-lie-where-the-handle-would", test_marks_lie_where_the_handle_would);
  g_test_add ("/ui/balance/marks-lie-right-to-left", Fixture, "rtl", set_up, test_marks_lie_where_the_handle_would, tear_down);

  return ui_run ();
}
