/* disk.h: files read whole, and replaced whole or not at all
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What tells that a file is still the one that was read: a save elsewhere
 * gives it another inode, an edit in place another time or size. */
typedef struct {
  gboolean exists;
  guint64 device, inode, size;
  gint64 mtime_s, mtime_ns;
} TrDiskState;

/* At most `max_bytes` + 1 bytes, so that the caller can tell a file that is too long. */
char     *tr_disk_read        (const char   *path,
                               gsize         max_bytes,
                               gsize        *length,
                               TrDiskState  *state,
                               GError      **error);
void      tr_disk_get_state   (const char   *path,
                               TrDiskState  *state);
gboolean  tr_disk_state_equal (const TrDiskState *a,
                               const TrDiskState *b);

/* What `path` names through its links, also where the last of them leads to
 * nothing yet. */
char     *tr_disk_dup_target  (const char   *path);
/* Whether tr_disk_replace could begin; nothing is left behind. */
gboolean  tr_disk_can_replace (const char   *path,
                               GError      **error);
/* Replaces what `path` (through its links) names by `bytes`: a temporary file
 * beside it, synced, renamed over it, folder synced. The mode of what was there
 * is kept; a new file gets `mode` less the umask. Never in place: where no temporary file can be
 * made the error is TR_TRIAL_ERROR_NO_TEMPORARY and nothing was touched. */
gboolean  tr_disk_replace     (const char   *path,
                               const char   *bytes,
                               gsize         length,
                               guint         mode,
                               TrDiskState  *state,
                               GError      **error);
/* A copy of what `path` names, beside it as `name~`; a file that is not there
 * is no failure. */
gboolean  tr_disk_back_up     (const char   *path,
                               GError      **error);

G_END_DECLS
