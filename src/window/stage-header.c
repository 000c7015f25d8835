/* stage-header.c: the heading over the lines of one stage or preferment
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A preferment has a name of the baker's, so its heading is a field; the other
 * stages have the trade's. The name counts when it is left or Return is
 * pressed, since until then the lines under it are still its own.
 */

#include "config.h"

#include "stage-header.h"

#include <glib/gi18n-lib.h>

#include "../words/words.h"
#include "preferments.h"
#include "section.h"

struct _TrStageHeader
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *label;
  GtkWidget *name;               /* GtkEntry: GTK 4.8's editable label leaves a timer behind */
  GtkWidget *add;
  GtkWidget *usual;              /* menu of preferments; hidden for the other stages */

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

  if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (self->name)), name))
    gtk_editable_set_text (GTK_EDITABLE (self->name), name);
}

static void
name_left_cb (TrStageHeader *self)
{
  g_autofree char *name = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->name))));

  if (*name != '\0' && g_strcmp0 (name, self->group) != 0 &&
      (self->group != NULL || !g_str_equal (name, tr_words_stage (TR_STAGE_PREFERMENT))))
    {
      /* What follows may take the heading away. */
      g_object_ref (self);
      g_signal_emit (self, signals[RENAMED], 0, name);
      if (self->name != NULL)
        show_group_name (self);
      g_object_unref (self);
      return;
    }
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
  g_clear_pointer (&self->usual, gtk_widget_unparent);

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
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static gboolean
key_pressed_cb (GtkEventControllerKey *controller,
                guint                  keyval,
                guint                  keycode,
                GdkModifierType        state,
                TrStageHeader         *self)
{
  if (keyval != GDK_KEY_Escape)
    return FALSE;

  show_group_name (self);

  return TRUE;
}

static void
focus_left_cb (GtkEventControllerFocus *controller,
               TrStageHeader           *self)
{
  name_left_cb (self);
}

static GtkWidget *
new_usual_button (void)
{
  GtkWidget *button = gtk_menu_button_new ();
  g_autoptr (GMenu) menu = g_menu_new ();

  for (guint kind = 0; kind < TR_N_PREFERMENTS; kind++)
    {
      g_autofree char *action = g_strdup_printf ("lines.add-preferment::%s", tr_preferment_id ((TrPrefermentKind) kind));

      g_menu_append (menu, tr_preferment_say_add ((TrPrefermentKind) kind), action);
    }
  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (button), "pan-down-symbolic");
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (button), G_MENU_MODEL (menu));
  gtk_menu_button_set_has_frame (GTK_MENU_BUTTON (button), FALSE);
  gtk_widget_set_tooltip_text (button, _("Take a preferment out of the dough; the totals stay"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Add a preferment"), -1);

  return button;
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

  self->name = gtk_entry_new ();
  gtk_editable_set_enable_undo (GTK_EDITABLE (self->name), FALSE);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->name), 10);
  gtk_widget_set_hexpand (self->name, TRUE);
  gtk_widget_add_css_class (self->name, "heading");
  gtk_widget_set_tooltip_text (self->name, _("Name of this preferment"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->name), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Name of the preferment"), -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_editable_get_delegate (GTK_EDITABLE (self->name))),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _("Name of the preferment"), -1);
  g_signal_connect_swapped (self->name, "activate", G_CALLBACK (name_left_cb), self);
  tr_entry_listen (self->name, G_CALLBACK (key_pressed_cb), G_CALLBACK (focus_left_cb), self);
  gtk_widget_set_parent (self->name, GTK_WIDGET (self));

  self->add = gtk_button_new_from_icon_name ("list-add-symbolic");
  gtk_widget_add_css_class (self->add, "flat");
  g_signal_connect (self->add, "clicked", G_CALLBACK (add_clicked_cb), self);
  gtk_widget_set_parent (self->add, GTK_WIDGET (self));
  self->usual = new_usual_button ();
  gtk_widget_set_parent (self->usual, GTK_WIDGET (self));
}

GtkWidget *
tr_stage_header_new (void)
{
  return g_object_new (TR_TYPE_STAGE_HEADER, NULL);
}

void
tr_stage_header_set (TrStageHeader *self,
                     TrStage        stage,
                     const char    *group,
                     gboolean       can_rename)
{
  g_return_if_fail (TR_IS_STAGE_HEADER (self));

  gboolean is_preferment = stage == TR_STAGE_PREFERMENT;
  const char *title = is_preferment && group != NULL ? group : tr_words_stage (stage);
  g_autofree char *add = g_strdup_printf (_("Add a line to %s"), title);
  gboolean is_renamed = tr_set_text (&self->group, is_preferment ? group : NULL);

  self->stage = stage;
  gtk_widget_set_visible (self->label, !can_rename);
  gtk_widget_set_visible (self->name, can_rename);
  gtk_widget_set_visible (self->usual, is_preferment);
  if (can_rename && (is_renamed || *gtk_editable_get_text (GTK_EDITABLE (self->name)) == '\0'))
    show_group_name (self);
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
