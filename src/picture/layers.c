/* layers.c: the stack of fat and dough, whole and through a magnifying window
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The bands come from really folding the stack (tr_stack_new), in true
 * proportion. What is too much to draw is said.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../calc/lamination.h"
#include "shapes.h"

/* Pairs of bands in the magnified window; a stack of fewer fat layers needs none. */
#define WINDOW_PAIRS 5.5
#define FEW_FAT_LAYERS 6

typedef struct {
  const TrLamination *lamination;
  const TrReader *reader;
  const TrLook *look;
  TrPicture *picture;
  TrBands bands;                 /* edges NULL: too many to draw */
  double thickness_mm;           /* of the whole stack; NaN: not known */
  TrRange fat_um, dough_um;
  double fat_layers, dough_layers;
  gboolean is_sheet;             /* else: the block after the turns */
  TrLayersAt at;
  double em;
} Layers;

static void
take_step (Layers *layers,
           guint   n_turns)
{
  const GArray *steps = layers->lamination->steps;
  const TrTurnFigures *step;

  if (steps == NULL || n_turns == 0 || n_turns > steps->len)
    return;

  step = &g_array_index (steps, TrTurnFigures, n_turns - 1);
  layers->thickness_mm = step->folded_mm.mm[2];
  layers->fat_um = step->fat_layer_um;
  layers->fat_layers = step->fat_layers;
  layers->dough_layers = step->dough_layers;
}

/* The sheet; without one, or where that is asked for, the block after the turns. */
static void
find_thickness (Layers               *layers,
                const TrDoughFigures *figures)
{
  const TrLamination *lamination = &figures->lamination;

  layers->is_sheet = figures->has_sheet && layers->at.n_turns == 0;
  layers->fat_um = lamination->fat_layer_um;
  layers->dough_um = lamination->dough_layer_um;
  layers->fat_layers = lamination->fat_layers;
  layers->dough_layers = lamination->dough_layers;
  if (layers->is_sheet)
    {
      layers->thickness_mm = figures->sheet.thickness_mm;
      return;
    }

  layers->thickness_mm = lamination->lock_in.block_mm.mm[2];
  layers->dough_um = (TrRange) { NAN, NAN };
  if (layers->at.n_turns > 0)
    take_step (layers, layers->at.n_turns);
  else if (lamination->steps != NULL)
    take_step (layers, lamination->steps->len);
}

/* From the top, as shares. */
static void
find_bands (Layers               *layers,
            const TrDoughFigures *figures)
{
  g_autoptr (GArray) stack = tr_stack_new (figures->dough, &figures->lamination,
                                              layers->at.n_turns > 0 ? layers->at.n_turns : G_MAXUINT);
  double edge = 0;

  if (stack == NULL || stack->len == 0)
    return;

  layers->bands.edges = g_array_sized_new (FALSE, FALSE, sizeof (double), stack->len + 1);
  g_array_append_val (layers->bands.edges, edge);
  for (guint i = stack->len; i > 0; i--)
    {
      edge = i == 1 ? 1 : edge + g_array_index (stack, TrStackBand, i - 1).share;
      g_array_append_val (layers->bands.edges, edge);
    }
  layers->bands.first_is_fat = g_array_index (stack, TrStackBand, stack->len - 1).is_fat;
}

/* 1, 2 or 5 times a power of ten, at most `limit`. */
static double
nice_below (double limit)
{
  double power = pow (10, floor (log10 (limit)));
  double digit = limit / power;

  return power * (digit >= 5 ? 5 : digit >= 2 ? 2 : 1);
}

static void
add_scale_bar (Layers      *layers,
               const TrBox *box,
               double       um_high)
{
  const TrLook *look = layers->look;
  double um, height, x = box->x + box->width + 0.7 * layers->em;
  g_autofree char *text = NULL;

  if (!(um_high > 0) || !isfinite (um_high))
    return;
  um = nice_below (um_high * 0.45);
  height = um / um_high * box->height;
  tr_picture_add_rect (layers->picture, &(TrBox) { x - 0.09 * layers->em, box->y, 0.18 * layers->em, height },
                       &look->text, TR_PEN_NONE, NULL);
  text = um >= 1000 ? tr_words_length (layers->reader, um / 1000)
                    : tr_words_micrometres (layers->reader, &(TrRange) { um, um });
  tr_picture_add_text (layers->picture, text, look->text_size, 400, &look->dim,
                       x + 0.5 * layers->em, box->y + 0.8 * layers->em, 0);
}

/* What cannot be drawn has still its tone. */
static void
add_tone (Layers      *layers,
          const TrBox *box)
{
  const TrColour *dough = &layers->look->dough, *fat = &layers->look->fat;
  double part = layers->lamination->fat_volume_fraction;
  TrColour tone = *dough;

  if (isfinite (part))
    tone = (TrColour) { dough->r + (fat->r - dough->r) * part, dough->g + (fat->g - dough->g) * part,
                        dough->b + (fat->b - dough->b) * part };
  tr_picture_add_rect (layers->picture, box, &tone, TR_PEN_NONE, NULL);
}

/* Around the marked band, as much of it as lies between `from` and `to`; never
 * so thin that it is not seen. */
static void
add_mark (Layers      *layers,
          const TrBox *box,
          double       from,
          double       to)
{
  double least = 0.2 * layers->em, top, bottom;
  int band = layers->at.band;

  if (layers->bands.edges == NULL || band < 0 || (guint) band + 1 >= layers->bands.edges->len)
    return;
  top = MAX (from, g_array_index (layers->bands.edges, double, band));
  bottom = MIN (to, g_array_index (layers->bands.edges, double, band + 1));
  if (top >= bottom)
    return;
  top = box->y + (top - from) / (to - from) * box->height;
  bottom = box->y + (bottom - from) / (to - from) * box->height;
  if (bottom - top < least)
    tr_picture_add_rect (layers->picture, &(TrBox) { box->x - least, (top + bottom - least) / 2, box->width + 2 * least, least },
                         &layers->look->accent, TR_PEN_NONE, NULL);
  else
    tr_picture_add_rect (layers->picture, &(TrBox) { box->x, top, box->width, bottom - top }, NULL, TR_PEN_HEAVY, &layers->look->accent);
}

static void
add_stack (Layers        *layers,
           const TrBox   *box,
           double         from,
           double         to,
           TrPicturePart  part)
{
  if (layers->bands.edges != NULL)
    tr_picture_add_bands (layers->picture, box, &layers->bands, from, to, part, layers->thickness_mm * 1000);
  else
    add_tone (layers, box);
  tr_picture_add_rect (layers->picture, box, NULL, TR_PEN_OUTLINE, &layers->look->line);
  add_mark (layers, box, from, to);
}

/* The part of the stack in the window: some pairs around where it stands. */
static void
find_window (const Layers *layers,
             double       *from,
             double       *to)
{
  double n = layers->bands.edges->len - 1.0;
  double share = MIN (1, WINDOW_PAIRS * 2 / n);
  double middle = isfinite (layers->at.middle) ? layers->at.middle : 0.5;

  *from = CLAMP (middle - share / 2, 0, 1 - share);
  *to = *from + share;
}

static gboolean
needs_window (const Layers *layers)
{
  return layers->bands.edges != NULL && layers->bands.edges->len > 2 * FEW_FAT_LAYERS + 2;
}

static void
add_window (Layers      *layers,
            const TrBox *whole,
            const TrBox *window)
{
  const TrLook *look = layers->look;
  double from, to, top, bottom, beside = 0.35 * layers->em;
  TrRange um;
  g_autofree char *thickness = NULL, *caption = NULL;

  find_window (layers, &from, &to);
  top = whole->y + from * whole->height;
  bottom = whole->y + to * whole->height;
  tr_picture_add_rect (layers->picture,
                       &(TrBox) { whole->x - beside, top, whole->width + 2 * beside, MAX (bottom - top, 0.1 * layers->em) },
                       NULL, TR_PEN_INNER, &look->text);
  tr_picture_add_line (layers->picture, whole->x + whole->width + beside, top, window->x, window->y, TR_PEN_HAIR, &look->dim);
  tr_picture_add_line (layers->picture, whole->x + whole->width + beside, bottom,
                       window->x, window->y + window->height, TR_PEN_HAIR, &look->dim);
  add_stack (layers, window, from, to, TR_PART_OF_MAGNIFIED_BAND);
  add_scale_bar (layers, window, layers->thickness_mm * 1000 * (to - from));

  um.min = um.max = layers->thickness_mm * 1000 * (to - from);
  thickness = um.min >= 1000 ? tr_words_length (layers->reader, um.min / 1000) : tr_words_micrometres (layers->reader, &um);
  if (isfinite (um.min))
    caption = g_strdup_printf (_("%s of it, enlarged"), thickness);
  else
    caption = g_strdup (isfinite (layers->at.middle) ? _("a part of it, enlarged") : _("the middle, enlarged"));
  tr_picture_add_text (layers->picture, caption, look->text_size, 400, &look->dim,
                       window->x, window->y + window->height + 1.3 * layers->em, 0);
}

static void
add_thickness (Layers      *layers,
               const TrBox *whole,
               double       room)
{
  g_autofree char *thickness = tr_words_length (layers->reader, layers->thickness_mm);
  g_autofree char *caption = NULL, *shown = NULL;

  if (layers->is_sheet)
    caption = g_strdup_printf (_("the sheet, %s"), thickness);
  else if (layers->at.n_turns > 0)
    caption = g_strdup_printf (_("after turn %u, %s"), layers->at.n_turns, thickness);
  else
    caption = g_strdup_printf (_("the folded block, %s"), thickness);
  shown = tr_text_shorten (layers->look, caption, layers->em, 400, room);
  tr_picture_add_text (layers->picture, shown, layers->em, 400, &layers->look->dim,
                       whole->x, whole->y + whole->height + 1.3 * layers->em, 0);
}

static void
add_pictures (Layers      *layers,
              const TrBox *area)
{
  double em = layers->em, bar = 6.2 * em, beside = 0.5 * em;
  double high = area->height - 1.9 * em, room = area->width;
  TrBox whole = { area->x + beside, area->y + 0.2 * em, area->width - bar - beside, high };

  if (needs_window (layers))
    {
      double leader = CLAMP (area->width * 0.08, 2 * em, 5 * em);
      double wide = (whole.width - leader - beside) / 2;
      TrBox window = { whole.x + wide + leader + beside, whole.y, wide, high };

      whole.width = wide;
      room = window.x - whole.x - 0.6 * em;
      add_stack (layers, &whole, 0, 1, TR_PART_OF_BAND);
      add_window (layers, &whole, &window);
    }
  else
    {
      add_stack (layers, &whole, 0, 1, TR_PART_OF_BAND);
      add_scale_bar (layers, &whole, layers->thickness_mm * 1000);
    }
  add_thickness (layers, &whole, room);
}

/* One row of the column of numbers. */
typedef struct { char *number; const char *label; double size; } Row;

static guint
make_rows (const Layers *layers,
           Row           rows[4])
{
  gboolean uneven = layers->fat_um.max > layers->fat_um.min * 1.0001;

  rows[0] = (Row) { tr_words_count (layers->reader, layers->fat_layers),
                    g_dngettext (GETTEXT_PACKAGE, "fat layer", "fat layers", layers->fat_layers > 1 ? 2 : 1), 2.5 };
  rows[1] = (Row) { tr_words_micrometres (layers->reader, &layers->fat_um),
                    uneven ? _("outer ones half") : _("each"), 1.9 };
  rows[2] = (Row) { tr_words_count (layers->reader, layers->dough_layers),
                    g_dngettext (GETTEXT_PACKAGE, "dough layer", "dough layers", layers->dough_layers > 1 ? 2 : 1), 1.45 };
  rows[3] = (Row) { tr_words_count (layers->reader, layers->fat_layers + layers->dough_layers), _("bands in all"), 1.45 };
  return 4;
}

static void
clear_rows (Row   *rows,
            guint  n)
{
  for (guint i = 0; i < n; i++)
    g_free (rows[i].number);
}

/* The width that the numbers and their labels need at `shrink`. */
static double
measure_rows (const Layers *layers,
              const Row    *rows,
              guint         n,
              double        shrink)
{
  double widest = 0;

  for (guint i = 0; i < n; i++)
    widest = MAX (widest, tr_text_width (layers->look, rows[i].number, rows[i].size * shrink * layers->em, 700)
                          + 0.5 * layers->em + tr_text_width (layers->look, rows[i].label, layers->em, 400));
  return widest;
}

static void
add_rows (Layers    *layers,
          const Row *rows,
          guint      n,
          double     shrink,
          double     x,
          double     baseline)
{
  for (guint i = 0; i < n; i++)
    {
      double size = rows[i].size * shrink * layers->em, wide;

      baseline += i == 0 ? size * TR_TEXT_ASCENT : size * 0.55 + 1.25 * layers->em;
      wide = tr_picture_add_text (layers->picture, rows[i].number, size, 700, &layers->look->text, x, baseline, 0);
      tr_picture_add_text (layers->picture, rows[i].label, layers->em, 400, &layers->look->dim,
                           x + wide + 0.5 * layers->em, baseline, 0);
    }
}

/* Numbers over the pictures, where there is no room beside them. Returns the
 * height that they take. */
static double
add_heading (Layers    *layers,
             const Row *rows,
             double     width)
{
  const TrLook *look = layers->look;
  double em = layers->em, x = 0, size = 1.7 * em;
  g_autofree char *below = g_strdup_printf (_("%s %s, %s %s"), rows[2].number, rows[2].label, rows[3].number, rows[3].label);
  g_autofree char *fitting = tr_text_shorten (look, below, em, 400, width);

  for (guint i = 0; i < 2; i++)
    {
      double wide = tr_text_width (look, rows[i].number, size, 700);
      double needs = x + wide + 0.4 * em + tr_text_width (look, rows[i].label, em, 400);

      if (i > 0 && needs > width)
        break;
      tr_picture_add_text (layers->picture, rows[i].number, size, 700, &look->text, x, size * TR_TEXT_ASCENT, 0);
      tr_picture_add_text (layers->picture, rows[i].label, em, 400, &look->dim, x + wide + 0.4 * em, size * TR_TEXT_ASCENT, 0);
      x = needs + 1.2 * em;
    }
  tr_picture_add_text (layers->picture, fitting, em, 400, &look->dim, 0, size * TR_TEXT_ASCENT + 1.4 * em, 0);
  return size * TR_TEXT_ASCENT + 2.1 * em;
}

/* Counted, the layers are known without a formula; how thick they are is not. */
static gboolean
is_without_masses (const Layers *layers)
{
  return isnan (layers->lamination->fat_volume_fraction);
}

static const char *
get_why_without_bands (const Layers *layers)
{
  return is_without_masses (layers) ? _("How thick the layers are is known once dough and roll-in are weighed.")
                                    : _("More bands than can be drawn one by one.");
}

static void
describe (Layers    *layers,
          const Row *rows)
{
  g_autofree char *dough = tr_words_micrometres (layers->reader, &layers->dough_um);
  g_autofree char *thickness = tr_words_length (layers->reader, layers->thickness_mm);

  tr_picture_describe (layers->picture, _("%s %s of %s, %s %s, %s bands in all."), rows[0].number, rows[0].label,
                       rows[1].number, rows[2].number, rows[2].label, rows[3].number);
  if (isfinite (layers->dough_um.min))
    tr_picture_describe (layers->picture, _("Inner dough layers %s."), dough);
  if (isfinite (layers->thickness_mm) && layers->is_sheet)
    tr_picture_describe (layers->picture, _("The sheet is %s thick."), thickness);
  else if (isfinite (layers->thickness_mm) && layers->at.n_turns > 0)
    tr_picture_describe (layers->picture, _("The block after turn %u is %s thick."), layers->at.n_turns, thickness);
  else if (isfinite (layers->thickness_mm))
    tr_picture_describe (layers->picture, _("The block after the last fold is %s thick; without a cut the sheet is not known."), thickness);
  if (layers->bands.edges == NULL)
    tr_picture_describe (layers->picture, "%s", get_why_without_bands (layers));
}

static void
add_too_many (Layers      *layers,
              const TrBox *area)
{
  const TrLook *look = layers->look;
  const char *text = _("more bands than can be drawn");
  double size = MIN (layers->em, layers->em * (area->width - 8 * layers->em) / MAX (1, tr_text_width (look, text, layers->em, 400)));

  if (size > layers->em * 0.5)
    tr_picture_add_text (layers->picture, text, size, 400, &look->line,
                         area->x + (area->width - 6.2 * layers->em) / 2, area->y + area->height / 2, 0.5);
}

static void
add_sentence (Layers     *layers,
              const char *text,
              double      width,
              double      height)
{
  g_autofree char *fitting = tr_text_shorten (layers->look, text, layers->em, 400, width);

  tr_picture_add_text (layers->picture, fitting, layers->em, 400, &layers->look->dim, width / 2, height / 2, 0.5);
}

static void
add_nothing (Layers *layers,
             double  width,
             double  height)
{
  const char *text = _("No lock-in: there are no layers to show.");

  add_sentence (layers, text, width, height);
  tr_picture_describe (layers->picture, "%s", text);
}

TrPicture *
tr_layers_picture_new (const TrDoughFigures *figures,
                       const TrReader       *reader,
                       const TrLook         *look,
                       double                width,
                       double                height)
{
  return tr_layers_picture_new_at (figures, reader, look, width, height, &(TrLayersAt) { NAN, -1, 0 });
}

TrPicture *
tr_layers_picture_new_at (const TrDoughFigures *figures,
                          const TrReader       *reader,
                          const TrLook         *look,
                          double                width,
                          double                height,
                          const TrLayersAt     *at)
{
  Layers layers = { .lamination = &figures->lamination, .reader = reader, .look = look,
                    .picture = tr_picture_new (look, reader, width, height), .at = *at };
  TrBox area = { 0, 0, width, height };
  Row rows[4];
  guint n;
  double column, shrink = 1;

  layers.em = look->text_size;
  if (!figures->has_lamination)
    {
      add_nothing (&layers, width, height);
      return layers.picture;
    }

  find_thickness (&layers, figures);
  find_bands (&layers, figures);
  n = make_rows (&layers, rows);
  column = measure_rows (&layers, rows, n, 1);
  if (column > width * 0.42)
    shrink = MAX (0.6, width * 0.42 / column);
  column = measure_rows (&layers, rows, n, shrink);

  if (width - column >= 24 * layers.em && height >= 11 * layers.em)
    {
      area.width = width - column - 1.5 * layers.em;
      add_rows (&layers, rows, n, shrink, width - column, 0.2 * layers.em);
    }
  else
    {
      area.y = add_heading (&layers, rows, width);
      area.height = height - area.y;
    }
  if (is_without_masses (&layers))
    add_sentence (&layers, _("not known before dough and roll-in are weighed"), area.width, area.y + height);
  else if (area.height > 3 * layers.em && area.width > 12 * layers.em)
    {
      add_pictures (&layers, &area);
      if (layers.bands.edges == NULL)
        add_too_many (&layers, &area);
    }
  tr_picture_tuck_in (layers.picture);
  describe (&layers, rows);
  clear_rows (rows, n);
  g_clear_pointer (&layers.bands.edges, g_array_unref);
  return layers.picture;
}
