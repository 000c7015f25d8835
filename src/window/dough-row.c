/* dough-row.c: one dough in the list of doughs
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The name is a label until it is renamed; then an entry stands in its place
 * until Return or the loss of focus (which rename) or Escape (which does not).
 */

#include "config.h"

#include "dough-row.h"

#include <glib/gi18n-lib.h>

#include "findings.h"

struct _TrDoughRow
{
  GtkListBoxRow parent_instance;

  /* Borrowed References */
  GtkWidget *stack;
  GtkWidget *name;
  GtkWidget *entry;
  GtkWidget *figures;
  GtkWidget *sign;

  /* Owned References */
  char *id;
};

enum { SIGNAL_RENAMED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrDoughRow, tr_dough_row, GTK_TYPE_LIST_BOX_ROW)

gboolean
tr_dough_row_is_renaming (TrDoughRow *self)
{
  g_return_val_if_fail (TR_IS_DOUGH_ROW (self), FALSE);

  return gtk_stack_get_visible_child (GTK_STACK (self->stack)) == self->entry;
}

static void
end_rename (TrDoughRow *self,
            gboolean    keep)
{
  g_autofree char *name = NULL;
  gboolean had_focus;

  if (!tr_dough_row_is_renaming (self))
    return;

  name = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry))));
  had_focus = gtk_widget_get_state_flags (self->entry) & GTK_STATE_FLAG_FOCUS_WITHIN;
  gtk_stack_set_visible_child (GTK_STACK (self->stack), self->name);
  if (had_focus)
    gtk_widget_grab_focus (GTK_WIDGET (self));
  if (keep && *name != '\0' && !g_str_equal (name, gtk_label_get_label (GTK_LABEL (self->name))))
    g_signal_emit (self, signals[SIGNAL_RENAMED], 0, name);
}

static void
entry_activated_cb (GtkEntry   *entry,
                    TrDoughRow *self)
{
  end_rename (self, TRUE);
}

static void
entry_left_cb (GtkEventControllerFocus *focus,
               TrDoughRow              *self)
{
  end_rename (self, TRUE);
}

static gboolean
escape_pressed_cb (GtkWidget *entry,
                   GVariant  *args,
                   gpointer   user_data)
{
  end_rename (user_data, FALSE);
  return GDK_EVENT_STOP;
}

static void
pressed_cb (GtkGestureClick *click,
            int              n_press,
            double           x,
            double           y,
            TrDoughRow      *self)
{
  if (n_press == 2)
    {
      gtk_gesture_set_state (GTK_GESTURE (click), GTK_EVENT_SEQUENCE_CLAIMED);
      tr_dough_row_start_rename (self);
    }
}

static void
tr_dough_row_dispose (GObject *object)
{
  TrDoughRow *self = TR_DOUGH_ROW (object);

  /* The entry may lose the focus on its way out; that must not rename. */
  if (self->entry != NULL)
    gtk_stack_set_visible_child (GTK_STACK (self->stack), self->name);
  self->entry = NULL;
  g_clear_pointer (&self->id, g_free);

  G_OBJECT_CLASS (tr_dough_row_parent_class)->dispose (object);
}

static void
tr_dough_row_class_init (TrDoughRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_dough_row_dispose;

  signals[SIGNAL_RENAMED] = g_signal_new ("renamed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
add_entry (TrDoughRow *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *keys = gtk_shortcut_controller_new ();

  self->entry = gtk_entry_new ();
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), 8);
  gtk_entry_set_max_length (GTK_ENTRY (self->entry), 200);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Name of the dough"), -1);
  g_signal_connect (self->entry, "activate", G_CALLBACK (entry_activated_cb), self);
  g_signal_connect (focus, "leave", G_CALLBACK (entry_left_cb), self);
  gtk_widget_add_controller (self->entry, focus);
  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (keys),
                                        gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                                          gtk_callback_action_new (escape_pressed_cb, self, NULL)));
  gtk_widget_add_controller (self->entry, keys);
  gtk_stack_add_child (GTK_STACK (self->stack), self->entry);
}

static GtkWidget *
new_label (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (label, css_class);

  return label;
}

static void
tr_dough_row_init (TrDoughRow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkGesture *click = gtk_gesture_click_new ();

  self->stack = gtk_stack_new ();
  gtk_stack_set_vhomogeneous (GTK_STACK (self->stack), FALSE);
  self->name = new_label ("dough-name");
  gtk_stack_add_child (GTK_STACK (self->stack), self->name);
  add_entry (self);
  self->figures = new_label ("dim-label");
  /* A name may be cut short; what follows from the dough may not. */
  gtk_label_set_ellipsize (GTK_LABEL (self->figures), PANGO_ELLIPSIZE_NONE);
  gtk_label_set_wrap (GTK_LABEL (self->figures), TRUE);
  gtk_widget_set_hexpand (column, TRUE);
  gtk_box_append (GTK_BOX (column), self->stack);
  gtk_box_append (GTK_BOX (column), self->figures);
  self->sign = gtk_image_new ();
  gtk_widget_set_valign (self->sign, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (box), column);
  gtk_box_append (GTK_BOX (box), self->sign);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (self), box);

  g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}

GtkWidget *
tr_dough_row_new (const char *id)
{
  TrDoughRow *self = g_object_new (TR_TYPE_DOUGH_ROW, NULL);

  self->id = g_strdup (id);

  return GTK_WIDGET (self);
}

const char *
tr_dough_row_get_id (TrDoughRow *self)
{
  g_return_val_if_fail (TR_IS_DOUGH_ROW (self), NULL);

  return self->id;
}

/* "27 fat layers · butter 11 g" */
static char *
dup_figures_text (const TrDoughFigures *figures,
                  const TrReader       *reader)
{
  GString *text = g_string_new (NULL);

  if (figures->has_lamination && isfinite (figures->lamination.fat_layers))
    {
      g_autofree char *count = tr_words_count (reader, figures->lamination.fat_layers);
      gulong n = (gulong) MIN (figures->lamination.fat_layers, 1e9);

      g_string_append_printf (text, g_dngettext (GETTEXT_PACKAGE, "%s fat layer", "%s fat layers", n), count);
    }
  if (isfinite (figures->piece.added_fat_g))
    {
      g_autofree char *mass = tr_words_mass (reader, figures->piece.added_fat_g);

      g_string_append_printf (text, "%s%s %s", text->len > 0 ? " · " : "", tr_words_fat (&figures->formula), mass);
    }
  if (text->len == 0)
    g_string_append (text, tr_words_kind (figures->dough->kind));

  return g_string_free (text, FALSE);
}

/* Notes are not worth a sign here: only what warns or stops. */
static void
show_sign (TrDoughRow           *self,
           const TrDoughFigures *figures)
{
  const TrFinding *worst = figures->findings != NULL && figures->findings->len > 0
                           ? g_ptr_array_index (figures->findings, 0) : NULL;
  gboolean is_shown = worst != NULL && worst->severity != TR_SEVERITY_NOTE;

  gtk_widget_set_visible (self->sign, is_shown);
  gtk_widget_remove_css_class (self->sign, tr_severity_id (TR_SEVERITY_STOP));
  gtk_widget_remove_css_class (self->sign, tr_severity_id (TR_SEVERITY_WARN));
  if (!is_shown)
    return;

  gtk_image_set_from_icon_name (GTK_IMAGE (self->sign), tr_findings_get_icon_name (worst->severity));
  gtk_widget_set_tooltip_text (self->sign, tr_words_severity (worst->severity));
  gtk_widget_add_css_class (self->sign, tr_severity_id (worst->severity));
}

void
tr_dough_row_show (TrDoughRow           *self,
                   const TrDoughFigures *figures,
                   const TrReader       *reader)
{
  g_return_if_fail (TR_IS_DOUGH_ROW (self));
  g_return_if_fail (figures != NULL);

  g_autofree char *text = dup_figures_text (figures, reader);
  g_autofree char *spoken = g_strdup_printf ("%s, %s", figures->dough->name, text);

  gtk_label_set_label (GTK_LABEL (self->name), figures->dough->name);
  gtk_label_set_label (GTK_LABEL (self->figures), text);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), spoken);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  show_sign (self, figures);
}

void
tr_dough_row_start_rename (TrDoughRow *self)
{
  g_return_if_fail (TR_IS_DOUGH_ROW (self));

  gtk_editable_set_text (GTK_EDITABLE (self->entry), gtk_label_get_label (GTK_LABEL (self->name)));
  gtk_stack_set_visible_child (GTK_STACK (self->stack), self->entry);
  gtk_widget_grab_focus (self->entry);
}
