/* findings.h: what is wrong or worth knowing, each leading to its field
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Activating a finding activates win.go-to with its JSON Pointer inside the dough.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_FINDINGS (tr_findings_get_type ())
G_DECLARE_FINAL_TYPE (TrFindings, tr_findings, TR, FINDINGS, TrPage)

GtkWidget  *tr_findings_new             (void);
/* The first of those that are counted. NULL: none. */
const TrFinding *tr_findings_get_worst  (const TrDoughFigures *figures);
/* The icon that stands for a severity. */
const char *tr_findings_get_icon_name   (TrSeverity severity);

G_END_DECLS
