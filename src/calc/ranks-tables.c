/* ranks-tables.c: whether tasters agree, and with whom
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Friedman's F only rises with the sum of the squared rank sums, so that this
 * whole number (four times, the ranks being doubled) is what is compared. The
 * sums of all tasters so far are the state; by chance no sample stands out, so
 * that states which differ only in who has which sum are one: they are kept in
 * ascending order. A taster at a time, every order of that taster's ranks is
 * added to every state. The last taster needs no new states, only the count.
 */

#include "ranks.h"

#include <math.h>

#define MOST_SAMPLES 6
#define BITS 10                    /* of a doubled sum: 2 · 6 · 60 at most */
/* Asked for cancelling after so many states. */
#define STATES_A_BREATH 512

gboolean
tr_friedman_is_exact (guint n_tasters,
                      guint n_samples)
{
  static const guint most_tasters[MOST_SAMPLES + 1] = { 0, 0, 60, 60, 30, 12, 5 };

  return n_samples <= MOST_SAMPLES && n_tasters <= most_tasters[n_samples];
}

double
tr_ranks_least_difference (guint n_tasters,
                           guint n_samples)
{
  return 1.96 * sqrt (n_tasters * (double) n_samples * (n_samples + 1.0) / 6);
}

/* States, with how likely each is *********************************************/

typedef struct {
  guint64 *keys;                   /* 0: free; no state is 0 */
  double *chances;
  gsize size, used;                /* size is a power of two */
} States;

static void
states_init (States *states,
             gsize   size)
{
  *states = (States) { g_new0 (guint64, size), g_new0 (double, size), size, 0 };
}

static void
states_clear (States *states)
{
  g_clear_pointer (&states->keys, g_free);
  g_clear_pointer (&states->chances, g_free);
}

static gsize
states_find (const States *states,
             guint64       key)
{
  gsize at = (gsize) ((key * G_GUINT64_CONSTANT (0x9E3779B97F4A7C15)) >> 20) & (states->size - 1);

  while (states->keys[at] != 0 && states->keys[at] != key)
    at = (at + 1) & (states->size - 1);

  return at;
}

static void states_add (States *states,
                        guint64 key,
                        double  chance);

static void
states_grow (States *states)
{
  States grown;

  states_init (&grown, 4 * states->size);
  for (gsize i = 0; i < states->size; i++)
    if (states->keys[i] != 0)
      states_add (&grown, states->keys[i], states->chances[i]);
  states_clear (states);
  *states = grown;
}

static void
states_add (States *states,
            guint64 key,
            double  chance)
{
  gsize at = states_find (states, key);

  if (states->keys[at] == 0)
    {
      if (3 * states->used > 2 * states->size)
        {
          states_grow (states);
          at = states_find (states, key);
        }
      states->keys[at] = key;
      states->used++;
    }
  states->chances[at] += chance;
}

static guint64
pack (const guint *sums,
      guint        n)
{
  guint sorted[MOST_SAMPLES];
  guint64 key = 0;

  for (guint i = 0; i < n; i++)
    {
      guint j = i;

      for (; j > 0 && sorted[j - 1] > sums[i]; j--)
        sorted[j] = sorted[j - 1];
      sorted[j] = sums[i];
    }
  for (guint i = n; i-- > 0;)
    key = key << BITS | sorted[i];

  return key;
}

static void
unpack (guint64 key,
        guint   n,
        guint  *sums)
{
  for (guint i = 0; i < n; i++)
    sums[i] = (guint) (key >> (BITS * i)) & ((1U << BITS) - 1);
}

/* A taster's ranks in every order *********************************************/

/* The next order of the same numbers, the way a dictionary goes on. */
static gboolean
go_to_next_order (guint *values,
                  guint  n)
{
  guint i = n - 1, j = n - 1;

  while (i > 0 && values[i - 1] >= values[i])
    i--;
  if (i == 0)
    return FALSE;

  while (values[j] <= values[i - 1])
    j--;
  guint kept = values[i - 1];
  values[i - 1] = values[j];
  values[j] = kept;
  for (j = n - 1; i < j; i++, j--)
    {
      kept = values[i];
      values[i] = values[j];
      values[j] = kept;
    }

  return TRUE;
}

static void
sort_doubled (const double *ranks,
              guint         n,
              guint        *doubled)
{
  for (guint i = 0; i < n; i++)
    {
      guint value = (guint) lround (2 * ranks[i]), j = i;

      for (; j > 0 && doubled[j - 1] > value; j--)
        doubled[j] = doubled[j - 1];
      doubled[j] = value;
    }
}

/* (element-type guint[n]): each different order once. */
static GArray *
list_orders (const double *ranks,
             guint         n)
{
  GArray *orders = g_array_new (FALSE, FALSE, (guint) (n * sizeof (guint)));
  guint doubled[MAX (MOST_SAMPLES, TR_EXACT_PAGE)];

  sort_doubled (ranks, n, doubled);
  do
    g_array_append_vals (orders, doubled, 1);
  while (go_to_next_order (doubled, n));

  return orders;
}

/* Friedman ********************************************************************/

typedef struct {
  const TrRankTable *table;
  const TrWatch *watch;
  guint64 observed;                /* four times the sum of the squared rank sums */
  double done;                     /* tasters */
} Enumeration;

static guint64
sum_squares (const guint *sums,
             guint        n)
{
  guint64 sum = 0;

  for (guint i = 0; i < n; i++)
    sum += (guint64) sums[i] * sums[i];

  return sum;
}

static double
add_taster (const Enumeration *enumeration,
            const GArray      *orders,
            guint64            key,
            double             chance,
            States            *next)
{
  guint n = enumeration->table->n_samples, sums[MOST_SAMPLES], added[MOST_SAMPLES], n_as_far = 0;
  const guint *order = (const guint *) (gconstpointer) orders->data;

  unpack (key, n, sums);
  for (guint k = 0; k < orders->len; k++, order += n)
    {
      for (guint i = 0; i < n; i++)
        added[i] = sums[i] + order[i];
      if (next != NULL)
        states_add (next, pack (added, n), chance / orders->len);
      else if (sum_squares (added, n) >= enumeration->observed)
        n_as_far++;
    }

  return chance * n_as_far / orders->len;
}

/* The last taster makes no states: `next` is NULL, and what is as far out is
 * summed up. FALSE: no longer wanted. */
static gboolean
step (Enumeration  *enumeration,
      guint         taster,
      const States *states,
      States       *next,
      double       *p)
{
  guint n = enumeration->table->n_samples;
  g_autoptr (GArray) orders = list_orders (enumeration->table->ranks + (gsize) taster * n, n);
  double share = 1.0 / enumeration->table->n_tasters;
  gsize seen = 0;

  for (gsize i = 0; i < states->size; i++)
    {
      if (states->keys[i] == 0)
        continue;
      *p += add_taster (enumeration, orders, states->keys[i], states->chances[i], next);
      if (++seen % STATES_A_BREATH != 0)
        continue;
      if (tr_watch_is_cancelled (enumeration->watch))
        return FALSE;
      tr_watch_progress (enumeration->watch, share * (enumeration->done + (double) seen / (double) states->used));
    }
  enumeration->done++;
  tr_watch_progress (enumeration->watch, share * enumeration->done);

  return !tr_watch_is_cancelled (enumeration->watch);
}

/* Those who tie least first: ties make the states more, and the fewest orders
 * are then left for them. */
static guint *
order_tasters (const TrRankTable *table)
{
  guint *tasters = g_new (guint, table->n_tasters), *n_orders = g_new (guint, table->n_tasters);

  for (guint t = 0; t < table->n_tasters; t++)
    {
      g_autoptr (GArray) orders = list_orders (table->ranks + (gsize) t * table->n_samples, table->n_samples);
      guint i = t;

      for (; i > 0 && n_orders[i - 1] < orders->len; i--)
        {
          n_orders[i] = n_orders[i - 1];
          tasters[i] = tasters[i - 1];
        }
      n_orders[i] = orders->len;
      tasters[i] = t;
    }
  g_free (n_orders);

  return tasters;
}

static gboolean
enumerate (Enumeration *enumeration,
           double      *p)
{
  g_autofree guint *tasters = order_tasters (enumeration->table);
  guint last = enumeration->table->n_tasters - 1;
  States states;
  gboolean goes_on = TRUE;

  states_init (&states, 64);
  /* Nobody has tasted: all sums are 0, which no key may be, and the first
   * taster's ranks are one state however they are shuffled. */
  g_autoptr (GArray) first = list_orders (enumeration->table->ranks + (gsize) tasters[0] * enumeration->table->n_samples,
                                          enumeration->table->n_samples);
  states_add (&states, pack ((const guint *) (gconstpointer) first->data, enumeration->table->n_samples), 1);
  enumeration->done = 1;

  *p = 0;
  for (guint t = 1; goes_on && t < last; t++)
    {
      States next;

      states_init (&next, states.size);
      goes_on = step (enumeration, tasters[t], &states, &next, p);
      states_clear (&states);
      states = next;
    }
  if (goes_on)
    goes_on = step (enumeration, tasters[last], &states, NULL, p);
  states_clear (&states);

  return goes_on;
}

/* Σ (n³ − n) over a taster's ties. */
static double
sum_ties (const double *ranks,
          guint         n)
{
  double sum = 0;

  for (guint i = 0; i < n; i++)
    {
      double alike = 0;

      for (guint j = 0; j < n; j++)
        alike += fabs (ranks[i] - ranks[j]) < 0.25;
      sum += alike * alike - 1;    /* over its members n (n² − 1)/n */
    }

  return sum;
}

gboolean
tr_ranks_friedman (const TrRankTable *table,
                   const TrWatch     *watch,
                   TrFriedman        *friedman)
{
  double j = table->n_tasters, p = table->n_samples, squares = 0, ties = 0, room;
  Enumeration enumeration = { .table = table, .watch = watch };

  *friedman = (TrFriedman) { NAN, NAN, NAN, tr_friedman_is_exact (table->n_tasters, table->n_samples) };
  if (table->n_tasters < 2 || table->n_samples < 2)
    return TRUE;

  for (guint s = 0; s < table->n_samples; s++)
    {
      double sum = 0;

      for (guint t = 0; t < table->n_tasters; t++)
        sum += table->ranks[t * table->n_samples + s];
      squares += sum * sum;
    }
  for (guint t = 0; t < table->n_tasters; t++)
    ties += sum_ties (table->ranks + (gsize) t * table->n_samples, table->n_samples);

  room = j * p * (p * p - 1) - ties;
  if (!(room > 0))
    return TRUE;

  /* TF: 12/(JP(P+1)) ΣR² − 3J(P+1), over 1 − E/(JP(P²−1)). */
  friedman->f = fmax (0, 12 / (j * p * (p + 1)) * squares - 3 * j * (p + 1)) / (room / (j * p * (p * p - 1)));
  friedman->kendall_w = fmin (1, friedman->f / (j * (p - 1)));
  if (!friedman->is_exact)
    {
      friedman->p = tr_chance_chi_squared (friedman->f, table->n_samples - 1);
      return TRUE;
    }
  enumeration.observed = (guint64) llround (4 * squares);
  if (!enumerate (&enumeration, &friedman->p))
    return FALSE;
  friedman->p = fmin (1, friedman->p);

  return TRUE;
}

/* Page ************************************************************************/

/* How likely each doubled contribution of one taster is; index: the contribution. */
static double *
spread_of_taster (const double *ranks,
                  guint         n,
                  gsize        *len)
{
  g_autoptr (GArray) orders = list_orders (ranks, n);
  const guint *order = (const guint *) (gconstpointer) orders->data;
  double *chances;

  *len = 2 * n * n * (n + 1) / 2 + 1;          /* no sum of i·r is above n·Σr = n·n(n+1)/2 */
  chances = g_new0 (double, *len);
  for (guint k = 0; k < orders->len; k++, order += n)
    {
      guint sum = 0;

      for (guint i = 0; i < n; i++)
        sum += (i + 1) * order[i];
      chances[sum] += 1.0 / orders->len;
    }

  return chances;
}

static double *
convolve (const double *a,
          gsize         n_a,
          const double *b,
          gsize         n_b)
{
  double *sum = g_new0 (double, n_a + n_b - 1);

  for (gsize j = 0; j < n_b; j++)
    if (b[j] > 0)
      for (gsize i = 0; i < n_a; i++)
        sum[i + j] += a[i] * b[j];

  return sum;
}

static double
enumerate_page (const TrRankTable *table,
                guint64            observed)
{
  double *chances = g_new0 (double, 1), p = 0;
  gsize n = 1;

  chances[0] = 1;
  for (guint t = 0; t < table->n_tasters; t++)
    {
      gsize len;
      g_autofree double *one = spread_of_taster (table->ranks + (gsize) t * table->n_samples, table->n_samples, &len);
      double *more = convolve (chances, n, one, len);

      g_free (chances);
      chances = more;
      n += len - 1;
    }
  for (gsize i = observed; i < n; i++)
    p += chances[i];
  g_free (chances);

  return fmin (1, p);
}

/* Of L by chance: each taster's share of it on its own, with that taster's ties. */
static double
page_variance (const TrRankTable *table)
{
  double n = table->n_samples, spread = 0;

  for (gsize i = 0; i < (gsize) table->n_tasters * table->n_samples; i++)
    spread += (table->ranks[i] - (n + 1) / 2) * (table->ranks[i] - (n + 1) / 2);

  return n * (n + 1) / 12 * spread;           /* Σ(i − ī)² = n(n² − 1)/12, over n − 1 */
}

void
tr_ranks_page (const TrRankTable *table,
               const guint       *order,
               TrPageTest            *page)
{
  double n = table->n_samples, l = 0, variance;

  *page = (TrPageTest) { NAN, NAN, table->n_samples <= TR_EXACT_PAGE };
  if (table->n_tasters < 1 || table->n_samples < 2)
    return;

  for (guint i = 0; i < table->n_samples; i++)
    for (guint t = 0; t < table->n_tasters; t++)
      l += (i + 1) * table->ranks[t * table->n_samples + order[i]];
  page->l = l;
  if (page->is_exact)
    {
      page->p = enumerate_page (table, (guint64) llround (2 * l));
      return;
    }
  variance = page_variance (table);
  page->p = variance > 0 ? tr_chance_normal ((l - table->n_tasters * n * (n + 1) * (n + 1) / 4) / sqrt (variance)) : 1;
}
