/* comparison-choice.h: which doughs are compared, and in which order everything stands
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the reader chose of a comparison, with no widget in it.
 */

#pragma once

#include <gio/gio.h>

#include "../calc/comparison.h"

G_BEGIN_DECLS

/* As many doughs are shown before anybody chooses. */
#define TR_COMPARISON_FIRST 12

typedef struct {
  GHashTable *chosen;            /* char *: ids of the doughs to show; NULL: nobody chose yet */
  char *reference;               /* id of what the others are held against; NULL: nothing */
  const TrComparable *order;     /* of the doughs; NULL: as in the document */
  gboolean is_least_first;
  gboolean is_by_spread;         /* the figures: those that differ most first; else in groups */
} TrComparisonChoice;

void       tr_comparison_choice_clear       (TrComparisonChoice       *choice);
gboolean   tr_comparison_choice_is_shown    (const TrComparisonChoice *choice,
                                             const TrFigures          *figures,
                                             const char               *dough);
void       tr_comparison_choice_set_shown   (TrComparisonChoice       *choice,
                                             const TrFigures          *figures,
                                             const char               *dough,
                                             gboolean                  is_shown);
/* In their order. (element-type guint) (transfer full) */
GArray    *tr_comparison_choice_list_doughs (const TrComparisonChoice *choice,
                                             const TrFigures          *figures);
/* The rows: figures of which something is known, with headings where they are
 * in groups. (element-type TrFigureItem) (transfer full) */
GPtrArray *tr_comparison_choice_list_items  (const TrComparisonChoice *choice,
                                             const TrFigures          *figures);
/* The model holds just those. */
gboolean   tr_comparison_has_items          (GListModel               *model,
                                             const GPtrArray          *items);

G_END_DECLS
