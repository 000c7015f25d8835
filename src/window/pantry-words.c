/* pantry-words.c: what the numbers of an own ingredient say together
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sentences for the form; nothing here is refused.
 */

#include "config.h"

#include "pantry-members.h"

#include <glib/gi18n-lib.h>

#include "../calc/butter.h"

#define WHOLE_G 100.5            /* tables round every part */

static void
add (GString    *out,
     const char *sentence)
{
  g_string_append_printf (out, "%s%s", out->len > 0 ? "\n" : "", sentence);
}

static double
known_or_none (double value)
{
  return isnan (value) ? 0 : value;
}

static void
add_sum (GString            *out,
         const TrReader     *reader,
         const TrIngredient *ingredient)
{
  const double *parts = ingredient->per_100g;
  double sum = known_or_none (parts[TR_PART_WATER]) + known_or_none (parts[TR_PART_FAT]) + known_or_none (parts[TR_PART_PROTEIN])
               + known_or_none (parts[TR_PART_CARBOHYDRATE]) + known_or_none (parts[TR_PART_ASH]);

  if (sum <= WHOLE_G)
    return;

  g_autofree char *number = tr_words_number (reader, sum, 1);
  g_autofree char *sentence = g_strdup_printf (_("With what is taken over, the parts make %s g in 100 g: write the water, too."), number);

  add (out, sentence);
}

static void
add_heat (GString            *out,
          const TrIngredient *ingredient)
{
  if (ingredient->plastic_low_c > ingredient->plastic_high_c)
    add (out, _("It would roll from a warmer temperature than up to: nothing is left between."));
  if (ingredient->soft_c > ingredient->liquid_c)
    add (out, _("It would be liquid before it is soft."));
}

static char *
dup_butter (const TrReader     *reader,
            const TrIngredient *ingredient)
{
  g_autofree char *fat = tr_words_percent (reader, ingredient->per_100g[TR_PART_FAT]);
  g_autofree char *water = tr_words_percent (reader, ingredient->per_100g[TR_PART_WATER]);

  switch (tr_butter_judge (ingredient))
    {
    case TR_BUTTER_BUTTER:
      return g_strdup_printf (_("Butter by Codex CXS 279 and EU 1308/2013: %s fat (at least 80 %%), %s water (at most 16 %%)."), fat, water);
    case TR_BUTTER_WET:
      return g_strdup_printf (_("%s water: what is sold as butter has at most 16 %% (Codex CXS 279, EU 1308/2013). Compare it with the pack."), water);
    case TR_BUTTER_DRY:
      return g_strdup_printf (_("%s fat and %s water leave more than 2 %% milk solids, the most in what is sold as butter "
                                "(Codex CXS 279, EU 1308/2013). Compare it with the pack."), fat, water);
    case TR_BUTTER_CONCENTRATED:
      return g_strdup_printf (_("%s fat: from 90 %% it is no longer sold as butter but as concentrated (EU 1308/2013)."), fat);
    case TR_BUTTER_THREE_QUARTER:
      return g_strdup_printf (_("%s fat: in the EU three-quarter-fat butter (60 to 62 %%); butter has at least 80 %%."), fat);
    case TR_BUTTER_HALF:
      return g_strdup_printf (_("%s fat: in the EU half-fat butter (39 to 41 %%); butter has at least 80 %%."), fat);
    case TR_BUTTER_SPREAD:
      return g_strdup_printf (_("%s fat: what is sold as butter has at least 80 %% (Codex CXS 279); in the EU this is a dairy spread."), fat);
    case TR_BUTTER_NONE:
      return g_strdup_printf (_("%s fat is too little for any butter or spread (EU 1308/2013: from 10 %%)."), fat);
    case TR_BUTTER_NOT_KNOWN:
    default:
      return g_strdup (_("Whether it may be called butter is not known without its fat and water."));
    }
}

char *
tr_pantry_dup_words (const TrReader     *reader,
                     const TrIngredient *ingredient)
{
  GString *out = g_string_new (NULL);

  add_sum (out, reader, ingredient);
  add_heat (out, ingredient);
  if (tr_ingredient_is_like (ingredient, "butter-") && !tr_ingredient_is_like (ingredient, "butter-oil"))
    {
      g_autofree char *butter = dup_butter (reader, ingredient);

      add (out, butter);
    }

  return g_string_free (out, FALSE);
}
