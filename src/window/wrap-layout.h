/* wrap-layout.h: children in lines that break where the width ends
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Equal: as many columns of one width as fit, so that forms line up.
 * Otherwise every child has its own natural width, like words in a line.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TR_TYPE_WRAP_LAYOUT (tr_wrap_layout_get_type ())
G_DECLARE_FINAL_TYPE (TrWrapLayout, tr_wrap_layout, TR, WRAP_LAYOUT, GtkLayoutManager)

GtkLayoutManager *tr_wrap_layout_new (gboolean is_equal,
                                      int      column_gap,
                                      int      row_gap);

G_END_DECLS
