/* window-pages.c: the papers of the whole trial, to a file
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The comparison, and what a tasting needs. Where to is asked first; the pages are
 * made afterwards, the result's on another thread since its probabilities can
 * take a while.
 */

#include "config.h"

#include "window-private.h"

#include <glib/gi18n-lib.h>

#include "../paper/paper.h"
#include "compat.h"

typedef struct {
  const char *name;              /* of the action: "win.export-NAME" */
  const char *title;
  const char *file_name;         /* without suffix */
  TrPages *(*make) (const TrFigures *figures, const TrReader *reader, TrPaperSize size);   /* NULL: the result */
} Paper;

static TrPages *
make_comparison (const TrFigures *figures,
                 const TrReader  *reader,
                 TrPaperSize      size)
{
  return tr_comparison_new (figures, NULL, 0, reader, size);
}

static const Paper papers[] = {
  { "export-comparison", N_("Export the comparison"), N_("comparison"), make_comparison },
  { "export-score-sheets", N_("Export score sheets"), N_("score sheets"), tr_score_sheets_new },
  { "export-code-labels", N_("Export code labels"), N_("code labels"), tr_code_labels_new },
  { "export-tasting-key", N_("Export the key of the tasting"), N_("key of the tasting"), tr_tasting_key_new },
  { "export-tasting-result", N_("Export the result of the tasting"), N_("result of the tasting"), NULL },
};

typedef struct {
  TrWindow *window;              /* the task's source keeps it */
  const Paper *paper;
  TrFigures *figures;
  TrReader reader;
  TrPaperSize size;
  char *path;
} Export;

static void
export_free (gpointer data)
{
  Export *export = data;

  tr_figures_unref (export->figures);
  g_free (export->path);
  g_free (export);
}

static TrPages *
make_pages (Export  *export,
            GError **error)
{
  g_autoptr (TrTastingFigures) tasting = NULL;

  if (export->paper->make != NULL)
    return export->paper->make (export->figures, &export->reader, export->size);

  tasting = tr_tasting_compute (export->figures, NULL);
  if (tasting != NULL)
    return tr_result_paper_new (export->figures, tasting, &export->reader, export->size);

  g_set_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND, _("Nobody has scored anything yet, so that there is no result to print."));

  return NULL;
}

static void
export_in_thread (GTask        *task,
                  gpointer      source,
                  gpointer      data,
                  GCancellable *cancellable)
{
  Export *export = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (TrPages) pages = make_pages (export, &error);

  if (pages != NULL && tr_pages_export (pages, export->path, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, g_steal_pointer (&error));
}

static void
exported_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      data)
{
  TrWindow *self = TR_WINDOW (source);
  Export *export = g_task_get_task_data (G_TASK (result));
  g_autofree char *name = g_path_get_basename (export->path);
  g_autoptr (GError) error = NULL;

  if (self->notices == NULL)     /* closed meanwhile */
    return;
  if (!g_task_propagate_boolean (G_TASK (result), &error))
    {
      tr_window_show_error (self, error->message);
      return;
    }

  g_autofree char *sentence = g_strdup_printf (_("“%s” is written."), name);

  tr_notices_show (self->notices, "file", sentence, NULL, 0);
}

void
tr_window_export_paper_to (TrWindow   *self,
                           const char *name,
                           GFile      *file)
{
  g_return_if_fail (TR_IS_WINDOW (self));

  g_autoptr (GError) error = NULL;
  g_autoptr (GTask) task = NULL;
  g_autofree char *path = tr_window_dup_drawing_path (file, &error);
  Export *export;

  if (path == NULL)
    {
      tr_window_show_error (self, error->message);
      return;
    }

  export = g_new0 (Export, 1);
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    if (g_str_equal (papers[i].name, name))
      export->paper = &papers[i];
  g_return_if_fail (export->paper != NULL);
  export->figures = tr_figures_ref (tr_document_get_figures (self->document));
  export->reader = self->reader;
  export->size = self->reader.units == TR_UNITS_US ? TR_PAPER_LETTER : TR_PAPER_A4;
  export->path = g_steal_pointer (&path);
  task = g_task_new (self, NULL, exported_cb, NULL);
  g_task_set_task_data (task, export, export_free);
  g_task_run_in_thread (task, export_in_thread);
}

static void
chosen_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (GFile) chosen = tr_compat_save_file_finish (result, NULL);
  g_autoptr (GFile) file = chosen != NULL ? tr_window_dup_suffixed (chosen, ".pdf") : NULL;

  if (file != NULL)
    tr_window_export_paper_to (TR_WINDOW (source), ((const Paper *) data)->name, file);
}

void
tr_window_export_paper (TrWindow   *self,
                        const char *name)
{
  GFile *file = tr_document_get_file (self->document);
  g_autoptr (GFile) folder = file != NULL ? g_file_get_parent (file) : NULL;

  tr_window_settle_focus (self);
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    if (g_str_equal (papers[i].name, name))
      {
        g_autofree char *file_name = g_strconcat (_(papers[i].file_name), ".pdf", NULL);

        tr_window_ask_for_drawing_file (GTK_WINDOW (self), _(papers[i].title), folder, file_name, chosen_cb, (gpointer) &papers[i]);
      }
}
