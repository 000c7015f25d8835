/* carry-window.h: which doughs go on into a new trial
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The new trial is shown in a window of its own, not saved yet; the one it
 * comes from stays as it is.
 */

#pragma once

#include <gtk/gtk.h>

#include "../trial/document.h"

G_BEGIN_DECLS

#define TR_TYPE_CARRY_WINDOW (tr_carry_window_get_type ())
G_DECLARE_FINAL_TYPE (TrCarryWindow, tr_carry_window, TR, CARRY_WINDOW, GtkWindow)

/* `parent` may be NULL; `dough` is chosen at first, NULL: none. */
GtkWidget  *tr_carry_window_new   (GtkWindow     *parent,
                                   TrDocument    *document,
                                   const char    *dough);
/* What goes on: an untitled document in which carrying is the one step that can
 * be undone. Doughs whose forebears all stay behind note from which they came. */
TrDocument *tr_document_new_carried (TrDocument        *document,
                                     const char *const *doughs,
                                     const char        *title);

G_END_DECLS
