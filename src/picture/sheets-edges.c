/* sheets-edges.c: the edges of the pieces, to take hold of
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each edge has a strip along it that is hit and not seen. Edges on the line
 * where the first piece starts do not move, whatever the measure, and have none.
 *
 * Four numbers are kept free for each piece: of a polygon its corners' order, of
 * a circle right, far, left, near.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "sheets-plan.h"

#define EDGES 4
#define ARC_STEPS 6
#define LEAST_HALF 1.0          /* units */
#define HAIR_MM 1e-6

const char *
tr_measure_get_name (TrShape   shape,
                     TrMeasure measure)
{
  static const char *const names[TR_N_SHAPES][2] = {
    [TR_SHAPE_TRIANGLE] = { N_("Base"), N_("Height") },
    [TR_SHAPE_RIGHT_TRIANGLE] = { N_("Base"), N_("Height") },
    [TR_SHAPE_RECTANGLE] = { N_("Width"), N_("Length") },
    [TR_SHAPE_SQUARE] = { N_("Side"), N_("Side") },
    [TR_SHAPE_ROUND] = { N_("Diameter"), N_("Diameter") },
    [TR_SHAPE_SLICES] = { N_("Slice"), N_("Sheet rolled into the log") },
  };

  g_return_val_if_fail (shape < TR_N_SHAPES, "");

  return _(names[shape][measure]);
}

static double
get_gap (const TrCut *cut)
{
  return cut->shape == TR_SHAPE_ROUND && tr_is_written (cut->gap_mm) ? cut->gap_mm : 0;
}

static TrMeasure
measure_of_edge (const TrPieceOutline *outline,
                 int                   edge)
{
  int next;

  if (outline->n_corners == 0)
    return edge % 2 == 0 ? TR_MEASURE_ALONG : TR_MEASURE_ACROSS;
  next = (edge + 1) % outline->n_corners;
  return fabs (outline->y[edge] - outline->y[next]) < HAIR_MM ? TR_MEASURE_ACROSS : TR_MEASURE_ALONG;
}

/* The middle of an edge, along and across. */
static void
get_middle (const TrPieceOutline *outline,
            int                   edge,
            double               *along,
            double               *across)
{
  static const double way[EDGES][2] = { { 1, 0 }, { 0, 1 }, { -1, 0 }, { 0, -1 } };
  int next;

  if (outline->n_corners == 0)
    {
      *along = outline->x[0] + way[edge][0] * outline->radius_mm;
      *across = outline->y[0] + way[edge][1] * outline->radius_mm;
      return;
    }
  next = (edge + 1) % outline->n_corners;
  *along = (outline->x[edge] + outline->x[next]) / 2;
  *across = (outline->y[edge] + outline->y[next]) / 2;
}

static gboolean
can_move (const TrCut          *cut,
          const TrPieceOutline *outline,
          int                   edge)
{
  double along, across;

  if (edge >= (outline->n_corners == 0 ? EDGES : outline->n_corners))
    return FALSE;
  get_middle (outline, edge, &along, &across);
  return (measure_of_edge (outline, edge) == TR_MEASURE_ALONG ? along : across) - cut->trim_mm > HAIR_MM;
}

/* A strip along a straight edge. */
static void
add_straight (TrSheetPlan          *sheet,
              const TrPieceOutline *outline,
              int                   edge,
              double                half)
{
  int next = (edge + 1) % outline->n_corners;
  double x1, y1, x2, y2, length, nx, ny;

  tr_sheet_plan_to_picture (sheet, outline->x[edge], outline->y[edge], &x1, &y1);
  tr_sheet_plan_to_picture (sheet, outline->x[next], outline->y[next], &x2, &y2);
  length = MAX (1e-6, hypot (x2 - x1, y2 - y1));
  nx = -(y2 - y1) / length * half;
  ny = (x2 - x1) / length * half;
  tr_picture_add_polygon (sheet->picture, (double[]) { x1 + nx, y1 + ny, x2 + nx, y2 + ny, x2 - nx, y2 - ny, x1 - nx, y1 - ny }, 4,
                          NULL, TR_PEN_NONE, NULL);
}

/* A quarter of a ring. */
static void
add_arc (TrSheetPlan          *sheet,
         const TrPieceOutline *outline,
         int                   edge,
         double                half)
{
  double xy[4 * (ARC_STEPS + 1)], x, y, radius = outline->radius_mm * sheet->scale;
  double middle = edge * G_PI / 2;

  tr_sheet_plan_to_picture (sheet, outline->x[0], outline->y[0], &x, &y);
  for (int i = 0; i <= ARC_STEPS; i++)
    for (int side = 0; side < 2; side++)
      {
        double angle = middle + G_PI / 2 * (i / (double) ARC_STEPS - 0.5), r = radius + (side == 0 ? half : -half);
        double along = r * cos (angle), across = r * sin (angle);
        int at = side == 0 ? i : 2 * ARC_STEPS + 1 - i;

        xy[2 * at] = x + (sheet->turned ? across : along);
        xy[2 * at + 1] = y + (sheet->turned ? along : -across);
      }
  tr_picture_add_polygon (sheet->picture, xy, 2 * (ARC_STEPS + 1), NULL, TR_PEN_NONE, NULL);
}

static char *
dup_label (const TrSheetPlan *sheet,
           TrMeasure          measure)
{
  g_autofree char *length = tr_words_length (sheet->reader, measure == TR_MEASURE_ALONG ? sheet->along_mm : sheet->across_mm);

  return g_strdup_printf (_("%s %s: drag to change it"), tr_measure_get_name (sheet->cut->shape, measure), length);
}

void
tr_sheet_plan_add_edges (TrSheetPlan *sheet,
                         int          index)
{
  int n = tr_sheet_count_pieces (sheet->sheet);
  double half = MIN (0.36 * sheet->em, MIN (sheet->along_mm, sheet->across_mm) * sheet->scale / 6);
  g_autofree char *along = dup_label (sheet, TR_MEASURE_ALONG);
  g_autofree char *across = dup_label (sheet, TR_MEASURE_ACROSS);

  /* too small for a hand */
  if (half < LEAST_HALF)
    return;
  for (int i = 0; i < n; i++)
    {
      TrPieceOutline outline;

      tr_sheet_get_piece (sheet->cut, sheet->sheet, i, &outline);
      for (int edge = 0; edge < EDGES; edge++)
        {
          if (!can_move (sheet->cut, &outline, edge))
            continue;
          if (outline.n_corners == 0)
            add_arc (sheet, &outline, edge, half);
          else
            add_straight (sheet, &outline, edge, half);
          tr_picture_set_hit (sheet->picture, TR_PART_OF_EDGE, (index * n + i) * EDGES + edge,
                              measure_of_edge (&outline, edge) == TR_MEASURE_ALONG ? along : across);
        }
    }
}

/* FALSE: the figures have no such piece, or its edge does not move. */
static gboolean
get_outline (const TrDoughFigures *figures,
             int                   index,
             TrPieceOutline       *outline)
{
  int n = figures->has_sheet ? tr_sheet_count_pieces (&figures->sheet) : 0;

  if (index < 0 || n == 0 || index / EDGES >= n * figures->sheet.sheets)
    return FALSE;
  tr_sheet_get_piece (figures->dough->cut, &figures->sheet, index / EDGES % n, outline);
  return can_move (figures->dough->cut, outline, index % EDGES);
}

TrMeasure
tr_sheets_edge_get_measure (const TrDoughFigures *figures,
                            int                   index)
{
  TrPieceOutline outline;

  return get_outline (figures, index, &outline) ? measure_of_edge (&outline, index % EDGES) : TR_MEASURE_ALONG;
}

int
tr_sheets_find_edge (const TrDoughFigures *figures,
                     TrMeasure             measure)
{
  TrPieceOutline outline;

  for (int edge = 0; edge < EDGES * 2; edge++)
    if (get_outline (figures, edge, &outline) && measure_of_edge (&outline, edge % EDGES) == measure)
      return edge;
  return -1;
}

gboolean
tr_sheets_is_sideways (const TrPicture      *picture,
                       const TrDoughFigures *figures,
                       const TrReader       *reader,
                       const TrSheetsHold   *hold,
                       TrMeasure             measure)
{
  double width, height;
  TrSheetsPlan plan;

  g_return_val_if_fail (figures->has_sheet, FALSE);

  tr_picture_get_size (picture, &width, &height);
  tr_sheets_plan_init (&plan, figures, reader, tr_picture_get_look (picture), width, height, hold);
  tr_sheets_plan_clear (&plan);
  return (measure == TR_MEASURE_ALONG) != plan.hold.is_turned;
}

/* In mm of the sheet whose corner is held. */
static double
get_place (const TrSheetsHold *hold,
           TrMeasure           measure,
           double              x,
           double              y)
{
  if ((measure == TR_MEASURE_ALONG) != hold->is_turned)
    return (x - hold->x) / hold->scale;
  return (hold->is_turned ? y - hold->y : hold->y - y) / hold->scale;
}

gboolean
tr_sheets_grab (const TrPicture      *picture,
                const TrDoughFigures *figures,
                const TrReader       *reader,
                const TrSheetsHold   *hold,
                int                   index,
                double                x,
                double                y,
                TrSheetsGrab         *grab)
{
  TrPieceOutline outline;
  TrSheetsPlan plan;
  TrSheetPlan sheet;
  double width, height, start;

  if (!get_outline (figures, index, &outline))
    return FALSE;
  tr_picture_get_size (picture, &width, &height);
  tr_sheets_plan_init (&plan, figures, reader, tr_picture_get_look (picture), width, height, hold);
  *grab = (TrSheetsGrab) { .hold = plan.hold, .measure = measure_of_edge (&outline, index % EDGES) };
  grab->hold.sheet = MIN (index / EDGES / tr_sheet_count_pieces (&figures->sheet), plan.n_sheets - 1);
  tr_sheets_plan_get_sheet (&plan, grab->hold.sheet, &sheet);
  tr_sheet_plan_to_picture (&sheet, 0, 0, &grab->hold.x, &grab->hold.y);
  grab->start_mm = grab->measure == TR_MEASURE_ALONG ? sheet.along_mm : sheet.across_mm;
  grab->at_mm = get_place (&grab->hold, grab->measure, x, y);
  start = grab->at_mm - figures->dough->cut->trim_mm;
  grab->times = MAX (0.5, start / (grab->start_mm + get_gap (figures->dough->cut)));
  tr_sheets_plan_clear (&plan);
  return TRUE;
}

double
tr_sheets_grab_get_mm (const TrSheetsGrab *grab,
                       double              x,
                       double              y,
                       double              least)
{
  double moved = get_place (&grab->hold, grab->measure, x, y) - grab->at_mm;

  return MAX (least, grab->start_mm + moved / grab->times);
}
