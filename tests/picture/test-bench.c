/* test-bench.c: the kitchen is drawn as it is written; a band of the layers is marked
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "calc/lamination.h"
#include "picture/shapes.h"
#include "samples.h"

static const double sizes[][2] = { { 900, 400 }, { 520, 250 }, { 420, 300 }, { 300, 520 } };

static TrPicture *
make_bench (const TrBench        *bench,
            const TrDoughFigures *figures,
            TrUnitSystem          units,
            double                width,
            double                height)
{
  TrReader reader;
  TrLook look;

  tr_reader_init_plain (&reader, units);
  tr_look_init_screen (&look, FALSE, FALSE, 13);
  /* Without pixels lengths are exact. */
  look.device_scale = 0;
  return tr_bench_picture_new (bench, figures, &reader, &look, width, height);
}

static void
get_box (const TrPicture *picture,
         TrPicturePart    part,
         TrBox           *box)
{
  g_assert_true (tr_picture_get_box (picture, &(TrHit) { part, 0 }, box));
}

/* With plain spaces, as it is typed here. */
static char *
dup_plain (const char *text)
{
  g_autoptr (GString) plain = g_string_new (text);

  g_string_replace (plain, "\u00a0", " ", 0);
  g_string_replace (plain, "\u202f", " ", 0);
  return g_string_free (g_steal_pointer (&plain), FALSE);
}

static gboolean
says (const TrPicture *picture,
      const char      *words)
{
  g_autofree char *description = dup_plain (tr_picture_get_description (picture));

  return strstr (description, words) != NULL;
}

static gboolean
has_text (const TrPicture *picture,
          const char      *text)
{
  for (guint i = 0; i < tr_picture_count_texts (picture); i++)
    {
      g_autofree char *plain = dup_plain (tr_picture_get_text (picture, i, NULL));

      if (strcmp (plain, text) == 0)
        return TRUE;
    }
  return FALSE;
}

static void
test_one_scale (void)
{
  g_autoptr (TrBench) bench = tr_bench_new ();

  bench->worktop_mm[0] = 1200;
  bench->worktop_mm[1] = 700;
  bench->tray_mm[0] = 530;
  bench->tray_mm[1] = 325;
  bench->roll_width_max_mm = 500;
  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autoptr (TrPicture) picture = make_bench (bench, NULL, TR_UNITS_METRIC, sizes[i][0], sizes[i][1]);
      TrBox top, tray, rolled;

      get_box (picture, TR_PART_OF_WORKTOP, &top);
      get_box (picture, TR_PART_OF_TRAY, &tray);
      get_box (picture, TR_PART_OF_ROLL, &rolled);
      g_assert_cmpfloat_with_epsilon (top.width / top.height, 1200.0 / 700, 1e-9);
      g_assert_cmpfloat_with_epsilon (tray.width / top.width, 530.0 / 1200, 1e-9);
      g_assert_cmpfloat_with_epsilon (tray.height / top.height, 325.0 / 700, 1e-9);
      g_assert_cmpfloat_with_epsilon (rolled.width / top.width, 500.0 / 1200, 1e-9);
      g_assert_true (has_text (picture, "530") && has_text (picture, "700"));
    }
}

static void
test_what_rolls (void)
{
  g_autoptr (TrBench) bench = tr_bench_new ();
  g_autoptr (TrPicture) rollers = NULL, pin = NULL;

  bench->roll_width_max_mm = 450;
  bench->roll_thickness_min_mm = 2.5;
  bench->roll_thickness_max_mm = 35;
  rollers = make_bench (bench, NULL, TR_UNITS_METRIC, 520, 250);
  g_assert_true (says (rollers, "Rollers 450 mm wide, open from 2.5 mm to 35 mm."));
  g_assert_true (has_text (rollers, "2.5 mm") && has_text (rollers, "35 mm") && has_text (rollers, "450"));

  bench->roll_width_max_mm = NAN;
  pin = make_bench (bench, NULL, TR_UNITS_METRIC, 520, 250);
  g_assert_true (says (pin, "A rolling pin, from 35 mm down to 2.5 mm."));
  g_assert_false (says (pin, "Rollers"));
  g_assert_false (has_text (pin, "450"));
}

static void
test_unknown_sizes (void)
{
  g_autoptr (TrBench) bench = tr_bench_new ();
  g_autoptr (TrPicture) picture = NULL;

  bench->worktop_mm[1] = NAN;
  picture = make_bench (bench, NULL, TR_UNITS_METRIC, 520, 250);
  g_assert_true (says (picture, "Worktop, size not known."));
  g_assert_true (says (picture, "Tray, 600 × 400 mm."));
  g_assert_true (has_text (picture, "?"));
}

static void
test_sheet_on_the_worktop (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
  const double *rolled = dough->sheet.rolled_mm.mm;
  double longer = MAX (rolled[0], rolled[1]), shorter = MIN (rolled[0], rolled[1]);
  g_autoptr (TrBench) bench = tr_bench_new ();
  g_autoptr (TrPicture) fits = NULL, over = NULL;
  TrBox top, box;

  g_assert_true (dough->has_sheet);
  bench->worktop_mm[0] = longer + 200;
  bench->worktop_mm[1] = shorter + 100;
  fits = make_bench (bench, dough, TR_UNITS_METRIC, 900, 400);
  get_box (fits, TR_PART_OF_WORKTOP, &top);
  get_box (fits, TR_PART_OF_SHEET, &box);
  g_assert_cmpfloat_with_epsilon (box.width / top.width, longer / (longer + 200), 1e-9);
  g_assert_cmpfloat (box.x, >, top.x);
  g_assert_cmpfloat (box.y + box.height, <, top.y + top.height);
  g_assert_false (says (fits, "over the worktop"));

  /* Whichever way it lies, and along the worktop by less. */
  bench->worktop_mm[0] = longer - 150;
  bench->worktop_mm[1] = shorter - 10;
  over = make_bench (bench, dough, TR_UNITS_METRIC, 900, 400);
  get_box (over, TR_PART_OF_WORKTOP, &top);
  get_box (over, TR_PART_OF_SHEET, &box);
  g_assert_true (says (over, "It reaches 150 mm over the worktop."));
  g_assert_cmpfloat (box.x + box.width, >, top.x + top.width);
}

static void
assert_in_place (const TrPicture *picture,
                 double           width,
                 double           height)
{
  TrBox all;

  tr_picture_get_extents (picture, &all);
  g_assert_cmpfloat (all.x, >=, -1);
  g_assert_cmpfloat (all.y, >=, -1);
  g_assert_cmpfloat (all.x + all.width, <=, width + 1);
  g_assert_cmpfloat (all.y + all.height, <=, height + 1);
}

static void
test_any_kitchen (void)
{
  g_autoptr (TrTrial) trial = sample_trial_all ();
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);

  for (int i = 0; i < 400; i++)
    {
      g_autoptr (TrBench) bench = tr_bench_new ();
      const double *size = sizes[g_test_rand_int_range (0, G_N_ELEMENTS (sizes))];
      const TrDoughFigures *dough = tr_figures_get_dough (figures, (guint) g_test_rand_int_range (0, N_SAMPLES));
      g_autoptr (TrPicture) picture = NULL;

      for (guint k = 0; k < 2; k++)
        {
          bench->worktop_mm[k] = g_test_rand_double_range (1, 4000);
          bench->tray_mm[k] = g_test_rand_double_range (1, 1500);
        }
      bench->roll_width_max_mm = g_test_rand_bit () ? g_test_rand_double_range (1, 2000) : NAN;
      bench->roll_thickness_min_mm = g_test_rand_double_range (0.1, 60);
      bench->roll_thickness_max_mm = g_test_rand_double_range (0.1, 60);
      picture = make_bench (bench, dough, g_test_rand_bit () ? TR_UNITS_METRIC : TR_UNITS_US, size[0], size[1]);
      assert_in_place (picture, size[0], size[1]);
      g_assert_cmpstr (tr_picture_get_description (picture), !=, "");
    }
}

/* ---- a band of the layers ---- */

static TrPicture *
make_layers (const TrDoughFigures *figures,
             double                middle,
             int                   band)
{
  TrReader reader;
  TrLook look;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  tr_look_init_screen (&look, FALSE, FALSE, 13);
  return tr_layers_picture_new_at (figures, &reader, &look, 900, 400, &(TrLayersAt) { middle, band });
}

static void
test_window_follows (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
  guint n = (guint) dough->lamination.bands;

  for (guint band = 0; band < n; band += 6)
    {
      g_autoptr (TrPicture) plain = make_layers (dough, NAN, -1), picture = NULL;
      TrHit whole = { TR_PART_OF_BAND, (int) band }, magnified = { TR_PART_OF_MAGNIFIED_BAND, (int) band };
      double from, to;
      TrBox small, large;

      g_assert_cmpuint (tr_picture_count_bands (plain), ==, n);
      g_assert_true (tr_picture_get_band (plain, (int) band, &from, &to));
      picture = make_layers (dough, (from + to) / 2, (int) band);
      g_assert_true (tr_picture_get_box (picture, &whole, &small));
      g_assert_true (tr_picture_get_box (picture, &magnified, &large));
      g_assert_cmpfloat (large.height, >, 3 * small.height);
    }
}

/* Pixels of the accent in a column through the middle of a box. */
static guint
count_accent (const TrPicture *picture,
              TrPicturePart    part)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 900, 400);
  cairo_t *cr = cairo_create (surface);
  guint n, count = 0;
  const double *corners = tr_picture_get_outline (picture, &(TrHit) { part, 0 }, &n);
  guint32 accent;
  TrLook look;

  tr_look_init_screen (&look, FALSE, FALSE, 13);
  accent = (guint32) lround (look.accent.r * 255) << 16 | (guint32) lround (look.accent.g * 255) << 8 |
           (guint32) lround (look.accent.b * 255);
  g_assert_cmpuint (n, ==, 2);
  tr_picture_draw (picture, cr);
  cairo_surface_flush (surface);
  for (int y = 0; y < 400; y++)
    {
      const guint8 *row = cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface);
      const guint32 pixel = ((const guint32 *) (gconstpointer) row)[(int) ((corners[0] + corners[2]) / 2)] & 0xffffff;

      count += pixel == accent;
    }
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return count;
}

static void
test_band_is_marked_in_both (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
  g_autoptr (TrPicture) plain = make_layers (dough, NAN, -1);
  g_autoptr (TrPicture) marked = make_layers (dough, NAN, (int) (dough->lamination.bands / 2));

  g_assert_cmpuint (count_accent (plain, TR_PART_OF_BAND), ==, 0);
  g_assert_cmpuint (count_accent (plain, TR_PART_OF_MAGNIFIED_BAND), ==, 0);
  g_assert_cmpuint (count_accent (marked, TR_PART_OF_BAND), >, 0);
  g_assert_cmpuint (count_accent (marked, TR_PART_OF_MAGNIFIED_BAND), >, 0);
}

static void
test_too_many_bands (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_PUFF);
  TrDough *dough = tr_trial_own_dough (trial, 0);
  g_autoptr (TrFigures) figures = NULL;
  g_autoptr (TrPicture) picture = NULL;
  double from, to;

  while (dough->turns->len < TR_MAX_TURNS)
    g_ptr_array_add (dough->turns, tr_turn_new (4, 8));
  figures = tr_figures_compute (trial, NULL);
  g_assert_cmpfloat (tr_figures_get_dough (figures, 0)->lamination.bands, >, 8193);
  picture = make_layers (tr_figures_get_dough (figures, 0), 0.2, 5);
  g_assert_cmpuint (tr_picture_count_bands (picture), ==, 0);
  g_assert_false (tr_picture_get_band (picture, 0, &from, &to));
  g_assert_true (says (picture, "More bands than can be drawn one by one."));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/picture/bench/worktop-tray-and-rollers-are-to-one-scale", test_one_scale);
  g_test_add_func ("/picture/bench/rollers-or-a-pin-with-their-opening", test_what_rolls);
  g_test_add_func ("/picture/bench/unknown-sizes-are-said", test_unknown_sizes);
  g_test_add_func ("/picture/bench/the-sheet-lies-on-it-or-reaches-over", test_sheet_on_the_worktop);
  g_test_add_func ("/picture/bench/any-kitchen-stays-inside-the-picture", test_any_kitchen);
  g_test_add_func ("/picture/layers/the-window-goes-where-it-is-wanted", test_window_follows);
  g_test_add_func ("/picture/layers/a-band-is-outlined-in-both-views", test_band_is_marked_in_both);
  g_test_add_func ("/picture/layers/too-many-bands-are-a-tone", test_too_many_bands);
  return g_test_run ();
}
