/* case.h: one dough, its figures, and the draft of an edit
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "calc/figures.h"

typedef struct {
  TrTrial *trial, *draft;
  TrFigures *figures, *later;
  TrDough *dough;                /* of the draft; borrowed */
} Case;

/* Takes the trial; its first dough is the one. */
static inline Case
case_of_trial (TrTrial *trial)
{
  Case self = { .trial = trial, .figures = tr_figures_compute (trial, NULL), .draft = tr_trial_copy (trial) };

  self.dough = tr_trial_own_dough (self.draft, 0);

  return self;
}

static inline const TrDoughFigures *
case_before (const Case *self)
{
  return tr_figures_get_dough (self->figures, 0);
}

static inline const TrDoughFigures *
case_after (Case *self)
{
  g_clear_pointer (&self->later, tr_figures_unref);
  self->later = tr_figures_compute (self->draft, NULL);

  return tr_figures_get_dough (self->later, 0);
}

/* Of the draft, as written. */
static inline const char *
case_amount (const Case *self,
             guint       index)
{
  return tr_dough_get_line (self->dough, index)->amount;
}

static inline void
case_clear (Case *self)
{
  g_clear_pointer (&self->later, tr_figures_unref);
  tr_figures_unref (self->figures);
  tr_trial_unref (self->draft);
  tr_trial_unref (self->trial);
}
