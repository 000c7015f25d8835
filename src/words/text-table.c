/* text-table.c: a table of text, for the eye and for spreadsheets
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "text-table.h"

#include <string.h>

#include "say.h"

void
tr_text_table_free (TrTextTable *table)
{
  if (table == NULL)
    return;

  g_ptr_array_unref (table->rows);
  g_free (table);
}

const char *
tr_text_table_get (const TrTextTable *table,
                   guint              row,
                   guint              column)
{
  g_return_val_if_fail (row < table->rows->len && column < table->n_columns, NULL);

  return ((char **) g_ptr_array_index (table->rows, row))[column];
}

static void
append_cell (GString    *out,
             const char *cell)
{
  g_auto (GStrv) parts = g_strsplit (cell, TR_NARROW_NO_BREAK_SPACE, -1);
  g_autofree char *joined = g_strjoinv ("", parts);

  g_string_append (out, g_strdelimit (joined, "\t\n\r", ' '));
}

char *
tr_text_table_dup_tsv (const TrTextTable *table)
{
  GString *out = g_string_new (NULL);

  g_return_val_if_fail (table != NULL, NULL);

  for (guint row = 0; row < table->rows->len; row++)
    for (guint column = 0; column < table->n_columns; column++)
      {
        append_cell (out, tr_text_table_get (table, row, column));
        g_string_append_c (out, column + 1 < table->n_columns ? '\t' : '\n');
      }

  return g_string_free (out, FALSE);
}

static void
append_field (GString    *out,
              const char *field)
{
  if (strpbrk (field, ",\"\r\n") == NULL)
    {
      g_string_append (out, field);
      return;
    }

  g_string_append_c (out, '"');
  for (const char *c = field; *c != '\0'; c++)
    {
      if (*c == '"')
        g_string_append_c (out, '"');
      g_string_append_c (out, *c);
    }
  g_string_append_c (out, '"');
}

char *
tr_text_table_dup_csv (const TrTextTable *table)
{
  GString *out = g_string_new (NULL);

  g_return_val_if_fail (table != NULL, NULL);

  for (guint row = 0; row < table->rows->len; row++)
    for (guint column = 0; column < table->n_columns; column++)
      {
        append_field (out, tr_text_table_get (table, row, column));
        g_string_append (out, column + 1 < table->n_columns ? "," : "\r\n");
      }

  return g_string_free (out, FALSE);
}
