/* score-table.h: what one taster says of every sample, in the order of tasting
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Samples go by their code; where there are no codes yet, by name. Marks,
 * balance, faults and notes are committed as they are typed; the first mark of
 * a tasting locks the prediction. Stands in a page.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_SCORE_TABLE (tr_score_table_get_type ())
G_DECLARE_FINAL_TYPE (TrScoreTable, tr_score_table, TR, SCORE_TABLE, GtkWidget)

GtkWidget *tr_score_table_new        (void);
/* By id; NULL: none, and nothing is shown. */
void       tr_score_table_set_taster (TrScoreTable *self,
                                      const char   *taster);
void       tr_score_table_refresh    (TrScoreTable *self);
/* The first cell that is still empty, else the first of all. */
gboolean   tr_score_table_focus      (TrScoreTable *self);

G_END_DECLS
