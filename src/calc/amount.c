/* amount.c: what an amount as the baker typed it means
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A hand-written reader of one line of text. It looks at every character a
 * fixed number of times and takes any bytes: what is not UTF-8 is simply not
 * understood.
 *
 *   amount   = part { [ "," | "+" | "&" | "and" | "plus" ] part }
 *   part     = quantity unit
 *   quantity = number [ ( "-" | "to" ) number ]
 */

#include "amount.h"

#include <math.h>
#include <string.h>

#include "number.h"
#include "unit.h"

#define MAX_VALUE 1e9

void
tr_problem_free (TrProblem *problem)
{
  if (problem == NULL)
    return;

  g_free (problem->where);
  g_free (problem->text);
  g_free (problem);
}

static gboolean
take_range_dash (TrCursor *cursor)
{
  TrCursor ahead = *cursor;

  tr_cursor_skip_spaces (&ahead);
  if (tr_is_dash (tr_cursor_peek (ahead)))
    tr_cursor_advance (&ahead);
  else if (!tr_cursor_take_word (&ahead, "to"))
    return FALSE;
  tr_cursor_skip_spaces (&ahead);
  if (!tr_number_starts (ahead))
    return FALSE;

  *cursor = ahead;
  return TRUE;
}

static gboolean
read_quantity (TrCursor  *cursor,
               double    *value,
               gboolean  *is_mean,
               TrProblem *problem)
{
  double end;

  if (!tr_number_read (cursor, value, problem))
    return FALSE;

  if (take_range_dash (cursor))
    {
      if (!tr_number_read (cursor, &end, problem))
        return FALSE;
      *value = (*value + end) / 2;
      *is_mean = TRUE;
    }

  return TRUE;
}

/* Spaces and at most one of the words and signs that join two parts. */
static void
skip_part_joint (TrCursor *cursor)
{
  gunichar c;

  tr_cursor_skip_spaces (cursor);
  c = tr_cursor_peek (*cursor);
  if (c == ',' || c == '+' || c == '&')
    tr_cursor_advance (cursor);
  else if (!tr_cursor_take_word (cursor, "and"))
    tr_cursor_take_word (cursor, "plus");
  tr_cursor_skip_spaces (cursor);
}

static gboolean
read_part (TrCursor  *cursor,
           TrAmount  *amount,
           TrProblem *problem)
{
  const char *start = cursor->at;
  TrAmountPart part;

  if (!read_quantity (cursor, &part.number, &amount->is_mean, problem) ||
      !tr_unit_read (cursor, &part.unit, problem))
    return FALSE;

  double grams = tr_unit_grams (part.unit);
  if (part.number > MAX_VALUE || (!isnan (grams) && part.number * grams > MAX_VALUE))
    return tr_cursor_fail (problem, TR_PROBLEM_OUT_OF_RANGE, start, cursor->at);

  amount->parts[amount->n_parts++] = part;
  return TRUE;
}

static gboolean
mixes_percent (const TrAmount *amount)
{
  for (guint i = 0; amount->n_parts > 1 && i < amount->n_parts; i++)
    if (tr_unit_is_percent (amount->parts[i].unit))
      return TRUE;

  return FALSE;
}

gboolean
tr_amount_parse (const char *text,
                 TrAmount   *amount,
                 TrProblem  *problem)
{
  g_return_val_if_fail (text != NULL && amount != NULL, FALSE);

  TrCursor cursor = { text, text + strlen (text) };

  *amount = (TrAmount) { 0 };
  if (problem != NULL)
    *problem = (TrProblem) { .value = { NAN, NAN } };

  tr_cursor_skip_spaces (&cursor);
  if (tr_cursor_is_at_end (cursor))
    return tr_cursor_fail (problem, TR_PROBLEM_EMPTY, NULL, NULL);

  do
    {
      const char *rest = cursor.at;

      if (amount->n_parts > 0)
        skip_part_joint (&cursor);
      if (amount->n_parts == TR_AMOUNT_MAX_PARTS || (amount->n_parts > 0 && !tr_number_starts (cursor)))
        return tr_cursor_fail (problem, TR_PROBLEM_NOT_UNDERSTOOD, rest, cursor.end);
      if (!read_part (&cursor, amount, problem))
        return FALSE;
      tr_cursor_skip_spaces (&cursor);
    }
  while (!tr_cursor_is_at_end (cursor));

  if (mixes_percent (amount))
    return tr_cursor_fail (problem, TR_PROBLEM_MIXED_PERCENT, NULL, NULL);

  return TRUE;
}
