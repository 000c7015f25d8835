/* print.c: papers through GTK's print operation
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invariant: the operation's number of pages is that of the job it holds, and
 * the job is laid out for the context's paper from "begin-print" on.
 */

#include "config.h"

#include "print.h"

#define JOB_KEY "tr-paper-job"

typedef struct {
  TrShowPreview show;
  GWeakRef owner;
} Preview;

TrPaperJob *
tr_print_operation_get_job (GtkPrintOperation *operation)
{
  g_return_val_if_fail (GTK_IS_PRINT_OPERATION (operation), NULL);

  return g_object_get_data (G_OBJECT (operation), JOB_KEY);
}

static void
set_job (GtkPrintOperation *operation,
         TrPaperJob        *job)
{
  g_object_set_data_full (G_OBJECT (operation), JOB_KEY, tr_paper_job_ref (job), (GDestroyNotify) tr_paper_job_unref);
}

static void
begin_print_cb (GtkPrintOperation *operation,
                GtkPrintContext   *context)
{
  TrPaperSize size = tr_paper_of_page_setup (gtk_print_context_get_page_setup (context));
  g_autoptr (TrPaperJob) job = tr_paper_job_on_paper (tr_print_operation_get_job (operation), size);

  set_job (operation, job);
  gtk_print_operation_set_n_pages (operation, (int) tr_pages_count (tr_paper_job_get_pages (job)));
}

static void
draw_page_cb (GtkPrintOperation *operation,
              GtkPrintContext   *context,
              int                page)
{
  TrPaperJob *job = tr_print_operation_get_job (operation);
  cairo_t *cr = gtk_print_context_get_cairo_context (context);
  double width = gtk_print_context_get_width (context);
  double height = gtk_print_context_get_height (context);
  double page_width, page_height;

  tr_paper_get_size (tr_paper_job_get_paper (job), &page_width, &page_height);

  double scale = MIN (width / page_width, height / page_height);

  cairo_save (cr);
  cairo_translate (cr, (width - scale * page_width) / 2, (height - scale * page_height) / 2);
  cairo_scale (cr, scale, scale);
  tr_pages_draw (tr_paper_job_get_pages (job), (guint) page, cr);
  cairo_restore (cr);
}

/* GTK wants a context to draw a preview on; ours draws its pages itself. */
static void
set_idle_context (GtkPrintContext *context)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);

  gtk_print_context_set_cairo_context (context, cr, 72, 72);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* Not from within "ready": GTK is not done with the operation there. */
static gboolean
end_preview_cb (gpointer data)
{
  gtk_print_operation_preview_end_preview (data);

  return G_SOURCE_REMOVE;
}

static void
ready_cb (GtkPrintOperation *operation,
          GtkPrintContext   *context,
          Preview           *preview)
{
  g_autoptr (GObject) owner = g_weak_ref_get (&preview->owner);

  if (owner != NULL)
    preview->show (tr_print_operation_get_job (operation), owner);
  g_idle_add_full (G_PRIORITY_DEFAULT, end_preview_cb, g_object_ref (operation), g_object_unref);
}

static gboolean
preview_cb (GtkPrintOperation        *operation,
            GtkPrintOperationPreview *asked,
            GtkPrintContext          *context)
{
  set_idle_context (context);

  return TRUE;
}

static void
free_preview (gpointer  data,
              GClosure *closure)
{
  Preview *preview = data;

  g_weak_ref_clear (&preview->owner);
  g_free (preview);
}

static void
connect_preview (GtkPrintOperation *operation,
                 TrShowPreview      show_preview,
                 GObject           *owner)
{
  Preview *preview = g_new0 (Preview, 1);

  preview->show = show_preview;
  g_weak_ref_init (&preview->owner, owner);
  g_signal_connect (operation, "preview", G_CALLBACK (preview_cb), NULL);
  g_signal_connect_data (operation, "ready", G_CALLBACK (ready_cb), preview, free_preview, 0);
}

GtkPrintOperation *
tr_print_operation_new (TrPaperJob          *job,
                        const TrPrintMemory *memory,
                        TrShowPreview        show_preview,
                        GObject             *owner)
{
  g_return_val_if_fail (job != NULL, NULL);
  g_return_val_if_fail (memory != NULL, NULL);

  GtkPrintOperation *operation = gtk_print_operation_new ();

  set_job (operation, job);
  /* The pages keep their own margins. */
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_embed_page_setup (operation, TRUE);
  gtk_print_operation_set_default_page_setup (operation, memory->setup);
  gtk_print_operation_set_print_settings (operation, memory->settings);
  gtk_print_operation_set_job_name (operation, tr_paper_job_get_name (job));
  gtk_print_operation_set_n_pages (operation, (int) tr_pages_count (tr_paper_job_get_pages (job)));
  g_signal_connect (operation, "begin-print", G_CALLBACK (begin_print_cb), NULL);
  g_signal_connect (operation, "draw-page", G_CALLBACK (draw_page_cb), NULL);
  if (show_preview != NULL)
    connect_preview (operation, show_preview, owner);

  return operation;
}
