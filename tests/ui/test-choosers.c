/* test-choosers.c: what is typed in GTK's file chooser is where it goes
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A program of its own because GTK 4.8.3's chooser does not free what it lists
 * (a path at each gtk_tree_view_get_visible_range, the file infos of a folder
 * that is left while it loads): leaks here are not counted. Those of saving and
 * exporting without a chooser are, in test-files.c.
 */

#include "config.h"

#include <string.h>

#include "support.h"
#include "window/picture-view.h"

typedef struct { const char *name, *typed, *there, *expected; } SuffixRow;

static const SuffixRow trial_rows[] = {
  { "without a suffix", "trial", NULL, "trial.tourier" },
  { "with it", "trial.tourier", NULL, "trial.tourier" },
  { "with another", "trial.json", NULL, "trial.json" },
  /* Nobody was asked about replacing that one. */
  { "the longer name is taken", "trial", "trial.tourier", "trial" },
};

static void
test_saved_name_gets_its_suffix (UiFixture     *fixture,
                                 gconstpointer  data)
{
  for (guint i = 0; i < G_N_ELEMENTS (trial_rows); i++)
    {
      const SuffixRow *row = &trial_rows[i];
      g_autofree char *folder = g_dir_make_tmp ("tourier-suffix-XXXXXX", NULL);
      g_autofree char *path = g_build_filename (folder, row->expected, NULL);
      g_autofree char *there = row->there != NULL ? g_build_filename (folder, row->there, NULL) : NULL;
      g_autofree char *saved = NULL;

      g_test_message ("%s", row->name);
      if (there != NULL)
        g_assert_true (g_file_set_contents (there, "theirs", -1, NULL));
      ui_act (fixture->window, "win.save-as");
      ui_settle ();
      ui_choose (fixture->window, folder, row->typed);
      saved = g_file_get_path (tr_document_get_file (tr_window_get_document (fixture->window)));
      g_assert_cmpstr (saved, ==, path);
      g_assert_true (g_file_test (path, G_FILE_TEST_IS_REGULAR));
      if (there != NULL)
        {
          g_autofree char *still = ui_read_file (there);

          g_assert_cmpstr (still, ==, "theirs");
        }
    }
}

static void
test_card_without_a_suffix_is_a_pdf (UiFixture     *fixture,
                                     gconstpointer  data)
{
  g_autofree char *folder = g_dir_make_tmp ("tourier-paper-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "card.pdf", NULL);
  g_autofree char *text = NULL;

  ui_act (fixture->window, "win.export-card");
  ui_settle ();
  ui_choose (fixture->window, folder, "card");
  g_assert_cmpstr (tr_window_get_notice (fixture->window, "file"), ==, "The bench card is in “card.pdf”.");
  text = ui_read_file (path);
  g_assert_true (g_str_has_prefix (text, "%PDF-"));
}

static void
test_picture_is_saved_by_its_suffix (UiFixture     *fixture,
                                     gconstpointer  data)
{
  static const struct { const char *typed, *name, *start; } rows[] = {
    { "layers", "layers.png", "\x89PNG" }, { "layers.pdf", "layers.pdf", "%PDF-" }, { "layers.svg", "layers.svg", "<?xml" },
  };
  g_autofree char *folder = g_dir_make_tmp ("tourier-picture-XXXXXX", NULL);

  ui_act (fixture->window, "win.go-turns");
  ui_frames (GTK_WIDGET (fixture->window), 2);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      GtkWidget *layers = ui_find (GTK_WIDGET (fixture->window), TR_TYPE_PICTURE_VIEW, "Layers");
      g_autofree char *path = g_build_filename (folder, rows[i].name, NULL), *text = NULL;
      g_autofree char *sentence = g_strdup_printf ("The picture is in “%s”.", rows[i].name);

      g_assert_true (gtk_widget_activate_action (layers, "picture.save", NULL));
      ui_settle ();
      ui_choose (fixture->window, folder, rows[i].typed);
      g_assert_cmpstr (tr_window_get_notice (fixture->window, "file"), ==, sentence);
      text = ui_read_file (path);
      g_assert_true (g_str_has_prefix (text, rows[i].start));
    }
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  UI_ADD ("/window/save/name-gets-its-suffix", test_saved_name_gets_its_suffix);
  UI_ADD ("/window/paper/card-without-a-suffix-is-a-pdf", test_card_without_a_suffix_is_a_pdf);
  UI_ADD ("/window/pictures/saved-by-their-suffix", test_picture_is_saved_by_its_suffix);

  return ui_run ();
}
