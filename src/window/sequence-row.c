/* sequence-row.c: one list of folds that was found
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "sequence-row.h"

#include <glib/gi18n-lib.h>

#include "../picture/found.h"
#include "../words/found.h"
#include "picture-view.h"
#include "section.h"

/* Of the drawing, in lines of text. */
#define LINES_WIDE 12.0
#define LINES_HIGH 5.4

struct _TrSequenceRow
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *box;

  /* Borrowed References */
  GtkWidget *drawing, *name, *folds, *layers, *bench, *time, *breaks, *use;
  const TrSequence *sequence;

  /* Owned */
  TrDoughFigures *figures;
  TrReader reader;
};

enum { SIGNAL_USED, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrSequenceRow, tr_sequence_row, GTK_TYPE_WIDGET)

static void
draw_cb (GtkDrawingArea *drawing,
         cairo_t        *cr,
         int             width,
         int             height,
         gpointer        data)
{
  TrSequenceRow *self = data;
  g_autoptr (TrPicture) picture = NULL;
  TrLook look;

  if (self->figures == NULL)
    return;

  tr_widget_init_look (GTK_WIDGET (drawing), &look);
  picture = tr_found_picture_new (self->figures, self->sequence, &self->reader, &look,
                                  gtk_widget_get_direction (GTK_WIDGET (drawing)) == GTK_TEXT_DIR_RTL, width, height);
  tr_picture_draw (picture, cr);
}

static void
size_drawing (TrSequenceRow *self)
{
  TrLook look;

  tr_widget_init_look (GTK_WIDGET (self), &look);
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (self->drawing), (int) (LINES_WIDE * look.text_size));
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self->drawing), (int) (LINES_HIGH * look.text_size));
}

static char *
dup_name (const TrSequence *sequence)
{
  g_autofree char *name = tr_words_sequence (sequence);

  if (sequence->blocks < 2)
    return g_steal_pointer (&name);

  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s, %d\u00a0block", "%s, %d\u00a0blocks", (unsigned long) sequence->blocks),
                          name, sequence->blocks);
}

static char *
dup_breaks (const TrSequence *sequence)
{
  g_autofree char *breaks = tr_words_sequence_breaks (sequence);

  return breaks != NULL ? g_strdup_printf (_("Does not fit: %s"), breaks) : NULL;
}

void
tr_sequence_row_show (TrSequenceRow        *self,
                      const TrDoughFigures *figures,
                      const TrSequence     *sequence,
                      const TrReader       *reader)
{
  g_return_if_fail (TR_IS_SEQUENCE_ROW (self));

  gboolean is_used = tr_sequence_is_of (sequence, figures->dough);
  g_autofree char *name = dup_name (sequence), *label = NULL;
  TrDoughFigures *old = self->figures;

  self->figures = tr_dough_figures_ref ((TrDoughFigures *) figures);
  tr_dough_figures_unref (old);
  self->sequence = sequence;
  self->reader = *reader;
  gtk_label_set_text (GTK_LABEL (self->name), name);
  tr_words_label_take (self->folds, tr_words_sequence_folds (sequence));
  tr_words_label_take (self->layers, tr_words_sequence_layers (reader, sequence));
  tr_words_label_take (self->bench, tr_words_sequence_bench (reader, sequence));
  tr_words_label_take (self->time, tr_words_sequence_time (reader, sequence));
  tr_words_label_take (self->breaks, dup_breaks (sequence));
  gtk_button_set_label (GTK_BUTTON (self->use), is_used ? _("In use") : _("Use"));
  gtk_widget_set_sensitive (self->use, !is_used);
  label = g_strdup_printf (_("Use %s"), name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->use), GTK_ACCESSIBLE_PROPERTY_LABEL, is_used ? _("In use") : label, -1);
  gtk_widget_queue_draw (self->drawing);
}

static void
use_clicked_cb (TrSequenceRow *self)
{
  g_signal_emit (self, signals[SIGNAL_USED], 0);
}

static void
tr_sequence_row_root (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (tr_sequence_row_parent_class)->root (widget);

  size_drawing (TR_SEQUENCE_ROW (widget));
}

static void
tr_sequence_row_dispose (GObject *object)
{
  TrSequenceRow *self = TR_SEQUENCE_ROW (object);

  g_clear_pointer (&self->figures, tr_dough_figures_unref);
  g_clear_pointer (&self->box, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_sequence_row_parent_class)->dispose (object);
}

static void
tr_sequence_row_class_init (TrSequenceRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_sequence_row_dispose;
  GTK_WIDGET_CLASS (klass)->root = tr_sequence_row_root;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);

  signals[SIGNAL_USED] = g_signal_new ("used", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static GtkWidget *
add_words (GtkWidget  *box,
           const char *css_class)
{
  GtkWidget *label = tr_words_label_new (css_class);

  gtk_widget_add_css_class (label, "figures");
  gtk_box_append (GTK_BOX (box), label);

  return label;
}

static void
tr_sequence_row_init (TrSequenceRow *self)
{
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);

  self->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  self->drawing = gtk_drawing_area_new ();
  gtk_widget_set_valign (self->drawing, GTK_ALIGN_START);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->drawing), draw_cb, self, NULL);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->drawing), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  self->name = add_words (words, "heading");
  gtk_widget_set_visible (self->name, TRUE);
  self->folds = add_words (words, NULL);
  self->layers = add_words (words, NULL);
  self->breaks = add_words (words, "error");
  self->bench = add_words (words, "dim-label");
  self->time = add_words (words, "dim-label");
  gtk_widget_set_hexpand (words, TRUE);
  self->use = gtk_button_new_with_label (_("Use"));
  gtk_widget_set_valign (self->use, GTK_ALIGN_START);
  g_signal_connect_object (self->use, "clicked", G_CALLBACK (use_clicked_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self->box), self->drawing);
  gtk_box_append (GTK_BOX (self->box), words);
  gtk_box_append (GTK_BOX (self->box), self->use);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
tr_sequence_row_new (void)
{
  return g_object_new (TR_TYPE_SEQUENCE_ROW, NULL);
}
