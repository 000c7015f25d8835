/* item.h: one line of a recipe as ingredients
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "recipe.h"
#include "words.h"

G_BEGIN_DECLS

typedef struct { const char *text; guint number; TrStage stage; const char *group; } TrItemPlace;

/* Whether an amount and an ingredient begin there, in either order. */
gboolean      tr_item_starts   (const TrTokens *tokens, guint at, guint end);
/* Whether every word of the name is known. */
gboolean      tr_item_is_plain (const TrTokens *tokens, guint at, guint end);
/* Whether there is an amount and no name beside it. */
gboolean      tr_item_is_bare_amount (const TrTokens *tokens, guint at, guint end);
/* Appends what the tokens say, one line or several. */
void          tr_item_read     (const TrTokens *tokens, guint at, guint end, const TrItemPlace *place, GPtrArray *lines);

TrRecipeFlag *tr_recipe_line_flag (TrRecipeLine *line, TrRecipeFlagId id, const char *format, ...) G_GNUC_PRINTF (3, 4);
void          tr_recipe_flag_offer (TrRecipeFlag *flag, TrRecipeChoiceKind kind, const char *value);
/* Grams of a line, NaN: not known. */
double        tr_recipe_line_weigh (const TrRecipeLine *line);
void          tr_recipe_line_free  (TrRecipeLine *line);
void          tr_recipe_line_fail  (TrRecipeLine *line, const char *format, ...) G_GNUC_PRINTF (2, 3);
void          tr_recipe_line_check (TrRecipeLine *line);      /* that it can be weighed */

G_END_DECLS
