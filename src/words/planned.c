/* planned.c: what is written for a step, a rest or a roll-out, beside what happened
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "planned.h"
#include "say.h"

static char *
say_span (const TrReader *reader,
          double          least,
          double          most)
{
  g_autofree char *from = tr_words_minutes (reader, least), *to = tr_words_minutes (reader, most);

  if (isnan (least))
    return isnan (most) ? NULL : g_strdup_printf (_("at most %s"), to);

  return most > least ? g_strdup_printf (_("%s to %s"), from, to) : g_steal_pointer (&from);
}

char *
tr_words_planned_step (const TrReader *reader,
                       const TrStep   *step)
{
  g_autoptr (GString) out = NULL;
  char *span;

  if (step == NULL)
    return NULL;

  out = g_string_new (NULL);
  span = say_span (reader, step->minutes, step->max_minutes);
  if (span != NULL)
    tr_say_append_sentence (out, span);
  if (tr_is_written (step->at_c))
    {
      g_autofree char *at = tr_words_temperature (reader, step->at_c);

      tr_say_append_sentence (out, g_strdup_printf (_("at %s"), at));
    }
  else if (step->place >= 0)
    {
      g_autofree char *place = g_utf8_strdown (tr_words_place ((TrPlace) step->place), -1);

      g_string_append_printf (out, "%s%s", out->len > 0 ? ", " : "", place);
    }
  if (tr_is_written (step->rh_percent))
    {
      g_autofree char *number = tr_words_number (reader, step->rh_percent, 0);
      g_autofree char *humidity = g_strdup_printf ("%s" TR_NO_BREAK_SPACE "%%", number);

      tr_say_append_sentence (out, out->len > 0 ? g_strdup_printf (_("and %s humidity"), humidity)
                                                : g_strdup_printf (_("%s humidity"), humidity));
    }

  return out->len > 0 ? g_string_free (g_steal_pointer (&out), FALSE) : NULL;
}

char *
tr_words_planned_rest (const TrReader *reader,
                       const TrRest   *rest)
{
  g_autofree char *span = NULL, *place = NULL;

  if (rest == NULL)
    return NULL;

  span = say_span (reader, rest->min_minutes, rest->max_minutes);
  place = g_utf8_strdown (tr_words_place (rest->place), -1);

  return g_strdup_printf ("%s, %s", span != NULL ? span : TR_NOT_KNOWN, place);
}
