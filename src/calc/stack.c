/* stack.c: the bands of a laminated block, made by really folding
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For drawing. How many there are and how thick, without making them, is in
 * lamination.c; a test holds the two together.
 */

#include "lamination.h"

static void
lay_band (GArray      *stack,
          TrStackBand  band)
{
  TrStackBand *top = stack->len > 0 ? &g_array_index (stack, TrStackBand, stack->len - 1) : NULL;

  if (top != NULL && top->is_fat == band.is_fat)
    top->share += band.share;
  else
    g_array_append_val (stack, band);
}

static GArray *
lock_in_stack (TrStyle style,
               double  fat_share)
{
  gboolean is_inverse = style == TR_STYLE_INVERSE;
  guint n_bands = style == TR_STYLE_LETTER ? 5 : 3;
  GArray *stack = g_array_sized_new (FALSE, FALSE, sizeof (TrStackBand), n_bands);

  for (guint i = 0; i < n_bands; i++)
    {
      TrStackBand band = { .is_fat = (i % 2 == 1) != is_inverse };
      guint alike = i % 2 == 1 ? n_bands / 2 : n_bands / 2 + 1;

      band.share = (band.is_fat ? fat_share : 1 - fat_share) / alike;
      g_array_append_val (stack, band);
    }

  return stack;
}

/* `fold` copies one on another, every other one upside down. */
static GArray *
fold_stack (GArray *stack,
            int     fold)
{
  GArray *folded = g_array_sized_new (FALSE, FALSE, sizeof (TrStackBand), stack->len * (guint) fold);

  for (int copy = 0; copy < fold; copy++)
    for (guint i = 0; i < stack->len; i++)
      {
        guint at = copy % 2 == 0 ? i : stack->len - 1 - i;
        TrStackBand band = g_array_index (stack, TrStackBand, at);

        band.share /= fold;
        lay_band (folded, band);
      }

  return folded;
}

/* At each of the fold's k − 1 joins two bands become one. */
static double
count_bands (const TrDough *dough,
             guint          n_turns)
{
  double n_bands = dough->lock_in->style == TR_STYLE_LETTER ? 5 : 3;

  for (guint i = 0; i < n_turns; i++)
    {
      int fold = tr_dough_get_turn (dough, i)->fold;

      n_bands = n_bands * fold - (fold - 1);
    }

  return n_bands;
}

GArray *
tr_stack_new (const TrDough      *dough,
              const TrLamination *lamination,
              guint               n_turns)
{
  g_return_val_if_fail (dough->lock_in != NULL, NULL);

  n_turns = MIN (n_turns, dough->turns->len);
  if (isnan (lamination->fat_volume_fraction) || count_bands (dough, n_turns) > TR_MAX_DRAWN_BANDS)
    return NULL;

  g_autoptr (GArray) stack = lock_in_stack (dough->lock_in->style, lamination->fat_volume_fraction);
  for (guint i = 0; i < n_turns; i++)
    {
      GArray *folded = fold_stack (stack, tr_dough_get_turn (dough, i)->fold);

      g_array_unref (stack);
      stack = folded;
    }

  return g_steal_pointer (&stack);
}
