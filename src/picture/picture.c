/* picture.c: the list of shapes, drawn and hit-tested
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The one place that knows what a shape is. Drawing walks the list forwards,
 * a hit walks it backwards; both read the same numbers.
 */

#include "config.h"

#include <math.h>

#include "drawn.h"

static void
clear_drawn (gpointer data)
{
  TrDrawn *drawn = data;

  g_free (drawn->text);
  g_free (drawn->label);
  g_clear_pointer (&drawn->bands.bands.edges, g_array_unref);
}

TrPicture *
tr_picture_new (const TrLook   *look,
                const TrReader *reader,
                double          width,
                double          height)
{
  TrPicture *picture = g_new0 (TrPicture, 1);

  g_atomic_ref_count_init (&picture->ref_count);
  picture->look = *look;
  picture->reader = *reader;
  picture->width = width;
  picture->height = height;
  picture->drawn = g_array_new (FALSE, TRUE, sizeof (TrDrawn));
  g_array_set_clear_func (picture->drawn, clear_drawn);
  picture->points = g_array_new (FALSE, FALSE, sizeof (double));
  picture->description = g_string_new (NULL);
  return picture;
}

TrPicture *
tr_picture_ref (TrPicture *picture)
{
  g_return_val_if_fail (picture != NULL, NULL);

  g_atomic_ref_count_inc (&picture->ref_count);
  return picture;
}

void
tr_picture_unref (TrPicture *picture)
{
  if (picture == NULL || !g_atomic_ref_count_dec (&picture->ref_count))
    return;

  g_array_unref (picture->drawn);
  g_array_unref (picture->points);
  g_string_free (picture->description, TRUE);
  g_free (picture);
}

const TrLook *
tr_picture_get_look (const TrPicture *picture)
{
  return &picture->look;
}

void
tr_picture_get_size (const TrPicture *picture,
                     double          *width,
                     double          *height)
{
  g_return_if_fail (picture != NULL);

  if (width != NULL)
    *width = picture->width;
  if (height != NULL)
    *height = picture->height;
}

void
tr_picture_set_height (TrPicture *picture,
                       double     height)
{
  picture->height = height;
}

const char *
tr_picture_get_description (const TrPicture *picture)
{
  g_return_val_if_fail (picture != NULL, NULL);

  return picture->description->str;
}

void
tr_picture_describe (TrPicture  *picture,
                     const char *format,
                     ...)
{
  va_list arguments;

  if (picture->description->len > 0)
    g_string_append_c (picture->description, ' ');
  va_start (arguments, format);
  g_string_append_vprintf (picture->description, format, arguments);
  va_end (arguments);
}

/* ---- drawing ---- */

static const double *
points_of (const TrPicture *picture,
           const TrDrawn   *drawn)
{
  return &g_array_index (picture->points, double, drawn->first_point);
}

static void
stroke_shape (const TrPicture *picture,
              const TrDrawn   *drawn,
              cairo_t         *cr)
{
  double dashes[] = { picture->look.text_size * 0.32, picture->look.text_size * 0.22 };

  tr_cairo_set_colour (cr, &drawn->stroke);
  cairo_set_line_width (cr, tr_picture_pen_width (picture, drawn->pen));
  cairo_set_dash (cr, dashes, drawn->dashed ? 2 : 0, 0);
  cairo_stroke (cr);
}

static void
trace_shape (const TrPicture *picture,
             const TrDrawn   *drawn,
             cairo_t         *cr)
{
  const double *xy = points_of (picture, drawn);

  if (drawn->kind == TR_DRAWN_CIRCLE)
    {
      cairo_new_sub_path (cr);
      cairo_arc (cr, xy[0], xy[1], drawn->size, 0, 2 * G_PI);
      return;
    }
  for (guint i = 0; i < drawn->n_points; i++)
    {
      if (i == 0 || (drawn->kind == TR_DRAWN_SEGMENTS && i % 2 == 0))
        cairo_move_to (cr, xy[2 * i], xy[2 * i + 1]);
      else
        cairo_line_to (cr, xy[2 * i], xy[2 * i + 1]);
    }
  if (drawn->kind == TR_DRAWN_POLYGON)
    cairo_close_path (cr);
}

static void
draw_text (const TrPicture *picture,
           const TrDrawn   *drawn,
           cairo_t         *cr)
{
  const double *xy = points_of (picture, drawn);

  if (!drawn->upward)
    {
      tr_text_draw (cr, &picture->look, drawn->text, drawn->size, drawn->weight, &drawn->fill, xy[0], xy[1], drawn->align);
      return;
    }
  cairo_save (cr);
  cairo_translate (cr, xy[0], xy[1]);
  cairo_rotate (cr, -G_PI / 2);
  tr_text_draw (cr, &picture->look, drawn->text, drawn->size, drawn->weight, &drawn->fill, 0, 0, drawn->align);
  cairo_restore (cr);
}

static void
draw_shape (const TrPicture *picture,
            const TrDrawn   *drawn,
            cairo_t         *cr)
{
  /* Only there to be hit. */
  if (!drawn->filled && drawn->pen == TR_PEN_NONE)
    return;

  trace_shape (picture, drawn, cr);
  if (drawn->filled)
    {
      tr_cairo_set_colour (cr, &drawn->fill);
      if (drawn->pen != TR_PEN_NONE)
        cairo_fill_preserve (cr);
      else
        cairo_fill (cr);
    }
  if (drawn->pen != TR_PEN_NONE)
    stroke_shape (picture, drawn, cr);
}

void
tr_picture_draw (const TrPicture *picture,
                 cairo_t         *cr)
{
  g_return_if_fail (picture != NULL);
  g_return_if_fail (cr != NULL);

  cairo_save (cr);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_new_path (cr);
  for (guint i = 0; i < picture->drawn->len; i++)
    {
      const TrDrawn *drawn = &g_array_index (picture->drawn, TrDrawn, i);

      if (drawn->kind == TR_DRAWN_TEXT)
        draw_text (picture, drawn, cr);
      else if (drawn->kind == TR_DRAWN_BANDS)
        tr_bands_draw (&drawn->bands, &picture->look, cr);
      else
        draw_shape (picture, drawn, cr);
    }
  cairo_restore (cr);
}

/* ---- hitting ---- */

/* Even-odd rule. */
static gboolean
polygon_contains (const double *xy,
                  guint         n,
                  double        x,
                  double        y)
{
  gboolean inside = FALSE;

  for (guint i = 0, j = n - 1; i < n; j = i++)
    {
      double xi = xy[2 * i], yi = xy[2 * i + 1], xj = xy[2 * j], yj = xy[2 * j + 1];

      if ((yi > y) != (yj > y) && x < (xj - xi) * (y - yi) / (yj - yi) + xi)
        inside = !inside;
    }
  return inside;
}

static gboolean
shape_contains (const TrPicture *picture,
                const TrDrawn   *drawn,
                double           x,
                double           y)
{
  const double *xy = points_of (picture, drawn);

  switch (drawn->kind)
    {
    case TR_DRAWN_POLYGON:
      return polygon_contains (xy, drawn->n_points, x, y);
    case TR_DRAWN_CIRCLE:
      return hypot (x - xy[0], y - xy[1]) <= drawn->size;
    case TR_DRAWN_BANDS:
      return x >= xy[0] && x < xy[2] && y >= xy[1] && y < xy[3];
    case TR_DRAWN_SEGMENTS:
    case TR_DRAWN_TEXT:
    default:
      return FALSE;
    }
}

TrHit
tr_picture_hit (const TrPicture *picture,
                double           x,
                double           y)
{
  TrHit nothing = { TR_PART_OF_NOTHING, -1 };

  g_return_val_if_fail (picture != NULL, nothing);

  for (guint i = picture->drawn->len; i > 0; i--)
    {
      const TrDrawn *drawn = &g_array_index (picture->drawn, TrDrawn, i - 1);

      if (drawn->hit.part == TR_PART_OF_NOTHING || !shape_contains (picture, drawn, x, y))
        continue;
      if (drawn->kind == TR_DRAWN_BANDS)
        return (TrHit) { drawn->hit.part, tr_bands_find (&drawn->bands, y) };
      return drawn->hit;
    }
  return nothing;
}

/* ---- what is where ---- */

static void
box_of_shape (const TrPicture *picture,
              const TrDrawn   *drawn,
              TrBox           *box)
{
  const double *xy = points_of (picture, drawn);
  double left = G_MAXDOUBLE, top = G_MAXDOUBLE, right = -G_MAXDOUBLE, bottom = -G_MAXDOUBLE;
  double around = drawn->kind == TR_DRAWN_CIRCLE ? drawn->size : 0;

  for (guint i = 0; i < drawn->n_points; i++)
    {
      left = MIN (left, xy[2 * i] - around);
      right = MAX (right, xy[2 * i] + around);
      top = MIN (top, xy[2 * i + 1] - around);
      bottom = MAX (bottom, xy[2 * i + 1] + around);
    }
  *box = (TrBox) { left, top, right - left, bottom - top };
}

/* Bands are one shape for all their indices. */
static const TrDrawn *
find_drawn (const TrPicture *picture,
            const TrHit     *hit)
{
  for (guint i = 0; i < picture->drawn->len; i++)
    {
      const TrDrawn *drawn = &g_array_index (picture->drawn, TrDrawn, i);

      if (hit->part != TR_PART_OF_NOTHING && drawn->hit.part == hit->part &&
          (drawn->kind == TR_DRAWN_BANDS || drawn->hit.index == hit->index))
        return drawn;
    }
  return NULL;
}

const double *
tr_picture_get_outline (const TrPicture *picture,
                        const TrHit     *hit,
                        guint           *n_corners)
{
  const TrDrawn *drawn = find_drawn (picture, hit);

  *n_corners = drawn != NULL ? drawn->n_points : 0;
  return drawn != NULL ? points_of (picture, drawn) : NULL;
}

gboolean
tr_picture_get_box (const TrPicture *picture,
                    const TrHit     *hit,
                    TrBox           *box)
{
  const TrDrawn *drawn = find_drawn (picture, hit);

  if (drawn == NULL)
    return FALSE;
  if (drawn->kind == TR_DRAWN_BANDS)
    return tr_bands_get_box (&drawn->bands, hit->index, box);
  box_of_shape (picture, drawn, box);
  return TRUE;
}

char *
tr_picture_dup_hit_text (const TrPicture *picture,
                         const TrHit     *hit)
{
  const TrDrawn *drawn;

  g_return_val_if_fail (picture != NULL, NULL);
  g_return_val_if_fail (hit != NULL, NULL);

  drawn = find_drawn (picture, hit);
  if (drawn != NULL && drawn->kind == TR_DRAWN_BANDS)
    return tr_bands_dup_text (&drawn->bands, &picture->reader, hit->index);
  return g_strdup (drawn != NULL && drawn->label != NULL ? drawn->label : "");
}

static void
box_of_text (const TrPicture *picture,
             const TrDrawn   *drawn,
             TrBox           *box)
{
  const double *xy = points_of (picture, drawn);
  double width = tr_text_width (&picture->look, drawn->text, drawn->size, drawn->weight);
  double above = drawn->size * TR_TEXT_ASCENT, below = drawn->size * TR_TEXT_DESCENT;

  if (drawn->upward)
    *box = (TrBox) { xy[0] - above, xy[1] - (1 - drawn->align) * width, above + below, width };
  else
    *box = (TrBox) { xy[0] - drawn->align * width, xy[1] - above, width, above + below };
}

/* How far a span must move to lie in 0 to `limit`; its start comes first. */
static double
find_shift (double start,
            double length,
            double limit)
{
  double shift = MIN (0, limit - start - length);

  return start + shift < 0 ? -start : shift;
}

void
tr_picture_tuck_in (TrPicture *picture)
{
  for (guint i = 0; i < picture->drawn->len; i++)
    {
      const TrDrawn *drawn = &g_array_index (picture->drawn, TrDrawn, i);
      TrBox box;

      if (drawn->kind != TR_DRAWN_TEXT)
        continue;
      box_of_text (picture, drawn, &box);
      g_array_index (picture->points, double, drawn->first_point) += find_shift (box.x, box.width, picture->width);
      g_array_index (picture->points, double, drawn->first_point + 1) += find_shift (box.y, box.height, picture->height);
    }
}

guint
tr_picture_count_texts (const TrPicture *picture)
{
  guint count = 0;

  for (guint i = 0; i < picture->drawn->len; i++)
    count += g_array_index (picture->drawn, TrDrawn, i).kind == TR_DRAWN_TEXT;
  return count;
}

const char *
tr_picture_get_text (const TrPicture *picture,
                     guint            index,
                     TrBox           *box)
{
  for (guint i = 0; i < picture->drawn->len; i++)
    {
      const TrDrawn *drawn = &g_array_index (picture->drawn, TrDrawn, i);

      if (drawn->kind != TR_DRAWN_TEXT || index-- > 0)
        continue;
      if (box != NULL)
        box_of_text (picture, drawn, box);
      return drawn->text;
    }
  return NULL;
}

void
tr_picture_get_extents (const TrPicture *picture,
                        TrBox           *box)
{
  double left = G_MAXDOUBLE, top = G_MAXDOUBLE, right = -G_MAXDOUBLE, bottom = -G_MAXDOUBLE;

  for (guint i = 0; i < picture->drawn->len; i++)
    {
      const TrDrawn *drawn = &g_array_index (picture->drawn, TrDrawn, i);
      TrBox one;

      if (drawn->kind == TR_DRAWN_TEXT)
        box_of_text (picture, drawn, &one);
      else
        box_of_shape (picture, drawn, &one);
      if (drawn->kind != TR_DRAWN_TEXT && drawn->n_points == 0)
        continue;
      left = MIN (left, one.x);
      top = MIN (top, one.y);
      right = MAX (right, one.x + one.width);
      bottom = MAX (bottom, one.y + one.height);
    }
  *box = left > right ? (TrBox) { 0 } : (TrBox) { left, top, right - left, bottom - top };
}
