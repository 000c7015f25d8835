/* turn-row.h: one turn, edited in place
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How far it is rolled, how it is folded, how it rests; beside that what
 * becomes of the block, drawn and in numbers, and what the bench cannot do.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_TURN_ROW (tr_turn_row_get_type ())
G_DECLARE_FINAL_TYPE (TrTurnRow, tr_turn_row, TR, TURN_ROW, GtkListBoxRow)

GtkWidget *tr_turn_row_new     (void);
void       tr_turn_row_set_item (TrTurnRow *self,
                                guint      item);
guint      tr_turn_row_get_item (TrTurnRow *self);
/* Shows the turn of its page. */
void       tr_turn_row_refresh (TrTurnRow *self);

/* What the fields of a rest say the same everywhere: of a turn, before the lock-in. */
char      *tr_dup_place_name   (guint      value);
char      *tr_dup_on_name      (guint      value);

G_END_DECLS
