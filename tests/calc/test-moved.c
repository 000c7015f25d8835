/* test-moved.c: a line moved to another stage, and the weights kept
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "calc/figures.h"
#include "calc/moved.h"
#include "doughs.h"

static const struct { const char *name; const char *lines[6]; guint from; TrStage to; gboolean changes; } cases[] = {
  { "grams go with the line", { "d flour-bread 500 g", "d water 300 g", "r butter-unsalted 250 g", NULL }, 1, TR_STAGE_PREFERMENT, FALSE },
  { "percent of flour too", { "d flour-bread 500 g", "d butter-unsalted 10 %", "r butter-unsalted 50 %", NULL }, 1, TR_STAGE_ROLL_IN, FALSE },
  { "percent of dough follows the dough", { "d flour-bread 500 g", "d butter-unsalted 50 g", "d water 300 g", "r butter-unsalted 30 % of dough", NULL },
    1, TR_STAGE_ROLL_IN, TRUE },
  { "flour that leaves the mix", { "d flour-bread 500 g", "d flour-plain 100 g", "d water 60 %", NULL }, 1, TR_STAGE_FINISH, TRUE },
};

static double
grams_at (const TrFigures *figures,
          guint            index)
{
  return g_array_index (tr_figures_get_dough (figures, 0)->formula.lines, TrLineFigures, index).written_grams;
}

static void
test_weights_are_kept (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TrDough) dough = test_dough_new (cases[i].lines), moved = tr_dough_copy (dough);
      g_autoptr (TrFigures) before = test_figures_of (dough);
      TrLine *line = g_ptr_array_steal_index (moved->lines, cases[i].from);
      guint n = dough->lines->len;

      g_test_message ("%s", cases[i].name);
      line->stage = cases[i].to;
      g_ptr_array_add (moved->lines, line);
      g_assert_cmpint (tr_moved_line_changes_weights (tr_figures_get_dough (before, 0), moved, cases[i].from), ==, cases[i].changes);
      tr_moved_line_keep_weights (tr_figures_get_dough (before, 0), moved, cases[i].from);

      g_autoptr (TrFigures) after = test_figures_of (moved);

      for (guint k = 0; k < n; k++)
        {
          guint was = k + 1 == n ? cases[i].from : k < cases[i].from ? k : k + 1;

          g_assert_cmpfloat_with_epsilon (grams_at (after, k), grams_at (before, was), 1e-3);
        }
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/calc/moved/weights-are-kept", test_weights_are_kept);

  return g_test_run ();
}
