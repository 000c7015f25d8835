/* scatter.h: doughs as points by any two figures, or by their scores
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A plane (plane.h) whose points go by their letters and names. Values stand
 * in the reader's units.
 */

#pragma once

#include "../calc/comparison.h"
#include "plane.h"

G_BEGIN_DECLS

typedef struct {
  const TrFigures *figures;
  const guint *doughs;           /* indices of those that are shown */
  guint n_doughs;
  const TrComparable *across, *up;   /* NULL: the mean scores */
  const double *scores;          /* mean score of every dough of the trial, NaN: none; NULL: nobody tasted */
  int current;                   /* index of a dough; -1: none */
} TrScatter;

/* Points are hit as TR_PART_OF_POINT by their place in `doughs`. */
TrPicture *tr_scatter_picture_new (const TrScatter *scatter,
                                   const TrReader  *reader,
                                   const TrLook    *look,
                                   double           width,
                                   double           height);

G_END_DECLS
