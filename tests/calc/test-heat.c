/* test-heat.c: how a slab cools, and what a rest says of it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Only what must hold of any wall; the numbers of handbooks are held against it
 * in reference/. Slabs are invented.
 */

#include "calc/heat.h"
#include "calc/rests.h"
#include "weighed.h"

static const TrThermal dough = { 0.40, 1150, 2800 };

static void
random_wall (TrWall *wall)
{
  double start_c = g_test_rand_double_range (-5, 40);
  double air_c = g_test_rand_double_range (-30, 30);
  double h = pow (10, g_test_rand_double_range (-2, 4));
  double depth_mm = pow (10, g_test_rand_double_range (-1, 3));

  tr_wall_init (wall, start_c, air_c, h, depth_mm, &dough);
}

/* Everywhere between start and air, the face always ahead of the core, and later always nearer to the air. */
static void
test_order (void)
{
  for (guint n = 0; n < 2000; n++)
    {
      TrWall wall;
      double last[3];

      random_wall (&wall);
      for (guint place = 0; place < 3; place++)
        last[place] = 0;
      for (double fourier = 1e-6; fourier < 100; fourier *= 3)
        {
          double minutes = fourier * wall.scale_s / 60, way[3];

          for (guint place = 0; place < 3; place++)
            way[place] = (wall.start_c - tr_wall_get_c (&wall, (TrWallPlace) place, minutes)) / (wall.start_c - wall.air_c);
          for (guint place = 0; place < 3; place++)
            {
              g_assert_cmpfloat (way[place], >=, last[place] - 1e-9);
              g_assert_cmpfloat (way[place], <=, 1 + 1e-9);
              last[place] = way[place];
            }
          g_assert_cmpfloat (way[TR_WALL_SURFACE], >=, way[TR_WALL_MEAN] - 1e-9);
          g_assert_cmpfloat (way[TR_WALL_MEAN], >=, way[TR_WALL_CORE] - 1e-9);
        }
    }
}

/* What the mean has lost has left through the face. */
static void
test_energy (void)
{
  for (guint n = 0; n < 200; n++)
    {
      TrWall wall;
      double fourier = pow (10, g_test_rand_double_range (-4, 1)), left = 0, mean;
      const guint steps = 4000;

      random_wall (&wall);
      /* In the square root of time, since the flow starts steeply. */
      for (guint i = 0; i < steps; i++)
        {
          double from = fourier * (i / (double) steps) * (i / (double) steps);
          double to = fourier * ((i + 1) / (double) steps) * ((i + 1) / (double) steps);
          double middle = fourier * ((i + 0.5) / steps) * ((i + 0.5) / steps);
          double face = (tr_wall_get_c (&wall, TR_WALL_SURFACE, middle * wall.scale_s / 60) - wall.air_c) / (wall.start_c - wall.air_c);

          left += wall.biot * face * (to - from);
        }
      mean = (tr_wall_get_c (&wall, TR_WALL_MEAN, fourier * wall.scale_s / 60) - wall.air_c) / (wall.start_c - wall.air_c);
      g_assert_cmpfloat_with_epsilon (1 - mean, left, 2e-3);
    }
}

/* The mean is the mean over the depth. */
static void
test_mean (void)
{
  for (guint n = 0; n < 200; n++)
    {
      TrWall wall;
      double minutes, sum = 0;

      random_wall (&wall);
      minutes = pow (10, g_test_rand_double_range (-5, 1)) * wall.scale_s / 60;
      for (guint i = 0; i < 20000; i++)
        sum += tr_wall_get_c_at (&wall, (i + 0.5) / 20000, minutes) / 20000;
      g_assert_cmpfloat_with_epsilon (sum, tr_wall_get_c (&wall, TR_WALL_MEAN, minutes), 1e-3);
    }
}

/* A thin or badly cooled slab is of one temperature: Newton's law. */
static void
test_thin (void)
{
  TrWall wall;

  tr_wall_init (&wall, 24, 4, 0.001, 10, &dough);
  double seconds = dough.rho_kg_m3 * dough.cp_j_kgk * 0.01 / 0.001;

  g_assert_cmpfloat_with_epsilon (tr_wall_get_c (&wall, TR_WALL_CORE, seconds / 60), 4 + 20 * exp (-1), 1e-3);
  g_assert_cmpfloat_with_epsilon (tr_wall_get_minutes_to (&wall, TR_WALL_MEAN, 4 + 20 * exp (-1)), seconds / 60, 1e-4 * seconds / 60);
}

/* Short times and the series meet. */
static void
test_seam (void)
{
  for (guint n = 0; n < 500; n++)
    {
      TrWall wall;

      random_wall (&wall);
      for (guint i = 0; i <= 10; i++)
        g_assert_cmpfloat_with_epsilon (tr_wall_get_c_at (&wall, i / 10.0, (0.01 - 1e-9) * wall.scale_s / 60),
                                        tr_wall_get_c_at (&wall, i / 10.0, (0.01 + 1e-9) * wall.scale_s / 60), 1e-4);
      g_assert_cmpfloat_with_epsilon (tr_wall_get_c (&wall, TR_WALL_MEAN, (0.01 - 1e-9) * wall.scale_s / 60),
                                      tr_wall_get_c (&wall, TR_WALL_MEAN, (0.01 + 1e-9) * wall.scale_s / 60), 1e-4);
    }
}

/* The time to a temperature is the time at which it is there. */
static void
test_there_and_back (void)
{
  for (guint n = 0; n < 2000; n++)
    {
      TrWall wall;
      TrWallPlace place = (TrWallPlace) g_test_rand_int_range (0, 3);
      double share = g_test_rand_double_range (0.001, 0.999);

      random_wall (&wall);

      double wanted = wall.air_c + share * (wall.start_c - wall.air_c);
      double minutes = tr_wall_get_minutes_to (&wall, place, wanted);

      g_assert_cmpfloat (minutes, >, 0);
      g_assert_cmpfloat_with_epsilon (tr_wall_get_c (&wall, place, minutes), wanted, 1e-6 * fabs (wall.start_c - wall.air_c));
    }
}

static void
test_never (void)
{
  TrWall wall;

  tr_wall_init (&wall, 20, 4, 8, 30, &dough);
  g_assert_true (isnan (tr_wall_get_minutes_to (&wall, TR_WALL_CORE, 4)));
  g_assert_true (isnan (tr_wall_get_minutes_to (&wall, TR_WALL_CORE, 3)));
  g_assert_cmpfloat_with_epsilon (tr_wall_get_minutes_to (&wall, TR_WALL_CORE, 20), 0, 1e-12);
  g_assert_cmpfloat_with_epsilon (tr_wall_get_minutes_to (&wall, TR_WALL_CORE, 25), 0, 1e-12);
  for (guint i = 0; i < 3; i++)
    {
      const double nothing[] = { 0, NAN, -1 };

      tr_wall_init (&wall, 20, 4, 8, nothing[i], &dough);
      g_assert_true (isnan (tr_wall_get_c (&wall, TR_WALL_CORE, 10)));
      g_assert_true (isnan (tr_wall_get_minutes_to (&wall, TR_WALL_CORE, 8)));
    }
}

/* Rests *********************************************************************/

static TrTrial *
new_trial (TrDough **own)
{
  TrTrial *trial = tr_trial_new ();
  TrDough *one = tr_dough_new ("d1");

  g_ptr_array_add (one->lines, tr_line_new (TR_STAGE_DOUGH, "flour-bread", "500 g"));
  g_ptr_array_add (one->lines, tr_line_new (TR_STAGE_DOUGH, "water", "280 g"));
  g_ptr_array_add (one->lines, tr_line_new (TR_STAGE_ROLL_IN, "butter-unsalted", "250 g"));
  one->lock_in = tr_lock_in_new ();
  one->cut = tr_cut_new ();
  one->batch_by = TR_BATCH_WRITTEN;
  g_ptr_array_add (one->turns, tr_turn_new (3, 8));
  g_ptr_array_add (one->turns, tr_turn_new (4, 8));
  tr_dough_get_turn (one, 0)->rest = tr_rest_new ();
  g_ptr_array_add (trial->doughs, one);
  *own = one;

  return trial;
}

static const TrRestFigures *
compute (TrTrial    *trial,
         int         turn,
         TrFigures **figures)
{
  g_clear_pointer (figures, tr_figures_unref);
  *figures = tr_figures_compute (trial, NULL);

  return tr_rests_find (tr_figures_get_dough (*figures, 0), turn);
}

static void
test_why (void)
{
  g_autoptr (TrFigures) figures = NULL;
  TrDough *own;
  g_autoptr (TrTrial) trial = new_trial (&own);
  TrRest *rest = tr_dough_get_turn (own, 0)->rest;
  const TrRestFigures *got = compute (trial, 1, &figures);

  g_assert_null (tr_rests_find (tr_figures_get_dough (figures, 0), 0));
  g_assert_null (tr_rests_find (tr_figures_get_dough (figures, 0), 2));
  g_assert_cmpfloat_with_epsilon (got->start_c, 14, 1e-12);
  g_assert_cmpfloat_with_epsilon (got->target_c, 8, 1e-12);
  g_assert_cmpint (got->core_why, ==, TR_HEAT_KNOWN);
  g_assert_cmpfloat (got->minutes_to_core, >, got->written_minutes);
  g_assert_cmpfloat_with_epsilon (got->thickness_mm, 24, 1e-9);

  rest->on = TR_ON_RACK;
  double on_board = got->minutes_to_core;
  got = compute (trial, 1, &figures);
  g_assert_cmpfloat (got->minutes_to_core, <, on_board / 1.9);

  rest->target_c = 4;
  got = compute (trial, 1, &figures);
  g_assert_cmpint (got->core_why, ==, TR_HEAT_NEVER_THERE);
  g_assert_true (isnan (got->minutes_to_core));

  rest->target_c = 14;
  got = compute (trial, 1, &figures);
  g_assert_cmpfloat_with_epsilon (got->minutes_to_core, 0, 1e-12);

  rest->target_c = 8;
  rest->place = TR_PLACE_ROOM;
  got = compute (trial, 1, &figures);
  g_assert_cmpint (got->core_why, ==, TR_HEAT_ONLY_WARMS);
  g_assert_cmpfloat (got->core_c_after_written, >, 14);
}

static void
test_freezer (void)
{
  g_autoptr (TrFigures) figures = NULL;
  TrDough *own;
  g_autoptr (TrTrial) trial = new_trial (&own);
  TrRest *rest = tr_dough_get_turn (own, 0)->rest;
  const TrRestFigures *got;
  double freezing;

  rest->place = TR_PLACE_FREEZER;
  rest->min_minutes = 20;
  got = compute (trial, 1, &figures);
  freezing = got->minutes_to_surface_freezing;
  g_assert_cmpfloat (freezing, >, 20);
  g_assert_false (isnan (got->core_c_after_written));
  g_assert_cmpfloat_with_epsilon (tr_wall_get_c (&got->wall, TR_WALL_SURFACE, freezing), -2, 1e-6);

  rest->min_minutes = freezing + 1;
  got = compute (trial, 1, &figures);
  g_assert_true (isnan (got->core_c_after_written));
  g_assert_true (isnan (got->mean_c_after_written));
  g_assert_true (isnan (got->work_window_minutes));
  g_assert_cmpint (got->window_why, ==, TR_HEAT_FREEZES);

  rest->target_c = -1.9;
  got = compute (trial, 1, &figures);
  g_assert_cmpint (got->core_why, ==, TR_HEAT_FREEZES);
}

static void
test_window (void)
{
  g_autoptr (TrFigures) figures = NULL;
  TrDough *own;
  g_autoptr (TrTrial) trial = new_trial (&own);
  TrRest *rest = tr_dough_get_turn (own, 0)->rest;
  const TrRestFigures *got;

  /* Long in the fridge it is too cold at first, then the clock runs from the fat's low end. */
  rest->min_minutes = 24 * 60;
  got = compute (trial, 1, &figures);
  g_assert_cmpfloat (got->mean_c_after_written, <, 10);
  g_assert_cmpfloat (got->minutes_to_workable, >, 0);
  g_assert_cmpfloat (got->work_window_minutes, >, 0);
  g_assert_cmpfloat_with_epsilon (got->plastic_low_c, 10, 1e-12);
  g_assert_cmpfloat_with_epsilon (got->soft_c, 17, 1e-12);
  g_assert_cmpfloat_with_epsilon (got->rolled_mm, 8, 1e-12);

  trial->bench->room_c = 16;
  got = compute (trial, 1, &figures);
  g_assert_cmpint (got->window_why, ==, TR_HEAT_NO_LIMIT);
  g_assert_true (isnan (got->work_window_minutes));
  g_assert_false (isnan (got->minutes_to_workable));

  trial->bench->room_c = 9;
  got = compute (trial, 1, &figures);
  g_assert_cmpint (got->workable_why, ==, TR_HEAT_ROOM_TOO_COLD);

  trial->bench->room_c = 21;
  g_ptr_array_add (own->lines, tr_line_new (TR_STAGE_ROLL_IN, "margarine-stick-unsalted", "50 g"));
  got = compute (trial, 1, &figures);
  g_assert_cmpint (got->window_why, ==, TR_HEAT_NO_FAT);
}

static void
test_findings (void)
{
  g_autoptr (TrFigures) figures = NULL;
  TrDough *own;
  g_autoptr (TrTrial) trial = new_trial (&own);
  TrRest *rest = tr_dough_get_turn (own, 0)->rest;
  gboolean is_short = FALSE, is_slow = FALSE;

  rest->target_c = 6;
  rest->min_minutes = 30;
  tr_dough_get_turn (own, 1)->minutes = 60;
  compute (trial, 1, &figures);

  const GPtrArray *found = tr_figures_get_dough (figures, 0)->findings;

  for (guint i = 0; i < found->len; i++)
    {
      const TrFinding *finding = g_ptr_array_index (found, i);

      if (finding->id == TR_FINDING_REST_SHORT)
        {
          is_short = TRUE;
          g_assert_cmpstr (finding->where, ==, "/turns/0/rest/min");
          g_assert_cmpfloat_with_epsilon (finding->limit, 6, 1e-12);
          g_assert_cmpfloat_with_epsilon (finding->with[0], 1, 1e-12);
        }
      if (finding->id == TR_FINDING_WINDOW_SHORT)
        {
          is_slow = TRUE;
          g_assert_cmpstr (finding->where, ==, "/turns/1/minutes");
          g_assert_cmpfloat_with_epsilon (finding->limit, 60, 1e-12);
          g_assert_cmpfloat_with_epsilon (finding->with[0], 2, 1e-12);
        }
      g_assert_cmpint (finding->id, !=, TR_FINDING_FREEZING);
    }
  g_assert_true (is_short);
  g_assert_true (is_slow);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/heat/order", test_order);
  g_test_add_func ("/heat/energy", test_energy);
  g_test_add_func ("/heat/mean", test_mean);
  g_test_add_func ("/heat/thin", test_thin);
  g_test_add_func ("/heat/seam", test_seam);
  g_test_add_func ("/heat/there-and-back", test_there_and_back);
  g_test_add_func ("/heat/never", test_never);
  g_test_add_func ("/rests/why", test_why);
  g_test_add_func ("/rests/freezer", test_freezer);
  g_test_add_func ("/rests/window", test_window);
  g_test_add_func ("/rests/findings", test_findings);

  return g_test_run ();
}
