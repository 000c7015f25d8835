/* layers-view.c: the layer picture, a band of it and its name
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The band under the pointer goes before the one that was stepped to. Only the
 * whole stack moves the window: if the window moved itself, nothing in it could
 * be pointed at.
 */

#include "config.h"

#include "layers-view.h"

#include <glib/gi18n-lib.h>

#define LINES 11
#define MANY_BANDS 10

struct _TrLayersView
{
  GtkWidget parent_instance;

  /* Borrowed References */
  TrPictureView *picture;
  GtkLabel *words;
  GtkWidget *after;              /* ticked: after the turn, not at the end */

  /* Owned */
  TrDoughFigures *figures;

  /* State */
  double middle;                 /* where the window stays; NaN: the middle */
  double passing_middle;         /* while the pointer is on the whole stack; NaN: it is not */
  int pointed_band, stepped_band;       /* -1: none */
  double rest_x, rest_y;         /* where the pointer was when a key was pressed; NaN: it has moved since */
  guint turn;                    /* that is chosen, from 1; 0: none */
};

G_DEFINE_FINAL_TYPE (TrLayersView, tr_layers_view, GTK_TYPE_WIDGET)

static int
get_band (TrLayersView *self)
{
  return self->pointed_band >= 0 ? self->pointed_band : self->stepped_band;
}

static TrPicture *
make_layers (gpointer        data,
             guint           item,
             const TrReader *reader,
             const TrLook   *look,
             double          width,
             double          height)
{
  TrLayersView *self = data;
  gboolean is_after = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->after));
  TrLayersAt at = { isnan (self->passing_middle) ? self->middle : self->passing_middle, get_band (self), is_after ? self->turn : 0 };

  return tr_layers_picture_new_at (self->figures, reader, look, width, height, &at);
}

static char *
dup_words (TrLayersView *self)
{
  TrPicture *picture = tr_picture_view_get_picture (self->picture);
  TrHit hit = { TR_PART_OF_BAND, get_band (self) };

  if (self->figures != NULL && self->figures->has_lamination && isnan (self->figures->lamination.fat_volume_fraction))
    return g_strdup (_("How thick the layers are is known once dough and roll-in are weighed."));
  if (picture != NULL && tr_picture_count_bands (picture) == 0)
    return g_strdup (_("More bands than can be drawn one by one."));
  if (picture != NULL && hit.index >= 0)
    return tr_picture_dup_hit_text (picture, &hit);

  return g_strdup (_("Point at a layer, or step with ↑ and ↓."));
}

static void
show_band (TrLayersView *self)
{
  g_autofree char *words = NULL;
  TrHit hit = { TR_PART_OF_BAND, self->stepped_band };

  tr_picture_view_make_again (self->picture);
  tr_picture_view_set_selected (self->picture, self->stepped_band >= 0 ? &hit : NULL);
  words = dup_words (self);
  gtk_label_set_label (self->words, words);
}

/* The bands are others now. */
static void
show_stack (TrLayersView *self)
{
  self->middle = self->passing_middle = NAN;
  self->pointed_band = self->stepped_band = -1;
  if (self->figures != NULL)
    show_band (self);
}

static double
get_middle_of (TrLayersView *self,
               int           band)
{
  TrPicture *picture = tr_picture_view_get_picture (self->picture);
  double from, to;

  return picture != NULL && tr_picture_get_band (picture, band, &from, &to) ? (from + to) / 2 : NAN;
}

static void
find_pointer (TrLayersView *self,
              double       *x,
              double       *y)
{
  GdkSeat *seat = gdk_display_get_default_seat (gtk_widget_get_display (GTK_WIDGET (self)));
  GtkNative *native = gtk_widget_get_native (GTK_WIDGET (self));

  *x = *y = NAN;
  if (seat != NULL && native != NULL)
    gdk_surface_get_device_position (gtk_native_get_surface (native), gdk_seat_get_pointer (seat), x, y, NULL);
}

/* The picture moves under a pointer that rests: then nothing is pointed at. */
static gboolean
is_resting (TrLayersView *self)
{
  double x, y;

  if (isnan (self->rest_x))
    return FALSE;
  find_pointer (self, &x, &y);
  if (hypot (x - self->rest_x, y - self->rest_y) < 1)
    return TRUE;

  self->rest_x = NAN;

  return FALSE;
}

static void
hovered_cb (TrPictureView *picture,
            const TrHit   *hit,
            TrLayersView  *self)
{
  gboolean is_band = hit->part == TR_PART_OF_BAND || hit->part == TR_PART_OF_MAGNIFIED_BAND;

  if (is_resting (self))
    return;

  self->pointed_band = is_band ? hit->index : -1;
  if (hit->part == TR_PART_OF_BAND)
    self->passing_middle = get_middle_of (self, hit->index);
  show_band (self);
}

/* Not when it leaves the stack: it may be on its way to the window. */
static void
pointer_left_cb (GtkEventControllerMotion *controller,
                 TrLayersView             *self)
{
  self->passing_middle = NAN;
  self->pointed_band = -1;
  if (self->figures != NULL)
    show_band (self);
}

static void
pressed_cb (TrPictureView *picture,
            const TrHit   *hit,
            int            n_press,
            TrLayersView  *self)
{
  if (hit->part == TR_PART_OF_BAND)
    self->middle = get_middle_of (self, hit->index);
  else if (hit->part != TR_PART_OF_MAGNIFIED_BAND)
    return;

  self->stepped_band = hit->index;
  show_band (self);
}

/* The window goes along only when the band would leave it. */
static void
step_to (TrLayersView *self,
         int           band)
{
  TrHit hit = { TR_PART_OF_MAGNIFIED_BAND, band };
  graphene_rect_t whole;
  double from, to;
  TrPicture *picture;

  find_pointer (self, &self->rest_x, &self->rest_y);
  self->stepped_band = band;
  self->pointed_band = -1;
  self->passing_middle = NAN;
  tr_picture_view_make_again (self->picture);
  picture = tr_picture_view_get_picture (self->picture);
  if (!tr_picture_get_band (picture, band, &from, &to))
    return;
  if (!tr_picture_view_get_part_bounds (self->picture, &hit, &whole) || whole.size.height < 1)
    self->middle = (from + to) / 2;
  show_band (self);
}

static gboolean
key_pressed_cb (GtkEventControllerKey *controller,
                guint                  key,
                guint                  code,
                GdkModifierType        modifiers,
                TrLayersView          *self)
{
  TrPicture *picture = tr_picture_view_get_picture (self->picture);
  int n = picture != NULL ? (int) tr_picture_count_bands (picture) : 0;
  int band = get_band (self);

  if (n == 0 || (modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK)))
    return FALSE;

  switch (key)
    {
    case GDK_KEY_Up:
      step_to (self, band < 0 ? (n - 1) / 2 : MAX (band - 1, 0));
      return TRUE;
    case GDK_KEY_Down:
      step_to (self, band < 0 ? n / 2 : MIN (band + 1, n - 1));
      return TRUE;
    case GDK_KEY_Page_Up:
      step_to (self, MAX (band - MANY_BANDS, 0));
      return TRUE;
    case GDK_KEY_Page_Down:
      step_to (self, MIN (MAX (band, 0) + MANY_BANDS, n - 1));
      return TRUE;
    case GDK_KEY_Home:
      step_to (self, 0);
      return TRUE;
    case GDK_KEY_End:
      step_to (self, n - 1);
      return TRUE;
    default:
      return FALSE;
    }
}

static void
tr_layers_view_dispose (GObject *object)
{
  TrLayersView *self = TR_LAYERS_VIEW (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_pointer (&self->figures, tr_dough_figures_unref);

  G_OBJECT_CLASS (tr_layers_view_parent_class)->dispose (object);
}

static void
tr_layers_view_class_init (TrLayersViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_layers_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_layers_view_init (TrLayersView *self)
{
  GtkEventController *keys = gtk_event_controller_key_new (), *motion = gtk_event_controller_motion_new ();
  GtkWidget *picture = tr_picture_view_new_for (_("Layers"), make_layers, LINES);
  GtkWidget *words = gtk_label_new (""), *foot = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (gtk_widget_get_layout_manager (GTK_WIDGET (self))), GTK_ORIENTATION_VERTICAL);
  self->middle = self->passing_middle = NAN;
  self->pointed_band = self->stepped_band = -1;
  self->rest_x = NAN;

  self->picture = TR_PICTURE_VIEW (picture);
  /* The line below says what a tooltip would, and covers nothing. */
  gtk_widget_set_has_tooltip (picture, FALSE);
  g_signal_connect (picture, "hovered", G_CALLBACK (hovered_cb), self);
  g_signal_connect (picture, "pressed", G_CALLBACK (pressed_cb), self);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (picture, keys);
  g_signal_connect (motion, "leave", G_CALLBACK (pointer_left_cb), self);
  gtk_widget_add_controller (picture, motion);
  gtk_widget_set_parent (picture, GTK_WIDGET (self));

  self->words = GTK_LABEL (words);
  gtk_label_set_xalign (self->words, 0);
  gtk_label_set_ellipsize (self->words, PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (words, "dim-label");
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (foot), words);

  self->after = gtk_check_button_new ();
  gtk_widget_set_visible (self->after, FALSE);
  g_signal_connect_object (self->after, "toggled", G_CALLBACK (show_stack), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (foot), self->after);
  gtk_widget_set_margin_top (foot, 6);
  gtk_widget_set_parent (foot, GTK_WIDGET (self));
}

GtkWidget *
tr_layers_view_new (void)
{
  return g_object_new (TR_TYPE_LAYERS_VIEW, NULL);
}

void
tr_layers_view_set_figures (TrLayersView         *self,
                            const TrDoughFigures *figures,
                            const TrReader       *reader)
{
  g_return_if_fail (TR_IS_LAYERS_VIEW (self));

  TrDoughFigures *own = figures != NULL ? tr_dough_figures_ref ((TrDoughFigures *) figures) : NULL;
  gboolean is_another = self->figures != NULL && own != NULL && g_strcmp0 (self->figures->dough->id, own->dough->id) != 0;
  TrPicture *picture;

  g_clear_pointer (&self->figures, tr_dough_figures_unref);
  self->figures = own;
  if (is_another)
    {
      self->middle = NAN;
      self->stepped_band = -1;
    }
  tr_picture_view_set_data (self->picture, own != NULL ? self : NULL, NULL, 0, reader);
  picture = tr_picture_view_get_picture (self->picture);
  if (picture != NULL && self->stepped_band >= (int) tr_picture_count_bands (picture))
    self->stepped_band = -1;
  gtk_widget_set_visible (GTK_WIDGET (self), own != NULL);
  if (own != NULL)
    show_band (self);
}

void
tr_layers_view_set_turn (TrLayersView *self,
                         guint         turn)
{
  g_return_if_fail (TR_IS_LAYERS_VIEW (self));

  g_autofree char *label = g_strdup_printf (_("After turn %u"), turn);

  if (turn == self->turn)
    return;

  self->turn = turn;
  gtk_check_button_set_label (GTK_CHECK_BUTTON (self->after), label);
  gtk_widget_set_visible (self->after, turn > 0);
  if (gtk_check_button_get_active (GTK_CHECK_BUTTON (self->after)))
    show_stack (self);
}

TrPictureView *
tr_layers_view_get_picture (TrLayersView *self)
{
  g_return_val_if_fail (TR_IS_LAYERS_VIEW (self), NULL);

  return self->picture;
}

const char *
tr_layers_view_get_text (TrLayersView *self)
{
  g_return_val_if_fail (TR_IS_LAYERS_VIEW (self), NULL);

  return gtk_label_get_label (self->words);
}
