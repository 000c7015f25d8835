/* doughs.h: doughs for tests, in a few words
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <math.h>
#include <string.h>

#include "calc/figures.h"

/* A dough from lines such as "d flour-bread 450 g": the stage's first letter,
 * the ingredient ("-": none), the amount; ends with NULL. The
 * batch is as written; without lock-in, turns and cut. */
static inline TrDough *
test_dough_new (const char *const *lines)
{
  static const TrStage stages[] = { TR_STAGE_PREFERMENT, TR_STAGE_DOUGH, TR_STAGE_ROLL_IN, TR_STAGE_FINISH };
  TrDough *dough = tr_dough_new ("d1");

  g_clear_pointer (&dough->lock_in, tr_lock_in_free);
  g_clear_pointer (&dough->cut, tr_cut_free);
  dough->batch_by = TR_BATCH_WRITTEN;
  dough->pieces_written = 0;
  for (; *lines != NULL; lines++)
    {
      g_auto (GStrv) words = g_strsplit (*lines, " ", 3);
      TrStage stage = stages[strcspn ("pdrf", words[0])];
      const char *ingredient = g_str_equal (words[1], "-") ? NULL : words[1];

      g_ptr_array_add (dough->lines, tr_line_new (stage, ingredient, words[2]));
    }

  return dough;
}

/* Of a trial that has this dough only. */
static inline TrFigures *
test_figures_of (TrDough *dough)
{
  g_autoptr (TrTrial) trial = tr_trial_new ();

  g_ptr_array_add (trial->doughs, tr_dough_ref (dough));

  return tr_figures_compute (trial, NULL);
}
