/* lock-in.c: fat on dough in plan, and the closed block
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Open on the left with its fold lines, the way the flaps go and their
 * order, closed on the right, both to one scale:
 *
 *   half, inverse     gate              letter            envelope
 *   ┌─────┬─────┐     ┌──┬─────┬──┐     ┌────┬────┬────┐      ◇ fat on
 *   │▒▒▒▒▒│  ←  │     │ →│▒▒▒▒▒│← │     │▒▒▒▒│▒▒▒▒│ ←1 │    a square of
 *   └─────┴─────┘     └──┴─────┴──┘     └──2→┴────┴────┘     dough, ↘↙↗↖
 *
 * In an inverse lock-in the sheet is fat and the block inside is dough.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "shapes.h"

typedef struct {
  const TrDoughFigures *figures;
  const TrLockInFigures *sizes;
  TrStyle style;
  const TrReader *reader;
  const TrLook *look;
  TrPicture *picture;
  double em, scale;
  TrBox open, closed;            /* the outer sheet, the block */
  TrBox inner;                   /* what lies on it; for an envelope the diamond's box */
  TrSize outer_mm, inner_mm;
} LockIn;

static gboolean
is_inverse (const LockIn *lock_in)
{
  return lock_in->style == TR_STYLE_INVERSE;
}

static double
rim_of (const LockIn *lock_in)
{
  return lock_in->figures->dough->lock_in->rim_mm;
}

/* Where what lies inside starts along the outer sheet, in mm. */
static double
inner_start_mm (const LockIn *lock_in)
{
  if (lock_in->style == TR_STYLE_GATE)
    return (lock_in->outer_mm.mm[0] - lock_in->inner_mm.mm[0]) / 2;
  return rim_of (lock_in);
}

static void
plan (LockIn *lock_in,
      double  width,
      double  height)
{
  double em = lock_in->em;
  double top = 2.2 * em, bottom = 5.6 * em, left = 2.4 * em, between = 6.2 * em, right = 2.6 * em;
  const double *outer = lock_in->outer_mm.mm, *block = lock_in->sizes->block_mm.mm;
  double wide = MAX (1, width - left - between - right), high = MAX (1, height - top - bottom);
  double used, across = MAX (outer[1], block[1]);

  lock_in->scale = MIN (wide / (outer[0] + block[0]), high / across);
  used = left + between + right + (outer[0] + block[0]) * lock_in->scale;
  left += MIN (2 * em, (width - used) / 2);
  lock_in->open = (TrBox) { left, top + (across - outer[1]) * lock_in->scale / 2,
                            outer[0] * lock_in->scale, outer[1] * lock_in->scale };
  lock_in->closed = (TrBox) { left + lock_in->open.width + between, top + (across - block[1]) * lock_in->scale / 2,
                              block[0] * lock_in->scale, block[1] * lock_in->scale };
  lock_in->inner.width = lock_in->inner_mm.mm[0] * lock_in->scale;
  lock_in->inner.height = lock_in->inner_mm.mm[1] * lock_in->scale;
  lock_in->inner.x = lock_in->open.x + inner_start_mm (lock_in) * lock_in->scale;
  lock_in->inner.y = lock_in->open.y + (lock_in->open.height - lock_in->inner.height) / 2;
}

static void
add_outer (LockIn *lock_in)
{
  const TrLook *look = lock_in->look;

  tr_picture_add_rect (lock_in->picture, &lock_in->open, tr_look_get_outside (look, lock_in->figures->dough),
                       TR_PEN_OUTLINE, &look->line);
  tr_picture_set_hit (lock_in->picture, TR_PART_OF_LOCK_IN, 0, is_inverse (lock_in) ? _("Fat sheet") : _("Dough sheet"));
}

/* A square of side `side` standing on its corner in the middle of the sheet. */
static void
add_diamond (LockIn         *lock_in,
             double          side,
             const TrColour *fill,
             TrPen           pen)
{
  double reach = side * lock_in->scale / G_SQRT2;
  double x = lock_in->open.x + lock_in->open.width / 2, y = lock_in->open.y + lock_in->open.height / 2;
  double corners[] = { x, y - reach, x + reach, y, x, y + reach, x - reach, y };

  tr_picture_add_polygon (lock_in->picture, corners, 4, fill, pen, &lock_in->look->line);
}

static void
add_inner (LockIn *lock_in)
{
  const TrLook *look = lock_in->look;

  if (lock_in->style == TR_STYLE_ENVELOPE)
    add_diamond (lock_in, lock_in->inner_mm.mm[0], &look->fat, TR_PEN_INNER);
  else
    tr_picture_add_rect (lock_in->picture, &lock_in->inner, is_inverse (lock_in) ? &look->dough : &look->fat,
                         TR_PEN_INNER, &look->line);
  tr_picture_set_hit (lock_in->picture, TR_PART_OF_LOCK_IN, 1, is_inverse (lock_in) ? _("Dough block") : _("Fat block"));
}

static void
add_fold_line (LockIn *lock_in,
               double  share)
{
  double x = lock_in->open.x + share * lock_in->open.width;

  tr_picture_add_line (lock_in->picture, x, lock_in->open.y, x, lock_in->open.y + lock_in->open.height,
                       TR_PEN_INNER, &lock_in->look->line);
  tr_picture_dash (lock_in->picture);
}

static void
add_folds (LockIn *lock_in)
{
  switch (lock_in->style)
    {
    case TR_STYLE_GATE:
      add_fold_line (lock_in, 0.25);
      add_fold_line (lock_in, 0.75);
      break;
    case TR_STYLE_LETTER:
      add_fold_line (lock_in, 1 / 3.0);
      add_fold_line (lock_in, 2 / 3.0);
      break;
    case TR_STYLE_ENVELOPE:
      add_diamond (lock_in, lock_in->sizes->block_mm.mm[0], NULL, TR_PEN_INNER);
      tr_picture_dash (lock_in->picture);
      break;
    case TR_STYLE_HALF:
    case TR_STYLE_INVERSE:
    case TR_N_STYLES:
    default:
      add_fold_line (lock_in, 0.5);
      break;
    }
}

/* A flap goes over: an arrow along the sheet's middle line, with its place in
 * the order (0: none). */
static void
add_flap (LockIn *lock_in,
          double  from,
          double  to,
          int     order)
{
  const TrLook *look = lock_in->look;
  double y = lock_in->open.y + lock_in->open.height / 2;
  double x1 = lock_in->open.x + from * lock_in->open.width, x2 = lock_in->open.x + to * lock_in->open.width;
  double radius = 0.72 * lock_in->em;
  g_autofree char *number = g_strdup_printf ("%d", order);

  tr_picture_add_arrow (lock_in->picture, x1, y, x2, y, FALSE, &look->line);
  if (order == 0)
    return;
  tr_picture_add_circle (lock_in->picture, x1, y, radius, &look->line, TR_PEN_NONE, NULL);
  tr_picture_add_text (lock_in->picture, number, lock_in->em, 700, &look->fat, x1, y + 0.35 * lock_in->em, 0.5);
}

static void
add_corner_flaps (LockIn *lock_in)
{
  const TrBox *open = &lock_in->open;
  double x = open->x + open->width / 2, y = open->y + open->height / 2;

  for (int i = 0; i < 4; i++)
    {
      double dx = (i % 2 ? 0.5 : -0.5) * open->width, dy = (i / 2 ? 0.5 : -0.5) * open->height;

      tr_picture_add_arrow (lock_in->picture, x + 0.86 * dx, y + 0.86 * dy, x + 0.34 * dx, y + 0.34 * dy,
                            FALSE, &lock_in->look->line);
    }
}

static void
add_flaps (LockIn *lock_in)
{
  switch (lock_in->style)
    {
    case TR_STYLE_GATE:
      add_flap (lock_in, 0.08, 0.42, 0);
      add_flap (lock_in, 0.92, 0.58, 0);
      break;
    case TR_STYLE_LETTER:
      add_flap (lock_in, 0.84, 0.58, 1);
      add_flap (lock_in, 0.16, 0.42, 2);
      break;
    case TR_STYLE_ENVELOPE:
      add_corner_flaps (lock_in);
      break;
    case TR_STYLE_HALF:
    case TR_STYLE_INVERSE:
    case TR_N_STYLES:
    default:
      add_flap (lock_in, 0.8, 0.36, 0);
      break;
    }
}

static void
add_dimensions (LockIn *lock_in)
{
  const TrBox *open = &lock_in->open, *inner = &lock_in->inner, *closed = &lock_in->closed;
  const double *block = lock_in->sizes->block_mm.mm;
  double em = lock_in->em, bottom = open->y + open->height, right = open->x + open->width;
  g_autofree char *length = tr_words_length_number (lock_in->reader, lock_in->outer_mm.mm[0]);
  g_autofree char *width = tr_words_length_number (lock_in->reader, lock_in->outer_mm.mm[1]);
  g_autofree char *inner_length = tr_words_length_number (lock_in->reader, lock_in->inner_mm.mm[0]);
  g_autofree char *inner_width = tr_words_length_number (lock_in->reader, lock_in->inner_mm.mm[1]);
  g_autofree char *closed_length = tr_words_length_number (lock_in->reader, block[0]);
  g_autofree char *closed_width = tr_words_length_number (lock_in->reader, block[1]);

  tr_picture_add_dimension_h (lock_in->picture, open->x, right, open->y, open->y - 0.8 * em, length);
  tr_picture_add_dimension_v (lock_in->picture, open->y, bottom, open->x, open->x - 0.8 * em, width);
  if (lock_in->style != TR_STYLE_ENVELOPE)
    {
      tr_picture_add_dimension_h (lock_in->picture, inner->x, inner->x + inner->width, bottom, bottom + 0.8 * em, inner_length);
      tr_picture_add_dimension_v (lock_in->picture, inner->y, inner->y + inner->height, right, right + 0.8 * em, inner_width);
    }
  tr_picture_add_dimension_h (lock_in->picture, closed->x, closed->x + closed->width, closed->y, closed->y - 0.8 * em, closed_length);
  tr_picture_add_dimension_v (lock_in->picture, closed->y, closed->y + closed->height, closed->x + closed->width,
                              closed->x + closed->width + 0.8 * em, closed_width);
}

static void
add_closed (LockIn *lock_in)
{
  const TrLook *look = lock_in->look;
  double em = lock_in->em, y = lock_in->open.y + lock_in->open.height / 2;
  double right = lock_in->open.x + lock_in->open.width;

  tr_picture_add_arrow (lock_in->picture, right + 2.9 * em, y, lock_in->closed.x - 0.6 * em, y, FALSE, &look->dim);
  tr_picture_add_rect (lock_in->picture, &lock_in->closed, tr_look_get_outside (look, lock_in->figures->dough),
                       TR_PEN_OUTLINE, &look->line);
  tr_picture_set_hit (lock_in->picture, TR_PART_OF_LOCK_IN, 2, _("Closed block"));
}

/* "Dough 400 × 205 × 16" under the drawings. */
static void
add_caption (LockIn       *lock_in,
             const char   *name,
             const TrSize *size,
             double        x,
             double        baseline,
             double        room)
{
  const TrLook *look = lock_in->look;
  double em = lock_in->em, wide;
  g_autofree char *text = tr_words_size (lock_in->reader, size);

  wide = tr_picture_add_text (lock_in->picture, name, em, 400, &look->dim, x, baseline, 0) + 0.5 * em;
  if (wide + tr_text_width (look, text, em, 700) <= room)
    tr_picture_add_text (lock_in->picture, text, em, 700, &look->text, x + wide, baseline, 0);
  else
    tr_picture_add_text (lock_in->picture, text, em * MIN (1, MAX (0.5, (room - wide) / tr_text_width (look, text, em, 700))), 700,
                         &look->text, x + wide, baseline, 0);
}

static void
add_captions (LockIn *lock_in,
              double  width,
              double  height)
{
  double em = lock_in->em, first = height - 2.0 * em, second = height - 0.5 * em;
  double left = lock_in->open.x - 1.6 * em;
  double half = MIN (lock_in->closed.x, width - 15 * em);
  int blocks = lock_in->figures->dough->lock_in->blocks;

  half = MAX (half, width * 0.5);
  add_caption (lock_in, is_inverse (lock_in) ? _("fat") : _("dough"), &lock_in->outer_mm, left, first, half - left - em);
  add_caption (lock_in, is_inverse (lock_in) ? _("dough") : _("fat"), &lock_in->inner_mm, left, second, half - left - em);
  add_caption (lock_in, _("closed"), &lock_in->sizes->block_mm, half, first, width - half);
  if (blocks > 1)
    {
      g_autofree char *text = g_strdup_printf (_("%d × this block"), blocks);

      tr_picture_add_text (lock_in->picture, text, em, 700, &lock_in->look->text, half, second, 0);
    }
}

static void
describe (LockIn *lock_in)
{
  g_autofree char *outer = tr_words_size (lock_in->reader, &lock_in->outer_mm);
  g_autofree char *inner = tr_words_size (lock_in->reader, &lock_in->inner_mm);
  g_autofree char *block = tr_words_size (lock_in->reader, &lock_in->sizes->block_mm);
  int blocks = lock_in->figures->dough->lock_in->blocks;

  if (is_inverse (lock_in))
    tr_picture_describe (lock_in->picture, _("Fat sheet %s, dough block %s on it."), outer, inner);
  else
    tr_picture_describe (lock_in->picture, _("Dough %s, fat %s on it."), outer, inner);
  tr_picture_describe (lock_in->picture, "%s", tr_words_style_how (lock_in->style));
  if (blocks > 1)
    tr_picture_describe (lock_in->picture, _("Closed %s; %d blocks like this."), block, blocks);
  else
    tr_picture_describe (lock_in->picture, _("Closed %s."), block);
}

static gboolean
is_drawable (const TrSize *size)
{
  return isfinite (size->mm[0]) && isfinite (size->mm[1]) && size->mm[0] > 0 && size->mm[1] > 0;
}

static void
add_nothing (LockIn *lock_in,
             double  width,
             double  height)
{
  const char *text = lock_in->figures->has_lamination ? _("The sizes of the lock-in are not known.")
                                                      : _("No lock-in.");
  g_autofree char *fitting = tr_text_shorten (lock_in->look, text, lock_in->em, 400, width);

  tr_picture_add_text (lock_in->picture, fitting, lock_in->em, 400, &lock_in->look->dim, width / 2, height / 2, 0.5);
  tr_picture_describe (lock_in->picture, "%s", text);
}

TrPicture *
tr_lock_in_picture_new (const TrDoughFigures *figures,
                        const TrReader       *reader,
                        const TrLook         *look,
                        double                width,
                        double                height)
{
  LockIn lock_in = { .figures = figures, .sizes = &figures->lamination.lock_in, .reader = reader, .look = look,
                     .picture = tr_picture_new (look, reader, width, height), .em = look->text_size };

  if (figures->has_lamination && figures->dough->lock_in != NULL)
    {
      lock_in.style = figures->dough->lock_in->style;
      lock_in.outer_mm = is_inverse (&lock_in) ? lock_in.sizes->fat_mm : lock_in.sizes->dough_mm;
      lock_in.inner_mm = is_inverse (&lock_in) ? lock_in.sizes->dough_mm : lock_in.sizes->fat_mm;
    }
  if (!is_drawable (&lock_in.outer_mm) || !is_drawable (&lock_in.inner_mm) || !is_drawable (&lock_in.sizes->block_mm))
    {
      add_nothing (&lock_in, width, height);
      return lock_in.picture;
    }

  plan (&lock_in, width, height);
  add_outer (&lock_in);
  add_inner (&lock_in);
  add_folds (&lock_in);
  add_flaps (&lock_in);
  add_closed (&lock_in);
  add_dimensions (&lock_in);
  add_captions (&lock_in, width, height);
  tr_picture_tuck_in (lock_in.picture);
  describe (&lock_in);
  return lock_in.picture;
}
