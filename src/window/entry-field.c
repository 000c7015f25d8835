/* entry-field.c: a number, a text or an amount, typed
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invariant: `shown` (a number) or `shown_text` is the value of the document
 * that the entry's text stands for. A refresh that finds the same value there
 * leaves text and caret alone, whatever is being typed; another value (undo, a
 * different dough, another unit) replaces the text and keeps the caret.
 *
 * A figure comes out a little beside what was typed, because the amount behind
 * it is a round number: what its own commit made of it leaves the text alone.
 */

#include "config.h"

#include "entry-field-private.h"

#include <glib/gi18n-lib.h>

#include "section.h"

/* An error waits until the typing pauses: a half-typed unit is not one yet. */
#define ERROR_DELAY_MS 900

G_DEFINE_FINAL_TYPE (TrEntryField, tr_entry_field, TR_TYPE_FIELD)

double
tr_entry_field_get_number (TrEntryField *self,
                           TrPage       *page)
{
  guint item = tr_field_get_item (TR_FIELD (self));

  if (tr_entry_field_is_figure (self))
    return tr_page_get_figures (page) != NULL ? self->member->get_figure (tr_page_get_figures (page), item) : NAN;

  return tr_member_get_number (self->member, tr_entry_field_get_trial (page), tr_page_get_dough_index (page), item);
}

const char *
tr_entry_field_get_text (TrEntryField *self,
                         TrPage       *page)
{
  const char *text = tr_member_get_text (self->member, tr_entry_field_get_trial (page), tr_page_get_dough_index (page),
                                         tr_field_get_item (TR_FIELD (self)));

  return text != NULL ? text : "";
}

/* Errors */

static void
drop_late_error (TrEntryField *self)
{
  g_clear_handle_id (&self->late_source, g_source_remove);
  g_clear_pointer (&self->late_error, g_free);
}

static gboolean
late_error_cb (gpointer data)
{
  TrEntryField *self = data;

  self->late_source = 0;
  tr_field_set_error (TR_FIELD (self), self->late_error);

  return G_SOURCE_REMOVE;
}

void
tr_entry_field_set_error (TrEntryField *self,
                          const char   *error,
                          gboolean      at_once)
{
  drop_late_error (self);
  if (at_once || error == NULL || tr_field_get_error (TR_FIELD (self)) != NULL)
    {
      tr_field_set_error (TR_FIELD (self), error);
      return;
    }
  self->late_error = g_strdup (error);
  self->late_source = g_timeout_add (ERROR_DELAY_MS, late_error_cb, self);
}

/* Showing */

static void
set_entry_text (TrEntryField *self,
                const char   *text)
{
  if (g_str_equal (tr_entry_field_get_typed (self), text))
    return;

  int caret = gtk_editable_get_position (GTK_EDITABLE (self->entry));

  self->is_setting = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  gtk_editable_set_position (GTK_EDITABLE (self->entry), MIN (caret, (int) g_utf8_strlen (text, -1)));
  self->is_setting = FALSE;
}

static void
show_value (TrEntryField *self,
            TrPage       *page)
{
  drop_late_error (self);
  tr_field_set_error (TR_FIELD (self), NULL);
  self->is_edited = self->is_unread = FALSE;

  if (!tr_entry_field_is_number (self))
    {
      tr_set_text (&self->shown_text, tr_entry_field_get_text (self, page));
      set_entry_text (self, self->shown_text);
      return;
    }

  self->shown = tr_entry_field_get_number (self, page);
  g_autofree char *text = tr_member_dup_number (self->member, tr_page_get_reader (page), self->shown);
  set_entry_text (self, text);
}

static gboolean
stands_for_document (TrEntryField *self,
                     TrPage       *page)
{
  const TrReader *reader = tr_page_get_reader (page);
  const TrDough *dough = tr_page_get_dough (page);

  if (!self->has_shown || reader->units != self->shown_for.units || !g_str_equal (reader->decimal, self->shown_for.decimal))
    return FALSE;
  if (g_strcmp0 (self->shown_in, dough != NULL ? dough->id : NULL) != 0)
    return FALSE;
  if (tr_entry_field_is_number (self))
    return tr_entry_field_is_same_number (self->shown, tr_entry_field_get_number (self, page));

  return g_strcmp0 (self->shown_text, tr_entry_field_get_text (self, page)) == 0;
}

/* In the reader's unit, so it follows the reader. */
static void
show_otherwise (TrEntryField *self,
                TrPage       *page)
{
  const TrMember *member = self->member;
  double otherwise = member->otherwise > 0 ? member->otherwise : NAN;

  if (member->get_otherwise != NULL)
    otherwise = member->get_otherwise (tr_entry_field_get_trial (page), tr_page_get_dough_index (page), tr_field_get_item (TR_FIELD (self)));
  else if (isnan (otherwise))
    return;

  g_autofree char *text = isnan (otherwise) && member->empty != NULL
                          ? g_strdup (_(member->empty))
                          : tr_member_dup_number (member, tr_page_get_reader (page), otherwise);

  gtk_entry_set_placeholder_text (GTK_ENTRY (self->entry), text);
}

static void
tr_entry_field_refresh (TrField *field)
{
  TrEntryField *self = TR_ENTRY_FIELD (field);
  TrPage *page = tr_field_get_page (field);

  if (page == NULL)
    return;

  gboolean is_there = tr_member_is_there (self->member, tr_entry_field_get_trial (page), tr_page_get_dough_index (page), tr_field_get_item (field));

  gtk_widget_set_visible (GTK_WIDGET (self), is_there);
  if (!is_there)
    {
      self->has_shown = FALSE;
      return;
    }

  tr_field_set_unit (field, tr_member_get_unit (self->member, tr_page_get_reader (page)));
  show_otherwise (self, page);
  if (self->is_committing)
    self->shown = tr_entry_field_get_number (self, page);
  else
    g_clear_pointer (&self->start, tr_dough_figures_unref);
  /* A row that moves keeps what is being typed; what was refused stays with its item. */
  gboolean was_refused_elsewhere = self->shown_item != tr_field_get_item (field) && tr_field_get_error (field) != NULL;

  self->shown_item = tr_field_get_item (field);
  if (!was_refused_elsewhere && stands_for_document (self, page))
    return;

  show_value (self, page);
  self->shown_for = *tr_page_get_reader (page);
  tr_set_text (&self->shown_in, tr_page_get_dough (page) != NULL ? tr_page_get_dough (page)->id : NULL);
  self->has_shown = TRUE;
}

static char *
tr_entry_field_dup_pointer (TrField *field)
{
  TrEntryField *self = TR_ENTRY_FIELD (field);
  TrPage *page = tr_field_get_page (field);

  if (page == NULL)
    return NULL;

  int dough = tr_page_get_dough_index (page);
  guint item = tr_field_get_item (field);

  if (!tr_member_is_there (self->member, tr_entry_field_get_trial (page), dough, item))
    return NULL;

  return tr_member_dup_pointer (self->member, tr_entry_field_get_trial (page), dough, item);
}

/* Taking what was typed */

static void
changed_cb (GtkEditable  *editable,
            TrEntryField *self)
{
  TrPage *page = tr_field_get_page (TR_FIELD (self));

  if (self->is_setting || page == NULL || tr_page_is_refreshing (page))
    return;

  self->is_edited = TRUE;
  tr_entry_field_take (self, page, FALSE);
}

/* Commits what stands there and ends the undo step. */
static void
settle (TrEntryField *self)
{
  TrPage *page = tr_field_get_page (TR_FIELD (self));

  if (!self->is_edited || page == NULL || tr_page_is_refreshing (page))
    return;

  /* The commit may take the whole row away. */
  g_object_ref (self);
  tr_entry_field_take (self, page, TRUE);
  if (tr_field_get_page (TR_FIELD (self)) == page)
    {
      if (tr_field_get_error (TR_FIELD (self)) == NULL)
        show_value (self, page);
      tr_document_seal (tr_page_get_document (page));
    }
  g_object_unref (self);
}

static gboolean
tr_entry_field_take_back (TrField  *field,
                          gboolean  only_ask)
{
  TrEntryField *self = TR_ENTRY_FIELD (field);
  TrPage *page = tr_field_get_page (field);

  if (!self->is_unread || page == NULL)
    return FALSE;

  if (!only_ask)
    show_value (self, page);

  return TRUE;
}

/* Focus and keys */

static void
focus_entered_cb (GtkEventControllerFocus *controller,
                  TrEntryField            *self)
{
  TrPage *page = tr_field_get_page (TR_FIELD (self));

  if (page == NULL)
    return;

  if (tr_entry_field_is_number (self))
    self->before = tr_entry_field_get_number (self, page);
  else
    tr_set_text (&self->before_text, tr_entry_field_get_text (self, page));
}

static void
focus_left_cb (GtkEventControllerFocus *controller,
               TrEntryField            *self)
{
  settle (self);
  g_clear_pointer (&self->start, tr_dough_figures_unref);
}

static gboolean
restore (TrEntryField *self,
         TrPage       *page)
{
  if (!self->is_edited)
    return FALSE;

  if (!tr_entry_field_is_number (self))
    tr_entry_field_commit_text (self, page, self->before_text != NULL ? self->before_text : "");
  else if (!tr_entry_field_is_figure (self))
    tr_entry_field_commit_number (self, page, self->before);
  else if (self->start != NULL)
    tr_entry_field_commit_figure (self, page, self->member->get_figure (self->start, tr_field_get_item (TR_FIELD (self))), NULL);
  show_value (self, page);
  gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, -1);

  return TRUE;
}

static gboolean
step_by (TrEntryField *self,
         TrPage       *page,
         int           steps)
{
  if (!tr_entry_field_is_number (self))
    return FALSE;

  const TrReader *reader = tr_page_get_reader (page);
  double value;

  if (!tr_words_read (reader, self->member->quantity, tr_entry_field_get_typed (self), &value, NULL))
    value = isnan (self->shown) ? 0 : self->shown;

  g_autofree char *text = tr_words_write (reader, self->member->quantity, tr_member_step (self->member, reader, value, steps));

  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  gtk_editable_set_position (GTK_EDITABLE (self->entry), -1);

  return TRUE;
}

static gboolean
key_pressed_cb (GtkEventControllerKey *controller,
                guint                  keyval,
                guint                  keycode,
                GdkModifierType        state,
                TrEntryField          *self)
{
  TrPage *page = tr_field_get_page (TR_FIELD (self));

  if (page == NULL || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;

  switch (keyval)
    {
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      return step_by (self, page, 1);
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      return step_by (self, page, -1);
    case GDK_KEY_Page_Up:
      return step_by (self, page, 10);
    case GDK_KEY_Page_Down:
      return step_by (self, page, -10);
    case GDK_KEY_Escape:
      return restore (self, page);
    default:
      return FALSE;
    }
}

static void
add_controllers (TrEntryField *self)
{
  GtkEventController *focus = tr_entry_listen (self->entry, G_CALLBACK (key_pressed_cb), G_CALLBACK (focus_left_cb), self);

  g_signal_connect_object (focus, "enter", G_CALLBACK (focus_entered_cb), self, 0);
}

static void
tr_entry_field_dispose (GObject *object)
{
  TrEntryField *self = TR_ENTRY_FIELD (object);

  drop_late_error (self);
  g_clear_pointer (&self->start, tr_dough_figures_unref);
  if (self->entry != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->entry, self);
      self->entry = NULL;
    }

  G_OBJECT_CLASS (tr_entry_field_parent_class)->dispose (object);
}

static void
tr_entry_field_finalize (GObject *object)
{
  TrEntryField *self = TR_ENTRY_FIELD (object);

  g_free (self->shown_text);
  g_free (self->shown_in);
  g_free (self->before_text);

  G_OBJECT_CLASS (tr_entry_field_parent_class)->finalize (object);
}

static void
tr_entry_field_class_init (TrEntryFieldClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  TrFieldClass *field_class = TR_FIELD_CLASS (klass);

  object_class->dispose = tr_entry_field_dispose;
  object_class->finalize = tr_entry_field_finalize;
  field_class->refresh = tr_entry_field_refresh;
  field_class->dup_pointer = tr_entry_field_dup_pointer;
  field_class->take_back = tr_entry_field_take_back;
}

static void
tr_entry_field_init (TrEntryField *self)
{
  self->shown = self->before = NAN;
}

static int
get_width_chars (const TrMember *member)
{
  if (member->hold == TR_HOLD_TEXT)
    return 16;

  return member->quantity == TR_QUANTITY_LENGTH_MM || member->quantity == TR_QUANTITY_MASS_G ? 6 : 5;
}

static GtkWidget *
new_entry (const TrMember *member)
{
  GtkWidget *entry = gtk_entry_new ();
  gboolean is_text = member->hold == TR_HOLD_TEXT;

  /* One way to undo: the document's. */
  gtk_editable_set_enable_undo (GTK_EDITABLE (entry), FALSE);
  gtk_entry_set_input_hints (GTK_ENTRY (entry), is_text ? GTK_INPUT_HINT_NONE : GTK_INPUT_HINT_NO_EMOJI);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), get_width_chars (member));
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), is_text ? 40 : get_width_chars (member));
  if (!is_text)
    {
      gtk_entry_set_alignment (GTK_ENTRY (entry), 1);
      tr_entry_set_tabular (GTK_ENTRY (entry));
    }
  if (member->empty != NULL)
    gtk_entry_set_placeholder_text (GTK_ENTRY (entry), _(member->empty));

  return entry;
}

GtkWidget *
tr_entry_field_new (const TrMember *member,
                    TrFieldShape    shape)
{
  g_return_val_if_fail (member != NULL, NULL);

  TrEntryField *self = g_object_new (TR_TYPE_ENTRY_FIELD, NULL);

  self->member = member;
  self->entry = new_entry (member);
  g_signal_connect (self->entry, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (settle), self);
  add_controllers (self);
  tr_field_build (TR_FIELD (self), shape, _(member->label), member->tooltip != NULL ? _(member->tooltip) : NULL, self->entry);

  return GTK_WIDGET (self);
}

void
tr_entry_field_set_width_chars (TrEntryField *self,
                                int           least,
                                int           most)
{
  g_return_if_fail (TR_IS_ENTRY_FIELD (self));

  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), least);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), most);
}
