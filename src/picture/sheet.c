/* sheet.c: the cuts on the rolled sheet
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * To scale, seen from above, the baker at the lower edge: row 1 is nearest.
 * The sheet is hatched and the pieces lie on it, so that what shows of the
 * hatching is the scrap. Outlines and marks come from calc/cut.h.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../calc/cut.h"
#include "../calc/lamination.h"
#include "shapes.h"

/* The whole worktop is shown unless that would make the sheet smaller than
 * this part of what it could be. */
#define LEAST_FOR_WORKTOP 0.74

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
  TrBox box;                         /* the relaxed sheet */
  GArray *near_marks, *far_marks;    /* double, mm */
  double mark_size;                  /* of the running numbers */
  gboolean marks_upward;
  double marks_room;                 /* height the numbers take */
  gboolean shrinks, rotated;
} Sheet;

static double
widest_mark (const Sheet  *sheet,
             const GArray *marks)
{
  double widest = 0;

  for (guint i = 0; i < marks->len; i++)
    {
      g_autofree char *text = tr_words_length_number (sheet->reader, g_array_index (marks, double, i));

      widest = MAX (widest, tr_text_width (sheet->look, text, sheet->mark_size, 400));
    }
  return widest;
}

static double
mark_spacing (const GArray *marks)
{
  double least = G_MAXDOUBLE;

  for (guint i = 1; i < marks->len; i++)
    least = MIN (least, g_array_index (marks, double, i) - g_array_index (marks, double, i - 1));
  return least;
}

/* Numbers stand upright where they would touch each other. */
static void
plan_marks (Sheet  *sheet,
            double  scale)
{
  double widest = MAX (widest_mark (sheet, sheet->near_marks), widest_mark (sheet, sheet->far_marks));
  double spacing = MIN (mark_spacing (sheet->near_marks), mark_spacing (sheet->far_marks)) * scale;

  sheet->marks_upward = widest + 0.5 * sheet->em > spacing;
  sheet->marks_room = 0.75 * sheet->em + (sheet->marks_upward ? widest : sheet->mark_size);
}

static void
plan_margins (Sheet *sheet)
{
  double em = sheet->em;

  sheet->top = sheet->marks_room + 2.1 * em + (sheet->shrinks ? 1.9 * em : 0) + (sheet->sheet->sheets > 1 ? 2.2 * em : 0);
  sheet->bottom = sheet->marks_room + 2.1 * em + 2.0 * em;
  sheet->left = 2.6 * em;
  sheet->right = 3.0 * em;
}

static double
scale_for (const Sheet *sheet,
           double       length_mm,
           double       width_mm)
{
  double wide = MAX (1, sheet->width - sheet->left - sheet->right);
  double high = MAX (1, sheet->height - sheet->top - sheet->bottom);

  return MIN (wide / length_mm, high / width_mm);
}

static void
get_worktop (const Sheet *sheet,
             double      *length_mm,
             double      *width_mm)
{
  const TrBench *bench = sheet->figures->bench;

  *length_mm = bench->worktop_mm[sheet->rotated ? 1 : 0];
  *width_mm = bench->worktop_mm[sheet->rotated ? 0 : 1];
}

static void
plan (Sheet *sheet)
{
  double length = MAX (sheet->sheet->length_mm, sheet->sheet->rolled_mm.mm[0]), width = sheet->sheet->width_mm;
  double top_length, top_width, with_worktop;
  gboolean rotated = FALSE;

  tr_bench_check_sheet (sheet->figures->bench, &sheet->sheet->rolled_mm, &rotated);
  sheet->rotated = rotated;
  sheet->shrinks = sheet->sheet->rolled_mm.mm[0] > sheet->sheet->length_mm + 0.5;
  sheet->mark_size = 0.9 * sheet->em;
  sheet->near_marks = tr_sheet_dup_marks (sheet->cut, sheet->sheet, FALSE);
  sheet->far_marks = tr_sheet_dup_marks (sheet->cut, sheet->sheet, TRUE);

  plan_marks (sheet, 0);
  plan_margins (sheet);
  plan_marks (sheet, scale_for (sheet, length, width));
  plan_margins (sheet);
  sheet->scale = scale_for (sheet, length, width);
  get_worktop (sheet, &top_length, &top_width);
  with_worktop = MIN (sheet->width / top_length, sheet->height / top_width);
  if (with_worktop < sheet->scale && with_worktop > LEAST_FOR_WORKTOP * sheet->scale)
    sheet->scale = with_worktop;
  plan_marks (sheet, sheet->scale);

  sheet->box.width = sheet->sheet->length_mm * sheet->scale;
  sheet->box.height = width * sheet->scale;
  sheet->box.x = sheet->left + (sheet->width - sheet->left - sheet->right - length * sheet->scale) / 2;
  sheet->box.y = sheet->top + (sheet->height - sheet->top - sheet->bottom - sheet->box.height) / 2;
}

/* Behind everything: the worktop as far as the picture reaches, its near edge
 * towards the baker. */
static void
add_worktop (Sheet *sheet)
{
  double length, width, x, y;
  TrBox box;

  get_worktop (sheet, &length, &width);
  length *= sheet->scale;
  width *= sheet->scale;
  x = sheet->box.x + (MAX (sheet->sheet->length_mm, sheet->sheet->rolled_mm.mm[0]) * sheet->scale - length) / 2;
  y = sheet->box.y + (sheet->box.height - width) / 2;
  box.x = MAX (0, x);
  box.y = MAX (0, y);
  box.width = MIN (sheet->width, x + length) - box.x;
  box.height = MIN (sheet->height, y + width) - box.y;
  if (box.width <= 0 || box.height <= 0)
    return;
  tr_picture_add_rect (sheet->picture, &box, &sheet->look->worktop, TR_PEN_NONE, NULL);
  tr_picture_set_hit (sheet->picture, TR_PART_OF_WORKTOP, 0, _("Worktop"));
}

/* The other sheets peep out behind the first. */
static void
add_sheet (Sheet *sheet)
{
  TrPicture *picture = sheet->picture;
  const TrLook *look = sheet->look;
  int behind = MIN (sheet->sheet->sheets - 1, 3);
  g_autofree char *size = tr_words_area_size (sheet->reader, sheet->sheet->length_mm, sheet->sheet->width_mm);
  g_autofree char *label = g_strdup_printf (_("Sheet %s"), size);

  for (int i = behind; i > 0; i--)
    {
      double off = 0.32 * sheet->em * i;

      tr_picture_add_rect (picture, &(TrBox) { sheet->box.x + off, sheet->box.y - off, sheet->box.width, sheet->box.height },
                           &look->dough, TR_PEN_INNER, &look->line);
    }
  if (sheet->shrinks)
    {
      tr_picture_add_rect (picture, &(TrBox) { sheet->box.x, sheet->box.y, sheet->sheet->rolled_mm.mm[0] * sheet->scale,
                                               sheet->box.height },
                           NULL, TR_PEN_INNER, &look->dim);
      tr_picture_dash (picture);
    }
  tr_picture_add_rect (picture, &sheet->box, &look->dough, TR_PEN_NONE, NULL);
  tr_picture_set_hit (picture, TR_PART_OF_SHEET, 0, label);
  tr_picture_add_hatch (picture, &sheet->box, 0.42 * sheet->em, &look->line);
}

static double
x_at (const Sheet *sheet,
      double       mm)
{
  return sheet->box.x + mm * sheet->scale;
}

/* Rows are counted from the baker's edge. */
static double
y_at (const Sheet *sheet,
      double       mm)
{
  return sheet->box.y + sheet->box.height - mm * sheet->scale;
}

static void
add_piece (Sheet *sheet,
           int    index)
{
  TrPieceOutline outline;
  g_autofree char *label = NULL;
  double xy[8];

  tr_sheet_get_piece (sheet->cut, sheet->sheet, index, &outline);
  label = g_strdup_printf (_("Piece %d of %d"), index + 1, tr_sheet_count_pieces (sheet->sheet));
  if (outline.n_corners == 0)
    {
      tr_picture_add_circle (sheet->picture, x_at (sheet, outline.x[0]), y_at (sheet, outline.y[0]),
                             outline.radius_mm * sheet->scale, &sheet->look->dough, TR_PEN_INNER, &sheet->look->line);
    }
  else
    {
      for (int i = 0; i < outline.n_corners; i++)
        {
          xy[2 * i] = x_at (sheet, outline.x[i]);
          xy[2 * i + 1] = y_at (sheet, outline.y[i]);
        }
      tr_picture_add_polygon (sheet->picture, xy, (guint) outline.n_corners, &sheet->look->dough,
                              TR_PEN_INNER, &sheet->look->line);
    }
  tr_picture_set_hit (sheet->picture, TR_PART_OF_PIECE, index, label);
}

static void
add_marks (Sheet        *sheet,
           const GArray *marks,
           gboolean      far_edge)
{
  double edge = far_edge ? sheet->box.y : sheet->box.y + sheet->box.height;
  double way = far_edge ? -1 : 1, tick = 0.42 * sheet->em;
  double least = sheet->marks_upward ? sheet->mark_size * 0.95 : 0;
  double last = -G_MAXDOUBLE;

  for (guint i = 0; i < marks->len; i++)
    {
      double x = x_at (sheet, g_array_index (marks, double, i));
      g_autofree char *text = tr_words_length_number (sheet->reader, g_array_index (marks, double, i));

      tr_picture_add_line (sheet->picture, x, edge, x, edge + way * tick, TR_PEN_INNER, &sheet->look->text);
      if (x - last < least)
        continue;
      last = x;
      if (sheet->marks_upward)
        tr_picture_add_upward_text (sheet->picture, text, sheet->mark_size, 400, &sheet->look->text, x + sheet->mark_size * 0.34,
                                    edge + way * 1.4 * tick, far_edge ? 0 : 1);
      else
        tr_picture_add_text (sheet->picture, text, sheet->mark_size, 400, &sheet->look->text, x,
                             far_edge ? edge - 1.4 * tick : edge + 1.4 * tick + sheet->mark_size * TR_TEXT_ASCENT, 0.5);
    }
}

/* The piece's own two sizes, in millimetres along the row and across it. */
static void
get_piece_size (const Sheet *sheet,
                double      *along,
                double      *across)
{
  const TrCut *cut = sheet->cut;

  switch (cut->shape)
    {
    case TR_SHAPE_TRIANGLE:
    case TR_SHAPE_RIGHT_TRIANGLE:
      *along = cut->base_mm;
      *across = cut->height_mm;
      break;
    case TR_SHAPE_RECTANGLE:
      *along = cut->width_mm;
      *across = cut->length_mm;
      break;
    case TR_SHAPE_SQUARE:
      *along = *across = cut->side_mm;
      break;
    case TR_SHAPE_ROUND:
      *along = *across = cut->diameter_mm;
      break;
    case TR_SHAPE_SLICES:
    case TR_N_SHAPES:
    default:
      *along = cut->slice_mm;
      *across = cut->roll_length_mm;
      break;
    }
}

static void
add_dimensions (Sheet *sheet)
{
  double em = sheet->em, right = sheet->box.x + sheet->box.width, bottom = sheet->box.y + sheet->box.height;
  double rolled = sheet->box.x + sheet->sheet->rolled_mm.mm[0] * sheet->scale;
  double line = sheet->box.y - sheet->marks_room - 0.6 * em;
  double along, across, trim = sheet->cut->trim_mm;
  g_autofree char *length = tr_words_length_number (sheet->reader, sheet->sheet->length_mm);
  g_autofree char *width = tr_words_length_number (sheet->reader, sheet->sheet->width_mm);
  g_autofree char *along_text = NULL, *across_text = NULL;

  get_piece_size (sheet, &along, &across);
  along_text = tr_words_length_number (sheet->reader, along);
  across_text = tr_words_length_number (sheet->reader, across);
  tr_picture_add_dimension_h (sheet->picture, sheet->box.x, right, line + 0.4 * em, line, length);
  if (sheet->shrinks)
    {
      g_autofree char *number = tr_words_length_number (sheet->reader, sheet->sheet->rolled_mm.mm[0]);
      g_autofree char *text = g_strdup_printf (_("roll to %s, let it shrink"), number);

      tr_picture_add_dimension_h (sheet->picture, sheet->box.x, rolled, line - 1.5 * em, line - 1.9 * em, text);
    }
  tr_picture_add_dimension_v (sheet->picture, sheet->box.y, bottom, sheet->box.x, sheet->box.x - 1.1 * em, width);
  tr_picture_add_dimension_h (sheet->picture, x_at (sheet, trim), x_at (sheet, trim + along),
                              bottom + sheet->marks_room - 0.2 * em, bottom + sheet->marks_room + 0.5 * em, along_text);
  tr_picture_add_dimension_v (sheet->picture, y_at (sheet, trim + across), y_at (sheet, trim),
                              MAX (right, rolled), MAX (right, rolled) + 1.1 * em, across_text);
}

static void
add_several (Sheet *sheet)
{
  g_autofree char *text = NULL;

  if (sheet->sheet->sheets < 2)
    return;
  text = g_strdup_printf (_("%d × this sheet"), sheet->sheet->sheets);
  tr_picture_add_text (sheet->picture, text, 1.5 * sheet->em, 700, &sheet->look->text, sheet->box.x,
                       sheet->box.y - sheet->top + 1.3 * sheet->em, 0);
}

static void
add_roll_up (Sheet *sheet)
{
  const TrLook *look = sheet->look;
  double x = sheet->box.x + sheet->box.width / 2;
  double from = sheet->box.y + sheet->box.height * 0.72, to = sheet->box.y + sheet->box.height * 0.38;

  if (sheet->cut->shape != TR_SHAPE_SLICES)
    return;
  tr_picture_add_arrow (sheet->picture, x, from, x, to, FALSE, &look->line);
}

/* What the hatching and the warnings mean, under the drawing. */
static void
add_legend (Sheet *sheet)
{
  const TrLook *look = sheet->look;
  double em = sheet->em, x = sheet->box.x, baseline = sheet->box.y + sheet->box.height + sheet->bottom - 0.35 * em;
  TrBox swatch = { x, baseline - 0.78 * em, 1.5 * em, 0.95 * em };
  g_autofree char *percent = tr_words_percent (sheet->reader, sheet->sheet->scrap_percent);
  g_autofree char *text = g_strdup_printf (_("scrap %s"), percent);

  tr_picture_add_rect (sheet->picture, &swatch, &look->dough, TR_PEN_INNER, &look->line);
  tr_picture_add_hatch (sheet->picture, &swatch, 0.42 * em, &look->line);
  x += swatch.width + 0.5 * em;
  x += tr_picture_add_text (sheet->picture, text, em, 400, &look->text, x, baseline, 0) + 1.4 * em;
  for (int i = 0; i < TR_N_BREAKS; i++)
    {
      TrBreaks one = (TrBreaks) (1 << i);
      g_autofree char *shown = NULL;

      if (!(sheet->sheet->breaks & one) || x > sheet->width - 6 * em)
        continue;
      x += tr_picture_add_warning (sheet->picture, x, baseline, em) + 0.4 * em;
      shown = tr_text_shorten (look, tr_words_break (one), em, 700, sheet->width - x);
      x += tr_picture_add_text (sheet->picture, shown, em, 700, &look->warning, x, baseline, 0) + em;
    }
}

static void
describe (Sheet *sheet)
{
  const TrSheet *figures = sheet->sheet;
  g_autofree char *relaxed = NULL, *rolled = tr_words_size (sheet->reader, &figures->rolled_mm);
  g_autofree char *scrap = tr_words_percent (sheet->reader, figures->scrap_percent);
  g_autofree char *pieces = tr_words_count (sheet->reader, figures->pieces_cut);
  TrSize size = { { figures->length_mm, figures->width_mm, figures->thickness_mm } };

  relaxed = tr_words_size (sheet->reader, &size);
  if (figures->sheets > 1)
    tr_picture_describe (sheet->picture, _("%d sheets of %s each."), figures->sheets, relaxed);
  else
    tr_picture_describe (sheet->picture, _("One sheet of %s."), relaxed);
  if (sheet->shrinks)
    tr_picture_describe (sheet->picture, _("Roll to %s and let it shrink to that."), rolled);
  tr_picture_describe (sheet->picture, _("Rows: %d, in each %d; %s pieces in all, scrap %s."), figures->rows,
                       figures->per_row, pieces, scrap);
  for (int i = 0; i < TR_N_BREAKS; i++)
    if (figures->breaks & (1 << i))
      tr_picture_describe (sheet->picture, _("The rolled sheet is %s."), tr_words_break ((TrBreaks) (1 << i)));
}

static void
add_nothing (Sheet *sheet)
{
  const char *text = sheet->cut == NULL ? _("No cut: the sheet is not known.")
                                        : _("The dough does not give one piece of this size.");
  g_autofree char *fitting = tr_text_shorten (sheet->look, text, sheet->em, 400, sheet->width);

  tr_picture_add_text (sheet->picture, fitting, sheet->em, 400, &sheet->look->dim, sheet->width / 2, sheet->height / 2, 0.5);
  tr_picture_describe (sheet->picture, "%s", text);
}

TrPicture *
tr_sheet_picture_new (const TrDoughFigures *figures,
                      const TrReader       *reader,
                      const TrLook         *look,
                      double                width,
                      double                height)
{
  Sheet sheet = { figures, &figures->sheet, figures->dough->cut, reader, look,
                  tr_picture_new (look, reader, width, height), look->text_size, width, height };
  int n;

  if (!figures->has_sheet || sheet.cut == NULL)
    {
      add_nothing (&sheet);
      return sheet.picture;
    }

  plan (&sheet);
  add_worktop (&sheet);
  add_sheet (&sheet);
  n = tr_sheet_count_pieces (sheet.sheet);
  for (int i = 0; i < n; i++)
    add_piece (&sheet, i);
  tr_picture_add_rect (sheet.picture, &sheet.box, NULL, TR_PEN_OUTLINE, &look->line);
  add_roll_up (&sheet);
  add_marks (&sheet, sheet.near_marks, FALSE);
  add_marks (&sheet, sheet.far_marks, TRUE);
  add_dimensions (&sheet);
  add_several (&sheet);
  add_legend (&sheet);
  describe (&sheet);
  g_clear_pointer (&sheet.near_marks, g_array_unref);
  g_clear_pointer (&sheet.far_marks, g_array_unref);
  return sheet.picture;
}
