/* labels.c: places for the names of points, inside this room
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Places are tried one after another and the first that is free is taken:
 *
 *              4 above
 *        7               5        round the point, then on wider and wider
 *     1 left     ●    0 right     circles; from the second circle on with a
 *        6               3        leader, which crosses no label either
 *              2 below
 */

#include <math.h>

#include "labels.h"

/* Circles round the point, in em from its edge. */
static const double distances[] = { 0.35, 1.3, 2.4, 3.8, 5.5, 8, 11 };
/* So many of them are near enough to keep off what is soft. */
#define NEAR 3
/* Where the label lies as seen from the point: x, y. */
static const double directions[][2] = { { 1, 0 }, { -1, 0 }, { 0, 1 }, { 0.75, 0.7 }, { 0, -1 }, { 0.75, -0.7 }, { -0.75, 0.7 }, { -0.75, -0.7 } };

typedef struct {
  const TrLabel *labels;
  guint n_labels, n_done;
  const TrBox *room, *taken, *soft;
  guint n_taken, n_soft;
} Places;

gboolean
tr_boxes_overlap (const TrBox *one,
                  const TrBox *other)
{
  return one->x < other->x + other->width && other->x < one->x + one->width &&
         one->y < other->y + other->height && other->y < one->y + one->height;
}

static gboolean
is_inside (const TrBox *box,
           const TrBox *room)
{
  return box->x >= room->x && box->y >= room->y && box->x + box->width <= room->x + room->width &&
         box->y + box->height <= room->y + room->height;
}

/* Clips the segment by the box's four edges: what is left of it lies inside. */
static gboolean
segment_meets (const double *segment,
               const TrBox  *box)
{
  double from = 0, to = 1;
  double way[2] = { segment[2] - segment[0], segment[3] - segment[1] };
  double low[2] = { box->x, box->y }, high[2] = { box->x + box->width, box->y + box->height };

  for (int i = 0; i < 2; i++)
    {
      double start = segment[i], a, b;

      if (fabs (way[i]) < 1e-12)
        {
          if (start < low[i] || start > high[i])
            return FALSE;
          continue;
        }
      a = (low[i] - start) / way[i];
      b = (high[i] - start) / way[i];
      from = MAX (from, MIN (a, b));
      to = MIN (to, MAX (a, b));
    }
  return from < to;
}

static TrBox
dot_box (const TrLabel *label)
{
  return (TrBox) { label->x - label->radius, label->y - label->radius, 2 * label->radius, 2 * label->radius };
}

/* Neither a label nor a leader lies on a point that is not its own. */
static gboolean
is_off_points (const Places  *places,
               const TrLabel *label)
{
  for (guint i = 0; i < places->n_labels; i++)
    {
      const TrLabel *other = &places->labels[i];
      TrBox dot = dot_box (other);

      if (tr_boxes_overlap (&label->box, &dot))
        return FALSE;
      if (label->has_leader && other != label && hypot (other->x - label->x, other->y - label->y) > other->radius + label->radius &&
          segment_meets (label->leader, &dot))
        return FALSE;
    }
  return TRUE;
}

static gboolean
is_free (const Places  *places,
         const TrLabel *label)
{
  if (!is_inside (&label->box, places->room) || !is_off_points (places, label))
    return FALSE;
  for (guint i = 0; i < places->n_taken; i++)
    if (tr_boxes_overlap (&label->box, &places->taken[i]) || (label->has_leader && segment_meets (label->leader, &places->taken[i])))
      return FALSE;
  for (guint i = 0; i < places->n_done; i++)
    {
      const TrLabel *other = &places->labels[i];

      if (!other->is_placed)
        continue;
      if (tr_boxes_overlap (&label->box, &other->box) || (label->has_leader && segment_meets (label->leader, &other->box)) ||
          (other->has_leader && segment_meets (other->leader, &label->box)))
        return FALSE;
    }
  return TRUE;
}

/* From the point's edge to just before the nearest place of the label. */
static void
find_leader (TrLabel *label,
             double   em)
{
  const TrBox *box = &label->box;
  double x = CLAMP (label->x, box->x, box->x + box->width), y = CLAMP (label->y, box->y, box->y + box->height);
  double length = hypot (x - label->x, y - label->y), part = length > 0 ? MIN (1, label->radius / length) : 0;
  double end = length > 0 ? MAX (part, 1 - 0.2 * em / length) : 0;

  label->leader[0] = label->x + (x - label->x) * part;
  label->leader[1] = label->y + (y - label->y) * part;
  label->leader[2] = label->x + (x - label->x) * end;
  label->leader[3] = label->y + (y - label->y) * end;
}

static void
put (TrLabel      *label,
     const double *direction,
     double        distance,
     gboolean      has_leader,
     double        em)
{
  double off = label->radius + distance;
  double x = label->x + direction[0] * off, y = label->y + direction[1] * off;
  double across = direction[0] > 0 ? 0 : direction[0] < 0 ? 1 : 0.5, down = direction[1] > 0 ? 0 : direction[1] < 0 ? 1 : 0.5;

  label->box = (TrBox) { x - across * label->width, y - down * label->height, label->width, label->height };
  label->has_leader = has_leader;
  if (has_leader)
    find_leader (label, em);
}

static gboolean
is_on_soft (const Places  *places,
            const TrLabel *label)
{
  for (guint i = 0; i < places->n_soft; i++)
    if (tr_boxes_overlap (&label->box, &places->soft[i]))
      return TRUE;
  return FALSE;
}

static gboolean
place_within (const Places *places,
              TrLabel      *label,
              double        em,
              guint         n_distances,
              gboolean      minds_soft)
{
  for (guint d = 0; d < n_distances; d++)
    for (guint i = 0; i < G_N_ELEMENTS (directions); i++)
      {
        put (label, directions[i], distances[d] * em, d > 0, em);
        if (is_free (places, label) && !(minds_soft && is_on_soft (places, label)))
          return TRUE;
      }
  return FALSE;
}

static gboolean
place (const Places *places,
       TrLabel      *label,
       double        em)
{
  return place_within (places, label, em, NEAR, TRUE) || place_within (places, label, em, G_N_ELEMENTS (distances), FALSE);
}

guint
tr_labels_place (TrLabel     *labels,
                 guint        n_labels,
                 const TrBox *room,
                 const TrBox *taken,
                 guint        n_taken,
                 const TrBox *soft,
                 guint        n_soft,
                 double       em)
{
  Places places = { labels, n_labels, 0, room, taken, soft, n_taken, n_soft };
  guint n_placed = 0;

  for (guint i = 0; i < n_labels; i++)
    {
      places.n_done = i;
      labels[i].is_placed = place (&places, &labels[i], em);
      if (labels[i].is_placed)
        n_placed++;
    }
  return n_placed;
}
