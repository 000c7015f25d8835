/* tasting-sheets.c: score sheets, one a taster
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   ┌─────┬──────────────────────┬───────────────┬────────────┐
 *   │ 418 │ Look    1 2 3 … 9    │ Salt −2 … +2  │ □ Dense    │
 *   │     │ Layers  1 2 3 … 9    │ Sweet         │ □ Gummy    │
 *   │     │ Eating  1 2 3 … 9    │ Bake          │ …          │
 *   │     │ Notes ______________________________ │            │
 *   └─────┴──────────────────────┴───────────────┴────────────┘
 *
 * One block a sample, in the taster's own order. More than a page holds goes on
 * on a second one.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "../calc/faults.h"
#include "../calc/scores.h"
#include "tasting.h"

#define ROW_PT 15.0
#define N_ROWS 6
#define BLOCK_PT (N_ROWS * ROW_PT + 10)
#define BOX_PT (TR_TICK_PT + 0.6)
#define MARKS_X 52.0
#define BALANCE_X 226.0
#define FAULTS_X 352.0
#define LABEL_PT 37.0
#define FOOT_PT 14.0

/* Boxes with a number in each, to be ringed or crossed. */
static void
add_choice (TrTastingPaper *paper,
            const char     *label,
            int             from,
            int             to,
            double          x,
            double          middle)
{
  const TrLook *look = &paper->look;
  double baseline = middle + 0.35 * paper->em;

  tr_card_add_fitting (paper->content, label, paper->em, 400, &look->text, x, LABEL_PT - 3, baseline);
  x += LABEL_PT;
  for (int mark = from; mark <= to; mark++, x += BOX_PT + 3)
    {
      g_autofree char *number = g_strdup_printf (mark < 0 ? "\u2212%d" : mark > 0 && from < 0 ? "+%d" : "%d", ABS (mark));

      tr_picture_add_rect (paper->content, &(TrBox) { x, middle - BOX_PT / 2, BOX_PT, BOX_PT }, NULL, TR_PEN_INNER, &look->text);
      tr_picture_add_text (paper->content, number, 0.78 * paper->em, 400, &look->dim, x + BOX_PT / 2, middle + 0.28 * paper->em, 0.5);
    }
}

static void
add_faults (TrTastingPaper *paper,
            double          y)
{
  double column = (paper->width - FAULTS_X) / 2;

  for (guint fault = 0; fault < TR_N_FAULTS; fault++)
    {
      double x = FAULTS_X + (fault / N_ROWS) * column, middle = y + (fault % N_ROWS + 0.5) * ROW_PT;

      tr_card_add_tick (paper->content, x, middle);
      tr_picture_add_fitting_text (paper->content, tr_words_fault ((TrFault) fault), 0.9 * paper->em, 400, &paper->look.text,
                                   x + TR_TICK_PT + 3, middle + 0.33 * paper->em, 0, column - TR_TICK_PT - 6);
    }
}

static void
add_sample (TrTastingPaper *paper,
            guint           dough,
            double          y)
{
  static const char *const marks[] = { N_("Look"), N_("Layers"), N_("Eating") };
  static const char *const balances[] = { N_("Salt"), N_("Sweet"), N_("Bake") };
  g_autofree char *code = tr_tasting_paper_dup_code (paper, dough);
  double top = y + 6, em = paper->em;

  tr_card_add_fitting (paper->content, code, 2.2 * em, 700, &paper->look.text, 0, MARKS_X - 6, top + 1.8 * em);
  for (guint i = 0; i < G_N_ELEMENTS (marks); i++)
    {
      add_choice (paper, _(marks[i]), 1, 9, MARKS_X, top + (i + 0.5) * ROW_PT);
      add_choice (paper, _(balances[i]), -2, 2, BALANCE_X, top + (i + 0.5) * ROW_PT);
    }
  tr_card_add_blank (paper->content, _("Notes"), MARKS_X, FAULTS_X - 14, top + 4.4 * ROW_PT);
  tr_picture_add_line (paper->content, MARKS_X, top + 5.7 * ROW_PT, FAULTS_X - 14, top + 5.7 * ROW_PT, TR_PEN_INNER, &paper->look.dim);
  add_faults (paper, top);
  tr_card_add_rule (paper->content, y + BLOCK_PT, paper->width, FALSE);
}

static double
add_how (TrTastingPaper *paper,
         double          y)
{
  return tr_card_add_paragraph (paper->content,
                                _("Taste in this order, a sip of water between. Ring one number a row. Marks: 1 dislike extremely, 5 neither, 9 like extremely. "
                                  "Balance: 0 just right, \u22122 far too little, +2 far too much; bake: \u22122 far too pale, +2 far too dark. Tick what is wrong."),
                                0.95 * paper->em, 400, &paper->look.text, 0, paper->width, y + 0.7 * paper->em, 3);
}

/* In the order that was dealt; without one by code, which tells nothing. */
static GArray *
list_order (const TrTastingPaper *paper,
            const TrTaster       *taster)
{
  const TrTrial *trial = paper->figures->trial;
  const TrOrder *order = taster != NULL ? tr_tasting_find_order (trial->tasting, taster->id) : NULL;
  g_autoptr (GArray) by_code = tr_tasting_paper_sort_by_code (paper);
  GArray *list = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; order != NULL && order->doughs[i] != NULL; i++)
    {
      int dough = tr_trial_find_dough (trial, order->doughs[i]);

      for (guint k = 0; k < by_code->len; k++)
        if ((int) g_array_index (by_code, guint, k) == dough)
          {
            g_array_append_val (list, g_array_index (by_code, guint, k));
            g_array_remove_index (by_code, k);
            break;
          }
    }
  /* Codes that came after the orders were dealt. */
  g_array_append_vals (list, by_code->data, by_code->len);

  return list;
}

static void
add_taster (TrTastingPaper *paper,
            const TrTaster *taster)
{
  g_autoptr (GArray) order = list_order (paper, taster);
  g_autofree char *name = tr_words_one_line (taster != NULL && taster->name != NULL ? taster->name : "");
  g_autofree char *head = g_strdup_printf (_("Score sheet: %s"), *name != '\0' ? name : "______________________");
  guint at = 0, page = 0;

  do
    {
      double y = tr_tasting_paper_begin_page (paper, head, NULL);
      g_autofree char *foot = NULL;

      y = tr_tasting_paper_add_allergens (paper, y);
      y = add_how (paper, y) - 0.4 * paper->em;
      tr_card_add_rule (paper->content, y, paper->width, FALSE);
      for (; at < order->len && y + BLOCK_PT <= paper->bottom - FOOT_PT; at++, y += BLOCK_PT)
        add_sample (paper, g_array_index (order, guint, at), y);
      page++;
      foot = at < order->len ? g_strdup_printf (_("Page %u of this taster, goes on. Raw dough is not for tasting. Local food-safety rules decide."), page)
                             : g_strdup_printf (_("Page %u of this taster. Raw dough is not for tasting. Local food-safety rules decide."), page);
      tr_tasting_paper_end_page (paper, foot);
    }
  while (at < order->len);
}

TrPages *
tr_score_sheets_new (const TrFigures *figures,
                     const TrReader  *reader,
                     TrPaperSize      size)
{
  TrTastingPaper paper;
  const TrTasting *tasting;

  g_return_val_if_fail (figures != NULL && reader != NULL, NULL);

  tr_tasting_paper_init (&paper, figures, reader, size);
  tasting = figures->trial->tasting;
  for (guint t = 0; tasting != NULL && t < tasting->tasters->len; t++)
    add_taster (&paper, tasting->tasters->pdata[t]);
  if (paper.pages->len == 0)
    add_taster (&paper, NULL);

  return tr_tasting_paper_finish (&paper);
}
