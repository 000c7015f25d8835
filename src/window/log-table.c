/* log-table.c: rows of what is written, with fields for what happened
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "log-table.h"

#include <glib/gi18n-lib.h>

/* With the rows themselves, for the grid would keep it for the hidden ones too. */
#define ROW_SPACING 6

static GtkWidget *
new_title (const char *text,
           gboolean    is_number)
{
  GtkWidget *title = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (title), is_number ? 1 : 0);
  gtk_label_set_justify (GTK_LABEL (title), is_number ? GTK_JUSTIFY_RIGHT : GTK_JUSTIFY_LEFT);
  /* Over a field, whatever the language says. */
  if (is_number)
    {
      gtk_label_set_wrap (GTK_LABEL (title), TRUE);
      gtk_label_set_wrap_mode (GTK_LABEL (title), PANGO_WRAP_WORD_CHAR);
      gtk_label_set_width_chars (GTK_LABEL (title), 8);
      gtk_label_set_max_width_chars (GTK_LABEL (title), 8);
    }
  gtk_widget_set_valign (title, GTK_ALIGN_END);
  gtk_widget_add_css_class (title, "dim-label");
  gtk_widget_add_css_class (title, "caption");

  return title;
}

void
tr_log_table_init (TrLogTable     *table,
                   GtkWidget      *section,
                   const TrMember *members,
                   guint           n_members,
                   gboolean        has_plan)
{
  table->section = section;
  table->members = members;
  table->n_members = n_members;
  table->rows = g_ptr_array_new_with_free_func (g_free);
  table->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (table->grid), 6);
  if (has_plan)
    gtk_grid_attach (GTK_GRID (table->grid), new_title (_("written"), FALSE), 1, 0, 1, 1);
  for (guint i = 0; i < n_members; i++)
    {
      table->titles[i] = new_title ("", TRUE);
      gtk_grid_attach (GTK_GRID (table->grid), table->titles[i], (int) i + 2, 0, 1, 1);
    }
  gtk_box_append (GTK_BOX (section), tr_sideways_new (table->grid));
}

/* Return goes on to the next field, unless what stands there was not understood. */
static void
activated_cb (GtkWidget *control,
              gpointer   data)
{
  GtkRoot *root = gtk_widget_get_root (control);
  GtkWidget *field = gtk_widget_get_ancestor (control, TR_TYPE_FIELD);

  if (root != NULL && field != NULL && tr_field_get_error (TR_FIELD (field)) == NULL)
    g_signal_emit_by_name (root, "move-focus", GTK_DIR_TAB_FORWARD);
}

/* In a cell, because a field says itself whether it is seen. */
static GtkWidget *
attach_field (TrLogTable *table,
              guint       member,
              guint       item,
              int         y)
{
  GtkWidget *field = tr_entry_field_new (&table->members[member], TR_FIELD_TABLE);
  GtkWidget *cell = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  tr_entry_field_set_width_chars (TR_ENTRY_FIELD (field), 5, 6);
  tr_field_set_item (TR_FIELD (field), item);
  g_signal_connect_after (tr_field_get_control (TR_FIELD (field)), "activate", G_CALLBACK (activated_cb), NULL);
  gtk_box_append (GTK_BOX (cell), field);
  gtk_widget_set_valign (cell, GTK_ALIGN_START);
  gtk_widget_set_margin_top (cell, ROW_SPACING);
  gtk_grid_attach (GTK_GRID (table->grid), cell, (int) member + 2, y, 1, 1);

  return field;
}

/* `has`: which of the members this row has; NULL: all. */
TrLogRow *
tr_log_table_add_row (TrLogTable     *table,
                      guint           item,
                      const gboolean *has)
{
  TrLogRow *row = g_new0 (TrLogRow, 1);
  int y = (int) table->rows->len + 1;

  row->item = item;
  row->name = tr_words_label_new (NULL);
  row->planned = tr_words_label_new ("dim-label");
  gtk_label_set_width_chars (GTK_LABEL (row->name), 9);
  gtk_label_set_max_width_chars (GTK_LABEL (row->name), 16);
  gtk_label_set_width_chars (GTK_LABEL (row->planned), 12);
  gtk_label_set_max_width_chars (GTK_LABEL (row->planned), 20);
  gtk_widget_set_hexpand (row->planned, TRUE);
  gtk_widget_set_margin_top (row->name, ROW_SPACING);
  gtk_widget_set_margin_top (row->planned, ROW_SPACING);
  gtk_grid_attach (GTK_GRID (table->grid), row->name, 0, y, 1, 1);
  gtk_grid_attach (GTK_GRID (table->grid), row->planned, 1, y, 1, 1);
  for (guint i = 0; i < table->n_members; i++)
    if (has == NULL || has[i])
      row->fields[i] = attach_field (table, i, item, y);
  g_ptr_array_add (table->rows, row);

  return row;
}

TrLogRow *
tr_log_table_get_row (const TrLogTable *table,
                      guint             index)
{
  return g_ptr_array_index (table->rows, index);
}

/* Takes both texts. `name` NULL: the row is hidden. */
void
tr_log_table_show_row (TrLogTable *table,
                       TrLogRow   *row,
                       char       *name,
                       char       *planned)
{
  g_autofree char *said = name;

  tr_words_label_set (row->name, said);
  tr_words_label_take (row->planned, said != NULL ? planned : NULL);
  if (said == NULL)
    g_free (planned);
  for (guint i = 0; i < table->n_members; i++)
    if (row->fields[i] != NULL)
      {
        gtk_widget_set_visible (gtk_widget_get_parent (row->fields[i]), said != NULL);
        if (said != NULL)
          tr_field_set_context (TR_FIELD (row->fields[i]), said);
      }
}

void
tr_log_table_show_titles (TrLogTable     *table,
                          const TrReader *reader)
{
  for (guint i = 0; i < table->n_members; i++)
    {
      const char *unit = tr_member_get_unit (&table->members[i], reader);

      tr_figure_label_take (table->titles[i], g_strdup_printf ("%s\n%s", _(table->members[i].label), unit != NULL ? unit : ""));
    }
}

void
tr_log_table_clear (TrLogTable *table)
{
  g_clear_pointer (&table->rows, g_ptr_array_unref);
}
