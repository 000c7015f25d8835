/* test-balance.c: ratios moved by the amounts behind them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The example is worked by hand in the comments. The random doughs are held
 * to what a baker could check with a pencil: the ratio is the one wanted, the
 * flour is what it was, and no other line was touched.
 */

#include <string.h>

#include "calc/balance.h"
#include "calc/formula.h"
#include "case.h"

typedef struct { TrStage stage; const char *ingredient, *amount; } Written;

static TrTrial *
trial_of (const Written *lines,
          guint          n_lines)
{
  TrTrial *trial = tr_trial_new ();
  TrDough *dough = tr_dough_new ("d1");

  dough->batch_by = TR_BATCH_WRITTEN;
  for (guint i = 0; i < n_lines; i++)
    {
      TrLine *line = tr_line_new (lines[i].stage, lines[i].ingredient, lines[i].amount);

      if (lines[i].stage == TR_STAGE_PREFERMENT)
        line->group = g_strdup ("sponge");
      g_ptr_array_add (dough->lines, line);
    }
  g_ptr_array_add (trial->doughs, dough);

  return trial;
}

static Case
case_new (const Written *lines,
          guint          n_lines)
{
  return case_of_trial (trial_of (lines, n_lines));
}

static void
case_set (Case    *self,
          TrRatio  ratio,
          double   value)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (tr_ratio_set (self->dough, case_before (self), ratio, value, &error));
  g_assert_no_error (error);
}

/* Flour 150 + 450 = 600 g. Water 150 + 180 g and milk 30 g at 88.13 % water
 * (USDA 01077): all water (330 + 26.4)/600 = 59.4 %. Salt 12 g: 2 %. Sugar
 * 60 g at 99.8 g (USDA 19335). Instant yeast 6 g × 3: 3 %. Dough 150 + 150 +
 * 450 + 180 + 30 + 30 + 60 + 12 + 6 = 1068 g, butter 267 g: 25 % of it. */
static const Written example[] = {
  { TR_STAGE_PREFERMENT, "flour-bread", "150 g" },
  { TR_STAGE_PREFERMENT, "water", "150 g" },
  { TR_STAGE_DOUGH, "flour-bread", "450 g" },
  { TR_STAGE_DOUGH, "water", "180 g" },
  { TR_STAGE_DOUGH, "milk-whole", "30 g" },
  { TR_STAGE_DOUGH, "butter-unsalted", "30 g" },
  { TR_STAGE_DOUGH, "sugar", "60 g" },
  { TR_STAGE_DOUGH, "salt", "12 g" },
  { TR_STAGE_DOUGH, "yeast-instant", "6 g" },
  { TR_STAGE_ROLL_IN, "butter-unsalted", "267 g" },
};

typedef struct {
  const char *name;
  TrRatio ratio;
  double value;
  guint line;
  const char *amount;
  guint other;                   /* a second line that moves; the same: none */
  const char *other_amount;
} Worked;

static const Worked worked[] = {
  /* 600 × 0.08 = 48 g */
  { "fat", TR_RATIO_DOUGH_FAT, 8, 5, "48 g", 5, "48 g" },
  /* 1068 × 0.30 = 320.4 g; 0.04 points are 0.427 g */
  { "roll-in", TR_RATIO_ROLL_IN_OF_DOUGH, 30, 9, "320 g", 9, "320 g" },
  /* Sodium × 2.5, mg per 100 g: butter 11 × 297 g = 82 mg of salt, water 4 × 330 g = 33, milk 43 × 30 g = 32,
   * flour 2 × 600 g = 30, yeast 51 × 6 g = 8: 9.6 g less 0.18 g, within 0.01 points, which are 0.06 g */
  { "salt", TR_RATIO_SALT, 1.6, 7, "9.4 g", 7, "9.4 g" },
  /* 600 × 4.5 % = 27 g fresh, 9 g instant */
  { "yeast", TR_RATIO_YEAST_FRESH, 4.5, 8, "9 g", 8, "9 g" },
  /* 600 × 40 % = 240 g: 90 g more, of flour and of water */
  { "prefermented-flour", TR_RATIO_PREFERMENTED, 40, 0, "240 g", 2, "360 g" },
  { "prefermented-water", TR_RATIO_PREFERMENTED, 40, 1, "240 g", 3, "90 g" },
};

static void
test_worked (gconstpointer data)
{
  const Worked *given = data;
  Case self;

  self = case_new (example, G_N_ELEMENTS (example));
  case_set (&self, given->ratio, given->value);
  g_assert_cmpstr (case_amount (&self, given->line), ==, given->amount);
  g_assert_cmpstr (case_amount (&self, given->other), ==, given->other_amount);
  g_assert_cmpfloat_with_epsilon (tr_ratio_get (case_after (&self), given->ratio), given->value, TR_RATIO_TOLERANCE);
  case_clear (&self);
}

/* Water moves, milk stays: the dough has water of its own. */
static void
test_hydration_moves_water (void)
{
  TrRatioMoves moves;
  Case self;

  self = case_new (example, G_N_ELEMENTS (example));
  tr_ratio_get_moves (case_before (&self), TR_RATIO_ALL_WATER, &moves);
  g_assert_true (moves.can_move);
  g_assert_cmpuint (moves.n_lines, ==, 1);
  g_assert_cmpuint (moves.lines[0], ==, 3);
  case_set (&self, TR_RATIO_ALL_WATER, 62);
  g_assert_cmpstr (case_amount (&self, 1), ==, "150 g");
  g_assert_cmpstr (case_amount (&self, 4), ==, "30 g");
  g_assert_cmpfloat_with_epsilon (tr_ratio_get (case_after (&self), TR_RATIO_ALL_WATER), 62, TR_RATIO_TOLERANCE);
  case_clear (&self);
}

static void
test_hydration_without_water (void)
{
  static const Written lines[] = {
    { TR_STAGE_DOUGH, "flour-bread", "1 kg" },
    { TR_STAGE_DOUGH, "milk-whole", "400 g" },
    { TR_STAGE_DOUGH, "cream-light", "100 g" },
    { TR_STAGE_DOUGH, "milk-powder-skim", "20 g" },
  };
  TrRatioMoves moves;
  Case self;

  self = case_new (lines, G_N_ELEMENTS (lines));
  tr_ratio_get_moves (case_before (&self), TR_RATIO_ALL_WATER, &moves);
  g_assert_cmpuint (moves.n_lines, ==, 2);
  case_set (&self, TR_RATIO_ALL_WATER, 60);
  g_assert_cmpstr (case_amount (&self, 3), ==, "20 g");
  double milk = tr_formula_get_line (&case_after (&self)->formula, 1)->written_grams;
  double cream = tr_formula_get_line (&case_after (&self)->formula, 2)->written_grams;
  g_assert_cmpfloat_with_epsilon (milk / cream, 4, 0.04);
  g_assert_cmpfloat_with_epsilon (tr_ratio_get (case_after (&self), TR_RATIO_ALL_WATER), 60, TR_RATIO_TOLERANCE);
  case_clear (&self);
}

/* Units: own mass, two of them, percentages of each base, else grams. */
typedef struct { const char *name, *written; double percent; const char *expected; } Unit;

static const Unit units[] = {
  { "grams", "250 g", 30, "300 g" },
  { "kilograms", "0.25 kg", 30, "0.3 kg" },
  { "ounces", "8 oz", 28.349523125, "10 oz" },
  { "pounds-and-ounces", "1 lb 2 oz", 56.69904625, "1 lb 4 oz" },
  { "cups-become-grams", "1 cup", 30, "300 g" },
  { "percent", "25 %", 30, "30 %" },
  { "empty", "0 g", 30, "300 g" },
  { "three-decimals-take-a-fourth", "1 kg", 123.45, "1.2345 kg" },
  { "never-two-readings", "1 kg", 123.5, "1.2350 kg" },
};

static void
test_unit (gconstpointer data)
{
  const Unit *given = data;
  const Written lines[] = {
    { TR_STAGE_DOUGH, "flour-bread", "1000 g" },
    { TR_STAGE_DOUGH, "sugar", given->written },
  };
  g_autoptr (GError) error = NULL;
  Case self;

  self = case_new (lines, G_N_ELEMENTS (lines));
  g_assert_true (tr_line_set_percent (self.dough, case_before (&self), 1, given->percent, &error));
  g_assert_cmpstr (case_amount (&self, 1), ==, given->expected);
  case_clear (&self);
}

/* Butter in percent of each base: the number is another, the ratio the one wanted. */
static void
test_roll_in_bases (void)
{
  static const char *const amounts[] = { "40 %", "25 % of dough", "20 % of total" };

  for (guint i = 0; i < G_N_ELEMENTS (amounts); i++)
    {
      const Written lines[] = {
        { TR_STAGE_DOUGH, "flour-bread", "1000 g" },
        { TR_STAGE_DOUGH, "water", "500 g" },
        { TR_STAGE_ROLL_IN, "butter-unsalted", amounts[i] },
      };
      Case self;

      self = case_new (lines, G_N_ELEMENTS (lines));
      case_set (&self, TR_RATIO_ROLL_IN_OF_DOUGH, 35);
      g_assert_true (g_str_has_suffix (case_amount (&self, 2), strchr (amounts[i], '%')));
      g_assert_cmpfloat_with_epsilon (tr_ratio_get (case_after (&self), TR_RATIO_ROLL_IN_OF_DOUGH), 35, TR_RATIO_TOLERANCE);
      case_clear (&self);
    }
}

/* Salt makes the dough heavier, and with it the salted butter that is written in percent of it: all that counts. */
static void
test_rounding_counts_what_follows (void)
{
  const Written lines[] = {
    { TR_STAGE_DOUGH, "flour-bread", "500 g" },
    { TR_STAGE_DOUGH, "water", "250 g" },
    { TR_STAGE_DOUGH, "salt", "10 g" },
    { TR_STAGE_ROLL_IN, "butter-salted", "25 % of total" },
  };

  for (guint i = 0; i < 200; i++)
    {
      double wanted = 2 + 0.01 * i + 0.001;
      Case self = case_new (lines, G_N_ELEMENTS (lines));

      case_set (&self, TR_RATIO_SALT, wanted);
      g_assert_cmpfloat_with_epsilon (tr_ratio_get (case_after (&self), TR_RATIO_SALT), wanted, TR_RATIO_FINE_TOLERANCE + 1e-6);
      case_clear (&self);
    }
}

static void
test_salt_down_to_nothing_and_back (void)
{
  TrRatioMoves moves;
  Case self, again;

  self = case_new (example, G_N_ELEMENTS (example));
  tr_ratio_get_moves (case_before (&self), TR_RATIO_SALT, &moves);
  case_set (&self, TR_RATIO_SALT, moves.reach.min);
  g_assert_cmpstr (case_amount (&self, 7), ==, "0 g");

  again = case_of_trial (tr_trial_ref (self.draft));
  case_set (&again, TR_RATIO_SALT, 2);
  g_assert_cmpfloat_with_epsilon (tr_ratio_get (case_after (&again), TR_RATIO_SALT), 2, TR_RATIO_FINE_TOLERANCE);
  case_clear (&again);
  case_clear (&self);
}

static void
test_refusals (void)
{
  static const Written bare[] = { { TR_STAGE_DOUGH, "flour-bread", "500 g" }, { TR_STAGE_DOUGH, "salt", "some" } };
  g_autoptr (GError) no_line = NULL, not_known = NULL, reach = NULL;
  Case self, full;

  self = case_new (bare, G_N_ELEMENTS (bare));
  full = case_new (example, G_N_ELEMENTS (example));
  g_assert_false (tr_ratio_set (self.dough, case_before (&self), TR_RATIO_ALL_WATER, 60, &no_line));
  g_assert_error (no_line, TR_BALANCE_ERROR, TR_BALANCE_ERROR_NO_LINE);
  g_assert_false (tr_ratio_set (self.dough, case_before (&self), TR_RATIO_SALT, 2, &not_known));
  g_assert_error (not_known, TR_BALANCE_ERROR, TR_BALANCE_ERROR_NOT_KNOWN);
  g_assert_cmpstr (case_amount (&self, 1), ==, "some");
  g_assert_false (tr_ratio_set (full.dough, case_before (&full), TR_RATIO_SALT, 7, &reach));
  g_assert_error (reach, TR_BALANCE_ERROR, TR_BALANCE_ERROR_REACH);
  g_assert_true (g_str_has_prefix (reach->message, "7 % is out of reach"));
  case_clear (&self);
  case_clear (&full);
}

static void
test_added_line_can_be_moved (void)
{
  static const Written bare[] = { { TR_STAGE_DOUGH, "flour-bread", "500 g" }, { TR_STAGE_DOUGH, "water", "300 g" } };

  for (guint ratio = 0; ratio < TR_N_RATIOS; ratio++)
    {
      TrRatioMoves moves;
      Case self;

      self = case_new (bare, G_N_ELEMENTS (bare));
      tr_ratio_get_moves (case_before (&self), (TrRatio) ratio, &moves);
      g_assert_cmpint (moves.has_line, ==, ratio == TR_RATIO_ALL_WATER);
      if (ratio != TR_RATIO_ALL_WATER && ratio != TR_RATIO_PREFERMENTED)
        g_assert_cmpint (tr_ratio_add_line (self.dough, case_before (&self), (TrRatio) ratio, NULL), >=, 0);
      tr_ratio_get_moves (case_after (&self), (TrRatio) ratio, &moves);
      g_assert_cmpint (moves.can_move, ==, ratio != TR_RATIO_PREFERMENTED);
      g_assert_cmpfloat_with_epsilon (case_after (&self)->formula.written_flour_g, 500, 1e-9);
      case_clear (&self);
    }
}

/* Flour: the other gives way, the whole stays. */
static void
test_percent_of_flour (void)
{
  g_autoptr (GError) only = NULL, more = NULL;
  static const Written one[] = { { TR_STAGE_DOUGH, "flour-bread", "500 g" } };
  Case self, single;

  self = case_new (example, G_N_ELEMENTS (example));
  g_assert_true (tr_line_set_percent (self.dough, case_before (&self), 0, 30, NULL));
  g_assert_cmpstr (case_amount (&self, 0), ==, "180 g");
  g_assert_cmpstr (case_amount (&self, 2), ==, "420 g");
  g_assert_false (tr_line_set_percent (self.dough, case_before (&self), 0, 101, &more));
  g_assert_error (more, TR_BALANCE_ERROR, TR_BALANCE_ERROR_REACH);
  case_clear (&self);

  single = case_new (one, G_N_ELEMENTS (one));
  g_assert_false (tr_line_set_percent (single.dough, case_before (&single), 0, 90, &only));
  g_assert_error (only, TR_BALANCE_ERROR, TR_BALANCE_ERROR_REACH);
  case_clear (&single);
}

/* All in percent: they must still add up to 100, or nothing could be weighed. */
static void
test_all_in_percent (void)
{
  static const Written lines[] = {
    { TR_STAGE_PREFERMENT, "flour-bread", "25 %" },
    { TR_STAGE_PREFERMENT, "water", "25 %" },
    { TR_STAGE_DOUGH, "flour-bread", "75 %" },
    { TR_STAGE_DOUGH, "water", "33 %" },
  };
  Case self;

  self = case_new (lines, G_N_ELEMENTS (lines));
  case_set (&self, TR_RATIO_PREFERMENTED, 31.37);
  g_assert_cmpuint (case_after (&self)->formula.problems->len, ==, 0);
  g_assert_cmpfloat_with_epsilon (tr_ratio_get (case_after (&self), TR_RATIO_PREFERMENTED), 31.37, TR_RATIO_TOLERANCE);
  g_assert_cmpfloat_with_epsilon (case_after (&self)->formula.all_water_percent, 58, 1e-6);
  case_clear (&self);
}

/* Starter: 100 g at 100 % hydration is 50 g flour and 50 g water. */
static void
test_starters_are_exchanged (void)
{
  static const Written lines[] = {
    { TR_STAGE_DOUGH, "starter-wheat", "100 g" },
    { TR_STAGE_DOUGH, "flour-bread", "450 g" },
    { TR_STAGE_DOUGH, "water", "250 g" },
  };
  Case self;

  self = case_new (lines, G_N_ELEMENTS (lines));
  case_set (&self, TR_RATIO_PREFERMENTED, 20);
  g_assert_cmpstr (case_amount (&self, 0), ==, "200 g");
  g_assert_cmpstr (case_amount (&self, 1), ==, "400 g");
  g_assert_cmpstr (case_amount (&self, 2), ==, "200 g");
  case_clear (&self);
}

/* Random doughs */

static const char *
random_amount (double grams)
{
  static char text[3][64];
  static guint next;
  char *out = text[next++ % 3];

  switch (g_test_rand_int_range (0, 4))
    {
    case 0: g_snprintf (out, sizeof text[0], "%.4f kg", grams / 1000); break;
    case 1: g_snprintf (out, sizeof text[0], "%.2f oz", grams / 28.349523125); break;
    default: g_snprintf (out, sizeof text[0], "%.0f g", ceil (grams)); break;
    }

  return out;
}

static TrTrial *
random_trial (void)
{
  static const struct { TrStage stage; const char *ingredient; double low, high; } kinds[] = {
    { TR_STAGE_PREFERMENT, "flour-bread", 80, 300 }, { TR_STAGE_PREFERMENT, "water", 80, 200 },
    { TR_STAGE_DOUGH, "flour-bread", 400, 900 }, { TR_STAGE_DOUGH, "flour-plain", 50, 200 },
    { TR_STAGE_DOUGH, "water", 250, 400 }, { TR_STAGE_DOUGH, "milk-whole", 20, 200 },
    { TR_STAGE_DOUGH, "butter-salted", 20, 90 }, { TR_STAGE_DOUGH, "sugar", 20, 90 }, { TR_STAGE_DOUGH, "honey", 5, 40 },
    { TR_STAGE_DOUGH, "salt", 8, 20 }, { TR_STAGE_DOUGH, "yeast-fresh", 10, 40 }, { TR_STAGE_DOUGH, "egg-whole", 20, 100 },
  };
  static const char *const roll_in[] = { "25 % of dough", "22 % of total", "40 %", "300 g" };
  TrTrial *trial = trial_of (NULL, 0);
  TrDough *dough = tr_trial_get_dough (trial, 0);

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      TrLine *line = tr_line_new (kinds[i].stage, kinds[i].ingredient,
                                  random_amount (g_test_rand_double_range (kinds[i].low, kinds[i].high)));

      if (line->stage == TR_STAGE_PREFERMENT)
        line->group = g_strdup ("sponge");
      g_ptr_array_add (dough->lines, line);
    }
  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_ROLL_IN, g_test_rand_bit () ? "butter-salted" : "butter-unsalted",
                                              roll_in[g_test_rand_int_range (0, 4)]));

  return trial;
}

static gboolean
is_among (const TrRatioMoves *moves,
          guint               index)
{
  for (guint i = 0; i < moves->n_lines; i++)
    if (moves->lines[i] == index)
      return TRUE;

  return FALSE;
}

static void
check_random (Case    *self,
              TrRatio  ratio)
{
  const TrDoughFigures *before = case_before (self), *after;
  double tolerance = ratio == TR_RATIO_SALT || ratio == TR_RATIO_YEAST_FRESH ? TR_RATIO_FINE_TOLERANCE : TR_RATIO_TOLERANCE;
  TrRatioMoves moves;

  tr_ratio_get_moves (before, ratio, &moves);
  g_assert_true (moves.can_move);
  double wanted = g_test_rand_double_range (moves.reach.min, moves.reach.max);
  case_set (self, ratio, wanted);
  after = case_after (self);

  g_assert_cmpuint (after->formula.problems->len, ==, 0);
  g_assert_cmpfloat_with_epsilon (tr_ratio_get (after, ratio), wanted, tolerance + 1e-6);
  g_assert_cmpfloat_with_epsilon (after->formula.written_flour_g, before->formula.written_flour_g, 1e-3);
  if (ratio == TR_RATIO_PREFERMENTED)
    g_assert_cmpfloat_with_epsilon (after->formula.all_water_percent, before->formula.all_water_percent, 1e-3);
  for (guint i = 0; i < before->formula.lines->len; i++)
    if (!is_among (&moves, i))
      g_assert_cmpstr (case_amount (self, i), ==, tr_formula_get_line (&before->formula, i)->line->amount);
}

static void
test_random_doughs (void)
{
  for (guint run = 0; run < 40; run++)
    for (guint ratio = 0; ratio < TR_N_RATIOS; ratio++)
      {
        Case self = case_of_trial (random_trial ());

        check_random (&self, (TrRatio) ratio);
        case_clear (&self);
      }
}

/* The same handle moved many times from the same start leads where one move leads. */
static void
test_drag_does_not_drift (void)
{
  Case self, direct;

  self = case_new (example, G_N_ELEMENTS (example));
  direct = case_new (example, G_N_ELEMENTS (example));
  for (guint i = 0; i < 50; i++)
    case_set (&self, TR_RATIO_SUGAR, g_test_rand_double_range (0, 30));
  case_set (&self, TR_RATIO_SUGAR, 12);
  case_set (&direct, TR_RATIO_SUGAR, 12);
  g_assert_cmpstr (case_amount (&self, 6), ==, case_amount (&direct, 6));
  case_clear (&self);
  case_clear (&direct);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (worked); i++)
    {
      g_autofree char *path = g_strconcat ("/calc/balance/worked/", worked[i].name, NULL);

      g_test_add_data_func (path, &worked[i], test_worked);
    }
  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    {
      g_autofree char *path = g_strconcat ("/calc/balance/unit/", units[i].name, NULL);

      g_test_add_data_func (path, &units[i], test_unit);
    }
  g_test_add_func ("/calc/balance/hydration-moves-water", test_hydration_moves_water);
  g_test_add_func ("/calc/balance/hydration-without-water", test_hydration_without_water);
  g_test_add_func ("/calc/balance/roll-in-bases", test_roll_in_bases);
  g_test_add_func ("/calc/balance/rounding-counts-what-follows", test_rounding_counts_what_follows);
  g_test_add_func ("/calc/balance/salt-down-to-nothing-and-back", test_salt_down_to_nothing_and_back);
  g_test_add_func ("/calc/balance/refusals", test_refusals);
  g_test_add_func ("/calc/balance/added-line-can-be-moved", test_added_line_can_be_moved);
  g_test_add_func ("/calc/balance/percent-of-flour", test_percent_of_flour);
  g_test_add_func ("/calc/balance/all-in-percent", test_all_in_percent);
  g_test_add_func ("/calc/balance/starters-are-exchanged", test_starters_are_exchanged);
  g_test_add_func ("/calc/balance/random-doughs", test_random_doughs);
  g_test_add_func ("/calc/balance/drag-does-not-drift", test_drag_does_not_drift);

  return g_test_run ();
}
