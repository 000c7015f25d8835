/* columns.c: the head of a table and the cells below it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "columns.h"

#include <string.h>

static gboolean
is_number_cell (const char *cell)
{
  return *cell != '\0' && cell[strspn (cell, "0123456789.,/ ")] == '\0' && strpbrk (cell, "0123456789") != NULL;
}

char **
tr_columns_split (const char *line)
{
  char **cells = g_strsplit_set (line, "\t|", TR_MAX_COLUMNS + 2);

  for (guint i = 0; cells[i] != NULL; i++)
    g_strstrip (cells[i]);
  if (cells[0] != NULL && *cells[0] == '\0' && *line == '|')
    {
      g_free (cells[0]);
      for (guint i = 0; cells[i] != NULL; i++)
        cells[i] = cells[i + 1];
    }
  return cells;
}

char *
tr_columns_dup_cell (const TrColumn *column,
                     const char     *cell)
{
  const char *dot = strchr (cell, '.');

  /* "1.200" of kilograms is no thousand */
  if (column->unit != NULL && strcmp (column->unit, "kg") == 0 && is_number_cell (cell) && dot != NULL && strlen (dot) == 4 && strchr (cell, ',') == NULL)
    return g_strdup_printf ("%s0 kg", cell);
  return column->unit != NULL && is_number_cell (cell) ? g_strdup_printf ("%s %s", cell, column->unit) : g_strdup (cell);
}

char *
tr_columns_dup_line (const TrColumns *columns,
                     const char      *line)
{
  g_auto (GStrv) cells = NULL;
  GString *out;

  if (!columns->has_units || strpbrk (line, "\t|") == NULL)
    return NULL;
  cells = tr_columns_split (line);
  out = g_string_new (NULL);
  for (guint i = 0; cells[i] != NULL; i++)
    {
      if (i < TR_MAX_COLUMNS && columns->columns[i].is_other)
        continue;

      g_autofree char *cell = i < TR_MAX_COLUMNS ? tr_columns_dup_cell (&columns->columns[i], cells[i]) : g_strdup (cells[i]);

      g_string_append_printf (out, "%s%s", i > 0 ? " | " : "", cell);
    }
  return g_string_free (out, FALSE);
}

char *
tr_columns_dup_spaced (const char *line)
{
  g_autoptr (GString) out = g_string_new (NULL);
  guint n = 1;

  if (g_ascii_isdigit (*line) || strpbrk (line, "\t|") != NULL)
    return NULL;
  while (*line != '\0')
    {
      gsize n_blanks = strspn (line, " ");

      if (n_blanks < 2)
        {
          g_string_append_c (out, *line++);
          continue;
        }
      g_string_append (out, " | ");
      line += n_blanks;
      n++;
    }
  return n >= 3 ? g_strdup (out->str) : NULL;
}

static const char *
unit_of (const TrTokens *tokens,
         guint           at)
{
  static const char *const units[] = { "kg", "oz", "g", "lb" };
  const char *word = tr_tokens_get (tokens, at)->word;

  if (tr_tokens_is_sign (tokens, at, '%') || tr_word_is (word, "percentage", 10) || strcmp (word, "percent") == 0 ||
      tr_word_is (word, "bakers", 6))
    return "%";
  if (tr_word_is (word, "gram", 4))
    return "g";
  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (strcmp (word, units[i]) == 0)
      return units[i];
  return NULL;
}

/* One cell of a head; FALSE: it holds what no head holds. */
static gboolean
read_cell (const TrTokens *tokens,
           guint           at,
           guint           end,
           TrColumn       *column,
           guint          *n_words)
{
  for (guint next; at < end; at = next)
    {
      const TrToken *token = tr_tokens_get (tokens, at);
      const char *unit = unit_of (tokens, at);
      const TrWordEntry *entry;

      next = at + 1;
      *n_words += token->type == TR_TOKEN_WORD ? 1 : 0;
      column->unit = unit != NULL ? unit : column->unit;
      if (token->type == TR_TOKEN_NUMBER)
        return FALSE;
      if (token->type == TR_TOKEN_SIGN || unit != NULL)
        continue;
      if (tr_words_match (TR_WORD_TOTAL, tokens, at, end, &next) != NULL || tr_words_match (TR_WORD_SECTION, tokens, at, end, &next) != NULL)
        column->is_total = TRUE;
      else if ((entry = tr_words_match (TR_WORD_STAGE, tokens, at, end, &next)) != NULL && column->stage == NULL)
        column->stage = entry;
      else if (tr_words_match (TR_WORD_COLUMN, tokens, at, at + 1, &next) == NULL)
        return FALSE;
    }
  return TRUE;
}

static gboolean
has_number (const TrTokens *tokens,
            guint           at,
            guint           end)
{
  for (; at < end; at++)
    if (tr_tokens_get (tokens, at)->type == TR_TOKEN_NUMBER)
      return TRUE;
  return FALSE;
}

static guint
cell_end (const TrTokens *tokens,
          guint           at)
{
  while (at < tokens->tokens->len && !tr_tokens_is_sign (tokens, at, '|'))
    at++;
  return at;
}

gboolean
tr_columns_read (TrColumns      *columns,
                 const TrTokens *tokens,
                 gboolean        has_edge)
{
  TrColumns head = { 0 };
  guint n = 0, n_words = 0, n_cells = 0, n_unknown = 0, n_tokens = tokens->tokens->len;

  for (guint at = has_edge ? 1 : 0, end; at <= n_tokens && n < TR_MAX_COLUMNS; at = end + 1, n++)
    {
      end = cell_end (tokens, at);
      n_cells += end > at ? 1 : 0;
      if (!read_cell (tokens, at, end, &head.columns[n], &n_words))
        {
          /* a price, a supplier: behind the others, and no amount */
          if (n < 2 || ++n_unknown > 2 || has_number (tokens, at, end))
            return FALSE;
          head.columns[n] = (TrColumn) { .is_other = TRUE };
        }
      head.has_units |= head.columns[n].unit != NULL;
      head.has_stages |= n > 0 && head.columns[n].stage != NULL;
    }
  if ((n_unknown > 0 && !head.has_units) || n_words == 0 || (n_words == 1 && n < 2) || (n_cells < 2 && (head.columns[0].stage != NULL || head.columns[0].is_total)))
    return FALSE;
  head.heading = g_steal_pointer (&head.columns[0].stage);
  *columns = head;
  return TRUE;
}
