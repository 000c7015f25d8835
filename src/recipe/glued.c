/* glued.c: a unit that stands against the word after it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "500gflour": a blank lost in copying. The unit is cut off only where what is
 * left is a word of the table, so that "4 grains" and "2 large" stay whole.
 */

#include "words.h"

#include <string.h>

static gboolean
phrase_has_word (const char *phrase,
                 const char *word)
{
  for (;;)
    {
      gsize length = strcspn (phrase, " ");

      if (tr_word_is (word, phrase, length))
        return TRUE;
      if (phrase[length] == '\0')
        return FALSE;
      phrase += length + 1;
    }
}

static gboolean
kind_has_word (TrWordKind  kind,
               const char *word)
{
  for (guint i = tr_word_starts[kind]; i < tr_word_starts[kind + 1]; i++)
    if (phrase_has_word (tr_word_entries[i].phrase, word))
      return TRUE;
  return FALSE;
}

gsize
tr_words_find_glued_unit (const char *word)
{
  static const char *const units[] = { "grams", "tbsp", "cups", "tsp", "cup", "kg", "ml", "oz", "lb", "cl", "g", "l" };

  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    {
      gsize n = strlen (units[i]);

      if (strncmp (word, units[i], n) == 0 && strlen (word) >= n + 3 && !kind_has_word (TR_WORD_UNIT, word) &&
          (kind_has_word (TR_WORD_INGREDIENT, word + n) || kind_has_word (TR_WORD_IGNORE, word + n)) &&
          !kind_has_word (TR_WORD_INGREDIENT, word) && !kind_has_word (TR_WORD_SIZE, word) && !kind_has_word (TR_WORD_IGNORE, word))
        return n;
    }
  return 0;
}
