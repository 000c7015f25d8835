/* test-pages.c: every field shows one value of the trial and writes it back
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Typing goes through the entries, as a hand's would; what came of it is read
 * from the document's own text.
 */

#include "config.h"

#include "page-fixture.h"
#include "calc/cut.h"
#include "window/alternatives.h"
#include "window/sheet-view.h"
#include "window/choice-field.h"
#include "window/entry-field.h"
#include "window/ingredient-entry.h"
#include "window/line-list.h"
#include "window/notes-field.h"
#include "window/picture-view.h"
#include "window/stage-header.h"
#include "window/turn-editor.h"

typedef struct { const char *name; PageMaker make; gboolean has_no_lists; } PageRow;

static const PageRow page_rows[] = {
  { "formula", tr_formula_page_new },
  { "turns", tr_turns_page_new },
  { "sheet", tr_sheet_page_new },
  { "method", tr_method_page_new },
  { "log", tr_log_page_new, TRUE },
  { "bench", tr_bench_page_new },
};

/* Every field writes the member it shows ***********************************/

typedef struct { PageMaker make; const char *dough, *pointer, *typed, *expected; } FieldRow;

static const FieldRow field_rows[] = {
  { tr_formula_page_new, "d1", "/title", "Harbour Sunday", "\"Harbour Sunday\"" },
  { tr_formula_page_new, "d1", "/name", "Thin ones", "\"Thin ones\"" },
  { tr_formula_page_new, "d1", "/batch/value", "36", "36" },
  { tr_formula_page_new, "d2", "/batch/value", "1.2 kg", "1200" },
  { tr_formula_page_new, "d1", "/pieces_written", "12", "12" },
  { tr_formula_page_new, "d1", "/handling_loss_percent", "3.5", "3.5" },
  { tr_formula_page_new, "d1", "/bake_loss_percent", "11", "11" },
  { tr_formula_page_new, "d1", "/dough_density_g_ml", "1.08", "1.08" },
  { tr_formula_page_new, "d1", "/lines/2/amount", "1 lb", "\"1 lb\"" },
  { tr_formula_page_new, "d1", "/lines/3/amount", "9", "\"9 g\"" },
  { tr_formula_page_new, "d1", "/lines/4/hydration_percent", "80", "80" },
  { tr_turns_page_new, "d1", "/lock_in/fat_thickness_mm", "7.5", "7.5" },
  { tr_turns_page_new, "d1", "/lock_in/fat_width_mm", "20 cm", "200" },
  { tr_turns_page_new, "d1", "/lock_in/rim_mm", "12", "12" },
  { tr_turns_page_new, "d1", "/lock_in/blocks", "2", "2" },
  { tr_turns_page_new, "d1", "/lock_in/rest/min", "60", "60" },
  { tr_turns_page_new, "d1", "/lock_in/rest/max", "900", "900" },
  { tr_turns_page_new, "d1", "/lock_in/rest/thickness_mm", "25", "25" },
  { tr_turns_page_new, "d1", "/turns/0/thickness_mm", "9", "9" },
  { tr_turns_page_new, "d1", "/turns/0/trim_mm", "5", "5" },
  { tr_turns_page_new, "d1", "/turns/0/minutes", "14", "14" },
  { tr_turns_page_new, "d1", "/turns/0/rest/min", "50", "50" },
  { tr_turns_page_new, "d1", "/turns/0/rest/max", "1000", "1000" },
  { tr_turns_page_new, "d1", "/turns/1/length_mm", "640", "640" },
  { tr_turns_page_new, "d1", "/turns/2/width_mm", "210", "210" },
  { tr_turns_page_new, "d1", "/turns/2/thickness_mm", "6.5", "6.5" },
  { tr_sheet_page_new, "d1", "/cut/base_mm", "95", "95" },
  { tr_sheet_page_new, "d1", "/cut/height_mm", "10 in", "254" },
  { tr_sheet_page_new, "d1", "/cut/thickness_mm", "3.5", "3.5" },
  { tr_sheet_page_new, "d1", "/cut/trim_mm", "10", "10" },
  { tr_sheet_page_new, "d1", "/cut/shrink_percent", "6", "6" },
  { tr_sheet_page_new, "d1", "/cut/rows", "2", "2" },
  { tr_sheet_page_new, "d1", "/cut/stretch_percent", "15", "15" },
  { tr_sheet_page_new, "d1", "/cut/printed_sheet_mm/0", "620", "620" },
  { tr_sheet_page_new, "d1", "/cut/printed_sheet_mm/1", "280", "280" },
  { tr_sheet_page_new, "d2", "/cut/width_mm", "75", "75" },
  { tr_sheet_page_new, "d2", "/cut/length_mm", "140", "140" },
  { tr_sheet_page_new, "d2", "/cut/piece_mass_g", "65", "65" },
  { tr_sheet_page_new, "d3", "/cut/side_mm", "110", "110" },
  { tr_sheet_page_new, "d4", "/cut/diameter_mm", "85", "85" },
  { tr_sheet_page_new, "d4", "/cut/gap_mm", "3", "3" },
  { tr_sheet_page_new, "d5", "/cut/slice_mm", "25", "25" },
  { tr_sheet_page_new, "d5", "/cut/roll_length_mm", "450", "450" },
  { tr_method_page_new, "d1", "/method/dough_c", "23", "23" },
  { tr_method_page_new, "d1", "/method/flour_c", "19", "19" },
  { tr_method_page_new, "d1", "/method/preferment_c", "18", "18" },
  { tr_method_page_new, "d1", "/method/liquids_c", "6", "6" },
  { tr_method_page_new, "d1", "/method/tap_c", "13", "13" },
  { tr_method_page_new, "d1", "/method/friction_c", "11", "11" },
  { tr_method_page_new, "d1", "/method/friction_n", "4", "4" },
  { tr_method_page_new, "d1", "/method/steps/0/minutes", "9", "9" },
  { tr_method_page_new, "d1", "/method/steps/1/minutes", "2 h", "120" },
  { tr_method_page_new, "d1", "/method/steps/1/max", "200", "200" },
  { tr_method_page_new, "d1", "/method/steps/1/at_c", "27", "27" },
  { tr_method_page_new, "d1", "/method/steps/1/rh_percent", "80", "80" },
  { tr_method_page_new, "d1", "/method/steps/2/at_c", "190", "190" },
  { tr_log_page_new, "d1", "/log/steps/0/minutes", "15", "15" },
  { tr_log_page_new, "d1", "/log/steps/0/at_c", "24.5", "24.5" },
  { tr_log_page_new, "d1", "/log/rests/0/minutes", "1 h", "60" },
  { tr_log_page_new, "d1", "/log/rests/0/core_c", "7.5", "7.5" },
  { tr_log_page_new, "d1", "/log/sizes/0/length_mm", "60 cm", "600" },
  { tr_log_page_new, "d1", "/log/sizes/0/width_mm", "300", "300" },
  { tr_log_page_new, "d1", "/log/sizes/0/thickness_mm", "4.5", "4.5" },
  { tr_log_page_new, "d1", "/log/sizes/0/relaxed_mm", "560", "560" },
  { tr_log_page_new, "d1", "/log/cuts/0/length_mm", "100", "100" },
  { tr_log_page_new, "d1", "/log/cuts/0/width_mm", "100", "100" },
  { tr_log_page_new, "d1", "/log/cuts/0/thickness_mm", "4.2", "4.2" },
  { tr_log_page_new, "d1", "/log/cuts/0/mass_g", "46", "46" },
  { tr_log_page_new, "d1", "/log/pieces/0/count", "6", "6" },
  { tr_log_page_new, "d1", "/log/pieces/0/raw_g", "420", "420" },
  { tr_log_page_new, "d1", "/log/pieces/0/baked_g", "0.37 kg", "370" },
  { tr_log_page_new, "d1", "/log/pieces/0/raw_height_mm", "35", "35" },
  { tr_log_page_new, "d1", "/log/pieces/0/baked_height_mm", "62", "62" },
  { tr_bench_page_new, "d1", "/bench/worktop_mm/0", "1200", "1200" },
  { tr_bench_page_new, "d1", "/bench/worktop_mm/1", "700", "700" },
  { tr_bench_page_new, "d1", "/bench/roll_width_max_mm", "500", "500" },
  { tr_bench_page_new, "d1", "/bench/roll_thickness_min_mm", "2", "2" },
  { tr_bench_page_new, "d1", "/bench/roll_thickness_max_mm", "35", "35" },
  { tr_bench_page_new, "d1", "/bench/pass_reduction_percent", "25", "25" },
  { tr_bench_page_new, "d1", "/bench/room_c", "24", "24" },
  { tr_bench_page_new, "d1", "/bench/fridge_c", "3", "3" },
  { tr_bench_page_new, "d1", "/bench/freezer_c", "-20", "-20" },
  { tr_bench_page_new, "d1", "/bench/tray_mm/0", "530", "530" },
  { tr_bench_page_new, "d1", "/bench/tray_mm/1", "325", "325" },
  { tr_bench_page_new, "d1", "/bench/piece_gap_mm", "40", "40" },
  { tr_bench_page_new, "d1", "/bench/trays_in_oven", "3", "3" },
  { tr_bench_page_new, "d1", "/bench/preheat_minutes", "25", "25" },
  { tr_bench_page_new, "d1", "/bench/hands", "2", "2" },
  { tr_bench_page_new, "d1", "/bench/mixers", "2", "2" },
  { tr_bench_page_new, "d1", "/bench/mixer_max_g", "5 kg", "5000" },
  { tr_bench_page_new, "d1", "/bench/turn_minutes", "12", "12" },
  { tr_bench_page_new, "d1", "/bench/scale_step_g", "5", "5" },
  { tr_bench_page_new, "d1", "/bench/fine_scale_step_g", "0.5", "0.5" },
  { tr_bench_page_new, "d1", "/bench/currency", "SEK", "\"SEK\"" },
};

static void
check_field (PageFixture    *fixture,
             const FieldRow *row)
{
  g_autofree char *before = ui_dup_trial_text (fixture->document);

  g_test_message ("%s %s", row->dough, row->pointer);
  page_type (fixture, row->pointer, row->typed);
  page_assert_value (fixture, row->pointer, row->expected);    /* while it is typed in */
  page_leave (fixture);
  page_assert_value (fixture, row->pointer, row->expected);

  /* All of it is one step with a label. */
  g_assert_nonnull (tr_document_get_undo_label (fixture->document));
  tr_document_undo (fixture->document);
  g_autofree char *after = ui_dup_trial_text (fixture->document);
  g_assert_cmpstr (after, ==, before);
  g_assert_null (tr_document_get_undo_label (fixture->document));
}

/* One window for all fields of a page: each leaves the document as it was. */
static void
test_every_field_writes_what_it_shows (gconstpointer data)
{
  PageMaker make = ((const PageRow *) data)->make;
  PageFixture fixture;

  page_set_up (&fixture, make, "d1");
  for (guint i = 0; i < G_N_ELEMENTS (field_rows); i++)
    if (field_rows[i].make == make)
      {
        tr_page_set_dough (fixture.page, field_rows[i].dough);
        check_field (&fixture, &field_rows[i]);
      }
  page_tear_down (&fixture);
}

/* Choices ******************************************************************/

typedef struct { PageMaker make; const char *dough, *pointer; guint value; const char *member, *expected; } ChoiceRow;

static const ChoiceRow choice_rows[] = {
  { tr_formula_page_new, "d1", "/kind", TR_KIND_PUFF, "/kind", "\"puff\"" },
  { tr_formula_page_new, "d2", "/batch/by", TR_BATCH_DOUGH_G, "/batch/by", "\"dough_g\"" },
  { tr_formula_page_new, "d2", "/batch/by", TR_BATCH_DOUGH_G, "/batch/value", "1550" },      /* 1000 g flour + 55 % water */
  { tr_turns_page_new, "d1", "/lock_in/style", TR_STYLE_LETTER, "/lock_in/style", "\"letter\"" },
  { tr_turns_page_new, "d1", "/lock_in/style", TR_N_STYLES, "/lock_in", NULL },
  { tr_turns_page_new, "d1", "/lock_in/rest/place", TR_PLACE_FREEZER, "/lock_in/rest/place", "\"freezer\"" },
  { tr_turns_page_new, "d1", "/lock_in/rest/place", TR_N_PLACES, "/lock_in/rest", NULL },
  { tr_turns_page_new, "d1", "/lock_in/rest/on", TR_ON_RACK, "/lock_in/rest/on", "\"rack\"" },
  { tr_turns_page_new, "d1", "/turns/0/fold", 2, "/turns/0/fold", "4" },
  { tr_turns_page_new, "d1", "/turns/0/rest/place", TR_PLACE_ROOM, "/turns/0/rest/place", "\"room\"" },
  { tr_turns_page_new, "d1", "/turns/0/rest/on", TR_ON_RACK, "/turns/0/rest/on", "\"rack\"" },
  { tr_turns_page_new, "d1", "/turns/1/rest/place", TR_PLACE_FRIDGE, "/turns/1/rest/min", "45" },
  { tr_sheet_page_new, "d1", "/cut/shape", TR_SHAPE_SQUARE, "/cut/side_mm", "100" },
  { tr_sheet_page_new, "d1", "/cut/shape", TR_N_SHAPES, "/cut", NULL },
  { tr_sheet_page_new, "d1", "/cut/rolled_up", 0, "/cut/rolled_up", "false" },
  { tr_method_page_new, "d1", "/method/steps/1/place", TR_PLACE_ROOM, "/method/steps/1/place", "\"room\"" },
  { tr_bench_page_new, "d1", "/bench/roll_width_max_mm/by", 1, "/bench/roll_width_max_mm", "null" },
};

static void
check_choice (PageFixture     *fixture,
              const ChoiceRow *row)
{
  g_autofree char *before = ui_dup_trial_text (fixture->document);

  g_test_message ("%s %s %u", row->dough, row->pointer, row->value);
  g_assert_true (tr_page_go_to (fixture->page, row->pointer));
  tr_choice_field_choose (TR_CHOICE_FIELD (page_get_around (fixture, TR_TYPE_CHOICE_FIELD)), row->value);
  page_assert_value (fixture, row->member, row->expected);

  tr_document_undo (fixture->document);
  g_autofree char *after = ui_dup_trial_text (fixture->document);
  g_assert_cmpstr (after, ==, before);
}

static void
test_every_choice_writes_what_it_says (gconstpointer data)
{
  PageMaker make = ((const PageRow *) data)->make;
  PageFixture fixture;

  page_set_up (&fixture, make, "d1");
  for (guint i = 0; i < G_N_ELEMENTS (choice_rows); i++)
    if (choice_rows[i].make == make)
      {
        tr_page_set_dough (fixture.page, choice_rows[i].dough);
        check_choice (&fixture, &choice_rows[i]);
      }
  page_tear_down (&fixture);
}

static void
assert_entries_are_capitalised (GtkDropDown *drop_down)
{
  GListModel *entries = gtk_drop_down_get_model (drop_down);

  for (guint i = 0; i < g_list_model_get_n_items (entries); i++)
    {
      g_autoptr (GtkStringObject) entry = g_list_model_get_item (entries, i);
      const char *name = gtk_string_object_get_string (entry);

      if (g_unichar_islower (g_utf8_get_char (name)))
        g_error ("“%s” stands alone and starts small", name);
      g_assert_cmpstr (name, !=, "");
    }
}

static guint
check_drop_downs (GtkWidget *root)
{
  guint count = 0;

  if (GTK_IS_DROP_DOWN (root))
    {
      assert_entries_are_capitalised (GTK_DROP_DOWN (root));
      return 1;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    count += check_drop_downs (child);

  return count;
}

static void
test_entries_of_a_list_start_alike (gconstpointer data)
{
  PageFixture fixture;

  page_set_up (&fixture, ((const PageRow *) data)->make, "d1");
  g_assert_cmpint (check_drop_downs (GTK_WIDGET (fixture.page)) > 0, ==, !((const PageRow *) data)->has_no_lists);
  page_tear_down (&fixture);
}

static void
test_fields_follow_the_choice (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_turns_page_new, "d1");
  g_assert_true (tr_page_go_to (fixture.page, "/turns/0/by"));
  tr_choice_field_choose (TR_CHOICE_FIELD (page_get_around (&fixture, TR_TYPE_CHOICE_FIELD)), 1);

  /* Given by its length now: what the thickness made of it, to a millimetre. */
  const TrTurn *turn = tr_dough_get_turn (tr_page_get_dough (fixture.page), 0);

  g_assert_true (isnan (turn->thickness_mm));
  g_assert_cmpfloat (turn->length_mm, >, 100);
  g_assert_cmpfloat_with_epsilon (turn->length_mm, round (turn->length_mm), 1e-12);
  page_type (&fixture, "/turns/0/length_mm", "510");
  page_assert_value (&fixture, "/turns/0/length_mm", "510");
  page_tear_down (&fixture);
}

static void
test_method_step_comes_and_goes_with_its_values (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_method_page_new, "d1");
  /* Between mix and proof, where the work has it. */
  GtkWidget *bulk = ui_find (GTK_WIDGET (fixture.page), GTK_TYPE_ENTRY, "Bulk rise: Time");

  g_assert_nonnull (bulk);
  ui_type (bulk, "75");
  page_leave (&fixture);
  page_assert_value (&fixture, "/method/steps/1/id", "\"bulk\"");
  page_assert_value (&fixture, "/method/steps/1/minutes", "75");
  page_assert_value (&fixture, "/method/steps/2/id", "\"proof\"");

  ui_type (bulk, "");
  page_leave (&fixture);
  page_assert_value (&fixture, "/method/steps/1/id", "\"proof\"");
  page_tear_down (&fixture);
}

/* Turns and alternatives ***************************************************/

static guint
get_turn_shown (PageFixture *fixture)
{
  GtkWidget *editor = ui_find_type (GTK_WIDGET (fixture->page), TR_TYPE_TURN_EDITOR);

  g_assert_true (gtk_widget_get_mapped (editor));

  return tr_turn_editor_get_item (TR_TURN_EDITOR (editor));
}

static void
test_turns_are_added_moved_and_removed (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_turns_page_new, "d1");
  GtkWidget *page = GTK_WIDGET (fixture.page);
  GtkWidget *add = ui_find (page, GTK_TYPE_BUTTON, "Add a turn");

  g_assert_nonnull (add);
  g_signal_emit_by_name (add, "clicked");
  g_assert_cmpuint (tr_page_get_dough (fixture.page)->turns->len, ==, 4);
  g_assert_cmpuint (get_turn_shown (&fixture), ==, 3);
  page_assert_value (&fixture, "/turns/3/width_mm", "200");      /* like the one before it */
  page_assert_value (&fixture, "/turns/3/thickness_mm", "7");
  g_assert_cmpstr (tr_document_get_undo_label (fixture.document), ==, "add a turn");

  g_assert_true (gtk_widget_activate_action (page, "turn.earlier", NULL));
  g_assert_cmpuint (get_turn_shown (&fixture), ==, 2);
  g_assert_true (tr_page_go_to (fixture.page, "/turns/1"));
  g_assert_true (gtk_widget_activate_action (page, "turn.earlier", NULL));
  page_assert_value (&fixture, "/turns/0/length_mm", "600");
  page_assert_value (&fixture, "/turns/1/thickness_mm", "8");
  g_assert_cmpuint (get_turn_shown (&fixture), ==, 0);

  g_assert_true (gtk_widget_activate_action (page, "turn.remove", NULL));
  g_assert_cmpuint (tr_page_get_dough (fixture.page)->turns->len, ==, 3);
  for (int i = 0; i < 4; i++)
    tr_document_undo (fixture.document);
  g_assert_cmpuint (tr_page_get_dough (fixture.page)->turns->len, ==, 3);
  page_assert_value (&fixture, "/turns/0/thickness_mm", "8");
  page_tear_down (&fixture);
}

static void
test_alternative_sets_the_rows (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_sheet_page_new, "d1");
  GtkWidget *flow = ui_find (GTK_WIDGET (fixture.page), GTK_TYPE_FLOW_BOX, "Other ways to lay it out");
  TrAlternative alternatives[TR_MAX_ALTERNATIVES];

  g_assert_nonnull (flow);
  g_assert_cmpuint (tr_sheet_list_by_rows (tr_page_get_figures (fixture.page), alternatives), >, 1);

  g_signal_emit_by_name (flow, "child-activated", gtk_flow_box_get_child_at_index (GTK_FLOW_BOX (flow), 2));
  g_assert_cmpint (tr_page_get_dough (fixture.page)->cut->rows, ==, alternatives[1].rows);
  g_signal_emit_by_name (flow, "child-activated", gtk_flow_box_get_child_at_index (GTK_FLOW_BOX (flow), 0));
  g_assert_cmpint (tr_page_get_dough (fixture.page)->cut->rows, ==, 0);
  page_tear_down (&fixture);
}

/* Going to a field *********************************************************/

typedef struct { PageMaker make; const char *dough, *pointer; gboolean is_there; } GoToRow;

static const GoToRow go_to_rows[] = {
  { tr_formula_page_new, "d1", "/lines", TRUE },
  { tr_formula_page_new, "d1", "/lines/3", TRUE },
  { tr_formula_page_new, "d1", "/lines/3/amount", TRUE },
  { tr_formula_page_new, "d1", "/lines/3/ingredient", TRUE },
  { tr_formula_page_new, "d3", "/lines", TRUE },
  { tr_formula_page_new, "d1", "/lines/99/amount", FALSE },
  { tr_formula_page_new, "d1", "/batch", TRUE },
  { tr_formula_page_new, "d1", "/batch/value", TRUE },
  { tr_formula_page_new, "d1", "/notes", TRUE },
  { tr_formula_page_new, "d1", "", FALSE },
  { tr_formula_page_new, "d1", "/turns/0", FALSE },
  { tr_turns_page_new, "d1", "/turns", TRUE },
  { tr_turns_page_new, "d2", "/turns", TRUE },
  { tr_turns_page_new, "d1", "/turns/1", TRUE },
  { tr_turns_page_new, "d1", "/turns/1/thickness_mm", TRUE },    /* given by its length: the turn */
  { tr_turns_page_new, "d1", "/turns/1/rest", TRUE },
  { tr_turns_page_new, "d1", "/lock_in", TRUE },
  { tr_turns_page_new, "d2", "/lock_in/rim_mm", TRUE },          /* none: where it is chosen */
  { tr_turns_page_new, "d1", "/cut/trim_mm", FALSE },
  { tr_sheet_page_new, "d1", "/cut", TRUE },
  { tr_sheet_page_new, "d1", "/cut/side_mm", TRUE },             /* not of a triangle: its shape */
  { tr_sheet_page_new, "d1", "/cut/printed_sheet_mm", TRUE },
  { tr_method_page_new, "d1", "/method/steps/2", TRUE },
  { tr_method_page_new, "d1", "/method/dough_c", TRUE },
  { tr_log_page_new, "d1", "/log/steps", TRUE },                 /* where a cause leads */
  { tr_log_page_new, "d2", "/log/steps", TRUE },
  { tr_log_page_new, "d2", "/log/rests", FALSE },                /* it has none */
  { tr_log_page_new, "d1", "/log/notes", TRUE },
  { tr_log_page_new, "d1", "/log/mixes/0/dough_c", FALSE },
  { tr_bench_page_new, "d1", "/bench", TRUE },
  { tr_bench_page_new, "d1", "/bench/worktop_mm", TRUE },
  { tr_bench_page_new, "d1", "/bench/worktop_mm/1", TRUE },
  { tr_bench_page_new, "d1", "/lines/0", FALSE },
};

static void
check_go_to (PageFixture   *fixture,
             const GoToRow *row)
{
  g_test_message ("%s %s", row->dough, row->pointer);
  page_leave (fixture);
  tr_page_set_dough (fixture->page, row->dough);
  g_assert_cmpint (tr_page_go_to (fixture->page, row->pointer), ==, row->is_there);
  if (!row->is_there)
    {
      g_assert_null (page_get_focus (fixture));
      return;
    }
  g_assert_nonnull (page_get_focus (fixture));
  g_assert_true (gtk_widget_is_ancestor (page_get_focus (fixture), GTK_WIDGET (fixture->page)));
  g_assert_true (gtk_widget_get_mapped (page_get_focus (fixture)));
}

static void
test_go_to_focuses_the_field (gconstpointer data)
{
  PageMaker make = ((const PageRow *) data)->make;
  PageFixture fixture;

  page_set_up (&fixture, make, "d1");
  for (guint i = 0; i < G_N_ELEMENTS (go_to_rows); i++)
    if (go_to_rows[i].make == make)
      check_go_to (&fixture, &go_to_rows[i]);
  page_tear_down (&fixture);
}

/* Names ********************************************************************/

static void
assert_named (GtkWidget *widget)
{
  gboolean takes_typing = GTK_IS_ENTRY (widget) || GTK_IS_DROP_DOWN (widget) || GTK_IS_TEXT_VIEW (widget) ||
                          TR_IS_PICTURE_VIEW (widget);

  if (takes_typing && !gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL))
    g_error ("a %s has no accessible name", G_OBJECT_TYPE_NAME (widget));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    assert_named (child);
}

static void
test_everything_has_a_name (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (page_rows); i++)
    {
      PageFixture fixture;

      page_set_up (&fixture, page_rows[i].make, "d1");
      assert_named (GTK_WIDGET (fixture.page));
      page_tear_down (&fixture);
    }
}

static void
test_page_without_a_dough_is_empty (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (page_rows); i++)
    {
      PageFixture fixture;

      page_set_up (&fixture, page_rows[i].make, "d1");
      tr_page_set_dough (fixture.page, NULL);
      ui_frames (GTK_WIDGET (fixture.window), 1);
      g_assert_false (tr_page_go_to (fixture.page, "/lines/0/amount"));
      tr_page_set_dough (fixture.page, "d2");
      ui_frames (GTK_WIDGET (fixture.window), 1);
      page_tear_down (&fixture);
    }
}

/* Pictures *****************************************************************/

static void
test_picture_says_what_it_shows (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_turns_page_new, "d1");
  GtkWidget *view = ui_find (GTK_WIDGET (fixture.page), TR_TYPE_PICTURE_VIEW, "Layers");

  g_assert_nonnull (view);
  gtk_test_accessible_assert_role (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_ROLE_IMG);
  g_autofree char *before = g_strdup (tr_picture_get_description (tr_picture_view_get_picture (TR_PICTURE_VIEW (view))));

  g_assert_true (strlen (before) > 10);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, before);
  g_assert_nonnull (strstr (before, "36"));                      /* 3 × 4 × 3 fat layers */

  g_assert_true (tr_page_go_to (fixture.page, "/turns/0/fold"));
  tr_choice_field_choose (TR_CHOICE_FIELD (page_get_around (&fixture, TR_TYPE_CHOICE_FIELD)), 0);
  const char *after = tr_picture_get_description (tr_picture_view_get_picture (TR_PICTURE_VIEW (view)));

  g_assert_nonnull (strstr (after, "24"));                       /* 2 × 4 × 3 */
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, after);
  page_tear_down (&fixture);
}

static void
test_picture_is_made_for_its_size (void)
{
  PageFixture fixture;
  double width, height;

  page_set_up (&fixture, tr_sheet_page_new, "d1");
  GtkWidget *view = ui_find_type (GTK_WIDGET (fixture.page), TR_TYPE_PICTURE_VIEW);

  g_assert_nonnull (view);
  tr_picture_get_size (tr_picture_view_get_picture (TR_PICTURE_VIEW (view)), &width, &height);
  g_assert_cmpfloat_with_epsilon (width, gtk_widget_get_width (view), 0.5);
  g_assert_cmpfloat_with_epsilon (height, gtk_widget_get_height (view), 0.5);
  page_tear_down (&fixture);
}

/* Contracts ****************************************************************/

static const TrMember any_member = { .pointer = "/notes", .hold = TR_HOLD_TEXT, .label = "Notes", .undo = "change" };
static const TrChoice any_choice = { .pointer = "/kind", .label = "Kind", .undo = "change" };

static GtkWidget *
make_entry_field (void)
{
  return tr_entry_field_new (&any_member, TR_FIELD_BESIDE);
}

static GtkWidget *
make_notes_field (void)
{
  return tr_notes_field_new (&any_member);
}

static GtkWidget *
make_choice_field (void)
{
  return tr_choice_field_new (&any_choice, TR_FIELD_ABOVE);
}

static GtkWidget *
make_picture_view (void)
{
  return tr_picture_view_new ("Lock-in", tr_make_lock_in_picture, 10);
}

static void
test_widgets_keep_the_contract (void)
{
  const PageMaker makers[] = {
    tr_formula_page_new, tr_turns_page_new, tr_sheet_page_new, tr_method_page_new, tr_log_page_new, tr_bench_page_new,
    make_entry_field, make_notes_field, make_choice_field, make_picture_view,
    tr_alternatives_new, tr_sheet_view_new, tr_ingredient_entry_new, tr_line_list_new, tr_stage_header_new, tr_turn_editor_new,
  };

  for (guint i = 0; i < G_N_ELEMENTS (makers); i++)
    ui_assert_contract (makers[i]);
}

static void
add_page (const PageRow *row)
{
  const struct { const char *claim; GTestDataFunc test; } tests[] = {
    { "every-field-writes-what-it-shows", test_every_field_writes_what_it_shows },
    { "every-choice-writes-what-it-says", test_every_choice_writes_what_it_says },
    { "entries-of-a-list-start-alike", test_entries_of_a_list_start_alike },
    { "go-to-focuses-the-field", test_go_to_focuses_the_field },
  };

  for (guint i = 0; i < G_N_ELEMENTS (tests); i++)
    {
      g_autofree char *path = g_strdup_printf ("/pages/%s/%s", row->name, tests[i].claim);

      g_test_add_data_func (path, row, tests[i].test);
    }
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  for (guint i = 0; i < G_N_ELEMENTS (page_rows); i++)
    add_page (&page_rows[i]);
  g_test_add_func ("/pages/fields-follow-the-choice", test_fields_follow_the_choice);
  g_test_add_func ("/pages/method-step-comes-and-goes-with-its-values", test_method_step_comes_and_goes_with_its_values);
  g_test_add_func ("/pages/turns-are-added-moved-and-removed", test_turns_are_added_moved_and_removed);
  g_test_add_func ("/pages/alternative-sets-the-rows", test_alternative_sets_the_rows);
  g_test_add_func ("/pages/everything-has-a-name", test_everything_has_a_name);
  g_test_add_func ("/pages/page-without-a-dough-is-empty", test_page_without_a_dough_is_empty);
  g_test_add_func ("/pages/picture-says-what-it-shows", test_picture_says_what_it_shows);
  g_test_add_func ("/pages/picture-is-made-for-its-size", test_picture_is_made_for_its_size);
  g_test_add_func ("/pages/widgets-keep-the-contract", test_widgets_keep_the_contract);

  return ui_run ();
}
