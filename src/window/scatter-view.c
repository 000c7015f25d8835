/* scatter-view.c: doughs as points by two figures that are chosen, or by their scores
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "scatter-view.h"

#include <glib/gi18n-lib.h>

#include "../calc/tasting.h"
#include "../picture/scatter.h"
#include "figure-choice.h"
#include "picture-view.h"
#include "section.h"

#define LINES 24

struct _TrScatterView
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *box;

  /* Borrowed References */
  GtkWidget *across, *up, *picture, *hint;

  /* Owned */
  GArray *doughs;                /* guint */
};

G_DEFINE_FINAL_TYPE (TrScatterView, tr_scatter_view, GTK_TYPE_WIDGET)

static TrPage *
get_page (TrScatterView *self)
{
  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);

  return page != NULL && tr_page_get_document (page) != NULL ? page : NULL;
}

/* What is drawn */

typedef struct {
  TrFigures *figures;
  GArray *doughs;
  const TrComparable *across, *up;
  double *scores;
  int current;
} Shown;

static void
free_shown (gpointer data)
{
  Shown *shown = data;

  tr_figures_unref (shown->figures);
  g_array_unref (shown->doughs);
  g_free (shown->scores);
  g_free (shown);
}

static TrPicture *
make_picture (gpointer        data,
              guint           item,
              const TrReader *reader,
              const TrLook   *look,
              double          width,
              double          height)
{
  const Shown *shown = data;
  const TrScatter scatter = {
    .figures = shown->figures, .doughs = (const guint *) shown->doughs->data, .n_doughs = shown->doughs->len,
    .across = shown->across, .up = shown->up, .scores = shown->scores, .current = shown->current,
  };

  return tr_scatter_picture_new (&scatter, reader, look, width, height);
}

static void
show (TrScatterView *self)
{
  TrPage *page = get_page (self);
  const TrComparable *across = tr_figure_choice_get (TR_FIGURE_CHOICE (self->across)), *up = tr_figure_choice_get (TR_FIGURE_CHOICE (self->up));
  const TrFigures *figures;
  Shown *shown;

  if (page == NULL)
    return;

  figures = tr_document_get_figures (tr_page_get_document (page));
  shown = g_new0 (Shown, 1);
  shown->figures = tr_figures_ref (figures);
  shown->doughs = g_array_copy (self->doughs);
  shown->across = across;
  shown->up = up;
  shown->scores = tr_tasting_dup_mean_scores (figures);
  shown->current = tr_page_get_dough_index (page);
  tr_words_label_set (self->hint, shown->scores == NULL && (across == NULL || up == NULL)
                                  ? _("Nobody has scored every sample yet, so that there are no mean scores.") : NULL);
  tr_picture_view_set_data (TR_PICTURE_VIEW (self->picture), shown, free_shown, 0, tr_page_get_reader (page));
}

void
tr_scatter_view_refresh (TrScatterView *self,
                         const GArray  *doughs)
{
  g_return_if_fail (TR_IS_SCATTER_VIEW (self));
  g_return_if_fail (doughs != NULL);

  g_array_set_size (self->doughs, 0);
  g_array_append_vals (self->doughs, doughs->data, doughs->len);
  show (self);
}

void
tr_scatter_view_set_axes (TrScatterView      *self,
                          const TrComparable *across,
                          const TrComparable *up)
{
  g_return_if_fail (TR_IS_SCATTER_VIEW (self));

  tr_figure_choice_set (TR_FIGURE_CHOICE (self->across), across);
  tr_figure_choice_set (TR_FIGURE_CHOICE (self->up), up);
  show (self);
}

static void
picture_pressed_cb (TrPictureView *view,
                    const TrHit   *hit,
                    int            n_press,
                    TrScatterView *self)
{
  TrPage *page = get_page (self);
  guint dough;

  if (page == NULL || hit->part != TR_PART_OF_POINT || hit->index < 0 || (guint) hit->index >= self->doughs->len)
    return;

  dough = g_array_index (self->doughs, guint, hit->index);
  gtk_widget_activate_action (GTK_WIDGET (self), "win.show-dough", "s",
                              tr_trial_get_dough (tr_document_get_trial (tr_page_get_document (page)), dough)->id);
}

static void
tr_scatter_view_dispose (GObject *object)
{
  TrScatterView *self = TR_SCATTER_VIEW (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_scatter_view_parent_class)->dispose (object);
}

static void
tr_scatter_view_finalize (GObject *object)
{
  g_clear_pointer (&TR_SCATTER_VIEW (object)->doughs, g_array_unref);

  G_OBJECT_CLASS (tr_scatter_view_parent_class)->finalize (object);
}

static void
tr_scatter_view_class_init (TrScatterViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_scatter_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = tr_scatter_view_finalize;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_scatter_view_init (TrScatterView *self)
{
  GtkWidget *axes = tr_fields_row_new ();

  self->doughs = g_array_new (FALSE, FALSE, sizeof (guint));
  self->across = tr_figure_choice_new (_("Across"), _("Mean score"));
  self->up = tr_figure_choice_new (_("Up"), _("Mean score"));
  tr_figure_choice_set (TR_FIGURE_CHOICE (self->across), tr_comparable_find ("roll_in_percent_of_dough"));
  tr_figure_choice_set (TR_FIGURE_CHOICE (self->up), tr_comparable_find ("fat_layer_um.max"));
  g_signal_connect_object (self->across, "chosen", G_CALLBACK (show), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->up, "chosen", G_CALLBACK (show), self, G_CONNECT_SWAPPED);
  self->hint = tr_words_label_new ("dim-label");
  self->picture = tr_picture_view_new_for (_("Doughs by two figures"), make_picture, LINES);
  g_signal_connect_object (self->picture, "pressed", G_CALLBACK (picture_pressed_cb), self, 0);

  tr_form_add (axes, self->across);
  tr_form_add (axes, self->up);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (self->box), axes);
  gtk_box_append (GTK_BOX (self->box), self->hint);
  gtk_box_append (GTK_BOX (self->box), self->picture);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
tr_scatter_view_new (void)
{
  return g_object_new (TR_TYPE_SCATTER_VIEW, NULL);
}
