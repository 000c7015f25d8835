/* references.c: ids that are there once, and what refers to them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Called once every member of the trial is known to be in its range.
 */

#include <string.h>

#include "../calc/ingredient.h"
#include "document.h"
#include "members.h"

#define ID_TAKEN "an id that nothing else here has"
#define DOUGH_ID "the id of a dough of this trial"
#define TASTER_ID "the id of a taster of this trial"
#define INGREDIENT_ID "the id of an ingredient, built-in or of this trial"

typedef struct {
  const TrTrial *trial;
  GHashTable *doughs, *own, *tasters;   /* ids */
  GError **error;
} Ids;

static gboolean
refuse_at (Ids        *ids,
           const char *expected,
           const char *found,
           const char *format,
           ...) G_GNUC_PRINTF (4, 5);

static gboolean
refuse_at (Ids        *ids,
           const char *expected,
           const char *found,
           const char *format,
           ...)
{
  g_autoptr (GString) pointer = g_string_new (NULL);
  g_autoptr (GString) text = g_string_new (NULL);
  va_list args;

  va_start (args, format);
  g_string_vprintf (pointer, format, args);
  va_end (args);
  tr_json_append_string (text, found);

  return tr_pointer_refuse (pointer, TR_TRIAL_ERROR_VALUE, expected, text->str, ids->error);
}

static gboolean
is_in (GHashTable *ids,
       const char *id)
{
  return id != NULL && g_hash_table_contains (ids, id);
}

static gboolean
check_ingredients (Ids *ids)
{
  GPtrArray *own = ids->trial->pantry->own;

  for (guint i = 0; i < own->len; i++)
    {
      const TrOwnIngredient *ingredient = g_ptr_array_index (own, i);

      if (!g_hash_table_add (ids->own, ingredient->id))
        return refuse_at (ids, ID_TAKEN, ingredient->id, "/ingredients/%u/id", i);
      if (tr_builtin_find (ingredient->like) == NULL)
        return refuse_at (ids, "the id of a built-in ingredient", ingredient->like, "/ingredients/%u/like", i);
    }

  return TRUE;
}

static gboolean
check_lines (Ids           *ids,
             guint          index,
             const TrDough *dough)
{
  for (guint i = 0; i < dough->lines->len; i++)
    {
      const char *id = tr_dough_get_line (dough, i)->ingredient;

      if (id != NULL && !is_in (ids->own, id) && tr_builtin_find (id) == NULL)
        return refuse_at (ids, INGREDIENT_ID, id, "/doughs/%u/lines/%u/ingredient", index, i);
    }

  return TRUE;
}

static gboolean
check_steps (Ids           *ids,
             guint          index,
             const TrDough *dough)
{
  gboolean seen[TR_N_STEPS] = { FALSE };

  for (guint i = 0; i < dough->method->steps->len; i++)
    {
      const TrStep *step = g_ptr_array_index (dough->method->steps, i);

      if (seen[step->id])
        return refuse_at (ids, "a step that is not there yet", tr_step_id (step->id),
                          "/doughs/%u/method/steps/%u/id", index, i);
      seen[step->id] = TRUE;
    }

  return TRUE;
}

static gboolean
check_doughs (Ids *ids)
{
  GPtrArray *doughs = ids->trial->doughs;

  for (guint i = 0; i < doughs->len; i++)
    {
      const TrDough *dough = g_ptr_array_index (doughs, i);

      if (!g_hash_table_add (ids->doughs, dough->id))
        return refuse_at (ids, ID_TAKEN, dough->id, "/doughs/%u/id", i);
      if (!check_lines (ids, i, dough) || !check_steps (ids, i, dough))
        return FALSE;
    }

  for (guint i = 0; i < doughs->len; i++)
    {
      const TrDough *dough = g_ptr_array_index (doughs, i);

      if (dough->from != NULL && !is_in (ids->doughs, dough->from))
        return refuse_at (ids, DOUGH_ID, dough->from, "/doughs/%u/from", i);
    }

  return TRUE;
}

/* Doughs in an order of serving or of merit: each is there, and once. */
static gboolean
check_order (Ids         *ids,
             char *const *order,
             const char  *where)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; order[i] != NULL; i++)
    {
      if (!is_in (ids->doughs, order[i]))
        return refuse_at (ids, DOUGH_ID, order[i], "%s/%u", where, i);
      if (!g_hash_table_add (seen, order[i]))
        return refuse_at (ids, "each dough once", order[i], "%s/%u", where, i);
    }

  return TRUE;
}

static gboolean
check_tasters (Ids             *ids,
               const TrTasting *tasting)
{
  for (guint i = 0; i < tasting->tasters->len; i++)
    {
      const TrTaster *taster = g_ptr_array_index (tasting->tasters, i);

      if (!g_hash_table_add (ids->tasters, taster->id))
        return refuse_at (ids, ID_TAKEN, taster->id, "/tasting/tasters/%u/id", i);
    }

  return TRUE;
}

/* The pointer to the member `name` of an object whose names are ids. */
static char *
dup_member_pointer (const char *object,
                    const char *name)
{
  GString *pointer = g_string_new (object);

  tr_pointer_push (pointer, name);

  return g_string_free (pointer, FALSE);
}

static gboolean
check_codes (Ids             *ids,
             const TrTasting *tasting)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);

  for (guint i = 0; i < tasting->codes->len; i++)
    {
      const TrCode *code = g_ptr_array_index (tasting->codes, i);
      g_autofree char *where = dup_member_pointer ("/tasting/codes", code->dough);
      g_autofree char *digits = g_strdup_printf ("%d", code->code);

      if (!is_in (ids->doughs, code->dough))
        return refuse_at (ids, DOUGH_ID, code->dough, "%s", where);
      if (!g_hash_table_add (seen, GINT_TO_POINTER (code->code)))
        return refuse_at (ids, "a code that no other dough has", digits, "%s", where);
    }

  return TRUE;
}

static gboolean
check_orders (Ids             *ids,
              const TrTasting *tasting)
{
  for (guint i = 0; i < tasting->orders->len; i++)
    {
      const TrOrder *order = g_ptr_array_index (tasting->orders, i);
      g_autofree char *where = dup_member_pointer ("/tasting/orders", order->taster);

      if (!is_in (ids->tasters, order->taster))
        return refuse_at (ids, TASTER_ID, order->taster, "%s", where);
      if (!check_order (ids, order->doughs, where))
        return FALSE;
    }

  return TRUE;
}

static gboolean
check_scores (Ids             *ids,
              const TrTasting *tasting)
{
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < tasting->scores->len; i++)
    {
      const TrScore *score = g_ptr_array_index (tasting->scores, i);

      if (!is_in (ids->tasters, score->taster))
        return refuse_at (ids, TASTER_ID, score->taster, "/tasting/scores/%u/taster", i);
      if (!is_in (ids->doughs, score->dough))
        return refuse_at (ids, DOUGH_ID, score->dough, "/tasting/scores/%u/dough", i);
      if (!g_hash_table_add (seen, g_strdup_printf ("%" G_GSIZE_FORMAT " %s %s", strlen (score->taster),
                                                    score->taster, score->dough)))
        return refuse_at (ids, "one score a taster and dough", score->dough, "/tasting/scores/%u/dough", i);
    }

  return TRUE;
}

static gboolean
check_ids (Ids *ids)
{
  const TrTrial *trial = ids->trial;

  if (!check_ingredients (ids) || !check_doughs (ids))
    return FALSE;
  if (trial->prediction != NULL && !check_order (ids, trial->prediction->order, "/prediction/order"))
    return FALSE;

  return trial->tasting == NULL
         || (check_tasters (ids, trial->tasting)
             && check_codes (ids, trial->tasting)
             && check_orders (ids, trial->tasting)
             && check_scores (ids, trial->tasting));
}

gboolean
tr_trial_check_references (const TrTrial  *trial,
                           GError        **error)
{
  g_autoptr (GHashTable) doughs = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GHashTable) own = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GHashTable) tasters = g_hash_table_new (g_str_hash, g_str_equal);
  Ids ids = { trial, doughs, own, tasters, error };

  return check_ids (&ids);
}
