/* strip.c: a dough in one line
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "24 × 51 g raw · butter 11 g · salt 0.6 g · two sheets 601 × 276 × 4 mm ·
 * 2 findings". What is not known is left out.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "say.h"

static void
append_pieces (GString              *out,
               const TrReader       *reader,
               const TrDoughFigures *figures)
{
  const TrPiece *piece = &figures->piece;
  g_autofree char *count = tr_words_count (reader, piece->count);
  g_autofree char *mass = tr_words_mass (reader, piece->raw_mass_g);

  if (!isfinite (piece->count))
    return;
  if (isfinite (piece->raw_mass_g))
    tr_say_append_part (out, g_strdup_printf (_("%s × %s raw"), count, mass));
  else
    tr_say_append_part (out, g_strdup_printf (dngettext (GETTEXT_PACKAGE, "%s piece", "%s pieces",
                                                         tr_say_plural (piece->count)), count));
}

/* "butter 11 g": a name and a mass of one piece. */
static void
append_content (GString        *out,
                const TrReader *reader,
                const char     *name,
                double          grams)
{
  g_autofree char *mass = tr_words_mass (reader, grams);

  if (isfinite (grams))
    tr_say_append_part (out, g_strdup_printf ("%s %s", name, mass));
}

static void
append_sheet (GString        *out,
              const TrReader *reader,
              const TrSheet  *sheet)
{
  TrSize relaxed = { { sheet->length_mm, sheet->width_mm, sheet->thickness_mm } };
  g_autofree char *size = tr_words_size (reader, &relaxed);
  g_autofree char *count = tr_say_small_number (reader, sheet->sheets);

  tr_say_append_part (out, g_strdup_printf (dngettext (GETTEXT_PACKAGE, "%s sheet %s", "%s sheets %s",
                                                       tr_say_plural (sheet->sheets)), count, size));
}

/* The allergens are always found; they are not what the reader has to look at. */
static void
append_findings (GString              *out,
                 const TrDoughFigures *figures)
{
  unsigned long count = 0;

  for (guint i = 0; figures->findings != NULL && i < figures->findings->len; i++)
    {
      const TrFinding *finding = g_ptr_array_index (figures->findings, i);

      count += finding->id != TR_FINDING_ALLERGENS;
    }
  if (count == 0)
    tr_say_append_part (out, g_strdup (_("no findings")));
  else
    tr_say_append_part (out, g_strdup_printf (dngettext (GETTEXT_PACKAGE, "%lu finding", "%lu findings", count), count));
}

char *
tr_words_strip (const TrReader       *reader,
                const TrDoughFigures *figures)
{
  GString *out = g_string_new (NULL);

  append_pieces (out, reader, figures);
  append_content (out, reader, tr_words_fat (&figures->formula), figures->piece.added_fat_g);
  append_content (out, reader, _("salt"), figures->piece.content.salt_g);
  if (figures->has_sheet)
    append_sheet (out, reader, &figures->sheet);
  append_findings (out, figures);

  return g_string_free (out, FALSE);
}
