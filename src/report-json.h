/* report-json.h: JSON that is read by people too
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two spaces a level, one member a line, lists of numbers on one line. A key is
 * NULL inside a list and at the top. NaN is null.
 */

#pragma once

#include "calc/figures.h"

G_BEGIN_DECLS

typedef struct {
  GString *out;
  int depth;
  gboolean has_members;          /* of what is open now */
} TrJson;

void tr_json_open    (TrJson *json, const char *key, char bracket);
void tr_json_close   (TrJson *json, char bracket);
void tr_json_number  (TrJson *json, const char *key, double value);
void tr_json_text    (TrJson *json, const char *key, const char *text);      /* NULL: null */
void tr_json_word    (TrJson *json, const char *key, const char *word);      /* null, true, false */
void tr_json_boolean (TrJson *json, const char *key, gboolean value);
void tr_json_numbers (TrJson *json, const char *key, const double *numbers, guint n);
void tr_json_size    (TrJson *json, const char *key, const TrSize *size);
void tr_json_range   (TrJson *json, const char *key, const TrRange *range);

/* report-tasting.c: the member of that name */
void tr_json_tasting (TrJson *json, const TrFigures *figures);

G_END_DECLS
