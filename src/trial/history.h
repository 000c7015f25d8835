/* history.h: the trials that were, and which of them is on disk
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A step is the trial it led to. Knows no clock, no file and no signal: time
 * is given, so that a table of commands can test it.
 */

#pragma once

#include "../calc/written.h"

G_BEGIN_DECLS

/* Doughs are shared between trials, so a step costs about the dough it
 * changed: a few kilobytes. Beyond either limit the oldest steps are
 * forgotten. */
#define TR_HISTORY_MAX_STEPS 500
#define TR_HISTORY_MAX_BYTES (64 * 1024 * 1024)

/* Commits with the same key join while they follow each other this closely. */
#define TR_HISTORY_QUIET_US (2 * G_USEC_PER_SEC)

typedef struct _TrHistory TrHistory;

/* Takes the trial; it is the saved one. */
TrHistory     *tr_history_new            (TrTrial *trial);
void           tr_history_free           (TrHistory *self);

const TrTrial *tr_history_get_trial      (const TrHistory *self);
/* The trial that undo would bring back; NULL: none. */
const TrTrial *tr_history_peek_undo      (const TrHistory *self);
guint          tr_history_get_n_undo     (const TrHistory *self);

/* Takes the trial; what could be redone is forgotten. `bytes` is about what
 * the step keeps in memory for itself. */
void           tr_history_push           (TrHistory  *self,
                                          TrTrial    *trial,
                                          const char *label,
                                          const char *key,
                                          const char *pointer,
                                          gsize       bytes,
                                          gint64      now_us);
/* Whether a push with this key now would join the step before. */
gboolean       tr_history_would_join     (const TrHistory *self,
                                          const char      *key,
                                          gint64           now_us);
/* Forgets the newest step: joined commits that led back to where they began. */
void           tr_history_drop_newest    (TrHistory *self);
void           tr_history_seal           (TrHistory *self);

/* In a drag every push joins, whatever its key and however long it took, and
 * until it ends nothing else is forgotten. Undo, redo and both marks settle
 * what was dragged so far as a step; the drag then goes on from there. */
void           tr_history_begin_drag     (TrHistory *self);
void           tr_history_settle         (TrHistory *self);
/* The pointer of what was taken back; NULL: nothing was. (transfer full) */
char          *tr_history_end_drag       (TrHistory *self,
                                          gboolean   is_cancelled);
/* The pointer of what was undone or redone; NULL: nothing to do. */
const char    *tr_history_undo           (TrHistory *self);
const char    *tr_history_redo           (TrHistory *self);
const char    *tr_history_get_undo_label (const TrHistory *self);
const char    *tr_history_get_redo_label (const TrHistory *self);

gboolean       tr_history_is_saved       (const TrHistory *self);
void           tr_history_mark_saved     (TrHistory *self);
/* Nothing in this history is on disk. */
void           tr_history_mark_unsaved   (TrHistory *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrHistory, tr_history_free)

G_END_DECLS
