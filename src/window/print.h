/* print.h: papers through GTK's print operation
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pages are laid out again for the paper that the print dialog ends with;
 * a paper that is neither A4 nor Letter gets the pages of the more similar one,
 * scaled and centred.
 */

#pragma once

#include "paper-job.h"
#include "print-memory.h"

G_BEGIN_DECLS

/* An operation that has not run yet. It handles GTK's "preview" by
 * `show_preview` with the pages laid out for the paper of that moment, as long
 * as there is an `owner`. Both may be NULL. */
typedef void (*TrShowPreview) (TrPaperJob *job, GObject *owner);
GtkPrintOperation *tr_print_operation_new (TrPaperJob          *job,
                                           const TrPrintMemory *memory,
                                           TrShowPreview        show_preview,
                                           GObject             *owner);
/* The pages as they were last laid out. Borrowed. */
TrPaperJob        *tr_print_operation_get_job (GtkPrintOperation *operation);

G_END_DECLS
