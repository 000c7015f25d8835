/* seen.h: what a program can see of a window
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each fault fails the running test and says where it is.
 */

#pragma once

#include <gtk/gtk.h>

/* Nothing lies outside what shows it, no words are cut short, nothing scrolls to the
 * side, the window fits. `window_width`: what it was given. */
void seen_check_widgets (GtkWidget *window, int window_width);
/* It is not blank. */
void seen_check_texture (GdkTexture *texture);
