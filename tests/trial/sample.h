/* sample.h: a document that says everything, and random ones
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invented names and numbers.
 */

#pragma once

#include "trial/document.h"

G_BEGIN_DECLS

/* A document as tr_trial_write spells it, with every member of every object. */
extern const char sample_text[];

TrTrial *sample_trial  (void);
/* Any valid trial; takes its chances from g_test_rand_*. */
TrTrial *random_trial  (void);
/* One edit of any kind to a draft; may leave it as it was. */
void     random_edit   (TrTrial *draft);

G_END_DECLS
