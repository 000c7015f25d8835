/* sheets-plan.c: how the sheets, the worktop and the tray share a picture
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   below                        beside
 *   ┌─ worktop ───────────┐      ┌─ worktop ───────────┐ ┌ sheet 2 ┐
 *   │  first sheet        │      │  first sheet        │ └─────────┘
 *   └─────────────────────┘      │                     │ ┌ tray ───┐
 *   ┌ sheet 2 ┐ ┌ tray ───┐      └─────────────────────┘ └─────────┘
 *   └─────────┘ └─────────┘
 *
 * All boxes but the first flow, like words, in lines below it or in columns
 * beside it. Each way (below or beside, the row across or downwards, the tray
 * one way or the other) allows a largest scale; the way with the largest one is taken.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "sheets-plan.h"

typedef enum { WAY_TURNED = 1 << 0, WAY_BESIDE = 1 << 1, WAY_TRAY_TURNED = 1 << 2, WAY_WORKTOP = 1 << 3, N_WAYS = 1 << 4 } Way;

/* The whole worktop is shown unless that would make everything smaller than
 * this part of what it could be. */
#define LEAST_FOR_WORKTOP 0.62
/* The row runs downwards when that makes it this much larger. */
#define BETTER_TURNED 1.12
#define LEAST_SHEET_EM 4.0
#define HEAD_EM 2.5
#define FOOT_EM 2.2
#define GAP_EM 1.2
#define CAPTION_EM 1.5
#define TRAY_CAPTION_EM 4.0      /* three lines */
#define LEAST_TRAY_EM 15.0

#define BIT_OF_NUMBER 30
#define BIT_OF_TRAY 31

/* Boxes beside each other; a line (or column) ends where the next does not fit,
 * or, while the picture is held, where it did before. `breaks` has a bit for each box. */
typedef struct { double x, y, limit, gap, thick, used; gboolean is_down, is_held; guint breaks; } Flow;

static TrBox
flow_on (Flow   *flow,
         guint   bit,
         double  width,
         double  height)
{
  double *along = flow->is_down ? &flow->y : &flow->x, *across = flow->is_down ? &flow->x : &flow->y;
  double long_side = flow->is_down ? height : width, thick = flow->is_down ? width : height;
  gboolean is_broken = flow->is_held ? (flow->breaks & 1u << bit) != 0 : *along > 0 && *along + long_side > flow->limit;
  TrBox box;

  if (is_broken)
    {
      flow->breaks |= 1u << bit;
      *across += flow->thick + flow->gap;
      *along = flow->thick = 0;
    }
  box = (TrBox) { flow->x, flow->y, width, height };
  flow->used = MAX (flow->used, *along + long_side);
  *along += long_side + flow->gap;
  flow->thick = MAX (flow->thick, thick);
  return box;
}

/* Size of the first sheet as it lies in the picture. */
static void
get_extent (const TrSheetPlan *sheet,
            double            *wide,
            double            *high)
{
  double length = tr_sheet_plan_rolled_mm (sheet) * sheet->scale, width = sheet->sheet->width_mm * sheet->scale;

  *wide = sheet->turned ? width : length;
  *high = sheet->turned ? length : width;
}

static void
place_main (TrSheetsPlan *plan)
{
  TrSheetPlan *sheet = &plan->sheet;
  double wide, high, length, width, top_wide, top_high;
  double left = sheet->left, right = sheet->right, top = sheet->top, bottom = sheet->bottom;

  get_extent (sheet, &wide, &high);
  tr_sheet_plan_get_worktop (sheet, &length, &width);
  top_wide = (sheet->turned ? width : length) * sheet->scale;
  top_high = (sheet->turned ? length : width) * sheet->scale;
  if (plan->shows_worktop_whole)
    {
      left = MAX (left, (top_wide - wide) / 2);
      right = MAX (right, (top_wide - wide) / 2);
      top = MAX (top, (top_high - high) / 2);
      bottom = MAX (bottom, (top_high - high) / 2);
    }
  plan->x[0] = left;
  plan->y[0] = top;
  plan->main = (TrBox) { 0, 0, MAX (plan->worktop_text_width, left + wide + right), top + high + bottom };
  plan->worktop = (TrBox) { left + (wide - top_wide) / 2, top + (high - top_high) / 2, top_wide, top_high };
}

static void
place_others (TrSheetsPlan *plan,
              Flow         *flow)
{
  double em = plan->sheet.em, wide, high;

  get_extent (&plan->sheet, &wide, &high);
  for (int i = 1; i < plan->n_sheets; i++)
    {
      /* a little more, because what is hit reaches over the edge */
      TrBox box = flow_on (flow, (guint) i, MAX (wide + 0.8 * em, 7 * em), high + CAPTION_EM * em);

      plan->x[i] = box.x + 0.4 * em;
      plan->y[i] = box.y;
    }
  if (plan->n_sheets < plan->sheet.sheet->sheets)
    plan->number = flow_on (flow, BIT_OF_NUMBER, 5 * em, 3 * em);
}

static void
place_tray (TrSheetsPlan *plan,
            Flow         *flow)
{
  const double *tray = plan->sheet.figures->bench->tray_mm;
  double em = plan->sheet.em, scale = plan->sheet.scale;
  double wide = tray[plan->tray_is_turned ? 1 : 0] * scale, high = tray[plan->tray_is_turned ? 0 : 1] * scale;
  TrBox box;

  plan->tray_text_width = MAX (wide, MIN (LEAST_TRAY_EM * em, plan->sheet.width));
  box = flow_on (flow, BIT_OF_TRAY, plan->tray_text_width, high + TRAY_CAPTION_EM * em);
  plan->tray = (TrBox) { box.x, box.y, wide, high };
}

/* Everything from 0, 0 on. */
static void
place_all (TrSheetsPlan *plan,
           guint         way,
           double        scale,
           double        room_wide,
           double        room_high,
           double       *used_wide,
           double       *used_high)
{
  double gap = GAP_EM * plan->sheet.em, main_wide, main_high;
  gboolean is_beside = (way & WAY_BESIDE) != 0;
  Flow flow = { .limit = is_beside ? room_high : room_wide, .gap = gap, .is_down = is_beside,
                .is_held = plan->hold.is_held, .breaks = plan->hold.is_held ? plan->hold.breaks : 0 };

  tr_sheet_plan_set_scale (&plan->sheet, scale);
  place_main (plan);
  main_wide = plan->main.width;
  main_high = plan->main.height + CAPTION_EM * plan->sheet.em;
  if (is_beside)
    flow.x = main_wide + gap;
  else
    flow.y = main_high + gap;
  place_others (plan, &flow);
  place_tray (plan, &flow);
  plan->hold.breaks = flow.breaks;
  *used_wide = is_beside ? flow.x + flow.thick : MAX (main_wide, flow.used);
  *used_high = is_beside ? MAX (main_high, flow.used) : flow.y + flow.thick;
}

static gboolean
fits (TrSheetsPlan *plan,
      guint         way,
      double        scale,
      double        room_wide,
      double        room_high)
{
  double wide, high;

  place_all (plan, way, scale, room_wide, room_high, &wide, &high);
  return wide <= room_wide && high <= room_high;
}

static double
find_scale (TrSheetsPlan *plan,
            guint         way,
            double        room_wide,
            double        room_high)
{
  double low = 0, high = MAX (room_wide, room_high) / MAX (1, MIN (plan->sheet.sheet->length_mm, plan->sheet.sheet->width_mm));

  for (int i = 0; i < 24; i++)
    {
      double middle = (low + high) / 2;

      if (fits (plan, way, middle, room_wide, room_high))
        low = middle;
      else
        high = middle;
    }
  return low;
}

static void
set_way (TrSheetsPlan *plan,
         guint         way,
         double        scale)
{
  plan->sheet.turned = (way & WAY_TURNED) != 0;
  plan->shows_worktop_whole = (way & WAY_WORKTOP) != 0;
  plan->tray_is_turned = (way & WAY_TRAY_TURNED) != 0;
  tr_sheet_plan_measure_marks (&plan->sheet, scale);
  tr_sheet_plan_set_margins (&plan->sheet);
}

/* Numbers that stand upright need more room, and less room makes more of them stand so. */
static double
find_scale_of_way (TrSheetsPlan *plan,
                   guint         way,
                   double        room_wide,
                   double        room_high)
{
  double scale;

  set_way (plan, way, 0);
  scale = find_scale (plan, way, room_wide, room_high);
  for (int i = 0; i < 2; i++)
    {
      set_way (plan, way, scale);
      scale = MIN (scale, find_scale (plan, way, room_wide, room_high));
    }
  return scale;
}

static double
weigh (guint  way,
       double scale)
{
  double weight = scale;

  if (way & WAY_TURNED)
    weight /= BETTER_TURNED;
  if (way & WAY_TRAY_TURNED)
    weight /= 1.03;
  if (way & WAY_WORKTOP)
    weight /= LEAST_FOR_WORKTOP;
  return weight;
}

static guint
choose_way (TrSheetsPlan *plan,
            double        room_wide,
            double        room_high,
            double       *scale)
{
  double best = -1;
  guint chosen = 0;

  for (guint way = 0; way < N_WAYS; way++)
    {
      double one = find_scale_of_way (plan, way, room_wide, room_high);

      if (weigh (way, one) <= best)
        continue;
      best = weigh (way, one);
      chosen = way;
      *scale = one;
    }
  return chosen;
}

static void
move_box (TrBox  *box,
          double  dx,
          double  dy)
{
  box->x += dx;
  box->y += dy;
}

static void
move_all (TrSheetsPlan *plan,
          double        dx,
          double        dy)
{
  for (int i = 0; i < plan->n_sheets; i++)
    {
      plan->x[i] += dx;
      plan->y[i] += dy;
    }
  move_box (&plan->main, dx, dy);
  move_box (&plan->worktop, dx, dy);
  move_box (&plan->tray, dx, dy);
  move_box (&plan->number, dx, dy);
  plan->sheet.x = plan->x[0];
  plan->sheet.y = plan->y[0];
}

/* Where the row of a sheet starts on its near edge. */
static void
get_corner (const TrSheetsPlan *plan,
            int                 index,
            double             *x,
            double             *y)
{
  TrSheetPlan sheet;

  tr_sheets_plan_get_sheet (plan, index, &sheet);
  tr_sheet_plan_to_picture (&sheet, 0, 0, x, y);
}

static void
move_to_hold (TrSheetsPlan       *plan,
              const TrSheetsHold *hold)
{
  int index = MIN (hold->sheet, plan->n_sheets - 1);
  double x, y;

  get_corner (plan, index, &x, &y);
  move_all (plan, hold->x - x, hold->y - y);
}

static double
measure_worktop_text (const TrSheetsPlan *plan)
{
  g_autofree char *text = tr_sheets_plan_dup_worktop_text (plan);

  return tr_text_width (plan->sheet.look, text, TR_CAPTION_SIZE * plan->sheet.em, 400);
}

void
tr_sheets_plan_init (TrSheetsPlan         *plan,
                     const TrDoughFigures *figures,
                     const TrReader       *reader,
                     const TrLook         *look,
                     double                width,
                     double                height,
                     const TrSheetsHold   *hold)
{
  double em = look->text_size, head = HEAD_EM * em, used_wide, used_high, scale = 0;
  double room_wide = width, room_high = MAX (1, height - head - FOOT_EM * em);
  int sheets = figures->sheet.sheets;
  guint way;

  *plan = (TrSheetsPlan) { .n_sheets = sheets <= TR_MOST_SHEETS_DRAWN ? sheets : TR_FEW_SHEETS };
  tr_sheet_plan_init (&plan->sheet, figures, reader, look, width, height);
  plan->worktop_text_width = measure_worktop_text (plan);
  if (hold != NULL)
    plan->hold = *hold;
  way = hold != NULL && hold->is_held ? hold->way : choose_way (plan, room_wide, room_high, &scale);
  if (hold != NULL && hold->is_held)
    scale = hold->scale;
  set_way (plan, way, scale);
  place_all (plan, way, scale, room_wide, room_high, &used_wide, &used_high);
  plan->is_crowded = used_wide > room_wide + 1 || used_high > room_high + 1;
  move_all (plan, MAX (0, (width - used_wide) / 2), head);
  /* The legend stands under what is drawn, not at the foot of what is left free. */
  plan->sheet.height = hold != NULL && hold->is_held ? hold->foot : MIN (height, head + used_high + FOOT_EM * em);
  if (hold != NULL && hold->is_held)
    {
      plan->is_crowded = FALSE;
      move_to_hold (plan, hold);
    }
  plan->hold = (TrSheetsHold) { .is_held = TRUE, .scale = scale, .way = way, .breaks = plan->hold.breaks, .is_turned = plan->sheet.turned,
                                .foot = plan->sheet.height };
  get_corner (plan, 0, &plan->hold.x, &plan->hold.y);
}

void
tr_sheets_plan_clear (TrSheetsPlan *plan)
{
  tr_sheet_plan_clear (&plan->sheet);
}

void
tr_sheets_plan_get_sheet (const TrSheetsPlan *plan,
                          int                 index,
                          TrSheetPlan        *sheet)
{
  *sheet = plan->sheet;
  sheet->x = plan->x[index];
  sheet->y = plan->y[index];
}

char *
tr_sheets_plan_dup_worktop_text (const TrSheetsPlan *plan)
{
  const double *worktop = plan->sheet.figures->bench->worktop_mm;
  g_autofree char *size = tr_words_area_size (plan->sheet.reader, worktop[0], worktop[1]);

  return g_strdup_printf (_("Worktop %s"), size);
}

gboolean
tr_sheets_plan_is_too_small (const TrSheetsPlan *plan)
{
  const TrSheet *sheet = plan->sheet.sheet;

  return plan->is_crowded || MAX (sheet->length_mm, sheet->width_mm) * plan->hold.scale < LEAST_SHEET_EM * plan->sheet.em;
}

int
tr_sheets_plan_count_spare (const TrSheetsPlan *plan)
{
  const TrSheet *sheet = plan->sheet.sheet;

  return isfinite (sheet->spare_pieces) ? (int) CLAMP (sheet->spare_pieces, 0, tr_sheet_count_pieces (sheet)) : 0;
}
