/* print-preview.c: pages as they will come out, before they do
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invariant: the page said in the title bar is the one that fills most of the
 * upper half of the window; it follows scrolling, whoever scrolls.
 */

#include "config.h"

#include "print-preview.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "actions.h"
#include "page-sheet.h"

#define ZOOM_STEP 1.25
#define ZOOM_LEAST 0.4
#define ZOOM_MOST 5.0
#define GAP 12
#define WIDTH 720
#define HEIGHT 860

struct _TrPrintPreview
{
  GtkWindow parent_instance;

  /* Borrowed References */
  GtkWidget *scrolled;
  GtkWidget *column;
  GtkLabel *place;

  /* Owned References */
  TrPaperJob *job;

  /* State */
  double zoom;                   /* 0: to the width */
  guint page;
};

enum { PRINT, EXPORT, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrPrintPreview, tr_print_preview, GTK_TYPE_WINDOW)

guint
tr_print_preview_count_pages (TrPrintPreview *self)
{
  g_return_val_if_fail (TR_IS_PRINT_PREVIEW (self), 0);

  return self->job != NULL ? tr_pages_count (tr_paper_job_get_pages (self->job)) : 0;
}

guint
tr_print_preview_get_page (TrPrintPreview *self)
{
  g_return_val_if_fail (TR_IS_PRINT_PREVIEW (self), 0);

  return self->page;
}

TrPaperJob *
tr_print_preview_get_job (TrPrintPreview *self)
{
  g_return_val_if_fail (TR_IS_PRINT_PREVIEW (self), NULL);

  return self->job;
}

/* Pages ********************************************************************/

static GtkAdjustment *
get_adjustment (TrPrintPreview *self)
{
  return gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scrolled));
}

/* Where a page begins in the column; pages are all of one size. */
static double
get_stride (TrPrintPreview *self)
{
  GtkWidget *first = gtk_widget_get_first_child (self->column);

  return first != NULL ? gtk_widget_get_height (first) + GAP : 1;
}

static void
show_place (TrPrintPreview *self)
{
  g_autofree char *text = g_strdup_printf (_("Page %u of %u"), self->page + 1, tr_print_preview_count_pages (self));

  gtk_label_set_text (self->place, text);
}

static void
scrolled_cb (TrPrintPreview *self)
{
  GtkAdjustment *adjustment = get_adjustment (self);
  double middle = gtk_adjustment_get_value (adjustment) + gtk_adjustment_get_page_size (adjustment) / 4;
  guint page = (guint) MAX (0, middle / get_stride (self));
  guint n_pages = tr_print_preview_count_pages (self);

  if (n_pages == 0)
    return;

  self->page = MIN (page, n_pages - 1);
  show_place (self);
}

static void
go_to_page (TrPrintPreview *self,
            int             page)
{
  int last = (int) tr_print_preview_count_pages (self) - 1;

  gtk_adjustment_set_value (get_adjustment (self), CLAMP (page, 0, MAX (last, 0)) * get_stride (self));
}

static void
next_page_cb (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  go_to_page (TR_PRINT_PREVIEW (widget), (int) TR_PRINT_PREVIEW (widget)->page + 1);
}

/* Up to the start of this page first, when it is scrolled into. */
static void
previous_page_cb (GtkWidget  *widget,
                  const char *name,
                  GVariant   *parameter)
{
  TrPrintPreview *self = TR_PRINT_PREVIEW (widget);
  gboolean is_inside = gtk_adjustment_get_value (get_adjustment (self)) > self->page * get_stride (self) + 1;

  go_to_page (self, (int) self->page - (is_inside ? 0 : 1));
}

static void
end_page_cb (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  go_to_page (TR_PRINT_PREVIEW (widget), g_str_equal (name, "preview.last-page") ? G_MAXINT : 0);
}

/* Zoom *********************************************************************/

static double
get_shown_zoom (TrPrintPreview *self)
{
  GtkWidget *first = gtk_widget_get_first_child (self->column);
  double width, height;

  tr_paper_get_size (tr_paper_job_get_paper (self->job), &width, &height);

  return first != NULL && gtk_widget_get_width (first) > 0 ? gtk_widget_get_width (first) / width : 1;
}

static void
set_zoom (TrPrintPreview *self,
          double          zoom)
{
  self->zoom = zoom > 0 ? CLAMP (zoom, ZOOM_LEAST, ZOOM_MOST) : 0;
  for (GtkWidget *page = gtk_widget_get_first_child (self->column); page != NULL; page = gtk_widget_get_next_sibling (page))
    tr_page_sheet_set_zoom (TR_PAGE_SHEET (page), self->zoom);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "preview.zoom-in", self->zoom < ZOOM_MOST);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "preview.zoom-out", self->zoom <= 0 || self->zoom > ZOOM_LEAST);
}

static void
zoom_cb (GtkWidget  *widget,
         const char *name,
         GVariant   *parameter)
{
  TrPrintPreview *self = TR_PRINT_PREVIEW (widget);

  set_zoom (self, get_shown_zoom (self) * (g_str_equal (name, "preview.zoom-in") ? ZOOM_STEP : 1 / ZOOM_STEP));
}

static void
zoom_to_width_cb (GtkWidget  *widget,
                  const char *name,
                  GVariant   *parameter)
{
  set_zoom (TR_PRINT_PREVIEW (widget), 0);
}

static gboolean
wheel_cb (GtkEventControllerScroll *wheel,
          double                    dx,
          double                    dy,
          TrPrintPreview           *self)
{
  GdkModifierType state = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (wheel));

  if ((state & GDK_CONTROL_MASK) == 0 || self->job == NULL)
    return FALSE;

  set_zoom (self, get_shown_zoom (self) * (dy < 0 ? ZOOM_STEP : 1 / ZOOM_STEP));

  return TRUE;
}

/* What is done with the pages ***********************************************/

/* Closed first: what is asked next is the main window's. */
static void
asked_cb (GtkWidget  *widget,
          const char *name,
          GVariant   *parameter)
{
  g_autoptr (GtkWidget) self = g_object_ref (widget);

  gtk_widget_set_visible (self, FALSE);
  g_signal_emit (self, signals[g_str_equal (name, "preview.print") ? PRINT : EXPORT], 0);
  gtk_window_destroy (GTK_WINDOW (self));
}

static void
close_cb (GtkWidget  *widget,
          const char *name,
          GVariant   *parameter)
{
  gtk_window_close (GTK_WINDOW (widget));
}

/* Building *****************************************************************/

static void
tr_print_preview_finalize (GObject *object)
{
  g_clear_pointer (&TR_PRINT_PREVIEW (object)->job, tr_paper_job_unref);

  G_OBJECT_CLASS (tr_print_preview_parent_class)->finalize (object);
}

static void
tr_print_preview_class_init (TrPrintPreviewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = tr_print_preview_finalize;
  signals[PRINT] = g_signal_new ("print", TR_TYPE_PRINT_PREVIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[EXPORT] = g_signal_new ("export", TR_TYPE_PRINT_PREVIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_install_action (widget_class, "preview.print", NULL, asked_cb);
  gtk_widget_class_install_action (widget_class, "preview.export", NULL, asked_cb);
  gtk_widget_class_install_action (widget_class, "preview.close", NULL, close_cb);
  gtk_widget_class_install_action (widget_class, "preview.next-page", NULL, next_page_cb);
  gtk_widget_class_install_action (widget_class, "preview.previous-page", NULL, previous_page_cb);
  gtk_widget_class_install_action (widget_class, "preview.first-page", NULL, end_page_cb);
  gtk_widget_class_install_action (widget_class, "preview.last-page", NULL, end_page_cb);
  gtk_widget_class_install_action (widget_class, "preview.zoom-in", NULL, zoom_cb);
  gtk_widget_class_install_action (widget_class, "preview.zoom-out", NULL, zoom_cb);
  gtk_widget_class_install_action (widget_class, "preview.zoom-to-width", NULL, zoom_to_width_cb);
}

static GtkWidget *
new_button (const char *icon,
            const char *action)
{
  GtkWidget *button = icon != NULL ? gtk_button_new_from_icon_name (icon) : gtk_button_new ();

  tr_actions_set_up_button (button, action);

  return button;
}

static GtkWidget *
new_worded_button (const char *label,
                   const char *action)
{
  GtkWidget *button = new_button (NULL, action);

  gtk_button_set_label (GTK_BUTTON (button), label);

  return button;
}

static void
build_header (TrPrintPreview *self)
{
  GtkWidget *header = gtk_header_bar_new ();
  GtkWidget *print = new_worded_button (_("Print…"), "preview.print");

  self->place = GTK_LABEL (gtk_label_new (""));
  gtk_widget_add_css_class (GTK_WIDGET (self->place), "figures");
  gtk_header_bar_set_title_widget (GTK_HEADER_BAR (header), GTK_WIDGET (self->place));
  gtk_header_bar_pack_start (GTK_HEADER_BAR (header), new_button ("go-up-symbolic", "preview.previous-page"));
  gtk_header_bar_pack_start (GTK_HEADER_BAR (header), new_button ("go-down-symbolic", "preview.next-page"));
  gtk_header_bar_pack_start (GTK_HEADER_BAR (header), new_button ("zoom-out-symbolic", "preview.zoom-out"));
  gtk_header_bar_pack_start (GTK_HEADER_BAR (header), new_button ("zoom-fit-best-symbolic", "preview.zoom-to-width"));
  gtk_header_bar_pack_start (GTK_HEADER_BAR (header), new_button ("zoom-in-symbolic", "preview.zoom-in"));
  gtk_widget_add_css_class (print, "suggested-action");
  gtk_header_bar_pack_end (GTK_HEADER_BAR (header), print);
  gtk_header_bar_pack_end (GTK_HEADER_BAR (header), new_worded_button (_("Export…"), "preview.export"));
  gtk_window_set_titlebar (GTK_WINDOW (self), header);
}

static void
tr_print_preview_init (TrPrintPreview *self)
{
  GtkEventController *keys = tr_actions_new_keys (TR_KEYS_PREVIEW);
  GtkEventController *wheel = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_VERTICAL | GTK_EVENT_CONTROLLER_SCROLL_DISCRETE);

  self->scrolled = gtk_scrolled_window_new ();
  self->column = gtk_box_new (GTK_ORIENTATION_VERTICAL, GAP);
  gtk_widget_add_css_class (self->column, "sheets");
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), self->column);
  gtk_widget_set_focusable (self->scrolled, TRUE);
  gtk_widget_set_vexpand (self->scrolled, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->scrolled), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Pages"), -1);
  gtk_window_set_child (GTK_WINDOW (self), self->scrolled);
  build_header (self);
  /* Before the scrolled window, which would move by less than a page. */
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_event_controller_set_propagation_phase (wheel, GTK_PHASE_CAPTURE);
  g_signal_connect (wheel, "scroll", G_CALLBACK (wheel_cb), self);
  gtk_widget_add_controller (self->scrolled, wheel);
  gtk_window_set_default_size (GTK_WINDOW (self), WIDTH, HEIGHT);
  gtk_window_set_focus (GTK_WINDOW (self), self->scrolled);
  g_signal_connect_object (get_adjustment (self), "value-changed", G_CALLBACK (scrolled_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (get_adjustment (self), "changed", G_CALLBACK (scrolled_cb), self, G_CONNECT_SWAPPED);
}

GtkWidget *
tr_print_preview_new (GtkWindow  *parent,
                      TrPaperJob *job)
{
  g_return_val_if_fail (parent == NULL || GTK_IS_WINDOW (parent), NULL);
  g_return_val_if_fail (job != NULL, NULL);

  TrPrintPreview *self = g_object_new (TR_TYPE_PRINT_PREVIEW,
                                       "transient-for", parent,
                                       "destroy-with-parent", TRUE,
                                       NULL);
  int height;
  g_autofree char *title = g_strdup_printf (_("Preview of “%s”"), tr_pages_get_title (tr_paper_job_get_pages (job)));

  /* Where the window had to be low, so does this one. */
  if (parent != NULL && (height = gtk_widget_get_height (GTK_WIDGET (parent))) > 0)
    gtk_window_set_default_size (GTK_WINDOW (self), WIDTH, MIN (height, HEIGHT));
  self->job = tr_paper_job_ref (job);
  gtk_window_set_title (GTK_WINDOW (self), title);
  for (guint i = 0; i < tr_print_preview_count_pages (self); i++)
    gtk_box_append (GTK_BOX (self->column), tr_page_sheet_new (job, i));
  show_place (self);

  return GTK_WIDGET (self);
}
