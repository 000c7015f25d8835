/* tokens.h: one line of a recipe as numbers, words and signs
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "../calc/amount.h"

G_BEGIN_DECLS

#define TR_TOKEN_WORD_BYTES 24

typedef enum { TR_TOKEN_NUMBER, TR_TOKEN_WORD, TR_TOKEN_SIGN } TrTokenType;

typedef struct {
  TrTokenType type;
  gsize start, end;              /* in the normalised text */
  char word[TR_TOKEN_WORD_BYTES];/* small letters without accents; "" for what is no word or is too long */
  char sign;
  double value;                  /* NaN: a number that cannot be read */
  double readings[2];            /* of an ambiguous one, else NaN */
} TrToken;

/* `text` is the line with plain signs: one kind of space, hyphen, quote;
 * fractions spelled 1/2; accents gone; tabs and bars are '|'. */
typedef struct { char *text; GArray *tokens; } TrTokens;

TrTokens *tr_tokens_new  (const char *line);
void      tr_tokens_free (TrTokens *tokens);

static inline const TrToken *
tr_tokens_get (const TrTokens *tokens,
               guint           index)
{
  return &g_array_index (tokens->tokens, TrToken, index);
}

static inline gboolean
tr_tokens_is_sign (const TrTokens *tokens,
                   guint           index,
                   char            sign)
{
  return index < tokens->tokens->len && tr_tokens_get (tokens, index)->type == TR_TOKEN_SIGN &&
         tr_tokens_get (tokens, index)->sign == sign;
}

/* The text from one token up to another, blanks at its ends removed. */
char     *tr_tokens_dup_text (const TrTokens *tokens, guint from, guint to);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrTokens, tr_tokens_free)

G_END_DECLS
