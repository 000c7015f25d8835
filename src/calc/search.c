/* search.c: which folds give the wanted layers on this bench
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A set of folds is written in rising order, and its orders are its
 * permutations, each begun where it differs from the one before.
 */

#include "search.h"

#include <string.h>

#include "lamination.h"
#include "lock-in.h"
#include "measure.h"

#define ROLL_OUT_MM 8.0          /* where no turn says it */
#define REST_MINUTES 45.0
#define UM_PER_MM 1000.0

/* One kind of stack, locked in with so many blocks. */
typedef struct {
  const TrDoughFigures *figures;
  TrStyle style;
  int blocks;
  TrSize block_mm;
  double volume_mm3, thickness_mm;
} Stack;

/* After some folds. */
typedef struct {
  double length_mm, width_mm;    /* where the next roll-out starts */
  double worst_stretch, longest_mm;
  TrBreaks breaks;
} State;

typedef struct {
  guint8 folds[TR_SEARCH_MAX_TURNS];
  double worst_stretch, longest_mm;
  TrBreaks breaks;
} Order;

void
tr_search_init (TrSearch *search)
{
  *search = (TrSearch) { FALSE, { 1, TR_EXACT_MAX }, 4, 4, NAN };
}

void
tr_sequence_free (TrSequence *sequence)
{
  if (sequence == NULL)
    return;

  g_array_unref (sequence->orders);
  g_free (sequence);
}

/* Stacks *******************************************************************/

static double
get_thickness_mm (const TrDoughFigures *figures)
{
  const GArray *steps = figures->has_lamination ? figures->lamination.steps : NULL;
  double thickness = steps != NULL && steps->len > 0
                     ? g_array_index (steps, TrTurnFigures, steps->len - 1).rolled_mm.mm[2] : NAN;

  return tr_is_positive (thickness) ? thickness : ROLL_OUT_MM;
}

static gboolean
is_half_stack (TrStyle style)
{
  return style == TR_STYLE_HALF || style == TR_STYLE_GATE || style == TR_STYLE_ENVELOPE;
}

/* Locked in that way: the dough's own sizes where it is its own way, else only rim and density. */
static TrLockIn *
new_lock_in (const TrDough *dough,
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

static gboolean
init_stack (Stack                *stack,
            const TrDoughFigures *figures,
            TrStyle               style,
            int                   blocks)
{
  TrDough *dough = tr_dough_copy (figures->dough);
  TrLockInFigures lock_in;

  tr_lock_in_free (dough->lock_in);
  dough->lock_in = new_lock_in (figures->dough, style, blocks);
  tr_lock_in_compute (dough, &figures->formula, &lock_in);
  tr_dough_unref (dough);

  *stack = (Stack) {
    .figures = figures,
    .style = style,
    .blocks = blocks,
    .block_mm = lock_in.block_mm,
    .volume_mm3 = lock_in.block_mm.mm[0] * lock_in.block_mm.mm[1] * lock_in.block_mm.mm[2],
    .thickness_mm = get_thickness_mm (figures),
  };

  return tr_is_positive (stack->volume_mm3);
}

static State
begin (const Stack *stack)
{
  return (State) { stack->block_mm.mm[0], stack->block_mm.mm[1], 0, 0, 0 };
}

static State
fold_once (const Stack *stack,
           const State *from,
           guint8       fold)
{
  TrSize rolled = { { stack->volume_mm3 / (from->width_mm * stack->thickness_mm), from->width_mm, stack->thickness_mm } };

  return (State) {
    .length_mm = rolled.mm[1],                /* the quarter turn */
    .width_mm = rolled.mm[0] / fold,
    .worst_stretch = fmax (from->worst_stretch, fmax (1, rolled.mm[0] / from->length_mm)),
    .longest_mm = fmax (from->longest_mm, rolled.mm[0]),
    .breaks = from->breaks | tr_bench_check_turn (stack->figures->bench, &rolled),
  };
}

/* Orders of one set ********************************************************/

static int
compare_numbers (double a,
                 double b)
{
  if (fabs (a - b) <= TR_HAIR * fmax (fabs (a), fabs (b)))
    return 0;

  return a < b ? -1 : 1;
}

static int
compare_orders (gconstpointer a,
                gconstpointer b)
{
  const Order *first = a, *second = b;
  int order;

  if ((first->breaks == 0) != (second->breaks == 0))
    return first->breaks == 0 ? -1 : 1;
  order = compare_numbers (first->worst_stretch, second->worst_stretch);
  if (order == 0)
    order = compare_numbers (first->longest_mm, second->longest_mm);

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

/* Each order of a set that stands in rising order. */
typedef void (*OrderFound) (const Order *order, gpointer data);

static void
for_each_order (const Stack  *stack,
                const guint8 *set,
                guint         n,
                OrderFound    found,
                gpointer      data)
{
  State states[TR_SEARCH_MAX_TURNS + 1] = { begin (stack) };
  Order order = { { 0 } };
  guint from = 0;

  memcpy (order.folds, set, n);
  do
    {
      for (guint i = from; i < n; i++)
        states[i + 1] = fold_once (stack, &states[i], order.folds[i]);
      order.worst_stretch = states[n].worst_stretch;
      order.longest_mm = states[n].longest_mm;
      order.breaks = states[n].breaks;
      found (&order, data);
    }
  while (permute (order.folds, n, &from));
}

static void
keep_best (const Order *order,
           gpointer     data)
{
  Order *best = data;

  if (best->folds[0] == 0 || compare_orders (order, best) < 0)
    *best = *order;
}

static void
keep_all (const Order *order,
          gpointer     data)
{
  g_array_append_vals (data, order, 1);
}

/* Rows *********************************************************************/

typedef struct { Stack stack; guint n; Order best; double fat_layers, fat_um, minutes; guint n_odd; } Row;

static double
count_fat_layers (TrStyle style,
                  double  product)
{
  return style == TR_STYLE_LETTER ? 2 * product : style == TR_STYLE_INVERSE ? product + 1 : product;
}

/* At the sheet's thickness; of an inverse stack an inner layer. */
static double
get_fat_um (const Stack *stack,
            double       product)
{
  const TrDoughFigures *figures = stack->figures;
  double fat_share, density;

  if (!figures->has_sheet)
    return NAN;

  tr_mix_volume (figures->dough, &figures->formula, &fat_share, &density);

  return fat_share * figures->sheet.thickness_mm * UM_PER_MM / (stack->style == TR_STYLE_LETTER ? 2 * product : product);
}

static double
get_shortest_rest (const TrDough *dough)
{
  double shortest = INFINITY;

  for (guint i = 0; i < dough->turns->len; i++)
    {
      const TrRest *rest = tr_dough_get_turn (dough, i)->rest;

      if (rest != NULL)
        shortest = fmin (shortest, rest->min_minutes);
    }

  return isfinite (shortest) ? shortest : REST_MINUTES;
}

static guint
count_odd_folds (const guint8 *folds,
                 guint         n)
{
  guint count = 0;

  for (guint i = 0; i < n; i++)
    count += folds[i] == 2 || folds[i] > 4;

  return count;
}

static int
compare_rows (gconstpointer a,
              gconstpointer b)
{
  const Row *first = a, *second = b;
  gboolean fits = first->best.breaks == 0, other_fits = second->best.breaks == 0;
  gboolean is_easy = first->best.worst_stretch <= TR_GREATEST_STRETCH + TR_HAIR;
  gboolean other_is_easy = second->best.worst_stretch <= TR_GREATEST_STRETCH + TR_HAIR;
  int order;

  if (fits != other_fits)
    return fits ? -1 : 1;
  if (is_easy != other_is_easy)
    return is_easy ? -1 : 1;
  if (first->n != second->n)
    return first->n < second->n ? -1 : 1;
  if (first->n_odd != second->n_odd)
    return first->n_odd < second->n_odd ? -1 : 1;
  order = compare_numbers (first->minutes, second->minutes);
  if (order == 0)
    order = compare_numbers (first->best.longest_mm, second->best.longest_mm);
  if (order == 0)
    order = (int) first->stack.style - (int) second->stack.style;

  return order != 0 ? order : memcmp (first->best.folds, second->best.folds, sizeof first->best.folds);
}

static gboolean
is_in (const TrRange *wish,
       double         value)
{
  return value >= wish->min - TR_HAIR * fabs (wish->min) && value <= wish->max + TR_HAIR * fabs (wish->max);
}

typedef struct {
  const TrDoughFigures *figures;
  const TrSearch *search;
  double one_turn_minutes;
  GArray *rows;                  /* Row */
} Job;

static void
look_at_set (const Job    *job,
             const Stack  *stack,
             const guint8 *set,
             guint         n)
{
  Row row = { .stack = *stack, .n = n };
  double product = 1;

  for (guint i = 0; i < n; i++)
    product *= set[i];
  row.fat_layers = count_fat_layers (stack->style, product);
  row.fat_um = get_fat_um (stack, product);
  row.minutes = n * job->one_turn_minutes;
  row.n_odd = count_odd_folds (set, n);
  if (!is_in (&job->search->wish, job->search->by_um ? row.fat_um : row.fat_layers) || row.minutes > job->search->max_minutes + TR_HAIR)
    return;

  for_each_order (stack, set, n, keep_best, &row.best);
  g_array_append_val (job->rows, row);
}

/* Every set of that many folds, each in rising order. */
static void
look_at_sets (const Job   *job,
              const Stack *stack,
              guint8      *set,
              guint        n,
              guint        at)
{
  for (guint8 fold = at > 0 ? set[at - 1] : 2; fold <= job->search->max_fold; fold++)
    {
      set[at] = fold;
      if (at + 1 == n)
        look_at_set (job, stack, set, n);
      else
        look_at_sets (job, stack, set, n, at + 1);
    }
}

static void
look_at_stacks (const Job *job,
                int        blocks)
{
  const TrDough *dough = job->figures->dough;
  TrStyle half = dough->lock_in != NULL && is_half_stack (dough->lock_in->style) ? dough->lock_in->style : TR_STYLE_HALF;
  const TrStyle styles[] = { half, TR_STYLE_LETTER, TR_STYLE_INVERSE };

  g_array_set_size (job->rows, 0);
  for (guint i = 0; i < G_N_ELEMENTS (styles); i++)
    {
      guint8 set[TR_SEARCH_MAX_TURNS];
      Stack stack;

      if (!init_stack (&stack, job->figures, styles[i], blocks))
        continue;
      for (guint n = 1; n <= job->search->max_turns; n++)
        look_at_sets (job, &stack, set, n, 0);
    }
}

static gboolean
something_fits (const GArray *rows)
{
  for (guint i = 0; i < rows->len; i++)
    if (g_array_index (rows, Row, i).best.breaks == 0)
      return TRUE;

  return FALSE;
}

static void
find_rows (const Job *job)
{
  const TrLockIn *lock_in = job->figures->dough->lock_in;
  int own = lock_in != NULL ? MAX (lock_in->blocks, 1) : 1;

  look_at_stacks (job, own);
  if (job->rows->len == 0 || something_fits (job->rows))
    return;

  for (int blocks = 1; blocks <= TR_SEARCH_MAX_BLOCKS; blocks++)
    {
      if (blocks == own)
        continue;
      look_at_stacks (job, blocks);
      if (something_fits (job->rows))
        return;
    }
  look_at_stacks (job, own);
}

/* The orders that are not the best one. */
static GArray *
list_orders (const Row *row)
{
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (Order));
  GArray *others = g_array_new (FALSE, FALSE, TR_SEARCH_MAX_TURNS);
  guint8 set[TR_SEARCH_MAX_TURNS];

  memcpy (set, row->best.folds, sizeof set);
  for (guint i = 1; i < row->n; i++)
    for (guint j = i; j > 0 && set[j - 1] > set[j]; j--)
      {
        guint8 swapped = set[j];

        set[j] = set[j - 1];
        set[j - 1] = swapped;
      }
  for_each_order (&row->stack, set, row->n, keep_all, all);
  g_array_sort (all, compare_orders);
  for (guint i = 1; i < all->len; i++)
    g_array_append_vals (others, g_array_index (all, Order, i).folds, 1);

  return others;
}

static TrSequence *
new_sequence (const Job *job,
              const Row *row)
{
  TrSequence *sequence = g_new0 (TrSequence, 1);

  *sequence = (TrSequence) {
    .style = row->stack.style,
    .n_folds = row->n,
    .orders = list_orders (row),
    .fat_layers = row->fat_layers,
    .fat_layer_um = row->fat_um,
    .longest_mm = row->best.longest_mm,
    .worst_stretch = row->best.worst_stretch,
    .blocks = row->stack.blocks,
    .rests = row->n,
    .hands_minutes = row->n * job->figures->bench->turn_minutes,
    .minutes = row->minutes,
    .breaks = row->best.breaks,
    .thickness_mm = row->stack.thickness_mm,
  };
  memcpy (sequence->folds, row->best.folds, sizeof sequence->folds);

  return sequence;
}

GPtrArray *
tr_search_sequences (const TrDoughFigures *figures,
                     const TrSearch       *search)
{
  g_return_val_if_fail (search->max_turns >= 1 && search->max_turns <= TR_SEARCH_MAX_TURNS, NULL);
  g_return_val_if_fail (search->max_fold >= 2 && search->max_fold <= TR_SEARCH_MAX_FOLD, NULL);

  GPtrArray *sequences = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_sequence_free);
  g_autoptr (GArray) rows = g_array_new (FALSE, FALSE, sizeof (Row));
  const Job job = { figures, search, figures->bench->turn_minutes + get_shortest_rest (figures->dough), rows };

  find_rows (&job);
  g_array_sort (rows, compare_rows);
  for (guint i = 0; i < MIN (rows->len, TR_SEARCH_KEPT); i++)
    g_ptr_array_add (sequences, new_sequence (&job, &g_array_index (rows, Row, i)));

  return sequences;
}

/* Using one ****************************************************************/

/* The turn that stands there, else one like the last. */
static TrTurn *
new_turn (const TrSequence *sequence,
          const TrDough    *dough,
          guint             index)
{
  TrTurn *turn = dough->turns->len > 0 ? tr_turn_copy (tr_dough_get_turn (dough, MIN (index, dough->turns->len - 1)))
                                       : tr_turn_new (sequence->folds[index], sequence->thickness_mm);

  turn->fold = sequence->folds[index];
  turn->thickness_mm = sequence->thickness_mm;
  turn->length_mm = turn->width_mm = NAN;
  turn->trim_mm = 0;

  return turn;
}

void
tr_sequence_apply (const TrSequence *sequence,
                   TrDough          *dough)
{
  GPtrArray *turns = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_turn_free);
  TrLockIn *lock_in = new_lock_in (dough, sequence->style, sequence->blocks);

  tr_lock_in_free (dough->lock_in);
  dough->lock_in = lock_in;
  for (guint i = 0; i < sequence->n_folds; i++)
    g_ptr_array_add (turns, new_turn (sequence, dough, i));
  g_ptr_array_unref (dough->turns);
  dough->turns = turns;
}

gboolean
tr_sequence_is_of (const TrSequence *sequence,
                   const TrDough    *dough)
{
  if (dough->lock_in == NULL || dough->lock_in->style != sequence->style || MAX (dough->lock_in->blocks, 1) != sequence->blocks
      || dough->turns->len != sequence->n_folds)
    return FALSE;

  for (guint i = 0; i < sequence->n_folds; i++)
    if (tr_dough_get_turn (dough, i)->fold != sequence->folds[i])
      return FALSE;

  return TRUE;
}
