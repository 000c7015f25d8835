/* finding-time.c: sentences about rests, the work window and oven loads
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "finding.h"

/* "The rest after turn 2" */
static char *
which_rest (const TrSaid *said)
{
  if (said->turn == 0)
    return g_strdup (_("the chill before lock-in"));
  return g_strdup_printf (_("the rest after turn %d"), said->turn);
}

char *
tr_sentence_rest_short (const TrSaid *said)
{
  const double *with = said->finding->with;
  g_autofree char *rest = which_rest (said);
  g_autofree char *core = tr_words_temperature (said->reader, said->finding->value);
  g_autofree char *target = tr_words_temperature (said->reader, said->finding->limit);
  GString *out = g_string_new (NULL);

  if (isfinite (with[1]))
    {
      g_autofree char *written = tr_words_minutes (said->reader, with[1]);

      tr_say_append_sentence (out, g_strdup_printf (_("After %s of %s the core is still at %s; %s is wanted."),
                                                    rest, written, core, target));
    }
  else
    tr_say_append_sentence (out, g_strdup_printf (_("After %s the core is still at %s; %s is wanted."), rest, core, target));
  if (isfinite (with[2]))
    {
      g_autofree char *needed = tr_words_minutes (said->reader, ceil (with[2]));

      tr_say_append_sentence (out, g_strdup_printf (_("Let it rest at least %s, or flatten the block."), needed));
    }
  else
    tr_say_append_sentence (out, g_strdup (_("Let it rest somewhere colder, or flatten the block.")));
  return g_string_free (out, FALSE);
}

char *
tr_sentence_window_short (const TrSaid *said)
{
  g_autofree char *window = tr_words_minutes (said->reader, floor (said->finding->value));
  g_autofree char *needed = tr_words_minutes (said->reader, said->finding->limit);
  g_autofree char *what = said->turn == 0 ? g_strdup (_("Rolling the sheet")) : g_strdup_printf (_("Turn %d"), said->turn);

  return g_strdup_printf (_("%s takes %s, but the fat can be rolled for at most %s in this room; work in halves, in a cooler "
                            "room or on a chilled worktop."), what, needed, window);
}

char *
tr_sentence_freezing (const TrSaid *said)
{
  g_autofree char *rest = which_rest (said);
  g_autofree char *written = tr_words_minutes (said->reader, said->finding->value);
  g_autofree char *freezing = tr_words_minutes (said->reader, floor (said->finding->limit));

  return g_strdup_printf (_("In the freezer the surface begins to freeze after %s, and %s is written as %s; turn the block over "
                            "and move it to the fridge by then."), freezing, rest, written);
}

char *
tr_sentence_loads (const TrSaid *said)
{
  g_autofree char *proof = tr_words_minutes (said->reader, said->finding->value);
  g_autofree char *limit = tr_words_minutes (said->reader, said->finding->limit);
  GString *out = g_string_new (NULL);

  if (isfinite (said->finding->with[0]))
    {
      g_autofree char *loads = tr_say_small_number (said->reader, said->finding->with[0]);

      tr_say_append_sentence (out, g_strdup_printf (_("Baked in %s loads, the last one proofs %s; its longest proof is %s."),
                                                    loads, proof, limit));
    }
  else
    tr_say_append_sentence (out, g_strdup_printf (_("The last load proofs %s; its longest proof is %s."), proof, limit));
  tr_say_append_sentence (out, g_strdup (_("Keep the later loads cold until the oven is free.")));
  return g_string_free (out, FALSE);
}
