/* held-viewports.c: a page stays where it is while a popover of it has the focus
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GTK 4.8 scrolls a page until what has the focus in a popover would be seen in
 * the page, and the popover goes along, away from the pointer that presses it.
 */

#include "config.h"

#include "held-viewports.h"

static void
release (gpointer viewport)
{
  gtk_viewport_set_scroll_to_focus (viewport, TRUE);
  g_object_unref (viewport);
}

static void
focus_changed_cb (GtkWindow  *window,
                  GParamSpec *property,
                  GPtrArray  *held)
{
  gboolean is_in_popover = FALSE;

  g_ptr_array_set_size (held, 0);
  for (GtkWidget *widget = gtk_window_get_focus (window); widget != NULL; widget = gtk_widget_get_parent (widget))
    {
      is_in_popover = is_in_popover || GTK_IS_POPOVER (widget);
      if (!is_in_popover || !GTK_IS_VIEWPORT (widget))
        continue;

      gtk_viewport_set_scroll_to_focus (GTK_VIEWPORT (widget), FALSE);
      g_ptr_array_add (held, g_object_ref (widget));
    }
}

static void
free_held (gpointer  data,
           GClosure *closure)
{
  g_ptr_array_unref (data);
}

/* A viewport hears of the focus from when it comes into the window: later than this. */
void
tr_hold_viewports (GtkWindow *window)
{
  g_return_if_fail (GTK_IS_WINDOW (window));
  g_return_if_fail (gtk_widget_get_first_child (GTK_WIDGET (window)) == NULL);

  g_signal_connect_data (window, "notify::focus-widget", G_CALLBACK (focus_changed_cb),
                         g_ptr_array_new_with_free_func (release), free_held, 0);
}
