/* empty-stage-row.c: says that a stage of the formula has no lines
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A list box hangs its headings on rows: without this one an empty stage would
 * have no heading and nowhere to add to.
 */

#include "config.h"

#include "empty-stage-row.h"

#include <glib/gi18n-lib.h>

#include "section.h"

struct _TrEmptyStageRow
{
  GtkListBoxRow parent_instance;

  TrStage stage;
};

G_DEFINE_FINAL_TYPE (TrEmptyStageRow, tr_empty_stage_row, GTK_TYPE_LIST_BOX_ROW)

static void
tr_empty_stage_row_class_init (TrEmptyStageRowClass *klass)
{
}

static void
tr_empty_stage_row_init (TrEmptyStageRow *self)
{
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (self), FALSE);
  gtk_list_box_row_set_selectable (GTK_LIST_BOX_ROW (self), FALSE);
  gtk_widget_set_focusable (GTK_WIDGET (self), FALSE);
}

static const char *
get_sentence (TrStage stage)
{
  switch (stage)
    {
    case TR_STAGE_PREFERMENT:
      return _("No preferment: all flour goes into the dough.");
    case TR_STAGE_DOUGH:
      return _("Nothing yet. Start with flour and water.");
    case TR_STAGE_ROLL_IN:
      return _("No roll-in fat: nothing to laminate yet.");
    case TR_STAGE_FINISH:
    case TR_N_STAGES:
    default:
      return _("No wash and no filling.");
    }
}

GtkWidget *
tr_empty_stage_row_new (TrStage stage)
{
  TrEmptyStageRow *self = g_object_new (TR_TYPE_EMPTY_STAGE_ROW, NULL);
  GtkWidget *label = tr_words_label_new ("dim-label");

  self->stage = stage;
  tr_words_label_set (label, get_sentence (stage));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (self), label);

  return GTK_WIDGET (self);
}

TrStage
tr_empty_stage_row_get_stage (TrEmptyStageRow *self)
{
  g_return_val_if_fail (TR_IS_EMPTY_STAGE_ROW (self), TR_STAGE_DOUGH);

  return self->stage;
}
