/* test-to-sheet.c: from the last block to the sheet, to scale
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The volume that is drawn stays: what a step's plan gains its thickness loses.
 */

#include <math.h>
#include <string.h>

#include "calc/lamination.h"
#include "picture/shapes.h"
#include "samples.h"

static const double sizes[][2] = { { 900, 260 }, { 475, 230 }, { 300, 400 }, { 240, 120 } };

static TrPicture *
draw (const TrDoughFigures *figures,
      const double          size[2])
{
  TrReader reader;
  TrLook look;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  tr_look_init_screen (&look, FALSE, FALSE, 13);
  look.device_scale = 0;

  return tr_to_sheet_picture_new (figures, &reader, &look, size[0], size[1]);
}

static void
assert_ratio (double drawn,
              double true_ratio)
{
  g_assert_cmpfloat_with_epsilon (drawn, true_ratio, 1e-6 * true_ratio);
}

/* Nothing hangs out, and everything is a number. */
static void
check_tidy (const TrPicture *picture,
            const double     size[2])
{
  TrBox extents;

  tr_picture_get_extents (picture, &extents);
  g_assert_cmpfloat (extents.x, >=, -1);
  g_assert_cmpfloat (extents.x + extents.width, <=, size[0] + 1);
  g_assert_cmpfloat (extents.y, >=, -1);
  g_assert_cmpuint (strlen (tr_picture_get_description (picture)), >, 0);
  g_assert_null (strstr (tr_picture_get_description (picture), "nan"));
  for (guint i = 0; i < tr_picture_count_texts (picture); i++)
    g_assert_null (strstr (tr_picture_get_text (picture, i, NULL), "nan"));
}

/* The block first, the sheet last, to one scale, the longer side of the sheet level. */
static void
check_scale (const TrDoughFigures *figures,
             const TrPicture      *picture)
{
  const TrSize *rolled = &figures->sheet.rolled_mm;
  TrSize block = tr_lamination_last_block (&figures->lamination);
  guint level = rolled->mm[1] > rolled->mm[0] ? 1 : 0, n = 0;
  TrBox first, last = { 0 }, next;

  g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_SHEET, 0 }, &first));
  while (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_SHEET, (int) n }, &next))
    {
      if (n > 0)
        g_assert_cmpfloat (next.x, >, last.x + last.width);
      last = next;
      n++;
    }
  g_assert_cmpuint (n, >=, 2);
  g_assert_cmpuint (n, <=, 4);
  g_assert_cmpfloat (last.width, >=, last.height * (1 - 1e-9));
  assert_ratio (last.width / first.width, rolled->mm[level] / block.mm[level]);
  assert_ratio (last.height / first.height, rolled->mm[1 - level] / block.mm[1 - level]);
  assert_ratio (last.width / last.height, rolled->mm[level] / rolled->mm[1 - level]);
}

static void
test_samples (void)
{
  guint n_drawn = 0;

  for (guint sample = 0; sample < N_SAMPLES; sample++)
    for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
      {
        g_autoptr (TrTrial) trial = sample_trial_new ((Sample) sample);
        g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
        const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
        g_autoptr (TrPicture) picture = draw (dough, sizes[s]);

        check_tidy (picture, sizes[s]);
        if (!tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_SHEET, 0 }, &(TrBox) { 0 }))
          continue;
        check_scale (dough, picture);
        n_drawn++;
      }
  g_assert_cmpuint (n_drawn, >=, 4 * 5);
}

static void
test_random (void)
{
  for (guint n = 0; n < 300; n++)
    {
      g_autoptr (TrTrial) trial = tr_trial_new ();
      g_autoptr (TrFigures) figures = NULL;
      g_autoptr (TrPicture) picture = NULL;
      const double *size = sizes[n % G_N_ELEMENTS (sizes)];

      sample_add_random (trial);
      figures = tr_figures_compute (trial, NULL);
      picture = draw (tr_figures_get_dough (figures, 0), size);
      check_tidy (picture, size);
      if (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_SHEET, 0 }, &(TrBox) { 0 }))
        check_scale (tr_figures_get_dough (figures, 0), picture);
    }
}

/* Two sheets of one block: its cut is drawn and said, and each part has half of it. */
static void
test_parted (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
  g_autoptr (TrFigures) figures = NULL;
  g_autoptr (TrPicture) picture = NULL;
  const TrDoughFigures *dough;
  TrBox block, part;

  tr_trial_own_dough (trial, 0)->batch_by = TR_BATCH_PIECES;
  tr_trial_own_dough (trial, 0)->batch_value = 60;
  figures = tr_figures_compute (trial, NULL);
  dough = tr_figures_get_dough (figures, 0);
  g_assert_cmpfloat (dough->lamination.to_sheet.blocks_cut, >=, 2);
  picture = draw (dough, sizes[0]);
  g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_SHEET, 0 }, &block));
  g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_SHEET, 1 }, &part));
  assert_ratio (part.width * part.height * dough->lamination.to_sheet.blocks_cut, block.width * block.height);
  g_assert_nonnull (strstr (tr_picture_get_description (picture), "cut into"));
}

/* Where there is no sheet it says so. */
static void
test_none (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_PLAIN);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autoptr (TrPicture) picture = draw (tr_figures_get_dough (figures, 0), sizes[0]);

  g_assert_cmpstr (tr_picture_get_description (picture), ==, "There is no sheet yet.");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/to-sheet/samples", test_samples);
  g_test_add_func ("/to-sheet/random", test_random);
  g_test_add_func ("/to-sheet/parted", test_parted);
  g_test_add_func ("/to-sheet/none", test_none);

  return g_test_run ();
}
