/* view-fixture.c: a view of a picture with one part, in a window of its own
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "view-fixture.h"

void
view_move_to (GtkWidget *widget,
              double     x,
              double     y)
{
  hand_move (widget, x, y);
  ui_frames (widget, 2);
}

static TrPicture *
make_part (gpointer        data,
           guint           item,
           const TrReader *reader,
           const TrLook   *look,
           double          width,
           double          height)
{
  ViewFixture *fixture = data;
  TrPicture *picture = tr_picture_new (look, reader, width, height);
  double larger = height / 300;

  fixture->n_made++;
  tr_picture_add_rect (picture, &(TrBox) { PART_X * larger, PART_Y * larger, PART_SIZE * larger, PART_SIZE * larger },
                       &look->dough, TR_PEN_OUTLINE, NULL);
  tr_picture_set_hit (picture, TR_PART_OF_EDGE, 3, "The third edge, 80 mm");
  tr_picture_describe (picture, "One part.");

  return picture;
}

static void
note (ViewFixture *fixture,
      const char  *what)
{
  g_string_append_printf (fixture->log, "%s%s", fixture->log->len > 0 ? " " : "", what);
}

static gboolean
grab_cb (TrPictureView *view,
         const TrHit   *hit,
         double         x,
         double         y,
         gboolean       is_press,
         ViewFixture   *fixture)
{
  if (hit->part != TR_PART_OF_EDGE || fixture->refuses)
    return FALSE;

  tr_picture_view_set_cursor (view, "ew-resize");
  if (is_press)
    {
      note (fixture, "grab");
      fixture->hit = *hit;
      fixture->x = x;
      fixture->y = y;
    }

  return TRUE;
}

static void
dragged_cb (TrPictureView *view,
            double         x,
            double         y,
            ViewFixture   *fixture)
{
  if (!g_str_has_suffix (fixture->log->str, "dragged"))
    note (fixture, "dragged");
  fixture->x = x;
  fixture->y = y;
  if (fixture->makes_again)
    tr_picture_view_make_again (view);
  if (fixture->hides)
    gtk_widget_set_visible (GTK_WIDGET (view), FALSE);
  if (fixture->removes)
    gtk_box_remove (GTK_BOX (gtk_widget_get_parent (GTK_WIDGET (view))), GTK_WIDGET (view));
}

static void
dropped_cb (TrPictureView *view,
            gboolean       is_cancelled,
            ViewFixture   *fixture)
{
  g_assert_false (tr_picture_view_is_dragging (view));
  note (fixture, is_cancelled ? "cancelled" : "dropped");
}

static void
pressed_cb (TrPictureView *view,
            const TrHit   *hit,
            int            n_press,
            ViewFixture   *fixture)
{
  g_autofree char *what = g_strdup_printf ("pressed-%d-%d", hit->part == TR_PART_OF_EDGE ? hit->index : -1, n_press);

  note (fixture, what);
}

void
view_set_up (ViewFixture   *fixture,
             gconstpointer  data)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *below = gtk_label_new ("below");
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  fixture->log = g_string_new (NULL);
  fixture->view = TR_PICTURE_VIEW (tr_picture_view_new_for ("Part", make_part, 10));
  gtk_widget_set_size_request (GTK_WIDGET (fixture->view), 400, 300);
  g_signal_connect (fixture->view, "grab", G_CALLBACK (grab_cb), fixture);
  g_signal_connect (fixture->view, "dragged", G_CALLBACK (dragged_cb), fixture);
  g_signal_connect (fixture->view, "dropped", G_CALLBACK (dropped_cb), fixture);
  g_signal_connect (fixture->view, "pressed", G_CALLBACK (pressed_cb), fixture);
  tr_picture_view_set_data (fixture->view, fixture, NULL, 0, &reader);

  fixture->entry = gtk_entry_new ();
  gtk_widget_set_size_request (below, -1, 900);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (fixture->view));
  gtk_box_append (GTK_BOX (box), fixture->entry);
  gtk_box_append (GTK_BOX (box), below);
  fixture->scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (fixture->scroller), box);
  fixture->window = GTK_WINDOW (gtk_window_new ());
  gtk_window_set_default_size (fixture->window, 500, 500);
  gtk_window_set_child (fixture->window, fixture->scroller);
  gtk_window_present (fixture->window);
  ui_frames (GTK_WIDGET (fixture->window), 2);
  hand_focus (fixture->window);
  view_move_to (GTK_WIDGET (fixture->view), 2, 2);
}

void
view_tear_down (ViewFixture   *fixture,
                gconstpointer  data)
{
  if (!fixture->is_destroyed)
    gtk_window_destroy (fixture->window);
  else
    hand_do ("mouseup", "1", NULL);
  ui_settle ();
  g_string_free (fixture->log, TRUE);
}

void
view_assert_log (ViewFixture *fixture,
                 const char  *expected)
{
  g_assert_cmpstr (fixture->log->str, ==, expected);
  g_string_truncate (fixture->log, 0);
}
