/* test-cut.c: sheets and pieces against worked examples and each other
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "calc/cut.h"
#include "calc/lamination.h"

#include "cut-sample.h"

/* Trade facts: 10 × 20 cm, 4 mm, 1.16 g/ml: 46.4 g; 9 × 25 × 4: 52.2 g;
 * 10 × 25 × 3: 43.5 g (computed from sizes in published lessons). */
static void
test_triangles_weigh_what_was_worked_out (void)
{
  const struct { double base, height, thickness, grams; } rows[] = {
    { 100, 200, 4, 46.4 }, { 90, 250, 4, 52.2 }, { 100, 250, 3, 43.5 },
  };
  g_autoptr (TrDough) dough = dough_to_cut (TR_SHAPE_TRIANGLE);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      dough->cut->base_mm = rows[i].base;
      dough->cut->height_mm = rows[i].height;
      g_assert_cmpfloat_with_epsilon (tr_cut_piece_area_mm2 (dough->cut) * rows[i].thickness / 1000 * 1.16,
                                      rows[i].grams, 0.05);
    }
}

static void
test_areas_of_all_shapes (void)
{
  const double areas[TR_N_SHAPES] = { 10000, 10000, 9600, 10000, G_PI * 2025, 9000 };

  for (guint shape = 0; shape < TR_N_SHAPES; shape++)
    {
      g_autoptr (TrDough) dough = dough_to_cut ((TrShape) shape);

      g_assert_cmpfloat_with_epsilon (tr_cut_piece_area_mm2 (dough->cut), areas[shape], 1e-9);
    }
}

/* The size of one sheet for so many pieces, with 5 mm of trim. */
static const struct {
  TrShape shape;
  int rows;
  double wanted;
  int per_row;
  double length, width;
} size_rows[] = {
  { TR_SHAPE_TRIANGLE, 1, 11, 11, 600, 200 },
  { TR_SHAPE_TRIANGLE, 2, 24, 12, 650, 400 },
  { TR_SHAPE_RIGHT_TRIANGLE, 1, 12, 12, 600, 200 },
  { TR_SHAPE_RIGHT_TRIANGLE, 2, 22, 12, 600, 400 },
  { TR_SHAPE_RECTANGLE, 2, 10, 5, 400, 240 },
  { TR_SHAPE_SQUARE, 3, 13, 5, 500, 300 },
  { TR_SHAPE_ROUND, 1, 6, 6, 590, 90 },
  { TR_SHAPE_ROUND, 2, 2, 1, 90, 190 },                      /* staggered would need more */
  { TR_SHAPE_ROUND, 4, 24, 6, 640, 90 + 3 * 86.602540378 },  /* staggered */
  { TR_SHAPE_SLICES, 2, 20, 10, 300, 600 },
};

static void
test_sheets_are_as_long_as_their_pieces (void)
{
  g_autoptr (TrBench) bench = endless_bench ();

  for (guint i = 0; i < G_N_ELEMENTS (size_rows); i++)
    {
      g_autoptr (TrDough) dough = dough_to_cut (size_rows[i].shape);
      TrSheet sheet;

      dough->cut->rows = size_rows[i].rows;
      dough->cut->trim_mm = 5;
      dough->batch_value = size_rows[i].wanted;
      g_assert_true (compute (dough, bench, NAN, &sheet));
      g_assert_cmpint (sheet.sheets, ==, 1);
      g_assert_cmpint (sheet.per_row, ==, size_rows[i].per_row);
      g_assert_cmpfloat_with_epsilon (sheet.length_mm, size_rows[i].length + 10, 1e-6);
      g_assert_cmpfloat_with_epsilon (sheet.width_mm, size_rows[i].width + 10, 1e-6);
      g_assert_cmpfloat_with_epsilon (sheet.wanted, size_rows[i].wanted, 1e-9);
      g_assert_cmpfloat_with_epsilon (sheet.spare_pieces, size_rows[i].per_row * size_rows[i].rows - size_rows[i].wanted, 1e-9);
    }
}

/* floor(2L/b) − 1 alternating triangles in a strip: 60 cm, 10 cm: 11. */
static void
test_mass_decides_how_many (void)
{
  const struct { TrShape shape; double length, width; int pieces; } rows[] = {
    { TR_SHAPE_TRIANGLE, 600, 200, 11 },
    { TR_SHAPE_TRIANGLE, 649, 200, 11 },
    { TR_SHAPE_RIGHT_TRIANGLE, 650, 200, 12 },
    { TR_SHAPE_RECTANGLE, 400, 120, 5 },
    { TR_SHAPE_SQUARE, 499, 100, 4 },
    { TR_SHAPE_ROUND, 590, 90, 6 },
    { TR_SHAPE_SLICES, 330, 300, 11 },
  };
  g_autoptr (TrBench) bench = endless_bench ();

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (TrDough) dough = dough_to_cut (rows[i].shape);
      TrSheet sheet;

      dough->batch_by = TR_BATCH_TOTAL_G;
      dough->cut->rows = 1;
      g_assert_true (compute (dough, bench, rows[i].length * rows[i].width * 4 / 1000 * DENSITY / 0.98, &sheet));
      g_assert_cmpfloat_with_epsilon (sheet.pieces_cut, rows[i].pieces, 1e-9);
      assert_close (sheet.length_mm, rows[i].length, 1e-9);
      g_assert_true (isnan (sheet.wanted));
      g_assert_true (isnan (sheet.spare_pieces));
    }
}

static void
test_area_mass_and_thickness_agree (void)
{
  g_autoptr (TrBench) bench = endless_bench ();

  for (int i = 0; i < 300; i++)
    {
      g_autoptr (TrDough) dough = dough_to_cut ((TrShape) (i % TR_N_SHAPES));
      TrSheet by_thickness, by_mass;

      randomise_cut (dough);
      g_assert_true (compute (dough, bench, NAN, &by_thickness));

      double area = tr_cut_piece_area_mm2 (dough->cut);
      double piece_g = area * dough->cut->thickness_mm / 1000 * DENSITY;
      double sheet_mm2 = by_thickness.length_mm * by_thickness.width_mm;

      assert_close (by_thickness.mass_g, sheet_mm2 * by_thickness.thickness_mm / 1000 * DENSITY, 1e-9);
      assert_close (size_volume (&by_thickness.rolled_mm), sheet_mm2 * by_thickness.thickness_mm, 1e-9);
      assert_close (by_thickness.pieces_cut * area + by_thickness.scrap_percent / 100 * sheet_mm2 * by_thickness.sheets,
                    sheet_mm2 * by_thickness.sheets, 1e-9);

      dough->cut->piece_mass_g = piece_g;
      dough->cut->thickness_mm = NAN;
      g_assert_true (compute (dough, bench, NAN, &by_mass));
      assert_close (by_mass.thickness_mm, by_thickness.thickness_mm, 1e-9);
      assert_close (by_mass.mass_g, by_thickness.mass_g, 1e-9);
    }
}

/* Sheets for N pieces weigh so much; that mass gives N pieces again, or on
 * fewer sheets not under 2 % less for each sheet saved. On a bench without
 * limits nothing is saved by a sheet, and N come back. */
static void
check_pieces_come_back (const TrBench *bench,
                        TrShape        shape)
{
  g_autoptr (TrDough) dough = dough_to_cut (shape);
  TrSheet asked, given;

  randomise_cut (dough);
  if (!compute (dough, bench, NAN, &asked) || asked.breaks != 0)
    return;

  double total_g = asked.sheets * asked.mass_g / (1 - dough->handling_loss_percent / 100);

  dough->batch_by = TR_BATCH_TOTAL_G;
  g_assert_true (compute (dough, bench, total_g, &given));
  g_assert_cmpfloat (given.pieces_cut * (1 + 0.02 * MAX (0, asked.sheets - given.sheets)), >=, asked.wanted - 1e-9);
  g_assert_cmpint (given.breaks, ==, 0);
  assert_close (given.sheets * given.mass_g, asked.sheets * asked.mass_g, 1e-9);

  dough->cut->rows = asked.rows;
  g_assert_true (compute (dough, bench, total_g, &given));
  if (given.sheets == asked.sheets)
    g_assert_cmpfloat (given.pieces_cut, >=, asked.pieces_cut);
}

static void
test_pieces_asked_come_back (void)
{
  g_autoptr (TrBench) endless = endless_bench ();
  g_autoptr (TrBench) bench = tr_bench_new ();

  for (int i = 0; i < 300; i++)
    {
      check_pieces_come_back (endless, (TrShape) (i % TR_N_SHAPES));
      check_pieces_come_back (bench, (TrShape) (i % TR_N_SHAPES));
    }
}

/* Outlines */

static double
outline_area (const TrPieceOutline *outline)
{
  double twice = 0;

  if (outline->n_corners == 0)
    return G_PI * outline->radius_mm * outline->radius_mm;
  for (int i = 0; i < outline->n_corners; i++)
    {
      int next = (i + 1) % outline->n_corners;

      twice += outline->x[i] * outline->y[next] - outline->x[next] * outline->y[i];
    }

  return fabs (twice) / 2;
}

static void
project (const TrPieceOutline *outline,
         double                x,
         double                y,
         double               *low,
         double               *high)
{
  *low = G_MAXDOUBLE;
  *high = -G_MAXDOUBLE;
  for (int i = 0; i < outline->n_corners; i++)
    {
      double at = outline->x[i] * x + outline->y[i] * y;

      *low = fmin (*low, at);
      *high = fmax (*high, at);
    }
}

/* Two convex shapes are apart if an edge of the first has the second on its
 * other side. */
static gboolean
is_apart_by_edge_of (const TrPieceOutline *a,
                     const TrPieceOutline *b)
{
  for (int i = 0; i < a->n_corners; i++)
    {
      int next = (i + 1) % a->n_corners;
      double x = a->y[next] - a->y[i], y = a->x[i] - a->x[next];
      double length = hypot (x, y), low[2], high[2];

      project (a, x / length, y / length, &low[0], &high[0]);
      project (b, x / length, y / length, &low[1], &high[1]);
      if (high[0] <= low[1] + 1e-6 || high[1] <= low[0] + 1e-6)
        return TRUE;
    }

  return FALSE;
}

static gboolean
is_apart (const TrPieceOutline *a,
          const TrPieceOutline *b)
{
  if (a->n_corners == 0)
    return hypot (a->x[0] - b->x[0], a->y[0] - b->y[0]) >= a->radius_mm + b->radius_mm - 1e-6;

  return is_apart_by_edge_of (a, b) || is_apart_by_edge_of (b, a);
}

static void
assert_inside (const TrPieceOutline *outline,
               double                trim,
               const TrSheet        *sheet)
{
  double radius = outline->n_corners == 0 ? outline->radius_mm : 0;

  for (int i = 0; i < MAX (outline->n_corners, 1); i++)
    {
      g_assert_cmpfloat (outline->x[i] - radius, >=, trim - 1e-6);
      g_assert_cmpfloat (outline->y[i] - radius, >=, trim - 1e-6);
      g_assert_cmpfloat (outline->x[i] + radius, <=, sheet->length_mm - trim + 1e-6);
      g_assert_cmpfloat (outline->y[i] + radius, <=, sheet->width_mm - trim + 1e-6);
    }
}

static void
check_outlines (const TrDough *dough,
                const TrSheet *sheet)
{
  int n = tr_sheet_count_pieces (sheet);
  g_autofree TrPieceOutline *outlines = g_new (TrPieceOutline, n);

  for (int i = 0; i < n; i++)
    {
      tr_sheet_get_piece (dough->cut, sheet, i, &outlines[i]);
      assert_inside (&outlines[i], dough->cut->trim_mm, sheet);
      assert_close (outline_area (&outlines[i]), tr_cut_piece_area_mm2 (dough->cut), 1e-9);
      for (int j = 0; j < i; j++)
        g_assert_true (is_apart (&outlines[i], &outlines[j]));
    }
}

static void
test_pieces_lie_inside_and_apart (void)
{
  g_autoptr (TrBench) bench = tr_bench_new ();

  for (int i = 0; i < 150; i++)
    {
      g_autoptr (TrDough) dough = dough_to_cut ((TrShape) (i % TR_N_SHAPES));
      TrSheet sheet;

      randomise_cut (dough);
      dough->batch_by = i % 4 == 0 ? TR_BATCH_TOTAL_G : TR_BATCH_PIECES;
      if (compute (dough, bench, g_test_rand_double_range (500, 3000), &sheet))
        check_outlines (dough, &sheet);
    }
}

static gboolean
has_mark (const GArray *marks,
          double        x)
{
  for (guint i = 0; i < marks->len; i++)
    if (fabs (g_array_index (marks, double, i) - x) < 1e-6)
      return TRUE;

  return FALSE;
}

/* Every corner of a triangle in the first row lies at a mark of its edge. */
static void
test_marks_are_where_the_corners_are (void)
{
  const TrShape shapes[] = { TR_SHAPE_TRIANGLE, TR_SHAPE_RIGHT_TRIANGLE, TR_SHAPE_RECTANGLE, TR_SHAPE_SQUARE,
                             TR_SHAPE_SLICES };
  g_autoptr (TrBench) bench = endless_bench ();

  for (int i = 0; i < 100; i++)
    {
      g_autoptr (TrDough) dough = dough_to_cut (shapes[(guint) i % G_N_ELEMENTS (shapes)]);
      TrSheet sheet;

      randomise_cut (dough);
      g_assert_true (compute (dough, bench, NAN, &sheet));

      g_autoptr (GArray) near = tr_sheet_dup_marks (dough->cut, &sheet, FALSE);
      g_autoptr (GArray) far = tr_sheet_dup_marks (dough->cut, &sheet, TRUE);
      for (int piece = 0; piece < sheet.per_row; piece++)
        {
          TrPieceOutline outline;

          tr_sheet_get_piece (dough->cut, &sheet, piece, &outline);
          for (int corner = 0; corner < outline.n_corners; corner++)
            g_assert_true (has_mark (outline.y[corner] < dough->cut->trim_mm + 1e-6 ? near : far, outline.x[corner]));
        }
    }
}

static void
test_far_edge_starts_half_a_base_in (void)
{
  g_autoptr (TrDough) dough = dough_to_cut (TR_SHAPE_TRIANGLE);
  const TrSheet sheet = { .rows = 2, .per_row = 4 };

  dough->cut->trim_mm = 8;

  g_autoptr (GArray) near = tr_sheet_dup_marks (dough->cut, &sheet, FALSE);
  g_autoptr (GArray) far = tr_sheet_dup_marks (dough->cut, &sheet, TRUE);
  g_assert_cmpuint (near->len, ==, 3);
  g_assert_cmpuint (far->len, ==, 3);
  for (guint i = 0; i < 3; i++)
    {
      g_assert_cmpfloat_with_epsilon (g_array_index (near, double, i), 8 + 100.0 * i, 1e-9);
      g_assert_cmpfloat_with_epsilon (g_array_index (far, double, i), 58 + 100.0 * i, 1e-9);
    }
}

/* Pieces */

static void
test_windings_of_a_rolled_piece (void)
{
  g_autoptr (TrDough) dough = dough_to_cut (TR_SHAPE_TRIANGLE);
  g_autoptr (TrBench) bench = endless_bench ();
  TrSheet sheet;

  /* 220 long pulled to 264, 4.8 mm to 4: √(264/(4π)) = 4.5835 windings */
  dough->cut->height_mm = 220;
  dough->cut->thickness_mm = 4.8;
  dough->cut->stretch_percent = 20;
  g_assert_true (compute (dough, bench, NAN, &sheet));
  g_assert_cmpfloat_with_epsilon (sheet.windings, 4.58350, 1e-5);
  g_assert_cmpfloat_with_epsilon (sheet.diameter_mm, 2 * 4.58350 * 4, 1e-4);
  g_assert_cmpfloat_with_epsilon (sheet.layers_across, 2 * 4.58350 * 27, 1e-3);
  /* the spiral's section is what was rolled up */
  g_assert_cmpfloat_with_epsilon (G_PI * sheet.diameter_mm * sheet.diameter_mm / 4, 264 * 4, 1e-6);

  dough->cut->rolled_up = 0;
  g_assert_true (compute (dough, bench, NAN, &sheet));
  g_assert_true (isnan (sheet.windings) && isnan (sheet.diameter_mm) && isnan (sheet.layers_across));
}

static void
test_trays (void)
{
  const struct { TrShape shape; int rolled_up; double along, across, per_tray; } rows[] = {
    { TR_SHAPE_SQUARE, 0, 100, 100, 4 * 2 },
    { TR_SHAPE_RECTANGLE, 0, 80, 120, 3 * 3 },      /* the other way round 4 × 2 */
    { TR_SHAPE_RECTANGLE, 1, 80, NAN, NAN },
    { TR_SHAPE_TRIANGLE, 1, 100, NAN, NAN },
    { TR_SHAPE_SLICES, -1, NAN, NAN, NAN },
  };
  g_autoptr (TrBench) bench = tr_bench_new ();

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (TrDough) dough = dough_to_cut (rows[i].shape);
      const double *foot;
      TrSheet sheet;

      dough->cut->rolled_up = rows[i].rolled_up;
      g_assert_true (compute (dough, bench, NAN, &sheet));
      foot = sheet.trays.footprint_mm.mm;
      if (!isnan (rows[i].along))
        g_assert_cmpfloat_with_epsilon (foot[0], rows[i].along, 1e-9);
      if (!isnan (rows[i].across))
        g_assert_cmpfloat_with_epsilon (foot[1], rows[i].across, 1e-9);
      else if (rows[i].rolled_up == 1)
        g_assert_cmpfloat_with_epsilon (foot[1], sheet.diameter_mm, 1e-9);
      if (!isnan (rows[i].per_tray))
        g_assert_cmpfloat_with_epsilon (sheet.trays.per_tray, rows[i].per_tray, 1e-9);
      g_assert_cmpfloat_with_epsilon (sheet.trays.trays, ceil (sheet.pieces_cut / sheet.trays.per_tray), 1e-9);
      g_assert_cmpfloat_with_epsilon (sheet.trays.loads, ceil (sheet.trays.trays / 2), 1e-9);
    }
}

static void
test_a_piece_larger_than_the_tray (void)
{
  g_autoptr (TrDough) dough = dough_to_cut (TR_SHAPE_SQUARE);
  g_autoptr (TrBench) bench = tr_bench_new ();
  TrSheet sheet;

  dough->cut->side_mm = 420;
  g_assert_true (compute (dough, bench, NAN, &sheet));
  g_assert_cmpfloat_with_epsilon (sheet.trays.per_tray, 0, 1e-9);
  g_assert_true (isnan (sheet.trays.trays) && isnan (sheet.trays.loads));
}

static void
test_printed_sheet (void)
{
  g_autoptr (TrDough) dough = dough_to_cut (TR_SHAPE_SQUARE);
  g_autoptr (TrBench) bench = tr_bench_new ();
  TrSheet sheet;

  dough->batch_value = 8;
  g_assert_true (compute (dough, bench, NAN, &sheet));
  g_assert_true (isnan (sheet.printed_thickness_mm));

  /* 8 squares of 100, 4 mm, spread over 500 × 200: 3.2 mm */
  dough->cut->printed_sheet_mm[0] = 500;
  dough->cut->printed_sheet_mm[1] = 200;
  g_assert_true (compute (dough, bench, NAN, &sheet));
  g_assert_cmpfloat_with_epsilon (sheet.printed_thickness_mm, 3.2, 1e-9);
}

static void
test_sheet_is_rolled_longer_and_thinner_than_it_rests (void)
{
  g_autoptr (TrDough) dough = dough_to_cut (TR_SHAPE_SQUARE);
  g_autoptr (TrBench) bench = tr_bench_new ();
  TrSheet sheet;

  dough->batch_value = 8;
  dough->cut->shrink_percent = 20;
  dough->cut->rows = 1;
  g_assert_true (compute (dough, bench, NAN, &sheet));
  /* 800 rests, but 1 000 would have to be rolled: two sheets instead */
  g_assert_cmpint (sheet.sheets, ==, 2);
  g_assert_cmpfloat_with_epsilon (sheet.length_mm, 400, 1e-9);
  g_assert_cmpfloat_with_epsilon (sheet.rolled_mm.mm[0], 500, 1e-9);
  g_assert_cmpfloat_with_epsilon (sheet.rolled_mm.mm[1], 100, 1e-9);
  g_assert_cmpfloat_with_epsilon (sheet.rolled_mm.mm[2], 3.2, 1e-9);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/cut/triangles-weigh-what-was-worked-out", test_triangles_weigh_what_was_worked_out);
  g_test_add_func ("/cut/areas-of-all-shapes", test_areas_of_all_shapes);
  g_test_add_func ("/cut/sheets-are-as-long-as-their-pieces", test_sheets_are_as_long_as_their_pieces);
  g_test_add_func ("/cut/mass-decides-how-many", test_mass_decides_how_many);
  g_test_add_func ("/cut/area-mass-and-thickness-agree", test_area_mass_and_thickness_agree);
  g_test_add_func ("/cut/pieces-asked-come-back", test_pieces_asked_come_back);
  g_test_add_func ("/cut/pieces-lie-inside-and-apart", test_pieces_lie_inside_and_apart);
  g_test_add_func ("/cut/marks-are-where-the-corners-are", test_marks_are_where_the_corners_are);
  g_test_add_func ("/cut/far-edge-starts-half-a-base-in", test_far_edge_starts_half_a_base_in);
  g_test_add_func ("/cut/windings-of-a-rolled-piece", test_windings_of_a_rolled_piece);
  g_test_add_func ("/cut/trays", test_trays);
  g_test_add_func ("/cut/a-piece-larger-than-the-tray", test_a_piece_larger_than_the_tray);
  g_test_add_func ("/cut/printed-sheet", test_printed_sheet);
  g_test_add_func ("/cut/sheet-is-rolled-longer-and-thinner", test_sheet_is_rolled_longer_and_thinner_than_it_rests);

  return g_test_run ();
}
