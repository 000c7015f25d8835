/* last-mix.c: the last mix as it really went, and the friction it tells
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "last-mix.h"

#include <glib/gi18n-lib.h>

#include "../calc/mix.h"
#include "section.h"

struct _TrLastMix
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *box;

  /* Borrowed References */
  GtkWidget *words;
  GtkWidget *use, *another;
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

/* The offer */

static TrPage *
get_page (TrLastMix *self)
{
  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);

  return page != NULL && tr_page_get_dough (page) != NULL ? page : NULL;
}

static gboolean
is_in_use (const TrMethod *method,
           double          friction_c,
           double          n)
{
  return fabs (method->friction_c - friction_c) < 0.005 && fabs (method->friction_n - n) < 0.005;
}

static char *
dup_words (const TrReader *reader,
           const TrDough  *dough,
           const TrMix    *mix,
           double          friction_c,
           double          n)
{
  g_autofree char *friction = tr_words_warming (reader, friction_c);
  g_autofree char *came = tr_words_temperature (reader, mix->dough_c);
  g_autofree char *at = tr_words_one_line (mix->at != NULL ? mix->at : "");

  if (is_in_use (dough->method, friction_c, n))
    return g_strdup_printf (_("The friction of %s in use is that of this mix."), friction);
  if (friction_c < 0)
    return g_strdup (_("The dough came out colder than what went in. Look at the figures again."));

  return *at != '\0' ? g_strdup_printf (_("From the mix of %s: the dough came out at %s, so the friction is %s over %.0f temperatures."),
                                        at, came, friction, n)
                     : g_strdup_printf (_("The dough came out at %s, so the friction is %s over %.0f temperatures."), came, friction, n);
}

static void
show_offer (TrLastMix      *self,
            const TrReader *reader,
            const TrDough  *dough)
{
  const TrMix *mix = tr_dough_get_last_mix (dough);
  double n = 0, friction_c = mix != NULL ? tr_mix_get_friction (mix, &n) : NAN;
  gboolean can_use = friction_c >= 0 && !is_in_use (dough->method, friction_c, n);

  gtk_widget_set_visible (self->another, mix != NULL && isfinite (mix->dough_c));
  gtk_widget_set_visible (self->use, can_use);
  if (isfinite (friction_c))
    tr_words_label_take (self->words, dup_words (reader, dough, mix, friction_c, n));
  else
    tr_words_label_set (self->words, _("Write how warm the dough came out and how warm the liquid was: the friction follows."));
  if (can_use)
    {
      g_autofree char *friction = tr_words_warming (reader, friction_c);
      g_autofree char *label = g_strdup_printf (_("Use friction %s"), friction);

      gtk_button_set_label (GTK_BUTTON (self->use), label);
    }
}

static void
use_clicked_cb (TrLastMix *self)
{
  TrPage *page = get_page (self);
  const TrMix *mix = page != NULL ? tr_dough_get_last_mix (tr_page_get_dough (page)) : NULL;
  double n, friction_c = mix != NULL ? tr_mix_get_friction (mix, &n) : NAN;

  if (!isfinite (friction_c))
    return;

  TrTrial *draft = tr_document_draft (tr_page_get_document (page));
  TrMethod *method = tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page))->method;

  /* A hundredth of a degree is more than a thermometer knows. */
  method->friction_c = round (friction_c * 100) / 100;
  method->friction_n = n;
  tr_page_commit (page, draft, _("use the friction of the last mix"), NULL, "/method/friction_c");
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

  if (page != NULL)
    show_offer (self, tr_page_get_reader (page), tr_page_get_dough (page));
}

static void
tr_last_mix_dispose (GObject *object)
{
  g_clear_pointer (&TR_LAST_MIX (object)->box, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_last_mix_parent_class)->dispose (object);
}

static void
tr_last_mix_class_init (TrLastMixClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_last_mix_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_last_mix_init (TrLastMix *self)
{
  GtkWidget *buttons = tr_fields_row_new ();

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_box_append (GTK_BOX (self->box), tr_form_new (mix_members, G_N_ELEMENTS (mix_members)));
  self->words = tr_words_label_new (NULL);
  gtk_box_append (GTK_BOX (self->box), self->words);
  self->use = gtk_button_new_with_label ("");
  self->another = gtk_button_new_with_label (_("Log another mix"));
  g_signal_connect_object (self->use, "clicked", G_CALLBACK (use_clicked_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->another, "clicked", G_CALLBACK (another_clicked_cb), self, G_CONNECT_SWAPPED);
  tr_form_add (buttons, self->use);
  tr_form_add (buttons, self->another);
  gtk_box_append (GTK_BOX (self->box), buttons);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
tr_last_mix_new (void)
{
  return g_object_new (TR_TYPE_LAST_MIX, NULL);
}
