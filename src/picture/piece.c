/* piece.c: the piece cut through, with its layers, to scale
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is rolled up shows its windings: an Archimedean spiral without a core, one
 * winding the thickness of the sheet, beginning thick and of one thickness, as the
 * length divided by the windings says. A flat piece shows its cut face, as thick as it is to
 * its width. Either way a part is enlarged until fat and dough can be told apart.
 *
 * Bands thinner than a pixel are drawn as the tone they would mix to.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../calc/lamination.h"
#include "shapes.h"

#define TURN_STEPS 72            /* corners a winding */
#define LEAST_BAND 1.3           /* units, to be told from its neighbour */
#define MOST_SPIRALS 5000        /* corners drawn */

typedef struct {
  const TrDoughFigures *figures;
  const TrReader *reader;
  const TrLook *look;
  TrPicture *picture;
  double em, width, height;
  GArray *edges;                 /* shares of the sheet from the top; NULL: too many */
  gboolean first_is_fat;
} Piece;

static TrColour
mean_tone (const Piece *self)
{
  double share = self->figures->has_lamination ? self->figures->lamination.fat_volume_fraction : 0;
  const TrColour *a = &self->look->dough, *b = &self->look->fat;

  if (!isfinite (share))
    share = 0;

  return (TrColour) { a->r + (b->r - a->r) * share, a->g + (b->g - a->g) * share, a->b + (b->b - a->b) * share };
}

/* From the top, as shares. */
static void
find_bands (Piece *self)
{
  g_autoptr (GArray) stack = NULL;
  double edge = 0;

  if (!self->figures->has_lamination)
    return;
  stack = tr_stack_new (self->figures->dough, &self->figures->lamination, G_MAXUINT);
  if (stack == NULL || stack->len == 0)
    return;

  self->edges = g_array_new (FALSE, FALSE, sizeof (double));
  g_array_append_val (self->edges, edge);
  for (guint i = stack->len; i-- > 0;)
    {
      edge = i > 0 ? edge + g_array_index (stack, TrStackBand, i).share : 1;
      g_array_append_val (self->edges, edge);
    }
  self->first_is_fat = g_array_index (stack, TrStackBand, stack->len - 1).is_fat;
}

static gboolean
is_fat (const Piece *self,
        guint        band)
{
  return self->first_is_fat == (band % 2 == 0);
}

/* Rolled up *****************************************************************/

typedef struct { double x, y, radius, windings; } Spiral;

/* A band between two shares of the winding, from the centre on. */
static void
add_winding_band (Piece          *self,
                  const Spiral   *spiral,
                  double          from,
                  double          to,
                  const TrColour *colour)
{
  double pitch = spiral->radius / spiral->windings;
  guint steps = (guint) ceil (spiral->windings * TURN_STEPS);
  g_autofree double *xy = g_new (double, 4 * (steps + 1));

  for (guint i = 0; i <= steps; i++)
    {
      double turns = MIN ((double) i / TURN_STEPS, spiral->windings);
      double outer = pitch * turns, inner = MAX (outer - pitch, 0);
      double a = 2 * G_PI * turns, r_from = inner + (outer - inner) * from, r_to = inner + (outer - inner) * to;

      xy[2 * i] = spiral->x + r_to * cos (a);
      xy[2 * i + 1] = spiral->y - r_to * sin (a);
      xy[4 * steps + 2 - 2 * i] = spiral->x + r_from * cos (a);
      xy[4 * steps + 3 - 2 * i] = spiral->y - r_from * sin (a);
    }
  tr_picture_add_polygon (self->picture, xy, 2 * (steps + 1), colour, TR_PEN_NONE, NULL);
}

static gboolean
can_draw_bands (const Piece *self,
                double       thickness,
                double       corners)
{
  guint n = self->edges != NULL ? self->edges->len - 1 : 0;

  return n > 0 && n * corners <= MOST_SPIRALS && thickness / n >= LEAST_BAND;
}

static void
add_spiral (Piece        *self,
            const Spiral *spiral)
{
  double pitch = spiral->radius / spiral->windings;
  TrColour tone = mean_tone (self);
  gboolean has_bands = can_draw_bands (self, pitch, 2 * spiral->windings * TURN_STEPS);

  add_winding_band (self, spiral, 0, 1, has_bands ? &self->look->dough : &tone);
  for (guint band = 0; has_bands && band + 1 < self->edges->len; band++)
    if (is_fat (self, band))
      add_winding_band (self, spiral, 1 - g_array_index (self->edges, double, band + 1), 1 - g_array_index (self->edges, double, band),
                        &self->look->fat);

  /* The line along which windings touch. */
  guint steps = (guint) ceil (spiral->windings * TURN_STEPS);
  double last_x = spiral->x, last_y = spiral->y;

  for (guint i = 1; i <= steps; i++)
    {
      double turns = MIN ((double) i / TURN_STEPS, spiral->windings), a = 2 * G_PI * turns;
      double x = spiral->x + pitch * turns * cos (a), y = spiral->y - pitch * turns * sin (a);

      tr_picture_add_line (self->picture, last_x, last_y, x, y, TR_PEN_INNER, &self->look->line);
      last_x = x;
      last_y = y;
    }
}

/* Some layers across a winding, enlarged: the whole sheet, or as much of it as can be told apart. */
static void
add_enlarged (Piece       *self,
              const TrBox *box,
              double       thickness_mm)
{
  double em = self->em, share = 1;
  TrColour tone = mean_tone (self);
  TrRange um;

  if (self->edges == NULL)
    {
      tr_picture_add_rect (self->picture, box, &tone, TR_PEN_OUTLINE, NULL);
      return;
    }

  share = MIN (1, box->height / (6.0 * (self->edges->len - 1)));

  const TrBands bands = { self->edges, self->first_is_fat };

  tr_picture_add_bands (self->picture, box, &bands, 0.5 - share / 2, 0.5 + share / 2, TR_PART_OF_MAGNIFIED_BAND, thickness_mm * 1000);
  tr_picture_add_rect (self->picture, box, NULL, TR_PEN_OUTLINE, NULL);
  um = (TrRange) { share * thickness_mm * 1000, share * thickness_mm * 1000 };

  g_autofree char *height = share < 1 ? tr_words_micrometres (self->reader, &um) : tr_words_length (self->reader, thickness_mm);
  g_autofree char *text = g_strdup_printf (share < 1 ? _("%s of one sheet") : _("one sheet, %s"), height);

  tr_picture_add_fitting_text (self->picture, text, 0.9 * em, 400, &self->look->dim, box->x, box->y + box->height + 1.3 * em, 0,
                               self->width - box->x);
}

static void
add_number (Piece      *self,
            double      x,
            double      baseline,
            double      value,
            const char *name)
{
  g_autofree char *number = tr_words_count (self->reader, value);
  double wide = tr_picture_add_text (self->picture, number, 1.7 * self->em, 700, &self->look->text, x, baseline, 0);

  x += wide + 0.4 * self->em;
  tr_picture_add_fitting_text (self->picture, name, self->em, 400, &self->look->dim, x, baseline, 0, self->width - x);
}

static void
add_rolled (Piece *self)
{
  const TrSheet *sheet = &self->figures->sheet;
  double em = self->em, high = MAX (self->height - 4.2 * em, em);
  double radius = MIN (high, 0.36 * self->width) / 2;
  Spiral spiral = { 0.5 * em + radius, 2.2 * em + radius, radius, sheet->windings };
  double left = spiral.x + radius + 2.5 * em;
  TrBox box = { left, spiral.y - MIN (radius, 4 * em), MIN (9 * em, MAX (self->width - left - 11 * em, 2 * em)), 2 * MIN (radius, 4 * em) };
  g_autofree char *diameter = tr_words_length (self->reader, round (sheet->diameter_mm));
  double right = box.x + box.width + 1.5 * em, layers = sheet->layers_across;
  g_autofree char *windings = tr_words_number (self->reader, sheet->windings, 1);

  add_spiral (self, &spiral);
  tr_picture_add_dimension_h (self->picture, spiral.x - radius, spiral.x + radius, spiral.y - radius, spiral.y - radius - 0.8 * em, diameter);
  add_enlarged (self, &box, sheet->thickness_mm / (1 + self->figures->dough->cut->stretch_percent / 100));
  if (isfinite (layers))
    add_number (self, right, box.y + 1.6 * em, round (layers), _("fat layers across"));

  double wide = tr_picture_add_text (self->picture, windings, 1.7 * em, 700, &self->look->text, right, box.y + 3.9 * em, 0);

  tr_picture_add_fitting_text (self->picture, _("windings"), em, 400, &self->look->dim, right + wide + 0.4 * em, box.y + 3.9 * em, 0,
                               self->width - right - wide - 0.4 * em);
  if (isfinite (layers))
    {
      g_autofree char *across = tr_words_count (self->reader, round (layers));

      tr_picture_describe (self->picture, _("The raw piece, cut through: %s windings, %s across, %s fat layers from side to side."),
                           windings, diameter, across);
    }
  else
    tr_picture_describe (self->picture, _("The raw piece, cut through: %s windings, %s across."), windings, diameter);
}

/* Flat **********************************************************************/

/* How wide the cut face is: along the row. */
static double
get_face_mm (const TrCut *cut)
{
  switch (cut->shape)
    {
    case TR_SHAPE_RECTANGLE:
      return cut->width_mm;
    case TR_SHAPE_SQUARE:
      return cut->side_mm;
    case TR_SHAPE_ROUND:
      return cut->diameter_mm;
    case TR_SHAPE_SLICES:
      return cut->slice_mm;
    case TR_SHAPE_TRIANGLE:
    case TR_SHAPE_RIGHT_TRIANGLE:
    case TR_N_SHAPES:
    default:
      return cut->base_mm;
    }
}

static void
add_flat (Piece *self)
{
  const TrSheet *sheet = &self->figures->sheet;
  const TrLamination *lamination = &self->figures->lamination;
  double em = self->em, face_mm = get_face_mm (self->figures->dough->cut);
  double scale = MIN (0.36 * self->width / face_mm, MAX (self->height - 4.6 * em, em) / sheet->thickness_mm);
  TrBox box = { 0.5 * em, 2.2 * em, face_mm * scale, sheet->thickness_mm * scale };
  double left = box.x + 0.36 * self->width + 3.6 * em;
  TrBox large = { left, 1.0 * em, MIN (9 * em, MAX (self->width - left - 9 * em, 2 * em)), MAX (self->height - 3.2 * em, em) };
  g_autofree char *across = tr_words_length_number (self->reader, face_mm), *thick = tr_words_length_number (self->reader, sheet->thickness_mm);
  g_autofree char *size = tr_words_length (self->reader, sheet->thickness_mm);
  TrColour tone = mean_tone (self);

  if (self->edges != NULL)
    {
      const TrBands bands = { self->edges, self->first_is_fat };

      tr_picture_add_bands (self->picture, &box, &bands, 0, 1, TR_PART_OF_BAND, sheet->thickness_mm * 1000);
    }
  else
    tr_picture_add_rect (self->picture, &box, &tone, TR_PEN_NONE, NULL);
  tr_picture_add_rect (self->picture, &box, NULL, TR_PEN_OUTLINE, NULL);
  tr_picture_add_dimension_h (self->picture, box.x, box.x + box.width, box.y, box.y - 0.8 * em, across);
  tr_picture_add_dimension_v (self->picture, box.y, box.y + box.height, box.x + box.width, box.x + box.width + 0.8 * em, thick);
  add_enlarged (self, &large, sheet->thickness_mm);
  if (self->figures->has_lamination && isfinite (lamination->fat_layers))
    {
      g_autofree char *count = tr_words_count (self->reader, lamination->fat_layers);

      add_number (self, large.x + large.width + 1.5 * em, large.y + 1.6 * em, lamination->fat_layers, _("fat layers"));
      tr_picture_describe (self->picture, _("The raw piece, cut through: %s thick, %s fat layers."), size, count);
    }
  else
    tr_picture_describe (self->picture, _("The raw piece, cut through: %s thick."), size);
}

TrPicture *
tr_piece_picture_new (const TrDoughFigures *figures,
                      const TrReader       *reader,
                      const TrLook         *look,
                      double                width,
                      double                height)
{
  Piece self = { figures, reader, look, tr_picture_new (look, reader, width, height), look->text_size, width, height, NULL, FALSE };

  if (!figures->has_sheet || !(figures->sheet.thickness_mm > 0))
    {
      tr_picture_describe (self.picture, "%s", _("There is no piece to cut through."));
      return self.picture;
    }

  find_bands (&self);
  if (isfinite (figures->sheet.windings) && figures->sheet.windings > 0 && isfinite (figures->sheet.diameter_mm))
    add_rolled (&self);
  else
    add_flat (&self);
  tr_picture_tuck_in (self.picture);
  g_clear_pointer (&self.edges, g_array_unref);

  return self.picture;
}
