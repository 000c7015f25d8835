/* lineage.h: which dough comes from which, and what was changed on the way
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   (A)  Quay crescents
 *    |
 *    +--(C)  Quay crescents 2
 *    |       Proof, temperature: 31 °C → 28 °C
 *    +--(D)  Quay crescents 3
 *            Salt: 10 g → 9 g, and 2 more
 *   (B)  Overnight sponge
 *
 * Each dough is TR_PART_OF_POINT with its index in the trial, its words too.
 */

#pragma once

#include "shapes.h"

G_BEGIN_DECLS

/* `current` -1: none. `is_mirrored`: for those who read from the right. The
 * height is what it needs; more stays empty, less is drawn smaller. */
TrPicture *tr_lineage_picture_new       (const TrTrial   *trial,
                                         int              current,
                                         gboolean         is_mirrored,
                                         const TrReader  *reader,
                                         const TrLook    *look,
                                         double           width,
                                         double           height);
/* How high it wants to be, in lines of text. */
double     tr_lineage_picture_get_lines (const TrTrial   *trial);

G_END_DECLS
