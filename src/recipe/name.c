/* name.c: which ingredient the words of a name mean
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The order of the words makes no difference ("yeast, instant"): the phrase of
 * the table that uses most of them wins, then the one that ends furthest right,
 * where English has its noun.
 */

#include "phrase.h"

#include <string.h>

static guint32
letter_bit (char c)
{
  return g_ascii_islower (c) ? 1u << (c - 'a') : 1u << 26;
}

void
tr_name_add (TrName     *name,
             const char *word,
             gboolean    is_head)
{
  if (*word == '\0' || name->n == TR_NAME_MAX_WORDS)
    return;
  name->words[name->n++] = (TrNameWord) { word, is_head };
  name->n_head += is_head ? 1 : 0;
  name->letters |= letter_bit (*word);
}

/* Index of the phrase's word in the name, -1: not there. */
static int
find_word (const TrName *name,
           const char   *word,
           gsize         length)
{
  int beside = -1;

  for (guint i = name->n; i-- > 0;)
    if (tr_word_is (name->words[i].word, word, length))
      {
        if (name->words[i].is_head)
          return (int) i;
        beside = (int) i;
      }
  return beside;
}

/* All words there, the last in the head; `last` the furthest head word used. */
static gboolean
matches (const TrName      *name,
         const TrWordEntry *entry,
         guint64           *used,
         int               *last)
{
  const char *word = entry->phrase;

  *used = 0;
  *last = -1;
  if ((name->letters & letter_bit (*word)) == 0 || entry->n_words > name->n)
    return FALSE;
  for (;;)
    {
      gsize length = strcspn (word, " ");
      int at = find_word (name, word, length);

      if (at < 0)
        return FALSE;
      *used |= G_GUINT64_CONSTANT (1) << at;
      if (name->words[at].is_head)
        *last = MAX (*last, at);
      if (word[length] == '\0')
        return name->n_head == 0 || name->words[at].is_head;
      word += length + 1;
    }
}

/* "fresh yeast (7 g if dried)": what a bracket adds weighs less. */
static guint
n_in_head (const TrName *name,
           guint64       used)
{
  guint n = 0;

  for (guint i = 0; i < name->n; i++)
    n += name->words[i].is_head && (used >> i & 1) != 0 ? 1 : 0;
  return n;
}

const TrWordEntry *
tr_name_match (const TrName *name,
               guint64      *used,
               int          *last)
{
  const TrWordEntry *best = NULL;

  for (guint i = tr_word_starts[TR_WORD_INGREDIENT]; i < tr_word_starts[TR_WORD_INGREDIENT + 1]; i++)
    {
      const TrWordEntry *entry = &tr_word_entries[i];
      guint64 its_used;
      int its_last;

      if ((best != NULL && entry->n_words < best->n_words) || !matches (name, entry, &its_used, &its_last))
        continue;
      if (best != NULL && entry->n_words == best->n_words &&
          (n_in_head (name, its_used) < n_in_head (name, *used) ||
           (n_in_head (name, its_used) == n_in_head (name, *used) && its_last <= *last)))
        continue;
      best = entry;
      *used = its_used;
      *last = its_last;
    }
  return best;
}

gboolean
tr_name_ignores (const char *word)
{
  if (g_ascii_isdigit (*word) || word[1] == '\0')
    return TRUE;
  for (guint i = tr_word_starts[TR_WORD_IGNORE]; i < tr_word_starts[TR_WORD_IGNORE + 1]; i++)
    if (*tr_word_entries[i].phrase == *word && tr_word_is (word, tr_word_entries[i].phrase, strlen (tr_word_entries[i].phrase)))
      return TRUE;
  return FALSE;
}
