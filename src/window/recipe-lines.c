/* recipe-lines.c: the lines of a recipe, each beside what was understood of it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rows are added some at a time, so that a text of thousands of lines does not
 * hold the window up.
 *
 * Invariant: the rows are of `recipe` and `starts`, and go before they do.
 */

#include "config.h"

#include "recipe-lines.h"

#include <glib/gi18n-lib.h>

#include "recipe-carry.h"
#include "recipe-line-row.h"
#include "section.h"

#define ROWS_AT_ONCE 6

struct _TrRecipeLines
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *share;
  GtkWidget *rows;

  /* Borrowed References */
  TrRecipe *recipe;              /* NULL: none */

  /* Owned References */
  GArray *starts;                /* TrRecipeStart: its lines as they were read */

  /* State */
  TrReader reader;
  guint n_rows;
  guint rows_idle;
};

G_DEFINE_FINAL_TYPE (TrRecipeLines, tr_recipe_lines, GTK_TYPE_WIDGET)

static guint
count_open (const TrRecipe *recipe)
{
  guint n = 0;

  for (guint i = 0; i < recipe->lines->len; i++)
    n += tr_recipe_line_is_clear (tr_recipe_get_line (recipe, i)) ? 0 : 1;

  return n;
}

static void
show_share (TrRecipeLines *self)
{
  guint n_lines, n_understood = tr_recipe_count_understood (self->recipe, &n_lines);
  guint n_open = count_open (self->recipe);
  g_autofree char *share = tr_words_percent (&self->reader, 100.0 * n_understood / MAX (n_lines, 1));
  g_autofree char *understood = g_strdup_printf (ngettext ("%u of %u line understood (%s)", "%u of %u lines understood (%s)", n_lines),
                                                 n_understood, n_lines, share);
  g_autofree char *open = n_open == 0 ? g_strdup (_("Nothing is left to decide."))
                                      : g_strdup_printf (ngettext ("Look at %u line.", "Look at %u lines.", n_open), n_open);

  tr_words_label_take (self->share, g_strdup_printf ("%s. %s", understood, open));
}

/* Rows */

static void
drop_rows (TrRecipeLines *self)
{
  GtkWidget *row;

  g_clear_handle_id (&self->rows_idle, g_source_remove);
  self->n_rows = 0;
  while ((row = gtk_widget_get_first_child (self->rows)) != NULL)
    {
      if (TR_IS_RECIPE_LINE_ROW (row))
        tr_recipe_line_row_detach (TR_RECIPE_LINE_ROW (row));
      gtk_box_remove (GTK_BOX (self->rows), row);
    }
}

static void
add_row (TrRecipeLines *self)
{
  GtkWidget *row = tr_recipe_line_row_new (self->recipe, self->n_rows, &g_array_index (self->starts, TrRecipeStart, self->n_rows), &self->reader);

  if (self->n_rows++ > 0)
    gtk_box_append (GTK_BOX (self->rows), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  g_signal_connect_object (row, "changed", G_CALLBACK (show_share), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self->rows), row);
}

static gboolean
add_rows_cb (gpointer data)
{
  TrRecipeLines *self = data;
  guint n_wanted = self->recipe->lines->len;

  for (guint i = 0; i < ROWS_AT_ONCE && self->n_rows < n_wanted; i++)
    add_row (self);
  if (self->n_rows < n_wanted)
    return G_SOURCE_CONTINUE;
  self->rows_idle = 0;

  return G_SOURCE_REMOVE;
}

/* The widget */

static void
tr_recipe_lines_dispose (GObject *object)
{
  TrRecipeLines *self = TR_RECIPE_LINES (object);
  GtkWidget *child;

  if (self->rows != NULL)
    drop_rows (self);
  self->rows = NULL;
  self->recipe = NULL;
  g_clear_pointer (&self->starts, g_array_unref);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (tr_recipe_lines_parent_class)->dispose (object);
}

static void
tr_recipe_lines_class_init (TrRecipeLinesClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_recipe_lines_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_recipe_lines_init (TrRecipeLines *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  tr_reader_init_plain (&self->reader, TR_UNITS_METRIC);
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 12);
  self->share = tr_words_label_new (NULL);
  self->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_widget_set_parent (self->share, GTK_WIDGET (self));
  gtk_widget_set_parent (self->rows, GTK_WIDGET (self));
}

GtkWidget *
tr_recipe_lines_new (void)
{
  return g_object_new (TR_TYPE_RECIPE_LINES, NULL);
}

void
tr_recipe_lines_set_reader (TrRecipeLines  *self,
                            const TrReader *reader)
{
  g_return_if_fail (TR_IS_RECIPE_LINES (self));
  g_return_if_fail (reader != NULL);

  self->reader = *reader;
}

gboolean
tr_recipe_lines_set_recipe (TrRecipeLines *self,
                            TrRecipe      *recipe,
                            gboolean       keeps)
{
  g_return_val_if_fail (TR_IS_RECIPE_LINES (self), FALSE);

  g_autoptr (GArray) starts = recipe != NULL ? tr_recipe_starts_new (recipe) : NULL;

  gboolean is_kept = self->recipe != NULL && recipe != NULL && keeps && tr_recipe_carry (self->recipe, self->starts, recipe);

  drop_rows (self);
  g_clear_pointer (&self->starts, g_array_unref);
  self->recipe = recipe;
  self->starts = g_steal_pointer (&starts);
  if (recipe == NULL)
    return FALSE;

  show_share (self);
  self->rows_idle = g_idle_add (add_rows_cb, self);

  return is_kept;
}
