/* line.h: what a line of a recipe looks like
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "words.h"

G_BEGIN_DECLS

#define TR_LINE_MAX_ITEM_BYTES 1000      /* longer is prose */

gboolean           tr_line_has_word       (const TrTokens *tokens, guint at, guint end, const char *word);
/* Bullets, tick boxes, marks of emphasis; "1." and "a)" too when `numbers`. */
guint              tr_line_skip_bullets   (const TrTokens *tokens, gboolean numbers);
guint              tr_line_skip_end       (const TrTokens *tokens, guint at);
guint              tr_line_skip_for_the   (const TrTokens *tokens, guint at, guint end);
/* The stage that a heading names, its brackets aside. NULL: none. */
const TrWordEntry *tr_line_find_stage     (const TrTokens *tokens, guint at, guint end);
gboolean           tr_line_is_whole_stage (const TrTokens *tokens, guint at, guint end);
gboolean           tr_line_is_prose       (const TrTokens *tokens, const char *line, guint end);
/* "Total", "Prep time: 20 min": begins like no ingredient. */
gboolean           tr_line_is_label       (const TrTokens *tokens, guint at);

G_END_DECLS
