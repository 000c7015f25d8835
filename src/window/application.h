/* application.h: the windows of one running Tourier
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Decides which window shows a file: the one that has it open, else an empty
 * one, else a new one. Offers what was not saved last time.
 */

#pragma once

#include <gtk/gtk.h>

#include "window.h"

G_BEGIN_DECLS

#define TR_TYPE_APPLICATION (tr_application_get_type ())
G_DECLARE_FINAL_TYPE (TrApplication, tr_application, TR, APPLICATION, GtkApplication)

/* `state_folder` NULL: the user's own. */
TrApplication *tr_application_new            (GApplicationFlags  flags,
                                              GFile             *state_folder);
TrPreferences *tr_application_get_preferences (TrApplication *self);
/* In `from` when that is pristine, else in a window of its own. `from` may be NULL. */
TrWindow      *tr_application_show           (TrApplication *self,
                                              TrDocument    *document,
                                              TrWindow      *from);
/* A file that cannot be read is told in `from`, else in an empty window. */
TrWindow      *tr_application_open_file      (TrApplication *self,
                                              GFile         *file,
                                              TrWindow      *from);
gboolean       tr_application_is_open_elsewhere (TrApplication *self,
                                              GFile         *file,
                                              TrWindow      *here);
/* `path` is that of a recovery copy. */
void           tr_application_recover        (TrApplication *self,
                                              const char    *path,
                                              TrWindow      *from);
void           tr_application_drop_recovery  (TrApplication *self,
                                              const char    *path);

int            tr_application_run            (int            argc,
                                              char         **argv);

G_END_DECLS
