/* pantry-members.c: what can be written of an ingredient of the baker's own
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is not written is as the built-in it is like: its number stands in the
 * field's place. "?" stands for what nobody knows.
 */

#include "config.h"

#include "pantry-members.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define NOT_KNOWN "?"
#define MG_SODIUM_A_GRAM_OF_SALT 400   /* salt = sodium × 2.5, EU 1169/2011, Annex I (11) */

gboolean
tr_pantry_resolve (const TrTrial *trial,
                   guint          index,
                   TrIngredient  *ingredient)
{
  if (index >= trial->pantry->own->len)
    return FALSE;

  const TrOwnIngredient *own = g_ptr_array_index (trial->pantry->own, index);

  return tr_ingredient_resolve (trial->pantry, own->id, ingredient);
}

static gpointer
reach_own (const TrTrial *trial,
           int            dough,
           guint          item,
           gboolean       make)
{
  return item < trial->pantry->own->len ? g_ptr_array_index (trial->pantry->own, item) : NULL;
}

static TrOwnIngredient *
get_of_slot (const TrTrial *trial,
             guint          item)
{
  return reach_own (trial, -1, item / TR_PANTRY_SLOTS, FALSE);
}

/* ---- composition ---- */

static const char *const part_names[TR_N_PARTS] = {
  [TR_PART_WATER] = N_("Water"), [TR_PART_FAT] = N_("Fat"), [TR_PART_PROTEIN] = N_("Protein"),
  [TR_PART_CARBOHYDRATE] = N_("Carbohydrate"), [TR_PART_FIBRE] = N_("Fibre"), [TR_PART_SUGARS] = N_("Sugars"),
  [TR_PART_ASH] = N_("Ash"), [TR_PART_SODIUM_MG] = N_("Sodium"),
};

static gboolean
refuse (GError **error,
        char    *sentence)
{
  g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_INVALID_DATA, sentence);
  g_free (sentence);

  return FALSE;
}

static double
written_or_none (const TrOwnIngredient *own,
                 TrPart                 part)
{
  return tr_is_written (own->per_100g[part]) ? own->per_100g[part] : 0;
}

/* Of what the baker wrote: what is taken over from the built-in gives way. */
static double
sum_written (const TrOwnIngredient *own)
{
  return written_or_none (own, TR_PART_WATER) + written_or_none (own, TR_PART_FAT) + written_or_none (own, TR_PART_PROTEIN)
         + written_or_none (own, TR_PART_CARBOHYDRATE) + written_or_none (own, TR_PART_ASH);
}

static gboolean
check_ranges (const TrOwnIngredient  *own,
              const TrReader         *reader,
              GError                **error)
{
  for (guint i = 0; i < TR_N_PARTS; i++)
    {
      double value = own->per_100g[i];
      gboolean is_sodium = i == TR_PART_SODIUM_MG;

      if (isnan (value) || (value >= 0 && (is_sodium || value <= 100)))
        continue;

      g_autofree char *number = tr_words_write (reader, TR_QUANTITY_NUMBER, value);

      return refuse (error, is_sodium
                            ? g_strdup (_("There is no less of it than none."))
                            : g_strdup_printf (_("%s is from 0 to 100 g in 100 g; %s cannot be."), _(part_names[i]), number));
    }

  return TRUE;
}

static gboolean
check_parts (const TrTrial   *draft,
             const TrReader  *reader,
             int              dough,
             guint            item,
             GError         **error)
{
  const TrOwnIngredient *own = reach_own (draft, dough, item, FALSE);
  double sum = sum_written (own);
  double inside = written_or_none (own, TR_PART_FIBRE) + written_or_none (own, TR_PART_SUGARS);
  double carbohydrate = own->per_100g[TR_PART_CARBOHYDRATE];

  if (!check_ranges (own, reader, error))
    return FALSE;
  if (sum > 100 + 1e-6)
    {
      g_autofree char *number = tr_words_write (reader, TR_QUANTITY_NUMBER, sum);

      return refuse (error, g_strdup_printf (_("Water, fat, protein, carbohydrate and ash would make %s g in 100 g."), number));
    }
  if (tr_is_written (carbohydrate) && inside > carbohydrate + 1e-6)
    {
      g_autofree char *number = tr_words_write (reader, TR_QUANTITY_NUMBER, carbohydrate);

      return refuse (error, g_strdup_printf (_("Sugars and fibre are part of the carbohydrate, which is %s g."), number));
    }

  return TRUE;
}

/* A number that is written is known. */
static void
settle_parts (TrTrial  *draft,
              int       dough,
              guint     item,
              gpointer  holder)
{
  TrOwnIngredient *own = holder;

  for (guint i = 0; i < TR_N_PARTS; i++)
    if (tr_is_written (own->per_100g[i]))
      own->unknown[i] = FALSE;
}

#define OTHERWISE(name, expression) \
  static double \
  get_##name (const TrTrial *trial, \
              int            dough, \
              guint          item) \
  { \
    TrIngredient as; \
  \
    return tr_pantry_resolve (trial, item, &as) ? as.expression : NAN; \
  }

OTHERWISE (water, per_100g[TR_PART_WATER])
OTHERWISE (fat, per_100g[TR_PART_FAT])
OTHERWISE (protein, per_100g[TR_PART_PROTEIN])
OTHERWISE (carbohydrate, per_100g[TR_PART_CARBOHYDRATE])
OTHERWISE (fibre, per_100g[TR_PART_FIBRE])
OTHERWISE (sugars, per_100g[TR_PART_SUGARS])
OTHERWISE (ash, per_100g[TR_PART_ASH])
OTHERWISE (sodium, per_100g[TR_PART_SODIUM_MG])
OTHERWISE (salt, per_100g[TR_PART_SODIUM_MG] / MG_SODIUM_A_GRAM_OF_SALT)
OTHERWISE (plastic_low, plastic_low_c)
OTHERWISE (plastic_high, plastic_high_c)
OTHERWISE (soft, soft_c)
OTHERWISE (liquid, liquid_c)
OTHERWISE (proof_max, proof_max_c)
OTHERWISE (price, price_per_kg)
OTHERWISE (density, density_g_ml)

#define PART(name, part, label, undo, tip) \
  { "/ingredients/%u/per_100g/" #name, reach_own, G_STRUCT_OFFSET (TrOwnIngredient, per_100g[part]), TR_HOLD_NUMBER, TR_QUANTITY_NUMBER, \
    label, undo, tip, 0.5, TRUE, NOT_KNOWN, .unit = N_("g"), .settle = settle_parts, .get_otherwise = get_##name, .check = check_parts }

static const TrMember part_members[] = {
  PART (fat, TR_PART_FAT, N_("Fat"), N_("change the fat of an ingredient"), NULL),
  PART (water, TR_PART_WATER, N_("Water"), N_("change the water of an ingredient"),
        N_("Labels seldom say it. Of a butter: what is left by fat, 1 to 2 g of milk solids, and salt")),
  PART (protein, TR_PART_PROTEIN, N_("Protein"), N_("change the protein of an ingredient"), NULL),
  PART (carbohydrate, TR_PART_CARBOHYDRATE, N_("Carbohydrate"), N_("change the carbohydrate of an ingredient"),
        N_("Fibre included. Labels in the EU leave the fibre out: add it. Left empty it follows from water and fat, once they are written")),
  PART (sugars, TR_PART_SUGARS, N_("Sugars"), N_("change the sugars of an ingredient"), N_("Part of the carbohydrate")),
  PART (fibre, TR_PART_FIBRE, N_("Fibre"), N_("change the fibre of an ingredient"), N_("Part of the carbohydrate")),
  PART (ash, TR_PART_ASH, N_("Ash"), N_("change the ash of an ingredient"), N_("Minerals, salt among them")),
};

#define SODIUM(as) "/ingredients/%u/per_100g/sodium_mg" as, reach_own, G_STRUCT_OFFSET (TrOwnIngredient, per_100g[TR_PART_SODIUM_MG]), \
  TR_HOLD_NUMBER, TR_QUANTITY_NUMBER

static const TrMember salt_members[] = {
  { SODIUM ("/as_salt"), N_("Salt"), N_("change the salt of an ingredient"), N_("As labels in the EU say it: sodium × 2.5"),
    0.1, TRUE, NOT_KNOWN, .unit = N_("g"), .settle = settle_parts, .get_otherwise = get_salt, .divisor = MG_SODIUM_A_GRAM_OF_SALT,
    .check = check_parts },
  { SODIUM (""), N_("or sodium"), N_("change the sodium of an ingredient"), N_("As labels in the US say it; salt is sodium × 2.5"),
    10, TRUE, NOT_KNOWN, .unit = N_("mg"), .settle = settle_parts, .get_otherwise = get_sodium, .check = check_parts },
};

/* ---- name, heat, price ---- */

static void
settle_name (TrTrial  *draft,
             int       dough,
             guint     item,
             gpointer  holder)
{
  TrOwnIngredient *own = holder;

  if (own->name != NULL && *own->name == '\0')
    g_clear_pointer (&own->name, g_free);
}

static const TrMember name_members[] = {
  { "/ingredients/%u/name", reach_own, G_STRUCT_OFFSET (TrOwnIngredient, name), TR_HOLD_TEXT, TR_QUANTITY_NUMBER,
    N_("Name"), N_("rename an ingredient"), .settle = settle_name },
};

#define HEAT(name, label, undo, tip) \
  { "/ingredients/%u/" #name "_c", reach_own, G_STRUCT_OFFSET (TrOwnIngredient, name##_c), TR_HOLD_NUMBER, TR_QUANTITY_TEMPERATURE_C, \
    label, undo, tip, 1, TRUE, NOT_KNOWN, .get_otherwise = get_##name }

static const TrMember heat_members[] = {
  HEAT (plastic_low, N_("Rolls from"), N_("change how cold an ingredient rolls"), N_("Colder it cracks under the pin")),
  HEAT (plastic_high, N_("Rolls up to"), N_("change how warm an ingredient rolls"), N_("Warmer it smears")),
  HEAT (soft, N_("Soft at"), N_("change where an ingredient is soft"), N_("Where it begins to give way")),
  HEAT (liquid, N_("Liquid at"), N_("change where an ingredient is liquid"), N_("Where it has melted")),
  HEAT (proof_max, N_("Proof at most"), N_("change how warm an ingredient may proof"), N_("Warmer it runs out in the proof")),
};

static const TrMember price_members[] = {
  { "/ingredients/%u/price_per_kg", reach_own, G_STRUCT_OFFSET (TrOwnIngredient, price_per_kg), TR_HOLD_NUMBER, TR_QUANTITY_NUMBER,
    N_("Price a kilogram"), N_("change the price of an ingredient"), NULL, 0.1, TRUE, NOT_KNOWN, .get_otherwise = get_price },
};

/* ---- household weights ---- */

static const char *const units[] = { "cup", "cup-metric", "tbsp", "tsp", "floz", "stick", "piece", "packet", "cake", "cube", "pinch", "egg" };

static const TrHousehold nothing = { NULL, NAN };

static gpointer
reach_household (const TrTrial *trial,
                 int            dough,
                 guint          item,
                 gboolean       make)
{
  TrOwnIngredient *own = get_of_slot (trial, item);
  const char *unit = units[item % TR_PANTRY_SLOTS];

  if (own == NULL)
    return NULL;

  for (guint i = 0; own->household != NULL && i < own->household->len; i++)
    if (g_str_equal (g_array_index (own->household, TrHousehold, i).unit, unit))
      return &g_array_index (own->household, TrHousehold, i);

  if (!make)
    return (gpointer) &nothing;

  tr_own_ingredient_add_household (own, (TrHousehold) { g_strdup (unit), NAN });

  return &g_array_index (own->household, TrHousehold, own->household->len - 1);
}

static void
settle_household (TrTrial  *draft,
                  int       dough,
                  guint     item,
                  gpointer  holder)
{
  TrOwnIngredient *own = get_of_slot (draft, item);

  for (guint i = own->household->len; i-- > 0;)
    if (isnan (g_array_index (own->household, TrHousehold, i).grams))
      g_array_remove_index (own->household, i);
  if (own->household->len == 0)
    g_clear_pointer (&own->household, g_array_unref);
}

static double
get_household (const TrTrial *trial,
               int            dough,
               guint          item)
{
  TrIngredient as;
  int unit = tr_unit_from_id (units[item % TR_PANTRY_SLOTS]);

  return tr_pantry_resolve (trial, item / TR_PANTRY_SLOTS, &as) && unit >= 0 ? as.household_g[unit] : NAN;
}

static char *
dup_household_pointer (const TrTrial *trial,
                       int            dough,
                       guint          item)
{
  return g_strdup_printf ("/ingredients/%u/household_g/%s", item / TR_PANTRY_SLOTS, units[item % TR_PANTRY_SLOTS]);
}

#define WEIGHT(label) \
  { "/ingredients/%u/household_g/", reach_household, G_STRUCT_OFFSET (TrHousehold, grams), TR_HOLD_NUMBER, TR_QUANTITY_MASS_G, \
    label, N_("change what a measure of an ingredient weighs"), NULL, 1, TRUE, NOT_KNOWN, .settle = settle_household, \
    .dup_pointer = dup_household_pointer, .get_otherwise = get_household }

/* In the order of `units`. */
static const TrMember household_members[] = {
  WEIGHT (N_("A cup (US)")), WEIGHT (N_("A cup (250 ml)")), WEIGHT (N_("A tablespoon")), WEIGHT (N_("A teaspoon")),
  WEIGHT (N_("A fluid ounce")), WEIGHT (N_("A stick")), WEIGHT (N_("A piece")), WEIGHT (N_("A packet")), WEIGHT (N_("A cake")),
  WEIGHT (N_("A cube")), WEIGHT (N_("A pinch")), WEIGHT (N_("An egg")),
};
G_STATIC_ASSERT (G_N_ELEMENTS (household_members) == G_N_ELEMENTS (units));

static const TrMember density_members[] = {
  { "/ingredients/%u/density_g_ml", reach_own, G_STRUCT_OFFSET (TrOwnIngredient, density_g_ml), TR_HOLD_NUMBER, TR_QUANTITY_NUMBER,
    N_("Density"), N_("change the density of an ingredient"), N_("For volumes whose weight is not written"), 0.01, TRUE, NOT_KNOWN,
    .unit = N_("g/ml"), .get_otherwise = get_density },
};

const TrMember *
tr_pantry_get_members (TrPantryGroup  group,
                       guint         *n_members)
{
#define GROUP(members) { members, G_N_ELEMENTS (members) }
  static const struct { const TrMember *members; guint n; } groups[] = {
    [TR_PANTRY_GROUP_NAME] = GROUP (name_members), [TR_PANTRY_GROUP_PARTS] = GROUP (part_members),
    [TR_PANTRY_GROUP_SALT] = GROUP (salt_members), [TR_PANTRY_GROUP_HEAT] = GROUP (heat_members),
    [TR_PANTRY_GROUP_PRICE] = GROUP (price_members), [TR_PANTRY_GROUP_DENSITY] = GROUP (density_members),
    [TR_PANTRY_GROUP_HOUSEHOLD] = GROUP (household_members),
  };
#undef GROUP

  g_return_val_if_fail (group < G_N_ELEMENTS (groups), NULL);

  *n_members = groups[group].n;

  return groups[group].members;
}
