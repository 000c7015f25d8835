/* line-menu.c: what can be done to a line of the formula
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "line-menu.h"

#include <glib/gi18n-lib.h>

#include "../calc/written.h"
#include "../words/words.h"

static void
append_if_enabled (GMenu      *menu,
                   const char *label,
                   const char *action)
{
  g_autoptr (GMenuItem) item = g_menu_item_new (label, action);

  g_menu_item_set_attribute (item, "hidden-when", "s", "action-disabled");
  g_menu_append_item (menu, item);
}

static GMenuModel *
new_menu (void)
{
  g_autoptr (GMenu) menu = g_menu_new ();
  g_autoptr (GMenu) order = g_menu_new ();
  g_autoptr (GMenu) stages = g_menu_new ();
  g_autoptr (GMenu) swap = g_menu_new ();
  g_autoptr (GMenu) last = g_menu_new ();

  g_menu_append (order, _("Move up"), "line.move-up");
  g_menu_append (order, _("Move down"), "line.move-down");
  for (guint stage = 0; stage < TR_N_STAGES; stage++)
    {
      g_autofree char *label = g_strdup_printf (_("To %s"), tr_words_stage (stage));
      g_autofree char *action = g_strdup_printf ("line.set-stage::%s", tr_stage_id (stage));

      g_menu_append (stages, label, action);
    }
  g_menu_append (stages, _("To a new preferment"), "line.set-stage::new");
  g_menu_append (swap, _("Swap for…"), "line.swap");
  append_if_enabled (swap, _("Make my own from this…"), "line.make-own");
  append_if_enabled (swap, _("Change this ingredient…"), "line.change-own");
  g_menu_append (last, _("Remove"), "line.remove");
  g_menu_append_section (menu, NULL, G_MENU_MODEL (order));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (stages));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (swap));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (last));

  return G_MENU_MODEL (g_steal_pointer (&menu));
}

GtkWidget *
tr_line_menu_new_button (void)
{
  g_autoptr (GMenuModel) model = new_menu ();
  GtkWidget *button = gtk_menu_button_new ();

  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (button), "view-more-symbolic");
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (button), model);
  gtk_menu_button_set_has_frame (GTK_MENU_BUTTON (button), FALSE);
  gtk_widget_set_tooltip_text (button, _("Move or remove this line (Alt+Up, Alt+Down, Alt+Delete)"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Move or remove this line"), -1);

  return button;
}
