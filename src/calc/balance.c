/* balance.c: a ratio moved by rewriting the amounts behind it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One multiplier of the written numbers is sought. The ratio is linear in it
 * unless amounts depend on each other by percentages, so that the secant meets
 * it in one step nearly always; the formula itself is what is asked, and never
 * a second version of it.
 */

#include "balance.h"

#include "balance-private.h"
#include "look.h"
#include "measure.h"

#define MAX_STEPS 50
#define CLOSE_ENOUGH 1e-9
#define RELATIVE_TOLERANCE 0.005 /* of one line among several, so that they keep their proportions */
#define PERCENT_TOLERANCE 0.02
#define MAX_PERCENT 1000.0

/* What the multiplier is sought for. */
typedef struct {
  const TrDoughFigures *figures;
  gboolean is_line;
  TrRatio ratio;
  guint index;
  double value, tolerance;       /* percent */
} Aim;

static const struct { TrRange travel; double step, usual; } ratios[TR_N_RATIOS] = {
  [TR_RATIO_ALL_WATER] = { { 30, 90 }, 0.5, 50 },
  [TR_RATIO_DOUGH_FAT] = { { 0, 40 }, 0.5, 8 },
  [TR_RATIO_ROLL_IN_OF_DOUGH] = { { 0, 80 }, 0.5, 25 },
  [TR_RATIO_SALT] = { { 0, 4 }, 0.1, 2 },
  [TR_RATIO_SUGAR] = { { 0, 30 }, 0.5, 10 },
  [TR_RATIO_YEAST_FRESH] = { { 0, 15 }, 0.1, 4 },
  [TR_RATIO_PREFERMENTED] = { { 0, 100 }, 0.5, NAN },
};

/* Looking */

static double
ratio_of_formula (const TrFormula *formula,
                  TrRatio          ratio)
{
  switch (ratio)
    {
    case TR_RATIO_ALL_WATER: return formula->all_water_percent;
    case TR_RATIO_DOUGH_FAT: return formula->dough_fat_percent;
    case TR_RATIO_ROLL_IN_OF_DOUGH: return formula->roll_in_percent_of_dough;
    case TR_RATIO_SALT: return formula->salt_percent;
    case TR_RATIO_SUGAR: return formula->sugar_percent;
    case TR_RATIO_YEAST_FRESH: return formula->yeast_fresh_percent;
    case TR_RATIO_PREFERMENTED: return formula->prefermented_flour_percent;
    case TR_N_RATIOS:
    default: g_return_val_if_reached (NAN);
    }
}

double
tr_ratio_get (const TrDoughFigures *figures,
              TrRatio               ratio)
{
  g_return_val_if_fail (figures != NULL, NAN);

  return ratio_of_formula (&figures->formula, ratio);
}

gboolean
tr_ratio_get_band (const TrDoughFigures *figures,
                   TrRatio               ratio,
                   TrBand               *band)
{
  g_return_val_if_fail (figures != NULL, FALSE);

  return tr_band_get (ratio, figures->dough->kind, band);
}

TrRange
tr_ratio_get_travel (TrRatio ratio)
{
  g_return_val_if_fail (ratio < TR_N_RATIOS, ((TrRange) { NAN, NAN }));

  return ratios[ratio].travel;
}

double
tr_ratio_get_step (TrRatio ratio)
{
  g_return_val_if_fail (ratio < TR_N_RATIOS, NAN);

  return ratios[ratio].step;
}

double
tr_ratio_get_usual (TrRatio ratio)
{
  g_return_val_if_fail (ratio < TR_N_RATIOS, NAN);

  return ratios[ratio].usual;
}

double
tr_ratio_get_whole (const TrDoughFigures *figures,
                    TrRatio               ratio)
{
  return ratio == TR_RATIO_ROLL_IN_OF_DOUGH ? figures->formula.written_dough_g : figures->formula.written_flour_g;
}

static double
tolerance_of (TrRatio ratio)
{
  return ratio == TR_RATIO_SALT || ratio == TR_RATIO_YEAST_FRESH ? TR_RATIO_FINE_TOLERANCE : TR_RATIO_TOLERANCE;
}

/* Reach */

static gboolean
has_line (const TrDoughFigures *figures,
          TrRatio               ratio)
{
  for (guint i = 0; i < figures->formula.lines->len; i++)
    if (tr_balance_is_of_ratio (tr_look_get_line (figures, i), ratio))
      return TRUE;

  return FALSE;
}

static int
compare_indices (gconstpointer a,
                 gconstpointer b)
{
  guint one = *(const guint *) a, other = *(const guint *) b;

  return one < other ? -1 : one > other;
}

static void
list_movers (const TrMovers *movers,
             TrRatioMoves   *moves)
{
  for (guint i = 0; i < movers->n; i++)
    moves->lines[moves->n_lines++] = movers->movers[i].index;
  qsort (moves->lines, moves->n_lines, sizeof moves->lines[0], compare_indices);
}

void
tr_ratio_get_moves (const TrDoughFigures *figures,
                    TrRatio               ratio,
                    TrRatioMoves         *moves)
{
  double now = tr_ratio_get (figures, ratio), whole = tr_ratio_get_whole (figures, ratio), fixed;
  TrExchange exchange;
  TrMovers movers;

  g_return_if_fail (ratio < TR_N_RATIOS);

  *moves = (TrRatioMoves) { .reach = { NAN, NAN }, .has_line = has_line (figures, ratio) };
  tr_balance_find_movers (figures, ratio, &movers);
  if (isnan (now) || !tr_is_positive (whole) || movers.n == 0)
    return;

  fixed = MAX (now - 100 * tr_balance_sum_of_movers (&movers) / whole, 0);
  moves->reach.min = MAX (fixed, MIN (ratios[ratio].travel.min, now));
  moves->reach.max = MAX (ratios[ratio].travel.max, now);
  if (ratio == TR_RATIO_PREFERMENTED)
    {
      if (!tr_balance_find_exchange (figures, &exchange))
        {
          moves->reach = (TrRange) { NAN, NAN };
          return;
        }
      moves->reach.max = MIN (moves->reach.max, tr_balance_greatest_prefermented (figures, &exchange, fixed));
      list_movers (&exchange.movers, moves);
      list_movers (&exchange.others, moves);
    }
  else
    {
      list_movers (&movers, moves);
    }
  moves->can_move = TRUE;
}

/* Finding the multiplier */

/* Where nothing is there to be multiplied, `times` is grams of the first. */
static double
number_at (const TrMover *mover,
           gboolean       is_empty,
           gboolean       is_first,
           double         times)
{
  if (is_empty)
    return is_first ? times : 0;

  return mover->number * times;
}

/* `bases`: the sums of that formula, without lines. */
static double
ask (const Aim     *aim,
     const TrDough *dough,
     TrFormula     *bases)
{
  TrFormula formula;
  double value;

  tr_formula_compute (dough, aim->figures->pantry, &formula);
  value = aim->is_line ? tr_formula_get_line (&formula, aim->index)->percent : ratio_of_formula (&formula, aim->ratio);
  tr_formula_clear (&formula);
  *bases = formula;

  return value;
}

static double
measure (const Aim      *aim,
         TrDough        *scratch,
         const TrMovers *movers,
         gboolean        is_empty,
         double          times,
         TrFormula      *bases)
{
  for (guint i = 0; i < movers->n; i++)
    tr_balance_write_exactly (scratch, &movers->movers[i], number_at (&movers->movers[i], is_empty, i == 0, times));

  return ask (aim, scratch, bases);
}

/* FALSE: it cannot be had. */
static gboolean
find_times (const Aim      *aim,
            const TrMovers *movers,
            gboolean        is_empty,
            double          first,
            double         *times,
            TrFormula      *bases)
{
  g_autoptr (TrDough) scratch = tr_dough_copy (aim->figures->dough);
  double before = is_empty ? 0 : 1, at = MAX (first, 0);
  double value_before = measure (aim, scratch, movers, is_empty, before, bases);
  double value_at = measure (aim, scratch, movers, is_empty, at, bases);

  for (guint i = 0; i < MAX_STEPS && !(fabs (value_at - aim->value) < CLOSE_ENOUGH); i++)
    {
      double slope = (value_at - value_before) / (at - before);

      if (!isfinite (slope) || fabs (slope) < 1e-15)
        return FALSE;
      before = at;
      value_before = value_at;
      at = MAX (at + (aim->value - value_at) / slope, 0);
      value_at = measure (aim, scratch, movers, is_empty, at, bases);
    }
  *times = at;

  return fabs (value_at - aim->value) < CLOSE_ENOUGH;
}

static guint
find_heaviest_mover (const TrMovers *movers)
{
  guint heaviest = 0;

  for (guint i = 1; i < movers->n; i++)
    if (movers->movers[i].grams * movers->movers[i].share
        > movers->movers[heaviest].grams * movers->movers[heaviest].share)
      heaviest = i;

  return heaviest;
}

/* The others are rounded within their proportions; the heaviest makes up for
 * them. `allowed_g` is of the ratio's upper part. */
static void
write_rounded (TrDough         *dough,
               const TrMovers  *movers,
               gboolean         is_empty,
               double           times,
               double           allowed_g,
               const TrFormula *bases)
{
  guint last = is_empty ? 0 : find_heaviest_mover (movers);
  double missing_g = 0;

  for (guint i = 0; i < movers->n; i++)
    {
      const TrMover *mover = &movers->movers[i];
      double unit_g = tr_balance_gain_of_unit (mover->unit, bases) * mover->share;
      double number = number_at (mover, is_empty, i == 0, times);

      if (i == last)
        continue;
      double rounded = tr_balance_round_nice (number, MIN (allowed_g / unit_g, RELATIVE_TOLERANCE * number));
      missing_g += (number - rounded) * unit_g;
      tr_balance_write_mover (dough, mover, rounded);
    }

  const TrMover *mover = &movers->movers[last];
  double unit_g = tr_balance_gain_of_unit (mover->unit, bases) * mover->share;
  double number = MAX (number_at (mover, is_empty, last == 0, times) + missing_g / unit_g, 0);
  tr_balance_write_mover (dough, mover, tr_balance_round_nice (number, allowed_g / unit_g));
}

/* What is written in percent of something goes with what was rounded, so the
 * formula is asked what came of it. `whole_g` is what the value is taken of. */
static void
write_within (TrDough         *dough,
              const Aim       *aim,
              const TrMovers  *movers,
              gboolean         is_empty,
              double           times,
              double           whole_g,
              const TrFormula *bases)
{
  double allowed = aim->tolerance;
  TrFormula after;

  for (guint i = 0; i < MAX_STEPS; i++, allowed /= 2)
    {
      write_rounded (dough, movers, is_empty, times, allowed * whole_g / 100, bases);
      if (fabs (ask (aim, dough, &after) - aim->value) <= aim->tolerance + CLOSE_ENOUGH)
        return;
    }
}

/* Setting a ratio */

static gboolean
refuse_reach (GError        **error,
              double          value,
              const TrRange  *reach)
{
  return tr_balance_refuse (error, TR_REFUSAL_OUT_OF_REACH, value, reach->min, reach->max);
}

static gboolean
refuse_still (GError             **error,
              const TrRatioMoves  *moves)
{
  return tr_balance_refuse (error, moves->has_line ? TR_REFUSAL_LINES_NOT_WEIGHED : TR_REFUSAL_NO_LINE, NAN, NAN, NAN);
}

static gboolean
set_multiplied (TrDough               *dough,
                const TrDoughFigures  *figures,
                TrRatio                ratio,
                double                 value,
                GError               **error)
{
  const Aim aim = { .figures = figures, .ratio = ratio, .value = value, .tolerance = tolerance_of (ratio) };
  double whole = tr_ratio_get_whole (figures, ratio), now = tr_ratio_get (figures, ratio), sum, first, times;
  TrFormula bases;
  TrMovers movers;

  tr_balance_find_movers (figures, ratio, &movers);
  sum = tr_balance_sum_of_movers (&movers);
  gboolean is_empty = !(sum > 0);
  if (is_empty)
    movers.movers[0].unit = TR_UNIT_G;
  first = is_empty ? whole / 100 / movers.movers[0].share : 1 + (value - now) * whole / 100 / sum;
  if (!find_times (&aim, &movers, is_empty, first, &times, &bases))
    return tr_balance_refuse (error, TR_REFUSAL_NO_AMOUNT, NAN, NAN, NAN);
  write_within (dough, &aim, &movers, is_empty, times, whole, &bases);

  return TRUE;
}

gboolean
tr_ratio_set (TrDough               *dough,
              const TrDoughFigures  *figures,
              TrRatio                ratio,
              double                 value,
              GError               **error)
{
  TrRatioMoves moves;

  g_return_val_if_fail (dough != NULL && figures != NULL && ratio < TR_N_RATIOS, FALSE);
  g_return_val_if_fail (dough->lines->len == figures->formula.lines->len, FALSE);

  tr_ratio_get_moves (figures, ratio, &moves);
  if (!moves.can_move)
    return refuse_still (error, &moves);
  if (!(value >= moves.reach.min - CLOSE_ENOUGH && value <= moves.reach.max + CLOSE_ENOUGH))
    return refuse_reach (error, value, &moves.reach);
  if (ratio != TR_RATIO_PREFERMENTED)
    return set_multiplied (dough, figures, ratio, value, error);
  tr_balance_set_exchanged (dough, figures, value);

  return TRUE;
}

/* Adding a line */

int
tr_ratio_add_line (TrDough               *dough,
                   const TrDoughFigures  *figures,
                   TrRatio                ratio,
                   GError               **error)
{
  static const struct { const char *ingredient; TrStage stage; double per_gram; } usual[TR_N_RATIOS] = {
    [TR_RATIO_ALL_WATER] = { "water", TR_STAGE_DOUGH, 1 },
    [TR_RATIO_DOUGH_FAT] = { "butter-unsalted", TR_STAGE_DOUGH, 1 },
    [TR_RATIO_ROLL_IN_OF_DOUGH] = { "butter-unsalted", TR_STAGE_ROLL_IN, 1 },
    [TR_RATIO_SALT] = { "salt", TR_STAGE_DOUGH, 1 },
    [TR_RATIO_SUGAR] = { "sugar", TR_STAGE_DOUGH, 1 },
    [TR_RATIO_YEAST_FRESH] = { "yeast-fresh", TR_STAGE_DOUGH, 1 },
  };
  double whole, now, grams;

  g_return_val_if_fail (dough != NULL && figures != NULL, -1);
  g_return_val_if_fail (ratio < TR_N_RATIOS && ratio != TR_RATIO_PREFERMENTED, -1);

  whole = tr_ratio_get_whole (figures, ratio);
  now = tr_ratio_get (figures, ratio);
  if (!tr_is_positive (whole))
    return tr_balance_refuse (error, TR_REFUSAL_NO_FLOUR, NAN, NAN, NAN), -1;
  if (dough->lines->len >= TR_MAX_LINES)
    return tr_balance_refuse (error, TR_REFUSAL_TOO_MANY_LINES, TR_MAX_LINES, NAN, NAN), -1;

  grams = MAX (ratios[ratio].usual - (isnan (now) ? 0 : now), 0) * whole / 100;
  tr_balance_add_line (dough, usual[ratio].stage, NULL, usual[ratio].ingredient, tr_balance_round_nice (grams, 0.01 * grams));

  return (int) dough->lines->len - 1;
}

/* A line's percent */

static gboolean
set_flour_percent (TrDough               *dough,
                   const TrDoughFigures  *figures,
                   guint                  index,
                   double                 percent,
                   GError               **error)
{
  double flour_g = figures->formula.written_flour_g, wanted_g = percent * flour_g / 100, most = -1;
  TrMover mover, other = { .index = index };

  for (guint i = 0; i < figures->formula.lines->len; i++)
    if (i != index && tr_balance_is_flour (tr_look_get_line (figures, i)) && tr_look_get_line (figures, i)->written_grams > most)
      {
        tr_balance_init_mover (&other, figures, i, 1);
        most = other.grams;
      }
  if (most < 0)
    return tr_balance_refuse (error, TR_REFUSAL_ONLY_FLOUR, percent, NAN, NAN);

  tr_balance_init_mover (&mover, figures, index, 1);
  if (wanted_g > mover.grams + other.grams + CLOSE_ENOUGH)
    return tr_balance_refuse (error, TR_REFUSAL_OTHER_FLOUR, percent, 100 * (mover.grams + other.grams) / flour_g, NAN);

  double unit_g = tr_balance_grams_of_unit (mover.unit, &figures->formula);
  double number = tr_balance_round_nice (wanted_g / unit_g, MIN (PERCENT_TOLERANCE, RELATIVE_TOLERANCE * percent) * flour_g / 100 / unit_g);
  tr_balance_write_mover (dough, &mover, number);
  tr_balance_write_mover (dough, &other, MAX (other.grams + mover.grams - number * unit_g, 0) / tr_balance_grams_of_unit (other.unit, &figures->formula));

  return TRUE;
}

gboolean
tr_line_set_percent (TrDough               *dough,
                     const TrDoughFigures  *figures,
                     guint                  index,
                     double                 percent,
                     GError               **error)
{
  const Aim aim = { .figures = figures, .is_line = TRUE, .index = index,
                    .value = percent, .tolerance = MIN (PERCENT_TOLERANCE, RELATIVE_TOLERANCE * percent) };
  double flour_g, times;
  TrFormula bases;
  TrMovers movers = { .n = 0 };

  g_return_val_if_fail (dough != NULL && figures != NULL, FALSE);
  g_return_val_if_fail (index < dough->lines->len && dough->lines->len == figures->formula.lines->len, FALSE);

  flour_g = figures->formula.written_flour_g;
  if (!(percent >= 0 && percent <= MAX_PERCENT))
    return refuse_reach (error, percent, &(TrRange) { 0, MAX_PERCENT });
  if (!tr_look_get_line (figures, index)->known || !tr_is_positive (flour_g))
    return tr_balance_refuse (error, TR_REFUSAL_LINE_NOT_WEIGHED, percent, NAN, NAN);
  if (tr_balance_is_flour (tr_look_get_line (figures, index)))
    return set_flour_percent (dough, figures, index, percent, error);

  tr_balance_add_mover (&movers, figures, index, 1);
  gboolean is_empty = !(movers.movers[0].grams > 0);
  if (is_empty)
    movers.movers[0].unit = TR_UNIT_G;
  double first = is_empty ? percent * flour_g / 100 : percent * flour_g / 100 / movers.movers[0].grams;
  if (!find_times (&aim, &movers, is_empty, first, &times, &bases))
    return tr_balance_refuse (error, TR_REFUSAL_NO_AMOUNT_OF_LINE, percent, NAN, NAN);
  write_within (dough, &aim, &movers, is_empty, times, bases.written_flour_g, &bases);

  return TRUE;
}
