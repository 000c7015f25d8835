/* line-edits.h: what can be done to a line of a page's dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each is one commit with its label. The item is the line's index, or, for its
 * ingredient, a pending one (lines.h).
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

/* An id, or NULL and the words that were typed for it. What is there already,
 * and nothing on a pending line, changes nothing. */
void     tr_line_set_ingredient (TrPage     *page,
                                 guint       item,
                                 const char *id,
                                 const char *text);
/* Its index afterwards; -1: it stays where it is, or it is asked how (line-move.h). */
int      tr_line_move           (TrPage     *page,
                                 guint       item,
                                 int         by);
/* By the stage's id; another word: a preferment of its own. */
int      tr_line_set_stage      (TrPage     *page,
                                 guint       item,
                                 const char *stage);
void     tr_line_remove         (TrPage     *page,
                                 guint       item);

G_END_DECLS
