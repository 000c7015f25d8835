/* line-menu.h: what can be done to a line of the formula
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Its items are the "line." actions of the row it stands in. */
GtkWidget *tr_line_menu_new_button (void);

G_END_DECLS
