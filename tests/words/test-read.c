/* test-read.c: typing is understood, and what was written reads back
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"

typedef struct { TrQuantity quantity; const char *text; double metric, us; } Reading;

#define NUM TR_QUANTITY_NUMBER
#define WHOLE TR_QUANTITY_WHOLE
#define MASS TR_QUANTITY_MASS_G
#define LENGTH TR_QUANTITY_LENGTH_MM
#define TEMP TR_QUANTITY_TEMPERATURE_C
#define WARMING TR_QUANTITY_WARMING_C
#define PERCENT TR_QUANTITY_PERCENT
#define TIME TR_QUANTITY_MINUTES

/* 1 in = 25.4 mm, 1 lb = 453.59237 g: NIST Handbook 44, appendix C. */
static const Reading readings[] = {
  { LENGTH, "205", 205, 205 * 25.4 }, { LENGTH, "205 mm", 205, 205 }, { LENGTH, "205mm", 205, 205 },
  { LENGTH, "205" NB "mm", 205, 205 }, { LENGTH, "20.5 cm", 205, 205 }, { LENGTH, "20,5 cm", 205, 205 },
  { LENGTH, "1.2 m", 1200, 1200 }, { LENGTH, "8 in", 203.2, 203.2 }, { LENGTH, "8 1/8 in", 206.375, 206.375 },
  { LENGTH, "8-1/8 in", 206.375, 206.375 }, { LENGTH, "8⅛ in", 206.375, 206.375 }, { LENGTH, "8⅛\"", 206.375, 206.375 },
  { LENGTH, "8" NB "1/8" NB "in", 206.375, 206.375 }, { LENGTH, "1/2\"", 12.7, 12.7 }, { LENGTH, "½ inch", 12.7, 12.7 },
  { LENGTH, "1/2 in.", 12.7, 12.7 }, { LENGTH, "8 1/8", 8.125, 206.375 }, { LENGTH, "2 ft", 609.6, 609.6 },
  { LENGTH, "2 ft 3 in", 685.8, 685.8 }, { LENGTH, "2' 3\"", 685.8, 685.8 }, { LENGTH, "2’ 3”", 685.8, 685.8 },
  { LENGTH, "2 ft 3", 685.8, 685.8 }, { LENGTH, "1 240 mm", 1240, 1240 }, { LENGTH, "1" THIN "240 mm", 1240, 1240 },
  { LENGTH, "  205  ", 205, 205 * 25.4 }, { LENGTH, "205 MM", 205, 205 }, { LENGTH, ".5 in", 12.7, 12.7 },
  { LENGTH, "+5 mm", 5, 5 }, { LENGTH, "0", 0, 0 }, { LENGTH, "5. mm", 5, 5 },

  { MASS, "250", 250, 250 * 28.349523125 }, { MASS, "250 g", 250, 250 }, { MASS, "0.25 kg", 250, 250 },
  { MASS, "1 lb 2 oz", 510.29141625, 510.29141625 }, { MASS, "1 lb 2", 510.29141625, 510.29141625 },
  { MASS, "1 1/2 lbs", 680.388555, 680.388555 }, { MASS, "8.8 oz", 249.4758035, 249.4758035 }, { MASS, "500 mg", 0.5, 0.5 },
  { MASS, "3" NB "lb" NB "3.9" NB "oz", 1471.340250188, 1471.340250188 },

  { TEMP, "26", 26, (26 - 32) * 5.0 / 9 }, { TEMP, "26 °C", 26, 26 }, { TEMP, "26C", 26, 26 }, { TEMP, "26°", 26, (26 - 32) * 5.0 / 9 },
  { TEMP, "79 °F", (79 - 32) * 5.0 / 9, (79 - 32) * 5.0 / 9 }, { TEMP, "-18 °C", -18, -18 }, { TEMP, MINUS "18 °C", -18, -18 },
  { TEMP, "-40 F", -40, -40 }, { TEMP, "32 F", 0, 0 },
  /* A kelvin is 9/5 of a degree Fahrenheit (NIST SP 811, appendix B.8), and no 32 is added to a difference. */
  { WARMING, "12", 12, 12 * 5.0 / 9 }, { WARMING, "12 °C", 12, 12 }, { WARMING, "18 °F", 10, 10 }, { WARMING, "-9 F", -5, -5 },

  { PERCENT, "2.5", 2.5, 2.5 }, { PERCENT, "2,5 %", 2.5, 2.5 }, { PERCENT, "2.5%", 2.5, 2.5 }, { PERCENT, "1/2 %", 0.5, 0.5 },

  { TIME, "45", 45, 45 }, { TIME, "45 min", 45, 45 }, { TIME, "2 h", 120, 120 }, { TIME, "2 h 15", 135, 135 },
  { TIME, "2 h 15 min", 135, 135 }, { TIME, "2h15", 135, 135 }, { TIME, "2:15", 135, 135 }, { TIME, "1.5 h", 90, 90 },
  { TIME, "1 1/2 hours", 90, 90 }, { TIME, "1" NB "h" NB "05", 65, 65 }, { TIME, "1 day 2", 1560, 1560 }, { TIME, "90 s", 1.5, 1.5 },

  { NUM, "1.5", 1.5, 1.5 }, { NUM, "1,5", 1.5, 1.5 }, { NUM, "-2", -2, -2 }, { NUM, "1,234.5", 1234.5, 1234.5 },
  { NUM, "1.234,5", 1234.5, 1234.5 }, { NUM, "1,234,567", 1234567, 1234567 }, { NUM, "0,125", 0.125, 0.125 },
  { NUM, "1.500", 1.5, 1.5 }, { NUM, "3/4", 0.75, 0.75 }, { NUM, "12" THIN "345.5", 12345.5, 12345.5 },
  { WHOLE, "24", 24, 24 }, { WHOLE, "1 024", 1024, 1024 }, { WHOLE, "24.0", 24, 24 },
};

static void
test_typing_is_understood_in_either_system (void)
{
  TrReader metric = plain (TR_UNITS_METRIC), us = plain (TR_UNITS_US);

  for (gsize i = 0; i < G_N_ELEMENTS (readings); i++)
    {
      const Reading *reading = &readings[i];
      g_autoptr (GError) error = NULL;
      double value = NAN;

      g_test_message ("%s", reading->text);
      tr_words_read (&metric, reading->quantity, reading->text, &value, &error);
      g_assert_no_error (error);
      g_assert_cmpfloat_with_epsilon (value, reading->metric, 1e-9 * MAX (1, fabs (reading->metric)));
      tr_words_read (&us, reading->quantity, reading->text, &value, &error);
      g_assert_no_error (error);
      g_assert_cmpfloat_with_epsilon (value, reading->us, 1e-9 * MAX (1, fabs (reading->us)));
    }
}

static void
test_what_is_not_understood_is_said (void)
{
  static const struct { TrQuantity quantity; const char *text, *says; } cases[] = {
    { LENGTH, "", "Nothing is written" }, { LENGTH, "   ", "Nothing is written" }, { LENGTH, "-", "sign alone" },
    { LENGTH, "wide", "“wide” is not understood; expected a length" }, { LENGTH, "8 cubits", "the unit “cubits”" },
    { LENGTH, "250 g", "the unit “g”" }, { LENGTH, "-3 mm", "below 0" }, { LENGTH, "1/0 mm", "cannot be|can be" },
    { LENGTH, "5 6 mm", "not understood" }, { LENGTH, "8 1/8/8 in", "“8 1/8/8 in”" }, { LENGTH, "1e3 mm", "“1e3 mm”" },
    { LENGTH, "1,500 mm", "two ways" }, { LENGTH, "99999999999 mm", "can be" }, { LENGTH, "nan", "“nan”" }, { LENGTH, "inf mm", "“inf mm”" },
    { LENGTH, "5 mm mm", "“5 mm mm”" }, { LENGTH, "0x10 mm", "“0x10 mm”" }, { LENGTH, "1..5 mm", "“1..5 mm”" },
    { LENGTH, "1.2.3 mm", "“1.2.3 mm”" }, { LENGTH, "1,23,456 mm", "“1,23,456 mm”" },
    { MASS, "2 cups", "the unit “cups”" }, { MASS, "1,500", "two ways" }, { MASS, "-1 g", "below 0" },
    { TEMP, "-300 °C", "absolute zero" }, { TEMP, "26 K", "the unit “k”" }, { TEMP, "1 C 2 C", "not understood" }, { WARMING, "1 C 2 C", "not understood" },
    { PERCENT, "2 g", "the unit “g”" }, { TIME, "2 moons", "the unit “moons”" }, { TIME, "-5 min", "below 0" },
    { NUM, "1 2", "not understood" }, { NUM, "1 mm", "expected a number" }, { NUM, "1,500", "two ways" },
    { WHOLE, "2.5", "not whole" }, { WHOLE, "-3", "below 0" }, { WHOLE, "1/2", "not whole" }, { WHOLE, "a\nb", "“a b”" },
  };
  TrReader reader = plain (TR_UNITS_METRIC);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      g_auto (GStrv) either = g_strsplit (cases[i].says, "|", 2);
      double value = 17;

      g_test_message ("%s", cases[i].text);
      g_assert_false (tr_words_read (&reader, cases[i].quantity, cases[i].text, &value, &error));
      g_assert_nonnull (error);
      check_shape (error->message);
      if (strstr (error->message, either[0]) == NULL && (either[1] == NULL || strstr (error->message, either[1]) == NULL))
        g_error ("“%s” is missing in: %s", cases[i].says, error->message);
      g_assert_cmpfloat_with_epsilon (value, 17, 1e-12);
    }
}

static void
test_the_readers_own_sign_is_always_a_decimal_sign (void)
{
  TrReader point = plain (TR_UNITS_METRIC), comma = with_comma (TR_UNITS_METRIC);
  double value = 0;

  g_assert_true (tr_words_read (&point, NUM, "1.500", &value, NULL));
  g_assert_cmpfloat_with_epsilon (value, 1.5, 1e-12);
  g_assert_false (tr_words_read (&point, NUM, "1,500", &value, NULL));
  g_assert_true (tr_words_read (&comma, NUM, "1,500", &value, NULL));
  g_assert_cmpfloat_with_epsilon (value, 1.5, 1e-12);
  g_assert_false (tr_words_read (&comma, NUM, "1.500", &value, NULL));
  g_assert_true (tr_words_read (&comma, NUM, "1.5", &value, NULL));
  g_assert_cmpfloat_with_epsilon (value, 1.5, 1e-12);
}

static void
test_any_bytes_are_survived (void)
{
  static const char *const pieces[] = { "1", "23", "/", " ", "-", ".", ",", "½", "\"", "'", "mm", "h", ":", "°", "\xff", "\n", "e", "%", "−", THIN };
  TrReader readers[] = { plain (TR_UNITS_METRIC), with_comma (TR_UNITS_US) };

  for (int i = 0; i < 20000; i++)
    {
      g_autoptr (GString) text = g_string_new (NULL);
      g_autoptr (GError) error = NULL;
      double value = 17;

      for (int n = g_test_rand_int_range (0, 8); n > 0; n--)
        g_string_append (text, pieces[g_test_rand_int_range (0, G_N_ELEMENTS (pieces))]);
      if (tr_words_read (&readers[i % 2], (TrQuantity) (i / 2 % ((int) TR_QUANTITY_MINUTES + 1)), text->str, &value, &error))
        g_assert_true (isfinite (value));
      else
        {
          g_assert_cmpfloat_with_epsilon (value, 17, 1e-12);
          check_shape (error->message);
        }
    }
}

/* Half of the last place that is written, in base units. */
static double
tolerance (const TrReader *reader,
           TrQuantity      quantity)
{
  gboolean us = reader->units == TR_UNITS_US;

  switch (quantity)
    {
    case NUM: return 0.5e-6;
    case WHOLE: return 0;
    case MASS: return us ? 0.5e-4 * 28.349523125 : 0.5e-3;
    case LENGTH: return us ? 0.5e-3 * 25.4 : 0.5e-3;
    case TEMP:
    case WARMING: return us ? 0.5e-2 * 5 / 9 : 0.5e-2;
    case PERCENT:
    case TIME:
    default: return 0.5e-3;
    }
}

static void
test_what_is_written_reads_back (void)
{
  TrReader readers[] = { plain (TR_UNITS_METRIC), with_comma (TR_UNITS_METRIC), plain (TR_UNITS_US), with_comma (TR_UNITS_US) };

  for (int i = 0; i < 20000; i++)
    {
      const TrReader *reader = &readers[i % 4];
      TrQuantity quantity = (TrQuantity) g_test_rand_int_range (0, TR_QUANTITY_MINUTES + 1);
      double value = pow (10, g_test_rand_double_range (-3, 5)), back = 0;
      g_autoptr (GError) error = NULL;
      g_autofree char *text = NULL, *again = NULL;

      if (quantity == WHOLE)
        value = round (value);
      if ((quantity == NUM || quantity == TEMP) && g_test_rand_bit ())
        value = -fmod (value, 200);
      text = tr_words_write (reader, quantity, value);
      tr_words_read (reader, quantity, text, &back, &error);
      g_assert_no_error (error);
      g_assert_cmpfloat (fabs (back - value), <=, tolerance (reader, quantity) * (1 + 1e-9) + fabs (value) * 1e-15);
      again = tr_words_write (reader, quantity, back);
      g_assert_cmpstr (again, ==, text);
    }
}

static void
test_a_rulers_fraction_reads_back_exactly (void)
{
  TrReader us = plain (TR_UNITS_US);

  for (int i = 0; i < 64 * 32; i++)
    {
      double mm = i / 32.0 * 25.4, back = -1;
      g_autofree char *text = tr_words_write (&us, LENGTH, mm);

      g_assert_null (strchr (text, '.'));
      g_assert_true (tr_words_read (&us, LENGTH, text, &back, NULL));
      g_assert_cmpfloat_with_epsilon (back, mm, 1e-9);
    }
}

static void
test_entries_hold_plain_numbers (void)
{
  static const struct { TrQuantity quantity; double value; const char *metric, *us, *comma; } cases[] = {
    { LENGTH, 205, "205", "8.071", "205" }, { LENGTH, 206.375, "206.375", "8 1/8", "206,375" }, { LENGTH, 12.7, "12.7", "1/2", "12,7" },
    { LENGTH, 1240, "1240", "48.819", "1240" }, { LENGTH, 25.4, "25.4", "1", "25,4" }, { MASS, 4000, "4000", "141.0958", "4000" },
    { TEMP, -18, "-18", "-0.4", "-18" }, { TEMP, 26, "26", "78.8", "26" }, { WARMING, 12, "12", "21.6", "12" }, { TIME, 135, "135", "135", "135" },
    { PERCENT, 2.5, "2.5", "2.5", "2,5" }, { NUM, -0.0000001, "0", "0", "0" }, { WHOLE, 1024, "1024", "1024", "1024" },
    { NUM, NAN, "", "", "" }, { LENGTH, INFINITY, "", "", "" },
  };
  TrReader metric = plain (TR_UNITS_METRIC), us = plain (TR_UNITS_US), comma = with_comma (TR_UNITS_METRIC);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *in_metric = tr_words_write (&metric, cases[i].quantity, cases[i].value);
      g_autofree char *in_us = tr_words_write (&us, cases[i].quantity, cases[i].value);
      g_autofree char *in_comma = tr_words_write (&comma, cases[i].quantity, cases[i].value);

      g_assert_cmpstr (in_metric, ==, cases[i].metric);
      g_assert_cmpstr (in_us, ==, cases[i].us);
      g_assert_cmpstr (in_comma, ==, cases[i].comma);
    }
}

static void
test_bare_amounts_get_the_readers_unit_and_a_point (void)
{
  static const struct { const char *typed, *metric, *us, *comma; } cases[] = {
    { "250", "250 g", "250 oz", "250 g" }, { " 250 ", "250 g", "250 oz", "250 g" }, { "250,5", "250,5 g", "250,5 oz", "250.5 g" },
    { "1/2", "1/2 g", "1/2 oz", "1/2 g" }, { "250 g", "250 g", "250 g", "250 g" }, { "1,5 cups", "1,5 cups", "1,5 cups", "1.5 cups" },
    { "1,500 kg", "1,500 kg", "1,500 kg", "1.5 kg" }, { "1.500 kg", "1.5 kg", "1.5 kg", "1.500 kg" },
    { "1.234 kg", "1.2340 kg", "1.2340 kg", "1.234 kg" }, { "0.125 kg", "0.125 kg", "0.125 kg", "0.125 kg" },
    { "1 lb 2,5 oz", "1 lb 2,5 oz", "1 lb 2,5 oz", "1 lb 2.5 oz" }, { "a little", "a little", "a little", "a little" },
    { "2 %", "2 %", "2 %", "2 %" }, { "", "", "", "" }, { "1.234,5 g", "1.234,5 g", "1.234,5 g", "1.234,5 g" },
  };
  TrReader metric = plain (TR_UNITS_METRIC), us = plain (TR_UNITS_US), comma = with_comma (TR_UNITS_METRIC);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *in_metric = tr_words_complete_amount (&metric, cases[i].typed);
      g_autofree char *in_us = tr_words_complete_amount (&us, cases[i].typed);
      g_autofree char *in_comma = tr_words_complete_amount (&comma, cases[i].typed);

      g_assert_cmpstr (in_metric, ==, cases[i].metric);
      g_assert_cmpstr (in_us, ==, cases[i].us);
      g_assert_cmpstr (in_comma, ==, cases[i].comma);
    }
}

/* What the document is given can be read there as what the reader meant. */
static void
test_a_completed_amount_means_what_the_reader_meant (void)
{
  TrReader readers[] = { plain (TR_UNITS_METRIC), with_comma (TR_UNITS_METRIC) };

  for (int i = 0; i < 5000; i++)
    {
      const TrReader *reader = &readers[i % 2];
      double value = pow (10, g_test_rand_double_range (-2, 4));
      g_autofree char *typed = tr_words_write (reader, MASS, value);
      g_autofree char *amount = tr_words_complete_amount (reader, typed);
      TrProblem problem = { TR_PROBLEM_NONE };
      TrAmount parsed;

      g_test_message ("%s", amount);
      g_assert_true (tr_amount_parse (amount, &parsed, &problem));
      g_assert_cmpuint (parsed.n_parts, ==, 1);
      g_assert_cmpint (parsed.parts[0].unit, ==, TR_UNIT_G);
      g_assert_cmpfloat_with_epsilon (parsed.parts[0].number, value, 0.5e-3 + 1e-9);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/words/read/typing-is-understood-in-either-system", test_typing_is_understood_in_either_system);
  g_test_add_func ("/words/read/what-is-not-understood-is-said", test_what_is_not_understood_is_said);
  g_test_add_func ("/words/read/own-sign-is-always-decimal", test_the_readers_own_sign_is_always_a_decimal_sign);
  g_test_add_func ("/words/read/any-bytes-are-survived", test_any_bytes_are_survived);
  g_test_add_func ("/words/write/reads-back", test_what_is_written_reads_back);
  g_test_add_func ("/words/write/a-rulers-fraction-reads-back-exactly", test_a_rulers_fraction_reads_back_exactly);
  g_test_add_func ("/words/write/entries-hold-plain-numbers", test_entries_hold_plain_numbers);
  g_test_add_func ("/words/write/bare-amounts-get-the-readers-unit", test_bare_amounts_get_the_readers_unit_and_a_point);
  g_test_add_func ("/words/write/a-completed-amount-means-what-was-meant", test_a_completed_amount_means_what_the_reader_meant);

  return g_test_run ();
}
