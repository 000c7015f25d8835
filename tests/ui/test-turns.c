/* test-turns.c: the sequence is edited by pointer and keyboard, a step each
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Real events by the display's server. What came of them is read from the
 * document; one undo gives the text back that was there before.
 */

#include "config.h"

#include <gio/gio.h>

#include "hand.h"
#include "page-fixture.h"
#include "picture/sequence.h"
#include "picture/shapes.h"
#include "window/choice-field.h"
#include "window/layers-view.h"
#include "window/picture-view.h"
#include "window/turn-editor.h"
#include "window/turn-edits.h"
#include "window/turns-strip.h"

typedef struct
{
  PageFixture page;
  GtkWidget *strip;
  TrPictureView *view;
  char *before;
  char *changed;                 /* the pointer of the last change */
} Fixture;

static void
changed_cb (TrDocument *document,
            const char *pointer,
            Fixture    *fixture)
{
  g_free (fixture->changed);
  fixture->changed = g_strdup (pointer);
}

static void
set_up (Fixture       *fixture,
        gconstpointer  data)
{
  page_set_up (&fixture->page, tr_turns_page_new, data != NULL ? data : "d1");
  fixture->strip = ui_find_type (GTK_WIDGET (fixture->page.page), TR_TYPE_TURNS_STRIP);
  fixture->view = TR_PICTURE_VIEW (ui_find_type (fixture->strip, TR_TYPE_PICTURE_VIEW));
  fixture->before = ui_dup_trial_text (fixture->page.document);
  g_signal_connect (fixture->page.document, "changed", G_CALLBACK (changed_cb), fixture);
  hand_focus (fixture->page.window);
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data)
{
  g_signal_handlers_disconnect_by_func (fixture->page.document, changed_cb, fixture);
  g_free (fixture->before);
  g_free (fixture->changed);
  page_tear_down (&fixture->page);
}

static const TrDough *
get_dough (Fixture *fixture)
{
  return tr_page_get_dough (fixture->page.page);
}

static const TrTurn *
get_turn (Fixture *fixture,
          guint    turn)
{
  return tr_dough_get_turn (get_dough (fixture), turn);
}

static void
get_middle (Fixture       *fixture,
            TrPicturePart  part,
            int            index,
            double        *x,
            double        *y)
{
  graphene_rect_t bounds;

  g_assert_true (tr_picture_view_get_part_bounds (fixture->view, &(TrHit) { part, index }, &bounds));
  *x = bounds.origin.x + bounds.size.width / 2;
  *y = bounds.origin.y + bounds.size.height / 2;
}

static void
click (Fixture       *fixture,
       TrPicturePart  part,
       int            index)
{
  double x, y;

  get_middle (fixture, part, index, &x, &y);
  hand_click (GTK_WIDGET (fixture->view), x, y);
  ui_frames (GTK_WIDGET (fixture->page.window), 1);
}

static void
assert_selected (Fixture       *fixture,
                 TrPicturePart  part,
                 int            index)
{
  TrHit selected = tr_turns_strip_get_selected (TR_TURNS_STRIP (fixture->strip));

  g_assert_cmpint (selected.part, ==, part);
  g_assert_cmpint (selected.index, ==, index);
}

static void
assert_one_step (Fixture    *fixture,
                 const char *label)
{
  g_assert_cmpstr (tr_document_get_undo_label (fixture->page.document), ==, label);
  tr_document_undo (fixture->page.document);
  g_autofree char *after = ui_dup_trial_text (fixture->page.document);
  g_assert_cmpstr (after, ==, fixture->before);
  g_assert_null (tr_document_get_undo_label (fixture->page.document));
}

/* Pointer ******************************************************************/

static void
test_click_selects_and_shows_the_fields (Fixture       *fixture,
                                         gconstpointer  data)
{
  GtkWidget *editor = ui_find_type (GTK_WIDGET (fixture->page.page), TR_TYPE_TURN_EDITOR);

  click (fixture, TR_PART_OF_FOLD, 2);
  assert_selected (fixture, TR_PART_OF_TURN, 2);
  g_assert_cmpuint (tr_turn_editor_get_item (TR_TURN_EDITOR (editor)), ==, 2);
  g_assert_true (gtk_widget_get_mapped (editor));

  click (fixture, TR_PART_OF_LOCK_IN, 0);
  assert_selected (fixture, TR_PART_OF_LOCK_IN, 0);
  g_assert_false (gtk_widget_get_mapped (editor));
  g_assert_true (tr_page_go_to (fixture->page.page, "/lock_in/rim_mm"));
  g_assert_null (tr_document_get_undo_label (fixture->page.document));
}

static void
test_plus_adds_a_turn_there (Fixture       *fixture,
                             gconstpointer  data)
{
  click (fixture, TR_PART_OF_ADD, 1);
  g_assert_cmpuint (get_dough (fixture)->turns->len, ==, 4);
  assert_selected (fixture, TR_PART_OF_TURN, 1);
  page_assert_value (&fixture->page, "/turns/1/thickness_mm", "8");      /* like the first */
  page_assert_value (&fixture->page, "/turns/1/fold", "3");
  page_assert_value (&fixture->page, "/turns/1/rest/min", "45");
  assert_one_step (fixture, "add a turn");
}

static void
test_turn_is_dragged_to_another_place (Fixture       *fixture,
                                       gconstpointer  data)
{
  double x, y, to_x, to_y;

  get_middle (fixture, TR_PART_OF_FOLD, 0, &x, &y);
  get_middle (fixture, TR_PART_OF_FOLD, 2, &to_x, &to_y);
  hand_drag (GTK_WIDGET (fixture->view), x, y, to_x + 4, to_y, NULL, NULL);
  page_assert_value (&fixture->page, "/turns/2/thickness_mm", "8");
  page_assert_value (&fixture->page, "/turns/0/length_mm", "600");
  page_assert_value (&fixture->page, "/turns/1/width_mm", "200");
  assert_selected (fixture, TR_PART_OF_TURN, 2);
  assert_one_step (fixture, "move turn 1");
}

static void
look_halfway (gpointer data)
{
  Fixture *fixture = data;

  /* It follows the pointer before it is let go. */
  g_assert_cmpfloat (get_turn (fixture, 0)->thickness_mm, <, 8);
}

static void
test_edge_is_dragged_thinner (Fixture       *fixture,
                              gconstpointer  data)
{
  const TrTurnFigures *step = &g_array_index (tr_page_get_figures (fixture->page.page)->lamination.steps, TrTurnFigures, 0);
  double length = step->rolled_mm.mm[0], volume = length * step->rolled_mm.mm[1] * step->rolled_mm.mm[2];
  double x, y;

  get_middle (fixture, TR_PART_OF_EDGE, 0, &x, &y);
  hand_drag (GTK_WIDGET (fixture->view), x, y, x + 25, y, look_halfway, fixture);
  step = &g_array_index (tr_page_get_figures (fixture->page.page)->lamination.steps, TrTurnFigures, 0);
  g_assert_cmpfloat (step->rolled_mm.mm[0], >, length);
  g_assert_cmpfloat_with_epsilon (step->rolled_mm.mm[0] * step->rolled_mm.mm[1] * step->rolled_mm.mm[2], volume, volume * 1e-9);
  /* To half a millimetre. */
  g_assert_cmpfloat_with_epsilon (fmod (get_turn (fixture, 0)->thickness_mm, 0.5), 0, 1e-9);
  assert_one_step (fixture, "change the thickness of turn 1");
}

static void
press_escape (gpointer data)
{
  hand_key ("Escape");
}

static void
test_escape_gives_back_what_was_dragged (Fixture       *fixture,
                                         gconstpointer  data)
{
  double x, y;

  get_middle (fixture, TR_PART_OF_EDGE, 0, &x, &y);
  hand_drag (GTK_WIDGET (fixture->view), x, y, x + 25, y, press_escape, fixture);
  g_autofree char *after = ui_dup_trial_text (fixture->page.document);
  g_assert_cmpstr (after, ==, fixture->before);
  g_assert_null (tr_document_get_undo_label (fixture->page.document));
  g_assert_null (tr_document_get_redo_label (fixture->page.document));
  g_assert_false (tr_document_is_modified (fixture->page.document));
}

static void
test_dragged_edge_is_never_thicker_than_its_block (Fixture       *fixture,
                                                   gconstpointer  data)
{
  double x, y;

  get_middle (fixture, TR_PART_OF_EDGE, 0, &x, &y);
  hand_drag (GTK_WIDGET (fixture->view), x, y, 2, y, NULL, NULL);

  const TrTurnFigures *step = &g_array_index (tr_page_get_figures (fixture->page.page)->lamination.steps, TrTurnFigures, 0);

  g_assert_cmpfloat (step->rolled_mm.mm[2], >, 8);
  g_assert_cmpfloat (step->rolled_mm.mm[2], <=, step->start_mm.mm[2]);
}

static void
remove_the_page (gpointer data)
{
  Fixture *fixture = data;

  tr_page_set_dough (fixture->page.page, "d2");
  ui_frames (GTK_WIDGET (fixture->page.window), 1);
  tr_page_set_dough (fixture->page.page, NULL);
  ui_frames (GTK_WIDGET (fixture->page.window), 1);
}

/* Another dough, or none, while an edge is held: nothing of it stays. */
static void
test_dough_changes_under_a_drag (Fixture       *fixture,
                                 gconstpointer  data)
{
  double x, y;

  get_middle (fixture, TR_PART_OF_EDGE, 0, &x, &y);
  hand_drag (GTK_WIDGET (fixture->view), x, y, x + 25, y, remove_the_page, fixture);
  g_assert_null (tr_document_get_undo_label (fixture->page.document));
  g_autofree char *after = ui_dup_trial_text (fixture->page.document);
  g_assert_cmpstr (after, ==, fixture->before);
}

/* The layers at the end, or after the turn that is chosen. */
static void
test_layers_after_the_chosen_turn (Fixture       *fixture,
                                   gconstpointer  data)
{
  TrLayersView *layers = TR_LAYERS_VIEW (ui_find_type (GTK_WIDGET (fixture->page.page), TR_TYPE_LAYERS_VIEW));
  GtkWidget *after = ui_find_type (GTK_WIDGET (layers), GTK_TYPE_CHECK_BUTTON);
  TrPictureView *view = tr_layers_view_get_picture (layers);

  click (fixture, TR_PART_OF_FOLD, 1);
  g_assert_cmpstr (gtk_check_button_get_label (GTK_CHECK_BUTTON (after)), ==, "After turn 2");
  g_assert_true (g_str_has_prefix (tr_picture_get_description (tr_picture_view_get_picture (view)), "36 fat layers"));
  hand_click (after, gtk_widget_get_width (after) / 2.0, gtk_widget_get_height (after) / 2.0);
  g_assert_true (g_str_has_prefix (tr_picture_get_description (tr_picture_view_get_picture (view)), "12 fat layers"));
  click (fixture, TR_PART_OF_FOLD, 0);
  g_assert_true (g_str_has_prefix (tr_picture_get_description (tr_picture_view_get_picture (view)), "3 fat layers"));
  click (fixture, TR_PART_OF_LOCK_IN, 0);
  g_assert_false (gtk_widget_get_mapped (after));
  g_assert_true (g_str_has_prefix (tr_picture_get_description (tr_picture_view_get_picture (view)), "36 fat layers"));
}

static gboolean
is_scrolled (GtkWidget *widget)
{
  return gtk_widget_get_ancestor (widget, GTK_TYPE_SCROLLED_WINDOW) != NULL;
}

/* Always in sight, but not where they would hide what is edited. */
static void
test_layers_scroll_along_on_a_low_page (Fixture       *fixture,
                                        gconstpointer  data)
{
  GtkWidget *page = GTK_WIDGET (fixture->page.page), *pinned = ui_find_type (page, TR_TYPE_LAYERS_VIEW), *scrolled, *after;

  g_assert_false (is_scrolled (pinned));
  g_assert_true (gtk_widget_get_mapped (pinned));
  gtk_window_set_default_size (fixture->page.window, 700, 420);
  ui_frames (page, 4);
  scrolled = ui_find_type (page, TR_TYPE_LAYERS_VIEW);
  g_assert_true (is_scrolled (scrolled));
  g_assert_true (gtk_widget_get_mapped (scrolled));
  g_assert_false (gtk_widget_get_mapped (pinned));

  /* It follows what is chosen and changed. */
  click (fixture, TR_PART_OF_FOLD, 0);
  after = ui_find_type (scrolled, GTK_TYPE_CHECK_BUTTON);
  g_assert_cmpstr (gtk_check_button_get_label (GTK_CHECK_BUTTON (after)), ==, "After turn 1");
  hand_key ("2");
  ui_frames (page, 2);
  g_assert_true (g_str_has_prefix (tr_picture_get_description (tr_picture_view_get_picture (tr_layers_view_get_picture (TR_LAYERS_VIEW (scrolled)))),
                                   "24 fat layers"));

  gtk_window_set_default_size (fixture->page.window, 700, 800);
  ui_frames (page, 4);
  g_assert_true (gtk_widget_get_mapped (pinned));
  g_assert_false (gtk_widget_get_mapped (scrolled));
  g_assert_true (g_str_has_prefix (tr_picture_get_description (tr_picture_view_get_picture (tr_layers_view_get_picture (TR_LAYERS_VIEW (pinned)))),
                                   "24 fat layers"));
}

/* Keyboard *****************************************************************/

static void
focus_strip (Fixture *fixture)
{
  gtk_widget_grab_focus (GTK_WIDGET (fixture->view));
  ui_settle ();
}

typedef struct { const char *keys[4]; const char *pointer, *expected, *label, *where; } KeyRow;

/* The strip starts on the first turn. */
static const KeyRow key_rows[] = {
  { { "2" }, "/turns/0/fold", "2", "change the fold of turn 1", "/turns/0" },
  { { "4" }, "/turns/0/fold", "4", "change the fold of turn 1", "/turns/0" },
  { { "5" }, "/turns/0/fold", "5", "change the fold of turn 1", "/turns/0" },
  { { "Right", "6" }, "/turns/1/fold", "6", "change the fold of turn 2", "/turns/1" },
  { { "plus" }, "/turns/0/thickness_mm", "8.5", "change the thickness of turn 1", "/turns/0" },
  { { "minus" }, "/turns/0/thickness_mm", "7.5", "change the thickness of turn 1", "/turns/0" },
  { { "Down" }, "/turns/0/thickness_mm", "7.5", "change the thickness of turn 1", "/turns/0" },
  { { "Right", "plus" }, "/turns/1/length_mm", "590", "change the length of turn 2", "/turns/1" },      /* shorter is thicker */
  { { "a" }, "/turns/1/thickness_mm", "8", "add a turn", "/turns/1" },
  { { "Home", "a" }, "/turns/0/thickness_mm", "8", "add a turn", "/turns/0" },
  { { "Delete" }, "/turns/0/length_mm", "600", "remove turn 1", "/turns" },
  { { "ctrl+Right" }, "/turns/0/length_mm", "600", "move turn 1", "/turns/1" },
  { { "Right", "Right", "ctrl+Left" }, "/turns/1/width_mm", "200", "move turn 3", "/turns/1" },
};

static void
test_keys (Fixture       *fixture,
           gconstpointer  data)
{
  for (guint i = 0; i < G_N_ELEMENTS (key_rows); i++)
    {
      g_test_message ("%s", key_rows[i].label);
      focus_strip (fixture);
      tr_turns_strip_select (TR_TURNS_STRIP (fixture->strip), (TrHit) { TR_PART_OF_TURN, 0 });
      for (guint k = 0; k < G_N_ELEMENTS (key_rows[i].keys) && key_rows[i].keys[k] != NULL; k++)
        hand_key (key_rows[i].keys[k]);
      page_assert_value (&fixture->page, key_rows[i].pointer, key_rows[i].expected);
      g_assert_true (gtk_widget_has_focus (GTK_WIDGET (fixture->view)));
      /* Where undo leads: back to the strip, so that keys go on. */
      g_assert_true (g_str_has_prefix (fixture->changed, "/doughs/0"));
      g_assert_cmpstr (fixture->changed + strlen ("/doughs/0"), ==, key_rows[i].where);
      gtk_window_set_focus (fixture->page.window, NULL);
      g_assert_true (tr_page_go_to (fixture->page.page, key_rows[i].where));
      g_assert_true (gtk_widget_has_focus (GTK_WIDGET (fixture->view)));
      assert_one_step (fixture, key_rows[i].label);
    }
}

/* From the strip to a field and on to the document, never the pointer. */
static void
test_return_goes_to_the_fields (Fixture       *fixture,
                                gconstpointer  data)
{
  focus_strip (fixture);
  hand_key ("Right");
  hand_key ("Return");
  g_assert_true (gtk_widget_is_ancestor (page_get_focus (&fixture->page),
                                         ui_find_type (GTK_WIDGET (fixture->page.page), TR_TYPE_TURN_EDITOR)));
}

static void
test_no_more_than_the_most_turns (Fixture       *fixture,
                                  gconstpointer  data)
{
  TrHit none = { TR_PART_OF_ADD, 0 };
  graphene_rect_t bounds;

  focus_strip (fixture);
  for (guint i = 0; i < TR_MAX_TURNS; i++)
    hand_key ("a");
  g_assert_cmpuint (get_dough (fixture)->turns->len, ==, TR_MAX_TURNS);
  ui_frames (GTK_WIDGET (fixture->page.window), 1);
  g_assert_false (tr_picture_view_get_part_bounds (fixture->view, &none, &bounds));
  g_assert_nonnull (ui_find (GTK_WIDGET (fixture->page.page), GTK_TYPE_BUTTON, "Add a turn"));
  g_assert_false (gtk_widget_is_sensitive (ui_find (GTK_WIDGET (fixture->page.page), GTK_TYPE_BUTTON, "Add a turn")));
  for (guint i = 0; i < TR_MAX_TURNS - 3; i++)
    tr_document_undo (fixture->page.document);
  g_autofree char *after = ui_dup_trial_text (fixture->page.document);
  g_assert_cmpstr (after, ==, fixture->before);
}

/* A number half typed belongs to the turn it was typed for. */
static void
test_typed_number_stays_with_its_turn (Fixture       *fixture,
                                       gconstpointer  data)
{
  page_type (&fixture->page, "/turns/0/trim_mm", "7");
  click (fixture, TR_PART_OF_FOLD, 2);
  page_assert_value (&fixture->page, "/turns/0/trim_mm", "7");
  page_assert_value (&fixture->page, "/turns/2/trim_mm", NULL);
  assert_one_step (fixture, "change the trim of turn 1");
}

/* Where there is nothing: no lock-in, no turn. */
static void
test_first_turn_of_a_dough_without_any (Fixture       *fixture,
                                        gconstpointer  data)
{
  focus_strip (fixture);
  hand_key ("Left");
  hand_key ("Delete");
  hand_key ("3");
  g_assert_null (tr_document_get_undo_label (fixture->page.document));
  click (fixture, TR_PART_OF_ADD, 0);
  g_assert_cmpuint (get_dough (fixture)->turns->len, ==, 1);
  assert_selected (fixture, TR_PART_OF_TURN, 0);
  hand_key ("4");
  page_assert_value (&fixture->page, "/turns/0/fold", "4");
  hand_key ("Delete");
  g_assert_cmpuint (get_dough (fixture)->turns->len, ==, 0);
  assert_selected (fixture, TR_PART_OF_LOCK_IN, 0);
}

/* Right to left ************************************************************/

static void
test_mirrored_strip (Fixture       *fixture,
                     gconstpointer  data)
{
  double x, y, first_x, last_x;

  gtk_widget_set_direction (GTK_WIDGET (fixture->page.page), GTK_TEXT_DIR_RTL);
  gtk_widget_set_direction (fixture->strip, GTK_TEXT_DIR_RTL);
  ui_frames (GTK_WIDGET (fixture->page.window), 2);
  get_middle (fixture, TR_PART_OF_LOCK_IN, 0, &first_x, &y);
  get_middle (fixture, TR_PART_OF_FOLD, 0, &last_x, &y);
  g_assert_cmpfloat (first_x, >, last_x);

  get_middle (fixture, TR_PART_OF_EDGE, 0, &x, &y);
  hand_drag (GTK_WIDGET (fixture->view), x, y, x - 25, y, look_halfway, fixture);
  assert_one_step (fixture, "change the thickness of turn 1");

  focus_strip (fixture);
  tr_turns_strip_select (TR_TURNS_STRIP (fixture->strip), (TrHit) { TR_PART_OF_TURN, 0 });
  hand_key ("Left");
  assert_selected (fixture, TR_PART_OF_TURN, 1);
  hand_key ("ctrl+Right");
  page_assert_value (&fixture->page, "/turns/0/length_mm", "600");
  assert_selected (fixture, TR_PART_OF_TURN, 0);
  assert_one_step (fixture, "move turn 2");
}

/* What is said of a turn ***************************************************/

static gboolean
says (Fixture    *fixture,
      const char *words)
{
  return ui_says (GTK_WIDGET (fixture->page.page), words);
}

static void
set_turn (Fixture *fixture,
          double   trim_mm,
          double   width_mm)
{
  TrTrial *draft = tr_document_draft (fixture->page.document);
  TrTurn *turn = tr_dough_get_turn (tr_trial_own_dough (draft, 0), 0);
  g_autoptr (GError) error = NULL;

  turn->trim_mm = trim_mm;
  turn->width_mm = width_mm;
  tr_trial_own_bench (draft)->roll_width_max_mm = isnan (width_mm) ? 450 : NAN;
  tr_document_commit (fixture->page.document, draft, "change", NULL, "/turns/0", &error);
  g_assert_no_error (error);
}

static void
test_gaps_trimmings_and_rest_stand_with_the_turn (Fixture       *fixture,
                                                  gconstpointer  data)
{
  tr_turns_strip_select (TR_TURNS_STRIP (fixture->strip), (TrHit) { TR_PART_OF_TURN, 0 });
  set_turn (fixture, 0, NAN);
  ui_settle ();
  g_assert_true (says (fixture, "Gaps "));
  g_assert_false (says (fixture, "trimmed off"));
  g_assert_true (says (fixture, "The core "));
  g_assert_true (says (fixture, "a rest takes at least, "));

  /* By pin, wider, and trimmed. */
  set_turn (fixture, 6, 300);
  ui_settle ();
  g_assert_false (says (fixture, "aps "));
  g_assert_true (says (fixture, "guides "));
  g_assert_true (says (fixture, "trimmed off"));
}

static gboolean
draws (GtkWidget  *view,
       const char *text)
{
  const TrPicture *picture = tr_picture_view_get_picture (TR_PICTURE_VIEW (view));

  for (guint i = 0; i < tr_picture_count_texts (picture); i++)
    if (g_str_equal (tr_picture_get_text (picture, i, NULL), text))
      return TRUE;

  return FALSE;
}

static void
test_time_runs_as_one_reads (Fixture       *fixture,
                             gconstpointer  data)
{
  GtkWidget *view;

  tr_turns_strip_select (TR_TURNS_STRIP (fixture->strip), (TrHit) { TR_PART_OF_TURN, 0 });
  ui_settle ();
  view = ui_find (GTK_WIDGET (fixture->page.page), TR_TYPE_PICTURE_VIEW, "The slab while it rests");
  g_assert_true (draws (view, "time →"));
  gtk_widget_set_direction (view, GTK_TEXT_DIR_RTL);
  set_turn (fixture, 0, 300);
  ui_settle ();
  g_assert_true (draws (view, "← time"));
  g_assert_false (draws (view, "time →"));
}

static void
test_another_way_of_giving_keeps_the_size (Fixture       *fixture,
                                           gconstpointer  data)
{
  static const guint ways[] = { 1, 2, 0 };
  TrTurnRoll first, now;

  tr_turns_strip_select (TR_TURNS_STRIP (fixture->strip), (TrHit) { TR_PART_OF_TURN, 0 });
  g_assert_true (tr_turn_get_roll (fixture->page.page, 0, &first));
  for (guint i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      g_assert_true (tr_page_go_to (fixture->page.page, "/turns/0/by"));
      tr_choice_field_choose (TR_CHOICE_FIELD (page_get_around (&fixture->page, TR_TYPE_CHOICE_FIELD)), ways[i]);
      g_assert_true (tr_turn_get_roll (fixture->page.page, 0, &now));
      g_assert_cmpfloat_with_epsilon (now.length_mm, first.length_mm, 0.01 * first.length_mm);
      g_assert_cmpfloat_with_epsilon (now.thickness_mm, first.thickness_mm, 0.051);
    }
}

static void
test_sheet_is_drawn_and_said (Fixture       *fixture,
                              gconstpointer  data)
{
  tr_turns_strip_select (TR_TURNS_STRIP (fixture->strip), (TrHit) { TR_PART_OF_SHEET, 0 });
  ui_settle ();
  g_assert_true (says (fixture, "To the sheet: "));
  g_assert_true (says (fixture, "times longer"));
  g_assert_true (says (fixture, "aps ") || says (fixture, "uides "));

  GtkWidget *button = ui_find (GTK_WIDGET (fixture->page.page), GTK_TYPE_BUTTON, "Change the cut");
  GtkWidget *picture = ui_find_type (gtk_widget_get_parent (button), TR_TYPE_PICTURE_VIEW);

  g_assert_true (gtk_widget_get_mapped (picture));
  g_assert_nonnull (strstr (tr_picture_get_description (tr_picture_view_get_picture (TR_PICTURE_VIEW (picture))), "last block, "));
}

#define ADD(path, dough, test) g_test_add (path, Fixture, dough, set_up, test, tear_down)

int
main (int   argc,
      char *argv[])
{
  if (!ui_init (&argc, &argv))
    return 0;
  if (!hand_is_there ())
    {
      g_print ("1..0 # SKIP no X display or no xdotool\n");
      return 0;
    }

  ADD ("/turns/click-selects-and-shows-the-fields", NULL, test_click_selects_and_shows_the_fields);
  ADD ("/turns/plus-adds-a-turn-there", NULL, test_plus_adds_a_turn_there);
  ADD ("/turns/turn-is-dragged-to-another-place", NULL, test_turn_is_dragged_to_another_place);
  ADD ("/turns/edge-is-dragged-thinner", NULL, test_edge_is_dragged_thinner);
  ADD ("/turns/escape-gives-back-what-was-dragged", NULL, test_escape_gives_back_what_was_dragged);
  ADD ("/turns/dragged-edge-is-never-thicker-than-its-block", NULL, test_dragged_edge_is_never_thicker_than_its_block);
  ADD ("/turns/dough-changes-under-a-drag", NULL, test_dough_changes_under_a_drag);
  ADD ("/turns/layers-after-the-chosen-turn", NULL, test_layers_after_the_chosen_turn);
  ADD ("/turns/keys", NULL, test_keys);
  ADD ("/turns/return-goes-to-the-fields", NULL, test_return_goes_to_the_fields);
  ADD ("/turns/no-more-than-the-most-turns", NULL, test_no_more_than_the_most_turns);
  ADD ("/turns/typed-number-stays-with-its-turn", NULL, test_typed_number_stays_with_its_turn);
  ADD ("/turns/first-turn-of-a-dough-without-any", "d2", test_first_turn_of_a_dough_without_any);
  ADD ("/turns/layers-scroll-along-on-a-low-page", NULL, test_layers_scroll_along_on_a_low_page);
  ADD ("/turns/mirrored-strip", NULL, test_mirrored_strip);

  ADD ("/turns/gaps-trimmings-and-rest-stand-with-the-turn", NULL, test_gaps_trimmings_and_rest_stand_with_the_turn);
  ADD ("/turns/time-runs-as-one-reads", NULL, test_time_runs_as_one_reads);
  ADD ("/turns/another-way-of-giving-keeps-the-size", NULL, test_another_way_of_giving_keeps_the_size);
  ADD ("/turns/sheet-is-drawn-and-said", NULL, test_sheet_is_drawn_and_said);

  return ui_run ();
}
