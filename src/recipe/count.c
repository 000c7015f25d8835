/* count.c: a number of a recipe, in figures or in words
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   count = number [ ( "-" | "to" | "or" ) number ] | number words
 */

#include "count.h"

#include <math.h>
#include <string.h>

#include "../trial/document.h"

void
tr_count_print (double value,
                char  *text,
                gsize  size)
{
  GString *out = g_string_new (NULL);

  tr_json_append_number (out, value < 1e9 ? round (value * 1e6) / 1e6 : value);
  g_strlcpy (text, out->str, size);
  g_string_free (out, TRUE);
}

static double
word_number (const TrWordEntry *entry)
{
  return strcmp (entry->value, "1/3") == 0 ? 1.0 / 3 : g_ascii_strtod (entry->value, NULL);
}

static guint
skip_words (const TrTokens *tokens,
            guint           at,
            guint           end,
            const char     *word)
{
  while (at < end && strcmp (tr_tokens_get (tokens, at)->word, word) == 0)
    at++;
  return at;
}

/* "half a", "three quarters of a", "two dozen", "a dozen": what multiplies. */
static guint
read_multipliers (const TrTokens *tokens,
                  guint           at,
                  guint           end,
                  double         *value)
{
  for (;;)
    {
      guint ahead = skip_words (tokens, skip_words (tokens, at, end, "of"), end, "a");
      guint next = ahead;
      const TrWordEntry *entry = tr_words_match (TR_WORD_NUMBER, tokens, ahead, end, &next);

      if (tr_tokens_is_sign (tokens, ahead, '-') && entry == NULL)
        entry = tr_words_match (TR_WORD_NUMBER, tokens, ahead + 1, end, &next);
      if (entry == NULL || (word_number (entry) >= 1 && fabs (word_number (entry) - 12) > 0.1 && word_number (entry) < 99.5))
        return at;
      *value *= word_number (entry);
      at = next;
    }
}

/* "2 and a half" */
static guint
read_half (const TrTokens *tokens,
           guint           at,
           guint           end,
           double         *value)
{
  guint ahead = skip_words (tokens, at, end, "and"), next;
  double fraction = 1;

  if (ahead == at || (next = read_multipliers (tokens, ahead, end, &fraction)) == ahead || !(fraction < 1))
    return at;
  *value += fraction;
  return next;
}

/* "two hundred and fifty", "twenty-five" */
static guint
read_rest (const TrTokens *tokens,
           guint           at,
           guint           end,
           double         *value)
{
  guint ahead = skip_words (tokens, at, end, "and"), next = read_half (tokens, at, end, value);
  gboolean is_hundreds = *value >= 100 && fmod (*value, 100) < 0.5, is_tens = fmod (*value, 100) > 19.5 && fmod (*value, 10) < 0.5;
  const TrWordEntry *entry;

  if (next > at || (!is_hundreds && !is_tens))
    return next;
  if (is_tens && tr_tokens_is_sign (tokens, ahead, '-'))
    ahead++;
  entry = tr_words_match (TR_WORD_NUMBER, tokens, ahead, end, &next);
  if (entry == NULL || g_str_has_prefix (entry->phrase, "a") || word_number (entry) < 1 ||
      word_number (entry) >= (is_hundreds ? 99.5 : 9.5))
    return at;
  *value += word_number (entry);
  return is_hundreds ? read_rest (tokens, next, end, value) : next;
}

static gboolean
read_number_words (const TrTokens *tokens,
                   guint           at,
                   guint           end,
                   guint          *next,
                   TrCount        *quantity)
{
  const TrWordEntry *entry = tr_words_match (TR_WORD_NUMBER, tokens, at, end, next);
  guint ahead;

  if (entry == NULL)
    return FALSE;
  quantity->value = word_number (entry);
  quantity->is_article = g_str_has_prefix (entry->phrase, "a");
  ahead = *next;
  *next = read_multipliers (tokens, *next, end, &quantity->value);
  quantity->is_article &= ahead == *next;
  *next = read_rest (tokens, *next, end, &quantity->value);
  tr_count_print (quantity->value, quantity->text, sizeof quantity->text);
  *next = skip_words (tokens, *next, end, "of");
  if (!quantity->is_article)
    *next = skip_words (tokens, *next, end, "a");
  return TRUE;
}

static gboolean
read_number_token (const TrTokens *tokens,
                   guint           at,
                   guint           end,
                   guint          *next,
                   TrCount        *quantity)
{
  const TrToken *token = tr_tokens_get (tokens, at);
  gsize length = token->end - token->start;

  if (token->type != TR_TOKEN_NUMBER)
    return FALSE;
  quantity->value = token->value;
  quantity->is_bad = isnan (token->value);
  quantity->readings[0] = token->readings[0];
  quantity->readings[1] = token->readings[1];
  g_strlcpy (quantity->text, tokens->text + token->start, MIN (length + 1, sizeof quantity->text));
  *next = read_multipliers (tokens, at + 1, end, &quantity->value);
  *next = read_half (tokens, *next, end, &quantity->value);
  if (*next > at + 1)
    tr_count_print (quantity->value, quantity->text, sizeof quantity->text);
  return TRUE;
}

/* "350-375", "2 to 3", "2 or 3": kept as a range. */
static void
read_range_end (const TrTokens *tokens,
                guint           end,
                guint          *next,
                TrCount        *quantity)
{
  TrCount last = { 0 };
  guint at = *next;
  guint after;
  const char *word;

  if (at >= end)
    return;
  word = tr_tokens_get (tokens, at)->word;
  if (!tr_tokens_is_sign (tokens, at, '-') && strcmp (word, "to") != 0 && strcmp (word, "or") != 0)
    return;
  if (at + 1 >= end || (!read_number_token (tokens, at + 1, end, &after, &last) &&
                        (*word == 'o' || !read_number_words (tokens, at + 1, end, &after, &last))))
    return;
  if (last.is_article || last.is_bad || quantity->is_bad || (*word == 'o' && last.value > 3 * quantity->value) ||
      strlen (quantity->text) + strlen (last.text) + 2 > sizeof quantity->text)
    return;
  /* "1 1/4-ounce" and "14 - 1 oz" are none */
  if (last.value < quantity->value)
    return;
  strcat (quantity->text, "-");
  strcat (quantity->text, last.text);
  quantity->value = (quantity->value + last.value) / 2;
  quantity->is_range = TRUE;
  *next = after;
}

gboolean
tr_count_read (const TrTokens *tokens,
               guint           at,
               guint           end,
               guint          *next,
               TrCount        *quantity)
{
  *quantity = (TrCount) { .readings = { NAN, NAN } };
  if (at >= end || (!read_number_token (tokens, at, end, next, quantity) &&
                    !read_number_words (tokens, at, end, next, quantity)))
    return FALSE;
  if (!quantity->is_article)
    read_range_end (tokens, end, next, quantity);
  return TRUE;
}
