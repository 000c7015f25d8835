/* figure-item.h: a row of the comparison: a figure, or the heading of a group
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a list model can hold. Never changes once made.
 */

#pragma once

#include <gio/gio.h>

#include "../calc/comparison.h"

G_BEGIN_DECLS

#define TR_TYPE_FIGURE_ITEM (tr_figure_item_get_type ())
G_DECLARE_FINAL_TYPE (TrFigureItem, tr_figure_item, TR, FIGURE_ITEM, GObject)

/* `comparable` NULL: the heading of `group`. */
TrFigureItem       *tr_figure_item_new            (const TrComparable *comparable,
                                                   TrFigureGroup       group);
const TrComparable *tr_figure_item_get_comparable (TrFigureItem       *self);
TrFigureGroup       tr_figure_item_get_group      (TrFigureItem       *self);

G_END_DECLS
