/* entry-field.h: a number, a text or an amount, typed
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * While it has the focus the last readable value counts. On leaving, what
 * stands there is committed; a number that cannot be read stays, with an
 * error, and the document keeps the last one that could. Arrow keys step a
 * number, Escape puts back what stood there when the focus came.
 */

#pragma once

#include "field.h"
#include "member.h"

G_BEGIN_DECLS

#define TR_TYPE_ENTRY_FIELD (tr_entry_field_get_type ())
G_DECLARE_FINAL_TYPE (TrEntryField, tr_entry_field, TR, ENTRY_FIELD, TrField)

/* `member` stays the caller's and must outlive the field: a static table. */
GtkWidget *tr_entry_field_new             (const TrMember *member,
                                           TrFieldShape    shape);
void       tr_entry_field_set_width_chars (TrEntryField   *self,
                                           int             least,
                                           int             most);

G_END_DECLS
