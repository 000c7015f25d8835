/* document-private.h: what the files of the document share
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For document.c, document-file.c and their tests only.
 */

#pragma once

#include "disk.h"
#include "document.h"
#include "history.h"

G_BEGIN_DECLS

/* Unsaved work is on disk at the latest this long after the edit. */
#define TR_RECOVERY_SECONDS 8

/* Microseconds that never run backwards; the default is g_get_monotonic_time. */
typedef gint64 (*TrClock) (void);

struct _TrDocument {
  GObject parent_instance;

  /* Owned */
  TrHistory *history;
  TrFigures *figures;
  GFile *file;                   /* NULL: untitled */
  GFileMonitor *monitor;
  char *recovery_folder;         /* NULL: no copies */
  char *recovery_path;           /* the copy of this document; NULL: never made */
  char *adopted_path;            /* the copy it was opened from; NULL: none */

  TrClock clock;
  TrDiskState disk;              /* as last read or written */
  TrDiskState announced;         /* what file-changed was last emitted for */
  gboolean is_backed_up;
  gboolean is_gone;              /* the file is no longer there: nothing of this is on disk */
  guint recovery_source;
  guint recovery_seconds;        /* from an edit to the copy */

  /* As last notified */
  gboolean was_modified;
  char *undo_label, *redo_label, *title;
};

/* For tests. */
void _tr_document_set_clock          (TrDocument *self, TrClock clock);

/* Computes, emits `changed`, notifies. */
void _tr_document_announce           (TrDocument *self, const char *pointer);
void _tr_document_update_properties  (TrDocument *self);
void _tr_document_notify_file        (TrDocument *self);
void _tr_document_emit_file_changed  (TrDocument *self);
void _tr_document_stop_watching      (TrDocument *self);
void _tr_document_schedule_recovery  (TrDocument *self);

G_END_DECLS
