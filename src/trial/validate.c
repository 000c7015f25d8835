/* validate.c: whether a trial is one that could stand in a file
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the reader refuses, on structs: an edit is held to it before it becomes
 * the trial, so nothing can be saved that could not be opened again. Ranges
 * and counts come from the tables of members.h; ids and references are looked
 * at last (references.c).
 */

#include <string.h>

#include "document.h"
#include "members.h"
#include "strict.h"

/* No member takes more than this beside its texts, whose bytes take at most 6
 * each (\u0000): a bound that is far from the limit for any real trial. */
#define MAX_MEMBER_BYTES 96
#define MAX_BYTES_A_BYTE 6

/* The most that can be opened again, and room for what a recovery copy adds. */
#define MAX_TEXT_BYTES (TR_STRICT_MAX_BYTES - 16384)

typedef struct {
  GString *pointer;
  gsize bound;                   /* the text is not longer than this */
  GError **error;
} Walk;

static gboolean walk_object (Walk *walk, const TrObject *type, gconstpointer object);

/* Refusals */

static gboolean
refuse (Walk       *walk,
        const char *expected,
        const char *found)
{
  return tr_pointer_refuse (walk->pointer, TR_TRIAL_ERROR_VALUE, expected, found, walk->error);
}

static gboolean
refuse_text (Walk       *walk,
             const char *expected,
             const char *text)
{
  g_autoptr (GString) found = g_string_new (NULL);

  if (text != NULL && g_utf8_validate (text, -1, NULL))
    tr_json_append_string (found, text);
  else
    g_string_append (found, text == NULL ? "nothing" : "bytes that are not UTF-8");

  return refuse (walk, expected, found->str);
}

static void
append_number (GString *found,
               double   number)
{
  if (isnan (number))
    g_string_append (found, "nothing");
  else if (isinf (number))
    g_string_append (found, number > 0 ? "infinity" : "minus infinity");
  else
    tr_json_append_number (found, number);
}

static gboolean
refuse_number (Walk           *walk,
               const TrMember *member,
               double          number)
{
  g_autoptr (GString) found = g_string_new (NULL);
  g_autofree char *expected = tr_member_dup_expected (member);

  append_number (found, number);

  return refuse (walk, expected, found->str);
}

/* What a check of the whole object found wrong is always about a number. */
static gboolean
refuse_checked (Walk           *walk,
                const TrObject *type,
                gconstpointer   object,
                const char     *name,
                const char     *expected)
{
  g_autoptr (GString) found = g_string_new (NULL);

  tr_pointer_push (walk->pointer, name);
  for (guint i = 0; i < type->n_members; i++)
    if (strcmp (type->members[i].name, name) == 0)
      append_number (found, *TR_AT_CONST (object, &type->members[i], double));

  return refuse (walk, expected, found->str);
}

/* Values */

static gboolean
walk_number (Walk           *walk,
             const TrMember *member,
             double          number)
{
  if (isnan (number) && (member->flags & TR_MEMBER_NULLABLE || member->type == TR_MEMBER_PART))
    return TRUE;

  return tr_member_accepts (member, number) || refuse_number (walk, member, number);
}

static gboolean
walk_pair (Walk           *walk,
           const TrMember *member,
           const double   *pair)
{
  if (isnan (pair[0]) != isnan (pair[1]))
    return refuse_number (walk, member, NAN);

  return walk_number (walk, member, pair[0]) && walk_number (walk, member, pair[1]);
}

static gboolean
walk_whole (Walk           *walk,
            const TrMember *member,
            int             whole)
{
  if (whole == member->none && (member->flags & TR_MEMBER_NULLABLE))
    return TRUE;

  return tr_member_accepts (member, whole) || refuse_number (walk, member, whole);
}

static gboolean
walk_word (Walk           *walk,
           const TrMember *member,
           int             word)
{
  if (word == member->none && (member->flags & TR_MEMBER_NULLABLE))
    return TRUE;

  return (word >= 0 && word < (int) member->words->n) || refuse_number (walk, member, word);
}

static gboolean
walk_any_text (Walk       *walk,
               const char *text)
{
  walk->bound += strlen (text) * MAX_BYTES_A_BYTE;

  return g_utf8_validate (text, -1, NULL) || refuse_text (walk, "UTF-8 text", text);
}

static gboolean
walk_text (Walk           *walk,
           const TrMember *member,
           const char     *text)
{
  gboolean is_wrong = text == NULL
                      ? !(member->flags & TR_MEMBER_NULLABLE)
                      : (member->max > 0 && (double) strlen (text) > member->max)
                        || ((member->flags & TR_MEMBER_FILLED) && *text == '\0');

  if (is_wrong)
    {
      g_autofree char *expected = tr_member_dup_expected (member);

      return refuse_text (walk, expected, text);
    }

  return text == NULL || walk_any_text (walk, text);
}

static gboolean
walk_texts (Walk           *walk,
            const TrMember *member,
            char *const    *texts)
{
  if (texts == NULL && !(member->flags & TR_MEMBER_NULLABLE))
    return refuse (walk, "a list of texts", "nothing");

  for (guint i = 0; texts != NULL && texts[i] != NULL; i++)
    {
      gsize length = tr_pointer_push_index (walk->pointer, i);

      walk->bound += MAX_MEMBER_BYTES;
      if (!walk_any_text (walk, texts[i]))
        return FALSE;
      g_string_truncate (walk->pointer, length);
    }

  return TRUE;
}

/* The writer parts these at their commas, so they have to be as the reader keeps them. */
static gboolean
walk_kept (Walk         *walk,
           const char   *text,
           JsonNodeType  type,
           gboolean      of_objects)
{
  g_autoptr (JsonNode) node = NULL;
  g_autoptr (GString) again = g_string_new (NULL);

  if (text == NULL)
    return TRUE;

  walk->bound += strlen (text) * MAX_BYTES_A_BYTE;
  node = tr_strict_parse (text, strlen (text), NULL);
  if (node == NULL || json_node_get_node_type (node) != type)
    return refuse_text (walk, type == JSON_NODE_ARRAY ? "the text of a list" : "the text of an object", text);
  tr_strict_append_node (again, node);
  if (strcmp (again->str, text) != 0)
    return refuse_text (walk, "compact text", text);

  JsonArray *array = of_objects ? json_node_get_array (node) : NULL;
  for (guint i = 0; array != NULL && i < json_array_get_length (array); i++)
    if (!JSON_NODE_HOLDS_OBJECT (json_array_get_element (array, i)))
      return refuse_text (walk, "the text of a list of objects", text);

  return TRUE;
}

static gboolean
walk_list (Walk           *walk,
           const TrMember *member,
           GPtrArray      *list)
{
  if (member->max > 0 && list->len > member->max)
    return refuse_number (walk, member, list->len);

  for (guint i = 0; i < list->len; i++)
    {
      gsize length = tr_pointer_push_index (walk->pointer, i);

      if (!walk_object (walk, member->object, g_ptr_array_index (list, i)))
        return FALSE;
      g_string_truncate (walk->pointer, length);
    }

  return TRUE;
}

/* A name that stands as a member's: it may stand there only once. */
static gboolean
walk_key (Walk       *walk,
          GHashTable *seen,
          const char *key)
{
  if (!walk_any_text (walk, key))
    return FALSE;
  walk->bound += MAX_MEMBER_BYTES;

  return g_hash_table_add (seen, (gpointer) key) || refuse_text (walk, "each name once", key);
}

static gboolean
walk_household (Walk           *walk,
                const TrMember *member,
                GArray         *household)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  const TrMember number = { .type = TR_MEMBER_NUMBER, .min = member->min, .max = member->max };

  for (guint i = 0; household != NULL && i < household->len; i++)
    {
      const TrHousehold *weight = &g_array_index (household, TrHousehold, i);
      gsize length = tr_pointer_push (walk->pointer, weight->unit);

      if (!walk_key (walk, seen, weight->unit) || !walk_number (walk, &number, weight->grams))
        return FALSE;
      g_string_truncate (walk->pointer, length);
    }

  return TRUE;
}

static gboolean
walk_codes (Walk           *walk,
            const TrMember *member,
            GPtrArray      *codes)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  const TrMember whole = { .type = TR_MEMBER_WHOLE, .min = member->min, .max = member->max };

  for (guint i = 0; i < codes->len; i++)
    {
      const TrCode *code = g_ptr_array_index (codes, i);
      gsize length = tr_pointer_push (walk->pointer, code->dough);

      if (!walk_key (walk, seen, code->dough) || !walk_whole (walk, &whole, code->code))
        return FALSE;
      g_string_truncate (walk->pointer, length);
    }

  return TRUE;
}

static gboolean
walk_orders (Walk           *walk,
             const TrMember *member,
             GPtrArray      *orders)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < orders->len; i++)
    {
      const TrOrder *order = g_ptr_array_index (orders, i);
      gsize length = tr_pointer_push (walk->pointer, order->taster);

      if (!walk_key (walk, seen, order->taster) || !walk_texts (walk, member, order->doughs))
        return FALSE;
      g_string_truncate (walk->pointer, length);
    }

  return TRUE;
}

static gboolean
walk_struct (Walk           *walk,
             const TrMember *member,
             gconstpointer   object)
{
  if (object == NULL)
    return (member->flags & TR_MEMBER_NULLABLE) || refuse (walk, "an object", "nothing");

  return walk_object (walk, member->object, object);
}

static gboolean
walk_value (Walk           *walk,
            const TrMember *member,
            gconstpointer   object)
{
  switch (member->type)
    {
    case TR_MEMBER_NUMBER: case TR_MEMBER_PART:
      return walk_number (walk, member, *TR_AT_CONST (object, member, double));
    case TR_MEMBER_PAIR:
      return walk_pair (walk, member, TR_AT_CONST (object, member, double));
    case TR_MEMBER_WHOLE: case TR_MEMBER_FLAG:
      return walk_whole (walk, member, *TR_AT_CONST (object, member, int));
    case TR_MEMBER_WORD:
      return walk_word (walk, member, *TR_AT_CONST (object, member, int));
    case TR_MEMBER_TEXT:
      return walk_text (walk, member, *TR_AT_CONST (object, member, char *));
    case TR_MEMBER_TEXTS:
      return walk_texts (walk, member, *TR_AT_CONST (object, member, char **));
    case TR_MEMBER_OBJECT:
      return walk_struct (walk, member, *TR_AT_CONST (object, member, gpointer));
    case TR_MEMBER_INSIDE:
      return walk_object (walk, member->object, object);
    case TR_MEMBER_LIST:
      return walk_list (walk, member, *TR_AT_CONST (object, member, GPtrArray *));
    case TR_MEMBER_OPAQUE:
      return walk_kept (walk, *TR_AT_CONST (object, member, char *), JSON_NODE_ARRAY,
                        (member->flags & TR_MEMBER_OF_OBJECTS) != 0);
    case TR_MEMBER_PANTRY:
      return walk_list (walk, member, (*TR_AT_CONST (object, member, TrPantry *))->own);
    case TR_MEMBER_HOUSEHOLD:
      return walk_household (walk, member, *TR_AT_CONST (object, member, GArray *));
    case TR_MEMBER_CODES:
      return walk_codes (walk, member, *TR_AT_CONST (object, member, GPtrArray *));
    case TR_MEMBER_ORDERS:
      return walk_orders (walk, member, *TR_AT_CONST (object, member, GPtrArray *));
    case TR_MEMBER_FORMAT: case TR_MEMBER_VERSION:
    default:
      return TRUE;
    }
}

static gboolean
walk_object (Walk           *walk,
             const TrObject *type,
             gconstpointer   object)
{
  const char *name, *expected;

  for (guint i = 0; i < type->n_members; i++)
    {
      gsize length = tr_pointer_push (walk->pointer, type->members[i].name);

      walk->bound += MAX_MEMBER_BYTES;
      if (!walk_value (walk, &type->members[i], object))
        return FALSE;
      g_string_truncate (walk->pointer, length);
    }

  expected = type->check != NULL ? type->check (object, &name) : NULL;
  if (expected != NULL)
    return refuse_checked (walk, type, object, name, expected);

  return walk_kept (walk, *tr_object_extra (type, (gpointer) object), JSON_NODE_OBJECT, FALSE);
}

gboolean
tr_trial_check_members (const TrTrial  *trial,
                        gsize          *bound,
                        GError        **error)
{
  g_autoptr (GString) pointer = g_string_new (NULL);
  Walk walk = { pointer, 0, error };

  if (!walk_object (&walk, &tr_trial_object, trial))
    return FALSE;
  *bound = walk.bound;

  return TRUE;
}

static gboolean
check_size (const TrTrial  *trial,
            gsize           bound,
            GError        **error)
{
  gsize length = bound;

  if (length > MAX_TEXT_BYTES)
    g_free (tr_trial_write (trial, &length));
  if (length <= MAX_TEXT_BYTES)
    return TRUE;

  g_set_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_TOO_LARGE,
               "Expected at most %d bytes, found %" G_GSIZE_FORMAT ".", MAX_TEXT_BYTES, length);

  return FALSE;
}

gboolean
tr_trial_validate (const TrTrial  *trial,
                   GError        **error)
{
  gsize bound = 0;

  g_return_val_if_fail (trial != NULL, FALSE);

  return tr_trial_check_members (trial, &bound, error)
         && tr_trial_check_references (trial, error)
         && check_size (trial, bound, error);
}
