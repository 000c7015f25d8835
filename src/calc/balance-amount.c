/* balance-amount.c: an amount that follows a ratio, written as a baker would
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "balance-private.h"

/* Writing amounts */

double
tr_balance_round_nice (double number,
                       double allowed)
{
  for (int decade = 6; decade >= -6; decade--)
    for (int half = 1; half >= 0; half--)
      {
        double step = pow (10, decade) * (half ? 5 : 1);
        double rounded = step * round (number / step);

        if (fabs (rounded - number) <= allowed)
          return rounded;
      }

  return number;
}

/* Shortest to a millionth; three decimals after a whole part would be read
 * two ways, so they take a fourth. */
static void
append_number (GString *out,
               double   number)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  int decimals = 0;

  while (decimals < 6 && fabs (number - round (number * pow (10, decimals)) / pow (10, decimals)) > 1e-7)
    decimals++;
  if (decimals == 3 && number >= 1)
    decimals = 4;
  char format[] = { '%', '.', (char) ('0' + decimals), 'f', '\0' };
  g_string_append (out, g_ascii_formatd (digits, sizeof digits, format, fabs (number)));
}

char *
tr_balance_dup_amount (const TrMover *mover,
                       double         number)
{
  GString *out = g_string_new (NULL);

  if (mover->rest_unit != TR_N_UNITS)
    {
      double many = tr_unit_grams (mover->unit) / tr_unit_grams (mover->rest_unit);
      double whole = floor (number + 1e-9), rest = MAX ((number - whole) * many, 0);

      rest = round (rest * 1e6) / 1e6;
      if (whole > 0 && rest > 0)
        {
          g_string_append_printf (out, "%.0f %s ", whole, tr_unit_id (mover->unit));
          append_number (out, rest);
          g_string_append_printf (out, " %s", tr_unit_id (mover->rest_unit));
          return g_string_free (out, FALSE);
        }
    }
  append_number (out, number);
  g_string_append_printf (out, " %s", tr_unit_id (mover->unit));

  return g_string_free (out, FALSE);
}

void
tr_balance_write_mover (TrDough       *dough,
                        const TrMover *mover,
                        double         number)
{
  TrLine *line = tr_dough_get_line (dough, mover->index);

  g_free (line->amount);
  line->amount = tr_balance_dup_amount (mover, number);
}

/* Every bit of it, for the formula that is asked. */
void
tr_balance_write_exactly (TrDough       *dough,
                          const TrMover *mover,
                          double         number)
{
  TrLine *line = tr_dough_get_line (dough, mover->index);
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (digits, sizeof digits, "%.15f", number);
  g_free (line->amount);
  line->amount = g_strconcat (digits, " ", tr_unit_id (mover->unit), NULL);
}

void
tr_balance_add_line (TrDough    *dough,
                     TrStage     stage,
                     const char *group,
                     const char *ingredient,
                     double      grams)
{
  const TrMover mover = { .unit = TR_UNIT_G, .rest_unit = TR_N_UNITS };
  g_autofree char *amount = tr_balance_dup_amount (&mover, grams);
  TrLine *line = tr_line_new (stage, ingredient, amount);

  line->group = g_strdup (group);
  g_ptr_array_add (dough->lines, line);
}
