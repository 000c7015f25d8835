/* window.h: one trial on screen
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Doughs on the left, the formula in the middle, a switcher of the other pages
 * on the right, findings and the figures strip below. Under 1100 px times the
 * text scale the doughs become a drop-down, under 800 the formula is one of
 * the pages. The window holds the document and the dough that is shown, and
 * tells both to every page.
 */

#pragma once

#include <gtk/gtk.h>

#include "../trial/document.h"
#include "page.h"
#include "preferences.h"

G_BEGIN_DECLS

#define TR_TYPE_WINDOW (tr_window_get_type ())
G_DECLARE_FINAL_TYPE (TrWindow, tr_window, TR, WINDOW, GtkApplicationWindow)

typedef enum { TR_LAYOUT_WIDE, TR_LAYOUT_NARROW, TR_LAYOUT_COMPACT } TrLayout;

/* `recovery_folder` NULL: no recovery copies. */
GtkWidget  *tr_window_new            (GtkApplication *application,
                                      TrPreferences  *preferences,
                                      GFile          *recovery_folder,
                                      TrDocument     *document);
TrDocument *tr_window_get_document   (TrWindow       *self);
void        tr_window_set_document   (TrWindow       *self,
                                      TrDocument     *document);
/* Nothing in it that anybody would miss: untitled, empty, unmodified. */
gboolean    tr_window_is_pristine    (TrWindow       *self);
const char *tr_window_get_dough_id   (TrWindow       *self);   /* NULL: none */
void        tr_window_set_dough      (TrWindow       *self,
                                      const char     *id);
/* Brings the field of that JSON Pointer into view and focuses it. */
void        tr_window_go_to          (TrWindow       *self,
                                      const char     *pointer);
TrLayout    tr_window_get_layout     (TrWindow       *self);
/* "doughs", "formula", "turns", "sheet", "method", "total", "bench", "findings", "strip" */
TrPage     *tr_window_get_page       (TrWindow       *self,
                                      const char     *name);

/* What happened to the file: an error, with an offer to save elsewhere. */
void        tr_window_show_error     (TrWindow       *self,
                                      const char     *sentence);
void        tr_window_offer_recovery (TrWindow         *self,
                                      const TrRecovery *recovery);
/* The sentence shown about "file", "disk", "edit" or the path of a recovery copy; NULL: none. */
const char *tr_window_get_notice     (TrWindow       *self,
                                      const char     *subject);
/* The current dough's card, or all. */
gboolean    tr_window_export_cards   (TrWindow       *self,
                                      gboolean        all,
                                      GFile          *file,
                                      GError        **error);

G_END_DECLS
