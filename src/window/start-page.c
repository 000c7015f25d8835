/* start-page.c: what an empty window says can be done
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A plain dough to change, a file to open, a recipe to read, the demo to look
 * at, and the files opened last. It only activates actions of the window. The list of recent
 * files is the desktop's own.
 */

#include "config.h"

#include "start-page.h"

#include <glib/gi18n-lib.h>

#define MAX_RECENT 8
#define RECENT_GROUP "tourier"

struct _TrStartPage
{
  GtkWidget parent_instance;

  /* Borrowed References */
  GtkWidget *recent;
};

G_DEFINE_FINAL_TYPE (TrStartPage, tr_start_page, GTK_TYPE_WIDGET)

void
tr_start_page_add_recent (GFile *file)
{
  static char *groups[] = { (char *) RECENT_GROUP, NULL };
  GtkRecentData data = {
    .mime_type = (char *) "application/x-tourier+json",
    .app_name = (char *) "Tourier",
    .app_exec = (char *) "tourier %u",
    .groups = groups,
  };
  g_autofree char *uri = g_file_get_uri (file);

  gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
}

static int
compare_recent (gconstpointer a,
                gconstpointer b)
{
  GDateTime *of_a = gtk_recent_info_get_modified ((GtkRecentInfo *) a);
  GDateTime *of_b = gtk_recent_info_get_modified ((GtkRecentInfo *) b);

  return g_date_time_compare (of_b, of_a);
}

/* (transfer full) (element-type GtkRecentInfo), newest first */
static GList *
list_recent (void)
{
  GList *all = gtk_recent_manager_get_items (gtk_recent_manager_get_default ());
  GList *ours = NULL;
  guint count = 0;

  all = g_list_sort (all, compare_recent);
  for (GList *item = all; item != NULL; item = item->next)
    if (count < MAX_RECENT && gtk_recent_info_has_group (item->data, RECENT_GROUP) && gtk_recent_info_exists (item->data))
      {
        ours = g_list_prepend (ours, gtk_recent_info_ref (item->data));
        count++;
      }
  g_list_free_full (all, (GDestroyNotify) gtk_recent_info_unref);

  return g_list_reverse (ours);
}

GMenuModel *
tr_start_page_new_recent_menu (void)
{
  g_autoptr (GMenu) menu = g_menu_new ();
  GList *recent = list_recent ();

  for (GList *item = recent; item != NULL; item = item->next)
    {
      g_autoptr (GMenuItem) entry = g_menu_item_new (gtk_recent_info_get_display_name (item->data), NULL);

      g_menu_item_set_action_and_target (entry, "win.open-uri", "s", gtk_recent_info_get_uri (item->data));
      g_menu_append_item (menu, entry);
    }
  g_list_free_full (recent, (GDestroyNotify) gtk_recent_info_unref);

  return g_menu_model_get_n_items (G_MENU_MODEL (menu)) > 0 ? G_MENU_MODEL (g_steal_pointer (&menu)) : NULL;
}

static void
add_recent_button (TrStartPage   *self,
                   GtkRecentInfo *info)
{
  GtkWidget *button = gtk_button_new_with_label (gtk_recent_info_get_display_name (info));
  g_autofree char *path = gtk_recent_info_get_uri_display (info);

  gtk_widget_add_css_class (button, "flat");
  gtk_label_set_ellipsize (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), PANGO_ELLIPSIZE_MIDDLE);
  gtk_widget_set_tooltip_text (button, path);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", gtk_recent_info_get_uri (info));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.open-uri");
  gtk_box_append (GTK_BOX (self->recent), button);
}

static void
fill_recent (TrStartPage *self)
{
  GList *recent = list_recent ();
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->recent)) != NULL)
    gtk_box_remove (GTK_BOX (self->recent), child);

  if (recent != NULL)
    {
      GtkWidget *title = gtk_label_new (_("Opened last"));

      gtk_widget_add_css_class (title, "dim-label");
      gtk_box_append (GTK_BOX (self->recent), title);
    }
  for (GList *item = recent; item != NULL; item = item->next)
    add_recent_button (self, item->data);
  gtk_widget_set_visible (self->recent, recent != NULL);
  g_list_free_full (recent, (GDestroyNotify) gtk_recent_info_unref);
}

static void
tr_start_page_map (GtkWidget *widget)
{
  fill_recent (TR_START_PAGE (widget));
  GTK_WIDGET_CLASS (tr_start_page_parent_class)->map (widget);
}

static void
tr_start_page_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  TR_START_PAGE (object)->recent = NULL;

  G_OBJECT_CLASS (tr_start_page_parent_class)->dispose (object);
}

static void
tr_start_page_class_init (TrStartPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_start_page_dispose;
  widget_class->map = tr_start_page_map;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
add_offer (GtkWidget  *box,
           const char *label,
           const char *explanation,
           const char *action)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *title = gtk_label_new (label);
  GtkWidget *text = gtk_label_new (explanation);
  GtkWidget *button = gtk_button_new ();

  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_add_css_class (title, "heading");
  gtk_label_set_xalign (GTK_LABEL (text), 0);
  gtk_label_set_wrap (GTK_LABEL (text), TRUE);
  gtk_widget_add_css_class (text, "dim-label");
  gtk_box_append (GTK_BOX (column), title);
  gtk_box_append (GTK_BOX (column), text);
  gtk_button_set_child (GTK_BUTTON (button), column);
  gtk_widget_add_css_class (button, "offer");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, label,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, explanation, -1);
  gtk_box_append (GTK_BOX (box), button);
}

static void
tr_start_page_init (TrStartPage *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *title = gtk_label_new (_("A laminated dough, from formula to bench card"));

  gtk_widget_add_css_class (title, "title-2");
  gtk_label_set_wrap (GTK_LABEL (title), TRUE);
  gtk_label_set_justify (GTK_LABEL (title), GTK_JUSTIFY_CENTER);
  gtk_widget_set_margin_bottom (title, 12);
  gtk_box_append (GTK_BOX (box), title);
  add_offer (box, _("Start from a plain dough"), _("Twelve croissants, ready to be changed into your own."), "win.add-dough");
  add_offer (box, _("Open a trial…"), _("A file you saved, or one that somebody gave you. It can be dropped here, too."), "win.open");
  add_offer (box, _("Read a recipe…"), _("From a book, a page or a file, looked through line by line."), "win.read-recipe");
  add_offer (box, _("Look at the demo"), _("Four invented doughs for one morning."), "win.open-demo");

  self->recent = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_set_margin_top (self->recent, 12);
  gtk_box_append (GTK_BOX (box), self->recent);

  gtk_widget_set_halign (box, GTK_ALIGN_CENTER);
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  gtk_widget_set_size_request (box, 420, -1);
  gtk_widget_add_css_class (box, "start-page");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), box);
  gtk_widget_set_parent (scrolled, GTK_WIDGET (self));
}

GtkWidget *
tr_start_page_new (void)
{
  return g_object_new (TR_TYPE_START_PAGE, NULL);
}
