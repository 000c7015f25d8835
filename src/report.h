/* report.h: the figures and findings as JSON and as text
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "calc/figures.h"
#include "words/words.h"

G_BEGIN_DECLS

/* The report, pretty-printed JSON with a newline at the end. */
char     *tr_report_figures  (const TrFigures *figures, const TrReader *reader);
/* What can be compared, a column a dough, as CSV. */
char     *tr_report_comparison (const TrFigures *figures);
/* (element-type TrSequence) */
char     *tr_report_sequences (const GPtrArray *sequences);
/* One a line: severity, dough, sentence, parted by tabs; `has_stop` tells whether one stops. */
char     *tr_report_findings (const TrFigures *figures, const TrReader *reader, gboolean *has_stop);
/* The command line without a window. Returns the exit status, or -1: go on and open a window. */
int       tr_command_line    (int argc, char **argv);

G_END_DECLS
