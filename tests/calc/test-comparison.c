/* test-comparison.c: which figures are compared, how far they lie apart, and the order they make
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The doughs are invented.
 */

#include "calc/balance.h"
#include "calc/comparison.h"
#include "calc/prediction.h"
#include "calc/scores.h"

#include "doughs.h"

#define EPSILON 1e-12

/* Three doughs that differ in salt, the last without flour: d1 2 %, d2 2.4 %, d3 not known. */
static TrFigures *
three_doughs (void)
{
  static const char *const salts[] = { "d salt 10 g", "d salt 12 g", "d salt 8 g" };
  g_autoptr (TrTrial) trial = tr_trial_new ();

  for (guint i = 0; i < 3; i++)
    {
      const char *lines[] = { i < 2 ? "d flour-bread 500 g" : "d water 500 g", "d water 250 g", salts[i], NULL };
      TrDough *dough = test_dough_new (lines);
      g_autofree char *id = g_strdup_printf ("d%u", i + 1);

      tr_set_text (&dough->id, id);
      g_ptr_array_add (trial->doughs, dough);
    }

  return tr_figures_compute (trial, NULL);
}

static const TrComparable *
find (const char *key)
{
  const TrComparable *comparable = tr_comparable_find (key);

  if (comparable == NULL)
    g_error ("nothing called %s", key);

  return comparable;
}

/* The table */

static void
test_a_key_stands_once_and_is_found (void)
{
  guint n;
  const TrComparable *all = tr_comparables_get_all (&n);

  g_assert_cmpuint (n, >, 40);
  for (guint i = 0; i < n; i++)
    {
      g_assert_true (tr_comparable_find (all[i].key) == &all[i]);
      g_assert_cmpint (all[i].group, <, TR_N_GROUPS);
      g_assert_cmpint (all[i].measure, <, TR_N_MEASURES);
    }
  g_assert_null (tr_comparable_find ("no_such_figure"));
  g_assert_null (tr_comparable_find (NULL));
}

static void
test_groups_stand_together (void)
{
  guint n, seen = 0;
  const TrComparable *all = tr_comparables_get_all (&n);

  for (guint i = 1; i < n; i++)
    if (all[i].group != all[i - 1].group)
      {
        g_assert_cmpint (all[i].group, >, all[i - 1].group);
        seen++;
      }
  /* All but the batch. */
  g_assert_cmpuint (seen + 1, ==, TR_N_GROUPS - 1);
}

static void
test_grams_of_the_batch_are_found_and_not_offered (void)
{
  g_autoptr (TrFigures) figures = three_doughs ();
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
  const struct { const char *key; double value; } cases[] = {
    { "flour_g", 500 }, { "dough_g", 760 }, { "roll_in_g", 0 }, { "total_g", 760 },
  };
  guint n;
  const TrComparable *all = tr_comparables_get_all (&n);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const TrComparable *comparable = find (cases[i].key);

      g_assert_cmpint (comparable->group, ==, TR_GROUP_BATCH);
      g_assert_cmpfloat_with_epsilon (tr_comparable_get (comparable, dough), cases[i].value, 1e-9);
      for (guint k = 0; k < n; k++)
        g_assert_cmpstr (all[k].key, !=, cases[i].key);
    }
}

static void
test_what_there_is_not_is_not_known (void)
{
  static const char *const absent[] = { "fat_layers", "fat_layer_um.min", "thickness_mm", "sheets", "scrap_percent", "minutes", "hands_minutes",
                                        "worst_stretch", "trays.loads" };
  g_autoptr (TrFigures) figures = three_doughs ();

  for (gsize i = 0; i < G_N_ELEMENTS (absent); i++)
    g_assert_true (isnan (tr_comparable_get (find (absent[i]), tr_figures_get_dough (figures, 0))));
}

static void
test_a_ratio_has_the_value_and_band_of_the_balance (void)
{
  g_autoptr (TrFigures) figures = three_doughs ();
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);

  for (int i = 0; i < TR_N_RATIOS; i++)
    {
      const TrComparable *comparable = find (tr_ratio_key ((TrRatio) i));
      TrBand band, expected;
      gboolean has = tr_comparable_get_band (comparable, dough, &band), should = tr_ratio_get_band (dough, (TrRatio) i, &expected);
      double is = tr_comparable_get (comparable, dough), value = tr_ratio_get (dough, (TrRatio) i);

      g_assert_cmpint (has, ==, should);
      if (should)
        {
          g_assert_cmpfloat_with_epsilon (band.low, expected.low, EPSILON);
          g_assert_cmpfloat_with_epsilon (band.high, expected.high, EPSILON);
        }
      g_assert_cmpint (isnan (is), ==, isnan (value));
      if (!isnan (value))
        g_assert_cmpfloat_with_epsilon (is, value, EPSILON);
    }
}

static void
test_a_weight_has_no_band (void)
{
  g_autoptr (TrFigures) figures = three_doughs ();
  TrBand band;

  g_assert_false (tr_comparable_get_band (find ("raw_mass_g"), tr_figures_get_dough (figures, 0), &band));
}

/* Spreads */

static void
test_spreads (void)
{
  static const struct { const char *name; double values[4]; guint n, n_known; double min, max, relative; gboolean is_equal; } cases[] = {
    { "none", { 0 }, 0, 0, NAN, NAN, NAN, FALSE },
    { "one", { 5 }, 1, 1, 5, 5, NAN, FALSE },
    { "two", { 1, 3 }, 2, 2, 1, 3, 1, FALSE },
    { "equal", { 7, 7, 7 }, 3, 3, 7, 7, 0, TRUE },
    { "nothing of it", { 0, 0 }, 2, 2, 0, 0, 0, TRUE },
    { "one not known", { 2, NAN, 4 }, 3, 2, 2, 4, 2 / 3.0, FALSE },
    { "equal where known", { 2, NAN, 2 }, 3, 2, 2, 2, 0, FALSE },
    { "no number", { INFINITY, 4 }, 2, 1, 4, 4, NAN, FALSE },
    { "both sides of nothing", { -1, 1 }, 2, 2, -1, 1, 2, FALSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TrSpread spread;

      tr_spread_find (cases[i].values, cases[i].n, &spread);
      g_test_message ("%s", cases[i].name);
      g_assert_cmpuint (spread.n_known, ==, cases[i].n_known);
      g_assert_cmpint (spread.is_equal, ==, cases[i].is_equal);
      g_assert_cmpint (isnan (spread.relative), ==, isnan (cases[i].relative));
      if (!isnan (cases[i].relative))
        g_assert_cmpfloat_with_epsilon (spread.relative, cases[i].relative, EPSILON);
      if (cases[i].n_known > 0)
        {
          g_assert_cmpfloat_with_epsilon (spread.min, cases[i].min, EPSILON);
          g_assert_cmpfloat_with_epsilon (spread.max, cases[i].max, EPSILON);
        }
    }
}

static void
test_a_spread_does_not_hang_on_the_unit (void)
{
  for (guint round = 0; round < 200; round++)
    {
      double values[8], scaled[8], factor = g_test_rand_double_range (1e-3, 1e3);
      TrSpread one, other;

      for (guint i = 0; i < 8; i++)
        {
          values[i] = g_test_rand_double_range (0, 100);
          scaled[i] = values[i] * factor;
        }
      tr_spread_find (values, 8, &one);
      tr_spread_find (scaled, 8, &other);
      g_assert_cmpfloat_with_epsilon (one.relative, other.relative, 1e-9);
    }
}

/* Orders */

static void
test_the_most_stands_first_and_what_is_not_known_last (void)
{
  g_autoptr (TrFigures) figures = three_doughs ();
  guint doughs[] = { 2, 0, 1 };

  tr_comparable_sort (find ("salt_percent"), figures, doughs, 3);
  g_assert_cmpuint (doughs[0], ==, 1);
  g_assert_cmpuint (doughs[1], ==, 0);
  g_assert_cmpuint (doughs[2], ==, 2);
}

static void
test_equals_stand_as_in_the_document (void)
{
  g_autoptr (TrFigures) figures = three_doughs ();
  guint doughs[] = { 1, 2, 0 };

  tr_comparable_sort (find ("raw_mass_g"), figures, doughs, 3);
  for (guint i = 0; i < 3; i++)
    g_assert_cmpuint (doughs[i], ==, i);
}

/* Times: 5 + 12 + 10 + 20 of steps, two turns of 10 and 15; waits of 60 + 30 + 45 + 90, bake 18, cool 60. */
static void
test_times_are_those_written (void)
{
  static const char *const lines[] = { "d flour-bread 500 g", "d water 250 g", "r butter-unsalted 250 g", NULL };
  static const struct { TrStepId id; double minutes; } steps[] = {
    { TR_STEP_MIX, 12 }, { TR_STEP_BULK, 60 }, { TR_STEP_FAT_BLOCK, 20 }, { TR_STEP_LOCK_IN, 10 }, { TR_STEP_CUT, 5 }, { TR_STEP_PROOF, 90 },
    { TR_STEP_BAKE, 18 }, { TR_STEP_COOL, 60 },
  };
  g_autoptr (TrDough) dough = test_dough_new (lines);
  g_autoptr (TrFigures) figures = NULL;
  TrTurn *turn = tr_turn_new (3, 8);

  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      TrStep *step = tr_step_new (steps[i].id);

      step->minutes = steps[i].minutes;
      g_ptr_array_add (dough->method->steps, step);
    }
  dough->lock_in = tr_lock_in_new ();
  dough->lock_in->rest = tr_rest_new ();
  dough->lock_in->rest->min_minutes = 30;
  turn->minutes = 15;
  turn->rest = tr_rest_new ();
  turn->rest->min_minutes = 45;
  g_ptr_array_add (dough->turns, turn);
  g_ptr_array_add (dough->turns, tr_turn_new (3, 8));      /* as long as the bench says: 10 */

  figures = test_figures_of (dough);
  g_assert_cmpfloat_with_epsilon (tr_comparable_get (find ("hands_minutes"), tr_figures_get_dough (figures, 0)), 12 + 20 + 10 + 5 + 15 + 10, EPSILON);
  g_assert_cmpfloat_with_epsilon (tr_comparable_get (find ("minutes"), tr_figures_get_dough (figures, 0)),
                                  12 + 60 + 10 + 5 + 90 + 18 + 60 + 30 + 15 + 45 + 10, EPSILON);
}

/* Predictions */

static void
assert_order (const TrTrial *trial,
              const char    *expected)
{
  g_autofree char *order = g_strjoinv (" ", trial->prediction->order);

  g_assert_cmpstr (order, ==, expected);
}

static void
test_prediction_by_a_figure_follows_it (void)
{
  g_autoptr (TrFigures) figures = three_doughs ();
  g_autoptr (TrTrial) draft = tr_trial_copy (figures->trial);

  tr_prediction_set_by (draft, figures, find ("salt_percent"));
  assert_order (draft, "d2 d1 d3");
  g_assert_cmpstr (draft->prediction->by, ==, "salt_percent");

  g_autoptr (TrFigures) later = tr_figures_compute (draft, figures);
  g_assert_false (tr_prediction_has_drifted (later));
}

static void
test_prediction_that_is_overtaken_says_so (void)
{
  g_autoptr (TrFigures) figures = three_doughs ();
  g_autoptr (TrTrial) draft = tr_trial_copy (figures->trial);

  tr_prediction_set_by (draft, figures, find ("salt_percent"));
  tr_set_text (&tr_dough_get_line (tr_trial_own_dough (draft, 0), 2)->amount, "15 g");

  g_autoptr (TrFigures) later = tr_figures_compute (draft, figures);
  g_assert_true (tr_prediction_has_drifted (later));
}

static void
test_prediction_moved_by_hand_is_by_hand (void)
{
  g_autoptr (TrFigures) figures = three_doughs ();
  g_autoptr (TrTrial) draft = tr_trial_copy (figures->trial);

  tr_prediction_set_by (draft, figures, find ("salt_percent"));
  tr_prediction_move (draft, 2, 0);
  assert_order (draft, "d3 d2 d1");
  g_assert_cmpstr (draft->prediction->by, ==, TR_PREDICTION_BY_HAND);
  tr_prediction_move (draft, 0, 1);
  assert_order (draft, "d2 d3 d1");
}

static void
test_prediction_lists_doughs_without_a_place_last (void)
{
  g_autoptr (TrFigures) figures = three_doughs ();
  g_autoptr (TrTrial) draft = tr_trial_copy (figures->trial);
  g_autoptr (GArray) none = NULL, some = NULL;
  guint n_placed;

  none = tr_prediction_list (draft, &n_placed);
  g_assert_cmpuint (n_placed, ==, 0);
  g_assert_cmpuint (none->len, ==, 3);

  g_strfreev (tr_trial_need_prediction (draft)->order);
  draft->prediction->order = g_strsplit ("d3", " ", -1);
  some = tr_prediction_list (draft, &n_placed);
  g_assert_cmpuint (n_placed, ==, 1);
  g_assert_cmpuint (g_array_index (some, guint, 0), ==, 2);
  g_assert_cmpuint (g_array_index (some, guint, 1), ==, 0);
  g_assert_cmpuint (g_array_index (some, guint, 2), ==, 1);
}

static void
test_prediction_ends_with_the_first_mark (void)
{
  g_autoptr (TrFigures) figures = three_doughs ();
  g_autoptr (TrTrial) draft = tr_trial_copy (figures->trial);
  TrTasting *tasting = tr_trial_need_tasting (draft);
  TrTaster *taster = tr_tasting_add_taster (tasting, "A");

  g_assert_cmpint (tr_prediction_get_state (draft), ==, TR_PREDICTION_OPEN);
  tr_tasting_need_score (tasting, taster->id, "d1")->look = 5;
  g_assert_cmpint (tr_prediction_get_state (draft), ==, TR_PREDICTION_TOO_LATE);
  tr_set_text (&tr_trial_need_prediction (draft)->locked_at, "2027-04-11T10:30");
  g_assert_cmpint (tr_prediction_get_state (draft), ==, TR_PREDICTION_LOCKED);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/comparison/a-key-stands-once-and-is-found", test_a_key_stands_once_and_is_found);
  g_test_add_func ("/comparison/groups-stand-together", test_groups_stand_together);
  g_test_add_func ("/comparison/the-batch-is-found-and-not-offered", test_grams_of_the_batch_are_found_and_not_offered);
  g_test_add_func ("/comparison/what-there-is-not-is-not-known", test_what_there_is_not_is_not_known);
  g_test_add_func ("/comparison/a-ratio-has-the-value-and-band-of-the-balance", test_a_ratio_has_the_value_and_band_of_the_balance);
  g_test_add_func ("/comparison/a-weight-has-no-band", test_a_weight_has_no_band);
  g_test_add_func ("/comparison/spreads", test_spreads);
  g_test_add_func ("/comparison/a-spread-does-not-hang-on-the-unit", test_a_spread_does_not_hang_on_the_unit);
  g_test_add_func ("/comparison/the-most-stands-first", test_the_most_stands_first_and_what_is_not_known_last);
  g_test_add_func ("/comparison/equals-stand-as-in-the-document", test_equals_stand_as_in_the_document);
  g_test_add_func ("/comparison/times-are-those-written", test_times_are_those_written);
  g_test_add_func ("/prediction/by-a-figure-follows-it", test_prediction_by_a_figure_follows_it);
  g_test_add_func ("/prediction/that-is-overtaken-says-so", test_prediction_that_is_overtaken_says_so);
  g_test_add_func ("/prediction/moved-by-hand-is-by-hand", test_prediction_moved_by_hand_is_by_hand);
  g_test_add_func ("/prediction/lists-doughs-without-a-place-last", test_prediction_lists_doughs_without_a_place_last);
  g_test_add_func ("/prediction/ends-with-the-first-mark", test_prediction_ends_with_the_first_mark);

  return g_test_run ();
}
