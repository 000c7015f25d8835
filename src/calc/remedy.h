/* remedy.h: what would bring a reading back, as an edit of the dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One change at a time, so that the next tasting can tell what it did. The
 * target is a round value just inside what is usual: whole °C, 5 minutes of a
 * rise or a rest, 1 minute of a bake, half a millimetre. What cannot be brought
 * inside has no remedy, and neither has what is not the dough's: the room, or
 * how fast the hands are.
 */

#pragma once

#include "readings.h"

G_BEGIN_DECLS

typedef enum {
  TR_REMEDY_NONE,
  TR_REMEDY_PROOF_C,             /* target: °C */
  TR_REMEDY_PROOF_MINUTES,
  TR_REMEDY_BULK_MINUTES,
  TR_REMEDY_MIXED_C,
  TR_REMEDY_BAKE_C,
  TR_REMEDY_BAKE_MINUTES,
  TR_REMEDY_REST_MINUTES,        /* turn: after it, from 1 */
  TR_REMEDY_TURN_MM,             /* target: rolled thickness; turn, from 1 */
  TR_REMEDY_SHEET_MM,
  TR_REMEDY_FOLD,                /* target: the count; turn, from 1 */
  TR_REMEDY_DROP_TURN,           /* turn, from 1 */
  TR_REMEDY_ADD_TURN,            /* target: the count; turn: its number when added */
  TR_REMEDY_RATIO,               /* ratio; target: percent; adds_line: there is nothing to move yet */
  TR_N_REMEDIES
} TrRemedyKind;

typedef struct {
  TrRemedyKind kind;
  TrSide side;                   /* on which it was out: over makes it less */
  double target;
  guint turn;
  TrRatio ratio;
  gboolean adds_line;
} TrRemedy;

/* FALSE, and TR_REMEDY_NONE: there is none. `reading` passes that side. */
gboolean tr_remedy_find  (const TrDoughFigures *figures,
                          const TrReading      *reading,
                          TrSide                side,
                          TrRemedy             *remedy);
/* Writes to `dough`, which is owned and has what `figures` were computed from.
 * FALSE with a sentence: nothing was written. */
gboolean tr_remedy_apply (TrDough              *dough,
                          const TrDoughFigures *figures,
                          const TrRemedy       *remedy,
                          GError              **error);

G_END_DECLS
