/* test-cuts.c: blocks, pieces and slabs cut through are drawn as they are
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "calc/cut.h"
#include "calc/rests.h"
#include "calc/shape.h"
#include "picture/shapes.h"
#include "samples.h"

static const double sizes[][2] = { { 900, 260 }, { 520, 230 }, { 420, 300 }, { 300, 180 }, { 640, 96 } };

static void
init (TrReader *reader,
      TrLook   *look)
{
  tr_reader_init_plain (reader, TR_UNITS_METRIC);
  tr_look_init_screen (look, FALSE, FALSE, 13);
  look->device_scale = 0;
}

static void
assert_near (double a,
             double b)
{
  g_assert_cmpfloat_with_epsilon (a, b, 1e-6 * MAX (1, fabs (b)));
}

/* Nothing hangs out, and something is said. */
static void
check_tidy (const TrPicture *picture,
            double           width,
            double           height)
{
  TrBox extents;

  tr_picture_get_extents (picture, &extents);
  g_assert_cmpfloat (extents.x, >=, -1);
  g_assert_cmpfloat (extents.x + extents.width, <=, width + 1);
  g_assert_cmpfloat (extents.y, >=, -1);
  g_assert_cmpfloat (extents.y + extents.height, <=, height + 1);
  g_assert_true (strlen (tr_picture_get_description (picture)) > 0);
  g_assert_null (strstr (tr_picture_get_description (picture), "nan"));
  for (guint i = 0; i < tr_picture_count_texts (picture); i++)
    g_assert_null (strstr (tr_picture_get_text (picture, i, NULL), "nan"));
}

static void
test_section (void)
{
  for (guint sample = 0; sample < N_SAMPLES; sample++)
    for (guint style = 0; style < TR_N_STYLES; style++)
      for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
        {
          g_autoptr (TrTrial) trial = sample_trial_new ((Sample) sample);
          g_autoptr (TrFigures) figures = NULL;
          g_autoptr (TrPicture) picture = NULL;
          const TrLockInFigures *lock_in;
          TrReader reader;
          TrLook look;
          TrBox block, inlay;

          if (tr_trial_get_dough (trial, 0)->lock_in != NULL)
            {
              tr_trial_own_dough (trial, 0)->lock_in->style = (TrStyle) style;
              tr_trial_own_dough (trial, 0)->lock_in->rim_mm = 12;
            }
          figures = tr_figures_compute (trial, NULL);
          init (&reader, &look);
          picture = tr_lock_in_section_picture_new (tr_figures_get_dough (figures, 0), &reader, &look, sizes[s][0], sizes[s][1]);
          check_tidy (picture, sizes[s][0], sizes[s][1]);
          lock_in = &tr_figures_get_dough (figures, 0)->lamination.lock_in;
          if (!tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_LOCK_IN, 3 }, &block))
            {
              g_assert_true (!tr_figures_get_dough (figures, 0)->has_lamination || !(lock_in->block_mm.mm[0] > 0));
              continue;
            }
          /* One scale for both ways. */
          assert_near (block.height / block.width, lock_in->block_mm.mm[2] / lock_in->block_mm.mm[0]);
          g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_LOCK_IN, 10 }, &inlay));
          if (style != TR_STYLE_GATE)
            g_assert_cmpfloat (inlay.width, <, block.width);
          g_assert_cmpint (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_LOCK_IN, 11 }, &inlay), ==, style == TR_STYLE_LETTER);
        }
}

/* The fat of a half lock-in is as long and as thick in the cut as it is. */
static void
test_fat_in_section (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrLockInFigures *lock_in = &tr_figures_get_dough (figures, 0)->lamination.lock_in;
  g_autoptr (TrPicture) picture = NULL;
  TrReader reader;
  TrLook look;
  TrBox block, fat;

  init (&reader, &look);
  picture = tr_lock_in_section_picture_new (tr_figures_get_dough (figures, 0), &reader, &look, 700, 240);
  g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_LOCK_IN, 3 }, &block));
  g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_LOCK_IN, 10 }, &fat));
  assert_near (fat.width / block.width, lock_in->fat_mm.mm[0] / lock_in->block_mm.mm[0]);
  assert_near (fat.height / block.height, lock_in->fat_mm.mm[2] / (lock_in->fat_mm.mm[2] + 2 * lock_in->dough_mm.mm[2]));
}

static void
test_pieces (void)
{
  for (guint sample = 0; sample < N_SAMPLES; sample++)
    for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
      {
        g_autoptr (TrTrial) trial = sample_trial_new ((Sample) sample);
        g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
        const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
        g_autoptr (TrPicture) picture = NULL;
        TrReader reader;
        TrLook look;

        init (&reader, &look);
        picture = tr_piece_picture_new (dough, &reader, &look, sizes[s][0], sizes[s][1]);
        check_tidy (picture, sizes[s][0], sizes[s][1]);
        if (dough->has_sheet && isfinite (dough->sheet.windings))
          {
            g_autofree char *windings = tr_words_number (&reader, dough->sheet.windings, 1);

            g_assert_nonnull (strstr (tr_picture_get_description (picture), windings));
          }
      }
}

static void
test_temperatures (void)
{
  for (guint n = 0; n < 60; n++)
    {
      g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
      TrDough *own = tr_trial_own_dough (trial, 0);
      TrRest *rest = tr_rest_new ();
      g_autoptr (TrFigures) figures = NULL;
      const TrDoughFigures *dough;
      TrReader reader;
      TrLook look;

      tr_rest_free (tr_dough_get_turn (own, 0)->rest);
      tr_dough_get_turn (own, 0)->rest = rest;
      rest->place = (TrPlace) g_test_rand_int_range (0, TR_N_PLACES);
      rest->on = (TrOn) g_test_rand_int_range (0, TR_N_ONS);
      rest->min_minutes = g_test_rand_int_range (0, 3000);
      rest->start_c = g_test_rand_bit () ? NAN : g_test_rand_double_range (-10, 30);
      rest->target_c = g_test_rand_bit () ? NAN : g_test_rand_double_range (-10, 30);
      figures = tr_figures_compute (trial, NULL);
      dough = tr_figures_get_dough (figures, 0);
      init (&reader, &look);
      for (guint i = 0; i < dough->rests->len; i++)
        {
          const double *size = sizes[n % G_N_ELEMENTS (sizes)];
          g_autoptr (TrPicture) picture = tr_temperature_picture_new (dough, i, n % 2 == 1, &reader, &look, size[0], size[1]);

          check_tidy (picture, size[0], size[1]);
        }
    }
}

/* The spiral that is drawn is that of the figures: as wide, one winding as thick as the
 * sheet, as many windings; and each of them is named where it is pointed at. */
static void
check_spiral (const TrPicture *picture,
              const TrReader  *reader,
              double           windings,
              double           diameter_mm,
              double           fat_layers)
{
  g_autofree char *all = tr_words_number (reader, windings, 1), *layers = tr_words_count (reader, fat_layers);
  const double *first, *corner;
  double pitch, radius = 0;
  guint n, n_named = (guint) ceil (windings);

  first = tr_picture_get_outline (picture, &(TrHit) { TR_PART_OF_PIECE, 1 }, &n);
  g_assert_nonnull (first);
  /* The last corner of its outer edge, one turn on. */
  pitch = hypot (first[n - 2] - first[0], first[n - 1] - first[1]);   /* of n / 2 outer corners */
  for (guint i = 1; i <= n_named; i++)
    {
      g_autofree char *text = tr_picture_dup_hit_text (picture, &(TrHit) { TR_PART_OF_PIECE, (int) i });
      g_autofree char *named = g_strdup_printf ("Winding %u of %s, %s fat layers", i, all, layers);

      corner = tr_picture_get_outline (picture, &(TrHit) { TR_PART_OF_PIECE, (int) i }, &n);
      g_assert_nonnull (corner);
      for (guint c = 0; c < n; c++)
        radius = MAX (radius, hypot (corner[2 * c] - first[0], corner[2 * c + 1] - first[1]));
      g_assert_cmpstr (text, ==, named);
    }
  g_assert_false (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_PIECE, (int) n_named + 1 }, &(TrBox) { 0, 0, 0, 0 }));
  assert_near (radius / pitch, windings);
  assert_near (2 * radius / pitch * (diameter_mm / (2 * windings)), diameter_mm);

  /* Half a pitch inside the outermost edge lies the last or the last but one. */
  TrHit hit = tr_picture_hit (picture, first[0] - (radius - 1.1 * pitch), first[1]);

  g_assert_cmpint (hit.part, ==, TR_PART_OF_PIECE);
  g_assert_cmpint (hit.index, >=, (int) n_named - 2);
}

static void
test_spiral (void)
{
  static const Sample rolled[] = { SAMPLE_CROISSANT, SAMPLE_ENVELOPE };

  for (guint i = 0; i < G_N_ELEMENTS (rolled); i++)
    for (int is_written = 0; is_written < 2; is_written++)
      {
        g_autoptr (TrTrial) trial = sample_trial_new (rolled[i]);
        g_autoptr (TrFigures) figures = NULL;
        g_autoptr (TrPicture) picture = NULL;
        const TrDoughFigures *dough;
        double windings, diameter;
        TrReader reader;
        TrLook look;

        /* A slice is of a log, whatever is written. */
        tr_trial_own_dough (trial, 0)->cut->rolled_up = i == 0 ? 1 : is_written;
        figures = tr_figures_compute (trial, NULL);
        dough = tr_figures_get_dough (figures, 0);
        init (&reader, &look);
        picture = tr_piece_picture_new (dough, &reader, &look, 900, 260);
        windings = tr_cut_count_windings (dough->dough->cut, dough->sheet.thickness_mm, &diameter);
        g_assert_true (isnan (dough->sheet.windings) == (i == 1 && !is_written));
        check_spiral (picture, &reader, windings, diameter, dough->lamination.fat_layers);
        g_assert_nonnull (strstr (tr_picture_get_description (picture), "thick"));
        g_assert_nonnull (strstr (tr_picture_get_description (picture), "too thin to be told apart"));
      }
}

/* From above and at the cut face, to one scale. */
static void
test_flat (void)
{
  static const Sample flat[] = { SAMPLE_DANISH, SAMPLE_PUFF, SAMPLE_GATE };

  for (guint i = 0; i < G_N_ELEMENTS (flat); i++)
    {
      g_autoptr (TrTrial) trial = sample_trial_new (flat[i]);
      g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
      const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
      g_autoptr (TrPicture) picture = NULL;
      TrReader reader;
      TrLook look;
      TrBox above, first, second;
      double along, across;

      init (&reader, &look);
      picture = tr_piece_picture_new (dough, &reader, &look, 900, 260);
      tr_shape_get_sides (dough->dough->cut, &along, &across);
      g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_PIECE, 0 }, &above));
      g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_BAND, 0 }, &first));
      g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_BAND, 1 }, &second));
      assert_near (above.width / above.height, along / across);
      assert_near (first.width, above.width);
      /* The outermost band against the whole, by the figure. */
      if (dough->dough->lock_in->style != TR_STYLE_INVERSE)
        {
          assert_near (first.height / above.width, dough->lamination.dough_layer_um_outer / 1000 / along);
          assert_near (second.height / above.width, dough->lamination.fat_layer_um.min / 1000 / along);
        }
      else
        assert_near (first.height / above.width, dough->lamination.fat_layer_um.min / 1000 / along);
    }
}

/* Cold dough and a fat that melts late still lie on the scale. */
static void
test_scale_widens (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
  g_autoptr (TrFigures) figures = NULL;
  g_autoptr (TrPicture) picture = NULL;
  TrReader reader;
  TrLook look;
  TrBox mark;
  gboolean is_named = FALSE;

  TrDough *own = tr_trial_own_dough (trial, 0);

  g_clear_pointer (&own->lock_in->rest, tr_rest_free);
  own->method->dough_c = -5;
  figures = tr_figures_compute (trial, NULL);
  init (&reader, &look);
  picture = tr_lock_in_section_picture_new (tr_figures_get_dough (figures, 0), &reader, &look, 700, 240);
  for (guint i = 0; i < tr_picture_count_texts (picture); i++)
    {
      TrBox text;
      g_autofree char *ten = tr_words_temperature (&reader, -10);

      if (strcmp (tr_picture_get_text (picture, i, &text), ten) != 0)
        continue;
      is_named = TRUE;
      g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_LOCK_IN, 30 }, &mark));
      g_assert_cmpfloat (mark.x, >, text.x + text.width / 2);
    }
  g_assert_true (is_named);
}

static void
test_random_doughs (void)
{
  for (guint n = 0; n < 60; n++)
    for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
      {
        g_autoptr (TrTrial) trial = tr_trial_new ();
        g_autoptr (TrFigures) figures = NULL;
        g_autoptr (TrPicture) piece = NULL, section = NULL;
        TrReader reader;
        TrLook look;

        sample_add_random (trial);
        figures = tr_figures_compute (trial, NULL);
        init (&reader, &look);
        piece = tr_piece_picture_new (tr_figures_get_dough (figures, 0), &reader, &look, sizes[s][0], sizes[s][1]);
        section = tr_lock_in_section_picture_new (tr_figures_get_dough (figures, 0), &reader, &look, sizes[s][0], sizes[s][1]);
        check_tidy (piece, sizes[s][0], sizes[s][1]);
        check_tidy (section, sizes[s][0], sizes[s][1]);
      }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/cuts/section", test_section);
  g_test_add_func ("/cuts/fat-in-section", test_fat_in_section);
  g_test_add_func ("/cuts/pieces", test_pieces);
  g_test_add_func ("/cuts/spiral", test_spiral);
  g_test_add_func ("/cuts/flat", test_flat);
  g_test_add_func ("/cuts/scale-widens", test_scale_widens);
  g_test_add_func ("/cuts/random-doughs", test_random_doughs);
  g_test_add_func ("/cuts/temperatures", test_temperatures);

  return g_test_run ();
}
