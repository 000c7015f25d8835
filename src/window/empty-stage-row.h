/* empty-stage-row.h: says that a stage of the formula has no lines
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "../calc/written.h"

G_BEGIN_DECLS

#define TR_TYPE_EMPTY_STAGE_ROW (tr_empty_stage_row_get_type ())
G_DECLARE_FINAL_TYPE (TrEmptyStageRow, tr_empty_stage_row, TR, EMPTY_STAGE_ROW, GtkListBoxRow)

GtkWidget *tr_empty_stage_row_new       (TrStage          stage);
TrStage    tr_empty_stage_row_get_stage (TrEmptyStageRow *self);

G_END_DECLS
