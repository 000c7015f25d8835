/* picture-menu.c: a picture copied, saved, and the menu that offers it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What goes out is the whole picture, whatever part of it the view shows, in
 * light colours on white: it is going to a document, which is white too.
 */

#include "config.h"

#include <cairo-svg.h>
#include <glib/gi18n-lib.h>

#include "../paper/paper.h"
#include "compat.h"
#include "picture-view-private.h"
#include "window-private.h"

/* Pixels a unit, so that it is sharp when it is printed. */
#define COPY_SCALE 2
/* A picture in a file is that wide: a page's text. */
#define PAPER_WIDTH_PT 480
#define LEAST_LINES 12

/* ---- copy ---- */

static void
init_document_look (TrPictureView *self,
                    TrLook        *look)
{
  tr_look_init_screen (look, FALSE, FALSE, tr_picture_view_get_text_size (self));
  look->paper = (TrColour) { 1, 1, 1 };
  look->is_still = TRUE;
}

/* The size of the whole picture on screen. */
static TrPicture *
new_copy (TrPictureView *self,
          double         device_scale)
{
  double width = self->made_width / self->zoom, height = self->made_height / self->zoom;
  TrLook look;

  init_document_look (self, &look);
  look.device_scale = device_scale;

  return tr_picture_view_make (self, &look, width, height);
}

static void
draw_on_white (const TrPicture *picture,
               cairo_t         *cr)
{
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  tr_picture_draw (picture, cr);
}

static GdkTexture *
new_texture (const TrPicture *picture)
{
  double width, height;
  cairo_surface_t *surface;
  cairo_t *cr;
  g_autoptr (GBytes) bytes = NULL;
  GdkTexture *texture;

  tr_picture_get_size (picture, &width, &height);
  surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int) ceil (width * COPY_SCALE), (int) ceil (height * COPY_SCALE));
  cr = cairo_create (surface);
  cairo_scale (cr, COPY_SCALE, COPY_SCALE);
  draw_on_white (picture, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);

  bytes = g_bytes_new (cairo_image_surface_get_data (surface),
                       (gsize) cairo_image_surface_get_stride (surface) * (gsize) cairo_image_surface_get_height (surface));
  texture = gdk_memory_texture_new (cairo_image_surface_get_width (surface), cairo_image_surface_get_height (surface),
                                    GDK_MEMORY_DEFAULT, bytes, (gsize) cairo_image_surface_get_stride (surface));
  cairo_surface_destroy (surface);

  return texture;
}

static cairo_status_t
append_bytes (void                *closure,
              const unsigned char *data,
              unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static GBytes *
new_svg (const TrPicture *picture)
{
  GByteArray *bytes = g_byte_array_new ();
  double width, height;
  cairo_surface_t *surface;
  cairo_t *cr;

  tr_picture_get_size (picture, &width, &height);
  surface = cairo_svg_surface_create_for_stream (append_bytes, bytes, width, height);
  cr = cairo_create (surface);
  draw_on_white (picture, cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  cairo_surface_destroy (surface);

  return g_byte_array_free_to_bytes (bytes);
}

/* Whoever takes it chooses: pixels, or lines that stay sharp. */
static GdkContentProvider *
new_content (TrPictureView *self)
{
  g_autoptr (TrPicture) pixels = new_copy (self, COPY_SCALE), lines = new_copy (self, 0);
  g_autoptr (GdkTexture) texture = new_texture (pixels);
  g_autoptr (GBytes) svg = new_svg (lines);

  return gdk_content_provider_new_union ((GdkContentProvider *[2]) {
    gdk_content_provider_new_typed (GDK_TYPE_TEXTURE, texture),
    gdk_content_provider_new_for_bytes ("image/svg+xml", svg),
  }, 2);
}

void
tr_picture_view_copy (TrPictureView *self)
{
  g_return_if_fail (TR_IS_PICTURE_VIEW (self));

  if (self->picture == NULL)
    return;

  g_autoptr (GdkContentProvider) content = new_content (self);

  gdk_clipboard_set_content (gtk_widget_get_clipboard (GTK_WIDGET (self)), content);
}

/* ---- save ---- */

/* As it is printed: the paper's colours and letters. */
static TrPicture *
new_for_paper (TrPictureView *self)
{
  TrLook look;

  tr_look_init_paper (&look);

  return tr_picture_view_make (self, &look, PAPER_WIDTH_PT, MAX (self->lines, LEAST_LINES) * look.text_size);
}

static void
tell (TrPictureView *self,
      const char    *sentence)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (TR_IS_WINDOW (root))
    tr_window_show_error (TR_WINDOW (root), sentence);
}

static void
tell_saved (TrPictureView *self,
            GFile         *file)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  g_autofree char *name = g_file_get_basename (file);
  g_autofree char *sentence = g_strdup_printf (_("The picture is in “%s”."), name);

  if (TR_IS_WINDOW (root))
    tr_notices_show (TR_WINDOW (root)->notices, "file", sentence, NULL, 0);
}

/* What is shown when the name was chosen is saved. */
static void
place_chosen_cb (GObject      *source,
                 GAsyncResult *result,
                 gpointer      data)
{
  g_autoptr (TrPictureView) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GFile) chosen = tr_compat_save_file_finish (result, NULL);
  g_autoptr (GFile) file = chosen != NULL ? tr_window_dup_suffixed (chosen, ".png") : NULL;
  g_autoptr (TrPicture) picture = NULL;
  g_autofree char *path = NULL;

  if (file == NULL)
    return;

  picture = new_for_paper (self);
  path = tr_window_dup_drawing_path (file, &error);
  if (path != NULL && picture != NULL && tr_picture_export (picture, self->name, path, &error))
    tell_saved (self, file);
  else if (error != NULL)
    tell (self, error->message);
}

void
tr_picture_view_save (TrPictureView *self)
{
  g_return_if_fail (TR_IS_PICTURE_VIEW (self));

  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (self->picture == NULL || !GTK_IS_WINDOW (root))
    return;

  g_autofree char *title = g_strdelimit (g_strdup (*self->name != '\0' ? self->name : _("Picture")), "/\\:", '-');
  g_autofree char *name = g_strconcat (title, ".png", NULL);

  tr_window_ask_for_drawing_file (GTK_WINDOW (root), _("Save the picture"), NULL, name, place_chosen_cb, g_object_ref (self));
}

/* ---- menu ---- */

static void
copied_cb (GtkWidget  *widget,
           const char *action,
           GVariant   *parameter)
{
  tr_picture_view_copy (TR_PICTURE_VIEW (widget));
}

static void
saved_cb (GtkWidget  *widget,
          const char *action,
          GVariant   *parameter)
{
  tr_picture_view_save (TR_PICTURE_VIEW (widget));
}

static void
menu_asked_cb (GtkWidget  *widget,
               const char *action,
               GVariant   *parameter)
{
  tr_picture_view_popup_menu_at_selected (TR_PICTURE_VIEW (widget));
}

void
tr_picture_view_class_install_menu (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "picture.copy", NULL, copied_cb);
  gtk_widget_class_install_action (widget_class, "picture.save", NULL, saved_cb);
  gtk_widget_class_install_action (widget_class, "picture.menu", NULL, menu_asked_cb);
}

static GMenuModel *
new_menu (TrPictureView *self)
{
  g_autoptr (GMenu) menu = g_menu_new (), take = g_menu_new (), zoom = g_menu_new ();

  if (self->more_menu != NULL)
    g_menu_append_section (menu, NULL, self->more_menu);
  g_menu_append (take, _("Copy picture"), "picture.copy");
  g_menu_append (take, _("Save picture as…"), "picture.save");
  g_menu_append_section (menu, NULL, G_MENU_MODEL (take));
  if (self->zoomable)
    {
      g_menu_append (zoom, _("Zoom in"), "picture.zoom-in");
      g_menu_append (zoom, _("Zoom out"), "picture.zoom-out");
      g_menu_append (zoom, _("Whole picture"), "picture.fit");
      g_menu_append_section (menu, NULL, G_MENU_MODEL (zoom));
    }

  return G_MENU_MODEL (g_steal_pointer (&menu));
}

void
tr_picture_view_set_menu (TrPictureView *self,
                          GMenuModel    *menu)
{
  g_return_if_fail (TR_IS_PICTURE_VIEW (self));

  g_set_object (&self->more_menu, menu);
}

void
tr_picture_view_popup_menu (TrPictureView *self,
                            double         x,
                            double         y)
{
  g_autoptr (GMenuModel) model = NULL;

  if (self->picture == NULL)
    return;

  model = new_menu (self);
  if (self->menu == NULL)
    {
      self->menu = gtk_popover_menu_new_from_model (model);
      gtk_popover_set_has_arrow (GTK_POPOVER (self->menu), FALSE);
      gtk_widget_set_halign (self->menu, GTK_ALIGN_START);
      gtk_widget_set_parent (self->menu, GTK_WIDGET (self));
    }
  else
    gtk_popover_menu_set_menu_model (GTK_POPOVER_MENU (self->menu), model);
  gtk_popover_set_pointing_to (GTK_POPOVER (self->menu), &(GdkRectangle) { (int) x, (int) y, 1, 1 });
  gtk_popover_popup (GTK_POPOVER (self->menu));
}

void
tr_picture_view_popup_menu_at_selected (TrPictureView *self)
{
  graphene_rect_t bounds;

  if (self->has_selected && tr_picture_view_get_part_bounds (self, &self->selected, &bounds))
    tr_picture_view_popup_menu (self, bounds.origin.x + bounds.size.width / 2, bounds.origin.y + bounds.size.height / 2);
  else
    tr_picture_view_popup_menu (self, gtk_widget_get_width (GTK_WIDGET (self)) / 2.0, gtk_widget_get_height (GTK_WIDGET (self)) / 2.0);
}
