/* found.h: a list of folds at a glance
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "../calc/search.h"
#include "shapes.h"

G_BEGIN_DECLS

/* The stack that those folds make of this dough, and every roll-out before the length of the worktop. It
 * has no text: what it shows is said beside it. `is_mirrored`: for those who read from the right. */
TrPicture *tr_found_picture_new (const TrDoughFigures *figures, const TrSequence *sequence, const TrReader *reader, const TrLook *look,
                                 gboolean is_mirrored, double width, double height);

G_END_DECLS
