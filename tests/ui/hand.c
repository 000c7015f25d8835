/* hand.c: pointer and keys as the display's server sends them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "hand.h"

#include <gdk/x11/gdkx.h>

#define STEPS 8

gboolean
hand_is_there (void)
{
  g_autofree char *path = g_find_program_in_path ("xdotool");

  return path != NULL && GDK_IS_X11_DISPLAY (gdk_display_get_default ());
}

static void
ended_cb (GObject      *object,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (GError) error = NULL;

  g_subprocess_wait_check_finish (G_SUBPROCESS (object), result, &error);
  g_assert_no_error (error);
  *(gboolean *) data = TRUE;
}

static gboolean
is_set (gpointer data)
{
  return *(gboolean *) data;
}

void
hand_do (const char *word,
         ...)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  g_autoptr (GSubprocess) process = NULL;
  g_autoptr (GError) error = NULL;
  gboolean is_done = FALSE;
  va_list more;

  g_ptr_array_add (words, (char *) "xdotool");
  va_start (more, word);
  for (const char *next = word; next != NULL; next = va_arg (more, const char *))
    g_ptr_array_add (words, (char *) next);
  va_end (more);
  g_ptr_array_add (words, NULL);

  process = g_subprocess_newv ((const char *const *) words->pdata, G_SUBPROCESS_FLAGS_STDOUT_SILENCE, &error);
  g_assert_no_error (error);
  g_subprocess_wait_check_async (process, NULL, ended_cb, &is_done);
  g_assert_true (ui_wait_until (is_set, &is_done, 5000));
  /* The server has sent them; a round trip, and they are here. */
  gdk_display_sync (gdk_display_get_default ());
  ui_settle ();
}

static char *
dup_window_id (GtkNative *native)
{
  return g_strdup_printf ("%lu", gdk_x11_surface_get_xid (gtk_native_get_surface (native)));
}

void
hand_focus (GtkWindow *window)
{
  g_autofree char *id = dup_window_id (GTK_NATIVE (window));

  hand_do ("windowfocus", "--sync", id, NULL);
}

void
hand_move (GtkWidget *widget,
           double     x,
           double     y)
{
  GtkNative *native = gtk_widget_get_native (widget);
  g_autofree char *id = dup_window_id (native), *left = NULL, *top = NULL;
  graphene_point_t point;
  double shadow_x, shadow_y;

  g_assert_true (gtk_widget_compute_point (widget, GTK_WIDGET (native), &GRAPHENE_POINT_INIT ((float) x, (float) y), &point));
  gtk_native_get_surface_transform (native, &shadow_x, &shadow_y);
  left = g_strdup_printf ("%d", (int) (point.x + shadow_x));
  top = g_strdup_printf ("%d", (int) (point.y + shadow_y));
  hand_do ("mousemove", "--window", id, left, top, NULL);
}

/* GTK 4.8.3 asks the display for the pointer's state when something was laid out
 * anew, and a gesture ends there, as a cancelled one, if the button is already
 * up while its release is still to be read. A hand is slower than that, a busy
 * machine is not: all is drawn before a press and before its release. */
void
hand_press_button (GtkWidget  *widget,
                   const char *button)
{
  GtkWidget *root = GTK_WIDGET (gtk_widget_get_root (widget));

  ui_frames (root, 2);
  hand_do ("mousedown", button, NULL);
  ui_frames (root, 2);
  hand_do ("mouseup", button, NULL);
}

void
hand_click (GtkWidget *widget,
            double     x,
            double     y)
{
  hand_move (widget, x, y);
  hand_press_button (widget, "1");
}

void
hand_drag (GtkWidget *widget,
           double     x,
           double     y,
           double     to_x,
           double     to_y,
           void     (*halfway) (gpointer),
           gpointer   data)
{
  GtkWidget *root = GTK_WIDGET (gtk_widget_get_root (widget));

  hand_move (widget, x, y);
  ui_frames (root, 2);
  hand_do ("mousedown", "1", NULL);
  for (int i = 1; i <= STEPS; i++)
    {
      hand_move (widget, x + (to_x - x) * i / STEPS, y + (to_y - y) * i / STEPS);
      if (i == STEPS && halfway != NULL)
        halfway (data);
    }
  ui_frames (root, 2);
  hand_do ("mouseup", "1", NULL);
}

void
hand_key (const char *key)
{
  hand_do ("key", key, NULL);
}
