/* dough.h: doughs for the checks against the world, written in one line
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "calc/figures.h"

G_BEGIN_DECLS

/* A trial with one empty dough on a bench so large that no limit interferes. */
TrTrial   *ref_trial_new       (void);
TrDough   *ref_trial_get_dough (TrTrial *trial);

void       ref_dough_add_line  (TrDough    *dough,
                                TrStage     stage,
                                const char *ingredient,
                                const char *amount);
/* `folds` as a baker says them: "3·4·3" is "343"; "" no turn. Every turn is
 * rolled to 8 mm. */
void       ref_dough_laminate  (TrDough    *dough,
                                TrStyle     style,
                                const char *folds);
/* A square of 100 mm and that thickness, without trim, shrinking or loss. */
void       ref_dough_cut       (TrDough    *dough,
                                double      thickness_mm);

/* The figures of the one dough; fails when there is a problem in them.
 * (transfer full) */
TrFigures *ref_figures_new     (TrTrial *trial);

G_END_DECLS
