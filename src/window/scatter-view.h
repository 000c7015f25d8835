/* scatter-view.h: doughs as points by two figures that are chosen, or by their scores
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A point that is pressed is the dough to work on. Stands in a page.
 */

#pragma once

#include "../calc/comparison.h"
#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_SCATTER_VIEW (tr_scatter_view_get_type ())
G_DECLARE_FINAL_TYPE (TrScatterView, tr_scatter_view, TR, SCATTER_VIEW, GtkWidget)

GtkWidget *tr_scatter_view_new      (void);
/* The doughs that are shown (indices). */
void       tr_scatter_view_refresh  (TrScatterView      *self,
                                     const GArray       *doughs);
/* NULL: the mean scores. */
void       tr_scatter_view_set_axes (TrScatterView      *self,
                                     const TrComparable *across,
                                     const TrComparable *up);

G_END_DECLS
