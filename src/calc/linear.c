/* linear.c: a few linear equations
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "linear.h"

#include <math.h>

#define LEAST_PIVOT 1e-12

static void
exchange (double *a,
          double *b)
{
  double kept = *a;

  *a = *b;
  *b = kept;
}

static guint
find_pivot (double a[TR_LINEAR_MAX][TR_LINEAR_MAX],
            guint  k,
            guint  n)
{
  guint pivot = k;

  for (guint row = k + 1; row < n; row++)
    if (fabs (a[row][k]) > fabs (a[pivot][k]))
      pivot = row;

  return pivot;
}

gboolean
tr_linear_solve (double a[TR_LINEAR_MAX][TR_LINEAR_MAX],
                 double b[TR_LINEAR_MAX],
                 guint  n)
{
  g_return_val_if_fail (n <= TR_LINEAR_MAX, FALSE);

  for (guint k = 0; k < n; k++)
    {
      guint pivot = find_pivot (a, k, n);

      if (!(fabs (a[pivot][k]) > LEAST_PIVOT) || !isfinite (b[pivot]))
        return FALSE;
      for (guint column = 0; column < n; column++)
        exchange (&a[k][column], &a[pivot][column]);
      exchange (&b[k], &b[pivot]);
      for (guint row = k + 1; row < n; row++)
        {
          double times = a[row][k] / a[k][k];

          for (guint column = k; column < n; column++)
            a[row][column] -= times * a[k][column];
          b[row] -= times * b[k];
        }
    }
  for (guint k = n; k-- > 0;)
    {
      for (guint column = k + 1; column < n; column++)
        b[k] -= a[k][column] * b[column];
      b[k] /= a[k][k];
      if (!isfinite (b[k]))
        return FALSE;
    }

  return TRUE;
}
