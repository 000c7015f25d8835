/* sheet-view.c: the sheets on the bench, and a piece's edge to drag
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pointer is followed here as well as in the picture, for where the live
 * numbers stand and for Ctrl, which makes the steps finer.
 */

#include "config.h"

#include "sheet-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define LINES 32
#define LEAST_MM 10.0
#define MOST_MM 2000.0
#define MM_PER_INCH 25.4
#define OFF_POINTER 18

struct _TrSheetView
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *overlay;
  GtkWidget *label;

  /* Borrowed References */
  TrPictureView *picture;

  /* Owned */
  TrDoughFigures *figures;

  /* State */
  TrReader reader;
  TrSheetsGrab grab;
  double pointer_x, pointer_y;
  guint is_held : 1;
  guint is_fine : 1;
};

enum { BEGIN, END, MEASURE, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrSheetView, tr_sheet_view, GTK_TYPE_WIDGET)

static TrPicture *
make_sheets (gpointer        data,
             guint           item,
             const TrReader *reader,
             const TrLook   *look,
             double          width,
             double          height)
{
  TrSheetView *self = data;

  return tr_sheets_picture_new (self->figures, reader, look, width, height, self->is_held ? &self->grab.hold : NULL);
}

/* The live numbers */

static double
get_measure_mm (TrSheetView *self,
                TrMeasure    measure)
{
  const TrCut *cut = self->figures->dough->cut;

  switch (cut->shape)
    {
    case TR_SHAPE_TRIANGLE:
    case TR_SHAPE_RIGHT_TRIANGLE:
      return measure == TR_MEASURE_ALONG ? cut->base_mm : cut->height_mm;
    case TR_SHAPE_RECTANGLE:
      return measure == TR_MEASURE_ALONG ? cut->width_mm : cut->length_mm;
    case TR_SHAPE_SQUARE:
      return cut->side_mm;
    case TR_SHAPE_ROUND:
      return cut->diameter_mm;
    case TR_SHAPE_SLICES:
      return measure == TR_MEASURE_ALONG ? cut->slice_mm : cut->roll_length_mm;
    case TR_N_SHAPES:
    default:
      g_return_val_if_reached (NAN);
    }
}

static char *
dup_numbers (TrSheetView *self)
{
  const TrSheet *sheet = &self->figures->sheet;
  const char *name = tr_measure_get_name (self->figures->dough->cut->shape, self->grab.measure);
  g_autofree char *length = tr_words_length (&self->reader, get_measure_mm (self, self->grab.measure));
  g_autofree char *count = NULL, *mass = NULL, *scrap = NULL;

  if (!self->figures->has_sheet)
    return g_strdup_printf (_("%s %s\nnot one piece of this size"), name, length);

  count = tr_words_count (&self->reader, sheet->pieces_cut);
  mass = tr_words_mass (&self->reader, self->figures->piece.raw_mass_g);
  scrap = tr_words_percent (&self->reader, sheet->scrap_percent);

  return g_strdup_printf (_("%s %s\n%s pieces of %s · scrap %s"), name, length, count, mass, scrap);
}

static void
show_numbers (TrSheetView *self)
{
  g_autofree char *text = self->is_held && self->figures != NULL && self->figures->dough->cut != NULL ? dup_numbers (self) : NULL;

  gtk_widget_set_visible (self->label, text != NULL);
  gtk_label_set_label (GTK_LABEL (self->label), text != NULL ? text : "");
  gtk_widget_queue_allocate (self->overlay);
}

/* Beside the pointer, on the side where there is room. */
static gboolean
get_child_position_cb (GtkOverlay   *overlay,
                       GtkWidget    *child,
                       GdkRectangle *place,
                       TrSheetView  *self)
{
  int width = gtk_widget_get_width (GTK_WIDGET (overlay)), height = gtk_widget_get_height (GTK_WIDGET (overlay));
  GtkRequisition size;
  double x = self->pointer_x + OFF_POINTER, y = self->pointer_y + OFF_POINTER;

  gtk_widget_get_preferred_size (child, NULL, &size);
  if (x + size.width > width)
    x = self->pointer_x - OFF_POINTER - size.width;
  if (y + size.height > height)
    y = self->pointer_y - OFF_POINTER - size.height;
  *place = (GdkRectangle) { (int) MAX (0, x), (int) MAX (0, y), size.width, size.height };

  return TRUE;
}

static void
pointer_moved_cb (GtkEventControllerMotion *controller,
                  double                    x,
                  double                    y,
                  TrSheetView              *self)
{
  self->pointer_x = x;
  self->pointer_y = y;
  self->is_fine = (gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (controller)) & GDK_CONTROL_MASK) != 0;
  if (self->is_held)
    gtk_widget_queue_allocate (self->overlay);
}

/* Dragging */

static double
get_step_mm (TrSheetView *self,
             gboolean     is_fine)
{
  if (self->reader.units == TR_UNITS_US)
    return MM_PER_INCH / (is_fine ? 32 : 8);

  return is_fine ? 0.1 : 1;
}

static double
snap (double mm,
      double step,
      double least)
{
  return CLAMP (round (mm / step) * step, least, MOST_MM);
}

static gboolean
grab_cb (TrPictureView *picture,
         const TrHit   *hit,
         double         x,
         double         y,
         gboolean       is_press,
         TrSheetView   *self)
{
  TrSheetsGrab grab;

  if (hit->part != TR_PART_OF_EDGE || self->figures == NULL)
    return FALSE;
  if (!tr_sheets_grab (tr_picture_view_get_picture (picture), self->figures, &self->reader, NULL, hit->index, x, y, &grab))
    return FALSE;

  tr_picture_view_set_cursor (picture, (grab.measure == TR_MEASURE_ALONG) != grab.hold.is_turned ? "ew-resize" : "ns-resize");
  if (!is_press)
    return TRUE;

  self->grab = grab;
  self->is_held = TRUE;
  g_signal_emit (self, signals[BEGIN], 0);

  return TRUE;
}

static void
dragged_cb (TrPictureView *picture,
            double         x,
            double         y,
            TrSheetView   *self)
{
  double least = MIN (LEAST_MM, self->grab.start_mm), mm;

  if (!self->is_held)
    return;

  mm = snap (tr_sheets_grab_get_mm (&self->grab, x, y, least), get_step_mm (self, self->is_fine), least);
  g_signal_emit (self, signals[MEASURE], 0, (int) self->grab.measure, mm);
  show_numbers (self);
}

static void
dropped_cb (TrPictureView *picture,
            gboolean       is_cancelled,
            TrSheetView   *self)
{
  if (!self->is_held)
    return;

  self->is_held = FALSE;
  show_numbers (self);
  g_signal_emit (self, signals[END], 0, is_cancelled);
  if (self->figures != NULL)
    tr_picture_view_make_again (self->picture);
}

static void
pressed_cb (TrPictureView *picture,
            const TrHit   *hit,
            int            n_press,
            TrSheetView   *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (picture));
  tr_picture_view_set_selected (picture, hit->part == TR_PART_OF_EDGE ? hit : NULL);
}

/* Keys */

/* The selected edge's measure, if its edge moves that way; else the one that does. */
static gboolean
find_measure (TrSheetView *self,
              gboolean     is_sideways,
              TrMeasure   *measure)
{
  TrPicture *picture = tr_picture_view_get_picture (self->picture);
  gboolean along_is_sideways = tr_sheets_is_sideways (picture, self->figures, &self->reader, NULL, TR_MEASURE_ALONG);
  TrHit hit;

  *measure = along_is_sideways == is_sideways ? TR_MEASURE_ALONG : TR_MEASURE_ACROSS;
  if (tr_picture_view_get_selected (self->picture, &hit) && hit.part == TR_PART_OF_EDGE &&
      tr_sheets_edge_get_measure (self->figures, hit.index) == *measure)
    return TRUE;
  hit = (TrHit) { TR_PART_OF_EDGE, tr_sheets_find_edge (self->figures, *measure) };
  if (hit.index < 0)
    return FALSE;
  tr_picture_view_set_selected (self->picture, &hit);

  return TRUE;
}

static gboolean
key_pressed_cb (GtkEventControllerKey *controller,
                guint                  key,
                guint                  code,
                GdkModifierType        modifiers,
                TrSheetView           *self)
{
  gboolean is_sideways = key == GDK_KEY_Left || key == GDK_KEY_Right;
  gboolean is_more = key == GDK_KEY_Right || key == GDK_KEY_Up;
  double step = get_step_mm (self, (modifiers & GDK_CONTROL_MASK) != 0), mm;
  TrMeasure measure;

  if (self->figures == NULL || !self->figures->has_sheet || self->is_held || (modifiers & GDK_ALT_MASK))
    return FALSE;
  if (!is_sideways && key != GDK_KEY_Up && key != GDK_KEY_Down)
    return FALSE;
  if (!find_measure (self, is_sideways, &measure))
    return FALSE;

  mm = get_measure_mm (self, measure);
  g_signal_emit (self, signals[MEASURE], 0, (int) measure, snap (mm + (is_more ? step : -step), step, MIN (LEAST_MM, mm)));

  return TRUE;
}

/* The widget */

static void
tr_sheet_view_dispose (GObject *object)
{
  TrSheetView *self = TR_SHEET_VIEW (object);

  g_clear_pointer (&self->overlay, gtk_widget_unparent);
  g_clear_pointer (&self->figures, tr_dough_figures_unref);

  G_OBJECT_CLASS (tr_sheet_view_parent_class)->dispose (object);
}

static void
tr_sheet_view_class_init (TrSheetViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_sheet_view_dispose;
  signals[BEGIN] = g_signal_new ("begin", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[END] = g_signal_new ("end", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
  signals[MEASURE] = g_signal_new ("measure", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2, G_TYPE_INT, G_TYPE_DOUBLE);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
build_picture (TrSheetView *self)
{
  GtkWidget *picture = tr_picture_view_new_for (_("Sheet and cuts"), make_sheets, LINES);
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->picture = TR_PICTURE_VIEW (picture);
  tr_picture_view_set_zoomable (self->picture, TRUE);
  g_signal_connect_object (picture, "grab", G_CALLBACK (grab_cb), self, 0);
  g_signal_connect_object (picture, "dragged", G_CALLBACK (dragged_cb), self, 0);
  g_signal_connect_object (picture, "dropped", G_CALLBACK (dropped_cb), self, 0);
  g_signal_connect_object (picture, "pressed", G_CALLBACK (pressed_cb), self, 0);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_object (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self, 0);
  gtk_widget_add_controller (picture, keys);
}

static void
tr_sheet_view_init (TrSheetView *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();

  build_picture (self);
  self->label = gtk_label_new ("");
  gtk_widget_add_css_class (self->label, "live-numbers");
  gtk_widget_set_can_target (self->label, FALSE);
  gtk_widget_set_visible (self->label, FALSE);

  self->overlay = gtk_overlay_new ();
  gtk_overlay_set_child (GTK_OVERLAY (self->overlay), GTK_WIDGET (self->picture));
  gtk_overlay_add_overlay (GTK_OVERLAY (self->overlay), self->label);
  g_signal_connect_object (self->overlay, "get-child-position", G_CALLBACK (get_child_position_cb), self, 0);
  gtk_event_controller_set_propagation_phase (motion, GTK_PHASE_CAPTURE);
  g_signal_connect_object (motion, "motion", G_CALLBACK (pointer_moved_cb), self, 0);
  gtk_widget_add_controller (self->overlay, motion);
  gtk_widget_set_parent (self->overlay, GTK_WIDGET (self));
}

GtkWidget *
tr_sheet_view_new (void)
{
  return g_object_new (TR_TYPE_SHEET_VIEW, NULL);
}

void
tr_sheet_view_set_figures (TrSheetView          *self,
                           const TrDoughFigures *figures,
                           const TrReader       *reader)
{
  g_return_if_fail (TR_IS_SHEET_VIEW (self));

  gboolean is_another = figures == NULL || self->figures == NULL || g_strcmp0 (figures->dough->id, self->figures->dough->id) != 0;
  TrDoughFigures *own = figures != NULL ? tr_dough_figures_ref ((TrDoughFigures *) figures) : NULL;

  if (is_another && self->is_held)
    tr_picture_view_cancel_drag (self->picture);
  g_clear_pointer (&self->figures, tr_dough_figures_unref);
  self->figures = own;
  self->reader = *reader;
  if (is_another)
    tr_picture_view_set_selected (self->picture, NULL);
  tr_picture_view_set_data (self->picture, own != NULL ? self : NULL, NULL, 0, reader);
  gtk_widget_set_visible (GTK_WIDGET (self), own != NULL);
  show_numbers (self);
}

TrPictureView *
tr_sheet_view_get_picture (TrSheetView *self)
{
  g_return_val_if_fail (TR_IS_SHEET_VIEW (self), NULL);

  return self->picture;
}

const char *
tr_sheet_view_get_text (TrSheetView *self)
{
  g_return_val_if_fail (TR_IS_SHEET_VIEW (self), NULL);

  return gtk_widget_get_visible (self->label) ? gtk_label_get_label (GTK_LABEL (self->label)) : NULL;
}
