/* test-mix.c: the friction from a mix that was measured
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Published worked formulas of the water temperature, run backwards: Pizza
 * Today, June 2018; San Francisco Baking Institute, class sheet 2009. Both in
 * Fahrenheit, of which the differences are 5/9 of a degree Celsius; the
 * friction is a difference.
 */

#include <math.h>

#include "calc/mix.h"
#include "calc/water.h"
#include "doughs.h"

#define C(fahrenheit) (((fahrenheit) - 32) / 1.8)

static const struct {
  const char *name;
  double dough_f, flour_f, room_f, liquid_f, preferment_f, n, friction_f;
} published[] = {
  { "Pizza Today: 240 - 65 - 75 - 35 = 65", 80, 65, 75, 65, NAN, 3, 35 },
  { "San Francisco Baking Institute: 225 - 65 - 65 - 8 = 87", 75, 65, 65, 87, NAN, 3, 8 },
};

static void
test_published_formulas_backwards (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (published); i++)
    {
      TrMix mix = { .dough_c = C (published[i].dough_f), .flour_c = C (published[i].flour_f), .room_c = C (published[i].room_f),
                    .liquid_c = C (published[i].liquid_f), .preferment_c = C (published[i].preferment_f) };
      double n;

      g_test_message ("%s", published[i].name);
      g_assert_cmpfloat_with_epsilon (tr_mix_get_friction (&mix, &n), published[i].friction_f / 1.8, 1e-9);
      g_assert_cmpfloat_with_epsilon (n, published[i].n, 1e-9);
    }
}

static void
test_what_is_not_measured_is_not_made_up (void)
{
  TrMix whole = { .dough_c = 24.5, .flour_c = 20, .room_c = 21, .liquid_c = 16, .preferment_c = NAN };
  double *const needed[] = { &whole.dough_c, &whole.flour_c, &whole.room_c, &whole.liquid_c };
  double n;

  g_assert_cmpfloat_with_epsilon (tr_mix_get_friction (&whole, &n), 16.5, 1e-9);
  for (guint i = 0; i < G_N_ELEMENTS (needed); i++)
    {
      double before = *needed[i];

      *needed[i] = NAN;
      g_assert_true (isnan (tr_mix_get_friction (&whole, &n)));
      *needed[i] = before;
    }
}

/* What a mix says, put back into the rule, asks for the liquid that was poured. */
static void
test_friction_goes_round (void)
{
  for (int i = 0; i < 200; i++)
    {
      gboolean has_preferment = g_test_rand_int_range (0, 2) == 1;
      g_autoptr (TrDough) dough = test_dough_new ((const char *[]) { "d flour-bread 500 g", "d water 300 g",
                                                                     "f starter-wheat 10 g",
                                                                     has_preferment ? "p flour-bread 100 g" : NULL, NULL });
      g_autoptr (TrTrial) trial = tr_trial_new ();
      TrMix *mix = tr_dough_begin_mix (dough, trial->bench, trial->pantry);
      double n;

      g_assert_true (tr_dough_get_last_mix (dough) == mix);
      g_assert_true (tr_is_written (mix->preferment_c) == has_preferment);
      g_assert_true (isnan (mix->dough_c) && isnan (mix->liquid_c));
      mix->dough_c = g_test_rand_double_range (18, 30);
      mix->liquid_c = g_test_rand_double_range (1, 30);
      dough->method->friction_c = tr_mix_get_friction (mix, &n);
      dough->method->friction_n = n;
      dough->method->dough_c = mix->dough_c;
      g_ptr_array_add (trial->doughs, tr_dough_ref (dough));

      g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);

      g_assert_cmpfloat_with_epsilon (tr_figures_get_dough (figures, 0)->water.liquid_need_c, mix->liquid_c, 1e-9);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/calc/mix/published-formulas-backwards", test_published_formulas_backwards);
  g_test_add_func ("/calc/mix/what-is-not-measured-is-not-made-up", test_what_is_not_measured_is_not_made_up);
  g_test_add_func ("/calc/mix/friction-goes-round", test_friction_goes_round);

  return g_test_run ();
}
