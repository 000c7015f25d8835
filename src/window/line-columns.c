/* line-columns.c: the columns that the formula's rows and their titles share
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "line-columns.h"

#include <glib/gi18n-lib.h>

static GtkSizeGroup *
new_column (void)
{
  return gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
}

void
tr_line_columns_init (TrLineColumns *columns)
{
  *columns = (TrLineColumns) { new_column (), new_column (), new_column (), new_column () };
}

void
tr_line_columns_clear (TrLineColumns *columns)
{
  g_clear_object (&columns->amount);
  g_clear_object (&columns->percent);
  g_clear_object (&columns->grams);
  g_clear_object (&columns->menu);
}

static GtkWidget *
add_title (GtkWidget    *titles,
           const char   *text,
           GtkSizeGroup *column)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 1);
  gtk_widget_add_css_class (label, "dim-label");
  gtk_widget_add_css_class (label, "caption");
  gtk_size_group_add_widget (column, label);
  gtk_box_append (GTK_BOX (titles), label);

  return label;
}

GtkWidget *
tr_line_columns_new_titles (const TrLineColumns  *columns,
                            GtkWidget           **grams_title)
{
  GtkWidget *titles = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_widget_set_halign (titles, GTK_ALIGN_END);
  add_title (titles, _("as written"), columns->amount);
  add_title (titles, _("of flour"), columns->percent);
  *grams_title = add_title (titles, "g", columns->grams);
  add_title (titles, "", columns->menu);

  return titles;
}
