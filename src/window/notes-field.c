/* notes-field.c: a text of many lines
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every key counts at once; a stretch of typing is one undo step. The caret
 * stays where it is unless the text was changed by something else.
 */

#include "config.h"

#include "notes-field.h"

#include <glib/gi18n-lib.h>

struct _TrNotesField
{
  TrField parent_instance;

  /* Borrowed */
  const TrMember *member;
  GtkTextBuffer *buffer;

  guint is_setting : 1;
};

G_DEFINE_FINAL_TYPE (TrNotesField, tr_notes_field, TR_TYPE_FIELD)

static char *
dup_typed (TrNotesField *self)
{
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (self->buffer, &start, &end);

  return gtk_text_buffer_get_text (self->buffer, &start, &end, TRUE);
}

static const char *
get_written (TrNotesField *self,
             TrPage       *page)
{
  return tr_member_get_text (self->member, tr_document_get_trial (tr_page_get_document (page)),
                             tr_page_get_dough_index (page), tr_field_get_item (TR_FIELD (self)));
}

static void
set_buffer_text (TrNotesField *self,
                 const char   *text)
{
  GtkTextIter caret;
  int offset;

  gtk_text_buffer_get_iter_at_mark (self->buffer, &caret, gtk_text_buffer_get_insert (self->buffer));
  offset = gtk_text_iter_get_offset (&caret);

  self->is_setting = TRUE;
  gtk_text_buffer_set_text (self->buffer, text, -1);
  gtk_text_buffer_get_iter_at_offset (self->buffer, &caret, offset);
  gtk_text_buffer_place_cursor (self->buffer, &caret);
  self->is_setting = FALSE;
}

static void
tr_notes_field_refresh (TrField *field)
{
  TrNotesField *self = TR_NOTES_FIELD (field);
  TrPage *page = tr_field_get_page (field);

  if (page == NULL)
    return;

  const char *written = get_written (self, page);
  g_autofree char *typed = dup_typed (self);

  gtk_widget_set_visible (GTK_WIDGET (self), written != NULL);
  if (written != NULL && !g_str_equal (typed, written))
    set_buffer_text (self, written);
}

static char *
tr_notes_field_dup_pointer (TrField *field)
{
  TrNotesField *self = TR_NOTES_FIELD (field);
  TrPage *page = tr_field_get_page (field);

  if (page == NULL || get_written (self, page) == NULL)
    return NULL;

  return tr_text_with_number (self->member->pointer, tr_field_get_item (field));
}

static void
changed_cb (GtkTextBuffer *buffer,
            TrNotesField  *self)
{
  TrPage *page = tr_field_get_page (TR_FIELD (self));

  if (self->is_setting || page == NULL || tr_page_is_refreshing (page) || get_written (self, page) == NULL)
    return;

  g_autofree char *typed = dup_typed (self);
  TrTrial *draft = tr_document_draft (tr_page_get_document (page));

  tr_member_set_text (self->member, draft, tr_page_get_dough_index (page), tr_field_get_item (TR_FIELD (self)), typed);
  tr_field_commit (TR_FIELD (self), draft, _(self->member->undo), TRUE);
}

static void
focus_left_cb (GtkEventControllerFocus *controller,
               TrNotesField            *self)
{
  TrPage *page = tr_field_get_page (TR_FIELD (self));

  if (page != NULL && !tr_page_is_refreshing (page))
    tr_document_seal (tr_page_get_document (page));
}

static void
tr_notes_field_dispose (GObject *object)
{
  TrNotesField *self = TR_NOTES_FIELD (object);

  if (self->buffer != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->buffer, self);
      g_clear_object (&self->buffer);
    }

  G_OBJECT_CLASS (tr_notes_field_parent_class)->dispose (object);
}

static void
tr_notes_field_class_init (TrNotesFieldClass *klass)
{
  TrFieldClass *field_class = TR_FIELD_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_notes_field_dispose;
  field_class->refresh = tr_notes_field_refresh;
  field_class->dup_pointer = tr_notes_field_dup_pointer;
}

static void
tr_notes_field_init (TrNotesField *self)
{
}

static GtkWidget *
new_text_view (TrNotesField *self)
{
  GtkWidget *view = gtk_text_view_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_text_view_set_wrap_mode (GTK_TEXT_VIEW (view), GTK_WRAP_WORD_CHAR);
  /* Tab goes on to the next field. */
  gtk_text_view_set_accepts_tab (GTK_TEXT_VIEW (view), FALSE);
  gtk_text_view_set_top_margin (GTK_TEXT_VIEW (view), 6);
  gtk_text_view_set_bottom_margin (GTK_TEXT_VIEW (view), 6);
  gtk_text_view_set_left_margin (GTK_TEXT_VIEW (view), 6);
  gtk_text_view_set_right_margin (GTK_TEXT_VIEW (view), 6);
  gtk_widget_set_size_request (view, -1, 60);
  gtk_widget_set_hexpand (view, TRUE);
  gtk_widget_add_css_class (view, "notes");

  g_signal_connect_object (focus, "leave", G_CALLBACK (focus_left_cb), self, 0);
  gtk_widget_add_controller (view, focus);

  return view;
}

GtkWidget *
tr_notes_field_new (const TrMember *member)
{
  g_return_val_if_fail (member != NULL && member->hold == TR_HOLD_TEXT, NULL);

  TrNotesField *self = g_object_new (TR_TYPE_NOTES_FIELD, NULL);
  GtkWidget *view = new_text_view (self);

  self->member = member;
  self->buffer = g_object_ref (gtk_text_view_get_buffer (GTK_TEXT_VIEW (view)));
  gtk_text_buffer_set_enable_undo (self->buffer, FALSE);
  g_signal_connect (self->buffer, "changed", G_CALLBACK (changed_cb), self);
  tr_field_build (TR_FIELD (self), TR_FIELD_ABOVE, _(member->label), member->tooltip != NULL ? _(member->tooltip) : NULL, view);

  return GTK_WIDGET (self);
}
