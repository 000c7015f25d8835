/* labels.h: places for the names of points, inside this room
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A label lies beside its point where it can, else further off with a leader.
 * None lies on another, on a point, on what is taken or outside the room; one
 * for which no place is left is not placed. What is soft is kept off where
 * there is a place near by. The first labels choose first.
 */

#pragma once

#include "shapes.h"

G_BEGIN_DECLS

typedef struct {
  double x, y, radius;           /* the point */
  double width, height;          /* the label */
  /* Found: */
  gboolean is_placed, has_leader;
  TrBox box;
  double leader[4];              /* from the point to the label: x, y, x, y */
} TrLabel;

/* Distances go with `em`. Returns how many were placed. */
guint    tr_labels_place  (TrLabel *labels, guint n_labels, const TrBox *room, const TrBox *taken, guint n_taken,
                           const TrBox *soft, guint n_soft, double em);
gboolean tr_boxes_overlap (const TrBox *one, const TrBox *other);

G_END_DECLS
