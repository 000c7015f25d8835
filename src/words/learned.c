/* learned.c: what the log tells, with the numbers it comes from
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "../calc/mix.h"
#include "learned.h"
#include "say.h"

static char *
say_value (const TrReader *reader,
           TrLearnedId     id,
           double          value)
{
  g_autofree char *number = NULL;

  if (id == TR_LEARNED_FRICTION)
    return tr_words_warming (reader, value);

  number = tr_say_trimmed (reader, value, id == TR_LEARNED_DENSITY ? 3 : 1);

  return g_strdup_printf ("%s" TR_NO_BREAK_SPACE "%s", number, id == TR_LEARNED_DENSITY ? "g/ml" : "%");
}

static char *
say_found (const TrReader  *reader,
           const TrLearned *learned)
{
  g_autofree char *value = say_value (reader, learned->id, learned->value);
  const double *measured = learned->measured;

  switch (learned->id)
    {
    case TR_LEARNED_DENSITY:
      {
        g_autofree char *mass = tr_words_mass (reader, measured[0]), *volume = tr_words_number (reader, measured[1], 0);

        return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u weighed cut, %s of %s ml: the dough without its fat has %s.",
                                             "%u weighed cuts, %s of %s ml together: the dough without its fat has %s.", learned->n),
                                learned->n, mass, volume, value);
      }
    case TR_LEARNED_BAKE_LOSS:
      {
        g_autofree char *raw = tr_words_mass (reader, measured[0]), *baked = tr_words_mass (reader, measured[1]);

        return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u weighing, %s raw and %s baked: %s is lost.",
                                             "%u weighings, %s raw and %s baked together: %s is lost.", learned->n),
                                learned->n, raw, baked, value);
      }
    case TR_LEARNED_SHRINK:
      {
        g_autofree char *rolled = tr_words_length (reader, measured[0] / learned->n);
        g_autofree char *relaxed = tr_words_length (reader, measured[1] / learned->n);

        return g_strdup_printf (_("The sheet relaxed from %s to %s: it shrinks by %s."), rolled, relaxed, value);
      }
    case TR_LEARNED_FRICTION:
      {
        g_autofree char *came = tr_words_temperature (reader, measured[1]);

        return g_strdup_printf (_("The dough came out at %s: the friction is %s over %.0f temperatures."), came, value, measured[0]);
      }
    case TR_N_LEARNED:
    default:
      g_return_val_if_reached (NULL);
    }
}

char *
tr_words_learned (const TrReader  *reader,
                  const TrLearned *learned)
{
  g_autoptr (GString) out = g_string_new (NULL);

  if (learned->n > 0)
    {
      g_autofree char *now = say_value (reader, learned->id, learned->now);

      tr_say_append_sentence (out, say_found (reader, learned));
      if (learned->n > 1 && learned->greatest > learned->least)
        {
          g_autofree char *least = say_value (reader, learned->id, learned->least);
          g_autofree char *greatest = say_value (reader, learned->id, learned->greatest);

          tr_say_append_sentence (out, g_strdup_printf (_("One by one %s to %s."), least, greatest));
        }
      if (isnan (learned->now))
        tr_say_append_sentence (out, g_strdup (_("None is written so far.")));
      else if (tr_learned_is_set (learned))
        tr_say_append_sentence (out, g_strdup (_("That is in use.")));
      else
        tr_say_append_sentence (out, g_strdup_printf (_("%s is in use."), now));
    }
  if (learned->n_left_out > 0 && learned->id == TR_LEARNED_FRICTION)
    tr_say_append_sentence (out, g_strdup (_("The dough came out colder than what went in. Look at the figures again.")));
  else if (learned->n_left_out > 0)
    tr_say_append_sentence (out, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u measurement cannot be and is left out; look at it again.",
                                                               "%u measurements cannot be and are left out; look at them again.",
                                                               learned->n_left_out), learned->n_left_out));

  return out->len > 0 ? g_string_free (g_steal_pointer (&out), FALSE) : NULL;
}

char *
tr_words_learned_use (const TrReader  *reader,
                      const TrLearned *learned)
{
  g_autofree char *value = NULL;

  if (learned->n == 0 || tr_learned_is_set (learned))
    return NULL;

  value = say_value (reader, learned->id, learned->value);

  return learned->id == TR_LEARNED_FRICTION ? g_strdup_printf (_("Use friction %s"), value) : g_strdup_printf (_("Use %s"), value);
}

char *
tr_words_mix (const TrReader *reader,
              const TrMix    *mix)
{
  g_autofree char *at = tr_words_one_line (mix->at != NULL ? mix->at : "");
  g_autofree char *came = tr_words_temperature (reader, mix->dough_c);
  double n, friction_c = tr_mix_get_friction (mix, &n);
  g_autofree char *friction = tr_words_warming (reader, friction_c);
  g_autofree char *said = NULL;

  if (friction_c >= 0)
    said = g_strdup_printf (_("out at %s, friction %s over %.0f temperatures"), came, friction, n);
  else if (tr_is_written (mix->dough_c))
    said = g_strdup_printf (_("out at %s"), came);
  else
    said = g_strdup (_("nothing measured of the dough"));

  return g_strdup_printf ("%s: %s", *at != '\0' ? at : _("no date"), said);
}
