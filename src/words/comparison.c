/* comparison.c: how the figures of several doughs are said side by side
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "comparison.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "../calc/digits.h"
#include "say.h"

/* Inches and ounces are larger than what they are converted from. */
#define MORE_DECIMALS_OF_OUNCES 1
#define MORE_DECIMALS_OF_INCHES 2

static const char *const groups[TR_N_GROUPS] = {
  [TR_GROUP_PIECE] = NC_("figures", "A piece"),
  [TR_GROUP_PER_100G] = NC_("figures", "100 g, raw"),
  [TR_GROUP_FLOUR] = NC_("figures", "On flour"),
  [TR_GROUP_LAMINATION] = NC_("figures", "Lamination"),
  [TR_GROUP_SHEET] = NC_("figures", "Sheet and cuts"),
  [TR_GROUP_TIME] = NC_("figures", "Time, as written"),
  [TR_GROUP_COST] = NC_("figures", "Cost"),
  [TR_GROUP_BATCH] = NC_("figures", "The batch"),
};

/* The ratios have theirs in name.c. */
static const struct { const char *key, *name; } names[] = {
  { "raw_mass_g", NC_("figure", "Raw weight") },
  { "baked_mass_g", NC_("figure", "Baked weight") },
  { "added_fat_g", NC_("figure", "Added fat, as weighed") },
  { "fat_g", NC_("figure", "Fat") },
  { "salt_g", NC_("figure", "Salt") },
  { "sugars_g", NC_("figure", "Sugars") },
  { "energy_kj", NC_("figure", "Energy") },
  { "energy_kcal", NC_("figure", "Energy") },
  { "added_water_percent", NC_("figure", "Hydration, added water") },
  { "roll_in_percent_of_flour", NC_("figure", "Roll-in, on flour") },
  { "roll_in_percent_of_total", NC_("figure", "Roll-in, of the whole") },
  { "roll_in_fat_percent_of_flour", NC_("figure", "Roll-in fat, on flour") },
  { "fat_layers", NC_("figure", "Fat layers") },
  { "dough_layers", NC_("figure", "Dough layers") },
  { "bands", NC_("figure", "All layers") },
  { "fat_volume_fraction", NC_("figure", "Fat, by volume") },
  { "fat_layer_um.min", NC_("figure", "Fat layer, thinnest") },
  { "fat_layer_um.max", NC_("figure", "Fat layer, thickest") },
  { "dough_layer_um.min", NC_("figure", "Inner dough layer, thinnest") },
  { "dough_layer_um.max", NC_("figure", "Inner dough layer, thickest") },
  { "dough_layer_um.outer", NC_("figure", "Outer dough layer") },
  { "layers_across", NC_("figure", "Fat layers across the rolled piece") },
  { "worst_stretch", NC_("figure", "Greatest stretch in one go") },
  { "thickness_mm", NC_("figure", "Sheet, thickness") },
  { "length_mm", NC_("figure", "Sheet, length") },
  { "width_mm", NC_("figure", "Sheet, width") },
  { "sheets", NC_("figure", "Sheets") },
  { "count", NC_("figure", "Pieces") },
  { "scrap_percent", NC_("figure", "Scrap") },
  { "diameter_mm", NC_("figure", "Rolled piece, diameter") },
  { "windings", NC_("figure", "Windings") },
  { "trays.loads", NC_("figure", "Oven loads") },
  { "hands_minutes", NC_("figure", "Hands-on") },
  { "minutes", NC_("figure", "From mixing to cooled") },
  { "cost", NC_("figure", "Cost of a piece") },
  { "flour_g", NC_("figure", "Flour") },
  { "dough_g", NC_("figure", "Dough without the roll-in") },
  { "roll_in_g", NC_("figure", "Roll-in") },
  { "total_g", NC_("figure", "Weight of everything") },
};

const char *
tr_words_figure_group (TrFigureGroup group)
{
  g_return_val_if_fail (group < TR_N_GROUPS, NULL);

  return g_dpgettext2 (GETTEXT_PACKAGE, "figures", groups[group]);
}

const char *
tr_words_comparable (const TrComparable *comparable)
{
  const char *key, *dot;

  g_return_val_if_fail (comparable != NULL, NULL);

  for (int ratio = 0; ratio < TR_N_RATIOS; ratio++)
    if (g_str_equal (tr_ratio_key ((TrRatio) ratio), comparable->key))
      return tr_words_ratio ((TrRatio) ratio);

  /* What is in 100 g is called what it is called in a piece. */
  dot = strchr (comparable->key, '.');
  key = comparable->group == TR_GROUP_PER_100G && dot != NULL ? dot + 1 : comparable->key;
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    if (g_str_equal (names[i].key, key))
      return g_dpgettext2 (GETTEXT_PACKAGE, "figure", names[i].name);

  return comparable->key;
}

/* What sets it apart from others of that name; NULL: there are none. */
static const char *
get_qualifier (const TrComparable *comparable)
{
  if (comparable->group == TR_GROUP_PIECE && comparable->measure == TR_MEASURE_ENERGY_KJ)
    return _("a piece, kJ");
  if (comparable->group == TR_GROUP_PIECE && comparable->measure == TR_MEASURE_ENERGY_KCAL)
    return _("a piece, kcal");
  if (comparable->group == TR_GROUP_PIECE)
    return _("a piece");
  if (comparable->group == TR_GROUP_PER_100G && comparable->measure == TR_MEASURE_ENERGY_KJ)
    return _("100 g raw, kJ");
  if (comparable->group == TR_GROUP_PER_100G && comparable->measure == TR_MEASURE_ENERGY_KCAL)
    return _("100 g raw, kcal");
  if (comparable->group == TR_GROUP_PER_100G)
    return _("100 g raw");
  if (comparable->group == TR_GROUP_BATCH)
    return _("of the batch");
  if (comparable->group == TR_GROUP_TIME)
    return _("as written");
  if (g_str_equal (comparable->key, "salt_percent") || g_str_equal (comparable->key, "sugar_percent"))
    return _("on flour");

  return NULL;
}

char *
tr_words_comparable_in_full (const TrComparable *comparable)
{
  const char *name = tr_words_comparable (comparable), *qualifier = get_qualifier (comparable);

  /* Translators: a figure, and what sets it apart: “Salt, a piece” */
  return qualifier != NULL ? g_strdup_printf (_("%s, %s"), name, qualifier) : g_strdup (name);
}

static gboolean
is_length (const TrComparable *comparable)
{
  return comparable->measure == TR_MEASURE_LENGTH_MM;
}

/* Parts of 100 g stay grams. */
static gboolean
is_reader_mass (const TrComparable *comparable)
{
  return comparable->measure == TR_MEASURE_MASS_G && comparable->group != TR_GROUP_PER_100G;
}

const char *
tr_words_comparable_unit (const TrReader     *reader,
                          const TrComparable *comparable,
                          const TrBench      *bench)
{
  g_return_val_if_fail (reader != NULL && comparable != NULL && bench != NULL, NULL);

  switch (comparable->measure)
    {
    case TR_MEASURE_MASS_G:
      return is_reader_mass (comparable) ? tr_words_mass_unit (reader) : _("g");
    case TR_MEASURE_ENERGY_KJ:
      return _("kJ");
    case TR_MEASURE_ENERGY_KCAL:
      return _("kcal");
    case TR_MEASURE_PERCENT:
    case TR_MEASURE_SHARE:
      return "%";
    case TR_MEASURE_THICKNESS_UM:
      return _("µm");
    case TR_MEASURE_LENGTH_MM:
      return tr_words_length_unit (reader);
    case TR_MEASURE_MONEY:
      return bench->currency;
    case TR_MEASURE_COUNT:
    case TR_MEASURE_TIMES:
    case TR_MEASURE_MINUTES:
    case TR_N_MEASURES:
    default:
      return "";
    }
}

double
tr_words_comparable_in_unit (const TrReader     *reader,
                             const TrComparable *comparable,
                             double              value)
{
  if (comparable->measure == TR_MEASURE_SHARE)
    return 100 * value;
  if (tr_say_is_us (reader) && is_reader_mass (comparable))
    return value / TR_GRAMS_PER_OUNCE;
  if (tr_say_is_us (reader) && is_length (comparable))
    return value / TR_MM_PER_INCH;

  return value;
}

static int
get_decimals (const TrReader     *reader,
              const TrComparable *comparable)
{
  if (tr_say_is_us (reader) && is_reader_mass (comparable))
    return comparable->decimals + MORE_DECIMALS_OF_OUNCES;
  if (tr_say_is_us (reader) && is_length (comparable))
    return comparable->decimals + MORE_DECIMALS_OF_INCHES;

  return comparable->decimals;
}

char *
tr_words_comparable_number (const TrReader     *reader,
                            const TrComparable *comparable,
                            double              value)
{
  g_return_val_if_fail (reader != NULL && comparable != NULL, NULL);

  if (comparable->measure == TR_MEASURE_MINUTES)
    return tr_words_minutes (reader, value);

  return tr_words_number (reader, tr_words_comparable_in_unit (reader, comparable, value), get_decimals (reader, comparable));
}

char *
tr_words_comparable_value (const TrReader     *reader,
                           const TrComparable *comparable,
                           const TrBench      *bench,
                           double              value)
{
  const char *unit = tr_words_comparable_unit (reader, comparable, bench);
  char *number = tr_words_comparable_number (reader, comparable, value);

  return *unit == '\0' || !isfinite (value) ? number : tr_say_with_unit (number, unit);
}

/* "+1.3", "−1.3", "0.0" → "0" */
static char *
dup_signed (char   *magnitude,
            double  difference)
{
  g_autofree char *owned = magnitude;

  if (strpbrk (magnitude, "123456789") == NULL)
    return g_strdup ("0");

  return g_strconcat (difference > 0 ? "+" : TR_MINUS, magnitude, NULL);
}

char *
tr_words_comparable_difference (const TrReader     *reader,
                                const TrComparable *comparable,
                                double              value,
                                double              reference)
{
  double difference = value - reference;

  if (!isfinite (difference))
    return g_strdup (TR_NOT_KNOWN);

  return dup_signed (tr_words_comparable_number (reader, comparable, fabs (difference)), difference);
}

char *
tr_words_relative_difference (const TrReader *reader,
                              double          value,
                              double          reference)
{
  double percent = 100 * (value - reference) / fabs (reference);
  int decimals = fabs (percent) < 9.95 ? 1 : 0;

  if (!isfinite (percent))
    return g_strdup (TR_NOT_KNOWN);

  return tr_say_with_unit (dup_signed (tr_words_number (reader, fabs (percent), decimals), percent), "%");
}

/* For other programs */

/* Of the number as it stands in the report, whatever the reader's units. */
static const char *
get_plain_unit (const TrComparable *comparable,
                const TrBench      *bench)
{
  static const char *const units[TR_N_MEASURES] = {
    [TR_MEASURE_MASS_G] = "g", [TR_MEASURE_ENERGY_KJ] = "kJ", [TR_MEASURE_ENERGY_KCAL] = "kcal", [TR_MEASURE_PERCENT] = "%",
    [TR_MEASURE_THICKNESS_UM] = "µm", [TR_MEASURE_LENGTH_MM] = "mm", [TR_MEASURE_MINUTES] = "min",
  };

  if (comparable->measure == TR_MEASURE_MONEY)
    return bench->currency;

  return units[comparable->measure] != NULL ? units[comparable->measure] : "";
}

static char *
dup_head (const TrFigures *figures,
          const guint     *doughs,
          guint            n_doughs,
          guint            index)
{
  const TrDough *dough = tr_figures_get_dough (figures, doughs[index])->dough;
  g_autofree char *name = tr_words_one_line (dough->name);

  for (guint i = 0; i < n_doughs; i++)
    if (i != index && g_strcmp0 (tr_figures_get_dough (figures, doughs[i])->dough->name, dough->name) == 0)
      return g_strdup_printf ("%s (%s)", name, dough->id);

  return g_steal_pointer (&name);
}

static char *
dup_digits (double value)
{
  GString *out = g_string_new (NULL);

  if (isfinite (value))
    tr_digits_append (out, value);

  return g_string_free (out, FALSE);
}

static void
add_row (TrTextTable        *table,
         const TrComparable *comparable,
         const TrFigures    *figures,
         const guint        *doughs,
         guint               n_doughs)
{
  char **row = g_new0 (char *, table->n_columns + 1);

  row[0] = g_strdup (comparable->key);
  row[1] = g_strdup (get_plain_unit (comparable, figures->trial->bench));
  for (guint i = 0; i < n_doughs; i++)
    row[2 + i] = dup_digits (tr_comparable_get (comparable, tr_figures_get_dough (figures, doughs[i])));
  g_ptr_array_add (table->rows, row);
}

TrTextTable *
tr_words_comparison_table (const TrFigures *figures,
                           const guint     *doughs,
                           guint            n_doughs)
{
  TrTextTable *table = g_new0 (TrTextTable, 1);
  g_autofree guint *every = NULL;
  const TrComparable *comparables;
  char **head;
  guint n;

  g_return_val_if_fail (figures != NULL, NULL);

  if (doughs == NULL)
    {
      n_doughs = figures->doughs->len;
      every = g_new (guint, n_doughs + 1);
      for (guint i = 0; i < n_doughs; i++)
        every[i] = i;
      doughs = every;
    }
  table->n_columns = 2 + n_doughs;
  table->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  head = g_new0 (char *, table->n_columns + 1);
  head[0] = g_strdup ("key");
  head[1] = g_strdup ("unit");
  for (guint i = 0; i < n_doughs; i++)
    head[2 + i] = dup_head (figures, doughs, n_doughs, i);
  g_ptr_array_add (table->rows, head);

  comparables = tr_comparables_get_all (&n);
  for (guint i = 0; i < n; i++)
    add_row (table, &comparables[i], figures, doughs, n_doughs);

  return table;
}
