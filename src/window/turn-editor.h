/* turn-editor.h: the fields and the picture of one turn
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How far it is rolled, how it is folded, how it rests; beside that what
 * becomes of the block, drawn and in numbers, and what the bench cannot do.
 * Which turn it is for is told by what contains it.
 */

#pragma once

#include "member.h"

G_BEGIN_DECLS

#define TR_TYPE_TURN_EDITOR (tr_turn_editor_get_type ())
G_DECLARE_FINAL_TYPE (TrTurnEditor, tr_turn_editor, TR, TURN_EDITOR, GtkBox)

GtkWidget *tr_turn_editor_new      (void);
void       tr_turn_editor_set_item (TrTurnEditor *self,
                                    guint         item);
guint      tr_turn_editor_get_item (TrTurnEditor *self);
/* Shows the turn of its page. */
void       tr_turn_editor_refresh  (TrTurnEditor *self);

/* What says how far a turn is rolled out: its length, or its thickness. */
const TrMember *
           tr_turn_get_roll_member (const TrTurn *turn);

/* What the fields of a rest do and say the same everywhere: of a turn, before the lock-in. */
enum { TR_N_REST_CHOICES = TR_N_PLACES + 1 };   /* the places, then no rest */
char      *tr_dup_place_name       (guint         value);
int        tr_get_rest_choice      (const TrRest *rest);
void       tr_set_rest_choice      (TrRest      **rest,
                                    guint         value);
/* The longest is never under the shortest. `holder`: a TrRest. */
void       tr_settle_rest_min      (TrTrial      *draft,
                                    int           dough,
                                    guint         item,
                                    gpointer      holder);
char      *tr_dup_on_name          (guint         value);

G_END_DECLS
