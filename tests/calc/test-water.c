/* test-water.c: how warm or cold the water must be
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "calc/water.h"
#include "weighed.h"

typedef struct {
  const char *name;
  const char *lines[6];
  double dough_c, liquids_c, preferment_c;
  double n, need_c, water_c, ice_g, water_g;
} Case;

/* flour 20, room 21, fridge 4, tap 16, friction 12 of 3 */
static const Case cases[] = {
  { "straight", { "d flour-bread 500 g", "d water 300 g" }, 24, NAN, NAN, 3, 19, 19, 0, 300 },
  { "ice", { "d flour-bread 500 g", "d water 300 g" }, 22, NAN, NAN, 3, 13, 13, 300 * 3 / 96.0, 300 },
  { "a poolish counts at the room's temperature",
    { "d flour-bread 400 g", "d water 200 g", "p flour-bread 100 g", "p water 100 g" }, 22, NAN, NAN,
    4, 10, 10, 200 * 6 / 96.0, 200 },
  { "a poolish at its own",
    { "d flour-bread 400 g", "d water 200 g", "p flour-bread 100 g", "p water 100 g" }, 22, NAN, 11,
    4, 20, 20, 0, 200 },
  { "a starter is no water and a fourth temperature",
    { "d flour-bread 400 g", "d water 200 g", "d starter-wheat 100 g" }, 22, NAN, NAN, 4, 10, 10, 200 * 6 / 96.0, 200 },
  { "milk from the fridge is made up for by the water",
    { "d flour-bread 500 g", "d water 200 g", "d milk-whole 100 g" }, 24, NAN, NAN,
    3, 19, (19 * 300 - 4 * 100) / 200.0, 0, 200 },
  { "milk at its own temperature",
    { "d flour-bread 500 g", "d water 200 g", "d milk-whole 100 g" }, 24, 19, NAN, 3, 19, 19, 0, 200 },
  { "egg is poured, powder and butter are not",
    { "d flour-bread 500 g", "d water 200 g", "d egg-whole 50 g", "d milk-powder-skim 20 g", "d butter-unsalted 50 g" }, 24, NAN, NAN,
    3, 19, (19 * 250 - 4 * 50) / 200.0, 0, 200 },
  { "too warm for yeast",
    { "d flour-bread 500 g", "d water 50 g", "d milk-whole 200 g" }, 27, NAN, NAN, 3, 28, NAN, NAN, 50 },
  { "no water", { "d flour-bread 500 g", "d milk-whole 300 g" }, 24, NAN, NAN, 3, 19, NAN, NAN, NAN },
  { "below freezing",
    { "d flour-bread 500 g", "d water 300 g" }, 17, NAN, NAN, 3, -2, -2, 300 * 18 / 96.0, 300 },
};

static void
test_water_case (gconstpointer data)
{
  const Case *c = data;
  Fixture f = weigh (c->lines);
  g_autoptr (TrBench) bench = tr_bench_new ();
  TrWater water;

  f.dough->method->dough_c = c->dough_c;
  f.dough->method->liquids_c = c->liquids_c;
  f.dough->method->preferment_c = c->preferment_c;
  g_assert_true (tr_water_compute (f.dough, bench, &f.formula, &water));
  assert_near (water.n, c->n, 1e-12);
  assert_near (water.liquid_need_c, c->need_c, 1e-9);
  assert_near (water.water_c, c->water_c, 1e-9);
  assert_near (water.ice_g, c->ice_g, 1e-9);
  assert_near (water.available_water_g, c->water_g, 1e-9);
  done (&f);
}

/* What was measured on three temperatures holds for four: friction is a
 * difference and grows with n. */
static void
test_water_friction_goes_with_n (void)
{
  Fixture f = weigh ((const char *[]) { "d flour-bread 400 g", "d water 200 g", "p flour-bread 100 g", NULL });
  g_autoptr (TrBench) bench = tr_bench_new ();
  TrWater water, other;

  g_assert_true (tr_water_compute (f.dough, bench, &f.formula, &water));
  f.dough->method->friction_c = 16;
  f.dough->method->friction_n = 4;
  g_assert_true (tr_water_compute (f.dough, bench, &f.formula, &other));
  assert_near (water.liquid_need_c, other.liquid_need_c, 1e-9);
  done (&f);
}

static void
test_water_without_dough (void)
{
  Fixture f = weigh ((const char *[]) { "r butter-unsalted 100 g", NULL });
  g_autoptr (TrBench) bench = tr_bench_new ();
  TrWater water;

  g_assert_false (tr_water_compute (f.dough, bench, &f.formula, &water));
  done (&f);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_strconcat ("/calc/water/", cases[i].name, NULL);

      g_test_add_data_func (g_strdelimit (path, " ", '-'), &cases[i], test_water_case);
    }
  g_test_add_func ("/calc/water/friction-goes-with-n", test_water_friction_goes_with_n);
  g_test_add_func ("/calc/water/without-dough", test_water_without_dough);

  return g_test_run ();
}
