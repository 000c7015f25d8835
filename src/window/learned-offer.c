/* learned-offer.c: what the log tells of one setting, and a button that uses it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "learned-offer.h"

#include <glib/gi18n-lib.h>

#include "../words/learned.h"
#include "section.h"

struct _TrLearnedOffer
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *box;

  /* Borrowed References */
  GtkWidget *words, *use;

  /* State */
  TrLearnedId id;
};

G_DEFINE_FINAL_TYPE (TrLearnedOffer, tr_learned_offer, GTK_TYPE_WIDGET)

/* The page, where it shows a dough. NULL: it does not. */
static TrPage *
get_page (TrLearnedOffer *self)
{
  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);

  return page != NULL && tr_page_get_figures (page) != NULL ? page : NULL;
}

static void
use_clicked_cb (TrLearnedOffer *self)
{
  static const char *const labels[TR_N_LEARNED] = {
    [TR_LEARNED_DENSITY] = N_("use the density of the weighed cuts"),
    [TR_LEARNED_BAKE_LOSS] = N_("use the loss of the weighed pieces"),
    [TR_LEARNED_SHRINK] = N_("use how the sheet shrank"),
    [TR_LEARNED_FRICTION] = N_("use the friction of the last mix"),
  };
  TrPage *page = get_page (self);
  TrLearned learned;
  TrTrial *draft;

  if (page == NULL || !tr_learned_find (tr_page_get_figures (page), self->id, &learned) || learned.n == 0)
    return;

  draft = tr_document_draft (tr_page_get_document (page));
  tr_learned_apply (&learned, tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page)));
  tr_page_commit (page, draft, _(labels[self->id]), NULL, tr_learned_pointer (self->id));
}

void
tr_learned_offer_refresh (TrLearnedOffer *self)
{
  g_return_if_fail (TR_IS_LEARNED_OFFER (self));

  TrPage *page = get_page (self);
  TrLearned learned;
  gboolean is_there = page != NULL && tr_learned_find (tr_page_get_figures (page), self->id, &learned);
  g_autofree char *use = is_there ? tr_words_learned_use (tr_page_get_reader (page), &learned) : NULL;

  gtk_widget_set_visible (GTK_WIDGET (self), is_there);
  tr_words_label_take (self->words, is_there ? tr_words_learned (tr_page_get_reader (page), &learned) : NULL);
  gtk_widget_set_visible (self->use, use != NULL);
  if (use != NULL)
    gtk_button_set_label (GTK_BUTTON (self->use), use);
}

static void
tr_learned_offer_dispose (GObject *object)
{
  g_clear_pointer (&TR_LEARNED_OFFER (object)->box, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_learned_offer_parent_class)->dispose (object);
}

static void
tr_learned_offer_class_init (TrLearnedOfferClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_learned_offer_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_learned_offer_init (TrLearnedOffer *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->words = tr_words_label_new (NULL);
  self->use = gtk_button_new_with_label ("");
  gtk_widget_set_halign (self->use, GTK_ALIGN_START);
  gtk_widget_set_visible (self->use, FALSE);
  g_signal_connect_object (self->use, "clicked", G_CALLBACK (use_clicked_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self->box), self->words);
  gtk_box_append (GTK_BOX (self->box), self->use);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
tr_learned_offer_new (TrLearnedId id)
{
  TrLearnedOffer *self = g_object_new (TR_TYPE_LEARNED_OFFER, NULL);

  self->id = id;

  return GTK_WIDGET (self);
}
