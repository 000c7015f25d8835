/* balance-scale.h: a GtkScale with what is usual and the other doughs drawn
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The band stands behind the trough, a hairline at both its ends; each other
 * dough is a small tick below it. GTK moves the handle.
 */

#pragma once

#include <gtk/gtk.h>

#include "../calc/balance.h"

G_BEGIN_DECLS

#define TR_TYPE_BALANCE_SCALE (tr_balance_scale_get_type ())
G_DECLARE_FINAL_TYPE (TrBalanceScale, tr_balance_scale, TR, BALANCE_SCALE, GtkScale)

GtkWidget *tr_balance_scale_new        (void);
/* Both NaN: none. The tooltip says the band where no tick is. */
void       tr_balance_scale_set_band   (TrBalanceScale *self,
                                        TrRange         band,
                                        const char     *tooltip);
void       tr_balance_scale_clear_ticks (TrBalanceScale *self);
void       tr_balance_scale_add_tick   (TrBalanceScale *self,
                                        double          value,
                                        const char     *tooltip);
/* Where a value lies across the widget. */
double     tr_balance_scale_get_x      (TrBalanceScale *self,
                                        double          value);

G_END_DECLS
