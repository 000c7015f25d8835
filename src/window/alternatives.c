/* alternatives.c: the other ways to lay out the sheet, to choose from
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A table in a list box: its first row leaves the choice to the program, each
 * of the others sets the number of rows that it has.
 */

#include "config.h"

#include "alternatives.h"

#include <glib/gi18n-lib.h>

#include "section.h"

enum { COLUMN_LAYOUT, COLUMN_SHEETS, COLUMN_SIZE, COLUMN_PIECES, COLUMN_SCRAP, N_COLUMNS };

struct _TrAlternatives
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *box;
  GtkWidget *list;
  GtkWidget *size_title;

  /* Owned */
  GtkSizeGroup *columns[N_COLUMNS];

  /* State: what the list shows */
  int n_listed;
  int rows[TR_MAX_ALTERNATIVES + 1];
};

enum { CHOSEN, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrAlternatives, tr_alternatives, GTK_TYPE_WIDGET)

static GtkWidget *
new_columns (TrAlternatives  *self,
             GtkWidget      **labels)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 18);

  for (guint i = 0; i < N_COLUMNS; i++)
    {
      labels[i] = tr_figure_label_new (-1);
      gtk_size_group_add_widget (self->columns[i], labels[i]);
      if (i == COLUMN_LAYOUT)
        gtk_label_set_xalign (GTK_LABEL (labels[i]), 0);
      gtk_box_append (GTK_BOX (box), labels[i]);
    }
  gtk_widget_set_margin_start (box, 6);
  gtk_widget_set_margin_end (box, 6);
  gtk_widget_set_margin_top (box, 3);
  gtk_widget_set_margin_bottom (box, 3);

  return box;
}

static GtkWidget *
new_alternative_row (TrAlternatives *self)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *labels[N_COLUMNS];

  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), new_columns (self, labels));

  return row;
}

static GtkWidget *
new_best_row (void)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *label = tr_words_label_new (NULL);

  tr_words_label_set (label, _("The best that fits"));
  gtk_widget_set_margin_start (label, 6);
  gtk_widget_set_margin_top (label, 3);
  gtk_widget_set_margin_bottom (label, 3);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, _("The best that fits"), -1);

  return row;
}

static GtkWidget *
new_titles (TrAlternatives *self)
{
  const char *const titles[N_COLUMNS] = { _("layout"), _("sheets"), "", _("pieces"), _("scrap") };
  GtkWidget *labels[N_COLUMNS];
  GtkWidget *box = new_columns (self, labels);

  for (guint i = 0; i < N_COLUMNS; i++)
    {
      gtk_label_set_text (GTK_LABEL (labels[i]), titles[i]);
      gtk_widget_add_css_class (labels[i], "dim-label");
    }
  self->size_title = labels[COLUMN_SIZE];

  return box;
}

/* Takes texts and name; the name says a row to those who cannot see the columns. */
static void
show_alternative (TrAlternatives  *self,
                  int              index,
                  char           **texts,
                  char            *name)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), index);
  GtkWidget *label = gtk_widget_get_first_child (gtk_list_box_row_get_child (row));
  g_autofree char *own = name;

  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, own, -1);
  for (guint i = 0; i < N_COLUMNS; i++, label = gtk_widget_get_next_sibling (label))
    tr_figure_label_take (label, texts[i]);
  g_free (texts);
}

static char **
dup_columns (const TrAlternative *alternative,
             const TrReader      *reader)
{
  g_autofree char *length = tr_words_length_number (reader, alternative->length_mm);
  g_autofree char *width = tr_words_length_number (reader, alternative->width_mm);
  char **texts = g_new0 (char *, N_COLUMNS + 1);

  texts[COLUMN_LAYOUT] = g_strdup_printf ("%d × %d", alternative->rows, alternative->per_row);
  texts[COLUMN_SHEETS] = g_strdup_printf ("%d", alternative->sheets);
  texts[COLUMN_SIZE] = g_strdup_printf ("%s × %s", length, width);
  texts[COLUMN_PIECES] = tr_words_count (reader, alternative->pieces_cut);
  texts[COLUMN_SCRAP] = tr_words_percent (reader, alternative->scrap_percent);

  return texts;
}

static char *
dup_alternative_name (const TrAlternative *alternative,
                      const TrReader      *reader)
{
  g_autofree char *size = tr_words_area_size (reader, alternative->length_mm, alternative->width_mm);
  g_autofree char *pieces = tr_words_count (reader, alternative->pieces_cut);
  g_autofree char *scrap = tr_words_percent (reader, alternative->scrap_percent);

  return g_strdup_printf (_("%d rows of %d; sheets: %d, %s; pieces: %s; scrap %s"),
                          alternative->rows, alternative->per_row, alternative->sheets, size, pieces, scrap);
}

static void
resize_alternatives (TrAlternatives *self,
                     int             n)
{
  while (self->n_listed < n)
    {
      gtk_list_box_append (GTK_LIST_BOX (self->list), new_alternative_row (self));
      self->n_listed++;
    }
  while (self->n_listed > n)
    gtk_list_box_remove (GTK_LIST_BOX (self->list),
                         GTK_WIDGET (gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), --self->n_listed)));
}

static int
find_chosen (const TrDoughFigures *figures)
{
  const TrSheet *sheet = &figures->sheet;

  if (figures->dough->cut->rows == 0)
    return 0;
  for (guint i = 0; i < sheet->n_alternatives; i++)
    if (sheet->alternatives[i].rows == sheet->rows && sheet->alternatives[i].sheets == sheet->sheets &&
        sheet->alternatives[i].per_row == sheet->per_row)
      return (int) i + 1;

  return -1;
}

void
tr_alternatives_refresh (TrAlternatives       *self,
                         const TrDoughFigures *figures,
                         const TrReader       *reader)
{
  g_return_if_fail (TR_IS_ALTERNATIVES (self));

  gtk_widget_set_visible (GTK_WIDGET (self), figures->has_sheet && figures->sheet.n_alternatives > 0);
  if (!figures->has_sheet || figures->dough->cut == NULL)
    return;

  const TrSheet *sheet = &figures->sheet;

  resize_alternatives (self, (int) sheet->n_alternatives + 1);
  for (guint i = 0; i < sheet->n_alternatives; i++)
    {
      self->rows[i + 1] = sheet->alternatives[i].rows;
      show_alternative (self, (int) i + 1, dup_columns (&sheet->alternatives[i], reader),
                        dup_alternative_name (&sheet->alternatives[i], reader));
    }
  gtk_label_set_text (GTK_LABEL (self->size_title), tr_words_length_unit (reader));

  int chosen = find_chosen (figures);

  gtk_list_box_select_row (GTK_LIST_BOX (self->list),
                           chosen >= 0 ? gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), chosen) : NULL);
}

static void
activated_cb (GtkListBox     *list,
              GtkListBoxRow  *row,
              TrAlternatives *self)
{
  g_signal_emit (self, signals[CHOSEN], 0, self->rows[gtk_list_box_row_get_index (row)]);
}

static void
tr_alternatives_dispose (GObject *object)
{
  TrAlternatives *self = TR_ALTERNATIVES (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  for (guint i = 0; i < N_COLUMNS; i++)
    g_clear_object (&self->columns[i]);

  G_OBJECT_CLASS (tr_alternatives_parent_class)->dispose (object);
}

static void
tr_alternatives_class_init (TrAlternativesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_alternatives_dispose;
  signals[CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_INT);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_alternatives_init (TrAlternatives *self)
{
  for (guint i = 0; i < N_COLUMNS; i++)
    self->columns[i] = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  self->list = gtk_list_box_new ();
  gtk_widget_add_css_class (self->list, "plain");
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_SINGLE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Other ways to lay it out"), -1);
  gtk_list_box_append (GTK_LIST_BOX (self->list), new_best_row ());
  self->n_listed = 1;
  g_signal_connect_object (self->list, "row-activated", G_CALLBACK (activated_cb), self, 0);

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self->box), new_titles (self));
  gtk_box_append (GTK_BOX (self->box), self->list);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
tr_alternatives_new (void)
{
  return g_object_new (TR_TYPE_ALTERNATIVES, NULL);
}
