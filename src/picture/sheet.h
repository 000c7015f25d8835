/* sheet.h: how a sheet is put on a picture, inside this room
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "../calc/cut.h"
#include "shapes.h"

G_BEGIN_DECLS

typedef struct {
  const TrDoughFigures *figures;
  const TrSheet *sheet;
  const TrCut *cut;
  const TrReader *reader;
  const TrLook *look;
  TrPicture *picture;
  double em;
  double width, height;
  double head_room, foot_room;       /* kept free above and below by whoever lays it out */
  double top, bottom, left, right;   /* room for dimensions around the sheet, and those */
  double scale;                      /* units a millimetre */
  double x, y;                       /* where the relaxed sheet's box starts */
  double along_mm, across_mm;        /* of a piece */
  GArray *near_marks, *far_marks;    /* double, mm */
  double mark_size;                  /* of the running numbers */
  /* Measured once, because many ways to lay it out are tried. */
  double widest_mark, along_text_width, across_text_width;
  gboolean marks_upward;
  double marks_room;                 /* what the numbers take outwards */
  double piece_room;                 /* what a piece's size takes that is too short for its number */
  gboolean shrinks;
  gboolean rotated;                  /* the row lies across the worktop's length */
  gboolean turned;                   /* drawn with the row downwards */
  gboolean is_too_fine;              /* pieces cannot be told apart */
} TrSheetPlan;

/* The figures have a sheet. */
void   tr_sheet_plan_init           (TrSheetPlan *sheet, const TrDoughFigures *figures, const TrReader *reader, const TrLook *look, double width, double height);
void   tr_sheet_plan_clear          (TrSheetPlan *sheet);
/* How the running numbers stand at that scale, and the room around the sheet that follows from it. */
void   tr_sheet_plan_measure_marks  (TrSheetPlan *sheet, double scale);
void   tr_sheet_plan_set_margins    (TrSheetPlan *sheet);
void   tr_sheet_plan_set_scale      (TrSheetPlan *sheet, double scale);

/* Of the sheet as it leaves the roller, along the row. */
double tr_sheet_plan_rolled_mm      (const TrSheetPlan *sheet);
/* Along the row and across it. */
void   tr_sheet_plan_get_worktop    (const TrSheetPlan *sheet, double *length_mm, double *width_mm);
void   tr_sheet_plan_to_picture     (const TrSheetPlan *sheet, double along, double across, double *x, double *y);
TrBox  tr_sheet_plan_box_of         (const TrSheetPlan *sheet, double along, double across, double length, double width);
TrBox  tr_sheet_plan_get_box        (const TrSheetPlan *sheet);

/* Drawing. `index` numbers the sheets; pieces are numbered through all of them. */
void   tr_sheet_plan_add_sheet      (TrSheetPlan *sheet, int index);
void   tr_sheet_plan_add_pieces     (TrSheetPlan *sheet, int index, int n_spare);
void   tr_sheet_plan_add_outline    (TrSheetPlan *sheet);
void   tr_sheet_plan_add_roll_up    (TrSheetPlan *sheet);
void   tr_sheet_plan_add_marks      (TrSheetPlan *sheet);
void   tr_sheet_plan_add_dimensions (TrSheetPlan *sheet);
/* What the hatching and the warnings mean, at the picture's foot. */
void   tr_sheet_plan_add_legend     (TrSheetPlan *sheet, double spare);
void   tr_sheet_plan_describe       (TrSheetPlan *sheet);
/* Where there is no sheet, says why. */
TrPicture *tr_sheet_picture_new_empty (const TrDoughFigures *figures, const TrReader *reader, const TrLook *look, double width, double height);

G_END_DECLS
