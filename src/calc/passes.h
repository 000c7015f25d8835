/* passes.h: from thick to thin in so many passes
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A roll-out is not done at once: every pass takes at most the share of the thickness
 * that the baker sets on the bench (30 %: common practice). The passes are as many
 * as that needs, each about as hard as the others, to gaps that a dial shows: half
 * millimetres, but for the last, which is the thickness wanted. A pin is guided by
 * sticks of the same thicknesses. What is thicker than the rollers open is rolled
 * by pin until it goes between them.
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

#define TR_PASS_STEP_MM 0.5

/* One direction. */
typedef struct {
  gboolean is_across;            /* after a quarter turn: the width grows */
  double from_mm;
  double pin_mm;                 /* by pin to this before it goes between the rollers; NaN: it goes at once, or there are none */
  GArray *gaps_mm;               /* double, falling; the last is the thickness after this direction; empty: by pin alone */
} TrPassLeg;

typedef struct {
  TrPassLeg legs[2];
  guint n_legs;                  /* 0: nothing is made thinner, or a size is not known */
} TrPasses;

/* Empty where `to` is not thinner than `from`. (element-type double) */
GArray *tr_passes_new        (double                from_mm,
                              double                to_mm,
                              double                reduction_percent);

/* Of one turn, 0-based. */
void    tr_passes_init_turn  (TrPasses             *passes,
                              const TrDoughFigures *figures,
                              guint                 turn);
/* Of the last block, or a part of it, to the sheet. */
void    tr_passes_init_sheet (TrPasses             *passes,
                              const TrDoughFigures *figures);
void    tr_passes_clear      (TrPasses             *passes);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TrPasses, tr_passes_clear)

G_END_DECLS
