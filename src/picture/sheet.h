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
  double top, bottom, left, right;   /* room for dimensions around the sheet */
  double scale;                      /* units a millimetre */
  double x, y;                       /* where the relaxed sheet's box starts */
  double along_mm, across_mm;        /* of a piece */
  GArray *near_marks, *far_marks;    /* double, mm */
  double mark_size;                  /* of the running numbers */
  gboolean marks_upward;
  double marks_room;                 /* what the numbers take outwards */
  double piece_room;                 /* what a piece's size takes that is too short for its number */
  gboolean shrinks;
  gboolean rotated;                  /* the row lies across the worktop's length */
  gboolean turned;                   /* drawn with the row downwards */
  gboolean is_too_fine;              /* pieces cannot be told apart */
  gboolean shows_tray;
} TrSheetPlan;

/* Of the sheet as it leaves the roller, along the row. */
double tr_sheet_plan_rolled_mm      (const TrSheetPlan *sheet);
void   tr_sheet_plan_to_picture     (const TrSheetPlan *sheet, double along, double across, double *x, double *y);
TrBox  tr_sheet_plan_get_box        (const TrSheetPlan *sheet);
void   tr_sheet_plan_add_marks      (TrSheetPlan *sheet);
void   tr_sheet_plan_add_dimensions (TrSheetPlan *sheet);

G_END_DECLS
