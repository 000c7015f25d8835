/* digits.h: a number in the fewest digits
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For files that programs read: always ".", no thousands sign, whatever the
 * locale. What is said to a reader is rounded in words/.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The shortest decimal that reads back as the same double; whole numbers up to
 * 2^53 without exponent or point; minus zero is 0. Finite numbers only. */
void tr_digits_append (GString *out,
                       double   value);

G_END_DECLS
