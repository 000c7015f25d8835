/* paper-job.h: one paper of a trial, as it was when it was asked for
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a preview shows, a printer prints and a file gets: the bench cards of
 * chosen doughs, the comparison, or a paper of the tasting. Holds the figures
 * of that moment, so that editing on does not change pages that are being
 * printed. Immutable once made; reference-counted.
 */

#pragma once

#include "../paper/paper.h"

G_BEGIN_DECLS

typedef enum {
  TR_PAPER_KIND_CARDS,
  TR_PAPER_KIND_COMPARISON,
  TR_PAPER_KIND_SCORE_SHEETS,
  TR_PAPER_KIND_CODE_LABELS,
  TR_PAPER_KIND_TASTING_KEY,
  TR_PAPER_KIND_TASTING_RESULT,
} TrPaperKind;

typedef struct _TrPaperJob TrPaperJob;

/* `doughs`: indices into the figures, at least one. `name`: what a file of it is called, without a suffix. */
TrPaperJob    *tr_paper_job_new_cards    (const TrFigures   *figures,
                                          const guint       *doughs,
                                          guint              n_doughs,
                                          const TrReader    *reader,
                                          TrPaperSize        size,
                                          const char        *name);
/* Any other paper, of the whole trial; on any thread, since a result can take a
 * while to work out. NULL: there is nothing to put on it. */
TrPaperJob    *tr_paper_job_new          (TrPaperKind        kind,
                                          const TrFigures   *figures,
                                          const TrReader    *reader,
                                          TrPaperSize        size,
                                          const char        *name,
                                          GError           **error);
/* The same laid out on paper of that size; nothing is worked out again. (transfer full) */
TrPaperJob    *tr_paper_job_on_paper     (TrPaperJob        *job,
                                          TrPaperSize        size);
TrPaperJob    *tr_paper_job_ref          (TrPaperJob        *job);
void           tr_paper_job_unref        (TrPaperJob        *job);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrPaperJob, tr_paper_job_unref)

TrPaperKind    tr_paper_job_get_kind     (const TrPaperJob  *job);
const TrPages *tr_paper_job_get_pages    (const TrPaperJob  *job);
TrPaperSize    tr_paper_job_get_paper    (const TrPaperJob  *job);
/* Of bench cards; the other papers are of the whole trial: 0. */
guint          tr_paper_job_count_doughs (const TrPaperJob  *job);
/* Safe as the name of a file; no suffix. */
const char    *tr_paper_job_get_name     (const TrPaperJob  *job);

G_END_DECLS
