/* test-temperature.c: a slab's temperatures stand where the figures have them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "calc/rests.h"
#include "picture/shapes.h"
#include "samples.h"

#define EM 13.0

typedef struct {
  TrTrial *trial;
  TrFigures *figures;
  const TrRestFigures *rest;
  TrPicture *picture;
  TrReader reader;
} Case;

static void
case_clear (Case *self)
{
  tr_picture_unref (self->picture);
  tr_figures_unref (self->figures);
  tr_trial_unref (self->trial);
}

/* The croissant with that rest after its first turn. Takes the rest. */
static void
case_init (Case        *self,
           TrRest      *rest,
           TrUnitSystem units,
           double       width,
           double       height)
{
  const TrDoughFigures *dough;
  TrTurn *turn;
  TrLook look;
  guint index = 0;

  self->trial = sample_trial_new (SAMPLE_CROISSANT);
  turn = tr_dough_get_turn (tr_trial_own_dough (self->trial, 0), 0);
  g_clear_pointer (&turn->rest, tr_rest_free);
  turn->rest = rest;
  self->figures = tr_figures_compute (self->trial, NULL);
  dough = tr_figures_get_dough (self->figures, 0);
  while (g_array_index (dough->rests, TrRestFigures, index).turn != 1)
    index++;
  self->rest = &g_array_index (dough->rests, TrRestFigures, index);
  tr_reader_init_plain (&self->reader, units);
  tr_look_init_screen (&look, FALSE, FALSE, EM);
  look.device_scale = 0;
  self->picture = tr_temperature_picture_new (dough, index, FALSE, &self->reader, &look, width, height);
}

/* With plain spaces and hyphens, as a test is written. */
static char *
dup_plain (const char *text)
{
  g_autoptr (GString) plain = g_string_new (text);

  g_string_replace (plain, "\u202f", " ", 0);
  g_string_replace (plain, "\u00a0", " ", 0);
  g_string_replace (plain, "\u2212", "-", 0);

  return g_string_free (g_steal_pointer (&plain), FALSE);
}

static gboolean
find_text (const TrPicture *picture,
           const char      *start,
           TrBox           *box)
{
  for (guint i = 0; i < tr_picture_count_texts (picture); i++)
    {
      g_autofree char *text = dup_plain (tr_picture_get_text (picture, i, box));

      if (g_str_has_prefix (text, start))
        return TRUE;
    }

  return FALSE;
}

/* Where a minute lies, by two of the ticks at the foot. */
static double
x_of (const Case *self,
      double      minutes)
{
  static const double ticks[] = { 15, 30, 45, 60, 120, 180, 240, 360, 480, 720, 960 };
  double from = NAN, from_x = 0, to = NAN, to_x = 0;

  for (guint i = 0; i < G_N_ELEMENTS (ticks); i++)
    {
      g_autofree char *text = tr_words_minutes (&self->reader, ticks[i]);

      for (guint j = 0; j < tr_picture_count_texts (self->picture); j++)
        {
          TrBox box;

          if (strcmp (tr_picture_get_text (self->picture, j, &box), text) != 0)
            continue;
          to = ticks[i];
          to_x = box.x + box.width / 2;
          if (isnan (from))
            {
              from = to;
              from_x = to_x;
            }
        }
    }
  g_assert_cmpfloat (to, >, from);

  return from_x + (minutes - from) * (to_x - from_x) / (to - from);
}

/* A mark's words stand right or left of it. */
static void
assert_marked (const Case *self,
               const char *start,
               double      minutes)
{
  double x = x_of (self, minutes);
  TrBox box;

  g_assert_true (find_text (self->picture, start, &box));
  g_test_message ("%s at %g, its words from %g to %g", start, x, box.x, box.x + box.width);
  g_assert_cmpfloat (MIN (fabs (box.x - x), fabs (box.x + box.width - x)), <, 0.5 * EM);
}

static TrRest *
new_rest (TrPlace place,
          TrOn    on,
          double  minutes,
          double  target_c)
{
  TrRest *rest = tr_rest_new ();

  rest->place = place;
  rest->on = on;
  rest->min_minutes = minutes;
  rest->target_c = target_c;

  return rest;
}

static void
test_marks (void)
{
  Case fridge, freezer;
  TrBox box;

  case_init (&fridge, new_rest (TR_PLACE_FRIDGE, TR_ON_BOARD, 45, NAN), TR_UNITS_METRIC, 620, 230);
  assert_marked (&fridge, "45 min written: core 13.5 °C", 45);
  assert_marked (&fridge, "core 8 °C: ", fridge.rest->minutes_to_core);
  g_assert_false (find_text (fridge.picture, "surface freezes", &box));
  case_clear (&fridge);

  case_init (&freezer, new_rest (TR_PLACE_FREEZER, TR_ON_RACK, 90, 3), TR_UNITS_METRIC, 620, 230);
  g_assert_cmpfloat (freezer.rest->minutes_to_surface_freezing, <, 90);
  assert_marked (&freezer, "1 h 30 written", 90);
  assert_marked (&freezer, "core 3 °C: ", freezer.rest->minutes_to_core);
  assert_marked (&freezer, "surface freezes: ", freezer.rest->minutes_to_surface_freezing);
  /* The core after the freezing of the surface is not known, and not said. */
  g_assert_true (find_text (freezer.picture, "1 h 30 written", &box));
  g_assert_false (find_text (freezer.picture, "1 h 30 written:", &box));
  case_clear (&freezer);
}

/* Where a line comes to the core, its number stands at the time at which the core is that warm. */
static void
test_lines (void)
{
  static const struct { TrUnitSystem units; double degrees[4]; } cases[] = {
    { TR_UNITS_METRIC, { 12, 11, 10, 9 } }, { TR_UNITS_US, { 56, 54, 52, 50 } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      guint n_found = 0;
      Case self;

      case_init (&self, new_rest (TR_PLACE_FRIDGE, TR_ON_BOARD, 330, NAN), cases[i].units, 900, 260);
      for (guint j = 0; j < G_N_ELEMENTS (cases[i].degrees); j++)
        {
          g_autofree char *text = g_strdup_printf ("%.0f°", cases[i].degrees[j]);
          double celsius = cases[i].units == TR_UNITS_US ? (cases[i].degrees[j] - 32) * 5 / 9 : cases[i].degrees[j];
          TrBox box;

          if (!find_text (self.picture, text, &box))
            continue;
          n_found++;
          g_assert_cmpfloat_with_epsilon (box.x - 0.3 * EM, x_of (&self, tr_wall_get_minutes_to (&self.rest->wall, TR_WALL_CORE, celsius)), 1.5);
        }
      g_assert_cmpuint (n_found, >=, 3);
      case_clear (&self);
    }
}

/* No figure, no lines: a slab as warm as the air. */
static void
test_nothing_moves (void)
{
  Case self;
  TrRest *rest = new_rest (TR_PLACE_ROOM, TR_ON_BOARD, 60, NAN);

  rest->start_c = 21;
  case_init (&self, rest, TR_UNITS_METRIC, 620, 230);
  for (guint i = 0; i < tr_picture_count_texts (self.picture); i++)
    g_assert_false (g_str_has_suffix (tr_picture_get_text (self.picture, i, NULL), "°"));
  assert_marked (&self, "1 h written: core 21 °C", 60);
  case_clear (&self);
}

/* The numbers of the picture, for those who cannot see it. */
static void
test_description (void)
{
  Case self;
  const char *said;

  case_init (&self, new_rest (TR_PLACE_FREEZER, TR_ON_BOARD, 20, NAN), TR_UNITS_METRIC, 620, 230);
  said = tr_picture_get_description (self.picture);
  const double minutes[] = { ceil (self.rest->minutes_to_core), floor (self.rest->minutes_to_surface_freezing), 20 };
  for (guint i = 0; i < G_N_ELEMENTS (minutes); i++)
    {
      g_autofree char *text = tr_words_minutes (&self.reader, minutes[i]);

      g_assert_nonnull (strstr (said, text));
    }
  g_autofree char *plain = dup_plain (said);
  g_assert_nonnull (strstr (plain, "-18 °C"));
  g_assert_nonnull (strstr (plain, "14 °C all through"));
  g_assert_nonnull (strstr (plain, "a rest takes at least, the time to roll lasts at most"));
  case_clear (&self);
}

/* Read from the right all of it lies as in a mirror, what reads upwards too, and says the same. */
static void
test_mirrored (void)
{
  const double width = 620;
  Case self;
  TrLook look;
  g_autoptr (TrPicture) mirrored = NULL;
  const TrDoughFigures *dough;
  TrBox box, other;

  case_init (&self, new_rest (TR_PLACE_FREEZER, TR_ON_BOARD, 20, NAN), TR_UNITS_METRIC, width, 230);
  dough = tr_figures_get_dough (self.figures, 0);
  tr_look_init_screen (&look, FALSE, FALSE, EM);
  look.device_scale = 0;
  mirrored = tr_temperature_picture_new (dough, (guint) (self.rest - (const TrRestFigures *) (gconstpointer) dough->rests->data), TRUE,
                                         &self.reader, &look, width, 230);
  g_assert_cmpstr (tr_picture_get_description (mirrored), ==, tr_picture_get_description (self.picture));
  g_assert_cmpuint (tr_picture_count_texts (mirrored), ==, tr_picture_count_texts (self.picture));
  for (guint i = 0; i < tr_picture_count_texts (mirrored); i++)
    {
      const char *text = tr_picture_get_text (self.picture, i, &box);

      g_assert_cmpstr (tr_picture_get_text (mirrored, i, &other), ==, strcmp (text, "time →") == 0 ? "← time" : text);
      g_assert_cmpfloat_with_epsilon (other.x, width - box.x - box.width, 1e-6);
      g_assert_cmpfloat_with_epsilon (other.y, box.y, 1e-6);
    }
  g_assert_true (find_text (mirrored, "← time", &other));
  tr_picture_get_extents (self.picture, &box);
  tr_picture_get_extents (mirrored, &other);
  g_assert_cmpfloat_with_epsilon (other.x, width - box.x - box.width, 1e-6);
  case_clear (&self);
}

static gboolean
do_overlap (const TrBox *a,
            const TrBox *b)
{
  const double touch = 1;

  return a->x + touch < b->x + b->width && b->x + touch < a->x + a->width
         && a->y + touch < b->y + b->height && b->y + touch < a->y + a->height;
}

/* Whatever is written, no words lie on others, and none hang out. */
static void
test_legible (void)
{
  for (guint n = 0; n < 300; n++)
    {
      TrRest *rest = new_rest ((TrPlace) g_test_rand_int_range (0, TR_N_PLACES), (TrOn) g_test_rand_int_range (0, TR_N_ONS),
                               g_test_rand_int_range (0, 1500), g_test_rand_bit () ? NAN : g_test_rand_double_range (-10, 30));
      double width = g_test_rand_double_range (420, 1000);
      Case self;

      rest->start_c = g_test_rand_bit () ? NAN : g_test_rand_double_range (-10, 30);
      case_init (&self, rest, g_test_rand_bit () ? TR_UNITS_US : TR_UNITS_METRIC, width, 200);
      for (guint i = 0; i < tr_picture_count_texts (self.picture); i++)
        {
          TrBox a, b;
          const char *text = tr_picture_get_text (self.picture, i, &a);

          g_assert_cmpfloat (a.x, >=, -1);
          g_assert_cmpfloat (a.x + a.width, <=, width + 1);
          for (guint j = 0; j < i; j++)
            {
              const char *other = tr_picture_get_text (self.picture, j, &b);

              if (do_overlap (&a, &b))
                g_error ("“%s” and “%s” overlap at width %g", text, other, width);
            }
        }
      case_clear (&self);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/temperature/marks", test_marks);
  g_test_add_func ("/temperature/lines", test_lines);
  g_test_add_func ("/temperature/nothing-moves", test_nothing_moves);
  g_test_add_func ("/temperature/description", test_description);
  g_test_add_func ("/temperature/mirrored", test_mirrored);
  g_test_add_func ("/temperature/legible", test_legible);

  return g_test_run ();
}
