/* account.h: what was rewritten in a dough, line by line, and what it holds
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Made from the dough before and after an edit, whatever the edit was, so that
 * what is said about it cannot differ from what was done.
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

/* What can be held still while something else changes; all in grams of the
 * whole mix as written, yeast counted as fresh, salt by effect. The solids are
 * those of milk that are not fat, and are looked for in one line only. */
typedef enum {
  TR_KEPT_FAT, TR_KEPT_WATER, TR_KEPT_SALT, TR_KEPT_YEAST, TR_KEPT_SUGARS, TR_KEPT_SOLIDS, TR_N_KEPT
} TrKept;
typedef guint TrKeptSet;
#define TR_KEPT_BIT(hold) (1u << (hold))

typedef struct {
  guint index;                   /* of the line */
  char *was, *is;                /* ingredient ids; was NULL: the line is new */
  char *from, *to;               /* amounts as written; from NULL: the line is new */
  double from_g, to_g;           /* as written, not of the batch */
} TrChange;

typedef struct {
  GPtrArray *changes;            /* TrChange: other ingredients first, then in document order */
  double before_g[TR_N_KEPT], after_g[TR_N_KEPT];   /* of the mix; NaN: not known */
  double tolerance_g[TR_N_KEPT];/* what rounding the amounts may miss */
} TrAccount;

/* `after` has the lines that `before` was computed from, rewritten, and
 * perhaps more at the end. */
TrAccount *tr_account_new     (const TrDoughFigures *before,
                               const TrDough        *after);
void       tr_account_free    (TrAccount            *account);
/* The same before and after, but for the rounding. */
gboolean   tr_account_is_held (const TrAccount      *account,
                               TrKept                hold);

/* What `grams` of a line hold; NaN: not known. */
double     tr_kept_of_line    (const TrLineFigures  *line,
                               TrKept                hold);
/* How far rounding may be off, in grams of what is held. */
double     tr_kept_tolerance_g (const TrFormula     *formula,
                                TrKept               hold);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrAccount, tr_account_free)

G_END_DECLS
