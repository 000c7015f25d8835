/* last-mix.c: the last mix as it really went, the friction it tells, and those before it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "last-mix.h"

#include <glib/gi18n-lib.h>

#include "../calc/mix.h"
#include "../words/learned.h"
#include "learned-offer.h"
#include "section.h"

/* More than that is no list any more. */
#define MOST_EARLIER 12

struct _TrLastMix
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *box;

  /* Borrowed References */
  GtkWidget *offer, *hint;
  GtkWidget *another, *remove;
  GtkWidget *earlier, *more;

  /* Owned */
  GPtrArray *rows;               /* borrowed boxes: the words of a mix, a button */
};

G_DEFINE_FINAL_TYPE (TrLastMix, tr_last_mix, GTK_TYPE_WIDGET)

/* The fields */

static void
date_now (TrMix *mix)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  g_free (mix->at);
  mix->at = g_date_time_format (now, "%Y-%m-%d");
}

static gpointer
reach_mix (const TrTrial *trial,
           int            dough,
           guint          item,
           gboolean       make)
{
  static const TrMix none = { NULL, NAN, NAN, NAN, NAN, NAN, NULL };
  TrDough *own = tr_trial_get_dough (trial, (guint) dough);
  TrMix *last = (TrMix *) tr_dough_get_last_mix (own);

  if (last != NULL)
    return last;
  if (!make)
    return (gpointer) &none;

  last = tr_dough_begin_mix (own, trial->bench, trial->pantry);
  date_now (last);

  return last;
}

static char *
dup_mix_pointer (const TrTrial *trial,
                 int            dough,
                 const char    *member)
{
  guint n = tr_trial_get_dough (trial, (guint) dough)->log->mixes->len;

  return g_strdup_printf ("/log/mixes/%u/%s", n > 0 ? n - 1 : 0, member);
}

#define DEFINE_POINTER(name)                             \
  static char *                                          \
  dup_##name##_pointer (const TrTrial *trial,            \
                        int            dough,            \
                        guint          item)             \
  {                                                      \
    return dup_mix_pointer (trial, dough, #name);        \
  }

DEFINE_POINTER (dough_c)
DEFINE_POINTER (liquid_c)
DEFINE_POINTER (flour_c)
DEFINE_POINTER (room_c)
DEFINE_POINTER (preferment_c)

#define MIX(member, label_, tooltip_)                                                                            \
  { "/log/mixes/%u/" #member, reach_mix, G_STRUCT_OFFSET (TrMix, member), TR_HOLD_NUMBER, TR_QUANTITY_TEMPERATURE_C, \
    label_, N_("write how the mix went"), tooltip_, .may_be_empty = TRUE, .empty = "–",                           \
    .dup_pointer = dup_##member##_pointer }

static const TrMember mix_members[] = {
  MIX (dough_c, N_("Dough came out at"), N_("Measured in the middle of the dough when the mixer stops")),
  MIX (liquid_c, N_("Poured at"), N_("Water, milk and eggs together, as they went in")),
  MIX (flour_c, N_("Flour was at"), N_("As it went in")),
  MIX (room_c, N_("Room was at"), N_("At the mixer")),
  MIX (preferment_c, N_("Preferment was at"), N_("As it went in. Empty: none.")),
};

/* The last */

static TrPage *
get_page (TrLastMix *self)
{
  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);

  return page != NULL && tr_page_get_dough (page) != NULL ? page : NULL;
}

static void
show_last (TrLastMix     *self,
           const TrDough *dough)
{
  const TrMix *mix = tr_dough_get_last_mix (dough);
  double n;

  gtk_widget_set_visible (self->another, mix != NULL && isfinite (mix->dough_c));
  gtk_widget_set_visible (self->remove, mix != NULL);
  tr_learned_offer_refresh (TR_LEARNED_OFFER (self->offer));
  tr_words_label_set (self->hint, mix == NULL || isnan (tr_mix_get_friction (mix, &n))
                                  ? _("Write how warm the dough came out and how warm the liquid was: the friction follows.") : NULL);
}

/* Earlier mixes, the latest first */

static void
remove_mix (TrLastMix *self,
            guint      index)
{
  TrPage *page = get_page (self);
  TrTrial *draft;
  GPtrArray *mixes;

  if (page == NULL || index >= tr_page_get_dough (page)->log->mixes->len)
    return;

  draft = tr_document_draft (tr_page_get_document (page));
  mixes = tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page))->log->mixes;
  g_ptr_array_remove_index (mixes, index);
  tr_page_commit (page, draft, _("take a mix out of the log"), NULL, "/log/mixes");
}

static void
remove_earlier_clicked_cb (GtkWidget *button,
                           TrLastMix *self)
{
  TrPage *page = get_page (self);
  guint back = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "back"));

  if (page != NULL && tr_page_get_dough (page)->log->mixes->len > back)
    remove_mix (self, tr_page_get_dough (page)->log->mixes->len - 1 - back);
}

static void
add_earlier_row (TrLastMix *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *words = tr_words_label_new ("dim-label"), *button = gtk_button_new_with_label (_("Remove"));

  g_ptr_array_add (self->rows, row);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_widget_set_valign (button, GTK_ALIGN_START);
  g_object_set_data (G_OBJECT (button), "back", GUINT_TO_POINTER (self->rows->len));
  g_signal_connect_object (button, "clicked", G_CALLBACK (remove_earlier_clicked_cb), self, 0);
  gtk_box_append (GTK_BOX (row), words);
  gtk_box_append (GTK_BOX (row), button);
  gtk_box_append (GTK_BOX (self->earlier), row);
}

static void
show_earlier (TrLastMix      *self,
              const TrReader *reader,
              const TrDough  *dough)
{
  const GPtrArray *mixes = dough->log->mixes;
  guint n = mixes->len > 1 ? MIN (mixes->len - 1, MOST_EARLIER) : 0;

  gtk_widget_set_visible (self->earlier, n > 0);
  while (self->rows->len < n)
    add_earlier_row (self);
  for (guint i = 0; i < self->rows->len; i++)
    {
      GtkWidget *row = g_ptr_array_index (self->rows, i);

      gtk_widget_set_visible (row, i < n);
      if (i >= n)
        continue;

      g_autofree char *said = tr_words_mix (reader, g_ptr_array_index (mixes, mixes->len - 2 - i));
      g_autofree char *name = g_strdup_printf (_("Remove the mix of %s"), said);

      tr_words_label_set (gtk_widget_get_first_child (row), said);
      gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_last_child (row)), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
    }
  tr_words_label_take (self->more, mixes->len > n + 1
                                   ? g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u earlier mix is in the file.",
                                                                   "%u earlier mixes are in the file.", mixes->len - n - 1),
                                                      mixes->len - n - 1) : NULL);
}

static void
remove_clicked_cb (TrLastMix *self)
{
  TrPage *page = get_page (self);

  if (page != NULL && tr_page_get_dough (page)->log->mixes->len > 0)
    remove_mix (self, tr_page_get_dough (page)->log->mixes->len - 1);
}

static void
another_clicked_cb (TrLastMix *self)
{
  TrPage *page = get_page (self);
  TrTrial *draft;
  TrDough *dough;

  if (page == NULL)
    return;

  draft = tr_document_draft (tr_page_get_document (page));
  dough = tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page));
  date_now (tr_dough_begin_mix (dough, draft->bench, draft->pantry));
  tr_page_commit (page, draft, _("log another mix"), NULL, "/log/mixes");
}

void
tr_last_mix_refresh (TrLastMix *self)
{
  g_return_if_fail (TR_IS_LAST_MIX (self));

  TrPage *page = get_page (self);

  if (page == NULL)
    return;

  show_last (self, tr_page_get_dough (page));
  show_earlier (self, tr_page_get_reader (page), tr_page_get_dough (page));
}

static void
tr_last_mix_dispose (GObject *object)
{
  g_clear_pointer (&TR_LAST_MIX (object)->box, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_last_mix_parent_class)->dispose (object);
}

static void
tr_last_mix_finalize (GObject *object)
{
  g_ptr_array_unref (TR_LAST_MIX (object)->rows);

  G_OBJECT_CLASS (tr_last_mix_parent_class)->finalize (object);
}

static void
tr_last_mix_class_init (TrLastMixClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_last_mix_dispose;
  G_OBJECT_CLASS (klass)->finalize = tr_last_mix_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_last_mix_init (TrLastMix *self)
{
  GtkWidget *buttons = tr_fields_row_new ();

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_box_append (GTK_BOX (self->box), tr_form_new (mix_members, G_N_ELEMENTS (mix_members)));
  self->offer = tr_learned_offer_new (TR_LEARNED_FRICTION);
  self->hint = tr_words_label_new (NULL);
  gtk_box_append (GTK_BOX (self->box), self->offer);
  gtk_box_append (GTK_BOX (self->box), self->hint);
  self->another = gtk_button_new_with_label (_("Log another mix"));
  self->remove = gtk_button_new_with_label (_("Remove this mix"));
  g_signal_connect_object (self->another, "clicked", G_CALLBACK (another_clicked_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->remove, "clicked", G_CALLBACK (remove_clicked_cb), self, G_CONNECT_SWAPPED);
  tr_form_add (buttons, self->another);
  tr_form_add (buttons, self->remove);
  gtk_box_append (GTK_BOX (self->box), buttons);
  self->rows = g_ptr_array_new ();
  self->earlier = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->more = tr_words_label_new ("dim-label");
  gtk_box_append (GTK_BOX (self->box), self->earlier);
  gtk_box_append (GTK_BOX (self->box), self->more);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
tr_last_mix_new (void)
{
  return g_object_new (TR_TYPE_LAST_MIX, NULL);
}
