/* line-list.h: the formula's lines, by stage
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A list of line rows under a heading for each stage and preferment. Return
 * in a row goes to the next one of its group, in the last it adds one.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_LINE_LIST (tr_line_list_get_type ())
G_DECLARE_FINAL_TYPE (TrLineList, tr_line_list, TR, LINE_LIST, GtkWidget)

GtkWidget *tr_line_list_new     (void);
/* Shows the dough of the page it stands in. */
void       tr_line_list_refresh (TrLineList *self);
/* "/lines", "/lines/3", "/lines/3/amount" */
gboolean   tr_line_list_go_to   (TrLineList *self,
                                 const char *pointer);
/* A blank row at the end of the stage (and group: NULL the last one), focused. */
void       tr_line_list_add     (TrLineList *self,
                                 TrStage     stage,
                                 const char *group);

G_END_DECLS
