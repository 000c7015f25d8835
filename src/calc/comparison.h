/* comparison.h: the figures by which doughs are held against one another
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One table of them, in groups. A key is the report's; where the report has it
 * in an object of a section, that stands before it with a dot
 * ("per_100g_raw.fat_g", "fat_layer_um.max"). None says that more of it is
 * better. Grams of the batch are not among them: they say how much was made,
 * not what. A prediction may still be written by one of them, so that they are
 * found by their keys, in a group of their own.
 *
 * Times are of what is written: the steps of the method, the turns and the
 * rests at their shortest. Hands are wanted for mixing, fat block, lock-in,
 * turns, rolling out, cutting, shaping and finishing. The whole goes from the
 * first mixing until the last load has cooled, one thing after the other; the
 * fat block is made meanwhile.
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

typedef enum {
  TR_GROUP_PIECE, TR_GROUP_PER_100G, TR_GROUP_FLOUR, TR_GROUP_LAMINATION, TR_GROUP_SHEET, TR_GROUP_TIME, TR_GROUP_COST,
  TR_GROUP_BATCH,                /* found by its key only */
  TR_N_GROUPS
} TrFigureGroup;

typedef enum {
  TR_MEASURE_COUNT, TR_MEASURE_MASS_G, TR_MEASURE_ENERGY_KJ, TR_MEASURE_ENERGY_KCAL, TR_MEASURE_PERCENT, TR_MEASURE_SHARE,
  TR_MEASURE_TIMES, TR_MEASURE_THICKNESS_UM, TR_MEASURE_LENGTH_MM, TR_MEASURE_MINUTES, TR_MEASURE_MONEY, TR_N_MEASURES
} TrMeasure;

typedef struct _TrComparable TrComparable;
struct _TrComparable
{
  const char *key;
  TrFigureGroup group;
  TrMeasure measure;
  guint8 decimals;               /* worth reading, in the measure's own unit */
  /* For comparison.c only. */
  guint8 needs;
  gsize offset;
  double (*get) (const TrDoughFigures *figures);
};

/* Those that are offered, group by group. */
const TrComparable *tr_comparables_get_all    (guint                *n);
/* Also of the batch. NULL: there is none of that key. */
const TrComparable *tr_comparable_find        (const char           *key);
/* NaN: not known. */
double              tr_comparable_get         (const TrComparable   *comparable,
                                               const TrDoughFigures *figures);
/* What is usual for doughs of its kind. FALSE: nothing is. */
gboolean            tr_comparable_get_band    (const TrComparable   *comparable,
                                               const TrDoughFigures *figures,
                                               TrBand               *band);

/* How far the doughs of a row lie apart. */
typedef struct {
  guint n_known;
  double min, max;               /* NaN: none is known */
  double relative;               /* of the mean of their magnitudes: (max − min)/mean; 0 where all are 0; NaN: less than two known */
  gboolean is_equal;             /* all known, and the same but for rounding */
} TrSpread;

void                tr_spread_find            (const double         *values,
                                               guint                 n,
                                               TrSpread             *spread);
/* Likewise over those doughs (indices). */
void                tr_comparable_get_spread  (const TrComparable   *comparable,
                                               const TrFigures      *figures,
                                               const guint          *doughs,
                                               guint                 n_doughs,
                                               TrSpread             *spread);

/* The doughs in the order of a figure: the most first, then as they stand in
 * the document; not known last. */
void                tr_comparable_sort        (const TrComparable   *comparable,
                                               const TrFigures      *figures,
                                               guint                *doughs,
                                               guint                 n_doughs);

G_END_DECLS
