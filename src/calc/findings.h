/* findings.h: what is wrong or worth knowing about a dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What `value`, `limit`, `with` and `name` hold is said here for each id; the
 * sentence is made in words/finding.c and nowhere else.
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

/* (transfer full) (element-type TrFinding): sorted, worst first. */
GPtrArray *tr_findings_compute (const TrDoughFigures *figures);

G_END_DECLS
