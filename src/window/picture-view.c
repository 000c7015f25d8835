/* picture-view.c: shows a picture, lets its parts be grabbed, zoomed and copied
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Holds a reference to what it shows, so that a new size can be drawn without
 * asking the page. Draws and hit-tests the same picture.
 */

#include "config.h"

#include "picture-view-private.h"

#include "../picture/shapes.h"

/* Before it is allocated a picture is made at this width, for its words. */
#define UNALLOCATED_WIDTH 480
/* Around the selected part. */
#define MARK_WIDTH 2

G_DEFINE_FINAL_TYPE (TrPictureView, tr_picture_view, GTK_TYPE_WIDGET)

guint tr_picture_view_signals[TR_PICTURE_N_SIGNALS];

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

double
tr_picture_view_get_text_size (TrPictureView *self)
{
  return get_text_size (GTK_WIDGET (self));
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

void
tr_widget_init_look (GtkWidget *widget,
                     TrLook    *look)
{
  tr_look_init_screen (look, is_dark (widget), is_high_contrast (widget), get_text_size (widget));
  look->device_scale = gtk_widget_get_scale_factor (widget);
}

TrPicture *
tr_picture_view_make (TrPictureView *self,
                      const TrLook  *look,
                      double         width,
                      double         height)
{
  if (self->figures != NULL && self->make != NULL)
    return self->make (self->figures, self->item, &self->reader, look, width, height);
  if (self->data != NULL && self->make_for != NULL)
    return self->make_for (self->data, self->item, &self->reader, look, width, height);

  return NULL;
}

/* What keys act on comes first: it is what has just changed. */
static void
update_description (TrPictureView *self)
{
  const char *whole = self->picture != NULL ? tr_picture_get_description (self->picture) : "";
  g_autofree char *part = NULL, *both = NULL;

  if (self->picture != NULL && self->has_selected)
    part = tr_picture_dup_hit_text (self->picture, &self->selected);
  if (part != NULL && *part != '\0')
    both = g_strdup_printf ("%s. %s", part, whole);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, both != NULL ? both : whole, -1);
}

void
tr_picture_view_clamp_scroll (TrPictureView *self)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self)), height = gtk_widget_get_height (GTK_WIDGET (self));

  self->scroll_x = CLAMP (self->scroll_x, 0, MAX (0, self->made_width - width));
  self->scroll_y = CLAMP (self->scroll_y, 0, MAX (0, self->made_height - height));
}

void
tr_picture_view_make_again (TrPictureView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  TrLook look;

  g_return_if_fail (TR_IS_PICTURE_VIEW (self));

  tr_widget_init_look (GTK_WIDGET (self), &look);
  if (width <= 0 || height <= 0)
    {
      width = UNALLOCATED_WIDTH;
      height = (int) (self->lines * look.text_size);
    }
  g_clear_pointer (&self->picture, tr_picture_unref);
  self->made_width = width * self->zoom;
  self->made_height = height * self->zoom;
  self->picture = tr_picture_view_make (self, &look, self->made_width, self->made_height);
  tr_picture_view_clamp_scroll (self);
  update_description (self);
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
  double text_size = tr_picture_view_get_text_size (self);

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

  if (fabs (self->made_width - width * self->zoom) > 0.01 || fabs (self->made_height - height * self->zoom) > 0.01)
    tr_picture_view_make_again (self);
  if (self->menu != NULL)
    gtk_popover_present (GTK_POPOVER (self->menu));
}

static void
append_mark (TrPictureView *self,
             GtkSnapshot   *snapshot)
{
  graphene_rect_t bounds;
  TrLook look;

  if (!gtk_widget_has_visible_focus (GTK_WIDGET (self)) || !self->has_selected ||
      !tr_picture_view_get_part_bounds (self, &self->selected, &bounds))
    return;

  graphene_rect_inset (&bounds, -MARK_WIDTH, -MARK_WIDTH);
  tr_widget_init_look (GTK_WIDGET (self), &look);

  GdkRGBA accent = { (float) look.accent.r, (float) look.accent.g, (float) look.accent.b, 1 };
  GskRoundedRect outline;

  gsk_rounded_rect_init_from_rect (&outline, &bounds, 0);
  gtk_snapshot_append_border (snapshot, &outline, (float[4]) { MARK_WIDTH, MARK_WIDTH, MARK_WIDTH, MARK_WIDTH },
                              (GdkRGBA[4]) { accent, accent, accent, accent });
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

  cairo_translate (cr, -round (self->scroll_x), -round (self->scroll_y));
  tr_picture_draw (self->picture, cr);
  cairo_destroy (cr);
  gtk_snapshot_push_clip (snapshot, &bounds);
  append_mark (self, snapshot);
  gtk_snapshot_pop (snapshot);
  tr_picture_view_append_bars (self, snapshot);
}

static gboolean
tr_picture_view_query_tooltip (GtkWidget  *widget,
                               int         x,
                               int         y,
                               gboolean    is_keyboard,
                               GtkTooltip *tooltip)
{
  TrPictureView *self = TR_PICTURE_VIEW (widget);

  if (self->picture == NULL || self->is_grabbed || (self->menu != NULL && gtk_widget_get_mapped (self->menu)))
    return FALSE;
  if (is_keyboard)
    {
      gtk_tooltip_set_text (tooltip, tr_picture_get_description (self->picture));
      return TRUE;
    }

  TrHit hit = tr_picture_hit (self->picture, x + self->scroll_x, y + self->scroll_y);
  g_autofree char *text = hit.part != TR_PART_OF_NOTHING ? tr_picture_dup_hit_text (self->picture, &hit) : NULL;

  if (text == NULL || *text == '\0')
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
  tr_picture_view_make_again (TR_PICTURE_VIEW (widget));
}

static void
tr_picture_view_system_setting_changed (GtkWidget        *widget,
                                        GtkSystemSetting  setting)
{
  GTK_WIDGET_CLASS (tr_picture_view_parent_class)->system_setting_changed (widget, setting);

  gtk_widget_queue_resize (widget);
  tr_picture_view_make_again (TR_PICTURE_VIEW (widget));
}

static void
tr_picture_view_unmap (GtkWidget *widget)
{
  tr_picture_view_lose_pointer (TR_PICTURE_VIEW (widget));

  GTK_WIDGET_CLASS (tr_picture_view_parent_class)->unmap (widget);
}

static void
drop_data (TrPictureView *self)
{
  gpointer data = g_steal_pointer (&self->data);

  if (data != NULL && self->free_data != NULL)
    self->free_data (data);
}

static void
tr_picture_view_dispose (GObject *object)
{
  TrPictureView *self = TR_PICTURE_VIEW (object);

  tr_picture_view_lose_pointer (self);
  g_clear_pointer (&self->menu, gtk_widget_unparent);
  g_clear_object (&self->more_menu);
  g_clear_pointer (&self->picture, tr_picture_unref);
  g_clear_pointer (&self->figures, tr_dough_figures_unref);
  drop_data (self);

  G_OBJECT_CLASS (tr_picture_view_parent_class)->dispose (object);
}

static void
tr_picture_view_finalize (GObject *object)
{
  TrPictureView *self = TR_PICTURE_VIEW (object);

  g_free (self->name);
  g_free (self->cursor);

  G_OBJECT_CLASS (tr_picture_view_parent_class)->finalize (object);
}

static guint
new_signal (const char *name,
            GType       returned,
            guint       n_arguments,
            ...)
{
  GSignalFlags flags = G_SIGNAL_RUN_LAST;
  va_list arguments;
  guint id;

  va_start (arguments, n_arguments);
  id = g_signal_new_valist (name, TR_TYPE_PICTURE_VIEW, flags, NULL,
                            returned == G_TYPE_BOOLEAN ? g_signal_accumulator_true_handled : NULL, NULL, NULL,
                            returned, n_arguments, arguments);
  va_end (arguments);

  return id;
}

static void
add_signals (void)
{
  tr_picture_view_signals[TR_PICTURE_GRAB] =
    new_signal ("grab", G_TYPE_BOOLEAN, 4, G_TYPE_POINTER, G_TYPE_DOUBLE, G_TYPE_DOUBLE, G_TYPE_BOOLEAN);
  tr_picture_view_signals[TR_PICTURE_DRAGGED] = new_signal ("dragged", G_TYPE_NONE, 2, G_TYPE_DOUBLE, G_TYPE_DOUBLE);
  tr_picture_view_signals[TR_PICTURE_DROPPED] = new_signal ("dropped", G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
  tr_picture_view_signals[TR_PICTURE_PRESSED] = new_signal ("pressed", G_TYPE_NONE, 2, G_TYPE_POINTER, G_TYPE_INT);
  tr_picture_view_signals[TR_PICTURE_HOVERED] = new_signal ("hovered", G_TYPE_NONE, 1, G_TYPE_POINTER);
}

static void
tr_picture_view_class_init (TrPictureViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_picture_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = tr_picture_view_finalize;
  widget_class->measure = tr_picture_view_measure;
  widget_class->size_allocate = tr_picture_view_size_allocate;
  widget_class->snapshot = tr_picture_view_snapshot;
  widget_class->query_tooltip = tr_picture_view_query_tooltip;
  widget_class->css_changed = tr_picture_view_css_changed;
  widget_class->system_setting_changed = tr_picture_view_system_setting_changed;
  widget_class->unmap = tr_picture_view_unmap;

  add_signals ();
  tr_picture_view_class_install_zoom (widget_class);
  tr_picture_view_class_install_menu (widget_class);
  gtk_widget_class_set_css_name (widget_class, "picture-view");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
tr_picture_view_init (TrPictureView *self)
{
  self->zoom = 1;
  self->hover.index = -1;
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  g_signal_connect (self, "notify::scale-factor", G_CALLBACK (tr_picture_view_make_again), NULL);
  g_signal_connect (self, "notify::has-focus", G_CALLBACK (gtk_widget_queue_draw), NULL);
  tr_picture_view_add_controllers (self);
  tr_picture_view_update_zoom_actions (self);
}

static TrPictureView *
new_view (const char *name,
          double      lines)
{
  TrPictureView *self = g_object_new (TR_TYPE_PICTURE_VIEW, NULL);

  self->lines = lines;
  tr_picture_view_set_name (self, name);

  return self;
}

GtkWidget *
tr_picture_view_new (const char     *name,
                     TrPictureMaker  make,
                     double          lines)
{
  g_return_val_if_fail (make != NULL, NULL);

  TrPictureView *self = new_view (name, lines);

  self->make = make;

  return GTK_WIDGET (self);
}

GtkWidget *
tr_picture_view_new_for (const char      *name,
                         TrPictureMaking  make,
                         double           lines)
{
  g_return_val_if_fail (make != NULL, NULL);

  TrPictureView *self = new_view (name, lines);

  self->make_for = make;

  return GTK_WIDGET (self);
}

void
tr_picture_view_set_lines (TrPictureView *self,
                           double         lines)
{
  g_return_if_fail (TR_IS_PICTURE_VIEW (self));
  g_return_if_fail (lines > 0);

  if (fabs (lines - self->lines) <= 0)
    return;

  self->lines = lines;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
tr_picture_view_set_name (TrPictureView *self,
                          const char    *name)
{
  g_return_if_fail (TR_IS_PICTURE_VIEW (self));

  if (g_strcmp0 (name, self->name) == 0)
    return;

  g_free (self->name);
  self->name = g_strdup (name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

/* Hiding ends a drag, which may change what is to be shown: so it comes last,
 * and what is shown decides. */
static void
update_visible (TrPictureView *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self), self->figures != NULL || self->data != NULL);
}

void
tr_picture_view_set_figures (TrPictureView        *self,
                             const TrDoughFigures *figures,
                             guint                 item,
                             const TrReader       *reader)
{
  g_return_if_fail (TR_IS_PICTURE_VIEW (self));

  gboolean is_same_reader = self->reader.units == reader->units && g_str_equal (self->reader.decimal, reader->decimal);

  if (figures != self->figures || item != self->item || !is_same_reader)
    {
      TrDoughFigures *own = figures != NULL ? tr_dough_figures_ref ((TrDoughFigures *) figures) : NULL;

      g_clear_pointer (&self->figures, tr_dough_figures_unref);
      self->figures = own;
      self->item = item;
      self->reader = *reader;
      tr_picture_view_make_again (self);
    }
  update_visible (self);
}

void
tr_picture_view_set_data (TrPictureView  *self,
                          gpointer        data,
                          GDestroyNotify  free_data,
                          guint           item,
                          const TrReader *reader)
{
  g_return_if_fail (TR_IS_PICTURE_VIEW (self));

  if (data != self->data)
    drop_data (self);
  self->data = data;
  self->free_data = free_data;
  self->item = item;
  self->reader = *reader;
  tr_picture_view_make_again (self);
  update_visible (self);
}

TrPicture *
tr_picture_view_get_picture (TrPictureView *self)
{
  g_return_val_if_fail (TR_IS_PICTURE_VIEW (self), NULL);

  return self->picture;
}

gboolean
tr_picture_view_get_part_bounds (TrPictureView   *self,
                                 const TrHit     *hit,
                                 graphene_rect_t *bounds)
{
  TrBox box;

  g_return_val_if_fail (TR_IS_PICTURE_VIEW (self), FALSE);
  g_return_val_if_fail (hit != NULL, FALSE);

  if (self->picture == NULL || !tr_picture_get_box (self->picture, hit, &box))
    return FALSE;

  graphene_rect_init (bounds, (float) (box.x - round (self->scroll_x)), (float) (box.y - round (self->scroll_y)),
                      (float) box.width, (float) box.height);

  return TRUE;
}

void
tr_picture_view_set_selected (TrPictureView *self,
                              const TrHit   *hit)
{
  g_return_if_fail (TR_IS_PICTURE_VIEW (self));

  self->has_selected = hit != NULL && hit->part != TR_PART_OF_NOTHING;
  if (self->has_selected)
    self->selected = *hit;
  update_description (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

gboolean
tr_picture_view_get_selected (TrPictureView *self,
                              TrHit         *hit)
{
  g_return_val_if_fail (TR_IS_PICTURE_VIEW (self), FALSE);

  if (self->has_selected)
    *hit = self->selected;

  return self->has_selected;
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
