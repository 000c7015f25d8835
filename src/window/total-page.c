/* total-page.c: the total formula, and what is in the dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * To be read, not written: everything here follows from the formula. Both
 * tables can be copied for a spreadsheet.
 */

#include "config.h"

#include "page.h"

#include <glib/gi18n-lib.h>

#include "figure-table.h"
#include "section.h"

#define TR_TYPE_TOTAL_PAGE (tr_total_page_get_type ())
G_DECLARE_FINAL_TYPE (TrTotalPage, tr_total_page, TR, TOTAL_PAGE, TrPage)

struct _TrTotalPage
{
  TrPage parent_instance;

  /* Borrowed References */
  GtkWidget *scroller;
  TrFigureTable *total, *content;
  GtkWidget *notes;              /* a box of labels */
};

G_DEFINE_FINAL_TYPE (TrTotalPage, tr_total_page, TR_TYPE_PAGE)

static void
show_notes (TrTotalPage *self,
            GPtrArray   *notes)
{
  GtkWidget *label = gtk_widget_get_first_child (self->notes);

  for (guint i = 0; i < notes->len || label != NULL; i++)
    {
      if (label == NULL)
        {
          label = tr_words_label_new (NULL);
          gtk_box_append (GTK_BOX (self->notes), label);
        }
      tr_words_label_set (label, i < notes->len ? g_ptr_array_index (notes, i) : NULL);
      label = gtk_widget_get_next_sibling (label);
    }
}

static void
tr_total_page_refresh (TrPage *page)
{
  TrTotalPage *self = TR_TOTAL_PAGE (page);
  const TrDoughFigures *figures = tr_page_get_figures (page);
  const TrReader *reader = tr_page_get_reader (page);
  g_autoptr (GPtrArray) notes = NULL;

  gtk_widget_set_visible (self->scroller, figures != NULL);
  if (figures == NULL)
    return;

  notes = tr_words_content_notes (reader, figures);
  tr_figure_table_take (self->total, tr_words_total_table (reader, figures));
  tr_figure_table_take (self->content, tr_words_content_table (reader, figures));
  show_notes (self, notes);
}

static void
copy_clicked_cb (GtkButton *button,
                 GtkWidget *table)
{
  gtk_widget_activate_action (table, "table.copy", NULL);
}

/* The table with a button beside its heading. */
static TrFigureTable *
add_table (GtkWidget  *column,
           const char *heading,
           GtkWidget **section)
{
  GtkWidget *table = tr_figure_table_new (heading), *copy = gtk_button_new_from_icon_name ("edit-copy-symbolic");
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6), *label;
  g_autofree char *name = g_strdup_printf (_("Copy as a table: %s"), heading);

  *section = tr_column_add_section (column, heading);
  label = g_object_ref (gtk_widget_get_first_child (*section));
  gtk_box_remove (GTK_BOX (*section), label);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (head), label);
  g_object_unref (label);

  gtk_button_set_has_frame (GTK_BUTTON (copy), FALSE);
  gtk_widget_set_tooltip_text (copy, _("Copy as a table, for a spreadsheet"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (copy), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_object (copy, "clicked", G_CALLBACK (copy_clicked_cb), table, 0);
  gtk_box_append (GTK_BOX (head), copy);
  gtk_box_append (GTK_BOX (*section), head);
  gtk_box_append (GTK_BOX (*section), table);

  return TR_FIGURE_TABLE (table);
}

static void
tr_total_page_init (TrTotalPage *self)
{
  GtkWidget *column = tr_column_new (&self->scroller), *section;

  self->total = add_table (column, _("Total formula"), &section);
  self->content = add_table (column, _("What is in it"), &section);
  self->notes = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (section), self->notes);
  tr_page_set_child (TR_PAGE (self), self->scroller);
}

static void
tr_total_page_class_init (TrTotalPageClass *klass)
{
  TR_PAGE_CLASS (klass)->refresh = tr_total_page_refresh;
}

GtkWidget *
tr_total_page_new (void)
{
  return g_object_new (TR_TYPE_TOTAL_PAGE, NULL);
}
