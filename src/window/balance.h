/* balance.h: the ratios of the dough as handles
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "../calc/balance.h"

G_BEGIN_DECLS

#define TR_TYPE_BALANCE (tr_balance_get_type ())
G_DECLARE_FINAL_TYPE (TrBalance, tr_balance, TR, BALANCE, GtkWidget)

GtkWidget *tr_balance_new     (void);
/* Shows the dough of the page it stands in. */
void       tr_balance_refresh (TrBalance *self);
GtkWidget *tr_balance_get_row (TrBalance *self,
                               TrRatio    ratio);
/* Focuses the handle of the ratio that is named there, or the plane where that
 * is what is shown. FALSE: `pointer` names none. */
gboolean   tr_balance_go_to   (TrBalance  *self,
                               const char *pointer);
/* FALSE: it is not what is shown. */
gboolean   tr_balance_focus_plane (TrBalance *self);

G_END_DECLS
