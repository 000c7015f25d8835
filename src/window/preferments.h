/* preferments.h: a preferment added to the formula from the menu
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "../calc/preferment.h"
#include "page.h"

G_BEGIN_DECLS

/* "Add a poolish" */
const char *tr_preferment_say_add (TrPrefermentKind  kind);
/* By its id. One step to undo, and a sentence about what was done, or why not.
 * The pointer of its first amount; NULL: refused. */
char       *tr_page_add_preferment (TrPage           *page,
                                    const char       *id);

G_END_DECLS
