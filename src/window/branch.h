/* branch.h: a new dough from the one a page shows
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "../calc/remedy.h"
#include "page.h"

G_BEGIN_DECLS

/* Right behind it, in one undo step, with that one change (NULL: none); shows
 * it, and says what was changed. FALSE: the window was told why not. */
gboolean tr_page_branch_dough (TrPage         *self,
                               const TrRemedy *remedy);

G_END_DECLS
