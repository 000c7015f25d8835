/* plane-axis.h: the numbers along an axis, inside this room
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "plane.h"

G_BEGIN_DECLS

typedef struct {
  TrRange view;                  /* min < max, both finite */
  double step;                   /* 1, 2 or 5 times a power of ten */
  guint n_ticks;
  double first;
} TrAxisTicks;

/* Beyond these nothing can be told apart any more. */
#define TR_AXIS_LIMIT 1e100

/* What the axis has to show: a forced view, or band and points with room round them. */
TrRange tr_axis_find_view  (const TrPlaneAxis *axis, const double *values, guint n_values);
/* Ticks for an axis of that length, each with `least` units of room, or with
 * its number's width and `gap`, if that is more. An unforced view becomes
 * whole ticks, so that it does not change with every edit. */
void    tr_axis_find_ticks (const TrPlaneAxis *axis, const TrRange *view, const TrReader *reader, const TrLook *look,
                            double length, double least, double gap, TrAxisTicks *ticks);
double  tr_axis_tick       (const TrAxisTicks *ticks, guint index);
char   *tr_axis_tick_text  (const TrPlaneAxis *axis, const TrAxisTicks *ticks, const TrReader *reader, guint index);
char   *tr_axis_say        (const TrPlaneAxis *axis, const TrReader *reader, double value);
gboolean tr_axis_is_forced (const TrPlaneAxis *axis);

G_END_DECLS
