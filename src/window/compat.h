/* compat.h: what GTK has had since 4.10, for the older one too
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In the shape of the newer API: asynchronous, one finish function each.
 * compat.c is the only file that may test GTK's version.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Which file to open. Finish: (transfer full), NULL without an error when the
 * reader changed their mind. */
void     tr_compat_open_file_async  (GtkWindow           *parent,
                                     const char          *title,
                                     GtkFileFilter       *filter,
                                     GCancellable        *cancellable,
                                     GAsyncReadyCallback  callback,
                                     gpointer             user_data);
GFile   *tr_compat_open_file_finish (GAsyncResult        *result,
                                     GError             **error);

/* Where to save; asks before an existing file is replaced. `folder` may be NULL. */
void     tr_compat_save_file_async  (GtkWindow           *parent,
                                     const char          *title,
                                     GtkFileFilter       *filter,
                                     GFile               *folder,
                                     const char          *name,
                                     GCancellable        *cancellable,
                                     GAsyncReadyCallback  callback,
                                     gpointer             user_data);
GFile   *tr_compat_save_file_finish (GAsyncResult        *result,
                                     GError             **error);

/* A question with buttons (NULL-terminated, first to last). Finish: the index
 * of the button, `cancel_button` when the question was dismissed. */
void     tr_compat_ask_async        (GtkWindow           *parent,
                                     const char          *message,
                                     const char          *detail,
                                     const char *const   *buttons,
                                     int                  cancel_button,
                                     int                  default_button,
                                     GCancellable        *cancellable,
                                     GAsyncReadyCallback  callback,
                                     gpointer             user_data);
int      tr_compat_ask_finish       (GAsyncResult        *result);

G_END_DECLS
