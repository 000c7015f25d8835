/* test-planned.c: what is written for a step or a rest, in a few words
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"
#include "words/planned.h"

typedef struct
{
  const char *name;
  double minutes, max_minutes, at_c, rh_percent;
  int place;
  const char *expected, *in_us;  /* NULL: nothing; as metric */
} StepRow;

static const StepRow steps[] = {
  { "nothing", NAN, NAN, NAN, NAN, -1, NULL, NULL },
  { "time", 12, NAN, NAN, NAN, -1, "12" NB "min", NULL },
  { "span", 140, 170, NAN, NAN, -1, "2" NB "h" NB "20 to 2" NB "h" NB "50", NULL },
  { "the-same-twice", 60, 60, NAN, NAN, -1, "1" NB "h", NULL },
  { "at-most", NAN, 90, NAN, NAN, -1, "at most 1" NB "h" NB "30", NULL },
  { "oven", 18, NAN, 190, NAN, -1, "18" NB "min at 190" NB "°C", "18" NB "min at 374" NB "°F" },
  { "proofer", 140, NAN, 26, 78, -1, "2" NB "h" NB "20 at 26" NB "°C and 78" NB "% humidity", "2" NB "h" NB "20 at 79" NB "°F and 78" NB "% humidity" },
  { "fridge", 480, 960, NAN, NAN, TR_PLACE_FRIDGE, "8" NB "h to 16" NB "h, fridge", NULL },
  { "only-a-place", NAN, NAN, NAN, NAN, TR_PLACE_ROOM, "room", NULL },
  { "its-own-temperature-before-the-place", 60, NAN, 24, NAN, TR_PLACE_ROOM, "1" NB "h at 24" NB "°C", "1" NB "h at 75" NB "°F" },
  { "only-humidity", NAN, NAN, NAN, 80, -1, "80" NB "% humidity", NULL },
};

static void
assert_step (const TrReader *reader,
             const StepRow  *row,
             const char     *expected)
{
  TrStep *step = tr_step_new (TR_STEP_PROOF);
  g_autofree char *said = NULL;

  step->minutes = row->minutes;
  step->max_minutes = row->max_minutes;
  step->at_c = row->at_c;
  step->rh_percent = row->rh_percent;
  step->place = row->place;
  said = tr_words_planned_step (reader, step);
  g_assert_cmpstr (said, ==, expected);
  if (said != NULL)
    check_text (said);
  tr_step_free (step);
}

static void
test_step (gconstpointer data)
{
  const StepRow *row = data;
  TrReader metric = plain (TR_UNITS_METRIC), us = plain (TR_UNITS_US);

  assert_step (&metric, row, row->expected);
  assert_step (&us, row, row->in_us != NULL ? row->in_us : row->expected);
}

typedef struct { double least, most; TrPlace place; const char *expected; } RestRow;

static const RestRow rests[] = {
  { 45, 600, TR_PLACE_FRIDGE, "45" NB "min to 10" NB "h, fridge" },
  { 20, NAN, TR_PLACE_FREEZER, "20" NB "min, freezer" },
  { NAN, 60, TR_PLACE_ROOM, "at most 1" NB "h, room" },
};

static void
test_rests (void)
{
  TrReader reader = plain (TR_UNITS_METRIC);

  g_assert_null (tr_words_planned_rest (&reader, NULL));
  g_assert_null (tr_words_planned_step (&reader, NULL));
  for (guint i = 0; i < G_N_ELEMENTS (rests); i++)
    {
      TrRest *rest = tr_rest_new ();
      g_autofree char *said = NULL;

      rest->min_minutes = rests[i].least;
      rest->max_minutes = rests[i].most;
      rest->place = rests[i].place;
      said = tr_words_planned_rest (&reader, rest);
      g_assert_cmpstr (said, ==, rests[i].expected);
      tr_rest_free (rest);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      g_autofree char *path = g_strdup_printf ("/words/planned/%s", steps[i].name);

      g_test_add_data_func (path, &steps[i], test_step);
    }
  g_test_add_func ("/words/planned/rests", test_rests);

  return g_test_run ();
}
