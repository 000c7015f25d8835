/* test-export.c: cards as files
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include <glib/gstdio.h>

#include "paper/paper.h"
#include "samples.h"

typedef struct {
  TrFigures *figures;
  TrReader reader;
  TrPages *cards;
} Fixture;

static void
open_sample (Fixture *fixture,
             Sample   sample)
{
  g_autoptr (TrTrial) trial = sample_trial_new (sample);

  fixture->figures = tr_figures_compute (trial, NULL);
  tr_reader_init_plain (&fixture->reader, TR_UNITS_METRIC);
  fixture->cards = tr_cards_new (fixture->figures, NULL, 0, &fixture->reader, TR_PAPER_A4);
}

static void
close_card (Fixture *fixture)
{
  tr_pages_free (fixture->cards);
  tr_figures_unref (fixture->figures);
}

static const TrDoughFigures *
dough_of (const Fixture *fixture)
{
  return tr_figures_get_dough (fixture->figures, 0);
}

static char *
export_to (const TrPages *cards,
           const char    *folder,
           const char    *name,
           gsize         *length)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autoptr (GError) error = NULL;
  char *bytes;

  g_assert_true (tr_pages_export (cards, path, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &bytes, length, &error));
  return bytes;
}

static char *
make_folder (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("cards-XXXXXX", &error);

  g_assert_no_error (error);
  return folder;
}

static guint
count_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static void
remove_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      g_remove (path);
    }
  g_rmdir (folder);
}

static void
test_same_cards_same_bytes (void)
{
  static const char *const names[] = { "a.pdf", "a.png", "a.svg" };
  g_autofree char *folder = make_folder ();

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      gsize length[2];
      char *bytes[2];

      for (int k = 0; k < 2; k++)
        {
          Fixture fixture;

          open_sample (&fixture, SAMPLE_CROISSANT);
          bytes[k] = export_to (fixture.cards, folder, names[i], &length[k]);
          close_card (&fixture);
        }
      g_assert_cmpmem (bytes[0], length[0], bytes[1], length[1]);
      g_free (bytes[0]);
      g_free (bytes[1]);
    }
  g_assert_cmpuint (count_files (folder), ==, G_N_ELEMENTS (names));
  remove_folder (folder);
}

static void
test_further_pages_are_numbered (void)
{
  static const char *const extensions[] = { "png", "svg" };
  g_autofree char *folder = make_folder ();
  Fixture fixture;
  guint n;

  open_sample (&fixture, SAMPLE_STRESS);
  n = tr_pages_count (fixture.cards);
  for (guint e = 0; e < G_N_ELEMENTS (extensions); e++)
    {
      g_autofree char *first = g_strdup_printf ("x.%s", extensions[e]);
      gsize length;

      g_free (export_to (fixture.cards, folder, first, &length));
      for (guint i = 2; i <= n; i++)
        {
          g_autofree char *name = g_strdup_printf ("x-%u.%s", i, extensions[e]);
          g_autofree char *path = g_build_filename (folder, name, NULL);

          g_assert_true (g_file_test (path, G_FILE_TEST_IS_REGULAR));
        }
    }
  g_assert_cmpuint (count_files (folder), ==, 2 * n);
  close_card (&fixture);
  remove_folder (folder);
}

static void
test_errors_leave_nothing_behind (void)
{
  g_autofree char *folder = make_folder ();
  g_autofree char *wrong = g_build_filename (folder, "card.txt", NULL);
  g_autofree char *nowhere = g_build_filename (folder, "no", "such", "card.pdf", NULL);
  g_autofree char *target = g_build_filename (folder, "card.png", NULL);
  g_autofree char *in_the_way = g_build_filename (folder, "card-2.png", NULL);
  g_autofree char *kept = NULL;
  g_autoptr (GError) error = NULL;
  Fixture fixture;

  open_sample (&fixture, SAMPLE_STRESS);
  g_assert_false (tr_pages_export (fixture.cards, wrong, &error));
  g_assert_nonnull (strstr (error->message, "card.txt"));
  g_assert_nonnull (strstr (error->message, ".pdf"));
  g_clear_error (&error);
  g_assert_false (tr_pages_export (fixture.cards, nowhere, &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
  g_assert_nonnull (strstr (error->message, "card.pdf"));
  g_clear_error (&error);
  g_assert_cmpuint (count_files (folder), ==, 0);

  /* the second page cannot be written: the first is not replaced */
  g_assert_true (g_file_set_contents (target, "old", -1, &error));
  g_assert_cmpint (g_mkdir (in_the_way, 0777), ==, 0);
  g_assert_false (tr_pages_export (fixture.cards, target, &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_ISDIR);
  g_assert_true (g_file_get_contents (target, &kept, NULL, NULL));
  g_assert_cmpstr (kept, ==, "old");
  g_assert_cmpuint (count_files (folder), ==, 2);
  close_card (&fixture);
  remove_folder (folder);
}

/* The names, weights and sizes come out of the PDF as text, by a program that
 * is not ours (poppler). */
static void
test_pdf_can_be_read (void)
{
  g_autofree char *program = g_find_program_in_path ("pdftotext"), *folder = NULL, *path = NULL, *text = NULL;
  const char *arguments[] = { program, "-layout", NULL, "-", NULL };
  static const char *const wanted[] = { "Overnight poolish", "Bread flour", "Butter, unsalted", "Poolish, all of it", "Lock in and turn" };
  g_autoptr (GError) error = NULL;
  Fixture fixture;
  gsize length;

  if (program == NULL)
    {
      g_test_skip ("pdftotext is not installed");
      return;
    }
  folder = make_folder ();
  path = g_build_filename (folder, "card.pdf", NULL);
  arguments[2] = path;
  open_sample (&fixture, SAMPLE_CROISSANT);
  g_free (export_to (fixture.cards, folder, "card.pdf", &length));
  g_assert_true (g_spawn_sync (NULL, (char **) arguments, NULL, G_SPAWN_DEFAULT, NULL, NULL, &text, NULL, NULL, &error));
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    g_assert_nonnull (strstr (text, wanted[i]));
  for (guint i = 0; i < dough_of (&fixture)->lamination.steps->len; i++)
    {
      g_autofree char *size = tr_words_size_bare (&fixture.reader, &g_array_index (dough_of (&fixture)->lamination.steps, TrTurnFigures, i).rolled_mm);

      g_assert_nonnull (strstr (text, size));
    }
  close_card (&fixture);
  remove_folder (folder);
}

static guint32
read_big_endian (const char *bytes)
{
  guint32 value;

  memcpy (&value, bytes, sizeof value);
  return GUINT32_FROM_BE (value);
}

/* W3C PNG, 11.2.2 and 11.3.5.3: 150 dpi are 5906 pixels a metre, A4 is then
 * 1240 × 1754 pixels. */
static void
test_png_says_its_size (void)
{
  g_autofree char *folder = make_folder (), *bytes = NULL;
  Fixture fixture;
  gsize length;

  open_sample (&fixture, SAMPLE_PLAIN);
  bytes = export_to (fixture.cards, folder, "card.png", &length);
  g_assert_cmpuint (length, >, 60);
  g_assert_cmpuint (read_big_endian (bytes + 16), ==, 1240);
  g_assert_cmpuint (read_big_endian (bytes + 20), ==, 1754);
  g_assert_cmpmem (bytes + 37, 4, "pHYs", 4);
  g_assert_cmpuint (read_big_endian (bytes + 41), ==, 5906);
  g_assert_cmpuint (read_big_endian (bytes + 45), ==, 5906);
  g_assert_cmpint (bytes[49], ==, 1);
  /* of these nine bytes and the name, by zlib's crc32 */
  g_assert_cmphex (read_big_endian (bytes + 50), ==, 0x679fd252);
  close_card (&fixture);
  remove_folder (folder);
}

static void
test_png_can_be_read (void)
{
  g_autofree char *folder = make_folder (), *path = g_build_filename (folder, "card.png", NULL);
  g_autofree char *bytes = NULL;
  cairo_surface_t *surface;
  Fixture fixture;
  gsize length;

  open_sample (&fixture, SAMPLE_PLAIN);
  bytes = export_to (fixture.cards, folder, "card.png", &length);
  surface = cairo_image_surface_create_from_png (path);
  g_assert_cmpint (cairo_surface_status (surface), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpint (cairo_image_surface_get_width (surface), ==, 1240);
  cairo_surface_destroy (surface);
  close_card (&fixture);
  remove_folder (folder);
}

static void
test_one_picture (void)
{
  static const char *const names[] = { "a.pdf", "a.png", "a.svg" };
  g_autofree char *folder = make_folder (), *wrong = g_build_filename (folder, "a.gif", NULL);
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autoptr (TrPicture) picture = NULL;
  g_autoptr (GError) error = NULL;
  TrReader reader;
  TrLook look;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  tr_look_init_paper (&look);
  picture = tr_layers_picture_new (tr_figures_get_dough (figures, 0), &reader, &look, 480, 120);
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = g_build_filename (folder, names[i], NULL), *bytes = NULL;
      gsize length;

      g_assert_true (tr_picture_export (picture, "Layers", path, &error));
      g_assert_no_error (error);
      g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
      g_assert_cmpuint (length, >, 500);
      /* 480 points wide at 150 dots an inch */
      if (i == 1)
        g_assert_cmpuint (read_big_endian (bytes + 16), ==, 1000);
    }
  g_assert_false (tr_picture_export (picture, "Layers", wrong, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_INVALID_FILENAME);
  g_assert_cmpuint (count_files (folder), ==, G_N_ELEMENTS (names));
  remove_folder (folder);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/paper/export/same-cards-same-bytes", test_same_cards_same_bytes);
  g_test_add_func ("/paper/export/further-pages-are-numbered", test_further_pages_are_numbered);
  g_test_add_func ("/paper/export/errors-leave-nothing-behind", test_errors_leave_nothing_behind);
  g_test_add_func ("/paper/export/pdf-can-be-read", test_pdf_can_be_read);
  g_test_add_func ("/paper/export/png-says-its-size", test_png_says_its_size);
  g_test_add_func ("/paper/export/png-can-be-read", test_png_can_be_read);
  g_test_add_func ("/paper/export/one-picture-likewise", test_one_picture);

  return g_test_run ();
}
