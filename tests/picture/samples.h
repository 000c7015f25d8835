/* samples.h: doughs to draw
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invented. Shared by the tests of picture/ and paper/.
 */

#pragma once

#include "calc/figures.h"

G_BEGIN_DECLS

typedef enum {
  SAMPLE_CROISSANT,              /* half, letter, book, letter; triangles; poolish */
  SAMPLE_DANISH,                 /* letter lock-in; squares; egg wash */
  SAMPLE_PUFF,                   /* inverse, six turns; rectangles; no yeast */
  SAMPLE_GATE,                   /* two blocks; hexagonal rounds; pin */
  SAMPLE_ENVELOPE,               /* slices of a roll */
  SAMPLE_RIGHT_TRIANGLE,
  SAMPLE_PLAIN,                  /* no lock-in, no turns, no cut */
  SAMPLE_STRESS,                 /* long names, 40 lines, 12 turns, unweighed lines */
  N_SAMPLES
} Sample;

/* A dough added to the draft. */
void     sample_add        (TrTrial *draft, Sample sample);
/* A trial of one dough, or of all. */
TrTrial *sample_trial_new  (Sample sample);
TrTrial *sample_trial_all  (void);
/* Anything that a document may hold, within reason. */
void     sample_add_random (TrTrial *draft);

G_END_DECLS
