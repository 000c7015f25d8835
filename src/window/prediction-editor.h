/* prediction-editor.h: which dough should win, and why
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The doughs best first, by a figure or by hand: a row goes up and down with
 * Alt and the arrow keys, or is dragged. From the first score on it is only
 * read. A page without a scroller, to stand in another page's; whoever holds it
 * lets it follow.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_PREDICTION_EDITOR (tr_prediction_editor_get_type ())
G_DECLARE_FINAL_TYPE (TrPredictionEditor, tr_prediction_editor, TR, PREDICTION_EDITOR, TrPage)

GtkWidget *tr_prediction_editor_new  (void);
/* As by hand: the dough at one place goes to another. */
void       tr_prediction_editor_move (TrPredictionEditor *self,
                                      guint               from,
                                      guint               to);

G_END_DECLS
