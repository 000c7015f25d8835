/* fuzz-amount.c: the amount parser, fed with anything
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks what amount.h promises: an amount that was read keeps its invariant
 * and weighs something or says why not; one that was not says why.
 */

#include <math.h>
#include <stddef.h>
#include <stdint.h>

#include "calc/ingredient.h"

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

static void
check_problem (const TrProblem *problem)
{
  g_assert_cmpint (problem->id, !=, TR_PROBLEM_NONE);
  g_assert_null (problem->where);
  if (problem->text != NULL)
    g_assert_true (g_utf8_validate (problem->text, -1, NULL));
}

static void
check_amount (const TrAmount *amount)
{
  guint n_percent = 0;

  g_assert_cmpuint (amount->n_parts, >=, 1);
  g_assert_cmpuint (amount->n_parts, <=, TR_AMOUNT_MAX_PARTS);
  for (guint i = 0; i < amount->n_parts; i++)
    {
      g_assert_cmpint (amount->parts[i].unit, <, TR_N_UNITS);
      g_assert_true (isfinite (amount->parts[i].number));
      g_assert_cmpfloat (amount->parts[i].number, >=, 0);
      n_percent += tr_unit_is_percent (amount->parts[i].unit) ? 1 : 0;
    }
  g_assert_true (n_percent == 0 || (n_percent == 1 && amount->n_parts == 1));
}

/* Every built-in: no weight is invented, none is negative or not finite. */
static void
check_weights (const TrAmount *amount)
{
  for (guint i = 0; i < tr_builtin_count (); i++)
    {
      TrProblem problem = { 0 };
      double grams = -1;

      if (tr_ingredient_weigh (tr_builtin_get (i), amount, &grams, &problem))
        g_assert_true (isfinite (grams) && grams >= 0);
      else
        check_problem (&problem);
      g_free (problem.text);
    }
}

int
LLVMFuzzerTestOneInput (const uint8_t *data,
                        size_t         size)
{
  g_autofree char *text = g_strndup ((const char *) data, size);
  TrAmount amount = { 0 };
  TrProblem problem = { 0 };
  gboolean is_read = tr_amount_parse (text, &amount, &problem);

  /* without a place for the problem the answer is the same */
  TrAmount again = { 0 };
  g_assert_cmpint (tr_amount_parse (text, &again, NULL), ==, is_read);

  if (is_read)
    {
      check_amount (&amount);
      if (!tr_unit_is_percent (amount.parts[0].unit))
        check_weights (&amount);
    }
  else
    check_problem (&problem);
  g_free (problem.text);

  return 0;
}
