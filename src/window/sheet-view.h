/* sheet-view.h: the sheets on the bench, and a piece's edge to drag
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Knows how an edge is taken and how far it has gone; what that does to the
 * trial is its page's business. While an edge is held, nothing but what changes moves.
 *
 * Signals
 *   begin ()                      an edge has been taken; `measure` follows while it moves.
 *   end (gboolean is_cancelled)   it has been let go.
 *   measure (int measure, double mm)
 *     A TrMeasure of the piece is to be so long: by an edge, between begin and
 *     end; or by an arrow key, without them. In whole steps of the reader's unit.
 */

#pragma once

#include "../picture/sheets.h"
#include "picture-view.h"

G_BEGIN_DECLS

#define TR_TYPE_SHEET_VIEW (tr_sheet_view_get_type ())
G_DECLARE_FINAL_TYPE (TrSheetView, tr_sheet_view, TR, SHEET_VIEW, GtkWidget)

GtkWidget     *tr_sheet_view_new         (void);
/* NULL: nothing to show, hidden. */
void           tr_sheet_view_set_figures (TrSheetView          *self,
                                          const TrDoughFigures *figures,
                                          const TrReader       *reader);
TrPictureView *tr_sheet_view_get_picture (TrSheetView          *self);
/* What is said beside the pointer while an edge is held; NULL: nothing. */
const char    *tr_sheet_view_get_text    (TrSheetView          *self);

G_END_DECLS
