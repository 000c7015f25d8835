/* preferences-window.h: what the reader decides, in a window
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Units, colours and the scales. Each choice counts at once, in every window.
 */

#pragma once

#include <gtk/gtk.h>

#include "preferences.h"

G_BEGIN_DECLS

#define TR_TYPE_PREFERENCES_WINDOW (tr_preferences_window_get_type ())
G_DECLARE_FINAL_TYPE (TrPreferencesWindow, tr_preferences_window, TR, PREFERENCES_WINDOW, GtkWindow)

/* `parent` may be NULL. */
GtkWidget *tr_preferences_window_new (GtkWindow     *parent,
                                      TrPreferences *preferences);

G_END_DECLS
