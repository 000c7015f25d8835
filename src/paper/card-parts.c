/* card-parts.c: tick boxes, blanks, paragraphs
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "card.h"

static void
clear_block (gpointer data)
{
  TrCardBlock *block = data;

  g_clear_pointer (&block->picture, tr_picture_unref);
}

GArray *
tr_card_blocks_new (void)
{
  GArray *blocks = g_array_new (FALSE, FALSE, sizeof (TrCardBlock));

  g_array_set_clear_func (blocks, clear_block);
  return blocks;
}

TrPicture *
tr_card_add_block (GArray       *blocks,
                   const TrCard *card,
                   double        width,
                   double        height)
{
  TrCardBlock block = { tr_picture_new (&card->look, card->reader, width, height), FALSE };

  g_array_append_val (blocks, block);
  return block.picture;
}

void
tr_card_add_tick (TrPicture *picture,
                  double     x,
                  double     middle)
{
  tr_picture_add_rect (picture, &(TrBox) { x, middle - TR_TICK_PT / 2, TR_TICK_PT, TR_TICK_PT }, NULL, TR_PEN_OUTLINE, NULL);
}

void
tr_card_add_blank (TrPicture  *picture,
                   const char *label,
                   double      x,
                   double      right,
                   double      baseline)
{
  const TrLook *look = tr_picture_get_look (picture);
  double em = look->text_size;

  x += tr_picture_add_text (picture, label, 0.9 * em, 400, &look->dim, x, baseline, 0) + 0.35 * em;
  tr_picture_add_line (picture, MIN (x, right), baseline + 0.12 * em, right, baseline + 0.12 * em, TR_PEN_INNER, &look->dim);
}

double
tr_card_add_paragraph (TrPicture      *picture,
                       const char     *text,
                       double          size,
                       int             weight,
                       const TrColour *colour,
                       double          x,
                       double          width,
                       double          baseline,
                       guint           max_lines)
{
  const TrLook *look = tr_picture_get_look (picture);
  g_auto (GStrv) lines = tr_text_wrap (look, text, size, weight, width, max_lines);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      tr_picture_add_text (picture, lines[i], size, weight, colour, x, baseline, 0);
      baseline += size * 1.28;
    }
  return baseline;
}

double
tr_card_add_caution (TrPicture  *picture,
                     const char *text,
                     double      size,
                     double      x,
                     double      width,
                     double      baseline,
                     guint       max_lines)
{
  const TrLook *look = tr_picture_get_look (picture);
  double sign = tr_picture_add_warning (picture, x, baseline, size) + 0.35 * size;

  return tr_card_add_paragraph (picture, text, size, 700, &look->warning, x + sign, width - sign, baseline, max_lines);
}

double
tr_card_add_fitting (TrPicture      *picture,
                     const char     *text,
                     double          size,
                     int             weight,
                     const TrColour *colour,
                     double          x,
                     double          width,
                     double          baseline)
{
  const TrLook *look = tr_picture_get_look (picture);
  double wide = tr_text_width (look, text, size, weight);
  g_autofree char *shown = NULL;

  if (wide > width)
    size *= MAX (0.7, width / wide * 0.999);
  shown = tr_text_shorten (look, text, size, weight, width);
  return tr_picture_add_text (picture, shown, size, weight, colour, x, baseline, 0);
}

void
tr_card_add_rule (TrPicture *picture,
                  double     y,
                  double     width,
                  gboolean   heavy)
{
  const TrLook *look = tr_picture_get_look (picture);

  tr_picture_add_line (picture, 0, y, width, y, heavy ? TR_PEN_OUTLINE : TR_PEN_HAIR, heavy ? &look->text : &look->dim);
}

void
tr_card_add_heading (TrPicture  *picture,
                     const char *text,
                     double      baseline)
{
  const TrLook *look = tr_picture_get_look (picture);

  tr_picture_add_text (picture, text, 1.35 * look->text_size, 700, &look->text, 0, baseline, 0);
}

char *
tr_card_dup_span (const TrReader *reader,
                  double          minutes,
                  double          max_minutes)
{
  g_autofree char *from = tr_words_minutes (reader, minutes);
  g_autofree char *to = tr_words_minutes (reader, max_minutes);

  if (!isfinite (minutes) && !isfinite (max_minutes))
    return g_strdup ("–");
  if (!isfinite (minutes))
    return g_strdup_printf (_("at most %s"), to);
  if (!isfinite (max_minutes) || max_minutes <= minutes)
    return g_steal_pointer (&from);
  return g_strdup_printf (_("%s to %s"), from, to);
}

char *
tr_card_dup_percent (const TrReader *reader,
                     double          percent)
{
  g_autofree char *number = tr_words_number (reader, percent, fabs (percent - round (percent)) < 0.05 ? 0 : 1);

  return g_strdup_printf ("%s\u00a0%%", number);
}

char *
tr_card_dup_code (guint index)
{
  GString *code = g_string_new (NULL);

  for (guint i = index + 1; i > 0; i = (i - 1) / 26)
    g_string_prepend_c (code, (char) ('A' + (i - 1) % 26));
  return g_string_free (code, FALSE);
}
