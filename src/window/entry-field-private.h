/* entry-field-private.h: what the two files of the entry field share
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "entry-field.h"

G_BEGIN_DECLS

struct _TrEntryField
{
  TrField parent_instance;

  /* Borrowed */
  const TrMember *member;
  GtkWidget *entry;

  /* Owned */
  char *shown_text;
  char *shown_in;                /* the dough's id */
  char *before_text;
  char *late_error;
  guint late_source;
  TrDoughFigures *start;         /* of a figure: from before the typing; NULL: none yet */

  /* State */
  double shown;
  double before;
  TrReader shown_for;
  guint shown_item;
  guint has_shown : 1;
  guint is_setting : 1;
  guint is_edited : 1;
  guint is_committing : 1;       /* a figure */
  guint is_unread : 1;           /* what stands there is nothing the document could take */
};

static inline gboolean
tr_entry_field_is_number (TrEntryField *self)
{
  return self->member->hold == TR_HOLD_NUMBER || self->member->hold == TR_HOLD_COUNT;
}

static inline gboolean
tr_entry_field_is_figure (TrEntryField *self)
{
  return self->member->get_figure != NULL;
}

static inline gboolean
tr_entry_field_is_same_number (double a,
                               double b)
{
  return isnan (a) ? isnan (b) : a == b;
}

static inline const TrTrial *
tr_entry_field_get_trial (TrPage *page)
{
  return tr_document_get_trial (tr_page_get_document (page));
}

static inline const char *
tr_entry_field_get_typed (TrEntryField *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->entry));
}

/* entry-field.c */
double      tr_entry_field_get_number    (TrEntryField  *self,
                                          TrPage        *page);
/* Never NULL: what is not written reads as nothing. */
const char *tr_entry_field_get_text      (TrEntryField  *self,
                                          TrPage        *page);
void        tr_entry_field_set_error     (TrEntryField  *self,
                                          const char    *error,
                                          gboolean       at_once);

/* entry-field-take.c */
gboolean    tr_entry_field_commit_number (TrEntryField  *self,
                                          TrPage        *page,
                                          double         value);
gboolean    tr_entry_field_commit_figure (TrEntryField  *self,
                                          TrPage        *page,
                                          double         value,
                                          GError       **error);
gboolean    tr_entry_field_commit_text   (TrEntryField  *self,
                                          TrPage        *page,
                                          const char    *text);
void        tr_entry_field_take          (TrEntryField  *self,
                                          TrPage        *page,
                                          gboolean       is_leaving);

G_END_DECLS
