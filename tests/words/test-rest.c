/* test-rest.c: what is said of a rest and of passes
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The slab is invented; its figures are calc's.
 */

#include "words/passes.h"
#include "words/rest.h"

#include <string.h>

static TrTrial *
new_trial (void)
{
  TrTrial *trial = tr_trial_new ();
  TrDough *dough = tr_dough_new ("d1");

  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "flour-bread", "500 g"));
  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "water", "280 g"));
  g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_ROLL_IN, "butter-unsalted", "250 g"));
  dough->lock_in = tr_lock_in_new ();
  dough->cut = tr_cut_new ();
  dough->batch_by = TR_BATCH_WRITTEN;
  g_ptr_array_add (dough->turns, tr_turn_new (3, 8));
  g_ptr_array_add (dough->turns, tr_turn_new (4, 8));
  tr_dough_get_turn (dough, 0)->rest = tr_rest_new ();
  g_ptr_array_add (trial->doughs, dough);

  return trial;
}

/* Plain text, so that a test can be read. */
static char *
plain (char *text)
{
  g_autofree char *own = text;
  g_auto (GStrv) thin = own != NULL ? g_strsplit (own, "\u202f", -1) : NULL;
  g_autofree char *joined = thin != NULL ? g_strjoinv (" ", thin) : NULL;
  g_auto (GStrv) broken = joined != NULL ? g_strsplit (joined, "\u00a0", -1) : NULL;

  return broken != NULL ? g_strjoinv (" ", broken) : NULL;
}

#define assert_says(expression, expected) \
  G_STMT_START { \
    g_autofree char *said_ = plain (expression); \
    g_assert_cmpstr (said_, ==, expected); \
  } G_STMT_END

typedef struct
{
  const char *name;
  void (*change) (TrTrial *trial, TrRest *rest);
  const char *core, *freezing, *window;
} Case;

static void
leave (TrTrial *trial,
       TrRest  *rest)
{
}

static void
overnight (TrTrial *trial,
           TrRest  *rest)
{
  rest->min_minutes = 24 * 60;
}

static void
in_freezer (TrTrial *trial,
            TrRest  *rest)
{
  rest->place = TR_PLACE_FREEZER;
  rest->min_minutes = 30;
}

static void
too_long_in_freezer (TrTrial *trial,
                     TrRest  *rest)
{
  rest->place = TR_PLACE_FREEZER;
  rest->min_minutes = 300;
  rest->target_c = -1.95;
}

static void
in_room (TrTrial *trial,
         TrRest  *rest)
{
  rest->place = TR_PLACE_ROOM;
}

static void
never (TrTrial *trial,
       TrRest  *rest)
{
  rest->target_c = 3;
}

static void
as_warm_as_the_fridge (TrTrial *trial,
                       TrRest  *rest)
{
  rest->start_c = trial->bench->fridge_c;
}

static void
cool_room (TrTrial *trial,
           TrRest  *rest)
{
  trial->bench->room_c = 16;
}

static void
cold_room (TrTrial *trial,
           TrRest  *rest)
{
  overnight (trial, rest);
  trial->bench->room_c = 8;
}

static void
other_fat (TrTrial *trial,
           TrRest  *rest)
{
  g_ptr_array_add (tr_trial_get_dough (trial, 0)->lines, tr_line_new (TR_STAGE_ROLL_IN, "margarine-stick-unsalted", "50 g"));
}

static void
warm_start (TrTrial *trial,
            TrRest  *rest)
{
  rest->start_c = 22;
  rest->min_minutes = 5;
}

static const Case cases[] = {
  { "fridge", leave,
    "The core needs at least 2 h 55 to come to 8 °C. After the written 45 min the core is at 12.5 °C.",
    NULL,
    "It can be rolled at once; rolled out, it stays under 17 °C for at most 15 min." },
  { "overnight", overnight,
    "The core needs at least 2 h 55 to come to 8 °C. After the written 24 h the core is at 4 °C.",
    NULL,
    "It bends after 32 min on the bench; rolled out, it stays under 17 °C for at most 18 min." },
  { "freezer", in_freezer,
    "The core needs at least 51 min to come to 8 °C. After the written 30 min the core is at 11 °C.",
    "Take it out after at most 1 h 27: then its surface begins to freeze.",
    "It bends after 7 min on the bench; rolled out, it stays under 17 °C for at most 18 min." },
  { "too-long-in-the-freezer", too_long_in_freezer,
    "Its surface freezes before the core is at −2 °C.",
    "Take it out after at most 1 h 27: then its surface begins to freeze.",
    NULL },
  { "room", in_room,
    "At 21 °C around it the slab only warms. After the written 45 min the core is at 15 °C.",
    NULL,
    "It can be rolled at once; rolled out, it stays under 17 °C for at most 5 min." },
  { "as-warm-as-the-fridge", as_warm_as_the_fridge,
    "Air of 4 °C leaves it as warm as it is. After the written 45 min the core is at 4 °C.",
    NULL,
    "It bends after 32 min on the bench; rolled out, it stays under 17 °C for at most 18 min." },
  { "never", never,
    "Air of 4 °C never brings it to 3 °C. After the written 45 min the core is at 12.5 °C.",
    NULL,
    "It can be rolled at once; rolled out, it stays under 17 °C for at most 15 min." },
  { "cool-room", cool_room,
    "The core needs at least 2 h 55 to come to 8 °C. After the written 45 min the core is at 12.5 °C.",
    NULL,
    "It can be rolled at once; this room never makes it too soft." },
  { "cold-room", cold_room,
    "The core needs at least 2 h 55 to come to 8 °C. After the written 24 h the core is at 4 °C.",
    NULL,
    "This room never warms it to the 10 °C at which the fat bends." },
  { "unknown-fat", other_fat,
    "The core needs at least 2 h 53 to come to 8 °C. After the written 45 min the core is at 12.5 °C.",
    NULL,
    "At which temperatures this fat can be rolled is not known; it can be written among the ingredients." },
  { "warm-start", warm_start,
    "The core needs at least 4 h 38 to come to 8 °C. After the written 5 min the core is at 22 °C.",
    NULL,
    "It is too soft to be rolled: Butter, unsalted should stay under 17 °C." },
};

static void
test_case (gconstpointer data)
{
  const Case *one = data;
  g_autoptr (TrTrial) trial = new_trial ();
  g_autoptr (TrFigures) figures = NULL;
  const TrDoughFigures *dough;
  const TrRestFigures *rest;
  g_autofree char *short_words = NULL;
  TrReader reader;

  one->change (trial, tr_dough_get_turn (tr_trial_get_dough (trial, 0), 0)->rest);
  figures = tr_figures_compute (trial, NULL);
  dough = tr_figures_get_dough (figures, 0);
  rest = tr_rests_find (dough, 1);
  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  assert_says (tr_words_rest_core (&reader, rest), one->core);
  assert_says (tr_words_rest_freezing (&reader, rest), one->freezing);
  assert_says (tr_words_rest_window (&reader, dough, rest), one->window);
  short_words = tr_words_rest_in_short (&reader, rest);
  g_assert_true (short_words == NULL || strstr (short_words, "nan") == NULL);
}

static void
test_passes (void)
{
  g_autoptr (TrTrial) trial = new_trial ();
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  for (guint pin = 0; pin < 2; pin++)
    {
      g_autoptr (TrFigures) figures = NULL;
      g_auto (TrPasses) passes = { 0 };
      g_autofree char *said = NULL;

      trial->bench->roll_width_max_mm = pin ? NAN : 600;
      figures = tr_figures_compute (trial, NULL);
      tr_passes_init_turn (&passes, tr_figures_get_dough (figures, 0), 0);
      said = plain (tr_words_passes (&reader, trial->bench, &passes));
      g_assert_true (g_str_has_prefix (said, pin ? "Guides " : "Gaps "));
      g_assert_true (g_str_has_suffix (said, "· 8 mm"));
      tr_passes_clear (&passes);
      g_assert_null (tr_words_passes (&reader, trial->bench, &passes));
    }
}

/* Each way as it is rolled; the fat block is invented. */
static void
test_legs (void)
{
  static const struct { gboolean is_across; double pin_mm, gaps[2][3]; gboolean has_rollers, has_two; const char *said; } said_so[] = {
    { FALSE, NAN, { { 16, 12.5, 9 } }, TRUE, FALSE, "Gaps 16 · 12.5 · 9 mm" },
    { TRUE, NAN, { { 16, 12.5, 9 } }, FALSE, FALSE, "Turned, guides 16 · 12.5 · 9 mm" },
    { FALSE, NAN, { { 16, 12.5, 9 }, { 7, 5, 4 } }, TRUE, TRUE, "Gaps 16 · 12.5 · 9 mm; turned, 7 · 5 · 4 mm" },
    { TRUE, NAN, { { 16, 12.5, 9 }, { 7, 5, 4 } }, FALSE, TRUE, "Turned, guides 16 · 12.5 · 9 mm; turned back, 7 · 5 · 4 mm" },
    { FALSE, 30, { { 21, 15, 11 } }, TRUE, FALSE, "By pin to 30 mm, then gaps 21 · 15 · 11 mm" },
    { TRUE, 30, { { 21, 15, 11 }, { 8, 6, 4 } }, TRUE, TRUE, "Turned, by pin to 30 mm, then gaps 21 · 15 · 11 mm; turned back, 8 · 6 · 4 mm" },
    { FALSE, 44, { { 0, 0, 0 } }, TRUE, FALSE, "By pin to 44 mm" },
  };
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  for (guint i = 0; i < G_N_ELEMENTS (said_so); i++)
    {
      TrBench bench = { .roll_width_max_mm = said_so[i].has_rollers ? 450 : NAN };
      g_auto (TrPasses) passes = { .n_legs = said_so[i].has_two ? 2 : 1 };

      for (guint leg = 0; leg < passes.n_legs; leg++)
        {
          GArray *gaps = g_array_new (FALSE, FALSE, sizeof (double));

          if (said_so[i].gaps[leg][0] > 0)
            g_array_append_vals (gaps, said_so[i].gaps[leg], 3);
          passes.legs[leg] = (TrPassLeg) { said_so[i].is_across == (leg == 0), 23, leg == 0 ? said_so[i].pin_mm : NAN, gaps };
        }
      assert_says (tr_words_passes (&reader, &bench, &passes), said_so[i].said);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("/words/rest/%s", cases[i].name);

      g_test_add_data_func (path, &cases[i], test_case);
    }
  g_test_add_func ("/words/passes", test_passes);
  g_test_add_func ("/words/passes/legs", test_legs);

  return g_test_run ();
}
