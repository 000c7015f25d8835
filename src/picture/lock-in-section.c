/* lock-in-section.c: the closed block cut through, and how warm fat and dough are
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The cut goes along the rolling direction, through the middle; length and
 * thickness are to one scale. Where there is no fat, the rim is dough:
 *
 *   half              gate           envelope       letter           inverse
 *   ┌──────────┬─┐    ┌──────────┐   ┌─┬──────┬─┐   ┌────────────┐   ┌────────────┐
 *   │▒▒▒▒▒▒▒▒▒▒│ │    │▒▒▒▒▒▒▒▒▒▒│   │ │▒▒▒▒▒▒│ │   │▒▒▒▒▒▒▒▒▒▒  │   │██████████  │ fat
 *   └──────────┴─┘    └──────────┘   └─┴──────┴─┘   │▒▒▒▒▒▒▒▒▒▒▒▒│   └────────────┘
 *                                                   └────────────┘
 *
 * Below, on one scale of degrees: where the fat bends, where it is soft, where it
 * melts, and the dough as it comes to it. Whether both are equally stiff is not
 * said, since nobody knows it from a temperature.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../calc/rests.h"
#include "shapes.h"

#define LEAST_C 0.0
#define MOST_C 40.0

typedef struct {
  const TrDoughFigures *figures;
  const TrLockInFigures *sizes;
  const TrLockIn *lock_in;
  const TrReader *reader;
  const TrLook *look;
  TrPicture *picture;
  double em, width;
  TrBox block;
} Section;

static gboolean
is_inverse (const Section *self)
{
  return self->lock_in->style == TR_STYLE_INVERSE;
}

/* The cut *******************************************************************/

/* From the fold on, in mm along the block, what lies inside; from the top in shares of the thickness. */
typedef struct { double from_mm, to_mm, top, bottom; } Inlay;

static guint
find_inlays (const Section *self,
             Inlay          inlays[2])
{
  double length = self->sizes->block_mm.mm[0], rim = self->lock_in->rim_mm;
  double fat = self->sizes->fat_mm.mm[2], dough = self->sizes->dough_mm.mm[2];
  double all = self->lock_in->style == TR_STYLE_LETTER ? 3 * dough + 2 * fat : 2 * dough + fat;

  switch (self->lock_in->style)
    {
    case TR_STYLE_LETTER:
      inlays[0] = (Inlay) { 0, length - rim, dough / all, (dough + fat) / all };
      inlays[1] = (Inlay) { 0, length, (2 * dough + fat) / all, (2 * dough + 2 * fat) / all };
      return 2;
    case TR_STYLE_GATE:
      inlays[0] = (Inlay) { 0, length, dough / all, (dough + fat) / all };
      return 1;
    case TR_STYLE_ENVELOPE:
      inlays[0] = (Inlay) { rim, length - rim, dough / all, (dough + fat) / all };
      return 1;
    case TR_STYLE_INVERSE:
      all = 2 * fat + dough;
      inlays[0] = (Inlay) { 0, length - rim, fat / all, (fat + dough) / all };
      return 1;
    case TR_STYLE_HALF:
    case TR_N_STYLES:
    default:
      inlays[0] = (Inlay) { 0, length - rim, dough / all, (dough + fat) / all };
      return 1;
    }
}

static void
add_inlay (Section     *self,
           const Inlay *inlay,
           guint        index)
{
  double scale = self->block.width / self->sizes->block_mm.mm[0];
  TrBox box = { self->block.x + inlay->from_mm * scale, self->block.y + inlay->top * self->block.height,
                MAX (inlay->to_mm - inlay->from_mm, 0) * scale, (inlay->bottom - inlay->top) * self->block.height };

  tr_picture_add_rect (self->picture, &box, is_inverse (self) ? &self->look->dough : &self->look->fat, TR_PEN_INNER, &self->look->line);
  tr_picture_set_hit (self->picture, TR_PART_OF_LOCK_IN, 10 + (int) index, is_inverse (self) ? _("Dough block") : _("Fat"));
}

/* Made to fit from there to the edge it runs to. */
static void
add_words (Section    *self,
           const char *text,
           double      x,
           double      baseline,
           double      align,
           int         weight)
{
  double room = align > 0.5 ? x : self->width - x;

  tr_picture_add_fitting_text (self->picture, text, self->em, weight, &self->look->text, x, baseline, align, room);
}

/* What lies over one another, as it is measured before the block is closed. */
static char *
dup_layers (const Section *self)
{
  g_autofree char *fat = tr_words_length_number (self->reader, self->sizes->fat_mm.mm[2]);
  g_autofree char *dough = tr_words_length_number (self->reader, self->sizes->dough_mm.mm[2]);
  const char *unit = tr_words_length_unit (self->reader);

  if (is_inverse (self))
    return g_strdup_printf (_("fat %s + dough %s + fat %s %s"), fat, dough, fat, unit);
  if (self->lock_in->style == TR_STYLE_LETTER)
    return g_strdup_printf (_("dough %s + fat %s + dough %s + fat %s + dough %s %s"), dough, fat, dough, fat, dough, unit);

  return g_strdup_printf (_("dough %s + fat %s + dough %s %s"), dough, fat, dough, unit);
}

static void
add_section (Section *self,
             double   top)
{
  const TrSize *block = &self->sizes->block_mm;
  double em = self->em, left = 0.8 * em, right = 5 * em;
  double scale = (self->width - left - right) / block->mm[0];
  Inlay inlays[2];
  guint n = find_inlays (self, inlays);
  g_autofree char *thickness = tr_words_length_number (self->reader, block->mm[2]);
  g_autofree char *length = tr_words_length_number (self->reader, block->mm[0]);
  g_autofree char *layers = dup_layers (self);

  /* Never so high that nothing else has room. */
  scale = MIN (scale, 7 * em / block->mm[2]);
  self->block = (TrBox) { left, top + 2.2 * em, block->mm[0] * scale, block->mm[2] * scale };
  tr_picture_add_rect (self->picture, &self->block, tr_look_get_outside (self->look, self->figures->dough), TR_PEN_OUTLINE, NULL);
  tr_picture_set_hit (self->picture, TR_PART_OF_LOCK_IN, 3, _("Closed block, cut through"));
  for (guint i = 0; i < n; i++)
    add_inlay (self, &inlays[i], i);
  tr_picture_add_dimension_h (self->picture, self->block.x, self->block.x + self->block.width, self->block.y, self->block.y - 0.8 * em, length);
  tr_picture_add_dimension_v (self->picture, self->block.y, self->block.y + self->block.height, self->block.x + self->block.width,
                              self->block.x + self->block.width + 0.8 * em, thickness);
  if (self->lock_in->rim_mm > 0 && self->lock_in->style != TR_STYLE_GATE)
    {
      g_autofree char *rim = tr_words_length (self->reader, self->lock_in->rim_mm);
      g_autofree char *text = g_strdup_printf (_("%s · rim %s"), layers, rim);

      add_words (self, text, left, self->block.y + self->block.height + 1.4 * em, 0, 400);
    }
  else
    add_words (self, layers, left, self->block.y + self->block.height + 1.4 * em, 0, 400);
}

/* The temperatures **********************************************************/

/* Of the roll-in fats together: what the one that bears least bears. NaN: not known. */
typedef struct { double low, soft, liquid; gboolean has_fat; } Window;

static double
and (double known,
     double one,
     double (*which) (double, double))
{
  return isnan (known) || isnan (one) ? NAN : which (known, one);
}

static Window
find_window (const TrFormula *formula)
{
  Window window = { -INFINITY, INFINITY, INFINITY, FALSE };

  for (guint i = 0; i < formula->lines->len; i++)
    {
      const TrLineFigures *line = &g_array_index (formula->lines, TrLineFigures, i);

      if (!line->known || line->line->stage != TR_STAGE_ROLL_IN || line->ingredient.role != TR_ROLE_FAT)
        continue;
      window.has_fat = TRUE;
      window.low = and (window.low, line->ingredient.plastic_low_c, fmax);
      window.soft = and (window.soft, line->ingredient.soft_c, fmin);
      window.liquid = and (window.liquid, line->ingredient.liquid_c, fmin);
    }

  return window;
}

static double
x_of (const Section *self,
      double         celsius)
{
  double left = 0.8 * self->em, right = 0.8 * self->em;

  return left + (self->width - left - right) * CLAMP ((celsius - LEAST_C) / (MOST_C - LEAST_C), 0, 1);
}

static void
add_scale (Section *self,
           double   y)
{
  double em = self->em;

  tr_picture_add_line (self->picture, x_of (self, LEAST_C), y, x_of (self, MOST_C), y, TR_PEN_OUTLINE, &self->look->text);
  for (double c = LEAST_C; c <= MOST_C; c += 5)
    {
      gboolean is_named = fmod (c, 10) < 1;
      g_autofree char *text = tr_words_temperature (self->reader, c);

      tr_picture_add_line (self->picture, x_of (self, c), y, x_of (self, c), y + (is_named ? 0.9 : 0.4) * em, TR_PEN_INNER, &self->look->text);
      if (is_named)
        tr_picture_add_text (self->picture, text, 0.85 * em, 400, &self->look->dim, x_of (self, c), y + 2.0 * em, 0.5);
    }
}

static void
add_fat_window (Section      *self,
                const Window *window,
                double        y)
{
  double em = self->em;
  g_autofree char *low = tr_words_temperature (self->reader, window->low), *soft = tr_words_temperature (self->reader, window->soft);
  g_autofree char *text = g_strdup_printf (_("%s bends from %s, soft at %s"), tr_words_fat (&self->figures->formula), low, soft);
  TrBox box = { x_of (self, window->low), y - 1.1 * em, x_of (self, window->soft) - x_of (self, window->low), 1.1 * em };

  tr_picture_add_rect (self->picture, &box, &self->look->fat, TR_PEN_OUTLINE, NULL);
  add_words (self, text, box.x, y - 1.7 * em, 0, 400);
  if (window->liquid <= MOST_C)
    {
      tr_picture_add_line (self->picture, x_of (self, window->liquid), y - 1.1 * em, x_of (self, window->liquid), y, TR_PEN_OUTLINE, &self->look->text);
      tr_picture_add_text (self->picture, _("melts"), 0.85 * em, 400, &self->look->dim, x_of (self, window->liquid) + 0.3 * em, y - 0.4 * em, 0);
    }
}

/* As it comes to the fat: after the written chill, else as it was mixed. */
static void
add_dough (Section *self,
           double   y)
{
  const TrRestFigures *chill = tr_rests_find (self->figures, 0);
  gboolean is_chilled = chill != NULL && isfinite (chill->mean_c_after_written);
  double celsius = is_chilled ? chill->mean_c_after_written : self->figures->dough->method->dough_c;
  double em = self->em, x = x_of (self, celsius), half = 0.5 * em;
  double corners[] = { x, y + 0.1 * em, x + half, y + 1.0 * em, x - half, y + 1.0 * em };
  g_autofree char *value = tr_words_temperature (self->reader, round (celsius * 10) / 10), *text = NULL;

  if (is_chilled)
    {
      g_autofree char *core = tr_words_temperature (self->reader, round (chill->core_c_after_written * 10) / 10);

      text = g_strdup_printf (_("dough %s after the chill, %s in the middle"), value, core);
    }
  else
    text = g_strdup_printf (_("dough %s, as mixed"), value);

  tr_picture_add_polygon (self->picture, corners, 3, &self->look->dough, TR_PEN_OUTLINE, NULL);
  add_words (self, text, x, y + 3.4 * em, celsius > 20 ? 1 : 0, 700);
  tr_picture_describe (self->picture, _("The %s."), text);
}

static void
add_temperatures (Section *self,
                  double   y)
{
  Window window = find_window (&self->figures->formula);

  add_scale (self, y);
  if (window.has_fat && isfinite (window.low) && isfinite (window.soft))
    {
      g_autofree char *low = tr_words_temperature (self->reader, window.low), *soft = tr_words_temperature (self->reader, window.soft);

      add_fat_window (self, &window, y);
      tr_picture_describe (self->picture, _("The fat bends from %s and is soft at %s."), low, soft);
    }
  else
    {
      const char *text = _("At which temperatures the fat bends is not known.");

      add_words (self, text, x_of (self, LEAST_C), y - 0.6 * self->em, 0, 400);
      tr_picture_describe (self->picture, "%s", text);
    }
  add_dough (self, y);
}

static gboolean
is_known (const TrSize *size)
{
  return size->mm[0] > 0 && size->mm[1] > 0 && size->mm[2] > 0 && isfinite (size->mm[0]) && isfinite (size->mm[2]);
}

TrPicture *
tr_lock_in_section_picture_new (const TrDoughFigures *figures,
                                const TrReader       *reader,
                                const TrLook         *look,
                                double                width,
                                double                height)
{
  Section self = { figures, &figures->lamination.lock_in, figures->dough->lock_in, reader, look,
                   tr_picture_new (look, reader, width, height), look->text_size, width };

  if (!figures->has_lamination || !is_known (&self.sizes->block_mm) || !is_known (&self.sizes->fat_mm) || !is_known (&self.sizes->dough_mm))
    {
      tr_picture_describe (self.picture, "%s", _("The sizes of the lock-in are not known."));
      return self.picture;
    }

  add_section (&self, 0);

  g_autofree char *layers = dup_layers (&self), *block = tr_words_size (reader, &self.sizes->block_mm);

  tr_picture_describe (self.picture, _("The closed block of %s cut through: %s."), block, layers);
  add_temperatures (&self, MAX (height - 3.9 * self.em, self.block.y + self.block.height + 5 * self.em));
  tr_picture_tuck_in (self.picture);

  return self.picture;
}
