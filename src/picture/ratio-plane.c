/* ratio-plane.c: all doughs of a trial by two of their ratios
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../calc/balance.h"
#include "plane.h"

/* What an axis shows at least, of the current dough's value: room to drag. */
#define LEAST_SPAN 0.5

static const char *
get_usual_words (TrKind kind)
{
  switch (kind)
    {
    case TR_KIND_CROISSANT:
      return _("usual for croissant dough");
    case TR_KIND_DANISH:
      return _("usual for Danish dough");
    case TR_KIND_PUFF:
      return _("usual for puff pastry");
    case TR_KIND_OTHER:
    case TR_N_KINDS:
    default:
      return _("usual for this kind");
    }
}


static void
init_axis (TrPlaneAxis          *axis,
           TrRatio               ratio,
           const TrDoughFigures *current,
           const TrRange        *view)
{
  TrBand band;
  double value = current != NULL ? tr_ratio_get (current, ratio) : NAN;

  *axis = (TrPlaneAxis) {
    .title = tr_words_ratio (ratio), .unit = "%", .say = tr_words_percent, .band = { NAN, NAN }, .view = { NAN, NAN },
  };
  if (current != NULL && tr_ratio_get_band (current, ratio, &band))
    axis->band = (TrRange) { band.low, band.high };
  if (view != NULL)
    axis->view = *view;
  if (isfinite (value))
    axis->least_span = LEAST_SPAN * fabs (value);
}

static void
init_point (TrPlanePoint    *point,
            const TrFigures *figures,
            guint            index,
            TrRatio          across,
            TrRatio          up,
            int              current)
{
  const TrDoughFigures *dough = tr_figures_get_dough (figures, index);

  point->name = dough->dough->name;
  point->x = tr_ratio_get (dough, across);
  point->y = tr_ratio_get (dough, up);
  point->is_current = (int) index == current;
  point->from = dough->dough->from != NULL ? tr_trial_find_dough (figures->trial, dough->dough->from) : -1;
}

TrPicture *
tr_ratio_plane_picture_new (const TrFigures *figures,
                            TrRatio          across,
                            TrRatio          up,
                            int              current,
                            const TrRange    view[2],
                            const TrReader  *reader,
                            const TrLook    *look,
                            double           width,
                            double           height)
{
  const TrDoughFigures *dough = current >= 0 ? tr_figures_get_dough (figures, (guint) current) : NULL;
  g_autofree TrPlanePoint *points = g_new0 (TrPlanePoint, figures->doughs->len + 1);
  TrPlane plane = { .points = points, .n_points = figures->doughs->len, .current_word = _("the current dough") };

  init_axis (&plane.across, across, dough, view != NULL ? &view[0] : NULL);
  init_axis (&plane.up, up, dough, view != NULL ? &view[1] : NULL);
  if (dough != NULL)
    plane.band_name = get_usual_words (dough->dough->kind);
  for (guint i = 0; i < plane.n_points; i++)
    init_point (&points[i], figures, i, across, up, current);
  return tr_plane_picture_new (&plane, reader, look, width, height);
}
