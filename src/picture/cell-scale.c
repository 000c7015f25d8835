/* cell-scale.c: where one of several figures lies, small, beside its number
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "cell-scale.h"

#include <math.h>

/* Of the box's height. */
#define TICK_HEIGHT 0.72
#define BAND_HEIGHT 0.5
#define TICK_WIDTH 0.2
/* The ends of the scale are not the ends of the box: a tick keeps its width. */
#define MARGIN 0.06
#define BAND_STRENGTH 0.45

void
tr_cell_scale_init (TrCellScale        *scale,
                    const TrComparable *comparable,
                    const TrFigures    *figures,
                    const guint        *doughs,
                    guint               n_doughs)
{
  double from = NAN, to = NAN, least;
  TrBand band;

  g_return_if_fail (scale != NULL && comparable != NULL && figures != NULL);

  for (guint i = 0; i < n_doughs; i++)
    {
      const TrDoughFigures *dough = tr_figures_get_dough (figures, doughs[i]);
      double value = tr_comparable_get (comparable, dough);

      if (!isfinite (value))
        continue;
      from = fmin (from, value);
      to = fmax (to, value);
      if (!tr_comparable_get_band (comparable, dough, &band))
        continue;
      from = fmin (from, band.low);
      to = fmax (to, band.high);
    }

  least = TR_CELL_SCALE_LEAST * fmax (fabs (from), fabs (to));
  if (to - from < least)
    {
      double middle = (from + to) / 2;

      from = middle - least / 2;
      to = middle + least / 2;
    }
  *scale = (TrCellScale) { from, to };
}

double
tr_cell_scale_place (const TrCellScale *scale,
                     double             value)
{
  if (!isfinite (value) || !isfinite (scale->from))
    return NAN;
  if (!(scale->to > scale->from))
    return 0.5;

  return (value - scale->from) / (scale->to - scale->from);
}

static double
get_x (const TrBox       *box,
       const TrCellScale *scale,
       double             value)
{
  return box->x + box->width * (MARGIN + (1 - 2 * MARGIN) * tr_cell_scale_place (scale, value));
}

/* Between the paper and the dough's tan, and lighter than any tick. */
static TrColour
get_band_colour (const TrLook *look)
{
  return (TrColour) {
    look->paper.r + BAND_STRENGTH * (look->dough.r - look->paper.r),
    look->paper.g + BAND_STRENGTH * (look->dough.g - look->paper.g),
    look->paper.b + BAND_STRENGTH * (look->dough.b - look->paper.b),
  };
}

void
tr_picture_add_cell_scale (TrPicture         *picture,
                           const TrBox       *box,
                           const TrCellScale *scale,
                           double             value,
                           const TrBand      *band,
                           double             reference)
{
  const TrLook *look = tr_picture_get_look (picture);
  double middle = box->y + box->height / 2, tick = TICK_HEIGHT * box->height, width = TICK_WIDTH * box->height;

  if (!isfinite (tr_cell_scale_place (scale, value)))
    return;

  if (band != NULL)
    {
      TrColour colour = get_band_colour (look);
      double left = get_x (box, scale, band->low), right = get_x (box, scale, band->high), height = BAND_HEIGHT * box->height;

      tr_picture_add_rect (picture, &(TrBox) { left, middle - height / 2, right - left, height }, &colour, TR_PEN_NONE, NULL);
    }
  tr_picture_add_line (picture, box->x, middle, box->x + box->width, middle, TR_PEN_HAIR, &look->dim);
  if (isfinite (reference))
    {
      double x = get_x (box, scale, reference);

      tr_picture_add_line (picture, x, middle - tick / 2, x, middle + tick / 2, TR_PEN_INNER, &look->dim);
    }
  tr_picture_add_rect (picture, &(TrBox) { get_x (box, scale, value) - width / 2, middle - tick / 2, width, tick },
                       &look->text, TR_PEN_NONE, NULL);
}
