/* read.c: a trial out of the text of a document
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Walks the tree along the tables of members.h. A document is taken whole or
 * refused whole. What this version does not know is kept as text. Types,
 * ranges and presence are seen here, where the text that was found is still at
 * hand; what needs the finished trial (ids, references) is left to
 * tr_trial_validate, which sees the ranges again.
 */

#include <string.h>

#include "disk.h"
#include "document.h"
#include "members.h"
#include "strict.h"

#define MAX_FOUND_BYTES 60

typedef struct {
  GString *pointer;
  GError **error;
} Reader;

static gboolean read_object (Reader         *reader,
                             const TrObject *type,
                             JsonObject     *from,
                             gpointer        object);

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

static gboolean
refuse (Reader     *reader,
        int         code,
        const char *expected,
        JsonNode   *node)
{
  g_autofree char *found = dup_found (node);

  return tr_pointer_refuse (reader->pointer, code, expected, found, reader->error);
}

static gboolean
refuse_member (Reader         *reader,
               const TrMember *member,
               JsonNode       *node)
{
  g_autofree char *expected = tr_member_dup_expected (member);

  return refuse (reader, TR_TRIAL_ERROR_VALUE, expected, node);
}

/* Values */

static gboolean
get_number (JsonNode *node,
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

  if (!get_number (node, &number) || !tr_member_accepts (member, number))
    return FALSE;
  *value = (int) number;

  return !(*value < number) && !(*value > number);
}

static const char *
get_text (JsonNode *node)
{
  return JSON_NODE_HOLDS_VALUE (node) ? json_node_get_string (node) : NULL;
}

static gboolean
read_number (Reader         *reader,
             const TrMember *member,
             JsonNode       *node,
             double         *where)
{
  double value;

  if (!get_number (node, &value) || !tr_member_accepts (member, value))
    return refuse_member (reader, member, node);
  *where = value;

  return TRUE;
}

static gboolean
read_pair (Reader         *reader,
           const TrMember *member,
           JsonNode       *node,
           double         *where)
{
  JsonArray *array = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  if (array == NULL || json_array_get_length (array) != 2)
    return refuse_member (reader, member, node);
  for (guint i = 0; i < 2; i++)
    {
      JsonNode *element = json_array_get_element (array, i);

      if (!get_number (element, &where[i]) || !tr_member_accepts (member, where[i]))
        return refuse_member (reader, member, node);
    }

  return TRUE;
}

static gboolean
read_text (Reader          *reader,
           const TrMember  *member,
           JsonNode        *node,
           char           **where)
{
  const char *text = get_text (node);

  if (text == NULL
      || (member->max > 0 && (double) strlen (text) > member->max)
      || ((member->flags & TR_MEMBER_FILLED) && *text == '\0'))
    return refuse_member (reader, member, node);
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
      const char *text = get_text (json_array_get_element (array, i));

      if (text == NULL)
        return NULL;
      g_strv_builder_add (builder, text);
    }

  return g_strv_builder_end (builder);
}

static gboolean
read_texts (Reader           *reader,
            const TrMember   *member,
            JsonNode         *node,
            char           ***where)
{
  char **texts = dup_texts (node);

  if (texts == NULL)
    return refuse_member (reader, member, node);
  g_strfreev (*where);
  *where = texts;

  return TRUE;
}

static gboolean
read_word (Reader         *reader,
           const TrMember *member,
           JsonNode       *node,
           int            *where)
{
  const char *word = get_text (node);
  int value = word != NULL ? member->words->from_id (word) : -1;

  if (value < 0)
    return refuse_member (reader, member, node);
  *where = value;

  return TRUE;
}

static gboolean
read_flag (Reader         *reader,
           const TrMember *member,
           JsonNode       *node,
           int            *where)
{
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_BOOLEAN)
    return refuse_member (reader, member, node);
  *where = json_node_get_boolean (node) ? 1 : 0;

  return TRUE;
}

static gboolean
read_part (Reader          *reader,
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

  return read_number (reader, member, node, where);
}

static gboolean
read_opaque (Reader          *reader,
             const TrMember  *member,
             JsonNode        *node,
             char           **where)
{
  JsonArray *array = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  if (array == NULL)
    return refuse_member (reader, member, node);
  for (guint i = 0; (member->flags & TR_MEMBER_OF_OBJECTS) && i < json_array_get_length (array); i++)
    {
      JsonNode *element = json_array_get_element (array, i);

      if (!JSON_NODE_HOLDS_OBJECT (element))
        {
          tr_pointer_push_index (reader->pointer, i);
          return refuse (reader, TR_TRIAL_ERROR_VALUE, "an object", element);
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

typedef gboolean (*ReadEntry) (Reader         *reader,
                               const TrMember *member,
                               const char     *name,
                               JsonNode       *node,
                               gpointer        where);

static gboolean
read_entries (Reader         *reader,
              const TrMember *member,
              JsonNode       *node,
              ReadEntry       read_entry,
              gpointer        where)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *value;

  if (!JSON_NODE_HOLDS_OBJECT (node))
    return refuse_member (reader, member, node);

  json_object_iter_init_ordered (&iter, json_node_get_object (node));
  while (json_object_iter_next_ordered (&iter, &name, &value))
    {
      gsize length = tr_pointer_push (reader->pointer, name);

      if (!read_entry (reader, member, name, value, where))
        return FALSE;
      g_string_truncate (reader->pointer, length);
    }

  return TRUE;
}

static gboolean
read_household_entry (Reader         *reader,
                      const TrMember *member,
                      const char     *name,
                      JsonNode       *node,
                      gpointer        where)
{
  TrHousehold weight = { NULL, NAN };

  if (!get_number (node, &weight.grams) || !tr_member_accepts (member, weight.grams))
    {
      const TrMember number = { .type = TR_MEMBER_NUMBER, .min = member->min, .max = member->max };

      return refuse_member (reader, &number, node);
    }
  weight.unit = g_strdup (name);
  tr_own_ingredient_add_household (where, weight);

  return TRUE;
}

static gboolean
read_household (Reader          *reader,
                const TrMember  *member,
                JsonNode        *node,
                TrOwnIngredient *own)
{
  /* An object without members is not the same as none: make the list first. */
  tr_own_ingredient_add_household (own, (TrHousehold) { NULL, NAN });
  g_array_set_size (own->household, 0);

  return read_entries (reader, member, node, read_household_entry, own);
}

static gboolean
read_code_entry (Reader         *reader,
                 const TrMember *member,
                 const char     *name,
                 JsonNode       *node,
                 gpointer        where)
{
  int code;

  if (!get_whole (node, member, &code))
    {
      const TrMember whole = { .type = TR_MEMBER_WHOLE, .min = member->min, .max = member->max };

      return refuse_member (reader, &whole, node);
    }
  g_ptr_array_add (where, tr_code_new (name, code));

  return TRUE;
}

static gboolean
read_order_entry (Reader         *reader,
                  const TrMember *member,
                  const char     *name,
                  JsonNode       *node,
                  gpointer        where)
{
  g_auto (GStrv) doughs = dup_texts (node);

  if (doughs == NULL)
    return refuse (reader, TR_TRIAL_ERROR_VALUE, "a list of texts", node);
  g_ptr_array_add (where, tr_order_new (name, doughs));

  return TRUE;
}

/* Objects and lists of objects */

static gboolean
read_struct (Reader         *reader,
             const TrObject *type,
             JsonNode       *node,
             gpointer        object)
{
  const char *name, *expected;

  if (!JSON_NODE_HOLDS_OBJECT (node))
    return refuse (reader, TR_TRIAL_ERROR_VALUE, "an object", node);
  if (!read_object (reader, type, json_node_get_object (node), object))
    return FALSE;
  if (type->complete != NULL)
    type->complete (object);

  expected = type->check != NULL ? type->check (object, &name) : NULL;
  if (expected != NULL)
    {
      tr_pointer_push (reader->pointer, name);
      return refuse (reader, TR_TRIAL_ERROR_VALUE, expected,
                     json_object_get_member (json_node_get_object (node), name));
    }

  return TRUE;
}

static gboolean
read_new_struct (Reader         *reader,
                 const TrMember *member,
                 JsonNode       *node,
                 gpointer       *where)
{
  if (!JSON_NODE_HOLDS_OBJECT (node))
    return refuse_member (reader, member, node);

  g_clear_pointer (where, member->object->free);
  *where = member->object->create ();

  return read_struct (reader, member->object, node, *where);
}

static gboolean
read_list (Reader         *reader,
           const TrMember *member,
           JsonNode       *node,
           GPtrArray      *list)
{
  JsonArray *array = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  if (array == NULL)
    return refuse_member (reader, member, node);
  if (member->max > 0 && json_array_get_length (array) > member->max)
    {
      g_autofree char *expected = tr_member_dup_expected (member);
      g_autofree char *found = g_strdup_printf ("%u", json_array_get_length (array));

      return tr_pointer_refuse (reader->pointer, TR_TRIAL_ERROR_VALUE, expected, found, reader->error);
    }

  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      gsize length = tr_pointer_push_index (reader->pointer, i);
      gpointer object = member->object->create ();

      g_ptr_array_add (list, object);
      if (!read_struct (reader, member->object, json_array_get_element (array, i), object))
        return FALSE;
      g_string_truncate (reader->pointer, length);
    }

  return TRUE;
}

static gboolean
read_format (Reader         *reader,
             const TrMember *member,
             JsonNode       *node)
{
  if (g_strcmp0 (get_text (node), TR_FORMAT) == 0)
    return TRUE;

  return refuse (reader, TR_TRIAL_ERROR_FORMAT, "\"" TR_FORMAT "\"", node);
}

static gboolean
read_version (Reader         *reader,
              const TrMember *member,
              JsonNode       *node)
{
  double version;

  if (!get_number (node, &version))
    return refuse_member (reader, member, node);
  if (version > TR_FORMAT_VERSION)
    return refuse (reader, TR_TRIAL_ERROR_VERSION,
                   "version " G_STRINGIFY (TR_FORMAT_VERSION) " (the file is from a newer Tourier)", node);
  if (version < TR_FORMAT_VERSION)
    return refuse (reader, TR_TRIAL_ERROR_VERSION, "version " G_STRINGIFY (TR_FORMAT_VERSION), node);

  return TRUE;
}

/* Members */

static gboolean
read_value (Reader         *reader,
            const TrMember *member,
            JsonNode       *node,
            gpointer        object)
{
  int whole;

  switch (member->type)
    {
    case TR_MEMBER_FORMAT:
      return read_format (reader, member, node);
    case TR_MEMBER_VERSION:
      return read_version (reader, member, node);
    case TR_MEMBER_NUMBER:
      return read_number (reader, member, node, TR_AT (object, member, double));
    case TR_MEMBER_PAIR:
      return read_pair (reader, member, node, TR_AT (object, member, double));
    case TR_MEMBER_PART:
      return read_part (reader, member, node, object);
    case TR_MEMBER_WHOLE:
      if (!get_whole (node, member, &whole))
        return refuse_member (reader, member, node);
      *TR_AT (object, member, int) = whole;
      return TRUE;
    case TR_MEMBER_FLAG:
      return read_flag (reader, member, node, TR_AT (object, member, int));
    case TR_MEMBER_WORD:
      return read_word (reader, member, node, TR_AT (object, member, int));
    case TR_MEMBER_TEXT:
      return read_text (reader, member, node, TR_AT (object, member, char *));
    case TR_MEMBER_TEXTS:
      return read_texts (reader, member, node, TR_AT (object, member, char **));
    case TR_MEMBER_OBJECT:
      return read_new_struct (reader, member, node, TR_AT (object, member, gpointer));
    case TR_MEMBER_INSIDE:
      return read_struct (reader, member->object, node, object);
    case TR_MEMBER_LIST:
      return read_list (reader, member, node, *TR_AT (object, member, GPtrArray *));
    case TR_MEMBER_OPAQUE:
      return read_opaque (reader, member, node, TR_AT (object, member, char *));
    case TR_MEMBER_PANTRY:
      return read_list (reader, member, node, (*TR_AT (object, member, TrPantry *))->own);
    case TR_MEMBER_HOUSEHOLD:
      return read_household (reader, member, node, object);
    case TR_MEMBER_CODES:
      return read_entries (reader, member, node, read_code_entry, *TR_AT (object, member, GPtrArray *));
    case TR_MEMBER_ORDERS:
      return read_entries (reader, member, node, read_order_entry, *TR_AT (object, member, GPtrArray *));
    default:
      g_assert_not_reached ();
    }
}

/* null: not written, whatever the default is. */
static void
clear_value (const TrMember *member,
             gpointer        object)
{
  switch (member->type)
    {
    case TR_MEMBER_NUMBER:
      *TR_AT (object, member, double) = NAN;
      break;
    case TR_MEMBER_PAIR:
      TR_AT (object, member, double)[0] = TR_AT (object, member, double)[1] = NAN;
      break;
    case TR_MEMBER_WHOLE: case TR_MEMBER_FLAG: case TR_MEMBER_WORD:
      *TR_AT (object, member, int) = member->none;
      break;
    case TR_MEMBER_TEXT:
      g_clear_pointer (TR_AT (object, member, char *), g_free);
      break;
    case TR_MEMBER_OBJECT:
      g_clear_pointer (TR_AT (object, member, gpointer), member->object->free);
      break;
    case TR_MEMBER_TEXTS: case TR_MEMBER_HOUSEHOLD:   /* NULL to begin with */
      break;
    case TR_MEMBER_FORMAT: case TR_MEMBER_VERSION: case TR_MEMBER_PART: case TR_MEMBER_INSIDE: case TR_MEMBER_LIST:
    case TR_MEMBER_OPAQUE: case TR_MEMBER_PANTRY: case TR_MEMBER_CODES: case TR_MEMBER_ORDERS:
    default:
      g_assert_not_reached ();
    }
}

static gboolean
read_member (Reader         *reader,
             const TrMember *member,
             JsonObject     *from,
             gpointer        object)
{
  JsonNode *node = json_object_get_member (from, member->name);
  gsize length;

  if (node == NULL && !(member->flags & TR_MEMBER_REQUIRED))
    return TRUE;

  length = tr_pointer_push (reader->pointer, member->name);
  if (node == NULL)
    return refuse_member (reader, member, NULL);
  if (JSON_NODE_HOLDS_NULL (node) && (member->flags & TR_MEMBER_NULLABLE))
    clear_value (member, object);
  else if (!read_value (reader, member, node, object))
    return FALSE;
  g_string_truncate (reader->pointer, length);

  return TRUE;
}

static gboolean
is_known (const TrObject *type,
          const char     *name)
{
  for (guint i = 0; i < type->n_members; i++)
    if (strcmp (type->members[i].name, name) == 0)
      return TRUE;

  return FALSE;
}

static char *
dup_unknown (const TrObject *type,
             JsonObject     *from)
{
  g_autoptr (GString) text = NULL;
  JsonObjectIter iter;
  const char *name;
  JsonNode *node;

  json_object_iter_init_ordered (&iter, from);
  while (json_object_iter_next_ordered (&iter, &name, &node))
    {
      if (is_known (type, name))
        continue;
      if (text == NULL)
        text = g_string_new ("{");
      else
        g_string_append_c (text, ',');
      tr_json_append_string (text, name);
      g_string_append_c (text, ':');
      tr_strict_append_node (text, node);
    }
  if (text == NULL)
    return NULL;
  g_string_append_c (text, '}');

  return g_string_free (g_steal_pointer (&text), FALSE);
}

static gboolean
read_object (Reader         *reader,
             const TrObject *type,
             JsonObject     *from,
             gpointer        object)
{
  for (guint i = 0; i < type->n_members; i++)
    if (!read_member (reader, &type->members[i], from, object))
      return FALSE;
  *tr_object_extra (type, object) = dup_unknown (type, from);

  return TRUE;
}

TrTrial *
tr_trial_read (const char  *bytes,
               gsize        length,
               GError     **error)
{
  g_autoptr (JsonNode) root = tr_strict_parse (bytes, length, error);
  g_autoptr (GString) pointer = g_string_new (NULL);
  g_autoptr (TrTrial) trial = NULL;
  Reader reader = { pointer, error };

  if (root == NULL)
    return NULL;
  if (!JSON_NODE_HOLDS_OBJECT (root))
    {
      refuse (&reader, TR_TRIAL_ERROR_FORMAT, "an object", root);
      return NULL;
    }

  trial = tr_trial_new ();
  if (!read_struct (&reader, &tr_trial_object, root, trial) || !tr_trial_validate (trial, error))
    return NULL;

  return g_steal_pointer (&trial);
}

TrTrial *
tr_trial_read_path (const char   *path,
                    TrDiskState  *state,
                    GError      **error)
{
  gsize length;
  g_autofree char *bytes = tr_disk_read (path, TR_STRICT_MAX_BYTES, &length, state, error);

  if (bytes != NULL && length > TR_STRICT_MAX_BYTES)
    {
      g_set_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_TOO_LARGE,
                   "Expected at most %d bytes (4 MiB), found more.", TR_STRICT_MAX_BYTES);
      return NULL;
    }

  return bytes != NULL ? tr_trial_read (bytes, length, error) : NULL;
}

TrTrial *
tr_trial_read_file (const char  *path,
                    GError     **error)
{
  return tr_trial_read_path (path, NULL, error);
}
