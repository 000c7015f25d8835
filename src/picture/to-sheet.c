/* to-sheet.c: the last block becomes the sheet
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From left to right, in plan and to one scale: the last block with the cuts
 * that part it, a part as it lies before the rollers or the pin, what it is
 * after the first direction, the sheet, whose longer side lies level. A step that
 * changes nothing is left out. The arrow on each is the way in which it was rolled.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../calc/lamination.h"
#include "shapes.h"

#define MOST_STEPS 4
/* Sizes this near are the same. */
#define HAIR 1e-9
/* What the words of a step need, in ems. */
#define LEAST_WIDTH 7.0
#define GAP 2.4

typedef enum { ROLLED_NOT, ROLLED_ALONG, ROLLED_ACROSS } Rolled;

typedef struct {
  TrSize size;
  Rolled rolled;
  guint parts;                   /* that it is cut into; 1: not cut */
  gboolean is_cut_across;        /* its length is parted */
  char *title;
  TrBox plan;
  double x, width;               /* of its column */
} Step;

typedef struct {
  const TrDoughFigures *figures;
  const TrReader *reader;
  const TrLook *look;
  TrPicture *picture;
  double em, width, height, scale;
  Step steps[MOST_STEPS];
  guint n_steps;
  guint level, upright;          /* the side of a size that lies so */
} ToSheet;

static gboolean
is_near (double a,
         double b)
{
  return fabs (a - b) <= HAIR * fmax (fabs (a), fabs (b));
}

/* Steps */

static Step *
add_step (ToSheet      *self,
          const TrSize *size,
          Rolled        rolled,
          char         *title)
{
  Step *step = &self->steps[self->n_steps++];

  *step = (Step) { .size = *size, .rolled = rolled, .parts = 1, .title = title };

  return step;
}

static char *
dup_part_title (guint    parts,
                gboolean is_turned)
{
  if (parts == 1)
    return g_strdup (_("turned a quarter"));

  return is_turned ? g_strdup (_("one part, turned")) : g_strdup (_("one part"));
}

/* The last block and, where it is parted or turned, a part of it as it lies. */
static void
add_start (ToSheet *self)
{
  const TrToSheet *to = &self->figures->lamination.to_sheet;
  TrSize block = tr_lamination_last_block (&self->figures->lamination);
  guint parts = (guint) MAX (1, round (to->blocks_cut));
  Step *whole = add_step (self, &block, ROLLED_NOT, g_strdup (_("last block")));
  TrSize along = { { block.mm[0] / parts, block.mm[1], block.mm[2] } }, across = { { block.mm[0], block.mm[1] / parts, block.mm[2] } };
  gboolean lies_along = is_near (to->start_mm.mm[0], along.mm[0]) && is_near (to->start_mm.mm[1], along.mm[1]);
  gboolean lies_across = is_near (to->start_mm.mm[0], across.mm[0]) && is_near (to->start_mm.mm[1], across.mm[1]);

  whole->parts = parts;
  whole->is_cut_across = lies_along || (!lies_across && is_near (to->start_mm.mm[0], along.mm[1]));
  if (parts > 1 || !(lies_along || lies_across))
    add_step (self, &to->start_mm, ROLLED_NOT, dup_part_title (parts, !(lies_along || lies_across)));
}

/* One direction after the other; the volume stays. */
static void
add_roll_outs (ToSheet *self)
{
  const TrToSheet *to = &self->figures->lamination.to_sheet;
  const TrSheet *sheet = &self->figures->sheet;
  gboolean wider_first = g_strcmp0 (to->order, "width-first") == 0;
  double first = wider_first ? to->stretch_width : to->stretch_length;
  double second = wider_first ? to->stretch_length : to->stretch_width;
  guint side = wider_first ? 1 : 0;

  if (first > 1 + HAIR && second > 1 + HAIR)
    {
      TrSize between = to->start_mm;

      between.mm[side] *= first;
      between.mm[2] /= first;
      add_step (self, &between, wider_first ? ROLLED_ACROSS : ROLLED_ALONG, wider_first ? g_strdup (_("first wider")) : g_strdup (_("first longer")));
    }
  gboolean is_wider_last = second > 1 + HAIR ? !wider_first : wider_first;

  add_step (self, &sheet->rolled_mm, is_wider_last ? ROLLED_ACROSS : ROLLED_ALONG, g_strdup (_("sheet")));
}

/* Places */

static double
get_widths (ToSheet *self,
            double   scale)
{
  double all = 0;

  for (guint i = 0; i < self->n_steps; i++)
    {
      Step *step = &self->steps[i];

      step->width = MAX (LEAST_WIDTH * self->em, step->size.mm[self->level] * scale + 2.6 * self->em);
      all += step->width;
    }

  return all;
}

static void
lay_out (ToSheet *self)
{
  double width = self->width - 0.4 * self->em;       /* for the last tick */
  double em = MIN (self->em, width / (self->n_steps * (LEAST_WIDTH + GAP) - GAP));
  double gap = GAP * em, top = 4.6 * self->em, across = 0, low = 0, x = 0;
  double room = MAX (em, width - gap * (self->n_steps - 1));

  self->em = em;
  for (guint i = 0; i < self->n_steps; i++)
    across = MAX (across, self->steps[i].size.mm[self->upright]);
  self->scale = MAX (em, self->height - top - 0.6 * em) / across;
  if (get_widths (self, self->scale) > room)
    for (double high = self->scale; high - low > 1e-4 * high; )
      {
        self->scale = (low + high) / 2;
        *(get_widths (self, self->scale) > room ? &high : &low) = self->scale;
      }
  get_widths (self, self->scale);
  for (guint i = 0; i < self->n_steps; i++)
    {
      Step *step = &self->steps[i];

      step->x = x;
      step->plan = (TrBox) { x + 2.6 * em, top + (across - step->size.mm[self->upright]) / 2 * self->scale,
                             step->size.mm[self->level] * self->scale, step->size.mm[self->upright] * self->scale };
      x += step->width + gap;
    }
  tr_picture_set_height (self->picture, MIN (self->height, top + across * self->scale + 0.6 * em));
}

/* Drawing */

static void
add_cuts (ToSheet    *self,
          const Step *step)
{
  const TrBox *box = &step->plan;

  for (guint i = 1; i < step->parts; i++)
    {
      double share = (double) i / step->parts, x = box->x + box->width * share, y = box->y + box->height * share;

      if (step->is_cut_across == (self->level == 0))
        tr_picture_add_line (self->picture, x, box->y, x, box->y + box->height, TR_PEN_INNER, &self->look->line);
      else
        tr_picture_add_line (self->picture, box->x, y, box->x + box->width, y, TR_PEN_INNER, &self->look->line);
      tr_picture_dash (self->picture);
    }
}

static void
add_way (ToSheet    *self,
         const Step *step)
{
  const TrBox *box = &step->plan;
  double x = box->x + box->width / 2, y = box->y + box->height / 2;

  if (step->rolled == ROLLED_NOT)
    return;
  if ((step->rolled == ROLLED_ALONG) == (self->level == 0))
    tr_picture_add_arrow (self->picture, x - box->width * 0.35, y, x + box->width * 0.35, y, TRUE, &self->look->line);
  else
    tr_picture_add_arrow (self->picture, x, y - box->height * 0.35, x, y + box->height * 0.35, TRUE, &self->look->line);
}

static void
draw_step (ToSheet *self,
           guint    index)
{
  const Step *step = &self->steps[index];
  const TrLook *look = self->look;
  double em = self->em, middle = self->steps[0].plan.y + self->steps[0].plan.height / 2;
  double room = MIN (step->width + 1.6 * em, self->width - step->x);
  g_autofree char *size = tr_words_size_bare (self->reader, &step->size);
  g_autofree char *whole = tr_words_size (self->reader, &step->size);
  g_autofree char *label = g_strdup_printf ("%s %s", step->title, whole);
  g_autofree char *level = tr_words_length_number (self->reader, step->size.mm[self->level]);
  g_autofree char *upright = tr_words_length_number (self->reader, step->size.mm[self->upright]);

  tr_picture_add_fitting_text (self->picture, step->title, em, 400, &look->dim, step->x, em, 0, room);
  tr_picture_add_fitting_text (self->picture, size, 1.1 * em, 700, &look->text, step->x, 2.4 * em, 0, room);
  tr_picture_add_rect (self->picture, &step->plan, tr_look_get_outside (look, self->figures->dough), TR_PEN_OUTLINE, &look->line);
  tr_picture_set_hit (self->picture, TR_PART_OF_SHEET, (int) index, label);
  tr_picture_add_dimension_h (self->picture, step->plan.x, step->plan.x + step->plan.width, step->plan.y, step->plan.y - 0.5 * em, level);
  tr_picture_add_dimension_v (self->picture, step->plan.y, step->plan.y + step->plan.height, step->plan.x, step->plan.x - 0.5 * em, upright);
  add_cuts (self, step);
  add_way (self, step);
  if (index > 0)
    tr_picture_add_arrow (self->picture, step->x - 2 * em, middle, step->x - 0.5 * em, middle, FALSE, &look->dim);
}

static void
describe (ToSheet *self)
{
  for (guint i = 0; i < self->n_steps; i++)
    {
      const Step *step = &self->steps[i];
      g_autofree char *size = tr_words_size (self->reader, &step->size);

      if (step->parts > 1)
        tr_picture_describe (self->picture, step->is_cut_across ? _("%s, %s, its length cut into %u.") : _("%s, %s, its width cut into %u."),
                             step->title, size, step->parts);
      else
        tr_picture_describe (self->picture, _("%s, %s."), step->title, size);
    }
}

static gboolean
is_drawable (const ToSheet *self)
{
  for (guint i = 0; i < self->n_steps; i++)
    for (guint side = 0; side < 3; side++)
      if (!isfinite (self->steps[i].size.mm[side]) || !(self->steps[i].size.mm[side] > 0))
        return FALSE;

  return self->n_steps > 0;
}

static void
add_nothing (ToSheet *self)
{
  const char *text = _("There is no sheet yet.");

  tr_picture_add_fitting_text (self->picture, text, self->em, 400, &self->look->dim, self->width / 2, self->height / 2, 0.5, self->width);
  tr_picture_describe (self->picture, "%s", text);
}

TrPicture *
tr_to_sheet_picture_new (const TrDoughFigures *figures,
                         const TrReader       *reader,
                         const TrLook         *look,
                         double                width,
                         double                height)
{
  ToSheet self = { .figures = figures, .reader = reader, .look = look, .picture = tr_picture_new (look, reader, width, height),
                   .em = look->text_size, .width = width, .height = height };

  if (figures->has_lamination && figures->lamination.has_to_sheet && figures->has_sheet)
    {
      self.level = figures->sheet.rolled_mm.mm[1] > figures->sheet.rolled_mm.mm[0] ? 1 : 0;
      self.upright = 1 - self.level;
      add_start (&self);
      add_roll_outs (&self);
    }
  if (is_drawable (&self))
    {
      lay_out (&self);
      for (guint i = 0; i < self.n_steps; i++)
        draw_step (&self, i);
      tr_picture_tuck_in (self.picture);
      describe (&self);
    }
  else
    {
      add_nothing (&self);
    }
  for (guint i = 0; i < self.n_steps; i++)
    g_free (self.steps[i].title);

  return self.picture;
}
