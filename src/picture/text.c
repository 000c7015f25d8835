/* text.c: one line of text at a baseline
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Figures are tabular, hinting is off and the language is fixed, so that a
 * width measured without a surface is the width drawn on any surface, and
 * grows in proportion with the size. So everything is laid out at one size
 * and scaled when it is drawn: a card has a dozen sizes of type, and loading
 * a font for each of them costs more than all the rest of it. One layout a
 * thread is kept for the same reason, and the widths of what was measured,
 * because a page is laid out several times until it fits.
 */

#include "shapes.h"

#include <string.h>

#include <pango/pangocairo.h>

/* Everything is laid out at this size. */
#define LAID_OUT_AT 16.0

static PangoLayout *
make_layout (void)
{
  PangoContext *context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  PangoAttrList *attributes = pango_attr_list_new ();
  cairo_font_options_t *options = cairo_font_options_create ();
  PangoLayout *layout;

  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);
  pango_context_set_round_glyph_positions (context, FALSE);
  pango_context_set_language (context, pango_language_from_string ("en"));
  pango_context_set_base_dir (context, PANGO_DIRECTION_LTR);

  layout = pango_layout_new (context);
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
  g_object_unref (context);
  return layout;
}

/* Borrowed, with the text set and no width. */
static PangoLayout *
get_layout (const TrLook *look,
            const char   *text,
            int           weight)
{
  static GPrivate kept = G_PRIVATE_INIT (g_object_unref);
  PangoLayout *layout = g_private_get (&kept);
  PangoFontDescription *font = pango_font_description_new ();

  if (layout == NULL)
    {
      layout = make_layout ();
      g_private_set (&kept, layout);
    }
  pango_font_description_set_family_static (font, look->font);
  pango_font_description_set_weight (font, (PangoWeight) weight);
  pango_font_description_set_absolute_size (font, LAID_OUT_AT * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_width (layout, -1);
  pango_layout_set_text (layout, text, -1);
  return layout;
}

/* What a width depends on besides the size. */
typedef struct { char *text, *font; int weight; } Measured;

/* Enough for a card; a thread that measured more starts afresh. */
#define MAX_MEASURED 4096

static guint
hash_measured (gconstpointer data)
{
  const Measured *measured = data;

  return g_str_hash (measured->text) ^ (guint) measured->weight;
}

static gboolean
equal_measured (gconstpointer a,
                gconstpointer b)
{
  const Measured *one = a, *other = b;

  return one->weight == other->weight && g_str_equal (one->text, other->text) && g_str_equal (one->font, other->font);
}

static void
free_measured (gpointer data)
{
  Measured *measured = data;

  g_free (measured->text);
  g_free (measured->font);
  g_free (measured);
}

static GHashTable *
get_widths (void)
{
  static GPrivate kept = G_PRIVATE_INIT ((GDestroyNotify) g_hash_table_unref);
  GHashTable *widths = g_private_get (&kept);

  if (widths != NULL)
    return widths;
  widths = g_hash_table_new_full (hash_measured, equal_measured, free_measured, NULL);
  g_private_set (&kept, widths);
  return widths;
}

/* Pango units at the size everything is laid out at. */
static int
measure (const TrLook *look,
         const char   *text,
         int           weight)
{
  GHashTable *widths = get_widths ();
  Measured key = { (char *) text, (char *) look->font, weight };
  Measured *measured;
  gpointer found;
  int units;

  if (g_hash_table_lookup_extended (widths, &key, NULL, &found))
    return GPOINTER_TO_INT (found);

  pango_layout_get_size (get_layout (look, text, weight), &units, NULL);
  if (g_hash_table_size (widths) >= MAX_MEASURED)
    g_hash_table_remove_all (widths);
  measured = g_new (Measured, 1);
  *measured = (Measured) { g_strdup (text), g_strdup (look->font), weight };
  g_hash_table_insert (widths, measured, GINT_TO_POINTER (units));
  return units;
}

double
tr_text_draw (cairo_t        *cr,
              const TrLook   *look,
              const char     *text,
              double          size,
              int             weight,
              const TrColour *colour,
              double          x,
              double          baseline,
              double          align)
{
  PangoLayout *layout = get_layout (look, text, weight);
  double scale = size / LAID_OUT_AT, width;
  int units;

  pango_layout_get_size (layout, &units, NULL);
  width = units * scale / PANGO_SCALE;
  tr_cairo_set_colour (cr, colour);
  cairo_save (cr);
  cairo_translate (cr, x - align * width, baseline);
  cairo_scale (cr, scale, scale);
  cairo_move_to (cr, 0, 0);
  pango_cairo_show_layout_line (cr, pango_layout_get_line_readonly (layout, 0));
  cairo_restore (cr);
  return width;
}

double
tr_text_width (const TrLook *look,
               const char   *text,
               double        size,
               int           weight)
{
  return measure (look, text, weight) * size / LAID_OUT_AT / PANGO_SCALE;
}

/* ---- lines ----
 *
 * Lines are made of measured words, so that trying a text at another size
 * costs no shaping. Only spaces part lines, and not those beside a "×"; a
 * word that is too long for a line is parted where it must be.
 */

/* Where the next word ends: at a space that may part lines, at the end of a
 * paragraph, or at the end. */
static const char *
find_word_end (const char *word)
{
  static const char times[] = "×";
  const char *end = word;

  while (TRUE)
    {
      end += strcspn (end, " \n");
      if (*end != ' ')
        return end;
      if (!g_str_has_prefix (end + 1, times) && !(end - word >= 2 && strncmp (end - 2, times, 2) == 0))
        return end;
      end++;
    }
}

/* How many bytes of the beginning of a word too long for `width` go on a line. */
static gsize
part_word (const TrLook *look,
           const char   *word,
           double        size,
           int           weight,
           double        width)
{
  long low = 1, high = MAX (1, g_utf8_strlen (word, -1) - 1);

  while (low < high)
    {
      long middle = (low + high + 1) / 2;
      g_autofree char *begin = g_utf8_substring (word, 0, middle);

      if (tr_text_width (look, begin, size, weight) <= width)
        low = middle;
      else
        high = middle - 1;
    }
  return (gsize) (g_utf8_offset_to_pointer (word, low) - word);
}

/* The end of the line that starts at `start`. */
static const char *
find_line_end (const TrLook *look,
               const char   *start,
               double        size,
               int           weight,
               double        width)
{
  double space = tr_text_width (look, " ", size, weight), used = 0;
  const char *word = start, *end = start;

  while (TRUE)
    {
      const char *word_end = find_word_end (word);
      g_autofree char *text = g_strndup (word, (gsize) (word_end - word));
      double wide = tr_text_width (look, text, size, weight);

      if (used + wide > width && word != start)
        return end;
      if (wide > width)
        return start + part_word (look, text, size, weight, width);
      used += wide + space;
      end = word_end;
      if (*end != ' ')
        return end;
      word = end + 1;
    }
}

/* Lines of at most `width`; a line that the last one cannot hold ends in "…". */
char **
tr_text_wrap (const TrLook *look,
              const char   *text,
              double        size,
              int           weight,
              double        width,
              guint         max_lines)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  const char *start = text;

  while (*start != '\0' && lines->len < max_lines)
    {
      const char *end = find_line_end (look, start, size, weight, width);

      if (lines->len + 1 == max_lines && *end != '\0')
        {
          g_autofree char *rest = g_strdelimit (g_strdup (start), "\n", ' ');

          g_ptr_array_add (lines, tr_text_shorten (look, rest, size, weight, width));
          break;
        }
      g_ptr_array_add (lines, g_strndup (start, (gsize) (end - start)));
      start = end + (*end == ' ' || *end == '\n');
    }
  g_ptr_array_add (lines, NULL);
  return (char **) g_ptr_array_free (g_steal_pointer (&lines), FALSE);
}

/* The text, or as much of its beginning as fits with "…". */
char *
tr_text_shorten (const TrLook *look,
                 const char   *text,
                 double        size,
                 int           weight,
                 double        width)
{
  long low = 0, high = g_utf8_strlen (text, -1);
  g_autofree char *best = g_strdup ("…");

  if (tr_text_width (look, text, size, weight) <= width + 0.01)
    return g_strdup (text);
  while (low < high)
    {
      long middle = (low + high + 1) / 2;
      g_autofree char *begin = g_utf8_substring (text, 0, middle);
      g_autofree char *candidate = g_strconcat (g_strchomp (begin), "…", NULL);

      if (tr_text_width (look, candidate, size, weight) <= width)
        {
          low = middle;
          g_free (best);
          best = g_steal_pointer (&candidate);
        }
      else
        {
          high = middle - 1;
        }
    }
  return g_steal_pointer (&best);
}
