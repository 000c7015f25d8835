/* turns-strip-pointer.c: what is grabbed, dragged and pressed on the strip
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The picture view tells which part; what that means for a turn is decided
 * here, and done by turn-edits.c.
 */

#include "config.h"

#include "turns-strip-private.h"

#include "picture-view.h"

/* What of the strip a hit belongs to; NOTHING: none. */
static TrHit
element_of (TrTurnsStrip *self,
            const TrHit  *hit)
{
  const TrDoughFigures *figures = tr_turns_strip_get_figures (self);

  switch ((int) hit->part)
    {
    case TR_PART_OF_LOCK_IN:
    case TR_PART_OF_SHEET:
    case TR_PART_OF_TURN:
      return *hit;
    case TR_PART_OF_ROLL:
    case TR_PART_OF_FOLD:
    case TR_PART_OF_EDGE:
      return (TrHit) { TR_PART_OF_TURN, hit->index };
    case TR_PART_OF_WORKTOP:
      if (figures != NULL)
        return tr_turns_strip_element_at (hit->index, figures);
      return (TrHit) { TR_PART_OF_NOTHING, -1 };
    default:
      return (TrHit) { TR_PART_OF_NOTHING, -1 };
    }
}

static gboolean
grab_edge (TrTurnsStrip *self,
           guint         turn,
           double        x,
           gboolean      is_press)
{
  double width;
  TrTurnRoll roll;

  tr_picture_view_set_cursor (TR_PICTURE_VIEW (self->view), "ew-resize");
  if (!tr_turn_get_roll (tr_turns_strip_get_page (self), turn, &roll))
    return FALSE;
  if (!is_press)
    return TRUE;

  gtk_widget_grab_focus (self->view);
  tr_turns_strip_select (self, (TrHit) { TR_PART_OF_TURN, (int) turn });
  tr_picture_get_size (tr_picture_view_get_picture (TR_PICTURE_VIEW (self->view)), &width, NULL);
  if (!tr_turns_strip_find_plan (self, width, &self->held))
    return FALSE;

  self->roll = roll;
  self->start_x = x;
  self->drag = TR_DRAG_EDGE;
  tr_page_begin_drag (tr_turns_strip_get_page (self));

  return TRUE;
}

static gboolean
grabbed_cb (TrPictureView *view,
            const TrHit   *hit,
            double         x,
            double         y,
            gboolean       is_press,
            TrTurnsStrip  *self)
{
  const TrDoughFigures *figures = tr_turns_strip_get_figures (self);
  TrHit element = element_of (self, hit);

  if (figures == NULL || self->drag != TR_DRAG_NOTHING)
    return FALSE;
  self->dough = tr_page_get_dough_index (tr_turns_strip_get_page (self));
  if (hit->part == TR_PART_OF_EDGE)
    return grab_edge (self, (guint) hit->index, x, is_press);
  if (element.part != TR_PART_OF_TURN || figures->dough->turns->len < 2)
    return FALSE;
  if (is_press)
    {
      self->drag = TR_DRAG_TURN;
      self->turn = (guint) element.index;
    }

  return TRUE;
}

/* Where a turn that is let go here would stand: before or after the nearest one. */
static int
find_drop_place (TrTurnsStrip *self,
                 double        x,
                 double        y)
{
  TrPicture *picture = tr_picture_view_get_picture (TR_PICTURE_VIEW (self->view));
  double nearest = G_MAXDOUBLE;
  int at = -1;
  TrBox box;

  for (int i = 0; picture != NULL && tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_TURN, i }, &box); i++)
    {
      double across = MAX (0, MAX (box.x - x, x - box.x - box.width)), down = MAX (0, MAX (box.y - y, y - box.y - box.height));
      gboolean is_past = (x > box.x + box.width / 2) != tr_turns_strip_is_mirrored (self);

      /* Rows before columns. */
      if (across + 1000 * down >= nearest)
        continue;
      nearest = across + 1000 * down;
      at = i + (is_past ? 1 : 0);
    }

  return at == (int) self->turn || at == (int) self->turn + 1 ? -1 : at;
}

static void
dragged_cb (TrPictureView *view,
            double         x,
            double         y,
            TrTurnsStrip  *self)
{
  int drop_at;

  if (self->drag == TR_DRAG_EDGE)
    {
      double by = (tr_turns_strip_is_mirrored (self) ? self->start_x - x : x - self->start_x) / self->held.scale;

      tr_turn_roll_to (tr_turns_strip_get_page (self), &self->roll, self->roll.length_mm + by);
      return;
    }
  if (self->selected.part != TR_PART_OF_TURN || self->selected.index != (int) self->turn)
    tr_turns_strip_select (self, (TrHit) { TR_PART_OF_TURN, (int) self->turn });
  drop_at = find_drop_place (self, x, y);
  if (drop_at == self->drop_at)
    return;

  self->drop_at = drop_at;
  tr_turns_strip_show (self);
}

static void
dropped_cb (TrPictureView *view,
            gboolean       is_cancelled,
            TrTurnsStrip  *self)
{
  TrTurnsDrag drag = self->drag;
  int at = self->drop_at;
  TrPage *page = tr_turns_strip_get_page (self);
  guint to;

  self->drag = TR_DRAG_NOTHING;
  self->drop_at = -1;
  if (page != NULL)
    tr_page_end_drag (page, is_cancelled);
  tr_turns_strip_refresh (self);
  if (drag != TR_DRAG_TURN || is_cancelled || at < 0)
    return;

  to = (guint) at > self->turn ? (guint) at - 1 : (guint) at;
  if (tr_turn_move (page, self->turn, to))
    tr_turns_strip_select (self, (TrHit) { TR_PART_OF_TURN, (int) to });
}

static void
pressed_cb (TrPictureView *view,
            const TrHit   *hit,
            int            n_press,
            TrTurnsStrip  *self)
{
  TrHit element = element_of (self, hit);

  gtk_widget_grab_focus (self->view);
  if (hit->part == TR_PART_OF_ADD)
    {
      if (n_press == 1 && tr_turn_add (tr_turns_strip_get_page (self), (guint) hit->index))
        tr_turns_strip_select (self, (TrHit) { TR_PART_OF_TURN, hit->index });
      return;
    }
  if (element.part == TR_PART_OF_NOTHING)
    return;

  tr_turns_strip_select (self, element);
  if (n_press == 2)
    tr_turns_strip_activate (self);
}

/* The menu is for what lies under the pointer. */
static void
menu_clicked_cb (GtkGestureClick *gesture,
                 int              n_press,
                 double           x,
                 double           y,
                 TrTurnsStrip    *self)
{
  TrHit hit;

  if (!tr_picture_view_get_hover (TR_PICTURE_VIEW (self->view), &hit))
    return;

  gtk_widget_grab_focus (self->view);
  tr_turns_strip_select (self, element_of (self, &hit));
}

void
tr_turns_strip_add_pointer (TrTurnsStrip *self)
{
  GtkGesture *menu_click = gtk_gesture_click_new ();

  g_signal_connect (self->view, "grab", G_CALLBACK (grabbed_cb), self);
  g_signal_connect (self->view, "dragged", G_CALLBACK (dragged_cb), self);
  g_signal_connect (self->view, "dropped", G_CALLBACK (dropped_cb), self);
  g_signal_connect (self->view, "pressed", G_CALLBACK (pressed_cb), self);

  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (menu_click), GTK_PHASE_CAPTURE);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (menu_click), GDK_BUTTON_SECONDARY);
  g_signal_connect (menu_click, "pressed", G_CALLBACK (menu_clicked_cb), self);
  gtk_widget_add_controller (self->view, GTK_EVENT_CONTROLLER (menu_click));
}
