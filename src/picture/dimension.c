/* dimension.c: a draughtsman's dimensions
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Thin lines, 45° ticks, extension lines that start a little off the object,
 * the number over the line and, along an upright line, reading upwards.
 */

#include <math.h>

#include "shapes.h"

static void
add_tick (TrPicture *picture,
          double     x,
          double     y)
{
  const TrLook *look = tr_picture_get_look (picture);
  double half = look->text_size * 0.24;

  tr_picture_add_line (picture, x - half, y + half, x + half, y - half, TR_PEN_OUTLINE, &look->dim);
}

/* From just off the object to just over the line. */
static void
get_extension (const TrLook *look,
               double        edge,
               double        line,
               double       *from,
               double       *to)
{
  double way = line < edge ? -1 : 1;

  *from = edge + way * look->text_size * 0.2;
  *to = line + way * look->text_size * 0.3;
}

void
tr_picture_add_dimension_h (TrPicture  *picture,
                            double      x1,
                            double      x2,
                            double      edge,
                            double      line,
                            const char *text)
{
  const TrLook *look = tr_picture_get_look (picture);
  double from, to;

  get_extension (look, edge, line, &from, &to);
  tr_picture_add_line (picture, x1, from, x1, to, TR_PEN_HAIR, &look->dim);
  tr_picture_add_line (picture, x2, from, x2, to, TR_PEN_HAIR, &look->dim);
  tr_picture_add_line (picture, x1, line, x2, line, TR_PEN_HAIR, &look->dim);
  add_tick (picture, x1, line);
  add_tick (picture, x2, line);
  tr_picture_add_text (picture, text, look->text_size, 400, &look->text, (x1 + x2) / 2,
                       line < edge ? line - look->text_size * 0.28 : line + look->text_size * 1.0, 0.5);
}

void
tr_picture_add_dimension_v (TrPicture  *picture,
                            double      y1,
                            double      y2,
                            double      edge,
                            double      line,
                            const char *text)
{
  const TrLook *look = tr_picture_get_look (picture);
  double from, to, way = line < edge ? -1 : 1;

  get_extension (look, edge, line, &from, &to);
  tr_picture_add_line (picture, from, y1, to, y1, TR_PEN_HAIR, &look->dim);
  tr_picture_add_line (picture, from, y2, to, y2, TR_PEN_HAIR, &look->dim);
  tr_picture_add_line (picture, line, y1, line, y2, TR_PEN_HAIR, &look->dim);
  add_tick (picture, line, y1);
  add_tick (picture, line, y2);
  if (fabs (y2 - y1) < tr_text_width (look, text, look->text_size, 400))
    tr_picture_add_text (picture, text, look->text_size, 400, &look->text, line + way * look->text_size * 0.45,
                         (y1 + y2) / 2 + look->text_size * 0.35, way < 0 ? 1 : 0);
  else
    tr_picture_add_upward_text (picture, text, look->text_size, 400, &look->text,
                                line + look->text_size * (way < 0 ? -0.28 : 1.0), (y1 + y2) / 2, 0.5);
}
