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

static PangoAttrList *
make_attributes (void)
{
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  return attributes;
}

static PangoLayout *
make_layout (void)
{
  PangoContext *context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  PangoAttrList *attributes = make_attributes ();
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

/* A number is not parted from its thousands, nor a size at its "×". */
static PangoAttrList *
make_wrapping_attributes (const char *text)
{
  static const char *const held[] = { " × ", "\u2009" };
  PangoAttrList *attributes = make_attributes ();

  for (guint i = 0; i < G_N_ELEMENTS (held); i++)
    for (const char *at = strstr (text, held[i]); at != NULL; at = strstr (at + 1, held[i]))
      {
        PangoAttribute *hold = pango_attr_allow_breaks_new (FALSE);

        hold->start_index = (guint) (at - text);
        /* a break is before a character: the next one belongs to it */
        hold->end_index = hold->start_index + (guint) strlen (held[i]) + 1;
        pango_attr_list_insert (attributes, hold);
      }
  return attributes;
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
  PangoLayout *layout = get_layout (look, text, weight);
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  PangoAttrList *plain = pango_attr_list_ref (pango_layout_get_attributes (layout));
  PangoAttrList *wrapping = make_wrapping_attributes (text);

  pango_layout_set_attributes (layout, wrapping);
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_width (layout, MAX (1, (int) (width / size * LAID_OUT_AT * PANGO_SCALE)));
  for (GSList *l = pango_layout_get_lines_readonly (layout); l != NULL; l = l->next)
    {
      const PangoLayoutLine *line = l->data;
      const char *start = text + line->start_index;

      if (lines->len + 1 == max_lines && l->next != NULL)
        {
          g_ptr_array_add (lines, g_strdup (start));
          break;
        }
      g_ptr_array_add (lines, g_strchomp (g_strndup (start, (gsize) line->length)));
    }

  pango_layout_set_attributes (layout, plain);
  pango_attr_list_unref (plain);
  pango_attr_list_unref (wrapping);

  if (lines->len == max_lines && max_lines > 0)
    {
      char **last = (char **) &g_ptr_array_index (lines, max_lines - 1);
      g_autofree char *long_line = *last;

      *last = tr_text_shorten (look, long_line, size, weight, width);
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
  glong low = 0, high = g_utf8_strlen (text, -1);
  g_autofree char *best = g_strdup ("…");

  if (tr_text_width (look, text, size, weight) <= width + 0.01)
    return g_strdup (text);
  while (low < high)
    {
      glong middle = (low + high + 1) / 2;
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
