/* sequence.h: the whole sequence as a strip, to one scale
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lock-in, then what every turn rolls out and folds, then the sheet:
 *
 *   Lock-in     Roll 1         Fold 3      Roll 2            Fold 4       Sheet
 *   +----+      +---------+    +---+       +------------+    +---+        +------+
 *   |    |  ->  |  <--->  | -> |===|  ->   |  <------>  | -> |===|   ->   |      |
 *   +----+      +---------+    +---+       +------------+    +---+        +------+
 *
 * each in plan on a piece of the worktop, all to one scale, in as many rows
 * as it needs. Between them stand the arrow, the quarter turn and the rest.
 *
 * What lies there: TR_PART_OF_LOCK_IN; TR_PART_OF_TURN (all of a turn, its
 * words too), on it TR_PART_OF_ROLL and TR_PART_OF_FOLD, with the turn as
 * index; TR_PART_OF_EDGE, the far edge of a rolled sheet; TR_PART_OF_ADD, a
 * place where a turn can be put in, with the index that it would get;
 * TR_PART_OF_SHEET; TR_PART_OF_WORKTOP, with the group as index: 0 behind the
 * lock-in, then the turns, then the sheet.
 */

#pragma once

#include "shapes.h"

G_BEGIN_DECLS

/* How it is laid out for a width. */
typedef struct {
  double scale;                  /* units a millimetre */
  guint32 starts;                /* bit i: group i (0 the lock-in, then the turns, then the sheet) starts a row */
  guint n_rows;
  double height;                 /* what it needs */
} TrSequencePlan;

typedef struct {
  TrHit selected;                /* TURN, LOCK_IN or SHEET; NOTHING: none */
  int drop_at;                   /* where a turn that is dragged would come, 0 to the number of turns; -1: none */
  gboolean can_edit;             /* shows what can be grabbed and where turns can be put in, unless the look is still */
  gboolean is_mirrored;          /* reads from right to left */
  const TrSequencePlan *held;    /* NULL: laid out for the width; else its rows, and its scale where that fits */
} TrSequenceMarks;

void       tr_sequence_plan        (const TrDoughFigures  *figures,
                                    const TrSequenceMarks *marks,
                                    const TrReader        *reader,
                                    const TrLook          *look,
                                    double                 width,
                                    TrSequencePlan        *plan);
TrPicture *tr_sequence_picture_new (const TrDoughFigures  *figures,
                                    const TrSequenceMarks *marks,
                                    const TrReader        *reader,
                                    const TrLook          *look,
                                    double                 width,
                                    double                 height);

G_END_DECLS
