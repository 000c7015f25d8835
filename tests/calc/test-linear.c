/* test-linear.c: a few linear equations
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "calc/linear.h"

typedef double Matrix[TR_LINEAR_MAX][TR_LINEAR_MAX];

/* What is found, put back into the equations, gives their right sides. */
static void
test_solution_solves (void)
{
  for (int run = 0; run < 400; run++)
    {
      guint n = (guint) g_test_rand_int_range (1, TR_LINEAR_MAX + 1);
      double b[TR_LINEAR_MAX] = { 0 }, x[TR_LINEAR_MAX];
      Matrix a = { { 0 } }, kept;

      for (guint row = 0; row < n; row++)
        {
          for (guint column = 0; column < n; column++)
            a[row][column] = g_test_rand_double_range (-1, 1);
          /* one that outweighs the rest of its row, not on the diagonal: there is an answer, and pivots are needed */
          a[row][(row + 1) % n] = g_test_rand_bit () ? 10 : -10;
          b[row] = g_test_rand_double_range (-100, 100);
        }
      memcpy (kept, a, sizeof a);
      memcpy (x, b, sizeof b);

      g_assert_true (tr_linear_solve (a, x, n));
      for (guint row = 0; row < n; row++)
        {
          double sum = 0;

          for (guint column = 0; column < n; column++)
            sum += kept[row][column] * x[column];
          g_assert_cmpfloat_with_epsilon (sum, b[row], 1e-9);
        }
    }
}

static void
test_a_zero_on_the_diagonal (void)
{
  Matrix a = { { 0, 2 }, { 4, 0 } };
  double b[TR_LINEAR_MAX] = { 6, 20 };

  g_assert_true (tr_linear_solve (a, b, 2));
  g_assert_cmpfloat_with_epsilon (b[0], 5, 1e-12);
  g_assert_cmpfloat_with_epsilon (b[1], 3, 1e-12);
}

static void
test_no_single_answer (void)
{
  static const struct { const char *name; double a[2][2], b[2]; } cases[] = {
    { "the same twice", { { 1, 2 }, { 2, 4 } }, { 3, 6 } },
    { "a contradiction", { { 1, 2 }, { 2, 4 } }, { 3, 7 } },
    { "nothing of one", { { 1, 0 }, { 2, 0 } }, { 3, 6 } },
    { "a factor that is not known", { { NAN, 1 }, { 1, 1 } }, { 3, 6 } },
    { "a sum that is not known", { { 1, 0 }, { 0, 1 } }, { 3, NAN } },
    { "a sum without end", { { 1, 0 }, { 0, 1 } }, { INFINITY, 3 } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double b[TR_LINEAR_MAX] = { cases[i].b[0], cases[i].b[1] };
      Matrix a = { { cases[i].a[0][0], cases[i].a[0][1] }, { cases[i].a[1][0], cases[i].a[1][1] } };

      g_test_message ("%s", cases[i].name);
      g_assert_false (tr_linear_solve (a, b, 2));
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/calc/linear/solution-solves", test_solution_solves);
  g_test_add_func ("/calc/linear/a-zero-on-the-diagonal", test_a_zero_on_the_diagonal);
  g_test_add_func ("/calc/linear/no-single-answer", test_no_single_answer);

  return g_test_run ();
}
