/* strip.h: the current dough in one line, at the foot of the window
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_STRIP (tr_strip_get_type ())
G_DECLARE_FINAL_TYPE (TrStrip, tr_strip, TR, STRIP, TrPage)

GtkWidget  *tr_strip_new      (void);
const char *tr_strip_get_text (TrStrip *self);

G_END_DECLS
