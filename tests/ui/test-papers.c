/* test-papers.c: the papers of the whole trial go to a printer as they go to a file
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GTK's own dialog is answered as the reader would, with "Print to File" for a
 * printer. What comes out is read by a program that is not ours (poppler's
 * pdftotext) and held against what the export writes.
 */

#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "calc/scores.h"
#include "support.h"
#include "window/actions.h"
#include "window/print-preview.h"
#include "window/print.h"
#include "window/tasting-result.h"
#include "window/window-private.h"

typedef struct {
  const char *name;              /* of the action, after "win.print-" */
  TrPaperKind kind;
  const char *says;
} Row;

static const Row rows[] = {
  { "comparison", TR_PAPER_KIND_COMPARISON, "Doughs compared" },
  { "score-sheets", TR_PAPER_KIND_SCORE_SHEETS, "Score sheet:" },
  { "code-labels", TR_PAPER_KIND_CODE_LABELS, "Labels to cut out" },
  { "tasting-key", TR_PAPER_KIND_TASTING_KEY, "Key: which code is which dough" },
  { "tasting-result", TR_PAPER_KIND_TASTING_RESULT, "How the tasting came out" },
};

/* A tasting that is over ***************************************************/

static void
press (UiFixture  *fixture,
       const char *label)
{
  GtkWidget *button = ui_find (GTK_WIDGET (fixture->window), GTK_TYPE_BUTTON, label);

  if (button == NULL)
    g_error ("there is no %s", label);
  g_signal_emit_by_name (button, "clicked");
  ui_frames (GTK_WIDGET (fixture->window), 2);
}

static void
score_all (TrDocument *document)
{
  TrTrial *draft = tr_document_draft (document);
  g_autoptr (GError) error = NULL;

  for (guint taster = 0; taster < draft->tasting->tasters->len; taster++)
    for (guint i = 0; i < draft->doughs->len; i++)
      {
        const TrTaster *who = g_ptr_array_index (draft->tasting->tasters, taster);
        TrScore *score = tr_tasting_need_score (draft->tasting, who->id, tr_trial_get_dough (draft, i)->id);

        score->look = score->layers = score->eating = 5 + (int) i % 3;
      }
  tr_document_commit (document, draft, "score", NULL, "/tasting/scores", &error);
  g_assert_no_error (error);
}

static void
set_up_tasting (UiFixture *fixture,
                gboolean   is_scored)
{
  ui_act (fixture->window, "win.go-tasting");
  ui_frames (GTK_WIDGET (fixture->window), 3);
  press (fixture, "Give codes to all");
  press (fixture, "Add a taster");
  press (fixture, "Add a taster");
  if (is_scored)
    score_all (tr_window_get_document (fixture->window));
  ui_frames (GTK_WIDGET (fixture->window), 2);
}

static TrPaperJob *
new_job (UiFixture   *fixture,
         TrPaperKind  kind,
         TrPaperSize  size)
{
  TrPaperJob *job;
  TrReader reader;
  g_autoptr (GError) error = NULL;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  job = tr_paper_job_new (kind, tr_document_get_figures (tr_window_get_document (fixture->window)), &reader, size, "a/b", &error);
  g_assert_no_error (error);

  return job;
}

/* What is on paper *********************************************************/

static gboolean
has_poppler (void)
{
  g_autofree char *program = g_find_program_in_path ("pdftotext");

  if (program == NULL)
    g_test_skip ("pdftotext is not installed");

  return program != NULL;
}

static char *
dup_output (const char *const *arguments)
{
  char *text = NULL;
  g_autoptr (GError) error = NULL;
  int status;

  g_spawn_sync (NULL, (char **) arguments, NULL, G_SPAWN_SEARCH_PATH | G_SPAWN_STDERR_TO_DEV_NULL, NULL, NULL, &text, NULL, &status, &error);
  g_assert_no_error (error);
  g_assert_cmpint (status, ==, 0);

  return text;
}

/* With a form feed after every page. */
static char *
dup_text (const char *path)
{
  const char *arguments[] = { "pdftotext", "-layout", path, "-", NULL };

  return dup_output (arguments);
}

static void
assert_page_size (const char *path,
                  const char *size)
{
  const char *arguments[] = { "pdfinfo", path, NULL };
  g_autofree char *info = dup_output (arguments);

  if (strstr (info, size) == NULL)
    g_error ("the pages are not %s: %s", size, info);
}

static char *
dup_exported_text (TrPaperJob *job,
                   const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "exported.pdf", NULL);
  g_autoptr (GError) error = NULL;

  tr_pages_export (tr_paper_job_get_pages (job), path, &error);
  g_assert_no_error (error);

  return dup_text (path);
}

static void
remove_folder (const char *folder)
{
  g_autoptr (GDir) entries = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (entries)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      g_unlink (path);
    }
  g_rmdir (folder);
}

/* Asked for on A4, and the printer's dialog ended with either paper. */
static void
test_printed_is_what_is_exported (UiFixture     *fixture,
                                  gconstpointer  data)
{
  static const struct { TrPaperSize size; const char *points; } papers[] = {
    { TR_PAPER_A4, "595.276 x 841.89 pts" },       /* ISO 216 */
    { TR_PAPER_LETTER, "612 x 792 pts" },          /* ANSI A */
  };
  g_autofree char *folder = g_dir_make_tmp ("tourier-papers-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "printed.pdf", NULL);

  if (!has_poppler ())
    return;

  set_up_tasting (fixture, TRUE);
  for (guint i = 0; i < G_N_ELEMENTS (rows) * G_N_ELEMENTS (papers); i++)
    {
      const Row *row = &rows[i / G_N_ELEMENTS (papers)];
      TrPaperSize size = papers[i % G_N_ELEMENTS (papers)].size;
      g_autoptr (TrPaperJob) asked = new_job (fixture, row->kind, TR_PAPER_A4);
      g_autoptr (TrPaperJob) expected = new_job (fixture, row->kind, size);
      g_auto (TrPrintMemory) memory = { NULL, NULL };
      g_autoptr (GtkPrintOperation) operation = NULL;
      g_autoptr (GError) error = NULL;

      g_test_message ("%s", row->name);
      tr_print_memory_init (&memory);
      tr_print_memory_set_paper (&memory, size);
      operation = tr_print_operation_new (asked, &memory, NULL, NULL);
      gtk_print_operation_set_export_filename (operation, path);
      g_assert_cmpint (gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT, NULL, &error), ==,
                       GTK_PRINT_OPERATION_RESULT_APPLY);
      g_assert_no_error (error);

      g_autofree char *printed = dup_text (path), *exported = dup_exported_text (expected, folder);

      g_assert_nonnull (strstr (printed, row->says));
      g_assert_cmpstr (printed, ==, exported);
      assert_page_size (path, papers[i % G_N_ELEMENTS (papers)].points);
    }
  remove_folder (folder);
}

/* The way there; the windows are NULL while there is none *******************/

static GtkWidget *
get_printer_dialog (TrWindow *window)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWindow) toplevel = g_list_model_get_item (toplevels, i);

      if (g_str_equal (G_OBJECT_TYPE_NAME (toplevel), "GtkPrintUnixDialog") && gtk_widget_get_visible (GTK_WIDGET (toplevel))
          && gtk_window_get_transient_for (toplevel) == GTK_WINDOW (window))
        return GTK_WIDGET (toplevel);
    }

  return NULL;
}

static TrPrintPreview *
get_preview (void)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWindow) toplevel = g_list_model_get_item (toplevels, i);

      if (TR_IS_PRINT_PREVIEW (toplevel) && gtk_widget_get_visible (GTK_WIDGET (toplevel)))
        return TR_PRINT_PREVIEW (toplevel);
    }

  return NULL;
}

/* Printers are listed a while after the dialog is there. */
static gboolean
is_printer_chosen (gpointer window)
{
  GtkWidget *dialog = get_printer_dialog (window);
  g_autoptr (GObject) printer = NULL;

  if (dialog != NULL)
    g_object_get (dialog, "selected-printer", &printer, NULL);

  return printer != NULL;
}

static void
answer_printer_dialog (TrWindow *window,
                       int       response)
{
  g_assert_true (ui_wait_until (is_printer_chosen, window, 20000));
  g_signal_emit_by_name (get_printer_dialog (window), "response", response);
}

static gboolean
has_preview (gpointer unused)
{
  return get_preview () != NULL;
}

static gboolean
is_whole_pdf (gpointer path)
{
  g_autofree char *text = NULL;
  gsize length;

  return g_file_get_contents (path, &text, &length, NULL) && g_strstr_len (text + MAX (length, 16) - 16, 16, "%%EOF") != NULL;
}

static gboolean
has_notice (gpointer window)
{
  return tr_window_get_notice (window, "file") != NULL;
}

/* As after a print to that file. */
static void
remember_file (const char  *path,
               TrPaperSize  size)
{
  g_auto (TrPrintMemory) memory = { NULL, NULL };
  g_autofree char *uri = g_filename_to_uri (path, NULL, NULL);

  tr_print_memory_init (&memory);
  tr_print_memory_set_paper (&memory, size);
  gtk_print_settings_set_printer (memory.settings, "Print to File");
  gtk_print_settings_set (memory.settings, GTK_PRINT_SETTINGS_OUTPUT_URI, uri);
  gtk_print_settings_set (memory.settings, GTK_PRINT_SETTINGS_OUTPUT_FILE_FORMAT, "pdf");
  tr_print_memory_save (&memory);
}

static void
test_action_prints_on_what_is_remembered (UiFixture     *fixture,
                                          gconstpointer  data)
{
  g_autofree char *folder = g_dir_make_tmp ("tourier-papers-XXXXXX", NULL);

  if (!has_poppler ())
    return;

  set_up_tasting (fixture, TRUE);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *action = g_strconcat ("win.print-", rows[i].name, NULL);
      g_autofree char *file = g_strconcat (rows[i].name, ".pdf", NULL);
      g_autofree char *path = g_build_filename (folder, file, NULL);
      g_autofree char *text = NULL;

      g_test_message ("%s", action);
      remember_file (path, TR_PAPER_LETTER);
      ui_act (fixture->window, action);
      answer_printer_dialog (fixture->window, GTK_RESPONSE_OK);
      g_assert_true (ui_wait_until (is_whole_pdf, path, 20000));
      text = dup_text (path);
      g_assert_nonnull (strstr (text, rows[i].says));
      assert_page_size (path, "612 x 792 pts");
      ui_settle ();
    }
  g_assert_null (tr_window_get_notice (fixture->window, "file"));
  remove_folder (folder);
}

static void
test_preview_is_ours_and_prints_and_exports (UiFixture     *fixture,
                                             gconstpointer  data)
{
  g_autofree char *folder = g_dir_make_tmp ("tourier-papers-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "printed.pdf", NULL);
  g_autofree char *exported = g_build_filename (folder, "labels.pdf", NULL);
  g_autoptr (TrPaperJob) labels = NULL;

  set_up_tasting (fixture, FALSE);
  labels = new_job (fixture, TR_PAPER_KIND_CODE_LABELS, TR_PAPER_A4);
  remember_file (path, TR_PAPER_A4);
  ui_act (fixture->window, "win.print-code-labels");
  answer_printer_dialog (fixture->window, GTK_RESPONSE_APPLY);
  g_assert_true (ui_wait_until (has_preview, NULL, 10000));
  g_assert_cmpint (tr_paper_job_get_kind (tr_print_preview_get_job (get_preview ())), ==, TR_PAPER_KIND_CODE_LABELS);
  g_assert_cmpuint (tr_print_preview_count_pages (get_preview ()), ==, tr_pages_count (tr_paper_job_get_pages (labels)));
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));

  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (get_preview ()), "preview.print", NULL));
  answer_printer_dialog (fixture->window, GTK_RESPONSE_APPLY);
  g_assert_true (ui_wait_until (has_preview, NULL, 10000));
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (get_preview ()), "preview.export", NULL));
  ui_settle ();
  ui_choose (fixture->window, folder, "labels");
  g_assert_cmpstr (tr_window_get_notice (fixture->window, "file"), ==, "“labels.pdf” is written.");
  g_assert_true (is_whole_pdf (exported));
  remove_folder (folder);
}

/* Who still tastes sees nothing: no preview opens by itself, and the page stays covered. */
static void
test_printing_leaves_the_result_covered (UiFixture     *fixture,
                                         gconstpointer  data)
{
  g_autofree char *folder = g_dir_make_tmp ("tourier-papers-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "result.pdf", NULL);
  GtkWidget *result;

  set_up_tasting (fixture, TRUE);
  result = ui_find_type (GTK_WIDGET (fixture->window), TR_TYPE_TASTING_RESULT);
  remember_file (path, TR_PAPER_A4);
  press (fixture, "Print the result of the tasting…");
  answer_printer_dialog (fixture->window, GTK_RESPONSE_OK);
  g_assert_true (ui_wait_until (is_whole_pdf, path, 20000));
  ui_settle ();
  g_assert_null (get_preview ());
  g_assert_false (gtk_widget_get_mapped (result));
  g_assert_nonnull (ui_find (GTK_WIDGET (fixture->window), GTK_TYPE_TOGGLE_BUTTON, "Show the result"));
  remove_folder (folder);
}

static void
test_no_result_is_said (UiFixture     *fixture,
                        gconstpointer  data)
{
  set_up_tasting (fixture, FALSE);
  ui_act (fixture->window, "win.print-tasting-result");
  g_assert_true (ui_wait_until (has_notice, fixture->window, 10000));
  g_assert_cmpstr (tr_window_get_notice (fixture->window, "file"), ==,
                   "Nobody has scored anything yet, so that there is no result to print.");
  g_assert_null (get_printer_dialog (fixture->window));
}

/* What can be exported can be printed, from the menu and, on the Tasting page, from the button beside. */
static void
test_every_export_has_its_print (UiFixture     *fixture,
                                 gconstpointer  data)
{
  set_up_tasting (fixture, FALSE);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *export_name = g_strconcat ("win.export-", rows[i].name, NULL);
      g_autofree char *print_name = g_strconcat ("win.print-", rows[i].name, NULL);
      const TrAction *export_action = tr_actions_find (export_name), *print_action = tr_actions_find (print_name);
      GtkWidget *export_button, *print_button;

      g_assert_nonnull (export_action);
      g_assert_nonnull (print_action);
      g_assert_cmpint (print_action->menu, ==, TR_MENU_PRINT);
      export_button = ui_find (GTK_WIDGET (fixture->window), GTK_TYPE_BUTTON, export_action->label);
      print_button = ui_find (GTK_WIDGET (fixture->window), GTK_TYPE_BUTTON, print_action->label);
      g_assert_cmpint (export_button != NULL, ==, rows[i].kind != TR_PAPER_KIND_COMPARISON);
      g_assert_true (export_button == NULL ? print_button == NULL : gtk_widget_get_next_sibling (export_button) == print_button);
    }
}

/* A button is as sensitive as its action. */
static gboolean
is_enabled (TrWindow   *window,
            const char *action)
{
  GtkWidget *button = gtk_button_new ();
  gboolean is_sensitive;

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_widget_insert_before (button, GTK_WIDGET (window), NULL);
  is_sensitive = gtk_widget_get_sensitive (button);
  gtk_widget_unparent (button);

  return is_sensitive;
}

static void
test_no_dough_no_paper (UiFixture     *fixture,
                        gconstpointer  data)
{
  g_autoptr (TrDocument) empty = tr_document_new ();

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *action = g_strconcat ("win.print-", rows[i].name, NULL);

      g_assert_true (is_enabled (fixture->window, action));
    }
  tr_window_set_document (fixture->window, empty);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *action = g_strconcat ("win.print-", rows[i].name, NULL);

      g_assert_false (is_enabled (fixture->window, action));
    }
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  UI_ADD ("/papers/printed-is-what-is-exported", test_printed_is_what_is_exported);
  UI_ADD ("/papers/action-prints-on-what-is-remembered", test_action_prints_on_what_is_remembered);
  UI_ADD ("/papers/preview-is-ours-and-prints-and-exports", test_preview_is_ours_and_prints_and_exports);
  UI_ADD ("/papers/printing-leaves-the-result-covered", test_printing_leaves_the_result_covered);
  UI_ADD ("/papers/no-result-is-said", test_no_result_is_said);
  UI_ADD ("/papers/every-export-has-its-print", test_every_export_has_its_print);
  UI_ADD ("/papers/no-dough-no-paper", test_no_dough_no_paper);

  return ui_run ();
}
