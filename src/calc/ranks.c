/* ranks.c: places, and what two lists of them have in common
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whole numbers throughout: ranks are doubled, so that what is as far out as
 * the observed is found by comparing integers.
 */

#include "ranks.h"

#include <math.h>
#include <stdlib.h>

gboolean
tr_watch_is_cancelled (const TrWatch *watch)
{
  return watch != NULL && watch->is_cancelled != NULL && watch->is_cancelled (watch->data);
}

void
tr_watch_progress (const TrWatch *watch,
                   double         share)
{
  if (watch != NULL && watch->progressed != NULL)
    watch->progressed (watch->data, share);
}

static int
compare_values (gconstpointer a,
                gconstpointer b,
                gpointer      data)
{
  const double *values = data;
  double one = values[*(const guint *) a], other = values[*(const guint *) b];

  return one < other ? -1 : one > other;
}

void
tr_ranks_of (const double *values,
             guint         n,
             double        hair,
             double       *ranks)
{
  g_autofree guint *order = g_new (guint, n + 1);

  g_return_if_fail (n == 0 || (values != NULL && ranks != NULL));

  for (guint i = 0; i < n; i++)
    order[i] = i;
  if (n > 1)
    g_qsort_with_data (order, (int) n, sizeof *order, compare_values, (gpointer) values);

  for (guint from = 0, to; from < n; from = to)
    {
      for (to = from + 1; to < n && values[order[to]] - values[order[to - 1]] <= hair; to++)
        ;
      for (guint i = from; i < to; i++)
        ranks[order[i]] = (from + 1 + to) / 2.0;
    }
}

/* Chance ***********************************************************************/

/* By the recurrence in the degrees of freedom: Abramowitz & Stegun 1964, 26.4.4
 * and 26.4.5 (from memory; the tests hold it against tables). */
double
tr_chance_chi_squared (double x,
                       guint  df)
{
  double half = x / 2, term, sum;

  if (!(x > 0))
    return 1;

  sum = df % 2 == 1 ? erfc (sqrt (half)) : exp (-half);
  term = df % 2 == 1 ? sqrt (half / G_PI) * 2 * exp (-half) : exp (-half) * half;
  for (guint k = df % 2 == 1 ? 3 : 4; k <= df; k += 2)
    {
      sum += term;
      term *= half / (k / 2.0);
    }

  return fmin (sum, 1);
}

double
tr_chance_normal (double z)
{
  return erfc (z / G_SQRT2) / 2;
}

/* Correlations *****************************************************************/

static gint64
double_rank (double rank)
{
  return (gint64) lround (2 * rank);
}

/* What each order of b would give, by Heap's way of making every order with
 * one exchange a step (B. R. Heap, Computer Journal 6, 1963, 293–298). */
typedef struct {
  gint64 a[TR_EXACT_PAIRS], b[TR_EXACT_PAIRS];
  guint n;
  gint64 (*measure) (const gint64 *a,
                     const gint64 *b,
                     guint         n);
  gint64 observed, furthest;
  double n_all, n_as_far, n_furthest;
} Shuffle;

static void
count_order (Shuffle *shuffle)
{
  gint64 far = llabs (shuffle->measure (shuffle->a, shuffle->b, shuffle->n));

  shuffle->n_all++;
  if (far >= shuffle->observed)
    shuffle->n_as_far++;
  if (far > shuffle->furthest)
    {
      shuffle->furthest = far;
      shuffle->n_furthest = 0;
    }
  if (far == shuffle->furthest)
    shuffle->n_furthest++;
}

static void
count_all_orders (Shuffle *shuffle)
{
  guint counters[TR_EXACT_PAIRS] = { 0 };

  count_order (shuffle);
  for (guint i = 1; i < shuffle->n;)
    if (counters[i] < i)
      {
        guint j = i % 2 == 0 ? 0 : counters[i];
        gint64 kept = shuffle->b[i];

        shuffle->b[i] = shuffle->b[j];
        shuffle->b[j] = kept;
        count_order (shuffle);
        counters[i]++;
        i = 1;
      }
    else
      {
        counters[i++] = 0;
      }
}

static gint64
measure_spearman (const gint64 *a,
                  const gint64 *b,
                  guint         n)
{
  gint64 products = 0, sum_a = 0, sum_b = 0;

  for (guint i = 0; i < n; i++)
    {
      products += a[i] * b[i];
      sum_a += a[i];
      sum_b += b[i];
    }

  return (gint64) n * products - sum_a * sum_b;
}

static int
sign_of (gint64 value)
{
  return value > 0 ? 1 : value < 0 ? -1 : 0;
}

static gint64
measure_kendall (const gint64 *a,
                 const gint64 *b,
                 guint         n)
{
  gint64 sum = 0;

  for (guint i = 0; i < n; i++)
    for (guint j = i + 1; j < n; j++)
      sum += sign_of (a[i] - a[j]) * sign_of (b[i] - b[j]);

  return sum;
}

typedef gint64 (*Measure) (const gint64 *a,
                           const gint64 *b,
                           guint         n);

static int
compare_doubled (gconstpointer a,
                 gconstpointer b)
{
  return sign_of (*(const gint64 *) a - *(const gint64 *) b);
}

/* `error` is the coefficient's standard deviation by chance where it is not enumerated. */
static void
correlate (const double  *a,
           const double  *b,
           guint          n,
           Measure        measure,
           double         error,
           TrCorrelation *correlation)
{
  g_autofree gint64 *of_a = g_new (gint64, n + 1), *of_b = g_new (gint64, n + 1);
  double observed, scale;

  *correlation = (TrCorrelation) { NAN, NAN, NAN, n <= TR_EXACT_PAIRS };
  for (guint i = 0; i < n; i++)
    {
      of_a[i] = double_rank (a[i]);
      of_b[i] = double_rank (b[i]);
    }
  observed = (double) measure (of_a, of_b, n);
  scale = sqrt ((double) measure (of_a, of_a, n) * (double) measure (of_b, of_b, n));
  if (n < 2 || !(scale > 0))
    return;

  correlation->coefficient = fmax (-1, fmin (1, observed / scale));
  if (correlation->is_exact)
    {
      Shuffle shuffle = { .n = n, .measure = measure, .observed = llabs ((gint64) observed), .furthest = -1 };

      for (guint i = 0; i < n; i++)
        {
          shuffle.a[i] = of_a[i];
          shuffle.b[i] = of_b[i];
        }
      count_all_orders (&shuffle);
      correlation->p = shuffle.n_as_far / shuffle.n_all;
      correlation->least_p = shuffle.n_furthest / shuffle.n_all;
      return;
    }
  correlation->p = 2 * tr_chance_normal (fabs (correlation->coefficient) / error);
  qsort (of_a, n, sizeof *of_a, compare_doubled);
  qsort (of_b, n, sizeof *of_b, compare_doubled);
  correlation->least_p = 2 * tr_chance_normal ((double) measure (of_a, of_b, n) / scale / error);
}

void
tr_ranks_spearman (const double  *a,
                   const double  *b,
                   guint          n,
                   TrCorrelation *correlation)
{
  g_return_if_fail (correlation != NULL);

  correlate (a, b, n, measure_spearman, 1 / sqrt (n - 1.0), correlation);
}

/* The standard deviation is Kendall's 1938, without ties. */
void
tr_ranks_kendall (const double  *a,
                  const double  *b,
                  guint          n,
                  TrCorrelation *correlation)
{
  g_return_if_fail (correlation != NULL);

  correlate (a, b, n, measure_kendall, sqrt (2 * (2.0 * n + 5) / (9.0 * n * (n - 1.0))), correlation);
}
