/* comparison.c: the figures by which doughs are held against one another
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "comparison.h"

#include "balance.h"
#include "look.h"
#include "measure.h"

enum { NEEDS_NOTHING, NEEDS_LAMINATION, NEEDS_SHEET };

static double
get_sheets (const TrDoughFigures *figures)
{
  return figures->has_sheet ? (double) figures->sheet.sheets : (double) NAN;
}

static double
get_worst_stretch (const TrDoughFigures *figures)
{
  const TrLamination *lamination = &figures->lamination;
  double worst = NAN;

  if (!figures->has_lamination)
    return NAN;

  for (guint i = 0; i < lamination->steps->len; i++)
    worst = fmax (worst, g_array_index (lamination->steps, TrTurnFigures, i).stretch);
  if (lamination->has_to_sheet)
    worst = fmax (worst, fmax (lamination->to_sheet.stretch_length, lamination->to_sheet.stretch_width));

  return worst;
}

/* Times */

static gboolean
step_wants_hands (TrStepId id)
{
  switch (id)
    {
    case TR_STEP_PREFERMENT_MIX:
    case TR_STEP_MIX:
    case TR_STEP_FAT_BLOCK:
    case TR_STEP_LOCK_IN:
    case TR_STEP_ROLL_OUT:
    case TR_STEP_CUT:
    case TR_STEP_SHAPE:
    case TR_STEP_FINISH:
      return TRUE;

    case TR_STEP_RIPEN:
    case TR_STEP_BULK:
    case TR_STEP_CHILL:
    case TR_STEP_TURN:           /* of the turns themselves */
    case TR_STEP_REST:
    case TR_STEP_PROOF:
    case TR_STEP_BAKE:
    case TR_STEP_COOL:
    case TR_N_STEPS:
    default:
      return FALSE;
    }
}

static double
step_minutes_in_all (const TrDoughFigures *figures,
                     const TrStep         *step)
{
  double loads = figures->sheet.trays.loads;

  if (step->id == TR_STEP_FAT_BLOCK || step->id == TR_STEP_TURN || step->id == TR_STEP_REST)
    return 0;
  if (step->id == TR_STEP_BAKE && figures->has_sheet && loads > 1)
    return step->minutes * loads;

  return step->minutes;
}

static double
rest_minutes (const TrRest *rest)
{
  return rest != NULL ? rest->min_minutes : 0;
}

static double
turn_minutes (const TrDoughFigures *figures,
              const TrTurn         *turn)
{
  return tr_is_written (turn->minutes) ? turn->minutes : figures->bench->turn_minutes;
}

/* 0 becomes not known: nothing of it is written. */
static double
known_minutes (double minutes)
{
  return minutes > 0 ? minutes : NAN;
}

static double
get_hands_minutes (const TrDoughFigures *figures)
{
  const TrDough *dough = figures->dough;
  double minutes = 0;

  for (guint i = 0; i < dough->method->steps->len; i++)
    {
      const TrStep *step = dough->method->steps->pdata[i];

      if (step_wants_hands (step->id) && tr_is_written (step->minutes))
        minutes += step->minutes;
    }
  for (guint i = 0; i < dough->turns->len; i++)
    minutes += turn_minutes (figures, tr_dough_get_turn (dough, i));

  return known_minutes (minutes);
}

static double
get_minutes (const TrDoughFigures *figures)
{
  const TrDough *dough = figures->dough;
  double minutes = dough->lock_in != NULL ? rest_minutes (dough->lock_in->rest) : 0;

  for (guint i = 0; i < dough->method->steps->len; i++)
    {
      const TrStep *step = dough->method->steps->pdata[i];

      if (tr_is_written (step->minutes))
        minutes += step_minutes_in_all (figures, step);
    }
  for (guint i = 0; i < dough->turns->len; i++)
    {
      const TrTurn *turn = tr_dough_get_turn (dough, i);

      minutes += turn_minutes (figures, turn) + rest_minutes (turn->rest);
    }

  return known_minutes (minutes);
}

/* The table */

#define OF(group, measure, decimals, needs, member) \
  TR_GROUP_##group, TR_MEASURE_##measure, decimals, needs, G_STRUCT_OFFSET (TrDoughFigures, member), NULL
#define BY(group, measure, decimals, get) \
  TR_GROUP_##group, TR_MEASURE_##measure, decimals, NEEDS_NOTHING, 0, get

static const TrComparable comparables[] = {
  { "raw_mass_g", OF (PIECE, MASS_G, 1, NEEDS_NOTHING, piece.raw_mass_g) },
  { "baked_mass_g", OF (PIECE, MASS_G, 1, NEEDS_NOTHING, piece.baked_mass_g) },
  { "added_fat_g", OF (PIECE, MASS_G, 1, NEEDS_NOTHING, piece.added_fat_g) },
  { "fat_g", OF (PIECE, MASS_G, 1, NEEDS_NOTHING, piece.content.fat_g) },
  { "salt_g", OF (PIECE, MASS_G, 2, NEEDS_NOTHING, piece.content.salt_g) },
  { "sugars_g", OF (PIECE, MASS_G, 1, NEEDS_NOTHING, piece.content.sugars_g) },
  { "energy_kj", OF (PIECE, ENERGY_KJ, 0, NEEDS_NOTHING, piece.content.energy_kj) },
  { "energy_kcal", OF (PIECE, ENERGY_KCAL, 0, NEEDS_NOTHING, piece.content.energy_kcal) },

  { "per_100g_raw.fat_g", OF (PER_100G, MASS_G, 1, NEEDS_NOTHING, piece.per_100g_raw.fat_g) },
  { "per_100g_raw.salt_g", OF (PER_100G, MASS_G, 2, NEEDS_NOTHING, piece.per_100g_raw.salt_g) },
  { "per_100g_raw.sugars_g", OF (PER_100G, MASS_G, 1, NEEDS_NOTHING, piece.per_100g_raw.sugars_g) },
  { "per_100g_raw.energy_kj", OF (PER_100G, ENERGY_KJ, 0, NEEDS_NOTHING, piece.per_100g_raw.energy_kj) },
  { "per_100g_raw.energy_kcal", OF (PER_100G, ENERGY_KCAL, 0, NEEDS_NOTHING, piece.per_100g_raw.energy_kcal) },

  { "added_water_percent", OF (FLOUR, PERCENT, 1, NEEDS_NOTHING, formula.added_water_percent) },
  { "all_water_percent", OF (FLOUR, PERCENT, 1, NEEDS_NOTHING, formula.all_water_percent) },
  { "prefermented_flour_percent", OF (FLOUR, PERCENT, 1, NEEDS_NOTHING, formula.prefermented_flour_percent) },
  { "dough_fat_percent", OF (FLOUR, PERCENT, 1, NEEDS_NOTHING, formula.dough_fat_percent) },
  { "roll_in_percent_of_flour", OF (FLOUR, PERCENT, 1, NEEDS_NOTHING, formula.roll_in_percent_of_flour) },
  { "roll_in_percent_of_dough", OF (FLOUR, PERCENT, 1, NEEDS_NOTHING, formula.roll_in_percent_of_dough) },
  { "roll_in_percent_of_total", OF (FLOUR, PERCENT, 1, NEEDS_NOTHING, formula.roll_in_percent_of_total) },
  { "roll_in_fat_percent_of_flour", OF (FLOUR, PERCENT, 1, NEEDS_NOTHING, formula.roll_in_fat_percent_of_flour) },
  { "salt_percent", OF (FLOUR, PERCENT, 2, NEEDS_NOTHING, formula.salt_percent) },
  { "sugar_percent", OF (FLOUR, PERCENT, 1, NEEDS_NOTHING, formula.sugar_percent) },
  { "yeast_fresh_percent", OF (FLOUR, PERCENT, 1, NEEDS_NOTHING, formula.yeast_fresh_percent) },

  { "fat_layers", OF (LAMINATION, COUNT, 0, NEEDS_LAMINATION, lamination.fat_layers) },
  { "dough_layers", OF (LAMINATION, COUNT, 0, NEEDS_LAMINATION, lamination.dough_layers) },
  { "bands", OF (LAMINATION, COUNT, 0, NEEDS_LAMINATION, lamination.bands) },
  { "fat_volume_fraction", OF (LAMINATION, SHARE, 1, NEEDS_LAMINATION, lamination.fat_volume_fraction) },
  { "fat_layer_um.min", OF (LAMINATION, THICKNESS_UM, 0, NEEDS_LAMINATION, lamination.fat_layer_um.min) },
  { "fat_layer_um.max", OF (LAMINATION, THICKNESS_UM, 0, NEEDS_LAMINATION, lamination.fat_layer_um.max) },
  { "dough_layer_um.min", OF (LAMINATION, THICKNESS_UM, 0, NEEDS_LAMINATION, lamination.dough_layer_um.min) },
  { "dough_layer_um.max", OF (LAMINATION, THICKNESS_UM, 0, NEEDS_LAMINATION, lamination.dough_layer_um.max) },
  { "dough_layer_um.outer", OF (LAMINATION, THICKNESS_UM, 0, NEEDS_LAMINATION, lamination.dough_layer_um_outer) },
  { "layers_across", OF (LAMINATION, COUNT, 0, NEEDS_SHEET, sheet.layers_across) },
  { "worst_stretch", BY (LAMINATION, TIMES, 2, get_worst_stretch) },

  { "thickness_mm", OF (SHEET, LENGTH_MM, 1, NEEDS_SHEET, sheet.thickness_mm) },
  { "length_mm", OF (SHEET, LENGTH_MM, 0, NEEDS_SHEET, sheet.length_mm) },
  { "width_mm", OF (SHEET, LENGTH_MM, 0, NEEDS_SHEET, sheet.width_mm) },
  { "sheets", BY (SHEET, COUNT, 0, get_sheets) },
  { "count", OF (SHEET, COUNT, 0, NEEDS_NOTHING, piece.count) },
  { "scrap_percent", OF (SHEET, PERCENT, 1, NEEDS_SHEET, sheet.scrap_percent) },
  { "diameter_mm", OF (SHEET, LENGTH_MM, 0, NEEDS_SHEET, sheet.diameter_mm) },
  { "windings", OF (SHEET, TIMES, 1, NEEDS_SHEET, sheet.windings) },
  { "trays.loads", OF (SHEET, COUNT, 0, NEEDS_SHEET, sheet.trays.loads) },

  { "hands_minutes", BY (TIME, MINUTES, 0, get_hands_minutes) },
  { "minutes", BY (TIME, MINUTES, 0, get_minutes) },

  { "cost", OF (COST, MONEY, 2, NEEDS_NOTHING, piece.cost) },
};

static const TrComparable of_batch[] = {
  { "flour_g", OF (BATCH, MASS_G, 0, NEEDS_NOTHING, formula.flour_g) },
  { "dough_g", OF (BATCH, MASS_G, 0, NEEDS_NOTHING, formula.dough_g) },
  { "roll_in_g", OF (BATCH, MASS_G, 0, NEEDS_NOTHING, formula.roll_in_g) },
  { "total_g", OF (BATCH, MASS_G, 0, NEEDS_NOTHING, formula.total_g) },
};

const TrComparable *
tr_comparables_get_all (guint *n)
{
  g_return_val_if_fail (n != NULL, NULL);

  *n = G_N_ELEMENTS (comparables);

  return comparables;
}

static const TrComparable *
find_in (const TrComparable *table,
         gsize               n,
         const char         *key)
{
  for (gsize i = 0; i < n; i++)
    if (g_str_equal (table[i].key, key))
      return &table[i];

  return NULL;
}

const TrComparable *
tr_comparable_find (const char *key)
{
  const TrComparable *found;

  if (key == NULL)
    return NULL;

  found = find_in (comparables, G_N_ELEMENTS (comparables), key);

  return found != NULL ? found : find_in (of_batch, G_N_ELEMENTS (of_batch), key);
}

double
tr_comparable_get (const TrComparable   *comparable,
                   const TrDoughFigures *figures)
{
  g_return_val_if_fail (comparable != NULL && figures != NULL, NAN);

  if (comparable->get != NULL)
    return comparable->get (figures);
  if ((comparable->needs == NEEDS_LAMINATION && !figures->has_lamination) || (comparable->needs == NEEDS_SHEET && !figures->has_sheet))
    return NAN;

  return G_STRUCT_MEMBER (double, figures, comparable->offset);
}

gboolean
tr_comparable_get_band (const TrComparable   *comparable,
                        const TrDoughFigures *figures,
                        TrBand               *band)
{
  g_return_val_if_fail (comparable != NULL && figures != NULL && band != NULL, FALSE);

  for (int ratio = 0; ratio < TR_N_RATIOS; ratio++)
    if (g_str_equal (tr_ratio_key ((TrRatio) ratio), comparable->key))
      return tr_ratio_get_band (figures, (TrRatio) ratio, band);
  if (g_str_has_prefix (comparable->key, "fat_layer_um."))
    return tr_look_get_fat_layer_band (figures, band);

  return FALSE;
}

void
tr_spread_find (const double *values,
                guint         n,
                TrSpread     *spread)
{
  double sum = 0;

  g_return_if_fail (spread != NULL);

  *spread = (TrSpread) { 0, NAN, NAN, NAN, FALSE };
  for (guint i = 0; i < n; i++)
    {
      if (!isfinite (values[i]))
        continue;
      spread->n_known++;
      spread->min = fmin (spread->min, values[i]);
      spread->max = fmax (spread->max, values[i]);
      sum += fabs (values[i]);
    }
  if (spread->n_known < 2)
    return;

  spread->relative = sum > 0 ? (spread->max - spread->min) / (sum / spread->n_known) : 0;
  spread->is_equal = spread->n_known == n && spread->relative <= TR_HAIR;
}

void
tr_comparable_get_spread (const TrComparable *comparable,
                          const TrFigures    *figures,
                          const guint        *doughs,
                          guint               n_doughs,
                          TrSpread           *spread)
{
  g_autofree double *values = g_new (double, n_doughs + 1);

  for (guint i = 0; i < n_doughs; i++)
    values[i] = tr_comparable_get (comparable, tr_figures_get_dough (figures, doughs[i]));
  tr_spread_find (values, n_doughs, spread);
}

typedef struct { const TrComparable *comparable; const TrFigures *figures; } Sorting;

static int
compare_doughs (gconstpointer a,
                gconstpointer b,
                gpointer      data)
{
  const Sorting *sorting = data;
  guint first = *(const guint *) a, second = *(const guint *) b;
  double one = tr_comparable_get (sorting->comparable, tr_figures_get_dough (sorting->figures, first));
  double other = tr_comparable_get (sorting->comparable, tr_figures_get_dough (sorting->figures, second));

  if (isnan (one) != isnan (other))
    return isnan (one) ? 1 : -1;
  if (one > other || one < other)
    return one > other ? -1 : 1;

  return first < second ? -1 : first > second;
}

void
tr_comparable_sort (const TrComparable *comparable,
                    const TrFigures    *figures,
                    guint              *doughs,
                    guint               n_doughs)
{
  Sorting sorting = { comparable, figures };

  g_return_if_fail (comparable != NULL && figures != NULL);

  if (n_doughs > 1)
    g_qsort_with_data (doughs, (int) n_doughs, sizeof *doughs, compare_doughs, &sorting);
}
