/* test-findings.c: each finding is made by what it says, and by nothing else
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A dough of our own with nothing wrong; each row changes one thing.
 */

#include "calc/findings.h"

#include "doughs.h"

static const char *const lines[] = {
  "d flour-bread 500 g", "d water 260 g", "d sugar 50 g", "d salt 10 g", "d yeast-fresh 20 g",
  "d butter-unsalted 30 g", "r butter-unsalted 250 g", NULL
};

static TrTrial *
sound_trial (void)
{
  TrTrial *trial = tr_trial_new ();
  TrDough *dough = test_dough_new (lines);

  dough->batch_by = TR_BATCH_PIECES;
  dough->batch_value = 12;
  dough->lock_in = tr_lock_in_new ();
  g_ptr_array_add (dough->turns, tr_turn_new (3, 8));
  g_ptr_array_add (dough->turns, tr_turn_new (3, 8));
  dough->cut = tr_cut_new ();
  g_ptr_array_add (trial->doughs, dough);

  return trial;
}

static TrLine *
line_of (TrDough *dough,
         guint    index)
{
  return tr_dough_get_line (dough, index);
}

static void
write_amount (TrDough    *dough,
              guint       index,
              const char *amount)
{
  tr_set_text (&line_of (dough, index)->amount, amount);
}

static void
write_ingredient (TrDough    *dough,
                  guint       index,
                  const char *ingredient)
{
  tr_set_text (&line_of (dough, index)->ingredient, ingredient);
}

static void
add_line (TrDough    *dough,
          TrStage     stage,
          const char *ingredient,
          const char *amount)
{
  g_ptr_array_add (dough->lines, tr_line_new (stage, ingredient, amount));
}

static TrStep *
add_step (TrDough *dough,
          TrStepId id,
          double   minutes)
{
  TrStep *step = tr_step_new (id);

  step->minutes = minutes;
  g_ptr_array_add (dough->method->steps, step);

  return step;
}

typedef void (*Change) (TrTrial *trial,
                        TrDough *dough);

#define CHANGE(name) static void change_##name (TrTrial *trial, TrDough *dough)

CHANGE (no_flour) { g_ptr_array_remove_index (dough->lines, 0); }
CHANGE (no_lines) { g_ptr_array_set_size (dough->lines, 0); }
CHANGE (ladle) { write_amount (dough, 1, "2 ladles"); }
CHANGE (no_fat) { g_ptr_array_remove_index (dough->lines, 6); }
CHANGE (thickness_0) { dough->lock_in->fat_thickness_mm = 0; }
CHANGE (wide_rim) { dough->lock_in->style = TR_STYLE_INVERSE; dough->lock_in->rim_mm = 150; }
CHANGE (long_trim) { tr_dough_get_turn (dough, 1)->trim_mm = 200; }
CHANGE (thick_turn) { tr_dough_get_turn (dough, 0)->thickness_mm = 60; }
CHANGE (thick_sheet) { dough->cut->thickness_mm = 27; }
CHANGE (little_dough) { dough->batch_by = TR_BATCH_TOTAL_G; dough->batch_value = 40; }
CHANGE (range) { write_amount (dough, 1, "255-265 g"); }
CHANGE (bare_percent) { write_amount (dough, 6, "50 %"); }
CHANGE (all_percent)
{
  const char *const amounts[] = { "100 %", "52 %", "10 %", "2 %", "4 %", "6 %", "50 %" };

  for (guint i = 0; i < G_N_ELEMENTS (amounts); i++)
    write_amount (dough, i, amounts[i]);
}
CHANGE (thin_turn) { tr_dough_get_turn (dough, 1)->thickness_mm = 2; trial->bench->worktop_mm[0] = 5000; }
CHANGE (thin_sheet) { dough->cut->thickness_mm = 2.5; }
CHANGE (short_worktop) { trial->bench->worktop_mm[0] = 450; dough->batch_value = 3; tr_dough_get_turn (dough, 0)->thickness_mm = 3; }
CHANGE (long_sheet) { dough->cut->rows = 1; dough->cut->height_mm = 950; }
CHANGE (slim_rollers) { trial->bench->roll_width_max_mm = 200; }
CHANGE (narrow_rollers) { trial->bench->roll_thickness_max_mm = 20; }
CHANGE (small_mixer) { trial->bench->mixer_max_g = 200; }
CHANGE (salty) { write_amount (dough, 3, "14 g"); }
CHANGE (bland) { write_amount (dough, 3, "5 g"); }
CHANGE (salted_butter) { write_ingredient (dough, 6, "butter-salted"); write_amount (dough, 3, "11 g"); }
CHANGE (wet) { write_amount (dough, 1, "350 g"); }
CHANGE (sweet) { write_amount (dough, 2, "100 g"); }
CHANGE (many_folds) { for (int i = 0; i < 3; i++) g_ptr_array_add (dough->turns, tr_turn_new (4, 8)); }
CHANGE (few_folds) { g_ptr_array_set_size (dough->turns, 1); tr_dough_get_turn (dough, 0)->fold = 2; }
CHANGE (long_stretch)
{
  tr_dough_get_turn (dough, 0)->thickness_mm = 6;
  dough->lock_in->fat_thickness_mm = 12;
  trial->bench->worktop_mm[0] = 5000;
}
CHANGE (hot_proof) { add_step (dough, TR_STEP_PROOF, 120)->at_c = 30; }
CHANGE (printed)
{
  dough->cut->printed_sheet_mm[0] = 300;
  dough->cut->printed_sheet_mm[1] = 250;
}
CHANGE (printed_count) { dough->batch_by = TR_BATCH_WRITTEN; dough->pieces_written = 30; }
CHANGE (lean_butter)
{
  TrOwnIngredient *own = tr_own_ingredient_new ("butter-lean", "butter-unsalted");

  own->per_100g[TR_PART_FAT] = 78;
  own->per_100g[TR_PART_WATER] = 15;
  g_ptr_array_add (trial->pantry->own, own);
  write_ingredient (dough, 6, "butter-lean");
}
CHANGE (lean_danish) { dough->kind = TR_KIND_DANISH; }
CHANGE (lean_puff) { dough->kind = TR_KIND_PUFF; }
CHANGE (spoon_salt) { write_amount (dough, 3, "2 tsp"); }
CHANGE (spoon_yeast) { write_ingredient (dough, 4, "yeast-instant"); write_amount (dough, 4, "2 tsp"); }
CHANGE (cream_after_baking)
{
  add_line (dough, TR_STAGE_FINISH, "cream-heavy", "100 g");
  add_step (dough, TR_STEP_BAKE, 20);
  add_step (dough, TR_STEP_FINISH, 10);
  add_step (dough, TR_STEP_COOL, 240);
}
CHANGE (milk_sponge)
{
  add_line (dough, TR_STAGE_PREFERMENT, "milk-whole", "20 g");
  add_step (dough, TR_STEP_RIPEN, 300);
  add_step (dough, TR_STEP_BAKE, 20);
}
CHANGE (milk_dough)
{
  add_line (dough, TR_STAGE_DOUGH, "milk-whole", "20 g");
  add_step (dough, TR_STEP_BULK, 90)->max_minutes = 120;
  add_step (dough, TR_STEP_PROOF, 150);
  add_step (dough, TR_STEP_BAKE, 20);
}
CHANGE (spare) { dough->batch_value = 11; dough->cut->rows = 2; }
CHANGE (nothing) { (void) trial; (void) dough; }

/* value or limit NaN: not looked at; name NULL: none. */
static const struct {
  const char *row;
  Change change;
  TrFindingId id;
  TrSeverity severity;
  const char *where, *name;
  double value, limit;
} rows[] = {
  { "no-flour", change_no_flour, TR_FINDING_NO_FLOUR, TR_SEVERITY_STOP, "/lines", NULL, NAN, NAN },
  { "no-lines", change_no_lines, TR_FINDING_NO_FLOUR, TR_SEVERITY_STOP, "/lines", NULL, NAN, NAN },
  { "ladle", change_ladle, TR_FINDING_NOT_WEIGHED, TR_SEVERITY_STOP, "/lines/1/amount", "water", NAN, NAN },
  { "no-fat", change_no_fat, TR_FINDING_LOCK_IN_GEOMETRY, TR_SEVERITY_STOP, "/lines", "no-fat", 0, 0 },
  { "thickness-0", change_thickness_0, TR_FINDING_LOCK_IN_GEOMETRY, TR_SEVERITY_STOP,
    "/lock_in/fat_thickness_mm", "fat-thickness", 0, 0 },
  { "wide-rim", change_wide_rim, TR_FINDING_LOCK_IN_GEOMETRY, TR_SEVERITY_STOP, "/lock_in/rim_mm", "dough-length", NAN, 0 },
  { "long-trim", change_long_trim, TR_FINDING_LOCK_IN_GEOMETRY, TR_SEVERITY_STOP, "/turns/1/trim_mm", "trim", NAN, 0 },
  { "thick-turn", change_thick_turn, TR_FINDING_TURN_THICKER, TR_SEVERITY_STOP, "/turns/0/thickness_mm", NULL, 60, NAN },
  { "thick-sheet", change_thick_sheet, TR_FINDING_TURN_THICKER, TR_SEVERITY_STOP, "/cut/thickness_mm", NULL, 25.92, 24 },
  { "little-dough", change_little_dough, TR_FINDING_NO_PIECE, TR_SEVERITY_STOP, "/cut", NULL, 39.2, NAN },
  { "range", change_range, TR_FINDING_AMOUNT, TR_SEVERITY_NOTE, "/lines/1/amount", "mean", 260, NAN },
  { "bare-percent", change_bare_percent, TR_FINDING_AMOUNT, TR_SEVERITY_NOTE, "/lines/6/amount", "bare-percent", 50, NAN },
  { "all-percent", change_all_percent, TR_FINDING_AMOUNT, TR_SEVERITY_NOTE, "/lines", "assumed-flour", 1000, NAN },
  { "thin-turn", change_thin_turn, TR_FINDING_TOO_THIN, TR_SEVERITY_STOP, "/turns/1/thickness_mm", NULL, 2, 2.5 },
  { "thin-sheet", change_thin_sheet, TR_FINDING_TOO_THIN, TR_SEVERITY_STOP, "/cut/thickness_mm", NULL, 2.4, 2.5 },
  { "short-worktop", change_short_worktop, TR_FINDING_TOO_LONG, TR_SEVERITY_STOP, "/turns/0/thickness_mm",
    "worktop-length", NAN, 450 },
  { "long-sheet", change_long_sheet, TR_FINDING_TOO_LONG, TR_SEVERITY_STOP, "/cut/rows", "worktop-length", 966, 900 },
  { "slim-rollers", change_slim_rollers, TR_FINDING_TOO_LONG, TR_SEVERITY_STOP, "/lock_in/blocks", "roll-width", NAN, 200 },
  { "narrow-rollers", change_narrow_rollers, TR_FINDING_TOO_THICK, TR_SEVERITY_WARN, "/turns/0/thickness_mm", NULL, 24, 20 },
  { "small-mixer", change_small_mixer, TR_FINDING_MIXER, TR_SEVERITY_WARN, "/batch/value", NULL, NAN, 200 },
  { "salty", change_salty, TR_FINDING_SALT, TR_SEVERITY_WARN, "/lines/3/amount", NULL, NAN, 2.4 },
  { "bland", change_bland, TR_FINDING_SALT, TR_SEVERITY_WARN, "/lines/3/amount", NULL, NAN, 1.6 },
  { "salted-butter", change_salted_butter, TR_FINDING_SALT, TR_SEVERITY_WARN, "/lines/3/amount", "butter-salted", NAN, 2.4 },
  { "wet", change_wet, TR_FINDING_BAND, TR_SEVERITY_NOTE, "/lines/1/amount", "all_water_percent", NAN, 64 },
  { "sweet", change_sweet, TR_FINDING_BAND, TR_SEVERITY_NOTE, "/lines/2/amount", "sugar_percent", NAN, 14 },
  { "many-folds", change_many_folds, TR_FINDING_FAT_LAYER, TR_SEVERITY_NOTE, "/turns", NULL, NAN, 15 },
  { "few-folds", change_few_folds, TR_FINDING_FAT_LAYER, TR_SEVERITY_NOTE, "/turns", NULL, NAN, 200 },
  /* 116 µm: usual in a croissant, much in puff pastry */
  { "coarse-puff", change_lean_puff, TR_FINDING_FAT_LAYER, TR_SEVERITY_NOTE, "/turns", NULL, NAN, 100 },
  { "long-stretch", change_long_stretch, TR_FINDING_STRETCH, TR_SEVERITY_NOTE, "/lock_in/fat_thickness_mm", "length", NAN, 4 },
  { "hot-proof", change_hot_proof, TR_FINDING_PROOF_HOT, TR_SEVERITY_WARN, "/method/steps/0/at_c", "butter-unsalted", 30, 28 },
  { "printed", change_printed, TR_FINDING_PRINTED_SIZE, TR_SEVERITY_WARN, "/cut/printed_sheet_mm", NULL, NAN, 4 },
  { "printed-count", change_printed_count, TR_FINDING_PRINTED_COUNT, TR_SEVERITY_NOTE, "/pieces_written", NULL, NAN, 30 },
  { "lean-butter", change_lean_butter, TR_FINDING_BUTTER_LEGAL, TR_SEVERITY_NOTE, "/lines/6/ingredient", "butter-lean", 78, 80 },
  /* the table's mean butter, USDA 01145, has 17.94 g of water */
  { "table-butter", change_nothing, TR_FINDING_BUTTER_LEGAL, TR_SEVERITY_NOTE, "/lines/5/ingredient", "butter-unsalted",
    81.11, 80 },
  /* 250 g of butter on 500 g of flour; a fat counts whole, not what is fat in it */
  { "lean-danish", change_lean_danish, TR_FINDING_LEGAL_MINIMUM, TR_SEVERITY_NOTE, "/lines/6/amount", "danish", 50, 60 },
  { "lean-puff", change_lean_puff, TR_FINDING_LEGAL_MINIMUM, TR_SEVERITY_NOTE, "/lines/6/amount", "puff", 50, 62 },
  { "spoon-salt", change_spoon_salt, TR_FINDING_SPOON_SALT, TR_SEVERITY_NOTE, "/lines/3/amount", "salt", 12, NAN },
  { "spoon-yeast", change_spoon_yeast, TR_FINDING_SPOON_YEAST, TR_SEVERITY_NOTE, "/lines/4/amount", "yeast-instant", 8, NAN },
  { "cream-after-baking", change_cream_after_baking, TR_FINDING_COLD_CHAIN, TR_SEVERITY_WARN, "/lines/7/ingredient",
    "cream-heavy", 250.0 / 60, 4 },
  { "milk-sponge", change_milk_sponge, TR_FINDING_COLD_CHAIN, TR_SEVERITY_WARN, "/lines/7/ingredient", "milk-whole", 5, 4 },
  /* 120 of bulk, 150 of proof, two turns of 10 */
  { "milk-dough", change_milk_dough, TR_FINDING_COLD_CHAIN, TR_SEVERITY_NOTE, "/lines/7/ingredient", "milk-whole",
    290.0 / 60, 4 },
  { "spare", change_spare, TR_FINDING_SPARE, TR_SEVERITY_NOTE, "/batch/value", NULL, 1, 11 },
  { "allergens", change_nothing, TR_FINDING_ALLERGENS, TR_SEVERITY_NOTE, "/lines", "gluten-wheat,milk", 2, NAN },
};

static const TrFinding *
find (const TrDoughFigures *figures,
      TrFindingId           id,
      const char           *where)
{
  for (guint i = 0; i < figures->findings->len; i++)
    {
      const TrFinding *finding = figures->findings->pdata[i];

      if (finding->id == id && (where == NULL || g_str_equal (finding->where, where)))
        return finding;
    }

  return NULL;
}

static TrFigures *
figures_after (Change change)
{
  g_autoptr (TrTrial) trial = sound_trial ();

  change (trial, tr_trial_get_dough (trial, 0));

  return tr_figures_compute (trial, NULL);
}

static void
assert_value (double value,
              double expected)
{
  if (!isnan (expected))
    g_assert_cmpfloat_with_epsilon (value, expected, 1e-6);
}

static void
test_each_finding_holds_its_numbers (gconstpointer data)
{
  guint row = GPOINTER_TO_UINT (data);
  g_autoptr (TrFigures) figures = figures_after (rows[row].change);
  const TrFinding *finding = find (tr_figures_get_dough (figures, 0), rows[row].id, rows[row].where);

  g_assert_nonnull (finding);
  g_assert_cmpint (finding->severity, ==, rows[row].severity);
  g_assert_cmpstr (finding->name, ==, rows[row].name);
  assert_value (finding->value, rows[row].value);
  assert_value (finding->limit, rows[row].limit);
}

static void
test_sound_dough_has_only_notes (void)
{
  g_autoptr (TrFigures) figures = figures_after (change_nothing);
  const GPtrArray *findings = tr_figures_get_dough (figures, 0)->findings;

  g_assert_cmpuint (findings->len, ==, 2);
  g_assert_cmpint (((TrFinding *) findings->pdata[0])->id, ==, TR_FINDING_ALLERGENS);
  g_assert_cmpint (((TrFinding *) findings->pdata[1])->id, ==, TR_FINDING_BUTTER_LEGAL);
}

/* No row makes a finding of an id that no row of its own change explains: a
 * sound dough has none of them. */
static void
test_no_finding_without_its_cause (void)
{
  g_autoptr (TrFigures) figures = figures_after (change_nothing);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (rows[i].change != change_nothing && rows[i].id != TR_FINDING_BUTTER_LEGAL)
      g_assert_null (find (tr_figures_get_dough (figures, 0), rows[i].id, NULL));
}

static int
place_of (const GPtrArray *findings,
          TrFindingId      id)
{
  for (guint i = 0; i < findings->len; i++)
    if (((TrFinding *) findings->pdata[i])->id == id)
      return (int) i;

  g_error ("no finding %s", tr_finding_id (id));
}

static void
test_worst_come_first_then_document_order (void)
{
  g_autoptr (TrTrial) trial = sound_trial ();
  TrDough *dough = tr_trial_get_dough (trial, 0);

  change_salty (trial, dough);
  change_ladle (trial, dough);
  change_thick_turn (trial, dough);
  change_hot_proof (trial, dough);
  change_spoon_yeast (trial, dough);

  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const GPtrArray *findings = tr_figures_get_dough (figures, 0)->findings;
  for (guint i = 1; i < findings->len; i++)
    g_assert_cmpint (((TrFinding *) findings->pdata[i - 1])->severity, >=, ((TrFinding *) findings->pdata[i])->severity);

  const TrFindingId in_order[] = { TR_FINDING_NOT_WEIGHED, TR_FINDING_TURN_THICKER, TR_FINDING_TOO_LONG, TR_FINDING_SALT,
                                   TR_FINDING_TOO_THICK, TR_FINDING_PROOF_HOT, TR_FINDING_SPOON_YEAST };
  for (guint i = 1; i < G_N_ELEMENTS (in_order); i++)
    g_assert_cmpint (place_of (findings, in_order[i - 1]), <, place_of (findings, in_order[i]));
}

/* What is proposed must help: done, the finding is gone. */
static void
test_thickness_proposed_for_a_long_turn_fits (void)
{
  g_autoptr (TrTrial) trial = sound_trial ();
  TrDough *dough = tr_trial_get_dough (trial, 0);

  change_short_worktop (trial, dough);

  g_autoptr (TrFigures) before = tr_figures_compute (trial, NULL);
  const TrFinding *finding = find (tr_figures_get_dough (before, 0), TR_FINDING_TOO_LONG, "/turns/0/thickness_mm");
  g_assert_cmpfloat (finding->with[1], >, 3);
  g_assert_cmpfloat (finding->with[3], >, 3);

  tr_dough_get_turn (dough, 0)->thickness_mm = finding->with[1];
  g_autoptr (TrFigures) after = tr_figures_compute (trial, NULL);
  g_assert_null (find (tr_figures_get_dough (after, 0), TR_FINDING_TOO_LONG, "/turns/0/thickness_mm"));
}

static void
test_blocks_proposed_for_a_long_turn_fit (void)
{
  g_autoptr (TrTrial) trial = sound_trial ();
  TrDough *dough = tr_trial_get_dough (trial, 0);

  dough->batch_by = TR_BATCH_TOTAL_G;
  dough->batch_value = 6000;

  g_autoptr (TrFigures) before = tr_figures_compute (trial, NULL);
  const TrFinding *finding = find (tr_figures_get_dough (before, 0), TR_FINDING_TOO_LONG, "/turns/0/thickness_mm");
  g_assert_nonnull (finding);
  g_assert_cmpfloat (finding->with[2], >=, 2);

  dough->lock_in->blocks = (int) finding->with[2];
  g_autoptr (TrFigures) after = tr_figures_compute (trial, NULL);
  g_assert_null (find (tr_figures_get_dough (after, 0), TR_FINDING_TOO_LONG, "/turns/0/thickness_mm"));

  dough->lock_in->blocks--;
  g_autoptr (TrFigures) one_less = tr_figures_compute (trial, NULL);
  g_assert_nonnull (find (tr_figures_get_dough (one_less, 0), TR_FINDING_TOO_LONG, "/turns/0/thickness_mm"));
}

static void
test_a_little_too_long_only_warns (void)
{
  g_autoptr (TrTrial) trial = sound_trial ();
  TrDough *dough = tr_trial_get_dough (trial, 0);

  /* a mass, which stays whatever becomes of the sheets */
  dough->batch_by = TR_BATCH_TOTAL_G;
  dough->batch_value = 750;
  g_autoptr (TrFigures) sound = tr_figures_compute (trial, NULL);
  const TrLamination *lamination = &tr_figures_get_dough (sound, 0)->lamination;
  double length = g_array_index (lamination->steps, TrTurnFigures, 0).rolled_mm.mm[0];
  const struct { double worktop; int severity; } cases[] = {
    { length / 1.0299, TR_SEVERITY_WARN }, { length / 1.0301, TR_SEVERITY_STOP },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      trial->bench->worktop_mm[0] = cases[i].worktop;
      g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
      const TrFinding *finding = find (tr_figures_get_dough (figures, 0), TR_FINDING_TOO_LONG, "/turns/0/thickness_mm");
      g_assert_cmpint (finding->severity, ==, cases[i].severity);
    }
}

static void
test_fat_thickness_proposed_brings_the_stretch_to_four (void)
{
  g_autoptr (TrTrial) trial = sound_trial ();
  TrDough *dough = tr_trial_get_dough (trial, 0);

  change_long_stretch (trial, dough);

  g_autoptr (TrFigures) before = tr_figures_compute (trial, NULL);
  const TrFinding *finding = find (tr_figures_get_dough (before, 0), TR_FINDING_STRETCH, NULL);
  g_assert_cmpfloat (finding->with[3], <, 12);

  dough->lock_in->fat_thickness_mm = finding->with[3];
  g_autoptr (TrFigures) after = tr_figures_compute (trial, NULL);
  const TrLamination *lamination = &tr_figures_get_dough (after, 0)->lamination;
  g_assert_cmpfloat_with_epsilon (g_array_index (lamination->steps, TrTurnFigures, 0).stretch, 4, 1e-6);
  g_assert_null (find (tr_figures_get_dough (after, 0), TR_FINDING_STRETCH, "/lock_in/fat_thickness_mm"));
}

static void
test_cold_places_keep_milk (void)
{
  g_autoptr (TrTrial) trial = sound_trial ();
  TrDough *dough = tr_trial_get_dough (trial, 0);

  change_milk_sponge (trial, dough);
  ((TrStep *) dough->method->steps->pdata[0])->place = TR_PLACE_FRIDGE;
  g_autoptr (TrFigures) cold = tr_figures_compute (trial, NULL);
  g_assert_null (find (tr_figures_get_dough (cold, 0), TR_FINDING_COLD_CHAIN, NULL));

  trial->bench->fridge_c = 7;
  g_autoptr (TrFigures) warm = tr_figures_compute (trial, NULL);
  g_assert_nonnull (find (tr_figures_get_dough (warm, 0), TR_FINDING_COLD_CHAIN, NULL));
}

static void
test_printed_size_of_another_count_is_no_finding (void)
{
  g_autoptr (TrTrial) trial = sound_trial ();
  TrDough *dough = tr_trial_get_dough (trial, 0);

  change_printed (trial, dough);
  dough->pieces_written = 30;
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_assert_null (find (tr_figures_get_dough (figures, 0), TR_FINDING_PRINTED_SIZE, NULL));
}

/* Whatever a document may hold, there are figures, and nothing is over read
 * or over run (the suite also runs under the sanitizers). */
static double
odd_number (void)
{
  const double odd[] = { 0, 1e-9, 0.5, 3, 40, 1e4, 1e9, 1e300, NAN };

  return odd[g_test_rand_int_range (0, G_N_ELEMENTS (odd))];
}

static void
write_odd_cut (TrCut *cut)
{
  double *const fields[] = { &cut->base_mm, &cut->height_mm, &cut->width_mm, &cut->length_mm, &cut->side_mm,
                             &cut->diameter_mm, &cut->gap_mm, &cut->slice_mm, &cut->roll_length_mm, &cut->thickness_mm,
                             &cut->piece_mass_g, &cut->trim_mm, &cut->shrink_percent, &cut->stretch_percent,
                             &cut->printed_sheet_mm[0], &cut->printed_sheet_mm[1] };

  cut->shape = (TrShape) g_test_rand_int_range (0, TR_N_SHAPES);
  cut->rows = g_test_rand_bit () ? 0 : g_test_rand_int_range (1, G_MAXINT);
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    if (g_test_rand_bit ())
      *fields[i] = odd_number ();
}

static void
write_odd_bench (TrBench *bench)
{
  double *const fields[] = { &bench->worktop_mm[0], &bench->worktop_mm[1], &bench->roll_width_max_mm,
                             &bench->roll_thickness_min_mm, &bench->roll_thickness_max_mm, &bench->tray_mm[0],
                             &bench->piece_gap_mm, &bench->mixer_max_g };

  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    if (g_test_rand_int_range (0, 4) == 0)
      *fields[i] = odd_number ();
}

static void
write_odd_dough (TrDough *dough)
{
  double *const fields[] = { &dough->lock_in->fat_thickness_mm, &dough->lock_in->fat_width_mm, &dough->lock_in->rim_mm,
                             &dough->lock_in->fat_density_g_ml, &dough->dough_density_g_ml, &dough->batch_value,
                             &dough->handling_loss_percent };

  dough->lock_in->style = (TrStyle) g_test_rand_int_range (0, TR_N_STYLES);
  dough->lock_in->blocks = g_test_rand_bit () ? 1 : g_test_rand_int_range (1, 1000);
  dough->batch_by = (TrBatchBy) g_test_rand_int_range (0, TR_N_BATCHES);
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    if (g_test_rand_int_range (0, 3) == 0)
      *fields[i] = odd_number ();
  for (int i = g_test_rand_int_range (0, 11); i > 0; i--)
    {
      g_ptr_array_add (dough->turns, tr_turn_new (g_test_rand_int_range (2, 7), odd_number ()));
      tr_dough_get_turn (dough, dough->turns->len - 1)->trim_mm = g_test_rand_bit () ? 0 : odd_number ();
    }
}

static void
test_odd_documents_have_figures (void)
{
  for (int i = 0; i < 500; i++)
    {
      g_autoptr (TrTrial) trial = sound_trial ();
      TrDough *dough = tr_trial_get_dough (trial, 0);

      write_odd_dough (dough);
      write_odd_cut (dough->cut);
      write_odd_bench (trial->bench);
      g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
      g_assert_nonnull (find (tr_figures_get_dough (figures, 0), TR_FINDING_ALLERGENS, NULL));
    }
}

static void
test_ids_are_those_of_the_report (void)
{
  g_assert_cmpstr (tr_finding_id (TR_FINDING_NO_FLOUR), ==, "no-flour");
  g_assert_cmpstr (tr_finding_id (TR_FINDING_LEGAL_MINIMUM), ==, "legal-minimum");
  g_assert_cmpstr (tr_finding_id (TR_FINDING_ALLERGENS), ==, "allergens");
  g_assert_cmpstr (tr_severity_id (TR_SEVERITY_NOTE), ==, "note");
  g_assert_cmpstr (tr_severity_id (TR_SEVERITY_STOP), ==, "stop");
  for (guint i = 0; i < TR_N_FINDINGS; i++)
    g_assert_nonnull (tr_finding_id ((TrFindingId) i));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/findings/row/", rows[i].row, NULL);

      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_each_finding_holds_its_numbers);
    }
  g_test_add_func ("/findings/sound-dough-has-only-notes", test_sound_dough_has_only_notes);
  g_test_add_func ("/findings/none-without-its-cause", test_no_finding_without_its_cause);
  g_test_add_func ("/findings/worst-first-then-document-order", test_worst_come_first_then_document_order);
  g_test_add_func ("/findings/thickness-proposed-fits", test_thickness_proposed_for_a_long_turn_fits);
  g_test_add_func ("/findings/blocks-proposed-fit", test_blocks_proposed_for_a_long_turn_fit);
  g_test_add_func ("/findings/a-little-too-long-only-warns", test_a_little_too_long_only_warns);
  g_test_add_func ("/findings/fat-thickness-proposed-helps", test_fat_thickness_proposed_brings_the_stretch_to_four);
  g_test_add_func ("/findings/cold-places-keep-milk", test_cold_places_keep_milk);
  g_test_add_func ("/findings/printed-size-of-another-count", test_printed_size_of_another_count_is_no_finding);
  g_test_add_func ("/findings/odd-documents-have-figures", test_odd_documents_have_figures);
  g_test_add_func ("/findings/ids-are-those-of-the-report", test_ids_are_those_of_the_report);

  return g_test_run ();
}
