/* test-print.c: which cards go to paper, what the preview shows, what is remembered
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The print operation is run for real, to a file. What comes out is measured by
 * a program that is not ours (poppler's pdfinfo).
 */

#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "support.h"
#include "window/page-sheet.h"
#include "window/preferences-window.h"
#include "window/print-dialog.h"
#include "window/print-preview.h"
#include "window/print.h"
#include "window/window-private.h"

static const TrFigures *
get_figures (UiFixture *fixture)
{
  return tr_document_get_figures (tr_window_get_document (fixture->window));
}

/* (transfer none) The window of that type that is open, NULL: none. */
static gpointer
get_open (GType type)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWidget) toplevel = g_list_model_get_item (toplevels, i);

      if (G_TYPE_CHECK_INSTANCE_TYPE (toplevel, type) && gtk_widget_get_visible (toplevel))
        return toplevel;
    }

  return NULL;
}

static gboolean
is_open (gpointer data)
{
  return get_open (*(GType *) data) != NULL;
}

static gpointer
wait_for (GType type)
{
  g_assert_true (ui_wait_until (is_open, &type, 10000));
  ui_frames (get_open (type), 2);

  return get_open (type);
}

static TrPaperJob *
new_job (UiFixture   *fixture,
         guint        n_doughs,
         TrPaperSize  size)
{
  static const guint doughs[] = { 0, 1, 2, 3 };
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);

  return tr_paper_job_new_cards (get_figures (fixture), doughs, n_doughs, &reader, size, "Quay/kitchen");
}

/* The dialog *****************************************************************/

static TrPrintDialog *
open_dialog (UiFixture *fixture)
{
  ui_act (fixture->window, "win.print-card");

  return wait_for (TR_TYPE_PRINT_DIALOG);
}

static void
click (GtkWidget  *root,
       const char *label)
{
  GtkWidget *button = ui_find (root, GTK_TYPE_BUTTON, label);

  g_assert_nonnull (button);
  g_assert_true (gtk_widget_is_sensitive (button));
  g_signal_emit_by_name (button, "clicked");
  ui_settle ();
}

static guint
count_chosen (TrPrintDialog *dialog)
{
  g_autoptr (TrPaperJob) job = tr_print_dialog_new_job (dialog);

  return job != NULL ? tr_paper_job_count_doughs (job) : 0;
}

static void
test_dialog_chooses_doughs (UiFixture     *fixture,
                            gconstpointer  data)
{
  TrPrintDialog *dialog = open_dialog (fixture);
  guint n_doughs = get_figures (fixture)->doughs->len;
  g_autoptr (TrPaperJob) one = tr_print_dialog_new_job (dialog);

  g_assert_cmpuint (n_doughs, ==, 4);
  g_assert_cmpuint (tr_paper_job_count_doughs (one), ==, 1);
  g_assert_cmpstr (tr_paper_job_get_name (one), ==, tr_trial_get_dough (ui_get_trial (fixture->window), 0)->name);
  click (GTK_WIDGET (dialog), "All doughs");
  g_assert_cmpuint (count_chosen (dialog), ==, n_doughs);
  tr_print_dialog_set_dough (dialog, 1, FALSE);
  g_assert_cmpuint (count_chosen (dialog), ==, n_doughs - 1);
  click (GTK_WIDGET (dialog), "This dough");
  g_assert_cmpuint (count_chosen (dialog), ==, 1);
  gtk_window_destroy (GTK_WINDOW (dialog));
}

static void
test_nothing_ticked_offers_nothing (UiFixture     *fixture,
                                    gconstpointer  data)
{
  TrPrintDialog *dialog = open_dialog (fixture);
  static const char *const ways[] = { "Preview", "Print…", "Export…" };

  tr_print_dialog_set_dough (dialog, 0, FALSE);
  g_assert_null (tr_print_dialog_new_job (dialog));
  for (guint i = 0; i < G_N_ELEMENTS (ways); i++)
    g_assert_false (gtk_widget_is_sensitive (ui_find (GTK_WIDGET (dialog), GTK_TYPE_BUTTON, ways[i])));
  tr_print_dialog_set_dough (dialog, 2, TRUE);
  for (guint i = 0; i < G_N_ELEMENTS (ways); i++)
    g_assert_true (gtk_widget_is_sensitive (ui_find (GTK_WIDGET (dialog), GTK_TYPE_BUTTON, ways[i])));
  gtk_window_destroy (GTK_WINDOW (dialog));
}

/* The preview ****************************************************************/

static void
test_preview_shows_every_page (UiFixture     *fixture,
                               gconstpointer  data)
{
  TrPrintDialog *dialog = open_dialog (fixture);
  g_autoptr (TrPaperJob) job = NULL;
  TrPrintPreview *preview;
  guint n_pages;

  click (GTK_WIDGET (dialog), "All doughs");
  job = tr_print_dialog_new_job (dialog);
  n_pages = tr_pages_count (tr_paper_job_get_pages (job));
  click (GTK_WIDGET (dialog), "Preview");
  g_assert_null (get_open (TR_TYPE_PRINT_DIALOG));

  preview = wait_for (TR_TYPE_PRINT_PREVIEW);
  g_assert_cmpuint (n_pages, >=, 4);
  g_assert_cmpuint (tr_print_preview_count_pages (preview), ==, n_pages);
  g_assert_cmpuint (ui_count_type (GTK_WIDGET (preview), TR_TYPE_PAGE_SHEET), ==, n_pages);
  g_assert_nonnull (ui_find (GTK_WIDGET (preview), TR_TYPE_PAGE_SHEET, "Page 1 of 4"));
  gtk_window_destroy (GTK_WINDOW (preview));
}

static TrPrintPreview *
open_preview (UiFixture *fixture,
              guint      n_doughs)
{
  g_autoptr (TrPaperJob) job = new_job (fixture, n_doughs, TR_PAPER_A4);
  GtkWidget *preview = tr_print_preview_new (GTK_WINDOW (fixture->window), job);

  gtk_window_present (GTK_WINDOW (preview));
  ui_frames (preview, 3);

  return TR_PRINT_PREVIEW (preview);
}

static void
act (TrPrintPreview *preview,
     const char     *action)
{
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (preview), action, NULL));
  ui_frames (GTK_WIDGET (preview), 3);
}

static void
test_preview_goes_by_pages (UiFixture     *fixture,
                            gconstpointer  data)
{
  TrPrintPreview *preview = open_preview (fixture, 4);

  g_assert_cmpuint (tr_print_preview_get_page (preview), ==, 0);
  act (preview, "preview.next-page");
  g_assert_cmpuint (tr_print_preview_get_page (preview), ==, 1);
  act (preview, "preview.last-page");
  g_assert_cmpuint (tr_print_preview_get_page (preview), ==, 3);
  act (preview, "preview.previous-page");
  act (preview, "preview.previous-page");
  g_assert_cmpuint (tr_print_preview_get_page (preview), <, 3);
  act (preview, "preview.first-page");
  g_assert_cmpuint (tr_print_preview_get_page (preview), ==, 0);
  g_assert_nonnull (ui_find (GTK_WIDGET (preview), GTK_TYPE_LABEL, "Page 1 of 4"));
  gtk_window_destroy (GTK_WINDOW (preview));
}

static void
test_preview_zooms (UiFixture     *fixture,
                    gconstpointer  data)
{
  TrPrintPreview *preview = open_preview (fixture, 1);
  GtkWidget *page = ui_find_type (GTK_WIDGET (preview), TR_TYPE_PAGE_SHEET);
  int to_width = gtk_widget_get_width (page);

  /* As wide as the window lets it, and of the paper's shape: ISO 216 A4. */
  g_assert_cmpint (to_width, >, gtk_widget_get_width (GTK_WIDGET (preview)) - 60);
  g_assert_cmpfloat_with_epsilon ((double) gtk_widget_get_height (page) / to_width, 297.0 / 210, 0.005);
  act (preview, "preview.zoom-in");
  g_assert_cmpint (gtk_widget_get_width (page), >, to_width);
  act (preview, "preview.zoom-out");
  act (preview, "preview.zoom-out");
  g_assert_cmpint (gtk_widget_get_width (page), <, to_width);
  act (preview, "preview.zoom-to-width");
  g_assert_cmpint (gtk_widget_get_width (page), ==, to_width);
  gtk_window_destroy (GTK_WINDOW (preview));
}

static void
noted_cb (gboolean *was_asked)
{
  *was_asked = TRUE;
}

static void
test_preview_asks_for_print_and_export (UiFixture     *fixture,
                                        gconstpointer  unused)
{
  static const char *const signals[] = { "print", "export" };

  for (guint i = 0; i < G_N_ELEMENTS (signals); i++)
    {
      TrPrintPreview *preview = open_preview (fixture, 1);
      g_autofree char *action = g_strconcat ("preview.", signals[i], NULL);
      gboolean was_asked = FALSE;

      g_object_add_weak_pointer (G_OBJECT (preview), (gpointer *) &preview);
      g_signal_connect_swapped (preview, signals[i], G_CALLBACK (noted_cb), &was_asked);
      g_assert_true (gtk_widget_activate_action (GTK_WIDGET (preview), action, NULL));
      ui_settle ();
      g_assert_true (was_asked);
      g_assert_null (preview);
    }
}

/* The operation **************************************************************/

static char *
dup_pdf_info (const char *path)
{
  const char *arguments[] = { "pdfinfo", path, NULL };
  char *text = NULL;

  g_assert_true (g_spawn_sync (NULL, (char **) arguments, NULL, G_SPAWN_SEARCH_PATH | G_SPAWN_STDERR_TO_DEV_NULL,
                               NULL, NULL, &text, NULL, NULL, NULL));

  return text;
}

static void
assert_info (const char *info,
             const char *label,
             const char *value)
{
  const char *at = strstr (info, label);

  g_assert_nonnull (at);
  at += strlen (label);
  while (*at == ' ')
    at++;
  if (!g_str_has_prefix (at, value))
    g_error ("%s is not %s: %.40s", label, value, at);
}

static void
set_paper (TrPrintMemory *memory,
           const char    *name,
           gboolean       is_landscape)
{
  GtkPaperSize *paper = gtk_paper_size_new (name);

  gtk_page_setup_set_paper_size_and_default_margins (memory->setup, paper);
  gtk_page_setup_set_orientation (memory->setup, is_landscape ? GTK_PAGE_ORIENTATION_LANDSCAPE : GTK_PAGE_ORIENTATION_PORTRAIT);
  gtk_print_settings_set_paper_size (memory->settings, paper);
  gtk_print_settings_set_orientation (memory->settings, gtk_page_setup_get_orientation (memory->setup));
  gtk_paper_size_free (paper);
}

/* The cards were laid out for A4 and the printer's dialog ended with another paper. */
static void
test_cards_follow_the_paper (UiFixture     *fixture,
                             gconstpointer  data)
{
  static const struct { const char *paper; gboolean is_landscape; const char *size; TrPaperSize expected; } cases[] = {
    { GTK_PAPER_NAME_A4, FALSE, "595.276 x 841.89 pts", TR_PAPER_A4 },       /* ISO 216 */
    { GTK_PAPER_NAME_LETTER, FALSE, "612 x 792 pts", TR_PAPER_LETTER },      /* ANSI A */
    { GTK_PAPER_NAME_A5, FALSE, "419.528 x 595.276 pts", TR_PAPER_A4 },
    { GTK_PAPER_NAME_LETTER, TRUE, "792 x 612 pts", TR_PAPER_LETTER },
  };
  g_autofree char *pdfinfo = g_find_program_in_path ("pdfinfo");
  g_autofree char *folder = g_dir_make_tmp ("tourier-print-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "cards.pdf", NULL);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_auto (TrPrintMemory) memory = { NULL, NULL };
      g_autoptr (TrPaperJob) job = new_job (fixture, 4, TR_PAPER_A4);
      g_autoptr (GtkPrintOperation) operation = NULL;
      g_autoptr (GError) error = NULL;

      tr_print_memory_init (&memory);
      set_paper (&memory, cases[i].paper, cases[i].is_landscape);
      operation = tr_print_operation_new (job, &memory, NULL, NULL);
      gtk_print_operation_set_export_filename (operation, path);
      g_assert_cmpint (gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT, NULL, &error), ==,
                       GTK_PRINT_OPERATION_RESULT_APPLY);
      g_assert_no_error (error);
      g_assert_cmpint (tr_paper_job_get_paper (tr_print_operation_get_job (operation)), ==, cases[i].expected);
      if (pdfinfo == NULL)
        continue;

      g_autofree char *info = dup_pdf_info (path);

      assert_info (info, "Page size:", cases[i].size);
      assert_info (info, "Pages:", "4");
    }
}

static void
test_long_name_leaves_the_dialog_narrow (UiFixture     *fixture,
                                         gconstpointer  data)
{
  TrDocument *document = tr_window_get_document (fixture->window);
  TrTrial *draft = tr_document_draft (document);
  g_autofree char *name = g_strnfill (200, 'W');
  int least;

  tr_set_text (&tr_trial_own_dough (draft, 0)->name, name);
  g_assert_true (tr_document_commit (document, draft, "rename", NULL, "/doughs/0/name", NULL));
  GtkWidget *dialog = GTK_WIDGET (open_dialog (fixture));

  gtk_widget_measure (dialog, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  g_assert_cmpint (least, <, 500);
  gtk_window_destroy (GTK_WINDOW (dialog));
}

static void
note_preview_cb (TrPaperJob *job,
                 GObject    *owner)
{
  gtk_window_present (GTK_WINDOW (tr_print_preview_new (GTK_WINDOW (owner), job)));
}

static void
test_operation_previews_in_our_window (UiFixture     *fixture,
                                       gconstpointer  data)
{
  g_auto (TrPrintMemory) memory = { NULL, NULL };
  g_autoptr (TrPaperJob) job = new_job (fixture, 2, TR_PAPER_A4);
  g_autoptr (GtkPrintOperation) operation = NULL;
  g_autoptr (GError) error = NULL;
  TrPrintPreview *preview;

  tr_print_memory_init (&memory);
  set_paper (&memory, GTK_PAPER_NAME_LETTER, FALSE);
  operation = tr_print_operation_new (job, &memory, note_preview_cb, G_OBJECT (fixture->window));
  gtk_print_operation_set_allow_async (operation, TRUE);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PREVIEW, GTK_WINDOW (fixture->window), &error);
  g_assert_no_error (error);
  preview = wait_for (TR_TYPE_PRINT_PREVIEW);
  g_assert_cmpuint (tr_print_preview_count_pages (preview), ==, 2);
  g_assert_cmpint (tr_paper_job_get_paper (tr_print_preview_get_job (preview)), ==, TR_PAPER_LETTER);
  gtk_window_destroy (GTK_WINDOW (preview));
  ui_settle ();
}

static char *
dup_svg (const char *folder,
         TrPaperJob *job)
{
  g_autofree char *path = g_build_filename (folder, "card.svg", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_true (tr_pages_export (tr_paper_job_get_pages (job), path, &error));
  g_assert_no_error (error);

  return ui_read_file (path);
}

/* Two jobs chosen before an edit, one laid out before it and one after it. */
static void
test_job_keeps_its_figures (UiFixture     *fixture,
                            gconstpointer  data)
{
  g_autofree char *folder = g_dir_make_tmp ("tourier-print-XXXXXX", NULL);
  g_autoptr (TrPaperJob) job = new_job (fixture, 1, TR_PAPER_A4);
  g_autoptr (TrPaperJob) same = tr_paper_job_on_paper (job, TR_PAPER_A4);
  g_autoptr (TrPaperJob) late = new_job (fixture, 1, TR_PAPER_A4);
  g_autoptr (TrPaperJob) edited = NULL;
  g_autofree char *before = dup_svg (folder, job);
  g_autofree char *after = NULL;
  g_autofree char *anew = NULL;

  g_assert_true (same == job);
  g_assert_cmpstr (tr_paper_job_get_name (job), ==, "Quay-kitchen");
  ui_edit_pieces (fixture->window, 77);
  edited = new_job (fixture, 1, TR_PAPER_A4);
  after = dup_svg (folder, late);
  anew = dup_svg (folder, edited);
  g_assert_cmpstr (after, ==, before);
  g_assert_cmpstr (anew, !=, before);
}

/* The window's own part: what went wrong is said where every fault of a file is. */
static void
test_failed_print_is_said (UiFixture     *fixture,
                           gconstpointer  data)
{
  g_auto (TrPrintMemory) memory = { NULL, NULL };
  g_autoptr (TrPaperJob) job = new_job (fixture, 1, TR_PAPER_A4);
  g_autoptr (GtkPrintOperation) operation = NULL;
  g_autoptr (GError) error = NULL;

  tr_print_memory_init (&memory);
  operation = tr_print_operation_new (job, &memory, NULL, NULL);
  gtk_print_operation_set_export_filename (operation, "/nonexistent/cards.pdf");
  tr_window_watch_print (fixture->window, operation);
  g_assert_cmpint (gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT, NULL, &error), ==,
                   GTK_PRINT_OPERATION_RESULT_ERROR);
  g_assert_nonnull (tr_window_get_notice (fixture->window, "file"));
}

/* What is remembered *********************************************************/

static char *
dup_memory_path (const char *name)
{
  return g_build_filename (g_get_user_config_dir (), "tourier", name, NULL);
}

static void
test_memory_is_kept (void)
{
  g_auto (TrPrintMemory) written = { NULL, NULL };
  g_auto (TrPrintMemory) read = { NULL, NULL };
  g_autofree char *path = dup_memory_path ("print-settings.ini");

  tr_print_memory_init (&written);
  tr_print_memory_set_paper (&written, TR_PAPER_LETTER);
  gtk_print_settings_set_n_copies (written.settings, 3);
  tr_print_memory_save (&written);
  g_assert_true (g_file_test (path, G_FILE_TEST_EXISTS));
  tr_print_memory_init (&read);
  g_assert_cmpint (tr_print_memory_get_paper (&read), ==, TR_PAPER_LETTER);
  g_assert_cmpint (gtk_print_settings_get_n_copies (read.settings), ==, 3);

  g_autoptr (GtkPaperSize) paper = gtk_print_settings_get_paper_size (read.settings);

  g_assert_cmpstr (gtk_paper_size_get_name (paper), ==, GTK_PAPER_NAME_LETTER);
}

static void
test_broken_memory_is_left_out (void)
{
  static const char *const texts[] = { "", "not a key file", "[Page Setup]\nPPDName=x\nWidth=nan\nHeight=-5\n", "\xff\xfe\x00" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_auto (TrPrintMemory) memory = { NULL, NULL };
      g_autofree char *settings = dup_memory_path ("print-settings.ini");
      g_autofree char *setup = dup_memory_path ("page-setup.ini");
      g_autofree char *folder = g_path_get_dirname (setup);

      g_mkdir_with_parents (folder, 0700);
      g_assert_true (g_file_set_contents (settings, texts[i], -1, NULL));
      g_assert_true (g_file_set_contents (setup, texts[i], -1, NULL));
      tr_print_memory_init (&memory);
      g_assert_nonnull (memory.settings);
      g_assert_cmpfloat (gtk_page_setup_get_paper_width (memory.setup, GTK_UNIT_MM), >=, 200);
      g_unlink (settings);
      g_unlink (setup);
    }
}

static void
test_folder_that_cannot_be_written_is_no_matter (void)
{
  g_auto (TrPrintMemory) memory = { NULL, NULL };
  g_autofree char *settings = dup_memory_path ("print-settings.ini");

  tr_print_memory_init (&memory);
  g_unlink (settings);
  g_assert_cmpint (g_mkdir_with_parents (settings, 0700), ==, 0);
  tr_print_memory_save (&memory);
  g_assert_cmpint (g_rmdir (settings), ==, 0);
}

static void
test_papers_are_told_apart (void)
{
  static const struct { const char *name; TrPaperSize expected; } cases[] = {
    { "iso_a4", TR_PAPER_A4 }, { "na_letter", TR_PAPER_LETTER }, { "iso_a3", TR_PAPER_A4 }, { "iso_a5", TR_PAPER_A4 },
    { "iso_b5", TR_PAPER_A4 }, { "na_legal", TR_PAPER_A4 }, { "na_govt-letter", TR_PAPER_LETTER },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();
      g_autoptr (GtkPaperSize) paper = gtk_paper_size_new (cases[i].name);

      gtk_page_setup_set_paper_size (setup, paper);
      g_assert_cmpint (tr_paper_of_page_setup (setup), ==, cases[i].expected);
      gtk_page_setup_set_orientation (setup, GTK_PAGE_ORIENTATION_LANDSCAPE);
      g_assert_cmpint (tr_paper_of_page_setup (setup), ==, cases[i].expected);
    }
}

/* The reader's scales ********************************************************/

static gboolean
has_label (GtkWidget  *root,
           const char *text)
{
  if (GTK_IS_LABEL (root) && g_str_equal (gtk_label_get_text (GTK_LABEL (root)), text))
    return TRUE;

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (has_label (child, text))
      return TRUE;

  return FALSE;
}

static void
test_scale_step_rounds_the_formula (UiFixture     *fixture,
                                    gconstpointer  data)
{
  TrPreferences *preferences = tr_application_get_preferences (fixture->application);
  GtkWidget *formula = GTK_WIDGET (tr_window_get_page (fixture->window, "formula"));
  TrReader reader;

  g_object_set (preferences, "scale-step", 100.0, NULL);
  tr_preferences_init_reader (preferences, &reader);
  g_assert_cmpfloat (reader.scale_step_g, ==, 100);
  ui_frames (GTK_WIDGET (fixture->window), 2);
  g_assert_true (has_label (formula, "500"));
  g_assert_false (tr_document_is_modified (tr_window_get_document (fixture->window)));
  g_object_set (preferences, "scale-step", 0.0, NULL);
  ui_frames (GTK_WIDGET (fixture->window), 2);
  g_assert_true (has_label (formula, "455"));
}

static void
test_preferences_window_follows_and_sets (UiFixture     *fixture,
                                          gconstpointer  data)
{
  TrPreferences *preferences = tr_application_get_preferences (fixture->application);
  GtkWidget *window;
  GtkDropDown *units, *step;
  g_autofree char *chosen = NULL;
  double grams;

  ui_act (fixture->window, "win.preferences");
  window = wait_for (TR_TYPE_PREFERENCES_WINDOW);
  units = GTK_DROP_DOWN (ui_find (window, GTK_TYPE_DROP_DOWN, "Units"));
  step = GTK_DROP_DOWN (ui_find (window, GTK_TYPE_DROP_DOWN, "Scale step"));
  g_assert_cmpuint (gtk_drop_down_get_selected (units), ==, 0);
  gtk_drop_down_set_selected (units, 1);
  gtk_drop_down_set_selected (step, 5);
  g_object_get (preferences, "units", &chosen, "scale-step", &grams, NULL);
  g_assert_cmpstr (chosen, ==, "us");
  g_assert_cmpfloat (grams, ==, 5);
  g_object_set (preferences, "units", "metric", "scale-step", 0.0, NULL);
  g_assert_cmpuint (gtk_drop_down_get_selected (units), ==, 0);
  g_assert_cmpuint (gtk_drop_down_get_selected (step), ==, 0);
  /* Asked for again it is the same one. */
  ui_act (fixture->window, "win.preferences");
  ui_settle ();
  g_assert_true (get_open (TR_TYPE_PREFERENCES_WINDOW) == window);
  gtk_window_destroy (GTK_WINDOW (window));
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  UI_ADD ("/print/dialog/chooses-doughs", test_dialog_chooses_doughs);
  UI_ADD ("/print/dialog/long-name-leaves-it-narrow", test_long_name_leaves_the_dialog_narrow);
  UI_ADD ("/print/dialog/nothing-ticked-offers-nothing", test_nothing_ticked_offers_nothing);
  UI_ADD ("/print/preview/shows-every-page", test_preview_shows_every_page);
  UI_ADD ("/print/preview/goes-by-pages", test_preview_goes_by_pages);
  UI_ADD ("/print/preview/zooms", test_preview_zooms);
  UI_ADD ("/print/preview/asks-for-print-and-export", test_preview_asks_for_print_and_export);
  UI_ADD ("/print/operation/cards-follow-the-paper", test_cards_follow_the_paper);
  UI_ADD ("/print/operation/previews-in-our-window", test_operation_previews_in_our_window);
  UI_ADD ("/print/operation/failed-is-said", test_failed_print_is_said);
  UI_ADD ("/print/job-keeps-its-figures", test_job_keeps_its_figures);
  g_test_add_func ("/print/memory/is-kept", test_memory_is_kept);
  g_test_add_func ("/print/memory/broken-is-left-out", test_broken_memory_is_left_out);
  g_test_add_func ("/print/memory/folder-that-cannot-be-written-is-no-matter", test_folder_that_cannot_be_written_is_no_matter);
  g_test_add_func ("/print/memory/papers-are-told-apart", test_papers_are_told_apart);
  UI_ADD ("/preferences/scale-step-rounds-the-formula", test_scale_step_rounds_the_formula);
  UI_ADD ("/preferences/window-follows-and-sets", test_preferences_window_follows_and_sets);

  return ui_run ();
}
