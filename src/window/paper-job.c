/* paper-job.c: one paper of a trial, as it was when it was asked for
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pages are laid out when first asked for: choosing another size before
 * that costs nothing. What is on them is shared by the jobs of every size.
 */

#include "config.h"

#include "paper-job.h"

#include <glib/gi18n-lib.h>

typedef struct {
  TrPaperKind kind;
  TrFigures *figures;
  GArray *doughs;                /* guint; NULL: not cards */
  TrTastingFigures *tasting;     /* NULL: not the result */
  TrReader reader;
  char *name;
} Content;

struct _TrPaperJob
{
  Content *content;
  TrPaperSize size;
  TrPages *pages;                /* NULL: not asked for yet */
};

static Content *
content_new (TrPaperKind      kind,
             const TrFigures *figures,
             const TrReader  *reader,
             const char      *name)
{
  Content *content = g_atomic_rc_box_new0 (Content);

  content->kind = kind;
  content->figures = tr_figures_ref (figures);
  content->reader = *reader;
  content->name = g_strdelimit (g_strdup (name), "/\\:", '-');

  return content;
}

static void
clear_content (gpointer data)
{
  Content *content = data;

  tr_figures_unref (content->figures);
  g_clear_pointer (&content->doughs, g_array_unref);
  g_clear_pointer (&content->tasting, tr_tasting_figures_free);
  g_free (content->name);
}

static void
content_unref (Content *content)
{
  g_atomic_rc_box_release_full (content, clear_content);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Content, content_unref)

/* Takes the content. */
static TrPaperJob *
new_job (Content     *content,
         TrPaperSize  size)
{
  TrPaperJob *job = g_atomic_rc_box_new0 (TrPaperJob);

  job->content = content;
  job->size = size;

  return job;
}

TrPaperJob *
tr_paper_job_new_cards (const TrFigures *figures,
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

  Content *content = content_new (TR_PAPER_KIND_CARDS, figures, reader, name);

  content->doughs = g_array_sized_new (FALSE, FALSE, sizeof (guint), n_doughs);
  g_array_append_vals (content->doughs, doughs, n_doughs);

  return new_job (content, size);
}

TrPaperJob *
tr_paper_job_new (TrPaperKind       kind,
                  const TrFigures  *figures,
                  const TrReader   *reader,
                  TrPaperSize       size,
                  const char       *name,
                  GError          **error)
{
  g_return_val_if_fail (kind != TR_PAPER_KIND_CARDS, NULL);
  g_return_val_if_fail (figures != NULL, NULL);
  g_return_val_if_fail (reader != NULL, NULL);
  g_return_val_if_fail (name != NULL, NULL);

  g_autoptr (Content) content = content_new (kind, figures, reader, name);

  if (kind == TR_PAPER_KIND_TASTING_RESULT && (content->tasting = tr_tasting_compute (figures, NULL)) == NULL)
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND, _("Nobody has scored anything yet, so that there is no result to print."));
      return NULL;
    }

  return new_job (g_steal_pointer (&content), size);
}

TrPaperJob *
tr_paper_job_on_paper (TrPaperJob  *job,
                       TrPaperSize  size)
{
  g_return_val_if_fail (job != NULL, NULL);

  return job->size == size ? tr_paper_job_ref (job) : new_job (g_atomic_rc_box_acquire (job->content), size);
}

TrPaperJob *
tr_paper_job_ref (TrPaperJob *job)
{
  return g_atomic_rc_box_acquire (job);
}

static void
clear_job (gpointer data)
{
  TrPaperJob *job = data;

  content_unref (job->content);
  tr_pages_free (job->pages);
}

void
tr_paper_job_unref (TrPaperJob *job)
{
  g_atomic_rc_box_release_full (job, clear_job);
}

static TrPages *
lay_out (const Content *content,
         TrPaperSize    size)
{
  switch (content->kind)
    {
    case TR_PAPER_KIND_CARDS:
      return tr_cards_new (content->figures, (const guint *) (gconstpointer) content->doughs->data, content->doughs->len,
                           &content->reader, size);
    case TR_PAPER_KIND_COMPARISON:
      return tr_comparison_new (content->figures, NULL, 0, &content->reader, size);
    case TR_PAPER_KIND_SCORE_SHEETS:
      return tr_score_sheets_new (content->figures, &content->reader, size);
    case TR_PAPER_KIND_CODE_LABELS:
      return tr_code_labels_new (content->figures, &content->reader, size);
    case TR_PAPER_KIND_TASTING_KEY:
      return tr_tasting_key_new (content->figures, &content->reader, size);
    case TR_PAPER_KIND_TASTING_RESULT:
      return tr_result_paper_new (content->figures, content->tasting, &content->reader, size);
    default:
      g_assert_not_reached ();
    }
}

TrPaperKind
tr_paper_job_get_kind (const TrPaperJob *job)
{
  g_return_val_if_fail (job != NULL, TR_PAPER_KIND_CARDS);

  return job->content->kind;
}

const TrPages *
tr_paper_job_get_pages (const TrPaperJob *job)
{
  g_return_val_if_fail (job != NULL, NULL);

  if (job->pages == NULL)
    ((TrPaperJob *) job)->pages = lay_out (job->content, job->size);

  return job->pages;
}

TrPaperSize
tr_paper_job_get_paper (const TrPaperJob *job)
{
  g_return_val_if_fail (job != NULL, TR_PAPER_A4);

  return job->size;
}

guint
tr_paper_job_count_doughs (const TrPaperJob *job)
{
  g_return_val_if_fail (job != NULL, 0);

  return job->content->doughs != NULL ? job->content->doughs->len : 0;
}

const char *
tr_paper_job_get_name (const TrPaperJob *job)
{
  g_return_val_if_fail (job != NULL, NULL);

  return job->content->name;
}
