/* sequence-finder.h: folds that give the wanted layers, to choose from
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is wished for is the reader's question and no part of the document; what
 * is found follows the dough of the page it stands in. Looks only while it is
 * mapped.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_SEQUENCE_FINDER (tr_sequence_finder_get_type ())
G_DECLARE_FINAL_TYPE (TrSequenceFinder, tr_sequence_finder, TR, SEQUENCE_FINDER, GtkWidget)

GtkWidget *tr_sequence_finder_new     (void);
void       tr_sequence_finder_refresh (TrSequenceFinder *self);

G_END_DECLS
