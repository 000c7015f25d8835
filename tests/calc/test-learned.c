/* test-learned.c: a log gives back what it was made with
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "calc/learned.h"
#include "weighed.h"

static TrTrial *
new_trial (void)
{
  TrTrial *trial = tr_trial_new ();
  TrDough *dough = tr_dough_new ("d1");

  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "flour-bread", "500 g"));
  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "water", "280 g"));
  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_ROLL_IN, "butter-unsalted", "250 g"));
  dough->lock_in = tr_lock_in_new ();
  dough->cut = tr_cut_new ();
  dough->batch_by = TR_BATCH_WRITTEN;
  g_ptr_array_add (trial->doughs, dough);

  return trial;
}

static gboolean
find (const TrTrial *trial,
      TrLearnedId    id,
      TrLearned     *learned)
{
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);

  return tr_learned_find (tr_figures_get_dough (figures, 0), id, learned);
}

/* A cut off a sheet of a known density tells it; used, the figures make that mass. */
static void
test_density (void)
{
  for (guint n = 0; n < 200; n++)
    {
      g_autoptr (TrTrial) trial = new_trial ();
      TrDough *dough = tr_trial_get_dough (trial, 0);
      double density = g_test_rand_double_range (0.8, 1.25);
      TrLearned learned;

      dough->dough_density_g_ml = density;
      {
        g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
        double mix = tr_figures_get_dough (figures, 0)->lamination.mix_density_g_ml;

        for (guint i = 0; i < 3; i++)
          {
            TrLoggedCut *cut = tr_logged_cut_new ();

            cut->length_mm = g_test_rand_double_range (80, 300);
            cut->width_mm = g_test_rand_double_range (80, 300);
            cut->thickness_mm = g_test_rand_double_range (3, 9);
            cut->mass_g = cut->length_mm * cut->width_mm * cut->thickness_mm / 1000 * mix;
            g_ptr_array_add (dough->log->cuts, cut);
          }
      }
      dough->dough_density_g_ml = 1.15;
      g_assert_true (find (trial, TR_LEARNED_DENSITY, &learned));
      g_assert_cmpuint (learned.n, ==, 3);
      assert_near (learned.value, density, 1e-9);
      assert_near (learned.least, density, 1e-9);
      assert_near (learned.greatest, density, 1e-9);
      tr_learned_apply (&learned, dough);
      assert_near (dough->dough_density_g_ml, density, 0.0026);
      g_assert_true (find (trial, TR_LEARNED_DENSITY, &learned));
      g_assert_true (tr_learned_is_set (&learned));
    }
}

static void
add_pieces (TrTrial *trial,
            double   raw_g,
            double   baked_g)
{
  TrLoggedPieces *pieces = tr_logged_pieces_new ();

  pieces->raw_g = raw_g;
  pieces->baked_g = baked_g;
  g_ptr_array_add (tr_trial_get_dough (trial, 0)->log->pieces, pieces);
}

/* Of all together, not of the single losses: 10 g of 100 and 45 g of 300 are 55 of 400. */
static void
test_bake_loss (void)
{
  g_autoptr (TrTrial) trial = new_trial ();
  TrLearned learned;

  g_assert_false (find (trial, TR_LEARNED_BAKE_LOSS, &learned));
  add_pieces (trial, 100, NAN);
  g_assert_false (find (trial, TR_LEARNED_BAKE_LOSS, &learned));
  add_pieces (trial, 100, 90);
  add_pieces (trial, 300, 255);
  add_pieces (trial, 50, 60);      /* read off the wrong way */
  g_assert_true (find (trial, TR_LEARNED_BAKE_LOSS, &learned));
  g_assert_cmpuint (learned.n, ==, 2);
  g_assert_cmpuint (learned.n_left_out, ==, 1);
  assert_near (learned.value, 13.75, 1e-9);
  assert_near (learned.least, 10, 1e-9);
  assert_near (learned.greatest, 15, 1e-9);
  g_assert_true (isnan (learned.now));
  g_assert_false (tr_learned_is_set (&learned));
  tr_learned_apply (&learned, tr_trial_get_dough (trial, 0));
  assert_near (tr_trial_get_dough (trial, 0)->bake_loss_percent, 13.75, 0.051);
}

static void
test_shrink (void)
{
  g_autoptr (TrTrial) trial = new_trial ();
  TrLoggedSize *turn = tr_logged_size_new (1), *sheet = tr_logged_size_new (0);
  TrLearned learned;

  turn->length_mm = sheet->length_mm = 600;
  turn->relaxed_mm = 100;
  sheet->relaxed_mm = 570;
  g_ptr_array_add (tr_trial_get_dough (trial, 0)->log->sizes, turn);
  g_ptr_array_add (tr_trial_get_dough (trial, 0)->log->sizes, sheet);
  g_assert_true (find (trial, TR_LEARNED_SHRINK, &learned));
  assert_near (learned.value, 5, 1e-9);
  tr_learned_apply (&learned, tr_trial_get_dough (trial, 0));

  /* And then it is rolled so that it relaxes to what is wanted. */
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrSheet *made = &tr_figures_get_dough (figures, 0)->sheet;

  assert_near (made->rolled_mm.mm[0], made->length_mm / 0.95, 1e-9);
  tr_cut_free (tr_trial_get_dough (trial, 0)->cut);
  tr_trial_get_dough (trial, 0)->cut = NULL;
  g_assert_false (find (trial, TR_LEARNED_SHRINK, &learned));
}

/* The rule of the water backwards: the friction used gives the dough that was measured. */
static void
test_friction (void)
{
  g_autoptr (TrTrial) trial = new_trial ();
  TrDough *dough = tr_trial_get_dough (trial, 0);
  TrMix *mix = tr_mix_new ();
  TrLearned learned;

  g_assert_false (find (trial, TR_LEARNED_FRICTION, &learned));
  mix->flour_c = 20;
  mix->room_c = 21;
  mix->liquid_c = 10;
  mix->dough_c = 23;
  g_ptr_array_add (dough->log->mixes, mix);
  g_assert_true (find (trial, TR_LEARNED_FRICTION, &learned));
  assert_near (learned.value, 3 * 23 - 20 - 21 - 10, 1e-9);
  tr_learned_apply (&learned, dough);
  assert_near (dough->method->friction_c, 18, 1e-9);
  assert_near (dough->method->friction_n, 3, 1e-9);
  g_assert_true (find (trial, TR_LEARNED_FRICTION, &learned));
  g_assert_true (tr_learned_is_set (&learned));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/learned/density", test_density);
  g_test_add_func ("/learned/bake-loss", test_bake_loss);
  g_test_add_func ("/learned/shrink", test_shrink);
  g_test_add_func ("/learned/friction", test_friction);

  return g_test_run ();
}
