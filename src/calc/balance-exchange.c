/* balance-exchange.c: flour and water between the dough and its preferment
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the preferment gets the dough gives, so that the totals stay.
 */

#include "balance-private.h"

#include "look.h"
#include "measure.h"
#include "water.h"

static int
find_flour_for (const TrDoughFigures *figures,
                guint                 index)
{
  int same = tr_balance_find_heaviest (figures, tr_balance_is_flour, tr_look_get_line (figures, index)->line->ingredient, index);

  return same >= 0 ? same : tr_balance_find_heaviest (figures, tr_balance_is_flour, NULL, index);
}

static gboolean
add_trade (TrExchange           *exchange,
           const TrDoughFigures *figures,
           guint                 mover,
           int                   other,
           double                share)
{
  guint at = 0;

  if (other < 0)
    return FALSE;
  while (at < exchange->others.n && exchange->others.movers[at].index != (guint) other)
    at++;
  if (at == exchange->others.n)
    tr_balance_add_mover (&exchange->others, figures, (guint) other, 1);
  exchange->trades[exchange->n++] = (TrTrade) { mover, at, share };

  return TRUE;
}

/* The preferment's own water goes with its flour, so that it stays as soft. */
static void
add_preferment_water (TrExchange           *exchange,
                      const TrDoughFigures *figures)
{
  TrMovers wet = { .n = 0 };

  tr_balance_find_wet_lines (figures, TR_STAGE_PREFERMENT, TRUE, &wet);
  if (wet.n == 0)
    tr_balance_find_wet_lines (figures, TR_STAGE_PREFERMENT, FALSE, &wet);

  for (guint i = 0; i < wet.n; i++)
    {
      const char *ingredient = tr_look_get_line (figures, wet.movers[i].index)->line->ingredient;
      int other = tr_balance_find_heaviest (figures, tr_balance_is_wet, ingredient, G_MAXUINT);

      if (other < 0)
        continue;
      tr_balance_add_mover (&exchange->movers, figures, wet.movers[i].index, 1);
      add_trade (exchange, figures, exchange->movers.n - 1, other, 1);
    }
}

/* FALSE: something has nothing to be exchanged with. */
gboolean
tr_balance_find_exchange (const TrDoughFigures *figures,
                          TrExchange           *exchange)
{
  gboolean are_starters;

  exchange->n = 0;
  exchange->others.n = 0;
  tr_balance_find_movers (figures, TR_RATIO_PREFERMENTED, &exchange->movers);
  if (exchange->movers.n == 0)
    return FALSE;

  guint n_flours = exchange->movers.n;
  are_starters = tr_look_get_line (figures, exchange->movers.movers[0].index)->ingredient.role == TR_ROLE_STARTER;
  for (guint i = 0; i < n_flours; i++)
    {
      const TrMover *mover = &exchange->movers.movers[i];

      if (!add_trade (exchange, figures, i, find_flour_for (figures, mover->index), mover->share)
          || (are_starters
              && !add_trade (exchange, figures, i, tr_balance_find_heaviest (figures, tr_line_is_water, NULL, G_MAXUINT), 1 - mover->share)))
        return FALSE;
    }
  if (!are_starters)
    add_preferment_water (exchange, figures);

  return TRUE;
}

/* Grams that each line of the dough gives when the movers are `times` as much. */
static double
greatest_times (const TrExchange *exchange)
{
  double most = G_MAXDOUBLE;

  for (guint other = 0; other < exchange->others.n; other++)
    {
      double taken = 0;

      for (guint i = 0; i < exchange->n; i++)
        if (exchange->trades[i].other == other)
          taken += exchange->movers.movers[exchange->trades[i].mover].grams * exchange->trades[i].share;
      if (taken > 0)
        most = MIN (most, 1 + exchange->others.movers[other].grams / taken);
    }

  return most;
}

/* An empty preferment has no share to multiply: it is filled by its first flour. */
double
tr_balance_greatest_prefermented (const TrDoughFigures *figures,
                                  const TrExchange     *exchange,
                                  double                fixed)
{
  double sum = 0, whole = tr_ratio_get_whole (figures, TR_RATIO_PREFERMENTED);

  for (guint i = 0; i < exchange->movers.n; i++)
    if (tr_balance_share_of_line (tr_look_get_line (figures, exchange->movers.movers[i].index), TR_RATIO_PREFERMENTED) > 0)
      sum += exchange->movers.movers[i].grams * exchange->movers.movers[i].share;
  if (!(sum > 0))
    return fixed + 100 * exchange->others.movers[exchange->trades[0].other].grams / whole;

  return fixed + 100 * sum * greatest_times (exchange) / whole;
}

/* Whether the dough has what mover `i` would get; at the end of the reach a
 * rounded amount may be more. */
static gboolean
can_give (const TrExchange *exchange,
          guint             i,
          double            grams)
{
  const TrMover *mover = &exchange->movers.movers[i];

  for (guint t = 0; t < exchange->n; t++)
    if (exchange->trades[t].mover == i
        && (grams - mover->grams) * exchange->trades[t].share
           > exchange->others.movers[exchange->trades[t].other].grams + TR_HAIR)
      return FALSE;

  return TRUE;
}

/* What the preferment gets is round; the dough gives exactly that. */
void
tr_balance_set_exchanged (TrDough              *dough,
                          const TrDoughFigures *figures,
                          double                value)
{
  double whole = tr_ratio_get_whole (figures, TR_RATIO_PREFERMENTED);
  double wanted_g = (value - tr_ratio_get (figures, TR_RATIO_PREFERMENTED)) * whole / 100, sum;
  double allowed_g = TR_RATIO_TOLERANCE * whole / 100;
  TrExchange exchange;
  TrMovers flours;

  tr_balance_find_movers (figures, TR_RATIO_PREFERMENTED, &flours);
  tr_balance_find_exchange (figures, &exchange);
  sum = tr_balance_sum_of_movers (&flours);

  double times = sum > 0 ? 1 + wanted_g / sum : 1;
  for (guint i = 0; i < exchange.movers.n; i++)
    {
      TrMover *mover = &exchange.movers.movers[i];
      double unit_g = tr_balance_grams_of_unit (mover->unit, &figures->formula), number = mover->number * times;

      if (!(sum > 0) && i == 0)
        number = wanted_g / mover->share / unit_g;
      number = MAX (number, 0);
      double rounded = tr_balance_round_nice (number, allowed_g / unit_g / flours.n);
      number = can_give (&exchange, i, rounded * unit_g) ? rounded : number;
      tr_balance_write_mover (dough, mover, number);
      for (guint t = 0; t < exchange.n; t++)
        if (exchange.trades[t].mover == i)
          exchange.others.movers[exchange.trades[t].other].grams -= (number * unit_g - mover->grams) * exchange.trades[t].share;
    }
  for (guint i = 0; i < exchange.others.n; i++)
    {
      const TrMover *other = &exchange.others.movers[i];

      tr_balance_write_mover (dough, other, MAX (other->grams, 0) / tr_balance_grams_of_unit (other->unit, &figures->formula));
    }
}
