/* swap.h: one ingredient for another, with what counts held still
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What takes the place of a line is of its kind, and is first for one thing:
 *
 *   fats               fat
 *   yeasts             yeast counted as fresh
 *   milk, water, ...   water
 *   to or from dried   the solids of milk that are not fat
 *   salts              salt
 *   sweeteners         sugars
 *   flours, eggs, ...  weight
 *
 * Held: the sum of the whole mix (a finish line: of the line) stays. The line
 * itself answers for what it is for; for the rest the dough's water (none: its
 * heaviest liquid), the salt line, the fat line of the dough are moved. What
 * the line is for and is not held: it keeps its weight. Amounts are written as
 * balance.h says, and one that would move by less than the rounding is left
 * alone. The formula itself is asked, so percentages follow.
 */

#pragma once

#include "account.h"

G_BEGIN_DECLS

typedef enum {
  TR_SWAP_ERROR_NOT_WEIGHED,     /* the line itself */
  TR_SWAP_ERROR_OTHER_KIND,
  TR_SWAP_ERROR_NOT_KNOWN,       /* kept; line: whose part of it is not known, -1: what would come */
  TR_SWAP_ERROR_NO_LINE,         /* kept: nothing in the dough makes up for it */
  TR_SWAP_ERROR_TOO_LITTLE,      /* kept, line, and grams */
  TR_SWAP_ERROR_AT_ONCE,
} TrSwapError;
#define TR_SWAP_ERROR (tr_swap_error_quark ())
GQuark     tr_swap_error_quark (void);

/* With what, for those who say it in the reader's language. */
typedef struct {
  TrKept kept;                   /* TR_N_KEPT: none */
  int line;                      /* index; -1: none */
  double wanted_g, there_g;      /* that would have to go from the line, and that are there */
} TrSwapRefusal;

/* NULL: not an error of this domain. */
const TrSwapRefusal *tr_swap_error_get_refusal (const GError *error);

/* (transfer full) (element-type utf8): ids of what could take its place, the
 * baker's own first; borrowed from the pantry and the table. */
GPtrArray *tr_swap_list        (const TrDoughFigures *figures,
                                guint                 index);
/* What the swap would change unless it is held, and in `usual` those of them
 * that something in the dough can hold still. `first` is what the line is for
 * (TR_N_KEPT: weight). */
TrKeptSet  tr_swap_get_choices (const TrDoughFigures *figures,
                                guint                 index,
                                const char           *ingredient,
                                TrKeptSet            *usual,
                                TrKept               *first);
/* Writes to `dough`, which is owned and has the lines that `figures` were
 * computed from. FALSE (TR_SWAP_ERROR): nothing was written. */
gboolean   tr_swap_apply       (TrDough              *dough,
                                const TrDoughFigures *figures,
                                guint                 index,
                                const char           *ingredient,
                                TrKeptSet             holds,
                                GError              **error);

G_END_DECLS
