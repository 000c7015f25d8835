/* sheet.c: the cuts on the rolled sheet
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * To scale, seen from above, the baker at the lower edge: row 1 is nearest.
 * The sheet is hatched and the pieces lie on it, so that what shows of the
 * hatching is the scrap. Outlines and marks come from calc/cut.h. This is the
 * picture for paper: one sheet for all. On screen it is drawn with the bench
 * around it (sheets.c), by the same functions.
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

/* ---- planning ---- */

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
plan_way (TrSheetPlan *sheet,
          gboolean     turned)
{
  sheet->turned = turned;
  tr_sheet_plan_measure_marks (sheet, 0);
  tr_sheet_plan_set_margins (sheet);
  tr_sheet_plan_measure_marks (sheet, find_scale (sheet));
  tr_sheet_plan_set_margins (sheet);
  return sheet->scale = find_scale (sheet);
}

static void
make_room_for_worktop (TrSheetPlan *sheet)
{
  double length, width, scale;

  tr_sheet_plan_get_worktop (sheet, &length, &width);
  scale = MIN (sheet->width / (sheet->turned ? width : length), (sheet->height - 2 * sheet->em) / (sheet->turned ? length : width));
  if (scale < sheet->scale && scale > LEAST_FOR_WORKTOP * sheet->scale)
    sheet->scale = scale;
}

static void
plan (TrSheetPlan *sheet)
{
  double as_is, used_x, used_y;

  sheet->head_room = sheet->sheet->sheets > 1 ? 2.2 * sheet->em : 0;
  sheet->foot_room = 2.0 * sheet->em;
  as_is = plan_way (sheet, FALSE);
  if (plan_way (sheet, TRUE) < BETTER_TURNED * as_is)
    plan_way (sheet, FALSE);
  make_room_for_worktop (sheet);
  tr_sheet_plan_measure_marks (sheet, sheet->scale);
  tr_sheet_plan_set_margins (sheet);
  tr_sheet_plan_set_scale (sheet, MIN (sheet->scale, find_scale (sheet)));

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

  tr_sheet_plan_get_worktop (sheet, &length, &width);
  box = tr_sheet_plan_box_of (sheet, (tr_sheet_plan_rolled_mm (sheet) - length) / 2, (sheet->sheet->width_mm - width) / 2, length, width);
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

/* As it leaves the roller; rolled and relaxed differ along the row. */
void
tr_sheet_plan_add_sheet (TrSheetPlan *sheet,
                         int          index)
{
  TrPicture *picture = sheet->picture;
  const TrLook *look = sheet->look;
  TrBox box = tr_sheet_plan_get_box (sheet);
  g_autofree char *size = tr_words_area_size (sheet->reader, sheet->sheet->length_mm, sheet->sheet->width_mm);
  g_autofree char *label = g_strdup_printf (_("Sheet %s"), size);

  if (sheet->shrinks)
    {
      TrBox rolled = tr_sheet_plan_box_of (sheet, 0, 0, tr_sheet_plan_rolled_mm (sheet), sheet->sheet->width_mm);

      tr_picture_add_rect (picture, &rolled, NULL, TR_PEN_INNER, &look->dim);
      tr_picture_dash (picture);
    }
  tr_picture_add_rect (picture, &box, &look->dough, TR_PEN_NONE, NULL);
  tr_picture_set_hit (picture, TR_PART_OF_SHEET, index, label);
  tr_picture_add_hatch (picture, &box, 0.42 * sheet->em, &look->line);
}

static char *
dup_piece_label (const TrSheetPlan *sheet,
                 int                index,
                 gboolean           is_spare)
{
  int on_a_sheet = tr_sheet_count_pieces (sheet->sheet);
  int number = index % on_a_sheet + 1;

  return is_spare ? g_strdup_printf (_("Piece %d of %d, spare: more than is wanted"), number, on_a_sheet)
                  : g_strdup_printf (_("Piece %d of %d"), number, on_a_sheet);
}

/* A spare piece is left open, so that the hatching shows, and its outline is dashed. */
static void
add_piece (TrSheetPlan *sheet,
           int          index,
           gboolean     is_spare)
{
  const TrColour *fill = is_spare ? NULL : &sheet->look->dough, *line = &sheet->look->line;
  g_autofree char *label = dup_piece_label (sheet, index, is_spare);
  TrPieceOutline outline;
  double xy[8];

  tr_sheet_get_piece (sheet->cut, sheet->sheet, index % tr_sheet_count_pieces (sheet->sheet), &outline);
  for (int i = 0; i < MAX (1, outline.n_corners); i++)
    tr_sheet_plan_to_picture (sheet, outline.x[i], outline.y[i], &xy[2 * i], &xy[2 * i + 1]);
  if (outline.n_corners == 0)
    tr_picture_add_circle (sheet->picture, xy[0], xy[1], outline.radius_mm * sheet->scale, fill, TR_PEN_INNER, line);
  else
    tr_picture_add_polygon (sheet->picture, xy, (guint) outline.n_corners, fill, TR_PEN_INNER, line);
  if (is_spare)
    tr_picture_dash (sheet->picture);
  tr_picture_set_hit (sheet->picture, TR_PART_OF_PIECE, index, label);
}

/* More pieces than lines can part: what they cover together. */
static void
add_all_pieces (TrSheetPlan *sheet)
{
  double trim = sheet->cut->trim_mm;
  TrBox box = tr_sheet_plan_box_of (sheet, trim, trim, MAX (0, sheet->sheet->length_mm - 2 * trim),
                                    MAX (0, sheet->sheet->width_mm - 2 * trim));

  tr_picture_add_rect (sheet->picture, &box, &sheet->look->dough, TR_PEN_INNER, &sheet->look->line);
}

void
tr_sheet_plan_add_pieces (TrSheetPlan *sheet,
                          int          index,
                          int          n_spare)
{
  int n = tr_sheet_count_pieces (sheet->sheet);

  if (sheet->is_too_fine)
    add_all_pieces (sheet);
  for (int i = 0; i < n && !sheet->is_too_fine; i++)
    add_piece (sheet, index * n + i, i >= n - n_spare);
}

void
tr_sheet_plan_add_outline (TrSheetPlan *sheet)
{
  TrBox box = tr_sheet_plan_get_box (sheet);

  tr_picture_add_rect (sheet->picture, &box, NULL, TR_PEN_OUTLINE, &sheet->look->line);
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
void
tr_sheet_plan_add_roll_up (TrSheetPlan *sheet)
{
  double x1, y1, x2, y2, middle = sheet->sheet->length_mm / 2;

  if (sheet->cut->shape != TR_SHAPE_SLICES)
    return;
  tr_sheet_plan_to_picture (sheet, middle, sheet->sheet->width_mm * 0.28, &x1, &y1);
  tr_sheet_plan_to_picture (sheet, middle, sheet->sheet->width_mm * 0.62, &x2, &y2);
  tr_picture_add_arrow (sheet->picture, x1, y1, x2, y2, FALSE, &sheet->look->line);
}

/* Returns where the next one starts. */
static double
add_spare_legend (TrSheetPlan *sheet,
                  double       spare,
                  const TrBox *swatch,
                  double       x,
                  double       baseline)
{
  const TrLook *look = sheet->look;
  TrBox box = { x, swatch->y, swatch->width, swatch->height };
  g_autofree char *count = tr_words_count (sheet->reader, spare);
  g_autofree char *text = g_strdup_printf (_("%s spare"), count);

  tr_picture_add_rect (sheet->picture, &box, &look->dough, TR_PEN_NONE, NULL);
  tr_picture_add_hatch (sheet->picture, &box, 0.42 * sheet->em, &look->line);
  tr_picture_add_rect (sheet->picture, &box, NULL, TR_PEN_INNER, &look->line);
  tr_picture_dash (sheet->picture);
  x += box.width + 0.5 * sheet->em;
  return x + tr_picture_add_text (sheet->picture, text, sheet->em, 400, &look->text, x, baseline, 0) + 1.4 * sheet->em;
}

/* What the hatching and the warnings mean, under the drawing. */
void
tr_sheet_plan_add_legend (TrSheetPlan *sheet,
                          double       spare)
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
  if (spare > 0)
    x = add_spare_legend (sheet, spare, &swatch, x, baseline);
  if (sheet->is_too_fine && x + tr_text_width (look, _("more pieces than can be drawn"), em, 400) < sheet->width)
    x += tr_picture_add_text (sheet->picture, _("more pieces than can be drawn"), em, 400, &look->text, x, baseline, 0) + 1.4 * em;
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

void
tr_sheet_plan_describe (TrSheetPlan *sheet)
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

TrPicture *
tr_sheet_picture_new_empty (const TrDoughFigures *figures,
                            const TrReader       *reader,
                            const TrLook         *look,
                            double                width,
                            double                height)
{
  TrPicture *picture = tr_picture_new (look, reader, width, height);
  const char *text = figures->dough->cut == NULL ? _("No cut: the sheet is not known.")
                                                 : _("The dough does not give one piece of this size.");
  g_autofree char *fitting = tr_text_shorten (look, text, look->text_size, 400, width);

  tr_picture_add_text (picture, fitting, look->text_size, 400, &look->dim, width / 2, height / 2, 0.5);
  tr_picture_describe (picture, "%s", text);
  return picture;
}

TrPicture *
tr_sheet_picture_new (const TrDoughFigures *figures,
                      const TrReader       *reader,
                      const TrLook         *look,
                      double                width,
                      double                height)
{
  TrSheetPlan sheet = { figures, &figures->sheet, figures->dough->cut, reader, look, NULL, look->text_size, width, height };
  TrBox box;

  if (!figures->has_sheet || sheet.cut == NULL)
    return tr_sheet_picture_new_empty (figures, reader, look, width, height);

  tr_sheet_plan_init (&sheet, figures, reader, look, width, height);
  sheet.picture = tr_picture_new (look, reader, width, height);
  plan (&sheet);
  add_worktop (&sheet);
  box = tr_sheet_plan_get_box (&sheet);
  add_sheets_behind (&sheet, &box);
  tr_sheet_plan_add_sheet (&sheet, 0);
  tr_sheet_plan_add_pieces (&sheet, 0, 0);
  tr_sheet_plan_add_outline (&sheet);
  tr_sheet_plan_add_roll_up (&sheet);
  tr_sheet_plan_add_marks (&sheet);
  tr_sheet_plan_add_dimensions (&sheet);
  add_several (&sheet);
  tr_sheet_plan_add_legend (&sheet, 0);
  tr_picture_tuck_in (sheet.picture);
  tr_sheet_plan_describe (&sheet);
  tr_sheet_plan_clear (&sheet);
  return sheet.picture;
}
