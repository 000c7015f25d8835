/* balance.c: the ratios of the dough as handles
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A stack of views of the same ratios; "scales" is one handle a ratio, "plane"
 * all doughs by two of them.
 */

#include "config.h"

#include "balance.h"

#include <glib/gi18n-lib.h>

#include "balance-row.h"
#include "ratio-plane.h"

struct _TrBalance
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *box;
  GtkWidget *stack;
  GtkWidget *rows[TR_N_RATIOS];
  GtkWidget *plane;
};

G_DEFINE_FINAL_TYPE (TrBalance, tr_balance, GTK_TYPE_WIDGET)

/* As they are written: the dough from its water on, then what rises and rests. */
static const TrRatio order[] = {
  TR_RATIO_ALL_WATER, TR_RATIO_DOUGH_FAT, TR_RATIO_ROLL_IN_OF_DOUGH, TR_RATIO_SALT,
  TR_RATIO_SUGAR, TR_RATIO_PREFERMENTED, TR_RATIO_YEAST_FRESH,
};
G_STATIC_ASSERT (G_N_ELEMENTS (order) == TR_N_RATIOS);

void
tr_balance_refresh (TrBalance *self)
{
  g_return_if_fail (TR_IS_BALANCE (self));

  for (guint i = 0; i < TR_N_RATIOS; i++)
    tr_balance_row_refresh (TR_BALANCE_ROW (self->rows[i]));
  tr_ratio_plane_refresh (TR_RATIO_PLANE (self->plane));
}

static void
tr_balance_init (TrBalance *self)
{
  GtkWidget *scales = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12), *switcher = gtk_stack_switcher_new ();

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  self->stack = gtk_stack_new ();
  gtk_stack_set_hhomogeneous (GTK_STACK (self->stack), FALSE);
  gtk_stack_set_vhomogeneous (GTK_STACK (self->stack), FALSE);
  gtk_stack_set_transition_type (GTK_STACK (self->stack), GTK_STACK_TRANSITION_TYPE_NONE);
  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    {
      self->rows[order[i]] = tr_balance_row_new (order[i]);
      gtk_box_append (GTK_BOX (scales), self->rows[order[i]]);
    }
  self->plane = tr_ratio_plane_new ();
  gtk_stack_add_titled (GTK_STACK (self->stack), scales, "scales", _("Ratio by ratio"));
  gtk_stack_add_titled (GTK_STACK (self->stack), self->plane, "plane", _("Two ratios, all doughs"));
  gtk_stack_switcher_set_stack (GTK_STACK_SWITCHER (switcher), GTK_STACK (self->stack));
  gtk_widget_set_halign (switcher, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (self->box), switcher);
  gtk_box_append (GTK_BOX (self->box), self->stack);
}

static void
tr_balance_dispose (GObject *object)
{
  g_clear_pointer (&TR_BALANCE (object)->box, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_balance_parent_class)->dispose (object);
}

static void
tr_balance_class_init (TrBalanceClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_balance_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

GtkWidget *
tr_balance_new (void)
{
  return g_object_new (TR_TYPE_BALANCE, NULL);
}

GtkWidget *
tr_balance_get_row (TrBalance *self,
                    TrRatio    ratio)
{
  g_return_val_if_fail (TR_IS_BALANCE (self) && ratio < TR_N_RATIOS, NULL);

  return self->rows[ratio];
}

gboolean
tr_balance_focus_plane (TrBalance *self)
{
  g_return_val_if_fail (TR_IS_BALANCE (self), FALSE);

  return gtk_widget_get_mapped (self->plane) && gtk_widget_grab_focus (self->plane);
}

gboolean
tr_balance_go_to (TrBalance  *self,
                  const char *pointer)
{
  g_return_val_if_fail (TR_IS_BALANCE (self), FALSE);
  g_return_val_if_fail (pointer != NULL, FALSE);

  if (!g_str_has_prefix (pointer, TR_BALANCE_WHERE))
    return FALSE;

  for (TrRatio i = 0; i < TR_N_RATIOS; i++)
    if (self->rows[i] != NULL && g_str_equal (pointer + strlen (TR_BALANCE_WHERE), tr_ratio_key (i)))
      return tr_balance_focus_plane (self) || gtk_widget_grab_focus (tr_balance_row_get_scale (TR_BALANCE_ROW (self->rows[i])));

  return FALSE;
}
