/* test-history.c: undo, redo, joining and the saved marker, as tables of commands
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A trial is known by its title here. A naive model (a list of titles) runs
 * beside the history for random commands.
 */

#include <string.h>

#include "trial/history.h"

/* One letter a command, words parted by spaces:
 *   aX   push title X without key      kX  push X with key k (l: key l)
 *   u    undo     r  redo     s  mark saved     x  seal     d  drop newest
 *   b    begin a drag         e  end it         c  cancel it
 *   +N   N tenths of a second pass
 * and after each script: title, steps to undo, undo label, redo label, saved. */
typedef struct {
  const char *name, *script, *title;
  guint n_undo;
  const char *undo_label, *redo_label;
  gboolean is_saved;
} Script;

static const Script scripts[] = {
  { "begins-saved", "", "0", 0, NULL, NULL, TRUE },
  { "one-edit", "aA", "A", 1, "A", NULL, FALSE },
  { "undo-to-saved-is-unmodified", "aA u", "0", 0, NULL, "A", TRUE },
  { "redo", "aA aB u u r", "A", 1, "A", "B", FALSE },
  { "undo-at-the-beginning-does-nothing", "u u", "0", 0, NULL, NULL, TRUE },
  { "redo-at-the-end-does-nothing", "aA r r", "A", 1, "A", NULL, FALSE },
  { "edit-forgets-redo", "aA aB u aC r", "C", 2, "C", NULL, FALSE },
  { "saved-in-the-middle", "aA s aB u", "A", 1, "A", "B", TRUE },
  { "saved-then-undo", "aA s u", "0", 0, NULL, "A", FALSE },
  { "saved-then-undo-redo", "aA s u r", "A", 1, "A", NULL, TRUE },
  { "branching-cuts-saved-off", "aA s u aB u", "0", 0, NULL, "B", FALSE },
  { "branching-after-saved-keeps-it", "s aA u aB u", "0", 0, NULL, "B", TRUE },
  { "saving-again-mends", "aA s u aB s", "B", 1, "B", NULL, TRUE },
  { "same-key-joins", "kA kB kC", "C", 1, "C", NULL, FALSE },
  { "joined-undo-at-once", "kA kB kC u", "0", 0, NULL, "C", TRUE },
  { "other-key-does-not-join", "kA lB kC", "C", 3, "C", NULL, FALSE },
  { "no-key-never-joins", "aA aB", "B", 2, "B", NULL, FALSE },
  { "no-key-between", "kA aB kC", "C", 3, "C", NULL, FALSE },
  { "quiet-of-two-seconds-parts", "kA +20 kB", "B", 2, "B", NULL, FALSE },
  { "less-than-two-seconds-joins", "kA +19 kB +19 kC", "C", 1, "C", NULL, FALSE },
  { "sealed-parts", "kA x kB", "B", 2, "B", NULL, FALSE },
  { "save-parts", "kA s kB", "B", 2, "B", NULL, FALSE },
  { "undo-to-the-save-in-a-drag", "kA s kB u", "A", 1, "A", "B", TRUE },
  { "undo-parts", "kA kB u r kC", "C", 2, "C", NULL, FALSE },
  { "undo-then-same-key-does-not-join", "aA kB u kC", "C", 2, "C", NULL, FALSE },
  { "join-forgets-nothing-else", "aA kB kC u", "A", 1, "A", "C", FALSE },
  { "drop-leads-back", "aA kB kC d", "A", 1, "A", NULL, FALSE },
  { "drop-leads-back-to-saved", "kB kC d", "0", 0, NULL, NULL, TRUE },
  { "drop-then-same-key-does-not-join-the-one-before", "kA x kB d kC", "C", 2, "C", NULL, FALSE },
  { "drag-joins-over-the-quiet", "b kA +50 kB e", "B", 1, "B", NULL, FALSE },
  { "drag-joins-whatever-the-key", "b aA lB kC e", "C", 1, "C", NULL, FALSE },
  { "drag-with-nothing-makes-no-step", "aA u b e", "0", 0, NULL, "A", TRUE },
  { "drag-is-seen-before-it-ends", "aA s aB u b kC", "C", 2, "C", NULL, FALSE },
  { "drag-undo-at-once", "aA b kB kC e u", "A", 1, "A", "C", FALSE },
  { "drag-forgets-redo-when-it-ends", "aA aB u b kC e", "C", 2, "C", NULL, FALSE },
  { "cancelled-drag-keeps-undo-and-redo", "aA aB u b kC kD c", "A", 1, "A", "B", FALSE },
  { "cancelled-drag-keeps-redo-alive", "aA aB u b kC c r", "B", 2, "B", NULL, FALSE },
  { "cancelled-drag-keeps-saved", "aA s b kB c", "A", 1, "A", NULL, TRUE },
  { "cancelled-drag-keeps-saved-ahead", "aA s u b kB c r", "A", 1, "A", NULL, TRUE },
  { "drag-seal-does-not-part", "b kA x kB e", "B", 1, "B", NULL, FALSE },
  { "drag-does-not-join-the-step-before", "kA b kB e", "B", 2, "B", NULL, FALSE },
  { "nothing-joins-after-a-drag", "b kA e kB", "B", 2, "B", NULL, FALSE },
  { "drag-drop-leads-back", "aA u b kB d e", "0", 0, NULL, "A", TRUE },
  { "undo-in-a-drag", "aA b kB u", "A", 1, "A", "B", FALSE },
  { "drag-goes-on-after-undo", "aA b kB u kC kD e", "D", 2, "D", NULL, FALSE },
  { "cancel-after-undo-keeps-what-undo-left", "aA b kB u kC c", "A", 1, "A", "B", FALSE },
  { "save-in-a-drag", "b kA s", "A", 1, "A", NULL, TRUE },
  { "cancel-after-save-goes-back-to-it", "b kA s kB c", "A", 1, "A", NULL, TRUE },
  { "redo-in-a-drag-finds-nothing", "aA u b kB r", "B", 1, "B", NULL, FALSE },
  { "begin-settles-the-drag-before", "b kA b kB c", "A", 1, "A", NULL, FALSE },
  { "end-without-drag", "aA e c", "A", 1, "A", NULL, FALSE },
  { "end-without-drag-parts-nothing", "kA e kB c kC", "C", 1, "C", NULL, FALSE },
};

static TrTrial *
trial_titled (const char *title)
{
  TrTrial *trial = tr_trial_new ();

  tr_set_text (&trial->title, title);

  return trial;
}

static void
push (TrHistory  *history,
      const char *title,
      const char *key,
      gint64      now_us)
{
  g_autofree char *pointer = g_strconcat ("/", title, NULL);

  tr_history_push (history, trial_titled (title), title, key, pointer, 100, now_us);
}

static void
run_command (TrHistory  *history,
             const char *command,
             gint64     *now_us)
{
  switch (command[0])
    {
    case 'a': push (history, command + 1, NULL, *now_us); break;
    case 'k': push (history, command + 1, "k", *now_us); break;
    case 'l': push (history, command + 1, "l", *now_us); break;
    case 'u': tr_history_undo (history); break;
    case 'r': tr_history_redo (history); break;
    case 's': tr_history_mark_saved (history); break;
    case 'x': tr_history_seal (history); break;
    case 'd': tr_history_drop_newest (history); break;
    case 'b': tr_history_begin_drag (history); break;
    case 'e': g_assert_null (tr_history_end_drag (history, FALSE)); break;
    case 'c': g_free (tr_history_end_drag (history, TRUE)); break;
    case '+': *now_us += g_ascii_strtoll (command + 1, NULL, 10) * G_USEC_PER_SEC / 10; break;
    default: g_assert_not_reached ();
    }
}

static void
test_script (gconstpointer data)
{
  const Script *script = data;
  g_autoptr (TrHistory) history = tr_history_new (trial_titled ("0"));
  g_auto (GStrv) commands = g_strsplit (script->script, " ", 0);
  gint64 now_us = 0;

  for (guint i = 0; commands[i] != NULL; i++)
    if (commands[i][0] != '\0')
      run_command (history, commands[i], &now_us);

  g_assert_cmpstr (tr_history_get_trial (history)->title, ==, script->title);
  g_assert_cmpuint (tr_history_get_n_undo (history), ==, script->n_undo);
  g_assert_cmpstr (tr_history_get_undo_label (history), ==, script->undo_label);
  g_assert_cmpstr (tr_history_get_redo_label (history), ==, script->redo_label);
  g_assert_cmpint (tr_history_is_saved (history), ==, script->is_saved);
}

static void
test_pointers (void)
{
  g_autoptr (TrHistory) history = tr_history_new (trial_titled ("0"));

  push (history, "A", NULL, 0);
  push (history, "B", NULL, 0);
  g_assert_cmpstr (tr_history_undo (history), ==, "/B");
  g_assert_cmpstr (tr_history_undo (history), ==, "/A");
  g_assert_null (tr_history_undo (history));
  g_assert_cmpstr (tr_history_redo (history), ==, "/A");
  g_assert_cmpstr (tr_history_redo (history), ==, "/B");
  g_assert_null (tr_history_redo (history));
}

static void
test_unsaved (void)
{
  g_autoptr (TrHistory) history = tr_history_new (trial_titled ("0"));

  tr_history_mark_unsaved (history);
  g_assert_false (tr_history_is_saved (history));
  push (history, "A", NULL, 0);
  tr_history_undo (history);
  g_assert_false (tr_history_is_saved (history));
}

/* The oldest steps go, and with them the saved trial. */
static void
test_steps_are_bounded (void)
{
  g_autoptr (TrHistory) history = tr_history_new (trial_titled ("0"));

  for (guint i = 1; i <= TR_HISTORY_MAX_STEPS + 10; i++)
    {
      g_autofree char *title = g_strdup_printf ("%u", i);

      push (history, title, NULL, 0);
    }
  g_assert_cmpuint (tr_history_get_n_undo (history), ==, TR_HISTORY_MAX_STEPS);
  while (tr_history_undo (history) != NULL)
    ;
  g_assert_cmpstr (tr_history_get_trial (history)->title, ==, "10");
  g_assert_false (tr_history_is_saved (history));
}

static void
test_bytes_are_bounded (void)
{
  g_autoptr (TrHistory) history = tr_history_new (trial_titled ("0"));

  for (guint i = 0; i < 40; i++)
    tr_history_push (history, trial_titled ("x"), "x", NULL, "", 4 * 1024 * 1024, 0);
  g_assert_cmpuint (tr_history_get_n_undo (history), >=, 14);
  g_assert_cmpuint (tr_history_get_n_undo (history), <=, 16);

  /* one step is always left, however large */
  tr_history_push (history, trial_titled ("y"), "y", NULL, "", 2 * (gsize) TR_HISTORY_MAX_BYTES, 0);
  g_assert_cmpuint (tr_history_get_n_undo (history), ==, 1);
  g_assert_cmpstr (tr_history_get_trial (history)->title, ==, "y");
}

/* Random commands beside a list of titles */

typedef struct {
  GPtrArray *titles;
  int current, saved;
  gboolean is_dragging;
  char *dragged;
} Model;

static const char *
model_title (const Model *model)
{
  return model->dragged != NULL ? model->dragged : g_ptr_array_index (model->titles, model->current);
}

static void
model_push (Model      *model,
            const char *title)
{
  g_ptr_array_set_size (model->titles, model->current + 1);
  if (model->saved > model->current)
    model->saved = -1;
  g_ptr_array_add (model->titles, g_strdup (title));
  model->current++;
}

static void
model_settle (Model *model)
{
  g_autofree char *dragged = g_steal_pointer (&model->dragged);

  if (dragged != NULL)
    model_push (model, dragged);
}

static void
drag_both (TrHistory *history,
           Model     *model)
{
  gboolean is_cancelled = g_test_rand_bit ();

  if (!model->is_dragging)
    {
      tr_history_begin_drag (history);
      model->is_dragging = TRUE;
      return;
    }

  g_autofree char *pointer = tr_history_end_drag (history, is_cancelled);
  g_assert_cmpint (pointer != NULL, ==, is_cancelled && model->dragged != NULL);
  if (is_cancelled)
    g_clear_pointer (&model->dragged, g_free);
  model_settle (model);
  model->is_dragging = FALSE;
}

static void
step_both (TrHistory *history,
           Model     *model,
           guint      n)
{
  g_autofree char *title = g_strdup_printf ("t%u", n);

  switch (g_test_rand_int_range (0, 6))
    {
    case 0: case 1:
      push (history, title, NULL, 0);
      if (model->is_dragging)
        tr_set_text (&model->dragged, title);
      else
        model_push (model, title);
      break;
    case 2:
      model_settle (model);
      g_assert_cmpint (tr_history_undo (history) != NULL, ==, model->current > 0);
      model->current = MAX (model->current - 1, 0);
      break;
    case 3:
      model_settle (model);
      g_assert_cmpint (tr_history_redo (history) != NULL, ==, model->current + 1 < (int) model->titles->len);
      model->current = MIN (model->current + 1, (int) model->titles->len - 1);
      break;
    case 4:
      drag_both (history, model);
      break;
    default:
      model_settle (model);
      tr_history_mark_saved (history);
      model->saved = model->current;
      break;
    }
}

static void
test_model (void)
{
  for (guint run = 0; run < 50; run++)
    {
      g_autoptr (TrHistory) history = tr_history_new (trial_titled ("0"));
      g_autoptr (GPtrArray) titles = g_ptr_array_new_with_free_func (g_free);
      Model model = { titles, 0, 0, FALSE, NULL };

      g_ptr_array_add (titles, g_strdup ("0"));
      for (guint n = 0; n < 200; n++)
        {
          step_both (history, &model, n);
          g_assert_cmpstr (tr_history_get_trial (history)->title, ==, model_title (&model));
          g_assert_cmpint (tr_history_is_saved (history), ==,
                           model.dragged == NULL && model.saved == model.current);
        }
      g_free (model.dragged);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (scripts); i++)
    {
      g_autofree char *path = g_strconcat ("/trial/history/", scripts[i].name, NULL);

      g_test_add_data_func (path, &scripts[i], test_script);
    }
  g_test_add_func ("/trial/history/pointers-say-what-moved", test_pointers);
  g_test_add_func ("/trial/history/unsaved-stays-unsaved", test_unsaved);
  g_test_add_func ("/trial/history/steps-are-bounded", test_steps_are_bounded);
  g_test_add_func ("/trial/history/bytes-are-bounded", test_bytes_are_bounded);
  g_test_add_func ("/trial/history/as-a-list-of-titles", test_model);

  return g_test_run ();
}
