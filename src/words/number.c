/* number.c: numbers, masses, lengths, temperatures, times for this reader
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rounds for the eye, never for the arithmetic: half goes away from zero, a
 * value that would round to nothing keeps a digit. The C library's locale is
 * never asked except by tr_reader_init_locale.
 */

#include "config.h"

#include <locale.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "say.h"

#define MAX_DECIMALS 9

void
tr_reader_init_plain (TrReader     *reader,
                      TrUnitSystem  units)
{
  g_return_if_fail (reader != NULL);

  reader->units = units;
  g_strlcpy (reader->decimal, ".", sizeof reader->decimal);
  reader->scale_step_g = reader->fine_scale_step_g = 0;
}

static gboolean
is_same_step (double a,
              double b)
{
  return !(a < b) && !(b < a);
}

gboolean
tr_reader_equal (const TrReader *a,
                 const TrReader *b)
{
  g_return_val_if_fail (a != NULL && b != NULL, FALSE);

  return a->units == b->units && strcmp (a->decimal, b->decimal) == 0
         && is_same_step (a->scale_step_g, b->scale_step_g) && is_same_step (a->fine_scale_step_g, b->fine_scale_step_g);
}

TrBench *
tr_reader_new_bench (const TrReader *reader,
                     const TrBench  *bench)
{
  g_return_val_if_fail (reader != NULL && bench != NULL, NULL);

  TrBench *own = tr_bench_copy (bench);

  if (reader->scale_step_g > 0)
    own->scale_step_g = reader->scale_step_g;
  if (reader->fine_scale_step_g > 0)
    own->fine_scale_step_g = reader->fine_scale_step_g;

  return own;
}

void
tr_reader_init_locale (TrReader     *reader,
                       TrUnitSystem  units)
{
  const struct lconv *conventions = localeconv ();
  g_autofree char *decimal = g_locale_to_utf8 (conventions->decimal_point, -1, NULL, NULL, NULL);

  tr_reader_init_plain (reader, units);
  if (decimal != NULL && *decimal != '\0' && strlen (decimal) < sizeof reader->decimal)
    g_strlcpy (reader->decimal, decimal, sizeof reader->decimal);
}

double
tr_say_round (double value,
              int    decimals)
{
  double scale = pow (10, decimals);

  return fabs (value) < 1e15 / scale ? round (value * scale) / scale : value;
}

/* Puts thin spaces, at which no line is broken, between groups of three digits
 * of the whole part and the reader's sign before the decimals; "-0" loses its
 * sign. */
static char *
dress (const TrReader *reader,
       const char     *plain)
{
  GString *out = g_string_new (NULL);
  gboolean negative = *plain == '-' && strpbrk (plain, "123456789") != NULL;
  const char *digits = *plain == '-' ? plain + 1 : plain;
  size_t whole = strcspn (digits, ".");

  if (negative)
    g_string_append (out, TR_MINUS);
  for (size_t i = 0; i < whole; i++)
    {
      if (i > 0 && (whole - i) % 3 == 0)
        g_string_append (out, TR_NARROW_NO_BREAK_SPACE);
      g_string_append_c (out, digits[i]);
    }
  if (digits[whole] == '.')
    {
      g_string_append (out, reader->decimal);
      g_string_append (out, digits + whole + 1);
    }

  return g_string_free (out, FALSE);
}

static void
print_decimals (char   *buffer,
                size_t  size,
                double  value,
                int     decimals)
{
  char format[] = "%.0f";

  format[2] = (char) ('0' + CLAMP (decimals, 0, MAX_DECIMALS));
  g_ascii_formatd (buffer, (int) size, format, tr_say_round (value, decimals));
}

char *
tr_words_number (const TrReader *reader,
                 double          value,
                 int             decimals)
{
  char buffer[400];

  if (!isfinite (value))
    return g_strdup (TR_NOT_KNOWN);
  print_decimals (buffer, sizeof buffer, value, decimals);
  return dress (reader, buffer);
}

void
tr_say_print_trimmed (char   *buffer,
                      size_t  size,
                      double  value,
                      int     max_decimals)
{
  print_decimals (buffer, size, value, max_decimals);
  if (strchr (buffer, '.') != NULL)
    {
      size_t end = strlen (buffer);

      while (buffer[end - 1] == '0')
        buffer[--end] = '\0';
      if (buffer[end - 1] == '.')
        buffer[end - 1] = '\0';
    }
}

char *
tr_say_trimmed (const TrReader *reader,
                double          value,
                int             max_decimals)
{
  char buffer[400];

  if (!isfinite (value))
    return g_strdup (TR_NOT_KNOWN);
  tr_say_print_trimmed (buffer, sizeof buffer, value, max_decimals);
  return dress (reader, buffer);
}

/* The fewest decimals, at least `decimals`, at which something that is not
 * nothing does not look like nothing. */
static int
decimals_that_show (double value,
                    int    decimals)
{
  while (decimals < 3 && fabs (value) > 0 && fabs (tr_say_round (value, decimals)) <= 0)
    decimals++;
  return decimals;
}

static char *
grams_text (const TrReader *reader,
            double          grams)
{
  int decimals = fabs (tr_say_round (grams, 1)) >= 20 ? 0 : 1;

  if (fabs (grams) <= 0)
    decimals = 0;
  return tr_say_with_unit (tr_words_number (reader, grams, decimals_that_show (grams, decimals)), _("g"));
}

/* Ounces as a scale shows them; from two pounds on, pounds and ounces. */
static char *
ounces_text (const TrReader *reader,
             double          grams)
{
  double ounces = grams / TR_GRAMS_PER_OUNCE;
  double tenths = tr_say_round (ounces, 1);

  if (tenths >= 32)
    {
      double pounds = floor (tenths / 16 + 1e-9);
      double rest = fabs (tr_say_round (tenths - 16 * pounds, 1));
      g_autofree char *whole = tr_say_with_unit (tr_words_number (reader, pounds, 0), _("lb"));
      g_autofree char *part = tr_say_with_unit (tr_say_trimmed (reader, rest, 1), _("oz"));

      return rest > 0 ? g_strconcat (whole, TR_NO_BREAK_SPACE, part, NULL) : g_steal_pointer (&whole);
    }
  if (fabs (grams) <= 0)
    return tr_say_with_unit (g_strdup ("0"), _("oz"));
  return tr_say_with_unit (tr_words_number (reader, ounces,
                                            decimals_that_show (ounces, fabs (tr_say_round (ounces, 2)) < 10 ? 2 : 1)),
                           _("oz"));
}

char *
tr_words_mass (const TrReader *reader,
               double          grams)
{
  if (!isfinite (grams))
    return g_strdup (TR_NOT_KNOWN);
  return tr_say_is_us (reader) ? ounces_text (reader, grams) : grams_text (reader, grams);
}

/* How many decimals show every step of `step`: 1 → 0, 0.5 → 1, 0.02 → 2. */
static int
decimals_of_step (double step)
{
  int decimals = 0;

  if (!(step > 0))
    return 1;
  while (decimals < 4 && fabs (step - tr_say_round (step, decimals)) > step * 1e-6)
    decimals++;
  return decimals;
}

char *
tr_words_mass_number (const TrReader *reader,
                      double          grams,
                      double          step_g)
{
  if (!tr_say_is_us (reader))
    return tr_words_number (reader, grams, decimals_of_step (step_g));
  /* A step of 1 g is 0.035 oz: hundredths; 0.1 g: thousandths. */
  return tr_words_number (reader, grams / TR_GRAMS_PER_OUNCE,
                          !(step_g > 0) || (step_g >= 0.3 && step_g < 3) ? 2 : step_g < 0.3 ? 3 : 1);
}

const char *
tr_words_mass_unit (const TrReader *reader)
{
  return tr_say_is_us (reader) ? _("oz") : _("g");
}

/* "25 1/4", "1/2", "3": the nearest 1/`parts`, never nothing for something. */
static char *
fraction_text (const TrReader *reader,
               double          value,
               int             parts)
{
  double count = round (fabs (value) * parts);
  double whole;
  int numerator, denominator = parts;
  g_autofree char *whole_text = NULL;

  if (count < 1 && fabs (value) > 0)
    count = 1;
  whole = floor (count / parts);
  numerator = (int) (count - whole * parts);
  while (numerator > 0 && numerator % 2 == 0)
    {
      numerator /= 2;
      denominator /= 2;
    }
  whole_text = tr_words_number (reader, value < 0 ? -whole : whole, 0);
  if (numerator == 0)
    return g_steal_pointer (&whole_text);
  if (whole < 1)
    return g_strdup_printf ("%s%d/%d", value < 0 ? TR_MINUS : "", numerator, denominator);
  return g_strdup_printf ("%s" TR_NO_BREAK_SPACE "%d/%d", whole_text, numerator, denominator);
}

/* A ruler's marks: eighths over 2 in, sixteenths, and thirty-seconds under
 * half an inch, where a sixteenth would be a fifth of a sheet's thickness. */
static char *
inches_text (const TrReader *reader,
             double          inches)
{
  int parts = fabs (inches) >= 2 ? 8 : fabs (inches) >= 0.5 ? 16 : 32;

  return fraction_text (reader, inches, parts);
}

static char *
length_text (const TrReader *reader,
             double          mm,
             gboolean        thickness)
{
  if (!isfinite (mm))
    return g_strdup (TR_NOT_KNOWN);
  if (tr_say_is_us (reader))
    return inches_text (reader, mm / TR_MM_PER_INCH);
  if (!thickness && fabs (mm) >= 20)
    return tr_words_number (reader, mm, 0);
  if (fabs (mm) < 2)
    return tr_say_trimmed (reader, mm, decimals_that_show (mm, 1));
  return tr_say_trimmed (reader, round (mm * 2) / 2, 1);
}

char *
tr_words_length_number (const TrReader *reader,
                        double          mm)
{
  return length_text (reader, mm, FALSE);
}

const char *
tr_words_length_unit (const TrReader *reader)
{
  return tr_say_is_us (reader) ? _("in") : _("mm");
}

char *
tr_words_length (const TrReader *reader,
                 double          mm)
{
  if (!isfinite (mm))
    return g_strdup (TR_NOT_KNOWN);
  return tr_say_with_unit (tr_words_length_number (reader, mm), tr_words_length_unit (reader));
}

char *
tr_words_size_bare (const TrReader *reader,
                    const TrSize   *size)
{
  g_autofree char *length = length_text (reader, size->mm[0], FALSE);
  g_autofree char *width = length_text (reader, size->mm[1], FALSE);
  g_autofree char *thickness = length_text (reader, size->mm[2], TRUE);

  return g_strjoin (TR_TIMES, length, width, thickness, NULL);
}

char *
tr_words_size (const TrReader *reader,
               const TrSize   *size)
{
  return tr_say_with_unit (tr_words_size_bare (reader, size), tr_words_length_unit (reader));
}

char *
tr_words_area_size (const TrReader *reader,
                    double          length_mm,
                    double          width_mm)
{
  g_autofree char *length = length_text (reader, length_mm, FALSE);
  g_autofree char *width = length_text (reader, width_mm, FALSE);

  return tr_say_with_unit (g_strjoin (TR_TIMES, length, width, NULL), tr_words_length_unit (reader));
}

char *
tr_words_percent (const TrReader *reader,
                  double          percent)
{
  int decimals = fabs (percent) <= 0 ? 0 : fabs (tr_say_round (percent, 2)) < 1 ? 2 : 1;

  if (!isfinite (percent))
    return g_strdup (TR_NOT_KNOWN);
  return tr_say_with_unit (tr_words_number (reader, percent, decimals_that_show (percent, decimals)), "%");
}

/* The last place in which they are said. */
#define LEAST_MICROMETRES 0.01

static char *
micrometres_number (const TrReader *reader,
                    double          um)
{
  double size = fabs (um);

  /* A layer that is there is never "0.00". */
  if (size > 0 && size < LEAST_MICROMETRES / 2)
    {
      g_autofree char *least = tr_words_number (reader, LEAST_MICROMETRES, 2);

      return g_strdup_printf (_("under %s"), least);
    }
  return tr_words_number (reader, um, size < 0.995 ? 2 : size < 9.95 ? 1 : 0);
}

char *
tr_words_micrometres (const TrReader *reader,
                      const TrRange  *range)
{
  g_autofree char *min = micrometres_number (reader, range->min);
  g_autofree char *max = micrometres_number (reader, range->max);

  if (!isfinite (range->min) && !isfinite (range->max))
    return g_strdup (TR_NOT_KNOWN);
  if (!isfinite (range->max) || g_str_equal (min, max))
    return tr_say_with_unit (g_steal_pointer (&min), _("µm"));
  if (!isfinite (range->min))
    return tr_say_with_unit (g_steal_pointer (&max), _("µm"));
  return tr_say_with_unit (g_strconcat (min, "–", max, NULL), _("µm"));
}

const char *
tr_words_temperature_unit (const TrReader *reader)
{
  return tr_say_is_us (reader) ? "°F" : "°C";
}

char *
tr_words_temperature (const TrReader *reader,
                      double          celsius)
{
  if (!isfinite (celsius))
    return g_strdup (TR_NOT_KNOWN);
  if (tr_say_is_us (reader))
    return tr_say_with_unit (tr_words_number (reader, celsius * 9 / 5 + 32, 0), tr_words_temperature_unit (reader));
  return tr_say_with_unit (tr_say_trimmed (reader, round (celsius * 2) / 2, 1), tr_words_temperature_unit (reader));
}

char *
tr_words_warming (const TrReader *reader,
                  double          celsius)
{
  if (!isfinite (celsius))
    return g_strdup (TR_NOT_KNOWN);

  return tr_say_with_unit (tr_words_number (reader, tr_say_is_us (reader) ? celsius * 9 / 5 : celsius, 1), tr_words_temperature_unit (reader));
}

char *
tr_words_minutes (const TrReader *reader,
                  double          minutes)
{
  double whole = round (minutes), hours;

  if (!isfinite (minutes))
    return g_strdup (TR_NOT_KNOWN);
  if (whole < 10)
    return tr_say_with_unit (tr_say_trimmed (reader, minutes, 1), _("min"));
  if (whole < 60)
    return tr_say_with_unit (tr_words_number (reader, minutes, 0), _("min"));

  hours = floor (whole / 60);
  {
    g_autofree char *text = tr_say_with_unit (tr_words_number (reader, hours, 0), _("h"));
    int rest = (int) (whole - hours * 60);

    return rest == 0 ? g_steal_pointer (&text) : g_strdup_printf ("%s" TR_NO_BREAK_SPACE "%02d", text, rest);
  }
}

char *
tr_words_count (const TrReader *reader,
                double          count)
{
  return tr_say_trimmed (reader, count, 1);
}

char *
tr_words_energy (const TrReader *reader,
                 double          kj,
                 double          kcal)
{
  g_autofree char *joule = NULL, *calorie = NULL;

  if (!isfinite (kj) || !isfinite (kcal))
    return g_strdup (TR_NOT_KNOWN);
  joule = tr_say_with_unit (tr_words_number (reader, kj, 0), _("kJ"));
  calorie = tr_say_with_unit (tr_words_number (reader, kcal, 0), _("kcal"));
  return g_strdup_printf ("%s / %s", joule, calorie);
}
