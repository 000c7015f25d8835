/* test-cuts.c: blocks, pieces and slabs cut through are drawn as they are
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "calc/rests.h"
#include "picture/shapes.h"
#include "samples.h"

static const double sizes[][2] = { { 900, 260 }, { 520, 230 }, { 420, 300 }, { 300, 180 } };

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
            double           width)
{
  TrBox extents;

  tr_picture_get_extents (picture, &extents);
  g_assert_cmpfloat (extents.x, >=, -1);
  g_assert_cmpfloat (extents.x + extents.width, <=, width + 1);
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
          check_tidy (picture, sizes[s][0]);
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
        check_tidy (picture, sizes[s][0]);
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
          g_autoptr (TrPicture) picture = tr_temperature_picture_new (dough, i, &reader, &look, size[0], size[1]);

          check_tidy (picture, size[0]);
        }
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
  g_test_add_func ("/cuts/temperatures", test_temperatures);

  return g_test_run ();
}
