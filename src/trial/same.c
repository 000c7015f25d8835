/* same.c: whether two trials say the same
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * They do if their texts are equal. Trials share what an edit did not touch,
 * so only the rest is written out and compared.
 */

#include "members.h"

#include <string.h>

/* Room for the structs of a part beside its text. */
#define BYTES_A_PART 256

static gboolean
is_same_object (const TrObject *type,
                gconstpointer   a,
                gconstpointer   b,
                gsize          *bytes)
{
  g_autoptr (GString) a_text = g_string_new (NULL);
  g_autoptr (GString) b_text = g_string_new (NULL);

  if (a == b)
    return TRUE;
  if (a != NULL)
    tr_object_append_text (type, a, a_text);
  if (b != NULL)
    tr_object_append_text (type, b, b_text);
  *bytes += a_text->len + BYTES_A_PART;

  return g_string_equal (a_text, b_text);
}

static gboolean
is_same_list (const TrObject *type,
              GPtrArray      *a,
              GPtrArray      *b,
              gsize          *bytes)
{
  gboolean is_same = a->len == b->len;

  for (guint i = 0; i < a->len; i++)
    if (!is_same_object (type, g_ptr_array_index (a, i), i < b->len ? g_ptr_array_index (b, i) : NULL, bytes))
      is_same = FALSE;

  return is_same;
}

gboolean
tr_trial_is_same (const TrTrial *a,
                  const TrTrial *b,
                  gsize         *bytes)
{
  gboolean is_same = g_strcmp0 (a->title, b->title) == 0 && g_strcmp0 (a->extra, b->extra) == 0;

  *bytes = sizeof *a + (a->title != NULL ? strlen (a->title) : 0);
  is_same &= is_same_object (&tr_bench_object, a->bench, b->bench, bytes);
  is_same &= a->pantry == b->pantry
             || is_same_list (&tr_own_ingredient_object, a->pantry->own, b->pantry->own, bytes);
  is_same &= is_same_list (&tr_dough_object, a->doughs, b->doughs, bytes);
  is_same &= is_same_object (&tr_prediction_object, a->prediction, b->prediction, bytes);
  is_same &= is_same_object (&tr_plan_object, a->plan, b->plan, bytes);
  is_same &= is_same_object (&tr_tasting_object, a->tasting, b->tasting, bytes);

  return is_same;
}
