/* differences.c: what was written otherwise in one dough than in another
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "differences.h"

typedef enum { HELD_DOUBLE, HELD_INT, HELD_ENUM, HELD_TEXT } Held;

/* `none`: the value of an int that says that nothing is written. */
typedef struct {
  const char *name;
  gsize offset;
  Held held;
  TrDiffersIn measure;
  int none;
} Member;

#define DOUBLE(Struct, field, name, measure) { name, G_STRUCT_OFFSET (Struct, field), HELD_DOUBLE, TR_DIFFERS_IN_##measure, 0 }
#define INT(Struct, field, name, measure, none) { name, G_STRUCT_OFFSET (Struct, field), HELD_INT, TR_DIFFERS_IN_##measure, none }
#define ENUM(Struct, field, name, measure) { name, G_STRUCT_OFFSET (Struct, field), HELD_ENUM, TR_DIFFERS_IN_##measure, -1 }
#define TEXT(Struct, field, name) { name, G_STRUCT_OFFSET (Struct, field), HELD_TEXT, TR_DIFFERS_IN_TEXT, 0 }

static const Member kind_members[] = {
  ENUM (TrDough, kind, "kind", KIND),
};

/* How much of it is made, and what is lost: least of all what makes it another dough. */
static const Member batch_members[] = {
  INT (TrDough, pieces_written, "pieces_written", COUNT, 0),
  ENUM (TrDough, batch_by, "batch/by", BATCH),
  DOUBLE (TrDough, batch_value, "batch/value", NUMBER),
  DOUBLE (TrDough, handling_loss_percent, "handling_loss_percent", PERCENT),
  DOUBLE (TrDough, bake_loss_percent, "bake_loss_percent", PERCENT),
  DOUBLE (TrDough, dough_density_g_ml, "dough_density_g_ml", G_ML),
};

static const Member line_members[] = {
  TEXT (TrLine, ingredient, "ingredient"),
  TEXT (TrLine, amount, "amount"),
  DOUBLE (TrLine, hydration_percent, "hydration_percent", PERCENT),
};

static const Member lock_in_members[] = {
  ENUM (TrLockIn, style, "style", STYLE),
  DOUBLE (TrLockIn, fat_thickness_mm, "fat_thickness_mm", MM),
  DOUBLE (TrLockIn, fat_width_mm, "fat_width_mm", MM),
  DOUBLE (TrLockIn, rim_mm, "rim_mm", MM),
  INT (TrLockIn, blocks, "blocks", COUNT, 0),
  DOUBLE (TrLockIn, fat_density_g_ml, "fat_density_g_ml", G_ML),
};

static const Member rest_members[] = {
  DOUBLE (TrRest, min_minutes, "min", MINUTES),
  DOUBLE (TrRest, max_minutes, "max", MINUTES),
  ENUM (TrRest, place, "place", PLACE),
  ENUM (TrRest, on, "on", ON),
  DOUBLE (TrRest, start_c, "start_c", C),
  DOUBLE (TrRest, target_c, "target_c", C),
  DOUBLE (TrRest, thickness_mm, "thickness_mm", MM),
};

static const Member turn_members[] = {
  INT (TrTurn, fold, "fold", FOLD, 0),
  DOUBLE (TrTurn, thickness_mm, "thickness_mm", MM),
  DOUBLE (TrTurn, length_mm, "length_mm", MM),
  DOUBLE (TrTurn, width_mm, "width_mm", MM),
  DOUBLE (TrTurn, trim_mm, "trim_mm", MM),
  DOUBLE (TrTurn, minutes, "minutes", MINUTES),
};

static const Member cut_members[] = {
  ENUM (TrCut, shape, "shape", SHAPE),
  DOUBLE (TrCut, base_mm, "base_mm", MM),
  DOUBLE (TrCut, height_mm, "height_mm", MM),
  DOUBLE (TrCut, width_mm, "width_mm", MM),
  DOUBLE (TrCut, length_mm, "length_mm", MM),
  DOUBLE (TrCut, side_mm, "side_mm", MM),
  DOUBLE (TrCut, diameter_mm, "diameter_mm", MM),
  DOUBLE (TrCut, gap_mm, "gap_mm", MM),
  DOUBLE (TrCut, slice_mm, "slice_mm", MM),
  DOUBLE (TrCut, roll_length_mm, "roll_length_mm", MM),
  DOUBLE (TrCut, thickness_mm, "thickness_mm", MM),
  DOUBLE (TrCut, piece_mass_g, "piece_mass_g", G),
  DOUBLE (TrCut, trim_mm, "trim_mm", MM),
  DOUBLE (TrCut, shrink_percent, "shrink_percent", PERCENT),
  INT (TrCut, rows, "rows", COUNT, 0),
  DOUBLE (TrCut, stretch_percent, "stretch_percent", PERCENT),
  INT (TrCut, rolled_up, "rolled_up", FLAG, -1),
  DOUBLE (TrCut, printed_sheet_mm[0], "printed_sheet_mm/0", MM),
  DOUBLE (TrCut, printed_sheet_mm[1], "printed_sheet_mm/1", MM),
};

static const Member method_members[] = {
  DOUBLE (TrMethod, dough_c, "dough_c", C),
  DOUBLE (TrMethod, flour_c, "flour_c", C),
  DOUBLE (TrMethod, preferment_c, "preferment_c", C),
  DOUBLE (TrMethod, liquids_c, "liquids_c", C),
  DOUBLE (TrMethod, tap_c, "tap_c", C),
  DOUBLE (TrMethod, friction_c, "friction_c", WARMING_C),
  DOUBLE (TrMethod, friction_n, "friction_n", COUNT),
};

static const Member step_members[] = {
  DOUBLE (TrStep, minutes, "minutes", MINUTES),
  DOUBLE (TrStep, max_minutes, "max", MINUTES),
  DOUBLE (TrStep, at_c, "at_c", C),
  DOUBLE (TrStep, rh_percent, "rh_percent", PERCENT),
  INT (TrStep, place, "place", PLACE, -1),
};

/* Where the members lie: what a difference has in common with its neighbours. */
typedef struct {
  GPtrArray *found;
  TrDoughPart part;
  int index, what;
  const char *ingredient;
  const char *where;             /* of the object, without a slash at the end */
} Walk;

static TrDifference *
add (const Walk       *walk,
     TrDifferenceKind  kind,
     const char       *member)
{
  TrDifference *difference = g_new (TrDifference, 1);

  *difference = (TrDifference) {
    .kind = kind, .part = walk->part, .index = walk->index, .what = walk->what, .member = member,
    .measure = TR_DIFFERS_IN_TEXT, .was = NAN, .is = NAN, .ingredient = g_strdup (walk->ingredient),
    .where = member != NULL ? g_strdup_printf ("%s/%s", walk->where, member) : g_strdup (walk->where),
  };
  g_ptr_array_add (walk->found, difference);

  return difference;
}

static double
read_number (gconstpointer object,
             const Member *member)
{
  gconstpointer at = (const char *) object + member->offset;

  switch (member->held)
    {
    case HELD_DOUBLE:
      return *(const double *) at;
    case HELD_INT:
      return *(const int *) at != member->none ? *(const int *) at : (double) NAN;
    case HELD_ENUM:
      return *(const guint *) at;
    case HELD_TEXT:
    default:
      g_return_val_if_reached (NAN);
    }
}

static void
compare_member (const Walk    *walk,
                const Member  *member,
                gconstpointer  was,
                gconstpointer  is)
{
  TrDifference *difference;

  if (member->held == HELD_TEXT)
    {
      const char *before = *(char *const *) (gconstpointer) ((const char *) was + member->offset);
      const char *after = *(char *const *) (gconstpointer) ((const char *) is + member->offset);

      if (g_strcmp0 (before, after) == 0)
        return;
      difference = add (walk, TR_DIFFERENCE_CHANGED, member->name);
      difference->text_was = g_strdup (before);
      difference->text_is = g_strdup (after);
      return;
    }

  double before = read_number (was, member), after = read_number (is, member);

  if ((isnan (before) && isnan (after)) || fabs (before - after) <= 0)
    return;
  difference = add (walk, TR_DIFFERENCE_CHANGED, member->name);
  difference->measure = member->measure;
  difference->was = before;
  difference->is = after;
}

static void
compare_object (const Walk    *walk,
                const Member  *members,
                guint          n_members,
                gconstpointer  was,
                gconstpointer  is)
{
  for (guint i = 0; i < n_members; i++)
    compare_member (walk, &members[i], was, is);
}

#define COMPARE(walk, members, was, is) compare_object (walk, members, G_N_ELEMENTS (members), was, is)

/* Present in both: TRUE. In one only it is added or removed as a whole; then
 * `describe` says what of it is worth knowing. */
static gboolean
is_in_both (const Walk    *walk,
            gconstpointer  was,
            gconstpointer  is)
{
  if (was != NULL && is != NULL)
    return TRUE;
  if (was != NULL || is != NULL)
    add (walk, is != NULL ? TR_DIFFERENCE_ADDED : TR_DIFFERENCE_REMOVED, NULL);

  return FALSE;
}

/* Lines ***********************************************************************/

static gboolean
is_same_line (const TrLine *a,
              const TrLine *b)
{
  return a->stage == b->stage && g_strcmp0 (a->group, b->group) == 0
         && g_strcmp0 (a->ingredient, b->ingredient) == 0
         && (a->ingredient != NULL || g_strcmp0 (a->text, b->text) == 0);
}

/* For each line that is, the index of that which was; -1: none. First those
 * that are the same; what is left over in a stage and group took each other's place. */
static int *
match_lines (const TrDough *was,
             const TrDough *is)
{
  int *matches = g_new (int, is->lines->len + 1);
  g_autofree gboolean *taken = g_new0 (gboolean, was->lines->len + 1);

  for (guint i = 0; i < is->lines->len; i++)
    matches[i] = -1;
  for (int pass = 0; pass < 2; pass++)
    for (guint i = 0; i < is->lines->len; i++)
      for (guint k = 0; k < was->lines->len && matches[i] < 0; k++)
        {
          const TrLine *before = tr_dough_get_line (was, k), *after = tr_dough_get_line (is, i);

          if (taken[k] || (pass == 0 ? !is_same_line (before, after)
                                     : before->stage != after->stage || g_strcmp0 (before->group, after->group) != 0))
            continue;
          matches[i] = (int) k;
          taken[k] = TRUE;
        }

  return matches;
}

static void
add_whole_line (Walk             *walk,
                const TrDough    *dough,
                guint             index,
                TrDifferenceKind  kind)
{
  const TrLine *line = tr_dough_get_line (dough, index);
  g_autofree char *where = g_strdup_printf ("/lines/%u", index);

  walk->index = (int) index;
  walk->what = (int) line->stage;
  walk->ingredient = line->ingredient;
  walk->where = where;

  TrDifference *difference = add (walk, kind, NULL);

  if (kind == TR_DIFFERENCE_ADDED)
    difference->text_is = g_strdup (line->amount);
  else
    difference->text_was = g_strdup (line->amount);
  walk->ingredient = NULL;
}

static gboolean
has_match (const int *matches,
           guint      n,
           int        index)
{
  for (guint i = 0; i < n; i++)
    if (matches[i] == index)
      return TRUE;

  return FALSE;
}

static void
compare_lines (GPtrArray     *found,
               const TrDough *was,
               const TrDough *is)
{
  g_autofree int *matches = match_lines (was, is);
  Walk walk = { .found = found, .part = TR_PART_OF_LINE };

  for (guint i = 0; i < is->lines->len; i++)
    {
      const TrLine *line = tr_dough_get_line (is, i);
      g_autofree char *where = g_strdup_printf ("/lines/%u", i);

      if (matches[i] < 0)
        {
          add_whole_line (&walk, is, i, TR_DIFFERENCE_ADDED);
          continue;
        }
      walk.index = (int) i;
      walk.what = (int) line->stage;
      walk.ingredient = line->ingredient;
      walk.where = where;
      COMPARE (&walk, line_members, tr_dough_get_line (was, (guint) matches[i]), line);
    }
  for (guint k = 0; k < was->lines->len; k++)
    if (!has_match (matches, is->lines->len, (int) k))
      add_whole_line (&walk, was, k, TR_DIFFERENCE_REMOVED);
}

/* Turns and rests *************************************************************/

static void
compare_rests (Walk         *walk,
               TrDoughPart   part,
               const char   *where,
               const TrRest *was,
               const TrRest *is)
{
  walk->part = part;
  walk->where = where;
  if (is_in_both (walk, was, is))
    COMPARE (walk, rest_members, was, is);
  else if (was != NULL || is != NULL)
    {
      TrDifference *last = walk->found->pdata[walk->found->len - 1];

      last->measure = TR_DIFFERS_IN_MINUTES;
      last->was = was != NULL ? was->min_minutes : (double) NAN;
      last->is = is != NULL ? is->min_minutes : (double) NAN;
    }
}

static void
compare_one_turn (GPtrArray    *found,
                  guint         index,
                  const TrTurn *was,
                  const TrTurn *is)
{
  g_autofree char *where = g_strdup_printf ("/turns/%u", index);
  g_autofree char *rest = g_strdup_printf ("/turns/%u/rest", index);
  Walk walk = { .found = found, .part = TR_PART_OF_ONE_TURN, .index = (int) index, .where = where };

  walk.what = is != NULL ? is->fold : was->fold;
  if (!is_in_both (&walk, was, is))
    return;
  COMPARE (&walk, turn_members, was, is);
  compare_rests (&walk, TR_PART_OF_REST, rest, was->rest, is->rest);
}

static gboolean
is_same_turn (const TrTurn *a,
              const TrTurn *b)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_difference_free);

  compare_one_turn (found, 0, a, b);

  return found->len == 0;
}

/* Where one was taken out of the middle, those behind it are the same still. */
static void
compare_turns (GPtrArray     *found,
               const TrDough *was,
               const TrDough *is)
{
  guint n_was = was->turns->len, n_is = is->turns->len, start = 0;

  while (start < MIN (n_was, n_is) && is_same_turn (tr_dough_get_turn (was, start), tr_dough_get_turn (is, start)))
    start++;
  while (n_was > start && n_is > start
         && is_same_turn (tr_dough_get_turn (was, n_was - 1), tr_dough_get_turn (is, n_is - 1)))
    {
      n_was--;
      n_is--;
    }
  for (guint i = start; i < MAX (n_was, n_is); i++)
    compare_one_turn (found, i, i < n_was ? tr_dough_get_turn (was, i) : NULL, i < n_is ? tr_dough_get_turn (is, i) : NULL);
}

static void
compare_lock_ins (GPtrArray     *found,
                  const TrDough *was,
                  const TrDough *is)
{
  Walk walk = { .found = found, .part = TR_PART_OF_LOCKING_IN, .index = -1, .what = -1, .where = "/lock_in" };

  if (!is_in_both (&walk, was->lock_in, is->lock_in))
    return;
  COMPARE (&walk, lock_in_members, was->lock_in, is->lock_in);
  compare_rests (&walk, TR_PART_OF_CHILL, "/lock_in/rest", was->lock_in->rest, is->lock_in->rest);
}

static void
compare_cuts (GPtrArray     *found,
              const TrDough *was,
              const TrDough *is)
{
  Walk walk = { .found = found, .part = TR_PART_OF_CUT, .index = -1, .what = -1, .where = "/cut" };

  if (is_in_both (&walk, was->cut, is->cut))
    COMPARE (&walk, cut_members, was->cut, is->cut);
}

/* Steps ***********************************************************************/

/* The n-th of that kind; NULL: there are not so many. */
static const TrStep *
find_nth_step (const TrDough *dough,
               TrStepId       id,
               guint          n,
               guint         *index)
{
  for (guint i = 0; i < dough->method->steps->len; i++)
    {
      const TrStep *step = dough->method->steps->pdata[i];

      if (step->id != id || n-- > 0)
        continue;
      *index = i;
      return step;
    }

  return NULL;
}

static void
compare_steps_of (GPtrArray     *found,
                  TrStepId       id,
                  const TrDough *was,
                  const TrDough *is)
{
  for (guint n = 0;; n++)
    {
      guint index = 0;
      const TrStep *before = find_nth_step (was, id, n, &index);
      const TrStep *after = find_nth_step (is, id, n, &index);
      g_autofree char *where = g_strdup_printf ("/method/steps/%u", index);
      Walk walk = { .found = found, .part = TR_PART_OF_STEP, .index = (int) index, .what = (int) id, .where = where };

      if (before == NULL && after == NULL)
        return;
      if (is_in_both (&walk, before, after))
        COMPARE (&walk, step_members, before, after);
    }
}

static void
compare_methods (GPtrArray     *found,
                 const TrDough *was,
                 const TrDough *is)
{
  Walk walk = { .found = found, .part = TR_PART_OF_METHOD, .index = -1, .what = -1, .where = "/method" };

  COMPARE (&walk, method_members, was->method, is->method);
  for (guint id = 0; id < TR_N_STEPS; id++)
    compare_steps_of (found, (TrStepId) id, was, is);
}

GPtrArray *
tr_dough_differences (const TrDough *was,
                      const TrDough *is)
{
  GPtrArray *found = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_difference_free);

  g_return_val_if_fail (was != NULL && is != NULL, found);

  Walk walk = { .found = found, .part = TR_PART_OF_DOUGH_ITSELF, .index = -1, .what = -1, .where = "" };

  COMPARE (&walk, kind_members, was, is);
  compare_lines (found, was, is);
  compare_lock_ins (found, was, is);
  compare_turns (found, was, is);
  compare_cuts (found, was, is);
  compare_methods (found, was, is);
  COMPARE (&walk, batch_members, was, is);

  return found;
}

void
tr_difference_free (TrDifference *difference)
{
  g_free (difference->text_was);
  g_free (difference->text_is);
  g_free (difference->ingredient);
  g_free (difference->where);
  g_free (difference);
}
