/* sequence.c: the whole sequence as a strip, to one scale
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Draws what sequence-groups.c has laid out. Everything is drawn from left to
 * right; a strip that reads the other way is turned over at the end, so that
 * what is drawn and what is hit still agree.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "sequence-groups.h"

/* In ems from the top of a row. */
#define TITLE_AT 1.0
#define WORKTOP_AT 1.5
#define SMALL 0.9

typedef struct {
  TrSequence sequence;
  TrSequencePlan plan;
  const TrSequenceMarks *marks;
  TrPicture *picture;
  const TrLook *look;
  double em, across;             /* across: the height of the worktop's piece */
  gboolean can_edit;
} Strip;

static double
middle_of (const Strip           *strip,
           const TrSequenceGroup *group)
{
  return group->top + WORKTOP_AT * strip->em + strip->across / 2;
}

static gboolean
is_selected (const Strip           *strip,
             const TrSequenceGroup *group)
{
  const TrHit *selected = &strip->marks->selected;

  return !strip->look->is_still && selected->part == group->hit.part && selected->index == group->hit.index;
}

/* ---- one drawing ---- */

static TrColour
mix (const TrColour *one,
     const TrColour *other,
     double          share)
{
  return (TrColour) { one->r + (other->r - one->r) * share, one->g + (other->g - one->g) * share, one->b + (other->b - one->b) * share };
}

/* Its true length as far as the column reaches; of its width as much as all rows show. */
static void
add_worktop (Strip                  *strip,
             const TrSequenceGroup  *group,
             const TrSequenceColumn *column)
{
  const double *worktop = strip->sequence.figures->bench->worktop_mm;
  double width = MIN (column->width, column->worktop_mm * strip->plan.scale);
  double other = column->worktop_mm < worktop[0] ? worktop[0] : worktop[1];
  double height = MIN (strip->across, other * strip->plan.scale);
  TrColour edge = mix (&strip->look->worktop, &strip->look->dim, 0.3);
  TrBox box = { column->x, middle_of (strip, group) - height / 2, width, height };
  g_autofree char *size = tr_words_area_size (strip->sequence.reader, worktop[0], worktop[1]);
  g_autofree char *label = g_strdup_printf (_("Worktop %s"), size);

  tr_picture_add_rect (strip->picture, &box, &strip->look->worktop, TR_PEN_HAIR, &edge);
  tr_picture_set_hit (strip->picture, TR_PART_OF_WORKTOP, (int) (group - strip->sequence.groups), label);
}

static TrBox
box_of (const Strip            *strip,
        const TrSequenceGroup  *group,
        const TrSequenceColumn *column)
{
  double width = column->size.mm[0] * strip->plan.scale, height = column->size.mm[1] * strip->plan.scale;

  return (TrBox) { column->x, middle_of (strip, group) - height / 2, width, height };
}

/* The fat lies inside the closed block: the dough is cut away over half of it. */
static void
add_fat (Strip       *strip,
         const TrBox *block)
{
  const TrDoughFigures *figures = strip->sequence.figures;
  double rim = figures->dough->lock_in->rim_mm * strip->plan.scale;
  double share = figures->lamination.lock_in.rim_share;
  double height = block->height - 2 * rim, width;

  if (figures->dough->lock_in->style == TR_STYLE_INVERSE || !(height > 0) || !(share >= 0 && share < 1))
    return;
  width = MIN (block->width, block->width * block->height * (1 - share) / height);
  TrBox fat = { block->x + (block->width - width) / 2, block->y + rim, width, height };

  tr_picture_add_rect (strip->picture, &(TrBox) { fat.x, fat.y, fat.width / 2, fat.height }, &strip->look->fat, TR_PEN_INNER, &strip->look->line);
  tr_picture_add_rect (strip->picture, &fat, NULL, TR_PEN_INNER, &strip->look->line);
  tr_picture_dash (strip->picture);
}

/* Where it will be folded, and which way it is rolled. */
static void
add_rolling (Strip       *strip,
             const TrBox *box,
             int          fold)
{
  double em = strip->em, y = box->y + box->height / 2, reach = MIN (box->width * 0.32, 2.4 * em);

  for (int i = 1; i < fold; i++)
    {
      double x = box->x + box->width * i / fold;

      tr_picture_add_line (strip->picture, x, box->y, x, box->y + box->height, TR_PEN_HAIR, &strip->look->inner_line);
      tr_picture_dash (strip->picture);
    }
  if (box->width > 2 * em && box->height > 0.8 * em)
    tr_picture_add_arrow (strip->picture, box->x + box->width / 2 - reach, y, box->x + box->width / 2 + reach, y, TRUE, &strip->look->line);
}

/* The layers lie on each other; their edges show along the front. */
static void
add_folded_edge (Strip       *strip,
                 const TrBox *box,
                 int          fold)
{
  double step = MIN (0.24 * strip->em, box->height * 0.6 / fold), inset = MIN (0.15 * strip->em, box->width * 0.1);

  for (int i = 1; i < fold; i++)
    {
      double y = box->y + box->height - i * step;

      tr_picture_add_line (strip->picture, box->x + inset, y, box->x + box->width - inset, y, TR_PEN_INNER, &strip->look->line);
    }
}

/* The far edge, which can be pulled. */
static void
add_edge (Strip       *strip,
          const TrBox *box,
          guint        turn)
{
  double em = strip->em, right = box->x + box->width, y = box->y + box->height / 2, half = MIN (0.7 * em, box->height * 0.4);
  TrBox grip = { right - 0.16 * em, y - half, 0.32 * em, 2 * half };
  TrBox around = { right - 0.4 * em, box->y - 0.2 * em, 1.0 * em, box->height + 0.4 * em };

  tr_picture_add_rect (strip->picture, &grip, &strip->look->accent, TR_PEN_HAIR, &strip->look->paper);
  tr_picture_add_rect (strip->picture, &around, NULL, TR_PEN_NONE, NULL);
  tr_picture_set_hit (strip->picture, TR_PART_OF_EDGE, (int) turn, _("Drag to roll it longer and thinner, or shorter and thicker"));
}

static char *
dup_label (const Strip            *strip,
           const TrSequenceGroup  *group,
           const TrSequenceColumn *column)
{
  const TrDoughFigures *figures = strip->sequence.figures;
  guint turn = (guint) MAX (0, column->hit.index);

  if (!tr_size_is_drawable (&column->size))
    return g_strdup (column->title);

  g_autofree char *size = tr_words_size (strip->sequence.reader, &column->size);
  g_autofree char *faults = tr_sequence_group_dup_faults (group);

  if (column->hit.part == TR_PART_OF_FOLD)
    {
      const TrTurnFigures *step = &g_array_index (figures->lamination.steps, TrTurnFigures, turn);
      g_autofree char *fold = tr_words_fold (tr_dough_get_turn (figures->dough, turn)->fold);
      g_autofree char *fat = tr_words_count (strip->sequence.reader, step->fat_layers);

      return g_strdup_printf (_("Turn %u, %s: %s, then %s fat layers"), turn + 1, fold, size, fat);
    }
  if (faults != NULL)
    return g_strdup_printf (_("%s: %s; %s"), column->title, size, faults);

  return g_strdup_printf (_("%s: %s"), column->title, size);
}

static void
add_unknown (Strip                  *strip,
             const TrSequenceGroup  *group,
             const TrSequenceColumn *column)
{
  double height = MIN (strip->across, 2 * strip->em);
  TrBox box = { column->x, middle_of (strip, group) - height / 2, MIN (column->width, 2.4 * strip->em), height };

  tr_picture_add_rect (strip->picture, &box, NULL, TR_PEN_INNER, &strip->look->dim);
  tr_picture_dash (strip->picture);
  tr_picture_set_hit (strip->picture, column->hit.part, column->hit.index, column->title);
}

static void
add_shape (Strip                  *strip,
           const TrSequenceGroup  *group,
           const TrSequenceColumn *column)
{
  TrBox box = box_of (strip, group, column);
  const TrDough *dough = strip->sequence.figures->dough;
  gboolean is_broken = group->faults != NULL && column->hit.part != TR_PART_OF_FOLD;
  g_autofree char *label = dup_label (strip, group, column);

  tr_picture_add_rect (strip->picture, &box, tr_look_get_outside (strip->look, dough), is_broken ? TR_PEN_HEAVY : TR_PEN_OUTLINE,
                       is_broken ? &strip->look->warning : &strip->look->line);
  tr_picture_set_hit (strip->picture, column->hit.part, column->hit.index, label);
  if (column->hit.part == TR_PART_OF_LOCK_IN)
    add_fat (strip, &box);
  if (column->hit.part == TR_PART_OF_FOLD)
    add_folded_edge (strip, &box, tr_dough_get_turn (dough, (guint) column->hit.index)->fold);
  if (column->hit.part != TR_PART_OF_ROLL)
    return;
  add_rolling (strip, &box, tr_dough_get_turn (dough, (guint) column->hit.index)->fold);
  if (strip->can_edit)
    add_edge (strip, &box, (guint) column->hit.index);
}

static void
add_column (Strip                  *strip,
            const TrSequenceGroup  *group,
            const TrSequenceColumn *column)
{
  const TrLook *look = strip->look;
  double em = strip->em, top = group->top, below = top + WORKTOP_AT * em + strip->across;
  gboolean is_fold = column->hit.part == TR_PART_OF_FOLD;

  tr_picture_add_text (strip->picture, column->title, em, is_selected (strip, group) ? 700 : 400,
                       is_fold ? &look->accent : &look->text, column->x, top + TITLE_AT * em, 0);
  add_worktop (strip, group, column);
  if (tr_size_is_drawable (&column->size))
    add_shape (strip, group, column);
  else
    add_unknown (strip, group, column);
  if (column->plan != NULL)
    tr_picture_add_text (strip->picture, column->plan, em, 400, &look->text, column->x, below + 1.2 * em, 0);
  if (column->thick != NULL)
    tr_picture_add_text (strip->picture, column->thick, em, 400, &look->dim, column->x, below + 2.4 * em, 0);
}

/* ---- one group ---- */

static void
add_faults (Strip                 *strip,
            const TrSequenceGroup *group)
{
  const TrSequenceGroup *next = group + 1 < strip->sequence.groups + strip->sequence.n_groups ? group + 1 : NULL;
  double em = strip->em, size = SMALL * em, baseline = group->top + (WORKTOP_AT + 3.9) * em + strip->across;
  g_autofree char *faults = tr_sequence_group_dup_faults (group);
  double width, room, x;

  tr_picture_get_size (strip->picture, &width, NULL);
  room = MAX (group->width, 9 * em);
  if (next != NULL && next->n_columns > 0 && next->x > group->x)
    room = MIN (room, next->x - group->x - 0.5 * em);
  room = MIN (room, width);
  x = MIN (group->x, width - room);
  x += tr_picture_add_warning (strip->picture, x, baseline, size) + 0.3 * em;
  g_auto (GStrv) lines = tr_text_wrap (strip->look, faults, size, 700, room - 1.3 * em, tr_sequence_group_count_lines (group));

  for (guint i = 0; lines[i] != NULL; i++)
    tr_picture_add_text (strip->picture, lines[i], size, 700, &strip->look->warning, x, baseline + i * 1.1 * em, 0);
}

/* All of a turn in a few words: it is what is said when it is chosen. */
static char *
dup_ground_label (const Strip           *strip,
                  const TrSequenceGroup *group)
{
  g_autofree char *first = dup_label (strip, group, &group->columns[0]), *second = NULL;

  if (group->n_columns < 2)
    return g_steal_pointer (&first);
  second = dup_label (strip, group, &group->columns[1]);

  return g_strdup_printf ("%s; %s", first, second);
}

/* Under all of it, so that its words are hit as well. */
static void
add_ground (Strip                 *strip,
            const TrSequenceGroup *group)
{
  double em = strip->em, pad = 0.35 * em, top = group->top;
  double height = group->height - 0.5 * em;
  TrBox box = { group->x - pad, top + 0.05 * em, group->width + 2 * pad, height };
  g_autofree char *label = dup_ground_label (strip, group);

  tr_picture_add_rect (strip->picture, &box, NULL, TR_PEN_NONE, NULL);
  tr_picture_set_hit (strip->picture, group->hit.part, group->hit.index, label);
  if (is_selected (strip, group))
    tr_picture_add_rect (strip->picture, &(TrBox) { box.x + pad, top + (WORKTOP_AT + 2.75) * em + strip->across, group->width, 0.22 * em },
                         &strip->look->accent, TR_PEN_NONE, NULL);
}

/* A quarter of a circle with a head: the block is turned before it is rolled on. */
static void
add_quarter_turn (Strip  *strip,
                  double  x,
                  double  y)
{
  const TrColour *colour = &strip->look->dim;
  double em = strip->em, radius = 0.8 * em, from = -0.85 * G_PI, step = 0.5 * G_PI / 6;
  double end_x = x + radius * cos (from + 6 * step), end_y = y + radius * sin (from + 6 * step);
  double head[] = { end_x + 0.34 * em, end_y + 0.3 * em, end_x - 0.24 * em, end_y + 0.2 * em, end_x + 0.2 * em, end_y - 0.26 * em };

  for (int i = 0; i < 6; i++)
    tr_picture_add_line (strip->picture, x + radius * cos (from + i * step), y + radius * sin (from + i * step),
                         x + radius * cos (from + (i + 1) * step), y + radius * sin (from + (i + 1) * step), TR_PEN_INNER, colour);
  tr_picture_add_polygon (strip->picture, head, 3, colour, TR_PEN_NONE, NULL);
}

/* Where a turn can be put in. */
static void
add_place (Strip  *strip,
           double  x,
           double  y,
           int     at)
{
  double radius = 0.62 * strip->em, reach = 0.34 * strip->em;
  const TrColour *accent = &strip->look->accent;
  g_autofree char *label = g_strdup_printf (_("Add a turn here, as turn %d"), at + 1);

  tr_picture_add_circle (strip->picture, x, y, radius, &strip->look->paper, TR_PEN_INNER, accent);
  tr_picture_add_line (strip->picture, x - reach, y, x + reach, y, TR_PEN_OUTLINE, accent);
  tr_picture_add_line (strip->picture, x, y - reach, x, y + reach, TR_PEN_OUTLINE, accent);
  tr_picture_add_circle (strip->picture, x, y, 1.5 * radius, NULL, TR_PEN_NONE, NULL);
  tr_picture_set_hit (strip->picture, TR_PART_OF_ADD, at, label);
}

static void
add_drop_place (Strip  *strip,
                double  x,
                double  top)
{
  double em = strip->em;
  TrBox bar = { x - 0.16 * em, top + 0.2 * em, 0.32 * em, (WORKTOP_AT + 2.4) * em + strip->across };

  tr_picture_add_rect (strip->picture, &bar, &strip->look->accent, TR_PEN_NONE, NULL);
}

/* The arrow before a group, the quarter turn, the rest, the place for a turn. */
static void
add_gap (Strip *strip,
         guint  i)
{
  const TrSequenceGroup *group = &strip->sequence.groups[i];
  double em = strip->em, middle = middle_of (strip, group), top = group->top, x = group->x - group->gap / 2;
  double below = top + WORKTOP_AT * em + strip->across, arrow = middle + (group->after_turn ? 0.3 * em : 0);
  gboolean can_add = strip->can_edit && strip->sequence.figures->dough->turns->len < TR_MAX_TURNS;

  if (group->n_columns > 0)
    tr_picture_add_arrow (strip->picture, x - 0.7 * em, arrow, x + 0.7 * em, arrow, FALSE, &strip->look->dim);
  if (group->after_turn && group->n_columns > 0)
    add_quarter_turn (strip, x, middle - 0.25 * em);
  if (group->rest != NULL)
    {
      const TrColour *colour = group->is_rest_short ? &strip->look->warning : &strip->look->dim;

      tr_picture_add_text (strip->picture, _("rest"), SMALL * em, 400, colour, x, below + 1.2 * em, 0.5);
      tr_picture_add_text (strip->picture, group->rest, SMALL * em, group->is_rest_short ? 700 : 400, colour, x, below + 2.4 * em, 0.5);
    }
  if (can_add && strip->marks->drop_at < 0)
    add_place (strip, x, top + TITLE_AT * em - 0.3 * em, (int) i - 1);
  if (strip->marks->drop_at == (int) i - 1)
    add_drop_place (strip, group->x - 0.45 * em, top);
}

static void
add_group (Strip *strip,
           guint  i)
{
  const TrSequenceGroup *group = &strip->sequence.groups[i];

  if (group->n_columns > 0)
    add_ground (strip, group);
  for (guint c = 0; c < group->n_columns; c++)
    add_column (strip, group, &group->columns[c]);
  if (group->n_columns > 1)
    {
      double x = group->columns[1].x - TR_SEQUENCE_INNER_GAP * strip->em / 2, y = middle_of (strip, group);

      tr_picture_add_arrow (strip->picture, x - 0.45 * strip->em, y, x + 0.5 * strip->em, y, FALSE, &strip->look->dim);
    }
  if (group->faults != NULL || group->timing != NULL)
    add_faults (strip, group);
}

/* ---- in words ---- */

static void
describe_turn (Strip *strip,
               guint  turn)
{
  const TrSequenceGroup *group = &strip->sequence.groups[turn + 1];
  const TrTurn *written = tr_dough_get_turn (strip->sequence.figures->dough, turn);
  g_autofree char *fold = tr_words_fold (written->fold);

  if (tr_size_is_drawable (&group->columns[0].size) && tr_size_is_drawable (&group->columns[1].size))
    {
      g_autofree char *rolled = tr_words_size (strip->sequence.reader, &group->columns[0].size);
      g_autofree char *folded = tr_words_size (strip->sequence.reader, &group->columns[1].size);

      tr_picture_describe (strip->picture, _("Turn %u: roll to %s, %s to %s."), turn + 1, rolled, fold, folded);
    }
  else
    {
      tr_picture_describe (strip->picture, _("Turn %u: %s; its sizes are not known."), turn + 1, fold);
    }
  if (group->faults != NULL)
    tr_picture_describe (strip->picture, _("The rolled sheet is %s."), group->faults);
  if (strip->sequence.groups[turn + 2].rest != NULL)
    tr_picture_describe (strip->picture, _("Rest %s."), strip->sequence.groups[turn + 2].rest);
}

static void
describe_timing (Strip                 *strip,
                 const TrSequenceGroup *group)
{
  if (group->timing == NULL)
    return;
  if (group->n_columns > 0)
    tr_picture_describe (strip->picture, _("%s: %s."), group->columns[0].title, group->timing);
  else
    tr_picture_describe (strip->picture, _("After the last turn: %s."), group->timing);
}

static void
describe (Strip *strip)
{
  const TrSequence *sequence = &strip->sequence;
  const TrSequenceGroup *last = &sequence->groups[sequence->n_groups - 1];

  for (guint i = 0; i < sequence->n_groups; i++)
    {
      const TrSequenceGroup *group = &sequence->groups[i];

      if (group->hit.part == TR_PART_OF_TURN)
        {
          describe_turn (strip, i - 1);
          continue;
        }
      if (group->n_columns == 0 || !tr_size_is_drawable (&group->columns[0].size))
        continue;

      g_autofree char *size = tr_words_size (sequence->reader, &group->columns[0].size);

      tr_picture_describe (strip->picture, _("%s: %s."), group->columns[0].title, size);
    }
  if (sequence->figures->dough->lock_in == NULL)
    tr_picture_describe (strip->picture, _("There is no lock-in."));
  if (last->faults != NULL)
    tr_picture_describe (strip->picture, _("The rolled sheet is %s."), last->faults);
  for (guint i = 0; i < sequence->n_groups; i++)
    describe_timing (strip, &sequence->groups[i]);
}

void
tr_sequence_plan (const TrDoughFigures  *figures,
                  const TrSequenceMarks *marks,
                  const TrReader        *reader,
                  const TrLook          *look,
                  double                 width,
                  TrSequencePlan        *plan)
{
  TrSequence sequence;

  tr_sequence_init (&sequence, figures, reader, look, width);
  tr_sequence_find_plan (&sequence, width, 0, marks->held, plan);
  tr_sequence_clear (&sequence);
}

TrPicture *
tr_sequence_picture_new (const TrDoughFigures  *figures,
                         const TrSequenceMarks *marks,
                         const TrReader        *reader,
                         const TrLook          *look,
                         double                 width,
                         double                 height)
{
  Strip strip = { .marks = marks, .look = look, .picture = tr_picture_new (look, reader, width, height) };

  tr_sequence_init (&strip.sequence, figures, reader, look, width);
  strip.em = strip.sequence.em;
  strip.can_edit = marks->can_edit && !look->is_still;
  tr_sequence_find_plan (&strip.sequence, width, height, marks->held, &strip.plan);
  tr_sequence_lay_out (&strip.sequence, &strip.plan);
  strip.across = strip.sequence.across_mm * strip.plan.scale;
  for (guint i = 0; i < strip.sequence.n_groups; i++)
    add_group (&strip, i);
  for (guint i = 1; i < strip.sequence.n_groups; i++)
    add_gap (&strip, i);
  describe (&strip);
  tr_sequence_clear (&strip.sequence);
  if (marks->is_mirrored)
    tr_picture_mirror (strip.picture);
  return strip.picture;
}
