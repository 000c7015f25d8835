/* screens.c: every page of the real window, in one way of seeing it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   screens VARIANT [FOLDER]
 *
 * Writes FOLDER/VARIANT-PAGE.png for people to look at, and holds each page to
 * what a program can see: nothing warned, nothing lies outside what shows it,
 * no words are cut short, the window fits. Without a FOLDER nothing is kept.
 */

#include "config.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <stdio.h>
#include <string.h>

#include "window/comparison-table.h"
#include "window/learn.h"
#include "window/picture-view.h"
#include "window/print-preview.h"
#include "window/ratio-plane.h"
#include "window/recipe-review.h"
#include "window/section.h"
#include "window/sequence-finder.h"
#include "window/tasting-result.h"

#include "../ui/support.h"
#include "seen.h"
#include "tasted.h"

typedef struct
{
  const char *name;
  int width, height;
  double text_scale;
  const char *colours;
  const char *theme;             /* NULL: GTK's own */
  const char *language;          /* NULL: as written */
  gboolean is_right_to_left;
} Variant;

static const Variant variants[] = {
  { "light", 1280, 820, 1, "light", NULL, NULL, FALSE },
  { "dark", 1280, 820, 1, "dark", NULL, NULL, FALSE },
  { "large-text", 1024, 700, 1.5, "light", NULL, NULL, FALSE },
  { "right-to-left", 1280, 820, 1, "light", NULL, NULL, TRUE },
  { "long-words", 1280, 820, 1, "light", NULL, "de", FALSE },
  { "high-contrast", 1280, 820, 1, "light", "Default-hc", NULL, FALSE },
  { "narrow", 700, 700, 1, "light", NULL, NULL, FALSE },
};

static const Variant *variant;
static const char *folder;

/* How a page is come to; what is pictured is the window or what it opened. */
typedef void (*Opener) (TrWindow *window);

typedef struct
{
  const char *name;
  Opener open;
  gboolean is_empty;             /* a window without a trial */
} Screen;

/* The window it opened, or itself. */
static GtkWidget *
find_shown (TrWindow *window)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWindow) toplevel = g_list_model_get_item (toplevels, i);

      if (gtk_window_get_transient_for (toplevel) == GTK_WINDOW (window) && gtk_widget_get_mapped (GTK_WIDGET (toplevel)))
        return GTK_WIDGET (toplevel);
    }

  return GTK_WIDGET (window);
}

static void
open_nothing (TrWindow *window)
{
}

static void
open_formula (TrWindow *window)
{
  ui_act (window, "win.go-formula");
}

/* Its page is scrolled until it stands at the top, with so much room above. */
static void
scroll_to (GtkWidget *widget,
           double     above)
{
  GtkWidget *scrolled = gtk_widget_get_ancestor (widget, GTK_TYPE_SCROLLED_WINDOW);
  GtkAdjustment *down = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scrolled));
  double y;

  gtk_widget_translate_coordinates (widget, scrolled, 0, 0, NULL, &y);
  gtk_adjustment_set_value (down, gtk_adjustment_get_value (down) + y - above);
}

/* The switch above the plane shows it; then it is scrolled to. */
static void
open_balance_view (TrWindow   *window,
                   const char *view)
{
  GtkWidget *plane = ui_find_type (GTK_WIDGET (window), TR_TYPE_RATIO_PLANE);
  GtkWidget *stack;

  ui_act (window, "win.go-formula");
  g_assert_nonnull (plane);
  stack = gtk_widget_get_ancestor (plane, GTK_TYPE_STACK);
  gtk_stack_set_visible_child_name (GTK_STACK (stack), view);
  ui_frames (GTK_WIDGET (window), 3);
  scroll_to (gtk_widget_get_parent (stack), 40);   /* the switch itself at the top */
}

static void
open_scales (TrWindow *window)
{
  open_balance_view (window, "scales");
}

static void
open_plane (TrWindow *window)
{
  open_balance_view (window, "plane");
}

static void
open_turns (TrWindow *window)
{
  ui_act (window, "win.go-turns");
}

static void
open_sequences (TrWindow *window)
{
  ui_act (window, "win.go-turns");
  gtk_widget_activate_action (ui_find_type (GTK_WIDGET (window), TR_TYPE_SEQUENCE_FINDER), "turn.find", NULL);
}

/* A worktop on which some folds fit in blocks, and many do not. */
static void
open_sequences_in_blocks (TrWindow *window)
{
  TrDocument *document = tr_window_get_document (window);
  TrTrial *draft = tr_document_draft (document);
  TrBench *bench = tr_trial_own_bench (draft);
  g_autoptr (GError) error = NULL;

  bench->worktop_mm[0] = bench->worktop_mm[1] = 420;
  tr_document_commit (document, draft, "worktop", NULL, "", &error);
  g_assert_no_error (error);
  open_sequences (window);
}

static void
scroll_to_picture (TrWindow   *window,
                   const char *name)
{
  GtkWidget *picture;

  ui_frames (GTK_WIDGET (window), 2);
  picture = ui_find (GTK_WIDGET (window), TR_TYPE_PICTURE_VIEW, _(name));
  g_assert_nonnull (picture);
  scroll_to (picture, 60);
}

static void
open_rest (TrWindow *window)
{
  ui_act (window, "win.go-turns");
  ui_act_on (window, "win.go-to", "/turns/0/rest/min");
  scroll_to_picture (window, N_("The slab while it rests"));
}

static void
open_section (TrWindow *window)
{
  ui_act (window, "win.go-turns");
  ui_act_on (window, "win.go-to", "/lock_in/rim_mm");
  scroll_to_picture (window, N_("Lock-in, cut through"));
}

/* Cold is wanted soon, on a summer's day. */
static void
open_short_rests (TrWindow *window)
{
  TrDocument *document = tr_window_get_document (window);
  TrTrial *draft = tr_document_draft (document);
  TrDough *dough = tr_trial_own_dough (draft, 0);
  g_autoptr (GError) error = NULL;

  tr_trial_own_bench (draft)->room_c = 29;
  dough->lock_in->rest->target_c = 4;
  for (guint i = 0; i < dough->turns->len; i++)
    if (tr_dough_get_turn (dough, i)->rest != NULL)
      {
        tr_dough_get_turn (dough, i)->rest->min_minutes = 20;
        tr_dough_get_turn (dough, i)->rest->target_c = 5;
      }
  tr_document_commit (document, draft, "summer", NULL, "", &error);
  g_assert_no_error (error);
  ui_act (window, "win.go-turns");
}

static void
open_sheet (TrWindow *window)
{
  ui_act (window, "win.go-sheet");
}

static void
open_piece (TrWindow *window)
{
  ui_act (window, "win.go-sheet");
  scroll_to_picture (window, N_("The piece, cut through"));
}

static void
open_method (TrWindow *window)
{
  ui_act (window, "win.go-method");
}

static void
open_log (TrWindow *window)
{
  ui_act (window, "win.go-log");
}

/* With a number in each list, so that every offer is there; invented. */
static void
write_log (TrWindow *window)
{
  TrDocument *document = tr_window_get_document (window);
  TrTrial *draft = tr_document_draft (document);
  TrLog *log = tr_trial_own_dough (draft, 0)->log;
  TrLoggedSize *sheet = tr_logged_size_new (0);
  TrLoggedCut *cut = tr_logged_cut_new ();
  TrLoggedPieces *pieces = tr_logged_pieces_new ();
  TrMix *mixes[2] = { tr_mix_new (), tr_mix_new () };
  g_autoptr (GError) error = NULL;

  sheet->length_mm = 620;
  sheet->relaxed_mm = 580;
  g_ptr_array_add (log->sizes, sheet);
  cut->length_mm = cut->width_mm = 100;
  cut->thickness_mm = 4;
  cut->mass_g = 42.5;
  g_ptr_array_add (log->cuts, cut);
  pieces->count = 4;
  pieces->raw_g = 204;
  pieces->baked_g = 178;
  g_ptr_array_add (log->pieces, pieces);
  for (guint i = 0; i < G_N_ELEMENTS (mixes); i++)
    {
      tr_set_text (&mixes[i]->at, i == 0 ? "2027-03-14" : "2027-03-21");
      mixes[i]->dough_c = 24;
      mixes[i]->flour_c = mixes[i]->room_c = 20;
      mixes[i]->liquid_c = 14 - i;
      g_ptr_array_add (log->mixes, mixes[i]);
    }
  tr_document_commit (document, draft, "log", NULL, "", &error);
  g_assert_no_error (error);
}

static void
open_log_sizes (TrWindow *window)
{
  write_log (window);
  ui_act (window, "win.go-log");
  ui_frames (GTK_WIDGET (window), 2);
  ui_act_on (window, "win.go-to", "/log/sizes/0/length_mm");
}

static void
open_log_pieces (TrWindow *window)
{
  write_log (window);
  ui_act (window, "win.go-log");
  ui_frames (GTK_WIDGET (window), 2);
  ui_act_on (window, "win.go-to", "/log/notes");
}

static void
open_mixes (TrWindow *window)
{
  write_log (window);
  ui_act (window, "win.go-method");
  ui_frames (GTK_WIDGET (window), 2);
  ui_act_on (window, "win.go-to", "/log/mixes/1/preferment_c");
}

static void
open_total (TrWindow *window)
{
  ui_act (window, "win.go-total");
}

static void
open_bench (TrWindow *window)
{
  ui_act (window, "win.go-bench");
}

static void
open_findings (TrWindow *window)
{
  g_object_set (window, "show-findings", TRUE, NULL);
}

static void
open_preferences (TrWindow *window)
{
  ui_act (window, "win.preferences");
}

static void
open_print (TrWindow *window)
{
  ui_act (window, "win.print-card");
}

static void
open_preview (TrWindow *window)
{
  const TrFigures *figures = tr_document_get_figures (tr_window_get_document (window));
  guint doughs[] = { 0, 1 };
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);

  g_autoptr (TrPaperJob) job = tr_paper_job_new_cards (figures, doughs, G_N_ELEMENTS (doughs), &reader, TR_PAPER_A4, "cards");

  gtk_window_present (GTK_WINDOW (tr_print_preview_new (GTK_WINDOW (window), job)));
}

static void
open_ingredients (TrWindow *window)
{
  ui_act (window, "win.ingredients");
}

static void
open_compare (TrWindow *window)
{
  ui_act (window, "win.go-compare");
}

/* Held against the first, in the order of a figure, what differs most on top. */
static void
open_compared (TrWindow *window)
{
  GtkWidget *table;

  ui_act (window, "win.go-compare");
  table = ui_find_type (GTK_WIDGET (window), TR_TYPE_COMPARISON_TABLE);
  g_assert_nonnull (table);
  tr_comparison_table_set_shown (TR_COMPARISON_TABLE (table), "d3", FALSE);
  tr_comparison_table_set_reference (TR_COMPARISON_TABLE (table), "d1");
  tr_comparison_table_set_order (TR_COMPARISON_TABLE (table), tr_comparable_find ("fat_layer_um.max"), FALSE);
  tr_comparison_table_set_by_spread (TR_COMPARISON_TABLE (table), TRUE);
}

/* Invented, with what a review has to ask about. */
static void
open_review (TrWindow *window)
{
  static const char text[] = "Lantern crescents\nMakes 12\n\n500 g flour\n1 cup plus 1 tbsp milk\n2 tsp salt\n7 g yeast\n"
                             "350-375 g cold butter, to laminate\na handful of stardust\n2 large eggs, beaten, to glaze\n\n"
                             "Mix, chill, fold in three three times.\n";
  GtkWidget *review;

  ui_act (window, "win.read-recipe");
  review = find_shown (window);
  g_assert_true (TR_IS_RECIPE_REVIEW (review));
  tr_recipe_review_read_text (TR_RECIPE_REVIEW (review), text);
  while (tr_recipe_review_is_reading (TR_RECIPE_REVIEW (review)))
    g_main_context_iteration (NULL, TRUE);
  ui_frames (review, 10);
}

static void
open_shortcuts (TrWindow *window)
{
  ui_act (window, "win.shortcuts");
}

static void
open_carry (TrWindow *window)
{
  ui_act (window, "win.carry-doughs");
}

static void
open_tasting (TrWindow *window)
{
  tasted_by_four (window);
  ui_act (window, "win.go-tasting");
}

static void
open_no_tasting (TrWindow *window)
{
  ui_act (window, "win.go-tasting");
}

static gboolean
is_done (gpointer result)
{
  return tr_tasting_result_is_done (result);
}

static void
open_result (TrWindow *window)
{
  GtkWidget *result, *button;

  open_tasting (window);
  result = ui_find_type (GTK_WIDGET (window), TR_TYPE_TASTING_RESULT);
  button = ui_find_type (gtk_widget_get_parent (result), GTK_TYPE_TOGGLE_BUTTON);
  g_assert_nonnull (button);
  gtk_widget_grab_focus (button);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), TRUE);
  ui_frames (result, 3);
  g_assert_true (ui_wait_until (is_done, result, 10000));
  ui_frames (result, 3);
  scroll_to (button, 60);
}

/* The section as it stands on a page, in a window of its own. */
static void
show_learn (TrWindow *window,
            guint     dough)
{
  GtkWidget *shown = gtk_window_new (), *scroller, *column, *learn = tr_learn_new ();
  TrDocument *document = tr_window_get_document (window);
  TrReader reader;

  column = tr_column_new (&scroller);
  gtk_box_append (GTK_BOX (column), learn);
  gtk_window_set_child (GTK_WINDOW (shown), scroller);
  gtk_window_set_transient_for (GTK_WINDOW (shown), GTK_WINDOW (window));
  gtk_window_set_destroy_with_parent (GTK_WINDOW (shown), TRUE);
  gtk_window_set_default_size (GTK_WINDOW (shown), MIN (variant->width, 900), variant->height);
  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  tr_page_set_reader (TR_PAGE (learn), &reader);
  tr_page_set_document (TR_PAGE (learn), document);
  tr_page_set_dough (TR_PAGE (learn), tr_trial_get_dough (tr_document_get_trial (document), dough)->id);
  gtk_window_present (GTK_WINDOW (shown));
}

static void
open_learn (TrWindow *window)
{
  tasted_with_faults (window);
  ui_act (window, "win.branch-dough");
  show_learn (window, 0);
}

/* A fold less and a thinner sheet. */
static void
open_changed (TrWindow *window)
{
  TrDocument *document = tr_window_get_document (window);
  g_autoptr (GError) error = NULL;

  ui_act (window, "win.branch-dough");

  TrTrial *draft = tr_document_draft (document);
  TrDough *branch = tr_trial_own_dough (draft, 1);

  tr_dough_get_turn (branch, 0)->fold = 2;
  branch->cut->thickness_mm = 3;
  tr_document_commit (document, draft, "change", NULL, "", &error);
  g_assert_no_error (error);
  show_learn (window, 1);
}

static const Screen screens[] = {
  { "start", open_nothing, TRUE },
  { "formula", open_formula, FALSE },
  { "balance-scales", open_scales, FALSE },
  { "balance-plane", open_plane, FALSE },
  { "turns", open_turns, FALSE },
  { "rest", open_rest, FALSE },
  { "lock-in-section", open_section, FALSE },
  { "short-rests", open_short_rests, FALSE },
  { "sequences", open_sequences, FALSE },
  { "sequences-in-blocks", open_sequences_in_blocks, FALSE },
  { "sheet", open_sheet, FALSE },
  { "piece", open_piece, FALSE },
  { "method", open_method, FALSE },
  { "mixes", open_mixes, FALSE },
  { "log", open_log, FALSE },
  { "log-sizes", open_log_sizes, FALSE },
  { "log-pieces", open_log_pieces, FALSE },
  { "total", open_total, FALSE },
  { "bench", open_bench, FALSE },
  { "compare", open_compare, FALSE },
  { "compared", open_compared, FALSE },
  { "no-tasting", open_no_tasting, FALSE },
  { "tasting", open_tasting, FALSE },
  { "tasting-result", open_result, FALSE },
  { "findings", open_findings, FALSE },
  { "preferences", open_preferences, FALSE },
  { "print", open_print, FALSE },
  { "preview", open_preview, FALSE },
  { "ingredients", open_ingredients, FALSE },
  { "review", open_review, FALSE },
  { "shortcuts", open_shortcuts, FALSE },
  { "carry", open_carry, FALSE },
  { "learn", open_learn, FALSE },
  { "changed", open_changed, FALSE },
};

/* A screen *****************************************************************/

static void
see (gconstpointer data)
{
  const Screen *screen = data;
  TrApplication *application = ui_application_new ();
  g_autoptr (GdkTexture) texture = NULL;
  TrWindow *window;

  g_object_set (tr_application_get_preferences (application), "window-width", variant->width, "window-height", variant->height,
                "colours", variant->colours, NULL);
  if (screen->is_empty)
    {
      g_autoptr (TrDocument) document = tr_document_new ();

      window = tr_application_show (application, document, NULL);
      ui_frames (GTK_WIDGET (window), 2);
    }
  else
    window = ui_demo_window_new (application);

  screen->open (window);
  ui_frames (GTK_WIDGET (window), 3);

  GtkWidget *shown = find_shown (window);

  ui_frames (shown, 3);
  seen_check_widgets (shown, variant->width);
  texture = ui_render (shown);
  seen_check_texture (texture);
  if (folder != NULL)
    {
      g_autofree char *path = g_strdup_printf ("%s/%s-%s.png", folder, variant->name, screen->name);

      g_assert_true (gdk_texture_save_to_png (texture, path));
    }

  ui_application_free (application);
}

static void
use_variant (void)
{
  GtkSettings *settings = gtk_settings_get_default ();

  g_object_set (settings, "gtk-xft-dpi", (int) (96 * 1024 * variant->text_scale), "gtk-cursor-blink", FALSE,
                "gtk-enable-animations", FALSE, NULL);
  if (variant->theme != NULL)
    g_object_set (settings, "gtk-theme-name", variant->theme, NULL);
  if (variant->is_right_to_left)
    gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);
  bindtextdomain (GETTEXT_PACKAGE, TR_TEST_LOCALES);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
}

int
main (int   argc,
      char *argv[])
{
  const char *name = argc > 1 ? argv[1] : "light";

  for (guint i = 0; i < G_N_ELEMENTS (variants); i++)
    if (g_str_equal (variants[i].name, name))
      variant = &variants[i];
  if (variant == NULL)
    {
      g_printerr ("No way of seeing is called “%s”.\n", name);
      return 1;
    }
  folder = argc > 2 && argv[2][0] != '-' ? argv[2] : NULL;
  /* Before anything is translated. */
  g_setenv ("LANGUAGE", variant->language != NULL ? variant->language : "en", TRUE);

  if (!ui_init (&argc, &argv))
    return 0;
  use_variant ();
  for (guint i = 0; i < G_N_ELEMENTS (screens); i++)
    {
      g_autofree char *path = g_strdup_printf ("/screens/%s/%s", variant->name, screens[i].name);

      g_test_add_data_func (path, &screens[i], see);
    }

  return ui_run ();
}
