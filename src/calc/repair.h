/* repair.h: what one ratio mends of what was found
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The target is a round value inside the band: of salt its middle, since a
 * dough is salted to taste and not to a limit; of the others the nearest, so
 * that no more is changed than has to be. A roll-in under a legal minimum is
 * brought just above it.
 */

#pragma once

#include "balance.h"

G_BEGIN_DECLS

typedef struct {
  TrRatio ratio;
  double target;                 /* percent, of what the ratio is taken of */
  gboolean adds_line;            /* nothing is there that could be moved */
} TrRepair;

/* FALSE: no ratio mends it, or none of this dough's lines can. */
gboolean tr_finding_get_repair (const TrDoughFigures *figures,
                                const TrFinding      *finding,
                                TrRepair             *repair);
/* As tr_ratio_set, or tr_ratio_add_line. */
gboolean tr_repair_apply       (TrDough              *dough,
                                const TrDoughFigures *figures,
                                const TrRepair       *repair,
                                GError              **error);

G_END_DECLS
