/* passes.c: from thick to thin, as it is read off at the rollers
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "passes.h"
#include "say.h"

#define HAIR 1e-9

static char *
dup_gaps (const TrReader *reader,
          const GArray   *gaps)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < gaps->len; i++)
    {
      g_autofree char *gap = tr_words_length_number (reader, g_array_index (gaps, double, i));

      g_string_append_printf (out, "%s%s", i > 0 ? " · " : "", gap);
    }

  return tr_say_with_unit (g_string_free (out, FALSE), tr_words_length_unit (reader));
}

/* One direction: "gaps 16 · 9 mm", of a second one "16 · 9 mm". */
static char *
dup_leg (const TrReader  *reader,
         const TrBench   *bench,
         const TrPassLeg *leg,
         gboolean         is_first)
{
  g_autofree char *gaps = dup_gaps (reader, leg->gaps_mm), *pin = tr_words_length (reader, leg->pin_mm);

  if (tr_is_written (leg->pin_mm))
    return leg->gaps_mm->len > 0 ? g_strdup_printf (_("by pin to %s, then gaps %s"), pin, gaps) : g_strdup_printf (_("by pin to %s"), pin);
  if (!is_first)
    return g_steal_pointer (&gaps);

  return tr_is_written (bench->roll_width_max_mm) ? g_strdup_printf (_("gaps %s"), gaps) : g_strdup_printf (_("guides %s"), gaps);
}

char *
tr_words_passes (const TrReader *reader,
                 const TrBench  *bench,
                 const TrPasses *passes)
{
  g_autofree char *first = NULL, *second = NULL, *said = NULL;

  if (passes->n_legs == 0)
    return NULL;

  first = dup_leg (reader, bench, &passes->legs[0], TRUE);
  said = passes->legs[0].is_across ? g_strdup_printf (_("Turned, %s"), first) : tr_say_capital (first);
  if (passes->n_legs == 1)
    return g_steal_pointer (&said);

  second = dup_leg (reader, bench, &passes->legs[1], FALSE);

  return passes->legs[0].is_across ? g_strdup_printf (_("%s; turned back, %s"), said, second)
                                   : g_strdup_printf (_("%s; turned, %s"), said, second);
}

char *
tr_words_passes_why (const TrReader *reader,
                     const TrBench  *bench)
{
  g_autofree char *percent = tr_words_percent (reader, bench->pass_reduction_percent);

  return g_strdup_printf (_("Each pass takes at most %s of the thickness, as set on the Bench page."), percent);
}

/* NULL: it is stretched both ways. */
static const char *
get_way_too_large (const TrToSheet *to_sheet)
{
  if (to_sheet->stretch_length < 1 - HAIR)
    return _("It is longer than the sheet already: fold, trim or part it otherwise.");
  if (to_sheet->stretch_width < 1 - HAIR)
    return _("It is wider than the sheet already: fold, trim or part it otherwise.");

  return NULL;
}

/* Which way first, and how far. */
static char *
dup_ways (const TrReader  *reader,
          const TrToSheet *to_sheet)
{
  g_autofree char *longer = tr_words_number (reader, to_sheet->stretch_length, 1);
  g_autofree char *wider = tr_words_number (reader, to_sheet->stretch_width, 1);

  if (!(to_sheet->stretch_width > 1 + HAIR))
    return g_strdup_printf (_("%s times longer"), longer);
  if (!(to_sheet->stretch_length > 1 + HAIR))
    return g_strdup_printf (_("%s times wider"), wider);

  return g_strcmp0 (to_sheet->order, "length-first") == 0 ? g_strdup_printf (_("first %s times longer, then %s times wider"), longer, wider)
                                                          : g_strdup_printf (_("first %s times wider, then %s times longer"), wider, longer);
}

char *
tr_words_to_sheet (const TrReader       *reader,
                   const TrDoughFigures *figures)
{
  const TrToSheet *to_sheet = &figures->lamination.to_sheet;

  if (!figures->has_lamination || !figures->lamination.has_to_sheet || !figures->has_sheet)
    return NULL;

  g_autofree char *start = tr_words_size_bare (reader, &to_sheet->start_mm);
  g_autofree char *sheet = tr_words_size (reader, &figures->sheet.rolled_mm);
  g_autofree char *ways = dup_ways (reader, to_sheet);
  const char *too_large = get_way_too_large (to_sheet);
  g_autofree char *how = g_strdup_printf (_("To the sheet: %s → %s; %s."), start, sheet, ways);
  g_autofree char *all = too_large != NULL ? g_strdup_printf ("%s %s", how, too_large) : g_steal_pointer (&how);

  if (to_sheet->blocks_cut > 1)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Cut the block into %.0f for as many sheets. %s",
                                         "Cut each block into %.0f for as many sheets. %s", (unsigned long) figures->dough->lock_in->blocks),
                            to_sheet->blocks_cut, all);

  return g_steal_pointer (&all);
}

char *
tr_words_sheet_passes (const TrReader       *reader,
                       const TrDoughFigures *figures)
{
  g_auto (TrPasses) passes = { 0 };

  tr_passes_init_sheet (&passes, figures);

  return tr_words_passes (reader, figures->bench, &passes);
}
