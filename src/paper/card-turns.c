/* card-turns.c: chill, lock in, turn, and the layers that come of it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../words/passes.h"
#include "../words/rest.h"
#include "card.h"

typedef struct {
  const TrCard *card;
  const TrLamination *lamination;
  GArray *blocks;
  double width, em;
} Turns;

static gboolean
is_known (const TrSize *size)
{
  return isfinite (size->mm[0]) && isfinite (size->mm[1]) && isfinite (size->mm[2]);
}

static char *
dup_rest (const TrReader *reader,
          const TrRest   *rest)
{
  g_autofree char *span = tr_card_dup_span (reader, rest->min_minutes, rest->max_minutes);
  g_autofree char *place = g_utf8_strdown (tr_words_place (rest->place), -1);

  return g_strdup_printf ("%s, %s", span, place);
}

static void
add_heading (Turns      *turns,
             const char *text)
{
  TrPicture *picture = tr_card_add_block (turns->blocks, turns->card, turns->width, 1.5 * turns->em);

  g_array_index (turns->blocks, TrCardBlock, turns->blocks->len - 1).keeps_with_next = TRUE;
  tr_card_add_heading (picture, text, turns->em);
}

/* What the rest after that turn does; NULL: not known, or no room for it. */
static char *
dup_needed (const Turns *turns,
            int          turn)
{
  const TrRestFigures *rest = turns->card->has_gaps ? tr_rests_find (turns->card->dough, turn) : NULL;

  return rest != NULL ? tr_words_rest_in_short (turns->card->reader, rest) : NULL;
}

/* The gaps from the block to that roll-out. Returns the baseline after them. */
static double
add_gaps (Turns     *turns,
          TrPicture *picture,
          guint      index,
          double     x,
          double     right,
          double     baseline)
{
  g_auto (TrPasses) passes = { 0 };
  g_autofree char *gaps = NULL;

  tr_passes_init_turn (&passes, turns->card->dough, index);
  gaps = turns->card->has_gaps ? tr_words_passes (turns->card->reader, turns->card->dough->bench, &passes) : NULL;
  if (gaps == NULL)
    return baseline;

  return tr_card_add_paragraph (picture, gaps, turns->em, 400, &turns->card->look.text, x, right - x, baseline, 2);
}

/* How warm the middle of the slab really was. */
static void
add_core_blank (Turns     *turns,
                TrPicture *picture,
                double     x,
                double     baseline)
{
  g_autofree char *core = g_strdup_printf (_("core %s"), tr_words_temperature_unit (turns->card->reader));

  tr_card_add_blank (picture, core, x, turns->width, baseline);
}

static void
add_chill (Turns *turns)
{
  const TrRest *rest = turns->card->dough->dough->lock_in->rest;
  const TrReader *reader = turns->card->reader;
  const TrLook *look = &turns->card->look;
  double em = turns->em, height = MAX (1.9 * em, TR_TICK_PT + 3), baseline = height / 2 + 0.38 * em, below = baseline + 1.4 * em;
  double x = TR_TICK_PT + 0.7 * em, blank = turns->width * 0.72, end;
  g_autofree char *thickness = NULL, *how = NULL, *text = NULL, *needed = dup_needed (turns, 0);
  TrPicture *picture;

  if (rest == NULL)
    return;
  picture = tr_card_add_block (turns->blocks, turns->card, turns->width, height);
  thickness = tr_words_length (reader, tr_is_written (rest->thickness_mm) ? rest->thickness_mm : TR_CHILL_THICKNESS_MM);
  how = dup_rest (reader, rest);
  text = g_strdup_printf (_("Chill the dough, %s thick, %s"), thickness, how);
  tr_card_add_tick (picture, 0, height / 2);
  tr_card_add_fitting (picture, text, 1.1 * em, 400, &look->text, x, blank - x - 0.6 * em, baseline);
  tr_card_add_blank (picture, _("time"), blank, turns->width, baseline);
  add_core_blank (turns, picture, blank, below);
  end = needed != NULL ? tr_card_add_paragraph (picture, needed, em, 400, &look->dim, x, blank - x - 0.6 * em, below, 2) : 0;
  tr_picture_set_height (picture, MAX (end, below + 1.28 * em) - 0.5 * em);
}

/* "Rim 10 mm without fat, 14 % of the plan." and how many blocks. */
static char *
dup_lock_in_notes (const Turns *turns)
{
  const TrLockIn *lock_in = turns->card->dough->dough->lock_in;
  double share = turns->lamination->lock_in.rim_share;
  GString *notes = g_string_new (NULL);

  if (lock_in->blocks > 1)
    g_string_append_printf (notes, _("Make %d blocks like this. "), lock_in->blocks);
  g_string_append (notes, tr_words_style_how (lock_in->style));
  if (lock_in->rim_mm > 0 && isfinite (share) && share > 0)
    {
      g_autofree char *rim = tr_words_length (turns->card->reader, lock_in->rim_mm);
      g_autofree char *percent = tr_card_dup_percent (turns->card->reader, round (share * 100));

      g_string_append_printf (notes, _(" Rim %s: %s of the area has no fat."), rim, percent);
    }
  return g_string_free (notes, FALSE);
}

/* What is done, and how warm both really were. */
static void
add_lock_in_row (Turns     *turns,
                 TrPicture *picture,
                 double     height)
{
  const TrLook *look = &turns->card->look;
  const char *degrees = tr_words_temperature_unit (turns->card->reader);
  double em = turns->em, x = TR_TICK_PT + 0.7 * em, baseline = height / 2 + 0.38 * em, from = turns->width * 0.42;
  g_autofree char *style = g_utf8_strdown (tr_words_style (turns->card->dough->dough->lock_in->style), -1);
  g_autofree char *name = g_strdup_printf (_("Lock-in: %s"), style);
  g_autofree char *dough = g_strdup_printf (_("dough %s"), degrees);
  g_autofree char *fat = g_strdup_printf (_("fat %s"), degrees);

  tr_card_add_tick (picture, 0, height / 2);
  tr_card_add_fitting (picture, name, 1.12 * em, 700, &look->text, x, from - x - 0.5 * em, baseline);
  tr_card_add_blank (picture, dough, from, from + (turns->width - from) * 0.52, baseline);
  tr_card_add_blank (picture, fat, from + (turns->width - from) * 0.52 + 0.8 * em, turns->width, baseline);
}

static void
add_lock_in (Turns *turns)
{
  const TrLook *look = &turns->card->look;
  gboolean is_drawn = is_known (&turns->lamination->lock_in.block_mm);
  double em = turns->em, height = is_drawn ? 11.4 * em : 2.4 * em, row = MAX (1.7 * em, TR_TICK_PT + 2), baseline;
  g_autofree char *notes = dup_lock_in_notes (turns);
  g_autoptr (TrPicture) plan = tr_lock_in_picture_new (turns->card->dough, turns->card->reader, look, turns->width - TR_TICK_PT - em, height);
  TrPicture *picture = tr_card_add_block (turns->blocks, turns->card, turns->width, height);

  add_lock_in_row (turns, picture, row);
  tr_picture_place (picture, plan, TR_TICK_PT + em, row);
  baseline = tr_card_add_paragraph (picture, notes, em, 400, &look->dim, 0, turns->width, row + height + 0.9 * em, 5);
  tr_picture_set_height (picture, baseline - 0.5 * em);
}

/* The folded block to scale with the way of the next roll, in a square. */
static void
add_direction (Turns               *turns,
               TrPicture           *picture,
               const TrTurnFigures *figures,
               const TrBox         *square)
{
  const TrLook *look = &turns->card->look;
  double length = figures->folded_mm.mm[0], width = figures->folded_mm.mm[1];
  double scale = MIN (square->width / length, square->height / width);
  TrBox box = { square->x + square->width - length * scale, square->y + (square->height - width * scale) / 2,
                length * scale, width * scale };

  if (!isfinite (scale) || scale <= 0 || length * scale < 0.4 * turns->em || width * scale < 0.8 * turns->em)
    return;
  tr_picture_add_rect (picture, &box, tr_look_get_outside (look, turns->card->dough->dough), TR_PEN_INNER, NULL);
  tr_picture_add_arrow (picture, box.x + box.width / 2, box.y + box.height - 0.15 * turns->em,
                        box.x + box.width / 2, box.y + 0.15 * turns->em, TRUE, &look->line);
}

static char *
dup_fold_line (const Turns         *turns,
               const TrTurn        *written,
               const TrTurnFigures *figures)
{
  g_autofree char *fold = tr_words_fold (written->fold);
  g_autofree char *folded = tr_words_size_bare (turns->card->reader, &figures->folded_mm);

  if (!is_known (&figures->folded_mm))
    return g_strdup_printf (_("Brush off flour, %s"), fold);
  return g_strdup_printf (_("Brush off flour, %s → %s"), fold, folded);
}

static char *
dup_rest_line (const Turns  *turns,
               const TrTurn *written)
{
  g_autofree char *rest = NULL;

  if (written->rest == NULL)
    return g_strdup (_("No rest written"));
  rest = dup_rest (turns->card->reader, written->rest);
  return g_strdup_printf (_("Rest %s"), rest);
}

static char *
dup_next_line (const Turns         *turns,
               const TrTurn        *written,
               const TrTurnFigures *figures)
{
  g_autofree char *side = tr_words_length (turns->card->reader, figures->folded_mm.mm[1]);
  g_autofree char *trim = tr_words_length (turns->card->reader, written->trim_mm);

  if (!is_known (&figures->folded_mm))
    return g_strdup (_("then a quarter turn"));
  if (written->trim_mm > 0)
    return g_strdup_printf (_("Trim %s off both ends. Next roll along the %s side."), trim, side);
  return g_strdup_printf (_("next roll along the %s side"), side);
}

static void
add_blanks (Turns     *turns,
            TrPicture *picture,
            double     x,
            double     baseline)
{
  double room = turns->width - x, gap = 0.8 * turns->em;

  tr_card_add_blank (picture, _("time"), x, x + room * 0.28, baseline);
  tr_card_add_blank (picture, tr_words_length_unit (turns->card->reader), x + room * 0.28 + gap, x + room * 0.64, baseline);
  add_core_blank (turns, picture, x + room * 0.64 + gap, baseline);
}

/* Two figures need more room than one. */
static double
number_room (const Turns *turns)
{
  return (turns->card->dough->dough->turns->len > 9 ? 3.6 : 2.6) * turns->em;
}

static char *
dup_breaks (TrBreaks breaks)
{
  GString *text = g_string_new (NULL);

  for (int i = 0; i < TR_N_BREAKS; i++)
    if (breaks & (1 << i))
      g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", tr_words_break ((TrBreaks) (1 << i)));
  return text->len > 0 ? g_string_free (text, FALSE) : (g_string_free (text, TRUE), NULL);
}

/* Two things on one line where there is room; `second` NULL: one. Returns the
 * baseline after them. */
static double
add_pair (Turns      *turns,
          TrPicture  *picture,
          const char *first,
          int         weight,
          const char *second,
          double      x,
          double      right,
          double      baseline)
{
  const TrLook *look = &turns->card->look;
  double em = turns->em, wide;

  wide = tr_card_add_fitting (picture, first, 1.12 * em, weight, &look->text, x, right - x, baseline) + 0.8 * em;
  if (second == NULL)
    return baseline + 1.35 * em;
  if (wide + tr_text_width (look, second, em, 400) > right - x)
    return tr_card_add_paragraph (picture, second, em, 400, &look->dim, x, right - x, baseline + 1.35 * em, 2);
  tr_picture_add_text (picture, second, em, 400, &look->dim, x + wide, baseline, 0);
  return baseline + 1.35 * em;
}

static void
add_turn (Turns *turns,
          guint  index)
{
  const TrTurn *written = tr_dough_get_turn (turns->card->dough->dough, index);
  const TrTurnFigures *figures = &g_array_index (turns->lamination->steps, TrTurnFigures, index);
  const TrLook *look = &turns->card->look;
  double em = turns->em, x = TR_TICK_PT + number_room (turns), right = turns->width - 3.6 * em, baseline = 1.75 * em;
  g_autofree char *number = g_strdup_printf ("%u", index + 1);
  g_autofree char *rolled = tr_words_size (turns->card->reader, &figures->rolled_mm);
  g_autofree char *roll = is_known (&figures->rolled_mm) ? g_strdup_printf (_("Roll to %s"), rolled)
                                                         : g_strdup (_("Roll out, size not known"));
  g_autofree char *fold = dup_fold_line (turns, written, figures);
  g_autofree char *rest = dup_rest_line (turns, written);
  g_autofree char *next = dup_next_line (turns, written, figures);
  g_autofree char *needed = dup_needed (turns, (int) index + 1);
  g_autofree char *count = tr_words_count (turns->card->reader, figures->fat_layers);
  g_autofree char *layers = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s fat layer", "%s fat layers",
                                                          figures->fat_layers > 1 ? 2 : 1), count);
  g_autofree char *breaks = dup_breaks (figures->breaks);
  TrPicture *picture = tr_card_add_block (turns->blocks, turns->card, turns->width, 7 * em);
  double layers_wide = MIN (tr_text_width (look, layers, em, 400), turns->width * 0.34);

  tr_card_add_rule (picture, 0.2 * em, turns->width, FALSE);
  tr_card_add_tick (picture, 0, baseline - 0.45 * em);
  tr_picture_add_text (picture, number, 1.9 * em, 700, &look->accent, x - 0.6 * em, baseline, 1);
  tr_card_add_fitting (picture, roll, 1.45 * em, 700, &look->text, x, turns->width - x - layers_wide - 0.8 * em, baseline);
  tr_card_add_fitting (picture, layers, em, 400, &look->dim, turns->width - layers_wide, layers_wide + 0.1, baseline);
  if (breaks != NULL)
    baseline = tr_card_add_caution (picture, breaks, em, x, right - x, baseline + 1.35 * em, 2) - 1.28 * em;
  baseline = add_gaps (turns, picture, index, x, right, baseline + 1.4 * em);
  baseline = add_pair (turns, picture, fold, 400, needed != NULL ? next : NULL, x, right, baseline + 0.1 * em);
  baseline = add_pair (turns, picture, rest, 700, needed != NULL ? needed : next, x, right, baseline);
  add_direction (turns, picture, figures, &(TrBox) { turns->width - 3 * em, 2.5 * em, 3 * em, MIN (3 * em, baseline - 3.6 * em) });
  baseline += 0.4 * em;
  add_blanks (turns, picture, x, baseline);
  tr_picture_set_height (picture, baseline + 0.55 * em);
}

TrPicture *
tr_card_layers (const TrCard *card,
                double        width)
{
  double em = card->look.text_size, height = 15 * em;
  g_autoptr (TrPicture) layers = NULL;
  TrPicture *picture;

  if (!card->dough->has_lamination || !(card->dough->lamination.fat_volume_fraction > 0))
    return NULL;
  layers = tr_layers_picture_new (card->dough, card->reader, &card->look, width, height);
  picture = tr_picture_new (&card->look, card->reader, width, height + 1.4 * em);
  tr_picture_place (picture, layers, 0, 1.2 * em);
  return picture;
}

GArray *
tr_card_turn_blocks (const TrCard *card,
                     double        width)
{
  Turns turns = { card, &card->dough->lamination, tr_card_blocks_new (), width, card->look.text_size };
  guint n;

  if (!card->dough->has_lamination || card->dough->dough->lock_in == NULL)
    return turns.blocks;

  n = turns.lamination->steps != NULL ? MIN (turns.lamination->steps->len, card->dough->dough->turns->len) : 0;
  add_heading (&turns, n > 0 ? _("Lock in and turn") : _("Lock in"));
  add_chill (&turns);
  add_lock_in (&turns);
  for (guint i = 0; i < n; i++)
    add_turn (&turns, i);
  return turns.blocks;
}
