/* card-job.c: the bench cards of chosen doughs, as they were when they were chosen
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The cards are laid out when first asked for: choosing another paper before
 * that costs nothing.
 */

#include "config.h"

#include "card-job.h"

struct _TrCardJob
{
  TrFigures *figures;
  GArray *doughs;                /* guint */
  TrReader reader;
  TrPaperSize size;
  char *name;
  TrPages *cards;                /* NULL: not asked for yet */
};

static TrCardJob *
new_job (const TrFigures *figures,
         GArray          *doughs,
         const TrReader  *reader,
         TrPaperSize      size,
         const char      *name)
{
  TrCardJob *job = g_atomic_rc_box_new0 (TrCardJob);

  job->figures = tr_figures_ref (figures);
  job->doughs = g_array_ref (doughs);
  job->reader = *reader;
  job->size = size;
  job->name = g_strdelimit (g_strdup (name), "/\\:", '-');

  return job;
}

TrCardJob *
tr_card_job_new (const TrFigures *figures,
                 const guint     *doughs,
                 guint            n_doughs,
                 const TrReader  *reader,
                 TrPaperSize      size,
                 const char      *name)
{
  g_return_val_if_fail (figures != NULL, NULL);
  g_return_val_if_fail (doughs != NULL && n_doughs > 0, NULL);
  g_return_val_if_fail (reader != NULL, NULL);
  g_return_val_if_fail (name != NULL, NULL);

  g_autoptr (GArray) chosen = g_array_sized_new (FALSE, FALSE, sizeof (guint), n_doughs);

  g_array_append_vals (chosen, doughs, n_doughs);

  return new_job (figures, chosen, reader, size, name);
}

TrCardJob *
tr_card_job_on_paper (TrCardJob   *job,
                      TrPaperSize  size)
{
  g_return_val_if_fail (job != NULL, NULL);

  return job->size == size ? tr_card_job_ref (job) : new_job (job->figures, job->doughs, &job->reader, size, job->name);
}

TrCardJob *
tr_card_job_ref (TrCardJob *job)
{
  return g_atomic_rc_box_acquire (job);
}

static void
clear (gpointer data)
{
  TrCardJob *job = data;

  tr_figures_unref (job->figures);
  g_array_unref (job->doughs);
  g_free (job->name);
  tr_pages_free (job->cards);
}

void
tr_card_job_unref (TrCardJob *job)
{
  g_atomic_rc_box_release_full (job, clear);
}

const TrPages *
tr_card_job_get_cards (const TrCardJob *job)
{
  g_return_val_if_fail (job != NULL, NULL);

  if (job->cards == NULL)
    ((TrCardJob *) job)->cards = tr_cards_new (job->figures, (const guint *) (gconstpointer) job->doughs->data, job->doughs->len,
                                               &job->reader, job->size);

  return job->cards;
}

TrPaperSize
tr_card_job_get_paper (const TrCardJob *job)
{
  g_return_val_if_fail (job != NULL, TR_PAPER_A4);

  return job->size;
}

guint
tr_card_job_count_doughs (const TrCardJob *job)
{
  g_return_val_if_fail (job != NULL, 0);

  return job->doughs->len;
}

const char *
tr_card_job_get_name (const TrCardJob *job)
{
  g_return_val_if_fail (job != NULL, NULL);

  return job->name;
}
