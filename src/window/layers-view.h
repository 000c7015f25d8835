/* layers-view.h: the layer picture, a band of it and its name
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The magnified window follows the pointer over the whole stack, and stays
 * where it was clicked. Up and Down go from band to band. The band is outlined
 * in both views and named in the line below.
 */

#pragma once

#include <gtk/gtk.h>

#include "picture-view.h"

G_BEGIN_DECLS

#define TR_TYPE_LAYERS_VIEW (tr_layers_view_get_type ())
G_DECLARE_FINAL_TYPE (TrLayersView, tr_layers_view, TR, LAYERS_VIEW, GtkWidget)

GtkWidget     *tr_layers_view_new         (void);
/* NULL: nothing is laminated, and nothing shown. */
void           tr_layers_view_set_figures (TrLayersView         *self,
                                           const TrDoughFigures *figures,
                                           const TrReader       *reader);
/* The turn that is chosen, counted from 1: its layers can be shown in place of
 * those at the end. 0: none. */
void           tr_layers_view_set_turn    (TrLayersView         *self,
                                           guint                 turn);
TrPictureView *tr_layers_view_get_picture (TrLayersView         *self);
/* What the line below says. */
const char    *tr_layers_view_get_text    (TrLayersView         *self);

G_END_DECLS
