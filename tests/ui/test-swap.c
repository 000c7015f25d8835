/* test-swap.c: an ingredient swapped, a finding mended, and both taken back
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Real events by the display's server, in the real window on the demo, whose
 * first dough is salted and buttered anew for it. What came of them is read
 * from the document and from the screen.
 */

#include "config.h"

#include <string.h>

#include "hand.h"
#include "calc/formula.h"
#include "window/findings.h"
#include "window/line-row.h"
#include "window/swap-popover.h"
#include "window/window.h"

#define MAX_TRIES 20

typedef struct
{
  UiFixture ui;
  TrDocument *document;
  guint salt, roll_in;           /* indices of lines */
  char *before;                  /* after the dough was made ready */
} Fixture;

static const TrDough *
get_dough (Fixture *fixture)
{
  return tr_trial_get_dough (tr_document_get_trial (fixture->document), 0);
}

static const TrDoughFigures *
get_figures (Fixture *fixture)
{
  return tr_figures_get_dough (tr_document_get_figures (fixture->document), 0);
}

static const TrLine *
get_line (Fixture *fixture,
          guint    index)
{
  return tr_dough_get_line (get_dough (fixture), index);
}

static guint
find_line (Fixture    *fixture,
           TrStage     stage,
           const char *ingredient)
{
  for (guint i = 0; i < get_dough (fixture)->lines->len; i++)
    if (get_line (fixture, i)->stage == stage && g_strcmp0 (get_line (fixture, i)->ingredient, ingredient) == 0)
      return i;

  g_assert_not_reached ();
}

/* Salt far over its band, an unsalted butter of 300 g, and water to spare. */
static void
make_ready (Fixture *fixture)
{
  g_autoptr (GError) error = NULL;
  TrTrial *draft = tr_document_draft (fixture->document);
  TrDough *dough = tr_trial_own_dough (draft, 0);

  fixture->salt = find_line (fixture, TR_STAGE_DOUGH, "salt-quay");
  fixture->roll_in = find_line (fixture, TR_STAGE_ROLL_IN, "butter-dune");
  tr_set_text (&tr_dough_get_line (dough, fixture->salt)->amount, "20 g");
  tr_set_text (&tr_dough_get_line (dough, fixture->roll_in)->ingredient, "butter-unsalted");
  tr_set_text (&tr_dough_get_line (dough, fixture->roll_in)->amount, "300 g");
  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "water", "60 g"));
  g_assert_true (tr_document_commit (fixture->document, draft, "make ready", NULL, "/doughs/0/lines", &error));
  g_assert_no_error (error);
  tr_document_seal (fixture->document);
}

static void
set_up (Fixture       *fixture,
        gconstpointer  data)
{
  ui_set_up (&fixture->ui, data);
  fixture->document = tr_window_get_document (fixture->ui.window);
  make_ready (fixture);
  fixture->before = ui_dup_trial_text (fixture->document);
  hand_focus (GTK_WINDOW (fixture->ui.window));
  ui_frames (GTK_WIDGET (fixture->ui.window), 3);
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data)
{
  g_free (fixture->before);
  ui_tear_down (&fixture->ui, data);
}

/* Mapped, and with that text on it. */
static GtkWidget *
find_button (GtkWidget  *root,
             const char *text)
{
  if (GTK_IS_BUTTON (root) && gtk_widget_get_mapped (root) && g_strcmp0 (gtk_button_get_label (GTK_BUTTON (root)), text) == 0)
    return root;

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_button (child, text);

      if (found != NULL)
        return found;
    }

  return NULL;
}

static gboolean
is_under_pointer (gpointer data)
{
  return (gtk_widget_get_state_flags (data) & GTK_STATE_FLAG_PRELIGHT) != 0;
}

/* It may be on its way to where it will stand, so the press waits until the pointer is felt there. */
static void
click (GtkWidget *widget)
{
  g_assert_nonnull (widget);
  for (guint tries = 0; tries < MAX_TRIES; tries++)
    {
      ui_frames (widget, 3);
      hand_move (widget, gtk_widget_get_width (widget) / 2.0 + tries % 2, gtk_widget_get_height (widget) / 2.0);
      if (ui_wait_until (is_under_pointer, widget, 500))
        break;
    }
  g_assert_true (is_under_pointer (widget));
  hand_press_button (widget, "1");
}

static void
undo_in_the_notice (Fixture *fixture)
{
  click (find_button (GTK_WIDGET (fixture->ui.window), "Undo"));

  g_autofree char *now = ui_dup_trial_text (fixture->document);

  g_assert_true (g_str_equal (now, fixture->before));
  g_assert_null (tr_window_get_notice (fixture->ui.window, "edit"));
  g_assert_cmpstr (tr_document_get_undo_label (fixture->document), ==, "make ready");
}

/* Repairs */

static GtkWidget *
show_findings (Fixture *fixture)
{
  ui_act (fixture->ui.window, "win.show-findings");
  ui_frames (GTK_WIDGET (fixture->ui.window), 3);

  return ui_find_type (GTK_WIDGET (fixture->ui.window), TR_TYPE_FINDINGS);
}

static void
test_mended (Fixture       *fixture,
             gconstpointer  data)
{
  const char *text = "Bring salt to 2\u00a0%";
  GtkWidget *findings = show_findings (fixture);

  g_assert_cmpfloat (get_figures (fixture)->formula.salt_percent, >, 3.5);
  click (find_button (findings, text));

  g_assert_cmpfloat_with_epsilon (get_figures (fixture)->formula.salt_percent, 2, 0.011);
  g_assert_cmpstr (tr_document_get_undo_label (fixture->document), ==, text);
  g_assert_null (find_button (findings, text));

  const char *notice = tr_window_get_notice (fixture->ui.window, "edit");
  g_assert_nonnull (notice);
  g_assert_true (g_str_has_prefix (notice, "Fine salt went from 20 g to "));
  g_assert_nonnull (strstr (notice, get_line (fixture, fixture->salt)->amount));
  g_assert_true (g_str_has_suffix (notice, "Effective salt is now 2\u00a0% of the flour."));

  ui_frames (GTK_WIDGET (fixture->ui.window), 3);
  undo_in_the_notice (fixture);
  g_assert_nonnull (find_button (findings, text));
}

/* What can be taken back there is the last thing done, so another edit takes the notice away. */
static void
test_notice_goes (Fixture       *fixture,
                  gconstpointer  data)
{
  click (find_button (show_findings (fixture), "Bring salt to 2\u00a0%"));
  g_assert_nonnull (tr_window_get_notice (fixture->ui.window, "edit"));
  ui_edit_pieces (fixture->ui.window, 30);
  g_assert_null (tr_window_get_notice (fixture->ui.window, "edit"));
}

/* Only what a ratio mends has a button, and the row still leads to its field. */
static void
test_other_findings (Fixture       *fixture,
                     gconstpointer  data)
{
  GtkWidget *findings = show_findings (fixture);
  GtkWidget *list = ui_find_type (findings, GTK_TYPE_LIST_BOX);
  guint n_rows = 0, n_buttons = 0;

  for (GtkWidget *row = gtk_widget_get_first_child (list); row != NULL; row = gtk_widget_get_next_sibling (row))
    if (GTK_IS_LIST_BOX_ROW (row))
      {
        GtkWidget *button = ui_find_type (row, GTK_TYPE_BUTTON);

        n_rows++;
        n_buttons += gtk_widget_get_mapped (button);
      }
  g_assert_cmpuint (n_rows, >, n_buttons);
  g_assert_cmpuint (n_buttons, >, 0);

  hand_click (GTK_WIDGET (gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), 0)), 60, 12);
  ui_frames (GTK_WIDGET (fixture->ui.window), 3);

  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (fixture->ui.window));
  GtkWidget *row = focus != NULL ? gtk_widget_get_ancestor (focus, TR_TYPE_LINE_ROW) : NULL;
  g_assert_nonnull (row);
  g_assert_cmpuint (tr_line_row_get_item (TR_LINE_ROW (row)), ==, fixture->salt);
}

/* Swaps */

static GtkWidget *
find_row (GtkWidget *root,
          guint      item)
{
  if (TR_IS_LINE_ROW (root) && tr_line_row_get_item (TR_LINE_ROW (root)) == item)
    return root;

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_row (child, item);

      if (found != NULL)
        return found;
    }

  return NULL;
}

static gboolean
is_mapped (gpointer data)
{
  GtkWidget *popover = ui_find_type (data, TR_TYPE_SWAP_POPOVER);

  return popover != NULL && gtk_widget_get_mapped (popover) && gtk_widget_get_width (popover) > 0;
}

static gboolean
is_gone (gpointer data)
{
  return ui_find_type (data, TR_TYPE_SWAP_POPOVER) == NULL;
}

/* Mapped, and saying that. */
static GtkWidget *
find_label (GtkWidget  *root,
            const char *text)
{
  if (GTK_IS_LABEL (root) && gtk_widget_get_mapped (root) && g_str_equal (gtk_label_get_text (GTK_LABEL (root)), text))
    return root;

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_label (child, text);

      if (found != NULL)
        return found;
    }

  return NULL;
}

static gboolean
has_menu (gpointer data)
{
  GtkWidget *item = find_label (data, "Swap for…");

  return item != NULL && gtk_widget_get_width (item) > 0;
}

/* By the menu of the line. */
static TrSwapPopover *
open_swap (Fixture *fixture,
           guint    line)
{
  GtkWidget *window = GTK_WIDGET (fixture->ui.window), *row = find_row (window, line);

  g_assert_nonnull (row);
  tr_line_row_focus (TR_LINE_ROW (row), "amount");
  ui_frames (window, 5);
  /* A press while the menu still finds its place closes it: as anybody would, again. */
  for (guint tries = 0; tries < MAX_TRIES && !is_mapped (window); tries++)
    {
      if (!has_menu (row))
        click (ui_find_type (row, GTK_TYPE_MENU_BUTTON));
      if (!ui_wait_until (has_menu, row, 2000))
        continue;
      click (find_label (row, "Swap for…"));
      ui_wait_until (is_mapped, window, 2000);
    }
  g_assert_true (is_mapped (window));
  ui_frames (window, 5);

  return TR_SWAP_POPOVER (ui_find_type (window, TR_TYPE_SWAP_POPOVER));
}

/* Sodium × 2.5 of the built-in butters: 300 g of (643 − 11) mg are 4.74 g of salt. */
static void
test_swapped (Fixture       *fixture,
              gconstpointer  data)
{
  GtkWidget *window = GTK_WIDGET (fixture->ui.window);
  double salt = get_figures (fixture)->formula.salt_percent, flour_g = get_figures (fixture)->formula.written_flour_g;
  TrSwapPopover *popover = open_swap (fixture, fixture->roll_in);
  g_autofree char *untouched = ui_dup_trial_text (fixture->document);

  click (ui_find (GTK_WIDGET (popover), GTK_TYPE_LIST_BOX_ROW, "Butter, salted"));
  g_assert_true (g_str_has_prefix (tr_swap_popover_get_preview (popover), "300 g Butter, unsalted becomes 300 g Butter, salted."));
  g_assert_nonnull (strstr (tr_swap_popover_get_preview (popover), "Fine salt goes from 20 g to 15.3 g."));
  g_assert_true (g_str_equal (untouched, fixture->before));

  /* Not held it is only said; and held again. */
  click (tr_swap_popover_get_kept (popover, TR_KEPT_SALT));
  g_assert_null (strstr (tr_swap_popover_get_preview (popover), "Fine salt"));
  g_assert_nonnull (strstr (tr_swap_popover_get_preview (popover), "Effective salt is 4.7\u00a0g more than before."));
  click (tr_swap_popover_get_kept (popover, TR_KEPT_SALT));

  /* The button stays under the pointer: the page is not scrolled after the focus. */
  click (find_button (GTK_WIDGET (popover), "Swap"));
  g_assert_true (ui_wait_until (is_gone, window, 5000));
  g_assert_cmpstr (get_line (fixture, fixture->roll_in)->ingredient, ==, "butter-salted");
  g_assert_cmpstr (get_line (fixture, fixture->roll_in)->amount, ==, "300 g");
  g_assert_cmpfloat_with_epsilon (get_figures (fixture)->formula.salt_percent, salt, 0.015);
  g_assert_cmpfloat_with_epsilon (tr_formula_get_line (&get_figures (fixture)->formula, fixture->salt)->written_grams,
                                  20 - 4.74, 0.0001 * flour_g);
  g_assert_cmpstr (tr_document_get_undo_label (fixture->document), ==, "swap Butter, unsalted for Butter, salted");
  g_assert_true (g_str_has_prefix (tr_window_get_notice (fixture->ui.window, "edit"),
                                   "300 g Butter, unsalted became 300 g Butter, salted."));

  ui_frames (window, 3);
  undo_in_the_notice (fixture);
}

/* By keys alone: the list has the focus, down the list, Return to the button, Return. */
static void
test_by_keys (Fixture       *fixture,
              gconstpointer  data)
{
  open_swap (fixture, fixture->roll_in);
  hand_key ("Down");
  hand_key ("Return");
  hand_key ("Return");
  g_assert_true (ui_wait_until (is_gone, fixture->ui.window, 5000));
  g_assert_cmpstr (get_line (fixture, fixture->roll_in)->ingredient, !=, "butter-unsalted");
  g_assert_true (g_str_has_prefix (tr_document_get_undo_label (fixture->document), "swap Butter, unsalted for "));
}

static void
test_escape (Fixture       *fixture,
             gconstpointer  data)
{
  open_swap (fixture, fixture->roll_in);
  hand_key ("Down");
  hand_key ("Escape");
  g_assert_true (ui_wait_until (is_gone, fixture->ui.window, 5000));

  g_autofree char *now = ui_dup_trial_text (fixture->document);
  g_assert_true (g_str_equal (now, fixture->before));
}

static gboolean
can_swap (gpointer data)
{
  return gtk_widget_is_sensitive (find_button (data, "Swap"));
}

/* Salt that is not there cannot go: a sentence, and nothing to press. */
static void
test_refused (Fixture       *fixture,
              gconstpointer  data)
{
  TrTrial *draft = tr_document_draft (fixture->document);

  tr_set_text (&tr_dough_get_line (tr_trial_own_dough (draft, 0), fixture->salt)->amount, "3 g");
  g_assert_true (tr_document_commit (fixture->document, draft, "less salt", NULL, "/doughs/0/lines", NULL));

  TrSwapPopover *popover = open_swap (fixture, fixture->roll_in);
  tr_swap_popover_choose (popover, "butter-salted");
  g_assert_true (g_str_has_prefix (tr_swap_popover_get_preview (popover), "There is too little Fine salt to keep the rest as it is (effective salt): 4.7"));
  g_assert_false (gtk_widget_is_sensitive (find_button (GTK_WIDGET (popover), "Swap")));
  click (tr_swap_popover_get_kept (popover, TR_KEPT_SALT));
  g_assert_true (ui_wait_until (can_swap, popover, 5000));
  hand_key ("Escape");
  g_assert_true (ui_wait_until (is_gone, fixture->ui.window, 5000));
}

int
main (int   argc,
      char *argv[])
{
  if (!ui_init (&argc, &argv))
    return 0;
#define ADD(path, test) g_test_add ("/ui/" path, Fixture, NULL, set_up, test, tear_down)
  if (hand_is_there ())
    {
      ADD ("repair/one-click-says-what-it-did-and-is-undone", test_mended);
      ADD ("repair/the-notice-goes-with-the-next-edit", test_notice_goes);
      ADD ("repair/only-what-a-ratio-mends", test_other_findings);
      ADD ("swap/seen-before-it-is-done", test_swapped);
      ADD ("swap/by-keys-alone", test_by_keys);
      ADD ("swap/escape-leaves-all-as-it-is", test_escape);
      ADD ("swap/what-cannot-be-held-is-said", test_refused);
    }

  return ui_run ();
}
