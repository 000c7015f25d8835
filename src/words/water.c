/* water.c: how warm or cold the water must be, in one sentence
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "say.h"

#include <glib/gi18n-lib.h>

#include "../calc/formula.h"
#include "../calc/water.h"

/* Less than that melts while it is weighed. */
#define LEAST_ICE_G 0.5

/* What is poured beside the water; NULL: nothing, or more than one thing. */
static const TrLineFigures *
find_other_liquid (const TrDoughFigures *figures)
{
  const TrLineFigures *found = NULL;

  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = tr_formula_get_line (&figures->formula, i);

      if (!tr_line_is_poured (line) || tr_line_is_water (line))
        continue;
      if (found != NULL)
        return NULL;
      found = line;
    }

  return found;
}

static char *
say_other_liquids (const TrReader       *reader,
                   const TrDoughFigures *figures)
{
  const TrLineFigures *other = find_other_liquid (figures);
  g_autofree char *need = tr_words_temperature (reader, figures->water.liquid_need_c);

  if (other == NULL)
    return g_strdup_printf (_("Everything poured at %s"), need);

  g_autofree char *name = tr_words_one_line (tr_words_ingredient (&other->ingredient));

  return g_strdup_printf (_("%s at %s"), name, need);
}

static char *
say_ice (const TrReader *reader,
         const TrWater  *water)
{
  g_autofree char *ice = tr_words_mass (reader, water->ice_g);
  g_autofree char *at = tr_words_temperature (reader, water->water_c);

  if (water->ice_g >= water->available_water_g)
    return g_strdup_printf (_("Ice alone is not cold enough: the water would have to be at %s. Chill the flour."), at);
  if (water->water_c < 0)
    return g_strdup_printf (_("Water: %s of it as ice"), ice);
  return g_strdup_printf (_("Water at %s, %s of it ice"), at, ice);
}

char *
tr_words_water (const TrReader       *reader,
                const TrDoughFigures *figures)
{
  const TrWater *water = &figures->water;

  g_return_val_if_fail (reader != NULL, NULL);

  if (!figures->has_water || !isfinite (water->liquid_need_c))
    return NULL;

  if (isnan (water->available_water_g))
    return find_other_liquid (figures) != NULL ? say_other_liquids (reader, figures) : NULL;
  if (isnan (water->water_c))
    {
      g_autofree char *others = say_other_liquids (reader, figures);
      g_autofree char *limit = tr_words_temperature (reader, TR_WARMEST_WATER_C);

      /* Translators: the first is "Whole milk at 24 °C". */
      return g_strdup_printf (_("%s: water alone would have to be warmer than %s"), others, limit);
    }
  if (water->ice_g >= LEAST_ICE_G)
    return say_ice (reader, water);

  g_autofree char *at = tr_words_temperature (reader, water->water_c);

  return g_strdup_printf (_("Water at %s"), at);
}
