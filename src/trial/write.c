/* write.c: the text of a trial
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The same trial gives the same bytes: members in the order of the tables in
 * members.h, then those that this version does not know in the order in which
 * they came, two spaces a level, a newline at the end. What changes together
 * stands on one line (a formula line, a turn, a step, an entry of the log), so
 * that line-wise comparison of two documents reads like a list of edits. What
 * was not written is left out, except where null says something.
 */

#include <string.h>

#include "document.h"
#include "members.h"

/* Where the writer is: how deep, on one line or not, after a member or not. */
typedef struct {
  GString *out;
  guint level;
  gboolean is_inline;
  gboolean is_first;
} Writer;

static void write_object (Writer *outer, const TrObject *type, gconstpointer object);

/* Layout */

static void
new_line (Writer *writer)
{
  g_string_append_c (writer->out, '\n');
  for (guint i = 0; i < writer->level; i++)
    g_string_append (writer->out, "  ");
}

static Writer
open_bracket (Writer   *outer,
              char      bracket,
              gboolean  is_inline)
{
  g_string_append_c (outer->out, bracket);

  return (Writer) { outer->out, outer->level + 1, is_inline || outer->is_inline, TRUE };
}

static void
close_bracket (Writer *inner,
               char    bracket)
{
  inner->level--;
  if (!inner->is_first && inner->is_inline)
    g_string_append (inner->out, bracket == ']' ? "" : " ");
  else if (!inner->is_first)
    new_line (inner);
  g_string_append_c (inner->out, bracket);
}

static void
next_item (Writer  *writer,
           gboolean in_object)
{
  if (!writer->is_first)
    g_string_append_c (writer->out, ',');
  if (!writer->is_inline)
    new_line (writer);
  else if (!writer->is_first || in_object)
    g_string_append_c (writer->out, ' ');
  writer->is_first = FALSE;
}

static void
write_name (Writer     *writer,
            const char *name)
{
  next_item (writer, TRUE);
  tr_json_append_string (writer->out, name);
  g_string_append (writer->out, ": ");
}

/* Text that is kept as it was read: compact, so a comma outside of strings and
 * inner brackets parts two items. */

static gsize
item_length (const char *text)
{
  guint depth = 0;
  gboolean in_string = FALSE;

  for (const char *at = text; *at != '\0'; at++)
    if (in_string && *at == '\\')
      at++;
    else if (*at == '"')
      in_string = !in_string;
    else if (in_string)
      continue;
    else if (*at == '{' || *at == '[')
      depth++;
    else if (depth == 0 && strchr (",]}", *at) != NULL)
      return (gsize) (at - text);
    else if (*at == '}' || *at == ']')
      depth--;

  return strlen (text);
}

static void
write_unknown (Writer     *writer,
               const char *extra)
{
  const char *at = extra != NULL ? extra + 1 : "";

  while (*at != '\0' && *at != '}')
    {
      gsize length = item_length (at), name_length = 1;

      while (at[name_length] != '"')
        name_length += at[name_length] == '\\' ? 2 : 1;
      name_length += 2;          /* the quote and the colon */

      next_item (writer, TRUE);
      g_string_append_len (writer->out, at, (gssize) name_length);
      g_string_append_c (writer->out, ' ');
      g_string_append_len (writer->out, at + name_length, (gssize) (length - name_length));
      at += length + (at[length] == ',' ? 1 : 0);
    }
}

static void
write_opaque (Writer     *outer,
              const char *text)
{
  Writer writer = open_bracket (outer, '[', FALSE);
  const char *at = text != NULL ? text + 1 : "";

  while (*at != '\0' && *at != ']')
    {
      gsize length = item_length (at);

      next_item (&writer, FALSE);
      g_string_append_len (writer.out, at, (gssize) length);
      at += length + (at[length] == ',' ? 1 : 0);
    }
  close_bracket (&writer, ']');
}

/* Values */

static void
write_pair (Writer       *writer,
            const double *pair)
{
  g_string_append_c (writer->out, '[');
  tr_json_append_number (writer->out, pair[0]);
  g_string_append (writer->out, ", ");
  tr_json_append_number (writer->out, pair[1]);
  g_string_append_c (writer->out, ']');
}

static void
write_texts (Writer      *outer,
             char *const *texts)
{
  Writer writer = open_bracket (outer, '[', TRUE);

  for (guint i = 0; texts != NULL && texts[i] != NULL; i++)
    {
      next_item (&writer, FALSE);
      tr_json_append_string (writer.out, texts[i]);
    }
  close_bracket (&writer, ']');
}

static void
write_list (Writer         *outer,
            const TrObject *type,
            GPtrArray      *list)
{
  Writer writer = open_bracket (outer, '[', FALSE);

  for (guint i = 0; i < list->len; i++)
    {
      next_item (&writer, FALSE);
      write_object (&writer, type, g_ptr_array_index (list, i));
    }
  close_bracket (&writer, ']');
}

static void
write_household (Writer *outer,
                 GArray *household)
{
  Writer writer = open_bracket (outer, '{', TRUE);

  for (guint i = 0; i < household->len; i++)
    {
      const TrHousehold *weight = &g_array_index (household, TrHousehold, i);

      write_name (&writer, weight->unit);
      tr_json_append_number (writer.out, weight->grams);
    }
  close_bracket (&writer, '}');
}

static void
write_codes (Writer    *outer,
             GPtrArray *codes)
{
  Writer writer = open_bracket (outer, '{', TRUE);

  for (guint i = 0; i < codes->len; i++)
    {
      const TrCode *code = g_ptr_array_index (codes, i);

      write_name (&writer, code->dough);
      tr_json_append_number (writer.out, code->code);
    }
  close_bracket (&writer, '}');
}

static void
write_orders (Writer    *outer,
              GPtrArray *orders)
{
  Writer writer = open_bracket (outer, '{', FALSE);

  for (guint i = 0; i < orders->len; i++)
    {
      const TrOrder *order = g_ptr_array_index (orders, i);

      write_name (&writer, order->taster);
      write_texts (&writer, order->doughs);
    }
  close_bracket (&writer, '}');
}

/* Members */

static gboolean
is_part_unknown (const TrMember *member,
                 gconstpointer   object)
{
  const TrOwnIngredient *own = object;

  return own->unknown[TR_AT_CONST (object, member, double) - own->per_100g];
}

static gboolean
is_anything_inside (const TrObject *type,
                    gconstpointer   object);

static gboolean
is_number_written (const TrMember *member,
                   double          value)
{
  return tr_is_written (value) && !((member->flags & TR_MEMBER_OMITS_ZERO) && value <= 0);
}

static gboolean
is_member_written (const TrMember *member,
                   gconstpointer   object)
{
  switch (member->type)
    {
    case TR_MEMBER_NUMBER: case TR_MEMBER_PAIR:
      return is_number_written (member, *TR_AT_CONST (object, member, double));
    case TR_MEMBER_PART:
      return is_part_unknown (member, object) || tr_is_written (*TR_AT_CONST (object, member, double));
    case TR_MEMBER_WHOLE: case TR_MEMBER_FLAG: case TR_MEMBER_WORD:
      return *TR_AT_CONST (object, member, int) != member->none || !(member->flags & TR_MEMBER_NULLABLE);
    case TR_MEMBER_TEXT: case TR_MEMBER_TEXTS: case TR_MEMBER_OBJECT: case TR_MEMBER_HOUSEHOLD:
      return *TR_AT_CONST (object, member, gpointer) != NULL;
    case TR_MEMBER_INSIDE:
      return is_anything_inside (member->object, object);
    case TR_MEMBER_FORMAT: case TR_MEMBER_VERSION: case TR_MEMBER_LIST: case TR_MEMBER_OPAQUE:
    case TR_MEMBER_PANTRY: case TR_MEMBER_CODES: case TR_MEMBER_ORDERS:
    default:
      return TRUE;
    }
}

static gboolean
is_anything_inside (const TrObject *type,
                    gconstpointer   object)
{
  for (guint i = 0; i < type->n_members; i++)
    if (is_member_written (&type->members[i], object))
      return TRUE;

  return *tr_object_extra (type, (gpointer) object) != NULL;
}

static void
write_value (Writer         *writer,
             const TrMember *member,
             gconstpointer   object)
{
  GString *out = writer->out;

  switch (member->type)
    {
    case TR_MEMBER_FORMAT:
      tr_json_append_string (out, TR_FORMAT);
      break;
    case TR_MEMBER_VERSION:
      tr_json_append_number (out, TR_FORMAT_VERSION);
      break;
    case TR_MEMBER_NUMBER: case TR_MEMBER_PART:
      tr_json_append_number (out, *TR_AT_CONST (object, member, double));
      break;
    case TR_MEMBER_PAIR:
      write_pair (writer, TR_AT_CONST (object, member, double));
      break;
    case TR_MEMBER_WHOLE:
      tr_json_append_number (out, *TR_AT_CONST (object, member, int));
      break;
    case TR_MEMBER_FLAG:
      g_string_append (out, *TR_AT_CONST (object, member, int) != 0 ? "true" : "false");
      break;
    case TR_MEMBER_WORD:
      tr_json_append_string (out, member->words->id ((guint) *TR_AT_CONST (object, member, int)));
      break;
    case TR_MEMBER_TEXT:
      tr_json_append_string (out, *TR_AT_CONST (object, member, char *));
      break;
    case TR_MEMBER_TEXTS:
      write_texts (writer, *TR_AT_CONST (object, member, char **));
      break;
    case TR_MEMBER_OBJECT:
      write_object (writer, member->object, *TR_AT_CONST (object, member, gpointer));
      break;
    case TR_MEMBER_INSIDE:
      write_object (writer, member->object, object);
      break;
    case TR_MEMBER_LIST:
      write_list (writer, member->object, *TR_AT_CONST (object, member, GPtrArray *));
      break;
    case TR_MEMBER_OPAQUE:
      write_opaque (writer, *TR_AT_CONST (object, member, char *));
      break;
    case TR_MEMBER_PANTRY:
      write_list (writer, member->object, (*TR_AT_CONST (object, member, TrPantry *))->own);
      break;
    case TR_MEMBER_HOUSEHOLD:
      write_household (writer, *TR_AT_CONST (object, member, GArray *));
      break;
    case TR_MEMBER_CODES:
      write_codes (writer, *TR_AT_CONST (object, member, GPtrArray *));
      break;
    case TR_MEMBER_ORDERS:
      write_orders (writer, *TR_AT_CONST (object, member, GPtrArray *));
      break;
    default:
      g_assert_not_reached ();
    }
}

/* Log and plan stand on one line as long as their lists are empty. */
static gboolean
is_on_one_line (const TrObject *type,
                gconstpointer   object)
{
  gboolean has_entries = FALSE;

  for (guint i = 0; i < type->n_members; i++)
    if (type->members[i].type == TR_MEMBER_OPAQUE)
      has_entries |= *TR_AT_CONST (object, &type->members[i], char *) != NULL;
    else if (type->members[i].type == TR_MEMBER_LIST)
      has_entries |= (*TR_AT_CONST (object, &type->members[i], GPtrArray *))->len > 0;

  return type->is_inline || (type->is_short_when_empty && !has_entries);
}

static void
write_object (Writer         *outer,
              const TrObject *type,
              gconstpointer   object)
{
  Writer writer = open_bracket (outer, '{', is_on_one_line (type, object));

  for (guint i = 0; i < type->n_members; i++)
    {
      const TrMember *member = &type->members[i];
      gboolean is_written = is_member_written (member, object);

      if (!is_written && !(member->flags & TR_MEMBER_SAYS_NULL))
        continue;
      write_name (&writer, member->name);
      if (is_written)
        write_value (&writer, member, object);
      else
        g_string_append (writer.out, "null");
    }
  write_unknown (&writer, *tr_object_extra (type, (gpointer) object));
  close_bracket (&writer, '}');
}

void
tr_object_append_text (const TrObject *type,
                       gconstpointer   object,
                       GString        *out)
{
  Writer writer = { out, 0, FALSE, TRUE };

  write_object (&writer, type, object);
}

char *
tr_trial_write (const TrTrial *trial,
                gsize         *length)
{
  GString *out = g_string_sized_new (4096);

  g_return_val_if_fail (trial != NULL, NULL);

  tr_object_append_text (&tr_trial_object, trial, out);
  g_string_append_c (out, '\n');
  if (length != NULL)
    *length = out->len;

  return g_string_free (out, FALSE);
}
