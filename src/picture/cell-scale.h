/* cell-scale.h: where one of several figures lies, small, beside its number
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *        ▒▒▒▒▒▒▒▒
 *   ─────▒▒▒▒▒▒▒▒──┃────     the band is what is usual, the tick the figure,
 *        ▒▒▒▒▒▒▒▒            a thin line that of the dough it is held against
 *
 * All figures of a row share one scale, which holds them and their bands. It
 * spans at least TR_CELL_SCALE_LEAST of their size, so that next to nothing does
 * not look like much.
 */

#pragma once

#include "../calc/comparison.h"
#include "shapes.h"

G_BEGIN_DECLS

#define TR_CELL_SCALE_LEAST 0.2

typedef struct { double from, to; } TrCellScale;     /* NaN: nothing is known */

void     tr_cell_scale_init        (TrCellScale        *scale,
                                    const TrComparable *comparable,
                                    const TrFigures    *figures,
                                    const guint        *doughs,
                                    guint               n_doughs);
/* As a share of its width; NaN: the value is not known. */
double   tr_cell_scale_place       (const TrCellScale  *scale,
                                    double              value);
/* `band` NULL: none. `reference` NaN: none. Nothing is drawn of what is not known. */
void     tr_picture_add_cell_scale (TrPicture          *picture,
                                    const TrBox        *box,
                                    const TrCellScale  *scale,
                                    double              value,
                                    const TrBand       *band,
                                    double              reference);

G_END_DECLS
