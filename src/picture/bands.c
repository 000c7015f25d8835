/* bands.c: a stack of bands in a box
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What can be shown is shown in true proportion; what cannot is shown as the
 * tone it really has. On pixels there are three cases, by the height of one
 * fat and one dough band together:
 *
 *   thick   every edge on a whole pixel
 *   thin    every row of pixels in the tone of what lies in it
 *   finer   than three rows: bands and rows would beat against each other
 *           (moiré), so a row takes the tone of some whole pairs of bands
 *           around it
 *
 * Without pixels (PDF, SVG) bands are rectangles until they are finer than a
 * printer's dots. Rectangles of one colour are one path.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "drawn.h"

#define N_TONES 64
#define THICK_PAIR_PIXELS 16
#define THIN_PAIR_PIXELS 3
/* Points; about three dots of a 600 dpi printer. */
#define FINEST_PAIR_PT 0.35

static guint
count_bands (const TrBandsPlace *place)
{
  return place->bands.edges->len - 1;
}

static double
edge (const TrBandsPlace *place,
      guint               index)
{
  return g_array_index (place->bands.edges, double, index);
}

static gboolean
is_fat (const TrBandsPlace *place,
        guint               index)
{
  return (index % 2 == 0) == place->bands.first_is_fat;
}

static guint
find_share (const TrBandsPlace *place,
            double              share)
{
  guint low = 0, high = count_bands (place) - 1;

  while (low < high)
    {
      guint middle = (low + high + 1) / 2;

      if (edge (place, middle) <= share)
        low = middle;
      else
        high = middle - 1;
    }
  return low;
}

static double
share_at (const TrBandsPlace *place,
          double              y)
{
  return place->from + (y - place->box.y) / place->box.height * (place->to - place->from);
}

static double
y_at (const TrBandsPlace *place,
      double              share)
{
  return place->box.y + (share - place->from) / (place->to - place->from) * place->box.height;
}

int
tr_bands_find (const TrBandsPlace *place,
               double              y)
{
  return (int) find_share (place, share_at (place, y));
}

gboolean
tr_bands_get_box (const TrBandsPlace *place,
                  int                 index,
                  TrBox              *box)
{
  double top, bottom;

  if (index < 0 || (guint) index >= count_bands (place))
    return FALSE;
  top = MAX (place->from, edge (place, (guint) index));
  bottom = MIN (place->to, edge (place, (guint) index + 1));
  if (top >= bottom)
    return FALSE;
  *box = (TrBox) { place->box.x, y_at (place, top), place->box.width, y_at (place, bottom) - y_at (place, top) };
  return TRUE;
}

/* The share of fat in each of `n` rows, each `reach` shares high around its middle. */
static void
measure_rows (const TrBandsPlace *place,
              double             *tones,
              guint               n,
              double              reach)
{
  double row = (place->to - place->from) / n;
  guint n_bands = count_bands (place);

  for (guint r = 0; r < n; r++)
    {
      double middle = place->from + (r + 0.5) * row;
      double from = CLAMP (middle - reach / 2, 0, MAX (0, 1 - reach)), to = MIN (1, from + reach);
      double fat = 0;

      for (guint i = find_share (place, from); i < n_bands && edge (place, i) < to; i++)
        if (is_fat (place, i))
          fat += MIN (to, edge (place, i + 1)) - MAX (from, edge (place, i));
      tones[r] = fat / (to - from);
    }
}

static void
fill_rows (const TrBandsPlace *place,
           const TrLook       *look,
           const double       *tones,
           guint               n,
           cairo_t            *cr)
{
  double height = place->box.height / n;
  g_autofree guint8 *steps = g_new (guint8, n);

  for (guint r = 0; r < n; r++)
    steps[r] = (guint8) lround (tones[r] * N_TONES);
  for (guint8 tone = 1; tone <= N_TONES; tone++)
    {
      double part = (double) tone / N_TONES;
      TrColour mixed = { look->dough.r + (look->fat.r - look->dough.r) * part,
                         look->dough.g + (look->fat.g - look->dough.g) * part,
                         look->dough.b + (look->fat.b - look->dough.b) * part };
      gboolean any = FALSE;

      for (guint r = 0; r < n; r++)
        {
          guint end = r;

          while (end < n && steps[end] == tone)
            end++;
          if (end == r)
            continue;
          cairo_rectangle (cr, place->box.x, place->box.y + r * height, place->box.width, (end - r) * height);
          any = TRUE;
          r = end;
        }
      if (!any)
        continue;
      tr_cairo_set_colour (cr, &mixed);
      cairo_fill (cr);
    }
}

static void
fill_fat (const TrBandsPlace *place,
          const TrLook       *look,
          double              scale,
          cairo_t            *cr)
{
  guint last = find_share (place, place->to - 1e-12);

  for (guint i = find_share (place, place->from); i <= last; i++)
    {
      double top, bottom;

      if (!is_fat (place, i))
        continue;
      top = y_at (place, MAX (place->from, edge (place, i)));
      bottom = y_at (place, MIN (place->to, edge (place, i + 1)));
      if (scale > 0)
        {
          top = place->box.y + round ((top - place->box.y) * scale) / scale;
          bottom = place->box.y + round ((bottom - place->box.y) * scale) / scale;
        }
      cairo_rectangle (cr, place->box.x, top, place->box.width, bottom - top);
    }
  tr_cairo_set_colour (cr, &look->fat);
  cairo_fill (cr);
}

static void
draw_rows (const TrBandsPlace *place,
           const TrLook       *look,
           double              scale,
           double              visible,
           cairo_t            *cr)
{
  guint n = MAX (1, (guint) lround (place->box.height * scale));
  g_autofree double *tones = g_new (double, n);
  double row = (place->to - place->from) / n, pair = (place->to - place->from) * 2 / visible, reach = row;

  /* Two pairs at a time: those of a letter lock-in differ in turn. */
  if (pair < THIN_PAIR_PIXELS * row)
    reach = 2 * pair * ceil (THIN_PAIR_PIXELS * row / (2 * pair));
  measure_rows (place, tones, n, reach);
  fill_rows (place, look, tones, n, cr);
}

static void
draw_tone (const TrBandsPlace *place,
           const TrLook       *look,
           cairo_t            *cr)
{
  double tone;

  measure_rows (place, &tone, 1, place->to - place->from);
  fill_rows (place, look, &tone, 1, cr);
}

/* Pixels a unit: the target's own where it has pixels, and then the box is put
 * on them, else the look's. */
static double
find_pixels (TrBandsPlace *place,
             const TrLook *look,
             cairo_t      *cr)
{
  double x1 = place->box.x, y1 = place->box.y, x2 = x1 + place->box.width, y2 = y1 + place->box.height;
  double dx = 0, dy = 1;

  if (cairo_surface_get_type (cairo_get_target (cr)) != CAIRO_SURFACE_TYPE_IMAGE)
    return look->device_scale;
  cairo_user_to_device (cr, &x1, &y1);
  cairo_user_to_device (cr, &x2, &y2);
  x1 = round (x1);
  y1 = round (y1);
  x2 = round (x2);
  y2 = MAX (round (y2), y1 + 1);
  cairo_device_to_user (cr, &x1, &y1);
  cairo_device_to_user (cr, &x2, &y2);
  place->box = (TrBox) { x1, y1, x2 - x1, y2 - y1 };
  cairo_user_to_device_distance (cr, &dx, &dy);
  return hypot (dx, dy);
}

void
tr_bands_draw (const TrBandsPlace *place,
               const TrLook       *look,
               cairo_t            *cr)
{
  TrBandsPlace on_pixels = *place;
  double scale = find_pixels (&on_pixels, look, cr);
  double visible = find_share (place, place->to - 1e-12) - find_share (place, place->from) + 1.0;
  double pair = place->box.height * 2 / visible;

  cairo_rectangle (cr, on_pixels.box.x, on_pixels.box.y, on_pixels.box.width, on_pixels.box.height);
  tr_cairo_set_colour (cr, &look->dough);
  cairo_fill (cr);

  if (scale > 0 && pair * scale < THICK_PAIR_PIXELS)
    draw_rows (&on_pixels, look, scale, visible, cr);
  else if (scale <= 0 && pair < FINEST_PAIR_PT)
    draw_tone (&on_pixels, look, cr);
  else
    fill_fat (&on_pixels, look, scale, cr);
}

char *
tr_bands_dup_text (const TrBandsPlace *place,
                   const TrReader     *reader,
                   int                 index)
{
  guint n_bands = count_bands (place), band = (guint) index;
  TrRange um;
  g_autofree char *number = NULL, *count = NULL, *thickness = NULL;

  if (index < 0 || band >= n_bands)
    return g_strdup ("");
  um.min = um.max = (edge (place, band + 1) - edge (place, band)) * place->thickness_um;
  number = tr_words_count (reader, band / 2 + 1);
  count = tr_words_count (reader, is_fat (place, band) == place->bands.first_is_fat ? (n_bands + 1) / 2 : n_bands / 2);
  thickness = tr_words_micrometres (reader, &um);
  return is_fat (place, band)
         ? g_strdup_printf (_("Fat layer %s of %s from the top, %s"), number, count, thickness)
         : g_strdup_printf (_("Dough layer %s of %s from the top, %s"), number, count, thickness);
}

static const TrBandsPlace *
find_place (const TrPicture *picture)
{
  for (guint i = 0; i < picture->drawn->len; i++)
    {
      const TrDrawn *drawn = &g_array_index (picture->drawn, TrDrawn, i);

      if (drawn->kind == TR_DRAWN_BANDS && drawn->hit.part == TR_PART_OF_BAND)
        return &drawn->bands;
    }
  return NULL;
}

guint
tr_picture_count_bands (const TrPicture *picture)
{
  const TrBandsPlace *place;

  g_return_val_if_fail (picture != NULL, 0);

  place = find_place (picture);
  return place != NULL ? count_bands (place) : 0;
}

gboolean
tr_picture_get_band (const TrPicture *picture,
                     int              index,
                     double          *from,
                     double          *to)
{
  const TrBandsPlace *place;

  g_return_val_if_fail (picture != NULL, FALSE);

  place = find_place (picture);
  if (place == NULL || index < 0 || (guint) index >= count_bands (place))
    return FALSE;
  *from = edge (place, (guint) index);
  *to = edge (place, (guint) index + 1);
  return TRUE;
}
