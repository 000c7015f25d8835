/* test-water.c: the temperature of the water in a sentence
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"

#include "../calc/doughs.h"

typedef struct {
  const char *name;
  const char *lines[5];
  double dough_c;
  const char *metric, *us;
} Case;

static const Case cases[] = {
  { "warm", { "d flour-bread 500 g", "d water 300 g" }, 24, "Water at 19" NB "°C", "Water at 66" NB "°F" },
  { "no ice worth weighing", { "d flour-bread 500 g", "d water 10 g" }, 22, "Water at 13" NB "°C", "Water at 55" NB "°F" },
  { "ice", { "d flour-bread 500 g", "d water 320 g" }, 22,
    "Water at 13" NB "°C, 10.0" NB "g of it ice",
    "Water at 55" NB "°F, 0.35" NB "oz of it ice" },
  { "below freezing", { "d flour-bread 500 g", "d water 320 g" }, 17,
    "Water: 60" NB "g of it as ice", "Water: 2.12" NB "oz of it as ice" },
  { "colder than ice", { "d flour-bread 500 g", "d water 320 g" }, -10,
    "Ice alone is not cold enough: the water would have to be at " MINUS "83" NB "°C. Chill the flour.",
    "Ice alone is not cold enough: the water would have to be at " MINUS "117" NB "°F. Chill the flour." },
  { "milk", { "d flour-bread 500 g", "d milk-whole 320 g" }, 24, "Whole milk at 19" NB "°C", "Whole milk at 66" NB "°F" },
  { "milk and egg", { "d flour-bread 500 g", "d milk-whole 320 g", "d egg-whole 50 g" }, 24, NULL, NULL },
  { "too hot", { "d flour-bread 500 g", "d milk-whole 320 g", "d water 50 g" }, 26,
    "Whole milk at 25" NB "°C: water alone would have to be warmer than 45" NB "°C",
    "Whole milk at 77" NB "°F: water alone would have to be warmer than 113" NB "°F" },
  { "too hot for more than one", { "d flour-bread 500 g", "d milk-whole 320 g", "d egg-whole 50 g", "d water 50 g" }, 26,
    "Everything poured at 25" NB "°C: water alone would have to be warmer than 45" NB "°C",
    "Everything poured at 77" NB "°F: water alone would have to be warmer than 113" NB "°F" },
  { "dry", { "d flour-bread 500 g" }, 24, NULL, NULL },
  { "no dough", { "r butter-unsalted 100 g" }, 24, NULL, NULL },
};

static void
test_water (gconstpointer data)
{
  const Case *c = data;
  TrReader metric = plain (TR_UNITS_METRIC), us = plain (TR_UNITS_US);
  g_autoptr (TrTrial) trial = tr_trial_new ();
  TrDough *dough = test_dough_new (c->lines);

  dough->method->dough_c = c->dough_c;
  g_ptr_array_add (trial->doughs, dough);

  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autofree char *in_metric = tr_words_water (&metric, tr_figures_get_dough (figures, 0));
  g_autofree char *in_us = tr_words_water (&us, tr_figures_get_dough (figures, 0));

  g_assert_cmpstr (in_metric, ==, c->metric);
  g_assert_cmpstr (in_us, ==, c->us);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_strconcat ("/words/water/", cases[i].name, NULL);

      g_test_add_data_func (g_strdelimit (path, " ", '-'), &cases[i], test_water);
    }

  return g_test_run ();
}
