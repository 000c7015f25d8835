/* command-options.c: what is asked for on the command line
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Read by hand, so that no environment variable has a say. What is wrong is said in
 * one sentence that names the option.
 */

#include "config.h"

#include "command-options.h"

#include <string.h>

static const char help[] =
  "Usage:\n"
  "  tourier [FILE…]                     open the window\n"
  "  tourier --figures FILE              print every figure as JSON\n"
  "  tourier --figures --csv FILE        print what can be compared, a column a dough, as CSV\n"
  "  tourier --findings FILE             print what was found, one a line:\n"
  "                                      severity, dough, sentence; exit status 3\n"
  "                                      when something stops\n"
  "  tourier --sequences --dough ID (--fat-layers LOW-HIGH | --fat-um LOW-HIGH) FILE\n"
  "                                      print the folds that give these layers, the best\n"
  "                                      on this bench first, as JSON\n"
  "  tourier --paper card --output X FILE\n"
  "                                      make the bench cards; X ends in .pdf, .png\n"
  "                                      or .svg\n"
  "  tourier --paper compare --output X FILE\n"
  "                                      make a page of all doughs side by side\n"
  "  tourier --paper tasting|labels|key|result --output X FILE\n"
  "                                      make the score sheets, the labels with the codes,\n"
  "                                      the key to them, or how the tasting came out\n"
  "  tourier --read-recipe FILE --output X.tourier\n"
  "                                      make a trial of a recipe (text, a web page or\n"
  "                                      JSON-LD) and print how each line was understood\n"
  "\n"
  "Options:\n"
  "  --dough ID            with --paper card: the card of this dough only; --sequences needs it\n"
  "  --max-turns N         with --sequences: at most so many turns, 1 to 6 (4)\n"
  "  --max-fold K          with --sequences: folds in at most K, 2 to 6 (4)\n"
  "  --page a4|letter      with --paper: the size of the page (a4)\n"
  "  --units metric|us     with --figures, --findings, --paper: units of sentences and cards (metric)\n"
  "  --help                print this and exit\n"
  "  --version             print the version and exit\n"
  "\n"
  "FILE is a trial (or a recipe); - reads it from the standard input. Exit status: 0 all is\n"
  "well, 1 something is wrong with a file or an argument, 3 see --findings.\n";

static const char *const papers[] = { "card", "compare", "tasting", "labels", "key", "result", NULL };

gboolean
tr_command_refuse (GError     **error,
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
set_job (TrOptions  *options,
         TrJob       job,
         const char *option,
         GError    **error)
{
  if (options->job == job)
    return tr_command_refuse (error, "%s is given twice; once is enough.", option);
  if (options->job != TR_JOB_NONE)
    return tr_command_refuse (error, "%s and %s cannot be done at once; give one of them.", options->job_option, option);
  options->job = job;
  options->job_option = option;
  return TRUE;
}

/* "--output X" or "--output=X". Moves `i` to the value that was used. */
static gboolean
take_value (int          argc,
            char       **argv,
            int         *i,
            const char  *option,
            const char  *what,
            const char **value,
            GError     **error)
{
  gsize length = strlen (option);

  if (*value != NULL)
    return tr_command_refuse (error, "%s is given twice; give it once.", option);
  if (argv[*i][length] == '=')
    *value = argv[*i] + length + 1;
  else if (*i + 1 < argc && strncmp (argv[*i + 1], "--", 2) != 0)
    *value = argv[++*i];
  if (*value == NULL || **value == '\0')
    return tr_command_refuse (error, "%s needs %s behind it.", option, what);
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
take_valued_option (TrOptions *options,
                    int        argc,
                    char     **argv,
                    int       *i,
                    gboolean  *taken,
                    GError   **error)
{
  const struct { const char *option, *what; const char **value; } valued[] = {
    { "--paper", "the name of a paper, such as card,", &options->paper },
    { "--dough", "the id of a dough", &options->dough },
    { "--page", "a4 or letter", &options->page },
    { "--output", "a file name", &options->output },
    { "--units", "metric or us", &options->units },
    { "--fat-layers", "a range such as 20-40", &options->fat_layers },
    { "--fat-um", "a range such as 20-60", &options->fat_um },
    { "--max-turns", "a number from 1 to 6", &options->max_turns },
    { "--max-fold", "a number from 2 to 6", &options->max_fold },
  };

  *taken = FALSE;
  for (gsize k = 0; k < G_N_ELEMENTS (valued); k++)
    {
      if (!is_option (argv[*i], valued[k].option))
        continue;
      *taken = TRUE;
      if (!take_value (argc, argv, i, valued[k].option, valued[k].what, valued[k].value, error))
        return FALSE;
      return valued[k].value != &options->paper || set_job (options, TR_JOB_PAPER, "--paper", error);
    }
  return TRUE;
}

static gboolean
take_option (TrOptions *options,
             int        argc,
             char     **argv,
             int       *i,
             GError   **error)
{
  static const struct { const char *option; TrJob job; } jobs[] = {
    { "--figures", TR_JOB_FIGURES }, { "--findings", TR_JOB_FINDINGS }, { "--sequences", TR_JOB_SEQUENCES },
    { "--read-recipe", TR_JOB_READ_RECIPE },
    { "--help", TR_JOB_HELP }, { "-h", TR_JOB_HELP }, { "--version", TR_JOB_VERSION },
  };
  gboolean taken;

  if (g_str_equal (argv[*i], "--csv"))
    {
      if (options->is_csv)
        return tr_command_refuse (error, "--csv is given twice; once is enough.");
      options->is_csv = TRUE;
      return TRUE;
    }
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
  return tr_command_refuse (error, "The option %s is not known; tourier --help lists those there are.", argv[*i]);
}

static gboolean
check_files (const TrOptions *options,
             guint            n_files,
             GError         **error)
{
  if (n_files == 0)
    return tr_command_refuse (error, "%s needs a FILE; the trial to read is missing.", options->job_option);
  if (n_files > 1)
    return tr_command_refuse (error, "%s takes one FILE, and %u are given; do one after the other.", options->job_option, n_files);
  return TRUE;
}

static gboolean
check_page_and_units (const TrOptions *options,
                      GError         **error)
{
  if (options->page != NULL && g_strcmp0 (options->page, "a4") != 0 && g_strcmp0 (options->page, "letter") != 0)
    return tr_command_refuse (error, "--page %s is not known; expected a4 or letter.", options->page);
  if (options->units != NULL && g_strcmp0 (options->units, "metric") != 0 && g_strcmp0 (options->units, "us") != 0)
    return tr_command_refuse (error, "--units %s is not known; expected metric or us.", options->units);
  return TRUE;
}

static gboolean
has_paper_extension (const char *path)
{
  return g_str_has_suffix (path, ".pdf") || g_str_has_suffix (path, ".png") || g_str_has_suffix (path, ".svg");
}

static gboolean
check_paper (const TrOptions *options,
             GError         **error)
{
  g_autofree char *folder = NULL;

  if (!g_strv_contains (papers, options->paper))
    {
      g_autofree char *all = g_strjoinv (", ", (char **) papers);

      return tr_command_refuse (error, "--paper %s is not a paper that can be made; expected one of: %s.", options->paper, all);
    }
  if (options->output == NULL)
    return tr_command_refuse (error, "--paper needs --output and a file name that ends in .pdf, .png or .svg.");
  if (!has_paper_extension (options->output))
    return tr_command_refuse (error, "--output %s ends in neither .pdf, .png nor .svg, so that it is not clear what to make.", options->output);
  folder = g_path_get_dirname (options->output);
  if (!g_file_test (folder, G_FILE_TEST_IS_DIR))
    return tr_command_refuse (error, "--output %s cannot be written: there is no folder %s.", options->output, folder);
  if (g_file_test (options->output, G_FILE_TEST_IS_DIR))
    return tr_command_refuse (error, "--output %s cannot be written: it is a folder.", options->output);
  return TRUE;
}

static gboolean
check_sequences (const TrOptions *options,
                 GError         **error)
{
  if (options->dough == NULL)
    return tr_command_refuse (error, "--sequences needs --dough and the id of a dough.");
  if (options->fat_layers == NULL && options->fat_um == NULL)
    return tr_command_refuse (error, "--sequences needs --fat-layers or --fat-um and a range such as 20-40.");
  if (options->fat_layers != NULL && options->fat_um != NULL)
    return tr_command_refuse (error, "--fat-layers and --fat-um cannot both be wished for; give one of them.");
  return TRUE;
}

static gboolean
check_recipe_output (const TrOptions *options,
                     GError         **error)
{
  g_autofree char *folder = NULL;

  if (options->output == NULL)
    return tr_command_refuse (error, "--read-recipe needs --output and a file name that ends in .tourier.");
  if (!g_str_has_suffix (options->output, ".tourier"))
    return tr_command_refuse (error, "--output %s does not end in .tourier; a recipe becomes a trial.", options->output);
  folder = g_path_get_dirname (options->output);
  if (!g_file_test (folder, G_FILE_TEST_IS_DIR))
    return tr_command_refuse (error, "--output %s cannot be written: there is no folder %s.", options->output, folder);
  if (g_file_test (options->output, G_FILE_TEST_IS_DIR))
    return tr_command_refuse (error, "--output %s cannot be written: it is a folder.", options->output);
  return TRUE;
}

/* Options that belong to a job stand nowhere else. */
static gboolean
check_belonging (const TrOptions *options,
                 GError         **error)
{
  const struct { const char *value, *option, *job; gboolean belongs; } belonging[] = {
    { options->dough, "--dough", "--paper card and --sequences",
      options->job == TR_JOB_SEQUENCES || (options->job == TR_JOB_PAPER && g_strcmp0 (options->paper, "card") == 0) },
    { options->is_csv ? "" : NULL, "--csv", "--figures", options->job == TR_JOB_FIGURES },
    { options->page, "--page", "--paper", options->job == TR_JOB_PAPER },
    { options->output, "--output", "--paper and --read-recipe", options->job == TR_JOB_PAPER || options->job == TR_JOB_READ_RECIPE },
    { options->fat_layers, "--fat-layers", "--sequences", options->job == TR_JOB_SEQUENCES },
    { options->fat_um, "--fat-um", "--sequences", options->job == TR_JOB_SEQUENCES },
    { options->max_turns, "--max-turns", "--sequences", options->job == TR_JOB_SEQUENCES },
    { options->max_fold, "--max-fold", "--sequences", options->job == TR_JOB_SEQUENCES },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (belonging); i++)
    if (belonging[i].value != NULL && !belonging[i].belongs)
      return tr_command_refuse (error, "%s goes with %s only.", belonging[i].option, belonging[i].job);
  return TRUE;
}

static gboolean
check_options (const TrOptions *options,
               guint            n_files,
               GError         **error)
{
  if (options->job == TR_JOB_HELP || options->job == TR_JOB_VERSION)
    return TRUE;
  if (!check_belonging (options, error))
    return FALSE;
  if (options->units != NULL && options->job == TR_JOB_SEQUENCES)
    return tr_command_refuse (error, "--units does not go with --sequences; its numbers have their units in their names.");
  if (options->units != NULL && options->is_csv)
    return tr_command_refuse (error, "--units does not go with --csv; its numbers have their units beside them.");
  if (options->units != NULL && options->job == TR_JOB_READ_RECIPE)
    return tr_command_refuse (error, "--units does not go with --read-recipe; amounts are kept as they are written.");
  if (options->units != NULL && options->job == TR_JOB_NONE)
    return tr_command_refuse (error, "--units goes with --figures, --findings or --paper; in the window it is a preference.");
  if (options->job == TR_JOB_NONE && options->from_stdin)
    return tr_command_refuse (error, "The window opens files; - goes with --figures, --findings or --paper only.");
  if (options->job == TR_JOB_NONE)
    return TRUE;
  if (options->for_window)
    return tr_command_refuse (error, "%s opens no window; options for one do not go with it.", options->job_option);
  return check_page_and_units (options, error) &&
         (options->job != TR_JOB_PAPER || check_paper (options, error)) &&
         (options->job != TR_JOB_SEQUENCES || check_sequences (options, error)) &&
         (options->job != TR_JOB_READ_RECIPE || check_recipe_output (options, error)) &&
         check_files (options, n_files, error);
}

gboolean
tr_options_read (TrOptions *options,
                 int        argc,
                 char     **argv,
                 GError   **error)
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

const char *
tr_options_get_help (void)
{
  return help;
}
