/* turn-edits.c: what can be done to the turns of a page's dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "turn-edits.h"

#include <glib/gi18n-lib.h>

#include "turn-editor.h"

#define DEFAULT_FOLD 3
#define DEFAULT_THICKNESS_MM 8

/* NULL: there is none. */
static const TrTurn *
get_turn (TrPage *page,
          guint   turn)
{
  const TrDough *dough = tr_page_get_dough (page);

  return dough != NULL && turn < dough->turns->len ? tr_dough_get_turn (dough, turn) : NULL;
}

/* A draft whose dough can be written to. (transfer full) */
static TrTrial *
new_draft (TrPage   *page,
           TrDough **dough)
{
  TrTrial *draft = tr_document_draft (tr_page_get_document (page));

  *dough = tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page));

  return draft;
}

/* What this version does not know of a turn belongs to that turn alone. */
static TrTurn *
new_turn_like (const TrTurn *like)
{
  TrTurn *turn;

  if (like == NULL)
    {
      turn = tr_turn_new (DEFAULT_FOLD, DEFAULT_THICKNESS_MM);
      turn->rest = tr_rest_new ();
      return turn;
    }
  turn = tr_turn_copy (like);
  g_clear_pointer (&turn->extra, g_free);

  return turn;
}

gboolean
tr_turn_add (TrPage *page,
             guint   at)
{
  g_return_val_if_fail (TR_IS_PAGE (page), FALSE);

  const TrDough *shown = tr_page_get_dough (page);

  if (shown == NULL || at > shown->turns->len)
    return FALSE;
  if (shown->turns->len >= TR_MAX_TURNS)
    {
      g_autofree char *sentence = g_strdup_printf (_("This dough has %d turns already, the most there can be."), TR_MAX_TURNS);

      gtk_widget_activate_action (GTK_WIDGET (page), "win.notice", "s", sentence);
      return FALSE;
    }

  TrDough *dough;
  TrTrial *draft = new_draft (page, &dough);
  g_autofree char *where = g_strdup_printf ("/turns/%u", at);

  g_ptr_array_insert (dough->turns, (int) at, new_turn_like (get_turn (page, at > 0 ? at - 1 : 0)));

  return tr_page_commit (page, draft, _("add a turn"), NULL, where);
}

gboolean
tr_turn_remove (TrPage *page,
                guint   turn)
{
  g_return_val_if_fail (TR_IS_PAGE (page), FALSE);

  if (get_turn (page, turn) == NULL)
    return FALSE;

  TrDough *dough;
  TrTrial *draft = new_draft (page, &dough);
  g_autofree char *undo = tr_text_with_number (_("remove turn %u"), turn + 1);

  g_ptr_array_remove_index (dough->turns, turn);

  return tr_page_commit (page, draft, undo, NULL, "/turns");
}

gboolean
tr_turn_move (TrPage *page,
              guint   turn,
              guint   to)
{
  g_return_val_if_fail (TR_IS_PAGE (page), FALSE);

  if (get_turn (page, turn) == NULL || get_turn (page, to) == NULL || turn == to)
    return FALSE;

  TrDough *dough;
  TrTrial *draft = new_draft (page, &dough);
  g_autofree char *undo = tr_text_with_number (_("move turn %u"), turn + 1);
  g_autofree char *where = g_strdup_printf ("/turns/%u", to);

  g_ptr_array_insert (dough->turns, (int) to, g_ptr_array_steal_index (dough->turns, turn));

  return tr_page_commit (page, draft, undo, NULL, where);
}

gboolean
tr_turn_set_fold (TrPage *page,
                  guint   turn,
                  int     fold)
{
  g_return_val_if_fail (TR_IS_PAGE (page), FALSE);

  if (get_turn (page, turn) == NULL || get_turn (page, turn)->fold == fold)
    return FALSE;

  TrDough *dough;
  TrTrial *draft = new_draft (page, &dough);
  g_autofree char *undo = tr_text_with_number (_("change the fold of turn %u"), turn + 1);
  g_autofree char *where = g_strdup_printf ("/turns/%u", turn);

  tr_dough_get_turn (dough, turn)->fold = fold;

  return tr_page_commit (page, draft, undo, NULL, where);
}

/* Writes what says how far it is rolled. `key` as for tr_document_commit. */
static gboolean
write_roll (TrPage         *page,
            guint           turn,
            const TrMember *member,
            double          value,
            const char     *key)
{
  TrDocument *document = tr_page_get_document (page);
  const TrTrial *trial = tr_document_get_trial (document);
  int index = tr_page_get_dough_index (page);

  if (!(value > 0) || value == tr_member_get_number (member, trial, index, turn))
    return FALSE;

  TrTrial *draft = tr_document_draft (document);
  g_autofree char *undo = tr_member_dup_undo (member, trial, index, turn);
  g_autofree char *where = g_strdup_printf ("/turns/%u", turn);

  tr_member_set_number (member, draft, index, turn, value);

  return tr_page_commit (page, draft, undo, key, where);
}

gboolean
tr_turn_thicken (TrPage *page,
                 guint   turn,
                 int     steps)
{
  g_return_val_if_fail (TR_IS_PAGE (page), FALSE);

  const TrTurn *written = get_turn (page, turn);

  if (written == NULL)
    return FALSE;

  const TrMember *member = tr_turn_get_roll_member (written);
  gboolean by_length = tr_is_written (written->length_mm);
  double value = by_length ? written->length_mm : written->thickness_mm;
  g_autofree char *key = g_strdup_printf ("thicken-%u", turn);

  return write_roll (page, turn, member, tr_member_step (member, tr_page_get_reader (page), value, by_length ? -steps : steps), key);
}

gboolean
tr_turn_get_roll (TrPage     *page,
                  guint       turn,
                  TrTurnRoll *roll)
{
  g_return_val_if_fail (TR_IS_PAGE (page), FALSE);
  g_return_val_if_fail (roll != NULL, FALSE);

  const TrDoughFigures *figures = tr_page_get_figures (page);

  if (figures == NULL || !figures->has_lamination || turn >= figures->lamination.steps->len)
    return FALSE;

  const TrTurnFigures *step = &g_array_index (figures->lamination.steps, TrTurnFigures, turn);

  *roll = (TrTurnRoll) { turn, step->rolled_mm.mm[0], step->rolled_mm.mm[2], step->start_mm.mm[2] };

  return roll->length_mm > 0 && roll->thickness_mm > 0 && roll->start_mm > 0;
}

/* To a whole number of the field's steps, at least one, from `least` to `most`. */
static double
round_to_step (TrPage         *page,
               const TrMember *member,
               double          value,
               double          least,
               double          most)
{
  double step = tr_member_step (member, tr_page_get_reader (page), 0, 1);
  double steps = CLAMP (round (value / step), ceil (least / step - 1e-9), MAX (1, floor (most / step + 1e-9)));

  return MAX (1, steps) * step;
}

gboolean
tr_turn_roll_to (TrPage           *page,
                 const TrTurnRoll *roll,
                 double            length_mm)
{
  g_return_val_if_fail (TR_IS_PAGE (page), FALSE);
  g_return_val_if_fail (roll != NULL, FALSE);

  const TrTurn *written = get_turn (page, roll->turn);

  if (written == NULL)
    return FALSE;

  const TrMember *member = tr_turn_get_roll_member (written);
  double plan = roll->length_mm * roll->thickness_mm, most_thick = MAX (roll->start_mm, roll->thickness_mm);
  double length = MAX (length_mm, plan / most_thick);
  double value = tr_is_written (written->length_mm) ? round_to_step (page, member, length, plan / most_thick, G_MAXDOUBLE)
                                                    : round_to_step (page, member, plan / length, 0, most_thick);

  return write_roll (page, roll->turn, member, value, NULL);
}
