/* dough-row.h: one dough in the list of doughs
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shows a name, key figures and the sign of the worst finding. The name is
 * edited in place; signal `renamed` (const char *name) when that ended with
 * another name.
 */

#pragma once

#include <gtk/gtk.h>

#include "../calc/figures.h"
#include "../words/words.h"

G_BEGIN_DECLS

#define TR_TYPE_DOUGH_ROW (tr_dough_row_get_type ())
G_DECLARE_FINAL_TYPE (TrDoughRow, tr_dough_row, TR, DOUGH_ROW, GtkListBoxRow)

GtkWidget  *tr_dough_row_new          (const char           *id);
const char *tr_dough_row_get_id       (TrDoughRow           *self);
void        tr_dough_row_show         (TrDoughRow           *self,
                                       const TrDoughFigures *figures,
                                       const TrReader       *reader);
void        tr_dough_row_start_rename (TrDoughRow           *self);
gboolean    tr_dough_row_is_renaming  (TrDoughRow           *self);

G_END_DECLS
