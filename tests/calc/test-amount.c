/* test-amount.c: what an amount as the baker typed it means
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <locale.h>
#include <math.h>
#include <string.h>

#include "calc/amount.h"

#define G(n) { n, TR_UNIT_G }

typedef struct {
  const char *text;
  guint n_parts;
  TrAmountPart parts[3];
  gboolean is_mean;
} Readable;

static const Readable readables[] = {
  /* Numbers */
  { "250 g", 1, { G (250) } },
  { "250g", 1, { G (250) } },
  { "  250   g  ", 1, { G (250) } },
  { "0 g", 1, { G (0) } },
  { "1.5 g", 1, { G (1.5) } },
  { "1,5 g", 1, { G (1.5) } },
  { ".5 g", 1, { G (0.5) } },
  { ",5 g", 1, { G (0.5) } },
  { ".500 g", 1, { G (0.5) } },
  { "0.500 g", 1, { G (0.5) } },
  { "0,125 g", 1, { G (0.125) } },
  { "00.500 g", 1, { G (0.5) } },
  { "1.5000 g", 1, { G (1.5) } },
  { "12.25 g", 1, { G (12.25) } },
  { "1,234.5 g", 1, { G (1234.5) } },
  { "1.234,5 g", 1, { G (1234.5) } },
  { "1,234.567 g", 1, { G (1234.567) } },
  { "1.234.567 g", 1, { G (1234567) } },
  { "1,234,567.89 g", 1, { G (1234567.89) } },
  { "1 234 g", 1, { G (1234) } },
  { "1\u2009234 g", 1, { G (1234) } },
  { "1\u00a0234\u00a0g", 1, { G (1234) } },
  { "1\u202f234,567 g", 1, { G (1234.567) } },
  { "12 345 678 g", 1, { G (12345678) } },
  { "1'234 g", 1, { G (1234) } },
  /* Fractions */
  { "1/2 g", 1, { G (0.5) } },
  { "1 / 2 g", 1, { G (0.5) } },
  { "1\u20442 g", 1, { G (0.5) } },
  { "3/2 g", 1, { G (1.5) } },
  { "½ g", 1, { G (0.5) } },
  { "⅟16 g", 1, { G (1.0 / 16) } },
  { "1½ g", 1, { G (1.5) } },
  { "1 ½ g", 1, { G (1.5) } },
  { "1 1/2 g", 1, { G (1.5) } },
  { "1\u00a01/2 g", 1, { G (1.5) } },
  { "2-1/2 g", 1, { G (2.5) } },
  { "2-½ g", 1, { G (2.5) } },
  { "2–1/2 g", 1, { G (2.5) } },
  { "1 and 1/2 g", 1, { G (1.5) } },
  { "1 1/3 cups", 1, { { 4.0 / 3, TR_UNIT_CUP } } },
  /* Ranges: the mean, and it is said */
  { "2-3 g", 1, { G (2.5) }, TRUE },
  { "2–3 g", 1, { G (2.5) }, TRUE },
  { "2 - 3 g", 1, { G (2.5) }, TRUE },
  { "2 to 3 g", 1, { G (2.5) }, TRUE },
  { "1/2-3/4 g", 1, { G (0.625) }, TRUE },
  { "½–1 g", 1, { G (0.75) }, TRUE },
  { "1-1½ g", 1, { G (1.25) }, TRUE },
  { "1-1 1/2 g", 1, { G (1.25) }, TRUE },
  { "0-1/2 g", 1, { G (0.25) }, TRUE },
  { "1-3/2 g", 1, { G (1.25) }, TRUE },
  { "1,5-2,5 g", 1, { G (2) }, TRUE },
  { "20-30 %", 1, { { 25, TR_UNIT_PERCENT } }, TRUE },
  /* Several parts */
  { "1 lb 2 oz", 2, { { 1, TR_UNIT_LB }, { 2, TR_UNIT_OZ } } },
  { "1lb2oz", 2, { { 1, TR_UNIT_LB }, { 2, TR_UNIT_OZ } } },
  { "1 lb. 2 oz.", 2, { { 1, TR_UNIT_LB }, { 2, TR_UNIT_OZ } } },
  { "1 lb, 2 oz", 2, { { 1, TR_UNIT_LB }, { 2, TR_UNIT_OZ } } },
  { "1 lb + 2 oz", 2, { { 1, TR_UNIT_LB }, { 2, TR_UNIT_OZ } } },
  { "1 lb & 2 oz", 2, { { 1, TR_UNIT_LB }, { 2, TR_UNIT_OZ } } },
  { "1 cup plus 2 tbsp", 2, { { 1, TR_UNIT_CUP }, { 2, TR_UNIT_TBSP } } },
  { "1 cup AND 2 tbsp", 2, { { 1, TR_UNIT_CUP }, { 2, TR_UNIT_TBSP } } },
  { "1 egg and 1 egg yolk", 2, { { 1, TR_UNIT_EGG }, { 1, TR_UNIT_YOLK } } },
  { "1 cup 1-2 tbsp ½ tsp", 3, { { 1, TR_UNIT_CUP }, { 1.5, TR_UNIT_TBSP }, { 0.5, TR_UNIT_TSP } }, TRUE },
  /* Percentages */
  { "25 %", 1, { { 25, TR_UNIT_PERCENT } } },
  { "25%", 1, { { 25, TR_UNIT_PERCENT } } },
  { "25 percent", 1, { { 25, TR_UNIT_PERCENT } } },
  { "25 % of flour", 1, { { 25, TR_UNIT_PERCENT } } },
  { "25 % of dough", 1, { { 25, TR_UNIT_PERCENT_OF_DOUGH } } },
  { "25% of the dough", 1, { { 25, TR_UNIT_PERCENT_OF_DOUGH } } },
  { "25 percent of total", 1, { { 25, TR_UNIT_PERCENT_OF_TOTAL } } },
  { "20 % OF TOTAL", 1, { { 20, TR_UNIT_PERCENT_OF_TOTAL } } },
};

static void
test_readable (gconstpointer data)
{
  const Readable *expected = data;
  TrAmount amount;

  g_assert_true (tr_amount_parse (expected->text, &amount, NULL));
  g_assert_cmpuint (amount.n_parts, ==, expected->n_parts);
  g_assert_cmpint (amount.is_mean, ==, expected->is_mean);
  for (guint i = 0; i < amount.n_parts; i++)
    {
      g_assert_cmpfloat_with_epsilon (amount.parts[i].number, expected->parts[i].number, 1e-12 * (1 + expected->parts[i].number));
      g_assert_cmpint (amount.parts[i].unit, ==, expected->parts[i].unit);
    }
}

typedef struct {
  const char *text;
  TrProblemId id;
  const char *said;              /* NULL: nothing */
} Unreadable;

static const Unreadable unreadables[] = {
  { "", TR_PROBLEM_EMPTY, NULL },
  { "  \t ", TR_PROBLEM_EMPTY, NULL },
  { "some", TR_PROBLEM_NO_NUMBER, "some" },
  { "pinch", TR_PROBLEM_NO_NUMBER, "pinch" },
  { "-5 g", TR_PROBLEM_NO_NUMBER, "-5 g" },
  { "−5 g", TR_PROBLEM_NO_NUMBER, "−5 g" },
  { "+5 g", TR_PROBLEM_NO_NUMBER, "+5 g" },
  { "NaN g", TR_PROBLEM_NO_NUMBER, "NaN g" },
  { "inf g", TR_PROBLEM_NO_NUMBER, "inf g" },
  { "%", TR_PROBLEM_NO_NUMBER, "%" },
  { "٢ g", TR_PROBLEM_NO_NUMBER, "٢ g" },
  { "250", TR_PROBLEM_BARE_NUMBER, NULL },
  { "1 1/2", TR_PROBLEM_BARE_NUMBER, NULL },
  { "250, 3 g", TR_PROBLEM_BARE_NUMBER, NULL },
  { "5 and 3 g", TR_PROBLEM_BARE_NUMBER, NULL },
  { "2 ladles", TR_PROBLEM_UNKNOWN_UNIT, "ladles" },
  { "1e5 g", TR_PROBLEM_UNKNOWN_UNIT, "e" },
  { "0x10 g", TR_PROBLEM_UNKNOWN_UNIT, "x" },
  { "3 µg", TR_PROBLEM_UNKNOWN_UNIT, "µg" },
  { "2 teaspoonsful", TR_PROBLEM_UNKNOWN_UNIT, "teaspoonsful" },
  { "1.500 g", TR_PROBLEM_AMBIGUOUS, "1.500" },
  { "1,500 g", TR_PROBLEM_AMBIGUOUS, "1,500" },
  { "10,250 g", TR_PROBLEM_AMBIGUOUS, "10,250" },
  { "1-1,500 g", TR_PROBLEM_AMBIGUOUS, "1,500" },
  { "1/0 g", TR_PROBLEM_OUT_OF_RANGE, "1/0" },
  { "1 g 2000000 kg", TR_PROBLEM_OUT_OF_RANGE, "2000000 kg" },
  { "2000000000 cups", TR_PROBLEM_OUT_OF_RANGE, "2000000000 cups" },
  { "1.2.3 g", TR_PROBLEM_NOT_UNDERSTOOD, "1.2.3" },
  { "1,23,4 g", TR_PROBLEM_NOT_UNDERSTOOD, "1,23,4" },
  { "1.2,3 g", TR_PROBLEM_NOT_UNDERSTOOD, "1.2,3" },
  { "250 g flour", TR_PROBLEM_NOT_UNDERSTOOD, "flour" },
  { "250 g (sifted)", TR_PROBLEM_NOT_UNDERSTOOD, "(sifted)" },
  { "250 g -3 g", TR_PROBLEM_NOT_UNDERSTOOD, "-3 g" },
  { "250 g,", TR_PROBLEM_NOT_UNDERSTOOD, "," },
  { "250 g plus", TR_PROBLEM_NOT_UNDERSTOOD, "plus" },
  { "25 % of butter", TR_PROBLEM_NOT_UNDERSTOOD, "of butter" },
  { "5 $", TR_PROBLEM_NOT_UNDERSTOOD, "$" },
  { "1 g 1 g 1 g 1 g 1 g 1 g 1 g 1 g 1 g", TR_PROBLEM_NOT_UNDERSTOOD, "1 g" },
  { "25 % 10 g", TR_PROBLEM_MIXED_PERCENT, NULL },
  { "10 g + 25 % of dough", TR_PROBLEM_MIXED_PERCENT, NULL },
  { "10 % 20 %", TR_PROBLEM_MIXED_PERCENT, NULL },
  { "5 \xff g", TR_PROBLEM_NOT_UNDERSTOOD, "\xef\xbf\xbd g" },
  { "5 g \xe2\x82", TR_PROBLEM_NOT_UNDERSTOOD, "\xef\xbf\xbd\xef\xbf\xbd" },
};

static void
test_unreadable (gconstpointer data)
{
  const Unreadable *expected = data;
  TrAmount amount;
  TrProblem problem;

  g_assert_false (tr_amount_parse (expected->text, &amount, &problem));
  g_assert_cmpint (problem.id, ==, expected->id);
  g_assert_cmpstr (problem.text, ==, expected->said);
  g_assert_null (problem.where);
  g_free (problem.text);
}

static void
test_ambiguous_shows_both_readings (void)
{
  TrAmount amount;
  TrProblem problem;

  g_assert_false (tr_amount_parse ("1,250 g", &amount, &problem));
  g_assert_cmpint (problem.id, ==, TR_PROBLEM_AMBIGUOUS);
  g_assert_cmpfloat_with_epsilon (problem.value[0], 1.25, 1e-12);
  g_assert_cmpfloat_with_epsilon (problem.value[1], 1250, 1e-12);
  g_free (problem.text);
}

/* All fractions that the Unicode Character Database 15 gives the numeric type
 * Nu and the decomposition <fraction> in Latin-1 Supplement and Number Forms. */
static void
test_every_unicode_fraction (void)
{
  static const struct { gunichar c; double value; } fractions[] = {
    { 0xBC, 1. / 4 }, { 0xBD, 1. / 2 }, { 0xBE, 3. / 4 }, { 0x2150, 1. / 7 }, { 0x2151, 1. / 9 },
    { 0x2152, 1. / 10 }, { 0x2153, 1. / 3 }, { 0x2154, 2. / 3 }, { 0x2155, 1. / 5 }, { 0x2156, 2. / 5 },
    { 0x2157, 3. / 5 }, { 0x2158, 4. / 5 }, { 0x2159, 1. / 6 }, { 0x215A, 5. / 6 }, { 0x215B, 1. / 8 },
    { 0x215C, 3. / 8 }, { 0x215D, 5. / 8 }, { 0x215E, 7. / 8 }, { 0x2189, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (fractions); i++)
    {
      char character[7] = "";
      TrAmount amount;

      g_unichar_to_utf8 (fractions[i].c, character);
      g_autofree char *alone = g_strconcat (character, " tsp", NULL);
      g_autofree char *mixed = g_strconcat ("2", character, " tsp", NULL);

      g_assert_true (tr_amount_parse (alone, &amount, NULL));
      g_assert_cmpfloat_with_epsilon (amount.parts[0].number, fractions[i].value, 1e-15);
      g_assert_true (tr_amount_parse (mixed, &amount, NULL));
      g_assert_cmpfloat_with_epsilon (amount.parts[0].number, 2 + fractions[i].value, 1e-15);
    }
}

static const struct { const char *names; TrUnit unit; } unit_names[] = {
  { "mg milligram milligrams Milligrammes", TR_UNIT_MG },
  { "g G gr gr. gram grams gramme Grammes GM", TR_UNIT_G },
  { "kg KG Kg. kilo kilos kilogram kilograms kilogrammes", TR_UNIT_KG },
  { "oz oz. OZ ounce ounces", TR_UNIT_OZ },
  { "lb lb. lbs lbs. LBS pound pounds", TR_UNIT_LB },
  { "ml mL mls millilitre millilitres milliliter milliliters", TR_UNIT_ML },
  { "cl centilitre centiliters", TR_UNIT_CL },
  { "dl dL decilitre deciliters", TR_UNIT_DL },
  { "l L litre litres liter liters", TR_UNIT_L },
  { "tsp tsp. tsps Tsp teaspoon teaspoons", TR_UNIT_TSP },
  { "tbsp tbsp. tbsps Tbs Tbsp tablespoon tablespoons", TR_UNIT_TBSP },
  { "floz fl_oz fl._oz. fl.oz. FL_OZ fluid_ounce fluid_ounces fl_ounces fluid_oz", TR_UNIT_FLOZ },
  { "cup cups Cup us_cup", TR_UNIT_CUP },
  { "cup-metric metric_cup metric_cups Metric-Cup", TR_UNIT_CUP_METRIC },
  { "egg eggs Eggs whole_eggs", TR_UNIT_EGG },
  { "white whites egg_white egg_whites", TR_UNIT_WHITE },
  { "yolk yolks egg_yolk egg_yolks", TR_UNIT_YOLK },
  { "piece pieces pc pcs pcs.", TR_UNIT_PIECE },
  { "stick sticks", TR_UNIT_STICK },
  { "packet packets sachet sachets pkt", TR_UNIT_PACKET },
  { "cake cakes", TR_UNIT_CAKE },
  { "pinch pinches", TR_UNIT_PINCH },
  { "cube cubes", TR_UNIT_CUBE },
};

/* "_" stands for a space. */
static void
test_unit_names (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (unit_names); i++)
    {
      g_auto (GStrv) names = g_strsplit (unit_names[i].names, " ", -1);

      for (guint k = 0; names[k] != NULL; k++)
        {
          g_autofree char *text = g_strconcat ("3 ", g_strdelimit (names[k], "_", ' '), NULL);
          g_autofree char *followed = g_strconcat (text, " 1 g", NULL);
          TrAmount amount;

          if (!tr_amount_parse (text, &amount, NULL))
            g_error ("\"%s\" cannot be read", text);
          g_assert_cmpint (amount.parts[0].unit, ==, unit_names[i].unit);
          g_assert_true (tr_amount_parse (followed, &amount, NULL));
          g_assert_cmpint (amount.parts[0].unit, ==, unit_names[i].unit);
          g_assert_cmpint (amount.parts[1].unit, ==, TR_UNIT_G);
        }
    }
}

static void
test_unit_ids_go_both_ways (void)
{
  for (int unit = 0; unit < TR_N_UNITS; unit++)
    {
      g_assert_cmpint (tr_unit_from_id (tr_unit_id ((TrUnit) unit)), ==, unit);
      if (!tr_unit_is_percent ((TrUnit) unit))
        {
          g_autofree char *text = g_strconcat ("1 ", tr_unit_id ((TrUnit) unit), NULL);
          TrAmount amount;

          g_assert_true (tr_amount_parse (text, &amount, NULL));
          g_assert_cmpint (amount.parts[0].unit, ==, unit);
        }
    }
  g_assert_cmpint (tr_unit_from_id ("ladle"), ==, -1);
  g_assert_cmpint (tr_unit_from_id (NULL), ==, -1);
}

/* NIST Handbook 44, appendix C: pound of 0.453 592 37 kg, gallon of 231 cubic
 * inches of (25.4 mm)³, a cup 1/16, a fluid ounce 1/128, a tablespoon 1/256, a
 * teaspoon 1/768 of it. */
static void
test_units_are_exact (void)
{
  double gallon_ml = 231 * 2.54 * 2.54 * 2.54;

  g_assert_cmpfloat_with_epsilon (tr_unit_grams (TR_UNIT_LB), 453.59237, 1e-12);
  g_assert_cmpfloat_with_epsilon (tr_unit_grams (TR_UNIT_OZ), 28.349523125, 1e-12);
  g_assert_cmpfloat_with_epsilon (tr_unit_ml (TR_UNIT_CUP), gallon_ml / 16, 1e-10);
  g_assert_cmpfloat_with_epsilon (tr_unit_ml (TR_UNIT_FLOZ), 29.5735295625, 1e-12);
  g_assert_cmpfloat_with_epsilon (tr_unit_ml (TR_UNIT_TBSP), 14.78676478125, 1e-12);
  g_assert_cmpfloat_with_epsilon (tr_unit_ml (TR_UNIT_TSP), gallon_ml / 768, 1e-10);
  g_assert_cmpfloat_with_epsilon (tr_unit_ml (TR_UNIT_CUP_METRIC), 250, 1e-12);
  g_assert_true (isnan (tr_unit_grams (TR_UNIT_CUP)));
  g_assert_true (isnan (tr_unit_ml (TR_UNIT_G)));
  g_assert_true (isnan (tr_unit_grams (TR_UNIT_EGG)) && isnan (tr_unit_ml (TR_UNIT_EGG)));
}

/* A locale with a decimal comma, made here because machines rarely have one. */
static gboolean
set_comma_locale (const char *folder)
{
  g_autofree char *locale = g_build_filename (folder, "de_DE.UTF-8", NULL);
  const char *const argv[] = { "localedef", "-i", "de_DE", "-f", "UTF-8", locale, NULL };

  if (!g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH | G_SPAWN_STDERR_TO_DEV_NULL, NULL, NULL, NULL, NULL,
                     NULL, NULL))
    return FALSE;
  g_setenv ("LOCPATH", folder, TRUE);

  return setlocale (LC_NUMERIC, "de_DE.UTF-8") != NULL;
}

static void
remove_folder (const char *folder)
{
  const char *const argv[] = { "rm", "-r", folder, NULL };

  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL, NULL, NULL);
}

static void
test_locale_makes_no_difference (void)
{
  g_autofree char *folder = g_dir_make_tmp ("tourier-locale-XXXXXX", NULL);
  TrAmount amount;

  g_assert_nonnull (folder);
  if (set_comma_locale (folder))
    {
      g_assert_cmpstr (localeconv ()->decimal_point, ==, ",");
      g_assert_true (tr_amount_parse ("1.25 g", &amount, NULL));
      g_assert_cmpfloat_with_epsilon (amount.parts[0].number, 1.25, 1e-12);
      g_assert_true (tr_amount_parse ("1,25 g", &amount, NULL));
      g_assert_cmpfloat_with_epsilon (amount.parts[0].number, 1.25, 1e-12);
      setlocale (LC_NUMERIC, "C");
    }
  else
    {
      g_test_skip ("no locale with a decimal comma can be made");
    }
  remove_folder (folder);
}

/* Whatever was read keeps the invariants of TrAmount. */
static void
check_amount (const TrAmount *amount)
{
  guint n_percents = 0;

  g_assert_cmpuint (amount->n_parts, >=, 1);
  g_assert_cmpuint (amount->n_parts, <=, TR_AMOUNT_MAX_PARTS);
  for (guint i = 0; i < amount->n_parts; i++)
    {
      g_assert_true (isfinite (amount->parts[i].number) && amount->parts[i].number >= 0);
      g_assert_cmpint (amount->parts[i].unit, <, TR_N_UNITS);
      n_percents += tr_unit_is_percent (amount->parts[i].unit) ? 1 : 0;
    }
  g_assert_true (n_percents == 0 || (n_percents == 1 && amount->n_parts == 1));
}

/* Texts put together from the grammar's own pieces, cut off anywhere. The copy
 * has no byte to spare, so that a checker of memory sees a read past the end. */
static void
test_random_text_is_safe (void)
{
  static const char *const pieces[] = {
    "1", "23", "000", "500", ",", ".", "/", "-", "–", " ", "\u2009", "½", "⅟", "⁄", "g", "fl", "oz", "cup",
    "metric", "%", "of", "dough", "plus", "and", "to", "+", "\xff", "\xe2\x80", "é", "'", "e", "\x01"
  };
  guint n_read = 0;

  for (guint run = 0; run < 20000; run++)
    {
      g_autoptr (GString) text = g_string_new (NULL);
      TrAmount amount;
      TrProblem problem;

      for (int n = g_test_rand_int_range (0, 12); n > 0; n--)
        g_string_append (text, pieces[g_test_rand_int_range (0, G_N_ELEMENTS (pieces))]);
      g_string_truncate (text, (gsize) g_test_rand_int_range (0, (gint32) text->len + 1));

      g_autofree char *exact = g_strndup (text->str, text->len);
      if (tr_amount_parse (exact, &amount, &problem))
        {
          check_amount (&amount);
          n_read++;
        }
      else
        {
          g_assert_cmpint (problem.id, !=, TR_PROBLEM_NONE);
          g_assert_true (problem.text == NULL || g_utf8_validate (problem.text, -1, NULL));
          g_free (problem.text);
        }
    }
  g_assert_cmpuint (n_read, >, 0);
}

/* What was written with any unit and two decimals comes back. */
static void
test_written_numbers_come_back (void)
{
  for (guint run = 0; run < 1000; run++)
    {
      int hundredths = g_test_rand_int_range (0, 100000000);
      TrUnit unit = (TrUnit) g_test_rand_int_range (0, TR_UNIT_PERCENT);
      g_autofree char *text = g_strdup_printf ("%d%c%02d %s", hundredths / 100, g_test_rand_bit () ? '.' : ',',
                                               hundredths % 100, tr_unit_id (unit));
      TrAmount amount;

      g_assert_true (tr_amount_parse (text, &amount, NULL));
      g_assert_cmpfloat_with_epsilon (amount.parts[0].number, hundredths / 100.0, 1e-12);
      g_assert_cmpint (amount.parts[0].unit, ==, unit);
    }
}

/* A megabyte of the worst that could be found takes no longer than a blink. */
static void
test_long_text_is_not_slow (void)
{
  static const char *const repeated[] = { "1", "1,", "1 ", "1/", "1-", "½", "a", ".", " ", "1 g ", "\xff", "000 " };

  for (guint i = 0; i < G_N_ELEMENTS (repeated); i++)
    {
      g_autoptr (GString) text = g_string_new ("1");
      TrAmount amount;
      gint64 start;

      while (text->len < 1000000)
        g_string_append (text, repeated[i]);
      start = g_get_monotonic_time ();
      g_assert_false (tr_amount_parse (text->str, &amount, NULL));
      g_assert_cmpint (g_get_monotonic_time () - start, <, 1000000);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (readables); i++)
    {
      g_autofree char *path = g_strdup_printf ("/amount/reads/%02u", i);
      g_test_add_data_func (path, &readables[i], test_readable);
    }
  for (guint i = 0; i < G_N_ELEMENTS (unreadables); i++)
    {
      g_autofree char *path = g_strdup_printf ("/amount/refuses/%02u", i);
      g_test_add_data_func (path, &unreadables[i], test_unreadable);
    }
  g_test_add_func ("/amount/ambiguous-shows-both-readings", test_ambiguous_shows_both_readings);
  g_test_add_func ("/amount/every-unicode-fraction", test_every_unicode_fraction);
  g_test_add_func ("/amount/unit-names", test_unit_names);
  g_test_add_func ("/amount/unit-ids-go-both-ways", test_unit_ids_go_both_ways);
  g_test_add_func ("/amount/units-are-exact", test_units_are_exact);
  g_test_add_func ("/amount/locale-makes-no-difference", test_locale_makes_no_difference);
  g_test_add_func ("/amount/random-text-is-safe", test_random_text_is_safe);
  g_test_add_func ("/amount/written-numbers-come-back", test_written_numbers_come_back);
  g_test_add_func ("/amount/long-text-is-not-slow", test_long_text_is_not_slow);

  return g_test_run ();
}
