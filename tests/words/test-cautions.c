/* test-cautions.c: where the work can hurt is said
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * 5 °C (41 °F) for what goes off: U.S. Food and Drug Administration, Food Code 2022,
 * 3-501.16 (A)(2).
 */

#include <string.h>

#include "words/cautions.h"

static char *
say (const char  *ingredient,
     TrUnitSystem units)
{
  g_autoptr (TrTrial) trial = tr_trial_new ();
  TrDough *dough = tr_dough_new ("d1");
  TrReader reader;

  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "flour-bread", "500 g"));
  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_FINISH, ingredient, "50 g"));
  g_ptr_array_add (trial->doughs, dough);
  tr_reader_init_plain (&reader, units);

  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autofree char *said = tr_words_cautions (&reader, tr_figures_get_dough (figures, 0));
  g_auto (GStrv) parts = g_strsplit (said, "\u00a0", -1);

  return g_strjoinv (" ", parts);
}

/* Oven, raw dough, cold chain, rollers, and who decides, whatever is in the dough. */
static void
test_always (void)
{
  static const char *const always[] = {
    "oven", "melted fat", "Raw flour and raw dough", "at 5 °C or below", "rollers", "Local food-safety", "licensed practice decide",
  };
  g_autofree char *said = say ("milk-whole", TR_UNITS_METRIC);

  for (guint i = 0; i < G_N_ELEMENTS (always); i++)
    g_assert_nonnull (strstr (said, always[i]));
}

static void
test_raw_egg (void)
{
  static const struct { const char *ingredient; gboolean is_egg; } cases[] = {
    { "egg-whole", TRUE }, { "egg-yolk", TRUE }, { "egg-white", TRUE }, { "milk-whole", FALSE }, { "water", FALSE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *said = say (cases[i].ingredient, TR_UNITS_METRIC);

      g_assert_cmpint (strstr (said, "Raw egg:") != NULL, ==, cases[i].is_egg);
    }
}

static void
test_degrees_of_the_reader (void)
{
  g_autofree char *said = say ("egg-whole", TR_UNITS_US);

  g_assert_nonnull (strstr (said, "at 41 °F or below"));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/cautions/always", test_always);
  g_test_add_func ("/cautions/raw-egg-where-there-is-one", test_raw_egg);
  g_test_add_func ("/cautions/degrees-of-the-reader", test_degrees_of_the_reader);

  return g_test_run ();
}
