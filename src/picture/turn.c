/* turn.c: one turn on the worktop
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Start, rolled out, folded, to one scale: above in plan on the worktop, below
 * from the side, so that the thickness can be seen as well. The worktop
 * behind the rolled sheet has its true length. Dashes are the folds to make;
 * the arrow on the folded block is the way of the next roll-out, across this
 * one, because the block turns a quarter.
 */

#include "config.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "shapes.h"

/* The worktop's share of the picture, in lengths of the rolled sheet. */
#define MOST_WORKTOP 1.5

typedef struct {
  const TrDoughFigures *figures;
  const TrTurnFigures *turn;
  const TrTurn *written;
  gboolean is_last;
  int index;
  const TrReader *reader;
  const TrLook *look;
  TrPicture *picture;
  double em, scale, width, height;
  double top, plan_height, side_height;
  TrBox plans[3];                /* start, rolled, folded */
} Turn;

static const TrSize *
size_of (const Turn *turn,
         int         stage)
{
  return stage == 0 ? &turn->turn->start_mm : stage == 1 ? &turn->turn->rolled_mm : &turn->turn->folded_mm;
}

/* The worktop's length in the direction that is rolled. Without rollers the
 * sheet may lie either way. */
static double
worktop_length (const Turn *turn)
{
  const double *worktop = turn->figures->bench->worktop_mm;

  if (turn->turn->rolled_mm.mm[0] > worktop[0] && turn->turn->breaks == 0)
    return worktop[1];
  return worktop[0];
}

/* The rolled sheet's column: the whole worktop where that costs little. */
static double
column_mm (const Turn *turn,
           int         stage)
{
  double length = size_of (turn, stage)->mm[0];

  return stage == 1 ? MAX (length, MIN (worktop_length (turn), MOST_WORKTOP * length)) : length;
}

static void
plan (Turn *turn)
{
  double em = turn->em, left = 2.4 * em, gap = 5.4 * em, right = 3.2 * em;
  double lengths = 0, across = 0, thick = 0, x, used, room;

  for (int i = 0; i < 3; i++)
    {
      lengths += column_mm (turn, i);
      across = MAX (across, size_of (turn, i)->mm[1]);
      thick = MAX (thick, size_of (turn, i)->mm[2]);
    }
  turn->top = 5.4 * em;
  room = turn->height - turn->top - 2.6 * em - (turn->turn->breaks ? 1.6 * em : 0);
  turn->scale = MIN ((turn->width - left - right - 2 * gap) / lengths, MAX (1, room) / (across + thick));
  turn->scale = MAX (turn->scale, 1e-6);
  turn->plan_height = across * turn->scale;
  turn->side_height = thick * turn->scale;

  used = left + right + 2 * gap + lengths * turn->scale;
  gap += MAX (0, turn->width - used) * 0.2;
  x = left;
  for (int i = 0; i < 3; i++)
    {
      double wide = size_of (turn, i)->mm[0] * turn->scale, high = size_of (turn, i)->mm[1] * turn->scale;
      double column = column_mm (turn, i) * turn->scale;

      turn->plans[i] = (TrBox) { x + (column - wide) / 2, turn->top + (turn->plan_height - high) / 2, wide, high };
      x += column + gap;
    }
}

/* Its true length, as far as the column reaches; up and down as far as there
 * is room. The limits are named where they are broken. */
static void
add_worktop (Turn *turn)
{
  const TrBox *rolled = &turn->plans[1];
  double column = column_mm (turn, 1) * turn->scale, length = worktop_length (turn) * turn->scale;
  double wide = MIN (column, length), pad = 2.1 * turn->em;
  TrBox box = { rolled->x + (rolled->width - wide) / 2, turn->top - pad, wide, turn->plan_height + pad + 0.6 * turn->em };
  g_autofree char *number = NULL, *text = NULL;

  tr_picture_add_rect (turn->picture, &box, &turn->look->worktop, TR_PEN_NONE, NULL);
  tr_picture_set_hit (turn->picture, TR_PART_OF_WORKTOP, 0, _("Worktop"));
  if (length > column + 0.5)
    return;
  number = tr_words_length (turn->reader, worktop_length (turn));
  text = g_strdup_printf (_("worktop %s"), number);
  if (tr_text_width (turn->look, text, 0.9 * turn->em, 400) < wide)
    tr_picture_add_text (turn->picture, text, 0.9 * turn->em, 400, &turn->look->dim, box.x + wide,
                         turn->top + turn->plan_height + turn->side_height + 2.3 * turn->em, 1);
}

static char *
dup_title (const Turn *turn,
           int         stage)
{
  if (stage == 0)
    return g_strdup (_("from"));
  if (stage == 1)
    return g_strdup (_("roll to"));
  return tr_words_fold (turn->written->fold);
}

static void
add_title (Turn *turn,
           int   stage)
{
  const TrLook *look = turn->look;
  const TrBox *box = &turn->plans[stage];
  double em = turn->em, size = 1.15 * em;
  double column = column_mm (turn, stage) * turn->scale;
  double x = stage == 1 ? box->x + (box->width - column) / 2 : MAX (0, box->x - 1.4 * em);
  double next = stage == 0 ? turn->plans[1].x - (column_mm (turn, 1) * turn->scale - turn->plans[1].width) / 2
                           : stage == 1 ? turn->plans[2].x - 1.4 * em : turn->width;
  double room = MAX (em, next - x - 0.8 * em);
  g_autofree char *title = dup_title (turn, stage);
  g_autofree char *shown = tr_text_shorten (look, title, em, 400, room);
  g_autofree char *text = tr_words_size_bare (turn->reader, size_of (turn, stage));
  double wide = tr_text_width (look, text, size, 700);

  tr_picture_add_text (turn->picture, shown, em, 400, &look->dim, x, em, 0);
  tr_picture_add_text (turn->picture, text, wide > room ? size * room / wide : size, 700, &look->text, x, 2.4 * em, 0);
}

static void
add_side (Turn *turn,
          int   stage)
{
  const TrLook *look = turn->look;
  double em = turn->em, high = size_of (turn, stage)->mm[2] * turn->scale;
  double top = turn->top + turn->plan_height + 1.2 * em;
  TrBox box = { turn->plans[stage].x, top + turn->side_height - high, turn->plans[stage].width, high };
  int layers = stage == 2 ? turn->written->fold : 1;
  g_autofree char *size = tr_words_size_bare (turn->reader, size_of (turn, stage));
  const char *text = strrchr (size, ' ') + 1;       /* the thickness as the size says it */

  tr_picture_add_rect (turn->picture, &box, tr_look_get_outside (look, turn->figures->dough), TR_PEN_OUTLINE, &look->line);
  for (int i = 1; i < layers; i++)
    {
      double y = box.y + box.height * i / layers;

      tr_picture_add_line (turn->picture, box.x, y, box.x + box.width, y, TR_PEN_INNER, &look->line);
    }
  tr_picture_add_text (turn->picture, text, em, 400, &look->text, box.x + box.width + 0.5 * em,
                       MAX (box.y + high / 2 + 0.35 * em, top + 0.5 * em), 0);
}

static void
add_folds (Turn *turn)
{
  const TrBox *box = &turn->plans[1];
  int fold = turn->written->fold;

  for (int i = 1; i < fold; i++)
    {
      double x = box->x + box->width * i / fold;

      tr_picture_add_line (turn->picture, x, box->y, x, box->y + box->height, TR_PEN_INNER, &turn->look->line);
      tr_picture_dash (turn->picture);
    }
}

/* What is cut from the ends of the folded block. */
static void
add_trim (Turn *turn)
{
  const TrBox *box = &turn->plans[2];
  double trim = turn->written->trim_mm * turn->scale;

  if (!(trim > 0))
    return;
  for (int end = 0; end < 2; end++)
    {
      TrBox strip = { end == 0 ? box->x - trim : box->x + box->width, box->y, trim, box->height };

      tr_picture_add_rect (turn->picture, &strip, tr_look_get_outside (turn->look, turn->figures->dough), TR_PEN_INNER, &turn->look->line);
      tr_picture_add_hatch (turn->picture, &strip, 0.42 * turn->em, &turn->look->line);
    }
}

static void
add_stage (Turn *turn,
           int   stage)
{
  const TrLook *look = turn->look;
  const TrBox *box = &turn->plans[stage];
  const TrSize *size = size_of (turn, stage);
  gboolean broken = stage == 1 && turn->turn->breaks != 0;
  g_autofree char *length = tr_words_length_number (turn->reader, size->mm[0]);
  g_autofree char *width = tr_words_length_number (turn->reader, size->mm[1]);
  g_autofree char *title = dup_title (turn, stage);
  g_autofree char *all = tr_words_size (turn->reader, size);
  g_autofree char *label = g_strdup_printf ("%s %s", title, all);

  tr_picture_add_rect (turn->picture, box, tr_look_get_outside (look, turn->figures->dough),
                       broken ? TR_PEN_HEAVY : TR_PEN_OUTLINE, broken ? &look->warning : &look->line);
  tr_picture_set_hit (turn->picture, TR_PART_OF_TURN, turn->index, label);
  tr_picture_add_dimension_h (turn->picture, box->x, box->x + box->width, box->y, box->y - 0.8 * turn->em, length);
  tr_picture_add_dimension_v (turn->picture, box->y, box->y + box->height, box->x, box->x - 0.8 * turn->em, width);
}

/* The way of the roller on the rolled sheet and, turned, on the folded block. */
static void
add_directions (Turn *turn)
{
  const TrLook *look = turn->look;
  const TrBox *rolled = &turn->plans[1], *folded = &turn->plans[2];
  double em = turn->em, y = rolled->y + rolled->height / 2, x = folded->x + folded->width / 2;
  double reach = MIN (rolled->width * 0.3, 6 * em);
  const char *text = turn->is_last ? _("next: the sheet") : _("next roll");

  tr_picture_add_arrow (turn->picture, rolled->x + rolled->width / 2 - reach, y, rolled->x + rolled->width / 2 + reach, y,
                        TRUE, &look->line);
  tr_picture_add_arrow (turn->picture, x, folded->y + folded->height * 0.9, x, folded->y + folded->height * 0.1, TRUE, &look->line);
  if (folded->width / 2 > tr_text_width (look, text, em, 400) * 0.2 + em && folded->height > tr_text_width (look, text, em, 400) + em)
    tr_picture_add_upward_text (turn->picture, text, em, 400, &look->line, x - 0.55 * em, folded->y + folded->height / 2, 0.5);
}

static void
add_arrow_between (Turn *turn,
                   int   stage)
{
  double y = turn->top + turn->plan_height / 2, em = turn->em;
  double x1 = turn->plans[stage].x + turn->plans[stage].width + 0.9 * em, x2 = turn->plans[stage + 1].x - 2.3 * em;

  if (stage == 1)
    {
      x1 += (column_mm (turn, 1) * turn->scale - turn->plans[1].width) / 2;
      x2 -= turn->written->trim_mm * turn->scale;
    }
  else
    {
      x2 -= MAX (0, (column_mm (turn, 1) * turn->scale - turn->plans[1].width) / 2 - 1.5 * em);
    }
  if (x2 - x1 > 0.8 * em)
    tr_picture_add_arrow (turn->picture, MAX (x1, x2 - 2.2 * em), y, x2, y, FALSE, &turn->look->dim);
}

static void
add_breaks (Turn *turn)
{
  const TrLook *look = turn->look;
  double x = 0, em = turn->em, baseline = turn->height - 0.4 * em;

  for (int i = 0; i < TR_N_BREAKS; i++)
    {
      g_autofree char *text = NULL, *shown = NULL;

      if (!(turn->turn->breaks & (1 << i)) || x > turn->width - 6 * em)
        continue;
      x += tr_picture_add_warning (turn->picture, x, baseline, em) + 0.4 * em;
      text = g_strdup (tr_words_break ((TrBreaks) (1 << i)));
      shown = tr_text_shorten (look, text, em, 700, turn->width - x);
      x += tr_picture_add_text (turn->picture, shown, em, 700, &look->warning, x, baseline, 0) + em;
    }
}

static void
describe (Turn *turn)
{
  g_autofree char *start = tr_words_size (turn->reader, &turn->turn->start_mm);
  g_autofree char *rolled = tr_words_size (turn->reader, &turn->turn->rolled_mm);
  g_autofree char *folded = tr_words_size (turn->reader, &turn->turn->folded_mm);
  g_autofree char *fold = tr_words_fold (turn->written->fold);
  g_autofree char *fat = tr_words_count (turn->reader, turn->turn->fat_layers);

  tr_picture_describe (turn->picture, _("Turn %d: from %s roll to %s, %s to %s; then %s fat layers."),
                       turn->index + 1, start, rolled, fold, folded, fat);
  if (turn->turn->trimmed_g > 0)
    {
      g_autofree char *trim = tr_words_length (turn->reader, turn->written->trim_mm);
      g_autofree char *mass = tr_words_mass (turn->reader, turn->turn->trimmed_g);

      tr_picture_describe (turn->picture, _("Trim %s from both ends of the folded block, %s."), trim, mass);
    }
  tr_picture_describe (turn->picture, turn->is_last ? _("Turn a quarter before rolling the sheet.")
                                                    : _("Turn a quarter before the next roll-out."));
  for (int i = 0; i < TR_N_BREAKS; i++)
    if (turn->turn->breaks & (1 << i))
      tr_picture_describe (turn->picture, _("The rolled sheet is %s."), tr_words_break ((TrBreaks) (1 << i)));
}

static gboolean
is_drawable (const TrTurnFigures *turn)
{
  for (int i = 0; i < 3; i++)
    if (!(turn->start_mm.mm[i] > 0) || !(turn->rolled_mm.mm[i] > 0) || !(turn->folded_mm.mm[i] > 0))
      return FALSE;
  return TRUE;
}

static void
add_nothing (Turn *turn)
{
  const char *text = _("The sizes of this turn are not known.");
  g_autofree char *fitting = tr_text_shorten (turn->look, text, turn->em, 400, turn->width);

  tr_picture_add_text (turn->picture, fitting, turn->em, 400, &turn->look->dim, turn->width / 2, turn->height / 2, 0.5);
  tr_picture_describe (turn->picture, "%s", text);
}

static void
draw_turn (Turn *turn)
{
  plan (turn);
  add_worktop (turn);
  for (int i = 0; i < 3; i++)
    {
      add_title (turn, i);
      add_stage (turn, i);
      add_side (turn, i);
    }
  add_folds (turn);
  add_trim (turn);
  add_directions (turn);
  add_arrow_between (turn, 0);
  add_arrow_between (turn, 1);
  add_breaks (turn);
  tr_picture_tuck_in (turn->picture);
  describe (turn);
}

TrPicture *
tr_turn_picture_new (const TrDoughFigures *figures,
                     guint                 index,
                     const TrReader       *reader,
                     const TrLook         *look,
                     double                width,
                     double                height)
{
  Turn turn = { .figures = figures, .index = (int) index, .reader = reader, .look = look,
                .picture = tr_picture_new (look, reader, width, height), .em = look->text_size,
                .width = width, .height = height };
  const GArray *steps = figures->has_lamination ? figures->lamination.steps : NULL;

  if (steps != NULL && index < steps->len && index < figures->dough->turns->len)
    {
      turn.turn = &g_array_index (steps, TrTurnFigures, index);
      turn.written = tr_dough_get_turn (figures->dough, index);
      turn.is_last = index + 1 == figures->dough->turns->len;
    }
  if (turn.turn == NULL || !is_drawable (turn.turn))
    add_nothing (&turn);
  else
    draw_turn (&turn);
  return turn.picture;
}
