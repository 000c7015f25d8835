/* search-private.h: what the files of the search for folds share
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "search.h"

G_BEGIN_DECLS

/* One kind of stack, locked in with so many blocks. */
typedef struct {
  const TrDoughFigures *figures;
  TrStyle style;
  int blocks;
  TrSize block_mm;
  double volume_mm3, thickness_mm;
} TrFoldStack;

/* After some folds. */
typedef struct {
  double length_mm, width_mm;    /* where the next roll-out starts */
  double worst_stretch, longest_mm;
  TrBreaks breaks;
} TrFoldState;

/* All of them done; 0 behind the last. */
typedef struct {
  guint8 folds[TR_SEARCH_MAX_TURNS];
  double worst_stretch, longest_mm;
  TrBreaks breaks;
} TrFoldOrder;

typedef void (*TrFoldOrderFunc)         (const TrFoldOrder *order, gpointer data);

/* FALSE: that stack cannot be, or its sizes are not known. */
gboolean    tr_fold_stack_init          (TrFoldStack *stack, const TrDoughFigures *figures, TrStyle style, int blocks);
TrFoldState tr_fold_stack_begin         (const TrFoldStack *stack);
TrFoldState tr_fold_stack_fold          (const TrFoldStack *stack, const TrFoldState *from, guint8 fold);
/* Each order of a set of `n` that stands in rising order. */
void        tr_fold_stack_each_order    (const TrFoldStack *stack, const guint8 *set, guint n, TrFoldOrderFunc found, gpointer data);
/* GCompareFunc of TrFoldOrder: what fits, less stretched, shorter, smaller folds first. */
int         tr_fold_order_compare       (gconstpointer a, gconstpointer b);

/* What differs by a hair is the same. */
int         tr_search_compare_numbers   (double a, double b);
/* Half, gate and envelope: one layer of fat between two of dough. */
gboolean    tr_style_is_half_stack      (TrStyle style);
/* Locked in that way: the dough's own sizes where it is its own way, else only rim
 * and density. */
TrLockIn   *tr_search_lock_in_new       (const TrDough *dough, TrStyle style, int blocks);

G_END_DECLS
