/* yield.c: how many pieces a recipe says it makes
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Mouths are no pieces: "serves 8" is kept as it is written and makes no count.
 */

#include "sections.h"

#include <math.h>

#include "count.h"
#include "measure.h"

static gboolean
read_count (const TrTokens *tokens,
            guint           at,
            guint           end,
            double         *count,
            gboolean       *is_mean,
            gboolean       *is_serving,
            gboolean       *is_piece)
{
  TrMeasure measure;
  guint next;

  for (; at < end; at++)
    {
      if (!tr_measure_read (tokens, at, end, &next, &measure))
        continue;
      if (measure.is_bad || measure.kind < TR_MEASURE_COUNT || measure.kind == TR_MEASURE_PERCENT ||
          measure.kind == TR_MEASURE_VAGUE || !(measure.number >= 1) || measure.number > 10000)
        {
          at = next - 1;
          continue;
        }
      *is_serving = tr_words_has (TR_WORD_SERVING, tokens, next, end);
      *is_piece = next < end && tr_tokens_get (tokens, next)->type == TR_TOKEN_WORD;
      if (tr_words_has (TR_WORD_NOT_PIECE, tokens, next, end) && !*is_serving)
        continue;
      *count = measure.number;
      *is_mean = measure.is_range;
      return TRUE;
    }
  return FALSE;
}

void
tr_sections_read_yield (TrRecipe   *recipe,
                        const char *text)
{
  g_autoptr (TrTokens) tokens = tr_tokens_new (text);
  gboolean is_mean = FALSE, is_serving = FALSE, is_piece = FALSE;
  double count;

  if (recipe->yield == NULL)
    recipe->yield = g_strstrip (g_strdup (text));
  if (recipe->pieces > 0 || !read_count (tokens, 0, tokens->tokens->len, &count, &is_mean, &is_serving, &is_piece))
    return;
  /* "Servings: 12 rolls" are pieces, "Serves 8" are mouths */
  is_serving |= !is_piece && tr_words_find (TR_WORD_SERVING, tokens, 0, tokens->tokens->len, NULL) != NULL;
  if (is_serving)
    {
      g_ptr_array_add (recipe->remarks, g_strdup_printf ("“%s” counts servings, not pieces; how many pieces it makes is not said.", text));
      return;
    }
  recipe->pieces = (int) round (count);
  if (is_mean)
    g_ptr_array_add (recipe->remarks, g_strdup_printf ("“%s”: the mean, %d, is taken as the number of pieces.", text, recipe->pieces));
}

/* "16-18 croissants", "8 people", and nothing more. */
gboolean
tr_yield_is_bare (const TrTokens *tokens,
                  guint           at,
                  guint           end)
{
  guint next = at;
  TrCount count;

  if (tr_words_match (TR_WORD_APPROX, tokens, at, end, &next) != NULL)
    at = next;
  if (!tr_count_read (tokens, at, end, &next, &count) || count.is_article || count.is_bad)
    return FALSE;
  while (next < end && tr_words_match (TR_WORD_SIZE, tokens, next, end, &at) != NULL)
    next = at;
  return (tr_words_match (TR_WORD_PIECE, tokens, next, end, &next) != NULL || tr_words_match (TR_WORD_SERVING, tokens, next, end, &next) != NULL) &&
         next == end;
}
