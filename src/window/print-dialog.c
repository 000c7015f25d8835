/* print-dialog.c: which bench cards, on which paper, and what to do with them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The boxes are the choice; "This dough" and "All doughs" only tick them.
 */

#include "config.h"

#include "print-dialog.h"

#include <glib/gi18n-lib.h>

#include "actions.h"
#include "held-viewports.h"

struct _TrPrintDialog
{
  GtkWindow parent_instance;

  /* Borrowed References */
  GtkWidget *list;
  GtkWidget *quick;
  GtkWidget *count;
  GtkWidget *ways[3];            /* by TrPrintWay */
  GtkDropDown *paper;

  /* Owned References */
  TrFigures *figures;
  char *name;
  GPtrArray *boxes;              /* GtkCheckButton, borrowed, one a dough */

  /* State */
  TrReader reader;
  guint dough;
};

enum { CHOSEN, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrPrintDialog, tr_print_dialog, GTK_TYPE_WINDOW)

static const char *
get_dough_name (TrPrintDialog *self,
                guint          index)
{
  return tr_figures_get_dough (self->figures, index)->dough->name;
}

/* (element-type guint) */
static GArray *
new_chosen (TrPrintDialog *self)
{
  GArray *chosen = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < self->boxes->len; i++)
    if (gtk_check_button_get_active (g_ptr_array_index (self->boxes, i)))
      g_array_append_val (chosen, i);

  return chosen;
}

TrPaperJob *
tr_print_dialog_new_job (TrPrintDialog *self)
{
  g_return_val_if_fail (TR_IS_PRINT_DIALOG (self), NULL);

  g_autoptr (GArray) chosen = new_chosen (self);
  TrPaperSize size = gtk_drop_down_get_selected (self->paper) == 1 ? TR_PAPER_LETTER : TR_PAPER_A4;

  if (chosen->len == 0)
    return NULL;

  const guint *doughs = (const guint *) (gconstpointer) chosen->data;
  const char *name = chosen->len == 1 ? get_dough_name (self, doughs[0]) : self->name;

  return tr_paper_job_new_cards (self->figures, doughs, chosen->len, &self->reader, size, name);
}

static char *
dup_count (TrPrintDialog *self,
           guint          n_chosen)
{
  g_autoptr (TrPaperJob) job = NULL;
  guint n_pages;

  if (n_chosen == 0)
    return g_strdup (_("No dough is ticked"));

  job = tr_print_dialog_new_job (self);
  n_pages = tr_pages_count (tr_paper_job_get_pages (job));

  return g_strdup_printf (ngettext ("%u page", "%u pages", n_pages), n_pages);
}

static void
show_count (TrPrintDialog *self)
{
  g_autoptr (GArray) chosen = new_chosen (self);
  g_autofree char *text = dup_count (self, chosen->len);

  gtk_label_set_text (GTK_LABEL (self->count), text);
  for (guint i = 0; i < G_N_ELEMENTS (self->ways); i++)
    gtk_widget_set_sensitive (self->ways[i], chosen->len > 0);
}

void
tr_print_dialog_set_dough (TrPrintDialog *self,
                           guint          dough,
                           gboolean       is_chosen)
{
  g_return_if_fail (TR_IS_PRINT_DIALOG (self));
  g_return_if_fail (dough < self->boxes->len);

  gtk_check_button_set_active (g_ptr_array_index (self->boxes, dough), is_chosen);
}

static void
this_dough_cb (TrPrintDialog *self)
{
  for (guint i = 0; i < self->boxes->len; i++)
    tr_print_dialog_set_dough (self, i, i == self->dough);
}

static void
all_doughs_cb (TrPrintDialog *self)
{
  for (guint i = 0; i < self->boxes->len; i++)
    tr_print_dialog_set_dough (self, i, TRUE);
}

static void
way_clicked_cb (GtkWidget     *button,
                TrPrintDialog *self)
{
  TrPrintWay way = TR_PRINT_WAY_PREVIEW;

  while (way < TR_PRINT_WAY_EXPORT && self->ways[way] != button)
    way++;

  g_object_ref (self);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  g_signal_emit (self, signals[CHOSEN], 0, (int) way);
  gtk_window_destroy (GTK_WINDOW (self));
  g_object_unref (self);
}

/* Building *****************************************************************/

static void
tr_print_dialog_dispose (GObject *object)
{
  TrPrintDialog *self = TR_PRINT_DIALOG (object);

  g_ptr_array_set_size (self->boxes, 0);

  G_OBJECT_CLASS (tr_print_dialog_parent_class)->dispose (object);
}

static void
tr_print_dialog_finalize (GObject *object)
{
  TrPrintDialog *self = TR_PRINT_DIALOG (object);

  g_clear_pointer (&self->boxes, g_ptr_array_unref);
  g_clear_pointer (&self->figures, tr_figures_unref);
  g_clear_pointer (&self->name, g_free);

  G_OBJECT_CLASS (tr_print_dialog_parent_class)->finalize (object);
}

static void
tr_print_dialog_class_init (TrPrintDialogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_print_dialog_dispose;
  G_OBJECT_CLASS (klass)->finalize = tr_print_dialog_finalize;
  signals[CHOSEN] = g_signal_new ("chosen", TR_TYPE_PRINT_DIALOG, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT);
}

static void
add_quick (TrPrintDialog *self,
           const char    *label,
           GCallback      callback)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (label);

  tr_name_by_mnemonic (button, label);
  g_signal_connect_swapped (button, "clicked", callback, self);
  gtk_box_append (GTK_BOX (self->quick), button);
}

static GtkWidget *
new_paper_row (TrPrintDialog *self)
{
  const char *const papers[] = { _("A4"), _("Letter"), NULL };
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *label = gtk_label_new_with_mnemonic (_("_Paper"));
  GtkWidget *drop_down = gtk_drop_down_new_from_strings (papers);

  self->paper = GTK_DROP_DOWN (drop_down);
  self->count = gtk_label_new ("");
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), drop_down);
  tr_name_by_mnemonic (drop_down, _("_Paper"));
  gtk_widget_add_css_class (self->count, "dim-label");
  gtk_widget_set_hexpand (self->count, TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->count), 1);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), drop_down);
  gtk_box_append (GTK_BOX (row), self->count);
  g_signal_connect_swapped (drop_down, "notify::selected", G_CALLBACK (show_count), self);

  return row;
}

static GtkWidget *
new_ways_row (TrPrintDialog *self)
{
  /* In the order of TrPrintWay. */
  const char *const labels[] = { _("Pre_view"), _("_Print…"), _("_Export…") };
  static const TrPrintWay order[] = { TR_PRINT_WAY_EXPORT, TR_PRINT_WAY_PREVIEW, TR_PRINT_WAY_PRINT };
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_widget_set_halign (row, GTK_ALIGN_END);
  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    {
      GtkWidget *button = gtk_button_new_with_mnemonic (labels[order[i]]);

      tr_name_by_mnemonic (button, labels[order[i]]);
      self->ways[order[i]] = button;
      g_signal_connect (button, "clicked", G_CALLBACK (way_clicked_cb), self);
      gtk_box_append (GTK_BOX (row), button);
    }
  gtk_widget_add_css_class (self->ways[TR_PRINT_WAY_PRINT], "suggested-action");
  gtk_window_set_default_widget (GTK_WINDOW (self), self->ways[TR_PRINT_WAY_PRINT]);

  return row;
}

static GtkWidget *
new_list (TrPrintDialog *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->list = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Bench cards of"), -1);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), 360);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->list);
  gtk_widget_set_vexpand (scrolled, TRUE);

  return scrolled;
}

static void
tr_print_dialog_init (TrPrintDialog *self)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *title = gtk_label_new (_("Bench cards of"));

  tr_hold_viewports (GTK_WINDOW (self));
  self->boxes = g_ptr_array_new ();
  self->quick = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  add_quick (self, _("_This dough"), G_CALLBACK (this_dough_cb));
  add_quick (self, _("_All doughs"), G_CALLBACK (all_doughs_cb));
  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_add_css_class (title, "heading");
  gtk_widget_add_css_class (column, "question");
  gtk_box_append (GTK_BOX (column), title);
  gtk_box_append (GTK_BOX (column), new_list (self));
  gtk_box_append (GTK_BOX (column), self->quick);
  gtk_box_append (GTK_BOX (column), new_paper_row (self));
  gtk_box_append (GTK_BOX (column), new_ways_row (self));
  gtk_window_set_child (GTK_WINDOW (self), column);
  gtk_window_set_title (GTK_WINDOW (self), _("Print bench cards"));
  gtk_window_set_titlebar (GTK_WINDOW (self), gtk_header_bar_new ());
  gtk_window_set_default_size (GTK_WINDOW (self), 380, -1);
  gtk_widget_add_controller (GTK_WIDGET (self), tr_actions_new_close_key ());
}

static void
add_box (TrPrintDialog *self,
         guint          index)
{
  g_autofree char *name = tr_words_one_line (get_dough_name (self, index));
  GtkWidget *box = gtk_check_button_new (), *label = gtk_label_new (name);

  /* However long a name is, the dialog keeps its width. */
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_tooltip_text (box, name);
  gtk_check_button_set_child (GTK_CHECK_BUTTON (box), label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (box), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (box), index == self->dough);
  g_signal_connect_swapped (box, "toggled", G_CALLBACK (show_count), self);
  gtk_box_append (GTK_BOX (self->list), box);
  g_ptr_array_add (self->boxes, box);
}

GtkWidget *
tr_print_dialog_new (GtkWindow       *parent,
                     const TrFigures *figures,
                     guint            dough,
                     const TrReader  *reader,
                     TrPaperSize      size,
                     const char      *name)
{
  g_return_val_if_fail (parent == NULL || GTK_IS_WINDOW (parent), NULL);
  g_return_val_if_fail (figures != NULL && dough < figures->doughs->len, NULL);
  g_return_val_if_fail (reader != NULL && name != NULL, NULL);

  TrPrintDialog *self = g_object_new (TR_TYPE_PRINT_DIALOG,
                                      "transient-for", parent,
                                      "modal", parent != NULL,
                                      "destroy-with-parent", TRUE,
                                      NULL);

  self->figures = tr_figures_ref (figures);
  self->reader = *reader;
  self->name = g_strdup (name);
  self->dough = dough;
  for (guint i = 0; i < figures->doughs->len; i++)
    add_box (self, i);
  gtk_widget_set_visible (self->quick, figures->doughs->len > 1);
  gtk_drop_down_set_selected (self->paper, size == TR_PAPER_LETTER ? 1 : 0);
  show_count (self);

  return GTK_WIDGET (self);
}
