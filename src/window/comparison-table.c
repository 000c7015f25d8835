/* comparison-table.c: figures in rows, doughs in columns
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rows and columns are made anew only when they are others. GTK 4.8 has no sections in its
 * column view: the heading of a group is a row with empty cells.
 */

#include "config.h"

#include "comparison-table.h"

#include <glib/gi18n-lib.h>

#include "../words/comparison.h"
#include "comparison-cells.h"
#include "figure-item.h"

struct _TrComparisonTable
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *scroller, *menu;

  /* Borrowed References */
  GtkWidget *view;

  /* Owned */
  GListStore *rows;              /* TrFigureItem */
  GtkSingleSelection *selection;
  GPtrArray *columns;            /* GtkColumnViewColumn, of the doughs */
  GPtrArray *ids;                /* char *, of the doughs of the columns */
  TrComparisonCells *cells;
  TrComparisonChoice choice;
};

enum { SIGNAL_VIEW_CHANGED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrComparisonTable, tr_comparison_table, GTK_TYPE_WIDGET)

static TrPage *
get_page (TrComparisonTable *self)
{
  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);

  return page != NULL && tr_page_get_document (page) != NULL ? page : NULL;
}

static const TrFigures *
get_figures (TrComparisonTable *self)
{
  TrPage *page = get_page (self);

  return page != NULL ? tr_document_get_figures (tr_page_get_document (page)) : NULL;
}

gboolean
tr_comparison_table_is_shown (TrComparisonTable *self,
                              const char        *dough)
{
  g_return_val_if_fail (TR_IS_COMPARISON_TABLE (self), FALSE);

  const TrFigures *figures = get_figures (self);

  return figures != NULL && tr_comparison_choice_is_shown (&self->choice, figures, dough);
}

GArray *
tr_comparison_table_get_doughs (TrComparisonTable *self)
{
  g_return_val_if_fail (TR_IS_COMPARISON_TABLE (self), NULL);

  const TrFigures *figures = get_figures (self);

  return figures != NULL ? tr_comparison_choice_list_doughs (&self->choice, figures) : g_array_new (FALSE, FALSE, sizeof (guint));
}

/* Rows */

static void
show_rows (TrComparisonTable *self,
           const TrFigures   *figures)
{
  g_autoptr (GPtrArray) items = tr_comparison_choice_list_items (&self->choice, figures);
  const TrComparable *selected = tr_comparison_table_get_selected (self);

  if (tr_comparison_has_items (G_LIST_MODEL (self->rows), items))
    return;

  g_list_store_splice (self->rows, 0, g_list_model_get_n_items (G_LIST_MODEL (self->rows)), items->pdata, items->len);
  tr_comparison_table_select (self, selected);
}

/* Columns */

static gboolean
are_same_columns (TrComparisonTable *self,
                  const TrFigures   *figures,
                  const GArray      *doughs)
{
  if (self->ids->len != doughs->len)
    return FALSE;

  for (guint i = 0; i < doughs->len; i++)
    if (!g_str_equal (self->ids->pdata[i], tr_trial_get_dough (figures->trial, g_array_index (doughs, guint, i))->id))
      return FALSE;

  return TRUE;
}

static GMenuModel *
new_column_menu (const char *id)
{
  g_autoptr (GMenu) menu = g_menu_new ();
  const struct { const char *label, *action; } entries[] = {
    { _("Hold the others against it"), "comparison.hold-against" },
    { _("Do not show"), "comparison.hide" },
    { _("Work on this dough"), "win.show-dough" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (entries); i++)
    {
      g_autoptr (GMenuItem) item = g_menu_item_new (entries[i].label, NULL);

      g_menu_item_set_action_and_target (item, entries[i].action, "s", id);
      g_menu_append_item (menu, item);
    }

  return G_MENU_MODEL (g_steal_pointer (&menu));
}

static void
make_columns (TrComparisonTable *self,
              const TrFigures   *figures,
              const GArray      *doughs)
{
  for (guint i = 0; i < self->columns->len; i++)
    gtk_column_view_remove_column (GTK_COLUMN_VIEW (self->view), self->columns->pdata[i]);
  g_ptr_array_set_size (self->columns, 0);
  g_ptr_array_set_size (self->ids, 0);

  for (guint i = 0; i < doughs->len; i++)
    {
      const char *id = tr_trial_get_dough (figures->trial, g_array_index (doughs, guint, i))->id;
      g_autoptr (GMenuModel) menu = new_column_menu (id);
      GtkColumnViewColumn *column = tr_comparison_cells_new_dough_column (self->cells, id);

      gtk_column_view_column_set_expand (column, TRUE);
      gtk_column_view_column_set_resizable (column, TRUE);
      gtk_column_view_column_set_header_menu (column, menu);
      gtk_column_view_insert_column (GTK_COLUMN_VIEW (self->view), 1 + i, column);
      g_ptr_array_add (self->columns, column);
      g_ptr_array_add (self->ids, g_strdup (id));
    }
  tr_comparison_shorten_titles (self->view);
}

static void
show_titles (TrComparisonTable *self,
             const TrFigures   *figures,
             const GArray      *doughs)
{
  for (guint i = 0; i < doughs->len; i++)
    {
      guint dough = g_array_index (doughs, guint, i);
      gboolean is_reference = g_strcmp0 (self->choice.reference, tr_trial_get_dough (figures->trial, dough)->id) == 0;
      g_autofree char *name = tr_comparison_dup_dough_name (figures->trial, dough);
      g_autofree char *title = is_reference ? g_strdup_printf (_("%s (reference)"), name) : g_steal_pointer (&name);

      if (g_strcmp0 (gtk_column_view_column_get_title (self->columns->pdata[i]), title) != 0)
        gtk_column_view_column_set_title (self->columns->pdata[i], title);
    }
}

void
tr_comparison_table_refresh (TrComparisonTable *self)
{
  g_return_if_fail (TR_IS_COMPARISON_TABLE (self));

  const TrFigures *figures = get_figures (self);

  if (figures == NULL)
    return;
  if (self->choice.reference != NULL && tr_trial_find_dough (figures->trial, self->choice.reference) < 0)
    g_clear_pointer (&self->choice.reference, g_free);

  g_autoptr (GArray) doughs = tr_comparison_table_get_doughs (self);

  if (!are_same_columns (self, figures, doughs))
    make_columns (self, figures, doughs);
  show_titles (self, figures, doughs);
  show_rows (self, figures);
  tr_comparison_cells_show (self->cells, figures, doughs, &self->choice, tr_page_get_reader (get_page (self)));
}

/* How it is shown */

static void
view_changed (TrComparisonTable *self)
{
  tr_comparison_table_refresh (self);
  g_signal_emit (self, signals[SIGNAL_VIEW_CHANGED], 0);
}

void
tr_comparison_table_set_shown (TrComparisonTable *self,
                               const char        *dough,
                               gboolean           is_shown)
{
  g_return_if_fail (TR_IS_COMPARISON_TABLE (self));
  g_return_if_fail (dough != NULL);

  if (get_figures (self) == NULL || tr_comparison_table_is_shown (self, dough) == is_shown)
    return;

  tr_comparison_choice_set_shown (&self->choice, get_figures (self), dough, is_shown);
  view_changed (self);
}

const TrComparable *
tr_comparison_table_get_order (TrComparisonTable *self,
                               gboolean          *is_least_first)
{
  g_return_val_if_fail (TR_IS_COMPARISON_TABLE (self), NULL);

  if (is_least_first != NULL)
    *is_least_first = self->choice.is_least_first;

  return self->choice.order;
}

void
tr_comparison_table_set_order (TrComparisonTable  *self,
                               const TrComparable *comparable,
                               gboolean            is_least_first)
{
  g_return_if_fail (TR_IS_COMPARISON_TABLE (self));

  if (self->choice.order == comparable && (comparable == NULL || self->choice.is_least_first == (is_least_first != FALSE)))
    return;

  self->choice.order = comparable;
  self->choice.is_least_first = comparable != NULL && is_least_first;
  view_changed (self);
}

gboolean
tr_comparison_table_is_by_spread (TrComparisonTable *self)
{
  g_return_val_if_fail (TR_IS_COMPARISON_TABLE (self), FALSE);

  return self->choice.is_by_spread;
}

void
tr_comparison_table_set_by_spread (TrComparisonTable *self,
                                   gboolean           is_by_spread)
{
  g_return_if_fail (TR_IS_COMPARISON_TABLE (self));

  if (self->choice.is_by_spread == (is_by_spread != FALSE))
    return;

  self->choice.is_by_spread = is_by_spread != FALSE;
  view_changed (self);
}

const char *
tr_comparison_table_get_reference (TrComparisonTable *self)
{
  g_return_val_if_fail (TR_IS_COMPARISON_TABLE (self), NULL);

  return self->choice.reference;
}

void
tr_comparison_table_set_reference (TrComparisonTable *self,
                                   const char        *dough)
{
  g_return_if_fail (TR_IS_COMPARISON_TABLE (self));

  if (tr_set_text (&self->choice.reference, dough))
    view_changed (self);
}

/* What stands there */

GPtrArray *
tr_comparison_table_get_rows (TrComparisonTable *self)
{
  g_return_val_if_fail (TR_IS_COMPARISON_TABLE (self), NULL);

  GPtrArray *rows = g_ptr_array_new ();
  GListModel *model = G_LIST_MODEL (self->rows);

  for (guint i = 0; i < g_list_model_get_n_items (model); i++)
    {
      g_autoptr (TrFigureItem) item = g_list_model_get_item (model, i);

      g_ptr_array_add (rows, (gpointer) tr_figure_item_get_comparable (item));
    }

  return rows;
}

const TrComparable *
tr_comparison_table_get_selected (TrComparisonTable *self)
{
  g_return_val_if_fail (TR_IS_COMPARISON_TABLE (self), NULL);

  TrFigureItem *item = gtk_single_selection_get_selected_item (self->selection);

  return item != NULL ? tr_figure_item_get_comparable (item) : NULL;
}

void
tr_comparison_table_select (TrComparisonTable  *self,
                            const TrComparable *comparable)
{
  g_return_if_fail (TR_IS_COMPARISON_TABLE (self));

  g_autoptr (GPtrArray) rows = tr_comparison_table_get_rows (self);
  guint place;

  if (comparable != NULL && g_ptr_array_find (rows, comparable, &place))
    gtk_single_selection_set_selected (self->selection, place);
  else
    gtk_single_selection_set_selected (self->selection, GTK_INVALID_LIST_POSITION);
}

char *
tr_comparison_table_dup_text (TrComparisonTable *self,
                              gboolean           is_csv)
{
  g_return_val_if_fail (TR_IS_COMPARISON_TABLE (self), NULL);

  const TrFigures *figures = get_figures (self);
  g_autoptr (GArray) doughs = tr_comparison_table_get_doughs (self);
  g_autoptr (TrTextTable) table = NULL;

  if (figures == NULL)
    return g_strdup ("");

  table = tr_words_comparison_table (figures, (const guint *) doughs->data, doughs->len);

  return is_csv ? tr_text_table_dup_csv (table) : tr_text_table_dup_tsv (table);
}

/* What is done to it */

static void
copied_cb (GtkWidget  *widget,
           const char *action,
           GVariant   *parameter)
{
  g_autofree char *text = tr_comparison_table_dup_text (TR_COMPARISON_TABLE (widget), g_str_equal (action, "comparison.copy-csv"));

  gdk_clipboard_set_text (gtk_widget_get_clipboard (widget), text);
}

/* The most first, then the least, then as in the document again. */
static void
order_by (TrComparisonTable  *self,
          const TrComparable *comparable)
{
  if (comparable == NULL)
    return;
  if (self->choice.order != comparable)
    tr_comparison_table_set_order (self, comparable, FALSE);
  else if (!self->choice.is_least_first)
    tr_comparison_table_set_order (self, comparable, TRUE);
  else
    tr_comparison_table_set_order (self, NULL, FALSE);
}

static void
ordered_cb (GtkWidget  *widget,
            const char *action,
            GVariant   *parameter)
{
  order_by (TR_COMPARISON_TABLE (widget), tr_comparison_table_get_selected (TR_COMPARISON_TABLE (widget)));
}

static void
held_cb (GtkWidget  *widget,
         const char *action,
         GVariant   *parameter)
{
  const char *id = g_variant_get_string (parameter, NULL);
  TrComparisonTable *self = TR_COMPARISON_TABLE (widget);

  tr_comparison_table_set_reference (self, g_strcmp0 (self->choice.reference, id) == 0 ? NULL : id);
}

static void
hidden_cb (GtkWidget  *widget,
           const char *action,
           GVariant   *parameter)
{
  tr_comparison_table_set_shown (TR_COMPARISON_TABLE (widget), g_variant_get_string (parameter, NULL), FALSE);
}

static void
activated_cb (GtkColumnView     *view,
              guint              position,
              TrComparisonTable *self)
{
  g_autoptr (TrFigureItem) item = g_list_model_get_item (G_LIST_MODEL (self->rows), position);

  order_by (self, item != NULL ? tr_figure_item_get_comparable (item) : NULL);
}

static void
popup_at (TrComparisonTable *self,
          double             x,
          double             y)
{
  gtk_popover_set_pointing_to (GTK_POPOVER (self->menu), &(GdkRectangle) { (int) x, (int) y, 1, 1 });
  gtk_popover_popup (GTK_POPOVER (self->menu));
}

static void
pressed_cb (GtkGestureClick   *gesture,
            int                n_press,
            double             x,
            double             y,
            TrComparisonTable *self)
{
  GtkWidget *under = gtk_widget_pick (GTK_WIDGET (self), x, y, GTK_PICK_DEFAULT);
  guint row = under != NULL ? tr_comparison_cells_find_row (self->cells, under) : GTK_INVALID_LIST_POSITION;
  g_autoptr (TrFigureItem) item = row != GTK_INVALID_LIST_POSITION ? g_list_model_get_item (G_LIST_MODEL (self->rows), row) : NULL;

  /* What is asked for is asked of the row that was pressed. */
  if (item != NULL && tr_figure_item_get_comparable (item) != NULL)
    gtk_single_selection_set_selected (self->selection, row);
  popup_at (self, x, y);
}

static void
menu_asked_cb (GtkWidget  *widget,
               const char *action,
               GVariant   *parameter)
{
  popup_at (TR_COMPARISON_TABLE (widget), 24, 24);
}

static void
tr_comparison_table_size_allocate (GtkWidget *widget,
                                   int        width,
                                   int        height,
                                   int        baseline)
{
  TrComparisonTable *self = TR_COMPARISON_TABLE (widget);

  gtk_widget_size_allocate (self->scroller, &(GtkAllocation) { 0, 0, width, height }, baseline);
  gtk_popover_present (GTK_POPOVER (self->menu));
}

static void
tr_comparison_table_measure (GtkWidget      *widget,
                             GtkOrientation  orientation,
                             int             for_size,
                             int            *minimum,
                             int            *natural,
                             int            *minimum_baseline,
                             int            *natural_baseline)
{
  TrComparisonTable *self = TR_COMPARISON_TABLE (widget);

  gtk_widget_measure (self->scroller, orientation, for_size, minimum, natural, NULL, NULL);
  /* With less it has to be scrolled. */
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      gtk_widget_measure (self->view, orientation, -1, natural, NULL, NULL, NULL);
      *natural = MAX (*natural, *minimum);
    }
}

static void
tr_comparison_table_dispose (GObject *object)
{
  TrComparisonTable *self = TR_COMPARISON_TABLE (object);

  g_clear_pointer (&self->menu, gtk_widget_unparent);
  g_clear_pointer (&self->scroller, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_comparison_table_parent_class)->dispose (object);
}

static void
tr_comparison_table_finalize (GObject *object)
{
  TrComparisonTable *self = TR_COMPARISON_TABLE (object);

  g_clear_object (&self->selection);
  g_clear_object (&self->rows);
  g_clear_pointer (&self->columns, g_ptr_array_unref);
  g_clear_pointer (&self->ids, g_ptr_array_unref);
  g_clear_pointer (&self->cells, tr_comparison_cells_free);
  tr_comparison_choice_clear (&self->choice);

  G_OBJECT_CLASS (tr_comparison_table_parent_class)->finalize (object);
}

static void
tr_comparison_table_class_init (TrComparisonTableClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = tr_comparison_table_dispose;
  object_class->finalize = tr_comparison_table_finalize;
  widget_class->measure = tr_comparison_table_measure;
  widget_class->size_allocate = tr_comparison_table_size_allocate;
  signals[SIGNAL_VIEW_CHANGED] = g_signal_new ("view-changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);

  gtk_widget_class_set_css_name (widget_class, "comparison");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_install_action (widget_class, "comparison.copy", NULL, copied_cb);
  gtk_widget_class_install_action (widget_class, "comparison.copy-csv", NULL, copied_cb);
  gtk_widget_class_install_action (widget_class, "comparison.order", NULL, ordered_cb);
  gtk_widget_class_install_action (widget_class, "comparison.hold-against", "s", held_cb);
  gtk_widget_class_install_action (widget_class, "comparison.hide", "s", hidden_cb);
  gtk_widget_class_install_action (widget_class, "comparison.menu", NULL, menu_asked_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_c, GDK_CONTROL_MASK, "comparison.copy", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Menu, 0, "comparison.menu", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F10, GDK_SHIFT_MASK, "comparison.menu", NULL);
}

static void
build_menu (TrComparisonTable *self)
{
  g_autoptr (GMenu) menu = g_menu_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  g_menu_append (menu, _("Order the doughs by this figure"), "comparison.order");
  g_menu_append (menu, _("Copy as a table"), "comparison.copy");
  g_menu_append (menu, _("Copy as CSV"), "comparison.copy-csv");
  self->menu = gtk_popover_menu_new_from_model (G_MENU_MODEL (menu));
  gtk_popover_set_has_arrow (GTK_POPOVER (self->menu), FALSE);
  gtk_widget_set_halign (self->menu, GTK_ALIGN_START);
  gtk_widget_set_parent (self->menu, GTK_WIDGET (self));
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_SECONDARY);
  g_signal_connect_object (click, "pressed", G_CALLBACK (pressed_cb), self, 0);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}

static void
tr_comparison_table_init (TrComparisonTable *self)
{
  g_autoptr (GtkColumnViewColumn) names = NULL, spreads = NULL;

  self->rows = g_list_store_new (TR_TYPE_FIGURE_ITEM);
  self->selection = gtk_single_selection_new (g_object_ref (G_LIST_MODEL (self->rows)));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  self->columns = g_ptr_array_new_with_free_func (g_object_unref);
  self->ids = g_ptr_array_new_with_free_func (g_free);
  self->cells = tr_comparison_cells_new ();

  self->view = gtk_column_view_new (g_object_ref (GTK_SELECTION_MODEL (self->selection)));
  gtk_widget_add_css_class (self->view, "data-table");
  gtk_column_view_set_show_row_separators (GTK_COLUMN_VIEW (self->view), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Figures of the doughs"), -1);
  g_signal_connect_object (self->view, "activate", G_CALLBACK (activated_cb), self, 0);
  names = tr_comparison_cells_new_name_column (self->cells);
  spreads = tr_comparison_cells_new_spread_column (self->cells);
  gtk_column_view_append_column (GTK_COLUMN_VIEW (self->view), names);
  gtk_column_view_append_column (GTK_COLUMN_VIEW (self->view), spreads);

  self->scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), self->view);
  gtk_widget_set_vexpand (self->scroller, TRUE);
  gtk_widget_set_parent (self->scroller, GTK_WIDGET (self));
  build_menu (self);
}

GtkWidget *
tr_comparison_table_new (void)
{
  return g_object_new (TR_TYPE_COMPARISON_TABLE, NULL);
}
