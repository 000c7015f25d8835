/* ratio-plane.c: all doughs on a plane of two ratios, the current one dragged
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The drawing and its geometry are picture/'s, what a ratio moves is calc's.
 * While the point is dragged the axes stay where they are, and every place is
 * reached from the dough as it stood at the start, so that nothing is rounded
 * twice. The point is drawn where the dough came to lie, not where the pointer
 * is; what could not be followed is said under the plane.
 */

#include "config.h"

#include "ratio-plane.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "../picture/plane.h"
#include "page.h"
#include "picture-view.h"
#include "preferences.h"
#include "section.h"
#include "two-ratios.h"

#define LINES 26
#define FINE 0.1
#define COARSE 5

enum { ACROSS, UP, N_AXES };

struct _TrRatioPlane
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *box;
  GtkWidget *drop_downs[N_AXES];
  GtkWidget *picture;
  GtkWidget *held;               /* how it is moved, or what could not be followed */

  /* Owned */
  TrPreferences *preferences;
  TrDoughFigures *start;         /* the dough as it stood when it was grabbed; NULL: nothing is being dragged */

  /* State */
  TrRatio ratios[N_AXES];
  TrRange view[N_AXES];          /* while dragging */
  double off_x, off_y;           /* from the pointer to the point it grabbed */
  guint is_setting : 1;
  guint is_moving : 1;           /* this view is what changes the document */
};

G_DEFINE_FINAL_TYPE (TrRatioPlane, tr_ratio_plane, GTK_TYPE_WIDGET)

static TrPage *
get_page (TrRatioPlane *self)
{
  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);

  return page != NULL && tr_page_get_document (page) != NULL ? page : NULL;
}

/* What is drawn */

typedef struct {
  TrFigures *figures;
  TrRatio ratios[N_AXES];
  int current;
  gboolean has_view;
  TrRange view[N_AXES];
} Shown;

static void
free_shown (gpointer data)
{
  Shown *shown = data;

  tr_figures_unref (shown->figures);
  g_free (shown);
}

static TrPicture *
make_picture (gpointer        data,
              guint           item,
              const TrReader *reader,
              const TrLook   *look,
              double          width,
              double          height)
{
  const Shown *shown = data;

  return tr_ratio_plane_picture_new (shown->figures, shown->ratios[ACROSS], shown->ratios[UP], shown->current,
                                     shown->has_view ? shown->view : NULL, reader, look, width, height);
}

static void
show_doughs (TrRatioPlane *self)
{
  TrPage *page = get_page (self);
  int current = page != NULL ? tr_page_get_dough_index (page) : -1;
  Shown *shown;

  if (current < 0)
    {
      if (page != NULL)
        tr_picture_view_set_data (TR_PICTURE_VIEW (self->picture), NULL, NULL, 0, tr_page_get_reader (page));
      return;
    }

  shown = g_new0 (Shown, 1);
  shown->figures = tr_figures_ref (tr_document_get_figures (tr_page_get_document (page)));
  shown->current = current;
  shown->has_view = self->start != NULL;
  for (int axis = 0; axis < N_AXES; axis++)
    {
      shown->ratios[axis] = self->ratios[axis];
      shown->view[axis] = self->view[axis];
    }
  tr_picture_view_set_data (TR_PICTURE_VIEW (self->picture), shown, free_shown, 0, tr_page_get_reader (page));
  tr_picture_view_set_selected (TR_PICTURE_VIEW (self->picture), &(TrHit) { TR_PART_OF_POINT, current });
}

/* Balance: moving the dough */

static gboolean
can_move (const TrDoughFigures *figures,
          TrRatio               ratio)
{
  TrRatioMoves moves;

  tr_ratio_get_moves (figures, ratio, &moves);

  return moves.can_move;
}

static void
say_how (TrRatioPlane *self)
{
  tr_words_label_set (self->held, _("Drag the ringed point, or move it with the arrow keys (Shift coarse, Ctrl fine). "
                                    "Press another point to work on that dough."));
}

static void
say_held (TrRatioPlane         *self,
          const TrDoughFigures *figures,
          const double         *values)
{
  g_autofree char *held = tr_two_ratios_dup_held (figures, self->ratios, values, tr_page_get_reader (get_page (self)));

  if (held != NULL)
    tr_words_label_set (self->held, held);
  else
    say_how (self);
}

/* In one undo step with what is committed under the same key, or in the drag. */
static void
move_to (TrRatioPlane         *self,
         const TrDoughFigures *start,
         const double         *values)
{
  TrPage *page = get_page (self);
  int index = tr_page_get_dough_index (page);
  TrDocument *document = tr_page_get_document (page);
  TrDough *moved = tr_two_ratios_dup_moved (start, tr_document_get_trial (document), self->ratios, values);

  if (moved != NULL)
    {
      g_autoptr (TrTrial) draft = tr_document_draft (document);
      TrDough **place = (TrDough **) &draft->doughs->pdata[index];

      tr_dough_unref (*place);
      *place = moved;
      /* The whole dough: undo then leads back to the plane and to none of its fields. */
      self->is_moving = TRUE;
      tr_page_commit (page, g_steal_pointer (&draft), _("change two ratios"), "plane", "");
      self->is_moving = FALSE;
    }
  say_held (self, start, values);
}

/* Dragging */

static void
end_drag (TrRatioPlane *self,
          gboolean      is_cancelled)
{
  GtkWidget *page = gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);

  if (self->start == NULL)
    return;

  g_clear_pointer (&self->start, tr_dough_figures_unref);
  if (page != NULL)
    tr_page_end_drag (TR_PAGE (page), is_cancelled);
  if (is_cancelled)
    say_how (self);
  show_doughs (self);
}

static void
begin_drag (TrRatioPlane         *self,
            TrPage               *page,
            const TrDoughFigures *figures,
            double                x,
            double                y)
{
  TrPicture *picture = tr_picture_view_get_picture (TR_PICTURE_VIEW (self->picture));
  double point_x, point_y;

  if (!tr_plane_picture_get_view (picture, &self->view[ACROSS], &self->view[UP]) ||
      !tr_plane_picture_get_place (picture, tr_ratio_get (figures, self->ratios[ACROSS]), tr_ratio_get (figures, self->ratios[UP]), &point_x, &point_y))
    return;

  self->off_x = point_x - x;
  self->off_y = point_y - y;
  self->start = tr_dough_figures_ref ((TrDoughFigures *) figures);
  tr_page_begin_drag (page);
}

static gboolean
is_current (TrPage      *page,
            const TrHit *hit)
{
  return hit->part == TR_PART_OF_POINT && hit->index == tr_page_get_dough_index (page);
}

static gboolean
picture_grab_cb (TrPictureView *view,
                 const TrHit   *hit,
                 double         x,
                 double         y,
                 gboolean       is_press,
                 TrRatioPlane  *self)
{
  TrPage *page = get_page (self);
  const TrDoughFigures *figures = page != NULL ? tr_page_get_figures (page) : NULL;

  if (figures == NULL || self->start != NULL || !is_current (page, hit))
    return FALSE;
  if (!can_move (figures, self->ratios[ACROSS]) && !can_move (figures, self->ratios[UP]))
    return FALSE;
  if (is_press)
    begin_drag (self, page, figures, x, y);

  return !is_press || self->start != NULL;
}

static void
picture_dragged_cb (TrPictureView *view,
                    double         x,
                    double         y,
                    TrRatioPlane  *self)
{
  TrPicture *picture = tr_picture_view_get_picture (view);
  double values[N_AXES];

  if (self->start == NULL || picture == NULL || get_page (self) == NULL)
    return;
  if (!tr_plane_picture_get_values (picture, x + self->off_x, y + self->off_y, &values[ACROSS], &values[UP]))
    return;

  for (int axis = 0; axis < N_AXES; axis++)
    values[axis] = CLAMP (values[axis], self->view[axis].min, self->view[axis].max);
  move_to (self, self->start, values);
}

static void
picture_dropped_cb (TrPictureView *view,
                    gboolean       is_cancelled,
                    TrRatioPlane  *self)
{
  end_drag (self, is_cancelled);
}

static void
picture_pressed_cb (TrPictureView *view,
                    const TrHit   *hit,
                    int            n_press,
                    TrRatioPlane  *self)
{
  TrPage *page = get_page (self);

  if (page == NULL || hit->part != TR_PART_OF_POINT || is_current (page, hit))
    return;

  const TrTrial *trial = tr_document_get_trial (tr_page_get_document (page));

  if (hit->index >= 0 && (guint) hit->index < trial->doughs->len)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.show-dough", "s", tr_trial_get_dough (trial, (guint) hit->index)->id);
}

/* Keys */

/* The multiple of the step that is nearest to one step on: never so near that
 * rounding what is weighed would undo it. */
static double
step_value (double value,
            double step,
            int    way)
{
  if (isnan (value))
    return value;

  return MAX (0, round (value / step + way) * step);
}

static void
move_by_key (TrRatioPlane    *self,
             TrPage          *page,
             int              axis,
             int              way,
             GdkModifierType  state)
{
  /* held, since a commit makes others */
  g_autoptr (TrDoughFigures) figures = tr_dough_figures_ref ((TrDoughFigures *) tr_page_get_figures (page));
  double values[N_AXES], step = tr_ratio_get_step (self->ratios[axis]);

  step *= state & GDK_SHIFT_MASK ? COARSE : state & GDK_CONTROL_MASK ? FINE : 1;
  for (int i = 0; i < N_AXES; i++)
    values[i] = tr_ratio_get (figures, self->ratios[i]);
  values[axis] = step_value (values[axis], step, way);
  if (can_move (figures, self->ratios[axis]))
    move_to (self, figures, values);
  else
    say_held (self, figures, values);
}

static gboolean
key_pressed_cb (GtkEventControllerKey *controller,
                guint                  keyval,
                guint                  keycode,
                GdkModifierType        state,
                TrRatioPlane          *self)
{
  static const struct { guint keyval, pad; int axis, way; } keys[] = {
    { GDK_KEY_Left, GDK_KEY_KP_Left, ACROSS, -1 }, { GDK_KEY_Right, GDK_KEY_KP_Right, ACROSS, 1 },
    { GDK_KEY_Down, GDK_KEY_KP_Down, UP, -1 }, { GDK_KEY_Up, GDK_KEY_KP_Up, UP, 1 },
  };
  TrPage *page = get_page (self);

  if (page == NULL || tr_page_get_figures (page) == NULL || self->start != NULL || (state & GDK_ALT_MASK) != 0)
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    if (keyval == keys[i].keyval || keyval == keys[i].pad)
      {
        move_by_key (self, page, keys[i].axis, keys[i].way, state);
        return TRUE;
      }

  return FALSE;
}

/* The axes */

static TrRatio
find_ratio (const char *key,
            TrRatio     fallback)
{
  for (TrRatio ratio = 0; ratio < TR_N_RATIOS; ratio++)
    if (g_strcmp0 (tr_ratio_key (ratio), key) == 0)
      return ratio;

  return fallback;
}

/* What the reader chose last, in whatever window. */
static void
axes_remembered_cb (TrRatioPlane *self)
{
  g_autofree char *across = NULL, *up = NULL;

  g_object_get (self->preferences, "plane-across", &across, "plane-up", &up, NULL);
  self->ratios[ACROSS] = find_ratio (across, TR_RATIO_ALL_WATER);
  self->ratios[UP] = find_ratio (up, TR_RATIO_ROLL_IN_OF_DOUGH);
  self->is_setting = TRUE;
  for (int axis = 0; axis < N_AXES; axis++)
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->drop_downs[axis]), self->ratios[axis]);
  self->is_setting = FALSE;
}

void
tr_ratio_plane_set_axes (TrRatioPlane *self,
                         TrRatio       across,
                         TrRatio       up)
{
  g_return_if_fail (TR_IS_RATIO_PLANE (self));
  g_return_if_fail (across < TR_N_RATIOS && up < TR_N_RATIOS);

  if (across == up && across == self->ratios[UP])
    up = self->ratios[ACROSS];
  else if (across == up)
    across = self->ratios[UP];
  g_object_set (self->preferences, "plane-across", tr_ratio_key (across), "plane-up", tr_ratio_key (up), NULL);
  axes_remembered_cb (self);
  tr_ratio_plane_refresh (self);
}

void
tr_ratio_plane_get_axes (TrRatioPlane *self,
                         TrRatio      *across,
                         TrRatio      *up)
{
  g_return_if_fail (TR_IS_RATIO_PLANE (self));

  *across = self->ratios[ACROSS];
  *up = self->ratios[UP];
}

static void
axis_chosen_cb (TrRatioPlane *self)
{
  if (self->is_setting)
    return;

  tr_ratio_plane_set_axes (self, (TrRatio) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->drop_downs[ACROSS])),
                           (TrRatio) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->drop_downs[UP])));
}

/* Another hand changed the dough that is being dragged, or put another one here. */
static void
go_on_from_change (TrRatioPlane *self)
{
  TrPage *page = get_page (self);
  const TrDoughFigures *figures = page != NULL ? tr_page_get_figures (page) : NULL;

  if (figures == NULL || g_strcmp0 (figures->dough->id, self->start->dough->id) != 0)
    {
      tr_picture_view_cancel_drag (TR_PICTURE_VIEW (self->picture));
      return;
    }

  tr_dough_figures_unref (self->start);
  self->start = tr_dough_figures_ref ((TrDoughFigures *) figures);
}

void
tr_ratio_plane_refresh (TrRatioPlane *self)
{
  g_return_if_fail (TR_IS_RATIO_PLANE (self));

  if (!self->is_moving && self->start != NULL)
    go_on_from_change (self);
  /* What could not be followed is said of the move that asked for it. */
  if (!self->is_moving && self->start == NULL)
    say_how (self);
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    show_doughs (self);
}

/* Building */

static GtkWidget *
new_drop_down (TrRatioPlane *self,
               const char   *name)
{
  GtkStringList *ratios = gtk_string_list_new (NULL);
  GtkWidget *drop_down, *label = gtk_label_new (name), *field = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  for (TrRatio ratio = 0; ratio < TR_N_RATIOS; ratio++)
    gtk_string_list_append (ratios, tr_words_ratio (ratio));
  drop_down = gtk_drop_down_new (G_LIST_MODEL (ratios), NULL);
  gtk_widget_set_halign (label, GTK_ALIGN_START);
  gtk_widget_add_css_class (label, "dim-label");
  gtk_accessible_update_property (GTK_ACCESSIBLE (drop_down), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (drop_down), GTK_ACCESSIBLE_RELATION_LABELLED_BY, label, NULL, -1);
  g_signal_connect_object (drop_down, "notify::selected", G_CALLBACK (axis_chosen_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (field), label);
  gtk_box_append (GTK_BOX (field), drop_down);

  return drop_down;
}

static void
build_picture (TrRatioPlane *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->picture = tr_picture_view_new_for (_("Doughs by two ratios"), make_picture, LINES);
  g_signal_connect_object (self->picture, "grab", G_CALLBACK (picture_grab_cb), self, 0);
  g_signal_connect_object (self->picture, "dragged", G_CALLBACK (picture_dragged_cb), self, 0);
  g_signal_connect_object (self->picture, "dropped", G_CALLBACK (picture_dropped_cb), self, 0);
  g_signal_connect_object (self->picture, "pressed", G_CALLBACK (picture_pressed_cb), self, 0);
  g_signal_connect_object (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self, 0);
  gtk_widget_add_controller (self->picture, keys);
}

static void
tr_ratio_plane_init (TrRatioPlane *self)
{
  GtkWidget *axes = tr_fields_row_new ();

  self->preferences = tr_preferences_new ();
  self->drop_downs[ACROSS] = new_drop_down (self, _("Across"));
  self->drop_downs[UP] = new_drop_down (self, _("Up"));
  self->held = tr_words_label_new ("dim-label");
  build_picture (self);
  tr_form_add (axes, gtk_widget_get_parent (self->drop_downs[ACROSS]));
  tr_form_add (axes, gtk_widget_get_parent (self->drop_downs[UP]));

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (self->box), axes);
  gtk_box_append (GTK_BOX (self->box), self->picture);
  gtk_box_append (GTK_BOX (self->box), self->held);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  axes_remembered_cb (self);
}

static gboolean
tr_ratio_plane_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (TR_RATIO_PLANE (widget)->picture);
}

static void
tr_ratio_plane_map (GtkWidget *widget)
{
  show_doughs (TR_RATIO_PLANE (widget));
  GTK_WIDGET_CLASS (tr_ratio_plane_parent_class)->map (widget);
}

static void
tr_ratio_plane_dispose (GObject *object)
{
  TrRatioPlane *self = TR_RATIO_PLANE (object);

  g_clear_pointer (&self->start, tr_dough_figures_unref);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->preferences);

  G_OBJECT_CLASS (tr_ratio_plane_parent_class)->dispose (object);
}

static void
tr_ratio_plane_class_init (TrRatioPlaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_ratio_plane_dispose;
  widget_class->map = tr_ratio_plane_map;
  widget_class->grab_focus = tr_ratio_plane_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

GtkWidget *
tr_ratio_plane_new (void)
{
  return g_object_new (TR_TYPE_RATIO_PLANE, NULL);
}
