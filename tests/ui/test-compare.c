/* test-compare.c: doughs side by side, and held against one another
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The fixture's doughs are invented: d1 Triangles to d5 Slices.
 */

#include "config.h"

#include <string.h>

#include "calc/scores.h"
#include "page-fixture.h"
#include "picture/scatter.h"
#include "window/comparison-table.h"
#include "window/figure-cell.h"
#include "window/picture-view.h"
#include "window/scatter-view.h"
#include "window/two-sides.h"

#define NB "\u00a0"
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

static TrComparisonTable *
get_table (PageFixture *fixture)
{
  GtkWidget *table = ui_find_type (GTK_WIDGET (fixture->page), TR_TYPE_COMPARISON_TABLE);

  g_assert_nonnull (table);

  return TR_COMPARISON_TABLE (table);
}

static const TrComparable *
find (const char *key)
{
  const TrComparable *comparable = tr_comparable_find (key);

  g_assert_nonnull (comparable);

  return comparable;
}

/* "0 1 4": the doughs of the columns. */
static char *
dup_columns (PageFixture *fixture)
{
  g_autoptr (GArray) doughs = tr_comparison_table_get_doughs (get_table (fixture));
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < doughs->len; i++)
    g_string_append_printf (text, "%s%u", i > 0 ? " " : "", g_array_index (doughs, guint, i));

  return g_string_free (text, FALSE);
}

#define assert_columns(fixture, expected) \
  G_STMT_START { \
    g_autofree char *columns_ = dup_columns (fixture); \
    g_assert_cmpstr (columns_, ==, (expected)); \
  } G_STMT_END

/* The cell of a figure and a dough, found as who cannot see it would: by what it says. */
static TrFigureCell *
find_cell (GtkWidget  *widget,
           const char *begins)
{
  if (TR_IS_FIGURE_CELL (widget))
    {
      const char *words = tr_figure_cell_get_words (TR_FIGURE_CELL (widget));

      return words != NULL && g_str_has_prefix (words, begins) ? TR_FIGURE_CELL (widget) : NULL;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      TrFigureCell *found = find_cell (child, begins);

      if (found != NULL)
        return found;
    }

  return NULL;
}

static void
assert_cell (PageFixture *fixture,
             const char  *begins,
             const char  *expected)
{
  TrFigureCell *cell = find_cell (GTK_WIDGET (get_table (fixture)), begins);
  g_autofree char *text = NULL;

  if (cell == NULL)
    g_error ("no cell that says “%s”", begins);
  text = tr_figure_cell_dup_text (cell);
  g_assert_cmpstr (text, ==, expected);
}

static char *
dup_number (PageFixture *fixture,
            const char  *key,
            guint        dough)
{
  return tr_words_number (tr_page_get_reader (fixture->page),
                          tr_comparable_get (find (key), tr_figures_get_dough (tr_document_get_figures (fixture->document), dough)),
                          find (key)->decimals);
}

/* The table */

static void
test_every_dough_has_a_column (PageFixture  *fixture,
                               gconstpointer data)
{
  g_autofree char *number = dup_number (fixture, "all_water_percent", 1);

  assert_columns (fixture, "0 1 2 3 4");
  assert_cell (fixture, "Hydration, all water. B Rectangles: ", number);
}

static void
test_rows_are_figures_of_which_something_is_known (PageFixture  *fixture,
                                                   gconstpointer data)
{
  g_autoptr (GPtrArray) rows = tr_comparison_table_get_rows (get_table (fixture));
  guint headings = 0;

  g_assert_null (rows->pdata[0]);
  for (guint i = 0; i < rows->len; i++)
    {
      gboolean is_known = FALSE;

      if (rows->pdata[i] == NULL)
        {
          headings++;
          continue;
        }
      for (guint d = 0; d < page_get_trial (fixture)->doughs->len; d++)
        is_known |= isfinite (tr_comparable_get (rows->pdata[i], tr_figures_get_dough (tr_document_get_figures (fixture->document), d)));
      g_assert_true (is_known);
    }
  g_assert_cmpuint (headings, >=, 5);
}

static void
test_an_edit_is_seen (PageFixture  *fixture,
                      gconstpointer data)
{
  TrTrial *draft = tr_document_draft (fixture->document);

  tr_set_text (&tr_dough_get_line (tr_trial_own_dough (draft, 1), 1)->amount, "61 %");
  page_commit (fixture, draft);
  assert_cell (fixture, "Hydration, all water. B Rectangles: ", "61.0");
}

static void
test_doughs_are_chosen (PageFixture  *fixture,
                        gconstpointer data)
{
  TrComparisonTable *table = get_table (fixture);

  tr_comparison_table_set_shown (table, "d2", FALSE);
  tr_comparison_table_set_shown (table, "d4", FALSE);
  ui_settle ();
  assert_columns (fixture, "0 2 4");
  g_assert_null (find_cell (GTK_WIDGET (table), "Hydration, all water. B"));
  g_assert_true (ui_says (GTK_WIDGET (fixture->page), "3 of 5 doughs"));
  tr_comparison_table_set_shown (table, "d2", TRUE);
  assert_columns (fixture, "0 1 2 4");
}

static void
test_a_dough_that_goes_takes_its_column_along (PageFixture  *fixture,
                                               gconstpointer data)
{
  TrTrial *draft = tr_document_draft (fixture->document);

  tr_comparison_table_set_reference (get_table (fixture), "d1");
  tr_trial_remove_dough (draft, 0);
  page_commit (fixture, draft);
  assert_columns (fixture, "0 1 2 3");
  g_assert_null (tr_comparison_table_get_reference (get_table (fixture)));
}

static void
test_doughs_stand_in_the_order_of_a_row (PageFixture  *fixture,
                                         gconstpointer data)
{
  TrComparisonTable *table = get_table (fixture);
  TrTrial *draft = tr_document_draft (fixture->document);
  gboolean is_least_first;

  /* Added water: d1 25 % and more in all, d2 55 %; the others have no line, and so nothing known. */
  tr_comparison_table_select (table, find ("added_water_percent"));
  gtk_widget_activate_action (GTK_WIDGET (table), "comparison.order", NULL);
  assert_columns (fixture, "1 0 2 3 4");
  gtk_widget_activate_action (GTK_WIDGET (table), "comparison.order", NULL);
  g_assert_true (tr_comparison_table_get_order (table, &is_least_first) == find ("added_water_percent"));
  g_assert_true (is_least_first);
  assert_columns (fixture, "0 1 2 3 4");

  /* It goes along with an edit. */
  tr_set_text (&tr_dough_get_line (tr_trial_own_dough (draft, 1), 1)->amount, "5 %");
  page_commit (fixture, draft);
  assert_columns (fixture, "1 0 2 3 4");
  gtk_widget_activate_action (GTK_WIDGET (table), "comparison.order", NULL);
  g_assert_null (tr_comparison_table_get_order (table, NULL));
  assert_columns (fixture, "0 1 2 3 4");
}

/* The row under the pointer is the one that the menu is about. */
static void
test_menu_is_of_the_row_that_is_pressed (PageFixture  *fixture,
                                         gconstpointer data)
{
  TrComparisonTable *table = get_table (fixture);
  TrFigureCell *cell = find_cell (GTK_WIDGET (table), "Raw weight, a piece. B Rectangles: ");
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (GTK_WIDGET (table));
  graphene_rect_t bounds;

  g_assert_nonnull (cell);
  g_assert_true (gtk_widget_compute_bounds (GTK_WIDGET (cell), GTK_WIDGET (table), &bounds));
  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_GESTURE_CLICK (controller) && gtk_gesture_single_get_button (GTK_GESTURE_SINGLE (controller)) == GDK_BUTTON_SECONDARY)
        g_signal_emit_by_name (controller, "pressed", 1, bounds.origin.x + 2.0, bounds.origin.y + 2.0);
    }
  g_assert_true (tr_comparison_table_get_selected (table) == find ("raw_mass_g"));
  gtk_widget_activate_action (GTK_WIDGET (table), "comparison.order", NULL);
  g_assert_true (tr_comparison_table_get_order (table, NULL) == find ("raw_mass_g"));
  g_assert_true (ui_says (GTK_WIDGET (table), "Raw weight ▾"));
}

static void
test_what_differs_most_stands_first (PageFixture  *fixture,
                                     gconstpointer data)
{
  const guint doughs[] = { 0, 1, 2, 3, 4 };
  double before = INFINITY;

  tr_comparison_table_set_by_spread (get_table (fixture), TRUE);

  g_autoptr (GPtrArray) rows = tr_comparison_table_get_rows (get_table (fixture));

  for (guint i = 0; i < rows->len; i++)
    {
      TrSpread spread;

      g_assert_nonnull (rows->pdata[i]);
      tr_comparable_get_spread (rows->pdata[i], tr_document_get_figures (fixture->document), doughs, 5, &spread);
      if (isnan (spread.relative))
        spread.relative = -1;
      g_assert_cmpfloat (spread.relative, <=, before);
      before = spread.relative;
    }
}

static void
test_doughs_are_held_against_one (PageFixture  *fixture,
                                  gconstpointer data)
{
  TrTrial *draft = tr_document_draft (fixture->document);

  tr_set_text (&tr_dough_get_line (tr_trial_own_dough (draft, 1), 1)->amount, "60 %");
  g_ptr_array_add (tr_trial_own_dough (draft, 2)->lines, tr_line_new (TR_STAGE_DOUGH, "flour-bread", "500 g"));
  g_ptr_array_add (tr_trial_own_dough (draft, 2)->lines, tr_line_new (TR_STAGE_DOUGH, "water", "75 %"));
  page_commit (fixture, draft);
  gtk_widget_activate_action (GTK_WIDGET (get_table (fixture)), "comparison.hold-against", "s", "d2");
  ui_settle ();
  assert_cell (fixture, "Hydration, added water. C Squares: ", "+15.0 +25" NB "%");
  assert_cell (fixture, "Hydration, added water. B Rectangles: ", "60.0");
  gtk_widget_activate_action (GTK_WIDGET (get_table (fixture)), "comparison.hold-against", "s", "d2");
  g_assert_null (tr_comparison_table_get_reference (get_table (fixture)));
  assert_cell (fixture, "Hydration, added water. C Squares: ", "75.0");
}

static void
test_a_figure_outside_of_its_band_says_so (PageFixture  *fixture,
                                           gconstpointer data)
{
  TrTrial *draft = tr_document_draft (fixture->document);
  TrFigureCell *cell;

  tr_set_text (&tr_dough_get_line (tr_trial_own_dough (draft, 0), 3)->amount, "40 g");
  page_commit (fixture, draft);
  cell = find_cell (GTK_WIDGET (get_table (fixture)), "Salt, on flour. A Triangles: ");
  g_assert_nonnull (cell);
  g_assert_nonnull (strstr (tr_figure_cell_get_words (cell), "outside of what is usual, 1.60" NB "% to 2.40" NB "%"));
}

static gboolean
has_clipboard_text (gpointer data)
{
  GdkClipboard *clipboard = data;

  return gdk_clipboard_is_local (clipboard) && gdk_clipboard_get_content (clipboard) != NULL;
}

static void
test_it_is_copied (PageFixture  *fixture,
                   gconstpointer data)
{
  TrComparisonTable *table = get_table (fixture);
  g_autofree char *csv = NULL, *tsv = NULL;
  GdkClipboard *clipboard = gtk_widget_get_clipboard (GTK_WIDGET (table));
  g_auto (GValue) value = G_VALUE_INIT;

  tr_comparison_table_set_shown (table, "d3", FALSE);
  csv = tr_comparison_table_dup_text (table, TRUE);
  tsv = tr_comparison_table_dup_text (table, FALSE);
  g_assert_true (g_str_has_prefix (csv, "key,unit,Triangles,Rectangles,Rounds,Slices\r\n"));
  g_assert_true (g_str_has_prefix (tsv, "key\tunit\tTriangles\tRectangles\tRounds\tSlices\n"));

  gtk_widget_activate_action (GTK_WIDGET (fixture->page), "compare.copy-csv", NULL);
  g_assert_true (ui_wait_until (has_clipboard_text, clipboard, 5000));
  g_value_init (&value, G_TYPE_STRING);
  g_assert_true (gdk_content_provider_get_value (gdk_clipboard_get_content (clipboard), &value, NULL));
  g_assert_cmpstr (g_value_get_string (&value), ==, csv);
}

static void
test_many_doughs_show_the_first (PageFixture  *fixture,
                                 gconstpointer data)
{
  TrTrial *draft = tr_document_draft (fixture->document);

  while (draft->doughs->len < TR_MAX_DOUGHS)
    {
      TrDough *dough = tr_dough_copy (tr_trial_get_dough (draft, 1));
      g_autofree char *id = tr_trial_dup_free_id (draft);

      tr_set_text (&dough->id, id);
      g_ptr_array_add (draft->doughs, dough);
    }
  page_commit (fixture, draft);
  assert_columns (fixture, "0 1 2 3 4 5 6 7 8 9 10 11");
  g_assert_true (ui_says (GTK_WIDGET (fixture->page), "12 of 64 doughs"));
}

/* The scatter */

static gboolean
picture_says (PageFixture *fixture,
              const char  *words)
{
  GtkWidget *view = ui_find_type (ui_find_type (GTK_WIDGET (fixture->page), TR_TYPE_SCATTER_VIEW), TR_TYPE_PICTURE_VIEW);
  TrPicture *picture = tr_picture_view_get_picture (TR_PICTURE_VIEW (view));

  g_assert_nonnull (picture);

  return strstr (tr_picture_get_description (picture), words) != NULL;
}

static void
test_scatter_shows_what_is_chosen (PageFixture  *fixture,
                                   gconstpointer data)
{
  TrScatterView *view = TR_SCATTER_VIEW (ui_find_type (GTK_WIDGET (fixture->page), TR_TYPE_SCATTER_VIEW));

  tr_scatter_view_set_axes (view, find ("all_water_percent"), find ("raw_mass_g"));
  ui_settle ();
  g_assert_true (picture_says (fixture, "Across: Hydration, all water. Up: Raw weight, a piece."));
  g_assert_true (picture_says (fixture, "B Rectangles"));
  tr_comparison_table_set_shown (get_table (fixture), "d2", FALSE);
  ui_settle ();
  g_assert_false (picture_says (fixture, "B Rectangles"));
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
test_scatter_shows_mean_scores (PageFixture  *fixture,
                                gconstpointer data)
{
  TrScatterView *view = TR_SCATTER_VIEW (ui_find_type (GTK_WIDGET (fixture->page), TR_TYPE_SCATTER_VIEW));

  tr_scatter_view_set_axes (view, find ("all_water_percent"), NULL);
  ui_settle ();
  g_assert_true (ui_says (GTK_WIDGET (view), "Nobody has scored every sample yet"));
  score (fixture);
  g_assert_false (ui_says (GTK_WIDGET (view), "Nobody has scored every sample yet"));
  g_assert_true (picture_says (fixture, "Up: Mean score."));
  g_assert_true (picture_says (fixture, ", 8.0."));
}

/* The sides */

static void
test_sides_stand_beside_or_above_each_other (void)
{
  static const struct { int width; gboolean is_beside; } cases[] = { { 1400, TRUE }, { 500, FALSE } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      GtkWidget *first = gtk_label_new ("first"), *second = gtk_label_new ("second"), *window = gtk_window_new ();
      graphene_rect_t one, other;

      gtk_window_set_child (GTK_WINDOW (window), tr_two_sides_new (first, first, second, 560));
      gtk_window_set_default_size (GTK_WINDOW (window), cases[i].width, 600);
      gtk_window_present (GTK_WINDOW (window));
      ui_frames (window, 2);
      g_assert_true (gtk_widget_compute_bounds (first, window, &one));
      g_assert_true (gtk_widget_compute_bounds (second, window, &other));
      if (cases[i].is_beside)
        g_assert_cmpfloat (other.origin.x, >=, one.origin.x + one.size.width);
      else
        g_assert_cmpfloat (other.origin.y, >=, one.origin.y + one.size.height);
      gtk_window_destroy (GTK_WINDOW (window));
    }
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  ADD ("/compare/every-dough-has-a-column", test_every_dough_has_a_column);
  ADD ("/compare/rows-are-figures-of-which-something-is-known", test_rows_are_figures_of_which_something_is_known);
  ADD ("/compare/an-edit-is-seen", test_an_edit_is_seen);
  ADD ("/compare/doughs-are-chosen", test_doughs_are_chosen);
  ADD ("/compare/a-dough-that-goes-takes-its-column-along", test_a_dough_that_goes_takes_its_column_along);
  ADD ("/compare/doughs-stand-in-the-order-of-a-row", test_doughs_stand_in_the_order_of_a_row);
  ADD ("/compare/menu-is-of-the-row-that-is-pressed", test_menu_is_of_the_row_that_is_pressed);
  ADD ("/compare/what-differs-most-stands-first", test_what_differs_most_stands_first);
  ADD ("/compare/doughs-are-held-against-one", test_doughs_are_held_against_one);
  ADD ("/compare/a-figure-outside-of-its-band-says-so", test_a_figure_outside_of_its_band_says_so);
  ADD ("/compare/it-is-copied", test_it_is_copied);
  ADD ("/compare/many-doughs-show-the-first", test_many_doughs_show_the_first);
  ADD ("/compare/scatter-shows-what-is-chosen", test_scatter_shows_what_is_chosen);
  ADD ("/compare/scatter-shows-mean-scores", test_scatter_shows_mean_scores);
  g_test_add_func ("/two-sides/stand-beside-or-above-each-other", test_sides_stand_beside_or_above_each_other);

  return ui_run ();
}
