/* test-views.c: pictures pointed at, grabbed, zoomed and copied with a real pointer
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pointer and the keys are the display's own.
 */

#include "config.h"

#include <math.h>
#include <string.h>

#include "view-fixture.h"
#include "window/layers-view.h"
#include "words/words.h"

/* ---- pointing ---- */

static void
test_hover (ViewFixture   *fixture,
            gconstpointer  data)
{
  GtkWidget *view = GTK_WIDGET (fixture->view);
  TrHit hit;
  graphene_rect_t bounds;
  g_autofree char *text = NULL;

  view_move_to (view, 300, 250);
  g_assert_false (tr_picture_view_get_hover (fixture->view, &hit));
  g_assert_null (gtk_widget_get_cursor (view));

  view_move_to (view, IN_PART);
  g_assert_true (tr_picture_view_get_hover (fixture->view, &hit));
  g_assert_cmpint (hit.part, ==, TR_PART_OF_EDGE);
  g_assert_cmpint (hit.index, ==, 3);
  g_assert_cmpstr (gdk_cursor_get_name (gtk_widget_get_cursor (view)), ==, "ew-resize");
  text = tr_picture_dup_hit_text (tr_picture_view_get_picture (fixture->view), &hit);
  g_assert_cmpstr (text, ==, "The third edge, 80 mm");

  g_assert_true (tr_picture_view_get_part_bounds (fixture->view, &hit, &bounds));
  g_assert_true (graphene_rect_contains_point (&bounds, &GRAPHENE_POINT_INIT (PART_X + 5, PART_Y + 5)));
  g_assert_cmpfloat_with_epsilon (bounds.size.width, PART_SIZE, 1.5);
  view_assert_log (fixture, "");
}

/* ---- dragging ---- */

static void
test_drag (ViewFixture   *fixture,
           gconstpointer  data)
{
  GtkWidget *view = GTK_WIDGET (fixture->view);

  fixture->makes_again = TRUE;
  view_move_to (view, IN_PART);
  drive (view, "mousedown", "1");
  g_assert_true (tr_picture_view_is_dragging (fixture->view));
  g_assert_cmpint (fixture->hit.index, ==, 3);
  view_move_to (view, 220, 130);
  view_move_to (view, 260, 150);
  g_assert_cmpfloat_with_epsilon (fixture->x, 260, 1.5);
  g_assert_cmpfloat_with_epsilon (fixture->y, 150, 1.5);
  drive (view, "mouseup", "1");
  view_assert_log (fixture, "grab dragged dropped");
}

static void
test_click (ViewFixture   *fixture,
            gconstpointer  data)
{
  GtkWidget *view = GTK_WIDGET (fixture->view);

  view_move_to (view, IN_PART);
  press (view, "1");
  view_assert_log (fixture, "grab cancelled pressed-3-1");

  /* However slow the machine is, two presses are a double one. */
  g_object_set (gtk_widget_get_settings (view), "gtk-double-click-time", 5000, NULL);
  fixture->refuses = TRUE;
  press (view, "1");
  press (view, "1");
  gtk_settings_reset_property (gtk_widget_get_settings (view), "gtk-double-click-time");
  g_assert_true (g_str_has_suffix (fixture->log->str, "pressed-3-2") || g_str_has_suffix (fixture->log->str, "pressed-3-3"));
  g_string_truncate (fixture->log, 0);
  g_assert_true (gtk_widget_has_focus (view));

  view_move_to (view, 300, 250);
  press (view, "1");
  view_assert_log (fixture, "pressed--1-1");
}

static void
test_escape (ViewFixture   *fixture,
             gconstpointer  data)
{
  GtkWidget *view = GTK_WIDGET (fixture->view);

  /* Also where the focus stays elsewhere. */
  gtk_widget_set_focusable (view, FALSE);
  gtk_widget_grab_focus (fixture->entry);
  view_move_to (view, IN_PART);
  drive (view, "mousedown", "1");
  view_move_to (view, 240, 140);
  drive (view, "key", "Escape");
  view_assert_log (fixture, "grab dragged cancelled");
  view_move_to (view, 280, 160);
  drive (view, "mouseup", "1");
  view_assert_log (fixture, "");
}

static void
test_hidden (ViewFixture   *fixture,
             gconstpointer  data)
{
  GtkWidget *view = GTK_WIDGET (fixture->view);

  fixture->hides = TRUE;
  view_move_to (view, IN_PART);
  drive (view, "mousedown", "1");
  view_move_to (view, 240, 140);
  drive (GTK_WIDGET (fixture->window), "mouseup", "1");
  view_assert_log (fixture, "grab dragged cancelled");
}

static void
test_removed (ViewFixture   *fixture,
              gconstpointer  data)
{
  GtkWidget *view = GTK_WIDGET (fixture->view);

  fixture->removes = TRUE;
  view_move_to (view, IN_PART);
  drive (view, "mousedown", "1");
  drive (GTK_WIDGET (fixture->window), "mousemove_relative", "60", "10");
  drive (GTK_WIDGET (fixture->window), "mouseup", "1");
  view_assert_log (fixture, "grab dragged cancelled");
}

/* Not asserted: that it is freed. GTK 4.8 keeps any widget, a button too, whose
 * window is destroyed while the mouse button is down on it. */
static void
test_destroyed (ViewFixture   *fixture,
                gconstpointer  data)
{
  GtkWidget *view = GTK_WIDGET (fixture->view);

  view_move_to (view, IN_PART);
  drive (view, "mousedown", "1");
  view_move_to (view, 240, 140);
  g_assert_true (tr_picture_view_is_dragging (fixture->view));
  fixture->is_destroyed = TRUE;
  gtk_window_destroy (fixture->window);
  ui_settle ();
  view_assert_log (fixture, "grab dragged cancelled");
}

/* ---- zoom ---- */

static double
get_scroll (ViewFixture *fixture)
{
  return gtk_adjustment_get_value (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (fixture->scroller)));
}

static void
test_wheel (ViewFixture   *fixture,
            gconstpointer  data)
{
  GtkWidget *view = GTK_WIDGET (fixture->view);
  graphene_rect_t before, after;
  TrHit hit = { TR_PART_OF_EDGE, 3 };

  tr_picture_view_set_zoomable (fixture->view, TRUE);
  view_move_to (view, PART_X, PART_Y);
  g_assert_true (tr_picture_view_get_part_bounds (fixture->view, &hit, &before));
  drive (view, "keydown", "Control_L", "click", "4", "click", "4", "keyup", "Control_L");
  g_assert_cmpfloat_with_epsilon (tr_picture_view_get_zoom (fixture->view), 1.25 * 1.25, 0.01);
  g_assert_true (tr_picture_view_get_part_bounds (fixture->view, &hit, &after));
  g_assert_cmpfloat_with_epsilon (after.origin.x, before.origin.x, 2);
  g_assert_cmpfloat_with_epsilon (after.origin.y, before.origin.y, 2);
  g_assert_cmpfloat_with_epsilon (after.size.width, before.size.width * 1.25 * 1.25, 2);
  g_assert_cmpfloat_with_epsilon (get_scroll (fixture), 0, 0.5);

  /* The page's own wheel. */
  drive (view, "click", "5");
  g_assert_cmpfloat (get_scroll (fixture), >, 0);
  g_assert_cmpfloat_with_epsilon (tr_picture_view_get_zoom (fixture->view), 1.25 * 1.25, 0.01);
}

static void
test_pan (ViewFixture   *fixture,
          gconstpointer  data)
{
  GtkWidget *view = GTK_WIDGET (fixture->view);
  graphene_rect_t before, after;
  TrHit hit = { TR_PART_OF_EDGE, 3 };

  tr_picture_view_set_zoomable (fixture->view, TRUE);
  tr_picture_view_zoom (fixture->view, 2, 0, 0);
  g_assert_true (tr_picture_view_get_part_bounds (fixture->view, &hit, &before));
  view_move_to (view, 30, 30);
  drive (view, "mousedown", "1");
  view_move_to (view, 20, 20);
  view_move_to (view, 10, 25);
  drive (view, "mouseup", "1");
  g_assert_true (tr_picture_view_get_part_bounds (fixture->view, &hit, &after));
  g_assert_cmpfloat_with_epsilon (after.origin.x, before.origin.x - 20, 1.5);
  g_assert_cmpfloat_with_epsilon (after.origin.y, before.origin.y - 5, 1.5);
  view_assert_log (fixture, "");

  /* What is grabbed is where it is seen. */
  view_move_to (view, after.origin.x + 5, after.origin.y + 5);
  press (view, "1");
  g_assert_cmpint (fixture->hit.index, ==, 3);
  g_assert_cmpfloat_with_epsilon (fixture->x, 2 * PART_X + 5, 2.5);
}

static void
test_zoom_keys (ViewFixture   *fixture,
                gconstpointer  data)
{
  GtkWidget *view = GTK_WIDGET (fixture->view);

  gtk_widget_grab_focus (view);
  drive (view, "key", "plus");
  g_assert_cmpfloat_with_epsilon (tr_picture_view_get_zoom (fixture->view), 1, 1e-9);

  tr_picture_view_set_zoomable (fixture->view, TRUE);
  drive (view, "key", "plus", "key", "plus", "key", "minus");
  g_assert_cmpfloat_with_epsilon (tr_picture_view_get_zoom (fixture->view), 1.25, 1e-6);
  drive (view, "key", "0");
  g_assert_cmpfloat_with_epsilon (tr_picture_view_get_zoom (fixture->view), 1, 1e-9);

  /* Pointed at, while something else has the focus; but never a number that is typed. */
  gtk_window_set_focus (fixture->window, NULL);
  view_move_to (view, IN_PART);
  drive (view, "key", "plus");
  g_assert_cmpfloat_with_epsilon (tr_picture_view_get_zoom (fixture->view), 1.25, 1e-6);
  gtk_widget_grab_focus (fixture->entry);
  drive (view, "key", "0");
  g_assert_cmpfloat_with_epsilon (tr_picture_view_get_zoom (fixture->view), 1.25, 1e-6);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (fixture->entry)), ==, "0");
}

/* ---- the keyboard ---- */

static void
test_selected (ViewFixture   *fixture,
               gconstpointer  data)
{
  GtkWidget *view = GTK_WIDGET (fixture->view);

  gtk_widget_grab_focus (view);
  drive (view, "key", "Return");
  view_assert_log (fixture, "");
  tr_picture_view_set_selected (fixture->view, &(TrHit) { TR_PART_OF_EDGE, 3 });
  gtk_test_accessible_assert_property (view, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, "The third edge, 80 mm. One part.");
  drive (view, "key", "Return");
  view_assert_log (fixture, "pressed-3-1");
  tr_picture_view_set_selected (fixture->view, NULL);
  gtk_test_accessible_assert_property (view, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, "One part.");
}

static gboolean
has_open_menu (gpointer data)
{
  GtkWidget *popover = ui_find_type (data, GTK_TYPE_POPOVER_MENU);

  return popover != NULL && gtk_widget_get_mapped (popover);
}

static gboolean
has_no_menu (gpointer data)
{
  return !has_open_menu (data);
}

/* Asserts that it was open. */
static void
close_menu (GtkWidget *view)
{
  g_assert_true (ui_wait_until (has_open_menu, view, 5000));
  drive (view, "key", "Escape");
  g_assert_true (ui_wait_until (has_no_menu, view, 5000));
}

static void
test_menu (ViewFixture   *fixture,
           gconstpointer  data)
{
  GtkWidget *view = GTK_WIDGET (fixture->view);

  gtk_widget_grab_focus (view);
  drive (view, "key", "shift+F10");
  close_menu (view);
  gtk_widget_grab_focus (view);
  drive (view, "key", "Menu");
  close_menu (view);
  view_move_to (view, IN_PART);
  press (view, "3");
  close_menu (view);
}

/* ---- copying ---- */

static gboolean
is_true (gpointer data)
{
  return *(gboolean *) data;
}

typedef struct
{
  gboolean is_done;
  GdkTexture *texture;
  char *mime_type;
  GInputStream *stream;
} Pasted;

static void
texture_read_cb (GObject      *source,
                 GAsyncResult *result,
                 gpointer      data)
{
  Pasted *pasted = data;
  g_autoptr (GError) error = NULL;

  pasted->texture = gdk_clipboard_read_texture_finish (GDK_CLIPBOARD (source), result, &error);
  g_assert_no_error (error);
  pasted->is_done = TRUE;
}

static void
stream_read_cb (GObject      *source,
                GAsyncResult *result,
                gpointer      data)
{
  Pasted *pasted = data;
  g_autoptr (GError) error = NULL;
  const char *mime_type;

  pasted->stream = gdk_clipboard_read_finish (GDK_CLIPBOARD (source), result, &mime_type, &error);
  g_assert_no_error (error);
  pasted->mime_type = g_strdup (mime_type);
  pasted->is_done = TRUE;
}

static void
test_copy (ViewFixture   *fixture,
           gconstpointer  data)
{
  GtkWidget *view = GTK_WIDGET (fixture->view);
  GdkClipboard *clipboard = gtk_widget_get_clipboard (view);
  Pasted pixels = { 0 }, lines = { 0 };
  const char *const svg[] = { "image/svg+xml", NULL };
  char start[200] = "";
  gsize n_read;
  g_autoptr (GError) error = NULL;

  tr_picture_view_set_zoomable (fixture->view, TRUE);
  tr_picture_view_zoom (fixture->view, 3, 0, 0);
  gtk_widget_grab_focus (view);
  drive (view, "key", "ctrl+c");

  gdk_clipboard_read_texture_async (clipboard, NULL, texture_read_cb, &pixels);
  g_assert_true (ui_wait_until (is_true, &pixels.is_done, 5000));
  g_assert_cmpint (gdk_texture_get_width (pixels.texture), ==, 2 * gtk_widget_get_width (view));
  g_assert_cmpint (gdk_texture_get_height (pixels.texture), ==, 2 * gtk_widget_get_height (view));

  gsize stride = (gsize) gdk_texture_get_width (pixels.texture) * 4;
  g_autofree guint8 *data_bytes = g_malloc (stride * (gsize) gdk_texture_get_height (pixels.texture));
  const guint32 *row;
  double larger = gtk_widget_get_height (view) / 300.0;

  gdk_texture_download (pixels.texture, data_bytes, stride);
  g_assert_cmphex (((const guint32 *) (gconstpointer) data_bytes)[0], ==, 0xffffffff);
  row = (const guint32 *) (gconstpointer) (data_bytes + stride * (gsize) (2 * larger * (PART_Y + PART_SIZE / 2)));
  g_assert_cmphex (row[(int) (2 * larger * (PART_X + PART_SIZE / 2))], ==, 0xffb38048);

  gdk_clipboard_read_async (clipboard, (const char **) svg, G_PRIORITY_DEFAULT, NULL, stream_read_cb, &lines);
  g_assert_true (ui_wait_until (is_true, &lines.is_done, 5000));
  g_assert_cmpstr (lines.mime_type, ==, "image/svg+xml");
  g_assert_true (g_input_stream_read_all (lines.stream, start, sizeof start - 1, &n_read, NULL, &error));
  g_assert_nonnull (strstr (start, "<svg"));

  g_object_unref (pixels.texture);
  g_object_unref (lines.stream);
  g_free (lines.mime_type);
}

static void
test_found (ViewFixture   *fixture,
            gconstpointer  data)
{
  GtkWidget *view = GTK_WIDGET (fixture->view);
  GtkRoot *root = GTK_ROOT (fixture->window);

  gtk_widget_grab_focus (fixture->entry);
  view_move_to (view, IN_PART);
  g_assert_true (tr_picture_view_find (root) == fixture->view);
  view_move_to (fixture->entry, 5, 5);
  g_assert_true (tr_picture_view_find (root) == fixture->view);
  gtk_widget_set_visible (view, FALSE);
  g_assert_null (tr_picture_view_find (root));
}

/* ---- layers ---- */

static TrLayersView *
set_up_layers (UiFixture *fixture)
{
  TrLayersView *layers;

  ui_act (fixture->window, "win.go-turns");
  ui_frames (GTK_WIDGET (fixture->window), 2);
  layers = TR_LAYERS_VIEW (ui_find_type (GTK_WIDGET (fixture->window), TR_TYPE_LAYERS_VIEW));
  hand_focus (GTK_WINDOW (fixture->window));

  return layers;
}

static void
test_step_through_layers (UiFixture     *fixture,
                          gconstpointer  data)
{
  TrLayersView *layers = set_up_layers (fixture);
  GtkWidget *view = GTK_WIDGET (tr_layers_view_get_picture (layers));
  TrHit hit = { TR_PART_OF_BAND, 0 };
  g_autofree char *description = NULL;

  gtk_widget_grab_focus (view);
  drive (view, "key", "Home");
  g_assert_true (g_str_has_prefix (tr_layers_view_get_text (layers), "Dough layer 1 of "));
  drive (view, "key", "Down");
  g_assert_true (g_str_has_prefix (tr_layers_view_get_text (layers), "Fat layer 1 of "));
  g_assert_true (tr_picture_view_get_selected (TR_PICTURE_VIEW (view), &hit));
  g_assert_cmpint (hit.index, ==, 1);
  description = g_strdup_printf ("%s. %s", tr_layers_view_get_text (layers),
                                 tr_picture_get_description (tr_picture_view_get_picture (TR_PICTURE_VIEW (view))));
  gtk_test_accessible_assert_property (view, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, description);

  drive (view, "key", "End");
  g_assert_true (tr_picture_view_get_selected (TR_PICTURE_VIEW (view), &hit));
  g_assert_cmpint (hit.index, ==, (int) tr_picture_count_bands (tr_picture_view_get_picture (TR_PICTURE_VIEW (view))) - 1);
  drive (view, "key", "Down");
  g_assert_true (tr_picture_view_get_selected (TR_PICTURE_VIEW (view), &hit));
  g_assert_cmpint (hit.index, ==, (int) tr_picture_count_bands (tr_picture_view_get_picture (TR_PICTURE_VIEW (view))) - 1);
}

static void
test_point_at_layers (UiFixture     *fixture,
                      gconstpointer  data)
{
  TrLayersView *layers = set_up_layers (fixture);
  TrPictureView *view = tr_layers_view_get_picture (layers);
  TrHit top = { TR_PART_OF_BAND, 2 }, magnified = { TR_PART_OF_MAGNIFIED_BAND, 2 };
  graphene_rect_t bounds;

  g_assert_false (tr_picture_view_get_part_bounds (view, &magnified, &bounds));
  g_assert_true (tr_picture_view_get_part_bounds (view, &top, &bounds));
  view_move_to (GTK_WIDGET (view), bounds.origin.x + bounds.size.width / 2, bounds.origin.y + bounds.size.height / 2);
  g_assert_true (g_str_has_prefix (tr_layers_view_get_text (layers), "Dough layer 2 of ") ||
                 g_str_has_prefix (tr_layers_view_get_text (layers), "Fat layer "));
  g_assert_true (tr_picture_view_get_part_bounds (view, &magnified, &bounds));

  /* Back where it was once the pointer has gone; unless it was clicked. */
  view_move_to (GTK_WIDGET (fixture->window), 20, 20);
  g_assert_false (tr_picture_view_get_part_bounds (view, &magnified, &bounds));
  g_assert_true (tr_picture_view_get_part_bounds (view, &top, &bounds));
  view_move_to (GTK_WIDGET (view), bounds.origin.x + bounds.size.width / 2, bounds.origin.y + bounds.size.height / 2);
  press (GTK_WIDGET (view), "1");
  view_move_to (GTK_WIDGET (fixture->window), 20, 20);
  g_assert_true (tr_picture_view_get_part_bounds (view, &magnified, &bounds));
}

static void
test_window_copies (UiFixture     *fixture,
                    gconstpointer  data)
{
  TrLayersView *layers = set_up_layers (fixture);
  GtkWidget *view = GTK_WIDGET (tr_layers_view_get_picture (layers));
  GdkClipboard *clipboard = gtk_widget_get_clipboard (view);
  Pasted pasted = { 0 };

  gtk_window_set_focus (GTK_WINDOW (fixture->window), NULL);
  ui_act (fixture->window, "win.copy-picture");
  g_assert_cmpstr (tr_window_get_notice (fixture->window, "file"), ==, "Point at the picture that is to be copied.");

  view_move_to (view, 30, 30);
  ui_act (fixture->window, "win.copy-picture");
  gdk_clipboard_read_texture_async (clipboard, NULL, texture_read_cb, &pasted);
  g_assert_true (ui_wait_until (is_true, &pasted.is_done, 5000));
  g_assert_cmpint (gdk_texture_get_width (pasted.texture), ==, 2 * gtk_widget_get_width (view));
  g_object_unref (pasted.texture);
}

#define VIEW_ADD(path, test) g_test_add ("/views/" path, ViewFixture, NULL, view_set_up, test, view_tear_down)

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;
  if (!hand_is_there ())
    {
      g_print ("1..0 # SKIP no X display, or no xdotool\n");
      return 0;
    }

  VIEW_ADD ("what-is-pointed-at-is-known-and-named", test_hover);
  VIEW_ADD ("a-drag-goes-on-while-the-picture-is-made-anew", test_drag);
  VIEW_ADD ("a-click-moves-nothing", test_click);
  VIEW_ADD ("escape-cancels-wherever-the-focus-is", test_escape);
  VIEW_ADD ("a-hidden-view-cancels", test_hidden);
  VIEW_ADD ("a-view-removed-by-its-own-drag-cancels", test_removed);
  VIEW_ADD ("a-destroyed-view-cancels", test_destroyed);
  VIEW_ADD ("control-and-the-wheel-zoom-about-the-pointer", test_wheel);
  VIEW_ADD ("the-background-is-dragged-to-see-the-rest", test_pan);
  VIEW_ADD ("keys-zoom-where-nothing-is-typed", test_zoom_keys);
  VIEW_ADD ("the-selected-part-is-said-and-pressed-by-key", test_selected);
  VIEW_ADD ("the-menu-opens-by-key-and-button", test_menu);
  VIEW_ADD ("a-copy-is-whole-white-and-sharp", test_copy);
  VIEW_ADD ("the-last-one-pointed-at-is-found", test_found);
  UI_ADD ("/views/the-window-copies-what-was-pointed-at", test_window_copies);
  UI_ADD ("/views/layers/keys-go-from-band-to-band", test_step_through_layers);
  UI_ADD ("/views/layers/the-window-follows-and-stays-where-clicked", test_point_at_layers);

  return ui_run ();
}
