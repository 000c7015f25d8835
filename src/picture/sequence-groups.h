/* sequence-groups.h: what stands in the strip, and where
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A group is what stays in one row: the lock-in, a turn (its roll-out and its
 * fold), the sheet. The last group is the sheet, or without a cut an empty one
 * that only ends the strip. Shared by sequence.c, which draws it, and
 * sequence-groups.c, which makes it and lays it out.
 */

#pragma once

#include "sequence.h"

G_BEGIN_DECLS

#define TR_MAX_GROUPS (TR_MAX_TURNS + 2)

/* One drawing with its words. */
typedef struct {
  TrHit hit;
  TrSize size;                   /* as it is drawn: a sheet with its longer side along; NaN: not known */
  double worktop_mm;             /* the worktop's length in the direction that is rolled */
  double length_mm;              /* how much of it the column shows */
  char *title, *plan, *thick;
  double text_width;
  double x, width;
} TrSequenceColumn;

typedef struct {
  TrHit hit;                     /* of the whole */
  TrSequenceColumn columns[2];
  guint n_columns;
  char *rest;                    /* before it; NULL: none */
  char *faults;                  /* what breaks a limit; NULL: nothing does */
  char *timing;                  /* the rest before it is too short, the fat soft before it is rolled; NULL: neither */
  gboolean is_rest_short;
  gboolean after_turn;           /* a quarter turn comes before it */
  double gap;                    /* before it, with the arrow */
  double x, width;               /* without the gap */
  double top, height;            /* of its row */
} TrSequenceGroup;

typedef struct {
  const TrDoughFigures *figures;
  const TrReader *reader;
  const TrLook *look;
  double em;                     /* the size of its words */
  double across_mm;              /* what a row shows of the worktop's width */
  TrSequenceGroup groups[TR_MAX_GROUPS];
  guint n_groups;
} TrSequence;

gboolean tr_size_is_drawable     (const TrSize          *size);
/* Where the words of one group are wider than `width`, they are made smaller. */
void     tr_sequence_init        (TrSequence            *self,
                                  const TrDoughFigures  *figures,
                                  const TrReader        *reader,
                                  const TrLook          *look,
                                  double                 width);
void     tr_sequence_clear       (TrSequence            *self);
/* All that is to be looked at, in words. NULL: nothing. */
char    *tr_sequence_group_dup_faults (const TrSequenceGroup *group);
/* How many lines of them there is room for. */
guint    tr_sequence_group_count_lines (const TrSequenceGroup *group);
/* The best plan of this width, or `held` as far as it fits. `height` 0: as high as it likes. */
void     tr_sequence_find_plan   (const TrSequence      *self,
                                  double                 width,
                                  double                 height,
                                  const TrSequencePlan  *held,
                                  TrSequencePlan        *plan);
/* Gives every group and column its place. */
void     tr_sequence_lay_out     (TrSequence            *self,
                                  const TrSequencePlan  *plan);
/* Between a roll-out and its fold. */
#define TR_SEQUENCE_INNER_GAP 1.7

G_END_DECLS
