/* page-sheet.c: one page of paper, on screen
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "page-sheet.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Smaller, and nothing on it can be told apart. */
#define LEAST_WIDTH 240

struct _TrPageSheet
{
  GtkWidget parent_instance;

  /* Owned References */
  TrPaperJob *job;               /* NULL: an empty sheet */

  /* State */
  guint page;
  double zoom;
};

G_DEFINE_FINAL_TYPE (TrPageSheet, tr_page_sheet, GTK_TYPE_WIDGET)

static void
get_paper (TrPageSheet *self,
           double      *width,
           double      *height)
{
  tr_paper_get_size (self->job != NULL ? tr_paper_job_get_paper (self->job) : TR_PAPER_A4, width, height);
}

static GtkSizeRequestMode
tr_page_sheet_get_request_mode (GtkWidget *widget)
{
  return TR_PAGE_SHEET (widget)->zoom > 0 ? GTK_SIZE_REQUEST_CONSTANT_SIZE : GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
tr_page_sheet_measure (GtkWidget      *widget,
                       GtkOrientation  orientation,
                       int             for_size,
                       int            *minimum,
                       int            *natural,
                       int            *minimum_baseline,
                       int            *natural_baseline)
{
  TrPageSheet *self = TR_PAGE_SHEET (widget);
  gboolean is_across = orientation == GTK_ORIENTATION_HORIZONTAL;
  double width, height;

  get_paper (self, &width, &height);
  if (self->zoom > 0)
    *minimum = *natural = (int) ceil (self->zoom * (is_across ? width : height));
  else if (is_across)
    {
      *minimum = LEAST_WIDTH;
      *natural = (int) ceil (width);
    }
  else
    *minimum = *natural = (int) ceil ((for_size > 0 ? for_size : width) * height / width);
}

static void
tr_page_sheet_snapshot (GtkWidget   *widget,
                        GtkSnapshot *snapshot)
{
  TrPageSheet *self = TR_PAGE_SHEET (widget);
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, gtk_widget_get_width (widget), gtk_widget_get_height (widget));
  const GdkRGBA white = { 1, 1, 1, 1 };
  double width, height;

  gtk_snapshot_append_color (snapshot, &white, &bounds);
  if (self->job == NULL)
    return;

  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);

  get_paper (self, &width, &height);
  cairo_scale (cr, bounds.size.width / width, bounds.size.height / height);
  tr_pages_draw (tr_paper_job_get_pages (self->job), self->page, cr);
  cairo_destroy (cr);
}

static void
tr_page_sheet_finalize (GObject *object)
{
  g_clear_pointer (&TR_PAGE_SHEET (object)->job, tr_paper_job_unref);

  G_OBJECT_CLASS (tr_page_sheet_parent_class)->finalize (object);
}

static void
tr_page_sheet_class_init (TrPageSheetClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = tr_page_sheet_finalize;
  widget_class->get_request_mode = tr_page_sheet_get_request_mode;
  widget_class->measure = tr_page_sheet_measure;
  widget_class->snapshot = tr_page_sheet_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "page-sheet");
}

static void
tr_page_sheet_init (TrPageSheet *self)
{
}

GtkWidget *
tr_page_sheet_new (TrPaperJob *job,
                   guint       page)
{
  g_return_val_if_fail (job != NULL, NULL);

  TrPageSheet *self = g_object_new (TR_TYPE_PAGE_SHEET, NULL);
  const TrPages *pages = tr_paper_job_get_pages (job);
  g_autofree char *name = g_strdup_printf (_("Page %u of %u"), page + 1, tr_pages_count (pages));

  self->job = tr_paper_job_ref (job);
  self->page = page;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, tr_picture_get_description (tr_pages_get (pages, page)),
                                  -1);

  return GTK_WIDGET (self);
}

void
tr_page_sheet_set_zoom (TrPageSheet *self,
                        double       zoom)
{
  g_return_if_fail (TR_IS_PAGE_SHEET (self));

  self->zoom = zoom;
  gtk_widget_set_halign (GTK_WIDGET (self), zoom > 0 ? GTK_ALIGN_CENTER : GTK_ALIGN_FILL);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}
