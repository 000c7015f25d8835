/* test-schema.c: the JSON Schema says what the tables say
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Walks the tables of members.h and the schema side by side: the same members,
 * the same that are required, the same types, ranges, words and lengths, and
 * as defaults what the constructors hold. schema.py then drives both with
 * documents.
 *
 * Usage: test-schema SCHEMA
 */

#include <string.h>

#include "trial/document.h"
#include "trial/members.h"

static JsonObject *schema_root;
static guint n_checked;

static JsonObject *
follow (JsonObject *schema)
{
  static const char prefix[] = "#/$defs/";
  const char *ref = json_object_get_string_member_with_default (schema, "$ref", NULL);

  if (ref == NULL)
    return schema;
  g_assert_true (g_str_has_prefix (ref, prefix));

  return json_object_get_object_member (json_object_get_object_member (schema_root, "$defs"), ref + strlen (prefix));
}

/* anyOf of something and null; is_nullable tells whether it was that. */
static JsonObject *
follow_nullable (JsonObject *schema,
                 gboolean   *is_nullable)
{
  *is_nullable = json_object_has_member (schema, "anyOf");
  if (!*is_nullable)
    return follow (schema);

  JsonArray *any_of = json_object_get_array_member (schema, "anyOf");
  g_assert_cmpuint (json_array_get_length (any_of), ==, 2);
  g_assert_cmpstr (json_object_get_string_member (json_array_get_object_element (any_of, 1), "type"), ==, "null");

  return follow (json_array_get_object_element (any_of, 0));
}

static char *
dup_type (JsonObject *schema)
{
  JsonNode *type = json_object_get_member (schema, "type");
  GString *text = g_string_new (NULL);

  if (type != NULL)
    {
      g_autofree char *json = json_to_string (type, FALSE);

      for (const char *at = json; *at != '\0'; at++)
        if (strchr ("\"[]", *at) == NULL)
          g_string_append_c (text, *at);
    }

  return g_string_free (text, FALSE);
}

static void
check_type (const TrMember *member,
            JsonObject     *schema,
            const char     *type)
{
  gboolean is_nullable = (member->flags & TR_MEMBER_NULLABLE) || member->type == TR_MEMBER_PART;
  g_autofree char *expected = g_strdup_printf ("%s%s", type, is_nullable ? ",null" : "");
  g_autofree char *found = dup_type (schema);

  g_assert_cmpstr (found, ==, expected);
}

static void
check_range (const TrMember *member,
             JsonObject     *schema)
{
  g_assert_cmpfloat (json_object_get_double_member (schema, "minimum"), ==, member->min);
  g_assert_cmpfloat (json_object_get_double_member (schema, "maximum"), ==, member->max);
}

static void
check_words (const TrMember *member,
             JsonObject     *schema)
{
  JsonArray *words = json_object_get_array_member (schema, "enum");
  gboolean is_nullable = (member->flags & TR_MEMBER_NULLABLE) != 0;

  g_assert_cmpuint (json_array_get_length (words), ==, member->words->n + (is_nullable ? 1 : 0));
  for (guint i = 0; i < member->words->n; i++)
    g_assert_cmpstr (json_array_get_string_element (words, i), ==, member->words->id (i));
  if (is_nullable)
    g_assert_true (JSON_NODE_HOLDS_NULL (json_array_get_element (words, member->words->n)));
}

static void
check_text (const TrMember *member,
            JsonObject     *schema)
{
  check_type (member, schema, "string");
  g_assert_cmpint (json_object_get_int_member_with_default (schema, "maxLength", 0), ==, (gint64) member->max);
  g_assert_cmpint (json_object_get_int_member_with_default (schema, "minLength", 0), ==,
                   member->flags & TR_MEMBER_FILLED ? 1 : 0);
}

static void
check_constant (JsonObject *schema,
                const char *expected)
{
  g_autofree char *found = json_to_string (json_object_get_member (schema, "const"), FALSE);

  g_assert_cmpstr (found, ==, expected);
}

static void check_object (const TrObject *type, JsonObject *schema, JsonObject *defaults);

static JsonObject *
default_object (const TrObject *type)
{
  gpointer object = type->create ();
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (JsonNode) node = NULL;

  tr_object_append_text (type, object, text);
  node = json_from_string (text->str, NULL);
  type->free (object);

  return json_node_dup_object (node);
}

static void
check_new_object (const TrObject *type,
                  JsonObject     *schema)
{
  g_autoptr (JsonObject) defaults = default_object (type);

  check_object (type, schema, defaults);
}

static void
check_list (const TrMember *member,
            JsonObject     *schema)
{
  check_type (member, schema, "array");
  g_assert_cmpint (json_object_get_int_member_with_default (schema, "maxItems", 0), ==, (gint64) member->max);
  check_new_object (member->object, follow (json_object_get_object_member (schema, "items")));
}

static void
check_opaque (const TrMember *member,
              JsonObject     *schema)
{
  check_type (member, schema, "array");
  g_assert_cmpint (json_object_has_member (schema, "items"), ==, (member->flags & TR_MEMBER_OF_OBJECTS) != 0);
}

static void
check_entries (const TrMember *member,
               JsonObject     *schema,
               const char     *type)
{
  JsonObject *entries = json_object_get_object_member (schema, "additionalProperties");

  check_type (member, schema, "object");
  g_assert_cmpstr (json_object_get_string_member (entries, "type"), ==, type);
  if (member->type != TR_MEMBER_ORDERS)
    check_range (member, entries);
}

static void
check_member (const TrMember *member,
              JsonObject     *schema,
              JsonObject     *defaults)
{
  JsonObject *inner = json_object_has_member (defaults, member->name) && member->type == TR_MEMBER_INSIDE
                      ? json_object_get_object_member (defaults, member->name) : NULL;
  g_autoptr (JsonObject) nothing = json_object_new ();
  gboolean is_nullable;

  switch (member->type)
    {
    case TR_MEMBER_FORMAT: check_constant (schema, "\"" TR_FORMAT "\""); break;
    case TR_MEMBER_VERSION: check_constant (schema, G_STRINGIFY (TR_FORMAT_VERSION)); break;
    case TR_MEMBER_NUMBER: case TR_MEMBER_PART:
      check_type (member, schema, "number");
      check_range (member, schema);
      break;
    case TR_MEMBER_PAIR:
      check_type (member, schema, "array");
      g_assert_cmpint (json_object_get_int_member (schema, "minItems"), ==, 2);
      g_assert_cmpint (json_object_get_int_member (schema, "maxItems"), ==, 2);
      check_range (member, json_object_get_object_member (schema, "items"));
      break;
    case TR_MEMBER_WHOLE:
      check_type (member, schema, "integer");
      check_range (member, schema);
      break;
    case TR_MEMBER_FLAG: check_type (member, schema, "boolean"); break;
    case TR_MEMBER_WORD: check_words (member, schema); break;
    case TR_MEMBER_TEXT: check_text (member, schema); break;
    case TR_MEMBER_TEXTS: check_type (member, schema, "array"); break;
    case TR_MEMBER_OBJECT:
      check_new_object (member->object, follow_nullable (schema, &is_nullable));
      g_assert_cmpint (is_nullable, ==, (member->flags & TR_MEMBER_NULLABLE) != 0);
      break;
    case TR_MEMBER_INSIDE:
      check_object (member->object, follow (schema), inner != NULL ? inner : nothing);
      break;
    case TR_MEMBER_LIST: case TR_MEMBER_PANTRY: check_list (member, schema); break;
    case TR_MEMBER_OPAQUE: check_opaque (member, schema); break;
    case TR_MEMBER_HOUSEHOLD: check_entries (member, schema, "number"); break;
    case TR_MEMBER_CODES: check_entries (member, schema, "integer"); break;
    case TR_MEMBER_ORDERS: check_entries (member, schema, "array"); break;
    default: g_assert_not_reached ();
    }
}

/* The schema's default is what a new object writes. Objects say theirs inside;
 * a member that must be there has none. */
static void
check_default (const TrMember *member,
               JsonObject     *schema,
               JsonObject     *defaults)
{
  JsonNode *ours = json_object_get_member (defaults, member->name);
  JsonNode *theirs = json_object_get_member (schema, "default");

  if (member->flags & TR_MEMBER_REQUIRED)
    g_assert_null (theirs);
  else if (ours == NULL && member->flags & TR_MEMBER_OMITS_ZERO)
    g_assert_cmpfloat (json_node_get_double (theirs), ==, 0);
  else if (ours == NULL)
    g_assert_true (theirs == NULL || JSON_NODE_HOLDS_NULL (theirs));
  else if (JSON_NODE_HOLDS_OBJECT (ours) && member->type != TR_MEMBER_CODES && member->type != TR_MEMBER_ORDERS)
    g_assert_null (theirs);
  else
    {
      g_assert_nonnull (theirs);
      g_autofree char *our_text = json_to_string (ours, FALSE);
      g_autofree char *their_text = json_to_string (theirs, FALSE);

      g_assert_cmpstr (their_text, ==, our_text);
    }
}

static gboolean
is_required (JsonObject *schema,
             const char *name)
{
  JsonArray *required = json_object_has_member (schema, "required") ? json_object_get_array_member (schema, "required") : NULL;

  for (guint i = 0; required != NULL && i < json_array_get_length (required); i++)
    if (strcmp (json_array_get_string_element (required, i), name) == 0)
      return TRUE;

  return FALSE;
}

static void
check_object (const TrObject *type,
              JsonObject     *schema,
              JsonObject     *defaults)
{
  JsonObject *properties = json_object_get_object_member (schema, "properties");
  g_autofree char *schema_type = dup_type (schema);

  g_assert_cmpstr (schema_type, ==, "object");
  g_assert_cmpuint (json_object_get_size (properties), ==, type->n_members);
  for (guint i = 0; i < type->n_members; i++)
    {
      const TrMember *member = &type->members[i];
      JsonObject *of_member;

      g_test_message ("%s", member->name);
      g_assert_true (json_object_has_member (properties, member->name));
      of_member = json_object_get_object_member (properties, member->name);
      g_assert_cmpint (is_required (schema, member->name), ==, (member->flags & TR_MEMBER_REQUIRED) != 0);
      check_member (member, of_member, defaults);
      check_default (member, of_member, defaults);
      n_checked++;
    }
}

static void
test_same (gconstpointer path)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) error = NULL;

  json_parser_load_from_file (parser, path, &error);
  g_assert_no_error (error);
  schema_root = json_node_get_object (json_parser_get_root (parser));
  check_new_object (&tr_trial_object, schema_root);
  g_assert_cmpuint (n_checked, >, 130);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_assert_cmpint (argc, ==, 2);
  g_test_add_data_func ("/trial/schema/says-what-the-tables-say", argv[1], test_same);

  return g_test_run ();
}
