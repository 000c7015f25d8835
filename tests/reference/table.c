/* table.c: reads a small table of comma-separated values
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "table.h"

#include <math.h>

struct _RefTable
{
  char **head;
  GPtrArray *rows;               /* char ** */
};

static char **
split_row (const char *line)
{
  g_autoptr (GStrvBuilder) cells = g_strv_builder_new ();
  g_autoptr (GString) cell = g_string_new (NULL);
  gboolean quoted = FALSE;

  for (const char *c = line; *c != '\0'; c++)
    {
      if (*c == '"' && quoted && c[1] == '"')
        g_string_append_c (cell, *c++);
      else if (*c == '"')
        quoted = !quoted;
      else if (*c == ',' && !quoted)
        {
          g_strv_builder_add (cells, cell->str);
          g_string_truncate (cell, 0);
        }
      else
        g_string_append_c (cell, *c);
    }
  g_strv_builder_add (cells, cell->str);

  return g_strv_builder_end (cells);
}

RefTable *
ref_table_new (const char *path)
{
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);

  g_auto (GStrv) lines = g_strsplit (g_strchomp (text), "\n", -1);
  RefTable *table = g_new0 (RefTable, 1);

  table->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  table->head = split_row (g_strchomp (lines[0]));
  for (guint i = 1; lines[i] != NULL; i++)
    {
      char **row = split_row (g_strchomp (lines[i]));

      g_assert_cmpuint (g_strv_length (row), ==, g_strv_length (table->head));
      g_ptr_array_add (table->rows, row);
    }

  return table;
}

void
ref_table_free (RefTable *table)
{
  g_strfreev (table->head);
  g_ptr_array_unref (table->rows);
  g_free (table);
}

guint
ref_table_n_rows (RefTable *table)
{
  return table->rows->len;
}

const char *
ref_table_get (RefTable   *table,
               guint       row,
               const char *column)
{
  char **cells = g_ptr_array_index (table->rows, row);

  for (guint i = 0; table->head[i] != NULL; i++)
    if (g_str_equal (table->head[i], column))
      return cells[i];

  g_error ("no column %s", column);
}

double
ref_table_get_number (RefTable   *table,
                      guint       row,
                      const char *column)
{
  const char *cell = ref_table_get (table, row, column);
  char *end = NULL;

  if (*cell == '\0')
    return NAN;

  double value = g_ascii_strtod (cell, &end);
  g_assert_cmpstr (end, ==, "");

  return value;
}

guint
ref_table_find (RefTable   *table,
                const char *column,
                const char *key)
{
  for (guint i = 0; i < table->rows->len; i++)
    if (g_str_equal (ref_table_get (table, i, column), key))
      return i;

  g_error ("no row %s", key);
}
