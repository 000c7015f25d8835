/* words.h: the words that recipes are written in
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From data/words-en.csv, compiled in. Another language is another table.
 */

#pragma once

#include "tokens.h"

G_BEGIN_DECLS

typedef enum {
  TR_WORD_INGREDIENT,            /* value: id, "": known not to be in the table; choices: other ids; why: a guess */
  TR_WORD_IGNORE,                /* says nothing about what it is */
  TR_WORD_NUMBER,
  TR_WORD_UNIT,                  /* value: one of it as an amount */
  TR_WORD_VAGUE,                 /* choices: amounts it could be */
  TR_WORD_CONTAINER,
  TR_WORD_SIZE,                  /* value: factor, or what an egg of that size weighs */
  TR_WORD_APPROX,
  TR_WORD_NOT_AMOUNT,            /* after a number: a time, a length */
  TR_WORD_JOINT,
  TR_WORD_EXTRA,
  TR_WORD_OR,
  TR_WORD_STOP,                  /* ends a name */
  TR_WORD_PURPOSE,               /* value: a stage, or "aside" */
  TR_WORD_STAGE,                 /* value: a stage */
  TR_WORD_SECTION,               /* value: ingredients, method, other */
  TR_WORD_YIELD,
  TR_WORD_NOT_PIECE,             /* what a yield counts that is no piece */
  TR_WORD_SERVING,
  TR_WORD_TOTAL,
  TR_WORD_HEADING,               /* what begins a line that is no ingredient */
  TR_WORD_COLUMN,                /* heads a column of a table */
  TR_WORD_DOUGH_KIND,
  TR_WORD_LAMINATED,             /* in a title */
  TR_WORD_LAMINATE,              /* in a method: the butter is rolled in */
  TR_WORD_REST_OF,
  TR_WORD_PIECE,                 /* what a yield counts */
  TR_WORD_REGION,                /* written where a cup is likely 250 ml */
  TR_WORD_TABLESPOON_REGION,     /* and a tablespoon 20 ml */
  TR_N_WORD_KINDS
} TrWordKind;

typedef struct { guint n_words; const char *phrase, *value, *choices, *why; } TrWordEntry;

extern const guint tr_word_starts[TR_N_WORD_KINDS + 1];
extern const TrWordEntry tr_word_entries[];

/* The longest phrase of a kind that stands at token `at`; `next` is the token
 * after it. NULL: none. */
const TrWordEntry *tr_words_match (TrWordKind kind, const TrTokens *tokens, guint at, guint end, guint *next);
gboolean           tr_words_has   (TrWordKind kind, const TrTokens *tokens, guint at, guint end);
/* Whether a phrase of the kind stands anywhere; `where` (or NULL) the token. */
const TrWordEntry *tr_words_find  (TrWordKind kind, const TrTokens *tokens, guint at, guint end, guint *where);
/* "eggs" is "egg". */
gboolean           tr_word_is     (const char *word, const char *phrase, gsize length);

/* Bytes of the unit that a word right after a number begins with, where the
 * rest is a word of the table ("gflour"); 0: none. */
gsize              tr_words_find_glued_unit (const char *word);

G_END_DECLS
