/* line-edits.c: what can be done to a line of a page's dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "line-edits.h"

#include <glib/gi18n-lib.h>

#include "line-members.h"
#include "line-move.h"
#include "lines.h"

static const TrTrial *
get_trial (TrPage *page)
{
  return tr_document_get_trial (tr_page_get_document (page));
}

static TrDough *
start_draft (TrPage   *page,
             TrTrial **draft)
{
  *draft = tr_document_draft (tr_page_get_document (page));

  return tr_trial_own_dough (*draft, (guint) tr_page_get_dough_index (page));
}

/* The ingredient */

static TrTrial *
draft_with_ingredient (TrPage     *page,
                       guint       item,
                       const char *id,
                       const char *text)
{
  TrTrial *draft;

  start_draft (page, &draft);

  TrLine *line = tr_reach_line (draft, tr_page_get_dough_index (page), item, TRUE);

  /* Once it is understood the text has done its work; an original line beside
   * an ingredient stays. */
  if (id == NULL)
    tr_set_text (&line->text, text);
  else if (line->ingredient == NULL)
    tr_set_text (&line->text, NULL);
  tr_set_text (&line->ingredient, id);

  return draft;
}

static char *
dup_ingredient_undo (TrPage     *page,
                     guint       item,
                     const char *id,
                     const char *text)
{
  TrLine line = { .ingredient = (char *) id, .text = (char *) text };
  g_autofree char *name = tr_line_dup_name (get_trial (page), &line);

  if (tr_line_is_pending (item))
    return g_strdup_printf (_("add %s"), name);

  return g_strdup_printf (_("change ingredient to %s"), name);
}

void
tr_line_set_ingredient (TrPage     *page,
                        guint       item,
                        const char *id,
                        const char *text)
{
  g_return_if_fail (TR_IS_PAGE (page));

  const TrLine *line = tr_reach_line (get_trial (page), tr_page_get_dough_index (page), item, FALSE);

  if (line == NULL)
    return;

  gboolean is_blank = id == NULL && (text == NULL || *text == '\0');
  gboolean is_same = g_strcmp0 (id, line->ingredient) == 0 &&
                     (id != NULL || g_strcmp0 (text, line->text != NULL ? line->text : "") == 0);

  if (is_same || (is_blank && tr_line_is_pending (item)))
    return;

  g_autofree char *undo = dup_ingredient_undo (page, item, id, text);
  g_autofree char *where = tr_line_dup_pointer (get_trial (page), tr_page_get_dough_index (page), item, "ingredient");

  tr_page_commit (page, draft_with_ingredient (page, item, id, text), undo, NULL, where);
}

/* Its place */

static char *
dup_undo (TrPage     *page,
          guint       item,
          const char *format)
{
  const TrLine *line = tr_dough_get_line (tr_page_get_dough (page), item);
  g_autofree char *name = tr_line_dup_name (get_trial (page), line);
  GString *undo = g_string_new (format);

  g_string_replace (undo, "%s", name, 1);

  return g_string_free (undo, FALSE);
}

/* Takes the draft; `index`: -1, it does not move. */
static int
commit_move (TrPage     *page,
             TrTrial    *draft,
             int         index,
             const char *undo)
{
  g_autofree char *where = g_strdup_printf ("/lines/%d", index);

  if (index < 0)
    {
      tr_trial_unref (draft);
      return -1;
    }

  return tr_page_commit (page, draft, undo, NULL, where) ? index : -1;
}

int
tr_line_move (TrPage *page,
              guint   item,
              int     by)
{
  g_return_val_if_fail (TR_IS_PAGE (page), -1);

  TrTrial *draft;
  TrDough *dough = start_draft (page, &draft);
  g_autofree char *undo = dup_undo (page, item, _("move %s"));

  return commit_move (page, draft, tr_lines_move (dough, item, by), undo);
}

int
tr_line_set_stage (TrPage     *page,
                   guint       item,
                   const char *stage)
{
  g_return_val_if_fail (TR_IS_PAGE (page), -1);

  TrTrial *draft;
  TrDough *dough = start_draft (page, &draft);
  int id = tr_stage_from_id (stage);
  guint index = id >= 0 ? tr_lines_set_stage (dough, item, (TrStage) id) : tr_lines_set_new_group (dough, item);
  g_autofree char *undo = dup_undo (page, item, _("move %s"));

  /* It stood there already where it did not go to the end. */
  if (index + 1 == dough->lines->len && tr_line_move_asks (page, draft, item, undo))
    return -1;

  return commit_move (page, draft, (int) index, undo);
}

void
tr_line_remove (TrPage *page,
                guint   item)
{
  g_return_if_fail (TR_IS_PAGE (page));

  g_autofree char *undo = dup_undo (page, item, _("remove %s"));
  TrTrial *draft;
  TrDough *dough = start_draft (page, &draft);

  g_ptr_array_remove_index (dough->lines, item);
  tr_page_commit (page, draft, undo, NULL, "/lines");
}
