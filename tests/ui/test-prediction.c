/* test-prediction.c: which dough should win: by a figure, by hand, locked
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The fixture's doughs are invented: d1 Triangles to d5 Slices.
 */

#include "config.h"

#include <string.h>

#include "calc/prediction.h"
#include "calc/scores.h"
#include "page-fixture.h"
#include "window/figure-choice.h"
#include "window/prediction-editor.h"

#define ADD(path, test) g_test_add (path, PageFixture, NULL, set_up, test, tear_down)

static void
set_up (PageFixture  *fixture,
        gconstpointer data)
{
  page_set_up (fixture, tr_compare_page_new, "d1");
}

static void
tear_down (PageFixture  *fixture,
           gconstpointer data)
{
  page_tear_down (fixture);
}

static TrPredictionEditor *
get_editor (PageFixture *fixture)
{
  return TR_PREDICTION_EDITOR (ui_find_type (GTK_WIDGET (fixture->page), TR_TYPE_PREDICTION_EDITOR));
}

static const TrComparable *
find (const char *key)
{
  const TrComparable *comparable = tr_comparable_find (key);

  g_assert_nonnull (comparable);

  return comparable;
}

static void
score (PageFixture *fixture)
{
  TrTrial *draft = tr_document_draft (fixture->document);
  TrTasting *tasting = tr_trial_need_tasting (draft);
  const char *taster = tr_tasting_add_taster (tasting, "A")->id;
  TrScore *one = tr_tasting_need_score (tasting, taster, "d1"), *other = tr_tasting_need_score (tasting, taster, "d2");

  one->look = one->layers = one->eating = 8;
  other->look = other->layers = other->eating = 3;
  page_commit (fixture, draft);
}

static void
assert_order (PageFixture *fixture,
              const char  *expected)
{
  const TrPrediction *prediction = page_get_trial (fixture)->prediction;
  g_autofree char *order = prediction != NULL ? g_strjoinv (" ", prediction->order) : g_strdup ("");

  g_assert_cmpstr (order, ==, expected);
}

static TrFigureChoice *
get_by (PageFixture *fixture)
{
  return TR_FIGURE_CHOICE (ui_find_type (GTK_WIDGET (get_editor (fixture)), TR_TYPE_FIGURE_CHOICE));
}

static void
test_prediction_by_a_figure_is_one_step (PageFixture  *fixture,
                                         gconstpointer data)
{
  tr_figure_choice_choose (get_by (fixture), find ("added_water_percent"));
  ui_settle ();
  assert_order (fixture, "d2 d1 d3 d4 d5");
  g_assert_cmpstr (page_get_trial (fixture)->prediction->by, ==, "added_water_percent");
  tr_document_undo (fixture->document);
  g_assert_null (page_get_trial (fixture)->prediction);
}

static void
test_prediction_is_moved_by_keys (PageFixture  *fixture,
                                  gconstpointer data)
{
  GtkWidget *list = ui_find_type (GTK_WIDGET (get_editor (fixture)), GTK_TYPE_LIST_BOX);
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), 0);

  gtk_widget_grab_focus (GTK_WIDGET (row));
  gtk_widget_activate_action (list, "prediction.move-down", NULL);
  assert_order (fixture, "d2 d1 d3 d4 d5");
  /* The focus goes along, so that the next press moves the same dough. */
  gtk_widget_activate_action (list, "prediction.move-down", NULL);
  assert_order (fixture, "d2 d3 d1 d4 d5");
  gtk_widget_activate_action (list, "prediction.move-up", NULL);
  assert_order (fixture, "d2 d1 d3 d4 d5");
  g_assert_cmpstr (page_get_trial (fixture)->prediction->by, ==, TR_PREDICTION_BY_HAND);
}

static void
test_prediction_is_dragged (PageFixture  *fixture,
                            gconstpointer data)
{
  GtkWidget *list = ui_find_type (GTK_WIDGET (get_editor (fixture)), GTK_TYPE_LIST_BOX);
  GtkDropTarget *target = ui_get_drop_target (list);
  GtkWidget *last = GTK_WIDGET (gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), 4));
  g_auto (GValue) value = G_VALUE_INIT;
  gboolean is_taken = FALSE;

  g_assert_nonnull (target);
  g_value_init (&value, GTK_TYPE_LIST_BOX_ROW);
  g_value_set_object (&value, last);
  g_signal_emit_by_name (target, "drop", &value, 5.0, 2.0, &is_taken);
  g_assert_true (is_taken);
  assert_order (fixture, "d5 d1 d2 d3 d4");
}

static void
test_prediction_that_is_overtaken_is_ordered_again (PageFixture  *fixture,
                                                    gconstpointer data)
{
  TrTrial *draft;
  GtkWidget *button;

  tr_figure_choice_choose (get_by (fixture), find ("added_water_percent"));
  draft = tr_document_draft (fixture->document);
  tr_set_text (&tr_dough_get_line (tr_trial_own_dough (draft, 1), 1)->amount, "5 %");
  page_commit (fixture, draft);
  g_assert_true (ui_says (GTK_WIDGET (fixture->page), "the doughs stand in another order now."));
  assert_order (fixture, "d2 d1 d3 d4 d5");

  button = ui_find (GTK_WIDGET (fixture->page), GTK_TYPE_BUTTON, "Order by it again");
  g_assert_nonnull (button);
  g_signal_emit_by_name (button, "clicked");
  ui_settle ();
  assert_order (fixture, "d1 d2 d3 d4 d5");
  g_assert_false (ui_says (GTK_WIDGET (fixture->page), "the doughs stand in another order now."));
}

static void
test_reason_is_written (PageFixture  *fixture,
                        gconstpointer data)
{
  GtkWidget *text;

  g_assert_true (tr_page_go_to (fixture->page, "/prediction/why"));
  text = page_get_focus (fixture);
  g_assert_true (GTK_IS_TEXT_VIEW (text));
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (text)), "More water, more steam.", -1);
  ui_settle ();
  g_assert_cmpstr (page_get_trial (fixture)->prediction->why, ==, "More water, more steam.");
}

static void
test_locked_prediction_is_only_read (PageFixture  *fixture,
                                     gconstpointer data)
{
  TrTrial *draft;

  tr_figure_choice_choose (get_by (fixture), find ("added_water_percent"));
  draft = tr_document_draft (fixture->document);
  tr_set_text (&draft->prediction->locked_at, "2027-04-11T10:31");
  page_commit (fixture, draft);
  g_assert_true (ui_says (GTK_WIDGET (fixture->page), "Locked since the first score: 11 April 2027, 10:31."));
  g_assert_false (gtk_widget_is_sensitive (GTK_WIDGET (get_by (fixture))));
  tr_prediction_editor_move (get_editor (fixture), 0, 3);
  assert_order (fixture, "d2 d1 d3 d4 d5");
}

static void
test_nothing_is_predicted_after_the_first_mark (PageFixture  *fixture,
                                                gconstpointer data)
{
  score (fixture);
  g_assert_true (ui_says (GTK_WIDGET (fixture->page), "Somebody has tasted already"));
  tr_prediction_editor_move (get_editor (fixture), 0, 3);
  g_assert_null (page_get_trial (fixture)->prediction);
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  ADD ("/prediction/by-a-figure-is-one-step", test_prediction_by_a_figure_is_one_step);
  ADD ("/prediction/is-moved-by-keys", test_prediction_is_moved_by_keys);
  ADD ("/prediction/is-dragged", test_prediction_is_dragged);
  ADD ("/prediction/that-is-overtaken-is-ordered-again", test_prediction_that_is_overtaken_is_ordered_again);
  ADD ("/prediction/reason-is-written", test_reason_is_written);
  ADD ("/prediction/locked-is-only-read", test_locked_prediction_is_only_read);
  ADD ("/prediction/nothing-after-the-first-mark", test_nothing_is_predicted_after_the_first_mark);

  return ui_run ();
}
