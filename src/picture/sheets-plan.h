/* sheets-plan.h: how the sheets, the worktop and the tray share a picture, inside this room
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "sheet.h"
#include "sheets.h"

G_BEGIN_DECLS

#define TR_MOST_SHEETS_DRAWN 6   /* of more, a few and their number */
#define TR_FEW_SHEETS 3
#define TR_CAPTION_SIZE 0.9      /* em, of what stands under a sheet, the worktop, the tray */

typedef struct {
  TrSheetPlan sheet;             /* the first; x, y and scale of the others differ by their place only */
  TrSheetsHold hold;             /* as it turned out */
  int n_sheets;                  /* drawn */
  double x[TR_MOST_SHEETS_DRAWN], y[TR_MOST_SHEETS_DRAWN];
  gboolean shows_worktop_whole;
  gboolean is_crowded;           /* it does not fit, though as small as it gets */
  TrBox main;                    /* the first sheet with all that is around it */
  TrBox worktop;
  TrBox tray;
  gboolean tray_is_turned;
  double tray_text_width, worktop_text_width;
  TrBox number;                  /* "× 14", where not all are drawn */
} TrSheetsPlan;

void tr_sheets_plan_init  (TrSheetsPlan *plan, const TrDoughFigures *figures, const TrReader *reader, const TrLook *look,
                           double width, double height, const TrSheetsHold *hold);
void tr_sheets_plan_clear (TrSheetsPlan *plan);
/* Borrowed from `plan`: that sheet's own plan, to draw it with. */
void tr_sheets_plan_get_sheet (const TrSheetsPlan *plan, int index, TrSheetPlan *sheet);
/* There is no room for all of it. */
gboolean tr_sheets_plan_is_too_small (const TrSheetsPlan *plan);
/* Pieces more than wanted; all on the last sheet. */
int  tr_sheets_plan_count_spare (const TrSheetsPlan *plan);

char *tr_sheets_plan_dup_worktop_text (const TrSheetsPlan *plan);

/* sheets-tray.c */
void tr_sheets_plan_add_tray  (TrSheetsPlan *plan);
/* sheets-edges.c */
void tr_sheet_plan_add_edges  (TrSheetPlan *sheet, int index);

G_END_DECLS
