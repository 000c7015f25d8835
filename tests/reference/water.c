/* water.c: water temperature and ice, as handbooks print them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The examples are in °F and pounds; friction and everything else is turned
 * into °C here (a difference by 5/9 only), and the answer back.
 */

#include "dough.h"

static double
c_of_f (double f)
{
  return (f - 32) * 5 / 9;
}

static double
f_of_c (double c)
{
  return c * 9 / 5 + 32;
}

/* A straight dough of flour and `water`. */
static TrTrial *
trial_new (const char *water)
{
  TrTrial *trial = ref_trial_new ();
  TrDough *dough = ref_trial_get_dough (trial);

  ref_dough_add_line (dough, TR_STAGE_DOUGH, "flour-bread", "30 lb");
  ref_dough_add_line (dough, TR_STAGE_DOUGH, "water", water);

  return trial;
}

static void
test_water_temperature (void)
{
  static const struct { const char *source; double dough_f, flour_f, room_f, friction_f, water_f; } cases[] = {
    { "Pizza Today, June 2018", 80, 65, 75, 35, 65 },
    { "San Francisco Baking Institute, class sheet, 2009", 75, 65, 65, 8, 87 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TrTrial) trial = trial_new ("16 lb");
      TrMethod *method = ref_trial_get_dough (trial)->method;

      g_test_message ("%s", cases[i].source);
      method->dough_c = c_of_f (cases[i].dough_f);
      method->flour_c = c_of_f (cases[i].flour_f);
      trial->bench->room_c = c_of_f (cases[i].room_f);
      method->friction_c = cases[i].friction_f * 5 / 9;
      method->friction_n = 3;

      g_autoptr (TrFigures) figures = ref_figures_new (trial);
      const TrWater *water = &tr_figures_get_dough (figures, 0)->water;

      g_assert_cmpfloat (water->n, ==, 3);
      g_assert_cmpfloat_with_epsilon (f_of_c (water->liquid_need_c), cases[i].water_f, 1e-9);
      g_assert_cmpfloat_with_epsilon (f_of_c (water->water_c), cases[i].water_f, 1e-9);
    }
}

/* Gisslen, Professional Baking (from memory; its arithmetic worked again): 16 lb
 * of water wanted at 58 °F from a tap of 65 °F take 10.1 oz of ice. It divides
 * by tap + 112 in °F, which is tap + 80 in °C. */
static void
test_ice (void)
{
  g_autoptr (TrTrial) trial = trial_new ("16 lb");
  TrMethod *method = ref_trial_get_dough (trial)->method;

  method->dough_c = c_of_f (58);
  method->flour_c = trial->bench->room_c = method->dough_c;
  method->friction_c = 0;
  method->tap_c = c_of_f (65);

  g_autoptr (TrFigures) figures = ref_figures_new (trial);
  const TrWater *water = &tr_figures_get_dough (figures, 0)->water;

  g_assert_cmpfloat_with_epsilon (water->available_water_g, 16 * 453.59237, 1e-9);
  g_assert_cmpfloat_with_epsilon (f_of_c (water->water_c), 58, 1e-9);
  g_assert_cmpfloat_with_epsilon (water->ice_g / 28.349523125, 10.1, 0.05);

  /* Nothing is gained nor lost when it melts: ice and the rest of the water,
   * from the tap, have the wanted temperature. */
  double rest_g = water->available_water_g - water->ice_g;

  g_assert_cmpfloat_with_epsilon ((rest_g * method->tap_c - water->ice_g * 80) / water->available_water_g, water->water_c, 1e-9);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/reference/water/temperature", test_water_temperature);
  g_test_add_func ("/reference/water/ice", test_ice);

  return g_test_run ();
}
