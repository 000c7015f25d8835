/* balance-refusal.c: why a ratio or a line's percent cannot be what was asked for
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The message is for programs and their logs, in plain English; who speaks to
 * a reader makes the sentence from the reason and its values.
 */

#include <math.h>

#include "balance-private.h"

typedef TrRefusal TrBalanceErrorPrivate;

static void
tr_balance_error_private_init (TrBalanceErrorPrivate *private)
{
  *private = (TrRefusal) { TR_REFUSAL_OTHER, { NAN, NAN, NAN } };
}

static void
tr_balance_error_private_copy (const TrBalanceErrorPrivate *from,
                               TrBalanceErrorPrivate       *to)
{
  *to = *from;
}

static void
tr_balance_error_private_clear (TrBalanceErrorPrivate *private)
{
}

G_DEFINE_EXTENDED_ERROR (TrBalanceError, tr_balance_error)

/* "{1}" is the first value. */
static const struct { TrBalanceError code; const char *message; } refusals[TR_N_REFUSALS] = {
  [TR_REFUSAL_OUT_OF_REACH] = { TR_BALANCE_ERROR_REACH, "{1} % is out of reach: expected {2} to {3} %." },
  [TR_REFUSAL_NO_LINE] = { TR_BALANCE_ERROR_NO_LINE, "No line of the formula can move this ratio." },
  [TR_REFUSAL_LINES_NOT_WEIGHED] = { TR_BALANCE_ERROR_NOT_KNOWN, "This ratio cannot be moved while its lines cannot be weighed." },
  [TR_REFUSAL_NO_AMOUNT] = { TR_BALANCE_ERROR_REACH, "No amount of these lines makes this ratio." },
  [TR_REFUSAL_NO_FLOUR] = { TR_BALANCE_ERROR_NOT_KNOWN, "There is no flour yet to take a ratio of." },
  [TR_REFUSAL_TOO_MANY_LINES] = { TR_BALANCE_ERROR_REACH, "A dough has at most {1} lines." },
  [TR_REFUSAL_ONLY_FLOUR] = { TR_BALANCE_ERROR_REACH, "{1} % cannot be: this line is the only flour, and the flour is the 100 %." },
  [TR_REFUSAL_OTHER_FLOUR] = { TR_BALANCE_ERROR_REACH, "{1} % is more than the other flour can give way to: expected at most {2} %." },
  [TR_REFUSAL_LINE_NOT_WEIGHED] = { TR_BALANCE_ERROR_NOT_KNOWN,
                                    "{1} % of what? There is no flour that can be weighed yet, or the ingredient is not known." },
  [TR_REFUSAL_NO_AMOUNT_OF_LINE] = { TR_BALANCE_ERROR_REACH, "No amount of this line makes {1} % of the flour." },
  [TR_REFUSAL_NO_FLOUR_TO_GIVE] = { TR_BALANCE_ERROR_NO_LINE, "No line of the dough has enough flour to give to a preferment." },
  [TR_REFUSAL_NO_WATER_TO_GIVE] = { TR_BALANCE_ERROR_NO_LINE, "No line of the dough has enough water to give to a preferment." },
  [TR_REFUSAL_NO_YEAST_TO_GIVE] = { TR_BALANCE_ERROR_NO_LINE, "No line of the dough has enough yeast to give to a preferment." },
};

const TrRefusal *
tr_balance_error_get_refusal (const GError *error)
{
  return error != NULL && error->domain == TR_BALANCE_ERROR ? tr_balance_error_get_private (error) : NULL;
}

gboolean
tr_balance_refuse (GError     **error,
                   TrRefusalId  id,
                   double       first,
                   double       second,
                   double       third)
{
  const TrRefusal refusal = { id, { first, second, third } };
  g_autoptr (GString) message = NULL;

  g_return_val_if_fail (id > TR_REFUSAL_OTHER && id < TR_N_REFUSALS, FALSE);

  if (error == NULL)
    return FALSE;

  message = g_string_new (refusals[id].message);
  for (int i = 0; i < 3; i++)
    {
      char number[G_ASCII_DTOSTR_BUF_SIZE];
      const char place[] = { '{', (char) ('1' + i), '}', '\0' };

      g_ascii_formatd (number, sizeof number, "%.4g", refusal.value[i]);
      g_string_replace (message, place, number, 0);
    }
  *error = g_error_new_literal (TR_BALANCE_ERROR, (int) refusals[id].code, message->str);
  *tr_balance_error_get_private (*error) = refusal;

  return FALSE;
}
