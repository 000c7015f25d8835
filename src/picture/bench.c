/* bench.c: worktop, tray and rollers as they stand in the bench
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Worktop and tray in plan, to one scale; on the worktop the outline of the
 * rolled sheet. Below, what rolls, seen from the front: its width to the same
 * scale, the thickness enlarged, or it could not be seen. The size of the
 * rollers themselves is not known: only their opening is a measure.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../calc/lamination.h"
#include "shapes.h"

/* Drawn in place of a length that is not known. */
#define UNKNOWN_MM 400.0
/* High, of the thickest opening, in lines of text. */
#define OPENING_LINES 2.4
#define ROLLER_LINES 0.9
#define ROLLING_LINES (OPENING_LINES + 2 * ROLLER_LINES + 3.8)
/* Around a plan, for its dimensions and its name; and left, between and right of both. */
#define PLAN_LINES 4.0
#define LEFT_LINES 2.2
#define BETWEEN_LINES 5.2
#define RIGHT_LINES 4.2

typedef struct {
  const TrBench *bench;
  const TrReader *reader;
  const TrLook *look;
  TrPicture *picture;
  double em, width, height;
  TrSize sheet_mm;               /* turned as it lies; NaN: none */
  double reach_mm[2];            /* of worktop and sheet together */
  double scale;                  /* units a mm, in plan */
} Bench;

static double
known_or (double mm,
          double otherwise)
{
  return isfinite (mm) && mm > 0 ? mm : otherwise;
}

static gboolean
is_known (const double mm[2])
{
  return known_or (mm[0], 0) > 0 && known_or (mm[1], 0) > 0;
}

/* How far a sheet reaches over the worktop's edges; the larger. */
static double
find_overhang (const Bench  *self,
               const TrSize *sheet)
{
  return MAX (MAX (sheet->mm[0] - known_or (self->bench->worktop_mm[0], INFINITY),
                   sheet->mm[1] - known_or (self->bench->worktop_mm[1], INFINITY)), 0);
}

/* The way round that the findings judge, unless the other reaches over less. */
static void
find_sheet (Bench                *self,
            const TrDoughFigures *figures)
{
  TrSize straight, turned;
  double over;
  gboolean rotated = FALSE;

  self->sheet_mm = (TrSize) { { NAN, NAN, NAN } };
  if (figures == NULL || !figures->has_sheet || !is_known (figures->sheet.rolled_mm.mm))
    return;
  straight = figures->sheet.rolled_mm;
  turned = (TrSize) { { straight.mm[1], straight.mm[0], straight.mm[2] } };
  tr_bench_check_sheet (self->bench, &straight, &rotated);
  over = find_overhang (self, &turned) - find_overhang (self, &straight);
  self->sheet_mm = over < 0 || (rotated && over <= 0) ? turned : straight;
}

/* What rolls stands under the tray, beside the worktop:
 *
 *   ┌──────────────┐   ┌──────┐
 *   │ worktop      │   │ tray │
 *   │              │   └──────┘
 *   │              │   ════════
 *   └──────────────┘   ════════ rollers
 */
static void
find_scale (Bench *self)
{
  const TrBench *bench = self->bench;
  double beside;

  for (guint i = 0; i < 2; i++)
    self->reach_mm[i] = MAX (known_or (bench->worktop_mm[i], UNKNOWN_MM), known_or (self->sheet_mm.mm[i], 0));
  beside = MAX (known_or (bench->tray_mm[0], UNKNOWN_MM), known_or (bench->roll_width_max_mm, 0));
  self->scale = MIN ((self->width - (LEFT_LINES + BETWEEN_LINES + RIGHT_LINES) * self->em) / (self->reach_mm[0] + beside),
                     (self->height - PLAN_LINES * self->em) / self->reach_mm[1]);
  self->scale = MIN (self->scale, (self->height - (PLAN_LINES + ROLLING_LINES) * self->em) / known_or (bench->tray_mm[1], UNKNOWN_MM));
}

static void
add_size (Bench        *self,
          const TrBox  *box,
          const double  mm[2])
{
  g_autofree char *along = isfinite (mm[0]) ? tr_words_length_number (self->reader, mm[0]) : g_strdup ("?");
  g_autofree char *across = isfinite (mm[1]) ? tr_words_length_number (self->reader, mm[1]) : g_strdup ("?");

  tr_picture_add_dimension_h (self->picture, box->x, box->x + box->width, box->y, box->y - 0.7 * self->em, along);
  tr_picture_add_dimension_v (self->picture, box->y, box->y + box->height, box->x, box->x - 0.7 * self->em, across);
}

static char *
dup_area (Bench        *self,
          const double  mm[2])
{
  return is_known (mm) ? tr_words_area_size (self->reader, mm[0], mm[1]) : g_strdup (_("size not known"));
}

/* A surface in plan with its name under it. */
static void
add_plan (Bench          *self,
          const TrBox    *box,
          const double    mm[2],
          const char     *name,
          const TrColour *fill,
          TrPicturePart   part)
{
  g_autofree char *size = dup_area (self, mm);
  g_autofree char *label = g_strdup_printf ("%s, %s", name, size);
  g_autofree char *shown = tr_text_shorten (self->look, is_known (mm) ? name : label, self->em, 400, MAX (box->width, 8 * self->em));

  tr_picture_add_rect (self->picture, box, is_known (mm) ? fill : NULL, TR_PEN_OUTLINE, &self->look->dim);
  tr_picture_set_hit (self->picture, part, 0, label);
  if (!is_known (mm))
    tr_picture_dash (self->picture);
  add_size (self, box, mm);
  tr_picture_add_text (self->picture, shown, self->em, 400, &self->look->dim, box->x, box->y + box->height + 1.3 * self->em, 0);
  tr_picture_describe (self->picture, "%s.", label);
}

/* ---- the sheet on the worktop ---- */

static void
add_sheet_words (Bench       *self,
                 const TrBox *box,
                 const char  *size,
                 double       overhang)
{
  const TrLook *look = self->look;
  g_autofree char *over_mm = tr_words_length (self->reader, overhang);
  g_autofree char *whole = overhang > 0 ? g_strdup_printf (_("the sheet reaches %s over"), over_mm)
                                        : g_strdup_printf (_("the sheet, %s"), size);
  gboolean fits = tr_text_width (look, whole, self->em, 400) < box->width - (overhang > 0 ? 2.4 : 1) * self->em;
  const char *text = fits ? whole : _("the sheet");
  double sign = overhang > 0 ? 1.4 * self->em : 0, wide = tr_text_width (look, text, self->em, 400) + sign;
  double x = box->x + (box->width - wide) / 2, baseline = box->y + box->height / 2 + 0.35 * self->em;

  if (wide > box->width - self->em || box->height < 1.6 * self->em)
    return;
  if (overhang > 0)
    tr_picture_add_warning (self->picture, x, baseline, self->em);
  tr_picture_add_text (self->picture, text, self->em, 400, overhang > 0 ? &look->warning : &look->dim, x + sign, baseline, 0);
}

static void
add_sheet (Bench       *self,
           const TrBox *top)
{
  const double *mm = self->sheet_mm.mm;
  double overhang = find_overhang (self, &self->sheet_mm);
  TrBox box = { top->x, top->y, mm[0] * self->scale, mm[1] * self->scale };
  g_autofree char *size = NULL, *label = NULL, *over = NULL;

  if (!is_known (mm))
    return;
  /* In the middle where it fits; else from the corner, so that what reaches over is seen. */
  box.x += MAX (0, (top->width - box.width) / 2);
  box.y += MAX (0, (top->height - box.height) / 2);
  size = tr_words_area_size (self->reader, mm[0], mm[1]);
  label = g_strdup_printf (_("The rolled sheet, %s"), size);
  tr_picture_add_rect (self->picture, &box, NULL, TR_PEN_INNER, overhang > 0 ? &self->look->warning : &self->look->dim);
  tr_picture_dash (self->picture);
  tr_picture_set_hit (self->picture, TR_PART_OF_SHEET, 0, label);
  add_sheet_words (self, &box, size, overhang);
  over = tr_words_length (self->reader, overhang);
  tr_picture_describe (self->picture, "%s.", label);
  if (overhang > 0)
    tr_picture_describe (self->picture, _("It reaches %s over the worktop."), over);
}

/* ---- what rolls ---- */

/* The pin over the opening, with its handles: a stand-in, of no measured length. */
static void
add_pin (Bench       *self,
         const TrBox *box)
{
  double em = self->em, y = box->y - ROLLER_LINES * em, middle = y + ROLLER_LINES * em / 2;
  const TrColour *fill = &self->look->worktop, *stroke = &self->look->dim;

  tr_picture_add_rect (self->picture, &(TrBox) { box->x - 1.6 * em, middle - 0.18 * em, 1.6 * em, 0.36 * em }, fill, TR_PEN_INNER, stroke);
  tr_picture_add_rect (self->picture, &(TrBox) { box->x + box->width, middle - 0.18 * em, 1.6 * em, 0.36 * em }, fill, TR_PEN_INNER, stroke);
  tr_picture_add_rect (self->picture, &(TrBox) { box->x, y, box->width, ROLLER_LINES * em }, fill, TR_PEN_OUTLINE, stroke);
}

static void
add_rollers (Bench       *self,
             const TrBox *box)
{
  double em = self->em, beside = 0.5 * em;
  const TrColour *fill = &self->look->worktop, *stroke = &self->look->dim;
  TrBox roller = { box->x - beside, box->y - ROLLER_LINES * em, box->width + 2 * beside, ROLLER_LINES * em };

  tr_picture_add_rect (self->picture, &roller, fill, TR_PEN_OUTLINE, stroke);
  roller.y = box->y + box->height;
  tr_picture_add_rect (self->picture, &roller, fill, TR_PEN_OUTLINE, stroke);
}

static void
add_thicknesses (Bench       *self,
                 const TrBox *box,
                 double       thinnest,
                 double       thickest)
{
  double beside = 1.2 * self->em, bottom = box->y + box->height, thin = bottom - box->height * thinnest / thickest;
  g_autofree char *least = tr_words_length (self->reader, self->bench->roll_thickness_min_mm);
  g_autofree char *most = tr_words_length (self->reader, self->bench->roll_thickness_max_mm);

  tr_picture_add_rect (self->picture, box, NULL, TR_PEN_INNER, &self->look->dim);
  tr_picture_dash (self->picture);
  tr_picture_add_rect (self->picture, &(TrBox) { box->x, thin, box->width, bottom - thin }, &self->look->dough, TR_PEN_INNER, NULL);
  tr_picture_add_dimension_v (self->picture, box->y, bottom, box->x, box->x - beside, most);
  tr_picture_add_dimension_v (self->picture, thin, bottom, box->x + box->width, box->x + box->width + beside, least);
}

static char *
dup_rolling (Bench    *self,
             gboolean  has_rollers)
{
  g_autofree char *least = tr_words_length (self->reader, self->bench->roll_thickness_min_mm);
  g_autofree char *most = tr_words_length (self->reader, self->bench->roll_thickness_max_mm);
  g_autofree char *wide = tr_words_length (self->reader, self->bench->roll_width_max_mm);

  return has_rollers ? g_strdup_printf (_("Rollers %s wide, open from %s to %s"), wide, least, most)
                     : g_strdup_printf (_("A rolling pin, from %s down to %s"), most, least);
}

static void
add_rolling (Bench  *self,
             double  x,
             double  y)
{
  const TrBench *bench = self->bench;
  gboolean has_rollers = known_or (bench->roll_width_max_mm, 0) > 0;
  double thickest = known_or (bench->roll_thickness_max_mm, 40), thinnest = MIN (known_or (bench->roll_thickness_min_mm, 2), thickest);
  double wide = known_or (bench->roll_width_max_mm, known_or (bench->worktop_mm[1], UNKNOWN_MM)) * self->scale;
  double room = self->width - x - RIGHT_LINES * self->em;
  TrBox box = { x, y + ROLLER_LINES * self->em, MIN (wide, room), OPENING_LINES * self->em };
  g_autofree char *label = dup_rolling (self, has_rollers), *width = tr_words_length_number (self->reader, bench->roll_width_max_mm);
  g_autofree char *caption = g_strdup_printf (_("%s, thickness enlarged"), has_rollers ? _("Rollers") : _("Rolling pin"));
  g_autofree char *shown = tr_text_shorten (self->look, caption, self->em, 400, self->width - x);

  if (!(box.width > 2 * self->em))
    return;
  tr_picture_add_rect (self->picture, &(TrBox) { box.x, y, box.width, box.height + 2 * ROLLER_LINES * self->em }, NULL, TR_PEN_NONE, NULL);
  tr_picture_set_hit (self->picture, TR_PART_OF_ROLL, 0, label);
  if (has_rollers)
    add_rollers (self, &box);
  else
    add_pin (self, &box);
  add_thicknesses (self, &box, thinnest, thickest);
  y = box.y + box.height + (has_rollers ? ROLLER_LINES : 0) * self->em;
  if (has_rollers)
    tr_picture_add_dimension_h (self->picture, box.x, box.x + box.width, y, y + 0.7 * self->em, width);
  tr_picture_add_text (self->picture, shown, self->em, 400, &self->look->dim, x, y + (has_rollers ? 3.1 : 1.5) * self->em, 0);
  tr_picture_describe (self->picture, "%s.", label);
}

TrPicture *
tr_bench_picture_new (const TrBench        *bench,
                      const TrDoughFigures *figures,
                      const TrReader       *reader,
                      const TrLook         *look,
                      double                width,
                      double                height)
{
  Bench self = { .bench = bench, .reader = reader, .look = look, .picture = tr_picture_new (look, reader, width, height),
                 .em = look->text_size, .width = width, .height = height };
  TrBox top = { LEFT_LINES * self.em, 2.1 * self.em, 0, 0 }, tray = top;

  g_return_val_if_fail (bench != NULL, NULL);

  find_sheet (&self, figures);
  find_scale (&self);
  if (!(self.scale > 0))
    return self.picture;

  top.width = known_or (bench->worktop_mm[0], UNKNOWN_MM) * self.scale;
  top.height = known_or (bench->worktop_mm[1], UNKNOWN_MM) * self.scale;
  tray.x = top.x + self.reach_mm[0] * self.scale + BETWEEN_LINES * self.em;
  tray.width = known_or (bench->tray_mm[0], UNKNOWN_MM) * self.scale;
  tray.height = known_or (bench->tray_mm[1], UNKNOWN_MM) * self.scale;
  add_plan (&self, &top, bench->worktop_mm, _("Worktop"), &look->worktop, TR_PART_OF_WORKTOP);
  add_sheet (&self, &top);
  add_plan (&self, &tray, bench->tray_mm, _("Tray"), &look->paper, TR_PART_OF_TRAY);
  add_rolling (&self, tray.x, tray.y + tray.height + (PLAN_LINES - 1.6) * self.em);
  tr_picture_tuck_in (self.picture);
  return self.picture;
}
