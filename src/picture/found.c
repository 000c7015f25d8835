/* found.c: a list of folds at a glance
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Left the stack it makes, as it really lies; right every roll-out to one scale,
 * before the length of the worktop. To be small and many.
 */

#include "config.h"

#include "found.h"

#include <math.h>

#include "../calc/lamination.h"

#define STACK_SHARE 0.3
#define GAP_EM 0.6
/* What is longer than the worktop reaches over its edge, but never far. */
#define MOST_OVER 1.12

typedef struct {
  TrPicture *picture;
  const TrLook *look;
  TrDough *dough;
  TrLamination lamination;
  double width;
  gboolean is_mirrored;
} Found;

/* For those who read from the right. */
static double
place (const Found *self,
       double       x,
       double       wide)
{
  return self->is_mirrored ? self->width - x - wide : x;
}

static void
add_stack (Found       *self,
           const TrBox *unplaced)
{
  const TrBox stands = { place (self, unplaced->x, unplaced->width), unplaced->y, unplaced->width, unplaced->height };
  const TrBox *box = &stands;
  g_autoptr (GArray) stack = tr_stack_new (self->dough, &self->lamination, G_MAXUINT);
  g_autoptr (GArray) edges = g_array_new (FALSE, FALSE, sizeof (double));
  double edge = 0;

  if (stack == NULL)
    {
      tr_picture_add_rect (self->picture, box, &self->look->dough, TR_PEN_OUTLINE, NULL);
      return;
    }

  g_array_append_val (edges, edge);
  for (guint i = stack->len; i-- > 0;)
    {
      edge = i > 0 ? edge + g_array_index (stack, TrStackBand, i).share : 1;
      g_array_append_val (edges, edge);
    }

  const TrBands bands = { edges, g_array_index (stack, TrStackBand, stack->len - 1).is_fat };

  tr_picture_add_bands (self->picture, box, &bands, 0, 1, TR_PART_OF_NOTHING, NAN);
  tr_picture_add_rect (self->picture, box, NULL, TR_PEN_OUTLINE, NULL);
}

static void
add_roll_outs (Found         *self,
               const TrBox   *box,
               const TrBench *bench)
{
  const GArray *steps = self->lamination.steps;
  double scale = box->width / (MOST_OVER * bench->worktop_mm[0]);
  double high = box->height / MAX (steps->len, 3);
  double edge = place (self, box->x + bench->worktop_mm[0] * scale, 0);

  for (guint i = 0; i < steps->len; i++)
    {
      const TrTurnFigures *step = &g_array_index (steps, TrTurnFigures, i);
      double length = step->rolled_mm.mm[0] * scale;
      double wide = CLAMP (length, 1, box->width);
      TrBox bar = { place (self, box->x, wide), box->y + high * i, wide, high * 0.7 };

      if (isnan (length))
        continue;
      tr_picture_add_rect (self->picture, &bar, tr_look_get_outside (self->look, self->dough), TR_PEN_INNER, NULL);
    }
  tr_picture_add_line (self->picture, edge, box->y - 0.1 * box->height, edge, box->y + 1.1 * box->height, TR_PEN_OUTLINE, &self->look->text);
}

TrPicture *
tr_found_picture_new (const TrDoughFigures *figures,
                      const TrSequence     *sequence,
                      const TrReader       *reader,
                      const TrLook         *look,
                      gboolean              is_mirrored,
                      double                width,
                      double                height)
{
  double em = look->text_size, inside = MAX (width - 2, 1), high = MAX (height - 0.5 * em, 1);
  Found self = { tr_picture_new (look, reader, width, height), look, tr_dough_copy (figures->dough),
                 .width = width, .is_mirrored = is_mirrored };
  TrBox stack = { 1, 0.25 * em, STACK_SHARE * inside, high };
  TrBox rolls = { 1 + STACK_SHARE * inside + GAP_EM * em, 0.25 * em, (1 - STACK_SHARE) * inside - GAP_EM * em, high };

  tr_sequence_apply (sequence, self.dough);
  tr_lamination_compute (self.dough, figures->bench, &figures->formula, NULL, &self.lamination);
  add_stack (&self, &stack);
  add_roll_outs (&self, &rolls, figures->bench);
  tr_lamination_clear (&self.lamination);
  tr_dough_unref (self.dough);

  return self.picture;
}
