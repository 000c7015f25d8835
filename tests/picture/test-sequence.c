/* test-sequence.c: the sequence strip is to one scale, whole, and hit where it is drawn
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "picture/sequence.h"
#include "samples.h"

static const double widths[] = { 200, 320, 520, 900, 1600 };

static const TrSequenceMarks plain_marks = { .selected = { TR_PART_OF_NOTHING, -1 }, .drop_at = -1, .can_edit = TRUE };

static void
init_look (TrLook *look)
{
  tr_look_init_screen (look, FALSE, FALSE, 13);
  look->device_scale = 0;               /* no snapping: sizes are exact */
}

static TrPicture *
make (const TrDoughFigures  *figures,
      const TrSequenceMarks *marks,
      double                 width,
      TrSequencePlan        *plan)
{
  TrReader reader;
  TrLook look;

  init_look (&look);
  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  tr_sequence_plan (figures, marks, &reader, &look, width, plan);

  return tr_sequence_picture_new (figures, marks, &reader, &look, width, plan->height);
}

static TrFigures *
compute_samples_and_random (void)
{
  g_autoptr (TrTrial) trial = sample_trial_all ();

  for (int i = 0; i < 40; i++)
    sample_add_random (trial);
  return tr_figures_compute (trial, NULL);
}

/* The first shape is the drawing itself. */
static gboolean
get_box (const TrPicture *picture,
         TrPicturePart    part,
         guint            index,
         TrBox           *box)
{
  return tr_picture_get_box (picture, &(TrHit) { part, (int) index }, box);
}

static gboolean
is_known (const TrSize *size)
{
  return size->mm[0] > 0 && size->mm[1] > 0 && size->mm[2] > 0 && isfinite (size->mm[0]) && isfinite (size->mm[1]);
}

static guint
check_scale (const TrPicture      *picture,
             const TrSequencePlan *plan,
             TrPicturePart         part,
             guint                 index,
             const TrSize         *size)
{
  TrBox box;

  if (!is_known (size))
    return 0;
  g_assert_true (get_box (picture, part, index, &box));
  g_assert_cmpfloat_with_epsilon (box.width, size->mm[0] * plan->scale, 1e-6 * MAX (1, box.width));
  g_assert_cmpfloat_with_epsilon (box.height, size->mm[1] * plan->scale, 1e-6 * MAX (1, box.height));
  return 1;
}

static void
test_everything_has_one_scale (void)
{
  g_autoptr (TrFigures) figures = compute_samples_and_random ();
  guint checked = 0;

  for (guint i = 0; i < figures->doughs->len; i++)
    for (guint w = 0; w < G_N_ELEMENTS (widths); w++)
      {
        const TrDoughFigures *dough = tr_figures_get_dough (figures, i);
        TrSequencePlan plan;
        g_autoptr (TrPicture) picture = make (dough, &plain_marks, widths[w], &plan);

        for (guint t = 0; dough->has_lamination && t < dough->lamination.steps->len; t++)
          {
            const TrTurnFigures *step = &g_array_index (dough->lamination.steps, TrTurnFigures, t);

            checked += check_scale (picture, &plan, TR_PART_OF_ROLL, t, &step->rolled_mm);
            checked += check_scale (picture, &plan, TR_PART_OF_FOLD, t, &step->folded_mm);
          }
      }
  g_assert_cmpuint (checked, >, 500);
}

/* Whatever is drawn of a turn leads back to it. */
static void
test_parts_are_hit (void)
{
  static const TrPicturePart parts[] = { TR_PART_OF_ROLL, TR_PART_OF_FOLD };
  g_autoptr (TrTrial) trial = sample_trial_all ();
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  guint checked = 0;

  for (guint i = 0; i < figures->doughs->len; i++)
    for (guint w = 0; w < G_N_ELEMENTS (widths); w++)
      {
        const TrDoughFigures *dough = tr_figures_get_dough (figures, i);
        TrSequencePlan plan;
        g_autoptr (TrPicture) picture = make (dough, &plain_marks, widths[w], &plan);

        for (guint t = 0; t < dough->dough->turns->len; t++)
          for (guint p = 0; p < G_N_ELEMENTS (parts); p++)
            {
              TrBox box;
              TrHit hit;

              g_assert_true (get_box (picture, parts[p], t, &box));
              hit = tr_picture_hit (picture, box.x + box.width * 0.1, box.y + box.height * 0.1);
              if (box.width < 10)
                continue;                /* the edge that is grabbed covers it */
              g_assert_cmpint (hit.part, ==, parts[p]);
              g_assert_cmpint (hit.index, ==, t);
              checked++;
            }
      }
  g_assert_cmpuint (checked, >, 100);
}

/* In reading order, none over another, nothing outside the picture. */
static void
test_turns_stand_in_order (void)
{
  g_autoptr (TrFigures) figures = compute_samples_and_random ();

  for (guint i = 0; i < figures->doughs->len; i++)
    for (guint w = 0; w < G_N_ELEMENTS (widths); w++)
      {
        const TrDoughFigures *dough = tr_figures_get_dough (figures, i);
        TrSequencePlan plan;
        g_autoptr (TrPicture) picture = make (dough, &plain_marks, widths[w], &plan);
        TrBox before = { 0 }, extents;

        for (guint t = 0; t < dough->dough->turns->len; t++)
          {
            TrBox box;

            g_assert_true (get_box (picture, TR_PART_OF_TURN, t, &box));
            if (t > 0)
              g_assert_true (box.y >= before.y + before.height || (box.y == before.y && box.x >= before.x + before.width));
            before = box;
          }
        tr_picture_get_extents (picture, &extents);
        g_assert_cmpfloat (extents.y + extents.height, <=, plan.height + 0.5);
        g_assert_cmpfloat (extents.x + extents.width, <=, widths[w] + 6);
        g_assert_cmpfloat (extents.x, >=, -6);
      }
}

/* What breaks a limit is said in words beside its sign. */
static void
test_broken_limits_are_written (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
  g_autoptr (TrFigures) figures = NULL;
  g_autoptr (TrPicture) picture = NULL;
  gboolean is_written = FALSE;
  TrSequencePlan plan;

  tr_trial_own_bench (trial)->worktop_mm[0] = 300;
  figures = tr_figures_compute (trial, NULL);
  picture = make (tr_figures_get_dough (figures, 0), &plain_marks, 1200, &plan);
  for (guint i = 0; i < tr_picture_count_texts (picture); i++)
    is_written = is_written || strstr (tr_picture_get_text (picture, i, NULL), "longer than") != NULL;
  g_assert_true (is_written);
  g_assert_nonnull (strstr (tr_picture_get_description (picture), "longer than the worktop"));
}

/* What is drawn, one text after the other: words may go on in the next line. */
static char *
dup_drawn (const TrPicture *picture)
{
  g_autoptr (GString) all = g_string_new (NULL);

  for (guint i = 0; i < tr_picture_count_texts (picture); i++)
    g_string_append_printf (all, "%s ", tr_picture_get_text (picture, i, NULL));

  return g_string_free (g_steal_pointer (&all), FALSE);
}

static guint
count_findings (const TrDoughFigures *figures,
                TrFindingId           id)
{
  guint n = 0;

  for (guint i = 0; i < figures->findings->len; i++)
    n += ((const TrFinding *) g_ptr_array_index (figures->findings, i))->id == id;

  return n;
}

/* Three degrees are wanted and ten minutes are written; then the room is a summer's. */
static void
test_short_rests_and_windows_are_written (void)
{
  for (guint what = 0; what < 4; what++)
    {
      gboolean is_short = (what & 1) != 0, is_hot = (what & 2) != 0;
      g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
      TrDough *dough = tr_trial_own_dough (trial, 0);
      g_autoptr (TrFigures) figures = NULL;
      TrSequencePlan plan;

      for (guint t = 0; t < dough->turns->len; t++)
        if (tr_dough_get_turn (dough, t)->rest != NULL)
          {
            tr_dough_get_turn (dough, t)->rest->target_c = is_short ? 5 : NAN;
            tr_dough_get_turn (dough, t)->rest->min_minutes = is_short ? 10 : 600;
          }
      tr_trial_own_bench (trial)->room_c = is_hot ? 32 : 15;
      figures = tr_figures_compute (trial, NULL);

      const TrDoughFigures *one = tr_figures_get_dough (figures, 0);

      g_assert_cmpint (count_findings (one, TR_FINDING_REST_SHORT) > 0, ==, is_short);
      g_assert_cmpint (count_findings (one, TR_FINDING_WINDOW_SHORT) > 0, ==, is_hot);
      for (guint w = 2; w < G_N_ELEMENTS (widths); w++)
        {
          g_autoptr (TrPicture) picture = make (one, &plain_marks, widths[w], &plan);
          const char *said = tr_picture_get_description (picture);
          g_autofree char *drawn = dup_drawn (picture);

          g_assert_cmpint (strstr (drawn, "rest too short") != NULL, ==, is_short);
          g_assert_cmpint (strstr (said, ": rest too short") != NULL, ==, is_short);
          g_assert_cmpint (strstr (drawn, "fat soft after") != NULL, ==, is_hot);
          g_assert_cmpint (strstr (said, "fat soft after ") != NULL, ==, is_hot);
          g_assert_null (strstr (said, "nan"));
        }
    }
}

/* Length, width and thickness of each turn stand in the description as in the figures. */
static void
test_description_has_the_numbers (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
  TrSequencePlan plan;
  g_autoptr (TrPicture) picture = make (dough, &plain_marks, 900, &plan);
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  g_assert_cmpuint (dough->lamination.steps->len, ==, 3);
  for (guint t = 0; t < 3; t++)
    {
      const TrTurnFigures *step = &g_array_index (dough->lamination.steps, TrTurnFigures, t);
      g_autofree char *rolled = tr_words_size (&reader, &step->rolled_mm);
      g_autofree char *folded = tr_words_size (&reader, &step->folded_mm);

      g_assert_nonnull (strstr (tr_picture_get_description (picture), rolled));
      g_assert_nonnull (strstr (tr_picture_get_description (picture), folded));
    }
}

static void
test_places_to_add (void)
{
  g_autoptr (TrTrial) trial = sample_trial_all ();
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);

  for (guint i = 0; i < figures->doughs->len; i++)
    {
      const TrDoughFigures *dough = tr_figures_get_dough (figures, i);
      guint n_turns = dough->dough->turns->len;
      TrSequenceMarks marks = plain_marks;
      TrSequencePlan plan;
      g_autoptr (TrPicture) picture = make (dough, &marks, 700, &plan), still = NULL;
      TrBox box;

      for (guint at = 0; at <= n_turns; at++)
        g_assert_cmpint (get_box (picture, TR_PART_OF_ADD, at, &box), ==, n_turns < TR_MAX_TURNS);
      g_assert_false (get_box (picture, TR_PART_OF_ADD, n_turns + 1, &box));

      marks.can_edit = FALSE;
      still = make (dough, &marks, 700, &plan);
      g_assert_false (get_box (still, TR_PART_OF_ADD, 0, &box));
      g_assert_false (get_box (still, TR_PART_OF_EDGE, 0, &box));
    }
}

static GBytes *
draw (const TrPicture *picture)
{
  double width, height;

  tr_picture_get_size (picture, &width, &height);

  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) ceil (width), (int) ceil (height));
  cairo_t *cr = cairo_create (surface);

  tr_picture_draw (picture, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return g_bytes_new_with_free_func (cairo_image_surface_get_data (surface),
                                     (gsize) cairo_image_surface_get_stride (surface) * (gsize) cairo_image_surface_get_height (surface),
                                     (GDestroyNotify) cairo_surface_destroy, surface);
}

/* What is copied or printed shows the turns, not what is done to them. */
static void
test_still_has_nothing_to_grab (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
  TrSequenceMarks chosen = plain_marks, none = plain_marks;
  GBytes *pixels[3];
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  chosen.selected = (TrHit) { TR_PART_OF_TURN, 1 };
  none.can_edit = FALSE;
  for (int i = 0; i < 3; i++)
    {
      const TrSequenceMarks *marks = i == 2 ? &none : &chosen;
      TrLook look;
      TrSequencePlan plan;
      TrBox box;

      init_look (&look);
      look.is_still = i > 0;
      tr_sequence_plan (dough, marks, &reader, &look, 700, &plan);
      g_autoptr (TrPicture) picture = tr_sequence_picture_new (dough, marks, &reader, &look, 700, plan.height);

      g_assert_cmpint (get_box (picture, TR_PART_OF_ADD, 1, &box), ==, i == 0);
      g_assert_cmpint (get_box (picture, TR_PART_OF_EDGE, 1, &box), ==, i == 0);
      pixels[i] = draw (picture);
    }
  g_assert_false (g_bytes_equal (pixels[0], pixels[1]));
  g_assert_true (g_bytes_equal (pixels[1], pixels[2]));
  for (int i = 0; i < 3; i++)
    g_bytes_unref (pixels[i]);
}

/* Read from the right everything lies as in a mirror. */
static void
test_mirrored (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  TrSequenceMarks marks = plain_marks;
  TrSequencePlan plan;
  g_autoptr (TrPicture) picture = make (tr_figures_get_dough (figures, 0), &marks, 700, &plan), mirrored = NULL;

  marks.is_mirrored = TRUE;
  mirrored = make (tr_figures_get_dough (figures, 0), &marks, 700, &plan);
  g_assert_cmpuint (tr_picture_count_texts (picture), ==, tr_picture_count_texts (mirrored));
  for (guint t = 0; t < 3; t++)
    {
      TrBox box, other;

      g_assert_true (get_box (picture, TR_PART_OF_ROLL, t, &box) && get_box (mirrored, TR_PART_OF_ROLL, t, &other));
      g_assert_cmpfloat_with_epsilon (other.x, 700 - box.x - box.width, 1e-6);
      g_assert_cmpfloat_with_epsilon (other.y, box.y, 1e-6);
    }
  for (guint i = 0; i < tr_picture_count_texts (picture); i++)
    {
      TrBox box, other;

      g_assert_cmpstr (tr_picture_get_text (picture, i, &box), ==, tr_picture_get_text (mirrored, i, &other));
      g_assert_cmpfloat_with_epsilon (other.x, 700 - box.x - box.width, 1e-6);
    }
}

/* While an edge is dragged nothing may jump: rows and, where it fits, the scale stay. */
static void
test_held_plan_stays (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT), longer = NULL;
  g_autoptr (TrFigures) before = tr_figures_compute (trial, NULL), after = NULL;
  TrSequenceMarks marks = plain_marks;
  TrSequencePlan plan, held;
  g_autoptr (TrPicture) picture = make (tr_figures_get_dough (before, 0), &marks, 520, &plan), other = NULL;
  TrBox box, moved;

  longer = tr_trial_copy (trial);
  tr_dough_get_turn (tr_trial_own_dough (longer, 0), 0)->thickness_mm *= 0.8;
  after = tr_figures_compute (longer, NULL);
  marks.held = &plan;
  other = make (tr_figures_get_dough (after, 0), &marks, 520, &held);
  g_assert_cmpuint (held.starts, ==, plan.starts);
  g_assert_cmpfloat (held.scale, <=, plan.scale);
  g_assert_true (get_box (picture, TR_PART_OF_ROLL, 0, &box) && get_box (other, TR_PART_OF_ROLL, 0, &moved));
  g_assert_cmpfloat_with_epsilon (moved.x, box.x, 1e-6);
  g_assert_cmpfloat_with_epsilon (moved.width, box.width / 0.8 * held.scale / plan.scale, 1e-6);
}

/* The stack after a turn has that turn's layers and its folded block's thickness. */
static void
test_layers_after_a_turn (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *dough = tr_figures_get_dough (figures, 0);
  TrReader reader;
  TrLook look;

  init_look (&look);
  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  for (guint n = 1; n <= dough->lamination.steps->len; n++)
    {
      const TrTurnFigures *step = &g_array_index (dough->lamination.steps, TrTurnFigures, n - 1);
      TrLayersAt at = { NAN, -1, n };
      g_autoptr (TrPicture) picture = tr_layers_picture_new_at (dough, &reader, &look, 900, 400, &at);
      g_autofree char *count = g_strdup_printf ("%g fat layers", step->fat_layers);
      g_autofree char *thickness = tr_words_length (&reader, step->folded_mm.mm[2]);

      g_assert_cmpfloat (tr_picture_count_bands (picture), ==, step->fat_layers + step->dough_layers);
      g_assert_true (g_str_has_prefix (tr_picture_get_description (picture), count));
      g_assert_nonnull (strstr (tr_picture_get_description (picture), thickness));
    }
}

/* Nothing broken where there is nothing. */
static void
test_without_lock_in_turns_or_cut (void)
{
  for (int what = 0; what < 8; what++)
    {
      g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
      TrDough *dough = tr_trial_own_dough (trial, 0);
      g_autoptr (TrFigures) figures = NULL;
      g_autoptr (TrPicture) picture = NULL;
      TrSequencePlan plan;
      TrBox box;

      if (what & 1)
        g_clear_pointer (&dough->lock_in, tr_lock_in_free);
      if (what & 2)
        g_ptr_array_set_size (dough->turns, 0);
      if (what & 4)
        g_clear_pointer (&dough->cut, tr_cut_free);
      figures = tr_figures_compute (trial, NULL);
      picture = make (tr_figures_get_dough (figures, 0), &plain_marks, 520, &plan);
      g_assert_cmpfloat (plan.scale, >, 0);
      g_assert_true (get_box (picture, TR_PART_OF_LOCK_IN, 0, &box));
      g_assert_cmpint (get_box (picture, TR_PART_OF_TURN, 0, &box), ==, !(what & 2));
      g_assert_cmpint (get_box (picture, TR_PART_OF_SHEET, 0, &box), ==, !(what & 4));
      g_assert_true (get_box (picture, TR_PART_OF_ADD, 0, &box));
      g_assert_cmpuint (strlen (tr_picture_get_description (picture)), >, 10);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sequence/everything-has-one-scale", test_everything_has_one_scale);
  g_test_add_func ("/sequence/parts-are-hit", test_parts_are_hit);
  g_test_add_func ("/sequence/turns-stand-in-order", test_turns_stand_in_order);
  g_test_add_func ("/sequence/broken-limits-are-written", test_broken_limits_are_written);
  g_test_add_func ("/sequence/short-rests-and-windows-are-written", test_short_rests_and_windows_are_written);
  g_test_add_func ("/sequence/description-has-the-numbers", test_description_has_the_numbers);
  g_test_add_func ("/sequence/places-to-add", test_places_to_add);
  g_test_add_func ("/sequence/still-has-nothing-to-grab", test_still_has_nothing_to_grab);
  g_test_add_func ("/sequence/mirrored", test_mirrored);
  g_test_add_func ("/sequence/held-plan-stays", test_held_plan_stays);
  g_test_add_func ("/sequence/layers-after-a-turn", test_layers_after_a_turn);
  g_test_add_func ("/sequence/without-lock-in-turns-or-cut", test_without_lock_in_turns_or_cut);
  return g_test_run ();
}
