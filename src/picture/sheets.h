/* sheets.h: all sheets on the bench, and the edges that can be dragged
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The picture for the screen: each sheet drawn, the first one dimensioned and
 * lying on the worktop, a proofing tray beside it, all to one scale. For paper
 * there is tr_sheet_picture_new, one sheet for all.
 *
 * Hits: TR_PART_OF_SHEET (which one), TR_PART_OF_PIECE (numbered through all
 * sheets), TR_PART_OF_EDGE (four a piece), TR_PART_OF_WORKTOP, TR_PART_OF_TRAY.
 */

#pragma once

#include "picture.h"

G_BEGIN_DECLS

/* Of a piece: along the row and across it. A round or square piece has one
 * measure, whichever edge it is taken by. */
typedef enum { TR_MEASURE_ALONG, TR_MEASURE_ACROSS } TrMeasure;

/* So that nothing jumps while an edge is dragged: the scale and the way
 * everything is laid out, and where a corner of one sheet lies. */
typedef struct {
  gboolean is_held;              /* FALSE: as large as fits */
  double scale;                  /* units a millimetre */
  guint way, breaks;             /* how it is laid out; opaque */
  gboolean is_turned;            /* the rows run downwards */
  int sheet;                     /* whose corner it is: where its row starts, on the near edge */
  double x, y;
  double foot;                   /* under the legend */
} TrSheetsHold;

/* An edge in the hand. */
typedef struct {
  TrSheetsHold hold;
  TrMeasure measure;
  double start_mm;               /* the measure when it was taken */
  double at_mm;                  /* where on the sheet it was taken, along or across */
  double times;                  /* how far the edge moves for each millimetre of the measure */
} TrSheetsGrab;

/* `hold` NULL: as large as fits. */
TrPicture  *tr_sheets_picture_new (const TrDoughFigures *figures, const TrReader *reader, const TrLook *look, double width, double height,
                                   const TrSheetsHold *hold);
/* Takes the edge `index` of that picture at a place on it. FALSE: no such edge, or it cannot move. */
gboolean    tr_sheets_grab        (const TrPicture *picture, const TrDoughFigures *figures, const TrReader *reader, const TrSheetsHold *hold,
                                   int index, double x, double y, TrSheetsGrab *grab);
/* What the measure becomes when the edge goes there: mm, not rounded, at least `least`. */
double      tr_sheets_grab_get_mm (const TrSheetsGrab *grab, double x, double y, double least);
/* An edge of the first piece that has this measure; -1: none. */
int         tr_sheets_find_edge   (const TrDoughFigures *figures, TrMeasure measure);
TrMeasure   tr_sheets_edge_get_measure (const TrDoughFigures *figures, int index);
/* Whether the edges with this measure run downwards on the picture, to be moved sideways. */
gboolean    tr_sheets_is_sideways (const TrPicture *picture, const TrDoughFigures *figures, const TrReader *reader, const TrSheetsHold *hold,
                                   TrMeasure measure);
/* "Base"; translated. */
const char *tr_measure_get_name   (TrShape shape, TrMeasure measure);

/* One way to lay the pieces out, small, to a scale shared with the others
 * (units a millimetre; 0: as large as fits). At most four sheets, then "× 7". */
TrPicture  *tr_alternative_picture_new (const TrDoughFigures *figures, const TrAlternative *alternative, const TrReader *reader,
                                        const TrLook *look, double width, double height, double scale);
/* The largest scale at which each of them fits. */
double      tr_alternatives_find_scale (const TrDoughFigures *figures, const TrAlternative *alternatives, guint n_alternatives,
                                        const TrReader *reader, const TrLook *look, double width, double height);

G_END_DECLS
