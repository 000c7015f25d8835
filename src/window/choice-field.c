/* choice-field.c: one of a few, chosen from a list or ticked
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each choice is an undo step of its own.
 */

#include "config.h"

#include "choice-field.h"

#include <glib/gi18n-lib.h>

#include "member.h"

struct _TrChoiceField
{
  TrField parent_instance;

  /* Borrowed */
  const TrChoice *choice;
  GtkWidget *control;            /* GtkDropDown or GtkCheckButton */

  guint is_setting : 1;
};

G_DEFINE_FINAL_TYPE (TrChoiceField, tr_choice_field, TR_TYPE_FIELD)

static int
get_value (TrChoiceField *self,
           TrPage        *page)
{
  int dough = tr_page_get_dough_index (page);

  if (dough < 0 && tr_where_is_in_dough (self->choice->pointer))
    return -1;

  return self->choice->get (tr_document_get_trial (tr_page_get_document (page)), dough, tr_field_get_item (TR_FIELD (self)));
}

static guint
get_chosen (TrChoiceField *self)
{
  if (self->choice->is_tick)
    return gtk_check_button_get_active (GTK_CHECK_BUTTON (self->control)) ? 1 : 0;

  return gtk_drop_down_get_selected (GTK_DROP_DOWN (self->control));
}

static void
set_chosen (TrChoiceField *self,
            guint          value)
{
  if (get_chosen (self) == value)
    return;

  self->is_setting = TRUE;
  if (self->choice->is_tick)
    gtk_check_button_set_active (GTK_CHECK_BUTTON (self->control), value != 0);
  else
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->control), value);
  self->is_setting = FALSE;
}

static void
tr_choice_field_refresh (TrField *field)
{
  TrChoiceField *self = TR_CHOICE_FIELD (field);
  TrPage *page = tr_field_get_page (field);

  if (page == NULL)
    return;

  int value = get_value (self, page);

  gtk_widget_set_visible (GTK_WIDGET (self), value >= 0);
  if (value >= 0)
    set_chosen (self, (guint) value);
}

static char *
tr_choice_field_dup_pointer (TrField *field)
{
  TrChoiceField *self = TR_CHOICE_FIELD (field);
  TrPage *page = tr_field_get_page (field);

  if (page == NULL || get_value (self, page) < 0)
    return NULL;
  if (self->choice->dup_pointer != NULL)
    return self->choice->dup_pointer (tr_document_get_trial (tr_page_get_document (page)),
                                      tr_page_get_dough_index (page), tr_field_get_item (field));

  return tr_text_with_number (self->choice->pointer, tr_field_get_item (field));
}

static void
chosen_cb (TrChoiceField *self)
{
  TrPage *page = tr_field_get_page (TR_FIELD (self));

  if (self->is_setting || page == NULL || tr_page_is_refreshing (page))
    return;

  guint value = get_chosen (self);
  int dough = tr_page_get_dough_index (page);
  guint item = tr_field_get_item (TR_FIELD (self));

  if (value >= self->choice->n_values || (int) value == get_value (self, page) || get_value (self, page) < 0)
    return;

  TrTrial *draft = tr_document_draft (tr_page_get_document (page));
  g_autofree char *label = tr_text_with_number (_(self->choice->undo), item + 1);

  tr_where_own (draft, dough, self->choice->pointer);
  self->choice->set (draft, dough, item, value, tr_page_get_figures (page));
  /* "As typed" is what typing comes to: choosing it changes nothing. */
  if (self->choice->get (draft, dough, item) == get_value (self, page))
    {
      tr_trial_unref (draft);
      set_chosen (self, (guint) get_value (self, page));
      return;
    }
  if (!tr_field_commit (TR_FIELD (self), draft, label, FALSE))
    set_chosen (self, (guint) MAX (get_value (self, page), 0));
}

void
tr_choice_field_choose (TrChoiceField *self,
                        guint          value)
{
  g_return_if_fail (TR_IS_CHOICE_FIELD (self));
  g_return_if_fail (value < self->choice->n_values);

  if (self->choice->is_tick)
    gtk_check_button_set_active (GTK_CHECK_BUTTON (self->control), value != 0);
  else
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->control), value);
}

static void
tr_choice_field_dispose (GObject *object)
{
  TrChoiceField *self = TR_CHOICE_FIELD (object);

  if (self->control != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->control, self);
      self->control = NULL;
    }

  G_OBJECT_CLASS (tr_choice_field_parent_class)->dispose (object);
}

static void
tr_choice_field_class_init (TrChoiceFieldClass *klass)
{
  TrFieldClass *field_class = TR_FIELD_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_choice_field_dispose;
  field_class->refresh = tr_choice_field_refresh;
  field_class->dup_pointer = tr_choice_field_dup_pointer;
}

static void
tr_choice_field_init (TrChoiceField *self)
{
}

/* What is lower case inside a sentence stands alone here. */
static char *
dup_entry_name (const TrChoice *choice,
                guint           value)
{
  g_autofree char *name = choice->dup_name (value);
  g_autofree char *first = g_utf8_substring (name, 0, MIN (1, g_utf8_strlen (name, -1)));
  g_autofree char *capital = g_utf8_strup (first, -1);

  return g_strconcat (capital, name + strlen (first), NULL);
}

static GtkWidget *
new_drop_down (const TrChoice *choice)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  for (guint i = 0; i < choice->n_values; i++)
    gtk_string_list_take (names, dup_entry_name (choice, i));

  GtkWidget *drop_down = gtk_drop_down_new (G_LIST_MODEL (g_steal_pointer (&names)), NULL);

  gtk_widget_set_valign (drop_down, GTK_ALIGN_CENTER);

  return drop_down;
}

GtkWidget *
tr_choice_field_new (const TrChoice *choice,
                     TrFieldShape    shape)
{
  g_return_val_if_fail (choice != NULL, NULL);

  TrChoiceField *self = g_object_new (TR_TYPE_CHOICE_FIELD, NULL);
  const char *tooltip = choice->tooltip != NULL ? _(choice->tooltip) : NULL;

  self->choice = choice;
  if (choice->is_tick)
    {
      self->control = gtk_check_button_new_with_label (_(choice->label));
      g_signal_connect_swapped (self->control, "toggled", G_CALLBACK (chosen_cb), self);
      shape = TR_FIELD_BARE;
    }
  else
    {
      self->control = new_drop_down (choice);
      g_signal_connect_swapped (self->control, "notify::selected", G_CALLBACK (chosen_cb), self);
    }
  tr_field_build (TR_FIELD (self), shape, _(choice->label), tooltip, self->control);

  return GTK_WIDGET (self);
}
