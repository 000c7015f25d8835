/* read-value.c: one value out of the tree of a document, or why not
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "read-value.h"

#include <string.h>

#include "document.h"
#include "strict.h"

#define MAX_FOUND_BYTES 60

/* Refusals */

static char *
dup_found (JsonNode *node)
{
  g_autoptr (GString) found = g_string_new (NULL);

  if (node == NULL)
    return g_strdup ("nothing");

  tr_strict_append_node (found, node);
  if (found->len > MAX_FOUND_BYTES)
    {
      const char *cut = g_utf8_find_prev_char (found->str, found->str + MAX_FOUND_BYTES);

      g_string_truncate (found, (gsize) (cut - found->str));
      g_string_append (found, "…");
    }

  return g_string_free (g_steal_pointer (&found), FALSE);
}

gboolean
tr_read_refuse (TrReading  *reading,
                int         code,
                const char *expected,
                JsonNode   *node)
{
  g_autofree char *found = dup_found (node);

  return tr_pointer_refuse (reading->pointer, code, expected, found, reading->error);
}

gboolean
tr_read_refuse_member (TrReading      *reading,
                       const TrMember *member,
                       JsonNode       *node)
{
  g_autofree char *expected = tr_member_dup_expected (member);

  return tr_read_refuse (reading, TR_TRIAL_ERROR_VALUE, expected, node);
}

/* Values */

gboolean
tr_read_get_number (JsonNode *node,
                    double   *value)
{
  GType type = JSON_NODE_HOLDS_VALUE (node) ? json_node_get_value_type (node) : G_TYPE_INVALID;

  if (type != G_TYPE_INT64 && type != G_TYPE_DOUBLE)
    return FALSE;
  *value = type == G_TYPE_INT64 ? (double) json_node_get_int (node) : json_node_get_double (node);

  return TRUE;
}

static gboolean
get_whole (JsonNode       *node,
           const TrMember *member,
           int            *value)
{
  double number;

  if (!tr_read_get_number (node, &number) || !tr_member_accepts (member, number))
    return FALSE;
  *value = (int) number;

  return !(*value < number) && !(*value > number);
}

const char *
tr_read_get_text (JsonNode *node)
{
  return JSON_NODE_HOLDS_VALUE (node) ? json_node_get_string (node) : NULL;
}

gboolean
tr_read_number (TrReading      *reading,
                const TrMember *member,
                JsonNode       *node,
                double         *where)
{
  double value;

  if (!tr_read_get_number (node, &value) || !tr_member_accepts (member, value))
    return tr_read_refuse_member (reading, member, node);
  *where = value;

  return TRUE;
}

gboolean
tr_read_whole (TrReading      *reading,
               const TrMember *member,
               JsonNode       *node,
               int            *where)
{
  int whole;

  if (!get_whole (node, member, &whole))
    return tr_read_refuse_member (reading, member, node);
  *where = whole;

  return TRUE;
}

gboolean
tr_read_pair (TrReading      *reading,
              const TrMember *member,
              JsonNode       *node,
              double         *where)
{
  JsonArray *array = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  if (array == NULL || json_array_get_length (array) != 2)
    return tr_read_refuse_member (reading, member, node);
  for (guint i = 0; i < 2; i++)
    {
      JsonNode *element = json_array_get_element (array, i);

      if (!tr_read_get_number (element, &where[i]) || !tr_member_accepts (member, where[i]))
        return tr_read_refuse_member (reading, member, node);
    }

  return TRUE;
}

gboolean
tr_read_text (TrReading       *reading,
              const TrMember  *member,
              JsonNode        *node,
              char           **where)
{
  const char *text = tr_read_get_text (node);

  if (text == NULL
      || (member->max > 0 && (double) strlen (text) > member->max)
      || ((member->flags & TR_MEMBER_FILLED) && *text == '\0'))
    return tr_read_refuse_member (reading, member, node);
  tr_set_text (where, text);

  return TRUE;
}

/* NULL when it is not a list of texts. */
static char **
dup_texts (JsonNode *node)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  JsonArray *array = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  if (array == NULL)
    return NULL;
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      const char *text = tr_read_get_text (json_array_get_element (array, i));

      if (text == NULL)
        return NULL;
      g_strv_builder_add (builder, text);
    }

  return g_strv_builder_end (builder);
}

gboolean
tr_read_texts (TrReading        *reading,
               const TrMember   *member,
               JsonNode         *node,
               char           ***where)
{
  char **texts = dup_texts (node);

  if (texts == NULL)
    return tr_read_refuse_member (reading, member, node);
  g_strfreev (*where);
  *where = texts;

  return TRUE;
}

gboolean
tr_read_word (TrReading      *reading,
              const TrMember *member,
              JsonNode       *node,
              int            *where)
{
  const char *word = tr_read_get_text (node);
  int value = word != NULL ? member->words->from_id (word) : -1;

  if (value < 0)
    return tr_read_refuse_member (reading, member, node);
  *where = value;

  return TRUE;
}

gboolean
tr_read_flag (TrReading      *reading,
              const TrMember *member,
              JsonNode       *node,
              int            *where)
{
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_BOOLEAN)
    return tr_read_refuse_member (reading, member, node);
  *where = json_node_get_boolean (node) ? 1 : 0;

  return TRUE;
}

gboolean
tr_read_part (TrReading       *reading,
              const TrMember  *member,
              JsonNode        *node,
              TrOwnIngredient *own)
{
  double *where = TR_AT (own, member, double);

  if (JSON_NODE_HOLDS_NULL (node))
    {
      own->unknown[where - own->per_100g] = TRUE;
      return TRUE;
    }

  return tr_read_number (reading, member, node, where);
}

gboolean
tr_read_opaque (TrReading       *reading,
                const TrMember  *member,
                JsonNode        *node,
                char           **where)
{
  JsonArray *array = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  if (array == NULL)
    return tr_read_refuse_member (reading, member, node);
  for (guint i = 0; (member->flags & TR_MEMBER_OF_OBJECTS) && i < json_array_get_length (array); i++)
    {
      JsonNode *element = json_array_get_element (array, i);

      if (!JSON_NODE_HOLDS_OBJECT (element))
        {
          tr_pointer_push_index (reading->pointer, i);
          return tr_read_refuse (reading, TR_TRIAL_ERROR_VALUE, "an object", element);
        }
    }

  if (json_array_get_length (array) > 0)
    {
      GString *text = g_string_new (NULL);

      tr_strict_append_node (text, node);
      *where = g_string_free (text, FALSE);
    }

  return TRUE;
}

/* Objects whose member names are not ours: units, doughs, tasters */

typedef gboolean (*ReadEntry) (TrReading      *reading,
                               const TrMember *member,
                               const char     *name,
                               JsonNode       *node,
                               gpointer        where);

static gboolean
read_entries (TrReading      *reading,
              const TrMember *member,
              JsonNode       *node,
              ReadEntry       read_entry,
              gpointer        where)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *value;

  if (!JSON_NODE_HOLDS_OBJECT (node))
    return tr_read_refuse_member (reading, member, node);

  json_object_iter_init_ordered (&iter, json_node_get_object (node));
  while (json_object_iter_next_ordered (&iter, &name, &value))
    {
      gsize length = tr_pointer_push (reading->pointer, name);

      if (!read_entry (reading, member, name, value, where))
        return FALSE;
      g_string_truncate (reading->pointer, length);
    }

  return TRUE;
}

static gboolean
read_household_entry (TrReading      *reading,
                      const TrMember *member,
                      const char     *name,
                      JsonNode       *node,
                      gpointer        where)
{
  TrHousehold weight = { NULL, NAN };

  if (!tr_read_get_number (node, &weight.grams) || !tr_member_accepts (member, weight.grams))
    {
      const TrMember number = { .type = TR_MEMBER_NUMBER, .min = member->min, .max = member->max };

      return tr_read_refuse_member (reading, &number, node);
    }
  weight.unit = g_strdup (name);
  tr_own_ingredient_add_household (where, weight);

  return TRUE;
}

gboolean
tr_read_household (TrReading       *reading,
                   const TrMember  *member,
                   JsonNode        *node,
                   TrOwnIngredient *own)
{
  /* An object without members is not the same as none: make the list first. */
  tr_own_ingredient_add_household (own, (TrHousehold) { NULL, NAN });
  g_array_set_size (own->household, 0);

  return read_entries (reading, member, node, read_household_entry, own);
}

static gboolean
read_code_entry (TrReading      *reading,
                 const TrMember *member,
                 const char     *name,
                 JsonNode       *node,
                 gpointer        where)
{
  int code;

  if (!get_whole (node, member, &code))
    {
      const TrMember whole = { .type = TR_MEMBER_WHOLE, .min = member->min, .max = member->max };

      return tr_read_refuse_member (reading, &whole, node);
    }
  g_ptr_array_add (where, tr_code_new (name, code));

  return TRUE;
}

static gboolean
read_order_entry (TrReading      *reading,
                  const TrMember *member,
                  const char     *name,
                  JsonNode       *node,
                  gpointer        where)
{
  g_auto (GStrv) doughs = dup_texts (node);

  if (doughs == NULL)
    return tr_read_refuse (reading, TR_TRIAL_ERROR_VALUE, "a list of texts", node);
  g_ptr_array_add (where, tr_order_new (name, doughs));

  return TRUE;
}

gboolean
tr_read_codes (TrReading      *reading,
               const TrMember *member,
               JsonNode       *node,
               GPtrArray      *codes)
{
  return read_entries (reading, member, node, read_code_entry, codes);
}

gboolean
tr_read_orders (TrReading      *reading,
                const TrMember *member,
                JsonNode       *node,
                GPtrArray      *orders)
{
  return read_entries (reading, member, node, read_order_entry, orders);
}
