/* figure-table.c: a table of figures to be read and copied
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "figure-table.h"

#include <glib/gi18n-lib.h>

#include "section.h"

/* Rows of the grid that are hairlines: under the heads, over the foot. */
#define HEAD_LINE_ROW 1

struct _TrFigureTable
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *scroller;
  GtkWidget *menu;

  /* Borrowed References */
  GtkWidget *grid;

  /* Owned */
  TrTextTable *table;
  GPtrArray *labels;             /* borrowed GtkWidget, row by row */
};

G_DEFINE_FINAL_TYPE (TrFigureTable, tr_figure_table, GTK_TYPE_WIDGET)

static GtkWidget *
new_name (gboolean is_head)
{
  GtkWidget *label = g_object_new (GTK_TYPE_LABEL,
                                   "accessible-role", is_head ? GTK_ACCESSIBLE_ROLE_COLUMN_HEADER : GTK_ACCESSIBLE_ROLE_ROW_HEADER,
                                   "xalign", 0.0f, NULL);

  return label;
}

static GtkWidget *
new_cell (TrFigureTable *self,
          guint          row,
          guint          column)
{
  gboolean is_head = row == 0, is_sum = row + 1 == self->table->rows->len && self->table->has_sum;
  GtkWidget *label = column == 0 || is_head ? new_name (is_head) : tr_figure_label_new (5);

  if (column > 0)
    {
      gtk_label_set_xalign (GTK_LABEL (label), 1);
      gtk_widget_set_halign (label, GTK_ALIGN_END);
    }
  else
    gtk_widget_set_hexpand (label, TRUE);
  if (is_head)
    {
      gtk_widget_add_css_class (label, "dim-label");
      gtk_widget_add_css_class (label, "caption");
    }
  else if (is_sum)
    gtk_widget_add_css_class (label, "sum");

  return label;
}

/* Hairlines take a row each. */
static int
grid_row (const TrTextTable *table,
          guint              row)
{
  return (int) row + (row > 0) + (row >= table->rows->len - table->n_foot);
}

static void
build (TrFigureTable *self)
{
  const TrTextTable *table = self->table;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->grid)) != NULL)
    gtk_grid_remove (GTK_GRID (self->grid), child);
  g_ptr_array_set_size (self->labels, 0);

  for (guint row = 0; row < table->rows->len; row++)
    for (guint column = 0; column < table->n_columns; column++)
      {
        GtkWidget *cell = new_cell (self, row, column);

        g_ptr_array_add (self->labels, cell);
        gtk_grid_attach (GTK_GRID (self->grid), cell, (int) column, grid_row (table, row), 1, 1);
      }
  gtk_grid_attach (GTK_GRID (self->grid), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL), 0, HEAD_LINE_ROW, (int) table->n_columns, 1);
  if (table->n_foot > 0)
    gtk_grid_attach (GTK_GRID (self->grid), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL), 0,
                     grid_row (table, table->rows->len - table->n_foot) - 1, (int) table->n_columns, 1);
}

/* A figure is heard with what it is of: "Bread flour, Sponge: 150". */
static void
name_cell (TrFigureTable *self,
           guint          row,
           guint          column,
           GtkWidget     *label)
{
  const char *text = tr_text_table_get (self->table, row, column);
  g_autofree char *name = NULL;

  if (row == 0 || column == 0 || *text == '\0')
    return;

  name = g_strdup_printf (_("%s, %s: %s"), tr_text_table_get (self->table, row, 0),
                          tr_text_table_get (self->table, 0, column), text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (label), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
show (TrFigureTable *self)
{
  guint n_columns = self->table->n_columns;

  for (guint i = 0; i < self->labels->len; i++)
    {
      GtkWidget *label = g_ptr_array_index (self->labels, i);
      const char *text = tr_text_table_get (self->table, i / n_columns, i % n_columns);

      if (g_str_equal (gtk_label_get_text (GTK_LABEL (label)), text))
        continue;
      gtk_label_set_text (GTK_LABEL (label), text);
      name_cell (self, i / n_columns, i % n_columns, label);
    }
}

static void
copy_cb (GtkWidget  *widget,
         const char *action,
         GVariant   *parameter)
{
  TrFigureTable *self = TR_FIGURE_TABLE (widget);
  g_autofree char *text = NULL;

  if (self->table == NULL)
    return;

  text = tr_text_table_dup_tsv (self->table);
  gdk_clipboard_set_text (gtk_widget_get_clipboard (widget), text);
}

static void
popup_at (TrFigureTable *self,
          double         x,
          double         y)
{
  gtk_popover_set_pointing_to (GTK_POPOVER (self->menu), &(GdkRectangle) { (int) x, (int) y, 1, 1 });
  gtk_popover_popup (GTK_POPOVER (self->menu));
}

static void
pressed_cb (GtkGestureClick *gesture,
            int              n_press,
            double           x,
            double           y,
            TrFigureTable   *self)
{
  popup_at (self, x, y);
}

static void
popup_menu_cb (GtkWidget  *widget,
               const char *action,
               GVariant   *parameter)
{
  popup_at (TR_FIGURE_TABLE (widget), 24, 24);
}

static void
tr_figure_table_size_allocate (GtkWidget *widget,
                               int        width,
                               int        height,
                               int        baseline)
{
  TrFigureTable *self = TR_FIGURE_TABLE (widget);

  gtk_widget_size_allocate (self->scroller, &(GtkAllocation) { 0, 0, width, height }, baseline);
  gtk_popover_present (GTK_POPOVER (self->menu));
}

static void
tr_figure_table_measure (GtkWidget      *widget,
                         GtkOrientation  orientation,
                         int             for_size,
                         int            *minimum,
                         int            *natural,
                         int            *minimum_baseline,
                         int            *natural_baseline)
{
  gtk_widget_measure (TR_FIGURE_TABLE (widget)->scroller, orientation, for_size, minimum, natural, NULL, NULL);
}

static void
tr_figure_table_dispose (GObject *object)
{
  TrFigureTable *self = TR_FIGURE_TABLE (object);

  g_clear_pointer (&self->menu, gtk_widget_unparent);
  g_clear_pointer (&self->scroller, gtk_widget_unparent);
  self->grid = NULL;

  G_OBJECT_CLASS (tr_figure_table_parent_class)->dispose (object);
}

static void
tr_figure_table_finalize (GObject *object)
{
  TrFigureTable *self = TR_FIGURE_TABLE (object);

  g_clear_pointer (&self->table, tr_text_table_free);
  g_clear_pointer (&self->labels, g_ptr_array_unref);

  G_OBJECT_CLASS (tr_figure_table_parent_class)->finalize (object);
}

static void
tr_figure_table_class_init (TrFigureTableClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = tr_figure_table_dispose;
  object_class->finalize = tr_figure_table_finalize;
  widget_class->size_allocate = tr_figure_table_size_allocate;
  widget_class->measure = tr_figure_table_measure;

  gtk_widget_class_set_css_name (widget_class, "figure-table");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_TABLE);
  gtk_widget_class_install_action (widget_class, "table.copy", NULL, copy_cb);
  gtk_widget_class_install_action (widget_class, "table.menu", NULL, popup_menu_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_c, GDK_CONTROL_MASK, "table.copy", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Menu, 0, "table.menu", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F10, GDK_SHIFT_MASK, "table.menu", NULL);
}

static void
tr_figure_table_init (TrFigureTable *self)
{
  g_autoptr (GMenu) menu = g_menu_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  self->labels = g_ptr_array_new ();
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);

  self->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 12);
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 6);
  self->scroller = tr_sideways_new (self->grid);
  gtk_scrolled_window_set_propagate_natural_width (GTK_SCROLLED_WINDOW (self->scroller), TRUE);
  gtk_widget_set_parent (self->scroller, GTK_WIDGET (self));

  g_menu_append (menu, _("Copy as a table"), "table.copy");
  self->menu = gtk_popover_menu_new_from_model (G_MENU_MODEL (menu));
  gtk_popover_set_has_arrow (GTK_POPOVER (self->menu), FALSE);
  gtk_widget_set_halign (self->menu, GTK_ALIGN_START);
  gtk_widget_set_parent (self->menu, GTK_WIDGET (self));
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_SECONDARY);
  g_signal_connect_object (click, "pressed", G_CALLBACK (pressed_cb), self, 0);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}

GtkWidget *
tr_figure_table_new (const char *accessible_name)
{
  GtkWidget *self = g_object_new (TR_TYPE_FIGURE_TABLE, NULL);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, accessible_name, -1);

  return self;
}

static gboolean
is_same_shape (const TrTextTable *a,
               const TrTextTable *b)
{
  return a != NULL && a->n_columns == b->n_columns && a->rows->len == b->rows->len && a->n_foot == b->n_foot;
}

void
tr_figure_table_take (TrFigureTable *self,
                      TrTextTable   *table)
{
  g_return_if_fail (TR_IS_FIGURE_TABLE (self));
  g_return_if_fail (table != NULL);

  gboolean is_same = is_same_shape (self->table, table);

  g_clear_pointer (&self->table, tr_text_table_free);
  self->table = table;
  if (!is_same)
    build (self);
  show (self);
}

const TrTextTable *
tr_figure_table_get (TrFigureTable *self)
{
  g_return_val_if_fail (TR_IS_FIGURE_TABLE (self), NULL);

  return self->table;
}
