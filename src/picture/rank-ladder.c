/* rank-ladder.c: places predicted and places that came out
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *    predicted        result
 *    1  A Sponge ───╲  ╱── 1  B  (9)
 *    2  B Straight ──╳──── 2  A  (12)
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "shapes.h"
#include "tasting.h"

#define ROW_EM 1.7
#define SIDE_SHARE 0.38            /* of the width, for the names on either side */

typedef struct {
  const TrTastingFigures *tasting;
  const TrReader *reader;
  const TrLook *look;
  TrPicture *picture;
  double em, width, top, row, left, right;
} Ladder;

static double
row_baseline (const Ladder *ladder,
              guint         place)
{
  return ladder->top + (place + 0.5) * ladder->row + 0.35 * ladder->em;
}

static char *
dup_name (const Ladder *ladder,
          guint         sample)
{
  guint dough = ladder->tasting->samples[sample];
  g_autofree char *letter = tr_words_letter (dough);
  g_autofree char *name = tr_words_one_line (tr_trial_get_dough (ladder->tasting->trial, dough)->name);

  return g_strdup_printf ("%s %s", letter, name);
}

static void
add_predicted (const Ladder *ladder,
               guint         place)
{
  guint sample = ladder->tasting->prediction.order[place];
  g_autofree char *name = dup_name (ladder, sample);
  g_autofree char *text = g_strdup_printf ("%u  %s", place + 1, name);

  tr_picture_add_fitting_text (ladder->picture, text, ladder->em, 400, &ladder->look->text, ladder->left - 0.7 * ladder->em,
                               row_baseline (ladder, place), 1, ladder->left - 0.7 * ladder->em);
  tr_picture_set_hit (ladder->picture, TR_PART_OF_POINT, (int) ladder->tasting->samples[sample], name);
}

static void
add_result (const Ladder *ladder,
            guint         place)
{
  const TrTastingFigures *tasting = ladder->tasting;
  guint sample = tasting->order[place];
  g_autofree char *name = dup_name (ladder, sample);
  g_autofree char *sum = tr_words_number (ladder->reader, tasting->rank_sums[sample], fmod (tasting->rank_sums[sample], 1) > 0.25 ? 1 : 0);
  g_autofree char *mean = tr_words_number (ladder->reader, tasting->mean_score[sample], 1);
  /* Translators: "1  A Sponge, rank sum 17, mean 7.2" */
  g_autofree char *text = g_strdup_printf (_("%u  %s, rank sum %s, mean %s"), place + 1, name, sum, mean);
  double x = ladder->right + 0.7 * ladder->em;

  tr_picture_add_fitting_text (ladder->picture, text, ladder->em, place == 0 ? 700 : 400, &ladder->look->text, x,
                               row_baseline (ladder, place), 0, ladder->width - x);
  tr_picture_set_hit (ladder->picture, TR_PART_OF_POINT, (int) tasting->samples[sample], name);
  tr_picture_describe (ladder->picture, "%s. ", text);
}

static guint
find_place (const guint *order,
            guint        sample)
{
  guint place = 0;

  while (order[place] != sample)
    place++;

  return place;
}

/* Heavier the further it lies from where it was expected, so that a miss is seen. */
static void
add_rung (const Ladder *ladder,
          guint         sample)
{
  guint from = find_place (ladder->tasting->prediction.order, sample), to = find_place (ladder->tasting->order, sample);
  double lift = 0.35 * ladder->em, radius = 0.22 * ladder->em;
  double y1 = row_baseline (ladder, from) - lift, y2 = row_baseline (ladder, to) - lift;

  tr_picture_add_line (ladder->picture, ladder->left, y1, ladder->right, y2, from == to ? TR_PEN_INNER : TR_PEN_OUTLINE,
                       from == to ? &ladder->look->dim : &ladder->look->accent);
  tr_picture_add_circle (ladder->picture, ladder->left, y1, radius, &ladder->look->accent, TR_PEN_NONE, NULL);
  tr_picture_add_circle (ladder->picture, ladder->right, y2, radius, &ladder->look->accent, TR_PEN_NONE, NULL);
}

static void
add_heads (const Ladder *ladder,
           gboolean      is_predicted)
{
  double baseline = 0.9 * ladder->em;

  if (is_predicted)
    tr_picture_add_fitting_text (ladder->picture, _("Predicted"), ladder->em, 700, &ladder->look->dim, ladder->left - 0.7 * ladder->em,
                                 baseline, 1, ladder->left - 0.7 * ladder->em);
  tr_picture_add_fitting_text (ladder->picture, _("Result"), ladder->em, 700, &ladder->look->dim, ladder->right + 0.7 * ladder->em,
                               baseline, 0, ladder->width - ladder->right - 0.7 * ladder->em);
}

TrPicture *
tr_rank_ladder_picture_new (const TrTastingFigures *tasting,
                            const TrReader         *reader,
                            const TrLook           *look,
                            double                  width,
                            double                  height)
{
  gboolean is_predicted;
  Ladder ladder;
  guint n;

  g_return_val_if_fail (tasting != NULL && tasting->order != NULL, NULL);

  n = tasting->n_samples;
  is_predicted = tasting->prediction.order != NULL;
  ladder = (Ladder) { tasting, reader, look, tr_picture_new (look, reader, width, height), look->text_size, width, 0, 0, 0, 0 };
  ladder.em = fmin (look->text_size, height / (ROW_EM * (n + 1)));
  ladder.top = 1.4 * ladder.em;
  ladder.row = fmin (2 * ROW_EM * ladder.em, (height - ladder.top) / n);
  ladder.left = is_predicted ? SIDE_SHARE * width : 0;
  ladder.right = is_predicted ? (1 - SIDE_SHARE) * width : 0;
  if (is_predicted)
    ladder.right -= 0.08 * width;
  add_heads (&ladder, is_predicted);
  tr_picture_describe (ladder.picture, is_predicted ? _("Places predicted and places that came out. ") : _("Places that came out. "));
  for (guint i = 0; i < n; i++)
    {
      if (is_predicted)
        {
          add_rung (&ladder, i);
          add_predicted (&ladder, i);
        }
      add_result (&ladder, i);
    }

  return ladder.picture;
}
