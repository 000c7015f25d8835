/* lines.h: the formula's lines as a list that is ordered, moved and matched
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The document keeps lines in any order; the page shows them by stage, and
 * preferments by group in order of appearance. Knows no widget.
 */

#pragma once

#include "../calc/written.h"

G_BEGIN_DECLS

/* A row that is no line yet: where the line will stand once something is
 * written. Fits the item of a field. */
#define TR_LINE_PENDING (1u << 31)
guint      tr_line_pending_item  (TrStage        stage,
                                  int            after);         /* line index; -1: at the end */
gboolean   tr_line_is_pending    (guint          item);
TrStage    tr_line_pending_stage (guint          item);
int        tr_line_pending_after (guint          item);
/* Where a pending line will stand in the document. */
guint      tr_line_pending_index (const TrDough *dough,
                                  guint          item);

/* TrReach of a line, pending ones included: read as blank, made on writing. */
gpointer   tr_reach_line         (const TrTrial *trial,
                                  int            dough,
                                  guint          item,
                                  gboolean       make);

gboolean   tr_line_equal         (const TrLine  *a,
                                  const TrLine  *b);
/* Line indices in the order they are shown. (element-type guint) */
GArray    *tr_lines_dup_order    (const TrDough *dough);

/* On a dough that is owned. */
/* One place up (-1) or down (1), over the edge into the neighbouring group.
 * Returns the new index of the line, or -1: there is no further. */
int        tr_lines_move         (TrDough       *dough,
                                  guint          index,
                                  int            by);
/* To the end of a stage; a preferment line joins the last group. Returns its new index. */
guint      tr_lines_set_stage    (TrDough       *dough,
                                  guint          index,
                                  TrStage        stage);
/* Into a preferment of its own. */
guint      tr_lines_set_new_group (TrDough      *dough,
                                   guint         index);
/* `name`, or with a number behind it where there is a preferment of that name. */
char      *tr_lines_dup_free_group (const TrDough *dough,
                                    const char    *name);
void       tr_lines_rename_group (TrDough       *dough,
                                  const char    *group,
                                  const char    *name);

/* For every line of `dough`, which of the `n_rows` old lines it continues
 * (`old`, in their old document order), or -1: a new one. Lines that did not
 * change keep their row wherever they moved; of the changed ones those that
 * stand between the same neighbours. (element-type int) */
GArray    *tr_lines_match        (TrLine *const *old,
                                  guint          n_old,
                                  const TrDough *dough);

G_END_DECLS
