/* doughs.h: the list of doughs
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A page whose dough is the chosen row. Signal `chosen` (const char *id): the
 * reader wants another dough; whoever listens sets it on every page.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_DOUGHS (tr_doughs_get_type ())
G_DECLARE_FINAL_TYPE (TrDoughs, tr_doughs, TR, DOUGHS, TrPage)

GtkWidget *tr_doughs_new       (void);
/* Each is one undo step. Those on the current dough do nothing without one. */
void       tr_doughs_add       (TrDoughs *self, TrDough *dough);   /* takes it; its id is replaced when in use */
void       tr_doughs_branch    (TrDoughs *self);                   /* a new dough from it */
void       tr_doughs_delete    (TrDoughs *self);
void       tr_doughs_move      (TrDoughs *self, guint to);         /* the index it shall have */
void       tr_doughs_start_rename (TrDoughs *self);                /* in place */

G_END_DECLS
