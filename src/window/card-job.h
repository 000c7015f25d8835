/* card-job.h: the bench cards of chosen doughs, as they were when they were chosen
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a preview shows, a printer prints and a file gets. Holds the figures of
 * that moment, so that editing on does not change pages that are being
 * printed. Immutable once made; reference-counted.
 */

#pragma once

#include "../paper/paper.h"

G_BEGIN_DECLS

typedef struct _TrCardJob TrCardJob;

/* `doughs`: indices into the figures, at least one. `name`: what a file of it is called, without a suffix. */
TrCardJob     *tr_card_job_new          (const TrFigures *figures,
                                         const guint     *doughs,
                                         guint            n_doughs,
                                         const TrReader  *reader,
                                         TrPaperSize      size,
                                         const char      *name);
/* The same cards laid out on that paper. (transfer full) */
TrCardJob     *tr_card_job_on_paper     (TrCardJob       *job,
                                         TrPaperSize      size);
TrCardJob     *tr_card_job_ref          (TrCardJob       *job);
void           tr_card_job_unref        (TrCardJob       *job);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrCardJob, tr_card_job_unref)

const TrPages *tr_card_job_get_cards    (const TrCardJob *job);
TrPaperSize    tr_card_job_get_paper    (const TrCardJob *job);
guint          tr_card_job_count_doughs (const TrCardJob *job);
/* Safe as the name of a file; no suffix. */
const char    *tr_card_job_get_name     (const TrCardJob *job);

G_END_DECLS
