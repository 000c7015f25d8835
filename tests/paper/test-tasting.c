/* test-tasting.c: what the papers of a tasting say, and what they keep to themselves
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "calc/scores.h"
#include "calc/serving.h"
#include "paper/paper.h"
#include "picture/shapes.h"
#include "samples.h"
#include "words/tasting.h"

/* What printers keep clear; common practice. */
#define MARGIN_PT (10 * 72 / 25.4)

/* Six doughs of one sample, dealt to as many tasters, marked at random. */
static TrTrial *
tasting_new (guint n_doughs,
             guint n_tasters)
{
  TrTrial *trial = sample_trial_new ((Sample) 0);
  g_autoptr (GRand) rand = g_rand_new_with_seed (11);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  TrTasting *tasting = tr_trial_need_tasting (trial);

  while (trial->doughs->len < n_doughs)
    {
      TrDough *dough = tr_dough_copy (tr_trial_get_dough (trial, 0));
      g_autofree char *id = tr_trial_dup_free_id (trial);
      g_autofree char *name = g_strdup_printf ("Secret dough of no code, number %u", trial->doughs->len);

      tr_set_text (&dough->id, id);
      tr_set_text (&dough->name, name);
      g_ptr_array_add (trial->doughs, dough);
    }
  for (guint i = 0; i < n_doughs; i++)
    g_strv_builder_add (builder, tr_trial_get_dough (trial, i)->id);
  for (guint t = 0; t < n_tasters; t++)
    tr_tasting_add_taster (tasting, "Somebody with a name that is rather long");

  g_auto (GStrv) doughs = g_strv_builder_end (builder);

  tr_serving_deal_codes (tasting, (const char *const *) doughs, rand);
  tr_serving_deal_orders (tasting, (const char *const *) doughs, rand);
  for (guint t = 0; t < n_tasters; t++)
    for (guint i = 0; i < n_doughs; i++)
      {
        TrScore *score = tr_tasting_need_score (tasting, ((TrTaster *) tasting->tasters->pdata[t])->id, doughs[i]);

        score->look = g_rand_int_range (rand, 1, 10);
        score->layers = g_rand_int_range (rand, 1, 10);
        score->eating = g_rand_int_range (rand, 1, 10);
      }

  return trial;
}

enum { SHEETS, LABELS, KEY, RESULT, N_PAPERS };

static TrPages *
pages_new (int              paper,
           const TrFigures *figures,
           const TrReader  *reader,
           TrPaperSize      size)
{
  g_autoptr (TrTastingFigures) tasting = tr_tasting_compute (figures, NULL);

  return paper == SHEETS   ? tr_score_sheets_new (figures, reader, size)
         : paper == LABELS ? tr_code_labels_new (figures, reader, size)
         : paper == KEY    ? tr_tasting_key_new (figures, reader, size)
                           : tr_result_paper_new (figures, tasting, reader, size);
}

static gboolean
page_says (const TrPicture *page,
           const char      *what)
{
  for (guint i = 0; i < tr_picture_count_texts (page); i++)
    if (strstr (tr_picture_get_text (page, i, NULL), what) != NULL)
      return TRUE;

  return FALSE;
}

static void
check_page (const TrPicture *page)
{
  double width, height;

  tr_picture_get_size (page, &width, &height);
  for (guint i = 0; i < tr_picture_count_texts (page); i++)
    {
      TrBox a, b;
      const char *text = tr_picture_get_text (page, i, &a);

      if (a.x < MARGIN_PT || a.y < MARGIN_PT || a.x + a.width > width - MARGIN_PT || a.y + a.height > height - MARGIN_PT)
        g_error ("“%s” is in the margin", text);
      for (guint j = 0; j < i; j++)
        {
          const char *other = tr_picture_get_text (page, j, &b);

          if (MIN (a.x + a.width, b.x + b.width) - MAX (a.x, b.x) > 0.5 && MIN (a.y + a.height, b.y + b.height) - MAX (a.y, b.y) > 1.5)
            g_error ("“%s” lies on “%s”", text, other);
        }
    }
}

static void
test_pages (void)
{
  static const struct { guint n_doughs, n_tasters; } cases[] = { { 2, 1 }, { 4, 8 }, { 6, 12 }, { 9, 3 }, { 16, 5 } };

  for (gsize k = 0; k < G_N_ELEMENTS (cases); k++)
    {
      g_autoptr (TrTrial) trial = tasting_new (cases[k].n_doughs, cases[k].n_tasters);
      g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
      TrReader reader;

      tr_reader_init_plain (&reader, TR_UNITS_METRIC);
      for (int size = TR_PAPER_A4; size <= TR_PAPER_LETTER; size++)
        for (int paper = 0; paper < N_PAPERS; paper++)
          {
            g_autoptr (TrPages) pages = pages_new (paper, figures, &reader, (TrPaperSize) size);

            g_test_message ("paper %d, %u doughs, %u tasters", paper, cases[k].n_doughs, cases[k].n_tasters);
            g_assert_cmpuint (tr_pages_count (pages), >=, paper == SHEETS ? cases[k].n_tasters : 1);
            for (guint p = 0; p < tr_pages_count (pages); p++)
              {
                const TrPicture *page = tr_pages_get (pages, p);

                check_page (page);
                if (paper != KEY)
                  g_assert_true (page_says (page, "Allergens of all samples together"));
                if (paper == SHEETS || paper == LABELS)
                  {
                    g_assert_true (page_says (page, "ask each taster"));
                    g_assert_false (page_says (page, "Secret dough"));
                  }
              }
          }
    }
}

static void
test_one_page_a_taster (void)
{
  g_autoptr (TrTrial) trial = tasting_new (5, 7);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autoptr (TrPages) pages = NULL;
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  pages = tr_score_sheets_new (figures, &reader, TR_PAPER_A4);
  g_assert_cmpuint (tr_pages_count (pages), ==, 7);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/tasting-papers/nothing-overlaps-or-tells-and-allergens-come-first", test_pages);
  g_test_add_func ("/tasting-papers/five-samples-are-a-page-a-taster", test_one_page_a_taster);

  return g_test_run ();
}
