/* report-json.c: JSON that is read by people too
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "report-json.h"

#include "trial/document.h"

static void
start (TrJson     *json,
       const char *key)
{
  if (json->depth > 0)
    {
      g_string_append (json->out, json->has_members ? ",\n" : "\n");
      g_string_append_printf (json->out, "%*s", 2 * json->depth, "");
    }
  json->has_members = TRUE;
  if (key != NULL)
    {
      tr_json_append_string (json->out, key);
      g_string_append (json->out, ": ");
    }
}

void
tr_json_open (TrJson     *json,
              const char *key,
              char        bracket)
{
  start (json, key);
  g_string_append_c (json->out, bracket);
  json->depth++;
  json->has_members = FALSE;
}

void
tr_json_close (TrJson *json,
               char    bracket)
{
  json->depth--;
  if (json->has_members)
    g_string_append_printf (json->out, "\n%*s", 2 * json->depth, "");
  g_string_append_c (json->out, bracket);
  json->has_members = TRUE;
}

void
tr_json_number (TrJson     *json,
                const char *key,
                double      value)
{
  start (json, key);
  tr_json_append_number (json->out, value);
}

void
tr_json_text (TrJson     *json,
              const char *key,
              const char *text)
{
  start (json, key);
  tr_json_append_string (json->out, text);
}

void
tr_json_word (TrJson     *json,
              const char *key,
              const char *word)
{
  start (json, key);
  g_string_append (json->out, word);
}

void
tr_json_boolean (TrJson     *json,
                 const char *key,
                 gboolean    value)
{
  tr_json_word (json, key, value ? "true" : "false");
}

/* "[640, 205, 13]" on one line. */
void
tr_json_numbers (TrJson       *json,
                 const char   *key,
                 const double *numbers,
                 guint         n)
{
  start (json, key);
  for (guint i = 0; i < n; i++)
    {
      g_string_append (json->out, i == 0 ? "[" : ", ");
      tr_json_append_number (json->out, numbers[i]);
    }
  g_string_append_c (json->out, ']');
}

void
tr_json_size (TrJson       *json,
              const char   *key,
              const TrSize *size)
{
  tr_json_numbers (json, key, size->mm, 3);
}

void
tr_json_range (TrJson        *json,
               const char    *key,
               const TrRange *range)
{
  tr_json_open (json, key, '{');
  tr_json_number (json, "min", range->min);
  tr_json_number (json, "max", range->max);
  tr_json_close (json, '}');
}
