/* test-fields.c: typing counts at once, is one step, and is never lost
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Typing goes through the entries, as a hand's would; what came of it is read
 * from the document's own text.
 */

#include "config.h"

#include "page-fixture.h"
#include "window/field.h"

static void
test_typing_is_live (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_bench_page_new, "d1");
  page_type (&fixture, "/bench/worktop_mm/0", "1");
  page_assert_value (&fixture, "/bench/worktop_mm/0", "1");
  ui_type (page_get_focus (&fixture), "120");
  page_assert_value (&fixture, "/bench/worktop_mm/0", "120");
  g_assert_cmpstr (tr_document_get_undo_label (fixture.document), ==, "change the worktop");
  tr_document_undo (fixture.document);
  page_assert_value (&fixture, "/bench/worktop_mm/0", "900");
  page_tear_down (&fixture);
}

static void
test_unreadable_number_stays_and_is_said (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_sheet_page_new, "d1");
  GtkWidget *text = page_type (&fixture, "/cut/trim_mm", "9 thumbs");
  GtkWidget *field = page_get_around (&fixture, TR_TYPE_FIELD);

  page_leave (&fixture);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "9 thumbs");
  g_assert_nonnull (tr_field_get_error (TR_FIELD (field)));
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (tr_field_get_control (TR_FIELD (field))),
                                    GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE);
  page_assert_value (&fixture, "/cut/trim_mm", "9");             /* the last that could be read */

  /* Another edit does not wipe it away; an undo of the number does. */
  page_type (&fixture, "/cut/shrink_percent", "5");
  page_leave (&fixture);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "9 thumbs");
  tr_document_undo (fixture.document);
  tr_document_undo (fixture.document);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "8");
  g_assert_null (tr_field_get_error (TR_FIELD (field)));
  page_tear_down (&fixture);
}

static void
test_refused_value_is_said_at_the_field (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_turns_page_new, "d1");
  page_type (&fixture, "/turns/0/trim_mm", "-5");
  GtkWidget *field = page_get_around (&fixture, TR_TYPE_FIELD);

  page_leave (&fixture);
  g_assert_nonnull (tr_field_get_error (TR_FIELD (field)));
  g_assert_cmpfloat (tr_dough_get_turn (tr_page_get_dough (fixture.page), 0)->trim_mm, ==, 0);
  page_tear_down (&fixture);
}

/* The document's refusals name a pointer; the reader stands at the field. */
static void
test_refusal_of_the_document_needs_no_pointer (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_sheet_page_new, "d1");
  page_type (&fixture, "/cut/rows", "5000");
  g_assert_cmpstr (tr_field_get_error (TR_FIELD (page_get_around (&fixture, TR_TYPE_FIELD))), ==,
                   "Expected a whole number from 1 to 1000 or nothing, found 5000.");
  /* What the document did not take is not in its history. */
  GtkWidget *text = page_get_focus (&fixture);

  g_assert_true (tr_fields_take_back (fixture.window, TRUE));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "5000");
  g_assert_true (tr_fields_take_back (fixture.window, FALSE));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "500");
  g_assert_false (tr_fields_take_back (fixture.window, TRUE));
  page_tear_down (&fixture);
}

static void
test_empty_is_not_written_where_it_may_be (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_turns_page_new, "d1");
  page_type (&fixture, "/lock_in/fat_thickness_mm", "7");
  page_leave (&fixture);
  page_type (&fixture, "/lock_in/fat_thickness_mm", "");
  GtkWidget *field = page_get_around (&fixture, TR_TYPE_FIELD);

  page_leave (&fixture);
  g_assert_null (tr_field_get_error (TR_FIELD (field)));
  g_assert_true (isnan (tr_page_get_dough (fixture.page)->lock_in->fat_thickness_mm));
  page_tear_down (&fixture);
}

static void
test_arrows_step_to_round_numbers (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_turns_page_new, "d1");
  page_type (&fixture, "/turns/0/thickness_mm", "8.2");
  g_assert_true (page_press (&fixture, GDK_KEY_Up));
  page_assert_value (&fixture, "/turns/0/thickness_mm", "8.5");
  g_assert_true (page_press (&fixture, GDK_KEY_Down));
  g_assert_true (page_press (&fixture, GDK_KEY_Down));
  page_assert_value (&fixture, "/turns/0/thickness_mm", "7.5");
  page_tear_down (&fixture);
}

static void
test_escape_puts_back (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_turns_page_new, "d1");
  GtkWidget *text = page_type (&fixture, "/lock_in/rim_mm", "25");

  page_assert_value (&fixture, "/lock_in/rim_mm", "25");
  g_assert_true (page_press (&fixture, GDK_KEY_Escape));
  page_assert_value (&fixture, "/lock_in/rim_mm", "10");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "10");
  g_assert_false (page_press (&fixture, GDK_KEY_Escape));        /* nothing left to put back */
  page_tear_down (&fixture);
}

/* Any edit from somewhere else. */
static void
rename_dough (PageFixture *fixture,
              const char  *name)
{
  TrTrial *draft = tr_document_draft (fixture->document);

  tr_set_text (&tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (fixture->page))->name, name);
  g_assert_true (tr_page_commit (fixture->page, draft, "rename", NULL, "/name"));
}

static void
test_focus_and_caret_survive_refresh_and_undo (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  GtkWidget *text = page_type (&fixture, "/lines/2/amount", "475 grams");

  gtk_editable_set_position (GTK_EDITABLE (text), 2);
  rename_dough (&fixture, "Renamed while typing");
  g_assert_true (page_get_focus (&fixture) == text);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "475 grams");
  g_assert_cmpint (gtk_editable_get_position (GTK_EDITABLE (text)), ==, 2);

  tr_document_undo (fixture.document);                           /* the name */
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "475 grams");
  tr_document_undo (fixture.document);                           /* the amount */
  g_assert_true (page_get_focus (&fixture) == text);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "450 g");
  g_assert_cmpint (gtk_editable_get_position (GTK_EDITABLE (text)), ==, 2);
  page_tear_down (&fixture);
}

static void
test_reader_in_inches_sees_and_writes_inches (void)
{
  PageFixture fixture;
  TrReader reader;

  page_set_up (&fixture, tr_sheet_page_new, "d1");
  tr_reader_init_plain (&reader, TR_UNITS_US);
  tr_page_set_reader (fixture.page, &reader);
  GtkWidget *text = page_type (&fixture, "/cut/base_mm", "4");

  page_leave (&fixture);
  page_assert_value (&fixture, "/cut/base_mm", "101.6");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "4");
  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  tr_page_set_reader (fixture.page, &reader);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "101.6");
  page_tear_down (&fixture);
}

static const char *
get_placeholder (GtkWidget *text)
{
  return gtk_entry_get_placeholder_text (GTK_ENTRY (gtk_widget_get_ancestor (text, GTK_TYPE_ENTRY)));
}

/* What counts where nothing is written is a length too. */
static void
test_what_stands_in_an_empty_field_is_in_the_readers_unit (void)
{
  PageFixture fixture;
  TrReader reader;

  page_set_up (&fixture, tr_turns_page_new, "d1");
  GtkWidget *text = page_type (&fixture, "/lock_in/rest/thickness_mm", "");

  g_assert_cmpstr (get_placeholder (text), ==, "30");
  tr_reader_init_plain (&reader, TR_UNITS_US);
  tr_page_set_reader (fixture.page, &reader);

  g_autofree char *inches = tr_words_write (&reader, TR_QUANTITY_LENGTH_MM, TR_CHILL_THICKNESS_MM);

  g_assert_cmpstr (get_placeholder (text), ==, inches);
  g_assert_cmpstr (inches, !=, "30");
  page_tear_down (&fixture);
}

static void
test_friction_is_in_the_readers_unit (void)
{
  PageFixture fixture;
  TrReader reader;

  page_set_up (&fixture, tr_method_page_new, "d1");
  tr_reader_init_plain (&reader, TR_UNITS_US);
  tr_page_set_reader (fixture.page, &reader);
  page_type (&fixture, "/method/friction_c", "18");
  page_leave (&fixture);
  page_assert_value (&fixture, "/method/friction_c", "10");        /* a difference: no 32 is taken off */
  page_tear_down (&fixture);
}

static void
test_unreadable_typing_can_be_taken_back (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_sheet_page_new, "d1");
  GtkWidget *text = page_type (&fixture, "/cut/trim_mm", "thumbs");
  TrField *field = TR_FIELD (page_get_around (&fixture, TR_TYPE_FIELD));

  g_assert_true (tr_field_take_back (field, TRUE));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "thumbs");
  g_assert_true (tr_field_take_back (field, FALSE));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "8");
  g_assert_null (tr_field_get_error (field));
  /* What can be read is the document's to undo. */
  ui_type (text, "9");
  g_assert_false (tr_field_take_back (field, TRUE));
  page_tear_down (&fixture);
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  g_test_add_func ("/fields/typing-is-live", test_typing_is_live);
  g_test_add_func ("/fields/unreadable-number-stays-and-is-said", test_unreadable_number_stays_and_is_said);
  g_test_add_func ("/fields/refusal-of-the-document-needs-no-pointer", test_refusal_of_the_document_needs_no_pointer);
  g_test_add_func ("/fields/refused-value-is-said-at-the-field", test_refused_value_is_said_at_the_field);
  g_test_add_func ("/fields/empty-is-not-written-where-it-may-be", test_empty_is_not_written_where_it_may_be);
  g_test_add_func ("/fields/arrows-step-to-round-numbers", test_arrows_step_to_round_numbers);
  g_test_add_func ("/fields/escape-puts-back", test_escape_puts_back);
  g_test_add_func ("/fields/focus-and-caret-survive-refresh-and-undo", test_focus_and_caret_survive_refresh_and_undo);
  g_test_add_func ("/fields/reader-in-inches-sees-and-writes-inches", test_reader_in_inches_sees_and_writes_inches);
  g_test_add_func ("/fields/what-stands-in-an-empty-field-is-in-the-readers-unit", test_what_stands_in_an_empty_field_is_in_the_readers_unit);

  g_test_add_func ("/fields/friction-is-in-the-readers-unit", test_friction_is_in_the_readers_unit);
  g_test_add_func ("/fields/unreadable-typing-can-be-taken-back", test_unreadable_typing_can_be_taken_back);

  return ui_run ();
}
