/* cause-list.h: what the tasters found wrong, what points there, and its remedy
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One row a cause, under the complaint it belongs to; each leads to its field,
 * and where an edit of the dough mends it a button makes the new dough. Rows
 * are kept and refilled, so that the focus stays where it is.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_CAUSE_LIST (tr_cause_list_get_type ())
G_DECLARE_FINAL_TYPE (TrCauseList, tr_cause_list, TR, CAUSE_LIST, GtkWidget)

GtkWidget *tr_cause_list_new  (void);
/* Of the dough that the page shows; hidden where there is nothing to say. */
void       tr_cause_list_show (TrCauseList *self,
                               TrPage      *page);

G_END_DECLS
