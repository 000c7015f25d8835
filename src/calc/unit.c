/* unit.c: units, their names and how they are read
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   unit = one or two words, or "%" [ "of" ( "flour" | "dough" | "total" ) ]
 *
 * Case, dots and plurals make no difference.
 */

#include "unit.h"

#include <math.h>
#include <string.h>

#include "number.h"

#define MAX_WORD_BYTES 16        /* longer than every word of a unit */

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

/* Copies a word without its dots, in lower case; "" when there is none or it
 * is longer than any we know. */
static void
take_unit_word (TrCursor *cursor,
                char      word[MAX_WORD_BYTES])
{
  gsize n = 0;
  gunichar c = tr_cursor_peek (*cursor);

  for (; g_unichar_isalpha (c) || c == '.'; c = tr_cursor_peek (*cursor))
    {
      tr_cursor_advance (cursor);
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
read_percent_base (TrCursor *cursor)
{
  static const struct { const char *word; TrUnit unit; } bases[] = {
    { "flour", TR_UNIT_PERCENT }, { "dough", TR_UNIT_PERCENT_OF_DOUGH }, { "total", TR_UNIT_PERCENT_OF_TOTAL },
  };
  TrCursor ahead = *cursor;

  tr_cursor_skip_spaces (&ahead);
  if (!tr_cursor_take_word (&ahead, "of"))
    return TR_UNIT_PERCENT;
  tr_cursor_skip_spaces (&ahead);
  if (tr_cursor_take_word (&ahead, "the"))
    tr_cursor_skip_spaces (&ahead);

  for (guint i = 0; i < G_N_ELEMENTS (bases); i++)
    if (tr_cursor_take_word (&ahead, bases[i].word))
      {
        *cursor = ahead;
        return bases[i].unit;
      }

  return TR_UNIT_PERCENT;
}

static gboolean
take_named_unit (TrCursor *cursor,
                 TrUnit   *unit)
{
  char first[MAX_WORD_BYTES], second[MAX_WORD_BYTES];
  TrCursor after_first, after_second;

  take_unit_word (cursor, first);
  after_first = after_second = *cursor;
  if (!tr_cursor_skip_spaces (&after_second) && tr_cursor_peek (after_second) == '-')
    tr_cursor_advance (&after_second);
  take_unit_word (&after_second, second);

  if (*second != '\0' && find_unit (first, second, unit))
    *cursor = after_second;
  else if (find_unit (first, "", unit))
    *cursor = after_first;
  else
    return FALSE;

  return TRUE;
}

/* Where no unit could be read after a number: `before`, what was tried ends at
 * `cursor`. */
static gboolean
fail_unit (TrCursor   cursor,
           TrCursor   before,
           TrProblem *problem)
{
  gunichar c = tr_cursor_peek (before);
  TrCursor joint = before;
  gboolean is_joint = c == ',' || c == '+' || c == '&' ||
                      tr_cursor_take_word (&joint, "and") || tr_cursor_take_word (&joint, "plus");

  if (is_joint || c == '.' || tr_cursor_is_at_end (before) || tr_number_starts (before))
    return tr_cursor_fail (problem, TR_PROBLEM_BARE_NUMBER, NULL, NULL);
  if (g_unichar_isalpha (c))
    return tr_cursor_fail (problem, TR_PROBLEM_UNKNOWN_UNIT, before.at, cursor.at);

  return tr_cursor_fail (problem, TR_PROBLEM_NOT_UNDERSTOOD, before.at, before.end);
}

gboolean
tr_unit_read (TrCursor  *cursor,
              TrUnit    *unit,
              TrProblem *problem)
{
  TrCursor before;
  gunichar c;

  tr_cursor_skip_spaces (cursor);
  before = *cursor;
  c = tr_cursor_peek (*cursor);
  if (c == '%' || c == 0xFF05)
    {
      tr_cursor_advance (cursor);
      *unit = TR_UNIT_PERCENT;
    }
  else if (!take_named_unit (cursor, unit))
    {
      return fail_unit (*cursor, before, problem);
    }

  if (*unit == TR_UNIT_PERCENT)
    *unit = read_percent_base (cursor);

  return TRUE;
}
