/* problem.c: why a line cannot be weighed, and what mends it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "say.h"

/* Both readings of "1,500", neither of them with a sign that could be misread. */
static char *
ambiguous (const TrReader  *reader,
           const TrProblem *problem,
           const char      *quoted)
{
  double low = MIN (problem->value[0], problem->value[1]);
  double high = MAX (problem->value[0], problem->value[1]);
  g_autofree char *first = tr_say_trimmed (reader, low, 6);
  g_autofree char *second = tr_say_trimmed (reader, high, 6);

  if (!isfinite (low) || !isfinite (high))
    return g_strdup_printf (_("%s can be read in two ways, with a decimal sign or with thousands; write the number "
                              "without a sign for thousands."), quoted);
  return g_strdup_printf (_("%s can be %s or %s; write thousands without a sign, or the decimals with one digit more "
                            "or fewer than three."), quoted, first, second);
}

/* `quoted` never is NULL: the text of the problem, or "this amount". */
static char *
amount_problem (const TrReader  *reader,
                const TrProblem *problem,
                const char      *quoted)
{
  switch ((int) problem->id)
    {
    case TR_PROBLEM_EMPTY:
      return g_strdup (_("No amount is written; write one, such as 250 g or 1 1/2 cups."));
    case TR_PROBLEM_NO_NUMBER:
      return g_strdup_printf (_("%s has no number; write one with a unit, such as 250 g or 1 1/2 cups."), quoted);
    case TR_PROBLEM_BARE_NUMBER:
      return g_strdup_printf (_("%s has no unit; write one behind the number, such as g, oz, cup or %%."), quoted);
    case TR_PROBLEM_UNKNOWN_UNIT:
      return g_strdup_printf (_("%s is not a unit that is known here; write g, kg, oz, lb, ml, cups, tbsp, tsp, eggs, "
                                "sticks or %%, for example."), quoted);
    case TR_PROBLEM_AMBIGUOUS:
      return ambiguous (reader, problem, quoted);
    case TR_PROBLEM_OUT_OF_RANGE:
      return g_strdup_printf (_("%s cannot be weighed: a fraction over 0, or more than a thousand tonnes."), quoted);
    case TR_PROBLEM_MIXED_PERCENT:
      return g_strdup (_("A percentage stands beside another amount; write one percentage or one mass."));
    case TR_PROBLEM_NOT_UNDERSTOOD:
      return g_strdup_printf (_("%s is not understood; an amount is a number and a unit, such as 250 g or 1 lb 2 oz."),
                              quoted);
    default:
      return NULL;
    }
}

static char *
line_problem (const TrProblem *problem,
              const char      *quoted)
{
  switch ((int) problem->id)
    {
    case TR_PROBLEM_NO_INGREDIENT:
      return problem->text != NULL
             ? g_strdup_printf (_("%s has no ingredient yet; choose the one that is meant."), quoted)
             : g_strdup (_("The line has no ingredient yet; choose one."));
    case TR_PROBLEM_NO_HOUSEHOLD_WEIGHT:
      return problem->text != NULL
             ? g_strdup_printf (_("For this ingredient the weight of the measure %s is not known; write its mass instead."), quoted)
             : g_strdup (_("What this measure of the ingredient weighs is not known; write its mass instead."));
    case TR_PROBLEM_PERCENT_NOT_HERE:
      return g_strdup (_("Percent of dough and percent of total are for the roll-in only; write percent of flour, or a mass."));
    case TR_PROBLEM_NOTHING_TO_ANCHOR:
      return g_strdup (_("A percentage is taken of the flour, and no flour is weighed; write the flour as a mass."));
    case TR_PROBLEM_FLOUR_OVER_100:
      return g_strdup (_("The flours in percent reach 100 % beside flour that is weighed, so that nothing is left for it; "
                         "write less of them in percent, or all of them as masses."));
    case TR_PROBLEM_NO_PIECES_WRITTEN:
      return g_strdup (_("The batch is wanted by the piece, but there is no cut and how many pieces the written amounts "
                         "make is not said; write their number, or add a cut."));
    case TR_PROBLEM_NOT_SOLVABLE:
      return g_strdup (_("The percentages of the roll-in leave nothing for the dough; together they must stay under 100 % "
                         "of the whole."));
    default:
      return g_strdup (_("The line cannot be weighed; write its amount as a mass."));
    }
}

char *
tr_words_problem (const TrReader  *reader,
                  const TrProblem *problem)
{
  g_autofree char *quoted = NULL;
  char *sentence;

  g_return_val_if_fail (reader != NULL && problem != NULL, NULL);

  quoted = problem->text != NULL ? tr_say_quote (problem->text) : g_strdup (_("This amount"));
  sentence = amount_problem (reader, problem, quoted);
  return sentence != NULL ? sentence : line_problem (problem, quoted);
}
