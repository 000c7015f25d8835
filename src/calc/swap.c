/* swap.c: one ingredient for another, with what counts held still
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * As many lines move as things are held. A small system of equations is solved
 * by Newton's rule, its slopes taken from the formula itself: masses make it
 * linear, and one step solves it; percentages of the dough or the total take a
 * few. Then the lines are rounded one after the other, and each time the rest
 * is solved again, so that it makes up for what was rounded.
 */

#include "swap-private.h"

#include "balance-private.h"
#include "linear.h"
#include "measure.h"
#include "water.h"

#define MAX_STEPS 30
#define CLOSE_ENOUGH_G 1e-6
#define RELATIVE_TOLERANCE 0.01  /* of a little milk on the brush */

/* What other lines can make up for. */
static const TrKept others[] = { TR_KEPT_FAT, TR_KEPT_WATER, TR_KEPT_SALT };

/* A line that moves, for one thing. */
typedef struct {
  TrMover mover;
  TrKept hold;
  double number;                 /* where it stands now, in the mover's unit */
} Unknown;

typedef struct {
  const TrDoughFigures *figures;
  guint index;                   /* of the line that is swapped */
  TrDough *scratch;
  Unknown unknowns[TR_N_KEPT];
  guint n;
} Swap;

/* Families */

static gboolean
is_liquid (const TrIngredient *ingredient)
{
  return ingredient->role == TR_ROLE_LIQUID || ingredient->role == TR_ROLE_DAIRY;
}

static gboolean
is_dried (const TrIngredient *ingredient)
{
  return ingredient->role == TR_ROLE_DAIRY && ingredient->per_100g[TR_PART_WATER] <= TR_HALF_WATER;
}

/* TR_N_KEPT: weight. */
static TrKept
purpose_of (const TrIngredient *from,
            const TrIngredient *to)
{
  switch (from->role)
    {
    case TR_ROLE_FAT: return TR_KEPT_FAT;
    case TR_ROLE_LEAVEN: return TR_KEPT_YEAST;
    case TR_ROLE_LIQUID: case TR_ROLE_DAIRY: return is_dried (from) || is_dried (to) ? TR_KEPT_SOLIDS : TR_KEPT_WATER;
    case TR_ROLE_SALT: return TR_KEPT_SALT;
    case TR_ROLE_SWEETENER: return TR_KEPT_SUGARS;
    case TR_ROLE_FLOUR: case TR_ROLE_EGG: case TR_ROLE_STARTER: case TR_ROLE_OTHER: case TR_N_ROLES:
    default: return TR_N_KEPT;
    }
}

/* What one gram holds, whatever the line. */
static double
share_of (const TrIngredient *ingredient,
          TrKept              hold)
{
  const TrLine line = { .hydration_percent = NAN };
  const TrLineFigures one = { .line = &line, .ingredient = *ingredient, .known = TRUE, .written_grams = 1 };

  return tr_kept_of_line (&one, hold);
}

/* Without that part of it there is no amount that holds it; what is not known
 * is told when it is asked for. */
static gboolean
can_take_place (const TrIngredient *from,
                const TrIngredient *to)
{
  TrKept purpose = purpose_of (from, to);

  if (from->role == TR_ROLE_OTHER || from->is_flour != to->is_flour || g_strcmp0 (from->id, to->id) == 0
      || (from->role != to->role && !(is_liquid (from) && is_liquid (to))))
    return FALSE;

  return purpose == TR_N_KEPT || !(share_of (from, purpose) <= 0 || share_of (to, purpose) <= 0);
}

GPtrArray *
tr_swap_list (const TrDoughFigures *figures,
              guint                 index)
{
  GPtrArray *list = g_ptr_array_new ();
  TrIngredient to;

  g_return_val_if_fail (figures != NULL && index < figures->formula.lines->len, list);

  const TrLineFigures *line = tr_look_get_line (figures, index);

  if (!line->known)
    return list;
  for (guint i = 0; i < figures->pantry->own->len; i++)
    {
      const TrOwnIngredient *own = figures->pantry->own->pdata[i];

      if (tr_ingredient_resolve (figures->pantry, own->id, &to) && can_take_place (&line->ingredient, &to))
        g_ptr_array_add (list, own->id);
    }
  for (guint i = 0; i < tr_builtin_count (); i++)
    if (tr_pantry_find (figures->pantry, tr_builtin_get (i)->id) == NULL
        && can_take_place (&line->ingredient, tr_builtin_get (i)))
      g_ptr_array_add (list, (gpointer) tr_builtin_get (i)->id);

  return list;
}

/* Nobody takes butter out of a dough because its flour is fatter. */
static gboolean
is_base (const TrIngredient *ingredient)
{
  return ingredient->is_flour || ingredient->role == TR_ROLE_STARTER;
}

/* Which line moves for what */

static gboolean
is_salt (const TrLineFigures *line)
{
  return tr_line_is_in_mix (line) && tr_line_has_role (line, TR_ROLE_SALT);
}

static gboolean
is_fat (const TrLineFigures *line)
{
  return tr_line_has_role (line, TR_ROLE_FAT) && line->ingredient.per_100g[TR_PART_FAT] > 0;
}

/* -1: there is none. */
static int
find_mover (const TrDoughFigures *figures,
            TrKept                hold,
            guint                 but)
{
  int found;

  switch (hold)
    {
    case TR_KEPT_WATER:
      found = tr_balance_find_heaviest (figures, tr_line_is_water, NULL, but);
      return found >= 0 ? found : tr_balance_find_heaviest (figures, tr_balance_is_wet, NULL, but);
    case TR_KEPT_SALT:
      found = tr_balance_find_heaviest (figures, is_salt, NULL, but);
      return found >= 0 ? found : tr_look_find_line (figures, is_salt);
    case TR_KEPT_FAT:
      return tr_balance_find_heaviest (figures, is_fat, NULL, but);
    case TR_KEPT_YEAST: case TR_KEPT_SUGARS: case TR_KEPT_SOLIDS: case TR_N_KEPT:
    default:
      return -1;
    }
}

static gboolean
is_finish (const TrLineFigures *line)
{
  return !tr_line_is_in_mix (line);
}

/* Grams that hold as much as the line did; its weight where that is not asked. */
static double
grams_for (const TrLineFigures *line,
           const TrIngredient  *to,
           TrKept               hold)
{
  if (hold == TR_N_KEPT)
    return line->written_grams;

  return line->written_grams * share_of (&line->ingredient, hold) / share_of (to, hold);
}

TrKeptSet
tr_swap_get_choices (const TrDoughFigures *figures,
                     guint                 index,
                     const char           *ingredient,
                     TrKeptSet            *usual,
                     TrKept               *first)
{
  TrIngredient to;

  *usual = 0;
  *first = TR_N_KEPT;
  g_return_val_if_fail (figures != NULL && index < figures->formula.lines->len, 0);

  const TrLineFigures *line = tr_look_get_line (figures, index);

  if (!line->known || !tr_ingredient_resolve (figures->pantry, ingredient, &to) || !can_take_place (&line->ingredient, &to))
    return 0;

  *first = purpose_of (&line->ingredient, &to);
  double grams = grams_for (line, &to, *first);
  TrKeptSet choices = *first < TR_N_KEPT ? TR_KEPT_BIT (*first) : 0;

  *usual = choices;
  for (guint i = 0; i < G_N_ELEMENTS (others) && !is_finish (line); i++)
    {
      double change = grams * share_of (&to, others[i]) - tr_kept_of_line (line, others[i]);

      if (fabs (change) <= tr_kept_tolerance_g (&figures->formula, others[i]) || others[i] == *first)
        continue;
      choices |= TR_KEPT_BIT (others[i]);
      if (!isnan (change) && !is_base (&to) && find_mover (figures, others[i], index) >= 0)
        *usual |= TR_KEPT_BIT (others[i]);
    }

  return choices;
}

/* Asking the formula */

static double
sum_of (const Swap      *swap,
        const TrFormula *formula,
        TrKept           hold)
{
  const TrLineFigures *own = tr_formula_get_line (formula, swap->index);
  double sum = 0;

  if (hold == TR_KEPT_SOLIDS || is_finish (own))
    return tr_kept_of_line (own, hold);

  for (guint i = 0; i < formula->lines->len; i++)
    {
      const TrLineFigures *line = tr_formula_get_line (formula, i);
      double grams = is_finish (line) ? 0 : tr_kept_of_line (line, hold);

      if (!isnan (grams))
        sum += grams;
    }

  return sum;
}

/* What is held from `first` on when the lines stand where they do. */
static void
measure (const Swap *swap,
         guint       first,
         double      sums[TR_N_KEPT])
{
  TrFormula formula;

  for (guint k = first; k < swap->n; k++)
    tr_balance_write_exactly (swap->scratch, &swap->unknowns[k].mover, swap->unknowns[k].number);
  tr_formula_compute (swap->scratch, swap->figures->pantry, &formula);
  for (guint k = first; k < swap->n; k++)
    sums[k] = sum_of (swap, &formula, swap->unknowns[k].hold);
  tr_formula_clear (&formula);
}

/* slopes[row][column]: what one more of the unit of line `column` adds to what
 * line `row` holds. */
static void
find_slopes (Swap         *swap,
             guint         first,
             const double  sums[TR_N_KEPT],
             double        slopes[TR_LINEAR_MAX][TR_LINEAR_MAX])
{
  for (guint column = first; column < swap->n; column++)
    {
      Unknown *unknown = &swap->unknowns[column];
      double number = unknown->number, step = 0.01 * MAX (number, 1), moved[TR_N_KEPT];

      unknown->number += step;
      measure (swap, first, moved);
      unknown->number = number;
      for (guint row = first; row < swap->n; row++)
        slopes[row - first][column - first] = (moved[row] - sums[row]) / step;
    }
}

static const TrIngredient *
ingredient_of (const Swap *swap,
               guint       k)
{
  return &tr_look_get_line (swap->figures, swap->unknowns[k].mover.index)->ingredient;
}

static gboolean
refuse_below_nothing (const Swap  *swap,
                      guint        k,
                      double       number,
                      GError     **error)
{
  const Unknown *unknown = &swap->unknowns[k];
  double unit_g = tr_balance_grams_of_unit (unknown->mover.unit, &swap->figures->formula);

  return tr_swap_refuse (error, TR_SWAP_ERROR_TOO_LITTLE, (TrSwapRefusal) {
                           .kept = unknown->hold, .line = (int) unknown->mover.index,
                           .wanted_g = unknown->mover.grams - number * unit_g, .there_g = unknown->mover.grams });
}

/* One step of Newton's rule: where the lines should stand. */
static gboolean
step_once (Swap          *swap,
           guint          first,
           const double   targets[TR_N_KEPT],
           gboolean      *is_there,
           double         slopes[TR_LINEAR_MAX][TR_LINEAR_MAX],
           GError       **error)
{
  double sums[TR_N_KEPT], missing[TR_LINEAR_MAX], solved[TR_LINEAR_MAX][TR_LINEAR_MAX];
  guint n = swap->n - first;

  measure (swap, first, sums);
  *is_there = TRUE;
  for (guint k = 0; k < n; k++)
    {
      missing[k] = targets[first + k] - sums[first + k];
      *is_there = *is_there && fabs (missing[k]) < CLOSE_ENOUGH_G;
    }
  find_slopes (swap, first, sums, slopes);
  if (*is_there)
    return TRUE;
  memcpy (solved, slopes, sizeof solved);
  if (!tr_linear_solve (solved, missing, n))
    return tr_swap_refuse (error, TR_SWAP_ERROR_AT_ONCE, (TrSwapRefusal) { .kept = TR_N_KEPT, .line = -1 });

  for (guint k = 0; k < n; k++)
    {
      double number = swap->unknowns[first + k].number + missing[k];

      if (number < -TR_HAIR)
        return refuse_below_nothing (swap, first + k, number, error);
      swap->unknowns[first + k].number = MAX (number, 0);
    }

  return TRUE;
}

/* `gain`: what one more of its unit adds to what the first line holds. */
static gboolean
solve (Swap          *swap,
       guint          first,
       const double   targets[TR_N_KEPT],
       double        *gain,
       GError       **error)
{
  double slopes[TR_LINEAR_MAX][TR_LINEAR_MAX];
  gboolean is_there = FALSE;

  for (guint i = 0; i < MAX_STEPS && !is_there; i++)
    if (!step_once (swap, first, targets, &is_there, slopes, error))
      return FALSE;
  *gain = fabs (slopes[0][0]);

  return is_there || tr_swap_refuse (error, TR_SWAP_ERROR_AT_ONCE, (TrSwapRefusal) { .kept = TR_N_KEPT, .line = -1 });
}

/* Writing */

/* A mass or a percentage, which mean the same of another ingredient. */
static gboolean
is_own_unit (const TrMover *mover,
             const char    *amount)
{
  g_autofree char *rewritten = tr_balance_dup_amount (mover, mover->number);
  TrAmount written, again;

  if (!tr_amount_parse (amount, &written, NULL) || !tr_amount_parse (rewritten, &again, NULL))
    return FALSE;

  return written.parts[0].unit == mover->unit && again.parts[0].unit == mover->unit;
}

/* What stood there stays where it is right already. */
static void
write_rounded (Swap    *swap,
               Unknown *unknown,
               double   allowed)
{
  const char *amount = tr_dough_get_line (swap->figures->dough, unknown->mover.index)->amount;

  if (fabs (unknown->number - unknown->mover.number) <= allowed && is_own_unit (&unknown->mover, amount))
    {
      unknown->number = unknown->mover.number;
      tr_set_text (&tr_dough_get_line (swap->scratch, unknown->mover.index)->amount, amount);
      return;
    }
  unknown->number = tr_balance_round_nice (unknown->number, allowed);
  tr_balance_write_mover (swap->scratch, &unknown->mover, unknown->number);
}

static gboolean
solve_and_round (Swap    *swap,
                 GError **error)
{
  double targets[TR_N_KEPT], gain, allowed;

  for (guint k = 0; k < swap->n; k++)
    targets[k] = sum_of (swap, &swap->figures->formula, swap->unknowns[k].hold);

  for (guint k = 0; k < swap->n; k++)
    {
      Unknown *unknown = &swap->unknowns[k];

      if (!solve (swap, k, targets, &gain, error))
        return FALSE;
      allowed = tr_kept_tolerance_g (&swap->figures->formula, unknown->hold) / gain;
      write_rounded (swap, unknown, unknown->mover.index == swap->index ? MIN (allowed, RELATIVE_TOLERANCE * unknown->number) : allowed);
    }

  return TRUE;
}

static void
add_unknown (Swap   *swap,
             guint   index,
             TrKept  hold,
             double  grams)
{
  Unknown *unknown = &swap->unknowns[swap->n++];

  unknown->hold = hold;
  tr_balance_init_mover (&unknown->mover, swap->figures, index, 1);
  unknown->number = grams / tr_balance_grams_of_unit (unknown->mover.unit, &swap->figures->formula);
}

/* Another ingredient of the same weight; "2 sticks" may weigh something else now. */
static void
keep_weight (Swap                *swap,
             const TrLineFigures *line)
{
  TrMover mover;
  TrFormula formula;

  tr_formula_compute (swap->scratch, swap->figures->pantry, &formula);
  gboolean is_same = fabs (tr_formula_get_line (&formula, swap->index)->written_grams - line->written_grams) < CLOSE_ENOUGH_G;
  tr_formula_clear (&formula);
  if (is_same)
    return;

  tr_balance_init_mover (&mover, swap->figures, swap->index, 1);
  tr_balance_write_mover (swap->scratch, &mover,
                          tr_balance_round_nice (mover.number, tr_kept_tolerance_g (&swap->figures->formula, TR_KEPT_SALT)));
}

/* `line`: whose ingredient it is; -1: that which would come. */
static gboolean
is_known (const TrIngredient  *ingredient,
          TrKept               hold,
          int                  line,
          GError             **error)
{
  return isfinite (share_of (ingredient, hold))
         || tr_swap_refuse (error, TR_SWAP_ERROR_NOT_KNOWN, (TrSwapRefusal) { .kept = hold, .line = line });
}

/* The lines that make up for the rest. */
static gboolean
add_others (Swap                *swap,
            const TrIngredient  *to,
            TrKeptSet            holds,
            GError             **error)
{
  const TrLineFigures *line = tr_look_get_line (swap->figures, swap->index);

  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    {
      if ((holds & TR_KEPT_BIT (others[i])) == 0)
        continue;
      int mover = find_mover (swap->figures, others[i], swap->index);

      if (!is_known (&line->ingredient, others[i], (int) swap->index, error) || !is_known (to, others[i], -1, error))
        return FALSE;
      if (mover < 0 || (guint) mover == swap->index || isnan (tr_look_get_line (swap->figures, (guint) mover)->written_grams))
        return tr_swap_refuse (error, TR_SWAP_ERROR_NO_LINE, (TrSwapRefusal) { .kept = others[i], .line = -1 });
      add_unknown (swap, (guint) mover, others[i], tr_look_get_line (swap->figures, (guint) mover)->written_grams);
    }
  for (guint k = 0; k < swap->n; k++)
    for (guint other = 0; other < swap->n; other++)
      if (swap->unknowns[k].mover.index != swap->index
          && !is_known (ingredient_of (swap, k), swap->unknowns[other].hold, (int) swap->unknowns[k].mover.index, error))
        return FALSE;

  return TRUE;
}

static gboolean
plan (Swap                *swap,
      const TrIngredient  *to,
      TrKeptSet            holds,
      GError             **error)
{
  const TrLineFigures *line = tr_look_get_line (swap->figures, swap->index);
  TrKept purpose = purpose_of (&line->ingredient, to);
  gboolean is_held = purpose < TR_N_KEPT && (holds & TR_KEPT_BIT (purpose)) != 0;

  if (is_held)
    {
      if (!is_known (&line->ingredient, purpose, (int) swap->index, error) || !is_known (to, purpose, -1, error))
        return FALSE;
      add_unknown (swap, swap->index, purpose, grams_for (line, to, purpose));
      holds &= ~TR_KEPT_BIT (purpose);
    }
  else
    {
      keep_weight (swap, line);
    }
  if (!is_finish (line) && !add_others (swap, to, holds, error))
    return FALSE;

  return solve_and_round (swap, error);
}

gboolean
tr_swap_apply (TrDough               *dough,
               const TrDoughFigures  *figures,
               guint                  index,
               const char            *ingredient,
               TrKeptSet              holds,
               GError               **error)
{
  TrIngredient to;

  g_return_val_if_fail (dough != NULL && figures != NULL && ingredient != NULL, FALSE);
  g_return_val_if_fail (dough->lines->len == figures->formula.lines->len && index < dough->lines->len, FALSE);

  const TrLineFigures *line = tr_look_get_line (figures, index);

  if (!line->known || isnan (line->written_grams))
    return tr_swap_refuse (error, TR_SWAP_ERROR_NOT_WEIGHED, (TrSwapRefusal) { .kept = TR_N_KEPT, .line = (int) index });
  if (!tr_ingredient_resolve (figures->pantry, ingredient, &to) || !can_take_place (&line->ingredient, &to))
    return tr_swap_refuse (error, TR_SWAP_ERROR_OTHER_KIND, (TrSwapRefusal) { .kept = TR_N_KEPT, .line = (int) index });

  g_autoptr (TrDough) scratch = tr_dough_copy (figures->dough);
  Swap swap = { .figures = figures, .index = index, .scratch = scratch };

  tr_set_text (&tr_dough_get_line (scratch, index)->ingredient, ingredient);
  if (!plan (&swap, &to, holds, error))
    return FALSE;

  for (guint i = 0; i < dough->lines->len; i++)
    tr_set_text (&tr_dough_get_line (dough, i)->amount, tr_dough_get_line (scratch, i)->amount);
  tr_set_text (&tr_dough_get_line (dough, index)->ingredient, ingredient);

  return TRUE;
}
