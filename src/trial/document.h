/* document.h: the open document: trial, figures, history, file
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The only mutable owner of a trial. An edit is: draft, change, commit; the
 * document computes the figures once and emits `changed` once.
 *
 * Signals
 *   changed (const char *pointer): trial and figures are new; pointer is the
 *     JSON Pointer of what was edited, undone or redone ("" the whole).
 *   file-changed (): the file on disk is not the one read or written last.
 * Properties (read-only, notify): modified, file, undo-label, redo-label, title.
 */

#pragma once

#include <gio/gio.h>

#include "../calc/figures.h"

G_BEGIN_DECLS

#define TR_TYPE_DOCUMENT (tr_document_get_type ())
G_DECLARE_FINAL_TYPE (TrDocument, tr_document, TR, DOCUMENT, GObject)

typedef enum {
  TR_TRIAL_ERROR_FORMAT,         /* not a trial, or not strict JSON */
  TR_TRIAL_ERROR_TOO_LARGE,
  TR_TRIAL_ERROR_VERSION,
  TR_TRIAL_ERROR_VALUE,          /* a value is out of range or of the wrong type */
  TR_TRIAL_ERROR_CHANGED_ON_DISK,
  TR_TRIAL_ERROR_NO_TEMPORARY,   /* cannot be saved safely there: offer Save As */
} TrTrialError;
#define TR_TRIAL_ERROR (tr_trial_error_quark ())
GQuark           tr_trial_error_quark       (void);

/* An untitled document without doughs. */
TrDocument      *tr_document_new            (void);
/* An untitled document that holds `trial` (taken), unmodified: New, the demo. */
TrDocument      *tr_document_new_for_trial  (TrTrial *trial);
TrDocument      *tr_document_open           (GFile   *file,
                                             GError **error);

const TrTrial   *tr_document_get_trial      (TrDocument *self);
const TrFigures *tr_document_get_figures    (TrDocument *self);
GFile           *tr_document_get_file       (TrDocument *self);   /* NULL: untitled */
char            *tr_document_dup_display_name (TrDocument *self); /* title, else file name, else "Untitled trial" */

/* Editing. `key` joins commits of one drag or one field into one undo step
 * until another key, tr_document_seal, save, undo or two seconds of quiet
 * (NULL: never joins). Takes the draft. FALSE with a sentence: the draft is
 * not a valid trial; nothing changed. A draft equal to the current trial makes no step. */
TrTrial         *tr_document_draft          (TrDocument  *self);
gboolean         tr_document_commit         (TrDocument  *self,
                                             TrTrial     *draft,
                                             const char  *label,
                                             const char  *key,
                                             const char  *pointer,
                                             GError     **error);
void             tr_document_seal           (TrDocument *self);
/* Between these every commit joins one undo step, whatever its key and the
 * quiet; the figures follow each. A cancelled drag leaves trial, history (undo
 * and redo) and the saved marker as they were before it, and emits `changed`
 * if anything had been committed. Nothing committed: no step. Undo, redo, save
 * and reload in between make a step of what was dragged so far. A drag that
 * begins ends the one before; ending none does nothing. */
void             tr_document_begin_drag     (TrDocument  *self);
void             tr_document_end_drag       (TrDocument  *self,
                                             gboolean     is_cancelled);
void             tr_document_undo           (TrDocument *self);
void             tr_document_redo           (TrDocument *self);
const char      *tr_document_get_undo_label (TrDocument *self);   /* NULL: nothing to undo */
const char      *tr_document_get_redo_label (TrDocument *self);
gboolean         tr_document_is_modified    (TrDocument *self);

/* Saving: never in place; see design. `overwrite` saves over a file that
 * changed on disk since it was read. */
gboolean         tr_document_save           (TrDocument  *self,
                                             gboolean     overwrite,
                                             GError     **error);
gboolean         tr_document_save_as        (TrDocument  *self,
                                             GFile       *file,
                                             GError     **error);
gboolean         tr_document_is_changed_on_disk (TrDocument *self);
/* A step like any other: what was there before can be had back by undo. */
gboolean         tr_document_reload         (TrDocument  *self,
                                             GError     **error);

/* Recovery copies: written to `folder` some seconds after an edit while
 * anything is unsaved, removed on save and on clean close (tr_document_discard_recovery). */
void             tr_document_set_recovery_folder (TrDocument *self,
                                                  GFile      *folder);
void             tr_document_write_recovery (TrDocument *self);
void             tr_document_discard_recovery (TrDocument *self);
typedef struct { GFile *copy; GFile *original; char *title; gint64 saved_at; } TrRecovery;
void             tr_recovery_free           (TrRecovery *recovery);
GPtrArray       *tr_recovery_list           (GFile *folder);      /* of processes no longer running */
TrDocument      *tr_recovery_open           (const TrRecovery *recovery, GError **error);  /* modified */

/* The document as text, without any object around it. */
TrTrial         *tr_trial_read              (const char  *bytes,
                                             gsize        length,
                                             GError     **error);
TrTrial         *tr_trial_read_file         (const char  *path,
                                             GError     **error);
char            *tr_trial_write             (const TrTrial *trial,
                                             gsize         *length);
/* Ranges, counts, unique ids, references: what the reader refuses, on structs. */
gboolean         tr_trial_validate          (const TrTrial *trial,
                                             GError       **error);
/* The text of one number, shortest that reads back the same; JSON strings.
 * Used by the report too. Appends. */
void             tr_json_append_number      (GString    *out,
                                             double      value);   /* NaN: null */
void             tr_json_append_string      (GString    *out,
                                             const char *text);    /* NULL: null */

G_END_DECLS
