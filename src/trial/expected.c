/* expected.c: what a member takes and where it stands, in words
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every refusal after the scan of the bytes has one form: where (a JSON
 * Pointer, RFC 6901), what was expected, what was found.
 */

#include "members.h"

#include "document.h"

G_DEFINE_QUARK (tr-trial-error-quark, tr_trial_error)

char **
tr_object_extra (const TrObject *type,
                 gpointer        object)
{
  return (char **) (gpointer) ((char *) object + type->extra);
}

gboolean
tr_member_accepts (const TrMember *member,
                   double          value)
{
  return value >= member->min && value <= member->max;
}

static void
append_range (GString        *out,
              const char     *what,
              const TrMember *member)
{
  g_string_append_printf (out, "%s from ", what);
  tr_json_append_number (out, member->min);
  g_string_append (out, " to ");
  tr_json_append_number (out, member->max);
}

static void
append_words (GString       *out,
              const TrWords *words)
{
  g_string_append (out, "one of ");
  for (guint i = 0; i < words->n; i++)
    g_string_append_printf (out, "%s%s", i > 0 ? ", " : "", words->id (i));
}

static void
append_list (GString        *out,
             const TrMember *member)
{
  if (member->max > 0)
    g_string_append_printf (out, "a list of at most %.0f objects", member->max);
  else
    g_string_append (out, "a list of objects");
}

static void
append_text (GString        *out,
             const TrMember *member)
{
  if (member->max > 0)
    g_string_append_printf (out, "a text of at most %.0f bytes", member->max);
  else if (member->flags & TR_MEMBER_FILLED)
    g_string_append (out, "a text that is not empty");
  else
    g_string_append (out, "a text");
}

char *
tr_member_dup_expected (const TrMember *member)
{
  GString *out = g_string_new (NULL);

  switch (member->type)
    {
    case TR_MEMBER_FORMAT: g_string_append (out, "\"" TR_FORMAT "\""); break;
    case TR_MEMBER_VERSION: g_string_append (out, G_STRINGIFY (TR_FORMAT_VERSION)); break;
    case TR_MEMBER_NUMBER: append_range (out, "a number", member); break;
    case TR_MEMBER_PART: append_range (out, "null or a number", member); break;
    case TR_MEMBER_PAIR: append_range (out, "two numbers", member); break;
    case TR_MEMBER_WHOLE: append_range (out, "a whole number", member); break;
    case TR_MEMBER_FLAG: g_string_append (out, "true, false"); break;
    case TR_MEMBER_WORD: append_words (out, member->words); break;
    case TR_MEMBER_TEXT: append_text (out, member); break;
    case TR_MEMBER_TEXTS: g_string_append (out, "a list of texts"); break;
    case TR_MEMBER_OBJECT:
    case TR_MEMBER_INSIDE: g_string_append (out, "an object"); break;
    case TR_MEMBER_PANTRY:
    case TR_MEMBER_LIST: append_list (out, member); break;
    case TR_MEMBER_OPAQUE:
      g_string_append (out, member->flags & TR_MEMBER_OF_OBJECTS ? "a list of objects" : "a list"); break;
    case TR_MEMBER_HOUSEHOLD: append_range (out, "an object of numbers", member); break;
    case TR_MEMBER_CODES: append_range (out, "an object of whole numbers", member); break;
    case TR_MEMBER_ORDERS: g_string_append (out, "an object of lists of texts"); break;
    default: g_assert_not_reached ();
    }
  if (member->flags & TR_MEMBER_NULLABLE)
    g_string_append (out, " or null");

  return g_string_free (out, FALSE);
}

/* Pointers */

gsize
tr_pointer_push (GString    *pointer,
                 const char *name)
{
  gsize length = pointer->len;

  g_string_append_c (pointer, '/');
  for (const char *at = name; *at != '\0'; at++)
    if (*at == '~' || *at == '/')
      g_string_append (pointer, *at == '~' ? "~0" : "~1");
    else
      g_string_append_c (pointer, *at);

  return length;
}

gsize
tr_pointer_push_index (GString *pointer,
                       guint    index)
{
  gsize length = pointer->len;

  g_string_append_printf (pointer, "/%u", index);

  return length;
}

gboolean
tr_pointer_refuse (const GString *pointer,
                   int            code,
                   const char    *expected,
                   const char    *found,
                   GError       **error)
{
  g_set_error (error, TR_TRIAL_ERROR, code, "At %s expected %s, found %s.",
               pointer->len > 0 ? pointer->str : "the top", expected, found);

  return FALSE;
}
