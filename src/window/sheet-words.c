/* sheet-words.c: the sheet in words, beside its drawing
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "sheet-words.h"

#include <glib/gi18n-lib.h>

char *
tr_sheet_words_dup_rolled (const TrSheet  *sheet,
                           const TrReader *reader)
{
  g_autofree char *rolled = tr_words_size (reader, &sheet->rolled_mm);
  g_autofree char *relaxed = tr_words_size (reader, &(TrSize) { { sheet->length_mm, sheet->width_mm, sheet->thickness_mm } });

  if (sheet->sheets == 1)
    return g_strdup_printf (_("One sheet, rolled to %s; relaxed it is %s"), rolled, relaxed);

  return g_strdup_printf (_("%d sheets, each rolled to %s; relaxed it is %s"), sheet->sheets, rolled, relaxed);
}

char *
tr_sheet_words_dup_pieces (const TrDoughFigures *figures,
                           const TrReader       *reader)
{
  const TrSheet *sheet = &figures->sheet;
  g_autofree char *count = tr_words_count (reader, sheet->pieces_cut);
  g_autofree char *mass = tr_words_mass (reader, figures->piece.raw_mass_g);
  g_autofree char *scrap = tr_words_percent (reader, sheet->scrap_percent);
  g_autofree char *spare = tr_words_count (reader, sheet->spare_pieces);

  if (isfinite (sheet->spare_pieces) && sheet->spare_pieces > 0)
    return g_strdup_printf (_("%s pieces of %s, %s of them spare; scrap %s"), count, mass, spare, scrap);

  return g_strdup_printf (_("%s pieces of %s; scrap %s"), count, mass, scrap);
}

char *
tr_sheet_words_dup_trays (const TrTrays  *trays,
                          const TrReader *reader)
{
  if (!(trays->per_tray >= 1))
    return g_strdup (_("A piece does not fit on the tray."));

  g_autofree char *per_tray = tr_words_count (reader, trays->per_tray);
  g_autofree char *count = tr_words_count (reader, trays->trays);
  g_autofree char *loads = tr_words_count (reader, trays->loads);
  g_autofree char *footprint = tr_words_area_size (reader, trays->footprint_mm.mm[0], trays->footprint_mm.mm[1]);

  return g_strdup_printf (_("Trays: %s (%s a tray, a piece stands on %s); oven loads: %s"), count, per_tray, footprint, loads);
}

char *
tr_sheet_words_dup_wound (const TrSheet  *sheet,
                          const TrReader *reader)
{
  if (!isfinite (sheet->windings))
    return NULL;

  g_autofree char *windings = tr_words_number (reader, sheet->windings, 1);
  g_autofree char *diameter = tr_words_length (reader, sheet->diameter_mm);
  g_autofree char *layers = tr_words_number (reader, sheet->layers_across, 0);

  return g_strdup_printf (_("Rolled up: %s windings, %s across, about %s fat layers through the middle"), windings, diameter, layers);
}

char *
tr_sheet_words_dup_printed (const TrSheet  *sheet,
                            const TrReader *reader)
{
  if (!isfinite (sheet->printed_thickness_mm))
    return NULL;

  g_autofree char *thickness = tr_words_length (reader, sheet->printed_thickness_mm);

  return g_strdup_printf (_("At the printed size this dough makes a sheet %s thick"), thickness);
}
