/* recovery.h: copies of unsaved work, for after a crash
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A copy is a document like any other, so that it can also be opened by hand.
 * Its name says which process wrote it (id and start, since ids come again);
 * one unknown member of the trial says which file it is of, and what that file
 * was like on disk when it was last read or written.
 */

#pragma once

#include "disk.h"
#include "document.h"

G_BEGIN_DECLS

#define TR_RECOVERY_MEMBER "tourier-recovery"

/* The name for the `serial`th document of this process. */
char     *tr_recovery_dup_name (guint          serial);
gboolean  tr_recovery_write    (const char    *path,
                                const TrTrial *trial,
                                const char    *original,   /* NULL: untitled */
                                TrDiskState    state,
                                GError       **error);
/* The trial without the member, and what the member said. */
TrTrial  *tr_recovery_read     (const char    *path,
                                char         **original,
                                TrDiskState   *state,
                                GError       **error);

G_END_DECLS
