/* print-locale.c: prints what a reader of the process's locale sees
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <locale.h>
#include <stdio.h>

#include "words/words.h"

int
main (int    argc,
      char **argv)
{
  TrReader locale, plain;
  g_autofree char *in_locale = NULL, *in_plain = NULL, *entry = NULL;
  double back = 0;

  if (setlocale (LC_ALL, "") == NULL)
    return 2;
  tr_reader_init_locale (&locale, TR_UNITS_METRIC);
  tr_reader_init_plain (&plain, TR_UNITS_METRIC);
  in_locale = tr_words_mass (&locale, 16.4);
  in_plain = tr_words_mass (&plain, 16.4);
  entry = tr_words_write (&locale, TR_QUANTITY_NUMBER, 1.125);
  if (!tr_words_read (&locale, TR_QUANTITY_NUMBER, entry, &back, NULL))
    return 3;
  printf ("%s|%s|%s|%d\n", in_locale, in_plain, entry, fabs (back - 1.125) < 1e-12);
  return 0;
}
