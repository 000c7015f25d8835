/* test-number.c: quantities as a reader sees them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"

typedef struct { const char *name; double value; const char *metric, *us; } Quantity;

/* Ounces and inches by the international pound and inch of 1959 (NIST Handbook
 * 44, appendix C): 1 oz = 28.349523125 g, 1 in = 25.4 mm. */
static const Quantity masses[] = {
  { "nothing", 0, "0" NB "g", "0" NB "oz" },
  { "a trace", 0.02, "0.02" NB "g", "0.001" NB "oz" },
  { "tenths under 20 g", 16.44, "16.4" NB "g", "0.58" NB "oz" },
  { "just under 20 g", 19.94, "19.9" NB "g", "0.70" NB "oz" },
  { "rounds up to 20 g and loses its tenth", 19.96, "20" NB "g", "0.70" NB "oz" },
  { "half goes up", 52.5, "53" NB "g", "1.85" NB "oz" },
  { "hundredths of an ounce under ten", 283, "283" NB "g", "9.98" NB "oz" },
  { "rounds up to ten ounces and loses a decimal", 283.45, "283" NB "g", "10.0" NB "oz" },
  { "tenths of an ounce over ten", 300, "300" NB "g", "10.6" NB "oz" },
  { "under two pounds stays in ounces", 900, "900" NB "g", "31.7" NB "oz" },
  { "two pounds", 2 * 453.59237, "907" NB "g", "2" NB "lb" },
  { "pounds and ounces", 1470, "1" THIN "470" NB "g", "3" NB "lb" NB "3.9" NB "oz" },
  { "sixteen ounces are never left over", 3 * 453.59237 - 0.2, "1" THIN "361" NB "g", "3" NB "lb" },
  { "millions", 1234567, "1" THIN "234" THIN "567" NB "g", "2" THIN "721" NB "lb" NB "12.1" NB "oz" },
  { "not known", NAN, "–", "–" },
  { "beyond all", INFINITY, "–", "–" },
};

static const Quantity lengths[] = {
  { "nothing", 0, "0" NB "mm", "0" NB "in" },
  { "whole millimetres", 205.4, "205" NB "mm", "8" NB "1/8" NB "in" },
  { "halves under 20 mm", 3.5, "3.5" NB "mm", "1/8" NB "in" },
  { "a whole has no decimals", 4, "4" NB "mm", "5/32" NB "in" },
  { "quarter rounds to half", 3.3, "3.5" NB "mm", "1/8" NB "in" },
  { "something is never nothing", 0.04, "0.04" NB "mm", "1/32" NB "in" },
  { "sixteenths under two inches", 30, "30" NB "mm", "1" NB "3/16" NB "in" },
  { "eighths from two inches on", 640, "640" NB "mm", "25" NB "1/4" NB "in" },
  { "exact inches", 254, "254" NB "mm", "10" NB "in" },
  { "half an inch", 12.7, "12.5" NB "mm", "1/2" NB "in" },
  { "thousands", 1240, "1" THIN "240" NB "mm", "48" NB "7/8" NB "in" },
  { "not known", NAN, "–", "–" },
};

static const Quantity temperatures[] = {
  { "melting ice", 0, "0" NB "°C", "32" NB "°F" },
  { "proof", 26, "26" NB "°C", "79" NB "°F" },
  { "half a degree", 21.5, "21.5" NB "°C", "71" NB "°F" },
  { "freezer", -18, MINUS "18" NB "°C", "0" NB "°F" },
  { "both scales meet", -40, MINUS "40" NB "°C", MINUS "40" NB "°F" },
  { "a little under nothing is nothing", -0.1, "0" NB "°C", "32" NB "°F" },
  { "not known", NAN, "–", "–" },
};

/* A kelvin is 1.8 °F of difference. */
static const Quantity warmings[] = {
  { "friction", 12, "12.0" NB "°C", "21.6" NB "°F" },
  { "no 32 is added", 0, "0.0" NB "°C", "0.0" NB "°F" },
  { "a third", 20.0 / 3, "6.7" NB "°C", "12.0" NB "°F" },
  { "not known", NAN, "–", "–" },
};

static const Quantity percents[] = {
  { "nothing", 0, "0" NB "%", "0" NB "%" },
  { "hundredths under one", 0.234, "0.23" NB "%", "0.23" NB "%" },
  { "tenths", 56.23, "56.2" NB "%", "56.2" NB "%" },
  { "a hundred keeps its tenth, for columns", 100, "100.0" NB "%", "100.0" NB "%" },
  { "under nothing", -3.21, MINUS "3.2" NB "%", MINUS "3.2" NB "%" },
  { "not known", NAN, "–", "–" },
};

static const Quantity minutes[] = {
  { "nothing", 0, "0" NB "min", "0" NB "min" },
  { "a half under ten", 2.5, "2.5" NB "min", "2.5" NB "min" },
  { "whole", 45.2, "45" NB "min", "45" NB "min" },
  { "an hour", 60, "1" NB "h", "1" NB "h" },
  { "rounds up to an hour", 59.6, "1" NB "h", "1" NB "h" },
  { "hours and minutes", 135, "2" NB "h" NB "15", "2" NB "h" NB "15" },
  { "minutes have two digits", 65, "1" NB "h" NB "05", "1" NB "h" NB "05" },
  { "a night", 720, "12" NB "h", "12" NB "h" },
  { "not known", NAN, "–", "–" },
};

static const Quantity counts[] = {
  { "few", 24, "24", "24" },
  { "thousands", 1024, "1" THIN "024", "1" THIN "024" },
  { "the greatest exact one", 9007199254740992.0, "9" THIN "007" THIN "199" THIN "254" THIN "740" THIN "992",
    "9" THIN "007" THIN "199" THIN "254" THIN "740" THIN "992" },
  { "not known", NAN, "–", "–" },
};

typedef char *(*Say) (const TrReader *reader, double value);

static void
check_quantities (const Quantity *quantities,
                  gsize           n,
                  Say             say)
{
  TrReader metric = plain (TR_UNITS_METRIC), us = plain (TR_UNITS_US);

  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *in_metric = say (&metric, quantities[i].value);
      g_autofree char *in_us = say (&us, quantities[i].value);

      g_test_message ("%s", quantities[i].name);
      g_assert_cmpstr (in_metric, ==, quantities[i].metric);
      g_assert_cmpstr (in_us, ==, quantities[i].us);
    }
}

#define TABLE(name, say) \
  static void test_##name (void) { check_quantities (name, G_N_ELEMENTS (name), say); }

TABLE (masses, tr_words_mass)
TABLE (lengths, tr_words_length)
TABLE (temperatures, tr_words_temperature)
TABLE (warmings, tr_words_warming)
TABLE (percents, tr_words_percent)
TABLE (minutes, tr_words_minutes)
TABLE (counts, tr_words_count)

static void
test_numbers_take_thin_spaces_and_their_sign (void)
{
  static const struct { double value; int decimals; const char *expected, *comma; } cases[] = {
    { 0, 0, "0", "0" }, { 999, 0, "999", "999" }, { 1000, 0, "1" THIN "000", "1" THIN "000" },
    { 12345.678, 2, "12" THIN "345.68", "12" THIN "345,68" }, { -1234.5, 1, MINUS "1" THIN "234.5", MINUS "1" THIN "234,5" },
    { -0.001, 2, "0.00", "0,00" }, { 0.5, 0, "1", "1" }, { -0.5, 0, MINUS "1", MINUS "1" },
    { 1e21, 0, "1" THIN "000" THIN "000" THIN "000" THIN "000" THIN "000" THIN "000" THIN "000",
               "1" THIN "000" THIN "000" THIN "000" THIN "000" THIN "000" THIN "000" THIN "000" },
    { NAN, 2, "–", "–" }, { -INFINITY, 2, "–", "–" },
  };
  TrReader point = plain (TR_UNITS_METRIC), comma = with_comma (TR_UNITS_METRIC);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = tr_words_number (&point, cases[i].value, cases[i].decimals);
      g_autofree char *with = tr_words_number (&comma, cases[i].value, cases[i].decimals);

      g_assert_cmpstr (text, ==, cases[i].expected);
      g_assert_cmpstr (with, ==, cases[i].comma);
    }
}

/* Unicode Standard Annex 14: a line is not broken beside a character of the
 * class GL (glue), nor between those of NU (numeric). */
static void
test_no_line_breaks_in_a_number (void)
{
  TrReader reader = plain (TR_UNITS_METRIC);
  g_autofree char *text = tr_words_mass (&reader, 1234567);

  g_assert_cmpint (g_unichar_break_type (0x2009), ==, G_UNICODE_BREAK_AFTER);
  for (const char *p = text; *p != 'g'; p = g_utf8_next_char (p))
    {
      GUnicodeBreakType type = g_unichar_break_type (g_utf8_get_char (p));

      g_assert_true (type == G_UNICODE_BREAK_NUMERIC || type == G_UNICODE_BREAK_NON_BREAKING_GLUE);
    }
}

static void
test_sizes_are_length_width_thickness (void)
{
  TrReader metric = plain (TR_UNITS_METRIC), us = plain (TR_UNITS_US), comma = with_comma (TR_UNITS_METRIC);
  TrSize size = { { 640.2, 205.4, 12.7 } }, thin = { { 601, 276, 3.6 } }, part = { { 300, NAN, 4 } };
  g_autofree char *full = tr_words_size (&metric, &size);
  g_autofree char *inches = tr_words_size (&us, &size);
  g_autofree char *bare = tr_words_size_bare (&comma, &thin);
  g_autofree char *area = tr_words_area_size (&metric, 601, 276);
  g_autofree char *unknown = tr_words_size_bare (&metric, &part);
  TrSize thick = { { 300, 200, 41.6 } };
  g_autofree char *halves = tr_words_size_bare (&metric, &thick);

  g_assert_cmpstr (full, ==, "640 × 205 × 12.5" NB "mm");
  g_assert_cmpstr (inches, ==, "25" NB "1/4 × 8" NB "1/8 × 1/2" NB "in");
  g_assert_cmpstr (bare, ==, "601 × 276 × 3,5");
  g_assert_cmpstr (area, ==, "601 × 276" NB "mm");
  g_assert_cmpstr (unknown, ==, "300 × – × 4");
  g_assert_cmpstr (halves, ==, "300 × 200 × 41.5");
}

static void
test_micrometres_join_what_looks_alike (void)
{
  static const struct { TrRange range; const char *expected; } cases[] = {
    { { 84, 84 }, "84" NB "µm" }, { { 42, 84 }, "42–84" NB "µm" }, { { 83.9, 84.1 }, "84" NB "µm" },
    { { 1.23, 1.23 }, "1.2" NB "µm" }, { { 0.456, 0.456 }, "0.46" NB "µm" }, { { NAN, NAN }, "–" },
    { { 12, NAN }, "12" NB "µm" }, { { NAN, 12 }, "12" NB "µm" }, { { 1234, 1234 }, "1" THIN "234" NB "µm" },
    { { 0.0049, 0.0049 }, "under 0.01" NB "µm" }, { { 1e-6, 2e-6 }, "under 0.01" NB "µm" }, { { 0.005, 0.005 }, "0.01" NB "µm" },
    { { 0.004, 0.02 }, "under 0.01–0.02" NB "µm" }, { { 0, 0 }, "0.00" NB "µm" },
  };
  TrReader metric = plain (TR_UNITS_METRIC), us = plain (TR_UNITS_US);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = tr_words_micrometres (&metric, &cases[i].range);
      g_autofree char *same = tr_words_micrometres (&us, &cases[i].range);

      g_assert_cmpstr (text, ==, cases[i].expected);
      g_assert_cmpstr (same, ==, cases[i].expected);
    }
}

static void
test_mass_columns_have_the_decimals_of_the_step (void)
{
  static const struct { double step, grams; const char *metric, *us; } cases[] = {
    { 1, 1470.4, "1" THIN "470", "51.87" }, { 0.1, 12.34, "12.3", "0.435" }, { 0.5, 12.5, "12.5", "0.44" },
    { 5, 1470, "1" THIN "470", "51.9" }, { 0.01, 1.234, "1.23", "0.044" }, { 1, NAN, "–", "–" },
  };
  TrReader metric = plain (TR_UNITS_METRIC), us = plain (TR_UNITS_US);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *in_metric = tr_words_mass_number (&metric, cases[i].grams, cases[i].step);
      g_autofree char *in_us = tr_words_mass_number (&us, cases[i].grams, cases[i].step);

      g_assert_cmpstr (in_metric, ==, cases[i].metric);
      g_assert_cmpstr (in_us, ==, cases[i].us);
    }
  g_assert_cmpstr (tr_words_mass_unit (&metric), ==, "g");
  g_assert_cmpstr (tr_words_mass_unit (&us), ==, "oz");
  g_assert_cmpstr (tr_words_length_unit (&us), ==, "in");
}

static void
test_energy_is_said_in_both_units (void)
{
  TrReader reader = plain (TR_UNITS_METRIC);
  g_autofree char *text = tr_words_energy (&reader, 1704.4, 408.6);
  g_autofree char *unknown = tr_words_energy (&reader, NAN, 408);

  g_assert_cmpstr (text, ==, "1" THIN "704" NB "kJ / 409" NB "kcal");
  g_assert_cmpstr (unknown, ==, "–");
}

/* Whatever the number, the text is clean, and what is shown is within half of
 * its last place: an inch to 1/16 over 2 in, 1/32 under, 1/64 under 1/2 in. */
static void
test_any_length_is_said_within_its_step (void)
{
  TrReader us = plain (TR_UNITS_US), metric = plain (TR_UNITS_METRIC);

  for (int i = 0; i < 2000; i++)
    {
      double mm = pow (10, g_test_rand_double_range (-1, 4)), back = 0, half;
      g_autofree char *inches = tr_words_length (&us, mm);
      g_autofree char *millimetres = tr_words_length (&metric, mm);

      check_text (inches);
      check_text (millimetres);
      g_assert_true (tr_words_read (&us, TR_QUANTITY_LENGTH_MM, inches, &back, NULL));
      half = 25.4 / (mm >= 50.8 ? 16 : mm >= 12.7 ? 32 : 64);
      g_assert_cmpfloat (fabs (back - mm), <=, mm < 25.4 / 64 ? 25.4 / 32 : half + 1e-9);
      g_assert_true (tr_words_read (&metric, TR_QUANTITY_LENGTH_MM, millimetres, &back, NULL));
      g_assert_cmpfloat (fabs (back - mm), <=, mm >= 20 ? 0.5 + 1e-9 : 0.25 + 1e-9);
    }
}

static void
test_any_mass_is_said_within_its_step (void)
{
  TrReader us = plain (TR_UNITS_US), metric = plain (TR_UNITS_METRIC);

  for (int i = 0; i < 2000; i++)
    {
      double grams = pow (10, g_test_rand_double_range (-1, 6)), back = 0;
      g_autofree char *ounces = tr_words_mass (&us, grams);
      g_autofree char *in_grams = tr_words_mass (&metric, grams);

      check_text (ounces);
      check_text (in_grams);
      g_assert_true (tr_words_read (&us, TR_QUANTITY_MASS_G, ounces, &back, NULL));
      g_assert_cmpfloat (fabs (back - grams), <=, 28.35 * (grams < 283 ? 0.005 : 0.05) + 1e-9);
      g_assert_true (tr_words_read (&metric, TR_QUANTITY_MASS_G, in_grams, &back, NULL));
      g_assert_cmpfloat (fabs (back - grams), <=, grams < 19.9 ? 0.05 + 1e-9 : 0.5 + 1e-9);
    }
}

static void
test_own_scale_goes_before_the_bench (void)
{
  g_autoptr (TrBench) bench = tr_bench_new ();
  TrReader plain, own;

  tr_reader_init_plain (&plain, TR_UNITS_METRIC);
  own = plain;
  own.scale_step_g = 5;
  g_assert_false (tr_reader_equal (&plain, &own));
  g_assert_true (tr_reader_equal (&own, &own));

  g_autoptr (TrBench) as_written = tr_reader_new_bench (&plain, bench);
  g_autoptr (TrBench) on_own = tr_reader_new_bench (&own, bench);

  g_assert_cmpfloat_with_epsilon (as_written->scale_step_g, bench->scale_step_g, 1e-12);
  g_assert_cmpfloat_with_epsilon (on_own->scale_step_g, 5, 1e-12);
  g_assert_cmpfloat_with_epsilon (on_own->fine_scale_step_g, bench->fine_scale_step_g, 1e-12);
  g_assert_cmpfloat_with_epsilon (bench->scale_step_g, 1, 1e-12);          /* theirs is not touched */
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/words/number/masses-in-grams-and-in-ounces", test_masses);
  g_test_add_func ("/words/number/lengths-in-millimetres-and-on-a-ruler-in-inches", test_lengths);
  g_test_add_func ("/words/number/temperatures", test_temperatures);
  g_test_add_func ("/words/number/differences-of-temperature", test_warmings);
  g_test_add_func ("/words/number/percentages", test_percents);
  g_test_add_func ("/words/number/minutes-and-hours", test_minutes);
  g_test_add_func ("/words/number/counts", test_counts);
  g_test_add_func ("/words/number/thin-spaces-and-the-readers-sign", test_numbers_take_thin_spaces_and_their_sign);
  g_test_add_func ("/words/number/no-line-breaks-in-a-number", test_no_line_breaks_in_a_number);
  g_test_add_func ("/words/number/sizes-are-length-width-thickness", test_sizes_are_length_width_thickness);
  g_test_add_func ("/words/number/micrometres-join-what-looks-alike", test_micrometres_join_what_looks_alike);
  g_test_add_func ("/words/number/mass-columns-have-the-decimals-of-the-step", test_mass_columns_have_the_decimals_of_the_step);
  g_test_add_func ("/words/number/energy-in-both-units", test_energy_is_said_in_both_units);
  g_test_add_func ("/words/number/any-length-is-said-within-its-step", test_any_length_is_said_within_its_step);
  g_test_add_func ("/words/number/any-mass-is-said-within-its-step", test_any_mass_is_said_within_its_step);
  g_test_add_func ("/words/number/own-scale-goes-before-the-bench", test_own_scale_goes_before_the_bench);

  return g_test_run ();
}
