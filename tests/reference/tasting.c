/* tasting.c: ranks of a tasting, as standards and tables print them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * ISO 8587 (ranking), tables of Friedman's and Spearman's exact distributions,
 * chi-squared and normal tables, printed Williams designs.
 */

#include <math.h>
#include <string.h>

#include "calc/ranks.h"
#include "calc/serving.h"

/* ISO 8587:1988, annex A: 8 assessors, 5 samples, rank sums 17, 31, 32, 23, 17.
 * The standard prints the sums; any ranks with these sums give the same F. */
static const double iso_ranks[8 * 5] = {
  1, 4, 5, 3, 2,  3, 4, 1, 5, 2,  1, 4, 5, 3, 2,  2, 5, 4, 1, 3,
  4, 1, 5, 2, 3,  3, 5, 4, 1, 2,  1, 5, 3, 4, 2,  2, 3, 5, 4, 1,
};

static void
test_iso_example (void)
{
  static const double sums[] = { 17, 31, 32, 23, 17 };
  TrRankTable table = { iso_ranks, 8, 5 };
  TrFriedman friedman;
  double least = tr_ranks_least_difference (8, 5);

  for (guint s = 0; s < 5; s++)
    {
      double sum = 0;

      for (guint t = 0; t < 8; t++)
        sum += iso_ranks[t * 5 + s];
      g_assert_cmpfloat (sum, ==, sums[s]);
    }

  g_assert_true (tr_ranks_friedman (&table, NULL, &friedman));
  g_assert_cmpfloat_with_epsilon (friedman.f, 10.60, 1e-9);
  g_assert_true (friedman.is_exact);
  /* Computed by enumeration. */
  g_assert_cmpfloat_with_epsilon (friedman.p, 0.02465, 0.000005);
  /* What the chi-squared approximation would say. */
  g_assert_cmpfloat_with_epsilon (tr_chance_chi_squared (10.60, 4), 0.0314, 0.00005);
  /* A and E differ from B and C, D does not: the standard's own words. */
  g_assert_cmpfloat_with_epsilon (least, 12.40, 0.005);
  g_assert_cmpfloat (31 - 17, >, least);
  g_assert_cmpfloat (23 - 17, <, least);
  g_assert_cmpfloat (32 - 23, <, least);
}

/* Random ranks without ties, some of them leaning one way. */
static void
make_ranks (GRand  *rand,
            double *ranks,
            guint   n_tasters,
            guint   n_samples)
{
  double lean = g_rand_double (rand) * 3;

  for (guint t = 0; t < n_tasters; t++)
    {
      double values[9];

      for (guint s = 0; s < n_samples; s++)
        values[s] = g_rand_double (rand) * n_samples + lean * s;
      tr_ranks_of (values, n_samples, 0, ranks + t * n_samples);
    }
}

static double
f_of (const double *ranks,
      guint         n_tasters,
      guint         n_samples)
{
  double squares = 0;

  for (guint s = 0; s < n_samples; s++)
    {
      double sum = 0;

      for (guint t = 0; t < n_tasters; t++)
        sum += ranks[t * n_samples + s];
      squares += sum * sum;
    }

  return 12 * squares / (n_tasters * n_samples * (n_samples + 1)) - 3.0 * n_tasters * (n_samples + 1);
}

typedef struct { guint n, k; double five, one; } Critical;

/* Smallest F with p at most 5 % and 1 %. Odeh, Communications in Statistics
 * 6(1), 1977, 49–61 is the usual source; computed by full enumeration and equal
 * to a printed table but for its misprints. NaN: nothing reaches it. */
static const Critical criticals[] = {
  { 3, 3, 6.000, NAN }, { 4, 3, 6.500, 8.000 }, { 5, 3, 6.400, 8.400 }, { 6, 3, 7.000, 9.000 }, { 7, 3, 7.143, 8.857 },
  { 8, 3, 6.250, 9.000 }, { 9, 3, 6.222, 9.556 }, { 10, 3, 6.200, 9.600 }, { 12, 3, 6.500, 9.500 }, { 15, 3, 6.400, 8.933 },
  { 2, 4, 6.000, NAN }, { 3, 4, 7.400, 9.000 }, { 4, 4, 7.800, 9.600 }, { 5, 4, 7.800, 9.960 }, { 6, 4, 7.600, 10.200 },
  { 7, 4, 7.800, 10.543 }, { 8, 4, 7.650, 10.500 }, { 9, 4, 7.667, 10.733 }, { 10, 4, 7.680, 10.680 }, { 12, 4, 7.700, 10.80 },
  { 15, 4, 7.720, 10.92 },
  { 2, 5, 7.600, 8.000 }, { 3, 5, 8.533, 10.133 }, { 4, 5, 8.800, 11.200 }, { 5, 5, 8.960, 11.680 }, { 6, 5, 9.067, 11.867 },
  { 7, 5, 9.143, 12.114 }, { 8, 5, 9.200, 12.300 }, { 9, 5, 9.244, 12.44 }, { 10, 5, 9.280, 12.48 },
};

/* Ranks whose F is that, and ranks whose F is the next below, straddle the level. */
static void
check_critical (GRand          *rand,
                const Critical *critical,
                double          f,
                double          level)
{
  double ranks[15 * 5], at[15 * 5], below[15 * 5], f_at = INFINITY, f_below = -1;
  gsize size = critical->n * critical->k * sizeof (double);
  TrFriedman friedman;

  for (guint i = 0; i < 30000; i++)
    {
      make_ranks (rand, ranks, critical->n, critical->k);

      double found = f_of (ranks, critical->n, critical->k);

      if (found > f - 0.006 && found < f_at)
        {
          f_at = found;
          memcpy (at, ranks, size);
        }
      else if (found < f - 0.006 && found > f_below)
        {
          f_below = found;
          memcpy (below, ranks, size);
        }
    }

  g_test_message ("%u tasters, %u samples: %g, below it %g", critical->n, critical->k, f_at, f_below);
  g_assert_cmpfloat_with_epsilon (f_at, f, 0.006);
  g_assert_true (tr_ranks_friedman (&(TrRankTable) { at, critical->n, critical->k }, NULL, &friedman));
  g_assert_true (friedman.is_exact);
  g_assert_cmpfloat_with_epsilon (friedman.f, f_at, 1e-9);
  g_assert_cmpfloat (friedman.p, <=, level);
  g_assert_true (tr_ranks_friedman (&(TrRankTable) { below, critical->n, critical->k }, NULL, &friedman));
  g_assert_cmpfloat (friedman.p, >, level);
}

static void
test_friedman_criticals (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed ((guint32) g_test_rand_int ());

  for (gsize i = 0; i < G_N_ELEMENTS (criticals); i++)
    {
      check_critical (rand, &criticals[i], criticals[i].five, 0.05);
      if (!isnan (criticals[i].one))
        check_critical (rand, &criticals[i], criticals[i].one, 0.01);
    }
}

/* Some tails of the exact distribution, computed by enumeration. */
static void
test_friedman_tails (void)
{
  static const struct { guint n, k; double f, p; } tails[] = {
    { 4, 3, 6.5, 0.0417 }, { 5, 3, 6.4, 0.0394 }, { 8, 3, 6.25, 0.0469 }, { 4, 4, 7.8, 0.0364 }, { 5, 4, 7.8, 0.0443 },
  };
  g_autoptr (GRand) rand = g_rand_new_with_seed ((guint32) g_test_rand_int ());

  for (gsize i = 0; i < G_N_ELEMENTS (tails); i++)
    {
      double ranks[8 * 5];
      TrFriedman friedman;

      do
        make_ranks (rand, ranks, tails[i].n, tails[i].k);
      while (fabs (f_of (ranks, tails[i].n, tails[i].k) - tails[i].f) > 1e-6);
      g_assert_true (tr_ranks_friedman (&(TrRankTable) { ranks, tails[i].n, tails[i].k }, NULL, &friedman));
      g_assert_cmpfloat_with_epsilon (friedman.p, tails[i].p, 0.00005);
    }
}

/* "With two tasters and three samples nothing can reach 5 %." */
static void
test_two_tasters_three_samples (void)
{
  static const double agreeing[] = { 1, 2, 3, 1, 2, 3 };
  TrFriedman friedman;

  g_assert_true (tr_ranks_friedman (&(TrRankTable) { agreeing, 2, 3 }, NULL, &friedman));
  g_assert_cmpfloat_with_epsilon (friedman.kendall_w, 1, 1e-12);
  g_assert_cmpfloat_with_epsilon (friedman.p, 1 / 6.0, 1e-12);
}

/* Two samples are the sign test: 4 of 4 are 2/16, not the 0.046 of chi-squared. */
static void
test_two_samples (void)
{
  static const double agreeing[] = { 1, 2, 1, 2, 1, 2, 1, 2 };
  TrFriedman friedman;

  g_assert_true (tr_ranks_friedman (&(TrRankTable) { agreeing, 4, 2 }, NULL, &friedman));
  g_assert_true (friedman.is_exact);
  g_assert_cmpfloat_with_epsilon (friedman.p, 0.125, 1e-12);
}

/* NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4 and 1.3.6.7.1 (from memory). */
static void
test_chance (void)
{
  static const struct { guint df; double five, one; } chi[] = {
    { 1, 3.841, 6.635 }, { 2, 5.991, 9.210 }, { 3, 7.815, 11.345 }, { 4, 9.488, 13.277 }, { 5, 11.070, 15.086 },
    { 6, 12.592, 16.812 }, { 7, 14.067, 18.475 }, { 10, 18.307, 23.209 }, { 20, 31.410, 37.566 }, { 63, 82.529, 92.010 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (chi); i++)
    {
      g_assert_cmpfloat_with_epsilon (tr_chance_chi_squared (chi[i].five, chi[i].df), 0.05, 0.00002);
      g_assert_cmpfloat_with_epsilon (tr_chance_chi_squared (chi[i].one, chi[i].df), 0.01, 0.00001);
    }
  g_assert_cmpfloat_with_epsilon (tr_chance_normal (1.645), 0.05, 0.0001);
  g_assert_cmpfloat_with_epsilon (tr_chance_normal (2.326), 0.01, 0.00002);
  g_assert_cmpfloat (tr_chance_chi_squared (0, 3), ==, 1);
}

/* One-sided tails; equal to the printed table for n = 4 to 11 in every cell. */
static void
test_spearman (void)
{
  static const struct { guint n; double order[8]; double rho, one_sided; } cases[] = {
    { 4, { 1, 2, 3, 4 }, 1, 1 / 24.0 },
    { 5, { 2, 1, 3, 4, 5 }, 0.9, 0.0417 },
    { 6, { 2, 1, 4, 3, 5, 6 }, 0.886, 0.0167 },
    { 8, { 1, 2, 3, 5, 6, 8, 7, 4 }, 0.738, 0.0229 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      static const double straight[] = { 1, 2, 3, 4, 5, 6, 7, 8 };
      TrCorrelation correlation;

      tr_ranks_spearman (straight, cases[i].order, cases[i].n, &correlation);
      g_assert_cmpfloat_with_epsilon (correlation.coefficient, cases[i].rho, 0.0005);
      g_assert_cmpfloat_with_epsilon (correlation.p / 2, cases[i].one_sided, 0.00005);
      g_assert_true (correlation.is_exact);
    }
}

/* ISO 8587: mean J P (P + 1)²/4 and the deviation of L, of which 1.645 and 2.326 are 5 % and 1 %. */
static void
test_page (void)
{
  enum { J = 14, P = 9 };
  double ranks[J * P], l;
  guint order[P];
  TrPageTest page;
  g_autoptr (GRand) rand = g_rand_new_with_seed ((guint32) g_test_rand_int ());

  for (guint i = 0; i < P; i++)
    order[i] = i;
  make_ranks (rand, ranks, J, P);
  tr_ranks_page (&(TrRankTable) { ranks, J, P }, order, &page);
  l = (12 * page.l - 3.0 * J * P * (P + 1) * (P + 1)) / (P * (P + 1) * sqrt (J * (P - 1.0)));
  g_assert_false (page.is_exact);
  g_assert_cmpfloat_with_epsilon (page.p, tr_chance_normal (l), 1e-12);
}

/* R package crossdes, williams(), as printed in its manual, and the
 * designs for 4, 5 and 6 worked out by the rule. Rows in any order. */
static void
test_williams (void)
{
  static const struct { guint n; const char *rows; } designs[] = {
    { 3, "123 231 312 321 132 213" },
    { 4, "1243 2314 3421 4132" },
    { 5, "12534 23145 34251 45312 51423 43521 54132 15243 21354 32415" },
    { 6, "126354 231465 342516 453621 564132 615243" },
  };
  static const guint ten[] = { 1, 2, 10, 3, 9, 4, 8, 5, 7, 6 };
  guint order[10];

  for (gsize i = 0; i < G_N_ELEMENTS (designs); i++)
    {
      g_auto (GStrv) rows = g_strsplit (designs[i].rows, " ", -1);

      g_assert_cmpuint (g_strv_length (rows), ==, tr_williams_count (designs[i].n));
      for (guint row = 0; row < tr_williams_count (designs[i].n); row++)
        {
          char text[8] = "";

          tr_williams_get (designs[i].n, row, order);
          for (guint k = 0; k < designs[i].n; k++)
            text[k] = (char) ('1' + order[k]);
          if (!g_strv_contains ((const char *const *) rows, text))
            g_error ("%u samples: %s is not in the printed design", designs[i].n, text);
        }
    }
  tr_williams_get (10, 0, order);
  for (guint k = 0; k < 10; k++)
    g_assert_cmpuint (order[k] + 1, ==, ten[k]);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/reference/tasting/ranking-example-of-the-standard", test_iso_example);
  g_test_add_func ("/reference/tasting/friedman-critical-values", test_friedman_criticals);
  g_test_add_func ("/reference/tasting/friedman-tails", test_friedman_tails);
  g_test_add_func ("/reference/tasting/two-tasters-three-samples-prove-nothing", test_two_tasters_three_samples);
  g_test_add_func ("/reference/tasting/two-samples-are-the-sign-test", test_two_samples);
  g_test_add_func ("/reference/tasting/chance", test_chance);
  g_test_add_func ("/reference/tasting/spearman", test_spearman);
  g_test_add_func ("/reference/tasting/page", test_page);
  g_test_add_func ("/reference/tasting/printed-designs", test_williams);

  return g_test_run ();
}
