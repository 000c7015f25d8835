/* choice-field.h: one of a few, chosen from a list or ticked
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "field.h"

G_BEGIN_DECLS

/* What is chosen and what choosing does. Not only enumerations: "none" and
 * "given by" are choices too. */
typedef struct {
  const char *pointer;           /* inside the dough, or "/bench/…"; "%u" is the item */
  const char *label, *undo;
  const char *tooltip;           /* NULL: the label says it all */
  guint n_values;
  /* (transfer full) */
  char    *(*dup_name) (guint value);
  /* -1: not there, the field is not shown. */
  int      (*get)      (const TrTrial *trial, int dough, guint item);
  /* In a draft that owns its dough or bench. `figures` may be NULL: what stood
   * there before, for values that need a start. */
  void     (*set)      (TrTrial *draft, int dough, guint item, guint value, const TrDoughFigures *figures);
  gboolean is_tick;              /* two values, shown as a tick box */
  char    *(*dup_pointer) (const TrTrial *trial, int dough, guint item);   /* where "%u" is not the item */
} TrChoice;

#define TR_TYPE_CHOICE_FIELD (tr_choice_field_get_type ())
G_DECLARE_FINAL_TYPE (TrChoiceField, tr_choice_field, TR, CHOICE_FIELD, TrField)

/* `choice` must outlive the field: a static table. */
GtkWidget *tr_choice_field_new    (const TrChoice *choice,
                                   TrFieldShape    shape);
/* As the baker would, by hand. */
void       tr_choice_field_choose (TrChoiceField  *self,
                                   guint           value);

G_END_DECLS
