/* history.c: the trials that were, and which of them is on disk
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *     steps     0 ─── 1 ─── 2 ─── 3 ─── 4
 *                     ▲           ▲
 *                   saved      current: undo gives 2, redo gives 4
 *
 * Step 0 is where it all began; its label and pointer say nothing. `saved` is
 * an index, or NOWHERE once the saved trial can no longer be reached: an edit
 * after an undo cut it off, or it was so long ago that it is forgotten.
 *
 * A drag lies beside the steps until it ends: nothing of them is touched, so
 * that a cancelled one costs nothing, not even what could be redone.
 *
 *     steps     0 ─── 1 ─── 2 ─── 3        current 1, redo would give 2
 *                     └── dragged          the trial now; undo would give 1
 */

#include "history.h"

#define NOWHERE (-1)

typedef struct {
  TrTrial *trial;
  char *label, *key, *pointer;   /* of the commit that led here */
  gsize bytes;
} Step;

struct _TrHistory {
  GPtrArray *steps;              /* Step */
  int current, saved;
  gsize bytes;                   /* of all steps */
  gboolean is_sealed;            /* nothing joins the current step */
  gint64 pushed_us;
  gboolean is_dragging;
  Step *dragged;                 /* NULL: nothing was committed in this drag yet */
};

static void
step_free (Step *step)
{
  tr_trial_unref (step->trial);
  g_free (step->label);
  g_free (step->key);
  g_free (step->pointer);
  g_free (step);
}

static Step *
step_new (TrTrial    *trial,
          const char *label,
          const char *key,
          const char *pointer,
          gsize       bytes)
{
  Step *step = g_new0 (Step, 1);

  step->trial = trial;
  step->label = g_strdup (label);
  step->key = g_strdup (key);
  step->pointer = g_strdup (pointer != NULL ? pointer : "");
  step->bytes = bytes;

  return step;
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Step, step_free)

static Step *
step_at (const TrHistory *self,
         int              index)
{
  return g_ptr_array_index (self->steps, (guint) index);
}

static int
last_index (const TrHistory *self)
{
  return (int) self->steps->len - 1;
}

TrHistory *
tr_history_new (TrTrial *trial)
{
  TrHistory *self = g_new0 (TrHistory, 1);

  self->steps = g_ptr_array_new_with_free_func ((GDestroyNotify) step_free);
  g_ptr_array_add (self->steps, step_new (trial, NULL, NULL, NULL, 0));
  self->is_sealed = TRUE;

  return self;
}

void
tr_history_free (TrHistory *self)
{
  if (self == NULL)
    return;

  g_clear_pointer (&self->dragged, step_free);
  g_ptr_array_unref (self->steps);
  g_free (self);
}

const TrTrial *
tr_history_get_trial (const TrHistory *self)
{
  return self->dragged != NULL ? self->dragged->trial : step_at (self, self->current)->trial;
}

const TrTrial *
tr_history_peek_undo (const TrHistory *self)
{
  if (self->dragged != NULL)
    return step_at (self, self->current)->trial;

  return self->current > 0 ? step_at (self, self->current - 1)->trial : NULL;
}

guint
tr_history_get_n_undo (const TrHistory *self)
{
  return (guint) self->current + (self->dragged != NULL ? 1 : 0);
}

/* Adding and forgetting */

static void
remove_step (TrHistory *self,
             int        index)
{
  self->bytes -= step_at (self, index)->bytes;
  g_ptr_array_remove_index (self->steps, (guint) index);

  if (self->saved == index)
    self->saved = NOWHERE;
  else if (self->saved > index)
    self->saved--;
  if (self->current >= index && self->current > 0)
    self->current--;
}

static void
forget_redo (TrHistory *self)
{
  while (last_index (self) > self->current)
    remove_step (self, last_index (self));
}

static void
forget_oldest (TrHistory *self)
{
  while (self->steps->len > TR_HISTORY_MAX_STEPS + 1
         || (self->steps->len > 2 && self->bytes > TR_HISTORY_MAX_BYTES))
    remove_step (self, 0);
}

gboolean
tr_history_would_join (const TrHistory *self,
                       const char      *key,
                       gint64           now_us)
{
  if (self->is_dragging)
    return self->dragged != NULL;

  return key != NULL
         && !self->is_sealed
         && self->current == last_index (self)
         && g_strcmp0 (step_at (self, self->current)->key, key) == 0
         && now_us - self->pushed_us < TR_HISTORY_QUIET_US;
}

static void
add_step (TrHistory *self,
          Step      *step)
{
  forget_redo (self);
  g_ptr_array_add (self->steps, step);
  self->current++;
  self->bytes += step->bytes;
  forget_oldest (self);
}

void
tr_history_push (TrHistory  *self,
                 TrTrial    *trial,
                 const char *label,
                 const char *key,
                 const char *pointer,
                 gsize       bytes,
                 gint64      now_us)
{
  g_autoptr (Step) step = step_new (trial, label, key, pointer, bytes);

  if (tr_history_would_join (self, key, now_us))
    tr_history_drop_newest (self);

  if (self->is_dragging)
    {
      self->dragged = g_steal_pointer (&step);
      return;
    }

  add_step (self, g_steal_pointer (&step));
  self->is_sealed = FALSE;
  self->pushed_us = now_us;
}

void
tr_history_drop_newest (TrHistory *self)
{
  if (self->dragged != NULL)
    {
      g_clear_pointer (&self->dragged, step_free);
      return;
    }

  g_return_if_fail (self->current > 0 && self->current == last_index (self));

  remove_step (self, self->current);
  tr_history_seal (self);
}

void
tr_history_seal (TrHistory *self)
{
  self->is_sealed = TRUE;
}

/* Dragging */

void
tr_history_settle (TrHistory *self)
{
  if (self->dragged != NULL)
    add_step (self, g_steal_pointer (&self->dragged));
  tr_history_seal (self);
}

void
tr_history_begin_drag (TrHistory *self)
{
  tr_history_settle (self);
  self->is_dragging = TRUE;
}

char *
tr_history_end_drag (TrHistory *self,
                     gboolean   is_cancelled)
{
  char *pointer = NULL;

  if (!self->is_dragging)
    return NULL;

  self->is_dragging = FALSE;
  if (is_cancelled && self->dragged != NULL)
    {
      pointer = g_steal_pointer (&self->dragged->pointer);
      g_clear_pointer (&self->dragged, step_free);
    }
  tr_history_settle (self);

  return pointer;
}

/* Going back and forth */

const char *
tr_history_undo (TrHistory *self)
{
  tr_history_settle (self);
  if (self->current == 0)
    return NULL;

  return step_at (self, self->current--)->pointer;
}

const char *
tr_history_redo (TrHistory *self)
{
  tr_history_settle (self);
  if (self->current == last_index (self))
    return NULL;

  return step_at (self, ++self->current)->pointer;
}

const char *
tr_history_get_undo_label (const TrHistory *self)
{
  if (self->dragged != NULL)
    return self->dragged->label;

  return self->current > 0 ? step_at (self, self->current)->label : NULL;
}

const char *
tr_history_get_redo_label (const TrHistory *self)
{
  return self->dragged == NULL && self->current < last_index (self) ? step_at (self, self->current + 1)->label : NULL;
}

/* What is on disk */

gboolean
tr_history_is_saved (const TrHistory *self)
{
  return self->dragged == NULL && self->saved == self->current;
}

void
tr_history_mark_saved (TrHistory *self)
{
  tr_history_settle (self);
  self->saved = self->current;
}

void
tr_history_mark_unsaved (TrHistory *self)
{
  tr_history_settle (self);
  self->saved = NOWHERE;
}
