/* cursor.h: reading a line of text, one character at a time
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For the readers of amounts only. Any bytes will do: one that is not UTF-8 is
 * U+FFFD. Never reads past the end.
 */

#pragma once

#include "amount.h"

G_BEGIN_DECLS

/* A copy of a cursor is a place to go back to. */
typedef struct { const char *at, *end; } TrCursor;

gunichar tr_cursor_peek        (TrCursor     cursor);    /* 0 at the end */
void     tr_cursor_advance     (TrCursor    *cursor);
gboolean tr_cursor_is_at_end   (TrCursor     cursor);
gboolean tr_cursor_is_digit    (TrCursor     cursor);
gboolean tr_cursor_skip_spaces (TrCursor    *cursor);    /* TRUE: there were some */
/* Takes a whole word of ASCII letters, in either case. */
gboolean tr_cursor_take_word   (TrCursor    *cursor,
                                const char  *word);

/* Fills `problem` (unless NULL) quoting from `from` (NULL: nothing) to `to`,
 * shortened; always FALSE. */
gboolean tr_cursor_fail        (TrProblem   *problem,
                                TrProblemId  id,
                                const char  *from,
                                const char  *to);

static inline gboolean
tr_is_dash (gunichar c)
{
  return c == '-' || (c >= 0x2010 && c <= 0x2014) || c == 0x2212;
}

G_END_DECLS
