/* test-cause.c: what the tasters found is said with the number that points there
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"

#include "words/cause.h"
#include "words/difference.h"

typedef struct {
  TrReadingId id;
  TrSide side;
  double value, low, high, at;
  const char *name;
  const char *metric, *us;       /* us NULL: the same */
} Row;

static const Row rows[] = {
  { TR_READING_PROOF_OF_FAT_C, TR_SIDE_OVER, 31, NAN, 28, NAN, "butter-unsalted",
    "Proof at 31" NB "°C; this butter should stay at 28" NB "°C or less.",
    "Proof at 88" NB "°F; this butter should stay at 82" NB "°F or less." },
  { TR_READING_PROOF_OF_FAT_C, TR_SIDE_OVER, 38, NAN, 36, NAN, "margarine-pastry",
    "Proof at 38" NB "°C; this fat should stay at 36" NB "°C or less.",
    "Proof at 100" NB "°F; this fat should stay at 97" NB "°F or less." },
  /* so near that whole degrees would look alike */
  { TR_READING_PROOF_OF_FAT_C, TR_SIDE_OVER, 28.2, NAN, 28, NAN, "butter-unsalted",
    "Proof at 28.2" NB "°C; this butter should stay at 28" NB "°C or less.",
    "Proof at 83" NB "°F; this butter should stay at 82" NB "°F or less." },
  { TR_READING_PROOF_C, TR_SIDE_UNDER, 22, 26, 30, NAN, NULL,
    "Proof at 22" NB "°C; usual is 26" NB "°C to 30" NB "°C.", "Proof at 72" NB "°F; usual is 79" NB "°F to 86" NB "°F." },
  { TR_READING_PROOF_MINUTES, TR_SIDE_UNDER, 60, 83.97, 167.9, 27, NULL,
    "A proof of 1" NB "h at 27" NB "°C; usual is 1" NB "h" NB "25 to 2" NB "h" NB "45 when it is that warm.",
    "A proof of 1" NB "h at 81" NB "°F; usual is 1" NB "h" NB "25 to 2" NB "h" NB "45 when it is that warm." },
  { TR_READING_BULK_MINUTES, TR_SIDE_OVER, 180, NAN, 120, 24, NULL,
    "A bulk rise of 3" NB "h at 24" NB "°C; usual is at most 2" NB "h when it is that warm.",
    "A bulk rise of 3" NB "h at 75" NB "°F; usual is at most 2" NB "h when it is that warm." },
  { TR_READING_MIXED_C, TR_SIDE_OVER, 29, NAN, 26, NAN, NULL,
    "The dough is mixed to 29" NB "°C; usual is at most 26" NB "°C.", "The dough is mixed to 84" NB "°F; usual is at most 79" NB "°F." },
  { TR_READING_ROOM_C, TR_SIDE_OVER, 24, NAN, 17, NAN, "butter-salted",
    "The room is at 24" NB "°C; this butter is soft from 17" NB "°C.", "The room is at 75" NB "°F; this butter is soft from 63" NB "°F." },
  { TR_READING_REST_MINUTES, TR_SIDE_UNDER, 15, 30, NAN, 2, NULL,
    "A rest of 15" NB "min after turn 2; usual is at least 30" NB "min.", NULL },
  { TR_READING_CORE_C, TR_SIDE_OVER, 18.4, NAN, 17, 1, "butter-unsalted",
    "The core is still at 18" NB "°C after the rest of turn 1; this butter is soft from 17" NB "°C.",
    "The core is still at 65" NB "°F after the rest of turn 1; this butter is soft from 63" NB "°F." },
  { TR_READING_WINDOW_MINUTES, TR_SIDE_UNDER, 6.7, 10, NAN, 3, NULL,
    "The fat can be rolled for at most 6" NB "min, and turn 3 takes 10" NB "min.", NULL },
  { TR_READING_WINDOW_MINUTES, TR_SIDE_UNDER, 6.7, 10, NAN, 0, NULL,
    "The fat can be rolled for at most 6" NB "min, and rolling the sheet takes 10" NB "min.", NULL },
  { TR_READING_BAKE_C, TR_SIDE_OVER, 230, 170, 210, NAN, NULL,
    "Baked at 230" NB "°C; usual is 170" NB "°C to 210" NB "°C.", "Baked at 446" NB "°F; usual is 338" NB "°F to 410" NB "°F." },
  { TR_READING_BAKE_MINUTES, TR_SIDE_UNDER, 9, 12.6, 19.8, 51.3, NULL,
    "A bake of 9" NB "min; usual is 13" NB "min to 19" NB "min for a raw piece of 51" NB "g.",
    "A bake of 9" NB "min; usual is 13" NB "min to 19" NB "min for a raw piece of 1.81" NB "oz." },
  { TR_READING_SHEET_MM, TR_SIDE_UNDER, 2.5, 3, 6, NAN, NULL,
    "The sheet is 2.5" NB "mm thick; usual is 3" NB "mm to 6" NB "mm.", NULL },
  { TR_READING_STRETCH, TR_SIDE_OVER, 4.6, NAN, 4, 1, NULL,
    "Turn 1 stretches the block 4.6 times in one go; usual is at most 4 times.", NULL },
  { TR_READING_STRETCH, TR_SIDE_OVER, 4.6, NAN, 4, 0, NULL,
    "The roll-out to the sheet stretches 4.6 times in one go; usual is at most 4 times.", NULL },
  { TR_READING_FAT_LAYERS, TR_SIDE_UNDER, 1, 16, 50, NAN, NULL, "1 fat layer; usual is 16 to 50.", NULL },
  { TR_READING_FAT_LAYERS, TR_SIDE_OVER, 81, 16, 50, NAN, NULL, "81 fat layers; usual is 16 to 50.", NULL },
  { TR_READING_FAT_LAYER_UM, TR_SIDE_UNDER, 9.3, 15, 200, NAN, NULL,
    "Fat layers of 9" NB "µm; usual is 15" NB "µm to 200" NB "µm.", NULL },
  { TR_READING_ALL_WATER, TR_SIDE_OVER, 66, 46, 64, NAN, NULL,
    "All water at 66" NB "% of the flour; usual is 46" NB "% to 64" NB "%.", NULL },
  { TR_READING_ROLL_IN, TR_SIDE_UNDER, 20.04, 22, 38, NAN, NULL,
    "Roll-in at 20" NB "% of the dough; usual is 22" NB "% to 38" NB "%.", NULL },
  { TR_READING_YEAST, TR_SIDE_OVER, 7.25, 2, 6, NAN, NULL,
    "Yeast, counted as fresh, at 7.3" NB "% of the flour; usual is 2" NB "% to 6" NB "%.", NULL },
  { TR_READING_SALT, TR_SIDE_OVER, 2.6, 1.6, 2.4, NAN, NULL,
    "Effective salt at 2.6" NB "% of the flour; usual is 1.6" NB "% to 2.4" NB "%.", NULL },
  { TR_READING_SUGAR, TR_SIDE_UNDER, 1, 3, 14, NAN, NULL,
    "Sugar at 1" NB "% of the flour; usual is 3" NB "% to 14" NB "%.", NULL },
  { TR_READING_SALT_MIDDLE, TR_SIDE_OVER, 2.3, 2, 2, 0.8, NULL,
    "Effective salt at 2.3" NB "% of the flour, in the upper half of the usual 1.6" NB "% to 2.4" NB "%.", NULL },
  { TR_READING_SUGAR_MIDDLE, TR_SIDE_UNDER, 5, 8.5, 8.5, 11, NULL,
    "Sugar at 5" NB "% of the flour, in the lower half of the usual 3" NB "% to 14" NB "%.", NULL },
  { TR_READING_SALTED_FAT, TR_SIDE_OVER, 0.8, NAN, 0.3, NAN, "butter-salted",
    "Butter, salted brings salt, 0.8" NB "% of the flour, into the 2.7" NB "% there are.", NULL },
};

static TrCause
cause_of (const Row *row)
{
  return (TrCause) {
    .complaint = TR_FAULT_FAT_POOLED, .side = row->side, .limit = row->side == TR_SIDE_OVER ? row->high : row->low,
    .beside = -1,
    .reading = { .id = row->id, .value = row->value, .low = row->low, .high = row->high, .at = row->at, .name = (char *) row->name },
  };
}

static void
check_row (const Row   *row,
           TrReader     reader,
           const char  *expected)
{
  g_autoptr (TrTrial) trial = tr_trial_new ();
  TrDoughFigures figures = { .pantry = trial->pantry, .formula.salt_percent = 2.7 };
  TrComplaint complaint = { TR_FAULT_FAT_POOLED, 3, 4, NAN };
  TrCause cause = cause_of (row);
  g_autofree char *text = tr_words_cause (&reader, &figures, NULL, &cause);
  g_autofree char *whole = tr_words_cause (&reader, &figures, &complaint, &cause);

  check_sentence (text);
  check_sentence (whole);
  g_assert_cmpstr (text, ==, expected);
  g_assert_true (g_str_has_prefix (whole, "Fat pooled, three of four tasters: "));
  g_assert_true (g_str_has_suffix (whole, g_utf8_next_char (expected)));
}

static void
test_cause_says_its_number_and_its_end (gconstpointer data)
{
  const Row *row = data;

  check_row (row, plain (TR_UNITS_METRIC), row->metric);
  if (row->us != NULL)
    check_row (row, plain (TR_UNITS_US), row->us);
}

static void
test_every_reading_has_a_row (void)
{
  for (guint id = 0; id < TR_N_READINGS; id++)
    {
      gboolean has_row = FALSE;

      for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
        has_row = has_row || rows[i].id == (TrReadingId) id;
      g_assert_true (has_row);
    }
}

/* What the trial's other doughs tell. */
static void
test_a_dough_found_just_right_is_named (void)
{
  static const struct { Row row; const char *text; } cases[] = {
    { { TR_READING_SALT, TR_SIDE_OVER, 1.96, NAN, 1.7, NAN, "Window squares", NULL, NULL },
      "Effective salt at 2" NB "% of the flour; in “Window squares”, found just right, it is 1.7" NB "%." },
    { { TR_READING_BAKE_C, TR_SIDE_UNDER, 190, 200, NAN, NAN, "B", NULL, NULL },
      "Baked at 190" NB "°C; in “B”, found just right, it is 200" NB "°C." },
    { { TR_READING_BAKE_MINUTES, TR_SIDE_OVER, 22, NAN, 18, 51, "B", NULL, NULL },
      "A bake of 22" NB "min; in “B”, found just right, it is 18" NB "min." },
  };
  TrReader reader = plain (TR_UNITS_METRIC);
  g_autoptr (TrTrial) trial = tr_trial_new ();
  TrDoughFigures figures = { .pantry = trial->pantry };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TrCause cause = cause_of (&cases[i].row);
      g_autofree char *text = NULL;

      cause.beside = 1;
      text = tr_words_cause (&reader, &figures, NULL, &cause);
      check_sentence (text);
      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

static void
test_what_was_logged_is_said_to_be (void)
{
  TrReader reader = plain (TR_UNITS_METRIC);
  g_autoptr (TrTrial) trial = tr_trial_new ();
  TrDoughFigures figures = { .pantry = trial->pantry };
  TrCause cause = cause_of (&rows[0]);
  g_autofree char *text = NULL;

  cause.reading.is_logged = TRUE;
  text = tr_words_cause (&reader, &figures, NULL, &cause);
  check_sentence (text);
  g_assert_cmpstr (text, ==, "Proof at 31" NB "°C (logged); this butter should stay at 28" NB "°C or less.");
}

static void
test_whole_sentence (void)
{
  TrReader reader = plain (TR_UNITS_METRIC);
  g_autoptr (TrTrial) trial = tr_trial_new ();
  TrDoughFigures figures = { .pantry = trial->pantry };
  TrComplaint complaint = { TR_FAULT_FAT_POOLED, 3, 4, NAN };
  TrCause cause = cause_of (&rows[0]);
  g_autofree char *text = tr_words_cause (&reader, &figures, &complaint, &cause);

  g_assert_cmpstr (text, ==, "Fat pooled, three of four tasters: proof at 31" NB "°C; this butter should stay at 28" NB "°C or less.");
}

static void
test_complaints_are_counted_in_words (void)
{
  static const struct { TrComplaint complaint; const char *text; } cases[] = {
    { { TR_FAULT_GUMMY, 1, 1, NAN }, "Gummy, the one taster" },
    { { TR_FAULT_GUMMY, 1, 4, NAN }, "Gummy, one of four tasters" },
    { { TR_FAULT_GUMMY, 4, 4, NAN }, "Gummy, all four tasters" },
    { { TR_COMPLAINT_SALT_MUCH, 2, 3, 1 }, "Too salty, two of three tasters" },
    { { TR_COMPLAINT_SALT_LITTLE, 2, 3, -1 }, "Not salty enough, two of three tasters" },
    { { TR_COMPLAINT_SWEET_MUCH, 14, 20, 1 }, "Too sweet, 14 of 20 tasters" },
    { { TR_COMPLAINT_BAKE_LITTLE, 2, 3, -1 }, "Baked too little, two of three tasters" },
  };
  TrReader reader = plain (TR_UNITS_METRIC);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = tr_words_complaint (&reader, &cases[i].complaint);
      g_autofree char *none = tr_words_no_cause (&reader, &cases[i].complaint);

      g_assert_cmpstr (text, ==, cases[i].text);
      check_sentence (none);
      g_assert_true (g_str_has_prefix (none, text));
    }

  g_autofree char *none = tr_words_no_cause (&reader, NULL);

  check_sentence (none);
  for (guint id = 0; id < TR_N_COMPLAINTS; id++)
    {
      TrComplaint complaint = { id, 2, 3, NAN };
      g_autofree char *text = tr_words_complaint (&reader, &complaint);

      check_text (text);
      if (tr_words_caution (id) != NULL)
        check_sentence (tr_words_caution (id));
    }
  /* Raw flour and egg: the usual caution. */
  g_assert_nonnull (tr_words_caution (TR_FAULT_DARK_OUTSIDE));
  g_assert_null (tr_words_caution (TR_FAULT_FLAT));
}

static void
test_remedies_are_said_for_a_button (void)
{
  static const struct { TrRemedy remedy; const char *text; } cases[] = {
    { { TR_REMEDY_PROOF_C, TR_SIDE_OVER, 28, 0, TR_RATIO_SALT, FALSE }, "Proof at 28" NB "°C" },
    { { TR_REMEDY_PROOF_MINUTES, TR_SIDE_UNDER, 85, 0, TR_RATIO_SALT, FALSE }, "Proof at least 1" NB "h" NB "25" },
    { { TR_REMEDY_PROOF_MINUTES, TR_SIDE_OVER, 165, 0, TR_RATIO_SALT, FALSE }, "Proof at most 2" NB "h" NB "45" },
    { { TR_REMEDY_BULK_MINUTES, TR_SIDE_OVER, 120, 0, TR_RATIO_SALT, FALSE }, "Let the bulk rise at most 2" NB "h" },
    { { TR_REMEDY_MIXED_C, TR_SIDE_OVER, 26, 0, TR_RATIO_SALT, FALSE }, "Mix to 26" NB "°C" },
    { { TR_REMEDY_BAKE_C, TR_SIDE_OVER, 210, 0, TR_RATIO_SALT, FALSE }, "Bake at 210" NB "°C" },
    { { TR_REMEDY_BAKE_MINUTES, TR_SIDE_UNDER, 13, 0, TR_RATIO_SALT, FALSE }, "Bake 13" NB "min" },
    { { TR_REMEDY_REST_MINUTES, TR_SIDE_UNDER, 30, 2, TR_RATIO_SALT, FALSE }, "Rest 30" NB "min after turn 2" },
    { { TR_REMEDY_TURN_MM, TR_SIDE_OVER, 8.5, 1, TR_RATIO_SALT, FALSE }, "Roll turn 1 to 8.5" NB "mm" },
    { { TR_REMEDY_SHEET_MM, TR_SIDE_UNDER, 3, 0, TR_RATIO_SALT, FALSE }, "Roll the sheet to 3" NB "mm" },
    { { TR_REMEDY_FOLD, TR_SIDE_OVER, 3, 2, TR_RATIO_SALT, FALSE }, "Make turn 2 a letter fold (3)" },
    { { TR_REMEDY_DROP_TURN, TR_SIDE_OVER, NAN, 4, TR_RATIO_SALT, FALSE }, "Leave out turn 4" },
    { { TR_REMEDY_ADD_TURN, TR_SIDE_UNDER, 3, 3, TR_RATIO_SALT, FALSE }, "Add a letter fold (3)" },
    { { TR_REMEDY_RATIO, TR_SIDE_OVER, 2, 0, TR_RATIO_SALT, FALSE }, "Bring salt to 2" NB "%" },
    { { TR_REMEDY_RATIO, TR_SIDE_UNDER, 2, 0, TR_RATIO_SALT, TRUE }, "Add salt, 2" NB "%" },
  };
  TrReader reader = plain (TR_UNITS_METRIC);
  const TrRemedy none = { .kind = TR_REMEDY_NONE, .target = NAN };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = tr_words_remedy (&reader, &cases[i].remedy);

      check_text (text);
      g_assert_cmpstr (text, ==, cases[i].text);
    }
  g_assert_null (tr_words_remedy (&reader, &none));
}

/* Differences */

static char *
say_first_difference (TrDough  *was,
                      TrDough  *is,
                      TrReader  reader)
{
  g_autoptr (TrTrial) trial = tr_trial_new ();
  g_autoptr (GPtrArray) differences = tr_dough_differences (was, is);

  g_assert_cmpuint (differences->len, ==, 1);

  return tr_words_difference (&reader, trial->pantry, differences->pdata[0]);
}

typedef void (*Change) (TrDough *dough);
#define CHANGE(name) static void change_##name (TrDough *dough)

CHANGE (amount) { tr_set_text (&tr_dough_get_line (dough, 0)->amount, "9 g"); }
CHANGE (emptied) { tr_set_text (&tr_dough_get_line (dough, 0)->amount, ""); }
CHANGE (fat) { tr_set_text (&tr_dough_get_line (dough, 1)->ingredient, "butter-salted"); }
CHANGE (salt_gone) { g_ptr_array_remove_index (dough->lines, 0); }
CHANGE (egg) { g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_FINISH, "egg-whole", "1 egg")); }
CHANGE (fold) { tr_dough_get_turn (dough, 0)->fold = 4; }
CHANGE (turn) { g_ptr_array_add (dough->turns, tr_turn_new (3, 8)); }
CHANGE (turn_gone) { g_ptr_array_remove_index (dough->turns, 0); }
CHANGE (rest) { tr_dough_get_turn (dough, 0)->rest = tr_rest_new (); tr_dough_get_turn (dough, 0)->rest->min_minutes = 45; }
CHANGE (style) { dough->lock_in->style = TR_STYLE_LETTER; }
CHANGE (proof) { ((TrStep *) tr_dough_find_step (dough, TR_STEP_PROOF))->at_c = 28; }
CHANGE (humid) { ((TrStep *) tr_dough_find_step (dough, TR_STEP_PROOF))->rh_percent = 78; }
CHANGE (cut) { dough->cut->thickness_mm = 3.5; }
CHANGE (cut_gone) { g_clear_pointer (&dough->cut, tr_cut_free); }
CHANGE (friction) { dough->method->friction_c = 10; }

static const struct { const char *row; Change change; const char *metric, *us; } changes[] = {
  { "amount", change_amount, "Salt: 10 g → 9 g", NULL },
  { "emptied", change_emptied, "Salt: 10 g → nothing", NULL },
  { "ingredient", change_fat, "Roll-in: Butter, unsalted → Butter, salted", NULL },
  { "line-left-out", change_salt_gone, "Salt left out: 10 g", NULL },
  { "line-added", change_egg, "Finish, Egg, whole added: 1 egg", NULL },
  { "fold", change_fold, "Turn 1: letter fold (3) → book fold (4)", NULL },
  { "turn-added", change_turn, "Turn 2 added: letter fold (3)", NULL },
  { "turn-left-out", change_turn_gone, "Turn 1 left out: letter fold (3)", NULL },
  { "rest-added", change_rest, "Rest after turn 1 added: 45" NB "min", NULL },
  { "style", change_style, NULL, NULL },
  { "proof", change_proof, "Proof, temperature: 31" NB "°C → 28" NB "°C", "Proof, temperature: 88" NB "°F → 82" NB "°F" },
  { "humidity", change_humid, "Proof, humidity: not written → 78" NB "%", NULL },
  { "cut", change_cut, "Cut, thickness: 4" NB "mm → 3.5" NB "mm", NULL },
  { "cut-left-out", change_cut_gone, "Cut left out", NULL },
  { "friction", change_friction, "Friction: 12.0" NB "°C → 10.0" NB "°C", "Friction: 21.6" NB "°F → 18.0" NB "°F" },
};

static TrDough *
small_dough (void)
{
  TrDough *dough = tr_dough_new ("d1");
  TrStep *proof = tr_step_new (TR_STEP_PROOF);

  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "salt", "10 g"));
  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_ROLL_IN, "butter-unsalted", "250 g"));
  g_clear_pointer (&dough->lock_in, tr_lock_in_free);
  dough->lock_in = tr_lock_in_new ();
  g_clear_pointer (&dough->cut, tr_cut_free);
  dough->cut = tr_cut_new ();
  g_ptr_array_set_size (dough->turns, 0);
  g_ptr_array_add (dough->turns, tr_turn_new (3, 8));
  proof->at_c = 31;
  g_ptr_array_add (dough->method->steps, proof);
  dough->method->friction_c = 12;

  return dough;
}

static void
test_difference_says_both_values (gconstpointer data)
{
  guint row = GPOINTER_TO_UINT (data);
  g_autoptr (TrDough) was = small_dough ();
  g_autoptr (TrDough) is = small_dough ();

  changes[row].change (is);

  g_autofree char *metric = say_first_difference (was, is, plain (TR_UNITS_METRIC));
  g_autofree char *us = say_first_difference (was, is, plain (TR_UNITS_US));

  check_text (metric);
  check_text (us);
  if (changes[row].metric != NULL)
    g_assert_cmpstr (metric, ==, changes[row].metric);
  if (changes[row].us != NULL)
    g_assert_cmpstr (us, ==, changes[row].us);
}

/* Every member that calc compares has a name of its own here. */
static void
test_nothing_that_differs_is_left_without_a_name (void)
{
  TrReader reader = plain (TR_UNITS_METRIC);
  g_autoptr (TrTrial) trial = tr_trial_new ();
  g_autoptr (TrDough) was = small_dough ();
  g_autoptr (TrDough) is = small_dough ();
  double *method = &is->method->dough_c;

  is->kind = TR_KIND_PUFF;
  is->pieces_written = 99;
  is->batch_by = TR_BATCH_TOTAL_G;
  is->batch_value = is->handling_loss_percent = is->bake_loss_percent = is->dough_density_g_ml = 7.5;
  tr_dough_get_line (is, 0)->hydration_percent = 80;
  *is->lock_in = (TrLockIn) { TR_STYLE_INVERSE, 3.5, 99, 98, 7, tr_rest_new (), 0.9, NULL };
  *tr_dough_get_turn (is, 0) = (TrTurn) { 2, 77, 76, 75, 74, 73, tr_rest_new (), NULL };
  was->lock_in->rest = tr_rest_new ();
  tr_dough_get_turn (was, 0)->rest = tr_rest_new ();
  *tr_dough_get_turn (is, 0)->rest = *is->lock_in->rest = (TrRest) { 1, 2, TR_PLACE_FREEZER, TR_ON_RACK, 3, 4, 5, NULL };
  *is->cut = (TrCut) { TR_SHAPE_ROUND, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 0, { 16, 17 }, NULL };
  for (guint i = 0; i < 7; i++)
    method[i] = 40 + i;
  *(TrStep *) tr_dough_find_step (is, TR_STEP_PROOF) = (TrStep) { TR_STEP_PROOF, 1, 2, 3, 4, TR_PLACE_FRIDGE, NULL };

  g_autoptr (GPtrArray) differences = tr_dough_differences (was, is);

  g_assert_cmpuint (differences->len, ==, 7 + 1 + 6 + 7 + 6 + 7 + 19 + 7 + 5);
  for (guint i = 0; i < differences->len; i++)
    {
      g_autofree char *text = tr_words_difference (&reader, trial->pantry, differences->pdata[i]);

      check_text (text);
    }
}

static void
test_figures_that_differ_are_said_with_both_values (void)
{
  TrReader reader = plain (TR_UNITS_METRIC);
  g_autoptr (TrTrial) trial = tr_trial_new ();
  TrDough *was = small_dough (), *is = small_dough ();
  gboolean says_salt = FALSE;

  for (int i = 0; i < 2; i++)
    {
      TrDough *dough = i == 0 ? was : is;

      g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "flour-bread", "500 g"));
      g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "water", "260 g"));
      g_ptr_array_add (trial->doughs, dough);
    }
  tr_set_text (&is->id, "d2");
  tr_set_text (&tr_dough_get_line (is, 0)->amount, "12 g");

  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autoptr (GPtrArray) texts = tr_words_figure_differences (&reader, tr_figures_get_dough (figures, 0), tr_figures_get_dough (figures, 1));
  g_autoptr (GPtrArray) none = tr_words_figure_differences (&reader, tr_figures_get_dough (figures, 0), tr_figures_get_dough (figures, 0));

  g_assert_cmpuint (none->len, ==, 0);
  g_assert_cmpuint (texts->len, >, 0);
  for (guint i = 0; i < texts->len; i++)
    {
      const char *text = texts->pdata[i];
      g_auto (GStrv) values = g_strsplit (strstr (text, ": ") + 2, " → ", 2);

      check_text (text);
      g_assert_cmpstr (values[0], !=, values[1]);
      /* 10 g and 12 g on 500 g of flour, and 250 g of butter with its trace of sodium */
      says_salt = says_salt || (g_str_has_prefix (text, "Salt") && g_str_has_prefix (values[0], "2.0") && g_str_has_prefix (values[1], "2.4"));
    }
  g_assert_true (says_salt);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *name = g_strdup_printf ("/cause/number/%u", i);

      g_test_add_data_func (name, &rows[i], test_cause_says_its_number_and_its_end);
    }
  g_test_add_func ("/cause/every-reading", test_every_reading_has_a_row);
  g_test_add_func ("/cause/just-right", test_a_dough_found_just_right_is_named);
  g_test_add_func ("/cause/logged", test_what_was_logged_is_said_to_be);
  g_test_add_func ("/cause/whole-sentence", test_whole_sentence);
  g_test_add_func ("/cause/complaints", test_complaints_are_counted_in_words);
  g_test_add_func ("/cause/remedies", test_remedies_are_said_for_a_button);
  for (guint i = 0; i < G_N_ELEMENTS (changes); i++)
    {
      g_autofree char *name = g_strdup_printf ("/cause/difference/%s", changes[i].row);

      g_test_add_data_func (name, GUINT_TO_POINTER (i), test_difference_says_both_values);
    }
  g_test_add_func ("/cause/difference/figures", test_figures_that_differ_are_said_with_both_values);
  g_test_add_func ("/cause/difference/every-member", test_nothing_that_differs_is_left_without_a_name);

  return g_test_run ();
}
