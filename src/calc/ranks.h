/* ranks.h: places, and how likely such places are by chance
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Ranks start at 1 and tied values share the middle of theirs (mid-ranks), so
 * that twice a rank is a whole number. Probabilities are conditional on the
 * ties that are there: exact ones count what would be as far out or further if
 * everybody had shuffled the same ranks.
 *
 * ISO 8587:2006 (ranking), Friedman 1937, Kendall 1938, Page 1963, Spearman 1904.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Scores nearer than this are the same. */
#define TR_SCORE_HAIR 1e-9
/* Up to so many samples correlations are enumerated, Page's L likewise. */
#define TR_EXACT_PAIRS 9
#define TR_EXACT_PAGE 8

/* Long work asks now and then whether it is still wanted, and tells how far
 * it is, 0 to 1. Both may be NULL, and so may the whole. */
typedef struct {
  gboolean (*is_cancelled) (gpointer data);
  void (*progressed) (gpointer data,
                      double   share);
  gpointer data;
} TrWatch;

gboolean tr_watch_is_cancelled (const TrWatch *watch);
void     tr_watch_progress     (const TrWatch *watch,
                                double         share);

/* The least value has rank 1. Values that differ by at most `hair` tie. */
void     tr_ranks_of           (const double  *values,
                                guint          n,
                                double         hair,
                                double        *ranks);

typedef struct {
  double coefficient;            /* NaN: everything on one side ties, or fewer than two */
  double p;                      /* two-sided */
  double least_p;                /* the smallest that these ties allow */
  gboolean is_exact;
} TrCorrelation;

/* Of two lists of ranks. Spearman's is Pearson's of the ranks, Kendall's tau-b. */
void     tr_ranks_spearman     (const double  *a,
                                const double  *b,
                                guint          n,
                                TrCorrelation *correlation);
void     tr_ranks_kendall      (const double  *a,
                                const double  *b,
                                guint          n,
                                TrCorrelation *correlation);

/* Ranks taster by taster: taster t gave sample s ranks[t * n_samples + s]. */
typedef struct {
  const double *ranks;
  guint n_tasters, n_samples;
} TrRankTable;

typedef struct {
  double f;                      /* tie-corrected; NaN: everything ties, or fewer than two tasters or samples */
  double p;
  double kendall_w;
  gboolean is_exact;
} TrFriedman;

/* Whether the probability is enumerated for that size. */
gboolean tr_friedman_is_exact  (guint              n_tasters,
                                guint              n_samples);
/* FALSE: no longer wanted. */
gboolean tr_ranks_friedman     (const TrRankTable *table,
                                const TrWatch     *watch,
                                TrFriedman        *friedman);

typedef struct { double l, p; gboolean is_exact; } TrPageTest;

/* L = 1·R(first) + 2·R(second) + …, `order` best first. */
void     tr_ranks_page         (const TrRankTable *table,
                                const guint       *order,
                                TrPageTest            *page);

/* Rank sums further apart than this differ, at 5 %. */
double   tr_ranks_least_difference (guint          n_tasters,
                                    guint          n_samples);

/* P (chi-squared with `df` degrees of freedom ≥ x) and P (standard normal ≥ z). */
double   tr_chance_chi_squared (double         x,
                                guint          df);
double   tr_chance_normal      (double         z);

G_END_DECLS
