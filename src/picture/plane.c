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
 *
 * Points that lie on one another have one label with all their names.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "drawn.h"
#include "labels.h"
#include "plane-axis.h"

/* Names under each other at one point; more are counted. */
#define MAX_NAMES 4
#define LINE 1.25

typedef struct {
  const TrPlane *plane;
  const TrReader *reader;
  const TrLook *look;
  TrPicture *picture;
  double em, width, height;
  char **names;                  /* of the points, on one line */
  TrRange view_across, view_up;
  TrAxisTicks across, up;
  TrBox area;
  int *owners;                   /* the point whose label names this one; -1: not known */
  TrLabel *labels;               /* those of owners, the current one first ... */
  int *labelled;                 /* ... and which point each names */
  guint n_labels;
  TrBox lines[2];                /* from the current point to both axes, as thin boxes */
  guint n_lines;
  TrBox band_label;              /* no width: said under the plane */
  GPtrArray *notes;              /* lines under the plane ... */
  guint n_note_lines;            /* ... and how many it leaves room for */
} Drawing;

/* ---- places ---- */

static gboolean
is_known (const TrPlanePoint *point)
{
  return isfinite (point->x) && isfinite (point->y);
}

static double
part_of (const TrRange *view,
         double         value)
{
  return (value - view->min) / (view->max - view->min);
}

static void
find_place (const TrPlaneMap *map,
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
static void
find_point (const Drawing *drawing,
            guint          index,
            double        *x,
            double        *y)
{
  const TrPlanePoint *point = &drawing->plane->points[index];

  find_place (&drawing->picture->plane, clamp_into (&drawing->across.view, point->x), clamp_into (&drawing->up.view, point->y), x, y);
}

static double
get_dot_radius (const Drawing *drawing,
                guint          index)
{
  return (drawing->plane->points[index].is_current ? 0.46 : 0.36) * drawing->em;
}

static double
get_ring_radius (const Drawing *drawing,
                 guint          index)
{
  return get_dot_radius (drawing, index) + 0.32 * drawing->em;
}

/* ---- what is written where ---- */

static void
add_note (Drawing *drawing,
          char    *text)
{
  g_auto (GStrv) lines = tr_text_wrap (drawing->look, text, drawing->em, 400, drawing->width, 2);

  for (guint i = 0; lines[i] != NULL; i++)
    g_ptr_array_add (drawing->notes, g_steal_pointer (&lines[i]));
  g_free (text);
}

/* "Not on the plane, since not known: A, B"; NULL: all are on it. */
static char *
dup_unknown (const Drawing *drawing)
{
  g_autoptr (GString) names = g_string_new (NULL);

  for (guint i = 0; i < drawing->plane->n_points; i++)
    if (!is_known (&drawing->plane->points[i]))
      g_string_append_printf (names, "%s%s", names->len > 0 ? ", " : "", drawing->names[i]);
  return names->len > 0 ? g_strdup_printf (_("Not known, so not on the plane: %s."), names->str) : NULL;
}

static void
find_notes (Drawing *drawing,
            guint    n_without_room,
            gboolean band_is_noted)
{
  char *unknown = dup_unknown (drawing);

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
get_tick_width (const Drawing     *drawing,
                const TrPlaneAxis *axis,
                const TrAxisTicks *ticks,
                guint              index)
{
  g_autofree char *text = tr_axis_tick_text (axis, ticks, drawing->reader, index);

  return tr_text_width (drawing->look, text, drawing->em, 400);
}

/* FALSE: there is no room for a plane. */
static gboolean
find_area (Drawing *drawing)
{
  const TrPlane *plane = drawing->plane;
  double em = drawing->em, top = 1.9 * em, left = 0, right;

  drawing->area.y = top;
  drawing->area.height = drawing->height - top - 3.4 * em - drawing->n_note_lines * LINE * em;
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
find_owners (Drawing *drawing)
{
  guint n = drawing->plane->n_points;

  for (guint i = 0; i < n; i++)
    {
      double x, y;

      drawing->owners[i] = is_known (&drawing->plane->points[i]) ? (int) i : -1;
      if (drawing->owners[i] < 0)
        continue;
      find_point (drawing, i, &x, &y);
      for (guint k = 0; k < i; k++)
        {
          double other_x, other_y;

          if (drawing->owners[k] != (int) k)
            continue;
          find_point (drawing, k, &other_x, &other_y);
          if (hypot (x - other_x, y - other_y) < 0.1 * drawing->em)
            drawing->owners[i] = (int) k;
        }
    }
}

static guint
count_at (const Drawing *drawing,
          int            owner)
{
  guint count = 0;

  for (guint i = 0; i < drawing->plane->n_points; i++)
    count += drawing->owners[i] == owner;
  return count;
}

static gboolean
has_current (const Drawing *drawing,
             int            owner)
{
  for (guint i = 0; i < drawing->plane->n_points; i++)
    if (drawing->owners[i] == owner && drawing->plane->points[i].is_current)
      return TRUE;
  return FALSE;
}

typedef struct { char *text; int point; gboolean is_bold, is_dim; } LabelLine;

static void
clear_line (gpointer data)
{
  g_free (((LabelLine *) data)->text);
}

static char *
dup_values (const Drawing *drawing,
            guint          index)
{
  const TrPlanePoint *point = &drawing->plane->points[index];
  g_autofree char *across = drawing->plane->across.say (drawing->reader, point->x);
  g_autofree char *up = drawing->plane->up.say (drawing->reader, point->y);

  return g_strdup_printf ("%s · %s", across, up);
}

static void
append_line (const Drawing *drawing,
             GArray        *lines,
             char          *text,
             int            point,
             gboolean       is_bold,
             gboolean       is_dim)
{
  double room = MIN (17 * drawing->em, 0.5 * drawing->area.width);
  LabelLine line = { tr_text_shorten (drawing->look, text, drawing->em, is_bold ? 700 : 400, room), point, is_bold, is_dim };

  g_array_append_val (lines, line);
  g_free (text);
}

/* (element-type LabelLine): the names at that place; with the current one its values. */
static GArray *
make_lines (const Drawing *drawing,
            int            owner)
{
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (LabelLine));
  guint count = count_at (drawing, owner), shown = 0;

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
add_label (Drawing *drawing,
           int      owner)
{
  g_autoptr (GArray) lines = make_lines (drawing, owner);
  TrLabel *label = &drawing->labels[drawing->n_labels];

  *label = (TrLabel) { 0 };
  find_point (drawing, (guint) owner, &label->x, &label->y);
  label->radius = has_current (drawing, owner) ? 0.8 * drawing->em : count_at (drawing, owner) > 1 ? 0.68 * drawing->em : 0.36 * drawing->em;
  for (guint i = 0; i < lines->len; i++)
    {
      const LabelLine *line = &g_array_index (lines, LabelLine, i);

      label->width = MAX (label->width, tr_text_width (drawing->look, line->text, drawing->em, line->is_bold ? 700 : 400));
    }
  label->height = (lines->len * LINE - 0.2) * drawing->em;
  drawing->labelled[drawing->n_labels++] = owner;
}

static gboolean
get_band_box (const Drawing *drawing,
              TrBox         *box)
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
  find_place (&drawing->picture->plane, shown[0].min, shown[1].max, &x1, &y1);
  find_place (&drawing->picture->plane, shown[0].max, shown[1].min, &x2, &y2);
  *box = (TrBox) { x1, y1, x2 - x1, y2 - y1 };
  return TRUE;
}

/* The lines that lead from the current point to both axes. */
static void
find_drop_lines (Drawing *drawing)
{
  const TrBox *area = &drawing->area;
  double x, y, wide = 0.1 * drawing->em;

  drawing->n_lines = 0;
  for (guint i = 0; i < drawing->plane->n_points; i++)
    if (drawing->owners[i] >= 0 && drawing->plane->points[i].is_current)
      {
        find_point (drawing, i, &x, &y);
        drawing->lines[0] = (TrBox) { x - wide, y, 2 * wide, area->y + area->height - y };
        drawing->lines[1] = (TrBox) { area->x, y - wide, x - area->x, 2 * wide };
        drawing->n_lines = 2;
      }
}

/* Whether the dot of a point, its ring, its name or its lines lie on the box. */
static gboolean
is_on_a_point (const Drawing *drawing,
               const TrBox   *box)
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
find_band_label (Drawing *drawing)
{
  double em = drawing->em, inset = 0.5 * em;
  TrBox band, *label = &drawing->band_label;

  *label = (TrBox) { 0, 0, 0, 0 };
  if (!get_band_box (drawing, &band))
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
find_band_edges (const Drawing *drawing,
                 TrBox          edges[4])
{
  double wide = 0.1 * drawing->em;
  TrBox band;

  if (!get_band_box (drawing, &band))
    return 0;
  edges[0] = (TrBox) { band.x - wide, band.y, 2 * wide, band.height };
  edges[1] = (TrBox) { band.x + band.width - wide, band.y, 2 * wide, band.height };
  edges[2] = (TrBox) { band.x, band.y - wide, band.width, 2 * wide };
  edges[3] = (TrBox) { band.x, band.y + band.height - wide, band.width, 2 * wide };
  return 4;
}

/* The current one chooses first. Returns how many names find no room. */
static guint
find_labels (Drawing  *drawing,
             gboolean *band_is_noted)
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
      missing += count_at (drawing, drawing->labelled[i]);
  return missing;
}

/* What has to be said under the plane takes of its height, and so may need
 * more to be said. */
static gboolean
lay_out (Drawing *drawing)
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

/* ---- drawing ---- */

static void
add_axes (Drawing *drawing)
{
  const TrLook *look = drawing->look;
  const TrBox *area = &drawing->area;
  double em = drawing->em, bottom = area->y + area->height, tick = 0.35 * em, x, y;

  for (guint i = 0; i < drawing->across.n_ticks; i++)
    {
      g_autofree char *text = tr_axis_tick_text (&drawing->plane->across, &drawing->across, drawing->reader, i);

      find_place (&drawing->picture->plane, tr_axis_tick (&drawing->across, i), drawing->up.view.min, &x, &y);
      tr_picture_add_line (drawing->picture, x, y, x, y + tick, TR_PEN_INNER, &look->dim);
      tr_picture_add_text (drawing->picture, text, em, 400, &look->dim, x, y + tick + 1.0 * em, 0.5);
    }
  for (guint i = 0; i < drawing->up.n_ticks; i++)
    {
      g_autofree char *text = tr_axis_tick_text (&drawing->plane->up, &drawing->up, drawing->reader, i);

      find_place (&drawing->picture->plane, drawing->across.view.min, tr_axis_tick (&drawing->up, i), &x, &y);
      tr_picture_add_line (drawing->picture, x - tick, y, x, y, TR_PEN_INNER, &look->dim);
      tr_picture_add_text (drawing->picture, text, em, 400, &look->dim, x - tick - 0.3 * em, y + 0.35 * em, 1);
    }
  tr_picture_add_line (drawing->picture, area->x, area->y, area->x, bottom, TR_PEN_OUTLINE, &look->dim);
  tr_picture_add_line (drawing->picture, area->x, bottom, area->x + area->width, bottom, TR_PEN_OUTLINE, &look->dim);
}

/* The arrows say which way each figure grows. */
static void
add_titles (Drawing *drawing)
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

static void
add_band (Drawing *drawing)
{
  const TrBox *label = &drawing->band_label;
  TrColour shade = get_shade (drawing->look);
  TrBox band;

  if (!get_band_box (drawing, &band))
    return;
  tr_picture_add_rect (drawing->picture, &band, &shade, TR_PEN_INNER, &drawing->look->dim);
  tr_picture_dash (drawing->picture);
  if (label->width > 0)
    tr_picture_add_text (drawing->picture, drawing->plane->band_name, drawing->em, 400, &drawing->look->dim,
                         label->x, label->y + TR_TEXT_ASCENT * drawing->em, 0);
}

/* From whom a point descends. */
static void
add_lineage (Drawing *drawing)
{
  const TrPlane *plane = drawing->plane;

  for (guint i = 0; i < plane->n_points; i++)
    {
      int from = plane->points[i].from;
      double x1, y1, x2, y2;

      if (from < 0 || from >= (int) plane->n_points || drawing->owners[i] < 0 || drawing->owners[from] < 0)
        continue;
      find_point (drawing, (guint) from, &x1, &y1);
      find_point (drawing, i, &x2, &y2);
      tr_picture_add_line (drawing->picture, x1, y1, x2, y2, TR_PEN_HAIR, &drawing->look->dim);
    }
}

/* From the current point down to both axes, where its values are read. */
static void
add_drop_lines (Drawing *drawing,
                guint    index)
{
  const TrBox *area = &drawing->area;
  double x, y;

  find_point (drawing, index, &x, &y);
  tr_picture_add_line (drawing->picture, x, y, x, area->y + area->height, TR_PEN_HAIR, &drawing->look->accent);
  tr_picture_dash (drawing->picture);
  tr_picture_add_line (drawing->picture, area->x, y, x, y, TR_PEN_HAIR, &drawing->look->accent);
  tr_picture_dash (drawing->picture);
}

/* All that is known of a point, a line each. */
static char *
dup_hit_text (const Drawing *drawing,
              guint          index)
{
  const TrPlane *plane = drawing->plane;
  const TrPlanePoint *point = &plane->points[index];
  g_autofree char *across = plane->across.say (drawing->reader, point->x);
  g_autofree char *up = plane->up.say (drawing->reader, point->y);
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
get_reach (const Drawing *drawing,
           guint          index)
{
  double radius = get_dot_radius (drawing, index), reach = MAX (radius, 0.95 * drawing->em), x, y;

  find_point (drawing, index, &x, &y);
  for (guint i = 0; i < drawing->plane->n_points; i++)
    {
      double other_x, other_y;

      if (drawing->owners[i] < 0 || drawing->owners[i] == drawing->owners[index])
        continue;
      find_point (drawing, i, &other_x, &other_y);
      reach = MIN (reach, MAX (radius, hypot (x - other_x, y - other_y) / 2));
    }
  return reach;
}

/* An arrow for what lies beyond the axes. */
static void
add_beyond (Drawing *drawing,
            guint    index,
            double   x,
            double   y)
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
add_dot (Drawing *drawing,
         guint    index)
{
  const TrLook *look = drawing->look;
  gboolean is_current = drawing->plane->points[index].is_current;
  g_autofree char *text = dup_hit_text (drawing, index);
  double x, y;

  find_point (drawing, index, &x, &y);
  if (is_current || (drawing->owners[index] == (int) index && count_at (drawing, (int) index) > 1))
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
add_dots (Drawing *drawing)
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
add_names (Drawing       *drawing,
           const TrLabel *label,
           int            owner)
{
  const TrLook *look = drawing->look;
  g_autoptr (GArray) lines = make_lines (drawing, owner);
  double align = label->box.x + label->box.width <= label->x ? 1 : label->box.x >= label->x ? 0 : 0.5;

  if (label->has_leader)
    tr_picture_add_line (drawing->picture, label->leader[0], label->leader[1], label->leader[2], label->leader[3], TR_PEN_HAIR, &look->text);
  for (guint i = 0; i < lines->len; i++)
    {
      const LabelLine *line = &g_array_index (lines, LabelLine, i);
      g_autofree char *text = dup_hit_text (drawing, (guint) line->point);
      double top = label->box.y + i * LINE * drawing->em;

      tr_picture_add_text (drawing->picture, line->text, drawing->em, line->is_bold ? 700 : 400,
                           line->is_dim ? &look->dim : line->is_bold ? &look->accent : &look->text,
                           label->box.x + align * label->box.width, top + (0.08 + TR_TEXT_ASCENT) * drawing->em, align);
      tr_picture_add_rect (drawing->picture, &(TrBox) { label->box.x, top, label->box.width, LINE * drawing->em }, NULL, TR_PEN_NONE, NULL);
      tr_picture_set_hit (drawing->picture, TR_PART_OF_POINT, line->point, text);
    }
}

static void
add_notes (Drawing *drawing)
{
  double baseline = drawing->area.y + drawing->area.height + 3.4 * drawing->em + TR_TEXT_ASCENT * drawing->em;

  for (guint i = 0; i < drawing->notes->len; i++)
    tr_picture_add_text (drawing->picture, g_ptr_array_index (drawing->notes, i), drawing->em, 400, &drawing->look->dim,
                         0, MIN (baseline + i * LINE * drawing->em, drawing->height - 0.25 * drawing->em), 0);
}

/* ---- words ---- */

static void
describe_band (Drawing           *drawing,
               const TrPlaneAxis *axis)
{
  g_autofree char *low = NULL, *high = NULL;

  if (isnan (axis->band.min) || drawing->plane->band_name == NULL)
    return;
  low = axis->say (drawing->reader, axis->band.min);
  high = axis->say (drawing->reader, axis->band.max);
  tr_picture_describe (drawing->picture, _("%s, %s: %s to %s."), axis->title, drawing->plane->band_name, low, high);
}

static void
describe_point (Drawing *drawing,
                guint    index)
{
  const TrPlane *plane = drawing->plane;
  const TrPlanePoint *point = &plane->points[index];
  g_autofree char *across = plane->across.say (drawing->reader, point->x);
  g_autofree char *up = plane->up.say (drawing->reader, point->y);

  if (point->is_current && plane->current_word != NULL)
    tr_picture_describe (drawing->picture, _("%s, %s: %s, %s."), drawing->names[index], plane->current_word, across, up);
  else
    tr_picture_describe (drawing->picture, _("%s: %s, %s."), drawing->names[index], across, up);
  if (point->from >= 0 && point->from < (int) plane->n_points)
    tr_picture_describe (drawing->picture, _("It comes from %s."), drawing->names[point->from]);
}

/* Of each place the points that share it. */
static void
describe_shared (Drawing *drawing,
                 int      owner)
{
  g_autoptr (GString) names = g_string_new (NULL);

  if (count_at (drawing, owner) < 2)
    return;
  for (guint i = 0; i < drawing->plane->n_points; i++)
    if (drawing->owners[i] == owner)
      g_string_append_printf (names, "%s%s", names->len > 0 ? ", " : "", drawing->names[i]);
  tr_picture_describe (drawing->picture, _("On one point: %s."), names->str);
}

static void
describe (Drawing *drawing,
          gboolean has_area)
{
  g_autofree char *unknown = dup_unknown (drawing);

  tr_picture_describe (drawing->picture, _("Across: %s. Up: %s."), drawing->plane->across.title, drawing->plane->up.title);
  describe_band (drawing, &drawing->plane->across);
  describe_band (drawing, &drawing->plane->up);
  for (guint i = 0; i < drawing->plane->n_points; i++)
    if (is_known (&drawing->plane->points[i]))
      describe_point (drawing, i);
  for (guint i = 0; has_area && i < drawing->plane->n_points; i++)
    if (drawing->owners[i] == (int) i)
      describe_shared (drawing, (int) i);
  if (unknown != NULL)
    tr_picture_describe (drawing->picture, "%s", unknown);
}

/* ---- the picture ---- */

static void
add_too_small (Drawing *drawing)
{
  g_autofree char *text = tr_text_shorten (drawing->look, _("Too small to be drawn"), drawing->em, 400, drawing->width);

  if (drawing->height > drawing->em)
    tr_picture_add_text (drawing->picture, text, drawing->em, 400, &drawing->look->dim, drawing->width / 2, drawing->height / 2 + 0.3 * drawing->em, 0.5);
}

static void
add_all (Drawing *drawing)
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
init_drawing (Drawing       *drawing,
              const TrPlane *plane)
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
      gboolean known = is_known (&plane->points[i]);

      drawing->names[i] = tr_words_one_line (plane->points[i].name);
      x[i] = known ? plane->points[i].x : NAN;
      y[i] = known ? plane->points[i].y : NAN;
    }
  drawing->view_across = tr_axis_find_view (&plane->across, x, n);
  drawing->view_up = tr_axis_find_view (&plane->up, y, n);
}

static void
clear_drawing (Drawing *drawing)
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
  Drawing drawing = { plane, reader, look, tr_picture_new (look, reader, width, height), look->text_size, width, height };
  gboolean has_area;

  init_drawing (&drawing, plane);
  has_area = lay_out (&drawing);
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
  find_place (&picture->plane, across, up, x, y);
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
