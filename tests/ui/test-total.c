/* test-total.c: the total formula and what is in a dough, read, copied, kept
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Expected weights are sums by hand of the fixture's lines; its numbers are
 * invented.
 */

#include "config.h"

#include "hand.h"
#include "page-fixture.h"
#include "window/figure-table.h"
#include "window/last-mix.h"
#include "window/line-list.h"
#include "window/line-row.h"

#define NO_BREAK "\302\240"

static TrFigureTable *
get_table (PageFixture *fixture,
           const char  *name)
{
  GtkWidget *table = ui_find (GTK_WIDGET (fixture->page), TR_TYPE_FIGURE_TABLE, name);

  g_assert_nonnull (table);

  return TR_FIGURE_TABLE (table);
}

static int
find_column (const TrTextTable *table,
             const char        *head)
{
  for (guint i = 0; i < table->n_columns; i++)
    if (g_str_equal (tr_text_table_get (table, 0, i), head))
      return (int) i;

  return -1;
}

static void
test_columns_as_the_trade_prints_them (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_total_page_new, "d1");

  const TrTextTable *table = tr_figure_table_get (get_table (&fixture, "Total formula"));
  int dough = find_column (table, "Final dough"), roll_in = find_column (table, "Roll-in"), total = find_column (table, "Total");

  g_assert_cmpint (dough, >, 1);
  g_assert_cmpint (roll_in, ==, dough + 1);
  g_assert_cmpint (total, ==, roll_in + 1);
  g_assert_cmpint (find_column (table, "% of flour"), ==, total + 1);
  g_assert_cmpstr (tr_text_table_get (table, table->rows->len - 1, 0), ==, "Weight");
  page_tear_down (&fixture);
}

static double
read_cell (const TrTextTable *table,
           guint              row,
           guint              column)
{
  g_auto (GStrv) parts = g_strsplit (tr_text_table_get (table, row, column), "\u202f", -1);
  g_autofree char *plain = g_strjoinv ("", parts);

  return g_ascii_strtod (plain, NULL);
}

/* What somebody with a pencil would check. */
static void
test_every_sum_is_of_what_is_read (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_total_page_new, "d1");

  const TrTextTable *table = tr_figure_table_get (get_table (&fixture, "Total formula"));
  guint last = table->rows->len - 1;

  for (guint column = 1; column + 1 < table->n_columns; column++)
    {
      double sum = 0;

      for (guint row = 1; row < last; row++)
        sum += read_cell (table, row, column);
      g_assert_cmpfloat_with_epsilon (sum, read_cell (table, last, column), 0.05);
    }
  page_tear_down (&fixture);
}

static void
test_it_follows_the_formula (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_total_page_new, "d1");

  g_autofree char *before = tr_text_table_dup_tsv (tr_figure_table_get (get_table (&fixture, "Total formula")));
  TrTrial *draft = tr_document_draft (fixture.document);
  TrDough *dough = tr_trial_own_dough (draft, 0);

  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "honey", "40 g"));
  g_assert_true (tr_page_commit (fixture.page, draft, "add honey", NULL, "/lines"));
  ui_settle ();

  g_autofree char *after = tr_text_table_dup_tsv (tr_figure_table_get (get_table (&fixture, "Total formula")));

  g_assert_null (strstr (before, "Honey"));
  g_assert_nonnull (strstr (after, "Honey\t"));
  tr_document_undo (fixture.document);
  ui_settle ();

  g_autofree char *undone = tr_text_table_dup_tsv (tr_figure_table_get (get_table (&fixture, "Total formula")));

  g_assert_cmpstr (before, ==, undone);
  page_tear_down (&fixture);
}

static void
text_read_cb (GObject      *clipboard,
              GAsyncResult *result,
              gpointer      text)
{
  *(char **) text = gdk_clipboard_read_text_finish (GDK_CLIPBOARD (clipboard), result, NULL);
}

/* By the button, with the pointer. */
static void
test_copies_a_table_for_a_spreadsheet (void)
{
  PageFixture fixture;
  char *text = NULL;

  if (!hand_is_there ())
    {
      g_test_skip ("no pointer here");
      return;
    }
  page_set_up (&fixture, tr_total_page_new, "d1");
  hand_focus (fixture.window);

  GtkWidget *button = ui_find (GTK_WIDGET (fixture.page), GTK_TYPE_BUTTON, "Copy as a table: What is in it");

  g_assert_nonnull (button);
  hand_click (button, gtk_widget_get_width (button) / 2.0, gtk_widget_get_height (button) / 2.0);
  gdk_clipboard_read_text_async (gtk_widget_get_clipboard (button), NULL, text_read_cb, &text);
  while (text == NULL)
    g_main_context_iteration (NULL, TRUE);
  g_assert_true (g_str_has_prefix (text, "\tg a piece\tg in 100 g\t% of flour\nFlour\t"));
  g_assert_null (strstr (text, "\u202f"));
  g_free (text);
  page_tear_down (&fixture);
}

/* Added by its menu's action: taken out of the dough, one step to undo. */
static void
test_poolish_is_taken_out_of_the_dough (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d2");

  GtkWidget *list = ui_find_type (GTK_WIDGET (fixture.page), TR_TYPE_LINE_LIST);
  const TrDoughFigures *figures = tr_page_get_figures (fixture.page);
  double flour_g = figures->formula.written_flour_g, total_g = figures->formula.written_total_g;
  guint n = figures->formula.lines->len;

  g_assert_nonnull (list);
  g_assert_true (gtk_widget_activate_action (list, "lines.add-preferment", "s", "old-dough"));
  ui_settle ();
  figures = tr_page_get_figures (fixture.page);
  g_assert_cmpuint (figures->formula.lines->len, >, n);
  g_assert_cmpfloat_with_epsilon (figures->formula.written_flour_g, flour_g, 1e-3);
  g_assert_cmpfloat_with_epsilon (figures->formula.written_total_g, total_g, 1e-2);
  g_assert_cmpfloat_with_epsilon (figures->formula.prefermented_flour_percent, 20, 0.5);
  tr_document_undo (fixture.document);
  g_assert_cmpuint (tr_page_get_figures (fixture.page)->formula.lines->len, ==, n);
  page_tear_down (&fixture);
}

/* Many columns of large text scroll in the table; the page stays as narrow as a phone held upright. */
static void
test_many_columns_do_not_widen_the_page (void)
{
  GtkSettings *settings = gtk_settings_get_default ();
  PageFixture fixture;
  int minimum, dpi;

  page_set_up (&fixture, tr_total_page_new, "d1");
  g_object_get (settings, "gtk-xft-dpi", &dpi, NULL);
  g_object_set (settings, "gtk-xft-dpi", (int) (1.5 * 96 * 1024), NULL);

  TrTrial *draft = tr_document_draft (fixture.document);
  TrDough *dough = tr_trial_own_dough (draft, 0);

  for (int i = 0; i < 9; i++)
    {
      TrLine *line = tr_line_new (TR_STAGE_PREFERMENT, "flour-bread", "10 g");

      line->group = g_strdup_printf ("levain %d", i);
      g_ptr_array_add (dough->lines, line);
    }
  g_assert_true (tr_page_commit (fixture.page, draft, "add", NULL, "/lines"));
  ui_settle ();
  g_assert_cmpuint (tr_figure_table_get (get_table (&fixture, "Total formula"))->n_columns, >, 10);
  gtk_widget_measure (GTK_WIDGET (fixture.page), GTK_ORIENTATION_HORIZONTAL, -1, &minimum, NULL, NULL, NULL);
  g_assert_cmpint (minimum, <=, 420);
  g_object_set (settings, "gtk-xft-dpi", dpi, NULL);
  page_tear_down (&fixture);
}

/* The wheel over a table scrolls the page. */
static void
test_wheel_scrolls_the_page (void)
{
  PageFixture fixture;

  if (!hand_is_there ())
    {
      g_test_skip ("no pointer here");
      return;
    }
  page_set_up (&fixture, tr_total_page_new, "d1");
  hand_focus (fixture.window);

  GtkWidget *table = GTK_WIDGET (get_table (&fixture, "Total formula"));
  GtkWidget *outer = gtk_widget_get_ancestor (table, GTK_TYPE_SCROLLED_WINDOW);
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (outer));

  gtk_window_set_default_size (fixture.window, 600, 300);
  ui_settle ();
  hand_move (table, 60, 60);
  hand_do ("click", "5", NULL);
  ui_settle ();
  g_assert_cmpfloat (gtk_adjustment_get_value (adjustment), >, 0);
  page_tear_down (&fixture);
}

/* Typed as measured: 3 × 24.5 - 20 - 21 - 12 = 20.5; the second dough has neither preferment nor starter. */
static void
test_friction_of_the_last_mix (void)
{
  PageFixture fixture;
  double friction_c;

  page_set_up (&fixture, tr_method_page_new, "d2");

  GtkWidget *last_mix = ui_find_type (GTK_WIDGET (fixture.page), TR_TYPE_LAST_MIX);
  GtkWidget *use;

  friction_c = tr_page_get_dough (fixture.page)->method->friction_c;
  g_assert_null (ui_find (last_mix, GTK_TYPE_BUTTON, "Use friction 20.5" NO_BREAK "°C"));
  page_type (&fixture, "/log/mixes/0/dough_c", "24.5");
  page_leave (&fixture);
  page_assert_value (&fixture, "/log/mixes/0/dough_c", "24.5");
  page_type (&fixture, "/log/mixes/0/flour_c", "20");
  page_type (&fixture, "/log/mixes/0/room_c", "21");
  page_type (&fixture, "/log/mixes/0/liquid_c", "12");
  page_leave (&fixture);
  ui_settle ();

  use = ui_find (last_mix, GTK_TYPE_BUTTON, "Use friction 20.5" NO_BREAK "°C");
  g_assert_nonnull (use);
  g_assert_true (gtk_widget_get_visible (use));
  g_signal_emit_by_name (use, "clicked");
  ui_settle ();
  page_assert_value (&fixture, "/method/friction_c", "20.5");
  page_assert_value (&fixture, "/method/friction_n", "3");
  g_assert_false (gtk_widget_get_visible (use));
  tr_document_undo (fixture.document);
  g_assert_cmpfloat (tr_page_get_dough (fixture.page)->method->friction_c, ==, friction_c);
  page_tear_down (&fixture);
}

static GtkWindow *
find_question (GtkWindow *window)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWindow) toplevel = g_list_model_get_item (toplevels, i);

      if (GTK_IS_DIALOG (toplevel) && gtk_window_get_transient_for (toplevel) == window)
        return toplevel;
    }

  return NULL;
}

static void
set_roll_in_of_dough (PageFixture *fixture)
{
  TrTrial *draft = tr_document_draft (fixture->document);
  TrDough *dough = tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (fixture->page));

  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "butter-unsalted", "50 g"));
  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_ROLL_IN, "butter-unsalted", "30 % of dough"));
  g_assert_true (tr_page_commit (fixture->page, draft, "add", NULL, "/lines"));
  ui_settle ();
}

static void
move_to_roll_in (PageFixture *fixture,
                 guint        index)
{
  g_autofree char *pointer = g_strdup_printf ("/lines/%u/amount", index);

  g_assert_true (tr_page_go_to (fixture->page, pointer));
  g_assert_true (gtk_widget_activate_action (page_get_around (fixture, TR_TYPE_LINE_ROW), "line.set-stage", "s", "roll-in"));
  ui_settle ();
}

/* Butter from the dough to the roll-in, which is a percentage of the dough: asked once. */
static void
test_moving_a_line_keeps_the_total (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d2");
  set_roll_in_of_dough (&fixture);

  guint n = tr_page_get_dough (fixture.page)->lines->len;
  double total_g = tr_page_get_figures (fixture.page)->formula.written_total_g;

  move_to_roll_in (&fixture, n - 2);
  g_assert_nonnull (find_question (fixture.window));
  gtk_dialog_response (GTK_DIALOG (find_question (fixture.window)), 2);
  ui_settle ();
  g_assert_cmpfloat_with_epsilon (tr_page_get_figures (fixture.page)->formula.written_total_g, total_g, 1e-2);
  g_assert_cmpint (tr_dough_get_line (tr_page_get_dough (fixture.page), n - 1)->stage, ==, TR_STAGE_ROLL_IN);
  g_assert_true (g_str_has_suffix (tr_dough_get_line (tr_page_get_dough (fixture.page), n - 2)->amount, " g"));

  tr_document_undo (fixture.document);
  ui_settle ();
  move_to_roll_in (&fixture, n - 2);
  g_assert_null (find_question (fixture.window));
  g_assert_cmpfloat_with_epsilon (tr_page_get_figures (fixture.page)->formula.written_total_g, total_g, 1e-2);
  page_tear_down (&fixture);
}

int
main (int   argc,
      char *argv[])
{
  ui_init (&argc, &argv);

  g_test_add_func ("/total/columns-as-the-trade-prints-them", test_columns_as_the_trade_prints_them);
  g_test_add_func ("/total/every-sum-is-of-what-is-read", test_every_sum_is_of_what_is_read);
  g_test_add_func ("/total/it-follows-the-formula", test_it_follows_the_formula);
  g_test_add_func ("/total/copies-a-table-for-a-spreadsheet", test_copies_a_table_for_a_spreadsheet);
  g_test_add_func ("/total/many-columns-do-not-widen-the-page", test_many_columns_do_not_widen_the_page);
  g_test_add_func ("/total/wheel-scrolls-the-page", test_wheel_scrolls_the_page);
  g_test_add_func ("/total/moving-a-line-keeps-the-total", test_moving_a_line_keeps_the_total);
  g_test_add_func ("/total/friction-of-the-last-mix", test_friction_of_the_last_mix);
  g_test_add_func ("/total/a-preferment-is-taken-out-of-the-dough", test_poolish_is_taken_out_of_the_dough);

  return ui_run ();
}
