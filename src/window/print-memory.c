/* print-memory.c: what the reader last told the print dialog
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "print-memory.h"

#include <math.h>

#define SETTINGS_FILE "print-settings.ini"
#define SETUP_FILE "page-setup.ini"
#define FOLDER_MODE 0700

static char *
dup_path (const char *name)
{
  return g_build_filename (g_get_user_config_dir (), "tourier", name, NULL);
}

static GtkPaperSize *
new_paper (TrPaperSize size)
{
  return gtk_paper_size_new (size == TR_PAPER_LETTER ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4);
}

static TrPaperSize
get_usual_paper (void)
{
  return g_strcmp0 (gtk_paper_size_get_default (), GTK_PAPER_NAME_LETTER) == 0 ? TR_PAPER_LETTER : TR_PAPER_A4;
}

/* No file yet is nothing to remark on. */
static void
remark (const char   *path,
        const GError *error)
{
  if (error != NULL && !g_error_matches (error, G_FILE_ERROR, G_FILE_ERROR_NOENT))
    g_debug ("%s is left out: %s", path, error->message);
}

/* A file may be whole and still say nothing that paper can have. */
static gboolean
is_sane (GtkPageSetup *setup)
{
  double width = gtk_page_setup_get_paper_width (setup, GTK_UNIT_MM);
  double height = gtk_page_setup_get_paper_height (setup, GTK_UNIT_MM);

  return isfinite (width) && isfinite (height) && width >= 50 && height >= 50 && width <= 2000 && height <= 2000;
}

void
tr_print_memory_init (TrPrintMemory *memory)
{
  g_autofree char *settings_path = dup_path (SETTINGS_FILE);
  g_autofree char *setup_path = dup_path (SETUP_FILE);
  g_autoptr (GError) settings_error = NULL;
  g_autoptr (GError) setup_error = NULL;

  memory->settings = gtk_print_settings_new_from_file (settings_path, &settings_error);
  remark (settings_path, settings_error);
  if (memory->settings == NULL)
    memory->settings = gtk_print_settings_new ();

  memory->setup = gtk_page_setup_new_from_file (setup_path, &setup_error);
  remark (setup_path, setup_error);
  if (memory->setup != NULL && !is_sane (memory->setup))
    g_clear_object (&memory->setup);
  if (memory->setup == NULL)
    {
      memory->setup = gtk_page_setup_new ();
      tr_print_memory_set_paper (memory, get_usual_paper ());
    }
}

void
tr_print_memory_clear (TrPrintMemory *memory)
{
  g_clear_object (&memory->settings);
  g_clear_object (&memory->setup);
}

void
tr_print_memory_save (const TrPrintMemory *memory)
{
  g_autofree char *settings_path = dup_path (SETTINGS_FILE);
  g_autofree char *setup_path = dup_path (SETUP_FILE);
  g_autofree char *folder = g_path_get_dirname (settings_path);
  g_autoptr (GError) settings_error = NULL;
  g_autoptr (GError) setup_error = NULL;

  g_mkdir_with_parents (folder, FOLDER_MODE);
  if (!gtk_print_settings_to_file (memory->settings, settings_path, &settings_error))
    g_debug ("%s is not kept: %s", settings_path, settings_error->message);
  if (!gtk_page_setup_to_file (memory->setup, setup_path, &setup_error))
    g_debug ("%s is not kept: %s", setup_path, setup_error->message);
}

void
tr_print_memory_learn (TrPrintMemory     *memory,
                       GtkPrintOperation *operation)
{
  GtkPrintSettings *settings = gtk_print_operation_get_print_settings (operation);
  GtkPageSetup *setup = gtk_print_operation_get_default_page_setup (operation);

  if (settings != NULL)
    g_set_object (&memory->settings, settings);
  if (setup != NULL)
    g_set_object (&memory->setup, setup);
  tr_print_memory_save (memory);
}

TrPaperSize
tr_print_memory_get_paper (const TrPrintMemory *memory)
{
  return tr_paper_of_page_setup (memory->setup);
}

/* Said in both, since GTK believes the settings first. */
void
tr_print_memory_set_paper (TrPrintMemory *memory,
                           TrPaperSize    size)
{
  GtkPaperSize *paper = new_paper (size);

  gtk_page_setup_set_paper_size_and_default_margins (memory->setup, paper);
  gtk_print_settings_set_paper_size (memory->settings, paper);
  gtk_paper_size_free (paper);
}

static double
get_slenderness (double width,
                 double height)
{
  return MAX (width, height) / MIN (width, height);
}

TrPaperSize
tr_paper_of_page_setup (GtkPageSetup *setup)
{
  double a4_width, a4_height, letter_width, letter_height;
  double slenderness = get_slenderness (gtk_page_setup_get_paper_width (setup, GTK_UNIT_POINTS),
                                        gtk_page_setup_get_paper_height (setup, GTK_UNIT_POINTS));

  tr_paper_get_size (TR_PAPER_A4, &a4_width, &a4_height);
  tr_paper_get_size (TR_PAPER_LETTER, &letter_width, &letter_height);

  return fabs (slenderness - get_slenderness (letter_width, letter_height))
         < fabs (slenderness - get_slenderness (a4_width, a4_height)) ? TR_PAPER_LETTER : TR_PAPER_A4;
}
