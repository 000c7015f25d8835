/* findings-rest.c: what the rests and the time on the bench show
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "look.h"

#include "measure.h"
#include "rests.h"

#define SERIES "plane wall, Incropera ch. 5; Choi & Okos 1986"

static char *
rest_pointer (const TrRestFigures *rest)
{
  return rest->turn == 0 ? g_strdup ("/lock_in/rest/min") : g_strdup_printf ("/turns/%d/rest/min", rest->turn - 1);
}

/* Only against a target that the baker wrote: the usual rests of the trade stay
 * far over what fridge and slab could reach, and are not wrong for that. */
static void
look_at_core (const TrDoughFigures *figures,
              const TrRestFigures  *rest,
              GPtrArray            *found)
{
  double target_c = tr_dough_get_rest (figures->dough, rest->turn)->target_c;

  if (!(rest->core_c_after_written > target_c + TR_REST_SHORT_BY_C + TR_HAIR))
    return;

  TrFinding *finding = tr_look_add (found, TR_FINDING_REST_SHORT, TR_SEVERITY_WARN, rest_pointer (rest),
                                    rest->core_c_after_written, target_c, SERIES);

  finding->with[0] = rest->turn;
  finding->with[1] = rest->written_minutes;
  finding->with[2] = rest->minutes_to_core;
}

static void
look_at_window (const TrDoughFigures *figures,
                const TrRestFigures  *rest,
                GPtrArray            *found)
{
  gboolean is_sheet = rest->turn == (int) figures->dough->turns->len;
  g_autofree char *where = NULL;

  if (!(rest->work_window_minutes < rest->next_minutes - TR_HAIR))
    return;

  where = is_sheet ? g_strdup ("/cut") : g_strdup_printf ("/turns/%d/minutes", rest->turn);
  tr_look_add (found, TR_FINDING_WINDOW_SHORT, TR_SEVERITY_WARN, g_steal_pointer (&where), rest->work_window_minutes,
               rest->next_minutes, SERIES)
    ->with[0] = is_sheet ? 0 : rest->turn + 1;
}

static void
look_at_freezing (const TrRestFigures *rest,
                  GPtrArray           *found)
{
  if (rest->place != TR_PLACE_FREEZER || !(rest->written_minutes > rest->minutes_to_surface_freezing + TR_HAIR))
    return;

  tr_look_add (found, TR_FINDING_FREEZING, TR_SEVERITY_NOTE, rest_pointer (rest), rest->written_minutes,
               rest->minutes_to_surface_freezing, SERIES)
    ->with[0] = rest->turn;
}

void
tr_look_at_rests (const TrDoughFigures *figures,
                  GPtrArray            *found)
{
  for (guint i = 0; i < figures->rests->len; i++)
    {
      const TrRestFigures *rest = &g_array_index (figures->rests, TrRestFigures, i);

      look_at_core (figures, rest, found);
      look_at_window (figures, rest, found);
      look_at_freezing (rest, found);
    }
}
