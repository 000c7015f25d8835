/* markup.c: the readable text of a web page
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * No parser of HTML: one walk over the bytes that knows which elements end a
 * line, which hold nothing to read, what the entities of western text are, and
 * where scripts hold JSON-LD. Broken markup costs some layout, never an error,
 * and every byte is looked at a fixed number of times.
 */

#include "source.h"

#include <string.h>

#define MAX_NAME_BYTES 16
#define MAX_ATTRIBUTE_BYTES 2048
#define MAX_HEADING_BYTES 200

static const struct { const char *name; gunichar c; } entities[] = {
  { "amp", '&' }, { "lt", '<' }, { "gt", '>' }, { "quot", '"' }, { "apos", '\'' }, { "nbsp", 0xA0 }, { "shy", 0xAD },
  { "frac12", 0xBD }, { "half", 0xBD }, { "frac14", 0xBC }, { "frac34", 0xBE }, { "frac13", 0x2153 }, { "frac23", 0x2154 },
  { "frac15", 0x2155 }, { "frac18", 0x215B }, { "frac38", 0x215C }, { "frac58", 0x215D }, { "frac78", 0x215E },
  { "frasl", 0x2044 }, { "deg", 0xB0 }, { "ndash", 0x2013 }, { "mdash", 0x2014 }, { "minus", 0x2212 }, { "times", 0xD7 },
  { "lsquo", 0x2018 }, { "rsquo", 0x2019 }, { "ldquo", 0x201C }, { "rdquo", 0x201D }, { "hellip", 0x2026 },
  { "bull", 0x2022 }, { "middot", 0xB7 }, { "ensp", ' ' }, { "emsp", ' ' }, { "thinsp", ' ' }, { "zwj", 0x200D },
  { "zwnj", 0x200C }, { "reg", 0xAE }, { "copy", 0xA9 }, { "trade", 0x2122 }, { "ordm", 0xBA }, { "ordf", 0xAA },
  { "agrave", 0xE0 }, { "aacute", 0xE1 }, { "acirc", 0xE2 }, { "atilde", 0xE3 }, { "auml", 0xE4 }, { "aring", 0xE5 },
  { "aelig", 0xE6 }, { "ccedil", 0xE7 }, { "egrave", 0xE8 }, { "eacute", 0xE9 }, { "ecirc", 0xEA }, { "euml", 0xEB },
  { "icirc", 0xEE }, { "iuml", 0xEF }, { "iacute", 0xED }, { "ntilde", 0xF1 }, { "oacute", 0xF3 }, { "ocirc", 0xF4 },
  { "ouml", 0xF6 }, { "oslash", 0xF8 }, { "ugrave", 0xF9 }, { "uacute", 0xFA }, { "ucirc", 0xFB }, { "uuml", 0xFC },
  { "szlig", 0xDF }, { "Eacute", 0xC9 }, { "oelig", 0x153 },
};

static const char *const blocks[] = {
  "address", "article", "aside", "blockquote", "body", "br", "button", "dd", "div", "dl", "dt", "fieldset", "figure",
  "figcaption", "footer", "form", "h1", "h2", "h3", "h4", "h5", "h6", "header", "hr", "html", "label", "li", "main",
  "nav", "ol", "option", "p", "pre", "section", "select", "summary", "table", "tbody", "thead", "tr", "ul", "title",
};
static const char *const unread[] = { "script", "style", "template", "svg", "noscript", "iframe", "textarea" };

static gboolean
is_one_of (const char        *name,
           const char *const *names,
           gsize              n)
{
  for (gsize i = 0; i < n; i++)
    if (strcmp (name, names[i]) == 0)
      return TRUE;
  return FALSE;
}

/* The character of an entity at `p`; `length` 0: it is none. */
static gunichar
read_entity (const char *p,
             gsize      *length)
{
  gsize n = strcspn (p + 1, "; <&\n");
  char *end;
  gunichar c = 0;

  *length = 0;
  if (n == 0 || n > 10 || p[1 + n] != ';')
    return 0;
  if (p[1] == '#')
    {
      gboolean is_hex = p[2] == 'x' || p[2] == 'X';
      guint64 value = g_ascii_strtoull (p + (is_hex ? 3 : 2), &end, is_hex ? 16 : 10);

      c = end == p + 1 + n && value > 0 && value <= 0x10FFFF ? (gunichar) value : 0;
    }
  for (gsize i = 0; c == 0 && i < G_N_ELEMENTS (entities); i++)
    if (strlen (entities[i].name) == n && strncmp (entities[i].name, p + 1, n) == 0)
      c = entities[i].c;
  if (c == 0 || !g_unichar_validate (c))
    return 0;
  *length = n + 2;
  return c;
}

static void
append_text (GString    *out,
             const char *p,
             gsize       length)
{
  for (const char *end = p + length; p < end;)
    {
      gsize n = 0;
      gunichar c = *p == '&' ? read_entity (p, &n) : 0;

      if (n > 0 && p + n <= end)
        {
          if (c >= ' ')
            g_string_append_unichar (out, c);
          p += n;
          continue;
        }
      if (g_ascii_isspace (*p))
        {
          if (out->len > 0 && !g_ascii_isspace (out->str[out->len - 1]))
            g_string_append_c (out, ' ');
        }
      else
        g_string_append_c (out, *p);
      p++;
    }
}

static void
end_line (GString *out)
{
  if (out->len > 0 && out->str[out->len - 1] != '\n')
    g_string_append_c (out, '\n');
}

static void
append_cell (GString *out)
{
  if (out->len > 0 && out->str[out->len - 1] != '\n')
    g_string_append_c (out, '\t');
}

typedef struct {
  char name[MAX_NAME_BYTES];     /* small letters; "": no tag */
  gboolean is_closing;
  const char *attributes, *end;  /* end is the '>' */
} Tag;

static void
read_tag (const char *p,
          const char *close,
          Tag        *tag)
{
  gsize n = 0;

  *tag = (Tag) { .end = close };
  p++;
  if (*p == '/')
    {
      tag->is_closing = TRUE;
      p++;
    }
  for (; g_ascii_isalnum (*p); p++, n++)
    if (n < MAX_NAME_BYTES - 1)
      tag->name[n] = g_ascii_tolower (*p);
  if (n >= MAX_NAME_BYTES)
    tag->name[0] = '\0';
  tag->attributes = p;
}

/* The value of an attribute, NULL: it is not there. */
static char *
dup_attribute (const Tag  *tag,
               const char *name)
{
  gsize length = strlen (name);
  gsize size = MIN ((gsize) (tag->end - tag->attributes), MAX_ATTRIBUTE_BYTES);

  for (const char *p = tag->attributes; p + length < tag->attributes + size; p++)
    {
      const char *value = p + length;
      gsize n;

      if (g_ascii_strncasecmp (p, name, length) != 0 || (p > tag->attributes && !g_ascii_isspace (p[-1])))
        continue;
      while (g_ascii_isspace (*value))
        value++;
      if (*value != '=')
        continue;
      for (value++; g_ascii_isspace (*value); value++)
        ;
      if (*value == '"' || *value == '\'')
        {
          const char *stop = memchr (value + 1, *value, (gsize) (tag->end - value));

          return g_strndup (value + 1, stop != NULL ? (gsize) (stop - value - 1) : (gsize) (tag->end - value - 1));
        }
      n = strcspn (value, " \t\r\n>");
      return g_strndup (value, MIN (n, (gsize) (tag->end - value)));
    }
  return NULL;
}

static const char *
find_close (const char *p,
            const char *name)
{
  gsize length = strlen (name);

  for (p = strstr (p, "</"); p != NULL; p = strstr (p + 2, "</"))
    if (g_ascii_strncasecmp (p + 2, name, length) == 0)
      return p;
  return NULL;
}

/* Microdata: the text of an element that states something. */
typedef struct { char *property, name[MAX_NAME_BYTES]; GString *text; guint depth; } Capture;

static void
state (TrStated   *stated,
       const char *property,
       const char *text)
{
  g_autofree char *plain = g_strstrip (g_strdup (text));

  if (*plain == '\0')
    return;
  if (strcmp (property, "recipeIngredient") == 0 || strcmp (property, "ingredients") == 0)
    g_ptr_array_add (stated->ingredients, g_steal_pointer (&plain));
  else if (strcmp (property, "recipeYield") == 0)
    g_ptr_array_add (stated->yields, g_steal_pointer (&plain));
  else if (strcmp (property, "recipeInstructions") == 0)
    g_ptr_array_add (stated->steps, g_steal_pointer (&plain));
  else if (strcmp (property, "name") == 0 && *stated->title == '\0')
    {
      g_free (stated->title);
      stated->title = g_steal_pointer (&plain);
    }
}

static void
end_capture (TrMarkup *markup,
             Capture  *capture)
{
  if (capture->text == NULL)
    return;
  state (markup->microdata, capture->property, capture->text->str);
  g_string_free (capture->text, TRUE);
  g_free (capture->property);
  *capture = (Capture) { NULL };
}

static void
begin_capture (TrMarkup  *markup,
               Capture   *capture,
               const Tag *tag)
{
  g_autofree char *type = dup_attribute (tag, "itemtype");
  g_autofree char *property = dup_attribute (tag, "itemprop");
  g_autofree char *content = dup_attribute (tag, "content");

  if (type != NULL && g_str_has_suffix (type, "/Recipe"))
    markup->is_recipe = TRUE;
  if (!markup->is_recipe || property == NULL || type != NULL)
    return;
  if (content != NULL)
    {
      g_autofree char *plain = tr_markup_dup_plain (content);

      state (markup->microdata, property, plain);
      return;
    }
  if (capture->text == NULL && is_one_of (property, (const char *const[]) { "recipeIngredient", "ingredients", "recipeYield", "name", "recipeInstructions" }, 5))
    {
      capture->property = g_steal_pointer (&property);
      g_strlcpy (capture->name, tag->name, sizeof capture->name);
      capture->text = g_string_new (NULL);
      capture->depth = 0;
    }
}

static void
follow_capture (TrMarkup  *markup,
                Capture   *capture,
                const Tag *tag)
{
  if (capture->text == NULL)
    {
      if (!tag->is_closing)
        begin_capture (markup, capture, tag);
      return;
    }
  if (is_one_of (tag->name, blocks, G_N_ELEMENTS (blocks)))
    end_line (capture->text);
  if (strcmp (tag->name, capture->name) != 0)
    return;
  if (!tag->is_closing)
    capture->depth++;
  else if (capture->depth-- == 0)
    end_capture (markup, capture);
}

/* Returns where reading goes on. */
static const char *
skip_unread (TrMarkup   *markup,
             const Tag  *tag)
{
  g_autofree char *type = dup_attribute (tag, "type");
  const char *start = tag->end + 1, *close = find_close (start, tag->name);

  if (close == NULL)
    close = start + strlen (start);
  if (strcmp (tag->name, "script") == 0 && type != NULL && strstr (type, "ld+json") != NULL)
    g_ptr_array_add (markup->scripts, g_strndup (start, (gsize) (close - start)));
  return close;
}

static void
append_tag (TrMarkup  *markup,
            const Tag *tag)
{
  if (strcmp (tag->name, "td") == 0 || strcmp (tag->name, "th") == 0)
    {
      if (!tag->is_closing)
        append_cell (markup->text);
    }
  else if (is_one_of (tag->name, blocks, G_N_ELEMENTS (blocks)))
    end_line (markup->text);
  if (strcmp (tag->name, "h1") != 0 || markup->heading != NULL)
    return;
  if (!tag->is_closing)
    markup->heading_at = markup->text->len;
  else if (markup->heading_at < markup->text->len)
    markup->heading = g_strstrip (g_strndup (markup->text->str + markup->heading_at, MIN (markup->text->len - markup->heading_at, MAX_HEADING_BYTES)));
}

static const char *
read_markup_tag (TrMarkup   *markup,
                 Capture    *capture,
                 const char *p,
                 const char *close)
{
  Tag tag;

  read_tag (p, close, &tag);
  if (!tag.is_closing && is_one_of (tag.name, unread, G_N_ELEMENTS (unread)))
    return skip_unread (markup, &tag);
  follow_capture (markup, capture, &tag);
  append_tag (markup, &tag);
  return close + 1;
}

void
tr_markup_read (TrMarkup   *markup,
                const char *text)
{
  Capture capture = { NULL };
  const char *p = text;

  *markup = (TrMarkup) { g_string_new (NULL), g_ptr_array_new_with_free_func (g_free), tr_stated_new (TR_RECIPE_FROM_MICRODATA), FALSE, NULL, 0 };
  while (*p != '\0')
    {
      gsize n = strcspn (p, "<");
      const char *close;

      append_text (markup->text, p, n);
      if (capture.text != NULL)
        append_text (capture.text, p, n);
      p += n;
      if (*p == '\0')
        break;
      if (g_str_has_prefix (p, "<!--"))
        {
          close = strstr (p, "-->");
          p = close != NULL ? close + 3 : p + strlen (p);
          continue;
        }
      close = g_ascii_isalpha (p[1]) || p[1] == '/' || p[1] == '!' || p[1] == '?' ? strchr (p, '>') : NULL;
      if (close == NULL)
        {
          /* no tag; without any '>' after it there is none to come */
          n = g_ascii_isalpha (p[1]) || p[1] == '/' || p[1] == '!' || p[1] == '?' ? strlen (p) : 1;
          append_text (markup->text, p, n);
          p += n;
          continue;
        }
      p = read_markup_tag (markup, &capture, p, close);
    }
  end_capture (markup, &capture);
}

void
tr_markup_clear (TrMarkup *markup)
{
  g_string_free (markup->text, TRUE);
  g_ptr_array_unref (markup->scripts);
  tr_stated_free (markup->microdata);
  g_free (markup->heading);
}

char *
tr_markup_dup_plain (const char *text)
{
  TrMarkup markup;
  char *plain;

  /* entities are escaped twice by some: &amp;frac12; */
  tr_markup_read (&markup, text);
  if (strchr (markup.text->str, '&') != NULL)
    {
      GString *again = g_string_new (NULL);
      g_auto (GStrv) lines = g_strsplit (markup.text->str, "\n", -1);

      for (guint i = 0; lines[i] != NULL; i++)
        {
          if (i > 0)
            g_string_append_c (again, '\n');
          append_text (again, lines[i], strlen (lines[i]));
        }
      g_string_free (markup.text, TRUE);
      markup.text = again;
    }
  plain = g_strstrip (g_strdup (markup.text->str));
  tr_markup_clear (&markup);
  return plain;
}
