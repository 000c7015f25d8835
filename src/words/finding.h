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
} TrSaid;

gboolean tr_said_is_over         (const TrSaid *said);       /* the value passes the upper end */
char    *tr_said_percent_trimmed (const TrSaid *said, double percent, int max_decimals);   /* "80 %", "2.5 %" */

/* finding-formula.c */
char *tr_sentence_no_flour (const TrSaid *said);
char *tr_sentence_not_weighed (const TrSaid *said);
char *tr_sentence_amount (const TrSaid *said);
char *tr_sentence_salt (const TrSaid *said);
char *tr_sentence_band (const TrSaid *said);
char *tr_sentence_butter_legal (const TrSaid *said);
char *tr_sentence_legal_minimum (const TrSaid *said);
char *tr_sentence_spoon (const TrSaid *said);
char *tr_sentence_cold_chain (const TrSaid *said);
char *tr_sentence_allergens (const TrSaid *said);

/* finding-time.c. Findings about rests and loads. Their finding holds:
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
char *tr_sentence_rest_short   (const TrSaid *said);
char *tr_sentence_window_short (const TrSaid *said);
char *tr_sentence_freezing     (const TrSaid *said);
char *tr_sentence_loads        (const TrSaid *said);

G_END_DECLS
