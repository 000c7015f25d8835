/* picture-pointer.c: a picture's parts hovered, pressed and grabbed
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One gesture does both clicks and drags. State is put away before a signal is
 * emitted: a handler may make the picture anew, hide the view or destroy it.
 */

#include "config.h"

#include <math.h>

#include "actions.h"
#include "picture-view-private.h"

/* A press that goes no further is a click. */
#define DRAG_PIXELS 3

static TrHit
hit_at (TrPictureView *self,
        double         x,
        double         y)
{
  if (self->picture == NULL)
    return (TrHit) { TR_PART_OF_NOTHING, -1 };

  return tr_picture_hit (self->picture, x + self->scroll_x, y + self->scroll_y);
}

static gboolean
ask_grab (TrPictureView *self,
          double         x,
          double         y,
          gboolean       is_press)
{
  TrHit hit = hit_at (self, x, y);
  gboolean can_grab = FALSE;

  g_clear_pointer (&self->cursor, g_free);
  if (self->picture != NULL)
    g_signal_emit (self, tr_picture_view_signals[TR_PICTURE_GRAB], 0, &hit, x + self->scroll_x, y + self->scroll_y, is_press, &can_grab);

  return can_grab;
}

static void
show_cursor (TrPictureView *self,
             gboolean       can_grab,
             gboolean       is_holding)
{
  const char *hand = is_holding ? "grabbing" : can_grab ? "grab" : NULL;

  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), hand != NULL && self->cursor != NULL ? self->cursor : hand);
}

static void
set_hover (TrPictureView *self,
           TrHit          hit)
{
  if (hit.part == self->hover.part && hit.index == self->hover.index)
    return;

  self->hover = hit;
  g_signal_emit (self, tr_picture_view_signals[TR_PICTURE_HOVERED], 0, &hit);
}

/* ---- keys ---- */

static gboolean
press_selected (TrPictureView *self)
{
  TrHit hit = self->selected;

  if (!self->has_selected)
    return FALSE;

  g_signal_emit (self, tr_picture_view_signals[TR_PICTURE_PRESSED], 0, &hit, 1);

  return TRUE;
}

static gboolean
key_pressed_cb (GtkEventControllerKey *controller,
                guint                  key,
                guint                  code,
                GdkModifierType        modifiers,
                TrPictureView         *self)
{
  if (key == GDK_KEY_Menu)
    {
      tr_picture_view_popup_menu_at_selected (self);
      return TRUE;
    }
  if (tr_picture_view_use_zoom_key (self, key, modifiers))
    return TRUE;
  if (modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK))
    return FALSE;
  if (key == GDK_KEY_Return || key == GDK_KEY_KP_Enter || key == GDK_KEY_space)
    return press_selected (self);

  return tr_picture_view_use_pan_key (self, key);
}

static gboolean
root_key_pressed_cb (GtkEventControllerKey *controller,
                     guint                  key,
                     guint                  code,
                     GdkModifierType        modifiers,
                     TrPictureView         *self)
{
  GtkWidget *focus = self->root != NULL ? gtk_root_get_focus (GTK_ROOT (self->root)) : NULL;

  if (self->is_grabbed && key == GDK_KEY_Escape)
    {
      tr_picture_view_cancel_drag (self);
      return TRUE;
    }
  /* Whoever writes a number means the number; a picture has keys of its own. */
  if (focus != NULL && (GTK_IS_EDITABLE (focus) || TR_IS_PICTURE_VIEW (focus)))
    return FALSE;

  return self->has_pointer && tr_picture_view_use_zoom_key (self, key, modifiers);
}

/* Keys that count wherever the focus is, while the pointer is here. */
static void
listen_to_root (TrPictureView *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (self->keys_of_root != NULL || root == NULL)
    return;

  self->root = GTK_WIDGET (root);
  self->keys_of_root = gtk_event_controller_key_new ();
  gtk_event_controller_set_propagation_phase (self->keys_of_root, GTK_PHASE_CAPTURE);
  g_signal_connect (self->keys_of_root, "key-pressed", G_CALLBACK (root_key_pressed_cb), self);
  gtk_widget_add_controller (self->root, self->keys_of_root);
  g_object_add_weak_pointer (G_OBJECT (self->root), (gpointer *) &self->root);
}

static void
stop_listening (TrPictureView *self)
{
  if (self->keys_of_root == NULL)
    return;

  if (self->root != NULL)
    {
      g_object_remove_weak_pointer (G_OBJECT (self->root), (gpointer *) &self->root);
      gtk_widget_remove_controller (self->root, self->keys_of_root);
    }
  self->root = NULL;
  self->keys_of_root = NULL;
}

/* ---- the last one pointed at ---- */

static GQuark
last_quark (void)
{
  return g_quark_from_static_string ("tr-picture-view-last");
}

static void
remember (TrPictureView *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (root != NULL)
    g_object_set_qdata (G_OBJECT (root), last_quark (), self);
}

static void
forget (TrPictureView *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (root != NULL && g_object_get_qdata (G_OBJECT (root), last_quark ()) == self)
    g_object_set_qdata (G_OBJECT (root), last_quark (), NULL);
}

TrPictureView *
tr_picture_view_find (GtkRoot *root)
{
  GtkWidget *focus;

  g_return_val_if_fail (GTK_IS_ROOT (root), NULL);

  focus = gtk_root_get_focus (root);
  if (focus != NULL && TR_IS_PICTURE_VIEW (focus))
    return TR_PICTURE_VIEW (focus);

  return g_object_get_qdata (G_OBJECT (root), last_quark ());
}

/* ---- drags ---- */

/* The end, whatever brought it: once. */
static void
end_drag (TrPictureView *self,
          gboolean       is_cancelled)
{
  gboolean was_grabbed = self->is_grabbed;

  self->is_pressed = FALSE;
  self->is_grabbed = FALSE;
  if (!was_grabbed)
    return;

  g_clear_pointer (&self->cursor, g_free);
  show_cursor (self, FALSE, FALSE);
  g_signal_emit (self, tr_picture_view_signals[TR_PICTURE_DROPPED], 0, is_cancelled);
}

static void
drag_began_cb (GtkGestureDrag *gesture,
               double          x,
               double          y,
               TrPictureView  *self)
{
  g_autoptr (TrPictureView) alive = g_object_ref (self);

  /* What stands in a field is committed first: it may change the picture. */
  if (gtk_widget_get_focusable (GTK_WIDGET (self)))
    gtk_widget_grab_focus (GTK_WIDGET (self));
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;

  remember (self);
  self->press_x = x;
  self->press_y = y;
  self->scroll_x_at_press = self->scroll_x;
  self->scroll_y_at_press = self->scroll_y;
  self->has_moved = FALSE;
  self->is_pressed = TRUE;
  if (!ask_grab (self, x, y, TRUE) || !self->is_pressed)
    return;

  self->is_grabbed = TRUE;
  show_cursor (self, TRUE, TRUE);
  listen_to_root (self);
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
}

static void
drag_moved_cb (GtkGestureDrag *gesture,
               double          dx,
               double          dy,
               TrPictureView  *self)
{
  if (!self->is_pressed)
    return;

  self->has_moved = self->has_moved || hypot (dx, dy) > DRAG_PIXELS;
  if (!self->has_moved)
    return;
  if (self->is_grabbed)
    {
      g_signal_emit (self, tr_picture_view_signals[TR_PICTURE_DRAGGED], 0,
                     self->press_x + dx + self->scroll_x, self->press_y + dy + self->scroll_y);
      return;
    }
  if (self->zoom > 1)
    {
      gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
      gtk_widget_set_cursor_from_name (GTK_WIDGET (self), "all-scroll");
      tr_picture_view_scroll_by (self, self->scroll_x_at_press - dx - self->scroll_x, self->scroll_y_at_press - dy - self->scroll_y);
    }
}

static void
drag_ended_cb (GtkGestureDrag *gesture,
               double          dx,
               double          dy,
               TrPictureView  *self)
{
  g_autoptr (TrPictureView) alive = g_object_ref (self);

  /* Cancelled before the button was released. */
  if (!self->is_pressed)
    return;

  gboolean is_click = !self->has_moved;
  TrHit hit = hit_at (self, self->press_x, self->press_y);

  end_drag (self, is_click);
  if (is_click)
    g_signal_emit (self, tr_picture_view_signals[TR_PICTURE_PRESSED], 0, &hit, MAX (1, self->n_press));
  else
    show_cursor (self, FALSE, FALSE);
}

static void
drag_cancelled_cb (GtkGesture       *gesture,
                   GdkEventSequence *sequence,
                   TrPictureView    *self)
{
  g_autoptr (TrPictureView) alive = g_object_ref (self);

  end_drag (self, TRUE);
}

void
tr_picture_view_cancel_drag (TrPictureView *self)
{
  g_return_if_fail (TR_IS_PICTURE_VIEW (self));

  g_autoptr (TrPictureView) alive = g_object_ref (self);

  end_drag (self, TRUE);
  gtk_event_controller_reset (GTK_EVENT_CONTROLLER (self->drag));
}

gboolean
tr_picture_view_is_dragging (TrPictureView *self)
{
  g_return_val_if_fail (TR_IS_PICTURE_VIEW (self), FALSE);

  return self->is_grabbed;
}

/* ---- hovering ---- */

static void
pointer_moved_cb (GtkEventControllerMotion *controller,
                  double                    x,
                  double                    y,
                  TrPictureView            *self)
{
  /* GTK sends a motion without one when a widget is laid out anew; what was
   * stepped to by key is not to be lost to a pointer that rests. */
  gboolean rests = self->has_pointer && fabs (x - self->pointer_x) < 0.5 && fabs (y - self->pointer_y) < 0.5;

  self->has_pointer = TRUE;
  self->pointer_x = x;
  self->pointer_y = y;
  if (self->is_pressed)
    return;

  remember (self);
  listen_to_root (self);
  show_cursor (self, ask_grab (self, x, y, FALSE), FALSE);
  if (!rests)
    set_hover (self, hit_at (self, x, y));
}

static void
pointer_left_cb (GtkEventControllerMotion *controller,
                 TrPictureView            *self)
{
  self->has_pointer = FALSE;
  if (self->is_pressed)
    return;

  stop_listening (self);
  set_hover (self, (TrHit) { TR_PART_OF_NOTHING, -1 });
}

gboolean
tr_picture_view_get_hover (TrPictureView *self,
                           TrHit         *hit)
{
  g_return_val_if_fail (TR_IS_PICTURE_VIEW (self), FALSE);
  g_return_val_if_fail (hit != NULL, FALSE);

  *hit = self->has_pointer ? hit_at (self, self->pointer_x, self->pointer_y) : (TrHit) { TR_PART_OF_NOTHING, -1 };

  return hit->part != TR_PART_OF_NOTHING;
}

void
tr_picture_view_set_cursor (TrPictureView *self,
                            const char    *cursor)
{
  g_return_if_fail (TR_IS_PICTURE_VIEW (self));

  g_free (self->cursor);
  self->cursor = g_strdup (cursor);
}

void
tr_picture_view_lose_pointer (TrPictureView *self)
{
  g_autoptr (TrPictureView) alive = g_object_ref (self);

  end_drag (self, TRUE);
  forget (self);
  stop_listening (self);
  self->has_pointer = FALSE;
  self->hover = (TrHit) { TR_PART_OF_NOTHING, -1 };
}

static void
clicked_cb (GtkGestureClick *gesture,
            int              n_press,
            double           x,
            double           y,
            TrPictureView   *self)
{
  self->n_press = n_press;
}

static void
menu_clicked_cb (GtkGestureClick *gesture,
                 int              n_press,
                 double           x,
                 double           y,
                 TrPictureView   *self)
{
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  tr_picture_view_popup_menu (self, x, y);
}

static void
held_cb (GtkGestureLongPress *gesture,
         double               x,
         double               y,
         TrPictureView       *self)
{
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  tr_picture_view_popup_menu (self, x, y);
}

static void
add_controller (TrPictureView *self,
                gpointer       controller,
                const char    *signal,
                GCallback      callback)
{
  g_signal_connect (controller, signal, callback, self);
  gtk_widget_add_controller (GTK_WIDGET (self), controller);
}

void
tr_picture_view_add_controllers (TrPictureView *self)
{
  GtkGesture *click = gtk_gesture_click_new (), *menu_click = gtk_gesture_click_new (), *hold = gtk_gesture_long_press_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();

  add_controller (self, click, "pressed", G_CALLBACK (clicked_cb));
  self->drag = gtk_gesture_drag_new ();
  g_signal_connect (self->drag, "drag-update", G_CALLBACK (drag_moved_cb), self);
  g_signal_connect (self->drag, "drag-end", G_CALLBACK (drag_ended_cb), self);
  g_signal_connect (self->drag, "cancel", G_CALLBACK (drag_cancelled_cb), self);
  add_controller (self, self->drag, "drag-begin", G_CALLBACK (drag_began_cb));
  gtk_gesture_group (self->drag, click);

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (menu_click), GDK_BUTTON_SECONDARY);
  add_controller (self, menu_click, "pressed", G_CALLBACK (menu_clicked_cb));
  gtk_gesture_single_set_touch_only (GTK_GESTURE_SINGLE (hold), TRUE);
  add_controller (self, hold, "pressed", G_CALLBACK (held_cb));

  g_signal_connect (motion, "enter", G_CALLBACK (pointer_moved_cb), self);
  g_signal_connect (motion, "leave", G_CALLBACK (pointer_left_cb), self);
  add_controller (self, motion, "motion", G_CALLBACK (pointer_moved_cb));
  add_controller (self, gtk_event_controller_key_new (), "key-pressed", G_CALLBACK (key_pressed_cb));
  gtk_widget_add_controller (GTK_WIDGET (self), tr_actions_new_keys (TR_KEYS_PICTURES));
  tr_picture_view_add_zoom_controllers (self);
}
