/* lines.c: the formula's lines as a list that is ordered, moved and matched
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "lines.h"

#include <glib/gi18n-lib.h>

/* Pending items: bit 31, then the stage in bits 24 and up, then after + 1. */
#define STAGE_SHIFT 24
#define AFTER_MASK 0xffffffu

guint
tr_line_pending_item (TrStage stage,
                      int     after)
{
  return TR_LINE_PENDING | ((guint) stage << STAGE_SHIFT) | ((guint) (after + 1) & AFTER_MASK);
}

gboolean
tr_line_is_pending (guint item)
{
  return (item & TR_LINE_PENDING) != 0;
}

TrStage
tr_line_pending_stage (guint item)
{
  return (TrStage) ((item & ~TR_LINE_PENDING) >> STAGE_SHIFT);
}

int
tr_line_pending_after (guint item)
{
  return (int) (item & AFTER_MASK) - 1;
}

guint
tr_line_pending_index (const TrDough *dough,
                       guint          item)
{
  int after = tr_line_pending_after (item);

  return after >= 0 && after < (int) dough->lines->len ? (guint) after + 1 : dough->lines->len;
}

static const char *
find_last_group (const TrDough *dough)
{
  for (guint i = dough->lines->len; i-- > 0;)
    if (tr_dough_get_line (dough, i)->stage == TR_STAGE_PREFERMENT)
      return tr_dough_get_line (dough, i)->group;

  return _("preferment");
}

static TrLine *
make_pending (TrDough *dough,
              guint    item)
{
  TrStage stage = tr_line_pending_stage (item);
  guint index = tr_line_pending_index (dough, item);
  TrLine *line = tr_line_new (stage, NULL, "");

  if (stage == TR_STAGE_PREFERMENT)
    {
      int after = tr_line_pending_after (item);

      line->group = g_strdup (after >= 0 && after < (int) dough->lines->len ?
                              tr_dough_get_line (dough, (guint) after)->group : find_last_group (dough));
    }
  g_ptr_array_insert (dough->lines, (int) index, line);

  return line;
}

gpointer
tr_reach_line (const TrTrial *trial,
               int            dough,
               guint          item,
               gboolean       make)
{
  static const TrLine blank = { .amount = (char *) "", .hydration_percent = NAN };
  TrDough *own = tr_trial_get_dough (trial, (guint) dough);

  if (tr_line_is_pending (item))
    return make ? make_pending (own, item) : (gpointer) &blank;

  return item < own->lines->len ? tr_dough_get_line (own, item) : NULL;
}

static gboolean
are_together (const TrLine *a,
              const TrLine *b)
{
  return a->stage == b->stage && (a->stage != TR_STAGE_PREFERMENT || g_strcmp0 (a->group, b->group) == 0);
}

gboolean
tr_line_equal (const TrLine *a,
               const TrLine *b)
{
  gboolean is_same_hydration = isnan (a->hydration_percent) ? isnan (b->hydration_percent) :
                               a->hydration_percent == b->hydration_percent;

  return is_same_hydration && a->stage == b->stage &&
         g_strcmp0 (a->group, b->group) == 0 && g_strcmp0 (a->ingredient, b->ingredient) == 0 &&
         g_strcmp0 (a->amount, b->amount) == 0 && g_strcmp0 (a->text, b->text) == 0;
}

/* Order */

static void
append_group (const TrDough *dough,
              guint          first,
              GArray        *order)
{
  const TrLine *head = tr_dough_get_line (dough, first);

  for (guint i = first; i < dough->lines->len; i++)
    if (are_together (tr_dough_get_line (dough, i), head))
      g_array_append_val (order, i);
}

static gboolean
is_first_of_group (const TrDough *dough,
                   guint          index)
{
  for (guint i = 0; i < index; i++)
    if (are_together (tr_dough_get_line (dough, i), tr_dough_get_line (dough, index)))
      return FALSE;

  return TRUE;
}

GArray *
tr_lines_dup_order (const TrDough *dough)
{
  GArray *order = g_array_sized_new (FALSE, FALSE, sizeof (guint), dough->lines->len);

  for (guint stage = 0; stage < TR_N_STAGES; stage++)
    for (guint i = 0; i < dough->lines->len; i++)
      if (tr_dough_get_line (dough, i)->stage == stage && is_first_of_group (dough, i))
        append_group (dough, i, order);

  return order;
}

/* Moving */

static guint
move_to (TrDough *dough,
         guint    from,
         guint    to)
{
  TrLine *line = g_ptr_array_steal_index (dough->lines, from);

  g_ptr_array_insert (dough->lines, (int) to, line);

  return to;
}

static int
find_in_order (GArray *order,
               guint   index)
{
  for (guint i = 0; i < order->len; i++)
    if (g_array_index (order, guint, i) == index)
      return (int) i;

  return -1;
}

int
tr_lines_move (TrDough *dough,
               guint    index,
               int      by)
{
  g_autoptr (GArray) order = tr_lines_dup_order (dough);
  int place = find_in_order (order, index) + by;

  if (place < 0 || place >= (int) order->len)
    return -1;

  guint other = g_array_index (order, guint, place);
  TrLine *line = tr_dough_get_line (dough, index);
  const TrLine *neighbour = tr_dough_get_line (dough, other);

  if (!are_together (line, neighbour))
    {
      line->stage = neighbour->stage;
      tr_set_text (&line->group, neighbour->group);
      /* It stays where it is seen: behind the last or before the first there. */
      by = -by;
    }

  /* Out of the list and in again, before (-1) or behind (1) the neighbour. */
  guint behind = other > index ? other - 1 : other;

  return (int) move_to (dough, index, by > 0 ? behind + 1 : behind);
}

guint
tr_lines_set_stage (TrDough *dough,
                    guint    index,
                    TrStage  stage)
{
  TrLine *line = tr_dough_get_line (dough, index);

  if (line->stage == stage)
    return index;

  tr_set_text (&line->group, stage == TR_STAGE_PREFERMENT ? find_last_group (dough) : NULL);
  line->stage = stage;

  return move_to (dough, index, dough->lines->len - 1);
}

static gboolean
has_group (const TrDough *dough,
           const char    *group)
{
  for (guint i = 0; i < dough->lines->len; i++)
    if (g_strcmp0 (tr_dough_get_line (dough, i)->group, group) == 0)
      return TRUE;

  return FALSE;
}

char *
tr_lines_dup_free_group (const TrDough *dough,
                         const char    *name)
{
  char *group = g_strdup (name);

  for (guint n = 2; has_group (dough, group); n++)
    {
      g_free (group);
      /* Translators: the second preferment of that name and so on. */
      group = g_strdup_printf (_("%s %u"), name, n);
    }

  return group;
}

guint
tr_lines_set_new_group (TrDough *dough,
                        guint    index)
{
  TrLine *line = tr_dough_get_line (dough, index);
  g_autofree char *group = tr_lines_dup_free_group (dough, _("preferment"));

  tr_set_text (&line->group, group);
  line->stage = TR_STAGE_PREFERMENT;

  return move_to (dough, index, dough->lines->len - 1);
}

void
tr_lines_rename_group (TrDough    *dough,
                       const char *group,
                       const char *name)
{
  g_autofree char *old = g_strdup (group);

  for (guint i = 0; i < dough->lines->len; i++)
    {
      TrLine *line = tr_dough_get_line (dough, i);

      if (line->stage == TR_STAGE_PREFERMENT && g_strcmp0 (line->group, old) == 0)
        tr_set_text (&line->group, name);
    }
}

/* Matching */

static void
match_ends (TrLine *const *old,
            guint          n_old,
            const TrDough *dough,
            GArray        *match,
            gboolean      *is_taken)
{
  guint n = dough->lines->len, head = 0;

  while (head < MIN (n, n_old) && tr_line_equal (old[head], tr_dough_get_line (dough, head)))
    {
      g_array_index (match, int, head) = (int) head;
      is_taken[head++] = TRUE;
    }
  for (guint tail = 1; tail <= MIN (n, n_old) - head && tr_line_equal (old[n_old - tail], tr_dough_get_line (dough, n - tail)); tail++)
    {
      g_array_index (match, int, n - tail) = (int) (n_old - tail);
      is_taken[n_old - tail] = TRUE;
    }
}

/* With `is_exact` only lines that did not change; else any, in order. */
static void
match_rest (TrLine *const *old,
            guint          n_old,
            const TrDough *dough,
            gboolean       is_exact,
            GArray        *match,
            gboolean      *is_taken)
{
  for (guint i = 0; i < dough->lines->len; i++)
    for (guint j = 0; j < n_old && g_array_index (match, int, i) < 0; j++)
      if (!is_taken[j] && (!is_exact || tr_line_equal (old[j], tr_dough_get_line (dough, i))))
        {
          g_array_index (match, int, i) = (int) j;
          is_taken[j] = TRUE;
        }
}

GArray *
tr_lines_match (TrLine *const *old,
                guint          n_old,
                const TrDough *dough)
{
  GArray *match = g_array_sized_new (FALSE, FALSE, sizeof (int), dough->lines->len);
  g_autofree gboolean *is_taken = g_new0 (gboolean, n_old + 1);
  int none = -1;

  for (guint i = 0; i < dough->lines->len; i++)
    g_array_append_val (match, none);
  match_ends (old, n_old, dough, match, is_taken);
  match_rest (old, n_old, dough, TRUE, match, is_taken);
  /* What is left was changed: it goes on in the rows that are left, in order. */
  match_rest (old, n_old, dough, FALSE, match, is_taken);

  return match;
}
