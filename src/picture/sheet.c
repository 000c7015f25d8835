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
#include "sheet.h"

/* The whole worktop is shown unless that would make the sheet smaller than
 * this part of what it could be. */
#define LEAST_FOR_WORKTOP 0.74
/* Drawn with the row downwards when that makes it this much larger. */
#define BETTER_TURNED 1.12
/* Units between two lines that can still be told apart. */
#define FINEST_PIECE 1.5
#define MOST_MARKS 100

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
static TrBox
box_of (const TrSheetPlan *sheet,
        double       along,
        double       across,
        double       length,
        double       width)
{
  double x1, y1, x2, y2;

  tr_sheet_plan_to_picture (sheet, along, across, &x1, &y1);
  tr_sheet_plan_to_picture (sheet, along + length, across + width, &x2, &y2);
  return (TrBox) { MIN (x1, x2), MIN (y1, y2), fabs (x2 - x1), fabs (y2 - y1) };
}

TrBox
tr_sheet_plan_get_box (const TrSheetPlan *sheet)
{
  return box_of (sheet, 0, 0, sheet->sheet->length_mm, sheet->sheet->width_mm);
}

/* ---- planning ---- */

/* Of those that will be written; so many that they cannot be are not measured. */
static double
widest_mark (const TrSheetPlan  *sheet,
             const GArray *marks)
{
  double widest = 0;

  for (guint i = 0; i < marks->len; i += MAX (1, marks->len / MOST_MARKS))
    {
      g_autofree char *text = tr_words_length_number (sheet->reader, g_array_index (marks, double, i));

      widest = MAX (widest, tr_text_width (sheet->look, text, sheet->mark_size, 400));
    }
  return widest;
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
  g_autofree char *text = tr_words_length_number (sheet->reader, size);
  double wide = tr_text_width (sheet->look, text, sheet->em, 400);

  return size * scale < wide ? wide - 0.4 * sheet->em : 0;
}

/* Numbers stand upright where they would touch each other. */
static void
plan_marks (TrSheetPlan  *sheet,
            double  scale)
{
  double widest = MAX (widest_mark (sheet, sheet->near_marks), widest_mark (sheet, sheet->far_marks));
  double spacing = MIN (mark_spacing (sheet->near_marks), mark_spacing (sheet->far_marks)) * scale;

  sheet->marks_upward = !sheet->turned && widest + 0.5 * sheet->em > spacing;
  sheet->marks_room = 0.75 * sheet->em + (sheet->marks_upward || sheet->turned ? widest : sheet->mark_size);
  sheet->piece_room = find_piece_room (sheet, scale);
}

static void
plan_margins (TrSheetPlan *sheet)
{
  double em = sheet->em, beside = sheet->marks_room + 2.1 * em, rolled = sheet->shrinks ? 1.9 * em : 0;
  double several = sheet->sheet->sheets > 1 ? 2.2 * em : 0, legend = 2.0 * em;

  sheet->top = several + (sheet->turned ? 2.4 * em : beside + rolled);
  sheet->bottom = legend + (sheet->turned ? 2.4 * em : beside);
  sheet->left = sheet->turned ? beside + rolled : 2.6 * em;
  sheet->right = sheet->piece_room + (sheet->turned ? beside + 0.2 * em : 3.0 * em);
}

static double
find_scale (const TrSheetPlan *sheet)
{
  double wide = MAX (1, sheet->width - sheet->left - sheet->right);
  double high = MAX (1, sheet->height - sheet->top - sheet->bottom);
  double length = tr_sheet_plan_rolled_mm (sheet), width = sheet->sheet->width_mm;

  return MIN (wide / (sheet->turned ? width : length), high / (sheet->turned ? length : width));
}

/* The scale that the picture allows, drawn this way. */
static double
plan_way (TrSheetPlan    *sheet,
          gboolean  turned)
{
  sheet->turned = turned;
  plan_marks (sheet, 0);
  plan_margins (sheet);
  plan_marks (sheet, find_scale (sheet));
  plan_margins (sheet);
  return sheet->scale = find_scale (sheet);
}

/* Along and across the row. */
static void
get_worktop (const TrSheetPlan *sheet,
             double      *length_mm,
             double      *width_mm)
{
  const TrBench *bench = sheet->figures->bench;

  *length_mm = bench->worktop_mm[sheet->rotated ? 1 : 0];
  *width_mm = bench->worktop_mm[sheet->rotated ? 0 : 1];
}

static void
make_room_for_worktop (TrSheetPlan *sheet)
{
  double length, width, scale;

  get_worktop (sheet, &length, &width);
  scale = MIN (sheet->width / (sheet->turned ? width : length), (sheet->height - 2 * sheet->em) / (sheet->turned ? length : width));
  if (scale < sheet->scale && scale > LEAST_FOR_WORKTOP * sheet->scale)
    sheet->scale = scale;
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

static void
plan (TrSheetPlan *sheet)
{
  gboolean rotated = FALSE;
  double as_is, used_x, used_y;

  tr_bench_check_sheet (sheet->figures->bench, &sheet->sheet->rolled_mm, &rotated);
  sheet->rotated = rotated;
  sheet->shrinks = tr_sheet_shrinks (sheet->sheet);
  sheet->mark_size = 0.9 * sheet->em;
  find_piece_size (sheet);
  sheet->near_marks = tr_sheet_dup_marks (sheet->cut, sheet->sheet, FALSE);
  sheet->far_marks = tr_sheet_dup_marks (sheet->cut, sheet->sheet, TRUE);

  as_is = plan_way (sheet, FALSE);
  if (plan_way (sheet, TRUE) < BETTER_TURNED * as_is)
    plan_way (sheet, FALSE);
  make_room_for_worktop (sheet);
  plan_marks (sheet, sheet->scale);
  plan_margins (sheet);
  sheet->scale = MIN (sheet->scale, find_scale (sheet));
  sheet->is_too_fine = sheet->along_mm * sheet->scale < FINEST_PIECE || sheet->across_mm * sheet->scale < FINEST_PIECE;

  used_x = (sheet->turned ? sheet->sheet->width_mm : tr_sheet_plan_rolled_mm (sheet)) * sheet->scale;
  used_y = (sheet->turned ? tr_sheet_plan_rolled_mm (sheet) : sheet->sheet->width_mm) * sheet->scale;
  sheet->x = sheet->left + (sheet->width - sheet->left - sheet->right - used_x) / 2;
  sheet->y = sheet->top + (sheet->height - sheet->top - sheet->bottom - used_y) / 2;
}

/* ---- drawing ---- */

/* Behind everything: the worktop as far as the picture reaches. */
static void
add_worktop (TrSheetPlan *sheet)
{
  double length, width, right, bottom;
  TrBox box;

  get_worktop (sheet, &length, &width);
  box = box_of (sheet, (tr_sheet_plan_rolled_mm (sheet) - length) / 2, (sheet->sheet->width_mm - width) / 2, length, width);
  right = MIN (sheet->width, box.x + box.width);
  bottom = MIN (sheet->height - 1.9 * sheet->em, box.y + box.height);
  box.x = MAX (0, box.x);
  box.y = MAX (0, box.y);
  box.width = right - box.x;
  box.height = bottom - box.y;
  if (box.width <= 0 || box.height <= 0)
    return;
  tr_picture_add_rect (sheet->picture, &box, &sheet->look->worktop, TR_PEN_NONE, NULL);
  tr_picture_set_hit (sheet->picture, TR_PART_OF_WORKTOP, 0, _("Worktop"));
}

/* What the tray's outline goes behind: the sheet and every text. */
static GArray *
find_obstacles (const TrSheetPlan *sheet)
{
  GArray *boxes = g_array_new (FALSE, FALSE, sizeof (TrBox));
  TrBox box = box_of (sheet, 0, 0, tr_sheet_plan_rolled_mm (sheet), sheet->sheet->width_mm);
  double off = 0.2 * sheet->em;

  g_array_append_val (boxes, box);
  for (guint i = 0, n = tr_picture_count_texts (sheet->picture); i < n; i++)
    {
      tr_picture_get_text (sheet->picture, i, &box);
      box = (TrBox) { box.x - off, box.y - off, box.width + 2 * off, box.height + 2 * off };
      g_array_append_val (boxes, box);
    }
  return boxes;
}

/* A level or upright line, left out where it meets one of the boxes from `first` on. */
static void
add_line_behind (TrSheetPlan  *sheet,
                 const GArray *boxes,
                 guint         first,
                 double        x1,
                 double        y1,
                 double        x2,
                 double        y2)
{
  for (guint i = first; i < boxes->len; i++)
    {
      const TrBox *box = &g_array_index (boxes, TrBox, i);
      double right = box->x + box->width, bottom = box->y + box->height;

      if (x2 < box->x || x1 > right || y2 < box->y || y1 > bottom)
        continue;
      if (x1 < x2 ? x1 < box->x : y1 < box->y)
        add_line_behind (sheet, boxes, i + 1, x1, y1, x1 < x2 ? box->x : x2, x1 < x2 ? y2 : box->y);
      if (x1 < x2 ? x2 > right : y2 > bottom)
        add_line_behind (sheet, boxes, i + 1, x1 < x2 ? right : x1, x1 < x2 ? y1 : bottom, x2, y2);
      return;
    }
  tr_picture_add_line (sheet->picture, x1, y1, x2, y2, TR_PEN_HAIR, &sheet->look->dim);
}

/* On screen a tray to the same scale, its long side along the sheet's; seen where it is
 * larger. Returns whether anything of it shows. */
static gboolean
add_tray (TrSheetPlan *sheet)
{
  const double *tray = sheet->figures->bench->tray_mm;
  double length = sheet->sheet->length_mm, width = sheet->sheet->width_mm;
  double along = (tray[0] > tray[1]) == (length > width) ? tray[0] : tray[1], across = tray[0] + tray[1] - along;
  TrBox box = box_of (sheet, (length - along) / 2, (width - across) / 2, along, across);
  double right = box.x + box.width, bottom = box.y + box.height;
  g_autoptr (GArray) boxes = NULL;

  if ((along <= length && across <= width) || sheet->look->device_scale <= 0)
    return FALSE;
  if (box.x < 0 || box.y < 0 || right > sheet->width || bottom > sheet->height - 2 * sheet->em)
    return FALSE;
  boxes = find_obstacles (sheet);
  add_line_behind (sheet, boxes, 0, box.x, box.y, right, box.y);
  add_line_behind (sheet, boxes, 0, box.x, bottom, right, bottom);
  add_line_behind (sheet, boxes, 0, box.x, box.y, box.x, bottom);
  add_line_behind (sheet, boxes, 0, right, box.y, right, bottom);
  return TRUE;
}

/* The other sheets peep out behind the first, where there are no marks. */
static void
add_sheets_behind (TrSheetPlan *sheet,
                   const TrBox *box)
{
  for (int i = MIN (sheet->sheet->sheets - 1, 3); i > 0; i--)
    {
      double off = 0.32 * sheet->em * i, less = MIN (off / 2, MIN (box->width, box->height) / 4);
      TrBox behind = sheet->turned ? (TrBox) { box->x + less, box->y + off, box->width - 2 * less, box->height }
                                   : (TrBox) { box->x + off, box->y + less, box->width, box->height - 2 * less };

      tr_picture_add_rect (sheet->picture, &behind, &sheet->look->dough, TR_PEN_INNER, &sheet->look->line);
    }
}

static void
add_sheet (TrSheetPlan *sheet)
{
  TrPicture *picture = sheet->picture;
  const TrLook *look = sheet->look;
  TrBox box = tr_sheet_plan_get_box (sheet);
  g_autofree char *size = tr_words_area_size (sheet->reader, sheet->sheet->length_mm, sheet->sheet->width_mm);
  g_autofree char *label = g_strdup_printf (_("Sheet %s"), size);

  add_sheets_behind (sheet, &box);
  if (sheet->shrinks)
    {
      TrBox rolled = box_of (sheet, 0, 0, tr_sheet_plan_rolled_mm (sheet), sheet->sheet->width_mm);

      tr_picture_add_rect (picture, &rolled, NULL, TR_PEN_INNER, &look->dim);
      tr_picture_dash (picture);
    }
  tr_picture_add_rect (picture, &box, &look->dough, TR_PEN_NONE, NULL);
  tr_picture_set_hit (picture, TR_PART_OF_SHEET, 0, label);
  tr_picture_add_hatch (picture, &box, 0.42 * sheet->em, &look->line);
}

static void
add_piece (TrSheetPlan *sheet,
           int    index)
{
  TrPieceOutline outline;
  g_autofree char *label = NULL;
  double xy[8];

  tr_sheet_get_piece (sheet->cut, sheet->sheet, index, &outline);
  label = g_strdup_printf (_("Piece %d of %d"), index + 1, tr_sheet_count_pieces (sheet->sheet));
  if (outline.n_corners == 0)
    {
      tr_sheet_plan_to_picture (sheet, outline.x[0], outline.y[0], &xy[0], &xy[1]);
      tr_picture_add_circle (sheet->picture, xy[0], xy[1], outline.radius_mm * sheet->scale, &sheet->look->dough,
                             TR_PEN_INNER, &sheet->look->line);
    }
  else
    {
      for (int i = 0; i < outline.n_corners; i++)
        tr_sheet_plan_to_picture (sheet, outline.x[i], outline.y[i], &xy[2 * i], &xy[2 * i + 1]);
      tr_picture_add_polygon (sheet->picture, xy, (guint) outline.n_corners, &sheet->look->dough,
                              TR_PEN_INNER, &sheet->look->line);
    }
  tr_picture_set_hit (sheet->picture, TR_PART_OF_PIECE, index, label);
}

/* More pieces than lines can part: what they cover together. */
static void
add_all_pieces (TrSheetPlan *sheet)
{
  double trim = sheet->cut->trim_mm;
  TrBox box = box_of (sheet, trim, trim, MAX (0, sheet->sheet->length_mm - 2 * trim), MAX (0, sheet->sheet->width_mm - 2 * trim));

  tr_picture_add_rect (sheet->picture, &box, &sheet->look->dough, TR_PEN_INNER, &sheet->look->line);
}

static void
add_pieces (TrSheetPlan *sheet)
{
  int n = tr_sheet_count_pieces (sheet->sheet);

  if (sheet->is_too_fine)
    add_all_pieces (sheet);
  for (int i = 0; i < n && !sheet->is_too_fine; i++)
    add_piece (sheet, i);
}

static void
add_several (TrSheetPlan *sheet)
{
  g_autofree char *text = NULL;

  if (sheet->sheet->sheets < 2)
    return;
  text = g_strdup_printf (_("%d × this sheet"), sheet->sheet->sheets);
  tr_picture_add_text (sheet->picture, text, 1.5 * sheet->em, 700, &sheet->look->text, sheet->x,
                       sheet->y - sheet->top + 1.3 * sheet->em, 0);
}

/* The way a log is rolled up, across the row. */
static void
add_roll_up (TrSheetPlan *sheet)
{
  double x1, y1, x2, y2, middle = sheet->sheet->length_mm / 2;

  if (sheet->cut->shape != TR_SHAPE_SLICES)
    return;
  tr_sheet_plan_to_picture (sheet, middle, sheet->sheet->width_mm * 0.28, &x1, &y1);
  tr_sheet_plan_to_picture (sheet, middle, sheet->sheet->width_mm * 0.62, &x2, &y2);
  tr_picture_add_arrow (sheet->picture, x1, y1, x2, y2, FALSE, &sheet->look->line);
}

/* What the hatching and the warnings mean, under the drawing. */
static void
add_legend (TrSheetPlan *sheet)
{
  const TrLook *look = sheet->look;
  double em = sheet->em, x = MIN (sheet->x, sheet->width * 0.2), baseline = sheet->height - 0.45 * em;
  TrBox swatch = { x, baseline - 0.78 * em, 1.5 * em, 0.95 * em };
  g_autofree char *percent = tr_words_percent (sheet->reader, sheet->sheet->scrap_percent);
  g_autofree char *text = g_strdup_printf (_("scrap %s"), percent);

  tr_picture_add_rect (sheet->picture, &swatch, &look->dough, TR_PEN_INNER, &look->line);
  tr_picture_add_hatch (sheet->picture, &swatch, 0.42 * em, &look->line);
  x += swatch.width + 0.5 * em;
  x += tr_picture_add_text (sheet->picture, text, em, 400, &look->text, x, baseline, 0) + 1.4 * em;
  if (sheet->is_too_fine && x + tr_text_width (look, _("more pieces than can be drawn"), em, 400) < sheet->width)
    x += tr_picture_add_text (sheet->picture, _("more pieces than can be drawn"), em, 400, &look->text, x, baseline, 0) + 1.4 * em;
  if (sheet->shows_tray && sheet->sheet->breaks == 0)
    {
      g_autofree char *size = tr_words_area_size (sheet->reader, sheet->figures->bench->tray_mm[0], sheet->figures->bench->tray_mm[1]);
      g_autofree char *tray = g_strdup_printf (_("tray %s"), size);

      if (x + swatch.width + 0.5 * em + tr_text_width (look, tray, em, 400) > sheet->width)
        return;
      tr_picture_add_rect (sheet->picture, &(TrBox) { x, swatch.y, swatch.width, swatch.height }, NULL, TR_PEN_HAIR, &look->dim);
      x += swatch.width + 0.5 * em;
      x += tr_picture_add_text (sheet->picture, tray, em, 400, &look->text, x, baseline, 0) + 1.4 * em;
    }
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
describe (TrSheetPlan *sheet)
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
  if (sheet->is_too_fine)
    tr_picture_describe (sheet->picture, _("There are more pieces than can be drawn one by one."));
  for (int i = 0; i < TR_N_BREAKS; i++)
    if (figures->breaks & (1 << i))
      tr_picture_describe (sheet->picture, _("The rolled sheet is %s."), tr_words_break ((TrBreaks) (1 << i)));
}

static void
add_nothing (TrSheetPlan *sheet)
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
  TrSheetPlan sheet = { figures, &figures->sheet, figures->dough->cut, reader, look,
                  tr_picture_new (look, reader, width, height), look->text_size, width, height };
  TrBox box;

  if (!figures->has_sheet || sheet.cut == NULL)
    {
      add_nothing (&sheet);
      return sheet.picture;
    }

  plan (&sheet);
  add_worktop (&sheet);
  add_sheet (&sheet);
  add_pieces (&sheet);
  box = tr_sheet_plan_get_box (&sheet);
  tr_picture_add_rect (sheet.picture, &box, NULL, TR_PEN_OUTLINE, &look->line);
  add_roll_up (&sheet);
  tr_sheet_plan_add_marks (&sheet);
  tr_sheet_plan_add_dimensions (&sheet);
  add_several (&sheet);
  sheet.shows_tray = add_tray (&sheet);
  add_legend (&sheet);
  tr_picture_tuck_in (sheet.picture);
  describe (&sheet);
  g_clear_pointer (&sheet.near_marks, g_array_unref);
  g_clear_pointer (&sheet.far_marks, g_array_unref);
  return sheet.picture;
}
