/* learned.h: what the log says about the dough's own numbers
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each is an offer with the measurements it comes from: how many, their mean, and the
 * least and greatest. Nothing is changed here. What was measured and cannot be
 * (a baked piece heavier than a raw one) is left out and counted.
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

typedef enum {
  TR_LEARNED_DENSITY,            /* dough_density_g_ml, from weighed cuts of the sheet */
  TR_LEARNED_BAKE_LOSS,          /* bake_loss_percent, from pieces raw and baked */
  TR_LEARNED_SHRINK,             /* cut.shrink_percent, from the sheet rolled and relaxed */
  TR_LEARNED_FRICTION,           /* method.friction_c, from the last mix */
  TR_N_LEARNED
} TrLearnedId;

typedef struct {
  TrLearnedId id;
  double value;                  /* in the unit of the setting; NaN: nothing was measured */
  double least, greatest;        /* of the single measurements */
  guint n, n_left_out;
  double now;                    /* the setting as it is; NaN: none is written */
  double measured[2];            /* density: g and ml in all; loss: raw and baked g in all; shrink: rolled and relaxed mm in all;
                                  * friction: over how many temperatures, and the dough's °C */
} TrLearned;

/* FALSE: nothing was measured, or the dough has no such setting (a shrink without a cut). */
gboolean tr_learned_find  (const TrDoughFigures *figures,
                           TrLearnedId           id,
                           TrLearned            *learned);
/* The setting is that already, to what can be read off a scale. */
gboolean tr_learned_is_set (const TrLearned     *learned);
/* Writes it into a draft's dough, rounded to what can be known. */
void     tr_learned_apply (const TrLearned      *learned,
                           TrDough              *dough);
/* "/bake_loss_percent" */
const char *tr_learned_pointer (TrLearnedId id);

G_END_DECLS
