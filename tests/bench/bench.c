/* bench.c: how long one edit and one picture take
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   bench TRIAL
 *
 * Prints one line a measurement: its name, the median in microseconds. The
 * first two are anchors that have nothing to do with dough: a machine twice as
 * slow is twice as slow there too.
 */

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "picture/picture.h"
#include "trial/document.h"

#define WIDTH 900
#define HEIGHT 600
#define N_DOUGHS 8
#define MAX_RUNS 401

typedef void (*Work) (gpointer data);

static int
compare_doubles (const void *a,
                 const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* `batch` calls are one sample, so that the clock's step does not show. */
static void
measure (const char *name,
         int         n_runs,
         int         batch,
         Work        work,
         gpointer    data)
{
  double us[MAX_RUNS];

  work (data);
  for (int run = 0; run < n_runs; run++)
    {
      gint64 start = g_get_monotonic_time ();

      for (int i = 0; i < batch; i++)
        work (data);
      us[run] = (double) (g_get_monotonic_time () - start) / batch;
    }

  qsort (us, (size_t) n_runs, sizeof *us, compare_doubles);
  g_print ("%s %.2f\n", name, us[n_runs / 2]);
}

static void
paint_white (gpointer data)
{
  cairo_t *cr = cairo_create (data);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_destroy (cr);
}

typedef struct { char *from, *to; gsize size; } Copy;

static void
copy_memory (gpointer data)
{
  Copy *copy = data;

  memcpy (copy->to, copy->from, copy->size);
  copy->from[copy->to[7] & 63]++;      /* so that it cannot be left out */
}

typedef struct { TrTrial *trial; TrFigures *figures; int n; } Edit;

/* What a commit does to the figures: own one dough, change a number, compute. */
static void
edit_one_dough (gpointer data)
{
  Edit *edit = data;
  TrTrial *draft = tr_trial_copy (edit->trial);
  TrDough *dough = tr_trial_own_dough (draft, (guint) (edit->n % N_DOUGHS));
  TrLine *line = tr_dough_get_line (dough, 0);

  g_free (line->amount);
  line->amount = g_strdup_printf ("%d g", 150 + edit->n++ % 50);

  TrFigures *figures = tr_figures_compute (draft, edit->figures);
  tr_figures_unref (edit->figures);
  tr_trial_unref (edit->trial);
  edit->figures = figures;
  edit->trial = draft;
}

static void
compute_all (gpointer data)
{
  Edit *edit = data;

  tr_figures_unref (tr_figures_compute (edit->trial, NULL));
}

typedef struct { const TrDoughFigures *dough; TrReader reader; TrLook look; cairo_surface_t *surface; } Picture;

static void
draw_layers (gpointer data)
{
  Picture *picture = data;
  TrPicture *layers = tr_layers_picture_new (picture->dough, &picture->reader, &picture->look, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (picture->surface);

  tr_picture_draw (layers, cr);
  cairo_destroy (cr);
  tr_picture_unref (layers);
}

/* Eight doughs: those of the trial, over and over. */
static TrTrial *
load_eight (const char *path)
{
  g_autoptr (GError) error = NULL;
  TrTrial *trial = tr_trial_read_file (path, &error);

  if (trial == NULL)
    g_error ("%s", error->message);
  guint n = trial->doughs->len;
  for (guint i = n; i < N_DOUGHS; i++)
    {
      TrDough *dough = tr_dough_copy (tr_trial_get_dough (trial, i % n));

      g_free (dough->id);
      dough->id = tr_trial_dup_free_id (trial);
      g_ptr_array_add (trial->doughs, dough);
    }
  g_ptr_array_set_size (trial->doughs, N_DOUGHS);

  return trial;
}

/* A letter lock-in and five book turns: 2048 fat layers, 4097 bands. */
static TrFigures *
compute_4097_bands (const TrTrial *trial)
{
  g_autoptr (TrTrial) draft = tr_trial_copy (trial);
  TrDough *dough = tr_trial_own_dough (draft, 0);

  dough->lock_in->style = TR_STYLE_LETTER;
  g_ptr_array_set_size (dough->turns, 0);
  for (int i = 0; i < 5; i++)
    g_ptr_array_add (dough->turns, tr_turn_new (4, 8));

  return tr_figures_compute (draft, NULL);
}

int
main (int   argc,
      char *argv[])
{
  if (argc != 2)
    return 1;

  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  Copy copy = { g_malloc0 (4 * WIDTH * HEIGHT), g_malloc0 (4 * WIDTH * HEIGHT), 4 * WIDTH * HEIGHT };
  Edit edit = { load_eight (argv[1]), NULL, 0 };
  Picture picture = { .surface = surface };

  edit.figures = tr_figures_compute (edit.trial, NULL);
  TrFigures *figures = compute_4097_bands (edit.trial);
  picture.dough = tr_figures_get_dough (figures, 0);
  if (fabs (picture.dough->lamination.bands - 4097) > 0)
    g_error ("%g bands", picture.dough->lamination.bands);
  tr_reader_init_plain (&picture.reader, TR_UNITS_METRIC);
  tr_look_init_screen (&picture.look, FALSE, FALSE, 13);

  measure ("white-paint", 201, 10, paint_white, surface);
  measure ("memory-copy", 201, 10, copy_memory, &copy);
  measure ("edit-of-8-doughs", 401, 10, edit_one_dough, &edit);
  measure ("all-8-doughs-afresh", 101, 2, compute_all, &edit);
  measure ("layers-4097-bands", 101, 1, draw_layers, &picture);

  tr_figures_unref (figures);
  tr_figures_unref (edit.figures);
  tr_trial_unref (edit.trial);
  cairo_surface_destroy (surface);
  g_free (copy.from);
  g_free (copy.to);

  return 0;
}
