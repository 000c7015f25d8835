/* window-paper.c: papers to a file or a printer
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Here is only which doughs, which paper and where to: paper-job.c holds the
 * pages, print-dialog.c asks which cards, print-preview.c shows, print.c prints;
 * window-pages.c makes the papers that are not bench cards. What goes wrong is
 * said in the notice strip.
 */

#include "config.h"

#include "window-private.h"

#include <glib/gi18n-lib.h>

#include "compat.h"
#include "print-dialog.h"
#include "print-preview.h"
#include "print.h"

/* The cards that are meant ***************************************************/

TrPaperSize
tr_window_get_paper_size (void)
{
  g_auto (TrPrintMemory) memory = { NULL, NULL };

  tr_print_memory_init (&memory);
  return tr_print_memory_get_paper (&memory);
}

/* The current dough's card, or all. */
static TrPaperJob *
new_job (TrWindow *self,
         gboolean  all)
{
  const TrFigures *figures = tr_document_get_figures (self->document);
  guint dough = (guint) MAX (self->dough_index, 0);
  guint n_doughs = all ? figures->doughs->len : 1;
  g_autofree guint *doughs = g_new (guint, MAX (n_doughs, 1));
  g_autofree char *name = tr_document_dup_display_name (self->document);

  for (guint i = 0; i < n_doughs; i++)
    doughs[i] = all ? i : dough;

  return tr_paper_job_new_cards (figures, doughs, n_doughs, &self->reader, tr_window_get_paper_size (),
                                 all ? name : tr_trial_get_dough (figures->trial, dough)->name);
}

/* To a file ******************************************************************/

char *
tr_window_dup_drawing_path (GFile   *file,
                            GError **error)
{
  char *path = g_file_get_path (file);

  if (path == NULL)
    {
      g_autofree char *name = g_file_get_parse_name (file);

      g_set_error (error, G_IO_ERROR, G_IO_ERROR_NOT_SUPPORTED,
                   _("“%s” is not on this computer’s disks. Choose a folder that is."), name);
    }

  return path;
}

void
tr_window_ask_for_drawing_file (GtkWindow           *window,
                                const char          *title,
                                GFile               *folder,
                                const char          *name,
                                GAsyncReadyCallback  callback,
                                gpointer             user_data)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _("PDF, PNG or SVG"));
  gtk_file_filter_add_suffix (filter, "pdf");
  gtk_file_filter_add_suffix (filter, "png");
  gtk_file_filter_add_suffix (filter, "svg");
  tr_compat_save_file_async (window, title, filter, folder, name,
                             TR_IS_WINDOW (window) ? tr_window_start_asking (TR_WINDOW (window)) : NULL, callback, user_data);
}

static gboolean
export_job (TrPaperJob  *job,
            GFile       *file,
            GError     **error)
{
  g_autofree char *path = tr_window_dup_drawing_path (file, error);

  return path != NULL && tr_pages_export (tr_paper_job_get_pages (job), path, error);
}

gboolean
tr_window_export_cards (TrWindow  *self,
                        gboolean   all,
                        GFile     *file,
                        GError   **error)
{
  g_return_val_if_fail (TR_IS_WINDOW (self), FALSE);
  g_return_val_if_fail (G_IS_FILE (file), FALSE);

  g_autoptr (TrPaperJob) job = NULL;

  tr_window_settle_focus (self);
  job = new_job (self, all);

  return export_job (job, file, error);
}

static char *
dup_where_it_is (TrPaperJob *job,
                 const char *name)
{
  guint n_cards = tr_paper_job_count_doughs (job);

  if (tr_paper_job_get_kind (job) != TR_PAPER_KIND_CARDS)
    return g_strdup_printf (_("“%s” is written."), name);
  if (n_cards == 1)
    return g_strdup_printf (_("The bench card is in “%s”."), name);

  return g_strdup_printf (ngettext ("%u bench card is in “%s”.", "%u bench cards are in “%s”.", n_cards), n_cards, name);
}

void
tr_window_tell_exported (TrWindow   *self,
                         TrPaperJob *job,
                         const char *path)
{
  g_autofree char *name = g_path_get_basename (path);
  g_autofree char *sentence = dup_where_it_is (job, name);

  tr_notices_show (self->notices, "file", sentence, NULL, 0);
}

static void
export_chosen_cb (GObject      *source,
                  GAsyncResult *result,
                  gpointer      user_data)
{
  TrWindow *self = TR_WINDOW (source);
  g_autoptr (TrPaperJob) job = user_data;
  g_autoptr (GFile) chosen = tr_compat_save_file_finish (result, NULL);
  g_autoptr (GFile) file = chosen != NULL ? tr_window_dup_suffixed (chosen, ".pdf") : NULL;
  g_autoptr (GError) error = NULL;

  if (file == NULL)
    return;

  if (export_job (job, file, &error))
    tr_window_tell_exported (self, job, g_file_peek_path (file));
  else
    tr_window_show_error (self, error->message);
}

static const char *
get_export_title (TrPaperJob *job)
{
  if (tr_paper_job_get_kind (job) != TR_PAPER_KIND_CARDS)
    return tr_window_get_paper_title (tr_paper_job_get_kind (job));

  return tr_paper_job_count_doughs (job) > 1 ? _("Export bench cards") : _("Export the bench card");
}

/* Takes the job. */
static void
ask_where_to_export (TrWindow   *self,
                     TrPaperJob *job)
{
  GFile *file = tr_document_get_file (self->document);
  g_autoptr (GFile) folder = file != NULL ? g_file_get_parent (file) : NULL;
  g_autofree char *name = g_strconcat (tr_paper_job_get_name (job), ".pdf", NULL);

  tr_window_ask_for_drawing_file (GTK_WINDOW (self), get_export_title (job), folder, name, export_chosen_cb, job);
}

void
tr_window_export (TrWindow *self,
                  gboolean  all)
{
  tr_window_settle_focus (self);
  ask_where_to_export (self, new_job (self, all));
}

/* To a printer ***************************************************************/

static void
printed_cb (TrWindow                *self,
            GtkPrintOperationResult  result,
            GtkPrintOperation       *operation)
{
  g_auto (TrPrintMemory) memory = { NULL, NULL };
  g_autoptr (GError) error = NULL;

  if (result == GTK_PRINT_OPERATION_RESULT_ERROR)
    {
      gtk_print_operation_get_error (operation, &error);
      tr_window_show_error (self, error != NULL ? error->message : _("The pages could not be printed."));
    }
  else if (result == GTK_PRINT_OPERATION_RESULT_APPLY)
    {
      tr_print_memory_init (&memory);
      tr_print_memory_learn (&memory, operation);
    }
}

void
tr_window_watch_print (TrWindow          *self,
                       GtkPrintOperation *operation)
{
  g_signal_connect_object (operation, "done", G_CALLBACK (printed_cb), self, G_CONNECT_SWAPPED);
}

/* The paper of the job goes before the one that is remembered. TRUE: it is another. */
static gboolean
init_memory_for (TrPrintMemory *memory,
                 TrPaperJob    *job)
{
  tr_print_memory_init (memory);
  if (tr_print_memory_get_paper (memory) == tr_paper_job_get_paper (job))
    return FALSE;

  tr_print_memory_set_paper (memory, tr_paper_job_get_paper (job));

  return TRUE;
}

static void show_preview (TrPaperJob *job, GObject *owner);

void
tr_window_print_job (TrWindow   *self,
                     TrPaperJob *job)
{
  g_auto (TrPrintMemory) memory = { NULL, NULL };
  g_autoptr (GtkPrintOperation) operation = NULL;
  g_autoptr (GError) error = NULL;

  init_memory_for (&memory, job);
  operation = tr_print_operation_new (job, &memory, show_preview, G_OBJECT (self));
  gtk_print_operation_set_allow_async (operation, TRUE);
  tr_window_watch_print (self, operation);
  /* It keeps itself until it is done, and says in "done" what went wrong once it has begun. */
  if (gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, GTK_WINDOW (self), &error)
      == GTK_PRINT_OPERATION_RESULT_ERROR)
    tr_window_show_error (self, error->message);
}

static void
print_from_preview_cb (TrWindow       *self,
                       TrPrintPreview *preview)
{
  tr_window_print_job (self, tr_print_preview_get_job (preview));
}

static void
export_from_preview_cb (TrWindow       *self,
                        TrPrintPreview *preview)
{
  ask_where_to_export (self, tr_paper_job_ref (tr_print_preview_get_job (preview)));
}

static void
show_preview (TrPaperJob *job,
              GObject    *owner)
{
  TrWindow *self = TR_WINDOW (owner);
  GtkWidget *preview = tr_print_preview_new (GTK_WINDOW (self), job);

  g_signal_connect_object (preview, "print", G_CALLBACK (print_from_preview_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (preview, "export", G_CALLBACK (export_from_preview_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (preview));
}

static void
way_chosen_cb (TrWindow      *self,
               int            way,
               TrPrintDialog *dialog)
{
  g_autoptr (TrPaperJob) job = tr_print_dialog_new_job (dialog);
  g_auto (TrPrintMemory) memory = { NULL, NULL };

  g_return_if_fail (job != NULL);

  /* The paper chosen here is where the next choice begins. */
  if (init_memory_for (&memory, job))
    tr_print_memory_save (&memory);
  if (way == TR_PRINT_WAY_PREVIEW)
    show_preview (job, G_OBJECT (self));
  else if (way == TR_PRINT_WAY_PRINT)
    tr_window_print_job (self, job);
  else
    ask_where_to_export (self, g_steal_pointer (&job));
}

void
tr_window_print (TrWindow *self)
{
  g_autofree char *name = tr_document_dup_display_name (self->document);
  GtkWidget *dialog;

  tr_window_settle_focus (self);
  dialog = tr_print_dialog_new (GTK_WINDOW (self), tr_document_get_figures (self->document), (guint) MAX (self->dough_index, 0),
                                &self->reader, tr_window_get_paper_size (), name);
  g_signal_connect_object (dialog, "chosen", G_CALLBACK (way_chosen_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}
