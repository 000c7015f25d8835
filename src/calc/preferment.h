/* preferment.h: a preferment taken out of the dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What goes into it is taken from the lines of the dough, so that the total
 * formula stays as it is. How large, how soft and how much yeast it starts
 * with is common practice; all of it is lines that can be changed.
 *
 *   poolish    a quarter of the flour, as much liquid, 0.25 % of yeast
 *   sponge     30 % of the flour, 60 % of liquid, 1 % of yeast
 *   starter    15 % of the flour, in a ripe starter at 100 %; yeast stays
 *   old dough  a fifth of flour, liquid, salt and yeast, as they stand: a
 *              piece of the same formula, mixed the day before
 *
 * Yeast is counted as fresh, on the preferment's flour. The liquid is the
 * dough's water; where there is none its heaviest liquid or milk, but not for
 * a starter.
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

typedef enum {
  TR_PREFERMENT_POOLISH, TR_PREFERMENT_SPONGE, TR_PREFERMENT_STARTER, TR_PREFERMENT_OLD_DOUGH, TR_N_PREFERMENTS
} TrPrefermentKind;

const char *tr_preferment_id      (TrPrefermentKind kind);         /* "old-dough" */
int         tr_preferment_from_id (const char *id);                /* -1: none */

/* Writes to `dough`, which is owned and has the lines that `figures` were
 * computed from. Where the liquid does not suffice it is made smaller. The
 * index of its first line; -1 with a sentence (TR_BALANCE_ERROR): nothing was
 * written. */
int         tr_preferment_add     (TrDough               *dough,
                                   const TrDoughFigures  *figures,
                                   TrPrefermentKind       kind,
                                   const char            *group,
                                   GError               **error);

G_END_DECLS
