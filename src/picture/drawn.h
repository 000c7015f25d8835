/* drawn.h: what a picture is made of, inside this room
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * shapes.c adds to the list, picture.c draws it and finds what lies where.
 */

#pragma once

#include "bands.h"
#include "shapes.h"

G_BEGIN_DECLS

typedef enum { TR_DRAWN_POLYGON, TR_DRAWN_SEGMENTS, TR_DRAWN_CIRCLE, TR_DRAWN_TEXT, TR_DRAWN_BANDS } TrDrawnKind;

/* One shape. Its corners are n_points pairs from first_point on in the
 * picture's list: the corners of a polygon, the ends of segments, the centre
 * of a circle, the aligned point of a text, two corners of bands. */
typedef struct {
  TrDrawnKind kind;
  guint first_point, n_points;
  gboolean filled, dashed, upward;
  TrPen pen;
  TrColour fill, stroke;
  double size;                   /* radius, or size of the text */
  double align;
  int weight;
  char *text;
  TrBandsPlace bands;
  TrHit hit;
  char *label;
} TrDrawn;

/* Where the axes of a plane lie: a value is read back from a place by the same
 * numbers by which it was put there. No width: no plane. */
typedef struct {
  TrBox area;
  TrRange across, up;
} TrPlaneMap;

struct _TrPicture
{
  gatomicrefcount ref_count;
  TrLook look;
  TrReader reader;
  double width, height;
  GArray *drawn;                 /* TrDrawn */
  GArray *points;                /* double, x then y */
  GString *description;
  TrPlaneMap plane;
};

/* In the picture's units. */
double tr_picture_pen_width (const TrPicture *picture, TrPen pen);

G_END_DECLS
