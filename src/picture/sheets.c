/* sheets.c: all sheets on the bench
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The first sheet lies on the worktop and carries the dimensions; the others,
 * which are like it, lie beside it with their cuts; what is cut too many is
 * left open on the last. Where everything lies is sheets-plan.c's.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "sheets-plan.h"

/* Behind everything, to the picture's edges where it is not shown whole. */
static void
add_worktop (TrSheetsPlan *plan)
{
  const TrLook *look = plan->sheet.look;
  double left = MAX (0, plan->worktop.x), top = MAX (plan->main.y, plan->worktop.y);
  double right = MIN (plan->sheet.width, plan->worktop.x + plan->worktop.width);
  double bottom = MIN (plan->main.y + plan->main.height, plan->worktop.y + plan->worktop.height);
  TrBox box = { left, top, right - left, bottom - top };
  g_autofree char *text = tr_sheets_plan_dup_worktop_text (plan);

  if (box.width <= 0 || box.height <= 0)
    return;
  tr_picture_add_rect (plan->sheet.picture, &box, &look->worktop, TR_PEN_NONE, NULL);
  tr_picture_set_hit (plan->sheet.picture, TR_PART_OF_WORKTOP, 0, text);
  tr_picture_add_text (plan->sheet.picture, text, TR_CAPTION_SIZE * plan->sheet.em, 400, &look->dim,
                       MIN (left, plan->main.x + plan->main.width - plan->worktop_text_width),
                       plan->main.y + plan->main.height + 1.1 * plan->sheet.em, 0);
  tr_picture_describe (plan->sheet.picture, "%s.", text);
}

/* What the worktop's outline goes behind: the sheet and every text. */
static GArray *
find_obstacles (const TrSheetsPlan *plan)
{
  GArray *boxes = g_array_new (FALSE, FALSE, sizeof (TrBox));
  const TrSheetPlan *sheet = &plan->sheet;
  TrBox box = tr_sheet_plan_box_of (sheet, 0, 0, tr_sheet_plan_rolled_mm (sheet), sheet->sheet->width_mm);
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
add_line_behind (TrSheetsPlan *plan,
                 const GArray *boxes,
                 guint         first,
                 gboolean      is_hidden,
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
        add_line_behind (plan, boxes, i + 1, is_hidden, x1, y1, x1 < x2 ? box->x : x2, x1 < x2 ? y2 : box->y);
      if (x1 < x2 ? x2 > right : y2 > bottom)
        add_line_behind (plan, boxes, i + 1, is_hidden, x1 < x2 ? right : x1, x1 < x2 ? y1 : bottom, x2, y2);
      return;
    }
  tr_picture_add_line (plan->sheet.picture, x1, y1, x2, y2, TR_PEN_HAIR, is_hidden ? &plan->sheet.look->line : &plan->sheet.look->dim);
  if (is_hidden)
    tr_picture_dash (plan->sheet.picture);
}

/* Under the sheet, which is the first box, it is a hidden edge as draughtsmen
 * draw it: the sheet reaches over. */
static void
add_worktop_edge (TrSheetsPlan *plan,
                  const GArray *boxes,
                  double        x1,
                  double        y1,
                  double        x2,
                  double        y2)
{
  const TrBox *sheet = &g_array_index (boxes, TrBox, 0);
  double hair = 0.1 * plan->sheet.em;
  double from_x = MAX (x1, sheet->x), from_y = MAX (y1, sheet->y);
  double to_x = MIN (x2, sheet->x + sheet->width), to_y = MIN (y2, sheet->y + sheet->height);

  add_line_behind (plan, boxes, 0, FALSE, x1, y1, x2, y2);
  /* Not where they end together. */
  if (x1 < x2 ? to_x - from_x > hair && y1 > sheet->y + hair && y1 < sheet->y + sheet->height - hair
              : to_y - from_y > hair && x1 > sheet->x + hair && x1 < sheet->x + sheet->width - hair)
    add_line_behind (plan, boxes, 1, TRUE, from_x, from_y, to_x, to_y);
}

/* Last, because it goes behind what is written on it. */
static void
add_worktop_outline (TrSheetsPlan *plan)
{
  g_autoptr (GArray) boxes = NULL;
  TrBox box = plan->worktop;
  double right = box.x + box.width, bottom = box.y + box.height;

  if (!plan->shows_worktop_whole)
    return;
  boxes = find_obstacles (plan);
  add_worktop_edge (plan, boxes, box.x, box.y, right, box.y);
  add_worktop_edge (plan, boxes, box.x, bottom, right, bottom);
  add_worktop_edge (plan, boxes, box.x, box.y, box.x, bottom);
  add_worktop_edge (plan, boxes, right, box.y, right, bottom);
}

static void
add_sheet (TrSheetsPlan *plan,
           int           index)
{
  gboolean is_last = index == plan->n_sheets - 1 && plan->n_sheets == plan->sheet.sheet->sheets;
  TrSheetPlan sheet;

  tr_sheets_plan_get_sheet (plan, index, &sheet);
  tr_sheet_plan_add_sheet (&sheet, index);
  tr_sheet_plan_add_pieces (&sheet, index, is_last ? tr_sheets_plan_count_spare (plan) : 0);
  tr_sheet_plan_add_edges (&sheet, index);
  tr_sheet_plan_add_outline (&sheet);
  tr_sheet_plan_add_roll_up (&sheet);
}

static void
add_caption (TrSheetsPlan *plan,
             int           index)
{
  g_autofree char *text = g_strdup_printf (_("sheet %d"), index + 1);
  TrSheetPlan sheet;
  TrBox box;

  tr_sheets_plan_get_sheet (plan, index, &sheet);
  box = tr_sheet_plan_box_of (&sheet, 0, 0, tr_sheet_plan_rolled_mm (&sheet), sheet.sheet->width_mm);
  tr_picture_add_text (plan->sheet.picture, text, TR_CAPTION_SIZE * sheet.em, 400, &sheet.look->dim, box.x, box.y + box.height + 1.2 * sheet.em, 0);
}

static void
add_number (TrSheetsPlan *plan)
{
  g_autofree char *text = NULL;

  if (plan->n_sheets == plan->sheet.sheet->sheets)
    return;
  text = g_strdup_printf ("× %d", plan->sheet.sheet->sheets);
  tr_picture_add_text (plan->sheet.picture, text, 1.8 * plan->sheet.em, 700, &plan->sheet.look->text, plan->number.x,
                       plan->number.y + 2 * plan->sheet.em, 0);
}

/* A sheet that is held may have grown up to there; its size must still be read. */
static void
clear_heading (TrSheetsPlan *plan,
               double        width)
{
  double em = plan->sheet.em;
  TrBox place = { 0, 0, width + 0.4 * em, 1.9 * em }, extents;

  tr_picture_get_extents (plan->sheet.picture, &extents);
  if (extents.y < place.y + place.height)
    tr_picture_add_rect (plan->sheet.picture, &place, &plan->sheet.look->paper, TR_PEN_NONE, NULL);
}

/* "2 sheets", and what size each is. */
static void
add_heading (TrSheetsPlan *plan)
{
  const TrSheet *sheet = plan->sheet.sheet;
  const TrLook *look = plan->sheet.look;
  double em = plan->sheet.em, x;
  g_autofree char *number = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d sheet", "%d sheets", (gulong) sheet->sheets), sheet->sheets);
  g_autofree char *size = tr_words_size (plan->sheet.reader, &(TrSize) { { sheet->length_mm, sheet->width_mm, sheet->thickness_mm } });
  g_autofree char *rows = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d row of %d", "%d rows of %d", (gulong) sheet->rows), sheet->rows, sheet->per_row);
  g_autofree char *all = g_strdup_printf ("%s · %s", size, rows);
  g_autofree char *shown = NULL;

  x = tr_text_width (look, number, 1.5 * em, 700) + 0.8 * em;
  shown = tr_text_shorten (look, all, em, 400, MAX (em, plan->sheet.width - x));
  clear_heading (plan, x + tr_text_width (look, shown, em, 400));
  tr_picture_add_text (plan->sheet.picture, number, 1.5 * em, 700, &look->text, 0, 1.45 * em, 0);
  tr_picture_add_text (plan->sheet.picture, shown, em, 400, &look->dim, x, 1.45 * em, 0);
}

static void
describe_spare (TrSheetsPlan *plan,
                int           spare)
{
  if (spare > 0)
    tr_picture_describe (plan->sheet.picture, g_dngettext (GETTEXT_PACKAGE, "%d piece more than wanted, left open on the last sheet.",
                                                           "%d pieces more than wanted, left open on the last sheet.", (gulong) spare), spare);
}

static void
draw (TrSheetsPlan *plan)
{
  int spare = tr_sheets_plan_count_spare (plan);

  tr_sheet_plan_describe (&plan->sheet);
  describe_spare (plan, spare);
  add_worktop (plan);
  for (int i = 0; i < plan->n_sheets; i++)
    add_sheet (plan, i);
  for (int i = 1; i < plan->n_sheets; i++)
    add_caption (plan, i);
  add_number (plan);
  tr_sheet_plan_add_marks (&plan->sheet);
  tr_sheet_plan_add_dimensions (&plan->sheet);
  tr_sheets_plan_add_tray (plan);
  add_heading (plan);
  add_worktop_outline (plan);
  tr_sheet_plan_add_legend (&plan->sheet, spare);
}

TrPicture *
tr_sheets_picture_new (const TrDoughFigures *figures,
                       const TrReader       *reader,
                       const TrLook         *look,
                       double                width,
                       double                height,
                       const TrSheetsHold   *hold)
{
  TrSheetsPlan plan;

  if (!figures->has_sheet || figures->dough->cut == NULL)
    return tr_sheet_picture_new_empty (figures, reader, look, width, height);

  tr_sheets_plan_init (&plan, figures, reader, look, width, height, hold);
  if (tr_sheets_plan_is_too_small (&plan))
    {
      tr_sheets_plan_clear (&plan);
      return tr_sheet_picture_new (figures, reader, look, width, height);
    }
  plan.sheet.picture = tr_picture_new (look, reader, width, height);
  draw (&plan);
  tr_picture_tuck_in (plan.sheet.picture);
  tr_sheets_plan_clear (&plan);
  return plan.sheet.picture;
}

/* ---- alternatives ---- */

#define MOST_SMALL_SHEETS 4

/* The figures as they would be for that alternative, and how it lies: sheets above each other, or side by side. */
typedef struct { TrSheet sheet; TrSheetPlan plan; int n_sheets; gboolean is_column; double gap, room_wide, room_high; } Small;

static void
init_small (Small                *small,
            const TrDoughFigures *figures,
            const TrAlternative  *other,
            const TrReader       *reader,
            const TrLook         *look,
            double                width,
            double                height)
{
  *small = (Small) { .sheet = figures->sheet, .n_sheets = MIN (other->sheets, MOST_SMALL_SHEETS), .gap = 0.4 * look->text_size };
  small->sheet.rows = other->rows;
  small->sheet.per_row = other->per_row;
  small->sheet.sheets = other->sheets;
  small->sheet.length_mm = other->length_mm;
  small->sheet.width_mm = other->width_mm;
  small->sheet.hexagonal = other->hexagonal;
  small->room_wide = width;
  small->room_high = height - (other->sheets > small->n_sheets ? 1.3 * look->text_size : 0);
  small->is_column = other->length_mm * height > small->n_sheets * other->width_mm * width;
  tr_sheet_plan_init (&small->plan, figures, reader, look, width, height);
  small->plan.sheet = &small->sheet;
}

static double
find_small_scale (const Small *small)
{
  double gaps = (small->n_sheets - 1) * small->gap, length = small->sheet.length_mm, width = small->sheet.width_mm;
  int across = small->is_column ? 1 : small->n_sheets, down = small->is_column ? small->n_sheets : 1;

  return MIN ((small->room_wide - (small->is_column ? 0 : gaps)) / (length * across),
              (small->room_high - (small->is_column ? gaps : 0)) / (width * down));
}

double
tr_alternatives_find_scale (const TrDoughFigures *figures,
                            const TrAlternative  *alternatives,
                            guint                 n_alternatives,
                            const TrReader       *reader,
                            const TrLook         *look,
                            double                width,
                            double                height)
{
  double scale = G_MAXDOUBLE;

  for (guint i = 0; i < n_alternatives; i++)
    {
      Small small;

      init_small (&small, figures, &alternatives[i], reader, look, width, height);
      scale = MIN (scale, find_small_scale (&small));
      tr_sheet_plan_clear (&small.plan);
    }
  return scale < G_MAXDOUBLE ? MAX (scale, 1e-3) : 0;
}

static void
draw_small (Small *small)
{
  TrSheetPlan *plan = &small->plan;
  double wide = small->sheet.length_mm * plan->scale, high = small->sheet.width_mm * plan->scale;
  int across = small->is_column ? 1 : small->n_sheets, down = small->is_column ? small->n_sheets : 1;
  double left = (small->room_wide - wide * across - small->gap * (across - 1)) / 2;
  double top = (small->room_high - high * down - small->gap * (down - 1)) / 2;

  for (int i = 0; i < small->n_sheets; i++)
    {
      TrBox box;

      plan->x = left + (small->is_column ? 0 : i * (wide + small->gap));
      plan->y = top + (small->is_column ? i * (high + small->gap) : 0);
      box = tr_sheet_plan_get_box (plan);
      tr_picture_add_rect (plan->picture, &box, &plan->look->dough, TR_PEN_NONE, NULL);
      tr_picture_set_hit (plan->picture, TR_PART_OF_SHEET, i, NULL);
      tr_picture_add_hatch (plan->picture, &box, 0.3 * plan->em, &plan->look->line);
      tr_sheet_plan_add_pieces (plan, i, 0);
      tr_picture_add_rect (plan->picture, &box, NULL, TR_PEN_INNER, &plan->look->line);
    }
}

TrPicture *
tr_alternative_picture_new (const TrDoughFigures *figures,
                            const TrAlternative  *alternative,
                            const TrReader       *reader,
                            const TrLook         *look,
                            double                width,
                            double                height,
                            double                scale)
{
  Small small;

  g_return_val_if_fail (figures->has_sheet, NULL);

  init_small (&small, figures, alternative, reader, look, width, height);
  tr_sheet_plan_set_scale (&small.plan, scale > 0 ? scale : find_small_scale (&small));
  small.plan.picture = tr_picture_new (look, reader, width, height);
  draw_small (&small);
  if (small.sheet.sheets > small.n_sheets)
    {
      g_autofree char *text = g_strdup_printf ("× %d", small.sheet.sheets);

      tr_picture_add_text (small.plan.picture, text, look->text_size, 700, &look->text, width / 2, height - 0.25 * look->text_size, 0.5);
    }
  tr_sheet_plan_clear (&small.plan);
  return small.plan.picture;
}
