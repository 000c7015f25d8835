/* window-pages.c: the papers of the whole trial, to a file or a printer
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The comparison, and what a tasting needs. Where a file goes is asked first; the
 * paper is made afterwards on another thread, since the probabilities of a
 * result can take a while. A printer is asked for when the paper is there, by
 * what prints the bench cards.
 */

#include "config.h"

#include "window-private.h"

#include <glib/gi18n-lib.h>

#include "compat.h"

typedef struct {
  const char *name;              /* of the actions: "win.export-NAME", "win.print-NAME" */
  TrPaperKind kind;
  const char *title;
  const char *file_name;         /* without suffix */
} Paper;

static const Paper papers[] = {
  { "comparison", TR_PAPER_KIND_COMPARISON, N_("Export the comparison"), N_("comparison") },
  { "score-sheets", TR_PAPER_KIND_SCORE_SHEETS, N_("Export score sheets"), N_("score sheets") },
  { "code-labels", TR_PAPER_KIND_CODE_LABELS, N_("Export code labels"), N_("code labels") },
  { "tasting-key", TR_PAPER_KIND_TASTING_KEY, N_("Export the key of the tasting"), N_("key of the tasting") },
  { "tasting-result", TR_PAPER_KIND_TASTING_RESULT, N_("Export the result of the tasting"), N_("result of the tasting") },
};

static const Paper *
find_paper (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    if (g_str_equal (papers[i].name, name))
      return &papers[i];

  g_return_val_if_reached (NULL);
}

const char *
tr_window_get_paper_title (TrPaperKind kind)
{
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    if (papers[i].kind == kind)
      return _(papers[i].title);

  g_return_val_if_reached (NULL);
}

/* Making *******************************************************************/

typedef struct {
  const Paper *paper;
  TrFigures *figures;
  TrReader reader;
  TrPaperSize size;
  char *path;                    /* NULL: to a printer */
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  tr_figures_unref (order->figures);
  g_free (order->path);
  g_free (order);
}

static void
make_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  Order *order = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (TrPaperJob) job = tr_paper_job_new (order->paper->kind, order->figures, &order->reader, order->size,
                                                 _(order->paper->file_name), &error);

  if (job != NULL && (order->path == NULL || tr_pages_export (tr_paper_job_get_pages (job), order->path, &error)))
    g_task_return_pointer (task, g_steal_pointer (&job), (GDestroyNotify) tr_paper_job_unref);
  else
    g_task_return_error (task, g_steal_pointer (&error));
}

static void
made_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  TrWindow *self = TR_WINDOW (source);
  Order *order = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;
  g_autoptr (TrPaperJob) job = g_task_propagate_pointer (G_TASK (result), &error);

  if (self->notices == NULL)     /* closed meanwhile */
    return;

  if (job == NULL)
    tr_window_show_error (self, error->message);
  else if (order->path != NULL)
    tr_window_tell_exported (self, job, order->path);
  else
    tr_window_print_job (self, job);
}

/* Takes the path; NULL: to a printer. */
static void
make (TrWindow    *self,
      const Paper *paper,
      TrPaperSize  size,
      char        *path)
{
  Order *order = g_new0 (Order, 1);
  g_autoptr (GTask) task = g_task_new (self, NULL, made_cb, NULL);

  order->paper = paper;
  order->figures = tr_figures_ref (tr_document_get_figures (self->document));
  order->reader = self->reader;
  order->size = size;
  order->path = path;
  g_task_set_task_data (task, order, order_free);
  g_task_run_in_thread (task, make_in_thread);
}

/* To a file ******************************************************************/

static void
chosen_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  TrWindow *self = TR_WINDOW (source);
  g_autoptr (GFile) chosen = tr_compat_save_file_finish (result, NULL);
  g_autoptr (GFile) file = chosen != NULL ? tr_window_dup_suffixed (chosen, ".pdf") : NULL;
  g_autoptr (GError) error = NULL;
  char *path;

  if (file == NULL)
    return;

  path = tr_window_dup_drawing_path (file, &error);
  if (path != NULL)
    make (self, data, self->reader.units == TR_UNITS_US ? TR_PAPER_LETTER : TR_PAPER_A4, path);
  else
    tr_window_show_error (self, error->message);
}

void
tr_window_export_paper (TrWindow   *self,
                        const char *name)
{
  const Paper *paper = find_paper (name);
  GFile *file = tr_document_get_file (self->document);
  g_autoptr (GFile) folder = file != NULL ? g_file_get_parent (file) : NULL;
  g_autofree char *file_name = g_strconcat (_(paper->file_name), ".pdf", NULL);

  tr_window_settle_focus (self);
  tr_window_ask_for_drawing_file (GTK_WINDOW (self), _(paper->title), folder, file_name, chosen_cb, (gpointer) paper);
}

/* To a printer ***************************************************************/

void
tr_window_print_paper (TrWindow   *self,
                       const char *name)
{
  tr_window_settle_focus (self);
  make (self, find_paper (name), tr_window_get_paper_size (), NULL);
}
