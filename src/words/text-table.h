/* text-table.h: a table of text, for the eye and for spreadsheets
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The first row has the heads, the first cell of every row its name. */
typedef struct {
  guint n_columns;
  guint n_foot;                  /* last rows that stand under a line */
  gboolean has_sum;              /* the last of them is a sum */
  GPtrArray *rows;               /* char **, of n_columns; owned */
} TrTextTable;

void         tr_text_table_free     (TrTextTable *table);
const char  *tr_text_table_get      (const TrTextTable *table, guint row, guint column);
/* For a spreadsheet: tabs between, no spaces inside numbers. */
char        *tr_text_table_dup_tsv  (const TrTextTable *table);
/* RFC 4180: fields quoted where they have to be, lines end with CR LF. */
char        *tr_text_table_dup_csv  (const TrTextTable *table);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrTextTable, tr_text_table_free)

G_END_DECLS
