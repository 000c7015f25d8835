/* mix.c: what a mix that was measured says about the friction
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "mix.h"

#include "formula.h"
#include "water.h"

double
tr_mix_get_friction (const TrMix *mix,
                     double      *n)
{
  gboolean has_preferment;

  g_return_val_if_fail (mix != NULL, NAN);

  has_preferment = tr_is_written (mix->preferment_c);
  *n = has_preferment ? 4 : 3;

  /* What is not written is NaN, and so is the sum. */
  return *n * mix->dough_c - mix->flour_c - mix->room_c - mix->liquid_c - (has_preferment ? mix->preferment_c : 0);
}

const TrMix *
tr_dough_get_last_mix (const TrDough *dough)
{
  const GPtrArray *mixes = dough->log->mixes;

  return mixes->len > 0 ? g_ptr_array_index (mixes, mixes->len - 1) : NULL;
}

static gboolean
has_ripened (const TrDough  *dough,
             const TrPantry *pantry)
{
  TrFormula formula;

  tr_formula_compute (dough, pantry, &formula);
  gboolean is_there = tr_formula_has_ripened (&formula);
  tr_formula_clear (&formula);

  return is_there;
}

TrMix *
tr_dough_begin_mix (TrDough        *dough,
                    const TrBench  *bench,
                    const TrPantry *pantry)
{
  TrMix *mix = tr_mix_new ();

  mix->flour_c = dough->method->flour_c;
  mix->room_c = bench->room_c;
  if (has_ripened (dough, pantry))
    mix->preferment_c = tr_method_get_ripened_c (dough->method, bench);
  g_ptr_array_add (dough->log->mixes, mix);

  return mix;
}
