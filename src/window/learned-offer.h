/* learned-offer.h: what the log tells of one setting, and a button that uses it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Inside a page, whose dough it is about. Hidden as long as nothing was measured.
 */

#pragma once

#include "../calc/learned.h"
#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_LEARNED_OFFER (tr_learned_offer_get_type ())
G_DECLARE_FINAL_TYPE (TrLearnedOffer, tr_learned_offer, TR, LEARNED_OFFER, GtkWidget)

GtkWidget *tr_learned_offer_new     (TrLearnedId     id);
void       tr_learned_offer_refresh (TrLearnedOffer *self);

G_END_DECLS
