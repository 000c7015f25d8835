/* check.h: what every text of this room has to be
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <string.h>

#include "words/words.h"

#define NB "\u00a0"
#define THIN "\u202f"
#define MINUS "\u2212"

static inline TrReader
plain (TrUnitSystem units)
{
  TrReader reader;

  tr_reader_init_plain (&reader, units);
  return reader;
}

static inline TrReader
with_comma (TrUnitSystem units)
{
  TrReader reader = plain (units);

  g_strlcpy (reader.decimal, ",", sizeof reader.decimal);
  return reader;
}

/* Nothing a reader would stumble over. */
static inline void
check_text (const char *text)
{
  static const char *const never[] = { "nan", "NaN", "inf", "  ", "(null)", "%s", "%%", "%d", "%u", " .", " ,", "..", ";;", "()" };

  g_assert_nonnull (text);
  g_assert_cmpstr (text, !=, "");
  g_assert_true (g_utf8_validate (text, -1, NULL));
  for (gsize i = 0; i < G_N_ELEMENTS (never); i++)
    if (strstr (text, never[i]) != NULL)
      g_error ("“%s” in “%s”", never[i], text);
  g_assert_false (g_ascii_isspace (text[0]));
  g_assert_false (g_ascii_isspace (text[strlen (text) - 1]));
}

/* It begins with a capital, a digit, or what is quoted, and ends with a full stop. */
static inline void
check_shape (const char *text)
{
  gunichar first;

  g_assert_nonnull (text);
  g_assert_true (g_utf8_validate (text, -1, NULL));
  first = g_utf8_get_char (text);
  if (!g_unichar_isupper (first) && !g_unichar_isdigit (first) && first != 0x201c)
    g_error ("not the start of a sentence: %s", text);
  if (text[strlen (text) - 1] != '.')
    g_error ("not the end of a sentence: %s", text);
}

/* A whole sentence, in which nothing that is not known is said. */
static inline void
check_sentence (const char *text)
{
  check_text (text);
  check_shape (text);
  if (strstr (text, "–" NB) != NULL || strstr (text, " –") != NULL)
    g_error ("something that is not known is said: %s", text);
}
