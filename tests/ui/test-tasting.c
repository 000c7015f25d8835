/* test-tasting.c: samples get codes, tasters score them as they are read aloud, the result stays covered
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Marks are invented.
 */

#include "config.h"

#include "calc/scores.h"
#include "page-fixture.h"
#include "window/score-cell.h"
#include "window/tasting-result.h"

static GtkWidget *
find (PageFixture *fixture,
      GType        type,
      const char  *label)
{
  GtkWidget *widget = ui_find (GTK_WIDGET (fixture->page), type, label);

  if (widget == NULL)
    g_error ("there is no %s", label);

  return widget;
}

static void
press (PageFixture *fixture,
       const char  *label)
{
  g_signal_emit_by_name (find (fixture, GTK_TYPE_BUTTON, label), "clicked");
  ui_settle ();
}

static void
start (PageFixture *fixture,
       guint        n_tasters)
{
  page_set_up (fixture, tr_tasting_page_new, "d1");
  press (fixture, "Give codes to all");
  for (guint i = 0; i < n_tasters; i++)
    press (fixture, "Add a taster");
  ui_frames (GTK_WIDGET (fixture->page), 2);
}

/* Into whatever cell has the focus, as a key would. */
static void
type_here (PageFixture *fixture,
           const char  *text)
{
  GtkWidget *entry = gtk_widget_get_ancestor (page_get_focus (fixture), GTK_TYPE_ENTRY);

  g_assert_nonnull (entry);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  ui_settle ();
}

static GtkWidget *
get_cell (PageFixture *fixture,
          const char  *column,
          guint        sample)
{
  const TrTasting *tasting = page_get_trial (fixture)->tasting;
  const TrOrder *order = g_ptr_array_index (tasting->orders, 0);
  g_autofree char *label = g_strdup_printf ("%s of %03d", column, tr_tasting_get_code (tasting, order->doughs[sample]));

  return find (fixture, GTK_TYPE_ENTRY, label);
}

static void
test_codes_and_orders (void)
{
  PageFixture fixture;
  const TrTasting *tasting;
  guint n;

  start (&fixture, 3);
  tasting = page_get_trial (&fixture)->tasting;
  n = page_get_trial (&fixture)->doughs->len;
  g_assert_cmpuint (tasting->codes->len, ==, n);
  g_assert_cmpuint (tasting->tasters->len, ==, 3);
  g_assert_cmpuint (tasting->orders->len, ==, 3);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *code = g_strdup_printf ("%03d", ((const TrCode *) g_ptr_array_index (tasting->codes, i))->code);

      /* The key is covered: no name beside a code. */
      g_assert_false (ui_has_label (GTK_WIDGET (fixture.page), code));
    }
  tr_document_undo (fixture.document);
  g_assert_cmpuint (page_get_trial (&fixture)->tasting->tasters->len, ==, 2);
  page_tear_down (&fixture);
}

/* "7 6 8 0 +1 -2": nothing else is pressed. */
static void
test_read_aloud (void)
{
  static const char *const said[] = { "7", "6", "8", "0", "+1", "-2" };
  PageFixture fixture;
  const TrScore *score;

  start (&fixture, 1);
  gtk_widget_grab_focus (get_cell (&fixture, "Look", 0));
  for (guint i = 0; i < G_N_ELEMENTS (said); i++)
    type_here (&fixture, said[i]);
  g_assert_cmpuint (page_get_trial (&fixture)->tasting->scores->len, ==, 1);
  score = g_ptr_array_index (page_get_trial (&fixture)->tasting->scores, 0);
  g_assert_cmpint (score->look, ==, 7);
  g_assert_cmpint (score->layers, ==, 6);
  g_assert_cmpint (score->eating, ==, 8);
  g_assert_cmpint (score->salt, ==, 0);
  g_assert_cmpint (score->sweet, ==, 1);
  g_assert_cmpint (score->bake, ==, -2);

  /* On to the next sample. */
  type_here (&fixture, "5");
  g_assert_cmpuint (page_get_trial (&fixture)->tasting->scores->len, ==, 2);

  tr_document_undo (fixture.document);
  g_assert_cmpuint (page_get_trial (&fixture)->tasting->scores->len, ==, 1);
  page_tear_down (&fixture);
}

static void
test_refused (void)
{
  PageFixture fixture;

  start (&fixture, 1);
  gtk_widget_grab_focus (get_cell (&fixture, "Look", 0));
  type_here (&fixture, "0");
  g_assert_true (ui_says (GTK_WIDGET (fixture.page), "1 to 9 is expected"));
  g_assert_cmpuint (page_get_trial (&fixture)->tasting->scores->len, ==, 0);
  type_here (&fixture, "9");
  g_assert_false (ui_says (GTK_WIDGET (fixture.page), "1 to 9 is expected"));

  gtk_widget_grab_focus (get_cell (&fixture, "Salt", 0));
  type_here (&fixture, "+");
  type_here (&fixture, "+3");
  g_assert_true (ui_says (GTK_WIDGET (fixture.page), "no balance"));

  /* Emptied, it is gone. */
  gtk_widget_grab_focus (get_cell (&fixture, "Look", 0));
  type_here (&fixture, "");
  g_assert_cmpuint (page_get_trial (&fixture)->tasting->scores->len, ==, 0);
  page_tear_down (&fixture);
}

static void
test_prediction_is_locked (void)
{
  PageFixture fixture;
  g_autoptr (GError) error = NULL;
  TrTrial *draft;

  start (&fixture, 1);
  draft = tr_document_draft (fixture.document);
  g_clear_pointer (&draft->prediction, tr_prediction_free);
  draft->prediction = tr_prediction_new ();
  tr_document_commit (fixture.document, draft, "predict", NULL, "/prediction", &error);
  g_assert_no_error (error);
  g_assert_null (page_get_trial (&fixture)->prediction->locked_at);
  gtk_widget_grab_focus (get_cell (&fixture, "Look", 0));
  type_here (&fixture, "6");
  g_assert_nonnull (page_get_trial (&fixture)->prediction->locked_at);
  page_tear_down (&fixture);
}

static gboolean
is_done (gpointer data)
{
  return tr_tasting_result_is_done (data);
}

static void
score_all (PageFixture *fixture)
{
  guint n = page_get_trial (fixture)->doughs->len;

  for (guint taster = 0; taster < page_get_trial (fixture)->tasting->tasters->len; taster++)
    {
      TrTrial *draft = tr_document_draft (fixture->document);
      const TrTaster *who = g_ptr_array_index (draft->tasting->tasters, taster);
      g_autoptr (GError) error = NULL;

      for (guint i = 0; i < n; i++)
        {
          TrScore *score = tr_tasting_need_score (draft->tasting, who->id, tr_trial_get_dough (draft, i)->id);

          score->look = score->layers = score->eating = 1 + (int) ((i + (taster == 2)) % 9);
        }
      tr_document_commit (fixture->document, draft, "score", NULL, "/tasting/scores", &error);
      g_assert_no_error (error);
    }
}

static void
test_result_is_covered (void)
{
  PageFixture fixture;
  GtkWidget *reveal, *result;

  start (&fixture, 3);
  score_all (&fixture);
  ui_settle ();
  result = ui_find_type (GTK_WIDGET (fixture.page), TR_TYPE_TASTING_RESULT);
  g_assert_false (gtk_widget_get_mapped (result));

  reveal = find (&fixture, GTK_TYPE_TOGGLE_BUTTON, "Show the result");
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (reveal), TRUE);
  g_assert_true (ui_wait_until (is_done, result, 20000));
  ui_settle ();
  g_assert_true (gtk_widget_get_mapped (result));
  g_assert_true (ui_says (result, tr_trial_get_dough (page_get_trial (&fixture), page_get_trial (&fixture)->doughs->len - 1)->name));
  g_assert_true (ui_says (result, "on average"));

  /* Left and come back to, it is covered again. */
  gtk_widget_set_visible (GTK_WIDGET (fixture.page), FALSE);
  gtk_widget_set_visible (GTK_WIDGET (fixture.page), TRUE);
  ui_settle ();
  g_assert_false (gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (reveal)));
  page_tear_down (&fixture);
}

/* With a result being worked out the page goes away. */
static void
test_gone_while_working (void)
{
  PageFixture fixture;

  start (&fixture, 4);
  score_all (&fixture);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (find (&fixture, GTK_TYPE_TOGGLE_BUTTON, "Show the result")), TRUE);
  page_tear_down (&fixture);
  ui_settle ();
}

static void
test_faults_and_tasters (void)
{
  PageFixture fixture;
  GtkWidget *cell, *menu, *tick;
  g_autofree char *name = NULL;
  const TrTasting *tasting;

  start (&fixture, 2);
  tasting = page_get_trial (&fixture)->tasting;
  name = g_strdup_printf ("Faults of %03d: none", tr_tasting_get_code (tasting, ((const TrOrder *) g_ptr_array_index (tasting->orders, 0))->doughs[0]));
  menu = find (&fixture, GTK_TYPE_MENU_BUTTON, name);
  gtk_menu_button_popup (GTK_MENU_BUTTON (menu));
  ui_frames (GTK_WIDGET (fixture.page), 2);
  tick = gtk_widget_get_first_child (gtk_popover_get_child (gtk_menu_button_get_popover (GTK_MENU_BUTTON (menu))));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (tick), TRUE);
  ui_settle ();
  g_assert_cmpuint (page_get_trial (&fixture)->tasting->scores->len, ==, 1);
  g_assert_cmpstr (((const TrScore *) g_ptr_array_index (page_get_trial (&fixture)->tasting->scores, 0))->faults[0], ==, "dense");
  gtk_menu_button_popdown (GTK_MENU_BUTTON (menu));

  press (&fixture, "Remove the taster A");
  g_assert_cmpuint (page_get_trial (&fixture)->tasting->tasters->len, ==, 1);
  g_assert_cmpuint (page_get_trial (&fixture)->tasting->scores->len, ==, 0);
  tr_document_undo (fixture.document);
  g_assert_cmpuint (page_get_trial (&fixture)->tasting->scores->len, ==, 1);
  cell = get_cell (&fixture, "Look", 0);
  g_assert_nonnull (cell);
  page_tear_down (&fixture);
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  g_test_add_func ("/tasting/codes-and-orders", test_codes_and_orders);
  g_test_add_func ("/tasting/read-aloud", test_read_aloud);
  g_test_add_func ("/tasting/refused", test_refused);
  g_test_add_func ("/tasting/prediction-is-locked", test_prediction_is_locked);
  g_test_add_func ("/tasting/result-is-covered", test_result_is_covered);
  g_test_add_func ("/tasting/gone-while-working", test_gone_while_working);
  g_test_add_func ("/tasting/faults-and-tasters", test_faults_and_tasters);

  return ui_run ();
}
