/* weighed.h: a formula for tests, with what it was weighed from
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "calc/formula.h"
#include "doughs.h"

typedef struct {
  TrDough *dough;
  TrPantry *pantry;
  TrFormula formula;
} Fixture;

static inline Fixture
weigh (const char *const *lines)
{
  Fixture fixture = { .dough = test_dough_new (lines), .pantry = tr_pantry_new () };

  tr_formula_compute (fixture.dough, fixture.pantry, &fixture.formula);

  return fixture;
}

static inline void
recompute (Fixture *fixture)
{
  tr_formula_clear (&fixture->formula);
  tr_formula_compute (fixture->dough, fixture->pantry, &fixture->formula);
}

static inline void
done (Fixture *fixture)
{
  tr_formula_clear (&fixture->formula);
  tr_dough_unref (fixture->dough);
  tr_pantry_unref (fixture->pantry);
}

static inline double
grams (const Fixture *fixture,
       guint          index)
{
  return tr_formula_get_line (&fixture->formula, index)->grams;
}

static inline void
assert_near (double value,
             double expected,
             double tolerance)
{
  if (isnan (expected))
    g_assert_true (isnan (value));
  else
    g_assert_cmpfloat_with_epsilon (value, expected, tolerance);
}
