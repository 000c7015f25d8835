/* command-line.c: figures, findings and paper without a window
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Needs no display and no settings, and looks at no environment variable: the
 * arguments are read here by hand and the locale is never set, so that the
 * same command prints the same bytes everywhere. What is wrong is said in one
 * sentence on stderr with exit status 1, and then nothing has been written.
 */

#include "config.h"

#include "command-options.h"
#include "report.h"

#include <errno.h>
#include <fcntl.h>
#include <math.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "calc/search.h"
#include "paper/paper.h"
#include "recipe/recipe.h"
#include "trial/disk.h"
#include "trial/document.h"

#define EXIT_FINE 0
#define EXIT_WRONG 1
#define EXIT_STOP 3              /* --findings found something that stops */
#define GO_ON_TO_WINDOW (-1)

/* More than a trial may have: enough to be refused as too large. */
#define STDIN_MAX (4 * 1024 * 1024 + 1)

static GByteArray *
read_stdin_bytes (gsize    max,
                  GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  guint8 buffer[65536];
  ssize_t n = 1;

  while (n != 0 && bytes->len <= max)
    {
      n = read (STDIN_FILENO, buffer, sizeof buffer);
      if (n < 0 && errno == EINTR)
        continue;
      if (n < 0)
        {
          tr_command_refuse (error, "The standard input cannot be read: %s.", g_strerror (errno));
          return NULL;
        }
      g_byte_array_append (bytes, buffer, (guint) n);
    }
  return g_steal_pointer (&bytes);
}

static TrTrial *
read_stdin (GError **error)
{
  g_autoptr (GByteArray) bytes = read_stdin_bytes (STDIN_MAX, error);

  return bytes != NULL ? tr_trial_read ((const char *) bytes->data, bytes->len, error) : NULL;
}

static TrFigures *
read_figures (const char *file,
              GError    **error)
{
  gboolean from_stdin = g_str_equal (file, "-");
  g_autoptr (GError) local_error = NULL;
  g_autoptr (TrTrial) trial = from_stdin ? read_stdin (&local_error) : tr_trial_read_file (file, &local_error);

  if (trial != NULL)
    return tr_figures_compute (trial, NULL);
  if (from_stdin || strstr (local_error->message, file) != NULL)
    g_propagate_error (error, g_steal_pointer (&local_error));
  else
    tr_command_refuse (error, "%s: %s", file, local_error->message);
  return NULL;
}

static gboolean
print_out (const char *text,
           GError    **error)
{
  gsize left = strlen (text);

  while (left > 0)
    {
      ssize_t n = write (STDOUT_FILENO, text, left);

      if (n < 0 && errno == EINTR)
        continue;
      if (n < 0)
        return tr_command_refuse (error, "The result cannot be written to the standard output: %s.", g_strerror (errno));
      text += n;
      left -= (gsize) n;
    }
  return TRUE;
}

static gboolean
find_dough (const TrFigures *figures,
            const char      *id,
            guint           *index,
            GError         **error)
{
  int found = tr_trial_find_dough (figures->trial, id);
  g_autoptr (GString) ids = g_string_new (NULL);

  if (found >= 0)
    {
      *index = (guint) found;
      return TRUE;
    }
  for (guint i = 0; i < figures->trial->doughs->len; i++)
    g_string_append_printf (ids, "%s%s", i > 0 ? ", " : "", tr_trial_get_dough (figures->trial, i)->id);
  return tr_command_refuse (error, "There is no dough %s in this trial; there are: %s.", id, ids->str);
}

static gboolean
is_same_file (const char *a,
              const char *b)
{
  struct stat stat_a, stat_b;

  return stat (a, &stat_a) == 0 && stat (b, &stat_b) == 0 &&
         stat_a.st_dev == stat_b.st_dev && stat_a.st_ino == stat_b.st_ino;
}

/* NULL with a sentence: there are no scores yet. */
static TrPages *
make_result (const TrFigures *figures,
             const TrReader  *reader,
             TrPaperSize      size,
             GError         **error)
{
  g_autoptr (TrTastingFigures) tasting = tr_tasting_compute (figures, NULL);

  if (tasting != NULL)
    return tr_result_paper_new (figures, tasting, reader, size);

  tr_command_refuse (error, "--paper result: nobody has scored anything in this trial, so there is no result.");
  return NULL;
}

static TrPages *
make_pages (const TrOptions *options,
            const TrFigures *figures,
            const guint     *dough,
            const TrReader  *reader,
            GError         **error)
{
  TrPaperSize size = g_strcmp0 (options->page, "letter") == 0 ? TR_PAPER_LETTER : TR_PAPER_A4;
  const TrTasting *tasting = figures->trial->tasting;

  if (g_str_equal (options->paper, "compare"))
    return tr_comparison_new (figures, NULL, 0, reader, size);
  if (g_str_equal (options->paper, "card"))
    return tr_cards_new (figures, dough, dough != NULL ? 1 : 0, reader, size);
  if (g_str_equal (options->paper, "result"))
    return make_result (figures, reader, size, error);
  if (tasting == NULL || tasting->codes->len == 0)
    {
      tr_command_refuse (error, "--paper %s: no dough of this trial has a code yet, so nothing can be tasted blind.", options->paper);
      return NULL;
    }
  if (g_str_equal (options->paper, "tasting"))
    return tr_score_sheets_new (figures, reader, size);
  if (g_str_equal (options->paper, "labels"))
    return tr_code_labels_new (figures, reader, size);

  return tr_tasting_key_new (figures, reader, size);
}

static gboolean
make_paper (const TrOptions *options,
            const TrFigures *figures,
            const TrReader  *reader,
            GError         **error)
{
  g_autoptr (TrPages) pages = NULL;
  guint index = 0;

  if (figures->doughs->len == 0)
    return tr_command_refuse (error, "The trial has no dough, so there is nothing to make a page of.");
  if (options->dough != NULL && !find_dough (figures, options->dough, &index, error))
    return FALSE;
  if (is_same_file (options->file, options->output))
    return tr_command_refuse (error, "--output %s is the trial itself; name another file.", options->output);
  pages = make_pages (options, figures, options->dough != NULL ? &index : NULL, reader, error);
  return pages != NULL && tr_pages_export (pages, options->output, error);
}

/* "20-40", "20–40", or one number for both ends. */
static gboolean
read_range (const char *option,
            const char *text,
            TrRange    *range,
            GError    **error)
{
  g_autofree char *plain = g_strdup (text);
  char *end = NULL, *dash = strstr (plain, "\342\200\223");

  if (dash != NULL)
    memcpy (dash, "-  ", 3);
  range->min = g_ascii_strtod (plain, &end);
  range->max = range->min;
  if (end != plain && *end == '-')
    {
      char *second = end + 1;

      range->max = g_ascii_strtod (second, &end);
      if (end == second)
        end = plain;
    }
  if (end == plain || *end != '\0' || !isfinite (range->min) || !isfinite (range->max) || !(range->min > 0) || range->max < range->min)
    return tr_command_refuse (error, "%s %s is no range; expected two numbers above 0, the smaller first, such as 20-40.", option, text);
  return TRUE;
}

static gboolean
read_whole (const char *option,
            const char *text,
            guint       min,
            guint       max,
            guint      *value,
            GError    **error)
{
  guint64 number;

  if (text == NULL)
    return TRUE;
  if (!g_ascii_string_to_unsigned (text, 10, min, max, &number, NULL))
    return tr_command_refuse (error, "%s %s is not possible; expected a whole number from %u to %u.", option, text, min, max);
  *value = (guint) number;
  return TRUE;
}

static gboolean
print_sequences (const TrOptions *options,
                 const TrFigures *figures,
                 GError         **error)
{
  const char *option = options->fat_um != NULL ? "--fat-um" : "--fat-layers";
  g_autoptr (GPtrArray) sequences = NULL;
  g_autofree char *text = NULL;
  TrSearch search;
  guint index;

  tr_search_init (&search);
  search.by_um = options->fat_um != NULL;
  if (!read_range (option, search.by_um ? options->fat_um : options->fat_layers, &search.wish, error)
      || !read_whole ("--max-turns", options->max_turns, 1, TR_SEARCH_MAX_TURNS, &search.max_turns, error)
      || !read_whole ("--max-fold", options->max_fold, 2, TR_SEARCH_MAX_FOLD, &search.max_fold, error)
      || !find_dough (figures, options->dough, &index, error))
    return FALSE;

  sequences = tr_search_sequences (tr_figures_get_dough (figures, index), &search);
  text = tr_report_sequences (sequences);
  return print_out (text, error);
}

static TrRecipe *
read_recipe (const char *file,
             GError    **error)
{
  g_autofree char *text = NULL;
  TrDiskState state;
  gsize length = 0;

  if (g_str_equal (file, "-"))
    {
      g_autoptr (GByteArray) bytes = read_stdin_bytes (TR_RECIPE_MAX_BYTES, error);

      return bytes != NULL ? tr_recipe_read ((const char *) bytes->data, bytes->len, NULL, error) : NULL;
    }
  text = tr_disk_read (file, TR_RECIPE_MAX_BYTES, &length, &state, error);
  return text != NULL ? tr_recipe_read (text, length, file, error) : NULL;
}

/* A file that is there already is kept beside it as NAME~, as by any first save. */
static gboolean
make_trial_of_recipe (const TrOptions *options,
                      GError         **error)
{
  g_autoptr (GError) local_error = NULL;
  g_autoptr (TrRecipe) recipe = NULL;
  g_autoptr (TrDocument) document = NULL;
  g_autoptr (GFile) output = g_file_new_for_path (options->output);
  g_autofree char *account = NULL;

  if (!g_str_equal (options->file, "-") && is_same_file (options->file, options->output))
    return tr_command_refuse (error, "--output %s is the recipe itself; name another file.", options->output);
  recipe = read_recipe (options->file, &local_error);
  if (recipe == NULL && (g_str_equal (options->file, "-") || strstr (local_error->message, options->file) != NULL))
    {
      g_propagate_error (error, g_steal_pointer (&local_error));
      return FALSE;
    }
  if (recipe == NULL)
    return tr_command_refuse (error, "%s: %s", options->file, local_error->message);
  document = tr_document_new_for_trial (tr_recipe_make_trial (recipe));
  if (!tr_document_save_as (document, output, error))
    return FALSE;
  account = tr_recipe_describe (recipe);
  return print_out (account, error);
}

static gboolean
do_job (const TrOptions *options,
        int             *status,
        GError         **error)
{
  g_autoptr (TrFigures) figures = NULL;
  g_autofree char *text = NULL;
  TrReader reader;
  gboolean has_stop = FALSE;

  /* The result stands alone on stdout, whatever messages somebody asked for. */
  g_log_writer_default_set_use_stderr (TRUE);
  if (options->job == TR_JOB_HELP)
    return print_out (tr_options_get_help (), error);
  if (options->job == TR_JOB_VERSION)
    return print_out ("tourier " TR_VERSION "\n", error);

  if (options->job == TR_JOB_READ_RECIPE)
    return make_trial_of_recipe (options, error);
  tr_reader_init_plain (&reader, g_strcmp0 (options->units, "us") == 0 ? TR_UNITS_US : TR_UNITS_METRIC);
  figures = read_figures (options->file, error);
  if (figures == NULL)
    return FALSE;
  if (options->job == TR_JOB_SEQUENCES)
    return print_sequences (options, figures, error);
  if (options->job == TR_JOB_PAPER)
    return make_paper (options, figures, &reader, error);
  if (options->job == TR_JOB_FINDINGS)
    text = tr_report_findings (figures, &reader, &has_stop);
  else
    text = options->is_csv ? tr_report_comparison (figures) : tr_report_figures (figures, &reader);
  if (has_stop)
    *status = EXIT_STOP;
  return print_out (text, error);
}

/* A file that is opened must not take the place of a closed stdout or stderr:
 * those get a descriptor that can only be read, so that writing still fails. */
static void
keep_standard_descriptors (void)
{
  int fd;

  do
    fd = open ("/dev/null", O_RDONLY);
  while (fd >= 0 && fd <= STDERR_FILENO);
  if (fd > STDERR_FILENO)
    close (fd);
}

/* stdio and GLib would turn letters that are not ASCII into question marks. */
static void
say_wrong (const GError *error)
{
  g_autofree char *line = g_strdup_printf ("tourier: %s", error->message);

  for (char *p = line; *p != '\0'; p++)
    if (g_ascii_iscntrl (*p))
      *p = ' ';
  fprintf (stderr, "%s\n", line);
}

int
tr_command_line (int    argc,
                 char **argv)
{
  TrOptions options = { TR_JOB_NONE };
  g_autoptr (GError) error = NULL;
  int status = EXIT_FINE;

  keep_standard_descriptors ();
  if (tr_options_read (&options, argc, argv, &error))
    {
      if (options.job == TR_JOB_NONE)
        return GO_ON_TO_WINDOW;
      if (do_job (&options, &status, &error))
        return status;
    }
  say_wrong (error);
  return EXIT_WRONG;
}
