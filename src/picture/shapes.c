/* shapes.c: adding shapes to a picture
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the look has pixels, level and upright edges are put on them here, so
 * that what is drawn and what is hit agree.
 */

#include "config.h"

#include <math.h>

#include "drawn.h"

/* Whole device pixels where there are any. */
static double
snap (const TrPicture *picture,
      double           value)
{
  double scale = picture->look.device_scale;

  return scale > 0 ? round (value * scale) / scale : value;
}

double
tr_picture_pen_width (const TrPicture *picture,
                      TrPen            pen)
{
  static const double parts[] = { 0, 0.045, 0.06, 0.11, 0.2 };
  double width = parts[pen] * picture->look.text_size;
  double scale = picture->look.device_scale;

  return scale > 0 && pen != TR_PEN_NONE ? MAX (1, round (width * scale)) / scale : width;
}

/* A stroke of an odd number of pixels runs along the middle of one. */
static double
snap_stroke (const TrPicture *picture,
             double           value,
             TrPen            pen)
{
  double scale = picture->look.device_scale;
  double pixels = tr_picture_pen_width (picture, pen) * scale;

  if (scale <= 0)
    return value;
  return lround (pixels) % 2 == 1 ? (floor (value * scale) + 0.5) / scale : snap (picture, value);
}

static TrDrawn *
add (TrPicture      *picture,
     TrDrawnKind     kind,
     const TrColour *fill,
     TrPen           pen,
     const TrColour *stroke)
{
  TrDrawn drawn = { .kind = kind, .first_point = picture->points->len, .pen = pen };

  drawn.filled = fill != NULL;
  if (fill != NULL)
    drawn.fill = *fill;
  drawn.stroke = stroke != NULL ? *stroke : picture->look.line;
  g_array_append_val (picture->drawn, drawn);
  return &g_array_index (picture->drawn, TrDrawn, picture->drawn->len - 1);
}

static void
add_point (TrPicture *picture,
           TrDrawn   *drawn,
           double     x,
           double     y)
{
  double xy[2] = { x, y };

  g_array_append_vals (picture->points, xy, 2);
  drawn->n_points++;
}

static TrDrawn *
last_drawn (TrPicture *picture)
{
  g_assert (picture->drawn->len > 0);
  return &g_array_index (picture->drawn, TrDrawn, picture->drawn->len - 1);
}

void
tr_picture_add_rect (TrPicture      *picture,
                     const TrBox    *box,
                     const TrColour *fill,
                     TrPen           pen,
                     const TrColour *stroke)
{
  TrDrawn *drawn = add (picture, TR_DRAWN_POLYGON, fill, pen, stroke);
  double left = snap_stroke (picture, box->x, pen), right = snap_stroke (picture, box->x + box->width, pen);
  double top = snap_stroke (picture, box->y, pen), bottom = snap_stroke (picture, box->y + box->height, pen);

  add_point (picture, drawn, left, top);
  add_point (picture, drawn, right, top);
  add_point (picture, drawn, right, bottom);
  add_point (picture, drawn, left, bottom);
}

void
tr_picture_add_polygon (TrPicture      *picture,
                        const double   *xy,
                        guint           n_corners,
                        const TrColour *fill,
                        TrPen           pen,
                        const TrColour *stroke)
{
  TrDrawn *drawn = add (picture, TR_DRAWN_POLYGON, fill, pen, stroke);

  for (guint i = 0; i < n_corners; i++)
    add_point (picture, drawn, xy[2 * i], xy[2 * i + 1]);
}

void
tr_picture_add_circle (TrPicture      *picture,
                       double          x,
                       double          y,
                       double          radius,
                       const TrColour *fill,
                       TrPen           pen,
                       const TrColour *stroke)
{
  TrDrawn *drawn = add (picture, TR_DRAWN_CIRCLE, fill, pen, stroke);

  drawn->size = radius;
  add_point (picture, drawn, x, y);
}

void
tr_picture_add_line (TrPicture      *picture,
                     double          x1,
                     double          y1,
                     double          x2,
                     double          y2,
                     TrPen           pen,
                     const TrColour *stroke)
{
  TrDrawn *drawn = add (picture, TR_DRAWN_SEGMENTS, NULL, pen, stroke);

  if (fabs (x1 - x2) < 1e-9)
    x1 = x2 = snap_stroke (picture, x1, pen);
  if (fabs (y1 - y2) < 1e-9)
    y1 = y2 = snap_stroke (picture, y1, pen);
  add_point (picture, drawn, x1, y1);
  add_point (picture, drawn, x2, y2);
}

void
tr_picture_add_hatch (TrPicture      *picture,
                      const TrBox    *box,
                      double          spacing,
                      const TrColour *stroke)
{
  TrDrawn *drawn = add (picture, TR_DRAWN_SEGMENTS, NULL, TR_PEN_HAIR, stroke);
  double w = box->width, h = box->height;

  /* the line x + y = d inside the box, in the box's own corner's terms */
  for (double d = spacing / 2; d < w + h; d += spacing)
    {
      double x1 = MAX (0, d - h), x2 = MIN (w, d);

      add_point (picture, drawn, box->x + x1, box->y + d - x1);
      add_point (picture, drawn, box->x + x2, box->y + d - x2);
    }
}

void
tr_picture_dash (TrPicture *picture)
{
  last_drawn (picture)->dashed = TRUE;
}

void
tr_picture_add_arrow (TrPicture      *picture,
                      double          x1,
                      double          y1,
                      double          x2,
                      double          y2,
                      gboolean        both,
                      const TrColour *colour)
{
  double length = hypot (x2 - x1, y2 - y1), head = 0.62 * picture->look.text_size;
  double ux, uy;

  if (length < 1e-9)
    return;
  ux = (x2 - x1) / length;
  uy = (y2 - y1) / length;
  head = MIN (head, length * (both ? 0.45 : 0.9));
  tr_picture_add_line (picture, x1 + (both ? ux * head * 0.8 : 0), y1 + (both ? uy * head * 0.8 : 0),
                       x2 - ux * head * 0.8, y2 - uy * head * 0.8, TR_PEN_OUTLINE, colour);
  for (int end = 0; end < (both ? 2 : 1); end++)
    {
      double sign = end == 0 ? 1 : -1;
      double tip_x = end == 0 ? x2 : x1, tip_y = end == 0 ? y2 : y1;
      double foot_x = tip_x - sign * ux * head, foot_y = tip_y - sign * uy * head;
      double corners[] = { tip_x, tip_y,
                           foot_x - uy * head * 0.42, foot_y + ux * head * 0.42,
                           foot_x + uy * head * 0.42, foot_y - ux * head * 0.42 };

      tr_picture_add_polygon (picture, corners, 3, colour, TR_PEN_NONE, NULL);
    }
}

double
tr_picture_add_warning (TrPicture *picture,
                        double     x,
                        double     baseline,
                        double     size)
{
  const TrLook *look = &picture->look;
  double height = size * 0.86, width = size;
  double corners[] = { x + width / 2, baseline - height, x + width, baseline, x, baseline };
  TrBox bar = { x + width / 2 - size * 0.055, baseline - height * 0.66, size * 0.11, height * 0.34 };

  tr_picture_add_polygon (picture, corners, 3, &look->warning, TR_PEN_NONE, NULL);
  tr_picture_add_polygon (picture, (double[]) { bar.x, bar.y, bar.x + bar.width, bar.y,
                                                bar.x + bar.width * 0.8, bar.y + bar.height,
                                                bar.x + bar.width * 0.2, bar.y + bar.height },
                          4, &look->paper, TR_PEN_NONE, NULL);
  tr_picture_add_circle (picture, x + width / 2, baseline - height * 0.16, size * 0.065, &look->paper, TR_PEN_NONE, NULL);
  return width;
}

static double
add_text (TrPicture      *picture,
          const char     *text,
          double          size,
          int             weight,
          const TrColour *colour,
          double          x,
          double          baseline,
          double          align,
          gboolean        upward)
{
  TrDrawn *drawn = add (picture, TR_DRAWN_TEXT, colour, TR_PEN_NONE, NULL);

  drawn->text = g_strdup (text);
  drawn->size = size;
  drawn->weight = weight;
  drawn->align = align;
  drawn->upward = upward;
  add_point (picture, drawn, x, baseline);
  return tr_text_width (&picture->look, text, size, weight);
}

double
tr_picture_add_text (TrPicture      *picture,
                     const char     *text,
                     double          size,
                     int             weight,
                     const TrColour *colour,
                     double          x,
                     double          baseline,
                     double          align)
{
  return add_text (picture, text, size, weight, colour, x, baseline, align, FALSE);
}

double
tr_picture_add_fitting_text (TrPicture      *picture,
                             const char     *text,
                             double          size,
                             int             weight,
                             const TrColour *colour,
                             double          x,
                             double          baseline,
                             double          align,
                             double          room)
{
  const TrLook *look = tr_picture_get_look (picture);
  double wide = tr_text_width (look, text, size, weight);
  double fitting = wide > room ? size * MAX (0.6, room / wide) : size;
  g_autofree char *shorter = tr_text_shorten (look, text, fitting, weight, MAX (room, fitting));

  return tr_picture_add_text (picture, shorter, fitting, weight, colour, x, baseline, align);
}

double
tr_picture_add_upward_text (TrPicture      *picture,
                            const char     *text,
                            double          size,
                            int             weight,
                            const TrColour *colour,
                            double          x,
                            double          baseline,
                            double          align)
{
  return add_text (picture, text, size, weight, colour, x, baseline, align, TRUE);
}

void
tr_picture_add_bands (TrPicture     *picture,
                      const TrBox   *box,
                      const TrBands *bands,
                      double         from,
                      double         to,
                      TrPicturePart  part,
                      double         thickness_um)
{
  TrDrawn *drawn = add (picture, TR_DRAWN_BANDS, NULL, TR_PEN_NONE, NULL);
  double left = snap (picture, box->x), top = snap (picture, box->y);

  drawn->bands.bands = *bands;
  g_array_ref (bands->edges);
  drawn->bands.from = from;
  drawn->bands.to = to;
  drawn->bands.thickness_um = thickness_um;
  drawn->bands.box = (TrBox) { left, top, snap (picture, box->x + box->width) - left,
                               snap (picture, box->y + box->height) - top };
  drawn->hit.part = part;
  add_point (picture, drawn, left, top);
  add_point (picture, drawn, left + drawn->bands.box.width, top + drawn->bands.box.height);
}

void
tr_picture_set_hit (TrPicture     *picture,
                    TrPicturePart  part,
                    int            index,
                    const char    *label)
{
  TrDrawn *drawn = last_drawn (picture);

  drawn->hit = (TrHit) { part, index };
  g_free (drawn->label);
  drawn->label = g_strdup (label);
}

/* Bands are never part of what is turned over: they are the same both ways.
 * Upward text keeps its top on the left: its baseline moves so that the text
 * lies where it should. */
void
tr_picture_mirror (TrPicture *picture)
{
  for (guint i = 0; i < picture->points->len; i += 2)
    g_array_index (picture->points, double, i) = picture->width - g_array_index (picture->points, double, i);
  for (guint i = 0; i < picture->drawn->len; i++)
    {
      TrDrawn *drawn = &g_array_index (picture->drawn, TrDrawn, i);

      if (drawn->upward)
        g_array_index (picture->points, double, drawn->first_point) += drawn->size * (TR_TEXT_ASCENT - TR_TEXT_DESCENT);
      else
        drawn->align = 1 - drawn->align;
    }
}

void
tr_picture_place (TrPicture       *page,
                  const TrPicture *part,
                  double           x,
                  double           y)
{
  guint first_point = page->points->len;

  for (guint i = 0; i + 1 < part->points->len; i += 2)
    {
      double xy[2] = { g_array_index (part->points, double, i) + x, g_array_index (part->points, double, i + 1) + y };

      g_array_append_vals (page->points, xy, 2);
    }
  for (guint i = 0; i < part->drawn->len; i++)
    {
      TrDrawn drawn = g_array_index (part->drawn, TrDrawn, i);

      drawn.first_point += first_point;
      drawn.text = g_strdup (drawn.text);
      drawn.label = g_strdup (drawn.label);
      drawn.bands.box.x += x;
      drawn.bands.box.y += y;
      if (drawn.bands.bands.edges != NULL)
        g_array_ref (drawn.bands.bands.edges);
      g_array_append_val (page->drawn, drawn);
    }
  if (part->description->len > 0)
    tr_picture_describe (page, "%s", part->description->str);
}
