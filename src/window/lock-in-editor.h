/* lock-in-editor.h: how the fat goes in
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Its style and sizes, the chill before it, and how it is drawn.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_LOCK_IN_EDITOR (tr_lock_in_editor_get_type ())
G_DECLARE_FINAL_TYPE (TrLockInEditor, tr_lock_in_editor, TR, LOCK_IN_EDITOR, GtkBox)

GtkWidget *tr_lock_in_editor_new     (void);
/* Shows the lock-in of its page. */
void       tr_lock_in_editor_refresh (TrLockInEditor *self);

G_END_DECLS
