/* test-search.c: lists of folds, and what comes of using one
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * That the list is complete and in order is held against a search by other means
 * in reference/. Doughs are invented.
 */

#include <stdlib.h>
#include <string.h>

#include "calc/search.h"
#include "weighed.h"

static TrTrial *
new_trial (TrStyle style)
{
  TrTrial *trial = tr_trial_new ();
  TrDough *dough = tr_dough_new ("d1");

  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "flour-bread", "500 g"));
  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "water", "280 g"));
  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_ROLL_IN, "butter-unsalted", "250 g"));
  dough->lock_in = tr_lock_in_new ();
  dough->lock_in->style = style;
  dough->cut = tr_cut_new ();
  dough->batch_by = TR_BATCH_WRITTEN;
  g_ptr_array_add (dough->turns, tr_turn_new (3, 8));
  tr_dough_get_turn (dough, 0)->rest = tr_rest_new ();
  tr_dough_get_turn (dough, 0)->rest->min_minutes = 50;
  tr_dough_get_turn (dough, 0)->minutes = 7;
  g_ptr_array_add (trial->doughs, dough);

  return trial;
}

/* Every row, used, gives what it says. */
static void
test_used (void)
{
  for (guint style = 0; style < TR_N_STYLES; style++)
    {
      g_autoptr (TrTrial) trial = new_trial ((TrStyle) style);
      g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
      g_autoptr (GPtrArray) found = NULL;
      TrSearch search;

      tr_search_init (&search);
      found = tr_search_sequences (tr_figures_get_dough (figures, 0), &search);
      g_assert_cmpuint (found->len, ==, 3 * 34);
      for (guint i = 0; i < found->len; i++)
        {
          const TrSequence *row = g_ptr_array_index (found, i);
          g_autoptr (TrTrial) draft = tr_trial_copy (trial);
          g_autoptr (TrFigures) after = NULL;
          const TrDoughFigures *got;
          double longest = 0, worst = 0;
          TrBreaks breaks = 0;

          tr_sequence_apply (row, tr_trial_own_dough (draft, 0));
          g_assert_true (tr_sequence_is_of (row, tr_trial_get_dough (draft, 0)));
          after = tr_figures_compute (draft, NULL);
          got = tr_figures_get_dough (after, 0);
          g_assert_cmpuint (got->lamination.steps->len, ==, row->n_folds);
          for (guint j = 0; j < row->n_folds; j++)
            {
              const TrTurnFigures *step = &g_array_index (got->lamination.steps, TrTurnFigures, j);

              longest = fmax (longest, step->rolled_mm.mm[0]);
              worst = fmax (worst, step->stretch);
              breaks |= step->breaks;
              assert_near (tr_dough_get_turn (got->dough, j)->minutes, 7, 1e-12);
              assert_near (tr_dough_get_turn (got->dough, j)->rest->min_minutes, 50, 1e-12);
            }
          assert_near (longest, row->longest_mm, 1e-9);
          assert_near (worst, row->worst_stretch, 1e-9);
          g_assert_cmpint (breaks, ==, row->breaks);
          assert_near (got->lamination.fat_layers, row->fat_layers, 1e-12);
          assert_near (got->lamination.fat_layer_um.max, row->fat_layer_um, 1e-9);
          assert_near (row->minutes, row->n_folds * (50 + 10), 1e-12);
        }
    }
}

static void
test_wish (void)
{
  g_autoptr (TrTrial) trial = new_trial (TR_STYLE_GATE);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  TrSearch search;
  guint n_gate = 0;

  tr_search_init (&search);
  search.wish = (TrRange) { 27, 27 };
  {
    g_autoptr (GPtrArray) found = tr_search_sequences (tr_figures_get_dough (figures, 0), &search);

    /* 3·3·3 on one fat layer; nothing gives 27 on two, nor 26 on the inverse stack. */
    g_assert_cmpuint (found->len, ==, 1);
    g_assert_cmpint (((TrSequence *) g_ptr_array_index (found, 0))->style, ==, TR_STYLE_GATE);
    g_assert_cmpuint (((TrSequence *) g_ptr_array_index (found, 0))->orders->len, ==, 0);
  }

  search.by_um = TRUE;
  search.wish = (TrRange) { 20, 80 };
  search.max_minutes = 130;
  {
    g_autoptr (GPtrArray) found = tr_search_sequences (tr_figures_get_dough (figures, 0), &search);

    g_assert_cmpuint (found->len, >, 0);
    for (guint i = 0; i < found->len; i++)
      {
        const TrSequence *row = g_ptr_array_index (found, i);

        g_assert_cmpfloat (row->fat_layer_um, >=, 20 - 1e-9);
        g_assert_cmpfloat (row->fat_layer_um, <=, 80 + 1e-9);
        g_assert_cmpfloat (row->minutes, <=, 130);
        g_assert_cmpint (row->style, !=, TR_STYLE_HALF);
        n_gate += row->style == TR_STYLE_GATE;
      }
    g_assert_cmpuint (n_gate, >, 0);
  }
}

/* Fat layers a list of folds gives on one and on two at lock-in, by multiplying alone: the
 * rule of the trade (J. Griffin, "Understanding the lamination layer calculation
 * process", Pastry Arts Magazine; 3^n in EP 0 445 850, [0001]; 729 of six turns in H. This,
 * AgroParisTech-INRAE seminar report, 18 January 2023). */
static const struct { guint n; guint8 folds[TR_SEARCH_MAX_TURNS]; double one, two; } counts[] = {
  { 1, { 3 }, 3, 6 },
  { 1, { 4 }, 4, 8 },
  { 2, { 3, 3 }, 9, 18 },
  { 2, { 3, 4 }, 12, 24 },
  { 2, { 4, 4 }, 16, 32 },
  { 3, { 3, 3, 3 }, 27, 54 },
  { 3, { 3, 3, 4 }, 36, 72 },
  { 3, { 3, 4, 4 }, 48, 96 },
  { 3, { 4, 4, 4 }, 64, 128 },
  { 4, { 3, 3, 3, 3 }, 81, 162 },
  { 4, { 3, 3, 3, 4 }, 108, 216 },
  { 4, { 3, 3, 4, 4 }, 144, 288 },
  { 5, { 3, 3, 3, 3, 3 }, 243, 486 },
  { 4, { 4, 4, 4, 4 }, 256, 512 },
  { 6, { 3, 3, 3, 3, 3, 3 }, 729, 1458 },
  { 5, { 4, 4, 4, 4, 4 }, 1024, 2048 },
};

static int
compare_folds (gconstpointer a,
               gconstpointer b)
{
  return *(const guint8 *) a - *(const guint8 *) b;
}

static gboolean
is_found (const GPtrArray *found,
          TrStyle          style,
          const guint8    *set,
          guint            n)
{
  for (guint i = 0; i < found->len; i++)
    {
      const TrSequence *row = g_ptr_array_index (found, i);
      guint8 sorted[TR_SEARCH_MAX_TURNS] = { 0 };

      memcpy (sorted, row->folds, n);
      qsort (sorted, n, 1, compare_folds);
      if (row->style == style && row->n_folds == n && memcmp (sorted, set, n) == 0)
        return TRUE;
    }

  return FALSE;
}

static void
test_counts (void)
{
  g_autoptr (TrTrial) trial = new_trial (TR_STYLE_HALF);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  TrSearch search;

  tr_search_init (&search);
  search.max_turns = 6;
  for (guint i = 0; i < G_N_ELEMENTS (counts); i++)
    for (guint is_two = 0; is_two < 2; is_two++)
      {
        double layers = is_two ? counts[i].two : counts[i].one;
        g_autoptr (GPtrArray) found = NULL;

        search.wish = (TrRange) { layers, layers };
        found = tr_search_sequences (tr_figures_get_dough (figures, 0), &search);
        g_assert_true (is_found (found, is_two ? TR_STYLE_LETTER : TR_STYLE_HALF, counts[i].folds, counts[i].n));
        for (guint j = 0; j < found->len; j++)
          assert_near (((TrSequence *) g_ptr_array_index (found, j))->fat_layers, layers, 1e-12);
      }
}

/* The best 200 of all there are. */
static void
test_kept (void)
{
  g_autoptr (TrTrial) trial = new_trial (TR_STYLE_HALF);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autoptr (GPtrArray) found = NULL;
  TrSearch search;

  tr_search_init (&search);
  search.max_turns = TR_SEARCH_MAX_TURNS;
  search.max_fold = TR_SEARCH_MAX_FOLD;
  found = tr_search_sequences (tr_figures_get_dough (figures, 0), &search);
  g_assert_cmpuint (found->len, ==, TR_SEARCH_KEPT);
  for (guint i = 1; i < found->len; i++)
    {
      const TrSequence *before = g_ptr_array_index (found, i - 1), *after = g_ptr_array_index (found, i);

      g_assert_true (before->breaks == 0 || after->breaks != 0);
    }
}

/* Blocks are as few as can be: with the ones before nothing fits, however it is
 * folded. */
static void
test_fewest_blocks (void)
{
  for (int worktop = 260; worktop <= 800; worktop += 60)
    {
      g_autoptr (TrTrial) trial = new_trial (TR_STYLE_HALF);
      TrSearch search;
      int chosen = 1;

      trial->bench->worktop_mm[0] = trial->bench->worktop_mm[1] = worktop;
      tr_search_init (&search);
      search.wish = (TrRange) { 9, 36 };
      for (int blocks = 1; blocks <= chosen; blocks++)
        {
          g_autoptr (TrFigures) figures = NULL;
          g_autoptr (GPtrArray) found = NULL;
          const TrSequence *first;

          tr_trial_get_dough (trial, 0)->lock_in->blocks = blocks;
          figures = tr_figures_compute (trial, NULL);
          found = tr_search_sequences (tr_figures_get_dough (figures, 0), &search);
          first = g_ptr_array_index (found, 0);
          g_assert_cmpint (first->breaks, ==, 0);
          if (blocks == 1)
            chosen = first->blocks;
          g_assert_cmpint (first->blocks, ==, chosen);
        }
    }
}

static void
test_blocks (void)
{
  g_autoptr (TrTrial) trial = new_trial (TR_STYLE_HALF);
  g_autoptr (TrFigures) figures = NULL;
  g_autoptr (GPtrArray) found = NULL;
  const TrSequence *first;
  TrSearch search;

  trial->bench->worktop_mm[0] = 420;
  figures = tr_figures_compute (trial, NULL);
  tr_search_init (&search);
  search.wish = (TrRange) { 9, 36 };
  found = tr_search_sequences (tr_figures_get_dough (figures, 0), &search);
  g_assert_cmpuint (found->len, >, 0);
  first = g_ptr_array_index (found, 0);
  g_assert_cmpint (first->breaks, ==, 0);
  g_assert_cmpint (first->blocks, >, 1);
}

/* No fat: nothing is found, and nothing goes wrong. No cut: layers, but no µm. */
static void
test_not_known (void)
{
  g_autoptr (TrTrial) trial = new_trial (TR_STYLE_HALF);
  TrSearch search;

  tr_search_init (&search);
  tr_cut_free (tr_trial_get_dough (trial, 0)->cut);
  tr_trial_get_dough (trial, 0)->cut = NULL;
  {
    g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
    g_autoptr (GPtrArray) found = tr_search_sequences (tr_figures_get_dough (figures, 0), &search);

    g_assert_cmpuint (found->len, >, 0);
    g_assert_true (isnan (((TrSequence *) g_ptr_array_index (found, 0))->fat_layer_um));
    search.by_um = TRUE;
    g_autoptr (GPtrArray) none = tr_search_sequences (tr_figures_get_dough (figures, 0), &search);
    g_assert_cmpuint (none->len, ==, 0);
  }
  g_ptr_array_remove_index (tr_trial_get_dough (trial, 0)->lines, 2);
  {
    g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
    g_autoptr (GPtrArray) found = NULL;

    search.by_um = FALSE;
    found = tr_search_sequences (tr_figures_get_dough (figures, 0), &search);
    g_assert_cmpuint (found->len, ==, 0);
  }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/search/used", test_used);
  g_test_add_func ("/search/wish", test_wish);
  g_test_add_func ("/search/counts", test_counts);
  g_test_add_func ("/search/kept", test_kept);
  g_test_add_func ("/search/blocks", test_blocks);
  g_test_add_func ("/search/fewest-blocks", test_fewest_blocks);
  g_test_add_func ("/search/not-known", test_not_known);

  return g_test_run ();
}
