/* json-text.c: values as JSON text
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One spelling for every value, whatever the locale: the same trial gives the
 * same bytes. A number is the shortest decimal that reads back as the same
 * double; whole numbers up to 2^53 stand without exponent or point; minus zero
 * is 0. What JSON cannot say (NaN, infinities) is null.
 */

#include "strict.h"

#include <float.h>
#include <string.h>

#include "document.h"

/* DBL_DIG digits are the shortest where they are enough, since their zeros at
 * the end are left out; numbers below DBL_MIN hold fewer. */
#define MAX_DIGITS 17
#define MAX_WHOLE 9007199254740992.0   /* 2^53: every whole number up to here is exact */

static gboolean
is_same_double (double a,
                double b)
{
  return !(a < b) && !(a > b);
}

void
tr_json_append_number (GString *out,
                       double   value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_return_if_fail (out != NULL);

  if (!isfinite (value))
    {
      g_string_append (out, "null");
      return;
    }
  if (fabs (value) <= MAX_WHOLE && is_same_double (trunc (value), value))
    {
      g_string_append_printf (out, "%" G_GINT64_FORMAT, (gint64) value);
      return;
    }

  for (guint n_digits = fabs (value) < DBL_MIN ? 1 : DBL_DIG; n_digits <= MAX_DIGITS; n_digits++)
    {
      char format[] = "%.00g";

      format[2] = (char) ('0' + n_digits / 10);
      format[3] = (char) ('0' + n_digits % 10);
      g_ascii_formatd (digits, sizeof digits, format, value);
      if (is_same_double (g_ascii_strtod (digits, NULL), value))
        break;
    }
  g_string_append (out, digits);
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
