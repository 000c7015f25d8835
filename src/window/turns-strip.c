/* turns-strip.c: the sequence as a strip that is chosen from and edited in place
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The picture view tells what is grabbed, dragged and pressed; what that means
 * for a turn is decided here, and done by turn-edits.c. While an edge is
 * dragged the rows stay as they are, so that the sheet does not move away from
 * under the pointer.
 */

#include "config.h"

#include "turns-strip.h"

#include <glib/gi18n-lib.h>

#include "../picture/sequence.h"
#include "actions.h"
#include "picture-view.h"
#include "turn-edits.h"

/* Until there is a picture whose text can be measured. */
#define FIRST_LINES 10

typedef enum { DRAG_NOTHING, DRAG_EDGE, DRAG_TURN } DragKind;

struct _TrTurnsStrip
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *view;

  /* What is selected and what is dragged */
  TrHit selected;
  DragKind drag;
  TrTurnRoll roll;
  TrSequencePlan held;
  double start_x;
  const TrTrial *trial;
  guint turn;
  int drop_at;
};

enum { SELECTED, ACTIVATED, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrTurnsStrip, tr_turns_strip, GTK_TYPE_WIDGET)

/* What the picture is made from */

typedef struct {
  TrDoughFigures *figures;
  TrSequenceMarks marks;
  TrSequencePlan held;
} Shown;

static void
free_shown (gpointer data)
{
  Shown *shown = data;

  tr_dough_figures_unref (shown->figures);
  g_free (shown);
}

static TrPicture *
make_sequence_picture (gpointer        data,
                       guint           item,
                       const TrReader *reader,
                       const TrLook   *look,
                       double          width,
                       double          height)
{
  Shown *shown = data;

  return tr_sequence_picture_new (shown->figures, &shown->marks, reader, look, width, height);
}

static TrPage *
get_page (TrTurnsStrip *self)
{
  return (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);
}

static const TrDoughFigures *
get_figures (TrTurnsStrip *self)
{
  TrPage *page = get_page (self);

  return page != NULL ? tr_page_get_figures (page) : NULL;
}

static gboolean
is_mirrored (TrTurnsStrip *self)
{
  return gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;
}

static void
set_marks (TrTurnsStrip    *self,
           TrSequenceMarks *marks)
{
  *marks = (TrSequenceMarks) { .selected = self->selected, .drop_at = self->drop_at, .can_edit = TRUE,
                               .is_mirrored = is_mirrored (self) };
}

static void
show (TrTurnsStrip *self)
{
  const TrDoughFigures *figures = get_figures (self);

  if (figures == NULL)
    {
      tr_picture_view_set_figures (TR_PICTURE_VIEW (self->view), NULL, 0, tr_page_get_reader (get_page (self)));
      return;
    }

  Shown *shown = g_new0 (Shown, 1);

  shown->figures = tr_dough_figures_ref ((TrDoughFigures *) figures);
  set_marks (self, &shown->marks);
  shown->held = self->held;
  shown->marks.held = self->drag == DRAG_EDGE ? &shown->held : NULL;
  tr_picture_view_set_data (TR_PICTURE_VIEW (self->view), shown, free_shown, 0, tr_page_get_reader (get_page (self)));
  tr_picture_view_set_selected (TR_PICTURE_VIEW (self->view), &self->selected);
}

/* How high, for a width */

static gboolean
find_plan (TrTurnsStrip   *self,
           double          width,
           TrSequencePlan *plan)
{
  const TrDoughFigures *figures = get_figures (self);
  TrPicture *picture = tr_picture_view_get_picture (TR_PICTURE_VIEW (self->view));
  TrSequenceMarks marks;

  if (figures == NULL || picture == NULL)
    return FALSE;

  set_marks (self, &marks);
  marks.held = self->drag == DRAG_EDGE ? &self->held : NULL;
  tr_sequence_plan (figures, &marks, tr_page_get_reader (get_page (self)), tr_picture_get_look (picture), width, plan);
  if (marks.held != NULL)
    plan->height = self->held.height;

  return TRUE;
}

static GtkSizeRequestMode
tr_turns_strip_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
tr_turns_strip_measure (GtkWidget      *widget,
                        GtkOrientation  orientation,
                        int             for_size,
                        int            *minimum,
                        int            *natural,
                        int            *minimum_baseline,
                        int            *natural_baseline)
{
  TrTurnsStrip *self = TR_TURNS_STRIP (widget);
  TrSequencePlan plan;
  int least;

  gtk_widget_measure (self->view, orientation, -1, minimum, natural, NULL, NULL);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    return;

  gtk_widget_measure (self->view, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  if (find_plan (self, MAX (for_size, least), &plan))
    *minimum = *natural = (int) ceil (plan.height);
}

static void
tr_turns_strip_size_allocate (GtkWidget *widget,
                              int        width,
                              int        height,
                              int        baseline)
{
  gtk_widget_allocate (TR_TURNS_STRIP (widget)->view, width, height, -1, NULL);
}

/* Selecting */

static gboolean
is_there (TrTurnsStrip *self,
          const TrHit  *element)
{
  const TrDoughFigures *figures = get_figures (self);

  if (figures == NULL)
    return FALSE;

  switch ((int) element->part)
    {
    case TR_PART_OF_LOCK_IN:
      return TRUE;
    case TR_PART_OF_TURN:
      return element->index >= 0 && (guint) element->index < figures->dough->turns->len;
    case TR_PART_OF_SHEET:
      return figures->has_sheet;
    default:
      return FALSE;
    }
}

/* The last turn that is left, else the lock-in. */
static void
settle_selection (TrTurnsStrip *self)
{
  const TrDoughFigures *figures = get_figures (self);

  if (figures == NULL || is_there (self, &self->selected))
    return;
  if (figures->dough->turns->len > 0)
    self->selected = (TrHit) { TR_PART_OF_TURN, (int) figures->dough->turns->len - 1 };
  else
    self->selected = (TrHit) { TR_PART_OF_LOCK_IN, 0 };
}

TrHit
tr_turns_strip_get_selected (TrTurnsStrip *self)
{
  g_return_val_if_fail (TR_IS_TURNS_STRIP (self), ((TrHit) { TR_PART_OF_NOTHING, -1 }));

  return self->selected;
}

void
tr_turns_strip_select (TrTurnsStrip *self,
                       TrHit         element)
{
  g_return_if_fail (TR_IS_TURNS_STRIP (self));

  if (!is_there (self, &element))
    return;

  self->selected = element;
  show (self);
  g_signal_emit (self, signals[SELECTED], 0);
}

/* The elements in order: 0 the lock-in, then the turns, then the sheet. */
static int
place_of (const TrHit         *element,
          const TrDoughFigures *figures)
{
  if (element->part == TR_PART_OF_LOCK_IN)
    return 0;
  if (element->part == TR_PART_OF_SHEET)
    return (int) figures->dough->turns->len + 1;

  return element->index + 1;
}

static TrHit
element_at (int                   place,
            const TrDoughFigures *figures)
{
  int n_turns = (int) figures->dough->turns->len;

  if (place <= 0)
    return (TrHit) { TR_PART_OF_LOCK_IN, 0 };
  if (place <= n_turns)
    return (TrHit) { TR_PART_OF_TURN, place - 1 };

  return (TrHit) { TR_PART_OF_SHEET, 0 };
}

static gboolean
select_by (TrTurnsStrip *self,
           int           by)
{
  const TrDoughFigures *figures = get_figures (self);
  TrHit element;

  if (figures == NULL)
    return FALSE;
  element = element_at (place_of (&self->selected, figures) + by, figures);
  if (!is_there (self, &element))
    return FALSE;

  tr_turns_strip_select (self, element);

  return TRUE;
}

static void
select_end (TrTurnsStrip *self,
            gboolean      last)
{
  const TrDoughFigures *figures = get_figures (self);

  if (figures != NULL)
    tr_turns_strip_select (self, element_at (!last ? 0 : (int) figures->dough->turns->len + (figures->has_sheet ? 1 : 0), figures));
}

/* Before the view sees them: there Return is a press like any other. */
static gboolean
key_pressed_cb (GtkEventControllerKey *controller,
                guint                  key,
                guint                  code,
                GdkModifierType        modifiers,
                TrTurnsStrip          *self)
{
  int forward = is_mirrored (self) ? -1 : 1;

  if (modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK | GDK_SUPER_MASK))
    return FALSE;

  switch (key)
    {
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      return select_by (self, -forward);
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      return select_by (self, forward);
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
    case GDK_KEY_KP_Add:
      return gtk_widget_activate_action (GTK_WIDGET (self), "turn.thicker", NULL);
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
    case GDK_KEY_KP_Subtract:
      return gtk_widget_activate_action (GTK_WIDGET (self), "turn.thinner", NULL);
    case GDK_KEY_Home:
      select_end (self, FALSE);
      return TRUE;
    case GDK_KEY_End:
      select_end (self, TRUE);
      return TRUE;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      g_signal_emit (self, signals[ACTIVATED], 0);
      return TRUE;
    default:
      return FALSE;
    }
}

/* Pointer */

/* What of the strip a hit belongs to; NOTHING: none. */
static TrHit
element_of (TrTurnsStrip *self,
            const TrHit  *hit)
{
  const TrDoughFigures *figures = get_figures (self);

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
        return element_at (hit->index, figures);
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
  if (!tr_turn_get_roll (get_page (self), turn, &roll))
    return FALSE;
  if (!is_press)
    return TRUE;

  tr_picture_get_size (tr_picture_view_get_picture (TR_PICTURE_VIEW (self->view)), &width, NULL);
  if (!find_plan (self, width, &self->held))
    return FALSE;

  self->roll = roll;
  self->start_x = x;
  self->drag = DRAG_EDGE;
  tr_document_seal (tr_page_get_document (get_page (self)));
  self->trial = tr_document_get_trial (tr_page_get_document (get_page (self)));

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
  const TrDoughFigures *figures = get_figures (self);
  TrHit element = element_of (self, hit);

  if (figures == NULL || self->drag != DRAG_NOTHING)
    return FALSE;
  if (hit->part == TR_PART_OF_EDGE)
    return grab_edge (self, (guint) hit->index, x, is_press);
  if (element.part != TR_PART_OF_TURN || figures->dough->turns->len < 2)
    return FALSE;
  if (is_press)
    {
      self->drag = DRAG_TURN;
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
      gboolean is_past = (x > box.x + box.width / 2) != is_mirrored (self);

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

  if (self->drag == DRAG_EDGE)
    {
      double by = (is_mirrored (self) ? self->start_x - x : x - self->start_x) / self->held.scale;

      tr_turn_roll_to (get_page (self), &self->roll, self->roll.length_mm + by);
      return;
    }
  drop_at = find_drop_place (self, x, y);
  if (drop_at == self->drop_at)
    return;

  self->drop_at = drop_at;
  show (self);
}

static void
end_drag (TrTurnsStrip *self,
          gboolean      is_cancelled)
{
  TrDocument *document = tr_page_get_document (get_page (self));

  tr_document_seal (document);
  if (is_cancelled && tr_document_get_trial (document) != self->trial)
    tr_document_undo (document);
}

static void
dropped_cb (TrPictureView *view,
            gboolean       is_cancelled,
            TrTurnsStrip  *self)
{
  DragKind drag = self->drag;
  int at = self->drop_at;
  guint to;

  self->drag = DRAG_NOTHING;
  self->drop_at = -1;
  if (drag == DRAG_EDGE)
    end_drag (self, is_cancelled);
  tr_turns_strip_refresh (self);
  if (drag != DRAG_TURN || is_cancelled || at < 0)
    return;

  to = (guint) at > self->turn ? (guint) at - 1 : (guint) at;
  if (tr_turn_move (get_page (self), self->turn, to))
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
      if (n_press == 1 && tr_turn_add (get_page (self), (guint) hit->index))
        tr_turns_strip_select (self, (TrHit) { TR_PART_OF_TURN, hit->index });
      return;
    }
  if (element.part == TR_PART_OF_NOTHING)
    return;

  tr_turns_strip_select (self, element);
  if (n_press == 2)
    g_signal_emit (self, signals[ACTIVATED], 0);
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

/* The widget */

static void
tr_turns_strip_direction_changed (GtkWidget        *widget,
                                  GtkTextDirection  before)
{
  GTK_WIDGET_CLASS (tr_turns_strip_parent_class)->direction_changed (widget, before);

  if (get_figures (TR_TURNS_STRIP (widget)) != NULL)
    show (TR_TURNS_STRIP (widget));
}

static void
tr_turns_strip_dispose (GObject *object)
{
  TrTurnsStrip *self = TR_TURNS_STRIP (object);

  g_clear_pointer (&self->view, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_turns_strip_parent_class)->dispose (object);
}

static void
tr_turns_strip_class_init (TrTurnsStripClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_turns_strip_dispose;
  widget_class->get_request_mode = tr_turns_strip_get_request_mode;
  widget_class->measure = tr_turns_strip_measure;
  widget_class->size_allocate = tr_turns_strip_size_allocate;
  widget_class->direction_changed = tr_turns_strip_direction_changed;

  signals[SELECTED] = g_signal_new ("selected", TR_TYPE_TURNS_STRIP, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[ACTIVATED] = g_signal_new ("activated", TR_TYPE_TURNS_STRIP, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
add_keys (TrTurnsStrip *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *menu_click = gtk_gesture_click_new ();
  g_autoptr (GMenuModel) menu = tr_actions_new_keys_menu (TR_KEYS_TURNS);

  tr_picture_view_set_menu (TR_PICTURE_VIEW (self->view), menu);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (self->view, keys);
  gtk_widget_add_controller (self->view, tr_actions_new_keys (TR_KEYS_TURNS));

  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (menu_click), GTK_PHASE_CAPTURE);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (menu_click), GDK_BUTTON_SECONDARY);
  g_signal_connect (menu_click, "pressed", G_CALLBACK (menu_clicked_cb), self);
  gtk_widget_add_controller (self->view, GTK_EVENT_CONTROLLER (menu_click));
}

static void
tr_turns_strip_init (TrTurnsStrip *self)
{
  self->selected = (TrHit) { TR_PART_OF_TURN, 0 };
  self->drop_at = -1;
  self->view = tr_picture_view_new_for (_("Sequence"), make_sequence_picture, FIRST_LINES);
  gtk_widget_set_parent (self->view, GTK_WIDGET (self));
  g_signal_connect (self->view, "grab", G_CALLBACK (grabbed_cb), self);
  g_signal_connect (self->view, "dragged", G_CALLBACK (dragged_cb), self);
  g_signal_connect (self->view, "dropped", G_CALLBACK (dropped_cb), self);
  g_signal_connect (self->view, "pressed", G_CALLBACK (pressed_cb), self);
  add_keys (self);
}

GtkWidget *
tr_turns_strip_new (void)
{
  return g_object_new (TR_TYPE_TURNS_STRIP, NULL);
}

void
tr_turns_strip_refresh (TrTurnsStrip *self)
{
  g_return_if_fail (TR_IS_TURNS_STRIP (self));

  TrSequencePlan plan;
  int width = gtk_widget_get_width (GTK_WIDGET (self));

  settle_selection (self);
  show (self);
  if (width > 0 && find_plan (self, width, &plan) && (int) ceil (plan.height) != gtk_widget_get_height (GTK_WIDGET (self)))
    gtk_widget_queue_resize (GTK_WIDGET (self));
}
