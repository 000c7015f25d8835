/* test-causes.c: a cause is offered when its number says so, and never else
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A dough of our own in which nothing is out of the usual; each row brings one
 * number to either side of an end. The numbers of the rows are worked out here
 * from what is written; where a formula is needed it stands beside the row.
 */

#include "calc/causes.h"

#include "calc/balance.h"
#include "doughs.h"

static const char *const lines[] = {
  "d flour-bread 500 g", "d water 260 g", "d sugar 50 g", "d salt 10 g", "d yeast-fresh 20 g",
  "d butter-unsalted 30 g", "r butter-unsalted 250 g", NULL
};

static TrStep *
add_step (TrDough  *dough,
          TrStepId  id,
          double    minutes,
          double    at_c)
{
  TrStep *step = tr_step_new (id);

  step->minutes = minutes;
  step->at_c = at_c;
  g_ptr_array_add (dough->method->steps, step);

  return step;
}

static void
add_turn (TrDough *dough,
          int      fold)
{
  TrTurn *turn = tr_turn_new (fold, 8);

  turn->rest = tr_rest_new ();
  turn->rest->min_minutes = 60;
  turn->rest->max_minutes = 720;
  g_ptr_array_add (dough->turns, turn);
}

/* 27 fat layers, 51 g, everything inside what is usual. */
static TrTrial *
sound_trial (void)
{
  TrTrial *trial = tr_trial_new ();
  TrDough *dough = test_dough_new (lines);

  trial->bench->room_c = 16;
  trial->bench->worktop_mm[0] = 1500;
  dough->batch_by = TR_BATCH_PIECES;
  dough->batch_value = 12;
  dough->lock_in = tr_lock_in_new ();
  for (int i = 0; i < 3; i++)
    add_turn (dough, 3);
  dough->cut = tr_cut_new ();
  dough->method->dough_c = 22;
  add_step (dough, TR_STEP_BULK, 60, 24);
  add_step (dough, TR_STEP_PROOF, 120, 27);
  add_step (dough, TR_STEP_BAKE, 17, 190);
  g_ptr_array_add (trial->doughs, dough);

  return trial;
}

static TrStep *
step_of (TrDough  *dough,
         TrStepId  id)
{
  return (TrStep *) tr_dough_find_step (dough, id);
}

static void
write_amount (TrDough    *dough,
              guint       index,
              const char *amount)
{
  tr_set_text (&tr_dough_get_line (dough, index)->amount, amount);
}

typedef void (*Change) (TrTrial *trial,
                        TrDough *dough,
                        double   number);

#define CHANGE(name) static void change_##name (TrTrial *trial, TrDough *dough, double number)

CHANGE (proof_c) { step_of (dough, TR_STEP_PROOF)->at_c = number; }
CHANGE (proof_minutes) { step_of (dough, TR_STEP_PROOF)->minutes = number; }
CHANGE (proof_max) { step_of (dough, TR_STEP_PROOF)->max_minutes = number; }
CHANGE (cool_proof_minutes) { step_of (dough, TR_STEP_PROOF)->at_c = 26; step_of (dough, TR_STEP_PROOF)->minutes = number; }
CHANGE (bulk_minutes) { step_of (dough, TR_STEP_BULK)->minutes = number; }
CHANGE (mixed_c) { dough->method->dough_c = number; }
/* Nothing rests, so nobody knows how long the fat can be rolled. */
CHANGE (room_c)
{
  trial->bench->room_c = number;
  for (guint i = 0; i < dough->turns->len; i++)
    g_clear_pointer (&tr_dough_get_turn (dough, i)->rest, tr_rest_free);
}
CHANGE (room_with_rests) { trial->bench->room_c = 24; if (number > 0) change_room_c (trial, dough, 24); }
CHANGE (rest) { tr_dough_get_turn (dough, 1)->rest->min_minutes = number; }
CHANGE (bake_c) { step_of (dough, TR_STEP_BAKE)->at_c = number; }
CHANGE (bake_minutes) { step_of (dough, TR_STEP_BAKE)->minutes = number; }
CHANGE (sheet) { dough->cut->thickness_mm = number; }
CHANGE (turns)
{
  g_ptr_array_set_size (dough->turns, 0);
  for (int i = 0; i < (int) number; i++)
    add_turn (dough, 3);
}
CHANGE (salt) { g_autofree char *amount = g_strdup_printf ("%g g", number); write_amount (dough, 3, amount); }
CHANGE (sugar) { g_autofree char *amount = g_strdup_printf ("%g g", number); write_amount (dough, 2, amount); }
CHANGE (yeast) { g_autofree char *amount = g_strdup_printf ("%g g", number); write_amount (dough, 4, amount); }
CHANGE (water) { g_autofree char *amount = g_strdup_printf ("%g g", number); write_amount (dough, 1, amount); }
CHANGE (roll_in) { g_autofree char *amount = g_strdup_printf ("%g g", number); write_amount (dough, 6, amount); }
CHANGE (salted_butter)
{
  if (number > 0)
    tr_set_text (&tr_dough_get_line (dough, 6)->ingredient, "butter-salted");
}
CHANGE (turn_minutes)
{
  trial->bench->room_c = 24;
  for (guint i = 0; i < dough->turns->len; i++)
    tr_dough_get_turn (dough, i)->minutes = number;
}
CHANGE (short_warm_rest)
{
  tr_dough_get_turn (dough, 0)->rest->start_c = 20;
  tr_dough_get_turn (dough, 0)->rest->min_minutes = number;
}
static TrLoggedStep *
log_step (TrDough  *dough,
          TrStepId  id)
{
  TrLoggedStep *logged = tr_logged_step_new (id);

  g_ptr_array_add (dough->log->steps, logged);

  return logged;
}

static TrLoggedRest *
log_rest (TrDough *dough,
          int      turn)
{
  TrLoggedRest *logged = tr_logged_rest_new (turn);

  g_ptr_array_add (dough->log->rests, logged);

  return logged;
}

/* Written right, done otherwise; and what was logged before that does not count. */
CHANGE (logged_proof_c) { log_step (dough, TR_STEP_PROOF)->at_c = 35; log_step (dough, TR_STEP_PROOF)->at_c = number; }
CHANGE (logged_proof_minutes) { log_step (dough, TR_STEP_PROOF)->minutes = number; }
CHANGE (logged_bulk_minutes) { log_step (dough, TR_STEP_BULK)->minutes = number; }
CHANGE (logged_bake_c) { log_step (dough, TR_STEP_BAKE)->at_c = number; }
CHANGE (logged_bake_minutes) { log_step (dough, TR_STEP_BAKE)->minutes = number; }
CHANGE (logged_core_c) { log_rest (dough, 2)->core_c = number; }
CHANGE (logged_rest) { log_rest (dough, 2)->minutes = number; }
CHANGE (first_turn_mm) { tr_dough_get_turn (dough, 0)->thickness_mm = number; }

/* `fires` and `silent`: the number on either side of the end. */
static const struct {
  const char *row;
  Change change;
  TrReadingId reading;
  TrSide side;
  double fires, silent;
  double limit;                  /* NaN: not looked at */
} rows[] = {
  { "proof-cool", change_proof_c, TR_READING_PROOF_C, TR_SIDE_UNDER, 25, 26, 26 },
  { "proof-warm", change_proof_c, TR_READING_PROOF_C, TR_SIDE_OVER, 31, 30, 30 },
  /* USDA butter of the table bears 28 °C: IREKS-Kompendium 11.5 */
  { "proof-warm-for-butter", change_proof_c, TR_READING_PROOF_OF_FAT_C, TR_SIDE_OVER, 29, 28, 28 },
  /* 90 and 180 min at 26 °C, by 2^(-0.1) at 27 °C */
  { "proof-short", change_proof_minutes, TR_READING_PROOF_MINUTES, TR_SIDE_UNDER, 83, 85, 83.973 },
  { "proof-short-at-26", change_cool_proof_minutes, TR_READING_PROOF_MINUTES, TR_SIDE_UNDER, 89, 90, 90 },
  { "proof-long", change_proof_minutes, TR_READING_PROOF_MINUTES, TR_SIDE_OVER, 169, 167, 167.946 },
  { "proof-at-most-long", change_proof_max, TR_READING_PROOF_MINUTES, TR_SIDE_OVER, 169, 167, 167.946 },
  { "bulk-long", change_bulk_minutes, TR_READING_BULK_MINUTES, TR_SIDE_OVER, 121, 120, 120 },
  { "mixed-warm", change_mixed_c, TR_READING_MIXED_C, TR_SIDE_OVER, 27, 26, 26 },
  { "room-warm", change_room_c, TR_READING_ROOM_C, TR_SIDE_OVER, 18, 17, 17 },
  { "room-warm-and-no-window", change_room_with_rests, TR_READING_ROOM_C, TR_SIDE_OVER, 1, 0, 17 },
  { "rest-short", change_rest, TR_READING_REST_MINUTES, TR_SIDE_UNDER, 29, 30, 30 },
  { "bake-cool", change_bake_c, TR_READING_BAKE_C, TR_SIDE_UNDER, 169, 170, 170 },
  { "bake-hot", change_bake_c, TR_READING_BAKE_C, TR_SIDE_OVER, 211, 210, 210 },
  /* a raw piece of 90 × 260 / 2 × 4 mm³ and 1.095 g/ml is 51 g: minutes by (51 / 60)^(2/3), 12.6 to 19.8 */
  { "bake-short", change_bake_minutes, TR_READING_BAKE_MINUTES, TR_SIDE_UNDER, 12, 14, 12.606 },
  { "bake-long", change_bake_minutes, TR_READING_BAKE_MINUTES, TR_SIDE_OVER, 20, 19, 19.809 },
  { "sheet-thin", change_sheet, TR_READING_SHEET_MM, TR_SIDE_UNDER, 2.9, 3, 3 },
  { "sheet-thick", change_sheet, TR_READING_SHEET_MM, TR_SIDE_OVER, 6.1, 6, 6 },
  { "few-layers", change_turns, TR_READING_FAT_LAYERS, TR_SIDE_UNDER, 2, 3, 16 },
  { "many-layers", change_turns, TR_READING_FAT_LAYERS, TR_SIDE_OVER, 4, 3, 50 },
  { "thick-fat", change_turns, TR_READING_FAT_LAYER_UM, TR_SIDE_OVER, 1, 3, 200 },
  { "thin-fat", change_turns, TR_READING_FAT_LAYER_UM, TR_SIDE_UNDER, 4, 3, 15 },
  { "stretch", change_first_turn_mm, TR_READING_STRETCH, TR_SIDE_OVER, 4, 8, 4 },
  { "salty", change_salt, TR_READING_SALT, TR_SIDE_OVER, 13, 10, 2.4 },
  { "bland", change_salt, TR_READING_SALT, TR_SIDE_UNDER, 7, 10, 1.6 },
  { "salty-in-band", change_salt, TR_READING_SALT_MIDDLE, TR_SIDE_OVER, 11, 9, 2 },
  { "bland-in-band", change_salt, TR_READING_SALT_MIDDLE, TR_SIDE_UNDER, 9, 11, 2 },
  /* outside the band the band is the number, not its middle */
  { "salty-not-twice", change_salt, TR_READING_SALT_MIDDLE, TR_SIDE_OVER, 11, 13, 2 },
  { "sweet", change_sugar, TR_READING_SUGAR, TR_SIDE_OVER, 75, 65, 14 },
  { "not-sweet", change_sugar, TR_READING_SUGAR, TR_SIDE_UNDER, 10, 20, 3 },
  { "sweet-in-band", change_sugar, TR_READING_SUGAR_MIDDLE, TR_SIDE_OVER, 50, 40, 8.5 },
  { "not-sweet-in-band", change_sugar, TR_READING_SUGAR_MIDDLE, TR_SIDE_UNDER, 40, 50, 8.5 },
  { "much-yeast", change_yeast, TR_READING_YEAST, TR_SIDE_OVER, 31, 30, 6 },
  { "little-yeast", change_yeast, TR_READING_YEAST, TR_SIDE_UNDER, 9, 10, 2 },
  { "wet", change_water, TR_READING_ALL_WATER, TR_SIDE_OVER, 325, 290, 64 },
  { "dry", change_water, TR_READING_ALL_WATER, TR_SIDE_UNDER, 200, 260, 46 },
  { "much-roll-in", change_roll_in, TR_READING_ROLL_IN, TR_SIDE_OVER, 340, 320, 38 },
  { "little-roll-in", change_roll_in, TR_READING_ROLL_IN, TR_SIDE_UNDER, 185, 200, 22 },
  /* 250 g of salted butter on 500 g of flour: 643 mg of sodium in 100 g, × 2.5 */
  { "salted-butter", change_salted_butter, TR_READING_SALTED_FAT, TR_SIDE_OVER, 1, 0, 0.3 },
  { "window-short", change_turn_minutes, TR_READING_WINDOW_MINUTES, TR_SIDE_UNDER, 240, 1, 240 },
  { "logged-proof-warm", change_logged_proof_c, TR_READING_PROOF_OF_FAT_C, TR_SIDE_OVER, 31, 28, 28 },
  { "logged-proof-short", change_logged_proof_minutes, TR_READING_PROOF_MINUTES, TR_SIDE_UNDER, 60, 120, 83.973 },
  { "logged-bulk-long", change_logged_bulk_minutes, TR_READING_BULK_MINUTES, TR_SIDE_OVER, 150, 60, 120 },
  { "logged-bake-hot", change_logged_bake_c, TR_READING_BAKE_C, TR_SIDE_OVER, 230, 200, 210 },
  { "logged-bake-short", change_logged_bake_minutes, TR_READING_BAKE_MINUTES, TR_SIDE_UNDER, 9, 15, 12.606 },
  { "logged-core-warm", change_logged_core_c, TR_READING_CORE_C, TR_SIDE_OVER, 19, 8, 17 },
  { "logged-rest-short", change_logged_rest, TR_READING_REST_MINUTES, TR_SIDE_UNDER, 10, 40, 30 },
  { "core-warm", change_short_warm_rest, TR_READING_CORE_C, TR_SIDE_OVER, 1, 300, 17 },
};

static TrFigures *
figures_after (Change change,
               double number)
{
  g_autoptr (TrTrial) trial = sound_trial ();

  change (trial, tr_trial_get_dough (trial, 0), number);

  return tr_figures_compute (trial, NULL);
}

static gboolean
fires (const TrDoughFigures *figures,
       TrReadingId           id,
       TrSide                side,
       double               *limit)
{
  TrReading reading;
  gboolean passes;

  if (!tr_reading_get (figures, id, side, &reading))
    return FALSE;
  passes = tr_reading_passes (&reading, side);
  *limit = tr_reading_get_limit (&reading, side);
  if (passes)
    {
      g_assert_nonnull (reading.where);
      g_assert_nonnull (reading.source);
      g_assert_true (isfinite (reading.value) && isfinite (*limit));
    }
  tr_reading_clear (&reading);

  return passes;
}

static void
test_number_beyond_its_end_points_and_on_it_does_not (gconstpointer data)
{
  guint row = GPOINTER_TO_UINT (data);
  g_autoptr (TrFigures) out = figures_after (rows[row].change, rows[row].fires);
  g_autoptr (TrFigures) in = figures_after (rows[row].change, rows[row].silent);
  double limit = NAN;

  g_assert_true (fires (tr_figures_get_dough (out, 0), rows[row].reading, rows[row].side, &limit));
  if (!isnan (rows[row].limit))
    g_assert_cmpfloat_with_epsilon (limit, rows[row].limit, 1e-3);
  g_assert_false (fires (tr_figures_get_dough (in, 0), rows[row].reading, rows[row].side, &limit));
}

/* Written in the method, that is what is changed; else the entry that says so. */
static void
test_what_is_only_logged_leads_to_its_entry (void)
{
  g_autoptr (TrTrial) trial = sound_trial ();
  TrDough *dough = tr_trial_get_dough (trial, 0);

  log_step (dough, TR_STEP_BAKE)->minutes = 20;
  log_step (dough, TR_STEP_PROOF)->at_c = 33;
  for (guint without = 0; without < 2; without++)
    {
      g_autoptr (TrFigures) figures = NULL;
      TrReading reading;

      if (without)
        g_ptr_array_remove (dough->method->steps, (gpointer) tr_dough_find_step (dough, TR_STEP_PROOF));
      figures = tr_figures_compute (trial, NULL);
      g_assert_true (tr_reading_get (tr_figures_get_dough (figures, 0), TR_READING_PROOF_OF_FAT_C, TR_SIDE_OVER, &reading));
      g_assert_cmpfloat_with_epsilon (reading.value, 33, 1e-12);
      g_assert_true (without ? g_str_equal (reading.where, "/log/steps/1/at_c") : g_str_has_prefix (reading.where, "/method/steps/"));
      tr_reading_clear (&reading);
    }
}

static gboolean
has_row (TrReadingId reading,
         TrSide      side)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (rows[i].reading == reading && rows[i].side == side)
      return TRUE;

  return FALSE;
}

static void
test_every_rule_is_tried_on_both_sides_of_its_end (void)
{
  guint n;
  const TrRule *rules = tr_rules_get (&n);

  for (guint i = 0; i < n; i++)
    if (!has_row (rules[i].reading, rules[i].side))
      g_error ("rule %u has no row", i);
}

static void
test_every_complaint_has_rules_with_a_source (void)
{
  guint n, counts[TR_N_COMPLAINTS] = { 0 };
  const TrRule *rules = tr_rules_get (&n);

  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpuint (rules[i].complaint, <, TR_N_COMPLAINTS);
      g_assert_nonnull (rules[i].source);
      counts[rules[i].complaint]++;
      for (guint k = 0; k < i; k++)
        g_assert_false (rules[i].complaint == rules[k].complaint && rules[i].reading == rules[k].reading);
    }
  for (guint id = 0; id < TR_N_COMPLAINTS; id++)
    g_assert_cmpuint (counts[id], >=, 2);
}

static guint
count_causes (const TrFigures *figures)
{
  guint n = 0;

  for (guint id = 0; id < TR_N_COMPLAINTS; id++)
    {
      g_autoptr (GPtrArray) causes = tr_causes_find (tr_figures_get_dough (figures, 0), id);

      n += causes->len;
    }

  return n;
}

static void
change_nothing (TrTrial *trial,
                TrDough *dough,
                double   number)
{
  /* Salt and sugar so near the middle of their bands that no half of it is worth a word. */
  change_salt (trial, dough, 10);
  change_sugar (trial, dough, 42.5);   /* 99.8 % sugars: 8.48 % of 500 g */
}

static void
test_dough_without_anything_out_of_the_usual_gives_no_cause (void)
{
  g_autoptr (TrFigures) figures = figures_after (change_nothing, 0);

  for (guint id = 0; id < TR_N_COMPLAINTS; id++)
    {
      g_autoptr (GPtrArray) causes = tr_causes_find (tr_figures_get_dough (figures, 0), id);

      for (guint i = 0; i < causes->len; i++)
        {
          const TrCause *cause = causes->pdata[i];

          g_error ("complaint %u: reading %d at %g, usual to %g", id, cause->reading.id, cause->reading.value, cause->limit);
        }
    }
}

static void
test_dough_of_which_nothing_is_known_gives_no_cause (void)
{
  g_autoptr (TrTrial) trial = tr_trial_new ();
  TrDough *dough = tr_dough_new ("d1");

  g_clear_pointer (&dough->lock_in, tr_lock_in_free);
  g_clear_pointer (&dough->cut, tr_cut_free);
  g_ptr_array_add (trial->doughs, dough);

  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);

  g_assert_cmpuint (count_causes (figures), ==, 0);
}

/* Remedies */

static TrFigures *
figures_with_remedy (const TrFigures *figures,
                     const TrRemedy  *remedy)
{
  g_autoptr (TrTrial) draft = tr_trial_copy (figures->trial);
  g_autoptr (GError) error = NULL;
  TrDough *dough = tr_trial_own_dough (draft, 0);

  g_assert_true (tr_remedy_apply (dough, tr_figures_get_dough (figures, 0), remedy, &error));
  g_assert_no_error (error);

  return tr_figures_compute (draft, NULL);
}

/* What is written right needs none, but a core that stayed warm wants a longer rest than the model has it. */
static gboolean
has_remedy (const TrReading *reading)
{
  TrReadingId id = reading->id;

  return (!reading->is_logged || id == TR_READING_CORE_C) && id != TR_READING_ROOM_C && id != TR_READING_WINDOW_MINUTES && id != TR_READING_SALTED_FAT;
}

static void
test_remedy_brings_its_number_back_inside (gconstpointer data)
{
  guint row = GPOINTER_TO_UINT (data);
  g_autoptr (TrFigures) out = figures_after (rows[row].change, rows[row].fires);
  const TrDoughFigures *figures = tr_figures_get_dough (out, 0);
  TrReading reading;
  TrRemedy remedy;
  double limit;

  g_assert_true (tr_reading_get (figures, rows[row].reading, rows[row].side, &reading));
  gboolean found = tr_remedy_find (figures, &reading, rows[row].side, &remedy), is_wanted = has_remedy (&reading);
  tr_reading_clear (&reading);

  g_assert_cmpint (found, ==, is_wanted);
  g_assert_cmpint (remedy.kind == TR_REMEDY_NONE, ==, !found);
  if (!found)
    return;

  g_autoptr (TrFigures) mended = figures_with_remedy (out, &remedy);

  /* What was logged stays logged. */
  if (rows[row].change != change_logged_core_c)
    g_assert_false (fires (tr_figures_get_dough (mended, 0), rows[row].reading, rows[row].side, &limit));
}

static void
test_warm_proof_for_butter_is_brought_to_what_it_bears (void)
{
  g_autoptr (TrFigures) figures = figures_after (change_proof_c, 31);
  g_autoptr (GPtrArray) causes = tr_causes_find (tr_figures_get_dough (figures, 0), TR_FAULT_FAT_POOLED);
  const TrCause *cause;

  g_assert_cmpuint (causes->len, ==, 1);
  cause = causes->pdata[0];
  g_assert_cmpint (cause->reading.id, ==, TR_READING_PROOF_OF_FAT_C);
  g_assert_cmpfloat_with_epsilon (cause->reading.value, 31, 1e-9);
  g_assert_cmpfloat_with_epsilon (cause->limit, 28, 1e-9);
  g_assert_cmpstr (cause->reading.where, ==, "/method/steps/1/at_c");
  g_assert_cmpstr (cause->reading.name, ==, "butter-unsalted");
  g_assert_cmpint (cause->remedy.kind, ==, TR_REMEDY_PROOF_C);
  g_assert_cmpfloat_with_epsilon (cause->remedy.target, 28, 1e-9);
}

static void
test_warmer_proof_is_not_offered_beyond_what_the_fat_bears (void)
{
  g_autoptr (TrTrial) trial = sound_trial ();
  TrOwnIngredient *own = tr_own_ingredient_new ("butter-soft", "butter-unsalted");
  TrDough *dough = tr_trial_get_dough (trial, 0);
  TrReading reading;
  TrRemedy remedy;

  own->proof_max_c = 24;
  g_ptr_array_add (trial->pantry->own, own);
  tr_set_text (&tr_dough_get_line (dough, 6)->ingredient, "butter-soft");
  change_proof_c (trial, dough, 24);

  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);

  g_assert_true (tr_reading_get (tr_figures_get_dough (figures, 0), TR_READING_PROOF_C, TR_SIDE_UNDER, &reading));
  g_assert_true (tr_reading_passes (&reading, TR_SIDE_UNDER));
  g_assert_false (tr_remedy_find (tr_figures_get_dough (figures, 0), &reading, TR_SIDE_UNDER, &remedy));
  tr_reading_clear (&reading);
}

static void
test_a_piece_by_weight_is_made_thicker_by_its_weight (void)
{
  g_autoptr (TrTrial) trial = sound_trial ();
  TrDough *dough = tr_trial_get_dough (trial, 0);
  TrReading reading;
  TrRemedy remedy;
  double limit;

  dough->cut->thickness_mm = NAN;
  dough->cut->piece_mass_g = 30;

  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);

  g_assert_true (tr_reading_get (tr_figures_get_dough (figures, 0), TR_READING_SHEET_MM, TR_SIDE_UNDER, &reading));
  g_assert_cmpstr (reading.where, ==, "/cut/piece_mass_g");
  g_assert_true (tr_remedy_find (tr_figures_get_dough (figures, 0), &reading, TR_SIDE_UNDER, &remedy));
  tr_reading_clear (&reading);

  g_autoptr (TrFigures) mended = figures_with_remedy (figures, &remedy);

  g_assert_false (fires (tr_figures_get_dough (mended, 0), TR_READING_SHEET_MM, TR_SIDE_UNDER, &limit));
  g_assert_true (isnan (tr_trial_get_dough (mended->trial, 0)->cut->thickness_mm));
}

static void
test_measured_dough_counts_before_the_wanted_one (void)
{
  g_autoptr (TrTrial) trial = sound_trial ();
  TrMix *mix = tr_mix_new ();
  TrReading reading;

  mix->dough_c = 29;
  g_ptr_array_add (tr_trial_get_dough (trial, 0)->log->mixes, mix);

  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);

  g_assert_true (tr_reading_get (tr_figures_get_dough (figures, 0), TR_READING_MIXED_C, TR_SIDE_OVER, &reading));
  g_assert_cmpfloat_with_epsilon (reading.value, 29, 1e-9);
  g_assert_true (tr_reading_passes (&reading, TR_SIDE_OVER));
  tr_reading_clear (&reading);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *rule = g_strdup_printf ("/causes/reading/%s", rows[i].row);
      g_autofree char *remedy = g_strdup_printf ("/causes/remedy/%s", rows[i].row);

      g_test_add_data_func (rule, GUINT_TO_POINTER (i), test_number_beyond_its_end_points_and_on_it_does_not);
      g_test_add_data_func (remedy, GUINT_TO_POINTER (i), test_remedy_brings_its_number_back_inside);
    }
  g_test_add_func ("/causes/what-is-only-logged", test_what_is_only_logged_leads_to_its_entry);
  g_test_add_func ("/causes/every-rule-has-a-row", test_every_rule_is_tried_on_both_sides_of_its_end);
  g_test_add_func ("/causes/every-complaint-has-rules", test_every_complaint_has_rules_with_a_source);
  g_test_add_func ("/causes/sound-dough-has-none", test_dough_without_anything_out_of_the_usual_gives_no_cause);
  g_test_add_func ("/causes/unknown-dough-has-none", test_dough_of_which_nothing_is_known_gives_no_cause);
  g_test_add_func ("/causes/warm-proof-for-butter", test_warm_proof_for_butter_is_brought_to_what_it_bears);
  g_test_add_func ("/causes/no-warmer-than-fat-bears", test_warmer_proof_is_not_offered_beyond_what_the_fat_bears);
  g_test_add_func ("/causes/piece-by-weight", test_a_piece_by_weight_is_made_thicker_by_its_weight);
  g_test_add_func ("/causes/measured-dough", test_measured_dough_counts_before_the_wanted_one);

  return g_test_run ();
}
