/* cut.h: the sheet and the pieces cut from it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

/* Area of one piece as cut, mm². */
double   tr_cut_piece_area_mm2 (const TrCut *cut);

/* Windings of a piece of that thickness rolled up, whether or not it is written that it
 * is: a slice is of a log. NaN: a round piece. */
double   tr_cut_count_windings (const TrCut *cut,
                                double       thickness_mm,
                                double      *diameter_mm);

/* Chooses rows, sheets and pieces (batch by pieces), or lets the mass decide
 * (`total_g` is the mixed mass; ignored for batch by pieces). FALSE: not one
 * piece, or the density is not known. */
gboolean tr_sheet_compute      (const TrDough *dough,
                                const TrBench *bench,
                                double         density_g_ml,
                                double         total_g,
                                double         fat_layers,
                                TrSheet       *sheet);

/* The layout that each number of rows leads to, where it fits on the bench, fewest rows
 * first. `rotated` is not set. Returns how many. */
guint    tr_sheet_list_by_rows  (const TrDoughFigures *figures,
                                 TrAlternative         alternatives[TR_MAX_ALTERNATIVES]);

/* The rows that would be chosen if none were written; 0: nothing fits. */
int      tr_sheet_find_best_rows (const TrDoughFigures *figures);

/* Grams of dough, after loss, that the smallest sheets with a piece on each
 * need (one sheet, or one of each block). NaN: not known. */
double   tr_cut_smallest_g      (const TrDough *dough,
                                 double         density_g_ml);

/* The smallest number of sheets, to TR_MAX_SHEETS_TRIED, with which length
 * and width fit on the bench, whatever the thickness; 0: none. The rows are kept
 * where they are written. */
#define TR_MAX_SHEETS_TRIED 99
int      tr_cut_sheets_that_fit (const TrDough *dough,
                                 const TrBench *bench,
                                 double         density_g_ml,
                                 double         total_g);

/* The outline of piece `index` of one sheet, in mm from the sheet's corner:
 * x along the row, y across. At most 4 corners; a round piece is a centre and
 * a radius. Pieces are numbered along the rows. */
typedef struct {
  int n_corners;                 /* 0: round */
  double x[4], y[4];             /* round: x[0], y[0] the centre */
  double radius_mm;
} TrPieceOutline;

/* Rolled out longer than it is to be, by more than a ruler shows. */
gboolean tr_sheet_shrinks      (const TrSheet *sheet);
int      tr_sheet_count_pieces (const TrSheet *sheet);    /* of one sheet */
void     tr_sheet_get_piece    (const TrCut    *cut,
                                const TrSheet  *sheet,
                                int             index,
                                TrPieceOutline *outline);

/* Where the knife starts along the row, in mm from the sheet's left edge:
 * marks on the near edge (far_edge FALSE) or on the far edge of a row; all
 * rows are alike. Round pieces: where the centres are, of the first row and
 * (far_edge) of the second. (transfer full) (element-type double) */
GArray  *tr_sheet_dup_marks    (const TrCut   *cut,
                                const TrSheet *sheet,
                                gboolean       far_edge);

G_END_DECLS
