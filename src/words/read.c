/* read.c: how the reader's typing is understood
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   QUANTITY = PART { PART }          "2 h 15", "1 lb 2 oz", "2 ft 3 in"
 *   PART     = NUMBER [ UNIT ]
 *   NUMBER   = [ - ] ( DIGITS | DIGITS / DIGITS | DIGITS ( space | - ) DIGITS / DIGITS )
 *
 * DIGITS may hold both decimal signs and separators of thousands. The reader's
 * own decimal sign is always that; the other one before exactly three digits
 * could be either and is refused. An amount of an ingredient is not for here:
 * tr_amount_parse reads it, tr_words_complete_amount prepares it.
 */

#include "config.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "say.h"

#define READ_MAX 1e9

typedef struct {
  TrQuantity quantity;
  const char *name;              /* lower case; the first of a scale is the canonical */
  double scale, offset;          /* value = number × scale + offset */
  const char *next;              /* the unit of a bare number that follows */
} Unit;

static const Unit units[] = {
  { TR_QUANTITY_MASS_G, "g", 1 }, { TR_QUANTITY_MASS_G, "gram", 1 }, { TR_QUANTITY_MASS_G, "grams", 1 },
  { TR_QUANTITY_MASS_G, "gr", 1 }, { TR_QUANTITY_MASS_G, "kg", 1000, 0, "g" }, { TR_QUANTITY_MASS_G, "mg", 0.001 },
  { TR_QUANTITY_MASS_G, "oz", TR_GRAMS_PER_OUNCE }, { TR_QUANTITY_MASS_G, "ounce", TR_GRAMS_PER_OUNCE },
  { TR_QUANTITY_MASS_G, "ounces", TR_GRAMS_PER_OUNCE },
  { TR_QUANTITY_MASS_G, "lb", 16 * TR_GRAMS_PER_OUNCE, 0, "oz" }, { TR_QUANTITY_MASS_G, "lbs", 16 * TR_GRAMS_PER_OUNCE, 0, "oz" },
  { TR_QUANTITY_MASS_G, "pound", 16 * TR_GRAMS_PER_OUNCE, 0, "oz" }, { TR_QUANTITY_MASS_G, "pounds", 16 * TR_GRAMS_PER_OUNCE, 0, "oz" },

  { TR_QUANTITY_LENGTH_MM, "mm", 1 }, { TR_QUANTITY_LENGTH_MM, "cm", 10 }, { TR_QUANTITY_LENGTH_MM, "m", 1000 },
  { TR_QUANTITY_LENGTH_MM, "in", TR_MM_PER_INCH }, { TR_QUANTITY_LENGTH_MM, "inch", TR_MM_PER_INCH },
  { TR_QUANTITY_LENGTH_MM, "inches", TR_MM_PER_INCH }, { TR_QUANTITY_LENGTH_MM, "\"", TR_MM_PER_INCH },
  { TR_QUANTITY_LENGTH_MM, "ft", 12 * TR_MM_PER_INCH, 0, "in" }, { TR_QUANTITY_LENGTH_MM, "'", 12 * TR_MM_PER_INCH, 0, "in" },
  { TR_QUANTITY_LENGTH_MM, "foot", 12 * TR_MM_PER_INCH, 0, "in" }, { TR_QUANTITY_LENGTH_MM, "feet", 12 * TR_MM_PER_INCH, 0, "in" },

  { TR_QUANTITY_TEMPERATURE_C, "°c", 1 }, { TR_QUANTITY_TEMPERATURE_C, "c", 1 },
  { TR_QUANTITY_TEMPERATURE_C, "°f", 5.0 / 9, -160.0 / 9 }, { TR_QUANTITY_TEMPERATURE_C, "f", 5.0 / 9, -160.0 / 9 },

  { TR_QUANTITY_WARMING_C, "°c", 1 }, { TR_QUANTITY_WARMING_C, "c", 1 },
  { TR_QUANTITY_WARMING_C, "°f", 5.0 / 9 }, { TR_QUANTITY_WARMING_C, "f", 5.0 / 9 },

  { TR_QUANTITY_PERCENT, "%", 1 }, { TR_QUANTITY_PERCENT, "percent", 1 },

  { TR_QUANTITY_MINUTES, "min", 1 }, { TR_QUANTITY_MINUTES, "mins", 1 }, { TR_QUANTITY_MINUTES, "minute", 1 },
  { TR_QUANTITY_MINUTES, "minutes", 1 }, { TR_QUANTITY_MINUTES, "'", 1 },
  { TR_QUANTITY_MINUTES, "h", 60, 0, "min" }, { TR_QUANTITY_MINUTES, "hr", 60, 0, "min" }, { TR_QUANTITY_MINUTES, "hrs", 60, 0, "min" },
  { TR_QUANTITY_MINUTES, "hour", 60, 0, "min" }, { TR_QUANTITY_MINUTES, "hours", 60, 0, "min" }, { TR_QUANTITY_MINUTES, ":", 60, 0, "min" },
  { TR_QUANTITY_MINUTES, "s", 1.0 / 60 }, { TR_QUANTITY_MINUTES, "sec", 1.0 / 60 },
  { TR_QUANTITY_MINUTES, "d", 1440, 0, "h" }, { TR_QUANTITY_MINUTES, "day", 1440, 0, "h" }, { TR_QUANTITY_MINUTES, "days", 1440, 0, "h" },
};

/* What was expected, as the end of a sentence. */
static const char *
expected (const TrReader *reader,
          TrQuantity      quantity)
{
  gboolean us = tr_say_is_us (reader);

  switch (quantity)
    {
    case TR_QUANTITY_NUMBER: return _("a number");
    case TR_QUANTITY_WHOLE: return _("a whole number");
    case TR_QUANTITY_MASS_G: return us ? _("a mass, such as 8.8 oz or 250 g") : _("a mass, such as 250 g or 8.8 oz");
    case TR_QUANTITY_LENGTH_MM: return us ? _("a length, such as 8 1/8 in or 205 mm") : _("a length, such as 205 mm or 8 1/8 in");
    case TR_QUANTITY_TEMPERATURE_C: return us ? _("a temperature, such as 79 °F or 26 °C") : _("a temperature, such as 26 °C or 79 °F");
    case TR_QUANTITY_WARMING_C: return us ? _("how much warmer, such as 22 °F or 12 °C") : _("how much warmer, such as 12 °C or 22 °F");
    case TR_QUANTITY_PERCENT: return _("a percentage, such as 2.5 %");
    case TR_QUANTITY_MINUTES: return _("a time, such as 45 min or 1 h 30");
    default: g_return_val_if_reached ("");
    }
}

static const char *
understood_units (TrQuantity quantity)
{
  switch (quantity)
    {
    case TR_QUANTITY_MASS_G: return _("g, kg, oz and lb are");
    case TR_QUANTITY_LENGTH_MM: return _("mm, cm, m, in and ft are");
    case TR_QUANTITY_TEMPERATURE_C:
    case TR_QUANTITY_WARMING_C: return _("°C and °F are");
    case TR_QUANTITY_PERCENT: return _("only % is");
    case TR_QUANTITY_MINUTES: return _("min, h and d are");
    case TR_QUANTITY_NUMBER:
    case TR_QUANTITY_WHOLE:
    default: return NULL;
    }
}

/* Every sign that means the same becomes one ASCII sign; letters become small. */
static char *
normalise (const TrReader *reader,
           const char     *text)
{
  static const struct { const char *from, *to; } signs[] = {
    { TR_NO_BREAK_SPACE, " " }, { TR_NARROW_NO_BREAK_SPACE, " " }, { TR_THIN_SPACE, " " }, { "\t", " " },
    { TR_MINUS, "-" }, { "″", "\"" }, { "”", "\"" }, { "''", "\"" }, { "′", "'" }, { "’", "'" }, { "⁄", "/" },
    { "½", " 1/2" }, { "¼", " 1/4" }, { "¾", " 3/4" }, { "⅓", " 1/3" }, { "⅔", " 2/3" },
    { "⅛", " 1/8" }, { "⅜", " 3/8" }, { "⅝", " 5/8" }, { "⅞", " 7/8" }, { "º", "°" },
  };
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  GString *out = g_string_new (NULL);
  g_autofree char *small = NULL;

  small = g_utf8_strdown (valid, -1);
  g_string_append (out, small);
  for (gsize i = 0; i < G_N_ELEMENTS (signs); i++)
    g_string_replace (out, signs[i].from, signs[i].to, 0);
  if (!g_str_equal (reader->decimal, ".") && !g_str_equal (reader->decimal, ","))
    g_string_replace (out, reader->decimal, ".", 0);

  return g_strstrip (g_string_free (out, FALSE));
}

typedef enum { DIGITS_FINE, DIGITS_NONE, DIGITS_AMBIGUOUS, DIGITS_BAD } Digits;

/* Separators of thousands stand before every group of exactly three digits,
 * after a first group of one to three. `run` holds digits and `separator` only. */
static gboolean
is_grouped (const char *run,
            gsize       length,
            char        separator)
{
  gsize group = 0;
  gboolean first = TRUE;

  for (gsize i = 0; i <= length; i++)
    {
      if (i < length && run[i] != separator)
        {
          group++;
          continue;
        }
      if (first ? group < 1 || group > 3 : group != 3)
        return FALSE;
      first = FALSE;
      group = 0;
    }
  return TRUE;
}

/* Finds the decimal sign of a run of digits, dots and commas: its place, or
 * `length` when there is none. */
static Digits
find_decimal (const TrReader *reader,
              const char     *run,
              gsize           length,
              gsize          *place)
{
  char own = *reader->decimal == ',' ? ',' : '.';
  gsize n_dots = 0, n_commas = 0, last = length;

  for (gsize i = 0; i < length; i++)
    {
      n_dots += run[i] == '.';
      n_commas += run[i] == ',';
      if (!g_ascii_isdigit (run[i]))
        last = i;
    }
  *place = length;
  if (n_dots + n_commas == 0)
    return DIGITS_FINE;
  if (n_dots > 0 && n_commas > 0)
    {
      char grouping = run[last] == '.' ? ',' : '.';

      *place = last;
      return (run[last] == '.' ? n_dots : n_commas) == 1 && is_grouped (run, last, grouping) ? DIGITS_FINE : DIGITS_BAD;
    }
  if (n_dots + n_commas > 1)
    return is_grouped (run, length, run[last]) ? DIGITS_FINE : DIGITS_BAD;
  if (run[last] != own && length - last == 4 && is_grouped (run, length, run[last]) && *run != '0')
    return DIGITS_AMBIGUOUS;
  *place = last;
  return DIGITS_FINE;
}

/* Spaces that part thousands: each stands before exactly three digits. */
static gsize
measure_run (const char *text)
{
  gsize i = 0;

  while (g_ascii_isdigit (text[i]) || text[i] == '.' || text[i] == ',' ||
         (i > 0 && text[i] == ' ' && g_ascii_isdigit (text[i - 1]) &&
          g_ascii_isdigit (text[i + 1]) && g_ascii_isdigit (text[i + 2]) && g_ascii_isdigit (text[i + 3]) &&
          !g_ascii_isdigit (text[i + 4]) && text[i + 4] != '/'))
    i++;
  return i;
}

/* Reads digits with either decimal sign and moves `text` behind them. */
static Digits
read_digits (const TrReader  *reader,
             const char     **text,
             double          *number)
{
  gsize length = measure_run (*text), place = 0;
  g_autofree char *run = g_strndup (*text, length);
  g_autoptr (GString) clean = g_string_new (NULL);
  Digits result;

  if (length == 0 || strpbrk (run, "0123456789") == NULL)
    return DIGITS_NONE;
  if (strchr (run, ' ') != NULL)
    {
      GString *joined = g_string_new (run);

      g_string_replace (joined, " ", "", 0);
      g_free (run);
      run = g_string_free (joined, FALSE);
    }
  result = find_decimal (reader, run, strlen (run), &place);
  if (result != DIGITS_FINE)
    return result;
  for (gsize i = 0; run[i] != '\0'; i++)
    if (g_ascii_isdigit (run[i]))
      g_string_append_c (clean, run[i]);
    else if (i == place)
      g_string_append_c (clean, '.');
  *number = g_ascii_strtod (clean->str, NULL);
  *text += length;
  return DIGITS_FINE;
}

static gboolean
read_plain_whole (const char **text,
                  double      *number)
{
  char *end;
  guint64 whole;

  if (!g_ascii_isdigit (**text))
    return FALSE;
  whole = g_ascii_strtoull (*text, &end, 10);
  *number = (double) whole;
  *text = end;
  return TRUE;
}

/* "1/8" after a whole number and a space or a hyphen, or by itself. */
static gboolean
read_fraction (const char **text,
               double      *number)
{
  const char *p = *text;
  double numerator, denominator;

  if (!read_plain_whole (&p, &numerator))
    return FALSE;
  while (*p == ' ')
    p++;
  if (*p != '/')
    return FALSE;
  p++;
  while (*p == ' ')
    p++;
  if (!read_plain_whole (&p, &denominator))
    return FALSE;
  *number = numerator / denominator;
  *text = p;
  return TRUE;
}

static Digits
read_number (const TrReader  *reader,
             const char     **text,
             double          *number)
{
  const char *after;
  double part;
  Digits digits;

  if (read_fraction (text, number))
    return DIGITS_FINE;
  digits = read_digits (reader, text, number);
  if (digits != DIGITS_FINE)
    return digits;
  after = *text;
  while (*after == ' ')
    after++;
  if (*after == '-')
    after++;
  while (*after == ' ')
    after++;
  if (after != *text && read_fraction (&after, &part))
    {
      *number += part;
      *text = after;
    }
  return DIGITS_FINE;
}

static const Unit *
find_unit (TrQuantity  quantity,
           const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (units[i].quantity == quantity && g_str_equal (units[i].name, name))
      return &units[i];
  return NULL;
}

/* The unit of a number that stands alone. */
static const char *
own_unit (const TrReader *reader,
          TrQuantity      quantity)
{
  gboolean us = tr_say_is_us (reader);

  switch (quantity)
    {
    case TR_QUANTITY_MASS_G: return us ? "oz" : "g";
    case TR_QUANTITY_LENGTH_MM: return us ? "in" : "mm";
    case TR_QUANTITY_TEMPERATURE_C:
    case TR_QUANTITY_WARMING_C: return us ? "f" : "c";
    case TR_QUANTITY_PERCENT: return "%";
    case TR_QUANTITY_MINUTES: return "min";
    case TR_QUANTITY_NUMBER:
    case TR_QUANTITY_WHOLE:
    default: return NULL;
    }
}

/* The word up to the next number; a dot at its end does not count, and a
 * degree sign alone says nothing about the unit. */
static char *
read_word (const char **text)
{
  gsize length;
  char *word;

  while (**text == ' ')
    (*text)++;
  length = strcspn (*text, " 0123456789-");
  word = g_strndup (*text, length);
  *text += length;
  while (**text == ' ')
    (*text)++;
  if (length > 1 && word[length - 1] == '.')
    word[length - 1] = '\0';
  if (g_str_equal (word, "°"))
    *word = '\0';
  return word;
}

static gboolean
fail (GError **error,
      char    *sentence)
{
  g_set_error_literal (error, G_NUMBER_PARSER_ERROR, G_NUMBER_PARSER_ERROR_INVALID, sentence);
  g_free (sentence);
  return FALSE;
}

static gboolean
fail_number (const TrReader  *reader,
             TrQuantity       quantity,
             Digits           digits,
             const char      *text,
             GError         **error)
{
  g_autofree char *quoted = tr_say_quote (text);

  if (digits == DIGITS_AMBIGUOUS)
    return fail (error, g_strdup_printf (_("%s can be read in two ways, with a decimal sign or with thousands; "
                                           "write thousands without a sign, decimals with “%s”."),
                                         quoted, reader->decimal));
  return fail (error, g_strdup_printf (_("%s is not understood; expected %s."), quoted, expected (reader, quantity)));
}

static gboolean
fail_unit (const TrReader  *reader,
           TrQuantity       quantity,
           const char      *word,
           const char      *text,
           GError         **error)
{
  g_autofree char *quoted = tr_say_quote (text);
  g_autofree char *quoted_word = tr_say_quote (word);
  const char *understood = understood_units (quantity);

  if (understood == NULL || *word == '\0')
    return fail_number (reader, quantity, DIGITS_BAD, text, error);
  return fail (error, g_strdup_printf (_("%s: the unit %s is not understood here; %s."), quoted, quoted_word, understood));
}

/* Adds up the parts. A bare number is in the reader's unit when it is alone,
 * else in the one that follows the unit before it ("2 h 15"). */
static gboolean
read_parts (const TrReader  *reader,
            TrQuantity       quantity,
            const char      *text,
            const char      *p,
            double           sign,
            double          *value,
            GError         **error)
{
  const char *bare = own_unit (reader, quantity);
  guint n_parts = 0;

  for (*value = 0; *p != '\0'; n_parts++)
    {
      g_autofree char *word = NULL;
      const Unit *unit = NULL;
      double number = NAN;
      Digits digits = read_number (reader, &p, &number);

      if (digits != DIGITS_FINE)
        return fail_number (reader, quantity, digits, text, error);
      word = read_word (&p);
      if (bare != NULL)
        unit = find_unit (quantity, *word == '\0' ? bare : word);
      if (bare == NULL ? *word != '\0' || n_parts > 0
                       : unit == NULL || (*word == '\0' && n_parts == 0 && *p != '\0'))
        return fail_unit (reader, quantity, word, text, error);
      if (n_parts > 0 && (quantity == TR_QUANTITY_TEMPERATURE_C || quantity == TR_QUANTITY_WARMING_C))
        return fail_number (reader, quantity, DIGITS_BAD, text, error);
      *value += bare == NULL ? sign * number : sign * number * unit->scale + unit->offset;
      if (bare != NULL)
        bare = unit->next != NULL ? unit->next : "";
    }
  return TRUE;
}

static gboolean
check_value (const TrReader  *reader,
             TrQuantity       quantity,
             const char      *text,
             double           value,
             GError         **error)
{
  g_autofree char *quoted = tr_say_quote (text);

  if (!isfinite (value) || fabs (value) > READ_MAX)
    return fail (error, g_strdup_printf (_("%s is not a size that can be; expected %s."), quoted, expected (reader, quantity)));
  if (quantity == TR_QUANTITY_TEMPERATURE_C && value < -273.15)
    return fail (error, g_strdup_printf (_("%s is below absolute zero; expected %s."), quoted, expected (reader, quantity)));
  if (quantity == TR_QUANTITY_WHOLE && fabs (value - round (value)) > 0)
    return fail (error, g_strdup_printf (_("%s is not whole; expected %s."), quoted, expected (reader, quantity)));
  if (value < 0 && (quantity == TR_QUANTITY_MASS_G || quantity == TR_QUANTITY_LENGTH_MM ||
                    quantity == TR_QUANTITY_PERCENT || quantity == TR_QUANTITY_MINUTES || quantity == TR_QUANTITY_WHOLE))
    return fail (error, g_strdup_printf (_("%s is below 0; expected %s."), quoted, expected (reader, quantity)));
  return TRUE;
}

gboolean
tr_words_read (const TrReader  *reader,
               TrQuantity       quantity,
               const char      *text,
               double          *value,
               GError         **error)
{
  g_autofree char *plain = NULL;
  const char *p;
  double result = 0;
  double sign;

  g_return_val_if_fail (reader != NULL && text != NULL && value != NULL, FALSE);

  plain = normalise (reader, text);
  sign = *plain == '-' ? -1 : 1;
  p = *plain == '-' || *plain == '+' ? plain + 1 : plain;
  while (*p == ' ')
    p++;
  if (*p == '\0')
    return fail (error, *plain == '\0' ? g_strdup_printf (_("Nothing is written; expected %s."), expected (reader, quantity))
                                       : g_strdup_printf (_("A sign alone is not understood; expected %s."), expected (reader, quantity)));
  if (!read_parts (reader, quantity, text, p, sign, &result, error))
    return FALSE;
  if (!check_value (reader, quantity, text, result, error))
    return FALSE;
  *value = result + 0.0;
  return TRUE;
}
