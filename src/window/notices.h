/* notices.h: the strip above the pages that tells what happened to the file
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * File errors, recovery offers, changed on disk. One line a subject: a new
 * notice of the same subject takes the place of the old one. Never modal.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TR_TYPE_NOTICES (tr_notices_get_type ())
G_DECLARE_FINAL_TYPE (TrNotices, tr_notices, TR, NOTICES, GtkWidget)

/* What a notice offers; the notice goes when a button is pressed. */
typedef struct {
  const char *label;             /* translated */
  const char *action;            /* detailed action name */
} TrNoticeButton;

void        tr_notices_show     (TrNotices            *self,
                                 const char           *subject,
                                 const char           *sentence,
                                 const TrNoticeButton *buttons,
                                 guint                 n_buttons);
void        tr_notices_clear    (TrNotices            *self,
                                 const char           *subject);
/* The sentence shown about a subject, NULL: none. */
const char *tr_notices_get      (TrNotices            *self,
                                 const char           *subject);

G_END_DECLS
