/* test-percent.c: a line's percent of the flour is typed, and writes its amount
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The expected amounts are percent × flour by hand: the fixture's second dough
 * has 500 g of flour, its first 150 g + 450 g and 30 g in the starter (equal
 * weights of flour and water). An ounce is 28.349523125 g exactly (NIST Special
 * Publication 811, 2008, appendix B.8).
 */

#include "config.h"

#include "hand.h"
#include "page-fixture.h"
#include "window/line-list.h"
#include "window/line-members.h"
#include "window/line-row.h"

#define NO_BREAK "\302\240"

static GtkWidget *
get_percent (PageFixture *fixture,
             guint        index)
{
  g_autofree char *pointer = g_strdup_printf ("/lines/%u/amount", index);

  g_assert_true (tr_page_go_to (fixture->page, pointer));

  GtkWidget *row = page_get_around (fixture, TR_TYPE_LINE_ROW);
  TrDough *dough = (TrDough *) tr_page_get_dough (fixture->page);
  g_autofree char *name = tr_line_dup_name (tr_document_get_trial (fixture->document), tr_dough_get_line (dough, index));
  g_autofree char *label = g_strdup_printf ("%s: Percent of flour", name);
  GtkWidget *entry = ui_find (row, GTK_TYPE_ENTRY, label);

  g_assert_nonnull (entry);

  return entry;
}

static const char *
get_said (PageFixture *fixture,
          guint        index)
{
  return gtk_editable_get_text (GTK_EDITABLE (get_percent (fixture, index)));
}

static void
write_amount (PageFixture *fixture,
              guint        index,
              const char  *amount)
{
  g_autofree char *pointer = g_strdup_printf ("/lines/%u/amount", index);

  page_type (fixture, pointer, amount);
  page_leave (fixture);
}

typedef struct { const char *name, *written, *typed, *expected; } UnitRow;

static const UnitRow unit_rows[] = {
  { "a percent stays a percent", "55 %", "60", "\"60 %\"" },
  { "grams", "275 g", "60", "\"300 g\"" },
  { "with its sign", "275 g", "62.5 %", "\"312.5 g\"" },
  { "kilograms", "0.5 kg", "60", "\"0.3 kg\"" },
  { "ounces", "10 oz", "60", "\"10.58 oz\"" },                   /* 300 / 28.3495 = 10.5822 */
  { "a volume cannot be kept", "1 cup", "60", "\"300 g\"" },
  { "a unit outlives a nought on the way", "2 oz", "0.5", "\"0.088 oz\"" },  /* 2.5 / 28.3495 = 0.08818 */
  { "nothing", "275 g", "0", "\"0 g\"" },
  { "a word that was no weight", "some", "60", "\"300 g\"" },
};

static void
test_amount_follows_in_its_unit (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (unit_rows); i++)
    {
      const UnitRow *row = &unit_rows[i];
      PageFixture fixture;

      g_test_message ("%s", row->name);
      page_set_up (&fixture, tr_formula_page_new, "d2");
      write_amount (&fixture, 1, row->written);
      page_type (&fixture, "/lines/1/percent", row->typed);
      page_assert_value (&fixture, "/lines/1/amount", row->expected);
      page_leave (&fixture);
      page_assert_value (&fixture, "/lines/1/amount", row->expected);
      page_tear_down (&fixture);
    }
}

static void
test_each_follows_the_other_at_once (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d2");
  write_amount (&fixture, 1, "275 g");
  g_assert_cmpstr (get_said (&fixture, 1), ==, "55.0" NO_BREAK "%");
  GtkWidget *amount = page_type (&fixture, "/lines/1/amount", "300 g");
  g_assert_cmpstr (get_said (&fixture, 1), ==, "60.0" NO_BREAK "%");        /* the caret is still in the amount */

  GtkWidget *percent = page_type (&fixture, "/lines/1/percent", "33.33");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (amount)), ==, "166.7 g");        /* 166.65 */
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (percent)), ==, "33.33");        /* as it is being typed */
  page_leave (&fixture);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (percent)), ==, "33.3" NO_BREAK "%");
  page_tear_down (&fixture);
}

static void
test_typing_is_one_step (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  page_type (&fixture, "/lines/3/percent", "2.25");
  page_leave (&fixture);
  page_assert_value (&fixture, "/lines/3/amount", "\"14.2 g\"");         /* 14.175 */
  g_assert_cmpstr (tr_document_get_undo_label (fixture.document), ==, "change percent of Salt");
  tr_document_undo (fixture.document);
  page_assert_value (&fixture, "/lines/3/amount", "\"12 g\"");
  g_assert_cmpstr (get_said (&fixture, 3), ==, "1.9" NO_BREAK "%");
  g_assert_null (tr_document_get_undo_label (fixture.document));

  /* What undid it leads to where it was typed. */
  g_assert_true (tr_page_go_to (fixture.page, "/lines/3/percent"));
  g_assert_true (gtk_widget_get_parent (page_get_focus (&fixture)) == get_percent (&fixture, 3));
  page_tear_down (&fixture);
}

static void
test_escape_puts_back_what_was_written (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d2");
  write_amount (&fixture, 1, "1 1/4 cups");
  g_autofree char *said = g_strdup (get_said (&fixture, 1));
  g_autofree char *step = g_strdup (tr_document_get_undo_label (fixture.document));
  GtkWidget *text = page_type (&fixture, "/lines/1/percent", "60");

  page_assert_value (&fixture, "/lines/1/amount", "\"300 g\"");
  g_assert_true (page_press (&fixture, GDK_KEY_Escape));
  page_assert_value (&fixture, "/lines/1/amount", "\"1 1/4 cups\"");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, said);
  g_assert_cmpstr (tr_document_get_undo_label (fixture.document), ==, step);
  page_tear_down (&fixture);
}

/* To type what stands there, or to pass through, rewrites nothing. */
static void
test_the_same_percent_is_no_change (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d2");
  write_amount (&fixture, 1, "1 cup");
  g_autofree char *said = g_strdup (get_said (&fixture, 1));
  g_autofree char *step = g_strdup (tr_document_get_undo_label (fixture.document));

  gtk_widget_grab_focus (get_percent (&fixture, 1));
  page_leave (&fixture);
  page_assert_value (&fixture, "/lines/1/amount", "\"1 cup\"");
  page_type (&fixture, "/lines/1/percent", said);
  page_leave (&fixture);
  page_assert_value (&fixture, "/lines/1/amount", "\"1 cup\"");
  g_assert_cmpstr (tr_document_get_undo_label (fixture.document), ==, step);
  page_tear_down (&fixture);
}

typedef struct { const char *name, *typed, *kept, *said; } BadRow;

static const BadRow bad_rows[] = {
  { "no number", "some", "\"55 %\"", "“some”" },
  { "nothing at all", "", "\"55 %\"", "percentage" },
  { "another unit", "g", "\"55 %\"", "“g”" },
  { "out of reach", "2000", "\"200 %\"", "2 000 %" },             /* the last readable one counts */
};

static void
test_bad_text_says_why_and_loses_nothing (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (bad_rows); i++)
    {
      const BadRow *bad = &bad_rows[i];
      PageFixture fixture;

      g_test_message ("%s", bad->name);
      page_set_up (&fixture, tr_formula_page_new, "d2");
      GtkWidget *text = page_type (&fixture, "/lines/1/percent", bad->typed);
      GtkWidget *row = page_get_around (&fixture, TR_TYPE_LINE_ROW);
      GtkAccessible *entry = GTK_ACCESSIBLE (gtk_widget_get_parent (text));

      page_leave (&fixture);
      page_assert_value (&fixture, "/lines/1/amount", bad->kept);
      g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, bad->typed);
      ui_frames (row, 1);
      g_assert_true (ui_says (row, bad->said));
      gtk_test_accessible_assert_state (entry, GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE);

      page_type (&fixture, "/lines/1/percent", "60");
      page_assert_value (&fixture, "/lines/1/amount", "\"60 %\"");
      ui_frames (row, 1);
      g_assert_false (ui_says (row, bad->said));
      gtk_test_accessible_assert_state (entry, GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_FALSE);
      page_tear_down (&fixture);
    }
}

static void
test_bad_text_leaves_the_amounts_error (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d2");
  write_amount (&fixture, 1, "a handful");
  page_type (&fixture, "/lines/1/percent", "x");
  GtkWidget *row = page_get_around (&fixture, TR_TYPE_LINE_ROW);

  page_leave (&fixture);
  ui_frames (row, 1);
  g_assert_true (ui_says (row, "“x”"));
  gtk_widget_grab_focus (get_percent (&fixture, 1));
  g_assert_true (page_press (&fixture, GDK_KEY_Escape));
  ui_frames (row, 1);
  g_assert_true (ui_says (row, "handful"));
  page_assert_value (&fixture, "/lines/1/amount", "\"a handful\"");
  page_tear_down (&fixture);
}

/* Which lines can be set ***************************************************/

static void
assert_reason (PageFixture *fixture,
               guint        index,
               const char  *reason)
{
  GtkWidget *entry = get_percent (fixture, index);

  g_assert_false (gtk_widget_is_sensitive (entry));
  g_assert_nonnull (gtk_widget_get_tooltip_text (entry));
  g_assert_nonnull (strstr (gtk_widget_get_tooltip_text (entry), reason));
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, gtk_widget_get_tooltip_text (entry));
}

static void
test_what_cannot_be_set_says_why (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d2");
  g_assert_cmpstr (get_said (&fixture, 0), ==, "100.0" NO_BREAK "%");
  assert_reason (&fixture, 0, "only flour");
  g_assert_true (gtk_widget_is_sensitive (get_percent (&fixture, 1)));

  write_amount (&fixture, 0, "a bowl");
  assert_reason (&fixture, 1, "no flour that can be weighed");
  tr_document_undo (fixture.document);
  g_assert_true (gtk_widget_is_sensitive (get_percent (&fixture, 1)));

  /* A line that is none yet. */
  GtkWidget *list = ui_find_type (GTK_WIDGET (fixture.page), TR_TYPE_LINE_LIST);
  tr_line_list_add (TR_LINE_LIST (list), TR_STAGE_DOUGH, NULL);
  GtkWidget *pending = ui_find (page_get_around (&fixture, TR_TYPE_LINE_ROW), GTK_TYPE_ENTRY, "a line: Percent of flour");
  g_assert_false (gtk_widget_is_sensitive (pending));
  g_assert_nonnull (strstr (gtk_widget_get_tooltip_text (pending), "which ingredient"));
  page_tear_down (&fixture);
}

static void
test_flours_share_what_is_there (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  page_type (&fixture, "/lines/0/percent", "20");                /* by way of 2 % */
  page_assert_value (&fixture, "/lines/0/amount", "\"126 g\"");  /* of 630 */
  page_assert_value (&fixture, "/lines/2/amount", "\"474 g\"");
  g_assert_true (page_press (&fixture, GDK_KEY_Escape));
  page_assert_value (&fixture, "/lines/0/amount", "\"150 g\"");
  page_assert_value (&fixture, "/lines/2/amount", "\"450 g\"");
  g_assert_null (tr_document_get_undo_label (fixture.document));
  page_tear_down (&fixture);
}

static void
test_roll_in_and_finish_are_of_flour_too (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  page_type (&fixture, "/lines/5/percent", "50");
  page_assert_value (&fixture, "/lines/5/amount", "\"315 g\"");
  page_type (&fixture, "/lines/6/percent", "10");
  page_assert_value (&fixture, "/lines/6/amount", "\"63 g\"");
  page_tear_down (&fixture);
}

/* The widest figure that is usual is seen whole. */
static void
test_a_hundred_fits (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d2");
  GtkWidget *entry = get_percent (&fixture, 0);
  GtkWidget *text = GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (entry)));
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (text, gtk_editable_get_text (GTK_EDITABLE (entry)));
  int width;

  pango_layout_set_attributes (layout, gtk_entry_get_attributes (GTK_ENTRY (entry)));
  pango_layout_get_pixel_size (layout, &width, NULL);
  g_assert_cmpint (width, >, 0);
  g_assert_cmpint (width, <=, gtk_widget_get_width (text));
  page_tear_down (&fixture);
}

/* The reader and the keyboard **********************************************/

static void
test_comma_of_the_reader (void)
{
  PageFixture fixture;
  TrReader reader;

  page_set_up (&fixture, tr_formula_page_new, "d2");
  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  g_strlcpy (reader.decimal, ",", sizeof reader.decimal);
  tr_page_set_reader (fixture.page, &reader);
  write_amount (&fixture, 1, "275 g");
  g_assert_cmpstr (get_said (&fixture, 1), ==, "55,0" NO_BREAK "%");
  page_type (&fixture, "/lines/1/percent", "62,5");
  page_assert_value (&fixture, "/lines/1/amount", "\"312.5 g\"");
  page_leave (&fixture);
  g_assert_cmpstr (get_said (&fixture, 1), ==, "62,5" NO_BREAK "%");
  page_tear_down (&fixture);
}

static guint
get_focused_item (PageFixture *fixture)
{
  return tr_line_row_get_item (TR_LINE_ROW (page_get_around (fixture, TR_TYPE_LINE_ROW)));
}

static gboolean
has_focus (PageFixture *fixture,
           guint        index)
{
  GtkWidget *text = page_get_focus (fixture);
  GtkWidget *entry = get_percent (fixture, index);               /* takes the focus itself */

  gtk_widget_grab_focus (text);

  return gtk_widget_get_parent (text) == entry;
}

/* Every key by the display's server: down the column, and out of it. */
static void
test_typed_down_the_column (void)
{
  PageFixture fixture;

  if (!hand_is_there ())
    {
      g_test_skip ("no xdotool");
      return;
    }
  page_set_up (&fixture, tr_formula_page_new, "d1");
  hand_focus (fixture.window);
  g_assert_true (tr_page_go_to (fixture.page, "/lines/2/amount"));
  hand_key ("Tab");
  g_assert_true (has_focus (&fixture, 2));
  hand_do ("key", "7", "0", "Return", NULL);
  page_assert_value (&fixture, "/lines/2/amount", "\"441 g\"");  /* of 630 */
  page_assert_value (&fixture, "/lines/0/amount", "\"159 g\"");
  g_assert_true (has_focus (&fixture, 3));
  hand_do ("key", "2", "Up", NULL);                              /* arrows step as in every number */
  page_assert_value (&fixture, "/lines/3/amount", "\"18.9 g\"");
  hand_key ("Escape");
  page_assert_value (&fixture, "/lines/3/amount", "\"12 g\"");
  hand_key ("shift+Tab");
  g_assert_cmpuint (get_focused_item (&fixture), ==, 3);
  g_assert_false (has_focus (&fixture, 3));
  page_tear_down (&fixture);
}

/* Return passes over what cannot be set: the amount is there. */
static void
test_return_finds_a_field (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d2");
  GtkWidget *row = (get_percent (&fixture, 0), page_get_around (&fixture, TR_TYPE_LINE_ROW));

  g_assert_true (tr_line_row_focus (TR_LINE_ROW (row), "percent"));
  g_assert_false (has_focus (&fixture, 0));
  g_assert_cmpuint (get_focused_item (&fixture), ==, 0);
  g_signal_emit_by_name (get_percent (&fixture, 1), "activate");
  g_assert_true (tr_line_is_pending (get_focused_item (&fixture)));
  page_tear_down (&fixture);
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  g_test_add_func ("/percent/amount-follows-in-its-unit", test_amount_follows_in_its_unit);
  g_test_add_func ("/percent/each-follows-the-other-at-once", test_each_follows_the_other_at_once);
  g_test_add_func ("/percent/typing-is-one-step", test_typing_is_one_step);
  g_test_add_func ("/percent/escape-puts-back-what-was-written", test_escape_puts_back_what_was_written);
  g_test_add_func ("/percent/the-same-percent-is-no-change", test_the_same_percent_is_no_change);
  g_test_add_func ("/percent/bad-text-says-why-and-loses-nothing", test_bad_text_says_why_and_loses_nothing);
  g_test_add_func ("/percent/bad-text-leaves-the-amounts-error", test_bad_text_leaves_the_amounts_error);
  g_test_add_func ("/percent/what-cannot-be-set-says-why", test_what_cannot_be_set_says_why);
  g_test_add_func ("/percent/flours-share-what-is-there", test_flours_share_what_is_there);
  g_test_add_func ("/percent/roll-in-and-finish-are-of-flour-too", test_roll_in_and_finish_are_of_flour_too);
  g_test_add_func ("/percent/a-hundred-fits", test_a_hundred_fits);
  g_test_add_func ("/percent/comma-of-the-reader", test_comma_of_the_reader);
  g_test_add_func ("/percent/typed-down-the-column", test_typed_down_the_column);
  g_test_add_func ("/percent/return-finds-a-field", test_return_finds_a_field);

  return ui_run ();
}
