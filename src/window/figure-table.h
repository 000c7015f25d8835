/* figure-table.h: a table of figures to be read and copied
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A hairline under the heads and over the sums; the names stay on the left,
 * figures under each other. Scrolls sideways when it is wider than the page.
 * "table.copy" (button, menu, Ctrl+C) puts it on the clipboard for a
 * spreadsheet.
 */

#pragma once

#include <gtk/gtk.h>

#include "../words/content.h"

G_BEGIN_DECLS

#define TR_TYPE_FIGURE_TABLE (tr_figure_table_get_type ())
G_DECLARE_FINAL_TYPE (TrFigureTable, tr_figure_table, TR, FIGURE_TABLE, GtkWidget)

GtkWidget         *tr_figure_table_new  (const char    *accessible_name);
/* Only what differs is written; labels are made anew when the shape is another. */
void               tr_figure_table_take (TrFigureTable *self,
                                         TrTextTable   *table);
/* NULL: nothing was given yet. */
const TrTextTable *tr_figure_table_get  (TrFigureTable *self);

G_END_DECLS
