/* test-serving.c: orders are balanced, codes tell nothing, long sums can be cancelled
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "calc/ranks.h"
#include "calc/scores.h"
#include "calc/serving.h"

static void
test_williams_is_balanced (void)
{
  for (guint n = 2; n <= 12; n++)
    {
      guint rows = tr_williams_count (n), each = rows / n, order[12];
      guint places[12][12] = { 0 }, pairs[12][12] = { 0 };

      for (guint row = 0; row < rows; row++)
        {
          tr_williams_get (n, row, order);
          for (guint i = 0; i < n; i++)
            {
              g_assert_cmpuint (order[i], <, n);
              places[i][order[i]]++;
              if (i > 0)
                pairs[order[i - 1]][order[i]]++;
            }
        }
      for (guint i = 0; i < n; i++)
        for (guint j = 0; j < n; j++)
          {
            g_assert_cmpuint (places[i][j], ==, each);
            g_assert_cmpuint (pairs[i][j], ==, i == j ? 0 : each);
          }
    }
}

static void
test_telling_codes (void)
{
  static const int telling[] = { 7, 99, 100, 101, 110, 112, 123, 234, 321, 987, 666, 999, 420, 911, 1000, 0, -418 };

  for (gsize i = 0; i < G_N_ELEMENTS (telling); i++)
    g_assert_false (tr_code_is_plain (telling[i]));
  g_assert_true (tr_code_is_plain (418));
  g_assert_true (tr_code_is_plain (135));
  g_assert_true (tr_code_is_plain (609));
}

static void
test_dealing (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed ((guint32) g_test_rand_int ());

  for (guint n = 1; n <= TR_MAX_DOUGHS; n++)
    {
      g_autoptr (TrTasting) tasting = tr_tasting_new ();
      g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
      guint n_tasters = (guint) g_test_rand_int_range (1, 20);

      for (guint i = 0; i < n; i++)
        {
          g_autofree char *id = g_strdup_printf ("d%u", i);

          g_strv_builder_add (builder, id);
        }
      for (guint t = 0; t < n_tasters; t++)
        tr_tasting_add_taster (tasting, "T");

      g_auto (GStrv) doughs = g_strv_builder_end (builder);

      tr_serving_deal_codes (tasting, (const char *const *) doughs, rand);
      tr_serving_deal_orders (tasting, (const char *const *) doughs, rand);
      g_assert_cmpuint (tasting->codes->len, ==, n);
      for (guint i = 0; i < n; i++)
        {
          g_assert_true (tr_code_is_plain (tr_tasting_get_code (tasting, doughs[i])));
          for (guint j = 0; j < i; j++)
            g_assert_cmpint (tr_tasting_get_code (tasting, doughs[i]), !=, tr_tasting_get_code (tasting, doughs[j]));
        }
      g_assert_cmpuint (tasting->orders->len, ==, n_tasters);
      for (guint t = 0; t < n_tasters; t++)
        {
          const TrOrder *order = tasting->orders->pdata[t];

          g_assert_cmpuint (g_strv_length (order->doughs), ==, n);
          for (guint i = 0; i < n; i++)
            g_assert_true (g_strv_contains ((const char *const *) order->doughs, doughs[i]));
          /* Each begins with another, as long as there are others. */
          for (guint u = t / n * n; u < t; u++)
            g_assert_cmpstr (order->doughs[0], !=, ((const TrOrder *) tasting->orders->pdata[u])->doughs[0]);
        }
    }
}

typedef struct { double share; guint n_asked, limit; } Watcher;

static gboolean
is_cancelled (gpointer data)
{
  Watcher *watcher = data;

  return ++watcher->n_asked > watcher->limit;
}

static void
progressed (gpointer data,
            double   share)
{
  Watcher *watcher = data;

  g_assert_cmpfloat (share, >=, watcher->share);
  g_assert_cmpfloat (share, <=, 1 + 1e-9);
  watcher->share = share;
}

/* Five samples, eight tasters, many ties: within a second, never backwards, and given up when asked to. */
static void
test_eight_by_five (void)
{
  double ranks[8 * 5], elapsed;
  Watcher watcher = { .limit = G_MAXUINT }, impatient = { .limit = 3 };
  TrWatch watch = { is_cancelled, progressed, &watcher };
  TrFriedman friedman;

  for (guint t = 0; t < 8; t++)
    {
      double marks[5];

      for (guint s = 0; s < 5; s++)
        marks[s] = g_test_rand_int_range (1, 6);
      tr_ranks_of (marks, 5, TR_SCORE_HAIR, ranks + t * 5);
    }

  g_test_timer_start ();
  g_assert_true (tr_ranks_friedman (&(TrRankTable) { ranks, 8, 5 }, &watch, &friedman));
  elapsed = g_test_timer_elapsed ();
  g_test_minimized_result (elapsed, "exact p, 5 samples, 8 tasters: %.3f s", elapsed);
  g_assert_true (friedman.is_exact);
  g_assert_cmpfloat (friedman.p, >, 0);
  g_assert_cmpfloat (friedman.p, <=, 1);
  g_assert_cmpfloat_with_epsilon (watcher.share, 1, 1e-9);
  if (g_test_perf ())
    g_assert_cmpfloat (elapsed, <, 1);

  watch.data = &impatient;
  g_assert_false (tr_ranks_friedman (&(TrRankTable) { ranks, 8, 5 }, &watch, &friedman));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/serving/designs-are-balanced-for-place-and-for-what-came-before", test_williams_is_balanced);
  g_test_add_func ("/serving/telling-codes-are-passed-over", test_telling_codes);
  g_test_add_func ("/serving/codes-differ-and-starts-are-fair", test_dealing);
  g_test_add_func ("/serving/exact-friedman-reports-and-stops", test_eight_by_five);

  return g_test_run ();
}
