/* line-move.c: a line that goes to another stage keeps the weights or moves them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "line-move.h"

#include <glib/gi18n-lib.h>

#include "../calc/moved.h"
#include "compat.h"

/* The answer, with the document as long as that is open. */
#define ANSWER "tourier-line-move"

enum { CANCEL, MOVE_AMOUNT, KEEP_TOTAL };

typedef struct {
  TrPage *page;
  TrTrial *draft;
  TrDoughFigures *before;
  guint from;
  char *undo;
} Question;

static void
question_free (Question *question)
{
  g_clear_object (&question->page);
  g_clear_pointer (&question->draft, tr_trial_unref);
  tr_dough_figures_unref (question->before);
  g_free (question->undo);
  g_free (question);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Question, question_free)

static void
answered_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      user_data)
{
  g_autoptr (Question) question = user_data;
  int answer = tr_compat_ask_finish (result);
  TrDocument *document = tr_page_get_document (question->page);
  int index = tr_page_get_dough_index (question->page);

  /* What was asked about may be gone meanwhile. */
  if (answer == CANCEL || document == NULL || tr_page_get_figures (question->page) != question->before)
    return;

  g_object_set_data (G_OBJECT (document), ANSWER, GINT_TO_POINTER (answer));
  if (answer == KEEP_TOTAL)
    tr_moved_line_keep_weights (question->before, tr_trial_own_dough (question->draft, (guint) index), question->from);
  tr_page_commit (question->page, g_steal_pointer (&question->draft), question->undo, NULL, "/lines");
}

static void
ask (TrPage     *page,
     TrTrial    *draft,
     guint       from,
     const char *undo)
{
  const char *const buttons[] = { _("Cancel"), _("Move the amount"), _("Keep the total"), NULL };
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (page));
  Question *question = g_new0 (Question, 1);

  question->page = g_object_ref (page);
  question->draft = draft;
  question->before = tr_dough_figures_ref ((TrDoughFigures *) tr_page_get_figures (page));
  question->from = from;
  question->undo = g_strdup (undo);
  tr_compat_ask_async (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, _("Keep the weights as they are?"),
                       _("After the move a percentage of the dough or of the total is of something else. Keep the total, and it is "
                         "written in grams; or move the amount, and the weights follow. Not asked again for this trial while it is open."),
                       buttons, CANCEL, KEEP_TOTAL, NULL, answered_cb, question);
}

gboolean
tr_line_move_asks (TrPage     *page,
                   TrTrial    *draft,
                   guint       from,
                   const char *undo)
{
  const TrDoughFigures *before = tr_page_get_figures (page);
  TrDough *dough = tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page));
  int answer = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (tr_page_get_document (page)), ANSWER));

  if (before == NULL || !tr_moved_line_changes_weights (before, dough, from))
    return FALSE;

  if (answer == KEEP_TOTAL)
    tr_moved_line_keep_weights (before, dough, from);
  if (answer != CANCEL)
    return FALSE;

  ask (page, draft, from, undo);

  return TRUE;
}
