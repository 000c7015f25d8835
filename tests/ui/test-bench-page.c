/* test-bench-page.c: the kitchen's page, its picture and its fields
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <math.h>
#include <string.h>

#include "page-fixture.h"
#include "window/choice-field.h"
#include "window/entry-field.h"
#include "window/picture-view.h"

static gboolean
says (GtkWidget  *page,
      const char *words)
{
  TrPictureView *view = TR_PICTURE_VIEW (ui_find_type (page, TR_TYPE_PICTURE_VIEW));
  g_autoptr (GString) plain = g_string_new (tr_picture_get_description (tr_picture_view_get_picture (view)));

  g_string_replace (plain, "\u00a0", " ", 0);
  g_string_replace (plain, "\u202f", " ", 0);

  return strstr (plain->str, words) != NULL;
}

static void
test_bench_is_drawn_as_typed (void)
{
  PageFixture fixture = { 0 };

  page_set_up (&fixture, tr_bench_page_new, "d1");
  page_type (&fixture, "/bench/tray_mm/0", "530");
  g_assert_true (says (GTK_WIDGET (fixture.page), "Tray, 530 × "));
  page_type (&fixture, "/bench/roll_thickness_max_mm", "28");
  g_assert_true (says (GTK_WIDGET (fixture.page), "to 28 mm."));
  /* What cannot be read changes nothing. */
  page_type (&fixture, "/bench/tray_mm/0", "53x");
  g_assert_false (says (GTK_WIDGET (fixture.page), "Tray, size not known"));
  page_tear_down (&fixture);
}

static void
test_bench_leads_to_fields (void)
{
  PageFixture fixture = { 0 };
  TrHit hit = { TR_PART_OF_TRAY, 0 };

  page_set_up (&fixture, tr_bench_page_new, "d1");
  g_signal_emit_by_name (ui_find_type (GTK_WIDGET (fixture.page), TR_TYPE_PICTURE_VIEW), "pressed", &hit, 1);
  g_assert_nonnull (page_get_around (&fixture, TR_TYPE_ENTRY_FIELD));
  ui_type (page_get_focus (&fixture), "640");
  page_assert_value (&fixture, "/bench/tray_mm/0", "640");
  page_tear_down (&fixture);
}

static void
test_bench_focus (void)
{
  PageFixture fixture = { 0 };

  page_set_up (&fixture, tr_bench_page_new, "d1");
  gtk_window_set_focus (fixture.window, NULL);
  g_assert_true (gtk_widget_child_focus (GTK_WIDGET (fixture.page), GTK_DIR_TAB_FORWARD));
  g_assert_nonnull (page_get_around (&fixture, TR_TYPE_ENTRY_FIELD));
  g_signal_emit_by_name (fixture.window, "move-focus", GTK_DIR_TAB_BACKWARD);
  g_assert_true (TR_IS_PICTURE_VIEW (page_get_focus (&fixture)));
  page_tear_down (&fixture);
}

static void
test_bench_heat (void)
{
  static const struct { const char *pointer, *typed, *expected; } cases[] = {
    { "/bench/h_w_m2k/fridge", "15", "15" },
    { "/bench/h_w_m2k/freezer", "25", "25" },
    { "/bench/h_w_m2k/room", "9", "9" },
    { "/bench/h_w_m2k/bench", "30", "30" },
  };
  PageFixture fixture = { 0 };

  page_set_up (&fixture, tr_bench_page_new, "d1");
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      page_type (&fixture, cases[i].pointer, cases[i].typed);
      page_assert_value (&fixture, cases[i].pointer, cases[i].expected);
    }
  g_assert_true (tr_page_go_to (fixture.page, "/bench/h_w_m2k/fridge/by"));
  tr_choice_field_choose (TR_CHOICE_FIELD (page_get_around (&fixture, TR_TYPE_CHOICE_FIELD)), 2);
  page_assert_value (&fixture, "/bench/h_w_m2k/fridge", "25");

  /* There is nothing to undo where nothing was typed. */
  g_autofree char *before = g_strdup (tr_document_get_undo_label (fixture.document));
  const TrTrial *trial = tr_document_get_trial (fixture.document);

  tr_choice_field_choose (TR_CHOICE_FIELD (page_get_around (&fixture, TR_TYPE_CHOICE_FIELD)), 3);
  g_assert_true (tr_document_get_trial (fixture.document) == trial);
  g_assert_cmpstr (tr_document_get_undo_label (fixture.document), ==, before);
  page_tear_down (&fixture);
}

/* Fields of all sections start at the same places. */
static void
collect_starts (GtkWidget  *widget,
                GtkWidget  *page,
                GHashTable *starts)
{
  double x, y;

  if (TR_IS_FIELD (widget) && gtk_widget_translate_coordinates (widget, page, 0, 0, &x, &y))
    g_hash_table_add (starts, GINT_TO_POINTER ((int) lround (x)));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    collect_starts (child, page, starts);
}

static void
test_bench_fields_in_line (void)
{
  static const int widths[] = { 420, 700, 1100 };

  for (guint i = 0; i < G_N_ELEMENTS (widths); i++)
    {
      PageFixture fixture = { 0 };
      g_autoptr (GHashTable) starts = g_hash_table_new (NULL, NULL);

      page_set_up (&fixture, tr_bench_page_new, "d1");
      gtk_window_set_default_size (fixture.window, widths[i], 800);
      ui_frames (GTK_WIDGET (fixture.window), 3);
      collect_starts (GTK_WIDGET (fixture.page), GTK_WIDGET (fixture.page), starts);
      g_assert_cmpuint (g_hash_table_size (starts), <=, (guint) widths[i] / 240);
      page_tear_down (&fixture);
    }
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  g_test_add_func ("/bench-page/is-drawn-as-it-is-typed", test_bench_is_drawn_as_typed);
  g_test_add_func ("/bench-page/what-is-drawn-leads-to-its-field", test_bench_leads_to_fields);
  g_test_add_func ("/bench-page/keys-come-to-the-first-field-and-back-to-the-picture", test_bench_focus);
  g_test_add_func ("/bench-page/how-places-cool-can-be-typed-and-chosen", test_bench_heat);
  g_test_add_func ("/bench-page/fields-stand-in-line", test_bench_fields_in_line);

  return ui_run ();
}
