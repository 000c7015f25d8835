/* turns-strip.h: the sequence as a strip that is chosen from and edited in place
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shows the whole sequence of its page's dough, as high as it needs for its
 * width. One element is selected, by a click or the arrow keys: the lock-in, a
 * turn or the sheet. A sheet's far edge is dragged to roll it longer, a turn to
 * another place; a plus adds one. What its keys and its menu do are the actions
 * "turn.…", which the page installs.
 *
 * Signals
 *   selected (): another element is selected now, or the same asked for again
 *   activated (): Return or a double click: on to its fields
 */

#pragma once

#include "page.h"

#include "../picture/picture.h"

G_BEGIN_DECLS

#define TR_TYPE_TURNS_STRIP (tr_turns_strip_get_type ())
G_DECLARE_FINAL_TYPE (TrTurnsStrip, tr_turns_strip, TR, TURNS_STRIP, GtkWidget)

GtkWidget *tr_turns_strip_new          (void);
/* Shows the dough of its page; a selection that is gone moves to what is left. */
void       tr_turns_strip_refresh      (TrTurnsStrip *self);
/* TR_PART_OF_LOCK_IN, TR_PART_OF_TURN with its index, or TR_PART_OF_SHEET. */
TrHit      tr_turns_strip_get_selected (TrTurnsStrip *self);
void       tr_turns_strip_select       (TrTurnsStrip *self,
                                        TrHit         element);

G_END_DECLS
