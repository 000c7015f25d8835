/* plane-axis.c: the numbers along an axis, inside this room
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "plane-axis.h"

/* Room on either side of what is shown, as a part of it. */
#define ROOM 0.12
/* More ticks than this nobody reads. */
#define MAX_TICKS 40

gboolean
tr_axis_is_forced (const TrPlaneAxis *axis)
{
  return isfinite (axis->view.min) && isfinite (axis->view.max) && axis->view.max > axis->view.min;
}

static void
include (TrRange *range,
         double   value)
{
  if (!isfinite (value))
    return;
  value = CLAMP (value, -TR_AXIS_LIMIT, TR_AXIS_LIMIT);
  range->min = MIN (range->min, value);
  range->max = MAX (range->max, value);
}

TrRange
tr_axis_find_view (const TrPlaneAxis *axis,
                   const double      *values,
                   guint              n_values)
{
  TrRange range = { G_MAXDOUBLE, -G_MAXDOUBLE };
  double least, span;
  gboolean is_positive;

  if (tr_axis_is_forced (axis))
    return axis->view;

  for (guint i = 0; i < n_values; i++)
    include (&range, values[i]);
  include (&range, axis->band.min);
  include (&range, axis->band.max);
  if (range.min > range.max)
    range = (TrRange) { 0, 1 };

  is_positive = range.min >= 0;
  span = range.max - range.min;
  least = MAX (axis->least_span, 0.1 * MAX (fabs (range.min), fabs (range.max)));
  least = least > 0 ? least : 1;
  if (span < least)
    {
      range.min -= (least - span) / 2;
      range.max += (least - span) / 2;
      span = least;
    }
  range.min -= ROOM * span;
  range.max += ROOM * span;
  /* What is never negative has no axis below nothing. */
  if (is_positive)
    range.min = MAX (0, range.min);
  return range;
}

/* The least of 1, 2, 5 times a power of ten that is not under `value`. */
static double
nice_above (double value)
{
  double power = pow (10, floor (log10 (value)));
  double digit = value / power;

  return power * (digit <= 1.000001 ? 1 : digit <= 2.000001 ? 2 : digit <= 5.000001 ? 5 : 10);
}

static void
set_step (const TrPlaneAxis *axis,
          const TrRange     *view,
          double             step,
          TrAxisTicks       *ticks)
{
  double last;

  ticks->step = step;
  ticks->view = *view;
  if (!tr_axis_is_forced (axis))
    {
      ticks->view.min = floor (view->min / step + 1e-9) * step;
      ticks->view.max = ceil (view->max / step - 1e-9) * step;
    }
  ticks->first = ceil (ticks->view.min / step - 1e-9) * step;
  last = floor (ticks->view.max / step + 1e-9) * step;
  ticks->n_ticks = (guint) CLAMP (round ((last - ticks->first) / step) + 1, 0, MAX_TICKS);
}

double
tr_axis_tick (const TrAxisTicks *ticks,
              guint              index)
{
  double value = ticks->first + index * ticks->step;

  /* 0.1 + 0.2 - 0.3 is nothing */
  return fabs (value) < ticks->step * 1e-6 ? 0 : value;
}

char *
tr_axis_tick_text (const TrPlaneAxis *axis,
                   const TrAxisTicks *ticks,
                   const TrReader    *reader,
                   guint              index)
{
  double value = tr_axis_tick (ticks, index), size = MAX (fabs (ticks->view.min), fabs (ticks->view.max));
  int decimals = (int) CLAMP (ceil (-log10 (ticks->step) - 1e-9), 0, 9);
  g_autofree char *number = NULL;

  if (size >= 1e9 || size < 1e-6)
    {
      int power = fabs (value) > 0 ? (int) floor (log10 (fabs (value)) + 1e-9) : 0;
      g_autofree char *digits = tr_words_number (reader, value / pow (10, power), 2);

      number = power != 0 ? g_strdup_printf ("%se%d", digits, power) : g_steal_pointer (&digits);
    }
  else
    {
      number = tr_words_number (reader, value, decimals);
    }
  return axis->unit != NULL ? g_strconcat (number, "\u00a0", axis->unit, NULL) : g_steal_pointer (&number);
}

static double
get_widest (const TrPlaneAxis *axis,
            const TrAxisTicks *ticks,
            const TrReader    *reader,
            const TrLook      *look)
{
  double widest = 0;

  for (guint i = 0; i < ticks->n_ticks; i++)
    {
      g_autofree char *text = tr_axis_tick_text (axis, ticks, reader, i);

      widest = MAX (widest, tr_text_width (look, text, look->text_size, 400));
    }
  return widest;
}

void
tr_axis_find_ticks (const TrPlaneAxis *axis,
                    const TrRange     *view,
                    const TrReader    *reader,
                    const TrLook      *look,
                    double             length,
                    double             least,
                    double             gap,
                    TrAxisTicks       *ticks)
{
  double room = MAX (least, 1), part = MIN (1, room / MAX (length, 1));

  /* Wider numbers want a longer step, which may need wider numbers. */
  for (int tries = 0; tries < 8; tries++)
    {
      double needed;

      set_step (axis, view, nice_above ((view->max - view->min) * part), ticks);
      needed = gap > 0 ? MAX (room, get_widest (axis, ticks, reader, look) + gap) : room;
      if (ticks->step / (ticks->view.max - ticks->view.min) * length >= needed * 0.999)
        return;
      part = MAX (part * 1.3, MIN (1, needed / MAX (length, 1)));
    }
}

char *
tr_axis_say (const TrPlaneAxis *axis,
             const TrReader    *reader,
             double             value)
{
  return axis->say_of != NULL ? axis->say_of (axis->of, reader, value) : axis->say (reader, value);
}
