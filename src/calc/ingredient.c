/* ingredient.c: what an ingredient is made of
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Resolving copies the built-in's row and lays the baker's own values over
 * it; nothing is allocated. Not known is NaN and stays NaN.
 */

#include "ingredient.h"

#include <string.h>

#include "tables.h"

#define SALT_PER_SODIUM 2.5

#define KJ_PER_G_FAT 37
#define KJ_PER_G_PROTEIN 17
#define KJ_PER_G_CARBOHYDRATE 17
#define KJ_PER_G_FIBRE 8
#define KCAL_PER_G_FAT 9
#define KCAL_PER_G_PROTEIN 4
#define KCAL_PER_G_CARBOHYDRATE 4
#define KCAL_PER_G_FIBRE 2

#define MAX_GRAMS 1e9

static const char *const ratio_keys[TR_N_RATIOS] = {
  [TR_RATIO_ALL_WATER] = "all_water_percent",
  [TR_RATIO_DOUGH_FAT] = "dough_fat_percent",
  [TR_RATIO_ROLL_IN_OF_DOUGH] = "roll_in_percent_of_dough",
  [TR_RATIO_SALT] = "salt_percent",
  [TR_RATIO_SUGAR] = "sugar_percent",
  [TR_RATIO_YEAST_FRESH] = "yeast_fresh_percent",
  [TR_RATIO_PREFERMENTED] = "prefermented_flour_percent",
};

guint
tr_builtin_count (void)
{
  return tr_n_builtin_ingredients;
}

const TrIngredient *
tr_builtin_get (guint index)
{
  g_return_val_if_fail (index < tr_n_builtin_ingredients, NULL);
  return &tr_builtin_ingredients[index];
}

const TrIngredient *
tr_builtin_find (const char *id)
{
  for (guint i = 0; i < tr_n_builtin_ingredients; i++)
    if (g_strcmp0 (tr_builtin_ingredients[i].id, id) == 0)
      return &tr_builtin_ingredients[i];

  return NULL;
}

static void
override_number (double *value,
                 double  own)
{
  if (tr_is_written (own))
    *value = own;
}

/* What is written for water or fat displaces the rest: carbohydrate is what is
 * left of 100 g, as in the table it came from. */
static double
carbohydrate_by_difference (const double per_100g[TR_N_PARTS])
{
  double rest = 100 - per_100g[TR_PART_WATER] - per_100g[TR_PART_FAT]
                - per_100g[TR_PART_PROTEIN] - per_100g[TR_PART_ASH];

  return rest < 0 ? 0 : rest;
}

static gboolean
is_overridden (const TrOwnIngredient *own,
               TrPart                 part)
{
  return own->unknown[part] || tr_is_written (own->per_100g[part]);
}

static void
override_composition (TrIngredient          *ingredient,
                      const TrOwnIngredient *own)
{
  for (guint i = 0; i < TR_N_PARTS; i++)
    if (own->unknown[i])
      ingredient->per_100g[i] = NAN;
    else
      override_number (&ingredient->per_100g[i], own->per_100g[i]);

  if (!is_overridden (own, TR_PART_CARBOHYDRATE) &&
      (is_overridden (own, TR_PART_WATER) || is_overridden (own, TR_PART_FAT)))
    ingredient->per_100g[TR_PART_CARBOHYDRATE] = carbohydrate_by_difference (ingredient->per_100g);
}

/* Like the parts of a composition, each unit's weight is overridden by itself:
 * to write what a stick weighs does not forget the cup. */
static void
override_household (TrIngredient          *ingredient,
                    const TrOwnIngredient *own)
{
  for (guint i = 0; own->household != NULL && i < own->household->len; i++)
    {
      const TrHousehold *weight = &g_array_index (own->household, TrHousehold, i);
      int unit = tr_unit_from_id (weight->unit);

      if (unit >= 0)
        ingredient->household_g[unit] = weight->grams;
    }
}

static void
lay_over (TrIngredient          *ingredient,
          const TrOwnIngredient *own)
{
  ingredient->id = own->id;
  if (own->name != NULL)
    ingredient->name = own->name;
  override_composition (ingredient, own);
  override_household (ingredient, own);
  override_number (&ingredient->density_g_ml, own->density_g_ml);
  if (own->allergens != NULL)
    ingredient->allergens = (const char *const *) own->allergens;
  override_number (&ingredient->price_per_kg, own->price_per_kg);
  override_number (&ingredient->plastic_low_c, own->plastic_low_c);
  override_number (&ingredient->plastic_high_c, own->plastic_high_c);
  override_number (&ingredient->soft_c, own->soft_c);
  override_number (&ingredient->liquid_c, own->liquid_c);
  override_number (&ingredient->proof_max_c, own->proof_max_c);
}

gboolean
tr_ingredient_resolve (const TrPantry *pantry,
                       const char     *id,
                       TrIngredient   *ingredient)
{
  const TrIngredient *builtin = tr_builtin_find (id);
  const TrOwnIngredient *own = NULL;

  if (builtin == NULL && pantry != NULL && id != NULL)
    {
      own = tr_pantry_find (pantry, id);
      builtin = own != NULL ? tr_builtin_find (own->like) : NULL;
    }
  if (builtin == NULL)
    return FALSE;

  *ingredient = *builtin;
  if (own != NULL)
    lay_over (ingredient, own);

  return TRUE;
}

gboolean
tr_ingredient_is_like (const TrIngredient *ingredient,
                       const char         *base_id_prefix)
{
  return g_str_has_prefix (ingredient->base_id, base_id_prefix);
}

/* g/ml from what one spoon or cup weighs; NaN: no volume of it is known. The
 * first four are the order agreed; the others follow for what the baker (or,
 * for water, the table) gives by the millilitre. */
static double
density_from_household (const TrIngredient *ingredient)
{
  static const TrUnit order[] = {
    TR_UNIT_CUP, TR_UNIT_TBSP, TR_UNIT_FLOZ, TR_UNIT_TSP,
    TR_UNIT_CUP_METRIC, TR_UNIT_ML, TR_UNIT_CL, TR_UNIT_DL, TR_UNIT_L
  };

  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    if (!isnan (ingredient->household_g[order[i]]))
      return ingredient->household_g[order[i]] / tr_unit_ml (order[i]);

  return NAN;
}

/* NaN: not known. */
static double
weigh_unit (const TrIngredient *ingredient,
            TrUnit              unit)
{
  double grams = tr_unit_grams (unit);

  if (isnan (grams))
    grams = ingredient->household_g[unit];
  if (isnan (grams))
    grams = tr_unit_ml (unit) * ingredient->density_g_ml;
  if (isnan (grams))
    grams = tr_unit_ml (unit) * density_from_household (ingredient);

  return grams;
}

static gboolean
fail (TrProblem   *problem,
      TrProblemId  id,
      const char  *text)
{
  if (problem != NULL)
    *problem = (TrProblem) { .id = id, .text = g_strdup (text), .value = { NAN, NAN } };

  return FALSE;
}

gboolean
tr_ingredient_weigh (const TrIngredient *ingredient,
                     const TrAmount     *amount,
                     double             *grams,
                     TrProblem          *problem)
{
  *grams = 0;
  for (guint i = 0; i < amount->n_parts; i++)
    {
      const TrAmountPart *part = &amount->parts[i];
      double one = weigh_unit (ingredient, part->unit);

      if (isnan (one))
        return fail (problem, TR_PROBLEM_NO_HOUSEHOLD_WEIGHT, tr_unit_id (part->unit));
      *grams += part->number * one;
    }
  if (!(*grams <= MAX_GRAMS))
    return fail (problem, TR_PROBLEM_OUT_OF_RANGE, NULL);

  return TRUE;
}

double
tr_ingredient_flour_share (const TrIngredient *ingredient,
                           double              hydration_percent)
{
  if (ingredient->role == TR_ROLE_STARTER)
    return 1 / (1 + (isnan (hydration_percent) ? 100 : hydration_percent) / 100);

  return ingredient->is_flour ? 1 : 0;
}

/* A starter's row stands at 100 %; what its baker wrote over it is kept, the
 * rest moves with the hydration. */
void
tr_ingredient_compose (const TrIngredient *ingredient,
                       double              hydration_percent,
                       double              per_100g[TR_N_PARTS])
{
  memcpy (per_100g, ingredient->per_100g, sizeof ingredient->per_100g);
  if (ingredient->role != TR_ROLE_STARTER || isnan (hydration_percent))
    return;

  const TrIngredient *builtin = tr_builtin_find (ingredient->base_id);
  const TrIngredient *flour = tr_builtin_find (TR_STARTER_FLOUR);
  const TrIngredient *water = tr_builtin_find ("water");
  double share = tr_ingredient_flour_share (ingredient, hydration_percent);

  for (guint i = 0; i < TR_N_PARTS; i++)
    if (memcmp (&per_100g[i], &builtin->per_100g[i], sizeof per_100g[i]) == 0)
      per_100g[i] = share * flour->per_100g[i] + (1 - share) * water->per_100g[i];
}

double
tr_part_of (double grams,
            double per_100g)
{
  return grams <= 0 ? 0 : grams * per_100g / 100;
}

double
tr_salt_per_100g (const TrIngredient *ingredient,
                  const double        per_100g[TR_N_PARTS])
{
  if (ingredient->role == TR_ROLE_SALT)
    return 100;

  return per_100g[TR_PART_SODIUM_MG] / 1000 * SALT_PER_SODIUM;
}

/* Alcohol (29 kJ, 7 kcal a gram) is not among the parts of the tables. */
void
tr_energy_per_100g (const double  per_100g[TR_N_PARTS],
                    double       *kj,
                    double       *kcal)
{
  double carbohydrate = per_100g[TR_PART_CARBOHYDRATE] - per_100g[TR_PART_FIBRE];

  if (carbohydrate < 0)
    carbohydrate = 0;

  *kj = KJ_PER_G_FAT * per_100g[TR_PART_FAT] + KJ_PER_G_PROTEIN * per_100g[TR_PART_PROTEIN]
        + KJ_PER_G_CARBOHYDRATE * carbohydrate + KJ_PER_G_FIBRE * per_100g[TR_PART_FIBRE];
  *kcal = KCAL_PER_G_FAT * per_100g[TR_PART_FAT] + KCAL_PER_G_PROTEIN * per_100g[TR_PART_PROTEIN]
          + KCAL_PER_G_CARBOHYDRATE * carbohydrate + KCAL_PER_G_FIBRE * per_100g[TR_PART_FIBRE];
}

gboolean
tr_band_get (TrRatio  ratio,
             TrKind   kind,
             TrBand  *band)
{
  g_return_val_if_fail (ratio < TR_N_RATIOS && kind < TR_N_KINDS, FALSE);

  *band = tr_bands[ratio][kind];

  return !isnan (band->low);
}

const char *
tr_ratio_key (TrRatio ratio)
{
  g_return_val_if_fail (ratio < TR_N_RATIOS, NULL);
  return ratio_keys[ratio];
}
