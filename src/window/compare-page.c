/* compare-page.c: doughs side by side, what they are held against, what is predicted
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   ┌───────────────────────────────┬──────────────┐
 *   │ Doughs  Against  Order  Rows  │ Prediction   │
 *   ├───────────────────────────────┤              │
 *   │ figures in rows,              ├──────────────┤
 *   │ doughs in columns             │ two figures, │
 *   │                               │ as points    │
 *   └───────────────────────────────┴──────────────┘
 *
 * Only the prediction is written; how the table is shown changes nothing.
 */

#include "config.h"

#include "page.h"

#include <glib/gi18n-lib.h>

#include "comparison-cells.h"
#include "comparison-table.h"
#include "figure-choice.h"
#include "prediction-editor.h"
#include "scatter-view.h"
#include "section.h"
#include "two-sides.h"

/* The table beside the rest has at least that width. */
#define TABLE_LEAST_PX 560

#define TR_TYPE_COMPARE_PAGE (tr_compare_page_get_type ())
G_DECLARE_FINAL_TYPE (TrComparePage, tr_compare_page, TR, COMPARE_PAGE, TrPage)

struct _TrComparePage
{
  TrPage parent_instance;

  /* Borrowed References */
  GtkWidget *table, *shown, *shown_list, *against, *order, *turn, *rows, *hint;
  GtkWidget *prediction, *scatter;

  guint is_setting : 1;
};

G_DEFINE_FINAL_TYPE (TrComparePage, tr_compare_page, TR_TYPE_PAGE)

static TrComparisonTable *
get_table (TrComparePage *self)
{
  return TR_COMPARISON_TABLE (self->table);
}

static const TrTrial *
get_trial (TrComparePage *self)
{
  return tr_document_get_trial (tr_page_get_document (TR_PAGE (self)));
}

/* Which doughs */

static void
dough_toggled_cb (GtkCheckButton *button,
                  TrComparePage  *self)
{
  if (!self->is_setting)
    tr_comparison_table_set_shown (get_table (self), g_object_get_data (G_OBJECT (button), "dough"), gtk_check_button_get_active (button));
}

static void
show_all_cb (GtkWidget     *button,
             TrComparePage *self)
{
  const TrTrial *trial = get_trial (self);

  for (guint i = 0; i < trial->doughs->len; i++)
    tr_comparison_table_set_shown (get_table (self), tr_trial_get_dough (trial, i)->id, TRUE);
}

static void
show_ticks (TrComparePage *self,
            const TrTrial *trial)
{
  GtkWidget *tick = gtk_widget_get_first_child (self->shown_list), *next;
  g_autoptr (GArray) doughs = tr_comparison_table_get_doughs (get_table (self));
  g_autofree char *label = g_strdup_printf (_("%u of %u doughs"), doughs->len, trial->doughs->len);

  gtk_menu_button_set_label (GTK_MENU_BUTTON (self->shown), label);
  for (guint i = 0; i < trial->doughs->len; i++, tick = gtk_widget_get_next_sibling (tick))
    {
      const TrDough *dough = tr_trial_get_dough (trial, i);
      g_autofree char *name = tr_comparison_dup_dough_name (trial, i);

      if (tick == NULL)
        {
          tick = gtk_check_button_new ();
          g_signal_connect_object (tick, "toggled", G_CALLBACK (dough_toggled_cb), self, 0);
          gtk_box_append (GTK_BOX (self->shown_list), tick);
        }
      g_object_set_data_full (G_OBJECT (tick), "dough", g_strdup (dough->id), g_free);
      gtk_check_button_set_label (GTK_CHECK_BUTTON (tick), name);
      gtk_check_button_set_active (GTK_CHECK_BUTTON (tick), tr_comparison_table_is_shown (get_table (self), dough->id));
    }
  for (; tick != NULL; tick = next)
    {
      next = gtk_widget_get_next_sibling (tick);
      gtk_box_remove (GTK_BOX (self->shown_list), tick);
    }
}

/* Held against which; the first is nothing */

static void
show_against (TrComparePage *self,
              const TrTrial *trial)
{
  GtkStringList *names = GTK_STRING_LIST (gtk_drop_down_get_model (GTK_DROP_DOWN (self->against)));
  const char *reference = tr_comparison_table_get_reference (get_table (self));
  g_autoptr (GPtrArray) wanted = g_ptr_array_new_with_free_func (g_free);
  gboolean is_same = g_list_model_get_n_items (G_LIST_MODEL (names)) == trial->doughs->len + 1;

  g_ptr_array_add (wanted, g_strdup (_("Nothing")));
  for (guint i = 0; i < trial->doughs->len; i++)
    g_ptr_array_add (wanted, tr_comparison_dup_dough_name (trial, i));
  for (guint i = 0; is_same && i < wanted->len; i++)
    is_same = g_strcmp0 (gtk_string_list_get_string (names, i), wanted->pdata[i]) == 0;
  g_ptr_array_add (wanted, NULL);
  if (!is_same)
    gtk_string_list_splice (names, 0, g_list_model_get_n_items (G_LIST_MODEL (names)), (const char *const *) wanted->pdata);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->against), reference != NULL ? (guint) tr_trial_find_dough (trial, reference) + 1 : 0);
}

static void
against_chosen_cb (TrComparePage *self)
{
  guint selected = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->against));

  if (self->is_setting || tr_page_get_document (TR_PAGE (self)) == NULL)
    return;

  tr_comparison_table_set_reference (get_table (self), selected > 0 && selected <= get_trial (self)->doughs->len
                                                       ? tr_trial_get_dough (get_trial (self), selected - 1)->id : NULL);
}

/* In which order */

static void
order_chosen_cb (GtkWidget     *choice,
                 TrComparePage *self)
{
  tr_comparison_table_set_order (get_table (self), tr_figure_choice_get (TR_FIGURE_CHOICE (self->order)),
                                 gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->turn)));
}

static void
turn_toggled_cb (GtkWidget     *button,
                 TrComparePage *self)
{
  if (!self->is_setting)
    order_chosen_cb (self->order, self);
}

static void
rows_chosen_cb (TrComparePage *self)
{
  if (!self->is_setting)
    tr_comparison_table_set_by_spread (get_table (self), gtk_drop_down_get_selected (GTK_DROP_DOWN (self->rows)) == 1);
}

/* Showing */

static void
show_tools (TrComparePage *self)
{
  const TrTrial *trial = get_trial (self);
  gboolean is_least_first;
  const TrComparable *order = tr_comparison_table_get_order (get_table (self), &is_least_first);

  self->is_setting = TRUE;
  show_ticks (self, trial);
  show_against (self, trial);
  tr_figure_choice_set (TR_FIGURE_CHOICE (self->order), order);
  gtk_widget_set_sensitive (self->turn, order != NULL);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->turn), is_least_first);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->rows), tr_comparison_table_is_by_spread (get_table (self)) ? 1 : 0);
  self->is_setting = FALSE;
  tr_words_label_set (self->hint, trial->doughs->len == 0 ? _("There is no dough in this trial yet.")
                                  : trial->doughs->len == 1 ? _("There is one dough; with another beside it they can be compared.") : NULL);
}

static void
show_scatter (TrComparePage *self)
{
  g_autoptr (GArray) doughs = tr_comparison_table_get_doughs (get_table (self));

  tr_scatter_view_refresh (TR_SCATTER_VIEW (self->scatter), doughs);
}

static void
view_changed_cb (GtkWidget     *table,
                 TrComparePage *self)
{
  if (tr_page_get_document (TR_PAGE (self)) == NULL)
    return;

  show_tools (self);
  show_scatter (self);
}

static void
tr_compare_page_refresh (TrPage *page)
{
  TrComparePage *self = TR_COMPARE_PAGE (page);

  tr_comparison_table_refresh (get_table (self));
  show_tools (self);
  show_scatter (self);
  tr_page_follow (TR_PAGE (self->prediction), page);
}

static gboolean
tr_compare_page_go_to (TrPage     *page,
                       const char *pointer)
{
  return tr_page_go_to (TR_PAGE (TR_COMPARE_PAGE (page)->prediction), pointer);
}

static void
copied_cb (GtkWidget  *widget,
           const char *action,
           GVariant   *parameter)
{
  gtk_widget_activate_action (TR_COMPARE_PAGE (widget)->table,
                              g_str_equal (action, "compare.copy-csv") ? "comparison.copy-csv" : "comparison.copy", NULL);
}

static void
tr_compare_page_class_init (TrComparePageClass *klass)
{
  gtk_widget_class_install_action (GTK_WIDGET_CLASS (klass), "compare.copy", NULL, copied_cb);
  gtk_widget_class_install_action (GTK_WIDGET_CLASS (klass), "compare.copy-csv", NULL, copied_cb);
  TR_PAGE_CLASS (klass)->refresh = tr_compare_page_refresh;
  TR_PAGE_CLASS (klass)->go_to = tr_compare_page_go_to;
}

/* Building */

static GtkWidget *
new_labelled (const char *text,
              GtkWidget  *control)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *label = gtk_label_new (text);

  gtk_widget_set_halign (label, GTK_ALIGN_START);
  gtk_widget_add_css_class (label, "dim-label");
  gtk_accessible_update_property (GTK_ACCESSIBLE (control), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (control), GTK_ACCESSIBLE_RELATION_LABELLED_BY, label, NULL, -1);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), control);

  return box;
}

static GtkWidget *
new_doughs_button (TrComparePage *self)
{
  GtkWidget *popover = gtk_popover_new (), *scroller = gtk_scrolled_window_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *all = gtk_button_new_with_label (_("Show all"));

  self->shown_list = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), 400);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->shown_list);
  g_signal_connect_object (all, "clicked", G_CALLBACK (show_all_cb), self, 0);
  gtk_box_append (GTK_BOX (box), scroller);
  gtk_box_append (GTK_BOX (box), all);
  gtk_popover_set_child (GTK_POPOVER (popover), box);
  self->shown = gtk_menu_button_new ();
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (self->shown), popover);

  return self->shown;
}

static GtkWidget *
new_copy_button (void)
{
  g_autoptr (GMenu) menu = g_menu_new ();
  GtkWidget *button = gtk_menu_button_new ();

  g_menu_append (menu, _("As a table"), "compare.copy");
  g_menu_append (menu, _("As CSV"), "compare.copy-csv");
  gtk_menu_button_set_label (GTK_MENU_BUTTON (button), _("Copy"));
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (button), G_MENU_MODEL (menu));

  return button;
}

static GtkWidget *
new_tools (TrComparePage *self)
{
  GtkWidget *copy, *tools = tr_fields_row_new (), *order = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->against = gtk_drop_down_new (G_LIST_MODEL (gtk_string_list_new (NULL)), NULL);
  self->order = tr_figure_choice_new (_("Doughs in the order of"), _("The document"));
  self->turn = gtk_toggle_button_new_with_label (_("Least first"));
  self->rows = gtk_drop_down_new_from_strings ((const char *[]) { _("In groups"), _("Most different first"), NULL });
  gtk_widget_set_valign (self->turn, GTK_ALIGN_END);
  g_signal_connect_object (self->against, "notify::selected", G_CALLBACK (against_chosen_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->order, "chosen", G_CALLBACK (order_chosen_cb), self, 0);
  g_signal_connect_object (self->turn, "toggled", G_CALLBACK (turn_toggled_cb), self, 0);
  g_signal_connect_object (self->rows, "notify::selected", G_CALLBACK (rows_chosen_cb), self, G_CONNECT_SWAPPED);

  gtk_box_append (GTK_BOX (order), self->order);
  gtk_box_append (GTK_BOX (order), self->turn);
  tr_form_add (tools, new_labelled (_("Shown"), new_doughs_button (self)));
  tr_form_add (tools, new_labelled (_("Held against"), self->against));
  tr_form_add (tools, order);
  tr_form_add (tools, new_labelled (_("Figures"), self->rows));
  copy = new_copy_button ();
  gtk_widget_set_valign (copy, GTK_ALIGN_END);
  tr_form_add (tools, copy);

  return tools;
}

static GtkWidget *
new_left (TrComparePage *self)
{
  GtkWidget *left = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12), *tools;

  self->table = tr_comparison_table_new ();
  g_signal_connect_object (self->table, "view-changed", G_CALLBACK (view_changed_cb), self, 0);
  tools = new_tools (self);
  self->hint = tr_words_label_new ("dim-label");
  gtk_widget_set_margin_top (tools, 18);
  gtk_widget_set_margin_start (tools, 18);
  gtk_widget_set_margin_start (self->hint, 18);
  gtk_widget_set_vexpand (self->table, TRUE);
  gtk_box_append (GTK_BOX (left), tools);
  gtk_box_append (GTK_BOX (left), self->hint);
  gtk_box_append (GTK_BOX (left), self->table);

  return left;
}

static GtkWidget *
new_right (TrComparePage *self)
{
  GtkWidget *scroller, *column = tr_column_new (&scroller), *section;

  section = tr_column_add_section (column, _("Prediction"));
  self->prediction = tr_prediction_editor_new ();
  gtk_box_append (GTK_BOX (section), self->prediction);
  section = tr_column_add_section (column, _("Two figures"));
  self->scatter = tr_scatter_view_new ();
  gtk_box_append (GTK_BOX (section), self->scatter);

  return scroller;
}

static void
tr_compare_page_init (TrComparePage *self)
{
  GtkWidget *left = new_left (self);

  tr_page_set_child (TR_PAGE (self), tr_two_sides_new (left, self->table, new_right (self), TABLE_LEAST_PX));
}

GtkWidget *
tr_compare_page_new (void)
{
  return g_object_new (TR_TYPE_COMPARE_PAGE, NULL);
}
