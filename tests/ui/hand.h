/* hand.h: pointer and keys as the display's server sends them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * By xdotool, so that the events go the whole way: server, GDK, gestures.
 */

#pragma once

#include "support.h"

G_BEGIN_DECLS

/* FALSE: there is no such hand here (no X, no xdotool); skip. */
gboolean hand_is_there     (void);
/* The words as xdotool takes them; NULL ends them. Waits until what they did is done. */
void     hand_do           (const char *word, ...) G_GNUC_NULL_TERMINATED;
/* Gives the window the keyboard. */
void     hand_focus        (GtkWindow *window);
/* To a point of the widget. */
void     hand_move         (GtkWidget *widget, double x, double y);
/* The button goes down and up where the pointer is, over the widget. */
void     hand_press_button (GtkWidget *widget, const char *button);
void     hand_click        (GtkWidget *widget, double x, double y);
/* Presses there, goes in steps, lets go; between, `halfway` may look, or be NULL. */
void     hand_drag         (GtkWidget *widget, double x, double y, double to_x, double to_y,
                            void (*halfway) (gpointer), gpointer data);
void     hand_key          (const char *key);

G_END_DECLS
