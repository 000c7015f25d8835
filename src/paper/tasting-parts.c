/* tasting-parts.c: what the papers of a tasting share
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "../calc/scores.h"
#include "tasting.h"

#define EM 9.0

void
tr_tasting_paper_init (TrTastingPaper  *paper,
                       const TrFigures *figures,
                       const TrReader  *reader,
                       TrPaperSize      size)
{
  *paper = (TrTastingPaper) { .figures = figures, .reader = reader, .em = EM };
  tr_look_init_paper (&paper->look);
  paper->look.text_size = EM;
  tr_paper_get_size (size, &paper->page_width, &paper->page_height);
  paper->width = paper->page_width - 2 * TR_TASTING_MARGIN_PT;
  paper->bottom = paper->page_height - 2 * TR_TASTING_MARGIN_PT;
  paper->samples = tr_serving_list_samples (figures->trial);
  paper->pages = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_picture_unref);
}

TrPages *
tr_tasting_paper_finish (TrTastingPaper *paper)
{
  const char *title = paper->figures->trial->title;

  g_clear_pointer (&paper->samples, g_array_unref);

  return tr_pages_new_take (g_steal_pointer (&paper->pages), g_strdup (title != NULL ? title : ""));
}

double
tr_tasting_paper_begin_page (TrTastingPaper *paper,
                             const char     *head,
                             const char     *line)
{
  double em = paper->em, y = 1.7 * em;
  g_autofree char *title = tr_words_one_line (paper->figures->trial->title != NULL ? paper->figures->trial->title : "");

  paper->content = tr_picture_new (&paper->look, paper->reader, paper->width, paper->bottom);
  tr_card_add_fitting (paper->content, head, 2.0 * em, 700, &paper->look.text, 0, paper->width, y);
  y += 1.7 * em;
  tr_card_add_fitting (paper->content, title, 1.1 * em, 400, &paper->look.dim, 0, paper->width, y);
  if (line != NULL)
    {
      y += 1.6 * em;
      tr_card_add_fitting (paper->content, line, 1.1 * em, 400, &paper->look.text, 0, paper->width, y);
    }
  tr_card_add_rule (paper->content, y + 0.7 * em, paper->width, TRUE);

  return y + 0.9 * em;
}

double
tr_tasting_paper_add_allergens (TrTastingPaper *paper,
                                double          y)
{
  double em = paper->em;
  g_autofree char *allergens = tr_words_tasting_allergens (paper->figures);
  g_autofree char *question = tr_words_tasting_question ();

  y = tr_card_add_caution (paper->content, allergens, 1.1 * em, 0, paper->width, y + 1.3 * em, 4);
  y = tr_card_add_paragraph (paper->content, question, em, 700, &paper->look.text, 0, paper->width, y + 0.1 * em, 3);
  tr_card_add_rule (paper->content, y - 0.5 * em, paper->width, TRUE);

  return y;
}

void
tr_tasting_paper_end_page (TrTastingPaper *paper,
                           const char     *foot)
{
  TrPicture *page = tr_picture_new (&paper->look, paper->reader, paper->page_width, paper->page_height);

  if (foot != NULL)
    tr_card_add_fitting (paper->content, foot, 0.9 * paper->em, 400, &paper->look.dim, 0, paper->width, paper->bottom - 0.3 * paper->em);
  tr_picture_place (page, paper->content, TR_TASTING_MARGIN_PT, TR_TASTING_MARGIN_PT);
  g_clear_pointer (&paper->content, tr_picture_unref);
  g_ptr_array_add (paper->pages, page);
}

static int
get_code (const TrTastingPaper *paper,
          guint                 dough)
{
  const TrTrial *trial = paper->figures->trial;

  return trial->tasting != NULL ? tr_tasting_get_code (trial->tasting, tr_trial_get_dough (trial, dough)->id) : 0;
}

char *
tr_tasting_paper_dup_code (const TrTastingPaper *paper,
                           guint                 dough)
{
  int code = get_code (paper, dough);

  return code != 0 ? g_strdup_printf ("%d", code) : tr_words_letter (dough);
}

static int
compare_codes (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  int one = get_code (data, *(const guint *) a), other = get_code (data, *(const guint *) b);

  return one != other ? (one < other ? -1 : 1) : *(const guint *) a < *(const guint *) b ? -1 : 1;
}

GArray *
tr_tasting_paper_sort_by_code (const TrTastingPaper *paper)
{
  GArray *sorted = g_array_copy (paper->samples);

  g_array_sort_with_data (sorted, compare_codes, (gpointer) paper);

  return sorted;
}
