/* composition.c: built-in ingredients and labels against USDA SR28 and EU law
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Source of the composition: US Department of Agriculture, Agricultural
 * Research Service, Nutrient Data Laboratory, USDA National Nutrient Database
 * for Standard Reference, Release 28, version current September 2015 (public
 * domain). Source of the label rules: Regulation (EU) No 1169/2011, Annex I
 * and Annex XIV.
 */

#include <math.h>

#include "calc/ingredient.h"
#include "calc/lamination.h"
#include "dough.h"
#include "table.h"
#include "words/words.h"

static RefTable *
load (const char *name)
{
  g_autofree char *path = g_build_filename (g_getenv ("TR_DATA_DIR"), name, NULL);

  return ref_table_new (path);
}

static const char *const part_columns[TR_N_PARTS] = {
  [TR_PART_WATER] = "water_g",
  [TR_PART_FAT] = "fat_g",
  [TR_PART_PROTEIN] = "protein_g",
  [TR_PART_CARBOHYDRATE] = "carbohydrate_by_diff_g",
  [TR_PART_FIBRE] = "fibre_g",
  [TR_PART_SUGARS] = "sugars_g",
  [TR_PART_ASH] = "ash_g",
  [TR_PART_SODIUM_MG] = "sodium_mg",
};

static void
assert_same_or_unknown (double      ours,
                        double      theirs,
                        const char *what)
{
  if (isnan (ours) != isnan (theirs) || (!isnan (ours) && fabs (ours - theirs) > 1e-9))
    {
      g_test_message ("%s: %g, not %g", what, ours, theirs);
      g_test_fail ();
    }
}

/* Tap water counts as 100 % water; its 0.1 g of ash is in that. */
static double
expected_part (RefTable   *composition,
               guint       row,
               const char *id,
               TrPart      part)
{
  if (g_str_equal (id, "water") && part == TR_PART_WATER)
    return 100;
  if (g_str_equal (id, "water") && part == TR_PART_ASH)
    return 0;

  return ref_table_get_number (composition, row, part_columns[part]);
}

/* Every built-in is its USDA row, cell by cell; an empty cell is unknown. */
static void
test_every_builtin (void)
{
  g_autoptr (RefTable) composition = load ("composition.csv");
  g_autoptr (RefTable) ingredients = load ("ingredients.csv");
  g_autoptr (TrPantry) pantry = tr_pantry_new ();
  guint n_compared = 0;

  g_assert_cmpuint (tr_builtin_count (), ==, ref_table_n_rows (ingredients));
  for (guint i = 0; i < ref_table_n_rows (ingredients); i++)
    {
      const char *id = ref_table_get (ingredients, i, "id");
      const char *ndb = ref_table_get (ingredients, i, "usda_ndb");
      TrIngredient ingredient;

      g_assert_true (tr_ingredient_resolve (pantry, id, &ingredient));
      if (*ndb == '\0')
        continue;

      guint row = ref_table_find (composition, "ndb_no", ndb);
      for (int part = 0; part < TR_N_PARTS; part++)
        {
          g_autofree char *what = g_strdup_printf ("%s, %s", id, part_columns[part]);

          assert_same_or_unknown (ingredient.per_100g[part], expected_part (composition, row, id, (TrPart) part), what);
          n_compared++;
        }
    }
  g_assert_cmpuint (n_compared, >=, 45 * TR_N_PARTS);
}

/* Names, roles, household weights, temperatures and allergens are the table's. */
static void
test_every_household_weight (void)
{
  g_autoptr (RefTable) ingredients = load ("ingredients.csv");

  for (guint i = 0; i < ref_table_n_rows (ingredients); i++)
    {
      const TrIngredient *ingredient = tr_builtin_find (ref_table_get (ingredients, i, "id"));
      g_auto (GStrv) weights = g_strsplit (ref_table_get (ingredients, i, "household_g"), ";", -1);
      guint n_known = 0;

      g_assert_nonnull (ingredient);
      for (guint j = 0; weights[j] != NULL; j++)
        {
          g_auto (GStrv) pair = g_strsplit (weights[j], "=", 2);
          int unit = tr_unit_from_id (pair[0]);

          g_assert_cmpint (unit, >=, 0);
          assert_same_or_unknown (ingredient->household_g[unit], g_ascii_strtod (pair[1], NULL), ingredient->id);
        }
      for (int unit = 0; unit < TR_N_UNITS; unit++)
        n_known += !isnan (ingredient->household_g[unit]);
      g_assert_cmpuint (n_known, ==, g_strv_length (weights));
    }
}

static void
test_every_allergen (void)
{
  g_autoptr (RefTable) ingredients = load ("ingredients.csv");

  for (guint i = 0; i < ref_table_n_rows (ingredients); i++)
    {
      const TrIngredient *ingredient = tr_builtin_find (ref_table_get (ingredients, i, "id"));
      g_auto (GStrv) expected = g_strsplit (ref_table_get (ingredients, i, "allergens"), ";", -1);

      g_assert_true (g_strv_equal (ingredient->allergens, (const char *const *) expected));
    }
}

/* Rows as read in the USDA files themselves: our copy is true. */
static void
test_rows_as_published (void)
{
  static const struct { const char *ndb; double per_100g[TR_N_PARTS]; } rows[] = {
    /* water, fat, protein, carbohydrate, fibre, sugars, ash, sodium mg */
    { "01145", { 17.94, 81.11, 0.85, 0.06, 0.0, 0.06, 0.09, 11 } },
    { "01001", { 15.87, 81.11, 0.85, 0.06, 0.0, 0.06, 2.11, 643 } },
    { "01077", { 88.13, 3.25, 3.15, 4.80, 0.0, 5.05, 0.67, 43 } },
    { "01123", { 76.15, 9.51, 12.56, 0.72, 0.0, 0.37, 1.06, 142 } },
    { "20083", { 13.36, 1.66, 11.98, 72.53, 2.4, 0.31, 0.47, 2 } },
    { "20080", { 10.74, 2.50, 13.21, 71.97, 10.7, 0.41, 1.58, 2 } },
    { "19335", { 0.02, 0.00, 0.00, 99.98, 0.0, 99.80, 0.01, 1 } },
    { "02047", { 0.20, 0.00, 0.00, 0.00, 0.0, 0.00, 99.80, 38758 } },
    { "18375", { 5.08, 7.61, 40.44, 41.22, 26.9, 0.00, 5.65, 51 } },
    { "18374", { 69.00, 1.90, 8.40, 18.10, 8.1, 0.00, 1.80, 30 } },
  };
  g_autoptr (RefTable) composition = load ("composition.csv");

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    for (int part = 0; part < TR_N_PARTS; part++)
      g_assert_cmpfloat_with_epsilon (ref_table_get_number (composition,
                                                            ref_table_find (composition, "ndb_no", rows[i].ndb),
                                                            part_columns[part]),
                                      rows[i].per_100g[part], 1e-12);
}

static double
weigh (const char *id,
       const char *amount)
{
  TrAmount parsed;
  TrProblem problem = { 0 };
  double grams = NAN;

  g_assert_true (tr_amount_parse (amount, &parsed, &problem));
  g_assert_true (tr_ingredient_weigh (tr_builtin_find (id), &parsed, &grams, &problem));

  return grams;
}

/* SR28, file WEIGHT: household weights as published. */
static void
test_weights_as_published (void)
{
  static const struct { const char *id, *amount; double grams; } weights[] = {
    { "butter-unsalted", "1 stick", 113 },
    { "butter-unsalted", "1 cup", 227 },
    { "butter-unsalted", "1 tbsp", 14.2 },
    { "milk-whole", "1 cup", 244 },
    { "milk-whole", "1 tbsp", 15 },
    { "milk-whole", "1 fl oz", 30.5 },
    { "cream-heavy", "1 cup", 238 },
    { "egg-whole", "1 egg", 50 },
    { "egg-white", "1 white", 33 },
    { "egg-yolk", "1 yolk", 17 },
    { "sugar", "1 cup", 200 },
    { "sugar", "1 tsp", 4.2 },
    { "honey", "1 tbsp", 21 },
    { "flour-bread", "1 cup", 137 },
    { "flour-plain", "1 cup", 125 },
    { "flour-wholemeal", "1 cup", 120 },
    { "flour-rye-dark", "1 cup", 128 },
    { "yeast-dry", "1 packet", 7.2 },
    { "yeast-dry", "1 tsp", 4 },
    { "yeast-fresh", "1 cake", 17 },
    { "salt", "1 tsp", 6 },
    { "cocoa", "1 tbsp", 5.4 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (weights); i++)
    g_assert_cmpfloat_with_epsilon (weigh (weights[i].id, weights[i].amount), weights[i].grams, 1e-12);
}

/* SR28, documentation, p. 39: one tablespoon of butter, 01001, holds
 * (81.11 × 14.2) / 100 = 11.52 g of fat. */
static void
test_worked_tablespoon (void)
{
  const TrIngredient *butter = tr_builtin_find ("butter-salted");
  double fat = butter->per_100g[TR_PART_FAT] * weigh ("butter-salted", "1 tbsp") / 100;

  g_assert_cmpfloat_with_epsilon (fat, 11.52, 0.005);
}

/* Fresh to active dry × 0.40, to instant × 0.33 by weight ("Yeast conversions:
 * fresh to dry", a cookbook publisher's page); an older rule says × 0.50, which
 * is not ours. */
static void
test_yeast_factors (void)
{
  g_assert_cmpfloat_with_epsilon (1 / tr_builtin_find ("yeast-dry")->fresh_yeast_factor, 0.40, 0.005);
  g_assert_cmpfloat_with_epsilon (1 / tr_builtin_find ("yeast-instant")->fresh_yeast_factor, 0.33, 0.005);
  g_assert_cmpfloat_with_epsilon (tr_builtin_find ("yeast-fresh")->fresh_yeast_factor, 1, 1e-12);
}

static void
assert_energy (const char *id,
               double      kj,
               double      kcal,
               double      usda_kcal)
{
  double ours_kj, ours_kcal;

  tr_energy_per_100g (tr_builtin_find (id)->per_100g, &ours_kj, &ours_kcal);
  if (!isnan (kj))
    g_assert_cmpfloat_with_epsilon (ours_kj, kj, 0.05);
  g_assert_cmpfloat_with_epsilon (ours_kcal, kcal, 0.05);
  /* USDA's own factors give something else; the two systems do not mix */
  g_assert_cmpfloat (fabs (ours_kcal - usda_kcal), >, 1);
}

/* Annex XIV: carbohydrate 17 kJ or 4 kcal without fibre, fibre 8 or 2, protein
 * 17 or 4, fat 37 or 9, a gram. */
static void
test_label_energy (void)
{
  /* 9·81.11 + 4·0.85 + 4·0.06; 37·81.11 + 17·0.85 + 17·0.06 */
  assert_energy ("butter-unsalted", 3016.5, 733.6, 717);
  /* 4·70.13 + 2·2.4 + 4·11.98 + 9·1.66 */
  assert_energy ("flour-bread", NAN, 348.2, 361);
}

/* Annex XIV, factor by factor. */
static void
test_label_factors (void)
{
  static const struct { TrPart part; double kj, kcal; } factors[] = {
    { TR_PART_PROTEIN, 17, 4 },
    { TR_PART_FAT, 37, 9 },
    { TR_PART_CARBOHYDRATE, 17, 4 },
    { TR_PART_WATER, 0, 0 },
    { TR_PART_ASH, 0, 0 },
    { TR_PART_SODIUM_MG, 0, 0 },
    { TR_PART_SUGARS, 0, 0 },      /* within the carbohydrate */
  };
  double kj, kcal;

  for (gsize i = 0; i < G_N_ELEMENTS (factors); i++)
    {
      double per_100g[TR_N_PARTS] = { 0 };

      per_100g[factors[i].part] = 10;
      tr_energy_per_100g (per_100g, &kj, &kcal);
      g_assert_cmpfloat_with_epsilon (kj, 10 * factors[i].kj, 1e-9);
      g_assert_cmpfloat_with_epsilon (kcal, 10 * factors[i].kcal, 1e-9);
    }

  /* carbohydrate by difference holds the fibre: 10 g of it all fibre */
  double fibre[TR_N_PARTS] = { 0 };
  fibre[TR_PART_CARBOHYDRATE] = fibre[TR_PART_FIBRE] = 10;
  tr_energy_per_100g (fibre, &kj, &kcal);
  g_assert_cmpfloat_with_epsilon (kj, 80, 1e-9);
  g_assert_cmpfloat_with_epsilon (kcal, 20, 1e-9);
}

/* European Commission, guidance document on tolerances, December 2012, table 4:
 * energy to the nearest 1 kJ and 1 kcal; fat, carbohydrate, protein from 10 g
 * on to the nearest 1 g, below to the nearest 0.1 g. What is said is never
 * coarser. (No label is printed, and salt a piece is said to 0.1 g: finer than
 * a scale, coarser than the 0.01 g of a label.) */
static void
test_label_rounding (void)
{
  static const double grams[] = { 0.56, 1.25, 3.35, 7.73, 9.94, 11.52, 43.54, 81.11 };
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  for (gsize i = 0; i < G_N_ELEMENTS (grams); i++)
    {
      g_autofree char *said = tr_words_mass (&reader, grams[i]);
      double step = grams[i] >= 10 ? 1 : 0.1;

      g_assert_cmpfloat_with_epsilon (g_ascii_strtod (said, NULL), grams[i], step / 2 + 1e-9);
    }

  g_autofree char *butter = tr_words_energy (&reader, 3016.49, 733.63);
  g_auto (GStrv) words = g_strsplit (butter, " / ", 2);
  g_assert_true (g_str_has_prefix (words[0], "3\u202f016"));   /* a narrow no-break space */
  g_assert_true (g_str_has_prefix (words[1], "734"));
}

/* Annex I (11): salt is sodium × 2.5. So USDA's table salt would be only 96.9 g
 * of "salt" in 100 g (NaCl is 39.34 % sodium, the law rounds 2.542): what the
 * baker weighs as salt counts whole, what else holds sodium by the law. */
static void
test_label_salt (void)
{
  g_autoptr (TrTrial) trial = ref_trial_new ();
  TrDough *dough = ref_trial_get_dough (trial);

  g_assert_cmpfloat_with_epsilon (tr_builtin_find ("salt")->per_100g[TR_PART_SODIUM_MG] / 1000 * 2.5, 96.9, 0.05);

  ref_dough_add_line (dough, TR_STAGE_DOUGH, "flour-bread", "1000 g");
  ref_dough_add_line (dough, TR_STAGE_DOUGH, "salt", "10 g");
  ref_dough_add_line (dough, TR_STAGE_ROLL_IN, "butter-salted", "500 g");

  g_autoptr (TrFigures) figures = ref_figures_new (trial);
  double sodium_mg = 1000 * 0.01 * 2 + 500 * 0.01 * 643;
  g_assert_cmpfloat_with_epsilon (tr_figures_get_dough (figures, 0)->formula.salt_percent,
                                  100 * (10 + sodium_mg / 1000 * 2.5) / 1000, 1e-9);
}

/* The croissant dough of M. Suas, Advanced Bread and Pastry, p. 331, as class
 * notes give it, composed from SR28 by a separate script. Ours counts tap water
 * as water only, hence the last digit of water and ash. */
static void
test_composed_dough (void)
{
  static const struct { const char *id, *amount; } lines[] = {
    { "flour-bread", "100 g" }, { "water", "38 g" }, { "milk-whole", "23 g" }, { "sugar", "3 g" },
    { "salt", "2 g" }, { "yeast-instant", "1.2 g" }, { "malt-flour", "0.5 g" }, { "butter-unsalted", "4 g" },
  };
  g_autoptr (TrTrial) trial = ref_trial_new ();
  TrDough *dough = ref_trial_get_dough (trial);

  for (gsize i = 0; i < G_N_ELEMENTS (lines); i++)
    ref_dough_add_line (dough, TR_STAGE_DOUGH, lines[i].id, lines[i].amount);

  g_autoptr (TrFigures) figures = ref_figures_new (trial);
  const double *part = tr_figures_get_dough (figures, 0)->formula.dough_per_100g;

  g_assert_cmpfloat_with_epsilon (part[TR_PART_WATER], 42.18, 0.03);
  g_assert_cmpfloat_with_epsilon (part[TR_PART_PROTEIN], 7.73, 0.006);
  g_assert_cmpfloat_with_epsilon (part[TR_PART_FAT], 3.35, 0.006);
  g_assert_cmpfloat_with_epsilon (part[TR_PART_CARBOHYDRATE] - part[TR_PART_FIBRE], 43.54, 0.006);
  g_assert_cmpfloat_with_epsilon (part[TR_PART_FIBRE], 1.61, 0.006);
  g_assert_cmpfloat_with_epsilon (part[TR_PART_ASH], 1.59, 0.03);
  g_assert_cmpfloat_with_epsilon (part[TR_PART_SODIUM_MG], 459.9, 0.06);
  /* all sodium × 2.5 would be 1.150 g; the salt that was weighed is 1.165 g */
  g_assert_cmpfloat_with_epsilon (part[TR_PART_SODIUM_MG] / 1000 * 2.5, 1.150, 0.001);
  g_assert_cmpfloat_with_epsilon (100 * 2 / 171.7, 1.165, 0.001);
}

/* Y. Choi & M. R. Okos, Food Engineering and Process Applications 1, 1986,
 * pp. 93–101: densities at 4 °C of water, fat, protein, carbohydrate, fibre
 * and ash, kg/m³. Butter of them is 0.9395 g/ml, and that is the density of a
 * roll-in fat here. From its cup of 227 g it would be 0.9595. */
static void
test_fat_density (void)
{
  static const struct { TrPart part; double kg_m3; } densities[] = {
    { TR_PART_WATER, 997.13 }, { TR_PART_FAT, 923.92 }, { TR_PART_PROTEIN, 1327.83 },
    { TR_PART_CARBOHYDRATE, 1597.86 }, { TR_PART_FIBRE, 1310.04 }, { TR_PART_ASH, 2422.68 },
  };
  const double *butter = tr_builtin_find ("butter-unsalted")->per_100g;
  double mass = 0, volume = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (densities); i++)
    {
      mass += butter[densities[i].part];
      volume += butter[densities[i].part] / densities[i].kg_m3;
    }
  g_assert_cmpfloat_with_epsilon (mass / volume / 1000, 0.9395, 5e-5);
  g_assert_cmpfloat_with_epsilon (TR_FAT_DENSITY_G_ML, mass / volume / 1000, 0.001);
  g_assert_cmpfloat_with_epsilon (TR_FAT_DENSITY_G_ML, 227 / tr_unit_ml (TR_UNIT_CUP), 0.02);
}

/* From memory, so only a wide band: dough after mixing has some 8 % of gas;
 * ranges for wheat dough in print run from 1.08 to 1.20 g/ml (Handbook on
 * Sourdough Biotechnology, table 3.4: 1.18 before proof). */
static void
test_dough_density_from_memory (void)
{
  g_autoptr (TrTrial) trial = ref_trial_new ();

  g_assert_cmpfloat (ref_trial_get_dough (trial)->dough_density_g_ml, >=, 1.08);
  g_assert_cmpfloat (ref_trial_get_dough (trial)->dough_density_g_ml, <=, 1.20);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/reference/composition/every-builtin-is-its-usda-row", test_every_builtin);
  g_test_add_func ("/reference/composition/every-household-weight", test_every_household_weight);
  g_test_add_func ("/reference/composition/every-allergen", test_every_allergen);
  g_test_add_func ("/reference/composition/rows-as-published", test_rows_as_published);
  g_test_add_func ("/reference/composition/weights-as-published", test_weights_as_published);
  g_test_add_func ("/reference/composition/worked-tablespoon-of-butter", test_worked_tablespoon);
  g_test_add_func ("/reference/composition/yeast-factors", test_yeast_factors);
  g_test_add_func ("/reference/composition/composed-dough", test_composed_dough);
  g_test_add_func ("/reference/composition/fat-density", test_fat_density);
  g_test_add_func ("/reference/composition/dough-density-from-memory", test_dough_density_from_memory);
  g_test_add_func ("/reference/label/energy", test_label_energy);
  g_test_add_func ("/reference/label/factors", test_label_factors);
  g_test_add_func ("/reference/label/rounding", test_label_rounding);
  g_test_add_func ("/reference/label/salt", test_label_salt);

  return g_test_run ();
}
