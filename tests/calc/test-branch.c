/* test-branch.c: branches, lineages, differences and what is carried on
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "calc/branch.h"
#include "calc/differences.h"

#include "doughs.h"

static const char *const lines[] = {
  "p flour-bread 150 g", "d flour-bread 450 g", "d water 260 g", "d salt 10 g", "r butter-unsalted 250 g", NULL
};

static TrDough *
add_dough (TrTrial    *trial,
           const char *id,
           const char *from)
{
  TrDough *dough = test_dough_new (lines);

  tr_set_text (&dough->id, id);
  tr_set_text (&dough->name, id);
  tr_set_text (&dough->from, from);
  g_ptr_array_add (trial->doughs, dough);

  return dough;
}

static void
test_branch_stands_behind_and_knows_where_it_is_from (void)
{
  g_autoptr (TrTrial) trial = tr_trial_new ();
  TrDough *original = add_dough (trial, "d1", NULL);

  add_dough (trial, "d3", NULL);
  g_ptr_array_add (original->log->mixes, tr_mix_new ());
  tr_set_text (&original->log->notes, "it rained");

  TrDough *branch = tr_trial_branch_dough (trial, 0, "Two");

  g_assert_cmpuint (trial->doughs->len, ==, 3);
  g_assert_true (tr_trial_get_dough (trial, 1) == branch);
  g_assert_cmpstr (branch->from, ==, "d1");
  g_assert_cmpstr (branch->name, ==, "Two");
  g_assert_cmpstr (branch->id, !=, "d1");
  g_assert_cmpstr (branch->id, !=, "d3");
  g_assert_cmpuint (branch->log->mixes->len, ==, 0);
  g_assert_cmpuint (original->log->mixes->len, ==, 1);

  g_autoptr (GPtrArray) differences = tr_dough_differences (original, branch);
  g_assert_cmpuint (differences->len, ==, 0);
}

static void
test_full_trial_takes_no_branch (void)
{
  g_autoptr (TrTrial) trial = tr_trial_new ();

  for (guint i = 0; i < TR_MAX_DOUGHS; i++)
    {
      g_autofree char *id = tr_trial_dup_free_id (trial);

      add_dough (trial, id, NULL);
    }
  g_assert_null (tr_trial_branch_dough (trial, 0, "more"));
  g_assert_cmpuint (trial->doughs->len, ==, TR_MAX_DOUGHS);
}

static void
test_next_names_count_on (gconstpointer data)
{
  static const struct { const char *names[3], *of, *expected; } cases[] = {
    { { "Sponge" }, "Sponge", "Sponge 2" },
    { { "Sponge", "Sponge 2" }, "Sponge", "Sponge 3" },
    { { "Sponge", "Sponge 2" }, "Sponge 2", "Sponge 3" },
    { { "Sponge 9" }, "Sponge 9", "Sponge 10" },
    { { "T45" }, "T45", "T45 2" },
    { { "7" }, "7", "7 2" },
    { { "" }, "", " 2" },
    { { "Lot 1234567" }, "Lot 1234567", "Lot 1234567 2" },
  };
  guint row = GPOINTER_TO_UINT (data);
  g_autoptr (TrTrial) trial = tr_trial_new ();

  for (guint i = 0; i < 3 && cases[row].names[i] != NULL; i++)
    tr_set_text (&add_dough (trial, "x", NULL)->name, cases[row].names[i]);

  g_autofree char *next = tr_trial_dup_next_name (trial, cases[row].of);
  g_assert_cmpstr (next, ==, cases[row].expected);
}

/* Lineage */

static char *
describe_lineage (const TrTrial *trial)
{
  g_autoptr (GArray) lineage = tr_trial_get_lineage (trial);
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < lineage->len; i++)
    {
      const TrDescent *descent = &g_array_index (lineage, TrDescent, i);

      g_string_append_printf (out, "%s%s/%u", i > 0 ? " " : "", tr_trial_get_dough (trial, descent->dough)->id, descent->generation);
      if (descent->parent >= 0)
        g_string_append_printf (out, "<%s", tr_trial_get_dough (trial, g_array_index (lineage, TrDescent, descent->parent).dough)->id);
    }

  return g_string_free (out, FALSE);
}

static const struct { const char *row, *doughs, *expected; } lineages[] = {
  { "alone", "a", "a/0" },
  { "chain", "a b<a c<b", "a/0 b/1<a c/2<b" },
  { "children-follow-their-parent", "a b c<a d<b e<a", "a/0 c/1<a e/1<a b/0 d/1<b" },
  { "parent-stands-behind", "c<a a", "a/0 c/1<a" },
  { "of-itself", "a<a b<a", "a/0 b/1<a" },
  { "ring-of-two", "a<b b<a", "a/0 b/1<a" },
  { "ring-of-three-and-a-tail", "t<b a<c b<a c<b", "a/0 b/1<a t/2<b c/2<b" },
  { "not-there", "a<gone b<a", "a/0 b/1<a" },
};

static TrTrial *
trial_of (const char *doughs)
{
  TrTrial *trial = tr_trial_new ();
  g_auto (GStrv) words = g_strsplit (doughs, " ", -1);

  for (guint i = 0; words[i] != NULL; i++)
    {
      g_auto (GStrv) parts = g_strsplit (words[i], "<", 2);

      add_dough (trial, parts[0], parts[1]);
    }

  return trial;
}

static void
test_lineage (gconstpointer data)
{
  guint row = GPOINTER_TO_UINT (data);
  g_autoptr (TrTrial) trial = trial_of (lineages[row].doughs);
  g_autofree char *text = describe_lineage (trial);

  g_assert_cmpstr (text, ==, lineages[row].expected);
}

/* Whatever `from` says, each dough stands there once, behind its parent. */
static void
test_lineage_holds_every_dough_once (void)
{
  for (guint n = 0; n < 200; n++)
    {
      g_autoptr (TrTrial) trial = tr_trial_new ();
      guint doughs = (guint) g_test_rand_int_range (0, 12);
      gboolean seen[12] = { FALSE };

      for (guint i = 0; i < doughs; i++)
        {
          g_autofree char *id = g_strdup_printf ("d%u", i), *from = g_strdup_printf ("d%d", g_test_rand_int_range (0, 14));

          add_dough (trial, id, g_test_rand_bit () ? from : NULL);
        }

      g_autoptr (GArray) lineage = tr_trial_get_lineage (trial);

      g_assert_cmpuint (lineage->len, ==, doughs);
      for (guint i = 0; i < doughs; i++)
        {
          const TrDescent *descent = &g_array_index (lineage, TrDescent, i);

          g_assert_false (seen[descent->dough]);
          seen[descent->dough] = TRUE;
          g_assert_cmpint (descent->parent, <, (int) i);
          g_assert_cmpuint (descent->generation, ==,
                            descent->parent < 0 ? 0 : g_array_index (lineage, TrDescent, descent->parent).generation + 1);
        }
    }
}

static void
test_removed_parent_leaves_a_dough_that_comes_from_none (void)
{
  g_autoptr (TrTrial) trial = trial_of ("a b<a c<b");

  tr_trial_remove_dough (trial, 1);
  g_assert_cmpint (tr_trial_find_parent (trial, 1), ==, -1);
}

/* Carrying on */

static void
test_chosen_doughs_are_carried_with_bench_and_pantry_only (void)
{
  g_autoptr (TrTrial) trial = trial_of ("a b<a c<b d<b");
  static const char *const chosen[] = { "d", "a", "no-such", NULL };

  trial->prediction = tr_prediction_new ();
  trial->plan = tr_plan_new ();
  trial->tasting = tr_tasting_new ();
  g_ptr_array_add (tr_trial_get_dough (trial, 3)->log->mixes, tr_mix_new ());
  g_ptr_array_add (trial->pantry->own, tr_own_ingredient_new ("mine", "butter-unsalted"));

  g_autoptr (TrTrial) next = tr_trial_carry (trial, chosen, "The second");

  g_assert_cmpstr (next->title, ==, "The second");
  g_assert_true (next->bench == trial->bench);
  g_assert_nonnull (tr_pantry_find (next->pantry, "mine"));
  g_assert_cmpuint (next->doughs->len, ==, 2);
  g_assert_cmpstr (tr_trial_get_dough (next, 0)->id, ==, "a");
  g_assert_cmpstr (tr_trial_get_dough (next, 1)->id, ==, "d");
  /* b stays behind, and a is the nearest that comes along. */
  g_assert_cmpstr (tr_trial_get_dough (next, 1)->from, ==, "a");
  g_assert_cmpuint (tr_trial_get_dough (next, 1)->log->mixes->len, ==, 0);
  g_assert_cmpuint (tr_trial_get_dough (trial, 3)->log->mixes->len, ==, 1);
  g_assert_null (next->prediction);
  g_assert_null (next->plan);
  g_assert_null (next->tasting);
}

static void
test_dough_whose_forebears_stay_behind_comes_from_none (void)
{
  g_autoptr (TrTrial) trial = trial_of ("a<b b<a c<b");
  static const char *const chosen[] = { "c", NULL };
  g_autoptr (TrTrial) next = tr_trial_carry (trial, chosen, "");

  g_assert_null (tr_trial_get_dough (next, 0)->from);
}

/* Differences */

typedef void (*Change) (TrDough *dough);
#define CHANGE(name) static void change_##name (TrDough *dough)

CHANGE (amount) { tr_set_text (&tr_dough_get_line (dough, 3)->amount, "9 g"); }
CHANGE (ingredient) { tr_set_text (&tr_dough_get_line (dough, 4)->ingredient, "butter-salted"); }
CHANGE (line_gone) { g_ptr_array_remove_index (dough->lines, 3); }
CHANGE (line_new) { g_ptr_array_insert (dough->lines, 2, tr_line_new (TR_STAGE_FINISH, "egg-whole", "1 egg")); }
CHANGE (line_moved) { g_ptr_array_insert (dough->lines, 0, g_ptr_array_steal_index (dough->lines, 3)); }
CHANGE (kind) { dough->kind = TR_KIND_DANISH; }
CHANGE (pieces) { dough->pieces_written = 12; }
CHANGE (loss) { dough->handling_loss_percent += 1; }
CHANGE (lock_in) { g_clear_pointer (&dough->lock_in, tr_lock_in_free); }
CHANGE (rim) { dough->lock_in->rim_mm = 20; }
CHANGE (style) { dough->lock_in->style = TR_STYLE_LETTER; }
CHANGE (chill) { dough->lock_in->rest = tr_rest_new (); dough->lock_in->rest->min_minutes = 90; }
CHANGE (fold) { tr_dough_get_turn (dough, 1)->fold = 4; }
CHANGE (turn_gone) { g_ptr_array_remove_index (dough->turns, 1); }
CHANGE (turn_new) { g_ptr_array_add (dough->turns, tr_turn_new (2, 6)); }
CHANGE (rest) { tr_dough_get_turn (dough, 0)->rest->min_minutes = 90; }
CHANGE (rest_gone) { g_clear_pointer (&tr_dough_get_turn (dough, 0)->rest, tr_rest_free); }
CHANGE (sheet) { dough->cut->thickness_mm = 3.5; }
CHANGE (by_weight) { dough->cut->thickness_mm = NAN; dough->cut->piece_mass_g = 60; }
CHANGE (proof_c) { ((TrStep *) tr_dough_find_step (dough, TR_STEP_PROOF))->at_c = 28; }
CHANGE (second_bake)
{
  TrStep *step = tr_step_new (TR_STEP_BAKE);

  step->minutes = 8;
  g_ptr_array_add (dough->method->steps, step);
}
CHANGE (dough_c) { dough->method->dough_c = 24; }
CHANGE (name) { tr_set_text (&dough->name, "another"); tr_set_text (&dough->notes, "noted"); }

static const struct {
  const char *row;
  Change change;
  const char *expected;          /* kind, where; several with a space between */
} rows[] = {
  { "amount", change_amount, "changed:/lines/3/amount" },
  { "ingredient", change_ingredient, "changed:/lines/4/ingredient" },
  { "line-gone", change_line_gone, "removed:/lines/3" },
  { "line-new", change_line_new, "added:/lines/2" },
  { "line-moved", change_line_moved, "" },
  { "kind", change_kind, "changed:/kind" },
  { "pieces", change_pieces, "changed:/pieces_written" },
  { "loss", change_loss, "changed:/handling_loss_percent" },
  { "lock-in", change_lock_in, "removed:/lock_in" },
  { "rim", change_rim, "changed:/lock_in/rim_mm" },
  { "style", change_style, "changed:/lock_in/style" },
  { "chill", change_chill, "added:/lock_in/rest" },
  { "fold", change_fold, "changed:/turns/1/fold" },
  { "turn-gone", change_turn_gone, "removed:/turns/1" },
  { "turn-new", change_turn_new, "added:/turns/3" },
  { "rest", change_rest, "changed:/turns/0/rest/min" },
  { "rest-gone", change_rest_gone, "removed:/turns/0/rest" },
  { "sheet", change_sheet, "changed:/cut/thickness_mm" },
  { "by-weight", change_by_weight, "changed:/cut/thickness_mm changed:/cut/piece_mass_g" },
  { "proof", change_proof_c, "changed:/method/steps/1/at_c" },
  { "second-bake", change_second_bake, "added:/method/steps/3" },
  { "dough-c", change_dough_c, "changed:/method/dough_c" },
  { "name-and-notes", change_name, "" },
};

static TrDough *
full_dough (void)
{
  static const TrStepId ids[] = { TR_STEP_MIX, TR_STEP_PROOF, TR_STEP_BAKE };
  static const int folds[] = { 3, 2, 3 };
  TrDough *dough = test_dough_new (lines);

  dough->lock_in = tr_lock_in_new ();
  dough->cut = tr_cut_new ();
  dough->method->dough_c = 22;
  for (guint i = 0; i < 3; i++)
    {
      TrStep *step = tr_step_new (ids[i]);

      step->at_c = 31;
      g_ptr_array_add (dough->method->steps, step);
      g_ptr_array_add (dough->turns, tr_turn_new (folds[i], 8));
    }
  tr_dough_get_turn (dough, 0)->rest = tr_rest_new ();

  return dough;
}

static char *
describe (const GPtrArray *differences)
{
  static const char *const kinds[] = { "changed", "added", "removed" };
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < differences->len; i++)
    {
      const TrDifference *difference = differences->pdata[i];

      g_string_append_printf (out, "%s%s:%s", i > 0 ? " " : "", kinds[difference->kind], difference->where);
    }

  return g_string_free (out, FALSE);
}

static void
test_difference_is_found_and_nothing_else (gconstpointer data)
{
  guint row = GPOINTER_TO_UINT (data);
  g_autoptr (TrDough) was = full_dough ();
  g_autoptr (TrDough) is = tr_dough_copy (was);

  rows[row].change (is);

  g_autoptr (GPtrArray) differences = tr_dough_differences (was, is);
  g_autofree char *text = describe (differences);
  g_assert_cmpstr (text, ==, rows[row].expected);
}

static void
test_difference_holds_both_values (void)
{
  g_autoptr (TrDough) was = full_dough ();
  g_autoptr (TrDough) is = tr_dough_copy (was);

  change_amount (is);
  change_proof_c (is);

  g_autoptr (GPtrArray) differences = tr_dough_differences (was, is);
  const TrDifference *amount = differences->pdata[0], *proof = differences->pdata[1];

  g_assert_cmpstr (amount->text_was, ==, "10 g");
  g_assert_cmpstr (amount->text_is, ==, "9 g");
  g_assert_cmpstr (amount->ingredient, ==, "salt");
  g_assert_cmpint (proof->part, ==, TR_PART_OF_STEP);
  g_assert_cmpint (proof->what, ==, TR_STEP_PROOF);
  g_assert_cmpint (proof->measure, ==, TR_DIFFERS_IN_C);
  g_assert_cmpfloat_with_epsilon (proof->was, 31, 1e-9);
  g_assert_cmpfloat_with_epsilon (proof->is, 28, 1e-9);
}

/* What is added one way round is removed the other. */
static void
test_differences_the_other_way_round_are_the_same_many (gconstpointer data)
{
  guint row = GPOINTER_TO_UINT (data);
  g_autoptr (TrDough) was = full_dough ();
  g_autoptr (TrDough) is = tr_dough_copy (was);

  rows[row].change (is);

  g_autoptr (GPtrArray) there = tr_dough_differences (was, is);
  g_autoptr (GPtrArray) back = tr_dough_differences (is, was);

  g_assert_cmpuint (there->len, ==, back->len);
  for (guint i = 0; i < there->len; i++)
    {
      TrDifferenceKind kind = ((TrDifference *) there->pdata[i])->kind;
      TrDifferenceKind other = kind == TR_DIFFERENCE_ADDED ? TR_DIFFERENCE_REMOVED
                               : kind == TR_DIFFERENCE_REMOVED ? TR_DIFFERENCE_ADDED : TR_DIFFERENCE_CHANGED;

      g_assert_cmpint (((TrDifference *) back->pdata[i])->kind, ==, other);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/branch/stands-behind", test_branch_stands_behind_and_knows_where_it_is_from);
  g_test_add_func ("/branch/full-trial", test_full_trial_takes_no_branch);
  for (guint i = 0; i < 8; i++)
    {
      g_autofree char *name = g_strdup_printf ("/branch/next-name/%u", i);

      g_test_add_data_func (name, GUINT_TO_POINTER (i), test_next_names_count_on);
    }
  for (guint i = 0; i < G_N_ELEMENTS (lineages); i++)
    {
      g_autofree char *name = g_strdup_printf ("/branch/lineage/%s", lineages[i].row);

      g_test_add_data_func (name, GUINT_TO_POINTER (i), test_lineage);
    }
  g_test_add_func ("/branch/lineage/every-dough-once", test_lineage_holds_every_dough_once);
  g_test_add_func ("/branch/removed-parent", test_removed_parent_leaves_a_dough_that_comes_from_none);
  g_test_add_func ("/branch/carry", test_chosen_doughs_are_carried_with_bench_and_pantry_only);
  g_test_add_func ("/branch/carry-without-forebears", test_dough_whose_forebears_stay_behind_comes_from_none);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *there = g_strdup_printf ("/branch/difference/%s", rows[i].row);
      g_autofree char *back = g_strdup_printf ("/branch/difference-back/%s", rows[i].row);

      g_test_add_data_func (there, GUINT_TO_POINTER (i), test_difference_is_found_and_nothing_else);
      g_test_add_data_func (back, GUINT_TO_POINTER (i), test_differences_the_other_way_round_are_the_same_many);
    }
  g_test_add_func ("/branch/difference/both-values", test_difference_holds_both_values);

  return g_test_run ();
}
