/* sheet-marks.c: the numbers around the drawing of a sheet
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Marks along both edges with running numbers, to lay a ruler along, and the
 * dimensions of sheet and piece outside them.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "sheet.h"

/* A tick on an edge and, outside it, how far it is from the sheet's corner. */
static void
add_mark (TrSheetPlan *sheet,
          double       mm,
          gboolean     far_edge,
          gboolean     has_number)
{
  const TrLook *look = sheet->look;
  double x, y, tick = 0.42 * sheet->em, off = 1.4 * tick, size = sheet->mark_size;
  double way = far_edge ? 1 : -1;
  g_autofree char *text = tr_words_length_number (sheet->reader, mm);

  tr_sheet_plan_to_picture (sheet, mm, far_edge ? sheet->sheet->width_mm : 0, &x, &y);
  if (sheet->turned)
    {
      tr_picture_add_line (sheet->picture, x, y, x + way * tick, y, TR_PEN_INNER, &look->text);
      if (has_number)
        tr_picture_add_text (sheet->picture, text, size, 400, &look->text, x + way * off, y + 0.35 * size, far_edge ? 0 : 1);
      return;
    }
  tr_picture_add_line (sheet->picture, x, y, x, y - way * tick, TR_PEN_INNER, &look->text);
  if (has_number && sheet->marks_upward)
    tr_picture_add_upward_text (sheet->picture, text, size, 400, &look->text, x + size * 0.34, y - way * off, far_edge ? 0 : 1);
  else if (has_number)
    tr_picture_add_text (sheet->picture, text, size, 400, &look->text, x, y - way * off + (far_edge ? 0 : size * TR_TEXT_ASCENT), 0.5);
}

static void
add_marks (TrSheetPlan  *sheet,
           const GArray *marks,
           gboolean      far_edge)
{
  double least = (sheet->turned || sheet->marks_upward ? 1.0 : 0.5) * sheet->mark_size;
  double last = -G_MAXDOUBLE;

  for (guint i = 0; i < marks->len; i++)
    {
      double mm = g_array_index (marks, double, i);

      if (sheet->is_too_fine && i > 0 && i + 1 < marks->len)
        continue;
      add_mark (sheet, mm, far_edge, (mm - last) * sheet->scale >= least);
      if ((mm - last) * sheet->scale >= least)
        last = mm;
    }
}

/* From one place to another along the row (or across it), whichever way that
 * lies in the picture. */
static void
add_dimension (TrSheetPlan *sheet,
               gboolean     along_row,
               double       from,
               double       to,
               double       edge,
               double       line,
               const char  *text)
{
  if (along_row != sheet->turned)
    tr_picture_add_dimension_h (sheet->picture, from, to, edge, line, text);
  else
    tr_picture_add_dimension_v (sheet->picture, from, to, edge, line, text);
}

void
tr_sheet_plan_add_marks (TrSheetPlan *sheet)
{
  add_marks (sheet, sheet->near_marks, FALSE);
  add_marks (sheet, sheet->far_marks, TRUE);
}

/* As much of it as the dimension is long; NULL: a drawing that small has room
 * for one number only. */
static char *
dup_rolled (const TrSheetPlan *sheet)
{
  double room = tr_sheet_plan_rolled_mm (sheet) * sheet->scale;
  g_autofree char *number = tr_words_length_number (sheet->reader, tr_sheet_plan_rolled_mm (sheet));
  g_autofree char *all = g_strdup_printf (_("roll to %s, let it shrink"), number);
  g_autofree char *less = g_strdup_printf (_("roll to %s"), number);

  if (tr_text_width (sheet->look, all, sheet->em, 400) <= room)
    return g_steal_pointer (&all);
  return tr_text_width (sheet->look, less, sheet->em, 400) <= room ? g_steal_pointer (&less) : NULL;
}

/* What is cut off, beside the size of a piece; where that leaves room for both numbers. */
static void
add_trim (TrSheetPlan *sheet,
          double       piece_from,
          double       piece_to,
          double       edge,
          double       line)
{
  double trim = sheet->cut->trim_mm * sheet->scale, middle = (piece_from + piece_to) / 2, em = sheet->em;
  double start = sheet->turned ? piece_from - trim : piece_to + trim;
  g_autofree char *text = tr_words_length_number (sheet->reader, sheet->cut->trim_mm);
  double needs = sheet->turned ? tr_text_width (sheet->look, text, em, 400) : em;

  if (sheet->cut->trim_mm <= 0 || fabs (start - middle) < needs + 0.5 * em + sheet->across_text_width / 2)
    return;
  if (!sheet->turned)
    {
      add_dimension (sheet, FALSE, piece_to, start, edge, line, text);
      return;
    }
  /* too narrow for its number, which stands before it */
  add_dimension (sheet, FALSE, start, piece_from, edge, line, "");
  tr_picture_add_text (sheet->picture, text, em, 400, &sheet->look->text, start - 0.4 * em, line + 0.35 * em, 1);
}

/* Outside the marks those along the row, at the row's ends those across it. */
void
tr_sheet_plan_add_dimensions (TrSheetPlan *sheet)
{
  g_autofree char *length = tr_words_length_number (sheet->reader, sheet->sheet->length_mm);
  g_autofree char *width = tr_words_length_number (sheet->reader, sheet->sheet->width_mm);
  g_autofree char *along = tr_words_length_number (sheet->reader, sheet->along_mm);
  g_autofree char *across = tr_words_length_number (sheet->reader, sheet->across_mm);
  g_autofree char *rolled = sheet->shrinks ? dup_rolled (sheet) : NULL;
  TrBox box = tr_sheet_plan_get_box (sheet);
  double em = sheet->em, trim = sheet->cut->trim_mm, off = (sheet->turned ? 0.9 : 1.1) * em;
  double start = sheet->turned ? box.y : box.x, end = start + sheet->sheet->length_mm * sheet->scale;
  double rolled_end = start + tr_sheet_plan_rolled_mm (sheet) * sheet->scale;
  double side = sheet->turned ? box.x : box.y, other_side = side + sheet->sheet->width_mm * sheet->scale;
  double line = side - sheet->marks_room - 0.6 * em, piece_line = other_side + sheet->marks_room + 0.5 * em;
  double x1, y1, x2, y2;

  tr_sheet_plan_to_picture (sheet, trim, trim, &x1, &y1);
  tr_sheet_plan_to_picture (sheet, trim + sheet->along_mm, trim + sheet->across_mm, &x2, &y2);
  add_dimension (sheet, TRUE, start, end, line + 0.4 * em, line, length);
  if (rolled != NULL)
    add_dimension (sheet, TRUE, start, rolled_end, line - 1.5 * em, line - 1.9 * em, rolled);
  add_dimension (sheet, FALSE, side, other_side, start, start - off, width);
  add_dimension (sheet, TRUE, sheet->turned ? y1 : x1, sheet->turned ? y2 : x2, piece_line - 0.7 * em, piece_line, along);
  add_dimension (sheet, FALSE, sheet->turned ? x1 : y2, sheet->turned ? x2 : y1, rolled_end, rolled_end + off, across);
  add_trim (sheet, sheet->turned ? x1 : y2, sheet->turned ? x2 : y1, rolled_end, rolled_end + off);
}
