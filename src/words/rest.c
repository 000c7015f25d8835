/* rest.c: what a rest does to the slab, in sentences
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "rest.h"
#include "say.h"

/* Temperatures are calculated to a tenth of a degree, and no better. */
static char *
say_celsius (const TrReader *reader,
             double          celsius)
{
  return tr_words_temperature (reader, tr_say_round (celsius, 1));
}

static char *
say_least (const TrReader *reader,
           double          minutes)
{
  return tr_words_minutes (reader, ceil (minutes - 1e-6));
}

static char *
say_most (const TrReader *reader,
          double          minutes)
{
  return tr_words_minutes (reader, floor (minutes + 1e-6));
}

/* What the written minutes do; NULL: the model has ended. */
static char *
dup_after_written (const TrReader      *reader,
                   const TrRestFigures *rest)
{
  g_autofree char *written = tr_words_minutes (reader, rest->written_minutes);
  g_autofree char *core = say_celsius (reader, rest->core_c_after_written);

  if (isnan (rest->core_c_after_written))
    return NULL;

  return g_strdup_printf (_("After the written %s the core is at %s."), written, core);
}

static char *
dup_needed (const TrReader      *reader,
            const TrRestFigures *rest)
{
  g_autofree char *target = say_celsius (reader, rest->target_c);
  g_autofree char *air = say_celsius (reader, rest->air_c);

  if (rest->air_c > rest->start_c)
    return g_strdup_printf (_("At %s around it the slab only warms."), air);
  if (rest->air_c >= rest->start_c)
    return g_strdup_printf (_("Air of %s leaves it as warm as it is."), air);

  switch (rest->core_why)
    {
    case TR_HEAT_NEVER_THERE:
      return g_strdup_printf (_("Air of %s never brings it to %s."), air, target);
    case TR_HEAT_FREEZES:
      return g_strdup_printf (_("Its surface freezes before the core is at %s."), target);
    case TR_HEAT_KNOWN:
      break;
    case TR_HEAT_NOT_KNOWN:
    case TR_HEAT_ONLY_WARMS:
    case TR_HEAT_NO_FAT:
    case TR_HEAT_ROOM_TOO_COLD:
    case TR_HEAT_NO_LIMIT:
    case TR_HEAT_NOT_ASKED:
    default:
      return NULL;
    }
  if (!(rest->minutes_to_core > 0))
    return g_strdup_printf (_("It is not warmer than %s to begin with."), target);

  g_autofree char *needed = say_least (reader, rest->minutes_to_core);

  return g_strdup_printf (_("The core needs at least %s to come to %s."), needed, target);
}

char *
tr_words_rest_core (const TrReader      *reader,
                    const TrRestFigures *rest)
{
  g_autoptr (GString) out = g_string_new (NULL);
  char *needed = dup_needed (reader, rest), *after = dup_after_written (reader, rest);

  if (needed != NULL)
    tr_say_append_sentence (out, needed);
  if (after != NULL)
    tr_say_append_sentence (out, after);

  return out->len > 0 ? g_string_free (g_steal_pointer (&out), FALSE) : NULL;
}

char *
tr_words_rest_freezing (const TrReader      *reader,
                        const TrRestFigures *rest)
{
  g_autofree char *freezing = say_most (reader, rest->minutes_to_surface_freezing);

  if (isnan (rest->minutes_to_surface_freezing))
    return NULL;

  return g_strdup_printf (_("Take it out after at most %s: then its surface begins to freeze."), freezing);
}

static char *
dup_fat_name (const TrDoughFigures *figures,
              const TrRestFigures  *rest)
{
  return rest->fat != NULL ? tr_say_ingredient (figures, rest->fat) : NULL;
}

char *
tr_words_rest_window (const TrReader       *reader,
                      const TrDoughFigures *figures,
                      const TrRestFigures  *rest)
{
  g_autofree char *low = say_celsius (reader, rest->plastic_low_c), *soft = say_celsius (reader, rest->soft_c);
  g_autofree char *fat = dup_fat_name (figures, rest);
  g_autofree char *wait = NULL, *window = NULL;

  if (rest->workable_why == TR_HEAT_NO_FAT)
    return g_strdup (_("At which temperatures this fat can be rolled is not known; it can be written among the ingredients."));
  if (rest->workable_why == TR_HEAT_ROOM_TOO_COLD)
    return g_strdup_printf (_("This room never warms it to the %s at which the fat bends."), low);
  if (isnan (rest->minutes_to_workable))
    return NULL;

  wait = rest->minutes_to_workable > 0 ? say_least (reader, rest->minutes_to_workable) : NULL;
  if (rest->window_why == TR_HEAT_NO_LIMIT)
    return wait != NULL ? g_strdup_printf (_("It bends after %s on the bench; this room never makes it too soft."), wait)
                        : g_strdup (_("It can be rolled at once; this room never makes it too soft."));
  if (isnan (rest->work_window_minutes))
    return wait != NULL ? g_strdup_printf (_("It bends after %s on the bench."), wait) : g_strdup (_("It can be rolled at once."));

  window = say_most (reader, rest->work_window_minutes);
  if (!(rest->work_window_minutes > 0))
    return g_strdup_printf (_("It is too soft to be rolled: %s should stay under %s."), fat != NULL ? fat : _("the fat"), soft);
  if (wait != NULL)
    return g_strdup_printf (_("It bends after %s on the bench; rolled out, it stays under %s for at most %s."), wait, soft, window);

  return g_strdup_printf (_("It can be rolled at once; rolled out, it stays under %s for at most %s."), soft, window);
}

char *
tr_words_rest_in_short (const TrReader      *reader,
                        const TrRestFigures *rest)
{
  g_autoptr (GString) out = g_string_new (NULL);
  g_autofree char *target = say_celsius (reader, rest->target_c);

  if (rest->minutes_to_core > 0)
    {
      g_autofree char *needed = say_least (reader, rest->minutes_to_core);

      tr_say_append_part (out, g_strdup_printf (_("core %s: %s or more"), target, needed));
    }
  if (!isnan (rest->minutes_to_surface_freezing))
    {
      g_autofree char *out_by = say_most (reader, rest->minutes_to_surface_freezing);

      tr_say_append_part (out, g_strdup_printf (_("out by %s"), out_by));
    }
  if (rest->minutes_to_workable > 0)
    {
      g_autofree char *wait = say_least (reader, rest->minutes_to_workable);

      tr_say_append_part (out, g_strdup_printf (_("bends after %s"), wait));
    }
  if (!isnan (rest->work_window_minutes))
    {
      g_autofree char *window = say_most (reader, rest->work_window_minutes);

      tr_say_append_part (out, g_strdup_printf (_("roll within %s"), window));
    }

  return out->len > 0 ? g_string_free (g_steal_pointer (&out), FALSE) : NULL;
}

const char *
tr_words_rest_caveat (void)
{
  return _("Calculated for a slab in still air, layers of fat and dough averaged (a few percent off while there are only one "
           "or two thick layers). The heat of setting fat and the work of rolling are not counted: a rest takes at least, "
           "a window lasts at most, what is said. A probe in the middle knows better.");
}

const char *
tr_words_rest_bound (void)
{
  return _("Calculated for a solid slab, its layers averaged and the heat of setting fat left out: a rest takes at least, "
           "the time to roll lasts at most, what is said here.");
}
