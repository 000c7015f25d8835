/* test-comparison.c: what stands on the pages of doughs side by side, and where
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "paper/paper.h"
#include "picture/shapes.h"
#include "samples.h"
#include "words/comparison.h"

/* What printers keep clear; common practice. */
#define MARGIN_PT (10 * 72 / 25.4)

static TrPages *
make (const TrFigures *figures,
      TrUnitSystem     units,
      TrPaperSize      size)
{
  TrReader reader;

  tr_reader_init_plain (&reader, units);

  return tr_comparison_new (figures, NULL, 0, &reader, size);
}

static guint
count_text (const TrPages *pages,
            const char    *text)
{
  guint n = 0;

  for (guint p = 0; p < tr_pages_count (pages); p++)
    for (guint i = 0; i < tr_picture_count_texts (tr_pages_get (pages, p)); i++)
      n += g_str_equal (tr_picture_get_text (tr_pages_get (pages, p), i, NULL), text);

  return n;
}

static void
assert_inside_and_apart (const TrPages *pages)
{
  for (guint p = 0; p < tr_pages_count (pages); p++)
    {
      const TrPicture *page = tr_pages_get (pages, p);
      double width, height;
      TrBox one, other;

      tr_picture_get_size (page, &width, &height);
      for (guint i = 0; i < tr_picture_count_texts (page); i++)
        {
          const char *text = tr_picture_get_text (page, i, &one);

          if (one.x < MARGIN_PT || one.y < MARGIN_PT || one.x + one.width > width - MARGIN_PT || one.y + one.height > height - MARGIN_PT)
            g_error ("“%s” lies over the edge of page %u", text, p + 1);
          for (guint j = 0; j < i; j++)
            {
              const char *before = tr_picture_get_text (page, j, &other);

              if (one.x + 0.5 < other.x + other.width && other.x + 0.5 < one.x + one.width
                  && one.y + 1.5 < other.y + other.height && other.y + 1.5 < one.y + one.height)
                g_error ("“%s” lies on “%s” on page %u", text, before, p + 1);
            }
        }
    }
}

static void
test_every_dough_has_its_letter_and_name (void)
{
  g_autoptr (TrTrial) trial = sample_trial_all ();
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autoptr (TrPages) pages = make (figures, TR_UNITS_METRIC, TR_PAPER_A4);

  g_assert_cmpuint (tr_pages_count (pages), ==, (trial->doughs->len + 5) / 6);
  for (guint i = 0; i < trial->doughs->len; i++)
    {
      g_autofree char *letter = tr_words_letter (i);

      g_assert_cmpuint (count_text (pages, letter), ==, 1);
    }
}

/* Every number that is known, as it is said everywhere. */
static void
test_every_known_figure_stands_there (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autoptr (TrPages) pages = make (figures, TR_UNITS_METRIC, TR_PAPER_A4);
  TrReader reader;
  guint n, n_known = 0;
  const TrComparable *all = tr_comparables_get_all (&n);

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  for (guint i = 0; i < n; i++)
    {
      double value = tr_comparable_get (&all[i], tr_figures_get_dough (figures, 0));
      g_autofree char *number = tr_words_comparable_number (&reader, &all[i], value);

      if (!isfinite (value))
        continue;
      n_known++;
      if (count_text (pages, number) == 0)
        g_error ("%s, %s, stands nowhere", all[i].key, number);
      g_assert_cmpuint (count_text (pages, tr_words_comparable (&all[i])), >, 0);
    }
  g_assert_cmpuint (n_known, >, 35);
}

static void
test_what_is_known_of_none_is_left_out (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_PLAIN);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autoptr (TrPages) pages = make (figures, TR_UNITS_METRIC, TR_PAPER_A4);

  g_assert_cmpuint (count_text (pages, tr_words_figure_group (TR_GROUP_LAMINATION)), ==, 0);
  g_assert_cmpuint (count_text (pages, tr_words_figure_group (TR_GROUP_FLOUR)), ==, 1);
}

static void
test_texts_lie_on_the_page_and_apart (void)
{
  static const struct { TrUnitSystem units; TrPaperSize size; } cases[] = {
    { TR_UNITS_METRIC, TR_PAPER_A4 }, { TR_UNITS_US, TR_PAPER_LETTER }, { TR_UNITS_US, TR_PAPER_A4 },
  };

  for (guint n = 1; n <= 13; n += 4)
    {
      g_autoptr (TrTrial) trial = tr_trial_new ();
      g_autoptr (TrFigures) figures = NULL;

      for (guint i = 0; i < n; i++)
        sample_add (trial, (Sample) (i % N_SAMPLES));
      figures = tr_figures_compute (trial, NULL);
      for (gsize c = 0; c < G_N_ELEMENTS (cases); c++)
        {
          g_autoptr (TrPages) pages = make (figures, cases[c].units, cases[c].size);

          assert_inside_and_apart (pages);
        }
    }
}

static void
test_prediction_is_printed (void)
{
  g_autoptr (TrTrial) trial = sample_trial_all ();
  g_autoptr (TrFigures) figures = NULL;
  g_autoptr (TrPages) pages = NULL;
  TrPrediction *prediction = tr_prediction_new ();

  tr_set_text (&prediction->by, "hand");
  g_strfreev (prediction->order);
  prediction->order = g_new0 (char *, 3);
  prediction->order[0] = g_strdup (tr_trial_get_dough (trial, 2)->id);
  prediction->order[1] = g_strdup (tr_trial_get_dough (trial, 0)->id);
  trial->prediction = prediction;
  figures = tr_figures_compute (trial, NULL);
  pages = make (figures, TR_UNITS_METRIC, TR_PAPER_A4);
  g_assert_cmpuint (count_text (pages, "Predicted, the best first: C, A."), ==, tr_pages_count (pages));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/paper/comparison/every-dough-has-its-letter-and-name", test_every_dough_has_its_letter_and_name);
  g_test_add_func ("/paper/comparison/every-known-figure-stands-there", test_every_known_figure_stands_there);
  g_test_add_func ("/paper/comparison/what-is-known-of-none-is-left-out", test_what_is_known_of_none_is_left_out);
  g_test_add_func ("/paper/comparison/texts-lie-on-the-page-and-apart", test_texts_lie_on_the_page_and_apart);
  g_test_add_func ("/paper/comparison/prediction-is-printed", test_prediction_is_printed);

  return g_test_run ();
}
