/* line.c: what a line of a recipe looks like
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each is said of one line alone; what came before it is the business of
 * sections.c.
 */

#include "line.h"

#include <string.h>

gboolean
tr_line_has_word (const TrTokens *tokens,
                  guint           at,
                  guint           end,
                  const char     *word)
{
  return at < end && strcmp (tr_tokens_get (tokens, at)->word, word) == 0;
}

/* Bullets, tick boxes, marks of emphasis; "1." and "a)" are skipped when `numbers`. */
guint
tr_line_skip_bullets (const TrTokens *tokens,
                      gboolean        numbers)
{
  guint at = 0;

  while (at < tokens->tokens->len && tr_tokens_get (tokens, at)->type == TR_TOKEN_SIGN &&
         strchr ("*-+#>_?|[]=", tr_tokens_get (tokens, at)->sign) != NULL && tr_tokens_get (tokens, at)->sign != '\0')
    at++;
  if (at > 0 && tr_tokens_is_sign (tokens, at - 1, '[') && tr_line_has_word (tokens, at, tokens->tokens->len, "x") &&
      tr_tokens_is_sign (tokens, at + 1, ']'))
    at += 2;
  if (numbers && at + 2 < tokens->tokens->len && tr_tokens_get (tokens, at)->type == TR_TOKEN_NUMBER &&
      tr_tokens_get (tokens, at)->value < 100 &&
      (tr_tokens_is_sign (tokens, at + 1, '.') || tr_tokens_is_sign (tokens, at + 1, ')')) &&
      tr_tokens_get (tokens, at + 1)->end < tr_tokens_get (tokens, at + 2)->start)
    at += 2;
  return at;
}

guint
tr_line_skip_end (const TrTokens *tokens,
                  guint           at)
{
  guint end = tokens->tokens->len;

  while (end > at && tr_tokens_get (tokens, end - 1)->type == TR_TOKEN_SIGN &&
         strchr (":.*#_-=|]", tr_tokens_get (tokens, end - 1)->sign) != NULL)
    end--;
  return end;
}

guint
tr_line_skip_for_the (const TrTokens *tokens,
                      guint           at,
                      guint           end)
{
  static const char *const words[] = { "for", "to", "make", "the", "day", "1", "2", "one", "two", "ingredients", "-", "part", "stage" };

  for (gboolean moved = TRUE; moved && at < end;)
    {
      moved = FALSE;
      for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
        if (tr_line_has_word (tokens, at, end, words[i]) && at + 1 < end)
          {
            at++;
            moved = TRUE;
          }
      if (at < end && (tr_tokens_is_sign (tokens, at, ':') || tr_tokens_is_sign (tokens, at, '-')))
        at++;
    }
  return at;
}

/* A stage's name that ends where the heading ends, its brackets aside: "the
 * butter block (day 2)". */
const TrWordEntry *
tr_line_find_stage (const TrTokens *tokens,
                    guint           at,
                    guint           end)
{
  const TrWordEntry *best = NULL, *entry;
  guint head = at, next;

  while (head < end && !tr_tokens_is_sign (tokens, head, '(') && !tr_tokens_is_sign (tokens, head, ','))
    head++;
  for (; at < head; at++)
    {
      entry = tr_words_match (TR_WORD_STAGE, tokens, at, head, &next);
      if (entry == NULL)
        continue;
      if (best == NULL || entry->n_words >= best->n_words || g_str_equal (entry->value, "roll-in"))
        best = entry;
      at = next - 1;
    }
  return best;
}

gboolean
tr_line_is_whole_stage (const TrTokens *tokens,
                        guint           at,
                        guint           end)
{
  guint next;

  return tr_words_match (TR_WORD_STAGE, tokens, at, end, &next) != NULL &&
         (next == end || tr_tokens_is_sign (tokens, next, '('));
}

gboolean
tr_line_is_prose (const TrTokens *tokens,
                  const char     *line,
                  guint           end)
{
  gsize length = strlen (line);

  return length > TR_LINE_MAX_ITEM_BYTES || end > 60 || (end >= 9 && line[length - 1] == '.' && !g_str_has_suffix (line, "oz.") &&
                                                 !g_str_has_suffix (line, "tsp.") && !g_str_has_suffix (line, "tbsp."));
}

gboolean
tr_line_is_label (const TrTokens *tokens,
                  guint           at)
{
  guint end = tokens->tokens->len, next;
  const TrWordEntry *total = tr_words_match (TR_WORD_TOTAL, tokens, at, end, &next);

  if (total != NULL && (next == end || tr_tokens_get (tokens, next)->type != TR_TOKEN_WORD))
    return TRUE;
  if (tr_words_match (TR_WORD_HEADING, tokens, at, end, &next) == NULL)
    return FALSE;
  return next == end || tr_tokens_is_sign (tokens, next, ':') || tr_tokens_get (tokens, next)->type == TR_TOKEN_NUMBER ||
         tr_tokens_is_sign (tokens, next, '|');
}
