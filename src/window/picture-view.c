/* picture-view.c: shows a picture of a dough's figures
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Holds a reference to the figures it shows, so that a new size can be drawn
 * without asking the page. Draws and hit-tests the same picture.
 */

#include "config.h"

#include "picture-view.h"

/* Before it is allocated a picture is made at this width, for its words. */
#define UNALLOCATED_WIDTH 480

struct _TrPictureView
{
  GtkWidget parent_instance;

  /* Owned */
  TrDoughFigures *figures;
  TrPicture *picture;

  /* State */
  TrPictureMaker make;
  TrReader reader;
  guint item;
  double lines;
};

G_DEFINE_FINAL_TYPE (TrPictureView, tr_picture_view, GTK_TYPE_WIDGET)

static double
get_text_size (GtkWidget *widget)
{
  PangoContext *context = gtk_widget_get_pango_context (widget);
  const PangoFontDescription *font = pango_context_get_font_description (context);
  double size = (double) pango_font_description_get_size (font) / PANGO_SCALE;
  double resolution = pango_cairo_context_get_resolution (context);

  if (!pango_font_description_get_size_is_absolute (font))
    size *= (resolution > 0 ? resolution : 96) / 72;

  return size > 0 ? size : 14;
}

static gboolean
is_dark (GtkWidget *widget)
{
  GdkRGBA text;

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &text);

  return 0.2126 * text.red + 0.7152 * text.green + 0.0722 * text.blue > 0.5;
}

static gboolean
is_high_contrast (GtkWidget *widget)
{
  g_autofree char *theme = NULL;

  g_object_get (gtk_widget_get_settings (widget), "gtk-theme-name", &theme, NULL);

  return theme != NULL && (strstr (theme, "HighContrast") != NULL || strstr (theme, "-hc") != NULL);
}

static void
init_look (GtkWidget *widget,
           TrLook    *look)
{
  tr_look_init_screen (look, is_dark (widget), is_high_contrast (widget), get_text_size (widget));
  look->device_scale = gtk_widget_get_scale_factor (widget);
}

static void
make_picture (TrPictureView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  TrLook look;

  g_clear_pointer (&self->picture, tr_picture_unref);
  if (self->figures == NULL)
    return;

  init_look (widget, &look);
  if (width <= 0 || height <= 0)
    {
      width = UNALLOCATED_WIDTH;
      height = (int) (self->lines * look.text_size);
    }
  self->picture = self->make (self->figures, self->item, &self->reader, &look, width, height);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  self->picture != NULL ? tr_picture_get_description (self->picture) : "", -1);
  gtk_widget_queue_draw (widget);
}

static void
tr_picture_view_measure (GtkWidget      *widget,
                         GtkOrientation  orientation,
                         int             for_size,
                         int            *minimum,
                         int            *natural,
                         int            *minimum_baseline,
                         int            *natural_baseline)
{
  TrPictureView *self = TR_PICTURE_VIEW (widget);
  double text_size = get_text_size (widget);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = (int) (text_size * 12);
      *natural = (int) (text_size * 36);
    }
  else
    *minimum = *natural = (int) ceil (self->lines * text_size);
}

static void
tr_picture_view_size_allocate (GtkWidget *widget,
                               int        width,
                               int        height,
                               int        baseline)
{
  TrPictureView *self = TR_PICTURE_VIEW (widget);
  double drawn_width = 0, drawn_height = 0;

  if (self->picture != NULL)
    tr_picture_get_size (self->picture, &drawn_width, &drawn_height);
  if ((int) drawn_width != width || (int) drawn_height != height)
    make_picture (self);
}

static void
tr_picture_view_snapshot (GtkWidget   *widget,
                          GtkSnapshot *snapshot)
{
  TrPictureView *self = TR_PICTURE_VIEW (widget);
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, gtk_widget_get_width (widget), gtk_widget_get_height (widget));

  if (self->picture == NULL)
    return;

  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);

  tr_picture_draw (self->picture, cr);
  cairo_destroy (cr);
}

static gboolean
tr_picture_view_query_tooltip (GtkWidget  *widget,
                               int         x,
                               int         y,
                               gboolean    is_keyboard,
                               GtkTooltip *tooltip)
{
  TrPictureView *self = TR_PICTURE_VIEW (widget);

  if (self->picture == NULL)
    return FALSE;
  if (is_keyboard)
    {
      gtk_tooltip_set_text (tooltip, tr_picture_get_description (self->picture));
      return TRUE;
    }

  TrHit hit = tr_picture_hit (self->picture, x, y);
  g_autofree char *text = hit.part != TR_PART_OF_NOTHING ? tr_picture_dup_hit_text (self->picture, &hit) : NULL;

  if (text == NULL)
    return FALSE;

  /* A small area, so that the words follow the pointer from band to band. */
  gtk_tooltip_set_text (tooltip, text);
  gtk_tooltip_set_tip_area (tooltip, &(GdkRectangle) { x - 2, y - 2, 4, 4 });

  return TRUE;
}

static void
tr_picture_view_css_changed (GtkWidget         *widget,
                             GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (tr_picture_view_parent_class)->css_changed (widget, change);

  gtk_widget_queue_resize (widget);
  make_picture (TR_PICTURE_VIEW (widget));
}

static void
tr_picture_view_system_setting_changed (GtkWidget        *widget,
                                        GtkSystemSetting  setting)
{
  GTK_WIDGET_CLASS (tr_picture_view_parent_class)->system_setting_changed (widget, setting);

  gtk_widget_queue_resize (widget);
  make_picture (TR_PICTURE_VIEW (widget));
}

static void
tr_picture_view_dispose (GObject *object)
{
  TrPictureView *self = TR_PICTURE_VIEW (object);

  g_clear_pointer (&self->picture, tr_picture_unref);
  g_clear_pointer (&self->figures, tr_dough_figures_unref);

  G_OBJECT_CLASS (tr_picture_view_parent_class)->dispose (object);
}

static void
tr_picture_view_class_init (TrPictureViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_picture_view_dispose;
  widget_class->measure = tr_picture_view_measure;
  widget_class->size_allocate = tr_picture_view_size_allocate;
  widget_class->snapshot = tr_picture_view_snapshot;
  widget_class->query_tooltip = tr_picture_view_query_tooltip;
  widget_class->css_changed = tr_picture_view_css_changed;
  widget_class->system_setting_changed = tr_picture_view_system_setting_changed;

  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
tr_picture_view_init (TrPictureView *self)
{
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  g_signal_connect (self, "notify::scale-factor", G_CALLBACK (make_picture), NULL);
}

GtkWidget *
tr_picture_view_new (const char     *name,
                     TrPictureMaker  make,
                     double          lines)
{
  g_return_val_if_fail (make != NULL, NULL);

  TrPictureView *self = g_object_new (TR_TYPE_PICTURE_VIEW, NULL);

  self->make = make;
  self->lines = lines;
  tr_picture_view_set_name (self, name);

  return GTK_WIDGET (self);
}

void
tr_picture_view_set_name (TrPictureView *self,
                          const char    *name)
{
  g_return_if_fail (TR_IS_PICTURE_VIEW (self));

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

void
tr_picture_view_set_figures (TrPictureView        *self,
                             const TrDoughFigures *figures,
                             guint                 item,
                             const TrReader       *reader)
{
  g_return_if_fail (TR_IS_PICTURE_VIEW (self));

  gboolean is_same_reader = self->reader.units == reader->units && g_str_equal (self->reader.decimal, reader->decimal);

  gtk_widget_set_visible (GTK_WIDGET (self), figures != NULL);
  if (figures == self->figures && item == self->item && is_same_reader)
    return;

  TrDoughFigures *own = figures != NULL ? tr_dough_figures_ref ((TrDoughFigures *) figures) : NULL;

  g_clear_pointer (&self->figures, tr_dough_figures_unref);
  self->figures = own;
  self->item = item;
  self->reader = *reader;
  make_picture (self);
}

TrPicture *
tr_picture_view_get_picture (TrPictureView *self)
{
  g_return_val_if_fail (TR_IS_PICTURE_VIEW (self), NULL);

  return self->picture;
}

TrPicture *
tr_make_layers_picture (const TrDoughFigures *figures,
                        guint                 item,
                        const TrReader       *reader,
                        const TrLook         *look,
                        double                width,
                        double                height)
{
  return tr_layers_picture_new (figures, reader, look, width, height);
}

TrPicture *
tr_make_lock_in_picture (const TrDoughFigures *figures,
                         guint                 item,
                         const TrReader       *reader,
                         const TrLook         *look,
                         double                width,
                         double                height)
{
  return tr_lock_in_picture_new (figures, reader, look, width, height);
}

TrPicture *
tr_make_turn_picture (const TrDoughFigures *figures,
                      guint                 item,
                      const TrReader       *reader,
                      const TrLook         *look,
                      double                width,
                      double                height)
{
  return tr_turn_picture_new (figures, item, reader, look, width, height);
}

TrPicture *
tr_make_sheet_picture (const TrDoughFigures *figures,
                       guint                 item,
                       const TrReader       *reader,
                       const TrLook         *look,
                       double                width,
                       double                height)
{
  return tr_sheet_picture_new (figures, reader, look, width, height);
}
