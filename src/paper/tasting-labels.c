/* tasting-labels.c: codes to cut out, and what they stand for
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Labels for every sample, one a taster and one for the plate it is taken
 * from. The key is a paper of its own, that no taster sees.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "../calc/scores.h"
#include "tasting.h"

#define COLUMNS 5
#define LABEL_HEIGHT_PT 56.0
#define CODE_EM 3.0
#define ROW_EM 1.8

static void
add_label (TrTastingPaper *paper,
           guint           dough,
           guint           column,
           double          y)
{
  double width = paper->width / COLUMNS, x = column * width;
  g_autofree char *code = tr_tasting_paper_dup_code (paper, dough);

  tr_picture_add_rect (paper->content, &(TrBox) { x, y, width, LABEL_HEIGHT_PT }, NULL, TR_PEN_HAIR, &paper->look.dim);
  tr_picture_dash (paper->content);
  tr_picture_add_fitting_text (paper->content, code, CODE_EM * paper->em, 700, &paper->look.text, x + width / 2,
                               y + LABEL_HEIGHT_PT / 2 + 0.36 * CODE_EM * paper->em, 0.5, width - 8);
}

TrPages *
tr_code_labels_new (const TrFigures *figures,
                    const TrReader  *reader,
                    TrPaperSize      size)
{
  TrTastingPaper paper;
  guint n_tasters, at = 0, n_all;

  g_return_val_if_fail (figures != NULL && reader != NULL, NULL);

  tr_tasting_paper_init (&paper, figures, reader, size);
  g_autoptr (GArray) sorted = tr_tasting_paper_sort_by_code (&paper);
  n_tasters = figures->trial->tasting != NULL ? figures->trial->tasting->tasters->len : 0;
  n_all = sorted->len * (n_tasters + 1);
  do
    {
      double y = tr_tasting_paper_begin_page (&paper, _("Labels to cut out"), NULL);

      y = tr_tasting_paper_add_allergens (&paper, y) + 0.6 * paper.em;
      for (; at < n_all && y + LABEL_HEIGHT_PT <= paper.bottom - 14; y += LABEL_HEIGHT_PT)
        for (guint column = 0; column < COLUMNS && at < n_all; column++, at++)
          add_label (&paper, g_array_index (sorted, guint, at / (n_tasters + 1)), column, y);
      tr_tasting_paper_end_page (&paper, _("Of every sample one label a taster, and one for the plate. All pieces of a size, warmth and age."));
    }
  while (at < n_all);

  return tr_tasting_paper_finish (&paper);
}

/* The key *********************************************************************/

typedef struct {
  TrTastingPaper paper;
  double y;
} Key;

static void
end_key_page (Key *key)
{
  tr_tasting_paper_end_page (&key->paper, _("Keep this away from the tasters until every sheet is in."));
}

static void
begin_key_page (Key *key)
{
  key->y = tr_tasting_paper_begin_page (&key->paper, _("Key: which code is which dough"), NULL) + 0.6 * key->paper.em;
}

static void
need_room (Key    *key,
           double  height)
{
  if (key->y + height <= key->paper.bottom - 16)
    return;

  end_key_page (key);
  begin_key_page (key);
}

static void
add_code (Key   *key,
          guint  dough)
{
  TrTastingPaper *paper = &key->paper;
  double em = paper->em;
  g_autofree char *code = tr_tasting_paper_dup_code (paper, dough);
  g_autofree char *letter = tr_words_letter (dough);
  g_autofree char *name = tr_words_one_line (tr_trial_get_dough (paper->figures->trial, dough)->name);

  need_room (key, ROW_EM * em);
  key->y += ROW_EM * em;
  tr_picture_add_text (paper->content, code, 1.2 * em, 700, &paper->look.text, 0, key->y - 0.5 * em, 0);
  tr_picture_add_text (paper->content, letter, 1.2 * em, 700, &paper->look.accent, 5 * em, key->y - 0.5 * em, 0);
  tr_card_add_fitting (paper->content, name, 1.1 * em, 400, &paper->look.text, 9 * em, paper->width - 9 * em, key->y - 0.5 * em);
  tr_card_add_rule (paper->content, key->y, paper->width, FALSE);
}

static char *
dup_order (const TrTastingPaper *paper,
           const TrOrder        *order)
{
  g_autoptr (GPtrArray) codes = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; order->doughs[i] != NULL; i++)
    {
      int dough = tr_trial_find_dough (paper->figures->trial, order->doughs[i]);

      if (dough >= 0)
        g_ptr_array_add (codes, tr_tasting_paper_dup_code (paper, (guint) dough));
    }
  g_ptr_array_add (codes, NULL);

  return g_strjoinv (", ", (char **) codes->pdata);
}

static void
add_order (Key            *key,
           const TrTaster *taster)
{
  TrTastingPaper *paper = &key->paper;
  double em = paper->em, x = 14 * em;
  const TrOrder *order = tr_tasting_find_order (paper->figures->trial->tasting, taster->id);
  g_autofree char *name = tr_words_one_line (taster->name != NULL ? taster->name : "");
  g_autofree char *codes = order != NULL ? dup_order (paper, order) : g_strdup (_("no order yet"));
  g_auto (GStrv) lines = tr_text_wrap (&paper->look, codes, em, 400, paper->width - x, 8);
  double height = (0.6 + 1.28 * MAX (1, g_strv_length (lines))) * em;

  need_room (key, height);
  tr_card_add_fitting (paper->content, name, em, 700, &paper->look.text, 0, x - em, key->y + 1.2 * em);
  tr_card_add_paragraph (paper->content, codes, em, 400, &paper->look.text, x, paper->width - x, key->y + 1.2 * em, 8);
  key->y += height;
  tr_card_add_rule (paper->content, key->y, paper->width, FALSE);
}

TrPages *
tr_tasting_key_new (const TrFigures *figures,
                    const TrReader  *reader,
                    TrPaperSize      size)
{
  const TrTasting *tasting;
  Key key = { .y = 0 };

  g_return_val_if_fail (figures != NULL && reader != NULL, NULL);

  tr_tasting_paper_init (&key.paper, figures, reader, size);
  tasting = figures->trial->tasting;
  g_autoptr (GArray) sorted = tr_tasting_paper_sort_by_code (&key.paper);
  begin_key_page (&key);
  for (guint i = 0; i < sorted->len; i++)
    add_code (&key, g_array_index (sorted, guint, i));
  if (tasting != NULL && tasting->tasters->len > 0)
    {
      need_room (&key, 5 * key.paper.em);
      key.y += 3.2 * key.paper.em;
      tr_card_add_heading (key.paper.content, _("Who tastes in which order"), key.y - 0.8 * key.paper.em);
      for (guint t = 0; t < tasting->tasters->len; t++)
        add_order (&key, tasting->tasters->pdata[t]);
    }
  end_key_page (&key);

  return tr_tasting_paper_finish (&key.paper);
}
