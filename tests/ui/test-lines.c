/* test-lines.c: the formula's lines are typed, completed, added, moved and kept
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "page-fixture.h"
#include "window/entry-field.h"
#include "window/ingredient-entry.h"
#include "window/ingredient-find.h"
#include "window/line-list.h"
#include "window/line-row.h"
#include "window/stage-header.h"

/* The list without widgets *************************************************/

static TrDough *
new_dough (const char *stages)
{
  TrDough *dough = tr_dough_new ("d1");

  /* "aabddrf": a letter a line; a and b are two preferments. */
  for (const char *p = stages; *p != '\0'; p++)
    {
      TrStage stage = *p == 'd' ? TR_STAGE_DOUGH : *p == 'r' ? TR_STAGE_ROLL_IN : *p == 'f' ? TR_STAGE_FINISH : TR_STAGE_PREFERMENT;
      g_autofree char *amount = g_strdup_printf ("%d g", (int) (p - stages) + 1);
      TrLine *line = tr_line_new (stage, "water", amount);

      if (stage == TR_STAGE_PREFERMENT)
        line->group = g_strndup (p, 1);
      g_ptr_array_add (dough->lines, line);
    }

  return dough;
}

/* What is seen: stage letters with the lines' amounts, in order. */
static char *
dup_seen (const TrDough *dough)
{
  g_autoptr (GArray) order = tr_lines_dup_order (dough);
  g_autoptr (GString) seen = g_string_new (NULL);
  const char letters[] = "pdrf";

  for (guint i = 0; i < order->len; i++)
    {
      const TrLine *line = tr_dough_get_line (dough, g_array_index (order, guint, i));

      g_string_append_printf (seen, "%s%s%d", i > 0 ? " " : "",
                              line->group != NULL ? line->group : (char[]) { letters[line->stage], 0 }, atoi (line->amount));
    }

  return g_string_free (g_steal_pointer (&seen), FALSE);
}

typedef struct { const char *name, *stages; guint index; int by; const char *expected; int place; } MoveRow;

static const MoveRow move_rows[] = {
  { "down inside a stage", "ddd", 0, 1, "d2 d1 d3", 1 },
  { "up inside a stage", "ddd", 2, -1, "d1 d3 d2", 1 },
  { "not further up", "dd", 0, -1, "d1 d2", -1 },
  { "not further down", "dd", 1, 1, "d1 d2", -1 },
  { "over the edge into the next stage", "ddr", 1, 1, "d1 r2 r3", 1 },
  { "over the edge into the stage before", "ddr", 2, -1, "d1 d2 d3", 2 },
  { "between preferments", "aab", 2, -1, "a1 a2 a3", 2 },
  { "past lines of other stages in between", "drdf", 2, -1, "d3 d1 r2 f4", 0 },
  { "into a stage that stands earlier in the file", "rd", 1, 1, "r2 r1", 0 },
};

static void
test_lines_move_as_seen (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (move_rows); i++)
    {
      const MoveRow *row = &move_rows[i];
      g_autoptr (TrDough) dough = new_dough (row->stages);

      g_test_message ("%s", row->name);
      g_assert_cmpint (tr_lines_move (dough, row->index, row->by), ==, row->place);
      g_autofree char *seen = dup_seen (dough);
      g_assert_cmpstr (seen, ==, row->expected);
    }
}

static void
test_lines_change_stage (void)
{
  g_autoptr (TrDough) dough = new_dough ("aadr");

  g_assert_cmpuint (tr_lines_set_stage (dough, 2, TR_STAGE_FINISH), ==, 3);
  g_autofree char *finish = dup_seen (dough);
  g_assert_cmpstr (finish, ==, "a1 a2 r4 f3");
  tr_lines_set_stage (dough, 2, TR_STAGE_PREFERMENT);            /* joins the last one */
  g_autofree char *joined = dup_seen (dough);
  g_assert_cmpstr (joined, ==, "a1 a2 a4 f3");
  tr_lines_set_new_group (dough, 0);
  tr_lines_rename_group (dough, "a", "poolish");
  g_autofree char *renamed = dup_seen (dough);
  g_assert_cmpstr (renamed, ==, "poolish2 poolish4 preferment1 f3");
}

static TrLine *
random_line (void)
{
  g_autofree char *amount = g_strdup_printf ("%d g", g_test_rand_int_range (1, 1000000));

  return tr_line_new ((TrStage) g_test_rand_int_range (1, TR_N_STAGES), "water", amount);
}

/* Whatever one edit does, each line that it left alone keeps its row. */
static void
test_untouched_lines_keep_their_rows (void)
{
  for (int round = 0; round < 2000; round++)
    {
      g_autoptr (TrDough) old = tr_dough_new ("d1");
      guint n = (guint) g_test_rand_int_range (1, 12);

      for (guint i = 0; i < n; i++)
        g_ptr_array_add (old->lines, random_line ());

      g_autoptr (TrDough) new = tr_dough_copy (old);
      guint at = (guint) g_test_rand_int_range (0, (int) n);
      int edit = g_test_rand_int_range (0, 4);

      if (edit == 0)
        tr_set_text (&tr_dough_get_line (new, at)->amount, "something else");
      else if (edit == 1)
        g_ptr_array_insert (new->lines, (int) at, random_line ());
      else if (edit == 2)
        g_ptr_array_remove_index (new->lines, at);
      else
        g_ptr_array_insert (new->lines, g_test_rand_int_range (0, (int) n), g_ptr_array_steal_index (new->lines, at));

      g_autoptr (GArray) match = tr_lines_match ((TrLine *const *) old->lines->pdata, n, new);
      g_autofree gboolean *is_used = g_new0 (gboolean, n);

      g_assert_cmpuint (match->len, ==, new->lines->len);
      for (guint i = 0; i < match->len; i++)
        {
          int from = g_array_index (match, int, i);

          if (from < 0)
            {
              g_assert_cmpint (edit, ==, 1);
              continue;
            }
          g_assert_false (is_used[from]);
          is_used[from] = TRUE;
          /* The changed one goes on in its own row too. */
          if (edit == 0 && i == at)
            g_assert_cmpint (from, ==, (int) at);
          else if (edit != 3 || g_strcmp0 (tr_dough_get_line (old, (guint) from)->amount, tr_dough_get_line (new, i)->amount) != 0)
            g_assert_true (tr_line_equal (tr_dough_get_line (old, (guint) from), tr_dough_get_line (new, i)));
        }
    }
}

/* Completion ***************************************************************/

typedef struct { const char *typed, *first; } FindRow;

static const FindRow find_rows[] = {
  { "creme", "butter-mine" },                   /* accents do not matter */
  { "CRÈME", "butter-mine" },                   /* nor does case */
  { "mine", "butter-mine" },                    /* any word */
  { "butter mine", "butter-mine" },
  { "bread fl", "flour-bread" },
  { "wholem", "flour-wholemeal" },
  { "qwzx", NULL },
  { "", NULL },
  { "  ", NULL },
};

static void
test_any_word_finds_an_ingredient (void)
{
  g_autoptr (TrPantry) pantry = tr_pantry_new ();
  TrOwnIngredient *own = tr_own_ingredient_new ("butter-mine", "butter-unsalted");

  own->name = g_strdup ("Crème butter of mine");
  g_ptr_array_add (pantry->own, own);
  for (guint i = 0; i < G_N_ELEMENTS (find_rows); i++)
    {
      g_auto (GStrv) found = tr_ingredient_find (pantry, find_rows[i].typed);

      g_test_message ("“%s”", find_rows[i].typed);
      g_assert_cmpstr (found[0], ==, find_rows[i].first);
    }

  /* What begins with it comes first; without a pantry the built-in ones do. */
  g_auto (GStrv) waters = tr_ingredient_find (NULL, "wat");
  g_assert_cmpstr (waters[0], ==, "water");
}

static TrIngredientEntry *
go_to_ingredient (PageFixture *fixture,
                  const char  *pointer)
{
  g_assert_true (tr_page_go_to (fixture->page, pointer));

  return TR_INGREDIENT_ENTRY (page_get_around (fixture, TR_TYPE_INGREDIENT_ENTRY));
}

static void
test_return_accepts_the_chosen_one (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  go_to_ingredient (&fixture, "/lines/2/ingredient");
  GtkWidget *text = page_get_focus (&fixture);

  ui_type (text, "rye");
  g_auto (GStrv) offers = tr_ingredient_find (NULL, "rye");
  g_assert_nonnull (offers[1]);
  page_assert_value (&fixture, "/lines/2/ingredient", "\"flour-bread\"");       /* not before it is accepted */
  g_assert_true (page_press (&fixture, GDK_KEY_Down));
  g_assert_true (page_press (&fixture, GDK_KEY_Return));
  g_assert_cmpstr (tr_dough_get_line (tr_page_get_dough (fixture.page), 2)->ingredient, ==, offers[1]);
  g_assert_true (page_get_focus (&fixture) == text);
  g_assert_true (g_str_has_prefix (tr_document_get_undo_label (fixture.document), "change ingredient to "));
  tr_document_undo (fixture.document);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "Bread flour");
  page_tear_down (&fixture);
}

static void
test_tab_accepts_and_goes_on (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  go_to_ingredient (&fixture, "/lines/2/ingredient");
  ui_type (page_get_focus (&fixture), "crem");
  g_assert_false (page_press (&fixture, GDK_KEY_Tab));           /* the focus moves as ever */
  page_assert_value (&fixture, "/lines/2/ingredient", "\"butter-mine\"");
  page_tear_down (&fixture);
}

static void
test_escape_closes_then_restores (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  go_to_ingredient (&fixture, "/lines/2/ingredient");
  GtkWidget *text = page_get_focus (&fixture);

  ui_type (text, "rye");
  g_assert_true (page_press (&fixture, GDK_KEY_Escape));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "rye");
  g_assert_true (page_press (&fixture, GDK_KEY_Escape));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "Bread flour");
  page_leave (&fixture);
  page_assert_value (&fixture, "/lines/2/ingredient", "\"flour-bread\"");
  g_assert_null (tr_document_get_undo_label (fixture.document));
  page_tear_down (&fixture);
}

static void
test_what_is_not_recognised_stays_as_text (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  TrIngredientEntry *entry = go_to_ingredient (&fixture, "/lines/3/ingredient");
  GtkWidget *text = page_get_focus (&fixture);

  ui_type (text, "sel de nulle part");
  page_leave (&fixture);
  page_assert_value (&fixture, "/lines/3/ingredient", "null");
  page_assert_value (&fixture, "/lines/3/text", "\"sel de nulle part\"");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "sel de nulle part");
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (tr_ingredient_entry_get_entry (entry)),
                                    GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE);

  /* A whole name is understood without the list. */
  gtk_widget_grab_focus (text);
  ui_type (text, "bread FLOUR");
  page_leave (&fixture);
  page_assert_value (&fixture, "/lines/3/ingredient", "\"flour-bread\"");
  g_assert_null (tr_dough_get_line (tr_page_get_dough (fixture.page), 3)->text);
  page_tear_down (&fixture);
}

/* Amounts ******************************************************************/

static void
test_unreadable_amount_is_a_document_too (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  GtkWidget *text = page_type (&fixture, "/lines/3/amount", "14 g");
  GtkWidget *row = page_get_around (&fixture, TR_TYPE_LINE_ROW);

  ui_type (text, "some");
  /* Half a word does not wipe the last readable one… */
  page_assert_value (&fixture, "/lines/3/amount", "\"14 g\"");
  page_leave (&fixture);
  /* … but what stands there on leaving is what was written. */
  page_assert_value (&fixture, "/lines/3/amount", "\"some\"");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "some");
  ui_frames (row, 1);
  g_assert_true (ui_says (row, "some"));
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (gtk_widget_get_parent (text)), GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE);
  page_type (&fixture, "/lines/3/amount", "14 g");
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (gtk_widget_get_parent (text)), GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_FALSE);
  page_tear_down (&fixture);
}

/* The scale shows whole grams: what is less is not shown as none. */
static void
test_too_light_for_the_scale_is_not_nothing (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  page_type (&fixture, "/lines/1/amount", "0.1 g");
  GtkWidget *row = page_get_around (&fixture, TR_TYPE_LINE_ROW);

  ui_frames (row, 1);
  g_assert_true (ui_says (row, "g*"));
  page_type (&fixture, "/lines/1/amount", "150 g");
  ui_frames (row, 1);
  g_assert_false (ui_says (row, "g*"));
  page_tear_down (&fixture);
}

static void
test_bare_number_takes_the_readers_unit (void)
{
  PageFixture fixture;
  TrReader reader;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  GtkWidget *text = page_type (&fixture, "/lines/2/amount", "440");

  page_assert_value (&fixture, "/lines/2/amount", "\"440 g\"");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "440");     /* while it is typed */
  page_leave (&fixture);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "440 g");

  tr_reader_init_plain (&reader, TR_UNITS_US);
  tr_page_set_reader (fixture.page, &reader);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (text)), ==, "440 g");   /* as the baker wrote it */
  page_type (&fixture, "/lines/2/amount", "16");
  page_assert_value (&fixture, "/lines/2/amount", "\"16 oz\"");
  page_tear_down (&fixture);
}

/* Rows *********************************************************************/

static GtkWidget *
get_row (PageFixture *fixture,
         guint        index)
{
  g_autofree char *pointer = g_strdup_printf ("/lines/%u/amount", index);

  g_assert_true (tr_page_go_to (fixture->page, pointer));

  return page_get_around (fixture, TR_TYPE_LINE_ROW);
}

static void
test_rows_stay_the_same_objects (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  GtkWidget *salt = get_row (&fixture, 3);
  GtkWidget *focus = page_get_focus (&fixture);

  g_assert_true (gtk_widget_activate_action (salt, "line.move-up", NULL));
  page_assert_value (&fixture, "/lines/2/ingredient", "\"salt\"");
  g_assert_true (page_get_focus (&fixture) == focus);
  g_assert_true (get_row (&fixture, 2) == salt);
  g_assert_cmpstr (tr_document_get_undo_label (fixture.document), ==, "move Salt");

  g_assert_true (gtk_widget_activate_action (salt, "line.set-stage", "s", "finish"));
  page_assert_value (&fixture, "/lines/6/stage", "\"finish\"");
  g_assert_true (get_row (&fixture, 6) == salt);
  tr_document_undo (fixture.document);
  tr_document_undo (fixture.document);
  g_assert_true (get_row (&fixture, 3) == salt);
  page_tear_down (&fixture);
}

static void
test_removed_line_comes_back (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  g_autofree char *before = ui_dup_trial_text (fixture.document);

  g_assert_true (gtk_widget_activate_action (get_row (&fixture, 3), "line.remove", NULL));
  g_assert_cmpuint (tr_page_get_dough (fixture.page)->lines->len, ==, 6);
  g_assert_cmpuint (ui_count_type (GTK_WIDGET (fixture.page), TR_TYPE_LINE_ROW), ==, 6);
  g_assert_cmpstr (tr_document_get_undo_label (fixture.document), ==, "remove Salt");
  tr_document_undo (fixture.document);
  g_autofree char *after = ui_dup_trial_text (fixture.document);
  g_assert_cmpstr (after, ==, before);
  g_assert_cmpuint (ui_count_type (GTK_WIDGET (fixture.page), TR_TYPE_LINE_ROW), ==, 7);
  page_tear_down (&fixture);
}

static void
test_going_to_the_lines_adds_none (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  g_assert_true (tr_page_go_to (fixture.page, "/lines"));
  g_assert_false (tr_line_row_is_blank (TR_LINE_ROW (page_get_around (&fixture, TR_TYPE_LINE_ROW))));
  g_assert_cmpuint (ui_count_type (GTK_WIDGET (fixture.page), TR_TYPE_LINE_ROW), ==, 7);
  page_tear_down (&fixture);
}

static void
test_return_in_the_last_row_adds_a_line (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  get_row (&fixture, 4);                        /* the last of the dough */
  g_signal_emit_by_name (gtk_widget_get_parent (page_get_focus (&fixture)), "activate");
  GtkWidget *row = page_get_around (&fixture, TR_TYPE_LINE_ROW);

  /* A blank row with the focus, not yet in the document. */
  g_assert_true (tr_line_row_is_blank (TR_LINE_ROW (row)));
  g_assert_cmpuint (ui_count_type (GTK_WIDGET (fixture.page), TR_TYPE_LINE_ROW), ==, 8);
  g_assert_cmpuint (tr_page_get_dough (fixture.page)->lines->len, ==, 7);
  g_assert_null (tr_document_get_undo_label (fixture.document));

  ui_type (page_get_focus (&fixture), "barley");
  page_press (&fixture, GDK_KEY_Return);
  page_assert_value (&fixture, "/lines/5/stage", "\"dough\"");
  page_assert_value (&fixture, "/lines/5/ingredient", "\"malt-flour\"");
  g_assert_true (get_row (&fixture, 5) == row);
  ui_type (page_get_focus (&fixture), "4 g");
  page_assert_value (&fixture, "/lines/5/amount", "\"4 g\"");
  page_leave (&fixture);
  tr_document_undo (fixture.document);
  tr_document_undo (fixture.document);
  g_assert_cmpuint (tr_page_get_dough (fixture.page)->lines->len, ==, 7);
  g_assert_cmpuint (ui_count_type (GTK_WIDGET (fixture.page), TR_TYPE_LINE_ROW), ==, 7);
  page_tear_down (&fixture);
}

static void
test_return_elsewhere_goes_to_the_next_row (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  get_row (&fixture, 2);
  g_signal_emit_by_name (gtk_widget_get_parent (page_get_focus (&fixture)), "activate");
  g_assert_cmpuint (tr_line_row_get_item (TR_LINE_ROW (page_get_around (&fixture, TR_TYPE_LINE_ROW))), ==, 3);
  page_tear_down (&fixture);
}

static void
test_blank_row_goes_when_it_is_left (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d2");
  GtkWidget *list = ui_find_type (GTK_WIDGET (fixture.page), TR_TYPE_LINE_LIST);

  tr_line_list_add (TR_LINE_LIST (list), TR_STAGE_ROLL_IN, NULL);
  g_assert_cmpuint (ui_count_type (list, TR_TYPE_LINE_ROW), ==, 3);
  page_leave (&fixture);
  g_assert_cmpuint (ui_count_type (list, TR_TYPE_LINE_ROW), ==, 2);
  g_assert_null (tr_document_get_undo_label (fixture.document));

  /* An amount first is a line as well, in its stage. */
  tr_line_list_add (TR_LINE_LIST (list), TR_STAGE_ROLL_IN, NULL);
  GtkWidget *row = page_get_around (&fixture, TR_TYPE_LINE_ROW);
  g_assert_true (tr_line_row_focus (TR_LINE_ROW (row), "amount"));
  ui_type (page_get_focus (&fixture), "250 g");
  page_leave (&fixture);
  page_assert_value (&fixture, "/lines/2/stage", "\"roll-in\"");
  page_assert_value (&fixture, "/lines/2/amount", "\"250 g\"");
  g_assert_cmpuint (ui_count_type (list, TR_TYPE_LINE_ROW), ==, 3);
  page_tear_down (&fixture);
}

static void
test_preferment_is_renamed_in_its_heading (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  GtkWidget *name = ui_find (GTK_WIDGET (fixture.page), GTK_TYPE_ENTRY, "Name of the preferment");

  g_assert_nonnull (name);
  ui_type (name, "poolish");
  page_assert_value (&fixture, "/lines/0/group", "\"sponge\"");
  page_leave (&fixture);
  page_assert_value (&fixture, "/lines/0/group", "\"poolish\"");
  page_assert_value (&fixture, "/lines/1/group", "\"poolish\"");
  page_tear_down (&fixture);
}

/* The order of Tab is the order of reading: ingredient, amount, next line. */
static void
test_tab_goes_along_the_lines (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_formula_page_new, "d1");
  GtkWidget *first = get_row (&fixture, 2);

  g_assert_true (tr_line_row_focus (TR_LINE_ROW (first), "ingredient"));
  g_assert_true (gtk_widget_child_focus (GTK_WIDGET (fixture.window), GTK_DIR_TAB_FORWARD));
  g_assert_nonnull (page_get_around (&fixture, TR_TYPE_ENTRY_FIELD));
  g_assert_true (page_get_around (&fixture, TR_TYPE_LINE_ROW) == first);
  for (int i = 0; i < 3 && page_get_around (&fixture, TR_TYPE_LINE_ROW) == first; i++)
    gtk_widget_child_focus (GTK_WIDGET (fixture.window), GTK_DIR_TAB_FORWARD);
  g_assert_cmpuint (tr_line_row_get_item (TR_LINE_ROW (page_get_around (&fixture, TR_TYPE_LINE_ROW))), ==, 3);
  g_assert_nonnull (page_get_around (&fixture, TR_TYPE_INGREDIENT_ENTRY));
  page_tear_down (&fixture);
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  g_test_add_func ("/lines/move-as-seen", test_lines_move_as_seen);
  g_test_add_func ("/lines/change-stage", test_lines_change_stage);
  g_test_add_func ("/lines/untouched-keep-their-rows", test_untouched_lines_keep_their_rows);
  g_test_add_func ("/lines/any-word-finds-an-ingredient", test_any_word_finds_an_ingredient);
  g_test_add_func ("/lines/return-accepts-the-chosen-one", test_return_accepts_the_chosen_one);
  g_test_add_func ("/lines/tab-accepts-and-goes-on", test_tab_accepts_and_goes_on);
  g_test_add_func ("/lines/escape-closes-then-restores", test_escape_closes_then_restores);
  g_test_add_func ("/lines/what-is-not-recognised-stays-as-text", test_what_is_not_recognised_stays_as_text);
  g_test_add_func ("/lines/unreadable-amount-is-a-document-too", test_unreadable_amount_is_a_document_too);
  g_test_add_func ("/lines/too-light-for-the-scale-is-not-nothing", test_too_light_for_the_scale_is_not_nothing);
  g_test_add_func ("/lines/bare-number-takes-the-readers-unit", test_bare_number_takes_the_readers_unit);
  g_test_add_func ("/lines/rows-stay-the-same-objects", test_rows_stay_the_same_objects);
  g_test_add_func ("/lines/removed-line-comes-back", test_removed_line_comes_back);
  g_test_add_func ("/lines/going-to-the-lines-adds-none", test_going_to_the_lines_adds_none);
  g_test_add_func ("/lines/return-in-the-last-row-adds-a-line", test_return_in_the_last_row_adds_a_line);
  g_test_add_func ("/lines/return-elsewhere-goes-to-the-next-row", test_return_elsewhere_goes_to_the_next_row);
  g_test_add_func ("/lines/blank-row-goes-when-it-is-left", test_blank_row_goes_when_it_is_left);
  g_test_add_func ("/lines/preferment-is-renamed-in-its-heading", test_preferment_is_renamed_in_its_heading);
  g_test_add_func ("/lines/tab-goes-along-the-lines", test_tab_goes_along_the_lines);

  return ui_run ();
}
