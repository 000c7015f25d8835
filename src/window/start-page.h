/* start-page.h: what an empty window says can be done
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TR_TYPE_START_PAGE (tr_start_page_get_type ())
G_DECLARE_FINAL_TYPE (TrStartPage, tr_start_page, TR, START_PAGE, GtkWidget)

GtkWidget  *tr_start_page_new             (void);
/* The trials opened last, newest first; NULL: none. (transfer full) */
GMenuModel *tr_start_page_new_recent_menu (void);
/* Remembers a trial that was opened or saved. */
void        tr_start_page_add_recent      (GFile *file);

G_END_DECLS
