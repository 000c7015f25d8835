/* sequence-finder.c: folds that give the wanted layers, to choose from
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every list is looked at, which takes milliseconds; so it is done anew whenever
 * the dough, the bench or the wish changes, and never while nobody sees it.
 */

#include "config.h"

#include "sequence-finder.h"

#include <glib/gi18n-lib.h>

#include "../calc/search.h"
#include "../words/found.h"
#include "actions.h"
#include "section.h"
#include "sequence-row.h"

#define SHOWN_AT_ONCE 8

enum { BY_LAYERS, BY_UM, N_WISHES };
/* A start that says what is meant: usual layers, usual thickness; common practice. */
static const TrRange starts[N_WISHES] = { { 20, 40 }, { 20, 60 } };

struct _TrSequenceFinder
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *box;

  /* Borrowed References */
  GtkWidget *wish, *from, *to, *turns, *folds, *hours;
  GtkWidget *problem, *found, *rows, *more;

  /* Owned */
  GPtrArray *sequences;          /* TrSequence */

  /* State */
  guint n_shown;
  guint is_setting : 1;
};

G_DEFINE_FINAL_TYPE (TrSequenceFinder, tr_sequence_finder, GTK_TYPE_WIDGET)

static TrPage *
get_page (TrSequenceFinder *self)
{
  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);

  return page != NULL && tr_page_get_figures (page) != NULL ? page : NULL;
}

/* The wish ******************************************************************/

static gboolean
read_entry (TrSequenceFinder *self,
            GtkWidget        *entry,
            TrQuantity        quantity,
            double           *value)
{
  g_autoptr (GError) error = NULL;
  const char *text = gtk_editable_get_text (GTK_EDITABLE (entry));

  gtk_widget_remove_css_class (entry, "error");
  if (*text == '\0' && entry == self->hours)
    {
      *value = NAN;
      return TRUE;
    }
  if (tr_words_read (tr_page_get_reader (get_page (self)), quantity, text, value, &error) && *value > 0)
    return TRUE;

  gtk_widget_add_css_class (entry, "error");
  tr_words_label_take (self->problem, error != NULL ? g_strdup (error->message)
                                                    : g_strdup_printf (_("“%s” is not above 0; such a number is expected."), text));

  return FALSE;
}

static gboolean
read_wish (TrSequenceFinder *self,
           TrSearch         *search)
{
  double hours;

  tr_search_init (search);
  tr_words_label_set (self->problem, NULL);
  search->by_um = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->wish)) == BY_UM;
  search->max_turns = (guint) gtk_spin_button_get_value_as_int (GTK_SPIN_BUTTON (self->turns));
  search->max_fold = (guint) gtk_spin_button_get_value_as_int (GTK_SPIN_BUTTON (self->folds));
  if (!read_entry (self, self->from, TR_QUANTITY_NUMBER, &search->wish.min)
      || !read_entry (self, self->to, TR_QUANTITY_NUMBER, &search->wish.max)
      || !read_entry (self, self->hours, TR_QUANTITY_NUMBER, &hours))
    return FALSE;
  search->max_minutes = hours * 60;
  if (search->wish.max >= search->wish.min)
    return TRUE;

  gtk_widget_add_css_class (self->to, "error");
  tr_words_label_set (self->problem, _("The second number is smaller than the first; the range has to go up."));

  return FALSE;
}

/* What was found ************************************************************/

static void
used_cb (TrSequenceRow    *row,
         TrSequenceFinder *self)
{
  TrPage *page = get_page (self);
  guint index = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (row), "index"));
  const TrSequence *sequence;
  g_autofree char *label = NULL, *name = NULL;

  if (page == NULL || index >= self->sequences->len)
    return;

  sequence = g_ptr_array_index (self->sequences, index);
  name = tr_words_sequence (sequence);
  label = g_strdup_printf (_("use %s"), name);

  TrTrial *draft = tr_document_draft (tr_page_get_document (page));

  /* Its button cannot be pressed again and lets go of the focus. */
  if (!gtk_widget_child_focus (self->rows, GTK_DIR_TAB_FORWARD))
    gtk_widget_child_focus (self->rows, GTK_DIR_TAB_BACKWARD);
  tr_sequence_apply (sequence, tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page)));
  tr_page_commit (page, draft, label, NULL, "/turns");
}

static GtkWidget *
need_row (TrSequenceFinder *self,
          guint             index)
{
  GtkWidget *child = gtk_widget_get_first_child (self->rows);

  for (guint i = 0; child != NULL && i < index; i++)
    child = gtk_widget_get_next_sibling (child);
  if (child != NULL)
    return child;

  child = tr_sequence_row_new ();
  g_object_set_data (G_OBJECT (child), "index", GUINT_TO_POINTER (index));
  g_signal_connect_object (child, "used", G_CALLBACK (used_cb), self, 0);
  gtk_box_append (GTK_BOX (self->rows), child);

  return child;
}

static void
show_rows (TrSequenceFinder *self,
           TrPage           *page)
{
  guint n = MIN (self->n_shown, self->sequences->len);
  GtkWidget *child;

  for (guint i = 0; i < n; i++)
    {
      child = need_row (self, i);
      tr_sequence_row_show (TR_SEQUENCE_ROW (child), tr_page_get_figures (page), g_ptr_array_index (self->sequences, i),
                            tr_page_get_reader (page));
    }
  while ((child = gtk_widget_get_last_child (self->rows)) != NULL
         && GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (child), "index")) >= n)
    gtk_box_remove (GTK_BOX (self->rows), child);
  gtk_widget_set_visible (self->more, n < self->sequences->len);
}

void
tr_sequence_finder_refresh (TrSequenceFinder *self)
{
  g_return_if_fail (TR_IS_SEQUENCE_FINDER (self));

  TrPage *page = get_page (self);
  g_autoptr (GPtrArray) old = NULL;
  TrSearch search;

  if (page == NULL || !gtk_widget_get_mapped (GTK_WIDGET (self)) || !read_wish (self, &search))
    return;

  const TrDoughFigures *figures = tr_page_get_figures (page);
  int blocks = figures->dough->lock_in != NULL ? MAX (figures->dough->lock_in->blocks, 1) : 1;

  /* The rows point into it until they are shown anew. */
  old = g_steal_pointer (&self->sequences);
  self->sequences = tr_search_sequences (figures, &search);
  tr_words_label_take (self->found, search.by_um && !figures->has_sheet
                                    ? g_strdup (_("Without a cut it is not known how thin the layers get: wish for a number of them."))
                                    : tr_words_sequences_found (tr_page_get_reader (page), self->sequences, blocks));
  show_rows (self, page);
}

static void
wish_changed_cb (TrSequenceFinder *self)
{
  if (self->is_setting)
    return;

  self->n_shown = SHOWN_AT_ONCE;
  tr_sequence_finder_refresh (self);
}

static void
set_start (TrSequenceFinder *self,
           guint             wish)
{
  g_autofree char *from = g_strdup_printf ("%.0f", starts[wish].min), *to = g_strdup_printf ("%.0f", starts[wish].max);

  self->is_setting = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->from), from);
  gtk_editable_set_text (GTK_EDITABLE (self->to), to);
  self->is_setting = FALSE;
}

static void
wish_chosen_cb (TrSequenceFinder *self)
{
  set_start (self, gtk_drop_down_get_selected (GTK_DROP_DOWN (self->wish)));
  wish_changed_cb (self);
}

static void
more_clicked_cb (TrSequenceFinder *self)
{
  TrPage *page = get_page (self);

  self->n_shown += 2 * SHOWN_AT_ONCE;
  if (page != NULL)
    show_rows (self, page);
}

static void
tr_sequence_finder_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (tr_sequence_finder_parent_class)->map (widget);

  tr_sequence_finder_refresh (TR_SEQUENCE_FINDER (widget));
}

/* Building ******************************************************************/

static void
add_control (GtkWidget  *row,
             const char *title,
             GtkWidget  *control)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3), *label = gtk_label_new_with_mnemonic (title);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "dim-label");
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), control);
  tr_name_by_mnemonic (control, title);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), control);
  tr_form_add (row, box);
}

static GtkWidget *
new_entry (TrSequenceFinder *self)
{
  GtkWidget *entry = gtk_entry_new ();

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 5);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 6);
  gtk_editable_set_alignment (GTK_EDITABLE (entry), 1);
  tr_entry_set_tabular (GTK_ENTRY (entry));
  g_signal_connect_object (entry, "changed", G_CALLBACK (wish_changed_cb), self, G_CONNECT_SWAPPED);

  return entry;
}

static GtkWidget *
new_spin (TrSequenceFinder *self,
          double            low,
          double            high,
          double            value)
{
  GtkWidget *spin = gtk_spin_button_new_with_range (low, high, 1);

  gtk_spin_button_set_value (GTK_SPIN_BUTTON (spin), value);
  g_signal_connect_object (spin, "value-changed", G_CALLBACK (wish_changed_cb), self, G_CONNECT_SWAPPED);

  return spin;
}

static GtkWidget *
new_wish (TrSequenceFinder *self)
{
  const char *const wishes[] = { _("Fat layers"), _("Fat thickness, µm"), NULL };
  GtkWidget *row = tr_fields_row_new ();

  self->wish = gtk_drop_down_new_from_strings (wishes);
  self->from = new_entry (self);
  self->to = new_entry (self);
  self->turns = new_spin (self, 1, TR_SEARCH_MAX_TURNS, 4);
  self->folds = new_spin (self, 2, TR_SEARCH_MAX_FOLD, 4);
  self->hours = new_entry (self);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->hours), _("any"));
  add_control (row, _("_Wanted"), self->wish);
  add_control (row, _("F_rom"), self->from);
  add_control (row, _("_To"), self->to);
  add_control (row, _("T_urns, at most"), self->turns);
  add_control (row, _("Fol_ds in, at most"), self->folds);
  add_control (row, _("_Hours, at most"), self->hours);
  gtk_widget_set_tooltip_text (self->turns, _("Each is followed by a rest: as many rests"));
  gtk_widget_set_tooltip_text (self->hours, _("Turns and rests together; empty: any"));
  g_signal_connect_object (self->wish, "notify::selected", G_CALLBACK (wish_chosen_cb), self, G_CONNECT_SWAPPED);
  set_start (self, BY_LAYERS);

  return row;
}

static void
tr_sequence_finder_dispose (GObject *object)
{
  g_clear_pointer (&TR_SEQUENCE_FINDER (object)->box, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_sequence_finder_parent_class)->dispose (object);
}

static void
tr_sequence_finder_finalize (GObject *object)
{
  g_clear_pointer (&TR_SEQUENCE_FINDER (object)->sequences, g_ptr_array_unref);

  G_OBJECT_CLASS (tr_sequence_finder_parent_class)->finalize (object);
}

static void
tr_sequence_finder_class_init (TrSequenceFinderClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_sequence_finder_dispose;
  G_OBJECT_CLASS (klass)->finalize = tr_sequence_finder_finalize;
  GTK_WIDGET_CLASS (klass)->map = tr_sequence_finder_map;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_sequence_finder_init (TrSequenceFinder *self)
{
  self->sequences = g_ptr_array_new ();
  self->n_shown = SHOWN_AT_ONCE;
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_widget_set_margin_top (self->box, 6);
  gtk_box_append (GTK_BOX (self->box), new_wish (self));
  self->problem = tr_words_label_new ("error");
  self->found = tr_words_label_new (NULL);
  self->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  self->more = gtk_button_new_with_label (_("Show more"));
  gtk_widget_set_halign (self->more, GTK_ALIGN_START);
  gtk_widget_set_visible (self->more, FALSE);
  g_signal_connect_object (self->more, "clicked", G_CALLBACK (more_clicked_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self->box), self->problem);
  gtk_box_append (GTK_BOX (self->box), self->found);
  gtk_box_append (GTK_BOX (self->box), self->rows);
  gtk_box_append (GTK_BOX (self->box), self->more);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
tr_sequence_finder_new (void)
{
  return g_object_new (TR_TYPE_SEQUENCE_FINDER, NULL);
}
