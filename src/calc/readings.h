/* readings.h: what a dough's own figures show against what is usual
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A reading is one number of this dough and the ends it is held against. It
 * says nothing of what follows when an end is passed: that is causes.h's.
 *
 * What was logged counts before what is written: the last of its kind.
 *
 * Where the usual range hangs on something else (a proof of so many minutes on
 * how warm it is), the ends are those for this dough, and `at` says what they
 * were worked out for. An end that is not known is NaN and is never passed.
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

/* By id: value; at; name. What is not named is NaN, or NULL. */
typedef enum {
  TR_READING_PROOF_C,            /* of the warmest proof, of the coolest when looking for little */
  TR_READING_PROOF_OF_FAT_C,     /* the warmest proof, against what the fat bears; name: the fat */
  TR_READING_PROOF_MINUTES,      /* all proofs; at: °C of the longest */
  TR_READING_BULK_MINUTES,       /* at: °C */
  TR_READING_MIXED_C,            /* the dough as mixed */
  TR_READING_ROOM_C,             /* the bench's room against the fat's softening, while no window is known; name: the fat */
  TR_READING_REST_MINUTES,       /* the shortest after a turn; at: the turn, from 1 */
  TR_READING_CORE_C,             /* the warmest core after a rest, against the fat's softening; at: the turn, from 1; name */
  TR_READING_WINDOW_MINUTES,     /* in which the fat can be rolled, against what the turn takes; at: the turn, 0 the sheet */
  TR_READING_BAKE_C,
  TR_READING_BAKE_MINUTES,       /* at: grams of the raw piece */
  TR_READING_SHEET_MM,           /* relaxed thickness */
  TR_READING_STRETCH,            /* the greatest in one go; at: the turn, 0 the sheet */
  TR_READING_FAT_LAYERS,
  TR_READING_FAT_LAYER_UM,
  TR_READING_ALL_WATER,          /* percents, as the formula has them ... */
  TR_READING_ROLL_IN,
  TR_READING_YEAST,
  TR_READING_SALT,
  TR_READING_SUGAR,
  TR_READING_SALT_MIDDLE,        /* ... against the middle of the band, while inside it and off it; at: the band's width */
  TR_READING_SUGAR_MIDDLE,
  TR_READING_SALTED_FAT,         /* points of salt that the fat brings; name: the fat */
  TR_N_READINGS
} TrReadingId;

typedef enum { TR_SIDE_UNDER, TR_SIDE_OVER, TR_N_SIDES } TrSide;

typedef struct {
  TrReadingId id;
  double value;
  double low, high;              /* what is usual */
  double at;
  gboolean is_logged;            /* what really happened, and not what is written to be done */
  char *where;                   /* JSON Pointer inside the dough, or "/bench/…" */
  char *name;                    /* an ingredient's id */
  const char *source;            /* static; of the ends */
} TrReading;

/* Where there are several (turns, rests, proofs) that which is worst on this
 * side. FALSE: this dough has no such number; `reading` is then cleared. */
gboolean    tr_reading_get    (const TrDoughFigures *figures,
                               TrReadingId           id,
                               TrSide                side,
                               TrReading            *reading);
void        tr_reading_clear  (TrReading            *reading);
void        tr_reading_copy   (const TrReading      *reading,
                               TrReading            *copy);
/* That end of what is usual; NaN: none. */
double      tr_reading_get_limit (const TrReading   *reading,
                                  TrSide             side);
/* Whether the number lies beyond that end. */
gboolean    tr_reading_passes (const TrReading      *reading,
                               TrSide                side);
/* The ratio that a reading is of; -1: of none. */
int         tr_reading_get_ratio (TrReadingId        id);

G_END_DECLS
