/* page-sheet.h: one page of paper, on screen
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * White with the page drawn on it, whatever the colours of the screen are: it
 * shows what paper will.
 */

#pragma once

#include <gtk/gtk.h>

#include "paper-job.h"

G_BEGIN_DECLS

#define TR_TYPE_PAGE_SHEET (tr_page_sheet_get_type ())
G_DECLARE_FINAL_TYPE (TrPageSheet, tr_page_sheet, TR, PAGE_SHEET, GtkWidget)

GtkWidget *tr_page_sheet_new      (TrPaperJob  *job,
                                   guint        page);
/* Pixels a point; 0 (from the start): as wide as there is room. */
void       tr_page_sheet_set_zoom (TrPageSheet *self,
                                   double       zoom);

G_END_DECLS
