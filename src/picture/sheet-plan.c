/* sheet-plan.c: where a sheet lies in a picture, and how large
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The one place that turns the sheet's own millimetres into the picture's
 * units. What is drawn around the sheet says how much room it needs; which scale
 * that leaves is asked by whoever lays the picture out.
 */

#include "config.h"

#include <math.h>

#include "../calc/lamination.h"
#include "sheet.h"

/* Units between two lines that can still be told apart. */
#define FINEST_PIECE 1.5
#define MAX_MARKS_MEASURED 100

/* ---- from the sheet to the picture ----
 *
 *   as it is            turned (a quarter, never mirrored)
 *   ┌── far edge ──┐    ┌─ start of the row ─┐
 *   │ row 2        │    │ near          far  │
 *   │ row 1        │    │ edge  row 1 2 edge │
 *   └── near edge ─┘    └────────────────────┘
 */
double
tr_sheet_plan_rolled_mm (const TrSheetPlan *sheet)
{
  return MAX (sheet->sheet->length_mm, sheet->sheet->rolled_mm.mm[0]);
}

void
tr_sheet_plan_to_picture (const TrSheetPlan *sheet,
                          double             along,
                          double             across,
                          double            *x,
                          double            *y)
{
  *x = sheet->x + (sheet->turned ? across : along) * sheet->scale;
  *y = sheet->y + (sheet->turned ? along : sheet->sheet->width_mm - across) * sheet->scale;
}

/* A box of the sheet's own lengths, from its corner. */
TrBox
tr_sheet_plan_box_of (const TrSheetPlan *sheet,
                      double             along,
                      double             across,
                      double             length,
                      double             width)
{
  double x1, y1, x2, y2;

  tr_sheet_plan_to_picture (sheet, along, across, &x1, &y1);
  tr_sheet_plan_to_picture (sheet, along + length, across + width, &x2, &y2);
  return (TrBox) { MIN (x1, x2), MIN (y1, y2), fabs (x2 - x1), fabs (y2 - y1) };
}

TrBox
tr_sheet_plan_get_box (const TrSheetPlan *sheet)
{
  return tr_sheet_plan_box_of (sheet, 0, 0, sheet->sheet->length_mm, sheet->sheet->width_mm);
}

/* ---- planning ---- */

/* Of those that will be written; so many that they cannot be are not measured. */
static double
widest_mark (const TrSheetPlan *sheet,
             const GArray      *marks)
{
  double widest = 0;

  for (guint i = 0; i < marks->len; i += MAX (1, marks->len / MAX_MARKS_MEASURED))
    {
      g_autofree char *text = tr_words_length_number (sheet->reader, g_array_index (marks, double, i));

      widest = MAX (widest, tr_text_width (sheet->look, text, sheet->mark_size, 400));
    }
  return widest;
}

static double
measure_length (const TrSheetPlan *sheet,
                double             mm)
{
  g_autofree char *text = tr_words_length_number (sheet->reader, mm);

  return tr_text_width (sheet->look, text, sheet->em, 400);
}

static double
mark_spacing (const GArray *marks)
{
  return marks->len < 2 ? G_MAXDOUBLE : g_array_index (marks, double, 1) - g_array_index (marks, double, 0);
}

/* The size of a piece that is dimensioned on the right, where the number does
 * not fit along it and lies beside it. */
static double
find_piece_room (const TrSheetPlan *sheet,
                 double             scale)
{
  double size = sheet->turned ? sheet->along_mm : sheet->across_mm;
  double wide = sheet->turned ? sheet->along_text_width : sheet->across_text_width;

  return size * scale < wide ? wide - 0.4 * sheet->em : 0;
}

/* Numbers stand upright where they would touch each other. */
void
tr_sheet_plan_measure_marks (TrSheetPlan *sheet,
                             double       scale)
{
  double widest = sheet->widest_mark;
  double spacing = MIN (mark_spacing (sheet->near_marks), mark_spacing (sheet->far_marks)) * scale;

  sheet->marks_upward = !sheet->turned && widest + 0.5 * sheet->em > spacing;
  sheet->marks_room = 0.75 * sheet->em + (sheet->marks_upward || sheet->turned ? widest : sheet->mark_size);
  sheet->piece_room = find_piece_room (sheet, scale);
}

void
tr_sheet_plan_set_margins (TrSheetPlan *sheet)
{
  double em = sheet->em, beside = sheet->marks_room + 2.1 * em, rolled = sheet->shrinks ? 1.9 * em : 0;

  sheet->top = sheet->head_room + (sheet->turned ? 2.4 * em : beside + rolled);
  sheet->bottom = sheet->foot_room + (sheet->turned ? 2.4 * em : beside);
  sheet->left = sheet->turned ? beside + rolled : 2.6 * em;
  sheet->right = sheet->piece_room + (sheet->turned ? beside + 0.2 * em : 3.0 * em);
}

/* Along and across the row. */
void
tr_sheet_plan_get_worktop (const TrSheetPlan *sheet,
                           double            *length_mm,
                           double            *width_mm)
{
  const TrBench *bench = sheet->figures->bench;

  *length_mm = bench->worktop_mm[sheet->rotated ? 1 : 0];
  *width_mm = bench->worktop_mm[sheet->rotated ? 0 : 1];
}

/* The piece's own two sizes, along the row and across it. */
static void
find_piece_size (TrSheetPlan *sheet)
{
  const TrCut *cut = sheet->cut;

  switch (cut->shape)
    {
    case TR_SHAPE_TRIANGLE:
    case TR_SHAPE_RIGHT_TRIANGLE:
      sheet->along_mm = cut->base_mm;
      sheet->across_mm = cut->height_mm;
      break;
    case TR_SHAPE_RECTANGLE:
      sheet->along_mm = cut->width_mm;
      sheet->across_mm = cut->length_mm;
      break;
    case TR_SHAPE_SQUARE:
      sheet->along_mm = sheet->across_mm = cut->side_mm;
      break;
    case TR_SHAPE_ROUND:
      sheet->along_mm = sheet->across_mm = cut->diameter_mm;
      break;
    case TR_SHAPE_SLICES:
    case TR_N_SHAPES:
    default:
      sheet->along_mm = cut->slice_mm;
      sheet->across_mm = cut->roll_length_mm;
      break;
    }
}

void
tr_sheet_plan_init (TrSheetPlan          *sheet,
                    const TrDoughFigures *figures,
                    const TrReader       *reader,
                    const TrLook         *look,
                    double                width,
                    double                height)
{
  gboolean rotated = FALSE;

  *sheet = (TrSheetPlan) { figures, &figures->sheet, figures->dough->cut, reader, look, NULL, look->text_size, width, height };
  tr_bench_check_sheet (figures->bench, &figures->sheet.rolled_mm, &rotated);
  sheet->rotated = rotated;
  sheet->shrinks = tr_sheet_shrinks (sheet->sheet);
  sheet->mark_size = 0.9 * sheet->em;
  find_piece_size (sheet);
  sheet->near_marks = tr_sheet_dup_marks (sheet->cut, sheet->sheet, FALSE);
  sheet->far_marks = tr_sheet_dup_marks (sheet->cut, sheet->sheet, TRUE);
  sheet->widest_mark = MAX (widest_mark (sheet, sheet->near_marks), widest_mark (sheet, sheet->far_marks));
  sheet->along_text_width = measure_length (sheet, sheet->along_mm);
  sheet->across_text_width = measure_length (sheet, sheet->across_mm);
}

void
tr_sheet_plan_clear (TrSheetPlan *sheet)
{
  g_clear_pointer (&sheet->near_marks, g_array_unref);
  g_clear_pointer (&sheet->far_marks, g_array_unref);
}

void
tr_sheet_plan_set_scale (TrSheetPlan *sheet,
                         double       scale)
{
  sheet->scale = scale;
  sheet->is_too_fine = sheet->along_mm * scale < FINEST_PIECE || sheet->across_mm * scale < FINEST_PIECE;
}
