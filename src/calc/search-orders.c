/* search-orders.c: a list of folds rolled out step by step, and its orders
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The orders of a set are its permutations in rising order, each rolled out from
 * where it differs from the one before.
 */

#include "search-private.h"

#include <string.h>

#include "lamination.h"
#include "lock-in.h"
#include "measure.h"

#define ROLL_OUT_MM 8.0          /* where no turn says it */

/* Stacks *******************************************************************/

static double
get_thickness_mm (const TrDoughFigures *figures)
{
  const GArray *steps = figures->has_lamination ? figures->lamination.steps : NULL;
  double thickness = steps != NULL && steps->len > 0
                     ? g_array_index (steps, TrTurnFigures, steps->len - 1).rolled_mm.mm[2] : NAN;

  return tr_is_positive (thickness) ? thickness : ROLL_OUT_MM;
}

gboolean
tr_style_is_half_stack (TrStyle style)
{
  return style == TR_STYLE_HALF || style == TR_STYLE_GATE || style == TR_STYLE_ENVELOPE;
}

TrLockIn *
tr_search_lock_in_new (const TrDough *dough,
                       TrStyle        style,
                       int            blocks)
{
  TrLockIn *lock_in = dough->lock_in != NULL ? tr_lock_in_copy (dough->lock_in) : tr_lock_in_new ();

  if (dough->lock_in == NULL || lock_in->style != style)
    lock_in->fat_thickness_mm = lock_in->fat_width_mm = NAN;
  lock_in->style = style;
  lock_in->blocks = blocks;

  return lock_in;
}

gboolean
tr_fold_stack_init (TrFoldStack          *stack,
                    const TrDoughFigures *figures,
                    TrStyle               style,
                    int                   blocks)
{
  TrDough *dough = tr_dough_copy (figures->dough);
  TrLockInFigures lock_in;

  tr_lock_in_free (dough->lock_in);
  dough->lock_in = tr_search_lock_in_new (figures->dough, style, blocks);
  tr_lock_in_compute (dough, &figures->formula, &lock_in);
  tr_dough_unref (dough);

  *stack = (TrFoldStack) {
    .figures = figures,
    .style = style,
    .blocks = blocks,
    .block_mm = lock_in.block_mm,
    .volume_mm3 = lock_in.block_mm.mm[0] * lock_in.block_mm.mm[1] * lock_in.block_mm.mm[2],
    .thickness_mm = get_thickness_mm (figures),
  };

  return tr_is_positive (stack->volume_mm3);
}

TrFoldState
tr_fold_stack_begin (const TrFoldStack *stack)
{
  return (TrFoldState) { stack->block_mm.mm[0], stack->block_mm.mm[1], 0, 0, 0 };
}

TrFoldState
tr_fold_stack_fold (const TrFoldStack *stack,
                    const TrFoldState *from,
                    guint8             fold)
{
  TrSize rolled = { { stack->volume_mm3 / (from->width_mm * stack->thickness_mm), from->width_mm, stack->thickness_mm } };

  return (TrFoldState) {
    .length_mm = rolled.mm[1],                /* the quarter turn */
    .width_mm = rolled.mm[0] / fold,
    .worst_stretch = MAX (from->worst_stretch, MAX (1, rolled.mm[0] / from->length_mm)),
    .longest_mm = MAX (from->longest_mm, rolled.mm[0]),
    .breaks = from->breaks | tr_bench_check_turn (stack->figures->bench, &rolled),
  };
}

/* Orders ********************************************************************/

int
tr_search_compare_numbers (double a,
                           double b)
{
  if (fabs (a - b) <= TR_HAIR * fmax (fabs (a), fabs (b)))
    return 0;

  return a < b ? -1 : 1;
}

int
tr_fold_order_compare (gconstpointer a,
                       gconstpointer b)
{
  const TrFoldOrder *first = a, *second = b;
  int order;

  if ((first->breaks == 0) != (second->breaks == 0))
    return first->breaks == 0 ? -1 : 1;
  order = tr_search_compare_numbers (first->worst_stretch, second->worst_stretch);
  if (order == 0)
    order = tr_search_compare_numbers (first->longest_mm, second->longest_mm);

  return order != 0 ? order : memcmp (first->folds, second->folds, sizeof first->folds);
}

/* The next permutation in rising order; `changed`: from where on it differs. FALSE: that was the last. */
static gboolean
permute (guint8 *folds,
         guint   n,
         guint  *changed)
{
  guint at = n - 1, with = n - 1;

  while (at > 0 && folds[at - 1] >= folds[at])
    at--;
  if (at == 0)
    return FALSE;
  while (folds[with] <= folds[at - 1])
    with--;

  guint8 swapped = folds[at - 1];

  folds[at - 1] = folds[with];
  folds[with] = swapped;
  for (guint low = at, high = n - 1; low < high; low++, high--)
    {
      swapped = folds[low];
      folds[low] = folds[high];
      folds[high] = swapped;
    }
  *changed = at - 1;

  return TRUE;
}

void
tr_fold_stack_each_order (const TrFoldStack *stack,
                          const guint8      *set,
                          guint              n,
                          TrFoldOrderFunc    found,
                          gpointer           data)
{
  TrFoldState states[TR_SEARCH_MAX_TURNS + 1] = { tr_fold_stack_begin (stack) };
  TrFoldOrder order = { { 0 } };
  guint from = 0;

  memcpy (order.folds, set, n);
  do
    {
      for (guint i = from; i < n; i++)
        states[i + 1] = tr_fold_stack_fold (stack, &states[i], order.folds[i]);
      order.worst_stretch = states[n].worst_stretch;
      order.longest_mm = states[n].longest_mm;
      order.breaks = states[n].breaks;
      found (&order, data);
    }
  while (permute (order.folds, n, &from));
}
