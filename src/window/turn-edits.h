/* turn-edits.h: what can be done to the turns of a page's dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each is one commit with its label; the strip's keys, its pointer, its menu
 * and the buttons all come here. Its pointer is the whole turn, so that undo
 * leads back to the strip, where it was done. FALSE: nothing was changed.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

/* A turn like the one before that place (else like the one there), as turn `at`. */
gboolean tr_turn_add        (TrPage *page,
                             guint   at);
gboolean tr_turn_remove     (TrPage *page,
                             guint   turn);
/* `to`: its index afterwards. */
gboolean tr_turn_move       (TrPage *page,
                             guint   turn,
                             guint   to);
gboolean tr_turn_set_fold   (TrPage *page,
                             guint   turn,
                             int     fold);
/* Thicker by that many steps of its field, thinner when negative; a turn that is
 * given by its length is rolled shorter or longer. */
gboolean tr_turn_thicken    (TrPage *page,
                             guint   turn,
                             int     steps);

/* A turn's sheet when its edge was taken hold of. */
typedef struct {
  guint turn;
  double length_mm, thickness_mm, start_mm;   /* start: the thickness of its block */
} TrTurnRoll;
/* FALSE: its sizes are not known. */
gboolean tr_turn_get_roll   (TrPage     *page,
                             guint       turn,
                             TrTurnRoll *roll);
/* Rolls it to about that length: the volume stays, so the thickness follows; in
 * steps of its field, and never thicker than the block. */
gboolean tr_turn_roll_to    (TrPage           *page,
                             const TrTurnRoll *roll,
                             double            length_mm);

G_END_DECLS
