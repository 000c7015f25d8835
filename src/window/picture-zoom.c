/* picture-zoom.c: a picture made larger, and the part of it that is shown
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A zoomed picture is made anew at that size: lines stay sharp and texts keep
 * their size. Plain turns of the wheel are the page's.
 */

#include "config.h"

#include <math.h>

#include "picture-view-private.h"

#define MAX_ZOOM 8
#define ZOOM_STEP 1.25
/* Of the bars that say which part is shown. */
#define BAR_WIDTH 3

void
tr_picture_view_update_zoom_actions (TrPictureView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);

  gtk_widget_action_set_enabled (widget, "picture.zoom-in", self->zoomable && self->zoom < MAX_ZOOM);
  gtk_widget_action_set_enabled (widget, "picture.zoom-out", self->zoom > 1);
  gtk_widget_action_set_enabled (widget, "picture.fit", self->zoom > 1);
}

void
tr_picture_view_zoom (TrPictureView *self,
                      double         zoom,
                      double         x,
                      double         y)
{
  double share_x, share_y;

  g_return_if_fail (TR_IS_PICTURE_VIEW (self));

  zoom = self->zoomable ? CLAMP (zoom, 1, MAX_ZOOM) : 1;
  if (zoom < 1.02)
    zoom = 1;
  if (fabs (zoom - self->zoom) < 1e-6 || self->is_grabbed || !(self->made_width > 0) || !(self->made_height > 0))
    return;

  /* The texts keep their size, so it is the place in the whole that stays. */
  share_x = (self->scroll_x + x) / self->made_width;
  share_y = (self->scroll_y + y) / self->made_height;
  self->scroll_x = share_x * self->made_width * zoom / self->zoom - x;
  self->scroll_y = share_y * self->made_height * zoom / self->zoom - y;
  self->zoom = zoom;
  tr_picture_view_update_zoom_actions (self);
  tr_picture_view_make_again (self);
}

double
tr_picture_view_get_zoom (TrPictureView *self)
{
  g_return_val_if_fail (TR_IS_PICTURE_VIEW (self), 1);

  return self->zoom;
}

/* Around the pointer, else around the middle. */
static void
zoom_by (TrPictureView *self,
         double         factor)
{
  double x = self->has_pointer ? self->pointer_x : gtk_widget_get_width (GTK_WIDGET (self)) / 2.0;
  double y = self->has_pointer ? self->pointer_y : gtk_widget_get_height (GTK_WIDGET (self)) / 2.0;

  tr_picture_view_zoom (self, self->zoom * factor, x, y);
}

static void
zoom_activated_cb (GtkWidget  *widget,
                   const char *action,
                   GVariant   *parameter)
{
  TrPictureView *self = TR_PICTURE_VIEW (widget);

  if (g_str_equal (action, "picture.zoom-in"))
    zoom_by (self, ZOOM_STEP);
  else if (g_str_equal (action, "picture.zoom-out"))
    zoom_by (self, 1 / ZOOM_STEP);
  else
    tr_picture_view_zoom (self, 1, 0, 0);
}

void
tr_picture_view_class_install_zoom (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "picture.zoom-in", NULL, zoom_activated_cb);
  gtk_widget_class_install_action (widget_class, "picture.zoom-out", NULL, zoom_activated_cb);
  gtk_widget_class_install_action (widget_class, "picture.fit", NULL, zoom_activated_cb);
}

void
tr_picture_view_set_zoomable (TrPictureView *self,
                              gboolean       zoomable)
{
  g_return_if_fail (TR_IS_PICTURE_VIEW (self));

  self->zoomable = zoomable;
  tr_picture_view_update_zoom_actions (self);
  if (!zoomable)
    tr_picture_view_zoom (self, 1, 0, 0);
}

void
tr_picture_view_scroll_by (TrPictureView *self,
                           double         dx,
                           double         dy)
{
  self->scroll_x += dx;
  self->scroll_y += dy;
  tr_picture_view_clamp_scroll (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static gboolean
scrolled_cb (GtkEventControllerScroll *controller,
             double                    dx,
             double                    dy,
             TrPictureView            *self)
{
  GdkModifierType modifiers = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (controller));

  if (!self->zoomable)
    return FALSE;
  if (modifiers & GDK_CONTROL_MASK)
    {
      zoom_by (self, pow (ZOOM_STEP, -dy));
      return TRUE;
    }
  if (self->zoom > 1 && fabs (dx) > fabs (dy))
    {
      tr_picture_view_scroll_by (self, dx * tr_picture_view_get_text_size (self) * 3, 0);
      return TRUE;
    }

  return FALSE;
}

static void
pinch_began_cb (GtkGesture       *gesture,
                GdkEventSequence *sequence,
                TrPictureView    *self)
{
  self->zoom_at_pinch = self->zoom;
  if (self->zoomable)
    gtk_gesture_set_state (gesture, GTK_EVENT_SEQUENCE_CLAIMED);
}

static void
pinched_cb (GtkGestureZoom *gesture,
            double          scale,
            TrPictureView  *self)
{
  double x, y;

  if (self->zoomable && gtk_gesture_get_bounding_box_center (GTK_GESTURE (gesture), &x, &y))
    tr_picture_view_zoom (self, self->zoom_at_pinch * scale, x, y);
}

gboolean
tr_picture_view_use_zoom_key (TrPictureView   *self,
                              guint            key,
                              GdkModifierType  modifiers)
{
  if (!self->zoomable || (modifiers & (GDK_ALT_MASK | GDK_SUPER_MASK)))
    return FALSE;

  switch (key)
    {
    case GDK_KEY_plus:
    case GDK_KEY_equal:
    case GDK_KEY_KP_Add:
      zoom_by (self, ZOOM_STEP);
      return TRUE;
    case GDK_KEY_minus:
    case GDK_KEY_KP_Subtract:
      zoom_by (self, 1 / ZOOM_STEP);
      return TRUE;
    case GDK_KEY_0:
    case GDK_KEY_KP_0:
      tr_picture_view_zoom (self, 1, 0, 0);
      return TRUE;
    default:
      return FALSE;
    }
}

gboolean
tr_picture_view_use_pan_key (TrPictureView *self,
                             guint          key)
{
  double step = tr_picture_view_get_text_size (self) * 3;

  if (self->zoom <= 1)
    return FALSE;

  switch (key)
    {
    case GDK_KEY_Left:
      tr_picture_view_scroll_by (self, -step, 0);
      return TRUE;
    case GDK_KEY_Right:
      tr_picture_view_scroll_by (self, step, 0);
      return TRUE;
    case GDK_KEY_Up:
      tr_picture_view_scroll_by (self, 0, -step);
      return TRUE;
    case GDK_KEY_Down:
      tr_picture_view_scroll_by (self, 0, step);
      return TRUE;
    default:
      return FALSE;
    }
}

void
tr_picture_view_add_zoom_controllers (TrPictureView *self)
{
  GtkEventController *scroll = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  GtkGesture *pinch = gtk_gesture_zoom_new ();

  g_signal_connect (scroll, "scroll", G_CALLBACK (scrolled_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), scroll);
  g_signal_connect (pinch, "begin", G_CALLBACK (pinch_began_cb), self);
  g_signal_connect (pinch, "scale-changed", G_CALLBACK (pinched_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (pinch));
}

static void
append_colour (GtkSnapshot *snapshot,
               GdkRGBA     *colour,
               float        x,
               float        y,
               float        width,
               float        height)
{
  gtk_snapshot_append_color (snapshot, colour, &GRAPHENE_RECT_INIT (x, y, width, height));
}

void
tr_picture_view_append_bars (TrPictureView *self,
                             GtkSnapshot   *snapshot)
{
  float width = (float) gtk_widget_get_width (GTK_WIDGET (self)), height = (float) gtk_widget_get_height (GTK_WIDGET (self));
  float x = (float) (self->scroll_x / self->made_width) * width, y = (float) (self->scroll_y / self->made_height) * height;
  GdkRGBA colour;

  if (self->zoom <= 1)
    return;

  gtk_style_context_get_color (gtk_widget_get_style_context (GTK_WIDGET (self)), &colour);
  colour.alpha *= 0.4f;
  append_colour (snapshot, &colour, x, height - BAR_WIDTH, width / (float) self->zoom, BAR_WIDTH);
  append_colour (snapshot, &colour, width - BAR_WIDTH, y, BAR_WIDTH, height / (float) self->zoom);
}
