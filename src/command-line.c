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

#include "report.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

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

typedef enum { JOB_NONE, JOB_FIGURES, JOB_FINDINGS, JOB_PAPER, JOB_READ_RECIPE, JOB_HELP, JOB_VERSION } Job;

typedef struct {
  Job job;
  const char *job_option;        /* as it was written */
  const char *paper, *dough, *page, *output, *units;
  const char *file;
  gboolean for_window;           /* an option of the windowing system is there */
  gboolean only_files;           /* after "--" */
  gboolean from_stdin;           /* one of the files is "-" */
} Options;

static const char help[] =
  "Usage:\n"
  "  tourier [FILE…]                     open the window\n"
  "  tourier --figures FILE              print every figure as JSON\n"
  "  tourier --findings FILE             print what was found, one a line:\n"
  "                                      severity, dough, sentence; exit status 3\n"
  "                                      when something stops\n"
  "  tourier --paper card --output X FILE\n"
  "                                      make the bench cards; X ends in .pdf, .png\n"
  "                                      or .svg\n"
  "  tourier --read-recipe FILE --output X.tourier\n"
  "                                      make a trial of a recipe (text, a web page or\n"
  "                                      JSON-LD) and print how each line was understood\n"
  "\n"
  "Options:\n"
  "  --dough ID            with --paper: the card of this dough only\n"
  "  --page a4|letter      with --paper: the size of the page (a4)\n"
  "  --units metric|us     with any of the three: units of sentences and cards (metric)\n"
  "  --help                print this and exit\n"
  "  --version             print the version and exit\n"
  "\n"
  "FILE is a trial (or a recipe); - reads it from the standard input. Exit status: 0 all is\n"
  "well, 1 something is wrong with a file or an argument, 3 see --findings.\n";

G_GNUC_PRINTF (2, 3) static gboolean
wrong (GError     **error,
       const char  *format,
       ...)
{
  va_list arguments;
  g_autofree char *sentence = NULL;

  va_start (arguments, format);
  sentence = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error_literal (error, G_OPTION_ERROR, G_OPTION_ERROR_FAILED, sentence);
  return FALSE;
}

static gboolean
set_job (Options     *options,
         Job          job,
         const char  *option,
         GError     **error)
{
  if (options->job == job)
    return wrong (error, "%s is given twice; once is enough.", option);
  if (options->job != JOB_NONE)
    return wrong (error, "%s and %s cannot be done at once; give one of them.", options->job_option, option);
  options->job = job;
  options->job_option = option;
  return TRUE;
}

/* "--output X" or "--output=X". Moves `i` to the value that was used. */
static gboolean
take_value (int           argc,
            char        **argv,
            int          *i,
            const char   *option,
            const char   *what,
            const char  **value,
            GError      **error)
{
  gsize length = strlen (option);

  if (*value != NULL)
    return wrong (error, "%s is given twice; give it once.", option);
  if (argv[*i][length] == '=')
    *value = argv[*i] + length + 1;
  else if (*i + 1 < argc && strncmp (argv[*i + 1], "--", 2) != 0)
    *value = argv[++*i];
  if (*value == NULL || **value == '\0')
    return wrong (error, "%s needs %s behind it.", option, what);
  return TRUE;
}

static gboolean
is_option (const char *argument,
           const char *option)
{
  gsize length = strlen (option);

  return strncmp (argument, option, length) == 0 && (argument[length] == '\0' || argument[length] == '=');
}

static gboolean
take_valued_option (Options  *options,
                    int       argc,
                    char    **argv,
                    int      *i,
                    gboolean *taken,
                    GError  **error)
{
  const struct { const char *option, *what; const char **value; } valued[] = {
    { "--paper", "the name of a paper: card", &options->paper },
    { "--dough", "the id of a dough", &options->dough },
    { "--page", "a4 or letter", &options->page },
    { "--output", "a file name", &options->output },
    { "--units", "metric or us", &options->units },
  };

  *taken = FALSE;
  for (gsize k = 0; k < G_N_ELEMENTS (valued); k++)
    {
      if (!is_option (argv[*i], valued[k].option))
        continue;
      *taken = TRUE;
      if (!take_value (argc, argv, i, valued[k].option, valued[k].what, valued[k].value, error))
        return FALSE;
      return valued[k].value != &options->paper || set_job (options, JOB_PAPER, "--paper", error);
    }
  return TRUE;
}

static gboolean
take_option (Options  *options,
             int       argc,
             char    **argv,
             int      *i,
             GError  **error)
{
  static const struct { const char *option; Job job; } jobs[] = {
    { "--figures", JOB_FIGURES }, { "--findings", JOB_FINDINGS }, { "--read-recipe", JOB_READ_RECIPE },
    { "--help", JOB_HELP }, { "-h", JOB_HELP }, { "--version", JOB_VERSION },
  };
  gboolean taken;

  for (gsize k = 0; k < G_N_ELEMENTS (jobs); k++)
    if (g_str_equal (argv[*i], jobs[k].option))
      return set_job (options, jobs[k].job, jobs[k].option, error);
  if (!take_valued_option (options, argc, argv, i, &taken, error))
    return FALSE;
  if (taken)
    return TRUE;
  if (g_str_has_prefix (argv[*i], "--gapplication-") || g_str_has_prefix (argv[*i], "--help-") ||
      is_option (argv[*i], "--display"))
    {
      options->for_window = TRUE;
      return TRUE;
    }
  return wrong (error, "The option %s is not known; tourier --help lists those there are.", argv[*i]);
}

static gboolean
check_files (const Options  *options,
             guint           n_files,
             GError        **error)
{
  if (n_files == 0)
    return wrong (error, "%s needs a FILE; the trial to read is missing.", options->job_option);
  if (n_files > 1)
    return wrong (error, "%s takes one FILE, and %u are given; do one after the other.", options->job_option, n_files);
  return TRUE;
}

static gboolean
check_page_and_units (const Options  *options,
                      GError        **error)
{
  if (options->page != NULL && g_strcmp0 (options->page, "a4") != 0 && g_strcmp0 (options->page, "letter") != 0)
    return wrong (error, "--page %s is not known; expected a4 or letter.", options->page);
  if (options->units != NULL && g_strcmp0 (options->units, "metric") != 0 && g_strcmp0 (options->units, "us") != 0)
    return wrong (error, "--units %s is not known; expected metric or us.", options->units);
  return TRUE;
}

static gboolean
has_paper_extension (const char *path)
{
  return g_str_has_suffix (path, ".pdf") || g_str_has_suffix (path, ".png") || g_str_has_suffix (path, ".svg");
}

static gboolean
check_paper (const Options  *options,
             GError        **error)
{
  g_autofree char *folder = NULL;

  if (g_strcmp0 (options->paper, "card") != 0)
    return wrong (error, "--paper %s is not a paper that can be made; expected card.", options->paper);
  if (options->output == NULL)
    return wrong (error, "--paper needs --output and a file name that ends in .pdf, .png or .svg.");
  if (!has_paper_extension (options->output))
    return wrong (error, "--output %s ends in neither .pdf, .png nor .svg, so that it is not clear what to make.", options->output);
  folder = g_path_get_dirname (options->output);
  if (!g_file_test (folder, G_FILE_TEST_IS_DIR))
    return wrong (error, "--output %s cannot be written: there is no folder %s.", options->output, folder);
  if (g_file_test (options->output, G_FILE_TEST_IS_DIR))
    return wrong (error, "--output %s cannot be written: it is a folder.", options->output);
  return TRUE;
}

static gboolean
check_recipe_output (const Options  *options,
                     GError        **error)
{
  g_autofree char *folder = NULL;

  if (options->output == NULL)
    return wrong (error, "--read-recipe needs --output and a file name that ends in .tourier.");
  if (!g_str_has_suffix (options->output, ".tourier"))
    return wrong (error, "--output %s does not end in .tourier; a recipe becomes a trial.", options->output);
  folder = g_path_get_dirname (options->output);
  if (!g_file_test (folder, G_FILE_TEST_IS_DIR))
    return wrong (error, "--output %s cannot be written: there is no folder %s.", options->output, folder);
  if (g_file_test (options->output, G_FILE_TEST_IS_DIR))
    return wrong (error, "--output %s cannot be written: it is a folder.", options->output);
  return TRUE;
}

/* Options that belong to a job stand nowhere else. */
static gboolean
check_options (const Options  *options,
               guint           n_files,
               GError        **error)
{
  const char *of_paper = options->dough != NULL ? "--dough" : options->page != NULL ? "--page" :
                         options->output != NULL ? "--output" : NULL;

  if (options->job == JOB_HELP || options->job == JOB_VERSION)
    return TRUE;
  if (options->output != NULL && options->dough == NULL && options->page == NULL && options->job == JOB_READ_RECIPE)
    of_paper = NULL;
  if (of_paper != NULL && options->job != JOB_PAPER)
    return wrong (error, "%s goes with --paper card only.", of_paper);
  if (options->units != NULL && options->job == JOB_READ_RECIPE)
    return wrong (error, "--units does not go with --read-recipe; amounts are kept as they are written.");
  if (options->units != NULL && options->job == JOB_NONE)
    return wrong (error, "--units goes with --figures, --findings or --paper; in the window it is a preference.");
  if (options->job == JOB_NONE && options->from_stdin)
    return wrong (error, "The window opens files; - goes with --figures, --findings or --paper only.");
  if (options->job == JOB_NONE)
    return TRUE;
  if (options->for_window)
    return wrong (error, "%s opens no window; options for one do not go with it.", options->job_option);
  return check_page_and_units (options, error) &&
         (options->job != JOB_PAPER || check_paper (options, error)) &&
         (options->job != JOB_READ_RECIPE || check_recipe_output (options, error)) &&
         check_files (options, n_files, error);
}

static gboolean
read_options (Options  *options,
              int       argc,
              char    **argv,
              GError  **error)
{
  guint n_files = 0;

  for (int i = 1; i < argc; i++)
    {
      if (!options->only_files && g_str_equal (argv[i], "--"))
        options->only_files = TRUE;
      else if (options->only_files || *argv[i] != '-' || g_str_equal (argv[i], "-"))
        {
          options->from_stdin |= g_str_equal (argv[i], "-");
          if (n_files++ == 0)
            options->file = argv[i];
        }
      else if (!take_option (options, argc, argv, &i, error))
        return FALSE;
    }
  return check_options (options, n_files, error);
}

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
          wrong (error, "The standard input cannot be read: %s.", g_strerror (errno));
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
read_figures (const char  *file,
              GError     **error)
{
  gboolean from_stdin = g_str_equal (file, "-");
  g_autoptr (GError) local_error = NULL;
  g_autoptr (TrTrial) trial = from_stdin ? read_stdin (&local_error) : tr_trial_read_file (file, &local_error);

  if (trial != NULL)
    return tr_figures_compute (trial, NULL);
  if (from_stdin || strstr (local_error->message, file) != NULL)
    g_propagate_error (error, g_steal_pointer (&local_error));
  else
    wrong (error, "%s: %s", file, local_error->message);
  return NULL;
}

static gboolean
print_out (const char  *text,
           GError     **error)
{
  gsize left = strlen (text);

  while (left > 0)
    {
      ssize_t n = write (STDOUT_FILENO, text, left);

      if (n < 0 && errno == EINTR)
        continue;
      if (n < 0)
        return wrong (error, "The result cannot be written to the standard output: %s.", g_strerror (errno));
      text += n;
      left -= (gsize) n;
    }
  return TRUE;
}

static gboolean
find_dough (const TrFigures  *figures,
            const char       *id,
            guint            *index,
            GError          **error)
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
  return wrong (error, "There is no dough %s in this trial; there are: %s.", id, ids->str);
}

static gboolean
is_same_file (const char *a,
              const char *b)
{
  struct stat stat_a, stat_b;

  return stat (a, &stat_a) == 0 && stat (b, &stat_b) == 0 &&
         stat_a.st_dev == stat_b.st_dev && stat_a.st_ino == stat_b.st_ino;
}

static gboolean
make_cards (const Options    *options,
            const TrFigures  *figures,
            const TrReader   *reader,
            GError          **error)
{
  TrPaperSize size = g_strcmp0 (options->page, "letter") == 0 ? TR_PAPER_LETTER : TR_PAPER_A4;
  g_autoptr (TrCards) cards = NULL;
  guint index = 0;

  if (figures->doughs->len == 0)
    return wrong (error, "The trial has no dough, so there is no card to make.");
  if (options->dough != NULL && !find_dough (figures, options->dough, &index, error))
    return FALSE;
  if (is_same_file (options->file, options->output))
    return wrong (error, "--output %s is the trial itself; name another file.", options->output);
  cards = options->dough != NULL ? tr_cards_new (figures, &index, 1, reader, size)
                                 : tr_cards_new (figures, NULL, 0, reader, size);
  return tr_cards_export (cards, options->output, error);
}

static TrRecipe *
read_recipe (const char  *file,
             GError     **error)
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
make_trial_of_recipe (const Options  *options,
                      GError        **error)
{
  g_autoptr (GError) local_error = NULL;
  g_autoptr (TrRecipe) recipe = NULL;
  g_autoptr (TrDocument) document = NULL;
  g_autoptr (GFile) output = g_file_new_for_path (options->output);
  g_autofree char *account = NULL;

  if (!g_str_equal (options->file, "-") && is_same_file (options->file, options->output))
    return wrong (error, "--output %s is the recipe itself; name another file.", options->output);
  recipe = read_recipe (options->file, &local_error);
  if (recipe == NULL && (g_str_equal (options->file, "-") || strstr (local_error->message, options->file) != NULL))
    {
      g_propagate_error (error, g_steal_pointer (&local_error));
      return FALSE;
    }
  if (recipe == NULL)
    return wrong (error, "%s: %s", options->file, local_error->message);
  document = tr_document_new_for_trial (tr_recipe_make_trial (recipe));
  if (!tr_document_save_as (document, output, error))
    return FALSE;
  account = tr_recipe_describe (recipe);
  return print_out (account, error);
}

static gboolean
do_job (const Options  *options,
        int            *status,
        GError        **error)
{
  g_autoptr (TrFigures) figures = NULL;
  g_autofree char *text = NULL;
  TrReader reader;
  gboolean has_stop = FALSE;

  /* The result stands alone on stdout, whatever messages somebody asked for. */
  g_log_writer_default_set_use_stderr (TRUE);
  if (options->job == JOB_HELP)
    return print_out (help, error);
  if (options->job == JOB_VERSION)
    return print_out ("tourier " TR_VERSION "\n", error);

  if (options->job == JOB_READ_RECIPE)
    return make_trial_of_recipe (options, error);
  tr_reader_init_plain (&reader, g_strcmp0 (options->units, "us") == 0 ? TR_UNITS_US : TR_UNITS_METRIC);
  figures = read_figures (options->file, error);
  if (figures == NULL)
    return FALSE;
  if (options->job == JOB_PAPER)
    return make_cards (options, figures, &reader, error);
  text = options->job == JOB_FIGURES ? tr_report_figures (figures, &reader)
                                     : tr_report_findings (figures, &reader, &has_stop);
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
  Options options = { JOB_NONE };
  g_autoptr (GError) error = NULL;
  int status = EXIT_FINE;

  keep_standard_descriptors ();
  if (read_options (&options, argc, argv, &error))
    {
      if (options.job == JOB_NONE)
        return GO_ON_TO_WINDOW;
      if (do_job (&options, &status, &error))
        return status;
    }
  say_wrong (error);
  return EXIT_WRONG;
}
