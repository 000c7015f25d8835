/* test-pantry.c: the baker's own ingredients, typed and used
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is expected is worked out here by hand from what is typed; the limits
 * are those of Codex CXS 279-1971, 3.3, and Regulation (EU) 1308/2013, Annex
 * VII, Part VII and Appendix II; salt = sodium × 2.5 is Regulation (EU)
 * 1169/2011, Annex I (11).
 */

#include "config.h"

#include <string.h>

#include "hand.h"
#include "page-fixture.h"
#include "calc/butter.h"
#include "window/choice-field.h"
#include "window/entry-field.h"
#include "window/ingredient-entry.h"
#include "window/pantry-edits.h"
#include "window/pantry-window.h"

/* The fixture's d1 rolls in 300 g of butter-mine, which is like unsalted butter. */
#define MINE "/ingredients/0"

static const TrDoughFigures *
get_figures (PageFixture *fixture)
{
  return tr_figures_get_dough (tr_document_get_figures (fixture->document), 0);
}

static TrField *
get_field (PageFixture *fixture,
           const char  *pointer)
{
  g_assert_true (tr_page_go_to (fixture->page, pointer));

  return TR_FIELD (page_get_around (fixture, TR_TYPE_FIELD));
}

static const char *
get_placeholder (PageFixture *fixture,
                 const char  *pointer)
{
  return gtk_entry_get_placeholder_text (GTK_ENTRY (tr_field_get_control (get_field (fixture, pointer))));
}

static void
click (PageFixture *fixture,
       const char  *label)
{
  GtkWidget *button = ui_find (GTK_WIDGET (fixture->page), GTK_TYPE_BUTTON, label);

  g_assert_nonnull (button);
  g_signal_emit_by_name (button, "clicked");
}

/* Typed into the entry that has that name, and accepted. */
static void
name_ingredient (PageFixture *fixture,
                 const char  *entry,
                 const char  *id)
{
  GtkWidget *text = ui_find (GTK_WIDGET (fixture->page), GTK_TYPE_TEXT, entry);

  if (text == NULL)
    text = ui_find (GTK_WIDGET (fixture->page), GTK_TYPE_ENTRY, entry);
  g_assert_nonnull (text);
  g_signal_emit_by_name (gtk_widget_get_ancestor (text, TR_TYPE_INGREDIENT_ENTRY), "committed", id, id);
}

static void
test_pantry_shows_what_it_takes_over (void)
{
  PageFixture fixture = { 0 };

  page_set_up (&fixture, tr_pantry_page_new, NULL);
  /* USDA SR28, 01145: butter without salt. Sodium 11 mg are 0.0275 g of salt. */
  g_assert_cmpstr (get_placeholder (&fixture, MINE "/per_100g/fat"), ==, "81.11");
  g_assert_cmpstr (get_placeholder (&fixture, MINE "/per_100g/water"), ==, "17.94");
  g_assert_cmpstr (get_placeholder (&fixture, MINE "/per_100g/sodium_mg"), ==, "11");
  g_assert_cmpstr (get_placeholder (&fixture, MINE "/per_100g/sodium_mg/as_salt"), ==, "0.0275");
  g_assert_cmpstr (get_placeholder (&fixture, MINE "/plastic_low_c"), ==, "10");
  g_assert_cmpstr (get_placeholder (&fixture, MINE "/price_per_kg"), ==, "?");
  g_assert_true (ui_says (GTK_WIDGET (fixture.page), "Butter, unsalted"));
  /* To look is not to change. */
  g_assert_null (tr_document_get_undo_label (fixture.document));
  page_tear_down (&fixture);
}

static void
test_pantry_figures_follow (void)
{
  PageFixture fixture = { 0 };

  page_set_up (&fixture, tr_pantry_page_new, NULL);

  double flour = get_figures (&fixture)->formula.flour_g;
  double salt = get_figures (&fixture)->formula.salt_percent;

  page_type (&fixture, MINE "/per_100g/sodium_mg", "600");
  page_leave (&fixture);
  page_assert_value (&fixture, MINE "/per_100g/sodium_mg", "600");
  /* As written 300 g of butter on 150 + 450 + 30 g of flour: (600 - 11) mg more
   * sodium a 100 g are 3 × 0.589 × 2.5 g of salt, whatever the batch is scaled by. */
  g_assert_cmpfloat_with_epsilon (get_figures (&fixture)->formula.salt_percent - salt, 3 * 0.589 * 2.5 / 630 * 100, 1e-9);
  g_assert_cmpfloat (get_figures (&fixture)->formula.flour_g, ==, flour);
  tr_document_undo (fixture.document);
  g_assert_cmpfloat (get_figures (&fixture)->formula.salt_percent, ==, salt);
  page_tear_down (&fixture);
}

static void
test_pantry_salt_and_sodium_are_one (void)
{
  static const struct { const char *salt, *sodium; } labels[] = {
    { "1.7", "680" }, { "1.8", "720" }, { "0.01", "4" }, { "1.23", "492" }, { "0", "0" },
  };
  PageFixture fixture = { 0 };

  page_set_up (&fixture, tr_pantry_page_new, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (labels); i++)
    {
      page_type (&fixture, MINE "/per_100g/sodium_mg/as_salt", labels[i].salt);
      page_leave (&fixture);
      page_assert_value (&fixture, MINE "/per_100g/sodium_mg", labels[i].sodium);
      g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (tr_field_get_control (get_field (&fixture, MINE "/per_100g/sodium_mg")))),
                       ==, labels[i].sodium);
    }
  page_type (&fixture, MINE "/per_100g/sodium_mg", "680");
  page_leave (&fixture);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (tr_field_get_control (get_field (&fixture, MINE "/per_100g/sodium_mg/as_salt")))),
                   ==, "1.7");
  page_tear_down (&fixture);
}

static void
test_pantry_butter_is_made_and_used (void)
{
  PageFixture fixture = { 0 };

  page_set_up (&fixture, tr_pantry_page_new, NULL);
  name_ingredient (&fixture, "Add one like this built-in ingredient", "butter-unsalted");
  g_assert_cmpstr (tr_document_get_undo_label (fixture.document), ==, "add an ingredient of my own");
  page_assert_value (&fixture, "/ingredients/1/like", "\"butter-unsalted\"");
  page_type (&fixture, "/ingredients/1/name", "Farm butter");
  page_type (&fixture, "/ingredients/1/per_100g/fat", "84");
  page_type (&fixture, "/ingredients/1/per_100g/water", "14.5");
  page_leave (&fixture);
  page_assert_value (&fixture, "/ingredients/1/per_100g/fat", "84");
  g_assert_true (ui_says (GTK_WIDGET (fixture.page), "Butter by Codex CXS 279"));
  g_assert_true (ui_says (GTK_WIDGET (fixture.page), "Farm butter"));

  /* The line of the roll-in takes it: 84 % of the batch's butter is fat, and
   * fat is what the piece has of it. */
  TrTrial *draft = tr_document_draft (fixture.document);
  const TrPantry *pantry = tr_document_get_trial (fixture.document)->pantry;
  const char *id = ((const TrOwnIngredient *) g_ptr_array_index (pantry->own, 1))->id;

  tr_pantry_replace (draft, "butter-mine", id);
  g_assert_true (tr_document_commit (fixture.document, draft, "use it", NULL, "", NULL));
  ui_settle ();

  const TrLineFigures *line = &g_array_index (get_figures (&fixture)->formula.lines, TrLineFigures, 5);

  g_assert_cmpstr (line->ingredient.name, ==, "Farm butter");
  g_assert_cmpfloat (line->ingredient.per_100g[TR_PART_FAT], ==, 84);
  /* 100 - 84 - 14.5 - 0.85 protein - 0.09 ash. */
  g_assert_cmpfloat_with_epsilon (line->ingredient.per_100g[TR_PART_CARBOHYDRATE], 0.56, 1e-9);
  g_assert_true (ui_says (GTK_WIDGET (fixture.page), "Used in Triangles."));
  page_tear_down (&fixture);
}

static void
test_pantry_refuses_in_words (void)
{
  static const struct { const char *where, *typed, *part_of_sentence; } cases[] = {
    { MINE "/per_100g/water", "30", "would make 113 g in 100 g" },
    { MINE "/per_100g/fat", "-3", "0 to 100" },
    { MINE "/per_100g/protein", "120", "0 to 100 g in 100 g; 120 cannot be" },
    { MINE "/per_100g/sugars", "4", "part of the carbohydrate, which is 2 g" },
    { MINE "/per_100g/fat", "a lot", "a lot" },
  };
  PageFixture fixture = { 0 };

  page_set_up (&fixture, tr_pantry_page_new, NULL);
  page_type (&fixture, MINE "/per_100g/fat", "81");
  page_type (&fixture, MINE "/per_100g/carbohydrate", "2");
  page_leave (&fixture);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *before = page_dup_value (&fixture, cases[i].where);

      page_type (&fixture, cases[i].where, cases[i].typed);

      TrField *field = TR_FIELD (page_get_around (&fixture, TR_TYPE_FIELD));

      page_leave (&fixture);
      g_test_message ("%s: %s", cases[i].typed, tr_field_get_error (field));
      g_assert_nonnull (strstr (tr_field_get_error (field), cases[i].part_of_sentence));
      {
        g_autofree char *after = page_dup_value (&fixture, cases[i].where);

        g_assert_cmpstr (after, !=, cases[i].typed);
      }
      page_type (&fixture, cases[i].where, before != NULL ? before : "");
      page_leave (&fixture);
      g_assert_null (tr_field_get_error (field));
    }
  page_tear_down (&fixture);
}

static void
test_pantry_empty_is_as_the_other (void)
{
  PageFixture fixture = { 0 };

  page_set_up (&fixture, tr_pantry_page_new, NULL);
  page_type (&fixture, MINE "/household_g/stick", "125");
  page_type (&fixture, MINE "/density_g_ml", "0.9");
  page_type (&fixture, MINE "/proof_max_c", "25");
  page_type (&fixture, MINE "/price_per_kg", "13.5");
  page_leave (&fixture);
  page_assert_value (&fixture, MINE "/household_g/stick", "125");
  page_assert_value (&fixture, MINE "/density_g_ml", "0.9");
  page_assert_value (&fixture, MINE "/proof_max_c", "25");
  page_assert_value (&fixture, MINE "/price_per_kg", "13.5");
  page_type (&fixture, MINE "/household_g/stick", "");
  page_type (&fixture, MINE "/proof_max_c", "");
  page_leave (&fixture);
  page_assert_value (&fixture, MINE "/household_g", NULL);
  page_assert_value (&fixture, MINE "/proof_max_c", NULL);
  g_assert_cmpstr (get_placeholder (&fixture, MINE "/household_g/stick"), ==, "113");
  page_tear_down (&fixture);
}

static void
test_pantry_not_known (void)
{
  PageFixture fixture = { 0 };

  page_set_up (&fixture, tr_pantry_page_new, NULL);
  gtk_expander_set_expanded (GTK_EXPANDER (ui_find_type (GTK_WIDGET (fixture.page), GTK_TYPE_EXPANDER)), TRUE);
  tr_choice_field_choose (TR_CHOICE_FIELD (get_field (&fixture, MINE "/per_100g/water/known")), 1);
  page_assert_value (&fixture, MINE "/per_100g/water", "null");
  g_assert_cmpstr (get_placeholder (&fixture, MINE "/per_100g/water"), ==, "?");
  g_assert_true (isnan (get_figures (&fixture)->formula.mix_per_100g[TR_PART_WATER]));
  page_type (&fixture, MINE "/per_100g/water", "16");
  page_leave (&fixture);
  page_assert_value (&fixture, MINE "/per_100g/water", "16");
  page_tear_down (&fixture);
}

static void
test_pantry_allergens (void)
{
  PageFixture fixture = { 0 };

  page_set_up (&fixture, tr_pantry_page_new, NULL);
  page_assert_value (&fixture, MINE "/allergens", NULL);
  tr_choice_field_choose (TR_CHOICE_FIELD (get_field (&fixture, MINE "/allergens")), 1);
  page_assert_value (&fixture, MINE "/allergens", "[\"milk\"]");
  tr_choice_field_choose (TR_CHOICE_FIELD (get_field (&fixture, MINE "/allergens/soy")), 1);
  tr_choice_field_choose (TR_CHOICE_FIELD (get_field (&fixture, MINE "/allergens/gluten-rye")), 1);
  page_assert_value (&fixture, MINE "/allergens", "[\"gluten-rye\",\"milk\",\"soy\"]");
  tr_choice_field_choose (TR_CHOICE_FIELD (get_field (&fixture, MINE "/allergens/milk")), 0);
  tr_choice_field_choose (TR_CHOICE_FIELD (get_field (&fixture, MINE "/allergens/unknown")), 1);
  page_assert_value (&fixture, MINE "/allergens", "[\"gluten-rye\",\"soy\",\"unknown\"]");
  tr_choice_field_choose (TR_CHOICE_FIELD (get_field (&fixture, MINE "/allergens")), 0);
  page_assert_value (&fixture, MINE "/allergens", NULL);
  tr_document_undo (fixture.document);
  page_assert_value (&fixture, MINE "/allergens", "[\"gluten-rye\",\"soy\",\"unknown\"]");
  page_tear_down (&fixture);
}

static void
test_pantry_remove_is_refused_while_used (void)
{
  PageFixture fixture = { 0 };

  page_set_up (&fixture, tr_pantry_page_new, NULL);
  click (&fixture, "Remove");
  g_assert_true (ui_says (GTK_WIDGET (fixture.page), "it is used in Triangles"));
  page_assert_value (&fixture, MINE "/id", "\"butter-mine\"");
  g_assert_null (tr_document_get_undo_label (fixture.document));
  click (&fixture, "Put Butter, unsalted in its place");
  page_assert_value (&fixture, MINE "/id", NULL);
  g_assert_cmpstr (tr_document_get_undo_label (fixture.document), ==, "put Butter, unsalted in the place of an ingredient");
  g_assert_cmpstr (tr_dough_get_line (tr_trial_get_dough (tr_document_get_trial (fixture.document), 0), 5)->ingredient, ==, "butter-unsalted");
  tr_document_undo (fixture.document);
  page_assert_value (&fixture, MINE "/id", "\"butter-mine\"");
  /* A copy that nobody uses goes without a question. */
  click (&fixture, "Duplicate");
  page_assert_value (&fixture, "/ingredients/1/like", "\"butter-unsalted\"");
  click (&fixture, "Remove");
  page_assert_value (&fixture, "/ingredients/1/id", NULL);
  g_assert_cmpstr (tr_document_get_undo_label (fixture.document), ==, "remove an ingredient");
  page_tear_down (&fixture);
}

static void
test_pantry_like_another (void)
{
  PageFixture fixture = { 0 };

  page_set_up (&fixture, tr_pantry_page_new, NULL);
  name_ingredient (&fixture, "Like this built-in ingredient", "butter-salted");
  page_assert_value (&fixture, MINE "/like", "\"butter-salted\"");
  g_assert_cmpstr (get_placeholder (&fixture, MINE "/per_100g/sodium_mg"), ==, "643");
  tr_document_undo (fixture.document);
  page_assert_value (&fixture, MINE "/like", "\"butter-unsalted\"");
  page_tear_down (&fixture);
}

static void
test_pantry_fits_a_small_screen (void)
{
  PageFixture fixture = { 0 };
  int dpi, width, height;

  g_object_get (gtk_settings_get_default (), "gtk-xft-dpi", &dpi, NULL);
  g_object_set (gtk_settings_get_default (), "gtk-xft-dpi", 144 * 1024, NULL);
  page_set_up (&fixture, tr_pantry_page_new, NULL);
  gtk_widget_measure (GTK_WIDGET (fixture.page), GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL, NULL, NULL);
  gtk_widget_measure (GTK_WIDGET (fixture.page), GTK_ORIENTATION_VERTICAL, 1024, &height, NULL, NULL, NULL);
  page_tear_down (&fixture);
  g_object_set (gtk_settings_get_default (), "gtk-xft-dpi", dpi, NULL);
  g_test_message ("%d × %d", width, height);
  g_assert_cmpint (width, <=, 1024);
  g_assert_cmpint (height, <=, 640);   /* the rest is the window's bar */
}

/* Of 100 g: fat, water, sodium mg. */
static void
test_butter_names (void)
{
  static const struct { double fat, water, sodium_mg; TrButter expected; } cases[] = {
    { 82, 16, 0, TR_BUTTER_BUTTER }, { 80, 16, 800, TR_BUTTER_BUTTER }, { 84, 14, 0, TR_BUTTER_BUTTER },
    { 80, 16.1, 0, TR_BUTTER_WET }, { 80, 16, 0, TR_BUTTER_DRY }, { 79.9, 16, 0, TR_BUTTER_SPREAD },
    { 89.9, 9, 0, TR_BUTTER_BUTTER }, { 90, 9, 0, TR_BUTTER_CONCENTRATED },
    { 60, 38, 0, TR_BUTTER_THREE_QUARTER }, { 62, 36, 0, TR_BUTTER_THREE_QUARTER }, { 62.1, 36, 0, TR_BUTTER_SPREAD },
    { 59.9, 38, 0, TR_BUTTER_SPREAD }, { 39, 58, 0, TR_BUTTER_HALF }, { 41, 57, 0, TR_BUTTER_HALF }, { 41.1, 57, 0, TR_BUTTER_SPREAD },
    { 10, 80, 0, TR_BUTTER_SPREAD }, { 9.9, 80, 0, TR_BUTTER_NONE },
    { NAN, 16, 0, TR_BUTTER_NOT_KNOWN }, { 82, NAN, 0, TR_BUTTER_NOT_KNOWN }, { 70, NAN, 0, TR_BUTTER_SPREAD },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TrIngredient butter = *tr_builtin_find ("butter-unsalted");

      butter.per_100g[TR_PART_FAT] = cases[i].fat;
      butter.per_100g[TR_PART_WATER] = cases[i].water;
      butter.per_100g[TR_PART_SODIUM_MG] = cases[i].sodium_mg;
      g_test_message ("%g %% fat, %g %% water", cases[i].fat, cases[i].water);
      g_assert_cmpint (tr_butter_judge (&butter), ==, cases[i].expected);
    }
}

static GtkWindow *
get_ingredients_window (TrWindow *window)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWindow) toplevel = g_list_model_get_item (toplevels, i);

      if (TR_IS_PANTRY_WINDOW (toplevel) && gtk_window_get_transient_for (toplevel) == GTK_WINDOW (window))
        return toplevel;
    }

  return NULL;
}

/* A line's built-in ingredient becomes the baker's own, and the line names it. */
static void
test_pantry_from_a_line (UiFixture     *fixture,
                         gconstpointer  data)
{
  TrPage *page = tr_window_get_page (fixture->window, "formula");
  TrDocument *document = tr_window_get_document (fixture->window);
  TrTrial *draft = tr_document_draft (document);
  guint before = draft->pantry->own->len;
  int dough = tr_page_get_dough_index (page);
  TrLine *line = tr_dough_get_line (tr_trial_own_dough (draft, (guint) dough), 0);

  g_free (line->ingredient);
  line->ingredient = g_strdup ("flour-plain");
  g_assert_true (tr_document_commit (document, draft, "another flour", NULL, "", NULL));
  tr_pantry_window_open_line (page, 0);

  GtkWindow *window = get_ingredients_window (fixture->window);

  g_assert_nonnull (window);
  g_assert_cmpuint (ui_get_trial (fixture->window)->pantry->own->len, ==, before + 1);
  g_assert_cmpstr (tr_dough_get_line (tr_page_get_dough (page), 0)->ingredient, ==, "flour-plain-own");
  g_assert_cmpstr (tr_document_get_undo_label (document), ==, "make an ingredient of my own");
  ui_frames (GTK_WIDGET (window), 2);
  g_assert_true (ui_says (GTK_WIDGET (window), "What is left empty is as Plain (all-purpose) flour"));
  /* It is one already: opened, not made again. */
  tr_pantry_window_open_line (page, 0);
  g_assert_cmpuint (ui_get_trial (fixture->window)->pantry->own->len, ==, before + 1);
  tr_document_undo (document);
  g_assert_cmpstr (tr_dough_get_line (tr_page_get_dough (page), 0)->ingredient, ==, "flour-plain");
  gtk_window_close (window);
}

/* The whole way: key, typing, undo by key, the window behind following. */
static void
test_pantry_by_hand (UiFixture     *fixture,
                     gconstpointer  data)
{
  if (!hand_is_there ())
    {
      g_test_skip ("no xdotool here");
      return;
    }

  TrDocument *document = tr_window_get_document (fixture->window);
  guint before = ui_get_trial (fixture->window)->pantry->own->len;

  hand_focus (GTK_WINDOW (fixture->window));
  hand_key ("ctrl+i");

  GtkWindow *window = get_ingredients_window (fixture->window);

  g_assert_nonnull (window);
  ui_frames (GTK_WIDGET (window), 2);
  hand_focus (window);
  GtkWidget *entry = ui_find_type (GTK_WIDGET (window), TR_TYPE_INGREDIENT_ENTRY);

  gtk_widget_grab_focus (tr_ingredient_entry_get_entry (TR_INGREDIENT_ENTRY (entry)));
  hand_do ("type", "--delay", "20", "butter, uns", NULL);
  hand_key ("Return");
  g_assert_cmpuint (ui_get_trial (fixture->window)->pantry->own->len, ==, before + 1);
  /* It is called by its name at once. */
  hand_key ("ctrl+a");
  hand_do ("type", "--delay", "20", "Farm butter", NULL);
  hand_key ("Tab");

  const TrOwnIngredient *own = g_ptr_array_index (ui_get_trial (fixture->window)->pantry->own, before);

  g_assert_cmpstr (own->name, ==, "Farm butter");
  g_assert_cmpstr (own->like, ==, "butter-unsalted");
  g_assert_cmpstr (tr_document_get_undo_label (document), ==, "rename an ingredient");
  hand_key ("ctrl+z");
  hand_key ("ctrl+z");
  g_assert_cmpuint (ui_get_trial (fixture->window)->pantry->own->len, ==, before);
  gtk_window_close (window);
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  g_test_add_func ("/ui/pantry/shows-what-it-takes-over", test_pantry_shows_what_it_takes_over);
  g_test_add_func ("/ui/pantry/figures-follow-what-is-typed", test_pantry_figures_follow);
  g_test_add_func ("/ui/pantry/salt-and-sodium-are-one", test_pantry_salt_and_sodium_are_one);
  g_test_add_func ("/ui/pantry/a-butter-is-made-and-used", test_pantry_butter_is_made_and_used);
  g_test_add_func ("/ui/pantry/refuses-in-words-at-the-field", test_pantry_refuses_in_words);
  g_test_add_func ("/ui/pantry/empty-is-as-the-other", test_pantry_empty_is_as_the_other);
  g_test_add_func ("/ui/pantry/not-known-is-no-number", test_pantry_not_known);
  g_test_add_func ("/ui/pantry/allergens-of-its-own", test_pantry_allergens);
  g_test_add_func ("/ui/pantry/is-not-removed-while-used", test_pantry_remove_is_refused_while_used);
  g_test_add_func ("/ui/pantry/like-another", test_pantry_like_another);
  g_test_add_func ("/ui/pantry/fits-a-small-screen-with-large-text", test_pantry_fits_a_small_screen);
  g_test_add_func ("/ui/pantry/what-may-be-called-butter", test_butter_names);
  UI_ADD ("/ui/pantry/from-a-line", test_pantry_from_a_line);
  UI_ADD ("/ui/pantry/by-hand", test_pantry_by_hand);

  return ui_run ();
}
