/* branch.c: a dough that comes from another, and a trial that goes on from one
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "branch.h"

#include <string.h>

/* What happened to the one has not happened to the other. */
static void
forget_log (TrDough *dough)
{
  tr_log_free (dough->log);
  dough->log = tr_log_new ();
}

TrDough *
tr_trial_branch_dough (TrTrial    *draft,
                       guint       index,
                       const char *name)
{
  g_return_val_if_fail (draft != NULL && index < draft->doughs->len, NULL);

  if (draft->doughs->len >= TR_MAX_DOUGHS)
    return NULL;

  const TrDough *original = tr_trial_get_dough (draft, index);
  TrDough *branch = tr_dough_copy (original);
  g_autofree char *id = tr_trial_dup_free_id (draft);

  tr_set_text (&branch->from, original->id);
  tr_set_text (&branch->id, id);
  tr_set_text (&branch->name, name);
  forget_log (branch);
  g_ptr_array_insert (draft->doughs, (int) index + 1, branch);

  return branch;
}

/* Names ***********************************************************************/

/* The bytes before a number that stands alone at the end; `number` is 1 without one. */
static gsize
split_number (const char *name,
              guint64    *number)
{
  gsize length = strlen (name), end = length;

  *number = 1;
  while (end > 0 && g_ascii_isdigit (name[end - 1]))
    end--;
  if (end == length || end == 0 || name[end - 1] != ' ' || length - end > 6)
    return length;

  *number = g_ascii_strtoull (name + end, NULL, 10);
  while (end > 0 && name[end - 1] == ' ')
    end--;

  return end;
}

static gboolean
is_taken (const TrTrial *trial,
          const char    *name)
{
  for (guint i = 0; i < trial->doughs->len; i++)
    if (g_strcmp0 (tr_trial_get_dough (trial, i)->name, name) == 0)
      return TRUE;

  return FALSE;
}

char *
tr_trial_dup_next_name (const TrTrial *trial,
                        const char    *name)
{
  guint64 number;
  g_autofree char *stem = NULL;

  g_return_val_if_fail (trial != NULL && name != NULL, NULL);

  stem = g_strndup (name, split_number (name, &number));
  for (;;)
    {
      g_autofree char *next = g_strdup_printf ("%s %" G_GUINT64_FORMAT, stem, ++number);

      if (!is_taken (trial, next))
        return g_steal_pointer (&next);
    }
}

/* Lineage *********************************************************************/

static int
find_written_parent (const TrTrial *trial,
                     guint          index)
{
  const char *from = tr_trial_get_dough (trial, index)->from;

  return from != NULL ? tr_trial_find_dough (trial, from) : -1;
}

/* Whether it stands in a ring, and first of all that stand in it. */
static gboolean
begins_ring (const TrTrial *trial,
             guint          index)
{
  int at = find_written_parent (trial, index);
  gboolean is_first = TRUE;

  for (guint steps = 0; at >= 0 && steps < trial->doughs->len; steps++)
    {
      if ((guint) at == index)
        return is_first;
      is_first = is_first && (guint) at > index;
      at = find_written_parent (trial, (guint) at);
    }

  return FALSE;
}

int
tr_trial_find_parent (const TrTrial *trial,
                      guint          index)
{
  g_return_val_if_fail (trial != NULL && index < trial->doughs->len, -1);

  return begins_ring (trial, index) ? -1 : find_written_parent (trial, index);
}

static void
add_descent (const TrTrial *trial,
             const int     *parents,
             guint          dough,
             int            parent,
             guint          generation,
             GArray        *lineage)
{
  TrDescent descent = { dough, parent, generation };
  int place = (int) lineage->len;

  g_array_append_val (lineage, descent);
  for (guint i = 0; i < trial->doughs->len; i++)
    if (parents[i] == (int) dough)
      add_descent (trial, parents, i, place, generation + 1, lineage);
}

GArray *
tr_trial_get_lineage (const TrTrial *trial)
{
  GArray *lineage = g_array_new (FALSE, FALSE, sizeof (TrDescent));
  g_autofree int *parents = NULL;

  g_return_val_if_fail (trial != NULL, lineage);

  parents = g_new (int, trial->doughs->len);
  for (guint i = 0; i < trial->doughs->len; i++)
    parents[i] = tr_trial_find_parent (trial, i);
  for (guint i = 0; i < trial->doughs->len; i++)
    if (parents[i] < 0)
      add_descent (trial, parents, i, -1, 0, lineage);

  return lineage;
}

/* A new trial *****************************************************************/

static gboolean
comes_along (const TrTrial     *trial,
             int                index,
             const char *const *doughs)
{
  return g_strv_contains (doughs, tr_trial_get_dough (trial, (guint) index)->id);
}

static const char *
find_forebear (const TrTrial     *trial,
               guint              index,
               const char *const *doughs)
{
  int at = tr_trial_find_parent (trial, index);

  while (at >= 0 && !comes_along (trial, at, doughs))
    at = tr_trial_find_parent (trial, (guint) at);

  return at >= 0 ? tr_trial_get_dough (trial, (guint) at)->id : NULL;
}

TrTrial *
tr_trial_carry (const TrTrial     *trial,
                const char *const *doughs,
                const char        *title)
{
  g_return_val_if_fail (trial != NULL && doughs != NULL, NULL);

  TrTrial *next = tr_trial_new ();

  tr_set_text (&next->title, title);
  tr_bench_unref (next->bench);
  next->bench = tr_bench_ref (trial->bench);
  tr_pantry_unref (next->pantry);
  next->pantry = tr_pantry_ref (trial->pantry);
  for (guint i = 0; i < trial->doughs->len; i++)
    {
      if (!comes_along (trial, (int) i, doughs))
        continue;

      TrDough *dough = tr_dough_copy (tr_trial_get_dough (trial, i));

      tr_set_text (&dough->from, find_forebear (trial, i, doughs));
      forget_log (dough);
      g_ptr_array_add (next->doughs, dough);
    }

  return next;
}
