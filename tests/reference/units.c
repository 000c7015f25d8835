/* units.c: every unit of an amount, and the reader's inches and °F, against GNU units
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Source: GNU Units 2.22 (Debian package "units") and its own definitions
 * file, asked while the test runs. What it calls cup, tablespoon and so on are
 * the US customary measures of NIST Handbook 44, appendix C.
 */

#include <gio/gio.h>
#include <math.h>

#include "calc/amount.h"
#include "words/words.h"

typedef struct {
  TrUnit unit;
  const char *typed;             /* as a baker types one of it */
  const char *gnu;               /* its name in GNU units */
  const char *in;                /* "g", "ml"; NULL: neither a mass nor a volume */
} UnitCase;

static const UnitCase unit_cases[] = {
  { TR_UNIT_MG, "1 mg", "mg", "g" },
  { TR_UNIT_G, "1 g", "g", "g" },
  { TR_UNIT_KG, "1 kg", "kg", "g" },
  { TR_UNIT_OZ, "1 oz", "oz", "g" },
  { TR_UNIT_LB, "1 lb", "lb", "g" },
  { TR_UNIT_ML, "1 ml", "ml", "ml" },
  { TR_UNIT_CL, "1 cl", "cl", "ml" },
  { TR_UNIT_DL, "1 dl", "dl", "ml" },
  { TR_UNIT_L, "1 l", "l", "ml" },
  { TR_UNIT_TSP, "1 tsp", "teaspoon", "ml" },
  { TR_UNIT_TBSP, "1 tbsp", "tablespoon", "ml" },
  { TR_UNIT_FLOZ, "1 fl oz", "fluidounce", "ml" },
  { TR_UNIT_CUP, "1 cup", "cup", "ml" },
  { TR_UNIT_CUP_METRIC, "1 cup-metric", "metriccup", "ml" },
  { TR_UNIT_EGG, "1 egg", NULL, NULL },
  { TR_UNIT_WHITE, "1 white", NULL, NULL },
  { TR_UNIT_YOLK, "1 yolk", NULL, NULL },
  { TR_UNIT_PIECE, "1 piece", NULL, NULL },
  { TR_UNIT_STICK, "1 stick", NULL, NULL },
  { TR_UNIT_PACKET, "1 packet", NULL, NULL },
  { TR_UNIT_CAKE, "1 cake", NULL, NULL },
  { TR_UNIT_PINCH, "1 pinch", NULL, NULL },
  { TR_UNIT_CUBE, "1 cube", NULL, NULL },
  { TR_UNIT_PERCENT, "1 %", NULL, NULL },
  { TR_UNIT_PERCENT_OF_DOUGH, "1 % of dough", NULL, NULL },
  { TR_UNIT_PERCENT_OF_TOTAL, "1 % of total", NULL, NULL },
};

G_STATIC_ASSERT (G_N_ELEMENTS (unit_cases) == TR_N_UNITS);

static double
ask_gnu_units (const char *have,
               const char *want)
{
  const char *argv[] = { "units", "-t", "-o", "%.17g", have, want, NULL };
  g_autofree char *out = NULL;
  g_autoptr (GError) error = NULL;
  int status = 0;

  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &out, NULL, &status, &error);
  g_assert_no_error (error);
  g_assert_true (g_spawn_check_wait_status (status, &error));

  char *end = NULL;
  double value = g_ascii_strtod (out, &end);
  g_assert_true (end != out);

  return value;
}

static void
assert_same (double ours,
             double theirs)
{
  g_assert_cmpfloat_with_epsilon (ours, theirs, fabs (theirs) * 1e-12);
}

static void
test_unit (gconstpointer data)
{
  const UnitCase *c = data;
  TrAmount amount;
  TrProblem problem = { 0 };

  g_assert_true (tr_amount_parse (c->typed, &amount, &problem));
  g_assert_cmpuint (amount.n_parts, ==, 1);
  g_assert_cmpint (amount.parts[0].unit, ==, c->unit);
  g_assert_cmpfloat_with_epsilon (amount.parts[0].number, 1, 1e-15);

  g_assert_cmpint (isnan (tr_unit_grams (c->unit)), ==, g_strcmp0 (c->in, "g") != 0);
  g_assert_cmpint (isnan (tr_unit_ml (c->unit)), ==, g_strcmp0 (c->in, "ml") != 0);
  if (g_strcmp0 (c->in, "g") == 0)
    assert_same (tr_unit_grams (c->unit), ask_gnu_units (c->gnu, "g"));
  if (g_strcmp0 (c->in, "ml") == 0)
    assert_same (tr_unit_ml (c->unit), ask_gnu_units (c->gnu, "ml"));
}

/* "1 lb 2 oz" and the like: the parts add up to what GNU units adds up. */
static void
test_sums (void)
{
  static const struct { const char *typed, *gnu; } cases[] = {
    { "1 lb 2 oz", "1 lb + 2 oz" },
    { "2-1/2 lb", "2.5 lb" },
    { "1½ oz", "1.5 oz" },
    { "0.75 kg", "0.75 kg" },
    { "1,5 kg", "1.5 kg" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TrAmount amount;
      double grams = 0;

      g_assert_true (tr_amount_parse (cases[i].typed, &amount, NULL));
      for (guint part = 0; part < amount.n_parts; part++)
        grams += amount.parts[part].number * tr_unit_grams (amount.parts[part].unit);
      assert_same (grams, ask_gnu_units (cases[i].gnu, "g"));
    }
}

/* What a reader with US units types into a field. */
static void
test_reader (void)
{
  static const struct {
    TrQuantity quantity;
    const char *typed, *have, *want;
  } cases[] = {
    { TR_QUANTITY_LENGTH_MM, "8 in", "8 inch", "mm" },
    { TR_QUANTITY_LENGTH_MM, "20.5 cm", "20.5 cm", "mm" },
    { TR_QUANTITY_MASS_G, "51.9 oz", "51.9 oz", "g" },
    { TR_QUANTITY_MASS_G, "3 lb", "3 lb", "g" },
    { TR_QUANTITY_TEMPERATURE_C, "79 °F", "tempF(79)", "tempC" },
    { TR_QUANTITY_TEMPERATURE_C, "-40 °F", "tempF(-40)", "tempC" },
    { TR_QUANTITY_TEMPERATURE_C, "26 °C", "tempC(26)", "tempC" },
  };
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_US);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      double value = NAN;

      tr_words_read (&reader, cases[i].quantity, cases[i].typed, &value, &error);
      g_assert_no_error (error);
      g_assert_cmpfloat_with_epsilon (value, ask_gnu_units (cases[i].have, cases[i].want), 1e-9);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_autofree char *units = g_find_program_in_path ("units");

  g_test_init (&argc, &argv, NULL);
  if (units == NULL)
    {
      g_print ("1..0 # SKIP GNU units is not installed\n");
      return 0;
    }

  for (gsize i = 0; i < G_N_ELEMENTS (unit_cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("/reference/units/%s", tr_unit_id (unit_cases[i].unit));

      g_test_add_data_func (g_strdelimit (path, " %", '-'), &unit_cases[i], test_unit);
    }
  g_test_add_func ("/reference/units/sums", test_sums);
  g_test_add_func ("/reference/units/typed-by-a-reader", test_reader);

  return g_test_run ();
}
