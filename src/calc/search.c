/* search.c: which folds give the wanted layers on this bench
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The sets of folds that are wished are listed first, which needs no sizes; then
 * it is decided into how many blocks to divide, and only then every order of
 * every set is rolled out.
 */

#include "search-private.h"

#include <string.h>

#include "lamination.h"
#include "measure.h"

#define REST_MINUTES 45.0        /* where no turn says it */
#define UM_PER_MM 1000.0

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

static void
keep_best (const TrFoldOrder *order,
           gpointer           data)
{
  TrFoldOrder *best = data;

  if (best->folds[0] == 0 || tr_fold_order_compare (order, best) < 0)
    *best = *order;
}

static void
keep_all (const TrFoldOrder *order,
          gpointer           data)
{
  g_array_append_vals (data, order, 1);
}

/* Rows *********************************************************************/

enum { N_KINDS = 3 };            /* half or what makes the same, letter, inverse */

typedef struct {
  guint kind, n;
  guint8 set[TR_SEARCH_MAX_TURNS];
  TrFoldOrder best;
  double fat_layers, fat_um, minutes;
  guint n_odd;
} Row;

typedef struct {
  const TrDoughFigures *figures;
  const TrSearch *search;
  double one_turn_minutes;
  double fat_um;                 /* all fat of the sheet in one layer */
  TrFoldStack stacks[N_KINDS];   /* volume 0: it cannot be */
  GArray *rows;                  /* Row */
} Job;

static TrStyle
get_style (const Job *job,
           guint      kind)
{
  const TrLockIn *lock_in = job->figures->dough->lock_in;

  if (kind > 0)
    return kind == 1 ? TR_STYLE_LETTER : TR_STYLE_INVERSE;

  return lock_in != NULL && tr_style_is_half_stack (lock_in->style) ? lock_in->style : TR_STYLE_HALF;
}

static double
count_fat_layers (TrStyle style,
                  double  product)
{
  return style == TR_STYLE_LETTER ? 2 * product : style == TR_STYLE_INVERSE ? product + 1 : product;
}

/* At the sheet's thickness; of an inverse stack an inner layer. */
static double
get_fat_um (const Job *job,
            TrStyle    style,
            double     product)
{
  return job->fat_um / (style == TR_STYLE_LETTER ? 2 * product : product);
}

static double
get_all_fat_um (const TrDoughFigures *figures)
{
  double fat_share, density;

  if (!figures->has_sheet)
    return NAN;

  tr_mix_volume (figures->dough, &figures->formula, &fat_share, &density);

  return fat_share * figures->sheet.thickness_mm * UM_PER_MM;
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
              gconstpointer b,
              gpointer      data)
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
  order = tr_search_compare_numbers (first->minutes, second->minutes);
  if (order == 0)
    order = tr_search_compare_numbers (first->best.longest_mm, second->best.longest_mm);
  if (order == 0)
    order = (int) get_style (data, first->kind) - (int) get_style (data, second->kind);

  return order != 0 ? order : memcmp (first->best.folds, second->best.folds, sizeof first->best.folds);
}

/* What is wished ************************************************************/

static gboolean
is_below (double value,
          double limit)
{
  return value < limit - TR_HAIR * fabs (limit);
}

static gboolean
is_wished (const Job *job,
           TrStyle    style,
           double     product,
           guint      n)
{
  const TrRange *wish = &job->search->wish;
  double value = job->search->by_um ? get_fat_um (job, style, product) : count_fat_layers (style, product);

  return !isnan (value) && !is_below (value, wish->min) && !is_below (wish->max, value)
         && !(n * job->one_turn_minutes > job->search->max_minutes + TR_HAIR);
}

/* Further folds only lead further away from the wish. */
static gboolean
is_past_wish (const Job *job,
              TrStyle    style,
              double     product)
{
  const TrSearch *search = job->search;

  return search->by_um ? is_below (get_fat_um (job, style, product), search->wish.min)
                       : is_below (search->wish.max, count_fat_layers (style, product));
}

/* Every set of up to so many folds, each in rising order. */
static void
list_sets (const Job    *job,
           guint         kind,
           const guint8 *set,
           guint         n,
           double        product)
{
  TrStyle style = get_style (job, kind);

  if (n > 0 && is_wished (job, style, product, n))
    {
      Row row = {
        .kind = kind,
        .n = n,
        .fat_layers = count_fat_layers (style, product),
        .fat_um = get_fat_um (job, style, product),
        .minutes = n * job->one_turn_minutes,
        .n_odd = count_odd_folds (set, n),
      };

      memcpy (row.set, set, n);
      g_array_append_val (job->rows, row);
    }
  if (n == job->search->max_turns || is_past_wish (job, style, product))
    return;

  guint8 longer[TR_SEARCH_MAX_TURNS];

  memcpy (longer, set, n);
  for (longer[n] = n > 0 ? set[n - 1] : 2; longer[n] <= job->search->max_fold; longer[n]++)
    list_sets (job, kind, longer, n + 1, product * longer[n]);
}

/* Into how many blocks *****************************************************/

static void
divide (Job *job,
        int  blocks)
{
  for (guint kind = 0; kind < N_KINDS; kind++)
    if (!tr_fold_stack_init (&job->stacks[kind], job->figures, get_style (job, kind), blocks))
      job->stacks[kind].volume_mm3 = 0;
}

static gboolean
is_possible (const Job *job,
             const Row *row)
{
  return job->stacks[row->kind].volume_mm3 > 0;
}

static gboolean
has_possible_rows (const Job *job)
{
  for (guint i = 0; i < job->rows->len; i++)
    if (is_possible (job, &g_array_index (job->rows, Row, i)))
      return TRUE;

  return FALSE;
}

/* Some order that begins so is wished and breaks nothing. What breaks something is not gone on with. */
static gboolean
has_fitting_order (const Job         *job,
                   const TrFoldStack *stack,
                   const TrFoldState *state,
                   double             product,
                   guint              n)
{
  if (n > 0 && is_wished (job, stack->style, product, n))
    return TRUE;
  if (n == job->search->max_turns || is_past_wish (job, stack->style, product))
    return FALSE;

  for (guint8 fold = 2; fold <= job->search->max_fold; fold++)
    {
      TrFoldState next = tr_fold_stack_fold (stack, state, fold);

      if (next.breaks != 0)      /* whatever the fold: it was the roll-out before it */
        return FALSE;
      if (has_fitting_order (job, stack, &next, product * fold, n + 1))
        return TRUE;
    }

  return FALSE;
}

static gboolean
something_fits (const Job *job)
{
  for (guint kind = 0; kind < N_KINDS; kind++)
    {
      const TrFoldStack *stack = &job->stacks[kind];

      if (!(stack->volume_mm3 > 0))
        continue;

      TrFoldState state = tr_fold_stack_begin (stack);

      if (has_fitting_order (job, stack, &state, 1, 0))
        return TRUE;
    }

  return FALSE;
}

/* As it is written; if so nothing fits, into the fewest with which something does. */
static void
choose_blocks (Job *job)
{
  const TrLockIn *lock_in = job->figures->dough->lock_in;
  int own = lock_in != NULL ? MAX (lock_in->blocks, 1) : 1;

  divide (job, own);
  if (!has_possible_rows (job) || something_fits (job))
    return;

  for (int blocks = 1; blocks <= TR_SEARCH_MAX_BLOCKS; blocks++)
    {
      divide (job, blocks);
      if (something_fits (job))
        return;
    }
  divide (job, own);
}

static void
find_rows (Job *job)
{
  const guint8 no_folds[TR_SEARCH_MAX_TURNS] = { 0 };
  guint n_kept = 0;

  for (guint kind = 0; kind < N_KINDS; kind++)
    list_sets (job, kind, no_folds, 0, 1);
  choose_blocks (job);
  for (guint i = 0; i < job->rows->len; i++)
    {
      Row *row = &g_array_index (job->rows, Row, i);

      if (!is_possible (job, row))
        continue;
      tr_fold_stack_each_order (&job->stacks[row->kind], row->set, row->n, keep_best, &row->best);
      g_array_index (job->rows, Row, n_kept++) = *row;
    }
  g_array_set_size (job->rows, n_kept);
  g_array_sort_with_data (job->rows, compare_rows, job);
}

/* The orders that are not the best one. */
static GArray *
list_orders (const TrFoldStack *stack,
             const Row         *row)
{
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (TrFoldOrder));
  GArray *others = g_array_new (FALSE, FALSE, TR_SEARCH_MAX_TURNS);

  tr_fold_stack_each_order (stack, row->set, row->n, keep_all, all);
  g_array_sort (all, tr_fold_order_compare);
  for (guint i = 1; i < all->len; i++)
    g_array_append_vals (others, g_array_index (all, TrFoldOrder, i).folds, 1);

  return others;
}

static TrSequence *
new_sequence (const Job *job,
              const Row *row)
{
  const TrFoldStack *stack = &job->stacks[row->kind];
  TrSequence *sequence = g_new0 (TrSequence, 1);

  *sequence = (TrSequence) {
    .style = stack->style,
    .n_folds = row->n,
    .orders = list_orders (stack, row),
    .fat_layers = row->fat_layers,
    .fat_layer_um = row->fat_um,
    .longest_mm = row->best.longest_mm,
    .worst_stretch = row->best.worst_stretch,
    .blocks = stack->blocks,
    .rests = row->n,
    .hands_minutes = row->n * job->figures->bench->turn_minutes,
    .minutes = row->minutes,
    .breaks = row->best.breaks,
    .thickness_mm = stack->thickness_mm,
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
  Job job = {
    .figures = figures,
    .search = search,
    .one_turn_minutes = figures->bench->turn_minutes + get_shortest_rest (figures->dough),
    .fat_um = get_all_fat_um (figures),
    .rows = rows,
  };

  find_rows (&job);
  for (guint i = 0; i < MIN (rows->len, TR_SEARCH_KEPT); i++)
    g_ptr_array_add (sequences, new_sequence (&job, &g_array_index (rows, Row, i)));

  return sequences;
}
