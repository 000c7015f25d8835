/* read-value.h: one value out of the tree of a document, or why not
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All return FALSE once they have refused: at the pointer of the reading, with
 * what the member takes and what was found.
 */

#pragma once

#include "members.h"

G_BEGIN_DECLS

typedef struct {
  GString *pointer;              /* where the reading is */
  GError **error;
} TrReading;

/* node NULL: nothing was found. */
gboolean    tr_read_refuse        (TrReading *reading, int code, const char *expected, JsonNode *node);
gboolean    tr_read_refuse_member (TrReading *reading, const TrMember *member, JsonNode *node);

/* FALSE, NULL: the node holds something else; nothing is refused yet. */
gboolean    tr_read_get_number    (JsonNode *node, double *value);
const char *tr_read_get_text      (JsonNode *node);

gboolean    tr_read_number        (TrReading *reading, const TrMember *member, JsonNode *node, double *where);
gboolean    tr_read_pair          (TrReading *reading, const TrMember *member, JsonNode *node, double *where);
gboolean    tr_read_whole         (TrReading *reading, const TrMember *member, JsonNode *node, int *where);
gboolean    tr_read_flag          (TrReading *reading, const TrMember *member, JsonNode *node, int *where);
gboolean    tr_read_word          (TrReading *reading, const TrMember *member, JsonNode *node, int *where);
gboolean    tr_read_text          (TrReading *reading, const TrMember *member, JsonNode *node, char **where);
gboolean    tr_read_texts         (TrReading *reading, const TrMember *member, JsonNode *node, char ***where);
gboolean    tr_read_opaque        (TrReading *reading, const TrMember *member, JsonNode *node, char **where);
gboolean    tr_read_part          (TrReading *reading, const TrMember *member, JsonNode *node, TrOwnIngredient *own);
gboolean    tr_read_household     (TrReading *reading, const TrMember *member, JsonNode *node, TrOwnIngredient *own);
gboolean    tr_read_codes         (TrReading *reading, const TrMember *member, JsonNode *node, GPtrArray *codes);
gboolean    tr_read_orders        (TrReading *reading, const TrMember *member, JsonNode *node, GPtrArray *orders);

G_END_DECLS
