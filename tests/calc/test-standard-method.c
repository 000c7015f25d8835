/* test-standard-method.c: the usual steps fill gaps and nothing else
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The times themselves are common practice and are not held to anything but
 * bounds that would be a mistake to leave.
 */

#include "calc/standard-method.h"
#include "doughs.h"

static const char *const full[] = {
  "p flour-bread 150 g", "p water 150 g", "d flour-bread 450 g", "d water 200 g", "d salt 12 g", "d yeast-instant 6 g",
  "r butter-unsalted 300 g", "f egg-whole 50 g", NULL
};
static const char *const no_leaven[] = { "d flour-bread 450 g", "d water 200 g", "r butter-unsalted 300 g", NULL };
static const char *const bare[] = { "d flour-bread 450 g", NULL };

static TrDough *
new_dough (const char *const *lines,
           TrKind             kind,
           gboolean           is_laminated)
{
  TrDough *dough = test_dough_new (lines);

  dough->kind = kind;
  if (is_laminated)
    {
      dough->lock_in = tr_lock_in_new ();
      dough->cut = tr_cut_new ();
    }

  return dough;
}

static guint
fill (TrDough *dough)
{
  g_autoptr (TrTrial) trial = tr_trial_new ();

  return tr_dough_fill_usual_steps (dough, trial->pantry);
}

static const TrStep *
get_step (const TrDough *dough,
          guint          i)
{
  return g_ptr_array_index (dough->method->steps, i);
}

static guint
count_values (const TrDough *dough)
{
  guint n = 0;

  for (guint i = 0; i < dough->method->steps->len; i++)
    {
      const TrStep *step = get_step (dough, i);

      n += (guint) (tr_is_written (step->minutes) + tr_is_written (step->max_minutes) + tr_is_written (step->at_c)
                    + tr_is_written (step->rh_percent) + (step->place >= 0));
    }

  return n;
}

/* In the order of the work, each once, times the right way round, an air once. */
static void
check_method (const TrDough *dough)
{
  for (guint i = 0; i < dough->method->steps->len; i++)
    {
      const TrStep *step = get_step (dough, i);

      if (i > 0)
        g_assert_cmpint (step->id, >, get_step (dough, i - 1)->id);
      g_assert_false (step->max_minutes < step->minutes);
      g_assert_false (step->place >= 0 && tr_is_written (step->at_c));
    }
}

static void
test_every_kind_is_filled (void)
{
  for (guint kind = 0; kind < TR_N_KINDS; kind++)
    {
      g_autoptr (TrDough) dough = new_dough (full, (TrKind) kind, TRUE);
      guint filled = fill (dough);

      g_assert_cmpuint (filled, ==, count_values (dough));
      g_assert_cmpuint (filled, >, 10);
      check_method (dough);
      g_assert_cmpuint (fill (dough), ==, 0);
      g_assert_cmpuint (count_values (dough), ==, filled);
    }
}

typedef struct
{
  const char *name;
  const char *const *lines;
  TrKind kind;
  gboolean is_laminated;
  TrStepId has[4], has_not[6];   /* ended by TR_N_STEPS */
} Needs;

static const Needs needs[] = {
  { "all", full, TR_KIND_CROISSANT, TRUE, { TR_STEP_RIPEN, TR_STEP_SHAPE, TR_STEP_PROOF, TR_STEP_FINISH },
    { TR_STEP_TURN, TR_STEP_REST, TR_N_STEPS } },
  { "no-leaven", no_leaven, TR_KIND_CROISSANT, TRUE, { TR_STEP_MIX, TR_STEP_LOCK_IN, TR_STEP_CUT, TR_STEP_BAKE },
    { TR_STEP_PREFERMENT_MIX, TR_STEP_RIPEN, TR_STEP_BULK, TR_STEP_PROOF, TR_STEP_FINISH, TR_N_STEPS } },
  { "puff", no_leaven, TR_KIND_PUFF, TRUE, { TR_STEP_CHILL, TR_STEP_FAT_BLOCK, TR_STEP_ROLL_OUT, TR_STEP_COOL },
    { TR_STEP_BULK, TR_STEP_PROOF, TR_STEP_RIPEN, TR_N_STEPS } },
  { "bare", bare, TR_KIND_OTHER, FALSE, { TR_STEP_MIX, TR_STEP_CHILL, TR_STEP_BAKE, TR_STEP_COOL },
    { TR_STEP_FAT_BLOCK, TR_STEP_LOCK_IN, TR_STEP_ROLL_OUT, TR_STEP_CUT, TR_STEP_PROOF, TR_N_STEPS } },
  { "danish", full, TR_KIND_DANISH, TRUE, { TR_STEP_PREFERMENT_MIX, TR_STEP_BULK, TR_STEP_PROOF, TR_STEP_FINISH }, { TR_N_STEPS } },
};

static void
test_only_what_the_dough_needs (gconstpointer data)
{
  const Needs *row = data;
  g_autoptr (TrDough) dough = new_dough (row->lines, row->kind, row->is_laminated);

  fill (dough);
  for (guint i = 0; i < G_N_ELEMENTS (row->has); i++)
    g_assert_nonnull (tr_dough_find_step (dough, row->has[i]));
  for (guint i = 0; row->has_not[i] != TR_N_STEPS; i++)
    g_assert_null (tr_dough_find_step (dough, row->has_not[i]));
}

/* A puff dough that somebody put yeast into rises; there is no usual time for that. */
static void
test_puff_with_yeast_has_no_usual_proof (void)
{
  g_autoptr (TrDough) dough = new_dough (full, TR_KIND_PUFF, TRUE);

  fill (dough);
  g_assert_null (tr_dough_find_step (dough, TR_STEP_PROOF));
}

static double
maybe (double from,
       double to)
{
  return g_test_rand_bit () ? g_test_rand_double_range (from, to) : NAN;
}

static void
write_some (TrDough *dough)
{
  for (guint id = 0; id < TR_N_STEPS; id++)
    {
      if (g_test_rand_int_range (0, 3) > 0)
        continue;
      TrStep *step = tr_step_new ((TrStepId) id);

      step->minutes = maybe (1, 300);
      step->max_minutes = maybe (isnan (step->minutes) ? 1 : step->minutes, 1000);
      step->rh_percent = maybe (20, 90);
      if (g_test_rand_bit ())
        step->at_c = maybe (-20, 250);
      else
        step->place = g_test_rand_int_range (-1, TR_N_PLACES);
      g_ptr_array_add (dough->method->steps, step);
    }
}

static void
assert_kept (double written,
             double now)
{
  if (!isnan (written))
    g_assert_cmpfloat_with_epsilon (now, written, 1e-12);
}

/* Whatever stands there before stays; what comes is counted. */
static void
test_nothing_written_changes (void)
{
  for (guint n = 0; n < 500; n++)
    {
      g_autoptr (TrDough) dough = new_dough (full, (TrKind) g_test_rand_int_range (0, TR_N_KINDS), TRUE);
      g_autoptr (TrDough) before = NULL;
      guint n_before, filled;

      write_some (dough);
      before = tr_dough_copy (dough);
      n_before = count_values (dough);
      filled = fill (dough);
      g_assert_cmpuint (count_values (dough), ==, n_before + filled);
      check_method (dough);
      for (guint i = 0; i < before->method->steps->len; i++)
        {
          const TrStep *was = get_step (before, i), *is = tr_dough_find_step (dough, was->id);

          g_assert_nonnull (is);
          assert_kept (was->minutes, is->minutes);
          assert_kept (was->max_minutes, is->max_minutes);
          assert_kept (was->at_c, is->at_c);
          assert_kept (was->rh_percent, is->rh_percent);
          if (was->place >= 0)
            g_assert_cmpint (is->place, ==, was->place);
        }
      g_assert_cmpuint (fill (dough), ==, 0);
    }
}

/* A longest time of the baker's own under the usual time, and a place against the usual temperature. */
static void
test_own_bounds_are_not_overrun (void)
{
  g_autoptr (TrDough) dough = new_dough (full, TR_KIND_CROISSANT, TRUE);
  TrStep *proof = tr_step_new (TR_STEP_PROOF), *bulk = tr_step_new (TR_STEP_BULK);

  bulk->at_c = 24;
  proof->max_minutes = 45;
  proof->place = TR_PLACE_ROOM;
  g_ptr_array_add (dough->method->steps, bulk);
  g_ptr_array_add (dough->method->steps, proof);
  fill (dough);
  g_assert_true (isnan (proof->minutes));
  g_assert_true (isnan (proof->at_c));
  g_assert_cmpint (bulk->place, ==, -1);
  g_assert_cmpfloat_with_epsilon (bulk->minutes, 60, 1e-12);
}

static TrOwnIngredient *
new_tender_fat (double proof_max_c)
{
  TrOwnIngredient *own = tr_own_ingredient_new ("tender-fat", "butter-unsalted");

  own->proof_max_c = proof_max_c;

  return own;
}

/* 28 °C: butter begins to run, common practice; the baker's own fat as it is written. */
static void
test_proof_stays_under_what_the_fat_bears (void)
{
  for (guint kind = 0; kind < TR_N_KINDS; kind++)
    {
      g_autoptr (TrDough) dough = new_dough (full, (TrKind) kind, TRUE);
      g_autoptr (TrTrial) trial = tr_trial_new ();
      g_autoptr (TrFigures) figures = NULL;
      const TrStep *proof;
      const GPtrArray *findings;

      fill (dough);
      proof = tr_dough_find_step (dough, TR_STEP_PROOF);
      if (proof == NULL)
        continue;
      g_assert_cmpfloat (proof->at_c, <=, 28);
      g_assert_cmpfloat (proof->rh_percent, <, 100);
      g_ptr_array_add (trial->doughs, tr_dough_ref (dough));
      figures = tr_figures_compute (trial, NULL);
      findings = tr_figures_get_dough (figures, 0)->findings;
      for (guint i = 0; i < findings->len; i++)
        g_assert_cmpint (((const TrFinding *) g_ptr_array_index (findings, i))->id, !=, TR_FINDING_PROOF_HOT);
    }
}

static void
test_proof_of_a_tender_fat (void)
{
  static const char *const lines[] = {
    "d flour-bread 450 g", "d yeast-instant 6 g", "r butter-unsalted 100 g", "r tender-fat 200 g", NULL
  };
  static const struct { double bears, expected; } rows[] = { { 23.5, 23.5 }, { 26, 26 }, { 40, 26 }, { NAN, 26 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (TrDough) dough = new_dough (lines, TR_KIND_CROISSANT, TRUE);
      g_autoptr (TrTrial) trial = tr_trial_new ();

      g_ptr_array_add (trial->pantry->own, new_tender_fat (rows[i].bears));
      tr_dough_fill_usual_steps (dough, trial->pantry);
      g_assert_cmpfloat_with_epsilon (tr_dough_find_step (dough, TR_STEP_PROOF)->at_c, rows[i].expected, 1e-12);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/standard-method/every-kind-is-filled", test_every_kind_is_filled);
  for (guint i = 0; i < G_N_ELEMENTS (needs); i++)
    {
      g_autofree char *path = g_strdup_printf ("/standard-method/only-what-the-dough-needs/%s", needs[i].name);

      g_test_add_data_func (path, &needs[i], test_only_what_the_dough_needs);
    }
  g_test_add_func ("/standard-method/puff-with-yeast-has-no-usual-proof", test_puff_with_yeast_has_no_usual_proof);
  g_test_add_func ("/standard-method/nothing-written-changes", test_nothing_written_changes);
  g_test_add_func ("/standard-method/own-bounds-are-not-overrun", test_own_bounds_are_not_overrun);
  g_test_add_func ("/standard-method/proof-stays-under-what-the-fat-bears", test_proof_stays_under_what_the_fat_bears);
  g_test_add_func ("/standard-method/proof-of-a-tender-fat", test_proof_of_a_tender_fat);

  return g_test_run ();
}
