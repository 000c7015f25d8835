/* test-stack.c: random sequences: volume is kept, and the closed forms equal the folded stack
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "bake.h"

static TrTurn *
random_turn (double block_mm)
{
  TrTurn *turn = tr_turn_new (g_test_rand_int_range (2, 7), NAN);

  switch (g_test_rand_int_range (0, 3))
    {
    case 0:
      turn->thickness_mm = g_test_rand_double_range (3, 12);
      break;
    case 1:
      turn->length_mm = g_test_rand_double_range (1, 3) * block_mm;
      break;
    default:
      turn->thickness_mm = g_test_rand_double_range (3, 12);
      turn->width_mm = g_test_rand_double_range (150, 400);
      break;
    }
  turn->trim_mm = g_test_rand_bit () ? g_test_rand_double_range (0, 3) : 0;

  return turn;
}

static Bake
random_bake (TrStyle style,
             int     most_turns)
{
  Bake bake = bake_new (style, g_test_rand_double_range (300, 9000), 0);
  TrLockIn *lock_in = bake.dough->lock_in;

  bake.formula = sample_formula (bake.formula.dough_g, bake.formula.dough_g * g_test_rand_double_range (0.15, 0.9));
  bake.dough->handling_loss_percent = g_test_rand_double_range (0, 8);
  bake.dough->dough_density_g_ml = g_test_rand_double_range (1, 1.3);
  lock_in->blocks = g_test_rand_int_range (1, 5);
  lock_in->rim_mm = g_test_rand_double_range (0, 12);
  lock_in->fat_thickness_mm = g_test_rand_bit () ? g_test_rand_double_range (2, 9) : NAN;
  for (int i = g_test_rand_int_range (0, most_turns + 1); i > 0; i--)
    g_ptr_array_add (bake.dough->turns, random_turn (300));

  return bake;
}

static void
check_lock_in_volume (const Bake *bake)
{
  const TrLamination *lamination = &bake->lamination;
  double loss = 1 - bake->dough->handling_loss_percent / 100;
  double fat_ml = bake->formula.roll_in_g * loss / bake->dough->lock_in->blocks / lamination->fat_density_g_ml;
  double dough_ml = bake->formula.dough_g * loss / bake->dough->lock_in->blocks / bake->dough->dough_density_g_ml;

  assert_close (size_volume (&lamination->lock_in.fat_mm), fat_ml * 1000, 1e-9);
  assert_close (size_volume (&lamination->lock_in.dough_mm), dough_ml * 1000, 1e-9);
  assert_close (size_volume (&lamination->lock_in.block_mm), (fat_ml + dough_ml) * 1000, 1e-9);
  assert_close (size_volume (&lamination->lock_in.block_mm) / 1000 * lamination->mix_density_g_ml,
                lamination->block_mass_g, 1e-9);
}

static void
check_turn_volumes (const Bake *bake)
{
  TrSize before = bake->lamination.lock_in.block_mm;

  for (guint i = 0; i < bake->lamination.steps->len; i++)
    {
      const TrTurnFigures *step = bake_step (bake, i);
      double trimmed_mm3 = step->trimmed_g / bake->lamination.mix_density_g_ml * 1000;

      for (int side = 0; side < 3; side++)
        g_assert_cmpfloat_with_epsilon (step->start_mm.mm[side], before.mm[side], 1e-9);
      assert_close (size_volume (&step->rolled_mm), size_volume (&step->start_mm), 1e-9);
      assert_close (size_volume (&step->folded_mm) + trimmed_mm3, size_volume (&step->rolled_mm), 1e-9);
      g_assert_cmpfloat (step->trimmed_g, >=, 0);
      before = (TrSize) { { step->folded_mm.mm[1], step->folded_mm.mm[0], step->folded_mm.mm[2] } };
    }
}

static void
test_volume_is_kept_through_lock_in_and_turns (void)
{
  for (guint style = 0; style < TR_N_STYLES; style++)
    for (int i = 0; i < 100; i++)
      {
        Bake bake = random_bake ((TrStyle) style, 6);

        bake_compute (&bake);
        if (tr_lock_in_find_fault (bake.dough, &bake.formula, &bake.lamination, NULL, NULL, NULL) == TR_FAULT_NONE)
          {
            check_lock_in_volume (&bake);
            check_turn_volumes (&bake);
          }
        bake_clear (&bake);
      }
}

static TrRange
range_of_bands (const GArray *stack,
                gboolean      is_fat,
                guint         skip_at_ends,
                double        scale)
{
  TrRange range = { NAN, NAN };

  for (guint i = skip_at_ends; i + skip_at_ends < stack->len; i++)
    {
      const TrStackBand *band = &g_array_index (stack, TrStackBand, i);

      if (band->is_fat != is_fat)
        continue;
      range.min = fmin (range.min, band->share * scale);
      range.max = fmax (range.max, band->share * scale);
    }

  return range;
}

static void
assert_same_range (TrRange a,
                   TrRange b)
{
  g_assert_cmpint (isnan (a.min), ==, isnan (b.min));
  if (isnan (a.min))
    return;
  assert_close (a.min, b.min, 1e-9);
  assert_close (a.max, b.max, 1e-9);
}

static void
check_stack_is_sound (const GArray *stack)
{
  double sum = 0;

  for (guint i = 0; i < stack->len; i++)
    {
      sum += g_array_index (stack, TrStackBand, i).share;
      if (i > 0)
        g_assert_true (g_array_index (stack, TrStackBand, i).is_fat
                       != g_array_index (stack, TrStackBand, i - 1).is_fat);
    }
  g_assert_cmpfloat_with_epsilon (sum, 1, 1e-9);
}

static void
check_stack (const Bake *bake)
{
  const TrLamination *lamination = &bake->lamination;
  g_autoptr (GArray) stack = tr_stack_new (bake->dough, lamination, G_MAXUINT);
  double um = bake->sheet.thickness_mm * 1000;
  gboolean is_inverse = bake->dough->lock_in->style == TR_STYLE_INVERSE;

  if (lamination->bands > TR_MAX_DRAWN_BANDS)
    {
      g_assert_null (stack);
      return;
    }

  g_assert_cmpfloat_with_epsilon (lamination->bands, stack->len, 1e-9);
  check_stack_is_sound (stack);
  assert_same_range (lamination->fat_layer_um, range_of_bands (stack, TRUE, 0, um));
  assert_same_range (lamination->dough_layer_um, range_of_bands (stack, FALSE, is_inverse ? 0 : 1, um));
  g_assert_cmpint (g_array_index (stack, TrStackBand, 0).is_fat, ==, is_inverse);
  if (!is_inverse)
    assert_close (g_array_index (stack, TrStackBand, 0).share * um, lamination->dough_layer_um_outer, 1e-9);
}

static void
check_stack_of_steps (const Bake *bake)
{
  for (guint i = 0; i < bake->lamination.steps->len; i++)
    {
      const TrTurnFigures *step = bake_step (bake, i);
      g_autoptr (GArray) stack = tr_stack_new (bake->dough, &bake->lamination, i + 1);
      double folded_um = step->rolled_mm.mm[2] * tr_dough_get_turn (bake->dough, i)->fold * 1000;

      if (stack == NULL || isnan (folded_um))
        return;
      g_assert_cmpfloat_with_epsilon (step->fat_layers + step->dough_layers, stack->len, 1e-9);
      assert_same_range (step->fat_layer_um, range_of_bands (stack, TRUE, 0, folded_um));
    }
}

static void
test_closed_form_equals_the_folded_stack (void)
{
  for (guint style = 0; style < TR_N_STYLES; style++)
    for (int i = 0; i < 60; i++)
      {
        Bake bake = random_bake ((TrStyle) style, 6);

        bake.sheet = (TrSheet) { .sheets = bake.dough->lock_in->blocks, .thickness_mm = g_test_rand_double_range (2, 9) };
        bake_compute (&bake);
        check_stack (&bake);
        check_stack_of_steps (&bake);
        bake_clear (&bake);
      }
}

static void
test_greatest_stack_is_drawn (void)
{
  Bake bake = bake_new (TR_STYLE_HALF, 1000, 300);

  for (int i = 0; i < 6; i++)
    sample_add_fold (bake.dough, 4, 8);
  bake_compute (&bake);

  g_autoptr (GArray) stack = tr_stack_new (bake.dough, &bake.lamination, G_MAXUINT);
  g_assert_cmpuint (stack->len, ==, TR_MAX_DRAWN_BANDS);

  sample_add_fold (bake.dough, 2, 8);
  g_assert_null (tr_stack_new (bake.dough, &bake.lamination, G_MAXUINT));
  bake_clear (&bake);
}

/* The bare third over the fat first: five bands, and no fat on fat. */
static void
test_letter_is_dough_fat_dough_fat_dough (void)
{
  Bake bake = bake_new (TR_STYLE_LETTER, 600, 300);

  bake_compute (&bake);
  g_autoptr (GArray) stack = tr_stack_new (bake.dough, &bake.lamination, 0);
  g_assert_cmpuint (stack->len, ==, 5);
  for (guint i = 0; i < 5; i++)
    {
      const TrStackBand *band = &g_array_index (stack, TrStackBand, i);
      double phi = bake.lamination.fat_volume_fraction;

      g_assert_cmpint (band->is_fat, ==, i % 2 == 1);
      g_assert_cmpfloat_with_epsilon (band->share, band->is_fat ? phi / 2 : (1 - phi) / 3, 1e-12);
    }
  bake_clear (&bake);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/stack/volume-is-kept", test_volume_is_kept_through_lock_in_and_turns);
  g_test_add_func ("/stack/closed-form-equals-the-folded-stack", test_closed_form_equals_the_folded_stack);
  g_test_add_func ("/stack/greatest-stack-is-drawn", test_greatest_stack_is_drawn);
  g_test_add_func ("/stack/letter-is-five-bands", test_letter_is_dough_fat_dough_fat_dough);

  return g_test_run ();
}
