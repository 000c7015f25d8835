/* entry-field-take.c: what was typed, read and committed
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "entry-field-private.h"

#include <glib/gi18n-lib.h>

#include "section.h"

static gboolean
commit_draft (TrEntryField *self,
              TrPage       *page,
              TrTrial      *draft)
{
  int dough = tr_page_get_dough_index (page);
  guint item = tr_field_get_item (TR_FIELD (self));
  g_autofree char *label = tr_member_dup_undo (self->member, tr_entry_field_get_trial (page), dough, item);
  g_autoptr (GError) error = NULL;

  if (self->member->check != NULL && !self->member->check (draft, tr_page_get_reader (page), dough, item, &error))
    {
      tr_trial_unref (draft);
      tr_field_set_error (TR_FIELD (self), error->message);
      return FALSE;
    }

  return tr_field_commit (TR_FIELD (self), draft, label, TRUE);
}

gboolean
tr_entry_field_commit_number (TrEntryField *self,
                              TrPage       *page,
                              double        value)
{
  if (tr_entry_field_is_same_number (value, tr_entry_field_get_number (self, page)))
    {
      self->shown = value;
      return TRUE;
    }

  double previous = self->shown;
  TrTrial *draft = tr_document_draft (tr_page_get_document (page));

  tr_member_set_number (self->member, draft, tr_page_get_dough_index (page), tr_field_get_item (TR_FIELD (self)), value);
  /* Before the commit: the refresh that follows must find it shown. */
  self->shown = value;
  if (commit_draft (self, page, draft))
    return TRUE;

  self->shown = previous;

  return FALSE;
}

gboolean
tr_entry_field_commit_figure (TrEntryField  *self,
                              TrPage        *page,
                              double         value,
                              GError       **error)
{
  if (self->start == NULL)
    self->start = tr_dough_figures_ref ((TrDoughFigures *) tr_page_get_figures (page));

  TrTrial *draft = tr_member_draft_figure (self->member, page, self->start, tr_field_get_item (TR_FIELD (self)), value, error);

  if (draft == NULL)
    return FALSE;

  self->is_committing = TRUE;
  gboolean is_done = commit_draft (self, page, draft);
  self->is_committing = FALSE;
  if (!is_done)
    g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_INVALID_DATA, tr_field_get_error (TR_FIELD (self)));

  return is_done;
}

gboolean
tr_entry_field_commit_text (TrEntryField *self,
                            TrPage       *page,
                            const char   *text)
{
  if (g_str_equal (text, tr_entry_field_get_text (self, page)))
    {
      tr_set_text (&self->shown_text, text);
      return TRUE;
    }

  TrTrial *draft = tr_document_draft (tr_page_get_document (page));

  tr_member_set_text (self->member, draft, tr_page_get_dough_index (page), tr_field_get_item (TR_FIELD (self)), text);
  tr_set_text (&self->shown_text, text);

  return commit_draft (self, page, draft);
}

static gboolean
is_blank (const char *text)
{
  while (g_ascii_isspace (*text))
    text++;

  return *text == '\0';
}

static void
take_number (TrEntryField *self,
             TrPage       *page,
             gboolean      is_leaving)
{
  g_autoptr (GError) error = NULL;
  double value = NAN;
  gboolean is_read = (self->member->may_be_empty && is_blank (tr_entry_field_get_typed (self))) ||
                     tr_words_read (tr_page_get_reader (page), self->member->quantity, tr_entry_field_get_typed (self), &value, &error);

  if (is_read && tr_entry_field_is_figure (self))
    is_read = tr_entry_field_commit_figure (self, page, value, &error);
  self->is_unread = !is_read;
  if (!is_read)
    {
      g_autofree char *why = error != NULL ? tr_words_error (tr_page_get_reader (page), error) : g_strdup (_("This is not a number."));

      tr_entry_field_set_error (self, why, is_leaving);
    }
  else if (tr_entry_field_is_figure (self) || tr_entry_field_commit_number (self, page, value))
    tr_entry_field_set_error (self, NULL, TRUE);
  else
    self->is_unread = TRUE;
}

static void
take_amount (TrEntryField *self,
             TrPage       *page,
             gboolean      is_leaving)
{
  const TrReader *reader = tr_page_get_reader (page);
  g_autofree char *text = tr_words_complete_amount (reader, tr_entry_field_get_typed (self));
  TrAmount amount;
  TrProblem problem = { 0 };

  self->is_unread = !tr_amount_parse (text, &amount, &problem);
  if (!self->is_unread)
    {
      tr_entry_field_set_error (self, NULL, TRUE);
      tr_entry_field_commit_text (self, page, text);
      return;
    }

  /* Any text is a document, but half a word is not yet what was meant. Once
   * committed the page shows the problem itself. */
  g_autofree char *sentence = tr_words_problem (reader, &problem);

  g_free (problem.text);
  if (!is_leaving)
    tr_entry_field_set_error (self, sentence, FALSE);
  else if (tr_entry_field_commit_text (self, page, text))
    tr_entry_field_set_error (self, NULL, TRUE);
}

void
tr_entry_field_take (TrEntryField *self,
                     TrPage       *page,
                     gboolean      is_leaving)
{
  if (tr_entry_field_is_number (self))
    take_number (self, page, is_leaving);
  else if (self->member->hold == TR_HOLD_AMOUNT)
    take_amount (self, page, is_leaving);
  else if (tr_entry_field_commit_text (self, page, tr_entry_field_get_typed (self)))
    tr_entry_field_set_error (self, NULL, TRUE);
}
