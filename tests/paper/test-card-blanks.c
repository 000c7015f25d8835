/* test-card-blanks.c: where a bench card waits for the real values
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "paper/paper.h"
#include "picture/shapes.h"
#include "samples.h"

/* All texts of the one dough's card, in the order in which they were drawn. */
static GPtrArray *
list_texts (TrTrial      *trial,
            TrUnitSystem  units)
{
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autoptr (TrPages) cards = NULL;
  GPtrArray *texts = g_ptr_array_new_with_free_func (g_free);
  TrReader reader;

  tr_reader_init_plain (&reader, units);
  cards = tr_cards_new (figures, NULL, 0, &reader, TR_PAPER_A4);
  for (guint p = 0; p < tr_pages_count (cards); p++)
    for (guint i = 0; i < tr_picture_count_texts (tr_pages_get (cards, p)); i++)
      g_ptr_array_add (texts, g_strdup (tr_picture_get_text (tr_pages_get (cards, p), i, NULL)));

  return texts;
}

static guint
count (const GPtrArray *texts,
       const char      *wanted)
{
  guint n = 0;

  for (guint i = 0; i < texts->len; i++)
    n += g_str_equal (texts->pdata[i], wanted);

  return n;
}

/* As sizes are always said: length, width, thickness; then the mass. */
static void
assert_weighed_cut (const GPtrArray *texts,
                    const char      *length_unit,
                    const char      *mass_unit)
{
  const char *const wanted[] = { length_unit, "×", "×", mass_unit };
  guint at;

  g_assert_true (g_ptr_array_find_with_equal_func ((GPtrArray *) texts, "Weigh a cut with square corners", g_str_equal, &at));
  g_assert_cmpuint (at + G_N_ELEMENTS (wanted), <, texts->len);
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    g_assert_cmpstr (texts->pdata[at + 1 + i], ==, wanted[i]);
}

static void
test_a_cut_to_be_weighed_stands_with_each_sheet (void)
{
  guint n_with = 0, n_without = 0;

  for (Sample sample = 0; sample < N_SAMPLES; sample++)
    {
      g_autoptr (TrTrial) trial = sample_trial_new (sample);
      g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
      g_autoptr (GPtrArray) metric = list_texts (trial, TR_UNITS_METRIC), us = list_texts (trial, TR_UNITS_US);

      if (!tr_figures_get_dough (figures, 0)->has_sheet)
        {
          g_assert_cmpuint (count (metric, "Weigh a cut with square corners"), ==, 0);
          n_without++;
          continue;
        }
      assert_weighed_cut (metric, "mm", "g");
      assert_weighed_cut (us, "in", "oz");
      n_with++;
    }
  g_assert_cmpuint (n_with, >, 0);
  g_assert_cmpuint (n_without, >, 0);
}

/* The chill before lock-in and the rest after each turn. */
static void
test_each_rest_has_the_core_to_be_measured (void)
{
  for (Sample sample = 0; sample < N_SAMPLES; sample++)
    {
      g_autoptr (TrTrial) trial = sample_trial_new (sample);
      g_autoptr (GPtrArray) metric = list_texts (trial, TR_UNITS_METRIC), us = list_texts (trial, TR_UNITS_US);
      const TrDough *dough = tr_trial_get_dough (trial, 0);
      guint n_rests = dough->lock_in != NULL ? dough->turns->len + (dough->lock_in->rest != NULL) : 0;

      g_assert_cmpuint (count (metric, "core °C"), ==, n_rests);
      g_assert_cmpuint (count (us, "core °F"), ==, n_rests);
    }
}

static void
test_a_step_with_a_temperature_has_a_blank_for_it (void)
{
  for (int is_warm = 0; is_warm < 2; is_warm++)
    {
      g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
      TrDough *dough = trial->doughs->pdata[0];
      TrStep *bulk = tr_step_new (TR_STEP_BULK);
      g_autoptr (GPtrArray) texts = NULL;
      guint at;

      g_ptr_array_set_size (dough->method->steps, 0);
      bulk->minutes = 60;
      bulk->at_c = is_warm ? 24 : NAN;
      g_ptr_array_add (dough->method->steps, bulk);
      texts = list_texts (trial, TR_UNITS_METRIC);
      g_assert_true (g_ptr_array_find_with_equal_func (texts, is_warm ? "Bulk rise 1\u00a0h at 24\u00a0°C" : "Bulk rise 1\u00a0h", g_str_equal, &at));
      g_assert_cmpstr (texts->pdata[at + 1], ==, "real");
      g_assert_cmpint (g_str_equal (texts->pdata[at + 2], "°C"), ==, is_warm);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/paper/card/blanks/a-cut-to-be-weighed-stands-with-each-sheet", test_a_cut_to_be_weighed_stands_with_each_sheet);
  g_test_add_func ("/paper/card/blanks/each-rest-has-the-core-to-be-measured", test_each_rest_has_the_core_to_be_measured);
  g_test_add_func ("/paper/card/blanks/a-step-with-a-temperature-has-a-blank-for-it", test_a_step_with_a_temperature_has_a_blank_for_it);

  return g_test_run ();
}
