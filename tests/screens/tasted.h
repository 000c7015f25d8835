/* tasted.h: marks of tasters for the screens; invented
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "window/window.h"

G_BEGIN_DECLS

/* Four tasters' faults and balance of the first dough. */
void tasted_with_faults (TrWindow *window);
/* Codes, orders and every mark. */
void tasted_by_four     (TrWindow *window);

G_END_DECLS
