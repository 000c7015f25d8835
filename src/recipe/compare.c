/* compare.c: which of two measures of one line counts, and what so many of it are
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "measure.h"

#include <math.h>

#include "../calc/unit.h"
#include "count.h"

#define DISAGREE 0.08            /* of a mass: printed pairs are rounded to a few per cent */

gboolean
tr_measure_is_better (const TrMeasure *a,
                      const TrMeasure *b)
{
  /* a packet says what it weighs better than the spoons that it fills */
  if (a->unit == TR_UNIT_PACKET && b->kind == TR_MEASURE_MEASURE)
    return TRUE;
  if (b->unit == TR_UNIT_PACKET && a->kind == TR_MEASURE_MEASURE)
    return FALSE;
  return a->kind < b->kind && !(a->is_bad && !b->is_bad);
}

static double
mass_of (const TrMeasure *measure)
{
  TrAmount amount;
  double grams = 0;

  if (measure->kind > TR_MEASURE_IMPERIAL_MASS || !tr_amount_parse (measure->amount, &amount, NULL))
    return NAN;
  for (guint i = 0; i < amount.n_parts; i++)
    grams += amount.parts[i].number * tr_unit_grams (amount.parts[i].unit);
  return grams;
}

gboolean
tr_measure_masses_disagree (const TrMeasure *a,
                            const TrMeasure *b)
{
  double first = mass_of (a), second = mass_of (b);

  /* small amounts are rounded to whatever a scale shows */
  return fabs (first - second) > MAX (3, DISAGREE * first);
}

char *
tr_measure_dup_scaled (const TrMeasure *measure,
                       double           factor)
{
  char number[48];

  tr_count_print (measure->number * factor, number, sizeof number);
  return measure->unit < TR_N_UNITS ? g_strdup_printf ("%s %s", number, tr_unit_id (measure->unit)) : g_strdup (number);
}

void
tr_measure_scale (TrMeasure *measure,
                  double     factor)
{
  g_autofree char *amount = tr_measure_dup_scaled (measure, factor);

  g_strlcpy (measure->amount, amount, sizeof measure->amount);
  measure->number *= factor;
  measure->is_range = FALSE;
}
