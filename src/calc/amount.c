/* amount.c: what an amount as the baker typed it means
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A hand-written reader of one line of text. It looks at every character a
 * fixed number of times, never past the end, takes any bytes (what is not
 * UTF-8 is simply not understood) and allocates only to report a problem.
 *
 *   amount   = part { [ "," | "+" | "&" | "and" | "plus" ] part }
 *   part     = quantity unit
 *   quantity = number [ ( "-" | "to" ) number ]
 *   number   = decimal | fraction | decimal [ "-" | "and" | … ] fraction
 *   fraction = "½" … | digits "/" digits
 *   unit     = one or two words, or "%" [ "of" ( "flour" | "dough" | "total" ) ]
 */

#include "amount.h"

#include <math.h>
#include <string.h>

#define MAX_VALUE 1e9
#define MAX_NUMBER_BYTES 320     /* more digits than that mean nothing in a double */
#define MAX_WORD_BYTES 16        /* longer than every word of a unit */
#define MAX_TEXT_CHARS 60        /* of what a problem quotes */

/* Exact, NIST Handbook 44 appendix C. */
#define LB_G 453.59237
#define GALLON_ML 3785.411784

typedef struct { const char *id; double grams, ml; } UnitInfo;

static const UnitInfo units[TR_N_UNITS] = {
  [TR_UNIT_MG] = { "mg", 0.001, NAN },
  [TR_UNIT_G] = { "g", 1, NAN },
  [TR_UNIT_KG] = { "kg", 1000, NAN },
  [TR_UNIT_OZ] = { "oz", LB_G / 16, NAN },
  [TR_UNIT_LB] = { "lb", LB_G, NAN },
  [TR_UNIT_ML] = { "ml", NAN, 1 },
  [TR_UNIT_CL] = { "cl", NAN, 10 },
  [TR_UNIT_DL] = { "dl", NAN, 100 },
  [TR_UNIT_L] = { "l", NAN, 1000 },
  [TR_UNIT_TSP] = { "tsp", NAN, GALLON_ML / 768 },
  [TR_UNIT_TBSP] = { "tbsp", NAN, GALLON_ML / 256 },
  [TR_UNIT_FLOZ] = { "floz", NAN, GALLON_ML / 128 },
  [TR_UNIT_CUP] = { "cup", NAN, GALLON_ML / 16 },
  [TR_UNIT_CUP_METRIC] = { "cup-metric", NAN, 250 },
  [TR_UNIT_EGG] = { "egg", NAN, NAN },
  [TR_UNIT_WHITE] = { "white", NAN, NAN },
  [TR_UNIT_YOLK] = { "yolk", NAN, NAN },
  [TR_UNIT_PIECE] = { "piece", NAN, NAN },
  [TR_UNIT_STICK] = { "stick", NAN, NAN },
  [TR_UNIT_PACKET] = { "packet", NAN, NAN },
  [TR_UNIT_CAKE] = { "cake", NAN, NAN },
  [TR_UNIT_PINCH] = { "pinch", NAN, NAN },
  [TR_UNIT_CUBE] = { "cube", NAN, NAN },
  [TR_UNIT_PERCENT] = { "%", NAN, NAN },
  [TR_UNIT_PERCENT_OF_DOUGH] = { "% of dough", NAN, NAN },
  [TR_UNIT_PERCENT_OF_TOTAL] = { "% of total", NAN, NAN },
};

/* Lower case, without dots, singular; two words are joined by a space. Sorted
 * by nothing: some eighty short words. */
static const struct { const char *name; TrUnit unit; } unit_names[] = {
  { "g", TR_UNIT_G }, { "gr", TR_UNIT_G }, { "gram", TR_UNIT_G }, { "gramme", TR_UNIT_G }, { "gm", TR_UNIT_G },
  { "kg", TR_UNIT_KG }, { "kilo", TR_UNIT_KG }, { "kilogram", TR_UNIT_KG }, { "kilogramme", TR_UNIT_KG },
  { "mg", TR_UNIT_MG }, { "milligram", TR_UNIT_MG }, { "milligramme", TR_UNIT_MG },
  { "oz", TR_UNIT_OZ }, { "ounce", TR_UNIT_OZ },
  { "lb", TR_UNIT_LB }, { "pound", TR_UNIT_LB },
  { "ml", TR_UNIT_ML }, { "millilitre", TR_UNIT_ML }, { "milliliter", TR_UNIT_ML },
  { "cl", TR_UNIT_CL }, { "centilitre", TR_UNIT_CL }, { "centiliter", TR_UNIT_CL },
  { "dl", TR_UNIT_DL }, { "decilitre", TR_UNIT_DL }, { "deciliter", TR_UNIT_DL },
  { "l", TR_UNIT_L }, { "litre", TR_UNIT_L }, { "liter", TR_UNIT_L },
  { "tsp", TR_UNIT_TSP }, { "teaspoon", TR_UNIT_TSP },
  { "tbsp", TR_UNIT_TBSP }, { "tbs", TR_UNIT_TBSP }, { "tablespoon", TR_UNIT_TBSP },
  { "floz", TR_UNIT_FLOZ }, { "fl oz", TR_UNIT_FLOZ }, { "fl ounce", TR_UNIT_FLOZ },
  { "fluid oz", TR_UNIT_FLOZ }, { "fluid ounce", TR_UNIT_FLOZ },
  { "cup", TR_UNIT_CUP }, { "us cup", TR_UNIT_CUP },
  { "cup metric", TR_UNIT_CUP_METRIC }, { "metric cup", TR_UNIT_CUP_METRIC },
  { "egg", TR_UNIT_EGG }, { "whole egg", TR_UNIT_EGG },
  { "white", TR_UNIT_WHITE }, { "egg white", TR_UNIT_WHITE },
  { "yolk", TR_UNIT_YOLK }, { "egg yolk", TR_UNIT_YOLK },
  { "piece", TR_UNIT_PIECE }, { "pc", TR_UNIT_PIECE },
  { "stick", TR_UNIT_STICK },
  { "packet", TR_UNIT_PACKET }, { "pkt", TR_UNIT_PACKET }, { "sachet", TR_UNIT_PACKET },
  { "cake", TR_UNIT_CAKE }, { "pinch", TR_UNIT_PINCH }, { "cube", TR_UNIT_CUBE },
  { "percent", TR_UNIT_PERCENT }, { "per cent", TR_UNIT_PERCENT },
};

/* Every fraction that Unicode has as one character. */
static const struct { gunichar c; guint8 numerator, denominator; } vulgar_fractions[] = {
  { 0x00BC, 1, 4 }, { 0x00BD, 1, 2 }, { 0x00BE, 3, 4 },
  { 0x2150, 1, 7 }, { 0x2151, 1, 9 }, { 0x2152, 1, 10 }, { 0x2153, 1, 3 }, { 0x2154, 2, 3 },
  { 0x2155, 1, 5 }, { 0x2156, 2, 5 }, { 0x2157, 3, 5 }, { 0x2158, 4, 5 }, { 0x2159, 1, 6 },
  { 0x215A, 5, 6 }, { 0x215B, 1, 8 }, { 0x215C, 3, 8 }, { 0x215D, 5, 8 }, { 0x215E, 7, 8 },
  { 0x2189, 0, 3 },
};

#define FRACTION_NUMERATOR_ONE 0x215F   /* "⅟", as in ⅟16 */

void
tr_problem_free (TrProblem *problem)
{
  if (problem == NULL)
    return;

  g_free (problem->where);
  g_free (problem->text);
  g_free (problem);
}

double
tr_unit_grams (TrUnit unit)
{
  g_return_val_if_fail (unit < TR_N_UNITS, NAN);
  return units[unit].grams;
}

double
tr_unit_ml (TrUnit unit)
{
  g_return_val_if_fail (unit < TR_N_UNITS, NAN);
  return units[unit].ml;
}

gboolean
tr_unit_is_percent (TrUnit unit)
{
  return unit == TR_UNIT_PERCENT || unit == TR_UNIT_PERCENT_OF_DOUGH || unit == TR_UNIT_PERCENT_OF_TOTAL;
}

const char *
tr_unit_id (TrUnit unit)
{
  g_return_val_if_fail (unit < TR_N_UNITS, NULL);
  return units[unit].id;
}

int
tr_unit_from_id (const char *id)
{
  for (int i = 0; i < TR_N_UNITS; i++)
    if (g_strcmp0 (units[i].id, id) == 0)
      return i;

  return -1;
}

/* The cursor. A copy of it is a place to go back to. */

typedef struct { const char *at, *end; } Cursor;

/* The character here and its length; 0 at the end, U+FFFD for one byte that
 * is not UTF-8. */
static gunichar
peek (Cursor  cursor,
      gsize  *length)
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

static gunichar
peek_char (Cursor cursor)
{
  gsize length;

  return peek (cursor, &length);
}

static void
advance (Cursor *cursor)
{
  gsize length;

  peek (*cursor, &length);
  cursor->at += length;
}

static gboolean
at_end (Cursor cursor)
{
  return cursor.at >= cursor.end;
}

static gboolean
skip_spaces (Cursor *cursor)
{
  const char *start = cursor->at;

  while (g_unichar_isspace (peek_char (*cursor)))
    advance (cursor);

  return cursor->at > start;
}

static gboolean
is_digit (Cursor cursor)
{
  return !at_end (cursor) && g_ascii_isdigit (*cursor.at);
}

static gboolean
is_slash (gunichar c)
{
  return c == '/' || c == 0x2044 || c == 0x2215;
}

static gboolean
is_dash (gunichar c)
{
  return c == '-' || (c >= 0x2010 && c <= 0x2014) || c == 0x2212;
}

/* A word in ASCII letters, as written in lower case here. */
static gboolean
take_word (Cursor     *cursor,
           const char *word)
{
  gsize length = strlen (word);
  Cursor after = *cursor;

  if ((gsize) (cursor->end - cursor->at) < length || g_ascii_strncasecmp (cursor->at, word, length) != 0)
    return FALSE;

  after.at += length;
  if (g_unichar_isalpha (peek_char (after)))
    return FALSE;

  *cursor = after;
  return TRUE;
}

/* Problems */

static char *
quote (const char *from,
       const char *to)
{
  Cursor cursor = { from, to };
  GString *text = g_string_new (NULL);

  skip_spaces (&cursor);
  for (guint n = 0; n < MAX_TEXT_CHARS && !at_end (cursor); n++)
    {
      g_string_append_unichar (text, peek_char (cursor));
      advance (&cursor);
    }
  if (!at_end (cursor))
    g_string_append (text, "…");

  return g_strchomp (g_string_free (text, FALSE));
}

static gboolean
fail (TrProblem   *problem,
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

/* Decimal numbers. First the shape is read, then what its separators mean is
 * decided, then the digits are copied out and converted. */

typedef struct {
  const char *start, *end;
  guint n_commas, n_dots, n_spaces;
  char last;                     /* the last comma or dot; 0: none */
  gsize digits_before;           /* before the first comma or dot */
  gsize digits_after;            /* after the last one */
  gboolean only_zeros_before;
  gboolean groups_ok;            /* all groups between two separators have three digits, the first one to three */
} Shape;

/* A space between groups of three digits, as in 12 500. */
static gboolean
skip_group_space (Cursor *cursor)
{
  Cursor ahead = *cursor;
  gunichar c = peek_char (ahead);

  if (!g_unichar_isspace (c) && c != '\'' && c != 0x2019)
    return FALSE;

  advance (&ahead);
  Cursor digits = ahead;
  for (guint i = 0; i < 3; i++, advance (&digits))
    if (!is_digit (digits))
      return FALSE;
  if (is_digit (digits) || is_slash (peek_char (digits)))
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
read_shape (Cursor *cursor,
            Shape  *shape)
{
  gsize n_digits = 0;

  *shape = (Shape) { .start = cursor->at, .only_zeros_before = TRUE, .groups_ok = TRUE };
  for (;;)
    {
      Cursor ahead = *cursor;
      char c = at_end (*cursor) ? '\0' : *cursor->at;

      if (g_ascii_isdigit (c))
        {
          n_digits++;
          if (shape->last == '\0')
            {
              shape->digits_before++;
              shape->only_zeros_before = shape->only_zeros_before && c == '0';
            }
          cursor->at++;
          continue;
        }

      advance (&ahead);
      if ((c == ',' || c == '.') && is_digit (ahead))
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
  fail (problem, TR_PROBLEM_AMBIGUOUS, shape->start, shape->end);
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
read_decimal (Cursor    *cursor,
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
        return fail (problem, TR_PROBLEM_NOT_UNDERSTOOD, shape.start, shape.end);
    }

  *is_whole = !has_point;
  *value = convert (&shape, has_point);
  if (!isfinite (*value))
    return fail (problem, TR_PROBLEM_OUT_OF_RANGE, shape.start, shape.end);

  return TRUE;
}

/* Fractions */

static gboolean
take_vulgar (Cursor *cursor,
             double *value)
{
  gunichar c = peek_char (*cursor);

  for (guint i = 0; c > 0x7F && i < G_N_ELEMENTS (vulgar_fractions); i++)
    if (vulgar_fractions[i].c == c)
      {
        *value = (double) vulgar_fractions[i].numerator / vulgar_fractions[i].denominator;
        advance (cursor);
        return TRUE;
      }

  return FALSE;
}

static gboolean
take_digits (Cursor *cursor,
             double *value)
{
  Shape shape = { .start = cursor->at };

  while (is_digit (*cursor))
    cursor->at++;
  shape.end = cursor->at;
  *value = convert (&shape, FALSE);

  return shape.end > shape.start;
}

static gboolean
take_slash (Cursor *cursor)
{
  Cursor ahead = *cursor;

  skip_spaces (&ahead);
  if (!is_slash (peek_char (ahead)))
    return FALSE;
  advance (&ahead);
  skip_spaces (&ahead);
  if (!is_digit (ahead))
    return FALSE;

  *cursor = ahead;
  return TRUE;
}

/* "½", "1/2", "⅟2". Not finite when divided by 0. */
static gboolean
take_fraction (Cursor *cursor,
               double *value)
{
  Cursor ahead = *cursor;
  double numerator = 1, denominator;

  if (take_vulgar (cursor, value))
    return TRUE;

  if (peek_char (ahead) == FRACTION_NUMERATOR_ONE)
    advance (&ahead);
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
skip_mixed_joint (Cursor *cursor)
{
  Cursor ahead = *cursor;
  gunichar c;

  skip_spaces (&ahead);
  c = peek_char (ahead);
  if (is_dash (c) || c == '&' || c == '+')
    advance (&ahead);
  else if (!take_word (&ahead, "and"))
    take_word (&ahead, "plus");
  skip_spaces (&ahead);
  *cursor = ahead;
}

/* The fraction of a mixed number is below one and its whole number is not 0;
 * otherwise it is something else, such as the end of a range. */
static void
add_mixed_fraction (Cursor *cursor,
                    double *value)
{
  Cursor ahead = *cursor;
  double fraction;

  skip_mixed_joint (&ahead);
  if (*value < 1 || !take_fraction (&ahead, &fraction) || !(fraction < 1))
    return;

  *value += fraction;
  *cursor = ahead;
}

static gboolean
starts_number (Cursor cursor)
{
  gunichar c = peek_char (cursor);
  double ignored;

  if (c == '.' || c == ',')
    {
      advance (&cursor);
      return is_digit (cursor);
    }

  return is_digit (cursor) || c == FRACTION_NUMERATOR_ONE || take_vulgar (&cursor, &ignored);
}

static gboolean
read_number (Cursor    *cursor,
             double    *value,
             TrProblem *problem)
{
  const char *start = cursor->at;
  gboolean is_whole = FALSE;

  if (take_fraction (cursor, value))
    {
      if (!isfinite (*value))
        return fail (problem, TR_PROBLEM_OUT_OF_RANGE, start, cursor->at);
      return TRUE;
    }
  if (!starts_number (*cursor))
    return fail (problem, TR_PROBLEM_NO_NUMBER, start, cursor->end);
  if (!read_decimal (cursor, value, &is_whole, problem))
    return FALSE;
  if (is_whole)
    add_mixed_fraction (cursor, value);

  return TRUE;
}

static gboolean
take_range_dash (Cursor *cursor)
{
  Cursor ahead = *cursor;

  skip_spaces (&ahead);
  if (is_dash (peek_char (ahead)))
    advance (&ahead);
  else if (!take_word (&ahead, "to"))
    return FALSE;
  skip_spaces (&ahead);
  if (!starts_number (ahead))
    return FALSE;

  *cursor = ahead;
  return TRUE;
}

static gboolean
read_quantity (Cursor    *cursor,
               double    *value,
               gboolean  *is_mean,
               TrProblem *problem)
{
  double end;

  if (!read_number (cursor, value, problem))
    return FALSE;

  if (take_range_dash (cursor))
    {
      if (!read_number (cursor, &end, problem))
        return FALSE;
      *value = (*value + end) / 2;
      *is_mean = TRUE;
    }

  return TRUE;
}

/* Units */

/* Copies a word without its dots, in lower case; "" when there is none or it
 * is longer than any we know. */
static void
take_unit_word (Cursor *cursor,
                char    word[MAX_WORD_BYTES])
{
  gsize n = 0;
  gunichar c = peek_char (*cursor);

  for (; g_unichar_isalpha (c) || c == '.'; c = peek_char (*cursor))
    {
      advance (cursor);
      if (c == '.')
        continue;
      if (n < MAX_WORD_BYTES)
        word[n] = c < 0x80 ? g_ascii_tolower ((char) c) : '?';
      n++;
    }
  word[n < MAX_WORD_BYTES ? n : 0] = '\0';
}

static gboolean
find_unit_name (const char *name,
                TrUnit     *unit)
{
  for (guint i = 0; i < G_N_ELEMENTS (unit_names); i++)
    if (strcmp (unit_names[i].name, name) == 0)
      {
        *unit = unit_names[i].unit;
        return TRUE;
      }

  return FALSE;
}

/* As it stands, without an s, without an es ("pinches"). */
static gboolean
find_unit (const char *first,
           const char *second,
           TrUnit     *unit)
{
  char name[2 * MAX_WORD_BYTES + 2];
  gsize length;

  if (*first == '\0')
    return FALSE;
  g_snprintf (name, sizeof name, "%s%s%s", first, *second != '\0' ? " " : "", second);
  if (find_unit_name (name, unit))
    return TRUE;

  length = strlen (name);
  if (length < 2 || name[length - 1] != 's')
    return FALSE;
  name[length - 1] = '\0';
  if (find_unit_name (name, unit))
    return TRUE;
  if (length < 3 || name[length - 2] != 'e')
    return FALSE;
  name[length - 2] = '\0';

  return find_unit_name (name, unit);
}

/* "of dough", "of the total" after a percent sign. */
static TrUnit
read_percent_base (Cursor *cursor)
{
  static const struct { const char *word; TrUnit unit; } bases[] = {
    { "flour", TR_UNIT_PERCENT }, { "dough", TR_UNIT_PERCENT_OF_DOUGH }, { "total", TR_UNIT_PERCENT_OF_TOTAL },
  };
  Cursor ahead = *cursor;

  skip_spaces (&ahead);
  if (!take_word (&ahead, "of"))
    return TR_UNIT_PERCENT;
  skip_spaces (&ahead);
  if (take_word (&ahead, "the"))
    skip_spaces (&ahead);

  for (guint i = 0; i < G_N_ELEMENTS (bases); i++)
    if (take_word (&ahead, bases[i].word))
      {
        *cursor = ahead;
        return bases[i].unit;
      }

  return TR_UNIT_PERCENT;
}

static gboolean
take_named_unit (Cursor *cursor,
                 TrUnit *unit)
{
  char first[MAX_WORD_BYTES], second[MAX_WORD_BYTES];
  Cursor after_first, after_second;

  take_unit_word (cursor, first);
  after_first = after_second = *cursor;
  if (!skip_spaces (&after_second) && peek_char (after_second) == '-')
    advance (&after_second);
  take_unit_word (&after_second, second);

  if (*second != '\0' && find_unit (first, second, unit))
    *cursor = after_second;
  else if (find_unit (first, "", unit))
    *cursor = after_first;
  else
    return FALSE;

  return TRUE;
}

static gboolean
read_unit (Cursor    *cursor,
           TrUnit    *unit,
           TrProblem *problem)
{
  Cursor before;
  const char *number_end = cursor->at;
  gunichar c;

  skip_spaces (cursor);
  before = *cursor;
  c = peek_char (*cursor);
  if (c == '%' || c == 0xFF05)
    {
      advance (cursor);
      *unit = read_percent_base (cursor);
      return TRUE;
    }
  if (take_named_unit (cursor, unit))
    {
      if (*unit == TR_UNIT_PERCENT)
        *unit = read_percent_base (cursor);
      return TRUE;
    }

  if (g_unichar_isalpha (c))
    return fail (problem, TR_PROBLEM_UNKNOWN_UNIT, before.at, cursor->at);
  if (at_end (*cursor) || starts_number (before) || c == ',' || c == '+' || c == '&' || cursor->at > before.at)
    return fail (problem, TR_PROBLEM_BARE_NUMBER, NULL, NULL);

  return fail (problem, TR_PROBLEM_NOT_UNDERSTOOD, number_end, cursor->end);
}

/* The whole amount */

/* Spaces and at most one of the words and signs that join two parts. */
static void
skip_part_joint (Cursor *cursor)
{
  gunichar c;

  skip_spaces (cursor);
  c = peek_char (*cursor);
  if (c == ',' || c == '+' || c == '&')
    advance (cursor);
  else if (!take_word (cursor, "and"))
    take_word (cursor, "plus");
  skip_spaces (cursor);
}

static gboolean
read_part (Cursor    *cursor,
           TrAmount  *amount,
           TrProblem *problem)
{
  const char *start = cursor->at;
  TrAmountPart part;

  if (!read_quantity (cursor, &part.number, &amount->is_mean, problem) ||
      !read_unit (cursor, &part.unit, problem))
    return FALSE;

  double grams = tr_unit_grams (part.unit);
  if (part.number > MAX_VALUE || (!isnan (grams) && part.number * grams > MAX_VALUE))
    return fail (problem, TR_PROBLEM_OUT_OF_RANGE, start, cursor->at);

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

  Cursor cursor = { text, text + strlen (text) };

  *amount = (TrAmount) { 0 };
  if (problem != NULL)
    *problem = (TrProblem) { .value = { NAN, NAN } };

  skip_spaces (&cursor);
  if (at_end (cursor))
    return fail (problem, TR_PROBLEM_EMPTY, NULL, NULL);

  do
    {
      const char *rest = cursor.at;

      if (amount->n_parts > 0)
        skip_part_joint (&cursor);
      if (amount->n_parts == TR_AMOUNT_MAX_PARTS || (amount->n_parts > 0 && !starts_number (cursor)))
        return fail (problem, TR_PROBLEM_NOT_UNDERSTOOD, rest, cursor.end);
      if (!read_part (&cursor, amount, problem))
        return FALSE;
      skip_spaces (&cursor);
    }
  while (!at_end (cursor));

  if (mixes_percent (amount))
    return fail (problem, TR_PROBLEM_MIXED_PERCENT, NULL, NULL);

  return TRUE;
}
