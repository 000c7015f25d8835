/* write.c: what stands in an entry, and what the document gets of an amount
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is written here is understood by tr_words_read, and an amount by
 * tr_amount_parse, whatever the reader's decimal sign is.
 */

#include "config.h"

#include <string.h>

#include "say.h"

/* An entry holds plain digits and the reader's decimal sign. */
static char *
entry_number (const TrReader *reader,
              double          number,
              int             max_decimals)
{
  char buffer[400];
  GString *out;

  tr_say_print_trimmed (buffer, sizeof buffer, number, max_decimals);
  out = g_string_new (g_str_equal (buffer, "-0") ? "0" : buffer);
  g_string_replace (out, ".", reader->decimal, 0);
  return g_string_free (out, FALSE);
}

static gboolean
is_on_ruler (double inches)
{
  return fabs (inches * 32 - round (inches * 32)) <= 1e-6;
}

/* A ruler's fraction when it is one, or would be one when read back from
 * thousandths; else thousandths. */
static char *
entry_inches (const TrReader *reader,
              double          inches)
{
  double parts = round (inches * 32);
  guint numerator, denominator = 32;
  double whole = floor (parts / 32);

  if (inches < 0 || inches > 1e6 || (!is_on_ruler (inches) && !is_on_ruler (tr_say_round (inches, 3))))
    return entry_number (reader, inches, 3);
  numerator = (guint) (parts - whole * 32);
  while (numerator > 0 && numerator % 2 == 0)
    {
      numerator /= 2;
      denominator /= 2;
    }
  if (numerator == 0)
    return entry_number (reader, whole, 0);
  if (whole < 1)
    return g_strdup_printf ("%u/%u", numerator, denominator);
  return g_strdup_printf ("%.0f %u/%u", whole, numerator, denominator);
}

char *
tr_words_write (const TrReader *reader,
                TrQuantity      quantity,
                double          value)
{
  gboolean us;

  g_return_val_if_fail (reader != NULL, NULL);

  us = tr_say_is_us (reader);
  if (!isfinite (value))
    return g_strdup ("");
  switch (quantity)
    {
    case TR_QUANTITY_WHOLE: return entry_number (reader, value, 0);
    case TR_QUANTITY_MASS_G: return entry_number (reader, us ? value / TR_GRAMS_PER_OUNCE : value, us ? 4 : 3);
    case TR_QUANTITY_LENGTH_MM: return us ? entry_inches (reader, value / TR_MM_PER_INCH) : entry_number (reader, value, 3);
    case TR_QUANTITY_TEMPERATURE_C: return entry_number (reader, us ? value * 9 / 5 + 32 : value, 2);
    case TR_QUANTITY_WARMING_C: return entry_number (reader, us ? value * 9 / 5 : value, 2);
    case TR_QUANTITY_PERCENT:
    case TR_QUANTITY_MINUTES: return entry_number (reader, value, 3);
    case TR_QUANTITY_NUMBER:
    default: return entry_number (reader, value, 6);
    }
}

/* A number with the reader's own decimal sign says the same in the document:
 * "." and never exactly three decimals after a whole part, which the document
 * would find ambiguous. */
static void
append_own_decimal (GString    *out,
                    const char *whole,
                    gsize       n_whole,
                    const char *decimals,
                    gsize       n_decimals)
{
  gboolean ambiguous = n_decimals == 3 && !(n_whole == 1 && *whole == '0');

  while (ambiguous && n_decimals > 0 && decimals[n_decimals - 1] == '0')
    n_decimals--;
  g_string_append_len (out, whole, (gssize) n_whole);
  if (n_decimals == 0)
    return;
  g_string_append_c (out, '.');
  g_string_append_len (out, decimals, (gssize) n_decimals);
  if (ambiguous && n_decimals == 3)
    g_string_append_c (out, '0');
}

static char *
unlocalise_amount (const TrReader *reader,
                   const char     *text)
{
  GString *out = g_string_new (NULL);
  gsize sign = strlen (reader->decimal);

  while (*text != '\0')
    {
      gsize run = strspn (text, "0123456789.,");
      gsize whole = strspn (text, "0123456789");
      gsize decimals = 0;
      char next;

      if (whole > 0 && g_str_has_prefix (text + whole, reader->decimal))
        decimals = strspn (text + whole + sign, "0123456789");
      next = text[whole + (decimals > 0 ? sign + decimals : 0)];
      if (decimals > 0 && next != '.' && next != ',')
        {
          append_own_decimal (out, text, whole, text + whole + sign, decimals);
          run = whole + sign + decimals;
        }
      else
        {
          run = MAX (run, 1);
          g_string_append_len (out, text, (gssize) run);
        }
      text += run;
    }
  return g_string_free (out, FALSE);
}

char *
tr_words_complete_amount (const TrReader *reader,
                          const char     *text)
{
  g_autofree char *plain = NULL;
  TrProblem problem = { TR_PROBLEM_NONE };
  TrAmount amount;
  gboolean bare;

  g_return_val_if_fail (reader != NULL && text != NULL, NULL);

  plain = g_strstrip (unlocalise_amount (reader, text));
  bare = !tr_amount_parse (plain, &amount, &problem) && problem.id == TR_PROBLEM_BARE_NUMBER;
  g_free (problem.text);
  /* Not a word for this reader but the document's unit. */
  return bare ? g_strconcat (plain, " ", tr_unit_id (tr_say_is_us (reader) ? TR_UNIT_OZ : TR_UNIT_G), NULL)
              : g_steal_pointer (&plain);
}
