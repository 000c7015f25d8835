/* finding.h: what a sentence about a finding is made from
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "say.h"

G_BEGIN_DECLS

typedef struct {
  const TrReader *reader;
  const TrDoughFigures *figures;
  const TrFinding *finding;
  const char *name;              /* the ingredient's name when finding->name is its id */
  int turn;                      /* finding->with[0] as a turn; 0: the sheet */
} Said;

/* Findings about rests and loads. Their finding holds:
 *
 * rest-short    value: core °C after the written rest; limit: the written target °C;
 *               with[0] TURN (0: the chill before lock-in); with[1] minutes written;
 *               with[2] minutes to the target, NaN: never
 * window-short  value: minutes in which the fat can be rolled; limit: the turn's
 *               minutes; with[0] TURN (0: the sheet)
 * freezing      value: minutes written; limit: minutes to surface freezing; with[0] TURN
 * loads         value: minutes the last load proofs; limit: the longest proof;
 *               with[0] loads
 */
char *tr_sentence_rest_short   (const Said *said);
char *tr_sentence_window_short (const Said *said);
char *tr_sentence_freezing     (const Said *said);
char *tr_sentence_loads        (const Said *said);

G_END_DECLS
