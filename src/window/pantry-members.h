/* pantry-members.h: what can be written of an ingredient of the baker's own
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A field's item is the ingredient's index; where many fields stand for one
 * member (a weight for each unit, a tick for each allergen) it holds both
 * (tr_pantry_item).
 */

#pragma once

#include "choice-field.h"
#include "member.h"

G_BEGIN_DECLS

#define TR_PANTRY_SLOTS 64

static inline guint
tr_pantry_item (guint index,
                guint slot)
{
  return index * TR_PANTRY_SLOTS + slot;
}

typedef enum {
  TR_PANTRY_GROUP_NAME, TR_PANTRY_GROUP_PARTS, TR_PANTRY_GROUP_SALT, TR_PANTRY_GROUP_HEAT, TR_PANTRY_GROUP_PRICE,
  TR_PANTRY_GROUP_DENSITY,
  TR_PANTRY_GROUP_HOUSEHOLD,     /* of many slots */
} TrPantryGroup;

const TrMember *tr_pantry_get_members  (TrPantryGroup  group,
                                        guint         *n_members);
/* By TrPart: ticked, it is not known. Of many slots. */
const TrChoice *tr_pantry_get_unknowns (void);
/* Whose allergens count: those of the one it is like, or those that are ticked. */
const TrChoice *tr_pantry_get_allergens_by (void);
/* One for each of the annex and `unknown`; of many slots. (transfer full) */
TrChoice       *tr_pantry_new_allergens (guint        *n_choices);
/* FALSE: there is none at that index. */
gboolean        tr_pantry_resolve      (const TrTrial *trial,
                                        guint          index,
                                        TrIngredient  *ingredient);
/* What the numbers say together, sentences one a line: more than 100 g in
 * 100 g, a window that closes before it opens, what a butter may be called. (transfer full) */
char           *tr_pantry_dup_words    (const TrReader     *reader,
                                        const TrIngredient *ingredient);

G_END_DECLS
