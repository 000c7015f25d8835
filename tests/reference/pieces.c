/* pieces.c: masses of pieces and triangles in a strip, as bakers print them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sizes from four printed home and trade recipes; the masses are worked out by
 * a separate script for 1.16 g/ml, which is croissant dough with 25 % butter
 * by composition (Choi & Okos 1986 on USDA SR28: 1.163 at 4 °C).
 */

#include "calc/cut.h"
#include "dough.h"

/* One dough of 1.16 g/ml throughout, cut in one row of triangles. */
static TrTrial *
trial_new (double base_mm,
           double height_mm,
           double thickness_mm,
           double total_g)
{
  TrTrial *trial = ref_trial_new ();
  TrDough *dough = ref_trial_get_dough (trial);

  ref_dough_add_line (dough, TR_STAGE_DOUGH, "flour-bread", "600 g");
  ref_dough_add_line (dough, TR_STAGE_DOUGH, "water", "400 g");
  ref_dough_add_line (dough, TR_STAGE_ROLL_IN, "butter-unsalted", "250 g");
  ref_dough_laminate (dough, TR_STYLE_HALF, "333");
  dough->dough_density_g_ml = 1.16;
  dough->lock_in->fat_density_g_ml = 1.16;
  dough->batch_by = TR_BATCH_TOTAL_G;
  dough->batch_value = total_g;

  dough->cut = tr_cut_new ();
  dough->cut->shape = TR_SHAPE_TRIANGLE;
  dough->cut->base_mm = base_mm;
  dough->cut->height_mm = height_mm;
  dough->cut->thickness_mm = thickness_mm;
  dough->cut->piece_mass_g = NAN;
  dough->cut->trim_mm = 0;
  dough->cut->shrink_percent = 0;
  dough->cut->rows = 1;

  return trial;
}

static void
test_piece_mass (void)
{
  static const struct { double base_mm, height_mm, thickness_mm, grams; } cases[] = {
    { 100, 200, 4, 46.4 },
    { 90, 250, 4, 52.2 },
    { 100, 250, 3, 43.5 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TrTrial) trial = trial_new (cases[i].base_mm, cases[i].height_mm, cases[i].thickness_mm, 5000);
      g_autoptr (TrFigures) figures = ref_figures_new (trial);
      const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);

      g_assert_true (dough->has_sheet);
      g_assert_cmpfloat_with_epsilon (dough->sheet.piece_area_mm2, cases[i].base_mm * cases[i].height_mm / 2, 1e-9);
      g_assert_cmpfloat_with_epsilon (dough->piece.raw_mass_g, cases[i].grams, 0.05);
    }
}

/* Alternating triangles in a strip: floor (2L / b) − 1. A strip of 60 cm and a
 * base of 10 cm give 11; one millimetre less gives 10. */
static void
test_triangles_in_strip (void)
{
  static const struct { double length_mm, base_mm; int pieces; } cases[] = {
    { 600, 100, 11 },
    { 599, 100, 10 },
    { 600, 90, 12 },
    { 600, 120, 9 },
    { 900, 90, 19 },
    { 400, 100, 7 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      /* all the dough is rolled: the mass is the length */
      double total_g = cases[i].length_mm * 200 * 4 / 1000 * 1.16;
      g_autoptr (TrTrial) trial = trial_new (cases[i].base_mm, 200, 4, total_g);
      g_autoptr (TrFigures) figures = ref_figures_new (trial);
      const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);

      g_assert_true (dough->has_sheet);
      g_assert_cmpint (dough->sheet.sheets, ==, 1);
      g_assert_cmpfloat_with_epsilon (dough->sheet.length_mm, cases[i].length_mm, 1e-6);
      g_assert_cmpint (dough->sheet.per_row, ==, cases[i].pieces);
      g_assert_cmpfloat (dough->sheet.pieces_cut, ==, cases[i].pieces);
      g_assert_cmpfloat (dough->piece.count, ==, cases[i].pieces);
    }
}

/* The marks along both edges: near every base, far half a base further in. */
static void
test_marks (void)
{
  g_autoptr (TrTrial) trial = trial_new (100, 200, 4, 600 * 200 * 4 / 1000.0 * 1.16);
  g_autoptr (TrFigures) figures = ref_figures_new (trial);
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
  g_autoptr (GArray) near = tr_sheet_dup_marks (dough->dough->cut, &dough->sheet, FALSE);
  g_autoptr (GArray) far = tr_sheet_dup_marks (dough->dough->cut, &dough->sheet, TRUE);

  g_assert_cmpuint (near->len, >=, 6);
  g_assert_cmpuint (far->len, >=, 5);
  for (guint i = 1; i < near->len; i++)
    g_assert_cmpfloat_with_epsilon (g_array_index (near, double, i) - g_array_index (near, double, i - 1), 100, 1e-6);
  g_assert_cmpfloat_with_epsilon (g_array_index (near, double, 0), 0, 1e-6);
  g_assert_cmpfloat_with_epsilon (g_array_index (far, double, 0), 50, 1e-6);
  for (guint i = 1; i < far->len; i++)
    g_assert_cmpfloat_with_epsilon (g_array_index (far, double, i) - g_array_index (far, double, i - 1), 100, 1e-6);
}

/* As printed: 10 × 25 cm at 3 mm from a sheet of 60 × 40 cm. Upright that is
 * one row of 11; the area of the sheet alone would promise 19. */
static void
test_printed_sheet (void)
{
  g_autoptr (TrTrial) trial = trial_new (100, 250, 3, 600 * 250 * 3 / 1000.0 * 1.16);
  g_autoptr (TrFigures) figures = ref_figures_new (trial);
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);

  g_assert_cmpfloat (dough->sheet.pieces_cut, ==, 11);
  g_assert_cmpfloat_with_epsilon (dough->sheet.scrap_percent, 100 * (1 - 11 * 12500 / 150000.0), 1e-6);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/reference/pieces/mass", test_piece_mass);
  g_test_add_func ("/reference/pieces/triangles-in-a-strip", test_triangles_in_strip);
  g_test_add_func ("/reference/pieces/marks", test_marks);
  g_test_add_func ("/reference/pieces/printed-sheet", test_printed_sheet);

  return g_test_run ();
}
