/* print.h: bench cards through GTK's print operation
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The cards are laid out again for the paper that the print dialog ends with;
 * a paper that is neither A4 nor Letter gets the card of the more similar one,
 * scaled and centred.
 */

#pragma once

#include "card-job.h"
#include "print-memory.h"

G_BEGIN_DECLS

/* An operation that has not run yet. It handles GTK's "preview" by
 * `show_preview` with the cards laid out for the paper of that moment, as long
 * as there is an `owner`. Both may be NULL. */
typedef void (*TrShowPreview) (TrCardJob *job, GObject *owner);
GtkPrintOperation *tr_print_operation_new (TrCardJob           *job,
                                           const TrPrintMemory *memory,
                                           TrShowPreview        show_preview,
                                           GObject             *owner);
/* The cards as they were last laid out. Borrowed. */
TrCardJob         *tr_print_operation_get_job (GtkPrintOperation *operation);

G_END_DECLS
