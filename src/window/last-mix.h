/* last-mix.h: the last mix as it really went, and the friction it tells
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fields of the last entry of the log; the first that is written begins it.
 * What they say of the friction is offered, and taken with one click.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_LAST_MIX (tr_last_mix_get_type ())
G_DECLARE_FINAL_TYPE (TrLastMix, tr_last_mix, TR, LAST_MIX, GtkWidget)

GtkWidget *tr_last_mix_new     (void);
void       tr_last_mix_refresh (TrLastMix *self);

G_END_DECLS
