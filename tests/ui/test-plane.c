/* test-plane.c: the current dough is dragged among all others by two ratios
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Real events by the display's server. What came of them is read from the
 * document; one undo gives the text back that was there before.
 */

#include "config.h"

#include <math.h>

#include "hand.h"
#include "page-fixture.h"
#include "picture/plane.h"
#include "window/picture-view.h"
#include "window/ratio-plane.h"

typedef struct
{
  PageFixture page;
  TrRatioPlane *plane;
  TrPictureView *view;
  char *before;
} Fixture;

/* It may be the second of two views, and further down than the window shows. */
static void
show (GtkWidget *widget)
{
  GtkWidget *scroller = gtk_widget_get_ancestor (widget, GTK_TYPE_SCROLLED_WINDOW), *root = GTK_WIDGET (gtk_widget_get_root (widget));
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));
  graphene_point_t top;

  for (GtkWidget *child = widget, *parent; (parent = gtk_widget_get_parent (child)) != NULL; child = parent)
    if (GTK_IS_STACK (parent))
      gtk_stack_set_visible_child (GTK_STACK (parent), child);
  ui_frames (root, 2);
  g_assert_true (gtk_widget_compute_point (widget, scroller, &GRAPHENE_POINT_INIT (0, 0), &top));
  gtk_adjustment_set_value (adjustment, gtk_adjustment_get_value (adjustment) + top.y - 12);
  ui_frames (root, 2);
}

static void
set_up (Fixture       *fixture,
        gconstpointer  data)
{
  page_set_up (&fixture->page, tr_formula_page_new, "d1");
  fixture->plane = TR_RATIO_PLANE (ui_find_type (GTK_WIDGET (fixture->page.page), TR_TYPE_RATIO_PLANE));
  fixture->view = TR_PICTURE_VIEW (ui_find_type (GTK_WIDGET (fixture->plane), TR_TYPE_PICTURE_VIEW));
  show (GTK_WIDGET (fixture->plane));
  tr_ratio_plane_set_axes (fixture->plane, TR_RATIO_ROLL_IN_OF_DOUGH, TR_RATIO_SALT);
  hand_focus (fixture->page.window);
  g_assert_true (gtk_widget_grab_focus (GTK_WIDGET (fixture->view)));
  show (GTK_WIDGET (fixture->plane));
  fixture->before = ui_dup_trial_text (fixture->page.document);
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data)
{
  tr_ratio_plane_set_axes (fixture->plane, TR_RATIO_ALL_WATER, TR_RATIO_ROLL_IN_OF_DOUGH);
  g_free (fixture->before);
  page_tear_down (&fixture->page);
}

static double
get_ratio (Fixture *fixture,
           TrRatio  ratio)
{
  return tr_ratio_get (tr_page_get_figures (fixture->page.page), ratio);
}

/* Of a dough's point, in the view. */
static void
get_point (Fixture *fixture,
           int      dough,
           double  *x,
           double  *y)
{
  graphene_rect_t bounds;

  g_assert_true (tr_picture_view_get_part_bounds (fixture->view, &(TrHit) { TR_PART_OF_POINT, dough }, &bounds));
  *x = bounds.origin.x + bounds.size.width / 2;
  *y = bounds.origin.y + bounds.size.height / 2;
}

static void
assert_as_before (Fixture *fixture)
{
  g_autofree char *now = ui_dup_trial_text (fixture->page.document);

  g_assert_cmpstr (now, ==, fixture->before);
  g_assert_null (tr_document_get_undo_label (fixture->page.document));
}

static void
assert_one_step (Fixture *fixture)
{
  g_assert_cmpstr (tr_document_get_undo_label (fixture->page.document), ==, "change two ratios");
  tr_document_undo (fixture->page.document);
  assert_as_before (fixture);
}

typedef struct { Fixture *fixture; TrRange across, up; double roll_in, salt, x, y; } Look;

/* The figures follow before the point is let go, on axes that stay. */
static void
look_halfway (gpointer data)
{
  Look *look = data;
  TrRange across, up;

  ui_frames (GTK_WIDGET (look->fixture->page.window), 2);
  g_assert_true (tr_plane_picture_get_view (tr_picture_view_get_picture (look->fixture->view), &across, &up));
  g_assert_cmpfloat_with_epsilon (across.max, look->across.max, 1e-9);
  g_assert_cmpfloat_with_epsilon (up.max, look->up.max, 1e-9);
  g_assert_cmpfloat (fabs (get_ratio (look->fixture, TR_RATIO_ROLL_IN_OF_DOUGH) - look->roll_in), >, 0.5);
  g_assert_cmpfloat (fabs (get_ratio (look->fixture, TR_RATIO_SALT) - look->salt), >, 0.05);
}

static void
init_look (Fixture *fixture,
           Look    *look)
{
  look->fixture = fixture;
  look->roll_in = get_ratio (fixture, TR_RATIO_ROLL_IN_OF_DOUGH);
  look->salt = get_ratio (fixture, TR_RATIO_SALT);
  g_assert_true (tr_plane_picture_get_view (tr_picture_view_get_picture (fixture->view), &look->across, &look->up));
}

static void
test_drag_moves_both_ratios (Fixture       *fixture,
                             gconstpointer  data)
{
  double x, y, to_x, to_y, across, up;
  Look look;

  init_look (fixture, &look);
  get_point (fixture, 0, &x, &y);
  to_x = round (x) - 60;
  to_y = round (y) + 40;
  g_assert_true (tr_plane_picture_get_values (tr_picture_view_get_picture (fixture->view), to_x, to_y, &across, &up));
  hand_drag (GTK_WIDGET (fixture->view), x, y, to_x, to_y, look_halfway, &look);

  /* within two pixels and what is weighed */
  g_assert_cmpfloat_with_epsilon (get_ratio (fixture, TR_RATIO_ROLL_IN_OF_DOUGH), across, 0.5);
  g_assert_cmpfloat_with_epsilon (get_ratio (fixture, TR_RATIO_SALT), up, 0.05);
  g_assert_cmpfloat (get_ratio (fixture, TR_RATIO_ROLL_IN_OF_DOUGH), <, look.roll_in);
  g_assert_cmpfloat (get_ratio (fixture, TR_RATIO_SALT), <, look.salt);
  assert_one_step (fixture);
}

static void
press_escape (gpointer data)
{
  look_halfway (data);
  hand_key ("Escape");
}

static void
test_escape_gives_back (Fixture       *fixture,
                        gconstpointer  data)
{
  double x, y;
  Look look;

  init_look (fixture, &look);
  get_point (fixture, 0, &x, &y);
  hand_drag (GTK_WIDGET (fixture->view), x, y, x - 60, y + 40, press_escape, &look);
  assert_as_before (fixture);
}

static void
show_another (gpointer data)
{
  Look *look = data;

  look_halfway (look);
  tr_page_set_dough (look->fixture->page.page, "d2");
  hand_move (GTK_WIDGET (look->fixture->view), look->x - 50, look->y + 30);
}

/* What is in the hand goes into no other dough. */
static void
test_another_dough_ends_it (Fixture       *fixture,
                            gconstpointer  data)
{
  Look look;

  init_look (fixture, &look);
  get_point (fixture, 0, &look.x, &look.y);
  hand_drag (GTK_WIDGET (fixture->view), look.x, look.y, look.x - 60, look.y + 40, show_another, &look);
  assert_as_before (fixture);
}

static void
undo_halfway (gpointer data)
{
  Look *look = data;

  look_halfway (look);
  tr_document_undo (look->fixture->page.document);
  hand_move (GTK_WIDGET (look->fixture->view), look->x - 50, look->y + 30);
}

static void
test_undo_halfway_is_gone_on_from (Fixture       *fixture,
                                   gconstpointer  data)
{
  Look look;

  init_look (fixture, &look);
  get_point (fixture, 0, &look.x, &look.y);
  hand_drag (GTK_WIDGET (fixture->view), look.x, look.y, look.x - 60, look.y + 40, undo_halfway, &look);
  g_assert_cmpfloat (get_ratio (fixture, TR_RATIO_ROLL_IN_OF_DOUGH), <, look.roll_in - 0.5);
  assert_one_step (fixture);
}

/* A hand that shakes while it clicks changes nothing. */
static void
test_click_moves_nothing (Fixture       *fixture,
                          gconstpointer  data)
{
  double x, y;

  get_point (fixture, 0, &x, &y);
  hand_click (GTK_WIDGET (fixture->view), x, y);
  hand_drag (GTK_WIDGET (fixture->view), x, y, x + 1, y + 1, NULL, NULL);
  assert_as_before (fixture);
}

static void
test_ratio_that_cannot_move_stays (Fixture       *fixture,
                                   gconstpointer  data)
{
  double roll_in, x, y;

  /* no sweetener in it */
  tr_ratio_plane_set_axes (fixture->plane, TR_RATIO_ROLL_IN_OF_DOUGH, TR_RATIO_SUGAR);
  ui_frames (GTK_WIDGET (fixture->page.window), 2);
  roll_in = get_ratio (fixture, TR_RATIO_ROLL_IN_OF_DOUGH);
  get_point (fixture, 0, &x, &y);
  hand_drag (GTK_WIDGET (fixture->view), x, y, x - 60, y - 40, NULL, NULL);
  g_assert_cmpfloat (get_ratio (fixture, TR_RATIO_ROLL_IN_OF_DOUGH), <, roll_in - 0.5);
  g_assert_cmpfloat_with_epsilon (get_ratio (fixture, TR_RATIO_SUGAR), 0, 1e-9);
  g_assert_true (ui_says (GTK_WIDGET (fixture->plane), "stays"));
  assert_one_step (fixture);
  g_assert_false (ui_says (GTK_WIDGET (fixture->plane), "stays"));
}

/* In steps of the ratio's own. */
typedef struct { const char *key; TrRatio ratio; double by; } KeyRow;

static void
test_keys_step (Fixture       *fixture,
                gconstpointer  data)
{
  static const KeyRow rows[] = {
    { "Right", TR_RATIO_ROLL_IN_OF_DOUGH, 1 }, { "Left", TR_RATIO_ROLL_IN_OF_DOUGH, -1 }, { "Up", TR_RATIO_SALT, 1 },
    { "Down", TR_RATIO_SALT, -1 }, { "shift+Left", TR_RATIO_ROLL_IN_OF_DOUGH, -5 }, { "ctrl+Right", TR_RATIO_ROLL_IN_OF_DOUGH, 0.1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      double was = get_ratio (fixture, rows[i].ratio), by = rows[i].by * tr_ratio_get_step (rows[i].ratio), is;

      g_test_message ("%s", rows[i].key);
      hand_key (rows[i].key);
      is = get_ratio (fixture, rows[i].ratio);
      g_assert_cmpfloat (by > 0 ? is - was : was - is, >, 0);
      g_assert_cmpfloat (fabs (is - was), <=, fabs (by) * 1.5 + TR_RATIO_TOLERANCE);
      assert_one_step (fixture);
    }
}

/* Presses in a row go on from what was reached, and are one step. */
static void
test_keys_go_on (Fixture       *fixture,
                 gconstpointer  data)
{
  double was = get_ratio (fixture, TR_RATIO_ROLL_IN_OF_DOUGH), last = was, step = tr_ratio_get_step (TR_RATIO_ROLL_IN_OF_DOUGH);

  for (int i = 0; i < 4; i++)
    {
      double is;

      hand_key ("Right");
      is = get_ratio (fixture, TR_RATIO_ROLL_IN_OF_DOUGH);
      g_assert_cmpfloat (is, >, last + 0.4 * step);
      last = is;
    }
  g_assert_cmpfloat_with_epsilon (last - was, 4 * step, 0.6 * step);
  assert_one_step (fixture);
}

static void
test_same_on_both_axes_swaps (Fixture       *fixture,
                              gconstpointer  data)
{
  TrRatio across, up;

  tr_ratio_plane_set_axes (fixture->plane, TR_RATIO_SALT, TR_RATIO_SALT);
  tr_ratio_plane_get_axes (fixture->plane, &across, &up);
  g_assert_cmpint (across, ==, TR_RATIO_SALT);
  g_assert_cmpint (up, ==, TR_RATIO_ROLL_IN_OF_DOUGH);
  tr_ratio_plane_set_axes (fixture->plane, TR_RATIO_ROLL_IN_OF_DOUGH, TR_RATIO_ROLL_IN_OF_DOUGH);
  tr_ratio_plane_get_axes (fixture->plane, &across, &up);
  g_assert_cmpint (across, ==, TR_RATIO_ROLL_IN_OF_DOUGH);
  g_assert_cmpint (up, ==, TR_RATIO_SALT);
  g_assert_nonnull (ui_find (GTK_WIDGET (fixture->plane), GTK_TYPE_DROP_DOWN, "Across"));
  g_assert_nonnull (ui_find (GTK_WIDGET (fixture->plane), GTK_TYPE_DROP_DOWN, "Up"));
  assert_as_before (fixture);
}

/* In the whole window: another dough's point makes it the current one. */
static void
test_click_shows_another_dough (UiFixture     *fixture,
                                gconstpointer  data)
{
  GtkWidget *plane = ui_find_type (GTK_WIDGET (fixture->window), TR_TYPE_RATIO_PLANE);
  GtkWidget *view = ui_find_type (plane, TR_TYPE_PICTURE_VIEW);
  g_autofree char *before = ui_dup_trial_text (tr_window_get_document (fixture->window));
  graphene_rect_t bounds;

  show (plane);
  hand_focus (GTK_WINDOW (fixture->window));
  g_assert_true (tr_picture_view_get_part_bounds (TR_PICTURE_VIEW (view), &(TrHit) { TR_PART_OF_POINT, 1 }, &bounds));
  hand_click (view, bounds.origin.x + bounds.size.width / 2, bounds.origin.y + bounds.size.height / 2);
  g_assert_cmpint (tr_page_get_dough_index (TR_PAGE (ui_get_doughs (fixture->window))), ==, 1);

  g_autofree char *after = ui_dup_trial_text (tr_window_get_document (fixture->window));
  g_assert_cmpstr (after, ==, before);
}

/* Undo shows what it undid: here, where it was done. */
static void
test_undo_leads_back (UiFixture     *fixture,
                      gconstpointer  data)
{
  GtkWidget *plane = ui_find_type (GTK_WIDGET (fixture->window), TR_TYPE_RATIO_PLANE);
  GtkWidget *view = ui_find_type (plane, TR_TYPE_PICTURE_VIEW);

  show (plane);
  hand_focus (GTK_WINDOW (fixture->window));
  g_assert_true (gtk_widget_grab_focus (view));
  hand_key ("Right");
  g_assert_cmpstr (tr_document_get_undo_label (tr_window_get_document (fixture->window)), ==, "change two ratios");
  gtk_window_set_focus (GTK_WINDOW (fixture->window), NULL);
  ui_act (fixture->window, "win.undo");
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (fixture->window)) == view);
}

#define ADD(path, test) g_test_add (path, Fixture, NULL, set_up, test, tear_down)

int
main (int   argc,
      char *argv[])
{
  if (!ui_init (&argc, &argv))
    return 0;
  if (!hand_is_there ())
    {
      g_print ("1..0 # SKIP no X display or no xdotool\n");
      return 0;
    }

  ADD ("/plane/drag-moves-both-ratios", test_drag_moves_both_ratios);
  ADD ("/plane/escape-gives-back", test_escape_gives_back);
  ADD ("/plane/another-dough-ends-it", test_another_dough_ends_it);
  ADD ("/plane/undo-halfway-is-gone-on-from", test_undo_halfway_is_gone_on_from);
  ADD ("/plane/click-moves-nothing", test_click_moves_nothing);
  ADD ("/plane/ratio-that-cannot-move-stays", test_ratio_that_cannot_move_stays);
  ADD ("/plane/keys-step", test_keys_step);
  ADD ("/plane/keys-go-on", test_keys_go_on);
  ADD ("/plane/same-on-both-axes-swaps", test_same_on_both_axes_swaps);
  UI_ADD ("/plane/undo-leads-back", test_undo_leads_back);
  UI_ADD ("/plane/click-shows-another-dough", test_click_shows_another_dough);

  return ui_run ();
}
