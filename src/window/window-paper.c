/* window-paper.c: bench cards to a file or a printer
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pages are drawn by paper/; here is only which doughs, which paper and
 * where to.
 */

#include "config.h"

#include "window-private.h"

#include <glib/gi18n-lib.h>

#include "../paper/paper.h"
#include "compat.h"

static TrPaperSize
get_paper_size (void)
{
  return g_strcmp0 (gtk_paper_size_get_default (), GTK_PAPER_NAME_LETTER) == 0 ? TR_PAPER_LETTER : TR_PAPER_A4;
}

static TrCards *
new_cards (TrWindow *self,
           gboolean  all)
{
  const TrFigures *figures = tr_document_get_figures (self->document);
  guint dough = (guint) MAX (self->dough_index, 0);

  return tr_cards_new (figures, all ? NULL : &dough, all ? 0 : 1, &self->reader, get_paper_size ());
}

gboolean
tr_window_export_cards (TrWindow  *self,
                        gboolean   all,
                        GFile     *file,
                        GError   **error)
{
  g_return_val_if_fail (TR_IS_WINDOW (self), FALSE);
  g_return_val_if_fail (G_IS_FILE (file), FALSE);

  g_autofree char *path = g_file_get_path (file);
  g_autoptr (TrCards) cards = NULL;

  if (path == NULL)
    {
      g_autofree char *name = g_file_get_parse_name (file);

      g_set_error (error, G_IO_ERROR, G_IO_ERROR_NOT_SUPPORTED,
                   _("“%s” is not on this computer's disks. Choose a folder that is."), name);
      return FALSE;
    }

  tr_window_settle_focus (self);
  cards = new_cards (self, all);

  return tr_cards_export (cards, path, error);
}

static void
export_chosen_cb (GObject      *source,
                  GAsyncResult *result,
                  gpointer      user_data)
{
  TrWindow *self = TR_WINDOW (source);
  g_autoptr (GFile) chosen = tr_compat_save_file_finish (result, NULL);
  g_autoptr (GFile) file = chosen != NULL ? tr_window_dup_suffixed (chosen, ".pdf") : NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *name = NULL;
  g_autofree char *sentence = NULL;

  if (file == NULL)
    return;

  if (!tr_window_export_cards (self, GPOINTER_TO_INT (user_data), file, &error))
    {
      tr_window_show_error (self, error->message);
      return;
    }

  name = g_file_get_basename (file);
  sentence = g_strdup_printf (GPOINTER_TO_INT (user_data) ? _("All bench cards are in “%s”.") : _("The bench card is in “%s”."), name);
  tr_notices_show (self->notices, "file", sentence, NULL, 0);
}

static char *
dup_card_name (TrWindow *self,
               gboolean  all)
{
  const TrDough *dough = tr_page_get_dough (TR_PAGE (tr_window_get_doughs (self)));
  g_autofree char *name = all || dough == NULL ? tr_document_dup_display_name (self->document) : g_strdup (dough->name);

  return g_strconcat (g_strdelimit (name, "/\\:", '-'), ".pdf", NULL);
}

void
tr_window_export (TrWindow *self,
                  gboolean  all)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();
  GFile *file = tr_document_get_file (self->document);
  g_autoptr (GFile) folder = file != NULL ? g_file_get_parent (file) : NULL;
  g_autofree char *name = NULL;

  tr_window_settle_focus (self);
  name = dup_card_name (self, all);
  gtk_file_filter_set_name (filter, _("PDF, PNG or SVG"));
  gtk_file_filter_add_suffix (filter, "pdf");
  gtk_file_filter_add_suffix (filter, "png");
  gtk_file_filter_add_suffix (filter, "svg");
  tr_compat_save_file_async (GTK_WINDOW (self), all ? _("Export all bench cards") : _("Export the bench card"),
                             filter, folder, name, tr_window_start_asking (self), export_chosen_cb, GINT_TO_POINTER (all));
}

static void
draw_page_cb (GtkPrintOperation *operation,
              GtkPrintContext   *context,
              int                page,
              const TrCards     *cards)
{
  tr_cards_draw_page (cards, (guint) page, gtk_print_context_get_cairo_context (context));
}

static GtkPageSetup *
new_page_setup (void)
{
  GtkPageSetup *setup = gtk_page_setup_new ();
  GtkPaperSize *size = gtk_paper_size_new (get_paper_size () == TR_PAPER_LETTER ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4);

  gtk_page_setup_set_paper_size_and_default_margins (setup, size);
  gtk_paper_size_free (size);

  return setup;
}

void
tr_window_print (TrWindow *self)
{
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = new_page_setup ();
  g_autoptr (TrCards) cards = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *name = dup_card_name (self, FALSE);

  tr_window_settle_focus (self);
  cards = new_cards (self, FALSE);
  /* The card keeps its own margins. */
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_job_name (operation, name);
  gtk_print_operation_set_n_pages (operation, (int) tr_cards_count_pages (cards));
  g_signal_connect (operation, "draw-page", G_CALLBACK (draw_page_cb), cards);
  if (gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, GTK_WINDOW (self), &error)
      == GTK_PRINT_OPERATION_RESULT_ERROR)
    tr_window_show_error (self, error->message);
}
