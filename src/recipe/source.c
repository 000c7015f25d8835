/* source.c: what of some bytes is a recipe
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the bytes are is told by their content, never by a name: JSON begins
 * with a bracket, a page has tags, the rest is text.
 */

#include "source.h"

#include <string.h>

GQuark
tr_recipe_error_quark (void)
{
  return g_quark_from_static_string ("tr-recipe-error");
}

TrStated *
tr_stated_new (TrRecipeSourceKind kind)
{
  TrStated *stated = g_new0 (TrStated, 1);

  stated->kind = kind;
  stated->title = g_strdup ("");
  stated->yields = g_ptr_array_new_with_free_func (g_free);
  stated->ingredients = g_ptr_array_new_with_free_func (g_free);
  stated->steps = g_ptr_array_new_with_free_func (g_free);
  return stated;
}

void
tr_stated_free (TrStated *stated)
{
  if (stated == NULL)
    return;
  g_free (stated->title);
  g_ptr_array_unref (stated->yields);
  g_ptr_array_unref (stated->ingredients);
  g_ptr_array_unref (stated->steps);
  g_free (stated);
}

void
tr_source_free (TrSource *source)
{
  if (source == NULL)
    return;
  g_ptr_array_unref (source->stated);
  g_ptr_array_unref (source->remarks);
  g_free (source->text);
  g_free (source->heading);
  g_free (source);
}

G_GNUC_PRINTF (3, 4) static gpointer
refuse (GError        **error,
        TrRecipeError   code,
        const char     *format,
        ...)
{
  va_list arguments;
  g_autofree char *sentence = NULL;

  va_start (arguments, format);
  sentence = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error_literal (error, TR_RECIPE_ERROR, (int) code, sentence);
  return NULL;
}

/* A NUL, or more than one sign in a hundred that no text has. */
static gboolean
is_binary (const char *bytes,
           gsize       length)
{
  gsize n = 0;

  for (gsize i = 0; i < length; i++)
    {
      guchar c = (guchar) bytes[i];

      if (c == '\0')
        return TRUE;
      n += c < ' ' && !g_ascii_isspace (c) && c != 0x0B ? 1 : 0;
      n += c == 0x7F ? 1 : 0;
    }
  return n > 2 + length / 100;
}

static char *
convert (const char *bytes,
         gsize       length,
         const char *from)
{
  return g_convert (bytes, (gssize) length, "UTF-8", from, NULL, NULL, NULL);
}

/* Every other byte a zero, as English is in two bytes a letter. */
static gboolean
looks_like_utf16 (const char *bytes,
                  gsize       length)
{
  gsize n[2] = { 0, 0 };

  for (gsize i = 0; i < MIN (length, 4096); i++)
    n[i % 2] += bytes[i] == '\0' ? 1 : 0;
  return MIN (n[0], n[1]) == 0 && MAX (n[0], n[1]) * 10 >= MIN (length, 4096) * 4;
}

static char *
dup_utf8 (const char  *bytes,
          gsize        length,
          GError     **error)
{
  char *text = NULL;

  if (length >= 2 && (memcmp (bytes, "\xFF\xFE", 2) == 0 || memcmp (bytes, "\xFE\xFF", 2) == 0))
    {
      text = convert (bytes, length, "UTF-16");
      if (text != NULL && strlen (text) > 0 && !is_binary (text, strlen (text)))
        return text;
      g_free (text);
      return refuse (error, TR_RECIPE_ERROR_NOT_TEXT, "This is not text; expected a recipe as text, a web page or JSON-LD.");
    }
  if (looks_like_utf16 (bytes, length) && (text = convert (bytes, length & ~(gsize) 1, bytes[0] == '\0' ? "UTF-16BE" : "UTF-16LE")) != NULL)
    {
      if (*text != '\0' && strlen (text) >= length / 4 && !is_binary (text, strlen (text)))
        return text;
      g_free (text);
    }
  if (length >= 3 && memcmp (bytes, "\xEF\xBB\xBF", 3) == 0)
    {
      bytes += 3;
      length -= 3;
    }
  if (is_binary (bytes, length))
    return refuse (error, TR_RECIPE_ERROR_NOT_TEXT, "This is not text but something like a picture, a PDF or a program; expected a recipe as text, a web page or JSON-LD.");
  if (g_utf8_validate (bytes, (gssize) length, NULL))
    return g_strndup (bytes, length);
  /* what an old page that says nothing about its letters is most likely in */
  text = convert (bytes, length, "WINDOWS-1252");
  if (text != NULL)
    return text;
  return g_utf8_make_valid (bytes, (gssize) length);
}

static gboolean
is_blank (const char *text)
{
  for (; *text != '\0'; text = g_utf8_next_char (text))
    if (!g_unichar_isspace (g_utf8_get_char (text)))
      return FALSE;
  return TRUE;
}

/* A tag that text would not hold by chance. */
static gboolean
has_tags (const char *text)
{
  static const char *const tags[] = {
    "!doctype", "html", "head", "body", "div", "span", "p", "li", "ul", "ol", "br", "script", "table", "tr", "td", "h1",
    "h2", "h3", "meta", "section", "article", "main", "b", "strong", "em", "a",
  };

  for (const char *p = strchr (text, '<'); p != NULL; p = strchr (p + 1, '<'))
    for (gsize i = 0; i < G_N_ELEMENTS (tags); i++)
      {
        gsize n = strlen (tags[i]);

        if (g_ascii_strncasecmp (p + 1, tags[i], n) == 0 && (p[1 + n] == '>' || p[1 + n] == ' ' || p[1 + n] == '/' || p[1 + n] == '\n'))
          return TRUE;
      }
  return FALSE;
}

static void
read_page (TrSource   *source,
           const char *text)
{
  TrMarkup markup;

  source->is_page = TRUE;
  tr_markup_read (&markup, text);
  for (guint i = 0; i < markup.scripts->len; i++)
    {
      g_autofree char *what = g_strdup_printf ("The JSON-LD number %u of the page", i + 1);

      tr_json_ld_read (source, markup.scripts->pdata[i], what);
    }
  if (source->stated->len == 0 && markup.is_recipe && markup.microdata->ingredients->len > 0)
    g_ptr_array_add (source->stated, g_steal_pointer (&markup.microdata));
  source->text = g_strdup (markup.text->str);
  if (markup.heading != NULL)
    source->heading = g_utf8_make_valid (markup.heading, -1);
  tr_markup_clear (&markup);
}

static gboolean
looks_like_json (const char *text)
{
  text += strspn (text, " \t\r\n");
  return (*text == '{' || *text == '[') &&
         (strstr (text, "\"@type\"") != NULL || strstr (text, "\"recipeIngredient\"") != NULL || strstr (text, "\"@graph\"") != NULL ||
          strstr (text, "\"format\"") != NULL || strstr (text, "\": ") != NULL);
}

static gboolean
read_json (TrSource    *source,
           const char  *text,
           GError     **error)
{
  if (strstr (text, "\"tourier-trial\"") != NULL && strstr (text, "\"@type\"") == NULL)
    {
      refuse (error, TR_RECIPE_ERROR_NO_RECIPE, "This is a trial, not a recipe; open it instead.");
      return FALSE;
    }
  if (!tr_json_ld_read (source, text, "The text"))
    {
      const char *why = source->remarks->pdata[source->remarks->len - 1];

      refuse (error, TR_RECIPE_ERROR_NO_RECIPE, "%s", why);
      return FALSE;
    }
  if (source->stated->len == 0)
    {
      refuse (error, TR_RECIPE_ERROR_NO_RECIPE, "This JSON holds no object of the schema.org type Recipe.");
      return FALSE;
    }
  return TRUE;
}

static TrSource *
source_new (void)
{
  TrSource *source = g_new0 (TrSource, 1);

  source->stated = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_stated_free);
  source->remarks = g_ptr_array_new_with_free_func (g_free);
  return source;
}

TrSource *
tr_source_read (const char  *bytes,
                gsize        length,
                GError     **error)
{
  g_autoptr (TrSource) source = NULL;
  g_autofree char *text = NULL;

  if (length > TR_RECIPE_MAX_BYTES)
    return refuse (error, TR_RECIPE_ERROR_TOO_LARGE, "%.1f MiB are too much: a page of at most %d MiB is read.",
                   (double) length / 1048576, TR_RECIPE_MAX_BYTES / 1048576);
  if (length == 0)
    return refuse (error, TR_RECIPE_ERROR_EMPTY, "There is nothing to read: the text is empty.");
  text = dup_utf8 (bytes, length, error);
  if (text == NULL)
    return NULL;
  if (is_blank (text))
    return refuse (error, TR_RECIPE_ERROR_EMPTY, "There is nothing to read: the text is empty.");

  source = source_new ();
  if (has_tags (text) && !looks_like_json (text))
    read_page (source, text);
  else if (!looks_like_json (text))
    source->text = g_steal_pointer (&text);
  else if (!read_json (source, text, error))
    return NULL;
  if (source->stated->len == 0 && strlen (source->text) > TR_RECIPE_MAX_TEXT_BYTES)
    return refuse (error, TR_RECIPE_ERROR_TOO_LARGE,
                   "%.1f MiB of text are too much: a recipe of at most %d MiB is read. Nothing was changed; paste only the recipe.",
                   (double) strlen (source->text) / 1048576, TR_RECIPE_MAX_TEXT_BYTES / 1048576);
  return g_steal_pointer (&source);
}
