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

/* Shown always; wider where something lies outside. */
#define LEAST_C 0
#define MOST_C 40
/* Under the block: what lies over one another, the window, the scale, the dough. */
#define UNDER_BLOCK_EM 8.9
#define OVER_BLOCK_EM 2.2
#define LEAST_BLOCK_EM 0.6

typedef struct {
  const TrDoughFigures *figures;
  const TrLockInFigures *sizes;
  const TrLockIn *lock_in;
  const TrReader *reader;
  const TrLook *look;
  TrPicture *picture;
  double em, width, height;
  int least_c, most_c;           /* of the scale */
  gboolean has_scale;            /* there is room for it */
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

/* How many of them, what lies over one another, and the rim. */
static char *
dup_caption (const Section *self)
{
  g_autofree char *layers = dup_layers (self);
  GString *text = g_string_new (NULL);

  if (self->lock_in->blocks > 1)
    g_string_append_printf (text, _("%d × this block"), self->lock_in->blocks);
  g_string_append_printf (text, "%s%s", text->len > 0 ? " · " : "", layers);
  if (self->lock_in->rim_mm > 0 && self->lock_in->style != TR_STYLE_GATE)
    {
      g_autofree char *rim = tr_words_length (self->reader, self->lock_in->rim_mm);

      g_string_append (text, " · ");
      g_string_append_printf (text, _("rim %s"), rim);
    }

  return g_string_free (text, FALSE);
}

/* Which third goes over first, left of what it becomes: the bare one in the middle, then
 * the one with fat on top. */
static void
add_order (Section     *self,
           const Inlay *top,
           const Inlay *bottom)
{
  double em = self->em, radius = 0.6 * em, x = self->block.x - 1.5 * em;
  double second = self->block.y + self->block.height * top->bottom / 2;
  double first = self->block.y + self->block.height * (top->bottom + bottom->top) / 2;
  double apart = MAX (0, 2.2 * radius - (first - second)) / 2;
  const double at[] = { first, second }, shown[] = { first + apart, second - apart };

  for (int i = 0; i < 2; i++)
    {
      g_autofree char *number = g_strdup_printf ("%d", i + 1);

      tr_picture_add_line (self->picture, x + radius, shown[i], self->block.x, at[i], TR_PEN_INNER, &self->look->text);
      tr_picture_add_circle (self->picture, x, shown[i], radius, &self->look->line, TR_PEN_INNER, &self->look->text);
      tr_picture_set_hit (self->picture, TR_PART_OF_LOCK_IN, 20 + i, i == 0 ? _("Third without fat, over first") : _("Third with fat, over second"));
      tr_picture_add_text (self->picture, number, 0.85 * em, 700, &self->look->fat, x, shown[i] + 0.3 * em, 0.5);
    }
}

static void
add_section (Section *self)
{
  const TrSize *block = &self->sizes->block_mm;
  gboolean is_letter = self->lock_in->style == TR_STYLE_LETTER;
  double em = self->em, left = (is_letter ? 2.8 : 0.8) * em, right = 5 * em;
  double under = self->has_scale ? UNDER_BLOCK_EM : 1.8;
  double high = CLAMP (self->height - (OVER_BLOCK_EM + under) * em, 1, 7 * em);
  double scale = MIN (MAX (self->width - left - right, em) / block->mm[0], high / block->mm[2]);
  Inlay inlays[2];
  guint n = find_inlays (self, inlays);
  g_autofree char *thickness = tr_words_length_number (self->reader, block->mm[2]);
  g_autofree char *length = tr_words_length_number (self->reader, block->mm[0]);
  g_autofree char *caption = dup_caption (self);

  self->block = (TrBox) { left, OVER_BLOCK_EM * em, block->mm[0] * scale, block->mm[2] * scale };
  tr_picture_add_rect (self->picture, &self->block, tr_look_get_outside (self->look, self->figures->dough), TR_PEN_OUTLINE, NULL);
  tr_picture_set_hit (self->picture, TR_PART_OF_LOCK_IN, 3, _("Closed block, cut through"));
  for (guint i = 0; i < n; i++)
    add_inlay (self, &inlays[i], i);
  tr_picture_add_dimension_h (self->picture, self->block.x, self->block.x + self->block.width, self->block.y, self->block.y - 0.8 * em, length);
  tr_picture_add_dimension_v (self->picture, self->block.y, self->block.y + self->block.height, self->block.x + self->block.width,
                              self->block.x + self->block.width + 0.8 * em, thickness);
  if (is_letter)
    add_order (self, &inlays[0], &inlays[1]);
  add_words (self, caption, is_letter ? 0.8 * em : left, self->block.y + self->block.height + 1.5 * em, 0, 400);
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

/* As it comes to the fat: after the written chill, else as it was mixed. */
static double
find_dough_c (const Section *self,
              double        *core_c)
{
  const TrRestFigures *chill = tr_rests_find (self->figures, 0);

  *core_c = NAN;
  if (chill == NULL || !isfinite (chill->mean_c_after_written))
    return self->figures->dough->method->dough_c;
  *core_c = chill->core_c_after_written;

  return chill->mean_c_after_written;
}

/* Whole tens, as far as what has to be shown reaches. */
static void
find_scale (Section      *self,
            const Window *window)
{
  double core, dough = find_dough_c (self, &core);
  const double shown[] = { dough, window->low, window->soft, window->liquid };

  self->least_c = LEAST_C;
  self->most_c = MOST_C;
  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    if (isfinite (shown[i]))
      {
        self->least_c = MIN (self->least_c, (int) floor (shown[i] / 10) * 10);
        self->most_c = MAX (self->most_c, (int) ceil (shown[i] / 10) * 10);
      }
}

static double
x_of (const Section *self,
      double         celsius)
{
  double left = 1.6 * self->em, right = 1.6 * self->em;

  return left + MAX (self->width - left - right, self->em) * CLAMP ((celsius - self->least_c) / (self->most_c - self->least_c), 0, 1);
}

static void
add_scale (Section *self,
           double   y)
{
  double em = self->em;
  int step = self->most_c - self->least_c > 60 ? 10 : 5;

  tr_picture_add_line (self->picture, x_of (self, self->least_c), y, x_of (self, self->most_c), y, TR_PEN_OUTLINE, &self->look->text);
  for (int c = self->least_c; c <= self->most_c; c += step)
    {
      gboolean is_named = c % (2 * step) == 0;
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
  if (isfinite (window->liquid))
    {
      tr_picture_add_line (self->picture, x_of (self, window->liquid), y - 1.1 * em, x_of (self, window->liquid), y, TR_PEN_OUTLINE, &self->look->text);
      gboolean is_last = self->width - x_of (self, window->liquid) < 4 * em;

      tr_picture_add_text (self->picture, _("melts"), 0.85 * em, 400, &self->look->dim,
                           x_of (self, window->liquid) + (is_last ? -0.3 : 0.3) * em, y - 0.4 * em, is_last ? 1 : 0);
    }
}

static char *
dup_dough (const Section *self,
           double         celsius,
           double         core_c)
{
  g_autofree char *value = tr_words_temperature (self->reader, round (celsius * 10) / 10), *core = NULL;

  if (!isfinite (core_c))
    return g_strdup_printf (_("dough %s, as mixed"), value);
  core = tr_words_temperature (self->reader, round (core_c * 10) / 10);

  return g_strdup_printf (_("dough %s after the chill, %s in the middle"), value, core);
}

static void
add_dough (Section *self,
           double   y)
{
  double core, celsius = find_dough_c (self, &core);
  double em = self->em, x = x_of (self, celsius), half = 0.5 * em;
  double corners[] = { x, y + 0.1 * em, x + half, y + 1.0 * em, x - half, y + 1.0 * em };
  g_autofree char *text = NULL;

  if (!isfinite (celsius))
    return;
  text = dup_dough (self, celsius, core);
  tr_picture_describe (self->picture, _("The %s."), text);
  if (!self->has_scale)
    return;
  tr_picture_add_polygon (self->picture, corners, 3, &self->look->dough, TR_PEN_OUTLINE, NULL);
  tr_picture_set_hit (self->picture, TR_PART_OF_LOCK_IN, 30, text);
  add_words (self, text, x, y + 3.4 * em, x > self->width / 2 ? 1 : 0, 700);
}

static void
add_temperatures (Section      *self,
                  const Window *window,
                  double        y)
{
  if (self->has_scale)
    add_scale (self, y);
  if (window->has_fat && isfinite (window->low) && isfinite (window->soft))
    {
      g_autofree char *low = tr_words_temperature (self->reader, window->low), *soft = tr_words_temperature (self->reader, window->soft);

      if (self->has_scale)
        add_fat_window (self, window, y);
      tr_picture_describe (self->picture, _("The fat bends from %s and is soft at %s."), low, soft);
    }
  else
    {
      const char *text = _("At which temperatures the fat bends is not known.");

      if (self->has_scale)
        add_words (self, text, x_of (self, self->least_c), y - 0.6 * self->em, 0, 400);
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
                   tr_picture_new (look, reader, width, height), look->text_size, width, height, LEAST_C, MOST_C,
                   height >= (OVER_BLOCK_EM + LEAST_BLOCK_EM + UNDER_BLOCK_EM) * look->text_size, { 0, 0, 0, 0 } };

  if (!figures->has_lamination || !is_known (&self.sizes->block_mm) || !is_known (&self.sizes->fat_mm) || !is_known (&self.sizes->dough_mm))
    {
      tr_picture_describe (self.picture, "%s", _("The sizes of the lock-in are not known."));
      return self.picture;
    }

  Window window = find_window (&figures->formula);

  find_scale (&self, &window);
  add_section (&self);

  g_autofree char *layers = dup_layers (&self), *block = tr_words_size (reader, &self.sizes->block_mm);

  tr_picture_describe (self.picture, _("The closed block of %s cut through: %s."), block, layers);
  if (self.lock_in->blocks > 1)
    tr_picture_describe (self.picture, _("%d blocks like this."), self.lock_in->blocks);
  if (self.lock_in->style == TR_STYLE_LETTER)
    tr_picture_describe (self.picture, "%s", _("The third without fat goes over first, then the one with fat on top."));
  add_temperatures (&self, &window, height - 3.9 * self.em);
  tr_picture_tuck_in (self.picture);

  return self.picture;
}
