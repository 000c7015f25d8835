/* swap-popover.h: another ingredient for a line, chosen with what is held
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What could take its place, a box to tick for each thing that would change,
 * and in words what a swap would do, before it is done. Stands in a row of the
 * formula; goes when it is closed.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_SWAP_POPOVER (tr_swap_popover_get_type ())
G_DECLARE_FINAL_TYPE (TrSwapPopover, tr_swap_popover, TR, SWAP_POPOVER, GtkPopover)

/* Of a line of the dough of the page that `row` stands in; at `pointed_to`,
 * which is inside the row. */
void       tr_swap_popover_open     (GtkWidget     *row,
                                     guint          line,
                                     GtkWidget     *pointed_to);
/* Whether there is anything to choose for that line. */
gboolean   tr_swap_is_possible      (TrPage        *page,
                                     guint          line);
/* What is chosen; the box of a hold, and the words, for tests. */
void       tr_swap_popover_choose   (TrSwapPopover *self,
                                     const char    *ingredient);
GtkWidget *tr_swap_popover_get_kept (TrSwapPopover *self,
                                     TrKept         hold);
const char *tr_swap_popover_get_preview (TrSwapPopover *self);

G_END_DECLS
