/* words.c: the words that recipes are written in
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The table is walked from end to end: some hundred phrases, a few words each.
 */

#include "words.h"

#include <string.h>

gboolean
tr_word_is (const char *word,
            const char *phrase,
            gsize       length)
{
  if (strncmp (word, phrase, length) != 0)
    return FALSE;
  word += length;
  return *word == '\0' || (length > 1 && (strcmp (word, "s") == 0 || strcmp (word, "es") == 0));
}

/* A phrase word by word; hyphens between its words make no difference. */
static gboolean
match_phrase (const char     *phrase,
              const TrTokens *tokens,
              guint           at,
              guint           end,
              guint          *next)
{
  for (;;)
    {
      gsize length = strcspn (phrase, " ");

      if (at >= end || !tr_word_is (tr_tokens_get (tokens, at)->word, phrase, length))
        return FALSE;
      at++;
      if (phrase[length] == '\0')
        break;
      phrase += length + 1;
      if (at < end && tr_tokens_is_sign (tokens, at, '-'))
        at++;
    }
  *next = at;
  return TRUE;
}

const TrWordEntry *
tr_words_match (TrWordKind      kind,
                const TrTokens *tokens,
                guint           at,
                guint           end,
                guint          *next)
{
  const TrWordEntry *best = NULL;
  guint after = at;

  if (at >= end || *tr_tokens_get (tokens, at)->word == '\0')
    return NULL;
  for (guint i = tr_word_starts[kind]; i < tr_word_starts[kind + 1]; i++)
    if ((best == NULL || tr_word_entries[i].n_words > best->n_words) &&
        *tr_word_entries[i].phrase == *tr_tokens_get (tokens, at)->word &&
        match_phrase (tr_word_entries[i].phrase, tokens, at, end, &after))
      {
        best = &tr_word_entries[i];
        if (next != NULL)
          *next = after;
      }
  return best;
}

gboolean
tr_words_has (TrWordKind      kind,
              const TrTokens *tokens,
              guint           at,
              guint           end)
{
  return tr_words_match (kind, tokens, at, end, NULL) != NULL;
}

const TrWordEntry *
tr_words_find (TrWordKind      kind,
               const TrTokens *tokens,
               guint           at,
               guint           end,
               guint          *where)
{
  for (; at < end; at++)
    {
      const TrWordEntry *entry = tr_words_match (kind, tokens, at, end, NULL);

      if (entry != NULL)
        {
          if (where != NULL)
            *where = at;
          return entry;
        }
    }
  return NULL;
}
