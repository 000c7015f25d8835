/* comparison-cells.c: what stands in the cells of a comparison
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The scale and the spread of a row are found once for all its cells.
 */

#include "config.h"

#include "comparison-cells.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "../words/comparison.h"
#include "figure-cell.h"
#include "figure-item.h"
#include "section.h"

#define NAME_CHARS 16

typedef struct { TrCellScale scale; TrSpread spread; } Row;

struct _TrComparisonCells
{
  /* Owned */
  GHashTable *bound;             /* GtkListItem: those that stand for a row now */
  TrFigures *figures;            /* what is shown; NULL: nothing yet */
  Row *rows;                     /* as tr_comparables_get_all has them */

  /* State */
  int reference;                 /* dough; -1: none */
  gboolean is_by_spread;
  const TrComparable *order;     /* of the doughs; NULL: none */
  gboolean is_least_first;
  TrReader reader;
};

/* What a column is of. */
typedef enum { OF_NAMES, OF_SPREADS, OF_DOUGH } Kind;
typedef struct { TrComparisonCells *cells; Kind kind; char *dough; } Column;

TrComparisonCells *
tr_comparison_cells_new (void)
{
  TrComparisonCells *self = g_new0 (TrComparisonCells, 1);

  self->bound = g_hash_table_new (NULL, NULL);
  self->reference = -1;
  tr_reader_init_plain (&self->reader, TR_UNITS_METRIC);

  return self;
}

void
tr_comparison_cells_free (TrComparisonCells *self)
{
  if (self == NULL)
    return;

  g_hash_table_unref (self->bound);
  g_clear_pointer (&self->figures, tr_figures_unref);
  g_free (self->rows);
  g_free (self);
}

char *
tr_comparison_dup_dough_name (const TrTrial *trial,
                              guint          dough)
{
  g_autofree char *letter = tr_words_letter (dough);
  g_autofree char *name = tr_words_one_line (tr_trial_get_dough (trial, dough)->name);

  return g_strdup_printf ("%s %s", letter, name);
}

/* What stands there */

static const Row *
get_row (TrComparisonCells  *self,
         const TrComparable *comparable)
{
  guint n;

  return &self->rows[comparable - tr_comparables_get_all (&n)];
}

static void
show_name (TrComparisonCells *self,
           GtkWidget         *cell,
           TrFigureItem      *item)
{
  const TrComparable *comparable = tr_figure_item_get_comparable (item);
  GtkWidget *name = gtk_widget_get_first_child (cell), *unit = gtk_widget_get_last_child (cell);
  g_autofree char *full = NULL, *shown = NULL;

  if (comparable == NULL)
    {
      gtk_label_set_text (GTK_LABEL (name), tr_words_figure_group (tr_figure_item_get_group (item)));
      gtk_widget_add_css_class (name, "heading");
      gtk_label_set_text (GTK_LABEL (unit), "");
      return;
    }

  /* Out of its group it has to say which it is. */
  full = tr_words_comparable_in_full (comparable);
  shown = g_strconcat (self->is_by_spread ? full : tr_words_comparable (comparable),
                       comparable != self->order ? "" : self->is_least_first ? " ▴" : " ▾", NULL);
  gtk_label_set_text (GTK_LABEL (name), shown);
  /* It asks the display each time. */
  if (g_strcmp0 (gtk_widget_get_tooltip_text (name), full) != 0)
    gtk_widget_set_tooltip_text (name, full);
  gtk_widget_remove_css_class (name, "heading");
  gtk_label_set_text (GTK_LABEL (unit), tr_words_comparable_unit (&self->reader, comparable, self->figures->trial->bench));
}

static void
show_spread (TrComparisonCells *self,
             GtkWidget         *cell,
             TrFigureItem      *item)
{
  const TrComparable *comparable = tr_figure_item_get_comparable (item);
  TrSpread spread = { .relative = NAN };

  if (comparable != NULL)
    spread = get_row (self, comparable)->spread;
  if (!isfinite (spread.relative))
    tr_figure_label_take (cell, g_strdup (""));
  else if (spread.is_equal)
    tr_figure_label_take (cell, g_strdup ("="));
  else
    {
      g_autofree char *number = tr_words_number (&self->reader, 100 * spread.relative, 0);

      tr_figure_label_take (cell, g_strdup_printf ("%s\u00a0%%", number));
    }
}

static void
show_figure (TrComparisonCells *self,
             GtkWidget         *cell,
             TrFigureItem      *item,
             const char        *id)
{
  const TrComparable *comparable = tr_figure_item_get_comparable (item);
  int dough = tr_trial_find_dough (self->figures->trial, id);
  g_autofree char *name = NULL;
  TrFigureContent content = { .comparable = comparable, .reference = NAN, .bench = self->figures->trial->bench };

  if (comparable == NULL || dough < 0)
    {
      tr_figure_cell_show (TR_FIGURE_CELL (cell), NULL, &self->reader);
      return;
    }

  name = tr_comparison_dup_dough_name (self->figures->trial, (guint) dough);
  content.dough = name;
  content.value = tr_comparable_get (comparable, tr_figures_get_dough (self->figures, (guint) dough));
  content.has_band = tr_comparable_get_band (comparable, tr_figures_get_dough (self->figures, (guint) dough), &content.band);
  if (self->reference >= 0 && self->reference != dough)
    content.reference = tr_comparable_get (comparable, tr_figures_get_dough (self->figures, (guint) self->reference));
  content.scale = get_row (self, comparable)->scale;
  content.is_equal = get_row (self, comparable)->spread.is_equal;
  tr_figure_cell_show (TR_FIGURE_CELL (cell), &content, &self->reader);
}

static void
show_cell (GtkListItem  *list_item,
           const Column *column)
{
  GtkWidget *cell = gtk_list_item_get_child (list_item);
  TrFigureItem *item = gtk_list_item_get_item (list_item);

  if (column->cells->figures == NULL || cell == NULL || item == NULL)
    return;

  if (column->kind == OF_NAMES)
    show_name (column->cells, cell, item);
  else if (column->kind == OF_SPREADS)
    show_spread (column->cells, cell, item);
  else
    show_figure (column->cells, cell, item, column->dough);
}

static void
find_rows (TrComparisonCells *self,
           const GArray      *doughs)
{
  guint n;
  const TrComparable *comparables = tr_comparables_get_all (&n);

  g_free (self->rows);
  self->rows = g_new0 (Row, n);
  for (guint i = 0; i < n; i++)
    {
      tr_cell_scale_init (&self->rows[i].scale, &comparables[i], self->figures, (const guint *) doughs->data, doughs->len);
      tr_comparable_get_spread (&comparables[i], self->figures, (const guint *) doughs->data, doughs->len, &self->rows[i].spread);
    }
}

void
tr_comparison_cells_show (TrComparisonCells        *self,
                          const TrFigures          *figures,
                          const GArray             *doughs,
                          const TrComparisonChoice *choice,
                          const TrReader           *reader)
{
  TrFigures *own = tr_figures_ref (figures);
  GHashTableIter iter;
  gpointer list_item, column;

  g_clear_pointer (&self->figures, tr_figures_unref);
  self->figures = own;
  self->reader = *reader;
  self->reference = choice->reference != NULL ? tr_trial_find_dough (figures->trial, choice->reference) : -1;
  self->is_by_spread = choice->is_by_spread;
  self->order = choice->order;
  self->is_least_first = choice->is_least_first;
  find_rows (self, doughs);

  g_hash_table_iter_init (&iter, self->bound);
  while (g_hash_table_iter_next (&iter, &list_item, &column))
    show_cell (list_item, column);
}

guint
tr_comparison_cells_find_row (TrComparisonCells *self,
                              GtkWidget         *widget)
{
  GHashTableIter iter;
  gpointer list_item;

  g_hash_table_iter_init (&iter, self->bound);
  while (g_hash_table_iter_next (&iter, &list_item, NULL))
    {
      GtkWidget *cell = gtk_list_item_get_child (list_item);

      /* Or the room round it, which is GTK's. */
      if (widget == cell || widget == gtk_widget_get_parent (cell) || gtk_widget_is_ancestor (widget, cell))
        return gtk_list_item_get_position (list_item);
    }

  return GTK_INVALID_LIST_POSITION;
}

/* Columns */

static void
free_column (gpointer  data,
             GClosure *closure)
{
  Column *column = data;

  g_free (column->dough);
  g_free (column);
}

static GtkWidget *
new_name_cell (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12), *name = gtk_label_new (""), *unit = gtk_label_new ("");

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_wrap (GTK_LABEL (name), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (name), NAME_CHARS);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_widget_add_css_class (unit, "dim-label");
  gtk_box_append (GTK_BOX (box), name);
  gtk_box_append (GTK_BOX (box), unit);

  return box;
}

static void
setup_cb (GtkListItemFactory *factory,
          GtkListItem        *item,
          const Column       *column)
{
  GtkWidget *cell;

  if (column->kind == OF_NAMES)
    cell = new_name_cell ();
  else if (column->kind == OF_DOUGH)
    cell = tr_figure_cell_new ();
  else
    {
      cell = tr_figure_label_new (6);
      gtk_widget_add_css_class (cell, "dim-label");
    }
  gtk_list_item_set_child (item, cell);
}

static void
bind_cb (GtkListItemFactory *factory,
         GtkListItem        *item,
         Column             *column)
{
  gboolean is_heading = tr_figure_item_get_comparable (gtk_list_item_get_item (item)) == NULL;

  gtk_list_item_set_selectable (item, !is_heading);
  gtk_list_item_set_activatable (item, !is_heading);
  g_hash_table_insert (column->cells->bound, item, column);
  show_cell (item, column);
}

static void
unbind_cb (GtkListItemFactory *factory,
           GtkListItem        *item,
           const Column       *column)
{
  g_hash_table_remove (column->cells->bound, item);
}

static GtkColumnViewColumn *
new_column (TrComparisonCells *self,
            const char        *title,
            Kind               kind,
            const char        *dough)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  Column *column = g_new0 (Column, 1);

  *column = (Column) { self, kind, g_strdup (dough) };
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), column);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), column);
  /* The last that is used goes with the factory. */
  g_signal_connect_data (factory, "unbind", G_CALLBACK (unbind_cb), column, free_column, 0);

  return gtk_column_view_column_new (title, factory);
}

GtkColumnViewColumn *
tr_comparison_cells_new_name_column (TrComparisonCells *self)
{
  return new_column (self, _("Figure"), OF_NAMES, NULL);
}

GtkColumnViewColumn *
tr_comparison_cells_new_spread_column (TrComparisonCells *self)
{
  return new_column (self, _("Spread"), OF_SPREADS, NULL);
}

GtkColumnViewColumn *
tr_comparison_cells_new_dough_column (TrComparisonCells *self,
                                      const char        *dough)
{
  return new_column (self, "", OF_DOUGH, dough);
}

static void
shorten_below (GtkWidget *header)
{
  for (GtkWidget *child = gtk_widget_get_first_child (header); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      if (GTK_IS_LABEL (child))
        {
          gtk_label_set_ellipsize (GTK_LABEL (child), PANGO_ELLIPSIZE_END);
          gtk_widget_add_css_class (child, "dough-name");
        }
      shorten_below (child);
    }
}

void
tr_comparison_shorten_titles (GtkWidget *view)
{
  shorten_below (gtk_widget_get_first_child (view));
}
