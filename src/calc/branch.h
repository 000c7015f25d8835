/* branch.h: a dough that comes from another, and a trial that goes on from one
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * `from` names the dough it came from. A file may hold a ring of them, or a
 * dough that comes from itself: then the first of the ring in document order
 * counts as coming from none.
 */

#pragma once

#include "written.h"

G_BEGIN_DECLS

/* A copy of dough `index`, right behind it, that comes from it: with a free
 * id, and without what happened to the other. Returns it, owned by the draft;
 * NULL: there are TR_MAX_DOUGHS already. */
TrDough  *tr_trial_branch_dough   (TrTrial            *draft,
                                   guint               index,
                                   const char         *name);
/* "Overnight sponge" makes "Overnight sponge 2", that makes "Overnight sponge 3";
 * a name that no dough has yet. (transfer full) */
char     *tr_trial_dup_next_name  (const TrTrial      *trial,
                                   const char         *name);

/* Index of the dough it comes from; -1: of none. */
int       tr_trial_find_parent    (const TrTrial      *trial,
                                   guint               index);

/* Each dough once, those that come from one right behind it, in document order. */
typedef struct {
  guint dough;                   /* index in the trial */
  int parent;                    /* place in this list; -1: none */
  guint generation;              /* 0: comes from none */
} TrDescent;

/* (element-type TrDescent) */
GArray   *tr_trial_get_lineage    (const TrTrial      *trial);

/* A new trial of those doughs, in document order, on the same bench and with
 * the baker's own ingredients: nothing planned, predicted or tasted yet, and
 * nothing logged. A dough comes from the nearest of its forebears that comes
 * along; from none when all stay behind. Ids that are not there are passed over. */
TrTrial  *tr_trial_carry          (const TrTrial      *trial,
                                   const char *const  *doughs,
                                   const char         *title);

G_END_DECLS
