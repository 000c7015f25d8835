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

#include "calc/rests.h"
#include "calc/search.h"
#include "picture/picture.h"
#include "picture/plane.h"
#include "picture/sequence.h"
#include "picture/sheets.h"
#include "trial/document.h"

#define WIDTH 900
#define HEIGHT 600
#define N_DOUGHS 8
#define N_RESTS 6
#define MAX_RUNS 401
/* The window in which an edit is seen. */
#define WINDOW_WIDTH 1280
#define WINDOW_HEIGHT 800

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

static void
draw_piece (gpointer data)
{
  Picture *picture = data;
  TrPicture *piece = tr_piece_picture_new (picture->dough, &picture->reader, &picture->look, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (picture->surface);

  tr_picture_draw (piece, cr);
  cairo_destroy (cr);
  tr_picture_unref (piece);
}

typedef struct { Edit edit; TrReader reader; TrLook look; cairo_surface_t *surface; } Frame;

static void
draw_at (cairo_t   *cr,
         TrPicture *picture,
         double     x,
         double     y)
{
  cairo_save (cr);
  cairo_translate (cr, x, y);
  tr_picture_draw (picture, cr);
  cairo_restore (cr);
  tr_picture_unref (picture);
}

/* Our share of the frame after an edit: the figures, and every picture of every
 * page made and drawn, though no more than two pages are ever seen at once. */
static void
edit_and_draw (gpointer data)
{
  Frame *frame = data;
  const TrReader *reader = &frame->reader;
  const TrLook *look = &frame->look;
  guint shown = (guint) (frame->edit.n % N_DOUGHS);

  edit_one_dough (&frame->edit);

  const TrFigures *figures = frame->edit.figures;
  const TrDoughFigures *dough = tr_figures_get_dough (figures, shown);
  const TrSequenceMarks marks = { .drop_at = -1, .can_edit = TRUE };
  cairo_t *cr = cairo_create (frame->surface);

  draw_at (cr, tr_ratio_plane_picture_new (figures, TR_RATIO_ALL_WATER, TR_RATIO_ROLL_IN_OF_DOUGH, (int) shown, NULL, reader, look, 480, 360), 220, 400);
  draw_at (cr, tr_sequence_picture_new (dough, &marks, reader, look, 540, 260), 720, 60);
  draw_at (cr, tr_layers_picture_new (dough, reader, look, 540, 170), 720, 560);
  draw_at (cr, tr_sheets_picture_new (dough, reader, look, 540, 420, NULL), 720, 340);
  draw_at (cr, tr_bench_picture_new (frame->edit.trial->bench, dough, reader, look, 540, 240), 720, 60);
  cairo_destroy (cr);
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

/* Every dough with a chill and a rest after each of five turns. */
static void
add_rests (TrTrial *trial)
{
  for (guint i = 0; i < trial->doughs->len; i++)
    {
      TrDough *dough = tr_trial_own_dough (trial, i);

      if (dough->lock_in->rest == NULL)
        dough->lock_in->rest = tr_rest_new ();
      while (dough->turns->len < N_RESTS - 1)
        g_ptr_array_add (dough->turns, tr_turn_new (3, 8));
      g_ptr_array_set_size (dough->turns, N_RESTS - 1);
      for (guint j = 0; j < dough->turns->len; j++)
        if (tr_dough_get_turn (dough, j)->rest == NULL)
          tr_dough_get_turn (dough, j)->rest = tr_rest_new ();
    }
}

static void
compute_heat (gpointer data)
{
  const TrFigures *figures = data;

  for (guint i = 0; i < figures->doughs->len; i++)
    g_array_unref (tr_rests_compute (tr_figures_get_dough (figures, i)));
}

static void
search_all (gpointer data)
{
  const TrFigures *figures = data;
  TrSearch search;

  tr_search_init (&search);
  g_ptr_array_unref (tr_search_sequences (tr_figures_get_dough (figures, 0), &search));
  search.max_turns = TR_SEARCH_MAX_TURNS;
  search.max_fold = TR_SEARCH_MAX_FOLD;
  g_ptr_array_unref (tr_search_sequences (tr_figures_get_dough (figures, 0), &search));
}

/* On which little fits, whatever it is divided into. */
static TrFigures *
compute_on_small_worktop (const TrTrial *trial)
{
  g_autoptr (TrTrial) draft = tr_trial_copy (trial);
  TrBench *bench = tr_trial_own_bench (draft);

  bench->worktop_mm[0] = bench->worktop_mm[1] = 200;

  return tr_figures_compute (draft, NULL);
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
  measure ("piece-4097-bands", 101, 1, draw_piece, &picture);

  Frame frame = { .edit = { load_eight (argv[1]), NULL, 0 }, .reader = picture.reader, .look = picture.look,
                  .surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WINDOW_WIDTH, WINDOW_HEIGHT) };

  frame.edit.figures = tr_figures_compute (frame.edit.trial, NULL);
  measure ("frame-after-an-edit", 201, 1, edit_and_draw, &frame);
  tr_figures_unref (frame.edit.figures);
  tr_trial_unref (frame.edit.trial);
  cairo_surface_destroy (frame.surface);

  Edit rests = { load_eight (argv[1]), NULL, 0 };

  add_rests (rests.trial);
  rests.figures = tr_figures_compute (rests.trial, NULL);
  for (guint i = 0; i < N_DOUGHS; i++)
    if (tr_figures_get_dough (rests.figures, i)->rests->len != N_RESTS)
      g_error ("%u rests", tr_figures_get_dough (rests.figures, i)->rests->len);
  measure ("heat-of-8-doughs-6-rests", 101, 1, compute_heat, rests.figures);
  measure ("sequences-4-and-6-turns", 101, 1, search_all, rests.figures);
  TrFigures *small = compute_on_small_worktop (rests.trial);

  measure ("sequences-in-blocks", 101, 1, search_all, small);
  tr_figures_unref (small);
  measure ("edit-with-6-rests", 201, 2, edit_one_dough, &rests);
  tr_figures_unref (rests.figures);
  tr_trial_unref (rests.trial);

  tr_figures_unref (figures);
  tr_figures_unref (edit.figures);
  tr_trial_unref (edit.trial);
  cairo_surface_destroy (surface);
  g_free (copy.from);
  g_free (copy.to);

  return 0;
}
