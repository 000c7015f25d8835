/* table.h: reads a small table of comma-separated values
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A second reader, on purpose: the one that makes the program's tables must
 * not be its own judge. RFC 4180, without line breaks inside a cell.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct _RefTable RefTable;

RefTable   *ref_table_new     (const char *path);
void        ref_table_free    (RefTable   *table);
guint       ref_table_n_rows  (RefTable   *table);
/* The cell, never NULL; a column that is not there fails. */
const char *ref_table_get     (RefTable   *table,
                               guint       row,
                               const char *column);
/* NaN: the cell is empty, which means unknown. */
double      ref_table_get_number (RefTable   *table,
                                  guint       row,
                                  const char *column);
/* Index of the row whose `column` says `key`; fails when there is none. */
guint       ref_table_find    (RefTable   *table,
                               const char *column,
                               const char *key);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RefTable, ref_table_free)

G_END_DECLS
