/* held-viewports.h: a page stays where it is while a popover of it has the focus
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* For a new window, before anything is put into it. */
void tr_hold_viewports (GtkWindow *window);

G_END_DECLS
