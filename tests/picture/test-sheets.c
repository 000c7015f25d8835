/* test-sheets.c: the sheets on the bench, and the edges that are dragged
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "calc/cut.h"
#include "picture/shapes.h"
#include "picture/sheets.h"
#include "samples.h"

static const double sizes[][2] = { { 900, 400 }, { 540, 480 }, { 420, 300 }, { 300, 520 }, { 1200, 900 } };

static TrReader reader;
static TrLook look;

/* A copy of the figures' trial with another number of pieces. */
static TrFigures *
compute_pieces (Sample sample,
                double pieces)
{
  g_autoptr (TrTrial) trial = sample_trial_new (sample);

  tr_trial_get_dough (trial, 0)->batch_by = TR_BATCH_PIECES;
  tr_trial_get_dough (trial, 0)->batch_value = pieces;
  return tr_figures_compute (trial, NULL);
}

static int
count_parts (const TrPicture *picture,
             TrPicturePart    part,
             int              most)
{
  int n = 0;
  guint corners;

  for (int i = 0; i < most; i++)
    n += tr_picture_get_outline (picture, &(TrHit) { part, i }, &corners) != NULL;
  return n;
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

static TrPicture *
draw (const TrFigures *figures,
      double           width,
      double           height)
{
  return tr_sheets_picture_new (tr_figures_get_dough (figures, 0), &reader, &look, width, height, NULL);
}

/* Up to six are drawn one by one, each with all its pieces. */
static void
test_as_many_sheets_are_drawn (void)
{
  static const int pieces[] = { 12, 24, 48, 70, 96, 200, 260 };
  gboolean seen_several = FALSE, seen_few = FALSE;

  for (guint i = 0; i < G_N_ELEMENTS (pieces); i++)
    {
      g_autoptr (TrFigures) figures = compute_pieces (SAMPLE_CROISSANT, pieces[i]);
      const TrSheet *sheet = &tr_figures_get_dough (figures, 0)->sheet;
      g_autoptr (TrPicture) picture = draw (figures, 900, 700);
      g_autofree char *heading = g_strdup_printf (sheet->sheets == 1 ? "%d sheet" : "%d sheets", sheet->sheets);
      g_autofree char *times = g_strdup_printf ("× %d", sheet->sheets);
      int drawn = sheet->sheets <= 6 ? sheet->sheets : 3;

      g_assert_cmpint (count_parts (picture, TR_PART_OF_SHEET, 20), ==, drawn);
      g_assert_cmpint (count_parts (picture, TR_PART_OF_PIECE, 1000), ==, drawn * tr_sheet_count_pieces (sheet));
      g_assert_true (has_text (picture, heading));
      g_assert_cmpint (has_text (picture, times), ==, sheet->sheets > 6);
      seen_several |= sheet->sheets > 1 && sheet->sheets <= 6;
      seen_few |= sheet->sheets > 6;
    }
  g_assert_true (seen_several && seen_few);
}

/* Two sheets of one size, side by side or above each other, never over each other. */
static void
test_sheets_are_alike_and_apart (void)
{
  g_autoptr (TrFigures) figures = compute_pieces (SAMPLE_CROISSANT, 48);

  g_assert_cmpint (tr_figures_get_dough (figures, 0)->sheet.sheets, ==, 2);
  for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
    {
      g_autoptr (TrPicture) picture = draw (figures, sizes[s][0], sizes[s][1]);
      TrBox one, other;

      g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_SHEET, 0 }, &one));
      g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_SHEET, 1 }, &other));
      g_assert_cmpfloat_with_epsilon (one.width, other.width, 1.5);
      g_assert_cmpfloat_with_epsilon (one.height, other.height, 1.5);
      g_assert_true (one.x + one.width <= other.x || other.x + other.width <= one.x ||
                     one.y + one.height <= other.y || other.y + other.height <= one.y);
    }
}

/* The last pieces of the last sheet. */
static void
test_spare_pieces_are_named (void)
{
  g_autoptr (TrFigures) figures = compute_pieces (SAMPLE_CROISSANT, 46);
  const TrSheet *sheet = &tr_figures_get_dough (figures, 0)->sheet;
  g_autoptr (TrPicture) picture = draw (figures, 900, 700);
  int n = (int) sheet->pieces_cut, spare = (int) sheet->spare_pieces;

  g_assert_cmpint (spare, >, 0);
  for (int i = 0; i < n; i++)
    {
      g_autofree char *text = tr_picture_dup_hit_text (picture, &(TrHit) { TR_PART_OF_PIECE, i });

      g_assert_cmpint (strstr (text, "spare") != NULL, ==, i >= n - spare);
    }
  g_assert_nonnull (strstr (tr_picture_get_description (picture), "more than wanted"));
}

/* Worktop, tray and sheet to one scale, the tray with its size and its pieces in words. */
static void
test_worktop_and_tray_are_to_scale (void)
{
  g_autoptr (TrFigures) figures = compute_pieces (SAMPLE_CROISSANT, 24);
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
  g_autoptr (TrPicture) picture = draw (figures, 900, 700);
  g_autofree char *tray_size = tr_words_area_size (&reader, dough->bench->tray_mm[0], dough->bench->tray_mm[1]);
  g_autofree char *top_size = tr_words_area_size (&reader, dough->bench->worktop_mm[0], dough->bench->worktop_mm[1]);
  g_autofree char *per_tray = tr_words_count (&reader, dough->sheet.trays.per_tray);
  g_autofree char *said = NULL, *top_said = NULL;
  TrBox sheet, tray, top;
  double scale;

  g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_SHEET, 0 }, &sheet));
  g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_TRAY, 0 }, &tray));
  g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_WORKTOP, 0 }, &top));
  scale = MAX (sheet.width, sheet.height) / MAX (dough->sheet.length_mm, dough->sheet.width_mm);
  g_assert_cmpfloat_with_epsilon (MAX (tray.width, tray.height), scale * dough->bench->tray_mm[0], 3);
  g_assert_cmpfloat_with_epsilon (MIN (tray.width, tray.height), scale * dough->bench->tray_mm[1], 3);
  g_assert_cmpfloat_with_epsilon (MAX (top.width, top.height), scale * dough->bench->worktop_mm[0], 3);
  said = tr_picture_dup_hit_text (picture, &(TrHit) { TR_PART_OF_TRAY, 0 });
  g_assert_nonnull (strstr (said, tray_size));
  g_assert_nonnull (strstr (said, per_tray));
  g_assert_nonnull (strstr (tr_picture_get_description (picture), said));
  top_said = tr_picture_dup_hit_text (picture, &(TrHit) { TR_PART_OF_WORKTOP, 0 });
  g_assert_nonnull (strstr (top_said, top_size));
}

/* ---- edges ---- */

typedef double (*GetSide) (const TrCut *cut);

static double get_base (const TrCut *cut) { return cut->base_mm; }
static double get_height (const TrCut *cut) { return cut->height_mm; }
static double get_width (const TrCut *cut) { return cut->width_mm; }
static double get_length (const TrCut *cut) { return cut->length_mm; }
static double get_side (const TrCut *cut) { return cut->side_mm; }
static double get_diameter (const TrCut *cut) { return cut->diameter_mm; }
static double get_slice (const TrCut *cut) { return cut->slice_mm; }
static double get_roll (const TrCut *cut) { return cut->roll_length_mm; }

static const struct { Sample sample; TrMeasure measure; GetSide get; const char *name; } edge_rows[] = {
  { SAMPLE_CROISSANT, TR_MEASURE_ALONG, get_base, "Base" },
  { SAMPLE_CROISSANT, TR_MEASURE_ACROSS, get_height, "Height" },
  { SAMPLE_RIGHT_TRIANGLE, TR_MEASURE_ALONG, get_base, "Base" },
  { SAMPLE_RIGHT_TRIANGLE, TR_MEASURE_ACROSS, get_height, "Height" },
  { SAMPLE_PUFF, TR_MEASURE_ALONG, get_width, "Width" },
  { SAMPLE_PUFF, TR_MEASURE_ACROSS, get_length, "Length" },
  { SAMPLE_DANISH, TR_MEASURE_ALONG, get_side, "Side" },
  { SAMPLE_DANISH, TR_MEASURE_ACROSS, get_side, "Side" },
  { SAMPLE_GATE, TR_MEASURE_ALONG, get_diameter, "Diameter" },
  { SAMPLE_GATE, TR_MEASURE_ACROSS, get_diameter, "Diameter" },
  { SAMPLE_ENVELOPE, TR_MEASURE_ALONG, get_slice, "Slice" },
  { SAMPLE_ENVELOPE, TR_MEASURE_ACROSS, get_roll, "Sheet rolled into the log" },
};

/* Each shape's two measures have an edge, found under the pointer, that holds the measure as it stands. */
static void
test_every_measure_has_an_edge (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (edge_rows); i++)
    {
      g_autoptr (TrTrial) trial = sample_trial_new (edge_rows[i].sample);
      g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
      const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
      g_autoptr (TrPicture) picture = draw (figures, 1200, 900);
      int index = tr_sheets_find_edge (dough, edge_rows[i].measure);
      g_autofree char *text = tr_picture_dup_hit_text (picture, &(TrHit) { TR_PART_OF_EDGE, index });
      TrSheetsGrab grab;
      TrBox box;

      g_assert_cmpint (index, >=, 0);
      g_assert_true (g_str_has_prefix (text, edge_rows[i].name));
      g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_EDGE, index }, &box));
      g_assert_true (tr_sheets_grab (picture, dough, &reader, NULL, index, box.x + box.width / 2, box.y + box.height / 2, &grab));
      g_assert_cmpint (grab.measure, ==, edge_rows[i].measure);
      g_assert_cmpfloat_with_epsilon (grab.start_mm, edge_rows[i].get (dough->dough->cut), 1e-9);
      g_assert_cmpfloat_with_epsilon (tr_sheets_grab_get_mm (&grab, box.x + box.width / 2, box.y + box.height / 2, 5), grab.start_mm, 1e-9);
    }
}

/* Rectangles: wherever the third column's edge is taken, it is under the pointer when the picture is made anew. */
static void
test_edge_stays_under_the_pointer (void)
{
  for (int by = -9; by <= 9; by += 3)
    {
      g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_PUFF);
      g_autoptr (TrTrial) wider = NULL;
      g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
      g_autoptr (TrFigures) after = NULL;
      const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
      g_autoptr (TrPicture) picture = draw (figures, 900, 700);
      g_autoptr (TrPicture) moved = NULL;
      int index = 2 * 4 + 1;                                /* of the third piece, the side away from the row's start */
      double mm, x, y;
      TrSheetsGrab grab;
      TrBox box, now;

      g_assert_cmpint (dough->sheet.per_row, >=, 4);
      g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_EDGE, index }, &box));
      x = box.x + box.width / 2;
      y = box.y + box.height / 2;
      g_assert_true (tr_sheets_grab (picture, dough, &reader, NULL, index, x, y, &grab));
      mm = tr_sheets_grab_get_mm (&grab, x + (grab.hold.is_turned ? 0 : by), y + (grab.hold.is_turned ? by : 0), 5);
      wider = tr_trial_copy (trial);
      tr_trial_own_dough (wider, 0)->cut->width_mm = mm;
      after = tr_figures_compute (wider, NULL);
      if (tr_figures_get_dough (after, 0)->sheet.per_row < 3)
        continue;
      moved = tr_sheets_picture_new (tr_figures_get_dough (after, 0), &reader, &look, 900, 700, &grab.hold);
      g_assert_true (tr_picture_get_box (moved, &(TrHit) { TR_PART_OF_EDGE, index }, &now));
      if (grab.hold.is_turned)
        g_assert_cmpfloat_with_epsilon (now.y + now.height / 2, y + by, 0.01);
      else
        g_assert_cmpfloat_with_epsilon (now.x + now.width / 2, x + by, 0.01);
    }
}

/* Held, the first sheet's corner does not move though the cut is another. */
static void
test_held_picture_does_not_jump (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_DANISH);
  g_autoptr (TrTrial) other = tr_trial_copy (trial);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autoptr (TrFigures) after = NULL;
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
  g_autoptr (TrPicture) picture = draw (figures, 700, 500);
  g_autoptr (TrPicture) moved = NULL;
  int index = tr_sheets_find_edge (dough, TR_MEASURE_ALONG);
  TrSheetsGrab grab;
  TrBox box, before, now;

  g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_EDGE, index }, &box));
  g_assert_true (tr_sheets_grab (picture, dough, &reader, NULL, index, box.x, box.y, &grab));
  tr_trial_own_dough (other, 0)->cut->side_mm += 6;
  after = tr_figures_compute (other, NULL);
  moved = tr_sheets_picture_new (tr_figures_get_dough (after, 0), &reader, &look, 700, 500, &grab.hold);
  g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_SHEET, 0 }, &before));
  g_assert_true (tr_picture_get_box (moved, &(TrHit) { TR_PART_OF_SHEET, 0 }, &now));
  g_assert_cmpfloat_with_epsilon (before.x, now.x, 1.01);
  if (grab.hold.is_turned)
    g_assert_cmpfloat_with_epsilon (before.y, now.y, 1.01);
  else
    g_assert_cmpfloat_with_epsilon (before.y + before.height, now.y + now.height, 1.01);
}

/* What had room below the second sheet stays there, though it would not fit any more. */
static void
test_held_picture_keeps_its_lines (void)
{
  g_autoptr (TrFigures) figures = compute_pieces (SAMPLE_CROISSANT, 47);
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
  guint checked = 0;

  for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
    {
      g_autoptr (TrPicture) picture = draw (figures, sizes[s][0], sizes[s][1]);
      g_autoptr (TrPicture) held = NULL;
      int index = tr_sheets_find_edge (dough, TR_MEASURE_ACROSS);
      TrSheetsGrab grab;
      TrBox box, before, now;

      if (!tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_EDGE, index }, &box))
        continue;
      g_assert_true (tr_sheets_grab (picture, dough, &reader, NULL, index, box.x, box.y, &grab));
      /* as if the picture had become much smaller */
      held = tr_sheets_picture_new (dough, &reader, &look, sizes[s][0] / 3, sizes[s][1] / 3, &grab.hold);
      if (!tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_TRAY, 0 }, &before) ||
          !tr_picture_get_box (held, &(TrHit) { TR_PART_OF_TRAY, 0 }, &now))
        continue;
      g_assert_cmpfloat_with_epsilon (before.x, now.x, 1.01);
      g_assert_cmpfloat_with_epsilon (before.y, now.y, 1.01);
      checked++;
    }
  g_assert_cmpuint (checked, >=, 2);
}

/* ---- alternatives ---- */

static void
test_alternatives_share_a_scale (void)
{
  for (Sample sample = 0; sample < N_SAMPLES; sample++)
    {
      g_autoptr (TrTrial) trial = sample_trial_new (sample);
      g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
      const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
      TrAlternative alternatives[TR_MAX_ALTERNATIVES];
      guint n = dough->has_sheet ? tr_sheet_list_by_rows (dough, alternatives) : 0;
      double scale = dough->has_sheet ? tr_alternatives_find_scale (dough, alternatives, n, &reader, &look, 150, 110) : 0;

      for (guint i = 0; i < n; i++)
        {
          const TrAlternative *alternative = &alternatives[i];
          g_autoptr (TrPicture) picture = tr_alternative_picture_new (dough, alternative, &reader, &look, 150, 110, scale);
          int drawn = MIN (alternative->sheets, 4);
          TrBox box, all;

          g_assert_cmpint (count_parts (picture, TR_PART_OF_SHEET, 20), ==, drawn);
          g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_SHEET, 0 }, &box));
          g_assert_cmpfloat_with_epsilon (box.width, alternative->length_mm * scale, 1.01);
          g_assert_cmpfloat_with_epsilon (box.height, alternative->width_mm * scale, 1.01);
          tr_picture_get_extents (picture, &all);
          g_assert_true (all.x >= -1 && all.y >= -1 && all.x + all.width <= 151 && all.y + all.height <= 111);
        }
    }
}

/* Choosing a layout writes its rows only: what follows from them is what was shown. */
static void
test_rows_lead_to_what_was_shown (void)
{
  guint checked = 0;

  for (Sample sample = 0; sample < N_SAMPLES; sample++)
    {
      g_autoptr (TrTrial) trial = sample_trial_new (sample);
      g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
      const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
      TrAlternative alternatives[TR_MAX_ALTERNATIVES];
      guint n = tr_sheet_list_by_rows (dough, alternatives);

      g_assert_cmpint (tr_sheet_find_best_rows (dough), ==, n == 0 ? 0 : dough->sheet.rows);
      for (guint i = 0; i < n; i++, checked++)
        {
          g_autoptr (TrTrial) chosen = tr_trial_copy (trial);
          g_autoptr (TrFigures) after = NULL;
          const TrSheet *sheet;

          tr_trial_own_dough (chosen, 0)->cut->rows = alternatives[i].rows;
          after = tr_figures_compute (chosen, NULL);
          sheet = &tr_figures_get_dough (after, 0)->sheet;
          g_assert_cmpint (sheet->breaks, ==, 0);
          g_assert_cmpint (sheet->sheets, ==, alternatives[i].sheets);
          g_assert_cmpint (sheet->per_row, ==, alternatives[i].per_row);
          g_assert_cmpfloat_with_epsilon (sheet->length_mm, alternatives[i].length_mm, 1e-9);
          g_assert_cmpfloat_with_epsilon (sheet->width_mm, alternatives[i].width_mm, 1e-9);
          g_assert_cmpfloat_with_epsilon (sheet->scrap_percent, alternatives[i].scrap_percent, 1e-9);
          /* and the list is the same from there */
          g_assert_cmpuint (tr_sheet_list_by_rows (tr_figures_get_dough (after, 0), alternatives), ==, n);
          g_assert_cmpint (tr_sheet_find_best_rows (tr_figures_get_dough (after, 0)), ==, dough->sheet.rows);
        }
    }
  g_assert_cmpuint (checked, >, 10);
}

/* ---- any dough, any size ---- */

static void
check_texts (const TrPicture *picture,
             const char      *name)
{
  guint n = tr_picture_count_texts (picture);

  for (guint i = 0; i < n; i++)
    for (guint k = i + 1; k < n; k++)
      {
        TrBox one, other;
        const char *text = tr_picture_get_text (picture, i, &one), *over = tr_picture_get_text (picture, k, &other);
        double across = MIN (one.x + one.width, other.x + other.width) - MAX (one.x, other.x);
        double down = MIN (one.y + one.height, other.y + other.height) - MAX (one.y, other.y);

        /* the boxes hold accents and tails that figures do not have */
        if (across > 1.0 && down > 3.0)
          {
            g_test_message ("%s: “%s” lies on “%s”", name, text, over);
            g_test_fail ();
          }
      }
}

static void
test_nothing_outside_or_overlapping (void)
{
  g_autoptr (TrTrial) trial = sample_trial_all ();
  g_autoptr (TrFigures) figures = NULL;

  for (int i = 0; i < 60; i++)
    sample_add_random (trial);
  figures = tr_figures_compute (trial, NULL);
  for (guint i = 0; i < figures->doughs->len * G_N_ELEMENTS (sizes); i++)
    {
      const TrDoughFigures *dough = tr_figures_get_dough (figures, i / G_N_ELEMENTS (sizes));
      const double *size = sizes[i % G_N_ELEMENTS (sizes)];
      g_autoptr (TrPicture) picture = tr_sheets_picture_new (dough, &reader, &look, size[0], size[1], NULL);
      g_autofree char *name = g_strdup_printf ("“%s” (%s) at %g × %g", dough->dough->name,
                                               dough->dough->cut != NULL ? tr_shape_id (dough->dough->cut->shape) : "no cut", size[0], size[1]);
      TrBox box;

      tr_picture_get_extents (picture, &box);
      if (box.x < -1 || box.y < -1 || box.x + box.width > size[0] + 1 || box.y + box.height > size[1] + 1)
        {
          g_test_message ("%s: from %g, %g to %g, %g", name, box.x, box.y, box.x + box.width, box.y + box.height);
          g_test_fail ();
        }
      check_texts (picture, name);
      g_assert_cmpstr (tr_picture_get_description (picture), !=, "");
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  tr_look_init_screen (&look, FALSE, FALSE, 13);

  g_test_add_func ("/sheets/as-many-are-drawn-as-there-are", test_as_many_sheets_are_drawn);
  g_test_add_func ("/sheets/are-alike-and-apart", test_sheets_are_alike_and_apart);
  g_test_add_func ("/sheets/spare-pieces-are-named", test_spare_pieces_are_named);
  g_test_add_func ("/sheets/worktop-and-tray-are-to-scale", test_worktop_and_tray_are_to_scale);
  g_test_add_func ("/sheets/every-measure-has-an-edge", test_every_measure_has_an_edge);
  g_test_add_func ("/sheets/edge-stays-under-the-pointer", test_edge_stays_under_the_pointer);
  g_test_add_func ("/sheets/held-picture-does-not-jump", test_held_picture_does_not_jump);
  g_test_add_func ("/sheets/held-picture-keeps-its-lines", test_held_picture_keeps_its_lines);
  g_test_add_func ("/sheets/alternatives-share-a-scale", test_alternatives_share_a_scale);
  g_test_add_func ("/sheets/rows-lead-to-what-was-shown", test_rows_lead_to_what_was_shown);
  g_test_add_func ("/sheets/nothing-outside-or-overlapping", test_nothing_outside_or_overlapping);

  return g_test_run ();
}
