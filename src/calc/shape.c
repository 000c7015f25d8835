/* shape.c: the six shapes of a piece, and how they stand in a row
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A row is so long for so many pieces, and so many go into a row so long; rows
 * side by side are so wide. All in mm, without trim.
 */

#include "shape.h"

#include "measure.h"

double
tr_cut_piece_area_mm2 (const TrCut *cut)
{
  switch (cut->shape)
    {
    case TR_SHAPE_TRIANGLE:
    case TR_SHAPE_RIGHT_TRIANGLE:
      return cut->base_mm * cut->height_mm / 2;
    case TR_SHAPE_RECTANGLE:
      return cut->width_mm * cut->length_mm;
    case TR_SHAPE_SQUARE:
      return cut->side_mm * cut->side_mm;
    case TR_SHAPE_ROUND:
      return G_PI * cut->diameter_mm * cut->diameter_mm / 4;
    case TR_SHAPE_SLICES:
      return cut->slice_mm * cut->roll_length_mm;
    case TR_N_SHAPES:
    default:
      g_return_val_if_reached (NAN);
    }
}

void
tr_shape_get_sides (const TrCut *cut,
                    double      *along_mm,
                    double      *across_mm)
{
  switch (cut->shape)
    {
    case TR_SHAPE_TRIANGLE:
    case TR_SHAPE_RIGHT_TRIANGLE:
      *along_mm = cut->base_mm;
      *across_mm = cut->height_mm;
      break;
    case TR_SHAPE_RECTANGLE:
      *along_mm = cut->width_mm;
      *across_mm = cut->length_mm;
      break;
    case TR_SHAPE_SQUARE:
      *along_mm = *across_mm = cut->side_mm;
      break;
    case TR_SHAPE_ROUND:
      *along_mm = *across_mm = cut->diameter_mm;
      break;
    case TR_SHAPE_SLICES:
      *along_mm = cut->slice_mm;
      *across_mm = cut->roll_length_mm;
      break;
    case TR_N_SHAPES:
    default:
      *along_mm = *across_mm = NAN;
      g_return_if_reached ();
    }
}

double
tr_shape_round_pitch (const TrCut *cut)
{
  double gap = tr_is_written (cut->gap_mm) ? cut->gap_mm : 0;

  return cut->diameter_mm + gap;
}

/* From one row of circles to the next. */
double
tr_shape_round_row_pitch (const TrCut *cut,
                          gboolean     hexagonal)
{
  return tr_shape_round_pitch (cut) * (hexagonal ? sqrt (3) / 2 : 1);
}

/* Length along the row that `per_row` pieces need, without trim. */
double
tr_shape_row_length (const TrCut *cut,
                     double       per_row,
                     gboolean     hexagonal)
{
  double along, across;

  tr_shape_get_sides (cut, &along, &across);
  switch (cut->shape)
    {
    case TR_SHAPE_TRIANGLE:
      return (per_row + 1) / 2 * along;
    case TR_SHAPE_RIGHT_TRIANGLE:
      return per_row / 2 * along;
    case TR_SHAPE_ROUND:
      return (per_row + (hexagonal ? 0.5 : 0) - 1) * tr_shape_round_pitch (cut) + cut->diameter_mm;
    case TR_SHAPE_RECTANGLE:
    case TR_SHAPE_SQUARE:
    case TR_SHAPE_SLICES:
    case TR_N_SHAPES:
    default:
      return per_row * along;
    }
}

/* The other way: how many go into a row. A hair's breadth does not cost a piece. */
double
tr_shape_count_in_row (const TrCut *cut,
                       double       length_mm,
                       gboolean     hexagonal)
{
  double along, across;

  tr_shape_get_sides (cut, &along, &across);
  switch (cut->shape)
    {
    case TR_SHAPE_TRIANGLE:
      return floor (2 * length_mm / along + TR_HAIR) - 1;
    case TR_SHAPE_RIGHT_TRIANGLE:
      return 2 * floor (length_mm / along + TR_HAIR);
    case TR_SHAPE_ROUND:
      return floor ((length_mm - cut->diameter_mm) / tr_shape_round_pitch (cut) + 1 - (hexagonal ? 0.5 : 0) + TR_HAIR);
    case TR_SHAPE_RECTANGLE:
    case TR_SHAPE_SQUARE:
    case TR_SHAPE_SLICES:
    case TR_N_SHAPES:
    default:
      return floor (length_mm / along + TR_HAIR);
    }
}

double
tr_shape_rows_width (const TrCut *cut,
                     int          rows,
                     gboolean     hexagonal)
{
  double along, across;

  tr_shape_get_sides (cut, &along, &across);
  if (cut->shape == TR_SHAPE_ROUND)
    return (rows - 1) * tr_shape_round_row_pitch (cut, hexagonal) + cut->diameter_mm;

  return rows * across;
}

/* Right triangles come two to a rectangle. */
double
tr_shape_complete_row (const TrCut *cut,
                       double       per_row)
{
  return cut->shape == TR_SHAPE_RIGHT_TRIANGLE ? 2 * ceil (per_row / 2) : per_row;
}
