/* balance-row.h: one ratio: name, scale, number, and what moves
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Finds its page by its ancestors, as a field does. A drag is one undo step
 * and Escape takes it back.
 */

#pragma once

#include <gtk/gtk.h>

#include "../calc/balance.h"

G_BEGIN_DECLS

#define TR_TYPE_BALANCE_ROW (tr_balance_row_get_type ())
G_DECLARE_FINAL_TYPE (TrBalanceRow, tr_balance_row, TR, BALANCE_ROW, GtkWidget)

/* The document has no member for a ratio: where undo finds its handle, the key
 * of the ratio after it. */
#define TR_BALANCE_WHERE "/balance/"

GtkWidget *tr_balance_row_new       (TrRatio       ratio);
void       tr_balance_row_refresh   (TrBalanceRow *self);
GtkWidget *tr_balance_row_get_scale (TrBalanceRow *self);
GtkWidget *tr_balance_row_get_entry (TrBalanceRow *self);
/* Shown where there is no line to move. */
GtkWidget *tr_balance_row_get_add_button (TrBalanceRow *self);

G_END_DECLS
