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

char *
tr_say_small_number (const TrReader *reader,
                     double          count)
{
  static const char *const words[] = {
    NC_("small number", "no"), NC_("small number", "one"), NC_("small number", "two"),
    NC_("small number", "three"), NC_("small number", "four"), NC_("small number", "five"),
    NC_("small number", "six"), NC_("small number", "seven"), NC_("small number", "eight"),
    NC_("small number", "nine"), NC_("small number", "ten"), NC_("small number", "eleven"),
    NC_("small number", "twelve"),
  };
  double whole = tr_say_round (count, 0);

  if (fabs (count - whole) < 1e-9 && whole >= 0 && whole < (double) G_N_ELEMENTS (words))
    return g_strdup (g_dpgettext2 (GETTEXT_PACKAGE, "small number", words[(int) whole]));
  return tr_words_count (reader, count);
}

void
tr_say_append_part (GString *out,
                    char    *part)
{
  if (out->len > 0)
    g_string_append (out, " · ");
  g_string_append (out, part);
  g_free (part);
}

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
                                                         (gulong) CLAMP (piece->count, 0, 1e9)), count));
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
                                                       (gulong) MAX (sheet->sheets, 0)), count, size));
}

/* The allergens are always found; they are not what the reader has to look at. */
static void
append_findings (GString              *out,
                 const TrDoughFigures *figures)
{
  gulong count = 0;

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
