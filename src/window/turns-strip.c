/* turns-strip.c: the sequence as a strip that is chosen from and edited in place
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * While an edge is dragged the rows stay as they are, so that the sheet does
 * not move away from under the pointer.
 */

#include "config.h"

#include "turns-strip-private.h"

#include <glib/gi18n-lib.h>

#include "actions.h"
#include "picture-view.h"

/* Until there is a picture whose text can be measured. */
#define FIRST_LINES 10
#define FRAMES_TO_SCROLL 2

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

TrPage *
tr_turns_strip_get_page (TrTurnsStrip *self)
{
  return (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);
}

const TrDoughFigures *
tr_turns_strip_get_figures (TrTurnsStrip *self)
{
  TrPage *page = tr_turns_strip_get_page (self);

  return page != NULL ? tr_page_get_figures (page) : NULL;
}

gboolean
tr_turns_strip_is_mirrored (TrTurnsStrip *self)
{
  return gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;
}

static void
set_marks (TrTurnsStrip    *self,
           TrSequenceMarks *marks)
{
  *marks = (TrSequenceMarks) { .selected = self->selected, .drop_at = self->drop_at, .can_edit = TRUE,
                               .is_mirrored = tr_turns_strip_is_mirrored (self) };
}

void
tr_turns_strip_show (TrTurnsStrip *self)
{
  TrPage *page = tr_turns_strip_get_page (self);
  const TrDoughFigures *figures = tr_turns_strip_get_figures (self);

  if (figures == NULL)
    {
      if (page != NULL)
        tr_picture_view_set_data (TR_PICTURE_VIEW (self->view), NULL, NULL, 0, tr_page_get_reader (page));
      return;
    }

  Shown *shown = g_new0 (Shown, 1);

  shown->figures = tr_dough_figures_ref ((TrDoughFigures *) figures);
  set_marks (self, &shown->marks);
  shown->held = self->held;
  shown->marks.held = self->drag == TR_DRAG_EDGE ? &shown->held : NULL;
  tr_picture_view_set_data (TR_PICTURE_VIEW (self->view), shown, free_shown, 0, tr_page_get_reader (page));
  tr_picture_view_set_selected (TR_PICTURE_VIEW (self->view), &self->selected);
}

/* How high, for a width */

gboolean
tr_turns_strip_find_plan (TrTurnsStrip   *self,
                          double          width,
                          TrSequencePlan *plan)
{
  const TrDoughFigures *figures = tr_turns_strip_get_figures (self);
  TrPicture *picture = tr_picture_view_get_picture (TR_PICTURE_VIEW (self->view));
  TrSequenceMarks marks;

  if (figures == NULL || picture == NULL)
    return FALSE;

  set_marks (self, &marks);
  marks.held = self->drag == TR_DRAG_EDGE ? &self->held : NULL;
  tr_sequence_plan (figures, &marks, tr_page_get_reader (tr_turns_strip_get_page (self)), tr_picture_get_look (picture), width, plan);

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
  if (tr_turns_strip_find_plan (self, MAX (for_size, least), &plan))
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
  const TrDoughFigures *figures = tr_turns_strip_get_figures (self);

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

/* The page scrolls; what keys act on stays in sight. */
static gboolean
scroll_to_selected_cb (GtkWidget     *view,
                       GdkFrameClock *clock,
                       gpointer       data)
{
  TrTurnsStrip *self = data;
  GtkWidget *scroller = gtk_widget_get_ancestor (view, GTK_TYPE_SCROLLED_WINDOW);
  graphene_rect_t bounds;
  graphene_point_t top;

  /* GTK scrolls to all of the strip first, while it lays the frame out. */
  if (self->frames_to_scroll-- > 0)
    return G_SOURCE_CONTINUE;
  self->frames_to_scroll = 0;
  if (!gtk_widget_has_focus (view) || scroller == NULL ||
      !tr_picture_view_get_part_bounds (TR_PICTURE_VIEW (view), &self->selected, &bounds) ||
      !gtk_widget_compute_point (view, scroller, &bounds.origin, &top))
    return G_SOURCE_REMOVE;

  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));
  double below = top.y + bounds.size.height - gtk_widget_get_height (scroller);

  if (top.y < 0 || below > 0)
    gtk_adjustment_set_value (adjustment, gtk_adjustment_get_value (adjustment) + (top.y < 0 ? top.y : MIN (below, top.y)));

  return G_SOURCE_REMOVE;
}

static void
queue_scroll (TrTurnsStrip *self)
{
  if (self->frames_to_scroll > 0)
    return;

  self->frames_to_scroll = FRAMES_TO_SCROLL;
  gtk_widget_add_tick_callback (self->view, scroll_to_selected_cb, self, NULL);
}

/* The last turn that is left, else the lock-in. */
static void
settle_selection (TrTurnsStrip *self)
{
  const TrDoughFigures *figures = tr_turns_strip_get_figures (self);

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
tr_turns_strip_activate (TrTurnsStrip *self)
{
  g_signal_emit (self, signals[ACTIVATED], 0);
}

void
tr_turns_strip_select (TrTurnsStrip *self,
                       TrHit         element)
{
  g_return_if_fail (TR_IS_TURNS_STRIP (self));

  if (!is_there (self, &element))
    return;

  self->selected = element;
  tr_turns_strip_show (self);
  g_signal_emit (self, signals[SELECTED], 0);
  queue_scroll (self);
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

TrHit
tr_turns_strip_element_at (int                   place,
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
  const TrDoughFigures *figures = tr_turns_strip_get_figures (self);
  TrHit element;

  if (figures == NULL)
    return FALSE;
  element = tr_turns_strip_element_at (place_of (&self->selected, figures) + by, figures);
  if (!is_there (self, &element))
    return FALSE;

  tr_turns_strip_select (self, element);

  return TRUE;
}

static void
select_end (TrTurnsStrip *self,
            gboolean      last)
{
  const TrDoughFigures *figures = tr_turns_strip_get_figures (self);

  if (figures != NULL)
    tr_turns_strip_select (self, tr_turns_strip_element_at (!last ? 0 : (int) figures->dough->turns->len + (figures->has_sheet ? 1 : 0), figures));
}

/* Before the view sees them: there Return is a press like any other. */
static gboolean
key_pressed_cb (GtkEventControllerKey *controller,
                guint                  key,
                guint                  code,
                GdkModifierType        modifiers,
                TrTurnsStrip          *self)
{
  int forward = tr_turns_strip_is_mirrored (self) ? -1 : 1;

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
      tr_turns_strip_activate (self);
      return TRUE;
    default:
      return FALSE;
    }
}

/* The widget */

static gboolean
tr_turns_strip_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (TR_TURNS_STRIP (widget)->view);
}

static void
tr_turns_strip_direction_changed (GtkWidget        *widget,
                                  GtkTextDirection  before)
{
  GTK_WIDGET_CLASS (tr_turns_strip_parent_class)->direction_changed (widget, before);

  if (tr_turns_strip_get_figures (TR_TURNS_STRIP (widget)) != NULL)
    tr_turns_strip_show (TR_TURNS_STRIP (widget));
}

static void
tr_turns_strip_dispose (GObject *object)
{
  TrTurnsStrip *self = TR_TURNS_STRIP (object);

  /* What is dragged is let go while all of it is still there. */
  if (self->view != NULL)
    tr_picture_view_cancel_drag (TR_PICTURE_VIEW (self->view));
  g_clear_pointer (&self->view, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_turns_strip_parent_class)->dispose (object);
}

static void
tr_turns_strip_class_init (TrTurnsStripClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_turns_strip_dispose;
  widget_class->get_request_mode = tr_turns_strip_get_request_mode;
  widget_class->grab_focus = tr_turns_strip_grab_focus;
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
  g_autoptr (GMenuModel) menu = tr_actions_new_keys_menu (TR_KEYS_TURNS);

  tr_picture_view_set_menu (TR_PICTURE_VIEW (self->view), menu);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (self->view, keys);
  gtk_widget_add_controller (self->view, tr_actions_new_keys (TR_KEYS_TURNS));
}

static void
tr_turns_strip_init (TrTurnsStrip *self)
{
  self->selected = (TrHit) { TR_PART_OF_TURN, 0 };
  self->drop_at = -1;
  self->view = tr_picture_view_new_for (_("Sequence"), make_sequence_picture, FIRST_LINES);
  gtk_widget_set_parent (self->view, GTK_WIDGET (self));
  g_signal_connect_swapped (self->view, "notify::has-focus", G_CALLBACK (queue_scroll), self);
  tr_turns_strip_add_pointer (self);
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

  /* What is held is no longer what is shown. */
  if (self->drag != TR_DRAG_NOTHING && self->dough != tr_page_get_dough_index (tr_turns_strip_get_page (self)))
    tr_picture_view_cancel_drag (TR_PICTURE_VIEW (self->view));
  settle_selection (self);
  tr_turns_strip_show (self);
  if (width > 0 && tr_turns_strip_find_plan (self, width, &plan) && (int) ceil (plan.height) != gtk_widget_get_height (GTK_WIDGET (self)))
    gtk_widget_queue_resize (GTK_WIDGET (self));
}
