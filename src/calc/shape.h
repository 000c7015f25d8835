/* shape.h: the six shapes of a piece in a row; for cut.c and outline.c only
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "cut.h"

G_BEGIN_DECLS

/* The side of a piece along a row, and the one across it. */
void   tr_shape_get_sides       (const TrCut *cut,
                                 double      *along_mm,
                                 double      *across_mm);
/* Length along the row that `per_row` pieces need. */
double tr_shape_row_length      (const TrCut *cut,
                                 double       per_row,
                                 gboolean     hexagonal);
/* The other way: how many go into a row. A hair's breadth does not cost a piece. */
double tr_shape_count_in_row    (const TrCut *cut,
                                 double       length_mm,
                                 gboolean     hexagonal);
double tr_shape_rows_width      (const TrCut *cut,
                                 int          rows,
                                 gboolean     hexagonal);
/* Right triangles come two to a rectangle: the number that fills it. */
double tr_shape_complete_row    (const TrCut *cut,
                                 double       per_row);
/* From one circle to the next along a row, and from one row to the next. */
double tr_shape_round_pitch     (const TrCut *cut);
double tr_shape_round_row_pitch (const TrCut *cut,
                                 gboolean     hexagonal);

G_END_DECLS
