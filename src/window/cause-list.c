/* cause-list.c: what the tasters found wrong, what points there, and its remedy
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "cause-list.h"

#include <glib/gi18n-lib.h>

#include "../words/cause.h"
#include "branch.h"

/* One row: a cause, or that none was found. */
typedef struct
{
  GtkWidget *row, *label, *mend;
  char *heading;                 /* the complaint; only where another begins */
  const char *caution;           /* under the heading; NULL: none */
  char *where;                   /* NULL: nowhere */
  TrRemedy remedy;               /* while `mend` is visible */
} Row;

struct _TrCauseList
{
  GtkWidget parent_instance;

  /* Borrowed References */
  GtkWidget *list;

  /* Owned References */
  GPtrArray *rows;               /* Row */
};

G_DEFINE_FINAL_TYPE (TrCauseList, tr_cause_list, GTK_TYPE_WIDGET)

static void
row_free (gpointer data)
{
  Row *row = data;

  g_free (row->heading);
  g_free (row->where);
  g_free (row);
}

static Row *
find_row (TrCauseList *self,
          GtkWidget   *widget)
{
  for (guint i = 0; i < self->rows->len; i++)
    {
      Row *row = g_ptr_array_index (self->rows, i);

      if (row->row == widget || row->mend == widget)
        return row;
    }

  return NULL;
}

/* What is done may refill the row. */
static void
mend_clicked_cb (TrCauseList *self,
                 GtkWidget   *button)
{
  GtkWidget *page = gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);
  const Row *row = find_row (self, button);

  g_return_if_fail (row != NULL);

  const TrRemedy remedy = row->remedy;

  if (page != NULL)
    tr_page_branch_dough (TR_PAGE (page), &remedy);
}

static void
row_activated_cb (GtkListBox    *list,
                  GtkListBoxRow *pressed,
                  TrCauseList   *self)
{
  const Row *row = find_row (self, GTK_WIDGET (pressed));

  if (row != NULL && row->where != NULL)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.go-to", "s", row->where);
}

/* Rows *********************************************************************/

static Row *
add_row (TrCauseList *self)
{
  Row *row = g_new0 (Row, 1);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  row->label = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (row->label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (row->label), 0);
  gtk_widget_set_hexpand (row->label, TRUE);
  gtk_box_append (GTK_BOX (box), row->label);
  row->mend = gtk_button_new_with_label ("");
  gtk_widget_set_valign (row->mend, GTK_ALIGN_CENTER);
  g_signal_connect_object (row->mend, "clicked", G_CALLBACK (mend_clicked_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (box), row->mend);

  row->row = gtk_list_box_row_new ();
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row->row), box);
  gtk_list_box_append (GTK_LIST_BOX (self->list), row->row);
  g_ptr_array_add (self->rows, row);

  return row;
}

static void
show_remedy (Row            *row,
             const TrReader *reader,
             const TrCause  *cause)
{
  g_autofree char *text = cause != NULL ? tr_words_remedy (reader, &cause->remedy) : NULL;

  gtk_widget_set_visible (row->mend, text != NULL);
  if (text == NULL)
    return;

  row->remedy = cause->remedy;
  if (g_strcmp0 (gtk_button_get_label (GTK_BUTTON (row->mend)), text) == 0)
    return;

  g_autofree char *tooltip = g_strdup_printf (_("%s, in a new dough from this one"), text);

  gtk_button_set_label (GTK_BUTTON (row->mend), text);
  gtk_widget_set_tooltip_text (row->mend, tooltip);
}

/* `cause` NULL: none was found. */
static void
fill_row (Row                  *row,
          const TrReader       *reader,
          const TrDoughFigures *figures,
          const TrComplaint    *complaint,
          const TrCause        *cause,
          gboolean              is_first)
{
  g_autofree char *text = cause != NULL ? tr_words_cause (reader, figures, NULL, cause) : tr_words_no_cause (reader, NULL);
  g_autofree char *spoken = cause != NULL ? tr_words_cause (reader, figures, complaint, cause)
                                          : tr_words_no_cause (reader, complaint);
  g_autofree char *heading = is_first ? tr_words_complaint (reader, complaint) : NULL;
  g_autofree char *source = cause != NULL ? g_strdup_printf (_("Source: %s"), cause->source) : NULL;

  tr_set_text (&row->heading, heading);
  row->caution = is_first ? tr_words_caution (complaint->id) : NULL;
  tr_set_text (&row->where, cause != NULL ? cause->reading.where : NULL);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row->row), row->where != NULL);
  show_remedy (row, reader, cause);
  if (g_strcmp0 (gtk_label_get_label (GTK_LABEL (row->label)), text) != 0)
    gtk_label_set_label (GTK_LABEL (row->label), text);
  gtk_widget_set_tooltip_text (row->label, source);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row->row),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, spoken,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, source != NULL ? source : "", -1);
}

static void
add_header_words (GtkWidget  *header,
                  const char *text,
                  const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (header), label);
}

static void
update_header (GtkListBoxRow *list_row,
               GtkListBoxRow *before,
               gpointer       data)
{
  const Row *row = find_row (data, GTK_WIDGET (list_row));
  GtkWidget *header = NULL;

  if (row != NULL && row->heading != NULL)
    {
      header = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
      add_header_words (header, row->heading, "cause-heading");
      if (row->caution != NULL)
        add_header_words (header, row->caution, "dim-label");
    }
  gtk_list_box_row_set_header (list_row, header);
}

static void
fill_next (TrCauseList          *self,
           guint                *n,
           const TrReader       *reader,
           const TrDoughFigures *figures,
           const TrComplaint    *complaint,
           const TrCause        *cause,
           gboolean              is_first)
{
  Row *row = *n < self->rows->len ? g_ptr_array_index (self->rows, *n) : add_row (self);

  fill_row (row, reader, figures, complaint, cause, is_first);
  *n += 1;
}

static void
remove_rows_from (TrCauseList *self,
                  guint        n)
{
  while (self->rows->len > n)
    {
      const Row *last = g_ptr_array_index (self->rows, self->rows->len - 1);

      gtk_list_box_remove (GTK_LIST_BOX (self->list), last->row);
      g_ptr_array_remove_index (self->rows, self->rows->len - 1);
    }
}

void
tr_cause_list_show (TrCauseList *self,
                    TrPage      *page)
{
  g_return_if_fail (TR_IS_CAUSE_LIST (self));
  g_return_if_fail (TR_IS_PAGE (page));

  const TrDoughFigures *figures = tr_page_get_figures (page);
  const TrReader *reader = tr_page_get_reader (page);
  guint n = 0;

  if (figures != NULL)
    {
      const TrTrial *trial = tr_document_get_trial (tr_page_get_document (page));
      const TrFigures *all = tr_document_get_figures (tr_page_get_document (page));
      guint index = (guint) tr_page_get_dough_index (page);
      g_autoptr (GArray) complaints = tr_complaints_list (trial->tasting, figures->dough->id);

      for (guint i = 0; i < complaints->len; i++)
        {
          const TrComplaint *complaint = &g_array_index (complaints, TrComplaint, i);
          g_autoptr (GPtrArray) causes = tr_causes_find_beside (all, index, complaint->id);

          for (guint k = 0; k < causes->len; k++)
            fill_next (self, &n, reader, figures, complaint, causes->pdata[k], k == 0);
          if (causes->len == 0)
            fill_next (self, &n, reader, figures, complaint, NULL, TRUE);
        }
    }
  remove_rows_from (self, n);
  gtk_list_box_invalidate_headers (GTK_LIST_BOX (self->list));
  gtk_widget_set_visible (GTK_WIDGET (self), n > 0);
}

/* Building *****************************************************************/

static void
tr_cause_list_dispose (GObject *object)
{
  TrCauseList *self = TR_CAUSE_LIST (object);

  if (self->list != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->list, self);
      gtk_list_box_set_header_func (GTK_LIST_BOX (self->list), NULL, NULL, NULL);
    }
  g_clear_pointer (&self->list, gtk_widget_unparent);
  g_clear_pointer (&self->rows, g_ptr_array_unref);

  G_OBJECT_CLASS (tr_cause_list_parent_class)->dispose (object);
}

static void
tr_cause_list_class_init (TrCauseListClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_cause_list_dispose;

  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_cause_list_init (TrCauseList *self)
{
  self->rows = g_ptr_array_new_with_free_func (row_free);
  self->list = gtk_list_box_new ();
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_NONE);
  gtk_list_box_set_header_func (GTK_LIST_BOX (self->list), update_header, self, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Likely causes"), -1);
  gtk_widget_add_css_class (self->list, "causes");
  g_signal_connect (self->list, "row-activated", G_CALLBACK (row_activated_cb), self);
  gtk_widget_set_parent (self->list, GTK_WIDGET (self));
}

GtkWidget *
tr_cause_list_new (void)
{
  return g_object_new (TR_TYPE_CAUSE_LIST, NULL);
}
