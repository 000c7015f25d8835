/* print-preview.h: pages as they will come out, before they do
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pages under each other in a window of their own, drawn by what draws
 * them on paper. Its keys stand in the table of actions.
 *
 * Signals
 *   print (), export (): the reader wants that of these pages; the window has
 *     closed itself.
 */

#pragma once

#include <gtk/gtk.h>

#include "paper-job.h"

G_BEGIN_DECLS

#define TR_TYPE_PRINT_PREVIEW (tr_print_preview_get_type ())
G_DECLARE_FINAL_TYPE (TrPrintPreview, tr_print_preview, TR, PRINT_PREVIEW, GtkWindow)

/* `parent` may be NULL. */
GtkWidget  *tr_print_preview_new         (GtkWindow      *parent,
                                          TrPaperJob     *job);
TrPaperJob *tr_print_preview_get_job     (TrPrintPreview *self);
guint       tr_print_preview_count_pages (TrPrintPreview *self);
/* The page that is at the top, from 0. */
guint       tr_print_preview_get_page    (TrPrintPreview *self);

G_END_DECLS
