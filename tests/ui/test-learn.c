/* test-learn.c: what to change next, the dough made of it, and doughs carried to a new trial
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The fixture's doughs and the scores written here are invented.
 */

#include "config.h"

#include <string.h>

#include "calc/branch.h"
#include "calc/scores.h"
#include "hand.h"
#include "page-fixture.h"
#include "picture/picture.h"
#include "window/branch.h"
#include "window/carry-window.h"
#include "window/learn.h"
#include "window/picture-view.h"

#define NB "\u00a0"

static TrStep *
find_step (TrDough  *dough,
           TrStepId  id)
{
  return (TrStep *) tr_dough_find_step (dough, id);
}

/* Three of four found the fat pooled; the proof is too warm for it. */
static void
taste (PageFixture *fixture,
       const char  *fault,
       double       proof_c)
{
  TrTrial *draft = tr_document_draft (fixture->document);
  TrTasting *tasting = tr_trial_need_tasting (draft);
  TrDough *dough = tr_trial_own_dough (draft, 0);

  tr_trial_own_bench (draft)->room_c = 15;
  find_step (dough, TR_STEP_PROOF)->at_c = proof_c;
  find_step (dough, TR_STEP_BAKE)->at_c = 190;
  for (guint i = 0; i < 4; i++)
    {
      TrScore *score = tr_tasting_need_score (tasting, tr_tasting_add_taster (tasting, "A")->id, "d1");

      score->look = score->layers = score->eating = 5;
      g_strfreev (score->faults);
      score->faults = g_strsplit (i < 3 && fault != NULL ? fault : "", " ", -1);
    }
  page_commit (fixture, draft);
}

static GtkWidget *
find_button (GtkWidget  *widget,
             const char *label)
{
  if (GTK_IS_BUTTON (widget) && gtk_widget_get_mapped (widget)
      && g_strcmp0 (gtk_button_get_label (GTK_BUTTON (widget)), label) == 0)
    return widget;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_button (child, label);

      if (found != NULL)
        return found;
    }

  return NULL;
}

static void
press (PageFixture *fixture,
       const char  *label)
{
  GtkWidget *button = find_button (GTK_WIDGET (fixture->page), label);

  if (button == NULL)
    g_error ("no button “%s”", label);
  g_signal_emit_by_name (button, "clicked");
  ui_settle ();
}

#define SAYS(fixture, words) g_assert_true (ui_says (GTK_WIDGET ((fixture)->page), (words)))
#define SAYS_NOT(fixture, words) g_assert_false (ui_says (GTK_WIDGET ((fixture)->page), (words)))

static void
test_without_a_tasting_it_says_so (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_learn_new, "d1");
  SAYS (&fixture, "Nobody has tasted Triangles yet.");
  SAYS_NOT (&fixture, "Lineage");
  SAYS_NOT (&fixture, "What was changed");
  page_tear_down (&fixture);
}

static void
test_tasted_and_sound_it_says_so (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_learn_new, "d1");
  taste (&fixture, NULL, 26);
  SAYS (&fixture, "Nobody named a fault of Triangles");
  page_tear_down (&fixture);
}

static void
test_a_cause_stands_under_its_complaint_with_its_number (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_learn_new, "d1");
  taste (&fixture, "fat-pooled", 31);
  SAYS (&fixture, "Fat pooled, three of four tasters");
  SAYS (&fixture, "Proof at 31 °C; this butter should stay at 28 °C or less.");
  g_assert_nonnull (ui_find (GTK_WIDGET (fixture.page), GTK_TYPE_LIST_BOX_ROW,
                             "Fat pooled, three of four tasters: proof at 31" NB "°C; this butter should stay at 28" NB "°C or less."));

  /* In the reader's units. */
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_US);
  tr_page_set_reader (fixture.page, &reader);
  ui_settle ();
  SAYS (&fixture, "Proof at 88 °F; this butter should stay at 82 °F or less.");
  page_tear_down (&fixture);
}

static void
test_no_number_no_cause (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_learn_new, "d1");
  taste (&fixture, "fat-pooled", 26);
  SAYS (&fixture, "Fat pooled, three of four tasters");
  SAYS (&fixture, "No number of this dough points to a cause.");
  g_assert_null (find_button (GTK_WIDGET (fixture.page), "Proof at 28" NB "°C"));
  page_tear_down (&fixture);
}

static void
test_the_button_makes_one_new_dough_in_one_step (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_learn_new, "d1");
  taste (&fixture, "fat-pooled", 31);

  g_autofree char *before = ui_dup_trial_text (fixture.document);
  guint count = tr_document_get_trial (fixture.document)->doughs->len;

  press (&fixture, "Proof at 28" NB "°C");

  const TrTrial *trial = tr_document_get_trial (fixture.document);
  TrDough *branch = tr_trial_get_dough (trial, 1);

  g_assert_cmpuint (trial->doughs->len, ==, count + 1);
  g_assert_cmpstr (branch->name, ==, "Triangles 2");
  g_assert_cmpstr (branch->from, ==, "d1");
  g_assert_cmpfloat_with_epsilon (find_step (branch, TR_STEP_PROOF)->at_c, 28, 1e-9);
  g_assert_cmpfloat_with_epsilon (find_step (tr_trial_get_dough (trial, 0), TR_STEP_PROOF)->at_c, 31, 1e-9);

  tr_document_undo (fixture.document);
  ui_settle ();

  g_autofree char *after = ui_dup_trial_text (fixture.document);

  g_assert_cmpstr (after, ==, before);
  page_tear_down (&fixture);
}

static void
test_what_was_changed_is_listed_and_drawn (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_learn_new, "d1");
  taste (&fixture, "fat-pooled", 31);
  press (&fixture, "Proof at 28" NB "°C");
  tr_page_set_dough (fixture.page, tr_trial_get_dough (tr_document_get_trial (fixture.document), 1)->id);
  ui_settle ();
  SAYS (&fixture, "It comes from A, Triangles. Written otherwise:");
  SAYS (&fixture, "Proof, temperature: 31 °C → 28 °C");
  SAYS (&fixture, "Nobody has tasted Triangles 2 yet.");

  GtkWidget *view = ui_find_type (GTK_WIDGET (fixture.page), TR_TYPE_PICTURE_VIEW);

  g_assert_true (gtk_widget_get_mapped (view));
  ui_frames (GTK_WIDGET (fixture.window), 2);
  g_assert_nonnull (strstr (tr_picture_get_description (tr_picture_view_get_picture (TR_PICTURE_VIEW (view))),
                            "B, Triangles 2, from Triangles: Proof, temperature: 31" NB "°C → 28" NB "°C."));
  page_tear_down (&fixture);
}

static void
test_a_ratio_is_brought_back_by_its_own_lines (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_learn_new, "d1");

  TrTrial *draft = tr_document_draft (fixture.document);
  TrTasting *tasting = tr_trial_need_tasting (draft);
  TrScore *score = tr_tasting_need_score (tasting, tr_tasting_add_taster (tasting, "A")->id, "d1");

  score->salt = 2;
  tr_set_text (&tr_dough_get_line (tr_trial_own_dough (draft, 0), 3)->amount, "18 g");
  page_commit (&fixture, draft);
  SAYS (&fixture, "Too salty, the one taster");
  press (&fixture, "Bring salt to 2" NB "%");

  const TrFigures *figures = tr_document_get_figures (fixture.document);

  g_assert_cmpfloat_with_epsilon (tr_figures_get_dough (figures, 1)->formula.salt_percent, 2, 0.02);
  g_assert_cmpfloat (tr_figures_get_dough (figures, 0)->formula.salt_percent, >, 2.5);
  page_tear_down (&fixture);
}

static void
test_what_follows_from_a_change_is_said_too (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_learn_new, "d1");
  g_assert_true (tr_page_branch_dough (fixture.page, NULL));

  TrTrial *draft = tr_document_draft (fixture.document);
  TrDough *branch = tr_trial_own_dough (draft, 1);
  g_autofree char *id = g_strdup (branch->id);

  /* 3 · 4 · 3 fat layers, and 3 · 2 · 3. */
  tr_dough_get_turn (branch, 1)->fold = 2;
  page_commit (&fixture, draft);
  tr_page_set_dough (fixture.page, id);
  ui_settle ();
  SAYS (&fixture, "Turn 2: book fold (4) → half fold (2)");
  SAYS (&fixture, "From that follows:");
  SAYS (&fixture, "36 → 18");
  page_tear_down (&fixture);
}

static void
test_raw_inside_is_cautioned_of (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_learn_new, "d1");
  taste (&fixture, "dark-outside-raw-inside", 26);
  SAYS (&fixture, "raw flour and raw egg can make ill");
  page_tear_down (&fixture);
}

static void
test_a_page_inside_another_follows_it (void)
{
  PageFixture fixture;
  TrReader reader;
  GtkWidget *inner = g_object_ref_sink (tr_learn_new ());

  page_set_up (&fixture, tr_learn_new, "d2");
  tr_reader_init_plain (&reader, TR_UNITS_US);
  tr_page_set_reader (fixture.page, &reader);
  tr_page_follow (TR_PAGE (inner), fixture.page);
  g_assert_true (tr_page_get_document (TR_PAGE (inner)) == fixture.document);
  g_assert_cmpstr (tr_page_get_dough (TR_PAGE (inner))->id, ==, "d2");
  g_assert_true (tr_reader_equal (tr_page_get_reader (TR_PAGE (inner)), &reader));
  g_object_unref (inner);
  page_tear_down (&fixture);
}

static void
test_rows_follow_the_scores (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_learn_new, "d1");
  taste (&fixture, "fat-pooled gummy", 31);
  SAYS (&fixture, "Gummy, three of four tasters");

  TrTrial *draft = tr_document_draft (fixture.document);

  g_clear_pointer (&draft->tasting, tr_tasting_free);
  page_commit (&fixture, draft);
  SAYS_NOT (&fixture, "Gummy");
  SAYS_NOT (&fixture, "Fat pooled");
  SAYS (&fixture, "Nobody has tasted Triangles yet.");
  page_tear_down (&fixture);
}

/* In the real window the new dough is shown, and said with a way back. */
static void
test_the_new_dough_is_shown_and_told (UiFixture     *fixture,
                                      gconstpointer  data)
{
  const TrRemedy remedy = { .kind = TR_REMEDY_MIXED_C, .side = TR_SIDE_OVER, .target = 18 };
  g_autofree char *before = ui_dup_trial_text (tr_window_get_document (fixture->window));
  TrPage *page = TR_PAGE (ui_get_doughs (fixture->window));
  const char *told;

  g_assert_true (tr_page_branch_dough (page, &remedy));
  ui_settle ();

  const TrDough *branch = tr_trial_get_dough (ui_get_trial (fixture->window), 1);

  g_assert_cmpstr (tr_window_get_dough_id (fixture->window), ==, branch->id);
  g_assert_cmpfloat_with_epsilon (branch->method->dough_c, 18, 1e-9);
  told = tr_window_get_notice (fixture->window, "edit");
  g_assert_nonnull (told);
  g_assert_nonnull (strstr (told, " comes from "));
  g_assert_nonnull (strstr (told, "Dough temperature: "));

  ui_act (fixture->window, "win.undo");

  g_autofree char *after = ui_dup_trial_text (tr_window_get_document (fixture->window));

  g_assert_cmpstr (after, ==, before);
}

/* The lineage, on the page where it is used. */
static TrPictureView *
show_lineage (UiFixture *fixture)
{
  GtkWidget *reveal, *scroller, *view;
  graphene_point_t top;

  ui_act (fixture->window, "win.branch-dough");
  ui_act (fixture->window, "win.go-tasting");
  reveal = ui_find (GTK_WIDGET (fixture->window), GTK_TYPE_TOGGLE_BUTTON, "Show the result");
  g_assert_nonnull (reveal);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (reveal), TRUE);
  ui_frames (GTK_WIDGET (fixture->window), 2);
  view = ui_find_type (ui_find_type (GTK_WIDGET (fixture->window), TR_TYPE_LEARN), TR_TYPE_PICTURE_VIEW);
  g_assert_true (gtk_widget_get_mapped (view));

  /* It stands further down than the window shows. */
  scroller = gtk_widget_get_ancestor (view, GTK_TYPE_SCROLLED_WINDOW);
  g_assert_true (gtk_widget_compute_point (view, scroller, &GRAPHENE_POINT_INIT (0, 0), &top));

  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));

  gtk_adjustment_set_value (adjustment, gtk_adjustment_get_value (adjustment) + (double) top.y - 12);
  ui_frames (GTK_WIDGET (fixture->window), 2);
  hand_focus (GTK_WINDOW (fixture->window));

  return TR_PICTURE_VIEW (view);
}

static void
get_middle (TrPictureView *view,
            int            dough,
            double        *x,
            double        *y)
{
  graphene_rect_t bounds;

  g_assert_true (tr_picture_view_get_part_bounds (view, &(TrHit) { TR_PART_OF_POINT, dough }, &bounds));
  *x = (double) (bounds.origin.x + bounds.size.width / 2);
  *y = (double) (bounds.origin.y + bounds.size.height / 2);
}

/* By the display's own pointer: what is under it is named, a press goes there. */
static void
test_a_dough_of_the_lineage_is_named_and_gone_to (UiFixture     *fixture,
                                                  gconstpointer  data)
{
  if (!hand_is_there ())
    {
      g_test_skip ("no X display, or no xdotool");
      return;
    }

  TrPictureView *view = show_lineage (fixture);
  const TrTrial *trial = ui_get_trial (fixture->window);
  g_autofree char *before = ui_dup_trial_text (tr_window_get_document (fixture->window)), *after = NULL;
  const char *name = tr_trial_get_dough (trial, 0)->name;

  g_assert_cmpstr (tr_window_get_dough_id (fixture->window), ==, tr_trial_get_dough (trial, 1)->id);
  for (int dough = 0; dough < 2; dough++)
    {
      g_autofree char *text = NULL;
      double x, y;
      TrHit hit;

      get_middle (view, dough, &x, &y);
      hand_move (GTK_WIDGET (view), x, y);
      ui_frames (GTK_WIDGET (fixture->window), 2);
      g_assert_true (tr_picture_view_get_hover (view, &hit));
      g_assert_cmpint (hit.part, ==, TR_PART_OF_POINT);
      g_assert_cmpint (hit.index, ==, dough);
      text = tr_picture_dup_hit_text (tr_picture_view_get_picture (view), &hit);
      g_assert_true (g_str_has_prefix (text, tr_trial_get_dough (trial, (guint) dough)->name));
      g_assert_true (dough == 0 || (strstr (text, "from ") != NULL && strstr (strstr (text, "from "), name) != NULL));

      hand_press_button (GTK_WIDGET (view), "1");
      ui_frames (GTK_WIDGET (fixture->window), 2);
      g_assert_cmpstr (tr_window_get_dough_id (fixture->window), ==, tr_trial_get_dough (trial, (guint) dough)->id);
    }

  /* Looking changes nothing. */
  after = ui_dup_trial_text (tr_window_get_document (fixture->window));
  g_assert_cmpstr (after, ==, before);
}

static void
test_a_full_trial_says_so (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_learn_new, "d1");

  TrTrial *draft = tr_document_draft (fixture.document);

  while (draft->doughs->len < TR_MAX_DOUGHS)
    tr_trial_branch_dough (draft, 0, "more");
  page_commit (&fixture, draft);
  g_assert_false (tr_page_branch_dough (fixture.page, NULL));
  g_assert_cmpuint (tr_document_get_trial (fixture.document)->doughs->len, ==, TR_MAX_DOUGHS);
  page_tear_down (&fixture);
}

/* Carrying on */

static void
test_carried_doughs_are_one_step_of_a_new_trial (void)
{
  PageFixture fixture;
  static const char *const chosen[] = { "d2", "d1", NULL };

  page_set_up (&fixture, tr_learn_new, "d1");

  g_autoptr (TrDocument) next = tr_document_new_carried (fixture.document, chosen, "The second");
  const TrTrial *trial = tr_document_get_trial (next);

  g_assert_cmpuint (trial->doughs->len, ==, 2);
  g_assert_cmpstr (tr_trial_get_dough (trial, 0)->id, ==, "d1");
  g_assert_cmpstr (trial->title, ==, "The second");
  g_assert_nonnull (tr_pantry_find (trial->pantry, "butter-mine"));
  g_assert_true (tr_document_is_modified (next));
  tr_document_undo (next);
  g_assert_cmpuint (tr_document_get_trial (next)->doughs->len, ==, 0);
  page_tear_down (&fixture);
}

static void
test_a_dough_that_leaves_its_origin_behind_notes_it (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_learn_new, "d1");
  taste (&fixture, "fat-pooled", 31);
  press (&fixture, "Proof at 28" NB "°C");

  const char *const chosen[] = { tr_trial_get_dough (tr_document_get_trial (fixture.document), 1)->id, NULL };
  g_autoptr (TrDocument) next = tr_document_new_carried (fixture.document, chosen, "");
  const TrDough *dough = tr_trial_get_dough (tr_document_get_trial (next), 0);

  g_assert_null (dough->from);
  g_assert_cmpstr (dough->notes, ==, "From “Triangles” of “A made-up trial”.");
  page_tear_down (&fixture);
}

static TrCarryWindow *
find_carry_window (void)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWindow) toplevel = g_list_model_get_item (toplevels, i);

      if (TR_IS_CARRY_WINDOW (toplevel))
        return TR_CARRY_WINDOW (toplevel);
    }

  return NULL;
}

static guint
count_checks (GtkWidget *widget,
              gboolean   active_only)
{
  guint n = GTK_IS_CHECK_BUTTON (widget) && (!active_only || gtk_check_button_get_active (GTK_CHECK_BUTTON (widget))) ? 1 : 0;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    n += count_checks (child, active_only);

  return n;
}

static void
test_chosen_doughs_open_in_a_window_of_their_own (UiFixture     *fixture,
                                                  gconstpointer  data)
{
  GtkWidget *carry, *go, *check;
  guint doughs = ui_get_trial (fixture->window)->doughs->len;

  ui_act (fixture->window, "win.carry-doughs");
  carry = GTK_WIDGET (find_carry_window ());
  g_assert_nonnull (carry);
  ui_frames (carry, 1);
  g_assert_cmpuint (count_checks (carry, FALSE), ==, doughs);
  g_assert_cmpuint (count_checks (carry, TRUE), ==, 1);

  /* Asked for again it is the same. */
  ui_act (fixture->window, "win.carry-doughs");
  g_assert_true (carry == GTK_WIDGET (find_carry_window ()));

  go = find_button (carry, "_Make the new trial");
  check = ui_find_type (carry, GTK_TYPE_CHECK_BUTTON);
  g_assert_nonnull (go);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), FALSE);
  g_assert_false (gtk_widget_get_sensitive (go));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), TRUE);

  /* What is chosen outlasts an edit behind it. */
  ui_edit_pieces (fixture->window, 9);
  g_assert_cmpuint (count_checks (carry, TRUE), ==, 1);

  g_signal_emit_by_name (go, "clicked");
  ui_settle ();
  g_assert_null (find_carry_window ());
  g_assert_cmpuint (ui_count_windows (fixture->application), ==, 2);
  g_assert_cmpuint (ui_get_trial (fixture->window)->doughs->len, ==, doughs);
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  g_test_add_func ("/learn/not-tasted", test_without_a_tasting_it_says_so);
  g_test_add_func ("/learn/sound", test_tasted_and_sound_it_says_so);
  g_test_add_func ("/learn/cause", test_a_cause_stands_under_its_complaint_with_its_number);
  g_test_add_func ("/learn/no-number", test_no_number_no_cause);
  g_test_add_func ("/learn/new-dough", test_the_button_makes_one_new_dough_in_one_step);
  g_test_add_func ("/learn/changed", test_what_was_changed_is_listed_and_drawn);
  g_test_add_func ("/learn/ratio", test_a_ratio_is_brought_back_by_its_own_lines);
  g_test_add_func ("/learn/what-follows", test_what_follows_from_a_change_is_said_too);
  g_test_add_func ("/learn/caution", test_raw_inside_is_cautioned_of);
  g_test_add_func ("/learn/inside-another", test_a_page_inside_another_follows_it);
  g_test_add_func ("/learn/follows", test_rows_follow_the_scores);
  g_test_add_func ("/learn/carry/one-step", test_carried_doughs_are_one_step_of_a_new_trial);
  g_test_add_func ("/learn/carry/origin", test_a_dough_that_leaves_its_origin_behind_notes_it);
  g_test_add_func ("/learn/full", test_a_full_trial_says_so);
  UI_ADD ("/learn/lineage-by-hand", test_a_dough_of_the_lineage_is_named_and_gone_to);
  UI_ADD ("/learn/told", test_the_new_dough_is_shown_and_told);
  UI_ADD ("/learn/carry/window", test_chosen_doughs_open_in_a_window_of_their_own);

  return ui_run ();
}
