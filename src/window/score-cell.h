/* score-cell.h: one mark, typed as it is read aloud
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One or two characters: "7" for a mark from 1 to 9, "0", "1", "+1" or "-2" for
 * a balance around just right. What is complete is given out at once and the
 * next cell is asked for, so that a row is typed without any other key.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TR_TYPE_SCORE_CELL (tr_score_cell_get_type ())
G_DECLARE_FINAL_TYPE (TrScoreCell, tr_score_cell, TR, SCORE_CELL, GtkWidget)

/* What stands in an empty cell. */
#define TR_SCORE_NONE G_MININT

/* Signals: "given" (int: the value, TR_SCORE_NONE when it was taken out),
 * "refused" (text: what cannot be a mark), "leave" (GtkDirectionType: which way). */
GtkWidget *tr_score_cell_new       (gboolean     is_balance,
                                    const char  *accessible_name);
void       tr_score_cell_set_value (TrScoreCell *self,
                                    int          value);
int        tr_score_cell_get_value (TrScoreCell *self);

G_END_DECLS
