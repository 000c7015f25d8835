/* count.h: a number of a recipe, in figures or in words
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "words.h"

G_BEGIN_DECLS

typedef struct {
  double value;                  /* the mean of a range; NaN: cannot be read */
  char text[48];                 /* in the document's syntax */
  gboolean is_range, is_bad;
  gboolean is_article;           /* "a", which counts only before a unit */
  double readings[2];            /* of an ambiguous number */
} TrCount;

gboolean tr_count_read  (const TrTokens *tokens, guint at, guint end, guint *next, TrCount *count);
void     tr_count_print (double value, char *text, gsize size);

G_END_DECLS
