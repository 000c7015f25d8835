/* rest-view.c: what a rest does to the slab, in words and as a picture
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "rest-view.h"

#include <glib/gi18n-lib.h>

#include "../words/rest.h"
#include "picture-view.h"
#include "section.h"

struct _TrRestView
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *box;

  /* Borrowed References */
  GtkWidget *core, *window, *bound, *picture;
};

G_DEFINE_FINAL_TYPE (TrRestView, tr_rest_view, GTK_TYPE_WIDGET)

/* The view makes its picture anew when what it is asked for is another item:
 * that is twice the rest's index, and one more where time runs to the left. */
static guint
get_item (TrRestView *self,
          int         index)
{
  return 2 * (guint) index + (gtk_widget_get_direction (self->picture) == GTK_TEXT_DIR_RTL);
}

static TrPicture *
make_picture (const TrDoughFigures *figures,
              guint                 item,
              const TrReader       *reader,
              const TrLook         *look,
              double                width,
              double                height)
{
  return tr_temperature_picture_new (figures, item / 2, item % 2 == 1, reader, look, width, height);
}

static int
find_rest (const TrDoughFigures *figures,
           int                   turn)
{
  for (guint i = 0; figures != NULL && i < figures->rests->len; i++)
    if (g_array_index (figures->rests, TrRestFigures, i).turn == turn)
      return (int) i;

  return -1;
}

static char *
dup_core (const TrReader      *reader,
          const TrRestFigures *rest)
{
  g_autofree char *core = tr_words_rest_core (reader, rest);
  g_autofree char *freezing = tr_words_rest_freezing (reader, rest);

  if (core == NULL)
    return g_steal_pointer (&freezing);

  return freezing != NULL ? g_strdup_printf ("%s %s", core, freezing) : g_steal_pointer (&core);
}

void
tr_rest_view_show (TrRestView           *self,
                   const TrDoughFigures *figures,
                   int                   turn,
                   const TrReader       *reader)
{
  g_return_if_fail (TR_IS_REST_VIEW (self));

  int index = find_rest (figures, turn);

  gtk_widget_set_visible (GTK_WIDGET (self), index >= 0);
  tr_picture_view_set_figures (TR_PICTURE_VIEW (self->picture), index >= 0 ? figures : NULL, get_item (self, MAX (index, 0)), reader);
  if (index < 0)
    return;

  const TrRestFigures *rest = &g_array_index (figures->rests, TrRestFigures, index);

  tr_words_label_take (self->core, dup_core (reader, rest));
  tr_words_label_take (self->window, tr_words_rest_window (reader, figures, rest));
  gtk_widget_set_visible (self->bound, gtk_widget_get_visible (self->core) || gtk_widget_get_visible (self->window));
}

static void
tr_rest_view_dispose (GObject *object)
{
  g_clear_pointer (&TR_REST_VIEW (object)->box, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_rest_view_parent_class)->dispose (object);
}

static void
tr_rest_view_class_init (TrRestViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_rest_view_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_rest_view_init (TrRestView *self)
{
  self->core = tr_words_label_new (NULL);
  self->window = tr_words_label_new (NULL);
  self->bound = tr_words_label_new ("dim-label");
  tr_words_label_set (self->bound, tr_words_rest_bound ());
  self->picture = tr_picture_view_new (_("The slab while it rests"), make_picture, 15);
  gtk_widget_set_tooltip_text (self->core, tr_words_rest_caveat ());
  gtk_widget_set_tooltip_text (self->window, tr_words_rest_caveat ());
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (self->box), self->core);
  gtk_box_append (GTK_BOX (self->box), self->window);
  gtk_box_append (GTK_BOX (self->box), self->bound);
  gtk_box_append (GTK_BOX (self->box), self->picture);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
tr_rest_view_new (void)
{
  return g_object_new (TR_TYPE_REST_VIEW, NULL);
}
