/* digits.c: a number in the fewest digits
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "digits.h"

#include <float.h>
#include <math.h>

/* DBL_DIG digits are the shortest where they are enough, since their zeros at
 * the end are left out; numbers below DBL_MIN hold fewer. */
#define MAX_DIGITS 17
#define MAX_WHOLE 9007199254740992.0   /* 2^53: every whole number up to here is exact */

static gboolean
is_same_double (double a,
                double b)
{
  return !(a < b) && !(a > b);
}

void
tr_digits_append (GString *out,
                  double   value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_return_if_fail (out != NULL);
  g_return_if_fail (isfinite (value));

  if (fabs (value) <= MAX_WHOLE && is_same_double (trunc (value), value))
    {
      g_string_append_printf (out, "%" G_GINT64_FORMAT, (gint64) value);
      return;
    }

  for (guint n_digits = fabs (value) < DBL_MIN ? 1 : DBL_DIG; n_digits <= MAX_DIGITS; n_digits++)
    {
      char format[] = "%.00g";

      format[2] = (char) ('0' + n_digits / 10);
      format[3] = (char) ('0' + n_digits % 10);
      g_ascii_formatd (digits, sizeof digits, format, value);
      if (is_same_double (g_ascii_strtod (digits, NULL), value))
        break;
    }
  g_string_append (out, digits);
}
