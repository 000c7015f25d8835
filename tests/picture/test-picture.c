/* test-picture.c: what is drawn is what is hit, and is said in words
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "calc/cut.h"
#include "calc/lamination.h"
#include "picture/shapes.h"
#include "samples.h"

typedef enum { LAYERS, LOCK_IN, TURN, SHEET, N_PICTURES } Which;

static const double sizes[][2] = { { 900, 400 }, { 640, 640 }, { 420, 300 }, { 300, 520 } };

static TrPicture *
make (Which                 which,
      const TrDoughFigures *figures,
      guint                 turn,
      const TrLook         *look,
      double                width,
      double                height)
{
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  switch (which)
    {
    case LAYERS: return tr_layers_picture_new (figures, &reader, look, width, height);
    case LOCK_IN: return tr_lock_in_picture_new (figures, &reader, look, width, height);
    case TURN: return tr_turn_picture_new (figures, turn, &reader, look, width, height);
    case SHEET: return tr_sheet_picture_new (figures, &reader, look, width, height);
    case N_PICTURES:
    default: g_assert_not_reached ();
    }
}

static void
init_look (TrLook *look)
{
  tr_look_init_screen (look, FALSE, FALSE, 13);
}

static TrFigures *
compute_samples_and_random (void)
{
  g_autoptr (TrTrial) trial = sample_trial_all ();

  for (int i = 0; i < 40; i++)
    sample_add_random (trial);
  return tr_figures_compute (trial, NULL);
}

/* ---- layers ---- */

static double
whole_height (const TrPicture *picture)
{
  guint n;
  const double *corners = tr_picture_get_outline (picture, &(TrHit) { TR_PART_OF_BAND, 0 }, &n);

  return corners != NULL ? corners[3] - corners[1] : NAN;
}

static void
test_bands_are_hit (void)
{
  g_autoptr (TrTrial) trial = sample_trial_all ();
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  guint checked = 0;
  TrLook look;

  init_look (&look);
  for (guint i = 0; i < figures->doughs->len; i++)
    {
      const TrDoughFigures *dough = tr_figures_get_dough (figures, i);
      g_autoptr (GArray) stack = dough->has_lamination ? tr_stack_new (dough->dough, &dough->lamination, G_MAXUINT) : NULL;
      g_autoptr (TrPicture) picture = make (LAYERS, dough, 0, &look, 900, 600);
      double sum = 0;

      for (guint b = 0; stack != NULL && b < stack->len; b++)
        {
          TrHit hit, wanted = { TR_PART_OF_BAND, (int) b };
          TrBox box;

          g_assert_true (tr_picture_get_box (picture, &wanted, &box));
          hit = tr_picture_hit (picture, box.x + box.width / 2, box.y + box.height / 2);
          g_assert_cmpint (hit.part, ==, TR_PART_OF_BAND);
          g_assert_cmpint (hit.index, ==, b);
          sum += box.height;
          checked++;
        }
      if (stack != NULL)
        g_assert_cmpfloat_with_epsilon (sum, whole_height (picture), 1e-6);
    }
  g_assert_cmpuint (checked, >, 1500);
}

/* A band is as high as its share of the stack, and named as what it is. */
static void
test_bands_are_in_proportion (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_DANISH);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
  g_autoptr (GArray) stack = tr_stack_new (dough->dough, &dough->lamination, G_MAXUINT);
  g_autoptr (TrPicture) picture = NULL;
  TrLook look;

  init_look (&look);
  picture = make (LAYERS, dough, 0, &look, 900, 600);
  for (guint i = 0; i < stack->len; i++)
    {
      const TrStackBand *band = &g_array_index (stack, TrStackBand, stack->len - 1 - i);
      TrHit hit = { TR_PART_OF_BAND, (int) i };
      g_autofree char *text = tr_picture_dup_hit_text (picture, &hit);
      TrBox box;

      g_assert_true (tr_picture_get_box (picture, &hit, &box));
      g_assert_cmpfloat_with_epsilon (box.height, band->share * whole_height (picture), 1e-6);
      g_assert_true (g_str_has_prefix (text, band->is_fat ? "Fat layer" : "Dough layer"));
    }
}

/* Fat lies outside in an inverse lock-in, dough in all others. */
static void
test_outer_bands (void)
{
  for (TrStyle style = TR_STYLE_HALF; style < TR_N_STYLES; style++)
    {
      g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
      g_autoptr (TrFigures) figures = NULL;
      g_autoptr (TrPicture) picture = NULL;
      g_autofree char *text = NULL;
      TrLook look;

      tr_trial_get_dough (trial, 0)->lock_in->style = style;
      figures = tr_figures_compute (trial, NULL);
      init_look (&look);
      picture = make (LAYERS, tr_figures_get_dough (figures, 0), 0, &look, 900, 600);
      text = tr_picture_dup_hit_text (picture, &(TrHit) { TR_PART_OF_BAND, 0 });
      g_assert_true (g_str_has_prefix (text, style == TR_STYLE_INVERSE ? "Fat layer 1" : "Dough layer 1"));
    }
}

/* What is too thin for pixels keeps its tone: the mean of the drawn box is
 * the mixture of dough and fat by volume. */
static void
test_tone_is_true (void)
{
  static const double heights[] = { 120, 300, 500, 900, 1400 };
  g_autoptr (TrTrial) trial = sample_trial_all ();
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  TrLook look;

  init_look (&look);
  for (guint d = 0; d < figures->doughs->len; d++)
    for (guint h = 0; h < G_N_ELEMENTS (heights); h++)
      {
        const TrDoughFigures *dough = tr_figures_get_dough (figures, d);
        g_autoptr (TrPicture) picture = make (LAYERS, dough, 0, &look, 900, heights[h]);
        guint n;
        const double *box = tr_picture_get_outline (picture, &(TrHit) { TR_PART_OF_BAND, 0 }, &n);
        cairo_surface_t *surface;
        cairo_t *cr;
        double sum = 0, count = 0, tone;

        if (box == NULL)
          continue;
        surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 900, (int) heights[h]);
        cr = cairo_create (surface);
        tr_picture_draw (picture, cr);
        cairo_surface_flush (surface);
        for (int y = (int) box[1] + 2; y < (int) box[3] - 2; y++)
          {
            const guint32 *row = (const guint32 *) (const void *) (cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface));

            sum += (row[(int) box[0] + 6] & 0xff) / 255.0;       /* blue differs most */
            count++;
          }
        tone = (sum / count - look.dough.b) / (look.fat.b - look.dough.b);
        /* two rows at either end and the window's outline are left out or in the way */
        g_assert_cmpfloat_with_epsilon (tone, dough->lamination.fat_volume_fraction, 0.03 + 6 / count);
        cairo_destroy (cr);
        cairo_surface_destroy (surface);
      }
}

static void
test_too_many_bands_are_said (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_STRESS);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autoptr (TrPicture) picture = NULL;
  TrLook look;

  init_look (&look);
  picture = make (LAYERS, tr_figures_get_dough (figures, 0), 0, &look, 900, 400);
  g_assert_cmpfloat (tr_figures_get_dough (figures, 0)->lamination.bands, >, TR_MAX_DRAWN_BANDS);
  g_assert_nonnull (strstr (tr_picture_get_description (picture), "More bands than can be drawn"));
  g_assert_cmpint (tr_picture_hit (picture, 100, 100).part, ==, TR_PART_OF_NOTHING);
}

static void
test_layers_without_masses_say_so (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
  g_autoptr (TrTrial) draft = tr_trial_copy (trial);
  g_ptr_array_set_size (tr_trial_own_dough (draft, 0)->lines, 0);
  g_autoptr (TrFigures) figures = tr_figures_compute (draft, NULL);
  g_autoptr (TrPicture) picture = NULL;
  TrLook look;

  init_look (&look);
  picture = make (LAYERS, tr_figures_get_dough (figures, 0), 0, &look, 900, 400);
  g_assert_nonnull (strstr (tr_picture_get_description (picture), "once dough and roll-in are weighed"));
  g_assert_null (strstr (tr_picture_get_description (picture), "More bands"));
  g_assert_cmpuint (tr_picture_count_bands (picture), ==, 0);
}

/* ---- sheet ---- */

/* The greatest distance, in units of the picture, between a piece as drawn and
 * its outline by calc, moved and scaled, and turned a quarter if `turned`. */
static double
find_deviation (const TrDoughFigures *dough,
                const TrPicture      *picture,
                int                   index,
                gboolean              turned)
{
  guint n;
  const double *sheet = tr_picture_get_outline (picture, &(TrHit) { TR_PART_OF_SHEET, 0 }, &n);
  double wide = sheet[2] - sheet[0], high = sheet[5] - sheet[1];
  double scale = MAX (wide, high) / MAX (dough->sheet.length_mm, dough->sheet.width_mm), most = 0;
  const double *corners = tr_picture_get_outline (picture, &(TrHit) { TR_PART_OF_PIECE, index }, &n);
  TrPieceOutline piece;

  tr_sheet_get_piece (dough->dough->cut, &dough->sheet, index, &piece);
  g_assert_cmpint (n, ==, MAX (1, piece.n_corners));
  for (guint c = 0; c < n; c++)
    {
      double x = turned ? sheet[0] + piece.y[c] * scale : sheet[0] + piece.x[c] * scale;
      double y = turned ? sheet[1] + piece.x[c] * scale : sheet[5] - piece.y[c] * scale;

      most = MAX (most, hypot (corners[2 * c] - x, corners[2 * c + 1] - y));
    }
  return most;
}

/* As it is or turned a quarter, never mirrored. */
static void
check_pieces (const TrDoughFigures *dough,
              const TrPicture      *picture)
{
  int n = tr_sheet_count_pieces (&dough->sheet);
  guint n_corners;
  gboolean turned;

  if (tr_picture_get_outline (picture, &(TrHit) { TR_PART_OF_PIECE, 0 }, &n_corners) == NULL)
    return;
  turned = find_deviation (dough, picture, n - 1, TRUE) < find_deviation (dough, picture, n - 1, FALSE);
  for (int i = 0; i < n; i++)
    {
      const double *corners = tr_picture_get_outline (picture, &(TrHit) { TR_PART_OF_PIECE, i }, &n_corners);
      double x = 0, y = 0;

      /* the sheet's own edges lie on whole pixels */
      g_assert_cmpfloat (find_deviation (dough, picture, i, turned), <, 1.5);
      for (guint c = 0; c < n_corners; c++)
        {
          x += corners[2 * c] / n_corners;
          y += corners[2 * c + 1] / n_corners;
        }
      g_assert_cmpint (tr_picture_hit (picture, x, y).part, ==, TR_PART_OF_PIECE);
      g_assert_cmpint (tr_picture_hit (picture, x, y).index, ==, i);
    }
}

static void
test_pieces_are_those_of_the_sheet (void)
{
  g_autoptr (TrFigures) figures = compute_samples_and_random ();
  TrLook look;

  init_look (&look);
  for (guint i = 0; i < figures->doughs->len; i++)
    {
      const TrDoughFigures *dough = tr_figures_get_dough (figures, i);

      for (guint s = 0; s < G_N_ELEMENTS (sizes) && dough->has_sheet; s++)
        {
          g_autoptr (TrPicture) picture = make (SHEET, dough, 0, &look, sizes[s][0], sizes[s][1]);

          check_pieces (dough, picture);
        }
    }
}

static gboolean
has_text (const TrPicture *picture,
          const char      *text)
{
  for (guint i = 0; i < tr_picture_count_texts (picture); i++)
    if (g_str_equal (tr_picture_get_text (picture, i, NULL), text))
      return TRUE;
  return FALSE;
}

/* A triangle's far edge starts half a base in. */
static void
test_marks_along_both_edges (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
  g_autoptr (TrPicture) picture = NULL;
  TrReader reader;
  TrLook look;

  init_look (&look);
  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  picture = make (SHEET, dough, 0, &look, 900, 600);
  for (int far_edge = 0; far_edge < 2; far_edge++)
    {
      g_autoptr (GArray) marks = tr_sheet_dup_marks (dough->dough->cut, &dough->sheet, far_edge);

      g_assert_cmpuint (marks->len, >, 2);
      g_assert_cmpfloat_with_epsilon (g_array_index (marks, double, 0),
                                      dough->dough->cut->trim_mm + (far_edge ? dough->dough->cut->base_mm / 2 : 0), 1e-9);
      for (guint i = 0; i < marks->len; i++)
        {
          g_autofree char *text = tr_words_length_number (&reader, g_array_index (marks, double, i));

          g_assert_true (has_text (picture, text));
        }
    }
}

static void
test_several_sheets_are_said (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_PUFF);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autoptr (TrPicture) picture = NULL;
  TrLook look;

  init_look (&look);
  picture = make (SHEET, tr_figures_get_dough (figures, 0), 0, &look, 700, 500);
  g_assert_cmpint (tr_figures_get_dough (figures, 0)->sheet.sheets, ==, 2);
  g_assert_true (has_text (picture, "2 × this sheet"));
}

static void
test_letter_is_numbered (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_DANISH);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autoptr (TrPicture) picture = NULL;
  double x[2] = { 0 };
  TrLook look;

  init_look (&look);
  picture = make (LOCK_IN, tr_figures_get_dough (figures, 0), 0, &look, 700, 300);
  for (guint i = 0; i < tr_picture_count_texts (picture); i++)
    {
      TrBox box;
      const char *text = tr_picture_get_text (picture, i, &box);

      if (g_str_equal (text, "1") || g_str_equal (text, "2"))
        x[text[0] - '1'] = box.x + box.width / 2;
    }
  /* first the bare third, which has no fat under it, then the other */
  g_assert_cmpfloat (x[1], >, 0);
  g_assert_cmpfloat (x[0], >, x[1]);
  g_assert_cmpint (tr_picture_hit (picture, x[0] + 12, 80).index, ==, 0);
  g_assert_cmpint (tr_picture_hit (picture, x[1] + 12, 80).index, ==, 1);
}

/* A broken limit is marked by words, not only by colour. */
static void
test_breaks_are_said (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_PUFF);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
  guint broken = 0;
  TrLook look;

  init_look (&look);
  for (guint i = 0; i < dough->lamination.steps->len; i++)
    {
      const TrTurnFigures *turn = &g_array_index (dough->lamination.steps, TrTurnFigures, i);
      g_autoptr (TrPicture) picture = make (TURN, dough, i, &look, 800, 260);

      for (int b = 0; b < TR_N_BREAKS; b++)
        if (turn->breaks & (1 << b))
          {
            g_assert_true (has_text (picture, tr_words_break ((TrBreaks) (1 << b))));
            g_assert_nonnull (strstr (tr_picture_get_description (picture), tr_words_break ((TrBreaks) (1 << b))));
            broken++;
          }
    }
  g_assert_cmpuint (broken, >, 0);
}

static cairo_surface_t *
paint (const TrPicture *picture)
{
  double width, height;
  cairo_surface_t *surface;
  cairo_t *cr;

  tr_picture_get_size (picture, &width, &height);
  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) width, (int) height);
  cr = cairo_create (surface);
  tr_picture_draw (picture, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

/* A block that was locked in inverse is fat outside. */
static void
test_blocks_show_what_is_outside (void)
{
  for (TrStyle style = TR_STYLE_HALF; style < TR_N_STYLES; style++)
    {
      g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
      g_autoptr (TrFigures) figures = NULL;
      g_autoptr (TrPicture) picture = NULL;
      cairo_surface_t *surface;
      const double *corners;
      const guint8 *pixel;
      const TrColour *wanted;
      TrLook look;
      guint n;

      tr_trial_get_dough (trial, 0)->lock_in->style = style;
      figures = tr_figures_compute (trial, NULL);
      init_look (&look);
      picture = make (TURN, tr_figures_get_dough (figures, 0), 0, &look, 900, 400);
      surface = paint (picture);
      corners = tr_picture_get_outline (picture, &(TrHit) { TR_PART_OF_TURN, 0 }, &n);
      pixel = cairo_image_surface_get_data (surface) + ((int) corners[1] + 4) * cairo_image_surface_get_stride (surface) + ((int) corners[0] + 4) * 4;
      wanted = style == TR_STYLE_INVERSE ? &look.fat : &look.dough;
      g_assert_cmpfloat_with_epsilon (pixel[0] / 255.0, wanted->b, 0.01);
      g_assert_cmpfloat_with_epsilon (pixel[1] / 255.0, wanted->g, 0.01);
      cairo_surface_destroy (surface);
    }
}

/* ---- words ---- */

static void
assert_says (const TrPicture *picture,
             char            *text)
{
  g_autofree char *owned = text;

  if (strstr (tr_picture_get_description (picture), owned) == NULL)
    g_error ("“%s” does not say “%s”", tr_picture_get_description (picture), owned);
}

static void
test_descriptions_have_the_numbers (void)
{
  g_autoptr (TrTrial) trial = sample_trial_all ();
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  TrReader reader;
  TrLook look;

  init_look (&look);
  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  for (guint i = 0; i < figures->doughs->len; i++)
    {
      const TrDoughFigures *dough = tr_figures_get_dough (figures, i);
      g_autoptr (TrPicture) layers = make (LAYERS, dough, 0, &look, 900, 400);
      g_autoptr (TrPicture) lock_in = make (LOCK_IN, dough, 0, &look, 900, 400);
      g_autoptr (TrPicture) sheet = make (SHEET, dough, 0, &look, 900, 400);

      if (dough->has_lamination)
        {
          assert_says (layers, tr_words_count (&reader, dough->lamination.fat_layers));
          assert_says (layers, tr_words_count (&reader, dough->lamination.dough_layers));
          assert_says (layers, tr_words_count (&reader, dough->lamination.bands));
          assert_says (lock_in, tr_words_size (&reader, &dough->lamination.lock_in.fat_mm));
          assert_says (lock_in, tr_words_size (&reader, &dough->lamination.lock_in.dough_mm));
          assert_says (lock_in, tr_words_size (&reader, &dough->lamination.lock_in.block_mm));
        }
      for (guint t = 0; dough->has_lamination && t < dough->lamination.steps->len; t++)
        {
          const TrTurnFigures *turn = &g_array_index (dough->lamination.steps, TrTurnFigures, t);
          g_autoptr (TrPicture) picture = make (TURN, dough, t, &look, 900, 400);

          assert_says (picture, tr_words_size (&reader, &turn->start_mm));
          assert_says (picture, tr_words_size (&reader, &turn->rolled_mm));
          assert_says (picture, tr_words_size (&reader, &turn->folded_mm));
        }
      if (dough->has_sheet)
        {
          assert_says (sheet, tr_words_size (&reader, &dough->sheet.rolled_mm));
          assert_says (sheet, tr_words_count (&reader, dough->sheet.pieces_cut));
          assert_says (sheet, tr_words_percent (&reader, dough->sheet.scrap_percent));
        }
    }
}

/* ---- any dough, any size ---- */

static void
assert_inside (const TrPicture *picture,
               double           width,
               double           height,
               const char      *name)
{
  TrBox box;

  tr_picture_get_extents (picture, &box);
  if (box.x < -1 || box.y < -1 || box.x + box.width > width + 1 || box.y + box.height > height + 1)
    {
      g_test_message ("%s: shapes reach from %g, %g to %g, %g", name, box.x, box.y, box.x + box.width, box.y + box.height);
      g_test_fail ();
    }
}

static void
assert_no_overlap (const TrPicture *picture,
                   const char      *name)
{
  guint n = tr_picture_count_texts (picture);
  g_autofree TrBox *boxes = g_new (TrBox, MAX (1, n));

  for (guint i = 0; i < n; i++)
    tr_picture_get_text (picture, i, &boxes[i]);
  for (guint i = 0; i < n; i++)
    for (guint k = i + 1; k < n; k++)
      {
        double across = MIN (boxes[i].x + boxes[i].width, boxes[k].x + boxes[k].width) - MAX (boxes[i].x, boxes[k].x);
        double down = MIN (boxes[i].y + boxes[i].height, boxes[k].y + boxes[k].height) - MAX (boxes[i].y, boxes[k].y);

        /* the boxes hold accents and tails that figures do not have */
        if (across > 1.0 && down > 3.0)
          {
            g_test_message ("%s: “%s” lies on “%s”", name, tr_picture_get_text (picture, i, NULL), tr_picture_get_text (picture, k, NULL));
            g_test_fail ();
          }
      }
}

static void
check_pictures (const TrDoughFigures *dough,
                const TrLook         *look,
                double                width,
                double                height)
{
  static const char *const names[] = { "layers", "lock-in", "turn", "sheet" };

  for (Which which = LAYERS; which < N_PICTURES; which++)
    {
      guint n = which == TURN ? MAX (1, dough->dough->turns->len) : 1;

      for (guint t = 0; t < n; t++)
        {
          g_autoptr (TrPicture) picture = make (which, dough, t, look, width, height);
          g_autofree char *name = g_strdup_printf ("%s %u of “%s” at %g × %g", names[which], t, dough->dough->name, width, height);

          g_assert_cmpstr (tr_picture_get_description (picture), !=, "");
          assert_inside (picture, width, height, name);
          assert_no_overlap (picture, name);
        }
    }
}

static void
test_nothing_outside_or_overlapping (void)
{
  g_autoptr (TrFigures) figures = compute_samples_and_random ();
  TrLook look;

  init_look (&look);
  for (guint i = 0; i < figures->doughs->len; i++)
    for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
      check_pictures (tr_figures_get_dough (figures, i), &look, sizes[s][0], sizes[s][1]);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/picture/layers/every-band-is-hit-and-they-fill-the-height", test_bands_are_hit);
  g_test_add_func ("/picture/layers/bands-are-in-proportion", test_bands_are_in_proportion);
  g_test_add_func ("/picture/layers/fat-is-outside-only-when-inverse", test_outer_bands);
  g_test_add_func ("/picture/layers/thin-bands-keep-their-tone", test_tone_is_true);
  g_test_add_func ("/picture/layers/without-masses-say-so", test_layers_without_masses_say_so);
  g_test_add_func ("/picture/layers/too-many-bands-are-said", test_too_many_bands_are_said);
  g_test_add_func ("/picture/sheet/pieces-are-those-of-the-sheet", test_pieces_are_those_of_the_sheet);
  g_test_add_func ("/picture/sheet/marks-along-both-edges", test_marks_along_both_edges);
  g_test_add_func ("/picture/sheet/several-sheets-are-said", test_several_sheets_are_said);
  g_test_add_func ("/picture/lock-in/letter-says-which-third-first", test_letter_is_numbered);
  g_test_add_func ("/picture/turn/blocks-show-what-is-outside", test_blocks_show_what_is_outside);
  g_test_add_func ("/picture/turn/broken-limits-are-said", test_breaks_are_said);
  g_test_add_func ("/picture/descriptions-have-the-numbers", test_descriptions_have_the_numbers);
  g_test_add_func ("/picture/nothing-lies-outside-or-on-another-text", test_nothing_outside_or_overlapping);

  return g_test_run ();
}
