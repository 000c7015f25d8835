/* temperature.c: how warm a resting slab is, over its thickness and in time
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Time runs to the right; the face in the air is above, the tray or the middle
 * of the slab below. Where the slab has one temperature there is a line, and
 * between two lines one shade: as dough where it is warm, as paper where it is
 * cold. Upright stand the written minutes and those that the core needs.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../words/rest.h"
#include "shapes.h"

#define N_TIMES 96
#define N_DEPTHS 24
#define MOST_BANDS 16
/* As much more of time as what is marked needs. */
#define AFTER 1.12
#define LONGEST_MINUTES (48 * 60.0)

typedef struct {
  const TrRestFigures *rest;
  const TrReader *reader;
  const TrLook *look;
  TrPicture *picture;
  double em;
  TrBox area;
  double end_minutes;            /* at the right edge */
  double known_minutes;          /* the model ends there */
  double low_c, high_c, step_c;  /* of the lines */
  double celsius[N_DEPTHS + 1][N_TIMES + 1];
} Drawing;

static double
x_of (const Drawing *self,
      double         minutes)
{
  return self->area.x + self->area.width * minutes / self->end_minutes;
}

static double
y_of (const Drawing *self,
      double         depth)
{
  return self->area.y + self->area.height * depth;
}

static double
minutes_at (const Drawing *self,
            guint          time)
{
  return MIN (self->known_minutes, self->end_minutes) * time / N_TIMES;
}

/* Scales ********************************************************************/

static void
find_times (Drawing *self)
{
  const TrRestFigures *rest = self->rest;
  double marked = rest->written_minutes;

  if (rest->minutes_to_core > marked)
    marked = rest->minutes_to_core;
  self->known_minutes = isnan (rest->minutes_to_surface_freezing) ? INFINITY : rest->minutes_to_surface_freezing;
  if (isfinite (self->known_minutes) && self->known_minutes < marked * 4)
    marked = MAX (marked, self->known_minutes);
  self->end_minutes = CLAMP (marked * AFTER, 5, LONGEST_MINUTES);
}

static void
find_temperatures (Drawing *self)
{
  double low = MIN (self->rest->start_c, self->rest->air_c), high = MAX (self->rest->start_c, self->rest->air_c);
  static const double steps[] = { 0.5, 1, 2, 5, 10, 20, 50 };

  for (guint depth = 0; depth <= N_DEPTHS; depth++)
    for (guint time = 0; time <= N_TIMES; time++)
      self->celsius[depth][time] = tr_wall_get_c_at (&self->rest->wall, (double) depth / N_DEPTHS, minutes_at (self, time));

  self->step_c = steps[G_N_ELEMENTS (steps) - 1];
  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    if ((high - low) / steps[i] <= MOST_BANDS - 2)
      {
        self->step_c = steps[i];
        break;
      }
  self->low_c = floor (low / self->step_c) * self->step_c;
  self->high_c = ceil (high / self->step_c) * self->step_c;
}

/* The time at which it has that temperature at that depth, in parts of the known
 * time; 0 or N_TIMES where it never has there. */
static double
find_time (const Drawing *self,
           guint          depth,
           double         celsius)
{
  const double *row = self->celsius[depth];
  gboolean falls = self->rest->air_c < self->rest->start_c;

  for (guint time = 0; time <= N_TIMES; time++)
    {
      gboolean is_past = falls ? row[time] <= celsius : row[time] >= celsius;

      if (!is_past)
        continue;
      if (time == 0)
        return 0;
      return time - 1 + (row[time - 1] - celsius) / (row[time - 1] - row[time]);
    }

  return N_TIMES;
}

/* Shades and lines **********************************************************/

static TrColour
mix (const TrColour *a,
     const TrColour *b,
     double          share)
{
  return (TrColour) { a->r + (b->r - a->r) * share, a->g + (b->g - a->g) * share, a->b + (b->b - a->b) * share };
}

/* Cold is paper, warm is dough; in between as much of each as is warm. */
static TrColour
shade_of (const Drawing *self,
          double         celsius)
{
  double share = (celsius - self->low_c) / MAX (self->high_c - self->low_c, 1e-9);

  return mix (&self->look->paper, &self->look->dough, CLAMP (share, 0, 1));
}

static double
x_of_part (const Drawing *self,
           double         part)
{
  return x_of (self, MIN (self->known_minutes, self->end_minutes) * part / N_TIMES);
}

/* Everything that comes after the line of that temperature. */
static void
add_shade (Drawing *self,
           double   line_c,
           double   shade_c)
{
  double xy[2 * (N_DEPTHS + 1) + 4];
  guint n = 0;
  double right = x_of_part (self, N_TIMES);
  TrColour shade = shade_of (self, shade_c);

  for (guint depth = 0; depth <= N_DEPTHS; depth++)
    {
      xy[n++] = x_of_part (self, find_time (self, depth, line_c));
      xy[n++] = y_of (self, (double) depth / N_DEPTHS);
    }
  xy[n++] = right;
  xy[n++] = y_of (self, 1);
  xy[n++] = right;
  xy[n++] = y_of (self, 0);
  tr_picture_add_polygon (self->picture, xy, n / 2, &shade, TR_PEN_NONE, NULL);
}

static void
add_isotherm (Drawing *self,
              double   celsius)
{
  g_autofree char *text = NULL;
  double last_x = NAN, last_y = NAN;

  for (guint depth = 0; depth <= N_DEPTHS; depth++)
    {
      double part = find_time (self, depth, celsius), x = x_of_part (self, part), y = y_of (self, (double) depth / N_DEPTHS);

      if (part <= 0 || part >= N_TIMES)
        {
          last_x = NAN;
          continue;
        }
      if (!isnan (last_x))
        tr_picture_add_line (self->picture, last_x, last_y, x, y, TR_PEN_INNER, &self->look->text);
      last_x = x;
      last_y = y;
    }
  if (isnan (last_x))
    return;

  text = tr_words_number (self->reader, self->reader->units == TR_UNITS_US ? celsius * 9 / 5 + 32 : celsius, self->step_c < 1 ? 1 : 0);
  tr_picture_add_text (self->picture, text, self->look->text_size * 0.85, 400, &self->look->text,
                       last_x, y_of (self, 1) + 1.0 * self->em, 0.5);
}

static void
add_field (Drawing *self)
{
  gboolean falls = self->rest->air_c < self->rest->start_c;
  TrColour first = shade_of (self, self->rest->start_c);
  double known = MIN (self->known_minutes, self->end_minutes);
  TrBox box = { self->area.x, self->area.y, x_of (self, known) - self->area.x, self->area.height };

  tr_picture_add_rect (self->picture, &box, &first, TR_PEN_NONE, NULL);
  for (double c = falls ? self->high_c : self->low_c; falls ? c > self->low_c : c < self->high_c; c += falls ? -self->step_c : self->step_c)
    add_shade (self, c, c - (falls ? 0.5 : -0.5) * self->step_c);
  for (double c = self->low_c + self->step_c; c < self->high_c - 1e-9; c += self->step_c)
    add_isotherm (self, c);

  if (known < self->end_minutes)
    {
      TrBox frozen = { x_of (self, known), self->area.y, self->area.x + self->area.width - x_of (self, known), self->area.height };

      tr_picture_add_hatch (self->picture, &frozen, 0.6 * self->em, &self->look->dim);
    }
  tr_picture_add_rect (self->picture, &self->area, NULL, TR_PEN_OUTLINE, NULL);
}

/* Marks *********************************************************************/

/* `row`: labels stand above the picture, the second line where two would meet. */
static void
add_mark (Drawing    *self,
          double      minutes,
          const char *text,
          guint       row,
          gboolean    is_accent)
{
  const TrColour *colour = is_accent ? &self->look->accent : &self->look->text;
  double x = x_of (self, minutes), top = self->area.y - (0.5 + 1.25 * row) * self->em;
  double width = tr_text_width (self->look, text, self->look->text_size, is_accent ? 700 : 400);
  gboolean is_left = x + width + 0.3 * self->em > self->area.x + self->area.width && x > self->area.x + self->area.width / 2;

  tr_picture_add_line (self->picture, x, top - 0.7 * self->em, x, y_of (self, 1), TR_PEN_OUTLINE, colour);
  if (!is_accent)
    tr_picture_dash (self->picture);
  tr_picture_add_fitting_text (self->picture, text, self->look->text_size, is_accent ? 700 : 400, colour,
                               is_left ? x - 0.3 * self->em : x + 0.3 * self->em, top, is_left ? 1 : 0,
                               is_left ? x : self->area.x + self->area.width - x);
}

static void
add_marks (Drawing *self)
{
  const TrRestFigures *rest = self->rest;
  g_autofree char *written = tr_words_minutes (self->reader, rest->written_minutes);
  g_autofree char *after = isnan (rest->core_c_after_written) ? NULL : tr_words_temperature (self->reader, round (rest->core_c_after_written * 10) / 10);
  g_autofree char *said = after != NULL ? g_strdup_printf (_("%s written: core %s"), written, after) : g_strdup_printf (_("%s written"), written);

  if (rest->minutes_to_core > 0 && rest->minutes_to_core <= self->end_minutes)
    {
      g_autofree char *needed = tr_words_minutes (self->reader, ceil (rest->minutes_to_core - 1e-6));
      g_autofree char *target = tr_words_temperature (self->reader, rest->target_c);
      g_autofree char *text = g_strdup_printf (_("core %s: %s or more"), target, needed);

      add_mark (self, rest->minutes_to_core, text, 1, FALSE);
    }
  if (self->known_minutes < self->end_minutes)
    {
      g_autofree char *freezing = tr_words_minutes (self->reader, floor (self->known_minutes + 1e-6));
      g_autofree char *text = g_strdup_printf (_("surface freezes: %s"), freezing);

      add_mark (self, self->known_minutes, text, 2, FALSE);
    }
  if (rest->written_minutes <= self->end_minutes)
    add_mark (self, rest->written_minutes, said, 0, TRUE);
}

static void
add_names (Drawing *self)
{
  g_autofree char *thickness = tr_words_length (self->reader, self->rest->thickness_mm);
  g_autofree char *unit = g_strdup_printf (_("lines in %s"), tr_words_temperature_unit (self->reader));
  double size = self->look->text_size * 0.85, baseline = y_of (self, 1) + 2.3 * self->em;

  tr_picture_add_upward_text (self->picture, thickness, self->look->text_size, 400, &self->look->text,
                              self->area.x - 1.7 * self->em, y_of (self, 0.5), 0.5);
  tr_picture_add_upward_text (self->picture, self->rest->on == TR_ON_RACK ? _("middle … air") : _("tray … air"), size, 400,
                              &self->look->dim, self->area.x - 0.5 * self->em, y_of (self, 0.5), 0.5);
  tr_picture_add_text (self->picture, unit, size, 400, &self->look->dim, self->area.x, baseline, 0);
  tr_picture_add_text (self->picture, _("time →"), size, 400, &self->look->dim, self->area.x + self->area.width, baseline, 1);
}

static void
describe (Drawing *self)
{
  g_autofree char *core = tr_words_rest_core (self->reader, self->rest);
  g_autofree char *freezing = tr_words_rest_freezing (self->reader, self->rest);
  g_autofree char *thickness = tr_words_length (self->reader, self->rest->thickness_mm);
  g_autofree char *start = tr_words_temperature (self->reader, self->rest->start_c);
  g_autofree char *air = tr_words_temperature (self->reader, self->rest->air_c);

  tr_picture_describe (self->picture, _("A slab of %s, %s all through at the start, in air of %s."), thickness, start, air);
  if (core != NULL)
    tr_picture_describe (self->picture, "%s", core);
  if (freezing != NULL)
    tr_picture_describe (self->picture, "%s", freezing);
}

TrPicture *
tr_temperature_picture_new (const TrDoughFigures *figures,
                            guint                 index,
                            const TrReader       *reader,
                            const TrLook         *look,
                            double                width,
                            double                height)
{
  g_return_val_if_fail (index < figures->rests->len, NULL);

  double em = look->text_size;
  g_autofree Drawing *self = g_new0 (Drawing, 1);

  self->rest = &g_array_index (figures->rests, TrRestFigures, index);
  self->reader = reader;
  self->look = look;
  self->picture = tr_picture_new (look, reader, width, height);
  self->em = em;
  self->area = (TrBox) { 2.8 * em, 4.4 * em, MAX (width - 3.4 * em, em), MAX (height - 7 * em, em) };
  if (isnan (self->rest->wall.scale_s))
    {
      tr_picture_describe (self->picture, "%s", _("What the slab is made of, or how thick it is, is not known."));
      return self->picture;
    }

  find_times (self);
  find_temperatures (self);
  add_field (self);
  add_marks (self);
  add_names (self);
  tr_picture_tuck_in (self->picture);
  describe (self);

  return self->picture;
}
