/* balance-lines.c: which lines a ratio moves
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "balance-private.h"

#include "look.h"
#include "measure.h"
#include "water.h"

/* Which lines move */

gboolean
tr_balance_is_wet (const TrLineFigures *line)
{
  return line->known && (line->ingredient.role == TR_ROLE_LIQUID || line->ingredient.role == TR_ROLE_DAIRY)
         && line->ingredient.per_100g[TR_PART_WATER] > TR_HALF_WATER;
}

gboolean
tr_balance_is_flour (const TrLineFigures *line)
{
  return line->known && line->ingredient.is_flour && tr_line_is_in_mix (line);
}

static gboolean
is_prefermented (const TrLineFigures *line,
                 gboolean             starters)
{
  return starters ? tr_line_is_starter (line) : line->line->stage == TR_STAGE_PREFERMENT && tr_balance_is_flour (line);
}

gboolean
tr_balance_is_of_ratio (const TrLineFigures *line,
                        TrRatio              ratio)
{
  if (!line->known)
    return FALSE;

  switch (ratio)
    {
    case TR_RATIO_DOUGH_FAT: return tr_line_is_in_dough (line) && line->ingredient.role == TR_ROLE_FAT;
    case TR_RATIO_ROLL_IN_OF_DOUGH: return line->line->stage == TR_STAGE_ROLL_IN && !line->ingredient.is_flour;
    case TR_RATIO_SALT: return tr_line_is_in_mix (line) && line->ingredient.role == TR_ROLE_SALT;
    case TR_RATIO_SUGAR: return tr_line_is_in_dough (line) && line->ingredient.role == TR_ROLE_SWEETENER
                                && line->ingredient.per_100g[TR_PART_SUGARS] > 0;
    case TR_RATIO_YEAST_FRESH: return tr_line_is_in_mix (line) && line->ingredient.fresh_yeast_factor > 0;
    case TR_RATIO_ALL_WATER: return tr_line_is_in_dough (line) && tr_balance_is_wet (line);
    case TR_RATIO_PREFERMENTED: return is_prefermented (line, FALSE) || is_prefermented (line, TRUE);
    case TR_N_RATIOS:
    default: return FALSE;
    }
}

double
tr_balance_share_of_line (const TrLineFigures *line,
                          TrRatio              ratio)
{
  switch (ratio)
    {
    case TR_RATIO_ALL_WATER: return line->ingredient.per_100g[TR_PART_WATER] / 100;
    case TR_RATIO_SUGAR: return line->ingredient.per_100g[TR_PART_SUGARS] / 100;
    case TR_RATIO_YEAST_FRESH: return line->ingredient.fresh_yeast_factor;
    case TR_RATIO_PREFERMENTED:
      return tr_ingredient_flour_share (&line->ingredient, line->line->hydration_percent);
    case TR_RATIO_DOUGH_FAT: case TR_RATIO_ROLL_IN_OF_DOUGH: case TR_RATIO_SALT: case TR_N_RATIOS:
    default: return 1;
    }
}

/* The unit an amount goes back in. A percentage keeps its base. */
static void
read_unit (const char *text,
           TrMover    *mover)
{
  TrAmount amount;

  mover->unit = TR_UNIT_G;
  mover->rest_unit = TR_N_UNITS;
  if (!tr_amount_parse (text, &amount, NULL))
    return;
  for (guint i = 0; i < amount.n_parts; i++)
    if (!tr_unit_is_percent (amount.parts[i].unit) && isnan (tr_unit_grams (amount.parts[i].unit)))
      return;

  mover->unit = amount.parts[0].unit;
  if (amount.n_parts == 2 && tr_unit_grams (amount.parts[1].unit) < tr_unit_grams (mover->unit))
    mover->rest_unit = amount.parts[1].unit;
}

/* NaN or 0: there is no such base yet. */
double
tr_balance_grams_of_unit (TrUnit           unit,
                          const TrFormula *formula)
{
  if (unit == TR_UNIT_PERCENT)
    return formula->written_flour_g / 100;
  if (unit == TR_UNIT_PERCENT_OF_DOUGH)
    return formula->written_dough_g / 100;
  if (unit == TR_UNIT_PERCENT_OF_TOTAL)
    return formula->written_total_g / 100;

  return tr_unit_grams (unit);
}

/* What one more of the unit adds in the end: more of the total makes the total
 * more. */
double
tr_balance_gain_of_unit (TrUnit           unit,
                         const TrFormula *formula)
{
  double grams = tr_balance_grams_of_unit (unit, formula);

  return unit == TR_UNIT_PERCENT_OF_TOTAL ? grams * formula->written_total_g / formula->written_dough_g : grams;
}

void
tr_balance_init_mover (TrMover              *mover,
                       const TrDoughFigures *figures,
                       guint                 index,
                       double                share)
{
  const TrLineFigures *line = tr_look_get_line (figures, index);

  mover->index = index;
  mover->share = share;
  read_unit (line->line->amount, mover);
  mover->grams = isnan (line->written_grams) ? 0 : line->written_grams;
  if (!tr_is_positive (tr_balance_grams_of_unit (mover->unit, &figures->formula)))
    mover->unit = TR_UNIT_G;
  mover->number = mover->grams / tr_balance_grams_of_unit (mover->unit, &figures->formula);
}

void
tr_balance_add_mover (TrMovers             *movers,
                      const TrDoughFigures *figures,
                      guint                 index,
                      double                share)
{
  if (movers->n < TR_MAX_LINES && share > 0)
    tr_balance_init_mover (&movers->movers[movers->n++], figures, index, share);
}

void
tr_balance_find_wet_lines (const TrDoughFigures *figures,
                           TrStage               stage,
                           gboolean              only_water,
                           TrMovers             *movers)
{
  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = tr_look_get_line (figures, i);

      if (line->line->stage == stage && !isnan (line->written_grams) && (only_water ? tr_line_is_water (line) : tr_balance_is_wet (line)))
        tr_balance_add_mover (movers, figures, i, tr_balance_share_of_line (line, TR_RATIO_ALL_WATER));
    }
}

static void
find_water (const TrDoughFigures *figures,
            TrMovers             *movers)
{
  static const struct { TrStage stage; gboolean only_water; } tries[] = {
    { TR_STAGE_DOUGH, TRUE }, { TR_STAGE_DOUGH, FALSE }, { TR_STAGE_PREFERMENT, TRUE }, { TR_STAGE_PREFERMENT, FALSE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (tries) && movers->n == 0; i++)
    tr_balance_find_wet_lines (figures, tries[i].stage, tries[i].only_water, movers);
}

static void
find_prefermented (const TrDoughFigures *figures,
                   TrMovers             *movers)
{
  for (int starters = 0; starters <= 1 && movers->n == 0; starters++)
    for (guint i = 0; i < figures->formula.lines->len; i++)
      if (is_prefermented (tr_look_get_line (figures, i), starters != 0) && !isnan (tr_look_get_line (figures, i)->written_grams))
        tr_balance_add_mover (movers, figures, i, tr_balance_share_of_line (tr_look_get_line (figures, i), TR_RATIO_PREFERMENTED));
}

void
tr_balance_find_movers (const TrDoughFigures *figures,
                        TrRatio               ratio,
                        TrMovers             *movers)
{
  movers->n = 0;
  if (ratio == TR_RATIO_ALL_WATER)
    {
      find_water (figures, movers);
      return;
    }
  if (ratio == TR_RATIO_PREFERMENTED)
    {
      find_prefermented (figures, movers);
      return;
    }

  for (guint i = 0; i < figures->formula.lines->len; i++)
    if (tr_balance_is_of_ratio (tr_look_get_line (figures, i), ratio) && !isnan (tr_look_get_line (figures, i)->written_grams))
      tr_balance_add_mover (movers, figures, i, tr_balance_share_of_line (tr_look_get_line (figures, i), ratio));
}

double
tr_balance_sum_of_movers (const TrMovers *movers)
{
  double sum = 0;

  for (guint i = 0; i < movers->n; i++)
    sum += movers->movers[i].grams * movers->movers[i].share;

  return sum;
}

/* The heaviest line of the dough that passes; of this ingredient, or NULL: any. */
int
tr_balance_find_heaviest (const TrDoughFigures *figures,
                          TrLineTest            test,
                          const char           *ingredient,
                          guint                 but)
{
  double most = -1;
  int found = -1;

  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = tr_look_get_line (figures, i);

      if (i == but || line->line->stage != TR_STAGE_DOUGH || !test (line) || !(line->written_grams > most)
          || (ingredient != NULL && g_strcmp0 (line->line->ingredient, ingredient) != 0))
        continue;
      most = line->written_grams;
      found = (int) i;
    }

  return found;
}
