/* tasting.h: what a blind tasting shows
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The names are the report's keys. A taster's score of a dough is the mean of
 * the three marks; without all three it is none. Who has not scored every
 * sample is left out of everything. What cannot be said is NaN, and `gap` or
 * the prediction's says why. Immutable; may be made on another thread, as
 * exact probabilities take their time.
 */

#pragma once

#include "figures.h"
#include "ranks.h"

G_BEGIN_DECLS

/* Why something is missing. */
typedef enum {
  TR_TASTING_NOTHING_MISSING,
  TR_TASTING_NO_SAMPLE,          /* no dough has a code, and none a full score */
  TR_TASTING_NOT_TASTED,         /* `not_tasted` has a code, and nobody's full score */
  TR_TASTING_NOBODY_COMPLETE,    /* no taster scored all samples in full */
  TR_TASTING_ONE_SAMPLE,
  TR_TASTING_ONE_TASTER,         /* ranks, but no agreement to look for */
  TR_TASTING_ALL_EQUAL,          /* no taster told one sample from another */
} TrTastingGap;

typedef enum {
  TR_PREDICTION_NOTHING_MISSING,
  TR_PREDICTION_NONE,            /* nothing is predicted */
  TR_PREDICTION_NOT_ALL,         /* `unpredicted` is a sample and has no place in it */
  TR_PREDICTION_NO_RESULT,       /* there is no order to hold it against */
} TrPredictionGap;

typedef struct {
  TrPredictionGap gap;
  int unpredicted;               /* dough; -1: none */
  guint *order;                  /* samples, best first; NULL: there is a gap */
  TrCorrelation spearman, kendall;
  TrPageTest page;
  gboolean exact;                /* all three */
} TrPredictionFigures;

typedef struct {
  const char *figure;            /* key of comparison.h */
  TrCorrelation spearman;        /* + : more of it, higher score */
} TrFollower;

typedef struct {
  TrTrial *trial;                /* what it was computed from */
  TrTastingGap gap;
  int not_tasted;                /* dough; -1: none */
  GPtrArray *tasters;            /* TrTaster, kept; borrowed from the trial */
  GPtrArray *left_out;           /* TrTaster */
  guint n_samples;
  guint *samples;                /* dough by sample, in document order */
  /* NULL where nobody is kept: */
  double *scores, *ranks;        /* of taster t and sample s at [t * n_samples + s]; rank 1 is best */
  double *rank_sums, *mean_score;    /* by sample */
  guint *order;                  /* samples, best first */
  TrFriedman friedman;
  double least_significant_difference;   /* only where the tasters agree: p ≤ 0.05 */
  TrPredictionFigures prediction;
  GArray *follows;               /* TrFollower */
} TrTastingFigures;

/* The tasters agree better than chance would have it, at most this often. */
#define TR_SIGNIFICANT_P 0.05

/* NULL: nobody scored anything, or it is no longer wanted. */
TrTastingFigures *tr_tasting_compute      (const TrFigures        *figures,
                                           const TrWatch          *watch);
/* By dough of the trial, NaN: no sample; NULL: nobody scored every sample. Costs
 * no probabilities. */
double           *tr_tasting_dup_mean_scores (const TrFigures     *figures);
void              tr_tasting_figures_free (TrTastingFigures       *tasting);

/* Of so many figures that were tried, how many would line up perfectly by chance. */
double            tr_tasting_count_chance (const TrTastingFigures *tasting);
/* Of one taster's prediction that comes out perfectly, two-sided. */
double            tr_tasting_perfect_p    (guint                   n_samples);
/* What followed most first; (element-type TrFollower) (transfer full). */
GArray *tr_tasting_sort_followers (const TrTastingFigures *tasting);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrTastingFigures, tr_tasting_figures_free)

G_END_DECLS
