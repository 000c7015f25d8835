/* measure.h: how geometry is judged; for the sources of this room only
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>
#include <math.h>

G_BEGIN_DECLS

#define TR_MM3_PER_ML 1000.0
/* Limits and ties are judged to this share, so that 900 mm fits on 900 mm. */
#define TR_HAIR 1e-9

static inline gboolean
tr_is_positive (double value)
{
  return isfinite (value) && value > 0;
}

G_END_DECLS
