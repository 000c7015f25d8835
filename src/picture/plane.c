/* plane.c: things as points on a plane of two figures
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   ↑ title of the axis upwards
 *   |      ┌ ─ ─ ─ ─ ─ ┐
 *   |        usual            ● name
 *   |      └ ─ ─ ─ ─ ─ ┘
 *   └───────────────────────────
 *     ticks    title of the axis across →
 *   what is not known, or found no room, in words
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "plane-drawing.h"

static double
get_dot_radius (const TrPlaneDrawing *drawing,
                guint                 index)
{
  return (drawing->plane->points[index].is_current ? 0.46 : 0.36) * drawing->em;
}

static double
get_ring_radius (const TrPlaneDrawing *drawing,
                 guint                 index)
{
  return get_dot_radius (drawing, index) + 0.32 * drawing->em;
}

static void
add_axes (TrPlaneDrawing *drawing)
{
  const TrLook *look = drawing->look;
  const TrBox *area = &drawing->area;
  double em = drawing->em, bottom = area->y + area->height, tick = 0.35 * em, x, y;

  for (guint i = 0; i < drawing->across.n_ticks; i++)
    {
      g_autofree char *text = tr_axis_tick_text (&drawing->plane->across, &drawing->across, drawing->reader, i);

      tr_plane_find_place (&drawing->picture->plane, tr_axis_tick (&drawing->across, i), drawing->up.view.min, &x, &y);
      tr_picture_add_line (drawing->picture, x, y, x, y + tick, TR_PEN_INNER, &look->dim);
      tr_picture_add_text (drawing->picture, text, em, 400, &look->dim, x, y + tick + 1.0 * em, 0.5);
    }
  for (guint i = 0; i < drawing->up.n_ticks; i++)
    {
      g_autofree char *text = tr_axis_tick_text (&drawing->plane->up, &drawing->up, drawing->reader, i);

      tr_plane_find_place (&drawing->picture->plane, drawing->across.view.min, tr_axis_tick (&drawing->up, i), &x, &y);
      tr_picture_add_line (drawing->picture, x - tick, y, x, y, TR_PEN_INNER, &look->dim);
      tr_picture_add_text (drawing->picture, text, em, 400, &look->dim, x - tick - 0.3 * em, y + 0.35 * em, 1);
    }
  tr_picture_add_line (drawing->picture, area->x, area->y, area->x, bottom, TR_PEN_OUTLINE, &look->dim);
  tr_picture_add_line (drawing->picture, area->x, bottom, area->x + area->width, bottom, TR_PEN_OUTLINE, &look->dim);
}

/* The arrows say which way each figure grows. */
static void
add_titles (TrPlaneDrawing *drawing)
{
  const TrLook *look = drawing->look;
  const TrBox *area = &drawing->area;
  double em = drawing->em, arrow = 1.2 * em;
  double across_y = area->y + area->height + 2.75 * em, right = area->x + area->width;
  g_autofree char *across = tr_text_shorten (look, drawing->plane->across.title, em, 700, right - arrow);
  g_autofree char *up = tr_text_shorten (look, drawing->plane->up.title, em, 700, drawing->width - arrow);

  tr_picture_add_text (drawing->picture, across, em, 700, &look->text, right - arrow, across_y, 1);
  tr_picture_add_arrow (drawing->picture, right - 0.9 * em, across_y - 0.33 * em, right, across_y - 0.33 * em, FALSE, &look->text);
  tr_picture_add_text (drawing->picture, up, em, 700, &look->text, arrow, 0.95 * em, 0);
  tr_picture_add_arrow (drawing->picture, 0.45 * em, 1.05 * em, 0.45 * em, 0.15 * em, FALSE, &look->text);
}

/* Seen on paper and on the page of a window, and lets all that lies on it be read. */
static TrColour
get_shade (const TrLook *look)
{
  const TrColour *paper = &look->paper, *dim = &look->dim;
  double part = look->is_dark ? 0.24 : 0.11;

  return (TrColour) { paper->r + (dim->r - paper->r) * part, paper->g + (dim->g - paper->g) * part, paper->b + (dim->b - paper->b) * part };
}

/* From one end to the other, along an axis, but for where a name lies: what is
 * struck through cannot be read. */
static void
add_band_edge (TrPlaneDrawing *drawing,
               double          x1,
               double          y1,
               double          x2,
               double          y2)
{
  double gap = 0.2 * drawing->em;

  if (x2 - x1 < gap && y2 - y1 < gap)
    return;
  for (guint i = 0; i < drawing->n_labels; i++)
    {
      const TrBox *box = &drawing->labels[i].box;
      TrBox around = { box->x - gap, box->y, box->width + 2 * gap, box->height };

      if (!drawing->labels[i].is_placed || !tr_boxes_overlap (&around, &(TrBox) { x1, y1, x2 - x1 + 1e-6, y2 - y1 + 1e-6 }))
        continue;
      if (y2 > y1)
        {
          add_band_edge (drawing, x1, y1, x1, MAX (y1, around.y - 1e-3));
          add_band_edge (drawing, x1, MIN (y2, around.y + around.height + 1e-3), x1, y2);
        }
      else
        {
          add_band_edge (drawing, x1, y1, MAX (x1, around.x - 1e-3), y1);
          add_band_edge (drawing, MIN (x2, around.x + around.width + 1e-3), y1, x2, y1);
        }
      return;
    }
  tr_picture_add_line (drawing->picture, x1, y1, x2, y2, TR_PEN_INNER, &drawing->look->dim);
  tr_picture_dash (drawing->picture);
}

static void
add_band (TrPlaneDrawing *drawing)
{
  const TrBox *label = &drawing->band_label;
  TrColour shade = get_shade (drawing->look);
  TrBox band;

  if (!tr_plane_get_band_box (drawing, &band))
    return;
  tr_picture_add_rect (drawing->picture, &band, &shade, TR_PEN_NONE, NULL);
  add_band_edge (drawing, band.x, band.y, band.x + band.width, band.y);
  add_band_edge (drawing, band.x, band.y + band.height, band.x + band.width, band.y + band.height);
  add_band_edge (drawing, band.x, band.y, band.x, band.y + band.height);
  add_band_edge (drawing, band.x + band.width, band.y, band.x + band.width, band.y + band.height);
  if (label->width > 0)
    tr_picture_add_text (drawing->picture, drawing->plane->band_name, drawing->em, 400, &drawing->look->dim,
                         label->x, label->y + TR_TEXT_ASCENT * drawing->em, 0);
}

/* From whom a point descends. */
static void
add_lineage (TrPlaneDrawing *drawing)
{
  const TrPlane *plane = drawing->plane;

  for (guint i = 0; i < plane->n_points; i++)
    {
      int from = plane->points[i].from;
      double x1, y1, x2, y2;

      if (from < 0 || from >= (int) plane->n_points || drawing->owners[i] < 0 || drawing->owners[from] < 0)
        continue;
      tr_plane_find_point (drawing, (guint) from, &x1, &y1);
      tr_plane_find_point (drawing, i, &x2, &y2);
      tr_picture_add_line (drawing->picture, x1, y1, x2, y2, TR_PEN_HAIR, &drawing->look->dim);
    }
}

/* From the current point down to both axes, where its values are read. */
static void
add_drop_lines (TrPlaneDrawing *drawing,
                guint           index)
{
  const TrBox *area = &drawing->area;
  double x, y;

  tr_plane_find_point (drawing, index, &x, &y);
  tr_picture_add_line (drawing->picture, x, y, x, area->y + area->height, TR_PEN_HAIR, &drawing->look->accent);
  tr_picture_dash (drawing->picture);
  tr_picture_add_line (drawing->picture, area->x, y, x, y, TR_PEN_HAIR, &drawing->look->accent);
  tr_picture_dash (drawing->picture);
}

/* All that is known of a point, a line each. */
static char *
dup_hit_text (const TrPlaneDrawing *drawing,
              guint                 index)
{
  const TrPlane *plane = drawing->plane;
  const TrPlanePoint *point = &plane->points[index];
  g_autofree char *across = tr_axis_say (&plane->across, drawing->reader, point->x);
  g_autofree char *up = tr_axis_say (&plane->up, drawing->reader, point->y);
  GString *text = g_string_new (drawing->names[index]);

  if (point->from >= 0 && point->from < (int) plane->n_points)
    {
      g_string_append_c (text, '\n');
      g_string_append_printf (text, _("from %s"), drawing->names[point->from]);
    }
  g_string_append_printf (text, "\n%s: %s\n%s: %s", plane->across.title, across, plane->up.title, up);
  for (guint i = 0; i < plane->n_points; i++)
    if (i != index && drawing->owners[i] == drawing->owners[index])
      {
        g_string_append_c (text, '\n');
        g_string_append_printf (text, _("On the same point: %s"), drawing->names[i]);
      }
  return g_string_free (text, FALSE);
}

/* Half the way to the nearest other, so that each can be grasped. */
static double
get_reach (const TrPlaneDrawing *drawing,
           guint                 index)
{
  double radius = get_dot_radius (drawing, index), reach = MAX (radius, 0.95 * drawing->em), x, y;

  tr_plane_find_point (drawing, index, &x, &y);
  for (guint i = 0; i < drawing->plane->n_points; i++)
    {
      double other_x, other_y;

      if (drawing->owners[i] < 0 || drawing->owners[i] == drawing->owners[index])
        continue;
      tr_plane_find_point (drawing, i, &other_x, &other_y);
      reach = MIN (reach, MAX (radius, hypot (x - other_x, y - other_y) / 2));
    }
  return reach;
}

/* An arrow for what lies beyond the axes. */
static void
add_beyond (TrPlaneDrawing *drawing,
            guint           index,
            double          x,
            double          y)
{
  const TrPlanePoint *point = &drawing->plane->points[index];
  double right = point->x > drawing->across.view.max ? 1 : point->x < drawing->across.view.min ? -1 : 0;
  double up = point->y > drawing->up.view.max ? 1 : point->y < drawing->up.view.min ? -1 : 0;
  double length = hypot (right, up), from = get_dot_radius (drawing, index), to = from + 0.6 * drawing->em;

  if (length > 0)
    tr_picture_add_arrow (drawing->picture, x + right / length * from, y - up / length * from,
                          x + right / length * to, y - up / length * to, FALSE, &drawing->look->text);
}

static void
add_dot (TrPlaneDrawing *drawing,
         guint           index)
{
  const TrLook *look = drawing->look;
  gboolean is_current = drawing->plane->points[index].is_current;
  g_autofree char *text = dup_hit_text (drawing, index);
  double x, y;

  tr_plane_find_point (drawing, index, &x, &y);
  if (is_current || (drawing->owners[index] == (int) index && tr_plane_count_at (drawing, (int) index) > 1))
    tr_picture_add_circle (drawing->picture, x, y, get_ring_radius (drawing, index), NULL, TR_PEN_OUTLINE,
                           is_current ? &look->accent : &look->text);
  tr_picture_add_circle (drawing->picture, x, y, get_dot_radius (drawing, index), is_current ? &look->accent : &look->paper,
                         TR_PEN_OUTLINE, is_current ? &look->accent : &look->text);
  tr_picture_add_circle (drawing->picture, x, y, get_reach (drawing, index), NULL, TR_PEN_NONE, NULL);
  tr_picture_set_hit (drawing->picture, TR_PART_OF_POINT, (int) index, text);
  add_beyond (drawing, index, x, y);
}

/* The current one lies on top of the others, of equals the one that names them. */
static void
add_dots (TrPlaneDrawing *drawing)
{
  for (int round = 0; round < 2; round++)
    for (guint i = drawing->plane->n_points; i > 0; i--)
      if (drawing->owners[i - 1] >= 0 && drawing->plane->points[i - 1].is_current == (round == 1))
        {
          if (round == 1)
            add_drop_lines (drawing, i - 1);
          add_dot (drawing, i - 1);
        }
}

static void
add_names (TrPlaneDrawing *drawing,
           const TrLabel  *label,
           int             owner)
{
  const TrLook *look = drawing->look;
  g_autoptr (GArray) lines = tr_plane_make_names (drawing, owner);
  double align = label->box.x + label->box.width <= label->x ? 1 : label->box.x >= label->x ? 0 : 0.5;

  if (label->has_leader)
    tr_picture_add_line (drawing->picture, label->leader[0], label->leader[1], label->leader[2], label->leader[3], TR_PEN_HAIR, &look->text);
  for (guint i = 0; i < lines->len; i++)
    {
      const TrPlaneName *line = &g_array_index (lines, TrPlaneName, i);
      g_autofree char *text = dup_hit_text (drawing, (guint) line->point);
      double top = label->box.y + i * TR_PLANE_LINE * drawing->em;

      tr_picture_add_text (drawing->picture, line->text, drawing->em, line->is_bold ? 700 : 400,
                           line->is_dim ? &look->dim : line->is_bold ? &look->accent : &look->text,
                           label->box.x + align * label->box.width, top + (0.08 + TR_TEXT_ASCENT) * drawing->em, align);
      tr_picture_add_rect (drawing->picture, &(TrBox) { label->box.x, top, label->box.width, TR_PLANE_LINE * drawing->em }, NULL, TR_PEN_NONE, NULL);
      tr_picture_set_hit (drawing->picture, TR_PART_OF_POINT, line->point, text);
    }
}

static void
add_notes (TrPlaneDrawing *drawing)
{
  double baseline = drawing->area.y + drawing->area.height + 3.4 * drawing->em + TR_TEXT_ASCENT * drawing->em;

  for (guint i = 0; i < drawing->notes->len; i++)
    tr_picture_add_text (drawing->picture, g_ptr_array_index (drawing->notes, i), drawing->em, 400, &drawing->look->dim,
                         0, MIN (baseline + i * TR_PLANE_LINE * drawing->em, drawing->height - 0.25 * drawing->em), 0);
}

/* ---- words ---- */

static void
describe_band (TrPlaneDrawing    *drawing,
               const TrPlaneAxis *axis)
{
  g_autofree char *low = NULL, *high = NULL;

  if (isnan (axis->band.min) || drawing->plane->band_name == NULL)
    return;
  low = tr_axis_say (axis, drawing->reader, axis->band.min);
  high = tr_axis_say (axis, drawing->reader, axis->band.max);
  tr_picture_describe (drawing->picture, _("%s, %s: %s to %s."), axis->title, drawing->plane->band_name, low, high);
}

static void
describe_point (TrPlaneDrawing *drawing,
                guint           index)
{
  const TrPlane *plane = drawing->plane;
  const TrPlanePoint *point = &plane->points[index];
  g_autofree char *across = tr_axis_say (&plane->across, drawing->reader, point->x);
  g_autofree char *up = tr_axis_say (&plane->up, drawing->reader, point->y);

  if (point->is_current && plane->current_word != NULL)
    tr_picture_describe (drawing->picture, _("%s, %s: %s, %s."), drawing->names[index], plane->current_word, across, up);
  else
    tr_picture_describe (drawing->picture, _("%s: %s, %s."), drawing->names[index], across, up);
  if (point->from >= 0 && point->from < (int) plane->n_points)
    tr_picture_describe (drawing->picture, _("It comes from %s."), drawing->names[point->from]);
}

/* Of each place the points that share it. */
static void
describe_shared (TrPlaneDrawing *drawing,
                 int             owner)
{
  g_autoptr (GString) names = g_string_new (NULL);

  if (tr_plane_count_at (drawing, owner) < 2)
    return;
  for (guint i = 0; i < drawing->plane->n_points; i++)
    if (drawing->owners[i] == owner)
      g_string_append_printf (names, "%s%s", names->len > 0 ? ", " : "", drawing->names[i]);
  tr_picture_describe (drawing->picture, _("On one point: %s."), names->str);
}

static void
describe (TrPlaneDrawing *drawing,
          gboolean        has_area)
{
  g_autofree char *unknown = tr_plane_dup_unknown (drawing);

  tr_picture_describe (drawing->picture, _("Across: %s. Up: %s."), drawing->plane->across.title, drawing->plane->up.title);
  describe_band (drawing, &drawing->plane->across);
  describe_band (drawing, &drawing->plane->up);
  for (guint i = 0; i < drawing->plane->n_points; i++)
    if (tr_plane_is_known (&drawing->plane->points[i]))
      describe_point (drawing, i);
  for (guint i = 0; has_area && i < drawing->plane->n_points; i++)
    if (drawing->owners[i] == (int) i)
      describe_shared (drawing, (int) i);
  if (unknown != NULL)
    tr_picture_describe (drawing->picture, "%s", unknown);
}

/* ---- the picture ---- */

static void
add_too_small (TrPlaneDrawing *drawing)
{
  g_autofree char *text = tr_text_shorten (drawing->look, _("Too small to be drawn"), drawing->em, 400, drawing->width);

  if (drawing->height > drawing->em)
    tr_picture_add_text (drawing->picture, text, drawing->em, 400, &drawing->look->dim, drawing->width / 2, drawing->height / 2 + 0.3 * drawing->em, 0.5);
}

static void
add_all (TrPlaneDrawing *drawing)
{
  add_band (drawing);
  add_axes (drawing);
  add_titles (drawing);
  add_lineage (drawing);
  add_dots (drawing);
  for (guint i = 0; i < drawing->n_labels; i++)
    if (drawing->labels[i].is_placed)
      add_names (drawing, &drawing->labels[i], drawing->labelled[i]);
  add_notes (drawing);
}

static void
init_drawing (TrPlaneDrawing *drawing,
              const TrPlane  *plane)
{
  guint n = plane->n_points;
  g_autofree double *x = g_new (double, n + 1), *y = g_new (double, n + 1);

  drawing->names = g_new0 (char *, n + 1);
  drawing->owners = g_new0 (int, n + 1);
  drawing->labels = g_new0 (TrLabel, n + 1);
  drawing->labelled = g_new0 (int, n + 1);
  drawing->notes = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < n; i++)
    {
      gboolean known = tr_plane_is_known (&plane->points[i]);

      drawing->names[i] = tr_words_one_line (plane->points[i].name);
      x[i] = known ? plane->points[i].x : NAN;
      y[i] = known ? plane->points[i].y : NAN;
    }
  drawing->view_across = tr_axis_find_view (&plane->across, x, n);
  drawing->view_up = tr_axis_find_view (&plane->up, y, n);
}

static void
clear_drawing (TrPlaneDrawing *drawing)
{
  g_strfreev (drawing->names);
  g_free (drawing->owners);
  g_free (drawing->labels);
  g_free (drawing->labelled);
  g_ptr_array_unref (drawing->notes);
}

TrPicture *
tr_plane_picture_new (const TrPlane  *plane,
                      const TrReader *reader,
                      const TrLook   *look,
                      double          width,
                      double          height)
{
  TrPlaneDrawing drawing = { plane, reader, look, tr_picture_new (look, reader, width, height), look->text_size, width, height };
  gboolean has_area;

  init_drawing (&drawing, plane);
  has_area = tr_plane_lay_out (&drawing);
  if (has_area)
    add_all (&drawing);
  else
    add_too_small (&drawing);
  if (!has_area)
    drawing.picture->plane = (TrPlaneMap) { { 0, 0, 0, 0 }, { 0, 0 }, { 0, 0 } };
  describe (&drawing, has_area);
  clear_drawing (&drawing);
  return drawing.picture;
}

gboolean
tr_plane_picture_get_values (const TrPicture *picture,
                             double           x,
                             double           y,
                             double          *across,
                             double          *up)
{
  const TrPlaneMap *map;

  g_return_val_if_fail (picture != NULL, FALSE);

  map = &picture->plane;
  if (!(map->area.width > 0))
    return FALSE;
  *across = map->across.min + (x - map->area.x) / map->area.width * (map->across.max - map->across.min);
  *up = map->up.min + (1 - (y - map->area.y) / map->area.height) * (map->up.max - map->up.min);
  return TRUE;
}

gboolean
tr_plane_picture_get_place (const TrPicture *picture,
                            double           across,
                            double           up,
                            double          *x,
                            double          *y)
{
  g_return_val_if_fail (picture != NULL, FALSE);

  if (!(picture->plane.area.width > 0))
    return FALSE;
  tr_plane_find_place (&picture->plane, across, up, x, y);
  return TRUE;
}

gboolean
tr_plane_picture_get_view (const TrPicture *picture,
                           TrRange         *across,
                           TrRange         *up)
{
  g_return_val_if_fail (picture != NULL, FALSE);

  *across = picture->plane.across;
  *up = picture->plane.up;
  return picture->plane.area.width > 0;
}
