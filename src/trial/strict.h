/* strict.h: bytes that are one strict JSON value, or why not
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

#define TR_STRICT_MAX_BYTES (4 * 1024 * 1024)
#define TR_STRICT_MAX_DEPTH 64

/* The tree of `bytes`, which need not end in NUL. NULL with a sentence that
 * says line:column (from 1, in characters), what was expected and what was
 * found: RFC 8259 and no more, UTF-8 without a byte order mark, no NUL, no lone
 * surrogates, no name twice in an object, no number beyond a double. */
JsonNode *tr_strict_parse (const char  *bytes,
                           gsize        length,
                           GError     **error);

/* Compact text of a tree: no spaces, members in their order, numbers and
 * strings spelled as tr_json_append_* spell them. */
void      tr_strict_append_node (GString  *out,
                                 JsonNode *node);

G_END_DECLS
