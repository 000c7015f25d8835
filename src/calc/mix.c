/* mix.c: what a mix that was measured says about the friction
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "mix.h"

#include "ingredient.h"

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

gboolean
tr_dough_has_ripened (const TrDough  *dough,
                      const TrPantry *pantry)
{
  for (guint i = 0; i < dough->lines->len; i++)
    {
      const TrLine *line = tr_dough_get_line (dough, i);
      TrIngredient ingredient;

      if (line->stage == TR_STAGE_PREFERMENT ||
          (line->ingredient != NULL && tr_ingredient_resolve (pantry, line->ingredient, &ingredient) &&
           ingredient.role == TR_ROLE_STARTER))
        return TRUE;
    }

  return FALSE;
}

TrMix *
tr_dough_begin_mix (TrDough        *dough,
                    const TrBench  *bench,
                    const TrPantry *pantry)
{
  TrMix *mix = tr_mix_new ();

  mix->flour_c = dough->method->flour_c;
  mix->room_c = bench->room_c;
  if (tr_dough_has_ripened (dough, pantry))
    mix->preferment_c = isnan (dough->method->preferment_c) ? bench->room_c : dough->method->preferment_c;
  g_ptr_array_add (dough->log->mixes, mix);

  return mix;
}
