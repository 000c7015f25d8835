/* differences.h: what was written otherwise in one dough than in another
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is in the file and changes the bread: not the name, the notes or the
 * log. Lines are found again by stage and ingredient, steps by what they are,
 * turns from both ends; a change of order alone is no difference of a line.
 */

#pragma once

#include "written.h"

G_BEGIN_DECLS

/* What the number, word or text is of. */
typedef enum {
  TR_PART_OF_DOUGH_ITSELF, TR_PART_OF_LINE, TR_PART_OF_LOCKING_IN, TR_PART_OF_CHILL, TR_PART_OF_ONE_TURN,
  TR_PART_OF_REST, TR_PART_OF_CUT, TR_PART_OF_METHOD, TR_PART_OF_STEP, TR_N_DOUGH_PARTS
} TrDoughPart;

/* How it is measured, or which enumeration the number is of. */
typedef enum {
  TR_DIFFERS_IN_NUMBER, TR_DIFFERS_IN_COUNT, TR_DIFFERS_IN_G, TR_DIFFERS_IN_MM, TR_DIFFERS_IN_C, TR_DIFFERS_IN_WARMING_C,
  TR_DIFFERS_IN_MINUTES, TR_DIFFERS_IN_PERCENT, TR_DIFFERS_IN_G_ML, TR_DIFFERS_IN_FLAG, TR_DIFFERS_IN_KIND, TR_DIFFERS_IN_BATCH,
  TR_DIFFERS_IN_STYLE, TR_DIFFERS_IN_PLACE, TR_DIFFERS_IN_ON, TR_DIFFERS_IN_SHAPE, TR_DIFFERS_IN_FOLD,
  TR_DIFFERS_IN_TEXT,               /* an amount, an ingredient's id, a line as it was read */
  TR_N_DIFFERS_IN
} TrDiffersIn;

typedef enum { TR_DIFFERENCE_CHANGED, TR_DIFFERENCE_ADDED, TR_DIFFERENCE_REMOVED } TrDifferenceKind;

typedef struct {
  TrDifferenceKind kind;
  TrDoughPart part;
  int index;                     /* of the line, turn or step where it stands (removed: stood); -1: none */
  int what;                      /* of a line the TrStage, of a step the TrStepId, of a turn the fold */
  const char *member;            /* as in the document; NULL: the whole was added or removed */
  TrDiffersIn measure;
  double was, is;                /* numbers and enumerations; NaN: not written */
  char *text_was, *text_is;      /* texts; of a whole line the amount; NULL: not written */
  char *ingredient;              /* of a line, its id as it is now, else as it was; NULL: not known */
  char *where;                   /* JSON Pointer inside the dough it stands in */
} TrDifference;

/* (element-type TrDifference): in the order of the document, but how much is
 * made and lost comes last. */
GPtrArray *tr_dough_differences (const TrDough *was,
                                 const TrDough *is);
void       tr_difference_free   (TrDifference  *difference);

G_END_DECLS
