/* search-use.c: a list of folds that was found, written into a dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "search-private.h"

/* The turn that stands there, else one like the last. */
static TrTurn *
new_turn (const TrSequence *sequence,
          const TrDough    *dough,
          guint             index)
{
  TrTurn *turn = dough->turns->len > 0 ? tr_turn_copy (tr_dough_get_turn (dough, MIN (index, dough->turns->len - 1)))
                                       : tr_turn_new (sequence->folds[index], sequence->thickness_mm);

  turn->fold = sequence->folds[index];
  turn->thickness_mm = sequence->thickness_mm;
  turn->length_mm = turn->width_mm = NAN;
  turn->trim_mm = 0;

  return turn;
}

void
tr_sequence_apply (const TrSequence *sequence,
                   TrDough          *dough)
{
  GPtrArray *turns = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_turn_free);
  TrLockIn *lock_in = tr_search_lock_in_new (dough, sequence->style, sequence->blocks);

  tr_lock_in_free (dough->lock_in);
  dough->lock_in = lock_in;
  for (guint i = 0; i < sequence->n_folds; i++)
    g_ptr_array_add (turns, new_turn (sequence, dough, i));
  g_ptr_array_unref (dough->turns);
  dough->turns = turns;
}

gboolean
tr_sequence_is_of (const TrSequence *sequence,
                   const TrDough    *dough)
{
  if (dough->lock_in == NULL || dough->lock_in->style != sequence->style || MAX (dough->lock_in->blocks, 1) != sequence->blocks
      || dough->turns->len != sequence->n_folds)
    return FALSE;

  for (guint i = 0; i < sequence->n_folds; i++)
    if (tr_dough_get_turn (dough, i)->fold != sequence->folds[i])
      return FALSE;

  return TRUE;
}
