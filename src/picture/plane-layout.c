/* plane-layout.c: where everything on a plane lies
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Points that lie on one another have one label with all their names. What is
 * said under the plane takes of its height, so both are found together.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "plane-drawing.h"

/* Names under each other at one point; more are counted. */
#define MAX_NAMES 4

/* ---- places ---- */

gboolean
tr_plane_is_known (const TrPlanePoint *point)
{
  return isfinite (point->x) && isfinite (point->y);
}

static double
part_of (const TrRange *view,
         double         value)
{
  return (value - view->min) / (view->max - view->min);
}

void
tr_plane_find_place (const TrPlaneMap *map,
                     double            across,
                     double            up,
                     double           *x,
                     double           *y)
{
  *x = map->area.x + part_of (&map->across, across) * map->area.width;
  *y = map->area.y + (1 - part_of (&map->up, up)) * map->area.height;
}

static double
clamp_into (const TrRange *view,
            double         value)
{
  return CLAMP (value, view->min, view->max);
}

/* What lies beyond the axes is drawn at their end. */
void
tr_plane_find_point (const TrPlaneDrawing *drawing,
                     guint                 index,
                     double               *x,
                     double               *y)
{
  const TrPlanePoint *point = &drawing->plane->points[index];

  tr_plane_find_place (&drawing->picture->plane, clamp_into (&drawing->across.view, point->x), clamp_into (&drawing->up.view, point->y), x, y);
}

/* ---- what is written where ---- */

static void
add_note (TrPlaneDrawing *drawing,
          char           *text)
{
  g_auto (GStrv) lines = tr_text_wrap (drawing->look, text, drawing->em, 400, drawing->width, 2);

  for (guint i = 0; lines[i] != NULL; i++)
    g_ptr_array_add (drawing->notes, g_steal_pointer (&lines[i]));
  g_free (text);
}

/* "Not on the plane, since not known: A, B"; NULL: all are on it. */
char *
tr_plane_dup_unknown (const TrPlaneDrawing *drawing)
{
  g_autoptr (GString) names = g_string_new (NULL);

  for (guint i = 0; i < drawing->plane->n_points; i++)
    if (!tr_plane_is_known (&drawing->plane->points[i]))
      g_string_append_printf (names, "%s%s", names->len > 0 ? ", " : "", drawing->names[i]);
  return names->len > 0 ? g_strdup_printf (_("Not known, so not on the plane: %s."), names->str) : NULL;
}

static void
find_notes (TrPlaneDrawing *drawing,
            guint           n_without_room,
            gboolean        band_is_noted)
{
  char *unknown = tr_plane_dup_unknown (drawing);

  g_ptr_array_set_size (drawing->notes, 0);
  if (band_is_noted)
    add_note (drawing, g_strdup_printf (_("Shaded: %s."), drawing->plane->band_name));
  if (unknown != NULL)
    add_note (drawing, unknown);
  if (n_without_room > 0)
    add_note (drawing, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "There is no room for %u name; point at its dot to read it.",
                                                     "There is no room for %u names; point at a dot to read its name.",
                                                     n_without_room), n_without_room));
}

static double
get_tick_width (const TrPlaneDrawing *drawing,
                const TrPlaneAxis    *axis,
                const TrAxisTicks    *ticks,
                guint                 index)
{
  g_autofree char *text = tr_axis_tick_text (axis, ticks, drawing->reader, index);

  return tr_text_width (drawing->look, text, drawing->em, 400);
}

/* FALSE: there is no room for a plane. */
static gboolean
find_area (TrPlaneDrawing *drawing)
{
  const TrPlane *plane = drawing->plane;
  double em = drawing->em, top = 1.9 * em, left = 0, right;

  drawing->area.y = top;
  drawing->area.height = drawing->height - top - 3.4 * em - drawing->n_note_lines * TR_PLANE_LINE * em;
  if (drawing->area.height < 3 * em)
    return FALSE;
  tr_axis_find_ticks (&plane->up, &drawing->view_up, drawing->reader, drawing->look, drawing->area.height, 2.2 * em, 0, &drawing->up);
  for (guint i = 0; i < drawing->up.n_ticks; i++)
    left = MAX (left, get_tick_width (drawing, &plane->up, &drawing->up, i));
  left = MAX (left + 0.8 * em, 1.5 * em);

  /* the last number reaches half its width over the end of the axis */
  right = 1.5 * em;
  for (int round = 0; round < 2; round++)
    {
      drawing->area.x = left;
      drawing->area.width = drawing->width - left - right;
      if (drawing->area.width < 6 * em)
        return FALSE;
      tr_axis_find_ticks (&plane->across, &drawing->view_across, drawing->reader, drawing->look, drawing->area.width, 2 * em, 1.1 * em,
                          &drawing->across);
      if (drawing->across.n_ticks > 0)
        right = MAX (right, get_tick_width (drawing, &plane->across, &drawing->across, drawing->across.n_ticks - 1) / 2 + 0.1 * em);
    }
  drawing->picture->plane = (TrPlaneMap) { drawing->area, drawing->across.view, drawing->up.view };
  return TRUE;
}

/* ---- labels ---- */

/* The first point at the same place, which names all of them. */
static void
find_owners (TrPlaneDrawing *drawing)
{
  guint n = drawing->plane->n_points;

  for (guint i = 0; i < n; i++)
    {
      double x, y;

      drawing->owners[i] = tr_plane_is_known (&drawing->plane->points[i]) ? (int) i : -1;
      if (drawing->owners[i] < 0)
        continue;
      tr_plane_find_point (drawing, i, &x, &y);
      for (guint k = 0; k < i; k++)
        {
          double other_x, other_y;

          if (drawing->owners[k] != (int) k)
            continue;
          tr_plane_find_point (drawing, k, &other_x, &other_y);
          if (hypot (x - other_x, y - other_y) < 0.1 * drawing->em)
            drawing->owners[i] = (int) k;
        }
    }
}

guint
tr_plane_count_at (const TrPlaneDrawing *drawing,
                   int                   owner)
{
  guint count = 0;

  for (guint i = 0; i < drawing->plane->n_points; i++)
    count += drawing->owners[i] == owner;
  return count;
}

static gboolean
has_current (const TrPlaneDrawing *drawing,
             int                   owner)
{
  for (guint i = 0; i < drawing->plane->n_points; i++)
    if (drawing->owners[i] == owner && drawing->plane->points[i].is_current)
      return TRUE;
  return FALSE;
}

static void
clear_line (gpointer data)
{
  g_free (((TrPlaneName *) data)->text);
}

static char *
dup_values (const TrPlaneDrawing *drawing,
            guint                 index)
{
  const TrPlanePoint *point = &drawing->plane->points[index];
  g_autofree char *across = tr_axis_say (&drawing->plane->across, drawing->reader, point->x);
  g_autofree char *up = tr_axis_say (&drawing->plane->up, drawing->reader, point->y);

  return g_strdup_printf ("%s · %s", across, up);
}

static void
append_line (const TrPlaneDrawing *drawing,
             GArray               *lines,
             char                 *text,
             int                   point,
             gboolean              is_bold,
             gboolean              is_dim)
{
  double room = MIN (17 * drawing->em, 0.5 * drawing->area.width);
  TrPlaneName line = { tr_text_shorten (drawing->look, text, drawing->em, is_bold ? 700 : 400, room), point, is_bold, is_dim };

  g_array_append_val (lines, line);
  g_free (text);
}

/* (element-type TrPlaneName): the names at that place; with the current one its values. */
GArray *
tr_plane_make_names (const TrPlaneDrawing *drawing,
                     int                   owner)
{
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (TrPlaneName));
  guint count = tr_plane_count_at (drawing, owner), shown = 0;

  g_array_set_clear_func (lines, clear_line);
  for (guint i = 0; i < drawing->plane->n_points; i++)
    {
      gboolean is_current = drawing->plane->points[i].is_current;

      if (drawing->owners[i] != owner || (shown >= MAX_NAMES && !is_current))
        continue;
      append_line (drawing, lines, g_strdup (drawing->names[i]), (int) i, is_current, FALSE);
      if (is_current)
        append_line (drawing, lines, dup_values (drawing, i), (int) i, FALSE, TRUE);
      shown++;
    }
  if (count > shown)
    append_line (drawing, lines, g_strdup_printf (_("and %u more"), count - shown), owner, FALSE, TRUE);
  return lines;
}

static void
add_label (TrPlaneDrawing *drawing,
           int             owner)
{
  g_autoptr (GArray) lines = tr_plane_make_names (drawing, owner);
  TrLabel *label = &drawing->labels[drawing->n_labels];

  *label = (TrLabel) { 0 };
  tr_plane_find_point (drawing, (guint) owner, &label->x, &label->y);
  label->radius = has_current (drawing, owner) ? 0.8 * drawing->em : tr_plane_count_at (drawing, owner) > 1 ? 0.68 * drawing->em : 0.36 * drawing->em;
  for (guint i = 0; i < lines->len; i++)
    {
      const TrPlaneName *line = &g_array_index (lines, TrPlaneName, i);

      label->width = MAX (label->width, tr_text_width (drawing->look, line->text, drawing->em, line->is_bold ? 700 : 400));
    }
  label->height = (lines->len * TR_PLANE_LINE - 0.2) * drawing->em;
  drawing->labelled[drawing->n_labels++] = owner;
}

gboolean
tr_plane_get_band_box (const TrPlaneDrawing *drawing,
                       TrBox                *box)
{
  const TrRange *bands[] = { &drawing->plane->across.band, &drawing->plane->up.band };
  const TrRange *views[] = { &drawing->across.view, &drawing->up.view };
  TrRange shown[2];
  double x1, y1, x2, y2;

  if (drawing->plane->band_name == NULL || (isnan (bands[0]->min) && isnan (bands[1]->min)))
    return FALSE;
  for (int i = 0; i < 2; i++)
    shown[i] = isnan (bands[i]->min) ? *views[i] : (TrRange) { MAX (bands[i]->min, views[i]->min), MIN (bands[i]->max, views[i]->max) };
  if (shown[0].min > shown[0].max || shown[1].min > shown[1].max)
    return FALSE;
  tr_plane_find_place (&drawing->picture->plane, shown[0].min, shown[1].max, &x1, &y1);
  tr_plane_find_place (&drawing->picture->plane, shown[0].max, shown[1].min, &x2, &y2);
  *box = (TrBox) { x1, y1, x2 - x1, y2 - y1 };
  return TRUE;
}

/* The lines that lead from the current point to both axes. */
static void
find_drop_lines (TrPlaneDrawing *drawing)
{
  const TrBox *area = &drawing->area;
  double x, y, wide = 0.1 * drawing->em;

  drawing->n_lines = 0;
  for (guint i = 0; i < drawing->plane->n_points; i++)
    if (drawing->owners[i] >= 0 && drawing->plane->points[i].is_current)
      {
        tr_plane_find_point (drawing, i, &x, &y);
        drawing->lines[0] = (TrBox) { x - wide, y, 2 * wide, area->y + area->height - y };
        drawing->lines[1] = (TrBox) { area->x, y - wide, x - area->x, 2 * wide };
        drawing->n_lines = 2;
      }
}

/* Whether the dot of a point, its ring, its name or its lines lie on the box. */
static gboolean
is_on_a_point (const TrPlaneDrawing *drawing,
               const TrBox          *box)
{
  for (guint i = 0; i < drawing->n_lines; i++)
    if (tr_boxes_overlap (box, &drawing->lines[i]))
      return TRUE;
  for (guint i = 0; i < drawing->n_labels; i++)
    {
      const TrLabel *label = &drawing->labels[i];

      if (tr_boxes_overlap (box, &(TrBox) { label->x - label->radius, label->y - label->radius, 2 * label->radius, 2 * label->radius }) ||
          (label->is_placed && tr_boxes_overlap (box, &label->box)))
        return TRUE;
    }
  return FALSE;
}

/* In a corner of the band where neither point nor name lies. */
static gboolean
find_band_label (TrPlaneDrawing *drawing)
{
  double em = drawing->em, inset = 0.5 * em;
  TrBox band, *label = &drawing->band_label;

  *label = (TrBox) { 0, 0, 0, 0 };
  if (!tr_plane_get_band_box (drawing, &band))
    return TRUE;
  label->width = tr_text_width (drawing->look, drawing->plane->band_name, em, 400);
  label->height = (TR_TEXT_ASCENT + TR_TEXT_DESCENT) * em;
  for (int corner = 0; corner < 4 && label->width + 2 * inset <= band.width && label->height + 2 * inset <= band.height; corner++)
    {
      label->x = corner % 2 == 0 ? band.x + inset : band.x + band.width - inset - label->width;
      label->y = corner < 2 ? band.y + inset : band.y + band.height - inset - label->height;
      if (!is_on_a_point (drawing, label))
        return TRUE;
    }
  label->width = 0;
  return FALSE;
}

/* As thin boxes. */
static guint
find_band_edges (const TrPlaneDrawing *drawing,
                 TrBox                 edges[4])
{
  double wide = 0.1 * drawing->em;
  TrBox band;

  if (!tr_plane_get_band_box (drawing, &band))
    return 0;
  edges[0] = (TrBox) { band.x - wide, band.y, 2 * wide, band.height };
  edges[1] = (TrBox) { band.x + band.width - wide, band.y, 2 * wide, band.height };
  edges[2] = (TrBox) { band.x, band.y - wide, band.width, 2 * wide };
  edges[3] = (TrBox) { band.x, band.y + band.height - wide, band.width, 2 * wide };
  return 4;
}

/* The current one chooses first. Returns how many names find no room. */
static guint
find_labels (TrPlaneDrawing *drawing,
             gboolean       *band_is_noted)
{
  guint missing = 0, n_edges;
  TrBox edges[4];

  drawing->n_labels = 0;
  find_owners (drawing);
  for (int round = 0; round < 2; round++)
    for (guint i = 0; i < drawing->plane->n_points; i++)
      if (drawing->owners[i] == (int) i && has_current (drawing, (int) i) == (round == 0))
        add_label (drawing, (int) i);
  find_drop_lines (drawing);
  n_edges = find_band_edges (drawing, edges);
  tr_labels_place (drawing->labels, drawing->n_labels, &drawing->area, drawing->lines, drawing->n_lines, edges, n_edges, drawing->em);
  *band_is_noted = !find_band_label (drawing);
  for (guint i = 0; i < drawing->n_labels; i++)
    if (!drawing->labels[i].is_placed)
      missing += tr_plane_count_at (drawing, drawing->labelled[i]);
  return missing;
}

/* What has to be said under the plane takes of its height, and so may need
 * more to be said. */
gboolean
tr_plane_lay_out (TrPlaneDrawing *drawing)
{
  guint missing = 0;
  gboolean band_is_noted = FALSE;

  for (int round = 0; round < 4; round++)
    {
      find_notes (drawing, missing, band_is_noted);
      if (round > 0 && drawing->notes->len <= drawing->n_note_lines)
        return TRUE;
      drawing->n_note_lines = drawing->notes->len;
      if (!find_area (drawing))
        return FALSE;
      missing = find_labels (drawing, &band_is_noted);
    }
  return TRUE;
}
