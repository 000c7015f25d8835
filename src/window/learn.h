/* learn.h: what to change next, what was changed, and where a dough comes from
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A page without a scroller of its own, to stand in another page's column (or
 * in a scroller); whoever holds it lets it follow its page.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_LEARN (tr_learn_get_type ())
G_DECLARE_FINAL_TYPE (TrLearn, tr_learn, TR, LEARN, TrPage)

GtkWidget *tr_learn_new (void);

G_END_DECLS
