/* pantry-window.h: the baker's own ingredients, in a window beside the trial's
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Not modal: the figures in the window behind it follow the typing. Shows the
 * document of its "document" property and the units of the preferences.
 */

#pragma once

#include <gtk/gtk.h>

#include "page.h"
#include "preferences.h"

G_BEGIN_DECLS

#define TR_TYPE_PANTRY_WINDOW (tr_pantry_window_get_type ())
G_DECLARE_FINAL_TYPE (TrPantryWindow, tr_pantry_window, TR, PANTRY_WINDOW, GtkWindow)

GtkWidget *tr_pantry_window_new      (GtkWindow      *parent,
                                      TrPreferences  *preferences);
TrPage    *tr_pantry_window_get_page (TrPantryWindow *self);
/* Opens the window of `page` on the ingredient of that line; a built-in one
 * becomes one of the baker's own first, in a step of its own. */
void       tr_pantry_window_open_line (TrPage        *page,
                                       guint          line);

G_END_DECLS
