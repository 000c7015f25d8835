/* layers.c: layer counts and thicknesses against handbooks, papers and a patent
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rule, in all of the sources below that count merged layers: dough that
 * touches dough merges, so that a fold in k multiplies the fat layers by k and
 * leaves one dough layer more than fat layers.
 */

#include <math.h>

#include "dough.h"

/* A dough whose fat is `share` of the volume, whatever the densities: both
 * are 1 g/ml. */
static TrTrial *
trial_new (TrStyle     style,
           const char *folds,
           double      share,
           double      thickness_mm)
{
  TrTrial *trial = ref_trial_new ();
  TrDough *dough = ref_trial_get_dough (trial);
  g_autofree char *fat = g_strdup_printf ("%.12f g", 1e4 * share / (1 - share));

  ref_dough_add_line (dough, TR_STAGE_DOUGH, "flour-bread", "10000 g");
  ref_dough_add_line (dough, TR_STAGE_ROLL_IN, "butter-unsalted", fat);
  ref_dough_laminate (dough, style, folds);
  ref_dough_cut (dough, thickness_mm);
  dough->dough_density_g_ml = 1;
  dough->lock_in->fat_density_g_ml = 1;

  return trial;
}

static TrFigures *
figures_new (TrStyle     style,
             const char *folds,
             double      share,
             double      thickness_mm)
{
  g_autoptr (TrTrial) trial = trial_new (style, folds, share, thickness_mm);

  return ref_figures_new (trial);
}

static const TrLamination *
get_lamination (const TrFigures *figures)
{
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);

  g_assert_true (dough->has_lamination);
  return &dough->lamination;
}

/* The table of counts: one and two fat layers at lock-in. Worked out from the
 * merging rule by a separate script; every row has total = 2 fat + 1. */
static const struct {
  const char *folds;
  double one[3], two[3];         /* fat, dough, total */
} count_cases[] = {
  { "3", { 3, 4, 7 }, { 6, 7, 13 } },
  { "4", { 4, 5, 9 }, { 8, 9, 17 } },
  { "33", { 9, 10, 19 }, { 18, 19, 37 } },
  { "34", { 12, 13, 25 }, { 24, 25, 49 } },
  { "44", { 16, 17, 33 }, { 32, 33, 65 } },
  { "333", { 27, 28, 55 }, { 54, 55, 109 } },
  { "343", { 36, 37, 73 }, { 72, 73, 145 } },
  { "334", { 36, 37, 73 }, { 72, 73, 145 } },
  { "443", { 48, 49, 97 }, { 96, 97, 193 } },
  { "444", { 64, 65, 129 }, { 128, 129, 257 } },
  { "3333", { 81, 82, 163 }, { 162, 163, 325 } },
  { "3334", { 108, 109, 217 }, { 216, 217, 433 } },
  { "3434", { 144, 145, 289 }, { 288, 289, 577 } },
  { "33333", { 243, 244, 487 }, { 486, 487, 973 } },
  { "4444", { 256, 257, 513 }, { 512, 513, 1025 } },
  { "333333", { 729, 730, 1459 }, { 1458, 1459, 2917 } },
  { "44444", { 1024, 1025, 2049 }, { 2048, 2049, 4097 } },
};

static void
assert_counts (TrStyle       style,
               const char   *folds,
               const double  expected[3])
{
  g_autoptr (TrFigures) figures = figures_new (style, folds, 0.25, 4);
  const TrLamination *lamination = get_lamination (figures);

  g_test_message ("%s %s", tr_style_id (style), folds);
  g_assert_cmpfloat (lamination->fat_layers, ==, expected[0]);
  g_assert_cmpfloat (lamination->dough_layers, ==, expected[1]);
  g_assert_cmpfloat (lamination->bands, ==, expected[2]);
}

static void
test_counts (void)
{
  static const TrStyle one_fat_layer[] = { TR_STYLE_HALF, TR_STYLE_GATE, TR_STYLE_ENVELOPE };

  for (gsize i = 0; i < G_N_ELEMENTS (count_cases); i++)
    {
      for (gsize j = 0; j < G_N_ELEMENTS (one_fat_layer); j++)
        assert_counts (one_fat_layer[j], count_cases[i].folds, count_cases[i].one);
      assert_counts (TR_STYLE_LETTER, count_cases[i].folds, count_cases[i].two);
    }
}

/* Fat outside: dough and fat change places. */
static void
test_counts_inverse (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (count_cases); i++)
    {
      const double *one = count_cases[i].one;

      assert_counts (TR_STYLE_INVERSE, count_cases[i].folds, (double[]) { one[1], one[0], one[2] });
    }
}

/* At lock-in. Ooms, Pareyt, Jansens, Reekmans, Delcour, Crit. Rev. Food Sci.
 * Nutr. 56(13), 2016, as a project page quotes it: English 2 fat + 3 dough,
 * French 1 fat + 2 dough. */
static void
test_lock_in (void)
{
  assert_counts (TR_STYLE_ENVELOPE, "", (double[]) { 1, 2, 3 });
  assert_counts (TR_STYLE_LETTER, "", (double[]) { 2, 3, 5 });
}

/* J. Griffin, Pastry Arts Magazine, "Understanding the lamination layer
 * calculation process": a 3-fold has 2 places where dough touches dough, a
 * 4-fold 3, a 5-fold 4, and they are subtracted: T' = f·T − (f − 1), from 3
 * to 7 to 19 (the last also onlinepastrytrainingschool.com, letter L). */
static void
test_step_by_step (void)
{
  static const struct { TrStyle style; const char *folds; double start; } cases[] = {
    { TR_STYLE_HALF, "33", 3 },
    { TR_STYLE_HALF, "2345", 3 },
    { TR_STYLE_LETTER, "543", 5 },
    { TR_STYLE_INVERSE, "346", 3 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TrFigures) figures = figures_new (cases[i].style, cases[i].folds, 0.25, 4);
      const TrLamination *lamination = get_lamination (figures);
      double total = cases[i].start;

      for (guint turn = 0; turn < lamination->steps->len; turn++)
        {
          const TrTurnFigures *step = &g_array_index (lamination->steps, TrTurnFigures, turn);
          int fold = g_ascii_digit_value (cases[i].folds[turn]);

          total = fold * total - (fold - 1);
          g_assert_cmpfloat (step->fat_layers + step->dough_layers, ==, total);
          if (i == 0)
            g_assert_cmpfloat (total, ==, turn == 0 ? 7 : 19);
        }
    }
}

/* EP 0 445 850, paragraph 1: fat layers = 3^n for n half turns (fold in
 * three), French method. */
static void
test_patent_powers (void)
{
  static const char *const folds[] = { "", "3", "33", "333", "3333", "33333", "333333" };

  for (guint n = 0; n < G_N_ELEMENTS (folds); n++)
    {
      g_autoptr (TrFigures) figures = figures_new (TR_STYLE_ENVELOPE, folds[n], 0.25, 4);

      g_assert_cmpfloat (get_lamination (figures)->fat_layers, ==, round (pow (3, n)));
    }
}

/* Claims in print that agree only in part, or count something else. */
static void
test_printed_claims (void)
{
  g_autoptr (TrFigures) six = figures_new (TR_STYLE_HALF, "333333", 0.3, 6);
  g_autoptr (TrFigures) four = figures_new (TR_STYLE_HALF, "3333", 0.3, 4);
  g_autoptr (TrFigures) three = figures_new (TR_STYLE_HALF, "333", 0.3, 4);
  g_autoptr (TrFigures) two_book = figures_new (TR_STYLE_HALF, "44", 0.3, 4);
  const TrLamination *lamination = get_lamination (six);

  /* Hervé This, AgroParisTech-INRAE seminar report, 18 January 2023: six
   * turns, 729 of butter, 730 of dough. The same. */
  g_assert_cmpfloat (lamination->fat_layers, ==, 729);
  g_assert_cmpfloat (lamination->dough_layers, ==, 730);

  /* H. McGee, On Food and Cooking, 2004: 729 of flour paste and 728 of fat.
   * One off on both: with dough outside there is one dough layer more than
   * fat layers, and 3^6 counts the fat. */
  g_assert_cmpfloat (lamination->fat_layers - 728, ==, 1);
  g_assert_cmpfloat (lamination->dough_layers - 729, ==, 1);

  /* "1458 + 1": fat and dough together, 2·729 + 1. */
  g_assert_cmpfloat (lamination->bands, ==, 1458 + 1);

  /* J. Griffin, as above, "dough layers will always number twice the butter
   * layers + 1": true of all layers, not of the dough layers. */
  g_assert_cmpfloat (lamination->bands, ==, 2 * lamination->fat_layers + 1);
  g_assert_cmpfloat (lamination->dough_layers, ==, lamination->fat_layers + 1);

  /* Copies of the encyclopedia article on puff pastry: (f + 1)^n with f folds,
   * 81 for four letter folds (f = 2). That is the number of fat layers ... */
  g_assert_cmpfloat (get_lamination (four)->fat_layers, ==, 81);
  /* ... and "81 layers" of three letter folds is 3 layers times 27, counted
   * without merging: 26 contacts too many. */
  g_assert_cmpfloat (get_lamination (three)->bands, ==, 81 - 26);
  g_assert_cmpfloat (get_lamination (three)->fat_layers, ==, 27);

  /* A supplier's masterclass: two book turns do for three letter turns. A rule
   * of the bench; the layers are not equal. */
  g_assert_cmpfloat (get_lamination (two_book)->fat_layers, ==, 16);
  g_assert_cmpfloat (get_lamination (three)->fat_layers, ==, 27);
}

/* 25 % roll-in on dough, 1.2364 and 0.9395 g/ml (Choi & Okos 1986 on USDA SR28
 * at 4 °C), a sheet of 4 mm: the fat and the inner dough layers, µm,
 * worked out by a separate script from t_b = φS/F and t_d = (1 − φ)S/F. */
static const struct { const char *folds; double fat_layers, fat_um, dough_um; } thickness_cases[] = {
  { "33", 9, 110.0, 334.4 },
  { "34", 12, 82.5, 250.8 },
  { "36", 18, 55.0, 167.2 },
  { "333", 27, 36.7, 111.5 },
  { "343", 36, 27.5, 83.6 },
  { "3333", 81, 12.2, 37.2 },
};

static TrFigures *
quarter_figures_new (TrStyle     style,
                     const char *folds)
{
  g_autoptr (TrTrial) trial = ref_trial_new ();
  TrDough *dough = ref_trial_get_dough (trial);

  ref_dough_add_line (dough, TR_STAGE_DOUGH, "flour-bread", "600 g");
  ref_dough_add_line (dough, TR_STAGE_DOUGH, "water", "400 g");
  ref_dough_add_line (dough, TR_STAGE_ROLL_IN, "butter-unsalted", "25 % of dough");
  ref_dough_laminate (dough, style, folds);
  ref_dough_cut (dough, 4);
  dough->dough_density_g_ml = 1.2364;
  dough->lock_in->fat_density_g_ml = 0.9395;

  return ref_figures_new (trial);
}

static void
test_thickness (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (thickness_cases); i++)
    {
      g_autoptr (TrFigures) figures = quarter_figures_new (TR_STYLE_HALF, thickness_cases[i].folds);
      const TrLamination *lamination = get_lamination (figures);

      g_assert_cmpfloat_with_epsilon (lamination->fat_volume_fraction, 0.2476, 5e-5);
      g_assert_cmpfloat (lamination->fat_layers, ==, thickness_cases[i].fat_layers);
      g_assert_cmpfloat_with_epsilon (lamination->fat_layer_um.min, thickness_cases[i].fat_um, 0.06);
      g_assert_cmpfloat_with_epsilon (lamination->fat_layer_um.max, thickness_cases[i].fat_um, 0.06);
      g_assert_cmpfloat_with_epsilon (lamination->dough_layer_um.min, thickness_cases[i].dough_um, 0.06);
      g_assert_cmpfloat_with_epsilon (lamination->dough_layer_um.max, thickness_cases[i].dough_um, 0.06);
      /* the two outermost are half of that */
      g_assert_cmpfloat_with_epsilon (lamination->dough_layer_um_outer, thickness_cases[i].dough_um / 2, 0.06);
    }
}

/* Two fat layers at lock-in: dough layers are t and 2t with
 * 3·t·Πf = (1 − φ)·S; the fat is as thin as with twice the folds. */
static void
test_thickness_letter (void)
{
  g_autoptr (TrFigures) figures = quarter_figures_new (TR_STYLE_LETTER, "33");
  const TrLamination *lamination = get_lamination (figures);
  double t_um = (1 - lamination->fat_volume_fraction) * 4000 / (3 * 9);

  g_assert_cmpfloat (lamination->fat_layers, ==, 18);
  g_assert_cmpfloat_with_epsilon (lamination->fat_layer_um.min, 55.0, 0.06);
  g_assert_cmpfloat_with_epsilon (lamination->fat_layer_um.max, 55.0, 0.06);
  g_assert_cmpfloat_with_epsilon (lamination->dough_layer_um.min, t_um, 1e-9);
  g_assert_cmpfloat_with_epsilon (lamination->dough_layer_um.max, 2 * t_um, 1e-9);
}

/* EP 0 445 850: 8 mm of dough on each side of 10 mm of fat, so φ = 10/26;
 * worked out from that geometry. */
static void
test_patent_thickness (void)
{
  g_autoptr (TrFigures) four = figures_new (TR_STYLE_HALF, "3333", 10.0 / 26, 8);
  g_autoptr (TrFigures) six = figures_new (TR_STYLE_HALF, "333333", 10.0 / 26, 3.5);

  g_assert_cmpfloat_with_epsilon (get_lamination (four)->fat_layer_um.min, 38.0, 0.06);
  g_assert_cmpfloat_with_epsilon (get_lamination (four)->dough_layer_um.min, 60.8, 0.06);
  g_assert_cmpfloat_with_epsilon (get_lamination (six)->fat_layer_um.min, 1.85, 0.006);
  g_assert_cmpfloat_with_epsilon (get_lamination (six)->dough_layer_um.min, 2.95, 0.006);
}

static double
mean_layer_um (const char *folds,
               double      thickness_mm)
{
  g_autoptr (TrFigures) figures = figures_new (TR_STYLE_HALF, folds, 0.4, thickness_mm);

  return 1000 * thickness_mm / get_lamination (figures)->bands;
}

/* Six letter turns. McGee says about 10 µm at 6 mm, which would be the mean of
 * 600 layers; it is 4.1. This says 1/1500 cm (6.7 µm) at 1 cm; it is 6.85. */
static void
test_printed_thickness (void)
{
  g_assert_cmpfloat_with_epsilon (mean_layer_um ("333333", 6), 4.1, 0.06);
  g_assert_cmpfloat_with_epsilon (mean_layer_um ("333333", 10), 6.85, 0.006);
  g_assert_cmpfloat_with_epsilon (mean_layer_um ("333333", 10), 10000.0 / 1500, 0.2);
}

/* Macias-Rodriguez & Marangoni, Physics Today 71(1):70, 2018: layers of about
 * 100 to 200 µm, typically 18 to 32 of them in a croissant. That is before the
 * last sheeting to 4 mm: at 1 cm the usual fold sequences fall in their range. */
static void
test_typical_croissant (void)
{
  static const char *const folds[] = { "36", "44", "333" };

  for (gsize i = 0; i < G_N_ELEMENTS (folds); i++)
    {
      g_autoptr (TrFigures) figures = figures_new (TR_STYLE_HALF, folds[i], 0.25, 10);
      const TrLamination *lamination = get_lamination (figures);

      g_assert_cmpfloat (lamination->fat_layers, >=, 16);
      g_assert_cmpfloat (lamination->fat_layers, <=, 32);
      g_assert_cmpfloat (lamination->fat_layer_um.min, >=, 90);
      g_assert_cmpfloat (lamination->fat_layer_um.max, <=, 200);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/reference/layers/counts", test_counts);
  g_test_add_func ("/reference/layers/counts-inverse", test_counts_inverse);
  g_test_add_func ("/reference/layers/lock-in", test_lock_in);
  g_test_add_func ("/reference/layers/step-by-step", test_step_by_step);
  g_test_add_func ("/reference/layers/patent-powers-of-three", test_patent_powers);
  g_test_add_func ("/reference/layers/printed-claims", test_printed_claims);
  g_test_add_func ("/reference/layers/thickness", test_thickness);
  g_test_add_func ("/reference/layers/thickness-letter", test_thickness_letter);
  g_test_add_func ("/reference/layers/patent-thickness", test_patent_thickness);
  g_test_add_func ("/reference/layers/printed-thickness", test_printed_thickness);
  g_test_add_func ("/reference/layers/typical-croissant", test_typical_croissant);

  return g_test_run ();
}
