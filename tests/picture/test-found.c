/* test-found.c: found folds are drawn to one scale, before the length of the worktop
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is drawn is measured in the pixels; what it ought to be is taken from the
 * figures of the dough with those folds.
 */

#include <math.h>

#include "calc/lamination.h"
#include "calc/search.h"
#include "picture/found.h"
#include "samples.h"

#define WIDTH 400
#define HEIGHT 80
#define TEXT_SIZE 13.0
/* Where there is the worktop's end and nothing else, and where roll-outs begin for sure. */
#define ABOVE_ROW 1
#define FIRST_COLUMN 126

typedef struct { TrTrial *trial; TrFigures *figures; GPtrArray *found; } Fixture;

static void
set_up (Fixture      *fixture,
        gconstpointer data)
{
  TrSearch search;

  fixture->trial = sample_trial_new ((Sample) GPOINTER_TO_INT (data));
  fixture->figures = tr_figures_compute (fixture->trial, NULL);
  tr_search_init (&search);
  search.max_turns = 3;
  fixture->found = tr_search_sequences (tr_figures_get_dough (fixture->figures, 0), &search);
  g_assert_cmpuint (fixture->found->len, >, 30);
}

static void
tear_down (Fixture      *fixture,
           gconstpointer data)
{
  g_ptr_array_unref (fixture->found);
  tr_figures_unref (fixture->figures);
  tr_trial_unref (fixture->trial);
}

static cairo_surface_t *
render (const Fixture *fixture,
        guint          index,
        gboolean       is_mirrored)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);
  g_autoptr (TrPicture) picture = NULL;
  TrReader reader;
  TrLook look;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  tr_look_init_screen (&look, FALSE, FALSE, TEXT_SIZE);
  look.device_scale = 0;
  picture = tr_found_picture_new (tr_figures_get_dough (fixture->figures, 0), g_ptr_array_index (fixture->found, index), &reader, &look,
                                  is_mirrored, WIDTH, HEIGHT);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  tr_picture_draw (picture, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);

  return surface;
}

/* How much of the pixel is painted, 0 to 1, by its blue: dough and lines have little. */
static double
get_paint (cairo_surface_t *surface,
           int              x,
           int              y)
{
  const guint32 *row = (const guint32 *) (const void *) (cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface));

  return 1 - (row[x] & 0xff) / 255.0;
}

/* The first, or after the last painted pixel of a row, from where roll-outs begin; -1: none. */
static int
find_edge (cairo_surface_t *surface,
           int              y,
           gboolean         is_last)
{
  int found = -1;

  for (int x = FIRST_COLUMN; x < WIDTH; x++)
    if (get_paint (surface, x, y) > 0.2)
      {
        found = is_last ? x + 1 : x;
        if (!is_last)
          break;
      }

  return found;
}

static void
test_scale (Fixture      *fixture,
            gconstpointer data)
{
  const TrBench *bench = fixture->trial->bench;
  guint n_measured = 0;

  for (guint i = 0; i < fixture->found->len; i++)
    {
      const TrSequence *row = g_ptr_array_index (fixture->found, i);
      cairo_surface_t *surface = render (fixture, i, FALSE);
      TrDough *dough = tr_dough_copy (tr_trial_get_dough (fixture->trial, 0));
      double high = (HEIGHT - 0.5 * TEXT_SIZE) / MAX (row->n_folds, 3);
      int worktop = find_edge (surface, ABOVE_ROW, FALSE);
      TrLamination lamination;

      tr_sequence_apply (row, dough);
      tr_lamination_compute (dough, bench, &tr_figures_get_dough (fixture->figures, 0)->formula, NULL, &lamination);
      g_assert_cmpint (worktop, >, FIRST_COLUMN);
      for (guint j = 0; j < row->n_folds; j++)
        {
          int y = (int) (0.25 * TEXT_SIZE + high * (j + 0.35));
          int start = find_edge (surface, y, FALSE), end = find_edge (surface, y, TRUE);
          double share = g_array_index (lamination.steps, TrTurnFigures, j).rolled_mm.mm[0] / bench->worktop_mm[0];

          g_assert_cmpint (start, >=, 0);
          /* The worktop's end itself stands in the row: only what goes over it, but not far, can be told
           * from it; what is shorter ends at the gap before it. */
          if (share > 1.02 && share < 1.1)
            g_assert_cmpfloat_with_epsilon (end - start, share * (worktop - start), 3);
          else if (share < 0.97)
            {
              int x = start;

              while (x < WIDTH && get_paint (surface, x, y) > 0.2)
                x++;
              g_assert_cmpfloat_with_epsilon (x - start, share * (worktop - start), 3);
              n_measured++;
            }
        }
      tr_lamination_clear (&lamination);
      tr_dough_unref (dough);
      cairo_surface_destroy (surface);
    }
  g_assert_cmpuint (n_measured, >, 10);
}

/* Turned over, pixel by pixel; a line between two pixels may fall into the other. */
static void
test_mirrored (Fixture      *fixture,
               gconstpointer data)
{
  for (guint i = 0; i < fixture->found->len; i += 7)
    {
      cairo_surface_t *straight = render (fixture, i, FALSE), *mirrored = render (fixture, i, TRUE);
      int n_other = 0, n_painted = 0;

      for (int y = 0; y < HEIGHT; y++)
        for (int x = 0; x < WIDTH; x++)
          {
            double paint = get_paint (straight, x, y);

            n_painted += paint > 0.2;
            n_other += fabs (paint - get_paint (mirrored, WIDTH - 1 - x, y)) > 0.2;
          }
      g_assert_cmpint (n_painted, >, WIDTH * HEIGHT / 10);
      g_assert_cmpint (n_other, <=, 24);
      cairo_surface_destroy (straight);
      cairo_surface_destroy (mirrored);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add ("/found/scale", Fixture, GINT_TO_POINTER (SAMPLE_CROISSANT), set_up, test_scale, tear_down);
  g_test_add ("/found/scale-of-an-inverse-stack", Fixture, GINT_TO_POINTER (SAMPLE_PUFF), set_up, test_scale, tear_down);
  g_test_add ("/found/mirrored", Fixture, GINT_TO_POINTER (SAMPLE_CROISSANT), set_up, test_mirrored, tear_down);

  return g_test_run ();
}
