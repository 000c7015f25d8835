/* two-sides.h: two widgets beside each other where there is room, else one above the other
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Beside each other the second has a third of the width and the first the rest;
 * above each other they share the height. Both are there in both ways: nothing
 * changes its parent.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TR_TYPE_TWO_SIDES (tr_two_sides_get_type ())
G_DECLARE_FINAL_TYPE (TrTwoSides, tr_two_sides, TR, TWO_SIDES, GtkWidget)

/* Takes both. Beside each other from where `decisive`, the first or something in
 * it, has its natural width, and `least` pixels times the text scale. */
GtkWidget *tr_two_sides_new (GtkWidget *first,
                             GtkWidget *decisive,
                             GtkWidget *second,
                             int        least);

G_END_DECLS
