/* sequence-groups.c: what stands in the strip, and where
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The scale is the greatest between "the shapes can just be told apart" and
 * "no need to be larger" at which the strip has as few rows as it has at the
 * smallest. A column is as wide as its drawing or its words, whichever is
 * wider, so more words than room means more rows, never smaller words.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../calc/lamination.h"
#include "../calc/measure.h"
#include "sequence-groups.h"

/* How high a row's piece of worktop is drawn, in ems. */
#define LEAST_ACROSS 2.9
#define MOST_ACROSS 5.2
#define MOST_ACROSS_IN_ROWS 4.0
/* The worktop's share of a column, in lengths of what lies on it. */
#define MOST_WORKTOP 1.4
#define MORE_ACROSS 1.15

gboolean
tr_size_is_drawable (const TrSize *size)
{
  return size->mm[0] > 0 && size->mm[1] > 0 && size->mm[2] > 0 &&
         isfinite (size->mm[0]) && isfinite (size->mm[1]) && isfinite (size->mm[2]);
}

/* ---- making ---- */

static void
measure_column (const TrSequence *self,
                TrSequenceColumn *column)
{
  double em = self->em;

  column->text_width = tr_text_width (self->look, column->title, em, 700);
  if (column->plan != NULL)
    column->text_width = MAX (column->text_width, tr_text_width (self->look, column->plan, em, 400));
  if (column->thick != NULL)
    column->text_width = MAX (column->text_width, tr_text_width (self->look, column->thick, em, 400));
  column->text_width = MAX (column->text_width, 2.4 * em);
}

/* Takes `title`. `length` of the worktop is only for what is rolled out. */
static void
add_column (TrSequence      *self,
            TrSequenceGroup *group,
            TrHit            hit,
            const TrSize    *size,
            gboolean         is_rolled,
            char            *title)
{
  TrSequenceColumn *column = &group->columns[group->n_columns++];
  const double *worktop = self->figures->bench->worktop_mm;

  *column = (TrSequenceColumn) { .hit = hit, .title = title, .worktop_mm = worktop[0] };
  if (size != NULL && tr_size_is_drawable (size))
    {
      g_autofree char *length = tr_words_length_number (self->reader, size->mm[0]);
      g_autofree char *width = tr_words_length_number (self->reader, size->mm[1]);

      column->size = *size;
      column->plan = g_strdup_printf ("%s × %s", length, width);
      column->thick = tr_words_length (self->reader, size->mm[2]);
      /* Without rollers the sheet may lie either way. */
      if (size->mm[0] > worktop[0] && group->faults == NULL && size->mm[0] <= worktop[1])
        column->worktop_mm = worktop[1];
      column->length_mm = is_rolled ? MAX (size->mm[0], MIN (column->worktop_mm, MOST_WORKTOP * size->mm[0])) : size->mm[0];
      self->across_mm = MAX (self->across_mm, size->mm[1]);
    }
  else
    {
      column->size = (TrSize) { { NAN, NAN, NAN } };
    }
  measure_column (self, column);
}

static TrSequenceGroup *
add_group (TrSequence    *self,
           TrPicturePart  part,
           int            index)
{
  TrSequenceGroup *group = &self->groups[self->n_groups++];

  *group = (TrSequenceGroup) { .hit = { part, index } };
  return group;
}

static const TrTurnFigures *
get_step (const TrSequence *self,
          guint             turn)
{
  const GArray *steps = self->figures->has_lamination ? self->figures->lamination.steps : NULL;

  return steps != NULL && turn < steps->len ? &g_array_index (steps, TrTurnFigures, turn) : NULL;
}

static char *
dup_faults (TrBreaks breaks,
            gboolean is_thicker)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < TR_N_BREAKS; i++)
    if ((breaks & (1u << i)) != 0)
      g_string_append_printf (text, "%s%s", text->len > 0 ? "; " : "", tr_words_break ((TrBreaks) (1u << i)));
  if (is_thicker)
    g_string_append_printf (text, "%s%s", text->len > 0 ? "; " : "", _("thicker than its block"));

  return text->len > 0 ? g_string_free (g_steal_pointer (&text), FALSE) : NULL;
}

static void
add_lock_in (TrSequence *self)
{
  TrSequenceGroup *group = add_group (self, TR_PART_OF_LOCK_IN, 0);
  const TrSize *size = self->figures->has_lamination ? &self->figures->lamination.lock_in.block_mm : NULL;

  add_column (self, group, group->hit, size, FALSE, g_strdup (_("Lock-in")));
  if (self->figures->dough->lock_in == NULL)
    {
      group->columns[0].plan = g_strdup (_("no lock-in"));
      measure_column (self, &group->columns[0]);
    }
}

static void
add_turn (TrSequence *self,
          guint       turn)
{
  TrSequenceGroup *group = add_group (self, TR_PART_OF_TURN, (int) turn);
  const TrTurn *written = tr_dough_get_turn (self->figures->dough, turn);
  const TrTurnFigures *step = get_step (self, turn);

  if (step != NULL)
    group->faults = dup_faults (step->breaks, step->rolled_mm.mm[2] > step->start_mm.mm[2] * (1 + TR_HAIR));
  add_column (self, group, (TrHit) { TR_PART_OF_ROLL, (int) turn }, step != NULL ? &step->rolled_mm : NULL, TRUE,
              g_strdup_printf (_("Roll %u"), turn + 1));
  add_column (self, group, (TrHit) { TR_PART_OF_FOLD, (int) turn }, step != NULL ? &step->folded_mm : NULL, FALSE,
              g_strdup_printf (_("Fold %d"), written->fold));
}

static char *
dup_sheet_faults (const TrDoughFigures *figures)
{
  gboolean is_thicker = figures->has_lamination &&
                        figures->sheet.rolled_mm.mm[2] > tr_lamination_last_block (&figures->lamination).mm[2] * (1 + TR_HAIR);

  return dup_faults (figures->sheet.breaks, is_thicker);
}

static void
add_sheet (TrSequence *self)
{
  const TrDoughFigures *figures = self->figures;

  if (!figures->has_sheet)
    {
      add_group (self, TR_PART_OF_NOTHING, 0);
      return;
    }

  TrSequenceGroup *group = add_group (self, TR_PART_OF_SHEET, 0);
  const TrSize *rolled = &figures->sheet.rolled_mm;
  int sheets = figures->sheet.sheets;
  /* It may lie either way round. */
  TrSize along = { { MAX (rolled->mm[0], rolled->mm[1]), MIN (rolled->mm[0], rolled->mm[1]), rolled->mm[2] } };

  group->faults = dup_sheet_faults (figures);
  add_column (self, group, group->hit, &along, TRUE,
              sheets > 1 ? g_strdup_printf (ngettext ("%d sheet", "%d sheets", (gulong) sheets), sheets) : g_strdup (_("Sheet")));
}

static void
set_gap (TrSequence *self,
         guint       i)
{
  TrSequenceGroup *group = &self->groups[i];
  const TrTurn *before = i >= 2 ? tr_dough_get_turn (self->figures->dough, i - 2) : NULL;

  group->after_turn = before != NULL;
  if (before != NULL && before->rest != NULL && before->rest->min_minutes > 0)
    group->rest = tr_words_minutes (self->reader, before->rest->min_minutes);
  group->gap = i == 0 ? 0 : 2.6 * self->em;
  if (group->rest != NULL)
    group->gap = MAX (group->gap, MAX (tr_text_width (self->look, group->rest, 0.9 * self->em, 400),
                                       tr_text_width (self->look, _("rest"), 0.9 * self->em, 400)) + 1.3 * self->em);
}

/* Takes `words`. */
static void
add_timing (TrSequenceGroup *group,
            char            *words)
{
  g_autofree char *before = group->timing, *added = words;

  group->timing = before != NULL ? g_strdup_printf ("%s; %s", before, added) : g_steal_pointer (&added);
}

/* A rest is drawn before the group that follows it; the chill before lock-in is not drawn. */
static void
add_rest_short (TrSequence      *self,
                const TrFinding *finding)
{
  guint after = (guint) finding->with[0], group = after == 0 ? 0 : after + 1;

  if (group >= self->n_groups)
    return;
  self->groups[group].is_rest_short = TRUE;
  add_timing (&self->groups[group], g_strdup (after == 0 ? _("chill too short") : _("rest too short")));
}

static void
add_window_short (TrSequence      *self,
                  const TrFinding *finding)
{
  guint turn = (guint) finding->with[0], group = turn == 0 ? self->n_groups - 1 : turn;
  g_autofree char *window = tr_words_minutes (self->reader, floor (finding->value));

  if (group < self->n_groups)
    add_timing (&self->groups[group], g_strdup_printf (_("fat soft after %s"), window));
}

static void
set_timings (TrSequence *self)
{
  const GPtrArray *findings = self->figures->findings;

  for (guint i = 0; findings != NULL && i < findings->len; i++)
    {
      const TrFinding *finding = g_ptr_array_index (findings, i);

      if (finding->id == TR_FINDING_REST_SHORT)
        add_rest_short (self, finding);
      else if (finding->id == TR_FINDING_WINDOW_SHORT)
        add_window_short (self, finding);
    }
}

char *
tr_sequence_group_dup_faults (const TrSequenceGroup *group)
{
  if (group->faults != NULL && group->timing != NULL)
    return g_strdup_printf ("%s; %s", group->faults, group->timing);

  return g_strdup (group->faults != NULL ? group->faults : group->timing);
}

guint
tr_sequence_group_count_lines (const TrSequenceGroup *group)
{
  return (group->faults != NULL ? 2u : 0u) + (group->timing != NULL ? 2u : 0u);
}

static double
column_width (const TrSequenceColumn *column,
              double                  scale)
{
  return MAX (column->text_width, column->length_mm * scale);
}

static double
group_width (const TrSequence      *self,
             const TrSequenceGroup *group,
             double                 scale)
{
  double width = group->n_columns > 1 ? TR_SEQUENCE_INNER_GAP * self->em : 0;

  for (guint c = 0; c < group->n_columns; c++)
    width += column_width (&group->columns[c], scale);
  return width;
}

static void
shrink_words (TrSequence *self,
              double      width)
{
  double widest = 0, factor;

  for (guint i = 0; i < self->n_groups; i++)
    widest = MAX (widest, self->groups[i].gap + group_width (self, &self->groups[i], 0));
  factor = MIN (1, width / MAX (1, widest));
  self->em *= factor;
  for (guint i = 0; i < self->n_groups; i++)
    {
      self->groups[i].gap *= factor;
      for (guint c = 0; c < self->groups[i].n_columns; c++)
        self->groups[i].columns[c].text_width *= factor;
    }
}

void
tr_sequence_init (TrSequence           *self,
                  const TrDoughFigures *figures,
                  const TrReader       *reader,
                  const TrLook         *look,
                  double                width)
{
  *self = (TrSequence) { .figures = figures, .reader = reader, .look = look, .em = look->text_size };

  add_lock_in (self);
  for (guint i = 0; i < figures->dough->turns->len && i < TR_MAX_TURNS; i++)
    add_turn (self, i);
  add_sheet (self);
  for (guint i = 0; i < self->n_groups; i++)
    set_gap (self, i);
  set_timings (self);
  shrink_words (self, width * 0.999);
  if (!(self->across_mm > 0))
    self->across_mm = 250;
  self->across_mm = MAX (self->across_mm, MIN (figures->bench->worktop_mm[1], MORE_ACROSS * self->across_mm));
}

void
tr_sequence_clear (TrSequence *self)
{
  for (guint i = 0; i < self->n_groups; i++)
    {
      TrSequenceGroup *group = &self->groups[i];

      for (guint c = 0; c < group->n_columns; c++)
        {
          g_free (group->columns[c].title);
          g_free (group->columns[c].plan);
          g_free (group->columns[c].thick);
        }
      g_free (group->rest);
      g_free (group->faults);
      g_free (group->timing);
    }
  self->n_groups = 0;
}

/* ---- laying out ---- */

static gboolean
is_start (guint32 starts,
          guint   group)
{
  return (starts >> group & 1) != 0;
}

/* Rows at that scale, at most G_MAXUINT when one group alone is too wide. */
static guint
count_rows (const TrSequence *self,
            double            width,
            double            scale,
            guint32          *starts)
{
  guint rows = 1;
  double x = 0;

  *starts = 1;
  for (guint i = 0; i < self->n_groups; i++)
    {
      double wide = self->groups[i].gap + group_width (self, &self->groups[i], scale);

      if (wide > width)
        return G_MAXUINT;
      if (x + wide > width)
        {
          x = 0;
          rows++;
          *starts |= 1u << i;
        }
      x += wide;
    }
  return rows;
}

/* The widest row when the rows are given. */
static double
widest_row (const TrSequence *self,
            guint32           starts,
            double            scale)
{
  double x = 0, widest = 0;

  for (guint i = 0; i < self->n_groups; i++)
    {
      if (is_start (starts, i))
        x = 0;
      x += self->groups[i].gap + group_width (self, &self->groups[i], scale);
      widest = MAX (widest, x);
    }
  return widest;
}

/* The row that starts with group `first`; `next` becomes the start of the one after it. */
static double
get_row_height (const TrSequence     *self,
                const TrSequencePlan *plan,
                guint                 first,
                guint                *next)
{
  guint i = first, lines = 0;

  do
    lines = MAX (lines, tr_sequence_group_count_lines (&self->groups[i]));
  while (++i < self->n_groups && !is_start (plan->starts, i));
  *next = i;

  return self->across_mm * plan->scale + (lines > 0 ? 5.4 + 1.1 * lines : 5.2) * self->em;
}

static double
get_height (const TrSequence     *self,
            const TrSequencePlan *plan)
{
  double height = 0;

  for (guint i = 0; i < self->n_groups;)
    height += get_row_height (self, plan, i, &i);
  return height;
}

/* The greatest scale from `low` to `high` with no more than `rows`; `low` has them. */
static double
widen (const TrSequence *self,
       double            width,
       double            low,
       double            high,
       guint             rows)
{
  guint32 starts;

  if (count_rows (self, width, high, &starts) <= rows)
    return high;
  for (int i = 0; i < 16; i++)
    {
      double middle = (low + high) / 2;

      if (count_rows (self, width, middle, &starts) <= rows)
        low = middle;
      else
        high = middle;
    }
  return low;
}

static void
find_fresh_plan (const TrSequence *self,
                 double            width,
                 TrSequencePlan   *plan)
{
  double least = LEAST_ACROSS * self->em / self->across_mm;
  guint rows = count_rows (self, width, least, &plan->starts);
  double most = (rows > 1 ? MOST_ACROSS_IN_ROWS : MOST_ACROSS) * self->em / self->across_mm;

  if (rows == G_MAXUINT)
    {
      /* Something is longer than the picture: smaller, until its words no longer fit either. */
      plan->scale = widen (self, width, 0, least, G_MAXUINT - 1);
      rows = count_rows (self, width, plan->scale, &plan->starts);
    }
  else
    {
      plan->scale = widen (self, width, least, most, rows);
      count_rows (self, width, plan->scale, &plan->starts);
    }
  plan->n_rows = rows == G_MAXUINT ? self->n_groups : rows;
  if (rows == G_MAXUINT)
    plan->starts = (1u << self->n_groups) - 1;
}

static void
keep_plan (const TrSequence     *self,
           double                width,
           const TrSequencePlan *held,
           TrSequencePlan       *plan)
{
  *plan = *held;
  for (int i = 0; i < 24 && widest_row (self, plan->starts, plan->scale) > width; i++)
    plan->scale *= 0.96;
}

void
tr_sequence_find_plan (const TrSequence     *self,
                       double                width,
                       double                height,
                       const TrSequencePlan *held,
                       TrSequencePlan       *plan)
{
  if (held != NULL)
    keep_plan (self, width, held, plan);
  else
    find_fresh_plan (self, width, plan);
  plan->height = get_height (self, plan);
  if (height > 0 && held == NULL && plan->height > height)
    {
      double too_much = (plan->height - height) / plan->n_rows / self->across_mm;

      plan->scale = MAX (plan->scale - too_much, 1e-6);
      plan->height = get_height (self, plan);
    }
}

static void
lay_out_group (TrSequence      *self,
               TrSequenceGroup *group,
               double           scale,
               double           x)
{
  group->x = x;
  for (guint c = 0; c < group->n_columns; c++)
    {
      group->columns[c].x = x;
      group->columns[c].width = column_width (&group->columns[c], scale);
      x += group->columns[c].width + (c + 1 < group->n_columns ? TR_SEQUENCE_INNER_GAP * self->em : 0);
    }
  group->width = x - group->x;
}

void
tr_sequence_lay_out (TrSequence           *self,
                     const TrSequencePlan *plan)
{
  double top = 0;

  for (guint first = 0, next; first < self->n_groups; first = next)
    {
      double height = get_row_height (self, plan, first, &next), x = 0;

      for (guint i = first; i < next; i++)
        {
          TrSequenceGroup *group = &self->groups[i];

          group->top = top;
          group->height = height;
          lay_out_group (self, group, plan->scale, x + group->gap);
          x = group->x + group->width;
        }
      top += height;
    }
}
