/* heat.c: properties of food and the plane wall, as handbooks print them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rows marked computed were worked out from the printed formulas by a script
 * that is not ours.
 */

#include <math.h>

#include "calc/heat.h"
#include "calc/ingredient.h"
#include "dough.h"
#include "calc/rests.h"

/* Components, Choi & Okos 1986 ***********************************************/

typedef struct { double k[6], rho[6], cp[6]; } Row;   /* water, protein, fat, carbohydrate, fibre, ash */

static const struct { double celsius; Row row; } components[] = {   /* computed */
  { 0, { { 0.57109, 0.17881, 0.18071, 0.20141, 0.18331, 0.32962 }, { 997.18, 1329.90, 925.59, 1599.10, 1311.50, 2423.80 },
         { 4.1762, 2.0082, 1.9842, 1.5488, 1.8459, 1.0926 } } },
  { 4, { { 0.57803, 0.18355, 0.17960, 0.20689, 0.18826, 0.33518 }, { 997.13, 1327.83, 923.92, 1597.86, 1310.04, 2422.68 },
         { 4.17592, 2.01301, 1.99002, 1.55655, 1.85315, 1.10010 } } },
  { 10, { { 0.58804, 0.19050, 0.17793, 0.21485, 0.19549, 0.34334 }, { 996.84, 1324.72, 921.41, 1596.00, 1307.84, 2420.99 },
          { 4.17584, 2.02016, 1.99845, 1.56783, 1.86374, 1.11113 } } },
  { 20, { { 0.60366, 0.20164, 0.17512, 0.22743, 0.20704, 0.35648 }, { 995.74, 1319.53, 917.24, 1592.89, 1304.18, 2418.19 },
          { 4.17657, 2.03185, 2.01175, 1.58567, 1.88065, 1.12892 } } },
  { 25, { { 0.61096, 0.20701, 0.17370, 0.23339, 0.21257, 0.36283 }, { 994.91, 1316.94, 915.15, 1591.34, 1302.35, 2416.78 },
          { 4.17735, 2.03760, 2.01803, 1.59415, 1.88876, 1.13754 } } },
};
static const TrPart component_parts[] = {
  TR_PART_WATER, TR_PART_PROTEIN, TR_PART_FAT, TR_PART_CARBOHYDRATE, TR_PART_FIBRE, TR_PART_ASH
};

/* 100 g of one part only; fibre is part of the carbohydrate in a table. */
static void
pure (guint      component,
      double     celsius,
      TrThermal *thermal)
{
  double per_100g[TR_N_PARTS] = { 0 };

  per_100g[component_parts[component]] = 100;
  if (component_parts[component] == TR_PART_FIBRE)
    per_100g[TR_PART_CARBOHYDRATE] = 100;
  tr_thermal_compute (per_100g, celsius, thermal);
}

static void
test_components (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (components); i++)
    for (guint j = 0; j < G_N_ELEMENTS (component_parts); j++)
      {
        TrThermal got;

        pure (j, components[i].celsius, &got);
        g_assert_cmpfloat_with_epsilon (got.k_w_mk, components[i].row.k[j], 0.6e-5);
        g_assert_cmpfloat_with_epsilon (got.rho_kg_m3, components[i].row.rho[j], 0.6e-2);
        g_assert_cmpfloat_with_epsilon (got.cp_j_kgk, 1000 * components[i].row.cp[j], 0.06);
      }
}

/* Seen in public copies and wrong: each must differ from ours by far more than
 * what the rows above let pass, so that none of them could slip in. */
static void
test_wrong_transcriptions (void)
{
  static const struct { const char *what; guint component; double celsius; char property; double wrong; } cases[] = {
    { "water c_p constant 4.1289 with a plus", 0, 20, 'c', 1000 * (4.1289 + 9.0864e-5 * 20 + 5.4731e-6 * 400) },
    { "fat c_p 1.4733e-4", 2, 20, 'c', 1000 * (1.9842 + 1.4733e-4 * 20 - 4.8008e-6 * 400) },
    { "fat k with a plus", 2, 20, 'k', 0.18071 + 2.7604e-4 * 20 - 1.7749e-7 * 400 },
    { "fat k -2.7604e-3", 2, 20, 'k', 0.18071 - 2.7604e-3 * 20 - 1.7749e-7 * 400 },
    { "water k 0.457", 0, 20, 'k', 0.45709 + 1.7625e-3 * 20 - 6.7036e-6 * 400 },
    { "fat density slope -0.51757", 2, 20, 'r', 925.59 - 0.51757 * 20 },
    { "protein density 1322.9", 1, 20, 'r', 1322.9 - 0.5184 * 20 },
    { "fibre c_p 1.8549", 4, 20, 'c', 1000 * (1.8549 + 1.8306e-3 * 20 - 4.6509e-6 * 400) },
    { "water c_p 9.9516e-3", 0, 20, 'c', 1000 * (4.1762 - 9.0864e-5 * 20 + 9.9516e-3 * 400) },
    { "carbohydrate c_p by its k", 3, 20, 'c', 1000 * (0.20141 + 1.3874e-3 * 20 - 4.3312e-6 * 400) },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TrThermal got;
      double ours;

      pure (cases[i].component, cases[i].celsius, &got);
      ours = cases[i].property == 'k' ? got.k_w_mk : cases[i].property == 'r' ? got.rho_kg_m3 : got.cp_j_kgk;
      g_test_message ("%s: %g, ours %g", cases[i].what, cases[i].wrong, ours);
      g_assert_cmpfloat (fabs (ours / cases[i].wrong - 1), >, 1e-3);
    }
}

/* Mixtures *******************************************************************/

typedef struct { const char *id; double celsius, rho, k, cp; } Mixture;

static const Mixture mixtures[] = {   /* computed from USDA SR28 rows */
  { "butter-unsalted", 4, 939.5, 0.2470, 2.3811 },
  { "butter-unsalted", 20, 933.6, 0.2474, 2.3990 },
  { "butter-salted", 4, 950.1, 0.2412, 2.3181 },
  { "milk-whole", 4, 1025.1, 0.5420, 3.8904 },
  { "flour-bread", 20, 1421.1, 0.2943, 1.9973 },
};

static void
get_mixture (const char *id,
             double      celsius,
             TrThermal  *got)
{
  const TrIngredient *ingredient = tr_builtin_find (id);

  g_assert_nonnull (ingredient);
  tr_thermal_compute (ingredient->per_100g, celsius, got);
}

static void
test_mixtures (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (mixtures); i++)
    {
      TrThermal got;

      get_mixture (mixtures[i].id, mixtures[i].celsius, &got);
      g_assert_cmpfloat_with_epsilon (got.rho_kg_m3, mixtures[i].rho, 0.06);
      g_assert_cmpfloat_with_epsilon (got.k_w_mk, mixtures[i].k, 0.6e-4);
      g_assert_cmpfloat_with_epsilon (got.cp_j_kgk / 1000, mixtures[i].cp, 0.6e-4);
    }
}

/* Mass shares where shares of the volume belong, seen in a public copy. */
static void
test_mass_shares_are_wrong (void)
{
  const double *butter = tr_builtin_find ("butter-unsalted")->per_100g;
  double by_mass = 0, all = 0;
  TrThermal got;

  for (guint j = 0; j < G_N_ELEMENTS (component_parts); j++)
    {
      double grams = butter[component_parts[j]] - (component_parts[j] == TR_PART_CARBOHYDRATE ? butter[TR_PART_FIBRE] : 0);

      pure (j, 20, &got);
      by_mass += grams * got.k_w_mk;
      all += grams;
    }
  get_mixture ("butter-unsalted", 20, &got);
  g_assert_cmpfloat (fabs (got.k_w_mk / (by_mass / all) - 1), >, 5e-3);
}

/* Measured, in print. Wide: a mean over temperatures, another butter, another method. */
static void
test_published (void)
{
  /* Geankoplis, Transport Processes, App. A.4-1, mean of 0 to 100 °C, kJ/kg K; calorimeter: milk 3.942 ± 0.034, water 4.176 ± 0.008 */
  static const struct { const char *id; double low, high; } heat[] = {
    { "butter-unsalted", 2.1, 2.5 }, { "flour-bread", 1.80 * 0.9, 1.88 * 1.1 }, { "egg-yolk", 2.81 * 0.88, 2.81 * 1.12 },
    { "milk-whole", 3.85 * 0.97, 3.942 * 1.03 }, { "water", 4.176 - 0.016, 4.176 + 0.016 },
  };
  TrThermal got;

  for (guint i = 0; i < G_N_ELEMENTS (heat); i++)
    {
      get_mixture (heat[i].id, 20, &got);
      g_test_message ("%s: %.3f kJ/kg K", heat[i].id, got.cp_j_kgk / 1000);
      g_assert_cmpfloat (got.cp_j_kgk / 1000, >=, heat[i].low);
      g_assert_cmpfloat (got.cp_j_kgk / 1000, <=, heat[i].high);
    }

  /* k = 0.141 + 0.00412 × water %, r = 0.93, of dairy products and margarines: quoted in
   * Tavman & Tavman, J. Food Eng. 41 (1999) 109-114. */
  get_mixture ("butter-unsalted", 20, &got);
  g_assert_cmpfloat_with_epsilon (got.k_w_mk, 0.141 + 0.00412 * 17.94, 0.04);
}

/* The plane wall **************************************************************/

/* Incropera, Fundamentals of Heat and Mass Transfer, Table 5.1 (Bi 0.2 and 1 seen in print; the others computed by bisection;
 * printed tables carry slips in the last digit). */
static const struct { double biot, root, factor; } one_term[] = {
  { 0.01, 0.0998, 1.0017 }, { 0.02, 0.1410, 1.0033 }, { 0.03, 0.1723, 1.0049 }, { 0.04, 0.1987, 1.0066 }, { 0.05, 0.2218, 1.0082 },
  { 0.06, 0.2425, 1.0098 }, { 0.07, 0.2615, 1.0114 }, { 0.08, 0.2791, 1.0130 }, { 0.09, 0.2956, 1.0145 }, { 0.10, 0.3111, 1.0161 },
  { 0.15, 0.3779, 1.0237 }, { 0.2, 0.4328, 1.0311 }, { 0.25, 0.4801, 1.0382 }, { 0.3, 0.5218, 1.0450 }, { 0.4, 0.5932, 1.0580 },
  { 0.5, 0.6533, 1.0701 }, { 0.6, 0.7051, 1.0814 }, { 0.7, 0.7506, 1.0918 }, { 0.8, 0.7910, 1.1016 }, { 0.9, 0.8274, 1.1107 },
  { 1, 0.8603, 1.1191 }, { 2, 1.0769, 1.1785 }, { 3, 1.1925, 1.2102 }, { 4, 1.2646, 1.2287 }, { 5, 1.3138, 1.2402 },
  { 6, 1.3496, 1.2479 }, { 7, 1.3766, 1.2532 }, { 8, 1.3978, 1.2570 }, { 9, 1.4149, 1.2598 }, { 10, 1.4289, 1.2620 },
  { 20, 1.4961, 1.2699 }, { 30, 1.5202, 1.2717 }, { 40, 1.5325, 1.2723 }, { 50, 1.5400, 1.2727 }, { 100, 1.5552, 1.2731 },
};

static void
test_one_term (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (one_term); i++)
    {
      const TrThermal thermal = { 1, 1000, 1000 };
      TrWall wall;

      tr_wall_init (&wall, 1, 0, one_term[i].biot, 1000, &thermal);
      g_assert_cmpfloat_with_epsilon (wall.root[0], one_term[i].root, 0.6e-4);
      g_assert_cmpfloat_with_epsilon (wall.factor[0], one_term[i].factor, 0.6e-4);
    }
}

/* Cengel, Heat and Mass Transfer, 5th ed., problem 4-52: a meat slab of 23 cm, k 0.47, alpha 0.13e-6, from 7 °C in air of -30 °C,
 * h 20, until the middle is at -18 °C. Answer computed with half the thickness; "10.07 h, -24.3 °C" in print takes the whole. */
static void
test_meat_slab (void)
{
  const TrThermal meat = { 0.47, 1090, 0.47 / (0.13e-6 * 1090) };
  TrWall wall;

  tr_wall_init (&wall, 7, -30, 20, 115, &meat);
  double minutes = tr_wall_get_minutes_to (&wall, TR_WALL_CORE, -18);

  g_assert_cmpfloat_with_epsilon (wall.biot, 4.894, 0.0006);
  g_assert_cmpfloat_with_epsilon (minutes / 60, 22.10, 0.005 * 22.10);
  g_assert_cmpfloat_with_epsilon (tr_wall_get_c (&wall, TR_WALL_SURFACE, minutes), -26.9, 0.06);
  g_assert_cmpfloat (fabs (minutes / 60 - 10.07), >, 10);
}

/* Dough slabs, computed by a series of 60 terms. */
static void
test_dough_slabs (void)
{
  static const struct { double mm, target_c; gboolean both; double core_s, mean_s; } cases[] = {
    { 20, 5, TRUE, 10234.8, 10099.8 }, { 20, 5, FALSE, 22029.8, 21486.7 }, { 30, 6, TRUE, 13238.3, 12933.6 },
  };
  const TrThermal dough = { 0.40, 1150, 2800 };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TrWall wall;

      tr_wall_init (&wall, 24, 3, 8, cases[i].both ? cases[i].mm / 2 : cases[i].mm, &dough);
      g_assert_cmpfloat_with_epsilon (60 * tr_wall_get_minutes_to (&wall, TR_WALL_CORE, cases[i].target_c), cases[i].core_s, 0.1);
      g_assert_cmpfloat_with_epsilon (60 * tr_wall_get_minutes_to (&wall, TR_WALL_MEAN, cases[i].target_c), cases[i].mean_s, 0.1);
      g_assert_cmpfloat_with_epsilon (tr_wall_get_c (&wall, TR_WALL_CORE, cases[i].core_s / 60), cases[i].target_c, 0.0005);
    }
}

/* The same through a document: a tray is one face, a rack both. */
static void
test_a_rest_of_a_slab (void)
{
  g_autoptr (TrTrial) trial = ref_trial_new ();
  TrDough *dough = ref_trial_get_dough (trial);
  double minutes[2];

  ref_dough_add_line (dough, TR_STAGE_DOUGH, "flour-bread", "1000 g");
  ref_dough_add_line (dough, TR_STAGE_DOUGH, "water", "600 g");
  ref_dough_add_line (dough, TR_STAGE_ROLL_IN, "butter-unsalted", "500 g");
  ref_dough_laminate (dough, TR_STYLE_HALF, "3");
  dough->lock_in->rest = tr_rest_new ();
  dough->lock_in->rest->thickness_mm = 20;
  trial->bench->fridge_c = 3;
  dough->method->dough_c = 24;
  dough->lock_in->rest->target_c = 5;
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (TrFigures) figures = NULL;

      dough->lock_in->rest->on = i == 0 ? TR_ON_BOARD : TR_ON_RACK;
      figures = ref_figures_new (trial);
      minutes[i] = tr_rests_find (tr_figures_get_dough (figures, 0), 0)->minutes_to_core;
    }

  /* Near those of the slab above, whose properties are rounder; and one face of a tray
   * takes as much longer than both as there, 22 029.8 to 10 234.8 s. */
  g_assert_cmpfloat_with_epsilon (minutes[0] * 60, 22029.8, 0.15 * 22029.8);
  g_assert_cmpfloat_with_epsilon (minutes[0] / minutes[1], 22029.8 / 10234.8, 0.03);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/reference/heat/components", test_components);
  g_test_add_func ("/reference/heat/wrong-transcriptions", test_wrong_transcriptions);
  g_test_add_func ("/reference/heat/mixtures", test_mixtures);
  g_test_add_func ("/reference/heat/mass-shares", test_mass_shares_are_wrong);
  g_test_add_func ("/reference/heat/published", test_published);
  g_test_add_func ("/reference/heat/one-term", test_one_term);
  g_test_add_func ("/reference/heat/meat-slab", test_meat_slab);
  g_test_add_func ("/reference/heat/dough-slabs", test_dough_slabs);
  g_test_add_func ("/reference/heat/a-rest", test_a_rest_of_a_slab);

  return g_test_run ();
}
