/* plane.h: things as points on a plane of two figures
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Any figure against any other. The picture keeps where its axes lie, so that
 * a place in it can be read back as two values; both directions use the same
 * numbers.
 */

#pragma once

#include "picture.h"

G_BEGIN_DECLS

typedef struct {
  const char *title;             /* "Salt" */
  const char *unit;              /* after the numbers on the axis; NULL: none */
  char     *(*say) (const TrReader *reader, double value);   /* a value with its unit: "1.9 %" */
  TrRange band;                  /* shaded; NaN: none */
  TrRange view;                  /* what the axis shall show; NaN: what the points need */
  double least_span;             /* what it shows at least; 0: a tenth of what there is */
  char     *(*say_of) (gconstpointer of, const TrReader *reader, double value);   /* in place of `say`; NULL: that does */
  gconstpointer of;
} TrPlaneAxis;

typedef struct {
  const char *name;
  double x, y;                   /* not finite: not known; listed under the plane */
  gboolean is_current;           /* at most one: large, ringed, its values beside it */
  int from;                      /* the point it descends from; -1: none */
} TrPlanePoint;

typedef struct {
  TrPlaneAxis across, up;
  const TrPlanePoint *points;
  guint n_points;
  const char *band_name;         /* "usual for croissant dough"; NULL: no band is shown */
  const char *current_word;      /* "the current dough" */
} TrPlane;

/* Points are hit as TR_PART_OF_POINT by their index, also on their names. */
TrPicture *tr_plane_picture_new        (const TrPlane *plane, const TrReader *reader, const TrLook *look, double width, double height);
/* FALSE: there is no plane on the picture. Beside the axes the values go on as the axes do. */
gboolean   tr_plane_picture_get_values (const TrPicture *picture, double x, double y, double *across, double *up);
gboolean   tr_plane_picture_get_place  (const TrPicture *picture, double across, double up, double *x, double *y);
/* What the axes show. */
gboolean   tr_plane_picture_get_view   (const TrPicture *picture, TrRange *across, TrRange *up);

/* All doughs by two ratios. `current` -1: none. `view` of both axes; NULL: what the doughs need. */
TrPicture *tr_ratio_plane_picture_new  (const TrFigures *figures, TrRatio across, TrRatio up, int current, const TrRange view[2],
                                        const TrReader *reader, const TrLook *look, double width, double height);

G_END_DECLS
