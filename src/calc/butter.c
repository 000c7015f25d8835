/* butter.c: what a milk fat may be called, by what is in it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "butter.h"

#include "measure.h"

/* Salt is no milk; where it is not known it counts as none. */
static double
dry_not_fat (const TrIngredient *ingredient)
{
  double salt = tr_salt_per_100g (ingredient, ingredient->per_100g);

  return 100 - ingredient->per_100g[TR_PART_FAT] - ingredient->per_100g[TR_PART_WATER] - (isnan (salt) ? 0 : salt);
}

static TrButter
judge_fat_enough (const TrIngredient *ingredient)
{
  double water = ingredient->per_100g[TR_PART_WATER];

  if (isnan (water))
    return TR_BUTTER_NOT_KNOWN;
  if (water > TR_BUTTER_MOST_WATER + TR_HAIR)
    return TR_BUTTER_WET;

  return dry_not_fat (ingredient) > TR_BUTTER_MOST_DRY + TR_HAIR ? TR_BUTTER_DRY : TR_BUTTER_BUTTER;
}

TrButter
tr_butter_judge (const TrIngredient *ingredient)
{
  static const struct { double least, below; TrButter name; } names[] = {
    { 39, 41 + 2 * TR_HAIR, TR_BUTTER_HALF },
    { 60, 62 + 2 * TR_HAIR, TR_BUTTER_THREE_QUARTER },
    { 10, TR_BUTTER_LEAST_FAT, TR_BUTTER_SPREAD },
    { 90, G_MAXDOUBLE, TR_BUTTER_CONCENTRATED },
  };
  double fat = ingredient->per_100g[TR_PART_FAT] + TR_HAIR;

  if (isnan (fat))
    return TR_BUTTER_NOT_KNOWN;

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (fat >= names[i].least && fat < names[i].below)
      return names[i].name;

  return fat < TR_BUTTER_LEAST_FAT ? TR_BUTTER_NONE : judge_fat_enough (ingredient);
}
