/* test-lamination.c: layers, lock-ins and turns against tables and each other
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "bake.h"

/* Computed from F = F0·Πk, D = F + 1, T = 2F + 1 (J. Griffin, Pastry Arts
 * Magazine, "Understanding the lamination layer calculation process": 7 after
 * one fold in three, 19 after two; H. This 2023: 729 and 730 after six). */
static const struct { int folds[7]; double fat; } layer_rows[] = {
  { { 3 }, 3 },
  { { 4 }, 4 },
  { { 3, 3 }, 9 },
  { { 3, 4 }, 12 },
  { { 4, 4 }, 16 },
  { { 3, 3, 3 }, 27 },
  { { 3, 4, 3 }, 36 },
  { { 3, 3, 4 }, 36 },
  { { 4, 4, 3 }, 48 },
  { { 4, 4, 4 }, 64 },
  { { 3, 3, 3, 3 }, 81 },
  { { 3, 3, 3, 4 }, 108 },
  { { 3, 4, 3, 4 }, 144 },
  { { 3, 3, 3, 3, 3 }, 243 },
  { { 4, 4, 4, 4 }, 256 },
  { { 3, 3, 3, 3, 3, 3 }, 729 },
  { { 4, 4, 4, 4, 4 }, 1024 },
};

static void
check_layer_row (guint   row,
                 TrStyle style,
                 double  fat,
                 double  dough)
{
  Bake bake = bake_new (style, 1000, 250);

  for (const int *fold = layer_rows[row].folds; *fold != 0; fold++)
    sample_add_fold (bake.dough, *fold, 8);
  bake_compute (&bake);
  g_assert_cmpfloat_with_epsilon (bake.lamination.fat_layers, fat, 1e-9);
  g_assert_cmpfloat_with_epsilon (bake.lamination.dough_layers, dough, 1e-9);
  g_assert_cmpfloat_with_epsilon (bake.lamination.bands, fat + dough, 1e-9);
  g_assert_cmpfloat_with_epsilon (tr_dough_count_fat_layers (bake.dough), fat, 1e-9);
  bake_clear (&bake);
}

static void
test_counts_are_those_of_the_trade (void)
{
  for (guint row = 0; row < G_N_ELEMENTS (layer_rows); row++)
    {
      double fat = layer_rows[row].fat;

      check_layer_row (row, TR_STYLE_HALF, fat, fat + 1);
      check_layer_row (row, TR_STYLE_GATE, fat, fat + 1);
      check_layer_row (row, TR_STYLE_ENVELOPE, fat, fat + 1);
      check_layer_row (row, TR_STYLE_LETTER, 2 * fat, 2 * fat + 1);
      check_layer_row (row, TR_STYLE_INVERSE, fat + 1, fat);
    }
}

/* Computed: fat φS/F, inner dough (1 − φ)S/F; φ = 0.2476 is about 25 % of butter
 * on a dough without gas (0.2474 from the rounded 0.940 and 1.236 g/ml). The last two rows: dough 8 mm on each side of
 * 10 mm of fat, after EP 0 445 850. */
static const struct {
  double dough_g, fat_g, dough_density, fat_density;
  int folds[7];
  double thickness_mm, fat_um, dough_um;
} thickness_rows[] = {
  { 75.24, 24.76, 1, 1, { 3, 3 }, 4, 110.0, 334.4 },
  { 75.24, 24.76, 1, 1, { 3, 4 }, 4, 82.5, 250.8 },
  { 75.24, 24.76, 1, 1, { 3, 3, 2 }, 4, 55.0, 167.2 },
  { 75.24, 24.76, 1, 1, { 3, 3, 3 }, 4, 36.7, 111.5 },
  { 75.24, 24.76, 1, 1, { 3, 3, 4 }, 4, 27.5, 83.6 },
  { 75.24, 24.76, 1, 1, { 3, 3, 3, 3 }, 4, 12.2, 37.2 },
  { 16, 10, 1, 1, { 3, 3, 3, 3 }, 8, 38.0, 60.8 },
  { 16, 10, 1, 1, { 3, 3, 3, 3, 3, 3 }, 3.5, 1.85, 2.95 },
};

static void
test_layers_are_as_thick_as_worked_out (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (thickness_rows); i++)
    {
      Bake bake = bake_new (TR_STYLE_HALF, thickness_rows[i].dough_g, thickness_rows[i].fat_g);
      double last_digit = thickness_rows[i].fat_um < 10 ? 0.0051 : 0.051;

      bake.dough->dough_density_g_ml = thickness_rows[i].dough_density;
      bake.dough->lock_in->fat_density_g_ml = thickness_rows[i].fat_density;
      for (const int *fold = thickness_rows[i].folds; *fold != 0; fold++)
        sample_add_fold (bake.dough, *fold, 8);
      bake.sheet = (TrSheet) { .sheets = 1, .thickness_mm = thickness_rows[i].thickness_mm };
      bake_compute (&bake);
      g_assert_cmpfloat_with_epsilon (bake.lamination.fat_layer_um.min, thickness_rows[i].fat_um, last_digit);
      g_assert_cmpfloat_with_epsilon (bake.lamination.fat_layer_um.max, thickness_rows[i].fat_um, last_digit);
      g_assert_cmpfloat_with_epsilon (bake.lamination.dough_layer_um.max, thickness_rows[i].dough_um, last_digit);
      g_assert_cmpfloat_with_epsilon (bake.lamination.dough_layer_um_outer, thickness_rows[i].dough_um / 2, last_digit);
      bake_clear (&bake);
    }
}

static void
test_nothing_is_thick_without_a_cut (void)
{
  Bake bake = bake_new (TR_STYLE_HALF, 1000, 250);

  sample_add_fold (bake.dough, 3, 8);
  bake_compute (&bake);
  g_assert_true (isnan (bake.lamination.fat_layer_um.min));
  g_assert_true (isnan (bake.lamination.dough_layer_um.max));
  g_assert_false (bake.lamination.has_to_sheet);
  g_assert_false (isnan (bake_step (&bake, 0)->fat_layer_um.min));
  bake_clear (&bake);
}

/* Without a turn: half has no inner dough layer, a letter one, and an inverse
 * block's two fat layers are both outside. */
static void
test_locked_in_block_without_turns (void)
{
  const struct { TrStyle style; double fat_um, inner_um, outer_um; } rows[] = {
    { TR_STYLE_HALF, 2000, NAN, 1000 },
    { TR_STYLE_LETTER, 1000, 2000 / 3.0, 2000 / 3.0 },
    { TR_STYLE_INVERSE, 1000, 2000, NAN },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      Bake bake = bake_new (rows[i].style, 500, 500);

      bake.dough->dough_density_g_ml = bake.dough->lock_in->fat_density_g_ml = 1;
      bake.sheet = (TrSheet) { .sheets = 1, .thickness_mm = 4 };
      bake_compute (&bake);
      g_assert_cmpfloat_with_epsilon (bake.lamination.fat_layer_um.min, rows[i].fat_um, 1e-9);
      g_assert_cmpfloat_with_epsilon (bake.lamination.fat_layer_um.max, rows[i].fat_um, 1e-9);
      g_assert_cmpint (isnan (bake.lamination.dough_layer_um.min), ==, isnan (rows[i].inner_um));
      if (!isnan (rows[i].inner_um))
        g_assert_cmpfloat_with_epsilon (bake.lamination.dough_layer_um.max, rows[i].inner_um, 1e-9);
      g_assert_cmpint (isnan (bake.lamination.dough_layer_um_outer), ==, isnan (rows[i].outer_um));
      if (!isnan (rows[i].outer_um))
        g_assert_cmpfloat_with_epsilon (bake.lamination.dough_layer_um_outer, rows[i].outer_um, 1e-9);
      bake_clear (&bake);
    }
}

/* Worked by hand for V_f = 240 ml, V_d = 960 ml, rim 10. */
static const struct {
  TrStyle style;
  double fat_thickness, fat_width;
  double fat[2], dough[2], block[2], dough_thickness, block_thickness, rim_share;
} lock_in_rows[] = {
  { TR_STYLE_HALF, 6, NAN, { 200, 200 }, { 420, 220 }, { 210, 220 },
    960e3 / (420 * 220), 1200e3 / (210 * 220), 1 - 40000.0 / (210 * 220) },
  { TR_STYLE_HALF, 6, 160, { 250, 160 }, { 520, 180 }, { 260, 180 },
    960e3 / (520 * 180), 1200e3 / (260 * 180), 1 - 40000.0 / (260 * 180) },
  { TR_STYLE_GATE, 6, NAN, { 200, 200 }, { 400, 220 }, { 200, 220 },
    960e3 / (400 * 220), 1200e3 / (200 * 220), 1 - 40000.0 / (200 * 220) },
  { TR_STYLE_ENVELOPE, 6, 77, { 200, 200 }, { G_SQRT2 * 220, G_SQRT2 * 220 }, { 220, 220 },
    960e3 / (2 * 220 * 220), 1200e3 / (220 * 220), 1 - 40000.0 / (220 * 220) },
  { TR_STYLE_LETTER, 3, NAN, { 400, 200 }, { 615, 220 }, { 205, 220 },
    960e3 / (615 * 220), 1200e3 / (205 * 220), 1 - 80000.0 / (2 * 205 * 220) },
  /* P = 240e3/(2·3) = 40000, w = 180: l = 40000/200 − 10 = 190 */
  { TR_STYLE_INVERSE, 3, 180, { 400, 200 }, { 190, 180 }, { 200, 200 },
    960e3 / (190 * 180), 1200e3 / (200 * 200), 0 },
};

static void
test_lock_ins_are_as_drawn (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (lock_in_rows); i++)
    {
      Bake bake = bake_new (lock_in_rows[i].style, 960, 240);
      const TrLockInFigures *lock_in = &bake.lamination.lock_in;

      bake.dough->dough_density_g_ml = bake.dough->lock_in->fat_density_g_ml = 1;
      bake.dough->handling_loss_percent = 0;
      bake.dough->lock_in->fat_thickness_mm = lock_in_rows[i].fat_thickness;
      bake.dough->lock_in->fat_width_mm = lock_in_rows[i].fat_width;
      bake_compute (&bake);
      for (int side = 0; side < 2; side++)
        {
          g_assert_cmpfloat_with_epsilon (lock_in->fat_mm.mm[side], lock_in_rows[i].fat[side], 1e-9);
          g_assert_cmpfloat_with_epsilon (lock_in->dough_mm.mm[side], lock_in_rows[i].dough[side], 1e-9);
          g_assert_cmpfloat_with_epsilon (lock_in->block_mm.mm[side], lock_in_rows[i].block[side], 1e-9);
        }
      g_assert_cmpfloat_with_epsilon (lock_in->fat_mm.mm[2], lock_in_rows[i].fat_thickness, 1e-9);
      g_assert_cmpfloat_with_epsilon (lock_in->dough_mm.mm[2], lock_in_rows[i].dough_thickness, 1e-9);
      g_assert_cmpfloat_with_epsilon (lock_in->block_mm.mm[2], lock_in_rows[i].block_thickness, 1e-9);
      g_assert_cmpfloat_with_epsilon (lock_in->rim_share, lock_in_rows[i].rim_share, 1e-12);
      bake_clear (&bake);
    }
}

static void
test_fat_thickness_goes_by_style (void)
{
  const double by_style[TR_N_STYLES] = { 6, 6, 6, 4, 4 };

  for (guint style = 0; style < TR_N_STYLES; style++)
    {
      Bake bake = bake_new ((TrStyle) style, 1000, 300);

      bake_compute (&bake);
      g_assert_cmpfloat_with_epsilon (bake.lamination.lock_in.fat_mm.mm[2], by_style[style], 1e-9);
      bake_clear (&bake);
    }
}

/* 1 200 ml in a block 200 × 200 × 30. */
static Bake
square_block (void)
{
  Bake bake = bake_new (TR_STYLE_GATE, 960, 240);

  bake.dough->dough_density_g_ml = bake.dough->lock_in->fat_density_g_ml = 1;
  bake.dough->handling_loss_percent = 0;
  bake.dough->lock_in->rim_mm = 0;

  return bake;
}

static void
assert_size (const TrSize *size,
             double        length,
             double        width,
             double        thickness)
{
  g_assert_cmpfloat_with_epsilon (size->mm[0], length, 1e-9);
  g_assert_cmpfloat_with_epsilon (size->mm[1], width, 1e-9);
  g_assert_cmpfloat_with_epsilon (size->mm[2], thickness, 1e-9);
}

static void
test_turn_by_thickness_keeps_the_width_and_turns_a_quarter (void)
{
  Bake bake = square_block ();

  sample_add_fold (bake.dough, 3, 10);
  sample_add_fold (bake.dough, 4, 7.5);
  bake_compute (&bake);
  assert_size (&bake_step (&bake, 0)->start_mm, 200, 200, 30);
  assert_size (&bake_step (&bake, 0)->rolled_mm, 600, 200, 10);
  assert_size (&bake_step (&bake, 0)->folded_mm, 200, 200, 30);
  g_assert_cmpfloat_with_epsilon (bake_step (&bake, 0)->stretch, 3, 1e-12);
  assert_size (&bake_step (&bake, 1)->rolled_mm, 800, 200, 7.5);
  assert_size (&bake_step (&bake, 1)->folded_mm, 200, 200, 30);

  TrSize last = tr_lamination_last_block (&bake.lamination);
  assert_size (&last, 200, 200, 30);
  bake_clear (&bake);
}

static void
test_turn_by_length_and_by_width (void)
{
  Bake bake = square_block ();
  TrTurn *by_length = tr_turn_new (3, NAN), *by_width = tr_turn_new (2, 8);

  by_length->length_mm = 480;
  by_width->width_mm = 250;
  g_ptr_array_add (bake.dough->turns, by_length);
  g_ptr_array_add (bake.dough->turns, by_width);
  bake_compute (&bake);
  assert_size (&bake_step (&bake, 0)->rolled_mm, 480, 200, 12.5);
  assert_size (&bake_step (&bake, 0)->folded_mm, 160, 200, 37.5);
  assert_size (&bake_step (&bake, 1)->start_mm, 200, 160, 37.5);
  assert_size (&bake_step (&bake, 1)->rolled_mm, 600, 250, 8);
  g_assert_cmpfloat_with_epsilon (bake_step (&bake, 1)->stretch, 3, 1e-12);
  bake_clear (&bake);
}

static void
test_trim_takes_mass_and_leaves_the_layers (void)
{
  Bake bake = square_block ();

  sample_add_fold (bake.dough, 3, 10);
  tr_dough_get_turn (bake.dough, 0)->trim_mm = 5;
  bake_compute (&bake);
  assert_size (&bake_step (&bake, 0)->folded_mm, 190, 200, 30);
  g_assert_cmpfloat_with_epsilon (bake_step (&bake, 0)->trimmed_g, 60, 1e-9);
  g_assert_cmpfloat_with_epsilon (bake_step (&bake, 0)->fat_layers, 3, 1e-9);
  bake_clear (&bake);
}

static void
test_what_breaks_on_a_bench (void)
{
  const struct { double roll_width; TrSize rolled; TrBreaks turn, sheet; gboolean rotated; } rows[] = {
    { 450, { { 900, 450, 4 } }, 0, 0, FALSE },
    { 450, { { 901, 450, 4 } }, TR_BREAK_WORKTOP_LENGTH, TR_BREAK_WORKTOP_LENGTH, FALSE },
    { 450, { { 500, 460, 4 } }, TR_BREAK_ROLL_WIDTH, TR_BREAK_ROLL_WIDTH, FALSE },
    { 450, { { 400, 800, 4 } }, TR_BREAK_ROLL_WIDTH | TR_BREAK_WORKTOP_WIDTH, 0, TRUE },
    { 450, { { 500, 400, 2.4 } }, TR_BREAK_ROLL_THICKNESS_MIN, TR_BREAK_ROLL_THICKNESS_MIN, FALSE },
    { 450, { { 500, 400, 41 } }, TR_BREAK_ROLL_THICKNESS_MAX, TR_BREAK_ROLL_THICKNESS_MAX, FALSE },
    { NAN, { { 500, 800, 2 } }, 0, 0, TRUE },
    /* either way round breaks something: the way that breaks least is told */
    { NAN, { { 700, 1000, 2 } }, TR_BREAK_WORKTOP_WIDTH, TR_BREAK_WORKTOP_WIDTH, FALSE },
  };
  g_autoptr (TrBench) bench = tr_bench_new ();

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      gboolean rotated;

      bench->roll_width_max_mm = rows[i].roll_width;
      g_assert_cmpint (tr_bench_check_turn (bench, &rows[i].rolled), ==, rows[i].turn);
      g_assert_cmpint (tr_bench_check_sheet (bench, &rows[i].rolled, &rotated), ==, rows[i].sheet);
      g_assert_cmpint (rotated, ==, rows[i].rotated);
    }
}

/* A block 200 × 200 × 30; two sheets 600 × 250, 4 mm. Cut in two strips of
 * 100 × 200: laid along 6.0 and 1.25, laid across 3.0 and 2.5. */
static void
test_to_sheet_takes_the_gentlest_way (void)
{
  Bake bake = square_block ();

  bake.sheet = (TrSheet) { .sheets = 2, .thickness_mm = 4, .rolled_mm = { { 600, 250, 4 } } };
  bake_compute (&bake);

  const TrToSheet *to = &bake.lamination.to_sheet;
  g_assert_true (bake.lamination.has_to_sheet);
  g_assert_cmpfloat_with_epsilon (to->blocks_cut, 2, 1e-9);
  assert_size (&to->start_mm, 200, 100, 30);
  g_assert_cmpfloat_with_epsilon (to->stretch_length, 3, 1e-12);
  g_assert_cmpfloat_with_epsilon (to->stretch_width, 2.5, 1e-12);
  g_assert_cmpstr (to->order, ==, "width-first");
  g_assert_true (to->fits);
  bake_clear (&bake);
}

static void
test_to_sheet_does_not_fit_when_it_must_shrink (void)
{
  Bake bake = square_block ();

  bake.sheet = (TrSheet) { .sheets = 1, .thickness_mm = 4, .rolled_mm = { { 1500, 190, 4 } } };
  bake_compute (&bake);
  g_assert_cmpfloat (bake.lamination.to_sheet.stretch_width, <, 1);
  g_assert_cmpstr (bake.lamination.to_sheet.order, ==, "width-first");
  g_assert_false (bake.lamination.to_sheet.fits);
  bake_clear (&bake);
}

static TrLockInFault
fault_of (Bake   *bake,
          double *greatest)
{
  bake_compute (bake);

  TrLockInFault fault = tr_lock_in_find_fault (bake->dough, &bake->formula, &bake->lamination, NULL, greatest, NULL);

  g_assert_cmpint (fault == TR_FAULT_NONE || fault == TR_FAULT_TRIM, ==, !isnan (bake->lamination.lock_in.block_mm.mm[2]));
  bake_clear (bake);

  return fault;
}

static void
test_sizes_that_cannot_be_are_named (void)
{
  double greatest;

  Bake bake = bake_new (TR_STYLE_HALF, 1000, 0);
  g_assert_cmpint (fault_of (&bake, &greatest), ==, TR_FAULT_NO_FAT);

  bake = bake_new (TR_STYLE_HALF, 0, 300);
  g_assert_cmpint (fault_of (&bake, &greatest), ==, TR_FAULT_NO_DOUGH);

  bake = bake_new (TR_STYLE_LETTER, 1000, 300);
  bake.dough->lock_in->fat_thickness_mm = 0;
  g_assert_cmpint (fault_of (&bake, &greatest), ==, TR_FAULT_FAT_THICKNESS);

  bake = bake_new (TR_STYLE_GATE, 1000, 300);
  bake.dough->lock_in->fat_width_mm = 0;
  g_assert_cmpint (fault_of (&bake, &greatest), ==, TR_FAULT_FAT_WIDTH);

  bake = bake_new (TR_STYLE_INVERSE, 1000, 300);
  bake.dough->lock_in->rim_mm = 200;
  g_assert_cmpint (fault_of (&bake, &greatest), ==, TR_FAULT_DOUGH_LENGTH);

  bake = bake_new (TR_STYLE_INVERSE, 1000, 300);
  bake.dough->lock_in->rim_mm = greatest * (1 - 1e-9);
  g_assert_cmpint (fault_of (&bake, &greatest), ==, TR_FAULT_NONE);

  bake = square_block ();
  sample_add_fold (bake.dough, 3, 10);
  tr_dough_get_turn (bake.dough, 0)->trim_mm = 100;
  g_assert_cmpint (fault_of (&bake, &greatest), ==, TR_FAULT_TRIM);
  g_assert_cmpfloat_with_epsilon (greatest, 100, 1e-9);
}

static void
test_blocks_share_the_mass (void)
{
  Bake one = bake_new (TR_STYLE_HALF, 1000, 300), four = bake_new (TR_STYLE_HALF, 4000, 1200);

  four.dough->lock_in->blocks = 4;
  bake_compute (&one);
  bake_compute (&four);
  assert_size (&four.lamination.lock_in.block_mm, one.lamination.lock_in.block_mm.mm[0],
               one.lamination.lock_in.block_mm.mm[1], one.lamination.lock_in.block_mm.mm[2]);
  assert_close (four.lamination.fat_block_g, 300 * 0.98, 1e-12);
  bake_clear (&one);
  bake_clear (&four);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/lamination/counts-are-those-of-the-trade", test_counts_are_those_of_the_trade);
  g_test_add_func ("/lamination/layers-are-as-thick-as-worked-out", test_layers_are_as_thick_as_worked_out);
  g_test_add_func ("/lamination/nothing-is-thick-without-a-cut", test_nothing_is_thick_without_a_cut);
  g_test_add_func ("/lamination/locked-in-block-without-turns", test_locked_in_block_without_turns);
  g_test_add_func ("/lamination/lock-ins-are-as-drawn", test_lock_ins_are_as_drawn);
  g_test_add_func ("/lamination/fat-thickness-goes-by-style", test_fat_thickness_goes_by_style);
  g_test_add_func ("/lamination/turn-by-thickness", test_turn_by_thickness_keeps_the_width_and_turns_a_quarter);
  g_test_add_func ("/lamination/turn-by-length-and-by-width", test_turn_by_length_and_by_width);
  g_test_add_func ("/lamination/trim-takes-mass-and-leaves-layers", test_trim_takes_mass_and_leaves_the_layers);
  g_test_add_func ("/lamination/what-breaks-on-a-bench", test_what_breaks_on_a_bench);
  g_test_add_func ("/lamination/to-sheet-takes-the-gentlest-way", test_to_sheet_takes_the_gentlest_way);
  g_test_add_func ("/lamination/to-sheet-does-not-fit-when-it-must-shrink", test_to_sheet_does_not_fit_when_it_must_shrink);
  g_test_add_func ("/lamination/sizes-that-cannot-be-are-named", test_sizes_that_cannot_be_are_named);
  g_test_add_func ("/lamination/blocks-share-the-mass", test_blocks_share_the_mass);

  return g_test_run ();
}
