/* sequence-row.h: one list of folds that was found
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "../calc/search.h"
#include "../words/words.h"

G_BEGIN_DECLS

#define TR_TYPE_SEQUENCE_ROW (tr_sequence_row_get_type ())
G_DECLARE_FINAL_TYPE (TrSequenceRow, tr_sequence_row, TR, SEQUENCE_ROW, GtkWidget)

/* Signal "used": its button was pressed. */
GtkWidget *tr_sequence_row_new  (void);
/* `sequence` stays the caller's and is there until the next time. */
void       tr_sequence_row_show (TrSequenceRow        *self,
                                 const TrDoughFigures *figures,
                                 const TrSequence     *sequence,
                                 const TrReader       *reader);

G_END_DECLS
