/* readings-private.h: what the sources of the readings share
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "readings.h"

G_BEGIN_DECLS

typedef struct { double low, high; const char *source; } TrUsual;

#define TR_COMMON_PRACTICE "common practice"

/* Fills in value, where, at and name of a reading whose numbers are NaN. */
typedef void (*TrRead) (const TrDoughFigures *figures,
                        TrSide                side,
                        TrReading            *reading);

/* readings.c */
/* The index of a pair of tables: leavened, and puff. */
guint    tr_reading_is_puff      (const TrDoughFigures *figures);
void     tr_reading_hold_against (TrReading            *reading,
                                  const TrUsual        *usual);
/* Whether `value` is further out on that side than what was seen before (NaN: nothing yet). */
gboolean tr_reading_is_worse     (double                value,
                                  double                before,
                                  TrSide                side);

/* readings-method.c */
void tr_read_proof_c        (const TrDoughFigures *figures,
                             TrSide                side,
                             TrReading            *reading);
void tr_read_proof_of_fat_c (const TrDoughFigures *figures,
                             TrSide                side,
                             TrReading            *reading);
void tr_read_proof_minutes  (const TrDoughFigures *figures,
                             TrSide                side,
                             TrReading            *reading);
void tr_read_bulk_minutes   (const TrDoughFigures *figures,
                             TrSide                side,
                             TrReading            *reading);
void tr_read_mixed_c        (const TrDoughFigures *figures,
                             TrSide                side,
                             TrReading            *reading);
void tr_read_bake_c         (const TrDoughFigures *figures,
                             TrSide                side,
                             TrReading            *reading);
void tr_read_bake_minutes   (const TrDoughFigures *figures,
                             TrSide                side,
                             TrReading            *reading);
void tr_read_room_c         (const TrDoughFigures *figures,
                             TrSide                side,
                             TrReading            *reading);
void tr_read_core_c         (const TrDoughFigures *figures,
                             TrSide                side,
                             TrReading            *reading);
void tr_read_window_minutes (const TrDoughFigures *figures,
                             TrSide                side,
                             TrReading            *reading);
void tr_read_rest_minutes   (const TrDoughFigures *figures,
                             TrSide                side,
                             TrReading            *reading);

G_END_DECLS
