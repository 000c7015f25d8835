/* number.c: a number as a baker writes it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Decimals with either separator, fractions and mixed numbers, the same in
 * every locale.
 *
 *   number   = decimal | fraction | decimal [ "-" | "and" | … ] fraction
 *   fraction = "½" … | digits "/" digits
 */

#include "number.h"

#include <math.h>

#define MAX_NUMBER_BYTES 320     /* more digits than that mean nothing in a double */

/* Every fraction that Unicode has as one character. */
static const struct { gunichar c; guint8 numerator, denominator; } vulgar_fractions[] = {
  { 0x00BC, 1, 4 }, { 0x00BD, 1, 2 }, { 0x00BE, 3, 4 },
  { 0x2150, 1, 7 }, { 0x2151, 1, 9 }, { 0x2152, 1, 10 }, { 0x2153, 1, 3 }, { 0x2154, 2, 3 },
  { 0x2155, 1, 5 }, { 0x2156, 2, 5 }, { 0x2157, 3, 5 }, { 0x2158, 4, 5 }, { 0x2159, 1, 6 },
  { 0x215A, 5, 6 }, { 0x215B, 1, 8 }, { 0x215C, 3, 8 }, { 0x215D, 5, 8 }, { 0x215E, 7, 8 },
  { 0x2189, 0, 3 },
};

#define FRACTION_NUMERATOR_ONE 0x215F   /* "⅟", as in ⅟16 */

static gboolean
is_slash (gunichar c)
{
  return c == '/' || c == 0x2044 || c == 0x2215;
}

/* Decimal numbers. First the shape is read, then what its separators mean is
 * decided, then the digits are copied out and converted. */

typedef struct {
  const char *start, *end;
  guint n_commas, n_dots, n_spaces;
  char last;                     /* the last comma or dot; 0: none */
  gsize digits_after;            /* after the last one */
  gboolean only_zeros_before;
  gboolean groups_ok;            /* all groups between two separators have three digits, the first one to three */
} Shape;

/* A space between groups of three digits, as in 12 500. */
static gboolean
skip_group_space (TrCursor *cursor)
{
  TrCursor ahead = *cursor;
  gunichar c = tr_cursor_peek (ahead);

  if (!g_unichar_isspace (c) && c != '\'' && c != 0x2019)
    return FALSE;

  tr_cursor_advance (&ahead);
  TrCursor digits = ahead;
  for (guint i = 0; i < 3; i++, tr_cursor_advance (&digits))
    if (!tr_cursor_is_digit (digits))
      return FALSE;
  if (tr_cursor_is_digit (digits) || is_slash (tr_cursor_peek (digits)))
    return FALSE;

  *cursor = ahead;
  return TRUE;
}

static void
end_group (Shape *shape,
           gsize  n_digits)
{
  gboolean is_first = shape->n_commas + shape->n_dots + shape->n_spaces == 0;

  if (is_first ? (n_digits == 0 || n_digits > 3) : n_digits != 3)
    shape->groups_ok = FALSE;
}

static void
read_shape (TrCursor *cursor,
            Shape    *shape)
{
  gsize n_digits = 0;

  *shape = (Shape) { .start = cursor->at, .only_zeros_before = TRUE, .groups_ok = TRUE };
  for (;;)
    {
      TrCursor ahead = *cursor;
      char c = tr_cursor_is_at_end (*cursor) ? '\0' : *cursor->at;

      if (g_ascii_isdigit (c))
        {
          n_digits++;
          if (shape->last == '\0' && c != '0')
            shape->only_zeros_before = FALSE;
          cursor->at++;
          continue;
        }

      tr_cursor_advance (&ahead);
      if ((c == ',' || c == '.') && tr_cursor_is_digit (ahead))
        {
          end_group (shape, n_digits);
          shape->n_commas += c == ',';
          shape->n_dots += c == '.';
          shape->last = c;
          *cursor = ahead;
        }
      else if (n_digits > 0 && n_digits <= 3 && shape->last == '\0' && skip_group_space (cursor))
        {
          end_group (shape, n_digits);
          shape->n_spaces++;
        }
      else
        break;
      n_digits = 0;
    }
  shape->digits_after = n_digits;
  shape->end = cursor->at;
}

/* Copies the digits; the last separator becomes the point unless it is one
 * between thousands. */
static double
convert (const Shape *shape,
         gboolean     has_point)
{
  char buffer[MAX_NUMBER_BYTES];
  const char *point = has_point ? shape->end - shape->digits_after - 1 : NULL;
  gsize n = 0;

  for (const char *p = shape->start; p < shape->end; p++)
    {
      if (!g_ascii_isdigit (*p) && p != point)
        continue;
      if (n + 1 >= sizeof buffer)
        return INFINITY;
      buffer[n++] = p == point ? '.' : *p;
    }
  buffer[n] = '\0';

  return g_ascii_strtod (buffer, NULL);
}

static gboolean
fail_ambiguous (TrProblem   *problem,
                const Shape *shape)
{
  tr_cursor_fail (problem, TR_PROBLEM_AMBIGUOUS, shape->start, shape->end);
  if (problem != NULL)
    {
      problem->value[0] = convert (shape, TRUE);
      problem->value[1] = convert (shape, FALSE);
    }

  return FALSE;
}

/* What the separators mean:
 *
 *   1.5  1,5  0.500  ,5     one, and not (three digits after, more than 0 before): the point
 *   1.500  1,500            one, three digits after: ambiguous
 *   1,234.5  1.234,567      both kinds: the last is the point, the first groups
 *   1,234,567               one kind twice: groups
 *   1 234,567               spaces group, so the other is the point
 */
static gboolean
read_decimal (TrCursor  *cursor,
              double    *value,
              gboolean  *is_whole,
              TrProblem *problem)
{
  Shape shape;

  read_shape (cursor, &shape);

  guint n_same = shape.last == ',' ? shape.n_commas : shape.n_dots;
  guint n_other = shape.n_commas + shape.n_dots - n_same;
  gboolean has_point = shape.last != '\0' && n_same == 1;

  if (has_point && n_other == 0 && shape.n_spaces == 0)
    {
      if (shape.digits_after == 3 && !shape.only_zeros_before)
        return fail_ambiguous (problem, &shape);
    }
  else if (shape.last != '\0')
    {
      if (!has_point)
        end_group (&shape, shape.digits_after);
      if (!shape.groups_ok || (n_same > 1 && n_other + shape.n_spaces > 0))
        return tr_cursor_fail (problem, TR_PROBLEM_NOT_UNDERSTOOD, shape.start, shape.end);
    }

  *is_whole = !has_point;
  *value = convert (&shape, has_point);
  if (!isfinite (*value))
    return tr_cursor_fail (problem, TR_PROBLEM_OUT_OF_RANGE, shape.start, shape.end);

  return TRUE;
}

/* Fractions */

static gboolean
take_vulgar (TrCursor *cursor,
             double   *value)
{
  gunichar c = tr_cursor_peek (*cursor);

  for (guint i = 0; c > 0x7F && i < G_N_ELEMENTS (vulgar_fractions); i++)
    if (vulgar_fractions[i].c == c)
      {
        *value = (double) vulgar_fractions[i].numerator / vulgar_fractions[i].denominator;
        tr_cursor_advance (cursor);
        return TRUE;
      }

  return FALSE;
}

static gboolean
take_digits (TrCursor *cursor,
             double   *value)
{
  Shape shape = { .start = cursor->at };

  while (tr_cursor_is_digit (*cursor))
    cursor->at++;
  shape.end = cursor->at;
  *value = convert (&shape, FALSE);

  return shape.end > shape.start;
}

static gboolean
take_slash (TrCursor *cursor)
{
  TrCursor ahead = *cursor;

  tr_cursor_skip_spaces (&ahead);
  if (!is_slash (tr_cursor_peek (ahead)))
    return FALSE;
  tr_cursor_advance (&ahead);
  tr_cursor_skip_spaces (&ahead);
  if (!tr_cursor_is_digit (ahead))
    return FALSE;

  *cursor = ahead;
  return TRUE;
}

/* "½", "1/2", "⅟2". Not finite when divided by 0. */
static gboolean
take_fraction (TrCursor *cursor,
               double   *value)
{
  TrCursor ahead = *cursor;
  double numerator = 1, denominator;

  if (take_vulgar (cursor, value))
    return TRUE;

  if (tr_cursor_peek (ahead) == FRACTION_NUMERATOR_ONE)
    tr_cursor_advance (&ahead);
  else if (!take_digits (&ahead, &numerator) || !take_slash (&ahead))
    return FALSE;
  if (!take_digits (&ahead, &denominator))
    return FALSE;

  *value = denominator > 0 ? numerator / denominator : INFINITY;
  *cursor = ahead;
  return TRUE;
}

/* What may stand between a whole number and its fraction: nothing (1½), a
 * space, a hyphen (2-1/2), "and" or "plus". */
static void
skip_mixed_joint (TrCursor *cursor)
{
  TrCursor ahead = *cursor;
  gunichar c;

  tr_cursor_skip_spaces (&ahead);
  c = tr_cursor_peek (ahead);
  if (tr_is_dash (c) || c == '&' || c == '+')
    tr_cursor_advance (&ahead);
  else if (!tr_cursor_take_word (&ahead, "and"))
    tr_cursor_take_word (&ahead, "plus");
  tr_cursor_skip_spaces (&ahead);
  *cursor = ahead;
}

/* The fraction of a mixed number is below one and its whole number is not 0;
 * otherwise it is something else, such as the end of a range. */
static void
add_mixed_fraction (TrCursor *cursor,
                    double   *value)
{
  TrCursor ahead = *cursor;
  double fraction;

  skip_mixed_joint (&ahead);
  if (*value < 1 || !take_fraction (&ahead, &fraction) || !(fraction < 1))
    return;

  *value += fraction;
  *cursor = ahead;
}

gboolean
tr_number_starts (TrCursor cursor)
{
  gunichar c = tr_cursor_peek (cursor);
  double ignored;

  if (c == '.' || c == ',')
    {
      tr_cursor_advance (&cursor);
      return tr_cursor_is_digit (cursor);
    }

  return tr_cursor_is_digit (cursor) || c == FRACTION_NUMERATOR_ONE || take_vulgar (&cursor, &ignored);
}

gboolean
tr_number_read (TrCursor  *cursor,
                double    *value,
                TrProblem *problem)
{
  const char *start = cursor->at;
  gboolean is_whole = FALSE;

  if (take_fraction (cursor, value))
    {
      if (!isfinite (*value))
        return tr_cursor_fail (problem, TR_PROBLEM_OUT_OF_RANGE, start, cursor->at);
      return TRUE;
    }
  if (!tr_number_starts (*cursor))
    return tr_cursor_fail (problem, TR_PROBLEM_NO_NUMBER, start, cursor->end);
  if (!read_decimal (cursor, value, &is_whole, problem))
    return FALSE;
  if (is_whole)
    add_mixed_fraction (cursor, value);

  return TRUE;
}
