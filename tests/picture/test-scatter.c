/* test-scatter.c: doughs by two figures, and the small scale beside a figure
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "picture/cell-scale.h"
#include "picture/scatter.h"
#include "samples.h"

#define WIDTH 420.0
#define HEIGHT 320.0

typedef struct {
  TrFigures *figures;
  TrReader reader;
  TrLook look;
  guint doughs[N_SAMPLES];
} Fixture;

static void
set_up (Fixture      *fixture,
        gconstpointer data)
{
  g_autoptr (TrTrial) trial = sample_trial_all ();

  fixture->figures = tr_figures_compute (trial, NULL);
  tr_reader_init_plain (&fixture->reader, TR_UNITS_METRIC);
  tr_look_init_screen (&fixture->look, FALSE, FALSE, 13);
  for (guint i = 0; i < N_SAMPLES; i++)
    fixture->doughs[i] = i;
}

static void
tear_down (Fixture      *fixture,
           gconstpointer data)
{
  tr_figures_unref (fixture->figures);
}

static const TrComparable *
find (const char *key)
{
  const TrComparable *comparable = tr_comparable_find (key);

  g_assert_nonnull (comparable);

  return comparable;
}

static TrPicture *
make (Fixture            *fixture,
      const TrComparable *across,
      const TrComparable *up,
      const double       *scores,
      guint               n)
{
  const TrScatter scatter = {
    .figures = fixture->figures, .doughs = fixture->doughs, .n_doughs = n, .across = across, .up = up, .scores = scores, .current = 1,
  };

  return tr_scatter_picture_new (&scatter, &fixture->reader, &fixture->look, WIDTH, HEIGHT);
}

static gboolean
says (const TrPicture *picture,
      const char      *words)
{
  g_autoptr (GString) plain = g_string_new (tr_picture_get_description (picture));

  g_string_replace (plain, "\u00a0", " ", 0);

  return strstr (plain->str, words) != NULL;
}

static void
test_points_lie_where_their_figures_say (Fixture      *fixture,
                                         gconstpointer data)
{
  const TrComparable *across = find ("all_water_percent"), *up = find ("roll_in_percent_of_dough");
  g_autoptr (TrPicture) picture = make (fixture, across, up, NULL, N_SAMPLES);
  guint n_seen = 0;

  for (guint i = 0; i < N_SAMPLES; i++)
    {
      const TrDoughFigures *dough = tr_figures_get_dough (fixture->figures, i);
      double x, y;
      TrHit hit;

      if (!isfinite (tr_comparable_get (across, dough)) || !isfinite (tr_comparable_get (up, dough)))
        continue;
      g_assert_true (tr_plane_picture_get_place (picture, tr_comparable_get (across, dough), tr_comparable_get (up, dough), &x, &y));
      hit = tr_picture_hit (picture, x, y);
      g_assert_cmpint (hit.part, ==, TR_PART_OF_POINT);
      n_seen++;
    }
  g_assert_cmpuint (n_seen, >=, 5);
}

static void
test_points_go_by_letter_and_name (Fixture      *fixture,
                                   gconstpointer data)
{
  g_autoptr (TrPicture) picture = make (fixture, find ("all_water_percent"), find ("roll_in_percent_of_dough"), NULL, 3);

  for (guint i = 0; i < 3; i++)
    {
      g_autofree char *letter = tr_words_letter (i), *name = tr_words_one_line (tr_trial_get_dough (fixture->figures->trial, i)->name);
      g_autofree char *both = g_strdup_printf ("%s %s", letter, name);

      g_assert_true (says (picture, both));
    }
  g_assert_true (says (picture, "Across: Hydration, all water. Up: Roll-in, of the dough."));
}

static void
test_scores_are_an_axis (Fixture      *fixture,
                         gconstpointer data)
{
  double scores[N_SAMPLES], x, y;
  g_autoptr (TrPicture) picture = NULL, without = NULL;

  for (guint i = 0; i < N_SAMPLES; i++)
    scores[i] = i == 0 ? (double) NAN : 4 + i / 2.0;
  picture = make (fixture, find ("all_water_percent"), NULL, scores, 3);
  g_assert_true (says (picture, "Up: Mean score."));
  g_assert_true (tr_plane_picture_get_place (picture, tr_comparable_get (find ("all_water_percent"), tr_figures_get_dough (fixture->figures, 1)), 4.5, &x, &y));
  g_assert_cmpint (tr_picture_hit (picture, x, y).part, ==, TR_PART_OF_POINT);

  without = make (fixture, find ("all_water_percent"), NULL, NULL, 3);
  g_assert_true (says (without, "Not known, so not on the plane: A "));
}

static void
test_axes_stand_in_the_readers_units (Fixture      *fixture,
                                      gconstpointer data)
{
  g_autoptr (TrPicture) metric = make (fixture, find ("thickness_mm"), find ("added_fat_g"), NULL, N_SAMPLES), us = NULL;
  TrRange across_mm, up_g, across_in, up_oz;

  tr_reader_init_plain (&fixture->reader, TR_UNITS_US);
  us = make (fixture, find ("thickness_mm"), find ("added_fat_g"), NULL, N_SAMPLES);
  g_assert_true (tr_plane_picture_get_view (metric, &across_mm, &up_g));
  g_assert_true (tr_plane_picture_get_view (us, &across_in, &up_oz));
  g_assert_cmpfloat (across_in.max * 25.4, <, across_mm.max * 2);
  g_assert_cmpfloat (across_in.max * 25.4, >, across_mm.max / 2);
  g_assert_cmpfloat (up_oz.max * TR_GRAMS_PER_OUNCE, <, up_g.max * 2);
  g_assert_cmpfloat (up_oz.max * TR_GRAMS_PER_OUNCE, >, up_g.max / 2);
  g_assert_true (says (us, " oz"));
}

static void
test_any_two_figures_can_be_drawn (Fixture      *fixture,
                                   gconstpointer data)
{
  guint n;
  const TrComparable *all = tr_comparables_get_all (&n);

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (TrPicture) picture = make (fixture, &all[i], &all[(i * 7 + 3) % n], NULL, N_SAMPLES);
      double width, height;
      TrBox all_of_it;

      tr_picture_get_size (picture, &width, &height);
      tr_picture_get_extents (picture, &all_of_it);
      g_assert_cmpfloat (all_of_it.x, >=, -1);
      g_assert_cmpfloat (all_of_it.y, >=, -1);
      g_assert_cmpfloat (all_of_it.x + all_of_it.width, <=, width + 1);
      g_assert_cmpfloat (all_of_it.y + all_of_it.height, <=, height + 1);
      g_assert_null (strstr (tr_picture_get_description (picture), "nan"));
    }
}

/* Scales */

static void
test_scale_holds_values_and_bands (Fixture      *fixture,
                                   gconstpointer data)
{
  guint n;
  const TrComparable *all = tr_comparables_get_all (&n);

  for (guint i = 0; i < n; i++)
    {
      TrCellScale scale;

      tr_cell_scale_init (&scale, &all[i], fixture->figures, fixture->doughs, N_SAMPLES);
      for (guint d = 0; d < N_SAMPLES; d++)
        {
          const TrDoughFigures *dough = tr_figures_get_dough (fixture->figures, d);
          double place = tr_cell_scale_place (&scale, tr_comparable_get (&all[i], dough));
          TrBand band;

          g_assert_cmpint (isnan (place), ==, !isfinite (tr_comparable_get (&all[i], dough)));
          if (isnan (place))
            continue;
          g_assert_cmpfloat (place, >=, -1e-9);
          g_assert_cmpfloat (place, <=, 1 + 1e-9);
          if (!tr_comparable_get_band (&all[i], dough, &band))
            continue;
          g_assert_cmpfloat (tr_cell_scale_place (&scale, band.low), >=, -1e-9);
          g_assert_cmpfloat (tr_cell_scale_place (&scale, band.high), <=, 1 + 1e-9);
        }
    }
}

static void
test_next_to_nothing_does_not_look_like_much (Fixture      *fixture,
                                              gconstpointer data)
{
  const guint one[] = { 0 };
  TrCellScale scale;
  double value = tr_comparable_get (find ("raw_mass_g"), tr_figures_get_dough (fixture->figures, 0));

  tr_cell_scale_init (&scale, find ("raw_mass_g"), fixture->figures, one, 1);
  g_assert_cmpfloat_with_epsilon (tr_cell_scale_place (&scale, value), 0.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (tr_cell_scale_place (&scale, value * 1.001) - tr_cell_scale_place (&scale, value),
                                  0.001 / TR_CELL_SCALE_LEAST, 1e-9);
}

static void
test_a_scale_stays_in_its_box (Fixture      *fixture,
                               gconstpointer data)
{
  const TrBox box = { 20, 10, 60, 14 };
  guint n;
  const TrComparable *all = tr_comparables_get_all (&n);

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (TrPicture) picture = tr_picture_new (&fixture->look, &fixture->reader, 100, 40);
      TrCellScale scale;
      TrBand band;
      TrBox extents;
      const TrDoughFigures *dough = tr_figures_get_dough (fixture->figures, 0);
      gboolean has_band = tr_comparable_get_band (&all[i], dough, &band);

      if (!isfinite (tr_comparable_get (&all[i], dough)))
        continue;
      tr_cell_scale_init (&scale, &all[i], fixture->figures, fixture->doughs, N_SAMPLES);
      tr_picture_add_cell_scale (picture, &box, &scale, tr_comparable_get (&all[i], dough), has_band ? &band : NULL,
                                 tr_comparable_get (&all[i], tr_figures_get_dough (fixture->figures, 1)));
      tr_picture_get_extents (picture, &extents);
      g_assert_cmpfloat (extents.x, >=, box.x - 1);
      g_assert_cmpfloat (extents.x + extents.width, <=, box.x + box.width + 1);
      g_assert_cmpfloat (extents.y, >=, box.y - 1);
      g_assert_cmpfloat (extents.y + extents.height, <=, box.y + box.height + 1);
    }
}

#define ADD(path, test) g_test_add (path, Fixture, NULL, set_up, test, tear_down)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  ADD ("/scatter/points-lie-where-their-figures-say", test_points_lie_where_their_figures_say);
  ADD ("/scatter/points-go-by-letter-and-name", test_points_go_by_letter_and_name);
  ADD ("/scatter/scores-are-an-axis", test_scores_are_an_axis);
  ADD ("/scatter/axes-stand-in-the-readers-units", test_axes_stand_in_the_readers_units);
  ADD ("/scatter/any-two-figures-can-be-drawn", test_any_two_figures_can_be_drawn);
  ADD ("/cell-scale/holds-values-and-bands", test_scale_holds_values_and_bands);
  ADD ("/cell-scale/next-to-nothing-does-not-look-like-much", test_next_to_nothing_does_not_look_like_much);
  ADD ("/cell-scale/stays-in-its-box", test_a_scale_stays_in_its_box);

  return g_test_run ();
}
