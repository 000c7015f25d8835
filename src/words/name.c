/* name.c: what kinds, stages, folds, shapes, steps and allergens are called
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every name stands once, in the order of its enumeration, with the context a
 * translator needs. The words are the trade's own.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "say.h"

static const char *const kinds[TR_N_KINDS] = {
  [TR_KIND_CROISSANT] = NC_("kind of dough", "Croissant dough"),
  [TR_KIND_DANISH] = NC_("kind of dough", "Danish dough"),
  [TR_KIND_PUFF] = NC_("kind of dough", "Puff pastry"),
  [TR_KIND_OTHER] = NC_("kind of dough", "Other laminated dough"),
};

static const char *const stages[TR_N_STAGES] = {
  [TR_STAGE_PREFERMENT] = NC_("stage", "Preferment"),
  [TR_STAGE_DOUGH] = NC_("stage", "Dough"),
  [TR_STAGE_ROLL_IN] = NC_("stage", "Roll-in"),
  [TR_STAGE_FINISH] = NC_("stage", "Finish"),
};

static const char *const styles[TR_N_STYLES] = {
  [TR_STYLE_HALF] = NC_("lock-in", "Half"),
  [TR_STYLE_GATE] = NC_("lock-in", "Gate"),
  [TR_STYLE_ENVELOPE] = NC_("lock-in", "Envelope"),
  [TR_STYLE_LETTER] = NC_("lock-in", "Letter"),
  [TR_STYLE_INVERSE] = NC_("lock-in", "Inverse"),
};

static const char *const styles_how[TR_N_STYLES] = {
  [TR_STYLE_HALF] = NC_("lock-in", "Lay the fat on one half of the dough, rim left free, fold the other half over it "
                                   "and press the open sides shut."),
  [TR_STYLE_GATE] = NC_("lock-in", "Lay the fat across the middle, fold both ends over it so that they meet without "
                                   "overlapping, and press the seam and the sides shut."),
  [TR_STYLE_ENVELOPE] = NC_("lock-in", "Lay the fat square in the middle, its corners towards the sides of the dough, "
                                       "fold the four corners of the dough to the middle and press the seams shut."),
  [TR_STYLE_LETTER] = NC_("lock-in", "Cover two thirds of the dough with the fat; fold the bare third over the fat "
                                     "first, then the other third with its fat on top, and press the sides shut."),
  [TR_STYLE_INVERSE] = NC_("lock-in", "Lay the dough block on one half of the fat sheet, rim left free, fold the other "
                                      "half of the fat over it and press the open sides shut."),
};

static const char *const shapes[TR_N_SHAPES] = {
  [TR_SHAPE_TRIANGLE] = NC_("shape of a piece", "Triangle"),
  [TR_SHAPE_RIGHT_TRIANGLE] = NC_("shape of a piece", "Right triangle"),
  [TR_SHAPE_RECTANGLE] = NC_("shape of a piece", "Rectangle"),
  [TR_SHAPE_SQUARE] = NC_("shape of a piece", "Square"),
  [TR_SHAPE_ROUND] = NC_("shape of a piece", "Round"),
  [TR_SHAPE_SLICES] = NC_("shape of a piece", "Slices of a roll"),
};

static const char *const places[TR_N_PLACES] = {
  [TR_PLACE_FRIDGE] = NC_("place", "Fridge"),
  [TR_PLACE_FREEZER] = NC_("place", "Freezer"),
  [TR_PLACE_ROOM] = NC_("place", "Room"),
};

static const char *const steps[TR_N_STEPS] = {
  [TR_STEP_PREFERMENT_MIX] = NC_("step", "Mix the preferment"),
  [TR_STEP_RIPEN] = NC_("step", "Ripen"),
  [TR_STEP_MIX] = NC_("step", "Mix"),
  [TR_STEP_BULK] = NC_("step", "Bulk rise"),
  [TR_STEP_CHILL] = NC_("step", "Chill"),
  [TR_STEP_FAT_BLOCK] = NC_("step", "Fat block"),
  [TR_STEP_LOCK_IN] = NC_("step", "Lock-in"),
  [TR_STEP_TURN] = NC_("step", "Turn"),
  [TR_STEP_REST] = NC_("step", "Rest"),
  [TR_STEP_ROLL_OUT] = NC_("step", "Roll out"),
  [TR_STEP_CUT] = NC_("step", "Cut"),
  [TR_STEP_SHAPE] = NC_("step", "Shape"),
  [TR_STEP_PROOF] = NC_("step", "Proof"),
  [TR_STEP_FINISH] = NC_("step", "Finish"),
  [TR_STEP_BAKE] = NC_("step", "Bake"),
  [TR_STEP_COOL] = NC_("step", "Cool"),
};

static const char *const breaks[TR_N_BREAKS] = {
  NC_("limit of the bench", "longer than the worktop"),
  NC_("limit of the bench", "wider than the worktop"),
  NC_("limit of the bench", "wider than the rollers"),
  NC_("limit of the bench", "thinner than the rollers go"),
  NC_("limit of the bench", "thicker than the rollers open"),
};

static const char *const ratios[TR_N_RATIOS] = {
  [TR_RATIO_ALL_WATER] = NC_("ratio", "Hydration, all water"),
  [TR_RATIO_DOUGH_FAT] = NC_("ratio", "Fat in the dough"),
  [TR_RATIO_ROLL_IN_OF_DOUGH] = NC_("ratio", "Roll-in, of the dough"),
  [TR_RATIO_SALT] = NC_("ratio", "Salt"),
  [TR_RATIO_SUGAR] = NC_("ratio", "Sugar"),
  [TR_RATIO_YEAST_FRESH] = NC_("ratio", "Yeast, as fresh"),
  [TR_RATIO_PREFERMENTED] = NC_("ratio", "Prefermented flour"),
};

static const char *const severities[] = {
  [TR_SEVERITY_NOTE] = NC_("severity", "Note"),
  [TR_SEVERITY_WARN] = NC_("severity", "Warning"),
  [TR_SEVERITY_STOP] = NC_("severity", "Stop"),
};

static const char *
translated (const char *context,
            const char *name)
{
  return g_dpgettext2 (GETTEXT_PACKAGE, context, name);
}

const char *
tr_words_kind (TrKind kind)
{
  g_return_val_if_fail (kind < TR_N_KINDS, NULL);
  return translated ("kind of dough", kinds[kind]);
}

const char *
tr_words_stage (TrStage stage)
{
  g_return_val_if_fail (stage < TR_N_STAGES, NULL);
  return translated ("stage", stages[stage]);
}

const char *
tr_words_style (TrStyle style)
{
  g_return_val_if_fail (style < TR_N_STYLES, NULL);
  return translated ("lock-in", styles[style]);
}

const char *
tr_words_style_how (TrStyle style)
{
  g_return_val_if_fail (style < TR_N_STYLES, NULL);
  return translated ("lock-in", styles_how[style]);
}

char *
tr_words_fold (int fold)
{
  switch (fold)
    {
    case 2: return g_strdup (_("half fold (2)"));
    case 3: return g_strdup (_("letter fold (3)"));
    case 4: return g_strdup (_("book fold (4)"));
    default: return g_strdup_printf (_("fold in %d"), fold);
    }
}

const char *
tr_words_shape (TrShape shape)
{
  g_return_val_if_fail (shape < TR_N_SHAPES, NULL);
  return translated ("shape of a piece", shapes[shape]);
}

const char *
tr_words_place (TrPlace place)
{
  g_return_val_if_fail (place < TR_N_PLACES, NULL);
  return translated ("place", places[place]);
}

const char *
tr_words_fault (TrFault fault)
{
  static const char *const names[TR_N_FAULTS] = {
    [TR_FAULT_DENSE] = N_("Dense"),
    [TR_FAULT_BREAD_LIKE_CRUMB] = N_("Bread-like crumb"),
    [TR_FAULT_FAT_POOLED] = N_("Fat pooled"),
    [TR_FAULT_GUMMY] = N_("Gummy"),
    [TR_FAULT_LAYERS_MERGED] = N_("Layers merged"),
    [TR_FAULT_SIDE_BURST] = N_("Side burst"),
    [TR_FAULT_SHRUNK] = N_("Shrunk"),
    [TR_FAULT_DARK_OUTSIDE] = N_("Dark outside, raw inside"),
    [TR_FAULT_GREASY_BASE] = N_("Greasy base"),
    [TR_FAULT_YEASTY] = N_("Yeasty"),
    [TR_FAULT_FLAT] = N_("Flat"),
  };

  g_return_val_if_fail ((guint) fault < TR_N_FAULTS, "");

  return _(names[fault]);
}

const char *
tr_words_step (TrStepId step)
{
  g_return_val_if_fail (step < TR_N_STEPS, NULL);
  return translated ("step", steps[step]);
}

const char *
tr_words_break (TrBreaks one)
{
  int bit = g_bit_nth_lsf ((unsigned long) one, -1);

  g_return_val_if_fail (bit >= 0 && bit < TR_N_BREAKS, NULL);
  return translated ("limit of the bench", breaks[bit]);
}

const char *
tr_words_ratio (TrRatio ratio)
{
  g_return_val_if_fail (ratio < TR_N_RATIOS, NULL);
  return translated ("ratio", ratios[ratio]);
}

const char *
tr_words_severity (TrSeverity severity)
{
  g_return_val_if_fail (severity < G_N_ELEMENTS (severities), NULL);
  return translated ("severity", severities[severity]);
}

/* The name of a built-in is translated (ingredient-names.c lists them for the
 * translators); the baker's own name stands as it was written. */
const char *
tr_words_ingredient (const TrIngredient *ingredient)
{
  const TrIngredient *builtin;

  g_return_val_if_fail (ingredient != NULL, NULL);

  builtin = tr_builtin_find (ingredient->base_id);
  if (builtin != NULL && g_strcmp0 (builtin->name, ingredient->name) == 0)
    return translated ("ingredient", builtin->name);
  return ingredient->name;
}

const char *
tr_words_fat (const TrFormula *formula)
{
  return formula->all_fat_is_butter ? _("butter") : _("fat");
}

char *
tr_words_letter (guint index)
{
  g_autofree char *before = index >= 26 ? tr_words_letter (index / 26 - 1) : g_strdup ("");

  return g_strdup_printf ("%s%c", before, 'A' + (int) (index % 26));
}
