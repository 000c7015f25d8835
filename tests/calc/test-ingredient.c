/* test-ingredient.c: what an ingredient is made of
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "calc/ingredient.h"

static TrIngredient
resolve (const TrPantry *pantry,
         const char     *id)
{
  TrIngredient ingredient;

  g_assert_true (tr_ingredient_resolve (pantry, id, &ingredient));

  return ingredient;
}

static double
weigh (const TrIngredient *ingredient,
       const char         *text)
{
  TrAmount amount;
  double grams;

  g_assert_true (tr_amount_parse (text, &amount, NULL));
  g_assert_true (tr_ingredient_weigh (ingredient, &amount, &grams, NULL));

  return grams;
}

/* The table */

static void
test_table_is_whole (void)
{
  g_assert_cmpuint (tr_builtin_count (), ==, 50);
  for (guint i = 0; i < tr_builtin_count (); i++)
    {
      const TrIngredient *ingredient = tr_builtin_get (i);

      g_assert_true (tr_builtin_find (ingredient->id) == ingredient);
      g_assert_cmpstr (ingredient->base_id, ==, ingredient->id);
      g_assert_true (g_str_has_prefix (ingredient->source, "USDA SR28") || ingredient->role == TR_ROLE_STARTER);
      g_assert_cmpint (ingredient->is_flour, ==, ingredient->role == TR_ROLE_FLOUR);
      g_assert_cmpint (isnan (ingredient->fresh_yeast_factor), ==, ingredient->role != TR_ROLE_LEAVEN);
      g_assert_true (isnan (ingredient->price_per_kg) && isnan (ingredient->density_g_ml));
      for (guint k = 1; ingredient->allergens[0] != NULL && ingredient->allergens[k] != NULL; k++)
        g_assert_cmpint (strcmp (ingredient->allergens[k - 1], ingredient->allergens[k]), <, 0);
    }
  g_assert_null (tr_builtin_find ("butter"));
  g_assert_null (tr_builtin_find (NULL));
}

/* USDA SR28, file ABBREV, NDB 01145 and 01077. */
static void
test_table_is_usda (void)
{
  TrIngredient butter = resolve (NULL, "butter-unsalted");
  TrIngredient milk = resolve (NULL, "milk-whole");

  g_assert_cmpfloat_with_epsilon (butter.per_100g[TR_PART_WATER], 17.94, 1e-9);
  g_assert_cmpfloat_with_epsilon (butter.per_100g[TR_PART_FAT], 81.11, 1e-9);
  g_assert_cmpfloat_with_epsilon (butter.per_100g[TR_PART_PROTEIN], 0.85, 1e-9);
  g_assert_cmpfloat_with_epsilon (butter.per_100g[TR_PART_SODIUM_MG], 11, 1e-9);
  g_assert_cmpstr (butter.source, ==,
                   "USDA SR28 NDB 01145; best 15–20 °C McGee 2004, workable cold from 10 °C common practice; "
                   "liquid 32–35 °C encyclopedias; proof at most 28 °C IREKS-Kompendium 11.5");
  g_assert_cmpfloat_with_epsilon (milk.per_100g[TR_PART_SUGARS], 5.05, 1e-9);
  g_assert_cmpfloat_with_epsilon (milk.per_100g[TR_PART_CARBOHYDRATE], 4.80, 1e-9);
}

/* The worked example of the SR28 documentation, p. 39: 1 tbsp of butter is
 * 81.11 × 14.2 / 100 = 11.52 g of fat. */
static void
test_worked_tablespoon_of_butter (void)
{
  TrIngredient butter = resolve (NULL, "butter-salted");

  g_assert_cmpfloat_with_epsilon (tr_part_of (weigh (&butter, "1 tbsp"), butter.per_100g[TR_PART_FAT]), 11.52, 0.005);
}

static void
test_water_is_all_water (void)
{
  TrIngredient water = resolve (NULL, "water");

  g_assert_cmpfloat_with_epsilon (water.per_100g[TR_PART_WATER], 100, 1e-12);
  g_assert_cmpfloat_with_epsilon (water.per_100g[TR_PART_ASH], 0, 1e-12);
  g_assert_cmpfloat_with_epsilon (water.per_100g[TR_PART_SODIUM_MG], 4, 1e-12);
}

static void
test_allergens_unknown_stays (void)
{
  TrIngredient margarine = resolve (NULL, "margarine-pastry");
  TrIngredient lard = resolve (NULL, "lard");

  g_assert_cmpstr (margarine.allergens[0], ==, "unknown");
  g_assert_null (lard.allergens[0]);
}

/* Weighing */

static const struct { const char *ingredient, *amount; double grams; } weights[] = {
  { "flour-bread", "500 g", 500 },
  { "flour-bread", "1.5 kg", 1500 },
  { "flour-bread", "1 lb 2 oz", 510.29141625 },
  { "flour-bread", "1 cup", 137 },
  { "flour-bread", "1 cup plus 2 tbsp", 137 + 2 * 137.0 / 16 },
  { "flour-bread", "1 tsp", 137.0 / 48 },
  { "flour-bread", "1 cup-metric", 137 * 250 / 236.5882365 },
  { "flour-bread", "100 ml", 137 * 100 / 236.5882365 },
  { "water", "1 l", 1000 },
  { "water", "1 cup", 236.5882365 },
  { "water", "1 tsp", 4.92892159375 },
  { "water", "2 dl", 200 },
  { "milk-whole", "1 fl oz", 30.5 },
  { "milk-whole", "2 tbsp", 30 },
  { "milk-whole", "1 tsp", 244.0 / 48 },         /* the cup comes first */
  { "margarine-pastry", "1 cup", 14 * 16 },      /* only a tablespoon is known */
  { "butter-unsalted", "2 sticks", 226 },
  { "egg-whole", "2 eggs", 100 },
  { "egg-yolk", "3 yolks", 51 },
  { "egg-white", "1 egg white", 33 },
  { "egg-white", "1 piece", 33 },
  { "sugar", "4 cubes", 9.2 },
  { "salt", "1 pinch", 0.4 },
  { "salt", "½ tsp", 3 },
  { "yeast-dry", "1 packet", 7.2 },
  { "yeast-fresh", "1 cake", 17 },
  { "salt", "900 mg", 0.9 },
};

static void
test_weights (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (weights); i++)
    {
      TrIngredient ingredient = resolve (NULL, weights[i].ingredient);

      g_assert_cmpfloat_with_epsilon (weigh (&ingredient, weights[i].amount), weights[i].grams, 1e-9 * weights[i].grams);
    }
}

static const struct { const char *ingredient, *amount; TrProblemId problem; const char *text; } not_weighed[] = {
  { "flour-bread", "1 egg", TR_PROBLEM_NO_HOUSEHOLD_WEIGHT, "egg" },
  { "flour-bread", "100 g 1 stick", TR_PROBLEM_NO_HOUSEHOLD_WEIGHT, "stick" },
  { "gluten", "1 cup", TR_PROBLEM_NO_HOUSEHOLD_WEIGHT, "cup" },
  { "flour-spelt-wholegrain", "1 cup", TR_PROBLEM_NO_HOUSEHOLD_WEIGHT, "cup" },
  { "egg-white", "1 yolk", TR_PROBLEM_NO_HOUSEHOLD_WEIGHT, "yolk" },
  { "sugar", "1 pinch", TR_PROBLEM_NO_HOUSEHOLD_WEIGHT, "pinch" },
  { "water", "999999999 cups", TR_PROBLEM_OUT_OF_RANGE, NULL },
  { "flour-bread", "999999 kg 2 kg", TR_PROBLEM_OUT_OF_RANGE, NULL },
};

static void
test_never_a_guess (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (not_weighed); i++)
    {
      TrIngredient ingredient = resolve (NULL, not_weighed[i].ingredient);
      TrAmount amount;
      TrProblem problem;
      double grams;

      g_assert_true (tr_amount_parse (not_weighed[i].amount, &amount, NULL));
      g_assert_false (tr_ingredient_weigh (&ingredient, &amount, &grams, &problem));
      g_assert_cmpint (problem.id, ==, not_weighed[i].problem);
      g_assert_cmpstr (problem.text, ==, not_weighed[i].text);
      g_free (problem.text);
    }
}

/* The baker's own */

static TrPantry *
pantry_with (TrOwnIngredient *own)
{
  TrPantry *pantry = tr_pantry_new ();

  g_ptr_array_add (pantry->own, own);

  return pantry;
}

static void
test_own_overrides (void)
{
  TrOwnIngredient *own = tr_own_ingredient_new ("butter-farm", "butter-unsalted");
  g_autoptr (TrPantry) pantry = pantry_with (own);

  tr_set_text (&own->name, "Farm butter, 84 % fat");
  own->per_100g[TR_PART_WATER] = 14;
  own->per_100g[TR_PART_FAT] = 84;
  own->price_per_kg = 13.5;
  own->soft_c = 19;
  tr_own_ingredient_add_household (own, (TrHousehold) { g_strdup ("stick"), 125 });

  TrIngredient butter = resolve (pantry, "butter-farm");
  g_assert_cmpstr (butter.id, ==, "butter-farm");
  g_assert_cmpstr (butter.base_id, ==, "butter-unsalted");
  g_assert_cmpstr (butter.name, ==, "Farm butter, 84 % fat");
  g_assert_cmpint (butter.role, ==, TR_ROLE_FAT);
  g_assert_true (tr_ingredient_is_like (&butter, "butter-"));
  g_assert_false (tr_ingredient_is_like (&butter, "margarine-"));
  g_assert_cmpfloat_with_epsilon (butter.per_100g[TR_PART_FAT], 84, 1e-12);
  g_assert_cmpfloat_with_epsilon (butter.per_100g[TR_PART_PROTEIN], 0.85, 1e-12);
  /* By difference: 100 − 14 − 84 − 0.85 − 0.09. */
  g_assert_cmpfloat_with_epsilon (butter.per_100g[TR_PART_CARBOHYDRATE], 1.06, 1e-9);
  g_assert_cmpfloat_with_epsilon (butter.price_per_kg, 13.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (butter.soft_c, 19, 1e-12);
  g_assert_cmpfloat_with_epsilon (butter.plastic_low_c, 10, 1e-12);
  g_assert_cmpfloat_with_epsilon (weigh (&butter, "1 stick"), 125, 1e-12);
  g_assert_cmpfloat_with_epsilon (weigh (&butter, "1 cup"), 227, 1e-12);
  g_assert_cmpstr (butter.allergens[0], ==, "milk");
}

static void
test_own_carbohydrate (void)
{
  static const struct { double water, fat, carbohydrate; gboolean fat_unknown; double expected; } cases[] = {
    { NAN, NAN, NAN, FALSE, 0.06 },   /* nothing written: the table's */
    { 10, NAN, NAN, FALSE, 7.95 },    /* 100 − 10 − 81.11 − 0.85 − 0.09 */
    { NAN, 40, NAN, FALSE, 41.12 },
    { 18, 84, NAN, FALSE, 0 },        /* never below 0 */
    { 10, NAN, 2, FALSE, 2 },         /* written wins */
    { NAN, NAN, NAN, TRUE, NAN },     /* what is left beside an unknown is unknown */
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TrOwnIngredient *own = tr_own_ingredient_new ("own", "butter-unsalted");
      g_autoptr (TrPantry) pantry = pantry_with (own);

      own->per_100g[TR_PART_WATER] = cases[i].water;
      own->per_100g[TR_PART_FAT] = cases[i].fat;
      own->unknown[TR_PART_FAT] = cases[i].fat_unknown;
      own->per_100g[TR_PART_CARBOHYDRATE] = cases[i].carbohydrate;

      TrIngredient ingredient = resolve (pantry, "own");
      if (isnan (cases[i].expected))
        g_assert_true (isnan (ingredient.per_100g[TR_PART_CARBOHYDRATE]));
      else
        g_assert_cmpfloat_with_epsilon (ingredient.per_100g[TR_PART_CARBOHYDRATE], cases[i].expected, 1e-9);
    }
}

static void
test_own_unknown_is_not_zero (void)
{
  TrOwnIngredient *own = tr_own_ingredient_new ("own", "butter-unsalted");
  g_autoptr (TrPantry) pantry = pantry_with (own);

  own->unknown[TR_PART_SODIUM_MG] = TRUE;
  own->allergens = g_new0 (char *, 1);

  TrIngredient ingredient = resolve (pantry, "own");
  g_assert_true (isnan (ingredient.per_100g[TR_PART_SODIUM_MG]));
  g_assert_null (ingredient.allergens[0]);
  g_assert_true (isnan (tr_part_of (1, NAN)));
  g_assert_cmpfloat_with_epsilon (tr_part_of (0, NAN), 0, 1e-12);
  g_assert_true (isnan (tr_part_of (NAN, 1)));
}

static void
test_order_of_weights (void)
{
  TrOwnIngredient *own = tr_own_ingredient_new ("own", "gluten");
  g_autoptr (TrPantry) pantry = pantry_with (own);
  TrIngredient ingredient;

  tr_own_ingredient_add_household (own, (TrHousehold) { g_strdup ("tsp"), 3 });
  tr_own_ingredient_add_household (own, (TrHousehold) { g_strdup ("tbsp"), 8 });
  ingredient = resolve (pantry, "own");
  g_assert_cmpfloat_with_epsilon (weigh (&ingredient, "1 tsp"), 3, 1e-9);
  g_assert_cmpfloat_with_epsilon (weigh (&ingredient, "1 cup"), 128, 1e-9);

  own->density_g_ml = 0.5;
  ingredient = resolve (pantry, "own");
  g_assert_cmpfloat_with_epsilon (weigh (&ingredient, "1 tsp"), 3, 1e-9);
  g_assert_cmpfloat_with_epsilon (weigh (&ingredient, "1 cup"), 236.5882365 / 2, 1e-9);
}

/* A list that is written and empty stays one, and frees what comes into it
 * later: the unit is the copy's, which the leak checker holds it to. */
static void
test_copied_empty_weights_take_new_ones (void)
{
  TrOwnIngredient *own = tr_own_ingredient_new ("own", "gluten");
  TrOwnIngredient *copy;

  tr_own_ingredient_add_household (own, (TrHousehold) { g_strdup ("cup"), 100 });
  g_array_set_size (own->household, 0);
  copy = tr_own_ingredient_copy (own);
  tr_own_ingredient_free (own);
  g_assert_nonnull (copy->household);
  g_assert_cmpuint (copy->household->len, ==, 0);

  tr_own_ingredient_add_household (copy, (TrHousehold) { g_strdup ("tsp"), 3 });
  g_autoptr (TrPantry) pantry = pantry_with (copy);
  TrIngredient ingredient = resolve (pantry, "own");
  g_assert_cmpfloat_with_epsilon (weigh (&ingredient, "1 tsp"), 3, 1e-9);
}

static void
test_resolve_refuses_strangers (void)
{
  g_autoptr (TrPantry) pantry = pantry_with (tr_own_ingredient_new ("own", "no-such-thing"));
  TrIngredient ingredient;

  g_assert_false (tr_ingredient_resolve (pantry, "own", &ingredient));
  g_assert_false (tr_ingredient_resolve (pantry, "nothing", &ingredient));
  g_assert_false (tr_ingredient_resolve (pantry, NULL, &ingredient));
  g_assert_false (tr_ingredient_resolve (NULL, "own", &ingredient));
}

/* Starters */

static void
test_starter_at_its_hydration (void)
{
  static const double hydrations[] = { NAN, 100, 50, 125, 0 };
  TrIngredient starter = resolve (NULL, "starter-wheat");
  TrIngredient flour = resolve (NULL, "flour-bread");

  for (guint i = 0; i < G_N_ELEMENTS (hydrations); i++)
    {
      double h = isnan (hydrations[i]) ? 100 : hydrations[i];
      double share = tr_ingredient_flour_share (&starter, hydrations[i]);
      double per_100g[TR_N_PARTS];

      g_assert_cmpfloat_with_epsilon (share, 100 / (100 + h), 1e-12);
      tr_ingredient_compose (&starter, hydrations[i], per_100g);
      g_assert_cmpfloat_with_epsilon (per_100g[TR_PART_WATER], share * 13.36 + (1 - share) * 100, 1e-9);
      g_assert_cmpfloat_with_epsilon (per_100g[TR_PART_PROTEIN], share * flour.per_100g[TR_PART_PROTEIN], 1e-9);
    }
  g_assert_cmpfloat_with_epsilon (tr_ingredient_flour_share (&flour, 50), 1, 1e-12);
  starter = resolve (NULL, "gluten");
  g_assert_cmpfloat_with_epsilon (tr_ingredient_flour_share (&starter, 50), 0, 1e-12);
}

/* What the baker wrote over a starter does not move with the hydration. */
static void
test_own_starter_keeps_what_is_written (void)
{
  TrOwnIngredient *own = tr_own_ingredient_new ("rye-starter", "starter-wheat");
  g_autoptr (TrPantry) pantry = pantry_with (own);
  double per_100g[TR_N_PARTS];

  own->per_100g[TR_PART_FIBRE] = 7;
  own->unknown[TR_PART_SUGARS] = TRUE;
  TrIngredient starter = resolve (pantry, "rye-starter");
  tr_ingredient_compose (&starter, 50, per_100g);

  g_assert_cmpfloat_with_epsilon (per_100g[TR_PART_FIBRE], 7, 1e-12);
  g_assert_true (isnan (per_100g[TR_PART_SUGARS]));
  g_assert_cmpfloat_with_epsilon (per_100g[TR_PART_WATER], (2 * 13.36 + 100) / 3, 1e-9);
}

/* Label values */

/* Regulation (EU) 1169/2011, annexes I and XIV, on USDA SR28 rows: butter 01145
 * 733.6 kcal and 3016.5 kJ, bread flour 20083 348.2 kcal; table salt 02047
 * would be 96.9 g by its sodium, but as an ingredient all of it counts. */
static void
test_label_factors (void)
{
  TrIngredient butter = resolve (NULL, "butter-unsalted");
  TrIngredient flour = resolve (NULL, "flour-bread");
  TrIngredient salt = resolve (NULL, "salt");
  double kj, kcal;

  tr_energy_per_100g (butter.per_100g, &kj, &kcal);
  g_assert_cmpfloat_with_epsilon (kcal, 733.6, 0.05);
  g_assert_cmpfloat_with_epsilon (kj, 3016.5, 0.05);
  tr_energy_per_100g (flour.per_100g, &kj, &kcal);
  g_assert_cmpfloat_with_epsilon (kcal, 348.2, 0.05);
  g_assert_cmpfloat_with_epsilon (salt.per_100g[TR_PART_SODIUM_MG] * 2.5 / 1000, 96.9, 0.05);
  g_assert_cmpfloat_with_epsilon (tr_salt_per_100g (&salt, salt.per_100g), 100, 1e-12);
  g_assert_cmpfloat_with_epsilon (tr_salt_per_100g (&butter, butter.per_100g), 0.0275, 1e-12);
}

static void
test_energy_of_unknown_is_unknown (void)
{
  double per_100g[TR_N_PARTS] = { 10, 20, 5, NAN, 1, 0, 0, 0 };
  double kj, kcal;

  tr_energy_per_100g (per_100g, &kj, &kcal);
  g_assert_true (isnan (kj) && isnan (kcal));
}

/* Bands */

static void
test_bands (void)
{
  TrBand band;

  g_assert_true (tr_band_get (TR_RATIO_SALT, TR_KIND_CROISSANT, &band));
  g_assert_cmpfloat_with_epsilon (band.low, 1.6, 1e-12);
  g_assert_cmpfloat_with_epsilon (band.high, 2.4, 1e-12);
  g_assert_cmpstr (band.source, ==, "common practice");
  g_assert_true (tr_band_get (TR_RATIO_ROLL_IN_OF_DOUGH, TR_KIND_PUFF, &band));
  g_assert_cmpfloat_with_epsilon (band.high, 65, 1e-12);
  for (guint ratio = 0; ratio < TR_N_RATIOS; ratio++)
    {
      for (guint kind = 0; kind < TR_KIND_OTHER; kind++)
        {
          g_assert_true (tr_band_get ((TrRatio) ratio, (TrKind) kind, &band));
          g_assert_cmpfloat (band.low, <=, band.high);
          g_assert_nonnull (band.source);
        }
      g_assert_false (tr_band_get ((TrRatio) ratio, TR_KIND_OTHER, &band));
      g_assert_true (g_str_has_suffix (tr_ratio_key ((TrRatio) ratio), "_percent") ||
                     g_str_equal (tr_ratio_key ((TrRatio) ratio), "roll_in_percent_of_dough"));
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/ingredient/table-is-whole", test_table_is_whole);
  g_test_add_func ("/ingredient/table-is-usda", test_table_is_usda);
  g_test_add_func ("/ingredient/worked-tablespoon-of-butter", test_worked_tablespoon_of_butter);
  g_test_add_func ("/ingredient/water-is-all-water", test_water_is_all_water);
  g_test_add_func ("/ingredient/allergens-unknown-stays", test_allergens_unknown_stays);
  g_test_add_func ("/ingredient/weights", test_weights);
  g_test_add_func ("/ingredient/never-a-guess", test_never_a_guess);
  g_test_add_func ("/ingredient/own-overrides", test_own_overrides);
  g_test_add_func ("/ingredient/own-carbohydrate", test_own_carbohydrate);
  g_test_add_func ("/ingredient/own-unknown-is-not-zero", test_own_unknown_is_not_zero);
  g_test_add_func ("/ingredient/order-of-weights", test_order_of_weights);
  g_test_add_func ("/ingredient/copied-empty-weights-take-new-ones", test_copied_empty_weights_take_new_ones);
  g_test_add_func ("/ingredient/resolve-refuses-strangers", test_resolve_refuses_strangers);
  g_test_add_func ("/ingredient/starter-at-its-hydration", test_starter_at_its_hydration);
  g_test_add_func ("/ingredient/own-starter-keeps-what-is-written", test_own_starter_keeps_what_is_written);
  g_test_add_func ("/ingredient/label-factors", test_label_factors);
  g_test_add_func ("/ingredient/energy-of-unknown-is-unknown", test_energy_of_unknown_is_unknown);
  g_test_add_func ("/ingredient/bands", test_bands);

  return g_test_run ();
}
