/* search.h: which folds give the wanted layers on this bench
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every set of folds on every kind of stack is looked at, in each of its
 * orders. Half, gate and envelope make one stack, listed under the dough's own
 * style if it is one of them, else as half. Every roll-out goes to the thickness of
 * the dough's last turn (none: 8 mm) with the width kept; every fold costs the
 * bench's turn and is followed by the dough's shortest rest (none: 45 minutes).
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

#define TR_SEARCH_MAX_TURNS 6
#define TR_SEARCH_MAX_FOLD 6
#define TR_SEARCH_KEPT 200
#define TR_SEARCH_MAX_BLOCKS 12

typedef struct {
  gboolean by_um;                /* the wish is a thickness of the fat layers, else their number */
  TrRange wish;                  /* both ends are in it */
  guint max_turns, max_fold;     /* 1 to 6; 2 to 6 */
  double max_minutes;            /* turns and rests together; NaN: any */
} TrSearch;

void       tr_search_init        (TrSearch *search);     /* one layer or more, 4 turns, folds to 4 */

typedef struct {
  TrStyle style;
  guint n_folds;
  guint8 folds[TR_SEARCH_MAX_TURNS];    /* in the best order */
  GArray *orders;                /* guint8[TR_SEARCH_MAX_TURNS]: the others, better ones first */
  double fat_layers, fat_layer_um;      /* inverse: an inner one; NaN: no cut */
  double longest_mm, worst_stretch;
  int blocks;
  guint rests;
  double hands_minutes, minutes;
  TrBreaks breaks;               /* fits = none */
  /* Not in the report: */
  double thickness_mm;           /* of every roll-out */
} TrSequence;

/* (element-type TrSequence): the best first, at most TR_SEARCH_KEPT. Inside the
 * wish all are equal: what fits, then a worst stretch of at most 4, fewer turns,
 * fewer folds of 2 or over 4, less time, shorter, style, folds. Where nothing fits,
 * they are those of the fewest blocks with which something does. Empty: nothing
 * is in the wish, or the sizes are not known. */
GPtrArray *tr_search_sequences   (const TrDoughFigures *figures,
                                  const TrSearch       *search);
void       tr_sequence_free      (TrSequence           *sequence);
/* What is written in `dough` (a draft's) then says that sequence; rests and minutes of
 * the turns there are stay, further turns take those of the last. */
void       tr_sequence_apply     (const TrSequence     *sequence,
                                  TrDough              *dough);
/* It stands there already. */
gboolean   tr_sequence_is_of     (const TrSequence     *sequence,
                                  const TrDough        *dough);

G_END_DECLS
