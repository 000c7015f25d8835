/* temperature.c: how warm a resting slab is, over its thickness and in time
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Time runs to the right, as text does, or mirrored to the left; the face in
 * the air is above, the tray or the middle of the slab below. Where the slab has one temperature there is a line, and
 * between two lines one shade: as dough where it is warm, as paper where it is
 * cold. Upright stand the written minutes and those that the core needs. Past
 * the freezing of the surface nothing is known: hatched.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../words/rest.h"
#include "shapes.h"

#define N_TIMES 96
#define N_DEPTHS 24
#define MOST_LINES 12
#define MOST_MARKS 3
#define MOST_CORNERS (N_DEPTHS + 3)
/* As much more of time as what is marked needs. */
#define AFTER 1.12
#define LONGEST_MINUTES (48 * 60.0)

/* Upright, with its words beside it. */
typedef struct {
  double minutes;
  char *text;
  gboolean is_accent;
  double x, width;               /* width of the words, to the left below 0 */
} Mark;

typedef struct {
  const TrRestFigures *rest;
  const TrReader *reader;
  const TrLook *look;
  gboolean is_mirrored;
  TrPicture *picture;
  double em;
  TrBox area;
  double end_minutes;            /* at the right edge */
  double known_minutes;          /* the model ends there, or the picture */
  double low, high, step;        /* of the lines, in the reader's degrees */
  double celsius[N_DEPTHS + 1][N_TIMES + 1];
  Mark marks[MOST_MARKS];
  guint n_marks;
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
            double         time)
{
  return self->known_minutes * time / N_TIMES;
}

static double
to_degrees (const Drawing *self,
            double         celsius)
{
  return self->reader->units == TR_UNITS_US ? celsius * 9 / 5 + 32 : celsius;
}

static double
from_degrees (const Drawing *self,
              double         degrees)
{
  return self->reader->units == TR_UNITS_US ? (degrees - 32) * 5 / 9 : degrees;
}

static gboolean
does_cool (const Drawing *self)
{
  return self->rest->air_c < self->rest->start_c;
}

/* Scales ********************************************************************/

static void
find_times (Drawing *self)
{
  const TrRestFigures *rest = self->rest;
  double marked = rest->written_minutes, freezing = rest->minutes_to_surface_freezing;

  if (rest->minutes_to_core > marked)
    marked = rest->minutes_to_core;
  if (freezing < marked * 4)
    marked = MAX (marked, freezing);
  self->end_minutes = CLAMP (marked * AFTER, 5, LONGEST_MINUTES);
  self->known_minutes = freezing < self->end_minutes ? freezing : self->end_minutes;
}

static void
find_temperatures (Drawing *self)
{
  static const double steps[] = { 0.5, 1, 2, 5, 10, 20, 50, 100 };
  double start = to_degrees (self, self->rest->start_c), last;

  for (guint depth = 0; depth <= N_DEPTHS; depth++)
    for (guint time = 0; time <= N_TIMES; time++)
      self->celsius[depth][time] = tr_wall_get_c_at (&self->rest->wall, (double) depth / N_DEPTHS, minutes_at (self, time));

  last = to_degrees (self, self->celsius[0][N_TIMES]);
  self->low = MIN (start, last);
  self->high = MAX (start, last);
  self->step = steps[G_N_ELEMENTS (steps) - 1];
  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    if ((self->high - self->low) / steps[i] <= MOST_LINES)
      {
        self->step = steps[i];
        break;
      }
}

/* Lines of one temperature **************************************************/

/* The time at which it has that temperature at that depth, in parts of the known
 * time; NaN: it never has there. */
static double
find_time (const Drawing *self,
           guint          depth,
           double         celsius)
{
  const double *row = self->celsius[depth];
  gboolean falls = does_cool (self);

  for (guint time = 0; time <= N_TIMES; time++)
    {
      gboolean is_past = falls ? row[time] <= celsius : row[time] >= celsius;

      if (!is_past)
        continue;
      if (time == 0)
        return 0;
      return time - 1 + (row[time - 1] - celsius) / (row[time - 1] - row[time]);
    }

  return NAN;
}

/* From the face down to the core, or to where the known time ends. */
static guint
trace (const Drawing *self,
       double         celsius,
       double         xy[2 * MOST_CORNERS])
{
  guint n = 0;

  for (guint depth = 0; depth <= N_DEPTHS; depth++)
    {
      double time = find_time (self, depth, celsius);
      double y = depth;

      if (isnan (time) && n == 0)
        return 0;
      if (isnan (time))
        {
          double above = self->celsius[depth - 1][N_TIMES], below = self->celsius[depth][N_TIMES];

          time = N_TIMES;
          y = depth - 1 + (celsius - above) / (below - above);
          depth = N_DEPTHS;
        }
      xy[2 * n] = x_of (self, minutes_at (self, time));
      xy[2 * n + 1] = y_of (self, y / N_DEPTHS);
      n++;
    }

  return n;
}

/* Cold is paper, warm is dough; in between as much of each as is warm. */
static TrColour
shade_of (const Drawing *self,
          double         degrees)
{
  const TrColour *a = &self->look->paper, *b = &self->look->dough;
  double share = CLAMP ((degrees - self->low) / MAX (self->high - self->low, 1e-9), 0, 1);

  return (TrColour) { a->r + (b->r - a->r) * share, a->g + (b->g - a->g) * share, a->b + (b->b - a->b) * share };
}

/* Where there is room, and no mark runs through it. */
static void
add_line_text (Drawing *self,
               double   degrees,
               double   x,
               double   baseline,
               double   align,
               double   room)
{
  double size = self->look->text_size * 0.85;
  g_autofree char *number = tr_words_number (self->reader, degrees, self->step < 1 ? 1 : 0);
  g_autofree char *text = g_strconcat (number, "°", NULL);
  double width = tr_text_width (self->look, text, size, 400), left = x - align * width;

  if (width + 0.6 * self->em > room)
    return;
  for (guint i = 0; i < self->n_marks; i++)
    if (self->marks[i].x > left && self->marks[i].x < left + width)
      return;
  tr_picture_add_text (self->picture, text, size, 400, &self->look->text, x, baseline, align);
}

/* Its number: after it where it comes to the core, else under its end, but over `last_y`. `next_xy`: where the
 * one after it ends. */
static void
name_line (Drawing      *self,
           double        degrees,
           const double *end_xy,
           const double *next_xy,
           double        last_y)
{
  double right = x_of (self, self->known_minutes), bottom = y_of (self, 1), em = self->em;

  if (end_xy[1] > bottom - 1e-6)
    add_line_text (self, degrees, end_xy[0] + 0.3 * em, bottom - 0.35 * em, 0, (next_xy != NULL ? next_xy[0] : right) - end_xy[0]);
  else if (last_y - end_xy[1] > 1.7 * em)
    add_line_text (self, degrees, right - 0.3 * em, end_xy[1] + 0.95 * em, 1, right - self->area.x);
}

/* The shades of all lines first, so that none hides a line. */
static void
add_lines (Drawing *self)
{
  double xy[MOST_LINES + 2][2 * MOST_CORNERS], degrees[MOST_LINES + 2], last_y = y_of (self, 1) - self->em;
  guint n_corners[MOST_LINES + 2], n_lines = 0;
  double right = x_of (self, self->known_minutes), towards = does_cool (self) ? -1 : 1;
  double first = does_cool (self) ? ceil (self->high / self->step) - 1 : floor (self->low / self->step) + 1;

  for (guint i = 0; i < MOST_LINES + 2; i++)
    {
      double at = (first + towards * i) * self->step;
      TrColour shade = shade_of (self, at + towards * 0.5 * self->step);
      guint n = trace (self, from_degrees (self, at), xy[n_lines]);

      if (n < 2)
        break;
      xy[n_lines][2 * n] = right;
      xy[n_lines][2 * n + 1] = xy[n_lines][2 * n - 1];
      xy[n_lines][2 * n + 2] = right;
      xy[n_lines][2 * n + 3] = self->area.y;
      tr_picture_add_polygon (self->picture, xy[n_lines], n + 2, &shade, TR_PEN_NONE, NULL);
      n_corners[n_lines] = n;
      degrees[n_lines++] = at;
    }

  for (guint i = 0; i < n_lines; i++)
    {
      const double *end_xy = &xy[i][2 * n_corners[i] - 2];

      for (guint j = 0; j + 1 < n_corners[i]; j++)
        tr_picture_add_line (self->picture, xy[i][2 * j], xy[i][2 * j + 1], xy[i][2 * j + 2], xy[i][2 * j + 3], TR_PEN_INNER, &self->look->text);
      name_line (self, degrees[i], end_xy, i + 1 < n_lines ? &xy[i + 1][2 * n_corners[i + 1] - 2] : NULL, last_y);
      last_y = MIN (last_y, end_xy[1]);
    }
}

static void
add_field (Drawing *self)
{
  TrColour first = shade_of (self, to_degrees (self, self->rest->start_c));
  double known_x = x_of (self, self->known_minutes);
  TrBox known = { self->area.x, self->area.y, known_x - self->area.x, self->area.height };
  TrBox frozen = { known_x, self->area.y, self->area.x + self->area.width - known_x, self->area.height };

  tr_picture_add_rect (self->picture, &known, &first, TR_PEN_NONE, NULL);
  if (self->high - self->low > 1e-6)
    add_lines (self);
  if (self->known_minutes < self->end_minutes)
    tr_picture_add_hatch (self->picture, &frozen, 0.6 * self->em, &self->look->dim);
  tr_picture_add_rect (self->picture, &self->area, NULL, TR_PEN_OUTLINE, NULL);
}

/* Minutes along the foot. */
static void
add_ticks (Drawing *self)
{
  static const double steps[] = { 1, 2, 5, 10, 15, 30, 60, 120, 180, 240, 360, 720, 1440 };
  double step = steps[G_N_ELEMENTS (steps) - 1], foot = y_of (self, 1);

  for (guint i = G_N_ELEMENTS (steps); i-- > 0;)
    if (self->area.width * steps[i] / self->end_minutes >= 4.5 * self->em)
      step = steps[i];

  for (double minutes = step; minutes <= self->end_minutes; minutes += step)
    {
      g_autofree char *text = tr_words_minutes (self->reader, minutes);
      double x = x_of (self, minutes);

      tr_picture_add_line (self->picture, x, foot, x, foot + 0.35 * self->em, TR_PEN_OUTLINE, NULL);
      tr_picture_add_text (self->picture, text, self->look->text_size * 0.85, 400, &self->look->text, x, foot + 1.2 * self->em, 0.5);
    }
}

/* Marks *********************************************************************/

/* Takes the text. To the right, unless there is only room on the left. */
static void
take_mark (Drawing *self,
           double   minutes,
           char    *text,
           gboolean is_accent)
{
  double x = x_of (self, minutes), right = self->area.x + self->area.width;
  double width = tr_text_width (self->look, text, self->look->text_size, is_accent ? 700 : 400) + 0.6 * self->em;
  gboolean is_left = x + width > right && x > self->area.x + self->area.width / 2;
  double room = is_left ? x : right - x;

  self->marks[self->n_marks++] = (Mark) { minutes, text, is_accent, x, is_left ? -MIN (width, room) : MIN (width, room) };
}

static void
find_marks (Drawing *self)
{
  const TrRestFigures *rest = self->rest;

  if (rest->written_minutes <= self->end_minutes)
    {
      g_autofree char *written = tr_words_minutes (self->reader, rest->written_minutes);
      g_autofree char *after = tr_words_temperature (self->reader, round (rest->core_c_after_written * 10) / 10);

      take_mark (self, rest->written_minutes,
                 isnan (rest->core_c_after_written) ? g_strdup_printf (_("%s written"), written)
                                                    : g_strdup_printf (_("%s written: core %s"), written, after),
                 TRUE);
    }
  if (rest->minutes_to_core > 0 && rest->minutes_to_core <= self->end_minutes)
    {
      g_autofree char *needed = tr_words_minutes (self->reader, ceil (rest->minutes_to_core - 1e-6));
      g_autofree char *target = tr_words_temperature (self->reader, rest->target_c);

      take_mark (self, rest->minutes_to_core, g_strdup_printf (_("core %s: %s or more"), target, needed), FALSE);
    }
  if (self->known_minutes < self->end_minutes)
    {
      g_autofree char *freezing = tr_words_minutes (self->reader, floor (self->known_minutes + 1e-6));

      take_mark (self, self->known_minutes, g_strdup_printf (_("surface freezes: %s"), freezing), FALSE);
    }
}

/* Do its words lie where something upright stands? */
static gboolean
is_crossed_at (const Mark *mark,
               double      x)
{
  double from = mark->x + MIN (0, mark->width);

  return x > from && x < from + fabs (mark->width);
}

static gboolean
is_crossed (const Drawing *self,
            guint          mark)
{
  for (guint i = 0; i < self->n_marks; i++)
    if (i != mark && self->marks[i].text != NULL && is_crossed_at (&self->marks[mark], self->marks[i].x))
      return TRUE;

  return FALSE;
}

/* `row`: from the slab upwards. */
static double
baseline_of (const Drawing *self,
             guint          row)
{
  return self->area.y - (0.5 + 1.25 * row) * self->em;
}

static void
add_upright (Drawing    *self,
             const Mark *mark,
             double      from,
             double      to)
{
  tr_picture_add_line (self->picture, mark->x, from, mark->x, to, TR_PEN_OUTLINE, mark->is_accent ? &self->look->accent : &self->look->text);
  if (!mark->is_accent)
    tr_picture_dash (self->picture);
}

/* Words below that could not be kept out of its way interrupt it. */
static void
add_mark (Drawing    *self,
          const Mark *rows,
          guint       row)
{
  const Mark *mark = &rows[row];
  double top = baseline_of (self, row) - 0.7 * self->em, side = mark->width < 0 ? -1 : 1;
  int weight = mark->is_accent ? 700 : 400;

  for (guint below = row; below-- > 0;)
    if (is_crossed_at (&rows[below], mark->x))
      {
        add_upright (self, mark, top, baseline_of (self, below) - 0.85 * self->em);
        top = baseline_of (self, below) + 0.25 * self->em;
      }
  add_upright (self, mark, top, y_of (self, 1));
  tr_picture_add_fitting_text (self->picture, mark->text, self->look->text_size, weight, mark->is_accent ? &self->look->accent : &self->look->text,
                               mark->x + side * 0.3 * self->em, baseline_of (self, row), side < 0 ? 1 : 0,
                               fabs (mark->width) - 0.3 * self->em);
}

/* Lowest stands the one whose words none of those above has to pass. */
static void
add_marks (Drawing *self)
{
  Mark rows[MOST_MARKS];
  guint n_rows = self->n_marks;

  for (guint row = 0; row < n_rows; row++)
    {
      guint best = MOST_MARKS;

      for (guint i = n_rows; i-- > 0;)
        if (self->marks[i].text != NULL && (best == MOST_MARKS || !is_crossed (self, i)))
          best = i;
      rows[row] = self->marks[best];
      self->marks[best].text = NULL;
    }

  for (guint row = 0; row < n_rows; row++)
    add_mark (self, rows, row);
  for (guint row = 0; row < n_rows; row++)
    g_free (rows[row].text);
}

static void
add_names (Drawing *self)
{
  g_autofree char *thickness = tr_words_length (self->reader, self->rest->thickness_mm);
  g_autofree char *unit = g_strdup_printf (_("lines in %s"), tr_words_temperature_unit (self->reader));
  double size = self->look->text_size * 0.85, baseline = y_of (self, 1) + 2.4 * self->em;

  tr_picture_add_upward_text (self->picture, thickness, self->look->text_size, 400, &self->look->text,
                              self->area.x - 1.7 * self->em, y_of (self, 0.5), 0.5);
  tr_picture_add_upward_text (self->picture, self->rest->on == TR_ON_RACK ? _("middle … air") : _("tray … air"), size, 400,
                              &self->look->dim, self->area.x - 0.5 * self->em, y_of (self, 0.5), 0.5);
  tr_picture_add_text (self->picture, unit, size, 400, &self->look->dim, self->area.x, baseline, 0);
  tr_picture_add_text (self->picture, self->is_mirrored ? _("← time") : _("time →"), size, 400, &self->look->dim, self->area.x + self->area.width, baseline, 1);
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
  tr_picture_describe (self->picture, "%s", tr_words_rest_bound ());
}

TrPicture *
tr_temperature_picture_new (const TrDoughFigures *figures,
                            guint                 index,
                            gboolean              is_mirrored,
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
  self->is_mirrored = is_mirrored;
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
  find_marks (self);
  add_field (self);
  add_ticks (self);
  add_marks (self);
  add_names (self);
  tr_picture_tuck_in (self->picture);
  if (is_mirrored)
    tr_picture_mirror (self->picture);
  describe (self);

  return self->picture;
}
