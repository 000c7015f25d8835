/* source.h: what of some bytes is a recipe
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "recipe.h"

G_BEGIN_DECLS

/* As a page or JSON-LD states it, in plain text. */
typedef struct {
  TrRecipeSourceKind kind;
  char *title;
  GPtrArray *yields, *ingredients, *steps;    /* char * */
} TrStated;

typedef struct {
  GPtrArray *stated;             /* TrStated */
  char *text;                    /* the readable text, where nothing is stated */
  char *heading;                 /* of the page: its first h1; NULL: none */
  gboolean is_page;
  GPtrArray *remarks;            /* char * */
} TrSource;

TrSource *tr_source_read (const char *bytes, gsize length, GError **error);
void      tr_source_free (TrSource *source);

TrStated *tr_stated_new  (TrRecipeSourceKind kind);
void      tr_stated_free (TrStated *stated);

/* Adds the recipes of one JSON text; `what` names it in remarks. FALSE: it
 * cannot be read, and a remark says why. */
gboolean  tr_json_ld_read (TrSource *source, const char *text, const char *what);

/* Markup: the readable text with one line a block, the scripts that hold
 * JSON-LD, and what itemprop states. */
typedef struct { GString *text; GPtrArray *scripts; TrStated *microdata; gboolean is_recipe; char *heading; gsize heading_at; } TrMarkup;
void      tr_markup_read  (TrMarkup *markup, const char *text);
void      tr_markup_clear (TrMarkup *markup);
/* One string without tags and entities. */
char     *tr_markup_dup_plain (const char *text);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrSource, tr_source_free)

G_END_DECLS
