/* read.c: a trial out of the text of a document
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Walks the tree along the tables of members.h. A document is taken whole or
 * refused whole. What this version does not know is kept as text. Types,
 * ranges and presence are seen here and in read-value.c, where what was found
 * is still at hand; what needs the finished trial (ids, references) is left to
 * the checks that edits pass too, which see the ranges again.
 */

#include "read-value.h"

#include <string.h>

#include "document.h"
#include "strict.h"

static gboolean read_object (TrReading      *reading,
                             const TrObject *type,
                             JsonObject     *from,
                             gpointer        object);

/* Objects and lists of objects */

static gboolean
read_struct (TrReading      *reading,
             const TrObject *type,
             JsonNode       *node,
             gpointer        object)
{
  const char *name, *expected;

  if (!JSON_NODE_HOLDS_OBJECT (node))
    return tr_read_refuse (reading, TR_TRIAL_ERROR_VALUE, "an object", node);
  if (!read_object (reading, type, json_node_get_object (node), object))
    return FALSE;
  if (type->complete != NULL)
    type->complete (object);

  expected = type->check != NULL ? type->check (object, &name) : NULL;
  if (expected != NULL)
    {
      tr_pointer_push (reading->pointer, name);
      return tr_read_refuse (reading, TR_TRIAL_ERROR_VALUE, expected,
                             json_object_get_member (json_node_get_object (node), name));
    }

  return TRUE;
}

static gboolean
read_new_struct (TrReading      *reading,
                 const TrMember *member,
                 JsonNode       *node,
                 gpointer       *where)
{
  if (!JSON_NODE_HOLDS_OBJECT (node))
    return tr_read_refuse_member (reading, member, node);

  g_clear_pointer (where, member->object->free);
  *where = member->object->create ();

  return read_struct (reading, member->object, node, *where);
}

static gboolean
read_list (TrReading      *reading,
           const TrMember *member,
           JsonNode       *node,
           GPtrArray      *list)
{
  JsonArray *array = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  if (array == NULL)
    return tr_read_refuse_member (reading, member, node);
  if (member->max > 0 && json_array_get_length (array) > member->max)
    {
      g_autofree char *expected = tr_member_dup_expected (member);
      g_autofree char *found = g_strdup_printf ("%u", json_array_get_length (array));

      return tr_pointer_refuse (reading->pointer, TR_TRIAL_ERROR_VALUE, expected, found, reading->error);
    }

  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      gsize length = tr_pointer_push_index (reading->pointer, i);
      gpointer object = member->object->create ();

      g_ptr_array_add (list, object);
      if (!read_struct (reading, member->object, json_array_get_element (array, i), object))
        return FALSE;
      g_string_truncate (reading->pointer, length);
    }

  return TRUE;
}

static gboolean
read_format (TrReading      *reading,
             const TrMember *member,
             JsonNode       *node)
{
  if (node != NULL && g_strcmp0 (tr_read_get_text (node), TR_FORMAT) == 0)
    return TRUE;

  return tr_read_refuse (reading, TR_TRIAL_ERROR_FORMAT, "\"" TR_FORMAT "\"", node);
}

static gboolean
read_version (TrReading      *reading,
              const TrMember *member,
              JsonNode       *node)
{
  double version;

  if (!tr_read_get_number (node, &version))
    return tr_read_refuse_member (reading, member, node);
  if (version > TR_FORMAT_VERSION)
    return tr_read_refuse (reading, TR_TRIAL_ERROR_VERSION,
                           "version " G_STRINGIFY (TR_FORMAT_VERSION) " (the file is from a newer Tourier)", node);
  if (version < TR_FORMAT_VERSION)
    return tr_read_refuse (reading, TR_TRIAL_ERROR_VERSION, "version " G_STRINGIFY (TR_FORMAT_VERSION), node);

  return TRUE;
}

/* Members */

static gboolean
read_value (TrReading      *reading,
            const TrMember *member,
            JsonNode       *node,
            gpointer        object)
{
  switch (member->type)
    {
    case TR_MEMBER_FORMAT:
      return read_format (reading, member, node);
    case TR_MEMBER_VERSION:
      return read_version (reading, member, node);
    case TR_MEMBER_NUMBER:
      return tr_read_number (reading, member, node, TR_AT (object, member, double));
    case TR_MEMBER_PAIR:
      return tr_read_pair (reading, member, node, TR_AT (object, member, double));
    case TR_MEMBER_PART:
      return tr_read_part (reading, member, node, object);
    case TR_MEMBER_WHOLE:
      return tr_read_whole (reading, member, node, TR_AT (object, member, int));
    case TR_MEMBER_FLAG:
      return tr_read_flag (reading, member, node, TR_AT (object, member, int));
    case TR_MEMBER_WORD:
      return tr_read_word (reading, member, node, TR_AT (object, member, int));
    case TR_MEMBER_TEXT:
      return tr_read_text (reading, member, node, TR_AT (object, member, char *));
    case TR_MEMBER_TEXTS:
      return tr_read_texts (reading, member, node, TR_AT (object, member, char **));
    case TR_MEMBER_OBJECT:
      return read_new_struct (reading, member, node, TR_AT (object, member, gpointer));
    case TR_MEMBER_INSIDE:
      return read_struct (reading, member->object, node, object);
    case TR_MEMBER_LIST:
      return read_list (reading, member, node, *TR_AT (object, member, GPtrArray *));
    case TR_MEMBER_OPAQUE:
      return tr_read_opaque (reading, member, node, TR_AT (object, member, char *));
    case TR_MEMBER_PANTRY:
      return read_list (reading, member, node, (*TR_AT (object, member, TrPantry *))->own);
    case TR_MEMBER_HOUSEHOLD:
      return tr_read_household (reading, member, node, object);
    case TR_MEMBER_CODES:
      return tr_read_codes (reading, member, node, *TR_AT (object, member, GPtrArray *));
    case TR_MEMBER_ORDERS:
      return tr_read_orders (reading, member, node, *TR_AT (object, member, GPtrArray *));
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
read_member (TrReading      *reading,
             const TrMember *member,
             JsonObject     *from,
             gpointer        object)
{
  JsonNode *node = json_object_get_member (from, member->name);
  gsize length;

  if (node == NULL && !(member->flags & TR_MEMBER_REQUIRED))
    return TRUE;

  length = tr_pointer_push (reading->pointer, member->name);
  if (node == NULL && member->type == TR_MEMBER_FORMAT)
    return read_format (reading, member, NULL);
  if (node == NULL)
    return tr_read_refuse_member (reading, member, NULL);
  if (JSON_NODE_HOLDS_NULL (node) && (member->flags & TR_MEMBER_NULLABLE))
    clear_value (member, object);
  else if (!read_value (reading, member, node, object))
    return FALSE;
  g_string_truncate (reading->pointer, length);

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
read_object (TrReading      *reading,
             const TrObject *type,
             JsonObject     *from,
             gpointer        object)
{
  for (guint i = 0; i < type->n_members; i++)
    if (!read_member (reading, &type->members[i], from, object))
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
  TrReading reading = { pointer, error };
  gsize bound;

  if (root == NULL)
    return NULL;
  if (!JSON_NODE_HOLDS_OBJECT (root))
    {
      tr_read_refuse (&reading, TR_TRIAL_ERROR_FORMAT, "an object", root);
      return NULL;
    }

  trial = tr_trial_new ();
  if (!read_struct (&reading, &tr_trial_object, root, trial)
      || !tr_trial_check_members (trial, &bound, error)
      || !tr_trial_check_references (trial, error))
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
