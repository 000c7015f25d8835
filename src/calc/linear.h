/* linear.h: a few linear equations
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For the sources of this room only.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define TR_LINEAR_MAX 8

/* Solves a · x = b for n unknowns by elimination with row pivots. Writes over
 * `a`; b becomes x. FALSE: there is no single answer, or a number is not one. */
gboolean tr_linear_solve (double a[TR_LINEAR_MAX][TR_LINEAR_MAX],
                          double b[TR_LINEAR_MAX],
                          guint  n);

G_END_DECLS
