/* swap-refusal.c: why an ingredient cannot take the place of another
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The message is for programs and their logs, in plain English; who speaks to
 * a reader makes the sentence from the code and the refusal.
 */

#include "swap-private.h"

typedef TrSwapRefusal TrSwapErrorPrivate;

static void
tr_swap_error_private_init (TrSwapErrorPrivate *private)
{
  *private = (TrSwapRefusal) { .kept = TR_N_KEPT, .line = -1, .wanted_g = NAN, .there_g = NAN };
}

static void
tr_swap_error_private_copy (const TrSwapErrorPrivate *from,
                            TrSwapErrorPrivate       *to)
{
  *to = *from;
}

static void
tr_swap_error_private_clear (TrSwapErrorPrivate *private)
{
}

G_DEFINE_EXTENDED_ERROR (TrSwapError, tr_swap_error)

static const char *const messages[] = {
  [TR_SWAP_ERROR_NOT_WEIGHED] = "The line cannot be weighed, so nothing can be kept as it is.",
  [TR_SWAP_ERROR_OTHER_KIND] = "An ingredient of another kind cannot take its place.",
  [TR_SWAP_ERROR_NOT_KNOWN] = "How much of it an ingredient brings is not known.",
  [TR_SWAP_ERROR_NO_LINE] = "The dough has no line that could make up for it.",
  [TR_SWAP_ERROR_TOO_LITTLE] = "A line has less than would have to go.",
  [TR_SWAP_ERROR_AT_ONCE] = "No amounts of these lines keep all of that at once.",
};

const TrSwapRefusal *
tr_swap_error_get_refusal (const GError *error)
{
  return error != NULL && error->domain == TR_SWAP_ERROR ? tr_swap_error_get_private (error) : NULL;
}

gboolean
tr_swap_refuse (GError        **error,
                TrSwapError     code,
                TrSwapRefusal   refusal)
{
  g_return_val_if_fail ((guint) code < G_N_ELEMENTS (messages), FALSE);

  if (error == NULL)
    return FALSE;

  *error = g_error_new_literal (TR_SWAP_ERROR, (int) code, messages[code]);
  *tr_swap_error_get_private (*error) = refusal;

  return FALSE;
}
