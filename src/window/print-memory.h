/* print-memory.h: what the reader last told the print dialog
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Printer settings and page setup, in two files in the user's configuration
 * folder. What cannot be read there is left out, and what cannot be written is
 * not remembered; neither ever stands in the way of printing.
 */

#pragma once

#include <gtk/gtk.h>

#include "../paper/paper.h"

G_BEGIN_DECLS

typedef struct {
  GtkPrintSettings *settings;
  GtkPageSetup *setup;
} TrPrintMemory;

/* Both are there afterwards; without files the paper is that of the locale. */
void        tr_print_memory_init      (TrPrintMemory       *memory);
void        tr_print_memory_clear     (TrPrintMemory       *memory);
/* Takes over what an operation ended with, and keeps it for the next time. */
void        tr_print_memory_learn     (TrPrintMemory       *memory,
                                       GtkPrintOperation   *operation);
void        tr_print_memory_save      (const TrPrintMemory *memory);
TrPaperSize tr_print_memory_get_paper (const TrPrintMemory *memory);
void        tr_print_memory_set_paper (TrPrintMemory       *memory,
                                       TrPaperSize          size);
/* Which of our two papers is most like that one; every other is reached by scaling. */
TrPaperSize tr_paper_of_page_setup    (GtkPageSetup        *setup);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TrPrintMemory, tr_print_memory_clear)

G_END_DECLS
