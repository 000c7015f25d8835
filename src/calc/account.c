/* account.c: what was rewritten in a dough, line by line, and what it holds
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "account.h"

#include "balance.h"
#include "formula.h"
#include "measure.h"

/* The lines that are rounded first are made up for by the later ones, but the
 * later ones bring a little of everything, too. */
#define SLACK 1.5

static void
change_free (gpointer data)
{
  TrChange *change = data;

  g_free (change->was);
  g_free (change->is);
  g_free (change->from);
  g_free (change->to);
  g_free (change);
}

double
tr_kept_of_line (const TrLineFigures *line,
                 TrKept               hold)
{
  const TrIngredient *ingredient = &line->ingredient;
  double per_100g[TR_N_PARTS];

  if (!line->known || !(line->written_grams > 0))
    return 0;

  tr_ingredient_compose (ingredient, line->line->hydration_percent, per_100g);
  switch (hold)
    {
    case TR_KEPT_FAT: return tr_part_of (line->written_grams, per_100g[TR_PART_FAT]);
    case TR_KEPT_WATER: return tr_part_of (line->written_grams, per_100g[TR_PART_WATER]);
    case TR_KEPT_SALT: return tr_part_of (line->written_grams, tr_salt_per_100g (ingredient, per_100g));
    case TR_KEPT_YEAST: return ingredient->fresh_yeast_factor > 0 ? line->written_grams * ingredient->fresh_yeast_factor : 0;
    case TR_KEPT_SUGARS: return tr_part_of (line->written_grams, per_100g[TR_PART_SUGARS]);
    case TR_KEPT_SOLIDS: return tr_part_of (line->written_grams, 100 - per_100g[TR_PART_WATER] - per_100g[TR_PART_FAT]);
    case TR_N_KEPT:
    default: g_return_val_if_reached (NAN);
    }
}

double
tr_kept_tolerance_g (const TrFormula *formula,
                     TrKept           hold)
{
  double whole = formula->written_flour_g > 0 ? formula->written_flour_g : formula->written_total_g;

  return whole / 100 * (hold == TR_KEPT_SALT || hold == TR_KEPT_YEAST ? TR_RATIO_FINE_TOLERANCE : TR_RATIO_TOLERANCE);
}

static gboolean
is_changed (const TrDough *before,
            const TrDough *after,
            guint          index)
{
  if (index >= before->lines->len)
    return TRUE;

  const TrLine *was = tr_dough_get_line (before, index), *is = tr_dough_get_line (after, index);

  return g_strcmp0 (was->ingredient, is->ingredient) != 0 || !g_str_equal (was->amount, is->amount);
}

static void
add_change (TrAccount            *account,
            const TrDoughFigures *before,
            const TrLineFigures  *after,
            guint                 index)
{
  const TrLineFigures *was = index < before->formula.lines->len ? tr_formula_get_line (&before->formula, index) : NULL;
  TrChange *change = g_new0 (TrChange, 1);

  change->index = index;
  change->was = was != NULL ? g_strdup (was->line->ingredient) : NULL;
  change->from = was != NULL ? g_strdup (was->line->amount) : NULL;
  change->from_g = was != NULL ? was->written_grams : 0;
  change->is = g_strdup (after->line->ingredient);
  change->to = g_strdup (after->line->amount);
  change->to_g = after->written_grams;
  g_ptr_array_add (account->changes, change);
}

/* What is not known of a line that stayed as it was does not change. */
static void
add_up (TrAccount           *account,
        const TrLineFigures *was,
        const TrLineFigures *is,
        gboolean             changed)
{
  for (TrKept hold = 0; hold < TR_N_KEPT; hold++)
    {
      double before_g = was != NULL && tr_line_is_in_mix (was) ? tr_kept_of_line (was, hold) : 0;
      double after_g = tr_line_is_in_mix (is) ? tr_kept_of_line (is, hold) : 0;

      if (!changed && (isnan (before_g) || isnan (after_g)))
        continue;
      account->before_g[hold] += before_g;
      account->after_g[hold] += after_g;
    }
}

static int
compare_changes (gconstpointer a,
                 gconstpointer b)
{
  const TrChange *one = *(TrChange *const *) a, *other = *(TrChange *const *) b;
  gboolean is_swap = g_strcmp0 (one->was, one->is) != 0, other_is_swap = g_strcmp0 (other->was, other->is) != 0;

  if (is_swap != other_is_swap)
    return is_swap ? -1 : 1;

  return one->index < other->index ? -1 : one->index > other->index;
}

TrAccount *
tr_account_new (const TrDoughFigures *before,
                const TrDough        *after)
{
  TrFormula formula;

  g_return_val_if_fail (before != NULL && after != NULL, NULL);
  g_return_val_if_fail (after->lines->len >= before->formula.lines->len, NULL);

  TrAccount *account = g_new0 (TrAccount, 1);

  account->changes = g_ptr_array_new_with_free_func (change_free);
  tr_formula_compute (after, before->pantry, &formula);
  for (guint i = 0; i < formula.lines->len; i++)
    {
      const TrLineFigures *is = tr_formula_get_line (&formula, i);
      gboolean changed = is_changed (before->dough, after, i);

      if (changed)
        add_change (account, before, is, i);
      add_up (account, i < before->formula.lines->len ? tr_formula_get_line (&before->formula, i) : NULL, is, changed);
    }
  tr_formula_clear (&formula);
  g_ptr_array_sort (account->changes, compare_changes);
  for (TrKept hold = 0; hold < TR_N_KEPT; hold++)
    account->tolerance_g[hold] = tr_kept_tolerance_g (&before->formula, hold);

  return account;
}

void
tr_account_free (TrAccount *account)
{
  if (account == NULL)
    return;

  g_ptr_array_unref (account->changes);
  g_free (account);
}

gboolean
tr_account_is_held (const TrAccount *account,
                    TrKept           hold)
{
  g_return_val_if_fail (account != NULL && hold < TR_N_KEPT, FALSE);

  return fabs (account->after_g[hold] - account->before_g[hold]) <= SLACK * account->tolerance_g[hold] + TR_HAIR;
}
