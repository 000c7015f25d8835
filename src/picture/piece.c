/* piece.c: the piece cut through, with its layers, to scale
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is rolled up shows its windings: an Archimedean spiral without a core, one
 * winding the thickness of the sheet, beginning thick and of one thickness, as the
 * length divided by the windings says. A slice shows the log that it is cut from. A flat
 * piece is seen from above and, under that and to the same scale, at its cut face. Either
 * way a part is enlarged until fat and dough can be told apart.
 *
 * Bands too thin to be told apart are drawn as the tone they would mix to, and that is said.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../calc/cut.h"
#include "../calc/lamination.h"
#include "../calc/shape.h"
#include "shapes.h"

#define TURN_STEPS 72            /* corners a winding */
#define LEAST_BAND 1.3           /* units, to be told from its neighbour */
#define MOST_SPIRALS 5000        /* corners drawn */
/* What can be pointed at, by index in TR_PART_OF_PIECE: windings from 1, from the middle;
 * fat layers of the sheet from the outside; what is seen from above. */
#define FIRST_FAT 1000
#define FROM_ABOVE 0

typedef struct {
  const TrDoughFigures *figures;
  const TrReader *reader;
  const TrLook *look;
  TrPicture *picture;
  double em, width, height;
  GArray *edges;                 /* shares of the sheet from the top; NULL: too many */
  gboolean first_is_fat;
  gboolean is_rolled, is_toned;  /* the layers are drawn as the tone they mix to */
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

/* Part of the sheet: shares of its thickness, from the inside, and turns from the middle. */
typedef struct { double from, to, first_turn, last_turn; } Strip;

/* `colour` NULL: only there to be pointed at. */
static void
add_strip (Piece          *self,
           const Spiral   *spiral,
           const Strip    *strip,
           const TrColour *colour)
{
  double pitch = spiral->radius / spiral->windings, from = strip->from, to = strip->to;
  guint steps = (guint) ceil ((strip->last_turn - strip->first_turn) * TURN_STEPS);
  g_autofree double *xy = g_new (double, 4 * (steps + 1));

  for (guint i = 0; i <= steps; i++)
    {
      double turns = MIN (strip->first_turn + (double) i / TURN_STEPS, strip->last_turn);
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

static double
count_fat_layers (const Piece *self)
{
  return self->figures->has_lamination ? self->figures->lamination.fat_layers : NAN;
}

/* What is said of them, all through the picture; NaN: nothing is known of the layers. */
static TrRange
get_fat_um (const Piece *self)
{
  double stretched = 1 + self->figures->dough->cut->stretch_percent / 100;
  const TrRange nothing = { NAN, NAN };

  if (!self->figures->has_lamination)
    return nothing;
  if (!self->is_rolled)
    stretched = 1;

  return (TrRange) { self->figures->lamination.fat_layer_um.min / stretched, self->figures->lamination.fat_layer_um.max / stretched };
}

/* "Winding 3 of 4.4, 36 fat layers" */
static char *
dup_winding (const Piece  *self,
             const Spiral *spiral,
             guint         winding)
{
  g_autofree char *all = tr_words_number (self->reader, spiral->windings, 1), *layers = NULL;

  if (!isfinite (count_fat_layers (self)))
    return g_strdup_printf (_("Winding %u of %s"), winding, all);
  layers = tr_words_count (self->reader, count_fat_layers (self));

  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Winding %u of %s, %s fat layer", "Winding %u of %s, %s fat layers",
                                       count_fat_layers (self) > 1 ? 2 : 1), winding, all, layers);
}

static void
add_windings (Piece        *self,
              const Spiral *spiral)
{
  for (guint i = 0; i < spiral->windings; i++)
    {
      const Strip strip = { 0, 1, i, MIN (i + 1, spiral->windings) };
      g_autofree char *label = dup_winding (self, spiral, i + 1);

      add_strip (self, spiral, &strip, NULL);
      tr_picture_set_hit (self->picture, TR_PART_OF_PIECE, (int) i + 1, label);
    }
}

static void
add_fat (Piece        *self,
         const Spiral *spiral,
         double        thickness_mm)
{
  guint n = 0;

  for (guint band = 0; band + 1 < self->edges->len; band++)
    {
      const double *edge = &g_array_index (self->edges, double, band);
      const Strip strip = { 1 - edge[1], 1 - edge[0], 0, spiral->windings };
      const TrRange um = { (edge[1] - edge[0]) * thickness_mm * 1000, (edge[1] - edge[0]) * thickness_mm * 1000 };
      g_autofree char *count = NULL, *thick = NULL, *label = NULL;

      if (!is_fat (self, band))
        continue;
      count = tr_words_count (self->reader, count_fat_layers (self));
      thick = tr_words_micrometres (self->reader, &um);
      label = g_strdup_printf (_("Fat layer %u of %s from the outside, %s"), ++n, count, thick);
      add_strip (self, spiral, &strip, &self->look->fat);
      tr_picture_set_hit (self->picture, TR_PART_OF_PIECE, FIRST_FAT + (int) n, label);
    }
}

/* The line along which windings touch. */
static void
add_seam (Piece        *self,
          const Spiral *spiral)
{
  guint steps = (guint) ceil (spiral->windings * TURN_STEPS);
  double pitch = spiral->radius / spiral->windings, last_x = spiral->x, last_y = spiral->y;

  for (guint i = 1; i <= steps; i++)
    {
      double turns = MIN ((double) i / TURN_STEPS, spiral->windings), a = 2 * G_PI * turns;
      double x = spiral->x + pitch * turns * cos (a), y = spiral->y - pitch * turns * sin (a);

      tr_picture_add_line (self->picture, last_x, last_y, x, y, TR_PEN_INNER, &self->look->line);
      last_x = x;
      last_y = y;
    }
}

static void
add_spiral (Piece        *self,
            const Spiral *spiral,
            double        thickness_mm)
{
  double pitch = spiral->radius / spiral->windings;
  const Strip whole = { 0, 1, 0, spiral->windings };
  TrColour tone = mean_tone (self);
  gboolean has_bands = can_draw_bands (self, pitch, 2 * spiral->windings * TURN_STEPS);

  self->is_toned = !has_bands && self->figures->has_lamination;
  add_strip (self, spiral, &whole, has_bands ? &self->look->dough : &tone);
  add_windings (self, spiral);
  if (has_bands)
    add_fat (self, spiral, thickness_mm);
  add_seam (self, spiral);
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
                               self->is_rolled ? box->width + 1.3 * em : self->width - box->x);
}

/* Large, with a name beside it. */
static void
add_number (Piece      *self,
            double      x,
            double      baseline,
            const char *number,
            const char *name)
{
  double wide = tr_picture_add_text (self->picture, number, 1.7 * self->em, 700, &self->look->text, x, baseline, 0);

  x += wide + 0.4 * self->em;
  tr_picture_add_fitting_text (self->picture, name, self->em, 400, &self->look->dim, x, baseline, 0, MAX (self->width - x, self->em));
}

/* Only where there is room over what is said under the enlarged part. */
static void
add_note (Piece      *self,
          const char *text,
          double      size,
          double      x,
          double     *baseline)
{
  if (*baseline > self->height - 1.6 * self->em)
    return;
  tr_picture_add_fitting_text (self->picture, text, size, 400, &self->look->dim, x, *baseline, 0, MAX (self->width - x, self->em));
  *baseline += 1.35 * self->em;
}

/* Small lines under the numbers: how thick the fat is, of what it is a slice, what cannot be seen. */
static void
add_notes (Piece  *self,
           double  x,
           double  baseline)
{
  const TrCut *cut = self->figures->dough->cut;
  TrRange um = get_fat_um (self);
  double em = self->em;

  if (isfinite (um.min) && isfinite (um.max))
    {
      g_autofree char *thick = tr_words_micrometres (self->reader, &um);
      g_autofree char *text = g_strdup_printf (_("fat layer %s"), thick);

      add_note (self, text, em, x, &baseline);
      tr_picture_describe (self->picture, _("Each fat layer is %s thick."), thick);
    }
  if (cut->shape == TR_SHAPE_SLICES)
    {
      g_autofree char *slice = tr_words_length (self->reader, cut->slice_mm);
      g_autofree char *text = g_strdup_printf (_("a slice of %s"), slice);

      add_note (self, text, em, x, &baseline);
      tr_picture_describe (self->picture, _("A slice of %s off the log."), slice);
    }
  if (self->is_toned)
    {
      add_note (self, _("too thin to draw: mean tone"), 0.85 * em, x, &baseline);
      tr_picture_describe (self->picture, "%s", _("Its layers are too thin to be told apart there, and are drawn as the tone they mix to."));
    }
}

/* Where the numbers begin, so that all lines that may follow have room. */
static double
find_first_baseline (const Piece *self,
                     double       wanted)
{
  return MAX (MIN (wanted, self->height - 9 * self->em), 1.6 * self->em);
}

static void
describe_rolled (Piece      *self,
                 const char *windings,
                 const char *diameter,
                 double      layers)
{
  g_autofree char *across = tr_words_count (self->reader, round (layers)), *fat = NULL;

  if (!isfinite (layers))
    {
      tr_picture_describe (self->picture, _("The raw piece, cut through: %s windings, %s across."), windings, diameter);
      return;
    }
  fat = tr_words_count (self->reader, count_fat_layers (self));
  tr_picture_describe (self->picture, _("The raw piece, cut through: %s windings of %s fat layers, %s across, %s fat layers from side to side."),
                       windings, fat, diameter, across);
}

static void
add_rolled (Piece  *self,
            double  windings,
            double  diameter_mm)
{
  double em = self->em, thickness_mm = diameter_mm / (2 * windings), layers = 2 * windings * count_fat_layers (self);
  double radius = MIN (MAX (self->height - 4.2 * em, em), 0.36 * self->width) / 2;
  const Spiral spiral = { 0.5 * em + radius, 2.2 * em + radius, radius, windings };
  double left = spiral.x + radius + 2.5 * em, half = MIN (radius, 4 * em);
  const TrBox box = { left, spiral.y - half, MIN (9 * em, MAX (self->width - left - 11 * em, 2 * em)), 2 * half };
  g_autofree char *diameter = tr_words_length (self->reader, round (diameter_mm)), *number = tr_words_number (self->reader, windings, 1);
  double right = box.x + box.width + 1.5 * em, baseline = find_first_baseline (self, box.y + 1.6 * em);

  add_spiral (self, &spiral, thickness_mm);
  tr_picture_add_dimension_h (self->picture, spiral.x - radius, spiral.x + radius, spiral.y - radius, spiral.y - radius - 0.8 * em, diameter);
  add_enlarged (self, &box, thickness_mm);
  if (isfinite (layers))
    {
      g_autofree char *across = tr_words_count (self->reader, round (layers));

      add_number (self, right, baseline, across, _("fat layers across"));
    }
  add_number (self, right, baseline + 2.2 * em, number, _("windings"));
  describe_rolled (self, number, diameter, layers);
  add_notes (self, right, baseline + 3.9 * em);
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

/* From above, its corner at (x, y). */
static void
add_from_above (Piece  *self,
                double  x,
                double  y,
                double  scale)
{
  const TrColour *outside = tr_look_get_outside (self->look, self->figures->dough);
  double left = INFINITY, top = INFINITY, xy[8];
  TrPieceOutline outline;

  tr_sheet_get_piece (self->figures->dough->cut, &self->figures->sheet, 0, &outline);
  if (outline.n_corners == 0)
    tr_picture_add_circle (self->picture, x + outline.radius_mm * scale, y + outline.radius_mm * scale, outline.radius_mm * scale,
                           outside, TR_PEN_OUTLINE, NULL);
  else
    {
      for (int i = 0; i < outline.n_corners; i++)
        {
          left = MIN (left, outline.x[i]);
          top = MIN (top, outline.y[i]);
        }
      for (int i = 0; i < outline.n_corners; i++)
        {
          xy[2 * i] = x + (outline.x[i] - left) * scale;
          xy[2 * i + 1] = y + (outline.y[i] - top) * scale;
        }
      tr_picture_add_polygon (self->picture, xy, (guint) outline.n_corners, outside, TR_PEN_OUTLINE, NULL);
    }
  tr_picture_set_hit (self->picture, TR_PART_OF_PIECE, FROM_ABOVE, _("The piece from above"));
}

static void
add_face (Piece       *self,
          const TrBox *box,
          double       thickness_mm)
{
  TrColour tone = mean_tone (self);

  if (self->edges != NULL)
    {
      const TrBands bands = { self->edges, self->first_is_fat };

      tr_picture_add_bands (self->picture, box, &bands, 0, 1, TR_PART_OF_BAND, thickness_mm * 1000);
      self->is_toned = box->height / (self->edges->len - 1) < LEAST_BAND;
    }
  else
    {
      tr_picture_add_rect (self->picture, box, &tone, TR_PEN_NONE, NULL);
      self->is_toned = self->figures->has_lamination;
    }
  tr_picture_add_rect (self->picture, box, NULL, TR_PEN_OUTLINE, NULL);
}

static void
add_flat (Piece *self)
{
  const TrSheet *sheet = &self->figures->sheet;
  const TrCut *cut = self->figures->dough->cut;
  double em = self->em, face_mm = get_face_mm (cut), along_mm, across_mm, layers = count_fat_layers (self);

  tr_shape_get_sides (cut, &along_mm, &across_mm);

  double scale = MIN (0.36 * self->width / face_mm, MAX (self->height - 4.2 * em, em) / (sheet->thickness_mm + across_mm));
  const TrBox face = { 0.5 * em, 3.0 * em + across_mm * scale, face_mm * scale, sheet->thickness_mm * scale };
  double left = face.x + face.width + 4.6 * em, right;
  const TrBox large = { left, 1.0 * em, MIN (9 * em, MAX (self->width - left - 11 * em, 2 * em)), MAX (self->height - 3.2 * em, em) };
  g_autofree char *along = tr_words_length_number (self->reader, face_mm), *across = tr_words_length_number (self->reader, across_mm);
  g_autofree char *thick = tr_words_length_number (self->reader, sheet->thickness_mm), *size = tr_words_length (self->reader, sheet->thickness_mm);
  g_autofree char *count = tr_words_count (self->reader, layers);

  add_from_above (self, face.x, 2.2 * em, scale);
  add_face (self, &face, sheet->thickness_mm);
  tr_picture_add_dimension_h (self->picture, face.x, face.x + face.width, 2.2 * em, 1.4 * em, along);
  tr_picture_add_dimension_v (self->picture, 2.2 * em, 2.2 * em + across_mm * scale, face.x + face.width, face.x + face.width + 0.8 * em, across);
  tr_picture_add_dimension_v (self->picture, face.y, face.y + face.height, face.x + face.width, face.x + face.width + 0.8 * em, thick);
  add_enlarged (self, &large, sheet->thickness_mm);
  right = large.x + large.width + 1.5 * em;
  if (isfinite (layers))
    {
      add_number (self, right, large.y + 1.6 * em, count, _("fat layers"));
      tr_picture_describe (self->picture, _("The raw piece, cut through: %s thick, %s fat layers."), size, count);
    }
  else
    tr_picture_describe (self->picture, _("The raw piece, cut through: %s thick."), size);
  add_notes (self, right, large.y + 3.3 * em);
}

/* A slice is of a rolled log, whether or not that is written. */
static gboolean
find_windings (const TrDoughFigures *figures,
               double               *windings,
               double               *diameter_mm)
{
  const TrSheet *sheet = &figures->sheet;

  *windings = sheet->windings;
  *diameter_mm = sheet->diameter_mm;
  if (figures->dough->cut->shape == TR_SHAPE_SLICES)
    *windings = tr_cut_count_windings (figures->dough->cut, sheet->thickness_mm, diameter_mm);

  return isfinite (*windings) && *windings > 0 && isfinite (*diameter_mm) && *diameter_mm > 0;
}

TrPicture *
tr_piece_picture_new (const TrDoughFigures *figures,
                      const TrReader       *reader,
                      const TrLook         *look,
                      double                width,
                      double                height)
{
  Piece self = { figures, reader, look, tr_picture_new (look, reader, width, height), look->text_size, width, height, NULL, FALSE, FALSE, FALSE };
  double windings, diameter_mm;

  if (!figures->has_sheet || !(figures->sheet.thickness_mm > 0))
    {
      tr_picture_describe (self.picture, "%s", _("There is no piece to cut through."));
      return self.picture;
    }

  find_bands (&self);
  self.is_rolled = find_windings (figures, &windings, &diameter_mm);
  if (self.is_rolled)
    add_rolled (&self, windings, diameter_mm);
  else
    add_flat (&self);
  tr_picture_tuck_in (self.picture);
  g_clear_pointer (&self.edges, g_array_unref);

  return self.picture;
}
