/* notes-field.h: a text of many lines
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "field.h"
#include "member.h"

G_BEGIN_DECLS

#define TR_TYPE_NOTES_FIELD (tr_notes_field_get_type ())
G_DECLARE_FINAL_TYPE (TrNotesField, tr_notes_field, TR, NOTES_FIELD, TrField)

/* `member` holds TR_HOLD_TEXT and must outlive the field: a static table. */
GtkWidget *tr_notes_field_new (const TrMember *member);

G_END_DECLS
