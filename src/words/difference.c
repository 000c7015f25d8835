/* difference.c: what was written otherwise in one dough than in another
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "comparison.h"
#include "difference.h"
#include "say.h"

/* What a member is called beside the name of its part; those of a name of
 * their own, which stand alone, have `alone`. */
static const struct { const char *member, *name; gboolean alone; } names[] = {
  { "kind", N_("Kind"), TRUE },
  { "pieces_written", N_("Pieces written"), TRUE },
  { "batch/by", N_("Batch by"), TRUE },
  { "batch/value", N_("Batch"), TRUE },
  { "handling_loss_percent", N_("Handling loss"), TRUE },
  { "bake_loss_percent", N_("Bake loss"), TRUE },
  { "dough_density_g_ml", N_("Density of the dough"), TRUE },
  { "hydration_percent", N_("hydration"), FALSE },
  { "fat_thickness_mm", N_("Fat block, thickness"), TRUE },
  { "fat_width_mm", N_("Fat block, width"), TRUE },
  { "rim_mm", N_("Rim"), TRUE },
  { "blocks", N_("Blocks"), TRUE },
  { "fat_density_g_ml", N_("Density of the fat"), TRUE },
  { "min", N_("at least"), FALSE },
  { "max", N_("at most"), FALSE },
  { "place", N_("place"), FALSE },
  { "on", N_("lying on"), FALSE },
  { "start_c", N_("from"), FALSE },
  { "target_c", N_("down to"), FALSE },
  { "thickness_mm", N_("thickness"), FALSE },
  { "length_mm", N_("length"), FALSE },
  { "width_mm", N_("width"), FALSE },
  { "trim_mm", N_("trim"), FALSE },
  { "minutes", N_("time"), FALSE },
  { "base_mm", N_("base"), FALSE },
  { "height_mm", N_("height"), FALSE },
  { "side_mm", N_("side"), FALSE },
  { "diameter_mm", N_("diameter"), FALSE },
  { "gap_mm", N_("gap"), FALSE },
  { "slice_mm", N_("slice"), FALSE },
  { "roll_length_mm", N_("length of the log"), FALSE },
  { "piece_mass_g", N_("weight of a piece"), FALSE },
  { "shrink_percent", N_("shrinking"), FALSE },
  { "rows", N_("rows"), FALSE },
  { "stretch_percent", N_("stretching"), FALSE },
  { "rolled_up", N_("rolled up"), FALSE },
  { "printed_sheet_mm/0", N_("printed length"), FALSE },
  { "printed_sheet_mm/1", N_("printed width"), FALSE },
  { "dough_c", N_("Dough temperature"), TRUE },
  { "flour_c", N_("Flour temperature"), TRUE },
  { "preferment_c", N_("Preferment temperature"), TRUE },
  { "liquids_c", N_("Temperature of the other liquids"), TRUE },
  { "tap_c", N_("Tap water temperature"), TRUE },
  { "friction_c", N_("Friction"), TRUE },
  { "friction_n", N_("Friction is of so many temperatures"), TRUE },
  { "at_c", N_("temperature"), FALSE },
  { "rh_percent", N_("humidity"), FALSE },
};

static const char *
name_of_batch (TrBatchBy by)
{
  switch (by)
    {
    case TR_BATCH_WRITTEN: return _("as written");
    case TR_BATCH_PIECES: return _("pieces");
    case TR_BATCH_FLOUR_G: return _("weight of the flour");
    case TR_BATCH_DOUGH_G: return _("weight of the dough");
    case TR_BATCH_TOTAL_G: return _("weight of it all");
    case TR_N_BATCHES:
    default: g_return_val_if_reached ("");
    }
}

/* One of the two values. */
static char *
say_value (const TrReader *reader,
           TrDiffersIn       measure,
           double          value)
{
  if (isnan (value))
    return g_strdup (_("not written"));

  switch (measure)
    {
    case TR_DIFFERS_IN_NUMBER: return tr_say_trimmed (reader, value, 3);
    case TR_DIFFERS_IN_COUNT: return tr_words_count (reader, value);
    case TR_DIFFERS_IN_G: return tr_words_mass (reader, value);
    case TR_DIFFERS_IN_MM: return tr_words_length (reader, value);
    case TR_DIFFERS_IN_C: return tr_words_temperature (reader, value);
    case TR_DIFFERS_IN_WARMING_C: return tr_words_warming (reader, value);
    case TR_DIFFERS_IN_MINUTES: return tr_words_minutes (reader, value);
    case TR_DIFFERS_IN_PERCENT: return tr_say_with_unit (tr_say_trimmed (reader, value, 2), "%");
    case TR_DIFFERS_IN_G_ML: return tr_say_with_unit (tr_say_trimmed (reader, value, 3), _("g/ml"));
    case TR_DIFFERS_IN_FLAG: return g_strdup (value > 0 ? _("yes") : _("no"));
    case TR_DIFFERS_IN_KIND: return g_strdup (tr_words_kind ((TrKind) value));
    case TR_DIFFERS_IN_BATCH: return g_strdup (name_of_batch ((TrBatchBy) value));
    case TR_DIFFERS_IN_STYLE: return g_strdup (tr_words_style ((TrStyle) value));
    case TR_DIFFERS_IN_PLACE: return g_strdup (tr_words_place ((TrPlace) value));
    case TR_DIFFERS_IN_ON: return g_strdup ((TrOn) value == TR_ON_RACK ? _("a rack") : _("a board"));
    case TR_DIFFERS_IN_SHAPE: return g_strdup (tr_words_shape ((TrShape) value));
    case TR_DIFFERS_IN_FOLD: return tr_words_fold ((int) value);
    case TR_DIFFERS_IN_TEXT: case TR_N_DIFFERS_IN:
    default: g_return_val_if_reached (g_strdup (""));
    }
}

static char *
say_ingredient (const TrPantry *pantry,
                const char     *id)
{
  TrIngredient ingredient;

  if (id == NULL)
    return g_strdup (_("something not understood"));

  return tr_ingredient_resolve (pantry, id, &ingredient) ? tr_words_one_line (tr_words_ingredient (&ingredient)) : tr_say_quote (id);
}

/* "Proof", "Rest after turn 2", "Salt" */
static char *
say_part (const TrPantry     *pantry,
          const TrDifference *difference)
{
  int number = difference->index + 1;

  switch (difference->part)
    {
    case TR_PART_OF_LINE:
      {
        g_autofree char *name = say_ingredient (pantry, difference->ingredient);

        if (difference->what == TR_STAGE_DOUGH)
          return g_steal_pointer (&name);
        /* Translators: the stage and the ingredient: "Roll-in, Butter" */
        return g_strdup_printf (_("%s, %s"), tr_words_stage ((TrStage) difference->what), name);
      }
    case TR_PART_OF_LOCKING_IN: return g_strdup (_("Lock-in"));
    case TR_PART_OF_CHILL: return g_strdup (_("Chill before lock-in"));
    case TR_PART_OF_ONE_TURN: return g_strdup_printf (_("Turn %d"), number);
    case TR_PART_OF_REST: return g_strdup_printf (_("Rest after turn %d"), number);
    case TR_PART_OF_CUT: return g_strdup (_("Cut"));
    case TR_PART_OF_STEP: return g_strdup (tr_words_step ((TrStepId) difference->what));
    case TR_PART_OF_DOUGH_ITSELF: case TR_PART_OF_METHOD: case TR_N_DOUGH_PARTS:
    default: return g_strdup ("");
    }
}

/* What the two values are of. Where the part has one thing that matters it is
 * said by the part alone: the amount of a line, the fold of a turn. */
static char *
say_what (const TrPantry     *pantry,
          const TrDifference *difference)
{
  static const char *const plain[] = { "amount", "ingredient", "fold", "style", "shape" };
  g_autofree char *part = say_part (pantry, difference);

  for (guint i = 0; i < G_N_ELEMENTS (plain); i++)
    if (g_str_equal (difference->member, plain[i]))
      return g_steal_pointer (&part);
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (g_str_equal (difference->member, names[i].member))
      /* Translators: a part of the dough, and what of it: "Proof, temperature" */
      return names[i].alone ? g_strdup (_(names[i].name)) : g_strdup_printf (_("%s, %s"), part, _(names[i].name));

  g_return_val_if_reached (g_steal_pointer (&part));
}

static char *
say_text (const TrPantry     *pantry,
          const TrDifference *difference,
          const char         *text)
{
  if (g_str_equal (difference->member, "ingredient"))
    return say_ingredient (pantry, text);

  return text != NULL && *text != '\0' ? tr_words_one_line (text) : g_strdup (_("nothing"));
}

static char *
say_changed (const TrReader     *reader,
             const TrPantry     *pantry,
             const TrDifference *difference)
{
  gboolean is_text = difference->measure == TR_DIFFERS_IN_TEXT;
  g_autofree char *what = NULL;
  g_autofree char *was = is_text ? say_text (pantry, difference, difference->text_was)
                                 : say_value (reader, difference->measure, difference->was);
  g_autofree char *is = is_text ? say_text (pantry, difference, difference->text_is)
                                : say_value (reader, difference->measure, difference->is);

  if (g_str_equal (difference->member, "ingredient"))
    what = g_strdup (tr_words_stage ((TrStage) difference->what));
  else
    what = say_what (pantry, difference);

  /* Translators: what, as it was, as it is: "Proof, temperature: 31 °C → 28 °C" */
  return g_strdup_printf (_("%s: %s → %s"), what, was, is);
}

/* What of the whole is worth saying; NULL: nothing. */
static char *
say_whole (const TrReader     *reader,
           const TrDifference *difference)
{
  gboolean is_added = difference->kind == TR_DIFFERENCE_ADDED;
  const char *text = is_added ? difference->text_is : difference->text_was;
  double value = is_added ? difference->is : difference->was;

  if (difference->part == TR_PART_OF_ONE_TURN)
    return tr_words_fold (difference->what);
  if (text != NULL && *text != '\0')
    return tr_words_one_line (text);

  return isnan (value) ? NULL : say_value (reader, difference->measure, value);
}

char *
tr_words_difference (const TrReader     *reader,
                     const TrPantry     *pantry,
                     const TrDifference *difference)
{
  g_autofree char *part = NULL, *whole = NULL;

  if (difference->kind == TR_DIFFERENCE_CHANGED)
    return say_changed (reader, pantry, difference);

  part = say_part (pantry, difference);
  whole = say_whole (reader, difference);
  if (difference->kind == TR_DIFFERENCE_ADDED)
    /* Translators: "Turn 4 added: letter fold (3)" */
    return whole != NULL ? g_strdup_printf (_("%s added: %s"), part, whole) : g_strdup_printf (_("%s added"), part);

  return whole != NULL ? g_strdup_printf (_("%s left out: %s"), part, whole) : g_strdup_printf (_("%s left out"), part);
}

GPtrArray *
tr_words_figure_differences (const TrReader       *reader,
                             const TrDoughFigures *was,
                             const TrDoughFigures *is)
{
  GPtrArray *texts = g_ptr_array_new_with_free_func (g_free);
  guint n;
  const TrComparable *all = tr_comparables_get_all (&n);

  for (guint i = 0; i < n; i++)
    {
      double before = tr_comparable_get (&all[i], was), after = tr_comparable_get (&all[i], is);
      g_autofree char *from = tr_words_comparable_value (reader, &all[i], was->bench, before);
      g_autofree char *to = tr_words_comparable_value (reader, &all[i], is->bench, after);
      g_autofree char *name = tr_words_comparable_in_full (&all[i]);

      if (!g_str_equal (from, to))
        g_ptr_array_add (texts, g_strdup_printf (_("%s: %s → %s"), name, from, to));
    }

  return texts;
}
