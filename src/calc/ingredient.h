/* ingredient.h: what an ingredient is made of
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The built-in table comes from data/ingredients.csv and data/composition.csv
 * (USDA SR28) and is compiled in.
 */

#pragma once

#include "amount.h"
#include "written.h"

G_BEGIN_DECLS

typedef enum {
  TR_ROLE_FLOUR, TR_ROLE_LIQUID, TR_ROLE_DAIRY, TR_ROLE_FAT, TR_ROLE_EGG, TR_ROLE_SWEETENER,
  TR_ROLE_SALT, TR_ROLE_LEAVEN, TR_ROLE_STARTER, TR_ROLE_OTHER, TR_N_ROLES
} TrRole;

/* NaN means not known. Borrowed from the built-in table or the pantry it was
 * resolved from; valid as long as they are. */
typedef struct {
  const char *id;                /* the id that stands in the document */
  const char *base_id;           /* the built-in it is, or is like */
  const char *name;              /* English; words/ translates built-in names */
  TrRole role;
  gboolean is_flour;
  double per_100g[TR_N_PARTS];
  double household_g[TR_N_UNITS];/* grams of one unit, NaN: not known */
  double density_g_ml;           /* NaN: none written */
  const char *const *allergens;  /* sorted ids, "unknown" among them; NULL-terminated */
  double price_per_kg;
  double plastic_low_c, plastic_high_c, soft_c, liquid_c, proof_max_c;
  double fresh_yeast_factor;     /* NaN: no leaven */
  const char *source;            /* of the built-in */
} TrIngredient;

guint               tr_builtin_count      (void);
const TrIngredient *tr_builtin_get        (guint index);      /* in table order */
const TrIngredient *tr_builtin_find       (const char *id);   /* NULL: none */

/* FALSE: neither built-in nor in the pantry. */
gboolean            tr_ingredient_resolve (const TrPantry *pantry,
                                           const char     *id,
                                           TrIngredient   *ingredient);
gboolean            tr_ingredient_is_like (const TrIngredient *ingredient,
                                           const char         *base_id_prefix);  /* "butter-" */

/* Grams of an amount of this ingredient. FALSE with `problem` where no weight
 * is known for a unit. Percentages are not for here. The unit's own weight
 * wins, then density, else a volume is scaled from cup, tbsp, floz, tsp in
 * that order; water is 1 g/ml. */
gboolean            tr_ingredient_weigh   (const TrIngredient *ingredient,
                                           const TrAmount     *amount,
                                           double             *grams,
                                           TrProblem          *problem);

/* What flour a starter is of; the rest is water. */
#define TR_STARTER_FLOUR "flour-bread"
double              tr_ingredient_flour_share (const TrIngredient *ingredient,
                                               double              hydration_percent);  /* 0 to 1 */
/* Per 100 g at that hydration (only starters depend on it; NaN: 100). */
void                tr_ingredient_compose (const TrIngredient *ingredient,
                                           double              hydration_percent,
                                           double              per_100g[TR_N_PARTS]);
/* Grams of a part in `grams` of something (sodium: mg). What is not known
 * makes NaN only where there is some of it. */
double              tr_part_of            (double              grams,
                                           double              per_100g);
/* What counts as salt, g per 100 g: all of a salt; of the rest sodium × 2.5,
 * EU 1169/2011 Annex I. */
double              tr_salt_per_100g      (const TrIngredient *ingredient,
                                           const double        per_100g[TR_N_PARTS]);
/* EU 1169/2011 Annex XIV; kJ and kcal per 100 g, carbohydrate less fibre */
void                tr_energy_per_100g    (const double  per_100g[TR_N_PARTS],
                                           double       *kj,
                                           double       *kcal);

/* Usual ranges by kind, data/bands.csv. */
typedef enum {
  TR_RATIO_ALL_WATER, TR_RATIO_DOUGH_FAT, TR_RATIO_ROLL_IN_OF_DOUGH, TR_RATIO_SALT,
  TR_RATIO_SUGAR, TR_RATIO_YEAST_FRESH, TR_RATIO_PREFERMENTED, TR_N_RATIOS
} TrRatio;

typedef struct { double low, high; const char *source; } TrBand;

/* FALSE: no band for this kind (other). */
gboolean            tr_band_get           (TrRatio ratio,
                                           TrKind  kind,
                                           TrBand *band);
const char         *tr_ratio_key          (TrRatio ratio);    /* "all_water_percent" */

G_END_DECLS
