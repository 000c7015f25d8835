/* line-move.h: a line that goes to another stage keeps the weights or moves them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Asked once a document, and only where it makes a difference.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

/* TRUE: it is asked, and the answer commits the draft. FALSE: the draft is as
 * it was answered before, or needs no answer; commit it. `from` is where the
 * line stood; it is the last in the draft. */
gboolean tr_line_move_asks (TrPage     *page,
                            TrTrial    *draft,
                            guint       from,
                            const char *undo);

G_END_DECLS
