/* refusal.c: why a ratio or a line's percent cannot be what was asked for
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "../calc/balance.h"
#include "say.h"

static char *
percent_text (const TrReader *reader,
              double          percent)
{
  return tr_say_with_unit (tr_say_trimmed (reader, percent, 2), "%");
}

static char *
out_of_reach (const TrReader  *reader,
              const TrRefusal *refusal)
{
  g_autofree char *given = percent_text (reader, refusal->value[0]), *low = percent_text (reader, refusal->value[1]);
  g_autofree char *high = percent_text (reader, refusal->value[2]);

  return isfinite (refusal->value[2]) ? g_strdup_printf (_("%s is out of reach: expected %s to %s."), given, low, high)
                                      : g_strdup_printf (_("%s is out of reach: expected at least %s."), given, low);
}

static char *
ratio_refusal (const TrRefusal *refusal)
{
  switch ((int) refusal->id)
    {
    case TR_REFUSAL_NO_LINE:
      return g_strdup (_("No line of the formula can move this ratio."));
    case TR_REFUSAL_LINES_NOT_WEIGHED:
      return g_strdup (_("This ratio cannot be moved while its lines cannot be weighed."));
    case TR_REFUSAL_NO_AMOUNT:
      return g_strdup (_("No amount of these lines makes this ratio."));
    case TR_REFUSAL_NO_FLOUR:
      return g_strdup (_("There is no flour yet to take a ratio of."));
    case TR_REFUSAL_TOO_MANY_LINES:
      return g_strdup_printf (_("A dough has at most %d lines."), (int) refusal->value[0]);
    case TR_REFUSAL_NO_FLOUR_TO_GIVE:
      return g_strdup (_("No line of the dough has enough flour to give to a preferment."));
    case TR_REFUSAL_NO_WATER_TO_GIVE:
      return g_strdup (_("No line of the dough has enough water to give to a preferment."));
    case TR_REFUSAL_NO_YEAST_TO_GIVE:
      return g_strdup (_("No line of the dough has enough yeast to give to a preferment."));
    default:
      return NULL;
    }
}

static char *
line_refusal (const TrReader  *reader,
              const TrRefusal *refusal)
{
  g_autofree char *given = percent_text (reader, refusal->value[0]), *greatest = percent_text (reader, refusal->value[1]);

  switch ((int) refusal->id)
    {
    case TR_REFUSAL_ONLY_FLOUR:
      return g_strdup_printf (_("%s cannot be: this line is the only flour, and the flour is the 100 %%."), given);
    case TR_REFUSAL_OTHER_FLOUR:
      return g_strdup_printf (_("%s is more than the other flour can give way to: expected at most %s."), given, greatest);
    case TR_REFUSAL_LINE_NOT_WEIGHED:
      return g_strdup_printf (_("%s of what? There is no flour that can be weighed yet, or the ingredient is not known."), given);
    case TR_REFUSAL_NO_AMOUNT_OF_LINE:
      return g_strdup_printf (_("No amount of this line makes %s of the flour."), given);
    default:
      return NULL;
    }
}

char *
tr_words_error (const TrReader *reader,
                const GError   *error)
{
  const TrRefusal *refusal = tr_balance_error_get_refusal (error);
  char *sentence = NULL;

  g_return_val_if_fail (reader != NULL && error != NULL, NULL);

  if (refusal != NULL && refusal->id == TR_REFUSAL_OUT_OF_REACH)
    sentence = out_of_reach (reader, refusal);
  else if (refusal != NULL)
    sentence = ratio_refusal (refusal);
  if (refusal != NULL && sentence == NULL)
    sentence = line_refusal (reader, refusal);

  return sentence != NULL ? sentence : g_strdup (error->message);
}
