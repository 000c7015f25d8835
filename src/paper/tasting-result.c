/* tasting-result.c: how a tasting came out
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Order and prediction, every taster's dot, the sentences, and which figures
 * went with the scores. What is missing is said in their place.
 */

#include "config.h"

#include <math.h>
#include <stdlib.h>

#include <glib/gi18n-lib.h>

#include "../picture/tasting.h"
#include "tasting.h"

/* Of those that went with the scores, the ones that went most. */
#define MOST_FOLLOWERS 8
#define PICTURE_ROW_EM 1.9
#define MOST_PICTURE_SHARE 0.3     /* of the page */

/* Takes the text; NULL is nothing. */
static double
add_sentence (TrTastingPaper *paper,
              char           *text,
              int             weight,
              double          y)
{
  g_autofree char *owned = text;

  return owned == NULL ? y
                       : tr_card_add_paragraph (paper->content, owned, 1.05 * paper->em, weight, &paper->look.text, 0, paper->width,
                                                y + 1.2 * paper->em, 4) - 0.7 * paper->em;
}

static double
add_pictures (TrTastingPaper         *paper,
              const TrTastingFigures *tasting,
              double                  y)
{
  double height = fmin (MOST_PICTURE_SHARE * paper->bottom, PICTURE_ROW_EM * paper->em * (tasting->n_samples + 1.5));
  g_autoptr (TrPicture) ladder = tr_rank_ladder_picture_new (tasting, paper->reader, &paper->look, paper->width, height);
  g_autoptr (TrPicture) dots = tr_score_dots_picture_new (tasting, paper->reader, &paper->look, paper->width, height);

  y += 1.4 * paper->em;
  tr_picture_place (paper->content, ladder, 0, y);
  y += height + 1.6 * paper->em;
  tr_picture_place (paper->content, dots, 0, y);

  return y + height + 0.6 * paper->em;
}

static double
add_followers (TrTastingPaper         *paper,
               const TrTastingFigures *tasting,
               double                  y)
{
  g_autoptr (GArray) sorted = tr_tasting_sort_followers (tasting);

  if (sorted->len == 0)
    return y;

  y = add_sentence (paper, g_strdup (_("Which figures went with the scores")), 700, y + 0.6 * paper->em);
  y = add_sentence (paper, tr_words_tried (paper->reader, tasting), 400, y);
  y = add_sentence (paper, tr_words_perfect_p (paper->reader, tasting->n_samples), 400, y);
  for (guint i = 0; i < MIN (sorted->len, MOST_FOLLOWERS) && y + 2.6 * paper->em < paper->bottom - 16; i++)
    y = add_sentence (paper, tr_words_follower (paper->reader, &g_array_index (sorted, TrFollower, i)), 400, y);

  return y;
}

TrPages *
tr_result_paper_new (const TrFigures        *figures,
                     const TrTastingFigures *tasting,
                     const TrReader         *reader,
                     TrPaperSize             size)
{
  TrTastingPaper paper;
  g_autofree char *line = NULL;
  double y;

  g_return_val_if_fail (figures != NULL && tasting != NULL && reader != NULL, NULL);

  tr_tasting_paper_init (&paper, figures, reader, size);
  line = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u taster scored every sample", "%u tasters scored every sample", tasting->tasters->len),
                          tasting->tasters->len);
  y = tr_tasting_paper_begin_page (&paper, _("How the tasting came out"), line);
  y = add_sentence (&paper, tr_words_left_out (tasting), 400, y);
  if (tasting->order != NULL)
    y = add_pictures (&paper, tasting, y);
  y = add_sentence (&paper, tr_words_tasting_gap (reader, tasting), 700, y);
  y = add_sentence (&paper, tr_words_friedman (reader, tasting), 700, y);
  y = add_sentence (&paper, tr_words_predicted (reader, tasting), 400, y);
  y = add_followers (&paper, tasting, y);
  y = add_sentence (&paper, tr_words_tasting_allergens (figures), 400, y);
  tr_tasting_paper_end_page (&paper, _("Ranks say whether doughs differ, not by how much. Of so few tasters no more is known than of these tasters."));

  return tr_tasting_paper_finish (&paper);
}
