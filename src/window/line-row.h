/* line-row.h: one line of the formula, edited in place
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Ingredient, amount as written, its percent of the flour, which writes the
 * amount, the batch's weight to be read, and below what is wrong with it. A row may stand for a line that is
 * not written yet (lines.h); it becomes one with the first word.
 *
 * Signals
 *   line-wanted (char *member): Return was pressed there, another line should
 *     follow.
 *   left (): the focus left the row.
 *   moved (guint item): the line went to this place of the document.
 *   removed (): the line is gone.
 */

#pragma once

#include "line-columns.h"
#include "lines.h"
#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_LINE_ROW (tr_line_row_get_type ())
G_DECLARE_FINAL_TYPE (TrLineRow, tr_line_row, TR, LINE_ROW, GtkListBoxRow)

GtkWidget    *tr_line_row_new        (const TrLineColumns *columns);
/* An index, or a pending item. */
void          tr_line_row_set_item   (TrLineRow           *self,
                                      guint                item);
guint         tr_line_row_get_item   (TrLineRow           *self);
/* What the row showed last, for matching. Borrowed. */
TrLine       *tr_line_row_get_shown  (TrLineRow           *self);
/* Shows the line of its page; `grams` is what the scale says (NaN: nothing). */
void          tr_line_row_refresh    (TrLineRow           *self,
                                      double               grams,
                                      double               step_g);
/* Nothing was typed into it. */
gboolean      tr_line_row_is_blank   (TrLineRow           *self);
/* "amount", "percent" (the amount where it cannot be set), "ingredient",
 * "hydration_percent"; NULL: where one would start. */
gboolean      tr_line_row_focus      (TrLineRow           *self,
                                      const char          *member);
/* Place in the list, kept here for its sort function. */
void          tr_line_row_set_place  (TrLineRow           *self,
                                      guint                place);
guint         tr_line_row_get_place  (TrLineRow           *self);

G_END_DECLS
