/* ratio-plane.h: all doughs on a plane of two ratios, the current one dragged
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The second view of the balance. Its page calls refresh from its own; while it
 * is not mapped it shows nothing anew.
 */

#pragma once

#include <gtk/gtk.h>

#include "../calc/balance.h"

G_BEGIN_DECLS

#define TR_TYPE_RATIO_PLANE (tr_ratio_plane_get_type ())
G_DECLARE_FINAL_TYPE (TrRatioPlane, tr_ratio_plane, TR, RATIO_PLANE, GtkWidget)

GtkWidget *tr_ratio_plane_new      (void);
void       tr_ratio_plane_refresh  (TrRatioPlane *self);
/* The two ratios; the same for both: the other axis takes what this one had. */
void       tr_ratio_plane_set_axes (TrRatioPlane *self,
                                    TrRatio       across,
                                    TrRatio       up);
void       tr_ratio_plane_get_axes (TrRatioPlane *self,
                                    TrRatio      *across,
                                    TrRatio      *up);

G_END_DECLS
