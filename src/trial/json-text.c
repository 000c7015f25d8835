/* json-text.c: values as JSON text
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One spelling for every value, whatever the locale: the same trial gives the
 * same bytes. What JSON cannot say of numbers (NaN, infinities) is null.
 */

#include "strict.h"

#include <string.h>

#include "../calc/digits.h"
#include "document.h"

void
tr_json_append_number (GString *out,
                       double   value)
{
  g_return_if_fail (out != NULL);

  if (isfinite (value))
    tr_digits_append (out, value);
  else
    g_string_append (out, "null");
}

static const char *
short_escape (char c)
{
  switch (c)
    {
    case '"': return "\\\"";
    case '\\': return "\\\\";
    case '\b': return "\\b";
    case '\f': return "\\f";
    case '\n': return "\\n";
    case '\r': return "\\r";
    case '\t': return "\\t";
    default: return NULL;
    }
}

void
tr_json_append_string (GString    *out,
                       const char *text)
{
  g_return_if_fail (out != NULL);

  if (text == NULL)
    {
      g_string_append (out, "null");
      return;
    }

  g_string_append_c (out, '"');
  for (const char *run = text; *run != '\0';)
    {
      gsize plain = 0;

      while ((guchar) run[plain] >= 0x20 && run[plain] != '"' && run[plain] != '\\')
        plain++;
      g_string_append_len (out, run, (gssize) plain);
      run += plain;
      if (*run == '\0')
        break;

      const char *escape = short_escape (*run);
      if (escape != NULL)
        g_string_append (out, escape);
      else
        g_string_append_printf (out, "\\u%04x", (guint) (guchar) *run);
      run++;
    }
  g_string_append_c (out, '"');
}

/* Trees */

static void
append_object (GString    *out,
               JsonObject *object)
{
  JsonObjectIter iter;
  const char *name, *separator = "";
  JsonNode *node;

  g_string_append_c (out, '{');
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &node))
    {
      g_string_append (out, separator);
      tr_json_append_string (out, name);
      g_string_append_c (out, ':');
      tr_strict_append_node (out, node);
      separator = ",";
    }
  g_string_append_c (out, '}');
}

static void
append_array (GString   *out,
              JsonArray *array)
{
  g_string_append_c (out, '[');
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      tr_strict_append_node (out, json_array_get_element (array, i));
    }
  g_string_append_c (out, ']');
}

static void
append_value (GString  *out,
              JsonNode *node)
{
  GType type = json_node_get_value_type (node);

  if (type == G_TYPE_STRING)
    tr_json_append_string (out, json_node_get_string (node));
  else if (type == G_TYPE_BOOLEAN)
    g_string_append (out, json_node_get_boolean (node) ? "true" : "false");
  else if (type == G_TYPE_INT64)
    g_string_append_printf (out, "%" G_GINT64_FORMAT, json_node_get_int (node));
  else
    tr_json_append_number (out, json_node_get_double (node));
}

void
tr_strict_append_node (GString  *out,
                       JsonNode *node)
{
  switch (json_node_get_node_type (node))
    {
    case JSON_NODE_OBJECT:
      append_object (out, json_node_get_object (node));
      break;
    case JSON_NODE_ARRAY:
      append_array (out, json_node_get_array (node));
      break;
    case JSON_NODE_VALUE:
      append_value (out, node);
      break;
    case JSON_NODE_NULL:
    default:
      g_string_append (out, "null");
      break;
    }
}
