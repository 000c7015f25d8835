/* stage-header.c: the heading over the lines of one stage or preferment
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A preferment has a name of the baker's, so its heading can be edited in
 * place; the other stages have the trade's.
 */

#include "config.h"

#include "stage-header.h"

#include <glib/gi18n-lib.h>

#include "../words/words.h"

struct _TrStageHeader
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *label;
  GtkWidget *name;               /* GtkEditableLabel */
  GtkWidget *add;

  /* Owned */
  char *group;

  TrStage stage;
};

enum { ADD, RENAMED, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrStageHeader, tr_stage_header, GTK_TYPE_WIDGET)

static void
add_clicked_cb (GtkButton     *button,
                TrStageHeader *self)
{
  g_signal_emit (self, signals[ADD], 0);
}

static void
show_group_name (TrStageHeader *self)
{
  const char *name = self->group != NULL ? self->group : tr_words_stage (TR_STAGE_PREFERMENT);

  if (!gtk_editable_label_get_editing (GTK_EDITABLE_LABEL (self->name)))
    gtk_editable_set_text (GTK_EDITABLE (self->name), name);
}

static void
editing_changed_cb (TrStageHeader *self)
{
  if (gtk_editable_label_get_editing (GTK_EDITABLE_LABEL (self->name)))
    return;

  g_autofree char *name = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->name))));

  if (*name != '\0' && g_strcmp0 (name, self->group) != 0 &&
      (self->group != NULL || !g_str_equal (name, tr_words_stage (TR_STAGE_PREFERMENT))))
    g_signal_emit (self, signals[RENAMED], 0, name);
  show_group_name (self);
}

static void
tr_stage_header_dispose (GObject *object)
{
  TrStageHeader *self = TR_STAGE_HEADER (object);

  if (self->name != NULL)
    g_signal_handlers_disconnect_by_data (self->name, self);
  g_clear_pointer (&self->label, gtk_widget_unparent);
  g_clear_pointer (&self->name, gtk_widget_unparent);
  g_clear_pointer (&self->add, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_stage_header_parent_class)->dispose (object);
}

static void
tr_stage_header_finalize (GObject *object)
{
  g_free (TR_STAGE_HEADER (object)->group);

  G_OBJECT_CLASS (tr_stage_header_parent_class)->finalize (object);
}

static void
tr_stage_header_class_init (TrStageHeaderClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = tr_stage_header_dispose;
  object_class->finalize = tr_stage_header_finalize;

  signals[ADD] = g_signal_new ("add", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[RENAMED] = g_signal_new ("renamed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_STRING);

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
}

static void
tr_stage_header_init (TrStageHeader *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 6);

  self->label = gtk_label_new ("");
  gtk_label_set_xalign (GTK_LABEL (self->label), 0);
  gtk_widget_set_hexpand (self->label, TRUE);
  gtk_widget_add_css_class (self->label, "heading");
  gtk_widget_set_parent (self->label, GTK_WIDGET (self));

  self->name = gtk_editable_label_new ("");
  gtk_widget_set_hexpand (self->name, TRUE);
  gtk_widget_add_css_class (self->name, "heading");
  gtk_widget_set_tooltip_text (self->name, _("Name of this preferment; click to change it"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->name), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Name of the preferment"), -1);
  g_signal_connect_swapped (self->name, "notify::editing", G_CALLBACK (editing_changed_cb), self);
  gtk_widget_set_parent (self->name, GTK_WIDGET (self));

  self->add = gtk_button_new_from_icon_name ("list-add-symbolic");
  gtk_widget_add_css_class (self->add, "flat");
  g_signal_connect (self->add, "clicked", G_CALLBACK (add_clicked_cb), self);
  gtk_widget_set_parent (self->add, GTK_WIDGET (self));
}

GtkWidget *
tr_stage_header_new (void)
{
  return g_object_new (TR_TYPE_STAGE_HEADER, NULL);
}

void
tr_stage_header_set (TrStageHeader *self,
                     TrStage        stage,
                     const char    *group)
{
  g_return_if_fail (TR_IS_STAGE_HEADER (self));

  gboolean is_preferment = stage == TR_STAGE_PREFERMENT;
  const char *title = is_preferment && group != NULL ? group : tr_words_stage (stage);
  g_autofree char *add = g_strdup_printf (_("Add a line to %s"), title);

  self->stage = stage;
  tr_set_text (&self->group, is_preferment ? group : NULL);
  gtk_widget_set_visible (self->label, !is_preferment);
  gtk_widget_set_visible (self->name, is_preferment);
  if (is_preferment)
    show_group_name (self);
  else
    gtk_label_set_text (GTK_LABEL (self->label), title);
  gtk_widget_set_tooltip_text (self->add, add);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->add), GTK_ACCESSIBLE_PROPERTY_LABEL, add, -1);
}

TrStage
tr_stage_header_get_stage (TrStageHeader *self)
{
  g_return_val_if_fail (TR_IS_STAGE_HEADER (self), TR_STAGE_DOUGH);

  return self->stage;
}

const char *
tr_stage_header_get_group (TrStageHeader *self)
{
  g_return_val_if_fail (TR_IS_STAGE_HEADER (self), NULL);

  return self->group;
}
