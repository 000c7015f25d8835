/* actions.c: menu, accelerators and the list of shortcuts from the one table
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The table itself, with what each action does, is in window-actions.c.
 */

#include "config.h"

#include "actions.h"

#include <glib/gi18n-lib.h>

const char *
tr_action_get_label (const TrAction *action)
{
  return _(action->label);
}

static char *
dup_history_label (const char *verb,
                   const char *what)
{
  if (what == NULL)
    return g_strdup (verb);

  /* Translators: "Undo: change amount of Butter" */
  return g_strdup_printf (_("%s: %s"), verb, what);
}

static char *
dup_key_label (const char *accelerator)
{
  guint key;
  GdkModifierType modifiers;

  if (!gtk_accelerator_parse (accelerator, &key, &modifiers))
    return g_strdup (accelerator);

  return gtk_accelerator_get_label (key, modifiers);
}

const TrAction *
tr_actions_find (const char *name)
{
  guint n_actions;
  const TrAction *actions = tr_actions_get (&n_actions);

  for (guint i = 0; i < n_actions; i++)
    if (g_str_equal (actions[i].name, name))
      return &actions[i];

  return NULL;
}

void
tr_actions_set_tooltip (GtkWidget  *button,
                        const char *name,
                        const char *what)
{
  const TrAction *action = tr_actions_find (name);

  g_return_if_fail (action != NULL);

  g_autofree char *label = dup_history_label (tr_action_get_label (action), what);
  g_autofree char *key = action->accelerator != NULL ? dup_key_label (action->accelerator) : NULL;
  g_autofree char *tooltip = key != NULL ? g_strdup_printf ("%s (%s)", label, key) : g_strdup (label);

  gtk_widget_set_tooltip_text (button, tooltip);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

void
tr_actions_set_up_button (GtkWidget  *button,
                          const char *name)
{
  gtk_actionable_set_detailed_action_name (GTK_ACTIONABLE (button), name);
  tr_actions_set_tooltip (button, name, NULL);
}

/* Undo and redo say what they would do; everything else is named as in the table. */
static char *
dup_menu_label (const TrAction *action,
                const char     *undo,
                const char     *redo)
{
  const char *label = tr_action_get_label (action);

  if (g_str_equal (action->name, "win.undo"))
    return dup_history_label (label, undo);
  if (g_str_equal (action->name, "win.redo"))
    return dup_history_label (label, redo);

  return g_strdup (label);
}

static GMenu *
new_section (TrMenu      menu,
             const char *undo,
             const char *redo)
{
  GMenu *section = g_menu_new ();
  guint n_actions;
  const TrAction *actions = tr_actions_get (&n_actions);

  for (guint i = 0; i < n_actions; i++)
    {
      g_autofree char *label = NULL;

      if (actions[i].menu != menu)
        continue;

      label = dup_menu_label (&actions[i], undo, redo);
      g_menu_append (section, label, actions[i].name);
    }

  return section;
}

GMenuModel *
tr_actions_new_menu (const char *undo,
                     const char *redo,
                     GMenuModel *recent)
{
  /* NULL: a section of the menu itself. */
  static const char *const submenus[TR_N_MENUS] = {
    [TR_MENU_PRINT] = N_("Print"), [TR_MENU_DOUGHS] = N_("Dough"), [TR_MENU_VIEW] = N_("View"),
    [TR_MENU_UNITS] = N_("Units"), [TR_MENU_COLOURS] = N_("Colours"),
  };
  g_autoptr (GMenu) menu = g_menu_new ();
  g_autoptr (GMenu) submenu_section = g_menu_new ();

  for (TrMenu i = 0; i < TR_N_MENUS; i++)
    {
      g_autoptr (GMenu) section = new_section (i, undo, redo);

      if (i == TR_MENU_FILE && recent != NULL)
        g_menu_append_submenu (section, _("Open recent"), recent);
      if (submenus[i] != NULL)
        g_menu_append_submenu (submenu_section, _(submenus[i]), G_MENU_MODEL (section));
      else
        g_menu_append_section (menu, NULL, G_MENU_MODEL (section));
      if (i == TR_MENU_COLOURS)
        g_menu_append_section (menu, NULL, G_MENU_MODEL (submenu_section));
    }

  return G_MENU_MODEL (g_steal_pointer (&menu));
}

void
tr_actions_set_accelerators (GtkApplication *application)
{
  guint n_actions;
  const TrAction *actions = tr_actions_get (&n_actions);

  g_return_if_fail (GTK_IS_APPLICATION (application));

  for (guint i = 0; i < n_actions; i++)
    {
      const char *accelerators[] = { actions[i].accelerator, NULL };

      if (actions[i].accelerator != NULL && actions[i].keys == TR_KEYS_EVERYWHERE)
        gtk_application_set_accels_for_action (application, actions[i].name, accelerators);
    }
}

GtkEventController *
tr_actions_new_keys (TrKeys keys)
{
  GtkEventController *controller = gtk_shortcut_controller_new ();
  guint n_actions;
  const TrAction *actions = tr_actions_get (&n_actions);

  for (guint i = 0; i < n_actions; i++)
    if (actions[i].accelerator != NULL && actions[i].keys == keys)
      gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (controller),
                                            gtk_shortcut_new (gtk_shortcut_trigger_parse_string (actions[i].accelerator),
                                                              gtk_named_action_new (actions[i].name)));

  return controller;
}

void
tr_name_by_mnemonic (GtkWidget  *control,
                     const char *label)
{
  g_auto (GStrv) parts = g_strsplit (label, "_", 2);
  g_autofree char *name = g_strjoinv ("", parts);

  gtk_accessible_update_property (GTK_ACCESSIBLE (control), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  if (GTK_IS_DROP_DOWN (control))
    gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_first_child (control)), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

GMenuModel *
tr_actions_new_keys_menu (TrKeys keys)
{
  GMenu *menu = g_menu_new ();
  guint n_actions;
  const TrAction *actions = tr_actions_get (&n_actions);

  for (guint i = 0; i < n_actions; i++)
    if (actions[i].keys == keys)
      g_menu_append (menu, tr_action_get_label (&actions[i]), actions[i].name);

  return G_MENU_MODEL (menu);
}

char *
tr_actions_dup_key (const char *name)
{
  const TrAction *action = tr_actions_find (name);

  g_return_val_if_fail (action != NULL && action->accelerator != NULL, NULL);

  return dup_key_label (action->accelerator);
}

GtkEventController *
tr_actions_new_close_key (void)
{
  GtkEventController *controller = gtk_shortcut_controller_new ();

  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (controller),
                                        gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                                          gtk_named_action_new ("window.close")));

  return controller;
}

/* The list of keys **********************************************************/

static void
attach_heading (GtkGrid    *grid,
                int         row,
                const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "heading");
  if (row > 0)
    gtk_widget_set_margin_top (label, 12);
  gtk_grid_attach (grid, label, 0, row, 2, 1);
}

static void
attach_shortcut (GtkGrid        *grid,
                 int             row,
                 const TrAction *action)
{
  g_autofree char *key = dup_key_label (action->accelerator);
  GtkWidget *key_label = gtk_label_new (key);
  GtkWidget *label = gtk_label_new (tr_action_get_label (action));

  gtk_label_set_xalign (GTK_LABEL (key_label), 1);
  gtk_widget_add_css_class (key_label, "dim-label");
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_grid_attach (grid, label, 0, row, 1, 1);
  gtk_grid_attach (grid, key_label, 1, row, 1, 1);
}

static GtkWidget *
new_shortcuts_grid (void)
{
  static const char *const headings[TR_N_KEYS] = {
    [TR_KEYS_EVERYWHERE] = N_("Everywhere"), [TR_KEYS_DOUGHS] = N_("In the list of doughs"), [TR_KEYS_PREVIEW] = N_("In the preview"),
    [TR_KEYS_TURNS] = N_("On the turns"), [TR_KEYS_PICTURES] = N_("On a picture"), [TR_KEYS_PREDICTION] = N_("On the prediction"),
  };
  GtkWidget *grid = gtk_grid_new ();
  guint n_actions;
  const TrAction *actions = tr_actions_get (&n_actions);
  int row = 0;

  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 24);
  gtk_widget_add_css_class (grid, "shortcuts");
  for (TrKeys keys = 0; keys < TR_N_KEYS; keys++)
    {
      attach_heading (GTK_GRID (grid), row++, _(headings[keys]));
      for (guint i = 0; i < n_actions; i++)
        if (actions[i].accelerator != NULL && actions[i].keys == keys)
          attach_shortcut (GTK_GRID (grid), row++, &actions[i]);
    }

  return grid;
}

GtkWidget *
tr_actions_new_shortcuts_window (GtkWindow *parent)
{
  GtkWidget *window = gtk_window_new ();
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), new_shortcuts_grid ());
  gtk_widget_add_controller (window, tr_actions_new_close_key ());
  gtk_window_set_titlebar (GTK_WINDOW (window), gtk_header_bar_new ());
  gtk_window_set_title (GTK_WINDOW (window), _("Keys"));
  gtk_window_set_default_size (GTK_WINDOW (window), 420, 560);
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (window), TRUE);
  gtk_window_set_child (GTK_WINDOW (window), scrolled);

  return window;
}
