/* field.h: a labelled control bound to one value of the trial
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The common half of every field: label, control, unit, and the error below.
 * What the control is and how it reads and writes is the subclass's:
 * entry-field (numbers, texts, amounts), choice-field (one of a few),
 * notes-field (many lines).
 *
 * A field finds its page by its ancestors. It shows nothing and writes
 * nothing while it stands in none.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

#define TR_TYPE_FIELD (tr_field_get_type ())
G_DECLARE_DERIVABLE_TYPE (TrField, tr_field, TR, FIELD, GtkWidget)

struct _TrFieldClass
{
  GtkWidgetClass parent_class;

  /* Shows what stands in the document; sets only what differs. */
  void  (*refresh)     (TrField *self);
  /* Inside the dough, or "/bench/…", "/title". NULL: not there now. */
  char *(*dup_pointer) (TrField *self);
  /* What is typed and was never in the document, because it cannot be read, is
   * taken back. FALSE: nothing such. With `only_ask` nothing is done. NULL: never. */
  gboolean (*take_back) (TrField *self, gboolean only_ask);
};

typedef enum {
  TR_FIELD_BESIDE,               /* label to the left, for forms */
  TR_FIELD_ABOVE,                /* label above, for rows of a list */
  TR_FIELD_TABLE,                /* no label, no unit: the table has headings */
  TR_FIELD_BARE,                 /* no label, no unit, no error: the row shows it */
} TrFieldShape;

/* For subclasses, once, from their constructor. Takes `control`. */
void        tr_field_build        (TrField      *self,
                                   TrFieldShape  shape,
                                   const char   *label,
                                   const char   *tooltip,
                                   GtkWidget    *control);
GtkWidget  *tr_field_get_control  (TrField      *self);
/* NULL: none. */
void        tr_field_set_unit     (TrField      *self,
                                   const char   *unit);
/* A sentence for the screen; NULL: none. Notifies "error". */
void        tr_field_set_error    (TrField      *self,
                                   const char   *error);
const char *tr_field_get_error    (TrField      *self);
/* Which item of a list; 0 from the start. */
void        tr_field_set_item     (TrField      *self,
                                   guint         item);
guint       tr_field_get_item     (TrField      *self);
/* Put before the label in the accessible name: "Turn 2". */
void        tr_field_set_context  (TrField      *self,
                                   const char   *context);

/* NULL: not in a page with a document. */
TrPage     *tr_field_get_page     (TrField      *self);
/* Commits with the field's pointer; FALSE: refused, the error is shown. Takes `draft`. */
gboolean    tr_field_commit       (TrField      *self,
                                   TrTrial      *draft,
                                   const char   *label,
                                   gboolean      joins);

/* The first half of undo. */
gboolean    tr_field_take_back    (TrField      *self,
                                   gboolean      only_ask);

/* That of the field that has the focus of that window. */
gboolean    tr_fields_take_back   (GtkWindow    *window,
                                   gboolean      only_ask);

/* Every field below `root`. */
void        tr_fields_refresh     (GtkWidget    *root);
/* Focuses the field with this pointer, else the first one inside it. */
gboolean    tr_fields_go_to       (GtkWidget    *root,
                                   const char   *pointer);

G_END_DECLS
