/* water.c: how warm or cold the water must be
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rule of n: a mean of temperatures calibrated by the friction, not a heat
 * balance (Hamelman, Bread; class sheets of baking schools). It asks a
 * temperature of all that is poured; milk and eggs have theirs, and the water
 * makes up for them.
 */

#include "water.h"

#include "formula.h"
#include "look.h"
#include "measure.h"

/* What melting one gram of ice takes, in grams of water cooled by 1 °C:
 * 333.6 kJ/kg over 4.186 kJ/kg K is 79.7, of which the trade makes 80. */
#define ICE_C 80.0

gboolean
tr_line_is_water (const TrLineFigures *line)
{
  return line->known && g_str_equal (line->ingredient.base_id, "water");
}

/* What is not known to be water is taken for poured, so that the figure says
 * that it is not known. */
gboolean
tr_line_is_poured (const TrLineFigures *line)
{
  double percent = line->ingredient.per_100g[TR_PART_WATER];

  if (!line->known || line->line->stage != TR_STAGE_DOUGH || !isfinite (line->written_grams))
    return FALSE;

  switch (line->ingredient.role)
    {
    case TR_ROLE_LIQUID:
    case TR_ROLE_DAIRY:
    case TR_ROLE_EGG:
      return !(percent <= TR_HALF_WATER);
    case TR_ROLE_FLOUR:
    case TR_ROLE_FAT:
    case TR_ROLE_SWEETENER:
    case TR_ROLE_SALT:
    case TR_ROLE_LEAVEN:
    case TR_ROLE_STARTER:
    case TR_ROLE_OTHER:
    case TR_N_ROLES:
    default:
      return FALSE;
    }
}

static gboolean
is_ripened (const TrLineFigures *line)
{
  return line->line->stage == TR_STAGE_PREFERMENT || tr_line_is_starter (line);
}

static gboolean
is_of_dough (const TrLineFigures *line)
{
  return line->line->stage == TR_STAGE_DOUGH;
}

static gboolean
has_line (const TrFormula *formula,
          TrLineTest       test)
{
  for (guint i = 0; i < formula->lines->len; i++)
    if (test (tr_formula_get_line (formula, i)))
      return TRUE;

  return FALSE;
}

gboolean
tr_formula_has_ripened (const TrFormula *formula)
{
  return has_line (formula, is_ripened);
}

double
tr_method_get_ripened_c (const TrMethod *method,
                         const TrBench  *bench)
{
  return isnan (method->preferment_c) ? bench->room_c : method->preferment_c;
}

static double
liquid_need_c (const TrMethod *method,
               const TrBench  *bench,
               gboolean        is_fermented,
               double          n)
{
  /* A difference: it grows with n, as the thing it was measured with did. */
  double friction_c = method->friction_c * n / method->friction_n;
  double need_c = n * method->dough_c - method->flour_c - bench->room_c - friction_c;

  if (is_fermented)
    need_c -= tr_method_get_ripened_c (method, bench);

  return need_c;
}

gboolean
tr_water_compute (const TrDough   *dough,
                  const TrBench   *bench,
                  const TrFormula *formula,
                  TrWater         *water)
{
  const TrMethod *method = dough->method;
  gboolean is_fermented = tr_formula_has_ripened (formula);
  double others_c = isnan (method->liquids_c) ? bench->fridge_c : method->liquids_c;
  double water_g = 0, others_g = 0;

  if (!is_fermented && !has_line (formula, is_of_dough))
    return FALSE;

  *water = (TrWater) { .n = is_fermented ? 4 : 3, .water_c = NAN, .ice_g = NAN, .available_water_g = NAN };
  water->liquid_need_c = liquid_need_c (method, bench, is_fermented, water->n);

  for (guint i = 0; i < formula->lines->len; i++)
    {
      const TrLineFigures *line = tr_formula_get_line (formula, i);

      if (!tr_line_is_poured (line))
        continue;
      if (tr_line_is_water (line))
        water_g += line->written_grams;
      else
        others_g += isnan (line->ingredient.per_100g[TR_PART_WATER]) ? NAN : line->written_grams;
    }

  if (!tr_is_positive (water_g))
    return TRUE;

  water->available_water_g = water_g * formula->scale;
  water->water_c = (water->liquid_need_c * (water_g + others_g) - others_g * others_c) / water_g;
  if (water->water_c > TR_WARMEST_WATER_C)
    water->water_c = NAN;
  if (!isnan (water->water_c) && tr_is_positive (method->tap_c + ICE_C))
    water->ice_g = MAX (0, water->available_water_g * (method->tap_c - water->water_c) / (method->tap_c + ICE_C));

  return TRUE;
}
