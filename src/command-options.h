/* command-options.h: what is asked for on the command line
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  TR_JOB_NONE, TR_JOB_FIGURES, TR_JOB_FINDINGS, TR_JOB_SEQUENCES, TR_JOB_PAPER, TR_JOB_READ_RECIPE, TR_JOB_HELP, TR_JOB_VERSION
} TrJob;

/* As it was written; NULL: not given. Borrowed from the arguments. */
typedef struct {
  TrJob job;
  const char *job_option;
  const char *paper, *dough, *page, *output, *units;
  const char *fat_layers, *fat_um, *max_turns, *max_fold;
  const char *file;
  gboolean is_csv;
  gboolean for_window;           /* an option of the windowing system is there */
  gboolean only_files;           /* after "--" */
  gboolean from_stdin;           /* one of the files is "-" */
} TrOptions;

/* FALSE with a sentence: what cannot be done. Files are not opened. */
gboolean    tr_options_read  (TrOptions *options, int argc, char **argv, GError **error);
const char *tr_options_get_help (void);
/* Sets the error to a sentence and returns FALSE. */
gboolean    tr_command_refuse (GError **error, const char *format, ...) G_GNUC_PRINTF (2, 3);

G_END_DECLS
