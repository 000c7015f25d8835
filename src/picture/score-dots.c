/* score-dots.c: every taster's score of every dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One row a dough on the scale of marks, a dot a taster. Dots that would cover
 * one another stand over one another; the upright stroke is the mean.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "shapes.h"
#include "tasting.h"

#define LEAST_MARK 1
#define MOST_MARK 9
#define NAMES_SHARE 0.34
#define LEAST_ROW_EM 1.6
#define MOST_ROW_EM 4.0

typedef struct {
  const TrTastingFigures *tasting;
  const TrReader *reader;
  const TrLook *look;
  TrPicture *picture;
  double em, top, row, left, right, radius;
} Dots;

static double
mark_x (const Dots *dots,
        double      mark)
{
  return dots->left + (mark - LEAST_MARK) / (MOST_MARK - LEAST_MARK) * (dots->right - dots->left);
}

static void
add_scale (const Dots *dots)
{
  double bottom = dots->top + dots->row * dots->tasting->n_samples;

  for (int mark = LEAST_MARK; mark <= MOST_MARK; mark++)
    {
      g_autofree char *text = tr_words_number (dots->reader, mark, 0);

      tr_picture_add_line (dots->picture, mark_x (dots, mark), dots->top, mark_x (dots, mark), bottom, TR_PEN_HAIR, &dots->look->dim);
      tr_picture_add_text (dots->picture, text, 0.85 * dots->em, 400, &dots->look->dim, mark_x (dots, mark), dots->top - 0.35 * dots->em, 0.5);
    }
}

/* How many before this taster gave the same. */
static guint
count_alike (const Dots *dots,
             guint       taster,
             guint       sample)
{
  const TrTastingFigures *tasting = dots->tasting;
  guint alike = 0;

  for (guint t = 0; t < taster; t++)
    alike += fabs (tasting->scores[t * tasting->n_samples + sample] - tasting->scores[taster * tasting->n_samples + sample]) < TR_SCORE_HAIR;

  return alike;
}

static void
add_dot (const Dots *dots,
         guint       taster,
         guint       sample,
         double      foot)
{
  const TrTastingFigures *tasting = dots->tasting;
  double score = tasting->scores[taster * tasting->n_samples + sample];
  double step = fmin (2.1 * dots->radius, (dots->row - 2.4 * dots->radius) / MAX (1, tasting->tasters->len - 1));
  g_autofree char *number = tr_words_number (dots->reader, score, 1);
  g_autofree char *name = tr_words_one_line (((const TrTaster *) tasting->tasters->pdata[taster])->name);
  g_autofree char *label = g_strdup_printf ("%s: %s", name, number);

  tr_picture_add_circle (dots->picture, mark_x (dots, score), foot - dots->radius - step * count_alike (dots, taster, sample), dots->radius,
                         &dots->look->accent, TR_PEN_HAIR, &dots->look->paper);
  tr_picture_set_hit (dots->picture, TR_PART_OF_POINT, (int) tasting->samples[sample], label);
}

static void
add_row (const Dots *dots,
         guint       place)
{
  const TrTastingFigures *tasting = dots->tasting;
  guint sample = tasting->order[place], dough = tasting->samples[sample];
  double top = dots->top + place * dots->row, foot = top + dots->row - 0.15 * dots->em, mean = mark_x (dots, tasting->mean_score[sample]);
  g_autofree char *letter = tr_words_letter (dough);
  g_autofree char *name = tr_words_one_line (tr_trial_get_dough (tasting->trial, dough)->name);
  g_autofree char *text = g_strdup_printf ("%s %s", letter, name);
  g_autofree char *number = tr_words_number (dots->reader, tasting->mean_score[sample], 1);

  tr_picture_add_fitting_text (dots->picture, text, dots->em, 400, &dots->look->text, 0, foot - 0.15 * dots->em, 0,
                               dots->left - 1.0 * dots->em);
  tr_picture_add_line (dots->picture, dots->left, foot, dots->right, foot, TR_PEN_HAIR, &dots->look->dim);
  tr_picture_add_line (dots->picture, mean, top + 0.1 * dots->row, mean, foot, TR_PEN_HEAVY, &dots->look->text);
  for (guint t = 0; t < tasting->tasters->len; t++)
    add_dot (dots, t, sample, foot);
  tr_picture_describe (dots->picture, _("%s: mean %s. "), text, number);
}

TrPicture *
tr_score_dots_picture_new (const TrTastingFigures *tasting,
                           const TrReader         *reader,
                           const TrLook           *look,
                           double                  width,
                           double                  height)
{
  Dots dots;

  g_return_val_if_fail (tasting != NULL && tasting->order != NULL, NULL);

  dots = (Dots) { .tasting = tasting, .reader = reader, .look = look, .picture = tr_picture_new (look, reader, width, height) };
  dots.em = fmin (look->text_size, height / (LEAST_ROW_EM * tasting->n_samples + 1.5));
  dots.top = 1.5 * dots.em;
  dots.row = fmin (MOST_ROW_EM * dots.em, (height - dots.top) / tasting->n_samples);
  dots.radius = 0.3 * dots.em;
  dots.left = NAMES_SHARE * width;
  dots.right = width - 1.0 * dots.em;
  tr_picture_describe (dots.picture, _("Every taster's score, from 1 to 9, and the mean. "));
  add_scale (&dots);
  for (guint i = 0; i < tasting->n_samples; i++)
    add_row (&dots, i);

  return dots.picture;
}
