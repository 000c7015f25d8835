/* say.c: what the files of this room share
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "say.h"

#define QUOTE_MAX 60

char *
tr_say_with_unit (char       *number,
                  const char *unit)
{
  g_autofree char *owned = number;

  return g_strconcat (owned, TR_NO_BREAK_SPACE, unit, NULL);
}

gboolean
tr_say_is_us (const TrReader *reader)
{
  return reader->units == TR_UNITS_US;
}

/* Embeddings, overrides and isolates: unclosed, they would turn our own words. */
static gboolean
sets_direction (gunichar c)
{
  return (c >= 0x202a && c <= 0x202e) || (c >= 0x2066 && c <= 0x2069);
}

char *
tr_words_one_line (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  GString *out = g_string_new (NULL);

  for (const char *p = valid; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (sets_direction (c))
        continue;
      if (g_unichar_isspace (c) && c != 0xa0 && c != 0x2009 && c != 0x202f)
        c = ' ';
      g_string_append_unichar (out, g_unichar_iscntrl (c) ? 0xfffd : c);
    }

  return g_string_free (out, FALSE);
}

char *
tr_say_quote (const char *text)
{
  g_autofree char *line = tr_words_one_line (text);
  gboolean is_long = g_utf8_strlen (line, -1) > QUOTE_MAX;
  g_autofree char *start = g_utf8_substring (line, 0, is_long ? QUOTE_MAX : -1);

  return g_strdup_printf ("“%s%s”", start, is_long ? "…" : "");
}

char *
tr_say_capital (const char *text)
{
  g_autofree char *first = g_utf8_substring (text, 0, MIN (1, g_utf8_strlen (text, 1)));
  g_autofree char *capital = g_utf8_strup (first, -1);

  return g_strconcat (capital, text + strlen (first), NULL);
}

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

unsigned long
tr_say_plural (double count)
{
  return isfinite (count) ? (unsigned long) CLAMP (fabs (round (count)), 0, 1e9) : 2;
}

char *
tr_say_unit (TrUnit unit,
             double number)
{
  unsigned long n = fabs (number - 1) < 1e-9 || (number > 0 && number < 1) ? 1 : 2;

  switch ((int) unit)
    {
    case TR_UNIT_FLOZ: return g_strdup (_("fl oz"));
    case TR_UNIT_CUP: return g_strdup (dngettext (GETTEXT_PACKAGE, "cup", "cups", n));
    case TR_UNIT_CUP_METRIC: return g_strdup (dngettext (GETTEXT_PACKAGE, "metric cup", "metric cups", n));
    case TR_UNIT_EGG: return g_strdup (dngettext (GETTEXT_PACKAGE, "egg", "eggs", n));
    case TR_UNIT_WHITE: return g_strdup (dngettext (GETTEXT_PACKAGE, "egg white", "egg whites", n));
    case TR_UNIT_YOLK: return g_strdup (dngettext (GETTEXT_PACKAGE, "egg yolk", "egg yolks", n));
    case TR_UNIT_PIECE: return g_strdup (dngettext (GETTEXT_PACKAGE, "piece", "pieces", n));
    case TR_UNIT_STICK: return g_strdup (dngettext (GETTEXT_PACKAGE, "stick", "sticks", n));
    case TR_UNIT_PACKET: return g_strdup (dngettext (GETTEXT_PACKAGE, "packet", "packets", n));
    case TR_UNIT_CAKE: return g_strdup (dngettext (GETTEXT_PACKAGE, "cake", "cakes", n));
    case TR_UNIT_PINCH: return g_strdup (dngettext (GETTEXT_PACKAGE, "pinch", "pinches", n));
    case TR_UNIT_CUBE: return g_strdup (dngettext (GETTEXT_PACKAGE, "cube", "cubes", n));
    case TR_UNIT_PERCENT_OF_DOUGH: return g_strdup (_("% of dough"));
    case TR_UNIT_PERCENT_OF_TOTAL: return g_strdup (_("% of total"));
    default: return g_strdup (unit < TR_N_UNITS ? tr_unit_id (unit) : "");
    }
}

char *
tr_say_quantity (const TrReader *reader,
                 double          number,
                 double          unit)
{
  g_autofree char *amount = tr_say_trimmed (reader, number, 3);
  g_autofree char *name = NULL;

  if (!isfinite (unit) || unit < 0 || unit >= TR_N_UNITS)
    return g_steal_pointer (&amount);
  name = tr_say_unit ((TrUnit) unit, number);
  return tr_say_with_unit (g_steal_pointer (&amount), name);
}

/* Two numbers of which a sentence says that they differ must not look alike:
 * as many decimals as that takes. */
void
tr_say_apart (const TrReader  *reader,
              double           a,
              double           b,
              int              decimals,
              const char      *unit,
              char           **a_text,
              char           **b_text)
{
  double shown_a = a, shown_b = b;

  for (; decimals < 4; decimals++)
    {
      shown_a = tr_say_round (a, decimals);
      shown_b = tr_say_round (b, decimals);
      if (fabs (shown_a - shown_b) > 0)
        break;
    }
  *a_text = isfinite (a) ? tr_say_with_unit (tr_say_trimmed (reader, a, decimals), unit) : g_strdup (TR_NOT_KNOWN);
  *b_text = isfinite (b) ? tr_say_with_unit (tr_say_trimmed (reader, b, decimals), unit) : g_strdup (TR_NOT_KNOWN);
}

void
tr_say_lengths_apart (const TrReader  *reader,
                      double           a_mm,
                      double           b_mm,
                      char           **a_text,
                      char           **b_text)
{
  *a_text = tr_words_length (reader, a_mm);
  *b_text = tr_words_length (reader, b_mm);
  if (!g_str_equal (*a_text, *b_text) || fabs (a_mm - b_mm) <= 0)
    return;
  g_clear_pointer (a_text, g_free);
  g_clear_pointer (b_text, g_free);
  if (tr_say_is_us (reader))
    tr_say_apart (reader, a_mm / TR_MM_PER_INCH, b_mm / TR_MM_PER_INCH, 2, _("in"), a_text, b_text);
  else
    tr_say_apart (reader, a_mm, b_mm, 1, _("mm"), a_text, b_text);
}

char *
tr_say_length_up (const TrReader *reader,
                  double          mm)
{
  double step = tr_say_is_us (reader) ? TR_MM_PER_INCH / 32 : 0.5;

  return tr_words_length (reader, ceil (mm / step - 1e-9) * step);
}

char *
tr_say_length_down (const TrReader *reader,
                    double          mm)
{
  double step = tr_say_is_us (reader) ? TR_MM_PER_INCH / 32 : 0.5;

  return tr_words_length (reader, MAX (floor (mm / step + 1e-9), 0) * step);
}

char *
tr_say_ingredient (const TrDoughFigures *figures,
                   const char           *id)
{
  TrIngredient ingredient;

  if (id != NULL && figures != NULL && tr_ingredient_resolve (figures->pantry, id, &ingredient))
    return tr_words_one_line (tr_words_ingredient (&ingredient));
  return NULL;
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

void
tr_say_append_sentence (GString *out,
                        char    *sentence)
{
  if (sentence != NULL && *sentence != '\0')
    g_string_append_printf (out, "%s%s", out->len > 0 ? " " : "", sentence);
  g_free (sentence);
}
