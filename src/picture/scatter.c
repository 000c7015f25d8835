/* scatter.c: doughs as points by any two figures, or by their scores
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../words/comparison.h"
#include "scatter.h"

#define SCORE_DECIMALS 1

/* What an axis is of. */
typedef struct {
  const TrComparable *comparable;
  const TrBench *bench;
  char *title;
} Axis;

/* `value` is in the reader's unit already. */
static char *
say_value (gconstpointer   of,
           const TrReader *reader,
           double          value)
{
  const Axis *axis = of;
  g_autofree char *number = NULL;
  const char *unit;

  if (axis->comparable == NULL)
    return tr_words_number (reader, value, SCORE_DECIMALS);
  if (axis->comparable->measure == TR_MEASURE_MINUTES)
    return tr_words_minutes (reader, value);

  unit = tr_words_comparable_unit (reader, axis->comparable, axis->bench);
  number = tr_words_number (reader, value, axis->comparable->decimals);
  if (*unit == '\0' || !isfinite (value))
    return g_steal_pointer (&number);

  return g_strconcat (number, "\u00a0", unit, NULL);
}

static const char *
get_unit (const Axis     *axis,
          const TrReader *reader)
{
  const char *unit;

  if (axis->comparable == NULL)
    return NULL;
  if (axis->comparable->measure == TR_MEASURE_MINUTES)
    return _("min");

  unit = tr_words_comparable_unit (reader, axis->comparable, axis->bench);

  return *unit != '\0' ? unit : NULL;
}

static void
init_axis (TrPlaneAxis    *plane,
           const Axis     *axis,
           const TrReader *reader)
{
  *plane = (TrPlaneAxis) {
    .title = axis->title, .unit = get_unit (axis, reader), .say_of = say_value, .of = axis,
    .band = { NAN, NAN }, .view = { NAN, NAN },
  };
}

static double
get_value (const TrScatter    *scatter,
           const TrComparable *comparable,
           guint               dough,
           const TrReader     *reader)
{
  double value;

  if (comparable == NULL)
    return scatter->scores != NULL ? scatter->scores[dough] : (double) NAN;

  value = tr_comparable_get (comparable, tr_figures_get_dough (scatter->figures, dough));

  return tr_words_comparable_in_unit (reader, comparable, value);
}

static char *
dup_name (const TrScatter *scatter,
          guint            dough)
{
  g_autofree char *letter = tr_words_letter (dough);
  g_autofree char *name = tr_words_one_line (tr_figures_get_dough (scatter->figures, dough)->dough->name);

  return g_strdup_printf ("%s %s", letter, name);
}

static char *
dup_title (const TrComparable *comparable)
{
  return comparable != NULL ? tr_words_comparable_in_full (comparable) : g_strdup (_("Mean score"));
}

/* The plane's points are those that are shown; who looks for one names the dough. */
static int
find_place (const TrScatter *scatter,
            int              dough)
{
  for (guint i = 0; i < scatter->n_doughs; i++)
    if ((int) scatter->doughs[i] == dough)
      return (int) i;

  return -1;
}

TrPicture *
tr_scatter_picture_new (const TrScatter *scatter,
                        const TrReader  *reader,
                        const TrLook    *look,
                        double           width,
                        double           height)
{
  const TrTrial *trial = scatter->figures->trial;
  g_autofree TrPlanePoint *points = g_new0 (TrPlanePoint, scatter->n_doughs + 1);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  Axis across = { scatter->across, trial->bench, dup_title (scatter->across) }, up = { scatter->up, trial->bench, dup_title (scatter->up) };
  TrPlane plane = { .points = points, .n_points = scatter->n_doughs };
  TrPicture *picture;

  init_axis (&plane.across, &across, reader);
  init_axis (&plane.up, &up, reader);
  for (guint i = 0; i < scatter->n_doughs; i++)
    {
      guint dough = scatter->doughs[i];
      const char *from = tr_trial_get_dough (trial, dough)->from;

      g_ptr_array_add (names, dup_name (scatter, dough));
      points[i] = (TrPlanePoint) {
        .name = names->pdata[i],
        .x = get_value (scatter, scatter->across, dough, reader), .y = get_value (scatter, scatter->up, dough, reader),
        .is_current = (int) dough == scatter->current,
        .from = from != NULL ? find_place (scatter, tr_trial_find_dough (trial, from)) : -1,
      };
    }
  picture = tr_plane_picture_new (&plane, reader, look, width, height);
  g_free (across.title);
  g_free (up.title);

  return picture;
}
