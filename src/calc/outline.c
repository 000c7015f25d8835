/* outline.c: where each piece lies on the sheet, and where the knife starts
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A triangle row: every other one lies upside down, so the near edge is marked
 * every base from the trim, and the far edge starts half a base in.
 *
 *      m+b/2    b       b
 *   ┌──────┬───────┬───────┬──┐  far edge
 *   │     ╱╲   1  ╱╲   3  ╱   │
 *   │    ╱  ╲    ╱  ╲    ╱    │  h
 *   │   ╱    ╲  ╱    ╲  ╱     │
 *   │  ╱   0  ╲╱   2  ╲╱      │
 *   └──┴───────┴───────┴──────┘  near edge
 *      m        b       b            n triangles: (n + 1)/2 · b
 */

#include "shape.h"

gboolean
tr_sheet_shrinks (const TrSheet *sheet)
{
  return sheet->rolled_mm.mm[0] > sheet->length_mm + 0.5;
}

int
tr_sheet_count_pieces (const TrSheet *sheet)
{
  return sheet->rows * sheet->per_row;
}

static void
set_corners (TrPieceOutline *outline,
             int             n_corners,
             const double    x[4],
             const double    y[4])
{
  *outline = (TrPieceOutline) { .n_corners = n_corners, .radius_mm = NAN };
  for (int i = 0; i < n_corners; i++)
    {
      outline->x[i] = x[i];
      outline->y[i] = y[i];
    }
}

static void
outline_triangle (const TrCut    *cut,
                  double          x,
                  double          y,
                  int             column,
                  TrPieceOutline *outline)
{
  double b = cut->base_mm, h = cut->height_mm;
  double left = x + column * b / 2;
  double base_y = column % 2 == 0 ? y : y + h;
  double tip_y = column % 2 == 0 ? y + h : y;

  set_corners (outline, 3,
               (double[4]) { left, left + b, left + b / 2 },
               (double[4]) { base_y, base_y, tip_y });
}

static void
outline_right_triangle (const TrCut    *cut,
                        double          x,
                        double          y,
                        int             column,
                        TrPieceOutline *outline)
{
  double left = x + column / 2 * cut->base_mm;
  double right = left + cut->base_mm;
  double top = y + cut->height_mm;

  if (column % 2 == 0)
    set_corners (outline, 3, (double[4]) { left, right, left }, (double[4]) { y, y, top });
  else
    set_corners (outline, 3, (double[4]) { right, right, left }, (double[4]) { y, top, top });
}

static void
outline_round (const TrCut    *cut,
               const TrSheet  *sheet,
               int             row,
               int             column,
               TrPieceOutline *outline)
{
  double r = cut->diameter_mm / 2, pitch = tr_shape_round_pitch (cut);
  double staggered = sheet->hexagonal && row % 2 == 1 ? pitch / 2 : 0;

  *outline = (TrPieceOutline) { .radius_mm = r };
  outline->x[0] = cut->trim_mm + r + column * pitch + staggered;
  outline->y[0] = cut->trim_mm + r + row * tr_shape_round_row_pitch (cut, sheet->hexagonal);
}

void
tr_sheet_get_piece (const TrCut    *cut,
                    const TrSheet  *sheet,
                    int             index,
                    TrPieceOutline *outline)
{
  g_return_if_fail (index >= 0 && index < tr_sheet_count_pieces (sheet));

  int row = index / sheet->per_row, column = index % sheet->per_row;
  double along, across;

  tr_shape_get_sides (cut, &along, &across);
  double x = cut->trim_mm, y = cut->trim_mm + row * across;

  if (cut->shape == TR_SHAPE_ROUND)
    outline_round (cut, sheet, row, column, outline);
  else if (cut->shape == TR_SHAPE_TRIANGLE)
    outline_triangle (cut, x, y, column, outline);
  else if (cut->shape == TR_SHAPE_RIGHT_TRIANGLE)
    outline_right_triangle (cut, x, y, column, outline);
  else
    {
      x += column * along;
      set_corners (outline, 4, (double[4]) { x, x + along, x + along, x },
                   (double[4]) { y, y, y + across, y + across });
    }
}

/* First mark from the trim, distance and number of marks on an edge. */
static int
find_marks (const TrCut   *cut,
            const TrSheet *sheet,
            gboolean       far_edge,
            double        *first,
            double        *apart)
{
  double across;
  int n = sheet->per_row;

  tr_shape_get_sides (cut, apart, &across);
  *first = 0;
  switch (cut->shape)
    {
    case TR_SHAPE_TRIANGLE:
      *first = far_edge ? cut->base_mm / 2 : 0;
      return (far_edge ? n / 2 : (n + 1) / 2) + 1;
    case TR_SHAPE_RIGHT_TRIANGLE:
      return n / 2 + 1;
    case TR_SHAPE_ROUND:
      *apart = tr_shape_round_pitch (cut);
      *first = cut->diameter_mm / 2 + (far_edge && sheet->hexagonal ? *apart / 2 : 0);
      return n;
    case TR_SHAPE_RECTANGLE:
    case TR_SHAPE_SQUARE:
    case TR_SHAPE_SLICES:
    case TR_N_SHAPES:
    default:
      return n + 1;
    }
}

GArray *
tr_sheet_dup_marks (const TrCut   *cut,
                    const TrSheet *sheet,
                    gboolean       far_edge)
{
  double first, apart;
  int n_marks = find_marks (cut, sheet, far_edge, &first, &apart);
  GArray *marks = g_array_sized_new (FALSE, FALSE, sizeof (double), (guint) n_marks);

  for (int i = 0; i < n_marks; i++)
    {
      double mark = cut->trim_mm + first + i * apart;

      g_array_append_val (marks, mark);
    }

  return marks;
}
