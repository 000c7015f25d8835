/* test-review.c: a recipe is looked through before it enters the trial
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The real window under a display: pasted, typed, dropped; changed by one
 * click; added and undone. All recipes are our own.
 */

#include "config.h"

#include <math.h>
#include <string.h>

#include "hand.h"
#include "window/actions.h"
#include "window/notices.h"
#include "window/recipe-line-row.h"
#include "window/recipe-review.h"
#include "window/recipe-source.h"

#define FIVE_MEGABYTES (5 * 1024 * 1024)

static const char harbour[] =
  "Harbour rolls\n"
  "Makes 10\n"
  "\n"
  "500 g bread flour\n"
  "10 g salt\n"
  "300 g water\n"
  "7 g instant yeast\n"
  "a blessing of moonlight\n"
  "\n"
  "For the butter block:\n"
  "250 g butter\n"
  "\n"
  "Lock the butter in and give three letter folds.\n";

/* Help **********************************************************************/

static TrRecipeReview *
find_review (TrWindow *window)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWindow) toplevel = g_list_model_get_item (toplevels, i);

      if (TR_IS_RECIPE_REVIEW (toplevel) && gtk_window_get_transient_for (toplevel) == GTK_WINDOW (window))
        return TR_RECIPE_REVIEW (toplevel);
    }

  return NULL;
}

static gboolean
has_read (gpointer data)
{
  TrRecipeReview *review = find_review (data);

  return review != NULL && !tr_recipe_review_is_reading (review)
         && (tr_recipe_review_get_recipe (review) != NULL || tr_recipe_review_get_status (review) != NULL);
}

/* Read, and every row is there. */
static TrRecipeReview *
wait_for_review (TrWindow *window)
{
  g_assert_true (ui_wait_until (has_read, window, 20000));
  ui_settle ();
  ui_frames (GTK_WIDGET (find_review (window)), 2);

  return find_review (window);
}

static TrRecipeReview *
read_text (TrWindow   *window,
           const char *text)
{
  ui_act (window, "win.read-recipe");
  tr_recipe_review_read_text (find_review (window), text);

  return wait_for_review (window);
}

/* "Line 11: 250 g butter, understood as …"; NULL: no such row. */
static GtkWidget *
find_row (TrRecipeReview *review,
          const char     *label)
{
  return ui_find (GTK_WIDGET (review), TR_TYPE_RECIPE_LINE_ROW, label);
}

static void
click (TrRecipeReview *review,
       GType           type,
       const char     *label)
{
  GtkWidget *button = ui_find (GTK_WIDGET (review), type, label);

  g_assert_nonnull (button);
  g_signal_emit_by_name (button, "clicked");
  ui_settle ();
}

/* By key: reached, it scrolls into view, and then a pointer would have to wait for it. */
static void
hand_press (TrRecipeReview *review,
            GType           type,
            const char     *label)
{
  GtkWidget *button = ui_find (GTK_WIDGET (review), type, label);

  g_assert_nonnull (button);
  hand_focus (GTK_WINDOW (review));
  g_assert_true (gtk_widget_grab_focus (button));
  hand_key ("space");
}

static gboolean
is_enabled (TrRecipeReview *review,
            const char     *label)
{
  return gtk_widget_get_sensitive (ui_find (GTK_WIDGET (review), GTK_TYPE_BUTTON, label));
}

static const TrRecipeLine *
get_line (TrRecipeReview *review,
          guint           index)
{
  return tr_recipe_get_line (tr_recipe_review_get_recipe (review), index);
}

/* From the clipboard to the trial and back **********************************/

static void
test_pasted_looked_through_added_undone (UiFixture     *fixture,
                                         gconstpointer  data)
{
  guint n_before = ui_get_trial (fixture->window)->doughs->len;
  g_autofree char *before = ui_dup_trial_text (tr_window_get_document (fixture->window));
  TrRecipeReview *review;

  if (!hand_is_there ())
    {
      g_test_skip ("no hand");
      return;
    }
  gdk_clipboard_set_text (gtk_widget_get_clipboard (GTK_WIDGET (fixture->window)), harbour);
  hand_focus (GTK_WINDOW (fixture->window));
  hand_key ("ctrl+shift+v");
  review = wait_for_review (fixture->window);

  /* Line by line; what is not understood is kept with its words. */
  g_assert_cmpuint (tr_recipe_review_get_recipe (review)->lines->len, ==, 6);
  g_assert_nonnull (find_row (review, "Line 4: 500 g bread flour, understood as Bread flour, 500 g"));
  g_assert_nonnull (find_row (review, "Line 11: 250 g butter, understood as Butter, unsalted, 250 g"));
  g_assert_cmpstr (get_line (review, 4)->text, ==, "a blessing of moonlight");
  g_assert_nonnull (get_line (review, 4)->why);

  /* Nothing has entered the trial. */
  g_autofree char *still = ui_dup_trial_text (tr_window_get_document (fixture->window));

  g_assert_cmpstr (still, ==, before);

  /* One click changes it, one puts it back. */
  hand_press (review, GTK_TYPE_TOGGLE_BUTTON, "Butter, salted");
  g_assert_cmpstr (get_line (review, 5)->ingredient, ==, "butter-salted");
  g_assert_nonnull (find_row (review, "Line 11: 250 g butter, understood as Butter, salted, 250 g"));
  hand_press (review, GTK_TYPE_TOGGLE_BUTTON, "Butter, unsalted");
  g_assert_cmpstr (get_line (review, 5)->ingredient, ==, "butter-unsalted");
  hand_press (review, GTK_TYPE_TOGGLE_BUTTON, "Butter, salted");

  hand_press (review, GTK_TYPE_BUTTON, "Add to this trial");
  g_assert_null (find_review (fixture->window));
  g_assert_cmpuint (ui_get_trial (fixture->window)->doughs->len, ==, n_before + 1);

  const TrDough *dough = tr_trial_get_dough (ui_get_trial (fixture->window), n_before);
  const TrDoughFigures *figures = tr_figures_get_dough (tr_document_get_figures (tr_window_get_document (fixture->window)), n_before);

  g_assert_cmpstr (dough->name, ==, "Harbour rolls");
  g_assert_cmpstr (tr_window_get_dough_id (fixture->window), ==, dough->id);
  g_assert_cmpstr (tr_document_get_undo_label (tr_window_get_document (fixture->window)), ==, "add the dough Harbour rolls");
  g_assert_cmpuint (dough->lines->len, ==, 6);
  g_assert_cmpstr (tr_dough_get_line (dough, 4)->text, ==, "a blessing of moonlight");
  g_assert_cmpint (dough->pieces_written, ==, 10);
  g_assert_nonnull (strstr (dough->notes, "three letter folds"));
  g_assert_cmpfloat_with_epsilon (figures->formula.written_flour_g, 500, 1e-9);
  g_assert_cmpfloat_with_epsilon (figures->formula.written_roll_in_g, 250, 1e-9);
  g_assert_cmpfloat_with_epsilon (figures->formula.added_water_percent, 60, 1e-9);
  g_assert_cmpfloat_with_epsilon (figures->formula.roll_in_percent_of_flour, 50, 1e-9);
  /* 10 g and the butter's: 643 mg of sodium in 100 g (USDA SR28, 01001), times 2.5 (EU 1169/2011 Annex I). */
  g_assert_cmpfloat_with_epsilon (figures->formula.salted_fat_salt_percent, 250 * 0.643 * 2.5 / 100 / 500 * 100, 1e-3);

  ui_act (fixture->window, "win.undo");
  g_autofree char *after = ui_dup_trial_text (tr_window_get_document (fixture->window));

  g_assert_cmpstr (after, ==, before);
}

static void
test_typed_by_hand (UiFixture     *fixture,
                    gconstpointer  data)
{
  TrRecipeReview *review;
  GtkWidget *entry;

  if (!hand_is_there ())
    {
      g_test_skip ("no hand");
      return;
    }
  ui_act (fixture->window, "win.read-recipe");
  review = find_review (fixture->window);
  g_assert_nonnull (review);
  g_assert_true (tr_recipe_review_is_empty (review));
  g_assert_false (is_enabled (review, "Add to this trial"));
  ui_frames (GTK_WIDGET (review), 2);
  hand_focus (GTK_WINDOW (review));
  g_assert_true (gtk_widget_grab_focus (ui_find_type (GTK_WIDGET (review), TR_TYPE_RECIPE_SOURCE)));
  hand_do ("type", "--delay", "20", "400 g strong flour", NULL);
  review = wait_for_review (fixture->window);
  g_assert_cmpuint (tr_recipe_review_get_recipe (review)->lines->len, ==, 1);
  g_assert_true (is_enabled (review, "Add to this trial"));

  /* Read as in the formula: the unit may be left out, the line says what is wrong. */
  entry = ui_find (GTK_WIDGET (review), GTK_TYPE_ENTRY, "Amount, line 1");
  g_assert_nonnull (entry);
  ui_type (entry, "450");
  g_assert_cmpstr (get_line (review, 0)->amount, ==, "450 g");
  ui_type (entry, "some");
  g_assert_nonnull (get_line (review, 0)->why);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "some");
  ui_type (entry, "1 lb 2 oz");
  g_assert_null (get_line (review, 0)->why);

  /* The same window is asked for again, and Escape closes it. */
  ui_act (fixture->window, "win.read-recipe");
  g_assert_true (find_review (fixture->window) == review);
  hand_focus (GTK_WINDOW (review));
  hand_key ("Escape");
  g_assert_null (find_review (fixture->window));
}

static void
test_a_new_trial_is_unsaved_work (UiFixture     *fixture,
                                  gconstpointer  data)
{
  g_autofree char *before = ui_dup_trial_text (tr_window_get_document (fixture->window));
  TrRecipeReview *review = read_text (fixture->window, harbour);

  click (review, GTK_TYPE_BUTTON, "Make a new trial");
  g_assert_null (find_review (fixture->window));
  g_assert_cmpuint (ui_count_windows (fixture->application), ==, 2);

  g_autofree char *after = ui_dup_trial_text (tr_window_get_document (fixture->window));
  GList *windows = gtk_application_get_windows (GTK_APPLICATION (fixture->application));
  TrWindow *made = windows->data == (gpointer) fixture->window ? windows->next->data : windows->data;

  g_assert_cmpstr (after, ==, before);
  g_assert_cmpuint (ui_get_trial (made)->doughs->len, ==, 1);
  g_assert_cmpstr (ui_get_trial (made)->title, ==, "Harbour rolls");
  g_assert_true (tr_document_is_modified (tr_window_get_document (made)));
}

static gboolean
has_more_lines (gpointer data)
{
  return tr_recipe_review_get_recipe (data) != NULL && tr_recipe_review_get_recipe (data)->lines->len == 7;
}

static void
test_editing_the_text_keeps_what_was_decided (UiFixture     *fixture,
                                              gconstpointer  data)
{
  TrRecipeReview *review = read_text (fixture->window, harbour);
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (ui_find_type (GTK_WIDGET (review), GTK_TYPE_TEXT_VIEW)));
  GtkTextIter where;

  click (review, GTK_TYPE_TOGGLE_BUTTON, "Butter, salted");
  ui_type (ui_find (GTK_WIDGET (review), GTK_TYPE_ENTRY, "Amount, line 6"), "310 g");
  ui_type (ui_find (GTK_WIDGET (review), GTK_TYPE_ENTRY, "Name"), "Rolls of mine");
  ui_type (ui_find (GTK_WIDGET (review), GTK_TYPE_ENTRY, "Pieces"), "12");
  gtk_text_buffer_get_iter_at_line (buffer, &where, 3);
  g_assert_true (gtk_text_buffer_insert_interactive (buffer, &where, "40 g sugar\n", -1, TRUE));
  /* What was read before it does not go on without it. */
  g_assert_false (is_enabled (review, "Add to this trial"));
  g_assert_true (ui_wait_until (has_more_lines, review, 5000));
  g_assert_true (is_enabled (review, "Add to this trial"));
  g_assert_cmpstr (get_line (review, 6)->ingredient, ==, "butter-salted");
  g_assert_cmpstr (get_line (review, 3)->amount, ==, "310 g");
  g_assert_cmpstr (tr_recipe_review_get_recipe (review)->title, ==, "Rolls of mine");
  g_assert_cmpint (tr_recipe_review_get_recipe (review)->pieces, ==, 12);

  /* In another recipe the same words are read afresh. */
  tr_recipe_review_read_text (review, "Other rolls\n\n500 g bread flour\n250 g butter\n");
  wait_for_review (fixture->window);
  g_assert_cmpstr (get_line (review, 1)->ingredient, ==, "butter-unsalted");
  g_assert_cmpstr (tr_recipe_review_get_recipe (review)->title, ==, "Other rolls");
}

static double
get_left (GtkWidget *widget)
{
  graphene_rect_t bounds;

  g_assert_true (gtk_widget_compute_bounds (widget, GTK_WIDGET (gtk_widget_get_root (widget)), &bounds));

  return (double) bounds.origin.x;
}

/* Read from the right, what stands first stands on the right. */
static void
test_from_right_to_left (UiFixture     *fixture,
                         gconstpointer  data)
{
  gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);

  TrRecipeReview *review = read_text (fixture->window, harbour);
  GtkWidget *row = find_row (review, "Line 4: 500 g bread flour, understood as Bread flour, 500 g");
  GtkWidget *amount = ui_find (row, GTK_TYPE_ENTRY, "Amount, line 4");
  GtkWidget *counts = ui_find (row, GTK_TYPE_CHECK_BUTTON, "Counts, line 4");

  g_assert_cmpfloat (get_left (gtk_widget_get_first_child (row)), >, get_left (amount));
  g_assert_cmpfloat (get_left (amount), >, get_left (counts));
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
}

/* Bad input *****************************************************************/

static void
test_every_refusal_is_a_sentence (UiFixture     *fixture,
                                  gconstpointer  data)
{
  g_autofree char *endless = g_strnfill (FIVE_MEGABYTES, 'x');
  const struct { const char *name, *text, *says; } cases[] = {
    { "prose", "The sea was calm that morning and nobody baked.\n", "No recipe was found" },
    { "a page without one", "<!DOCTYPE html><html><body><p>Opening hours</p></body></html>", "No recipe was found" },
    { "spaces", " \n\t\n ", NULL },
    { "too long", endless, NULL },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TrRecipeReview *review = read_text (fixture->window, cases[i].text);
      const char *status = tr_recipe_review_get_status (review);

      g_test_message ("%s: %s", cases[i].name, status);
      g_assert_nonnull (status);
      g_assert_true (g_str_has_suffix (status, "."));
      if (cases[i].says != NULL)
        g_assert_nonnull (strstr (status, cases[i].says));
      g_assert_null (tr_recipe_review_get_recipe (review));
      g_assert_false (is_enabled (review, "Add to this trial"));
      g_assert_false (is_enabled (review, "Make a new trial"));
    }

  /* And the next one is read as if nothing had been. */
  g_assert_cmpuint (tr_recipe_review_get_recipe (read_text (fixture->window, harbour))->lines->len, ==, 6);
}

/* Dropping ******************************************************************/

static GFile *
write_file (const char *name,
            const char *bytes,
            gssize      length)
{
  g_autofree char *folder = g_dir_make_tmp ("tourier-recipe-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autoptr (GError) error = NULL;

  g_file_set_contents (path, bytes, length, &error);
  g_assert_no_error (error);

  return g_file_new_for_path (path);
}

static void
drop_value (GtkWidget *widget,
            GValue    *value)
{
  gboolean handled = FALSE;

  g_signal_emit_by_name (ui_get_drop_target (widget), "drop", value, 10.0, 10.0, &handled);
  g_assert_true (handled);
}

static void
drop_file (GtkWidget *widget,
           GFile     *file)
{
  g_autoptr (GSList) list = g_slist_prepend (NULL, file);
  g_auto (GValue) value = G_VALUE_INIT;

  g_value_init (&value, GDK_TYPE_FILE_LIST);
  g_value_set_boxed (&value, list);
  drop_value (widget, &value);
}

static const char two_recipes[] =
  "<html><head><title>Quay kitchen</title><script type=\"application/ld+json\">"
  "{\"@context\":\"https://schema.org\",\"@graph\":["
  "{\"@type\":\"Recipe\",\"name\":\"Low tide buns\",\"recipeYield\":\"8\",\"recipeIngredient\":[\"300 g bread flour\",\"180 g water\"]},"
  "{\"@type\":[\"Recipe\"],\"name\":\"High tide buns\",\"recipeIngredient\":[\"700 g bread flour\",\"400 g water\",\"9 g salt\"]}"
  "]}</script></head><body><p>Two recipes</p></body></html>";

static gboolean
is_other (gpointer data)
{
  TrRecipeReview *review = data;

  return !tr_recipe_review_is_reading (review) && tr_recipe_review_get_recipe (review) != NULL
         && g_str_equal (tr_recipe_review_get_recipe (review)->title, "High tide buns");
}

static void
test_dropped_page_offers_its_recipes (UiFixture     *fixture,
                                      gconstpointer  data)
{
  g_autoptr (GFile) file = write_file ("page.bin", two_recipes, -1);
  TrRecipeReview *review;
  GtkWidget *which;

  drop_file (GTK_WIDGET (fixture->window), file);
  review = wait_for_review (fixture->window);
  g_assert_cmpstr (tr_recipe_review_get_recipe (review)->title, ==, "Low tide buns");
  g_assert_cmpint (tr_recipe_review_get_recipe (review)->pieces, ==, 8);

  which = ui_find (GTK_WIDGET (review), GTK_TYPE_DROP_DOWN, "Which recipe");
  g_assert_nonnull (which);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (which), 1);
  g_assert_true (ui_wait_until (is_other, review, 5000));
  ui_settle ();
  g_assert_cmpuint (tr_recipe_review_get_recipe (review)->lines->len, ==, 3);
  g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (which)), ==, 1);
}

static void
test_dropped_text_is_read (UiFixture     *fixture,
                           gconstpointer  data)
{
  g_auto (GValue) value = G_VALUE_INIT;
  TrRecipeReview *review;

  g_value_init (&value, G_TYPE_STRING);
  g_value_set_string (&value, harbour);
  drop_value (GTK_WIDGET (fixture->window), &value);
  review = wait_for_review (fixture->window);
  g_assert_cmpuint (tr_recipe_review_get_recipe (review)->lines->len, ==, 6);

  /* What is being looked through is not replaced by the next. */
  drop_value (GTK_WIDGET (fixture->window), &value);
  ui_settle ();
  g_assert_cmpuint (tr_recipe_review_get_recipe (review)->lines->len, ==, 6);
  gtk_window_destroy (GTK_WINDOW (review));
  g_assert_nonnull (find_review (fixture->window));
}

static void
test_dropped_trial_opens_as_ever (UiFixture     *fixture,
                                  gconstpointer  data)
{
  g_autofree char *path = ui_write_demo ();
  g_autofree char *text = ui_read_file (path);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GFile) renamed = write_file ("buns.old", text, -1);

  drop_file (GTK_WIDGET (fixture->window), file);
  g_assert_cmpuint (ui_count_windows (fixture->application), ==, 2);
  drop_file (GTK_WIDGET (fixture->window), renamed);
  g_assert_cmpuint (ui_count_windows (fixture->application), ==, 3);
  g_assert_null (find_review (fixture->window));
}

static void
test_files_that_cannot_be_read_say_so (UiFixture     *fixture,
                                       gconstpointer  data)
{
  static const char junk[] = "\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\1\0\xff\xfe\xfd";
  g_autoptr (GFile) binary = write_file ("picture.txt", junk, sizeof junk - 1);
  g_autoptr (GFile) empty = write_file ("empty.txt", "", 0);
  g_autoptr (GFile) folder = g_file_get_parent (empty);
  g_autoptr (GFile) gone = g_file_get_child (folder, "gone.txt");
  GFile *files[] = { binary, empty, folder, gone };

  for (guint i = 0; i < G_N_ELEMENTS (files); i++)
    {
      drop_file (GTK_WIDGET (fixture->window), files[i]);

      TrRecipeReview *review = wait_for_review (fixture->window);

      g_test_message ("%s", tr_recipe_review_get_status (review));
      g_assert_nonnull (tr_recipe_review_get_status (review));
      g_assert_null (tr_recipe_review_get_recipe (review));
      g_assert_false (is_enabled (review, "Add to this trial"));
      gtk_window_destroy (GTK_WINDOW (review));
    }
}

/* Long texts and the main loop **********************************************/

typedef struct { gint64 last, longest; } Pulse;

static gboolean
pulse_cb (gpointer data)
{
  Pulse *pulse = data;
  gint64 now = g_get_monotonic_time ();

  if (pulse->last > 0)
    pulse->longest = MAX (pulse->longest, now - pulse->last);
  pulse->last = now;

  return G_SOURCE_CONTINUE;
}

static char *
new_long_text (gsize size)
{
  GString *text = g_string_new ("Long rolls\n\n");

  while (text->len < size)
    g_string_append (text, "500 g bread flour, from the mill across the water, twice sifted\n");

  return g_string_free (text, FALSE);
}

static void
test_five_megabytes_do_not_hold_the_window (UiFixture     *fixture,
                                            gconstpointer  data)
{
  g_autofree char *text = new_long_text (FIVE_MEGABYTES);
  GtkTextBuffer *buffer;
  GtkWidget *view;
  Pulse pulse = { 0 };
  guint source;

  ui_act (fixture->window, "win.read-recipe");
  view = ui_find_type (GTK_WIDGET (find_review (fixture->window)), GTK_TYPE_TEXT_VIEW);
  buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (view));
  ui_frames (view, 2);

  /* As a paste into the box does it. */
  source = g_timeout_add (5, pulse_cb, &pulse);
  g_assert_true (gtk_text_buffer_insert_interactive_at_cursor (buffer, text, -1, TRUE));
  ui_settle ();
  wait_for_review (fixture->window);
  g_source_remove (source);
  g_test_message ("longest wait %.0f ms", (double) pulse.longest / 1000);
  g_assert_cmpint (pulse.longest, <, 2 * G_USEC_PER_SEC);
  /* Little is shown. */
  g_assert_cmpint (gtk_text_buffer_get_char_count (buffer), <, 25000);
}

static void
test_hundreds_of_lines_are_not_lost (UiFixture     *fixture,
                                     gconstpointer  data)
{
  g_autofree char *text = new_long_text (TR_MAX_LINES * 100);
  TrRecipeReview *review = read_text (fixture->window, text);
  guint n_lines = tr_recipe_review_get_recipe (review)->lines->len;
  guint n_doughs = ui_get_trial (fixture->window)->doughs->len;

  g_assert_cmpuint (n_lines, ==, TR_MAX_LINES);
  g_assert_cmpuint (ui_count_type (GTK_WIDGET (review), TR_TYPE_RECIPE_LINE_ROW), ==, n_lines);

  /* What is more than a dough can hold goes with its notes. */
  click (review, GTK_TYPE_BUTTON, "Add to this trial");
  g_assert_cmpuint (ui_get_trial (fixture->window)->doughs->len, ==, n_doughs + 1);
  g_assert_nonnull (strstr (tr_trial_get_dough (ui_get_trial (fixture->window), n_doughs)->notes, "500 g bread flour"));
}

static void
test_the_newest_reading_counts (UiFixture     *fixture,
                                gconstpointer  data)
{
  g_autofree char *slow = new_long_text (900 * 1024);
  TrRecipeReview *review;

  ui_act (fixture->window, "win.read-recipe");
  review = find_review (fixture->window);
  tr_recipe_review_read_text (review, slow);
  tr_recipe_review_read_text (review, harbour);
  wait_for_review (fixture->window);
  for (guint i = 0; i < 20; i++)
    ui_frames (GTK_WIDGET (review), 2);
  g_assert_cmpuint (tr_recipe_review_get_recipe (review)->lines->len, ==, 6);
}

static void
test_closing_while_reading_is_clean (UiFixture     *fixture,
                                     gconstpointer  data)
{
  g_autofree char *slow = new_long_text (900 * 1024);
  gpointer review;

  ui_act (fixture->window, "win.read-recipe");
  review = find_review (fixture->window);
  tr_recipe_review_read_text (review, slow);
  g_object_add_weak_pointer (review, &review);
  gtk_window_close (review);
  ui_settle ();
  g_assert_null (review);
  for (guint i = 0; i < 10; i++)
    ui_frames (GTK_WIDGET (fixture->window), 2);
}

int
main (int   argc,
      char *argv[])
{
  if (!ui_init (&argc, &argv))
    return 0;

  UI_ADD ("/review/pasted-looked-through-added-undone", test_pasted_looked_through_added_undone);
  UI_ADD ("/review/typed-by-hand", test_typed_by_hand);
  UI_ADD ("/review/a-new-trial-is-unsaved-work", test_a_new_trial_is_unsaved_work);
  UI_ADD ("/review/editing-the-text-keeps-what-was-decided", test_editing_the_text_keeps_what_was_decided);
  UI_ADD ("/review/from-right-to-left", test_from_right_to_left);
  UI_ADD ("/review/every-refusal-is-a-sentence", test_every_refusal_is_a_sentence);
  UI_ADD ("/review/drop/page-offers-its-recipes", test_dropped_page_offers_its_recipes);
  UI_ADD ("/review/drop/text-is-read", test_dropped_text_is_read);
  UI_ADD ("/review/drop/trial-opens-as-ever", test_dropped_trial_opens_as_ever);
  UI_ADD ("/review/drop/files-that-cannot-be-read-say-so", test_files_that_cannot_be_read_say_so);
  UI_ADD ("/review/long/five-megabytes-do-not-hold-the-window", test_five_megabytes_do_not_hold_the_window);
  UI_ADD ("/review/long/hundreds-of-lines-are-not-lost", test_hundreds_of_lines_are_not_lost);
  UI_ADD ("/review/long/the-newest-reading-counts", test_the_newest_reading_counts);
  UI_ADD ("/review/long/closing-while-reading-is-clean", test_closing_while_reading_is_clean);

  return ui_run ();
}
