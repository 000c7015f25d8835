/* read-documents.c: tells what the reader makes of each file named on its input
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One line a file: "read", or the sentence of the refusal. What was read is
 * written back as FILE.written, for a validator to look at.
 */

#include <stdio.h>
#include <string.h>

#include "trial/document.h"

static void
tell (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TrTrial) trial = tr_trial_read_file (path, &error);

  if (trial != NULL)
    {
      g_autofree char *text = tr_trial_write (trial, NULL);
      g_autofree char *written = g_strconcat (path, ".written", NULL);

      g_assert_true (g_file_set_contents (written, text, -1, NULL));
    }
  printf ("%s\n", trial != NULL ? "read" : error->message);
}

int
main (void)
{
  char line[4096];

  while (fgets (line, sizeof line, stdin) != NULL)
    {
      g_strchomp (line);
      tell (line);
    }

  return 0;
}
