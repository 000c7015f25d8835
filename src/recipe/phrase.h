/* phrase.h: one item of a recipe: how much, and the words of its name
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "measure.h"

G_BEGIN_DECLS

#define TR_NAME_MAX_WORDS 40

/* The words before the first comma, bracket or "for" are the head. */
typedef struct { const char *word; gboolean is_head; } TrNameWord;
typedef struct { TrNameWord words[TR_NAME_MAX_WORDS]; guint n, n_head; guint32 letters; } TrName;

typedef struct {
  const TrTokens *tokens;
  guint at, end;                 /* the item */
  guint name_from, name_to;      /* the head of its name */
  TrMeasure measure;
  gboolean disagrees;
  TrName name;
  const TrWordEntry *place;      /* the stage in a bracket of its own; NULL: none */
  guint either;                  /* the token after "or"; 0: none */
  gboolean is_stopped;           /* after "for", "at": no words of the name up to the next comma */
  guint extra;                   /* where "plus more" begins; `end`: nowhere */
} TrPhrase;

void               tr_name_add              (TrName *name, const char *word, gboolean is_head);
/* The phrase of the table that uses most of the words; `used` one bit a word,
 * `last` the furthest word of the head among them. NULL: none. */
const TrWordEntry *tr_name_match            (const TrName *name, guint64 *used, int *last);
gboolean           tr_name_ignores          (const char *word);

void               tr_phrase_read           (TrPhrase *phrase, const TrTokens *tokens, guint at, guint end);
/* "butter or margarine": what the other would be. Completes a first name whose
 * noun comes only with the other ("plain or bread flour"). */
const TrWordEntry *tr_phrase_match_either   (TrPhrase *phrase);
gboolean           tr_phrase_is_word        (const TrPhrase *phrase, guint at, const char *word);
gboolean           tr_phrase_is_joint       (const TrTokens *tokens, guint at, guint end);
gboolean           tr_phrase_has_ingredient (const TrTokens *tokens, guint at, guint end);

G_END_DECLS
