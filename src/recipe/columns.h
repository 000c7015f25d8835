/* columns.h: the head of a table and the cells below it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A head gives the bare numbers below it a unit, and where its columns are
 * "total formula", "poolish", "final dough" it says which of them count where.
 */

#pragma once

#include "words.h"

G_BEGIN_DECLS

#define TR_MAX_COLUMNS 8

typedef struct {
  const char *unit;              /* of a bare number; NULL: not said */
  const TrWordEntry *stage;      /* whose amounts stand there; NULL: none */
  gboolean is_total;             /* the sum of the others: not counted again */
  gboolean is_other;             /* a price and the like: left out */
} TrColumn;

typedef struct {
  TrColumn columns[TR_MAX_COLUMNS];
  const TrWordEntry *heading;    /* the stage that the first cell of the head names; NULL: none */
  gboolean has_units, has_stages, is_spaced;
} TrColumns;

/* `has_edge`: a bar stands before its first cell.
 * Whether the line is the head of a table; what it says is then in `columns`. */
gboolean   tr_columns_read     (TrColumns *columns, const TrTokens *tokens, gboolean has_edge);
/* The line with bars where two or more blanks part its cells; NULL: it has not
 * three cells, or it begins with a number. */
char      *tr_columns_dup_spaced (const char *line);
/* The line with the units of its columns; NULL: nothing to add. */
char      *tr_columns_dup_line (const TrColumns *columns, const char *line);
/* The cells of a row, blanks at their ends removed, the row's edge aside. */
char     **tr_columns_split    (const char *line);
/* A cell with its column's unit. */
char      *tr_columns_dup_cell (const TrColumn *column, const char *cell);

G_END_DECLS
