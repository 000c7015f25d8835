/* cursor.c: reading a line of text, one character at a time
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * See cursor.h. Allocates only to report a problem.
 */

#include "cursor.h"

#include <math.h>
#include <string.h>

#define MAX_TEXT_CHARS 60        /* of what a problem quotes */

/* The character here and its length; 0 at the end, U+FFFD for one byte that
 * is not UTF-8. */
static gunichar
peek (TrCursor  cursor,
      gsize    *length)
{
  *length = 0;
  if (cursor.at >= cursor.end)
    return 0;

  *length = 1;
  if ((guchar) *cursor.at < 0x80)
    return (guchar) *cursor.at;

  gunichar c = g_utf8_get_char_validated (cursor.at, cursor.end - cursor.at);
  if (c == (gunichar) -1 || c == (gunichar) -2)
    return 0xFFFD;

  *length = (gsize) (g_utf8_next_char (cursor.at) - cursor.at);
  return c;
}

gunichar
tr_cursor_peek (TrCursor cursor)
{
  gsize length;

  return peek (cursor, &length);
}

void
tr_cursor_advance (TrCursor *cursor)
{
  gsize length;

  peek (*cursor, &length);
  cursor->at += length;
}

gboolean
tr_cursor_is_at_end (TrCursor cursor)
{
  return cursor.at >= cursor.end;
}

gboolean
tr_cursor_skip_spaces (TrCursor *cursor)
{
  const char *start = cursor->at;

  while (g_unichar_isspace (tr_cursor_peek (*cursor)))
    tr_cursor_advance (cursor);

  return cursor->at > start;
}

gboolean
tr_cursor_is_digit (TrCursor cursor)
{
  return !tr_cursor_is_at_end (cursor) && g_ascii_isdigit (*cursor.at);
}

gboolean
tr_cursor_take_word (TrCursor   *cursor,
                     const char *word)
{
  gsize length = strlen (word);
  TrCursor after = *cursor;

  if ((gsize) (cursor->end - cursor->at) < length || g_ascii_strncasecmp (cursor->at, word, length) != 0)
    return FALSE;

  after.at += length;
  if (g_unichar_isalpha (tr_cursor_peek (after)))
    return FALSE;

  *cursor = after;
  return TRUE;
}

static char *
quote (const char *from,
       const char *to)
{
  TrCursor cursor = { from, to };
  GString *text = g_string_new (NULL);

  tr_cursor_skip_spaces (&cursor);
  for (guint n = 0; n < MAX_TEXT_CHARS && !tr_cursor_is_at_end (cursor); n++)
    {
      g_string_append_unichar (text, tr_cursor_peek (cursor));
      tr_cursor_advance (&cursor);
    }
  if (!tr_cursor_is_at_end (cursor))
    g_string_append (text, "…");

  return g_strchomp (g_string_free (text, FALSE));
}

gboolean
tr_cursor_fail (TrProblem   *problem,
                TrProblemId  id,
                const char  *from,
                const char  *to)
{
  if (problem != NULL)
    {
      *problem = (TrProblem) { .id = id, .value = { NAN, NAN } };
      if (from != NULL)
        problem->text = quote (from, to);
    }

  return FALSE;
}
