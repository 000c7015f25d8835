/* comparison-table.h: figures in rows, doughs in columns
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shows the doughs that were chosen, in the order of a figure or as they stand
 * in the document; the figures in their groups, or those that differ most
 * first. How it is shown is the reader's, for as long as the page lives, and
 * changes nothing in the document. Stands in a page, which calls refresh.
 */

#pragma once

#include "comparison-choice.h"
#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_COMPARISON_TABLE (tr_comparison_table_get_type ())
G_DECLARE_FINAL_TYPE (TrComparisonTable, tr_comparison_table, TR, COMPARISON_TABLE, GtkWidget)

GtkWidget          *tr_comparison_table_new           (void);
void                tr_comparison_table_refresh       (TrComparisonTable  *self);

/* Signal "view-changed": any of these. Doughs go by their ids. */
gboolean            tr_comparison_table_is_shown      (TrComparisonTable  *self,
                                                       const char         *dough);
void                tr_comparison_table_set_shown     (TrComparisonTable  *self,
                                                       const char         *dough,
                                                       gboolean            is_shown);
/* NULL: as in the document. */
const TrComparable *tr_comparison_table_get_order     (TrComparisonTable  *self,
                                                       gboolean           *is_least_first);
void                tr_comparison_table_set_order     (TrComparisonTable  *self,
                                                       const TrComparable *comparable,
                                                       gboolean            is_least_first);
gboolean            tr_comparison_table_is_by_spread  (TrComparisonTable  *self);
void                tr_comparison_table_set_by_spread (TrComparisonTable  *self,
                                                       gboolean            is_by_spread);
/* What the others are held against; NULL: nothing. */
const char         *tr_comparison_table_get_reference (TrComparisonTable  *self);
void                tr_comparison_table_set_reference (TrComparisonTable  *self,
                                                       const char         *dough);

/* The doughs of the columns in their order. (element-type guint) (transfer full) */
GArray             *tr_comparison_table_get_doughs    (TrComparisonTable  *self);
/* The rows from the top; NULL elements are headings. (transfer container) */
GPtrArray          *tr_comparison_table_get_rows      (TrComparisonTable  *self);
/* The row that is selected; NULL: none. */
const TrComparable *tr_comparison_table_get_selected  (TrComparisonTable  *self);
void                tr_comparison_table_select        (TrComparisonTable  *self,
                                                       const TrComparable *comparable);
/* What is shown, unrounded, for other programs. (transfer full) */
char               *tr_comparison_table_dup_text      (TrComparisonTable  *self,
                                                       gboolean            is_csv);

G_END_DECLS
