/* test-learned.c: what the log tells, in sentences
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"
#include "words/learned.h"

typedef struct
{
  const char *name;
  TrLearned learned;
  const char *said, *use;        /* use NULL: no button */
} Row;

#define FROM(id_, value_, least_, greatest_, n_, out_, now_, first, second) \
  { .id = TR_LEARNED_##id_, .value = value_, .least = least_, .greatest = greatest_, .n = n_, .n_left_out = out_, .now = now_, \
    .measured = { first, second } }

static const Row rows[] = {
  { "one-cut", FROM (DENSITY, 1.12, 1.12, 1.12, 1, 0, 1.15, 67, 60),
    "1 weighed cut, 67" NB "g of 60 ml: the dough without its fat has 1.12" NB "g/ml. 1.15" NB "g/ml is in use.", "Use 1.12" NB "g/ml" },
  { "cuts", FROM (DENSITY, 1.117, 1.1, 1.135, 2, 0, 1.15, 134, 120),
    "2 weighed cuts, 134" NB "g of 120 ml together: the dough without its fat has 1.117" NB "g/ml. One by one 1.1" NB "g/ml to 1.135" NB "g/ml. 1.15" NB
    "g/ml is in use.", "Use 1.117" NB "g/ml" },
  { "in-use", FROM (DENSITY, 1.15, 1.15, 1.15, 1, 0, 1.15, 69, 60),
    "1 weighed cut, 69" NB "g of 60 ml: the dough without its fat has 1.15" NB "g/ml. That is in use.", NULL },
  { "loss", FROM (BAKE_LOSS, 12.04, 12.04, 12.04, 1, 0, NAN, 420, 369.4),
    "1 weighing, 420" NB "g raw and 369" NB "g baked: 12" NB "% is lost. None is written so far.", "Use 12" NB "%" },
  { "loss-with-one-left-out", FROM (BAKE_LOSS, 11.25, 10, 11.7, 2, 1, 12, 400, 355),
    "2 weighings, 400" NB "g raw and 355" NB "g baked together: 11.3" NB "% is lost. One by one 10" NB "% to 11.7" NB
    "%. 12" NB "% is in use. 1 measurement cannot be and is left out; look at it again.", "Use 11.3" NB "%" },
  { "all-left-out", FROM (BAKE_LOSS, NAN, NAN, NAN, 0, 2, 12, NAN, NAN),
    "2 measurements cannot be and are left out; look at them again.", NULL },
  { "shrink", FROM (SHRINK, 5, 5, 5, 1, 0, 0, 600, 570),
    "The sheet relaxed from 600" NB "mm to 570" NB "mm: it shrinks by 5" NB "%. 0" NB "% is in use.", "Use 5" NB "%" },
  { "shrink-of-two", FROM (SHRINK, 5, 4, 6, 2, 0, 5, 1200, 1140),
    "The sheet relaxed from 600" NB "mm to 570" NB "mm: it shrinks by 5" NB "%. One by one 4" NB "% to 6" NB "%. That is in use.", NULL },
  { "nothing", FROM (SHRINK, NAN, NAN, NAN, 0, 0, 0, NAN, NAN), NULL, NULL },
};

static void
test_row (gconstpointer data)
{
  const Row *row = data;
  TrReader reader = plain (TR_UNITS_METRIC);
  g_autofree char *said = tr_words_learned (&reader, &row->learned);
  g_autofree char *use = tr_words_learned_use (&reader, &row->learned);

  g_assert_cmpstr (said, ==, row->said);
  g_assert_cmpstr (use, ==, row->use);
  if (said != NULL)
    check_sentence (said);
}

/* Three temperatures: 3 × 24 less 20, 21 and 10 is 21. */
static void
test_friction (void)
{
  TrLearned learned = FROM (FRICTION, 21, 21, 21, 1, 0, 12, 3, 24);
  TrReader metric = plain (TR_UNITS_METRIC), us = plain (TR_UNITS_US);
  g_autofree char *said = tr_words_learned (&metric, &learned), *in_us = tr_words_learned (&us, &learned);
  g_autofree char *use = tr_words_learned_use (&metric, &learned), *use_in_us = tr_words_learned_use (&us, &learned);

  g_assert_cmpstr (said, ==, "The dough came out at 24" NB "°C: the friction is 21.0" NB "°C over 3 temperatures. 12.0" NB "°C is in use.");
  g_assert_cmpstr (use, ==, "Use friction 21.0" NB "°C");
  /* A warming of 21 °C is one of 37.8 °F; 24 °C are 75.2 °F. */
  g_assert_nonnull (strstr (in_us, "came out at 75" NB "°F"));
  g_assert_nonnull (strstr (use_in_us, "37.8" NB "°F"));
  check_sentence (in_us);
}

static void
test_friction_below_nothing (void)
{
  TrLearned learned = FROM (FRICTION, NAN, NAN, NAN, 0, 1, 12, NAN, NAN);
  TrReader reader = plain (TR_UNITS_METRIC);
  g_autofree char *said = tr_words_learned (&reader, &learned);

  g_assert_cmpstr (said, ==, "The dough came out colder than what went in. Look at the figures again.");
  g_assert_null (tr_words_learned_use (&reader, &learned));
}

static void
test_mix_in_a_line (void)
{
  TrReader reader = plain (TR_UNITS_METRIC);
  TrMix *mix = tr_mix_new ();
  g_autofree char *nothing = tr_words_mix (&reader, mix), *came = NULL, *all = NULL;

  g_assert_cmpstr (nothing, ==, "no date: nothing measured of the dough");
  mix->at = g_strdup ("2027-04-04");
  mix->dough_c = 24;
  came = tr_words_mix (&reader, mix);
  g_assert_cmpstr (came, ==, "2027-04-04: out at 24" NB "°C");
  mix->flour_c = 20;
  mix->room_c = 21;
  mix->liquid_c = 10;
  all = tr_words_mix (&reader, mix);
  g_assert_cmpstr (all, ==, "2027-04-04: out at 24" NB "°C, friction 21.0" NB "°C over 3 temperatures");
  tr_mix_free (mix);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/words/learned/%s", rows[i].name);

      g_test_add_data_func (path, &rows[i], test_row);
    }
  g_test_add_func ("/words/learned/friction", test_friction);
  g_test_add_func ("/words/learned/friction-below-nothing", test_friction_below_nothing);
  g_test_add_func ("/words/learned/mix-in-a-line", test_mix_in_a_line);

  return g_test_run ();
}
