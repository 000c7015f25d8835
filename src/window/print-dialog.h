/* print-dialog.h: which bench cards, on which paper, and what to do with them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A small window before the printer's own: the doughs with a box each, the
 * paper, and the three ways out. It asks and changes nothing.
 *
 * Signals
 *   chosen (int way): the reader wants that (TrPrintWay) of what is chosen.
 *     The window closes itself afterwards.
 */

#pragma once

#include <gtk/gtk.h>

#include "paper-job.h"

G_BEGIN_DECLS

#define TR_TYPE_PRINT_DIALOG (tr_print_dialog_get_type ())
G_DECLARE_FINAL_TYPE (TrPrintDialog, tr_print_dialog, TR, PRINT_DIALOG, GtkWindow)

typedef enum { TR_PRINT_WAY_PREVIEW, TR_PRINT_WAY_PRINT, TR_PRINT_WAY_EXPORT } TrPrintWay;

/* `dough`: the one that is shown, ticked from the start. `name` as for a job of cards. `parent` may be NULL. */
GtkWidget  *tr_print_dialog_new       (GtkWindow       *parent,
                                       const TrFigures *figures,
                                       guint            dough,
                                       const TrReader  *reader,
                                       TrPaperSize      size,
                                       const char      *name);
/* What is chosen now. (transfer full) NULL: nothing. */
TrPaperJob *tr_print_dialog_new_job   (TrPrintDialog   *self);
void        tr_print_dialog_set_dough (TrPrintDialog   *self,
                                       guint            dough,
                                       gboolean         is_chosen);

G_END_DECLS
