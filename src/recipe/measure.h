/* measure.h: how much a line of a recipe says
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "words.h"

G_BEGIN_DECLS

/* In the order in which they win: a mass over a volume, grams over ounces. */
typedef enum {
  TR_MEASURE_NONE,               /* no amount stands there */
  TR_MEASURE_MASS, TR_MEASURE_IMPERIAL_MASS, TR_MEASURE_METRIC_VOLUME, TR_MEASURE_MEASURE, TR_MEASURE_COUNT,
  TR_MEASURE_PERCENT, TR_MEASURE_VAGUE, TR_MEASURE_CONTAINER, TR_MEASURE_BARE
} TrMeasureKind;

typedef struct {
  TrMeasureKind kind;
  char amount[96];               /* in the document's syntax; as written where it cannot be weighed */
  double number;                 /* NaN: cannot be read */
  double readings[2];            /* of an ambiguous number */
  TrUnit unit;                   /* of the first part, where there is one */
  TrUnit counts;                 /* the egg that was counted, also where its weight stands beside; else TR_N_UNITS */
  gboolean is_range, is_bad;
  const TrWordEntry *size;       /* large, heaped */
  const TrWordEntry *word;       /* the vague or odd unit */
} TrMeasure;

/* Reads one measure with its further parts (1 lb 2 oz) at token `at`. */
gboolean tr_measure_read       (const TrTokens *tokens, guint at, guint end, guint *next, TrMeasure *measure);
/* With what follows in brackets or after a slash: the best of them wins.
 * `disagrees` is set when two masses say different things. */
gboolean tr_measure_read_group (const TrTokens *tokens, guint at, guint end, guint *next, TrMeasure *measure,
                                gboolean *disagrees);
/* A bracket that holds measures and nothing else; `next` is after it. */
gboolean tr_measure_read_bracket (const TrTokens *tokens, guint at, guint end, guint *next, TrMeasure *measure);
gboolean tr_measure_is_better  (const TrMeasure *a, const TrMeasure *b);
gboolean tr_measure_masses_disagree (const TrMeasure *a, const TrMeasure *b);
/* `number` of the measure's unit, as an amount. */
void     tr_measure_scale      (TrMeasure *measure, double factor);
char    *tr_measure_dup_scaled (const TrMeasure *measure, double factor);

G_END_DECLS
