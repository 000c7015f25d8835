/* plane-drawing.h: a plane while it is drawn, inside this room
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plane-layout.c finds where everything lies, plane.c draws and says it.
 */

#pragma once

#include "drawn.h"
#include "labels.h"
#include "plane-axis.h"

G_BEGIN_DECLS

/* From one line of names to the next, in em. */
#define TR_PLANE_LINE 1.25

typedef struct {
  const TrPlane *plane;
  const TrReader *reader;
  const TrLook *look;
  TrPicture *picture;
  double em, width, height;
  char **names;                  /* of the points, on one line */
  TrRange view_across, view_up;
  TrAxisTicks across, up;
  TrBox area;
  int *owners;                   /* the point whose label names this one; -1: not known */
  TrLabel *labels;               /* those of owners, the current one first ... */
  int *labelled;                 /* ... and which point each names */
  guint n_labels;
  TrBox lines[2];                /* from the current point to both axes, as thin boxes */
  guint n_lines;
  TrBox band_label;              /* no width: said under the plane */
  GPtrArray *notes;              /* lines under the plane ... */
  guint n_note_lines;            /* ... and how many it leaves room for */
} TrPlaneDrawing;

/* A line of a label. */
typedef struct { char *text; int point; gboolean is_bold, is_dim; } TrPlaneName;

/* FALSE: there is no room for a plane. */
gboolean tr_plane_lay_out         (TrPlaneDrawing *drawing);
gboolean tr_plane_is_known        (const TrPlanePoint *point);
void     tr_plane_find_place      (const TrPlaneMap *map, double across, double up, double *x, double *y);
/* What lies beyond the axes is drawn at their end. */
void     tr_plane_find_point      (const TrPlaneDrawing *drawing, guint index, double *x, double *y);
/* How many points the label of that point names. */
guint    tr_plane_count_at        (const TrPlaneDrawing *drawing, int owner);
/* (element-type TrPlaneName): the names at that place; with the current one its values. */
GArray  *tr_plane_make_names      (const TrPlaneDrawing *drawing, int owner);
/* FALSE: there is none to be seen. */
gboolean tr_plane_get_band_box    (const TrPlaneDrawing *drawing, TrBox *box);
/* NULL: all points are on the plane. */
char    *tr_plane_dup_unknown     (const TrPlaneDrawing *drawing);

G_END_DECLS
