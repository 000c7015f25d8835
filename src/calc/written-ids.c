/* written-ids.c: what each choice is called in a document
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The words are those of the document and of the report, never of the screen.
 * The order of each table is that of its enumeration.
 */

#include "written.h"

static const char *const kind_ids[] = { "croissant", "danish", "puff", "other" };
static const char *const stage_ids[] = { "preferment", "dough", "roll-in", "finish" };
static const char *const batch_ids[] = { "written", "pieces", "flour_g", "dough_g", "total_g" };
static const char *const style_ids[] = { "half", "gate", "envelope", "letter", "inverse" };
static const char *const place_ids[] = { "fridge", "freezer", "room" };
static const char *const on_ids[] = { "board", "rack" };
static const char *const shape_ids[] = { "triangle", "right-triangle", "rectangle", "square", "round", "slices" };
static const char *const part_ids[] = { "water", "fat", "protein", "carbohydrate", "fibre", "sugars", "ash", "sodium_mg" };
static const char *const step_ids[] = {
  "preferment-mix", "ripen", "mix", "bulk", "chill", "fat-block", "lock-in", "turn",
  "rest", "roll-out", "cut", "shape", "proof", "finish", "bake", "cool"
};

static int
find_id (const char *const *ids,
         guint              n_ids,
         const char        *id)
{
  for (guint i = 0; i < n_ids; i++)
    if (g_strcmp0 (ids[i], id) == 0)
      return (int) i;

  return -1;
}

#define DEFINE_ID(name, Type, ids)                      \
  G_STATIC_ASSERT (G_N_ELEMENTS (ids) > 0);             \
  const char *                                          \
  tr_##name##_id (Type value)                           \
  {                                                     \
    g_return_val_if_fail ((guint) value < G_N_ELEMENTS (ids), NULL); \
    return ids[value];                                  \
  }

#define DEFINE_FROM_ID(name, ids)                       \
  int                                                   \
  tr_##name##_from_id (const char *id)                  \
  {                                                     \
    return find_id (ids, G_N_ELEMENTS (ids), id);       \
  }

DEFINE_ID (kind, TrKind, kind_ids)
DEFINE_ID (stage, TrStage, stage_ids)
DEFINE_ID (batch, TrBatchBy, batch_ids)
DEFINE_ID (style, TrStyle, style_ids)
DEFINE_ID (place, TrPlace, place_ids)
DEFINE_ID (on, TrOn, on_ids)
DEFINE_ID (shape, TrShape, shape_ids)
DEFINE_ID (step, TrStepId, step_ids)
DEFINE_ID (part, TrPart, part_ids)
DEFINE_FROM_ID (kind, kind_ids)
DEFINE_FROM_ID (stage, stage_ids)
DEFINE_FROM_ID (batch, batch_ids)
DEFINE_FROM_ID (style, style_ids)
DEFINE_FROM_ID (place, place_ids)
DEFINE_FROM_ID (on, on_ids)
DEFINE_FROM_ID (shape, shape_ids)
DEFINE_FROM_ID (step, step_ids)
