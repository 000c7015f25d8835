/* json-ld.c: the schema.org type Recipe, in JSON-LD
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Source of the shapes: schema.org, types Recipe, HowToStep, HowToSection and
 * ItemList; JSON-LD 1.1 (W3C Recommendation, 2020), sections 1.7 and 9 for
 * @graph, @type, @value and @list. Pages often hold JSON that is not quite:
 * line breaks inside strings, a comma too many, a comment around the whole.
 * Those three are mended, and said; anything else is refused with its place.
 */

#include "source.h"

#include <string.h>

#include "../trial/strict.h"

#define MAX_DEPTH 64

static gboolean
is_recipe_type (JsonNode *node)
{
  if (node == NULL)
    return FALSE;
  if (JSON_NODE_HOLDS_ARRAY (node))
    {
      JsonArray *types = json_node_get_array (node);

      for (guint i = 0; i < json_array_get_length (types); i++)
        if (is_recipe_type (json_array_get_element (types, i)))
          return TRUE;
      return FALSE;
    }
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_STRING)
    return FALSE;

  const char *type = json_node_get_string (node);
  return strcmp (type, "Recipe") == 0 || g_str_has_suffix (type, "/Recipe") || strcmp (type, "schema:Recipe") == 0;
}

static JsonNode *
get_member (JsonObject *object,
            const char *name)
{
  g_autofree char *prefixed = g_strconcat ("schema:", name, NULL);
  g_autofree char *full = g_strconcat ("https://schema.org/", name, NULL);
  g_autofree char *old = g_strconcat ("http://schema.org/", name, NULL);
  const char *names[] = { name, prefixed, full, old };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    if (json_object_has_member (object, names[i]))
      return json_object_get_member (object, names[i]);
  return NULL;
}

static void collect (JsonNode *node, GPtrArray *texts, guint depth);

/* The first text of a member; NULL: none. */
static char *
dup_first (JsonObject *object,
           const char *name,
           guint       depth)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  JsonNode *node = get_member (object, name);

  if (node != NULL)
    collect (node, texts, depth + 1);
  return texts->len > 0 ? g_strdup (texts->pdata[0]) : NULL;
}

/* A value with its unit and what it is of: {"value": 500, "unitText": "g",
 * "name": "flour"}. Codes of units are those of UN/ECE recommendation 20. */
static gboolean
collect_quantity (JsonObject *object,
                  GPtrArray  *texts,
                  guint       depth)
{
  static const struct { const char *code, *unit; } codes[] = {
    { "GRM", "g" }, { "KGM", "kg" }, { "MLT", "ml" }, { "LTR", "l" }, { "ONZ", "oz" }, { "LBR", "lb" },
  };
  g_autofree char *value = dup_first (object, "value", depth);
  g_autofree char *unit = NULL, *code = NULL, *name = NULL, *text = NULL;

  /* nothing below is walked twice */
  if (value == NULL)
    return FALSE;
  unit = dup_first (object, "unitText", depth);
  code = dup_first (object, "unitCode", depth);
  name = dup_first (object, "name", depth);
  for (gsize i = 0; unit == NULL && code != NULL && i < G_N_ELEMENTS (codes); i++)
    if (strcmp (code, codes[i].code) == 0)
      unit = g_strdup (codes[i].unit);
  text = g_strjoin (" ", value, unit != NULL ? unit : code != NULL ? code : "", name != NULL ? name : "", NULL);
  g_ptr_array_add (texts, g_strdup (g_strstrip (text)));
  return TRUE;
}

static void
collect_object (JsonObject *object,
                GPtrArray  *texts,
                guint       depth)
{
  static const char *const members[] = { "@value", "@list", "text", "itemListElement" };
  JsonNode *name = get_member (object, "name");
  gboolean has_text = json_object_has_member (object, "text") || json_object_has_member (object, "schema:text");

  if (collect_quantity (object, texts, depth))
    return;
  /* the name of a step that has a text says it again; a section's is its heading */
  if (name != NULL && !has_text)
    collect (name, texts, depth + 1);
  for (gsize i = 0; i < G_N_ELEMENTS (members); i++)
    {
      JsonNode *member = get_member (object, members[i]);

      if (member != NULL)
        collect (member, texts, depth + 1);
    }
}

/* A text by its lines, those of the string and those of its markup. */
static void
collect_lines (const char *text,
               GPtrArray  *texts)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_autofree char *plain = tr_markup_dup_plain (lines[i]);
      g_auto (GStrv) parts = g_strsplit (plain, "\n", -1);

      for (guint k = 0; parts[k] != NULL; k++)
        if (*g_strstrip (parts[k]) != '\0')
          g_ptr_array_add (texts, g_strdup (parts[k]));
    }
}

/* Every text of a value, in order. */
static void
collect (JsonNode  *node,
         GPtrArray *texts,
         guint      depth)
{
  if (depth > MAX_DEPTH)
    return;
  if (JSON_NODE_HOLDS_ARRAY (node))
    {
      JsonArray *array = json_node_get_array (node);

      for (guint i = 0; i < json_array_get_length (array); i++)
        collect (json_array_get_element (array, i), texts, depth + 1);
    }
  else if (JSON_NODE_HOLDS_OBJECT (node))
    collect_object (json_node_get_object (node), texts, depth);
  else if (JSON_NODE_HOLDS_VALUE (node))
    {
      g_autofree char *plain = NULL;

      if (json_node_get_value_type (node) == G_TYPE_STRING)
        collect_lines (json_node_get_string (node), texts);
      else if (json_node_get_value_type (node) == G_TYPE_INT64)
        plain = g_strdup_printf ("%" G_GINT64_FORMAT, json_node_get_int (node));
      else if (json_node_get_value_type (node) == G_TYPE_DOUBLE)
        plain = g_strdup_printf ("%g", json_node_get_double (node));
      if (plain != NULL && *plain != '\0')
        g_ptr_array_add (texts, g_steal_pointer (&plain));
    }
}

static void
collect_member (JsonObject *object,
                const char *name,
                GPtrArray  *texts)
{
  JsonNode *node = get_member (object, name);

  if (node != NULL)
    collect (node, texts, 0);
}

static gboolean
is_same_list (GPtrArray *a,
              GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (strcmp (a->pdata[i], b->pdata[i]) != 0)
      return FALSE;
  return TRUE;
}

static void
add_recipe (TrSource   *source,
            JsonObject *object)
{
  TrStated *stated = tr_stated_new (TR_RECIPE_FROM_JSON_LD);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);

  collect_member (object, "name", names);
  if (names->len == 0)
    collect_member (object, "headline", names);
  if (names->len > 0)
    {
      g_free (stated->title);
      stated->title = g_strdup (names->pdata[0]);
    }
  collect_member (object, "recipeIngredient", stated->ingredients);
  if (stated->ingredients->len == 0)
    collect_member (object, "ingredients", stated->ingredients);
  collect_member (object, "recipeYield", stated->yields);
  if (stated->yields->len == 0)
    collect_member (object, "yield", stated->yields);
  collect_member (object, "recipeInstructions", stated->steps);
  for (guint i = 0; i < source->stated->len; i++)
    {
      const TrStated *other = source->stated->pdata[i];

      if (strcmp (other->title, stated->title) == 0 && is_same_list (other->ingredients, stated->ingredients))
        {
          tr_stated_free (stated);
          return;
        }
    }
  g_ptr_array_add (source->stated, stated);
}

static void
walk (TrSource *source,
      JsonNode *node,
      guint     depth)
{
  if (depth > MAX_DEPTH)
    return;
  if (JSON_NODE_HOLDS_ARRAY (node))
    {
      JsonArray *array = json_node_get_array (node);

      for (guint i = 0; i < json_array_get_length (array); i++)
        walk (source, json_array_get_element (array, i), depth + 1);
    }
  else if (JSON_NODE_HOLDS_OBJECT (node))
    {
      JsonObject *object = json_node_get_object (node);
      g_autoptr (GList) names = NULL;

      if (json_object_has_member (object, "@type") && is_recipe_type (json_object_get_member (object, "@type")))
        {
          add_recipe (source, object);
          return;
        }
      names = json_object_get_members (object);
      for (GList *l = names; l != NULL; l = l->next)
        walk (source, json_object_get_member (object, l->data), depth + 1);
    }
}

/* Without the comment or CDATA mark that some put around it. */
static void
trim_wrapping (const char **start,
               gsize       *length)
{
  static const char *const before[] = { "//<![CDATA[", "<![CDATA[", "/*<![CDATA[*/", "<!--", "\xEF\xBB\xBF" };
  static const char *const after[] = { "//]]>", "/*]]>*/", "]]>", "-->", ";" };

  for (gboolean again = TRUE; again;)
    {
      again = FALSE;
      for (; *length > 0 && g_ascii_isspace (**start); ++*start, --*length)
        ;
      for (; *length > 0 && g_ascii_isspace ((*start)[*length - 1]); --*length)
        ;
      for (gsize i = 0; i < G_N_ELEMENTS (before); i++)
        {
          gsize n = strlen (before[i]), m = strlen (after[i]);

          if (*length >= n && strncmp (*start, before[i], n) == 0)
            {
              *start += n;
              *length -= n;
              again = TRUE;
            }
          if (*length >= m && strncmp (*start + *length - m, after[i], m) == 0)
            {
              *length -= m;
              again = TRUE;
            }
        }
    }
}

/* Line breaks inside strings become spaces, a comma before a bracket goes. */
static char *
dup_mended (const char *text,
            gsize       length,
            gsize      *mended_length)
{
  GString *out = g_string_sized_new (length);
  gboolean is_in_string = FALSE;

  for (gsize i = 0; i < length; i++)
    {
      char c = text[i];

      if (is_in_string && c == '\\' && i + 1 < length)
        {
          /* an escape that JSON has not loses its backslash */
          if (strchr ("\"\\/bfnrtu", text[i + 1]) != NULL)
            g_string_append_c (out, c);
          g_string_append_c (out, text[++i]);
          continue;
        }
      if (c == '"')
        is_in_string = !is_in_string;
      if (is_in_string && (guchar) c < ' ')
        c = ' ';
      if (!is_in_string && (c == '}' || c == ']'))
        {
          gsize end = out->len;

          while (end > 0 && g_ascii_isspace (out->str[end - 1]))
            end--;
          if (end > 0 && out->str[end - 1] == ',')
            g_string_truncate (out, end - 1);
        }
      g_string_append_c (out, c);
    }
  *mended_length = out->len;
  return g_string_free (out, FALSE);
}

gboolean
tr_json_ld_read (TrSource   *source,
                 const char *text,
                 const char *what)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *mended = NULL;
  const char *start = text;
  gsize length = strlen (text), mended_length;
  JsonNode *node;

  trim_wrapping (&start, &length);
  node = tr_strict_parse (start, length, &error);
  if (node == NULL)
    {
      mended = dup_mended (start, length, &mended_length);
      node = tr_strict_parse (mended, mended_length, NULL);
      g_ptr_array_add (source->remarks, g_strdup_printf ("%s is not valid JSON%s: %s", what, node != NULL ? " and was mended" : " and is left out", error->message));
    }
  if (node == NULL)
    return FALSE;
  walk (source, node, 0);
  json_node_unref (node);
  return TRUE;
}
