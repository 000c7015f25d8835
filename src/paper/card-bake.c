/* card-bake.c: roll out, cut, proof, bake, beside the drawing of the sheet
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The signs that a proof is over are common practice.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../calc/cut.h"
#include "../calc/look.h"
#include "../words/passes.h"
#include "card.h"

typedef struct {
  const TrCard *card;
  const TrDoughFigures *figures;
  const TrReader *reader;
  GArray *blocks;
  double width, em;
} Bake;

/* A label with blanks beside it (NULL: none), what is to be done in large
 * type, why or how in small type (NULL: nothing). */
static void
add_entry (Bake              *bake,
           const char        *label,
           const char        *text,
           const char        *note,
           const char *const *blanks)
{
  const TrLook *look = &bake->card->look;
  double em = bake->em, x = TR_TICK_PT + 0.8 * em, baseline = 1.25 * em, from;
  TrPicture *picture = tr_card_add_block (bake->blocks, bake->card, bake->width, 3 * em);
  guint n = blanks != NULL ? g_strv_length ((char **) blanks) : 0;

  tr_card_add_rule (picture, 0, bake->width, FALSE);
  tr_card_add_tick (picture, 0, 0.5 * em + TR_TICK_PT / 2);
  from = x + tr_picture_add_text (picture, label, em, 700, &look->dim, x, baseline, 0) + 1.2 * em;
  from = MAX (from, bake->width * 0.36);
  for (guint i = 0; i < n; i++)
    tr_card_add_blank (picture, blanks[i], from + (bake->width - from) * i / n + (i > 0 ? 0.6 * em : 0),
                       from + (bake->width - from) * (i + 1) / n, baseline);
  baseline = tr_card_add_paragraph (picture, text, 1.25 * em, 700, &look->text, x, bake->width - x, baseline + 1.5 * em, 4);
  if (note != NULL && *note != '\0')
    baseline = tr_card_add_paragraph (picture, note, em, 400, &look->dim, x, bake->width - x, baseline - 0.15 * em, 5);
  tr_picture_set_height (picture, baseline - 0.85 * em);
}

static char *
dup_roll_note (const Bake *bake)
{
  const TrLamination *lamination = &bake->figures->lamination;
  const TrToSheet *to_sheet = &lamination->to_sheet;
  GString *note = g_string_new (NULL);

  if (!bake->figures->has_lamination || !lamination->has_to_sheet)
    return g_string_free (note, FALSE);
  if (to_sheet->blocks_cut > 1)
    {
      g_autofree char *parts = tr_words_count (bake->reader, to_sheet->blocks_cut);

      g_string_append_printf (note, _("Cut each block in %s."), parts);
    }
  if (isfinite (to_sheet->start_mm.mm[0]))
    {
      g_autofree char *start = tr_words_size (bake->reader, &to_sheet->start_mm);

      g_string_append_printf (note, _("%sFrom %s, "), note->len > 0 ? " " : "", start);
      g_string_append (note, g_strcmp0 (to_sheet->order, "width-first") == 0 ? _("first to the width, then to the length.")
                                                                             : _("first to the length, then to the width."));
    }
  g_autofree char *gaps = bake->card->has_effective ? tr_words_sheet_passes (bake->reader, bake->figures) : NULL;

  if (gaps != NULL)
    g_string_append_printf (note, "%s%s.", note->len > 0 ? " " : "", gaps);
  if (!to_sheet->fits)
    g_string_append_printf (note, _("%sThe block is larger than the sheet one way, or the sheet too large for the bench."),
                            note->len > 0 ? " " : "");
  return g_string_free (note, FALSE);
}

static void
add_roll_out (Bake *bake)
{
  const TrSheet *sheet = &bake->figures->sheet;
  TrSize relaxed = { { sheet->length_mm, sheet->width_mm, sheet->thickness_mm } };
  g_autofree char *rolled_text = tr_words_size (bake->reader, &sheet->rolled_mm);
  g_autofree char *relaxed_text = tr_words_size (bake->reader, &relaxed);
  g_autofree char *note = dup_roll_note (bake);
  g_autofree char *text = NULL;
  const char *blanks[] = { _("real size"), NULL };

  if (tr_sheet_shrinks (sheet))
    text = g_strdup_printf (_("Roll to %s,\nlet it relax to %s"), rolled_text, relaxed_text);
  else
    text = g_strdup_printf (_("Roll to %s,\nrelaxed the same"), relaxed_text);
  add_entry (bake, sheet->sheets > 1 ? _("Roll out, each sheet") : _("Roll out"), text, note, blanks);
}

static char *
dup_piece_size (const Bake *bake)
{
  const TrCut *cut = bake->figures->dough->cut;
  double one = cut->width_mm, other = cut->length_mm;
  g_autofree char *first = NULL, *second = NULL;

  switch (cut->shape)
    {
    case TR_SHAPE_TRIANGLE:
    case TR_SHAPE_RIGHT_TRIANGLE:
      first = tr_words_length (bake->reader, cut->base_mm);
      second = tr_words_length (bake->reader, cut->height_mm);
      return g_strdup_printf (_("base %s, height %s"), first, second);
    case TR_SHAPE_SQUARE:
      one = other = cut->side_mm;
      break;
    case TR_SHAPE_ROUND:
      first = tr_words_length (bake->reader, cut->diameter_mm);
      return g_strdup_printf (_("%s across"), first);
    case TR_SHAPE_SLICES:
      first = tr_words_length (bake->reader, cut->slice_mm);
      return g_strdup_printf (_("roll up, then slices of %s"), first);
    case TR_SHAPE_RECTANGLE:
    case TR_N_SHAPES:
    default:
      break;
    }
  return tr_words_area_size (bake->reader, one, other);
}

static char *
dup_cut_note (const Bake *bake)
{
  const TrSheet *sheet = &bake->figures->sheet;
  const TrCut *cut = bake->figures->dough->cut;
  GString *note = g_string_new (NULL);
  g_autofree char *scrap = tr_words_percent (bake->reader, sheet->scrap_percent);
  g_autofree char *trim = tr_words_length (bake->reader, cut->trim_mm);

  if (cut->trim_mm > 0)
    g_string_append_printf (note, _("Trim %s all round. "), trim);
  if (cut->shape == TR_SHAPE_TRIANGLE)
    g_string_append (note, sheet->rows > 1 ? _("Part the rows; mark both edges of each, the far edge starts half a base in. ")
                                           : _("Mark both edges; the far edge starts half a base in. "));
  else if (cut->shape == TR_SHAPE_RIGHT_TRIANGLE)
    g_string_append (note, _("Mark both edges alike, cut across, then corner to corner. "));
  else if (cut->shape == TR_SHAPE_ROUND)
    g_string_append (note, _("The numbers along the edges are the middles of the pieces. "));
  g_string_append_printf (note, _("Scrap %s."), scrap);
  if (isfinite (sheet->windings))
    {
      g_autofree char *windings = tr_words_number (bake->reader, sheet->windings, 1);
      g_autofree char *across = tr_words_length (bake->reader, sheet->diameter_mm);

      g_string_append_printf (note, _(" Rolled up: %s windings, about %s across."), windings, across);
    }
  return g_string_free (note, FALSE);
}

static void
add_cut (Bake *bake)
{
  const TrSheet *sheet = &bake->figures->sheet;
  g_autofree char *count = tr_words_count (bake->reader, sheet->pieces_cut);
  g_autofree char *size = dup_piece_size (bake);
  g_autofree char *note = dup_cut_note (bake);
  g_autofree char *rows = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d row of %d", "%d rows of %d", (gulong) sheet->rows),
                                           sheet->rows, sheet->per_row);
  g_autofree char *text = sheet->sheets > 1
                          ? g_strdup_printf (_("%d sheets, each %s,\n%s pieces, %s"), sheet->sheets, rows, count, size)
                          : g_strdup_printf (_("%s pieces, %s,\n%s"), count, rows, size);
  const char *blanks[] = { _("raw, 5 together"), NULL };

  add_entry (bake, _("Cut"), text, note, blanks);
}

static void
add_trays (Bake *bake)
{
  const TrTrays *trays = &bake->figures->sheet.trays;
  g_autofree char *per_tray = tr_words_count (bake->reader, trays->per_tray);
  g_autofree char *n_trays = tr_words_count (bake->reader, trays->trays);
  g_autofree char *loads = tr_words_count (bake->reader, trays->loads);
  g_autofree char *gap = tr_words_length (bake->reader, bake->figures->bench->piece_gap_mm);
  g_autofree char *tray = tr_words_area_size (bake->reader, bake->figures->bench->tray_mm[0], bake->figures->bench->tray_mm[1]);
  g_autofree char *trays_text = NULL, *loads_text = NULL, *text = NULL, *note = NULL;

  if (!isfinite (trays->per_tray) || trays->per_tray < 1)
    {
      add_entry (bake, _("Trays"), _("The piece is larger than the tray."), NULL, NULL);
      return;
    }
  trays_text = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s tray", "%s trays", trays->trays > 1 ? 2 : 1), n_trays);
  loads_text = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s oven load", "%s oven loads", trays->loads > 1 ? 2 : 1), loads);
  text = g_strdup_printf (_("%s a tray, %s, %s"), per_tray, trays_text, loads_text);
  note = g_strdup_printf (_("Rimmed trays of %s, %s between pieces."), tray, gap);
  add_entry (bake, _("Trays"), text, note, NULL);
}

static gboolean
is_raised (const TrDoughFigures *figures)
{
  return tr_look_find_line (figures, tr_line_is_leaven) >= 0 || tr_look_find_line (figures, tr_line_is_starter) >= 0;
}

/* "2 h 15 to 2 h 40 at 26 °C, 78 % humidity"; empty if nothing is written. */
static char *
dup_step (const Bake   *bake,
          const TrStep *step)
{
  GString *text = g_string_new (NULL);

  if (step == NULL)
    return g_string_free (text, FALSE);
  if (isfinite (step->minutes) || isfinite (step->max_minutes))
    {
      g_autofree char *span = tr_card_dup_span (bake->reader, step->minutes, step->max_minutes);

      g_string_append (text, span);
    }
  if (isfinite (step->at_c))
    {
      g_autofree char *temperature = tr_words_temperature (bake->reader, step->at_c);

      g_string_append_printf (text, text->len > 0 ? _(" at %s") : "%s", temperature);
    }
  if (isfinite (step->rh_percent))
    {
      g_autofree char *humidity = tr_card_dup_percent (bake->reader, step->rh_percent);

      g_string_append_printf (text, _("%s%s humidity"), text->len > 0 ? ", " : "", humidity);
    }
  return g_string_free (text, FALSE);
}

static void
add_proof (Bake *bake)
{
  const TrStep *step = tr_dough_find_step (bake->figures->dough, TR_STEP_PROOF);
  g_autofree char *text = dup_step (bake, step);
  const char *blanks[] = { _("time"), tr_words_temperature_unit (bake->reader), "%", NULL };

  if (step == NULL && !is_raised (bake->figures))
    {
      add_entry (bake, _("Proof"), _("None: no yeast. Keep cold until the oven is hot."), NULL, NULL);
      return;
    }
  add_entry (bake, _("Proof"), *text != '\0' ? text : _("Time not written"),
             _("Over when about half again as large and it wobbles like jelly when the tray is nudged. "
               "Never so warm that the fat runs."), blanks);
}

static void
add_finish (Bake *bake)
{
  const GArray *lines = bake->figures->formula.lines;
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < lines->len; i++)
    {
      const TrLineFigures *line = &g_array_index (lines, TrLineFigures, i);

      if (line->line->stage != TR_STAGE_FINISH)
        continue;
      g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "",
                              line->known ? tr_words_ingredient (&line->ingredient)
                                          : line->line->text != NULL ? line->line->text : line->line->amount);
    }
  if (text->len > 0)
    add_entry (bake, tr_words_step (TR_STEP_FINISH), text->str, NULL, NULL);
}

static void
add_bake (Bake *bake)
{
  const TrStep *step = tr_dough_find_step (bake->figures->dough, TR_STEP_BAKE);
  const TrStep *cool = tr_dough_find_step (bake->figures->dough, TR_STEP_COOL);
  g_autofree char *text = dup_step (bake, step), *cooling = dup_step (bake, cool);
  g_autofree char *preheat = tr_words_minutes (bake->reader, bake->figures->bench->preheat_minutes);
  g_autoptr (GString) note = g_string_new (NULL);
  const char *blanks[] = { _("time"), tr_words_temperature_unit (bake->reader), NULL };

  g_string_append_printf (note, _("Heat the oven %s before."), preheat);
  if (*cooling != '\0')
    g_string_append_printf (note, _(" Cool %s."), cooling);
  add_entry (bake, _("Bake"), *text != '\0' ? text : _("Time and heat not written"), note->str, blanks);
}

static void
add_baked (Bake *bake)
{
  const TrPiece *piece = &bake->figures->piece;
  double loss = bake->figures->dough->bake_loss_percent;
  g_autofree char *mass = tr_words_mass (bake->reader, piece->baked_mass_g);
  g_autofree char *percent = tr_card_dup_percent (bake->reader, loss);
  g_autofree char *text = NULL;
  const char *blanks[] = { _("5 together"), _("height"), NULL };

  if (isfinite (loss) && isfinite (piece->baked_mass_g))
    text = g_strdup_printf (_("%s a piece if %s is lost"), mass, percent);
  else
    text = g_strdup (_("Loss not written: weigh it"));
  add_entry (bake, _("Baked mass"), text, NULL, blanks);
}

/* For the size of one cut, in the order in which sizes are always said, and what it weighs. */
TrPicture *
tr_card_weighed_cut (const TrCard *card,
                     double        width)
{
  const TrLook *look = &card->look;
  const char *const labels[] = { tr_words_length_unit (card->reader), "×", "×", tr_words_mass_unit (card->reader) };
  double em = look->text_size, baseline = 1.5 * em, x = TR_TICK_PT + 0.8 * em, room;
  TrPicture *picture = tr_picture_new (look, card->reader, width, 2.3 * em);

  tr_card_add_tick (picture, 0, baseline - 0.38 * em);
  x += tr_card_add_fitting (picture, _("Weigh a cut with square corners"), em, 700, &look->dim, x, 0.45 * width, baseline) + 1.2 * em;
  room = (width - x) / G_N_ELEMENTS (labels);
  for (guint i = 0; i < G_N_ELEMENTS (labels); i++)
    tr_card_add_blank (picture, labels[i], x + room * i + (i > 0 ? 0.5 * em : 0), x + room * (i + 1), baseline);
  return picture;
}

GArray *
tr_card_bake_blocks (const TrCard *card,
                     double        width)
{
  Bake bake = { card, card->dough, card->reader, tr_card_blocks_new (), width, card->look.text_size };

  if (card->dough->has_sheet)
    {
      add_roll_out (&bake);
      add_cut (&bake);
      add_trays (&bake);
    }
  add_proof (&bake);
  add_finish (&bake);
  add_bake (&bake);
  add_baked (&bake);
  return bake.blocks;
}
