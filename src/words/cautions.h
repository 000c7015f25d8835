/* cautions.h: where the work can hurt
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "../calc/figures.h"
#include "words.h"

G_BEGIN_DECLS

/* Oven, raw dough, raw egg where there is one, cold chain, rollers; and who decides. */
char       *tr_words_cautions        (const TrReader *reader, const TrDoughFigures *figures);
const char *tr_words_rollers_caution (void);

G_END_DECLS
