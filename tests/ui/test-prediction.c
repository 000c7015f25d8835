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
assert_shown (PageFixture *fixture,
              const char  *expected)
{
  GtkDropDown *drop_down = GTK_DROP_DOWN (ui_find_type (GTK_WIDGET (get_by (fixture)), GTK_TYPE_DROP_DOWN));
  GtkStringObject *shown = gtk_drop_down_get_selected_item (drop_down);

  g_assert_nonnull (shown);
  g_assert_cmpstr (gtk_string_object_get_string (shown), ==, expected);
}

/* As another program, or another version, may have written it. */
static void
write_by (PageFixture *fixture,
          const char  *key)
{
  TrTrial *draft = tr_document_draft (fixture->document);

  tr_set_text (&tr_trial_need_prediction (draft)->by, key);
  page_commit (fixture, draft);
}

static void
reload (PageFixture *fixture)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = ui_dup_trial_text (fixture->document);
  TrTrial *trial = tr_trial_read (text, strlen (text), &error);

  g_assert_no_error (error);
  g_object_unref (fixture->document);
  fixture->document = tr_document_new_for_trial (trial);
  tr_page_set_document (fixture->page, fixture->document);
  tr_page_set_dough (fixture->page, "d1");
  ui_settle ();
}

static guint
count_offered (PageFixture *fixture)
{
  GtkDropDown *drop_down = GTK_DROP_DOWN (ui_find_type (GTK_WIDGET (get_by (fixture)), GTK_TYPE_DROP_DOWN));

  return g_list_model_get_n_items (gtk_drop_down_get_model (drop_down));
}

static void
test_prediction_by_a_figure_of_a_piece_is_read_again (PageFixture  *fixture,
                                                      gconstpointer data)
{
  tr_figure_choice_choose (get_by (fixture), find ("salt_g"));
  ui_settle ();
  assert_shown (fixture, "Salt, a piece");
  reload (fixture);
  assert_shown (fixture, "Salt, a piece");
  g_assert_cmpstr (page_get_trial (fixture)->prediction->by, ==, "salt_g");
}

static void
test_prediction_by_a_figure_of_the_batch_says_so (PageFixture  *fixture,
                                                  gconstpointer data)
{
  TrTrial *draft = tr_document_draft (fixture->document);
  guint n_offered = count_offered (fixture);
  GtkWidget *button;

  tr_prediction_set_by (draft, tr_document_get_figures (fixture->document), find ("total_g"));
  page_commit (fixture, draft);
  assert_shown (fixture, "Weight of everything, of the batch");
  g_assert_true (ui_says (GTK_WIDGET (get_editor (fixture)), "1 550 g"));
  reload (fixture);
  assert_shown (fixture, "Weight of everything, of the batch");
  g_assert_true (tr_figure_choice_get (get_by (fixture)) == find ("total_g"));
  g_assert_true (ui_says (GTK_WIDGET (get_editor (fixture)), "1 550 g"));

  /* It orders them like any other. */
  draft = tr_document_draft (fixture->document);
  tr_trial_own_dough (draft, 1)->batch_value = 10;
  page_commit (fixture, draft);
  g_assert_true (ui_says (GTK_WIDGET (fixture->page), "By “Weight of everything, of the batch” the doughs stand in another order now."));
  button = ui_find (GTK_WIDGET (fixture->page), GTK_TYPE_BUTTON, "Order by it again");
  g_assert_nonnull (button);
  g_signal_emit_by_name (button, "clicked");
  ui_settle ();
  g_assert_cmpstr (page_get_trial (fixture)->prediction->by, ==, "total_g");
  assert_order (fixture, "d1 d2 d3 d4 d5");

  /* Gone from the list with the prediction that needs it, back with it. */
  tr_figure_choice_choose (get_by (fixture), find ("salt_g"));
  ui_settle ();
  assert_shown (fixture, "Salt, a piece");
  g_assert_cmpuint (count_offered (fixture), ==, n_offered);
  tr_document_undo (fixture->document);
  ui_settle ();
  assert_shown (fixture, "Weight of everything, of the batch");
  g_assert_cmpuint (count_offered (fixture), ==, n_offered + 1);
}

static void
test_prediction_by_what_is_not_known_is_not_by_hand (PageFixture  *fixture,
                                                     gconstpointer data)
{
  write_by (fixture, "crumb_index");
  assert_shown (fixture, "crumb_index");
  reload (fixture);
  assert_shown (fixture, "crumb_index");
  write_by (fixture, "total_g");
  assert_shown (fixture, "Weight of everything, of the batch");
  write_by (fixture, "crumb_index");
  assert_shown (fixture, "crumb_index");
  g_assert_null (tr_figure_choice_get (get_by (fixture)));

  tr_prediction_editor_move (get_editor (fixture), 0, 1);
  assert_shown (fixture, "By hand");
  g_assert_cmpstr (page_get_trial (fixture)->prediction->by, ==, TR_PREDICTION_BY_HAND);
}

/* Where the character at that byte is drawn, in Pango units. */
static int
get_x (GtkLabel *label,
       int       index)
{
  PangoRectangle rectangle;

  pango_layout_index_to_pos (gtk_label_get_layout (label), index, &rectangle);

  return rectangle.x + rectangle.width / 2;
}

static void
set_up_right_to_left (PageFixture  *fixture,
                      gconstpointer data)
{
  gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);
  set_up (fixture, data);
}

static void
tear_down_right_to_left (PageFixture  *fixture,
                         gconstpointer data)
{
  tear_down (fixture, data);
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
}

static void
test_place_is_read_from_left_to_right (PageFixture  *fixture,
                                       gconstpointer data)
{
  GtkWidget *list = ui_find_type (GTK_WIDGET (get_editor (fixture)), GTK_TYPE_LIST_BOX), *row, *box;
  GtkLabel *place, *value;

  tr_figure_choice_choose (get_by (fixture), find ("added_water_percent"));
  ui_settle ();
  row = GTK_WIDGET (gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), 0));
  box = gtk_list_box_row_get_child (GTK_LIST_BOX_ROW (row));
  place = GTK_LABEL (gtk_widget_get_first_child (box));
  value = GTK_LABEL (gtk_widget_get_last_child (box));
  g_assert_cmpint (gtk_widget_get_direction (box), ==, GTK_TEXT_DIR_RTL);

  g_assert_cmpstr (gtk_label_get_text (place), ==, "1.");
  g_assert_cmpint (get_x (place, 0), <, get_x (place, 1));
  g_assert_true (g_str_has_suffix (gtk_label_get_text (value), "%"));
  g_assert_cmpint (get_x (value, 0), <, get_x (value, (int) strlen (gtk_label_get_text (value)) - 1));
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
  ADD ("/prediction/by-a-figure-of-a-piece-is-read-again", test_prediction_by_a_figure_of_a_piece_is_read_again);
  ADD ("/prediction/by-a-figure-of-the-batch-says-so", test_prediction_by_a_figure_of_the_batch_says_so);
  ADD ("/prediction/by-what-is-not-known-is-not-by-hand", test_prediction_by_what_is_not_known_is_not_by_hand);
  g_test_add ("/prediction/place-is-read-from-left-to-right", PageFixture, NULL, set_up_right_to_left,
              test_place_is_read_from_left_to_right, tear_down_right_to_left);
  ADD ("/prediction/is-moved-by-keys", test_prediction_is_moved_by_keys);
  ADD ("/prediction/is-dragged", test_prediction_is_dragged);
  ADD ("/prediction/that-is-overtaken-is-ordered-again", test_prediction_that_is_overtaken_is_ordered_again);
  ADD ("/prediction/reason-is-written", test_reason_is_written);
  ADD ("/prediction/locked-is-only-read", test_locked_prediction_is_only_read);
  ADD ("/prediction/nothing-after-the-first-mark", test_nothing_is_predicted_after_the_first_mark);

  return ui_run ();
}
