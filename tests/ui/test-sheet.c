/* test-sheet.c: a piece's edge is dragged, a layout is chosen, by a real pointer and real keys
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "calc/cut.h"
#include "hand.h"
#include "page-fixture.h"
#include "picture/shapes.h"
#include "window/alternatives.h"
#include "window/sheet-view.h"

typedef struct
{
  PageFixture page;
  TrSheetView *sheets;
  TrPictureView *view;
  GtkFlowBox *flow;
  gboolean is_turned, is_sideways;      /* the edge that was pressed */
} Fixture;

/* Motions are delivered with a frame. */
static void
settle (Fixture *fixture)
{
  ui_frames (GTK_WIDGET (fixture->page.window), 2);
}

static void
scroll_to (Fixture   *fixture,
           GtkWidget *widget)
{
  GtkWidget *scroller = gtk_widget_get_ancestor (widget, GTK_TYPE_SCROLLED_WINDOW);
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));
  double x, y;

  g_assert_true (gtk_widget_translate_coordinates (widget, scroller, 0, 0, &x, &y));
  gtk_adjustment_set_value (adjustment, gtk_adjustment_get_value (adjustment) + y - 12);
  ui_frames (widget, 2);
}

static void
set_up (Fixture       *fixture,
        gconstpointer  dough)
{
  page_set_up (&fixture->page, tr_sheet_page_new, dough != NULL ? dough : "d1");
  fixture->sheets = TR_SHEET_VIEW (ui_find_type (GTK_WIDGET (fixture->page.page), TR_TYPE_SHEET_VIEW));
  fixture->view = tr_sheet_view_get_picture (fixture->sheets);
  fixture->flow = GTK_FLOW_BOX (ui_find_type (GTK_WIDGET (fixture->page.page), GTK_TYPE_FLOW_BOX));
  hand_focus (fixture->page.window);
  scroll_to (fixture, GTK_WIDGET (fixture->sheets));
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data)
{
  page_tear_down (&fixture->page);
}

static const TrDoughFigures *
get_figures (Fixture *fixture)
{
  return tr_page_get_figures (fixture->page.page);
}

static const TrCut *
get_cut (Fixture *fixture)
{
  return tr_page_get_dough (fixture->page.page)->cut;
}

static gboolean
is_sideways (Fixture   *fixture,
             TrMeasure  measure)
{
  return tr_sheets_is_sideways (tr_picture_view_get_picture (fixture->view), get_figures (fixture),
                                tr_page_get_reader (fixture->page.page), NULL, measure);
}

/* Presses on the middle of an edge with this measure; returns where that was. */
static void
press_edge (Fixture   *fixture,
            TrMeasure  measure,
            double    *x,
            double    *y)
{
  TrHit hit = { TR_PART_OF_EDGE, tr_sheets_find_edge (get_figures (fixture), measure) };
  graphene_rect_t bounds;

  fixture->is_sideways = is_sideways (fixture, measure);
  fixture->is_turned = is_sideways (fixture, TR_MEASURE_ACROSS);
  g_assert_true (tr_picture_view_get_part_bounds (fixture->view, &hit, &bounds));
  *x = bounds.origin.x + bounds.size.width / 2;
  *y = bounds.origin.y + bounds.size.height / 2;
  hand_move (GTK_WIDGET (fixture->view), *x, *y);
  settle (fixture);
  hand_do ("mousedown", "1", NULL);
  settle (fixture);
}

/* Outwards: the measure grows. */
static void
move_edge (Fixture *fixture,
           double   x,
           double   y,
           double   by)
{
  gboolean is_sideways = fixture->is_sideways;

  hand_move (GTK_WIDGET (fixture->view), x + (is_sideways ? by : 0), y + (is_sideways ? 0 : fixture->is_turned ? by : -by));
  settle (fixture);
}

static void
assert_says (Fixture *fixture,
             char    *part)
{
  g_autofree char *own = part;
  const char *text = tr_sheet_view_get_text (fixture->sheets);

  g_assert_nonnull (text);
  if (strstr (text, own) == NULL)
    g_error ("“%s” does not say “%s”", text, own);
}

static void
test_edge_is_dragged (Fixture       *fixture,
                      gconstpointer  data)
{
  const TrReader *reader = tr_page_get_reader (fixture->page.page);
  TrBox before, now;
  double x, y, last = 90;

  press_edge (fixture, TR_MEASURE_ALONG, &x, &y);
  g_assert_true (tr_picture_get_box (tr_picture_view_get_picture (fixture->view), &(TrHit) { TR_PART_OF_SHEET, 0 }, &before));
  for (int by = 6; by <= 18; by += 6)
    {
      move_edge (fixture, x, y, by);
      g_assert_cmpfloat (get_cut (fixture)->base_mm, >, last);
      last = get_cut (fixture)->base_mm;
      g_assert_cmpfloat_with_epsilon (last, round (last), 1e-9);
      assert_says (fixture, tr_words_length (reader, last));
      assert_says (fixture, tr_words_count (reader, get_figures (fixture)->sheet.pieces_cut));
      assert_says (fixture, tr_words_mass (reader, get_figures (fixture)->piece.raw_mass_g));
      assert_says (fixture, tr_words_percent (reader, get_figures (fixture)->sheet.scrap_percent));
      /* the near corner where the row starts does not move */
      g_assert_true (tr_picture_get_box (tr_picture_view_get_picture (fixture->view), &(TrHit) { TR_PART_OF_SHEET, 0 }, &now));
      g_assert_cmpfloat_with_epsilon (now.x, before.x, 1.01);
      if (fixture->is_turned)
        g_assert_cmpfloat_with_epsilon (now.y, before.y, 1.01);
    }
  hand_do ("mouseup", "1", NULL);
  settle (fixture);
  g_assert_null (tr_sheet_view_get_text (fixture->sheets));
  g_assert_cmpfloat_with_epsilon (get_cut (fixture)->base_mm, last, 1e-9);

  g_assert_cmpstr (tr_document_get_undo_label (fixture->page.document), ==, "change the base");
  tr_document_undo (fixture->page.document);
  g_assert_cmpfloat_with_epsilon (get_cut (fixture)->base_mm, 90, 1e-9);
  g_assert_null (tr_document_get_undo_label (fixture->page.document));
  g_assert_false (tr_document_is_modified (fixture->page.document));
}

static void
test_other_edge_is_dragged (Fixture       *fixture,
                            gconstpointer  data)
{
  double x, y;

  press_edge (fixture, TR_MEASURE_ACROSS, &x, &y);
  move_edge (fixture, x, y, -20);
  hand_do ("mouseup", "1", NULL);
  settle (fixture);
  g_assert_cmpfloat (get_cut (fixture)->height_mm, <, 259);
  g_assert_cmpfloat_with_epsilon (get_cut (fixture)->base_mm, 90, 1e-9);
  g_assert_cmpstr (tr_document_get_undo_label (fixture->page.document), ==, "change the height");
}

static void
test_escape_cancels (Fixture       *fixture,
                     gconstpointer  data)
{
  double x, y;

  press_edge (fixture, TR_MEASURE_ALONG, &x, &y);
  move_edge (fixture, x, y, 12);
  g_assert_cmpfloat (get_cut (fixture)->base_mm, >, 90);
  hand_do ("key", "Escape", NULL);
  settle (fixture);
  g_assert_cmpfloat_with_epsilon (get_cut (fixture)->base_mm, 90, 1e-9);
  g_assert_null (tr_sheet_view_get_text (fixture->sheets));
  move_edge (fixture, x, y, 30);
  hand_do ("mouseup", "1", NULL);
  settle (fixture);
  g_assert_cmpfloat_with_epsilon (get_cut (fixture)->base_mm, 90, 1e-9);
  g_assert_null (tr_document_get_undo_label (fixture->page.document));
  g_assert_false (tr_document_is_modified (fixture->page.document));
}

static void
test_ctrl_is_finer (Fixture       *fixture,
                    gconstpointer  data)
{
  gboolean seen_part = FALSE;
  double x, y;

  press_edge (fixture, TR_MEASURE_ALONG, &x, &y);
  hand_do ("keydown", "ctrl", NULL);
  settle (fixture);
  for (int by = 5; by < 12; by++)
    {
      double mm;

      move_edge (fixture, x, y, by);
      mm = get_cut (fixture)->base_mm;
      g_assert_cmpfloat_with_epsilon (mm * 10, round (mm * 10), 1e-6);
      seen_part |= fabs (mm - round (mm)) > 0.05;
    }
  hand_do ("keyup", "ctrl", "mouseup", "1", NULL);
  settle (fixture);
  g_assert_true (seen_part);
}

static void
test_inches_go_in_eighths (Fixture       *fixture,
                           gconstpointer  data)
{
  TrReader reader;
  double x, y, eighths;

  tr_reader_init_plain (&reader, TR_UNITS_US);
  tr_page_set_reader (fixture->page.page, &reader);
  ui_frames (GTK_WIDGET (fixture->view), 2);
  press_edge (fixture, TR_MEASURE_ALONG, &x, &y);
  move_edge (fixture, x, y, 15);
  hand_do ("mouseup", "1", NULL);
  settle (fixture);
  eighths = get_cut (fixture)->base_mm / 25.4 * 8;
  g_assert_cmpfloat (get_cut (fixture)->base_mm, >, 90);
  g_assert_cmpfloat_with_epsilon (eighths, round (eighths), 1e-6);
}

static void
test_click_moves_nothing (Fixture       *fixture,
                          gconstpointer  data)
{
  double x, y;

  press_edge (fixture, TR_MEASURE_ALONG, &x, &y);
  hand_do ("mouseup", "1", NULL);
  settle (fixture);
  g_assert_false (tr_document_is_modified (fixture->page.document));
  g_assert_null (tr_sheet_view_get_text (fixture->sheets));
}

/* From the drawing, with the edge that moves that way. */
static void
test_arrows_change_the_measures (Fixture       *fixture,
                                 gconstpointer  data)
{
  gboolean sideways = is_sideways (fixture, TR_MEASURE_ALONG);

  gtk_widget_grab_focus (GTK_WIDGET (fixture->view));
  hand_key (sideways ? "Right" : "Up");
  settle (fixture);
  g_assert_cmpfloat_with_epsilon (get_cut (fixture)->base_mm, 91, 1e-9);
  hand_key (sideways ? "Left" : "Down");
  settle (fixture);
  hand_key (sideways ? "Left" : "Down");
  settle (fixture);
  g_assert_cmpfloat_with_epsilon (get_cut (fixture)->base_mm, 89, 1e-9);
  hand_key (sideways ? "Up" : "Right");
  settle (fixture);
  g_assert_cmpfloat_with_epsilon (get_cut (fixture)->height_mm, 261, 1e-9);
}

/* The document of a dough that is given by its flour: the mass decides. */
static void
test_mass_decides (Fixture       *fixture,
                   gconstpointer  data)
{
  double pieces = get_figures (fixture)->sheet.pieces_cut, x, y;

  press_edge (fixture, TR_MEASURE_ALONG, &x, &y);
  move_edge (fixture, x, y, -8);
  hand_do ("mouseup", "1", NULL);
  settle (fixture);
  g_assert_cmpfloat (get_cut (fixture)->width_mm, <, 80);
  g_assert_cmpfloat (get_figures (fixture)->sheet.pieces_cut, >, pieces);
}

static void
test_two_sheets_are_drawn (Fixture       *fixture,
                           gconstpointer  data)
{
  TrTrial *draft = tr_document_draft (fixture->page.document);
  TrPicture *picture;
  guint n;

  tr_trial_own_dough (draft, 0)->batch_value = 44;
  g_assert_true (tr_page_commit (fixture->page.page, draft, "change the batch", NULL, "/batch"));
  ui_frames (GTK_WIDGET (fixture->view), 2);
  picture = tr_picture_view_get_picture (fixture->view);
  g_assert_cmpint (get_figures (fixture)->sheet.sheets, ==, 2);
  g_assert_nonnull (tr_picture_get_outline (picture, &(TrHit) { TR_PART_OF_SHEET, 1 }, &n));
  g_assert_null (tr_picture_get_outline (picture, &(TrHit) { TR_PART_OF_SHEET, 2 }, &n));
  g_assert_nonnull (tr_picture_get_outline (picture, &(TrHit) { TR_PART_OF_PIECE, (int) get_figures (fixture)->sheet.pieces_cut - 1 }, &n));
}

/* ---- layouts ---- */

static GtkWidget *
get_child (Fixture *fixture,
           int      index)
{
  return GTK_WIDGET (gtk_flow_box_get_child_at_index (fixture->flow, index));
}

static void
assert_chosen (Fixture *fixture,
               int      index)
{
  GtkFlowBoxChild *child;

  for (int i = 0; (child = gtk_flow_box_get_child_at_index (fixture->flow, i)) != NULL; i++)
    {
      GtkWidget *drawing = gtk_widget_get_first_child (gtk_flow_box_child_get_child (child));
      const char *title = gtk_label_get_label (GTK_LABEL (gtk_widget_get_next_sibling (drawing)));

      g_assert_cmpint (gtk_flow_box_child_is_selected (child), ==, i == index);
      g_assert_cmpint (strstr (title, "chosen") != NULL, ==, i == index);
    }
}

static void
test_layout_is_clicked (Fixture       *fixture,
                        gconstpointer  data)
{
  TrAlternative alternatives[TR_MAX_ALTERNATIVES];
  guint n = tr_sheet_list_by_rows (get_figures (fixture), alternatives);

  g_assert_cmpuint (n, >=, 2);
  assert_chosen (fixture, 0);
  for (int i = (int) MIN (n, 3); i >= 0; i--)
    {
      GtkWidget *child = get_child (fixture, i);

      scroll_to (fixture, GTK_WIDGET (fixture->flow));
      hand_move (child, gtk_widget_get_width (child) / 2.0, gtk_widget_get_height (child) / 2.0);
      settle (fixture);
      hand_press_button (child, "1");
      settle (fixture);
      g_assert_cmpint (get_cut (fixture)->rows, ==, i == 0 ? 0 : alternatives[i - 1].rows);
      assert_chosen (fixture, i);
      if (i > 0)
        {
          g_assert_cmpint (get_figures (fixture)->sheet.sheets, ==, alternatives[i - 1].sheets);
          g_assert_cmpint (get_figures (fixture)->sheet.per_row, ==, alternatives[i - 1].per_row);
          g_assert_cmpfloat_with_epsilon (get_figures (fixture)->sheet.scrap_percent, alternatives[i - 1].scrap_percent, 1e-9);
        }
    }
}

static void
test_layout_is_chosen_by_keys (Fixture       *fixture,
                               gconstpointer  data)
{
  TrAlternative alternatives[TR_MAX_ALTERNATIVES];

  g_assert_cmpuint (tr_sheet_list_by_rows (get_figures (fixture), alternatives), >=, 2);
  /* As Tab comes in. */
  g_assert_true (gtk_widget_child_focus (GTK_WIDGET (fixture->flow), GTK_DIR_TAB_FORWARD));
  hand_do ("key", "Right", NULL);
  settle (fixture);
  hand_do ("key", "Right", NULL);
  settle (fixture);
  hand_do ("key", "Return", NULL);
  settle (fixture);
  g_assert_cmpint (get_cut (fixture)->rows, ==, alternatives[1].rows);
  assert_chosen (fixture, 2);
}

/* Each says its numbers to those who cannot see it. */
static void
test_layouts_are_named (Fixture       *fixture,
                        gconstpointer  data)
{
  const TrReader *reader = tr_page_get_reader (fixture->page.page);
  TrAlternative alternatives[TR_MAX_ALTERNATIVES];
  guint n = tr_sheet_list_by_rows (get_figures (fixture), alternatives);

  for (guint i = 0; i < n; i++)
    {
      const TrAlternative *one = &alternatives[i];
      g_autofree char *size = tr_words_area_size (reader, one->length_mm, one->width_mm);
      g_autofree char *pieces = tr_words_count (reader, one->pieces_cut);
      g_autofree char *scrap = tr_words_percent (reader, one->scrap_percent);
      g_autofree char *name = g_strdup_printf ("%d rows of %d; sheets: %d, %s; pieces: %s; scrap %s",
                                               one->rows, one->per_row, one->sheets, size, pieces, scrap);

      g_assert_true (ui_has_label (get_child (fixture, (int) i + 1), name));
    }
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;
  if (!hand_is_there ())
    {
      g_print ("1..0 # SKIP no xdotool\n");
      return 0;
    }

  g_test_add ("/sheet/edge-is-dragged-with-live-numbers-in-one-step", Fixture, "d1", set_up, test_edge_is_dragged, tear_down);
  g_test_add ("/sheet/other-edge-is-dragged", Fixture, "d1", set_up, test_other_edge_is_dragged, tear_down);
  g_test_add ("/sheet/escape-cancels", Fixture, "d1", set_up, test_escape_cancels, tear_down);
  g_test_add ("/sheet/ctrl-is-finer", Fixture, "d1", set_up, test_ctrl_is_finer, tear_down);
  g_test_add ("/sheet/inches-go-in-eighths", Fixture, "d1", set_up, test_inches_go_in_eighths, tear_down);
  g_test_add ("/sheet/click-moves-nothing", Fixture, "d1", set_up, test_click_moves_nothing, tear_down);
  g_test_add ("/sheet/arrows-change-the-measures", Fixture, "d1", set_up, test_arrows_change_the_measures, tear_down);
  g_test_add ("/sheet/smaller-pieces-are-more-where-the-mass-decides", Fixture, "d2", set_up, test_mass_decides, tear_down);
  g_test_add ("/sheet/two-sheets-are-drawn-as-two", Fixture, "d1", set_up, test_two_sheets_are_drawn, tear_down);
  g_test_add ("/sheet/layout-is-clicked", Fixture, "d1", set_up, test_layout_is_clicked, tear_down);
  g_test_add ("/sheet/layout-is-chosen-by-keys", Fixture, "d1", set_up, test_layout_is_chosen_by_keys, tear_down);
  g_test_add ("/sheet/layouts-are-named", Fixture, "d1", set_up, test_layouts_are_named, tear_down);

  return ui_run ();
}
