/* log-table.h: rows of what is written, with fields for what happened
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A row an item, a column a member; for the page that holds it.
 */

#pragma once

#include "section.h"

G_BEGIN_DECLS

#define TR_LOG_MOST_COLUMNS 6

typedef struct {
  guint item;
  GtkWidget *name, *planned;
  GtkWidget *fields[TR_LOG_MOST_COLUMNS];        /* NULL: the row has none there; each in a cell of its own */
} TrLogRow;

typedef struct {
  GtkWidget *grid, *section;
  const TrMember *members;
  guint n_members;
  GtkWidget *titles[TR_LOG_MOST_COLUMNS];
  GPtrArray *rows;               /* TrLogRow */
} TrLogTable;

/* Appends it to the section. `members`: a static table. */
void      tr_log_table_init        (TrLogTable     *table,
                                    GtkWidget      *section,
                                    const TrMember *members,
                                    guint           n_members,
                                    gboolean        has_plan);
void      tr_log_table_clear       (TrLogTable     *table);
/* `has`: which of the members this row has; NULL: all. */
TrLogRow *tr_log_table_add_row     (TrLogTable     *table,
                                    guint           item,
                                    const gboolean *has);
TrLogRow *tr_log_table_get_row     (const TrLogTable *table,
                                    guint           index);
/* Takes both texts. `name` NULL: the row is hidden. */
void      tr_log_table_show_row    (TrLogTable     *table,
                                    TrLogRow       *row,
                                    char           *name,
                                    char           *planned);
void      tr_log_table_show_titles (TrLogTable     *table,
                                    const TrReader *reader);

G_END_DECLS
