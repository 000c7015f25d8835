/* swap-private.h: what the files of the swap share
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "swap.h"

G_BEGIN_DECLS

/* Always FALSE. */
gboolean tr_swap_refuse (GError        **error,
                         TrSwapError     code,
                         TrSwapRefusal   refusal);

G_END_DECLS
