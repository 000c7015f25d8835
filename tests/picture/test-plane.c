/* test-plane.c: points lie where their values are, and all names can be read
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "picture/plane.h"
#include "picture/shapes.h"
#include "samples.h"

#define MAX_POINTS 64

static const double sizes[][2] = { { 640, 460 }, { 420, 320 }, { 300, 520 }, { 1100, 380 } };

typedef struct {
  TrPlane plane;
  TrPlanePoint points[MAX_POINTS];
  TrReader reader;
  TrLook look;
} Fixture;

static void
init (Fixture *fixture)
{
  *fixture = (Fixture) { 0 };
  fixture->plane = (TrPlane) {
    .across = { "Hydration", "%", tr_words_percent, { 50, 60 }, { NAN, NAN }, 0 },
    .up = { "Roll-in", "%", tr_words_percent, { 22, 34 }, { NAN, NAN }, 0 },
    .points = fixture->points,
    .band_name = "usual for croissant dough",
    .current_word = "the current dough",
  };
  tr_reader_init_plain (&fixture->reader, TR_UNITS_METRIC);
  tr_look_init_screen (&fixture->look, FALSE, FALSE, 13);
}

static void
add (Fixture    *fixture,
     const char *name,
     double      x,
     double      y)
{
  guint n = fixture->plane.n_points++;

  g_assert_cmpuint (n, <, MAX_POINTS);
  fixture->points[n] = (TrPlanePoint) { name, x, y, n == 0, n > 2 ? (int) n - 2 : -1 };
}

static TrPicture *
make (const Fixture *fixture,
      const double  *size)
{
  return tr_plane_picture_new (&fixture->plane, &fixture->reader, &fixture->look, size[0], size[1]);
}

static gboolean
has_text (const TrPicture *picture,
          const char      *text)
{
  for (guint i = 0; i < tr_picture_count_texts (picture); i++)
    if (strstr (tr_picture_get_text (picture, i, NULL), text) != NULL)
      return TRUE;
  return FALSE;
}

static void
assert_readable (const TrPicture *picture,
                 const double    *size)
{
  guint n = tr_picture_count_texts (picture);
  TrBox all;

  tr_picture_get_extents (picture, &all);
  g_assert_cmpfloat (all.x, >=, -1);
  g_assert_cmpfloat (all.y, >=, -1);
  g_assert_cmpfloat (all.x + all.width, <=, size[0] + 1);
  g_assert_cmpfloat (all.y + all.height, <=, size[1] + 1);
  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < i; k++)
      {
        const char *one, *other;
        TrBox a, b;

        one = tr_picture_get_text (picture, i, &a);
        other = tr_picture_get_text (picture, k, &b);
        if (MIN (a.x + a.width, b.x + b.width) - MAX (a.x, b.x) > 0.5 && MIN (a.y + a.height, b.y + b.height) - MAX (a.y, b.y) > 0.5)
          g_error ("“%s” lies on “%s” at %g × %g", one, other, size[0], size[1]);
      }
}

static const double *
get_dot (const TrPicture *picture,
         int              index)
{
  guint n;

  return tr_picture_get_outline (picture, &(TrHit) { TR_PART_OF_POINT, index }, &n);
}

static void
test_values_and_places_are_inverse (void)
{
  for (int round = 0; round < 200; round++)
    {
      const double *size = sizes[round % G_N_ELEMENTS (sizes)];
      g_autoptr (TrPicture) picture = NULL;
      double scale = pow (10, g_test_rand_double_range (-4, 6));
      TrRange across, up;
      Fixture fixture;

      init (&fixture);
      fixture.plane.across.band = fixture.plane.up.band = (TrRange) { NAN, NAN };
      for (int i = 0; i < 6; i++)
        add (&fixture, "A dough", g_test_rand_double_range (-1, 1) * scale, g_test_rand_double_range (0, 1) * scale);
      picture = make (&fixture, size);
      g_assert_true (tr_plane_picture_get_view (picture, &across, &up));
      for (int i = 0; i < 6; i++)
        {
          const double *dot = get_dot (picture, i);
          double x, y, value_x, value_y;

          g_assert_nonnull (dot);
          g_assert_true (tr_plane_picture_get_place (picture, fixture.points[i].x, fixture.points[i].y, &x, &y));
          g_assert_cmpfloat_with_epsilon (dot[0], x, 1e-6);
          g_assert_cmpfloat_with_epsilon (dot[1], y, 1e-6);
          g_assert_true (tr_plane_picture_get_values (picture, dot[0], dot[1], &value_x, &value_y));
          g_assert_cmpfloat_with_epsilon (value_x, fixture.points[i].x, scale * 1e-9);
          g_assert_cmpfloat_with_epsilon (value_y, fixture.points[i].y, scale * 1e-9);
          g_assert_cmpfloat (value_x, >=, across.min);
          g_assert_cmpfloat (value_y, <=, up.max);
        }
    }
}

static void
test_names_are_apart_and_inside (void)
{
  static const char *const names[] = { "A", "Quay crescents", "Überlange Bezeichnung eines sehr langsamen Teiges mit Vorteig", "B\nC", "Ferry" };
  guint named = 0;

  for (int round = 0; round < 120; round++)
    {
      const double *size = sizes[round % G_N_ELEMENTS (sizes)];
      g_autoptr (TrPicture) picture = NULL;
      guint n = (guint) g_test_rand_int_range (1, round % 3 == 0 ? MAX_POINTS : 9);
      Fixture fixture;

      init (&fixture);
      fixture.look.text_size = round % 2 == 0 ? 13 : 19.5;
      for (guint i = 0; i < n; i++)
        if (i > 0 && g_test_rand_int_range (0, 4) == 0)
          add (&fixture, names[i % 5], fixture.points[i - 1].x, fixture.points[i - 1].y);
        else
          add (&fixture, names[i % 5], g_test_rand_int_range (0, 9) == 0 ? NAN : g_test_rand_double_range (45, 65), g_test_rand_double_range (15, 40));
      picture = make (&fixture, size);
      assert_readable (picture, size);
      named += has_text (picture, "Quay crescents");
    }
  g_assert_cmpuint (named, >, 40);
}

/* As many names are said to find no room as are not written. */
static void
test_missing_names_are_counted (void)
{
  guint seen = 0;

  for (int round = 0; round < 60; round++)
    {
      const double *size = sizes[round % G_N_ELEMENTS (sizes)];
      g_autoptr (TrPicture) picture = NULL;
      g_autofree char *note = NULL;
      char names[40][32];
      guint n = (guint) g_test_rand_int_range (2, 40), missing = 0;
      Fixture fixture;

      init (&fixture);
      for (guint i = 0; i < n; i++)
        {
          g_snprintf (names[i], sizeof names[i], "Dough number %u.", i);
          add (&fixture, names[i], 50 + i * 0.3, g_test_rand_double_range (26, 30));
        }
      picture = make (&fixture, size);
      for (guint i = 0; i < n; i++)
        missing += !has_text (picture, names[i]);
      note = g_strdup_printf ("There is no room for %u name", missing);
      g_assert_true (has_text (picture, missing > 0 ? note : "There is no room") == (missing > 0));
      seen += missing > 0;
    }
  g_assert_cmpuint (seen, >, 0);
  g_assert_cmpuint (seen, <, 60);
}

static void
test_names_are_hit_like_their_points (void)
{
  g_autoptr (TrPicture) picture = NULL;
  Fixture fixture;
  TrBox box;
  guint seen = 0;

  init (&fixture);
  add (&fixture, "Quay crescents", 54, 30);
  add (&fixture, "Window squares", 52, 36);
  add (&fixture, "Its twin", 52, 36);
  picture = make (&fixture, sizes[0]);
  for (int i = 0; i < 2; i++)
    {
      const double *dot = get_dot (picture, i);
      TrHit hit = tr_picture_hit (picture, dot[0], dot[1]);

      g_assert_cmpint (hit.part, ==, TR_PART_OF_POINT);
      g_assert_cmpint (hit.index, ==, i);
    }
  for (guint i = 0; i < tr_picture_count_texts (picture); i++)
    {
      const char *text = tr_picture_get_text (picture, i, &box);
      TrHit hit = tr_picture_hit (picture, box.x + box.width / 2, box.y + box.height / 2);

      for (int point = 0; point < 3; point++)
        if (g_str_equal (text, fixture.points[point].name))
          {
            g_assert_cmpint (hit.part, ==, TR_PART_OF_POINT);
            g_assert_cmpint (hit.index, ==, point);
            seen++;
          }
    }
  g_assert_cmpuint (seen, ==, 3);
}

static void
test_description_has_the_numbers (void)
{
  static const char *const said[] = {
    "Across: Hydration. Up: Roll-in.", "Hydration, usual for croissant dough: 50.0\u00a0% to 60.0\u00a0%.",
    "Quay crescents, the current dough: 54.2\u00a0%, 30.1\u00a0%.", "Twin one: 52.0\u00a0%, 36.0\u00a0%.",
    "On one point: Twin one, Twin two.", "Late: 61.0\u00a0%, 25.0\u00a0%. It comes from Twin one.",
    "Not known, so not on the plane: Unweighed.",
  };
  g_autoptr (TrPicture) picture = NULL;
  Fixture fixture;

  init (&fixture);
  add (&fixture, "Quay crescents", 54.2, 30.1);
  add (&fixture, "Twin one", 52, 36);
  add (&fixture, "Twin two", 52, 36);
  add (&fixture, "Late", 61, 25);
  add (&fixture, "Unweighed", NAN, 25);
  picture = make (&fixture, sizes[0]);
  for (guint i = 0; i < G_N_ELEMENTS (said); i++)
    if (strstr (tr_picture_get_description (picture), said[i]) == NULL)
      g_error ("“%s” does not say “%s”", tr_picture_get_description (picture), said[i]);
  g_assert_true (has_text (picture, "usual for croissant dough"));
  g_assert_true (has_text (picture, "Not known, so not on the plane: Unweighed."));
  g_assert_true (has_text (picture, "54.2\u00a0% · 30.1\u00a0%"));
}

typedef struct { const char *name; double x[2], y[2]; guint n; } Odd;

static void
test_odd_values_are_drawn (void)
{
  static const Odd odds[] = {
    { "none", { 0 }, { 0 }, 0 },
    { "one", { 54 }, { 30 }, 1 },
    { "nothing known", { NAN, INFINITY }, { NAN, 1 }, 2 },
    { "equal", { 54, 54 }, { 30, 30 }, 2 },
    { "nothing", { 0, 0 }, { 0, 0 }, 2 },
    { "huge", { 1e300, -1e300 }, { 1e15, 1e15 + 2 }, 2 },
    { "largest", { G_MAXDOUBLE, -G_MAXDOUBLE }, { G_MAXDOUBLE, 1 }, 2 },
    { "tiny", { 1e-12, 2e-12 }, { G_MINDOUBLE, 3e-9 }, 2 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (odds) * 2; i++)
    for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
      {
        const Odd *odd = &odds[i / 2];
        g_autoptr (TrPicture) picture = NULL;
        Fixture fixture;

        g_test_message ("%s", odd->name);
        init (&fixture);
        if (i % 2 == 1)
          fixture.plane.across.band = fixture.plane.up.band = (TrRange) { NAN, NAN };
        for (guint p = 0; p < odd->n; p++)
          add (&fixture, p == 0 ? "Quay crescents" : "Window squares", odd->x[p], odd->y[p]);
        picture = make (&fixture, sizes[s]);
        assert_readable (picture, sizes[s]);
        for (guint p = 0; p < odd->n; p++)
          {
            gboolean known = isfinite (odd->x[p]) && isfinite (odd->y[p]);

            g_assert_true ((get_dot (picture, (int) p) != NULL) == known);
            g_assert_true (strstr (tr_picture_get_description (picture), fixture.points[p].name) != NULL);
          }
      }
}

/* A forced view is kept; what lies beyond is drawn at its end. */
static void
test_forced_view_stays (void)
{
  g_autoptr (TrPicture) picture = NULL;
  const double *dot;
  TrRange across, up;
  double x, y;
  Fixture fixture;

  init (&fixture);
  fixture.plane.across.view = (TrRange) { 51.3, 57.9 };
  fixture.plane.up.view = (TrRange) { 20, 40 };
  add (&fixture, "Quay crescents", 70, 30);
  picture = make (&fixture, sizes[0]);
  g_assert_true (tr_plane_picture_get_view (picture, &across, &up));
  g_assert_cmpfloat_with_epsilon (across.min, 51.3, 1e-12);
  g_assert_cmpfloat_with_epsilon (across.max, 57.9, 1e-12);
  g_assert_true (tr_plane_picture_get_place (picture, 57.9, 30, &x, &y));
  dot = get_dot (picture, 0);
  g_assert_cmpfloat_with_epsilon (dot[0], x, 1e-9);
  g_assert_cmpfloat_with_epsilon (dot[1], y, 1e-9);
  assert_readable (picture, sizes[0]);
}

static void
test_too_small_has_no_plane (void)
{
  static const double small[][2] = { { 60, 40 }, { 20, 400 }, { 400, 20 } };

  for (guint i = 0; i < G_N_ELEMENTS (small); i++)
    {
      g_autoptr (TrPicture) picture = NULL;
      double a, b;
      Fixture fixture;

      init (&fixture);
      add (&fixture, "Quay crescents", 54, 30);
      picture = make (&fixture, small[i]);
      g_assert_false (tr_plane_picture_get_values (picture, 1, 1, &a, &b));
      g_assert_nonnull (strstr (tr_picture_get_description (picture), "54.0"));
    }
}

/* Every pair of ratios, of doughs that a document may hold. */
static void
test_doughs_by_any_two_ratios (void)
{
  g_autoptr (TrTrial) trial = sample_trial_all ();
  g_autoptr (TrFigures) figures = NULL;
  TrReader reader;
  TrLook look;

  for (int i = 0; i < 12; i++)
    sample_add_random (trial);
  figures = tr_figures_compute (trial, NULL);
  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  tr_look_init_screen (&look, TRUE, FALSE, 13);
  for (TrRatio across = 0; across < TR_N_RATIOS; across++)
    for (TrRatio up = 0; up < TR_N_RATIOS; up++)
      {
        const double *size = sizes[(across + up) % G_N_ELEMENTS (sizes)];
        int current = (int) ((across * TR_N_RATIOS + up) % figures->doughs->len);
        g_autoptr (TrPicture) picture = tr_ratio_plane_picture_new (figures, across, up, current, NULL, &reader, &look, size[0], size[1]);

        assert_readable (picture, size);
        g_assert_nonnull (strstr (tr_picture_get_description (picture), tr_words_ratio (across)));
        for (guint i = 0; i < figures->doughs->len; i++)
          {
            g_autofree char *name = tr_words_one_line (tr_figures_get_dough (figures, i)->dough->name);

            g_assert_nonnull (strstr (tr_picture_get_description (picture), name));
          }
      }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/picture/plane/values-and-places-are-inverse", test_values_and_places_are_inverse);
  g_test_add_func ("/picture/plane/names-are-apart-and-inside", test_names_are_apart_and_inside);
  g_test_add_func ("/picture/plane/missing-names-are-counted", test_missing_names_are_counted);
  g_test_add_func ("/picture/plane/names-are-hit-like-their-points", test_names_are_hit_like_their_points);
  g_test_add_func ("/picture/plane/description-has-the-numbers", test_description_has_the_numbers);
  g_test_add_func ("/picture/plane/odd-values-are-drawn", test_odd_values_are_drawn);
  g_test_add_func ("/picture/plane/forced-view-stays", test_forced_view_stays);
  g_test_add_func ("/picture/plane/too-small-has-no-plane", test_too_small_has_no_plane);
  g_test_add_func ("/picture/plane/doughs-by-any-two-ratios", test_doughs_by_any_two_ratios);

  return g_test_run ();
}
