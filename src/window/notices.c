/* notices.c: the strip above the pages that tells what happened to the file
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A column of lines, newest last, each with a sentence, its buttons and a
 * cross. A line is found again by its subject, which is the widget's name.
 */

#include "config.h"

#include "notices.h"

#include <glib/gi18n-lib.h>

struct _TrNotices
{
  GtkWidget parent_instance;
};

G_DEFINE_FINAL_TYPE (TrNotices, tr_notices, GTK_TYPE_WIDGET)

static void
tr_notices_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (tr_notices_parent_class)->dispose (object);
}

static void
tr_notices_class_init (TrNoticesClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_notices_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_notices_init (TrNotices *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (gtk_widget_get_layout_manager (GTK_WIDGET (self))),
                                  GTK_ORIENTATION_VERTICAL);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

static GtkWidget *
find_line (TrNotices  *self,
           const char *subject)
{
  for (GtkWidget *line = gtk_widget_get_first_child (GTK_WIDGET (self));
       line != NULL;
       line = gtk_widget_get_next_sibling (line))
    if (g_str_equal (gtk_widget_get_name (line), subject))
      return line;

  return NULL;
}

void
tr_notices_clear (TrNotices  *self,
                  const char *subject)
{
  g_return_if_fail (TR_IS_NOTICES (self));
  g_return_if_fail (subject != NULL);

  GtkWidget *line = find_line (self, subject);

  if (line != NULL)
    gtk_widget_unparent (line);
  gtk_widget_set_visible (GTK_WIDGET (self), gtk_widget_get_first_child (GTK_WIDGET (self)) != NULL);
}

static void
button_clicked_cb (GtkButton *button,
                   GtkWidget *line)
{
  g_autoptr (GtkWidget) kept = g_object_ref (line);
  TrNotices *self = TR_NOTICES (gtk_widget_get_parent (line));
  g_autofree char *subject = g_strdup (gtk_widget_get_name (line));
  g_autofree char *action = g_strdup (g_object_get_data (G_OBJECT (button), "action"));

  /* Cleared first: what the button does may have something new to say. */
  tr_notices_clear (self, subject);
  if (action != NULL)
    {
      g_autofree char *name = NULL;
      g_autoptr (GVariant) target = NULL;

      if (g_action_parse_detailed_name (action, &name, &target, NULL))
        gtk_widget_activate_action_variant (GTK_WIDGET (self), name, target);
    }
}

static void
add_button (GtkWidget  *line,
            GtkWidget  *button,
            const char *action)
{
  g_object_set_data_full (G_OBJECT (button), "action", g_strdup (action), g_free);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_signal_connect (button, "clicked", G_CALLBACK (button_clicked_cb), line);
  gtk_box_append (GTK_BOX (line), button);
}

static GtkWidget *
new_line (const char           *subject,
          const char           *sentence,
          const TrNoticeButton *buttons,
          guint                 n_buttons)
{
  GtkWidget *line = g_object_new (GTK_TYPE_BOX,
                                  "name", subject,
                                  "spacing", 6,
                                  "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT,
                                  NULL);
  GtkWidget *label = gtk_label_new (sentence);
  GtkWidget *cross = gtk_button_new_from_icon_name ("window-close-symbolic");

  gtk_widget_add_css_class (line, "notice");
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_selectable (GTK_LABEL (label), FALSE);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (line), label);
  for (guint i = 0; i < n_buttons; i++)
    add_button (line, gtk_button_new_with_label (buttons[i].label), buttons[i].action);
  gtk_widget_add_css_class (cross, "flat");
  gtk_widget_set_tooltip_text (cross, _("Dismiss"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (cross), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Dismiss"), -1);
  add_button (line, cross, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (line), GTK_ACCESSIBLE_PROPERTY_LABEL, sentence, -1);

  return line;
}

void
tr_notices_show (TrNotices            *self,
                 const char           *subject,
                 const char           *sentence,
                 const TrNoticeButton *buttons,
                 guint                 n_buttons)
{
  g_return_if_fail (TR_IS_NOTICES (self));
  g_return_if_fail (subject != NULL);
  g_return_if_fail (sentence != NULL);

  tr_notices_clear (self, subject);
  gtk_widget_set_parent (new_line (subject, sentence, buttons, n_buttons), GTK_WIDGET (self));
  gtk_widget_set_visible (GTK_WIDGET (self), TRUE);
}

const char *
tr_notices_get (TrNotices  *self,
                const char *subject)
{
  g_return_val_if_fail (TR_IS_NOTICES (self), NULL);

  GtkWidget *line = find_line (self, subject);

  return line != NULL ? gtk_label_get_text (GTK_LABEL (gtk_widget_get_first_child (line))) : NULL;
}
